//! The load on its way: path, speed, energy, time, wind, slope, cant, air, and the wobble.

use super::{Sheet, exact, with};
use crate::advice::needs::drop;
use crate::advice::occasions;
use crate::advice::ranking::Ranked;
use crate::advice::report::{FlightRow, NoteKey, Quantity};
use crate::flight::drag::energy_j;
use crate::flight::hold::{Change, RingError, VELOCITY_PER_CELSIUS_M_S, range_error_mm};
use crate::flight::point_blank::{dead_on_path, point_blank};
use crate::flight::zero::cant_error_mm;
use crate::flight::{Conditions, SEA_LEVEL, Sighted, Zeroed, atmosphere};
use crate::need::shooter::Need;
use crate::plain::Gathered;
use crate::rifle::steadiness;

/// The wind that drift is told for, m/s.
const WIND_M_S: f64 = 4.0;
/// The slope and the cant that are told, degrees.
const SLOPE_DEG: f64 = 30.0;
const CANT_DEG: f64 = 3.0;
/// The near distance at which a new sight is first shot, m.
const NEAR_M: f64 = 25.0;
/// Spread of the drop by velocity and drag figure together (assumption: 3 % of velocity, or
/// 1 % if measured, and 5 % of the drag figure).
const DRAG_SPREAD: f64 = 0.05;

/// The load zeroed as usual, with the sight at this height; none if it never gets there.
fn zeroed(need: &Need, height_over_bore_mm: f64) -> Option<Zeroed> {
    let load = drop::load_of(need).ok()?;
    Zeroed::new(
        load,
        drop::air(need),
        height_over_bore_mm.clamp(0.0, 300.0),
        drop::usual_zero_of(need),
    )
    .ok()
}

/// One standard deviation of the path beyond the zero, mm: velocity and drag.
fn path_spread_mm(need: &Need, path: &Sighted, zero_m: f64, range_m: f64) -> f64 {
    let velocity = need.load.muzzle_velocity_m_s.value;
    let by_velocity = 2.0 * velocity.spread / velocity.value;
    // What the bullet falls below its own line from the zero on.
    let fall_mm = (path.path_mm(range_m) - path.path_mm(zero_m)).abs();
    // Drag makes about a third of the fall at usual ranges.
    let by_drag = DRAG_SPREAD / 3.0;
    fall_mm * (by_velocity * by_velocity + by_drag * by_drag).sqrt()
}

/// The load at the ranges of this person, nearest first, with the usual zero.
#[must_use]
pub fn flight_rows(ranked: &Ranked, height_over_bore_mm: f64) -> Vec<FlightRow> {
    let ground = &ranked.ground;
    let need = &ground.need;
    let Some(zeroed) = zeroed(need, height_over_bore_mm) else {
        return Vec::new();
    };
    let (nearest_m, farthest_m) = (ground.nearest_m(), ground.farthest_m());
    let to_m = farthest_m.max(zeroed.zero_m) + 1.0;
    let path = zeroed.sighted_within(to_m);
    let Ok(blown) = zeroed.sighted(
        &Conditions::still(zeroed.air).with_wind_from_left(WIND_M_S),
        to_m.min(path.reach_m()),
    ) else {
        return Vec::new();
    };
    let wobble = wobble_mrad(need);
    let usual_m = need.situations[crate::advice::evening::most_met(&need.situations)]
        .range
        .usual_m;
    let mut ranges = vec![
        nearest_m,
        usual_m,
        zeroed.zero_m,
        0.5 * (usual_m + farthest_m),
        farthest_m,
    ];
    ranges.retain(|&range_m| range_m <= path.reach_m());
    crate::plain::sort_by(&mut ranges, f64::total_cmp);
    // Two that are told as one are one.
    ranges.dedup_by(|b, a| *b - *a < 0.06 * *b + 1.0);
    ranges
        .into_iter()
        .map(|range_m| {
            let point = path.at(range_m);
            let path_mm = path.path_mm(range_m);
            FlightRow {
                range_m,
                path_cm: 0.1 * path_mm,
                path_spread_cm: 0.1 * path_spread_mm(need, &path, zeroed.zero_m, range_m),
                hold_mrad: path.hold_mrad(range_m),
                speed_m_s: point.velocity_m_s,
                energy_j: energy_j(need.load.bullet_g.value, point.velocity_m_s),
                time_s: point.time_s,
                drift_cm: 0.1 * (blown.drift_mrad(range_m) * range_m).abs(),
                wobble_cm: 0.1 * wobble * range_m,
            }
        })
        .gathered()
}

/// The visible wobble of the hold that is used most, mrad.
fn wobble_mrad(need: &Need) -> f64 {
    let s = &need.situations[crate::advice::evening::most_met(&need.situations)];
    occasions::hold(s.what, s.manner, 0.25).wobble_mrad
}

