//! What must hold for any load, sight and rifle.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    reason = "a test stops where it fails"
)]

use proptest::prelude::*;
use scopewright::flight::cartridges::typical_loads;
use scopewright::flight::drag::G_PER_GRAIN;
use scopewright::flight::hold::{mark_error_mm, range_error_mm};
use scopewright::flight::point_blank::{dead_on, point_blank};
use scopewright::flight::suspicion::{ReadFigures, Suspicion, suspicions};
use scopewright::flight::trajectory::trajectory;
use scopewright::flight::{
    Air, Conditions, DragFunction, FlightError, Load, SEA_LEVEL, Zeroed, atmosphere,
};
use scopewright::rifle::mounting::{Clearances, Rings, TubeLayout, rings_kept, turret_place_mm};
use scopewright::rifle::recoil::{GasFactor, free_recoil};
use scopewright::rifle::steadiness::{range_for_share_m, share_inside_circle};
use scopewright::sight::eye_box::eye_box;
use scopewright::sight::field::{apparent_field_deg, true_field_deg};
use scopewright::sight::parallax::{extreme_mm, usual_cheek_mm, with_offset_mm, without_shadow_mm};
use scopewright::sight::subtension::{apparent_arcmin, true_subtension_mrad, true_width_mrad};
use scopewright::sight::turret::{ClickUnit, Mounted};
use scopewright::sight::{FocalPlane, pupil};

fn loads() -> impl Strategy<Value = Load> {
    (
        prop_oneof![
            (Just(DragFunction::G1), 0.1..0.7),
            (Just(DragFunction::G7), 0.1..0.4),
        ],
        300.0..1150.0,
    )
        .prop_map(|((drag, bc), v)| Load::new(drag, bc, v).unwrap())
}

fn airs() -> impl Strategy<Value = Air> {
    (-200.0..3500.0, -30.0..40.0, 0.0..1.0)
        .prop_map(|(h, t, rh)| atmosphere::at_place(h, t, rh).unwrap())
}

