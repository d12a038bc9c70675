//! The sight against standards, optics textbooks and common practice.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    reason = "a test stops where it fails"
)]

mod counted;

use counted::Tally;
use scopewright::flight::hold::{mark_fits, range_of_mark_m};
use scopewright::flight::{Conditions, DragFunction, Load, SEA_LEVEL, Zeroed};
use scopewright::sight::eye_box::eye_box;
use scopewright::sight::field::{
    apparent_field_deg, apparent_field_of_width_deg, crossing_time_s, field_m_per_100m,
    true_field_deg,
};
use scopewright::sight::parallax::{
    extreme_mm, overlap_centroid_mm, with_offset_mm, without_shadow_mm,
};
use scopewright::sight::pupil::{effective_objective_mm, exit_pupil_mm};
use scopewright::sight::resolution::{
    dawes_arcsec, largest_useful_magnification, magnification_for_detail, mirage_arcsec,
    mirage_ceiling, rayleigh_arcsec, resolving_magnification,
};
use scopewright::sight::reticle::{
    DotSize, MarkUnit, Reticle, Role, Shape, least_line_mrad, reticle, reticle_with,
};
use scopewright::sight::subtension::{
    ARCMIN_PER_MRAD, apparent_arcmin, hold_error_mm, true_subtension_mrad,
};
use scopewright::sight::turret::{
    ClickUnit, MOA_PER_INCH_100YD, MRAD_PER_MIL_6400, MRAD_PER_MOA, Mounted, TravelError, mismatch,
};
use scopewright::sight::{
    Elevation, FieldClass, FocalPlane, GlassGrade, Illumination, ParallaxSetting, ReticleFamily,
    Specification, fits,
};

/// Every source with the number of its values.
const SOURCES: &[(&str, usize)] = &[
    ("ISO 14132-1 tube and field", 9),
    ("time across the field", 3),
    ("angles and clicks", 17),
    ("subtension in both planes", 9),
    ("travel and inclined bases", 8),
    ("parallax by ray tracing", 15),
    ("overlap of two pupils", 5),
    ("eye box", 4),
    ("Rayleigh and Dawes", 9),
    ("mirage", 7),
    ("line width by the eye's resolution", 5),
    ("reticle sizes", 30),
    ("generic classes", 117),
    ("outer diameters of bells", 4),
    ("eyepiece and apparent field", 3),
];

#[test]
fn values_from_outside_are_counted() {
    let total: usize = SOURCES.iter().map(|source| source.1).sum();
    println!("sight: {total} values from {} sources", SOURCES.len());
    assert!(total >= 120);
}

/// ISO 14132-1:2002, `tan ω′ = Γ·tan ω`; its example is 8× and 8.8° → 63.2°.
#[test]
fn tube_and_field() {
    let mut t = Tally::new("ISO 14132-1 tube and field");
    t.near("8×, 8.8°", apparent_field_deg(8.8, 8.0), 63.2, 0.05);
    t.near("back", true_field_deg(63.23, 8.0), 8.8, 0.01);
    for (apparent, product) in [
        (18.0, 31.7),
        (20.0, 35.3),
        (22.0, 38.9),
        (24.0, 42.5),
        (26.0, 46.2),
    ] {
        t.near(
            apparent,
            4.0 * field_m_per_100m(apparent, 4.0),
            product,
            0.06,
        );
    }
    // 2.5× with about 40 ft at 100 yd, as printed: 18.9°.
    let width = 40.0 * 0.3048 / 0.9144;
    t.near("40 ft", apparent_field_of_width_deg(width, 2.5), 18.9, 0.05);
    t.near("and back", field_m_per_100m(18.925, 2.5), width, 0.01);
    t.done(SOURCES);
}

/// At 20 m and 8 m/s: fields of 36, 21 and 12.5 m at 100 m.
#[test]
fn time_across_the_field() {
    let mut t = Tally::new("time across the field");
    for (width, seconds) in [(36.0, 0.90), (21.0, 0.53), (12.5, 0.31)] {
        let apparent = apparent_field_of_width_deg(width, 1.0);
        t.near(
            width,
            crossing_time_s(apparent, 1.0, 20.0, 8.0),
            seconds,
            0.006,
        );
    }
    t.done(SOURCES);
}

