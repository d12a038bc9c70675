//! What the pictures may and may not do: never invent contrast, never grow lighter in the
//! dark, keep one line of time.

use scopewright::drawing::colour::Hue;
use scopewright::drawing::dusk::{Evening, EventKind, Strip, Until, without_collisions};
use scopewright::drawing::scene::{Light, line_colour, share_above_threshold, shown};
use scopewright::drawing::silhouette::{Figure, silhouette};
use scopewright::drawing::view::{
    Cutout, Paint, px_per_cm, px_per_label_mrad, px_per_mrad, reticle_layers,
};
use scopewright::eye::{Eye, Optics};
use scopewright::quantity::Estimate;
use scopewright::sight::reticle::reticle;
use scopewright::sight::{FocalPlane, ReticleFamily};
use scopewright::sky::evening::{Night, SunCourse};
use scopewright::sky::ground::{Cloud, Scene};
use scopewright::sky::place::Place;

fn roe() -> Figure {
    silhouette("roe_deer", Some(70.0), 115.0).unwrap()
}

fn light(illuminance_lx: f64) -> Light {
    Light {
        illuminance_lx,
        ground_reflectance: 0.08,
        dark_reflectance: 0.11,
        light_reflectance: 0.6,
        wood_reflectance: 0.05,
        sp_ratio: 2.5,
        veil: 1.2,
        ground_hue: Hue::GRASS,
        coat_hue: Hue::COAT,
    }
}

fn scene() -> Scene {
    Scene {
        cloud: Cloud::Clear,
        canopy_share: 0.5,
        ground_reflectance: 0.08,
        town_mag_arcsec2: None,
    }
}

fn evening(latitude_deg: f64, noon_unix_s: f64) -> (Night, Evening) {
    let place = Place::new(latitude_deg, 10.0).unwrap();
    let night = Night::from_noon(noon_unix_s, &place).unwrap();
    let evening = Evening::of(&night, &scene(), 120.0);
    (night, evening)
}

/// 1 October 2026 and 21 June 2027, noon UTC.
const OCTOBER: f64 = 1_790_856_000.0;
const JUNE: f64 = 1_813_579_200.0;

#[test]
fn only_what_exceeds_the_threshold_is_left() {
    assert_eq!(share_above_threshold(0.0), 0.0);
    assert_eq!(share_above_threshold(-3.0), 0.0);
    assert_eq!(share_above_threshold(f64::NAN), 0.0);
    // A contrast of ten times the threshold keeps nine tenths of itself.
    assert!((share_above_threshold(1.0) - 0.9).abs() < 1e-12);
    assert!(share_above_threshold(6.0) < 1.0 + 1e-12);
}

#[test]
fn a_figure_fades_with_the_light_and_with_the_range() {
    let eye = Eye::of_age(46.0).unwrap();
    let optics = Optics::sight(8.0, 56.0, 0.9);
    let figure = roe();
    let mut last: Option<Vec<f64>> = None;
    let mut luminance = f64::INFINITY;
    for step in 0..60 {
        let lx = libm::pow(10.0, 3.0 - 0.1 * f64::from(step));
        let now = shown(&figure, &light(lx), 80.0, &eye, &optics);
        if let Some(before) = &last {
            for (a, b) in now.left.iter().zip(before) {
                assert!(*a <= b + 1e-9, "lx {lx}: {a} after {b}");
            }
        }
        assert!(now.ground.relative_luminance() <= luminance + 1e-3);
        luminance = now.ground.relative_luminance();
        last = Some(now.left);
    }
    assert!(
        last.unwrap().iter().all(|left| *left == 0.0),
        "nothing is left at 10^-3 lx"
    );
    let at = |range_m| shown(&figure, &light(1.0), range_m, &eye, &optics).body_margin;
    assert!(at(50.0) > at(100.0) && at(100.0) > at(400.0));
}

