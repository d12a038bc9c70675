//! Reticle families as data: lines, rings, dots and marks in true milliradians.
//!
//! The geometry is exact and the same for computing and for drawing. It is stated at one
//! magnification: in the first plane it holds at every power, in the second it scales as
//! [`super::subtension::true_subtension_mrad`] says. x grows to the right, y upwards, the
//! centre is the point of aim. Lines that run to the edge of the field end at
//! [`BEYOND_FIELD_MRAD`]: clip them to the field.

use super::specification::ReticleFamily;
use super::subtension::{ARCMIN_PER_MRAD, true_width_mrad};

/// Where lines end that run to the edge of the field, in mrad from the centre.
pub const BEYOND_FIELD_MRAD: f64 = 400.0;

/// One piece of a reticle, in mrad.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Shape {
    /// A straight line with square ends.
    Line {
        /// Start, to the right.
        x1_mrad: f64,
        /// Start, upwards.
        y1_mrad: f64,
        /// End, to the right.
        x2_mrad: f64,
        /// End, upwards.
        y2_mrad: f64,
        /// Full width.
        width_mrad: f64,
    },
    /// A circle line.
    Ring {
        /// Radius to the middle of the line.
        radius_mrad: f64,
        /// Full width of the line.
        width_mrad: f64,
    },
    /// A filled disc.
    Dot {
        /// Centre, to the right.
        x_mrad: f64,
        /// Centre, upwards.
        y_mrad: f64,
        /// Diameter.
        diameter_mrad: f64,
    },
}

/// What a piece is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Role {
    /// The line or dot that one aims with.
    Centre,
    /// Heavy outer bars that lead the eye and stay visible at night.
    Bar,
    /// A ring around the centre.
    Ring,
    /// A mark to hold or measure with.
    Mark,
}

/// A piece with its role.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Piece {
    /// Its geometry.
    pub shape: Shape,
    /// What it is for.
    pub role: Role,
    /// Glows when the reticle is lit.
    pub lit: bool,
}

/// A hold mark: an angle below (positive) or above the centre, or to a side.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Mark {
    /// Hold in mrad, positive for a mark below the centre (the shot is held higher).
    pub hold_mrad: f64,
    /// To the right in mrad.
    pub windage_mrad: f64,
}

/// The size of a centre dot.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum DotSize {
    /// 6 mm at 100 m.
    Fine,
    /// 20 mm at 100 m.
    Universal,
    /// 40 mm at 100 m.
    Driven,
}

impl DotSize {
    /// The diameter in mrad.
    #[must_use]
    pub fn diameter_mrad(self) -> f64 {
        match self {
            DotSize::Fine => 0.06,
            DotSize::Universal => 0.20,
            DotSize::Driven => 0.40,
        }
    }
}

/// A reticle: all its pieces, and the figures that decide how it is seen.
#[derive(Clone, Debug, PartialEq)]
pub struct Reticle {
    /// The family it belongs to.
    pub family: ReticleFamily,
    /// The pieces, largest first.
    pub pieces: Vec<Piece>,
    /// Vertical and horizontal hold marks, without the centre.
    pub marks: Vec<Mark>,
    /// Width of the line one aims with, in mrad.
    pub centre_line_mrad: f64,
    /// Diameter of the centre dot in mrad, if there is one.
    pub centre_dot_mrad: Option<f64>,
    /// Width of the heavy bars in mrad, if there are any.
    pub bar_mrad: Option<f64>,
    /// From the centre to the inner end of the bars in mrad.
    pub half_gap_mrad: Option<f64>,
}

/// The unit in which a reticle's marks are spaced.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum MarkUnit {
    /// Milliradians.
    Mrad,
    /// Minutes of angle.
    Moa,
}

/// The unit of the marks of a family; none for plain reticles and marks for one load.
#[must_use]
pub fn mark_unit(family: ReticleFamily) -> Option<MarkUnit> {
    match family {
        ReticleFamily::MradMarks | ReticleFamily::MarkGrid => Some(MarkUnit::Mrad),
        ReticleFamily::MoaMarks => Some(MarkUnit::Moa),
        _ => None,
    }
}

/// Hold marks of a typical .308 Win. load (10.7 g, 823 m/s, zero 100 m) at 200, 300, 400 and
/// 500 m, in mrad: what [`reticle`] uses when no load is stated.
pub const TYPICAL_HOLDS_MRAD: [f64; 4] = [0.64, 1.55, 2.64, 3.91];

