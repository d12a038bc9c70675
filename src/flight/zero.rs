//! Zeroing: the angle between bore and line of sight, and the path seen from the sight.

use super::atmosphere::Air;
use super::error::FlightError;
use super::trajectory::{Conditions, FARTHEST_M, Load, Point, Trajectory, fly, trajectory};
use crate::quantity::within;

/// The steepest angle between bore and line of sight that is tried, in rad.
const STEEPEST_RAD: f64 = 0.2;

/// A load zeroed under a sight.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Zeroed {
    /// The load.
    pub load: Load,
    /// Height of the sight over the bore in mm.
    pub sight_height_mm: f64,
    /// The zero in metres.
    pub zero_m: f64,
    /// The angle between bore and line of sight in mrad.
    pub elevation_mrad: f64,
    /// The air in which it was zeroed.
    pub air: Air,
}

impl Zeroed {
    /// Zeroes a load on the level without wind: the path crosses the line of sight at `zero_m`.
    ///
    /// # Errors
    /// [`FlightError::ZeroOutOfReach`] with the farthest zero that can be had; figures outside
    /// sight heights of 0 to 300 mm or zeros of 3 to 3000 m.
    ///
    /// # Accuracy
    /// The path at the zero is within 1e-6 mm of the line of sight.
    ///
    /// # Example
    /// ```
    /// use scopewright::flight::{Conditions, DragFunction, Load, Zeroed, SEA_LEVEL};
    /// let load = Load::new(DragFunction::G1, 0.43, 823.0).unwrap();
    /// let zeroed = Zeroed::new(load, SEA_LEVEL, 45.0, 100.0).unwrap();
    /// let path = zeroed.sighted(&Conditions::standard(), 300.0).unwrap();
    /// assert!((path.path_mm(300.0) + 465.0).abs() < 1.0);
    /// ```
    pub fn new(
        load: Load,
        air: Air,
        sight_height_mm: f64,
        zero_m: f64,
    ) -> Result<Self, FlightError> {
        within("sight_height_mm", sight_height_mm, 0.0, 300.0)?;
        within("zero_m", zero_m, 3.0, 3000.0)?;
        let elevation = zero_angle_rad(&load, &Conditions::still(air), sight_height_mm, zero_m)?;
        Ok(Self {
            load,
            sight_height_mm,
            zero_m,
            elevation_mrad: 1e3 * elevation,
            air,
        })
    }

    /// Flies it in these conditions, with the sight left as it was zeroed.
    ///
    /// # Errors
    /// As [`trajectory`].
    pub fn sighted(&self, conditions: &Conditions, to_m: f64) -> Result<Sighted, FlightError> {
        Ok(Sighted {
            trajectory: trajectory(&self.load, conditions, self.elevation_mrad, to_m)?,
            sight_height_m: 1e-3 * self.sight_height_mm,
        })
    }

    /// Flies it as far as it goes within `to_m` in the air of its zero.
    #[must_use]
    pub fn sighted_within(&self, to_m: f64) -> Sighted {
        Sighted {
            trajectory: fly(
                self.load.drag().curve(),
                self.load.bc_lb_in2(),
                self.load.muzzle_velocity_m_s(),
                &Conditions::still(self.air),
                1e-3 * self.elevation_mrad,
                to_m.clamp(0.0, FARTHEST_M),
            ),
            sight_height_m: 1e-3 * self.sight_height_mm,
        }
    }
}

/// The angle in rad that brings the path to the line of sight at `zero_m`.
fn zero_angle_rad(
    load: &Load,
    conditions: &Conditions,
    sight_height_mm: f64,
    zero_m: f64,
) -> Result<f64, FlightError> {
    let height = 1e-3 * sight_height_mm;
    let run = |angle: f64| {
        fly(
            load.drag().curve(),
            load.bc_lb_in2(),
            load.muzzle_velocity_m_s(),
            conditions,
            angle,
            zero_m,
        )
    };
    // How far the path lies above the sight line at the zero; none if it falls short.
    let above = |angle: f64| {
        let flown = run(angle);
        (flown.reach_m() >= zero_m).then(|| flown.at(zero_m).height_m - height)
    };
    // The path turns almost as a whole with the bore: a secant from there converges fast.
    if let Some(first) = above(0.0) {
        let (mut a, mut fa) = (0.0, first);
        let mut b = -first / zero_m;
        for _ in 0..12 {
            if !(b.abs() < STEEPEST_RAD) {
                break;
            }
            let Some(fb) = above(b) else { break };
            if fb.abs() < 1e-11 {
                return Ok(b);
            }
            let next = b - fb * (b - a) / (fb - fa);
            if (next - b).abs() < 1e-15 {
                return Ok(next);
            }
            (a, fa, b) = (b, fb, next);
        }
    }
    // Slow or far: halve between what falls short and the steepest.
    if above(STEEPEST_RAD).is_none_or(|far| far < 0.0) {
        let steep = fly(
            load.drag().curve(),
            load.bc_lb_in2(),
            load.muzzle_velocity_m_s(),
            conditions,
            STEEPEST_RAD,
            FARTHEST_M,
        );
        let farthest_m = steep.crossings_m(height).1.unwrap_or(steep.reach_m());
        return Err(FlightError::ZeroOutOfReach { zero_m, farthest_m });
    }
    let (mut low, mut high) = (0.0, STEEPEST_RAD);
    for _ in 0..60 {
        let middle = 0.5 * (low + high);
        if above(middle).is_some_and(|path| path >= 0.0) {
            high = middle;
        } else {
            low = middle;
        }
    }
    Ok(high)
}

