//! Sayings about magnification and field.

use super::case::{Case, exact, graded, graded_down, saying, with_spread};
use crate::advice::dusk::Glass;
use crate::advice::report::{Quantity as Q, Saying, SayingKey as K, Verdict};
use crate::quantity::Estimate;
use crate::rifle::steadiness::{
    HUNTING_RIFLE_SIGMA_MRAD, WOBBLE_CEILING_MRAD, aiming_sigma_mrad,
    magnification_aim_limited_below, magnification_ceiling, share_inside_circle, total_sigma_mrad,
};
use crate::sight::Specification;
use crate::sight::field::{crossing_time_s, field_at_range_m, field_m_per_100m};
use crate::sight::fits::{apparent_field_deg, mass_g};

/// A detail in the field asks for so many least angles resolved.
const FIELD_RESERVE: f64 = 1.8;
/// Millimetres at one metre that an arc minute spans.
const MM_PER_ARCMIN_M: f64 = core::f64::consts::PI / 10.8;

pub(super) fn all(case: &Case) -> Vec<Saying> {
    vec![
        more_power_better_shot(case),
        high_power_makes_me_shake(case),
        bigger_bell_narrows_field(case),
        wide_zoom_does_it_all(case),
        both_eyes_double_field(case),
    ]
}

/// "More power, better shot."
///
/// The share of shots inside the circle at the usual range that hold, rifle and aim leave, at
/// 12× against 4× by day; only the error of aim, 0.15·MAR/M, falls with power.
///
/// Effects: percentage points · power below which aim limits · power above which the wobble is
/// chased. True from 5 points, half from 1, else false. The share itself is no promise and is
/// not passed on.
fn more_power_better_shot(case: &Case) -> Saying {
    let hold = case.position.hold().typical_mrad;
    let inside = |magnification: f64| {
        let mar = case.mar_arcmin(case.dusk.day_cd_m2, magnification, case.sight.objective_mm);
        let sigma = total_sigma_mrad(
            hold,
            HUNTING_RIFLE_SIGMA_MRAD,
            aiming_sigma_mrad(mar, magnification),
        );
        share_inside_circle(0.5 * case.circle_mm / case.usual_m, 0.0, sigma)
    };
    let points = 100.0 * (inside(12.0) - inside(4.0));
    let mar = case.mar_arcmin(case.dusk.day_cd_m2, 4.0, case.sight.objective_mm);
    saying(
        K::MorePowerBetterShot,
        graded(points, 5.0, 1.0),
        &[
            exact(Q::Percent, points),
            exact(
                Q::Magnification,
                magnification_aim_limited_below(mar, hold).max(1.0),
            ),
            exact(Q::Magnification, magnification_ceiling(hold)),
        ],
    )
}

/// "20× makes me shake."
///
/// The visible wobble of this position, as it is and as 20× shows it.
///
/// Effects: mrad · mrad at 20× · power above which the picture is chased (15 mrad). Half where
/// 20× shows more than that, else false: no power changes the wobble itself.
fn high_power_makes_me_shake(case: &Case) -> Saying {
    let wobble = case.position.visible_wobble_mrad();
    let shown = 20.0 * wobble;
    let verdict = if shown > WOBBLE_CEILING_MRAD {
        Verdict::Half
    } else {
        Verdict::False
    };
    saying(
        K::HighPowerMakesMeShake,
        verdict,
        &[
            exact(Q::WobbleMrad, wobble),
            exact(Q::WobbleMrad, shown),
            exact(
                Q::Magnification,
                magnification_ceiling(case.position.hold().typical_mrad),
            ),
        ],
    )
}