/// Definitions: 1 mrad = 1/1000 rad, 1 minute = 1/21600 of the circle, 1 in = 25.4 mm.
#[test]
fn angles_and_clicks() {
    let mut t = Tally::new("angles and clicks");
    t.near("minutes a mrad", ARCMIN_PER_MRAD, 3.43775, 5e-6);
    t.near("mm a minute at 100 m", 100.0 * MRAD_PER_MOA, 29.0888, 5e-5);
    t.near(
        "in a minute at 100 yd",
        MRAD_PER_MOA * 3.6 - 1.0,
        0.04720,
        5e-6,
    );
    t.near(
        "minutes an inch at 100 yd",
        MOA_PER_INCH_100YD,
        0.95493,
        5e-6,
    );
    t.near("mrad a mil of 6400", MRAD_PER_MIL_6400, 0.98175, 5e-6);
    for (unit, mm) in [
        (ClickUnit::TenthMrad, 10.0),
        (ClickUnit::TwentiethMrad, 5.0),
        (ClickUnit::QuarterMoa, 7.272),
        (ClickUnit::ThirdMoa, 9.696),
        (ClickUnit::EighthMoa, 3.636),
    ] {
        t.near(format!("{unit:?}"), unit.mm_per_100m(), mm, 5e-4);
    }
    for (moa, mrad) in [(10.0, 2.909), (20.0, 5.818), (30.0, 8.727)] {
        t.near(moa, moa * MRAD_PER_MOA, mrad, 5e-4);
    }
    // 1.55 mrad: 15.5 clicks of a tenth, 21.3 of a quarter minute.
    t.near("clicks", ClickUnit::TenthMrad.clicks(1.55), 15.5, 1e-9);
    t.near("clicks", ClickUnit::QuarterMoa.clicks(1.55), 21.3, 0.05);
    let mixed = mismatch(MarkUnit::Mrad, ClickUnit::QuarterMoa, 2.0, 300.0).unwrap();
    t.near("clicks a mrad", mixed.clicks_per_mark, 13.751, 5e-4);
    // 2 mrad read, 2 minutes dialled, at 300 m: 600 − 174.5 mm.
    t.near("unconverted", mixed.unconverted_error_mm, 425.5, 0.05);
    t.done(SOURCES);
    assert!(mismatch(MarkUnit::Moa, ClickUnit::EighthMoa, 2.0, 300.0).is_none());
    assert!(ClickUnit::TenthMrad.rounding_error_mm(1.55, 300.0).abs() <= 15.0 + 1e-9);
}

/// Worked examples; common practice, no source.
#[test]
fn subtension_in_both_planes() {
    let mut t = Tally::new("subtension in both planes");
    let second = |m: f64| true_subtension_mrad(FocalPlane::Second, 2.0, 10.0, m);
    t.near("2 mrad at 8×", second(8.0), 2.5, 1e-12);
    t.near("2 mrad at 10×", second(10.0), 2.0, 1e-12);
    t.near("2 mrad at 4×", second(4.0), 5.0, 1e-12);
    for m in [1.0, 8.0, 24.0] {
        t.near(
            "first plane",
            true_subtension_mrad(FocalPlane::First, 2.0, 10.0, m),
            2.0,
            0.0,
        );
    }
    // A line of 3 mm at 100 m in the first plane.
    for (m, minutes) in [(20.0, 2.06), (4.0, 0.41), (2.0, 0.21)] {
        t.near(m, apparent_arcmin(0.03, m), minutes, 0.005);
    }
    t.done(SOURCES);
    assert_eq!(
        hold_error_mm(FocalPlane::Second, 2.0, 10.0, 8.0, 300.0),
        150.0
    );
    assert_eq!(hold_error_mm(FocalPlane::First, 2.0, 10.0, 8.0, 300.0), 0.0);
}

