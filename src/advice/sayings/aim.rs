//! Sayings about planes, marks and angle units.

use super::case::{Case, exact, graded, graded_down, saying};
use crate::advice::dusk::Glass;
use crate::advice::report::{Quantity as Q, Saying, SayingKey as K, Verdict};
use crate::rifle::steadiness::{GROUP_OVER_SIGMA, HUNTING_RIFLE_SIGMA_MRAD};
use crate::sight::specification::{FocalPlane, ReticleFamily};
use crate::sight::subtension::{apparent_arcmin, hold_error_mm, true_subtension_mrad};
use crate::sight::turret::{ClickUnit, MOA_PER_INCH_100YD, inch_for_minute_error_mm};
use crate::sight::{Specification, reticle};

/// A line is just seen at this share of the least angle resolved.
///
/// # Source
/// Assumption; Hecht and Mintz (1939) found far thinner lines on a plain field.
const JUST_SEEN: f64 = 0.6;
/// One standard deviation of a target rifle from a bench, mrad (assumption).
const TARGET_RIFLE_SIGMA_MRAD: f64 = 0.05;

pub(super) fn all(case: &Case) -> Vec<Saying> {
    let mut list = vec![
        first_plane_covers_target(case),
        half_a_mark_at_any_power(case),
        moa_is_finer(case),
        lit_means_night(case),
        no_battery_no_aim(case),
    ];
    list.extend(first_plane_for_far(case));
    list.extend(one_moa_is_an_inch(case));
    list
}

/// Width of a line that is just seen in this person's last light, arcmin.
fn line_needed_arcmin(case: &Case, glass: &Glass) -> f64 {
    JUST_SEEN * case.mar_arcmin(case.late_cd_m2(), glass.magnification, glass.objective_mm)
}

/// How wide a piece of a reticle looks, arcmin; a second-plane one is drawn for the top power.
fn seen_arcmin(sight: &Specification, width_mrad: f64, magnification: f64) -> f64 {
    apparent_arcmin(
        true_subtension_mrad(
            sight.plane,
            width_mrad,
            sight.magnification_high,
            magnification,
        ),
        magnification,
    )
}

/// "First plane for far, second for hunting."
///
/// A first-plane line of 3 mm per 100 m at the lowest power against what is just seen in the
/// last light; and the miss at the farthest range when the hold that is needed there is read
/// in the second plane at two thirds of its power, R·h·(3/2 − 1).
///
/// Effects: arcmin line at the lowest power · arcmin just seen · cm miss · cm circle. False
/// where the miss is within a quarter of the circle (no use for marks), true where it is not
/// and the line is seen, else half.
fn first_plane_for_far(case: &Case) -> Option<Saying> {
    let flight = case.flight.as_ref()?;
    let zoom = case.zoom();
    let line = reticle::reticle(ReticleFamily::MradMarks).centre_line_mrad;
    let low = Glass::of(&zoom, zoom.magnification_low);
    let seen = apparent_arcmin(line, low.magnification);
    let needed = line_needed_arcmin(case, &low);
    let miss_mm = hold_error_mm(
        FocalPlane::Second,
        flight.needed_mrad(),
        1.5,
        1.0,
        flight.farthest_m,
    );
    let circle_mm = case.farthest_circle_mm;
    let verdict = if miss_mm <= 0.25 * circle_mm {
        Verdict::False
    } else if seen >= needed {
        Verdict::True
    } else {
        Verdict::Half
    };
    Some(saying(
        K::FirstPlaneForFar,
        verdict,
        &[
            exact(Q::MarkArcmin, seen),
            exact(Q::LineNeededArcmin, needed),
            exact(Q::ErrorCm, 0.1 * miss_mm),
            exact(Q::CircleCm, 0.1 * circle_mm),
        ],
    ))
}

/// "In the first plane the target gets covered at high power."
///
/// What a first-plane line of 3 mm per 100 m covers at the farthest range, at the lowest and
/// at the top power: line and target grow alike.
///
/// Effects: cm at the lowest power · cm at the top · cm circle. True where the top covers more
/// by a tenth; half where it does not, but the line hides a tenth of the circle at any power;
/// else false.
fn first_plane_covers_target(case: &Case) -> Saying {
    let zoom = case.zoom();
    let line = reticle::reticle(ReticleFamily::MradMarks).centre_line_mrad;
    let covered_mm = |magnification: f64| {
        case.farthest_m
            * true_subtension_mrad(
                FocalPlane::First,
                line,
                zoom.magnification_high,
                magnification,
            )
    };
    let low = covered_mm(zoom.magnification_low);
    let high = covered_mm(zoom.magnification_high);
    let verdict = if high > 1.1 * low {
        Verdict::True
    } else if high > 0.1 * case.farthest_circle_mm {
        Verdict::Half
    } else {
        Verdict::False
    };
    saying(
        K::FirstPlaneCoversTarget,
        verdict,
        &[
            exact(Q::CoveredCm, 0.1 * low),
            exact(Q::CoveredCm, 0.1 * high),
            exact(Q::CircleCm, 0.1 * case.farthest_circle_mm),
        ],
    )
}

