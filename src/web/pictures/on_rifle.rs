//! On the rifle: sight, rings, rail, barrel, bolt and eye from the side, to scale.

use super::picture::{Drawing, Drawn, Handle, Told};
use super::slider::Scale;
use crate::drawing::path::{Point, push_outline, push_rectangle};
use crate::drawing::svg::Svg;
use crate::filled;
use crate::need::answers::Units;
use crate::plain::Gathered;
use crate::plain::Together;
use crate::rifle::mounting::{Clearances, TubeLayout};
use crate::t;
use crate::web::view::Callback;
use crate::wording::{length_mm, number};
use std::rc::Rc;

/// What the picture on the rifle is told.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OnRifle {
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

/// Widest drawing, px.
const WIDEST_PX: f64 = 720.0;
const ABOVE_MM: f64 = 30.0;
const BELOW_MM: f64 = 66.0;
const BELOW_PX: f64 = 22.0;
/// Half the length of a ring along the tube, mm.
const RING_HALF_MM: f64 = 7.5;
/// Highest saddle of the handle over the least that clears, mm.
const HIGHER_MM: f64 = 12.0;

impl OnRifle {
    fn most_saddle_mm(&self) -> f64 {
        let least = self.clearances.least_height().saddle_mm;
        (least.max(self.saddle_mm) + HIGHER_MM).ceil()
    }

    fn words(&self, saddle_mm: f64) -> Vec<String> {
        let (units, c) = (self.units, &self.clearances);
        let centre = saddle_mm + 0.5 * c.tube_mm;
        let touch = touching(c, centre);
        let mut said = vec![t!(
            "rifle-heights",
            saddle = length_mm(units, saddle_mm),
            centre = length_mm(units, centre),
            bore = length_mm(units, centre + c.rail_over_bore_mm)
        )];
        said.push(if touch.bell_mm > 0.0 {
            t!(
                "rifle-bell-touches",
                missing = length_mm(units, touch.bell_mm)
            )
        } else if -touch.bell_mm < c.clearance_mm {
            t!(
                "rifle-bell-close",
                air = length_mm(units, -touch.bell_mm),
                wanted = length_mm(units, c.clearance_mm)
            )
        } else {
            t!("rifle-bell-clear", air = length_mm(units, -touch.bell_mm))
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
            relief = length_mm(units, self.eye_relief_mm)
        ));
        said.push(t!(
            "rifle-least",
            saddle = length_mm(units, c.least_height().saddle_mm)
        ));
        said
    }

