//! The typical evening: until when the quarry is told apart, with this sight and that.

use super::coverage::Ground;
use super::occasions::light::{Evening, Season};
use super::occasions::{self, person};
use super::report::{Figure, LastLight, LightKind, Tonight};
use crate::eye::fast::Tables;
use crate::eye::{self, Eye, LastLuminance, Optics, Patch};
use crate::need::shooter::{Need, Situation, Stop};
use crate::sight::{Specification, fits, pupil};
use crate::sky::evening::{EventKind, Minute, Night, SUNSET_DEG, SunCourse};
use crate::sky::ground::{self, Setting};
use crate::sky::illuminance;
use crate::sky::moon::moon_position;
use crate::sky::sun::sun_altitude_deg;

/// The typical occasion's scene and eye, for the comparison of sights.
#[derive(Clone, Debug)]
pub struct Typical {
    /// Index of the situation.
    pub situation: usize,
    /// Luminance of the background for 1 lx of clear-sky light, cd/m².
    pub cd_m2_per_lx: f64,
    /// Contrast, signed.
    pub contrast: f64,
    /// Luminance of the surround over the background's.
    pub surround: f64,
    /// Reflectance of the ground, for what the air before it takes.
    ground_reflectance: f64,
    /// What an animal stands before: reflectance and how; none for targets.
    coat_before: Option<(f64, Setting)>,
    /// Contrast before the least that is taken.
    contrast_as_it_is: f64,
    /// The eye.
    pub eye: Option<Eye>,
    /// Minutes after sunset at which this person stops; none by day, Moon or lamps.
    pub stop_min: Option<f64>,
    /// Luminance of the background at the stop, or usual by day and Moon, cd/m².
    pub stop_cd_m2: f64,
    /// The light that matters.
    pub light: LightKind,
    season: Season,
    evening: Option<Evening>,
}

/// What is looked at, as it may differ from the typical occasion.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Look {
    /// Side of the patch, m.
    pub side_m: f64,
    /// Range, m.
    pub range_m: f64,
    /// Contrast on the ground, without sign.
    pub contrast: f64,
    /// Scotopic to photopic ratio of the light.
    pub sp_ratio: f64,
    /// Added to the pupil, mm.
    pub pupil_mm: f64,
    /// Added to the age, years.
    pub years_more: f64,
    /// Added to the transmission.
    pub transmission_more: f64,
    /// As if there were no air between.
    pub clear_air: bool,
}

/// A night of the full Moon.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Moonlit {
    /// Told apart all night.
    All,
    /// Lost in the dusk and not found again.
    Not,
    /// Lost in the dusk and told apart again.
    Again {
        /// From so many minutes after sunset …
        from_min: f64,
        /// … to so many.
        to_min: f64,
    },
}

/// Spread of the absolute end, dex: field factor, contrast, ground and cloud in quadrature.
pub(super) const ABSOLUTE_DEX: f64 = 0.4;
/// An end of telling apart is looked for from so many minutes after sunset on.
const FROM_MIN: f64 = -60.0;
/// Spread of a difference between two sights that no pupil explains, minutes.
const DIFFERENCE_MIN: f64 = 0.3;

