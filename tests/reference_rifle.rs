//! The rifle against standards, scipy and common practice.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    reason = "a test stops where it fails"
)]

mod counted;

use counted::Tally;
use scopewright::flight::cartridges::by_key;
use scopewright::rifle::mounting::{
    Clearances, HeightLimit, MountError, Rings, TubeLayout, comb_short_by_mm, rings_kept,
    turret_place_for_eye_mm, turret_place_mm,
};
use scopewright::rifle::rail::{
    NARROW_SLOT_WIDTH_MM, NM_PER_INCH_POUND, RAILS_MADE, Rail, RailGuess, RailMatch, SLOT_DEPTH_MM,
    SLOT_PITCH_MM, SLOT_WIDTH_MM, SLOTTED_RAIL_WAIST_MM, SLOTTED_RAIL_WIDTH_MM, Screw, TUBES_MM,
    rail_match, rail_of_measures, rail_over_bore_mm, tube_of_diameter_mm, usual_torque_nm,
};
use scopewright::rifle::recoil::{
    EyeReliefCircumstances, GasFactor, MuzzleDevice, Recoil, eye_relief_by_energy_mm,
    eye_relief_need, free_recoil, mount_load, velocity_for_barrel_m_s, with_muzzle_device,
};
use scopewright::rifle::ring_height::{Measured, ring_height};
use scopewright::rifle::steadiness::{
    GROUP_OVER_SIGMA, HUNTING_RIFLE_SIGMA_MRAD, Position, magnification_aim_limited_below,
    magnification_ceiling, range_for_share_m, share_inside_circle, total_sigma_mrad,
};
use serde_json::Value;

/// Every source with the number of its values.
const SOURCES: &[(&str, usize)] = &[
    ("free recoil", 13),
    ("SAAMI Gun Recoil Formulae", 6),
    ("eye relief by recoil velocity", 4),
    ("load on the mount", 3),
    ("scipy non-central chi-squared", 110),
    ("non-central chi-squared, printed", 6),
    ("share of a circle", 3),
    ("positions and circles", 24),
    ("anchors of steadiness", 3),
    ("extreme spread of groups", 3),
    ("magnification and wobble", 7),
    ("height of the mount", 13),
    ("MIL-STD-1913", 6),
    ("paper strip round the tube", 4),
    ("torques", 6),
];

#[test]
fn values_from_outside_are_counted() {
    let total: usize = SOURCES.iter().map(|source| source.1).sum();
    println!("rifle: {total} values from {} sources", SOURCES.len());
    assert!(total >= 120);
}

const POUND: f64 = 0.453_592_37;
const GRAIN: f64 = 0.064_798_91;

/// Energies in J from an independent evaluation of the momentum balance, f = 1.75. Where the
/// powder mass was not stated, the typical load's is used and 6 % allowed.
#[test]
fn free_recoil_energies() {
    let mut t = Tally::new("free recoil");
    for (grains, v, powder_gr, pounds, joule, share) in [
        (100.0, 902.0, 44.0, 7.5, 15.7, 0.005),
        (165.0, 823.0, 46.0, 8.0, 23.6, 0.005),
        (180.0, 823.0, 56.0, 8.0, 30.3, 0.005),
        (180.0, 902.0, 74.0, 8.5, 42.5, 0.005),
    ] {
        let r = free_recoil(
            grains * GRAIN,
            v,
            powder_gr * GRAIN,
            pounds * POUND,
            GasFactor::Rifle,
        );
        t.near_share(format!("{grains} gr"), r.energy_j, joule, share);
    }
    let r = free_recoil(
        165.0 * GRAIN,
        823.0,
        46.0 * GRAIN,
        8.0 * POUND,
        GasFactor::Rifle,
    );
    t.near("velocity", r.velocity_m_s, 3.61, 0.006);
    for (key, pounds, joule, share) in [
        ("223_rem_3_56_g", 7.5, 6.0, 0.06),
        ("6_5x55_se_9_1_g", 8.0, 17.7, 0.06),
        ("308_win_11_7_g", 7.0, 28.0, 0.06),
        ("9_3x62_18_5_g", 8.0, 44.7, 0.06),
        ("375_h_h_mag_19_4_g", 9.0, 56.0, 0.06),
        ("416_rigby_25_9_g", 10.0, 73.0, 0.12),
        ("458_win_mag_32_4_g", 9.0, 81.0, 0.06),
        ("12_70_slug_28_g_rifled", 7.0, 38.0, 0.06),
    ] {
        let l = by_key(key).unwrap();
        let r = free_recoil(
            l.bullet_g,
            l.muzzle_velocity_m_s,
            l.powder_g,
            pounds * POUND,
            GasFactor::Rifle,
        );
        t.near_share(key, r.energy_j, joule, share);
    }
    t.done(SOURCES);
}

