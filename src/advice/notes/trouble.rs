//! What does not fit: what was read, by how much it fails, and what would do.

use super::mount::{HALF_RING_MM, clearances, tube};
use super::{Sheet, exact};
use crate::advice::needs::drop;
use crate::advice::report::{Effect, NoteKey, Quantity};
use crate::flight::point_blank::point_blank;
use crate::flight::{FlightError, Zeroed};
use crate::rifle::mounting::{MountError, Rings, rings_kept, turret_place_mm};
use crate::sight::fits;
use crate::sight::turret::{Mounted, TravelError};
use crate::sky::evening::SunCourse;

/// How far a typical tube may be off, mm.
const TUBE_SPREAD_MM: f64 = 10.0;

fn mm(value: f64) -> Effect {
    exact(Quantity::LengthMm, value)
}

pub(super) fn notes(sheet: &mut Sheet) {
    load(sheet);
    travel(sheet);
    rings(sheet);
    sun(sheet);
}

/// A load that never reaches its zero, or falls to the ground before the farthest shot.
fn load(sheet: &mut Sheet) {
    let need = sheet.need;
    let velocity = need.load.muzzle_velocity_m_s.value.value;
    let bullet_g = need.load.bullet_g.value;
    let zero_m = drop::usual_zero_of(need);
    let farthest_m = sheet.ground.farthest_m();
    let zeroed = drop::load_of(need)
        .and_then(|load| Zeroed::new(load, drop::air(need), drop::SIGHT_HEIGHT_MM, zero_m));
    match zeroed {
        Err(FlightError::ZeroOutOfReach { zero_m, farthest_m }) => sheet.put(
            NoteKey::ZeroOutOfReach,
            vec![
                exact(Quantity::BulletG, bullet_g),
                exact(Quantity::SpeedMS, velocity),
                exact(Quantity::RangeM, zero_m),
                exact(Quantity::RangeM, farthest_m),
            ],
        ),
        Err(FlightError::FallsShort { asked_m, reach_m }) => {
            falls_short(sheet, asked_m, reach_m);
        }
        Err(FlightError::OutOfRange(out)) => sheet.put(
            NoteKey::NoFlight,
            vec![
                exact(Quantity::Ratio, out.value),
                exact(Quantity::Ratio, out.least),
                exact(Quantity::Ratio, out.most),
            ],
        ),
        Ok(zeroed) => {
            let reach_m = zeroed.sighted_within(farthest_m).reach_m();
            if reach_m < farthest_m - 1.0 {
                falls_short(sheet, farthest_m, reach_m);
            } else if sheet.ground.flight.is_none() {
                // The rest of what the flight needs: a reach inside the circle.
                let reach = point_blank(
                    &zeroed.load,
                    zeroed.air,
                    zeroed.sight_height_mm,
                    drop::DEAD_ON_RADIUS_MM,
                );
                if let Err(FlightError::FallsShort { asked_m, reach_m }) = reach {
                    falls_short(sheet, asked_m, reach_m);
                }
            }
        }
    }
}

fn falls_short(sheet: &mut Sheet, asked_m: f64, reach_m: f64) {
    let load = &sheet.need.load;
    let effects = vec![
        exact(Quantity::BulletG, load.bullet_g.value),
        exact(Quantity::SpeedMS, load.muzzle_velocity_m_s.value.value),
        exact(Quantity::RangeM, asked_m),
        exact(Quantity::RangeM, reach_m),
    ];
    sheet.put(NoteKey::FallsShort, effects);
}

