//! What stands behind the line: what does not fit, the evening, the load on its way, the rings.

use crate::advice::Advice;
use crate::advice::report::{Effect, FlightRow, Note, NoteKey, Quantity};
use crate::drawing::dusk::Clock;
use crate::need::answers::{Answers, Units};
use crate::need::doubts;
use crate::need::questions::Question;
use crate::plain::Gathered;
use crate::t;
use crate::web::components::fold;
use crate::web::platform;
use crate::web::route::Route;
use crate::web::view::prelude::*;
use crate::wording::advice::quantity_short;
use crate::wording::notes::{Place, at, in_words, sources, spoken};
use crate::wording::number;
use crate::wording::problems::doubt;
use crate::wording::questions::question_short;

/// The question that puts a trouble right.
fn mended_at(key: NoteKey) -> &'static str {
    match key {
        NoteKey::ZeroOutOfReach | NoteKey::FallsShort | NoteKey::NoFlight => "rifle",
        NoteKey::PolarDay | NoteKey::PolarNight => "place",
        _ => "mount",
    }
}

fn to_question(key: &str) -> Html {
    Question::from_key(key).map_or_else(Html::default, |asked| {
        html! {
            <a href={Route::Question(asked.key.into()).href()}>{ t!("check-change-what", question = question_short(asked)) }</a>
        }
    })
}

/// Figures that look as if meant otherwise, and what does not fit; nothing where all is well.
pub fn troubles(advice: &Advice, answers: &Answers) -> Html {
    let asked: Vec<(String, &str)> = doubts(answers)
        .iter()
        .map(|each| (doubt(each), "rifle"))
        .chain(
            at(&advice.notes, Place::Trouble)
                .map(|note| (spoken(note, answers.units), mended_at(note.key))),
        )
        .gathered();
    if asked.is_empty() {
        return Html::default();
    }
    html! {
        <section class="troubles" aria-label={t!("advice-troubles")}>
            { for asked.into_iter().map(|(words, question)| html! {
                <p class="caution">{ words }{ " " }{ to_question(question) }</p>
            }) }
        </section>
    }
}

/// Notes as a list; nothing if there are none.
pub fn list<'a>(notes: impl Iterator<Item = &'a Note>, units: Units) -> Html {
    let words: Vec<String> = notes.map(|note| spoken(note, units)).gathered();
    if words.is_empty() {
        return Html::default();
    }
    html! { <ul class="behind">{ for words.into_iter().map(|words| html! { <li>{ words }</li> }) }</ul> }
}

/// Formulas and sources, each a paragraph.
pub fn formulas(words: Vec<String>) -> Html {
    html! { <>{ for words.into_iter().map(|words| html! { <p class="formula">{ words }</p> }) }</> }
}

const EVENING: [Place; 4] = [
    Place::EveningEnds,
    Place::EveningSteps,
    Place::EveningAir,
    Place::EveningNight,
];

fn evening_title(place: Place) -> String {
    match place {
        Place::EveningEnds => t!("advice-evening-ends"),
        Place::EveningSteps => t!("advice-evening-steps"),
        Place::EveningAir => t!("advice-evening-air"),
        _ => t!("advice-evening-night"),
    }
}

/// The clock at sunrise, as this device tells it; nothing where there is none.
fn sunrise(advice: &Advice) -> String {
    advice
        .facts
        .tonight
        .sunrise_s
        .map_or_else(String::new, |at_s| {
            let minute = (at_s / 60.0 + platform::offset_min_at(at_s)).round();
            t!("advice-sunrise-at", clock = Clock::at(minute).to_string())
        })
}

/// Behind the evening: the morning, and what each step and the weather are worth.
pub fn evening(advice: &Advice, units: Units) -> Html {
    let notes = &advice.notes;
    let groups: Vec<Place> = EVENING
        .into_iter()
        .filter(|place| at(notes, *place).next().is_some())
        .gathered();
    if groups.is_empty() {
        return Html::default();
    }
    let all = || {
        notes
            .iter()
            .filter(|note| EVENING.contains(&crate::wording::notes::known(note.key).place))
    };
    // The weather moves the evening more than any sight.
    let sum = at(notes, Place::EveningAir)
        .find(|note| note.key == NoteKey::Weather)
        .map_or_else(String::new, |note| spoken(note, units));
    let inside = html! {
        <>
            { for at(notes, Place::Morning).map(|note| html! { <p>{ spoken(note, units) }{ " " }{ sunrise(advice) }</p> }) }
            { for groups.into_iter().map(|place| html! {
                <div>
                    <p class="behind__title">{ evening_title(place) }</p>
                    { list(at(notes, place), units) }
                </div>
            }) }
            <div class="behind noprint">{ formulas(sources(all())) }</div>
        </>
    };
    fold("behind-evening", t!("advice-evening-behind"), sum, inside)
}

