//! What is advised, as it stands while one answers: nothing moves, what changed is marked.

use super::super::advice::seen::{Tonight, is_by_day};
use crate::advice::Advice;
use crate::advice::report::Element;
use crate::need::answers::Units;
use crate::plain::Gathered;
use crate::plain::Together;
use crate::t;
use crate::web::components::Steps;
use crate::web::platform::Timeout;
use crate::web::shared::Shared;
use crate::web::state::App;
use crate::web::view::prelude::*;
use crate::wording::advice::{
    change_first, evening, glass, line_parts, need_sentence, reason_said, sureness, word,
};
use crate::wording::with_unit;

/// How long nothing is touched before what is shown changes, in ms.
const REST_MS: u32 = 600;

/// What is shown, and what stood there before.
#[derive(Clone, PartialEq)]
pub struct Shown {
    /// The advice.
    pub advice: Shared<Advice>,
    before: Option<Shared<Advice>>,
    revision: u32,
}

impl Shown {
    /// What is shown after `now`.
    fn after(now: Option<&Self>, advice: Shared<Advice>, revision: u32, units: Units) -> Self {
        let before = now.and_then(|now| {
            // The same advice told more surely, or one that says the same: what changed before
            // it stays marked.
            if now.revision == revision || said(&now.advice, units) == said(&advice, units) {
                now.before.clone()
            } else {
                Some(now.advice.clone())
            }
        });
        Self {
            advice,
            before,
            revision,
        }
    }
}

/// The advice once nothing has been touched for a while; `is_held`: a finger lies on it.
pub fn use_shown(app: &App, is_held: bool) -> Option<Shown> {
    let shown = use_state_eq(|| None::<Shown>);
    let coming = app
        .advice()
        .filter(|(_, is_stale)| !is_stale)
        .map(|(advice, _)| advice);
    let is_open = app.has_answers();
    let units = app.answers.units;
    {
        let shown = shown.clone();
        use_effect_with(
            (coming, is_open, is_held, app.revision),
            move |(coming, is_open, is_held, revision)| {
                let mut timer = None;
                let revision = *revision;
                if !is_open {
                    shown.set(None);
                } else if let Some(advice) = coming.clone().filter(|_| !*is_held) {
                    let now = shown.as_ref();
                    if now.is_none_or(|now| now.advice != advice) {
                        let wait_ms = if now.is_some() { REST_MS } else { 0 };
                        let next = Shown::after(now, advice, revision, units);
                        timer = Some(Timeout::new(wait_ms, move || shown.set(Some(next))));
                    }
                }
                move || drop(timer)
            },
        );
    }
    (*shown).clone().filter(|_| is_open)
}

/// Pieces before the picks: need, glass, rest of the line, evening, how sure, a warning.
const HEAD: usize = 6;
/// Pieces of a pick: glass, why it stands there, gain, loss, situations.
const OF_A_PICK: usize = 5;

/// All that is said about an advice, piece by piece, so that what changed can be marked; nothing
/// without a pick.
#[inline(never)]
fn said(advice: &Advice, units: Units) -> Vec<String> {
    let Some(first) = advice.picks.first() else {
        return Vec::new();
    };
    let rest: Vec<String> = line_parts(&first.line, &first.ranges, units)
        .into_iter()
        .filter(|part| part.element != Element::MagHigh)
        .map(|part| part.text)
        .gathered();
    let mut said = vec![
        need_sentence(advice, units),
        glass(&first.line),
        rest.together(", "),
        evening(advice, first, units),
        sureness(advice, units)
            .into_iter()
            .next()
            .unwrap_or_default(),
        advice
            .warnings
            .first()
            .map(|warning| word("warning", &warning.key))
            .unwrap_or_default(),
    ];
    for (at, pick) in advice.picks.iter().take(3).enumerate() {
        let (gain, loss) = if at == 0 {
            Default::default()
        } else {
            change_first(&pick.against_first, units)
        };
        said.extend([
            glass(&pick.line),
            word("because", &pick.because),
            gain,
            loss,
            with_unit(pick.served.value * 100.0, 0, "%"),
        ]);
    }
    said
}

/// Words, marked for a while if they were others before.
fn marked(now: &str, before: Option<&String>) -> Html {
    let is_new = before.is_some_and(|before| before != now);
    html! { <span key={now.to_owned()} class={is_new.then_some("changed")}>{ now }</span> }
}