/// Geometry; misalignment of 1.5 mrad is common practice, no source.
#[test]
fn travel_and_inclined_bases() {
    let mut t = Tally::new("travel and inclined bases");
    let of = |total: f64, incline: f64| Mounted {
        total_mrad: total,
        incline_mrad: incline,
        zero_angle_mrad: 1.2,
        misalignment_mrad: 1.5,
        windage_used_mrad: 0.0,
    };
    for (total, incline, up, down) in [
        (14.0, 0.0, 4.3, 6.7),
        (14.0, 5.8, 10.1, 0.9),
        (24.0, 5.8, 15.1, 5.9),
    ] {
        let travel = of(total, incline).check().unwrap();
        t.near(format!("{total} {incline} up"), travel.up_mrad, up, 1e-9);
        t.near(
            format!("{total} {incline} down"),
            travel.down_mrad,
            down,
            1e-9,
        );
    }
    let short = of(12.0, 5.8);
    t.near(
        "12, 5.8 down",
        short.travel().unwrap().down_mrad,
        -0.1,
        1e-9,
    );
    match short.check() {
        Err(TravelError::CannotBeZeroed {
            short_by_mrad,
            largest_incline_mrad,
        }) => {
            t.near("short by", short_by_mrad, 0.1, 1e-9);
            // What it says would do does.
            assert!(of(12.0, largest_incline_mrad - 1e-9).check().is_ok());
        }
        other => panic!("{other:?}"),
    }
    t.done(SOURCES);
    let windage = Mounted {
        windage_used_mrad: 12.0,
        ..of(24.0, 0.0)
    };
    assert!(matches!(
        windage.check(),
        Err(TravelError::WindageTakesAll { .. })
    ));
    let (least, most) = of(24.0, 0.0).inclines_for(14.0, 1.0).unwrap();
    assert!((least - 4.7).abs() < 1e-9 && (most - 10.7).abs() < 1e-9);
    assert!(of(14.0, 0.0).inclines_for(14.0, 1.0).is_none());
}

/// Rays through the edge of the objective and the point free of parallax.
#[test]
fn parallax_by_ray_tracing() {
    let mut t = Tally::new("parallax by ray tracing");
    for (d, free, range, mm) in [
        (50.0, 100.0, 50.0, 12.5),
        (50.0, 100.0, 200.0, 25.0),
        (50.0, 100.0, 300.0, 50.0),
        (42.0, 100.0, 25.0, 15.8),
        (42.0, 100.0, 300.0, 42.0),
        (56.0, 100.0, 500.0, 112.0),
        (32.0, 50.0, 10.0, 12.8),
        (32.0, 50.0, 25.0, 8.0),
        (32.0, 50.0, 100.0, 16.0),
        (50.0, 137.0, 50.0, 15.9),
        (50.0, 137.0, 300.0, 29.7),
        (24.0, 100.0, 20.0, 9.6),
    ] {
        t.near(
            format!("{d} {free} {range}"),
            extreme_mm(d, free, range),
            mm,
            0.06,
        );
    }
    t.near("inner stop", extreme_mm(10.0, 100.0, 20.0), 4.0, 1e-9);
    t.near(
        "no shadow",
        without_shadow_mm(50.0, 10.0, 2.5, 100.0, 300.0),
        25.0,
        1e-9,
    );
    // A ray traced by hand: enters 25 mm high, crosses the axis at 100 m.
    let traced = 25.0 * (300.0 - 100.0) / 100.0;
    t.near("traced", extreme_mm(50.0, 100.0, 300.0), traced, 1e-9);
    t.done(SOURCES);
    assert_eq!(exit_pupil_mm(24.0, 1.0), 11.0);
    assert_eq!(effective_objective_mm(24.0, 1.0), 11.0);
}

/// Exit pupil 5 mm, eye 2.5 mm: geometry of two discs, checked by a grid.
#[test]
fn overlap_of_two_pupils() {
    let mut t = Tally::new("overlap of two pupils");
    for (off, centroid) in [(1.0, 1.00), (2.0, 1.68), (3.0, 2.15)] {
        let got = overlap_centroid_mm(5.0, 2.5, off).unwrap();
        t.near(off, got, centroid, 0.006);
    }
    // Against counting points on a grid.
    for (a, b, x) in [(4.0_f64, 5.0_f64, 2.0_f64), (7.0, 3.0, 3.1)] {
        let (mut sum, mut count) = (0.0, 0.0);
        let n = 1500;
        for i in 0..n {
            for j in 0..n {
                let u = (f64::from(i) + 0.5) / f64::from(n) * 2.0 * a - a;
                let v = (f64::from(j) + 0.5) / f64::from(n) * 2.0 * a - a;
                if u * u + v * v < 0.25 * a * a && (u - x) * (u - x) + v * v < 0.25 * b * b {
                    sum += u;
                    count += 1.0;
                }
            }
        }
        t.near(
            format!("grid {a} {b} {x}"),
            overlap_centroid_mm(a, b, x).unwrap(),
            sum / count,
            2e-3,
        );
    }
    t.done(SOURCES);
    assert!(overlap_centroid_mm(5.0, 2.5, 3.8).is_none());
    assert_eq!(
        with_offset_mm(24.0, 10.0, 5.0, 1.0, 100.0, 300.0),
        Some(0.0)
    );
}