/// Any number a person or a program might hand over.
fn anything() -> impl Strategy<Value = f64> {
    prop_oneof![
        any::<f64>(),
        Just(f64::NAN),
        Just(f64::INFINITY),
        Just(0.0),
        -10.0..1e4,
    ]
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(512) })]

    #[test]
    fn the_path_meets_the_line_of_sight_at_the_zero(
        load in loads(), air in airs(), sight in 0.0..90.0, zero in 20.0..250.0,
    ) {
        let z = Zeroed::new(load, air, sight, zero).unwrap();
        let path = z.sighted(&Conditions::still(air), 300.0).unwrap();
        prop_assert!(path.path_mm(zero).abs() < 1e-2, "{}", path.path_mm(zero));
        prop_assert!((path.path_mm(0.0) + sight).abs() < 1e-9);
        // The zero is one of the two crossings.
        let (near, far) = path.crossings_m();
        let found = [near, far].into_iter().flatten().any(|x| (x - zero).abs() < 0.05)
            || path.highest().is_some_and(|(x, _)| (x - zero).abs() < 1.0);
        prop_assert!(found || sight < 0.5, "{near:?} {far:?} {zero}");
    }

    #[test]
    fn a_level_bullet_only_slows(load in loads(), air in airs()) {
        let flown = trajectory(&load, &Conditions::still(air), 1.0, 400.0).unwrap();
        let mut before = flown.at(0.0);
        prop_assert!((before.velocity_m_s - load.muzzle_velocity_m_s()).abs() < 1e-9);
        for i in 1..=400 {
            let now = flown.at(f64::from(i));
            prop_assert!(now.velocity_m_s < before.velocity_m_s);
            prop_assert!(now.time_s > before.time_s);
            before = now;
        }
    }

    #[test]
    fn a_reading_in_between_is_what_a_shorter_flight_ends_with(
        load in loads(), air in airs(), wind in -10.0..10.0, behind in -10.0..10.0,
        slope in -40.0..40.0, range in 1.0..600.0,
    ) {
        let conditions = Conditions {
            wind_from_left_m_s: wind,
            wind_from_behind_m_s: behind,
            slope_deg: slope,
            ..Conditions::still(air)
        };
        let long = trajectory(&load, &conditions, 2.0, 600.0).unwrap().at(range);
        let short = trajectory(&load, &conditions, 2.0, range).unwrap().at(range);
        prop_assert!((long.height_m - short.height_m).abs() < 3e-5);
        prop_assert!((long.drift_m - short.drift_m).abs() < 3e-5);
        prop_assert!((long.velocity_m_s - short.velocity_m_s).abs() < 3e-3);
        prop_assert!((long.time_s - short.time_s).abs() < 3e-6);
    }

    #[test]
    fn a_better_coefficient_and_thinner_air_keep_more_speed(
        bc in 0.1..0.6, v in 300.0..1100.0, h in 0.0..3000.0,
    ) {
        let speed = |bc: f64, air: Air| {
            let l = Load::new(DragFunction::G1, bc, v).unwrap();
            trajectory(&l, &Conditions::still(air), 1.0, 300.0).unwrap().at(300.0)
        };
        let here = speed(bc, SEA_LEVEL);
        let better = speed(bc * 1.05, SEA_LEVEL);
        prop_assert!(better.velocity_m_s > here.velocity_m_s);
        prop_assert!(better.height_m > here.height_m);
        let thin = Air { density_kg_m3: 1.225 * (1.0 - 1e-5 * (h + 100.0)), ..SEA_LEVEL };
        prop_assert!(speed(bc, thin).velocity_m_s > here.velocity_m_s);
    }

    #[test]
    fn wind_from_the_right_is_wind_from_the_left_mirrored(load in loads(), wind in 0.1..15.0) {
        let drift = |w: f64| {
            trajectory(&load, &Conditions::standard().with_wind_from_left(w), 1.0, 300.0)
                .unwrap().at(300.0)
        };
        let (left, right) = (drift(wind), drift(-wind));
        prop_assert_eq!(left.drift_m, -right.drift_m);
        prop_assert_eq!(left.height_m, right.height_m);
        prop_assert!(left.drift_m > 0.0 && left.drift_m < wind * left.time_s);
    }

    #[test]
    fn a_slope_asks_for_less_hold(load in loads(), slope in 15.0..50.0f64, down in any::<bool>()) {
        let z = Zeroed::new(load, SEA_LEVEL, 45.0, 100.0).unwrap();
        let level = z.sighted(&Conditions::standard(), 300.0).unwrap();
        let alpha = if down { -slope } else { slope };
        let steep = z.sighted(&Conditions::standard().on_slope(alpha), 300.0).unwrap();
        prop_assert!(steep.hold_mrad(300.0) < level.hold_mrad(300.0));
        let flat = z.sighted(&Conditions::standard().on_slope(0.0), 300.0).unwrap();
        prop_assert_eq!(flat.hold_mrad(300.0), level.hold_mrad(300.0));
    }

    #[test]
    fn within_the_point_blank_range_the_path_stays_in_the_circle(
        load in loads(), sight in 30.0..70.0, radius in 15.0..120.0,
    ) {
        let pb = point_blank(&load, SEA_LEVEL, sight, radius).unwrap();
        prop_assert!(pb.near_zero_m < pb.zero_m && pb.zero_m < pb.reach_m);
        let z = Zeroed::new(load, SEA_LEVEL, sight, pb.zero_m).unwrap();
        let path = z.sighted_within(pb.reach_m + 20.0);
        for i in 0..=100 {
            let x = pb.inside_from_m + (pb.reach_m - pb.inside_from_m) * f64::from(i) / 100.0;
            prop_assert!(path.path_mm(x).abs() <= radius + 0.05, "{} at {x}", path.path_mm(x));
        }
        prop_assert!(path.path_mm(pb.reach_m + 5.0) < -radius);
        // No other zero carries farther.
        for other in [0.7 * pb.zero_m, 0.95 * pb.zero_m, 1.05 * pb.zero_m] {
            let z = Zeroed::new(load, SEA_LEVEL, sight, other).unwrap();
            let reach = dead_on(&z, radius).unwrap();
            prop_assert!(reach.to_m <= pb.reach_m + 0.1, "{reach:?} {pb:?}");
        }
    }

    #[test]
    fn a_mark_at_the_hold_hits_and_a_range_error_misses(load in loads(), range in 150.0..400.0) {
        let z = Zeroed::new(load, SEA_LEVEL, 45.0, 100.0).unwrap();
        let path = z.sighted(&Conditions::standard(), 420.0).unwrap();
        let hold = path.hold_mrad(range);
        prop_assert!(mark_error_mm(&path, hold, range).abs() < 1e-9);
        prop_assert!(mark_error_mm(&path, hold + 0.1, range) > 0.0);
        // The slope of the hold against a difference quotient.
        let quotient = (path.hold_mrad(range + 0.5) - path.hold_mrad(range - 0.5)).abs() * range;
        prop_assert!((range_error_mm(&path, range, 1.0) - quotient).abs() < 0.02 + 0.01 * quotient);
    }

    #[test]
    fn nothing_panics_whatever_is_handed_over(
        bc in anything(), v in anything(), sight in anything(), zero in anything(),
        range in anything(), slope in anything(),
    ) {
        if let Ok(load) = Load::new(DragFunction::G1, bc, v) {
            if let Ok(z) = Zeroed::new(load, SEA_LEVEL, sight, zero) {
                match z.sighted(&Conditions::standard().on_slope(slope), range) {
                    Ok(path) => prop_assert!(path.path_mm(range).is_finite()),
                    Err(error) => prop_assert!(!error.to_string().is_empty()),
                }
                let _ = dead_on(&z, range);
            }
            let _ = point_blank(&load, SEA_LEVEL, sight, range);
        }
        let _ = atmosphere::standard(range);
        let _ = atmosphere::measured(bc, v, sight);
        let _ = share_inside_circle(bc, v, sight);
        let read = ReadFigures {
            muzzle_velocity_m_s: Some(v),
            bullet_g: Some(sight),
            powder_g: Some(zero),
            bc: Some((DragFunction::G7, bc)),
            rifle_kg: Some(range),
            ..ReadFigures::default()
        };
        let _ = suspicions(&read, typical_loads().first());
        let _ = suspicions(&read, None);
    }

    #[test]
    fn slow_loads_fly_or_say_how_far(bc in 0.003..0.2, v in 30.0..330.0, zero in 3.0..800.0) {
        let load = Load::new(DragFunction::G1, bc, v).unwrap();
        match Zeroed::new(load, SEA_LEVEL, 45.0, zero) {
            Ok(z) => {
                let path = z.sighted(&Conditions::standard(), zero).unwrap();
                prop_assert!(path.path_mm(zero).abs() < 1e-2);
            }
            Err(FlightError::ZeroOutOfReach { farthest_m, zero_m }) => {
                prop_assert!(farthest_m < zero_m + 1.0 && farthest_m > 0.0);
            }
            Err(other) => prop_assert!(false, "{other}"),
        }
    }

    #[test]
    fn first_plane_marks_do_not_know_the_magnification(s in 0.01..20.0, reference in 1.0..40.0, m in 1.0..40.0) {
        prop_assert_eq!(true_subtension_mrad(FocalPlane::First, s, reference, m), s);
        let second = true_subtension_mrad(FocalPlane::Second, s, reference, m);
        // In the second plane the eye sees the same at any power.
        let seen = apparent_arcmin(second, m);
        prop_assert!((seen - apparent_arcmin(s, reference)).abs() < 1e-9 * seen);
        prop_assert!((true_width_mrad(seen, m) - second).abs() < 1e-12 * second.max(1.0));
    }

    #[test]
    fn field_and_clicks_come_back(field in 1.0..60.0f64, m in 1.0..10.0f64, hold in -20.0..20.0f64) {
        let apparent = apparent_field_deg(field / m, m);
        prop_assert!((true_field_deg(apparent, m) - field / m).abs() < 1e-9);
        for unit in ClickUnit::ALL {
            prop_assert!((unit.clicks(hold) * unit.mrad() - hold).abs() < 1e-12);
            let left = unit.rounding_error_mm(hold, 100.0);
            prop_assert!(left.abs() <= 0.5 * unit.mm_per_100m() + 1e-9);
        }
    }

    #[test]
    fn parallax_is_ordered_and_vanishes_where_it_is_set(
        d in 20.0..60.0, m in 1.0..25.0, p in 2.0..7.0, free in 10.0..200.0, range in 5.0..600.0,
        off in 0.0..4.0,
    ) {
        let d = pupil::effective_objective_mm(d, m);
        let extreme = extreme_mm(d, free, range);
        let clean = without_shadow_mm(d, m, p, free, range);
        let usual = usual_cheek_mm(d, m, p, free, range);
        prop_assert!(usual <= clean && clean <= extreme && usual >= 0.0);
        prop_assert_eq!(extreme_mm(d, free, free), 0.0);
        if let Some(error) = with_offset_mm(d, m, p, off, free, range) {
            prop_assert!(error <= extreme + 1e-9 && error >= 0.0);
        }
        let b = eye_box(d / m, p, 21.0);
        prop_assert!(b.full_sideways_mm <= b.gone_sideways_mm);
        prop_assert!(b.full_along_mm <= b.half_along_mm);
    }

    #[test]
    fn travel_is_shared_between_up_and_down(
        total in 10.0..40.0, incline in 0.0..12.0, angle in 0.5..2.0, off in 0.0..2.0, wind in 0.0..4.0,
    ) {
        let mounted = Mounted {
            total_mrad: total,
            incline_mrad: incline,
            zero_angle_mrad: angle,
            misalignment_mrad: off,
            windage_used_mrad: wind,
        };
        let t = mounted.travel().unwrap();
        prop_assert!((t.up_mrad + t.down_mrad - 2.0 * (t.half_range_mrad - off)).abs() < 1e-9);
        prop_assert!(t.half_range_mrad <= 0.5 * total);
        prop_assert_eq!(mounted.check().is_ok(), t.down_mrad >= 0.0 && t.up_mrad >= 0.0);
        if let Some((least, most)) = mounted.inclines_for(6.0, 1.0) {
            for incline in [least, most] {
                let t = Mounted { incline_mrad: incline, ..mounted }.travel().unwrap();
                prop_assert!(t.up_mrad >= 6.0 - 1e-9 && (t.down_mrad >= 1.0 - 1e-9 || incline == 0.0));
            }
        }
    }

    #[test]
    fn the_least_height_is_high_enough_and_a_millimetre_less_is_not(
        bell in 26.0..66.0, radius in 6.0..13.0, under in any::<bool>(), iron in 0.0..12.0,
        incline in 0.0..12.0,
    ) {
        let c = Clearances {
            barrel_radius_mm: radius,
            rail_under_bell: under,
            iron_sights_mm: iron,
            incline_mrad: incline,
            ..Clearances::usual(bell, 25.4)
        };
        let h = c.least_height();
        prop_assert!(rings_kept(&c, 25.4, h.centre_over_rail_mm).is_ok());
        if h.limit != scopewright::rifle::mounting::HeightLimit::Ring {
            prop_assert!(rings_kept(&c, 25.4, h.centre_over_rail_mm - 1.0).is_err());
        }
    }

    #[test]
    fn a_turret_place_keeps_both_rings_on_the_tube(
        front in 60.0..180.0, w in 5.0..15.0, length in 250.0..420.0, d in 24.0..56.0,
    ) {
        let tube = TubeLayout::typical(length, d, 30.0);
        let rings = Rings { front_mm: front, rear_mm: 0.0, half_width_mm: w };
        if let Ok((from, to)) = turret_place_mm(&tube, &rings) {
            for x in [from, to] {
                prop_assert!(front - x - w >= tube.front_mm.0 - 1e-9);
                prop_assert!(front - x + w <= tube.front_mm.1 + 1e-9);
                prop_assert!(x - w >= tube.rear_mm.0 - 1e-9);
                prop_assert!(x + w <= tube.rear_mm.1 + 1e-9);
            }
        }
    }

    #[test]
    fn the_share_in_a_circle_rises_with_it_and_falls_off_centre(
        r in 0.01..30.0, b in 0.0..30.0, sigma in 0.05..5.0,
    ) {
        let share = share_inside_circle(r, b, sigma);
        prop_assert!((0.0..=1.0).contains(&share));
        prop_assert!(share_inside_circle(r * 1.1, b, sigma) >= share - 1e-12);
        prop_assert!(share_inside_circle(r, b + 0.5, sigma) <= share + 1e-12);
        let range = range_for_share_m(r, sigma, 0.9);
        prop_assert!((share_inside_circle(r, 0.0, sigma * range) - 0.9).abs() < 1e-9);
    }

    #[test]
    fn recoil_balances_momentum(b in 0.5..40.0, v in 100.0..1200.0, p in 0.0..8.0, m in 1.5..8.0) {
        let r = free_recoil(b, v, p, m, GasFactor::Rifle);
        prop_assert!((m * r.velocity_m_s - 1e-3 * (b + 1.75 * p) * v).abs() < 1e-9);
        let heavier = free_recoil(b, v, p, m + 0.5, GasFactor::Rifle);
        prop_assert!(heavier.energy_j < r.energy_j);
    }
}

