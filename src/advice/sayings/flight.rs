//! Sayings about drop, zero and dials.

use super::case::{Case, Flight, exact, saying};
use crate::advice::report::{Quantity as Q, Saying, SayingKey as K, Verdict};
use crate::flight::hold::{Change, RingError, range_error_mm};
use crate::flight::point_blank::{dead_on_path, point_blank};
use crate::flight::{Conditions, Zeroed};
use crate::plain::Gathered;
use crate::sight::turret::ClickUnit;

/// How far a range finder is off, m.
const RANGEFINDER_M: f64 = 1.0;
/// How far a ballistic coefficient is off, one standard deviation as a share.
const COEFFICIENT_SPREAD: f64 = 0.05;
/// The farthest at which a reach is looked for, m.
const SEARCH_M: f64 = 700.0;

pub(super) fn all(case: &Case) -> Vec<Saying> {
    let Some(flight) = &case.flight else {
        return Vec::new();
    };
    [
        four_high_and_forget(case, flight),
        flat_cartridge_needs_no_dial(case, flight),
        dial_is_precision(case, flight),
        uphill_high_downhill_low(flight),
    ]
    .into_iter()
    .flatten()
    .gathered()
}

/// "Four high at 100 and forget it."
///
/// The load zeroed 4 cm high at 100 m: where it comes through the line of sight again, and how
/// far it stays within this person's circle when aimed dead on.
///
/// Effects: m zero · m reach · cm circle · m farthest. True where the reach covers the
/// farthest range, half where it covers the usual one, else false (also where 4 cm are
/// already over the circle's top).
fn four_high_and_forget(case: &Case, flight: &Flight) -> Option<Saying> {
    let at_hundred = Zeroed::new(
        flight.zeroed.load,
        flight.air,
        flight.zeroed.sight_height_mm,
        100.0,
    )
    .ok()?;
    // 40 mm at 100 m are 0.4 mrad; the path turns with the bore as a whole.
    let high = Zeroed {
        elevation_mrad: at_hundred.elevation_mrad + 0.4,
        ..at_hundred
    };
    let path = high.sighted_within(SEARCH_M);
    let zero_m = path.crossings_m().1.unwrap_or(path.reach_m());
    let reach_m = dead_on_path(&path, 0.5 * case.circle_mm).to_m;
    let verdict = if reach_m >= flight.farthest_m {
        Verdict::True
    } else if reach_m >= case.usual_m {
        Verdict::Half
    } else {
        Verdict::False
    };
    Some(saying(
        K::FourHighAndForget,
        verdict,
        &[
            exact(Q::RangeM, zero_m),
            exact(Q::RangeM, reach_m),
            exact(Q::CircleCm, 0.1 * case.circle_mm),
            exact(Q::RangeM, flight.farthest_m),
        ],
    ))
}

/// "A flat cartridge needs no dial."
///
/// The point-blank range of this load for this circle with its best zero.
///
/// Effects: m reach · m that zero · m farthest · cm drop below a zero as usual at the
/// farthest. True where the reach covers the farthest range, half where it covers four fifths
/// of it, else false.
fn flat_cartridge_needs_no_dial(case: &Case, flight: &Flight) -> Option<Saying> {
    let best = point_blank(
        &flight.zeroed.load,
        flight.air,
        flight.zeroed.sight_height_mm,
        (0.5 * case.farthest_circle_mm).clamp(2.0, 500.0),
    )
    .ok()?;
    let verdict = if best.reach_m >= flight.farthest_m {
        Verdict::True
    } else if best.reach_m >= 0.8 * flight.farthest_m {
        Verdict::Half
    } else {
        Verdict::False
    };
    Some(saying(
        K::FlatCartridgeNeedsNoDial,
        verdict,
        &[
            exact(Q::RangeM, best.reach_m),
            exact(Q::RangeM, best.zero_m),
            exact(Q::RangeM, flight.farthest_m),
            exact(Q::DropCm, -0.1 * flight.path.path_mm(flight.farthest_m)),
        ],
    ))
}

