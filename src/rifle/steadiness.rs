//! How still a position holds, and what that does with range, circle and magnification.
//!
//! σ is one standard deviation for each axis in mrad; the visible wobble radius w is 2 σ and
//! holds 86 % of the time. No probability here is a promise: it is a sense of scale beside
//! the drop.

/// A way of holding the rifle.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Position {
    /// Bench, or bipod with a rear bag.
    Bench,
    /// Prone over a pack or bipod.
    PronePack,
    /// From a seat with a rail.
    SeatRail,
    /// Two-point sticks.
    TwoPointSticks,
    /// A single stick or a tree.
    SingleStick,
    /// Kneeling or sitting free.
    Kneeling,
    /// Standing free.
    StandingFree,
    /// Swinging with moving game.
    Swinging,
}

/// The wobble of a position, one standard deviation for each axis, in mrad.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Wobble {
    /// A very steady shooter.
    pub least_mrad: f64,
    /// Typical.
    pub typical_mrad: f64,
    /// An unsteady one.
    pub most_mrad: f64,
}

impl Position {
    /// All positions, steadiest first.
    pub const ALL: [Position; 8] = [
        Position::Bench,
        Position::PronePack,
        Position::SeatRail,
        Position::TwoPointSticks,
        Position::SingleStick,
        Position::Kneeling,
        Position::StandingFree,
        Position::Swinging,
    ];

    /// σ of the hold, with its range over shooters.
    ///
    /// # Source
    /// Common practice, no source; anchors: biathlon circles at 50 m give 0.21 prone and 0.6
    /// standing, stalkers' shots (PLoS ONE 2014, 0109698) 0.34 to 0.43.
    #[must_use]
    pub fn hold(self) -> Wobble {
        let (least_mrad, typical_mrad, most_mrad) = match self {
            Position::Bench => (0.05, 0.075, 0.12),
            Position::PronePack => (0.1, 0.15, 0.3),
            Position::SeatRail => (0.12, 0.225, 0.4),
            Position::TwoPointSticks => (0.2, 0.35, 0.6),
            Position::SingleStick => (0.3, 0.55, 1.0),
            Position::Kneeling => (0.5, 0.7, 1.5),
            Position::StandingFree => (1.0, 1.5, 4.0),
            Position::Swinging => (1.2, 3.0, 8.0),
        };
        Wobble {
            least_mrad,
            typical_mrad,
            most_mrad,
        }
    }

    /// The visible wobble radius w in mrad.
    ///
    /// # Source
    /// Common practice, no source.
    #[must_use]
    pub fn visible_wobble_mrad(self) -> f64 {
        match self {
            Position::Bench => 0.15,
            Position::PronePack => 0.3,
            Position::SeatRail => 0.45,
            Position::TwoPointSticks => 0.7,
            Position::SingleStick => 1.1,
            Position::Kneeling => 1.4,
            Position::StandingFree => 3.0,
            Position::Swinging => 6.0,
        }
    }
}

/// σ of a typical hunting rifle with its load, in mrad; 0.08 to 0.20 are met.
pub const HUNTING_RIFLE_SIGMA_MRAD: f64 = 0.12;

/// The mean extreme spread of a group over σ, for 3, 5 and 10 shots.
///
/// # Source
/// Expected range of n bivariate normal shots: 2.40, 3.07, 3.81.
pub const GROUP_OVER_SIGMA: [(u32, f64); 3] = [(3, 2.40), (5, 3.07), (10, 3.81)];

/// σ of aiming in mrad: `0.15·MAR/M`, MAR in arc minutes.
///
/// # Source
/// Assumption.
#[must_use]
pub fn aiming_sigma_mrad(mar_arcmin: f64, magnification: f64) -> f64 {
    0.15 * mar_arcmin / magnification
}

/// σ of all together: `σ² = σ_hold² + σ_rifle² + σ_aim²`.
#[must_use]
pub fn total_sigma_mrad(hold_mrad: f64, rifle_mrad: f64, aiming_mrad: f64) -> f64 {
    (hold_mrad * hold_mrad + rifle_mrad * rifle_mrad + aiming_mrad * aiming_mrad).sqrt()
}

