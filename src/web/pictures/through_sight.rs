//! The view through the sight: both focal planes on one handle, over the dusk strip.

use super::attribute::{Pen, pens};
use super::dusk_strip::{DuskStrip, StripRow, said_minute};
use super::frame::Frame;
use super::parallax::said_aside;
use super::picture::REST_MS;
use super::size::{use_id, use_width};
use super::slider::{Scale, Slider};
use crate::advice::needs::mark;
use crate::advice::report;
use crate::drawing::colour::{Hue, Srgb};
use crate::drawing::dusk::Evening;
use crate::drawing::glow::{Glow, illuminance_at_eye_lx, veil_cd_m2};
use crate::drawing::path::{Point, push_number, push_outline, push_pair};
use crate::drawing::scene::{Light, Shown, line_colour, shown};
use crate::drawing::shade::{Shade, Stance};
use crate::drawing::silhouette::{Figure, Tone};
use crate::drawing::svg::escaped;
use crate::drawing::view::{
    Cutout, Layer, Paint, Yardstick, backdrop, covered_cm, px_per_cm, px_per_label_mrad,
    px_per_mrad, reticle_layers, thinnest_px, yardstick,
};
use crate::eye::acuity::{image_luminance_cd_m2, minimum_angle_arcmin};
use crate::eye::veil::{straylight_index, veil_factor};
use crate::eye::{Eye, Optics};
use crate::need::answers::Units;
use crate::need::quarry::{Coat, What};
use crate::sight::eye_box::eye_box;
use crate::sight::field::field_at_range_m;
use crate::sight::pupil::{effective_objective_mm, exit_pupil_mm};
use crate::sight::reticle::{Reticle, Role, reticle_with};
use crate::sight::subtension::{ARCMIN_PER_MRAD, true_subtension_mrad};
use crate::sight::{FocalPlane, ReticleFamily};
use crate::sky::ground;
use crate::t;
use crate::web::components::figure::figure_of;
use crate::web::platform::{self, Timeout};
use crate::web::view::prelude::*;
use crate::wording::advice::{capitalised, word};
use crate::wording::{cm, field, mrad, number, range};
use std::cell::Cell;
use std::rc::Rc;

/// The sight, as far as its picture needs it.
#[derive(Clone, Debug, PartialEq)]
pub struct Sight {
    /// Its name, as in "2.5–10 × 50".
    pub name: String,
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
    /// Where the person's own load falls, for a reticle with marks for it: mrad under the aim.
    pub holds_mrad: Vec<f64>,
}

impl Sight {
    /// The same sight with the reticle of a family.
    ///
    /// A reticle with marks in the second plane holds at the highest magnification, one without
    /// at the power it is drawn for, as the ranking has it.
    #[must_use]
    pub fn with_family(&self, family: ReticleFamily) -> Self {
        Self {
            reticle: reticle_with(
                family,
                mark::dot_size(self.magnification_low),
                &self.holds_mrad,
            ),
            reference_magnification: mark::reference_magnification(family, self.magnification_high),
            ..self.clone()
        }
    }

    fn exit_pupil_mm(&self, magnification: f64) -> f64 {
        exit_pupil_mm(self.objective_mm, magnification)
    }

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

impl Quarry {
    /// An animal or a target of the table, in its winter or summer coat.
    #[must_use]
    pub fn of(what: What, name: AttrValue, winter: bool) -> Option<Self> {
        let (dark_reflectance, light_reflectance, hue) = match what {
            What::Animal(animal) => {
                let (coat, hue) = coat(animal.coat, winter);
                (coat.usual_reflectance(false), 0.6, hue)
            }
            // Black paint, and white paint or paper.
            What::Target(_) => (0.04, 0.75, Hue::NEUTRAL),
        };
        Some(Self {
            figure: Rc::new(figure_of(what)?),
            name,
            aiming_circle_cm: what.aiming_circle_mm() / 10.0,
            dark_reflectance,
            light_reflectance,
            hue,
        })
    }
}

/// The coat and its hue.
fn coat(coat: Coat, winter: bool) -> (ground::Coat, Hue) {
    use ground::Coat as Ground;
    match coat {
        Coat::VeryDark | Coat::Black => (Ground::Black, Hue::NEUTRAL),
        Coat::DarkBrown => (Ground::DarkBrown, Hue::COAT),
        Coat::RedBrownSummerGreyBrownWinter if winter => (Ground::GreyBrown, Hue::STRAW),
        Coat::GreyBrown | Coat::Grey | Coat::PaleOrGreyBrown => (Ground::GreyBrown, Hue::STRAW),
        Coat::RedBrown | Coat::RedBrownSummerGreyBrownWinter | Coat::PaleOrDarkBrown => {
            (Ground::RedBrown, Hue::COAT)
        }
        Coat::Pale => (Ground::Fawn, Hue::STRAW),
    }
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
    /// A second one to compare it with.
    #[prop_or_default]
    pub other: Option<Rc<Sight>>,
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
}

/// A lit centre: red, as the trade has it, dimmed or bright enough to stand off its ground.
const LIT: Srgb = Srgb(0xE8, 0x3C, 0x2C);
/// From this width on the two pictures stand side by side as rounds.
const ROUNDS_FROM_PX: f64 = 560.0;
/// Widest round.
const WIDEST_ROUND_PX: f64 = 460.0;
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

/// Through what one looks.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Through {
    This,
    Other,
    BareEye,
}

