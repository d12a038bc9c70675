//! Sayings about dusk, snow, cloud and the Moon.

use super::case::{Case, exact, graded, graded_down, saying, with_spread};
use crate::advice::dusk::Glass;
use crate::advice::report::{Quantity as Q, Saying, SayingKey as K, Verdict};
use crate::eye::labels::twilight_number;
use crate::quantity::Estimate;
use crate::sky::ground::{self, Cloud, Ground, Scene, Setting, snow_gain};
use crate::sky::{Place, illuminance, moon, sun};

pub(super) fn all(case: &Case) -> Vec<Saying> {
    let (down, up) = turn_down_and_up(case);
    vec![
        down,
        up,
        twilight_number_decides(case),
        snow_doubles_the_light(case),
        cloud_costs_twenty_minutes(case),
        moon_needs_electronics(case),
    ]
}

/// "Turn it down when it gets dark" and "turn it up when it gets dark".
///
/// The power of the zoom that serves latest, and the minutes that its two ends lose against
/// it.
///
/// Effects of both: best power · minutes lost at the top · minutes lost at the lowest power ·
/// top power. Turn it down: true where the top loses a minute, half from 0.3 min. Turn it up:
/// false where the top loses a minute, true where it loses less than 0.3 min and the lowest
/// power at least one, else half.
fn turn_down_and_up(case: &Case) -> (Saying, Saying) {
    let zoom = case.zoom();
    let best = case.dusk.latest(&zoom);
    let lost = |magnification: f64| {
        let gain = case.dusk.gain_min(&Glass::of(&zoom, magnification), &best);
        Estimate::new(gain.value.max(0.0), gain.spread)
    };
    let top = lost(zoom.magnification_high);
    let low = lost(zoom.magnification_low);
    let effects = [
        exact(Q::Magnification, best.magnification),
        with_spread(Q::MinutesTonight, top),
        with_spread(Q::MinutesTonight, low),
        exact(Q::Magnification, zoom.magnification_high),
    ];
    let up = if top.value >= 1.0 {
        Verdict::False
    } else if top.value < 0.3 && low.value >= 1.0 {
        Verdict::True
    } else {
        Verdict::Half
    };
    (
        saying(K::TurnDownWhenDark, graded(top.value, 1.0, 0.3), &effects),
        saying(K::TurnUpWhenDark, up, &effects),
    )
}

/// "The twilight number decides."
///
/// 8 × 50 and 10 × 40 have the same twilight number, √(M·D) = 20: minutes tonight between
/// them.
///
/// Effects: twilight number · minutes tonight. False where they differ by a minute, half from
/// 0.3 min, else true.
fn twilight_number_decides(case: &Case) -> Saying {
    let gain = case
        .dusk
        .gain_min(&Glass::good(10.0, 40.0), &Glass::good(8.0, 50.0));
    saying(
        K::TwilightNumberDecides,
        graded_down(gain.value.abs(), 0.3, 1.0),
        &[
            exact(Q::Ratio, twilight_number(8.0, 50.0)),
            with_spread(Q::MinutesTonight, gain),
        ],
    )
}

/// "Snow doubles the light."
///
/// By reflection between ground and sky the light grows 1.06 times under a clear and twice
/// under a closed sky; but the ground itself is an order brighter than grass and dark game
/// stands out far better.
///
/// Effects: ratio of light, clear · ratio of light, overcast · ratio of ground luminance ·
/// contrast on this ground · contrast on snow. By the mean light over this person's clear and
/// closed skies: true from 1.8, half from 1.2.
fn snow_doubles_the_light(case: &Case) -> Saying {
    let snow = Ground::FreshSnow.reflectance().usual;
    let floor = case.dusk.scene.ground_reflectance;
    let ratio = |cloud: Cloud| snow_gain(snow, cloud) / snow_gain(floor, cloud);
    let (clear, overcast) = (ratio(Cloud::Clear), ratio(Cloud::Overcast));
    let share = case.need.light.cloud_share.clamp(0.0, 1.0);
    let on_snow = case.dusk.coat.map_or(case.dusk.contrast, |coat| {
        ground::contrast(coat, snow, Setting::StandingOnGround)
    });
    saying(
        K::SnowDoublesTheLight,
        graded((1.0 - share) * clear + share * overcast, 1.8, 1.2),
        &[
            exact(Q::Ratio, clear),
            exact(Q::Ratio, overcast),
            exact(Q::Ratio, clear * snow / floor),
            exact(Q::Contrast, case.dusk.contrast),
            exact(Q::Contrast, on_snow),
        ],
    )
}

