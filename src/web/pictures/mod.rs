//! Pictures that answer to a handle: they only draw what `drawing` has computed.
//!
//! In the view through the sight and in the dusk strip nothing is rendered anew while a handle
//! moves: attributes are written straight into the elements, those that have changed only.
//! The other pictures have a few dozen elements and leave that to the renderer.

mod aperture;
mod attribute;
mod crossing;
mod demo;
mod dusk_strip;
mod frame;
mod gallery;
mod keep;
mod make;
mod on_rifle;
mod parallax;
mod size;
mod slider;
mod through_sight;
mod trajectory;

pub use aperture::{Beam, EyeAperture};
pub use crossing::{Crossing, ShownField};
pub use dusk_strip::{DuskStrip, StripRow, said_minute};
pub use frame::Frame;
pub use gallery::Gallery;
pub use on_rifle::OnRifle;
pub use parallax::ParallaxPicture;
pub use slider::{Scale, Slider};
pub use through_sight::{Quarry, Sight, Surroundings, ThroughSight};
pub use trajectory::{FlightPicture, Point};