/// Handles as they stand.
#[derive(Clone, Copy, PartialEq)]
struct Stand {
    magnification: f64,
    range_m: f64,
    minute: f64,
    /// The light in the reticle.
    glow: Option<Glow>,
    through: Through,
    /// The eye off the axis, to the right, and behind the eye point, in mm.
    aside_mm: f64,
    behind_mm: f64,
}

/// The elements of one picture.
struct Slot {
    drawing: Pen,
    sky: Pen,
    wood: Pen,
    ground: Pen,
    quarry: Pen,
    pieces: Vec<Pen>,
    reticle: Pen,
    gradient: Pen,
    shade: Pen,
    holds: Vec<Pen>,
    bracket: Pen,
    bracket_text: Pen,
    covers: Pen,
}

impl Slot {
    fn new(pieces: usize, holds: usize) -> Self {
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
            holds: pens(holds),
            bracket: Pen::default(),
            bracket_text: Pen::default(),
            covers: Pen::default(),
        }
    }

    fn forget(&self) {
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
        for pen in own.into_iter().chain(&self.pieces).chain(&self.holds) {
            pen.forget();
        }
    }
}

/// Everything that a picture is painted from.
struct Painter {
    sight: Rc<Sight>,
    other: Option<Rc<Sight>>,
    quarry: Rc<Quarry>,
    surroundings: Rc<Surroundings>,
    eye: Eye,
    evening: Rc<Evening>,
    holds: Rc<Vec<(f64, f64)>>,
    units: Units,
    cutout: Cutout,
    id: AttrValue,
    slots: Rc<[Slot; 2]>,
    blur: Rc<Pen>,
    said: Rc<Pen>,
    eye_said: Rc<Pen>,
    scale: Rc<Pen>,
    /// Where the two drawings begin on the screen, in px: their pixels are not those of the page.
    corners_px: [Cell<(f64, f64)>; 2],
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

/// What one plane's picture shows.
struct Seen {
    scene: Shown,
    light: Light,
    /// Colours of the reticle's layers, and the share of each that is left.
    lines: Vec<(Srgb, f64, Role)>,
    /// Luminance of the veil that a lit centre lays over the picture, over the picture's own.
    veiled_by: f64,
}

fn reticle_paths(layers: Vec<Layer>, colours: Vec<String>) -> Vec<Vec<(&'static str, String)>> {
    layers
        .into_iter()
        .zip(colours)
        .map(|(layer, colour)| {
            let mut all = vec![("class", "view__reticle".to_owned()), ("d", layer.path)];
            match layer.paint {
                Paint::Stroke { width_px } => {
                    let mut width = String::new();
                    push_number(&mut width, width_px, 3);
                    all.push(("fill", "none".to_owned()));
                    all.push(("stroke-width", width));
                    all.push(("stroke", colour));
                }
                Paint::Fill => all.push(("fill", colour)),
            }
            all
        })
        .collect()
}

/// How black a screen has to draw what keeps this share of its light.
fn opacity(share: f64) -> f64 {
    1.0 - libm::pow(share.clamp(0.0, 1.0), 1.0 / 2.2)
}

fn paint_shade(slot: &Slot, shade: &Shade, id: &str, centre: (f64, f64)) {
    let shown = |on: bool| if on { "inline" } else { "none" };
    slot.shade.set("display", shown(*shade != Shade::None));
    match shade {
        Shade::None => {}
        Shade::Even(share) => {
            slot.shade.set("fill", TUBE);
            slot.shade
                .set("fill-opacity", &format!("{:.3}", opacity(*share)));
        }
        Shade::Rings {
            centre_px,
            black_px,
            stops,
        } => {
            // The course depends on beam and pupil only; the eye's place moves the whole.
            let mut course = String::new();
            for (at, share) in stops {
                course.push_str(&format!(
                    "<stop offset=\"{at:.4}\" stop-color=\"{TUBE}\" stop-opacity=\"{:.3}\"/>",
                    opacity(*share)
                ));
            }
            slot.gradient.inside(&course);
            let px = |name, value: f64| slot.gradient.set(name, &format!("{value:.1}"));
            px("cx", centre.0 + centre_px);
            px("cy", centre.1);
            px("r", *black_px);
            slot.shade.set("fill", &format!("url(#{id})"));
            slot.shade.set("fill-opacity", "1");
        }
    }
}

/// The inside of the tube.
const TUBE: &str = "#05060a";

const PLANES: [FocalPlane; 2] = [FocalPlane::First, FocalPlane::Second];

impl Painter {
    /// The sight one looks through; the bare eye has the first one's for its field.
    fn sight_at(&self, stand: &Stand) -> &Sight {
        match (&self.other, stand.through) {
            (Some(other), Through::Other) => other,
            _ => &self.sight,
        }
    }

