//! What the shooter said, as it is saved, shared and read: answers schema version 1.
//!
//! This is a wire type. Every field but `version` may be missing: what is missing was not
//! answered (yet), and the advice then uses the same spread-out assumption as for a
//! question listed in `not_sure`. The core computes with [`crate::need`]'s resolved type.

use serde::{Deserialize, Serialize};

/// The version this code writes and reads.
pub const VERSION: u32 = 1;

/// All answers of one shooter.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Answers {
    /// Schema version, 1.
    pub version: u32,
    /// Units the person reads and types; values here are always metric.
    pub units: Units,
    /// Keys of the questions answered with "not sure".
    pub not_sure: Vec<String>,
    /// What is shot at, with shares; manner and ranges may be given for each.
    pub uses: Vec<Use>,
    /// Manners of shooting with shares, for uses that name none.
    pub manners: Vec<MannerShare>,
    /// Ranges for uses that name none.
    pub ranges: Option<Ranges>,
    /// Until when, and what is around then.
    pub light: Option<Light>,
    /// The eye.
    pub eye: Option<Eye>,
    /// The cartridge, or the figures of a load.
    pub load: Option<Load>,
    /// The rifle.
    pub rifle: Option<Rifle>,
    /// What is there to hold a sight.
    pub mount: Option<Mount>,
    /// What it may cost.
    pub money: Option<Money>,
    /// How the zoom is used.
    pub zoom: Option<ZoomHabit>,
    /// What must be told before a shot.
    pub detail: Option<Detail>,
    /// How far it is carried.
    pub carry: Option<Carry>,
    /// How distance is met.
    pub distance: Option<Distance>,
    /// Whether a lit mark is lawful and wanted.
    pub lit_mark: Option<LitMark>,
    /// Where and when.
    pub place: Option<Place>,
    /// Limits of a rulebook.
    pub rulebook: Option<Rulebook>,
    /// The sight owned now, as typed, and what annoys about it.
    pub sight_now: Option<SightNow>,
    /// How the person weighs mass, height and money against occasions.
    pub weights: Option<Weights>,
    /// Habits that change what to ask of a sight and its mount.
    pub habits: Option<Habits>,
}

/// Habits that change what to ask of a sight and its mount.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Habits {
    /// Both eyes open on moving game.
    pub both_eyes_open: Option<bool>,
    /// The sight must come off and go back on.
    pub comes_off: Option<bool>,
    /// Somebody else uses it too.
    pub others_use_it: Option<bool>,
}

/// The units a person reads and types.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Units {
    /// Metres, grams, kilograms.
    #[default]
    Metric,
    /// Yards, grains, pounds.
    Imperial,
}

/// One thing that is shot at.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Use {
    /// Key of a quarry or target, as in `roe_deer` or `paper_50_m`.
    pub what: String,
    /// How often, relative to the others; 1 if left out is written as 1.
    pub share: f64,
    /// Manner for this use.
    pub manner: Option<Manner>,
    /// Ranges for this use.
    pub ranges: Option<Ranges>,
}

/// A manner of shooting and how often.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct MannerShare {
    /// The manner.
    pub manner: Manner,
    /// How often, relative to the others.
    pub share: f64,
    /// Ranges in this manner, for uses that name none; decide over `Answers::ranges`.
    #[serde(default)]
    pub ranges: Option<Ranges>,
}

/// How the shot is taken: how steady, how long on foot, still or moving.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Manner {
    /// Bench, or prone with bipod and rear bag.
    Bench,
    /// Prone over a pack or bipod, on the hill.
    PronePack,
    /// From a seat with a rail.
    SeatRail,
    /// On foot with two-point sticks.
    TwoPointSticks,
    /// On foot with a single stick or a tree.
    SingleStick,
    /// Kneeling or sitting free.
    Kneeling,
    /// Walking up, half single stick and half standing.
    WalkingUp,
    /// Standing free.
    StandingFree,
    /// Driven, swinging with the game.
    Driven,
}

/// Ranges in metres.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Ranges {
    /// Nearest.
    pub nearest_m: f64,
    /// Usual.
    pub usual_m: f64,
    /// Farthest really fired at.
    pub farthest_m: f64,
}

/// The light in which shots are taken.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Light {
    /// When the person stops; none: not sure.
    pub until: Option<StopTime>,
    /// Minutes after sunset, if the strip was dragged; decides over `until`.
    pub minutes_after_sunset: Option<f64>,
    /// What is around, with shares.
    pub cover: Vec<CoverShare>,
    /// Share of occasions on snow, 0 to 1.
    pub snow: f64,
    /// Zenith brightness of the town's glow in mag/arcsec², if it matters.
    pub town_glow_mag: Option<f64>,
    /// How far one sees by day, in km: the distance at which 2 % of a contrast is left.
    pub visibility_km: Option<f64>,
    /// Out in the morning too: the advice then shows the dawn beside the dusk.
    pub morning: bool,
}

