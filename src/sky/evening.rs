//! A night from noon to noon: the light minute by minute, and what happens in it.
//!
//! The eye and the sight come in as one number, the last luminance of the ground at which
//! the target is told apart. With a Moon "later" is not "darker", so that nothing here
//! bisects: the night is scanned in steps of one minute and every interval is returned.

use super::ground::{Canopy, Cloud, Scene};
use super::illuminance::{clear_sky_illuminance_lx, moon_illuminance_lx};
use super::moon::moon_position;
use super::place::{self, Place};
use super::sun::sun_altitude_deg;
use crate::quantity::{Estimate, OutOfRange};

/// True altitude of the Sun's centre at sunrise and sunset, degrees.
pub const SUNSET_DEG: f64 = -0.833;
/// The same at the end of civil twilight.
pub const CIVIL_DEG: f64 = -6.0;
/// The same at the end of nautical twilight.
pub const NAUTICAL_DEG: f64 = -12.0;
/// Topocentric altitude of the Moon below which it lights nothing, degrees.
pub const MOONRISE_DEG: f64 = -0.8;
/// Minutes in a night from noon to noon.
pub const MINUTES: usize = 1440;
const MINUTE_S: f64 = 60.0;
/// Spread of the altitude at which the Sun seems to set (refraction, horizon), degrees.
const HORIZON_SPREAD_DEG: f64 = 0.1;
/// Uncertainty of the computed altitude, degrees.
const POSITION_SPREAD_DEG: f64 = 0.01;
/// A spread is never shown wider than half a night, min.
const WIDEST_SPREAD_MIN: f64 = 720.0;

/// The sky in one minute.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Minute {
    /// Seconds since 1970.
    pub unix_s: f64,
    /// The Sun's true altitude, degrees.
    pub sun_altitude_deg: f64,
    /// The Moon's topocentric altitude, degrees.
    pub moon_altitude_deg: f64,
    /// Clear-sky light of Sun and night sky on level ground, lx.
    pub sun_lx: f64,
    /// Clear-sky light of the Moon on level ground, lx.
    pub moon_lx: f64,
}

/// A night from noon to noon at a place, under a clear sky.
#[derive(Clone, Debug, PartialEq)]
pub struct Night {
    minutes: Vec<Minute>,
}

/// What happens in a night.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum EventKind {
    /// The Sun's upper rim goes below the level horizon.
    Sunset,
    /// The Sun is 6° down.
    CivilDusk,
    /// The Sun is 12° down.
    NauticalDusk,
    /// The target is no longer told apart.
    Lost,
    /// The target is told apart again.
    Found,
    /// The Moon begins to light the ground.
    Moonrise,
    /// The Moon ceases to light the ground.
    Moonset,
    /// The Sun is 12° down and climbs.
    NauticalDawn,
    /// The Sun is 6° down and climbs.
    CivilDawn,
    /// The Sun's upper rim rises.
    Sunrise,
}

impl EventKind {
    /// The name in reports, as `civil_dusk`.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Sunset => "sunset",
            Self::CivilDusk => "civil_dusk",
            Self::NauticalDusk => "nautical_dusk",
            Self::Lost => "lost",
            Self::Found => "found",
            Self::Moonrise => "moonrise",
            Self::Moonset => "moonset",
            Self::NauticalDawn => "nautical_dawn",
            Self::CivilDawn => "civil_dawn",
            Self::Sunrise => "sunrise",
        }
    }
}

/// Something that happens in a night, with how far its time may be off.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Event {
    /// What happens.
    pub kind: EventKind,
    /// When, seconds since 1970.
    pub unix_s: f64,
    /// One standard deviation, min.
    pub spread_min: f64,
}

/// When a target is told apart in a night.
#[derive(Clone, Debug, PartialEq)]
pub enum Sighting {
    /// All night: the summer night or the Moon stays light enough.
    AllNight,
    /// In no minute from noon to noon, not even by day.
    Never,
    /// In these intervals, seconds since 1970, from noon to noon.
    Intervals(Vec<(f64, f64)>),
}

/// A quantity passes a level.
#[derive(Clone, Copy, Debug)]
struct Crossing {
    unix_s: f64,
    rising: bool,
    per_min: f64,
}