impl Typical {
    /// The typical occasion of a ground: the situation met most, in the middle of the season.
    #[must_use]
    pub fn of(ground: &Ground) -> Self {
        let need = &ground.need;
        let situation = most_met(&need.situations);
        let s = &need.situations[situation];
        let season = Season::of(need);
        let evening = season.typical().copied();
        let mut stop = s.stop;
        // What is shot later decides the evening, if it is not rare.
        for other in &need.situations {
            if let (Stop::MinutesAfterSunset(a), Stop::MinutesAfterSunset(b)) = (stop, other.stop)
                && b > a
                && other.share >= 0.2
            {
                stop = other.stop;
            }
        }
        // The median scene of the late occasions, or of the day's.
        let late = occasions::late_share(s) > 0.0;
        let scene = occasions::light::scene(need, &season, s, late, [0.5, 0.0, 0.9, 0.45]);
        let lx_probe = match stop {
            Stop::MinutesAfterSunset(minutes) => {
                evening.as_ref().map(|e| season.altitude_deg(e, minutes))
            }
            _ => None,
        };
        let open = occasions::light::per_lx(need, s, [0.5, 0.0, 0.9, 0.45]);
        let contrast_signed = occasions::contrast(s.what, &scene, 0.25);
        let contrast = if contrast_signed.abs() < occasions::LEAST_CONTRAST {
            occasions::LEAST_CONTRAST * if contrast_signed < 0.0 { -1.0 } else { 1.0 }
        } else {
            contrast_signed
        };
        let (light, stop_min) = match stop {
            Stop::Daylight => (LightKind::Day, None),
            Stop::MinutesAfterSunset(minutes) => (LightKind::Dusk, Some(minutes)),
            Stop::EndOfSeeing => (
                LightKind::Dusk,
                evening
                    .as_ref()
                    .map(|e| season.end_of_seeing_min(e, &|lx| open * lx)),
            ),
            Stop::Moon => (LightKind::Moon, None),
            Stop::LitRange => (LightKind::LitRange, None),
        };
        let stop_cd_m2 = match (stop, lx_probe) {
            (_, Some(altitude)) => open * illuminance::clear_sky_illuminance_lx(altitude),
            (Stop::EndOfSeeing, _) => occasions::light::END_OF_SEEING_CD_M2,
            (Stop::Moon, _) => 0.01,
            (Stop::LitRange, _) => 30.0,
            _ => open * 10_000.0,
        };
        Self {
            situation,
            cd_m2_per_lx: open,
            contrast,
            surround: scene.surround,
            ground_reflectance: scene.ground_reflectance,
            coat_before: (!s.what.is_target())
                .then_some((scene.background_reflectance, scene.setting)),
            contrast_as_it_is: contrast_signed,
            eye: person(need, need.eye.age_years.value.value, ground.world.pupil_mm),
            stop_min,
            stop_cd_m2,
            light,
            season,
            evening,
        }
    }

    /// The usual look: what is told apart, how far, with which contrast.
    #[must_use]
    pub fn look(&self, ground: &Ground) -> Look {
        let s = &ground.need.situations[self.situation];
        Look {
            side_m: 1e-3 * occasions::patch_mm(s.what),
            range_m: s.range.usual_m,
            contrast: self.contrast.abs(),
            sp_ratio: eye::equivalent::TWILIGHT_SP_RATIO,
            pupil_mm: 0.0,
            years_more: 0.0,
            transmission_more: 0.0,
            clear_air: false,
        }
    }

    /// What the air leaves of a contrast at a range, and how much it brightens the ground.
    #[must_use]
    pub fn air(&self, ground: &Ground, range_m: f64) -> (f64, f64) {
        occasions::through_air(&ground.need, self.ground_reflectance, range_m)
    }

    /// log10 of the least background luminance at which the quarry is told apart through a
    /// sight, at its best power, with the pupil moved by `pupil_mm`; −∞ for always.
    fn last_log(&self, ground: &Ground, sight: Option<&Specification>, pupil_mm: f64) -> f64 {
        let look = Look {
            pupil_mm,
            ..self.look(ground)
        };
        self.last_log_of(ground, sight, &look)
    }

    /// The same for another look.
    #[must_use]
    pub fn last_log_of(&self, ground: &Ground, sight: Option<&Specification>, look: &Look) -> f64 {
        let Some(eye) = self.eye else {
            return f64::INFINITY;
        };
        let eye = Eye::of_nearest_age(eye.age_years() + look.years_more)
            .with_offset(eye.pupil_offset_mm() + look.pupil_mm);
        let (left, factor) = if look.clear_air {
            (1.0, 1.0)
        } else {
            self.air(ground, look.range_m)
        };
        let patch = |glare: f64| {
            let stray = eye::veil::straylight_index(eye.age_years());
            let veil = eye::veil::veil_factor(glare + stray, self.surround);
            Patch::new(
                look.side_m * look.side_m,
                look.range_m,
                left * look.contrast,
            )
            .veiled(veil)
        };
        let tables = Tables::shared();
        let solve = |optics: &Optics, patch: &Patch| match tables.last_luminance(
            &eye,
            optics,
            look.sp_ratio,
            patch,
        ) {
            LastLuminance::Always => f64::NEG_INFINITY,
            // Found as it looks through the air; wanted on the ground.
            LastLuminance::At(l) => libm::log10(l / factor),
            LastLuminance::Never => f64::INFINITY,
        };
        match sight {
            None => solve(&Optics::bare_eye(), &patch(0.0)),
            Some(s) => {
                let patch = patch(fits::veiling_glare(s.grade).value * ground.world.glare);
                let transmission =
                    (fits::transmission_night(s.grade).value + look.transmission_more).min(1.0);
                let ratio = s.zoom_ratio().max(1.0);
                let steps = 1 + (12.0 * libm::log2(ratio)) as u32 / 3;
                (0..=steps)
                    .map(|i| {
                        let m =
                            s.magnification_low * libm::pow(ratio, f64::from(i) / f64::from(steps));
                        let effective = pupil::effective_objective_mm(s.objective_mm, m);
                        solve(&Optics::sight(m, effective, transmission), &patch)
                    })
                    .fold(f64::INFINITY, f64::min)
            }
        }
    }