#[test]
fn figures_in_the_wrong_unit_are_recognised_for_every_typical_load() {
    for typical in typical_loads() {
        let right = ReadFigures {
            muzzle_velocity_m_s: Some(typical.muzzle_velocity_m_s),
            bullet_g: Some(typical.bullet_g),
            bullet_diameter_mm: Some(typical.bullet_diameter_mm),
            powder_g: Some(typical.powder_g),
            bc: Some((typical.drag, typical.bc_lb_in2)),
            rifle_kg: Some(3.5),
        };
        assert_eq!(suspicions(&right, Some(typical)), [], "{}", typical.key);
        assert_eq!(suspicions(&right, None), [], "{}", typical.key);
        let feet = ReadFigures {
            muzzle_velocity_m_s: Some(typical.muzzle_velocity_m_s / 0.3048),
            ..right
        };
        let found = suspicions(&feet, Some(typical));
        assert!(
            matches!(found.first(), Some(Suspicion::FeetPerSecond { meant_m_s, .. })
                if (meant_m_s - typical.muzzle_velocity_m_s).abs() < 1e-9),
            "{} {found:?}",
            typical.key
        );
        let grains = ReadFigures {
            bullet_g: Some(typical.bullet_g / G_PER_GRAIN),
            ..right
        };
        let found = suspicions(&grains, Some(typical));
        assert!(
            matches!(found.first(), Some(Suspicion::BulletGrains { meant_g, .. })
                if (meant_g - typical.bullet_g).abs() < 1e-9),
            "{} {found:?}",
            typical.key
        );
        if typical.powder_g > 0.0 {
            let grains = ReadFigures {
                powder_g: Some(typical.powder_g / G_PER_GRAIN),
                ..right
            };
            let found = suspicions(&grains, Some(typical));
            assert!(
                matches!(found.first(), Some(Suspicion::PowderGrains { .. })),
                "{}",
                typical.key
            );
        }
    }
}

