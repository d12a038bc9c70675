//! How high and where along the rifle a sight sits, and what touches if it does not fit.
//!
//! Heights are of the sight's axis over the top of the rail, unless named otherwise; x grows
//! towards the muzzle.

/// What the height of the sight has to clear.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Clearances {
    /// Top of the rail over the axis of the bore, in mm.
    pub rail_over_bore_mm: f64,
    /// Radius of the barrel under the bell, in mm.
    pub barrel_radius_mm: f64,
    /// Outer diameter of the bell, in mm.
    pub bell_outer_mm: f64,
    /// Air between bell and barrel, in mm: 1 at the least, 2 to 3 recommended; 2 to 3 more for
    /// a cap.
    pub clearance_mm: f64,
    /// The rail runs on under the bell.
    pub rail_under_bell: bool,
    /// Height of iron sights over the barrel that stand under the bell, 0 without; 8 to 12 are
    /// usual.
    pub iron_sights_mm: f64,
    /// Forward incline of the base in mrad: brings the bell nearer to the barrel.
    pub incline_mrad: f64,
    /// From where the rail's height is measured to the bell, in mm.
    pub bell_ahead_mm: f64,
    /// Outer diameter of the eyepiece, in mm.
    pub ocular_outer_mm: f64,
    /// Highest point of the lifted bolt handle over the axis of the bore; none: no bolt under
    /// the eyepiece.
    pub bolt_over_bore_mm: Option<f64>,
    /// Outer diameter of the tube, in mm.
    pub tube_mm: f64,
    /// A straight in-line stock: the axis belongs 36 to 43 mm over the rail.
    pub straight_stock: bool,
}

/// What decides the height.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum HeightLimit {
    /// The bell over the barrel or rail.
    Bell,
    /// The bell over iron sights.
    IronSights,
    /// The eyepiece over the bolt handle.
    Bolt,
    /// The lowest ring that is made: 2 mm of metal under the tube.
    Ring,
    /// The straight stock: the cheek cannot go lower.
    StraightStock,
}

/// Metal under the tube in the lowest ring, in mm. Common practice, no source.
const UNDER_TUBE_MM: f64 = 2.0;

/// The axis over the rail for a straight in-line stock in mm. Common practice, no source.
pub const STRAIGHT_STOCK_MM: (f64, f64) = (36.0, 43.0);

/// The heights that a sight needs.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Height {
    /// Least height of the axis over the rail, in mm.
    pub centre_over_rail_mm: f64,
    /// Height of the ring's saddle over the rail, in mm.
    pub saddle_mm: f64,
    /// Height of the axis over the bore, in mm.
    pub over_bore_mm: f64,
    /// What decided.
    pub limit: HeightLimit,
}

impl Clearances {
    /// How far the bell's lowest allowed line lies over the rail's top, in mm.
    fn obstacle_under_bell_mm(&self) -> f64 {
        let incline = 1e-3 * self.incline_mrad * self.bell_ahead_mm;
        if self.rail_under_bell {
            // The rail goes with the incline.
            0.0
        } else {
            self.barrel_radius_mm - self.rail_over_bore_mm + incline
        }
    }

    /// The height for the bell alone: `D_b/2 + c − (h_rail − r_barrel) + i·x`.
    #[must_use]
    pub fn centre_for_bell_mm(&self) -> f64 {
        0.5 * self.bell_outer_mm + self.clearance_mm + self.obstacle_under_bell_mm()
    }

    /// The least heights: the largest of what bell, iron sights, bolt, ring and stock ask for.
    ///
    /// # Source
    /// Geometry; 2 mm under the tube and 36 to 43 mm on straight stocks are common practice,
    /// no source.
    ///
    /// # Example
    /// ```
    /// use scopewright::rifle::mounting::{Clearances, HeightLimit};
    /// let c = Clearances { bell_outer_mm: 63.0, barrel_radius_mm: 9.0, ..Clearances::usual(63.0, 30.0) };
    /// let height = c.least_height();
    /// assert_eq!(height.limit, HeightLimit::Bell);
    /// assert_eq!((height.centre_over_rail_mm, height.saddle_mm, height.over_bore_mm), (18.5, 3.5, 42.5));
    /// ```
    #[must_use]
    pub fn least_height(&self) -> Height {
        let iron = 0.5 * self.bell_outer_mm + self.clearance_mm + self.iron_sights_mm
            - self.rail_over_bore_mm
            + self.barrel_radius_mm
            + 1e-3 * self.incline_mrad * self.bell_ahead_mm;
        let mut all = vec![
            (0.5 * self.tube_mm + UNDER_TUBE_MM, HeightLimit::Ring),
            (self.centre_for_bell_mm(), HeightLimit::Bell),
        ];
        if self.iron_sights_mm > 0.0 {
            all.push((iron, HeightLimit::IronSights));
        }
        if let Some(bolt) = self.bolt_over_bore_mm {
            all.push((
                0.5 * self.ocular_outer_mm + self.clearance_mm - (self.rail_over_bore_mm - bolt),
                HeightLimit::Bolt,
            ));
        }
        if self.straight_stock {
            all.push((STRAIGHT_STOCK_MM.0, HeightLimit::StraightStock));
        }
        let (centre, limit) =
            all.into_iter()
                .fold((f64::NEG_INFINITY, HeightLimit::Ring), |best, next| {
                    if next.0 > best.0 { next } else { best }
                });
        self.height_of(centre, limit)
    }