/// "A bigger bell narrows the field."
///
/// The field of two sights that differ in the objective alone, 42 and 56 mm: W = 200·tan ω′/M
/// knows no objective.
///
/// Effects: m per 100 m with 42 · with 56 · g more. True where 56 loses a twentieth, half from
/// a hundredth, else false.
fn bigger_bell_narrows_field(case: &Case) -> Saying {
    let with = |objective_mm: f64| Specification {
        objective_mm,
        ..case.sight
    };
    let field = |sight: &Specification| {
        field_m_per_100m(apparent_field_deg(sight), sight.magnification_low)
    };
    let (small, large) = (with(42.0), with(56.0));
    saying(
        K::BiggerBellNarrowsField,
        graded(1.0 - field(&large) / field(&small), 0.05, 0.01),
        &[
            exact(Q::FieldMPer100m, field(&small)),
            exact(Q::FieldMPer100m, field(&large)),
            exact(Q::MassG, mass_g(&large).value - mass_g(&small).value),
        ],
    )
}

/// The finest detail this person must tell, mm.
fn detail_asked_mm(case: &Case) -> f64 {
    case.need
        .situations
        .iter()
        .flat_map(|situation| situation.details_mm.iter().map(|part| part.of))
        .filter(|detail| *detail > 0.0)
        .fold(f64::INFINITY, f64::min)
        .min(1e3 * case.dusk.patch.solid_angle_sr.sqrt() * case.dusk.range_m)
}

/// "A wide zoom does it all."
///
/// A 1–8 × 24: its field at the usual range of what moves (else of what is shot at most), what it loses tonight against 8 × 56, and the
/// detail it tells at the farthest shot by day, 1.8·MAR·R/M.
///
/// Effects: m of field there · m needed · minutes tonight lost (negative) · mm told · mm asked ·
/// m range there. True
/// where field, light (less than a minute lost, or never out late) and detail all do, false
/// where neither light nor detail does, else half.
fn wide_zoom_does_it_all(case: &Case) -> Saying {
    let wide = Specification {
        magnification_low: 1.0,
        magnification_high: 8.0,
        objective_mm: 24.0,
        ..case.sight
    };
    let field = field_at_range_m(apparent_field_deg(&wide), 1.0, case.field_range_m);
    let gain = case
        .dusk
        .gain_min(&Glass::good(8.0, 56.0), &case.dusk.latest(&wide));
    let mar = case.mar_arcmin(case.dusk.day_cd_m2, 8.0, 24.0);
    let told = FIELD_RESERVE * mar * MM_PER_ARCMIN_M * case.farthest_m / 8.0;
    let asked = detail_asked_mm(case);
    let light = !case.dusk.out_late || gain.value > -1.0;
    let detail = told <= asked;
    let verdict = match (light, detail) {
        (true, true) if field >= case.field_needed_m => Verdict::True,
        (false, false) => Verdict::False,
        _ => Verdict::Half,
    };
    saying(
        K::WideZoomDoesItAll,
        verdict,
        &[
            exact(Q::FieldAtNearestM, field),
            exact(Q::FieldAtNearestM, case.field_needed_m),
            with_spread(Q::MinutesTonight, Estimate::new(gain.value, gain.spread)),
            exact(Q::DetailAtFarthestMm, told),
            exact(Q::DetailAtFarthestMm, asked),
            exact(Q::RangeM, case.field_range_m),
        ],
    )
}

/// "Both eyes open double the field."
///
/// At the lowest power (1× where much is shot on the move and no sight is given): the two
/// pictures merge only while they are alike in size.
///
/// Effects: lowest power · m of field through the sight at the nearest shot · per cent by
/// which one picture is larger · s in which game crosses it. True up to 1.15×, half up to
/// 1.5×, else false (assumption).
fn both_eyes_double_field(case: &Case) -> Saying {
    let low = if !case.sight_given && case.moving_share > 0.3 {
        1.0
    } else {
        case.sight.magnification_low
    };
    let apparent = apparent_field_deg(&case.sight);
    saying(
        K::BothEyesDoubleField,
        graded_down(low, 1.15, 1.5),
        &[
            exact(Q::Magnification, low),
            exact(
                Q::FieldAtNearestM,
                field_at_range_m(apparent, low, case.nearest_m),
            ),
            exact(Q::Percent, 100.0 * (low - 1.0)),
            exact(
                Q::CrossingSeconds,
                crossing_time_s(apparent, low, case.nearest_m, case.run_m_s.max(1.0)),
            ),
        ],
    )
}
