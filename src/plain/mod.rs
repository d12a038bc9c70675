//! Plain work done by small code: sorting, decimal numbers, letters.
//!
//! The standard library brings a large sort for every type that is sorted and tables for
//! every number and letter there is; a page on a telephone loads them all. What stands here
//! gives the same results, from one short function each.

mod decimal;
mod letters;
mod sorted;

pub use decimal::decimal;
pub use letters::{capital, is_letter, small, small_text};
pub use sorted::{sort_by, sort_by_key};
