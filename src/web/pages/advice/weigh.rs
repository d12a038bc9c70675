//! How this person weighs grams, height and money; what was assumed; what would change it.

use super::head::Props;
use crate::advice::report::AnswerMatters;
use crate::need::answers::{Answers, Units, Weights};
use crate::need::flow::{State as Answered, state};
use crate::need::questions::Question;
use crate::plain::Gathered;
use crate::plain::Together;
use crate::t;
use crate::web::components::fold;
use crate::web::route::Route;
use crate::web::state::{Action, use_app};
use crate::web::view::prelude::*;
use crate::wording::advice::{elements, line_text, ranges_taken};
use crate::wording::questions::{question, question_unsure};
use crate::wording::{number, with_unit};

/// One step of a rate, as a factor.
const STEP: f64 = 1.5;
/// A rate below this is nothing at all.
const LEAST_POINTS: f64 = 0.05;
/// The most that a rate can be moved to.
const MOST_POINTS: f64 = 20.0;

fn moved(points: f64, up: bool) -> f64 {
    if up {
        (points.max(LEAST_POINTS) * STEP).min(MOST_POINTS)
    } else {
        (points / STEP).max(LEAST_POINTS)
    }
}

/// The exchange rates, each to be moved.
#[component]
pub fn Weigh(props: &Props) -> Html {
    let Some(app) = use_app() else {
        return Html::default();
    };
    let rates = props.advice.extent.rates;
    let percent = |points: f64| with_unit(points, usize::from(points < 9.95), "%");
    let row = |words: String, points: f64, put: fn(&mut Weights, f64)| {
        let button = |up: bool| {
            let app = app.clone();
            let click = Callback::from(move |_: MouseEvent| {
                let mut weights = app.answers.weights.unwrap_or_default();
                put(&mut weights, moved(points, up));
                app.dispatch(Action::Answer(Answers {
                    weights: Some(weights),
                    ..app.answers.clone()
                }));
            });
            let name = if up {
                t!("advice-rates-more")
            } else {
                t!("advice-rates-less")
            };
            html! {
                <button type="button" class="button" aria-label={format!("{name}: {words}")} onclick={click}>{ if up { "+" } else { "−" } }</button>
            }
        };
        html! {
            <li class="weigh__row">
                <span>{ &words }</span>
                <span class="weigh__steps noprint">{ button(false) }{ button(true) }</span>
            </li>
        }
    };
    let sum = t!(
        "advice-rates-sum",
        mass = percent(rates.mass_points_per_100_g),
        height = percent(rates.height_points_per_10_mm),
        money = percent(rates.money_points_per_band)
    );
    let inside = html! {
        <>
            <p class="soft">{ t!("advice-rates-lead") }</p>
            <ul class="weigh">
                { row(t!("advice-rates-mass", amount = percent(rates.mass_points_per_100_g)),
                    rates.mass_points_per_100_g, |weights, to| weights.mass_percent_per_100_g = Some(to)) }
                { row(t!("advice-rates-height", amount = percent(rates.height_points_per_10_mm)),
                    rates.height_points_per_10_mm, |weights, to| weights.height_percent_per_10_mm = Some(to)) }
                { row(t!("advice-rates-money", amount = percent(rates.money_points_per_band)),
                    rates.money_points_per_band, |weights, to| weights.money_percent_per_band = Some(to)) }
            </ul>
            <p class="small soft">{ t!("advice-extent",
                candidates = f64::from(props.advice.extent.candidates),
                occasions = f64::from(props.advice.extent.occasions),
                tie = with_unit(props.advice.extent.near_tie_points, 0, "%")) }</p>
        </>
    };
    html! { <div class="noprint">{ fold("weigh", t!("advice-rates"), sum, inside) }</div> }
}

/// A lag that only a line has which the other answer forbids, points.
const OUT_POINTS: f64 = 50.0;

fn would_be(answer: &AnswerMatters, units: Units) -> String {
    let (elements, line) = (elements(&answer.elements), line_text(&answer.then, units));
    if answer.behind_points > OUT_POINTS {
        t!("advice-would-be-out", elements = elements, line = line)
    } else {
        t!(
            "advice-would-be",
            elements = elements,
            line = line,
            behind = number(answer.behind_points, 1)
        )
    }
}

/// A question that is put to this person: who shoots no game is not asked what must be made out.
fn asked_of(key: &str, answers: &Answers) -> Option<&'static Question> {
    Question::from_key(key).filter(|asked| asked.is_asked(answers))
}

/// What another answer would change, and what was assumed.
#[component]
pub fn WouldChange(props: &Props) -> Html {
    let Some(app) = use_app() else {
        return Html::default();
    };
    let changing: Vec<Html> = props
        .advice
        .surety
        .iter()
        .flat_map(|surety| &surety.answers)
        .filter(|answer| answer.changes_line)
        .filter_map(|answer| {
            let asked = asked_of(&answer.question, &app.answers)?;
            Some(html! {
                <li>
                    <a href={Route::Question(asked.key.into()).href()}>{ question(asked) }</a>{ " " }
                    { would_be(answer, props.units) }
                </li>
            })
        })
        .gathered();
    let assumed: Vec<Html> = props
        .advice
        .assumed
        .iter()
        .filter_map(|key| {
            // What is answered in part is not told as if it had been left out.
            let asked = asked_of(key, &app.answers)
                .filter(|asked| state(&app.answers, asked) != Answered::Answered)?;
            Some(html! {
                <li>
                    <a href={Route::Question(asked.key.into()).href()}>{ question(asked) }</a>
                    <span class="block soft small">{ question_unsure(asked, &app.answers) }</span>
                </li>
            })
        })
        .gathered();
    let taken = ranges_taken(&props.advice, props.units);
    if changing.is_empty() && assumed.is_empty() && taken.is_none() {
        return Html::default();
    }
    let mut sum = Vec::new();
    // What another answer would change is known once all worlds are tried.
    if props.advice.surety.is_some() {
        sum.push(if changing.is_empty() {
            t!("advice-change-none")
        } else {
            t!("advice-change-sum", count = changing.len())
        });
    }
    if !assumed.is_empty() {
        sum.push(t!("advice-assumed-sum", count = assumed.len()));
    }
    let inside = html! {
        <>
            if !changing.is_empty() {
                <ul class="plainlist">{ for changing }</ul>
            }
            if let Some(said) = taken {
                <p>{ said }{ " " }<a href={Route::Question("distance".into()).href()}>{ t!("ranges-measured") }</a></p>
            }
            if !assumed.is_empty() {
                <h3>{ t!("advice-assumed") }</h3>
                <p class="soft">{ t!("check-sharpen-lead") }</p>
                <ul class="plainlist">{ for assumed }</ul>
            }
        </>
    };
    html! { <div class="noprint">{ fold("change", t!("advice-change-what"), sum.together(" "), inside) }</div> }
}
