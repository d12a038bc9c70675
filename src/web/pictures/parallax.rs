//! Parallax: move the eye and see target and mark part.

use super::picture::{Drawing, Drawn, Handle, Told, width_of_one};
use super::slider::Scale;
use crate::drawing::svg::Svg;
use crate::filled;
use crate::need::answers::Units;
use crate::plain::Together;
use crate::sight::ParallaxSetting;
use crate::sight::parallax::{free_distance_m, share_of_circle, with_offset_mm};
use crate::sight::pupil::{effective_objective_mm, exit_pupil_mm};
use crate::t;
use crate::web::view::Callback;
use crate::wording::{cm, number, range};
use std::rc::Rc;

/// What the picture of parallax is told.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Parallax {
    /// Clear diameter of the objective in mm.
    pub objective_mm: f64,
    /// Magnification.
    pub magnification: f64,
    /// Where a fixed sight is free of parallax, in m.
    pub fixed_at_m: f64,
    /// Nearest setting of an adjustable sight, in m.
    pub adjustable_from_m: f64,
    /// The pupil of the eye, in mm.
    pub eye_pupil_mm: f64,
    /// Diameter of the aiming circle, in cm.
    pub aiming_circle_cm: f64,
    /// Nearest, first and farthest range in m.
    pub ranges_m: (f64, f64, f64),
    /// Units of the words.
    pub units: Units,
}

/// Width and height of the eye that are drawn, mm.
const EYE_MM: f64 = 17.0;
/// The aiming circle takes this share of the drawing; errors at the same scale.
const CIRCLE_SHARE: f64 = 0.45;
/// An upright line reaches so far up and down, as a share of half the drawing.
const LINE_SHARE: f64 = 0.68;

/// Where the mark seems to lie on the target, in mm to the right; `None` when all is black.
///
/// A ray through the objective at height h heads for the axis at the parallax-free distance:
/// beyond it the mark seems to wander against the eye, nearer than it with the eye.
#[must_use]
pub fn mark_offset_mm(
    setting: ParallaxSetting,
    objective_mm: f64,
    magnification: f64,
    eye_pupil_mm: f64,
    eye_offset_mm: f64,
    range_m: f64,
) -> Option<f64> {
    let free_at_m = free_distance_m(setting, range_m);
    let size = with_offset_mm(
        effective_objective_mm(objective_mm, magnification),
        magnification,
        eye_pupil_mm,
        eye_offset_mm,
        free_at_m,
        range_m,
    )?;
    let side = if eye_offset_mm < 0.0 { -1.0 } else { 1.0 };
    let way = if range_m > free_at_m { -1.0 } else { 1.0 };
    Some(side * way * size)
}

/// The words for a place of the eye beside the axis.
#[must_use]
pub fn said_aside(to_mm: f64) -> String {
    let mm = number(to_mm.abs(), 1);
    if to_mm.abs() < 0.05 {
        t!("parallax-eye-centred")
    } else if to_mm > 0.0 {
        t!("parallax-eye-right", mm = mm)
    } else {
        t!("parallax-eye-left", mm = mm)
    }
}

/// An upright line, or an arrow at the edge if it lies beyond the drawing.
fn upright(svg: &mut Svg, class: &str, dashes: &str, x: f64, half_px: f64) {
    let long = LINE_SHARE * half_px;
    if x.abs() > half_px - 3.0 {
        let side = if x < 0.0 { -1.0 } else { 1.0 };
        let tip = side * (half_px - 5.0);
        let back = tip - side * 8.0;
        let d = filled!(
            "M{.1} 0H{.1}M{.1} -7L{.1} 0L{.1} 7",
            tip - side * 24.0,
            tip,
            back,
            tip,
            back
        );
        svg.line(class, 2.0, "", &d);
        return;
    }
    svg.line(
        class,
        2.0,
        dashes,
        &filled!("M{.2} {.1}V{.1}", x, -long, long),
    );
}

