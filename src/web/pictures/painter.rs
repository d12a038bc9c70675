//! The view through the sight, painted: both planes, the scene, the reticle, the shadow.

use super::attribute::{Pen, pens};
use super::sights::{Quarry, Sight, Surroundings};
use super::view_words::{said_hold, yardstick_short};
use crate::drawing::colour::Srgb;
use crate::drawing::dusk::Evening;
use crate::drawing::glow::{Glow, illuminance_at_eye_lx, veil_cd_m2};
use crate::drawing::path::{Point, push_circle, push_number, push_outline, push_pair};
use crate::drawing::scene::{Light, Shown, line_colour, shown};
use crate::drawing::shade::{Shade, Stance};
use crate::drawing::silhouette::crown;
use crate::drawing::svg::{Part, escaped};
use crate::drawing::view::{
    Cutout, Layer, Paint, Yardstick, backdrop, covered_cm, px_per_cm, px_per_label_mrad,
    px_per_mrad, reticle_layers, yardstick,
};
use crate::eye::acuity::{image_luminance_cd_m2, minimum_angle_arcmin};
use crate::eye::veil::{straylight_index, veil_factor};
use crate::eye::{Eye, Optics};
use crate::need::answers::Units;
use crate::plain::Gathered;
use crate::plain::Together;
use crate::sight::FocalPlane;
use crate::sight::field::field_at_range_m;
use crate::sight::reticle::{Reticle, Role};
use crate::sight::subtension::{ARCMIN_PER_MRAD, true_subtension_mrad};
use crate::t;
use crate::web::platform::{self};
use crate::web::view::prelude::*;
use crate::wording::{angle, cm, field, range};
use std::cell::Cell;
use std::rc::Rc;

/// A lit centre: red, as the trade has it, dimmed or bright enough to stand off its ground.
pub(super) const LIT: Srgb = Srgb(0xE8, 0x3C, 0x2C);
/// From this width on the two pictures stand side by side as rounds.
pub(super) const ROUNDS_FROM_PX: f64 = 540.0;
/// Widest round.
pub(super) const WIDEST_ROUND_PX: f64 = 460.0;
/// Widest slot: one apparent field across.
pub(super) const WIDEST_SLOT_PX: f64 = 480.0;
/// Height of a slot over its width.
pub(super) const SLOT_SHAPE: f64 = 148.0 / 328.0;
/// From the upright line to the tip of a pointer, from there to its name, and a letter of that.
const HOLD_PX: f64 = 8.0;
const HOLD_NAME_PX: f64 = 10.0;
const LETTER_PX: f64 = 7.6;
/// Space between the two pictures.
pub(super) const GAP_PX: f64 = 24.0;
/// Height of the trees behind, m.
pub(super) const TREE_M: f64 = 16.0;
/// Half the width over which the wood is drawn, m at its distance.
pub(super) const WOOD_HALF_M: f64 = 420.0;

