//! The exit pupil of a sight and the objective that is really used.

/// The widest exit pupil that leaves a real sight, in mm: an inner stop limits it at low power.
///
/// # Source
/// Common practice, no source: low-power sights show 8 to 12 mm.
pub const WIDEST_EXIT_PUPIL_MM: f64 = 11.0;

/// The exit pupil in mm, `min(D/M, 11)`.
///
/// # Validity
/// `objective_mm` and `magnification` positive; the stop of 11 mm is typical, single sights
/// have 8 to 12.
///
/// # Example
/// ```
/// use scopewright::sight::pupil::exit_pupil_mm;
/// assert_eq!(exit_pupil_mm(56.0, 8.0), 7.0);
/// assert_eq!(exit_pupil_mm(24.0, 1.0), 11.0);
/// ```
#[must_use]
pub fn exit_pupil_mm(objective_mm: f64, magnification: f64) -> f64 {
    (objective_mm / magnification).min(WIDEST_EXIT_PUPIL_MM)
}

/// The diameter of the objective that the exit pupil lets through, in mm, `min(D, 11 M)`.
#[must_use]
pub fn effective_objective_mm(objective_mm: f64, magnification: f64) -> f64 {
    objective_mm.min(WIDEST_EXIT_PUPIL_MM * magnification)
}
