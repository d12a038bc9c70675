//! The view through a sight: how large anything is drawn in the round field, in both planes.

use super::path::{push_circle, push_number, push_pair};
use crate::sight::FocalPlane;
use crate::sight::reticle::{MarkUnit, Piece, Reticle, Role, Shape, mark_unit};
use crate::sight::subtension::true_subtension_mrad;

/// A piece cut from the round field, in px; the middle of the field in its middle.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cutout {
    /// Width of the cutout.
    pub width_px: f64,
    /// Height of the cutout.
    pub height_px: f64,
    /// Diameter of the whole round field at the same scale.
    pub field_px: f64,
}

impl Cutout {
    /// The point of aim in the piece, snapped to the middle of a device pixel so that a line of
    /// one pixel fills one pixel; true widths and distances follow from there.
    #[must_use]
    pub fn centre_px(&self, device_pixel_ratio: f64) -> (f64, f64) {
        self.centre_on_screen_px(device_pixel_ratio, (0.0, 0.0))
    }

    /// The same where the piece's own corner lies at `corner_px` on the screen: at a ratio of
    /// 1.5 an odd px begins in the middle of a device pixel.
    #[must_use]
    pub fn centre_on_screen_px(
        &self,
        device_pixel_ratio: f64,
        corner_px: (f64, f64),
    ) -> (f64, f64) {
        let ratio = if device_pixel_ratio > 0.0 {
            device_pixel_ratio
        } else {
            1.0
        };
        let snap = |at: f64, corner: f64| {
            // Corners are laid out on 64ths of a px.
            let device = ((at + corner) * ratio * 64.0).round() / 64.0;
            (device.floor() + 0.5) / ratio - corner
        };
        (
            snap(0.5 * self.width_px, corner_px.0),
            snap(0.5 * self.height_px, corner_px.1),
        )
    }
}

/// Pixels for a milliradian of the tangent plane at the target.
///
/// The radius of the field is tan ω′ behind the eyepiece and tan ω = tan ω′/M before the
/// objective: `px/mrad = ½·field·M/(1000·tan ω′)`.
///
/// # Source
/// ISO 14132-1:2002, tan ω′ = M·tan ω.
#[must_use]
pub fn px_per_mrad(field_px: f64, apparent_field_deg: f64, magnification: f64) -> f64 {
    let half = 0.5 * apparent_field_deg * core::f64::consts::PI / 180.0;
    0.5 * field_px * magnification / (1000.0 * libm::tan(half))
}

/// Pixels for a centimetre at the target's range.
#[must_use]
pub fn px_per_cm(px_per_mrad: f64, range_m: f64) -> f64 {
    // 1 cm at R metres is 10/R mrad.
    px_per_mrad * 10.0 / range_m
}

/// Pixels for a milliradian as the reticle is labelled: the same as at the target in the
/// first plane, constant over the zoom in the second.
#[must_use]
pub fn px_per_label_mrad(
    plane: FocalPlane,
    px_per_mrad: f64,
    reference_magnification: f64,
    magnification: f64,
) -> f64 {
    px_per_mrad * true_subtension_mrad(plane, 1.0, reference_magnification, magnification)
}

/// How a layer of a reticle is painted.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Paint {
    /// Lines of this width in px: strokes keep their true weight below one pixel, fills do
    /// not in every browser.
    Stroke {
        /// Width in px.
        width_px: f64,
    },
    /// Filled discs.
    Fill,
}

/// Pieces of a reticle that share role, width and light: one path.
#[derive(Clone, Debug, PartialEq)]
pub struct Layer {
    /// What the pieces are for.
    pub role: Role,
    /// They glow when the reticle is lit.
    pub lit: bool,
    /// Width as labelled, or the diameter of the dots, in mrad.
    pub label_mrad: f64,
    /// How the path is painted.
    pub paint: Paint,
    /// SVG path data in px.
    pub path: String,
}

/// Decimals of a pixel in path data.
const DIGITS: u32 = 3;

/// The reticle drawn at `px_per_label_mrad` round `centre_px`, clipped to the cutout.
///
/// Number and order of the layers depend on the reticle alone, so that a page can keep one
/// element a layer.
#[must_use]
pub fn reticle_layers(
    reticle: &Reticle,
    px_per_label_mrad: f64,
    centre_px: (f64, f64),
    cutout: &Cutout,
) -> Vec<Layer> {
    let mut layers: Vec<Layer> = Vec::new();
    for piece in &reticle.pieces {
        let (label_mrad, filled) = match piece.shape {
            Shape::Line { width_mrad, .. } | Shape::Ring { width_mrad, .. } => (width_mrad, false),
            Shape::Dot { diameter_mrad, .. } => (diameter_mrad, true),
        };
        let paint = if filled {
            Paint::Fill
        } else {
            Paint::Stroke {
                width_px: label_mrad * px_per_label_mrad,
            }
        };
        let same = layers.iter().position(|layer| {
            layer.role == piece.role
                && layer.lit == piece.lit
                && layer.label_mrad == label_mrad
                && (layer.paint == Paint::Fill) == filled
        });
        let at = same.unwrap_or_else(|| {
            layers.push(Layer {
                role: piece.role,
                lit: piece.lit,
                label_mrad,
                paint,
                path: String::new(),
            });
            layers.len() - 1
        });
        push_piece(
            &mut layers[at].path,
            piece,
            px_per_label_mrad,
            centre_px,
            cutout,
        );
    }
    layers
}

