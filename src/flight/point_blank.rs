//! Point-blank range: how far one can aim dead on and still hit a circle.

use super::atmosphere::{Air, SEA_LEVEL};
use super::error::FlightError;
use super::trajectory::{Conditions, Load, fly};
use super::zero::{Sighted, Zeroed};
use crate::quantity::within;

/// How far out the search goes for the end of the point-blank range, in m.
const SEARCH_M: f64 = 1500.0;

/// The zero that carries farthest for a circle.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PointBlank {
    /// Radius of the circle in mm.
    pub radius_mm: f64,
    /// The zero in m: where the path comes down through the line of sight.
    pub zero_m: f64,
    /// Where it first crosses the line of sight, in m.
    pub near_zero_m: f64,
    /// Where it leaves the circle at the bottom, in m.
    pub reach_m: f64,
    /// Nearer than this the path is still below the circle, in m; 0 if it starts inside.
    pub inside_from_m: f64,
    /// Where the path is highest, in m.
    pub highest_at_m: f64,
    /// The path at 100 m in mm.
    pub path_at_100_m_mm: f64,
}

/// The longest point-blank range for a circle of `radius_mm`: the bore is raised until the
/// path just touches the circle's top; the range ends where it leaves the bottom.
///
/// # Validity
/// Drop alone: nothing about the hold, the wind or the effect on game. Rimfire and air rifles
/// go with radii of 10 to 20 mm.
///
/// # Errors
/// [`FlightError::OutOfRange`] for radii outside 2 to 500 mm.
///
/// # Accuracy
/// 0.1 m against tabulated values (`tests/reference_flight.rs`).
pub fn point_blank(
    load: &Load,
    air: Air,
    sight_height_mm: f64,
    radius_mm: f64,
) -> Result<PointBlank, FlightError> {
    within("radius_mm", radius_mm, 2.0, 500.0)?;
    within("sight_height_mm", sight_height_mm, 0.0, 300.0)?;
    let conditions = Conditions::still(air);
    let run = |angle: f64, to_m: f64| {
        fly(
            load.drag().curve(),
            load.bc_lb_in2(),
            load.muzzle_velocity_m_s(),
            &conditions,
            angle,
            to_m,
        )
    };
    let height = 1e-3 * sight_height_mm;
    let wanted = height + 1e-3 * radius_mm;
    // In a vacuum the apex is (V·sin θ)²/2g; with drag a little less.
    let v = load.muzzle_velocity_m_s();
    let mut angle = (2.0 * 9.80665 * wanted).sqrt() / v;
    for _ in 0..20 {
        let apex_m = 2.0 * angle * v * v / 9.80665 + 10.0;
        let top = run(angle, apex_m)
            .highest()
            .map_or(wanted, |point| point.height_m);
        // The apex grows with the square of the angle.
        let better = angle * (wanted / top).sqrt();
        let done = (better - angle).abs() < 1e-13;
        angle = better;
        if done {
            break;
        }
    }
    let flown = run(angle, SEARCH_M);
    let (near, far) = flown.crossings_m(height);
    let (inside, reach) = flown.crossings_m(height - 1e-3 * radius_mm);
    let end = flown.reach_m();
    Ok(PointBlank {
        radius_mm,
        zero_m: far.unwrap_or(end),
        near_zero_m: near.unwrap_or(0.0),
        reach_m: reach.unwrap_or(end),
        inside_from_m: inside.unwrap_or(0.0),
        highest_at_m: flown.highest().map_or(0.0, |point| point.range_m),
        path_at_100_m_mm: 1e3 * (flown.at(100.0).height_m - height),
    })
}

/// [`point_blank`] in standard air at sea level.
///
/// # Errors
/// As [`point_blank`].
pub fn point_blank_standard(
    load: &Load,
    sight_height_mm: f64,
    radius_mm: f64,
) -> Result<PointBlank, FlightError> {
    point_blank(load, SEA_LEVEL, sight_height_mm, radius_mm)
}

/// The stretch over which a zeroed load stays within a circle when aimed dead on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DeadOn {
    /// From here, in m: nearer, the path is still below the circle.
    pub from_m: f64,
    /// To here, in m.
    pub to_m: f64,
    /// Where the path goes over the circle's top before it comes back, if it does, in m.
    pub over_top_m: Option<(f64, f64)>,
}

/// How far a load as it is zeroed can be aimed dead on at a circle of `radius_mm`.
///
/// With a far zero the path may rise over the circle; the stretch then ends there, and
/// [`DeadOn::over_top_m`] says from where to where.
///
/// # Errors
/// [`FlightError::OutOfRange`] for radii outside 2 to 500 mm.
pub fn dead_on(zeroed: &Zeroed, radius_mm: f64) -> Result<DeadOn, FlightError> {
    within("radius_mm", radius_mm, 2.0, 500.0)?;
    Ok(dead_on_path(
        &zeroed.sighted_within(SEARCH_M.max(zeroed.zero_m + 500.0)),
        radius_mm,
    ))
}

/// As [`dead_on`] for a path already flown.
#[must_use]
pub fn dead_on_path(path: &Sighted, radius_mm: f64) -> DeadOn {
    let end = path.reach_m();
    let (enters, leaves) = path.crossings_of_level_m(-radius_mm);
    let over = match path.crossings_of_level_m(radius_mm) {
        (Some(up), Some(down)) => Some((up, down)),
        (Some(up), None) => Some((up, end)),
        _ => None,
    };
    let from_m = enters.unwrap_or(0.0);
    let bottom_m = leaves.unwrap_or(end);
    DeadOn {
        from_m,
        to_m: over.map_or(bottom_m, |(up, _)| up.min(bottom_m)),
        over_top_m: over,
    }
}
