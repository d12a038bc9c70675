//! What the light behind a sight amounts to for the threshold.

use super::aperture::{cone_area_mm2, rod_area_mm2};
use super::mesopic::{self, mesopic};
use super::person::Eye;
use super::pupil::pupil_diameter_mm;

/// Scotopic to photopic ratio of the lamps behind the threshold data (2850 K).
pub const LABORATORY_SP_RATIO: f64 = 1.408;
/// Scotopic to photopic ratio of a twilight background, any ground.
pub const TWILIGHT_SP_RATIO: f64 = 2.5;
/// Scotopic to photopic ratio of moonlight: sunlight once reflected, 1.5 to 2.
///
/// # Source
/// From memory.
pub const MOONLIGHT_SP_RATIO: f64 = 1.75;
/// Scotopic to photopic ratio of lamps, those of a town or of a lit range: CIE illuminant A.
pub const LAMPLIGHT_SP_RATIO: f64 = 1.41;
/// Age of the laboratory's observers, years.
pub const LABORATORY_AGE_YEARS: f64 = 22.0;

/// The scotopic to photopic ratio of light from sky, Moon and lamps together, weighted by
/// their illuminances; that of twilight where there is none.
///
/// # Validity
/// Illuminances of one surface in one unit; negative ones count as none.
///
/// # Example
/// ```
/// use scopewright::eye::equivalent::mixed_sp_ratio;
/// assert_eq!(mixed_sp_ratio(1.0, 0.0, 0.0), 2.5);
/// // As much from the Moon as from the sky: halfway between 2.5 and 1.75.
/// assert_eq!(mixed_sp_ratio(0.1, 0.1, 0.0), 2.125);
/// ```
#[must_use]
pub fn mixed_sp_ratio(sky_lx: f64, moon_lx: f64, lamps_lx: f64) -> f64 {
    let parts = [
        (sky_lx.max(0.0), TWILIGHT_SP_RATIO),
        (moon_lx.max(0.0), MOONLIGHT_SP_RATIO),
        (lamps_lx.max(0.0), LAMPLIGHT_SP_RATIO),
    ];
    let all: f64 = parts.iter().map(|(lx, _)| lx).sum();
    if all > 0.0 {
        parts.iter().map(|(lx, ratio)| lx * ratio).sum::<f64>() / all
    } else {
        TWILIGHT_SP_RATIO
    }
}

/// What stands between scene and eye, as plain numbers.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Optics {
    /// Magnification, 1 without a sight.
    pub magnification: f64,
    /// Diameter of the entering beam, mm; infinite without a sight.
    pub objective_mm: f64,
    /// Transmission weighed by day vision, 0 to 1.
    pub transmission_day: f64,
    /// Transmission weighed by night vision, 0 to 1.
    pub transmission_night: f64,
    /// Whether one eye looks (a sight) or both (no sight).
    pub one_eye: bool,
}

impl Optics {
    /// A sight with one figure of transmission for day and night.
    #[must_use]
    pub fn sight(magnification: f64, objective_mm: f64, transmission: f64) -> Self {
        Self {
            magnification,
            objective_mm,
            transmission_day: transmission,
            transmission_night: transmission,
            one_eye: true,
        }
    }

    /// Both eyes and nothing before them.
    #[must_use]
    pub fn bare_eye() -> Self {
        Self {
            magnification: 1.0,
            objective_mm: f64::INFINITY,
            transmission_day: 1.0,
            transmission_night: 1.0,
            one_eye: false,
        }
    }

    /// The beam behind the eyepiece, mm: objective over magnification.
    #[must_use]
    pub fn exit_pupil_mm(&self) -> f64 {
        self.objective_mm / self.magnification
    }
}

