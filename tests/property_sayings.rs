//! Sayings and two sights beside each other: finite for everybody, fair to both sides.

use proptest::prelude::*;
use scopewright::advice::report::{SayingKey, Verdict};
use scopewright::advice::sayings::sayings;
use scopewright::advice::versus::{Sight, versus};
use scopewright::flight::cartridges::typical_loads;
use scopewright::need::answers::{
    self, Answers, Comb, Cover, CoverShare, Load, Manner, Mount, Muzzle, Place, Rifle, RifleKind,
    StopTime, Use,
};
use scopewright::need::quarry::What;
use scopewright::need::resolve;
use scopewright::sight::typed_line::{LineProblem, TypedSight};
use std::collections::BTreeSet;

fn any_of<T: Clone + std::fmt::Debug + 'static>(list: Vec<T>) -> impl Strategy<Value = T> {
    prop::sample::select(list)
}

fn keys() -> Vec<String> {
    What::all().map(|what| what.key().to_owned()).collect()
}

/// Anybody who may fill in the questions.
fn anybody() -> impl Strategy<Value = Answers> {
    let manners = vec![
        Manner::Bench,
        Manner::PronePack,
        Manner::SeatRail,
        Manner::TwoPointSticks,
        Manner::Kneeling,
        Manner::WalkingUp,
        Manner::StandingFree,
        Manner::Driven,
    ];
    let uses = prop::collection::vec(
        (
            any_of(keys()),
            0.1..4.0_f64,
            prop::option::of(any_of(manners)),
        )
            .prop_map(|(what, share, manner)| Use {
                what,
                share,
                manner,
                ranges: None,
            }),
        0..3,
    );
    let stops = vec![
        StopTime::Daylight,
        StopTime::Sunset,
        StopTime::HalfHourAfterSunset,
        StopTime::HourAfterSunset,
        StopTime::EndOfSeeing,
        StopTime::Moon,
        StopTime::LitRange,
    ];
    let covers = vec![
        Cover::Open,
        Cover::Edge,
        Cover::BareWood,
        Cover::DenseConifer,
    ];
    let light = (any_of(stops), any_of(covers), 0.0..1.0_f64).prop_map(|(until, cover, snow)| {
        answers::Light {
            until: Some(until),
            cover: vec![CoverShare { cover, share: 1.0 }],
            snow,
            ..answers::Light::default()
        }
    });
    let eye =
        (8.0..95.0_f64, prop::option::of(2.0..9.0_f64)).prop_map(|(age, pupil)| answers::Eye {
            age_years: Some(age),
            dark_pupil_mm: pupil,
            ..answers::Eye::default()
        });
    let loads: Vec<String> = typical_loads().iter().map(|l| l.key.to_owned()).collect();
    let rifle = (
        any_of(vec![
            RifleKind::Bolt,
            RifleKind::StraightStock,
            RifleKind::SpringAir,
            RifleKind::Double,
        ]),
        1.5..8.0_f64,
        any_of(vec![Muzzle::Bare, Muzzle::Moderator, Muzzle::Brake]),
        any_of(vec![Comb::Low, Comb::Right, Comb::Adjustable]),
    )
        .prop_map(|(kind, mass_kg, muzzle, comb)| Rifle {
            kind: Some(kind),
            mass_kg: Some(mass_kg),
            muzzle: Some(muzzle),
            comb: Some(comb),
            ..Rifle::default()
        });
    let place = (
        -90.0..90.0_f64,
        -180.0..180.0_f64,
        1..=12_u8,
        1..=12_u8,
        0.0..4000.0_f64,
    )
        .prop_map(|(latitude, longitude, first, last, height)| Place {
            latitude_deg: Some(latitude),
            longitude_deg_east: Some(longitude),
            height_m: Some(height),
            first_month: Some(first),
            last_month: Some(last),
            ..Place::default()
        });
    let mount = (0.0..9.0_f64, any::<bool>()).prop_map(|(incline, under)| Mount {
        incline_mrad: Some(incline),
        rail_under_bell: under,
        ..Mount::default()
    });
    (
        uses,
        prop::option::of(light),
        prop::option::of(eye),
        prop::option::of(any_of(loads)),
        prop::option::of(rifle),
        prop::option::of(place),
        prop::option::of(mount),
    )
        .prop_map(
            |(uses, light, eye, cartridge, rifle, place, mount)| Answers {
                version: 1,
                uses,
                light,
                eye,
                load: cartridge.map(|key| Load {
                    cartridge: Some(key),
                    ..Load::default()
                }),
                rifle,
                place,
                mount,
                ..Answers::default()
            },
        )
}

