//! Sun, Moon and light on the ground against ephemerides, published bands and tables.
//!
//! Every source is one function; `every_source_agrees` runs them all, counts the values
//! and prints the sum.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    reason = "a test stops where it fails"
)]

mod tally;

use core::f64::consts::PI;

use scopewright::sky::evening::{EventKind, Sighting, SunCourse};
use scopewright::sky::ground::{
    Canopy, Cloud, Coat, Ground, Scene, Setting, clearing_share, contrast, ride_share, snow_gain,
};
use scopewright::sky::illuminance::{
    clear_sky_illuminance_lx, moon_illuminance_lx, moon_phase_magnitudes, town_illuminance_lx,
};
use scopewright::sky::moon::moon_position;
use scopewright::sky::sun::{sun_altitude_deg, sun_position};
use scopewright::sky::{Night, Place, air, place};
use tally::{Checked, Tally};

/// Seconds since 1970 of a civil date in UTC (days from civil, Hinnant 2013).
fn unix_s(year: i64, month: i64, day: i64, hour: f64) -> f64 {
    let y = if month <= 2 { year - 1 } else { year };
    let era = y.div_euclid(400);
    let yoe = y - era * 400;
    let doy = (153 * ((month + 9) % 12) + 2) / 5 + day - 1;
    let doe = yoe * 365 + yoe / 4 - yoe / 100 + doy;
    (era * 146_097 + doe - 719_468) as f64 * 86_400.0 + hour * 3600.0
}

fn instant(utc: &str) -> f64 {
    let n = |from: usize, to: usize| utc[from..to].parse::<i64>().unwrap();
    let hour = n(11, 13) as f64 + n(14, 16) as f64 / 60.0;
    unix_s(n(0, 4), n(5, 7), n(8, 10), hour)
}

fn turned(a: f64, b: f64) -> f64 {
    (a - b + 540.0).rem_euclid(360.0) - 180.0
}

/// JPL DE421 through skyfield, libastro through ephem, NREL SPA through pvlib: 28 rows.
/// Tolerances: the largest errors of the truncated series over 3000 samples (Sun 0.0108°,
/// Moon 0.029°, phase angle 0.026°, lit share 0.0002, distance 86 km), rounded up; libastro
/// differs from JPL by up to 0.0014°. Azimuths by the same errors over the cosine of the
/// altitude.
fn ephemeris() -> Checked {
    let mut t = Tally::of("JPL DE421, libastro and NREL SPA positions");
    let text = include_str!("data/light/ephemeris_check.csv");
    let mut lines = text.lines().filter(|line| !line.starts_with('#'));
    let names: Vec<&str> = lines.next().unwrap().split(',').collect();
    for line in lines {
        let row: Vec<&str> = line.split(',').collect();
        let column = |name: &str| -> f64 {
            let i = names.iter().position(|n| *n == name).unwrap();
            row[i].parse().unwrap()
        };
        let when = instant(row[0]);
        let place = Place::new(column("lat_deg"), column("lon_deg_east")).unwrap();
        let sun = sun_position(when, &place);
        let moon = moon_position(when, &place);
        let what = row[0];
        for name in ["sun_alt_skyfield", "sun_alt_ephem", "sun_alt_pvlib_spa"] {
            t.within(
                format!("{name} {what}"),
                sun.altitude_deg,
                column(name),
                0.012,
            );
        }
        let off = 0.015 / libm::cos(sun.altitude_deg * PI / 180.0);
        let apart = turned(sun.azimuth_deg, column("sun_az_skyfield"));
        t.within(format!("Sun's azimuth {what}"), apart, 0.0, off);
        for name in ["moon_alt_skyfield", "moon_alt_ephem"] {
            t.within(
                format!("{name} {what}"),
                moon.altitude_deg,
                column(name),
                0.032,
            );
        }
        let off = 0.04 / libm::cos(moon.altitude_deg * PI / 180.0);
        let apart = turned(moon.azimuth_deg, column("moon_az_skyfield"));
        t.within(format!("Moon's azimuth {what}"), apart, 0.0, off);
        t.within(
            format!("phase {what}"),
            moon.phase_angle_deg,
            column("moon_phase_angle_skyfield"),
            0.04,
        );
        t.within(
            format!("fraction {what}"),
            moon.illuminated_fraction,
            column("moon_illum_frac_skyfield"),
            0.0005,
        );
        t.within(
            format!("distance {what}"),
            moon.distance_km,
            column("moon_dist_km_skyfield"),
            90.0,
        );
    }
    t.done()
}