/// The formulae in grains, pounds and feet a second: `V = (w_b·V + f·w_p·V)/(7000·W)`,
/// `E = W·V²/(2·32.174)` (SAAMI, from memory), converted.
#[test]
fn saami_formulae_in_their_own_units() {
    let mut t = Tally::new("SAAMI Gun Recoil Formulae");
    for (bullet, v, powder, pounds) in [
        (55.0, 3240.0, 25.0, 7.5),
        (165.0, 2700.0, 46.0, 8.0),
        (500.0, 2090.0, 72.0, 9.0),
    ] {
        let velocity = (bullet * v + 1.75 * powder * v) / (7000.0 * pounds);
        let foot_pounds = pounds * velocity * velocity / (2.0 * 32.174);
        let r = free_recoil(
            bullet * GRAIN,
            v * 0.3048,
            powder * GRAIN,
            pounds * POUND,
            GasFactor::Rifle,
        );
        t.near_share("V", r.velocity_m_s / 0.3048, velocity, 1e-6);
        t.near_share("E", r.energy_j / 1.355_818, foot_pounds, 1e-5);
    }
    t.done(SOURCES);
    assert!(GasFactor::Shotgun.value() < GasFactor::Rifle.value());
}

/// About `max(70, 60 + 7·V)`; common practice, no source; rifles of 3.8 kg.
#[test]
fn eye_relief_by_recoil_velocity() {
    let mut t = Tally::new("eye relief by recoil velocity");
    for (key, mm) in [
        ("308_win_10_7_g", 84.0),
        ("30_06_spring_10_7_g", 86.0),
        ("9_3x62_18_5_g", 92.0),
        ("300_win_mag_11_7_g", 93.0),
    ] {
        let l = by_key(key).unwrap();
        let r = free_recoil(
            l.bullet_g,
            l.muzzle_velocity_m_s,
            l.powder_g,
            3.8,
            GasFactor::Rifle,
        );
        let need = eye_relief_need(r.velocity_m_s, EyeReliefCircumstances::default());
        t.near(key, need.total_mm(), mm, 1.3);
    }
    t.done(SOURCES);
    let all = EyeReliefCircumstances {
        glasses: true,
        thick_frame: true,
        prone: true,
        uphill: true,
    };
    assert_eq!(eye_relief_need(0.0, all).total_mm(), 80.0);
    assert_eq!(eye_relief_by_energy_mm(30.0), (88.0, 90.0));
}

/// Mean load in kN with 1.3 ms; from memory.
#[test]
fn load_on_the_mount() {
    let mut t = Tally::new("load on the mount");
    for (grains, v, powder, pounds, sight_g, kn) in [
        (165.0, 823.0, 46.0, 8.0, 650.0, 1.8),
        (180.0, 902.0, 74.0, 8.5, 750.0, 2.7),
        (500.0, 637.0, 72.0, 9.0, 500.0, 2.4),
    ] {
        let r = free_recoil(
            grains * GRAIN,
            v,
            powder * GRAIN,
            pounds * POUND,
            GasFactor::Rifle,
        );
        t.near(grains, mount_load(sight_g, r).mean_kn, kn, 0.06);
    }
    t.done(SOURCES);
    let mild = Recoil {
        energy_j: 10.0,
        velocity_m_s: 2.4,
    };
    assert!(!mount_load(500.0, mild).recoil_stop && mount_load(900.0, mild).recoil_stop);
}

/// A moderator takes 20 to 35 % of the energy with its mass, a brake 35 to 50 %; 8 m/s for
/// 25 mm of barrel. Common practice, no source.
#[test]
fn muzzle_devices_and_barrels() {
    let bare = free_recoil(10.7, 823.0, 2.98, 3.6, GasFactor::Rifle);
    for (device, least, most) in [
        (MuzzleDevice::Moderator, 0.65, 0.80),
        (MuzzleDevice::Brake, 0.50, 0.65),
    ] {
        let left = with_muzzle_device(bare, 3.6, device).energy_j / bare.energy_j;
        assert!(left > least && left < most);
    }
    assert_eq!(
        with_muzzle_device(bare, 3.6, MuzzleDevice::Bare).energy_j,
        bare.energy_j
    );
    assert_eq!(velocity_for_barrel_m_s(823.0, 600.0, 500.0), 791.0);
}

