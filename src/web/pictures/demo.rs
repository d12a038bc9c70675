//! A made-up evening, sight and quarry, so that every picture can be looked at by itself.

use super::through_sight::{Quarry, Sight, Surroundings};
use super::trajectory::Point;
use crate::drawing::dusk::{Evening, Until};
use crate::eye::{Eye, Optics, Patch, last_luminance};
use crate::flight::{DragFunction, Load, SEA_LEVEL, Sighted, Zeroed};
use crate::need::quarry::What;
use crate::rifle::mounting::Clearances;
use crate::sight::ReticleFamily;
use crate::sight::fits::bell_outer_mm;
use crate::sight::reticle::{DotSize, TYPICAL_HOLDS_MRAD, reticle_with};
use crate::sky::evening::Night;
use crate::sky::ground::{Cloud, Ground, Scene};
use crate::sky::place::Place;
use crate::web::view::AttrValue;
use std::rc::Rc;

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
        lit: true,
        pick: None,
    })
}

/// A quarry or target of the table.
pub fn quarry(key: &str) -> Option<Rc<Quarry>> {
    let what = What::from_key(key)?;
    Quarry::of(what, AttrValue::from(key.replace('_', " ")), true).map(Rc::new)
}

/// Grass before a wood's edge, from a high seat.
pub fn surroundings() -> Rc<Surroundings> {
    Rc::new(Surroundings::of(Ground::Grass, 0.08, 3.5))
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

/// A made-up load at 823 m/s, G1 0.43, zeroed at 100 m.
fn flown(velocity_m_s: f64, bc: f64) -> Option<Sighted> {
    let load = Load::new(DragFunction::G1, bc, velocity_m_s).ok()?;
    let zeroed = Zeroed::new(load, SEA_LEVEL, 45.0, 100.0).ok()?;
    Some(zeroed.sighted_within(500.0))
}

/// Time of flight over range.
pub fn flight_s() -> Rc<Vec<(f64, f64)>> {
    let Some(path) = flown(823.0, 0.43) else {
        return Rc::default();
    };
    Rc::new(
        (0..=50)
            .map(|n| {
                let range_m = 10.0 * f64::from(n);
                (range_m, path.at(range_m).time_s)
            })
            .collect(),
    )
}

/// The path with its spread: velocity ± 10 m/s, coefficient ± 5 %, distance ± 5 %.
pub fn path() -> Rc<Vec<Point>> {
    let (Some(mean), Some(slow), Some(blunt)) = (
        flown(823.0, 0.43),
        flown(813.0, 0.43),
        flown(823.0, 0.43 * 0.95),
    ) else {
        return Rc::default();
    };
    Rc::new(
        (0..=80)
            .map(|n| {
                let range_m = 5.0 * f64::from(n);
                let cm = |path: &Sighted, at: f64| 0.1 * path.path_mm(at);
                let at = cm(&mean, range_m);
                let parts = [
                    cm(&slow, range_m) - at,
                    cm(&blunt, range_m) - at,
                    cm(&mean, 1.05 * range_m) - at,
                ];
                Point {
                    range_m,
                    path_cm: at,
                    spread_cm: parts.iter().map(|part| part * part).sum::<f64>().sqrt(),
                }
            })
            .collect(),
    )
}

/// A made-up rifle: rail 24 mm over the bore, barrel of 9.5 mm radius, a bolt under the eyepiece.
pub fn clearances() -> Clearances {
    Clearances {
        barrel_radius_mm: 9.5,
        bolt_over_bore_mm: Some(20.0),
        ..Clearances::usual(bell_outer_mm(50.0, 30.0), 30.0)
    }
}
