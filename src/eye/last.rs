//! The margin by which a patch is told apart, and the last luminance at which it is.

use super::equivalent::{Equivalent, Optics, equivalent_luminance};
use super::person::Eye;
use super::root::bracketed;
use super::threshold::{age_factor, field_factor, threshold_contrast};

/// The darkest background that the search looks at, cd/m².
pub const DARKEST_CD_M2: f64 = 1e-6;
/// The brightest, cd/m² (10^2.5).
pub const BRIGHTEST_CD_M2: f64 = 316.227_766_016_837_94;

/// What has to be told from its background.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Patch {
    /// Solid angle seen with the bare eye, sr: area over range squared.
    pub solid_angle_sr: f64,
    /// Contrast |ΔL|/L against the background, after the air.
    pub contrast: f64,
    /// Factor by which stray light lifts the background ([`super::veil`]); 1 without.
    pub veil: f64,
}

impl Patch {
    /// A patch of an area at a range, without veil.
    #[must_use]
    pub fn new(area_m2: f64, range_m: f64, contrast: f64) -> Self {
        Self {
            solid_angle_sr: area_m2 / (range_m * range_m),
            contrast: contrast.abs(),
            veil: 1.0,
        }
    }

    /// The same patch behind stray light.
    #[must_use]
    pub fn veiled(self, veil: f64) -> Self {
        Self { veil, ..self }
    }
}

/// The margin by which a patch is told apart, in log₁₀ of contrast; told apart above 0.
///
/// log₁₀( (C/v)/(F F_age C_th(B v, A M²/R²)) ), F = 2√2 with a sight, 2 with bare eyes.
///
/// # Validity
/// As [`super::threshold::threshold_contrast`] and
/// [`super::equivalent::equivalent_luminance`].
///
/// # Accuracy
/// The zero of the margin is uncertain by about ±0.2 dex (field factor), the difference
/// between two sights by ±0.03 dex.
///
/// # Source
/// Crumey (2014) with the field factor, one eye and age as stated there.
#[must_use]
pub fn told_apart_margin(
    luminance_cd_m2: f64,
    eye: &Eye,
    optics: &Optics,
    sp_ratio: f64,
    patch: &Patch,
) -> f64 {
    let seen = equivalent_luminance(luminance_cd_m2, eye, optics, sp_ratio);
    margin_at(&seen, eye, optics, patch)
}

/// The same margin for a luminance that has already been turned into its equivalent.
#[must_use]
pub fn margin_at(seen: &Equivalent, eye: &Eye, optics: &Optics, patch: &Patch) -> f64 {
    let m = optics.magnification;
    let least = field_factor(optics.one_eye)
        * age_factor(eye.age_years(), seen.adaptation)
        * threshold_contrast(
            seen.luminance_cd_m2 * patch.veil,
            patch.solid_angle_sr * m * m,
        );
    libm::log10(patch.contrast / patch.veil / least)
}

/// The background luminance at which a patch is told apart for the last time.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum LastLuminance {
    /// Told apart even at 10⁻⁶ cd/m², darker than any night sky makes the ground.
    Always,
    /// The last luminance, cd/m².
    At(f64),
    /// Not told apart even at 316 cd/m², where more light no longer helps.
    Never,
}

impl LastLuminance {
    /// The luminance as a number that sorts: 0 for always, infinity for never.
    #[must_use]
    pub fn cd_m2(self) -> f64 {
        match self {
            Self::Always => 0.0,
            Self::At(luminance) => luminance,
            Self::Never => f64::INFINITY,
        }
    }
}

/// The last background luminance at which a patch is told apart.
///
/// The root in L of [`told_apart_margin`] between 10⁻⁶ and 316 cd/m².
///
/// # Validity
/// A fixed magnification; over a zoom range see [`last_luminance_of_zoom`].
///
/// # Accuracy
/// Solved to 10⁻¹⁰ dex. As a clock time ±5 to 10 minutes; between sights ±0.3 minutes
/// beside the pupil's spread.
///
/// # Example
/// ```
/// use scopewright::eye::{Eye, LastLuminance, Optics, Patch, last_luminance};
/// let eye = Eye::of_age(25.0)?;
/// let patch = Patch::new(0.1125 * 0.1125, 200.0, 0.3);
/// let last = last_luminance(&eye, &Optics::sight(8.0, 56.0, 0.9), 2.5, &patch);
/// assert!((last.cd_m2() - 0.009_370_08).abs() < 1e-7);
/// # Ok::<(), scopewright::quantity::OutOfRange>(())
/// ```
#[must_use]
pub fn last_luminance(eye: &Eye, optics: &Optics, sp_ratio: f64, patch: &Patch) -> LastLuminance {
    let margin =
        |log_l: f64| told_apart_margin(libm::pow(10.0, log_l), eye, optics, sp_ratio, patch);
    if patch.contrast <= 0.0 {
        return LastLuminance::Never;
    }
    solved(margin, 1e-10)
}

/// The root of a margin by log₁₀ luminance, to `tolerance` in the same unit.
pub(crate) fn solved(margin: impl Fn(f64) -> f64, tolerance: f64) -> LastLuminance {
    let (low, high) = (libm::log10(DARKEST_CD_M2), libm::log10(BRIGHTEST_CD_M2));
    if margin(low) >= 0.0 {
        LastLuminance::Always
    } else if margin(high) < 0.0 {
        LastLuminance::Never
    } else {
        LastLuminance::At(libm::pow(10.0, bracketed(low, high, tolerance, margin)))
    }
}

/// The last luminance over a zoom range, and the magnification that reaches it.
///
/// Steps of an eighth of an octave and both ends are tried; of equals the lowest
/// magnification wins, because it keeps the wider field.
#[must_use]
pub fn last_luminance_of_zoom(
    eye: &Eye,
    optics: &Optics,
    magnification_low: f64,
    magnification_high: f64,
    sp_ratio: f64,
    patch: &Patch,
) -> (f64, LastLuminance) {
    let at = |magnification: f64| {
        let optics = Optics {
            magnification,
            ..*optics
        };
        last_luminance(eye, &optics, sp_ratio, patch)
    };
    let mut best = (magnification_low, at(magnification_low));
    let step = libm::pow(2.0, 0.125);
    let mut magnification = magnification_low * step;
    while magnification < magnification_high * step {
        let m = magnification.min(magnification_high);
        let last = at(m);
        if last.cd_m2() < best.1.cd_m2() {
            best = (m, last);
        }
        magnification *= step;
    }
    best
}
