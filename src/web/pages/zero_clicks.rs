//! Zero clicks: a group on paper, and what to turn.

use crate::need::answers::Units;
use crate::need::input::Quantity;
use crate::plain::Gathered;
use crate::sight::reticle::MarkUnit;
use crate::sight::turret::ClickUnit;
use crate::sight::zero_clicks::{Correction, Direction, Group, Turn, correction};
use crate::t;
use crate::web::components::own::{self, OwnChips, OwnField};
use crate::web::components::{Segments, explained};
use crate::web::state::use_app;
use crate::web::view::prelude::*;
use crate::wording::{cm, counts_in, length_mm, range};

const CLICKS: [(ClickUnit, &str); 5] = [
    (ClickUnit::TenthMrad, "tenth_mrad"),
    (ClickUnit::TwentiethMrad, "twentieth_mrad"),
    (ClickUnit::QuarterMoa, "quarter_moa"),
    (ClickUnit::ThirdMoa, "third_moa"),
    (ClickUnit::EighthMoa, "eighth_moa"),
];

/// What stands in the fields.
#[derive(Clone, Debug, PartialEq)]
struct Typed {
    distance: String,
    height: String,
    side: String,
    is_below: bool,
    is_left: bool,
    click: &'static str,
}

fn click_words(key: &str) -> String {
    crate::wording::say(&format!("zero-click-{key}"), &[])
}

fn words(turn: &Turn, none: String) -> String {
    match turn.direction {
        Direction::Up => t!("zero-turn-up", clicks = turn.clicks),
        Direction::Down => t!("zero-turn-down", clicks = turn.clicks),
        Direction::Left => t!("zero-turn-left", clicks = turn.clicks),
        Direction::Right => t!("zero-turn-right", clicks = turn.clicks),
        Direction::None => none,
    }
}

/// The paper, to scale: mark in the middle, centre of the group where it lies.
fn paper(group: &Group, units: Units) -> Html {
    // The smallest square of round size that holds both.
    let farthest = group.right_cm.abs().max(group.high_cm.abs());
    let unit_cm = match units {
        Units::Metric => 1.0,
        Units::Imperial => 2.54,
    };
    let half = [1.0, 2.0, 5.0, 10.0, 15.0, 25.0, 50.0, 100.0, 200.0]
        .into_iter()
        .map(|half| half * unit_cm)
        .find(|half| farthest <= 0.9 * half)
        .unwrap_or(350.0);
    let scale = 100.0 / half;
    let line = |x1: f64, y1: f64, x2: f64, y2: f64, class: &'static str| {
        html! {
            <line x1={fixed(x1, 2)} y1={fixed(y1, 2)} x2={fixed(x2, 2)} y2={fixed(y2, 2)} {class} vector-effect="non-scaling-stroke" />
        }
    };
    let at = (
        100.0 + scale * group.right_cm,
        100.0 - scale * group.high_cm,
    );
    html! {
        <figure class="zero__paper">
            <svg viewBox="0 0 200 200" role="img" aria-label={t!("zero-drawing")}>
                <rect x="0.5" y="0.5" width="199" height="199" class="zero__sheet" vector-effect="non-scaling-stroke" />
                { for (1..10).map(|step| {
                    let at = 20.0 * f64::from(step);
                    html! { <>{ line(at, 0.0, at, 200.0, "zero__grid") }{ line(0.0, at, 200.0, at, "zero__grid") }</> }
                }) }
                { line(100.0, 90.0, 100.0, 110.0, "zero__mark") }
                { line(90.0, 100.0, 110.0, 100.0, "zero__mark") }
                { line(at.0, at.1, 100.0, at.1, "zero__way") }
                { line(100.0, at.1, 100.0, 100.0, "zero__way") }
                <circle cx={fixed(at.0, 2)} cy={fixed(at.1, 2)} r="4" class="zero__group" />
            </svg>
            <figcaption class="small soft">{ t!("zero-drawing") }{ " " }{ t!("zero-paper", side = cm(units, 2.0 * half)) }</figcaption>
        </figure>
    }
}

fn answer(turn: &Correction, distance_m: f64, units: Units) -> Html {
    let height = words(&turn.elevation, t!("zero-turn-none-height"));
    let side = words(&turn.windage, t!("zero-turn-none-side"));
    html! {
        <section class="tool__answer" aria-live="polite">
            <h2 class="tool__name">{ t!("zero-turn") }</h2>
            <p class="tool__line">{ crate::wording::advice::capitalised(&t!("zero-both", height = height, side = side)) }</p>
            <p>
                { t!("zero-one-click", click = length_mm(units, 10.0 * turn.click_cm), distance = range(units, distance_m)) }{ " " }
                { t!("zero-left-over", height = length_mm(units, 10.0 * turn.elevation.left_over_cm.abs()), side = length_mm(units, 10.0 * turn.windage.left_over_cm.abs())) }
            </p>
            <p class="small soft">{ t!("zero-marked") }</p>
        </section>
    }
}

