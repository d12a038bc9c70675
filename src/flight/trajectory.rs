//! The path of a point mass through the air, with dense output.
//!
//! Frame: x along the line of sight from the muzzle, y perpendicular to it in the vertical
//! plane and upwards, z to the right. The sight line lies a sight height above y = 0. On a
//! slope the frame tilts with the line of sight and gravity is split, so the result is exact.

use super::atmosphere::{Air, G0_M_S2, SEA_LEVEL};
use super::drag::{DragCurve, DragFunction, KG_M2_PER_LB_IN2, Segment};
use super::error::FlightError;
use crate::quantity::{OutOfRange, within};

/// The farthest distance that is computed, in metres.
pub const FARTHEST_M: f64 = 5000.0;

/// A load as its flight needs it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Load {
    drag: DragFunction,
    bc_lb_in2: f64,
    muzzle_velocity_m_s: f64,
}

impl Load {
    /// A load by drag function, ballistic coefficient in lb/in² and muzzle velocity in m/s.
    ///
    /// # Errors
    /// [`OutOfRange`] for coefficients outside 0.003 to 2 or velocities outside 30 to 1800.
    ///
    /// # Example
    /// ```
    /// use scopewright::flight::drag::DragFunction;
    /// use scopewright::flight::trajectory::Load;
    /// assert!(Load::new(DragFunction::G1, 0.43, 823.0).is_ok());
    /// // Feet per second read as metres per second:
    /// assert!(Load::new(DragFunction::G1, 0.43, 2700.0).is_err());
    /// ```
    pub fn new(
        drag: DragFunction,
        bc_lb_in2: f64,
        muzzle_velocity_m_s: f64,
    ) -> Result<Self, OutOfRange> {
        Ok(Self {
            drag,
            bc_lb_in2: within("bc_lb_in2", bc_lb_in2, 0.003, 2.0)?,
            muzzle_velocity_m_s: within("muzzle_velocity_m_s", muzzle_velocity_m_s, 30.0, 1800.0)?,
        })
    }

    /// The drag function.
    #[must_use]
    pub fn drag(&self) -> DragFunction {
        self.drag
    }

    /// The ballistic coefficient in lb/in².
    #[must_use]
    pub fn bc_lb_in2(&self) -> f64 {
        self.bc_lb_in2
    }

    /// The muzzle velocity in m/s.
    #[must_use]
    pub fn muzzle_velocity_m_s(&self) -> f64 {
        self.muzzle_velocity_m_s
    }
}

/// The air, the wind and the slope of a shot.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Conditions {
    /// The air, taken as the same along the whole path.
    pub air: Air,
    /// Wind from the left in m/s: it drifts the bullet to the right.
    pub wind_from_left_m_s: f64,
    /// Wind from behind in m/s, level even on a slope.
    pub wind_from_behind_m_s: f64,
    /// The line of sight above the horizontal in degrees; negative downhill.
    pub slope_deg: f64,
}

impl Conditions {
    /// Standard air at sea level, no wind, on the level.
    #[must_use]
    pub fn standard() -> Self {
        Self::still(SEA_LEVEL)
    }

    /// No wind, on the level, in this air.
    #[must_use]
    pub fn still(air: Air) -> Self {
        Self {
            air,
            wind_from_left_m_s: 0.0,
            wind_from_behind_m_s: 0.0,
            slope_deg: 0.0,
        }
    }

    /// The same with a line of sight `slope_deg` above the horizontal.
    #[must_use]
    pub fn on_slope(self, slope_deg: f64) -> Self {
        Self { slope_deg, ..self }
    }

    /// The same with wind from the left.
    #[must_use]
    pub fn with_wind_from_left(self, wind_from_left_m_s: f64) -> Self {
        Self {
            wind_from_left_m_s,
            ..self
        }
    }
}

/// A reading of a trajectory.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Point {
    /// Distance along the line of sight in m.
    pub range_m: f64,
    /// Above the axis through the muzzle parallel to the line of sight, in m.
    pub height_m: f64,
    /// To the right by the wind, in m.
    pub drift_m: f64,
    /// Time of flight in s.
    pub time_s: f64,
    /// Speed over the ground in m/s.
    pub velocity_m_s: f64,
    /// Rise over run against the line of sight.
    pub slope: f64,
}

