//! Drop: the shot lands within its part of the circle, with the means that the sight gives.
//!
//! A shooter who aims dead on has zeroed for the longest reach inside the circle, or at the
//! distance of the target; one who holds with marks or turns a dial is zeroed at the usual distance and is off by how well
//! the range is known and how finely the means divides.

use crate::advice::chance::normal;
use crate::flight::{
    Air, Conditions, FlightError, Load, SEA_LEVEL, Sighted, Zeroed, drag::DragFunction,
    point_blank::point_blank,
};
use crate::need::answers::DistanceHabit;
use crate::need::shooter::Need;

/// The spread of the margin as a share of the circle's radius.
pub const SPREAD: f64 = 0.35;
/// Marks are read to this much, mrad.
pub const MARKS_READ_MRAD: f64 = 0.1;
/// A dial with clicks is set to this much, mrad.
pub const DIAL_READ_MRAD: f64 = 0.05;
/// A ring cut for one load is good to this much, mrad (a click either way to 300 m).
pub const RING_READ_MRAD: f64 = 0.1;
/// A measured distance is good to this much, m.
pub const MEASURED_SPREAD_M: f64 = 1.0;
/// Mount and base are out of line by about this much, mrad.
pub const MISALIGNED_MRAD: f64 = 1.5;

/// The chance, `Φ((r − |e|)/√((0.35 r)² + s²))`: e the error, s its spread, r the radius.
#[must_use]
pub fn chance(error_mm: f64, spread_mm: f64, circle_mm: f64) -> f64 {
    let radius = 0.5 * circle_mm;
    let own = SPREAD * radius;
    normal((radius - error_mm.abs()) / (own * own + spread_mm * spread_mm).sqrt())
}

/// A usual crosswind, m/s (assumption).
pub const WIND_M_S: f64 = 2.0;
/// Without marks a hold for the wind is off by this share of the drift …
pub const WIND_BY_EYE: f64 = 0.3;
/// … and with marks by this one.
pub const WIND_BY_MARKS: f64 = 0.1;

/// Mean chance of a dead-on zero over the ranges of all situations.
fn mean_dead_on_chance(need: &Need, sighted: &Sighted) -> f64 {
    need.situations
        .iter()
        .map(|s| {
            let circle = s.what.aiming_circle_mm();
            let sum: f64 = [-1.5, -0.75, 0.0, 0.75, 1.5]
                .iter()
                .map(|&score| chance(sighted.path_mm(s.range.range_m(score)), 0.0, circle))
                .sum();
            s.share * sum / 5.0
        })
        .sum()
}

/// A hold or a dial for one shot.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Hold {
    /// Read to, mrad.
    pub read_mrad: f64,
    /// At most, mrad.
    pub most_mrad: f64,
    /// How far second-plane marks are off their power, as a share.
    pub off_power: f64,
    /// How far the range is off, m.
    pub range_spread_m: f64,
    /// There are marks, for the wind at least.
    pub marks: bool,
    /// The elevation is held with the marks, not dialled.
    pub by_marks: bool,
}

/// The flight of this shooter's bullet as the ranking needs it.
#[derive(Clone, Debug)]
pub struct Flight {
    /// Zeroed for the longest dead-on reach.
    dead_on: Sighted,
    /// Zeroed at the usual distance.
    usual: Sighted,
    /// The same in the usual crosswind.
    wind: Sighted,
    /// The usual zero, m.
    pub zero_m: f64,
    /// Elevation of the bore at that zero over the line of sight, mrad.
    pub zero_angle_mrad: f64,
    /// The zero that serves best dead on, m.
    pub dead_on_zero_m: f64,
    /// The zero that carries farthest dead on, m.
    pub longest_zero_m: f64,
    /// How far, m.
    pub dead_on_reach_m: f64,
    /// The radius it holds for, mm.
    pub dead_on_radius_mm: f64,
    /// Distances are known to this share …
    guess_share: f64,
    /// Marks are used.
    pub uses_marks: bool,
    /// A dial or ring is used.
    pub uses_dial: bool,
    /// Factor on the drop in this world.
    world_drop: f64,
}

/// The largest circle radius that a dead-on zero is made for, mm: the usual "4 cm high".
pub const DEAD_ON_RADIUS_MM: f64 = 40.0;

/// Height of the line of sight over the bore that the flight is computed with, mm.
pub const SIGHT_HEIGHT_MM: f64 = 45.0;

