//! Behind the evening: sizes, second opinion, pupil, steps, air, coat, morning, Moon.

use super::{Sheet, exact, with};
use crate::advice::evening::{Look, Moonlit};
use crate::advice::reasons::{HIGHS, OBJECTIVES};
use crate::advice::report::{
    ALL_NIGHT_MIN, Effect, Figure, LastLight, LightKind, NoteKey, Quantity,
};
use crate::eye::person::{HELD_ABOVE_YEARS, HELD_BELOW_YEARS};
use crate::eye::{self, labels};
use crate::sight::{Specification, fits, pupil};
use crate::sky::ground::Cloud;

/// Share of the box around a body that the body fills (assumption).
const BODY_FILLS: f64 = 0.6;
/// Johnson's cycles over the critical size: recognised, identified.
const IDENTIFIED_OVER_RECOGNISED: f64 = 6.4 / 4.0;
/// A lamp's scotopic to photopic ratio, the lower end of what twilight is met with.
const WARM_SP_RATIO: f64 = eye::equivalent::LABORATORY_SP_RATIO;

fn until(light: LastLight) -> Effect {
    match light {
        LastLight::At { minutes, spread } => with(Quantity::UntilMin, minutes, spread),
        LastLight::Always => exact(Quantity::UntilMin, ALL_NIGHT_MIN),
        LastLight::Never => exact(Quantity::UntilMin, -ALL_NIGHT_MIN),
    }
}

/// A sight held at one magnification.
fn at_power(s: &Specification, magnification: f64) -> Specification {
    Specification {
        magnification_low: magnification,
        magnification_high: magnification,
        ..*s
    }
}

pub(super) fn notes(sheet: &mut Sheet, beside: Option<&Specification>) {
    labels_of_the_box(sheet);
    veil(sheet);
    if !matches!(sheet.typical.light, LightKind::Dusk | LightKind::Moon) {
        return;
    }
    sizes(sheet);
    second_opinion(sheet);
    difference(sheet, beside);
    pupil_and_rods(sheet);
    steps(sheet);
    air_and_coat(sheet);
    morning_and_moon(sheet);
}

fn sizes(sheet: &mut Sheet) {
    let (typical, ground) = (sheet.typical, sheet.ground);
    let usual = typical.look(ground);
    let what = sheet.situation.what;
    let end = |side_m: f64| {
        let look = Look { side_m, ..usual };
        until(typical.end_of(typical.last_log_of(ground, Some(&sheet.own), &look)))
    };
    let body_m = 1e-3 * (BODY_FILLS * what.length_mm() * what.height_mm()).sqrt();
    let ends = [
        (NoteKey::Detection, end(body_m)),
        (NoteKey::Recognition, end(usual.side_m)),
        (
            NoteKey::Identification,
            end(usual.side_m / IDENTIFIED_OVER_RECOGNISED),
        ),
    ];
    let kept = if what.is_target() { 1 } else { 3 };
    for (key, effect) in ends.into_iter().take(kept) {
        let side = match key {
            NoteKey::Detection => body_m,
            NoteKey::Recognition => usual.side_m,
            _ => usual.side_m / IDENTIFIED_OVER_RECOGNISED,
        };
        sheet.put(key, vec![effect, exact(Quantity::CircleCm, 100.0 * side)]);
    }
}

fn second_opinion(sheet: &mut Sheet) {
    let power = sheet.late();
    let (typical, ground) = (sheet.typical, sheet.ground);
    let fixed = at_power(&sheet.own, power);
    let look = typical.look(ground);
    let threshold = typical.end_of(typical.last_log_of(ground, Some(&fixed), &look));
    let ring = typical.end_of(typical.ring_log(ground, &sheet.own, power));
    let apart = match (threshold, ring) {
        (LastLight::At { minutes: a, .. }, LastLight::At { minutes: b, .. }) => b - a,
        _ => return,
    };
    sheet.put(
        NoteKey::SecondOpinion,
        vec![
            until(threshold),
            until(ring),
            exact(Quantity::LaterMin, apart),
            exact(Quantity::Magnification, power),
        ],
    );
}

fn difference(sheet: &mut Sheet, beside: Option<&Specification>) {
    let Some(other) = beside else { return };
    let (typical, ground) = (sheet.typical, sheet.ground);
    let usual = typical.look(ground);
    let gain = |pupil_mm: f64| {
        let look = Look { pupil_mm, ..usual };
        typical.gain_min(ground, (other, &look), (&sheet.own, &look))
    };
    let Some(own) = gain(0.0) else { return };
    let measured = sheet.need.eye.dark_pupil_mm.is_some();
    if measured {
        // The mean person of that age, to see what the measurement changes.
        let age = sheet.need.eye.age_years.value.value;
        let (Some(eye), offset) = (
            typical.eye,
            typical.eye.map_or(0.0, |e| e.pupil_offset_mm()),
        ) else {
            return;
        };
        let Some(mean) = gain(-offset) else { return };
        sheet.put(
            NoteKey::DifferenceMeasured,
            vec![
                with(Quantity::LaterMin, own.value, own.spread),
                exact(Quantity::LaterMin, mean.value),
                exact(Quantity::PupilMm, eye.pupil_mm(0.01)),
                exact(Quantity::AgeYears, age),
            ],
        );
    } else {
        let spread = eye::pupil::SPREAD_MM;
        let (Some(wide), Some(narrow)) = (gain(spread), gain(-spread)) else {
            return;
        };
        sheet.put(
            NoteKey::Difference,
            vec![
                with(Quantity::LaterMin, own.value, own.spread),
                exact(Quantity::LaterMin, wide.value),
                exact(Quantity::LaterMin, narrow.value),
                exact(Quantity::PupilMm, spread),
            ],
        );
    }
}