/// A point of the integration with everything that dense output needs.
#[derive(Clone, Copy, Debug)]
struct Node {
    x: f64,
    y: f64,
    t: f64,
    vx: f64,
    vy: f64,
    /// d(vx)/dx and d(vy)/dx.
    dvx: f64,
    dvy: f64,
}

impl Node {
    /// dy/dx.
    fn slope(&self) -> f64 {
        self.vy / self.vx
    }

    /// d²y/dx².
    fn bend(&self) -> f64 {
        (self.dvy - self.dvx * self.vy / self.vx) / self.vx
    }

    /// dt/dx.
    fn pace(&self) -> f64 {
        1.0 / self.vx
    }

    /// d²t/dx².
    fn slowing(&self) -> f64 {
        -self.dvx / (self.vx * self.vx)
    }
}

/// A trajectory with dense output: every reading in between comes from Hermite polynomials on
/// the integrator's own steps, quintic for height and time, cubic for velocity.
#[derive(Clone, Debug)]
pub struct Trajectory {
    nodes: Vec<Node>,
    wind_z: f64,
    wind_level: f64,
    /// Lateral over level forward speed relative to the air, constant along the path.
    lateral: f64,
    slope_cos: f64,
    slope_sin: f64,
}

/// The equation of motion with the distance as its variable.
struct Motion {
    /// ρπ/(8 BC) in 1/m.
    kappa: f64,
    inverse_sound: f64,
    gravity_x: f64,
    gravity_y: f64,
    wind_x: f64,
    wind_y: f64,
    /// Lateral share times cosine and sine of the slope.
    lateral_x: f64,
    lateral_y: f64,
}

impl Motion {
    /// Speed relative to the air.
    fn speed(&self, vx: f64, vy: f64) -> f64 {
        let (forward, upward) = (vx - self.wind_x, vy - self.wind_y);
        let sideways = self.lateral_x * forward - self.lateral_y * upward;
        (forward * forward + upward * upward + sideways * sideways).sqrt()
    }

    /// d(vx)/dx and d(vy)/dx.
    #[inline]
    fn rates(&self, segment: &Segment, vx: f64, vy: f64) -> (f64, f64, f64) {
        let w = self.speed(vx, vy);
        let q = self.kappa * w * (segment.constant + segment.slope * w * self.inverse_sound);
        let per_m = 1.0 / vx;
        (
            (self.gravity_x - q * (vx - self.wind_x)) * per_m,
            (self.gravity_y - q * (vy - self.wind_y)) * per_m,
            per_m,
        )
    }
}

/// Flies a load from an elevation of the bore against the line of sight to `to_m`.
///
/// `x″ = −a_D·v_x/v`, `a_D = ρ·v²·Cd(M)·π/(8·BC)`, v relative to the air, BC in kg/m².
///
/// # Validity
/// A point mass in uniform air: no lift, spin drift or turning of the Earth. Wind without a
/// vertical part. The change of air along a steep slope is neglected.
///
/// # Errors
/// [`FlightError::FallsShort`] with the distance that is reached, [`FlightError::OutOfRange`].
///
/// # Accuracy
/// 0.01 mm and 0.001 m/s to 1000 m against an independent adaptive integration
/// (`tests/reference_flight.rs`); the coefficient is what limits, ± 5 % at best.
pub fn trajectory(
    load: &Load,
    conditions: &Conditions,
    elevation_mrad: f64,
    to_m: f64,
) -> Result<Trajectory, FlightError> {
    trajectory_with_curve(
        load.drag.curve(),
        load.bc_lb_in2,
        load.muzzle_velocity_m_s,
        conditions,
        elevation_mrad,
        to_m,
    )
}

/// As [`trajectory`], with any drag curve.
///
/// # Errors
/// As [`trajectory`].
pub fn trajectory_with_curve(
    curve: DragCurve<'_>,
    bc_lb_in2: f64,
    muzzle_velocity_m_s: f64,
    conditions: &Conditions,
    elevation_mrad: f64,
    to_m: f64,
) -> Result<Trajectory, FlightError> {
    within("range_m", to_m, 0.0, FARTHEST_M)?;
    within("elevation_mrad", elevation_mrad, -300.0, 300.0)?;
    within("slope_deg", conditions.slope_deg, -75.0, 75.0)?;
    within("wind_m_s", conditions.wind_from_left_m_s, -50.0, 50.0)?;
    within("wind_m_s", conditions.wind_from_behind_m_s, -50.0, 50.0)?;
    within("bc_lb_in2", bc_lb_in2, 0.003, 2.0)?;
    within("muzzle_velocity_m_s", muzzle_velocity_m_s, 30.0, 1800.0)?;
    let flown = fly(
        curve,
        bc_lb_in2,
        muzzle_velocity_m_s,
        conditions,
        1e-3 * elevation_mrad,
        to_m,
    );
    if flown.reach_m() < to_m {
        Err(FlightError::FallsShort {
            asked_m: to_m,
            reach_m: flown.reach_m(),
        })
    } else {
        Ok(flown)
    }
}

