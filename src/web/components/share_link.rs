//! The answers as a link and as a code to be photographed.

use crate::t;
use crate::web::platform;
use crate::web::share::address;
use crate::web::state::use_app;
use crate::web::view::prelude::*;
use qrcodegen::{QrCode, QrCodeEcc};
use std::fmt::Write as _;

/// Modules of quiet zone around a code, as the standard asks.
const QUIET: i32 = 4;

/// The dark modules as one path, a module one unit wide.
fn dark_modules(code: &QrCode) -> String {
    let mut path = String::new();
    for y in 0..code.size() {
        let mut x = 0;
        while x < code.size() {
            let start = x;
            while x < code.size() && code.get_module(x, y) {
                x += 1;
            }
            if x > start {
                // Writing to a string cannot fail.
                let _ = write!(path, "M{start} {y}h{}v1h-{}z", x - start, x - start);
            }
            x += 1;
        }
    }
    path
}

/// Link and code.
#[component]
pub fn ShareLink() -> Html {
    let is_copied = use_state(|| false);
    let Some(app) = use_app() else {
        return Html::default();
    };
    let link = address(&app.answers);
    let copy = {
        let (link, is_copied) = (link.clone(), is_copied.clone());
        Callback::from(move |_: MouseEvent| is_copied.set(platform::copy(&link)))
    };
    let send = {
        let (link, is_copied) = (link.clone(), is_copied.clone());
        Callback::from(move |_: MouseEvent| {
            if !platform::share_sheet(&t!("page-name"), &link) {
                is_copied.set(platform::copy(&link));
            }
        })
    };
    // A longer link makes a code too fine for a camera; then the link alone is offered.
    let code = QrCode::encode_binary(link.as_bytes(), QrCodeEcc::Low)
        .ok()
        .filter(|code| code.size() <= 89);
    html! {
        <div class="share" id="share" tabindex="-1">
            <p>{ t!("share-lead") }</p>
            <div class="share__in">
                if let Some(code) = code {
                    <svg class="share__code" role="img" aria-label={t!("share-qr")}
                        viewBox={format!("{0} {0} {1} {1}", -QUIET, code.size() + 2 * QUIET)} shape-rendering="crispEdges">
                        <rect x={(-QUIET).to_string()} y={(-QUIET).to_string()} width="100%" height="100%" fill="#ffffff" />
                        <path d={dark_modules(&code)} fill="#000000" />
                    </svg>
                }
                <div class="share__ways noprint">
                    <label class="field__label" for="share-address">{ t!("share-label") }</label>
                    <input class="field__input field__input--long small" id="share-address" type="text" readonly=true value={link} />
                    <div class="share__buttons">
                        <button type="button" class="button" onclick={send}>{ t!("share-send") }</button>
                        <button type="button" class="button" onclick={copy}>{ t!("share-copy") }</button>
                    </div>
                    <p role="status" class="small">{ if *is_copied { t!("share-copied") } else { String::new() } }</p>
                </div>
            </div>
        </div>
    }
}