/// The usual zero of a load, m, by its muzzle energy and velocity: air 25, rimfire 50, what is
/// slow (slug, muzzle loader, subsonic) 75, centre fire 100 (common practice, no source).
#[must_use]
pub fn usual_zero_m(bullet_g: f64, velocity_m_s: f64) -> f64 {
    let energy_j = 0.0005 * bullet_g * velocity_m_s * velocity_m_s;
    if energy_j < 60.0 {
        25.0
    } else if energy_j < 500.0 {
        50.0
    } else if velocity_m_s < 560.0 {
        75.0
    } else {
        100.0
    }
}

/// A sight is zeroed at most so far above the usual zero, mrad: half the travel of a usual one,
/// less what mount and base take (assumption).
const MOST_ZERO_MRAD: f64 = 6.0;

/// The usual zero of this shooter, m: who shoots at targets at one distance alone is zeroed there
/// if a sight reaches that (common practice, no source), everybody else as the load has it.
#[must_use]
pub fn usual_zero_of(need: &Need) -> f64 {
    let velocity_m_s = need.load.muzzle_velocity_m_s.value.value;
    let by_load_m = usual_zero_m(need.load.bullet_g.value, velocity_m_s);
    let Some(distance_m) = only_distance_m(need) else {
        return by_load_m;
    };
    let elevation_mrad = |zero_m| {
        let zeroed = Zeroed::new(load_of(need).ok()?, air(need), SIGHT_HEIGHT_MM, zero_m).ok()?;
        Some(zeroed.elevation_mrad)
    };
    match (elevation_mrad(distance_m), elevation_mrad(by_load_m)) {
        (Some(there), Some(usual)) if there - usual <= MOST_ZERO_MRAD => distance_m,
        _ => by_load_m,
    }
}

/// The distance of all targets, m; none if something else is shot at, or at several distances.
fn only_distance_m(need: &Need) -> Option<f64> {
    let distance_m = need.situations.first()?.range.usual_m;
    let is_there = |range_m: f64| (range_m - distance_m).abs() <= 0.02 * distance_m;
    need.situations
        .iter()
        .all(|s| {
            s.what.is_target()
                && [s.range.nearest_m, s.range.usual_m, s.range.farthest_m]
                    .into_iter()
                    .all(is_there)
        })
        .then_some(distance_m)
}

impl Flight {
    /// The flight for a need; none if the load's figures make no trajectory.
    #[must_use]
    pub fn of(need: &Need, world_drop: f64) -> Option<Self> {
        let load = load_of(need).ok()?;
        let air = air(need);
        let farthest_m = need
            .situations
            .iter()
            .map(|s| s.range.farthest_m)
            .fold(100.0, f64::max);
        let circle_mm = need
            .situations
            .iter()
            .map(|s| s.what.aiming_circle_mm())
            .fold(f64::INFINITY, f64::min);
        let radius_mm = (0.5 * circle_mm).clamp(5.0, DEAD_ON_RADIUS_MM);
        let reach = point_blank(&load, air, SIGHT_HEIGHT_MM, radius_mm).ok()?;
        let zero_m = usual_zero_of(need);
        let usual = Zeroed::new(load, air, SIGHT_HEIGHT_MM, zero_m).ok()?;
        let zero_angle_mrad = usual.elevation_mrad;
        let to_m = farthest_m * 1.3 + 50.0;
        let wind = usual
            .sighted(
                &Conditions::still(air).with_wind_from_left(WIND_M_S),
                to_m.min(1400.0),
            )
            .ok()?;
        // Dead on, the zero is where it serves these ranges best: the usual one, the longest
        // reach inside the circle, or one between; at targets the distance shot at, too.
        let longest_m = reach.zero_m.max(10.0);
        let between = [0.5, 1.0].map(|share| zero_m + share * (longest_m - zero_m));
        let at_targets = need.situations.iter().filter(|s| s.what.is_target());
        let mut dead_on = usual.sighted_within(to_m);
        let mut dead_on_zero_m = zero_m;
        let mut best = mean_dead_on_chance(need, &dead_on);
        for tried_m in between
            .into_iter()
            .chain(at_targets.map(|s| s.range.usual_m))
        {
            if let Ok(zeroed) = Zeroed::new(load, air, SIGHT_HEIGHT_MM, tried_m) {
                let tried = zeroed.sighted_within(to_m);
                let mean = mean_dead_on_chance(need, &tried);
                if mean > best + 1e-9 {
                    (dead_on, dead_on_zero_m, best) = (tried, tried_m, mean);
                }
            }
        }
        let (uses_marks, uses_dial) = match need.distance.habit.value {
            DistanceHabit::DeadOn => (false, false),
            DistanceHabit::Marks => (true, false),
            DistanceHabit::Dial => (true, true),
            DistanceHabit::DialAndMarks => (true, true),
        };
        Some(Self {
            dead_on,
            wind,
            usual: usual.sighted_within(to_m),
            zero_m,
            zero_angle_mrad,
            dead_on_zero_m,
            longest_zero_m: reach.zero_m,
            dead_on_reach_m: reach.reach_m,
            dead_on_radius_mm: radius_mm,
            guess_share: if need.distance.rangefinder.value {
                0.0
            } else {
                need.distance.guess_spread_share.max(0.0)
            },
            uses_marks,
            uses_dial,
            world_drop,
        })
    }