/// The crate solar-positioning 0.7.2 (NREL SPA, ±0.0003°), over a grid of times and places
/// between 1975 and 2060. Tolerance 0.012°: the Almanac's low-precision formula between
/// 2015 and 2045; 0.02° outside.
fn spa() -> Checked {
    use solar_positioning::{Location, SolarPositions, time::JulianDate};
    let mut t = Tally::of("NREL SPA through the crate solar-positioning 0.7.2");
    let positions = SolarPositions::new();
    for year in [1975, 1995, 2015, 2026, 2035, 2045, 2060] {
        for (month, day) in [(1, 3), (3, 20), (5, 9), (6, 21), (8, 14), (10, 1), (12, 22)] {
            for (latitude, longitude, hour) in [
                (51.0, 10.0, 16.5),
                (57.0, -4.0, 21.25),
                (-33.0, 151.0, 7.75),
                (0.0, -180.0, 18.0),
                (69.0, 180.0, 3.5),
            ] {
                let when = unix_s(year, month, day, hour);
                let jd = JulianDate::new(when / 86_400.0 + 2_440_587.5, 69.2).unwrap();
                let stated = positions
                    .at_from_julian(
                        jd,
                        Location {
                            latitude,
                            longitude,
                        },
                        0.0,
                        None,
                    )
                    .unwrap()
                    .elevation_angle();
                let place = Place::new(latitude, longitude).unwrap();
                let off = if (2015..=2045).contains(&year) {
                    0.012
                } else {
                    0.02
                };
                t.within(
                    format!("{year}-{month}-{day} {latitude} {longitude}"),
                    sun_altitude_deg(when, &place),
                    stated,
                    off,
                );
            }
        }
    }
    t.done()
}

/// Explanatory Supplement 1992, chapter 9, computed independently. Tolerance: the printed
/// digits.
fn supplement() -> Checked {
    let mut t = Tally::of("Explanatory Supplement 1992, clear-sky illuminance");
    for (h, lx) in [
        (60.0, 103_100.0),
        (20.0, 27_380.0),
        (10.0, 11_120.0),
        (5.0, 4538.0),
        (0.0, 759.0),
        (-0.833, 454.0),
        (-1.0, 405.0),
        (-2.0, 189.0),
        (-3.0, 79.1),
        (-4.0, 29.9),
        (-5.0, 10.4),
        (-6.0, 3.41),
        (-7.0, 1.086),
        (-8.0, 0.348),
        (-9.0, 0.116),
        (-10.0, 0.0421),
        (-11.0, 0.0171),
        (-12.0, 0.008_06),
        (-13.0, 0.004_56),
        (-14.0, 0.002_92),
        (-15.0, 0.002_02),
        (-16.0, 0.001_44),
        (-17.0, 0.001_00),
        (-18.0, 0.000_645),
    ] {
        t.close(h, clear_sky_illuminance_lx(h), lx, 0.005);
    }
    // Six digits where they were kept.
    for (h, lx) in [
        (0.0, 758.58),
        (-3.0, 79.068),
        (-6.0, 3.4116),
        (-7.0, 1.0861),
        (-8.0, 0.348_06),
        (-9.0, 0.116_39),
        (-10.0, 0.042_106),
        (-12.0, 0.008_056_5),
        (-18.0, 6.447e-4),
        (-20.0, 5.0e-4),
        (-50.0, 5.0e-4),
    ] {
        t.close(h, clear_sky_illuminance_lx(h), lx, 1e-4);
    }
    t.done()
}

/// U.S. Naval Observatory 1996: a Chebyshev fit of degree 24 to Brown's (1952) measured
/// curve of natural illumination, coded here from its published coefficients.
fn naval_observatory_lx(h: f64) -> f64 {
    const C: [f64; 25] = [
        2.936_506_136_978_837,
        3.627_326_327_566_49,
        -2.233_214_447_344_062,
        1.015_115_465_301_055,
        -0.189_808_312_501_644_2,
        -0.262_060_196_518_322_5,
        0.382_958_182_985_166_6,
        -0.287_968_399_547_419_7,
        0.113_448_713_023_254_2,
        0.030_924_924_719_137_35,
        -0.098_538_204_139_781_47,
        0.089_769_829_483_788_92,
        -0.041_518_393_677_228_18,
        -0.005_982_465_090_666_525,
        0.029_137_319_782_651_27,
        -0.028_323_677_504_893_38,
        0.013_269_010_819_595_83,
        0.003_365_892_788_214_903,
        -0.011_235_787_612_005_69,
        0.009_862_218_049_840_636,
        -0.003_690_281_457_418_281,
        -0.001_338_196_406_378_107,
        0.005_060_420_921_563_732,
        -0.003_079_727_252_974_708,
        0.002_969_002_584_378_676,
    ];
    let s = (h - 35.0) / 55.0;
    let (mut w1, mut w2) = (0.0, 0.0);
    for c in C[1..].iter().rev() {
        (w1, w2) = (2.0 * s * w1 - w2 + c, w1);
    }
    libm::pow(10.0, s * w1 - w2 + C[0])
}

