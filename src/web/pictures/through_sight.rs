//! The view through the sight: both focal planes on one handle, over the dusk strip.

use super::attribute::{Pen, pens};
use super::dusk_strip::{DuskStrip, StripRow, said_minute};
use super::frame::Frame;
use super::size::{use_id, use_width};
use super::slider::{Scale, Slider};
use crate::drawing::colour::{Hue, Srgb};
use crate::drawing::dusk::Evening;
use crate::drawing::path::{Point, push_outline, push_pair};
use crate::drawing::scene::{Light, Shown, line_colour, shown};
use crate::drawing::silhouette::{Figure, Tone};
use crate::drawing::view::{
    Cutout, Layer, Paint, Yardstick, backdrop, covered_cm, px_per_cm, px_per_label_mrad,
    px_per_mrad, reticle_layers, thinnest_px, yardstick,
};
use crate::eye::acuity::minimum_angle_arcmin;
use crate::eye::veil::{straylight_index, veil_factor};
use crate::eye::{Eye, Optics};
use crate::need::answers::Units;
use crate::sight::FocalPlane;
use crate::sight::field::field_at_range_m;
use crate::sight::pupil::effective_objective_mm;
use crate::sight::reticle::{Reticle, Role};
use crate::sight::subtension::{ARCMIN_PER_MRAD, true_subtension_mrad};
use crate::t;
use crate::web::platform::Timeout;
use crate::web::view::prelude::*;
use crate::wording::{cm, field, mrad, number, range};
use std::cell::Cell;
use std::rc::Rc;

/// The sight, as far as its picture needs it.
#[derive(Clone, Debug, PartialEq)]
pub struct Sight {
    /// Lowest magnification.
    pub magnification_low: f64,
    /// Highest magnification.
    pub magnification_high: f64,
    /// Where the labels of a reticle in the second plane hold.
    pub reference_magnification: f64,
    /// Clear diameter of the objective in mm.
    pub objective_mm: f64,
    /// Transmission by day, 0 to 1.
    pub transmission_day: f64,
    /// Transmission by night, 0 to 1.
    pub transmission_night: f64,
    /// Veiling glare index, 0 to 1.
    pub glare_index: f64,
    /// Apparent field (full angle) in degrees.
    pub apparent_field_deg: f64,
    /// The reticle.
    pub reticle: Reticle,
    /// Whether the reticle can be lit.
    pub lit: bool,
    /// The plane of the pick, if it is settled.
    pub pick: Option<FocalPlane>,
}

impl Sight {
    fn optics(&self, magnification: f64) -> Optics {
        Optics {
            magnification,
            objective_mm: effective_objective_mm(self.objective_mm, magnification),
            transmission_day: self.transmission_day,
            transmission_night: self.transmission_night,
            one_eye: true,
        }
    }
}

/// What is looked at.
#[derive(Clone, Debug, PartialEq)]
pub struct Quarry {
    /// Its drawing.
    pub figure: Rc<Figure>,
    /// Its name, as in "roe deer".
    pub name: AttrValue,
    /// Diameter of the circle that has to be hit, in cm.
    pub aiming_circle_cm: f64,
    /// Reflectance of the coat or of what is dark in the drawing.
    pub dark_reflectance: f64,
    /// Reflectance of what is light in the drawing.
    pub light_reflectance: f64,
    /// Hue of the coat.
    pub hue: Hue,
}

/// What surrounds it.
#[derive(Clone, Debug, PartialEq)]
pub struct Surroundings {
    /// Reflectance of the ground.
    pub ground_reflectance: f64,
    /// Hue of the ground.
    pub ground_hue: Hue,
    /// Reflectance of the wood behind.
    pub wood_reflectance: f64,
    /// Ratio of night to day luminance of the light (S/P).
    pub sp_ratio: f64,
    /// Luminance of the bright half of the scene over that of the ground, for stray light.
    pub surround_to_ground: f64,
    /// Height of the shooter's eye over the ground, in m.
    pub eye_height_m: f64,
    /// How far behind the quarry the wood begins, in m.
    pub wood_behind_m: f64,
}

