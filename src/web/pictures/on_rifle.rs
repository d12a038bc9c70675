//! On the rifle: sight, rings, rail, barrel, bolt and eye from the side, to scale.

use super::frame::Frame;
use super::slider::Slider;
use crate::drawing::path::{push_pair, push_rectangle};
use crate::need::answers::Units;
use crate::rifle::mounting::{Clearances, TubeLayout};
use crate::t;
use crate::web::view::prelude::*;
use crate::wording::{length_mm, number};

/// What [`OnRifle`] is told.
#[derive(Properties, PartialEq)]
pub struct OnRifleProps {
    /// What the height has to clear.
    pub clearances: Clearances,
    /// The tube along its axis.
    pub tube: TubeLayout,
    /// Length of the sight in mm.
    pub length_mm: f64,
    /// Eye relief in mm.
    pub eye_relief_mm: f64,
    /// Height of the ring's saddle over the rail to begin with, in mm.
    pub saddle_mm: f64,
    /// Units of the words.
    #[prop_or_default]
    pub units: Units,
}

/// What touches at a height, and by how many millimetres (negative is air).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Touching {
    /// The bell over barrel or rail.
    pub bell_mm: f64,
    /// The eyepiece over the lifted bolt, if there is one.
    pub bolt_mm: Option<f64>,
}

/// By how much each part reaches into the other at an axis `centre_mm` over the rail: 0 is
/// touching, negative is air.
#[must_use]
pub fn touching(clearances: &Clearances, centre_mm: f64) -> Touching {
    let bare = Clearances {
        clearance_mm: 0.0,
        ..*clearances
    };
    Touching {
        bell_mm: bare.centre_for_bell_mm() - centre_mm,
        bolt_mm: clearances.bolt_over_bore_mm.map(|bolt| {
            0.5 * clearances.ocular_outer_mm + bolt - clearances.rail_over_bore_mm - centre_mm
        }),
    }
}

const WIDTH_PX: f64 = 328.0;
const ABOVE_MM: f64 = 26.0;
const BELOW_MM: f64 = 30.0;