/// `tests/data/flight/circle_shares.json`: scipy's `ncx2`.
#[test]
fn shares_of_a_circle_by_scipy() {
    let data: Value = serde_json::from_str(include_str!("data/flight/circle_shares.json")).unwrap();
    let mut t = Tally::new("scipy non-central chi-squared");
    for row in data["rows"].as_array().unwrap() {
        let n = |i: usize| row[i].as_f64().unwrap();
        t.near(
            format!("{} {}", n(0), n(1)),
            share_inside_circle(n(0), n(1), 1.0),
            n(2),
            2e-12,
        );
    }
    t.done(SOURCES);
}

/// Values to three digits from an independent evaluation.
#[test]
fn shares_of_a_circle() {
    let mut t = Tally::new("non-central chi-squared, printed");
    for (radius, centred, off) in [
        (1.0, 0.393, 0.267),
        (2.0, 0.865, 0.731),
        (2.45, 0.950, 0.868),
    ] {
        t.near(radius, share_inside_circle(radius, 0.0, 1.0), centred, 6e-4);
        t.near(radius, share_inside_circle(radius, 1.0, 1.0), off, 6e-4);
    }
    t.done(SOURCES);
    let mut t = Tally::new("share of a circle");
    for (share, factor) in [(0.90, 2.146), (0.80, 1.794), (0.50, 1.177)] {
        t.near(
            share,
            1.0 / range_for_share_m(1.0, 1.0, share),
            factor,
            6e-4,
        );
    }
    t.done(SOURCES);
}

/// 90 % inside circles of 13, 18 and 25 cm, in m; independent evaluation.
#[test]
fn positions_and_circles() {
    let mut t = Tally::new("positions and circles");
    let rows = [
        (Position::Bench, [215.0, 297.0, 413.0]),
        (Position::PronePack, [158.0, 218.0, 303.0]),
        (Position::SeatRail, [119.0, 164.0, 228.0]),
        (Position::TwoPointSticks, [82.0, 113.0, 157.0]),
        (Position::SingleStick, [54.0, 74.0, 103.0]),
        (Position::Kneeling, [43.0, 59.0, 82.0]),
        (Position::StandingFree, [20.0, 28.0, 39.0]),
        (Position::Swinging, [10.0, 14.0, 19.0]),
    ];
    for (position, want) in rows {
        let sigma = total_sigma_mrad(position.hold().typical_mrad, HUNTING_RIFLE_SIGMA_MRAD, 0.0);
        for (circle_mm, metres) in [130.0, 180.0, 250.0].into_iter().zip(want) {
            let range = range_for_share_m(0.5 * circle_mm, sigma, 0.90);
            t.near(format!("{position:?} {circle_mm}"), range, metres, 1.6);
        }
        let w = position.visible_wobble_mrad();
        assert!((w / (2.0 * position.hold().typical_mrad) - 1.0).abs() < 0.03);
    }
    t.done(SOURCES);

    // Biathlon circles of 45 and 115 mm at 50 m with 90 % and 80 to 85 % hits (from memory).
    let mut t = Tally::new("anchors of steadiness");
    t.near("prone", range_for_share_m(0.45, 1.0, 0.90), 0.21, 0.005);
    let standing = |share: f64| range_for_share_m(1.15, 1.0, share);
    t.near("standing, 80 %", standing(0.80), 0.64, 0.05);
    t.near("standing, 85 %", standing(0.85), 0.59, 0.05);
    t.done(SOURCES);
}

/// Expected extreme spread of n shots over σ, by counting simulated groups.
#[test]
fn extreme_spread_of_groups() {
    let mut t = Tally::new("extreme spread of groups");
    let mut state = 0x2545_F491_4F6C_DD1D_u64;
    let mut uniform = || {
        state ^= state << 13;
        state ^= state >> 7;
        state ^= state << 17;
        (state >> 11) as f64 / (1_u64 << 53) as f64
    };
    for (shots, factor) in GROUP_OVER_SIGMA {
        let groups = 20_000;
        let mut sum = 0.0;
        for _ in 0..groups {
            let hits: Vec<(f64, f64)> = (0..shots)
                .map(|_| {
                    let radius = (-2.0 * libm::log(1.0 - uniform())).sqrt();
                    let angle = 2.0 * core::f64::consts::PI * uniform();
                    (radius * libm::cos(angle), radius * libm::sin(angle))
                })
                .collect();
            let mut spread = 0.0_f64;
            for (i, a) in hits.iter().enumerate() {
                for b in &hits[..i] {
                    spread = spread.max(libm::hypot(a.0 - b.0, a.1 - b.1));
                }
            }
            sum += spread;
        }
        t.near(shots, sum / f64::from(groups), factor, 0.02);
    }
    t.done(SOURCES);
}

