//! Forgetting everything on this device, after asking once.

use crate::t;
use crate::web::platform;
use crate::web::state::{Action, Notice, Theme, use_app};
use crate::web::stored;
use crate::web::view::prelude::*;

/// A button that forgets, after asking once.
#[component]
pub fn ForgetAll() -> Html {
    let asks = use_state(|| false);
    let Some(app) = use_app() else {
        return Html::default();
    };
    let ask = |on: bool, then: &'static str| {
        let asks = asks.clone();
        Callback::from(move |_: MouseEvent| {
            asks.set(on);
            platform::focus_soon(then);
        })
    };
    let forget = {
        let (app, asks) = (app.clone(), asks.clone());
        Callback::from(move |_: MouseEvent| {
            stored::forget();
            app.dispatch(Action::Forget);
            app.dispatch(Action::Colour(Theme::System));
            app.dispatch(Action::Tell(Notice {
                said: t!("check-forgotten"),
                offer: None,
            }));
            asks.set(false);
            platform::focus_soon("title");
        })
    };
    if *asks {
        html! {
            <div role="group" aria-labelledby="forget-sure" class="sure">
                <p id="forget-sure" tabindex="-1">{ t!("check-forget-sure") }</p>
                <button type="button" class="button button--primary" onclick={forget}>{ t!("check-forget-yes") }</button>
                <button type="button" class="button" id="forget-no" onclick={ask(false, "forget")}>{ t!("check-forget-no") }</button>
            </div>
        }
    } else {
        html! { <button type="button" class="button" id="forget" onclick={ask(true, "forget-no")}>{ t!("check-forget") }</button> }
    }
}