/// Need, line, what it does, three picks, the evening.
pub fn line(shown: &Shown, units: Units) -> Html {
    let now = said(&shown.advice, units);
    if now.is_empty() {
        return Html::default();
    }
    let was = shown.before.as_ref().map(|before| said(before, units));
    let piece = |at: usize| marked(&now[at], was.as_ref().and_then(|was| was.get(at)));
    html! {
        <div class="counter__advice">
            <p class="counter__need">{ piece(0) }</p>
            <p class="line">
                <span class="line__glass">{ piece(1) }</span>
                <span class="counter__rest">{ piece(2) }</span>
            </p>
            <p class="counter__does">{ piece(3) }</p>
            <p class="counter__sure">{ piece(4) }</p>
            if !now[5].is_empty() {
                <p class="marked counter__warned">
                    <span class="marked__sign marked__sign--fails" aria-hidden="true">{ "×" }</span>
                    { piece(5) }
                </p>
            }
            <table class="picks picks--flat">
                <colgroup><col class="picks__col" /><col /><col /><col class="picks__col picks__col--last" /></colgroup>
                <thead><tr>
                    <th scope="col">{ t!("advice-others-name") }</th>
                    <th scope="col">{ t!("advice-others-gain") }</th>
                    <th scope="col">{ t!("advice-others-loss") }</th>
                    <th scope="col">{ t!("advice-others-served") }</th>
                </tr></thead>
                <tbody>
                    { for (HEAD..now.len()).step_by(OF_A_PICK).map(|at| {
                        let is_first = at == HEAD;
                        html! {
                            <tr class={is_first.then_some("picks__row--first")}>
                                <th scope="row" colspan={is_first.then_some("3")}><span class="picks__line">{ piece(at) }</span>
                                    <span class="picks__because">{ piece(at + 1) }</span></th>
                                if !is_first {
                                    <td>{ piece(at + 2) }</td>
                                    <td>{ piece(at + 3) }</td>
                                }
                                <td>{ piece(at + 4) }</td>
                            </tr>
                        }
                    }) }
                </tbody>
            </table>
            if !is_by_day(&shown.advice) {
                <Tonight advice={shown.advice.clone()} {units} />
            }
        </div>
    }
}

/// Each reason: what it rests on, and a sentence to say aloud beside it.
pub fn why(advice: &Advice, units: Units) -> Html {
    html! {
        <>
        <ol class="counter__reasons">
            { for advice.reasons.iter().map(|reason| html! {
                <li key={word("element", &reason.element)}>
                    <p class="reason__said">{ reason_said(reason, units) }</p>
                    <Steps reason={reason.clone()} {units} />
                </li>
            }) }
        </ol>
        if !advice.warnings.is_empty() {
            <section>
                <h2>{ t!("advice-warnings") }</h2>
                <ul class="plainlist plainlist--tight">
                    { for advice.warnings.iter().map(|warning| html! {
                        <li class="marked">
                            <span class="marked__sign marked__sign--fails" aria-hidden="true">{ "×" }</span>
                            <span>{ word("warning", &warning.key) }</span>
                        </li>
                    }) }
                </ul>
            </section>
        }
        </>
    }
}

#[cfg(test)]
mod tests {
    use super::{Shown, said};
    use crate::advice::Advice;
    use crate::advice::tell::advise;
    use crate::need::answers::{Answers, Units};
    use crate::need::kinds::Kind;
    use crate::web::shared::Shared;

    fn advised(answers: &Answers) -> Shared<Advice> {
        Shared::new(advise(answers).unwrap())
    }

    #[test]
    fn an_advice_that_says_the_same_leaves_the_marks() {
        let units = Units::Metric;
        let [deer, boar] = ["seat_evening", "boar_by_night"]
            .map(|key| Kind::from_key(key).unwrap().fill(&Answers::default()));
        let first = Shown::after(None, advised(&deer), 1, units);
        assert!(first.before.is_none(), "nothing stood there before");
        let changed = Shown::after(Some(&first), advised(&boar), 2, units);
        assert_ne!(said(&first.advice, units), said(&changed.advice, units));
        assert!(changed.before.as_ref() == Some(&first.advice));
        // Told more surely; then another answer and back again.
        let surer = Shown::after(Some(&changed), advised(&boar), 2, units);
        let again = Shown::after(Some(&surer), advised(&boar), 4, units);
        assert!(again.before.as_ref() == Some(&first.advice));
        let back = Shown::after(Some(&again), advised(&deer), 5, units);
        assert!(
            back.before.as_ref() == Some(&again.advice),
            "a change is marked against what stood there"
        );
    }
}
