//! What holds the sight: rails by their standard, tubes, and what goes with what.

/// Outer diameters of tubes that are made, in mm. Rings must match exactly: 25.4 is not 26.
pub const TUBES_MM: [f64; 7] = [25.4, 26.0, 30.0, 34.0, 35.0, 36.0, 40.0];

/// Width over the slotted rail's grabbing edges in mm, 0.835 in at most.
///
/// # Source
/// MIL-STD-1913 (1995).
pub const SLOTTED_RAIL_WIDTH_MM: f64 = 21.21;
/// Width at the rail's waist in mm, 0.617 in at most. MIL-STD-1913.
pub const SLOTTED_RAIL_WAIST_MM: f64 = 15.67;
/// Width of a slot in mm, 0.206 in + 0.008. MIL-STD-1913.
pub const SLOT_WIDTH_MM: f64 = 5.23;
/// From slot to slot in mm, 0.394 in. MIL-STD-1913.
pub const SLOT_PITCH_MM: f64 = 10.01;
/// Depth of a slot in mm, 0.118 in + 0.008. MIL-STD-1913.
pub const SLOT_DEPTH_MM: f64 = 3.00;
/// Width of the narrow slots in mm, 0.180 in; their pitch is not standard.
pub const NARROW_SLOT_WIDTH_MM: f64 = 4.57;

/// A kind of base on the rifle.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Rail {
    /// Slotted rail to MIL-STD-1913.
    MilStd1913,
    /// Its metric upgrade, STANAG 4694: grabbed from the top face.
    Stanag4694,
    /// Rail with narrow slots.
    NarrowSlots,
    /// Small dovetail of 9.5 to 13.5 mm: no standard.
    SmallDovetail,
    /// Wide receiver dovetail of 13 to 22 mm: by its maker.
    WideDovetail,
    /// Prism rail under the tube of the sight, 12 to 17 mm, 70°.
    UnderTube,
}

/// What the jaw of a mount is made for, against what is on the rifle.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum RailMatch {
    /// They belong together.
    Fits,
    /// It can be clamped, with play at the cross bar: push it forward before tightening.
    FitsLoosely,
    /// Measure both: there is no standard to go by.
    MeasureBoth,
    /// The cross bar is wider than the slot, or the shapes differ.
    DoesNotFit,
}

/// Whether a mount made for `mount` goes on `rail`.
///
/// # Source
/// MIL-STD-1913 slot 5.23 mm against narrow slots of 4.57 mm: a narrow bar goes into the wide
/// slot, never the reverse. STANAG 4694 keeps the profile of MIL-STD-1913.
#[must_use]
pub fn rail_match(mount: Rail, rail: Rail) -> RailMatch {
    use Rail::{MilStd1913, NarrowSlots, SmallDovetail, Stanag4694, UnderTube, WideDovetail};
    match (mount, rail) {
        (MilStd1913 | Stanag4694, MilStd1913 | Stanag4694) | (NarrowSlots, NarrowSlots) => {
            RailMatch::Fits
        }
        (NarrowSlots, MilStd1913 | Stanag4694) => RailMatch::FitsLoosely,
        (SmallDovetail, SmallDovetail) | (WideDovetail, WideDovetail) | (UnderTube, UnderTube) => {
            RailMatch::MeasureBoth
        }
        _ => RailMatch::DoesNotFit,
    }
}

/// The rail that measures suggest.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum RailGuess {
    /// It is this one.
    Is(Rail),
    /// No rail that is known measures so.
    Unknown,
}

/// The rail by its width over the edges and, if it has slots, their width and pitch, in mm.
///
/// # Source
/// MIL-STD-1913 measures with half a millimetre for a ruler; dovetails common practice, no
/// source.
#[must_use]
pub fn rail_of_measures(width_mm: f64, slot_mm: Option<f64>, pitch_mm: Option<f64>) -> RailGuess {
    if let Some(slot) = slot_mm {
        if (width_mm - SLOTTED_RAIL_WIDTH_MM).abs() > 1.2 {
            return RailGuess::Unknown;
        }
        let even = pitch_mm.is_none_or(|pitch| (pitch - SLOT_PITCH_MM).abs() <= 0.5);
        return if (slot - SLOT_WIDTH_MM).abs() <= 0.3 && even {
            RailGuess::Is(Rail::MilStd1913)
        } else if (slot - NARROW_SLOT_WIDTH_MM).abs() <= 0.36
            || ((slot - SLOT_WIDTH_MM).abs() <= 0.3 && !even)
        {
            RailGuess::Is(Rail::NarrowSlots)
        } else {
            RailGuess::Unknown
        };
    }
    if (9.0..=13.5).contains(&width_mm) {
        RailGuess::Is(Rail::SmallDovetail)
    } else if (13.5..=22.5).contains(&width_mm) {
        RailGuess::Is(Rail::WideDovetail)
    } else {
        RailGuess::Unknown
    }
}

/// The tube in mm that a measured diameter or the length of a paper strip round it means.
///
/// # Example
/// ```
/// use scopewright::rifle::rail::tube_of_diameter_mm;
/// assert_eq!(tube_of_diameter_mm(25.45), Some(25.4));
/// assert_eq!(tube_of_diameter_mm(79.8 / core::f64::consts::PI), Some(25.4));
/// assert_eq!(tube_of_diameter_mm(28.0), None);
/// ```
#[must_use]
pub fn tube_of_diameter_mm(measured_mm: f64) -> Option<f64> {
    TUBES_MM
        .into_iter()
        .find(|tube| (tube - measured_mm).abs() <= 0.25)
}

/// A screw of the mount.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Screw {
    /// Ring caps.
    RingCap,
    /// Base to receiver.
    Base,
    /// Cross bolt in aluminium.
    CrossBoltAluminium,
    /// Cross bolt in steel.
    CrossBoltSteel,
}

/// The usual torque of a screw in N·m, least and most. The maker's figure always wins.
///
/// # Source
/// Common practice, no source; printed values of 20 to 25 in·lb for rings, 25 and 28 for base
/// screws lie inside.
#[must_use]
pub fn usual_torque_nm(screw: Screw) -> (f64, f64) {
    match screw {
        Screw::RingCap => (1.7, 2.8),
        Screw::Base => (2.3, 3.2),
        Screw::CrossBoltAluminium => (3.0, 5.0),
        Screw::CrossBoltSteel => (5.0, 7.3),
    }
}

/// Newton metres in one inch-pound.
pub const NM_PER_INCH_POUND: f64 = 0.112_984_829;