/// What [`ThroughSight`] is told.
#[derive(Properties, PartialEq)]
pub struct ThroughSightProps {
    /// The sight.
    pub sight: Rc<Sight>,
    /// What is looked at.
    pub quarry: Rc<Quarry>,
    /// What surrounds it.
    pub surroundings: Rc<Surroundings>,
    /// The eye behind the sight.
    pub eye: Eye,
    /// The evening.
    pub evening: Rc<Evening>,
    /// Rows of the dusk strip.
    #[prop_or_default]
    pub rows: Vec<StripRow>,
    /// Nearest, first and farthest range of the handle in m.
    pub ranges_m: (f64, f64, f64),
    /// Magnification to begin with.
    pub magnification: f64,
    /// Minute after sunset to begin with.
    pub minute: f64,
    /// Where the person's own load falls: range in m and hold in mrad under the aim.
    #[prop_or_default]
    pub holds: Rc<Vec<(f64, f64)>>,
    /// Units of the words.
    #[prop_or_default]
    pub units: Units,
    /// Called when a handle has moved: magnification, range in m, minute.
    #[prop_or_default]
    pub on_input: Callback<(f64, f64, f64)>,
}

/// A lit centre: red, as the trade has it, dimmed or bright enough to stand off its ground.
const LIT: Srgb = Srgb(0xE8, 0x3C, 0x2C);
/// The words follow when a handle has rested so long.
const REST_MS: i32 = 140;
/// From this width on the two pictures stand side by side as rounds.
const ROUNDS_FROM_PX: f64 = 560.0;
/// Widest slot: one apparent field across.
const WIDEST_SLOT_PX: f64 = 480.0;
/// Height of a slot over its width.
const SLOT_SHAPE: f64 = 148.0 / 328.0;
/// Space between the two pictures.
const GAP_PX: f64 = 24.0;
/// Height of the trees behind, m.
const TREE_M: f64 = 16.0;
/// Half the width over which the wood is drawn, m at its distance.
const WOOD_HALF_M: f64 = 420.0;

/// The two pictures' shape for a width.
fn cutout(width_px: f64) -> (Cutout, bool) {
    if width_px >= ROUNDS_FROM_PX {
        let d = ((width_px - GAP_PX) / 2.0).min(360.0).floor();
        (
            Cutout {
                width_px: d,
                height_px: d,
                field_px: d,
            },
            true,
        )
    } else {
        let w = width_px.min(WIDEST_SLOT_PX).floor();
        (
            Cutout {
                width_px: w,
                height_px: (w * SLOT_SHAPE).round(),
                field_px: w,
            },
            false,
        )
    }
}

/// The edge of a wood as a path in metres: feet at 0, crowns upwards (negative y).
fn wood_path() -> String {
    let mut points = vec![Point::corner(-WOOD_HALF_M, 1.0)];
    let (mut x, mut n) = (-WOOD_HALF_M, 7_u32);
    while x < WOOD_HALF_M {
        // A repeatable sequence of crowns: widths 5 to 10 m, heights 10 to 16 m.
        n = n.wrapping_mul(1_103_515_245).wrapping_add(12_345);
        let a = f64::from((n >> 16) & 255) / 255.0;
        n = n.wrapping_mul(1_103_515_245).wrapping_add(12_345);
        let b = f64::from((n >> 16) & 255) / 255.0;
        let (wide, tall) = (5.0 + 5.0 * a, TREE_M * (0.62 + 0.38 * b));
        points.push(Point::corner(x, -0.72 * tall));
        points.push(Point::smooth(x + 0.22 * wide, -0.93 * tall));
        points.push(Point::smooth(x + 0.5 * wide, -tall));
        points.push(Point::smooth(x + 0.8 * wide, -0.9 * tall));
        x += wide;
    }
    points.push(Point::corner(x, 1.0));
    let mut out = String::new();
    push_outline(&mut out, &points, 1);
    out
}

/// Handles as they stand.
#[derive(Clone, Copy, PartialEq)]
struct Stand {
    magnification: f64,
    range_m: f64,
    minute: f64,
    /// The light in the reticle is on.
    lit: bool,
    /// Without the sight.
    bare: bool,
}

/// The elements of one picture.
struct Slot {
    sky: Pen,
    wood: Pen,
    ground: Pen,
    quarry: Pen,
    pieces: Vec<Pen>,
    layers: Vec<Pen>,
    holds: Pen,
    bracket_halo: Pen,
    bracket: Pen,
    bracket_text: Pen,
    covers: Pen,
}

