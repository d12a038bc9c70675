//! Reasons: what one step less loses and one step more gains, element by element.

use super::candidates::Candidate;
use super::coverage::Account;
use super::evening::Typical;
use super::limits::{FORWARD_FROM_MM, allows};
use super::line::{line, up_from_zero_mrad};
use super::needs::mark::Mark;
use super::picks::changes;
use super::ranking::Ranked;
use super::report::{Cause, Effect, Element, Pick, Quantity, Reason, Setting, Standing, Step};
use crate::filled;
use crate::plain::Gathered;
use crate::sight::parallax as sight_parallax;
use crate::sight::{
    Elevation, FieldClass, FocalPlane, GlassGrade, Illumination, ParallaxSetting, ReticleFamily,
    Specification, field, pupil,
};

/// The ladders of the trade: what counts as one step.
pub(crate) const LOWS: [f64; 11] = [1.0, 1.5, 2.0, 2.5, 3.0, 4.0, 5.0, 6.0, 8.0, 10.0, 12.0];
pub(crate) const HIGHS: [f64; 15] = [
    2.5, 4.0, 5.0, 6.0, 8.0, 10.0, 12.0, 16.0, 20.0, 24.0, 30.0, 36.0, 40.0, 50.0, 60.0,
];
pub(crate) const OBJECTIVES: [f64; 9] = [20.0, 24.0, 28.0, 32.0, 36.0, 42.0, 50.0, 56.0, 60.0];
const TUBES: [f64; 3] = [25.4, 30.0, 34.0];
const EYE_RELIEFS: [f64; 4] = [85.0, 90.0, 95.0, 100.0];

/// The next rung below and above a value.
fn rungs(ladder: &[f64], value: f64) -> (Option<f64>, Option<f64>) {
    (
        ladder.iter().copied().rfind(|&x| x < value - 0.3),
        ladder.iter().copied().find(|&x| x > value + 0.3),
    )
}

/// Puts another reticle in: one that nobody builds lit loses its light.
pub(super) fn put_reticle(s: &mut Specification, family: ReticleFamily) {
    use ReticleFamily as R;
    s.reticle = family;
    let built_lit = [R::ThickThin, R::CentreDot, R::CircleDot, R::MradMarks];
    if !built_lit.contains(&family) {
        s.illumination = Illumination::Unlit;
    }
}

/// Puts another top power on, with what the trade builds around it.
pub(super) fn put_top_power(s: &mut Specification, power: f64) {
    s.magnification_high = power;
    if power > 12.0 {
        s.tube_mm = s.tube_mm.max(30.0);
        if matches!(s.parallax, ParallaxSetting::Fixed { .. }) {
            s.parallax = ParallaxSetting::Adjustable { nearest_m: 25.0 };
        }
    }
}

/// The key of a wire value, as it is serialised.
pub(crate) fn key(value: impl core::fmt::Debug) -> Setting {
    Setting::Key(crate::plain::key(&value))
}

/// What of a specification an element is.
pub(crate) fn setting(element: Element, s: &Specification) -> Setting {
    use super::report as wire;
    match element {
        Element::MagLow => Setting::Number(s.magnification_low),
        Element::MagHigh => Setting::Number(s.magnification_high),
        Element::ObjectiveMm => Setting::Number(s.objective_mm),
        Element::TubeMm => Setting::Number(s.tube_mm),
        Element::Plane => key(wire::Plane::from(s.plane)),
        Element::Reticle => key(wire::Reticle::from(s.reticle)),
        Element::Illumination => key(wire::Lit::from(s.illumination)),
        Element::Parallax => Setting::Key(match s.parallax {
            ParallaxSetting::Fixed { free_at_m } => filled!("fixed_{}", free_at_m),
            ParallaxSetting::Adjustable { nearest_m } => filled!("adjustable_{}", nearest_m),
        }),
        Element::Elevation => key(wire::Turret::from(s.elevation)),
        Element::EyeReliefMm => Setting::Number(s.eye_relief_mm),
        Element::FieldLowMPer100m => key(wire::FieldWidth::from(s.field)),
        Element::MassG => Setting::Number(10.0 * (0.1 * Candidate::of(*s).mass_g).round()),
        _ => key(wire::Grade::from(s.grade)),
    }
}

