//! The pages.

mod about;
pub mod advice;
mod after;
mod check;
mod club;
mod counter;
mod opening;
mod question;
mod ring_height;
mod shelf;
mod shop;
mod stop;
mod versus;
mod zero_clicks;

use super::route::Route;
use super::state::App;
use crate::need::answers::Answers;
use crate::need::flow;
use crate::need::questions::{Question, Stage};
use crate::t;
use crate::web::view::prelude::*;

/// The page at the place where one is.
pub fn shown(app: &App) -> Html {
    match &app.route {
        Route::Question(key) => {
            html! { <question::QuestionPage key={key.clone()} question={key.clone()} /> }
        }
        Route::Check => html! { <check::CheckPage key="check" /> },
        Route::Advice => html! { <advice::AdvicePage key="advice" /> },
        Route::Compare => html! { <versus::VersusPage key="compare" /> },
        Route::Rings => html! { <ring_height::RingHeightPage key="rings" /> },
        Route::Zero => html! { <zero_clicks::ZeroClicksPage key="zero" /> },
        Route::Counter => html! { <counter::CounterPage key="counter" /> },
        Route::Club => html! { <club::ClubPage key="club" /> },
        Route::Shelf => html! { <shelf::ShelfPage key="shelf" /> },
        Route::Shop => html! { <shop::ShopPage key="shop" /> },
        Route::After => html! { <after::AfterPage key="after" /> },
        Route::About => html! { <about::AboutPage key="about" /> },
        Route::Pictures => html! { <super::pictures::Gallery key="pictures" /> },
        _ => html! { <opening::OpeningPage key="opening" /> },
    }
}

/// The name of the tab at a place.
#[must_use]
pub fn title(route: &Route) -> String {
    let here = match route {
        Route::Question(key) => Question::from_key(key).map_or_else(
            || t!("question-missing"),
            crate::wording::questions::question,
        ),
        Route::Check => t!("check-title"),
        Route::Advice => t!("advice-title"),
        Route::Compare => t!("opening-door-compare"),
        Route::Rings => t!("opening-door-rings"),
        Route::Zero => t!("opening-door-zero"),
        Route::Shop => t!("shop-title"),
        Route::After => t!("after-title"),
        Route::Counter => t!("opening-door-counter"),
        Route::Shelf => t!("shelf-title"),
        Route::Club => t!("club-title"),
        Route::About => t!("about-title"),
        Route::Pictures => t!("advice-pictures"),
        _ => t!("opening-title"),
    };
    format!("{here} · {}", t!("page-name"))
}

/// Where a place lies on the way through the page: smaller is earlier.
#[must_use]
pub fn order(route: &Route) -> usize {
    match route {
        Route::Opening | Route::Unknown(_) | Route::Open(_) | Route::Embed(_) => 0,
        Route::Question(key) => 1 + question::place(key),
        Route::Check => 900,
        Route::Advice => 901,
        _ => 950,
    }
}

/// Whether the links at the foot are shown: not where the bar is under the thumb.
#[must_use]
pub fn has_foot(route: &Route) -> bool {
    !matches!(
        route,
        Route::Question(_) | Route::Check | Route::Counter | Route::Opening
    )
}

/// The first question.
#[must_use]
pub fn first_question(answers: &Answers) -> Route {
    flow::asked(answers, Stage::First)
        .next()
        .map_or(Route::Check, |question| {
            Route::Question(question.key.into())
        })
}

/// The first question that is still open, or all answers where none is.
#[must_use]
pub fn open_question(answers: &Answers) -> Route {
    flow::first_open(answers, Stage::First).map_or(Route::Check, |question| {
        Route::Question(question.key.into())
    })
}

fn missing(_key: &str) -> Html {
    html! {
        <main class="page" id="main">
            <h1 id="title" tabindex="-1">{ t!("question-missing") }</h1>
            <a class="button button--primary" href={Route::Check.href()}>{ t!("check-title") }</a>
        </main>
    }
}