/// That fit against ours: 12 % from 20° to −11°, leaving out −0.9 to 5°, where it takes
/// the refracted altitude; 45 % from −12 to −18°, where the published fits part.
fn naval_observatory() -> Checked {
    let mut t = Tally::of("USNO 1996 on Brown 1952, natural illumination");
    for h in [
        60.0, 20.0, 10.0, -1.0, -2.0, -3.0, -4.0, -5.0, -6.0, -7.0, -8.0, -9.0, -10.0, -11.0,
    ] {
        let stated = naval_observatory_lx(h);
        t.close(h, clear_sky_illuminance_lx(h), stated, 0.12);
    }
    for h in [-12.0, -13.0, -14.0, -15.0, -16.0, -17.0, -18.0] {
        let stated = naval_observatory_lx(h);
        t.close(h, clear_sky_illuminance_lx(h), stated, 0.45);
    }
    // Its night: 5.2e-4 lx at -20 degrees.
    t.close(
        -20.0,
        clear_sky_illuminance_lx(-20.0),
        naval_observatory_lx(-20.0),
        0.05,
    );
    t.done()
}

/// Glossary of Meteorology (AMS): bands of illuminance at the limits of the twilights, and
/// Circular 171 (1987) for the twilight that it was made for, −1 to −9°. Tolerance of the
/// latter: 25 %, its own spread against the others.
fn twilight_bands() -> Checked {
    let mut t = Tally::of("AMS glossary bands, Circular 171");
    // The centre's unrefracted altitude: sunrise and sunset -0.833, civil -6.
    t.between("sunset", clear_sky_illuminance_lx(-0.833), 410.0, 585.0);
    t.between("civil dusk", clear_sky_illuminance_lx(-6.0), 2.0, 3.5);
    t.within(
        "nautical dusk",
        clear_sky_illuminance_lx(-12.0),
        0.008,
        0.000_5,
    );
    t.within("night", clear_sky_illuminance_lx(-18.0), 6e-4, 5e-5);
    for (h, lx) in [
        (-1.0, 387.0),
        (-2.0, 169.0),
        (-3.0, 66.4),
        (-4.0, 24.4),
        (-5.0, 8.65),
        (-6.0, 2.99),
        (-7.0, 1.020),
        (-8.0, 0.345),
        (-9.0, 0.116),
    ] {
        t.close(h, clear_sky_illuminance_lx(h), lx, 0.25);
    }
    t.within("darkest", clear_sky_illuminance_lx(-30.0), 0.000_5, 1e-9);
    t.done()
}

/// Allen's table of the Moon's brightness by phase angle, in magnitudes, as relative light.
/// Tolerance: 5 % to 120° (the fit of Krisciunas and Schaefer 1991), 12 % to 150°; at 160°
/// the fit is twice the table, where the crescent gives no light.
fn allen() -> Checked {
    let mut t = Tally::of("Allen, the Moon's brightness by phase");
    for (phase, magnitudes) in [
        (0.0, 0.00),
        (5.0, 0.08),
        (10.0, 0.23),
        (20.0, 0.51),
        (30.0, 0.79),
        (40.0, 1.06),
        (50.0, 1.35),
        (60.0, 1.62),
        (70.0, 1.91),
        (80.0, 2.24),
        (90.0, 2.63),
        (100.0, 3.04),
        (110.0, 3.48),
        (120.0, 3.93),
        (130.0, 4.44),
        (140.0, 5.07),
        (150.0, 5.9),
        (160.0, 7.5),
    ] {
        let light = |m: f64| libm::pow(10.0, -0.4 * m);
        let share = match phase as i32 {
            0..=120 => 0.05,
            121..=150 => 0.12,
            _ => 0.95,
        };
        t.close(
            phase,
            light(moon_phase_magnitudes(phase)),
            light(magnitudes),
            share,
        );
    }
    t.done()
}

/// H. H. Kieffer and T. C. Stone, Astron. J. 129:2887 (2005): lunar irradiance from
/// measurements, turned into lux above the air; against 0.3138 lx times our phase law.
/// Tolerance 5 % over the 5 to 97° that the measurements span, 10 % to 120°.
fn kieffer_stone() -> Checked {
    let mut t = Tally::of("Kieffer and Stone 2005, lunar irradiance");
    for (phase, lx, share) in [
        (5.0, 0.292, 0.05),
        (10.0, 0.241, 0.05),
        (30.0, 0.145, 0.06),
        (60.0, 0.069, 0.05),
        (90.0, 0.0280, 0.05),
        (120.0, 0.0082, 0.10),
    ] {
        let ours = 0.3138 * libm::pow(10.0, -0.4 * moon_phase_magnitudes(phase));
        t.close(phase, ours, lx, share);
    }
    t.done()
}

