//! The sayings against figures that were computed by hand or stand in print.

mod tally;

use scopewright::advice::dusk::{Dusk, Glass};
use scopewright::advice::report::{Quantity as Q, Saying, SayingKey as K, Verdict};
use scopewright::advice::sayings::sayings;
use scopewright::eye::{Eye, Patch};
use scopewright::need::answers::{
    Answers, Cover, CoverShare, Load, Manner, Mount, Place, Ranges, Rifle, Use,
};
use scopewright::need::{Need, answers, resolve};
use tally::{Tally, sum};

/// Roe deer from a seat at 50° N, 165 grains at 823 m/s, G1 0.43, as the printed figures have
/// it.
fn roe(age_years: f64, farthest_m: f64) -> Answers {
    Answers {
        version: 1,
        uses: vec![Use {
            what: "roe_deer".into(),
            share: 1.0,
            manner: Some(Manner::SeatRail),
            ranges: Some(Ranges {
                nearest_m: 25.0,
                usual_m: 80.0,
                farthest_m,
            }),
        }],
        eye: Some(answers::Eye {
            age_years: Some(age_years),
            ..answers::Eye::default()
        }),
        load: Some(Load {
            cartridge: Some("308_win_10_7_g".into()),
            bullet_g: Some(10.69),
            muzzle_velocity_m_s: Some(823.0),
            bc_g1_lb_in2: Some(0.43),
            powder_g: Some(2.98),
            ..Load::default()
        }),
        rifle: Some(Rifle {
            // With the usual sight of 576 g: 8 lb.
            mass_kg: Some(3.629 - 0.5758),
            ..Rifle::default()
        }),
        place: Some(Place {
            latitude_deg: Some(50.0),
            longitude_deg_east: Some(10.0),
            height_m: Some(0.0),
            first_month: Some(3),
            last_month: Some(3),
            // In the middle of the season 15 °C, as the printed figures have it.
            coldest_c: Some(5.0),
        }),
        ..Answers::default()
    }
}

fn open(mut answers: Answers) -> Answers {
    answers.light = Some(answers::Light {
        cover: vec![CoverShare {
            cover: Cover::Open,
            share: 1.0,
        }],
        ..answers::Light::default()
    });
    answers
}

fn of(answers: &Answers, key: K) -> Saying {
    let list = sayings(&resolve(answers), None);
    let found = list.into_iter().find(|saying| saying.key == key);
    found.expect("every saying is tested for everybody")
}

fn value(answers: &Answers, key: K, at: usize, quantity: Q) -> f64 {
    let saying = of(answers, key);
    assert_eq!(saying.effects[at].quantity, quantity, "{key:?}");
    saying.effects[at].value
}

/// The scene of the printed steps: open ground of reflectance 0.07 at the equinox, contrast
/// 0.3, a patch of 11.25 cm at 200 m, no veil.
fn printed(age_years: f64) -> Dusk {
    let need: Need = resolve(&open(roe(age_years, 200.0)));
    let mut dusk = Dusk::of(&need);
    dusk.eye = Eye::of_age(age_years).expect("an age");
    dusk.patch = Patch::new(0.1125 * 0.1125, 200.0, 0.3);
    dusk.surround = 0.0;
    dusk.scene.ground_reflectance = 0.07;
    dusk
}

fn plain(magnification: f64, objective_mm: f64, transmission: f64) -> Glass {
    Glass {
        magnification,
        objective_mm,
        transmission,
        glare: 0.0,
    }
}

