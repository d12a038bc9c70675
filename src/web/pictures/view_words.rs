//! The view through the sight, in words.

use super::dusk_strip::said_minute;
use super::painter::{Painter, Seen, Stand, Through};
use super::parallax::said_aside;
use super::sights::Sight;
use super::trajectory::said_place;
use crate::drawing::glow::Glow;
use crate::drawing::silhouette::Tone;
use crate::drawing::view::{Yardstick, covered_cm, thinnest_px, yardstick};
use crate::need::answers::Units;
use crate::plain::Gathered;
use crate::plain::Together;
use crate::sight::FocalPlane;
use crate::sight::eye_box::eye_box;
use crate::sight::field::field_at_range_m;
use crate::sight::reticle::Role;
use crate::sight::subtension::{ARCMIN_PER_MRAD, true_subtension_mrad};
use crate::t;
use crate::wording::advice::capitalised;
use crate::wording::{angle, cm, field, number, range};

pub(super) fn yardstick_name(kind: Yardstick) -> String {
    match kind {
        Yardstick::CentreToBar => t!("view-centre-to-bar"),
        Yardstick::MarkToMark => t!("view-mark-to-mark"),
        Yardstick::CentreToRing => t!("view-centre-to-ring"),
        Yardstick::PostWidth => t!("view-post"),
        Yardstick::LineWidth => t!("view-line"),
    }
}

pub(super) fn yardstick_short(kind: Yardstick) -> String {
    match kind {
        Yardstick::CentreToBar => t!("view-short-bar"),
        Yardstick::MarkToMark => t!("view-short-mark"),
        Yardstick::CentreToRing => t!("view-short-ring"),
        Yardstick::PostWidth => t!("view-short-post"),
        Yardstick::LineWidth => t!("view-short-line"),
    }
}

/// Where a load strikes, aimed dead on: range in m and hold in mrad.
pub(super) fn said_hold(units: Units, (range_m, hold_mrad): (f64, f64)) -> String {
    t!(
        "view-hold",
        range = range(units, range_m),
        place = said_place(units, -0.1 * hold_mrad * range_m)
    )
}

/// The words for a magnification.
#[must_use]
pub fn said_power(magnification: f64) -> String {
    // Quarters as they stand on a box, tenths, whole.
    let is_whole = |parts: f64| (parts - parts.round()).abs() < 0.04;
    let decimals = if magnification > 9.95 || is_whole(magnification) {
        0
    } else if is_whole(4.0 * magnification) && !is_whole(10.0 * magnification) {
        2
    } else {
        1
    };
    t!("view-times", power = number(magnification, decimals))
}

/// What a mark keeps in either plane, and what that does at the lowest magnification.
pub(super) fn plane_rules(sight: &Sight) -> (String, String) {
    let (low, high) = (sight.magnification_low, sight.magnification_high);
    let times = high / low;
    if times < 1.05 {
        return (t!("view-first-rule"), t!("view-second-rule"));
    }
    let decimals = usize::from(times < 2.95 && (times - times.round()).abs() > 0.04);
    let (low, high) = (said_power(low), said_power(high));
    let times = number(times, decimals);
    (
        t!(
            "view-first-rule-low",
            low = low.clone(),
            high = high.clone(),
            times = times.clone()
        ),
        t!(
            "view-second-rule-low",
            low = low,
            high = high,
            times = times
        ),
    )
}

