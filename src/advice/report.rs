//! What the advice says, as it is passed on: the report, schema version 1.
//!
//! This is the wire type between the ranking and everything that shows it: the page's
//! worker, the frame and the workbench emit it as JSON. It holds keys and quantities and
//! no words. Shares run from 0 to 1; changes of a share are in percentage points
//! (`_points`). A spread is one standard deviation.

use scopewright_html::Passed;
use serde::{Deserialize, Serialize};

/// The version this code writes.
pub const VERSION: u32 = 1;

/// Everything advised for one set of answers.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Passed)]
pub struct Advice {
    /// Schema version, 1.
    pub version: u32,
    /// The picks, the first one first; never empty.
    pub picks: Vec<Pick>,
    /// Reasons for the elements of the first pick, most consequential first.
    pub reasons: Vec<Reason>,
    /// What this person does not need.
    pub not_needed: Vec<NotNeeded>,
    /// What is the person's own to decide, weightiest first.
    pub decisions: Vec<Decision>,
    /// What this person should not buy, or not forget.
    pub warnings: Vec<Warning>,
    /// What the first pick brings that is paid for and never used.
    pub unused: Vec<Unused>,
    /// How sure the first pick is; none until the plausible worlds were run.
    pub surety: Option<Surety>,
    /// What was not counted.
    pub not_counted: Vec<NotCounted>,
    /// Questions that were not answered, and so assumed with a spread.
    pub assumed: Vec<String>,
    /// Figures for the sentence of need, the strip and the view.
    pub facts: Facts,
    /// What is said at counters, tested for this person.
    pub sayings: Vec<Saying>,
    /// What stands behind the line: each model's own figures, for the panels that open.
    #[serde(default)]
    pub notes: Vec<Note>,
    /// The load on its way, nearest first.
    #[serde(default)]
    pub flight: Vec<FlightRow>,
    /// The sight owned now, judged by the same machinery, and what annoys about it; none if
    /// neither was said.
    #[serde(default)]
    pub owned: Option<Owned>,
    /// How much was computed.
    pub extent: Extent,
}

/// The sight owned now beside the first pick.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Passed)]
pub struct Owned {
    /// How it serves; none if its line was not said or cannot be read.
    pub judged: Option<Judged>,
    /// What annoys about it, in the order said.
    pub annoys: Vec<Annoyed>,
}

/// How the sight owned now serves.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Passed)]
pub struct Judged {
    /// Its line; what was not stated is what is usual.
    pub line: Line,
    /// Share of the occasions in which it is not what stops the shot.
    pub served: Figure,
    /// What the first pick is worth more, percentage points, with nothing to pay and no rings
    /// to buy for what is there already.
    pub behind_points: f64,
    /// It ties with the first pick: nothing is gained by buying.
    pub keep: bool,
    /// What changes with the first pick.
    pub gains: Vec<Effect>,
}

/// Something that annoys, and what the first pick makes of it.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, Passed)]
pub struct Annoyed {
    /// What annoys.
    pub what: Annoyance,
    /// What changes with the first pick (against the sight owned now), or what it reaches
    /// where that is not known.
    pub effect: Option<Effect>,
    /// The effect is a change.
    pub is_change: bool,
    /// The first pick mends it, by more than the doubt; none where that cannot be told.
    pub mended: Option<bool>,
    /// What it shifts in the ranking; none, or from one to the same, where it shifts nothing.
    #[serde(default)]
    pub shift: Option<Shift>,
    /// The first pick without it, where that is another.
    #[serde(default)]
    pub otherwise: Option<Line>,
}

/// What an annoyance shifts. Too dark: the share of the occasions that fall in the last light.
/// Too heavy: percentage points that 100 g weigh. Hard to find: how far off the axis the eye
/// comes to rest, mm. Otherwise what the sight owned now has, and what a sight must have to be
/// charged nothing for it: field at the lowest power in m per 100 m, top power.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, Passed)]
pub struct Shift {
    /// Without it.
    pub from: f64,
    /// With it.
    pub to: f64,
}

/// What may annoy about a sight.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, Passed)]
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

/// A median and one standard deviation, in the unit that the field's name states.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize, Passed)]
pub struct Figure {
    /// Median.
    pub value: f64,
    /// One standard deviation.
    pub spread: f64,
}

impl From<crate::quantity::Estimate> for Figure {
    fn from(estimate: crate::quantity::Estimate) -> Self {
        Self {
            value: estimate.value,
            spread: estimate.spread,
        }
    }
}

