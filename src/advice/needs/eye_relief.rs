//! Eye relief: the recoiling sight stays off the brow.

use crate::advice::chance::normal;

/// The rule's own reserve, mm: contact is likely only where the eye relief is shorter than
/// asked for by this much (assumption).
pub const RESERVE_MM: f64 = 8.0;
/// Spread of the margin, mm: pieces of one description differ by so much.
pub const SPREAD_MM: f64 = 3.0;

/// The chance, `Φ((ER + 8 − asked)/3)`.
#[must_use]
pub fn chance(eye_relief_mm: f64, asked_mm: f64) -> f64 {
    normal((eye_relief_mm + RESERVE_MM - asked_mm) / SPREAD_MM)
}