/// "A dial is precision."
///
/// What is left of it at the farthest range: by the spread of muzzle velocity (1 % measured by
/// the person, 3 % typical) and of the coefficient (5 %) in quadrature, and by the range as
/// this person finds it (a guess 18 % off, a range finder 1 m).
///
/// Effects: clicks of 0.1 mrad needed · cm by the load · cm by the range · cm circle. Half
/// below three clicks (nothing to dial); else true where both stay within a quarter of the
/// circle, half within its half, else false.
fn dial_is_precision(case: &Case, flight: &Flight) -> Option<Saying> {
    let farthest_m = flight.farthest_m;
    let velocity = case.need.load.muzzle_velocity_m_s.value;
    let error_mm = |change: Change| {
        RingError::new(&flight.zeroed, &change, farthest_m)
            .map(|ring| ring.error_mm(farthest_m))
            .ok()
    };
    let none = Change {
        velocity_m_s: 0.0,
        bc_factor: 1.0,
        air: None,
        sight_height_mm: None,
    };
    // Faster and better, so that it never falls short.
    let by_velocity = error_mm(Change {
        velocity_m_s: velocity.spread,
        ..none
    })?;
    let by_coefficient = error_mm(Change {
        bc_factor: 1.0 + COEFFICIENT_SPREAD,
        ..none
    })?;
    let by_load = (by_velocity * by_velocity + by_coefficient * by_coefficient).sqrt();
    let off_m = (case.need.distance.guess_spread_share * farthest_m).max(RANGEFINDER_M);
    let by_range = range_error_mm(&flight.path, farthest_m, off_m);
    let clicks = ClickUnit::TenthMrad.clicks(flight.needed_mrad());
    let worst = by_load.max(by_range) / case.farthest_circle_mm;
    let verdict = if clicks < 3.0 {
        Verdict::Half
    } else if worst <= 0.25 {
        Verdict::True
    } else if worst <= 0.5 {
        Verdict::Half
    } else {
        Verdict::False
    };
    Some(saying(
        K::DialIsPrecision,
        verdict,
        &[
            exact(Q::Clicks, clicks),
            exact(Q::ErrorCm, 0.1 * by_load),
            exact(Q::ErrorCm, 0.1 * by_range),
            exact(Q::CircleCm, 0.1 * case.farthest_circle_mm),
        ],
    ))
}

/// "Uphill high, downhill low."
///
/// The path at the farthest range on slopes of 30° up and down against the level; the drop
/// goes with R·cos α both ways.
///
/// Effects: cm uphill · cm downhill (positive: high) · per cent of the distance that counts ·
/// m farthest. True where downhill lies low, half where neither makes a centimetre, else
/// false.
fn uphill_high_downhill_low(flight: &Flight) -> Option<Saying> {
    const SLOPE_DEG: f64 = 30.0;
    let level = flight.path.path_mm(flight.farthest_m);
    let change = |slope_deg: f64| {
        let conditions = Conditions::still(flight.air).on_slope(slope_deg);
        let path = flight.zeroed.sighted(&conditions, flight.farthest_m).ok()?;
        Some(0.1 * (path.path_mm(flight.farthest_m) - level))
    };
    let (up, down) = (change(SLOPE_DEG)?, change(-SLOPE_DEG)?);
    let verdict = if down < -0.1 {
        Verdict::True
    } else if up.max(down) < 1.0 {
        Verdict::Half
    } else {
        Verdict::False
    };
    Some(saying(
        K::UphillHighDownhillLow,
        verdict,
        &[
            exact(Q::ErrorCm, up),
            exact(Q::ErrorCm, down),
            exact(
                Q::Percent,
                100.0 * libm::cos(SLOPE_DEG * core::f64::consts::PI / 180.0),
            ),
            exact(Q::RangeM, flight.farthest_m),
        ],
    ))
}
