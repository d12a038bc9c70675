//! What follows from a specification: mass, length, travel, price and the grades of glass.
//!
//! The coefficients were fitted over 39 generic classes of sights (round figures, no row a
//! piece on sale); every result carries the residual spread of its fit.

use super::specification::{
    Elevation, FieldClass, FocalPlane, GlassGrade, Illumination, ParallaxSetting, Specification,
};
use crate::quantity::Estimate;

/// Whether the parallax is adjustable, as 0 or 1.
fn adjustable(sight: &Specification) -> f64 {
    match sight.parallax {
        ParallaxSetting::Adjustable { .. } => 1.0,
        ParallaxSetting::Fixed { .. } => 0.0,
    }
}

/// Whether the reticle is in the first plane, as 0 or 1.
fn first_plane(sight: &Specification) -> f64 {
    match sight.plane {
        FocalPlane::First => 1.0,
        FocalPlane::Second => 0.0,
    }
}

/// The mass in g: `259 + 0.062 D² + 20.5 ln(zoom) + 29 (tube − 25.4) + 107 [first plane] +
/// 105 [adjustable parallax]`.
///
/// # Validity
/// Objectives 20 to 60 mm, eye relief of 80 to 105 mm; sights for mounting forward of the
/// receiver are lighter.
///
/// # Accuracy
/// Residual 50 g rms over the classes.
///
/// # Source
/// Least squares over generic classes; common practice, no source.
#[must_use]
pub fn mass_g(sight: &Specification) -> Estimate {
    let d = sight.objective_mm;
    Estimate::new(
        259.0
            + 0.062 * d * d
            + 20.5 * libm::log(sight.zoom_ratio())
            + 29.0 * (sight.tube_mm - 25.4)
            + 107.0 * first_plane(sight)
            + 105.0 * adjustable(sight),
        50.0,
    )
}

/// The length in mm: `265 + 0.029 D² + 30 [adjustable parallax]`.
///
/// # Accuracy
/// Residual 15 mm rms over the classes.
#[must_use]
pub fn length_mm(sight: &Specification) -> Estimate {
    let d = sight.objective_mm;
    Estimate::new(265.0 + 0.029 * d * d + 30.0 * adjustable(sight), 15.0)
}

/// The least eye relief in mm with the spread between pieces of one description, 3 mm.
#[must_use]
pub fn eye_relief_mm(sight: &Specification) -> Estimate {
    Estimate::new(sight.eye_relief_mm, 3.0)
}

/// The total elevation travel in mrad.
///
/// Capped turrets and rings 15; a dial 18 (25.4 and 26 mm), 24 (30), 30 (34), 33 (35, 36),
/// 37 (40).
///
/// # Accuracy
/// Common practice, no source; spread 3 mrad (half of it lies within 2). High zoom and a big
/// bell shorten it.
#[must_use]
pub fn travel_mrad(sight: &Specification) -> Estimate {
    let value = match sight.elevation {
        Elevation::Capped | Elevation::RingForLoad => 15.0,
        Elevation::DialZeroStop => {
            if sight.tube_mm < 28.0 {
                18.0
            } else if sight.tube_mm < 32.0 {
                24.0
            } else if sight.tube_mm < 34.5 {
                30.0
            } else if sight.tube_mm < 38.0 {
                33.0
            } else {
                37.0
            }
        }
    };
    Estimate::new(value, 3.0)
}