/// When a person stops.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum StopTime {
    /// Full daylight only.
    Daylight,
    /// At sunset.
    Sunset,
    /// Half an hour after sunset.
    HalfHourAfterSunset,
    /// An hour after sunset.
    HourAfterSunset,
    /// When nothing more is seen.
    EndOfSeeing,
    /// By the Moon.
    Moon,
    /// A lit range, 300 to 1000 lx.
    LitRange,
}

/// A kind of cover and how often.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct CoverShare {
    /// The cover.
    pub cover: Cover,
    /// How often, relative to the others.
    pub share: f64,
}

/// What is around when the light goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Cover {
    /// Open ground.
    Open,
    /// The edge of a wood.
    Edge,
    /// A ride between trees.
    Ride,
    /// A wood without leaves.
    BareWood,
    /// A wood in leaf.
    InLeaf,
    /// Dense conifers.
    DenseConifer,
}

/// The eye of the shooter.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Eye {
    /// Age in years, 8 to 95.
    pub age_years: Option<f64>,
    /// Measured diameter of the dark pupil in mm.
    pub dark_pupil_mm: Option<f64>,
    /// Glasses worn while shooting.
    pub glasses: Option<Glasses>,
    /// Astigmatism: a lit dot looks like a star.
    pub astigmatism: bool,
    /// `age_years` is the middle of a decade, tapped and not typed.
    pub age_is_decade: bool,
    /// State of the lens.
    pub lens: Lens,
}

/// State of the lens of the aiming eye.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Lens {
    /// Nothing known against it.
    #[default]
    Natural,
    /// Cataract.
    Cataract,
    /// Replaced.
    Replaced,
}

/// Glasses worn while shooting.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Glasses {
    /// None.
    NoGlasses,
    /// For distance.
    Distance,
    /// Varifocal.
    Varifocal,
    /// Protective glasses or a thick frame.
    ThickFrame,
}

/// The load that is fired.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Load {
    /// Key of a typical load, as in `308_win_10_7_g`.
    pub cartridge: Option<String>,
    /// Bullet mass in g; the person's own figures decide over the typical load.
    pub bullet_g: Option<f64>,
    /// Muzzle velocity in m/s.
    pub muzzle_velocity_m_s: Option<f64>,
    /// Ballistic coefficient G1 in lb/in².
    pub bc_g1_lb_in2: Option<f64>,
    /// Ballistic coefficient G7 in lb/in².
    pub bc_g7_lb_in2: Option<f64>,
    /// Powder mass in g.
    pub powder_g: Option<f64>,
}

/// The rifle.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Rifle {
    /// Bare mass in kg.
    pub mass_kg: Option<f64>,
    /// Kind of action.
    pub kind: Option<RifleKind>,
    /// What is on the muzzle.
    pub muzzle: Option<Muzzle>,
    /// Barrel length in cm.
    pub barrel_cm: Option<f64>,
    /// Barrel radius under the bell in mm.
    pub barrel_radius_at_bell_mm: Option<f64>,
    /// Where the comb lets the cheek lie.
    pub comb: Option<Comb>,
    /// Shot from the left shoulder.
    pub left_handed: bool,
    /// Iron sights that stand under the bell or must stay usable.
    pub iron_sights: bool,
}

/// Kind of action and stock.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum RifleKind {
    /// Bolt action or straight pull.
    Bolt,
    /// Break-open single shot or combination gun.
    SingleShot,
    /// Double rifle.
    Double,
    /// Self-loader with a straight in-line stock.
    StraightStock,
    /// Lever action.
    Lever,
    /// Pump or bolt slug gun.
    SlugGun,
    /// Spring-piston air rifle.
    SpringAir,
    /// Pre-charged air rifle.
    PrechargedAir,
    /// Muzzle loader.
    MuzzleLoader,
    /// Rail forward of the receiver, for long eye relief.
    ForwardRail,
}

/// What is on the muzzle.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Muzzle {
    /// Nothing.
    Bare,
    /// Moderator.
    Moderator,
    /// Brake.
    Brake,
}

/// Where the comb lets the cheek lie.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Comb {
    /// About 10 mm too low.
    Low,
    /// Right.
    Right,
    /// Adjustable.
    Adjustable,
}

/// What is there to hold a sight.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Mount {
    /// Bore of rings to keep, in mm: 25.4, 26, 30, 34, 35, 36 or 40; none: nothing to keep.
    pub rings_kept_mm: Option<f64>,
    /// There are no rings to keep, said in so many words.
    pub no_rings: bool,
    /// Height of the kept rings' centre over the rail, in mm.
    pub rings_centre_height_mm: Option<f64>,
    /// The base on the rifle.
    pub base: Option<Base>,
    /// Forward incline of the base in mrad.
    pub incline_mrad: Option<f64>,
    /// A rail runs on under the bell.
    pub rail_under_bell: bool,
}

