//! The shooter's own occasions: what the answers make of quarry, range, light and hold.
//!
//! The answers are a joint distribution; it is sampled with an Owen-scrambled Sobol
//! sequence, so that the same answers always give the same occasions and a few hundred fill
//! the distribution evenly.
//!
//! # Source
//! The sequence: see `sequence.rs`. Shares and factors: common practice, no source,
//! unless said at the constant.

pub(crate) mod light;

use super::chance::normal_score;
use super::sequence::coordinate;
use super::world::World;
use crate::eye::{self, Eye};
use crate::need::answers::{Annoyance, Cover, Glasses, Manner};
use crate::need::quarry::{Coat, What};
use crate::need::shooter::{Need, Situation, Stop};
use crate::rifle::steadiness::Position;
use crate::sky::{air, ground};

use light::Season;

/// Number of occasions that the page ranks with.
pub const COUNT: usize = 512;

/// One occasion, with everything that the needs ask of it.
///
/// Lengths in mm, ranges in m, angles in mrad, light in cd/m².
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Occasion {
    /// Index of the situation it comes from.
    pub situation: usize,
    /// In the last light (or the night), rather than by day.
    pub late: bool,
    /// Range in m.
    pub range_m: f64,
    /// Luminance of the ground or of the wall behind the target.
    pub luminance_cd_m2: f64,
    /// Scotopic to photopic ratio of that light.
    pub sp_ratio: f64,
    /// Factor by which the air before it brightens that background.
    pub air_factor: f64,
    /// Luminance of the bright surround over that of the background.
    pub surround: f64,
    /// Contrast, without sign.
    pub contrast: f64,
    /// Luminance of the target over that of its background.
    pub target_over_background: f64,
    /// Side of the patch that must be told apart, mm.
    pub patch_mm: f64,
    /// Detail that must be told, mm; 0 for none.
    pub detail_mm: f64,
    /// Share in which the detail must be told, before the night fades it out.
    pub detail_weight: f64,
    /// Circle that has to be hit, diameter in mm.
    pub circle_mm: f64,
    /// Circle of which the mark may hide a part, mm: on a target with rings the black is
    /// quartered, so that a quarter of the figure counts.
    pub covered_of_mm: f64,
    /// Width of the field that is needed, m.
    pub field_m: f64,
    /// The target moves.
    pub moving: bool,
    /// Visible wobble radius, mrad.
    pub wobble_mrad: f64,
    /// How far the eye usually is off the axis when the rifle comes up, mm.
    pub eye_offset_mm: f64,
    /// Pupil in this light, mm.
    pub pupil_mm: f64,
    /// Age, years.
    pub age_years: f64,
    /// Wears glasses.
    pub glasses: bool,
    /// The range is known: a target at a set distance.
    pub range_known: bool,
}

/// A wobble, an offset of the head, and whether it is shot lying down.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Hold {
    pub(crate) wobble_mrad: f64,
    pub(crate) eye_offset_mm: f64,
}

/// Visible wobble of who shoots field targets sitting, rifle on the knee: zones of 25 to 40 mm
/// at 37 to 42 m that are hit in four of five shots leave σ about 0.25 mrad (inversion of a
/// rule text's zones, assumption).
const FIELD_TARGET_WOBBLE_MRAD: f64 = 0.5;

/// Targets that are shot standing by who trains for it.
const STANDING_DISCIPLINES: [&str; 4] = [
    "silhouette",
    "rimfire_silhouette",
    "biathlon_standing",
    "air_rifle_10_m",
];

/// Visible wobble of who trains to shoot standing: a biathlon target of 115 mm at 50 m (rule
/// text, from memory) that is hit in four of five shots leaves σ about 0.64 mrad; half of the
/// silhouettes hit leave about as much (inversion, assumption).
const DISCIPLINE_STANDING_WOBBLE_MRAD: f64 = 1.2;

