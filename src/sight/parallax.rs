//! Parallax: how far the point of aim wanders when the eye is off the axis.
//!
//! A sight set free at Rp and used at R: a ray that enters at height h over the axis is off
//! by `e = h·|R − Rp|/Rp` at the target; an eye off by x at the exit pupil picks out
//! h = M·x. All results are radii in mm at the target.

use super::specification::ParallaxSetting;

/// The share of the error without visible shadow that a usual cheek position leaves.
///
/// # Source
/// Common practice, no source (a quarter to a half of the extreme is usual).
pub const USUAL_CHEEK_SHARE: f64 = 0.35;

/// The distance in metres at which the sight is free of parallax when used at `range_m`.
///
/// A fixed sight stays where it was set; an adjustable one follows the range down to its
/// nearest setting.
#[must_use]
pub fn free_distance_m(setting: ParallaxSetting, range_m: f64) -> f64 {
    match setting {
        ParallaxSetting::Fixed { free_at_m } => free_at_m,
        ParallaxSetting::Adjustable { nearest_m } => range_m.max(nearest_m),
    }
}

/// `|R − Rp|/Rp`, the lever by which a height at the objective becomes an error at the target.
#[must_use]
fn lever(free_at_m: f64, range_m: f64) -> f64 {
    (range_m - free_at_m).abs() / free_at_m
}

/// The extreme error in mm, the picture almost black: `½·D_eff·|R − Rp|/Rp`.
///
/// # Validity
/// `effective_objective_mm` as from [`super::pupil::effective_objective_mm`]; thin optics, no
/// aberration of the objective.
///
/// # Example
/// ```
/// use scopewright::sight::parallax::extreme_mm;
/// assert_eq!(extreme_mm(50.0, 100.0, 300.0), 50.0);
/// ```
#[must_use]
pub fn extreme_mm(effective_objective_mm: f64, free_at_m: f64, range_m: f64) -> f64 {
    0.5 * effective_objective_mm * lever(free_at_m, range_m)
}

/// The largest error in mm while the picture still shows no shadow:
/// `½·(D_eff − M·p)⁺·|R − Rp|/Rp`.
///
/// With an exit pupil smaller than the eye's, the eye sees the whole exit pupil and a small
/// offset does nothing: zero.
#[must_use]
pub fn without_shadow_mm(
    effective_objective_mm: f64,
    magnification: f64,
    eye_pupil_mm: f64,
    free_at_m: f64,
    range_m: f64,
) -> f64 {
    0.5 * (effective_objective_mm - magnification * eye_pupil_mm).max(0.0)
        * lever(free_at_m, range_m)
}

/// The error in mm with a usual cheek position: 0.35 of [`without_shadow_mm`].
#[must_use]
pub fn usual_cheek_mm(
    effective_objective_mm: f64,
    magnification: f64,
    eye_pupil_mm: f64,
    free_at_m: f64,
    range_m: f64,
) -> f64 {
    USUAL_CHEEK_SHARE
        * without_shadow_mm(
            effective_objective_mm,
            magnification,
            eye_pupil_mm,
            free_at_m,
            range_m,
        )
}

/// The error in mm with the eye `eye_offset_mm` off the axis: `M·x_c·|R − Rp|/Rp`, x_c the
/// centroid of the overlap of exit pupil and eye pupil.
///
/// # Errors
/// [`None`] when the two pupils no longer meet: the picture is black.
#[must_use]
pub fn with_offset_mm(
    effective_objective_mm: f64,
    magnification: f64,
    eye_pupil_mm: f64,
    eye_offset_mm: f64,
    free_at_m: f64,
    range_m: f64,
) -> Option<f64> {
    let exit_mm = effective_objective_mm / magnification;
    overlap_centroid_mm(exit_mm, eye_pupil_mm, eye_offset_mm)
        .map(|x_c| magnification * x_c * lever(free_at_m, range_m))
}

/// The centroid of the overlap of two discs, in mm from the centre of the first.
///
/// The first moments of the two segments about the chord's line cancel, so the centroid is
/// the offset times the second segment's share of the area.
///
/// # Errors
/// [`None`] without overlap.
#[must_use]
pub fn overlap_centroid_mm(exit_pupil_mm: f64, eye_pupil_mm: f64, offset_mm: f64) -> Option<f64> {
    let a = 0.5 * exit_pupil_mm;
    let b = 0.5 * eye_pupil_mm;
    let x = offset_mm.abs();
    if !(a > 0.0 && b > 0.0 && x < a + b) {
        return None;
    }
    if x <= (a - b).abs() {
        // One disc inside the other: the smaller decides.
        return Some(if b <= a { x } else { 0.0 });
    }
    let chord_from_a = (x * x + a * a - b * b) / (2.0 * x);
    let segment = |radius: f64, distance: f64| {
        let d = (distance / radius).clamp(-1.0, 1.0);
        radius * radius * (libm::acos(d) - d * (1.0 - d * d).sqrt())
    };
    let area_a = segment(a, chord_from_a);
    let area_b = segment(b, x - chord_from_a);
    Some(x * area_b / (area_a + area_b))
}

/// The error as a share of the aiming circle's diameter.
#[must_use]
pub fn share_of_circle(error_mm: f64, circle_diameter_mm: f64) -> f64 {
    error_mm / circle_diameter_mm
}
