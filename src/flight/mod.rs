//! The flight of the bullet: air, drag, trajectory, zero, point-blank range, typical loads.

pub mod atmosphere;
pub mod cartridges;
pub mod drag;
pub mod error;
pub mod hold;
pub mod lead;
mod loads;
pub mod point_blank;
pub mod suspicion;
pub mod tables;
pub mod trajectory;
pub mod zero;

pub use atmosphere::{Air, SEA_LEVEL};
pub use cartridges::{LoadKind, TypicalLoad};
pub use drag::{DragCurve, DragFunction};
pub use error::FlightError;
pub use trajectory::{Conditions, Load, Point, Trajectory};
pub use zero::{Sighted, Zeroed};
