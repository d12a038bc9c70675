//! The specification of a sight: what stands on the box, without a maker.

/// Where the reticle sits, and so whether it grows with the magnification.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum FocalPlane {
    /// In front of the zoom: marks keep their size on the target.
    First,
    /// Behind the zoom: marks keep their size to the eye.
    Second,
}

/// What the reticle looks like, in the trade's plain words.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum ReticleFamily {
    /// Thin lines throughout.
    FineCrosshair,
    /// Thick outer bars, thin centre.
    ThickThin,
    /// Heavy bars left, right and below, thin cross in the middle.
    ThreePost,
    /// As three-post, drawn heavier for the night.
    HeavyNight,
    /// One post from below.
    Post,
    /// A dot on a thin cross.
    CentreDot,
    /// A dot in a ring.
    CircleDot,
    /// Crosshair with marks every milliradian.
    MradMarks,
    /// Crosshair with marks in minutes of angle.
    MoaMarks,
    /// Hold marks for one stated load.
    HoldMarks,
    /// A grid of marks below the centre.
    MarkGrid,
}

impl ReticleFamily {
    /// Every family, from the plainest to the fullest.
    pub const ALL: [Self; 11] = [
        Self::FineCrosshair,
        Self::ThickThin,
        Self::ThreePost,
        Self::HeavyNight,
        Self::Post,
        Self::CentreDot,
        Self::CircleDot,
        Self::MradMarks,
        Self::MoaMarks,
        Self::HoldMarks,
        Self::MarkGrid,
    ];
}

/// Light in the reticle.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Illumination {
    /// None.
    Unlit,
    /// Dims to the darkest night.
    NightFine,
    /// Bright enough to be seen against daylight.
    DayBright,
    /// Both ends.
    Both,
}

/// Where the sight is free of parallax.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum ParallaxSetting {
    /// Set once, at this distance.
    Fixed {
        /// The parallax-free distance in metres.
        free_at_m: f64,
    },
    /// Adjustable from this distance to infinity.
    Adjustable {
        /// The nearest distance in metres.
        nearest_m: f64,
    },
}

/// How the elevation turret is meant to be used.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Elevation {
    /// Under a cap: set at zeroing, then left.
    Capped,
    /// A ring cut for one load.
    RingForLoad,
    /// A dial with a stop at zero.
    DialZeroStop,
}

/// The grade of glass and coating.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum GlassGrade {
    /// Plain.
    Basic,
    /// Good.
    Good,
    /// The best that is made.
    Best,
}

/// How wide the eyepiece shows the world.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum FieldClass {
    /// 19° apparent (full angle).
    Narrow,
    /// 21° apparent.
    Usual,
    /// 23° apparent.
    Wide,
}

/// A sight as its specification.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Specification {
    /// Lowest magnification; equal to the highest for a fixed power.
    pub magnification_low: f64,
    /// Highest magnification.
    pub magnification_high: f64,
    /// Clear diameter of the objective in mm.
    pub objective_mm: f64,
    /// Outer diameter of the tube in mm.
    pub tube_mm: f64,
    /// Plane of the reticle.
    pub plane: FocalPlane,
    /// Family of the reticle.
    pub reticle: ReticleFamily,
    /// Light in the reticle.
    pub illumination: Illumination,
    /// Parallax setting.
    pub parallax: ParallaxSetting,
    /// Elevation turret.
    pub elevation: Elevation,
    /// Grade of glass.
    pub grade: GlassGrade,
    /// Width of the apparent field.
    pub field: FieldClass,
    /// Least eye relief over the zoom, in mm.
    pub eye_relief_mm: f64,
}

impl Specification {
    /// The ratio of the highest to the lowest magnification, at least 1.
    #[must_use]
    pub fn zoom_ratio(&self) -> f64 {
        self.magnification_high / self.magnification_low
    }
}
