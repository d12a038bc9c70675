//! What the optics resolve, and where diffraction and mirage end magnification.

/// Arc seconds in one radian.
const ARCSEC: f64 = 180.0 * 3600.0 / core::f64::consts::PI;
/// The wavelength for which resolution is stated, in m.
const WAVELENGTH_M: f64 = 550e-9;

/// The Rayleigh limit of an objective in arc seconds, `1.22·λ/D`, 138″/D at 550 nm.
///
/// # Source
/// Rayleigh 1879; textbook.
#[must_use]
pub fn rayleigh_arcsec(objective_mm: f64) -> f64 {
    1.22 * WAVELENGTH_M / (1e-3 * objective_mm) * ARCSEC
}

/// The Dawes limit in arc seconds, `116/D`.
///
/// # Source
/// Dawes 1867.
#[must_use]
pub fn dawes_arcsec(objective_mm: f64) -> f64 {
    116.0 / objective_mm
}

/// The magnification at which an eye resolving 60″ meets the Rayleigh limit, about 0.43 D.
#[must_use]
pub fn resolving_magnification(objective_mm: f64) -> f64 {
    60.0 / rayleigh_arcsec(objective_mm)
}

/// The magnification above which nothing more is resolved with comfort: twice
/// [`resolving_magnification`].
#[must_use]
pub fn largest_useful_magnification(objective_mm: f64) -> f64 {
    2.0 * resolving_magnification(objective_mm)
}

/// The blur of the air over a path in arc seconds (full width at half height).
///
/// `r0 = (0.423·k²·Cn²·⅜·L)^(−3/5)`, `FWHM = 0.98·λ/r0`.
///
/// # Validity
/// Long exposures over a level path with the same Cn² all along, spherical wave. Cn² in
/// m^(−2/3): 1e-14 cool and overcast, 1e-13 sunny, 1e-12 hot noon near the ground.
///
/// # Source
/// Fried 1966 with the spherical-wave weight; from memory.
#[must_use]
pub fn mirage_arcsec(cn2: f64, range_m: f64) -> f64 {
    let k = 2.0 * core::f64::consts::PI / WAVELENGTH_M;
    let r0 = libm::pow(0.423 * k * k * cn2 * 0.375 * range_m, -0.6);
    0.98 * WAVELENGTH_M / r0 * ARCSEC
}

/// Air and diffraction together in arc seconds: `√(mirage² + (1.03·λ/D)²)`.
#[must_use]
pub fn blur_arcsec(cn2: f64, range_m: f64, objective_mm: f64) -> f64 {
    let air = mirage_arcsec(cn2, range_m);
    let diffraction = 1.03 * WAVELENGTH_M / (1e-3 * objective_mm) * ARCSEC;
    (air * air + diffraction * diffraction).sqrt()
}

/// The magnifications between which the blur begins to be seen and to disturb: 60″ and 120″
/// over the blur.
///
/// # Source
/// Common practice, no source; "above 16× suffers from mirage in the field" fits.
#[must_use]
pub fn mirage_ceiling(cn2: f64, range_m: f64, objective_mm: f64) -> (f64, f64) {
    let blur = blur_arcsec(cn2, range_m, objective_mm);
    (60.0 / blur, 120.0 / blur)
}

/// The magnification that a detail asks for: `k·MAR·R/detail`, k from 2 to 3 in the field.
#[must_use]
pub fn magnification_for_detail(k: f64, mar_arcmin: f64, range_m: f64, detail_mm: f64) -> f64 {
    k * mar_arcmin / super::subtension::ARCMIN_PER_MRAD * range_m / detail_mm
}
