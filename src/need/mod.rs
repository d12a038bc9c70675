//! What the shooter told: questions as data, answers, input, flow.

pub mod answers;
pub mod cautions;
pub mod flow;
pub mod input;
pub mod kinds;
pub mod loads;
pub mod quarry;
pub mod questions;
pub mod shooter;

mod keys;
mod resolve;
mod value;

pub use resolve::{resolve, usual_manners, usual_ranges};
pub use shooter::Need;
pub use value::{RangeRow, Reply, Value, apply, range_rows, value};

/// The saved key of a manner of shooting.
#[must_use]
pub fn manner_key(manner: answers::Manner) -> String {
    keys::key_of(&manner)
}