/// The probability that one shot lands inside a circle.
///
/// `P = 1 − Q1(b/σ, ρ/σ)`, the non-central χ² distribution of `ρ²/σ²` with two degrees of
/// freedom and non-centrality `b²/σ²`; centred it is `1 − exp(−ρ²/2σ²)`. ρ is the circle's
/// radius, b how far the mean point of impact lies from its centre, all in one unit.
///
/// # Validity
/// Equal spread in both axes. Negative or not finite figures give 0.
///
/// # Accuracy
/// 1e-12 absolute, against the reference implementation in the tests.
///
/// # Source
/// Marcum's Q function as a Poisson mixture of central distributions.
#[must_use]
pub fn share_inside_circle(radius: f64, offset: f64, sigma: f64) -> f64 {
    if !(radius > 0.0 && sigma >= 0.0 && offset.is_finite()) {
        return 0.0;
    }
    if sigma == 0.0 {
        return if offset.abs() < radius { 1.0 } else { 0.0 };
    }
    let a = offset.abs() / sigma;
    let b = radius / sigma;
    let lambda = 0.5 * a * a;
    let y = 0.5 * b * b;
    if lambda == 0.0 {
        return -libm::expm1(-y);
    }
    if a - b > 12.0 {
        return 0.0;
    }
    if b - a > 12.0 {
        return 1.0;
    }
    if lambda <= 300.0 && y <= 300.0 {
        poisson_mixture(lambda, y)
    } else {
        by_quadrature(a, b)
    }
}

/// `Σ_k Poisson(k; λ)·P(k + 1, y)`, with the regularised incomplete gamma by its own tail.
fn poisson_mixture(lambda: f64, y: f64) -> f64 {
    let mut weight = libm::exp(-lambda);
    let mut term = libm::exp(-y);
    let mut tail = term;
    let mut sum = weight * (1.0 - tail);
    let mut reached = weight;
    let mut k = 0.0;
    while 1.0 - reached > 1e-15 && k < 2000.0 {
        k += 1.0;
        weight *= lambda / k;
        term *= y / k;
        tail += term;
        sum += weight * (1.0 - tail).max(0.0);
        reached += weight;
        if k > lambda && weight < 1e-18 {
            break;
        }
    }
    sum.clamp(0.0, 1.0)
}

/// `∫ x·exp(−(x − a)²/2)·I0e(a·x) dx` to b by Simpson's rule, for large arguments.
fn by_quadrature(a: f64, b: f64) -> f64 {
    let from = (a - 9.0).max(0.0);
    let to = b.min(a + 9.0);
    if to <= from {
        return 0.0;
    }
    let density = |x: f64| x * libm::exp(-0.5 * (x - a) * (x - a)) * scaled_bessel_i0(a * x);
    let n = 2000;
    let h = (to - from) / f64::from(n);
    let mut sum = density(from) + density(to);
    for i in 1..n {
        let weight = if i % 2 == 1 { 4.0 } else { 2.0 };
        sum += weight * density(from + h * f64::from(i));
    }
    (sum * h / 3.0).clamp(0.0, 1.0)
}

/// `exp(−z)·I0(z)`: the power series to 30, the asymptotic series beyond.
fn scaled_bessel_i0(z: f64) -> f64 {
    if z < 30.0 {
        let quarter = 0.25 * z * z;
        let mut term = libm::exp(-z);
        let mut sum = term;
        let mut k = 0.0;
        while k < 200.0 {
            k += 1.0;
            term *= quarter / (k * k);
            sum += term;
            if term < 1e-17 * sum {
                break;
            }
        }
        sum
    } else {
        let mut term = 1.0;
        let mut sum = 1.0;
        for k in 1..20 {
            let k = f64::from(k);
            let odd = 2.0 * k - 1.0;
            let next = term * odd * odd / (8.0 * k * z);
            if next.abs() >= term.abs() || next < 1e-17 {
                break;
            }
            term = next;
            sum += term;
        }
        sum / (2.0 * core::f64::consts::PI * z).sqrt()
    }
}

/// The range in m to which `share` of centred shots stay inside a circle:
/// `R = r/(σ·√(−2 ln(1 − share)))`, 2.146 for 90 %.
///
/// # Validity
/// `share` above 0 and below 1; the radius in mm, σ in mrad.
#[must_use]
pub fn range_for_share_m(circle_radius_mm: f64, sigma_mrad: f64, share: f64) -> f64 {
    circle_radius_mm / (sigma_mrad * (-2.0 * libm::log1p(-share)).sqrt())
}

/// The visible wobble in the picture above which it is chased rather than used, in mrad.
pub const WOBBLE_CEILING_MRAD: f64 = 15.0;

/// The magnification above which the picture only shows the wobble: `15/w = 7.5/σ_hold`.
///
/// # Source
/// Assumption: free standing 5×, kneeling 11×, single stick 14×, sticks 21×, rail 33×.
#[must_use]
pub fn magnification_ceiling(hold_sigma_mrad: f64) -> f64 {
    0.5 * WOBBLE_CEILING_MRAD / hold_sigma_mrad
}

/// The magnification below which aiming, not holding, limits: `0.3·MAR/σ_hold`.
///
/// # Source
/// Assumption.
#[must_use]
pub fn magnification_aim_limited_below(mar_arcmin: f64, hold_sigma_mrad: f64) -> f64 {
    0.3 * mar_arcmin / hold_sigma_mrad
}
