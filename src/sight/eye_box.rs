//! Where the eye may be: across and along the axis.

/// How far the eye may wander.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct EyeBox {
    /// Sideways with the full picture, to each side in mm: `(EP − p)/2`, 0 if EP < p.
    pub full_sideways_mm: f64,
    /// Sideways until the picture is gone, in mm: `(EP + p)/2`.
    pub gone_sideways_mm: f64,
    /// Along the axis with the edge of the field unshaded, in mm: `|EP − p|/(2·tan ω′)`.
    pub full_along_mm: f64,
    /// Along the axis with the edge of the field at half light, in mm:
    /// `max(EP, p)/(2·tan ω′)`.
    pub half_along_mm: f64,
}

/// The eye box of an exit pupil for an eye pupil and an apparent field (full angle).
///
/// # Validity
/// Round pupils, a field stop that is sharp; positive figures, apparent field below 180°.
///
/// # Source
/// Geometry of two discs at the eye point.
#[must_use]
pub fn eye_box(exit_pupil_mm: f64, eye_pupil_mm: f64, apparent_deg: f64) -> EyeBox {
    let twice_tan = 2.0 * libm::tan(0.5 * apparent_deg * core::f64::consts::PI / 180.0);
    EyeBox {
        full_sideways_mm: 0.5 * (exit_pupil_mm - eye_pupil_mm).max(0.0),
        gone_sideways_mm: 0.5 * (exit_pupil_mm + eye_pupil_mm),
        full_along_mm: (exit_pupil_mm - eye_pupil_mm).abs() / twice_tan,
        half_along_mm: exit_pupil_mm.max(eye_pupil_mm) / twice_tan,
    }
}
