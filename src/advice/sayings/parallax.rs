//! Sayings about parallax.

use super::case::{Case, exact, graded_down, saying};
use crate::advice::report::{Quantity as Q, Saying, SayingKey as K, Verdict};
use crate::sight::eye_box::eye_box;
use crate::sight::fits::apparent_field_deg;
use crate::sight::parallax::{USUAL_CHEEK_SHARE, extreme_mm, usual_cheek_mm, with_offset_mm};
use crate::sight::pupil::{effective_objective_mm, exit_pupil_mm};

/// Error of focus in dioptres that an eye does not notice (assumption; 0.25 to 0.5 is usual).
const UNNOTICED_DIOPTRES: f64 = 0.3;

pub(super) fn all(case: &Case) -> Vec<Saying> {
    vec![
        set_at_hundred_useless_at300(case),
        black_ring_is_parallax(case),
        side_focus_is_for_sharpness(case),
    ]
}

/// The power at which parallax is looked at: the top one, 10× at most.
fn power(case: &Case) -> f64 {
    case.sight.magnification_high.min(10.0)
}

/// "Set at 100 it cannot shoot at 300."
///
/// The error at 300 m of a sight free at 100 m, by day, over the smallest circle this person
/// shoots at: with a usual cheek, 0.35·½·(D_eff − M·p)·|R − R_p|/R_p, and with the picture
/// almost black, ½·D_eff·|R − R_p|/R_p.
///
/// Effects: cm usual cheek · cm extreme · cm circle. True where the usual cheek exceeds a
/// quarter of the circle, half where the extreme exceeds its half, else false.
fn set_at_hundred_useless_at300(case: &Case) -> Saying {
    let power = power(case);
    let objective = effective_objective_mm(case.sight.objective_mm, power);
    let pupil = case.dusk.pupil_mm(case.dusk.day_cd_m2).value;
    let usual = usual_cheek_mm(objective, power, pupil, 100.0, 300.0);
    let extreme = extreme_mm(objective, 100.0, 300.0);
    let circle = case.smallest_circle_mm;
    let verdict = if usual > 0.25 * circle {
        Verdict::True
    } else if extreme > 0.5 * circle {
        Verdict::Half
    } else {
        Verdict::False
    };
    saying(
        K::SetAtHundredUselessAt300,
        verdict,
        &[
            exact(Q::ParallaxCm, 0.1 * usual),
            exact(Q::ParallaxCm, 0.1 * extreme),
            exact(Q::CircleCm, 0.1 * circle),
        ],
    )
}

/// "The black ring is parallax."
///
/// With the eye 2 mm off the axis and the target exactly at the parallax-free distance: the
/// error there, beside how far the eye may wander with the full picture and until the picture
/// is gone.
///
/// Effects: cm error · mm full picture · mm gone. True where the error exceeds 1 cm, half from
/// 1 mm, else false.
fn black_ring_is_parallax(case: &Case) -> Saying {
    let power = power(case);
    let objective = effective_objective_mm(case.sight.objective_mm, power);
    let exit = exit_pupil_mm(case.sight.objective_mm, power);
    let pupil = case.dusk.pupil_mm(case.dusk.day_cd_m2).value;
    let box_ = eye_box(exit, pupil, apparent_field_deg(&case.sight));
    let error_mm = with_offset_mm(objective, power, pupil, 2.0, 100.0, 100.0).unwrap_or(0.0);
    let verdict = if error_mm > 10.0 {
        Verdict::True
    } else if error_mm > 1.0 {
        Verdict::Half
    } else {
        Verdict::False
    };
    saying(
        K::BlackRingIsParallax,
        verdict,
        &[
            exact(Q::ParallaxCm, 0.1 * error_mm),
            exact(Q::LengthMm, box_.full_sideways_mm),
            exact(Q::LengthMm, box_.gone_sideways_mm),
        ],
    )
}

/// What the eye makes good by itself, dioptres.
///
/// # Source
/// H. W. Hofstetter (1950), the least amplitude of accommodation by age, 15 − 0.25 y (from
/// memory).
fn accommodation_dioptres(age_years: f64) -> f64 {
    (15.0 - 0.25 * age_years).max(0.0)
}

/// "The side focus is for sharpness."
///
/// How far the focus may be off with the picture still sharp: behind the eyepiece an error
/// of focus is M²·|1/R − 1/R_p| dioptres, of which the eye does not notice 0.3 and makes good
/// what its age leaves of its accommodation. The parallax that is then left with a usual
/// cheek, 0.35·½·D_eff·min(1, R·d/M²), over the smallest circle.
///
/// Effects: cm left · cm circle · m usual · dioptres made good (as a ratio). True within a
/// twentieth of the circle, half within a quarter, else false.
fn side_focus_is_for_sharpness(case: &Case) -> Saying {
    let power = power(case);
    let objective = effective_objective_mm(case.sight.objective_mm, power);
    let dioptres = UNNOTICED_DIOPTRES + accommodation_dioptres(case.dusk.eye.age_years());
    let off = (case.usual_m * dioptres / (power * power)).min(1.0);
    let left_mm = USUAL_CHEEK_SHARE * 0.5 * objective * off;
    saying(
        K::SideFocusIsForSharpness,
        graded_down(left_mm / case.smallest_circle_mm, 0.05, 0.25),
        &[
            exact(Q::ParallaxCm, 0.1 * left_mm),
            exact(Q::CircleCm, 0.1 * case.smallest_circle_mm),
            exact(Q::RangeM, case.usual_m),
            exact(Q::Ratio, dioptres),
        ],
    )
}