/// The two pictures' shape for a width.
pub(super) fn cutout(width_px: f64) -> (Cutout, bool) {
    if width_px >= ROUNDS_FROM_PX {
        let d = ((width_px - GAP_PX) / 2.0).min(WIDEST_ROUND_PX).floor();
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
pub(super) fn wood_path() -> String {
    let mut points = vec![Point::corner(-WOOD_HALF_M, 1.0)];
    let (mut x, mut n) = (-WOOD_HALF_M, 7_u32);
    while x < WOOD_HALF_M {
        // A repeatable sequence of crowns: widths 4 to 9 m, heights 10 to 16 m.
        n = n.wrapping_mul(1_103_515_245).wrapping_add(12_345);
        let a = f64::from((n >> 16) & 255) / 255.0;
        n = n.wrapping_mul(1_103_515_245).wrapping_add(12_345);
        let b = f64::from((n >> 16) & 255) / 255.0;
        let spruce = a < 0.4;
        let wide = 4.0 + if spruce { 3.0 } else { 5.0 } * a;
        let tall = TREE_M * (0.62 + 0.38 * b);
        points.extend(crown(spruce).map(|(along, up, corner)| Point {
            x: x + along * wide,
            y: -up * tall,
            corner,
        }));
        // Crowns reach into one another.
        x += 0.94 * wide;
    }
    points.push(Point::corner(x, 1.0));
    let mut out = String::new();
    push_outline(&mut out, &points, 2);
    out
}

/// Through what one looks.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Through {
    This,
    Other,
    BareEye,
}

/// Handles as they stand.
#[derive(Clone, Copy, PartialEq)]
pub(super) struct Stand {
    pub(super) magnification: f64,
    pub(super) range_m: f64,
    pub(super) minute: f64,
    /// The light in the reticle.
    pub(super) glow: Option<Glow>,
    pub(super) through: Through,
    /// The eye off the axis, to the right, and behind the eye point, in mm.
    pub(super) aside_mm: f64,
    pub(super) behind_mm: f64,
}

/// The elements of one picture.
pub(super) struct Slot {
    pub(super) drawing: Pen,
    pub(super) sky: Pen,
    pub(super) wood: Pen,
    pub(super) ground: Pen,
    pub(super) quarry: Pen,
    pub(super) pieces: Vec<Pen>,
    pub(super) reticle: Pen,
    pub(super) gradient: Pen,
    pub(super) shade: Pen,
    pub(super) holds: Vec<[Pen; 3]>,
    pub(super) bracket: Pen,
    pub(super) bracket_text: Pen,
    pub(super) covers: Pen,
}

impl Slot {
    pub(super) fn new(pieces: usize, holds: usize) -> Self {
        Self {
            drawing: Pen::default(),
            sky: Pen::default(),
            wood: Pen::default(),
            ground: Pen::default(),
            quarry: Pen::default(),
            pieces: pens(pieces),
            reticle: Pen::default(),
            gradient: Pen::default(),
            shade: Pen::default(),
            holds: (0..holds).map(|_| Default::default()).gathered(),
            bracket: Pen::default(),
            bracket_text: Pen::default(),
            covers: Pen::default(),
        }
    }

    pub(super) fn forget(&self) {
        let own = [
            &self.drawing,
            &self.sky,
            &self.wood,
            &self.ground,
            &self.quarry,
            &self.reticle,
            &self.gradient,
            &self.shade,
            &self.bracket,
            &self.bracket_text,
            &self.covers,
        ];
        let holds = self.holds.iter().flatten();
        for pen in own.into_iter().chain(&self.pieces).chain(holds) {
            pen.forget();
        }
    }
}

/// Everything that a picture is painted from.
pub(super) struct Painter {
    pub(super) sight: Rc<Sight>,
    pub(super) other: Option<Rc<Sight>>,
    pub(super) quarry: Rc<Quarry>,
    pub(super) surroundings: Rc<Surroundings>,
    pub(super) eye: Eye,
    pub(super) evening: Rc<Evening>,
    pub(super) holds: Rc<Vec<(f64, f64)>>,
    pub(super) units: Units,
    pub(super) cutout: Cutout,
    pub(super) id: AttrValue,
    pub(super) slots: Rc<[Slot; 2]>,
    pub(super) blur: Rc<Pen>,
    pub(super) said: Rc<Pen>,
    pub(super) eye_said: Rc<Pen>,
    pub(super) scale: Rc<Pen>,
    /// Where the two drawings begin on the screen, in px: their pixels are not those of the page.
    pub(super) corners_px: [Cell<(f64, f64)>; 2],
}

/// What one plane's picture shows.
pub(super) struct Seen {
    pub(super) scene: Shown,
    pub(super) light: Light,
    /// Colours of the reticle's layers, and the share of each that is left.
    pub(super) lines: Vec<(Srgb, f64, Role)>,
    /// Luminance of the veil that a lit centre lays over the picture, over the picture's own.
    pub(super) veiled_by: f64,
}

pub(super) fn reticle_paths(
    layers: Vec<Layer>,
    colours: Vec<String>,
    glow: bool,
    per_label: f64,
    centre: (f64, f64),
) -> Vec<Part> {
    layers
        .into_iter()
        .zip(colours)
        .map(|(layer, colour)| {
            let mut all = vec![("class", "view__reticle".to_owned()), ("d", layer.path)];
            let glows = glow && layer.lit;
            match layer.paint {
                Paint::Stroke { width_px } => {
                    let mut width = String::new();
                    let least = if glows { LEAST_LIT_PX } else { 0.0 };
                    push_number(&mut width, width_px.max(least), 3);
                    all.push(("fill", "none".to_owned()));
                    all.push(("stroke-width", width));
                    all.push(("stroke", colour));
                }
                Paint::Fill => {
                    // What glows and is filled is the dot in the centre.
                    if glows && layer.label_mrad * per_label < LEAST_LIT_PX {
                        let mut wide = String::new();
                        push_circle(&mut wide, centre.0, centre.1, 0.5 * LEAST_LIT_PX, 2);
                        all[1].1 = wide;
                    }
                    all.push(("fill", colour));
                }
            }
            Part::path(all)
        })
        .gathered()
}

/// A point of light is seen however small it is; a screen shows none smaller than this, px.
const LEAST_LIT_PX: f64 = 2.5;

/// How black a screen has to draw what keeps this share of its light.
pub(super) fn opacity(share: f64) -> f64 {
    1.0 - libm::pow(share.clamp(0.0, 1.0), 1.0 / 2.2)
}

pub(super) fn paint_shade(slot: &Slot, shade: &Shade, id: &str, centre: (f64, f64)) {
    let shown = |on: bool| if on { "inline" } else { "none" };
    slot.shade.set("display", shown(*shade != Shade::None));
    match shade {
        Shade::None => {}
        Shade::Even(share) => {
            slot.shade.set("fill", TUBE);
            slot.shade.set("fill-opacity", &fixed(opacity(*share), 3));
        }
        Shade::Rings {
            centre_px,
            black_px,
            stops,
        } => {
            // The course depends on beam and pupil only; the eye's place moves the whole.
            let mut course = String::new();
            for (at, share) in stops {
                course.push_str(&filled!("<stop offset=\"{.4}\" stop-color=\"", *at));
                course.push_str(TUBE);
                course.push_str(&filled!("\" stop-opacity=\"{.3}\"/>", opacity(*share)));
            }
            slot.gradient.inside(&course);
            let px = |name, value: f64| slot.gradient.set(name, &fixed(value, 1));
            px("cx", centre.0 + centre_px);
            px("cy", centre.1);
            px("r", *black_px);
            slot.shade.set("fill", &format!("url(#{id})"));
            slot.shade.set("fill-opacity", "1");
        }
    }
}

/// The inside of the tube.
pub(super) const TUBE: &str = "#05060a";

pub(super) const PLANES: [FocalPlane; 2] = [FocalPlane::First, FocalPlane::Second];

impl Painter {
    /// The sight one looks through; the bare eye has the first one's for its field.
    pub(super) fn sight_at(&self, stand: &Stand) -> &Sight {
        match (&self.other, stand.through) {
            (Some(other), Through::Other) => other,
            _ => &self.sight,
        }
    }

    /// The magnification that the handle means for the sight one looks through.
    pub(super) fn power(&self, stand: &Stand) -> f64 {
        let sight = self.sight_at(stand);
        stand
            .magnification
            .clamp(sight.magnification_low, sight.magnification_high)
    }

    pub(super) fn light(&self, minute: f64, glare_index: f64, extra: f64) -> Light {
        let s = &self.surroundings;
        let glare = glare_index + straylight_index(self.eye.age_years());
        Light {
            illuminance_lx: self.evening.scene_lx(minute),
            ground_reflectance: s.ground_reflectance,
            dark_reflectance: self.quarry.dark_reflectance,
            light_reflectance: self.quarry.light_reflectance,
            wood_reflectance: s.wood_reflectance,
            sp_ratio: s.sp_ratio,
            veil: veil_factor(glare, s.surround_to_ground) + extra,
            ground_hue: s.ground_hue,
            coat_hue: self.quarry.hue,
        }
    }

    pub(super) fn stance(&self, stand: &Stand, pupil_mm: f64) -> Stance {
        let sight = self.sight_at(stand);
        Stance {
            exit_pupil_mm: sight.exit_pupil_mm(self.power(stand)),
            eye_pupil_mm: pupil_mm,
            apparent_field_deg: sight.apparent_field_deg,
            aside_mm: stand.aside_mm,
            behind_mm: stand.behind_mm,
        }
    }

    /// The scene as one plane shows it: a lit centre veils by its own seen size.
    pub(super) fn seen(&self, stand: &Stand, plane: FocalPlane, dark: Option<&Shown>) -> Seen {
        let bare = stand.through == Through::BareEye;
        let sight = self.sight_at(stand);
        let (magnification, optics, glare) = if bare {
            (1.0, Optics::bare_eye(), 0.0)
        } else {
            let power = self.power(stand);
            (power, sight.optics(power), sight.glare_index)
        };
        let glow = stand.glow.filter(|_| !bare);
        let veiled_by = match (glow, dark) {
            (Some(glow), Some(dark)) => {
                let per_label = true_subtension_mrad(
                    plane,
                    magnification,
                    sight.reference_magnification,
                    magnification,
                );
                let lx = illuminance_at_eye_lx(
                    &sight.reticle,
                    glow,
                    per_label,
                    sight.apparent_field_deg,
                );
                let veil = veil_cd_m2(lx, VEIL_BESIDE_DEG, self.eye.age_years());
                let image = image_luminance_cd_m2(
                    self.light(stand.minute, glare, 0.0).ground_cd_m2(),
                    sight.transmission_day,
                    sight.exit_pupil_mm(magnification),
                    dark.seen.pupil_mm,
                );
                if image > 0.0 { veil / image } else { f64::MAX }.min(1e6)
            }
            _ => 0.0,
        };
        let light = self.light(stand.minute, glare, veiled_by);
        let scene = match dark {
            Some(dark) if veiled_by < 1e-3 => dark.clone(),
            _ => shown(
                &self.quarry.figure,
                &light,
                stand.range_m,
                &self.eye,
                &optics,
            ),
        };
        let lines = if bare || dark.is_none() {
            Vec::new()
        } else {
            self.line_colours(sight, plane, &scene, &light, &optics, magnification)
        };
        Seen {
            scene,
            light,
            lines,
            veiled_by,
        }
    }

    /// The colour in which a lit piece is seen: its own light over that of the ground, red.
    pub(super) fn lit_colour(&self, glow: Glow, seen: &Seen, unlit: Srgb) -> Srgb {
        let ground = seen.light.ground_cd_m2();
        let ratio = if ground > 0.0 {
            glow.luminance_cd_m2() / ground
        } else {
            f64::INFINITY
        };
        // On a screen nothing is redder than its red; what is fainter is lost in the line's own.
        let share = (ratio * seen.scene.shown_ground / LIT.relative_luminance()).min(1.0);
        let (red, dark) = (LIT.linear(), unlit.linear());
        Srgb::from_linear([0, 1, 2].map(|n| share * red[n] + (1.0 - share) * dark[n]))
    }

    /// Paints the pictures; the long words only if `with_words`: while a handle moves they wait.
    pub(super) fn paint(&self, stand: Stand, with_words: bool) {
        let bare = stand.through == Through::BareEye;
        let sight = self.sight_at(&stand);
        let range_m = stand.range_m;
        let magnification = if bare { 1.0 } else { self.power(&stand) };
        let dark = self.seen(
            &Stand {
                glow: None,
                ..stand
            },
            FocalPlane::First,
            None,
        );
        let at_target = px_per_mrad(
            self.cutout.field_px,
            sight.apparent_field_deg,
            magnification,
        );
        let per_cm = px_per_cm(at_target, range_m);
        let behind = backdrop(
            range_m,
            self.surroundings.eye_height_m,
            0.01 * self.quarry.figure.bottom_cm,
            self.surroundings.wood_behind_m,
            TREE_M,
        );
        let per_m_there = at_target * 1000.0 / (range_m + self.surroundings.wood_behind_m);
        // What the eye cannot resolve is drawn as soft as it is seen: half the least angle.
        let apparent_mrad = minimum_angle_arcmin(dark.scene.seen.luminance_cd_m2) / ARCMIN_PER_MRAD;
        let soft_px = 0.5 * apparent_mrad * at_target / magnification;
        let soft = soft_px >= 0.35;
        if soft {
            // In the quarry's own centimetres, in steps of an eighth so that it seldom changes.
            let eighths = (8.0 * libm::log2(soft_px)).round() / 8.0;
            let steady_px = libm::exp2(eighths);
            self.blur.set("stdDeviation", &fixed(steady_px / per_cm, 2));
        }
        let filter = if soft {
            format!("url(#{}-soft)", self.id)
        } else {
            "none".to_owned()
        };
        let shade = if bare {
            Shade::None
        } else {
            self.stance(&stand, dark.scene.seen.pupil_mm)
                .shade(self.cutout.field_px)
        };
        let (kind, label_mrad) = yardstick(&sight.reticle);
        let short = yardstick_short(kind);
        let ratio = platform::device_pixel_ratio();
        let both = PLANES.map(|plane| self.seen(&stand, plane, Some(&dark.scene)));
        for (n, (slot, plane)) in self.slots.iter().zip(PLANES).enumerate() {
            let seen = &both[n];
            let scene = &seen.scene;
            let centre = self
                .cutout
                .centre_on_screen_px(ratio, self.corners_px[n].get());
            let foot_px = centre.1 - behind.wood_foot_mrad * at_target;
            slot.sky.set("fill", &scene.sky.hex());
            slot.wood.set("fill", &scene.wood.hex());
            slot.wood
                .set("transform", &placed(centre.0, foot_px, per_m_there));
            slot.ground.set("fill", &scene.ground.hex());
            let mut ground_y = String::new();
            push_number(
                &mut ground_y,
                foot_px.clamp(-2.0, self.cutout.height_px + 2.0),
                1,
            );
            slot.ground.set("y", &ground_y);
            slot.quarry
                .set("transform", &placed(centre.0, centre.1, per_cm));
            slot.quarry.set("filter", &filter);
            for (pen, colour) in slot.pieces.iter().zip(&scene.pieces) {
                pen.set("fill", &colour.hex());
            }
            let shade_id = format!("{}-shade-{n}", self.id);
            paint_shade(slot, &shade, &shade_id, centre);
            if bare {
                slot.reticle.parts(&[]);
                for [pen, ..] in &slot.holds {
                    pen.set("visibility", "hidden");
                }
                slot.bracket.parts(&[]);
                slot.bracket_text.text("");
                slot.covers.text(&t!("view-bare-eye"));
                continue;
            }
            let per_label = px_per_label_mrad(
                plane,
                at_target,
                sight.reference_magnification,
                magnification,
            );
            let layers = reticle_layers(&sight.reticle, per_label, centre, &self.cutout);
            let colours: Vec<String> = layers
                .iter()
                .zip(&seen.lines)
                .map(|(layer, (unlit, ..))| match stand.glow {
                    Some(glow) if layer.lit => self.lit_colour(glow, seen, *unlit).hex(),
                    _ => unlit.hex(),
                })
                .gathered();
            let glow = stand.glow.is_some();
            slot.reticle
                .parts(&reticle_paths(layers, colours, glow, per_label, centre));
            let covered = true_subtension_mrad(
                plane,
                label_mrad,
                sight.reference_magnification,
                magnification,
            );
            let words = cm(self.units, covered_cm(covered, range_m));
            self.hold_marks(slot, centre, at_target, per_cm);
            self.bracket(slot, kind, centre, label_mrad * per_label, &words);
            slot.covers.text(&t!(
                "view-covers",
                what = short.clone(),
                cm = if kind == Yardstick::MarkToMark {
                    // Who has chosen marks counts in their unit.
                    [angle(sight.unit(), covered), words].together(&t!("list-comma"))
                } else {
                    words
                },
                range = range(self.units, range_m)
            ));
        }
        if !with_words {
            return;
        }
        let words = self.words(stand, &dark, &both, at_target);
        let all: String = words
            .iter()
            .filter(|said| !said.is_empty())
            .map(|said| format!("<p>{}</p>", escaped(said)))
            .collect();
        self.said.inside(&all);
        self.eye_said.text(&self.eye_words(&stand, &dark));
        let width_m = field_at_range_m(sight.apparent_field_deg, magnification, range_m);
        self.scale.text(&t!(
            "view-scale",
            field = field(self.units, width_m),
            range = range(self.units, range_m)
        ));
    }

    /// Small pointers where the load falls: an angle at the target, the same in both planes. Their
    /// names stand beside the quarry, not on it, as long as there is room.
    pub(super) fn hold_marks(&self, slot: &Slot, centre: (f64, f64), at_target: f64, per_cm: f64) {
        let mut last = f64::INFINITY;
        let beside = self.quarry.figure.right_cm * per_cm - HOLD_PX;
        for (hold, [pen, lead, name]) in self.holds.iter().zip(&slot.holds).rev() {
            let y = centre.1 + hold.1 * at_target;
            // Where there is room for its name over the dimension line and over the next farther:
            // what is far matters most.
            let room = last - y >= 15.0 && y < self.cutout.height_px - 30.0;
            if room {
                last = y;
            }
            pen.set("visibility", if room { "visible" } else { "hidden" });
            if !room {
                continue;
            }
            // Where a load strikes, or the range alone where the field has no room for more.
            let full = said_hold(self.units, *hold);
            let free_px = self.chord_px(y) - HOLD_PX;
            let room_px = |words: &str| free_px - LETTER_PX * words.chars().count() as f64;
            let words = if room_px(&full) < HOLD_NAME_PX {
                range(self.units, hold.0)
            } else {
                full
            };
            // Beside the quarry, as far as the field reaches.
            let at = (beside + 6.0).min(room_px(&words)).max(HOLD_NAME_PX);
            name.text(&words);
            let mut to = String::new();
            push_pair(&mut to, ' ', centre.0 + HOLD_PX, y, 2);
            pen.set("transform", &format!("translate({to})"));
            let mut x = String::new();
            push_number(&mut x, at, 0);
            name.set("x", &x);
            lead.set("d", &filled!("M7 0H{}", (at - 3.0).max(7.0)));
        }
    }

    /// How far the round field reaches to the right of its middle at a height of the drawing.
    fn chord_px(&self, y: f64) -> f64 {
        let half = 0.5 * self.cutout.field_px;
        let below = y - 0.5 * self.cutout.height_px;
        let chord = (half * half - below * below).max(0.0).sqrt();
        chord.min(0.5 * self.cutout.width_px - 2.0)
    }

    /// Colours of the layers in a plane, and whether each can be told apart.
    pub(super) fn line_colours(
        &self,
        sight: &Sight,
        plane: FocalPlane,
        scene: &Shown,
        light: &Light,
        optics: &Optics,
        magnification: f64,
    ) -> Vec<(Srgb, f64, Role)> {
        layers_of(&sight.reticle)
            .into_iter()
            .map(|(role, label_mrad)| {
                let true_mrad = true_subtension_mrad(
                    plane,
                    label_mrad,
                    sight.reference_magnification,
                    magnification,
                );
                let (colour, left) = line_colour(scene, light, true_mrad, &self.eye, optics);
                (colour, left, role)
            })
            .gathered()
    }

    /// The dimension line under the picture: how far the yardstick reaches on the quarry.
    pub(super) fn bracket(
        &self,
        slot: &Slot,
        kind: Yardstick,
        centre: (f64, f64),
        reach: f64,
        words: &str,
    ) {
        let y = self.cutout.height_px - 16.0;
        let wide = matches!(kind, Yardstick::PostWidth | Yardstick::LineWidth);
        let (from, to) = if wide {
            (centre.0 - 0.5 * reach, centre.0 + 0.5 * reach)
        } else {
            (centre.0, centre.0 + reach)
        };
        // In a round the chord at this height ends before the drawing does.
        let most = 0.5 * self.cutout.width_px + self.chord_px(y);
        let end = to.min(most);
        let mut line = String::new();
        push_pair(&mut line, 'M', from, y - 4.0, 2);
        line.push_str("v8");
        push_pair(&mut line, 'M', from, y, 2);
        line.push('H');
        push_number(&mut line, end, 2);
        if to <= most {
            push_pair(&mut line, 'M', end, y - 4.0, 2);
            line.push_str("v8");
        }
        // From what is measured down to its measure.
        let mut down = String::new();
        if !wide && to <= most {
            push_pair(&mut down, 'M', end, centre.1 + 6.0, 2);
            down.push('V');
            push_number(&mut down, y - 6.0, 1);
        }
        let path = |class: &str, d: String| Part::path(vec![("class", class.to_owned()), ("d", d)]);
        slot.bracket.parts(&[
            path("view__lead", down),
            path("view__bracket-halo", line.clone()),
            path("view__bracket", line),
        ]);
        let (x, anchor) = if most - end > 64.0 {
            (end + 6.0, "start")
        } else {
            (from - 6.0, "end")
        };
        slot.bracket_text.set("text-anchor", anchor);
        slot.bracket_text
            .set("transform", &filled!("translate({.1} {.1})", x, y + 5.0));
        slot.bracket_text.text(words);
    }
}

/// Angle beside a lit centre for which its veil is computed, in degrees.
pub(super) const VEIL_BESIDE_DEG: f64 = 1.0;
/// `translate(x y) scale(k)`.
pub(super) fn placed(x: f64, y: f64, scale: f64) -> String {
    filled!("translate({.2} {.2}) scale({.5})", x, y, scale)
}

/// Role and labelled width of each layer that a reticle is drawn with.
pub(super) fn layers_of(reticle: &Reticle) -> Vec<(Role, f64)> {
    let window = Cutout {
        width_px: 1.0,
        height_px: 1.0,
        field_px: 1.0,
    };
    reticle_layers(reticle, 1.0, (0.0, 0.0), &window)
        .iter()
        .map(|layer| (layer.role, layer.label_mrad))
        .gathered()
}
