//! Limits: what cannot be weighed against anything.

use super::coverage::Ground;
use crate::need::answers::{LitMark, RifleKind};
use crate::sight::{Illumination, ParallaxSetting, Specification};

/// Eye relief from which a sight is made for a rail forward of the receiver, mm.
pub const FORWARD_FROM_MM: f64 = 150.0;

/// Whether a specification is within law, rulebook and mount.
#[must_use]
pub fn allows(ground: &Ground, s: &Specification, mass_g: f64) -> bool {
    broken(ground, s, mass_g) == 0
}

/// Which limits a specification breaks, one bit each: the graver the higher, so that of two the
/// lower number breaks what is easier to mend. Law and mount stand above the rulebook, and a
/// base that leaves no zero, which another base mends, below all.
#[must_use]
pub fn broken(ground: &Ground, s: &Specification, mass_g: f64) -> u8 {
    let need = &ground.need;
    let rules = &need.rulebook;
    let forward = need.rifle.kind.value == RifleKind::ForwardRail;
    let lit = s.illumination != Illumination::Unlit;
    let adjustable = matches!(s.parallax, ParallaxSetting::Adjustable { .. });
    let above = |most: Option<f64>, value: f64| most.is_some_and(|most| value > most + 1e-9);
    [
        forward != (s.eye_relief_mm >= FORWARD_FROM_MM),
        lit && (need.lit_mark.value == LitMark::NotAllowed || rules.lit_mark_forbidden),
        above(rules.magnification_most, s.magnification_high),
        if adjustable {
            rules.refocusing_forbidden
        } else {
            rules.focus_finds_range
        },
        above(rules.mass_most_g, mass_g),
        (ground.travel(s)).is_some_and(|travel| travel.down_mrad < 0.0),
    ]
    .into_iter()
    .fold(0, |bits, breaks| bits << 1 | u8::from(breaks))
}
