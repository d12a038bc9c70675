//! This one or that one.

use super::first_question;
use crate::advice::report::LastLight;
use crate::advice::report_versus::Side;
use crate::advice::versus::{Bench, Sight};
use crate::drawing::dusk::{Evening, Until};
use crate::need::answers::Answers;
use crate::need::resolve;
use crate::quantity::Estimate;
use crate::sight::typed_line::TypedSight;
use crate::sky::evening::{Night, SunCourse};
use crate::sky::place::Place;
use crate::t;
use crate::web::components::explained;
use crate::web::components::own::OwnField;
use crate::web::pictures::{DuskStrip, StripRow};
use crate::web::platform;
use crate::web::state::use_app;
use crate::web::view::prelude::*;
use crate::wording::advice::{capitalised, joined};
use crate::wording::versus::{Row, measure, name, notes, problem, rows};
use std::rc::Rc;

/// A line as a pick has it, to be typed on.
fn line_of(line: &crate::advice::report::Line) -> String {
    let powers = if (line.mag_high - line.mag_low).abs() < 1e-9 {
        shortest(line.mag_low)
    } else {
        filled!("{}-{}", line.mag_low, line.mag_high)
    };
    powers + &filled!("x{}, {} mm", line.objective_mm, line.tube_mm)
}

fn cells(row: &Row) -> Html {
    let cell = |value: &str, better: bool| {
        html! {
            <span role="cell" class={classes!("versus__value", better.then_some("versus__value--better"))}>{ value }</span>
        }
    };
    html! {
        <div role="row" class={classes!("versus__row", (!row.decided).then_some("versus__row--open"))}>
            <span role="rowheader" class="versus__what">{ explained(row.what.clone()) }</span>
            { cell(&row.one, row.one_is_better == Some(true)) }
            { cell(&row.other, row.one_is_better == Some(false)) }
            <span role="cell" class="versus__verdict">{ &row.verdict }</span>
        </div>
    }
}

/// The typical evening for the strip; none where the Sun does not set then.
fn evening(bench: &Bench, answers: &Answers) -> Option<Rc<Evening>> {
    let place = resolve(answers).place;
    let longitude = place.longitude_deg_east.value;
    let place = Place::new(place.latitude_deg.value, longitude).ok()?;
    let dusk = bench.dusk();
    let night = Night::from_noon(dusk.noon_unix_s(longitude), &place).ok()?;
    let offset_min = platform::offset_min_at(dusk.noon_unix_s(longitude));
    let evening = Evening::of(&night, &dusk.scene, offset_min);
    (evening.sun == SunCourse::Sets && dusk.out_late).then(|| Rc::new(evening))
}

fn strip_row(side: &Side) -> StripRow {
    StripRow {
        name: name(side).into(),
        until: match side.last_light {
            LastLight::At { minutes, spread } => Until::Minute(Estimate::new(minutes, spread)),
            LastLight::Always => Until::Throughout,
            LastLight::Never => Until::Never,
        },
        pick: false,
    }
}

