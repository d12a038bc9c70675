//! What is shot at: sizes, aiming circles, speeds, coats.
//!
//! # Source
//! Body sizes: adult, typical, from memory of common field guides. Aiming circles (diameters),
//! target details and usual ranges: common practice, no source; one handbook text gives 6 in
//! (15 cm) for roe and 8 in for deer in general. Speeds: a typical canter in the field, not the
//! top speed: assumption. Dimensions of targets: rule books, from memory, unless marked "read".
//! The rule book of the discipline decides, also on whether a telescope is allowed at all.

use super::answers::{Manner, Ranges};

/// The coat (or plumage) that has to stand out from its ground.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Coat {
    /// Red-brown the year round, as a fox.
    RedBrown,
    /// Red-brown in summer, grey-brown in winter, as roe and red deer.
    RedBrownSummerGreyBrownWinter,
    /// Grey-brown.
    GreyBrown,
    /// Dark brown.
    DarkBrown,
    /// Very dark.
    VeryDark,
    /// Black.
    Black,
    /// Grey.
    Grey,
    /// Pale.
    Pale,
    /// Pale or grey-brown, by animal.
    PaleOrGreyBrown,
    /// Pale or dark brown, by animal.
    PaleOrDarkBrown,
}

/// What has to be told of an animal before a shot where the law asks for it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Marks {
    /// Antlers or horns: points of 20 to 25 mm; and whether it is a young one or a mother.
    AntlerOrHorn,
    /// No antlers: whether it is a young one, or a mother.
    YoungOnly,
    /// The shape of the body is enough.
    Shape,
}

/// An animal.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Animal {
    /// Stable key, as saved.
    pub key: &'static str,
    /// Height at the shoulder in mm, where it has one.
    pub shoulder_height_mm: Option<f64>,
    /// Length of head and body in mm.
    pub body_length_mm: f64,
    /// Depth of the trunk in mm.
    pub trunk_depth_mm: f64,
    /// Diameter of the circle that has to be hit, in mm.
    pub aiming_circle_mm: f64,
    /// Speed when it moves, in m/s.
    pub run_m_s: f64,
    /// The coat.
    pub coat: Coat,
    /// What may have to be told before a shot.
    pub marks: Marks,
}

/// Whether the discipline of a target lets a telescope in at all.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Telescope {
    /// Usual; the rule book may limit it.
    Usual,
    /// Forbidden in the international discipline; a club may allow it.
    OftenForbidden,
}

/// A target that is not alive.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Target {
    /// Stable key, as saved.
    pub key: &'static str,
    /// Diameter or width of the visible figure in mm, if it differs from what is hit.
    pub outer_mm: Option<f64>,
    /// Diameter of what one tries to hit, in mm.
    pub scoring_mm: f64,
    /// Detail one wants to see on it in mm: a hole, a ring's edge, the mark of a hit.
    pub detail_mm: f64,
    /// Nearest usual range in m.
    pub nearest_m: f64,
    /// Farthest usual range in m.
    pub farthest_m: f64,
    /// Speed in m/s; 0 for a target that stands still.
    pub run_m_s: f64,
    /// Whether a telescope is allowed.
    pub telescope: Telescope,
    /// The usual manner of shooting at it.
    pub manner: Manner,
}

/// An animal or a target.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum What {
    /// An animal.
    Animal(&'static Animal),
    /// A target.
    Target(&'static Target),
}

impl What {
    /// The row with this key.
    #[must_use]
    pub fn from_key(key: &str) -> Option<Self> {
        ANIMALS
            .iter()
            .find(|row| row.key == key)
            .map(What::Animal)
            .or_else(|| TARGETS.iter().find(|row| row.key == key).map(What::Target))
    }

    /// All animals, then all targets, in the order in which they are offered.
    pub fn all() -> impl Iterator<Item = Self> {
        ANIMALS
            .iter()
            .map(What::Animal)
            .chain(TARGETS.iter().map(What::Target))
    }

    /// The stable key.
    #[must_use]
    pub fn key(self) -> &'static str {
        match self {
            What::Animal(row) => row.key,
            What::Target(row) => row.key,
        }
    }

    /// Diameter in mm of the circle that has to be hit.
    #[must_use]
    pub fn aiming_circle_mm(self) -> f64 {
        match self {
            What::Animal(row) => row.aiming_circle_mm,
            What::Target(row) => row.scoring_mm,
        }
    }

    /// Length of the body, or width of the whole figure, in mm.
    #[must_use]
    pub fn length_mm(self) -> f64 {
        match self {
            What::Animal(row) => row.body_length_mm,
            What::Target(row) => row.outer_mm.unwrap_or(row.scoring_mm),
        }
    }

    /// Height at the shoulder in mm; 0.6 of the length for an animal without one, the whole
    /// figure for a target.
    #[must_use]
    pub fn height_mm(self) -> f64 {
        match self {
            What::Animal(row) => row.shoulder_height_mm.unwrap_or(0.6 * row.body_length_mm),
            What::Target(_) => self.length_mm(),
        }
    }

    /// Speed in m/s when it moves.
    #[must_use]
    pub fn run_m_s(self) -> f64 {
        match self {
            What::Animal(row) => row.run_m_s,
            What::Target(row) => row.run_m_s,
        }
    }

    /// Whether it is a target.
    #[must_use]
    pub fn is_target(self) -> bool {
        matches!(self, What::Target(_))
    }

    /// Usual ranges in m where the thing itself decides them and not the manner of shooting.
    #[must_use]
    pub fn usual_ranges(self) -> Option<Ranges> {
        match self {
            What::Animal(_) => None,
            What::Target(row) => Some(Ranges {
                nearest_m: row.nearest_m,
                usual_m: (row.nearest_m * row.farthest_m).sqrt(),
                farthest_m: row.farthest_m,
            }),
        }
    }
}