/// A word over or under a place, held within the drawing.
fn label(svg: &mut Svg, words: &str, x: f64, y: f64, half_px: f64) {
    // About half a letter's height for half a letter's width.
    let room = (half_px - 3.6 * words.chars().count() as f64 - 4.0).max(0.0);
    svg.text("ink-text", "middle", x.clamp(-room, room), y, words);
}

impl Parallax {
    fn mark(&self, setting: ParallaxSetting, eye_mm: f64, range_m: f64) -> Option<f64> {
        mark_offset_mm(
            setting,
            self.objective_mm,
            self.magnification,
            self.eye_pupil_mm,
            eye_mm,
            range_m,
        )
    }

    fn said(&self, mark: Option<f64>) -> String {
        let circle_mm = 10.0 * self.aiming_circle_cm;
        match mark {
            None => t!("parallax-black"),
            Some(mm) if mm.abs() < 0.5 => t!("parallax-still"),
            Some(mm) => t!(
                "parallax-off",
                cm = cm(self.units, 0.1 * mm.abs()),
                share = number(100.0 * share_of_circle(mm.abs(), circle_mm), 0)
            ),
        }
    }

    fn drawn(&self, eye_mm: f64, range_m: f64, width_px: f64) -> Drawn {
        let exit_mm = exit_pupil_mm(self.objective_mm, self.magnification);
        let fixed = ParallaxSetting::Fixed {
            free_at_m: self.fixed_at_m,
        };
        let adjustable = ParallaxSetting::Adjustable {
            nearest_m: self.adjustable_from_m,
        };
        let fixed = self.mark(fixed, eye_mm, range_m);
        let adjustable = self.mark(adjustable, eye_mm, range_m);
        let size = width_of_one(width_px, 2, 132.0, 300.0);
        let half = 0.5 * size;
        let mut eye = Svg::default();
        let px = size / EYE_MM;
        eye.line(
            "soft",
            1.0,
            "2 4",
            &filled!("M0 {.1}V{.1}", 6.0 - half, half - 6.0),
        );
        let (exit_px, pupil_px) = (0.5 * exit_mm * px, 0.5 * self.eye_pupil_mm * px);
        eye.disc("tone-dark", eye_mm * px, 0.0, pupil_px);
        eye.ring("pick", 2.0, "", 0.0, 0.0, exit_px);
        let exit = t!("parallax-exit-pupil", mm = number(exit_mm, 1));
        label(&mut eye, &exit, 0.0, -exit_px.min(half - 24.0) - 8.0, half);
        let pupil = t!("aperture-width-pupil", mm = number(self.eye_pupil_mm, 1));
        let under = pupil_px.max(exit_px).min(half - 24.0) + 18.0;
        label(&mut eye, &pupil, eye_mm * px, under, half);
        let mut target = Svg::default();
        let circle_px = CIRCLE_SHARE * size;
        let px_per_mm = circle_px / (10.0 * self.aiming_circle_cm);
        if let (Some(by_fixed), by_adjustable) = (fixed, adjustable.unwrap_or(0.0)) {
            target.ring("soft", 2.0, "", 0.0, 0.0, 0.5 * circle_px);
            target.line("soft", 1.0, "", &filled!("M{.1} 0H{.1}", -half, half));
            let at = (by_fixed * px_per_mm, by_adjustable * px_per_mm);
            upright(&mut target, "pick", "", at.0, half);
            upright(&mut target, "ink", "4 4", at.1, half);
            let beyond = LINE_SHARE * half;
            let words = format!(
                "{} {}",
                t!("parallax-mark-fixed"),
                cm(self.units, 0.1 * by_fixed.abs())
            );
            label(&mut target, &words, at.0, -beyond - 6.0, half);
            let words = t!("parallax-mark-adjustable");
            label(&mut target, &words, at.1, beyond + 15.0, half);
        } else {
            target.rectangle("view__tube", -half, -half, size, size);
        }
        let words = vec![
            format!(
                "{} {}",
                t!(
                    "parallax-fixed-at",
                    free = range(self.units, self.fixed_at_m),
                    at = range(self.units, range_m)
                ),
                self.said(fixed)
            ),
            format!(
                "{} {}",
                t!(
                    "parallax-adjustable-from",
                    nearest = range(self.units, self.adjustable_from_m)
                ),
                self.said(adjustable)
            ),
        ];
        let drawing = |name: String, said: String, inside: Svg| Drawing {
            name,
            said,
            class: "parallax",
            size_px: (size, size),
            origin_px: (half, half),
            inside,
            ..Drawing::default()
        };
        Drawn {
            drawings: vec![
                drawing(
                    t!("parallax-eye"),
                    t!(
                        "parallax-eye-said",
                        exit = number(exit_mm, 1),
                        pupil = number(self.eye_pupil_mm, 1)
                    ),
                    eye,
                ),
                drawing(
                    t!("parallax-target"),
                    format!("{} {}", t!("parallax-target-said"), words.together(" ")),
                    target,
                ),
            ],
            words,
            scale: t!(
                "parallax-scale",
                circle = cm(self.units, self.aiming_circle_cm)
            ),
        }
    }