fn flight_row(row: &FlightRow, units: Units, per_cm: f64) -> Html {
    let told = |quantity, value: f64| quantity_short(quantity, value, 0.0, units);
    let small = |cm: f64| number(cm * per_cm, 1);
    // At the zero the path is the line itself.
    let path = if row.path_cm.abs() < 0.05 {
        number(0.0, 0)
    } else {
        t!(
            "amount-plus-minus",
            value = small(row.path_cm),
            spread = small(row.path_spread_cm.max(0.1))
        )
    };
    html! {
        <tr>
            <th scope="row">{ told(Quantity::RangeM, row.range_m) }</th>
            <td>{ path }</td>
            <td>{ small(row.wobble_cm) }</td>
            <td>{ small(row.drift_cm) }</td>
            <td>{ told(Quantity::SpeedMS, row.speed_m_s) }<br />{ told(Quantity::EnergyJ, row.energy_j) }</td>
            <td>{ told(Quantity::FlightSeconds, row.time_s) }</td>
        </tr>
    }
}

/// The load on its way: where it lies at the farthest range; table and notes open in place.
pub fn flight(advice: &Advice, units: Units) -> Html {
    let notes = &advice.notes;
    let (per_cm, unit) = match units {
        Units::Metric => (1.0, "cm"),
        Units::Imperial => (1.0 / 2.54, "in"),
    };
    let Some(last) = advice.flight.last() else {
        return Html::default();
    };
    let sum = t!(
        "advice-flight-sum",
        zero = quantity_short(Quantity::RangeM, advice.facts.zero_m, 0.0, units),
        range = quantity_short(Quantity::RangeM, last.range_m, 0.0, units),
        path = in_words(
            &Effect {
                quantity: Quantity::PathCm,
                value: last.path_cm,
                spread: last.path_spread_cm
            },
            units
        )
    );
    let inside = html! {
        <>
            { for at(notes, Place::Load).map(|note| html! { <p>{ spoken(note, units) }{ " " }{ to_question("rifle") }</p> }) }
            <div class="tablewrap" tabindex="0" role="region" aria-label={t!("advice-flight")}>
                <table class="figures figures--flight">
                    <thead><tr>
                        <th scope="col">{ t!("flight-range") }</th>
                        <th scope="col">{ t!("flight-path", unit = unit) }</th>
                        <th scope="col">{ t!("flight-wobble", unit = unit) }</th>
                        <th scope="col">{ t!("flight-drift", unit = unit) }</th>
                        <th scope="col">{ t!("flight-speed") }</th>
                        <th scope="col">{ t!("flight-time") }</th>
                    </tr></thead>
                    <tbody>{ for advice.flight.iter().map(|row| flight_row(row, units, per_cm)) }</tbody>
                </table>
            </div>
            { list(at(notes, Place::Flight), units) }
            { formulas(sources(at(notes, Place::Load).chain(at(notes, Place::Flight)))) }
        </>
    };
    fold("flight", t!("advice-flight"), sum, inside)
}

/// The rings in a line, and the way to the mounting sheet.
pub fn rings(advice: &Advice, units: Units) -> Html {
    let mut height = at(&advice.notes, Place::Height);
    let Some(first) = height.next() else {
        return Html::default();
    };
    let Some(pick) = advice.picks.first() else {
        return Html::default();
    };
    let sum = t!(
        "advice-rings-sum",
        tube = number(
            pick.line.tube_mm,
            usize::from(pick.line.tube_mm.fract() > 0.0)
        ),
        height = quantity_short(
            Quantity::CentreHeightMm,
            pick.centre_height_mm.value,
            0.0,
            units
        )
    );
    let inside = html! {
        <>
            <p>{ spoken(first, units) }</p>
            <p class="noprint"><a href={Route::After.href()}>{ t!("advice-rings-sheet") }</a></p>
        </>
    };
    fold("rings", t!("advice-rings"), sum, inside)
}

/// The mounting sheet: height, rings along the tube, what holds it.
pub fn mounting_sheet(advice: &Advice, units: Units) -> Html {
    let notes = &advice.notes;
    let group = |title: String, place: Place| {
        html! {
            <div>
                <h3 class="behind__title">{ title }</h3>
                { list(at(notes, place), units) }
            </div>
        }
    };
    let all = || {
        [Place::Height, Place::Along, Place::Hold]
            .into_iter()
            .flat_map(|place| at(notes, place))
    };
    html! {
        <div class="sheet">
            { group(t!("sheet-height"), Place::Height) }
            { group(t!("sheet-along"), Place::Along) }
            { group(t!("sheet-hold"), Place::Hold) }
            <details class="opens noprint">
                <summary>{ t!("page-more") }</summary>
                <div class="opens__in">{ formulas(sources(all())) }</div>
            </details>
        </div>
    }
}