pub(super) fn notes(sheet: &mut Sheet) {
    let need = sheet.need;
    let height_mm = sheet.first.height_over_bore_mm.value;
    let Some(zeroed) = zeroed(need, height_mm) else {
        return;
    };
    let farthest_m = sheet.ground.farthest_m();
    let path = zeroed.sighted_within(farthest_m.max(zeroed.zero_m) + 50.0);
    if path.reach_m() < farthest_m {
        return;
    }
    load(sheet, &zeroed);
    dead_on(sheet, &zeroed, &path);
    other_conditions(sheet, &zeroed, &path, farthest_m);
    near(sheet, &zeroed, &path);
    ring(sheet, &zeroed, farthest_m);
}

fn load(sheet: &mut Sheet, zeroed: &Zeroed) {
    let figures = &sheet.need.load;
    let own = sheet.need.load.muzzle_velocity_m_s.value.spread
        < 0.02 * figures.muzzle_velocity_m_s.value.value;
    let velocity = figures.muzzle_velocity_m_s.value;
    let bc = zeroed.load.bc_lb_in2();
    sheet.put(
        if own {
            NoteKey::LoadOwn
        } else {
            NoteKey::LoadTypical
        },
        vec![
            exact(Quantity::BulletG, figures.bullet_g.value),
            with(Quantity::SpeedMS, velocity.value, velocity.spread),
            exact(Quantity::Ratio, bc),
            exact(
                Quantity::EnergyJ,
                energy_j(figures.bullet_g.value, velocity.value),
            ),
            exact(Quantity::RangeM, zeroed.zero_m),
        ],
    );
}

fn dead_on(sheet: &mut Sheet, zeroed: &Zeroed, path: &Sighted) {
    let radius_mm = sheet
        .ground
        .flight
        .as_ref()
        .map_or(drop::DEAD_ON_RADIUS_MM, |flight| flight.dead_on_radius_mm);
    let as_zeroed = dead_on_path(
        &zeroed.sighted_within(path.reach_m().max(zeroed.zero_m + 500.0)),
        radius_mm,
    );
    let Ok(longest) = point_blank(&zeroed.load, zeroed.air, zeroed.sight_height_mm, radius_mm)
    else {
        return;
    };
    let sigma = steadiness::total_sigma_mrad(
        0.5 * wobble_mrad(sheet.need),
        steadiness::HUNTING_RIFLE_SIGMA_MRAD,
        0.0,
    );
    let steady_m = steadiness::range_for_share_m(radius_mm, sigma, 0.9);
    sheet.put(
        NoteKey::DeadOn,
        vec![
            exact(Quantity::CircleCm, 0.2 * radius_mm),
            exact(Quantity::RangeM, zeroed.zero_m),
            with(Quantity::RangeM, as_zeroed.to_m, 0.03 * as_zeroed.to_m),
            with(Quantity::RangeM, longest.zero_m, 0.02 * longest.zero_m),
            with(Quantity::RangeM, longest.reach_m, 0.03 * longest.reach_m),
            with(Quantity::RangeM, steady_m, 0.35 * steady_m),
        ],
    );
    let farthest_m = sheet.ground.farthest_m();
    let circle_mm = sheet.situation.what.aiming_circle_mm();
    let off_mm = path.path_mm(farthest_m);
    let inside =
        |off_mm: f64| steadiness::share_inside_circle(0.5 * circle_mm, off_mm, sigma * farthest_m);
    sheet.put(
        NoteKey::Inside,
        vec![
            exact(Quantity::RangeM, farthest_m),
            exact(Quantity::CircleCm, 0.1 * circle_mm),
            exact(Quantity::Clicks, (10.0 * inside(0.0)).round()),
            exact(Quantity::PathCm, 0.1 * off_mm),
            exact(Quantity::Clicks, (10.0 * inside(off_mm)).round()),
        ],
    );
    if let (Some((at_m, height_mm)), (Some(first_m), Some(second_m))) =
        (path.highest(), path.crossings_m())
        && height_mm > 0.5
    {
        sheet.put(
            NoteKey::Highest,
            vec![
                exact(Quantity::RangeM, first_m),
                exact(Quantity::ErrorCm, 0.1 * height_mm),
                exact(Quantity::RangeM, at_m),
                exact(Quantity::RangeM, second_m),
            ],
        );
    }
}