fn push_piece(out: &mut String, piece: &Piece, scale: f64, centre: (f64, f64), cutout: &Cutout) {
    // A little beyond the cutout, so that clipped ends never show.
    let (right, bottom) = (cutout.width_px + 4.0, cutout.height_px + 4.0);
    match piece.shape {
        Shape::Line {
            x1_mrad,
            y1_mrad,
            x2_mrad,
            y2_mrad,
            width_mrad,
        } => {
            let reach = 0.5 * width_mrad * scale;
            let (x1, y1) = (centre.0 + x1_mrad * scale, centre.1 - y1_mrad * scale);
            let (x2, y2) = (centre.0 + x2_mrad * scale, centre.1 - y2_mrad * scale);
            let outside = x1.max(x2) < -reach
                || x1.min(x2) > right + reach
                || y1.max(y2) < -reach
                || y1.min(y2) > bottom + reach;
            if outside {
                return;
            }
            if y1_mrad == y2_mrad {
                push_pair(out, 'M', x1.clamp(-4.0, right), y1, DIGITS);
                out.push('H');
                push_number(out, x2.clamp(-4.0, right), DIGITS);
            } else if x1_mrad == x2_mrad {
                push_pair(out, 'M', x1, y1.clamp(-4.0, bottom), DIGITS);
                out.push('V');
                push_number(out, y2.clamp(-4.0, bottom), DIGITS);
            } else {
                push_pair(out, 'M', x1, y1, DIGITS);
                push_pair(out, 'L', x2, y2, DIGITS);
            }
        }
        Shape::Ring { radius_mrad, .. } => {
            push_circle(out, centre.0, centre.1, radius_mrad * scale, DIGITS);
        }
        Shape::Dot {
            x_mrad,
            y_mrad,
            diameter_mrad,
        } => {
            let (x, y) = (centre.0 + x_mrad * scale, centre.1 - y_mrad * scale);
            let r = 0.5 * diameter_mrad * scale;
            if x > -r && x < right + r && y > -r && y < bottom + r {
                push_circle(out, x, y, r, DIGITS);
            }
        }
    }
}

/// What of a reticle one measures with.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Yardstick {
    /// From the centre to the thick bar.
    CentreToBar,
    /// From one mark to the next, or from the centre to the first.
    MarkToMark,
    /// From the centre to the ring.
    CentreToRing,
    /// The width of the post.
    PostWidth,
    /// The width of the line.
    LineWidth,
}

/// The distance in the reticle that the words speak of, as labelled, in mrad.
#[must_use]
pub fn yardstick(reticle: &Reticle) -> (Yardstick, f64) {
    let first_mark = reticle
        .marks
        .iter()
        .map(|mark| mark.hold_mrad)
        .filter(|hold| *hold > 0.3)
        .fold(f64::INFINITY, f64::min);
    let ring = reticle.pieces.iter().find_map(|piece| match piece.shape {
        Shape::Ring { radius_mrad, .. } => Some(radius_mrad),
        _ => None,
    });
    if first_mark.is_finite() {
        // Half mrad stand between the longer marks that one counts.
        let whole = match mark_unit(reticle.family) {
            Some(MarkUnit::Mrad) => 2.0 * first_mark,
            _ => first_mark,
        };
        (Yardstick::MarkToMark, whole)
    } else if let Some(radius) = ring {
        (Yardstick::CentreToRing, radius)
    } else if let Some(gap) = reticle.half_gap_mrad {
        (Yardstick::CentreToBar, gap)
    } else if let Some(bar) = reticle.bar_mrad {
        (Yardstick::PostWidth, bar)
    } else {
        (Yardstick::LineWidth, reticle.centre_line_mrad)
    }
}

/// Centimetres at the target under an angle.
#[must_use]
pub fn covered_cm(mrad: f64, range_m: f64) -> f64 {
    0.1 * mrad * range_m
}

/// The narrowest width in px of what is drawn in a reticle, so that the words can say when a
/// line is thinner than a pixel.
#[must_use]
pub fn thinnest_px(reticle: &Reticle, px_per_label_mrad: f64) -> f64 {
    reticle
        .pieces
        .iter()
        .map(|piece| match piece.shape {
            Shape::Line { width_mrad, .. } | Shape::Ring { width_mrad, .. } => width_mrad,
            Shape::Dot { diameter_mrad, .. } => diameter_mrad,
        })
        .fold(f64::INFINITY, f64::min)
        * px_per_label_mrad
}

/// Where the scene's ground, wood and sky begin, in mrad above the point of aim.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Backdrop {
    /// Foot of the wood.
    pub wood_foot_mrad: f64,
    /// Height of the wood's trees in mrad.
    pub wood_height_mrad: f64,
}

/// The wood's edge behind a figure, seen from `eye_height_m` over level ground.
///
/// `aim_height_m` is the height of the point of aim over the ground; the line of sight goes
/// through it. The wood stands `behind_m` behind the figure and is `tree_m` tall.
#[must_use]
pub fn backdrop(
    range_m: f64,
    eye_height_m: f64,
    aim_height_m: f64,
    behind_m: f64,
    tree_m: f64,
) -> Backdrop {
    let wood_m = range_m + behind_m;
    let aim = (aim_height_m - eye_height_m) / range_m;
    let foot = -eye_height_m / wood_m;
    let top = (tree_m - eye_height_m) / wood_m;
    Backdrop {
        wood_foot_mrad: 1000.0 * (foot - aim),
        wood_height_mrad: 1000.0 * (top - foot),
    }
}
