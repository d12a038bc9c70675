//! One question.

use super::about::units_choice;
use crate::need::answers::Answers;
use crate::need::flow::{self, State as Answered};
use crate::need::questions::{Control, Part, QUESTIONS, Question, Stage, is_part_asked};
use crate::need::zones::zone_place_deg;
use crate::need::{Reply, Value, value};
use crate::plain::Gathered;
use crate::plain::Together;
use crate::t;
use crate::web::components::part::PartControl;
use crate::web::components::{Bar, Choice, Forming, explained};
use crate::web::fields::{Field, fields_of, problem};
use crate::web::platform;
use crate::web::route::Route;
use crate::web::state::{Action, App, use_app};
use crate::web::view::prelude::*;
use crate::wording::number;
use crate::wording::questions::{
    option, option_hint, part as part_label, part_hint, question as question_title, question_how,
    question_unsure, question_why,
};
use crate::wording::terms::{term, terms_in};

/// The place after a question.
#[must_use]
pub fn after(answers: &Answers, question: &Question) -> Route {
    match (flow::next(answers, question), question.stage) {
        (Some(next), _) => Route::Question(next.key.into()),
        (None, Stage::First) => Route::Check,
        (None, Stage::Sharpen) => Route::Advice,
    }
}

fn before(answers: &Answers, question: &Question) -> Route {
    match (flow::previous(answers, question), question.stage) {
        (Some(previous), _) => Route::Question(previous.key.into()),
        (None, Stage::First) => Route::Opening,
        (None, Stage::Sharpen) => Route::Check,
    }
}

/// The place of the browser's time zone, to take with one tap while no place is answered.
fn zone_guess(app: &App) -> Html {
    let guess = || {
        let zone = platform::time_zone()?;
        let (latitude, longitude) = zone_place_deg(&zone)?;
        Some((zone, latitude, longitude))
    };
    let answered = |part| value(&app.answers, part) != Value::Nothing;
    let Some((zone, latitude, longitude)) = guess() else {
        return Html::default();
    };
    if answered(Part::Latitude) || answered(Part::Longitude) {
        return Html::default();
    }
    let take = {
        let app = app.clone();
        Callback::from(move |_: MouseEvent| {
            for (part, degrees) in [(Part::Latitude, latitude), (Part::Longitude, longitude)] {
                app.dispatch(Action::Reply(Reply::Set(part, Value::Number(degrees))));
            }
        })
    };
    let words = t!(
        "place-from-zone",
        zone = zone.replace('_', " "),
        latitude = number(latitude, 0),
        longitude = number(longitude, 0)
    );
    html! { <p><button type="button" class="button" onclick={take}>{ words }</button></p> }
}

/// The trade terms in labels, options and hints, which cannot be tapped where they stand; those
/// of the line under the title are explained there.
fn terms_here(question: &Question, answers: &Answers) -> Option<String> {
    let why = question_why(question);
    let above = terms_in(&why);
    let mut said = String::new();
    for part in question
        .all_parts()
        .filter(|part| is_part_asked(*part, answers))
    {
        let options: &[&str] = match part.control() {
            Control::One(options) | Control::Many { options, .. } => options,
            _ => &[],
        };
        let options = options.iter().flat_map(|key| {
            let hint = option_hint(part, key).unwrap_or_default();
            [option(answers.units, part, key), hint]
        });
        for words in [part_label(part), part_hint(part).unwrap_or_default()]
            .into_iter()
            .chain(options)
        {
            said.push_str(&words);
            said.push('\n');
        }
    }
    let names: Vec<String> = terms_in(&said)
        .into_iter()
        .filter(|(_, key)| !above.iter().any(|(_, said)| said == key))
        .filter_map(|(_, key)| Some(term(key)?.0))
        .gathered();
    (!names.is_empty()).then(|| t!("question-terms", terms = names.together(" · ")))
}

/// Which question.
#[derive(Properties, PartialEq)]
pub struct Props {
    /// Its key.
    pub question: AttrValue,
}