    /// log10 of the same by the Landolt-ring law at one magnification, the usual look.
    #[must_use]
    pub fn ring_log(&self, ground: &Ground, sight: &Specification, magnification: f64) -> f64 {
        let Some(eye) = self.eye else {
            return f64::INFINITY;
        };
        let look = self.look(ground);
        let (left, factor) = self.air(ground, look.range_m);
        let glare = fits::veiling_glare(sight.grade).value * ground.world.glare;
        let veil = eye::veil::veil_factor(
            glare + eye::veil::straylight_index(eye.age_years()),
            self.surround,
        );
        let optics = Optics::sight(
            magnification,
            pupil::effective_objective_mm(sight.objective_mm, magnification),
            fits::transmission_night(sight.grade).value,
        );
        match eye::people::landolt_last_luminance(
            &eye,
            &optics,
            look.sp_ratio,
            look.side_m,
            look.range_m,
            left * look.contrast / veil,
        ) {
            LastLuminance::Always => f64::NEG_INFINITY,
            LastLuminance::At(l) => libm::log10(l / (factor * veil)),
            LastLuminance::Never => f64::INFINITY,
        }
    }

    /// log10 of the background's luminance so many minutes after sunset.
    fn log_light(&self, evening: &Evening, minutes: f64) -> f64 {
        let altitude_deg = self.season.altitude_deg(evening, minutes);
        libm::log10(self.cd_m2_per_lx * illuminance::clear_sky_illuminance_lx(altitude_deg))
    }

    /// Minutes after sunset at which the background falls to a luminance; none if never.
    #[must_use]
    pub fn minutes(&self, log_l: f64) -> Option<f64> {
        let evening = self.evening.as_ref()?;
        let log_at = |minutes: f64| self.log_light(evening, minutes);
        let (mut a, mut b) = (FROM_MIN, evening.darkest_min + 30.0);
        if log_at(b) > log_l || log_at(a) < log_l {
            return None;
        }
        while b - a > 0.01 {
            let middle = 0.5 * (a + b);
            if log_at(middle) > log_l {
                a = middle;
            } else {
                b = middle;
            }
        }
        Some(0.5 * (a + b))
    }

    /// Minutes after sunset until which the quarry is told apart, with its own spread, or
    /// always or never.
    #[must_use]
    pub fn last_light(&self, ground: &Ground, sight: Option<&Specification>) -> LastLight {
        self.end_of(self.last_log(ground, sight, 0.0))
    }

    /// The end of telling apart for a least luminance, log10.
    #[must_use]
    pub fn end_of(&self, log_l: f64) -> LastLight {
        if log_l == f64::INFINITY {
            return LastLight::Never;
        }
        match self.minutes(log_l) {
            Some(minutes) => {
                let early = self.minutes(log_l + ABSOLUTE_DEX).unwrap_or(minutes - 5.0);
                let late = self.minutes(log_l - ABSOLUTE_DEX).unwrap_or(minutes + 5.0);
                LastLight::At {
                    minutes,
                    spread: 0.5 * (late - early).abs(),
                }
            }
            // Where the Sun does not rise it is too dark from the first on.
            None if (self.evening).is_some_and(|e| self.log_light(&e, FROM_MIN) < log_l) => {
                LastLight::Never
            }
            None => LastLight::Always,
        }
    }

    /// There is an end of seeing to reach: on a lit range there is none.
    #[must_use]
    pub fn has_evening(&self) -> bool {
        self.light != LightKind::LitRange
    }

    /// How much later the second sight tells the quarry apart, minutes, with the spread that
    /// pupil, field factor and cloud make; none where one of them always or never does.
    #[must_use]
    pub fn later_min(
        &self,
        ground: &Ground,
        one: &Specification,
        other: &Specification,
    ) -> Option<Figure> {
        if !self.has_evening() {
            return None;
        }
        let look = self.look(ground);
        self.gain_min(ground, (one, &look), (other, &look))
    }

