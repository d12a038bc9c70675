//! The mark at the top and the links at the foot.

use crate::t;
use crate::web::route::Route;
use crate::web::state::{Action, Theme, use_app};
use crate::web::view::prelude::*;

/// The six colours of the dusk strip, from day to night.
const HORIZON: [&str; 6] = [
    "#CFE0EA", "#F0D9AE", "#D98F62", "#7A5C7E", "#2E3555", "#0F1220",
];

/// The mark: the word over a hairline of the evening's colours.
#[component]
pub fn Mast() -> Html {
    let Some(app) = use_app() else {
        return Html::default();
    };
    let next = match app.theme {
        Theme::System => Theme::Day,
        Theme::Day => Theme::Night,
        Theme::Night => Theme::System,
    };
    let colour = {
        let app = app.clone();
        Callback::from(move |_: MouseEvent| app.dispatch(Action::Colour(next)))
    };
    let is_wide = matches!(
        app.route,
        Route::Advice
            | Route::Club
            | Route::Shelf
            | Route::Counter
            | Route::Pictures
            | Route::Compare
            | Route::Rings
            | Route::Zero
    );
    html! {
        <header class={classes!("mast", is_wide.then_some("mast--wide"))}>
            <a class="mark" href={Route::Opening.href()}>
                { t!("page-name") }
                <svg class="mark__horizon" viewBox="0 0 60 1" preserveAspectRatio="none" aria-hidden="true">
                    { for HORIZON.iter().enumerate().map(|(at, colour)| html! {
                        <rect x={(at * 10).to_string()} y="0" width="10.05" height="1" fill={*colour} />
                    }) }
                </svg>
            </a>
            <div class="mast__links">
                <button type="button" onclick={colour}>{ match app.theme {
                    Theme::System => t!("page-theme-system"),
                    Theme::Day => t!("page-theme-day"),
                    Theme::Night => t!("page-theme-night"),
                } }</button>
            </div>
        </header>
    }
}

/// Links that are wanted seldom.
#[component]
pub fn Foot() -> Html {
    html! {
        <footer class="foot">
            <ul role="list">
                <li><a href={Route::Opening.href()}>{ t!("page-home") }</a></li>
                <li><a href={Route::Compare.href()}>{ t!("opening-door-compare") }</a></li>
                <li><a href={Route::Rings.href()}>{ t!("opening-door-rings") }</a></li>
                <li><a href={Route::Zero.href()}>{ t!("opening-door-zero") }</a></li>
                <li><a href={Route::Shop.href()}>{ t!("advice-shop") }</a></li>
                <li><a href={Route::After.href()}>{ t!("advice-after") }</a></li>
                <li><a href={Route::Counter.href()}>{ t!("opening-door-counter") }</a></li>
                <li><a href={Route::Shelf.href()}>{ t!("shelf-title") }</a></li>
                <li><a href={Route::Club.href()}>{ t!("club-title") }</a></li>
                <li><a href={Route::About.href()}>{ t!("about-title") }</a></li>
            </ul>
        </footer>
    }
}