impl Slot {
    fn new(pieces: usize, layers: usize) -> Self {
        Self {
            sky: Pen::default(),
            wood: Pen::default(),
            ground: Pen::default(),
            quarry: Pen::default(),
            pieces: pens(pieces),
            layers: pens(layers),
            holds: Pen::default(),
            bracket_halo: Pen::default(),
            bracket: Pen::default(),
            bracket_text: Pen::default(),
            covers: Pen::default(),
        }
    }

    fn forget(&self) {
        let own = [
            &self.sky,
            &self.wood,
            &self.ground,
            &self.quarry,
            &self.holds,
            &self.bracket_halo,
            &self.bracket,
            &self.bracket_text,
            &self.covers,
        ];
        for pen in own.into_iter().chain(&self.pieces).chain(&self.layers) {
            pen.forget();
        }
    }
}

/// Everything that a picture is painted from.
struct Painter {
    sight: Rc<Sight>,
    quarry: Rc<Quarry>,
    surroundings: Rc<Surroundings>,
    eye: Eye,
    evening: Rc<Evening>,
    holds: Rc<Vec<(f64, f64)>>,
    units: Units,
    cutout: Cutout,
    blur_id: AttrValue,
    slots: Rc<[Slot; 2]>,
    blur: Rc<Pen>,
    said: Rc<[Pen; 4]>,
    scale: Rc<Pen>,
}

fn yardstick_name(kind: Yardstick) -> String {
    match kind {
        Yardstick::CentreToBar => t!("view-centre-to-bar"),
        Yardstick::MarkToMark => t!("view-mark-to-mark"),
        Yardstick::CentreToRing => t!("view-centre-to-ring"),
        Yardstick::PostWidth => t!("view-post"),
        Yardstick::LineWidth => t!("view-line"),
    }
}

fn yardstick_short(kind: Yardstick) -> String {
    match kind {
        Yardstick::CentreToBar => t!("view-short-bar"),
        Yardstick::MarkToMark => t!("view-short-mark"),
        Yardstick::CentreToRing => t!("view-short-ring"),
        Yardstick::PostWidth => t!("view-short-post"),
        Yardstick::LineWidth => t!("view-short-line"),
    }
}

/// The words for a magnification.
#[must_use]
pub fn said_power(magnification: f64) -> String {
    let decimals =
        usize::from(magnification < 9.95 && (magnification.round() - magnification).abs() > 0.04);
    t!("view-times", power = number(magnification, decimals))
}

impl Painter {
    fn light(&self, minute: f64, bare: bool) -> Light {
        let s = &self.surroundings;
        let in_sight = if bare { 0.0 } else { self.sight.glare_index };
        let glare = in_sight + straylight_index(self.eye.age_years());
        Light {
            illuminance_lx: self.evening.scene_lx(minute),
            ground_reflectance: s.ground_reflectance,
            dark_reflectance: self.quarry.dark_reflectance,
            light_reflectance: self.quarry.light_reflectance,
            wood_reflectance: s.wood_reflectance,
            sp_ratio: s.sp_ratio,
            veil: veil_factor(glare, s.surround_to_ground),
            ground_hue: s.ground_hue,
            coat_hue: self.quarry.hue,
        }
    }

