//! The diameter of the pupil by luminance and age.

use super::person::{HELD_ABOVE_YEARS, HELD_BELOW_YEARS};

/// One standard deviation of the pupil's diameter between people of one age, mm.
///
/// From the ranges that Bradley et al. (2011) report per decade, divided by the expected
/// range of a normal sample of that size: 0.66 to 0.98 mm.
pub const SPREAD_MM: f64 = 0.8;
/// The smallest pupil taken as possible, mm.
pub const LEAST_MM: f64 = 2.0;
/// The largest pupil taken as possible, mm.
pub const MOST_MM: f64 = 9.0;
/// The luminance at which a "dark pupil" is understood to be measured, cd/m².
pub const DARK_CD_M2: f64 = 0.01;
/// The field that adapts the eye out of doors: a disc of 60°, in square degrees.
pub const FIELD_DEG2: f64 = 900.0 * core::f64::consts::PI;

/// Corneal flux density is luminance times field area times this, for two eyes.
pub const BOTH_EYES: f64 = 1.0;
/// The same for one eye.
pub const ONE_EYE: f64 = 0.1;

// Watson and Yellott 2012, equation 21 and its reference implementation.
const REFERENCE_AGE_YEARS: f64 = 28.58;
const AGE_SLOPE: f64 = 0.021_323;
const AGE_SLOPE_BY_MM: f64 = 0.009_562_3;
const EXPONENT: f64 = 0.41;

/// The mean pupil's diameter, in mm, for a 60° field seen with both eyes.
///
/// [`pupil_diameter_in_field_mm`] with *a* = 900π deg² and *e* = 1.
///
/// # Validity
/// Any luminance from 0 up; the data behind it lie between about 9 and 4400 cd/m², so
/// that below 1 cd/m² the formula is an extrapolation to its built-in limit. Ages are
/// held at 20 below and 83 above.
///
/// # Accuracy
/// Within 0.25 mm of the mean measured dark-adapted pupils of six decades of age
/// (Bradley et al. 2011), rms 0.16 mm; single people scatter by 0.8 mm.
///
/// # Source
/// A. B. Watson and J. I. Yellott, "A unified formula for light-adapted pupil size",
/// Journal of Vision 12(10):12 (2012), equation 21.
///
/// # Example
/// ```
/// let dusk_mm = scopewright::eye::pupil::pupil_diameter_mm(0.01, 65.0);
/// assert!((dusk_mm - 5.414).abs() < 0.001);
/// ```
#[must_use]
pub fn pupil_diameter_mm(luminance_cd_m2: f64, age_years: f64) -> f64 {
    pupil_diameter_in_field_mm(luminance_cd_m2, FIELD_DEG2, age_years, BOTH_EYES)
}

/// The mean pupil's diameter, in mm, for a field of any area seen with one or both eyes.
///
/// D = D_SD + (y − 28.58)(0.021323 − 0.0095623 D_SD), where
/// D_SD = 7.75 − 5.75 f/(f + 2), f = (L a e/846)^0.41, L in cd/m², a in deg², y in years.
///
/// # Validity
/// As [`pupil_diameter_mm`]. `eyes` is [`BOTH_EYES`] or [`ONE_EYE`].
///
/// # Source
/// Watson and Yellott (2012), equation 21, on Stanley and Davies (1995).
#[must_use]
pub fn pupil_diameter_in_field_mm(
    luminance_cd_m2: f64,
    field_deg2: f64,
    age_years: f64,
    eyes: f64,
) -> f64 {
    let age = age_years.clamp(HELD_BELOW_YEARS, HELD_ABOVE_YEARS);
    let base = stanley_davies_mm(luminance_cd_m2 * field_deg2 * eyes);
    base + (age - REFERENCE_AGE_YEARS) * (AGE_SLOPE - AGE_SLOPE_BY_MM * base)
}

/// The pupil's diameter, in mm, without regard to age, by corneal flux in cd/m²·deg².
///
/// # Source
/// P. A. Stanley and A. K. Davies, "The effect of field of view size on steady-state
/// pupil diameter", Ophthalmic and Physiological Optics 15:601 (1995).
#[must_use]
pub fn stanley_davies_mm(flux_cd_m2_deg2: f64) -> f64 {
    let f = libm::pow(flux_cd_m2_deg2.max(0.0) / 846.0, EXPONENT);
    7.75 - 5.75 * f / (f + 2.0)
}

/// The 60° two-eyed pupil's diameter, in mm, by the rational form of the same formula.
///
/// D = (18.5172 + 0.122165 f − 0.105569 y + 0.000138645 f y)/(2 + 0.0630635 f),
/// f = F^0.41, F the corneal flux in cd/m²·deg².
///
/// # Accuracy
/// Agrees with [`pupil_diameter_mm`] to 5·10⁻⁵ mm; kept as an independent check.
///
/// # Source
/// Watson and Yellott (2012), appendix 2, equation 27.
#[must_use]
pub fn pupil_diameter_rational_mm(luminance_cd_m2: f64, age_years: f64) -> f64 {
    let y = age_years.clamp(HELD_BELOW_YEARS, HELD_ABOVE_YEARS);
    let f = libm::pow((luminance_cd_m2 * FIELD_DEG2).max(0.0), EXPONENT);
    (18.5172 + 0.122_165 * f - 0.105_569 * y + 0.000_138_645 * f * y) / (2.0 + 0.063_063_5 * f)
}
