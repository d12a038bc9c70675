//! All questions, in order, as data. Their words are in `locales/<language>/questions.ftl`:
//! `question-<key>` with `.why`, `.unsure` and sometimes `.how`; `part-<key>`;
//! `option-<part>-<option>`.

use super::answers::{Answers, Manner};
use super::input::Quantity;
use super::quarry::{Marks, What};
use crate::plain::Gathered;

/// One question: one page at home, one row or two at the counter.
#[derive(Debug)]
pub struct Question {
    /// Stable key; also what `not_sure` lists.
    pub key: &'static str,
    /// The first eight, or one that sharpens the advice afterwards.
    pub stage: Stage,
    /// Shown at the counter.
    pub counter: bool,
    /// What is asked on the page, in order.
    pub parts: &'static [Part],
    /// What is asked behind "more", for those who know.
    pub more: &'static [Part],
    /// How to find out, for those who do not know, exists as `question-<key>.how`.
    pub has_how: bool,
    asked_if: fn(&Answers) -> bool,
}

impl Question {
    /// The question with this key.
    #[must_use]
    pub fn from_key(key: &str) -> Option<&'static Self> {
        QUESTIONS.iter().find(|question| question.key == key)
    }

    /// The question a part belongs to.
    #[must_use]
    pub fn of_part(part: Part) -> Option<&'static Self> {
        QUESTIONS
            .iter()
            .find(|question| question.all_parts().any(|each| each == part))
    }

    /// Whether it is asked, given what is known so far.
    #[must_use]
    pub fn is_asked(&self, answers: &Answers) -> bool {
        (self.asked_if)(answers)
    }

    /// Its parts, also those behind "more".
    pub fn all_parts(&self) -> impl Iterator<Item = Part> {
        self.parts.iter().chain(self.more).copied()
    }
}

/// When a question comes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Stage {
    /// One of the first eight, before the advice.
    First,
    /// Afterwards, to sharpen it.
    Sharpen,
}

/// One control of a question.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[allow(missing_docs, reason = "named as the fields of the answers they fill")]
pub enum Part {
    Uses,
    Manners,
    Until,
    MinutesAfterSunset,
    Morning,
    Covers,
    Snow,
    TownGlow,
    Haze,
    Ranges,
    Age,
    DarkPupil,
    Glasses,
    Astigmatism,
    Lens,
    Cartridge,
    BulletMass,
    Velocity,
    CoefficientG1,
    CoefficientG7,
    PowderMass,
    RifleKind,
    RifleMass,
    Muzzle,
    BarrelLength,
    Rings,
    RingsHeight,
    Base,
    Incline,
    RailUnderBell,
    Band,
    Attitude,
    AllIn,
    Used,
    SightLine,
    Annoys,
    Zoom,
    Detail,
    DistanceHabit,
    Rangefinder,
    AngleUnit,
    PowerMost,
    LitForbidden,
    RefocusForbidden,
    FocusFindsRange,
    SightMassMost,
    LitMark,
    LeftHanded,
    BothEyesOpen,
    Comb,
    Carry,
    BarrelRadius,
    IronSights,
    Latitude,
    Longitude,
    HeightAboveSea,
    FirstMonth,
    LastMonth,
    Coldest,
    OthersUseIt,
    ComesOff,
}

