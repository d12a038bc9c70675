//! A section that opens in place: closed, it shows its name and in a line what stands in it.

use crate::web::view::prelude::*;

/// A folded section. What is in it can be found and printed while it is closed; what is focused
/// in it opens it.
#[must_use]
pub fn fold(id: &'static str, title: String, sum: String, inside: Html) -> Html {
    html! {
        <details class="fold" {id}>
            <summary>
                <h2 class="fold__title">{ title }</h2>
                <span class="fold__sum">{ sum }</span>
            </summary>
            <div class="fold__in">{ inside }</div>
        </details>
    }
}
