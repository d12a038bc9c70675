//! Detail: what must be told before a shot (an antler's point, a young one, a hole) is seen.

use crate::advice::chance::Tables;

/// Spread of the margin, natural logarithm.
pub const SPREAD: f64 = 0.4;
/// The detail must be so many times the smallest angle told apart.
pub const RESERVE: f64 = 1.8;
/// The smallest angle is taken as no worse than this, arcminutes: below it the demand fades.
pub const WORST_MAR_ARCMIN: f64 = 4.0;
/// Above this luminance the detail is demanded in full, cd/m² …
pub const FULL_ABOVE_CD_M2: f64 = 0.05;
/// … and below this one not at all: no sight can show it then.
pub const NONE_BELOW_CD_M2: f64 = 0.005;

/// The share of the demand that is left in a light.
#[must_use]
pub fn fade(luminance_cd_m2: f64) -> f64 {
    let reach = libm::log10(FULL_ABOVE_CD_M2 / NONE_BELOW_CD_M2);
    (libm::log10(luminance_cd_m2 / NONE_BELOW_CD_M2) / reach).clamp(0.0, 1.0)
}

/// log10 of [`WORST_MAR_ARCMIN`].
const LOG_WORST_MAR: f32 = 0.602_06;

/// The chance, `1 − q + q·Φ(ln(M·d/(1.8·MAR·R))/0.4)`.
///
/// `log_detail` is log10 of the detail's angle in arcminutes over 1.8, q the weight.
#[inline(always)]
#[must_use]
pub fn chance(
    tables: &Tables,
    log_detail: f32,
    weight: f32,
    log_magnification: f32,
    log_mar: f32,
) -> f32 {
    let margin = log_magnification + log_detail - log_mar.min(LOG_WORST_MAR);
    let seen = tables.phi(margin * (core::f64::consts::LN_10 / SPREAD) as f32);
    1.0 - weight + weight * seen
}