/// The centre of a group in; clicks out.
#[component]
pub fn ZeroClicksPage() -> Html {
    let app = use_app();
    let first = app.as_ref().map(|app| app.answers.clone());
    let typed = use_state_eq(move || {
        let unit = first.as_ref().map(counts_in);
        Typed {
            distance: "100".into(),
            height: "4".into(),
            side: "2".into(),
            is_below: true,
            is_left: false,
            click: match unit {
                Some(MarkUnit::Moa) => "quarter_moa",
                _ => "tenth_mrad",
            },
        }
    });
    let Some(app) = app else {
        return Html::default();
    };
    let units = app.answers.units;
    let change = |with: fn(&mut Typed, String)| {
        let typed = typed.clone();
        Callback::from(move |text: String| {
            let mut next = (*typed).clone();
            with(&mut next, text);
            typed.set(next);
        })
    };
    let turn_to = |with: fn(&mut Typed, bool), yes: &'static str| {
        let typed = typed.clone();
        Callback::from(move |key: AttrValue| {
            let mut next = (*typed).clone();
            with(&mut next, key == yes);
            typed.set(next);
        })
    };
    let field = |id: &'static str, label, quantity: Quantity, text: &str, ontext| {
        html! {
            <OwnField {id} {label} unit={quantity.unit(units).symbol()} text={text.to_owned()}
                wrong={own::problem(quantity, units, text).map(AttrValue::from)} {ontext} />
        }
    };
    let read = |quantity, text: &str| own::metric(quantity, units, text);
    let height = read(Quantity::OnPaper, &typed.height).unwrap_or(0.0);
    let side = read(Quantity::OnPaper, &typed.side).unwrap_or(0.0);
    let group = read(Quantity::Range, &typed.distance).map(|distance_m| Group {
        right_cm: if typed.is_left { -side } else { side },
        high_cm: if typed.is_below { -height } else { height },
        distance_m,
    });
    let click = CLICKS
        .iter()
        .find(|(_, key)| *key == typed.click)
        .map_or(ClickUnit::TenthMrad, |(click, _)| *click);
    let turned = group.and_then(|group| correction(&group, click).ok().map(|turn| (group, turn)));
    let options = CLICKS
        .iter()
        .map(|(_, key)| ((*key).to_owned(), click_words(key)))
        .gathered();
    let choose = {
        let typed = typed.clone();
        Callback::from(move |key: String| {
            if let Some((_, click)) = CLICKS.iter().find(|(_, known)| *known == key) {
                typed.set(Typed {
                    click,
                    ..(*typed).clone()
                });
            }
        })
    };
    let two = |yes: &'static str, yes_words: String, no: &'static str, no_words: String| {
        vec![
            (AttrValue::from(yes), AttrValue::from(yes_words)),
            (AttrValue::from(no), AttrValue::from(no_words)),
        ]
    };
    html! {
        <main class="page page--wide" id="main">
            <h1 id="title" tabindex="-1">{ t!("zero-title") }</h1>
            <p>{ explained(t!("zero-lead")) }</p>
            <div class="tool">
                <div class="tool__fields">
                    { field("zero-distance", t!("zero-distance"), Quantity::Range, &typed.distance, change(|t, text| t.distance = text)) }
                    <div class="zero__offset">
                        { field("zero-height", t!("zero-by-height"), Quantity::OnPaper, &typed.height, change(|t, text| t.height = text)) }
                        <Segments label={t!("zero-height")} group="zero-height-way"
                            options={two("above", t!("zero-above"), "below", t!("zero-below"))}
                            chosen={if typed.is_below { "below" } else { "above" }}
                            onchoose={turn_to(|t, yes| t.is_below = yes, "below")} />
                    </div>
                    <div class="zero__offset">
                        { field("zero-side", t!("zero-by-side"), Quantity::OnPaper, &typed.side, change(|t, text| t.side = text)) }
                        <Segments label={t!("zero-side")} group="zero-side-way"
                            options={two("left", t!("zero-left"), "right", t!("zero-right"))}
                            chosen={if typed.is_left { "left" } else { "right" }}
                            onchoose={turn_to(|t, yes| t.is_left = yes, "left")} />
                    </div>
                    <OwnChips label={t!("zero-click")} group="zero-click" {options}
                        chosen={Some(AttrValue::from(typed.click))} onchoose={choose} />
                </div>
                <div class="tool__side">
                    if let Some((group, turn)) = &turned {
                        { answer(turn, group.distance_m, units) }
                        { paper(group, units) }
                    }
                    <p class="caution">{ explained(t!("zero-cautions")) }</p>
                </div>
            </div>
        </main>
    }
}
