//! What haze takes from a contrast.

/// Contrast that is left at 2 % visibility is e^(−3.912).
const TWO_PERCENT: f64 = 3.912;
/// A reported optical range by the 5 % rule uses this instead.
const FIVE_PERCENT: f64 = 2.996;

/// Extinction per metre from the visibility at which 2 % of a contrast is left.
#[must_use]
pub fn extinction_per_m(visibility_m: f64) -> f64 {
    TWO_PERCENT / visibility_m
}

/// Extinction per metre from a meteorological optical range (5 % rule).
#[must_use]
pub fn extinction_from_optical_range_per_m(optical_range_m: f64) -> f64 {
    FIVE_PERCENT / optical_range_m
}

/// The horizon sky's luminance over that of the ground: (1 + ρ)/(2ρ).
///
/// # Validity
/// An overcast or twilight sky over even ground (assumption): 7.6 at ρ 0.07, 1.06 on
/// snow; 1 if the target stands against the sky itself.
#[must_use]
pub fn horizon_to_ground(ground_reflectance: f64) -> f64 {
    (1.0 + ground_reflectance) / (2.0 * ground_reflectance)
}

/// The share of a contrast that is left after the air between.
///
/// 1/(1 + S (e^{σR} − 1)), S the horizon's luminance over the background's. With S = 1
/// this is Koschmieder's law e^{−σR}.
///
/// # Source
/// H. Koschmieder (1924), with airlight over ground.
#[must_use]
pub fn contrast_left(range_m: f64, extinction_per_m: f64, horizon_to_background: f64) -> f64 {
    1.0 / (1.0 + horizon_to_background * (libm::exp(extinction_per_m * range_m) - 1.0))
}

/// Luminance of the background as it appears through the air, cd/m².
///
/// L e^{−σR} + S L (1 − e^{−σR}).
#[must_use]
pub fn background_through_air_cd_m2(
    background_cd_m2: f64,
    range_m: f64,
    extinction_per_m: f64,
    horizon_to_background: f64,
) -> f64 {
    let left = libm::exp(-extinction_per_m * range_m);
    background_cd_m2 * (left + horizon_to_background * (1.0 - left))
}