/// How a part is answered.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Control {
    /// One of these options.
    One(&'static [&'static str]),
    /// Some of these options; with `shares`, each with how often.
    Many {
        /// The options' keys.
        options: &'static [&'static str],
        /// How often is asked for each.
        shares: bool,
    },
    /// Animals and targets, each with how often.
    Quarry,
    /// A cartridge from the list.
    Cartridge,
    /// A number, typed or taken from these metric values in one tap.
    Number(Quantity, &'static [f64]),
    /// Decades of age in one tap (their middles), or the exact age typed.
    Decade(&'static [f64]),
    /// Nearest, usual and farthest for each manner.
    Ranges,
    /// A tick; not ticked means no.
    Tick,
    /// Yes or no.
    YesNo,
    /// A month, 1 to 12.
    Month,
    /// A few words.
    Text {
        /// Length at most, in characters.
        most: usize,
    },
}

use Quantity as Q;

impl Part {
    /// How it is answered.
    #[must_use]
    #[rustfmt::skip]
    pub fn control(self) -> Control {
        match self {
            Part::Uses => Control::Quarry,
            Part::Manners => Control::Many {
                options: &["seat_rail", "two_point_sticks", "single_stick", "driven", "prone_pack",
                    "bench", "walking_up", "kneeling", "standing_free"],
                shares: true,
            },
            Part::Until => Control::One(&["daylight", "sunset", "half_hour_after_sunset",
                "hour_after_sunset", "end_of_seeing", "moon", "lit_range"]),
            Part::MinutesAfterSunset => Control::Number(Q::Minutes, &[]),
            Part::Covers => Control::Many {
                options: &["open", "edge", "ride", "bare_wood", "in_leaf", "dense_conifer"],
                shares: true,
            },
            Part::Snow => Control::One(&["never", "sometimes", "often"]),
            Part::TownGlow => Control::One(&["dark", "village", "town", "city"]),
            Part::Haze => Control::One(&["clear", "hazy", "misty"]),
            Part::Ranges => Control::Ranges,
            Part::Age => Control::Decade(&[15.0, 25.0, 35.0, 45.0, 55.0, 65.0, 75.0]),
            Part::DarkPupil => Control::Number(Q::Pupil, &[]),
            Part::Glasses => Control::One(&["no_glasses", "distance", "varifocal", "thick_frame"]),
            Part::Morning | Part::Astigmatism | Part::RailUnderBell | Part::Used | Part::LitForbidden
            | Part::RefocusForbidden | Part::FocusFindsRange | Part::LeftHanded
            | Part::IronSights => Control::Tick,
            Part::Lens => Control::One(&["natural", "cataract", "replaced"]),
            Part::Cartridge => Control::Cartridge,
            Part::BulletMass => Control::Number(Q::BulletMass, &[]),
            Part::Velocity => Control::Number(Q::Velocity, &[]),
            Part::CoefficientG1 | Part::CoefficientG7 => Control::Number(Q::Coefficient, &[]),
            Part::PowderMass => Control::Number(Q::PowderMass, &[]),
            Part::RifleKind => Control::One(&["bolt", "single_shot", "double", "straight_stock",
                "lever", "slug_gun", "spring_air", "precharged_air", "muzzle_loader", "forward_rail"]),
            Part::RifleMass => Control::Number(Q::RifleMass, &[2.5, 2.9, 3.3, 3.8, 4.5]),
            Part::Muzzle => Control::One(&["bare", "moderator", "brake"]),
            Part::BarrelLength => Control::Number(Q::BarrelLength, &[47.0, 51.0, 56.0, 61.0, 65.0]),
            Part::Rings => Control::One(&["none", "25.4", "26", "30", "34", "35", "36", "40"]),
            Part::RingsHeight => Control::Number(Q::RingsHeight, &[]),
            Part::Base => Control::One(&["slotted_rail", "narrow_slots", "small_dovetail",
                "wide_dovetail", "two_piece", "bare"]),
            Part::Incline => Control::Number(Q::Incline, &[0.0, 5.8, 8.7]),
            Part::Band => Control::One(&["A", "B", "C", "D", "E"]),
            Part::Attitude => Control::One(&["little_as_sensible", "what_it_is_worth", "no_limit"]),
            Part::AllIn => Control::Number(Q::Money, &[]),
            Part::SightLine => Control::Text { most: 80 },
            Part::Annoys => Control::Many {
                options: &["too_dark", "too_narrow", "too_heavy", "hard_to_find_picture",
                    "not_far_enough"],
                shares: false,
            },
            Part::Zoom => Control::One(&["never", "before_sitting", "each_shot"]),
            Part::Detail => Control::One(&["body_shape", "young", "antler"]),
            Part::DistanceHabit => Control::One(&["dead_on", "marks", "dial", "dial_and_marks"]),
            Part::Rangefinder | Part::BothEyesOpen | Part::OthersUseIt | Part::ComesOff => Control::YesNo,
            Part::AngleUnit => Control::One(&["mrad", "moa", "neither"]),
            Part::PowerMost => Control::Number(Q::Magnification, &[]),
            Part::SightMassMost => Control::Number(Q::SightMass, &[]),
            Part::LitMark => Control::One(&["wanted", "indifferent", "not_wanted", "not_allowed"]),
            Part::Comb => Control::One(&["low", "right", "adjustable"]),
            Part::Carry => Control::One(&["short", "few_km", "all_day_hill"]),
            Part::BarrelRadius => Control::Number(Q::BarrelRadius, &[7.5, 9.5, 11.5]),
            Part::Latitude => Control::Number(Q::Latitude, &[]),
            Part::Longitude => Control::Number(Q::Longitude, &[]),
            Part::HeightAboveSea => Control::Number(Q::HeightAboveSea, &[0.0, 300.0, 1000.0, 2000.0]),
            Part::FirstMonth | Part::LastMonth => Control::Month,
            Part::Coldest => Control::Number(Q::Temperature, &[10.0, 0.0, -10.0, -20.0]),
        }
    }

    /// Its stable key.
    #[must_use]
    #[rustfmt::skip]
    pub fn key(self) -> &'static str {
        match self {
            Part::Uses => "uses", Part::Manners => "manners", Part::Until => "until",
            Part::MinutesAfterSunset => "minutes_after_sunset", Part::Morning => "morning", Part::Covers => "covers",
            Part::Snow => "snow", Part::TownGlow => "town_glow", Part::Haze => "haze", Part::Ranges => "ranges",
            Part::Age => "age", Part::DarkPupil => "dark_pupil", Part::Glasses => "glasses",
            Part::Astigmatism => "astigmatism", Part::Lens => "lens",
            Part::Cartridge => "cartridge", Part::BulletMass => "bullet_mass",
            Part::Velocity => "velocity", Part::CoefficientG1 => "bc_g1",
            Part::CoefficientG7 => "bc_g7", Part::PowderMass => "powder_mass",
            Part::RifleKind => "rifle_kind", Part::RifleMass => "rifle_mass",
            Part::Muzzle => "muzzle", Part::BarrelLength => "barrel_length",
            Part::Rings => "rings", Part::RingsHeight => "rings_height", Part::Base => "base",
            Part::Incline => "incline", Part::RailUnderBell => "rail_under_bell",
            Part::Band => "band", Part::Attitude => "attitude", Part::AllIn => "all_in",
            Part::Used => "used", Part::SightLine => "sight_line", Part::Annoys => "annoys",
            Part::Zoom => "zoom", Part::Detail => "detail",
            Part::DistanceHabit => "distance_habit", Part::Rangefinder => "rangefinder",
            Part::AngleUnit => "angle_unit", Part::PowerMost => "power_most",
            Part::LitForbidden => "lit_forbidden", Part::RefocusForbidden => "refocus_forbidden",
            Part::FocusFindsRange => "focus_finds_range", Part::SightMassMost => "sight_mass_most",
            Part::LitMark => "lit_mark", Part::LeftHanded => "left_handed",
            Part::BothEyesOpen => "both_eyes_open", Part::Comb => "comb", Part::Carry => "carry",
            Part::BarrelRadius => "barrel_radius", Part::IronSights => "iron_sights",
            Part::Latitude => "latitude", Part::Longitude => "longitude",
            Part::HeightAboveSea => "height_above_sea", Part::FirstMonth => "first_month",
            Part::LastMonth => "last_month", Part::Coldest => "coldest",
            Part::OthersUseIt => "others_use_it", Part::ComesOff => "comes_off",
        }
    }
}