/// The line: a specification as it stands on a box.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, Passed)]
pub struct Line {
    /// Lowest magnification.
    pub mag_low: f64,
    /// Top magnification; equal to the lowest for a fixed power.
    pub mag_high: f64,
    /// Objective diameter in mm.
    pub objective_mm: f64,
    /// Tube diameter in mm.
    pub tube_mm: f64,
    /// Plane of the reticle.
    pub plane: Plane,
    /// Family of the reticle.
    pub reticle: Reticle,
    /// Light in the reticle.
    pub illumination: Lit,
    /// Parallax setting.
    pub parallax: Parallax,
    /// Elevation turret.
    pub elevation: Turret,
    /// Elevation to be had upwards from the zero, in mrad.
    pub up_from_zero_mrad: f64,
    /// Least eye relief over the zoom, in mm.
    pub eye_relief_mm: f64,
    /// Field at the lowest power, m per 100 m.
    pub field_low_m_per_100m: f64,
    /// Field at the top power, m per 100 m.
    pub field_high_m_per_100m: f64,
    /// Grade of glass.
    pub grade: Grade,
    /// Width of the apparent field.
    pub field: FieldWidth,
    /// Mass in g.
    pub mass_g: f64,
    /// One standard deviation of the mass in g.
    pub mass_spread_g: f64,
    /// Length in mm.
    pub length_mm: f64,
    /// Price band of the sight alone, A (least) to E.
    pub price_band: Band,
    /// The same on a continuous scale, A = 0 to E = 4.
    pub price: Figure,
    /// Width of the centre line in mm per 100 m at the top power.
    pub centre_line_mm_per_100m: f64,
    /// Width of the bars in mm per 100 m at the top power, 0 if there are none.
    pub bars_mm_per_100m: f64,
    /// Diameter of the dot in mm per 100 m at the top power, 0 if there is none.
    pub dot_mm_per_100m: f64,
}

/// Plane of the reticle.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, Passed)]
#[serde(rename_all = "snake_case")]
pub enum Plane {
    /// In front of the zoom.
    First,
    /// Behind the zoom.
    Second,
}

/// Family of the reticle.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, Passed)]
#[serde(rename_all = "snake_case")]
pub enum Reticle {
    /// Thin lines throughout.
    FineCrosshair,
    /// Thick bars, thin centre.
    ThickThin,
    /// Heavy bars left, right and below.
    ThreePost,
    /// Three posts, heavier, for the night.
    HeavyNight,
    /// One post from below.
    Post,
    /// Dot on a thin cross.
    CentreDot,
    /// Dot in a ring.
    CircleDot,
    /// Marks every milliradian.
    MradMarks,
    /// Marks in minutes of angle.
    MoaMarks,
    /// Hold marks for one load.
    HoldMarks,
    /// A grid of marks below the centre.
    MarkGrid,
}

/// Light in the reticle.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, Passed)]
#[serde(rename_all = "snake_case")]
pub enum Lit {
    /// None.
    None,
    /// Dims to the darkest night.
    NightFine,
    /// Seen against daylight.
    DayBright,
    /// Both ends.
    Both,
}

/// Parallax setting.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, Passed)]
#[serde(tag = "kind", rename_all = "snake_case")]
pub enum Parallax {
    /// Set once.
    Fixed {
        /// Free of parallax at this distance, m.
        free_at_m: f64,
    },
    /// Adjustable.
    Adjustable {
        /// Nearest distance, m.
        nearest_m: f64,
    },
}

/// Elevation turret.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, Passed)]
#[serde(rename_all = "snake_case")]
pub enum Turret {
    /// Under a cap.
    Capped,
    /// A ring cut for one load.
    RingForLoad,
    /// A dial with a stop at zero.
    DialZeroStop,
}

/// Grade of glass.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, Passed)]
#[serde(rename_all = "snake_case")]
pub enum Grade {
    /// Plain.
    Basic,
    /// Good.
    Good,
    /// The best that is made.
    Best,
}

/// Width of the apparent field.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, Passed)]
#[serde(rename_all = "snake_case")]
pub enum FieldWidth {
    /// 19°.
    Narrow,
    /// 21°.
    Usual,
    /// 23°.
    Wide,
}

/// Price band of the sight alone.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, Passed)]
#[allow(missing_docs, reason = "five letters, A the least money")]
pub enum Band {
    A,
    B,
    C,
    D,
    E,
}

/// An element of the line.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, Passed)]
#[serde(rename_all = "snake_case")]
pub enum Element {
    /// Lowest power.
    MagLow,
    /// Top power.
    MagHigh,
    /// Objective diameter.
    ObjectiveMm,
    /// Tube diameter.
    TubeMm,
    /// Plane of the reticle.
    Plane,
    /// Family of the reticle.
    Reticle,
    /// Light in the reticle.
    Illumination,
    /// Parallax setting.
    Parallax,
    /// Elevation turret.
    Elevation,
    /// Eye relief.
    EyeReliefMm,
    /// Field at the lowest power, or the width of the apparent field.
    FieldLowMPer100m,
    /// Grade of glass.
    Grade,
    /// Mass.
    MassG,
    /// Height of the centre over the rail.
    CentreHeightMm,
    /// Price band.
    PriceBand,
    /// Magnification in use, rather than on the box.
    MagInUse,
    /// Width of the centre line.
    CentreLineMmPer100m,
    /// Diameter of the dot.
    DotMmPer100m,
    /// Elevation upwards from the zero.
    UpFromZeroMrad,
    /// The rings and base.
    Mount,
    /// The exit pupil.
    ExitPupilMm,
}

