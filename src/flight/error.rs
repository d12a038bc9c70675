//! What can be wrong with a shot, and what would be right.

use crate::quantity::OutOfRange;

/// Why a trajectory or a zero cannot be computed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum FlightError {
    /// A figure outside the range in which it makes sense.
    OutOfRange(OutOfRange),
    /// The bullet falls before it has come so far.
    FallsShort {
        /// The distance asked for, in metres.
        asked_m: f64,
        /// How far it flies, in metres.
        reach_m: f64,
    },
    /// The load cannot be zeroed so far out, even with the barrel raised by 200 mrad.
    ZeroOutOfReach {
        /// The zero asked for, in metres.
        zero_m: f64,
        /// The farthest zero that can be had, in metres.
        farthest_m: f64,
    },
}

impl From<OutOfRange> for FlightError {
    fn from(error: OutOfRange) -> Self {
        FlightError::OutOfRange(error)
    }
}

impl core::fmt::Display for FlightError {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        match self {
            FlightError::OutOfRange(error) => error.fmt(f),
            FlightError::FallsShort { asked_m, reach_m } => write!(
                f,
                "at {asked_m} m this load has fallen to the ground; it flies {reach_m:.0} m"
            ),
            FlightError::ZeroOutOfReach { zero_m, farthest_m } => write!(
                f,
                "this load never reaches a zero at {zero_m} m; the farthest it can be zeroed is {farthest_m:.0} m"
            ),
        }
    }
}

impl std::error::Error for FlightError {}