impl Painter {
    pub(super) fn words(
        &self,
        stand: Stand,
        dark: &Seen,
        both: &[Seen; 2],
        at_target: f64,
    ) -> Vec<String> {
        let bare = stand.through == Through::BareEye;
        let sight = self.sight_at(&stand);
        let magnification = if bare { 1.0 } else { self.power(&stand) };
        let range_m = stand.range_m;
        let at = range(self.units, range_m);
        let mut said = vec![t!(
            "view-picture",
            quarry = capitalised(&self.quarry.name),
            range = at.clone(),
            power = match stand.through {
                Through::BareEye => t!("view-bare-eye"),
                Through::This => said_power(magnification),
                Through::Other => format!("{}, {}", sight.name, said_power(magnification)),
            },
            time = said_minute(&self.evening, stand.minute)
        )];
        let width_m = field_at_range_m(sight.apparent_field_deg, magnification, range_m);
        if self.quarry.figure.width_cm() > 100.0 * width_m {
            said.push(t!("view-larger", field = field(self.units, width_m)));
        }
        if !bare && !self.holds.is_empty() {
            let ranges: Vec<String> = self
                .holds
                .iter()
                .map(|(range_m, _)| range(self.units, *range_m))
                .gathered();
            said.push(t!(
                "view-holds",
                one = if ranges.len() == 1 { "yes" } else { "no" },
                ranges = ranges.together(", ")
            ));
        }
        let light = self.light_words(&stand, dark, both);
        if bare {
            return vec![said.together(" "), light];
        }
        let mut all = vec![said.together(" ")];
        all.extend(self.plane_words(sight, magnification, range_m, &at, at_target));
        if let Some(glow) = stand.glow {
            all.push(glow_words(glow, dark, both));
        }
        all.push(light);
        all
    }

    /// What the yardstick covers in either plane, now and at the lowest magnification.
    pub(super) fn plane_words(
        &self,
        sight: &Sight,
        magnification: f64,
        range_m: f64,
        at: &str,
        at_target: f64,
    ) -> [String; 3] {
        let (kind, label_mrad) = yardstick(&sight.reticle);
        let what = yardstick_name(kind);
        let reference = sight.reference_magnification;
        let angle = |mrad| angle(sight.unit(), mrad);
        let centimetres = |mrad: f64| cm(self.units, covered_cm(mrad, range_m));
        let finest = thinnest_px(&sight.reticle, 1.0);
        let arcmin = |plane, magnification: f64| {
            let true_mrad = true_subtension_mrad(plane, finest, reference, magnification);
            number(true_mrad * ARCMIN_PER_MRAD * magnification, 1)
        };
        let mut first = t!(
            "view-first-said",
            what = what.clone(),
            angle = angle(label_mrad),
            cm = centimetres(label_mrad),
            range = at.to_owned(),
            arcmin = arcmin(FocalPlane::First, magnification)
        );
        let thin_px = finest * at_target;
        if thin_px < 0.8 {
            first.push(' ');
            first.push_str(&t!("view-thin", px = number(thin_px, 1)));
        }
        let second_mrad = |at| true_subtension_mrad(FocalPlane::Second, label_mrad, reference, at);
        let second = second_mrad(magnification);
        let second = if (second / label_mrad - 1.0).abs() < 0.005 {
            t!(
                "view-second-at-label",
                what = what.clone(),
                angle = angle(second),
                cm = centimetres(second),
                range = at.to_owned(),
                arcmin = arcmin(FocalPlane::Second, magnification)
            )
        } else {
            t!(
                "view-second-said",
                what = what.clone(),
                angle = angle(second),
                cm = centimetres(second),
                range = at.to_owned(),
                label = angle(label_mrad),
                reference = said_power(reference),
                arcmin = arcmin(FocalPlane::Second, magnification)
            )
        };
        let low = sight.magnification_low;
        let lowest = t!(
            "view-lowest-said",
            power = said_power(low),
            what = what,
            first = centimetres(label_mrad),
            arcmin = arcmin(FocalPlane::First, low),
            least = number(ACUTE_ARCMIN, 0),
            second = centimetres(second_mrad(low))
        );
        [first, second, lowest]
    }