/// A zero beyond a stop of the elevation.
fn travel(sheet: &mut Sheet) {
    let Some(flight) = sheet.ground.flight.as_ref() else {
        return;
    };
    let incline_mrad = sheet.need.mount.incline_mrad;
    let mounted = Mounted {
        total_mrad: fits::travel_mrad(&sheet.own).value,
        incline_mrad,
        zero_angle_mrad: flight.zero_angle_mrad,
        misalignment_mrad: drop::MISALIGNED_MRAD,
        windage_used_mrad: 0.0,
    };
    let (key, short, would) = match mounted.check() {
        Err(TravelError::CannotBeZeroed {
            short_by_mrad,
            largest_incline_mrad,
        }) => (NoteKey::CannotBeZeroed, short_by_mrad, largest_incline_mrad),
        Err(TravelError::ZeroTooHigh {
            short_by_mrad,
            smallest_incline_mrad,
        }) => (NoteKey::ZeroTooHigh, short_by_mrad, smallest_incline_mrad),
        _ => return,
    };
    let zero_m = flight.zero_m;
    sheet.put(
        key,
        vec![
            exact(Quantity::AngleMrad, incline_mrad),
            exact(Quantity::AngleMrad, short),
            exact(Quantity::AngleMrad, would),
            exact(Quantity::RangeM, zero_m),
        ],
    );
}

/// Rings that are kept and do not go with the pick, and a tube too short for two.
fn rings(sheet: &mut Sheet) {
    let clearances = clearances(sheet);
    if let Some(bore) = sheet.need.mount.rings_kept_mm.value {
        let centre = sheet
            .need
            .mount
            .rings_centre_height_mm
            .unwrap_or(f64::INFINITY);
        match rings_kept(&clearances, bore, centre) {
            Err(MountError::TubeDoesNotMatch { ring_mm, tube_mm }) => {
                sheet.put(NoteKey::KeptTube, vec![mm(ring_mm), mm(tube_mm)]);
            }
            Err(MountError::BellTooLow {
                short_by_mm,
                needed_centre_mm,
                largest_bell_outer_mm,
                ..
            }) => sheet.put(
                NoteKey::KeptBell,
                vec![
                    mm(centre),
                    mm(short_by_mm),
                    mm(needed_centre_mm),
                    mm(clearances.bell_outer_mm),
                    mm(largest_bell_outer_mm),
                ],
            ),
            Err(MountError::OcularTooLow {
                short_by_mm,
                needed_centre_mm,
                largest_ocular_outer_mm,
            }) => sheet.put(
                NoteKey::KeptBolt,
                vec![
                    mm(centre),
                    mm(short_by_mm),
                    mm(needed_centre_mm),
                    mm(largest_ocular_outer_mm),
                ],
            ),
            Err(MountError::TooLowForStraightStock {
                short_by_mm,
                needed_centre_mm,
            }) => sheet.put(
                NoteKey::KeptStock,
                vec![mm(centre), mm(short_by_mm), mm(needed_centre_mm)],
            ),
            _ => {}
        }
    }
    let tube = tube(sheet);
    let middle = |(from, to): (f64, f64)| 0.5 * (from + to);
    let placed = Rings {
        front_mm: middle(tube.front_mm),
        rear_mm: -middle(tube.rear_mm),
        half_width_mm: HALF_RING_MM,
    };
    // Less than the typical tube is uncertain by is no finding.
    if let Err(MountError::NoRoomToClamp { short_by_mm }) = turret_place_mm(&tube, &placed)
        && short_by_mm > TUBE_SPREAD_MM
    {
        sheet.put(
            NoteKey::NoRoomToClamp,
            vec![mm(short_by_mm), mm(2.0 * HALF_RING_MM)],
        );
    }
}

/// The Sun neither sets nor rises in the middle of the season.
fn sun(sheet: &mut Sheet) {
    let latitude = exact(Quantity::AngleDeg, sheet.need.place.latitude_deg.value);
    match sheet.typical.sun_course() {
        SunCourse::Sets => {}
        SunCourse::StaysUp => sheet.put(NoteKey::PolarDay, vec![latitude]),
        SunCourse::StaysDown => sheet.put(NoteKey::PolarNight, vec![latitude]),
    }
}
