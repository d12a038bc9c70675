//! One typical evening of a shooter: until when what must be told apart is told apart.
//!
//! The ranking looks at hundreds of occasions; a comparison to be said aloud needs one
//! evening that a person can picture: the middle of the season, the usual range, the cover
//! met most, a clear sky without a Moon.

use super::occasions;
use super::occasions::light::Season;
use crate::eye::people::{PupilKnown, last_luminances};
use crate::eye::veil::{straylight_index, veil_factor};
use crate::eye::{self, Eye, Optics, Patch, equivalent::TWILIGHT_SP_RATIO};
use crate::need::Need;
use crate::need::shooter::{Situation, Stop};
use crate::quantity::Estimate;
use crate::sight::{Specification, fits};
use crate::sky::ground::{self, Cloud, Scene, Setting};
use crate::sky::{Place, illuminance, sun};

/// 2027-01-01T00:00Z: the year stands for any.
const NEW_YEAR_2027_S: f64 = 1_798_761_600.0;
const DAY_S: f64 = 86_400.0;
/// The evening is tabulated from so many minutes before sunset.
const FROM_MIN: i32 = -60;
/// To so many minutes after it.
const TO_MIN: i32 = 240;
/// How deep the Sun must come for an evening to count as one: the end of shooting light.
const DEEP_DEG: f64 = -9.0;
/// Beyond this latitude the evening of the equinox is taken at this latitude.
const LATITUDE_MOST_DEG: f64 = 65.0;
/// Where the Sun sets, degrees.
const SUNSET_DEG: f64 = -0.833;
/// The median of the four coordinates of an occasion's scene: middle of the season, a clear
/// sky, the cover met most.
const MEDIAN: [f64; 4] = [0.5, 0.0, 0.9, 0.45];
/// The error of the model itself in a difference between two sights, min: 0.03 dex.
pub const MODEL_SPREAD_MIN: f64 = 0.3;

/// What is between eye and scene, for one magnification.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Glass {
    /// Magnification.
    pub magnification: f64,
    /// Objective in mm.
    pub objective_mm: f64,
    /// Transmission, 0 to 1.
    pub transmission: f64,
    /// Veiling glare index, a fraction.
    pub glare: f64,
}

impl Glass {
    /// A sight of good glass (T 0.90, glare 3 %).
    #[must_use]
    pub fn good(magnification: f64, objective_mm: f64) -> Self {
        Self {
            magnification,
            objective_mm,
            transmission: 0.90,
            glare: 0.03,
        }
    }

    /// A specification at one magnification, the inner stop of 11 mm heeded.
    #[must_use]
    pub fn of(sight: &Specification, magnification: f64) -> Self {
        Self {
            magnification,
            objective_mm: crate::sight::pupil::effective_objective_mm(
                sight.objective_mm,
                magnification,
            ),
            transmission: fits::transmission_night(sight.grade).value,
            glare: fits::veiling_glare(sight.grade).value,
        }
    }

    fn optics(&self) -> Optics {
        Optics::sight(self.magnification, self.objective_mm, self.transmission)
    }
}

/// The typical evening of one shooter.
#[derive(Clone, Debug)]
pub struct Dusk {
    /// The mean eye of this shooter.
    pub eye: Eye,
    /// Whether the pupil was measured.
    pub known: PupilKnown,
    /// Age in years with its spread.
    pub age_years: Estimate,
    /// What must be told apart, without veil.
    pub patch: Patch,
    /// Signed contrast of the target against its ground.
    pub contrast: f64,
    /// Luminance of the bright surround over the ground's.
    pub surround: f64,
    /// Cover, ground and a clear sky.
    pub scene: Scene,
    /// Usual range in m.
    pub range_m: f64,
    /// The person is out in the dusk or by night at all.
    pub out_late: bool,
    /// Minutes after sunset at which this person stops; none by day, on a lit range or by
    /// the Moon.
    pub stop_min: Option<f64>,
    /// Luminance of the ground when this person stops, cd/m².
    pub stop_cd_m2: f64,
    /// Luminance of the ground with the Sun 15° up, cd/m².
    pub day_cd_m2: f64,
    /// Middle of the season, days from New Year.
    pub day_of_year: f64,
    /// Reflectance of the coat, or none for a target.
    pub coat: Option<f64>,
    /// Light of a clear sky on open ground, lx, minute by minute from [`FROM_MIN`].
    clear_lx: Vec<f64>,
}

