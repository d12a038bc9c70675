//! What the shooter told: questions as data, answers, input, flow.

pub mod answers;
pub mod quarry;
pub mod shooter;

mod resolve;

pub use resolve::{resolve, usual_manners, usual_ranges};
pub use shooter::Need;
