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
    /// Lowest power → top power → candidates.
    pub(super) lows: Vec<(usize, Vec<Top>)>,
}

/// A top power's index and the candidates that reach it.
pub(super) type Top = (usize, Vec<u32>);

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
        let mut groups: Vec<Group> = Vec::new();
        let mut last = None;
        for &index in &order {
            let c = &candidates[index as usize];
            let k = key(index);
            if last != Some(k) {
                groups.push(Group {
                    optical: Optical {
                        objective_mm: c.specification.objective_mm,
                        grade: grade_index(&c.specification),
                        apparent_deg: c.apparent_deg,
                    },
                    parallax: c.specification.parallax,
                    lows: Vec::new(),
                });
                last = Some(k);
            }
            let (low, high) = ends(index);
            if let Some(group) = groups.last_mut() {
                if group.lows.last().is_none_or(|l| l.0 != low) {
                    group.lows.push((low, Vec::new()));
                }
                if let Some((_, highs)) = group.lows.last_mut() {
                    if highs.last().is_none_or(|h| h.0 != high) {
                        highs.push((high, Vec::new()));
                    }
                    if let Some((_, list)) = highs.last_mut() {
                        list.push(index);
                    }
                }
            }
        }
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