impl Dusk {
    /// The typical evening behind a need.
    ///
    /// The scene is the median one of the [`occasions`]; the evening, where the Sun does not
    /// come 9° down in the middle of the season, is that of the equinox.
    #[must_use]
    pub fn of(need: &Need) -> Self {
        let age_years = need.eye.age_years.value;
        let age = age_years
            .value
            .clamp(eye::person::YOUNGEST_YEARS, eye::person::OLDEST_YEARS);
        let measured = need.eye.dark_pupil_mm.and_then(|dark| {
            Eye::with_dark_pupil(age, dark.clamp(eye::pupil::LEAST_MM, eye::pupil::MOST_MM)).ok()
        });
        let known = if measured.is_some() {
            PupilKnown::Measured
        } else {
            PupilKnown::ByAge
        };
        let eye = measured.unwrap_or_else(|| Eye::of_nearest_age(age));
        let situation =
            leading(need, |situation| is_late(situation.stop)).or_else(|| leading(need, |_| true));
        let stop = situation.map_or(Stop::MinutesAfterSunset(30.0), |s| s.stop);
        let range_m = situation.map_or(80.0, |s| s.range.usual_m).max(1.0);
        let season = Season::of(need);
        let (clear_lx, day_of_year) = evening(need, &season);
        let mut contrast = -1.0;
        let mut surround = 2.0;
        let mut coat = None;
        let mut ground_reflectance = 0.08;
        let mut scene = Scene {
            cloud: Cloud::Clear,
            canopy_share: 1.0,
            ground_reflectance: 0.08,
            town_mag_arcsec2: None,
        };
        if let Some(situation) = situation {
            let late = occasions::late_share(situation) > 0.0;
            let seen = occasions::light::scene(need, &season, situation, late, MEDIAN);
            contrast = occasions::contrast(situation.what, &seen, 0.25);
            surround = seen.surround;
            ground_reflectance = seen.ground_reflectance;
            let facing = match seen.setting {
                Setting::StandingOnGround => 0.5 + 0.5 * seen.background_reflectance,
                Setting::LyingOnGround | Setting::BeforeWall => 1.0,
            };
            coat = (!situation.what.is_target())
                .then_some((contrast + 1.0) * seen.background_reflectance / facing);
            // Cover, ground and how they face the sky in one figure: what 1 lx of clear sky
            // makes of the background.
            let per_lx = occasions::light::per_lx(need, situation, MEDIAN);
            scene.ground_reflectance = seen.background_reflectance.clamp(0.01, 1.0);
            scene.canopy_share = per_lx * core::f64::consts::PI
                / (scene.ground_reflectance
                    * ground::snow_gain(scene.ground_reflectance, Cloud::Clear));
            scene.town_mag_arcsec2 = need.light.town_glow_mag;
        }
        // The air before the ground takes contrast and adds its own light.
        let (left, factor) = occasions::through_air(need, ground_reflectance, range_m);
        scene.canopy_share *= factor;
        let side_m = 1e-3 * situation.map_or(90.0, |s| occasions::patch_mm(s.what));
        let mut dusk = Self {
            eye,
            known,
            age_years,
            patch: Patch::new(
                side_m * side_m,
                range_m,
                left * contrast.abs().max(occasions::LEAST_CONTRAST),
            ),
            contrast,
            surround,
            scene,
            range_m,
            out_late: is_late(stop),
            stop_min: None,
            stop_cd_m2: 0.0,
            day_cd_m2: scene
                .ground_luminance_cd_m2(illuminance::clear_sky_illuminance_lx(15.0), 0.0),
            day_of_year,
            coat,
            clear_lx,
        };
        (dusk.stop_min, dusk.stop_cd_m2) = dusk.stopping(stop);
        dusk
    }