/// The base on the rifle.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Base {
    /// Slotted rail to MIL-STD-1913 / STANAG 4694.
    SlottedRail,
    /// Rail with narrow slots.
    NarrowSlots,
    /// Small dovetail, 9.5 to 13.5 mm.
    SmallDovetail,
    /// Wide receiver dovetail.
    WideDovetail,
    /// Two-piece bases.
    TwoPiece,
    /// Nothing yet.
    Bare,
}

/// What it may cost.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Money {
    /// Highest price band of the sight alone, A (least) to E; none: not said.
    pub band: Option<PriceBand>,
    /// How money is weighed.
    pub attitude: Option<Attitude>,
    /// All in, in the person's own currency, for the record.
    pub all_in: Option<f64>,
    /// Used is fine.
    pub used: bool,
}

/// Price band of the sight alone: A < 250, B 250–600, C 600–1200, D 1200–2200, E > 2200 €.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[allow(missing_docs, reason = "five letters, explained above")]
pub enum PriceBand {
    A,
    B,
    C,
    D,
    E,
}

/// How money is weighed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Attitude {
    /// As little as sensible.
    LittleAsSensible,
    /// What it is worth.
    WhatItIsWorth,
    /// No limit.
    NoLimit,
}

/// How the zoom is used.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum ZoomHabit {
    /// Never turned: left at the usual power in 0.9 of the shots.
    Never,
    /// Before sitting down: 0.6.
    BeforeSitting,
    /// For each shot: 0.2.
    EachShot,
}

/// What must be told before a shot.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Detail {
    /// The body's shape only.
    BodyShape,
    /// Teats, a young animal: 50 mm.
    Young,
    /// Antler points: 20 to 25 mm.
    Antler,
}

/// How far the rifle is carried.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Carry {
    /// From the car to the seat.
    Short,
    /// A few kilometres.
    FewKm,
    /// All day on the hill.
    AllDayHill,
}

/// How distance is met.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Distance {
    /// Dead on, marks, or dial; none: not said.
    pub habit: Option<DistanceHabit>,
    /// Distance is measured rather than guessed.
    pub rangefinder: Option<bool>,
    /// The angle unit the person knows.
    pub unit: Option<AngleUnit>,
}

/// Dead on, marks or dial.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum DistanceHabit {
    /// Aims dead on.
    DeadOn,
    /// Holds with marks in the reticle.
    Marks,
    /// Turns a ring or dial.
    Dial,
    /// Both marks and dial.
    DialAndMarks,
}

/// An angle unit.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum AngleUnit {
    /// Milliradian.
    Mrad,
    /// Minute of angle.
    Moa,
    /// Neither.
    Neither,
}

/// A lit mark: lawful, wanted.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum LitMark {
    /// Lawful and wanted.
    Wanted,
    /// Lawful, indifferent.
    Indifferent,
    /// Not wanted.
    NotWanted,
    /// Not allowed where the person shoots.
    NotAllowed,
}

/// Where and when.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Place {
    /// Latitude in degrees, north positive.
    pub latitude_deg: Option<f64>,
    /// Longitude in degrees, east positive.
    pub longitude_deg_east: Option<f64>,
    /// Height above the sea in m.
    pub height_m: Option<f64>,
    /// First month of the season, 1 to 12.
    pub first_month: Option<u8>,
    /// Last month of the season, 1 to 12; smaller than the first: over the turn of the year.
    pub last_month: Option<u8>,
    /// Coldest day in °C.
    pub coldest_c: Option<f64>,
}

/// Limits of a rulebook.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Rulebook {
    /// Highest magnification allowed.
    pub magnification_most: Option<f64>,
    /// Lit marks forbidden.
    pub lit_mark_forbidden: bool,
    /// Refocusing (adjustable parallax) forbidden.
    pub refocusing_forbidden: bool,
    /// Focusing is how the range is found.
    pub focus_finds_range: bool,
    /// Mass of the sight at most, in g.
    pub mass_most_g: Option<f64>,
}

/// The sight owned now.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct SightNow {
    /// As typed, as in `3-12x50`.
    pub line: Option<String>,
    /// What annoys about it.
    pub annoys: Vec<Annoyance>,
}

/// What annoys about a sight.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Annoyance {
    /// Too dark.
    TooDark,
    /// Field too narrow.
    TooNarrow,
    /// Too heavy.
    TooHeavy,
    /// The picture is hard to find.
    HardToFindPicture,
    /// Not enough magnification.
    NotFarEnough,
}

/// Exchange rates between occasions served and what they cost, as the person moves them.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Weights {
    /// What 100 g weigh, in per cent of occasions.
    pub mass_percent_per_100_g: Option<f64>,
    /// What 10 mm of height over the rifle weigh, in per cent of occasions.
    pub height_percent_per_10_mm: Option<f64>,
    /// What one price band weighs, in per cent of occasions.
    pub money_percent_per_band: Option<f64>,
}