/// How much an element matters to this person.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, Passed)]
#[serde(rename_all = "snake_case")]
pub enum Standing {
    /// Outside the range this person's shots fail.
    Must,
    /// Outside the range something is lost, but not much.
    Wish,
    /// Makes no difference to this person.
    Free,
}

/// The lowest and the highest value that serves as well.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, Passed)]
pub struct Span {
    /// Lowest.
    pub least: f64,
    /// Highest.
    pub most: f64,
    /// How much it matters.
    pub standing: Standing,
}

/// The choices that serve as well, the pick's own first.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Passed)]
pub struct Choices<T> {
    /// The choices.
    pub any_of: Vec<T>,
    /// How much it matters.
    pub standing: Standing,
}

/// The ranges that tie with a pick, element by element.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Passed)]
pub struct Ranges {
    /// Lowest power.
    pub mag_low: Span,
    /// Top power.
    pub mag_high: Span,
    /// Objective in mm.
    pub objective_mm: Span,
    /// Tube in mm.
    pub tube_mm: Choices<f64>,
    /// Plane.
    pub plane: Choices<Plane>,
    /// Reticle.
    pub reticle: Choices<Reticle>,
    /// Light in the reticle.
    pub illumination: Choices<Lit>,
    /// Parallax.
    pub parallax: Choices<Parallax>,
    /// Elevation.
    pub elevation: Choices<Turret>,
    /// Elevation upwards from the zero that is needed, mrad; `most` is what the picks have.
    pub up_from_zero_mrad: Span,
    /// Eye relief in mm; `least` is the limit.
    pub eye_relief_mm: Span,
    /// Field at the lowest power, m per 100 m.
    pub field_low_m_per_100m: Span,
    /// Glass.
    pub grade: Choices<Grade>,
    /// Mass in g.
    pub mass_g: Span,
    /// Price bands.
    pub price_band: Choices<Band>,
}

/// One pick.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Passed)]
pub struct Pick {
    /// The line.
    #[serde(flatten)]
    pub line: Line,
    /// Why it is among the picks.
    pub because: Because,
    /// Its value differs from the first pick's by less than a near-tie.
    pub tied_with_first: bool,
    /// Value in percentage points behind the best (0 for the first).
    pub behind_points: f64,
    /// Share of the occasions in which the sight is not what stops the shot.
    pub served: Figure,
    /// What the rest is lost to; `served` and these add up to 1.
    pub losses: Vec<Loss>,
    /// Magnification this shooter would mostly have set, by day and in the last light.
    pub mag_in_use: MagInUse,
    /// Centre height over the rail, mm.
    pub centre_height_mm: Figure,
    /// Height of the line of sight over the bore, mm.
    pub height_over_bore_mm: Figure,
    /// Gains and losses against the first pick (empty for the first).
    pub against_first: Vec<Effect>,
    /// What ties with it.
    pub ranges: Ranges,
}

/// Magnification mostly set.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, Passed)]
pub struct MagInUse {
    /// By day.
    pub day: f64,
    /// In the last light.
    pub late: f64,
}

/// A pick's reason to exist.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, Passed)]
#[serde(rename_all = "snake_case")]
pub enum Because {
    /// Best value: serves most for what it weighs and costs.
    Best,
    /// Serves most, whatever it costs.
    ServesMost,
    /// Lightest that serves almost as well.
    Lightest,
    /// Least money that serves almost as well.
    LeastMoney,
    /// Latest into the evening.
    Latest,
    /// Widest field.
    WidestField,
    /// Keeps the rings that are there.
    KeepsRings,
    /// Fixed power: no zoom to be left in the wrong place.
    FixedPower,
}

/// What stops a shot that the sight does not serve.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, Passed)]
#[serde(rename_all = "snake_case")]
pub enum Cause {
    /// Not told apart in that light.
    ToldApart,
    /// The detail that must be told is not seen.
    Detail,
    /// The aiming point is not chosen finely enough.
    Aim,
    /// The field is too narrow.
    Field,
    /// The wobble is chased rather than used.
    Steady,
    /// The eye is not placed in time.
    EyePlaced,
    /// Parallax.
    Parallax,
    /// The mark is not seen, or hides the aiming point.
    Mark,
    /// Drop that the sight gives no means to meet.
    Drop,
    /// Zoom left where it was.
    ZoomLeft,
    /// The eye relief is too short for this recoil.
    EyeRelief,
}

/// A share of the occasions lost to one cause.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, Passed)]
pub struct Loss {
    /// The cause.
    pub cause: Cause,
    /// Share of all occasions.
    pub share: f64,
}