    fn drawn(&self, saddle_mm: f64, width_px: f64) -> Drawn {
        let width_px = width_px.clamp(240.0, WIDEST_PX);
        let (c, tube, units) = (&self.clearances, &self.tube, self.units);
        let centre = saddle_mm + 0.5 * c.tube_mm;
        let over_bore = centre + c.rail_over_bore_mm;
        let touch = touching(c, centre);
        // x along the rifle in mm, the turret at 0, muzzle to the right; y up from the bore.
        let front_end = self.length_mm - tube.ocular_end_mm;
        let eye = -tube.ocular_end_mm - self.eye_relief_mm;
        let (left, right) = (eye - 30.0, front_end + 24.0);
        let px = width_px / (right - left);
        // As tall as the highest saddle asks, so that the drawing never grows under a finger.
        let highest = self.most_saddle_mm() + 0.5 * c.tube_mm + c.rail_over_bore_mm;
        let top = highest + 0.5 * c.bell_outer_mm.max(c.ocular_outer_mm) + ABOVE_MM;
        // Below: the stock and a line of words.
        let height_px = ((top + BELOW_MM) * px + BELOW_PX).round();
        let x = |mm: f64| (mm - left) * px;
        let y = |mm: f64| (top - mm) * px;
        let rect = |from: f64, to: f64, low: f64, high: f64| {
            let mut path = String::new();
            let (w, h) = ((to - from) * px, (high - low) * px);
            push_rectangle(&mut path, x(from), y(high), w.max(0.0), h.max(0.0), 1);
            path
        };
        // An outline through (mm, mm, corner).
        let shape = |points: &[(f64, f64, bool)]| {
            let placed: Vec<Point> = points
                .iter()
                .map(|(mm, up, corner)| Point {
                    x: x(*mm),
                    y: y(*up),
                    corner: *corner,
                })
                .gathered();
            let mut path = String::new();
            push_outline(&mut path, &placed, 1);
            path
        };
        // A body turned round an axis, from (place, radius, corner) to (place, radius, corner).
        let turned = |axis: f64, points: &[(f64, f64, bool)]| {
            let upper = points
                .iter()
                .map(|(mm, r, corner)| (*mm, axis + r, *corner));
            let lower = points
                .iter()
                .rev()
                .map(|(mm, r, corner)| (*mm, axis - r, *corner));
            shape(&upper.chain(lower).gathered())
        };
        let rail = c.rail_over_bore_mm;
        let bell_touches = touch.bell_mm > 0.0;
        let bolt_touches = touch.bolt_mm.is_some_and(|mm| mm > 0.0);
        let (rt, rb, ro) = (
            0.5 * c.tube_mm,
            0.5 * c.bell_outer_mm,
            0.5 * c.ocular_outer_mm,
        );
        let bell_from = tube.front_mm.1 + 4.0;
        let ocular_to = -tube.rear_mm.1 - 4.0;
        let ocular_end = -tube.ocular_end_mm;
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
        let fails = |touches: bool, else_: &'static str| if touches { "fails-fill" } else { else_ };
        let mut svg = Svg::default();
        // Stock and guard as they usually are, receiver, barrel, rail with slots of 5.23 mm every
        // 10.01 mm (MIL-STD-1913).
        let receiver_to = ring_places[0] + 10.0;
        let tang = rail_from - 30.0;
        let stock = [
            (left - 9.0, -15.0, true),
            (tang - 84.0, -13.0, false),
            (tang - 64.0, -17.0, false),
            (tang - 46.0, -28.0, false),
            (tang - 26.0, -29.0, false),
            (tang - 8.0, -18.0, false),
            (tang + 2.0, -9.0, true),
            (receiver_to, -8.0, true),
            (right + 9.0, -4.0, true),
            (right + 9.0, -31.0, true),
            (receiver_to + 40.0, -39.0, false),
            (receiver_to - 20.0, -43.0, false),
            (tang + 60.0, -44.0, true),
            (tang + 6.0, -42.0, true),
            (tang - 9.0, -50.0, false),
            (tang - 22.0, -68.0, false),
            (tang - 32.0, -92.0, true),
            (tang - 74.0, -92.0, true),
            (tang - 74.0, -79.0, false),
            (tang - 88.0, -71.0, true),
            (left - 9.0, -82.0, true),
        ];
        svg.fill("rifle__stock", &shape(&stock));
        let guard = |inset: f64| {
            shape(&[
                (tang + 4.0 + inset, -41.0, true),
                (tang + 8.0 + inset, -56.0, false),
                (tang + 20.0, -63.0 + inset, false),
                (tang + 44.0, -63.0 + inset, false),
                (tang + 56.0 - inset, -55.0, false),
                (tang + 61.0 - inset, -42.0, true),
            ])
        };
        svg.fill("tone-mid", &guard(0.0));
        svg.fill("paper", &guard(3.0));
        let trigger = [
            (tang + 24.0, -40.0, true),
            (tang + 26.5, -48.0, false),
            (tang + 33.0, -56.0, true),
            (tang + 29.0, -56.5, true),
            (tang + 22.5, -50.0, false),
            (tang + 19.0, -40.0, true),
        ];
        let high = (rail - 6.0).max(c.barrel_radius_mm);
        let receiver = [
            (tang - 14.0, 1.0, false),
            (tang - 9.0, 7.0, false),
            (tang + 2.0, 8.0, true),
            (tang + 8.0, 0.5 * (high + 8.0), false),
            (tang + 18.0, high, true),
            (receiver_to - 4.0, high, true),
            (receiver_to, high - 3.0, true),
            (receiver_to, -12.0, true),
            (tang + 6.0, -12.0, true),
            (tang - 9.0, -6.0, false),
        ];
        svg.fill("tone-mid", &(shape(&trigger) + &shape(&receiver)));
        // The barrel is thicker where it holds the chamber.
        let br = c.barrel_radius_mm;
        let chamber = br.max((br + 3.0).min(rail - 7.0));
        svg.fill(
            fails(bell_touches && !c.rail_under_bell, "tone-mid"),
            &turned(
                0.0,
                &[
                    (receiver_to - 1.0, chamber, true),
                    (receiver_to + 16.0, chamber, false),
                    (receiver_to + 36.0, br, false),
                    (right + 9.0, br, true),
                ],
            ),
        );
        // The port through which cases leave, and the edge of the receiver's ring.
        let port = rect(rail_from + 34.0, ring_places[0] - 16.0, 1.0, 0.72 * high);
        let ring_edge = filled!("M{.1} {.1}V{.1}", x(receiver_to), y(high), y(-12.0));
        svg.line("rifle__cap", 1.0, "", &(port + &ring_edge));
        svg.fill(
            fails(bell_touches && c.rail_under_bell, "tone-mid"),
            &rect(rail_from, rail_to, rail - 6.5, rail),
        );
        let mut slots = String::new();
        let mut at = rail_from + 6.0;
        while at + 5.23 < rail_to - 3.0 {
            slots.push_str(&rect(at, at + 5.23, rail - 3.0, rail + 0.4));
            at += 10.01;
        }
        svg.fill("paper", &slots);
        // Nothing so far moves with the saddle, unless it is touched.
        let still = core::mem::take(&mut svg);
        if let Some(bolt) = c.bolt_over_bore_mm {
            let place = ocular_end + 34.0;
            let stem = [
                (place - 5.5, -6.0, true),
                (place - 3.0, bolt - 20.0, false),
                (place - 4.0, bolt - 9.0, true),
                (place + 4.0, bolt - 9.0, true),
                (place + 3.0, bolt - 20.0, false),
                (place + 5.5, -6.0, true),
            ];
            // The bolt's body, as far as the handle stands behind the receiver.
            let body = [
                (place - 10.0, 6.0, true),
                (place - 8.0, 8.0, true),
                (tang.max(place) + 8.0, 8.0, true),
            ];
            svg.fill("tone-mid", &(turned(0.0, &body) + &shape(&stem)));
            svg.disc(
                fails(bolt_touches, "tone-mid"),
                x(place),
                y(bolt - 9.0),
                9.0 * px,
            );
        }
        for place in ring_places {
            let (from, to) = (place - RING_HALF_MM, place + RING_HALF_MM);
            let foot = rail + 0.55 * saddle_mm + 0.2;
            let column = over_bore + rt + 3.0;
            svg.fill(
                "tone-dark",
                &shape(&[
                    (from - 3.0, rail - 2.5, true),
                    (from - 3.0, rail + 0.3 * saddle_mm, true),
                    (from, foot, true),
                    (from, column - 3.0, true),
                    (from + 3.0, column, true),
                    (to - 3.0, column, true),
                    (to, column - 3.0, true),
                    (to, foot, true),
                    (to + 3.0, rail + 0.3 * saddle_mm, true),
                    (to + 3.0, rail - 2.5, true),
                ]),
            );
        }
        svg.fill(
            "tone-dark",
            &turned(over_bore, &[(ocular_to, rt, true), (bell_from, rt, true)]),
        );
        // Objective bell: an even swing from the tube to the barrel of the objective.
        let (bell_mm, swell) = (front_end - bell_from, rb - rt);
        let bell_at = |along: f64, share: f64, corner: bool| {
            (bell_from + along * bell_mm, rt + share * swell, corner)
        };
        svg.fill(
            fails(bell_touches, "tone-dark"),
            &turned(
                over_bore,
                &[
                    bell_at(0.0, 0.0, true),
                    bell_at(0.12, 0.07, false),
                    bell_at(0.3, 0.5, false),
                    bell_at(0.46, 0.93, false),
                    bell_at(0.58, 1.0, false),
                    (front_end - 1.5, rb, true),
                    (front_end, rb - 1.5, true),
                ],
            ),
        );
        // Eyepiece with its soft rim, the ring for the power, and the neck.
        svg.fill(
            fails(bolt_touches, "tone-dark"),
            &turned(
                over_bore,
                &[
                    (ocular_end, ro * 0.93, true),
                    (ocular_end + 2.0, ro * 0.98, false),
                    (ocular_end + 6.0, ro, true),
                    (ocular_to - 18.0, ro, true),
                    (ocular_to - 15.0, ro - 0.35 * (ro - rt), false),
                    (ocular_to - 8.0, rt + 0.2 * (ro - rt), false),
                    (ocular_to, rt, true),
                ],
            ),
        );
        // Turret housing and the knob for height.
        let knob = over_bore + rt + 6.0;
        let turret = [
            (-9.0, over_bore, true),
            (-9.0, knob, true),
            (-13.0, knob, true),
            (-13.0, knob + 9.5, false),
            (-11.0, knob + 11.0, true),
            (11.0, knob + 11.0, true),
            (13.0, knob + 9.5, false),
            (13.0, knob, true),
            (9.0, knob, true),
            (9.0, over_bore, true),
        ];
        svg.fill(
            "tone-dark",
            &(turned(
                over_bore,
                &[
                    (-24.0, rt, true),
                    (-17.0, rt + 2.5, false),
                    (17.0, rt + 2.5, false),
                    (24.0, rt, true),
                ],
            ) + &shape(&turret)),
        );
        // Edges that a workshop drawing shows: power ring, eyepiece, bell, the knob at the side.
        let edge =
            |mm: f64, r: f64| filled!("M{.1} {.1}V{.1}", x(mm), y(over_bore + r), y(over_bore - r));
        svg.line(
            "rifle__cap",
            1.0,
            "",
            &(edge(ocular_to - 19.0, ro)
                + &edge(ocular_to - 31.0, ro)
                + &edge(ocular_end + 18.0, ro)
                + &edge(front_end - 9.0, rb)
                + &filled!("M{.1} {.1}H{.1}", x(-13.0), y(knob), x(13.0))),
        );
        svg.ring("rifle__cap", 1.0, "", x(0.0), y(over_bore), 11.0 * px);
        svg.ring("rifle__cap", 1.0, "", x(0.0), y(over_bore), 8.0 * px);
        // Knurling: what is gripped.
        let ridges = filled!("M{.1} {.1}H{.1}", x(-12.0), y(knob + 5.5), x(12.0));
        svg.line("rifle__cap", 6.0 * px, "1 2", &ridges);
        svg.line(
            "rifle__cap",
            8.0 * px,
            "1 2",
            &edge(ocular_to - 25.0, ro - 1.5),
        );
        for place in ring_places {
            let cap = rect(
                place - RING_HALF_MM,
                place + RING_HALF_MM,
                over_bore - rt - 3.0,
                over_bore + rt + 3.0,
            );
            svg.line("rifle__cap", 1.5, "", &cap);
            svg.line(
                "rifle__cap",
                1.0,
                "",
                &filled!(
                    "M{.1} {.1}H{.1}",
                    x(place - RING_HALF_MM),
                    y(over_bore),
                    x(place + RING_HALF_MM)
                ),
            );
            svg.ring("rifle__cap", 1.0, "", x(place), y(rail + 1.5), 2.6 * px);
        }
        // Axes of sight and bore, eye, dimensions.
        svg.line(
            "soft",
            1.0,
            "8 3 2 3",
            &filled!(
                "M0 {.1}H{.0}M0 {.1}H{.0}",
                y(over_bore),
                width_px,
                y(0.0),
                width_px
            ),
        );
        svg.fill("paper", &eye_path(x(eye), y(over_bore), px));
        svg.line("ink", 1.5, "", &eye_path(x(eye), y(over_bore), px));
        svg.disc("ink-fill", x(eye - 2.5), y(over_bore), 3.0 * px);
        let height_at = eye + 0.66 * self.eye_relief_mm;
        let upright = |mm: f64, low: f64, high: f64| {
            let (x, low, high) = (x(mm), y(low), y(high));
            let left = x - 3.0;
            filled!(
                "M{.1} {.1}V{.1}M{.1} {.1}h6M{.1} {.1}h6",
                x,
                low,
                high,
                left,
                low,
                left,
                high
            )
        };
        svg.line("ink", 1.0, "", &upright(height_at, 0.0, over_bore));
        let size = |svg: &mut Svg, anchor: &str, at: f64, up: f64, mm: f64| {
            svg.text("rifle__size", anchor, at, up, &length_mm(units, mm));
        };
        size(&mut svg, "end", x(height_at) - 6.0, y(0.0) - 5.0, over_bore);
        let relief_y = y(over_bore + ro + 8.0);
        svg.line(
            "ink",
            1.0,
            "",
            &filled!(
                "M{.1} {.1}H{.1}M{.1} {.1}v6M{.1} {.1}v6",
                x(eye),
                relief_y,
                x(ocular_end),
                x(eye),
                relief_y - 3.0,
                x(ocular_end),
                relief_y - 3.0
            ),
        );
        size(
            &mut svg,
            "start",
            x(eye),
            relief_y - 6.0,
            self.eye_relief_mm,
        );
        // A line of words under the fore-end.
        let below_stock = y(-33.0) + 15.0;
        if !bell_touches {
            // The air under the bell, its words below the stock.
            let (at, under) = (front_end - 6.0, over_bore - rb);
            let over = under + touch.bell_mm;
            svg.line("halo", 3.0, "", &upright(at, over, under));
            svg.line("ink", 1.0, "", &upright(at, over, under));
            let lead = filled!("M{.1} {.1}V{.1}", x(at), y(over), below_stock - 13.0);
            svg.line("ink", 1.0, "1.5 2.5", &lead);
            let air = length_mm(units, -touch.bell_mm);
            let end = (x(at) + 20.0).min(width_px - 2.0);
            svg.text("rifle__size", "end", end, below_stock, &air);
        }
        if bell_touches {
            let missing = length_mm(units, touch.bell_mm);
            let words = t!("rifle-missing", missing = missing);
            svg.text("rifle__missing", "end", x(front_end), below_stock, &words);
        }
        if let Some(mm) = touch.bolt_mm.filter(|mm| *mm > 0.0) {
            let words = t!("rifle-missing", missing = length_mm(units, mm));
            let up = height_px - 6.0;
            svg.text("rifle__missing", "start", x(rail_from) + 6.0, up, &words);
        }
        let words = self.words(saddle_mm);
        Drawn {
            drawings: vec![Drawing {
                said: words.together(" "),
                class: "rifle",
                size_px: (width_px, height_px),
                still,
                inside: svg,
                ..Drawing::default()
            }],
            words,
            scale: t!("rifle-scale", mm = number(right - left, 0)),
        }
    }