fn pupil_and_rods(sheet: &mut Sheet) {
    let Some(eye) = sheet.typical.eye else { return };
    let power = sheet.late();
    let luminance = sheet.typical.stop_cd_m2;
    let open = eye.pupil_mm(luminance);
    let beam = pupil::exit_pupil_mm(sheet.own.objective_mm, power);
    let share = |part: f64, whole: f64| 100.0 * (part / whole * (part / whole)).min(1.0);
    let spread = if sheet.need.eye.dark_pupil_mm.is_some() {
        eye::people::MEASURED_SPREAD_MM
    } else {
        eye::pupil::SPREAD_MM
    };
    sheet.put(
        NoteKey::PupilUsed,
        vec![
            with(Quantity::PupilMm, open, spread),
            exact(Quantity::Magnification, power),
            exact(Quantity::ExitPupilMm, beam),
            exact(Quantity::Percent, share(open, beam)),
            exact(Quantity::Percent, share(beam, open)),
        ],
    );
    let optics = eye::Optics::sight(
        power,
        pupil::effective_objective_mm(sheet.own.objective_mm, power),
        fits::transmission_night(sheet.own.grade).value,
    );
    let ratio = eye::equivalent::TWILIGHT_SP_RATIO;
    let seen = eye::equivalent_luminance(luminance, &eye, &optics, ratio);
    let look = sheet.typical.look(sheet.ground);
    let warm = Look {
        sp_ratio: WARM_SP_RATIO,
        ..look
    };
    let Some(change) =
        sheet
            .typical
            .gain_min(sheet.ground, (&sheet.own, &look), (&sheet.own, &warm))
    else {
        return;
    };
    sheet.put(
        NoteKey::Adaptation,
        vec![
            exact(Quantity::LuminanceCdM2, luminance),
            exact(Quantity::Percent, 100.0 * seen.adaptation),
            exact(Quantity::Ratio, ratio),
            exact(Quantity::Ratio, WARM_SP_RATIO),
            exact(Quantity::LaterMin, change.value),
        ],
    );
}

/// What one step of a sight, or ten years, is worth at the power that is set late.
fn steps(sheet: &mut Sheet) {
    let (typical, ground) = (sheet.typical, sheet.ground);
    let power = sheet.late();
    let fixed = at_power(&sheet.own, power);
    let look = typical.look(ground);
    let gain =
        |s: &Specification, changed: &Look| typical.gain_min(ground, (&fixed, &look), (s, changed));
    let mut found = Vec::new();
    if let Some(&objective_mm) = OBJECTIVES
        .iter()
        .find(|&&step| step > sheet.own.objective_mm + 1.0)
    {
        let larger = Specification {
            objective_mm,
            ..fixed
        };
        found.push((
            NoteKey::StepObjective,
            gain(&larger, &look),
            exact(Quantity::LengthMm, objective_mm),
        ));
    }
    if let Some(&more) = HIGHS.iter().find(|&&step| step > power + 0.3) {
        found.push((
            NoteKey::StepMagnification,
            gain(&at_power(&fixed, more), &look),
            exact(Quantity::Magnification, more),
        ));
    }
    let clearer = Look {
        transmission_more: 0.05,
        ..look
    };
    // One thing differs, and little: most of the model's own error is shared.
    let by_glass = gain(&fixed, &clearer).map(|figure| Figure {
        spread: figure.spread.min(0.2 * figure.value.abs() + 0.03),
        ..figure
    });
    found.push((
        NoteKey::StepTransmission,
        by_glass,
        exact(Quantity::Percent, 5.0),
    ));
    // The models know no ten years more where they hold the age.
    let years = sheet.need.eye.age_years.value.value;
    if years >= HELD_BELOW_YEARS && years + 10.0 <= HELD_ABOVE_YEARS {
        let older = Look {
            years_more: 10.0,
            ..look
        };
        found.push((
            NoteKey::StepAge,
            gain(&fixed, &older),
            exact(Quantity::AgeYears, years + 10.0),
        ));
    }
    for (key, figure, to) in found {
        if let Some(figure) = figure {
            sheet.put(
                key,
                vec![with(Quantity::LaterMin, figure.value, figure.spread), to],
            );
        }
    }
}

