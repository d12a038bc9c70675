//! Drag functions and ballistic coefficients.

use super::tables;

/// kg/m² in one lb/in².
pub const KG_M2_PER_LB_IN2: f64 = 0.453_592_37 / (0.0254 * 0.0254);

/// Grams in one grain.
pub const G_PER_GRAIN: f64 = 0.064_798_91;

/// A standard drag function.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum DragFunction {
    /// Flat base, blunt ogive: what most printed coefficients refer to.
    G1,
    /// Long boat tail: slender long-range bullets.
    G7,
}

impl DragFunction {
    /// Its table, linear between rows.
    #[must_use]
    pub fn curve(self) -> DragCurve<'static> {
        match self {
            DragFunction::G1 => DragCurve { rows: tables::g1() },
            DragFunction::G7 => DragCurve { rows: tables::g7() },
        }
    }
}

/// A drag coefficient over Mach number, linear between rows, constant beyond the last.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DragCurve<'a> {
    rows: &'a [(f64, f64)],
}

/// Why a table cannot serve as a drag curve.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum BadCurve {
    /// Fewer than two rows.
    TooShort {
        /// How many there are.
        rows: usize,
    },
    /// Mach numbers must rise from row to row, from 0 or more, and be finite.
    MachNotRising {
        /// Row, counted from 0.
        row: usize,
    },
    /// A drag coefficient is negative or not a number.
    BadCoefficient {
        /// Row, counted from 0.
        row: usize,
    },
}

impl core::fmt::Display for BadCurve {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        match self {
            BadCurve::TooShort { rows } => {
                write!(f, "a drag table of {rows} rows; at least 2 are needed")
            }
            BadCurve::MachNotRising { row } => write!(
                f,
                "row {row} of the drag table does not rise in Mach number from the row before"
            ),
            BadCurve::BadCoefficient { row } => write!(
                f,
                "row {row} of the drag table has a coefficient that is negative or no number"
            ),
        }
    }
}

impl std::error::Error for BadCurve {}

impl<'a> DragCurve<'a> {
    /// A curve from rows of Mach number and drag coefficient.
    ///
    /// # Errors
    /// [`BadCurve`] saying which row is wrong.
    pub fn new(rows: &'a [(f64, f64)]) -> Result<Self, BadCurve> {
        if rows.len() < 2 {
            return Err(BadCurve::TooShort { rows: rows.len() });
        }
        let mut before = -1.0;
        for (row, &(mach, cd)) in rows.iter().enumerate() {
            if !(mach > before && mach >= 0.0 && mach.is_finite()) {
                return Err(BadCurve::MachNotRising { row });
            }
            if !(cd >= 0.0 && cd.is_finite()) {
                return Err(BadCurve::BadCoefficient { row });
            }
            before = mach;
        }
        Ok(Self { rows })
    }

    /// The drag coefficient at a Mach number.
    ///
    /// # Example
    /// ```
    /// use scopewright::flight::drag::DragFunction;
    /// let coefficient = DragFunction::G7.curve().coefficient(2.0);
    /// assert!((coefficient - 0.2980).abs() < 1e-12);
    /// ```
    #[must_use]
    pub fn coefficient(&self, mach: f64) -> f64 {
        let segment = self.segment(self.segment_of(mach));
        segment.constant + segment.slope * mach
    }

    /// The index of the segment in which a Mach number lies.
    pub(super) fn segment_of(&self, mach: f64) -> usize {
        self.rows.partition_point(|row| row.0 <= mach)
    }

    /// The straight line of a segment with its two ends.
    pub(super) fn segment(&self, index: usize) -> Segment {
        let last = self.rows.len();
        if index == 0 {
            return Segment::flat(self.rows[0].1, f64::NEG_INFINITY, self.rows[0].0);
        }
        if index >= last {
            let end = self.rows[last - 1];
            return Segment::flat(end.1, end.0, f64::INFINITY);
        }
        let (m1, c1) = self.rows[index - 1];
        let (m2, c2) = self.rows[index];
        let slope = (c2 - c1) / (m2 - m1);
        Segment {
            constant: c1 - slope * m1,
            slope,
            from_mach: m1,
            to_mach: m2,
        }
    }
}

/// One straight piece of a drag curve: `Cd = constant + slope·M`.
#[derive(Clone, Copy, Debug)]
pub(super) struct Segment {
    pub constant: f64,
    pub slope: f64,
    pub from_mach: f64,
    pub to_mach: f64,
}

impl Segment {
    fn flat(constant: f64, from_mach: f64, to_mach: f64) -> Self {
        Self {
            constant,
            slope: 0.0,
            from_mach,
            to_mach,
        }
    }
}

/// The sectional density in lb/in², the mass over the square of the diameter.
#[must_use]
pub fn sectional_density_lb_in2(bullet_g: f64, diameter_mm: f64) -> f64 {
    let kg_m2 = 1e3 * bullet_g / (diameter_mm * diameter_mm);
    kg_m2 / KG_M2_PER_LB_IN2
}

/// The form factor, sectional density over ballistic coefficient: the bullet's drag over the
/// standard's.
#[must_use]
pub fn form_factor(bullet_g: f64, diameter_mm: f64, bc_lb_in2: f64) -> f64 {
    sectional_density_lb_in2(bullet_g, diameter_mm) / bc_lb_in2
}

/// The energy in J of a mass in g at a velocity in m/s.
#[must_use]
pub fn energy_j(bullet_g: f64, velocity_m_s: f64) -> f64 {
    0.5e-3 * bullet_g * velocity_m_s * velocity_m_s
}