/// The light of a scene as the laboratory would have to show it to have the same effect.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Equivalent {
    /// Equivalent luminance B, cd/m².
    pub luminance_cd_m2: f64,
    /// Adaptation m between rods (0) and cones (1).
    pub adaptation: f64,
    /// The eye's pupil, set by the scene, mm.
    pub pupil_mm: f64,
    /// The beam that enters: the smaller of exit pupil and pupil, mm.
    pub beam_mm: f64,
}

impl Equivalent {
    /// Share of an exit pupil's area that this eye uses, 0 to 1.
    #[must_use]
    pub fn share_of_exit_pupil(&self, exit_pupil_mm: f64) -> f64 {
        let used = self.beam_mm / exit_pupil_mm;
        (used * used).min(1.0)
    }
}

/// Equivalent luminance behind a sight.
///
/// With beam d = min(D/M, p), p the eye's pupil at the scene's luminance L, the cones
/// get T_day L A_c(d), the rods T_night ρ L A_r(d). B is the luminance of the
/// laboratory's 2850 K light that has the same mesopic luminance through the
/// laboratory's own pupil p₀(B):
/// MES2(B, 1.408 B) = MES2(T_day L A_c(d)/A_c(p₀), T_night ρ L A_r(d)/A_r(p₀)).
///
/// # Validity
/// Luminance 10⁻⁶ to 10⁴ cd/m², ρ = S/P 0.3 to 10. Adapted eye; stray light apart.
///
/// # Accuracy
/// Solved to a relative 10⁻¹². An extended scene is never brighter through a sight than
/// without (étendue), because d never exceeds p.
///
/// # Source
/// A. Crumey, MNRAS 442:2600 (2014), equation 66, with Stiles–Crawford areas for cones
/// and CIE 191:2010 MES2 between rods and cones.
///
/// # Example
/// ```
/// use scopewright::eye::{Eye, Optics, equivalent_luminance};
/// let eye = Eye::of_age(25.0)?;
/// let b = equivalent_luminance(0.01, &eye, &Optics::sight(8.0, 56.0, 0.9), 2.5);
/// assert!((b.luminance_cd_m2 - 0.012_901).abs() < 1e-6);
/// # Ok::<(), scopewright::quantity::OutOfRange>(())
/// ```
#[must_use]
pub fn equivalent_luminance(
    luminance_cd_m2: f64,
    eye: &Eye,
    optics: &Optics,
    sp_ratio: f64,
) -> Equivalent {
    let pupil_mm = eye.pupil_mm(luminance_cd_m2);
    let beam_mm = optics.exit_pupil_mm().min(pupil_mm);
    let cones = optics.transmission_day * luminance_cd_m2 * cone_area_mm2(beam_mm);
    let rods = optics.transmission_night * sp_ratio * luminance_cd_m2 * rod_area_mm2(beam_mm);
    let (luminance_cd_m2, adaptation) = laboratory_luminance(cones, rods);
    Equivalent {
        luminance_cd_m2,
        adaptation,
        pupil_mm,
        beam_mm,
    }
}

/// Laboratory luminance B and adaptation m for light times area at cones and at rods.
pub(crate) fn laboratory_luminance(cones_cd_mm2_m2: f64, rods_cd_mm2_m2: f64) -> (f64, f64) {
    // The pupil p0 depends on B only weakly, so that plain iteration contracts.
    let mut b = (cones_cd_mm2_m2 / cone_area_mm2(6.0)).max(1e-12);
    let mut m = 0.0;
    for _ in 0..80 {
        let p0 = pupil_diameter_mm(b, LABORATORY_AGE_YEARS);
        let seen = mesopic(
            cones_cd_mm2_m2 / cone_area_mm2(p0),
            rods_cd_mm2_m2 / rod_area_mm2(p0),
        );
        let next = mesopic::photopic_cd_m2(seen, LABORATORY_SP_RATIO);
        let moved = (next - b).abs();
        b = next;
        m = seen.adaptation;
        if moved <= 1e-12 * b {
            break;
        }
    }
    (b, m)
}