/// One step less and one step more of an element, the rest as it is.
fn steps(element: Element, s: &Specification) -> (Option<Specification>, Option<Specification>) {
    let with = |change: &dyn Fn(&mut Specification)| {
        let mut changed = *s;
        change(&mut changed);
        Some(changed)
    };
    let number = |ladder: &[f64], value: f64, put: &dyn Fn(&mut Specification, f64)| {
        let (less, more) = rungs(ladder, value);
        (
            less.and_then(|x| with(&|s| put(s, x))),
            more.and_then(|x| with(&|s| put(s, x))),
        )
    };
    match element {
        Element::MagLow => {
            let (less, more) = number(&LOWS, s.magnification_low, &|s, x| {
                s.magnification_low = x;
            });
            let fixed = s.zoom_ratio() < 1.01;
            (
                less,
                more.filter(|m| !fixed && m.magnification_low <= m.magnification_high),
            )
        }
        Element::MagHigh => {
            let (less, more) = number(&HIGHS, s.magnification_high, &put_top_power);
            let fixed = s.zoom_ratio() < 1.01;
            (
                less.filter(|m| !fixed && m.magnification_low <= m.magnification_high),
                more,
            )
        }
        Element::ObjectiveMm => number(&OBJECTIVES, s.objective_mm, &|s, x| s.objective_mm = x),
        Element::TubeMm => number(&TUBES, s.tube_mm, &|s, x| s.tube_mm = x),
        Element::EyeReliefMm if s.eye_relief_mm < FORWARD_FROM_MM => {
            number(&EYE_RELIEFS, s.eye_relief_mm, &|s, x| s.eye_relief_mm = x)
        }
        Element::EyeReliefMm => (with(&|s| s.eye_relief_mm = 90.0), None),
        Element::Plane => match s.plane {
            FocalPlane::First => (with(&|s| s.plane = FocalPlane::Second), None),
            FocalPlane::Second => (None, with(&|s| s.plane = FocalPlane::First)),
        },
        Element::Reticle => {
            // Finer and bolder.
            use ReticleFamily as R;
            let finer = match s.reticle {
                R::FineCrosshair => None,
                R::HeavyNight => Some(R::ThreePost),
                R::ThreePost | R::Post | R::CircleDot => Some(R::ThickThin),
                R::MarkGrid => Some(R::MradMarks),
                _ => Some(R::FineCrosshair),
            };
            let bolder = match s.reticle {
                R::HeavyNight => None,
                R::ThreePost | R::Post | R::CircleDot => Some(R::HeavyNight),
                R::ThickThin => Some(R::ThreePost),
                R::MradMarks => Some(R::MarkGrid),
                _ => Some(R::ThickThin),
            };
            let put = |family: Option<R>| family.and_then(|f| with(&|s| put_reticle(s, f)));
            (put(finer), put(bolder))
        }
        Element::Illumination => match s.illumination {
            Illumination::Unlit => (
                None,
                with(&|s| {
                    s.illumination = if s.magnification_low < 1.75 {
                        Illumination::DayBright
                    } else {
                        Illumination::NightFine
                    };
                }),
            ),
            Illumination::NightFine | Illumination::DayBright => (
                with(&|s| s.illumination = Illumination::Unlit),
                with(&|s| s.illumination = Illumination::Both),
            ),
            Illumination::Both => (with(&|s| s.illumination = Illumination::NightFine), None),
        },
        Element::Parallax => {
            let fixed = |free_at_m| ParallaxSetting::Fixed { free_at_m };
            let adjustable = ParallaxSetting::Adjustable { nearest_m: 10.0 };
            match s.parallax {
                ParallaxSetting::Fixed { free_at_m } => (
                    with(&|s| s.parallax = fixed(if free_at_m > 70.0 { 50.0 } else { 100.0 })),
                    with(&|s| s.parallax = adjustable),
                ),
                ParallaxSetting::Adjustable { .. } => (with(&|s| s.parallax = fixed(100.0)), None),
            }
        }
        Element::Elevation => match s.elevation {
            Elevation::Capped => (None, with(&|s| s.elevation = Elevation::DialZeroStop)),
            Elevation::RingForLoad => (
                with(&|s| s.elevation = Elevation::Capped),
                with(&|s| s.elevation = Elevation::DialZeroStop),
            ),
            Elevation::DialZeroStop => (with(&|s| s.elevation = Elevation::Capped), None),
        },
        Element::FieldLowMPer100m => match s.field {
            FieldClass::Narrow => (None, with(&|s| s.field = FieldClass::Usual)),
            FieldClass::Usual => (
                with(&|s| s.field = FieldClass::Narrow),
                with(&|s| s.field = FieldClass::Wide),
            ),
            FieldClass::Wide => (with(&|s| s.field = FieldClass::Usual), None),
        },
        _ => match s.grade {
            GlassGrade::Basic => (None, with(&|s| s.grade = GlassGrade::Good)),
            GlassGrade::Good => (
                with(&|s| s.grade = GlassGrade::Basic),
                with(&|s| s.grade = GlassGrade::Best),
            ),
            GlassGrade::Best => (with(&|s| s.grade = GlassGrade::Good), None),
        },
    }
}

