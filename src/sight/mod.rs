//! The sight: its specification, exit pupil, glare, field, parallax, reticle, turrets, generic fits.

pub mod eye_box;
pub mod field;
pub mod fits;
pub mod parallax;
pub mod pupil;
pub mod resolution;
pub mod reticle;
pub mod specification;
pub mod subtension;
pub mod turret;
pub mod typed_line;
pub mod zero_clicks;

pub use specification::{
    Elevation, FieldClass, FocalPlane, GlassGrade, Illumination, ParallaxSetting, ReticleFamily,
    Specification,
};
