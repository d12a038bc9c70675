//! What the trade builds: every specification that could be made and is worth selling.
//!
//! # Source
//! Spans, objectives, tubes, settings and reticles that are usual together: common practice,
//! no source. Left out are the oddities that a free combination would offer and nobody
//! builds: spans of 1 to 3, a 20 mm bell on 6 power, a 34 mm tube on a small zoom, adjustable
//! parallax below 9 power.

use std::sync::OnceLock;

use super::limits::FORWARD_FROM_MM;
use crate::sight::{
    Elevation, FieldClass, FocalPlane, GlassGrade, Illumination, ParallaxSetting, ReticleFamily,
    Specification, fits,
};

/// The magnifications at which a zoom is judged: every end of a span and steps between.
pub const GRID: [f64; 29] = [
    1.0, 1.25, 1.5, 1.75, 2.0, 2.5, 3.0, 3.5, 4.0, 5.0, 6.0, 7.0, 8.0, 9.0, 10.0, 12.0, 14.0, 15.0,
    16.0, 18.0, 20.0, 24.0, 25.0, 30.0, 32.0, 36.0, 40.0, 50.0, 60.0,
];

/// Index of a magnification in [`GRID`]; the nearest from below if it is not in it.
#[must_use]
pub fn grid_index(magnification: f64) -> usize {
    GRID.iter()
        .rposition(|&step| step <= magnification + 1e-9)
        .unwrap_or(0)
}

/// A specification with what follows from it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Candidate {
    /// The specification.
    pub specification: Specification,
    /// Stable id: the order of all candidates, and the last word in a tie.
    pub id: u64,
    /// Apparent field, degrees.
    pub apparent_deg: f64,
    /// Mass, g.
    pub mass_g: f64,
    /// Price, A = 0 to E = 4.
    pub price: f64,
}

impl Candidate {
    /// A specification with what follows from it.
    #[must_use]
    pub fn of(specification: Specification) -> Self {
        Self {
            specification,
            id: id(&specification),
            apparent_deg: fits::apparent_field_deg(&specification),
            mass_g: mass_g(&specification),
            price: fits::price_band_index(&specification).value,
        }
    }
}

/// The mass in g: the fit, and 60 g less for the slim eyepiece of a long eye relief.
#[must_use]
pub fn mass_g(specification: &Specification) -> f64 {
    let long = if specification.eye_relief_mm >= FORWARD_FROM_MM {
        60.0
    } else {
        0.0
    };
    (fits::mass_g(specification).value - long).max(200.0)
}

/// The id: every element in its own bits, so that the order is that of the elements.
#[must_use]
pub fn id(s: &Specification) -> u64 {
    let twentieths = |x: f64| ((x * 20.0 + 0.5) as u64).min(2047);
    let (parallax, distance) = match s.parallax {
        ParallaxSetting::Fixed { free_at_m } => (0, free_at_m),
        ParallaxSetting::Adjustable { nearest_m } => (1, nearest_m),
    };
    let mut id = twentieths(s.magnification_low);
    let mut add = |bits: u32, value: u64| id = (id << bits) | (value & ((1 << bits) - 1));
    add(11, twentieths(s.magnification_high));
    add(6, (s.objective_mm + 0.5) as u64);
    add(4, s.grade as u64);
    add(2, s.field as u64);
    add(6, ((s.eye_relief_mm / 5.0) as u64).min(63));
    add(6, (s.tube_mm + 0.5) as u64);
    add(1, parallax);
    add(5, ((distance / 10.0) as u64).min(31));
    add(1, s.plane as u64);
    add(4, s.reticle as u64);
    add(2, s.illumination as u64);
    add(2, s.elevation as u64);
    id
}

/// All that the trade builds, sorted by id.
pub fn all() -> &'static [Candidate] {
    static ALL: OnceLock<Vec<Candidate>> = OnceLock::new();
    ALL.get_or_init(|| {
        let mut list: Vec<Candidate> = Vec::new();
        for span in spans() {
            variants(span, &mut list);
        }
        crate::plain::sort_by_key(&mut list, |candidate| candidate.id);
        list.dedup_by_key(|candidate| candidate.id);
        list
    })
}

/// A span of magnification and an objective.
#[derive(Clone, Copy, Debug)]
struct Span {
    low: f64,
    high: f64,
    objective_mm: f64,
}