#[test]
fn a_night_without_any_light_is_drawn_too() {
    let eye = Eye::of_age(46.0).unwrap();
    for optics in [Optics::bare_eye(), Optics::sight(50.0, 56.0, 0.9)] {
        let now = shown(&roe(), &light(0.0), 1500.0, &eye, &optics);
        assert!(now.left.iter().all(|left| *left == 0.0));
        let (_, left) = line_colour(&now, &light(0.0), 0.04, &eye, &optics);
        assert_eq!(left, 0.0);
    }
}

#[test]
fn a_thicker_line_is_never_harder_to_see() {
    let eye = Eye::of_age(60.0).unwrap();
    let optics = Optics::sight(6.0, 42.0, 0.9);
    let now = shown(&roe(), &light(0.1), 80.0, &eye, &optics);
    let left = |mrad| line_colour(&now, &light(0.1), mrad, &eye, &optics).1;
    let mut before = 0.0;
    for step in 1..40 {
        let now = left(0.02 * f64::from(step));
        assert!(now >= before);
        before = now;
    }
    // Practice has it that by such light only bars of 30 to 50 mm at 100 m and more still serve.
    assert!(
        left(0.1) == 0.0 && left(0.8) > 0.3,
        "{} {}",
        left(0.1),
        left(0.8)
    );
}

#[test]
fn a_minute_and_its_place_lead_back_to_each_other() {
    let strip = Strip {
        left_px: 1.0,
        width_px: 326.0,
        first_min: -20.0,
        last_min: 130.0,
    };
    for minute in -20..=130 {
        let minute = f64::from(minute);
        assert!((strip.minute(strip.x_px(minute)) - minute).abs() < 1e-9);
    }
    assert_eq!(strip.x_px(-500.0), 1.0);
    assert_eq!(strip.x_px(500.0), 327.0);
    let row = strip.row(Until::Minute(Estimate::new(30.0, 5.0)));
    assert!(row.ends_here && row.whisker_from_px < row.end_px && row.end_px < row.whisker_to_px);
    assert!(!strip.row(Until::Never).ends_here);
    assert_eq!(strip.row(Until::Throughout).end_px, 327.0);
}

#[test]
fn an_october_evening_has_its_sunset_and_grows_dark() {
    let (night, evening) = evening(51.0, OCTOBER);
    assert_eq!(evening.sun, SunCourse::Sets);
    assert!(evening.gets_dark);
    assert_eq!((evening.first_min, evening.last_min), (-20.0, 130.0));
    // Prototype evening at 51° N, 10° E: sunset near 18:58 summer time, civil dusk half an
    // hour later (almanac values, computed with independent libraries).
    assert_eq!(evening.clock(0.0).to_string(), "18:58");
    let civil = evening
        .events
        .iter()
        .find(|event| event.kind == EventKind::CivilTwilightEnds)
        .unwrap();
    assert!((civil.minute - 32.5).abs() < 1.5, "{}", civil.minute);
    // 19:30 is 32 minutes on: 4.05 lx under the clear sky.
    let lx = evening.open_sky_lx(32.0);
    assert!((libm::log10(lx / 4.05)).abs() < 0.05, "{lx}");
    // Cover halves it.
    assert!((evening.scene_lx(32.0) / lx - 0.5).abs() < 0.01);
    let until = |cd_m2| evening.until(&night, &scene(), cd_m2, 0.2);
    assert_eq!(until(0.0), Until::Throughout);
    assert_eq!(until(f64::INFINITY), Until::Never);
    let Until::Minute(late) = until(0.005) else {
        panic!("lost at some minute")
    };
    let Until::Minute(early) = until(0.05) else {
        panic!("lost at some minute")
    };
    assert!(early.value < late.value && early.spread > 0.0);
}

