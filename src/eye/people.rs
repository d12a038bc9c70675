//! How differently people of one age see: last luminances over pupils and field factors.

use super::equivalent::Optics;
use super::fast::Tables;
use super::last::{LastLuminance, Patch};
use super::person::Eye;
use super::pupil::SPREAD_MM;
use super::root::bracketed;

/// One standard deviation of the field factor, in log₁₀ (assumption).
///
/// Observers in the field need 1.4 to 2.4 times the laboratory's contrast (Crumey 2014);
/// taken as nine people in ten, that is 0.07, rounded up.
pub const FIELD_FACTOR_SPREAD_DEX: f64 = 0.08;
/// One standard deviation of a pupil measured in the dark, mm (assumption).
pub const MEASURED_SPREAD_MM: f64 = 0.25;

/// What is known of this person's pupil.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PupilKnown {
    /// Only the age: the pupil scatters by 0.8 mm.
    ByAge,
    /// Measured in the dark: 0.25 mm are left.
    Measured,
}

impl PupilKnown {
    /// One standard deviation of the pupil, mm.
    #[must_use]
    pub const fn spread_mm(self) -> f64 {
        match self {
            Self::ByAge => SPREAD_MM,
            Self::Measured => MEASURED_SPREAD_MM,
        }
    }
}

/// One person out of many of the same age.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Person {
    /// Share of the people that this one stands for; all shares add up to 1.
    pub share: f64,
    /// Last luminance, cd/m²: 0 for always, infinite for never.
    pub last_cd_m2: f64,
}

/// Last luminances over pupils (normal, 13 steps of half a standard deviation) and field
/// factors (three points of a normal distribution).
///
/// Called for two sights it returns the same people in the same order, so that zipping
/// the two compares sights person by person.
#[must_use]
pub fn last_luminances(
    eye: &Eye,
    known: PupilKnown,
    optics: &Optics,
    sp_ratio: f64,
    patch: &Patch,
) -> Vec<Person> {
    let tables = Tables::shared();
    let mut people = Vec::with_capacity(39);
    for (z, pupil_share) in pupils() {
        let person = eye.with_offset(eye.pupil_offset_mm() + z * known.spread_mm());
        for (f, factor_share) in [(-SQRT_3, 1.0 / 6.0), (0.0, 2.0 / 3.0), (SQRT_3, 1.0 / 6.0)] {
            // A person who needs more contrast is one who has less of it.
            let patch = Patch {
                contrast: patch.contrast * libm::pow(10.0, -f * FIELD_FACTOR_SPREAD_DEX),
                ..*patch
            };
            people.push(Person {
                share: pupil_share * factor_share,
                last_cd_m2: tables
                    .last_luminance(&person, optics, sp_ratio, &patch)
                    .cd_m2(),
            });
        }
    }
    people
}

/// One standard deviation of the last luminance between people of one age, in log₁₀.
///
/// `None` where the patch is always or never told apart by some of them.
#[must_use]
pub fn last_luminance_spread_dex(
    eye: &Eye,
    known: PupilKnown,
    optics: &Optics,
    sp_ratio: f64,
    patch: &Patch,
) -> Option<f64> {
    let (mut sum, mut squares, mut share) = (0.0, 0.0, 0.0);
    for person in last_luminances(eye, known, optics, sp_ratio, patch) {
        let last = person.last_cd_m2;
        if last > 0.0 && last.is_finite() {
            let log = libm::log10(last);
            sum += person.share * log;
            squares += person.share * log * log;
            share += person.share;
        }
    }
    (share > 0.9).then(|| {
        let mean = sum / share;
        (squares / share - mean * mean).max(0.0).sqrt()
    })
}

/// How much longer one sight serves than another in log₁₀ of luminance, at this eye.
///
/// log₁₀(L_first/L_second): positive if the second sees in less light. `None` where
/// either always or never tells the patch apart.
#[must_use]
pub fn gain_dex(first: LastLuminance, second: LastLuminance) -> Option<f64> {
    match (first, second) {
        (LastLuminance::At(a), LastLuminance::At(b)) => Some(libm::log10(a / b)),
        _ => None,
    }
}

const SQRT_3: f64 = 1.732_050_807_568_877_2;

/// Standard normal deviates in steps of a half and their shares.
fn pupils() -> impl Iterator<Item = (f64, f64)> {
    let density = |z: f64| libm::exp(-0.5 * z * z);
    let deviates = || (-6..=6).map(|i| 0.5 * f64::from(i));
    let total: f64 = deviates().map(density).sum();
    deviates().map(move |z| (z, density(z) / total))
}

/// Last luminance by Landolt-ring acuity: a second opinion beside the threshold model.
///
/// Solves VA(B/F_age, 100 C) δ M = 1, δ the patch's side in minutes of arc, B/F_age not
/// below the ring law's floor 2.974 (100 C)^−1.7234 cd/m². No field factor on this side.
///
/// # Accuracy
/// At 200 m it agrees with [`super::last_luminance`] to 0.06 dex in the median and
/// 0.25 dex at worst over 40 cases. The two share no data, but the agreement rests on
/// the field factor 2√2 and on a half-cycle square as the detail: a check of consistency,
/// not a proof.
///
/// # Source
/// Ikeda, Noda and Yamaguchi, as quoted by a secondary page.
#[must_use]
pub fn landolt_last_luminance(
    eye: &Eye,
    optics: &Optics,
    sp_ratio: f64,
    side_m: f64,
    range_m: f64,
    contrast: f64,
) -> LastLuminance {
    let percent = 100.0 * contrast.abs();
    let floor_cd_m2 = super::acuity::landolt_floor_cd_m2(percent);
    let detail_arcmin = side_m / range_m * 180.0 * 60.0 / core::f64::consts::PI;
    let margin = |log_l: f64| {
        let seen = super::equivalent_luminance(libm::pow(10.0, log_l), eye, optics, sp_ratio);
        let b =
            seen.luminance_cd_m2 / super::threshold::age_factor(eye.age_years(), seen.adaptation);
        let above_floor = libm::log10(b / floor_cd_m2);
        match super::acuity::landolt_acuity(b, percent) {
            Some(acuity) => {
                libm::log10(acuity * detail_arcmin * optics.magnification).min(above_floor)
            }
            None => above_floor.min(-1e-12),
        }
    };
    let (low, high) = (-6.0, 2.5);
    if margin(low) >= 0.0 {
        LastLuminance::Always
    } else if margin(high) < 0.0 {
        LastLuminance::Never
    } else {
        LastLuminance::At(libm::pow(10.0, bracketed(low, high, 1e-10, margin)))
    }
}