/// What an effect is measured in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, Passed)]
#[serde(rename_all = "snake_case")]
pub enum Quantity {
    /// Occasions served, percentage points.
    ServedPoints,
    /// Minutes of the typical evening until which the quarry is told apart.
    MinutesTonight,
    /// Seconds of the same.
    SecondsTonight,
    /// Mass, g.
    MassG,
    /// Mass as a share of the rifle's own, per cent.
    MassPercentOfRifle,
    /// Centre height over the rail, mm.
    CentreHeightMm,
    /// Price bands.
    PriceBands,
    /// Width of the field at the nearest shot, m.
    FieldAtNearestM,
    /// Field at the lowest power, m per 100 m.
    FieldMPer100m,
    /// Time game takes to cross the field at the nearest shot, s.
    CrossingSeconds,
    /// Smallest detail told at the farthest shot by day, mm.
    DetailAtFarthestMm,
    /// Exit pupil, mm.
    ExitPupilMm,
    /// Pupil of this eye in that light, mm.
    PupilMm,
    /// Share of the light stopped by the iris, per cent.
    OnIrisPercent,
    /// Error by parallax at the worst range with the usual cheek, cm.
    ParallaxCm,
    /// A miss or a change of the point of impact, named by the key, cm.
    ErrorCm,
    /// What the mark covers at the farthest shot, cm.
    CoveredCm,
    /// Aiming circle, cm.
    CircleCm,
    /// Drop below the line of sight at the farthest shot, cm.
    DropCm,
    /// Elevation needed at the farthest shot, mrad.
    NeededMrad,
    /// Elevation to be had, mrad.
    TravelMrad,
    /// Clicks of 0.1 mrad at the farthest shot.
    Clicks,
    /// Range, m.
    RangeM,
    /// Eye relief, mm.
    EyeReliefMm,
    /// Recoil velocity, m/s.
    RecoilMS,
    /// Recoil energy, J.
    RecoilJ,
    /// Apparent wobble, mrad.
    WobbleMrad,
    /// Magnification.
    Magnification,
    /// Width of the mark as seen, arcminutes.
    MarkArcmin,
    /// Width of a line that is just seen, arcminutes.
    LineNeededArcmin,
    /// Width of a line or dot, mm per 100 m.
    WidthMmPer100m,
    /// Luminance, cd/m².
    LuminanceCdM2,
    /// Contrast, a fraction.
    Contrast,
    /// Ratio of two things, named by the key.
    Ratio,
    /// Nights, of 30.
    Nights,
    /// Force, kN.
    ForceKn,
    /// Per cent of something named by the key.
    Percent,
    /// Length, mm.
    LengthMm,
    /// Angle, mm per 100 m.
    AngleMmPer100m,
    /// Age, years.
    AgeYears,
    /// Minutes after sunset until which something is told apart; [`ALL_NIGHT_MIN`] for the
    /// whole night, less than nothing of that for never.
    UntilMin,
    /// Minutes before sunrise from which on something is told apart, likewise.
    BeforeSunriseMin,
    /// A change of the evening's end, later positive, min.
    LaterMin,
    /// Speed, m/s.
    SpeedMS,
    /// Energy of the bullet, J.
    EnergyJ,
    /// Time of flight, s.
    FlightSeconds,
    /// Angle, mrad.
    AngleMrad,
    /// Angle, degrees.
    AngleDeg,
    /// Torque, N·m.
    TorqueNm,
    /// Torque, in·lb.
    TorqueInLb,
    /// Height above the sea, m.
    HeightM,
    /// Temperature, °C.
    TemperatureC,
    /// Lead or width on the ground, m.
    WidthM,
    /// Visibility, m.
    VisibilityM,
    /// Mass of a bullet, g.
    BulletG,
    /// A place over (positive) or under the aim, cm.
    PathCm,
    /// A measure of a standard, mm.
    ExactMm,
}

/// Stands for the whole night in [`Quantity::UntilMin`] and [`Quantity::BeforeSunriseMin`];
/// its negative for not at all.
pub const ALL_NIGHT_MIN: f64 = 1e6;

/// A statement with its numbers that stands behind a part of the advice.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Passed)]
pub struct Note {
    /// Which statement.
    pub key: NoteKey,
    /// Its numbers; which is which stands with the key in `wording::notes`.
    pub effects: Vec<Effect>,
}

