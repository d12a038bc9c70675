//! A shop's stock list: parse, check, match.
//!
//! The list is a table of comma-, semicolon- or tab-separated values with a heading. One
//! column must be named `sight` and hold what stands on the box ("3-12x50, 30 mm, lit");
//! the others are optional, see [`stock::COLUMNS`]. What a row does not state stays unknown
//! and is never counted against it: it is shown as "measure this".

pub mod matching;
pub mod stock;

mod judging;
mod table;

pub use judging::{Judged, order};
pub use matching::{Fit, Match, Missed, rank};
pub use stock::{Row, RowProblem, Stock, StockProblem, read};

/// An invented list, to try the shelf with.
pub const DEMO: &str = include_str!("demo.csv");