    fn height_of(&self, centre_mm: f64, limit: HeightLimit) -> Height {
        Height {
            centre_over_rail_mm: centre_mm,
            saddle_mm: centre_mm - 0.5 * self.tube_mm,
            over_bore_mm: self.rail_over_bore_mm + centre_mm,
            limit,
        }
    }

    /// A usual bolt-action rifle: rail 24 mm over the bore, barrel radius 9 mm, 2 mm of air.
    #[must_use]
    pub fn usual(bell_outer_mm: f64, tube_mm: f64) -> Self {
        Self {
            rail_over_bore_mm: 24.0,
            barrel_radius_mm: 9.0,
            bell_outer_mm,
            clearance_mm: 2.0,
            rail_under_bell: false,
            iron_sights_mm: 0.0,
            incline_mrad: 0.0,
            bell_ahead_mm: 150.0,
            ocular_outer_mm: 44.0,
            bolt_over_bore_mm: None,
            tube_mm,
            straight_stock: false,
        }
    }
}

/// Why a sight does not go on the rifle, by how much, and what would.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum MountError {
    /// Ring and tube differ.
    TubeDoesNotMatch {
        /// Bore of the ring in mm.
        ring_mm: f64,
        /// The tube in mm.
        tube_mm: f64,
    },
    /// The bell touches the barrel, the rail or iron sights.
    BellTooLow {
        /// By how much the rings are too low, in mm.
        short_by_mm: f64,
        /// The height of the axis over the rail that would do, in mm.
        needed_centre_mm: f64,
        /// The largest bell that would go with these rings, in mm.
        largest_bell_outer_mm: f64,
        /// What it touches.
        limit: HeightLimit,
    },
    /// The eyepiece is in the way of the bolt.
    OcularTooLow {
        /// By how much, in mm.
        short_by_mm: f64,
        /// The height of the axis over the rail that would do, in mm.
        needed_centre_mm: f64,
        /// The largest eyepiece that would go with these rings, in mm.
        largest_ocular_outer_mm: f64,
    },
    /// On a straight stock the lowest mount is the wrong one.
    TooLowForStraightStock {
        /// By how much, in mm.
        short_by_mm: f64,
        /// The height of the axis over the rail that would do, in mm.
        needed_centre_mm: f64,
    },
    /// The rings cannot both hold the tube, whatever its place.
    RingsDoNotFit {
        /// How much clamping length is missing, in mm.
        short_by_mm: f64,
        /// The distances from ring to ring that would do, in mm: least and most.
        spacing_least_mm: f64,
        /// The largest distance.
        spacing_most_mm: f64,
    },
    /// The rings sit closer than is steady.
    RingsTooClose {
        /// Their distance in mm.
        spacing_mm: f64,
        /// What is wanted at the least, in mm.
        least_mm: f64,
    },
    /// The tube has no straight part long enough for rings and clearance.
    NoRoomToClamp {
        /// How much is missing, in mm.
        short_by_mm: f64,
    },
    /// The eye cannot be placed: too far back or forward even at the end of the movement.
    EyeOutOfReach {
        /// By how much the sight would have to go forward (positive) or back, in mm.
        move_by_mm: f64,
    },
}