/// Assumptions as printed: free 5×, kneeling 11×, single stick 14×, sticks 21×, rail 33×;
/// aim limits below 1.4× from a rail in bright light, 4× with 3′.
#[test]
fn magnification_and_wobble() {
    let mut t = Tally::new("magnification and wobble");
    for (position, most) in [
        (Position::StandingFree, 5.0),
        (Position::Kneeling, 11.0),
        (Position::SingleStick, 14.0),
        (Position::TwoPointSticks, 21.0),
        (Position::SeatRail, 33.5),
    ] {
        let got = magnification_ceiling(position.hold().typical_mrad);
        t.near(format!("{position:?}"), got, most, 0.8);
    }
    let rail = Position::SeatRail.hold().typical_mrad;
    t.near(
        "bright",
        magnification_aim_limited_below(1.0, rail),
        1.4,
        0.08,
    );
    t.near("3′", magnification_aim_limited_below(3.0, rail), 4.0, 0.15);
    t.done(SOURCES);
}

/// Worked examples: rail 24 mm over the bore, 2 mm of air, tube 30 mm.
#[test]
fn height_of_the_mount() {
    let mut t = Tally::new("height of the mount");
    let of = |bell: f64, radius: f64| Clearances {
        barrel_radius_mm: radius,
        ..Clearances::usual(bell, 30.0)
    };
    let h = of(63.0, 9.0).least_height();
    t.near("56 mm, axis", h.centre_over_rail_mm, 18.5, 1e-9);
    t.near("56 mm, saddle", h.saddle_mm, 3.5, 1e-9);
    t.near("56 mm, over bore", h.over_bore_mm, 42.5, 1e-9);
    t.near(
        "barrel 11",
        of(63.0, 11.0).least_height().centre_over_rail_mm,
        20.5,
        1e-9,
    );
    let under = Clearances {
        rail_under_bell: true,
        ..of(63.0, 9.0)
    };
    t.near(
        "rail under bell",
        under.least_height().centre_over_rail_mm,
        33.5,
        1e-9,
    );
    t.near("over bore", under.least_height().over_bore_mm, 57.5, 1e-9);
    let small = of(48.0, 9.0).least_height();
    t.near("42 mm", small.centre_over_rail_mm, 17.0, 1e-9);
    assert_eq!(small.limit, HeightLimit::Ring);
    let inclined = Clearances {
        incline_mrad: 5.818,
        ..of(63.0, 9.0)
    };
    let nearer = inclined.centre_for_bell_mm() - of(63.0, 9.0).centre_for_bell_mm();
    t.near("20 MOA over 150 mm", nearer, 0.87, 0.005);
    // Iron sights of 10 mm: as much more.
    let iron = Clearances {
        iron_sights_mm: 10.0,
        ..of(63.0, 9.0)
    };
    t.near(
        "iron sights",
        iron.least_height().centre_over_rail_mm,
        28.5,
        1e-9,
    );
    assert_eq!(iron.least_height().limit, HeightLimit::IronSights);
    let bolt = Clearances {
        bolt_over_bore_mm: Some(25.0),
        ..of(48.0, 9.0)
    };
    t.near("bolt", bolt.least_height().centre_over_rail_mm, 25.0, 1e-9);
    let straight = Clearances {
        straight_stock: true,
        ..of(48.0, 9.0)
    };
    t.within(
        "straight stock",
        straight.least_height().centre_over_rail_mm,
        36.0,
        43.0,
    );
    t.near("comb", comb_short_by_mm(80.0), 10.0, 1e-9);
    t.near("comb right", comb_short_by_mm(60.0), 0.0, 1e-9);
    t.done(SOURCES);
}