fn other_conditions(sheet: &mut Sheet, zeroed: &Zeroed, path: &Sighted, farthest_m: f64) {
    let still = Conditions::still(zeroed.air);
    if let Ok(up) = zeroed.sighted(&still.on_slope(SLOPE_DEG), farthest_m) {
        let exact_mm = up.path_mm(farthest_m) - path.path_mm(farthest_m);
        // The rule: the hold of the level distance.
        let level_m = farthest_m * libm::cos(SLOPE_DEG * core::f64::consts::PI / 180.0);
        let by_rule_mm = (path.hold_mrad(farthest_m) - path.hold_mrad(level_m)) * farthest_m;
        sheet.put(
            NoteKey::Slope,
            vec![
                exact(Quantity::AngleDeg, SLOPE_DEG),
                exact(Quantity::RangeM, farthest_m),
                exact(Quantity::PathCm, 0.1 * exact_mm),
                exact(Quantity::ErrorCm, 0.1 * (by_rule_mm - exact_mm).abs()),
            ],
        );
    }
    if let Ok(at_farthest) = Zeroed::new(
        zeroed.load,
        zeroed.air,
        zeroed.sight_height_mm,
        farthest_m.max(5.0),
    ) {
        let (side_mm, low_mm) = cant_error_mm(&at_farthest, CANT_DEG);
        let (one_mm, _) = cant_error_mm(&at_farthest, 1.0);
        sheet.put(
            NoteKey::Cant,
            vec![
                exact(Quantity::AngleDeg, CANT_DEG),
                exact(Quantity::RangeM, farthest_m),
                exact(Quantity::ErrorCm, 0.1 * side_mm),
                exact(Quantity::PathCm, 0.1 * low_mm),
                exact(Quantity::ErrorCm, 0.1 * one_mm),
            ],
        );
    }
    let place = sheet.need.place;
    if let Ok(sea) = Zeroed::new(
        zeroed.load,
        SEA_LEVEL,
        zeroed.sight_height_mm,
        zeroed.zero_m,
    ) {
        let change_mm =
            path.path_mm(farthest_m) - sea.sighted_within(farthest_m + 1.0).path_mm(farthest_m);
        sheet.put(
            NoteKey::PlaceAir,
            vec![
                exact(Quantity::HeightM, place.height_m.value),
                exact(Quantity::TemperatureC, zeroed.air.temperature_k - 273.15),
                exact(
                    Quantity::Percent,
                    100.0 * zeroed.air.density_kg_m3 / SEA_LEVEL.density_kg_m3,
                ),
                exact(Quantity::PathCm, 0.1 * change_mm),
                exact(Quantity::RangeM, farthest_m),
            ],
        );
    }
    let guess = sheet.need.distance.guess_spread_share;
    if guess > 0.0 {
        sheet.put(
            NoteKey::RangeError,
            vec![
                exact(Quantity::Percent, 100.0 * guess),
                exact(Quantity::RangeM, farthest_m),
                exact(
                    Quantity::ErrorCm,
                    0.1 * range_error_mm(path, farthest_m, guess * farthest_m),
                ),
            ],
        );
    }
}

fn near(sheet: &mut Sheet, zeroed: &Zeroed, path: &Sighted) {
    if zeroed.zero_m <= NEAR_M {
        return;
    }
    let Ok(higher) = Zeroed::new(
        zeroed.load,
        zeroed.air,
        (zeroed.sight_height_mm + 10.0).min(300.0),
        zeroed.zero_m,
    ) else {
        return;
    };
    let here_mm = path.path_mm(NEAR_M);
    let more_mm = here_mm - higher.sighted_within(zeroed.zero_m).path_mm(NEAR_M);
    sheet.put(
        NoteKey::Near,
        vec![
            exact(Quantity::RangeM, NEAR_M),
            exact(Quantity::PathCm, 0.1 * here_mm),
            exact(Quantity::RangeM, zeroed.zero_m),
            exact(Quantity::LengthMm, zeroed.sight_height_mm),
            exact(Quantity::ErrorCm, 0.1 * more_mm),
        ],
    );
}

/// What a ring or marks cut for this load are off when something changes.
fn ring(sheet: &mut Sheet, zeroed: &Zeroed, farthest_m: f64) {
    let error = |change: &Change| {
        RingError::new(zeroed, change, farthest_m)
            .ok()
            .map(|error| 0.1 * error.error_mm(farthest_m))
    };
    let place = sheet.need.place;
    let cold_c = zeroed.air.temperature_k - 273.15 - 20.0;
    let colder = atmosphere::at_place(place.height_m.value, cold_c, 0.5).ok();
    let higher = atmosphere::at_place(
        (place.height_m.value + 1000.0).min(8000.0),
        zeroed.air.temperature_k - 273.15 - 6.5,
        0.5,
    )
    .ok();
    let (Some(slower), Some(cold), Some(high), Some(tall)) = (
        error(&Change {
            velocity_m_s: -20.0,
            ..Change::NONE
        }),
        error(&Change {
            velocity_m_s: -20.0 * VELOCITY_PER_CELSIUS_M_S,
            air: colder,
            ..Change::NONE
        }),
        error(&Change {
            air: higher,
            ..Change::NONE
        }),
        error(&Change {
            sight_height_mm: Some((zeroed.sight_height_mm + 10.0).min(300.0)),
            ..Change::NONE
        }),
    ) else {
        return;
    };
    sheet.put(
        NoteKey::RingChanges,
        vec![
            exact(Quantity::RangeM, farthest_m),
            exact(Quantity::PathCm, slower),
            exact(Quantity::PathCm, cold),
            exact(Quantity::PathCm, high),
            exact(Quantity::PathCm, tall),
        ],
    );
}