/// What the Sun does from noon to noon.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SunCourse {
    /// It sets or rises.
    Sets,
    /// It stays up: polar day.
    StaysUp,
    /// It stays down: polar night.
    StaysDown,
}

impl Night {
    /// The night that follows a noon.
    ///
    /// # Validity
    /// `noon_unix_s` is about the local noon (any time of full daylight will do); 1440
    /// minutes from there are computed. Works in polar day and night and on the date
    /// line.
    ///
    /// # Errors
    /// [`OutOfRange`] for a noon before 1970 or after 2100.
    pub fn from_noon(noon_unix_s: f64, place: &Place) -> Result<Self, OutOfRange> {
        let noon = place::instant(noon_unix_s)?;
        let minutes = (0..=MINUTES)
            .map(|i| {
                let unix_s = noon + MINUTE_S * i as f64;
                let sun_altitude_deg = sun_altitude_deg(unix_s, place);
                let moon = moon_position(unix_s, place);
                Minute {
                    unix_s,
                    sun_altitude_deg,
                    moon_altitude_deg: moon.altitude_deg,
                    sun_lx: clear_sky_illuminance_lx(sun_altitude_deg),
                    moon_lx: moon_illuminance_lx(
                        moon.altitude_deg,
                        moon.phase_angle_deg,
                        moon.parallax_deg,
                    ),
                }
            })
            .collect();
        Ok(Self { minutes })
    }

    /// The sky minute by minute, 1441 entries from noon to noon.
    #[must_use]
    pub fn minutes(&self) -> &[Minute] {
        &self.minutes
    }

    /// Luminance of the ground minute by minute, cd/m².
    #[must_use]
    pub fn ground_cd_m2(&self, scene: &Scene) -> Vec<f64> {
        // The ground's luminance is linear in the light of the clear sky.
        let dark = scene.ground_luminance_cd_m2(0.0, 0.0);
        let per_lx = scene.ground_luminance_cd_m2(1.0, 0.0) - dark;
        self.minutes
            .iter()
            .map(|m| dark + per_lx * (m.sun_lx + m.moon_lx))
            .collect()
    }

    /// Index of the minute in which the Sun stands lowest.
    #[must_use]
    pub fn midnight(&self) -> usize {
        let mut lowest = 0;
        for (i, minute) in self.minutes.iter().enumerate() {
            if minute.sun_altitude_deg < self.minutes[lowest].sun_altitude_deg {
                lowest = i;
            }
        }
        lowest
    }

    /// What the Sun does from noon to noon.
    #[must_use]
    pub fn sun_course(&self) -> SunCourse {
        let up = |m: &Minute| m.sun_altitude_deg >= SUNSET_DEG;
        if self.minutes.iter().all(up) {
            SunCourse::StaysUp
        } else if self.minutes.iter().any(up) {
            SunCourse::Sets
        } else {
            SunCourse::StaysDown
        }
    }

    /// Crossings of a level by a quantity of the sky, in order of time.
    ///
    /// `scale` makes the quantity run straight between two minutes.
    fn crossings(
        &self,
        value: impl Fn(usize) -> f64,
        level: f64,
        scale: impl Fn(f64) -> f64,
    ) -> Vec<Crossing> {
        (1..self.minutes.len())
            .filter_map(|i| {
                let (a, b) = (value(i - 1), value(i));
                ((a >= level) != (b >= level)).then(|| {
                    let (from, to, level) = (scale(a), scale(b), scale(level));
                    Crossing {
                        unix_s: self.minutes[i - 1].unix_s
                            + MINUTE_S * (level - from) / (to - from),
                        rising: b >= a,
                        per_min: (to - from).abs(),
                    }
                })
            })
            .collect()
    }