fn typed(line: &str) -> Sight {
    Sight::Typed(TypedSight::parse(line).expect("a sight"))
}

const LINES: [&str; 6] = [
    "8x56",
    "1-6x24 sfp lit 540 g",
    "3-12x50, 30 mm",
    "5-25x56 ffp mrad 34 mm dial",
    "4x32 25.4mm",
    "2.5-10x42 best glass",
];

proptest! {
    #![proptest_config(ProptestConfig::with_cases(300))]

    #[test]
    fn every_saying_is_tested_for_everybody(answers in anybody()) {
        let need = resolve(&answers);
        let list = sayings(&need, None);
        prop_assert!(list.len() >= 36, "{}", list.len());
        let keys: BTreeSet<SayingKey> = list.iter().map(|saying| saying.key).collect();
        prop_assert_eq!(keys.len(), list.len());
        for saying in &list {
            prop_assert!(!saying.effects.is_empty());
            for effect in &saying.effects {
                prop_assert!(effect.value.is_finite() && effect.spread >= 0.0, "{:?}", saying);
            }
        }
        prop_assert_eq!(&list, &sayings(&need, None));
    }

    #[test]
    fn two_sights_are_judged_alike(answers in anybody(), a in 0..6_usize, b in 0..6_usize) {
        let need = resolve(&answers);
        let there = versus(&need, &typed(LINES[a]), &typed(LINES[b]));
        let back = versus(&need, &typed(LINES[b]), &typed(LINES[a]));
        for (one, other) in there.differences.iter().zip(&back.differences) {
            prop_assert!(one.difference.value.is_finite());
            prop_assert!(one.difference.spread >= 0.0);
            prop_assert!((one.difference.value + other.difference.value).abs() < 1e-9);
            prop_assert!((one.other - one.one - one.difference.value).abs() < 1e-6);
            if a == b {
                prop_assert!(!one.decided && one.difference.spread == 0.0);
            }
        }
    }

    #[test]
    fn whatever_is_typed_is_read_or_refused(text in "\\PC{0,40}") {
        let _ = TypedSight::parse(&text);
    }

    #[test]
    fn a_sight_is_read_back(low in 1..8_u32, span in 1..8_u32, objective in 20..60_u32) {
        let high = low * span;
        let line = format!("{low}-{high}x{objective}");
        match TypedSight::parse(&line) {
            Ok(sight) => {
                prop_assert_eq!(sight.magnification_low, f64::from(low));
                prop_assert_eq!(sight.magnification_high, f64::from(high));
                prop_assert_eq!(sight.objective_mm, f64::from(objective));
            }
            Err(problem) => prop_assert!(high > objective, "{line}: {problem}"),
        }
    }
}

/// Most sayings turn: over many people, most have more than one verdict.
#[test]
fn most_sayings_have_more_than_one_verdict() {
    use proptest::strategy::ValueTree;
    use proptest::test_runner::TestRunner;
    let mut runner = TestRunner::deterministic();
    let mut seen: BTreeSet<(SayingKey, &str)> = BTreeSet::new();
    for _ in 0..150 {
        let answers = anybody().new_tree(&mut runner).expect("a person").current();
        for saying in sayings(&resolve(&answers), None) {
            let verdict = match saying.verdict {
                Verdict::True => "true",
                Verdict::Half => "half",
                Verdict::False => "false",
            };
            seen.insert((saying.key, verdict));
        }
    }
    let turning: BTreeSet<SayingKey> = seen
        .iter()
        .map(|(key, _)| *key)
        .filter(|key| seen.iter().filter(|(other, _)| other == key).count() > 1)
        .collect();
    println!(
        "{} of 40 sayings turn, {} verdicts seen",
        turning.len(),
        seen.len()
    );
    assert!(turning.len() >= 30, "{turning:?}");
}

