//! A shop's stock list: parse, check, match.
//!
//! The list is a table of comma-, semicolon- or tab-separated values with a heading. One
//! column must be named `sight` and hold what stands on the box ("3-12x50, 30 mm, lit");
//! the others are optional, see [`stock::COLUMNS`]. What a row does not state stays unknown
//! and is never counted against it: it is shown as "measure this".

pub mod matching;
pub mod stock;

mod table;

pub use matching::{Fit, Match, Missed, rank};
pub use stock::{Row, RowProblem, Stock, StockProblem, read};
