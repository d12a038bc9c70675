//! Illuminance on level ground under a clear sky, from noon to the darkest night.

/// Rows of the Sun's fit: (lower bound of the altitude in degrees, l0, l1, l2, l3).
const SUN: [(f64, [f64; 4]); 6] = [
    (20.0, [3.74, 3.97, -4.07, 1.47]),
    (5.0, [3.05, 13.28, -45.98, 64.33]),
    (-0.8, [2.88, 22.26, -207.64, 1034.30]),
    (-5.0, [2.88, 21.81, -258.11, -858.36]),
    (-12.0, [2.70, 12.17, -431.69, -1899.83]),
    (-18.0, [13.84, 262.72, 1447.42, 2797.93]),
];

/// Rows of the Moon's fit.
const MOON: [(f64, [f64; 4]); 3] = [
    (20.0, [-1.95, 4.06, -4.24, 1.56]),
    (5.0, [-2.58, 12.58, -42.58, 59.06]),
    (-0.8, [-2.79, 24.27, -252.95, 1321.29]),
];

/// The darkest clear night: starlight and airglow, lx.
pub const NIGHT_SKY_LX: f64 = 5.0e-4;
/// The Sun's altitude below which the night grows no darker, degrees.
pub const DARKEST_SUN_DEG: f64 = -20.0;
/// The Moon's mean equatorial horizontal parallax, degrees.
pub const MEAN_PARALLAX_DEG: f64 = 0.951;

fn fit(row: &[f64; 4], altitude_deg: f64) -> f64 {
    let x = altitude_deg / 90.0;
    row[0] + x * (row[1] + x * (row[2] + x * row[3]))
}

/// Clear-sky illuminance on level ground by the Sun's altitude, in lux.
///
/// log₁₀ E = l0 + l1 x + l2 x² + l3 x³, x = h/90, six rows of coefficients down to −18°;
/// from there log-linear to 5·10⁻⁴ lx at −20°, constant below. The natural night sky is
/// contained: starlight must not be added.
///
/// # Validity
/// −90 to 90°, h the true (airless) altitude of the centre. The rows meet with steps of
/// at most 1 % (at −12° and 5°) and 0.3 % (−0.8°), where E is not strictly monotone.
///
/// # Accuracy
/// ±30 % to civil dusk, a factor 1.5 at −9°, 2 at −12 to −18° (haze, height, horizon).
///
/// # Source
/// P. K. Seidelmann (ed.), "Explanatory Supplement to the Astronomical Almanac" (1992),
/// chapter 9. Night: Janiczek and DeYoung, U.S. Naval Observatory Circular 171 (1987).
///
/// # Example
/// ```
/// let lx = scopewright::sky::illuminance::clear_sky_illuminance_lx(-6.0);
/// assert!((lx - 3.41).abs() < 0.01);
/// ```
#[must_use]
pub fn clear_sky_illuminance_lx(sun_altitude_deg: f64) -> f64 {
    if let Some((_, row)) = SUN.iter().find(|(least, _)| sun_altitude_deg >= *least) {
        return libm::pow(10.0, fit(row, sun_altitude_deg));
    }
    let (lowest, row) = &SUN[SUN.len() - 1];
    let top = fit(row, *lowest);
    let floor = libm::log10(NIGHT_SKY_LX);
    let down = ((lowest - sun_altitude_deg) / (lowest - DARKEST_SUN_DEG)).min(1.0);
    libm::pow(10.0, top + (floor - top) * down)
}

/// Clear-sky illuminance of the Moon on level ground, in lux.
///
/// log₁₀ E = L1(h) − 0.4 (0.026 i + 4·10⁻⁹ i⁴) + 2 log₁₀(π/0.951°); zero below −0.8°.
///
/// # Validity
/// h the topocentric airless altitude, i the phase angle (0 full) up to 180°. The surge
/// within hours of full Moon (up to 17 %) and eclipses are left out. E steps to zero at
/// −0.8°.
///
/// # Accuracy
/// Level and phase law within 5 % of the lunar irradiance model of Kieffer and Stone
/// (2005) from 5 to 97°; weather apart.
///
/// # Source
/// Altitude: Explanatory Supplement (1992). Phase: Allen's table in the form of
/// K. Krisciunas and B. E. Schaefer, PASP 103:1033 (1991).
#[must_use]
pub fn moon_illuminance_lx(moon_altitude_deg: f64, phase_angle_deg: f64, parallax_deg: f64) -> f64 {
    let Some((_, row)) = MOON.iter().find(|(least, _)| moon_altitude_deg >= *least) else {
        return 0.0;
    };
    let nearness = libm::log10(parallax_deg / MEAN_PARALLAX_DEG);
    libm::pow(
        10.0,
        fit(row, moon_altitude_deg) - 0.4 * moon_phase_magnitudes(phase_angle_deg) + 2.0 * nearness,
    )
}

/// How many magnitudes the Moon is fainter than when full: 0.026 i + 4·10⁻⁹ i⁴.
#[must_use]
pub fn moon_phase_magnitudes(phase_angle_deg: f64) -> f64 {
    let i = phase_angle_deg.abs();
    let i2 = i * i;
    0.026 * i + 4e-9 * i2 * i2
}

/// Illuminance of a uniform artificial sky above the natural one, in lux.
///
/// E = 108 000 π (10^(−0.4 m) − 10^(−8.8)), m the brightness at the zenith in magnitudes
/// per square arcsecond; zero at 22.0 and darker.
///
/// # Source
/// 108 000 cd/m² for magnitude 0 per square arcsecond, a common conversion.
#[must_use]
pub fn town_illuminance_lx(zenith_mag_arcsec2: f64) -> f64 {
    let natural = libm::pow(10.0, -8.8);
    (core::f64::consts::PI * 108_000.0 * (libm::pow(10.0, -0.4 * zenith_mag_arcsec2) - natural))
        .max(0.0)
}