#[test]
fn what_does_not_fit_says_by_how_much_and_what_would() {
    let c = Clearances::usual(63.0, 30.0);
    match rings_kept(&c, 30.0, 16.0) {
        Err(MountError::BellTooLow {
            short_by_mm,
            needed_centre_mm,
            largest_bell_outer_mm,
            limit,
        }) => {
            assert_eq!((short_by_mm, needed_centre_mm), (2.5, 18.5));
            assert_eq!(limit, HeightLimit::Bell);
            let smaller = Clearances {
                bell_outer_mm: largest_bell_outer_mm,
                ..c
            };
            assert!(rings_kept(&smaller, 30.0, 16.0).is_ok());
            assert!(rings_kept(&c, 30.0, needed_centre_mm).is_ok());
        }
        other => panic!("{other:?}"),
    }
    assert!(matches!(
        rings_kept(&c, 25.4, 30.0),
        Err(MountError::TubeDoesNotMatch { .. })
    ));
    assert!(matches!(
        rings_kept(&Clearances { tube_mm: 26.0, ..c }, 25.4, 30.0),
        Err(MountError::TubeDoesNotMatch { .. })
    ));
    let bolt = Clearances {
        bolt_over_bore_mm: Some(25.0),
        ..Clearances::usual(48.0, 30.0)
    };
    assert!(matches!(
        rings_kept(&bolt, 30.0, 20.0),
        Err(MountError::OcularTooLow { short_by_mm, .. }) if (short_by_mm - 5.0).abs() < 1e-9
    ));
    let straight = Clearances {
        straight_stock: true,
        ..Clearances::usual(48.0, 30.0)
    };
    assert!(matches!(
        rings_kept(&straight, 30.0, 17.0),
        Err(MountError::TooLowForStraightStock { short_by_mm, .. }) if (short_by_mm - 19.0).abs() < 1e-9
    ));

    let tube = TubeLayout {
        front_mm: (26.0, 90.0),
        rear_mm: (26.0, 70.0),
        ocular_end_mm: 155.0,
    };
    let rings = |front: f64, rear: f64| Rings {
        front_mm: front,
        rear_mm: rear,
        half_width_mm: 11.0,
    };
    let (from, to) = turret_place_mm(&tube, &rings(110.0, 0.0)).unwrap();
    // At both ends both rings lie inside their clamping lengths.
    for x in [from, to] {
        assert!(110.0 - x - 11.0 >= 26.0 - 1e-9 && 110.0 - x + 11.0 <= 90.0 + 1e-9);
        assert!(x - 11.0 >= 26.0 - 1e-9 && x + 11.0 <= 70.0 + 1e-9);
    }
    match turret_place_mm(&tube, &rings(150.0, 0.0)) {
        Err(MountError::RingsDoNotFit {
            spacing_most_mm,
            spacing_least_mm,
            ..
        }) => {
            assert!(turret_place_mm(&tube, &rings(spacing_most_mm, 0.0)).is_ok());
            assert!(spacing_least_mm < spacing_most_mm);
        }
        other => panic!("{other:?}"),
    }
    match turret_place_for_eye_mm((from, to), &tube, -400.0, 90.0, 10.0) {
        Err(MountError::EyeOutOfReach { move_by_mm }) => assert!(move_by_mm < 0.0),
        other => panic!("{other:?}"),
    }
    let eye = from - 155.0 - 90.0;
    assert!(turret_place_for_eye_mm((from, to), &tube, eye, 90.0, 10.0).is_ok());
    assert!(TubeLayout::typical(320.0, 42.0, 30.0).front_mm.1 > 60.0);
}

/// MIL-STD-1913 (1995), in inches; the narrow slot from the trade.
#[test]
fn mil_std_1913() {
    let mut t = Tally::new("MIL-STD-1913");
    for (mm, inch) in [
        (SLOT_WIDTH_MM, 0.206),
        (SLOT_PITCH_MM, 0.394),
        (SLOT_DEPTH_MM, 0.118),
        (SLOTTED_RAIL_WIDTH_MM, 0.835),
        (SLOTTED_RAIL_WAIST_MM, 0.617),
        (NARROW_SLOT_WIDTH_MM, 0.180),
    ] {
        t.near(inch, mm, 25.4 * inch, 0.005);
    }
    t.done(SOURCES);
    assert_eq!(
        rail_match(Rail::NarrowSlots, Rail::MilStd1913),
        RailMatch::FitsLoosely
    );
    assert_eq!(
        rail_match(Rail::MilStd1913, Rail::NarrowSlots),
        RailMatch::DoesNotFit
    );
    assert_eq!(
        rail_match(Rail::Stanag4694, Rail::MilStd1913),
        RailMatch::Fits
    );
    assert_eq!(
        rail_of_measures(21.0, Some(5.2), Some(10.0)),
        RailGuess::Is(Rail::MilStd1913)
    );
    assert_eq!(
        rail_of_measures(21.0, Some(4.6), None),
        RailGuess::Is(Rail::NarrowSlots)
    );
    assert_eq!(
        rail_of_measures(11.0, None, None),
        RailGuess::Is(Rail::SmallDovetail)
    );
    assert_eq!(rail_of_measures(30.0, None, None), RailGuess::Unknown);
    // A rail to either standard is 0.835 in wide at most; a ruler is half a millimetre off.
    for made in &RAILS_MADE[..2] {
        assert!(
            made.is_as_wide(25.4 * 0.835) && made.is_as_wide(21.0),
            "{}",
            made.key
        );
        assert!(
            !made.is_as_wide(19.0) && !made.is_as_wide(22.0),
            "{}",
            made.key
        );
    }
    // Each is as wide as itself, and no dovetail is taken for a slotted rail.
    for made in &RAILS_MADE {
        assert!(made.is_as_wide(made.width_mm.unwrap_or(17.3)));
        assert!(
            made.width_mm.is_none() || !made.is_as_wide(17.3),
            "{}",
            made.key
        );
    }
}

