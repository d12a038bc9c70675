//! The typical evening: until when the quarry is told apart, with this sight and that.

use super::coverage::Ground;
use super::occasions::light::{Evening, Season};
use super::occasions::{self, person};
use super::report::{Figure, LastLight, LightKind, Quantity, Tonight};
use crate::eye::fast::Tables;
use crate::eye::{self, Eye, LastLuminance, Optics, Patch};
use crate::need::shooter::{Need, Situation, Stop};
use crate::sight::{Specification, fits, pupil};
use crate::sky::illuminance;

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

/// Spread of the absolute end, dex: field factor, contrast, ground and cloud in quadrature.
pub(super) const ABSOLUTE_DEX: f64 = 0.4;
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
            eye: person(need, need.eye.age_years.value.value, ground.world.pupil_mm),
            stop_min,
            stop_cd_m2,
            light,
            season,
            evening,
        }
    }

    fn patch(&self, ground: &Ground, glare: f64) -> Option<Patch> {
        let s = &ground.need.situations[self.situation];
        let side_m = 1e-3 * occasions::patch_mm(s.what);
        let eye = self.eye.as_ref()?;
        let stray = eye::veil::straylight_index(eye.age_years());
        let veil = eye::veil::veil_factor(glare + stray, self.surround);
        let (left, _) = self.air(ground, s.range.usual_m);
        Some(Patch::new(side_m * side_m, s.range.usual_m, left * self.contrast).veiled(veil))
    }

    /// What the air leaves of a contrast at a range, and how much it brightens the ground.
    fn air(&self, ground: &Ground, range_m: f64) -> (f64, f64) {
        occasions::through_air(&ground.need, self.ground_reflectance, range_m)
    }

    /// log10 of the least background luminance at which the quarry is told apart through a
    /// sight, at its best power, with the pupil moved by `pupil_mm`; −∞ for always.
    fn last_log(&self, ground: &Ground, sight: Option<&Specification>, pupil_mm: f64) -> f64 {
        let Some(eye) = self.eye else {
            return f64::INFINITY;
        };
        let eye = eye.with_offset(eye.pupil_offset_mm() + pupil_mm);
        let tables = Tables::shared();
        let usual_m = ground.need.situations[self.situation].range.usual_m;
        let (_, factor) = self.air(ground, usual_m);
        let solve = |optics: &Optics, patch: &Patch| match tables.last_luminance(
            &eye,
            optics,
            eye::equivalent::TWILIGHT_SP_RATIO,
            patch,
        ) {
            LastLuminance::Always => f64::NEG_INFINITY,
            // Found as it looks through the air; wanted on the ground.
            LastLuminance::At(l) => libm::log10(l / factor),
            LastLuminance::Never => f64::INFINITY,
        };
        match sight {
            None => self
                .patch(ground, 0.0)
                .map_or(f64::INFINITY, |patch| solve(&Optics::bare_eye(), &patch)),
            Some(s) => {
                let glare = fits::veiling_glare(s.grade).value * ground.world.glare;
                let Some(patch) = self.patch(ground, glare) else {
                    return f64::INFINITY;
                };
                let transmission = fits::transmission_night(s.grade).value;
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

    /// Minutes after sunset at which the background falls to a luminance; none if never.
    fn minutes(&self, log_l: f64) -> Option<f64> {
        let evening = self.evening.as_ref()?;
        let log_at = |minutes: f64| {
            libm::log10(
                self.cd_m2_per_lx
                    * illuminance::clear_sky_illuminance_lx(
                        self.season.altitude_deg(evening, minutes),
                    ),
            )
        };
        let (mut a, mut b) = (-60.0, evening.darkest_min + 30.0);
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
        let log_l = self.last_log(ground, sight, 0.0);
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
            None if log_l < -1.0 => LastLight::Always,
            None => LastLight::Never,
        }
    }

    /// How much later the second sight tells the quarry apart, minutes, with the spread that
    /// the pupil makes; none where one of them always or never does.
    #[must_use]
    pub fn later_min(
        &self,
        ground: &Ground,
        one: &Specification,
        other: &Specification,
    ) -> Option<Figure> {
        let at = |pupil_mm: f64| -> Option<f64> {
            Some(
                self.minutes(self.last_log(ground, Some(other), pupil_mm))?
                    - self.minutes(self.last_log(ground, Some(one), pupil_mm))?,
            )
        };
        let value = at(0.0)?;
        let pupil_spread = if ground.need.eye.dark_pupil_mm.is_some() {
            0.3
        } else {
            eye::pupil::SPREAD_MM
        };
        let low = at(-pupil_spread).unwrap_or(value);
        let high = at(pupil_spread).unwrap_or(value);
        let by_pupil = 0.5 * (high - low).abs();
        Some(Figure {
            value,
            spread: (by_pupil * by_pupil + DIFFERENCE_MIN * DIFFERENCE_MIN).sqrt(),
        })
    }

    /// The same as an effect, where the light matters.
    #[must_use]
    pub fn later_effect(
        &self,
        ground: &Ground,
        one: &Specification,
        other: &Specification,
    ) -> Option<super::report::Effect> {
        let figure = self.later_min(ground, one, other)?;
        Some(super::report::Effect {
            quantity: Quantity::MinutesTonight,
            value: figure.value,
            spread: figure.spread,
        })
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
            sunset_s: self.evening.filter(|e| e.sets).map(|e| e.sunset_s),
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