/// The reticle of a family with the universal dot and marks for a typical load.
#[must_use]
pub fn reticle(family: ReticleFamily) -> Reticle {
    reticle_with(family, DotSize::Universal, &TYPICAL_HOLDS_MRAD)
}

/// The reticle of a family with a dot of `dot` and, for the family of hold marks, marks at
/// `holds_mrad` below the centre.
///
/// # Source
/// Common practice, no source. In mm at 100 m: fine line 4; thick–thin line 12, bars 40, half
/// gap 150; three-post line 10, bars 60; heavy night line 12, bars 80; dot 6, 20 or 40; ring
/// of radius 250 and line 15; on a line of 3 marks every half mrad with each whole one longer,
/// or every 2 MOA with each tenth MOA longer; bars outside 10 mrad or 40 MOA.
#[must_use]
pub fn reticle_with(family: ReticleFamily, dot: DotSize, holds_mrad: &[f64]) -> Reticle {
    let mut b = Builder::new(family);
    match family {
        ReticleFamily::FineCrosshair => b.cross(0.04),
        ReticleFamily::ThickThin => {
            b.bars(0.40, 1.5, true);
            b.inner_cross(0.12, 1.5);
        }
        ReticleFamily::ThreePost => {
            b.bars(0.60, 1.5, false);
            b.inner_cross(0.10, 1.5);
            b.upper_line(0.10, 1.5);
        }
        ReticleFamily::HeavyNight => {
            b.bars(0.80, 1.5, false);
            b.inner_cross(0.12, 1.5);
            b.upper_line(0.12, 1.5);
        }
        ReticleFamily::Post => {
            // A post to the point of aim and a cross line through it.
            b.line(0.0, -BEYOND_FIELD_MRAD, 0.0, 0.0, 0.40, Role::Bar);
            b.line(
                -BEYOND_FIELD_MRAD,
                0.0,
                BEYOND_FIELD_MRAD,
                0.0,
                0.10,
                Role::Centre,
            );
            b.reticle.bar_mrad = Some(0.40);
            b.reticle.centre_line_mrad = 0.10;
        }
        ReticleFamily::CentreDot => {
            b.bars(0.40, 1.5, true);
            b.inner_cross(0.04, 1.5);
            b.dot(dot.diameter_mrad());
        }
        ReticleFamily::CircleDot => {
            b.bars(0.40, 5.0, false);
            b.ring(2.5, 0.15);
            b.reticle.centre_line_mrad = 0.15;
            b.dot(dot.diameter_mrad());
        }
        ReticleFamily::MradMarks => {
            b.bars(0.40, 10.0, true);
            b.inner_cross(0.03, 10.0);
            b.ticks(0.5, 2);
        }
        ReticleFamily::MoaMarks => {
            b.bars(0.40, 40.0 / ARCMIN_PER_MRAD, true);
            b.inner_cross(0.03, 40.0 / ARCMIN_PER_MRAD);
            b.ticks(2.0 / ARCMIN_PER_MRAD, 5);
        }
        ReticleFamily::HoldMarks => {
            let lowest = holds_mrad.iter().copied().fold(0.0, f64::max);
            let gap = (lowest + 0.5).max(1.5);
            b.bars(0.40, gap, true);
            b.inner_cross(0.06, gap);
            for (row, &hold) in holds_mrad.iter().enumerate() {
                let half = (0.5 - 0.08 * row as f64).max(0.2);
                b.line(-half, -hold, half, -hold, 0.06, Role::Mark);
                b.mark(hold, 0.0);
            }
        }
        ReticleFamily::MarkGrid => {
            // Nothing above: the bars tell the grid from plain marks where both are too fine.
            b.bars(0.40, 10.0, false);
            b.inner_cross(0.03, 10.0);
            b.ticks(0.5, 2);
            for row in 1..=10 {
                let y = f64::from(row);
                let reach = 1 + row / 2;
                for column in 1..=reach {
                    for side in [-1.0, 1.0] {
                        let x = side * f64::from(column);
                        b.mark_dot(x, -y, 0.06);
                        b.mark(y, x);
                    }
                }
            }
        }
    }
    b.reticle
}

/// Puts a reticle together.
struct Builder {
    reticle: Reticle,
}

impl Builder {
    fn new(family: ReticleFamily) -> Self {
        Self {
            reticle: Reticle {
                family,
                pieces: Vec::new(),
                marks: Vec::new(),
                centre_line_mrad: 0.0,
                centre_dot_mrad: None,
                bar_mrad: None,
                half_gap_mrad: None,
            },
        }
    }

