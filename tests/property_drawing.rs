//! The drawings against the measures and the data that they are drawn from.

use scopewright::drawing::silhouette::{self, Figure, Tone, silhouette};
use scopewright::drawing::target;
use scopewright::need::quarry::{ANIMALS, TARGETS};

#[test]
fn every_animal_is_drawn_to_its_measures() {
    for animal in &ANIMALS {
        let height = animal.shoulder_height_mm.map(|mm| mm / 10.0);
        let length = animal.body_length_mm / 10.0;
        let figure = silhouette(animal.key, height, length)
            .unwrap_or_else(|| panic!("{} has no drawing", animal.key));
        assert!(figure.pieces.len() >= 3, "{}", animal.key);
        // Tails, antlers and raised heads reach beyond the trunk, not beyond reason.
        let wide = figure.width_cm() / length;
        assert!((0.45..1.9).contains(&wide), "{} {wide}", animal.key);
        if let Some(height) = height {
            let tall = figure.height_cm() / height;
            assert!((1.0..2.3).contains(&tall), "{} {tall}", animal.key);
        }
        for piece in &figure.pieces {
            assert!(piece.path.starts_with('M') && piece.path.ends_with('Z'));
            assert!(piece.seen_area_cm2 > 0.0, "{}", animal.key);
        }
        // The aiming circle lies on the animal.
        let r = 0.05 * animal.aiming_circle_mm;
        assert!(figure.left_cm < -r && figure.right_cm > r, "{}", animal.key);
        assert!(figure.top_cm < -r && figure.bottom_cm > r, "{}", animal.key);
    }
    assert_eq!(silhouette::keys().count(), ANIMALS.len() + 1);
}

#[test]
fn a_drawing_keeps_the_proportions_of_its_animal() {
    for animal in &ANIMALS {
        let Some(height) = animal.shoulder_height_mm.map(|mm| mm / 10.0) else {
            continue;
        };
        let length = animal.body_length_mm / 10.0;
        let figure = silhouette(animal.key, Some(height), length).unwrap();
        // Drawn for this height over this length: along and up have one scale.
        let alike = silhouette(animal.key, None, length).unwrap();
        let ratio = figure.height_cm() / alike.height_cm();
        assert!((ratio - 1.0).abs() < 0.02, "{} {ratio}", animal.key);
        // The back over the middle of the trunk is as high as the shoulder, within a seventh:
        // a hump, or a back that slopes.
        let mut body = Vec::new();
        for piece in figure
            .pieces
            .iter()
            .filter(|piece| piece.tone == Tone::Dark)
        {
            let outlines = flattened(&piece.path);
            body.extend(
                outlines
                    .into_iter()
                    .max_by(|a, b| span(a).total_cmp(&span(b))),
            );
        }
        let trunk = body
            .into_iter()
            .max_by(|a, b| span(a).total_cmp(&span(b)))
            .unwrap();
        let rump = trunk.iter().map(|at| at.0).fold(f64::INFINITY, f64::min);
        let back = trunk
            .iter()
            .filter(|at| (0.15..0.5).contains(&((at.0 - rump) / length)))
            .map(|at| figure.bottom_cm - at.1)
            .fold(0.0, f64::max);
        assert!(
            (back / height - 1.0).abs() < 1.0 / 7.0,
            "{} {back} {height}",
            animal.key
        );
    }
}

/// Area of the box round an outline.
fn span(outline: &[(f64, f64)]) -> f64 {
    let range = |of: fn(&(f64, f64)) -> f64| {
        let all = outline.iter().map(of);
        all.clone().fold(f64::MIN, f64::max) - all.fold(f64::MAX, f64::min)
    };
    range(|at| at.0) * range(|at| at.1)
}

/// The outlines of path data of `M`, `C` and `Z` as polygons.
fn flattened(path: &str) -> Vec<Vec<(f64, f64)>> {
    path.split('Z')
        .filter(|part| !part.is_empty())
        .map(|part| {
            let n: Vec<f64> = part
                .split(|c: char| !(c.is_ascii_digit() || c == '.' || c == '-'))
                .filter(|word| !word.is_empty())
                .map(|word| word.parse().unwrap())
                .collect();
            let mut at = (n[0], n[1]);
            let mut all = vec![at];
            for c in n[2..].chunks(6) {
                for step in 1..=4 {
                    let t = f64::from(step) / 4.0;
                    let u = 1.0 - t;
                    let mix = |a: f64, b: f64, c: f64, d: f64| {
                        u * u * u * a + 3.0 * u * t * (u * b + t * c) + t * t * t * d
                    };
                    all.push((mix(at.0, c[0], c[2], c[4]), mix(at.1, c[1], c[3], c[5])));
                }
                at = (c[4], c[5]);
            }
            all
        })
        .collect()
}