    /// The same between two sights and two looks.
    #[must_use]
    pub fn gain_min(
        &self,
        ground: &Ground,
        one: (&Specification, &Look),
        other: (&Specification, &Look),
    ) -> Option<Figure> {
        let log = |(sight, look): (&Specification, &Look), pupil_mm: f64| {
            let look = Look {
                pupil_mm: look.pupil_mm + pupil_mm,
                ..*look
            };
            self.last_log_of(ground, Some(sight), &look)
        };
        // How far apart two least luminances are in time, the light being darker by so much.
        let apart = |(one, other): (f64, f64), darker_dex: f64| {
            Some(self.minutes(other + darker_dex)? - self.minutes(one + darker_dex)?)
        };
        let logs = |pupil_mm: f64| (log(one, pupil_mm), log(other, pupil_mm));
        let middle = logs(0.0);
        let value = apart(middle, 0.0)?;
        let pupil_spread = if ground.need.eye.dark_pupil_mm.is_some() {
            0.3
        } else {
            eye::pupil::SPREAD_MM
        };
        let half = |low: Option<f64>, high: Option<f64>| {
            0.5 * (high.unwrap_or(value) - low.unwrap_or(value)).abs()
        };
        let by_pupil = half(
            apart(logs(-pupil_spread), 0.0),
            apart(logs(pupil_spread), 0.0),
        );
        // Field factor, contrast and cloud shift both alike: what is left is how fast it falls.
        let by_light = half(apart(middle, -ABSOLUTE_DEX), apart(middle, ABSOLUTE_DEX));
        Some(Figure {
            value,
            spread: (by_pupil * by_pupil + by_light * by_light + DIFFERENCE_MIN * DIFFERENCE_MIN)
                .sqrt(),
        })
    }

    /// Sunrise after the typical evening, seconds since 1970; none where the Sun does not set.
    #[must_use]
    pub fn sunrise_s(&self) -> Option<f64> {
        let evening = self.evening.as_ref().filter(|e| e.sets)?;
        let place = self.season.place.as_ref()?;
        climbs_past(evening.noon_s, &|s| sun_altitude_deg(s, place) < SUNSET_DEG)
    }

    /// Minutes before sunrise from which on the background is brighter than a luminance, with
    /// the spread of the absolute time; none if it never is before, or never darker.
    #[must_use]
    pub fn before_sunrise_min(&self, log_l: f64) -> Option<Figure> {
        let evening = self.evening.as_ref().filter(|e| e.sets)?;
        let place = self.season.place.as_ref()?;
        let log_at = |s: f64| {
            let altitude = sun_altitude_deg(s, place);
            libm::log10(self.cd_m2_per_lx * illuminance::clear_sky_illuminance_lx(altitude))
        };
        let sunrise_s = self.sunrise_s()?;
        let climbs = |below: &dyn Fn(f64) -> bool| climbs_past(evening.noon_s, below);
        let before = |log_l: f64| Some((sunrise_s - climbs(&|s| log_at(s) < log_l)?) / 60.0);
        let value = before(log_l)?;
        let early = before(log_l - ABSOLUTE_DEX).unwrap_or(value + 5.0);
        let late = before(log_l + ABSOLUTE_DEX).unwrap_or(value - 5.0);
        Some(Figure {
            value,
            spread: 0.5 * (early - late).abs(),
        })
    }

    /// What happens in the night of the full Moon nearest to the typical evening.
    #[must_use]
    pub fn moonlit(&self, log_l_twilight: f64, log_l_moon: f64) -> Option<Moonlit> {
        let evening = self.evening.as_ref().filter(|e| e.sets)?;
        let place = self.season.place.as_ref()?;
        let noon_s = (-15..15)
            .map(|day| evening.noon_s + 86_400.0 * f64::from(day))
            .min_by(|a, b| {
                let phase = |noon: &f64| moon_position(noon + 43_200.0, place).phase_angle_deg;
                phase(a).total_cmp(&phase(b))
            })?;
        let night = Night::from_noon(noon_s, place).ok()?;
        let sunset_s = night
            .sky_events()
            .iter()
            .find(|event| event.kind == EventKind::Sunset)?
            .unix_s;
        let seen = |minute: &Minute| {
            let needed = if minute.moon_lx > minute.sun_lx {
                log_l_moon
            } else {
                log_l_twilight
            };
            libm::log10(self.cd_m2_per_lx * (minute.sun_lx + minute.moon_lx)) >= needed
        };
        let dark: Vec<&Minute> = night
            .minutes()
            .iter()
            .filter(|minute| minute.unix_s >= sunset_s && minute.sun_altitude_deg < SUNSET_DEG)
            .collect();
        let by_moon: Vec<bool> = dark.iter().map(|m| m.moon_lx > m.sun_lx).collect();
        let after: Vec<(f64, bool)> = dark
            .iter()
            .map(|minute| ((minute.unix_s - sunset_s) / 60.0, seen(minute)))
            .collect();
        let Some(lost) = after.iter().position(|(_, seen)| !seen) else {
            return Some(Moonlit::All);
        };
        // What the dawn brings back is not the Moon's.
        let found = after[lost..]
            .iter()
            .position(|(_, seen)| *seen)
            .filter(|found| by_moon[lost + found]);
        let Some(found) = found else {
            return Some(Moonlit::Not);
        };
        let from = lost + found;
        let to = after[from..]
            .iter()
            .position(|(_, seen)| !seen)
            .map_or(after.len() - 1, |more| from + more);
        Some(Moonlit::Again {
            from_min: after[from].0,
            to_min: after[to].0,
        })
    }