/// Moonlight on the ground, computed independently; and what was measured: the most that
/// Krieg (2021) met was 0.2 lx; Kyba, Mohar and Posch (2017) give 0.05 to 0.1 lx as
/// typical and 0.32 lx as the most (perigee, tropics).
fn moonlight() -> Checked {
    let mut t = Tally::of("moonlight on the ground, measured and computed");
    for (h, lx) in [
        (90.0, 0.269),
        (60.0, 0.216),
        (50.0, 0.184),
        (40.0, 0.143),
        (30.0, 0.098),
        (20.0, 0.0575),
        (15.0, 0.0405),
        (10.0, 0.0236),
        (5.0, 0.0099),
        (0.0, 0.0016),
    ] {
        t.close(h, moon_illuminance_lx(h, 0.0, 0.951), lx, 0.02);
    }
    for (h, phase, parallax, lx) in [
        (60.0, 5.0, 0.951, 0.1916),
        (60.0, 2.0, 1.02, 0.2369),
        (30.0, 60.0, 0.951, 0.022_14),
        (45.0, 90.0, 0.951, 0.014_93),
        (20.0, 120.0, 0.95, 0.001_51),
    ] {
        t.close(h, moon_illuminance_lx(h, phase, parallax), lx, 0.003_5);
    }
    t.within("below", moon_illuminance_lx(-0.81, 0.0, 0.951), 0.0, 1e-12);
    t.within(
        "step at -0.8",
        moon_illuminance_lx(-0.8, 0.0, 0.951),
        0.000_94,
        5e-6,
    );
    // Krieg 2021: measured maximum 200 mlx, at 51 degrees north; the full Moon of
    // 2027-01-22/23 is about as high and near as it gets there.
    let place = Place::new(51.0, 10.0).unwrap();
    let night = Night::from_noon(unix_s(2027, 1, 22, 11.0), &place).unwrap();
    let peak = night
        .minutes()
        .iter()
        .map(|m| m.moon_lx)
        .fold(0.0, f64::max);
    t.within("peak at 51 N", peak, 0.200, 0.02);
    // Kyba et al.: the brightest full Moon, overhead at perigee, stays below 0.32 lx (at a
    // phase angle of 1.5 degrees, the least outside an eclipse).
    t.between("tropics", moon_illuminance_lx(90.0, 1.5, 1.02), 0.25, 0.32);
    // Typical: a middling altitude, a day from full.
    t.between("typical", moon_illuminance_lx(30.0, 12.0, 0.951), 0.05, 0.1);
    t.done()
}

/// A town's light: π 108 000 10^(−0.4 m) lx less the natural 22.0, computed independently.
/// Tolerance: printed digits.
fn town() -> Checked {
    let mut t = Tally::of("sky brightness to illuminance");
    for (mag, lx) in [
        (21.5, 0.000_85),
        (21.0, 0.001_35),
        (20.5, 0.0021),
        (20.0, 0.0034),
        (19.0, 0.0085),
        (18.0, 0.021),
    ] {
        t.close(mag, town_illuminance_lx(mag) + 0.000_54, lx, 0.025);
    }
    t.within("none at 22", town_illuminance_lx(22.0), 0.0, 1e-12);
    t.within("none below", town_illuminance_lx(22.5), 0.0, 1e-12);
    t.done()
}

