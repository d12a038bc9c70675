//! The dusk strip: one evening or morning at one place as a band of light over a line of time.

use super::colour::{Srgb, dusk_colour};
use crate::plain::Gathered;
use crate::quantity::Estimate;
use crate::sky::evening::{self, NAUTICAL_DEG, Night, SUNSET_DEG, SunCourse};
use crate::sky::ground::Scene;

/// The strip begins this many minutes before sunset.
pub const BEFORE_SUNSET_MIN: f64 = 20.0;
/// And ends this many after, unless it never gets dark.
pub const AFTER_SUNSET_MIN: f64 = 130.0;

/// Something that happens during the evening.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Event {
    /// Minutes after the anchor.
    pub minute: f64,
    /// What it is.
    pub kind: EventKind,
}

/// What can happen, most important first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum EventKind {
    /// The Sun is gone.
    Sunset,
    /// The Sun is back.
    Sunrise,
    /// The Sun stands 6° under the horizon and sinks.
    CivilTwilightEnds,
    /// The Sun stands 6° under the horizon and climbs.
    CivilTwilightBegins,
    /// The Moon comes up.
    Moonrise,
    /// The Moon goes down.
    Moonset,
}

/// One evening or morning of a night: its light minute by minute and what happens in it.
#[derive(Clone, Debug, PartialEq)]
pub struct Evening {
    /// What the Sun does: minutes count from sunset, or in the morning from sunrise, or else
    /// from an hour before it stands lowest.
    pub sun: SunCourse,
    /// Seconds since 1970 at minute 0.
    pub anchor_unix_s: f64,
    /// Local clock at minute 0, in minutes after midnight.
    pub anchor_clock_min: f64,
    /// First minute of the strip.
    pub first_min: f64,
    /// Last minute of the strip.
    pub last_min: f64,
    /// Time runs from dark to light.
    pub is_morning: bool,
    /// Whether it gets darker than nautical twilight before the Sun comes back.
    pub gets_dark: bool,
    /// Illuminance under the open sky every minute from the first, in lux, cloud included.
    pub open_sky_lx: Vec<f64>,
    /// The same where the target stands, cover and ground included.
    pub scene_lx: Vec<f64>,
    /// Events on the strip, by time.
    pub events: Vec<Event>,
}

impl Evening {
    /// The evening of a night in a scene, `clock_offset_min` minutes ahead of UTC.
    #[must_use]
    pub fn of(night: &Night, scene: &Scene, clock_offset_min: f64) -> Self {
        let minutes = night.minutes();
        let lowest = &minutes[night.midnight()];
        let sunset = first_of(night, evening::EventKind::Sunset);
        let sun = match sunset {
            Some(_) => SunCourse::Sets,
            None if lowest.sun_altitude_deg >= SUNSET_DEG => SunCourse::StaysUp,
            None => SunCourse::StaysDown,
        };
        let anchor_unix_s = sunset.unwrap_or(lowest.unix_s - 3600.0);
        let ends = (-BEFORE_SUNSET_MIN, dark_min(night, anchor_unix_s));
        Self::between(night, scene, clock_offset_min, (sun, anchor_unix_s, ends))
    }

    /// The morning that follows it, on the same scale; none where the Sun does not rise.
    #[must_use]
    pub fn morning(night: &Night, scene: &Scene, clock_offset_min: f64) -> Option<Self> {
        let sunrise = first_of(night, evening::EventKind::Sunrise)?;
        let ends = (-dark_min(night, sunrise), BEFORE_SUNSET_MIN);
        let told = (SunCourse::Sets, sunrise, ends);
        Some(Self {
            is_morning: true,
            ..Self::between(night, scene, clock_offset_min, told)
        })
    }

