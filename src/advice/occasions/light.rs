//! The light of an occasion: date, hour, cloud, cover, ground and surround.

use super::{canopy, pick};
use crate::eye::equivalent::{LAMPLIGHT_SP_RATIO, mixed_sp_ratio};
use crate::need::answers::Cover;
use crate::need::shooter::{Need, Situation, Stop};
use crate::sky::{Place, ground, illuminance, sun};

/// Dates of the season that are looked at.
const DATES: usize = 12;
/// 2027-01-01T00:00Z. The year stands for any: the Sun's course differs by less than half a
/// day's step between years.
const NEW_YEAR_2027_S: f64 = 1_798_761_600.0;
const DAY_S: f64 = 86_400.0;
/// True altitude of the Sun's centre at sunset, degrees.
const SUNSET_DEG: f64 = -0.833;
/// Luminance of the background at which a good sight no longer tells game apart at usual
/// ranges, cd/m²: about the threshold for a patch of 11 cm at 150 m (assumption).
pub(crate) const END_OF_SEEING_CD_M2: f64 = 0.005;
/// The darkest Sun that is looked for, degrees.
const DARKEST_DEG: f64 = -12.0;
/// Late occasions lie in the last so many minutes before the stop.
const LATE_MINUTES: f64 = 40.0;

/// One evening of the season.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Evening {
    /// Month, 1 to 12.
    pub month: u8,
    /// Seconds since 1970 of the sunset, or of the Sun's lowest or highest stand where it
    /// does not set or rise.
    pub sunset_s: f64,
    /// The Sun really sets.
    pub sets: bool,
    /// Minutes after sunset to the darkest Sun that is looked for.
    pub darkest_min: f64,
    /// The Sun's altitude at noon, degrees.
    pub noon_deg: f64,
    /// That noon, seconds since 1970.
    pub noon_s: f64,
}

/// The evenings of a person's season.
#[derive(Clone, Debug)]
pub(crate) struct Season {
    pub place: Option<Place>,
    pub evenings: Vec<Evening>,
}

impl Season {
    pub fn of(need: &Need) -> Self {
        let latitude = need.place.latitude_deg.value.clamp(-90.0, 90.0);
        let longitude = need.place.longitude_deg_east.value.clamp(-180.0, 180.0);
        let place = Place::new(latitude, longitude).ok();
        let first = f64::from(need.place.first_month.value.clamp(1, 12)) - 1.0;
        let mut last = f64::from(need.place.last_month.value.clamp(1, 12));
        if last <= first {
            last += 12.0;
        }
        let evenings = (0..DATES)
            .map(|i| {
                let months = first + (last - first) * (i as f64 + 0.5) / DATES as f64;
                evening(place.as_ref(), months * 365.25 / 12.0)
            })
            .collect();
        Self { place, evenings }
    }

    /// The evening in the middle of the season.
    pub fn typical(&self) -> Option<&Evening> {
        self.evenings.get(self.evenings.len() / 2)
    }

    /// Minutes after sunset at which a scene has grown too dark for any sight.
    pub fn end_of_seeing_min(&self, evening: &Evening, seen_cd_m2: &dyn Fn(f64) -> f64) -> f64 {
        let dark = |minutes: f64| {
            let lx = illuminance::clear_sky_illuminance_lx(self.altitude_deg(evening, minutes));
            seen_cd_m2(lx) < END_OF_SEEING_CD_M2
        };
        let (mut a, mut b) = (0.0, evening.darkest_min);
        if !dark(b) {
            return b;
        }
        while b - a > 1.0 {
            let middle = 0.5 * (a + b);
            if dark(middle) {
                b = middle;
            } else {
                a = middle;
            }
        }
        b
    }

    /// The Sun's altitude so many minutes after sunset.
    pub fn altitude_deg(&self, evening: &Evening, minutes: f64) -> f64 {
        self.place.as_ref().map_or(-6.0, |place| {
            sun::sun_altitude_deg(evening.sunset_s + 60.0 * minutes, place)
        })
    }
}

