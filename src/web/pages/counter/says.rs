//! What is advised, as it stands while one answers: nothing moves, what changed is marked.

use super::super::advice::seen::{Tonight, is_by_day};
use crate::advice::Advice;
use crate::advice::report::Element;
use crate::need::answers::Units;
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

/// The advice once nothing has been touched for a while; `is_held`: a finger lies on it.
pub fn use_shown(app: &App, is_held: bool) -> Option<Shown> {
    let shown = use_state_eq(|| None::<Shown>);
    let coming = app
        .advice()
        .filter(|(_, is_stale)| !is_stale)
        .map(|(advice, _)| advice);
    let is_open = app.has_answers();
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
                    let (now, before) = match &*shown {
                        // The same advice, told more surely: what changed with it stays marked.
                        Some(now) if now.revision == revision => {
                            (Some(&now.advice), now.before.clone())
                        }
                        Some(now) => (Some(&now.advice), Some(now.advice.clone())),
                        None => (None, None),
                    };
                    if now != Some(&advice) {
                        let wait_ms = if now.is_some() { REST_MS } else { 0 };
                        timer = Some(Timeout::new(wait_ms, move || {
                            shown.set(Some(Shown {
                                advice,
                                before,
                                revision,
                            }));
                        }));
                    }
                }
                move || drop(timer)
            },
        );
    }
    (*shown).clone().filter(|_| is_open)
}

/// All that is said about an advice, piece by piece, so that what changed can be marked.
struct Said {
    need: String,
    glass: String,
    rest: String,
    evening: String,
    sure: String,
    warned: String,
    picks: Vec<[String; 5]>,
}

impl Said {
    fn of(advice: &Advice, units: Units) -> Option<Self> {
        let first = advice.picks.first()?;
        let rest: Vec<String> = line_parts(&first.line, &first.ranges, units)
            .into_iter()
            .filter(|part| part.element != Element::MagHigh)
            .map(|part| part.text)
            .collect();
        Some(Self {
            need: need_sentence(advice, units),
            glass: glass(&first.line),
            rest: rest.together(", "),
            evening: evening(advice, first, units),
            sure: sureness(advice, units)
                .into_iter()
                .next()
                .unwrap_or_default(),
            warned: advice
                .warnings
                .first()
                .map(|warning| word("warning", &warning.key))
                .unwrap_or_default(),
            picks: advice
                .picks
                .iter()
                .take(3)
                .enumerate()
                .map(|(at, pick)| {
                    let (gain, loss) = if at == 0 {
                        Default::default()
                    } else {
                        change_first(&pick.against_first, units)
                    };
                    [
                        glass(&pick.line),
                        word("because", &pick.because),
                        gain,
                        loss,
                        with_unit(pick.served.value * 100.0, 0, "%"),
                    ]
                })
                .collect(),
        })
    }
}

/// Words, marked for a while if they were others before.
fn marked(now: &str, before: Option<&str>) -> Html {
    let is_new = before.is_some_and(|before| before != now);
    html! { <span key={now.to_owned()} class={is_new.then_some("changed")}>{ now }</span> }
}

/// Need, line, what it does, three picks, the evening.
pub fn line(shown: &Shown, units: Units) -> Html {
    let Some(now) = Said::of(&shown.advice, units) else {
        return Html::default();
    };
    let before = shown
        .before
        .as_ref()
        .and_then(|before| Said::of(before, units));
    let was = before.as_ref();
    html! {
        <div class="counter__advice">
            <p class="counter__need">{ marked(&now.need, was.map(|was| was.need.as_str())) }</p>
            <p class="line">
                <span class="line__glass">{ marked(&now.glass, was.map(|was| was.glass.as_str())) }</span>
                <span class="counter__rest">{ marked(&now.rest, was.map(|was| was.rest.as_str())) }</span>
            </p>
            <p class="counter__does">{ marked(&now.evening, was.map(|was| was.evening.as_str())) }</p>
            <p class="counter__sure">{ marked(&now.sure, was.map(|was| was.sure.as_str())) }</p>
            if !now.warned.is_empty() {
                <p class="marked counter__warned">
                    <span class="marked__sign marked__sign--fails" aria-hidden="true">{ "×" }</span>
                    { marked(&now.warned, was.map(|was| was.warned.as_str())) }
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
                    { for now.picks.iter().enumerate().map(|(at, pick)| {
                        let was = was.and_then(|was| was.picks.get(at));
                        let cell = |place: usize| marked(&pick[place], was.map(|was| was[place].as_str()));
                        html! {
                            <tr class={(at == 0).then_some("picks__row--first")}>
                                <th scope="row" colspan={(at == 0).then_some("3")}><span class="picks__line">{ cell(0) }</span>
                                    <span class="picks__because">{ cell(1) }</span></th>
                                if at > 0 {
                                    <td>{ cell(2) }</td>
                                    <td>{ cell(3) }</td>
                                }
                                <td>{ cell(4) }</td>
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