/// A trajectory as it is seen from the sight.
#[derive(Clone, Debug)]
pub struct Sighted {
    trajectory: Trajectory,
    sight_height_m: f64,
}

impl Sighted {
    /// The trajectory itself.
    #[must_use]
    pub fn trajectory(&self) -> &Trajectory {
        &self.trajectory
    }

    /// How far it goes, in metres.
    #[must_use]
    pub fn reach_m(&self) -> f64 {
        self.trajectory.reach_m()
    }

    /// The reading at `range_m`.
    #[must_use]
    pub fn at(&self, range_m: f64) -> Point {
        self.trajectory.at(range_m)
    }

    /// The path above the line of sight in mm at `range_m`.
    #[must_use]
    pub fn path_mm(&self, range_m: f64) -> f64 {
        1e3 * (self.trajectory.at(range_m).height_m - self.sight_height_m)
    }

    /// The hold or dial in mrad at `range_m`, `−P/R`; positive is up.
    ///
    /// # Validity
    /// Ranges from 1 m; nearer ones are held there.
    #[must_use]
    pub fn hold_mrad(&self, range_m: f64) -> f64 {
        -self.path_mm(range_m) / range_m.max(1.0)
    }

    /// The wind's drift in mrad at `range_m`, positive to the right.
    #[must_use]
    pub fn drift_mrad(&self, range_m: f64) -> f64 {
        1e3 * self.trajectory.at(range_m).drift_m / range_m.max(1.0)
    }

    /// The highest point above the line of sight: range in m and path in mm; none while it
    /// still rises or never does.
    #[must_use]
    pub fn highest(&self) -> Option<(f64, f64)> {
        self.trajectory
            .highest()
            .map(|point| (point.range_m, 1e3 * (point.height_m - self.sight_height_m)))
    }

    /// Where the path crosses the line of sight, in m: going up (near), coming down (far).
    #[must_use]
    pub fn crossings_m(&self) -> (Option<f64>, Option<f64>) {
        self.trajectory.crossings_m(self.sight_height_m)
    }

    /// Where the path crosses a level `level_mm` above the line of sight, in m.
    #[must_use]
    pub fn crossings_of_level_m(&self, level_mm: f64) -> (Option<f64>, Option<f64>) {
        self.trajectory
            .crossings_m(self.sight_height_m + 1e-3 * level_mm)
    }

    /// How fast the hold changes with range, in mrad per m.
    #[must_use]
    pub fn hold_slope_mrad_per_m(&self, range_m: f64) -> f64 {
        let point = self.trajectory.at(range_m);
        let range = range_m.max(1.0);
        // d(−P/R)/dR = −y′/R + P/R².
        -1e3 * point.slope / range + self.path_mm(range) / (range * range)
    }
}

/// Where a canted rifle hits: the sight is zeroed or dialled for `range_m` without cant.
///
/// The bore swings about the line of sight by the cant: with the bore line D below which the
/// bullet falls at R, the shot goes `D·sin c` to the side of the cant and `D·(1 − cos c)` low.
///
/// # Accuracy
/// Exact for a point mass but for the change of range with elevation, under 1e-4 of D.
#[must_use]
pub fn cant_error_mm(zeroed_at_range: &Zeroed, cant_deg: f64) -> (f64, f64) {
    let cant = cant_deg * core::f64::consts::PI / 180.0;
    let bore_line_mm =
        1e3 * zeroed_at_range.zero_m * libm::tan(1e-3 * zeroed_at_range.elevation_mrad);
    let below_mm = bore_line_mm - zeroed_at_range.sight_height_mm;
    (
        below_mm * libm::sin(cant),
        -below_mm * (1.0 - libm::cos(cant)),
    )
}