    fn between(
        night: &Night,
        scene: &Scene,
        clock_offset_min: f64,
        (sun, anchor_unix_s, (first_min, last_min)): (SunCourse, f64, (f64, f64)),
    ) -> Self {
        let minutes = night.minutes();
        let samples = (last_min - first_min) as usize + 1;
        let open = Scene {
            canopy_share: 1.0,
            ..*scene
        };
        // The night's own minutes do not begin at sunset: take the nearest one.
        let light = |scene: &Scene| -> Vec<f64> {
            (0..samples)
                .map(|n| {
                    let unix_s = anchor_unix_s + 60.0 * (first_min + n as f64);
                    let at = ((unix_s - minutes[0].unix_s) / 60.0).clamp(0.0, 1439.999);
                    let low = at as usize;
                    let share = at - low as f64;
                    let (a, b) = (&minutes[low], &minutes[low + 1]);
                    let (a, b) = (
                        scene.illuminance_lx(a.sun_lx, a.moon_lx),
                        scene.illuminance_lx(b.sun_lx, b.moon_lx),
                    );
                    log_between(a, b, share)
                })
                .gathered()
        };
        let mut events: Vec<Event> = night
            .sky_events()
            .iter()
            .filter_map(|event| {
                let kind = match event.kind {
                    evening::EventKind::Sunset => EventKind::Sunset,
                    evening::EventKind::Sunrise => EventKind::Sunrise,
                    evening::EventKind::CivilDusk => EventKind::CivilTwilightEnds,
                    evening::EventKind::CivilDawn => EventKind::CivilTwilightBegins,
                    evening::EventKind::Moonrise => EventKind::Moonrise,
                    evening::EventKind::Moonset => EventKind::Moonset,
                    _ => return None,
                };
                let minute = (event.unix_s - anchor_unix_s) / 60.0;
                (minute >= first_min && minute <= last_min).then_some(Event { minute, kind })
            })
            .gathered();
        crate::plain::sort_by(&mut events, |a, b| a.minute.total_cmp(&b.minute));
        let clock = anchor_unix_s / 60.0 + clock_offset_min;
        Self {
            sun,
            anchor_unix_s,
            anchor_clock_min: clock - (clock / 1440.0).floor() * 1440.0,
            first_min,
            last_min,
            is_morning: false,
            gets_dark: gets_dark(night),
            open_sky_lx: light(&open),
            scene_lx: light(scene),
            events,
        }
    }

    /// Until when a target is told apart that needs `last_cd_m2` of ground luminance, 0 for
    /// always and infinite for never.
    ///
    /// `spread_dex` is one standard deviation of that luminance and of the light together.
    #[must_use]
    pub fn until(&self, night: &Night, scene: &Scene, last_cd_m2: f64, spread_dex: f64) -> Until {
        let first = self.ground_cd_m2(scene, self.first_min);
        if first < last_cd_m2 {
            return Until::Never;
        }
        night
            .sight_events(scene, last_cd_m2, spread_dex)
            .iter()
            .filter(|event| event.kind == evening::EventKind::Lost)
            .map(|event| Estimate {
                value: (event.unix_s - self.anchor_unix_s) / 60.0,
                spread: event.spread_min,
            })
            .find(|end| end.value >= self.first_min && end.value <= self.last_min)
            .map_or(Until::Throughout, Until::Minute)
    }

    /// Luminance of the scene's ground at a minute in cd/m².
    #[must_use]
    pub fn ground_cd_m2(&self, scene: &Scene, minute: f64) -> f64 {
        scene.ground_reflectance * self.scene_lx(minute) / core::f64::consts::PI
    }

    /// Illuminance where the target stands, in lux, at a minute; held at the ends.
    #[must_use]
    pub fn scene_lx(&self, minute: f64) -> f64 {
        self.sample(&self.scene_lx, minute)
    }

    /// Illuminance under the open sky in lux at a minute; held at the ends.
    #[must_use]
    pub fn open_sky_lx(&self, minute: f64) -> f64 {
        self.sample(&self.open_sky_lx, minute)
    }

    fn sample(&self, series: &[f64], minute: f64) -> f64 {
        let Some(last) = series.len().checked_sub(1) else {
            return 0.0;
        };
        let at = (minute - self.first_min).clamp(0.0, last as f64);
        let low = at as usize;
        log_between(series[low], series[(low + 1).min(last)], at - low as f64)
    }

    /// The local clock at a minute: hours, minutes, and whether the date has changed since
    /// minute 0.
    #[must_use]
    pub fn clock(&self, minute: f64) -> Clock {
        Clock::at((self.anchor_clock_min + minute).round())
    }
}

/// When something first happens in a night, seconds since 1970.
fn first_of(night: &Night, kind: evening::EventKind) -> Option<f64> {
    let events = night.sky_events();
    Some(events.iter().find(|event| event.kind == kind)?.unix_s)
}

fn gets_dark(night: &Night) -> bool {
    night.minutes()[night.midnight()].sun_altitude_deg < NAUTICAL_DEG
}

/// Minutes on the dark side of a sunset or sunrise: to where the Sun stands lowest, where it
/// never gets dark.
fn dark_min(night: &Night, anchor_unix_s: f64) -> f64 {
    if gets_dark(night) {
        return AFTER_SUNSET_MIN;
    }
    let lowest_s = night.minutes()[night.midnight()].unix_s;
    ((lowest_s - anchor_unix_s).abs() / 60.0).max(60.0).ceil()
}

