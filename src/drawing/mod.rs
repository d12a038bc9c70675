//! Pictures as plain data: silhouettes, targets and reticles to scale, and what the light leaves of them.
//!
//! This room turns what the domain rooms compute into paths, transforms and colours. It
//! knows no browser and no words, so that every picture can be measured by a native test;
//! the page only writes the results into elements.
//!
//! Lengths at the target are centimetres or metres, angles milliradians in the tangent
//! plane (1000·tan), lengths on the screen CSS pixels with x to the right and y downwards.

pub mod colour;
pub mod dusk;
pub mod glow;
pub mod path;
pub mod scene;
pub mod shade;
pub mod silhouette;
pub mod svg;
pub mod target;
pub mod view;
