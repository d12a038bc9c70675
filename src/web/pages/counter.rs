//! Every question on one landscape screen, the advice live beside it.

use super::advice::seen::Tonight;
use crate::advice::Advice;
use crate::advice::report::Element;
use crate::need::answers::Units;
use crate::need::counter::Act;
use crate::need::kinds::{KINDS, Kind};
use crate::need::questions::{Control, Part};
use crate::need::{Reply, Value, value};
use crate::t;
use crate::web::components::part::PartControl;
use crate::web::platform;
use crate::web::route::Route;
use crate::web::state::{Action, use_app};
use crate::web::stored;
use crate::web::view::prelude::*;
use crate::wording::advice::{
    change_first, evening, glass, line_parts, need_sentence, sureness, word,
};
use crate::wording::questions::{
    kind as kind_words, option, part as part_name, part_answer, question_short,
};
use crate::wording::{has, say, with_unit};
use std::rc::Rc;

/// The words of an option as short as a chip wants them.
fn chip_words(units: Units, part: Part, key: &str) -> String {
    let short = format!("counter-{}-{}", part.key(), key.replace('.', "_"));
    if has(&short) {
        say(&short, &[])
    } else {
        option(units, part, key)
    }
}

fn row_name(part: Part) -> String {
    let short = format!("counter-{}", part.key());
    if has(&short) {
        say(&short, &[])
    } else {
        part_name(part)
    }
}

/// One part of a question as a row of chips.
#[derive(Properties, PartialEq)]
struct RowProps {
    part: Part,
}

#[component]
fn ChipRow(props: &RowProps) -> Html {
    let Some(app) = use_app() else {
        return Html::default();
    };
    let part = props.part;
    let units = app.answers.units;
    let held = value(&app.answers, part);
    let decade = app
        .answers
        .eye
        .filter(|eye| eye.age_is_decade)
        .and_then(|eye| eye.age_years);
    let (many, options): (bool, Vec<String>) = match part.control() {
        Control::One(list) => (false, list.iter().map(|key| (*key).to_owned()).collect()),
        Control::Many { options, .. } => {
            (true, options.iter().map(|key| (*key).to_owned()).collect())
        }
        Control::Decade(middles) => (false, middles.iter().map(f64::to_string).collect()),
        _ => (false, Vec::new()),
    };
    let is_on = |key: &str| match &held {
        Value::One(held) => held == key,
        Value::Many(list) => list.iter().any(|(held, _)| held == key),
        Value::Number(_) => decade.is_some_and(|decade| decade.to_string() == key),
        _ => false,
    };
    html! {
        <fieldset class="crow">
            <legend class="crow__name">{ row_name(part) }</legend>
            <div class="crow__chips">
                { for options.iter().map(|key| {
                    let app = app.clone();
                    let reply = match part.control() {
                        Control::Decade(_) => Reply::Decade(key.parse().unwrap_or(45.0)),
                        Control::Many { .. } => Reply::Tap(part, key.clone()),
                        _ => Reply::Set(part, Value::One(key.clone())),
                    };
                    let choose = Callback::from(move |_: Event| app.dispatch(Action::Reply(reply.clone())));
                    html! {
                        <label class="segment" key={key.clone()}>
                            <input type={if many { "checkbox" } else { "radio" }} name={format!("counter-{}", part.key())}
                                checked={is_on(key)} onchange={choose} />
                            <span>{ chip_words(units, part, key) }</span>
                        </label>
                    }
                }) }
            </div>
        </fieldset>
    }
}

/// Which sheet lies over the advice.
const SHEETS: [(&str, &[Part]); 4] = [
    ("quarry", &[Part::Uses]),
    ("manner", &[Part::Manners, Part::Covers]),
    ("ranges", &[Part::Ranges]),
    (
        "rifle",
        &[
            Part::Cartridge,
            Part::RifleMass,
            Part::Base,
            Part::SightLine,
        ],
    ),
];

/// The rows of chips, in the order in which one asks.
const ROWS: [Part; 7] = [
    Part::Until,
    Part::Age,
    Part::Glasses,
    Part::Annoys,
    Part::Rings,
    Part::Band,
    Part::Zoom,
];

