//! The ranges that tie with a pick, and how much each element matters.

use super::candidates::Candidate;
use super::line::{band, up_from_zero_mrad};
use super::ranking::{NEAR_TIE_POINTS, Ranked};
use super::report::{
    Band, Choices, Grade, Lit, Parallax, Plane, Ranges, Reticle, Span, Standing, Turret,
};
use crate::sight::field::field_m_per_100m;

/// From this loss on an element is a must, percentage points.
const MUST_POINTS: f64 = 3.0;

/// The best value that each setting of an element reaches, in the order of the settings.
struct Best<T> {
    list: Vec<(T, f64)>,
}

impl<T: PartialEq + Copy> Best<T> {
    fn new() -> Self {
        Self { list: Vec::new() }
    }

    fn put(&mut self, setting: T, value: f64) {
        match self.list.iter_mut().find(|(known, _)| *known == setting) {
            Some((_, best)) => *best = best.max(value),
            None => self.list.push((setting, value)),
        }
    }
}

fn standing(loss: Option<f64>) -> Standing {
    match loss {
        None => Standing::Free,
        Some(loss) if loss > MUST_POINTS => Standing::Must,
        Some(_) => Standing::Wish,
    }
}

impl Best<f64> {
    /// The settings around the pick's own that tie without a gap.
    fn span(mut self, own: f64, reference: f64) -> Span {
        crate::plain::sort_by(&mut self.list, |a, b| a.0.total_cmp(&b.0));
        let at = self
            .list
            .iter()
            .position(|(setting, _)| *setting == own)
            .unwrap_or(0);
        let ties = |value: f64| value >= reference - NEAR_TIE_POINTS;
        let mut low = at;
        while low > 0 && ties(self.list[low - 1].1) {
            low -= 1;
        }
        let mut high = at;
        while high + 1 < self.list.len() && ties(self.list[high + 1].1) {
            high += 1;
        }
        let outside = [
            low.checked_sub(1).and_then(|i| self.list.get(i)),
            self.list.get(high + 1),
        ];
        let loss = outside
            .into_iter()
            .flatten()
            .map(|(_, value)| reference - value)
            .fold(None, |worst: Option<f64>, loss| {
                Some(worst.map_or(loss, |w| w.max(loss)))
            });
        Span {
            least: self.list.get(low).map_or(own, |(setting, _)| *setting),
            most: self.list.get(high).map_or(own, |(setting, _)| *setting),
            standing: standing(loss),
        }
    }
}

impl<T: PartialEq + Copy> Best<T> {
    /// The settings that tie, the pick's own first.
    fn choices(self, own: T, reference: f64) -> Choices<T> {
        let ties = |value: f64| value >= reference - NEAR_TIE_POINTS;
        let mut any_of = vec![own];
        any_of.extend(
            self.list
                .iter()
                .filter(|(setting, value)| *setting != own && ties(*value))
                .map(|(setting, _)| *setting),
        );
        // The nearest thing that does not tie tells how much it matters.
        let loss = self
            .list
            .iter()
            .filter(|(_, value)| !ties(*value))
            .map(|(_, value)| reference - value)
            .fold(None, |least: Option<f64>, loss| {
                Some(least.map_or(loss, |l| l.min(loss)))
            });
        Choices {
            any_of,
            standing: standing(loss),
        }
    }
}

fn rounded(x: f64, step: f64) -> f64 {
    (x / step).round() * step
}

/// The ranges of a pick. For the first, every other element may change along with the one
/// that is looked at; for the others span and objective stay, but for one of them.
#[must_use]
pub fn ranges(ranked: &Ranked, pick: usize, everything: bool) -> Ranges {
    let own: &Candidate = &ranked.candidates[pick];
    let o = &own.specification;
    let reference = ranked.values[pick];
    let near = |c: &Candidate| {
        let s = &c.specification;
        let differs = [
            s.magnification_low != o.magnification_low,
            s.magnification_high != o.magnification_high,
            s.objective_mm != o.objective_mm,
        ];
        everything || differs.iter().filter(|d| **d).count() <= 1
    };
    let mut low = Best::new();
    let mut high = Best::new();
    let mut objective = Best::new();
    let mut tube = Best::<f64>::new();
    let mut plane = Best::<Plane>::new();
    let mut reticle = Best::<Reticle>::new();
    let mut lit = Best::<Lit>::new();
    let mut parallax = Best::<Parallax>::new();
    let mut elevation = Best::<Turret>::new();
    let mut eye_relief = Best::new();
    let mut grade = Best::<Grade>::new();
    let mut bands = Best::<Band>::new();
    let (mut mass, mut field, mut up) = (
        (own.mass_g, own.mass_g),
        (f64::INFINITY, 0.0f64),
        up_from_zero_mrad(&ranked.ground, own),
    );
    let mut mass_loss = None;
    for (index, c) in ranked.candidates.iter().enumerate() {
        let value = ranked.values[index];
        if !value.is_finite() || !near(c) {
            continue;
        }
        let s = &c.specification;
        low.put(s.magnification_low, value);
        high.put(s.magnification_high, value);
        objective.put(s.objective_mm, value);
        tube.put(s.tube_mm, value);
        plane.put(s.plane.into(), value);
        reticle.put(s.reticle.into(), value);
        lit.put(s.illumination.into(), value);
        parallax.put(s.parallax.into(), value);
        elevation.put(s.elevation.into(), value);
        eye_relief.put(s.eye_relief_mm, value);
        grade.put(s.grade.into(), value);
        bands.put(band(c.price), value);
        if value >= reference - NEAR_TIE_POINTS {
            mass = (mass.0.min(c.mass_g), mass.1.max(c.mass_g));
            let w = field_m_per_100m(c.apparent_deg, s.magnification_low);
            field = (field.0.min(w), field.1.max(w));
            up = up.max(up_from_zero_mrad(&ranked.ground, c));
        } else if c.mass_g > own.mass_g + 150.0 {
            let loss = reference - value;
            mass_loss = Some(mass_loss.map_or(loss, |l: f64| l.min(loss)));
        }
    }
    let needed = ranked
        .ground
        .farthest_needed_mrad()
        .map_or(0.0, |mrad| rounded(mrad + 0.25, 0.5));
    let low = low.span(o.magnification_low, reference);
    Ranges {
        mag_high: high.span(o.magnification_high, reference),
        objective_mm: objective.span(o.objective_mm, reference),
        tube_mm: tube.choices(o.tube_mm, reference),
        plane: plane.choices(o.plane.into(), reference),
        reticle: reticle.choices(o.reticle.into(), reference),
        illumination: lit.choices(o.illumination.into(), reference),
        parallax: parallax.choices(o.parallax.into(), reference),
        elevation: elevation.choices(o.elevation.into(), reference),
        up_from_zero_mrad: Span {
            least: needed.min(up),
            most: rounded(up, 0.5).max(needed.min(up)),
            standing: if needed > 2.0 {
                Standing::Must
            } else {
                Standing::Free
            },
        },
        eye_relief_mm: eye_relief.span(o.eye_relief_mm, reference),
        field_low_m_per_100m: Span {
            least: rounded(field.0.min(field.1), 0.1),
            most: rounded(field.1, 0.1),
            standing: low.standing,
        },
        grade: grade.choices(o.grade.into(), reference),
        mass_g: Span {
            least: rounded(mass.0, 10.0),
            most: rounded(mass.1, 10.0),
            standing: standing(mass_loss),
        },
        price_band: bands.choices(band(own.price), reference),
        mag_low: low,
    }
}