/// Whether a point lies in a shape, by the winding number.
fn inside(outlines: &[Vec<(f64, f64)>], x: f64, y: f64) -> bool {
    let mut winding = 0;
    for outline in outlines {
        for (n, a) in outline.iter().enumerate() {
            let b = outline[(n + 1) % outline.len()];
            let side = (b.0 - a.0) * (y - a.1) - (x - a.0) * (b.1 - a.1);
            if a.1 <= y && b.1 > y && side > 0.0 {
                winding += 1;
            } else if a.1 > y && b.1 <= y && side < 0.0 {
                winding -= 1;
            }
        }
    }
    winding != 0
}

/// Rows of a figure at this many pixels of height.
const SMALL: usize = 24;
/// Columns to each side of the middle of its trunk's feet.
const HALF: usize = 40;

/// A figure at 24 px: how dark each pixel is, from 0 for the ground to 1.
fn small(figure: &Figure) -> Vec<f64> {
    let pieces: Vec<_> = figure
        .pieces
        .iter()
        .map(|piece| (piece.tone, flattened(&piece.path)))
        .collect();
    let cm = figure.height_cm() / SMALL as f64;
    let middle = 0.5 * (figure.left_cm + figure.right_cm);
    let mut out = Vec::new();
    for row in 0..SMALL {
        for column in 0..2 * HALF {
            let mut sum = 0.0;
            for part in 0..4 {
                let (dx, dy) = (f64::from(part % 2), f64::from(part / 2));
                let x = middle + (column as f64 - HALF as f64 + (dx + 0.5) / 2.0) * cm;
                let y = figure.top_cm + (row as f64 + (dy + 0.5) / 2.0) * cm;
                let tone = pieces.iter().rev().find(|(_, of)| inside(of, x, y));
                sum += match tone {
                    Some((Tone::Dark, _)) => 1.0,
                    Some((Tone::Mid, _)) => 0.6,
                    _ => 0.0,
                } / 4.0;
            }
            out.push(sum);
        }
    }
    out
}

#[test]
fn no_two_animals_look_alike_at_24_px() {
    let all: Vec<_> = ANIMALS
        .iter()
        .map(|animal| {
            let height = animal.shoulder_height_mm.map(|mm| mm / 10.0);
            let figure = silhouette(animal.key, height, animal.body_length_mm / 10.0).unwrap();
            (animal.key, small(&figure))
        })
        .collect();
    let mut nearest = (f64::INFINITY, "", "");
    for (n, (a, pixels_a)) in all.iter().enumerate() {
        for (b, pixels_b) in &all[n + 1..] {
            // The best of all ways to lay one over the other, sideways.
            let apart = (-8..=8_isize)
                .map(|shift| {
                    let (mut differing, mut drawn) = (0.0, 0.0);
                    for (at, one) in pixels_a.iter().enumerate() {
                        let column = (at % (2 * HALF)) as isize + shift;
                        let other = if (0..2 * HALF as isize).contains(&column) {
                            pixels_b[(at as isize + shift) as usize]
                        } else {
                            0.0
                        };
                        differing += (one - other).abs();
                        drawn += one.max(other);
                    }
                    differing / drawn
                })
                .fold(f64::INFINITY, f64::min);
            if apart < nearest.0 {
                nearest = (apart, a, b);
            }
        }
    }
    println!("nearest: {nearest:?}");
    assert!(nearest.0 > 0.2, "{nearest:?}");
}

#[test]
fn every_target_is_drawn_to_its_measures() {
    for row in &TARGETS {
        let target = target::of_key(row.key).unwrap_or_else(|| panic!("{} is missing", row.key));
        let figure = target::figure(target);
        let outer_cm = row.outer_mm.unwrap_or(row.scoring_mm) / 10.0;
        let largest = figure.width_cm().max(figure.height_cm());
        assert!(
            largest >= 0.99 * outer_cm,
            "{} {largest} {outer_cm}",
            row.key
        );
        assert!(!figure.pieces.is_empty());
    }
    assert_eq!(target::KEYS.len(), TARGETS.len());
}

#[test]
fn a_drawing_scales_with_the_animal() {
    let small = silhouette("roe_deer", Some(70.0), 115.0).unwrap();
    let large = silhouette("roe_deer", Some(140.0), 230.0).unwrap();
    assert!((large.width_cm() - 2.0 * small.width_cm()).abs() < 1e-9);
    assert!((large.height_cm() - 2.0 * small.height_cm()).abs() < 1e-9);
    for (a, b) in small.pieces.iter().zip(&large.pieces) {
        assert!((b.seen_area_cm2 - 4.0 * a.seen_area_cm2).abs() < 1e-6 * b.seen_area_cm2);
    }
}

#[test]
fn an_unknown_key_has_no_drawing() {
    assert!(silhouette("unicorn", Some(100.0), 200.0).is_none());
    assert!(target::of_key("unicorn").is_none());
}