/// Cloud (Circular 171 and Kasten and Czeplak 1980), canopies (Johansson 1987, Constabel
/// and Lieffers 1996), geometry of rides and clearings (exact for a uniform sky), snow.
fn cloud_and_cover() -> Checked {
    let mut t = Tally::of("cloud, canopy, rides, clearings, snow");
    for (cloud, divisor) in [
        (Cloud::Clear, 1.0),
        (Cloud::Thin, 2.0),
        (Cloud::Overcast, 3.0),
        (Cloud::Dark, 10.0),
    ] {
        t.close("Circular 171", cloud.factor().usual, 1.0 / divisor, 1e-12);
    }
    // Kasten and Czeplak: 1 - 0.75 N^3.4 leaves 0.25 under full cloud by day; overcast
    // nights about a third of clear ones (Jechow 2016).
    let overcast = Cloud::Overcast.factor();
    t.between("Hamburg law", 0.25, overcast.least, overcast.most);
    t.close("dark lake", overcast.usual, 1.0 / 3.0, 0.01);
    for (w, share) in [(0.5, 0.24), (1.0, 0.45), (2.0, 0.71)] {
        t.within(w, ride_share(w, 1.0), share, 0.005);
    }
    for (r, share) in [(0.5, 0.2), (1.0, 0.5), (2.0, 0.8)] {
        t.within(r, clearing_share(r, 1.0), share, 1e-12);
    }
    t.within("edge is a half", Canopy::Edge.share().usual, 0.5, 1e-12);
    // Constabel and Lieffers: autumn aspen 26 %, leafless 22 to 59 %, summer 5.9 %.
    let bare = Canopy::BareWood.share();
    t.between("autumn aspen", 0.26, bare.least, bare.most);
    t.between("leafless", bare.usual, 0.22, 0.59);
    t.within("in leaf", Canopy::InLeaf.share().usual, 0.059, 0.01);
    // Johansson: extra-heavily thinned spruce 12 to 27 %, heavily thinned 3 to 14 %.
    t.between("open", Canopy::OpenConifer.share().usual, 0.12, 0.27);
    t.between("thinned", Canopy::ThinnedConifer.share().usual, 0.03, 0.14);
    // Inter-reflection over snow 0.85: 1.92 overcast, 1.06 clear; stubble 1.08 overcast.
    t.within(
        "snow, overcast",
        snow_gain(0.85, Cloud::Overcast),
        1.92,
        0.005,
    );
    t.within("snow, clear", snow_gain(0.85, Cloud::Clear), 1.06, 0.005);
    t.within("stubble", snow_gain(0.22, Cloud::Overcast), 1.08, 0.005);
    t.within("grass", snow_gain(0.08, Cloud::Overcast), 1.0, 1e-12);
    t.done()
}

/// Spectral libraries weighed with V(λ) in daylight (ECOSTRESS/ASTER, USGS, PROSAIL) and
/// published cattle coats (Chervinsky 2022, Scasta 2021); contrasts by geometry.
fn surfaces() -> Checked {
    let mut t = Tally::of("spectral libraries and coats");
    for (ground, published) in [
        (Ground::Grass, 0.084),
        (Ground::Grass, 0.060),
        (Ground::Stubble, 0.20),
        (Ground::Stubble, 0.310),
        (Ground::Litter, 0.089),
        (Ground::MoistSoil, 0.052),
        (Ground::FreshSnow, 0.97),
    ] {
        let range = ground.reflectance();
        t.between(format!("{ground:?}"), published, range.least, range.most);
    }
    for (coat, published) in [
        (Coat::Black, 0.0377),
        (Coat::Black, 0.04),
        (Coat::GreyBrown, 0.1168),
        (Coat::RedBrown, 0.16),
        (Coat::White, 0.6576),
        (Coat::White, 0.69),
    ] {
        let range = coat.reflectance();
        t.between(format!("{coat:?}"), published, range.least, range.most);
    }
    for (coat, ground, setting, stated) in [
        (0.11, 0.08, Setting::StandingOnGround, -0.26),
        (0.04, 0.08, Setting::StandingOnGround, -0.73),
        (0.11, 0.9, Setting::StandingOnGround, -0.88),
        (0.11, 0.08, Setting::LyingOnGround, 0.375),
        (0.11, 0.05, Setting::BeforeWall, 1.2),
    ] {
        t.within(coat, contrast(coat, ground, setting), stated, 0.005);
    }
    t.close("wet", Coat::GreyBrown.usual_reflectance(true), 0.066, 1e-9);
    t.done()
}

/// Koschmieder's law and airlight over ground, computed independently: at reflectance
/// 0.07 and 200 m.
fn haze() -> Checked {
    let mut t = Tally::of("Koschmieder 1924, airlight over ground");
    let horizon = air::horizon_to_ground(0.07);
    t.within("S at 0.07", horizon, 7.6, 0.05);
    t.within("S on snow", air::horizon_to_ground(0.9), 1.06, 0.005);
    for (km, left) in [(20.0, 0.77), (10.0, 0.62), (5.0, 0.44), (2.0, 0.22)] {
        let extinction = air::extinction_per_m(km * 1000.0);
        t.within(
            km,
            air::contrast_left(200.0, extinction, horizon),
            left,
            0.006,
        );
    }
    // At the visibility itself 2 % are left before the horizon sky, 5 % at the reported
    // optical range.
    let left = |extinction| air::contrast_left(10_000.0, extinction, 1.0);
    t.within("2 %", left(air::extinction_per_m(10_000.0)), 0.02, 1e-5);
    let reported = air::extinction_from_optical_range_per_m(10_000.0);
    t.within("5 %", left(reported), 0.05, 1e-4);
    t.done()
}

