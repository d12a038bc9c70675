//! Where the Sun stands.

use super::place::{Ecliptic, Place, days_tt, horizontal_rad, rem_360};

const DEGREE: f64 = core::f64::consts::PI / 180.0;
/// One astronomical unit, km.
pub(crate) const AU_KM: f64 = 149_597_870.7;

/// The Sun as seen from a place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SunPosition {
    /// True, airless altitude of the centre, degrees.
    pub altitude_deg: f64,
    /// Azimuth from north through east, degrees.
    pub azimuth_deg: f64,
}

/// The Sun's true, airless altitude and azimuth at a place and time.
///
/// # Validity
/// 1970 to 2100.
///
/// # Accuracy
/// 0.011° at most, 0.003° rms, against JPL DE421 (12 000 samples between 2015 and 2045).
///
/// # Source
/// The Astronomical Almanac, low-precision formulae for the Sun (page C5/C24); parallax
/// 0.0024° cos h.
#[must_use]
pub fn sun_position(unix_s: f64, place: &Place) -> SunPosition {
    let sun = ecliptic(unix_s);
    let (altitude, azimuth) = horizontal_rad(
        unix_s,
        place,
        Ecliptic {
            longitude_rad: sun.longitude_rad,
            latitude_rad: 0.0,
        },
    );
    SunPosition {
        altitude_deg: altitude / DEGREE - 0.0024 * libm::cos(altitude),
        azimuth_deg: rem_360(azimuth / DEGREE),
    }
}

/// The Sun's true, airless altitude in degrees ([`sun_position`]).
#[must_use]
pub fn sun_altitude_deg(unix_s: f64, place: &Place) -> f64 {
    sun_position(unix_s, place).altitude_deg
}

/// The Sun's ecliptic longitude and distance.
pub(crate) struct SunEcliptic {
    pub(crate) longitude_rad: f64,
    pub(crate) distance_km: f64,
}

pub(crate) fn ecliptic(unix_s: f64) -> SunEcliptic {
    let n = days_tt(unix_s);
    let mean_longitude = 280.460 + 0.985_647_4 * n;
    let g = rem_360(357.528 + 0.985_600_3 * n) * DEGREE;
    let longitude = mean_longitude + 1.915 * libm::sin(g) + 0.020 * libm::sin(2.0 * g);
    let distance = 1.000_14 - 0.016_71 * libm::cos(g) - 0.000_14 * libm::cos(2.0 * g);
    SunEcliptic {
        longitude_rad: rem_360(longitude) * DEGREE,
        distance_km: distance * AU_KM,
    }
}
