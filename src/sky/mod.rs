//! Light on the ground: Sun, Moon, twilight, cloud, cover, surfaces, coats.
//!
//! [`sun`] and [`moon`] say where the lights stand, [`illuminance`] how much light they
//! give on level ground, [`ground`] what cloud, cover, surface and coat make of it,
//! [`air`] what haze takes from a contrast; [`evening`] follows all of it minute by minute
//! from noon to noon. Altitudes are true and airless everywhere:
//! the twilight fits take the unrefracted altitude of the centre.

pub mod air;
pub mod evening;
pub mod ground;
pub mod illuminance;
pub mod moon;
pub mod place;
pub mod sun;

pub use evening::Night;
pub use place::Place;