/// One question as a page.
#[component]
pub fn QuestionPage(props: &Props) -> Html {
    let asked_to_go = use_state(|| false);
    let Some(app) = use_app() else {
        return Html::default();
    };
    let Some(question) = Question::from_key(&props.question) else {
        return super::missing(&props.question);
    };
    let answers = &app.answers;
    let wrong: Vec<(Field, String)> = fields_of(question, answers)
        .into_iter()
        .filter_map(|field| Some((field, problem(field, answers, &app.typed)?)))
        .gathered();
    let next = after(answers, question).href();
    let go_on = {
        let (app, asked_to_go, wrong) = (app.clone(), asked_to_go.clone(), wrong.clone());
        let has_ranges = question.parts.contains(&Part::Ranges);
        Callback::from(move |_: MouseEvent| {
            if wrong.is_empty() {
                if has_ranges
                    && value(&app.answers, Part::Ranges) == Value::Nothing
                    && !app.answers.not_sure.iter().any(|key| key == "ranges")
                {
                    app.dispatch(Action::Reply(Reply::RangesFit));
                }
                platform::go_to(&next);
            } else {
                asked_to_go.set(true);
                platform::focus_soon("errors");
            }
        })
    };
    let unsure = {
        let app = app.clone();
        let key = question.key;
        Callback::from(move |on: bool| {
            app.dispatch(Action::Reply(if on {
                Reply::NotSure(key)
            } else {
                Reply::Clear(key)
            }));
        })
    };
    let is_unsure = flow::state(answers, question) == Answered::NotSure;
    let shown: Vec<Part> = question
        .parts
        .iter()
        .copied()
        .filter(|part| is_part_asked(*part, answers))
        .gathered();
    let alone = shown.len() == 1;
    let more: Vec<Part> = question
        .more
        .iter()
        .copied()
        .filter(|part| is_part_asked(*part, answers))
        .gathered();
    let more_used = more.iter().any(|part| {
        // Also while something is typed that cannot be: its message must not fold away.
        value(answers, *part) != Value::Nothing || app.typed.has(&Field::Part(*part).id())
    }) || wrong
        .iter()
        .any(|(field, _)| matches!(field, Field::Part(part) if more.contains(part)));
    let title = question_title(question);
    html! {
        <main class={classes!("page", "page--barred", if app.went_back { "page--enter-back" } else { "page--enter" })} id="main">
            <p class="progress">{ progress(answers, question) }</p>
            <h1 id="title" tabindex="-1">{ title }</h1>
            <p class="why">{ explained(question_why(question)) }</p>
            if *asked_to_go && !wrong.is_empty() {
                <div class="summary" id="errors" tabindex="-1" role="alert">
                    <h2>{ t!("question-errors", count = wrong.len()) }</h2>
                    <ul>
                        { for wrong.iter().map(|(field, words)| {
                            let id = field.id();
                            let go = Callback::from(move |event: MouseEvent| {
                                event.prevent_default();
                                platform::focus(&id);
                            });
                            html! { <li><a href={format!("#{}", field.id())} onclick={go}>{ words }</a></li> }
                        }) }
                    </ul>
                </div>
            }
            if question.parts.contains(&Part::Latitude) { { zone_guess(&app) } }
            if question.parts.contains(&Part::Until) { <super::stop::StopStrip /> }
            if question.parts.contains(&Part::Ranges) { { units_choice(&app) } }
            { for shown.iter().map(|part| html! { <PartControl key={part.key()} part={*part} alone={alone} /> }) }
            <Choice group="unsure" value={question.key} name={t!("answer-unsure")} many={true} unsure={true}
                hint={AttrValue::from(t!("question-unsure-assumes", assumption = question_unsure(question, answers)))}
                chosen={is_unsure} onchoose={unsure} />
            if !more.is_empty() {
                <details class="opens" open={more_used}>
                    <summary>{ t!("question-more") }</summary>
                    <div class="opens__in opens__parts">
                        { for more.iter().map(|part| html! { <PartControl key={part.key()} part={*part} /> }) }
                    </div>
                </details>
            }
            if let Some(terms) = terms_here(question, answers) {
                <p class="small soft">{ explained(terms) }</p>
            }
            if let Some(how) = question_how(question) {
                <details class="opens">
                    <summary>{ t!("question-how") }</summary>
                    <div class="opens__in"><p>{ explained(how) }</p></div>
                </details>
            }
            <Bar above={html! { <Forming /> }}>
                <a class="button" href={before(answers, question).href()}>{ t!("page-back") }</a>
                <button type="button" class="button button--primary" onclick={go_on}>{ t!("page-next") }</button>
            </Bar>
        </main>
    }
}

fn progress(answers: &Answers, question: &Question) -> String {
    if question.stage == Stage::Sharpen {
        return t!("question-sharpen");
    }
    flow::progress(answers, question).map_or_else(String::new, |progress| {
        let left = if progress.position == progress.of {
            0
        } else {
            progress.seconds_left.div_ceil(60)
        };
        t!(
            "question-progress",
            here = progress.position,
            all = progress.of,
            minutes = left
        )
    })
}

/// Where a question stands among all of them.
#[must_use]
pub fn place(key: &str) -> usize {
    QUESTIONS
        .iter()
        .position(|question| question.key == key)
        .unwrap_or(0)
}