    fn stopping(&self, stop: Stop) -> (Option<f64>, f64) {
        match stop {
            Stop::Daylight => (None, self.ground_cd_m2(-60.0)),
            Stop::MinutesAfterSunset(minutes) => (Some(minutes), self.ground_cd_m2(minutes)),
            Stop::EndOfSeeing => {
                let last = self.last_cd_m2(&Glass::good(8.0, 56.0)).clamp(1e-5, 10.0);
                (Some(self.minutes_at(last)), last)
            }
            // A high full Moon (Krisciunas and Schaefer 1991, half of the zenith's light).
            Stop::Moon => (
                None,
                self.scene
                    .ground_luminance_cd_m2(illuminance::NIGHT_SKY_LX, 0.12),
            ),
            // 550 lx, the geometric middle of 300 to 1000, on reflectance 0.2.
            Stop::LitRange => (None, ground::ground_luminance_cd_m2(550.0, 0.2)),
        }
    }

    /// The noon before this evening at a longitude, seconds since 1970.
    #[must_use]
    pub fn noon_unix_s(&self, longitude_deg_east: f64) -> f64 {
        noon_s(self.day_of_year, longitude_deg_east)
    }

    /// Luminance of the ground so many minutes after sunset under a clear sky, cd/m².
    #[must_use]
    pub fn ground_cd_m2(&self, minutes: f64) -> f64 {
        let at = (minutes - f64::from(FROM_MIN)).clamp(0.0, (self.clear_lx.len() - 1) as f64);
        let i = (at as usize).min(self.clear_lx.len() - 2);
        let log = |i: usize| libm::log10(self.clear_lx[i]);
        let lx = libm::pow(10.0, log(i) + (at - i as f64) * (log(i + 1) - log(i)));
        self.scene.ground_luminance_cd_m2(lx, 0.0)
    }

    /// Minutes after sunset at which the ground falls to a luminance under the scene's sky.
    ///
    /// # Validity
    /// From 60 minutes before to 240 after sunset; held there, so that two sights that both
    /// serve through the night differ by nothing.
    #[must_use]
    pub fn minutes_at(&self, last_cd_m2: f64) -> f64 {
        self.minutes_under(&self.scene, last_cd_m2)
    }

    /// As [`Dusk::minutes_at`] for another sky or ground.
    #[must_use]
    pub fn minutes_under(&self, scene: &Scene, last_cd_m2: f64) -> f64 {
        let log = |i: usize| libm::log10(scene.ground_luminance_cd_m2(self.clear_lx[i], 0.0));
        let wanted = libm::log10(last_cd_m2.max(1e-12));
        let end = self.clear_lx.len() - 1;
        // The light falls but for steps of a per cent between two fits: halving will do.
        if log(0) < wanted {
            return f64::from(FROM_MIN);
        }
        if log(end) >= wanted {
            return f64::from(FROM_MIN) + end as f64;
        }
        let (mut above, mut below) = (0, end);
        while below - above > 1 {
            let middle = usize::midpoint(above, below);
            if log(middle) >= wanted {
                above = middle;
            } else {
                below = middle;
            }
        }
        let (a, b) = (log(above), log(below));
        let share = if a > b { (a - wanted) / (a - b) } else { 0.0 };
        f64::from(FROM_MIN) + above as f64 + share
    }

    /// The patch behind the stray light of a sight and of this eye.
    #[must_use]
    pub fn veiled(&self, glare: f64) -> Patch {
        self.patch.veiled(self.veil(glare))
    }

    /// The factor by which stray light lifts the background.
    #[must_use]
    pub fn veil(&self, glare: f64) -> f64 {
        veil_factor(
            glare + straylight_index(self.eye.age_years()),
            self.surround,
        )
    }

