//! What the light leaves of a figure for one eye behind one sight.
//!
//! Every piece of a figure has its own size and its own contrast against what lies behind
//! it, and the threshold model says by how much that contrast exceeds the least that this
//! eye tells apart. Shown is the part above the threshold, (C − C_th)/C of the contrast: what
//! cannot be told apart has vanished, what lies far above the threshold is shown in full.

use super::colour::{Hue, Srgb, luminance_of_lightness, shown_colour, shown_lightness};
use super::silhouette::{Figure, Tone};
use crate::eye::last::margin_at;
use crate::eye::{Equivalent, Eye, Optics, Patch, equivalent_luminance};

/// What the scene is made of and how much light falls on it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Light {
    /// Illuminance on the ground in lux: cloud, cover and snow included.
    pub illuminance_lx: f64,
    /// Reflectance of the ground, 0 to 1.
    pub ground_reflectance: f64,
    /// Reflectance of the coat, paint or paper that is dark in the drawing.
    pub dark_reflectance: f64,
    /// Reflectance of what is light in the drawing.
    pub light_reflectance: f64,
    /// Reflectance of the wood behind.
    pub wood_reflectance: f64,
    /// Ratio of night to day luminance of the scene's light (S/P).
    pub sp_ratio: f64,
    /// Factor by which stray light lifts the background ([`crate::eye::veil::veil_factor`]).
    pub veil: f64,
    /// Hue of the ground.
    pub ground_hue: Hue,
    /// Hue of the coat.
    pub coat_hue: Hue,
}

impl Light {
    /// Luminance of the ground in cd/m².
    #[must_use]
    pub fn ground_cd_m2(&self) -> f64 {
        self.ground_reflectance * self.illuminance_lx / core::f64::consts::PI
    }

    /// Share of the light on level ground that an upright side gets under an even sky.
    fn upright_share(&self) -> f64 {
        0.5 + 0.5 * self.ground_reflectance
    }

    /// Contrast of an upright surface against the ground, signed.
    #[must_use]
    pub fn contrast_on_ground(&self, reflectance: f64) -> f64 {
        reflectance * self.upright_share() / self.ground_reflectance - 1.0
    }
}

/// How the scene is shown: colours, and how much of each piece is left.
#[derive(Clone, Debug, PartialEq)]
pub struct Shown {
    /// The ground.
    pub ground: Srgb,
    /// The edge of the wood.
    pub wood: Srgb,
    /// The sky.
    pub sky: Srgb,
    /// A colour for each piece of the figure.
    pub pieces: Vec<Srgb>,
    /// The share of each piece's contrast that is left, 0 to 1.
    pub left: Vec<f64>,
    /// Margin of the largest dark piece over the threshold, log₁₀; told apart above 0.
    pub body_margin: f64,
    /// The adapted eye.
    pub seen: Equivalent,
    /// Relative luminance at which the ground is shown, 0 to 1.
    pub shown_ground: f64,
}

/// The share of a contrast that exceeds the threshold, from its margin in log₁₀.
#[must_use]
pub fn share_above_threshold(margin: f64) -> f64 {
    if margin.is_nan() || margin <= 0.0 {
        return 0.0;
    }
    1.0 - libm::pow(10.0, -margin)
}

/// A surface so wide that its size no longer matters to the threshold, in sr.
const WIDE_SR: f64 = 0.01;

