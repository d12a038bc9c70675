//! Limits: what cannot be weighed against anything.

use super::coverage::Ground;
use crate::need::answers::{LitMark, RifleKind};
use crate::sight::{Illumination, ParallaxSetting, Specification};

/// Eye relief from which a sight is made for a rail forward of the receiver, mm.
pub const FORWARD_FROM_MM: f64 = 150.0;

/// Whether a specification is within law, rulebook and mount.
#[must_use]
pub fn allows(ground: &Ground, s: &Specification, mass_g: f64) -> bool {
    let need = &ground.need;
    let forward = need.rifle.kind.value == RifleKind::ForwardRail;
    if forward != (s.eye_relief_mm >= FORWARD_FROM_MM) {
        return false;
    }
    let lit = s.illumination != Illumination::Unlit;
    if lit && (need.lit_mark.value == LitMark::NotAllowed || need.rulebook.lit_mark_forbidden) {
        return false;
    }
    if let Some(most) = need.rulebook.magnification_most
        && s.magnification_high > most + 1e-9
    {
        return false;
    }
    let adjustable = matches!(s.parallax, ParallaxSetting::Adjustable { .. });
    if adjustable && need.rulebook.refocusing_forbidden {
        return false;
    }
    if !adjustable && need.rulebook.focus_finds_range {
        return false;
    }
    if let Some(most) = need.rulebook.mass_most_g
        && mass_g > most
    {
        return false;
    }
    ground
        .travel(s)
        .is_none_or(|travel| travel.down_mrad >= 0.0)
}