/// Between two lights, by their logarithms.
fn log_between(a: f64, b: f64, share: f64) -> f64 {
    if a <= 0.0 || b <= 0.0 {
        return if share < 0.5 { a } else { b };
    }
    let (log_a, log_b) = (libm::log10(a), libm::log10(b));
    libm::pow(10.0, log_a + share * (log_b - log_a))
}

/// A time of day.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Clock {
    /// 0 to 23.
    pub hour: u32,
    /// 0 to 59.
    pub minute: u32,
    /// The date is one later than at minute 0.
    pub next_day: bool,
}

impl Clock {
    /// The time of day so many whole minutes after a midnight.
    #[must_use]
    pub fn at(minute: f64) -> Self {
        let of_day = (minute as i64).rem_euclid(1440) as u32;
        Self {
            hour: of_day / 60,
            minute: of_day % 60,
            next_day: minute >= 1440.0,
        }
    }
}

impl core::fmt::Display for Clock {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        write!(f, "{:02}:{:02}", self.hour, self.minute)
    }
}

/// Until when something can be told apart.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Until {
    /// Not even in full light.
    Never,
    /// Until this minute, with its spread.
    Minute(Estimate),
    /// All through the strip.
    Throughout,
}

/// A row of the strip: until when one eye or sight tells apart.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Row {
    /// Where the bar ends, px.
    pub end_px: f64,
    /// Left end of the whisker.
    pub whisker_from_px: f64,
    /// Right end of the whisker.
    pub whisker_to_px: f64,
    /// Whether a tick marks the end (it lies on the strip).
    pub ends_here: bool,
}

/// The strip laid out on a width.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Strip {
    /// Left edge of the band in px.
    pub left_px: f64,
    /// Width of the band in px.
    pub width_px: f64,
    /// First minute.
    pub first_min: f64,
    /// Last minute.
    pub last_min: f64,
}

impl Strip {
    /// Where a minute lies, held to the band.
    #[must_use]
    pub fn x_px(&self, minute: f64) -> f64 {
        let t = (minute - self.first_min) / (self.last_min - self.first_min);
        self.left_px + self.width_px * t.clamp(0.0, 1.0)
    }

    /// The minute at a place on the band, held to its ends.
    #[must_use]
    pub fn minute(&self, x_px: f64) -> f64 {
        let t = ((x_px - self.left_px) / self.width_px).clamp(0.0, 1.0);
        self.first_min + t * (self.last_min - self.first_min)
    }

    /// The row for an end.
    #[must_use]
    pub fn row(&self, until: Until) -> Row {
        let (end, from, to, ends_here) = match until {
            Until::Never => (self.first_min, self.first_min, self.first_min, false),
            Until::Throughout => (self.last_min, self.last_min, self.last_min, false),
            Until::Minute(m) => (
                m.value,
                m.value - m.spread,
                m.value + m.spread,
                m.value >= self.first_min && m.value <= self.last_min,
            ),
        };
        Row {
            end_px: self.x_px(end),
            whisker_from_px: self.x_px(from),
            whisker_to_px: self.x_px(to),
            ends_here,
        }
    }

    /// Minutes of the half hours of the local clock, with the clock there.
    #[must_use]
    pub fn ticks(&self, evening: &Evening) -> Vec<(f64, Clock)> {
        let first = evening.anchor_clock_min + self.first_min;
        let mut minute = (first / 30.0).ceil() * 30.0 - evening.anchor_clock_min;
        let mut ticks = Vec::new();
        while minute <= self.last_min {
            ticks.push((minute, evening.clock(minute)));
            minute += 30.0;
        }
        ticks
    }

    /// The colours of the band every `step_min` minutes: share of the width, colour.
    #[must_use]
    pub fn band(&self, evening: &Evening, step_min: f64) -> Vec<(f64, Srgb)> {
        let span = self.last_min - self.first_min;
        let steps = (span / step_min).ceil().max(1.0) as usize;
        (0..=steps)
            .map(|n| {
                let share = n as f64 / steps as f64;
                let lx = evening.open_sky_lx(self.first_min + share * span);
                (share, dusk_colour(lx))
            })
            .gathered()
    }
}

/// Of labels at `(x, width)`, in order of importance, those that do not touch a more
/// important one: true is kept.
#[must_use]
pub fn without_collisions(labels: &[(f64, f64)], gap_px: f64) -> Vec<bool> {
    let mut kept: Vec<(f64, f64)> = Vec::new();
    labels
        .iter()
        .map(|&(x, width)| {
            let (left, right) = (x - 0.5 * width - gap_px, x + 0.5 * width + gap_px);
            let free = kept.iter().all(|&(a, b)| right < a || left > b);
            if free {
                kept.push((x - 0.5 * width, x + 0.5 * width));
            }
            free
        })
        .gathered()
}
