//! What the view through the sight is drawn from: sight, quarry, surroundings.

use crate::advice::needs::mark;
use crate::drawing::colour::Hue;
use crate::drawing::silhouette::Figure;
use crate::eye::Optics;
use crate::need::quarry::{Coat, What};
use crate::sight::pupil::{effective_objective_mm, exit_pupil_mm};
use crate::sight::reticle::{MarkUnit, Reticle, mark_unit, reticle_with};
use crate::sight::{FocalPlane, ReticleFamily};
use crate::sky::ground;
use crate::web::components::figure::figure_of;
use crate::web::view::prelude::*;
use std::rc::Rc;

/// The sight, as far as its picture needs it.
#[derive(Clone, Debug, PartialEq)]
pub struct Sight {
    /// Its name, as in "2.5–10 × 50".
    pub name: String,
    /// Lowest magnification.
    pub magnification_low: f64,
    /// Highest magnification.
    pub magnification_high: f64,
    /// Where the labels of a reticle in the second plane hold.
    pub reference_magnification: f64,
    /// Clear diameter of the objective in mm.
    pub objective_mm: f64,
    /// Transmission by day, 0 to 1.
    pub transmission_day: f64,
    /// Transmission by night, 0 to 1.
    pub transmission_night: f64,
    /// Veiling glare index, 0 to 1.
    pub glare_index: f64,
    /// Apparent field (full angle) in degrees.
    pub apparent_field_deg: f64,
    /// The reticle.
    pub reticle: Reticle,
    /// Whether the reticle can be lit.
    pub lit: bool,
    /// The plane of the pick, if it is settled.
    pub pick: Option<FocalPlane>,
    /// Where the person's own load falls, for a reticle with marks for it: mrad under the aim.
    pub holds_mrad: Vec<f64>,
    /// The unit that the person counts in.
    pub counts_in: MarkUnit,
}

impl Sight {
    /// The unit in which angles are told: that of the marks, the person's own without.
    #[must_use]
    pub fn unit(&self) -> MarkUnit {
        mark_unit(self.reticle.family).unwrap_or(self.counts_in)
    }

    /// The same sight with the reticle of a family.
    ///
    /// A reticle with marks in the second plane holds at the highest magnification, one without
    /// at the power it is drawn for, as the ranking has it.
    #[must_use]
    pub fn with_family(&self, family: ReticleFamily) -> Self {
        Self {
            reticle: reticle_with(
                family,
                mark::dot_size(self.magnification_low),
                &self.holds_mrad,
            ),
            reference_magnification: mark::reference_magnification(family, self.magnification_high),
            ..self.clone()
        }
    }

    pub(super) fn exit_pupil_mm(&self, magnification: f64) -> f64 {
        exit_pupil_mm(self.objective_mm, magnification)
    }

    pub(super) fn optics(&self, magnification: f64) -> Optics {
        Optics {
            magnification,
            objective_mm: effective_objective_mm(self.objective_mm, magnification),
            transmission_day: self.transmission_day,
            transmission_night: self.transmission_night,
            one_eye: true,
        }
    }
}

/// What is looked at.
#[derive(Clone, Debug, PartialEq)]
pub struct Quarry {
    /// Its drawing.
    pub figure: Rc<Figure>,
    /// Its name, as in "roe deer".
    pub name: AttrValue,
    /// Diameter of the circle that has to be hit, in cm.
    pub aiming_circle_cm: f64,
    /// Reflectance of the coat or of what is dark in the drawing.
    pub dark_reflectance: f64,
    /// Reflectance of what is light in the drawing.
    pub light_reflectance: f64,
    /// Hue of the coat.
    pub hue: Hue,
}

impl Quarry {
    /// An animal or a target of the table, in its winter or summer coat.
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

/// What surrounds it.
#[derive(Clone, Debug, PartialEq)]
pub struct Surroundings {
    /// Reflectance of the ground.
    pub ground_reflectance: f64,
    /// Hue of the ground.
    pub ground_hue: Hue,
    /// Reflectance of the wood behind.
    pub wood_reflectance: f64,
    /// Ratio of night to day luminance of the light (S/P).
    pub sp_ratio: f64,
    /// Luminance of the bright half of the scene over that of the ground, for stray light.
    pub surround_to_ground: f64,
    /// Height of the shooter's eye over the ground, in m.
    pub eye_height_m: f64,
    /// How far behind the quarry the wood begins, in m.
    pub wood_behind_m: f64,
}
