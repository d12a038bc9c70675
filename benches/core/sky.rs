//! The sky: positions, and a night minute by minute.

use crate::meter::Meter;
use scopewright::sky::ground::{Cloud, Scene};
use scopewright::sky::{Night, Place, moon, sun};
use std::hint::black_box;

/// Times the parts of this room.
pub fn run(meter: &mut Meter) {
    println!("sky");
    let Ok(place) = Place::new(51.0, 10.0) else {
        return;
    };
    let noon_unix_s = 1_790_845_200.0;
    meter.time("Sun", || sun::sun_position(black_box(noon_unix_s), &place));
    meter.time("Moon", || {
        moon::moon_position(black_box(noon_unix_s), &place)
    });
    meter.time("evening: 1441 minutes of Sun and Moon", || {
        Night::from_noon(black_box(noon_unix_s), &place)
    });
    let Ok(night) = Night::from_noon(noon_unix_s, &place) else {
        return;
    };
    let scene = Scene {
        cloud: Cloud::Overcast,
        canopy_share: 0.5,
        ground_reflectance: 0.08,
        town_mag_arcsec2: None,
    };
    meter.time("evening: lost and found on a known night", || {
        night.sight_events(black_box(&scene), 0.01, 0.2)
    });
    let ground = night.ground_cd_m2(&scene);
    meter.time("evening: dusk on a known ground", || {
        night.dusk_s(&ground, black_box(0.01))
    });
}