    /// What Sun and Moon do, in order of time.
    #[must_use]
    pub fn sky_events(&self) -> Vec<Event> {
        use EventKind as K;
        let sun = |i: usize| self.minutes[i].sun_altitude_deg;
        let moon = |i: usize| self.minutes[i].moon_altitude_deg;
        let straight = |degrees: f64| degrees;
        let mut events = Vec::new();
        for (level, falling, rising, spread_deg) in [
            (SUNSET_DEG, K::Sunset, K::Sunrise, HORIZON_SPREAD_DEG),
            (CIVIL_DEG, K::CivilDusk, K::CivilDawn, POSITION_SPREAD_DEG),
            (
                NAUTICAL_DEG,
                K::NauticalDusk,
                K::NauticalDawn,
                POSITION_SPREAD_DEG,
            ),
        ] {
            for at in self.crossings(sun, level, straight) {
                events.push(Event {
                    kind: if at.rising { rising } else { falling },
                    unix_s: at.unix_s,
                    spread_min: (spread_deg / at.per_min).min(WIDEST_SPREAD_MIN),
                });
            }
        }
        for at in self.crossings(moon, MOONRISE_DEG, straight) {
            events.push(Event {
                kind: if at.rising { K::Moonrise } else { K::Moonset },
                unix_s: at.unix_s,
                spread_min: (HORIZON_SPREAD_DEG / at.per_min).min(WIDEST_SPREAD_MIN),
            });
        }
        crate::plain::sort_by(&mut events, |a, b| a.unix_s.total_cmp(&b.unix_s));
        events
    }

    /// When a target is told apart that needs this luminance of the ground.
    ///
    /// `last_cd_m2` is 0 for always and infinite for never.
    #[must_use]
    pub fn sighting(&self, scene: &Scene, last_cd_m2: f64) -> Sighting {
        let ground = self.ground_cd_m2(scene);
        if ground.iter().all(|&l| l >= last_cd_m2) {
            return Sighting::AllNight;
        }
        if ground.iter().all(|&l| l < last_cd_m2) {
            return Sighting::Never;
        }
        let mut start = (ground[0] >= last_cd_m2).then_some(self.minutes[0].unix_s);
        let mut intervals = Vec::new();
        for at in self.sight_crossings(&ground, last_cd_m2) {
            if at.rising {
                start = Some(at.unix_s);
            } else if let Some(from) = start.take() {
                intervals.push((from, at.unix_s));
            }
        }
        if let Some(from) = start {
            intervals.push((from, self.minutes[MINUTES].unix_s));
        }
        Sighting::Intervals(intervals)
    }

    fn sight_crossings(&self, ground_cd_m2: &[f64], last_cd_m2: f64) -> Vec<Crossing> {
        self.crossings(|i| ground_cd_m2[i], last_cd_m2, libm::log10)
    }

    /// When the target is lost and found again, in order of time.
    ///
    /// `spread_dex` is one standard deviation of the last luminance between people and of
    /// the light itself ([`light_spread_dex`]) in quadrature; it is divided by how fast
    /// the light changes at that minute.
    #[must_use]
    pub fn sight_events(&self, scene: &Scene, last_cd_m2: f64, spread_dex: f64) -> Vec<Event> {
        let ground = self.ground_cd_m2(scene);
        self.sight_crossings(&ground, last_cd_m2)
            .into_iter()
            .map(|at| {
                let rate = self.rate_dex_per_min(&ground, at.unix_s);
                Event {
                    kind: if at.rising {
                        EventKind::Found
                    } else {
                        EventKind::Lost
                    },
                    unix_s: at.unix_s,
                    spread_min: (spread_dex / rate).min(WIDEST_SPREAD_MIN),
                }
            })
            .collect()
    }

    /// How fast the ground's luminance changes around an instant, decades a minute.
    fn rate_dex_per_min(&self, ground_cd_m2: &[f64], unix_s: f64) -> f64 {
        let at = ((unix_s - self.minutes[0].unix_s) / MINUTE_S) as usize;
        let (a, b) = (at.saturating_sub(2), (at + 3).min(MINUTES));
        let change = libm::log10(ground_cd_m2[b] / ground_cd_m2[a]);
        change.abs() / (b - a) as f64
    }

    /// When the ground first grows darker than a luminance after the light of day, seconds
    /// since 1970; `None` if it never does. `ground_cd_m2` is [`Night::ground_cd_m2`].
    #[must_use]
    pub fn dusk_s(&self, ground_cd_m2: &[f64], last_cd_m2: f64) -> Option<f64> {
        let i = ground_cd_m2
            .windows(2)
            .position(|pair| pair[0] >= last_cd_m2 && pair[1] < last_cd_m2)?;
        let (from, to) = (ground_cd_m2[i], ground_cd_m2[i + 1]);
        let share = libm::log10(last_cd_m2 / from) / libm::log10(to / from);
        Some(self.minutes[i].unix_s + MINUTE_S * share)
    }