/// The statements.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, Passed)]
#[serde(rename_all = "snake_case")]
#[allow(
    missing_docs,
    reason = "each key is its statement in short; the words stand in the locales"
)]
pub enum NoteKey {
    // What does not fit, and what would.
    ZeroOutOfReach,
    FallsShort,
    NoFlight,
    CannotBeZeroed,
    ZeroTooHigh,
    KeptTube,
    KeptBell,
    KeptBolt,
    KeptStock,
    NoRoomToClamp,
    PolarDay,
    PolarNight,
    // The evening.
    Detection,
    Recognition,
    Identification,
    SecondOpinion,
    Difference,
    DifferenceMeasured,
    PupilUsed,
    Adaptation,
    StepObjective,
    StepMagnification,
    StepTransmission,
    StepAge,
    Haze,
    Coat,
    Weather,
    Dawn,
    MoonBack,
    MoonAll,
    MoonNone,
    Labels,
    Veil,
    // Power and field.
    Lead,
    FieldNeeded,
    FieldShort,
    Crossing,
    Steady,
    // Plane and mark.
    PlaneError,
    MarkDay,
    MarkLate,
    LitLate,
    // Parallax.
    ParallaxAt,
    // Elevation.
    Travel,
    Incline,
    InclineTooMuch,
    Windage,
    Clicks,
    Mismatch,
    RingChanges,
    RangeError,
    // The load on its way.
    LoadTypical,
    LoadOwn,
    DeadOn,
    Inside,
    Highest,
    Slope,
    Cant,
    PlaceAir,
    Near,
    // Recoil and the eye.
    Recoil,
    MuzzleBare,
    MuzzleDevice,
    Barrel,
    ReliefParts,
    EyeBoxTop,
    MountLoad,
    MountLoadStop,
    Balance,
    // The rings.
    HeightBell,
    HeightIron,
    HeightBolt,
    HeightRing,
    HeightStock,
    LargerBell,
    BoltRoom,
    Comb,
    CombLow,
    EyePlace,
    RingsPlace,
    RingsSlots,
    RailSlotted,
    RailNarrow,
    RailSmallDovetail,
    RailWideDovetail,
    RailTwoPiece,
    RailBare,
    KeptFits,
    TorqueCaps,
    TorqueBase,
    TorqueCrossAluminium,
    TorqueCrossSteel,
}

/// The load at one range, with the usual zero.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, Passed)]
pub struct FlightRow {
    /// Range, m.
    pub range_m: f64,
    /// Path over the line of sight, cm; low is negative.
    pub path_cm: f64,
    /// One standard deviation of it by the load's own figures, cm.
    pub path_spread_cm: f64,
    /// Hold over the aim, mrad.
    pub hold_mrad: f64,
    /// Speed, m/s.
    pub speed_m_s: f64,
    /// Energy, J.
    pub energy_j: f64,
    /// Time of flight, s.
    pub time_s: f64,
    /// Drift in 4 m/s of wind across, cm.
    pub drift_cm: f64,
    /// Radius of the visible wobble of this person's usual hold there, cm.
    pub wobble_cm: f64,
}

/// A quantity that changes or is reached, with its spread.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, Passed)]
pub struct Effect {
    /// What is measured.
    pub quantity: Quantity,
    /// Value, in the unit of the quantity; signed if it is a change.
    pub value: f64,
    /// One standard deviation.
    pub spread: f64,
}

/// What an element is set to: a number or a key.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Passed)]
#[serde(untagged)]
pub enum Setting {
    /// A number in the unit of the element.
    Number(f64),
    /// A key, as in `second` or `night_fine`.
    Key(String),
}

/// Why an element of the line is what it is.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Passed)]
pub struct Reason {
    /// The element.
    pub element: Element,
    /// How much it matters.
    pub standing: Standing,
    /// Largest change of value by one step, percentage points: the order of the reasons.
    pub weight_points: f64,
    /// What is set, with what it reaches (absolute values).
    pub here: Step,
    /// One step less, with changes against the pick.
    pub less: Option<Step>,
    /// One step more, with changes against the pick.
    pub more: Option<Step>,
    /// The quantity of the small graphic: the first effect that all steps share.
    pub axis: Quantity,
}

/// One setting of an element and what comes with it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Passed)]
pub struct Step {
    /// The setting.
    pub setting: Setting,
    /// Share of occasions served there.
    pub served: f64,
    /// The cause that grows most, if something is lost.
    pub lost_to: Option<Cause>,
    /// What it reaches (for `here`) or changes (for a step).
    pub effects: Vec<Effect>,
}

/// Something often asked for that makes no difference to this person.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Passed)]
pub struct NotNeeded {
    /// The element.
    pub element: Element,
    /// What of it.
    pub setting: Setting,
    /// Numbers that show it.
    pub effects: Vec<Effect>,
}

/// Something that is the person's own to decide.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Passed)]
pub struct Decision {
    /// What is weighed against what.
    pub key: DecisionKey,
    /// The one side: the pick's setting.
    pub one: Setting,
    /// The other side.
    pub other: Setting,
    /// What changes with the other side.
    pub effects: Vec<Effect>,
    /// Advisors disagree here; both sides are right if the reason is told.
    pub advisors_disagree: bool,
}

/// The usual decisions.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, Passed)]
#[serde(rename_all = "snake_case")]
pub enum DecisionKey {
    /// A larger or a smaller objective.
    GramsAgainstMinutes,
    /// A lower lowest power or a higher top power.
    FieldAgainstTopPower,
    /// A low mount or a large bell.
    LowMountAgainstBell,
    /// First or second plane.
    FirstOrSecondPlane,
    /// A lit mark or heavy bars.
    LitOrHeavyBars,
    /// A dial or dead on.
    DialOrDeadOn,
    /// Marks or a dial.
    MarksOrDial,
    /// Adjustable or fixed parallax.
    AdjustableParallax,
    /// One wide zoom or two sights.
    OneWideOrTwoSights,
    /// Fixed power or a zoom.
    FixedOrZoom,
    /// Keep the rings or change the tube.
    KeepRings,
    /// A better glass for one price band more.
    GlassAgainstMoney,
    /// A step of money.
    MoneyAgainstOccasions,
    /// Mount forward or over the receiver.
    ForwardOrReceiver,
    /// Raise the comb or keep the bell small.
    CombOrBell,
    /// An unmagnified second sight on the same base.
    SecondSight,
}