#[test]
fn a_g1_coefficient_given_as_g7_is_recognised() {
    for typical in typical_loads() {
        let read = ReadFigures {
            bc: Some((DragFunction::G7, typical.bc_lb_in2)),
            ..ReadFigures::default()
        };
        let found = suspicions(&read, Some(typical));
        if typical.drag == DragFunction::G1 && typical.bc_lb_in2 > 0.35 && typical.bullet_g < 17.0 {
            assert!(
                matches!(found.first(), Some(Suspicion::G1GivenAsG7 { .. })),
                "{}",
                typical.key
            );
        }
        if typical.muzzle_velocity_m_s < 335.0 {
            assert!(!found.is_empty(), "{}", typical.key);
        }
    }
}

/// Downhill near the speed of sound gravity all but cancels drag: steps stay short all the
/// same, and a reading inside one is as good as its end.
#[test]
fn steps_stay_short_where_gravity_cancels_drag() {
    let load = Load::new(DragFunction::G7, 0.316_048_824, 406.986_320_6).unwrap();
    let conditions = Conditions {
        wind_from_behind_m_s: -7.432_904,
        slope_deg: -37.713_307,
        ..Conditions::still(Air {
            density_kg_m3: 0.839_338_917,
            speed_of_sound_m_s: 331.318_408,
            ..SEA_LEVEL
        })
    };
    let range = 510.390_032;
    let long = trajectory(&load, &conditions, 2.0, 600.0).unwrap();
    let short = trajectory(&load, &conditions, 2.0, range).unwrap();
    let off_m = long.at(range).height_m - short.at(range).height_m;
    assert!(off_m.abs() < 1e-5, "{off_m}");
}