fn air_and_coat(sheet: &mut Sheet) {
    let (typical, ground) = (sheet.typical, sheet.ground);
    let look = typical.look(ground);
    let own = sheet.own;
    let farthest_m = ground.farthest_m();
    let far = Look {
        range_m: farthest_m,
        ..look
    };
    let without = Look {
        clear_air: true,
        ..far
    };
    let (left, _) = typical.air(ground, farthest_m);
    if let Some(lost) = typical.gain_min(ground, (&own, &without), (&own, &far)) {
        sheet.put(
            NoteKey::Haze,
            vec![
                exact(Quantity::RangeM, farthest_m),
                exact(Quantity::VisibilityM, sheet.need.light.visibility_m.value),
                exact(Quantity::Contrast, left),
                with(Quantity::LaterMin, lost.value, 0.3 * lost.value.abs() + 0.2),
            ],
        );
    }
    if let Some((wet, lying)) = typical.contrast_wet_and_lying() {
        let changed = |contrast: f64| {
            let other = Look {
                contrast: contrast.abs().max(crate::advice::occasions::LEAST_CONTRAST),
                ..look
            };
            typical.gain_min(ground, (&own, &look), (&own, &other))
        };
        if let (Some(by_wet), Some(by_lying)) = (changed(wet), changed(lying)) {
            sheet.put(
                NoteKey::Coat,
                vec![
                    exact(Quantity::Contrast, typical.contrast_as_it_is()),
                    exact(Quantity::Contrast, wet),
                    exact(Quantity::LaterMin, by_wet.value),
                    exact(Quantity::Contrast, lying),
                    exact(Quantity::LaterMin, by_lying.value),
                ],
            );
        }
    }
    let log_l = typical.last_log_of(ground, Some(&own), &look);
    let under = |cloud: Cloud| {
        let factor = cloud.factor();
        let clear = typical.minutes(log_l)?;
        let at = |share: f64| typical.minutes(log_l - libm::log10(share));
        let usual = at(factor.usual)? - clear;
        let (dark, bright) = (at(factor.least)?, at(factor.most)?);
        Some(with(Quantity::LaterMin, usual, 0.25 * (bright - dark)))
    };
    if let (Some(closed), Some(dark)) = (under(Cloud::Overcast), under(Cloud::Dark)) {
        sheet.put(NoteKey::Weather, vec![closed, dark]);
    }
}

fn morning_and_moon(sheet: &mut Sheet) {
    let (typical, ground) = (sheet.typical, sheet.ground);
    let look = typical.look(ground);
    let log_l = typical.last_log_of(ground, Some(&sheet.own), &look);
    let bare = typical.last_log_of(ground, None, &look);
    if let (Some(from), Some(bare)) = (
        typical.before_sunrise_min(log_l),
        typical.before_sunrise_min(bare),
    ) {
        sheet.put(
            NoteKey::Dawn,
            vec![
                with(Quantity::BeforeSunriseMin, from.value, from.spread),
                with(Quantity::BeforeSunriseMin, bare.value, bare.spread),
            ],
        );
    }
    let by_moon = Look {
        sp_ratio: eye::equivalent::MOONLIGHT_SP_RATIO,
        ..look
    };
    let log_moon = typical.last_log_of(ground, Some(&sheet.own), &by_moon);
    match typical.moonlit(log_l, log_moon) {
        Some(Moonlit::All) => sheet.put(
            NoteKey::MoonAll,
            vec![exact(Quantity::Ratio, by_moon.sp_ratio)],
        ),
        Some(Moonlit::Not) => sheet.put(
            NoteKey::MoonNone,
            vec![exact(Quantity::Ratio, by_moon.sp_ratio)],
        ),
        Some(Moonlit::Again { from_min, to_min }) => sheet.put(
            NoteKey::MoonBack,
            vec![
                exact(Quantity::MinutesTonight, from_min),
                exact(Quantity::MinutesTonight, to_min),
                exact(Quantity::Ratio, by_moon.sp_ratio),
            ],
        ),
        None => {}
    }
}

fn labels_of_the_box(sheet: &mut Sheet) {
    let (m, d) = (sheet.own.magnification_high, sheet.own.objective_mm);
    sheet.put(
        NoteKey::Labels,
        vec![
            exact(Quantity::Ratio, labels::twilight_number(m, d)),
            exact(Quantity::Ratio, labels::relative_brightness_mm2(m, d)),
            exact(Quantity::Magnification, m),
        ],
    );
}

fn veil(sheet: &mut Sheet) {
    let glare = fits::veiling_glare(sheet.own.grade);
    let stray = sheet
        .typical
        .eye
        .map_or(0.0, |eye| eye::veil::straylight_index(eye.age_years()));
    let surround = sheet.typical.surround;
    sheet.put(
        NoteKey::Veil,
        vec![
            with(Quantity::Percent, 100.0 * glare.value, 100.0 * glare.spread),
            exact(Quantity::Percent, 100.0 * stray),
            exact(
                Quantity::Contrast,
                1.0 / eye::veil::veil_factor(glare.value + stray, surround),
            ),
            exact(Quantity::Ratio, surround),
            exact(
                Quantity::Contrast,
                fits::transmission_day(sheet.own.grade).value,
            ),
            exact(
                Quantity::Contrast,
                fits::transmission_night(sheet.own.grade).value,
            ),
        ],
    );
}
