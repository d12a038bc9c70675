//! The smallest detail told: acuity by image luminance and contrast.

/// log₁₀ of the decimal acuity for aiming and detail at 0.001, 0.01 … 100 cd/m² of image
/// luminance: 0.05, 0.13, 0.37, 0.65, 1.0, 1.2.
///
/// From memory, of the shape of Shlaer (1937), for the middling contrast of the field.
const LOG_FIELD_ACUITY: [f64; 6] = [
    -1.301_029_995_663_981_3,
    -0.886_056_647_693_163_1,
    -0.431_798_275_933_005,
    -0.187_086_643_357_144_36,
    0.0,
    0.079_181_246_047_624_82,
];
const LOG_DARKEST: f64 = -3.0;

/// Decimal acuity in the field by image luminance.
///
/// log VA runs straight in log L between 0.05 at 0.001, 0.13 at 0.01, 0.37 at 0.1, 0.65
/// at 1, 1.0 at 10 and 1.2 at 100 cd/m², and is held at both ends.
///
/// # Validity
/// `image_luminance_cd_m2` is the scene's luminance times transmission times the square
/// of the filled part of the pupil ([`image_luminance_cd_m2`]).
///
/// # Accuracy
/// A rule for aiming and detail, from memory; below Shlaer's full-contrast curve
/// ([`shlaer_cycles_per_deg`]) by a factor of up to 2.
#[must_use]
pub fn field_acuity(image_luminance_cd_m2: f64) -> f64 {
    libm::pow(10.0, log_field_acuity(libm::log10(image_luminance_cd_m2)))
}

/// log₁₀ of [`field_acuity`] by log₁₀ of the image luminance in cd/m².
#[must_use]
pub fn log_field_acuity(log_image_luminance: f64) -> f64 {
    let last = LOG_FIELD_ACUITY.len() - 1;
    // A NaN ends at the dark end, where nothing is promised.
    let at = (log_image_luminance - LOG_DARKEST).max(0.0);
    let i = (at as usize).min(last - 1);
    let t = (at - i as f64).min(1.0);
    LOG_FIELD_ACUITY[i] + t * (LOG_FIELD_ACUITY[i + 1] - LOG_FIELD_ACUITY[i])
}

/// The smallest angle resolved in the field, in minutes of arc: 1/acuity.
///
/// # Validity
/// As [`field_acuity`].
#[must_use]
pub fn minimum_angle_arcmin(image_luminance_cd_m2: f64) -> f64 {
    1.0 / field_acuity(image_luminance_cd_m2)
}

/// Luminance of the image behind a sight, in cd/m²: L T min(1, (EP/p)²).
///
/// # Validity
/// A plain area ratio, as the rule for [`field_acuity`] takes it.
#[must_use]
pub fn image_luminance_cd_m2(
    luminance_cd_m2: f64,
    transmission: f64,
    exit_pupil_mm: f64,
    pupil_mm: f64,
) -> f64 {
    let filled = (exit_pupil_mm / pupil_mm).min(1.0);
    luminance_cd_m2 * transmission * filled * filled
}

/// Decimal acuity for Landolt rings by background luminance and contrast.
///
/// VA = L/(1.6293 c^−0.3234 (0.8034 c^−0.1876 + L^0.25)⁴), c the contrast in per cent.
/// `None` below [`landolt_floor_cd_m2`].
///
/// # Accuracy
/// A second opinion beside the threshold model; that contrast enters in per cent is an
/// inference from the form.
///
/// # Source
/// Ikeda, Noda and Yamaguchi, as quoted by a secondary page.
#[must_use]
pub fn landolt_acuity(luminance_cd_m2: f64, contrast_percent: f64) -> Option<f64> {
    let floor_cd_m2 = landolt_floor_cd_m2(contrast_percent);
    if luminance_cd_m2 < floor_cd_m2 || luminance_cd_m2.is_nan() || floor_cd_m2.is_nan() {
        return None;
    }
    let fourth_root = luminance_cd_m2.sqrt().sqrt();
    let s = 0.8034 * libm::pow(contrast_percent, -0.1876) + fourth_root;
    let s2 = s * s;
    Some(luminance_cd_m2 / (1.6293 * libm::pow(contrast_percent, -0.3234) * s2 * s2))
}

/// The luminance below which the Landolt-ring law is undefined, cd/m²: 2.974 c^−1.7234.
#[must_use]
pub fn landolt_floor_cd_m2(contrast_percent: f64) -> f64 {
    2.974 * libm::pow(contrast_percent, -1.7234)
}

/// Resolved cycles per degree at full contrast by luminance.
///
/// 17.25 atan(1.4 log₁₀ L + 0.35) + 25.72; acuity is this over 30.
///
/// # Source
/// Shlaer (1937) in the fit of G. Ward Larson, H. Rushmeier and C. Piatko (1997),
/// equation 15.
#[must_use]
pub fn shlaer_cycles_per_deg(luminance_cd_m2: f64) -> f64 {
    17.25 * libm::atan(1.4 * libm::log10(luminance_cd_m2) + 0.35) + 25.72
}