impl core::fmt::Display for MountError {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        match self {
            MountError::TubeDoesNotMatch { ring_mm, tube_mm } => write!(
                f,
                "rings of {ring_mm} mm do not hold a tube of {tube_mm} mm; they must match exactly"
            ),
            MountError::BellTooLow {
                short_by_mm,
                needed_centre_mm,
                largest_bell_outer_mm,
                ..
            } => write!(
                f,
                "the bell is {short_by_mm:.1} mm too low; an axis {needed_centre_mm:.1} mm over the rail or a bell of at most {largest_bell_outer_mm:.1} mm would do"
            ),
            MountError::OcularTooLow {
                short_by_mm,
                needed_centre_mm,
                largest_ocular_outer_mm,
            } => write!(
                f,
                "the eyepiece is {short_by_mm:.1} mm too low for the bolt; an axis {needed_centre_mm:.1} mm over the rail or an eyepiece of at most {largest_ocular_outer_mm:.1} mm would do"
            ),
            MountError::TooLowForStraightStock {
                short_by_mm,
                needed_centre_mm,
            } => write!(
                f,
                "the axis is {short_by_mm:.1} mm too low for a straight stock; {needed_centre_mm:.0} mm over the rail would do"
            ),
            MountError::RingsDoNotFit {
                short_by_mm,
                spacing_least_mm,
                spacing_most_mm,
            } => write!(
                f,
                "the two rings miss the clamping lengths by {short_by_mm:.1} mm; rings {spacing_least_mm:.0} to {spacing_most_mm:.0} mm apart would do"
            ),
            MountError::RingsTooClose {
                spacing_mm,
                least_mm,
            } => write!(
                f,
                "rings {spacing_mm:.0} mm apart are too close; {least_mm:.0} mm at the least hold steady"
            ),
            MountError::NoRoomToClamp { short_by_mm } => write!(
                f,
                "the straight part of the tube is {short_by_mm:.1} mm too short for a ring"
            ),
            MountError::EyeOutOfReach { move_by_mm } => write!(
                f,
                "the sight would have to sit {:.0} mm farther {}",
                move_by_mm.abs(),
                if *move_by_mm > 0.0 { "forward" } else { "back" }
            ),
        }
    }
}

impl std::error::Error for MountError {}

/// Whether rings that are there already hold this sight high enough.
///
/// # Errors
/// [`MountError`] for the first thing that does not fit: tube, bell, eyepiece, stock.
pub fn rings_kept(
    clearances: &Clearances,
    ring_bore_mm: f64,
    centre_over_rail_mm: f64,
) -> Result<Height, MountError> {
    if (ring_bore_mm - clearances.tube_mm).abs() > 0.05 {
        return Err(MountError::TubeDoesNotMatch {
            ring_mm: ring_bore_mm,
            tube_mm: clearances.tube_mm,
        });
    }
    let bare = Clearances {
        bolt_over_bore_mm: None,
        straight_stock: false,
        ..*clearances
    };
    let needed = bare.least_height();
    if matches!(needed.limit, HeightLimit::Bell | HeightLimit::IronSights)
        && centre_over_rail_mm < needed.centre_over_rail_mm
    {
        let short_by_mm = needed.centre_over_rail_mm - centre_over_rail_mm;
        return Err(MountError::BellTooLow {
            short_by_mm,
            needed_centre_mm: needed.centre_over_rail_mm,
            largest_bell_outer_mm: clearances.bell_outer_mm - 2.0 * short_by_mm,
            limit: needed.limit,
        });
    }
    if let Some(bolt) = clearances.bolt_over_bore_mm {
        let needed = 0.5 * clearances.ocular_outer_mm + clearances.clearance_mm
            - (clearances.rail_over_bore_mm - bolt);
        if centre_over_rail_mm < needed {
            let short_by_mm = needed - centre_over_rail_mm;
            return Err(MountError::OcularTooLow {
                short_by_mm,
                needed_centre_mm: needed,
                largest_ocular_outer_mm: clearances.ocular_outer_mm - 2.0 * short_by_mm,
            });
        }
    }
    if clearances.straight_stock && centre_over_rail_mm < STRAIGHT_STOCK_MM.0 {
        return Err(MountError::TooLowForStraightStock {
            short_by_mm: STRAIGHT_STOCK_MM.0 - centre_over_rail_mm,
            needed_centre_mm: STRAIGHT_STOCK_MM.0,
        });
    }
    Ok(clearances.height_of(centre_over_rail_mm, needed.limit))
}

/// The tube of a sight along its axis, from the middle of its turret housing, in mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TubeLayout {
    /// Where a ring may clamp in front: from and to, positive to the muzzle.
    pub front_mm: (f64, f64),
    /// Where a ring may clamp behind: from and to, positive to the eye.
    pub rear_mm: (f64, f64),
    /// The end of the eyepiece behind the turret.
    pub ocular_end_mm: f64,
}

/// Free length to keep from bell and turret housing, in mm. Common practice, no source.
const KEEP_CLEAR_MM: f64 = 4.0;

impl TubeLayout {
    /// A typical tube for a sight of `length_mm` with this objective and tube.
    ///
    /// The turret sits 0.47 of the length from the eyepiece, its housing is 44 mm long, the
    /// eyepiece 85 mm, the bell 1.1 times the objective plus 15 mm, none on a straight tube.
    ///
    /// # Accuracy
    /// Common practice, no source: ± 10 mm. Measure the sight before rings are ordered.
    #[must_use]
    pub fn typical(length_mm: f64, objective_mm: f64, tube_mm: f64) -> Self {
        let ocular_end = 0.47 * length_mm;
        let bell = if objective_mm + 4.0 <= tube_mm {
            5.0
        } else {
            15.0 + 1.1 * objective_mm
        };
        let housing = 22.0 + KEEP_CLEAR_MM;
        Self {
            front_mm: (housing, length_mm - ocular_end - bell - KEEP_CLEAR_MM),
            rear_mm: (housing, ocular_end - 85.0 - KEEP_CLEAR_MM),
            ocular_end_mm: ocular_end,
        }
    }
}

