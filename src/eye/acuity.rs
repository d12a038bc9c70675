//! The smallest detail told: acuity by image luminance and contrast.

/// Acuity for aiming and detail by image luminance: (cd/m², decimal acuity).
///
/// From memory, of the shape of Shlaer (1937), for the middling contrast of the field.
const FIELD_ACUITY: [(f64, f64); 6] = [
    (0.001, 0.05),
    (0.01, 0.13),
    (0.1, 0.37),
    (1.0, 0.65),
    (10.0, 1.0),
    (100.0, 1.2),
];

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
/// ([`shlaer_cycles_per_deg`]) by a factor of up to 1.7.
#[must_use]
pub fn field_acuity(image_luminance_cd_m2: f64) -> f64 {
    let log_l = libm::log10(image_luminance_cd_m2);
    let logs = |i: usize| {
        (
            libm::log10(FIELD_ACUITY[i].0),
            libm::log10(FIELD_ACUITY[i].1),
        )
    };
    let last = FIELD_ACUITY.len() - 1;
    if log_l <= logs(0).0 || log_l.is_nan() {
        return FIELD_ACUITY[0].1;
    }
    if log_l >= logs(last).0 {
        return FIELD_ACUITY[last].1;
    }
    let i = (0..last).rev().find(|&i| log_l >= logs(i).0).unwrap_or(0);
    let ((x0, y0), (x1, y1)) = (logs(i), logs(i + 1));
    libm::pow(10.0, y0 + (y1 - y0) * (log_l - x0) / (x1 - x0))
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