    /// Paints the pictures; the long words only if `with_words`: while a handle moves they wait.
    fn paint(&self, stand: Stand, with_words: bool) {
        let Stand {
            magnification,
            range_m,
            minute,
            lit,
            bare,
        } = stand;
        let light = self.light(minute, bare);
        // The bare eye sees the same scene at 1×, with both eyes and no field of a sight.
        let (magnification, optics) = if bare {
            (1.0, Optics::bare_eye())
        } else {
            (magnification, self.sight.optics(magnification))
        };
        let scene = shown(&self.quarry.figure, &light, range_m, &self.eye, &optics);
        let at_target = px_per_mrad(
            self.cutout.field_px,
            self.sight.apparent_field_deg,
            magnification,
        );
        let per_cm = px_per_cm(at_target, range_m);
        let centre = self.cutout.centre_px(1.0);
        let behind = backdrop(
            range_m,
            self.surroundings.eye_height_m,
            0.01 * self.quarry.figure.bottom_cm,
            self.surroundings.wood_behind_m,
            TREE_M,
        );
        let foot_px = centre.1 - behind.wood_foot_mrad * at_target;
        let per_m_there = at_target * 1000.0 / (range_m + self.surroundings.wood_behind_m);
        let quarry_at = format!(
            "translate({:.2} {:.2}) scale({per_cm:.5})",
            centre.0, centre.1
        );
        let wood_at = format!(
            "translate({:.2} {foot_px:.2}) scale({per_m_there:.4})",
            centre.0
        );
        let ground_y = format!("{:.1}", foot_px.clamp(-2.0, self.cutout.height_px + 2.0));
        let (sky, wood, ground) = (scene.sky.hex(), scene.wood.hex(), scene.ground.hex());
        // What the eye cannot resolve is drawn as soft as it is seen: half the least angle.
        let image_cd_m2 = scene.seen.luminance_cd_m2;
        let apparent_mrad = minimum_angle_arcmin(image_cd_m2) / ARCMIN_PER_MRAD;
        let soft_px = 0.5 * apparent_mrad * at_target / magnification;
        // Where the load falls is an angle at the target, the same in both planes.
        let mut holds = String::new();
        for (_, hold_mrad) in self.holds.iter() {
            let y = centre.1 + hold_mrad * at_target;
            if y < self.cutout.height_px {
                push_pair(&mut holds, 'M', centre.0 + 10.0, y, 2);
                push_pair(&mut holds, 'l', 6.0, -3.5, 1);
                holds.push_str("v7Z");
            }
        }
        let soft = soft_px >= 0.35;
        if soft {
            // In the quarry's own centimetres.
            self.blur
                .set("stdDeviation", &format!("{:.2}", soft_px / per_cm));
        }
        let filter = if soft {
            format!("url(#{})", self.blur_id)
        } else {
            "none".to_owned()
        };
        let fills: Vec<String> = scene.pieces.iter().map(|colour| colour.hex()).collect();
        let lines = self.line_colours(&scene, &light, &optics, magnification);
        let (kind, label_mrad) = yardstick(&self.sight.reticle);
        let short = yardstick_short(kind);
        let planes = [FocalPlane::First, FocalPlane::Second];
        for ((slot, plane), lines) in self.slots.iter().zip(planes).zip(&lines) {
            slot.sky.set("fill", &sky);
            slot.wood.set("fill", &wood);
            slot.wood.set("transform", &wood_at);
            slot.ground.set("fill", &ground);
            slot.ground.set("y", &ground_y);
            slot.quarry.set("transform", &quarry_at);
            slot.quarry.set("filter", &filter);
            for (pen, fill) in slot.pieces.iter().zip(&fills) {
                pen.set("fill", fill);
            }
            let per_label = px_per_label_mrad(
                plane,
                at_target,
                self.sight.reference_magnification,
                magnification,
            );
            let layers = reticle_layers(&self.sight.reticle, per_label, centre, &self.cutout);
            if bare {
                for pen in
                    slot.layers
                        .iter()
                        .chain([&slot.bracket, &slot.bracket_halo, &slot.holds])
                {
                    pen.set("d", "");
                }
                slot.bracket_text.text("");
                slot.covers.text(&t!("view-bare-eye"));
                continue;
            }
            for ((pen, layer), colour) in slot.layers.iter().zip(&layers).zip(lines) {
                let glows = lit && layer.lit;
                paint_layer(pen, layer, &if glows { LIT } else { colour.0 }.hex());
            }
            slot.holds.set("d", &holds);
            let covered = true_subtension_mrad(
                plane,
                label_mrad,
                self.sight.reference_magnification,
                magnification,
            );
            let reach = label_mrad * per_label;
            let words = cm(self.units, covered_cm(covered, range_m));
            self.bracket(slot, kind, centre, reach, &words);
            slot.covers.text(&t!(
                "view-covers",
                what = short.clone(),
                mrad = mrad(covered),
                cm = words
            ));
        }
        if !with_words {
            return;
        }
        let words = self.words(stand, &scene, at_target, &lines);
        for (pen, words) in self.said.iter().zip(&words) {
            pen.text(words);
        }
        let width_m = field_at_range_m(self.sight.apparent_field_deg, magnification, range_m);
        self.scale.text(&t!(
            "view-scale",
            field = field(self.units, width_m),
            range = range(self.units, range_m)
        ));
    }

