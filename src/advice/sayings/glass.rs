//! Sayings about the tube, the glass and the exit pupil.

use super::case::{Case, exact, graded, saying, with_spread};
use crate::advice::dusk::Glass;
use crate::advice::report::{Quantity as Q, Saying, SayingKey as K, Verdict};
use crate::eye::veil::straylight_index;
use crate::quantity::Estimate;
use crate::sight::fits;
use crate::sight::specification::{Elevation, Specification};
use crate::sight::turret::Mounted;

/// How far bore and base usually disagree, mrad. Common practice, no source.
const MISALIGNMENT_MRAD: f64 = 1.5;

pub(super) fn all(case: &Case) -> Vec<Saying> {
    let mut list = vec![
        thick_tube_is_brighter(case),
        five_points_are_twenty_minutes(case),
        one_sees_dear_glass(case),
        everyone_needs_seven_millimetres(case),
        past_fifty_a56_is_wasted(case),
        eight_by56_is_the_night_sight(case),
        fixed_is_brighter(case),
    ];
    list.extend(thick_tube_for_long_range(case));
    list
}

/// "A thicker tube is brighter."
///
/// Two sights that differ in the tube alone: seconds tonight by the model (objective, power
/// and transmission are all that it asks for), the mass and the travel that a dial gains.
///
/// Effects: seconds tonight · g · mrad of travel. True from 120 s, half from 30 s.
fn thick_tube_is_brighter(case: &Case) -> Saying {
    let thin = Specification {
        tube_mm: 30.0,
        elevation: Elevation::DialZeroStop,
        ..case.sight
    };
    let thick = Specification {
        tube_mm: 34.0,
        ..thin
    };
    let seconds = 60.0
        * case
            .dusk
            .gain_min(&case.dusk.latest(&thin), &case.dusk.latest(&thick))
            .value;
    saying(
        K::ThickTubeIsBrighter,
        graded(seconds.abs(), 120.0, 30.0),
        &[
            exact(Q::SecondsTonight, seconds),
            exact(
                Q::MassG,
                fits::mass_g(&thick).value - fits::mass_g(&thin).value,
            ),
            exact(
                Q::TravelMrad,
                fits::travel_mrad(&thick).value - fits::travel_mrad(&thin).value,
            ),
        ],
    )
}

/// "For long range one needs a thick tube."
///
/// Elevation needed from the zero at the farthest range against what a dial in a 30 mm and in
/// a 34 mm tube leaves upwards from the zero on this base: H + i − θ − m, as
/// [`Mounted::travel`], m = 1.5 mrad.
///
/// Effects: mrad needed · mrad up with 30 mm · mrad up with 34 mm · m farthest. True where
/// 30 mm fall short, half where they leave less than a fifth to spare, else false.
fn thick_tube_for_long_range(case: &Case) -> Option<Saying> {
    let flight = case.flight.as_ref()?;
    let needed = flight.needed_mrad();
    let up = |tube_mm: f64| {
        let sight = Specification {
            tube_mm,
            elevation: Elevation::DialZeroStop,
            ..case.sight
        };
        let travel = fits::travel_mrad(&sight);
        let mounted = Mounted {
            total_mrad: travel.value,
            incline_mrad: case.need.mount.incline_mrad,
            zero_angle_mrad: flight.zeroed.elevation_mrad,
            misalignment_mrad: MISALIGNMENT_MRAD,
            windage_used_mrad: 0.0,
        };
        Estimate::new(
            mounted.travel().map_or(0.0, |travel| travel.up_mrad),
            0.5 * travel.spread,
        )
    };
    let (thin, thick) = (up(30.0), up(34.0));
    Some(saying(
        K::ThickTubeForLongRange,
        graded(needed / thin.value.max(0.1), 1.0, 0.8),
        &[
            exact(Q::NeededMrad, needed),
            with_spread(Q::TravelMrad, thin),
            with_spread(Q::TravelMrad, thick),
            exact(Q::RangeM, flight.farthest_m),
        ],
    ))
}

/// "Five points of transmission are twenty minutes."
///
/// The sight at the power that serves latest, with 85 % and with 90 %.
///
/// Effects: seconds tonight. True from 10 min, half from 2 min.
fn five_points_are_twenty_minutes(case: &Case) -> Saying {
    let glass = case.dusk.latest(&case.sight);
    let with = |transmission: f64| Glass {
        transmission,
        ..glass
    };
    // The two differ in one factor only, which the model has to 0.003 dex.
    let gain = case
        .dusk
        .gain_with_model_min(&with(0.85), &with(0.90), 0.03);
    saying(
        K::FivePointsAreTwentyMinutes,
        graded(gain.value, 10.0, 2.0),
        &[with_spread(
            Q::SecondsTonight,
            Estimate::new(60.0 * gain.value, 60.0 * gain.spread),
        )],
    )
}

