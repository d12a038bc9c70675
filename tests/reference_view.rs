//! Reticles in the drawing against their own data, to a tenth of a pixel, at three
//! magnifications in both planes; scale against the exact relations.

use scopewright::drawing::view::{
    Cutout, Layer, Paint, backdrop, covered_cm, px_per_cm, px_per_label_mrad, px_per_mrad,
    reticle_layers, thinnest_px, yardstick,
};
use scopewright::sight::field::field_m_per_100m;
use scopewright::sight::reticle::{DotSize, Reticle, Shape, TYPICAL_HOLDS_MRAD, reticle_with};
use scopewright::sight::{FocalPlane, ReticleFamily};

const APPARENT_DEG: f64 = 22.0;
const REFERENCE: f64 = 10.0;

fn window() -> Cutout {
    Cutout {
        width_px: 328.0,
        height_px: 148.0,
        field_px: 328.0,
    }
}

/// The numbers of path data, in order.
fn numbers(path: &str) -> Vec<f64> {
    path.split(|c: char| !(c.is_ascii_digit() || c == '.' || c == '-'))
        .filter(|word| !word.is_empty())
        .map(|word| word.parse().unwrap())
        .collect()
}

#[test]
fn the_field_is_as_wide_as_the_tangent_relation_says() {
    // ISO 14132-1:2002: tan ω′ = M tan ω, so half the width at 100 m is 100·tan ω′/M.
    for magnification in [1.0, 2.5, 10.0, 50.0] {
        let scale = px_per_mrad(328.0, APPARENT_DEG, magnification);
        let width_mrad = 328.0 / scale;
        let width_m = field_m_per_100m(APPARENT_DEG, magnification);
        assert!((width_mrad * 0.1 - width_m).abs() < 1e-9 * width_m);
        // A metre at 100 m is 10 mrad.
        assert!((px_per_cm(scale, 100.0) * 100.0 - 10.0 * scale).abs() < 1e-9);
    }
}

/// The pieces of a reticle that are not drawn where the data say, to a tenth of a pixel, and how
/// many were compared; `truth` is the scale in px for a labelled mrad.
fn misplaced(
    reticle: &Reticle,
    layers: &[Layer],
    centre: (f64, f64),
    truth: f64,
) -> (Vec<String>, usize) {
    let mut bad = Vec::new();
    let mut compared = 0;
    for piece in &reticle.pieces {
        let (width, at) = match piece.shape {
            Shape::Line {
                x1_mrad,
                y1_mrad,
                x2_mrad,
                y2_mrad,
                width_mrad,
            } => {
                let horizontal = y1_mrad == y2_mrad;
                let (x, y) = (centre.0 + x1_mrad * truth, centre.1 - y1_mrad * truth);
                let (x2, y2) = (centre.0 + x2_mrad * truth, centre.1 - y2_mrad * truth);
                let seen = if horizontal {
                    (0.0..=148.0).contains(&y) && x.max(x2) > 0.0 && x.min(x2) < 328.0
                } else {
                    (0.0..=328.0).contains(&x) && y.max(y2) > 0.0 && y.min(y2) < 148.0
                };
                if !seen {
                    continue;
                }
                let clip = |v: f64, most: f64| v.clamp(-4.0, most + 4.0);
                let at = if horizontal {
                    vec![clip(x, 328.0), y, clip(x2, 328.0)]
                } else {
                    vec![x, clip(y, 148.0), clip(y2, 148.0)]
                };
                (width_mrad, at)
            }
            Shape::Ring {
                radius_mrad,
                width_mrad,
            } => (width_mrad, vec![centre.0 - radius_mrad * truth, centre.1]),
            Shape::Dot {
                x_mrad,
                y_mrad,
                diameter_mrad,
            } => {
                let (x, y) = (centre.0 + x_mrad * truth, centre.1 - y_mrad * truth);
                if !((0.0..=328.0).contains(&x) && (0.0..=148.0).contains(&y)) {
                    continue;
                }
                (diameter_mrad, vec![x - 0.5 * diameter_mrad * truth, y])
            }
        };
        let found = layers.iter().any(|layer| {
            if layer.role != piece.role || layer.lit != piece.lit {
                return false;
            }
            if let Paint::Stroke { width_px } = layer.paint
                && (width_px - width * truth).abs() > 0.1
            {
                return false;
            }
            numbers(&layer.path)
                .windows(at.len())
                .any(|w| w.iter().zip(&at).all(|(a, b)| (a - b).abs() < 0.1))
        });
        if !found {
            bad.push(format!("{piece:?} at {at:?}"));
        }
        compared += 1;
    }
    (bad, compared)
}

