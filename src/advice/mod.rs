//! Occasions, candidates, needs, coverage, picks, reasons: what serves this shooter.
//!
//! The room knows no words: what it says is the [`report`], keys and quantities that
//! `wording` turns into sentences.

pub mod dusk;
pub mod report;
pub mod report_versus;
pub mod sayings;
pub mod versus;

pub use report::Advice;