/// How a limit is meant.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, Passed)]
#[allow(missing_docs, reason = "the signs themselves")]
pub enum Comparison {
    #[serde(rename = "<")]
    Less,
    #[serde(rename = "<=")]
    AtMost,
    #[serde(rename = ">")]
    More,
    #[serde(rename = ">=")]
    AtLeast,
    #[serde(rename = "==")]
    Is,
    #[serde(rename = "!=")]
    IsNot,
}

/// A rule a machine can apply: what this person should not buy.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Passed)]
pub struct Rule {
    /// The element.
    pub element: Element,
    /// The comparison that makes it wrong.
    pub comparison: Comparison,
    /// The limit.
    pub limit: Setting,
}

/// What this person should not buy or not forget, and why.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Passed)]
pub struct Warning {
    /// Which warning.
    pub key: WarningKey,
    /// The rule, where one element decides; none for a caution.
    pub rule: Option<Rule>,
    /// Why, in figures as they are.
    #[serde(default)]
    pub facts: Vec<Effect>,
    /// Why, in changes against the first pick.
    pub effects: Vec<Effect>,
    /// The cause that grows most, if occasions are lost.
    pub lost_to: Option<Cause>,
}

/// The kinds of warning.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, Passed)]
#[serde(rename_all = "snake_case")]
pub enum WarningKey {
    /// An objective that is too large for what it brings.
    LargeObjective,
    /// An objective that is too small.
    SmallObjective,
    /// A lowest power that is too high.
    HighLowestPower,
    /// A top power that is paid for and not used.
    HighTopPower,
    /// A top power that is too low.
    LowTopPower,
    /// More magnification than this eye and objective fill with light.
    MagnificationInUse,
    /// A field that is too narrow.
    NarrowField,
    /// A fine mark in the first plane.
    FineFirstPlane,
    /// A mark that is not seen when it matters.
    MarkNotSeen,
    /// A mark that hides the aiming point.
    MarkCovers,
    /// A battery as the only mark.
    BatteryOnly,
    /// A lit mark where none is allowed.
    LitNotAllowed,
    /// A lit mark that starbursts in an astigmatic eye.
    LitDotStars,
    /// An exposed dial without use.
    ExposedDial,
    /// Parallax fixed at a wrong distance.
    ParallaxDistance,
    /// Fixed parallax where it must be adjustable.
    ParallaxFixed,
    /// Nearest focus too far.
    NearestFocus,
    /// A side wheel in the way of the firing hand or bolt.
    SideWheel,
    /// Controls in the way of the bolt.
    BoltClearance,
    /// Eye relief too short.
    ShortEyeRelief,
    /// Eye relief too long.
    LongEyeRelief,
    /// Too heavy for this rifle.
    Heavy,
    /// A heavy mount.
    HeavyMount,
    /// A tube that buys only travel that is never used.
    ThickTube,
    /// A tube that does not fit the rings.
    WrongTube,
    /// Sights for the bore of these rings are not built new.
    RingsNotBuilt,
    /// Rings kept but unchecked.
    RingsUnchecked,
    /// Mount too high.
    TallRings,
    /// Bell or rings touch the barrel.
    LowRings,
    /// Rings and base must carry this recoil.
    WeakMount,
    /// A loose joint between barrel and receiver.
    LooseJoint,
    /// Too little elevation.
    LittleTravel,
    /// A base inclined too far to zero.
    TooMuchIncline,
    /// Marks and clicks in different units.
    MixedUnits,
    /// Marks in the second plane used off their power.
    SecondPlaneHolds,
    /// A ring or marks for another load or air.
    AnotherLoad,
    /// Focus marks that drift with temperature.
    FocusDrift,
    /// Heat shimmer ends magnification.
    Mirage,
    /// The rulebook decides.
    Rulebook,
    /// Nothing meets all limits that were given; the pick breaks the least of them.
    LimitsUnmet,
    /// Forward mounting in the dusk.
    ForwardDusk,
    /// The farthest range is beyond what the wobble holds inside the circle.
    Wobble,
}

/// Something paid for and never used.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Passed)]
pub struct Unused {
    /// What.
    pub key: UnusedKey,
    /// In numbers.
    pub effects: Vec<Effect>,
}

/// Kinds of things paid for and never used.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, Passed)]
#[serde(rename_all = "snake_case")]
pub enum UnusedKey {
    /// Exit pupil wider than the pupil.
    ExitPupilBeyondPupil,
    /// Travel beyond the farthest range.
    TravelBeyondFarthest,
    /// Power above what is used.
    PowerAboveUse,
    /// Light where detail is the limit.
    LightWhereDetailLimits,
    /// A lit mark by day only.
    LitByDay,
}