fn evening(place: Option<&Place>, day_of_year: f64) -> Evening {
    let month = (day_of_year / (365.25 / 12.0)).floor() as i64;
    let month = (month.rem_euclid(12) + 1) as u8;
    let Some(place) = place else {
        return Evening {
            month,
            sunset_s: NEW_YEAR_2027_S,
            sets: false,
            darkest_min: 80.0,
            noon_deg: 30.0,
            noon_s: NEW_YEAR_2027_S,
        };
    };
    let noon_s = NEW_YEAR_2027_S + DAY_S * day_of_year.floor() + DAY_S * 0.5
        - 240.0 * place.longitude_deg_east();
    let altitude = |s: f64| sun::sun_altitude_deg(s, place);
    let midnight_s = noon_s + 0.5 * DAY_S;
    // Between noon and midnight the Sun only sinks: halve down to a second.
    let crossing = |deg: f64| -> Option<f64> {
        let (mut a, mut b) = (noon_s, midnight_s);
        if altitude(a) < deg || altitude(b) > deg {
            return None;
        }
        while b - a > 1.0 {
            let middle = 0.5 * (a + b);
            if altitude(middle) > deg {
                a = middle;
            } else {
                b = middle;
            }
        }
        Some(0.5 * (a + b))
    };
    let noon_deg = altitude(noon_s);
    let sunset = crossing(SUNSET_DEG);
    let sunset_s = sunset.unwrap_or(if noon_deg < SUNSET_DEG {
        noon_s
    } else {
        midnight_s
    });
    let darkest_s = crossing(DARKEST_DEG).unwrap_or(if noon_deg < DARKEST_DEG {
        noon_s
    } else {
        midnight_s
    });
    Evening {
        month,
        sunset_s,
        sets: sunset.is_some(),
        darkest_min: ((darkest_s - sunset_s) / 60.0).max(0.0),
        noon_deg,
        noon_s,
    }
}

/// What the light makes of an occasion.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Scene {
    /// Luminance of what is behind the target, cd/m².
    pub background_cd_m2: f64,
    /// Its reflectance.
    pub background_reflectance: f64,
    /// Reflectance of the ground, which with a wall behind the target is not the background.
    pub ground_reflectance: f64,
    /// Scotopic to photopic ratio of the light.
    pub sp_ratio: f64,
    /// How the target stands to it.
    pub setting: ground::Setting,
    /// Luminance of the bright surround over the background's.
    pub surround: f64,
    /// May to September in the north, turned in the south.
    pub summer: bool,
}

/// Luminance of the background for one lux of clear-sky light, at four coordinates.
pub(crate) fn per_lx(need: &Need, situation: &Situation, u: [f64; 4]) -> f64 {
    surface(need, situation, u[2], u[3]).cd_m2(1.0, 0.0)
}

/// What the light falls on.
struct Surface {
    light: ground::Scene,
    facing: f64,
    background_reflectance: f64,
    setting: ground::Setting,
    surround: f64,
}

impl Surface {
    fn cd_m2(&self, sun_lx: f64, moon_lx: f64) -> f64 {
        ground::ground_luminance_cd_m2(
            self.light.illuminance_lx(sun_lx, moon_lx) * self.facing,
            self.background_reflectance,
        )
    }
}

/// The scene for four coordinates: date, hour, sky, ground.
pub(crate) fn scene(
    need: &Need,
    season: &Season,
    situation: &Situation,
    late: bool,
    u: [f64; 4],
) -> Scene {
    let [date, hour, sky, earth] = u;
    let at = ((date * season.evenings.len() as f64) as usize).min(season.evenings.len() - 1);
    let evening = &season.evenings[at];
    let summer_north = (5..=9).contains(&evening.month);
    let summer = if need.place.latitude_deg.value < 0.0 {
        !summer_north
    } else {
        summer_north
    };

    let surface = surface(need, situation, sky, earth);
    let seen_cd_m2 = |sun_lx: f64, moon_lx: f64| surface.cd_m2(sun_lx, moon_lx);
    let (sun_lx, moon_lx) = lights(
        need,
        season,
        evening,
        situation,
        late,
        [hour, date],
        &|sun_lx| seen_cd_m2(sun_lx, 0.0),
    );
    Scene {
        background_cd_m2: seen_cd_m2(sun_lx, moon_lx),
        background_reflectance: surface.background_reflectance,
        ground_reflectance: surface.light.ground_reflectance,
        sp_ratio: if situation.stop == Stop::LitRange {
            LAMPLIGHT_SP_RATIO
        } else {
            let lamps_lx = surface.light.illuminance_lx(0.0, 0.0);
            mixed_sp_ratio(
                surface.light.illuminance_lx(sun_lx, 0.0) - lamps_lx,
                surface.light.illuminance_lx(0.0, moon_lx) - lamps_lx,
                lamps_lx,
            )
        },
        setting: surface.setting,
        surround: surface.surround,
        summer,
    }
}