/// Lowest powers with the top powers and objectives that are built with them.
const ZOOMS: &[(f64, &[f64], &[f64])] = &[
    (1.0, &[4.0, 5.0], &[20.0, 24.0, 28.0]),
    (1.0, &[6.0, 8.0], &[24.0, 28.0]),
    (1.0, &[10.0], &[28.0]),
    (1.25, &[4.0, 5.0], &[20.0, 24.0, 28.0]),
    (1.25, &[6.0, 8.0], &[24.0, 28.0]),
    (1.5, &[5.0, 6.0], &[20.0, 24.0, 32.0, 36.0, 42.0]),
    (1.5, &[8.0, 9.0], &[32.0, 36.0, 42.0]),
    (1.5, &[10.0, 12.0], &[36.0, 42.0, 44.0]),
    (
        1.75,
        &[5.0, 6.0, 8.0, 10.0],
        &[32.0, 36.0, 40.0, 42.0, 44.0],
    ),
    (1.75, &[12.0], &[40.0, 42.0, 44.0, 50.0]),
    (2.0, &[6.0, 7.0, 8.0], &[32.0, 36.0, 40.0, 42.0, 44.0]),
    (2.0, &[10.0, 12.0], &[36.0, 40.0, 42.0, 44.0, 50.0]),
    (2.0, &[15.0, 16.0], &[42.0, 44.0, 50.0]),
    (2.0, &[20.0], &[44.0, 50.0]),
    (2.5, &[7.0, 8.0], &[32.0, 36.0, 40.0, 42.0, 44.0, 50.0]),
    (2.5, &[10.0, 12.0], &[36.0, 40.0, 42.0, 44.0, 50.0, 56.0]),
    (2.5, &[15.0, 16.0, 20.0], &[42.0, 44.0, 50.0, 56.0]),
    (3.0, &[8.0, 9.0], &[32.0, 36.0, 40.0, 42.0, 44.0, 50.0]),
    (
        3.0,
        &[10.0, 12.0],
        &[32.0, 36.0, 40.0, 42.0, 44.0, 50.0, 56.0],
    ),
    (3.0, &[15.0, 18.0, 20.0, 24.0], &[42.0, 44.0, 50.0, 56.0]),
    (3.5, &[10.0, 12.0, 14.0], &[40.0, 44.0, 50.0, 56.0]),
    (3.5, &[18.0], &[44.0, 50.0, 56.0]),
    (4.0, &[12.0, 16.0], &[40.0, 42.0, 44.0, 50.0, 56.0]),
    (4.0, &[20.0, 24.0, 32.0], &[50.0, 56.0]),
    (5.0, &[15.0, 20.0], &[42.0, 50.0, 56.0]),
    (5.0, &[25.0, 30.0], &[50.0, 56.0]),
    (6.0, &[18.0, 24.0], &[42.0, 44.0, 50.0, 56.0]),
    (6.0, &[30.0, 36.0], &[50.0, 56.0]),
    (8.0, &[24.0, 32.0], &[50.0, 56.0]),
    (8.0, &[40.0], &[50.0, 56.0]),
    (10.0, &[40.0, 50.0, 60.0], &[50.0, 56.0, 60.0]),
];

/// Fixed powers with their objectives.
const FIXED: &[(f64, f64)] = &[
    (2.5, 20.0),
    (4.0, 32.0),
    (6.0, 36.0),
    (6.0, 42.0),
    (7.0, 50.0),
    (8.0, 50.0),
    (8.0, 56.0),
    (10.0, 42.0),
    (36.0, 42.0),
];

fn spans() -> Vec<Span> {
    let mut list = Vec::new();
    for &(low, highs, objectives) in ZOOMS {
        for &high in highs {
            for &objective_mm in objectives {
                list.push(Span {
                    low,
                    high,
                    objective_mm,
                });
            }
        }
    }
    for &(power, objective_mm) in FIXED {
        list.push(Span {
            low: power,
            high: power,
            objective_mm,
        });
    }
    list
}

/// Grade, field and eye relief that are built together. A wide field wants a short eye
/// relief or a large eyepiece; basic glass comes with neither.
const EYEPIECES: &[(GlassGrade, FieldClass, f64)] = &[
    (GlassGrade::Basic, FieldClass::Narrow, 85.0),
    (GlassGrade::Basic, FieldClass::Narrow, 90.0),
    (GlassGrade::Basic, FieldClass::Usual, 90.0),
    (GlassGrade::Good, FieldClass::Narrow, 90.0),
    (GlassGrade::Good, FieldClass::Narrow, 95.0),
    (GlassGrade::Good, FieldClass::Usual, 90.0),
    (GlassGrade::Good, FieldClass::Usual, 95.0),
    (GlassGrade::Good, FieldClass::Wide, 90.0),
    (GlassGrade::Best, FieldClass::Usual, 90.0),
    (GlassGrade::Best, FieldClass::Usual, 95.0),
    (GlassGrade::Best, FieldClass::Wide, 90.0),
    (GlassGrade::Best, FieldClass::Wide, 95.0),
];

/// Eye relief of sights for mounting forward of the receiver, mm.
pub const FORWARD_EYE_RELIEF_MM: f64 = 240.0;

