//! The page.

use yew::{Html, component, html};

/// Puts the page in place of what was seen before it arrived.
pub fn mount() {
    let root = gloo::utils::document().get_element_by_id("app");
    match root {
        Some(root) => yew::Renderer::<App>::with_root(root).render(),
        None => yew::Renderer::<App>::new().render(),
    };
}

#[component]
fn App() -> Html {
    html! {
        <main>
            <h1>{ "Scopewright" }</h1>
            <p>{ "The questions come next." }</p>
        </main>
    }
}
pub mod pictures;
