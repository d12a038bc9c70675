//! On the rifle: sight, rings, rail, barrel, bolt and eye from the side, to scale.

use super::picture::{Drawing, Drawn, Handle, Told};
use super::slider::Scale;
use crate::drawing::path::{push_pair, push_rectangle};
use crate::drawing::svg::Svg;
use crate::need::answers::Units;
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
const BELOW_MM: f64 = 15.0;
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
        // Below: the receiver and a line of words.
        let height_px = ((top + BELOW_MM) * px + BELOW_PX).round();
        let x = |mm: f64| (mm - left) * px;
        let y = |mm: f64| (top - mm) * px;
        let rect = |from: f64, to: f64, low: f64, high: f64| {
            let mut path = String::new();
            let (w, h) = ((to - from) * px, (high - low) * px);
            push_rectangle(&mut path, x(from), y(high), w.max(0.0), h.max(0.0), 1);
            path
        };
        // A body turned round the sight's axis, from (place, radius) to (place, radius).
        let turned = |points: &[(f64, f64)]| {
            let mut path = String::new();
            for (n, (mm, r)) in points.iter().enumerate() {
                let to = if n == 0 { 'M' } else { 'L' };
                push_pair(&mut path, to, x(*mm), y(over_bore + r), 1);
            }
            for (mm, r) in points.iter().rev() {
                push_pair(&mut path, 'L', x(*mm), y(over_bore - r), 1);
            }
            path.push('Z');
            path
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
        // Receiver, barrel with its bore, rail with slots of 5.23 mm every 10.01 mm
        // (MIL-STD-1913).
        let receiver_to = ring_places[0] + 10.0;
        svg.fill(
            "tone-mid",
            &rect(
                rail_from - 30.0,
                receiver_to,
                -15.0,
                (rail - 6.0).max(c.barrel_radius_mm),
            ),
        );
        svg.fill(
            fails(bell_touches && !c.rail_under_bell, "tone-mid"),
            &rect(receiver_to, right, -c.barrel_radius_mm, c.barrel_radius_mm),
        );
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
            let stem = rect(place - 4.0, place + 4.0, -6.0, bolt - 9.0);
            svg.fill("tone-mid", &stem);
            svg.disc(
                fails(bolt_touches, "tone-mid"),
                x(place),
                y(bolt - 9.0),
                9.0 * px,
            );
        }
        for place in ring_places {
            let (from, to) = (place - RING_HALF_MM, place + RING_HALF_MM);
            svg.fill(
                "tone-dark",
                &format!(
                    "{}{}",
                    rect(
                        from - 3.0,
                        to + 3.0,
                        rail - 2.5,
                        rail + 0.55 * saddle_mm + 0.2
                    ),
                    rect(from, to, rail, over_bore + rt + 3.0)
                ),
            );
        }
        svg.fill("tone-dark", &turned(&[(ocular_to, rt), (bell_from, rt)]));
        svg.fill(
            fails(bell_touches, "tone-dark"),
            &turned(&[
                (bell_from, rt),
                (bell_from + 0.45 * (front_end - bell_from), rb),
                (front_end, rb),
            ]),
        );
        svg.fill(
            fails(bolt_touches, "tone-dark"),
            &turned(&[
                (ocular_end, ro * 0.97),
                (ocular_end + 6.0, ro),
                (ocular_to - 22.0, ro),
                (ocular_to, rt),
            ]),
        );
        svg.fill(
            "tone-dark",
            &format!(
                "{}{}",
                rect(-18.0, 18.0, over_bore - rt - 2.0, over_bore + rt + 2.0),
                rect(-12.0, 12.0, over_bore + rt, over_bore + rt + 17.0)
            ),
        );
        // Edges that a workshop drawing shows: power ring, eyepiece, bell, turret cap.
        let edge = |mm: f64, r: f64| {
            format!(
                "M{:.1} {:.1}V{:.1}",
                x(mm),
                y(over_bore + r),
                y(over_bore - r)
            )
        };
        svg.line(
            "rifle__cap",
            1.0,
            "",
            &format!(
                "{}{}{}M{:.1} {:.1}H{:.1}",
                edge(ocular_to - 20.0, ro),
                edge(ocular_end + 18.0, ro),
                edge(front_end - 9.0, rb),
                x(-12.0),
                y(over_bore + rt + 3.0),
                x(12.0)
            ),
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
                &format!(
                    "M{:.1} {:.1}H{:.1}",
                    x(place - RING_HALF_MM),
                    y(over_bore),
                    x(place + RING_HALF_MM)
                ),
            );
        }
        // Axes of sight and bore, eye, dimensions.
        svg.line(
            "soft",
            1.0,
            "8 3 2 3",
            &format!(
                "M0 {:.1}H{width_px:.0}M0 {:.1}H{width_px:.0}",
                y(over_bore),
                y(0.0)
            ),
        );
        svg.fill("paper", &eye_path(x(eye), y(over_bore), px));
        svg.line("ink", 1.5, "", &eye_path(x(eye), y(over_bore), px));
        svg.disc("ink-fill", x(eye - 2.5), y(over_bore), 3.0 * px);
        let height_at = eye + 0.45 * self.eye_relief_mm;
        let upright = |mm: f64, low: f64, high: f64| {
            format!(
                "M{0:.1} {1:.1}V{2:.1}M{3:.1} {1:.1}h6M{3:.1} {2:.1}h6",
                x(mm),
                y(low),
                y(high),
                x(mm) - 3.0
            )
        };
        svg.line("ink", 1.0, "", &upright(height_at, 0.0, over_bore));
        let size = |svg: &mut Svg, at: f64, up: f64, mm: f64| {
            svg.text("rifle__size", "start", at, up, &length_mm(units, mm));
        };
        size(&mut svg, x(height_at) - 10.0, y(0.0) + 16.0, over_bore);
        let relief_y = y(over_bore + ro + 8.0);
        svg.line(
            "ink",
            1.0,
            "",
            &format!(
                "M{0:.1} {2:.1}H{1:.1}M{0:.1} {3:.1}v6M{1:.1} {3:.1}v6",
                x(eye),
                x(ocular_end),
                relief_y,
                relief_y - 3.0
            ),
        );
        size(&mut svg, x(eye), relief_y - 6.0, self.eye_relief_mm);
        if !bell_touches {
            // The air under the bell, its words below the barrel.
            let (at, under) = (front_end - 6.0, over_bore - rb);
            let over = under + touch.bell_mm;
            let low = y(-c.barrel_radius_mm) + 4.0;
            svg.line("halo", 3.0, "", &upright(at, over, under));
            svg.line("ink", 1.0, "", &upright(at, over, under));
            let lead = format!("M{0:.1} {1:.1}V{low:.1}", x(at), y(over));
            svg.line("ink", 1.0, "1.5 2.5", &lead);
            let air = length_mm(units, -touch.bell_mm);
            let end = (x(at) + 20.0).min(width_px - 2.0);
            svg.text("rifle__size", "end", end, low + 13.0, &air);
        }
        if bell_touches {
            let missing = length_mm(units, touch.bell_mm);
            let words = t!("rifle-missing", missing = missing);
            let up = y(over_bore - rb) + 16.0;
            svg.text("rifle__missing", "end", x(front_end), up, &words);
        }
        if let Some(mm) = touch.bolt_mm.filter(|mm| *mm > 0.0) {
            let words = t!("rifle-missing", missing = length_mm(units, mm));
            let up = y(-15.0) + 15.0;
            svg.text("rifle__missing", "start", x(rail_from) + 6.0, up, &words);
        }
        let words = self.words(saddle_mm);
        Drawn {
            drawings: vec![Drawing {
                said: words.join(" "),
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
    let r = 12.0 * px;
    format!(
        "M{:.1} {:.1}A{r:.1} {r:.1} 0 1 0 {:.1} {:.1}A{c:.1} {c:.1} 0 0 0 {:.1} {:.1}Z",
        x - 3.2 * px,
        y - 6.4 * px,
        x - 3.2 * px,
        y + 6.4 * px,
        x - 3.2 * px,
        y - 6.4 * px,
        c = 7.6 * px
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