    /// When the ground last grows brighter than a luminance, before the light of day,
    /// seconds since 1970; `None` if it never does.
    #[must_use]
    pub fn dawn_s(&self, ground_cd_m2: &[f64], last_cd_m2: f64) -> Option<f64> {
        let i = ground_cd_m2
            .windows(2)
            .rposition(|pair| pair[0] < last_cd_m2 && pair[1] >= last_cd_m2)?;
        let (from, to) = (ground_cd_m2[i], ground_cd_m2[i + 1]);
        let share = libm::log10(last_cd_m2 / from) / libm::log10(to / from);
        Some(self.minutes[i].unix_s + MINUTE_S * share)
    }

    /// How many minutes longer the second of two sights serves at dusk.
    ///
    /// `people` are last luminances of both sights over people (share, first, second), as
    /// the room of the eye samples them; `mean` is the pair for the mean person. The
    /// uncertainty of the light shifts both clock times alike and enters only through the
    /// rate at which the light falls.
    ///
    /// # Accuracy
    /// The spread is that between people of one age (or with one measured pupil), over
    /// field factors and states of the sky; the model's own error of a difference is about
    /// ±0.03 dex, ±0.3 minutes.
    #[must_use]
    pub fn dusk_gain(
        &self,
        scene: &Scene,
        mean: (f64, f64),
        people: impl IntoIterator<Item = (f64, f64, f64)>,
    ) -> DuskGain {
        let ground = self.ground_cd_m2(scene);
        let light_dex = light_spread_dex(scene);
        let minutes = |first: f64, second: f64| {
            let a = self.dusk_s(&ground, first)?;
            let b = self.dusk_s(&ground, second)?;
            Some((b - a) / MINUTE_S)
        };
        let (mut sum, mut squares, mut known) = (0.0, 0.0, 0.0);
        for (share, first, second) in people {
            // Weather as a three-point normal: a darker sky asks for more clear-sky light.
            for (z, weight) in [(-SQRT_3, 1.0 / 6.0), (0.0, 2.0 / 3.0), (SQRT_3, 1.0 / 6.0)] {
                let darker = libm::pow(10.0, z * light_dex);
                if let Some(gain) = minutes(first * darker, second * darker) {
                    sum += share * weight * gain;
                    squares += share * weight * gain * gain;
                    known += share * weight;
                }
            }
        }
        match minutes(mean.0, mean.1) {
            Some(gain) if known > 0.9 => {
                let average = sum / known;
                let variance = (squares / known - average * average).max(0.0);
                DuskGain::Minutes {
                    mean_person: Estimate::new(
                        gain,
                        (variance + MODEL_SPREAD_MIN * MODEL_SPREAD_MIN).sqrt(),
                    ),
                    people: average,
                }
            }
            _ => DuskGain::NotLost,
        }
    }
}

const SQRT_3: f64 = 1.732_050_807_568_877_2;
/// The model's own error of a difference between two sights, min.
const MODEL_SPREAD_MIN: f64 = 0.3;

/// How much longer a second sight serves at dusk.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum DuskGain {
    /// So many minutes.
    Minutes {
        /// For the mean person of that age, or for the measured pupil, with the spread
        /// between people.
        mean_person: Estimate,
        /// Averaged over people of that age, min: where the mean person gains nothing,
        /// somebody with a wide pupil still does.
        people: f64,
    },
    /// One of the two does not lose the target on this evening, or never had it, so that
    /// minutes mean nothing.
    NotLost,
}

/// One standard deviation of the light itself, in log₁₀: a factor of 1.3 under a clear
/// sky, 2.5 under cloud, and 2 more below a canopy, in quadrature.
///
/// # Source
/// The spread of three published fits of clear twilight; cloud and canopy from their
/// published ranges.
#[must_use]
pub fn light_spread_dex(scene: &Scene) -> f64 {
    let sky = match scene.cloud {
        Cloud::Clear => libm::log10(1.3),
        Cloud::Thin => libm::log10(1.8),
        Cloud::Overcast | Cloud::Dark => libm::log10(2.5),
    };
    let open = Canopy::Open.share().usual;
    let canopy = if scene.canopy_share < open {
        libm::log10(2.0)
    } else {
        0.0
    };
    (sky * sky + canopy * canopy).sqrt()
}