/// The largest share of its speed that the bullet may lose in one step.
const LOSS_PER_STEP: f64 = 0.04;
/// The largest change of drag with speed that one step may span, as steepness times length.
const CHANGE_PER_STEP: f64 = 0.25;
/// How near to a row of the table a step must end to count as there, in Mach.
const AT_ROW: f64 = 1e-6;

/// Integrates to `to_m` or to where the bullet falls steeply; figures are checked before.
///
/// Fourth-order Runge–Kutta in distance. Steps end where the Mach number meets a row of the
/// drag table, so that no step crosses a kink of the curve, and the drag inside a step is
/// one straight line without a look-up.
pub(super) fn fly(
    curve: DragCurve<'_>,
    bc_lb_in2: f64,
    muzzle_velocity_m_s: f64,
    conditions: &Conditions,
    elevation_rad: f64,
    to_m: f64,
) -> Trajectory {
    let slope_rad = conditions.slope_deg * core::f64::consts::PI / 180.0;
    let (mut vx, mut vy) = (
        muzzle_velocity_m_s * libm::cos(elevation_rad),
        muzzle_velocity_m_s * libm::sin(elevation_rad),
    );
    let (slope_sin, slope_cos) = (libm::sin(slope_rad), libm::cos(slope_rad));
    let wind_level = conditions.wind_from_behind_m_s;
    let wind_z = conditions.wind_from_left_m_s;
    // Level forward and lateral speed relative to the air shrink alike, whatever the drag
    // (no gravity acts on either): their ratio is constant.
    let lateral = wind_z / (vx * slope_cos - vy * slope_sin - wind_level);
    let motion = Motion {
        kappa: conditions.air.density_kg_m3 * core::f64::consts::PI
            / (8.0 * bc_lb_in2 * KG_M2_PER_LB_IN2),
        inverse_sound: 1.0 / conditions.air.speed_of_sound_m_s,
        gravity_x: -G0_M_S2 * slope_sin,
        gravity_y: -G0_M_S2 * slope_cos,
        wind_x: wind_level * slope_cos,
        wind_y: -wind_level * slope_sin,
        lateral_x: lateral * slope_cos,
        lateral_y: lateral * slope_sin,
    };
    let mut index = curve.segment_of(motion.speed(vx, vy) * motion.inverse_sound);
    let mut segment = curve.segment(index);
    let (mut x, mut y, mut t) = (0.0, 0.0, 0.0);
    let mut nodes = Vec::with_capacity(96);
    loop {
        let (a1, b1, s1) = motion.rates(&segment, vx, vy);
        nodes.push(Node {
            x,
            y,
            t,
            vx,
            vy,
            dvx: a1,
            dvy: b1,
        });
        let left = to_m - x;
        if left <= 0.0 || vx < 5.0 || vy.abs() > 3.0 * vx || nodes.len() > 20_000 {
            break;
        }
        let h = step_m(&motion, &segment, vx, vy, a1, b1).min(left);
        let half = 0.5 * h;
        let (vx2, vy2) = (vx + half * a1, vy + half * b1);
        let (a2, b2, s2) = motion.rates(&segment, vx2, vy2);
        let (vx3, vy3) = (vx + half * a2, vy + half * b2);
        let (a3, b3, s3) = motion.rates(&segment, vx3, vy3);
        let (vx4, vy4) = (vx + h * a3, vy + h * b3);
        let (a4, b4, s4) = motion.rates(&segment, vx4, vy4);
        let sixth = h / 6.0;
        y += sixth * (vy * s1 + 2.0 * (vy2 * s2 + vy3 * s3) + vy4 * s4);
        t += sixth * (s1 + 2.0 * (s2 + s3) + s4);
        vx += sixth * (a1 + 2.0 * (a2 + a3) + a4);
        vy += sixth * (b1 + 2.0 * (b2 + b3) + b4);
        x = if h >= left { to_m } else { x + h };
        let mach = motion.speed(vx, vy) * motion.inverse_sound;
        while index > 0 && mach <= segment.from_mach + AT_ROW {
            index -= 1;
            segment = curve.segment(index);
        }
        while mach > segment.to_mach + AT_ROW {
            index += 1;
            segment = curve.segment(index);
        }
    }
    Trajectory {
        nodes,
        wind_z,
        wind_level,
        lateral,
        slope_cos,
        slope_sin,
    }
}

