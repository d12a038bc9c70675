//! Moving game: how far to swing ahead, and how fast.

use super::zero::Sighted;

/// The lead on moving game.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Lead {
    /// How far ahead of the aiming point, in m.
    pub lead_m: f64,
    /// The same in mrad.
    pub lead_mrad: f64,
    /// The same in lengths of the animal's body.
    pub body_lengths: f64,
    /// How fast the rifle swings, in degrees a second.
    pub swing_deg_s: f64,
}

/// The lead `L = v·t(R)·sin β` on game that crosses at `speed_m_s` under the angle β to the
/// line of sight.
///
/// # Validity
/// The time from deciding to the shot leaving is not in it: it belongs to the shooter's
/// swing. `body_length_m` positive.
///
/// # Example
/// ```
/// use scopewright::flight::{Conditions, DragFunction, Load, SEA_LEVEL, Zeroed, lead::lead};
/// // Boar at 12 m/s and 50 m with 800 m/s: a sixteenth of a second, some 77 cm.
/// let load = Load::new(DragFunction::G1, 0.35, 800.0).unwrap();
/// let path = Zeroed::new(load, SEA_LEVEL, 45.0, 100.0).unwrap()
///     .sighted(&Conditions::standard(), 200.0).unwrap();
/// assert!((lead(&path, 50.0, 12.0, 90.0, 1.35).lead_m - 0.77).abs() < 0.005);
/// ```
#[must_use]
pub fn lead(
    path: &Sighted,
    range_m: f64,
    speed_m_s: f64,
    crossing_deg: f64,
    body_length_m: f64,
) -> Lead {
    let sideways = speed_m_s * libm::sin(crossing_deg * core::f64::consts::PI / 180.0);
    let lead_m = sideways * path.at(range_m).time_s;
    let range = range_m.max(1.0);
    Lead {
        lead_m,
        lead_mrad: 1e3 * lead_m / range,
        body_lengths: lead_m / body_length_m,
        swing_deg_s: sideways / range * 180.0 / core::f64::consts::PI,
    }
}
