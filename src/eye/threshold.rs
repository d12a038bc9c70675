//! The contrast that is just told apart, by luminance and size.

use core::f64::consts::SQRT_2;

use super::person::{HELD_ABOVE_YEARS, HELD_BELOW_YEARS};

// Crumey 2014, equations 28 and 40: Ricco's and Weber's limits by B^(-1/4).
const A: [f64; 5] = [5.949e-8, -2.389e-7, 2.459e-7, 4.120e-4, -4.225e-4];
const B: [f64; 5] = [9.606e-6, -4.112e-5, 5.019e-5, 4.837e-3, -4.884e-3];
/// Below this luminance the threshold increment is held.
const DARKEST_CD_M2: f64 = 1e-5;

/// Field factor between laboratory threshold and what is seen in the field, both eyes.
pub const FIELD_FACTOR: f64 = 2.0;
/// The least and the most that observers in the field were found to need.
pub const FIELD_FACTOR_RANGE: (f64, f64) = (1.4, 2.4);
/// Factor for looking with one eye (Lythgoe and Phillips 1938).
pub const ONE_EYE_FACTOR: f64 = SQRT_2;

/// The least contrast |ΔL|/L at which half of the observers tell a patch from its
/// background, in the laboratory (F = 1).
///
/// C = ((R/A)^q + C∞^q)^(1/q), R and C∞ functions of x = B^(−1/4), A the patch's solid
/// angle in sr; q = 0.6 below 0.193 cd/m², 0.8861 + 0.4 log B to 3.40, 1.146 − 0.0885
/// log B above.
///
/// # Validity
/// Discs from 0.6′ to 6°, 3.4·10⁻⁵ to 3426 cd/m², observers of 19 to 26 years, both eyes,
/// unlimited time; shapes up to an aspect ratio of 7 count by area. Below 10⁻⁵ cd/m² the
/// increment ΔL is held.
///
/// # Accuracy
/// 0.057 dex rms against Blackwell's table, at most 0.13 dex between 0.0003 and
/// 50 cd/m² for discs of 10′ and more.
///
/// # Source
/// A. Crumey, "Human contrast threshold and astronomical visibility", MNRAS 442:2600
/// (2014), equations 25, 28, 39 to 44.
///
/// # Example
/// ```
/// let c = scopewright::eye::threshold::threshold_contrast(0.01, 2.392_460e-4);
/// assert!((c - 0.030_794_71).abs() < 1e-7);
/// ```
#[must_use]
pub fn threshold_contrast(luminance_cd_m2: f64, solid_angle_sr: f64) -> f64 {
    if luminance_cd_m2 < DARKEST_CD_M2 {
        return above_darkest(DARKEST_CD_M2, solid_angle_sr) * DARKEST_CD_M2 / luminance_cd_m2;
    }
    above_darkest(luminance_cd_m2, solid_angle_sr)
}

fn above_darkest(b_cd_m2: f64, solid_angle_sr: f64) -> f64 {
    let Limits { ricco_sr, weber, q } = limits(b_cd_m2);
    let small = libm::pow(ricco_sr / solid_angle_sr, q);
    let large = libm::pow(weber, q);
    libm::pow(small + large, 1.0 / q)
}

/// The two ends of the threshold and the exponent that joins them.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Limits {
    /// Ricco's constant R: contrast times solid angle of a point, sr.
    pub ricco_sr: f64,
    /// Weber's limit C∞: the contrast of a very large patch.
    pub weber: f64,
    /// The exponent q.
    pub q: f64,
}

/// Ricco's constant, Weber's limit and the exponent at a luminance (equations 25, 39, 42–44).
#[must_use]
pub fn limits(luminance_cd_m2: f64) -> Limits {
    let b = luminance_cd_m2.max(DARKEST_CD_M2);
    // x = B^(-1/4) by two square roots, which every target computes alike.
    let x = 1.0 / b.sqrt().sqrt();
    let root = |k: &[f64; 5]| (k[0] * x * x + k[1] * x + k[2]).sqrt() + k[3] * x + k[4];
    let r = root(&A);
    Limits {
        ricco_sr: r * r,
        weber: root(&B),
        q: exponent(libm::log10(b)),
    }
}

// log10 of 0.193 and of 3.40 cd/m2, where the exponent's rows meet.
const LOG_ROD_END: f64 = -0.714_442_690_992_226_4;
const LOG_CONE_START: f64 = 0.531_478_917_042_255_1;

/// The exponent q by log₁₀ B (equations 42 to 44).
pub(crate) fn exponent(log_b: f64) -> f64 {
    if log_b < LOG_ROD_END {
        0.6
    } else if log_b < LOG_CONE_START {
        0.8861 + 0.4 * log_b
    } else {
        1.146 - 0.0885 * log_b
    }
}

/// How much more contrast an eye of this age needs, beside its smaller pupil.
///
/// log₁₀ F_age = (0.08 − 0.04 m)(y − 23)/10, never below 0; m the adaptation between
/// rods (0) and cones (1).
///
/// # Validity
/// Ages are held at 20 below and 83 above; 1 below 23 years.
///
/// # Accuracy
/// A population mean of healthy eyes. 2.17 (rods) and 1.47 (cones) at 65, where Adrian's
/// age factor is 2.04. The rates are measured; using them as a contrast factor at every
/// background, and the blend by m, is an assumption.
///
/// # Source
/// G. R. Jackson and C. Owsley, Vision Research 40:2467 (2000): 0.08 per decade scotopic,
/// 0.04 photopic, in log units.
#[must_use]
pub fn age_factor(age_years: f64, adaptation: f64) -> f64 {
    let years = (age_years.clamp(HELD_BELOW_YEARS, HELD_ABOVE_YEARS) - 23.0).max(0.0);
    libm::pow(10.0, log_age_factor_per_decade(adaptation) * years / 10.0)
}

/// log₁₀ of [`age_factor`] for ten years beyond 23.
pub(crate) fn log_age_factor_per_decade(adaptation: f64) -> f64 {
    0.08 - 0.04 * adaptation
}

/// The factor on the laboratory's threshold for one eye or both: 2√2 or 2.
///
/// # Source
/// Crumey (2014): 1.4 to 2.4 in real observation, 2 typical; one eye √2 (Lythgoe and
/// Phillips 1938).
#[must_use]
pub fn field_factor(one_eye: bool) -> f64 {
    if one_eye {
        FIELD_FACTOR * ONE_EYE_FACTOR
    } else {
        FIELD_FACTOR
    }
}

/// log₁₀ of [`field_factor`]: log₁₀ 2√2 = 1.5 log₁₀ 2.
pub(crate) fn log_field_factor(one_eye: bool) -> f64 {
    if one_eye {
        1.5 * core::f64::consts::LOG10_2
    } else {
        core::f64::consts::LOG10_2
    }
}