#[test]
fn every_line_and_mark_lies_where_the_data_say() {
    let window = window();
    let mut all = 0;
    for family in ReticleFamily::ALL {
        let reticle = reticle_with(family, DotSize::Universal, &TYPICAL_HOLDS_MRAD);
        for plane in [FocalPlane::First, FocalPlane::Second] {
            for magnification in [2.5, 6.0, 10.0] {
                let at_target = px_per_mrad(window.field_px, APPARENT_DEG, magnification);
                let scale = px_per_label_mrad(plane, at_target, REFERENCE, magnification);
                // What the label means at the target: ×1 in the first plane, ×M_ref/M in the
                // second.
                let truth = match plane {
                    FocalPlane::First => at_target,
                    FocalPlane::Second => at_target * REFERENCE / magnification,
                };
                assert!((scale - truth).abs() < 1e-9 * truth);
                let centre = window.centre_px(1.0);
                let layers = reticle_layers(&reticle, scale, centre, &window);
                let (bad, compared) = misplaced(&reticle, &layers, centre, truth);
                assert!(
                    bad.is_empty(),
                    "{family:?} {plane:?} {magnification}×: {bad:?}"
                );
                all += compared;
            }
        }
    }
    println!("{all} pieces compared");
    assert!(all > 600, "{all}");
}

#[test]
fn a_drawing_that_is_a_little_off_is_found_out() {
    let window = window();
    let centre = window.centre_px(1.0);
    for family in ReticleFamily::ALL {
        let reticle = reticle_with(family, DotSize::Universal, &TYPICAL_HOLDS_MRAD);
        let truth = px_per_mrad(window.field_px, APPARENT_DEG, 10.0);
        let count = |drawn: &[Layer]| misplaced(&reticle, drawn, centre, truth).0.len();
        assert_eq!(count(&reticle_layers(&reticle, truth, centre, &window)), 0);
        // Moved by an eighth of a pixel in both directions.
        let aside = (centre.0 + 0.125, centre.1 + 0.125);
        let moved = reticle_layers(&reticle, truth, aside, &window);
        assert!(count(&moved) > 0, "{family:?} moved");
        // Of another width.
        let mut thick = reticle_layers(&reticle, truth, centre, &window);
        for layer in &mut thick {
            if let Paint::Stroke { width_px } = &mut layer.paint {
                *width_px += 0.125;
            }
        }
        assert!(count(&thick) > 0, "{family:?} thickened");
    }
    // Drawn as if in the other plane.
    let reticle = reticle_with(
        ReticleFamily::MradMarks,
        DotSize::Universal,
        &TYPICAL_HOLDS_MRAD,
    );
    let truth = px_per_mrad(window.field_px, APPARENT_DEG, 6.0);
    let other = reticle_layers(&reticle, truth * REFERENCE / 6.0, centre, &window);
    assert!(misplaced(&reticle, &other, centre, truth).0.len() > 10);
}

#[test]
fn a_mark_keeps_its_size_on_the_target_in_the_first_plane_and_to_the_eye_in_the_second() {
    let at = |plane, magnification| {
        let scale = px_per_mrad(328.0, APPARENT_DEG, magnification);
        (
            scale,
            px_per_label_mrad(plane, scale, REFERENCE, magnification),
        )
    };
    for magnification in [1.0, 2.5, 10.0] {
        let (target, label) = at(FocalPlane::First, magnification);
        assert!((label / target - 1.0).abs() < 1e-12);
        let (_, second) = at(FocalPlane::Second, magnification);
        let (_, second_at_reference) = at(FocalPlane::Second, REFERENCE);
        assert!((second - second_at_reference).abs() < 1e-9);
    }
}

#[test]
fn layers_depend_on_the_reticle_alone() {
    let window = window();
    for family in ReticleFamily::ALL {
        let reticle = reticle_with(family, DotSize::Universal, &TYPICAL_HOLDS_MRAD);
        let shape = |scale: f64| -> Vec<_> {
            reticle_layers(&reticle, scale, window.centre_px(1.0), &window)
                .iter()
                .map(|layer| (layer.role, layer.lit, layer.label_mrad))
                .collect()
        };
        assert_eq!(shape(0.01), shape(200.0), "{family:?}");
        assert!(thinnest_px(&reticle, 1.0) > 0.0);
        assert!(yardstick(&reticle).1 > 0.0, "{family:?}");
    }
}