#[allow(clippy::too_many_arguments, reason = "one row of a table")]
const fn animal(
    key: &'static str,
    shoulder_cm: f64,
    length_cm: f64,
    trunk_cm: f64,
    circle_cm: f64,
    run_m_s: f64,
    coat: Coat,
    marks: Marks,
) -> Animal {
    Animal {
        key,
        shoulder_height_mm: if shoulder_cm > 0.0 {
            Some(shoulder_cm * 10.0)
        } else {
            None
        },
        body_length_mm: length_cm * 10.0,
        trunk_depth_mm: trunk_cm * 10.0,
        aiming_circle_mm: circle_cm * 10.0,
        run_m_s,
        coat,
        marks,
    }
}

use Coat as C;
use Marks as M;

/// All animals: key, shoulder, head and body, trunk, circle (cm; shoulder 0: none), m/s.
#[rustfmt::skip]
pub static ANIMALS: [Animal; 29] = [
    animal("roe_deer", 70.0, 115.0, 27.0, 13.0, 8.0, C::RedBrownSummerGreyBrownWinter, M::AntlerOrHorn),
    animal("wild_boar", 78.0, 135.0, 42.0, 18.0, 10.0, C::VeryDark, M::YoungOnly),
    animal("red_fox", 38.0, 67.0, 17.0, 9.0, 9.0, C::RedBrown, M::Shape),
    animal("red_deer", 118.0, 190.0, 52.0, 25.0, 11.0, C::RedBrownSummerGreyBrownWinter, M::AntlerOrHorn),
    animal("fallow_deer", 88.0, 145.0, 38.0, 18.0, 10.0, C::PaleOrGreyBrown, M::AntlerOrHorn),
    animal("sika_deer", 85.0, 140.0, 37.0, 18.0, 10.0, C::DarkBrown, M::AntlerOrHorn),
    animal("chamois", 76.0, 120.0, 32.0, 15.0, 9.0, C::DarkBrown, M::AntlerOrHorn),
    animal("mouflon", 72.0, 125.0, 33.0, 15.0, 9.0, C::DarkBrown, M::AntlerOrHorn),
    animal("ibex", 85.0, 135.0, 40.0, 20.0, 7.0, C::GreyBrown, M::AntlerOrHorn),
    animal("muntjac", 50.0, 90.0, 22.0, 10.0, 7.0, C::RedBrown, M::AntlerOrHorn),
    animal("white_tailed_deer", 90.0, 160.0, 40.0, 18.0, 10.0, C::GreyBrown, M::AntlerOrHorn),
    animal("wapiti", 140.0, 220.0, 62.0, 30.0, 11.0, C::PaleOrDarkBrown, M::AntlerOrHorn),
    animal("moose", 185.0, 260.0, 85.0, 34.0, 9.0, C::VeryDark, M::AntlerOrHorn),
    animal("pronghorn", 88.0, 140.0, 38.0, 18.0, 13.0, C::RedBrown, M::AntlerOrHorn),
    animal("plains_antelope", 130.0, 210.0, 60.0, 26.0, 12.0, C::RedBrown, M::AntlerOrHorn),
    animal("dangerous_game", 155.0, 280.0, 90.0, 35.0, 9.0, C::Black, M::YoungOnly),
    animal("black_bear", 90.0, 155.0, 50.0, 22.0, 9.0, C::Black, M::YoungOnly),
    animal("coyote_or_jackal", 52.0, 85.0, 22.0, 12.0, 10.0, C::GreyBrown, M::Shape),
    animal("ground_game", 28.0, 65.0, 22.0, 9.0, 5.0, C::Grey, M::Shape),
    animal("marmot_or_groundhog", 22.0, 52.0, 18.0, 7.0, 3.0, C::GreyBrown, M::Shape),
    animal("brown_hare", 27.0, 58.0, 15.0, 6.0, 14.0, C::GreyBrown, M::Shape),
    animal("rabbit", 19.0, 42.0, 13.0, 4.0, 8.0, C::GreyBrown, M::Shape),
    animal("prairie_dog", 0.0, 33.0, 12.0, 5.0, 4.0, C::Pale, M::Shape),
    animal("ground_squirrel_or_rat", 10.0, 21.0, 8.0, 3.0, 3.0, C::GreyBrown, M::Shape),
    animal("tree_squirrel", 0.0, 24.0, 9.0, 3.0, 5.0, C::Grey, M::Shape),
    animal("crow", 0.0, 46.0, 15.0, 5.0, 12.0, C::Black, M::Shape),
    animal("wood_pigeon", 0.0, 41.0, 14.0, 5.0, 15.0, C::Grey, M::Shape),
    animal("wild_turkey", 0.0, 90.0, 28.0, 8.0, 5.0, C::VeryDark, M::Shape),
    animal("capercaillie", 0.0, 80.0, 25.0, 8.0, 8.0, C::VeryDark, M::Shape),
];