/// The surface for two coordinates: sky and ground.
fn surface(need: &Need, situation: &Situation, sky: f64, earth: f64) -> Surface {
    let covers = &need.light.covers.value;
    let (which, within) = pick(covers.iter().map(|part| part.share), earth);
    let cover = covers.get(which).map_or(Cover::Open, |part| part.of);
    let snow = need.light.snow_share > 0.0 && (within * 16.0).fract() < need.light.snow_share;
    let fine = (within * 4.0).fract();
    let lit_range = situation.stop == Stop::LitRange;
    let overcast = sky < need.light.cloud_share;
    let cloud = if lit_range || !overcast {
        ground::Cloud::Clear
    } else {
        ground::Cloud::Overcast
    };
    let within_sky = if overcast {
        sky / need.light.cloud_share.max(1e-9)
    } else {
        (sky - need.light.cloud_share) / (1.0 - need.light.cloud_share).max(1e-9)
    };
    let bright_beside = within_sky < 0.5;
    let use_ground = |surface: ground::Ground| surface.reflectance().usual;
    let (ground_reflectance, wall, surround) = if lit_range {
        (0.2, None, 2.0)
    } else if snow {
        (
            if fine < 0.5 {
                use_ground(ground::Ground::FreshSnow)
            } else {
                use_ground(ground::Ground::OldSnow)
            },
            None,
            1.2,
        )
    } else {
        match cover {
            Cover::Open => (
                if fine < 0.6 {
                    use_ground(ground::Ground::Grass)
                } else {
                    use_ground(ground::Ground::Stubble)
                },
                None,
                if bright_beside { 12.0 } else { 2.0 },
            ),
            // At the edge of a wood the game stands before grass or before the wall of leaves.
            Cover::Edge | Cover::Ride => (
                use_ground(ground::Ground::Grass),
                (fine < 0.5).then(|| use_ground(ground::Ground::Foliage)),
                12.0,
            ),
            Cover::BareWood => (use_ground(ground::Ground::Litter), None, 4.0),
            Cover::InLeaf | Cover::DenseConifer => (use_ground(ground::Ground::Litter), None, 2.0),
        }
    };
    let light = ground::Scene {
        cloud,
        canopy_share: if lit_range {
            1.0
        } else {
            canopy(cover).share().usual
        },
        ground_reflectance,
        town_mag_arcsec2: need.light.town_glow_mag,
    };
    let (background_reflectance, setting, facing) = match wall {
        // An upright wall sees half the sky and half the ground, as the target before it.
        Some(reflectance) => (
            reflectance,
            ground::Setting::BeforeWall,
            0.5 + 0.5 * ground_reflectance,
        ),
        None => (ground_reflectance, ground::Setting::StandingOnGround, 1.0),
    };
    Surface {
        light,
        facing,
        background_reflectance,
        setting,
        surround,
    }
}

/// Clear-sky light of Sun and Moon, lx.
fn lights(
    need: &Need,
    season: &Season,
    evening: &Evening,
    situation: &Situation,
    late: bool,
    [hour, date]: [f64; 2],
    seen_cd_m2: &dyn Fn(f64) -> f64,
) -> (f64, f64) {
    match situation.stop {
        Stop::LitRange => (300.0 * libm::pow(1000.0 / 300.0, hour), 0.0),
        Stop::Moon if late => {
            // Within six days of full, and high enough to shoot by; the date's coordinate
            // within its step is free to choose the phase.
            let phase_deg = 75.0 * (date * DATES as f64).fract();
            let highest_deg = (85.0 - 0.8 * need.place.latitude_deg.value.abs()).max(25.0);
            let altitude_deg = 15.0 + (highest_deg - 15.0) * hour;
            (
                illuminance::NIGHT_SKY_LX,
                illuminance::moon_illuminance_lx(
                    altitude_deg,
                    phase_deg,
                    illuminance::MEAN_PARALLAX_DEG,
                ),
            )
        }
        stop if late => {
            let stop_min = match stop {
                Stop::MinutesAfterSunset(minutes) => minutes,
                Stop::EndOfSeeing => season.end_of_seeing_min(evening, seen_cd_m2),
                _ => 0.0,
            };
            let minutes = stop_min - LATE_MINUTES * hour;
            let altitude = season.altitude_deg(evening, minutes);
            (illuminance::clear_sky_illuminance_lx(altitude), 0.0)
        }
        _ => {
            // The rest of the day, from a Sun of 5° to noon (at most 50°, when game rests); the
            // noon where the Sun comes no higher.
            let highest = evening.noon_deg.min(50.0);
            let lowest = highest.min(5.0);
            let altitude = lowest + (highest - lowest) * hour;
            (illuminance::clear_sky_illuminance_lx(altitude), 0.0)
        }
    }
}
