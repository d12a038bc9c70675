//! Field of view: from the apparent field of the eyepiece to metres at the target.

/// Degrees to radians.
const RAD: f64 = core::f64::consts::PI / 180.0;

/// The width of the field in metres at 100 m, `W = 200·tan(ω′)/M`.
///
/// ω′ is half of the apparent field, M the magnification; follows from
/// `tan ω′ = M·tan ω`.
///
/// # Validity
/// Apparent field (full angle) above 0 and below 180°, magnification positive.
///
/// # Accuracy
/// Exact for a sight free of distortion; real eyepieces distort by some per cent at the edge.
///
/// # Source
/// ISO 14132-1:2002, tube-and-field relation.
///
/// # Example
/// ```
/// use scopewright::sight::field::field_m_per_100m;
/// assert!((field_m_per_100m(22.0, 1.0) - 38.9).abs() < 0.05);
/// ```
#[must_use]
pub fn field_m_per_100m(apparent_deg: f64, magnification: f64) -> f64 {
    200.0 * libm::tan(0.5 * apparent_deg * RAD) / magnification
}

/// The true field (full angle) in degrees, from `tan ω′ = M·tan ω`.
///
/// # Source
/// ISO 14132-1:2002.
#[must_use]
pub fn true_field_deg(apparent_deg: f64, magnification: f64) -> f64 {
    2.0 * libm::atan(libm::tan(0.5 * apparent_deg * RAD) / magnification) / RAD
}

/// The apparent field (full angle) in degrees behind a true field, `tan ω′ = M·tan ω`.
///
/// # Source
/// ISO 14132-1:2002; its example is 8× and 8.8° → 63.2°.
#[must_use]
pub fn apparent_field_deg(true_deg: f64, magnification: f64) -> f64 {
    2.0 * libm::atan(libm::tan(0.5 * true_deg * RAD) * magnification) / RAD
}

/// The apparent field (full angle) in degrees of a sight that shows `field_m_per_100m` at `magnification`.
#[must_use]
pub fn apparent_field_of_width_deg(field_m_per_100m: f64, magnification: f64) -> f64 {
    2.0 * libm::atan(field_m_per_100m * magnification / 200.0) / RAD
}

/// The width of the field in metres at `range_m`.
#[must_use]
pub fn field_at_range_m(apparent_deg: f64, magnification: f64, range_m: f64) -> f64 {
    field_m_per_100m(apparent_deg, magnification) * range_m / 100.0
}

/// How long moving game stays in the field, in s: `W/v` from edge to edge.
#[must_use]
pub fn crossing_time_s(apparent_deg: f64, magnification: f64, range_m: f64, speed_m_s: f64) -> f64 {
    field_at_range_m(apparent_deg, magnification, range_m) / speed_m_s
}

/// The highest magnification whose field is still `needed_m` wide at `range_m`.
#[must_use]
pub fn highest_magnification_for_field(apparent_deg: f64, range_m: f64, needed_m: f64) -> f64 {
    field_at_range_m(apparent_deg, 1.0, range_m) / needed_m
}
