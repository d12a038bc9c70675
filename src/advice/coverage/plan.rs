//! The order in which candidates are put through the tables; it depends on no person.

use super::{Optical, grade_index};
use crate::advice::candidates::{Candidate, grid_index};
use crate::advice::needs::mark::Mark;
use crate::sight::ParallaxSetting;

/// A group of candidates that share all but span, mark and what costs decide.
#[derive(Clone, Debug)]
pub(super) struct Group {
    pub(super) optical: Optical,
    pub(super) parallax: ParallaxSetting,
    pub(super) hubs: Vec<Hub>,
}

/// A magnification and spans that hold it: the largest chance within a span is the larger of
/// what lies below the hub and what lies above, so that both are found once for all of them.
#[derive(Clone, Debug)]
pub(super) struct Hub {
    pub(super) at: usize,
    pub(super) spans: Vec<Span>,
}

/// A span of magnification on the grid, and the candidates that have it.
#[derive(Clone, Debug)]
pub(super) struct Span {
    pub(super) low: usize,
    pub(super) high: usize,
    pub(super) list: Vec<u32>,
}

/// The order in which candidates are put through the tables; depends on no person.
#[derive(Clone, Debug)]
pub struct Plan {
    pub(super) groups: Vec<Group>,
    pub(super) marks: Vec<Mark>,
    /// By candidate: index of its mark.
    pub(super) mark_of: Vec<u32>,
}

impl Plan {
    /// The plan for a list of candidates whose spans end on the grid.
    #[must_use]
    pub fn of(candidates: &[Candidate]) -> Self {
        let mut order: Vec<u32> = (0..candidates.len() as u32).collect();
        let key = |index: u32| {
            let c = &candidates[index as usize];
            let s = &c.specification;
            let (kind, distance) = match s.parallax {
                ParallaxSetting::Fixed { free_at_m } => (0u8, free_at_m),
                ParallaxSetting::Adjustable { nearest_m } => (1, nearest_m),
            };
            (
                s.objective_mm.to_bits(),
                grade_index(s),
                c.apparent_deg.to_bits(),
                kind,
                distance.to_bits(),
            )
        };
        let ends = |index: u32| {
            let s = &candidates[index as usize].specification;
            (
                grid_index(s.magnification_low),
                grid_index(s.magnification_high),
            )
        };
        crate::plain::sort_by_key(&mut order, |&index| {
            (key(index), ends(index), candidates[index as usize].id)
        });
        let mut groups: Vec<(Group, Vec<Span>)> = Vec::new();
        let mut last = None;
        for &index in &order {
            let c = &candidates[index as usize];
            let k = key(index);
            if last != Some(k) {
                let group = Group {
                    optical: Optical {
                        objective_mm: c.specification.objective_mm,
                        grade: grade_index(&c.specification),
                        apparent_deg: c.apparent_deg,
                    },
                    parallax: c.specification.parallax,
                    hubs: Vec::new(),
                };
                groups.push((group, Vec::new()));
                last = Some(k);
            }
            let (low, high) = ends(index);
            if let Some((_, spans)) = groups.last_mut() {
                match spans.last_mut() {
                    Some(span) if (span.low, span.high) == (low, high) => span.list.push(index),
                    _ => spans.push(Span {
                        low,
                        high,
                        list: vec![index],
                    }),
                }
            }
        }
        let groups = groups
            .into_iter()
            .map(|(group, spans)| Group {
                hubs: hubs(spans),
                ..group
            })
            .collect();
        let mut marks: Vec<Mark> = Vec::new();
        let mark_of = candidates
            .iter()
            .map(|c| {
                let s = &c.specification;
                let mark = Mark::of(s);
                let found = marks.iter().position(|&known| known == mark);
                found.unwrap_or_else(|| {
                    marks.push(mark);
                    marks.len() - 1
                }) as u32
            })
            .collect();
        Self {
            groups,
            marks,
            mark_of,
        }
    }
}

/// As few hubs as hold all spans: each at the lowest top power among those left.
fn hubs(mut spans: Vec<Span>) -> Vec<Hub> {
    let mut hubs = Vec::new();
    while let Some(at) = spans.iter().map(|span| span.high).min() {
        let (held, left) = spans.into_iter().partition(|span| span.low <= at);
        hubs.push(Hub { at, spans: held });
        spans = left;
    }
    hubs
}
