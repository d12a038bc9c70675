//! Facts for the sentence of need, the strip and the view through the sight.

use super::evening::Typical as Evening;
use super::needs::drop;
use super::ranking::Ranked;
use super::report::{Facts, Figure, Typical};
use super::world::World;
use crate::need::shooter::{Need, Situation};
use crate::sight::{Specification, pupil};

/// The facts; `other` is the sight that stands beside the first pick on the strip.
#[must_use]
pub fn facts(ranked: &Ranked, typical: &Evening, other: Option<&Specification>) -> Facts {
    let ground = &ranked.ground;
    let need = &ground.need;
    let s = &need.situations[typical.situation];
    let first = ranked.candidates[ranked.best].specification;
    let set = ranked.account(&first).set;
    let late = ground.slate.late > 0;
    let magnification = if late { set[0] } else { set[1] };
    let age = need.eye.age_years.value.value;
    let pupil_spread = if need.eye.dark_pupil_mm.is_some() {
        0.3
    } else {
        crate::eye::pupil::SPREAD_MM
    };
    let farthest_m = ground.farthest_m();
    let flight = ground.flight.as_ref();
    let best_possible = ranked
        .served
        .iter()
        .zip(&ranked.values)
        .filter(|(_, value)| value.is_finite())
        .map(|(served, _)| *served)
        .fold(0.0f32, f32::max);
    Facts {
        typical: Typical {
            quarry: s.what.key().to_string(),
            manner: crate::need::manner_key(s.manner),
            nearest_m: s.range.nearest_m,
            usual_m: s.range.usual_m,
            farthest_m: s.range.farthest_m,
            stop_minutes_after_sunset: typical.stop_min,
            age_years: age,
            luminance_at_stop_cd_m2: typical.stop_cd_m2,
            contrast: typical.contrast,
            light: typical.light,
            circle_mm: s.what.aiming_circle_mm(),
        },
        pupil_mm: Figure {
            value: super::occasions::pupil_mm(need, age, typical.stop_cd_m2, 0.0),
            spread: pupil_spread,
        },
        exit_pupil_mm: pupil::exit_pupil_mm(first.objective_mm, magnification),
        tonight: typical.tonight(ground, &first, other),
        recoil_m_s: Figure {
            value: ground.recoil.velocity_m_s,
            spread: 0.06 * ground.recoil.velocity_m_s,
        },
        recoil_j: Figure {
            value: ground.recoil.energy_j,
            spread: 0.12 * ground.recoil.energy_j,
        },
        eye_relief_needed_mm: ground.eye_relief_asked_mm,
        needed_mrad: ground.farthest_needed_mrad().unwrap_or(0.0),
        zero_m: flight.map_or(100.0, |f| f.zero_m),
        path_at_farthest_cm: flight.map_or(0.0, |f| 0.1 * f.path_mm(farthest_m)),
        dead_on_reach_m: flight.map_or(0.0, |f| f.dead_on_reach_m),
        dead_on_zero_m: flight.map_or(0.0, |f| f.longest_zero_m),
        best_possible_share: f64::from(best_possible),
        range_taken: range_taken(need, s),
    }
}

/// What the usual range of a situation is counted as; none if as stated.
fn range_taken(need: &Need, situation: &Situation) -> Option<Figure> {
    let share = super::occasions::range_share(need, situation, &World::MIDDLE);
    let taken = need.distance.stated_range_share;
    (share < 1.0).then_some(Figure {
        value: share * situation.range.usual_m,
        spread: taken.spread * share * situation.range.usual_m,
    })
}

/// Height of the line of sight over the bore that the paths are computed with, mm.
pub const PATH_HEIGHT_MM: f64 = drop::SIGHT_HEIGHT_MM;