    /// What the Sun does on the typical date.
    #[must_use]
    pub fn sun_course(&self) -> SunCourse {
        match &self.evening {
            Some(e) if e.sets => SunCourse::Sets,
            Some(e) if e.noon_deg < SUNSET_DEG => SunCourse::StaysDown,
            Some(_) => SunCourse::StaysUp,
            None => SunCourse::Sets,
        }
    }

    /// The contrast of the game wet, and lying down; none for targets.
    #[must_use]
    pub fn contrast_wet_and_lying(&self) -> Option<(f64, f64)> {
        let (background, setting) = self.coat_before?;
        let facing = match setting {
            Setting::StandingOnGround => 0.5 + 0.5 * background,
            Setting::LyingOnGround | Setting::BeforeWall => 1.0,
        };
        let coat = (self.contrast_as_it_is + 1.0) * background / facing;
        Some((
            ground::contrast(coat * ground::Coat::WET, background, setting),
            ground::contrast(
                coat,
                background,
                if setting == Setting::BeforeWall {
                    setting
                } else {
                    Setting::LyingOnGround
                },
            ),
        ))
    }

    /// The contrast of the game as it stands, signed.
    #[must_use]
    pub fn contrast_as_it_is(&self) -> f64 {
        self.contrast_as_it_is
    }

    /// Tonight, for the strip.
    #[must_use]
    pub fn tonight(
        &self,
        ground: &Ground,
        this: &Specification,
        other: Option<&Specification>,
    ) -> Tonight {
        Tonight {
            noon_s: self.evening.map_or(0.0, |e| e.noon_s),
            sunset_s: self.evening.filter(|e| e.sets).map(|e| e.sunset_s),
            sunrise_s: self.sunrise_s(),
            latitude_deg: ground.need.place.latitude_deg.value,
            longitude_deg_east: ground.need.place.longitude_deg_east.value,
            bare_eye: self.last_light(ground, None),
            this_sight: self.last_light(ground, Some(this)),
            other_sight: other.map(|sight| self.last_light(ground, Some(sight))),
            difference_min: other.and_then(|sight| self.later_min(ground, sight, this)),
        }
    }

    /// log10 of the last luminance at the best power: lower is later.
    #[must_use]
    pub fn lateness(&self, ground: &Ground, sight: &Specification) -> f64 {
        self.last_log(ground, Some(sight), 0.0)
    }
}

/// The sunset in the middle of this shooter's season, seconds since 1970; none where the Sun
/// does not set then.
#[must_use]
pub fn typical_sunset_s(need: &Need) -> Option<f64> {
    let season = Season::of(need);
    let evening = season.typical()?;
    evening.sets.then_some(evening.sunset_s)
}

/// When it ceases to be below something, between the midnight and the noon that follow a
/// noon, in which the Sun only climbs; none if it never is below, or never above.
fn climbs_past(noon_s: f64, below: &dyn Fn(f64) -> bool) -> Option<f64> {
    let (mut a, mut b) = (noon_s + 43_200.0, noon_s + 86_400.0);
    if !below(a) || below(b) {
        return None;
    }
    while b - a > 1.0 {
        let middle = 0.5 * (a + b);
        if below(middle) {
            a = middle;
        } else {
            b = middle;
        }
    }
    Some(0.5 * (a + b))
}

/// The index of the situation met most often.
#[must_use]
pub fn most_met(situations: &[Situation]) -> usize {
    let mut best = 0;
    for (index, situation) in situations.iter().enumerate() {
        if situation.share > situations[best].share {
            best = index;
        }
    }
    best
}