/// Minutes from sunset (true −0.833°) to −6, −9 and −12° by latitude and season of 2027 on
/// longitude 0, computed independently and checked with skyfield. Tolerance 0.1 min, the
/// last digit; 0.5 min in midsummer at 57°, where 0.01° is half a minute.
fn rate_of_fall() -> Checked {
    let mut t = Tally::of("length of twilight by latitude and season");
    for (latitude, month, day, minutes) in [
        (40.0, 3, 20, [Some(27.0), Some(42.8), Some(58.7)]),
        (40.0, 6, 21, [Some(32.9), Some(53.2), Some(74.6)]),
        (40.0, 9, 23, [Some(27.0), Some(42.7), Some(58.5)]),
        (40.0, 12, 22, [Some(30.6), Some(47.8), Some(64.7)]),
        (50.0, 3, 20, [Some(32.3), Some(51.2), Some(70.4)]),
        (50.0, 6, 21, [Some(44.7), Some(74.6), Some(110.4)]),
        (50.0, 9, 23, [Some(32.2), Some(51.1), Some(70.1)]),
        (50.0, 12, 22, [Some(38.5), Some(59.7), Some(80.1)]),
        (57.0, 3, 20, [Some(38.2), Some(60.7), Some(83.8)]),
        (57.0, 6, 21, [Some(68.3), Some(138.0), None]),
        (57.0, 9, 23, [Some(38.0), Some(60.5), Some(83.4)]),
        (57.0, 12, 22, [Some(49.6), Some(75.7), Some(100.5)]),
        (65.0, 3, 20, [Some(49.5), Some(79.2), Some(110.2)]),
        (65.0, 6, 21, [None, None, None]),
        (65.0, 9, 23, [Some(49.2), Some(78.7), Some(109.4)]),
        (65.0, 12, 22, [Some(87.4), Some(125.6), Some(160.0)]),
    ] {
        let place = Place::new(latitude, 0.0).unwrap();
        let noon = unix_s(2027, month, day, 12.0);
        let night = Night::from_noon(noon, &place).unwrap();
        let falls = |level: f64| {
            let minutes = night.minutes();
            (1..=night.midnight()).find_map(|i| {
                let (a, b) = (minutes[i - 1].sun_altitude_deg, minutes[i].sun_altitude_deg);
                (a >= level && b < level).then(|| (i - 1) as f64 + (a - level) / (a - b))
            })
        };
        let sunset = falls(-0.833).unwrap();
        for (level, stated) in [-6.0, -9.0, -12.0].into_iter().zip(minutes) {
            let what = format!("{latitude} N, {month}-{day}, {level}");
            let computed = falls(level).map(|m| m - sunset);
            match (computed, stated) {
                (Some(computed), Some(stated)) => {
                    let off = if stated > 130.0 { 0.5 } else { 0.13 };
                    t.within(what, computed, stated, off);
                }
                (computed, stated) => {
                    let never = f64::from(u8::from(computed.is_some() != stated.is_some()));
                    t.within(what, never, 0.0, 0.0);
                }
            }
        }
        // The events that pages show are the same crossings.
        let events = night.sky_events();
        let sunset_event = events.iter().find(|e| e.kind == EventKind::Sunset).unwrap();
        assert!((sunset_event.unix_s - noon - sunset * 60.0).abs() < 1.0);
    }
    // The lowest Sun at 57 and 65 degrees in midsummer: -9.57 and -1.57.
    for (latitude, stated) in [(57.0, -9.57), (65.0, -1.57)] {
        let place = Place::new(latitude, 0.0).unwrap();
        let night = Night::from_noon(unix_s(2027, 6, 21, 12.0), &place).unwrap();
        let lowest = night.minutes()[night.midnight()].sun_altitude_deg;
        t.within(latitude, lowest, stated, 0.012);
    }
    t.done()
}