/// An independent numerical model of the same published formulas, lat 50°, declination 0.
fn steps_of_objectives() -> tally::Checked {
    let mut tally = Tally::of("independent computation of the threshold model: steps in minutes");
    for (age, minutes) in [
        (20.0, 2.95),
        (25.0, 2.9),
        (30.0, 2.9),
        (40.0, 2.1),
        (50.0, 1.25),
        (60.0, 0.34),
        (65.0, 0.0),
        (70.0, 0.0),
    ] {
        let gain = printed(age).gain_min(&plain(8.0, 42.0, 0.9), &plain(8.0, 56.0, 0.9));
        tally.within(format!("8x42 to 8x56 at {age}"), gain.value, minutes, 0.12);
    }
    for ((m1, d1), (m2, d2), by_age) in [
        ((4.0, 32.0), (6.0, 42.0), [3.9, 4.1, 4.6]),
        ((6.0, 42.0), (8.0, 42.0), [0.0, 1.1, 2.5]),
        ((8.0, 42.0), (8.0, 50.0), [1.8, 1.7, 0.0]),
        ((8.0, 56.0), (12.0, 56.0), [0.1, 0.8, 2.2]),
        ((10.0, 50.0), (10.0, 56.0), [1.2, 1.2, 0.5]),
    ] {
        for (age, minutes) in [25.0, 45.0, 65.0].into_iter().zip(by_age) {
            let gain = printed(age).gain_min(&plain(m1, d1, 0.9), &plain(m2, d2, 0.9));
            tally.within(
                format!("{m1}x{d1} to {m2}x{d2} at {age}"),
                gain.value,
                minutes,
                0.15,
            );
        }
    }
    tally.done()
}

/// 0.0248 dex from T 0.85 to 0.90: 18 to 22 s at the equinox, 24 to 32 s at midsummer (lat 50).
fn five_points() -> tally::Checked {
    let mut tally = Tally::of("independent computation: five points of transmission, lat 50");
    for age in [25.0, 65.0] {
        for (month, least, most) in [(3_u8, 17.5, 22.5), (6, 23.5, 32.5)] {
            let mut answers = roe(age, 150.0);
            if let Some(place) = &mut answers.place {
                (place.first_month, place.last_month) = (Some(month), Some(month));
            }
            let seconds = value(
                &answers,
                K::FivePointsAreTwentyMinutes,
                0,
                Q::SecondsTonight,
            );
            tally.between(format!("{age} y, month {month}"), seconds, least, most);
            let gain = printed(age)
                .gain_min(&plain(8.0, 56.0, 0.85), &plain(8.0, 56.0, 0.90))
                .value;
            tally.between("8x56 at the equinox", 60.0 * gain, 17.5, 22.5);
        }
    }
    tally.done()
}

/// Factor 1/3 costs 6 to 7 min, 1/10 about 13 (lat 50, equinox).
fn cloud() -> tally::Checked {
    let mut tally = Tally::of("Janiczek and DeYoung (1987): cloud factors, as minutes of dusk");
    let answers = roe(40.0, 150.0);
    let closed = value(&answers, K::CloudCostsTwentyMinutes, 0, Q::MinutesTonight);
    let dark = value(&answers, K::CloudCostsTwentyMinutes, 1, Q::MinutesTonight);
    tally.between("closed", closed, -7.0, -5.8);
    tally.between("dark rain cloud", dark, -13.7, -12.3);
    tally.done()
}

/// Watson and Yellott (2012), 60° field, two eyes, 0.01 cd/m².
fn pupils() -> tally::Checked {
    let mut tally = Tally::of("Watson and Yellott (2012): pupil at 0.01 cd/m²");
    for (age, mm) in [
        (20.0, 7.516),
        (30.0, 7.049),
        (40.0, 6.582),
        (50.0, 6.115),
        (65.0, 5.414),
        (70.0, 5.180),
    ] {
        let pupil = value(&roe(age, 150.0), K::PastFiftyA56IsWasted, 2, Q::PupilMm);
        tally.within(format!("{age} y"), pupil, mm, 0.002);
    }
    tally.done()
}

