//! The person behind the sight, as far as the light models need to know.

use super::pupil;
use crate::quantity::{OutOfRange, within};

/// The youngest age that the questions accept, years.
pub const YOUNGEST_YEARS: f64 = 8.0;
/// The oldest age that the questions accept, years.
pub const OLDEST_YEARS: f64 = 95.0;
/// The age below which every model is held, years.
pub const HELD_BELOW_YEARS: f64 = 20.0;
/// The age above which every model is held, years.
pub const HELD_ABOVE_YEARS: f64 = 83.0;

/// One shooter's eye: age, and how far its pupil differs from the mean of that age.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Eye {
    age_years: f64,
    pupil_offset_mm: f64,
}

impl Eye {
    /// The mean eye of an age.
    ///
    /// # Validity
    /// 8 to 95 years; the models are held at 20 below and at 83 above.
    ///
    /// # Errors
    /// [`OutOfRange`] for any other age.
    pub fn of_age(age_years: f64) -> Result<Self, OutOfRange> {
        within("age_years", age_years, YOUNGEST_YEARS, OLDEST_YEARS)?;
        Ok(Self {
            age_years,
            pupil_offset_mm: 0.0,
        })
    }

    /// The mean eye of the nearest age that [`Eye::of_age`] accepts; the youngest for NaN.
    #[must_use]
    pub fn of_nearest_age(age_years: f64) -> Self {
        Self {
            age_years: if age_years.is_nan() {
                YOUNGEST_YEARS
            } else {
                age_years.clamp(YOUNGEST_YEARS, OLDEST_YEARS)
            },
            pupil_offset_mm: 0.0,
        }
    }

    /// An eye whose pupil was measured in the dark.
    ///
    /// The offset against the mean eye of that age, taken at 0.01 cd/m², is kept at every
    /// luminance.
    ///
    /// # Validity
    /// 2 to 9 mm, the limits of human pupils.
    ///
    /// # Errors
    /// [`OutOfRange`] for an age outside 8 to 95 years or a pupil outside 2 to 9 mm.
    pub fn with_dark_pupil(age_years: f64, dark_pupil_mm: f64) -> Result<Self, OutOfRange> {
        let eye = Self::of_age(age_years)?;
        within(
            "dark_pupil_mm",
            dark_pupil_mm,
            pupil::LEAST_MM,
            pupil::MOST_MM,
        )?;
        let mean_mm = pupil::pupil_diameter_mm(pupil::DARK_CD_M2, age_years);
        Ok(eye.with_offset(dark_pupil_mm - mean_mm))
    }

    /// The same eye with its pupil wider by `pupil_offset_mm` than the mean of its age.
    #[must_use]
    pub fn with_offset(self, pupil_offset_mm: f64) -> Self {
        Self {
            pupil_offset_mm,
            ..self
        }
    }

    /// Age in years, as given.
    #[must_use]
    pub fn age_years(&self) -> f64 {
        self.age_years
    }

    /// Age in years as the models take it: held at 20 below and 83 above.
    #[must_use]
    pub fn model_age_years(&self) -> f64 {
        self.age_years.clamp(HELD_BELOW_YEARS, HELD_ABOVE_YEARS)
    }

    /// How much wider the pupil is than the mean of that age, mm.
    #[must_use]
    pub fn pupil_offset_mm(&self) -> f64 {
        self.pupil_offset_mm
    }

    /// This person's pupil at a background luminance, mm, kept within 2 to 9 mm.
    #[must_use]
    pub fn pupil_mm(&self, luminance_cd_m2: f64) -> f64 {
        (pupil::pupil_diameter_mm(luminance_cd_m2, self.age_years) + self.pupil_offset_mm)
            .clamp(pupil::LEAST_MM, pupil::MOST_MM)
    }
}