    /// The last luminance at which the mean person tells the patch apart, cd/m²; 0 for always.
    #[must_use]
    pub fn last_cd_m2(&self, glass: &Glass) -> f64 {
        eye::fast::Tables::shared()
            .last_luminance(
                &self.eye,
                &glass.optics(),
                TWILIGHT_SP_RATIO,
                &self.veiled(glass.glare),
            )
            .cd_m2()
    }

    /// Minutes after sunset until which the patch is told apart; the spread is that of the
    /// absolute time: field factor, contrast, ground and cloud.
    #[must_use]
    pub fn minutes(&self, glass: &Glass) -> Estimate {
        let last = self.last_cd_m2(glass);
        let factor = libm::pow(10.0, super::evening::ABSOLUTE_DEX);
        Estimate::new(
            self.minutes_at(last),
            0.5 * (self.minutes_at(last / factor) - self.minutes_at(last * factor)),
        )
    }

    /// How many minutes longer the second of two sights serves: the mean person, with the
    /// spread between people of this age and the model's own error where the sights differ.
    #[must_use]
    pub fn gain_min(&self, first: &Glass, second: &Glass) -> Estimate {
        self.gain_with_model_min(first, second, MODEL_SPREAD_MIN)
    }

    /// As [`Dusk::gain_min`] with another error of the model, for sights that differ in one
    /// small thing only.
    #[must_use]
    pub fn gain_with_model_min(&self, first: &Glass, second: &Glass, model_min: f64) -> Estimate {
        if first == second {
            return Estimate::new(0.0, 0.0);
        }
        let (mut sum, mut squares) = (0.0, 0.0);
        for ((share, a), (_, b)) in self.people(first).into_iter().zip(self.people(second)) {
            let gain = self.minutes_at(b) - self.minutes_at(a);
            sum += share * gain;
            squares += share * gain * gain;
        }
        let gain =
            self.minutes_at(self.last_cd_m2(second)) - self.minutes_at(self.last_cd_m2(first));
        Estimate::new(
            gain,
            ((squares - sum * sum).max(0.0) + model_min * model_min).sqrt(),
        )
    }

    /// Shares and last luminances over pupils, field factors and, where it is not known, age.
    fn people(&self, glass: &Glass) -> Vec<(f64, f64)> {
        const SQRT_3: f64 = 1.732_050_807_568_877_2;
        let ages: &[(f64, f64)] = if self.age_years.spread > 0.0 {
            &[(-SQRT_3, 1.0 / 6.0), (0.0, 2.0 / 3.0), (SQRT_3, 1.0 / 6.0)]
        } else {
            &[(0.0, 1.0)]
        };
        let mut people = Vec::new();
        for (z, age_share) in ages {
            let eye = Eye::of_nearest_age(self.age_years.value + z * self.age_years.spread)
                .with_offset(self.eye.pupil_offset_mm());
            for person in last_luminances(
                &eye,
                self.known,
                &glass.optics(),
                TWILIGHT_SP_RATIO,
                &self.veiled(glass.glare),
            ) {
                people.push((age_share * person.share, person.last_cd_m2));
            }
        }
        people
    }

    /// The magnification within a zoom that serves latest, and the glass at it.
    #[must_use]
    pub fn latest(&self, sight: &Specification) -> Glass {
        let steps = if sight.magnification_high > sight.magnification_low {
            24
        } else {
            0
        };
        let mut best = Glass::of(sight, sight.magnification_low);
        let mut last = self.last_cd_m2(&best);
        for step in 1..=steps {
            let share = f64::from(step) / f64::from(steps);
            let magnification = sight.magnification_low
                * libm::pow(sight.magnification_high / sight.magnification_low, share);
            let glass = Glass::of(sight, magnification);
            let at = self.last_cd_m2(&glass);
            // Less magnification where more brings nothing.
            if at < last * 0.999 {
                (best, last) = (glass, at);
            }
        }
        best
    }