/// How sure the first pick is.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Passed)]
pub struct Surety {
    /// Plausible worlds tried.
    pub worlds: u32,
    /// In how many the first pick stays first.
    pub first: u32,
    /// In how many it stays first or tied.
    pub first_or_tied: u32,
    /// What usually unseats it, most often first.
    pub unseated_by: Vec<Unseats>,
    /// For each answer: whether another plausible answer changes the line; weightiest first.
    pub answers: Vec<AnswerMatters>,
}

/// What unseats a pick.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Passed)]
pub struct Unseats {
    /// The doubtful quantity that, put back in its middle, brings the pick nearest again.
    pub doubt: Doubt,
    /// In how many worlds.
    pub worlds: u32,
    /// What was first instead most often.
    pub instead: Line,
}

/// The doubtful quantities of a plausible world.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, Passed)]
#[serde(rename_all = "snake_case")]
pub enum Doubt {
    /// The person's own pupil.
    Pupil,
    /// Laboratory against field.
    FieldFactor,
    /// Contrast of coat and ground.
    Contrast,
    /// Brightness of the ground.
    Ground,
    /// Cloud.
    Cloud,
    /// Muzzle velocity and drag.
    Velocity,
    /// Steadiness.
    Steadiness,
    /// The fits of mass and field.
    Fits,
    /// The price fit.
    Price,
    /// How mass is weighed.
    WeightOfMass,
    /// How money is weighed.
    WeightOfMoney,
    /// How height is weighed.
    WeightOfHeight,
    /// Veiling glare of the grades.
    Glare,
    /// How far stated ranges are off.
    Ranges,
}

/// Whether another plausible answer to a question changes the line.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Passed)]
pub struct AnswerMatters {
    /// Key of the question.
    pub question: String,
    /// The other answer tried, as a key.
    pub other: String,
    /// The pick then lies outside the near-tie.
    pub changes_line: bool,
    /// What the present first pick would be behind then, percentage points.
    pub behind_points: f64,
    /// The elements that change.
    pub elements: Vec<Element>,
    /// The first pick then.
    pub then: Line,
}

/// What the advice does not count.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, Passed)]
#[serde(rename_all = "snake_case")]
pub enum NotCounted {
    /// Repeatability of the turrets.
    Tracking,
    /// Sealing against water and fog.
    Sealing,
    /// Sharpness towards the edge.
    EdgeSharpness,
    /// How the clicks feel.
    ClickFeel,
    /// Guarantee and service.
    Service,
    /// Moonlight.
    Moon,
    /// Mirage beyond a ceiling on power.
    Mirage,
    /// Law of the place.
    Law,
    /// An electronic attachment.
    Attachment,
    /// Spring rifles load a sight both ways.
    SpringRecoil,
}

/// Figures for the sentence of need, the strip and the view through the sight.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Passed)]
pub struct Facts {
    /// The typical occasion.
    pub typical: Typical,
    /// Pupil of this eye at the stopping light, mm.
    pub pupil_mm: Figure,
    /// Exit pupil of the first pick at the power mostly set late, mm.
    pub exit_pupil_mm: f64,
    /// Tonight (the typical evening): until when the quarry is told apart.
    pub tonight: Tonight,
    /// Free recoil velocity, m/s, and energy, J, with the first pick on the rifle.
    pub recoil_m_s: Figure,
    /// Free recoil energy, J.
    pub recoil_j: Figure,
    /// Eye relief that recoil and glasses ask for, mm.
    pub eye_relief_needed_mm: f64,
    /// Elevation needed from the zero at the farthest range, mrad.
    pub needed_mrad: f64,
    /// Zero range that was assumed, m.
    pub zero_m: f64,
    /// Path at the farthest range with that zero, cm (negative: low).
    pub path_at_farthest_cm: f64,
    /// Range to which one may aim dead on for the smallest circle, with its best zero, m.
    pub dead_on_reach_m: f64,
    /// Zero for that reach, m.
    pub dead_on_zero_m: f64,
    /// What the usual range of the typical occasion is counted as, m, where the person stated it
    /// and does not measure; none where it is counted as stated.
    #[serde(default)]
    pub range_taken: Option<Figure>,
    /// Best share that any candidate reaches: what no sight can serve is not its fault.
    pub best_possible_share: f64,
}

/// The typical occasion.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Passed)]
pub struct Typical {
    /// Key of the quarry or target shot at most.
    pub quarry: String,
    /// Manner of shooting most used, as a key.
    pub manner: String,
    /// Nearest range, m.
    pub nearest_m: f64,
    /// Usual range, m.
    pub usual_m: f64,
    /// Farthest range, m.
    pub farthest_m: f64,
    /// Minutes after sunset at which this person stops; none by day, on a lit range or by the Moon.
    pub stop_minutes_after_sunset: Option<f64>,
    /// Age, years.
    pub age_years: f64,
    /// Ground luminance at the stopping time, cd/m².
    pub luminance_at_stop_cd_m2: f64,
    /// Contrast of the quarry against its ground, signed.
    pub contrast: f64,
    /// Kind of light that matters: day, dusk, night.
    pub light: LightKind,
    /// Aiming circle, mm.
    pub circle_mm: f64,
}

