//! From what the core knows to what a picture is told.

use super::through_sight::{Quarry, Sight, Surroundings};
use crate::advice::needs::mark;
use crate::drawing::colour::Hue;
use crate::need::quarry::{Coat, What};
use crate::sight::fits::{apparent_field_deg, transmission_day, transmission_night, veiling_glare};
use crate::sight::reticle::{DotSize, reticle_with};
use crate::sight::{FocalPlane, Illumination, Specification};
use crate::sky::ground;
use crate::web::components::figure::figure_of;
use crate::web::view::AttrValue;
use std::rc::Rc;

impl Sight {
    /// The sight of a specification: glass and field from the fits of its class, hold marks
    /// for the load if the reticle has them.
    ///
    /// A reticle with marks in the second plane holds at the highest magnification, one without
    /// at the power it is drawn for, as the ranking has it.
    #[must_use]
    pub fn of(specification: &Specification, dot: DotSize, holds_mrad: &[f64]) -> Self {
        Self {
            magnification_low: specification.magnification_low,
            magnification_high: specification.magnification_high,
            reference_magnification: mark::reference_magnification(
                specification.reticle,
                specification.magnification_high,
            ),
            objective_mm: specification.objective_mm,
            transmission_day: transmission_day(specification.grade).value,
            transmission_night: transmission_night(specification.grade).value,
            glare_index: veiling_glare(specification.grade).value,
            apparent_field_deg: apparent_field_deg(specification),
            reticle: reticle_with(specification.reticle, dot, holds_mrad),
            lit: specification.illumination != Illumination::Unlit,
            pick: Some(specification.plane),
        }
    }

    /// The sight without a plane of its own, where both are on offer.
    #[must_use]
    pub fn in_either_plane(mut self) -> Self {
        self.pick = None;
        self
    }

    /// Whether the pick's reticle sits in this plane.
    #[must_use]
    pub fn is_pick(&self, plane: FocalPlane) -> bool {
        self.pick == Some(plane)
    }
}

impl Quarry {
    /// A quarry or target of the table by what it is, in its winter or summer coat.
    #[must_use]
    pub fn of(what: What, name: AttrValue, winter: bool) -> Option<Self> {
        let (dark_reflectance, light_reflectance, hue) = match what {
            What::Animal(animal) => {
                let (coat, hue) = coat(animal.coat, winter);
                (coat.usual_reflectance(false), 0.6, hue)
            }
            // Black paint, and white paint or paper.
            What::Target(_) => (0.04, 0.75, Hue::NEUTRAL),
        };
        Some(Self {
            figure: Rc::new(figure_of(what)?),
            name,
            aiming_circle_cm: what.aiming_circle_mm() / 10.0,
            dark_reflectance,
            light_reflectance,
            hue,
        })
    }
}

/// The coat and its hue.
fn coat(coat: Coat, winter: bool) -> (ground::Coat, Hue) {
    use ground::Coat as Ground;
    match coat {
        Coat::VeryDark | Coat::Black => (Ground::Black, Hue::NEUTRAL),
        Coat::DarkBrown => (Ground::DarkBrown, Hue::COAT),
        Coat::RedBrownSummerGreyBrownWinter if winter => (Ground::GreyBrown, Hue::STRAW),
        Coat::GreyBrown | Coat::Grey | Coat::PaleOrGreyBrown => (Ground::GreyBrown, Hue::STRAW),
        Coat::RedBrown | Coat::RedBrownSummerGreyBrownWinter | Coat::PaleOrDarkBrown => {
            (Ground::RedBrown, Hue::COAT)
        }
        Coat::Pale => (Ground::Fawn, Hue::STRAW),
    }
}

impl Surroundings {
    /// Open ground of a kind before a wood's edge.
    #[must_use]
    pub fn of(ground: ground::Ground, ground_reflectance: f64, eye_height_m: f64) -> Self {
        use ground::Ground;
        Self {
            ground_reflectance,
            ground_hue: match ground {
                Ground::FreshSnow | Ground::OldSnow => Hue::SNOW,
                Ground::Grass | Ground::Foliage | Ground::Heather => Hue::GRASS,
                Ground::Tarmac => Hue::NEUTRAL,
                _ => Hue::STRAW,
            },
            wood_reflectance: Ground::Foliage.reflectance().usual,
            sp_ratio: crate::eye::equivalent::TWILIGHT_SP_RATIO,
            // Half of the surround is sky, as bright as the ground is dark.
            surround_to_ground: 0.5 * (1.0 + 1.0 / ground_reflectance),
            eye_height_m,
            wood_behind_m: 40.0,
        }
    }
}
