//! The sight: its specification, exit pupil, glare, field, parallax, reticle, turrets, generic fits.

pub mod field;
pub mod fits;
pub mod parallax;
pub mod pupil;
pub mod reticle;
pub mod specification;
pub mod subtension;

pub use specification::{
    Elevation, FieldClass, FocalPlane, GlassGrade, Illumination, ParallaxSetting, ReticleFamily,
    Specification,
};
