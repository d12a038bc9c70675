//! What this is, and what it is not.

use crate::plain::Map;
use crate::t;
use crate::web::platform;
use crate::web::route::Route;
use crate::web::state::{Action, Notice, use_app};
use crate::web::stored;
use crate::web::view::prelude::*;

/// The first page. Its first screen stands in `index.html` too, seen before the module arrives.
#[component]
pub fn OpeningPage() -> Html {
    let Some(app) = use_app() else {
        return Html::default();
    };
    let first = super::first_question(&app.answers);
    let door = |route: Route, name: String, hint: String| {
        html! {
            <li><a class="way" href={route.href()}>
                <span class="way__name">{ name }</span>
                <span class="way__hint">{ hint }</span>
            </a></li>
        }
    };
    let again = {
        let app = app.clone();
        Callback::from(move |_: MouseEvent| {
            let start = stored::start_in(app.answers.units);
            app.dispatch(Action::Take(Box::new(start), Map::new()));
            app.dispatch(Action::Tell(Notice {
                said: t!("opening-emptied"),
                offer: Some(app.way_back()),
            }));
            platform::focus_soon("title");
        })
    };
    html! {
        <main class="page opening" id="main">
            <h1 id="title" tabindex="-1">{ t!("opening-title") }</h1>
            <p class="opening__lead">{ t!("opening-lead") }</p>
            <div class="opening__start">
                if app.answers != stored::start_in(app.answers.units) {
                    <a class="button button--primary" href={super::open_question(&app.answers).href()}>{ t!("opening-go-on") }</a>
                    <a class="button" href={Route::Advice.href()}>{ t!("opening-to-advice") }</a>
                    <button type="button" class="button button--quiet" onclick={again}>{ t!("opening-again") }</button>
                } else {
                    <a class="button button--primary" href={first.href()}>{ t!("opening-start") }</a>
                    <p class="soft small">{ t!("opening-length") }</p>
                }
            </div>
            <ul class="opening__facts">
                <li>{ t!("opening-is") }</li>
                <li>{ t!("opening-covers") }</li>
                <li>{ t!("opening-private") }</li>
                <li>{ t!("opening-figures") }</li>
            </ul>
            <section class="opening__doors">
                <h2>{ t!("opening-doors") }</h2>
                <ul role="list" class="ways">
                    { door(Route::Compare, t!("opening-door-compare"), t!("opening-door-compare-hint")) }
                    { door(Route::Rings, t!("opening-door-rings"), t!("opening-door-rings-hint")) }
                    { door(Route::Zero, t!("opening-door-zero"), t!("opening-door-zero-hint")) }
                    { door(Route::Counter, t!("opening-door-counter"), t!("opening-door-counter-hint")) }
                </ul>
            </section>
        </main>
    }
}