    /// The sight on the rifle.
    #[must_use]
    pub fn told(self) -> Told {
        let (units, c) = (self.units, self.clearances);
        Told {
            title: t!("rifle-title"),
            file: "on-the-rifle",
            leaves_out: t!("rifle-leaves-out"),
            sources: vec![
                t!("rifle-source"),
                t!(
                    "picture-inputs",
                    what = t!(
                        "rifle-inputs",
                        bell = length_mm(units, c.bell_outer_mm),
                        tube = length_mm(units, c.tube_mm),
                        barrel = length_mm(units, 2.0 * c.barrel_radius_mm),
                        rail = length_mm(units, c.rail_over_bore_mm),
                        air = length_mm(units, c.clearance_mm)
                    )
                ),
            ],
            handles: vec![Handle {
                label: t!("rifle-saddle"),
                least: 0.0,
                most: self.most_saddle_mm(),
                value: self.saddle_mm,
                step: 0.5,
                page: 5.0,
                scale: Scale::Linear,
                spoken: Callback::from(move |to: f64| length_mm(units, to)),
            }],
            draw: Rc::new(move |values, width_px| self.drawn(values[0], width_px)),
            run_s: None,
        }
    }
}

/// An eye from the side that looks to the right, its pupil's plane at `x`.
fn eye_path(x: f64, y: f64, px: f64) -> String {
    let (r, c) = (12.0 * px, 7.6 * px);
    let (x, above, below) = (x - 3.2 * px, y - 6.4 * px, y + 6.4 * px);
    filled!(
        "M{.1} {.1}A{.1} {.1} 0 1 0 {.1} {.1}A{.1} {.1} 0 0 0 {.1} {.1}Z",
        x,
        above,
        r,
        r,
        x,
        below,
        c,
        c,
        x,
        above
    )
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
