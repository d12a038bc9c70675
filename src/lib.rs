//! Advises which specification of riflescope serves a shooter.
//!
//! The core takes what a shooter told about quarry, ranges, light, eye, rifle and
//! mount, puts candidate specifications through a few hundred of that person's own
//! occasions, and returns ranked specifications with reasons in numbers.
//!
//! # What this crate does not do
//! It recommends no brand, gives no range to shoot at, knows no law of any place, and
//! covers riflescopes only: no electronic sights, handguns or crossbows.
//!
//! # Conventions
//! Angles in degrees are named `_deg`, small angles at the target are milliradians
//! (`_mrad`), lengths carry their unit in the name. Latitude is positive to the north,
//! longitude to the east, altitude above the horizon. Times are seconds since
//! 1970-01-01T00:00Z. All transcendental functions come from `libm`, on every target,
//! so that native code and wasm agree to the bit.

pub mod advice;
pub mod drawing;
pub mod eye;
pub mod figure;
pub mod flight;
pub mod need;
pub mod plain;
pub mod ports;
pub mod quantity;
pub mod rifle;
pub mod shelf;
pub mod sight;
pub mod sky;
#[cfg(feature = "web")]
pub mod web;
pub mod wording;