fn always(_: &Answers) -> bool {
    true
}

fn whats(answers: &Answers) -> impl Iterator<Item = What> {
    answers
        .uses
        .iter()
        .filter_map(|each| What::from_key(&each.what))
}

/// Something is shot at whose antlers or age may have to be told; also when nothing is known.
fn marks_may_matter(answers: &Answers) -> bool {
    answers.uses.is_empty()
        || whats(answers).any(|what| match what {
            What::Animal(row) => row.marks != Marks::Shape,
            What::Target(_) => false,
        })
}

fn shoots_targets(answers: &Answers) -> bool {
    whats(answers).any(What::is_target)
}

fn shoots_animals(answers: &Answers) -> bool {
    answers.uses.is_empty() || whats(answers).any(|what| !what.is_target())
}

/// Something moves: both eyes open may help.
fn may_move(answers: &Answers) -> bool {
    let manner = |manner| {
        matches!(
            manner,
            Manner::Driven | Manner::WalkingUp | Manner::StandingFree
        )
    };
    answers.manners.iter().any(|each| manner(each.manner))
        || answers
            .uses
            .iter()
            .filter_map(|each| each.manner)
            .any(manner)
        || whats(answers).any(|what| what.is_target() && what.run_m_s() > 0.0)
}

macro_rules! question {
    ($key:literal, $stage:ident, $counter:literal, [$($part:ident),*], [$($more:ident),*], $how:literal, $if:expr) => {
        Question {
            key: $key,
            stage: Stage::$stage,
            counter: $counter,
            parts: &[$(Part::$part),*],
            more: &[$(Part::$more),*],
            has_how: $how,
            asked_if: $if,
        }
    };
}