/// The sight on the rifle.
#[component]
pub fn OnRifle(props: &OnRifleProps) -> Html {
    let saddle = use_state_eq(|| props.saddle_mm);
    let on_saddle = use_callback(saddle.setter(), |to: f64, set| set.set(to));
    let units = props.units;
    let spoken = use_callback(units, |to: f64, units| length_mm(*units, to));
    let c = &props.clearances;
    let tube = &props.tube;
    let centre = *saddle + 0.5 * c.tube_mm;
    let over_bore = centre + c.rail_over_bore_mm;
    let touch = touching(c, centre);
    // x along the rifle in mm, the turret at 0, muzzle to the right; y up from the bore.
    let front_end = props.length_mm - tube.ocular_end_mm;
    let eye = -tube.ocular_end_mm - props.eye_relief_mm;
    let left = eye - 22.0;
    let right = front_end + 24.0;
    let px = WIDTH_PX / (right - left);
    let top = over_bore + 0.5 * c.bell_outer_mm.max(c.ocular_outer_mm) + ABOVE_MM;
    let height_px = (top + BELOW_MM) * px;
    let x = |mm: f64| (mm - left) * px;
    let y = |mm: f64| (top - mm) * px;
    let rect = |from: f64, to: f64, low: f64, high: f64| {
        let mut path = String::new();
        push_rectangle(
            &mut path,
            x(from),
            y(high),
            (to - from) * px,
            (high - low) * px,
            1,
        );
        path
    };
    let rail = c.rail_over_bore_mm;
    let bell_touches = touch.bell_mm > 0.0;
    let bolt_touches = touch.bolt_mm.is_some_and(|mm| mm > 0.0);
    let good = |touches: bool| if touches { "fails-fill" } else { "tone-dark" };
    // The tube with its bell and eyepiece, as an outline from the eye to the front.
    let (rt, rb, ro) = (
        0.5 * c.tube_mm,
        0.5 * c.bell_outer_mm,
        0.5 * c.ocular_outer_mm,
    );
    let bell_from = tube.front_mm.1 + 4.0;
    let ocular_to = -tube.rear_mm.1 - 4.0;
    let part = |points: &[(f64, f64)]| {
        let mut path = String::new();
        for (n, (mm, r)) in points.iter().enumerate() {
            push_pair(
                &mut path,
                if n == 0 { 'M' } else { 'L' },
                x(*mm),
                y(over_bore + r),
                1,
            );
        }
        for (mm, r) in points.iter().rev() {
            push_pair(&mut path, 'L', x(*mm), y(over_bore - r), 1);
        }
        path.push('Z');
        path
    };
    let eyepiece = part(&[
        (-tube.ocular_end_mm, ro * 0.97),
        (-tube.ocular_end_mm + 6.0, ro),
        (ocular_to - 22.0, ro),
        (ocular_to, rt),
    ]);
    let body = part(&[(ocular_to, rt), (bell_from, rt)]);
    let bell = part(&[
        (bell_from, rt),
        (bell_from + 0.45 * (front_end - bell_from), rb),
        (front_end, rb),
    ]);
    let ring_half = 7.5;
    let ring_places = [
        (tube.front_mm.0 + tube.front_mm.1) * 0.5,
        -(tube.rear_mm.0 + tube.rear_mm.1) * 0.5,
    ];
    let rail_from = ring_places[1] - 28.0;
    let rail_to = if c.rail_under_bell {
        front_end
    } else {
        ring_places[0] + 24.0
    };
    // Slots of 5.23 mm every 10.01 mm (MIL-STD-1913).
    let mut slots = String::new();
    let mut at = rail_from + 6.0;
    while at + 5.23 < rail_to - 3.0 {
        slots.push_str(&rect(at, at + 5.23, rail - 3.0, rail + 0.4));
        at += 10.01;
    }
    let dimension = |mm: f64, low: f64, high: f64| {
        format!(
            "M{0:.1} {1:.1}V{2:.1}M{3:.1} {1:.1}h6M{3:.1} {2:.1}h6",
            x(mm),
            y(low),
            y(high),
            x(mm) - 3.0
        )
    };
    let bell_air = -touch.bell_mm;
    let mut said = vec![t!(
        "rifle-heights",
        saddle = length_mm(units, *saddle),
        centre = length_mm(units, centre),
        bore = length_mm(units, over_bore)
    )];
    said.push(if bell_touches {
        t!(
            "rifle-bell-touches",
            missing = length_mm(units, touch.bell_mm)
        )
    } else if bell_air < c.clearance_mm {
        t!(
            "rifle-bell-close",
            air = length_mm(units, bell_air),
            wanted = length_mm(units, c.clearance_mm)
        )
    } else {
        t!("rifle-bell-clear", air = length_mm(units, bell_air))
    });
    if let Some(mm) = touch.bolt_mm {
        said.push(if mm > 0.0 {
            t!("rifle-bolt-touches", missing = length_mm(units, mm))
        } else {
            t!("rifle-bolt-clear", air = length_mm(units, -mm))
        });
    }
    said.push(t!(
        "rifle-eye",
        relief = length_mm(units, props.eye_relief_mm)
    ));
    let least = c.least_height();
    said.push(t!(
        "rifle-least",
        saddle = length_mm(units, least.saddle_mm)
    ));
    html! {
        <Frame title={t!("rifle-title")} scale={t!("rifle-scale", mm = number(right - left, 0))}
            leaves_out={t!("rifle-leaves-out")} sources={vec![AttrValue::from(t!("rifle-source"))]} file="on-the-rifle">
            <svg class="rifle" data-keep="" role="img" aria-label={said.join(" ")} width={WIDTH_PX.to_string()}
                height={format!("{height_px:.0}")} viewBox={format!("0 0 {WIDTH_PX} {height_px:.1}")}>
                // barrel, receiver, rail
                <path class="tone-mid" d={rect(rail_from - 30.0, ring_places[0] + 10.0, -15.0, (rail - 6.0).max(c.barrel_radius_mm))} />
                <path class={if bell_touches && !c.rail_under_bell { "fails-fill" } else { "tone-mid" }}
                    d={rect(ring_places[0] + 10.0, right, -c.barrel_radius_mm, c.barrel_radius_mm)} />
                <path class={if bell_touches && c.rail_under_bell { "fails-fill" } else { "tone-mid" }}
                    d={rect(rail_from, rail_to, rail - 6.5, rail)} />
                <path class="paper" d={slots} />
                if let Some(bolt) = c.bolt_over_bore_mm {
                    <circle class={if bolt_touches { "fails-fill" } else { "tone-mid" }} r={format!("{:.1}", 9.0 * px)}
                        cx={format!("{:.1}", x(-tube.ocular_end_mm + 34.0))} cy={format!("{:.1}", y(bolt - 9.0))} />
                }
                // rings
                { for ring_places.iter().map(|place| html! {
                    <path class="tone-dark" d={format!("{}{}",
                        rect(place - ring_half - 3.0, place + ring_half + 3.0, rail - 2.5, rail + 0.55 * *saddle + 0.2),
                        rect(place - ring_half, place + ring_half, rail, over_bore + rt + 3.0))} />
                }) }
                <path class={good(false)} d={body} />
                <path class={good(bell_touches)} d={bell} />
                <path class={good(bolt_touches)} d={eyepiece} />
                <path class="tone-dark" d={format!("{}{}",
                    rect(-18.0, 18.0, over_bore - rt - 2.0, over_bore + rt + 2.0),
                    rect(-12.0, 12.0, over_bore + rt, over_bore + rt + 17.0))} />
                // rings over the tube
                { for ring_places.iter().map(|place| html! {
                    <path class="rifle__cap" fill="none" stroke-width="1.5"
                        d={rect(place - ring_half, place + ring_half, over_bore - rt - 3.0, over_bore + rt + 3.0)} />
                }) }
                // axis, eye, dimensions
                <path class="soft" stroke-width="1" fill="none" stroke-dasharray="8 3 2 3"
                    d={format!("M0 {0:.1}H{WIDTH_PX}M0 {1:.1}H{WIDTH_PX}", y(over_bore), y(0.0))} />
                <circle class="ink" fill="none" stroke-width="1.5" r={format!("{:.1}", 12.0 * px)}
                    cx={format!("{:.1}", x(eye - 12.0))} cy={format!("{:.1}", y(over_bore))} />
                <circle class="ink-fill" r={format!("{:.1}", 3.5 * px)}
                    cx={format!("{:.1}", x(eye - 3.5))} cy={format!("{:.1}", y(over_bore))} />
                <path class="ink" stroke-width="1" fill="none" d={dimension(eye + 0.45 * props.eye_relief_mm, 0.0, over_bore)} />
                <text class="rifle__size" x={format!("{:.1}", x(eye + 0.45 * props.eye_relief_mm) + 5.0)} y={format!("{:.1}", y(0.5 * over_bore - 8.0))}>
                    { length_mm(units, over_bore) }
                </text>
                <path class="ink" stroke-width="1" fill="none" d={format!("M{0:.1} {2:.1}H{1:.1}M{0:.1} {3:.1}v6M{1:.1} {3:.1}v6",
                    x(eye), x(-tube.ocular_end_mm), y(over_bore + ro + 8.0), y(over_bore + ro + 8.0) - 3.0)} />
                <text class="rifle__size" x={format!("{:.1}", x(eye))} y={format!("{:.1}", y(over_bore + ro + 8.0) - 6.0)}>
                    { length_mm(units, props.eye_relief_mm) }
                </text>
            </svg>
            <div class="picture__words">
                { for said.iter().map(|words| html! { <p>{ words.clone() }</p> }) }
            </div>
            <Slider label={t!("rifle-saddle")} least=0.0 most=30.0 value={*saddle} step=0.5 page=5.0
                {spoken} on_input={on_saddle} />
        </Frame>
    }
}

#[cfg(test)]
mod tests {
    use super::touching;
    use crate::rifle::mounting::Clearances;

    #[test]
    fn the_least_height_leaves_exactly_the_air_that_was_asked_for() {
        let c = Clearances {
            barrel_radius_mm: 9.0,
            ..Clearances::usual(63.0, 30.0)
        };
        let height = c.least_height();
        let touch = touching(&c, height.centre_over_rail_mm);
        assert!((touch.bell_mm + c.clearance_mm).abs() < 1e-9);
        // A millimetre lower than touching is a millimetre too low.
        let low = touching(&c, height.centre_over_rail_mm - c.clearance_mm - 1.0);
        assert!((low.bell_mm - 1.0).abs() < 1e-9);
    }
}
