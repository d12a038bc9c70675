//! Mounting, zeroing, keeping.

use crate::t;
use crate::web::components::explained;
use crate::web::pages::advice::notes::mounting_sheet;
use crate::web::route::Route;
use crate::web::state::use_app;
use crate::web::view::prelude::*;
use crate::wording::advice::line_text;

fn list(title: String, rows: Vec<String>) -> Html {
    html! {
        <section>
            <h2>{ title }</h2>
            <ul class="lines">{ for rows.into_iter().map(|row| html! { <li>{ explained(row) }</li> }) }</ul>
        </section>
    }
}

/// After buying.
#[component]
pub fn AfterPage() -> Html {
    let app = use_app();
    let sheet = app
        .as_ref()
        .and_then(|app| app.advice().map(|(advice, _)| (advice, app.answers.units)))
        .map_or_else(
            || {
                html! {
                    <p>{ t!("sheet-none") }{ " " }<a href={Route::Advice.href()}>{ t!("opening-to-advice") }</a></p>
                }
            },
            |(advice, units)| {
                html! {
                    <>
                        <p class="soft">{ t!("sheet-lead", line = advice.picks.first().map(|pick| line_text(&pick.line, units)).unwrap_or_default()) }</p>
                        { mounting_sheet(&advice, units) }
                    </>
                }
            },
        );
    html! {
        <main class="page" id="main">
            <h1 id="title" tabindex="-1">{ t!("after-title") }</h1>
            <p class="caution">{ explained(t!("after-lead")) }</p>
            <section id="sheet">
                <h2>{ t!("sheet-title") }</h2>
                { sheet }
            </section>
            { list(t!("after-mount"), vec![
                t!("after-mount-1"), t!("after-mount-2"), t!("after-mount-3"),
                t!("after-mount-4"), t!("after-mount-5"),
            ]) }
            { list(t!("after-bore"), vec![t!("after-bore-1")]) }
            { list(t!("after-zero"), vec![t!("after-zero-1"), t!("after-zero-2")]) }
            <p><a href={Route::Zero.href()}>{ t!("after-zero-3") }</a></p>
            { list(t!("after-confirm"), vec![
                t!("after-confirm-1"), t!("after-confirm-2"), t!("after-confirm-3"), t!("after-confirm-4"),
            ]) }
            <section>
                <h2>{ t!("after-lost") }</h2>
                <p>{ t!("after-lost-lead") }{ " " }{ t!("after-lost-list") }</p>
                <p>{ t!("after-lost-send") }</p>
            </section>
            { list(t!("after-care"), vec![t!("after-care-1"), t!("after-care-2")]) }
            { list(t!("after-more"), vec![
                t!("after-brow"), t!("after-more-1"), t!("after-more-2"), t!("after-more-3"),
                t!("after-more-4"), t!("after-more-5"),
            ]) }
        </main>
    }
}
