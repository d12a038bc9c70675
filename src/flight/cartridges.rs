//! Standard cartridges with typical loads, to be replaced by the shooter's own figures.

use super::drag::DragFunction;
use super::loads::LOADS;
use super::trajectory::Load;
use crate::plain::{is_letter, small};
use crate::quantity::OutOfRange;

/// What kind of load it is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum LoadKind {
    /// Centre-fire rifle.
    CentreFire,
    /// Rimfire rifle.
    Rimfire,
    /// Air rifle.
    Air,
    /// Shotgun slug.
    Slug,
    /// Muzzle loader.
    MuzzleLoader,
}

impl LoadKind {
    /// Whether barrel length changes the velocity noticeably.
    #[must_use]
    pub fn barrel_matters(self) -> bool {
        matches!(self, LoadKind::CentreFire)
    }
}

/// A typical load. Every figure is typical, none is a maker's.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TypicalLoad {
    /// The key in saved answers, as in `308_win_10_7_g`; never changed once published.
    pub key: &'static str,
    /// The official designation of the cartridge, or a plain description without one.
    pub designation: &'static str,
    /// What kind of load it is.
    pub kind: LoadKind,
    /// Mass of the bullet in g.
    pub bullet_g: f64,
    /// Diameter of the bullet in mm.
    pub bullet_diameter_mm: f64,
    /// Muzzle velocity in m/s from a barrel of `barrel_mm`.
    pub muzzle_velocity_m_s: f64,
    /// The drag function to which the coefficient refers.
    pub drag: DragFunction,
    /// Ballistic coefficient in lb/in².
    pub bc_lb_in2: f64,
    /// Mass of the powder in g; 0 for air.
    pub powder_g: f64,
    /// Length of barrel to which the velocity refers, in mm.
    pub barrel_mm: f64,
}

impl TypicalLoad {
    /// The load as its flight needs it.
    ///
    /// # Errors
    /// None for the loads of this table (a test holds it).
    pub fn load(&self) -> Result<Load, OutOfRange> {
        Load::new(self.drag, self.bc_lb_in2, self.muzzle_velocity_m_s)
    }
}

/// The key of the load that stands in when the cartridge is not known.
pub const ASSUMED_KEY: &str = "308_win_10_7_g";

/// All typical loads, in the order in which they are offered.
#[must_use]
pub fn typical_loads() -> &'static [TypicalLoad] {
    LOADS
}

/// The load with this key.
///
/// # Example
/// ```
/// use scopewright::flight::cartridges::by_key;
/// assert_eq!(by_key("308_win_10_7_g").unwrap().designation, ".308 Win.");
/// assert!(by_key("308").is_none());
/// ```
#[must_use]
pub fn by_key(key: &str) -> Option<&'static TypicalLoad> {
    LOADS.iter().find(|load| load.key == key)
}

/// The loads whose designation contains what was typed, however it was punctuated.
///
/// "308win", ".308 Win." and "308 Win" all find the same; "6,5x55" finds "6,5 x 55 SE".
/// Designations that begin with it come first.
#[must_use]
pub fn matching(typed: &str) -> Vec<&'static TypicalLoad> {
    let wanted = plain(typed);
    if wanted.is_empty() {
        return Vec::new();
    }
    let (mut begins, mut contains) = (Vec::new(), Vec::new());
    for load in LOADS {
        let name = plain(load.designation);
        if name.starts_with(&wanted) {
            begins.push(load);
        } else if name.contains(&wanted) {
            contains.push(load);
        }
    }
    begins.append(&mut contains);
    begins
}

/// Letters and digits only, in lower case; × counts as x.
fn plain(text: &str) -> String {
    text.chars()
        .map(|c| if c == '×' { 'x' } else { c })
        .filter(|c| is_letter(*c) || c.is_ascii_digit())
        .map(small)
        .collect()
}
