//! The trade's older summary figures: labels on a box, never a criterion.
//!
//! They know no eye, no age and no light. They are computed so that a page can show them
//! beside what they leave out; nothing in this crate ranks by them.

/// Twilight number √(M D).
///
/// The twilight case of [`performance`] with transmission and pupil left out.
#[must_use]
pub fn twilight_number(magnification: f64, objective_mm: f64) -> f64 {
    (magnification * objective_mm).sqrt()
}

/// Relative brightness (D/M)², mm²: the exit pupil squared.
#[must_use]
pub fn relative_brightness_mm2(magnification: f64, objective_mm: f64) -> f64 {
    let exit_pupil_mm = objective_mm / magnification;
    exit_pupil_mm * exit_pupil_mm
}

/// Three kinds of light for [`performance`].
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Hour {
    /// Daylight, x = 0: performance is magnification.
    Day,
    /// Twilight, x = 1/4.
    Twilight,
    /// Night, x = 1/2: performance is aperture over pupil.
    Night,
}

/// Telescope performance P = M^(1−2x) (D/p)^(2x) T^x; D is at most M p.
///
/// # Accuracy
/// An old rule of thumb, its exponents from memory in part.
///
/// # Source
/// H. Köhler and R. Leinhos (1957), as quoted by a secondary text.
#[must_use]
pub fn performance(
    magnification: f64,
    objective_mm: f64,
    transmission: f64,
    pupil_mm: f64,
    hour: Hour,
) -> f64 {
    let aperture = objective_mm.min(magnification * pupil_mm) / pupil_mm;
    match hour {
        Hour::Day => magnification,
        Hour::Twilight => (magnification * aperture).sqrt() * libm::pow(transmission, 0.25),
        Hour::Night => aperture * transmission.sqrt(),
    }
}
