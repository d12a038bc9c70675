//! Which ring height, from four figures.

use crate::need::answers::Units;
use crate::need::input::Quantity;
use crate::plain::Gathered;
use crate::rifle::mounting::{
    Clearances, HeightLimit, MountError, RING_SPACING_MM, Rings, TubeLayout, turret_place_mm,
};
use crate::rifle::rail::{RAILS_MADE, RailMade, rail_over_bore_mm};
use crate::rifle::ring_height::{AIR_MM, CAP_MM, Measured, RingHeight, ring_height};
use crate::t;
use crate::web::components::explained;
use crate::web::components::own::{self, OwnChips, OwnField};
use crate::web::pictures::OnRifle;
use crate::web::state::use_app;
use crate::web::view::prelude::*;
use crate::wording::length_mm;

/// Tubes that are made, mm.
const TUBES_MM: [f64; 7] = [25.4, 26.0, 30.0, 34.0, 35.0, 36.0, 40.0];

/// What stands in the fields; empty: the usual value.
#[derive(Clone, Debug, Default, PartialEq)]
struct Typed {
    bell: String,
    barrel: String,
    rail: String,
    /// A rail told by its measures on the receiver; none: by its height over the bore.
    made: Option<&'static RailMade>,
    receiver: String,
    over: String,
    width: String,
    tube: Option<f64>,
    rail_under_bell: bool,
    cap: bool,
    straight_stock: bool,
    iron: String,
    bolt: String,
    spacing: String,
}

impl Typed {
    fn measured(&self, units: Units) -> Measured {
        let of = |quantity, text: &str, usual| own::metric(quantity, units, text).unwrap_or(usual);
        Measured {
            bell_outer_mm: of(Quantity::Bell, &self.bell, 57.0),
            barrel_diameter_mm: of(Quantity::RingsHeight, &self.barrel, 18.0),
            rail_over_bore_mm: self.made.map_or_else(
                || of(Quantity::RingsHeight, &self.rail, 24.0),
                |made| {
                    let receiver = of(Quantity::RingsHeight, &self.receiver, made.usual_mm.0);
                    let over = of(Quantity::RailHeight, &self.over, made.usual_mm.1);
                    // The fields keep to the range that is computed for.
                    rail_over_bore_mm(receiver, over).unwrap_or(f64::NAN)
                },
            ),
            tube_mm: self.tube.unwrap_or(30.0),
            rail_under_bell: self.rail_under_bell,
            cap: self.cap,
            straight_stock: self.straight_stock,
            iron_sights_mm: own::metric(Quantity::RingsHeight, units, &self.iron),
            bolt_over_bore_mm: own::metric(Quantity::RingsHeight, units, &self.bolt),
        }
    }
}

/// What the measures of a rail come to, and whether its width is that of its kind.
fn rail_said(made: &RailMade, measured: &Measured, width: &str, units: Units) -> String {
    let over = length_mm(units, measured.rail_over_bore_mm);
    let said = t!("rings-made-over", over = over);
    match (
        made.width_mm,
        own::metric(Quantity::RingsHeight, units, width),
    ) {
        (Some(usual), Some(width)) if !made.is_as_wide(width) => {
            let why = t!(
                "rings-made-other",
                width = length_mm(units, width),
                usual = length_mm(units, usual)
            );
            format!("{said} {why}")
        }
        _ => said,
    }
}

/// Whether two rings that far apart both find tube to hold on, in words.
fn along(tube: &TubeLayout, spacing_mm: f64, units: Units) -> String {
    let shown = |mm: f64| length_mm(units, mm);
    let placed = Rings {
        front_mm: 0.5 * spacing_mm,
        rear_mm: -0.5 * spacing_mm,
        half_width_mm: HALF_RING_MM,
    };
    match turret_place_mm(tube, &placed) {
        Ok((from, to)) => t!(
            "rings-apart-fit",
            spacing = shown(spacing_mm),
            room = shown(to - from)
        ),
        Err(MountError::RingsDoNotFit {
            short_by_mm,
            spacing_least_mm,
            spacing_most_mm,
        }) => t!(
            "rings-apart-miss",
            spacing = shown(spacing_mm),
            short = shown(short_by_mm),
            least = shown(spacing_least_mm.max(RING_SPACING_MM.0)),
            most = shown(spacing_most_mm)
        ),
        Err(MountError::RingsTooClose { least_mm, .. }) => t!(
            "rings-apart-close",
            spacing = shown(spacing_mm),
            least = shown(least_mm)
        ),
        Err(MountError::NoRoomToClamp { short_by_mm }) => {
            t!("rings-apart-none", short = shown(short_by_mm))
        }
        Err(_) => String::new(),
    }
}

/// The tube of a sight with such a bell.
fn tube_of(measured: &Measured) -> (TubeLayout, f64) {
    let objective_mm = (measured.bell_outer_mm - 7.0).max(measured.tube_mm - 6.0);
    let length_mm = 265.0 + 0.029 * objective_mm * objective_mm;
    (
        TubeLayout::typical(length_mm, objective_mm, measured.tube_mm),
        length_mm,
    )
}