    /// Where the eye is and what that costs.
    pub(super) fn eye_words(&self, stand: &Stand, dark: &Seen) -> String {
        let stance = self.stance(stand, dark.scene.seen.pupil_mm);
        let room = eye_box(
            stance.exit_pupil_mm,
            stance.eye_pupil_mm,
            stance.apparent_field_deg,
        );
        let mm = |mm: f64| number(mm, 1);
        let mut said = t!(
            "view-eye-room",
            exit = mm(stance.exit_pupil_mm),
            pupil = mm(stance.eye_pupil_mm),
            aside = mm(room.full_sideways_mm),
            gone = mm(room.gone_sideways_mm),
            along = number(room.half_along_mm, 0)
        );
        if stand.aside_mm != 0.0 || stand.behind_mm != 0.0 {
            let percent = |share: f64| number(100.0 * share, 0);
            said.push(' ');
            said.push_str(&t!(
                "view-eye-off",
                aside = said_aside(stand.aside_mm),
                along = said_along(stand.behind_mm),
                middle = percent(stance.share_at(0.0)),
                left = percent(stance.share_at(-1.0)),
                right = percent(stance.share_at(1.0))
            ));
            if stance.mean_share() < 0.001 {
                said.push(' ');
                said.push_str(&t!("view-eye-black"));
            } else if stand.aside_mm != 0.0 && stand.behind_mm == 0.0 {
                said.push(' ');
                said.push_str(&t!("view-eye-even"));
            }
        }
        said
    }

    pub(super) fn light_words(&self, stand: &Stand, dark: &Seen, both: &[Seen; 2]) -> String {
        let bare = stand.through == Through::BareEye;
        let mut light = Vec::new();
        if self.evening.scene_lx(stand.minute) <= 0.0 {
            light.push(t!("view-no-light"));
        }
        let apart = both.iter().all(|seen| seen.scene.body_margin > 0.0);
        light.push(if apart {
            t!("view-body-apart")
        } else {
            t!("view-body-lost")
        });
        let small: Vec<f64> = dark
            .scene
            .left
            .iter()
            .zip(&self.quarry.figure.pieces)
            .filter(|(_, piece)| piece.tone != Tone::Dark || piece.seen_area_cm2 < 60.0)
            .map(|(left, _)| *left)
            .gathered();
        let lost = small.iter().filter(|left| **left <= 0.0).count();
        if apart && lost > 0 {
            let share = 100.0 * lost as f64 / small.len() as f64;
            light.push(t!("view-fine-lost", share = number(share, 0)));
        }
        let gone = |role: Role| {
            both.iter().any(|seen| {
                seen.lines
                    .iter()
                    .any(|(_, left, of)| *of == role && *left <= 0.0)
            })
        };
        if gone(Role::Centre) && !bare && stand.glow.is_none() {
            let bars = if gone(Role::Bar) { "no" } else { "yes" };
            light.push(t!("view-line-lost", bars = bars));
        }
        light.push(t!("view-identify"));
        light.together(" ")
    }
}

/// A line that looks narrower than this is hard to use, in minutes of arc.
pub(super) const ACUTE_ARCMIN: f64 = 1.0;

pub(super) fn glow_words(glow: Glow, dark: &Seen, both: &[Seen; 2]) -> String {
    let veiled = both.iter().map(|seen| seen.veiled_by).fold(0.0, f64::max);
    let ground = dark.light.ground_cd_m2();
    let luminance = glow.luminance_cd_m2();
    let strength = number(luminance, if luminance < 1.0 { 2 } else { 0 });
    let mut said = match glow {
        Glow::Night => t!("view-lit-night-said", luminance = strength),
        Glow::Day => t!("view-lit-day-said", luminance = strength),
    };
    said.push(' ');
    said.push_str(&if luminance < 0.1 * ground {
        t!("view-lit-unseen")
    } else if veiled > 0.1 {
        let lost = both
            .iter()
            .any(|seen| seen.scene.body_margin <= 0.0 && dark.scene.body_margin > 0.0);
        let share = number(100.0 * veiled.min(1e4), 0);
        if lost {
            t!("view-lit-veils-lost", share = share)
        } else {
            t!("view-lit-veils", share = share)
        }
    } else {
        t!("view-lit-harmless", share = number(100.0 * veiled, 1))
    });
    said
}

/// The words for a place of the eye along the axis.
pub(super) fn said_along(behind_mm: f64) -> String {
    let mm = number(behind_mm.abs(), 0);
    if behind_mm.abs() < 0.5 {
        t!("view-eye-at")
    } else if behind_mm > 0.0 {
        t!("view-eye-far", mm = mm)
    } else {
        t!("view-eye-near", mm = mm)
    }
}
