//! The sight: its specification, exit pupil, glare, field, parallax, reticle, turrets, generic fits.

pub mod specification;

pub use specification::{
    Elevation, FieldClass, FocalPlane, GlassGrade, Illumination, ParallaxSetting, ReticleFamily,
    Specification,
};