type Package = (FocalPlane, ReticleFamily, Illumination, Elevation);

fn variants(span: Span, list: &mut Vec<Candidate>) {
    let Span {
        low,
        high,
        objective_mm,
    } = span;
    let mut eyepieces: Vec<(GlassGrade, FieldClass, f64)> = EYEPIECES.to_vec();
    if low <= 2.5 && high <= 10.0 {
        // The long eye relief for heavy recoil is built at low powers.
        eyepieces.push((GlassGrade::Good, FieldClass::Usual, 100.0));
        eyepieces.push((GlassGrade::Best, FieldClass::Usual, 100.0));
    }
    let packages = packages(span);
    for (grade, field, eye_relief_mm) in eyepieces {
        for parallax in parallaxes(span) {
            for tube_mm in tubes(span) {
                for &(plane, reticle, illumination, elevation) in &packages {
                    // Thick tubes are built with dials and first planes.
                    if tube_mm > 30.0
                        && elevation != Elevation::DialZeroStop
                        && plane != FocalPlane::First
                    {
                        continue;
                    }
                    // The thin tube's few parts leave no room for a dial with a stop.
                    if tube_mm < 30.0
                        && (plane == FocalPlane::First || elevation == Elevation::DialZeroStop)
                    {
                        continue;
                    }
                    list.push(Candidate::of(Specification {
                        magnification_low: low,
                        magnification_high: high,
                        objective_mm,
                        tube_mm,
                        plane,
                        reticle,
                        illumination,
                        parallax,
                        elevation,
                        grade,
                        field,
                        eye_relief_mm,
                    }));
                }
            }
        }
    }
    forward(span, list);
}

/// Sights for a rail forward of the receiver: low powers, small bells, plain settings.
fn forward(span: Span, list: &mut Vec<Candidate>) {
    let Span {
        low,
        high,
        objective_mm,
    } = span;
    if low > 2.5 || high > 8.0 || objective_mm > 32.0 || (low < 1.5 && high > 4.0) {
        return;
    }
    for grade in [GlassGrade::Basic, GlassGrade::Good] {
        for tube_mm in [25.4, 30.0] {
            for (reticle, illumination) in [
                (ReticleFamily::ThickThin, Illumination::Unlit),
                (ReticleFamily::CentreDot, Illumination::DayBright),
            ] {
                list.push(Candidate::of(Specification {
                    magnification_low: low,
                    magnification_high: high,
                    objective_mm,
                    tube_mm,
                    plane: FocalPlane::Second,
                    reticle,
                    illumination,
                    parallax: ParallaxSetting::Fixed { free_at_m: 100.0 },
                    elevation: Elevation::Capped,
                    grade,
                    field: FieldClass::Narrow,
                    eye_relief_mm: FORWARD_EYE_RELIEF_MM,
                }));
            }
        }
    }
}

fn parallaxes(span: Span) -> Vec<ParallaxSetting> {
    let fixed = |free_at_m| ParallaxSetting::Fixed { free_at_m };
    let adjustable = |nearest_m| ParallaxSetting::Adjustable { nearest_m };
    let mut list = Vec::new();
    if span.high <= 12.0 {
        list.push(fixed(100.0));
    }
    // Rimfire and slug sights are set nearer.
    if span.high <= 10.0 && span.objective_mm <= 40.0 {
        list.push(fixed(50.0));
    }
    if span.high >= 9.0 && span.low >= 2.0 {
        list.push(adjustable(if span.high >= 12.0 && span.high < 20.0 {
            25.0
        } else {
            10.0
        }));
    }
    if span.low >= 6.0 && span.high >= 24.0 {
        list.push(adjustable(8.0));
    }
    list
}

fn tubes(span: Span) -> Vec<f64> {
    let ratio = span.high / span.low;
    if span.high >= 15.0 && span.low >= 3.0 && span.objective_mm >= 50.0 {
        vec![30.0, 34.0]
    } else if ratio <= 4.1 && span.low >= 1.5 && span.objective_mm <= 50.0 && span.high <= 12.0 {
        vec![25.4, 30.0]
    } else {
        vec![30.0]
    }
}

/// Whether sights with such a tube are built new.
#[must_use]
pub fn is_built(tube_mm: f64) -> bool {
    all()
        .iter()
        .any(|candidate| (candidate.specification.tube_mm - tube_mm).abs() < 0.05)
}

