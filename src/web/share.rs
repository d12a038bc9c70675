//! Answers in a link, and out of it again.

use super::route::Route;
use super::state::{Action, App, Dispatcher, Notice};
use super::{platform, stored};
use crate::need::answers::Answers;
use crate::need::link;
use crate::plain::Map;
use crate::t;
use crate::wording::problems;

/// The address that opens these answers.
#[must_use]
pub fn address(answers: &Answers) -> String {
    format!(
        "{}{}",
        platform::bare_address(),
        Route::Open(link::encode(answers)).href()
    )
}

/// Opens a link: its answers take the place of one's own, which can be had back.
pub fn open(text: &str, app: &App, dispatcher: Dispatcher) {
    match link::decode(text) {
        Ok(rescued) => {
            let offer = app.has_answers().then(|| app.way_back());
            let said = if rescued.is_whole() {
                t!("link-opened")
            } else {
                t!("link-opened-partly")
            };
            let answers = stored::with_ticked(rescued.answers);
            dispatcher.dispatch(Action::Take(Box::new(answers), Map::new()));
            dispatcher.dispatch(Action::Tell(Notice { said, offer }));
        }
        Err(problem) => {
            dispatcher.dispatch(Action::Answer(stored::with_ticked(app.answers.clone())));
            dispatcher.dispatch(Action::Tell(Notice {
                said: t!("link-not-opened", why = problems::link(&problem)),
                offer: None,
            }));
        }
    }
}