    fn push(&mut self, shape: Shape, role: Role, lit: bool) {
        self.reticle.pieces.push(Piece { shape, role, lit });
    }

    fn line(&mut self, x1: f64, y1: f64, x2: f64, y2: f64, width: f64, role: Role) {
        let shape = Shape::Line {
            x1_mrad: x1,
            y1_mrad: y1,
            x2_mrad: x2,
            y2_mrad: y2,
            width_mrad: width,
        };
        self.push(shape, role, role == Role::Centre);
    }

    /// Full lines through the centre to the edge of the field.
    fn cross(&mut self, width: f64) {
        let e = BEYOND_FIELD_MRAD;
        self.line(-e, 0.0, e, 0.0, width, Role::Centre);
        self.line(0.0, -e, 0.0, e, width, Role::Centre);
        self.reticle.centre_line_mrad = width;
    }

    /// Thin lines from the centre to the bars.
    fn inner_cross(&mut self, width: f64, reach: f64) {
        self.line(-reach, 0.0, reach, 0.0, width, Role::Centre);
        self.line(0.0, -reach, 0.0, reach, width, Role::Centre);
        self.reticle.centre_line_mrad = width;
    }

    /// A thin line from the centre part up to the edge of the field.
    fn upper_line(&mut self, width: f64, from: f64) {
        self.line(0.0, from, 0.0, BEYOND_FIELD_MRAD, width, Role::Centre);
    }

    /// Heavy bars left, right, below, and above if `upper`.
    fn bars(&mut self, width: f64, half_gap: f64, upper: bool) {
        let e = BEYOND_FIELD_MRAD;
        self.line(-e, 0.0, -half_gap, 0.0, width, Role::Bar);
        self.line(half_gap, 0.0, e, 0.0, width, Role::Bar);
        self.line(0.0, -e, 0.0, -half_gap, width, Role::Bar);
        if upper {
            self.line(0.0, half_gap, 0.0, e, width, Role::Bar);
        }
        self.reticle.bar_mrad = Some(width);
        self.reticle.half_gap_mrad = Some(half_gap);
    }

    fn ring(&mut self, radius: f64, width: f64) {
        let shape = Shape::Ring {
            radius_mrad: radius,
            width_mrad: width,
        };
        self.push(shape, Role::Ring, true);
    }

    fn dot(&mut self, diameter: f64) {
        let shape = Shape::Dot {
            x_mrad: 0.0,
            y_mrad: 0.0,
            diameter_mrad: diameter,
        };
        self.push(shape, Role::Centre, true);
        // With a dot, the dot is what glows.
        for piece in &mut self.reticle.pieces {
            if matches!(piece.shape, Shape::Line { .. }) {
                piece.lit = false;
            }
        }
        self.reticle.centre_dot_mrad = Some(diameter);
    }

    fn mark_dot(&mut self, x: f64, y: f64, diameter: f64) {
        let shape = Shape::Dot {
            x_mrad: x,
            y_mrad: y,
            diameter_mrad: diameter,
        };
        self.push(shape, Role::Mark, false);
    }

    fn mark(&mut self, hold: f64, windage: f64) {
        self.reticle.marks.push(Mark {
            hold_mrad: hold,
            windage_mrad: windage,
        });
    }

    /// Twenty ticks to each side along both lines, `step` apart, each `long`-th one longer: in
    /// pairs for mrad, in fives for MOA, so that the units are told apart.
    fn ticks(&mut self, step: f64, long: u32) {
        for n in 1..=20 {
            let at = f64::from(n) * step;
            let half_length = if n % long == 0 { 0.4 } else { 0.15 };
            for a in [-at, at] {
                self.line(a, -half_length, a, half_length, 0.03, Role::Mark);
                self.line(-half_length, a, half_length, a, 0.03, Role::Mark);
                self.mark(-a, 0.0);
                self.mark(0.0, a);
            }
        }
    }
}

/// The narrowest line that an eye resolving `mar_arcmin` just uses on a textured field, in
/// mrad at `magnification`: `0.6·MAR/(3.43775·M)`.
///
/// # Source
/// Common practice, no source; a full MAR is comfortable.
#[must_use]
pub fn least_line_mrad(mar_arcmin: f64, magnification: f64) -> f64 {
    0.6 * true_width_mrad(mar_arcmin, magnification)
}
