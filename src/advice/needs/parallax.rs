//! Parallax: the point of aim stays within its part of the circle as the head moves.

use crate::advice::chance::Tables;
use crate::sight::parallax::USUAL_CHEEK_SHARE;

/// The error may reach this share of the circle's diameter …
pub const LIMIT: f64 = 0.25;
/// … give or take this share.
pub const SPREAD: f64 = 1.0 / 16.0;

/// The error in mm with a usual cheek, `0.35·½·(D_eff − M·p)⁺·lever`.
#[inline(always)]
#[must_use]
pub fn error_mm(effective_mm: f32, magnification: f32, pupil_mm: f32, lever: f32) -> f32 {
    (0.5 * USUAL_CHEEK_SHARE) as f32 * (effective_mm - magnification * pupil_mm).max(0.0) * lever
}

/// The chance, `Φ((circle/4 − e)/(circle/16))`.
#[inline(always)]
#[must_use]
pub fn chance(tables: &Tables, error_mm: f32, per_circle: f32) -> f32 {
    tables.phi((LIMIT as f32 - error_mm * per_circle) * (1.0 / SPREAD) as f32)
}