fn packages(span: Span) -> Vec<Package> {
    use Elevation::{Capped, DialZeroStop, RingForLoad};
    use FocalPlane::{First, Second};
    use Illumination::{Both, DayBright, NightFine, Unlit};
    use ReticleFamily::{
        CentreDot, CircleDot, FineCrosshair, HeavyNight, HoldMarks, MarkGrid, MoaMarks, MradMarks,
        ThickThin, ThreePost,
    };
    let mut list: Vec<Package> = Vec::new();
    if span.high < 18.0 {
        list.push((Second, ThickThin, Unlit, Capped));
    }
    if span.low < 2.0 {
        list.push((Second, CentreDot, DayBright, Capped));
        list.push((Second, ThickThin, DayBright, Capped));
    }
    if span.low < 1.75 && span.high <= 10.0 {
        list.push((Second, CircleDot, DayBright, Capped));
        if span.low <= 1.0 {
            list.push((First, MradMarks, DayBright, Capped));
        }
    }
    if span.low >= 1.5 {
        list.push((Second, CentreDot, NightFine, Capped));
        if span.high < 18.0 {
            list.push((Second, ThickThin, NightFine, Capped));
        }
        if span.high >= 6.0 && span.high < 18.0 {
            list.push((Second, HoldMarks, Unlit, Capped));
        }
        if span.high >= 8.0 && span.objective_mm <= 44.0 {
            list.push((Second, FineCrosshair, Unlit, Capped));
        }
        if span.high >= 10.0 && span.high <= 16.0 && span.low <= 4.0 {
            list.push((Second, CentreDot, NightFine, RingForLoad));
        }
    }
    if span.low == 1.5 && span.high >= 8.0 {
        list.push((Second, CentreDot, Both, Capped));
    }
    if span.objective_mm >= 42.0 && span.high <= 16.0 {
        list.push((Second, ThreePost, Unlit, Capped));
        list.push((First, ThreePost, Unlit, Capped));
    }
    if span.objective_mm >= 50.0 && span.high <= 16.0 && span.low >= 2.0 {
        list.push((Second, HeavyNight, Unlit, Capped));
    }
    if span.high >= 10.0 && span.low >= 2.0 && span.low < 8.0 {
        list.push((First, MradMarks, NightFine, DialZeroStop));
    }
    if span.high >= 14.0 && span.low >= 3.0 {
        list.push((Second, MoaMarks, Unlit, DialZeroStop));
        if span.low < 8.0 {
            list.push((Second, MradMarks, Unlit, DialZeroStop));
            list.push((First, MradMarks, Unlit, DialZeroStop));
            list.push((First, MoaMarks, Unlit, DialZeroStop));
        }
        list.push((Second, FineCrosshair, Unlit, DialZeroStop));
        list.push((Second, CentreDot, Unlit, DialZeroStop));
        if span.high >= 16.0 && span.objective_mm >= 50.0 && span.low < 8.0 {
            list.push((First, MarkGrid, Unlit, DialZeroStop));
        }
    }
    if span.high >= 20.0 && span.low >= 5.0 {
        list.push((Second, FineCrosshair, Unlit, Capped));
    }
    list
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Two that differ in anything keep two ids, so that every eyepiece stands in the list.
    #[test]
    fn only_what_is_the_same_shares_an_id() {
        let mut list: Vec<Candidate> = Vec::new();
        for span in spans() {
            variants(span, &mut list);
        }
        crate::plain::sort_by_key(&mut list, |candidate| candidate.id);
        for two in list.windows(2) {
            let [a, b] = [two[0], two[1]];
            assert!(
                a.id < b.id || a.specification == b.specification,
                "{a:?} and {b:?}"
            );
        }
        for (grade, field, eye_relief_mm) in EYEPIECES {
            assert!(
                all().iter().any(|candidate| {
                    let s = &candidate.specification;
                    (s.grade, s.field, s.eye_relief_mm) == (*grade, *field, *eye_relief_mm)
                }),
                "{grade:?} {field:?} {eye_relief_mm}"
            );
        }
    }

    #[test]
    fn enough_distinct_specifications_that_could_be_built() {
        let all = all();
        let mut optical: Vec<(u64, u64, u64, u64, u64)> = all
            .iter()
            .map(|c| {
                let s = &c.specification;
                (
                    s.magnification_low.to_bits(),
                    s.magnification_high.to_bits(),
                    s.objective_mm.to_bits(),
                    s.grade as u64,
                    c.apparent_deg.to_bits(),
                )
            })
            .collect();
        optical.sort_unstable();
        optical.dedup();
        println!(
            "{} specifications, {} optically distinct",
            all.len(),
            optical.len()
        );
        assert!(all.len() >= 20_000);
        assert!(optical.len() >= 2_000);
        for candidate in all {
            let s = &candidate.specification;
            for end in [s.magnification_low, s.magnification_high] {
                assert!(GRID.contains(&end), "{end}");
            }
            assert!(candidate.mass_g > 150.0 && candidate.mass_g < 1600.0);
        }
    }
}