/// Head offsets in mm: bench 0.7, pack 1.3, rail 1.5, sticks 1.7, single stick, kneeling
/// 2.0, free 2.5, driven 3.0 (assumption). Walking up is half single stick, half free.
pub(crate) fn hold(what: What, manner: Manner, u: f64) -> Hold {
    if is_field_target(what) && manner == Manner::Kneeling {
        return Hold {
            wobble_mrad: FIELD_TARGET_WOBBLE_MRAD,
            eye_offset_mm: 2.0,
        };
    }
    let standing = matches!(manner, Manner::StandingFree);
    if standing
        && STANDING_DISCIPLINES
            .iter()
            .any(|key| what.key().starts_with(key))
    {
        return Hold {
            wobble_mrad: DISCIPLINE_STANDING_WOBBLE_MRAD,
            eye_offset_mm: 2.0,
        };
    }
    let (position, eye_offset_mm) = match manner {
        Manner::Bench => (Position::Bench, 0.7),
        Manner::PronePack => (Position::PronePack, 1.3),
        Manner::SeatRail => (Position::SeatRail, 1.5),
        Manner::TwoPointSticks => (Position::TwoPointSticks, 1.7),
        Manner::SingleStick => (Position::SingleStick, 2.0),
        Manner::Kneeling => (Position::Kneeling, 2.0),
        Manner::WalkingUp if u < 0.5 => (Position::SingleStick, 2.0),
        Manner::WalkingUp | Manner::StandingFree => (Position::StandingFree, 2.5),
        Manner::Driven => (Position::Swinging, 3.0),
    };
    Hold {
        wobble_mrad: position.visible_wobble_mrad(),
        eye_offset_mm,
    }
}

/// The least contrast of an animal: its back faces the whole sky and its flank half of it, so
/// that one of the two differs from the ground by at least a quarter (assumption).
pub(crate) const LEAST_CONTRAST: f64 = 0.25;
/// Moonlit nights that are tried before a bad one is taken.
const NIGHTS_TRIED: u32 = 8;
/// Black on white paper, or fresh paint on steel (assumption).
pub(crate) const TARGET_CONTRAST: f64 = 0.8;

/// Samples `count` occasions in a world.
///
/// Late occasions come first, so that both halves are contiguous.
#[must_use]
pub fn sample(need: &Need, world: &World, count: usize) -> Vec<Occasion> {
    let season = Season::of(need);
    let mut list: Vec<Occasion> = (0..count as u32)
        .map(|index| one(need, &season, world, index))
        .collect();
    // Stable: within a half the order of the sequence stays.
    crate::plain::sort_by_key(&mut list, |occasion| !occasion.late);
    list
}

/// What the ranges of a situation are in truth, as a share of those stated: as they are where
/// nobody stated them or where the lane is measured.
#[must_use]
pub fn range_share(need: &Need, situation: &Situation, world: &World) -> f64 {
    if situation.assumed.range || is_measured(situation) {
        return 1.0;
    }
    let taken = need.distance.stated_range_share;
    taken.value * libm::exp(taken.spread * world.range_score)
}

/// A target at a set distance, known to who shoots at it: field targets stand anywhere.
fn is_measured(situation: &Situation) -> bool {
    situation.what.is_target() && !is_field_target(situation.what)
}

fn is_field_target(what: What) -> bool {
    what.key().starts_with("field_target")
}

/// A coordinate of the sequence, in (0, 1).
fn draw(index: u32, dimension: u32) -> f64 {
    let u = f64::from(coordinate(index, dimension, 0));
    u.clamp(1e-6, 1.0 - 1e-6)
}

/// Picks by cumulated share; also says where within the picked share `u` lies, 0 to 1.
fn pick(shares: impl Iterator<Item = f64>, u: f64) -> (usize, f64) {
    let mut below = 0.0;
    let mut last = (0, 0.5);
    for (index, share) in shares.enumerate() {
        if share <= 0.0 {
            continue;
        }
        if u < below + share {
            return (index, ((u - below) / share).clamp(0.0, 1.0));
        }
        below += share;
        last = (index, 1.0 - 1e-6);
    }
    last
}