    /// The eye behind the exit pupil, and what it makes of the mark.
    #[must_use]
    pub fn told(self) -> Told {
        let (near, first, far) = self.ranges_m;
        let units = self.units;
        Told {
            title: t!("parallax-title"),
            file: "parallax",
            leaves_out: t!("parallax-leaves-out"),
            sources: vec![
                t!("parallax-source"),
                t!(
                    "picture-inputs",
                    what = t!(
                        "parallax-inputs",
                        power = number(self.magnification, 1),
                        objective = number(self.objective_mm, 0),
                        pupil = number(self.eye_pupil_mm, 1),
                        fixed = range(units, self.fixed_at_m),
                        nearest = range(units, self.adjustable_from_m)
                    )
                ),
            ],
            handles: vec![
                Handle {
                    label: t!("parallax-offset"),
                    least: -8.0,
                    most: 8.0,
                    value: 2.0,
                    step: 0.1,
                    page: 1.0,
                    scale: Scale::Linear,
                    spoken: Callback::from(said_aside),
                },
                Handle {
                    label: t!("view-range"),
                    least: near,
                    most: far,
                    value: first,
                    step: 1.0,
                    page: 10.0,
                    scale: Scale::Ratio,
                    spoken: Callback::from(move |to: f64| range(units, to)),
                },
            ],
            draw: Rc::new(move |values, width_px| self.drawn(values[0], values[1], width_px)),
            run_s: None,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::mark_offset_mm;
    use crate::sight::ParallaxSetting::{Adjustable, Fixed};

    #[test]
    fn the_mark_stands_still_where_the_sight_is_free() {
        let fixed = Fixed { free_at_m: 100.0 };
        let at = |setting, eye, range| mark_offset_mm(setting, 50.0, 10.0, 3.0, eye, range);
        assert_eq!(at(fixed, 2.0, 100.0), Some(0.0));
        assert_eq!(at(Adjustable { nearest_m: 10.0 }, 2.0, 250.0), Some(0.0));
        // Beyond, against the eye; nearer, with it; both sides alike.
        let far = at(fixed, 1.0, 200.0).unwrap();
        let near = at(fixed, 1.0, 50.0).unwrap();
        assert!(far < 0.0 && near > 0.0);
        assert_eq!(at(fixed, -1.0, 200.0), Some(-far));
        // e = M·x·|R − Rp|/Rp while the eye's pupil lies inside the exit pupil.
        assert!((far + 10.0).abs() < 1e-9);
        assert_eq!(at(fixed, 6.0, 200.0), None);
    }
}