/// Elements of the line that reasons are given for.
pub(super) const ELEMENTS: [Element; 13] = [
    Element::MagLow,
    Element::MagHigh,
    Element::ObjectiveMm,
    Element::TubeMm,
    Element::Plane,
    Element::Reticle,
    Element::Illumination,
    Element::Parallax,
    Element::Elevation,
    Element::EyeReliefMm,
    Element::FieldLowMPer100m,
    Element::Grade,
    Element::MassG,
];

/// The quantity that shows an element best.
fn axis(ranked: &Ranked, typical: &Typical, element: Element) -> Quantity {
    let late = ranked.ground.slate.late > 0 && typical.has_evening();
    match element {
        Element::MagLow => Quantity::FieldAtNearestM,
        Element::MagHigh => Quantity::DetailAtFarthestMm,
        Element::ObjectiveMm if late => Quantity::MinutesTonight,
        Element::ObjectiveMm => Quantity::ExitPupilMm,
        Element::TubeMm | Element::Elevation => Quantity::TravelMrad,
        Element::Plane | Element::Illumination => Quantity::MarkArcmin,
        Element::Reticle => Quantity::CoveredCm,
        Element::Parallax => Quantity::ParallaxCm,
        Element::EyeReliefMm => Quantity::EyeReliefMm,
        Element::FieldLowMPer100m => Quantity::FieldMPer100m,
        Element::MassG => Quantity::MassG,
        Element::Grade if late => Quantity::MinutesTonight,
        _ => Quantity::Contrast,
    }
}

/// What a specification reaches in a quantity that shows an element.
#[must_use]
pub fn reached(
    ranked: &Ranked,
    typical: &Typical,
    s: &Specification,
    account: &Account,
    quantity: Quantity,
) -> Option<f64> {
    let ground = &ranked.ground;
    let candidate = Candidate::of(*s);
    let nearest_m = ground.nearest_m();
    let farthest_m = ground.farthest_m();
    let set = if ground.slate.late > 0 && ground.slate.late * 2 >= ground.slate.count {
        account.set[0]
    } else {
        account.set[1]
    };
    let width = field::field_m_per_100m(candidate.apparent_deg, s.magnification_low);
    Some(match quantity {
        Quantity::FieldAtNearestM => width * nearest_m / 100.0,
        Quantity::FieldMPer100m => width,
        Quantity::CrossingSeconds => {
            let run = fastest_m_s(ranked);
            if run <= 0.0 {
                return None;
            }
            width * nearest_m / 100.0 / run
        }
        Quantity::DetailAtFarthestMm => {
            let exit = pupil::exit_pupil_mm(s.objective_mm, s.magnification_high);
            let mar = crate::eye::acuity::minimum_angle_arcmin(
                crate::eye::acuity::image_luminance_cd_m2(100.0, 0.9, exit, 3.0),
            );
            1.8 * mar / crate::sight::subtension::ARCMIN_PER_MRAD * farthest_m
                / s.magnification_high
        }
        Quantity::MinutesTonight => match typical.last_light(ground, Some(s)) {
            super::report::LastLight::At { minutes, .. } => minutes,
            _ => return None,
        },
        Quantity::ExitPupilMm => pupil::exit_pupil_mm(s.objective_mm, set),
        Quantity::TravelMrad => up_from_zero_mrad(ground, &candidate),
        Quantity::MarkArcmin => {
            let mark = Mark::of(s);
            let at = if s.plane == FocalPlane::First {
                s.magnification_low
            } else {
                set
            };
            libm::pow(10.0, f64::from(mark.log_seen(at).0))
        }
        Quantity::CoveredCm => {
            let mark = Mark::of(s);
            0.1 * libm::pow(10.0, f64::from(mark.log_true(set))) * farthest_m
        }
        Quantity::ParallaxCm => {
            0.1 * worst_parallax_mm(s, nearest_m, farthest_m, set, day_pupil_mm(ranked))
        }
        Quantity::EyeReliefMm => s.eye_relief_mm,
        Quantity::MassG => candidate.mass_g,
        Quantity::Contrast => {
            1.0 / crate::eye::veil::veil_factor(
                crate::sight::fits::veiling_glare(s.grade).value,
                typical.surround,
            )
        }
        _ => return None,
    })
}

