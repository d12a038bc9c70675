//! Field: wide enough to find the target, to follow it, and to see where it went.

use crate::advice::chance::Tables;

/// Spread of the margin, natural logarithm.
pub const SPREAD: f64 = 0.25;

/// The chance, `Φ(ln(W/need)/0.25)`.
///
/// `log_lack` is log10 of the needed width over the range (m/m), `log_field` log10 of the
/// field's width over the range at 1× (2·tan ω′).
#[inline(always)]
#[must_use]
pub fn chance(tables: &Tables, log_lack: f32, log_field: f32, log_magnification: f32) -> f32 {
    tables.phi(
        (log_field - log_magnification - log_lack) * (core::f64::consts::LN_10 / SPREAD) as f32,
    )
}