    /// This person's pupil at a luminance, mm, with its spread.
    #[must_use]
    pub fn pupil_mm(&self, luminance_cd_m2: f64) -> Estimate {
        let value = self.eye.pupil_mm(luminance_cd_m2);
        let by_age = self.age_years.spread
            * (eye::pupil::pupil_diameter_mm(luminance_cd_m2, 40.0)
                - eye::pupil::pupil_diameter_mm(luminance_cd_m2, 60.0))
            / 20.0;
        let own = self.known.spread_mm();
        Estimate::new(value, (own * own + by_age * by_age).sqrt())
    }
}

/// Whether a stopping time lies in the dusk or the night.
fn is_late(stop: Stop) -> bool {
    match stop {
        Stop::Daylight | Stop::LitRange => false,
        Stop::MinutesAfterSunset(minutes) => minutes > -15.0,
        Stop::EndOfSeeing | Stop::Moon => true,
    }
}

/// The situation with the largest share among those that pass; the first of equals.
pub(crate) fn leading(need: &Need, pass: impl Fn(&Situation) -> bool) -> Option<&Situation> {
    let mut best: Option<&Situation> = None;
    for situation in need.situations.iter().filter(|s| pass(s)) {
        if best.is_none_or(|b| situation.share > b.share) {
            best = Some(situation);
        }
    }
    best
}

/// Light of a clear evening minute by minute, and the day of the year.
fn evening(need: &Need, season: &Season) -> (Vec<f64>, f64) {
    let latitude = need.place.latitude_deg.value.clamp(-90.0, 90.0);
    let longitude = need.place.longitude_deg_east.value.clamp(-180.0, 180.0);
    let equinox = 79.0;
    let middle = season.typical().map_or(equinox, |typical| {
        (typical.sunset_s + 240.0 * longitude - NEW_YEAR_2027_S) / DAY_S
    });
    let usable = latitude.clamp(-LATITUDE_MOST_DEG, LATITUDE_MOST_DEG);
    for (latitude, day) in [(latitude, middle), (usable, equinox), (50.0, equinox)] {
        if let Some(lx) = of_day(latitude, longitude, day) {
            return (lx, day);
        }
    }
    // A latitude of 50° at the equinox has an evening; this is never reached.
    (vec![1.0; (TO_MIN - FROM_MIN + 1) as usize], equinox)
}

/// Mean solar noon of a day of the year, seconds since 1970.
pub(crate) fn noon_s(day_of_year: f64, longitude_deg_east: f64) -> f64 {
    NEW_YEAR_2027_S + DAY_S * (day_of_year.floor() + 0.5) - 240.0 * longitude_deg_east
}

/// None where the Sun does not set, or does not come as deep as an evening needs.
fn of_day(latitude_deg: f64, longitude_deg: f64, day_of_year: f64) -> Option<Vec<f64>> {
    let place = Place::new(latitude_deg, longitude_deg).ok()?;
    let noon_s = noon_s(day_of_year, longitude_deg);
    let altitude = |s: f64| sun::sun_altitude_deg(s, &place);
    let midnight_s = noon_s + 0.5 * DAY_S;
    if altitude(noon_s) < SUNSET_DEG + 1.0 || altitude(midnight_s) > DEEP_DEG {
        return None;
    }
    let (mut a, mut b) = (noon_s, midnight_s);
    while b - a > 1.0 {
        let middle = 0.5 * (a + b);
        if altitude(middle) > SUNSET_DEG {
            a = middle;
        } else {
            b = middle;
        }
    }
    let sunset_s = 0.5 * (a + b);
    let mut list: Vec<f64> = Vec::new();
    for minute in FROM_MIN..=TO_MIN {
        let s = (sunset_s + 60.0 * f64::from(minute)).min(midnight_s);
        list.push(illuminance::clear_sky_illuminance_lx(altitude(s)));
    }
    Some(list)
}
