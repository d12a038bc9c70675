//! The rifle under the sight: recoil, mounting, steadiness.

pub mod mounting;
pub mod rail;
pub mod recoil;
pub mod ring_height;
pub mod steadiness;
