//! A lit centre: how bright it is seen, and how it veils what lies round it.

use crate::sight::reticle::{Reticle, Shape};

/// How strongly the centre is lit.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Glow {
    /// Dimmed for an eye that is used to the dark.
    Night,
    /// Bright enough to stand off grass in the sun.
    Day,
}

impl Glow {
    /// Luminance of what glows, in cd/m².
    ///
    /// # Source
    /// Assumption: by day as bright as sunlit grass (2500 cd/m²) and a little more; by night
    /// a few times the ground at the end of what an eye tells apart.
    #[must_use]
    pub fn luminance_cd_m2(self) -> f64 {
        match self {
            Self::Night => 0.03,
            Self::Day => 3000.0,
        }
    }
}

/// Area of all that glows, as labelled, in mrad², out to the edge of the field.
#[must_use]
pub fn lit_area_mrad2(reticle: &Reticle, field_radius_mrad: f64) -> f64 {
    let clip = |at: f64| at.clamp(-field_radius_mrad, field_radius_mrad);
    reticle
        .pieces
        .iter()
        .filter(|piece| piece.lit)
        .map(|piece| match piece.shape {
            Shape::Line {
                x1_mrad,
                y1_mrad,
                x2_mrad,
                y2_mrad,
                width_mrad,
            } => {
                width_mrad
                    * libm::hypot(clip(x2_mrad) - clip(x1_mrad), clip(y2_mrad) - clip(y1_mrad))
            }
            Shape::Ring {
                radius_mrad,
                width_mrad,
            } => 2.0 * core::f64::consts::PI * radius_mrad * width_mrad,
            Shape::Dot { diameter_mrad, .. } => {
                0.25 * core::f64::consts::PI * diameter_mrad * diameter_mrad
            }
        })
        .sum()
}

/// Luminance of the veil that a small light lays over what is seen `angle_deg` beside it, in
/// cd/m²: `10·(1 + (age/70)⁴)·E/θ²`, E the illuminance at the eye in lux.
///
/// # Validity
/// 1° to 30° beside the light (the age factor from 3°); a rested eye without cataract.
///
/// # Source
/// Stiles and Holladay with the age factor of CIE 146:2002, from memory.
#[must_use]
pub fn veil_cd_m2(illuminance_lx: f64, angle_deg: f64, age_years: f64) -> f64 {
    let u = age_years / 70.0;
    let angle = angle_deg.clamp(1.0, 30.0);
    10.0 * (1.0 + u * u * u * u) * illuminance_lx / (angle * angle)
}

/// Illuminance at the eye from what glows, in lux: luminance times apparent solid angle.
///
/// `apparent_per_label` is the apparent size of what is labelled 1 mrad, in mrad: the
/// magnification in the first plane, the reference magnification in the second.
#[must_use]
pub fn illuminance_at_eye_lx(
    reticle: &Reticle,
    glow: Glow,
    apparent_per_label: f64,
    apparent_field_deg: f64,
) -> f64 {
    let half = 0.5 * apparent_field_deg * core::f64::consts::PI / 180.0;
    let field_radius = 1000.0 * libm::tan(half) / apparent_per_label;
    let area = lit_area_mrad2(reticle, field_radius);
    glow.luminance_cd_m2() * area * apparent_per_label * apparent_per_label * 1e-6
}