/// The light that matters.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, Passed)]
#[serde(rename_all = "snake_case")]
pub enum LightKind {
    /// Full day only.
    Day,
    /// Into the dusk.
    Dusk,
    /// By the Moon.
    Moon,
    /// A lit range.
    LitRange,
}

/// Until when the quarry is told apart on the typical evening.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, Passed)]
pub struct Tonight {
    /// Seconds since 1970-01-01T00:00Z of the sunset of that evening; none if there is none.
    pub sunset_s: Option<f64>,
    /// The sunrise after it, seconds since 1970; none if there is none.
    #[serde(default)]
    pub sunrise_s: Option<f64>,
    /// The noon before that evening, seconds since 1970: also where the Sun does not set.
    #[serde(default)]
    pub noon_s: f64,
    /// Latitude used, degrees north.
    pub latitude_deg: f64,
    /// Longitude used, degrees east.
    pub longitude_deg_east: f64,
    /// With the bare eye.
    pub bare_eye: LastLight,
    /// With the first pick.
    pub this_sight: LastLight,
    /// With the sight owned now, or else the pick that reaches latest or is lightest.
    pub other_sight: Option<LastLight>,
    /// How far this and the other sight differ, minutes, with the spread of the difference.
    pub difference_min: Option<Figure>,
}

/// The end of telling apart, minutes after sunset.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, Passed)]
#[serde(tag = "kind", rename_all = "snake_case")]
pub enum LastLight {
    /// At this time.
    At {
        /// Minutes after sunset.
        minutes: f64,
        /// One standard deviation, minutes.
        spread: f64,
    },
    /// Through the whole night.
    Always,
    /// Not even before sunset.
    Never,
}

/// Something said at counters, tested for this person.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Passed)]
pub struct Saying {
    /// Which saying.
    pub key: SayingKey,
    /// True for this person or not.
    pub verdict: Verdict,
    /// The computed effects; which is which stands with the key in `docs/sayings.md`.
    pub effects: Vec<Effect>,
}

/// Whether a saying is true for this person.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, Passed)]
#[serde(rename_all = "snake_case")]
pub enum Verdict {
    /// True.
    True,
    /// Half true.
    Half,
    /// False.
    False,
}

/// The sayings.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, Passed)]
#[serde(rename_all = "snake_case")]
#[allow(
    missing_docs,
    reason = "each key is the saying in short; the words stand in the locales"
)]
pub enum SayingKey {
    ThickTubeIsBrighter,
    ThickTubeForLongRange,
    FivePointsAreTwentyMinutes,
    OneSeesDearGlass,
    EveryoneNeedsSevenMillimetres,
    PastFiftyA56IsWasted,
    EightBy56IsTheNightSight,
    TurnDownWhenDark,
    TurnUpWhenDark,
    TwilightNumberDecides,
    SnowDoublesTheLight,
    CloudCostsTwentyMinutes,
    MoonNeedsElectronics,
    FirstPlaneForFar,
    FirstPlaneCoversTarget,
    HalfAMarkAtAnyPower,
    SetAtHundredUselessAt300,
    BlackRingIsParallax,
    SideFocusIsForSharpness,
    FourHighAndForget,
    FlatCartridgeNeedsNoDial,
    DialIsPrecision,
    MoaIsFiner,
    OneMoaIsAnInch,
    MorePowerBetterShot,
    HighPowerMakesMeShake,
    LowMountIsAlwaysBetter,
    HeightDoesNotMatter,
    EyeReliefIsOnTheBox,
    OnlyASmallCartridge,
    MagnumsKillSights,
    RingsAreJustRings,
    LitMeansNight,
    NoBatteryNoAim,
    FixedIsBrighter,
    BiggerBellNarrowsField,
    WideZoomDoesItAll,
    BothEyesDoubleField,
    ModeratorChangesOnlyNoise,
    UphillHighDownhillLow,
}

/// How much was computed.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, Passed)]
pub struct Extent {
    /// Specifications ranked.
    pub candidates: u32,
    /// Of them optically distinct.
    pub optically_distinct: u32,
    /// Occasions.
    pub occasions: u32,
    /// A near-tie, percentage points of value.
    pub near_tie_points: f64,
    /// Exchange rates in use.
    pub rates: Rates,
}

/// The exchange rates in use, in percentage points of occasions.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, Passed)]
pub struct Rates {
    /// What 100 g weigh.
    pub mass_points_per_100_g: f64,
    /// What 10 mm of height weigh.
    pub height_points_per_10_mm: f64,
    /// What one price band weighs.
    pub money_points_per_band: f64,
}

/// Answers that cannot be computed with.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Passed)]
pub struct Problem {
    /// Key of the question.
    pub question: String,
    /// What is wrong, as a key.
    pub key: String,
}