/// "Cloud costs twenty minutes."
///
/// The end of telling apart under a closed sky (a third of the light) and under a dark rain
/// cloud (a tenth) against a clear one.
///
/// Effects: minutes tonight, closed · minutes tonight, dark (both negative). True where the
/// closed sky costs 15 min, half from 4 min, else false.
fn cloud_costs_twenty_minutes(case: &Case) -> Saying {
    let last = case
        .dusk
        .last_cd_m2(&case.dusk.latest(&case.sight))
        .max(1e-6);
    let clear = case.dusk.minutes_at(last);
    let change = |cloud: Cloud| {
        let scene = Scene {
            cloud,
            ..case.dusk.scene
        };
        // Nine in ten of such skies lie between the least and the most.
        let factor = cloud.factor();
        let end = |share: f64| case.dusk.minutes_at(last / share);
        Estimate::new(
            case.dusk.minutes_under(&scene, last) - clear,
            0.5 * (end(factor.most) - end(factor.least)).abs() / 1.645,
        )
    };
    let overcast = change(Cloud::Overcast);
    saying(
        K::CloudCostsTwentyMinutes,
        graded(-overcast.value, 15.0, 4.0),
        &[
            with_spread(Q::MinutesTonight, overcast),
            with_spread(Q::MinutesTonight, change(Cloud::Dark)),
        ],
    )
}

/// Steps of the Moon's night, s.
const STEP_S: f64 = 900.0;
/// A night counts with so many such steps: an hour.
const STEPS: usize = 4;

/// "By the Moon one needs electronics."
///
/// Of 30 nights around the middle of the season, those with at least an hour after the end of
/// nautical dusk in which the clear Moon lights this ground enough for the sight.
///
/// Effects: nights of 30 · cd/m² needed. True below 3 nights, half below 15, else false.
fn moon_needs_electronics(case: &Case) -> Saying {
    let last = case.dusk.last_cd_m2(&case.dusk.latest(&case.sight));
    let nights = moonlit_nights(case, last);
    saying(
        K::MoonNeedsElectronics,
        graded_down(nights, 2.5, 14.5),
        &[exact(Q::Nights, nights), exact(Q::LuminanceCdM2, last)],
    )
}

fn moonlit_nights(case: &Case, last_cd_m2: f64) -> f64 {
    let latitude = case.need.place.latitude_deg.value.clamp(-90.0, 90.0);
    let longitude = case
        .need
        .place
        .longitude_deg_east
        .value
        .clamp(-180.0, 180.0);
    let Ok(place) = Place::new(latitude, longitude) else {
        return 0.0;
    };
    let scene: &Scene = &case.dusk.scene;
    let noon_s = crate::advice::dusk::noon_s(case.dusk.day_of_year, longitude);
    let mut nights = 0.0;
    for night in -15..15 {
        let from = noon_s + 86_400.0 * f64::from(night) + 4.0 * 3600.0;
        let mut lit = 0;
        for step in 0..64 {
            let unix_s = from + STEP_S * f64::from(step);
            let sun_deg = sun::sun_altitude_deg(unix_s, &place);
            if sun_deg > -12.0 {
                continue;
            }
            let moon = moon::moon_position(unix_s, &place);
            let moon_lx = illuminance::moon_illuminance_lx(
                moon.altitude_deg,
                moon.phase_angle_deg,
                moon.parallax_deg,
            );
            let sun_lx = illuminance::clear_sky_illuminance_lx(sun_deg);
            if scene.ground_luminance_cd_m2(sun_lx, moon_lx) >= last_cd_m2 {
                lit += 1;
            }
        }
        if lit >= STEPS {
            nights += 1.0;
        }
    }
    nights
}
