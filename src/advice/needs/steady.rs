//! Steady: the wobble in the picture is used, not chased.

use crate::advice::chance::Tables;
use crate::rifle::steadiness::WOBBLE_CEILING_MRAD;

/// Spread of the margin, natural logarithm.
pub const SPREAD: f64 = 0.45;

/// log10 of the ceiling over a wobble, to be compared with log10 of the magnification.
#[must_use]
pub fn log_room(wobble_mrad: f64) -> f32 {
    libm::log10(WOBBLE_CEILING_MRAD / wobble_mrad) as f32
}

/// The chance, `Φ(ln(15 mrad/(w·M))/0.45)`.
#[inline(always)]
#[must_use]
pub fn chance(tables: &Tables, log_room: f32, log_magnification: f32) -> f32 {
    tables.phi((log_room - log_magnification) * (core::f64::consts::LN_10 / SPREAD) as f32)
}
