//! One luminance for cones and rods together, between day and night.

/// Ratio of the maximum luminous efficacies, V′(555 nm) = 683/1699.
pub(crate) const ROD_WEIGHT: f64 = 683.0 / 1699.0;
const ADAPTATION_AT_ONE: f64 = 0.7670;
const ADAPTATION_SLOPE: f64 = 0.3334;

/// The luminance that a half-adapted eye makes of cone and rod light.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Mesopic {
    /// Mesopic luminance L_mes, cd/m².
    pub luminance_cd_m2: f64,
    /// Adaptation m: 0 where rods alone see, 1 where cones alone see.
    pub adaptation: f64,
}

/// Mesopic luminance of a photopic and a scotopic luminance.
///
/// L_mes = (m L_p + (1 − m) L_s κ)/(m + (1 − m) κ), κ = 683/1699,
/// m = clamp(0.7670 + 0.3334 log₁₀ L_mes, 0, 1), iterated from m = 0.5.
///
/// # Validity
/// Both luminances positive; one root for scotopic to photopic ratios from 0.3 to 10.
///
/// # Accuracy
/// Iterated until m moves by less than 10⁻⁹, at most 60 steps.
///
/// # Source
/// CIE 191:2010, system MES2.
#[must_use]
pub fn mesopic(photopic_cd_m2: f64, scotopic_cd_m2: f64) -> Mesopic {
    let rods = scotopic_cd_m2 * ROD_WEIGHT;
    let blend = |m: f64| (m * photopic_cd_m2 + (1.0 - m) * rods) / (m + (1.0 - m) * ROD_WEIGHT);
    let mut m = 0.5;
    for _ in 0..60 {
        let next = adaptation(blend(m));
        let moved = (next - m).abs();
        m = next;
        if moved < 1e-9 {
            break;
        }
    }
    Mesopic {
        luminance_cd_m2: blend(m),
        adaptation: m,
    }
}

/// log₁₀ of the two luminances at which rods alone and cones alone begin to see.
pub(crate) fn bends_log10() -> [f64; 2] {
    [
        -ADAPTATION_AT_ONE / ADAPTATION_SLOPE,
        (1.0 - ADAPTATION_AT_ONE) / ADAPTATION_SLOPE,
    ]
}

/// Adaptation m that belongs to a mesopic luminance.
///
/// # Source
/// CIE 191:2010, MES2: 0 below 0.005 cd/m², 1 above 5 cd/m².
#[must_use]
pub fn adaptation(mesopic_cd_m2: f64) -> f64 {
    (ADAPTATION_AT_ONE + ADAPTATION_SLOPE * libm::log10(mesopic_cd_m2)).clamp(0.0, 1.0)
}

/// Photopic luminance whose light of the given scotopic to photopic ratio has this
/// mesopic luminance: the inverse of [`mesopic`] along one ratio.
#[must_use]
pub fn photopic_cd_m2(of: Mesopic, sp_ratio: f64) -> f64 {
    let m = of.adaptation;
    of.luminance_cd_m2 * (m + (1.0 - m) * ROD_WEIGHT) / (m + (1.0 - m) * ROD_WEIGHT * sp_ratio)
}