#[allow(clippy::too_many_arguments, reason = "one row of a table")]
const fn target(
    key: &'static str,
    outer_mm: f64,
    scoring_mm: f64,
    detail_mm: f64,
    nearest_m: f64,
    farthest_m: f64,
    run_m_s: f64,
    telescope: Telescope,
    manner: Manner,
) -> Target {
    Target {
        key,
        outer_mm: if outer_mm > 0.0 { Some(outer_mm) } else { None },
        scoring_mm,
        detail_mm,
        nearest_m,
        farthest_m,
        run_m_s,
        telescope,
        manner,
    }
}

use Telescope::{OftenForbidden, Usual};

/// All targets: key, whole figure, scoring, detail (mm; figure 0: as scoring), ranges (m), m/s.
///
/// Field target zones, biathlon and the running moose (23 m in 4.3 s) were read in rule texts,
/// the others are from memory; detail: a hole of the usual calibre, the splash of a hit on
/// painted steel 25 mm, else a quarter of what is hit (assumption).
#[rustfmt::skip]
pub static TARGETS: [Target; 18] = [
    target("paper_50_m", 154.4, 10.4, 5.6, 50.0, 50.0, 0.0, Usual, Manner::Bench),
    target("paper_100_m", 500.0, 50.0, 7.0, 100.0, 100.0, 0.0, Usual, Manner::Bench),
    target("paper_300_m", 1000.0, 100.0, 25.0, 300.0, 300.0, 0.0, OftenForbidden, Manner::Bench),
    target("air_rifle_10_m", 45.5, 0.5, 4.5, 10.0, 10.0, 0.0, OftenForbidden, Manner::StandingFree),
    target("field_target_15_mm", 200.0, 15.0, 4.0, 12.0, 23.0, 0.0, Usual, Manner::Kneeling),
    target("field_target_25_mm", 200.0, 25.0, 6.0, 7.0, 37.0, 0.0, Usual, Manner::Kneeling),
    target("field_target_40_mm", 200.0, 40.0, 10.0, 7.0, 42.0, 0.0, Usual, Manner::Kneeling),
    target("biathlon_prone", 115.0, 45.0, 11.0, 50.0, 50.0, 0.0, OftenForbidden, Manner::PronePack),
    target("biathlon_standing", 115.0, 115.0, 29.0, 50.0, 50.0, 0.0, OftenForbidden, Manner::StandingFree),
    target("running_boar_50_m", 366.0, 60.0, 15.0, 50.0, 50.0, 4.0, Usual, Manner::Driven),
    target("running_moose_80_m", 0.0, 450.0, 110.0, 80.0, 80.0, 5.3, Usual, Manner::Driven),
    target("steel_disc_20_cm", 200.0, 200.0, 25.0, 100.0, 400.0, 0.0, Usual, Manner::PronePack),
    target("steel_plate_30_by_45_cm", 450.0, 300.0, 25.0, 300.0, 800.0, 0.0, Usual, Manner::Bench),
    target("steel_plate_60_by_60_cm", 600.0, 600.0, 25.0, 600.0, 1200.0, 0.0, Usual, Manner::Bench),
    target("silhouette_chicken", 0.0, 280.0, 70.0, 200.0, 200.0, 0.0, Usual, Manner::StandingFree),
    target("silhouette_ram", 0.0, 690.0, 170.0, 500.0, 500.0, 0.0, Usual, Manner::StandingFree),
    target("rimfire_silhouette_chicken", 0.0, 56.0, 14.0, 40.0, 40.0, 0.0, Usual, Manner::StandingFree),
    target("rimfire_silhouette_ram", 0.0, 138.0, 35.0, 100.0, 100.0, 0.0, Usual, Manner::StandingFree),
];