    /// Colours of the layers in the two planes, and whether each can be told apart.
    fn line_colours(
        &self,
        scene: &Shown,
        light: &Light,
        optics: &Optics,
        magnification: f64,
    ) -> [Vec<(Srgb, f64, Role)>; 2] {
        let window = Cutout {
            width_px: 1.0,
            height_px: 1.0,
            field_px: 1.0,
        };
        let layers = reticle_layers(&self.sight.reticle, 1.0, (0.0, 0.0), &window);
        [FocalPlane::First, FocalPlane::Second].map(|plane| {
            layers
                .iter()
                .map(|layer| {
                    let true_mrad = true_subtension_mrad(
                        plane,
                        layer.label_mrad,
                        self.sight.reference_magnification,
                        magnification,
                    );
                    let (colour, left) = line_colour(scene, light, true_mrad, &self.eye, optics);
                    (colour, left, layer.role)
                })
                .collect()
        })
    }

    /// The dimension line under the picture: how far the yardstick reaches on the quarry.
    fn bracket(&self, slot: &Slot, kind: Yardstick, centre: (f64, f64), reach: f64, words: &str) {
        let y = self.cutout.height_px - 16.0;
        let wide = matches!(kind, Yardstick::PostWidth | Yardstick::LineWidth);
        let (from, to) = if wide {
            (centre.0 - 0.5 * reach, centre.0 + 0.5 * reach)
        } else {
            (centre.0, centre.0 + reach)
        };
        let most = self.cutout.width_px - 2.0;
        let cut = to > most;
        let end = to.min(most);
        let tick = if cut {
            String::new()
        } else {
            format!("M{end:.2} {:.1}v8", y - 4.0)
        };
        let line = format!(
            "M{from:.2} {:.1}v8M{from:.2} {y:.1}H{end:.2}{tick}",
            y - 4.0
        );
        slot.bracket_halo.set("d", &line);
        slot.bracket.set("d", &line);
        let room = self.cutout.width_px - end;
        let (x, anchor) = if room > 84.0 {
            (end + 6.0, "start")
        } else {
            (from - 6.0, "end")
        };
        slot.bracket_text.set("x", &format!("{x:.1}"));
        slot.bracket_text.set("text-anchor", anchor);
        slot.bracket_text.text(words);
    }

