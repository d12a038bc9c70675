//! A made-up evening, sight and quarry, so that every picture can be looked at by itself.

use super::dusk_strip::StripRow;
use super::shown::{Flown, Shown};
use super::sights::{Quarry, Sight, Surroundings};
use crate::drawing::colour::Hue;
use crate::drawing::dusk::{Evening, Until};
use crate::eye::equivalent::TWILIGHT_SP_RATIO;
use crate::eye::{Eye, Optics, Patch, last_luminance};
use crate::flight::{DragFunction, Load, SEA_LEVEL};
use crate::need::answers::Units;
use crate::need::quarry::What;
use crate::plain::Gathered;
use crate::rifle::mounting::Clearances;
use crate::sight::fits::bell_outer_mm;
use crate::sight::reticle::{DotSize, MarkUnit, reticle_with};
use crate::sight::{ParallaxSetting, ReticleFamily};
use crate::sky::evening::Night;
use crate::sky::ground::{Cloud, Ground, Scene};
use crate::sky::place::Place;
use crate::t;
use crate::wording::questions::what as name_of;
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

fn sight(name: String, power: (f64, f64), objective_mm: f64, holds_mrad: &[f64]) -> Rc<Sight> {
    let reticle = reticle_with(ReticleFamily::ThickThin, DotSize::Universal, holds_mrad);
    Rc::new(Sight {
        name,
        magnification_low: power.0,
        magnification_high: power.1,
        reference_magnification: power.1,
        objective_mm,
        transmission_day: 0.9,
        transmission_night: 0.9,
        glare_index: 0.03,
        apparent_field_deg: 22.0,
        reticle,
        lit: true,
        pick: None,
        holds_mrad: holds_mrad.to_vec(),
        counts_in: MarkUnit::Mrad,
    })
}

/// Until when a hand's breadth of detail on a coat is told apart at 80 m.
fn until(evening: &Evening, night: &Night, eye: &Eye, optics: &Optics) -> Until {
    let scene = scene();
    let patch = Patch::new(0.1125 * 0.1125, 80.0, 0.3).veiled(1.2);
    let last = last_luminance(eye, optics, 2.5, &patch);
    let spread_dex = 0.2;
    evening.until(night, &scene, last.cd_m2(), spread_dex)
}

fn rows(evening: &Evening, night: &Night, eye: &Eye) -> Vec<StripRow> {
    let row = |name: String, optics: Optics, pick| StripRow {
        name: name.into(),
        until: until(evening, night, eye, &optics),
        pick,
    };
    vec![
        row(t!("demo-bare-eye"), Optics::bare_eye(), false),
        row(t!("demo-this-sight"), Optics::sight(7.0, 50.0, 0.9), true),
        row(t!("demo-that-sight"), Optics::sight(4.0, 32.0, 0.88), false),
    ]
}

/// A made-up shooter of 46 years with a made-up load at 823 m/s, G1 0.43, zeroed at 100 m, on
/// grass before a wood's edge; the rifle's rail lies 24 mm over the bore.
pub fn shown(key: &str) -> Option<Shown> {
    let what = What::from_key(key)?;
    let night = night(51.0)?;
    let evening = Rc::new(Evening::of(&night, &scene(), CLOCK_OFFSET_MIN));
    let eye = Eye::of_age(46.0).ok()?;
    let flown = Flown {
        load: Load::new(DragFunction::G1, 0.43, 823.0).ok()?,
        air: SEA_LEVEL,
        zero_m: 100.0,
        height_mm: 45.0,
        velocity_spread_m_s: 10.0,
        guess_share: 0.05,
    };
    let holds_mrad: Vec<f64> = flown
        .holds(400.0, Units::Metric)
        .iter()
        .map(|(_, hold)| *hold)
        .gathered();
    let clearances = Clearances {
        barrel_radius_mm: 9.5,
        bolt_over_bore_mm: Some(20.0),
        ..Clearances::usual(bell_outer_mm(50.0, 30.0), 30.0)
    };
    Some(Shown {
        sight: sight("2.5–10 × 50".to_owned(), (2.5, 10.0), 50.0, &holds_mrad),
        other: Some(sight("4 × 32".to_owned(), (4.0, 4.0), 32.0, &holds_mrad)),
        quarry: Rc::new(Quarry::of(what, name_of(key).into(), true)?),
        length_m: 0.001 * what.length_mm(),
        run_m_s: what.run_m_s(),
        surroundings: Rc::new(Surroundings {
            ground_reflectance: 0.08,
            ground_hue: Hue::GRASS,
            wood_reflectance: Ground::Foliage.reflectance().usual,
            sp_ratio: TWILIGHT_SP_RATIO,
            surround_to_ground: 6.75,
            eye_height_m: 3.5,
            wood_behind_m: 40.0,
        }),
        eye,
        rows: rows(&evening, &night, &eye),
        evening,
        ranges_m: (5.0, 80.0, 1500.0),
        magnification: 4.0,
        minute: 24.0,
        flown: Some(flown),
        flight_to_m: 400.0,
        luminance_cd_m2: 0.01,
        parallax: ParallaxSetting::Fixed { free_at_m: 100.0 },
        length_mm: 330.0,
        tube_mm: 30.0,
        eye_relief_mm: 90.0,
        clearances,
        saddle_mm: clearances.least_height().saddle_mm,
        units: Units::Metric,
    })
}
