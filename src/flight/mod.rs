//! The flight of the bullet: air, drag, trajectory, zero, point-blank range, typical loads.

pub mod atmosphere;
pub mod drag;
pub mod error;
pub mod tables;
pub mod trajectory;
pub mod zero;

pub use atmosphere::{Air, SEA_LEVEL};
pub use drag::{DragCurve, DragFunction};
pub use error::FlightError;
pub use trajectory::{Conditions, Load, Point, Trajectory};
pub use zero::{Sighted, Zeroed};
