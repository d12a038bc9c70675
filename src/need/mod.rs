//! What the shooter told: questions as data, answers, input, flow.

pub mod answers;
pub mod flow;
pub mod input;
pub mod quarry;
pub mod questions;
pub mod shooter;

mod keys;
mod resolve;
mod value;

pub use resolve::{resolve, usual_manners, usual_ranges};
pub use shooter::Need;
pub use value::{RangeRow, Reply, Value, apply, range_rows, value};
