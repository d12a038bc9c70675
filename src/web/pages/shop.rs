//! What to try in the shop, with the sight in hand.

use crate::t;
use crate::web::components::explained;
use crate::web::platform;
use crate::web::state::use_app;
use crate::web::view::prelude::*;
use crate::wording::{range, with_unit};

/// The checks that no computation replaces.
#[component]
pub fn ShopPage() -> Html {
    let Some(app) = use_app() else {
        return Html::default();
    };
    let units = app.answers.units;
    let (relief, usual_m) = app.advice().map_or((90.0, 80.0), |(advice, _)| {
        let facts = &advice.facts;
        (facts.eye_relief_needed_mm, facts.typical.usual_m)
    });
    let rows = [
        (t!("shop-1-title"), t!("shop-1")),
        (t!("shop-2-title"), t!("shop-2")),
        (
            t!("shop-3-title"),
            t!("shop-3", relief = with_unit(relief.ceil(), 0, "mm")),
        ),
        (t!("shop-4-title"), t!("shop-4")),
        (
            t!("shop-5-title"),
            t!("shop-5", usual = range(units, usual_m)),
        ),
        (t!("shop-6-title"), t!("shop-6")),
        (t!("shop-7-title"), t!("shop-7")),
        (t!("shop-8-title"), t!("shop-8")),
        (t!("shop-9-title"), t!("shop-9")),
        (t!("shop-10-title"), t!("shop-10")),
        (t!("shop-11-title"), t!("shop-11")),
        (t!("shop-12-title"), t!("shop-12")),
    ];
    html! {
        <main class="page" id="main">
            <h1 id="title" tabindex="-1">{ t!("shop-title") }</h1>
            <p>{ explained(t!("shop-lead")) }</p>
            <p class="caution">{ t!("shop-caution") }</p>
            <section>
                <h2>{ t!("shop-bring") }</h2>
                <p>{ t!("shop-bring-list") }</p>
            </section>
            <section>
                <h2>{ t!("shop-try") }</h2>
                <ol class="checks">
                    { for rows.into_iter().map(|(title, text)| html! {
                        <li class="check-row"><h3>{ title }</h3><p>{ explained(text) }</p></li>
                    }) }
                </ol>
            </section>
            <button type="button" class="button noprint" onclick={Callback::from(|_: MouseEvent| platform::print())}>{ t!("shop-print") }</button>
        </main>
    }
}
