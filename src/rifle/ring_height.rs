//! Which ring height: from bell, barrel, rail and tube to the saddle height.
//!
//! The same geometry as [`super::mounting`], asked with four figures that a calliper gives in
//! ten seconds.

use super::mounting::{Clearances, Height, HeightLimit};
use crate::quantity::{OutOfRange, within};

/// Air between bell and barrel, mm: the least, and what is recommended.
///
/// # Source
/// Common practice, no source: 1 mm hard, 2 to 3 recommended.
pub const AIR_MM: (f64, f64) = (1.0, 2.0);
/// What a cap on the objective takes, mm. Common practice, no source.
pub const CAP_MM: f64 = 2.5;

/// What is measured.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Measured {
    /// Outer diameter of the bell, mm.
    pub bell_outer_mm: f64,
    /// Diameter of the barrel under the bell, mm.
    pub barrel_diameter_mm: f64,
    /// Top of the rail over the axis of the bore, mm.
    pub rail_over_bore_mm: f64,
    /// Diameter of the tube, mm.
    pub tube_mm: f64,
    /// The rail runs on under the bell.
    pub rail_under_bell: bool,
    /// A cap sits on the objective.
    pub cap: bool,
    /// A straight in-line stock.
    pub straight_stock: bool,
    /// Height of iron sights over the barrel that stand under the bell, mm; none without.
    pub iron_sights_mm: Option<f64>,
    /// Highest point of the lifted bolt handle over the axis of the bore, mm; none: not asked.
    pub bolt_over_bore_mm: Option<f64>,
}

/// What to ask for.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RingHeight {
    /// The lowest that will do: 1 mm of air.
    pub least: Height,
    /// What is recommended: 2 mm of air.
    pub recommended: Height,
    /// The same in inches, saddle height.
    pub recommended_saddle_in: f64,
    /// What decides at the recommended height.
    pub limit: HeightLimit,
}

/// The ring heights for what was measured.
///
/// `H_c = D_b/2 + c − (h_rail − r_barrel)`, at least half a tube and 2 mm of metal;
/// `H_s = H_c − d_tube/2`.
///
/// # Errors
/// [`OutOfRange`] for bells outside 20 to 90 mm, barrels 8 to 40, rails 5 to 60, tubes 20 to
/// 45, iron sights 0 to 40, bolts −20 to 80.
///
/// # Source
/// Geometry; the air is common practice, no source.
///
/// # Example
/// ```
/// use scopewright::rifle::ring_height::{Measured, ring_height};
/// let rings = ring_height(&Measured {
///     bell_outer_mm: 63.0,
///     barrel_diameter_mm: 18.0,
///     rail_over_bore_mm: 24.0,
///     tube_mm: 30.0,
///     rail_under_bell: false,
///     cap: false,
///     straight_stock: false,
///     iron_sights_mm: None,
///     bolt_over_bore_mm: None,
/// })?;
/// assert_eq!(rings.recommended.saddle_mm, 3.5);
/// # Ok::<(), scopewright::quantity::OutOfRange>(())
/// ```
pub fn ring_height(measured: &Measured) -> Result<RingHeight, OutOfRange> {
    let bell = within("bell_outer_mm", measured.bell_outer_mm, 20.0, 90.0)?;
    let barrel = within("barrel_diameter_mm", measured.barrel_diameter_mm, 8.0, 40.0)?;
    let rail = within("rail_over_bore_mm", measured.rail_over_bore_mm, 5.0, 60.0)?;
    let tube = within("tube_mm", measured.tube_mm, 20.0, 45.0)?;
    let iron = within(
        "iron_sights_mm",
        measured.iron_sights_mm.unwrap_or(0.0),
        0.0,
        40.0,
    )?;
    let bolt = measured
        .bolt_over_bore_mm
        .map(|bolt| within("bolt_over_bore_mm", bolt, -20.0, 80.0))
        .transpose()?;
    let height = |air_mm: f64| {
        Clearances {
            rail_over_bore_mm: rail,
            barrel_radius_mm: 0.5 * barrel,
            clearance_mm: air_mm + if measured.cap { CAP_MM } else { 0.0 },
            rail_under_bell: measured.rail_under_bell,
            straight_stock: measured.straight_stock,
            iron_sights_mm: iron,
            bolt_over_bore_mm: bolt,
            ..Clearances::usual(bell, tube)
        }
        .least_height()
    };
    let recommended = height(AIR_MM.1);
    Ok(RingHeight {
        least: height(AIR_MM.0),
        recommended,
        recommended_saddle_in: recommended.saddle_mm / 25.4,
        limit: recommended.limit,
    })
}