/// Three evenings at 51° N 10° E, computed independently: the Sun's altitude, clear-sky
/// lux, and the moonlit night whose minimum and peak come out of order. Tolerance: 0.01°
/// in altitude and what that is worth in light (1.2 %), and the printed digits.
fn evenings() -> Checked {
    let mut t = Tally::of("evenings at 51 N 10 E, computed independently");
    let place = Place::new(51.0, 10.0).unwrap();
    let at = |night: &Night, when: f64| {
        let i = ((when - night.minutes()[0].unix_s) / 60.0 + 0.5) as usize;
        night.minutes()[i]
    };
    let october = Night::from_noon(unix_s(2026, 10, 1, 11.0), &place).unwrap();
    let grass = Scene {
        cloud: Cloud::Clear,
        canopy_share: 1.0,
        ground_reflectance: 0.08,
        town_mag_arcsec2: None,
    };
    // Local summer time is UTC + 2 h.
    for (hour, altitude, lx, grass_cd_m2) in [
        (18.0 + 50.0 / 60.0, 0.44, 966.0, Some(25.0)),
        (19.0, -1.12, 371.0, Some(9.4)),
        (19.0 + 10.0 / 60.0, -2.70, 104.0, Some(2.7)),
        (19.0 + 20.0 / 60.0, -4.27, 22.6, Some(0.58)),
        (19.5, -5.85, 4.05, Some(0.103)),
        (19.0 + 40.0 / 60.0, -7.42, 0.669, Some(0.0170)),
        (19.0 + 50.0 / 60.0, -8.99, 0.117, Some(0.0030)),
        (20.0, -10.56, 0.0250, Some(0.000_64)),
        (20.0 + 10.0 / 60.0, -12.12, 0.007_55, Some(0.000_19)),
        (20.5, -15.20, 0.001_89, None),
    ] {
        let minute = at(&october, unix_s(2026, 10, 1, hour - 2.0));
        t.within(hour, minute.sun_altitude_deg, altitude, 0.011);
        t.close(hour, minute.sun_lx, lx, 0.015);
        if let Some(stated) = grass_cd_m2 {
            let ground = grass.ground_luminance_cd_m2(minute.sun_lx, minute.moon_lx);
            t.close(hour, ground, stated, 0.03);
        }
    }
    // The Moon just rises at 21:00.
    let rising = at(&october, unix_s(2026, 10, 1, 19.0));
    t.within("21:00", rising.sun_altitude_deg, -19.72, 0.011);
    t.within("21:00", rising.moon_lx, 0.000_33, 0.000_02);
    // Local winter time is UTC + 1 h.
    let january = Night::from_noon(unix_s(2027, 1, 10, 11.0), &place).unwrap();
    for (hour, altitude, lx) in [
        (16.5, -0.22, 667.0),
        (16.0 + 50.0 / 60.0, -2.82, 93.0),
        (17.0 + 10.0 / 60.0, -5.54, 5.76),
        (17.5, -8.35, 0.236),
        (17.0 + 50.0 / 60.0, -11.24, 0.0141),
        (18.0 + 10.0 / 60.0, -14.21, 0.0028),
        (18.5, -17.24, 0.000_96),
        (18.0 + 50.0 / 60.0, -20.31, 0.000_53),
    ] {
        let minute = at(&january, unix_s(2027, 1, 10, hour - 1.0));
        t.within(hour, minute.sun_altitude_deg, altitude, 0.011);
        t.close(hour, minute.sun_lx + minute.moon_lx, lx, 0.08);
    }
    let moonlit = Night::from_noon(unix_s(2027, 1, 22, 11.0), &place).unwrap();
    for (day, hour, sun, moon, moon_lx, total) in [
        (22, 17.0, Some(-1.75), 0.0, 0.0018, 232.0),
        (22, 17.5, Some(-5.95), 3.9, 0.0084, 3.62),
        (22, 17.0 + 50.0 / 60.0, Some(-8.86), 6.6, 0.0147, 0.150),
        (22, 18.0 + 10.0 / 60.0, Some(-11.84), 9.4, 0.0230, 0.0320),
        (22, 18.0 + 20.0 / 60.0, Some(-13.35), 10.8, 0.0278, 0.0316),
        (22, 19.0, Some(-19.52), 16.5, 0.0483, 0.0489),
        (22, 22.0, None, 42.8, 0.157, 0.158),
        (23, 1.0, None, 57.3, 0.2025, 0.203),
    ] {
        let minute = at(&moonlit, unix_s(2027, 1, day, hour - 1.0));
        if let Some(sun) = sun {
            t.within(hour, minute.sun_altitude_deg, sun, 0.011);
        }
        t.within(hour, minute.moon_altitude_deg, moon, 0.08);
        t.close(hour, minute.moon_lx, moon_lx, 0.03);
        t.close(hour, minute.sun_lx + minute.moon_lx, total, 0.02);
    }
    // The darkest minute comes early, not at midnight.
    let light = |i: usize| moonlit.minutes()[i].sun_lx + moonlit.minutes()[i].moon_lx;
    let darkest = (0..=moonlit.midnight())
        .min_by(|a, b| light(*a).total_cmp(&light(*b)))
        .unwrap();
    let stated = unix_s(2027, 1, 22, 17.0 + 20.0 / 60.0);
    t.within(
        "darkest",
        (moonlit.minutes()[darkest].unix_s - stated) / 60.0,
        0.0,
        5.0,
    );
    // The minimum lies between the rows of 18:10 and 18:20.
    t.between("darkest", light(darkest), 0.0305, 0.0316);
    t.done()
}