/// The worse parallax error at the nearest and the farthest shot, with the usual cheek, mm.
#[must_use]
pub fn worst_parallax_mm(
    s: &Specification,
    nearest_m: f64,
    farthest_m: f64,
    magnification: f64,
    pupil_mm: f64,
) -> f64 {
    let effective = pupil::effective_objective_mm(s.objective_mm, magnification);
    [nearest_m, farthest_m]
        .into_iter()
        .map(|range_m| {
            sight_parallax::usual_cheek_mm(
                effective,
                magnification,
                pupil_mm,
                sight_parallax::free_distance_m(s.parallax, range_m),
                range_m,
            )
        })
        .fold(0.0, f64::max)
}

/// The pupil by day, mm.
#[must_use]
pub fn day_pupil_mm(ranked: &Ranked) -> f64 {
    let need = &ranked.ground.need;
    super::occasions::pupil_mm(need, need.eye.age_years.value.value, 300.0, 0.0)
}

/// The fastest that game runs among the situations in which it moves, m/s.
#[must_use]
pub fn fastest_m_s(ranked: &Ranked) -> f64 {
    ranked
        .ground
        .need
        .situations
        .iter()
        .filter(|s| s.moving_share > 0.1)
        .map(|s| s.what.run_m_s())
        .fold(0.0, f64::max)
}

/// The spread of a reached quantity, for the small graphic.
pub(super) fn spread(quantity: Quantity, value: f64) -> f64 {
    match quantity {
        Quantity::FieldAtNearestM | Quantity::FieldMPer100m => 0.05 * value.abs(),
        Quantity::DetailAtFarthestMm => 0.2 * value.abs(),
        Quantity::MinutesTonight => 0.5,
        Quantity::ExitPupilMm => 0.2,
        Quantity::TravelMrad => 1.5,
        Quantity::MarkArcmin | Quantity::CoveredCm => 0.1 * value.abs(),
        Quantity::ParallaxCm => 0.4 * value.abs(),
        Quantity::EyeReliefMm => 3.0,
        // The fit's own, of which sights that differ little share most.
        Quantity::MassG => (0.1 * value.abs()).min(49.0),
        _ => 0.0,
    }
}

/// The cause that grows most from one account to another, if anything is lost.
#[must_use]
pub fn lost_to(from: &Account, to: &Account) -> Option<Cause> {
    if to.served >= from.served - 5e-4 {
        return None;
    }
    let share = |account: &Account, cause: Cause| {
        account
            .lost
            .iter()
            .find(|(known, _)| *known == cause)
            .map_or(0.0, |(_, share)| *share)
    };
    to.lost
        .iter()
        .map(|&(cause, lost)| (cause, lost - share(from, cause)))
        .fold(None, |worst: Option<(Cause, f64)>, next| match worst {
            Some(known) if known.1 >= next.1 => Some(known),
            _ => Some(next),
        })
        .filter(|(_, grown)| *grown > 0.0)
        .map(|(cause, _)| cause)
}

