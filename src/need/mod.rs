//! What the shooter told: questions as data, answers, input, flow.

pub mod answers;
