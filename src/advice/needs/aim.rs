//! Aim: the point is chosen finely enough for the circle, or for the hold.

use crate::advice::chance::Tables;

/// Spread of the margin, natural logarithm.
pub const SPREAD: f64 = 0.35;
/// Below this luminance a third of the circle must do instead of a sixth, cd/m².
pub const COARSER_BELOW_CD_M2: f64 = 0.05;

/// What must be resolved, in mm: the larger of a part of the circle (a sixth by day, a third
/// in the dark, the whole circle on moving game) and half of the visible wobble.
#[must_use]
pub fn fineness_mm(
    circle_mm: f64,
    moving: bool,
    luminance_cd_m2: f64,
    wobble_mrad: f64,
    range_m: f64,
) -> f64 {
    let part = if moving {
        1.0
    } else if luminance_cd_m2 < COARSER_BELOW_CD_M2 {
        1.0 / 3.0
    } else {
        1.0 / 6.0
    };
    (circle_mm * part).max(0.5 * wobble_mrad * range_m)
}

/// The chance, `Φ(ln(M·a/(MAR·R))/0.35)`; `log_fineness` is log10 of a/R in arcminutes.
#[inline(always)]
#[must_use]
pub fn chance(tables: &Tables, log_fineness: f32, log_magnification: f32, log_mar: f32) -> f32 {
    tables.phi(
        (log_magnification + log_fineness - log_mar) * (core::f64::consts::LN_10 / SPREAD) as f32,
    )
}