/// "Half a mark is the same at any power" (second plane).
///
/// The miss at the farthest range when half a mark of 1 mrad, true at the top power, is held
/// at half that power.
///
/// Effects: cm miss · m farthest · cm circle. True within a twentieth of the circle, half
/// within a quarter, else false.
fn half_a_mark_at_any_power(case: &Case) -> Saying {
    let top = case.zoom().magnification_high;
    let miss_mm = hold_error_mm(FocalPlane::Second, 0.5, top, 0.5 * top, case.farthest_m);
    saying(
        K::HalfAMarkAtAnyPower,
        graded_down(miss_mm / case.farthest_circle_mm, 0.05, 0.25),
        &[
            exact(Q::ErrorCm, 0.1 * miss_mm),
            exact(Q::RangeM, case.farthest_m),
            exact(Q::CircleCm, 0.1 * case.farthest_circle_mm),
        ],
    )
}

/// "Minutes are finer than milliradians."
///
/// A click of a quarter minute is 7.3, one of 0.1 mrad 10 mm at 100 m; beside the group that
/// this rifle shoots (five shots: 3.07 standard deviations of 0.12 mrad, from a bench at paper
/// 0.05).
///
/// Effects: mm per 100 m a quarter minute · mm per 100 m a tenth mrad · mm per 100 m group.
/// True where the rounding to whole clicks differs by 8 % of the group or more, else half:
/// finer, but not to be seen.
fn moa_is_finer(case: &Case) -> Saying {
    let quarter = ClickUnit::QuarterMoa.mm_per_100m();
    let tenth = ClickUnit::TenthMrad.mm_per_100m();
    let sigma = if case.bench {
        TARGET_RIFLE_SIGMA_MRAD
    } else {
        HUNTING_RIFLE_SIGMA_MRAD
    };
    let group = 100.0 * GROUP_OVER_SIGMA[1].1 * sigma;
    // A wanted hold is off by half a click at most.
    let rounding = 0.5 * (tenth - quarter);
    saying(
        K::MoaIsFiner,
        graded(rounding / group, 0.08, 0.0),
        &[
            exact(Q::AngleMmPer100m, quarter),
            exact(Q::AngleMmPer100m, tenth),
            exact(Q::AngleMmPer100m, group),
        ],
    )
}

/// "One minute is an inch."
///
/// At 100 yd a minute is 1.047 in: 4.7 % of the hold that is needed at the farthest range.
///
/// Effects: per cent · cm miss · clicks of 0.1 mrad · m farthest. True below half a click,
/// half below two, else false.
fn one_moa_is_an_inch(case: &Case) -> Option<Saying> {
    let flight = case.flight.as_ref()?;
    let hold = flight.needed_mrad();
    let miss_mm = inch_for_minute_error_mm(hold, flight.farthest_m);
    let clicks = ClickUnit::TenthMrad.clicks(miss_mm / flight.farthest_m.max(1.0));
    Some(saying(
        K::OneMoaIsAnInch,
        graded_down(clicks, 0.5, 2.0),
        &[
            exact(Q::Percent, 100.0 * (1.0 / MOA_PER_INCH_100YD - 1.0)),
            exact(Q::ErrorCm, 0.1 * miss_mm),
            exact(Q::Clicks, clicks),
            exact(Q::RangeM, flight.farthest_m),
        ],
    ))
}

/// "A lit mark means night."
///
/// The dark centre line of a thick–thin crosshair against what is just seen when this person
/// stops.
///
/// Effects: arcmin line · arcmin just seen · cd/m² then. False where the dark line is seen to
/// the end; half where it is not, but much is shot on the move, where a bright mark serves by
/// day; else true.
fn lit_means_night(case: &Case) -> Saying {
    let zoom = case.zoom();
    let glass = case.dusk.latest(&zoom);
    let line = reticle::reticle(ReticleFamily::ThickThin).centre_line_mrad;
    let seen = seen_arcmin(&zoom, line, glass.magnification);
    let needed = line_needed_arcmin(case, &glass);
    let verdict = if seen >= needed {
        Verdict::False
    } else if case.moving_share > 0.3 {
        Verdict::Half
    } else {
        Verdict::True
    };
    saying(
        K::LitMeansNight,
        verdict,
        &[
            exact(Q::MarkArcmin, seen),
            exact(Q::LineNeededArcmin, needed),
            exact(Q::LuminanceCdM2, case.late_cd_m2()),
        ],
    )
}

/// "No battery, no aim."
///
/// The bars of a thick–thin crosshair, 40 mm per 100 m, against what is just seen when this
/// person stops.
///
/// Effects: arcmin bars · arcmin just seen · mm per 100 m. False where the bars are seen, half
/// where they have at least half of what is needed, else true.
fn no_battery_no_aim(case: &Case) -> Saying {
    let zoom = case.zoom();
    let glass = case.dusk.latest(&zoom);
    let bars = reticle::reticle(ReticleFamily::ThickThin)
        .bar_mrad
        .unwrap_or(0.40);
    let seen = seen_arcmin(&zoom, bars, glass.magnification);
    let needed = line_needed_arcmin(case, &glass);
    saying(
        K::NoBatteryNoAim,
        graded(needed / seen, 2.0, 1.0 + 1e-9),
        &[
            exact(Q::MarkArcmin, seen),
            exact(Q::LineNeededArcmin, needed),
            exact(Q::WidthMmPer100m, 100.0 * bars),
        ],
    )
}
