//! What a mark covers on the target, and how wide it looks, in both focal planes.

use super::specification::FocalPlane;

/// Arc minutes in one milliradian, 10.8/π.
pub const ARCMIN_PER_MRAD: f64 = 10.8 / core::f64::consts::PI;

/// The true subtension of a mark in mrad at `magnification`.
///
/// First plane: constant. Second plane: `s(M) = s_ref·M_ref/M`.
///
/// # Validity
/// Both magnifications positive; `reference_magnification` is where the label holds.
///
/// # Example
/// ```
/// use scopewright::sight::{FocalPlane, subtension::true_subtension_mrad};
/// // A 2 mrad mark, true at 10×, used at 8×.
/// assert_eq!(true_subtension_mrad(FocalPlane::Second, 2.0, 10.0, 8.0), 2.5);
/// assert_eq!(true_subtension_mrad(FocalPlane::First, 2.0, 10.0, 8.0), 2.0);
/// ```
#[must_use]
pub fn true_subtension_mrad(
    plane: FocalPlane,
    subtension_mrad: f64,
    reference_magnification: f64,
    magnification: f64,
) -> f64 {
    match plane {
        FocalPlane::First => subtension_mrad,
        FocalPlane::Second => subtension_mrad * reference_magnification / magnification,
    }
}

/// The apparent width in arc minutes of a mark that truly covers `true_mrad`: `3.43775·s·M`.
#[must_use]
pub fn apparent_arcmin(true_mrad: f64, magnification: f64) -> f64 {
    ARCMIN_PER_MRAD * true_mrad * magnification
}

/// The true width in mrad that looks `apparent_arcmin` wide at `magnification`.
#[must_use]
pub fn true_width_mrad(apparent_arcmin: f64, magnification: f64) -> f64 {
    apparent_arcmin / (ARCMIN_PER_MRAD * magnification)
}

/// Milliradians to the trade's millimetres per 100 metres.
#[must_use]
pub fn mm_per_100m(mrad: f64) -> f64 {
    100.0 * mrad
}

/// The miss in mm at `range_m` from holding with a second-plane mark off its magnification:
/// `R·s·(M_ref/M − 1)`, positive when the mark covers more than its label says.
#[must_use]
pub fn hold_error_mm(
    plane: FocalPlane,
    label_mrad: f64,
    reference_magnification: f64,
    magnification: f64,
    range_m: f64,
) -> f64 {
    range_m
        * (true_subtension_mrad(plane, label_mrad, reference_magnification, magnification)
            - label_mrad)
}
