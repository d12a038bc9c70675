//! A sight on the shelf, judged for one shooter by the same account as two beside each other.

use super::matching::{Missed, beside};
use super::stock::Row;
use crate::advice::report::{LastLight, Ranges, Standing};
use crate::advice::report_versus::Side;
use crate::advice::versus::{Bench, Sight};

/// One row of the list, judged.
#[derive(Clone, Debug, PartialEq)]
pub struct Judged {
    /// The row.
    pub row: Row,
    /// What it does for this shooter.
    pub side: Side,
    /// Elements outside the ranges that serve, the musts first.
    pub outside: Vec<Missed>,
    /// Elements that are not stated and should be measured, the musts first.
    pub unknown: Vec<Missed>,
}

impl Judged {
    /// Judges one row.
    #[must_use]
    pub fn of(row: &Row, bench: &Bench, ranges: &Ranges) -> Self {
        let fit = beside(row, ranges);
        Self {
            side: bench.alone(&Sight::Typed(row.sight.clone())),
            outside: fit.outside,
            unknown: fit.unknown,
            row: row.clone(),
        }
    }

    /// Smaller is better: what does not go into the rings last, then by share served in whole
    /// points, musts outside, minutes in the evening, place in the list.
    fn rank(&self) -> (bool, i64, usize, i64, usize) {
        let musts = self
            .outside
            .iter()
            .filter(|missed| missed.standing == Standing::Must)
            .count();
        let points = self
            .side
            .served
            .map_or(0, |served| (100.0 * served.value).round() as i64);
        let minutes = match self.side.last_light {
            LastLight::At { minutes, .. } => minutes.round() as i64,
            LastLight::Always => i64::MAX,
            LastLight::Never => i64::MIN + 1,
        };
        (
            self.side.rings_do_not_fit,
            -points,
            musts,
            -minutes,
            self.row.line,
        )
    }
}

/// Puts judged rows in order, the best first.
pub fn order(list: &mut [Judged]) {
    crate::plain::sort_by_key(list, Judged::rank);
}