/// An independent point-mass integration: .308 Win., 165 gr, 823 m/s, G1 0.43, ICAO.
fn flight() -> tally::Checked {
    let mut tally = Tally::of("independent integration: .308 Win., 165 gr, 823 m/s, G1 0.43");
    let far = roe(45.0, 300.0);
    tally.within(
        "clicks at 300 m",
        value(&far, K::DialIsPrecision, 0, Q::Clicks),
        15.5,
        0.35,
    );
    tally.within(
        "zero of 4 cm at 100 m",
        // The printed zero of 169 m belongs to 4 cm at the highest point, a little nearer.
        value(&far, K::FourHighAndForget, 0, Q::RangeM),
        169.0,
        3.5,
    );
    let mut chamois = far.clone();
    chamois.uses[0].what = "chamois".into();
    tally.within(
        "reach, circle of 15 cm",
        value(&chamois, K::FlatCartridgeNeedsNoDial, 0, Q::RangeM),
        244.0,
        2.5,
    );
    tally.within(
        "zero for that reach",
        value(&chamois, K::FlatCartridgeNeedsNoDial, 1, Q::RangeM),
        209.0,
        2.5,
    );
    tally.within(
        "drop at 300 m",
        value(&far, K::FlatCartridgeNeedsNoDial, 3, Q::DropCm),
        46.5,
        1.2,
    );
    // Hold = cos a · h − (1 − cos a)(θ − h_s/R): 0.866·1.55 − 0.134·(1.21 − 0.14) = 1.20 mrad
    // instead of 1.55: 10.5 cm high at 300 m, up and down.
    for at in [0, 1] {
        tally.within(
            format!("slope {at}"),
            value(&far, K::UphillHighDownhillLow, at, Q::ErrorCm),
            10.5,
            0.8,
        );
    }
    tally.done()
}

/// Definitions and plain geometry, by hand.
fn by_hand() -> tally::Checked {
    let mut tally = Tally::of("definitions and plain geometry, by hand");
    let answers = roe(40.0, 160.0);
    let mut check = |what: &str, key, at, quantity, stated, off| {
        tally.within(what, value(&answers, key, at, quantity), stated, off);
    };
    // Two tubes: the same light; 29 g per mm of tube; 30 instead of 24 mrad.
    check(
        "tube",
        K::ThickTubeIsBrighter,
        0,
        Q::SecondsTonight,
        0.0,
        0.0,
    );
    check("tube", K::ThickTubeIsBrighter, 1, Q::MassG, 116.0, 1e-9);
    check("tube", K::ThickTubeIsBrighter, 2, Q::TravelMrad, 6.0, 1e-9);
    // 1 MOA = 1.0472 in at 100 yd.
    check("minute", K::OneMoaIsAnInch, 0, Q::Percent, 4.72, 0.005);
    check("click", K::MoaIsFiner, 0, Q::AngleMmPer100m, 7.272, 5e-4);
    check("click", K::MoaIsFiner, 1, Q::AngleMmPer100m, 10.0, 1e-9);
    // Five shots: 3.07 times 0.12 mrad.
    check("group", K::MoaIsFiner, 2, Q::AngleMmPer100m, 36.84, 1e-9);
    // Half a mrad at 160 m, taken for twice as much.
    check(
        "half mark",
        K::HalfAMarkAtAnyPower,
        0,
        Q::ErrorCm,
        8.0,
        1e-9,
    );
    // 3 mm per 100 m at 160 m, at any power.
    check(
        "line",
        K::FirstPlaneCoversTarget,
        0,
        Q::CoveredCm,
        0.48,
        1e-9,
    );
    check(
        "line",
        K::FirstPlaneCoversTarget,
        1,
        Q::CoveredCm,
        0.48,
        1e-9,
    );
    // 3.43775·0.03·2.5.
    check("line", K::FirstPlaneForFar, 0, Q::MarkArcmin, 0.2578, 1e-4);
    // ½·50·|300 − 100|/100 = 50 mm.
    check(
        "parallax",
        K::SetAtHundredUselessAt300,
        1,
        Q::ParallaxCm,
        5.0,
        1e-9,
    );
    check(
        "no parallax",
        K::BlackRingIsParallax,
        0,
        Q::ParallaxCm,
        0.0,
        1e-12,
    );
    // √(8·50).
    check("number", K::TwilightNumberDecides, 0, Q::Ratio, 20.0, 1e-12);
    // 0.45 mrad on a rail, twenty times.
    check(
        "wobble",
        K::HighPowerMakesMeShake,
        1,
        Q::WobbleMrad,
        9.0,
        1e-9,
    );
    // 200·tan 10.5°/2.5, whatever the objective; 0.062·(56² − 42²) g.
    check(
        "field",
        K::BiggerBellNarrowsField,
        0,
        Q::FieldMPer100m,
        14.827,
        5e-3,
    );
    check(
        "field",
        K::BiggerBellNarrowsField,
        1,
        Q::FieldMPer100m,
        14.827,
        5e-3,
    );
    check("bell", K::BiggerBellNarrowsField, 2, Q::MassG, 85.06, 0.01);
    // 20.5·ln 4 g and 0.72·ln 4 bands.
    check("fixed", K::FixedIsBrighter, 1, Q::MassG, -28.42, 0.01);
    check("fixed", K::FixedIsBrighter, 2, Q::PriceBands, -0.998, 1e-3);
    // Winter coat 0.11 upright on grass 0.08: 0.11·0.54/0.08 − 1; on snow 0.11·0.95/0.9 − 1.
    check(
        "grass",
        K::SnowDoublesTheLight,
        3,
        Q::Contrast,
        -0.2575,
        1e-9,
    );
    check(
        "snow",
        K::SnowDoublesTheLight,
        4,
        Q::Contrast,
        -0.8839,
        1e-4,
    );
    // (1 − 0.1·0.6)/(1 − 0.9·0.6) under cloud; fresh snow against grass clear.
    check(
        "overcast",
        K::SnowDoublesTheLight,
        1,
        Q::Ratio,
        2.0435,
        1e-3,
    );
    check("ground", K::SnowDoublesTheLight, 2, Q::Ratio, 12.03, 0.02);
    // 8 lb rifle, 165 gr, 46 gr of powder, 2700 ft/s: 23.6 J, 3.61 m/s, 60 + 7·3.61 mm.
    check("recoil", K::OnlyASmallCartridge, 1, Q::RecoilJ, 23.6, 0.2);
    check("recoil", K::OnlyASmallCartridge, 0, Q::RecoilMS, 3.61, 0.02);
    check(
        "relief",
        K::OnlyASmallCartridge,
        2,
        Q::EyeReliefMm,
        85.2,
        0.2,
    );
    // 0.576 kg · 3.61 m/s / 1.3 ms.
    check("force", K::RingsAreJustRings, 1, Q::ForceKn, 1.60, 0.02);
    check("force", K::RingsAreJustRings, 0, Q::ForceKn, 3.20, 0.04);
    // A quarter less energy and a little more: 0.725.
    check(
        "moderator",
        K::ModeratorChangesOnlyNoise,
        0,
        Q::RecoilJ,
        -6.49,
        0.06,
    );
    // 20 mm higher, zeroed at 100 m: 20·(1 − 25/100) lower at 25 m, 20·(160/100 − 1) higher
    // at 160 m.
    check("height", K::HeightDoesNotMatter, 1, Q::ErrorCm, -1.5, 0.01);
    check("height", K::HeightDoesNotMatter, 2, Q::ErrorCm, 1.2, 0.01);
    // Bell of 57 mm over a barrel of 18 mm and a rail at 24 mm: the ring decides, 15 + 2.
    check(
        "mount",
        K::LowMountIsAlwaysBetter,
        0,
        Q::CentreHeightMm,
        17.0,
        0.6,
    );
    tally.done()
}

