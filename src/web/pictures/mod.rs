//! Pictures that answer to a handle: they only draw what `drawing` has computed.
//!
//! While a handle moves, no part of the page is rendered anew. The view through the sight and the
//! dusk strip write attributes straight into their elements; the other pictures come as a list
//! of elements a drawing, of which only what has changed is written (`picture.rs`).

mod aperture;
mod attribute;
mod crossing;
mod demo;
mod dusk_strip;
mod frame;
mod gallery;
mod keep;
mod on_rifle;
mod pace;
mod painter;
mod parallax;
mod picture;
mod shown;
mod sights;
mod size;
mod slider;
mod through_sight;
mod trajectory;
mod view_words;

pub use dusk_strip::{DuskStrip, StripRow, said_minute};
pub use gallery::Gallery;
pub use on_rifle::OnRifle;
pub use shown::{Flown, Shown};
pub use sights::{Quarry, Sight, Surroundings};
pub use through_sight::ThroughSight;