/// Eye pupil 3 mm, apparent field 22°.
#[test]
fn eye_box_along_the_axis() {
    let mut t = Tally::new("eye box");
    for (exit, mm) in [(4.0, 2.6), (6.0, 7.7), (8.0, 12.9), (10.0, 18.0)] {
        t.near(exit, eye_box(exit, 3.0, 22.0).full_along_mm, mm, 0.06);
    }
    t.done(SOURCES);
    let b = eye_box(6.0, 3.0, 22.0);
    assert_eq!((b.full_sideways_mm, b.gone_sideways_mm), (1.5, 4.5));
    assert_eq!(eye_box(2.0, 3.0, 22.0).full_sideways_mm, 0.0);
}

/// Rayleigh 1879 at 550 nm (138″/D), Dawes 1867 (116″/D).
#[test]
fn rayleigh_and_dawes() {
    let mut t = Tally::new("Rayleigh and Dawes");
    for (d, seconds) in [(24.0, 5.8), (42.0, 3.3), (50.0, 2.8), (56.0, 2.5)] {
        t.near(d, rayleigh_arcsec(d), seconds, 0.06);
    }
    t.near("Dawes 42", dawes_arcsec(42.0), 2.76, 0.01);
    // An eye of 60″ meets the limit at 0.43 D.
    t.near("42 mm", resolving_magnification(42.0), 18.0, 0.3);
    t.near("56 mm", resolving_magnification(56.0), 24.0, 0.4);
    t.near("0.87 D", largest_useful_magnification(50.0), 43.5, 0.2);
    // 20 mm at 150 m with 1′: 4.4× to 6.5×.
    t.near(
        "detail",
        magnification_for_detail(2.0, 1.0, 150.0, 20.0),
        4.4,
        0.05,
    );
    t.done(SOURCES);
}

/// Fried's length for a spherical wave, evaluated independently.
#[test]
fn mirage() {
    let mut t = Tally::new("mirage");
    for (cn2, range, seconds, off) in [
        (1e-14, 300.0, 1.3, 0.05),
        (1e-14, 1000.0, 2.7, 0.06),
        (1e-13, 300.0, 5.3, 0.06),
        (1e-13, 1000.0, 10.9, 0.06),
        (1e-12, 300.0, 21.0, 0.5),
    ] {
        t.near(
            format!("{cn2} {range}"),
            mirage_arcsec(cn2, range),
            seconds,
            off,
        );
    }
    // The ceilings as printed are of the air alone.
    let (seen, disturbing) = mirage_ceiling(1e-13, 300.0, 1000.0);
    t.near("seen from", seen, 11.0, 0.6);
    t.near("disturbing from", disturbing, 23.0, 0.7);
    t.done(SOURCES);
}

/// 0.6 of the smallest detail, in mm at 100 m, for the eye at 100, 1, 0.1 and 0.01 cd/m²
/// (resolution by Shlaer-type data, from memory).
#[test]
fn line_width_by_the_eyes_resolution() {
    let mut t = Tally::new("line width by the eye's resolution");
    for (m, mar, mm, off) in [
        (6.0, 0.83, 2.4, 0.06),
        (6.0, 1.54, 4.5, 0.06),
        (6.0, 2.7, 8.0, 0.2),
        (6.0, 7.7, 22.0, 0.5),
        (2.5, 1.54, 11.0, 0.3),
    ] {
        t.near(
            format!("{m}× {mar}′"),
            100.0 * least_line_mrad(mar, m),
            mm,
            off,
        );
    }
    t.done(SOURCES);
}