/// The length of the next step in m: to the next row of the table, no more than
/// [`LOSS_PER_STEP`] and [`CHANGE_PER_STEP`], and short against the curvature of the path.
fn step_m(motion: &Motion, segment: &Segment, vx: f64, vy: f64, a: f64, b: f64) -> f64 {
    let w = motion.speed(vx, vy);
    let (forward, upward) = (vx - motion.wind_x, vy - motion.wind_y);
    let sideways = motion.lateral_x * forward - motion.lateral_y * upward;
    let rate =
        (forward * a + upward * b + sideways * (motion.lateral_x * a - motion.lateral_y * b)) / w;
    let by_fall = 0.1 * vx * vx / G0_M_S2;
    // Drag falls as the speed squared within a segment; what gravity adds is kept.
    let drag = |w: f64| {
        motion.kappa * w * w * (segment.constant + segment.slope * w * motion.inverse_sound) / vx
    };
    // By drag alone: downhill gravity may cancel it, and the net change says nothing then.
    let by_loss = LOSS_PER_STEP * w / drag(w).max(1e-12);
    // How fast the drag itself changes with speed, steep near the speed of sound.
    let steepness = motion.kappa * w / vx
        * (2.0 * segment.constant + 3.0 * segment.slope * w * motion.inverse_sound);
    let by_steepness = CHANGE_PER_STEP / steepness.abs().max(1e-12);
    let other = rate + drag(w);
    let row = if rate < 0.0 {
        segment.from_mach
    } else {
        segment.to_mach
    };
    let by_row = if row.is_finite() {
        let target = row / motion.inverse_sound;
        let change = target - w;
        // The forward speed falls with the speed relative to the air.
        let at = |speed: f64| other - drag(speed) * vx / (vx + (speed - w));
        let (middle, end) = (at(0.5 * (w + target)), at(target));
        if rate * middle > 0.0 && rate * end > 0.0 && change * rate > 0.0 {
            change / 6.0 * (1.0 / rate + 4.0 / middle + 1.0 / end)
        } else {
            f64::INFINITY
        }
    } else {
        f64::INFINITY
    };
    // A step that would end a hair before the row, or not move at all, goes on.
    by_row.min(by_loss).min(by_steepness).min(by_fall).max(1e-4)
}

impl Trajectory {
    /// How far it goes, in metres.
    #[must_use]
    pub fn reach_m(&self) -> f64 {
        self.nodes.last().map_or(0.0, |node| node.x)
    }

    /// How many steps the integrator took.
    #[must_use]
    pub fn steps(&self) -> usize {
        self.nodes.len().saturating_sub(1)
    }

    /// A reading at `range_m`; distances outside 0 to [`Self::reach_m`] are held at the ends.
    #[must_use]
    pub fn at(&self, range_m: f64) -> Point {
        let last = self.nodes.len() - 1;
        let x = if range_m > 0.0 {
            range_m.min(self.nodes[last].x)
        } else {
            0.0
        };
        let after = self
            .nodes
            .partition_point(|node| node.x <= x)
            .clamp(1, last.max(1));
        let (n0, n1) = (self.nodes[after - 1], self.nodes[after.min(last)]);
        if n1.x <= n0.x {
            return self.point(x, n0.y, n0.t, n0.vx, n0.vy);
        }
        let h = n1.x - n0.x;
        let s = (x - n0.x) / h;
        self.point(
            x,
            quintic(
                s,
                h,
                (n0.y, n0.slope(), n0.bend()),
                (n1.y, n1.slope(), n1.bend()),
            ),
            quintic(
                s,
                h,
                (n0.t, n0.pace(), n0.slowing()),
                (n1.t, n1.pace(), n1.slowing()),
            ),
            hermite(s, h, n0.vx, n0.dvx, n1.vx, n1.dvx),
            hermite(s, h, n0.vy, n0.dvy, n1.vy, n1.dvy),
        )
    }

