//! The sight owned now, and what annoys about it.

use super::head::Props;
use crate::plain::Together;
use crate::t;
use crate::web::view::prelude::*;
use crate::wording::advice::{annoyed, owned};

/// What the first pick gains over the sight owned now, or that it is as good.
#[component]
pub fn Owned(props: &Props) -> Html {
    let Some(row) = &props.advice.owned else {
        return Html::default();
    };
    let judged = row
        .judged
        .as_ref()
        .map(|judged| owned(&props.advice, judged, props.units).together(" "));
    html! {
        <section>
            <h2>{ t!("owned-title") }</h2>
            if let Some(said) = judged {
                <p>{ said }</p>
            }
            <ul class="plainlist">
                { for row.annoys.iter().map(|row| {
                    let (what, said) = annoyed(row, props.units);
                    html! { <li>{ what }{ ": " }{ said }</li> }
                }) }
            </ul>
        </section>
    }
}