/// As people type and boxes print.
#[test]
fn lines_are_read_as_they_are_typed() {
    use scopewright::sight::reticle::MarkUnit;
    use scopewright::sight::{
        Elevation, FocalPlane, GlassGrade, Illumination, ParallaxSetting, ReticleFamily,
    };
    let read = |line: &str| TypedSight::parse(line).unwrap_or_else(|why| panic!("{line}: {why}"));
    for (line, low, high, objective) in [
        ("3-12x50", 3.0, 12.0, 50.0),
        ("3–12×50", 3.0, 12.0, 50.0),
        ("2,5–10 × 50 30mm ffp mrad", 2.5, 10.0, 50.0),
        ("2.5 - 10 X 50 mm", 2.5, 10.0, 50.0),
        ("8x56", 8.0, 8.0, 56.0),
        ("6 x 42", 6.0, 6.0, 42.0),
        ("1x-6x24", 1.0, 6.0, 24.0),
        ("1 to 6 x 24", 1.0, 6.0, 24.0),
        ("1,25-4x24", 1.25, 4.0, 24.0),
        ("30 mm 3-12x50,600 g", 3.0, 12.0, 50.0),
    ] {
        let sight = read(line);
        assert_eq!(
            (
                sight.magnification_low,
                sight.magnification_high,
                sight.objective_mm
            ),
            (low, high, objective),
            "{line}"
        );
    }
    let sight = read("2,5–10 × 50, 30mm, ffp, mrad, dial, best glass, 1.4 lb");
    assert_eq!(sight.tube_mm, Some(30.0));
    assert_eq!(sight.plane, Some(FocalPlane::First));
    assert_eq!(sight.unit, Some(MarkUnit::Mrad));
    assert_eq!(sight.elevation, Some(Elevation::DialZeroStop));
    assert_eq!(sight.grade, Some(GlassGrade::Best));
    assert_eq!(sight.unread, ["1.4 lb"]);
    let sight = read("1.5-6x42 SFP, lit, 540 g, circle-dot, capped");
    assert_eq!(sight.plane, Some(FocalPlane::Second));
    assert_eq!(sight.illumination, Some(Illumination::NightFine));
    assert_eq!(sight.mass_g, Some(540.0));
    assert_eq!(sight.reticle, Some(ReticleFamily::CircleDot));
    assert_eq!(sight.elevation, Some(Elevation::Capped));
    let sight =
        read("4-16x44 second focal plane, side focus from 10 m, eye relief 95 mm, 9 m/100 m");
    assert_eq!(sight.plane, Some(FocalPlane::Second));
    assert_eq!(
        sight.parallax,
        Some(ParallaxSetting::Adjustable { nearest_m: 10.0 })
    );
    assert_eq!(sight.eye_relief_mm, Some(95.0));
    assert_eq!(sight.field_low_m_per_100m, Some(9.0));
    assert!(sight.unread.is_empty(), "{:?}", sight.unread);
    let sight = read("6x42 1-inch parallax 50 yd, unlit, 14 oz");
    assert_eq!(sight.tube_mm, Some(25.4));
    assert_eq!(
        sight.parallax,
        Some(ParallaxSetting::Fixed { free_at_m: 45.72 })
    );
    assert_eq!(sight.illumination, Some(Illumination::Unlit));
    assert!(sight.mass_g.is_some_and(|g| (g - 396.9).abs() < 0.1));
    assert_eq!(read("1-6x24i").illumination, Some(Illumination::NightFine));
    assert_eq!(read("8x56").unknown().len(), 10);

    let refused = |line: &str| TypedSight::parse(line).expect_err(line);
    assert_eq!(refused("  , "), LineProblem::Empty);
    assert!(matches!(refused("a fine one"), LineProblem::NoSight { .. }));
    assert!(matches!(refused("56x8"), LineProblem::Swapped { .. }));
    assert!(matches!(refused("50x3-12"), LineProblem::Swapped { .. }));
    assert!(matches!(refused("12-3x50"), LineProblem::Reversed { .. }));
    assert!(matches!(refused("0.2x20"), LineProblem::Power { .. }));
    assert!(matches!(refused("3-12x500"), LineProblem::Objective { .. }));
    assert!(matches!(
        refused("8x56 and 3-12x50"),
        LineProblem::TwoSights { .. }
    ));
    assert!(matches!(
        refused("8x56 ffp sfp"),
        LineProblem::Contradiction { .. }
    ));
    assert!(matches!(
        refused("8x56 30 mm 34 mm"),
        LineProblem::Contradiction { .. }
    ));
}