    /// Elevation needed from the usual zero at a range, mrad.
    #[must_use]
    pub fn needed_mrad(&self, range_m: f64) -> f64 {
        self.usual.hold_mrad(range_m) * self.world_drop
    }

    /// Path at a range with the usual zero, mm.
    #[must_use]
    pub fn path_mm(&self, range_m: f64) -> f64 {
        self.usual.path_mm(range_m)
    }

    /// How far a distance is off at a range, m, if it is guessed, measured or known.
    #[must_use]
    pub fn range_spread_m(&self, range_m: f64, known: bool) -> f64 {
        if known {
            0.0
        } else if self.guess_share > 0.0 {
            self.guess_share * range_m
        } else {
            MEASURED_SPREAD_M
        }
    }

    /// The chance with dead-on aiming and no other means.
    #[must_use]
    pub fn dead_on_chance(&self, range_m: f64, circle_mm: f64, marks: bool) -> f64 {
        let path = self.dead_on.path_mm(range_m);
        // Below the line the world's drop counts; above it the zero fixes the path.
        let error = if path < 0.0 && range_m > self.dead_on_zero_m {
            path * self.world_drop
        } else {
            path
        };
        chance(error, self.wind_spread_mm(range_m, marks, 0.0), circle_mm)
    }

    /// How far a hold for the usual wind is off at a range, mm.
    #[must_use]
    pub fn wind_spread_mm(&self, range_m: f64, marks: bool, off_power: f64) -> f64 {
        let drift = (self.wind.drift_mrad(range_m) * range_m).abs();
        drift
            * if marks {
                WIND_BY_MARKS + off_power
            } else {
                WIND_BY_EYE
            }
    }

    /// The chance with a hold or a dial that is read to `read_mrad`, off by `hold_error_mrad`,
    /// and gives at most `most_mrad`.
    #[must_use]
    pub fn means_chance(&self, range_m: f64, circle_mm: f64, hold: Hold) -> f64 {
        let Hold {
            read_mrad,
            most_mrad,
            off_power,
            range_spread_m,
            marks,
            by_marks,
        } = hold;
        let needed = self.needed_mrad(range_m).max(0.0);
        let short = (needed - most_mrad).max(0.0);
        let error_mm = (short + if by_marks { needed * off_power } else { 0.0 }) * range_m;
        let slope = self.usual.hold_slope_mrad_per_m(range_m).abs();
        let by_range = slope * range_spread_m * range_m;
        let by_reading = read_mrad * range_m;
        let by_wind = self.wind_spread_mm(range_m, marks, off_power);
        let spread = (by_range * by_range + by_reading * by_reading + by_wind * by_wind).sqrt();
        let held = chance(error_mm, spread, circle_mm);
        // Nobody holds where dead on with the usual zero does better.
        held.max(chance(self.usual.path_mm(range_m), by_wind, circle_mm))
    }
}

/// The load of a need: its G7 figure before its G1, and a usual one where there is none.
///
/// # Errors
/// [`FlightError::OutOfRange`] for figures that make no load.
pub fn load_of(need: &Need) -> Result<Load, FlightError> {
    let (drag, bc) = match (need.load.bc_g7_lb_in2, need.load.bc_g1_lb_in2) {
        (Some(bc), _) => (DragFunction::G7, bc),
        (None, Some(bc)) => (DragFunction::G1, bc),
        (None, None) => (DragFunction::G1, 0.44),
    };
    Ok(Load::new(
        drag,
        bc,
        need.load.muzzle_velocity_m_s.value.value,
    )?)
}

/// The air of the place in the middle of the season's temperatures.
#[must_use]
pub fn air(need: &Need) -> Air {
    let coldest = need.place.coldest_c.value.clamp(-40.0, 40.0);
    let height = need.place.height_m.value.clamp(-400.0, 6000.0);
    let temperature = (coldest + 10.0).min(25.0);
    crate::flight::atmosphere::at_place(height, temperature, 0.5).unwrap_or(SEA_LEVEL)
}
