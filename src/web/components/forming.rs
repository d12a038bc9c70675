//! The line while it forms: what is known, and a thin dash for the rest.

use crate::advice::report::Line;
use crate::need::answers::Answers;
use crate::need::flow::{State as Answered, state};
use crate::need::questions::Question;
use crate::t;
use crate::web::state::use_app;
use crate::web::view::prelude::*;
use crate::wording::advice::{glass_forming, word};

fn is_settled(answers: &Answers, questions: &[&str]) -> bool {
    questions.iter().all(|key| {
        Question::from_key(key).is_none_or(|question| state(answers, question) != Answered::Open)
    })
}

/// The elements that the answers so far decide, as words.
fn forming(line: &Line, answers: &Answers) -> String {
    let power = is_settled(answers, &["quarry", "manner", "ranges"]);
    let objective = power && is_settled(answers, &["light", "eye"]);
    let tube = objective && is_settled(answers, &["rifle", "mount"]);
    let rest = tube && is_settled(answers, &["money"]);
    let mut words = glass_forming(line, power, objective);
    if tube {
        let more = t!(
            "line-tube",
            tube = crate::wording::number(line.tube_mm, usize::from(line.tube_mm.fract() > 0.05))
        );
        words = t!("told-comma", one = words, other = more);
    }
    if rest {
        words = t!(
            "told-comma",
            one = words,
            other = word("plane", &line.plane)
        );
        words = t!(
            "told-comma",
            one = words,
            other = word("reticle", &line.reticle)
        );
    }
    words
}

/// The forming line above the buttons.
#[component]
pub fn Forming() -> Html {
    let Some(app) = use_app() else {
        return Html::default();
    };
    let words = match app.advice() {
        Some((advice, _)) => advice
            .picks
            .first()
            .map(|pick| forming(&pick.line, &app.answers)),
        None => None,
    }
    .unwrap_or_else(|| t!("line-forming-nothing"));
    html! {
        <p class="forming">
            <span>{ t!("question-forming") }</span>
            <span class="forming__line">{ words }</span>
        </p>
    }
}