/// The value of a specification in points, outside the list of candidates.
#[must_use]
pub fn value(ranked: &Ranked, s: &Specification, account: &Account) -> f64 {
    100.0 * account.served - ranked.costs.points(&Candidate::of(*s))
}

fn standing(first: &Pick, element: Element) -> Standing {
    let r = &first.ranges;
    match element {
        Element::MagLow => r.mag_low.standing,
        Element::MagHigh => r.mag_high.standing,
        Element::ObjectiveMm => r.objective_mm.standing,
        Element::TubeMm => r.tube_mm.standing,
        Element::Plane => r.plane.standing,
        Element::Reticle => r.reticle.standing,
        Element::Illumination => r.illumination.standing,
        Element::Parallax => r.parallax.standing,
        Element::Elevation => r.elevation.standing,
        Element::EyeReliefMm => r.eye_relief_mm.standing,
        Element::FieldLowMPer100m => r.field_low_m_per_100m.standing,
        Element::MassG => r.mass_g.standing,
        _ => r.grade.standing,
    }
}

/// The reason for one element of the first pick; none where nobody builds another. A step
/// less of mass is the lightest sight that serves almost as well.
#[must_use]
pub fn reason(
    ranked: &Ranked,
    typical: &Typical,
    first: &Pick,
    lightest: Option<&Specification>,
    element: Element,
) -> Option<Reason> {
    let own = ranked.candidates[ranked.best].specification;
    let own_account = ranked.account(&own);
    let own_value = value(ranked, &own, &own_account);
    let (less, more) = if element == Element::MassG {
        (lightest.copied(), None)
    } else {
        steps(element, &own)
    };
    // What law or rulebook forbids is no step.
    let within = |s: &Specification| allows(&ranked.ground, s, Candidate::of(*s).mass_g);
    let allowed = |s: Option<Specification>| s.filter(|s| within(s) || !within(&own));
    let (less, more) = (allowed(less), allowed(more));
    if less.is_none() && more.is_none() && element != Element::MassG {
        return None;
    }
    let axis = axis(ranked, typical, element);
    let here_value = reached(ranked, typical, &own, &own_account, axis);
    let mut weight: f64 = 0.0;
    let mut step = |s: Option<Specification>| -> Option<Step> {
        let s = s?;
        let there = ranked.account(&s);
        weight = weight.max((value(ranked, &s, &there) - own_value).abs());
        let mut effects = Vec::new();
        if let (Some(a), Some(b)) = (here_value, reached(ranked, typical, &s, &there, axis)) {
            let doubt = if axis == Quantity::MinutesTonight {
                typical
                    .later_min(&ranked.ground, &own, &s)
                    .map_or(0.5, |figure| figure.spread)
            } else {
                spread(axis, b - a)
            };
            effects.push(Effect {
                quantity: axis,
                value: b - a,
                spread: doubt,
            });
        }
        effects.extend(
            changes(ranked, typical, &own, &s)
                .into_iter()
                .filter(|effect| effect.quantity != axis),
        );
        Some(Step {
            setting: setting(element, &s),
            served: there.served,
            lost_to: lost_to(&own_account, &there),
            effects,
        })
    };
    let less = step(less);
    let more = step(more);
    let here = Step {
        setting: setting(element, &own),
        served: own_account.served,
        lost_to: None,
        effects: here_value
            .map(|value| Effect {
                quantity: axis,
                value,
                spread: spread(axis, value),
            })
            .into_iter()
            .gathered(),
    };
    Some(Reason {
        element,
        standing: standing(first, element),
        weight_points: weight,
        here,
        less,
        more,
        axis,
    })
}

/// Orders reasons, most consequential first.
pub fn weightiest_first(reasons: &mut [Reason]) {
    crate::plain::sort_by(reasons, |a, b| {
        b.weight_points
            .total_cmp(&a.weight_points)
            .then(a.element.cmp(&b.element))
    });
}

/// The line of a specification, for those who hold none.
#[must_use]
pub fn line_of(ranked: &Ranked, s: &Specification) -> super::report::Line {
    line(&ranked.ground, &Candidate::of(*s))
}
