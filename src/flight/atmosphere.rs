//! Air: the standard atmosphere, and air as measured at the place.

use crate::quantity::{OutOfRange, within};

/// Standard acceleration of free fall in m/s².
pub const G0_M_S2: f64 = 9.80665;
/// Gas constant of dry air in J/(kg·K).
pub const R_DRY: f64 = 287.05287;
/// Gas constant of water vapour in J/(kg·K).
const R_VAPOUR: f64 = 461.495;
/// Ratio of the specific heats of dry air.
const GAMMA: f64 = 1.4;
/// Temperature at sea level in K.
const T0_K: f64 = 288.15;
/// Pressure at sea level in Pa.
const P0_PA: f64 = 101_325.0;
/// Nominal radius of the Earth in m.
const EARTH_M: f64 = 6_356_766.0;
/// 0 °C in K.
const ZERO_CELSIUS_K: f64 = 273.15;

/// Layers of the standard atmosphere: base height (geopotential m) and lapse (K/m).
const LAYERS: [(f64, f64); 7] = [
    (0.0, -0.0065),
    (11_000.0, 0.0),
    (20_000.0, 0.001),
    (32_000.0, 0.0028),
    (47_000.0, 0.0),
    (51_000.0, -0.0028),
    (71_000.0, -0.002),
];

/// The air that a bullet flies through.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Air {
    /// Density in kg/m³.
    pub density_kg_m3: f64,
    /// Speed of sound in m/s.
    pub speed_of_sound_m_s: f64,
    /// Static pressure in hPa.
    pub pressure_hpa: f64,
    /// Temperature in K.
    pub temperature_k: f64,
}

/// The standard atmosphere at sea level: 15 °C, 1013.25 hPa, dry.
pub const SEA_LEVEL: Air = Air {
    density_kg_m3: 1.225,
    speed_of_sound_m_s: 340.294,
    pressure_hpa: 1013.25,
    temperature_k: T0_K,
};

/// The geopotential height in m of a geometric height, `H = r·h/(r + h)`.
///
/// # Source
/// ISO 2533:1975.
#[must_use]
pub fn geopotential_m(geometric_m: f64) -> f64 {
    EARTH_M * geometric_m / (EARTH_M + geometric_m)
}

/// The standard atmosphere at a geopotential height.
///
/// `T = T_b + L·(H − H_b)`, `p = p_b·(T/T_b)^(−g0/(R·L))` or `p_b·exp(−g0·(H − H_b)/(R·T))`.
///
/// # Errors
/// [`OutOfRange`] outside −2000 to 80 000 m.
///
/// # Accuracy
/// The printed digits of the standard's table (`tests/reference_flight.rs`).
///
/// # Source
/// ISO 2533:1975, identical with the ICAO standard atmosphere to 32 km.
pub fn standard_at_geopotential(height_m: f64) -> Result<Air, OutOfRange> {
    let height = within("altitude_m", height_m, -2000.0, 80_000.0)?;
    let mut temperature = T0_K;
    let mut pressure = P0_PA;
    for (layer, &(base, lapse)) in LAYERS.iter().enumerate() {
        let top = LAYERS.get(layer + 1).map_or(f64::INFINITY, |next| next.0);
        let rise = height.min(top) - base;
        let at_top = temperature + lapse * rise;
        pressure *= if lapse == 0.0 {
            libm::exp(-G0_M_S2 * rise / (R_DRY * temperature))
        } else {
            libm::pow(at_top / temperature, -G0_M_S2 / (R_DRY * lapse))
        };
        temperature = at_top;
        if height <= top {
            break;
        }
    }
    Ok(dry(pressure, temperature))
}

/// The standard atmosphere at a geometric height: what a map shows.
///
/// # Errors
/// [`OutOfRange`] outside −2000 to 80 000 m.
///
/// # Example
/// ```
/// use scopewright::flight::atmosphere::standard;
/// let air = standard(2000.0).unwrap();
/// assert!((air.density_kg_m3 - 1.00655).abs() < 5e-6);
/// assert!(standard(f64::NAN).is_err());
/// ```
pub fn standard(geometric_m: f64) -> Result<Air, OutOfRange> {
    within("altitude_m", geometric_m, -2000.0, 80_000.0)?;
    standard_at_geopotential(geopotential_m(geometric_m))
}

/// Air as measured: *station* pressure (not reduced to sea level), temperature, humidity.
///
/// `ρ = (p − e)/(R_d·T) + e/(R_v·T)`, `e = RH·611.21·exp[(18.678 − t/234.5)·t/(257.14 + t)]`;
/// the speed of sound rises by 0.16·e/p.
///
/// # Errors
/// [`OutOfRange`] for pressures outside 300 to 1100 hPa, temperatures outside −60 to 60 °C,
/// humidity outside 0 to 1.
///
/// # Accuracy
/// 1e-4 of density.
///
/// # Source
/// Saturation pressure in Buck's form (Buck 1981, revised coefficients; from memory).
pub fn measured(
    station_pressure_hpa: f64,
    temperature_c: f64,
    relative_humidity: f64,
) -> Result<Air, OutOfRange> {
    let p = 100.0 * within("station_pressure_hpa", station_pressure_hpa, 300.0, 1100.0)?;
    let t = within("temperature_c", temperature_c, -60.0, 60.0)?;
    let rh = within("relative_humidity", relative_humidity, 0.0, 1.0)?;
    let kelvin = t + ZERO_CELSIUS_K;
    let e = rh * 611.21 * libm::exp((18.678 - t / 234.5) * t / (257.14 + t));
    let dry_air = dry(p, kelvin);
    Ok(Air {
        density_kg_m3: (p - e) / (R_DRY * kelvin) + e / (R_VAPOUR * kelvin),
        speed_of_sound_m_s: dry_air.speed_of_sound_m_s * (1.0 + 0.16 * e / p),
        ..dry_air
    })
}

/// Air at a place: standard pressure for its height, temperature as met there.
///
/// # Errors
/// [`OutOfRange`] as [`standard`] and [`measured`].
pub fn at_place(
    geometric_m: f64,
    temperature_c: f64,
    relative_humidity: f64,
) -> Result<Air, OutOfRange> {
    let altitude = within("altitude_m", geometric_m, -400.0, 9000.0)?;
    measured(
        standard(altitude)?.pressure_hpa,
        temperature_c,
        relative_humidity,
    )
}

/// The station pressure in hPa from one reduced to sea level, as forecasts print it.
///
/// # Errors
/// [`OutOfRange`] for pressures outside 850 to 1100 hPa or heights outside −400 to 9000 m.
pub fn station_pressure_hpa(sea_level_hpa: f64, geometric_m: f64) -> Result<f64, OutOfRange> {
    let reduced = within("sea_level_hpa", sea_level_hpa, 850.0, 1100.0)?;
    let altitude = within("altitude_m", geometric_m, -400.0, 9000.0)?;
    Ok(reduced * standard(altitude)?.pressure_hpa / 1013.25)
}

/// Dry air at a pressure in Pa and a temperature in K: `ρ = p/(R·T)`, `a = √(γ·R·T)`.
fn dry(pressure_pa: f64, temperature_k: f64) -> Air {
    Air {
        density_kg_m3: pressure_pa / (R_DRY * temperature_k),
        speed_of_sound_m_s: (GAMMA * R_DRY * temperature_k).sqrt(),
        pressure_hpa: pressure_pa / 100.0,
        temperature_k,
    }
}
