//! Occasions, candidates, needs, coverage, picks, reasons: what serves this shooter.
//!
//! The room knows no words: what it says is the [`report`], keys and quantities that
//! `wording` turns into sentences.
//!
//! The answers become [`occasions`]; every specification the trade builds ([`candidates`])
//! is put through them need by need ([`needs`]) by tables that fall apart ([`coverage`]);
//! what it serves is weighed against what it costs ([`costs`]) within [`limits`]. From the
//! [`ranking`] follow the [`picks`], the [`ranges`] that tie with them and the [`reasons`].

pub mod candidates;
pub mod chance;
pub mod choices;
pub mod costs;
pub mod coverage;
pub mod difference;
pub mod dusk;
pub mod evening;
pub mod facts;
pub mod limits;
pub mod line;
pub mod needs;
pub mod notes;
pub mod occasions;
pub mod owned;
pub mod picks;
pub mod ranges;
pub mod ranking;
pub mod reasons;
pub mod report;
pub mod report_versus;
pub mod sayings;
mod sequence;
pub mod slate;
pub mod surety;
pub mod tell;
pub mod versus;
pub mod warnings;
pub mod world;

pub use ranking::{Ranked, Ranking};
pub use report::Advice;
pub use tell::{advise, advise_with_surety, tell};
