//! What stray light in the sight and in the eye takes from contrast.

use super::person::{HELD_ABOVE_YEARS, HELD_BELOW_YEARS};

/// Veiling index of a young eye's own straylight (assumption, 0.5 to 1 %).
pub const YOUNG_EYE_INDEX: f64 = 0.0075;

/// The factor v by which stray light lifts the background and thins the contrast.
///
/// v = 1 + G L_surround/L_background: C becomes C/v, B becomes B·v. G is the veiling
/// glare index of the sight plus that of the eye ([`straylight_index`]), and the surround
/// the mean luminance of the bright half of the scene.
///
/// # Validity
/// Diffuse glare from a bright surround; a single lamp in the field is not covered.
///
/// # Source
/// Veiling glare index as ISO 14490-6 defines the quantity.
#[must_use]
pub fn veil_factor(glare_index: f64, surround_to_background: f64) -> f64 {
    1.0 + glare_index * surround_to_background
}

/// Veiling index of the eye's own straylight by age.
///
/// G_eye = G_20 (1 + (y/70)⁴)/(1 + (20/70)⁴), G_20 = 0.75 %.
///
/// # Accuracy
/// The growth with age is measured (doubled at 70), the level is an assumption; large
/// differences between persons.
///
/// # Source
/// J. K. IJspeert et al., Vision Research 30:699 (1990), 129 volunteers of 20 to 82 years.
#[must_use]
pub fn straylight_index(age_years: f64) -> f64 {
    let growth = |y: f64| {
        let u = y / 70.0;
        1.0 + u * u * u * u
    };
    let age = age_years.clamp(HELD_BELOW_YEARS, HELD_ABOVE_YEARS);
    YOUNG_EYE_INDEX * growth(age) / growth(HELD_BELOW_YEARS)
}
