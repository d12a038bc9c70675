//! This one or that one, as it is passed on: schema version 1.
//!
//! Keys and quantities and no words, as the [report](super::report). What was not stated of
//! a sight holds the trade's usual value with its spread, and is named.

use super::report::{Cause, Element, Figure, LastLight, Quantity};
use scopewright_html::Passed;
use serde::{Deserialize, Serialize};

/// The version this code writes.
pub const VERSION: u32 = 1;

/// Two sights beside each other for one shooter.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Passed)]
pub struct Versus {
    /// Schema version, 1.
    pub version: u32,
    /// The first.
    pub one: Side,
    /// The second.
    pub other: Side,
    /// Difference by difference, in the order in which they are told.
    pub differences: Vec<Contrast>,
    /// What measured or looked up would settle most, first to last; empty if all is decided.
    pub settle: Vec<Element>,
    /// The farthest and the nearest range that the figures are for, m.
    pub nearest_m: f64,
    /// Farthest, m.
    pub farthest_m: f64,
    /// The person is out in the dusk or by night.
    pub out_late: bool,
}

/// One of the two.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Passed)]
pub struct Side {
    /// Lowest magnification.
    pub mag_low: f64,
    /// Top magnification.
    pub mag_high: f64,
    /// Objective in mm.
    pub objective_mm: f64,
    /// Tube in mm, stated or usual.
    pub tube_mm: f64,
    /// Elements that were not stated.
    pub unknown: Vec<Element>,
    /// Words of the line that mean nothing here, as typed.
    pub unread: Vec<String>,
    /// Magnification that serves latest in the dusk.
    pub mag_late: f64,
    /// Until when the quarry is told apart on the typical evening.
    pub last_light: LastLight,
    /// Share of the occasions in which the sight is not what stops the shot, its spread
    /// widened by what is not known; none where occasions were not computed.
    pub served: Option<Figure>,
    /// What most of the rest is lost to.
    pub lost_most_to: Option<Cause>,
    /// Eye relief stated is shorter than what recoil and glasses ask for, by so many mm.
    pub eye_relief_short_mm: Option<f64>,
    /// The tube does not go into the rings that are kept.
    pub rings_do_not_fit: bool,
}

/// One difference between the two.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, Passed)]
pub struct Contrast {
    /// What is compared.
    pub quantity: Quantity,
    /// The first one's value.
    pub one: f64,
    /// The second one's value.
    pub other: f64,
    /// Other minus one, with its spread.
    pub difference: Figure,
    /// Larger than its doubt and than what anybody notices.
    pub decided: bool,
    /// What would settle it, where it is not decided and something is not known.
    pub settle: Option<Element>,
}