/// The width of the widest line of a role, in mm at 100 m.
fn widest(reticle: &Reticle, role: Role) -> f64 {
    reticle
        .pieces
        .iter()
        .filter(|piece| piece.role == role)
        .map(|piece| match piece.shape {
            Shape::Line { width_mrad, .. } | Shape::Ring { width_mrad, .. } => 100.0 * width_mrad,
            Shape::Dot { .. } => 0.0,
        })
        .fold(0.0, f64::max)
}

/// Common practice, no source; mm at 100 m.
#[test]
fn reticle_sizes() {
    use ReticleFamily as F;
    let mut t = Tally::new("reticle sizes");
    for (family, line, bar, gap) in [
        (F::FineCrosshair, 4.0, 0.0, None),
        (F::ThickThin, 12.0, 40.0, Some(150.0)),
        (F::ThreePost, 10.0, 60.0, None),
        (F::HeavyNight, 12.0, 80.0, None),
        (F::MradMarks, 3.0, 40.0, Some(1000.0)),
        (F::MarkGrid, 3.0, 40.0, Some(1000.0)),
    ] {
        let r = reticle(family);
        t.near(
            format!("{family:?} line"),
            widest(&r, Role::Centre),
            line,
            1e-9,
        );
        t.near(
            format!("{family:?} says so"),
            100.0 * r.centre_line_mrad,
            line,
            1e-9,
        );
        t.near(format!("{family:?} bar"), widest(&r, Role::Bar), bar, 1e-9);
        if let Some(gap) = gap {
            t.near("gap", 100.0 * r.half_gap_mrad.unwrap(), gap, 1e-9);
        }
    }
    for (size, mm) in [
        (DotSize::Fine, 6.0),
        (DotSize::Universal, 20.0),
        (DotSize::Driven, 40.0),
    ] {
        let r = reticle_with(F::CentreDot, size, &[]);
        t.near("dot", 100.0 * r.centre_dot_mrad.unwrap(), mm, 1e-9);
    }
    let ring = reticle(F::CircleDot);
    let radius = ring.pieces.iter().find_map(|piece| match piece.shape {
        Shape::Ring { radius_mrad, .. } => Some(100.0 * radius_mrad),
        _ => None,
    });
    t.near("ring radius", radius.unwrap(), 250.0, 1e-9);
    t.near("ring line", widest(&ring, Role::Ring), 15.0, 1e-9);
    let marks = reticle(F::MradMarks);
    t.near("mark line", widest(&marks, Role::Mark), 3.0, 1e-9);
    let mut holds: Vec<f64> = marks
        .marks
        .iter()
        .filter(|mark| mark.hold_mrad > 0.0)
        .map(|mark| mark.hold_mrad)
        .collect();
    holds.sort_by(f64::total_cmp);
    t.near("first mark", holds[0], 0.5, 1e-12);
    t.near("second mark", holds[1], 1.0, 1e-12);
    t.near("last mark", holds[holds.len() - 1], 10.0, 1e-12);
    t.done(SOURCES);

    // Marks cut for a load serve it, and the distances they stand for are found again.
    let load = Load::new(DragFunction::G1, 0.43, 823.0).unwrap();
    let path = Zeroed::new(load, SEA_LEVEL, 45.0, 100.0)
        .unwrap()
        .sighted(&Conditions::standard(), 700.0)
        .unwrap();
    for (mark, range) in scopewright::sight::reticle::TYPICAL_HOLDS_MRAD
        .into_iter()
        .zip([200.0, 300.0, 400.0, 500.0])
    {
        assert!(mark_fits(&path, mark, range, 90.0), "{mark} {range}");
        assert!((range_of_mark_m(&path, mark).unwrap() - range).abs() < 2.0);
    }
    // Every family has pieces, and something to aim with.
    for family in [
        F::FineCrosshair,
        F::ThickThin,
        F::ThreePost,
        F::HeavyNight,
        F::Post,
        F::CentreDot,
        F::CircleDot,
        F::MradMarks,
        F::MoaMarks,
        F::HoldMarks,
        F::MarkGrid,
    ] {
        let r = reticle(family);
        assert!(
            !r.pieces.is_empty() && r.centre_line_mrad > 0.0,
            "{family:?}"
        );
        assert!(
            r.pieces.iter().any(|piece| piece.lit) || family == F::Post,
            "{family:?}"
        );
    }
}

