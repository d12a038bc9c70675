//! The dusk strip: one evening at one place as a band of light over a line of time.

use super::colour::{Srgb, dusk_colour};
use crate::quantity::Estimate;
use crate::sky::ground::Cloud;
use crate::sky::illuminance::{clear_sky_illuminance_lx, moon_illuminance_lx};
use crate::sky::moon::moon_position;
use crate::sky::place::Place;
use crate::sky::sun::sun_altitude_deg;

/// The strip begins this many minutes before sunset.
pub const BEFORE_SUNSET_MIN: f64 = 20.0;
/// And ends this many after, unless it never gets dark.
pub const AFTER_SUNSET_MIN: f64 = 130.0;
/// True altitude of the Sun's centre at sunset: refraction and half its disc.
pub const SUNSET_ALTITUDE_DEG: f64 = -0.833;
/// End of civil twilight.
pub const CIVIL_ALTITUDE_DEG: f64 = -6.0;
/// Darker than this it counts as dark.
pub const DARK_ALTITUDE_DEG: f64 = -12.0;

/// What the minutes are counted from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Anchor {
    /// Sunset.
    Sunset,
    /// The Sun does not set: an hour before it stands lowest.
    SunStaysUp,
    /// The Sun does not rise: an hour before it stands lowest.
    SunStaysDown,
}

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
    /// The Sun stands 6° under the horizon.
    CivilTwilightEnds,
    /// The Moon comes up.
    Moonrise,
    /// The Moon goes down.
    Moonset,
}

/// One evening: its light minute by minute and what happens in it.
#[derive(Clone, Debug, PartialEq)]
pub struct Evening {
    /// What the minutes count from.
    pub anchor: Anchor,
    /// Seconds since 1970 at minute 0.
    pub anchor_unix_s: f64,
    /// Local clock at minute 0, in minutes after midnight.
    pub anchor_clock_min: f64,
    /// First minute of the strip.
    pub first_min: f64,
    /// Last minute of the strip.
    pub last_min: f64,
    /// Whether it gets darker than nautical twilight before the Sun comes back.
    pub gets_dark: bool,
    /// Illuminance under the open sky every minute from the first, in lux, cloud included.
    pub open_sky_lx: Vec<f64>,
    /// Events on the strip, by time.
    pub events: Vec<Event>,
}

impl Evening {
    /// The evening after `noon_unix_s` (local noon or any time of that afternoon) at a place,
    /// `clock_offset_min` minutes ahead of UTC.
    ///
    /// # Validity
    /// As the sky models: clear sky to ±30 % till civil dusk, a factor of 2 beyond; cloud to a
    /// factor of 2 to 3.
    #[must_use]
    pub fn at(place: &Place, noon_unix_s: f64, clock_offset_min: f64, cloud: Cloud) -> Self {
        let altitude = |minutes: f64| sun_altitude_deg(noon_unix_s + 60.0 * minutes, place);
        let lowest = (0..1440).map(f64::from).fold(0.0, |best: f64, minute| {
            if altitude(minute) < altitude(best) {
                minute
            } else {
                best
            }
        });
        let sunset = (0..1440).map(f64::from).find(|minute| {
            altitude(*minute) >= SUNSET_ALTITUDE_DEG && altitude(minute + 1.0) < SUNSET_ALTITUDE_DEG
        });
        let (anchor, anchor_min) = match sunset {
            Some(minute) => {
                let (a, b) = (altitude(minute), altitude(minute + 1.0));
                (Anchor::Sunset, minute + (a - SUNSET_ALTITUDE_DEG) / (a - b))
            }
            None if altitude(lowest) >= SUNSET_ALTITUDE_DEG => (Anchor::SunStaysUp, lowest - 60.0),
            None => (Anchor::SunStaysDown, lowest - 60.0),
        };
        let gets_dark = altitude(lowest) < DARK_ALTITUDE_DEG;
        let last_min = if gets_dark {
            AFTER_SUNSET_MIN
        } else {
            (lowest - anchor_min).max(60.0).ceil()
        };
        let anchor_unix_s = noon_unix_s + 60.0 * anchor_min;
        let at = |minute: f64| anchor_unix_s + 60.0 * minute;
        let first_min = -BEFORE_SUNSET_MIN;
        let samples = (last_min - first_min) as usize + 1;
        let factor = cloud.factor().usual;
        let open_sky_lx = (0..samples)
            .map(|n| {
                let t = at(first_min + n as f64);
                let moon = moon_position(t, place);
                let sun_lx = clear_sky_illuminance_lx(sun_altitude_deg(t, place));
                let moon_lx =
                    moon_illuminance_lx(moon.altitude_deg, moon.phase_angle_deg, moon.parallax_deg);
                (sun_lx + moon_lx) * factor
            })
            .collect();
        let mut events = Vec::new();
        if anchor == Anchor::Sunset {
            events.push(Event {
                minute: 0.0,
                kind: EventKind::Sunset,
            });
        }
        let sun = |minute: f64| sun_altitude_deg(at(minute), place);
        let moon = |minute: f64| moon_position(at(minute), place).altitude_deg;
        for n in 1..samples {
            let (a, b) = (first_min + n as f64 - 1.0, first_min + n as f64);
            if sun(a) >= CIVIL_ALTITUDE_DEG && sun(b) < CIVIL_ALTITUDE_DEG {
                events.push(Event {
                    minute: b,
                    kind: EventKind::CivilTwilightEnds,
                });
            }
            let (before, after) = (moon(a) > -0.833, moon(b) > -0.833);
            if before != after {
                events.push(Event {
                    minute: b,
                    kind: if after {
                        EventKind::Moonrise
                    } else {
                        EventKind::Moonset
                    },
                });
            }
        }
        Self {
            anchor,
            anchor_unix_s,
            anchor_clock_min: ((anchor_unix_s / 60.0 + clock_offset_min) % 1440.0 + 1440.0)
                % 1440.0,
            first_min,
            last_min,
            gets_dark,
            open_sky_lx,
            events,
        }
    }

    /// Illuminance under the open sky in lux at a minute, log-linear between the samples and
    /// held at the ends.
    #[must_use]
    pub fn open_sky_lx(&self, minute: f64) -> f64 {
        let Some(last) = self.open_sky_lx.len().checked_sub(1) else {
            return 0.0;
        };
        let at = (minute - self.first_min).clamp(0.0, last as f64);
        let low = at as usize;
        let (a, b) = (self.open_sky_lx[low], self.open_sky_lx[(low + 1).min(last)]);
        if a <= 0.0 || b <= 0.0 {
            return a.max(b).max(0.0);
        }
        let (log_a, log_b) = (libm::log10(a), libm::log10(b));
        libm::pow(10.0, log_a + (at - low as f64) * (log_b - log_a))
    }

    /// The local clock at a minute: hours, minutes, and whether the date has changed since
    /// minute 0.
    #[must_use]
    pub fn clock(&self, minute: f64) -> Clock {
        let total = (self.anchor_clock_min + minute).round();
        let of_day = ((total % 1440.0) + 1440.0) % 1440.0;
        Clock {
            hour: (of_day / 60.0) as u32,
            minute: (of_day % 60.0) as u32,
            next_day: total >= 1440.0,
        }
    }
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
            .collect()
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
        .collect()
}
