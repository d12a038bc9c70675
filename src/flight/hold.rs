//! Holding over: marks in the reticle, a ring cut for one load, and errors of range.

use super::atmosphere::Air;
use super::error::FlightError;
use super::trajectory::Load;
use super::zero::{Sighted, Zeroed};

/// The miss in mm at `range_m` from holding with a mark at `mark_mrad`: positive is high.
#[must_use]
pub fn mark_error_mm(path: &Sighted, mark_mrad: f64, range_m: f64) -> f64 {
    (mark_mrad - path.hold_mrad(range_m)) * range_m
}

/// Whether a mark serves at a range: its miss is at most a quarter of the circle's radius.
///
/// # Source
/// Assumption.
#[must_use]
pub fn mark_fits(path: &Sighted, mark_mrad: f64, range_m: f64, circle_radius_mm: f64) -> bool {
    mark_error_mm(path, mark_mrad, range_m).abs() <= 0.25 * circle_radius_mm
}

/// The range in m for which a mark is right; none if the path never asks for that hold
/// beyond its zero.
#[must_use]
pub fn range_of_mark_m(path: &Sighted, mark_mrad: f64) -> Option<f64> {
    let from = path.crossings_m().1?;
    let end = path.reach_m();
    if !(mark_mrad >= 0.0) || path.hold_mrad(end) < mark_mrad {
        return None;
    }
    Some(super::trajectory::root(from, end, |range| {
        path.hold_mrad(range) - mark_mrad
    }))
}

/// The miss in mm at `range_m` when the range is off by `range_error_m`: `R·|dh/dR|·ΔR`.
///
/// # Validity
/// Small errors. Estimated ranges are off by some 15 %, measured ones by 1 m.
#[must_use]
pub fn range_error_mm(path: &Sighted, range_m: f64, range_error_m: f64) -> f64 {
    (path.hold_slope_mrad_per_m(range_m) * range_error_m).abs() * range_m
}

/// What may differ from the load and air for which a ring was cut.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Change {
    /// Added to the muzzle velocity, in m/s.
    pub velocity_m_s: f64,
    /// Factor on the ballistic coefficient.
    pub bc_factor: f64,
    /// The air now; none: as it was.
    pub air: Option<Air>,
    /// Height of the sight over the bore now, in mm; none: as it was.
    pub sight_height_mm: Option<f64>,
}

impl Change {
    /// Nothing changes.
    pub const NONE: Change = Change {
        velocity_m_s: 0.0,
        bc_factor: 1.0,
        air: None,
        sight_height_mm: None,
    };
}

/// The change of muzzle velocity with the temperature of the powder, in m/s for each °C.
///
/// # Source
/// Common practice, no source: 15 m/s over 30 °C; modern powders change less.
pub const VELOCITY_PER_CELSIUS_M_S: f64 = 0.5;

/// The error of a ring cut for `base` when something changed and the rifle was zeroed again
/// at the same distance.
#[derive(Clone, Debug)]
pub struct RingError {
    base: Sighted,
    changed: Sighted,
}

impl RingError {
    /// Flies the load for which the ring was cut and the changed one to `to_m`.
    ///
    /// # Errors
    /// [`FlightError`] when the changed load makes no sense or falls short.
    pub fn new(base: &Zeroed, change: &Change, to_m: f64) -> Result<Self, FlightError> {
        let load = Load::new(
            base.load.drag(),
            base.load.bc_lb_in2() * change.bc_factor,
            base.load.muzzle_velocity_m_s() + change.velocity_m_s,
        )?;
        let air = change.air.unwrap_or(base.air);
        let height = change.sight_height_mm.unwrap_or(base.sight_height_mm);
        let changed = Zeroed::new(load, air, height, base.zero_m)?;
        let conditions = super::trajectory::Conditions::still;
        Ok(Self {
            base: base.sighted(&conditions(base.air), to_m)?,
            changed: changed.sighted(&conditions(air), to_m)?,
        })
    }

    /// The miss in mm at `range_m`, positive high: the new path less the old.
    #[must_use]
    pub fn error_mm(&self, range_m: f64) -> f64 {
        self.changed.path_mm(range_m) - self.base.path_mm(range_m)
    }
}