    fn point(&self, x: f64, y: f64, t: f64, vx: f64, vy: f64) -> Point {
        let level = x * self.slope_cos - y * self.slope_sin;
        let level_speed = vx * self.slope_cos - vy * self.slope_sin;
        let vz = self.wind_z - self.lateral * (level_speed - self.wind_level);
        Point {
            range_m: x,
            height_m: y,
            drift_m: self.wind_z * t - self.lateral * (level - self.wind_level * t),
            time_s: t,
            velocity_m_s: (vx * vx + vy * vy + vz * vz).sqrt(),
            slope: vy / vx,
        }
    }

    /// The highest point over the axis, if the path rises and falls within reach.
    #[must_use]
    pub fn highest(&self) -> Option<Point> {
        let after = self.nodes.partition_point(|node| node.vy > 0.0);
        if after == 0 || after >= self.nodes.len() {
            return None;
        }
        let (lower, upper) = (self.nodes[after - 1].x, self.nodes[after].x);
        Some(self.at(root(lower, upper, |x| self.at(x).slope)))
    }

    /// The distances in m where the path crosses `height_m` going up and coming down.
    #[must_use]
    pub fn crossings_m(&self, height_m: f64) -> (Option<f64>, Option<f64>) {
        let above = |x: f64| self.at(x).height_m - height_m;
        let top_m = match self.highest() {
            Some(point) => point.range_m,
            // Still rising at the end, or falling from the start.
            None if self.nodes[0].vy > 0.0 => self.reach_m(),
            None => 0.0,
        };
        let up = (above(0.0) < 0.0 && above(top_m) >= 0.0).then(|| root(0.0, top_m, above));
        let end = self.reach_m();
        let down = (above(top_m) > 0.0 && above(end) <= 0.0).then(|| root(top_m, end, above));
        (up, down)
    }
}

/// A cubic through two values and two slopes over a length `h`, at the share `s` of it.
#[inline]
fn hermite(s: f64, h: f64, y0: f64, d0: f64, y1: f64, d1: f64) -> f64 {
    let rise = y1 - y0;
    let c = h * d0;
    let a = h * (d0 + d1) - 2.0 * rise;
    let b = rise - c - a;
    y0 + s * (c + s * (b + s * a))
}

/// A polynomial of fifth degree through two values with their first and second derivatives
/// over a length `h`, at the share `s` of it.
fn quintic(s: f64, h: f64, from: (f64, f64, f64), to: (f64, f64, f64)) -> f64 {
    let (v0, a0) = (h * from.1, 0.5 * h * h * from.2);
    let (v1, a1) = (h * to.1, 0.5 * h * h * to.2);
    let rise = to.0 - from.0 - v0 - a0;
    let turn = v1 - v0 - 2.0 * a0;
    let bend = a1 - a0;
    let c3 = 10.0 * rise - 4.0 * turn + bend;
    let c4 = -15.0 * rise + 7.0 * turn - 2.0 * bend;
    let c5 = 6.0 * rise - 3.0 * turn + bend;
    from.0 + s * (v0 + s * (a0 + s * (c3 + s * (c4 + s * c5))))
}

/// A root of `f` between two places with opposite signs (or zero at one), by the Illinois
/// form of the false position.
pub(super) fn root(lower: f64, upper: f64, f: impl Fn(f64) -> f64) -> f64 {
    let (mut a, mut b) = (lower, upper);
    let (mut fa, mut fb) = (f(a), f(b));
    if fa == 0.0 {
        return a;
    }
    if fb == 0.0 {
        return b;
    }
    for _ in 0..100 {
        let c = (a * fb - b * fa) / (fb - fa);
        let fc = f(c);
        if fc == 0.0 || (b - a).abs() < 1e-9 {
            return c;
        }
        if fc * fb < 0.0 {
            (a, fa) = (b, fb);
        } else {
            fa *= 0.5;
        }
        let moved = (c - b).abs();
        (b, fb) = (c, fc);
        if moved < 1e-10 {
            return b;
        }
    }
    b
}
