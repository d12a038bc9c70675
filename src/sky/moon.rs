//! Where the Moon stands and how much of it is lit.

mod series;

use super::place::{Ecliptic, Place, days_tt, horizontal_rad, rem_360};
use super::sun;

const DEGREE: f64 = core::f64::consts::PI / 180.0;
const EARTH_RADIUS_KM: f64 = 6378.14;

/// The Moon as seen from a place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MoonPosition {
    /// Topocentric, airless altitude of the centre, degrees.
    pub altitude_deg: f64,
    /// Azimuth from north through east, degrees.
    pub azimuth_deg: f64,
    /// Angle Sun–Moon–Earth at the Moon, geocentric, degrees; 0 is full.
    pub phase_angle_deg: f64,
    /// Lit share of the disc, 0 to 1.
    pub illuminated_fraction: f64,
    /// Equatorial horizontal parallax, degrees.
    pub parallax_deg: f64,
    /// Distance from the Earth's centre, km.
    pub distance_km: f64,
}

/// The Moon's position, phase and distance at a place and time.
///
/// tan h = (sin h_geo − sin π)/cos h_geo carries the parallax of up to one degree;
/// cos E = cos β cos(λ − λ☉), phase angle i = atan2(R☉ sin E, Δ − R☉ cos E), lit share
/// (1 + cos i)/2.
///
/// # Validity
/// 1970 to 2100. No refraction, no horizon but the level one, no eclipse.
///
/// # Accuracy
/// Altitude 0.03°, phase angle 0.03°, lit share 0.0002 at most against JPL DE421.
///
/// # Source
/// J. Meeus, "Astronomical Algorithms" (2nd ed. 1998), chapter 47, cut to 27 rows in
/// longitude and distance and 14 in latitude.
#[must_use]
pub fn moon_position(unix_s: f64, place: &Place) -> MoonPosition {
    let t = days_tt(unix_s) / 36_525.0;
    let series::Geocentric {
        longitude_deg,
        latitude_deg,
        distance_km,
    } = series::geocentric(t);
    let at = Ecliptic {
        longitude_rad: rem_360(longitude_deg) * DEGREE,
        latitude_rad: latitude_deg * DEGREE,
    };
    let (geocentric, azimuth) = horizontal_rad(unix_s, place, at);
    let sin_parallax = EARTH_RADIUS_KM / distance_km;
    let altitude = libm::atan2(libm::sin(geocentric) - sin_parallax, libm::cos(geocentric));
    let sun = sun::ecliptic(unix_s);
    let cos_e = libm::cos(at.latitude_rad) * libm::cos(at.longitude_rad - sun.longitude_rad);
    let sin_e = (1.0 - cos_e * cos_e).max(0.0).sqrt();
    let phase = libm::atan2(
        sun.distance_km * sin_e,
        distance_km - sun.distance_km * cos_e,
    );
    MoonPosition {
        altitude_deg: altitude / DEGREE,
        azimuth_deg: rem_360(azimuth / DEGREE),
        phase_angle_deg: phase / DEGREE,
        illuminated_fraction: 0.5 * (1.0 + libm::cos(phase)),
        parallax_deg: libm::asin(sin_parallax) / DEGREE,
        distance_km,
    }
}
