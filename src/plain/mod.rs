//! Plain work done by small code: sorting, decimal numbers, letters, JSON, keys.
//!
//! The standard library brings a large sort for every type that is sorted and tables for
//! every number and letter there is; a page on a telephone loads them all. What stands here
//! gives the same results, from one short function each.

mod decimal;
mod gathered;
mod json;
mod letters;
mod map;
mod names;
mod passed;
mod printed;
mod sorted;
mod together;

pub use decimal::decimal;
pub use gathered::Gathered;
pub use json::{Json, NoJson};
pub use letters::{capital, is_letter, small, small_text};
pub use map::Map;
pub use names::key;
pub use passed::{Passed, Wire, read, written};
pub use printed::{fill, fixed, holes, shortest};
pub use sorted::{sort_by, sort_by_key};
pub use together::Together;