    fn words(
        &self,
        stand: Stand,
        scene: &Shown,
        at_target: f64,
        lines: &[Vec<(Srgb, f64, Role)>; 2],
    ) -> [String; 4] {
        let Stand {
            magnification,
            range_m,
            minute,
            lit,
            bare,
        } = stand;
        let sight = &self.sight;
        let (kind, label_mrad) = yardstick(&sight.reticle);
        let what = yardstick_name(kind);
        let at = range(self.units, range_m);
        let centimetres = |mrad: f64| cm(self.units, covered_cm(mrad, range_m));
        let finest = thinnest_px(&sight.reticle, 1.0);
        let arcmin = |plane| {
            let true_mrad =
                true_subtension_mrad(plane, finest, sight.reference_magnification, magnification);
            number(true_mrad * ARCMIN_PER_MRAD * magnification, 1)
        };
        let mut said = vec![t!(
            "view-picture",
            quarry = self.quarry.name.to_string(),
            range = at.clone(),
            power = if bare {
                t!("view-bare-eye")
            } else {
                said_power(magnification)
            },
            time = said_minute(&self.evening, minute)
        )];
        if lit && !bare {
            said.push(t!("view-lit-said"));
        }
        if !bare && !self.holds.is_empty() {
            let ranges: Vec<String> = self
                .holds
                .iter()
                .map(|(range_m, _)| range(self.units, *range_m))
                .collect();
            said.push(t!("view-holds", ranges = ranges.join(", ")));
        }
        let width_m = field_at_range_m(sight.apparent_field_deg, magnification, range_m);
        if self.quarry.figure.width_cm() > 100.0 * width_m {
            said.push(t!("view-larger", field = field(self.units, width_m)));
        }
        let mut first = vec![t!(
            "view-first-said",
            what = what.clone(),
            mrad = mrad(label_mrad),
            cm = centimetres(label_mrad),
            range = at.clone(),
            arcmin = arcmin(FocalPlane::First)
        )];
        let second = true_subtension_mrad(
            FocalPlane::Second,
            label_mrad,
            sight.reference_magnification,
            magnification,
        );
        let second = if (second / label_mrad - 1.0).abs() < 0.005 {
            t!(
                "view-second-at-label",
                what = what,
                mrad = mrad(second),
                cm = centimetres(second),
                range = at,
                arcmin = arcmin(FocalPlane::Second)
            )
        } else {
            t!(
                "view-second-said",
                what = what,
                mrad = mrad(second),
                cm = centimetres(second),
                range = at,
                label = mrad(label_mrad),
                reference = said_power(sight.reference_magnification),
                arcmin = arcmin(FocalPlane::Second)
            )
        };
        let mut light = Vec::new();
        if self.evening.scene_lx(minute) <= 0.0 {
            light.push(t!("view-no-light"));
        }
        light.push(if scene.body_margin > 0.0 {
            t!("view-body-apart")
        } else {
            t!("view-body-lost")
        });
        let small: Vec<f64> = scene
            .left
            .iter()
            .zip(&self.quarry.figure.pieces)
            .filter(|(_, piece)| piece.tone != Tone::Dark || piece.seen_area_cm2 < 60.0)
            .map(|(left, _)| *left)
            .collect();
        let lost = small.iter().filter(|left| **left <= 0.0).count();
        if scene.body_margin > 0.0 && lost > 0 {
            let share = 100.0 * lost as f64 / small.len() as f64;
            light.push(t!("view-fine-lost", share = number(share, 0)));
        }
        let gone = |role: Role| {
            lines.iter().any(|plane| {
                plane
                    .iter()
                    .any(|(_, left, of)| *of == role && *left <= 0.0)
            })
        };
        if gone(Role::Centre) && !bare {
            let bars = if gone(Role::Bar) { "no" } else { "yes" };
            light.push(t!("view-line-lost", bars = bars));
        }
        let thin_px = finest * at_target;
        if thin_px < 0.8 {
            first.push(t!("view-thin", px = number(thin_px, 1)));
        }
        light.push(t!("view-identify"));
        if bare {
            return [
                said.join(" "),
                String::new(),
                String::new(),
                light.join(" "),
            ];
        }
        [said.join(" "), first.join(" "), second, light.join(" ")]
    }
}

fn paint_layer(pen: &Pen, layer: &Layer, colour: &str) {
    pen.set("d", &layer.path);
    match layer.paint {
        Paint::Stroke { width_px } => {
            pen.set("stroke-width", &format!("{width_px:.3}"));
            pen.set("stroke", colour);
        }
        Paint::Fill => pen.set("fill", colour),
    }
}

