//! The area of a pupil as cones and as rods weigh it.

use core::f64::consts::PI;

/// The effective area of a pupil for cones, in mm².
///
/// A_c = (π d²/4)(1 − (d/9.7)² + (d/12.4)⁴): light through the rim of the pupil meets
/// the cones at a slant and counts less.
///
/// # Validity
/// 0 to 9 mm.
///
/// # Source
/// The Stiles–Crawford correction in the form of P. G. J. Barten, "Contrast Sensitivity
/// of the Human Eye" (1999).
#[must_use]
pub fn cone_area_mm2(diameter_mm: f64) -> f64 {
    let u = diameter_mm / 9.7;
    let w = diameter_mm / 12.4;
    let w2 = w * w;
    rod_area_mm2(diameter_mm) * (1.0 - u * u + w2 * w2)
}

/// The effective area of a pupil for rods, in mm²: the plain area π d²/4.
///
/// # Source
/// A. Crumey, MNRAS 442:2600 (2014): the Stiles–Crawford effect of rods is negligible.
#[must_use]
pub fn rod_area_mm2(diameter_mm: f64) -> f64 {
    0.25 * PI * diameter_mm * diameter_mm
}

/// The effective area for cones by a Gaussian law, in mm²; a cross-check only.
///
/// A = (π/k)(1 − exp(−k d²/4)), k = ρ ln 10, ρ = 0.05 mm⁻².
///
/// # Source
/// The form is common; ρ from memory.
#[must_use]
pub fn cone_area_gaussian_mm2(diameter_mm: f64) -> f64 {
    let k = 0.05 * core::f64::consts::LN_10;
    PI / k * (1.0 - libm::exp(-0.25 * k * diameter_mm * diameter_mm))
}