fn one(need: &Need, season: &Season, world: &World, index: u32) -> Occasion {
    let (which, _) = pick(need.situations.iter().map(|s| s.share), draw(index, 0));
    let situation = &need.situations[which];
    let late_share = late_share_of(need, situation);
    let late = draw(index, 1) < late_share;
    let range_m =
        situation.range.range_m(normal_score(draw(index, 2))) * range_share(need, situation, world);
    let moving = draw(index, 3) < situation.moving_share;
    let hold = hold(situation.what, situation.manner, draw(index, 4));
    let mut scene = light::scene(
        need,
        season,
        situation,
        late,
        [
            draw(index, 5),
            draw(index, 6),
            draw(index, 7),
            draw(index, 8),
        ],
    );
    let mut contrast_signed = contrast(situation.what, &scene, draw(index, 9));
    if late && situation.stop == Stop::Moon {
        // Nobody sits out a night in which nothing can be seen: another night is drawn.
        for again in 0..NIGHTS_TRIED {
            if scene.background_cd_m2 >= light::END_OF_SEEING_CD_M2
                && contrast_signed.abs() >= LEAST_CONTRAST
            {
                break;
            }
            let from = 16 + 4 * again;
            let u = [from, from + 1, from + 2, from + 3].map(|d| draw(index, d));
            scene = light::scene(need, season, situation, late, u);
            contrast_signed = contrast(situation.what, &scene, draw(index, 9));
        }
    }
    let (left, factor) = through_air(need, scene.ground_reflectance, range_m);
    let luminance_cd_m2 = (scene.background_cd_m2
        * libm::pow(
            10.0,
            world.ground_dex + if late { world.cloud_dex } else { 0.0 },
        ))
    .clamp(1e-6, 5e4);
    let age = need.eye.age_years.value;
    let age_years = (age.value + age.spread * normal_score(draw(index, 10)))
        .clamp(eye::person::YOUNGEST_YEARS, eye::person::OLDEST_YEARS);
    let pupil_mm = pupil_mm(need, age_years, luminance_cd_m2, world.pupil_mm);
    let (detail_mm, detail_weight) = detail(situation, draw(index, 11));
    let (glasses, _) = pick(
        need.eye.glasses.value.iter().map(|part| part.share),
        draw(index, 12),
    );
    let glasses = need
        .eye
        .glasses
        .value
        .get(glasses)
        .is_some_and(|part| part.of != Glasses::NoGlasses);
    let circle_mm = situation.what.aiming_circle_mm();
    let body_m = 1e-3 * situation.what.length_mm();
    Occasion {
        situation: which,
        late,
        range_m,
        luminance_cd_m2,
        sp_ratio: scene.sp_ratio,
        air_factor: factor,
        surround: scene.surround,
        contrast: left
            * (contrast_signed.abs().max(LEAST_CONTRAST) * libm::pow(10.0, world.contrast_dex))
                .min(if contrast_signed < 0.0 { 1.0 } else { 20.0 }),
        target_over_background: (1.0 + left * contrast_signed).max(0.05),
        patch_mm: patch_mm(situation.what),
        detail_mm,
        detail_weight,
        circle_mm,
        covered_of_mm: covered_of_mm(situation.what),
        field_m: if situation.what.is_target() {
            body_m
        } else if moving {
            3.0 * body_m
        } else {
            2.2 * body_m
        },
        moving,
        wobble_mrad: hold.wobble_mrad * world.wobble,
        eye_offset_mm: eye_offset_mm(need, hold),
        pupil_mm,
        age_years,
        glasses,
        range_known: is_measured(situation),
    }
}

/// What the air between leaves of a contrast, and by which factor it lifts the background.
pub(crate) fn through_air(need: &Need, ground_reflectance: f64, range_m: f64) -> (f64, f64) {
    let extinction = air::extinction_per_m(need.light.visibility_m.value);
    let horizon = air::horizon_to_ground(ground_reflectance.clamp(0.02, 1.0));
    (
        air::contrast_left(range_m, extinction, horizon),
        air::background_through_air_cd_m2(1.0, range_m, extinction, horizon),
    )
}

/// The pupil in mm; a measured dark pupil shifts the whole curve.
pub(crate) fn pupil_mm(need: &Need, age_years: f64, luminance_cd_m2: f64, offset_mm: f64) -> f64 {
    person(need, age_years, offset_mm).map_or(5.0, |eye| eye.pupil_mm(luminance_cd_m2))
}

/// The eye of the shooter at an age, with an offset of the pupil.
pub(crate) fn person(need: &Need, age_years: f64, offset_mm: f64) -> Option<Eye> {
    let age = age_years.clamp(eye::person::YOUNGEST_YEARS, eye::person::OLDEST_YEARS);
    let eye = match need.eye.dark_pupil_mm {
        Some(dark_mm) => Eye::with_dark_pupil(
            age,
            dark_mm.clamp(eye::pupil::LEAST_MM, eye::pupil::MOST_MM),
        ),
        None => Eye::of_age(age),
    }
    .ok()?;
    Some(eye.with_offset(eye.pupil_offset_mm() + offset_mm))
}

/// Side of the patch: an eighth of the shoulder height, a third of a target's scoring
/// circle but never finer than a sixteenth of the whole figure.
pub(crate) fn patch_mm(what: What) -> f64 {
    match what {
        What::Animal(_) => what.height_mm() / 8.0,
        What::Target(_) => (what.aiming_circle_mm() / 3.0).max(what.length_mm() / 16.0),
    }
}