/// `tests/data/sight/generic_classes.csv`; common practice, no source.
#[test]
fn generic_classes() {
    let mut t = Tally::new("generic classes");
    let (mut mass, mut length, mut price, mut n) = (0.0, 0.0, 0.0, 0.0);
    for line in include_str!("data/sight/generic_classes.csv")
        .lines()
        .skip(2)
    {
        let cells = split(line);
        let number = |i: usize| cells[i].parse::<f64>().unwrap();
        if cells[0] == "35" || cells[0] == "41" {
            continue;
        }
        let adjustable = cells[14].contains("inf") && !cells[14].contains("fixed or");
        let class_width = apparent_field_of_width_deg(number(11), number(2));
        let sight = Specification {
            magnification_low: number(2),
            magnification_high: number(3),
            objective_mm: number(4),
            tube_mm: number(5),
            plane: if cells[6] == "FFP" {
                FocalPlane::First
            } else {
                FocalPlane::Second
            },
            reticle: ReticleFamily::ThickThin,
            illumination: if cells[15] == "no" {
                Illumination::Unlit
            } else {
                Illumination::NightFine
            },
            parallax: if adjustable {
                ParallaxSetting::Adjustable { nearest_m: 25.0 }
            } else {
                ParallaxSetting::Fixed { free_at_m: 100.0 }
            },
            elevation: Elevation::Capped,
            grade: match number(10) {
                p if p >= 92.0 => GlassGrade::Best,
                p if p >= 90.0 => GlassGrade::Good,
                _ => GlassGrade::Basic,
            },
            field: match class_width {
                w if w >= 22.0 => FieldClass::Wide,
                w if w >= 20.0 => FieldClass::Usual,
                _ => FieldClass::Narrow,
            },
            eye_relief_mm: number(9),
        };
        let band = f64::from(u32::from(cells[16].as_bytes()[0] - b'A'));
        for (what, fit, row, sum) in [
            ("mass", fits::mass_g(&sight), number(8), &mut mass),
            ("length", fits::length_mm(&sight), number(7), &mut length),
            ("price", fits::price_band_index(&sight), band, &mut price),
        ] {
            // Three standard deviations, as the fit claims them.
            t.near(
                format!("{what} of {}", cells[1]),
                row,
                fit.value,
                3.0 * fit.spread,
            );
            *sum += (row - fit.value) * (row - fit.value);
        }
        n += 1.0;
    }
    let (mass, length, price) = ((mass / n).sqrt(), (length / n).sqrt(), (price / n).sqrt());
    println!("rms: mass {mass:.0} g, length {length:.0} mm, price {price:.2} bands");
    assert!(
        mass < 52.0 && length < 16.0 && price < 0.95,
        "{mass} {length} {price}"
    );
    t.done(SOURCES);
}

/// Cells of a line of CSV with quotes.
fn split(line: &str) -> Vec<String> {
    let (mut cells, mut quoted) = (vec![String::new()], false);
    for c in line.chars() {
        match c {
            '"' => quoted = !quoted,
            ',' if !quoted => cells.push(String::new()),
            c => {
                let last = cells.len() - 1;
                cells[last].push(c);
            }
        }
    }
    cells
}

/// Common practice, no source.
#[test]
fn outer_diameters_of_bells() {
    let mut t = Tally::new("outer diameters of bells");
    for (d, tube, outer) in [
        (24.0, 30.0, 30.0),
        (42.0, 30.0, 48.0),
        (50.0, 30.0, 57.0),
        (56.0, 30.0, 63.0),
    ] {
        t.near(d, fits::bell_outer_mm(d, tube), outer, 0.01);
    }
    t.done(SOURCES);
}

/// `2·ER·tan ω′ + EP ≤ 40 mm`: 23° at 90 mm, 20 to 21° at 100.
#[test]
fn eyepiece_and_apparent_field() {
    let mut t = Tally::new("eyepiece and apparent field");
    t.near("90 mm", fits::widest_apparent_field_deg(90.0), 23.0, 0.05);
    t.near("100 mm", fits::widest_apparent_field_deg(100.0), 20.7, 0.1);
    let tan = libm::tan(11.5 * core::f64::consts::PI / 180.0);
    t.near("clear diameter", 2.0 * 90.0 * tan, 36.6, 0.05);
    t.done(SOURCES);
}
