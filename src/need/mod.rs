//! What the shooter told: questions as data, answers, input, flow.

pub mod answers;
pub mod cautions;
pub mod counter;
pub mod flow;
pub mod input;
pub mod kinds;
pub mod loads;
pub mod quarry;
pub mod questions;
pub mod shooter;

pub mod link;
pub mod zones;

mod check;
mod doubts;
mod keys;
mod link_words;
mod resolve;
mod saved;
mod value;
mod wire;

pub use check::{LIST_MOST, Problem, RING_BORES_MM, TEXT_MOST, Wrong, check};
pub use doubts::{Doubt, doubts};
pub use resolve::{resolve, usual_manners, usual_ranges};
pub use saved::{ParseProblem, Rescued, parse, rescue, to_json};
pub use shooter::Need;
pub use value::{RangeRow, Reply, Value, apply, range_rows, value};

/// The saved key of a manner of shooting.
#[must_use]
pub fn manner_key(manner: answers::Manner) -> String {
    keys::key_of(&manner)
}