/// The view through the sight with its handles.
#[component]
pub fn ThroughSight(props: &ThroughSightProps) -> Html {
    let id = use_id("view");
    let root = use_node_ref();
    let width = use_width(root.clone(), 328.0);
    let (shape, rounds) = cutout(width);
    let layers_now = use_memo(props.sight.reticle.clone(), |reticle| {
        reticle_layers(
            reticle,
            1.0,
            (0.0, 0.0),
            &Cutout {
                width_px: 1.0,
                height_px: 1.0,
                field_px: 1.0,
            },
        )
    });
    let slots: Rc<[Slot; 2]> = {
        let n = (props.quarry.figure.pieces.len(), layers_now.len());
        (*use_memo((n, rounds), |((pieces, layers), _)| {
            Rc::new([Slot::new(*pieces, *layers), Slot::new(*pieces, *layers)])
        }))
        .clone()
    };
    let blur = use_memo((), |()| Pen::default());
    let said: Rc<[Pen; 4]> = use_memo((), |()| std::array::from_fn(|_| Pen::default()));
    let scale = use_memo((), |()| Pen::default());
    let wood = use_memo((), |()| AttrValue::from(wood_path()));
    let (near_m, first_m, far_m) = props.ranges_m;
    let stand = use_memo((), |()| {
        Cell::new(Stand {
            magnification: props.magnification,
            range_m: first_m,
            minute: props.minute,
            lit: false,
            bare: false,
        })
    });
    {
        // Values from outside replace what the handles say.
        let stand = stand.clone();
        use_memo(
            (props.magnification, first_m, props.minute),
            |(magnification, range_m, minute)| {
                stand.set(Stand {
                    magnification: *magnification,
                    range_m: *range_m,
                    minute: *minute,
                    ..stand.get()
                });
            },
        );
    }
    let painter = Rc::new(Painter {
        sight: props.sight.clone(),
        quarry: props.quarry.clone(),
        surroundings: props.surroundings.clone(),
        eye: props.eye,
        evening: props.evening.clone(),
        holds: props.holds.clone(),
        units: props.units,
        cutout: shape,
        blur_id: format!("{id}-soft").into(),
        slots: slots.clone(),
        blur: blur.clone(),
        said: said.clone(),
        scale: scale.clone(),
    });
    let rest = use_memo((), |()| Cell::new(None::<Timeout>));
    {
        // After every rendering: the renderer may have made elements anew, and words that were
        // still to follow would be those of before.
        let (painter, stand, rest) = (painter.clone(), stand.clone(), rest.clone());
        use_effect(move || {
            rest.set(None);
            for slot in painter.slots.iter() {
                slot.forget();
            }
            for pen in painter.said.iter().chain([&*painter.blur, &*painter.scale]) {
                pen.forget();
            }
            painter.paint(stand.get(), true);
        });
    }
    let moved = |change: fn(Stand, f64) -> Stand| {
        let (painter, stand, on_input) = (painter.clone(), stand.clone(), props.on_input.clone());
        let rest = rest.clone();
        Callback::from(move |to: f64| {
            let now = change(stand.get(), to);
            stand.set(now);
            painter.paint(now, false);
            let (painter, stand) = (painter.clone(), stand.clone());
            rest.set(Some(Timeout::new(REST_MS, move || {
                painter.paint(stand.get(), true);
            })));
            on_input.emit((now.magnification, now.range_m, now.minute));
        })
    };
    let on_power = moved(|stand, to| Stand {
        magnification: to,
        ..stand
    });
    let on_range = moved(|stand, to| Stand {
        range_m: to,
        ..stand
    });
    let on_minute = moved(|stand, to| Stand {
        minute: to,
        ..stand
    });
    let toggles: Rc<[Pen; 2]> = use_memo((), |()| std::array::from_fn(|_| Pen::default()));
    let toggle = |n: usize, change: fn(Stand) -> (Stand, bool)| {
        let (painter, stand, toggles) = (painter.clone(), stand.clone(), toggles.clone());
        Callback::from(move |_: MouseEvent| {
            let (now, on) = change(stand.get());
            stand.set(now);
            toggles[n].set("aria-pressed", if on { "true" } else { "false" });
            painter.paint(now, true);
        })
    };
    let on_bare = toggle(0, |stand| {
        let bare = !stand.bare;
        (Stand { bare, ..stand }, bare)
    });
    let on_lit = toggle(1, |stand| {
        let lit = !stand.lit;
        (Stand { lit, ..stand }, lit)
    });
    let spoken_power = use_callback((), |to: f64, ()| said_power(to));
    let spoken_range = use_callback(props.units, |to: f64, units| range(*units, to));

    let picture = |n: usize, plane: FocalPlane, name: String| {
        let slot = &slots[n];
        let clip = format!("{id}-clip-{n}");
        let (w, h, r) = (shape.width_px, shape.height_px, 0.5 * shape.field_px);
        let (cx, cy) = (0.5 * w, 0.5 * h);
        let size = |value: f64| format!("{value}");
        let label = format!("{id}-name-{n}");
        html! {
            <figure class="view__slot">
                <figcaption class="view__caption">
                    <b id={label.clone()}>
                        { name }
                        if props.sight.is_pick(plane) {
                            <span class="view__pick">{ t!("view-pick") }</span>
                        }
                    </b>
                    <span class="view__covers" ref={slot.covers.node.clone()}></span>
                </figcaption>
                <svg class="view__picture" data-keep="" role="img" aria-labelledby={label}
                    width={size(w)} height={size(h)} viewBox={format!("0 0 {w} {h}")}>
                    <defs>
                        <clipPath id={clip.clone()}><circle cx={size(cx)} cy={size(cy)} r={size(r)} /></clipPath>
                        if n == 0 {
                            <filter id={format!("{id}-soft")} x="-10%" y="-10%" width="120%" height="120%">
                                <feGaussianBlur ref={blur.node.clone()} stdDeviation="0" />
                            </filter>
                        }
                    </defs>
                    if rounds {
                        <circle class="view__tube" cx={size(cx)} cy={size(cy)} r={size(r)} />
                    } else {
                        <rect class="view__tube" width={size(w)} height={size(h)} />
                    }
                    <g clip-path={format!("url(#{clip})")}>
                        <rect class="view__scene" ref={slot.sky.node.clone()} width={size(w)} height={size(h)} />
                        <path class="view__scene" ref={slot.wood.node.clone()} d={(*wood).clone()} />
                        <rect class="view__scene" ref={slot.ground.node.clone()} width={size(w)} height={size(h + 4.0)} />
                        <g ref={slot.quarry.node.clone()}>
                            { for props.quarry.figure.pieces.iter().zip(&slot.pieces).map(|(piece, pen)| html! {
                                <path class="view__piece" ref={pen.node.clone()} d={piece.path.clone()} />
                            }) }
                        </g>
                        { for layers_now.iter().zip(&slot.layers).map(|(layer, pen)| {
                            let fill = (layer.paint != Paint::Fill).then_some("none");
                            html! { <path ref={pen.node.clone()} class="view__reticle" {fill} /> }
                        }) }
                    </g>
                    <path class="view__holds" ref={slot.holds.node.clone()} />
                    <path class="view__bracket-halo" ref={slot.bracket_halo.node.clone()} fill="none" />
                    <path class="view__bracket" ref={slot.bracket.node.clone()} fill="none" />
                    <text class="view__bracket-text" ref={slot.bracket_text.node.clone()}
                        y={size(h - 11.0)}></text>
                </svg>
            </figure>
        }
    };
    let eye = &props.eye;
    let light = painter.light(props.minute, false);
    let optics = props.sight.optics(props.magnification);
    let seen = crate::eye::equivalent_luminance(
        light.ground_cd_m2(),
        eye,
        &optics,
        props.surroundings.sp_ratio,
    );
    let sources = vec![
        AttrValue::from(t!(
            "view-source-scale",
            apparent = number(props.sight.apparent_field_deg, 0),
            reference = number(props.sight.reference_magnification, 1)
        )),
        AttrValue::from(t!(
            "view-source-light",
            ground = number(props.surroundings.ground_reflectance, 2),
            coat = number(props.quarry.dark_reflectance, 2),
            pupil = number(seen.pupil_mm, 1),
            beam = number(seen.beam_mm, 1),
            transmission = number(props.sight.transmission_night, 2),
            glare = number(100.0 * props.sight.glare_index, 1)
        )),
        AttrValue::from(t!("view-source-threshold")),
    ];
    html! {
        <Frame title={t!("view-title")} scale="" leaves_out={t!("view-leaves-out")} {sources}
            file="through-the-sight">
            <div class={classes!("view", rounds.then_some("view--rounds"))} ref={root}>
                <div class="view__pair">
                    { picture(0, FocalPlane::First, t!("view-first")) }
                    { picture(1, FocalPlane::Second, t!("view-second")) }
                </div>
                <p class="view__toggles">
                    <button type="button" class="button" aria-pressed={stand.get().bare.to_string()}
                        ref={toggles[0].node.clone()} onclick={on_bare}>{ t!("view-bare-eye") }</button>
                    if props.sight.lit {
                        <button type="button" class="button" aria-pressed={stand.get().lit.to_string()}
                            ref={toggles[1].node.clone()} onclick={on_lit}>{ t!("view-lit") }</button>
                    }
                </p>
                if props.sight.magnification_high > props.sight.magnification_low {
                    <Slider label={t!("view-power")} least={props.sight.magnification_low}
                        most={props.sight.magnification_high} value={props.magnification} step=0.1
                        page=1.0 scale={Scale::Ratio} spoken={spoken_power} on_input={on_power} />
                }
                <DuskStrip evening={props.evening.clone()} rows={props.rows.clone()}
                    minute={Some(props.minute)} label={t!("view-dusk")} on_input={on_minute} />
                <Slider label={t!("view-range")} least={near_m} most={far_m} value={first_m} step=1.0
                    page=10.0 scale={Scale::Ratio} spoken={spoken_range} on_input={on_range} />
                <div class="view__said">
                    { for said.iter().map(|pen| html! { <p ref={pen.node.clone()}></p> }) }
                </div>
                <p class="picture__scale" ref={scale.node.clone()}></p>
            </div>
        </Frame>
    }
}
