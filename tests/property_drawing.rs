//! The drawings against the measures and the data that they are drawn from.

use scopewright::drawing::silhouette::{self, silhouette};
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