/// The scene as one eye is shown it through one sight.
///
/// # Validity
/// As the threshold and pupil models: adapted eye, no fog, no lamp in the field. The ratio of
/// luminances inside the picture is kept; the level as a whole is compressed, because no
/// screen shows four decades ([`shown_lightness`]).
#[must_use]
pub fn shown(figure: &Figure, light: &Light, range_m: f64, eye: &Eye, optics: &Optics) -> Shown {
    let seen = equivalent_luminance(light.ground_cd_m2(), eye, optics, light.sp_ratio);
    let background = luminance_of_lightness(shown_lightness(seen.luminance_cd_m2 * light.veil));
    let m = seen.adaptation;
    let sr = |area_cm2: f64| area_cm2 * 1e-4 / (range_m * range_m);
    // Share left of contrast `c` over an area, against a surface brighter than the ground by
    // `level`.
    let left = |c: f64, solid_angle_sr: f64, level: f64| {
        let patch = Patch {
            solid_angle_sr,
            contrast: c.abs(),
            veil: light.veil,
        };
        let on = Equivalent {
            luminance_cd_m2: seen.luminance_cd_m2 * level,
            ..seen
        };
        margin_at(&on, eye, optics, &patch)
    };
    let ratio = |c: f64| (1.0 + c / light.veil).max(0.0);
    let dark_c = light.contrast_on_ground(light.dark_reflectance);
    // Behind the body and paler than it: two fifths of the way to the ground.
    let mid_c = 0.6 * dark_c;
    let light_c = light.contrast_on_ground(light.light_reflectance);
    let body_level = (1.0 + dark_c).max(0.01);
    let mut pieces = Vec::with_capacity(figure.pieces.len());
    let mut shares = Vec::with_capacity(figure.pieces.len());
    let mut body_margin = f64::NEG_INFINITY;
    for piece in &figure.pieces {
        let area = sr(piece.seen_area_cm2);
        let (share, shown_ratio, hue) = match piece.tone {
            Tone::Dark => {
                let margin = left(dark_c, area, 1.0);
                body_margin = body_margin.max(margin);
                let share = share_above_threshold(margin);
                (share, ratio(share * dark_c), light.coat_hue)
            }
            Tone::Mid => {
                let share = share_above_threshold(left(mid_c, area, 1.0));
                (share, ratio(share * mid_c), light.coat_hue)
            }
            Tone::Light => {
                // Against the body round it.
                let on_body = (1.0 + light_c) / body_level - 1.0;
                let share = share_above_threshold(left(on_body, area, body_level));
                let body = share_above_threshold(left(dark_c, area, 1.0));
                let base = body * dark_c;
                let c = base + share * (light_c - dark_c) * if body > 0.0 { 1.0 } else { 0.0 };
                (share, ratio(c), Hue::NEUTRAL)
            }
        };
        shares.push(share);
        pieces.push(shown_colour(background * shown_ratio, hue, m));
    }
    let surface = |reflectance_ratio: f64, hue: Hue| {
        let c = reflectance_ratio - 1.0;
        let share = share_above_threshold(left(c, WIDE_SR, 1.0));
        shown_colour((background * ratio(share * c)).min(0.92), hue, m)
    };
    let wood = surface(
        light.wood_reflectance * light.upright_share() / light.ground_reflectance,
        Hue::FOLIAGE,
    );
    let sky = surface(1.0 / light.ground_reflectance, Hue::SKY);
    Shown {
        ground: shown_colour(background, light.ground_hue, m),
        wood,
        sky,
        pieces,
        left: shares,
        body_margin,
        seen,
        shown_ground: background,
    }
}

/// The colour of a black line over the scene's ground, as far as this eye tells it apart.
///
/// The line counts as a patch of `width_mrad` by seven times as much, of full contrast.
#[must_use]
pub fn line_colour(
    shown: &Shown,
    light: &Light,
    width_mrad: f64,
    eye: &Eye,
    optics: &Optics,
) -> (Srgb, f64) {
    let width = 1e-3 * width_mrad;
    let patch = Patch {
        solid_angle_sr: 7.0 * width * width,
        contrast: 1.0,
        // The reticle lies behind most of the sight's stray light: it stays black.
        veil: 1.0,
    };
    let share = share_above_threshold(margin_at(&shown.seen, eye, optics, &patch));
    let level = shown.shown_ground * (1.0 - share);
    (
        shown_colour(level, light.ground_hue, shown.seen.adaptation),
        share,
    )
}
