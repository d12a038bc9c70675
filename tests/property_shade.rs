//! The eye off its place: shadow and light against exact relations and against counting.

use scopewright::drawing::glow::{Glow, illuminance_at_eye_lx, lit_area_mrad2, veil_cd_m2};
use scopewright::drawing::shade::{Shade, Stance, share_entering};
use scopewright::sight::ReticleFamily;
use scopewright::sight::eye_box::eye_box;
use scopewright::sight::reticle::reticle;

fn stance(aside_mm: f64, behind_mm: f64) -> Stance {
    Stance {
        exit_pupil_mm: 7.0,
        eye_pupil_mm: 5.0,
        apparent_field_deg: 22.0,
        aside_mm,
        behind_mm,
    }
}

/// Overlap of two discs over the smaller one, by counting points of a fine grid.
fn counted(exit_mm: f64, pupil_mm: f64, apart_mm: f64) -> f64 {
    let (a, b) = (0.5 * exit_mm, 0.5 * pupil_mm);
    let least = a.min(b);
    let n = 1200;
    let (mut both, mut small) = (0u32, 0u32);
    for i in 0..n {
        for j in 0..n {
            let at = |k: i32| (f64::from(k) + 0.5) / f64::from(n) * 2.0 - 1.0;
            // Points of the smaller disc, which stands at 0.
            let (x, y) = (least * at(i), least * at(j));
            if x * x + y * y > least * least {
                continue;
            }
            small += 1;
            let dx = x - apart_mm;
            let other = a.max(b);
            if dx * dx + y * y <= other * other {
                both += 1;
            }
        }
    }
    f64::from(both) / f64::from(small)
}

#[test]
fn the_share_that_enters_is_the_overlap_counted_out() {
    for (exit, pupil) in [(7.0, 5.0), (4.0, 6.0), (5.0, 5.0)] {
        for apart in [0.0, 0.7, 1.5, 3.0, 4.8, 6.1] {
            let got = share_entering(exit, pupil, apart);
            let want = counted(exit, pupil, apart);
            assert!(
                (got - want).abs() < 2e-3,
                "{exit} {pupil} {apart}: {got} {want}"
            );
        }
    }
    assert_eq!(share_entering(0.0, 5.0, 0.0), 0.0);
}

#[test]
fn the_shadow_begins_and_ends_where_the_eye_box_does() {
    let room = eye_box(7.0, 5.0, 22.0);
    assert_eq!(
        stance(room.full_sideways_mm - 0.01, 0.0).shade(300.0),
        Shade::None
    );
    let Shade::Even(share) = stance(room.full_sideways_mm + 0.1, 0.0).shade(300.0) else {
        panic!("at the eye point all darkens alike");
    };
    assert!(share < 1.0 && share > 0.9);
    assert_eq!(
        stance(room.gone_sideways_mm, 0.0).shade(300.0),
        Shade::Even(0.0)
    );
    assert_eq!(
        stance(0.0, room.full_along_mm - 0.01).shade(300.0),
        Shade::None
    );
    let Shade::Rings {
        centre_px,
        black_px,
        stops,
    } = stance(0.0, room.full_along_mm + 0.1).shade(300.0)
    else {
        panic!("too far back the edge is shaded");
    };
    assert_eq!(centre_px, 0.0);
    // Unshaded out to the edge of the field, all but a little.
    let from_px = stops[0].0 * black_px;
    assert!(from_px < 150.0 && from_px > 145.0, "{from_px}");
    // Half light at the edge where the larger of the two discs has moved by its own half.
    let edge = stance(0.0, room.half_along_mm).share_at(1.0);
    assert!(edge > 0.4 && edge < 0.6, "{edge}");
}

#[test]
fn the_shadow_comes_from_the_side_of_the_eye_when_it_is_too_far_back() {
    let far = stance(2.0, 20.0);
    assert!(far.share_at(1.0) < far.share_at(0.0) && far.share_at(0.0) < far.share_at(-1.0));
    let near = stance(2.0, -20.0);
    assert!(near.share_at(1.0) > near.share_at(-1.0));
    let Shade::Rings {
        centre_px,
        black_px,
        stops,
    } = far.shade(300.0)
    else {
        panic!("rings");
    };
    assert!(centre_px < 0.0);
    // The drawing's own course at the right edge is the share there.
    let at = (150.0 - centre_px) / black_px;
    let after = stops.iter().position(|(stop, _)| *stop >= at).unwrap();
    let ((x0, y0), (x1, y1)) = (stops[after - 1], stops[after]);
    let drawn = y0 + (at - x0) / (x1 - x0) * (y1 - y0);
    assert!((drawn - far.share_at(1.0)).abs() < 0.01, "{drawn}");
    assert!(stops.iter().zip(&stops[1..]).all(|(a, b)| a.1 >= b.1));
    assert_eq!(stops[8].1, 0.0);
}

#[test]
fn extremes_of_the_eye_are_drawn_without_nonsense() {
    for exit_pupil_mm in [0.5, 11.0] {
        for (aside_mm, behind_mm) in [
            (0.0, 0.0),
            (8.0, 60.0),
            (-8.0, -60.0),
            (0.0, 0.04),
            (8.0, 0.06),
        ] {
            let stance = Stance {
                exit_pupil_mm,
                aside_mm,
                behind_mm,
                ..stance(0.0, 0.0)
            };
            let mean = stance.mean_share();
            assert!((0.0..=1.0).contains(&mean), "{mean}");
            if let Shade::Rings {
                centre_px,
                black_px,
                stops,
            } = stance.shade(300.0)
            {
                assert!(centre_px.is_finite() && black_px.is_finite() && black_px > 0.0);
                assert!(
                    stops
                        .iter()
                        .all(|(at, share)| (0.0..=1.0).contains(at) && (0.0..=1.0).contains(share))
                );
            }
        }
    }
}

#[test]
fn a_small_light_veils_as_the_square_of_its_distance() {
    // Stiles and Holladay: 1 lx at the eye, 10° beside it, young eye: 0.1 cd/m².
    assert!((veil_cd_m2(1.0, 10.0, 0.0) - 0.1).abs() < 1e-12);
    assert!((veil_cd_m2(1.0, 10.0, 70.0) - 0.2).abs() < 1e-12);
    assert_eq!(veil_cd_m2(1.0, 0.1, 20.0), veil_cd_m2(1.0, 1.0, 20.0));
}

#[test]
fn a_dot_lights_the_eye_by_its_seen_size() {
    let dot = reticle(ReticleFamily::CentreDot);
    // A disc of 0.2 mrad: π/4·0.04 mrad².
    assert!((lit_area_mrad2(&dot, 100.0) - 0.25 * core::f64::consts::PI * 0.04).abs() < 1e-12);
    let at = |power| illuminance_at_eye_lx(&dot, Glow::Day, power, 22.0);
    assert!((at(8.0) / at(4.0) - 4.0).abs() < 1e-9);
    // 3000 cd/m² over 2.01e-6 sr at 8×.
    assert!((at(8.0) - 3000.0 * 0.031_416 * 64.0 * 1e-6).abs() < 1e-6);
    let night = illuminance_at_eye_lx(&dot, Glow::Night, 8.0, 22.0);
    assert!((at(8.0) / night - 1e5).abs() < 1.0);
}