/// Half of a usual ring's width, mm (common practice, no source).
const HALF_RING_MM: f64 = 10.0;

fn limit(limit: HeightLimit, units: Units) -> String {
    match limit {
        HeightLimit::Bell => t!("rings-limit-bell"),
        HeightLimit::IronSights => t!("rings-limit-iron"),
        HeightLimit::Bolt => t!("rings-limit-bolt"),
        HeightLimit::Ring => t!("rings-limit-ring", metal = length_mm(units, 2.0)),
        HeightLimit::StraightStock => t!("rings-limit-stock"),
    }
}

fn answer(rings: &RingHeight, units: Units) -> Html {
    let shown = |mm: f64| length_mm(units, mm);
    let height = &rings.recommended;
    html! {
        <section class="tool__answer" aria-live="polite">
            <h2 class="tool__name">{ t!("rings-answer") }</h2>
            <p class="tool__line">{ shown(height.saddle_mm) }</p>
            <p>
                { t!("rings-means", centre = shown(height.centre_over_rail_mm), bore = shown(height.over_bore_mm)) }{ " " }
                { limit(rings.limit, units) }
                if rings.limit == HeightLimit::Bell {
                    { " " }{ t!("rings-least", least = shown(rings.least.saddle_mm), air = shown(AIR_MM.0)) }
                }
            </p>
            <p class="small soft">{ t!("rings-measured-how", centre = shown(height.centre_over_rail_mm)) }</p>
        </section>
    }
}

