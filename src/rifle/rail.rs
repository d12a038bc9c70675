//! What holds the sight: rails by their standard, tubes, and what goes with what.

use crate::quantity::{OutOfRange, within};

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

/// A rail as one meets it on a rifle: by its standard, its usual width, or measured.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RailMade {
    /// Stable key.
    pub key: &'static str,
    /// Width over its edges in mm; none: as measured.
    pub width_mm: Option<f64>,
    /// How far a measured width may lie off, mm.
    pub tolerance_mm: f64,
    /// Usual diameter of the receiver it sits on, and its top over that receiver, mm.
    pub usual_mm: (f64, f64),
}

/// The rails that are met.
///
/// # Source
/// Width of the slotted rail: MIL-STD-1913; STANAG 4694 keeps it (from memory). Dovetails have
/// no standard; their widths, and usual receivers and heights, are common practice, no source.
pub const RAILS_MADE: [RailMade; 5] = [
    RailMade {
        key: "mil_std_1913",
        width_mm: Some(SLOTTED_RAIL_WIDTH_MM),
        tolerance_mm: 0.5,
        usual_mm: (34.0, 7.0),
    },
    RailMade {
        key: "stanag_4694",
        width_mm: Some(SLOTTED_RAIL_WIDTH_MM),
        tolerance_mm: 0.5,
        usual_mm: (34.0, 7.0),
    },
    RailMade {
        key: "dovetail_11",
        width_mm: Some(11.0),
        tolerance_mm: 1.5,
        usual_mm: (27.0, 0.0),
    },
    RailMade {
        key: "dovetail_14_5",
        width_mm: Some(14.5),
        tolerance_mm: 1.5,
        usual_mm: (34.0, 0.0),
    },
    RailMade {
        key: "own",
        width_mm: None,
        tolerance_mm: 0.0,
        usual_mm: (34.0, 7.0),
    },
];

impl RailMade {
    /// Whether a measured width is that of this rail; any is, where it is as measured.
    #[must_use]
    pub fn is_as_wide(&self, measured_mm: f64) -> bool {
        self.width_mm
            .is_none_or(|width| (width - measured_mm).abs() <= self.tolerance_mm)
    }
}

/// The top of a rail over the axis of the bore in mm: `D/2 + h` from the diameter of the
/// receiver under it and its height over the receiver.
///
/// # Validity
/// A round receiver, concentric with the bore. A flat top is measured from the bore instead.
///
/// # Errors
/// [`OutOfRange`] for receivers outside 8 to 80 mm and heights outside 0 to 40.
///
/// # Source
/// Geometry.
///
/// # Example
/// ```
/// use scopewright::rifle::rail::rail_over_bore_mm;
/// assert_eq!(rail_over_bore_mm(34.0, 7.0)?, 24.0);
/// assert!(rail_over_bore_mm(340.0, 7.0).is_err());
/// # Ok::<(), scopewright::quantity::OutOfRange>(())
/// ```
pub fn rail_over_bore_mm(receiver_diameter_mm: f64, height_mm: f64) -> Result<f64, OutOfRange> {
    let receiver = within("receiver_diameter_mm", receiver_diameter_mm, 8.0, 80.0)?;
    let height = within("rail_height_mm", height_mm, 0.0, 40.0)?;
    Ok(0.5 * receiver + height)
}

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
