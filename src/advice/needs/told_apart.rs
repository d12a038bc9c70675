//! Told apart: a patch of the target stands out from its background in that light.

use crate::advice::chance::Tables;
use crate::eye::threshold::field_factor;

/// Spread of the margin, dex.
///
/// # Source
/// Made the picks agree with practice; the laboratory's own scatter is 0.06 dex, one
/// shooter's against another's about 0.15.
pub const SPREAD_DEX: f64 = 0.15;

/// log10 of the field factor with one eye, 2√2.
#[must_use]
pub fn log_field_factor() -> f32 {
    libm::log10(field_factor(true)) as f32
}

/// What an occasion asks, all logarithms to base 10.
#[derive(Clone, Copy, Debug)]
pub struct Asked {
    /// log of contrast less log of the veil factor less the world's shift.
    pub log_contrast: f32,
    /// log of the veil factor.
    pub log_veil: f32,
    /// log of the patch's solid angle at the bare eye, sr.
    pub log_patch_sr: f32,
    /// Decades of age over 23, at least 0.
    pub decades: f32,
}

/// The chance, `Φ((log C/v − log F − log F_age − log C_th(B·v, A·M²))/0.15)`.
///
/// # Source
/// Crumey 2014 for C_th; veil and age as in [`crate::eye`].
#[inline(always)]
#[must_use]
pub fn chance(
    tables: &Tables,
    asked: Asked,
    log_equivalent: f32,
    log_magnification: f32,
    log_factor: f32,
) -> f32 {
    let adaptation = tables.adaptation(log_equivalent);
    let age = asked.decades * (0.08 - 0.04 * adaptation);
    let least = tables.log_threshold(
        log_equivalent + asked.log_veil,
        asked.log_patch_sr + 2.0 * log_magnification,
    );
    tables.phi((asked.log_contrast - log_factor - age - least) * (1.0 / SPREAD_DEX) as f32)
}