#[test]
fn a_morning_is_its_evening_the_other_way_round() {
    let (night, evening) = evening(51.0, OCTOBER);
    let morning = Evening::morning(&night, &scene(), 120.0).unwrap();
    assert_eq!((morning.first_min, morning.last_min), (-130.0, 20.0));
    assert!(morning.is_morning && !evening.is_morning);
    assert!(morning.anchor_unix_s > evening.anchor_unix_s + 6.0 * 3600.0);
    let at = |kind| {
        morning
            .events
            .iter()
            .find(|event| event.kind == kind)
            .map(|event| event.minute)
    };
    assert!(at(EventKind::Sunrise).unwrap().abs() < 1e-6);
    // Civil twilight lasts as long at both ends of a night; the Sun's declination moves by less
    // than half a degree meanwhile.
    let civil = at(EventKind::CivilTwilightBegins).unwrap();
    assert!((civil + 32.5).abs() < 2.0, "{civil}");
    for minute in [-15.0, 0.0, 15.0, 30.0] {
        let (dusk, dawn) = (evening.open_sky_lx(minute), morning.open_sky_lx(-minute));
        assert!(
            libm::log10(dusk / dawn).abs() < 0.1,
            "{minute}: {dusk} {dawn}"
        );
    }
    assert!(morning.open_sky_lx(-130.0) < morning.open_sky_lx(0.0));
    // Where the Sun does not rise there is no morning.
    let polar = Place::new(80.0, 10.0).unwrap();
    let night = Night::from_noon(1_797_768_000.0, &polar).unwrap();
    assert!(Evening::morning(&night, &scene(), 0.0).is_none());
}

#[test]
fn a_summer_night_in_the_north_ends_where_the_sun_stands_lowest() {
    let (_, light_night) = evening(60.0, JUNE);
    assert_eq!(light_night.sun, SunCourse::Sets);
    assert!(!light_night.gets_dark);
    let (_, midnight_sun) = evening(70.0, JUNE);
    assert_eq!(midnight_sun.sun, SunCourse::StaysUp);
    assert!(!midnight_sun.gets_dark);
    for evening in [&light_night, &midnight_sun] {
        assert!(evening.last_min >= 60.0);
        assert_eq!(
            evening.open_sky_lx.len(),
            (evening.last_min - evening.first_min) as usize + 1
        );
        assert!(evening.open_sky_lx.iter().all(|lx| *lx > 0.0));
    }
}

#[test]
fn of_two_labels_that_touch_the_lesser_goes() {
    assert_eq!(
        without_collisions(&[(50.0, 40.0), (80.0, 40.0), (200.0, 40.0)], 4.0),
        [true, false, true]
    );
    assert_eq!(without_collisions(&[], 4.0), Vec::<bool>::new());
}

#[test]
fn every_reticle_is_drawn_at_every_power_and_range() {
    let window = Cutout {
        width_px: 328.0,
        height_px: 148.0,
        field_px: 328.0,
    };
    let eye = Eye::of_age(46.0).unwrap();
    for family in ReticleFamily::ALL {
        let reticle = reticle(family);
        for power in [1.0, 4.0, 50.0] {
            let at_target = px_per_mrad(window.field_px, 22.0, power);
            for plane in [FocalPlane::First, FocalPlane::Second] {
                let per_label = px_per_label_mrad(plane, at_target, 50.0, power);
                let layers = reticle_layers(&reticle, per_label, (164.5, 74.5), &window);
                assert!(!layers.is_empty());
                for layer in layers {
                    assert!(!layer.path.contains("NaN") && !layer.path.contains("inf"));
                    if let Paint::Stroke { width_px } = layer.paint {
                        assert!(width_px > 0.0 && width_px.is_finite());
                    }
                }
            }
            for range_m in [5.0, 1500.0] {
                let optics = Optics::sight(power, 50.0, 0.9);
                let scene = shown(&roe(), &light(100.0), range_m, &eye, &optics);
                assert!(scene.left.iter().all(|left| left.is_finite()));
                assert!(px_per_cm(at_target, range_m) > 0.0);
            }
        }
    }
}