/// A rail told by its measures on the receiver gives the saddle height that the same rail gives
/// by its height over the bore. Geometry: a receiver of 34 mm with a rail 7 mm over it has its
/// top 17 + 7 = 24 mm over the bore; a bell of 63 mm with 2 mm of air over a barrel of 18 mm
/// then asks for 63/2 + 2 − (24 − 9) = 18.5 mm over the rail, 3.5 mm to the saddle.
#[test]
fn a_rail_is_told_by_its_measures() {
    let measured = |rail_over_bore_mm| Measured {
        bell_outer_mm: 63.0,
        barrel_diameter_mm: 18.0,
        rail_over_bore_mm,
        tube_mm: 30.0,
        rail_under_bell: false,
        cap: false,
        straight_stock: false,
        iron_sights_mm: None,
        bolt_over_bore_mm: None,
    };
    let saddle = |receiver, height| {
        let over = rail_over_bore_mm(receiver, height).unwrap();
        ring_height(&measured(over)).unwrap().recommended.saddle_mm
    };
    assert_eq!(saddle(34.0, 7.0), 3.5);
    // A rail higher by 4 mm takes 4 mm from the rings, until the ring itself decides (2 mm).
    assert_eq!(saddle(34.0, 3.0), 7.5);
    assert_eq!(saddle(34.0, 12.0), 2.0);
    // A dovetail milled into a receiver of 27 mm stands 13.5 mm over the bore.
    assert_eq!(rail_over_bore_mm(27.0, 0.0), Ok(13.5));
    assert_eq!(saddle(27.0, 0.0), 14.0);
    for (receiver, height) in [
        (7.0, 7.0),
        (90.0, 7.0),
        (34.0, -1.0),
        (34.0, 41.0),
        (f64::NAN, 7.0),
    ] {
        assert!(
            rail_over_bore_mm(receiver, height).is_err(),
            "{receiver} {height}"
        );
    }
}

/// A strip of 79.8, 81.7, 94.2, 106.8 mm means 25.4, 26, 30, 34.
#[test]
fn paper_strip() {
    let mut t = Tally::new("paper strip round the tube");
    for (strip, tube) in [(79.8, 25.4), (81.7, 26.0), (94.2, 30.0), (106.8, 34.0)] {
        let got = tube_of_diameter_mm(strip / core::f64::consts::PI).unwrap();
        t.near(strip, got, tube, 1e-9);
    }
    t.done(SOURCES);
    assert_eq!(TUBES_MM.len(), 7);
}

/// Printed values of 15 to 25 in·lb for rings, 25 and 28 for base screws, 45 to 65 for steel
/// cross bolts; common practice.
#[test]
fn torques() {
    let mut t = Tally::new("torques");
    let (least, most) = usual_torque_nm(Screw::RingCap);
    t.near("rings from", least, 15.0 * NM_PER_INCH_POUND, 0.03);
    t.near("rings to", most, 25.0 * NM_PER_INCH_POUND, 0.03);
    let (least, most) = usual_torque_nm(Screw::Base);
    for inch_pounds in [25.0, 28.0] {
        t.within("base", inch_pounds * NM_PER_INCH_POUND, least, most);
    }
    let (least, most) = usual_torque_nm(Screw::CrossBoltSteel);
    t.near("steel from", least, 45.0 * NM_PER_INCH_POUND, 0.1);
    t.near("steel to", most, 65.0 * NM_PER_INCH_POUND, 0.1);
    t.done(SOURCES);
}
