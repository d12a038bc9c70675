//! Pictures that answer to a handle: they only draw what `drawing` has computed.
//!
//! While a handle moves nothing is rendered anew: attributes are written straight into the
//! elements, those that have changed only.

mod attribute;
mod demo;
mod dusk_strip;
mod frame;
mod gallery;
mod keep;
mod silhouette;
mod size;
mod slider;
mod through_sight;

pub use dusk_strip::{DuskStrip, StripRow};
pub use frame::Frame;
pub use gallery::Gallery;
pub use silhouette::Silhouette;
pub use slider::{Scale, Slider};
pub use through_sight::{Quarry, Sight, Surroundings, ThroughSight};