#[test]
fn every_source_agrees() {
    let sources = [
        ephemeris(),
        spa(),
        supplement(),
        naval_observatory(),
        twilight_bands(),
        allen(),
        kieffer_stone(),
        moonlight(),
        town(),
        cloud_and_cover(),
        surfaces(),
        haze(),
        rate_of_fall(),
        evenings(),
    ];
    tally::sum("sky", 150, &sources);
}

fn open(ground_reflectance: f64) -> Scene {
    Scene {
        cloud: Cloud::Clear,
        canopy_share: 1.0,
        ground_reflectance,
        town_mag_arcsec2: None,
    }
}

/// Where the summer night stays light the target is never lost; where the Sun stays down
/// a demanding one is never seen.
#[test]
fn polar_nights_and_white_nights_are_named() {
    let june = unix_s(2027, 6, 21, 12.0);
    let white = Night::from_noon(june, &Place::new(65.0, 0.0).unwrap()).unwrap();
    assert_eq!(white.sun_course(), SunCourse::Sets);
    assert_eq!(white.sighting(&open(0.08), 0.01), Sighting::AllNight);
    let day = Night::from_noon(june, &Place::new(75.0, 0.0).unwrap()).unwrap();
    assert_eq!(day.sun_course(), SunCourse::StaysUp);
    assert!(
        day.sky_events()
            .iter()
            .all(|e| { matches!(e.kind, EventKind::Moonrise | EventKind::Moonset) })
    );
    let december = unix_s(2027, 12, 22, 12.0);
    let dark = Night::from_noon(december, &Place::new(80.0, 0.0).unwrap()).unwrap();
    assert_eq!(dark.sun_course(), SunCourse::StaysDown);
    assert_eq!(dark.sighting(&open(0.08), 1.0), Sighting::Never);
    // The poles themselves.
    for latitude in [90.0, -90.0] {
        let pole = Night::from_noon(june, &Place::new(latitude, 0.0).unwrap()).unwrap();
        assert_ne!(pole.sun_course(), SunCourse::Sets);
    }
}

/// A target lost at dusk is found again when the Moon has climbed, and lost once more when
/// it sets.
#[test]
fn the_moon_brings_sightings_back() {
    let place = Place::new(51.0, 10.0).unwrap();
    let night = Night::from_noon(unix_s(2027, 1, 25, 11.0), &place).unwrap();
    // The waning Moon rises some hours after dusk; a patch that needs 0.001 cd/m2.
    let Sighting::Intervals(intervals) = night.sighting(&open(0.08), 0.001) else {
        panic!("lost and found");
    };
    assert!(intervals.len() >= 2, "{intervals:?}");
    let events = night.sight_events(&open(0.08), 0.001, 0.2);
    assert_eq!(events[0].kind, EventKind::Lost);
    assert_eq!(events[1].kind, EventKind::Found);
    let moonrise = night
        .sky_events()
        .into_iter()
        .find(|e| e.kind == EventKind::Moonrise)
        .unwrap();
    assert!(events[1].unix_s > moonrise.unix_s);
    for event in &events {
        assert!(event.spread_min > 0.0 && event.spread_min.is_finite());
    }
}

/// The two sides of the date line see the same Sun.
#[test]
fn the_date_line_is_no_seam() {
    let when = unix_s(2027, 4, 3, 5.5);
    let east = Place::new(-17.0, 180.0).unwrap();
    let west = Place::new(-17.0, -180.0).unwrap();
    let (a, b) = (sun_position(when, &east), sun_position(when, &west));
    assert!((a.altitude_deg - b.altitude_deg).abs() < 1e-9);
    let (a, b) = (moon_position(when, &east), moon_position(when, &west));
    assert!((a.altitude_deg - b.altitude_deg).abs() < 1e-9);
}

/// Impossible places and clocks are refused with quantity, value and range.
#[test]
fn impossible_places_and_clocks_are_refused() {
    for (latitude, longitude, quantity) in [
        (90.1, 0.0, "latitude_deg"),
        (f64::NAN, 0.0, "latitude_deg"),
        (0.0, 180.5, "longitude_deg_east"),
        (0.0, -181.0, "longitude_deg_east"),
    ] {
        assert_eq!(
            Place::new(latitude, longitude).unwrap_err().quantity,
            quantity
        );
    }
    for clock in [-1.0, unix_s(2101, 1, 1, 0.0), f64::INFINITY, f64::NAN] {
        let refused = place::instant(clock).unwrap_err();
        assert_eq!(refused.quantity, "unix_s");
        let place = Place::new(50.0, 0.0).unwrap();
        assert!(Night::from_noon(clock, &place).is_err());
    }
    assert!(place::instant(0.0).is_ok());
    assert!(place::instant(unix_s(2100, 12, 31, 23.99)).is_ok());
}