fn covered_of_mm(what: What) -> f64 {
    let circle = what.aiming_circle_mm();
    let rings = what.is_target()
        && !["field_target", "steel", "silhouette", "rimfire_silhouette"]
            .iter()
            .any(|kind| what.key().starts_with(kind));
    if rings {
        circle.max(0.25 * what.length_mm())
    } else {
        circle
    }
}

fn detail(situation: &Situation, u: f64) -> (f64, f64) {
    let sum: f64 = situation.details_mm.iter().map(|part| part.share).sum();
    if sum <= 0.0 {
        return (0.0, 0.0);
    }
    let (which, _) = pick(situation.details_mm.iter().map(|part| part.share / sum), u);
    situation
        .details_mm
        .get(which)
        .map_or((0.0, 0.0), |part| (part.of, sum.min(1.0)))
}

/// Share of the occasions in the last forty minutes before the person stops: from a seat 0.4
/// at sunset to 0.6 an hour later, on foot 0.2 to 0.5; none by day, all by the Moon.
pub(crate) fn late_share(situation: &Situation) -> f64 {
    let seated = matches!(situation.manner, Manner::SeatRail);
    let (at_sunset, later) = if seated { (0.4, 0.6) } else { (0.2, 0.5) };
    match situation.stop {
        Stop::Daylight => 0.0,
        Stop::LitRange | Stop::Moon => 1.0,
        Stop::EndOfSeeing => later,
        Stop::MinutesAfterSunset(minutes) => {
            let t = minutes / 60.0;
            if t < -0.5 {
                0.0
            } else {
                (at_sunset + (later - at_sunset) * t).clamp(0.5 * at_sunset, later)
            }
        }
    }
}

/// Whose present sight is too dark has so many times as many of the occasions in the last
/// light: it is there that the sight is missed (assumption).
const ANNOYED_BY_DARK: f64 = 1.4;

/// Share of the occasions of a situation in the last light for this person: more of them where
/// the sight owned now is too dark, but never all, and none where there was none.
pub(crate) fn late_share_of(need: &Need, situation: &Situation) -> f64 {
    let usual = late_share(situation);
    if need.annoys.contains(&Annoyance::TooDark) {
        (ANNOYED_BY_DARK * usual).min(0.9).max(usual)
    } else {
        usual
    }
}

/// Who does not find the picture of the present sight brings the eye up so many times as far
/// off the axis (assumption).
const ANNOYED_BY_PICTURE: f64 = 1.4;

/// How far off the axis the eye of this person comes to rest in a manner, mm.
pub(crate) fn eye_offset_mm(need: &Need, hold: Hold) -> f64 {
    if need.annoys.contains(&Annoyance::HardToFindPicture) {
        ANNOYED_BY_PICTURE * hold.eye_offset_mm
    } else {
        hold.eye_offset_mm
    }
}

/// Signed contrast of the coat (or the paint) against what is behind it.
pub(crate) fn contrast(what: What, scene: &light::Scene, u: f64) -> f64 {
    match what {
        What::Target(_) => -TARGET_CONTRAST,
        What::Animal(animal) => {
            let coat = match animal.coat {
                Coat::RedBrown => ground::Coat::RedBrown,
                Coat::RedBrownSummerGreyBrownWinter if scene.summer => ground::Coat::RedBrown,
                Coat::RedBrownSummerGreyBrownWinter | Coat::GreyBrown | Coat::Grey => {
                    ground::Coat::GreyBrown
                }
                Coat::DarkBrown => ground::Coat::DarkBrown,
                Coat::VeryDark | Coat::Black => ground::Coat::Black,
                Coat::Pale => ground::Coat::Fawn,
                Coat::PaleOrGreyBrown if u < 0.5 => ground::Coat::GreyBrown,
                Coat::PaleOrGreyBrown | Coat::PaleOrDarkBrown if u < 0.5 => ground::Coat::DarkBrown,
                Coat::PaleOrGreyBrown | Coat::PaleOrDarkBrown => ground::Coat::Fawn,
            };
            ground::contrast(
                coat.usual_reflectance(false),
                scene.background_reflectance,
                scene.setting,
            )
        }
    }
}

/// The cover of the domain room behind an answer.
pub(crate) fn canopy(cover: Cover) -> ground::Canopy {
    match cover {
        Cover::Open => ground::Canopy::Open,
        Cover::Edge => ground::Canopy::Edge,
        Cover::Ride => ground::Canopy::Ride,
        Cover::BareWood => ground::Canopy::BareWood,
        Cover::InLeaf => ground::Canopy::InLeaf,
        Cover::DenseConifer => ground::Canopy::DenseConifer,
    }
}
