//! Which ring height, from four figures.

use crate::need::answers::Units;
use crate::need::input::Quantity;
use crate::rifle::mounting::{Clearances, HeightLimit, TubeLayout};
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
    tube: Option<f64>,
    rail_under_bell: bool,
    cap: bool,
    straight_stock: bool,
}

impl Typed {
    fn measured(&self, units: Units) -> Measured {
        let of = |quantity, text: &str, usual| own::metric(quantity, units, text).unwrap_or(usual);
        Measured {
            bell_outer_mm: of(Quantity::Bell, &self.bell, 57.0),
            barrel_diameter_mm: of(Quantity::RingsHeight, &self.barrel, 18.0),
            rail_over_bore_mm: of(Quantity::RingsHeight, &self.rail, 24.0),
            tube_mm: self.tube.unwrap_or(30.0),
            rail_under_bell: self.rail_under_bell,
            cap: self.cap,
            straight_stock: self.straight_stock,
        }
    }
}

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
                tube.to_string(),
                crate::wording::with_unit(*tube, usize::from(*tube < 25.5), "mm"),
            )
        })
        .collect::<Vec<_>>();
    html! {
        <main class="page page--wide" id="main">
            <h1 id="title" tabindex="-1">{ t!("rings-title") }</h1>
            <p>{ explained(t!("rings-lead")) }</p>
            <div class="tool">
                <div class="tool__fields">
                    <div class="fields fields--row">
                        { field("rings-bell", t!("rings-bell"), Some(AttrValue::from(t!("rings-bell-hint"))), Quantity::Bell, &typed.bell, 57.0, change(|t, text| t.bell = text)) }
                        { field("rings-barrel", t!("rings-barrel"), Some(AttrValue::from(t!("rings-barrel-hint"))), Quantity::RingsHeight, &typed.barrel, 18.0, change(|t, text| t.barrel = text)) }
                        { field("rings-rail", t!("rings-rail"), Some(AttrValue::from(t!("rings-rail-hint", usual = length_mm(units, 24.0)))), Quantity::RingsHeight, &typed.rail, 24.0, change(|t, text| t.rail = text)) }
                    </div>
                    <OwnChips label={t!("rings-tube")} group="rings-tube" options={tubes} chosen={Some(AttrValue::from(tube.to_string()))} onchoose={choose_tube} />
                    <div>
                        { box_("rings-under", t!("rings-under"), typed.rail_under_bell, tick(|t| &mut t.rail_under_bell)) }
                        { box_("rings-cap", t!("rings-cap"), typed.cap, tick(|t| &mut t.cap)) }
                        { box_("rings-straight", t!("rings-straight"), typed.straight_stock, tick(|t| &mut t.straight_stock)) }
                    </div>
                </div>
                <div class="tool__side">
                    if let Ok(rings) = &found {
                        { answer(rings, units) }
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
    let objective_mm = (measured.bell_outer_mm - 7.0).max(measured.tube_mm - 6.0);
    let length_mm = 265.0 + 0.029 * objective_mm * objective_mm;
    let clearances = Clearances {
        rail_over_bore_mm: measured.rail_over_bore_mm,
        barrel_radius_mm: 0.5 * measured.barrel_diameter_mm,
        clearance_mm: AIR_MM.1 + if measured.cap { CAP_MM } else { 0.0 },
        rail_under_bell: measured.rail_under_bell,
        straight_stock: measured.straight_stock,
        ..Clearances::usual(measured.bell_outer_mm, measured.tube_mm)
    };
    let saddle_mm = rings.recommended.saddle_mm;
    OnRifle {
        clearances,
        tube: TubeLayout::typical(length_mm, objective_mm, measured.tube_mm),
        length_mm,
        eye_relief_mm: 90.0,
        saddle_mm,
        units,
    }
    .told()
    .shown()
}