/// H + i − θ − m: travel 24 on an incline of 20 minutes leaves 15.1 mrad up.
fn travel() -> tally::Checked {
    let mut tally = Tally::of("worked example of turret travel, by hand");
    let mut answers = roe(40.0, 600.0);
    answers.mount = Some(Mount {
        incline_mrad: Some(5.818),
        ..Mount::default()
    });
    let up = value(&answers, K::ThickTubeForLongRange, 1, Q::TravelMrad);
    tally.within("up from zero", up, 15.1, 0.1);
    let needed = value(&answers, K::ThickTubeForLongRange, 0, Q::NeededMrad);
    tally.close("needed at 600 m", needed, 5.4, 0.025);
    tally.done()
}

#[test]
fn sayings_agree_with_what_was_computed_elsewhere() {
    sum(
        "sayings",
        75,
        &[
            steps_of_objectives(),
            five_points(),
            cloud(),
            pupils(),
            flight(),
            by_hand(),
            travel(),
        ],
    );
}

fn verdict(answers: &Answers, key: K) -> Verdict {
    of(answers, key).verdict
}

#[test]
fn verdicts_turn_where_the_person_differs() {
    use Verdict::{False, Half, True};
    let young = roe(25.0, 160.0);
    let old = roe(68.0, 160.0);
    // A wide pupil at any age fills 7 mm; a mean one past fifty needs more power for a 56.
    let mut measured = old.clone();
    measured.eye = Some(answers::Eye {
        age_years: Some(68.0),
        dark_pupil_mm: Some(7.0),
        ..answers::Eye::default()
    });
    assert_eq!(verdict(&old, K::PastFiftyA56IsWasted), Half);
    assert_eq!(verdict(&measured, K::PastFiftyA56IsWasted), False);
    assert_eq!(verdict(&young, K::PastFiftyA56IsWasted), False);
    assert_eq!(verdict(&young, K::EightBy56IsTheNightSight), True);
    assert_ne!(verdict(&old, K::EightBy56IsTheNightSight), True);
    // Nobody gains twenty minutes by five points, not even far north in June.
    assert_eq!(verdict(&young, K::FivePointsAreTwentyMinutes), False);
    // A small circle and a small cartridge.
    let mut squirrel = roe(40.0, 60.0);
    squirrel.uses[0].what = "tree_squirrel".into();
    squirrel.load = Some(Load {
        cartridge: Some("22_lr_2_6_g_standard".into()),
        ..Load::default()
    });
    assert_eq!(verdict(&young, K::SetAtHundredUselessAt300), False);
    assert_eq!(verdict(&squirrel, K::SetAtHundredUselessAt300), True);
    assert_eq!(verdict(&squirrel, K::OnlyASmallCartridge), True);
    assert_eq!(verdict(&squirrel, K::RingsAreJustRings), True);
    assert_eq!(verdict(&young, K::RingsAreJustRings), False);
    // Dead on reaches as far as it reaches.
    assert_eq!(
        verdict(&roe(40.0, 160.0), K::FlatCartridgeNeedsNoDial),
        True
    );
    assert_eq!(
        verdict(&roe(40.0, 270.0), K::FlatCartridgeNeedsNoDial),
        Half
    );
    assert_eq!(
        verdict(&roe(40.0, 400.0), K::FlatCartridgeNeedsNoDial),
        False
    );
    assert_eq!(verdict(&roe(40.0, 160.0), K::ThickTubeForLongRange), False);
    assert_eq!(verdict(&roe(40.0, 1000.0), K::ThickTubeForLongRange), True);
    // Under leaves there is no bright sky beside the game to be scattered.
    let mut leaves = young.clone();
    leaves.light = Some(answers::Light {
        cover: vec![CoverShare {
            cover: Cover::DenseConifer,
            share: 1.0,
        }],
        ..answers::Light::default()
    });
    assert_eq!(verdict(&young, K::OneSeesDearGlass), True);
    assert_eq!(verdict(&leaves, K::OneSeesDearGlass), Half);
    // A driven hunt by day.
    let mut driven = young.clone();
    driven.uses[0].manner = Some(Manner::Driven);
    driven.light = Some(answers::Light {
        until: Some(answers::StopTime::Daylight),
        ..answers::Light::default()
    });
    assert_eq!(verdict(&driven, K::BothEyesDoubleField), True);
    assert_eq!(verdict(&young, K::BothEyesDoubleField), False);
    assert_eq!(verdict(&driven, K::EveryoneNeedsSevenMillimetres), False);
    assert_eq!(verdict(&driven, K::HighPowerMakesMeShake), Half);
    assert_eq!(verdict(&young, K::HighPowerMakesMeShake), False);
    // The stock decides whether lower is better.
    let mut straight = young.clone();
    straight.rifle = Some(Rifle {
        kind: Some(answers::RifleKind::StraightStock),
        ..Rifle::default()
    });
    assert_eq!(verdict(&young, K::LowMountIsAlwaysBetter), True);
    assert_eq!(verdict(&straight, K::LowMountIsAlwaysBetter), False);
}

/// The table of `docs/sayings.md` names every key.
#[test]
fn every_saying_stands_in_the_document() {
    let document = include_str!("../docs/sayings.md");
    for saying in sayings(&resolve(&roe(40.0, 160.0)), None) {
        let key = serde_json::to_value(saying.key).expect("a key");
        let row = format!("| `{}` |", key.as_str().unwrap_or_default());
        assert!(document.contains(&row), "{row}");
    }
}