/// The price band of the sight alone as a number: A = 0 (under 250 €) … E = 4 (over 2200 €).
///
/// `−0.4 + 0.72 ln(zoom) + 0.03 (D − 40) + grade (0, 0.8, 1.8) + 0.4 [first plane] + 0.35
/// [adjustable parallax] + 0.4 [lit] + 0.25 a step of field`.
///
/// # Accuracy
/// Misses the generic classes by 0.8 band rms.
#[must_use]
pub fn price_band_index(sight: &Specification) -> Estimate {
    let grade = match sight.grade {
        GlassGrade::Basic => 0.0,
        GlassGrade::Good => 0.8,
        GlassGrade::Best => 1.8,
    };
    let lit = match sight.illumination {
        Illumination::Unlit => 0.0,
        Illumination::NightFine | Illumination::DayBright | Illumination::Both => 0.4,
    };
    let field = match sight.field {
        FieldClass::Narrow => 0.0,
        FieldClass::Usual => 0.25,
        FieldClass::Wide => 0.5,
    };
    Estimate::new(
        -0.4 + 0.72 * libm::log(sight.zoom_ratio())
            + 0.03 * (sight.objective_mm - 40.0)
            + grade
            + 0.4 * first_plane(sight)
            + 0.35 * adjustable(sight)
            + lit
            + field,
        0.8,
    )
}

/// The transmission by day, 0 to 1, of a grade of glass.
///
/// # Source
/// Common practice, no source: 0.87, 0.90, 0.92, pieces of one grade within 0.015.
#[must_use]
pub fn transmission_day(grade: GlassGrade) -> Estimate {
    Estimate::new(
        match grade {
            GlassGrade::Basic => 0.87,
            GlassGrade::Good => 0.90,
            GlassGrade::Best => 0.92,
        },
        0.015,
    )
}

/// The transmission for the dark-adapted eye, 0 to 1.
///
/// A single stated figure serves for both; the spread covers a night figure that is lower by
/// up to 0.04.
#[must_use]
pub fn transmission_night(grade: GlassGrade) -> Estimate {
    Estimate::new(transmission_day(grade).value, 0.025)
}

/// The veiling glare index of a grade of glass, a fraction: 0.065, 0.03, 0.015.
///
/// # Source
/// Common practice, no source (plain 5–8 %, good 2–4 %, best 1–2 %).
#[must_use]
pub fn veiling_glare(grade: GlassGrade) -> Estimate {
    match grade {
        GlassGrade::Basic => Estimate::new(0.065, 0.01),
        GlassGrade::Good => Estimate::new(0.03, 0.007),
        GlassGrade::Best => Estimate::new(0.015, 0.004),
    }
}

/// The clear diameter of an eyepiece less the exit pupil it must pass, in mm.
const EYEPIECE_CLEAR_MM: f64 = 40.0 - 3.4;

/// The widest apparent field (full angle) in degrees that an eyepiece of 40 mm lets through:
/// `2·atan((40 − 3.4)/(2·ER))`.
#[must_use]
pub fn widest_apparent_field_deg(eye_relief_mm: f64) -> f64 {
    2.0 * libm::atan(EYEPIECE_CLEAR_MM / (2.0 * eye_relief_mm)) * 180.0 / core::f64::consts::PI
}

/// The apparent field (full angle) in degrees: 19, 21 or 23, limited by the eyepiece.
///
/// # Source
/// Common practice, no source; the limit is geometry (`2·ER·tan ω′ + EP ≤ 40 mm`).
#[must_use]
pub fn apparent_field_deg(sight: &Specification) -> f64 {
    let class = match sight.field {
        FieldClass::Narrow => 19.0,
        FieldClass::Usual => 21.0,
        FieldClass::Wide => 23.0,
    };
    widest_apparent_field_deg(sight.eye_relief_mm).min(class)
}

/// The outer diameter of the bell in mm: 48, 57, 63 for 42, 50, 56; a straight tube up to 24 mm.
///
/// # Source
/// Common practice, no source; ± 1 mm. Caps add 2 to 3 mm.
#[must_use]
pub fn bell_outer_mm(objective_mm: f64, tube_mm: f64) -> f64 {
    if objective_mm + 4.0 <= tube_mm {
        return tube_mm;
    }
    // 6 mm more than the glass at 42 mm and below, 7 from 50 mm upwards.
    let rim = (6.0 + (objective_mm - 42.0) / 8.0).clamp(5.0, 7.0);
    (objective_mm + rim).max(tube_mm)
}

/// The outer diameter of the eyepiece end in mm, 44 ± 2.
pub const OCULAR_OUTER_MM: f64 = 44.0;
