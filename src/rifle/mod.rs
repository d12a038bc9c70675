//! The rifle under the sight: recoil, mounting, steadiness.

pub mod recoil;
pub mod steadiness;
