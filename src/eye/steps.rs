//! What one step of a specification, or ten years of age, is worth to this eye.

use super::equivalent::Optics;
use super::person::{Eye, OLDEST_YEARS};

/// Objectives that the trade builds, mm.
const OBJECTIVES_MM: [f64; 9] = [20.0, 24.0, 32.0, 36.0, 42.0, 50.0, 56.0, 60.0, 72.0];
/// Magnifications that the trade builds.
const MAGNIFICATIONS: [f64; 14] = [
    1.0, 1.5, 2.0, 2.5, 3.0, 4.0, 6.0, 8.0, 10.0, 12.0, 15.0, 18.0, 20.0, 25.0,
];

/// One step away from a sight and an eye.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Step {
    /// The next larger objective that the trade builds.
    Objective,
    /// The next higher magnification that the trade builds.
    Magnification,
    /// Five percentage points of transmission more.
    Transmission,
    /// Ten years of age more.
    TenYears,
}

impl Step {
    /// Every step.
    pub const ALL: [Self; 4] = [
        Self::Objective,
        Self::Magnification,
        Self::Transmission,
        Self::TenYears,
    ];

    /// The sight and the eye after the step; `None` where there is no further step.
    ///
    /// A measured pupil keeps its difference to the mean of the age.
    #[must_use]
    pub fn taken(self, optics: &Optics, eye: &Eye) -> Option<(Optics, Eye)> {
        match self {
            Self::Objective => next(&OBJECTIVES_MM, optics.objective_mm).map(|objective_mm| {
                (
                    Optics {
                        objective_mm,
                        ..*optics
                    },
                    *eye,
                )
            }),
            Self::Magnification => {
                next(&MAGNIFICATIONS, optics.magnification).map(|magnification| {
                    (
                        Optics {
                            magnification,
                            ..*optics
                        },
                        *eye,
                    )
                })
            }
            Self::Transmission => {
                let day = optics.transmission_day + 0.05;
                let night = optics.transmission_night + 0.05;
                (day <= 1.0 && night <= 1.0).then_some((
                    Optics {
                        transmission_day: day,
                        transmission_night: night,
                        ..*optics
                    },
                    *eye,
                ))
            }
            Self::TenYears => {
                let older = Eye::of_age((eye.age_years() + 10.0).min(OLDEST_YEARS)).ok()?;
                (older.age_years() > eye.age_years())
                    .then_some((*optics, older.with_offset(eye.pupil_offset_mm())))
            }
        }
    }
}

fn next(ladder: &[f64], from: f64) -> Option<f64> {
    ladder.iter().copied().find(|&step| step > from + 1e-9)
}