/// Two sights, beside each other, for whoever answered.
#[component]
pub fn VersusPage() -> Html {
    let one = use_state_eq(|| "8x56".to_owned());
    let other = use_state_eq(|| "3-12x50".to_owned());
    let Some(app) = use_app() else {
        return Html::default();
    };
    let units = app.answers.units;
    let is_answered = app.has_answers();
    let pick = app
        .advice()
        .and_then(|(advice, _)| advice.picks.first().map(|pick| line_of(&pick.line)));
    let own = app
        .answers
        .sight_now
        .as_ref()
        .and_then(|now| now.line.clone())
        .filter(|line| !line.is_empty());
    let field = |id: &'static str, label: String, held: &UseStateHandle<String>| {
        let ontext = {
            let held = held.clone();
            Callback::from(move |text: String| held.set(text))
        };
        let wrong = TypedSight::parse(held.as_str())
            .err()
            .map(|why| AttrValue::from(problem(&why)));
        html! {
            <OwnField {id} {label} long=true text={(**held).clone()} {wrong} {ontext} />
        }
    };
    let fill = |words: String, line: Option<String>, held: &UseStateHandle<String>| {
        line.filter(|line| *line != **held).map(|line| {
            let held = held.clone();
            let onclick = Callback::from(move |_: MouseEvent| held.set(line.clone()));
            html! { <button type="button" class="button button--quiet" {onclick}>{ words }</button> }
        })
    };
    let read = |held: &UseStateHandle<String>| TypedSight::parse(held.as_str()).ok();
    let typed = match (read(&one), read(&other)) {
        (Some(one), Some(other)) => Some((Sight::Typed(one), Sight::Typed(other))),
        _ => None,
    };
    // What the answers make of the shooter is computed once, not for each letter.
    let bench = use_memo(app.answers.clone(), |answers| Bench::new(&resolve(answers)));
    let evening = {
        let bench = bench.clone();
        use_memo(app.answers.clone(), move |answers| evening(&bench, answers))
    };
    let beside = use_memo((typed, app.answers.clone()), |(typed, _)| {
        typed.as_ref().map(|(one, other)| bench.beside(one, other))
    });
    html! {
        <main class="page page--wide" id="main">
            <h1 id="title" tabindex="-1">{ t!("opening-door-compare") }</h1>
            <p>{ t!("versus-lead") }{ " " }{ t!("versus-hint") }</p>
            <div class="versus__fields">
                <div>
                    { field("versus-one", t!("versus-first"), &one) }
                    { for fill(t!("versus-take-own"), own, &one) }
                </div>
                <div>
                    { field("versus-other", t!("versus-second"), &other) }
                    { for fill(t!("versus-take-pick"), pick, &other) }
                </div>
            </div>
            <p class="soft">
                if is_answered {
                    { t!("versus-for-you") }
                } else {
                    { t!("versus-for-usual") }{ " " }
                    <a href={first_question(&app.answers).href()}>{ t!("versus-answer") }</a>
                }
            </p>
            if let Some(beside) = (*beside).as_ref() {
                <section aria-live="polite">
                    <h2 class="unseen" id="versus-table">{ t!("versus-table") }</h2>
                    <div class="versus" role="table" aria-labelledby="versus-table">
                        <div role="row" class="versus__row versus__row--head">
                            <span role="columnheader" class="versus__what"><span class="unseen">{ t!("versus-what") }</span></span>
                            <span role="columnheader" class="versus__name">{ name(&beside.one) }</span>
                            <span role="columnheader" class="versus__name">{ name(&beside.other) }</span>
                            <span role="columnheader" class="unseen">{ t!("versus-table") }</span>
                        </div>
                        { for rows(beside, units).iter().map(cells) }
                    </div>
                    <p class="small soft">{
                        if beside.out_late {
                            t!("versus-late", one = mag(beside.one.mag_late), other = mag(beside.other.mag_late))
                        } else {
                            t!("versus-not-late")
                        }
                    }</p>
                </section>
                if let Some(evening) = (*evening).as_ref() {
                    <section>
                        <h2>{ t!("versus-evening") }</h2>
                        <DuskStrip evening={evening.clone()} rows={vec![strip_row(&beside.one), strip_row(&beside.other)]} label={t!("versus-evening")} />
                    </section>
                }
                if !beside.settle.is_empty() {
                    <section>
                        <h2>{ t!("versus-measure") }</h2>
                        <p>{ capitalised(&joined(&measure(beside))) }{ "." }</p>
                    </section>
                }
                <section>
                    <h2>{ t!("versus-open") }</h2>
                    <ul class="lines">
                        { for notes(&beside.one, units).into_iter().chain(notes(&beside.other, units)).map(|note| html! { <li>{ explained(note) }</li> }) }
                    </ul>
                </section>
            }
        </main>
    }
}

fn mag(value: f64) -> String {
    let whole = (value - value.round()).abs() < 0.05;
    t!(
        "setting-mag",
        value = crate::wording::number(value, usize::from(!whole))
    )
}
