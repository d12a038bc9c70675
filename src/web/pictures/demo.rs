//! A made-up evening, sight and quarry, so that every picture can be looked at by itself.

use super::through_sight::{Quarry, Sight, Surroundings};
use crate::drawing::colour::Hue;
use crate::drawing::dusk::{Evening, Until};
use crate::drawing::silhouette::silhouette;
use crate::drawing::target;
use crate::eye::{Eye, Optics, Patch, last_luminance};
use crate::need::quarry::{Coat, What};
use crate::sight::ReticleFamily;
use crate::sight::reticle::{DotSize, TYPICAL_HOLDS_MRAD, reticle_with};
use crate::sky::evening::Night;
use crate::sky::ground::{self, Cloud, Scene};
use crate::sky::place::Place;
use std::rc::Rc;
use yew::prelude::AttrValue;

/// 1 October 2026, noon UTC: an ordinary evening in October.
pub const NOON_UNIX_S: f64 = 1_790_856_000.0;
/// Minutes of summer time in central Europe.
pub const CLOCK_OFFSET_MIN: f64 = 120.0;

/// The scene of the demonstration: open green grass under a clear sky.
pub fn scene() -> Scene {
    Scene {
        cloud: Cloud::Clear,
        canopy_share: 0.5,
        ground_reflectance: 0.08,
        town_mag_arcsec2: None,
    }
}

/// The night, if the place and date can be computed.
pub fn night(latitude_deg: f64) -> Option<Night> {
    let place = Place::new(latitude_deg, 10.0).ok()?;
    Night::from_noon(NOON_UNIX_S, &place).ok()
}

/// The evening of that night.
pub fn evening(night: &Night) -> Rc<Evening> {
    Rc::new(Evening::of(night, &scene(), CLOCK_OFFSET_MIN))
}

/// A sight of 2.5–10 × 50 with a reticle of the family.
pub fn sight(family: ReticleFamily) -> Rc<Sight> {
    Rc::new(Sight {
        magnification_low: 2.5,
        magnification_high: 10.0,
        reference_magnification: 10.0,
        objective_mm: 50.0,
        transmission_day: 0.9,
        transmission_night: 0.9,
        glare_index: 0.03,
        apparent_field_deg: 22.0,
        reticle: reticle_with(family, DotSize::Universal, &TYPICAL_HOLDS_MRAD),
    })
}

fn coat(coat: Coat) -> (f64, Hue) {
    use ground::Coat as Ground;
    let (of, hue) = match coat {
        Coat::VeryDark | Coat::Black => (Ground::Black, Hue::NEUTRAL),
        Coat::DarkBrown => (Ground::DarkBrown, Hue::COAT),
        Coat::GreyBrown | Coat::Grey => (Ground::GreyBrown, Hue::NEUTRAL),
        Coat::RedBrownSummerGreyBrownWinter | Coat::PaleOrGreyBrown => {
            (Ground::GreyBrown, Hue::COAT)
        }
        Coat::PaleOrDarkBrown | Coat::RedBrown => (Ground::RedBrown, Hue::COAT),
        Coat::Pale => (Ground::Fawn, Hue::COAT),
    };
    (of.usual_reflectance(false), hue)
}

/// A quarry or target of the table.
pub fn quarry(key: &str) -> Option<Rc<Quarry>> {
    let what = What::from_key(key)?;
    let name = AttrValue::from(key.replace('_', " "));
    let quarry = match what {
        What::Animal(animal) => {
            let (dark_reflectance, hue) = coat(animal.coat);
            Quarry {
                figure: Rc::new(silhouette(
                    key,
                    animal.shoulder_height_mm.map(|mm| mm / 10.0),
                    animal.body_length_mm / 10.0,
                )?),
                name,
                aiming_circle_cm: animal.aiming_circle_mm / 10.0,
                dark_reflectance,
                light_reflectance: 0.6,
                hue,
            }
        }
        What::Target(row) => Quarry {
            figure: Rc::new(target::figure(target::of_key(key)?)),
            name,
            aiming_circle_cm: row.scoring_mm / 10.0,
            dark_reflectance: 0.04,
            light_reflectance: 0.75,
            hue: Hue::NEUTRAL,
        },
    };
    Some(Rc::new(quarry))
}

/// Grass before a wood's edge.
pub fn surroundings() -> Rc<Surroundings> {
    Rc::new(Surroundings {
        ground_reflectance: 0.08,
        ground_hue: Hue::GRASS,
        wood_reflectance: 0.05,
        sp_ratio: 2.5,
        surround_to_ground: 6.0,
        eye_height_m: 3.5,
        wood_behind_m: 40.0,
    })
}

/// The eye of the demonstration: 46 years.
pub fn eye() -> Option<Eye> {
    Eye::of_age(46.0).ok()
}

/// Until when a hand's breadth of detail on a coat is told apart at 80 m.
pub fn until(evening: &Evening, night: &Night, eye: &Eye, optics: &Optics) -> Until {
    let scene = scene();
    let patch = Patch::new(0.1125 * 0.1125, 80.0, 0.3).veiled(1.2);
    let last = last_luminance(eye, optics, 2.5, &patch);
    let spread_dex = 0.2;
    evening.until(night, &scene, last.cd_m2(), spread_dex)
}