/// "One sees dear glass against cheap."
///
/// The contrast that is left of the quarry's in the picture, C/v with v = 1 + (G + G_eye)·
/// L_surround/L_ground, at a veiling glare index of 8 % and of 2 %; and what that is worth.
///
/// Effects: contrast plain · contrast best · minutes tonight. True where one contrast is 1.15
/// times the other (about what is just noticed side by side), half from 1.05.
///
/// # Source
/// Grades of glare: common practice, no source. The two limits are assumptions.
fn one_sees_dear_glass(case: &Case) -> Saying {
    let eye = straylight_index(case.dusk.eye.age_years());
    let left = |glare: f64| case.dusk.patch.contrast / (1.0 + (glare + eye) * case.dusk.surround);
    let (plain, best) = (left(0.08), left(0.02));
    let glass = case.dusk.latest(&case.sight);
    let gain = case.dusk.gain_min(
        &Glass {
            glare: 0.08,
            ..glass
        },
        &Glass {
            glare: 0.02,
            ..glass
        },
    );
    saying(
        K::OneSeesDearGlass,
        graded(best / plain, 1.15, 1.05),
        &[
            exact(Q::Contrast, plain),
            exact(Q::Contrast, best),
            with_spread(Q::MinutesTonight, gain),
        ],
    )
}

/// "Everybody needs seven millimetres of exit pupil."
///
/// This pupil at the light in which this person stops, and the share of a beam of 7 mm that
/// falls on the iris, 1 − (p/7)².
///
/// Effects: mm pupil · per cent on the iris · years. True from 6.5 mm, half from 5.5 mm.
fn everyone_needs_seven_millimetres(case: &Case) -> Saying {
    let pupil = case.dusk.pupil_mm(case.late_cd_m2());
    let filled = (pupil.value / 7.0).min(1.0);
    saying(
        K::EveryoneNeedsSevenMillimetres,
        graded(pupil.value, 6.5, 5.5),
        &[
            with_spread(Q::PupilMm, pupil),
            exact(Q::OnIrisPercent, 100.0 * (1.0 - filled * filled)),
            with_spread(Q::AgeYears, case.dusk.age_years),
        ],
    )
}

/// "Past fifty a 56 is wasted."
///
/// What 56 instead of 42 mm brings tonight at 8× and at 11×.
///
/// Effects: minutes tonight at 8× · minutes tonight at 11× · mm pupil. True where neither
/// brings half a minute, false where 8× already brings a whole one, else half.
fn past_fifty_a56_is_wasted(case: &Case) -> Saying {
    let gain = |magnification: f64| {
        case.dusk.gain_min(
            &Glass::good(magnification, 42.0),
            &Glass::good(magnification, 56.0),
        )
    };
    let (eight, eleven) = (gain(8.0), gain(11.0));
    let verdict = if eight.value >= 1.0 {
        Verdict::False
    } else if eight.value.max(eleven.value) < 0.5 {
        Verdict::True
    } else {
        Verdict::Half
    };
    saying(
        K::PastFiftyA56IsWasted,
        verdict,
        &[
            with_spread(Q::MinutesTonight, eight),
            with_spread(Q::MinutesTonight, eleven),
            with_spread(Q::PupilMm, case.dusk.pupil_mm(0.01)),
        ],
    )
}

/// "8 × 56 is the night sight."
///
/// 8 × 56 against 10 × 50 for this eye.
///
/// Effects: minutes tonight by which 8 × 56 is later · mm pupil · g more. True where it is a
/// minute later, false where it is a minute earlier, else half.
fn eight_by56_is_the_night_sight(case: &Case) -> Saying {
    let gain = case
        .dusk
        .gain_min(&Glass::good(10.0, 50.0), &Glass::good(8.0, 56.0));
    let fixed = |magnification: f64, objective_mm: f64| {
        fits::mass_g(&Specification {
            magnification_low: magnification,
            magnification_high: magnification,
            objective_mm,
            ..case.sight
        })
        .value
    };
    saying(
        K::EightBy56IsTheNightSight,
        graded(gain.value, 1.0, -1.0),
        &[
            with_spread(Q::MinutesTonight, gain),
            with_spread(Q::PupilMm, case.dusk.pupil_mm(0.01)),
            exact(Q::MassG, fixed(8.0, 56.0) - fixed(10.0, 50.0)),
        ],
    )
}

/// "A fixed power is brighter than a zoom."
///
/// A fixed sight has fewer lenses: 1.5 points of transmission more (a point or two: common
/// practice, no source), less mass and money by the fits for a zoom ratio of 1 instead of 4.
///
/// Effects: seconds tonight · g · price bands. True from 60 s, half from 3 s.
fn fixed_is_brighter(case: &Case) -> Saying {
    let glass = case.dusk.latest(&case.sight);
    let gain = case.dusk.gain_with_model_min(
        &glass,
        &Glass {
            transmission: (glass.transmission + 0.015).min(1.0),
            ..glass
        },
        0.02,
    );
    let zoom = Specification {
        magnification_low: 2.5,
        magnification_high: 10.0,
        ..case.sight
    };
    let fixed = Specification {
        magnification_low: 8.0,
        magnification_high: 8.0,
        ..case.sight
    };
    let bands = fits::price_band_index(&fixed).value - fits::price_band_index(&zoom).value;
    let seconds = 60.0 * gain.value;
    saying(
        K::FixedIsBrighter,
        graded(seconds, 60.0, 3.0),
        &[
            with_spread(
                Q::SecondsTonight,
                Estimate::new(seconds, 60.0 * gain.spread),
            ),
            exact(
                Q::MassG,
                fits::mass_g(&fixed).value - fits::mass_g(&zoom).value,
            ),
            exact(Q::PriceBands, bands),
        ],
    )
}