#[test]
fn the_yardstick_is_the_step_of_the_longer_marks() {
    let step = |family| yardstick(&reticle_with(family, DotSize::Universal, &[0.45, 1.2])).1;
    assert_eq!(step(ReticleFamily::MradMarks), 1.0);
    assert_eq!(step(ReticleFamily::MarkGrid), 1.0);
    // 2 MOA; 1 mrad is 10 800/(1000 π) minutes.
    let moa = step(ReticleFamily::MoaMarks);
    assert!(
        (moa * 10.8 / core::f64::consts::PI - 2.0).abs() < 1e-9,
        "{moa}"
    );
    // A mark for a load near half a mrad is itself.
    assert_eq!(step(ReticleFamily::HoldMarks), 0.45);
}

#[test]
fn no_two_families_are_drawn_alike() {
    let window = Cutout {
        width_px: 320.0,
        height_px: 320.0,
        field_px: 320.0,
    };
    // At 1× in the first plane a fine cross is gone and only bars are left: two families with
    // the same bars then look alike in the glass as well.
    for magnification in [3.0, 10.0] {
        let scale = px_per_mrad(window.field_px, APPARENT_DEG, magnification);
        // What is at least a sixth of a pixel wide, to the pixel.
        let seen = |family| -> Vec<(i64, Vec<i64>)> {
            let reticle = reticle_with(family, DotSize::Universal, &TYPICAL_HOLDS_MRAD);
            reticle_layers(&reticle, scale, window.centre_px(1.0), &window)
                .iter()
                .filter(|layer| layer.label_mrad * scale > 1.0 / 6.0)
                .map(|layer| {
                    let width = (8.0 * layer.label_mrad * scale).round() as i64;
                    let at = numbers(&layer.path);
                    (width, at.into_iter().map(|v| v.round() as i64).collect())
                })
                .collect()
        };
        for (n, a) in ReticleFamily::ALL.into_iter().enumerate() {
            for b in &ReticleFamily::ALL[n + 1..] {
                assert_ne!(seen(a), seen(*b), "{a:?} {b:?} {magnification}×");
            }
        }
    }
}

#[test]
fn the_centre_is_snapped_to_a_device_pixel() {
    let window = window();
    assert_eq!(window.centre_px(1.0), (164.5, 74.5));
    assert_eq!(window.centre_px(2.0), (164.25, 74.25));
    assert_eq!(window.centre_px(0.0), (164.5, 74.5));
    // Wherever the drawing begins and however fine the screen, the aim is the middle of a pixel
    // and at most one away from where it belongs.
    for ratio in [1.0, 1.25, 1.5, 2.0, 3.0] {
        for corner in [(0.0, 0.0), (16.0, 101.0), (17.0, 33.5), (300.328125, 7.0)] {
            let (x, y) = window.centre_on_screen_px(ratio, corner);
            for (at, corner, half) in [(x, corner.0, 164.0), (y, corner.1, 74.0)] {
                let device = (at + corner) * ratio;
                let off = (device - device.floor() - 0.5).abs();
                assert!(off < 1.0 / 64.0, "{ratio} {corner}: {device}");
                assert!((at - half).abs() * ratio <= 0.5 + 1.0 / 64.0);
            }
        }
    }
}

#[test]
fn covering_is_milliradians_times_range() {
    // 1 mrad is 10 cm at 100 m by definition.
    assert_eq!(covered_cm(1.0, 100.0), 10.0);
    assert_eq!(covered_cm(0.5, 80.0), 4.0);
}

#[test]
fn the_wood_stands_on_level_ground_behind() {
    // Eye 4 m up, aim 0.5 m up at 80 m, wood 40 m behind: foot at −4/120, aim at −3.5/80.
    let scene = backdrop(80.0, 4.0, 0.5, 40.0, 15.0);
    assert!((scene.wood_foot_mrad - (1000.0 * (3.5 / 80.0 - 4.0 / 120.0))).abs() < 1e-9);
    assert!((scene.wood_height_mrad - 125.0).abs() < 1e-9);
}