/// Bell, barrel, rail and tube in; the saddle height out.
#[component]
pub fn RingHeightPage() -> Html {
    let typed = use_state_eq(Typed::default);
    let Some(app) = use_app() else {
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
    let tick = |with: fn(&mut Typed) -> &mut bool| {
        let typed = typed.clone();
        Callback::from(move |_: Event| {
            let mut next = (*typed).clone();
            let place = with(&mut next);
            *place = !*place;
            typed.set(next);
        })
    };
    let choose_tube = {
        let typed = typed.clone();
        Callback::from(move |key: String| {
            typed.set(Typed {
                tube: crate::plain::decimal(&key),
                ..(*typed).clone()
            });
        })
    };
    let choose_rail = {
        let typed = typed.clone();
        Callback::from(move |key: String| {
            typed.set(Typed {
                made: RAILS_MADE.iter().find(|made| made.key == key),
                receiver: String::new(),
                over: String::new(),
                width: String::new(),
                ..(*typed).clone()
            });
        })
    };
    let field =
        |id: &'static str, label, hint, quantity: Quantity, text: &str, usual: f64, ontext| {
            let usual = quantity.typed(units, usual);
            let shown = if text.is_empty() {
                usual
            } else {
                text.to_owned()
            };
            html! {
                <OwnField {id} {label} {hint} unit={quantity.unit(units).symbol()} text={shown}
                    wrong={own::problem(quantity, units, text).map(AttrValue::from)} {ontext} />
            }
        };
    // Left empty it is not asked for.
    let empty = |id: &'static str,
                 label: String,
                 hint: String,
                 quantity: Quantity,
                 text: &str,
                 ontext| {
        html! {
            <OwnField {id} {label} hint={Some(AttrValue::from(hint))} unit={quantity.unit(units).symbol()} text={text.to_owned()}
                wrong={own::problem(quantity, units, text).map(AttrValue::from)} {ontext} />
        }
    };
    let box_ = |id: &'static str, words: String, checked: bool, onchange: Callback<Event>| {
        html! {
            <label class="tool__tick" for={id}>
                <input class="choice__input" {id} type="checkbox" {checked} {onchange} />
                <span>{ words }</span>
            </label>
        }
    };
    let measured = typed.measured(units);
    let tube = measured.tube_mm;
    let found = ring_height(&measured);
    let tubes = TUBES_MM
        .iter()
        .map(|tube| {
            (
                shortest(*tube),
                crate::wording::with_unit(*tube, usize::from(*tube < 25.5), "mm"),
            )
        })
        .gathered();
    let rails = std::iter::once("bore")
        .chain(RAILS_MADE.iter().map(|made| made.key))
        .map(|key| {
            let words = crate::wording::say(&format!("rings-made-{key}"), &[]);
            (key.to_owned(), words)
        })
        .gathered();
    html! {
        <main class="page page--wide" id="main">
            <h1 id="title" tabindex="-1">{ t!("rings-title") }</h1>
            <p>{ explained(t!("rings-lead")) }</p>
            <div class="tool">
                <div class="tool__fields">
                    <div class="fields fields--row">
                        { field("rings-bell", t!("rings-bell"), Some(AttrValue::from(t!("rings-bell-hint"))), Quantity::Bell, &typed.bell, 57.0, change(|t, text| t.bell = text)) }
                        { field("rings-barrel", t!("rings-barrel"), Some(AttrValue::from(t!("rings-barrel-hint"))), Quantity::RingsHeight, &typed.barrel, 18.0, change(|t, text| t.barrel = text)) }
                        if typed.made.is_none() {
                            { field("rings-rail", t!("rings-rail"), Some(AttrValue::from(t!("rings-rail-hint", usual = length_mm(units, 24.0)))), Quantity::RingsHeight, &typed.rail, 24.0, change(|t, text| t.rail = text)) }
                        }
                    </div>
                    <OwnChips label={t!("rings-made")} group="rings-made" options={rails} hint={Some(AttrValue::from(t!("rings-made-hint")))}
                        chosen={Some(AttrValue::from(typed.made.map_or("bore", |made| made.key)))} onchoose={choose_rail} />
                    if let Some(made) = typed.made {
                        <div class="fields fields--row">
                            { field("rings-receiver", t!("rings-receiver"), Some(AttrValue::from(t!("rings-receiver-hint"))), Quantity::RingsHeight, &typed.receiver, made.usual_mm.0, change(|t, text| t.receiver = text)) }
                            { field("rings-over", t!("rings-over"), Some(AttrValue::from(t!("rings-over-hint"))), Quantity::RailHeight, &typed.over, made.usual_mm.1, change(|t, text| t.over = text)) }
                            if let Some(width) = made.width_mm {
                                { empty("rings-width", t!("rings-width"), t!("rings-width-hint", usual = length_mm(units, width)), Quantity::RingsHeight, &typed.width, change(|t, text| t.width = text)) }
                            }
                        </div>
                        <p class="tool__rail" role="status">{ rail_said(made, &measured, &typed.width, units) }</p>
                    }
                    <OwnChips label={t!("rings-tube")} group="rings-tube" options={tubes} chosen={Some(AttrValue::from(shortest(tube)))} onchoose={choose_tube} />
                    <div>
                        { box_("rings-under", t!("rings-under"), typed.rail_under_bell, tick(|t| &mut t.rail_under_bell)) }
                        { box_("rings-cap", t!("rings-cap"), typed.cap, tick(|t| &mut t.cap)) }
                        { box_("rings-straight", t!("rings-straight"), typed.straight_stock, tick(|t| &mut t.straight_stock)) }
                    </div>
                    <details class="opens" id="rings-more">
                        <summary>{ t!("rings-more") }</summary>
                        <div class="opens__in fields fields--row">
                            { empty("rings-iron", t!("rings-iron"), t!("rings-iron-hint", least = length_mm(units, 8.0), most = length_mm(units, 12.0)), Quantity::RingsHeight, &typed.iron, change(|t, text| t.iron = text)) }
                            { empty("rings-bolt", t!("rings-bolt"), t!("rings-bolt-hint"), Quantity::RingsHeight, &typed.bolt, change(|t, text| t.bolt = text)) }
                            { empty("rings-apart", t!("rings-apart"), t!("rings-apart-hint"), Quantity::RingSpacing, &typed.spacing, change(|t, text| t.spacing = text)) }
                        </div>
                    </details>
                </div>
                <div class="tool__side">
                    if let Ok(rings) = &found {
                        { answer(rings, units) }
                        { for own::metric(Quantity::RingSpacing, units, &typed.spacing).into_iter().map(|spacing_mm| html! {
                            <p class="tool__along">{ along(&tube_of(&measured).0, spacing_mm, units) }</p>
                        }) }
                    } else if let Err(out) = &found {
                        <p class="field__error">{ t!("input-out-of-range", value = length_mm(units, out.value), least = length_mm(units, out.least), most = length_mm(units, out.most)) }</p>
                    }
                    <p class="caution">{ explained(t!("rings-cautions")) }</p>
                </div>
            </div>
            if let Ok(rings) = &found {
                { drawing(&measured, rings, units) }
            }
        </main>
    }
}

/// The section drawing, to scale, at the height that is recommended.
fn drawing(measured: &Measured, rings: &RingHeight, units: Units) -> Html {
    let (tube, length_mm) = tube_of(measured);
    let clearances = Clearances {
        rail_over_bore_mm: measured.rail_over_bore_mm,
        barrel_radius_mm: 0.5 * measured.barrel_diameter_mm,
        clearance_mm: AIR_MM.1 + if measured.cap { CAP_MM } else { 0.0 },
        rail_under_bell: measured.rail_under_bell,
        straight_stock: measured.straight_stock,
        iron_sights_mm: measured.iron_sights_mm.unwrap_or(0.0),
        bolt_over_bore_mm: measured.bolt_over_bore_mm,
        ..Clearances::usual(measured.bell_outer_mm, measured.tube_mm)
    };
    let saddle_mm = rings.recommended.saddle_mm;
    OnRifle {
        clearances,
        tube,
        length_mm,
        eye_relief_mm: 90.0,
        saddle_mm,
        units,
    }
    .told()
    .shown()
}