/// Two rings on the rifle.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rings {
    /// Middle of the front ring, in mm along the rifle.
    pub front_mm: f64,
    /// Middle of the rear ring.
    pub rear_mm: f64,
    /// Half of a ring's width.
    pub half_width_mm: f64,
}

/// Least and most distance between rings in mm. Common practice, no source.
pub const RING_SPACING_MM: (f64, f64) = (80.0, 150.0);

/// Where the turret's middle may come along the rifle, in mm: from and to.
///
/// `x_t ∈ [max(x_f − a2 + w, x_r + b1 + w), min(x_f − a1 − w, x_r + b2 − w)]`.
///
/// # Errors
/// [`MountError::NoRoomToClamp`], [`MountError::RingsDoNotFit`] with the distances that would
/// do, [`MountError::RingsTooClose`].
pub fn turret_place_mm(tube: &TubeLayout, rings: &Rings) -> Result<(f64, f64), MountError> {
    let w = rings.half_width_mm;
    let (a1, a2) = tube.front_mm;
    let (b1, b2) = tube.rear_mm;
    let room = (a2 - a1).min(b2 - b1);
    if room < 2.0 * w {
        return Err(MountError::NoRoomToClamp {
            short_by_mm: 2.0 * w - room,
        });
    }
    let from = (rings.front_mm - a2 + w).max(rings.rear_mm + b1 + w);
    let to = (rings.front_mm - a1 - w).min(rings.rear_mm + b2 - w);
    let spacing = rings.front_mm - rings.rear_mm;
    if from > to {
        return Err(MountError::RingsDoNotFit {
            short_by_mm: from - to,
            spacing_least_mm: a1 + b1 + 2.0 * w,
            spacing_most_mm: a2 + b2 - 2.0 * w,
        });
    }
    if spacing < RING_SPACING_MM.0 {
        return Err(MountError::RingsTooClose {
            spacing_mm: spacing,
            least_mm: RING_SPACING_MM.0,
        });
    }
    Ok((from, to))
}

/// Where the turret must come so that the eye finds its place: the part of `turret_mm` from
/// which an eye at `eye_mm` along the rifle is within `eye_box_mm` of the eye relief.
///
/// # Errors
/// [`MountError::EyeOutOfReach`] with how far the sight would have to move.
pub fn turret_place_for_eye_mm(
    turret_mm: (f64, f64),
    tube: &TubeLayout,
    eye_mm: f64,
    eye_relief_mm: f64,
    eye_box_mm: f64,
) -> Result<(f64, f64), MountError> {
    // x_turret − ocular end − eye relief = eye.
    let ideal = eye_mm + eye_relief_mm + tube.ocular_end_mm;
    let (from, to) = (ideal - eye_box_mm, ideal + eye_box_mm);
    if from > turret_mm.1 {
        return Err(MountError::EyeOutOfReach {
            move_by_mm: from - turret_mm.1,
        });
    }
    if to < turret_mm.0 {
        return Err(MountError::EyeOutOfReach {
            move_by_mm: to - turret_mm.0,
        });
    }
    Ok((from.max(turret_mm.0), to.min(turret_mm.1)))
}

/// Eye over the cheek's contact that is comfortable, in mm. Common practice, no source.
pub const EYE_OVER_CHEEK_MM: (f64, f64) = (55.0, 70.0);

/// By how much the comb is too low (positive) or too high in mm, for an axis this high over
/// the comb.
///
/// # Source
/// Common practice, no source: each 10 mm of mount height wants 10 mm of comb.
#[must_use]
pub fn comb_short_by_mm(axis_over_comb_mm: f64) -> f64 {
    let (least, most) = EYE_OVER_CHEEK_MM;
    if axis_over_comb_mm > most {
        axis_over_comb_mm - most
    } else if axis_over_comb_mm < least {
        axis_over_comb_mm - least
    } else {
        0.0
    }
}

/// Mass of the sight as a share of the bare rifle's: 0.15 to 0.18 is usual, 0.20 the most.
///
/// # Source
/// Common practice, no source; bench rifles are free of it.
#[must_use]
pub fn mass_share(sight_g: f64, bare_rifle_kg: f64) -> f64 {
    1e-3 * sight_g / bare_rifle_kg
}
