//! Day and night transmission from a spectrum, and the light's scotopic share.

mod tables;

use crate::quantity::{OutOfRange, within};
use tables::{DAYLIGHT, DAYLIGHT_STEP_NM, FIRST_NM, LAST_NM, PHOTOPIC, SCOTOPIC, STEP_NM};

/// The spectrum of the light that falls through the sight.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Light {
    /// The same power at every wavelength.
    Equal,
    /// A lamp or full radiator of a temperature, K.
    Planck(f64),
    /// A phase of daylight by correlated colour temperature, K (4000 to 25 000).
    Daylight(f64),
}

/// The temperature of standard daylight D65, K.
pub const D65_K: f64 = 6504.0;

/// Transmission as the eye weighs it, and the light's scotopic to photopic ratio.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Transmission {
    /// Weighed by V(λ), 0 to 1.
    pub day: f64,
    /// Weighed by V′(λ), 0 to 1.
    pub night: f64,
    /// Scotopic to photopic ratio S/P of the light before the glass.
    pub sp_ratio: f64,
}

/// How much lower the night figure may lie where only one figure is stated.
///
/// A single figure serves for day and night; show this as the band below it. It is worth
/// 0.014 to 0.020 dex.
pub const NIGHT_DEFICIT: f64 = 0.04;

/// Day and night transmission of a measured spectrum in a light.
///
/// T_day = Σ S V τ/Σ S V, T_night = Σ S V′ τ/Σ S V′, S/P = 1700 Σ S V′/(683 Σ S V), sums
/// over 380 to 780 nm in steps of 5 nm; τ runs straight between its samples and is held
/// at both ends.
///
/// # Validity
/// Samples in rising order of wavelength, at least two.
///
/// # Errors
/// [`OutOfRange`] for fewer than two samples, wavelengths that do not rise or lie outside
/// 200 to 2000 nm, a transmission outside 0 to 1, or a light outside 1000 to 50 000 K
/// (daylight 4000 to 25 000 K).
///
/// # Accuracy
/// 2·10⁻⁴ against sums in steps of 1 nm.
///
/// # Source
/// V(λ) CIE 1924, V′(λ) CIE 1951; daylight CIE 15; luminous transmittance as ISO 14490-5
/// measures the quantity.
pub fn transmission(
    samples_nm_and_share: &[(f64, f64)],
    light: Light,
) -> Result<Transmission, OutOfRange> {
    within(
        "number of spectral samples",
        samples_nm_and_share.len() as f64,
        2.0,
        10_000.0,
    )?;
    let mut least_nm = 200.0;
    for &(nm, share) in samples_nm_and_share {
        within("wavelength_nm", nm, least_nm, 2000.0)?;
        within("transmission", share, 0.0, 1.0)?;
        least_nm = nm + 1e-6;
    }
    let spectrum = spectrum(light)?;
    let (mut sv, mut sw, mut svt, mut swt) = (0.0, 0.0, 0.0, 0.0);
    for (i, (v, w)) in PHOTOPIC.iter().zip(&SCOTOPIC).enumerate() {
        let nm = FIRST_NM + STEP_NM * i as f64;
        let power = spectrum(nm);
        let share = at(samples_nm_and_share, nm);
        sv += power * v;
        sw += power * w;
        svt += power * v * share;
        swt += power * w * share;
    }
    Ok(Transmission {
        day: svt / sv,
        night: swt / sw,
        sp_ratio: 1700.0 * sw / (683.0 * sv),
    })
}

/// The sample polygon's value at a wavelength, held at both ends.
fn at(samples: &[(f64, f64)], nm: f64) -> f64 {
    let above = samples.partition_point(|(x, _)| *x < nm);
    if above == 0 {
        return samples[0].1;
    }
    let Some(&(x1, y1)) = samples.get(above) else {
        return samples[samples.len() - 1].1;
    };
    let (x0, y0) = samples[above - 1];
    y0 + (y1 - y0) * (nm - x0) / (x1 - x0)
}

/// Relative power of a light by wavelength in nm.
fn spectrum(light: Light) -> Result<Box<dyn Fn(f64) -> f64>, OutOfRange> {
    Ok(match light {
        Light::Equal => Box::new(|_| 1.0),
        Light::Planck(kelvin) => {
            within("temperature_k", kelvin, 1000.0, 50_000.0)?;
            Box::new(move |nm| {
                let x = nm / 560.0;
                let x2 = x * x;
                // Second radiation constant, 1.438777e-2 m K.
                1.0 / (x2 * x2 * x * libm::expm1(1.438_777e7 / (nm * kelvin)))
            })
        }
        Light::Daylight(kelvin) => {
            within("daylight_k", kelvin, 4000.0, 25_000.0)?;
            let (m1, m2) = daylight_weights(kelvin);
            Box::new(move |nm| {
                let at = (nm.clamp(FIRST_NM, LAST_NM) - FIRST_NM) / DAYLIGHT_STEP_NM;
                let i = (at as usize).min(DAYLIGHT.len() - 2);
                let t = at - i as f64;
                let mixed = |[s0, s1, s2]: [f64; 3]| s0 + m1 * s1 + m2 * s2;
                let (a, b) = (mixed(DAYLIGHT[i]), mixed(DAYLIGHT[i + 1]));
                a + t * (b - a)
            })
        }
    })
}

/// Weights of the two daylight components by correlated colour temperature (CIE 15).
fn daylight_weights(kelvin: f64) -> (f64, f64) {
    let u = 1000.0 / kelvin;
    let x = if kelvin <= 7000.0 {
        0.244_063 + u * (0.099_11 + u * (2.967_8 - u * 4.607_0))
    } else {
        0.237_040 + u * (0.247_48 + u * (1.901_8 - u * 2.006_4))
    };
    let y = -3.0 * x * x + 2.870 * x - 0.275;
    let m = 0.0241 + 0.2562 * x - 0.7341 * y;
    (
        (-1.3515 - 1.7703 * x + 5.9114 * y) / m,
        (0.0300 - 31.4424 * x + 30.0717 * y) / m,
    )
}

/// V(λ) of day vision at a wavelength, between the table's rows.
#[must_use]
pub fn photopic_weight(wavelength_nm: f64) -> f64 {
    weight(&PHOTOPIC, wavelength_nm)
}

/// V′(λ) of night vision at a wavelength, between the table's rows.
#[must_use]
pub fn scotopic_weight(wavelength_nm: f64) -> f64 {
    weight(&SCOTOPIC, wavelength_nm)
}

fn weight(table: &[f64; 81], nm: f64) -> f64 {
    if !(FIRST_NM..=LAST_NM).contains(&nm) {
        return 0.0;
    }
    let at = (nm - FIRST_NM) / STEP_NM;
    let i = (at as usize).min(table.len() - 2);
    table[i] + (at - i as f64) * (table[i + 1] - table[i])
}