    /// The magnification that the handle means for the sight one looks through.
    fn power(&self, stand: &Stand) -> f64 {
        let sight = self.sight_at(stand);
        stand
            .magnification
            .clamp(sight.magnification_low, sight.magnification_high)
    }

    fn light(&self, minute: f64, glare_index: f64, extra: f64) -> Light {
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

    fn stance(&self, stand: &Stand, pupil_mm: f64) -> Stance {
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
    fn seen(&self, stand: &Stand, plane: FocalPlane, dark: Option<&Shown>) -> Seen {
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
    fn lit_colour(&self, glow: Glow, seen: &Seen, unlit: Srgb) -> Srgb {
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
    fn paint(&self, stand: Stand, with_words: bool) {
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
            self.blur
                .set("stdDeviation", &format!("{:.2}", steady_px / per_cm));
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
                slot.reticle.paths(&[]);
                for pen in &slot.holds {
                    pen.set("visibility", "hidden");
                }
                slot.bracket.paths(&[]);
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
                .collect();
            slot.reticle.paths(&reticle_paths(layers, colours));
            let covered = true_subtension_mrad(
                plane,
                label_mrad,
                sight.reference_magnification,
                magnification,
            );
            let words = cm(self.units, covered_cm(covered, range_m));
            self.hold_marks(slot, centre, at_target);
            self.bracket(slot, kind, centre, label_mrad * per_label, &words);
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

    /// Small pointers where the load falls: an angle at the target, the same in both planes.
    fn hold_marks(&self, slot: &Slot, centre: (f64, f64), at_target: f64) {
        let mut last = f64::NEG_INFINITY;
        for ((_, hold_mrad), pen) in self.holds.iter().zip(&slot.holds) {
            let y = centre.1 + hold_mrad * at_target;
            // Where there is room for its name under the last, and over the dimension line.
            let room = y - last >= 15.0 && y < self.cutout.height_px - 30.0;
            if room {
                last = y;
            }
            pen.set("visibility", if room { "visible" } else { "hidden" });
            pen.set(
                "transform",
                &format!("translate({:.2} {y:.2})", centre.0 + 8.0),
            );
        }
    }

    /// Colours of the layers in a plane, and whether each can be told apart.
    fn line_colours(
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
            .collect()
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
        // In a round the chord at this height ends before the drawing does.
        let half = 0.5 * self.cutout.field_px;
        let below = y - 0.5 * self.cutout.height_px;
        let chord = (half * half - below * below).max(0.0).sqrt();
        let most = (0.5 * self.cutout.width_px + chord).min(self.cutout.width_px - 2.0);
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
        let path = |class: &str| vec![("class", class.to_owned()), ("d", line.clone())];
        slot.bracket
            .paths(&[path("view__bracket-halo"), path("view__bracket")]);
        let (x, anchor) = if most - end > 64.0 {
            (end + 6.0, "start")
        } else {
            (from - 6.0, "end")
        };
        slot.bracket_text.set("text-anchor", anchor);
        slot.bracket_text
            .set("transform", &format!("translate({x:.1} {:.1})", y + 5.0));
        slot.bracket_text.text(words);
    }

    fn words(&self, stand: Stand, dark: &Seen, both: &[Seen; 2], at_target: f64) -> Vec<String> {
        let bare = stand.through == Through::BareEye;
        let sight = self.sight_at(&stand);
        let magnification = if bare { 1.0 } else { self.power(&stand) };
        let range_m = stand.range_m;
        let at = range(self.units, range_m);
        let mut said = vec![t!(
            "view-picture",
            quarry = capitalised(&self.quarry.name),
            range = at.clone(),
            power = match stand.through {
                Through::BareEye => t!("view-bare-eye"),
                Through::This => said_power(magnification),
                Through::Other => format!("{}, {}", sight.name, said_power(magnification)),
            },
            time = said_minute(&self.evening, stand.minute)
        )];
        let width_m = field_at_range_m(sight.apparent_field_deg, magnification, range_m);
        if self.quarry.figure.width_cm() > 100.0 * width_m {
            said.push(t!("view-larger", field = field(self.units, width_m)));
        }
        if !bare && !self.holds.is_empty() {
            let ranges: Vec<String> = self
                .holds
                .iter()
                .map(|(range_m, _)| range(self.units, *range_m))
                .collect();
            said.push(t!("view-holds", ranges = ranges.join(", ")));
        }
        let light = self.light_words(&stand, dark, both);
        if bare {
            return vec![said.join(" "), light];
        }
        let mut all = vec![said.join(" ")];
        all.extend(self.plane_words(sight, magnification, range_m, &at, at_target));
        if let Some(glow) = stand.glow {
            all.push(glow_words(glow, dark, both));
        }
        all.push(light);
        all
    }

    /// What the yardstick covers in either plane, now and at the lowest magnification.
    fn plane_words(
        &self,
        sight: &Sight,
        magnification: f64,
        range_m: f64,
        at: &str,
        at_target: f64,
    ) -> [String; 3] {
        let (kind, label_mrad) = yardstick(&sight.reticle);
        let what = yardstick_name(kind);
        let reference = sight.reference_magnification;
        let centimetres = |mrad: f64| cm(self.units, covered_cm(mrad, range_m));
        let finest = thinnest_px(&sight.reticle, 1.0);
        let arcmin = |plane, magnification: f64| {
            let true_mrad = true_subtension_mrad(plane, finest, reference, magnification);
            number(true_mrad * ARCMIN_PER_MRAD * magnification, 1)
        };
        let mut first = t!(
            "view-first-said",
            what = what.clone(),
            mrad = mrad(label_mrad),
            cm = centimetres(label_mrad),
            range = at.to_owned(),
            arcmin = arcmin(FocalPlane::First, magnification)
        );
        let thin_px = finest * at_target;
        if thin_px < 0.8 {
            first.push(' ');
            first.push_str(&t!("view-thin", px = number(thin_px, 1)));
        }
        let second_mrad = |at| true_subtension_mrad(FocalPlane::Second, label_mrad, reference, at);
        let second = second_mrad(magnification);
        let second = if (second / label_mrad - 1.0).abs() < 0.005 {
            t!(
                "view-second-at-label",
                what = what.clone(),
                mrad = mrad(second),
                cm = centimetres(second),
                range = at.to_owned(),
                arcmin = arcmin(FocalPlane::Second, magnification)
            )
        } else {
            t!(
                "view-second-said",
                what = what.clone(),
                mrad = mrad(second),
                cm = centimetres(second),
                range = at.to_owned(),
                label = mrad(label_mrad),
                reference = said_power(reference),
                arcmin = arcmin(FocalPlane::Second, magnification)
            )
        };
        let low = sight.magnification_low;
        let lowest = t!(
            "view-lowest-said",
            power = said_power(low),
            what = what,
            first = centimetres(label_mrad),
            arcmin = arcmin(FocalPlane::First, low),
            least = number(ACUTE_ARCMIN, 0),
            second = centimetres(second_mrad(low))
        );
        [first, second, lowest]
    }

    /// Where the eye is and what that costs.
    fn eye_words(&self, stand: &Stand, dark: &Seen) -> String {
        let stance = self.stance(stand, dark.scene.seen.pupil_mm);
        let room = eye_box(
            stance.exit_pupil_mm,
            stance.eye_pupil_mm,
            stance.apparent_field_deg,
        );
        let mm = |mm: f64| number(mm, 1);
        let mut said = t!(
            "view-eye-room",
            exit = mm(stance.exit_pupil_mm),
            pupil = mm(stance.eye_pupil_mm),
            aside = mm(room.full_sideways_mm),
            gone = mm(room.gone_sideways_mm),
            along = number(room.half_along_mm, 0)
        );
        if stand.aside_mm != 0.0 || stand.behind_mm != 0.0 {
            let percent = |share: f64| number(100.0 * share, 0);
            said.push(' ');
            said.push_str(&t!(
                "view-eye-off",
                aside = said_aside(stand.aside_mm),
                along = said_along(stand.behind_mm),
                middle = percent(stance.share_at(0.0)),
                left = percent(stance.share_at(-1.0)),
                right = percent(stance.share_at(1.0))
            ));
            if stance.mean_share() < 0.001 {
                said.push(' ');
                said.push_str(&t!("view-eye-black"));
            } else if stand.aside_mm != 0.0 && stand.behind_mm == 0.0 {
                said.push(' ');
                said.push_str(&t!("view-eye-even"));
            }
        }
        said
    }

    fn light_words(&self, stand: &Stand, dark: &Seen, both: &[Seen; 2]) -> String {
        let bare = stand.through == Through::BareEye;
        let mut light = Vec::new();
        if self.evening.scene_lx(stand.minute) <= 0.0 {
            light.push(t!("view-no-light"));
        }
        let apart = both.iter().all(|seen| seen.scene.body_margin > 0.0);
        light.push(if apart {
            t!("view-body-apart")
        } else {
            t!("view-body-lost")
        });
        let small: Vec<f64> = dark
            .scene
            .left
            .iter()
            .zip(&self.quarry.figure.pieces)
            .filter(|(_, piece)| piece.tone != Tone::Dark || piece.seen_area_cm2 < 60.0)
            .map(|(left, _)| *left)
            .collect();
        let lost = small.iter().filter(|left| **left <= 0.0).count();
        if apart && lost > 0 {
            let share = 100.0 * lost as f64 / small.len() as f64;
            light.push(t!("view-fine-lost", share = number(share, 0)));
        }
        let gone = |role: Role| {
            both.iter().any(|seen| {
                seen.lines
                    .iter()
                    .any(|(_, left, of)| *of == role && *left <= 0.0)
            })
        };
        if gone(Role::Centre) && !bare && stand.glow.is_none() {
            let bars = if gone(Role::Bar) { "no" } else { "yes" };
            light.push(t!("view-line-lost", bars = bars));
        }
        light.push(t!("view-identify"));
        light.join(" ")
    }
}

/// Angle beside a lit centre for which its veil is computed, in degrees.
const VEIL_BESIDE_DEG: f64 = 1.0;
/// A line that looks narrower than this is hard to use, in minutes of arc.
const ACUTE_ARCMIN: f64 = 1.0;

fn glow_words(glow: Glow, dark: &Seen, both: &[Seen; 2]) -> String {
    let veiled = both.iter().map(|seen| seen.veiled_by).fold(0.0, f64::max);
    let ground = dark.light.ground_cd_m2();
    let luminance = glow.luminance_cd_m2();
    let strength = number(luminance, if luminance < 1.0 { 2 } else { 0 });
    let mut said = match glow {
        Glow::Night => t!("view-lit-night-said", luminance = strength),
        Glow::Day => t!("view-lit-day-said", luminance = strength),
    };
    said.push(' ');
    said.push_str(&if luminance < 0.1 * ground {
        t!("view-lit-unseen")
    } else if veiled > 0.1 {
        let lost = both
            .iter()
            .any(|seen| seen.scene.body_margin <= 0.0 && dark.scene.body_margin > 0.0);
        let share = number(100.0 * veiled.min(1e4), 0);
        if lost {
            t!("view-lit-veils-lost", share = share)
        } else {
            t!("view-lit-veils", share = share)
        }
    } else {
        t!("view-lit-harmless", share = number(100.0 * veiled, 1))
    });
    said
}

/// The words for a place of the eye along the axis.
fn said_along(behind_mm: f64) -> String {
    let mm = number(behind_mm.abs(), 0);
    if behind_mm.abs() < 0.5 {
        t!("view-eye-at")
    } else if behind_mm > 0.0 {
        t!("view-eye-far", mm = mm)
    } else {
        t!("view-eye-near", mm = mm)
    }
}

/// `translate(x y) scale(k)`.
fn placed(x: f64, y: f64, scale: f64) -> String {
    format!("translate({x:.2} {y:.2}) scale({scale:.5})")
}

/// Role and labelled width of each layer that a reticle is drawn with.
fn layers_of(reticle: &Reticle) -> Vec<(Role, f64)> {
    let window = Cutout {
        width_px: 1.0,
        height_px: 1.0,
        field_px: 1.0,
    };
    reticle_layers(reticle, 1.0, (0.0, 0.0), &window)
        .iter()
        .map(|layer| (layer.role, layer.label_mrad))
        .collect()
}

const FAMILIES: [ReticleFamily; 11] = [
    ReticleFamily::FineCrosshair,
    ReticleFamily::ThickThin,
    ReticleFamily::ThreePost,
    ReticleFamily::HeavyNight,
    ReticleFamily::Post,
    ReticleFamily::CentreDot,
    ReticleFamily::CircleDot,
    ReticleFamily::MradMarks,
    ReticleFamily::MoaMarks,
    ReticleFamily::HoldMarks,
    ReticleFamily::MarkGrid,
];

/// What is chosen with buttons, as they stand.
const THROUGH: [Through; 3] = [Through::This, Through::Other, Through::BareEye];
const GLOWS: [Option<Glow>; 3] = [None, Some(Glow::Night), Some(Glow::Day)];

fn glow_name(glow: Option<Glow>) -> String {
    match glow {
        None => t!("view-lit-off"),
        Some(Glow::Night) => t!("view-lit-night"),
        Some(Glow::Day) => t!("view-lit-day"),
    }
}

/// The reticle's family, through what one looks, how the centre is lit: places in the lists.
type Chosen = (Option<usize>, usize, usize);

/// A row of buttons of which one is pressed.
fn buttons(label: String, rows: &[(String, bool)], press: &Rc<dyn Fn(usize)>) -> Html {
    html! {
        <div class="view__toggles" role="group" aria-label={label.clone()}>
            <span class="view__toggles-name" aria-hidden="true">{ label }</span>
            { for rows.iter().enumerate().map(|(n, (name, pressed))| {
                let press = press.clone();
                let onclick = Callback::from(move |_: MouseEvent| press(n));
                html! {
                    <button type="button" class="button" aria-pressed={pressed.to_string()} {onclick}>{ name.clone() }</button>
                }
            }) }
        </div>
    }
}

/// The view through the sight with its handles.
#[component]
pub fn ThroughSight(props: &ThroughSightProps) -> Html {
    let id = use_id("view");
    let root = use_node_ref();
    let width = use_width(root.clone(), 328.0);
    let (shape, rounds) = cutout(width);
    // Choices: the reticle's family, through what one looks, how the centre is lit.
    let chosen = use_state_eq::<Chosen>(|| (None, 0, 0));
    let (family, through, glow) = *chosen;
    let with_family = |sight: &Rc<Sight>| match family {
        Some(n) => Rc::new(sight.with_family(FAMILIES[n])),
        None => sight.clone(),
    };
    let sight = with_family(&props.sight);
    let other = props.other.as_ref().map(with_family);
    let slots: Rc<[Slot; 2]> = {
        let n = (props.quarry.figure.pieces.len(), props.holds.len());
        (*use_memo((n, rounds), |((pieces, holds), _)| {
            let slot = || Slot::new(*pieces, *holds);
            Rc::new([slot(), slot()])
        }))
        .clone()
    };
    let blur = use_memo((), |()| Pen::default());
    let said = use_memo((), |()| Pen::default());
    let eye_said = use_memo((), |()| Pen::default());
    let scale = use_memo((), |()| Pen::default());
    let wood = use_memo((), |()| AttrValue::from(wood_path()));
    let (near_m, first_m, far_m) = props.ranges_m;
    let stand = use_memo((), |()| {
        Cell::new(Stand {
            magnification: props.magnification,
            range_m: first_m,
            minute: props.minute,
            glow: None,
            through: Through::This,
            aside_mm: 0.0,
            behind_mm: 0.0,
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
    stand.set(Stand {
        glow: GLOWS[glow],
        through: THROUGH[through],
        ..stand.get()
    });
    let painter = Rc::new(Painter {
        sight: sight.clone(),
        other: other.clone(),
        quarry: props.quarry.clone(),
        surroundings: props.surroundings.clone(),
        eye: props.eye,
        evening: props.evening.clone(),
        holds: props.holds.clone(),
        units: props.units,
        cutout: shape,
        id: id.clone(),
        slots: slots.clone(),
        blur: blur.clone(),
        said: said.clone(),
        eye_said: eye_said.clone(),
        scale: scale.clone(),
        corners_px: std::array::from_fn(|_| Cell::new((0.0, 0.0))),
    });
    let rest = use_memo((), |()| Cell::new(None::<Timeout>));
    {
        // After every rendering: the renderer may have made elements anew, and words that were
        // still to follow would be those of before.
        let (painter, stand, rest) = (painter.clone(), stand.clone(), rest.clone());
        use_effect(move || {
            rest.set(None);
            for (slot, corner) in painter.slots.iter().zip(&painter.corners_px) {
                slot.forget();
                corner.set(slot.drawing.corner_px());
            }
            for pen in [
                &*painter.said,
                &*painter.eye_said,
                &*painter.blur,
                &*painter.scale,
            ] {
                pen.forget();
            }
            painter.paint(stand.get(), true);
        });
    }
    let moved = |change: fn(Stand, f64) -> Stand| {
        let (painter, stand, rest) = (painter.clone(), stand.clone(), rest.clone());
        Callback::from(move |to: f64| {
            let now = change(stand.get(), to);
            stand.set(now);
            painter.paint(now, false);
            let (painter, stand) = (painter.clone(), stand.clone());
            rest.set(Some(Timeout::new(REST_MS, move || {
                painter.paint(stand.get(), true);
            })));
        })
    };
    let on_power = moved(|stand, magnification| Stand {
        magnification,
        ..stand
    });
    let on_range = moved(|stand, range_m| Stand { range_m, ..stand });
    let on_minute = moved(|stand, minute| Stand { minute, ..stand });
    let on_aside = moved(|stand, aside_mm| Stand { aside_mm, ..stand });
    let on_along = moved(|stand, behind_mm| Stand { behind_mm, ..stand });
    let spoken_power = use_callback((), |to: f64, ()| said_power(to));
    let spoken_range = use_callback(props.units, |to: f64, units| range(*units, to));
    let spoken_aside = use_callback((), |to: f64, ()| said_aside(to));
    let spoken_along = use_callback((), |to: f64, ()| said_along(to));
    let press = |change: fn(Chosen, usize) -> Chosen| {
        let chosen = chosen.clone();
        let press: Rc<dyn Fn(usize)> = Rc::new(move |n| chosen.set(change(*chosen, n)));
        press
    };
    let on_through = press(|(family, _, glow), n| (family, n, glow));
    let on_glow = press(|(family, through, _), n| (family, through, n));
    let on_family = {
        let chosen = chosen.clone();
        Callback::from(move |event: Event| {
            let Some(select) = event.target_dyn_into::<web_sys::HtmlSelectElement>() else {
                return;
            };
            let n = usize::try_from(select.selected_index()).unwrap_or(0);
            chosen.set((n.checked_sub(1), chosen.1, chosen.2));
        })
    };
    let through_rows: Vec<(String, bool)> = THROUGH
        .iter()
        .enumerate()
        .filter(|(_, one)| **one != Through::Other || other.is_some())
        .map(|(n, one)| {
            let name = match one {
                Through::This => sight.name.clone(),
                Through::Other => other.as_ref().map(|o| o.name.clone()).unwrap_or_default(),
                Through::BareEye => t!("view-bare-eye"),
            };
            (name, n == through)
        })
        .collect();
    // Without a second sight the bare eye is the second button.
    let on_through = if other.is_some() {
        on_through
    } else {
        Rc::new(move |n: usize| on_through(2 * n)) as Rc<dyn Fn(usize)>
    };
    let glow_rows: Vec<(String, bool)> = GLOWS
        .iter()
        .enumerate()
        .map(|(n, one)| (glow_name(*one), n == glow))
        .collect();
    let (least, most) = other.iter().fold(
        (sight.magnification_low, sight.magnification_high),
        |(least, most), other| {
            (
                least.min(other.magnification_low),
                most.max(other.magnification_high),
            )
        },
    );
    let now = stand.get();
    let picture = |n: usize, plane: FocalPlane, name: String, rule: String| {
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
                        if sight.pick == Some(plane) {
                            <span class="view__pick">{ t!("view-pick") }</span>
                        }
                    </b>
                    <span class="view__rule">{ rule }</span>
                    <span class="view__covers" ref={slot.covers.node.clone()}></span>
                </figcaption>
                <svg class="view__picture" data-keep="" role="img" aria-labelledby={label} ref={slot.drawing.node.clone()}
                    width={size(w)} height={size(h)} viewBox={format!("0 0 {w} {h}")}>
                    <defs>
                        <radialGradient id={format!("{id}-shade-{n}")} gradientUnits="userSpaceOnUse" ref={slot.gradient.node.clone()}></radialGradient>
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
                        <g ref={slot.reticle.node.clone()}></g>
                        <rect class="view__shade" ref={slot.shade.node.clone()} width={size(w)} height={size(h)} />
                    </g>
                    { for props.holds.iter().zip(&slot.holds).map(|((range_m, _), pen)| html! {
                        <g ref={pen.node.clone()}>
                            <path class="view__holds" d="M0 0l6 -3.5v7Z" />
                            <text class="view__hold-name" x="10" y="4.5">{ range(props.units, *range_m) }</text>
                        </g>
                    }) }
                    <g ref={slot.bracket.node.clone()}></g>
                    <text class="view__bracket-text" ref={slot.bracket_text.node.clone()}></text>
                </svg>
            </figure>
        }
    };
    let light = painter.light(props.minute, sight.glare_index, 0.0);
    let optics = sight.optics(props.magnification);
    let seen = crate::eye::equivalent_luminance(
        light.ground_cd_m2(),
        &props.eye,
        &optics,
        props.surroundings.sp_ratio,
    );
    let sources = vec![
        AttrValue::from(t!(
            "view-source-scale",
            apparent = number(sight.apparent_field_deg, 0),
            reference = number(sight.reference_magnification, 1)
        )),
        AttrValue::from(t!(
            "view-source-light",
            ground = number(props.surroundings.ground_reflectance, 2),
            coat = number(props.quarry.dark_reflectance, 2),
            pupil = number(seen.pupil_mm, 1),
            beam = number(seen.beam_mm, 1),
            transmission = number(sight.transmission_night, 2),
            glare = number(100.0 * sight.glare_index, 1)
        )),
        AttrValue::from(t!("view-source-threshold")),
        AttrValue::from(t!("view-source-eye")),
        AttrValue::from(t!("view-source-lit")),
        AttrValue::from(t!(
            "picture-inputs",
            what = t!(
                "view-inputs",
                sight = sight.name.clone(),
                age = number(props.eye.age_years(), 0),
                quarry = props.quarry.name.to_string(),
                circle = cm(props.units, props.quarry.aiming_circle_cm),
                height = number(props.surroundings.eye_height_m, 1)
            )
        )),
    ];
    let own = word(
        "reticle",
        &report::Reticle::from(props.sight.reticle.family),
    );
    let select = format!("{id}-reticle");
    html! {
        <Frame title={t!("view-title")} scale="" leaves_out={t!("view-leaves-out")} {sources}
            file="through-the-sight">
            <div class={if rounds { "view view--rounds" } else { "view" }} ref={root}>
                <div class="view__pair">
                    { picture(0, FocalPlane::First, t!("view-first"), t!("view-first-rule")) }
                    { picture(1, FocalPlane::Second, t!("view-second"), t!("view-second-rule")) }
                </div>
                if most > least {
                    <Slider label={t!("view-power")} {least} {most} value={now.magnification} step=0.1
                        page=1.0 scale={Scale::Ratio} spoken={spoken_power} on_input={on_power} />
                }
                <DuskStrip evening={props.evening.clone()} rows={props.rows.clone()}
                    minute={Some(now.minute)} label={t!("view-dusk")} on_input={on_minute} />
                <Slider label={t!("view-range")} least={near_m} most={far_m} value={now.range_m} step=1.0
                    page=10.0 scale={Scale::Ratio} spoken={spoken_range} on_input={on_range} />
                { buttons(t!("view-through"), &through_rows, &on_through) }
                if sight.lit {
                    { buttons(t!("view-lit"), &glow_rows, &on_glow) }
                }
                <p class="view__choice">
                    <label for={select.clone()}>{ t!("view-reticle") }</label>
                    <select id={select} class="view__select" onchange={on_family}>
                        <option value="own" selected={family.is_none()}>{ t!("view-reticle-own", name = own) }</option>
                        { for FAMILIES.iter().enumerate().map(|(n, of)| html! {
                            <option value={n.to_string()} selected={family == Some(n)}>
                                { word("reticle", &report::Reticle::from(*of)) }
                            </option>
                        }) }
                    </select>
                </p>
                <details class="opens view__eye">
                    <summary>{ t!("view-eye") }</summary>
                    <Slider label={t!("view-eye-aside")} least={-8.0} most=8.0 value={now.aside_mm} step=0.1 page=1.0
                        spoken={spoken_aside} on_input={on_aside} />
                    <Slider label={t!("view-eye-along")} least={-60.0} most=60.0 value={now.behind_mm} step=1.0 page=5.0
                        spoken={spoken_along} on_input={on_along} />
                    <p ref={eye_said.node.clone()}></p>
                </details>
                <div class="view__said" ref={said.node.clone()}></div>
                <p class="picture__scale" ref={scale.node.clone()}></p>
            </div>
        </Frame>
    }
}