/// Definitions of the units; examples by hand.
#[test]
fn groups_become_clicks() {
    use scopewright::sight::turret::ClickUnit as C;
    use scopewright::sight::zero_clicks::{Direction as D, Group, correction};
    let group = |right_cm: f64, high_cm: f64, distance_m: f64| Group {
        right_cm,
        high_cm,
        distance_m,
    };
    for (click, clicks, mm) in [
        (C::TenthMrad, 6, 10.0),
        (C::TwentiethMrad, 12, 5.0),
        (C::QuarterMoa, 8, 7.272),
        (C::ThirdMoa, 6, 9.696),
        (C::EighthMoa, 17, 3.636),
    ] {
        let turn = correction(&group(0.0, -6.0, 100.0), click).expect("a group");
        assert_eq!(
            (turn.elevation.direction, turn.elevation.clicks),
            (D::Up, clicks)
        );
        assert_eq!(turn.windage.direction, D::None);
        assert!((10.0 * turn.click_cm - mm).abs() < 1e-3);
        let left = turn.elevation.left_over_cm;
        assert!(left.abs() <= 0.5 * turn.click_cm + 1e-12);
    }
    // 3 in right at 100 yd are 2.865 minutes: 11 quarter minutes.
    let turn = correction(&group(7.62, 0.0, 91.44), C::QuarterMoa).expect("a group");
    assert_eq!((turn.windage.direction, turn.windage.clicks), (D::Left, 11));
    // At 50 m a click moves half as much.
    let turn = correction(&group(-2.0, 3.0, 50.0), C::TenthMrad).expect("a group");
    assert_eq!(
        (turn.elevation.direction, turn.elevation.clicks),
        (D::Down, 6)
    );
    assert_eq!((turn.windage.direction, turn.windage.clicks), (D::Right, 4));
    assert!(correction(&group(0.0, 0.0, 0.0), C::TenthMrad).is_err());
    assert!(correction(&group(f64::NAN, 0.0, 100.0), C::TenthMrad).is_err());
}

/// Worked examples of the geometry: rail 24 mm over the bore, 2 mm of air, 30 mm tube.
#[test]
fn bells_ask_for_rings() {
    use scopewright::rifle::mounting::HeightLimit as L;
    use scopewright::rifle::ring_height::{Measured, ring_height};
    let usual = Measured {
        bell_outer_mm: 63.0,
        barrel_diameter_mm: 18.0,
        rail_over_bore_mm: 24.0,
        tube_mm: 30.0,
        rail_under_bell: false,
        cap: false,
        straight_stock: false,
        iron_sights_mm: None,
        bolt_over_bore_mm: None,
    };
    for (measured, saddle, limit) in [
        (usual, 3.5, L::Bell),
        (
            Measured {
                barrel_diameter_mm: 22.0,
                ..usual
            },
            5.5,
            L::Bell,
        ),
        (
            Measured {
                rail_under_bell: true,
                ..usual
            },
            18.5,
            L::Bell,
        ),
        (
            Measured {
                bell_outer_mm: 48.0,
                ..usual
            },
            2.0,
            L::Ring,
        ),
        (Measured { cap: true, ..usual }, 6.0, L::Bell),
        (
            Measured {
                straight_stock: true,
                ..usual
            },
            21.0,
            L::StraightStock,
        ),
        // A bell over iron sights of 10 mm: as much higher than over the bare barrel.
        (
            Measured {
                iron_sights_mm: Some(10.0),
                ..usual
            },
            13.5,
            L::IronSights,
        ),
        // A bolt 25 mm over the bore under an eyepiece of 44 mm: 22 + 2 + 1 − 15.
        (
            Measured {
                bolt_over_bore_mm: Some(25.0),
                ..usual
            },
            10.0,
            L::Bolt,
        ),
    ] {
        let rings = ring_height(&measured).expect("figures that make sense");
        assert!(
            (rings.recommended.saddle_mm - saddle).abs() < 1e-9,
            "{measured:?}"
        );
        assert_eq!(rings.limit, limit);
        assert!(rings.least.saddle_mm <= rings.recommended.saddle_mm);
    }
    assert!(
        ring_height(&Measured {
            bell_outer_mm: 6.3,
            ..usual
        })
        .is_err()
    );
}

/// What no sight can be set to is handed back, and every sight that is read can be judged.
#[test]
fn a_distance_that_no_sight_is_set_to_is_not_read() {
    let digits = "9".repeat(380);
    for line in [
        "3-9x40 parallax 0 m",
        "3-9x40 0 m parallax",
        "3-9x40 adjustable parallax from 0 m",
        &format!("3-9x40 parallax {digits} m"),
    ] {
        let sight = TypedSight::parse(line).unwrap();
        assert!(!sight.unread.is_empty(), "{line}");
        let one = Sight::Typed(sight);
        let other = Sight::Typed(TypedSight::parse("8x56").unwrap());
        let beside = versus(&resolve(&Answers::default()), &one, &other);
        let served = beside.one.served.unwrap().value;
        assert!((0.0..=1.0).contains(&served), "{line}: {served}");
        assert!(
            beside.differences.iter().all(|row| row.one.is_finite()),
            "{line}"
        );
    }
}
