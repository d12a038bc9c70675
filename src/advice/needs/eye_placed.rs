//! Eye placed: a full picture with the head where it usually comes to rest.

use crate::advice::chance::Tables;

/// Spread of the margin, natural logarithm.
pub const SPREAD: f64 = 0.35;
/// Share of the smaller pupil by which the eye may stray beyond the full picture.
pub const SLACK: f64 = 0.35;

/// How far the eye may be off the axis, mm: half of what the exit pupil is wider than the
/// eye's, and 0.35 of the smaller of the two.
#[inline(always)]
#[must_use]
pub fn tolerance_mm(exit_pupil_mm: f32, pupil_mm: f32) -> f32 {
    0.5 * (exit_pupil_mm - pupil_mm).max(0.0) + SLACK as f32 * exit_pupil_mm.min(pupil_mm)
}

/// The chance, `Φ(ln(tolerance/offset)/0.35)`.
#[inline(always)]
#[must_use]
pub fn chance(tables: &Tables, exit_pupil_mm: f32, pupil_mm: f32, per_offset: f32) -> f32 {
    tables.placed(tolerance_mm(exit_pupil_mm, pupil_mm) * per_offset)
}