/// All questions: the first eight, then those that sharpen the advice, in the order in which
/// the answer changes the line most, as far as sense allows: `docs/question-order.md` measures
/// it, `tests/question_order.rs` holds it.
#[rustfmt::skip]
pub static QUESTIONS: [Question; 19] = [
    question!("quarry", First, true, [Uses], [], false, always),
    question!("manner", First, true, [Manners], [], false, always),
    question!("light", First, true, [Until, Morning, Covers], [MinutesAfterSunset, Snow, TownGlow, Haze], false, always),
    question!("ranges", First, true, [Ranges], [], true, always),
    question!("money", First, true, [Band, Attitude], [Used, AllIn], false, always),
    question!("rifle", First, true, [Cartridge, RifleMass], [RifleKind, Muzzle, BarrelLength, BulletMass,
        Velocity, CoefficientG1, CoefficientG7, PowderMass], true, always),
    question!("eye", First, true, [Age, Glasses], [DarkPupil, Astigmatism, Lens], true, always),
    question!("mount", First, true, [Rings, Base], [RingsHeight, Incline], true, always),
    question!("distance", Sharpen, false, [DistanceHabit, Rangefinder, AngleUnit], [], false, always),
    question!("rulebook", Sharpen, false, [PowerMost, LitForbidden, RefocusForbidden, FocusFindsRange,
        SightMassMost], [], false, shoots_targets),
    question!("lit_mark", Sharpen, false, [LitMark], [], false, always),
    question!("detail", Sharpen, false, [Detail], [], false, marks_may_matter),
    question!("carry", Sharpen, false, [Carry], [], false, shoots_animals),
    question!("sight_now", Sharpen, true, [Annoys, SightLine], [], false, always),
    question!("zoom", Sharpen, true, [Zoom], [], false, always),
    question!("barrel", Sharpen, false, [BarrelRadius, RailUnderBell, IronSights], [], true, always),
    question!("place", Sharpen, false, [FirstMonth, LastMonth, Latitude, Longitude], [HeightAboveSea, Coldest], false, always),
    question!("cheek", Sharpen, false, [Comb, LeftHanded], [], true, always),
    question!("habits", Sharpen, false, [ComesOff, OthersUseIt, BothEyesOpen], [], false, always),
];

/// The questions that two sets of answers reply to differently, in the order asked.
#[must_use]
pub fn answered_otherwise(before: &Answers, now: &Answers) -> Vec<&'static Question> {
    QUESTIONS
        .iter()
        .filter(|question| {
            let unsure = |a: &Answers| a.not_sure.iter().any(|key| key == question.key);
            unsure(before) != unsure(now)
                || question
                    .all_parts()
                    .any(|part| super::value(before, part) != super::value(now, part))
        })
        .gathered()
}

/// Whether a part is asked, given what is known so far.
#[must_use]
pub fn is_part_asked(part: Part, answers: &Answers) -> bool {
    match part {
        Part::RingsHeight => answers
            .mount
            .as_ref()
            .is_some_and(|mount| mount.rings_kept_mm.is_some()),
        Part::BothEyesOpen => may_move(answers),
        _ => true,
    }
}

/// In which of the decades with these middles an age lies; the last one is open.
///
/// # Example
/// ```
/// use scopewright::need::questions::{Control, Part, decade};
/// let Control::Decade(middles) = Part::Age.control() else { panic!() };
/// assert_eq!([8.0, 19.9, 20.0, 46.0, 70.0, 95.0].map(|age| decade(age, middles)), [0, 0, 1, 3, 6, 6]);
/// ```
#[must_use]
pub fn decade(age_years: f64, middles: &[f64]) -> usize {
    let after = middles.iter().filter(|&&middle| age_years >= middle + 5.0);
    after.count().min(middles.len().saturating_sub(1))
}
