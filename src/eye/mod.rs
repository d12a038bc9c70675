//! The eye behind the sight: pupil, mesopic light, threshold, acuity.
//!
//! Light runs through this room in one direction. The scene's background luminance sets
//! the [`pupil`]; exit pupil and pupil together stop the beam, and rods and cones weigh
//! its area differently ([`aperture`]); both responses join in [`mesopic`] luminance and
//! become an [`equivalent`] luminance, the only luminance that the [`threshold`] sees.
//! From the threshold follow the margin by which a patch is told apart and the
//! [`last`] luminance at which it still is. [`acuity`] tells the smallest detail,
//! [`veil`] what stray light takes from contrast, [`fast`] the same
//! margin from tables for the ranking.
//!
//! The room takes aperture, transmission and magnification as plain numbers and knows
//! nothing of the sight they came from.

pub mod acuity;
pub mod aperture;
pub mod equivalent;
pub mod fast;
pub mod labels;
pub mod last;
pub mod mesopic;
pub mod people;
pub mod person;
pub mod pupil;
mod root;
pub mod steps;
pub mod threshold;
pub mod transmission;
pub mod veil;

pub use equivalent::{Equivalent, Optics, equivalent_luminance};
pub use last::{LastLuminance, Patch, last_luminance, told_apart_margin};
pub use person::Eye;