/// The counter.
#[component]
pub fn CounterPage() -> Html {
    let sheet = use_state(|| None::<usize>);
    let Some(app) = use_app() else {
        return Html::default();
    };
    let units = app.answers.units;
    let kind = KINDS.iter().find(|kind| kind.matches(&app.answers));
    let choose_kind = {
        let app = app.clone();
        Callback::from(move |event: Event| {
            let key = event
                .target_dyn_into::<web_sys::HtmlSelectElement>()
                .map(|select| select.value())
                .unwrap_or_default();
            if let Some(kind) = Kind::from_key(&key) {
                app.dispatch(Action::At(Act::Kind(kind.key)));
            }
        })
    };
    let undo = {
        let app = app.clone();
        Callback::from(move |_: MouseEvent| app.dispatch(Action::At(Act::Undo)))
    };
    let next = {
        let (app, sheet) = (app.clone(), sheet.clone());
        Callback::from(move |_: MouseEvent| {
            sheet.set(None);
            stored::forget_answers();
            app.dispatch(Action::At(Act::NextCustomer));
            platform::focus_soon("counter-kind");
        })
    };
    let open = |at: usize| {
        let sheet = sheet.clone();
        Callback::from(move |_: MouseEvent| {
            sheet.set(Some(at));
            platform::focus_soon("sheet");
        })
    };
    let close = {
        let sheet = sheet.clone();
        Callback::from(move |_: MouseEvent| {
            sheet.set(None);
            platform::focus_soon("title");
        })
    };
    let told = |parts: &[Part]| {
        parts
            .iter()
            .find_map(|part| part_answer(*part, &app.answers))
            .unwrap_or_else(|| t!("counter-open"))
    };
    html! {
        <main class="counter" id="main">
            <div class="counter__asks">
                <div class="crow">
                    <label class="crow__name" for="counter-kind">{ t!("counter-kind") }</label>
                    <select class="field__input field__select counter__kind" id="counter-kind" onchange={choose_kind}>
                        <option value="" selected={kind.is_none()}>{ t!("counter-kind-choose") }</option>
                        { for KINDS.iter().map(|each| html! {
                            <option value={each.key} selected={kind.is_some_and(|kind| kind.key == each.key)}>{ kind_words(each) }</option>
                        }) }
                    </select>
                </div>
                <div class="crow">
                    <div class="counter__sheets">
                        { for SHEETS.iter().enumerate().map(|(at, (key, parts))| {
                            let name = crate::need::questions::Question::from_key(key).map_or_else(String::new, question_short);
                            html! {
                                <button type="button" class="counter__sheet" onclick={open(at)} aria-expanded={(*sheet == Some(at)).to_string()}>
                                    <span class="crow__name">{ name }</span>
                                    <span class="counter__told">{ told(parts) }</span>
                                </button>
                            }
                        }) }
                    </div>
                </div>
                { for ROWS.iter().map(|part| html! { <ChipRow key={part.key()} part={*part} /> }) }
                <div class="counter__acts">
                    <button type="button" class="button" onclick={undo} disabled={app.before.is_empty()}>{ t!("counter-undo") }</button>
                    <button type="button" class="button" onclick={next}>{ t!("counter-next") }</button>
                </div>
            </div>
            <div class="counter__says">
                <div class="counter__head">
                    <h1 id="title" tabindex="-1" class="advice__title">{ t!("opening-door-counter") }</h1>
                    <p class="counter__links">
                        <a class="button" href={Route::Advice.href()}>{ t!("counter-advice") }</a>
                        <a class="button" href={Route::Compare.href()}>{ t!("opening-door-compare") }</a>
                        <a class="button" href={Route::Pictures.href()}>{ t!("advice-pictures") }</a>
                    </p>
                </div>
                if let Some(at) = *sheet {
                    <section class="counter__over" id="sheet" tabindex="-1" aria-label={SHEETS[at.min(SHEETS.len() - 1)].0}>
                        { for SHEETS[at.min(SHEETS.len() - 1)].1.iter().map(|part| html! { <PartControl key={part.key()} part={*part} /> }) }
                        <button type="button" class="button button--primary" onclick={close}>{ t!("counter-done") }</button>
                    </section>
                } else if let Some((advice, is_stale)) = app.advice().filter(|_| app.has_answers()) {
                    <div class={classes!("counter__advice", is_stale.then_some("stale"))} aria-live="polite">
                        <Says {advice} {units} />
                    </div>
                } else {
                    <p class="line" aria-hidden="true"><span class="line__glass">{ t!("line-forming-nothing") }</span></p>
                    <p class="soft">{ t!("counter-begin") }</p>
                }
            </div>
        </main>
    }
}

#[derive(Properties, PartialEq)]
struct SaysProps {
    advice: Rc<Advice>,
    units: Units,
}

/// The live advice: need, line, what it does, three picks, the evening.
#[component]
fn Says(props: &SaysProps) -> Html {
    let (advice, units) = (&props.advice, props.units);
    let Some(first) = advice.picks.first() else {
        return Html::default();
    };
    let parts = line_parts(&first.line, &first.ranges, units);
    let rest: Vec<String> = parts
        .into_iter()
        .filter(|part| part.element != Element::MagHigh)
        .map(|part| part.text)
        .collect();
    let share = |value: f64| with_unit(value * 100.0, 0, "%");
    html! {
        <>
            <p>{ need_sentence(advice, units) }</p>
            <p class="line">
                <span class="line__glass">{ glass(&first.line) }</span>
                <span class="counter__rest">{ rest.join(", ") }</span>
            </p>
            <p>{ evening(advice, first, units) }</p>
            { for sureness(advice, units).into_iter().take(1).map(|said| html! { <p class="sureness">{ said }</p> }) }
            <table class="picks picks--flat">
                <thead><tr>
                    <th scope="col">{ t!("advice-others-name") }</th>
                    <th scope="col">{ t!("advice-others-gain") }</th>
                    <th scope="col">{ t!("advice-others-loss") }</th>
                    <th scope="col">{ t!("advice-others-served") }</th>
                </tr></thead>
                <tbody>
                    { for advice.picks.iter().take(3).enumerate().map(|(at, pick)| {
                        let (gain, loss) = change_first(&pick.against_first, units);
                        html! {
                            <tr class={(at == 0).then_some("picks__row--first")}>
                                <th scope="row"><span class="picks__line"><span>{ glass(&pick.line) }</span></span>
                                    <span class="picks__because">{ word("because", &pick.because) }</span></th>
                                if at == 0 {
                                    <td colspan="2" class="same">{ t!("advice-this-one") }</td>
                                } else {
                                    <td>{ gain }</td><td>{ loss }</td>
                                }
                                <td>{ share(pick.served.value) }</td>
                            </tr>
                        }
                    }) }
                </tbody>
            </table>
            <Tonight advice={advice.clone()} {units} />
        </>
    }
}
