//! A place on the Earth and an instant, checked once.

use crate::quantity::{OutOfRange, within};

/// The last second of the year 2100, seconds since 1970.
pub const LATEST_UNIX_S: f64 = 4_133_980_799.0;
const DEGREE: f64 = core::f64::consts::PI / 180.0;

/// A place by latitude (north positive) and longitude (east positive).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Place {
    latitude_deg: f64,
    longitude_deg_east: f64,
}

impl Place {
    /// A place from its coordinates in degrees.
    ///
    /// # Errors
    /// [`OutOfRange`] for a latitude outside ±90° or a longitude outside ±180°.
    pub fn new(latitude_deg: f64, longitude_deg_east: f64) -> Result<Self, OutOfRange> {
        within("latitude_deg", latitude_deg, -90.0, 90.0)?;
        within("longitude_deg_east", longitude_deg_east, -180.0, 180.0)?;
        Ok(Self {
            latitude_deg,
            longitude_deg_east,
        })
    }

    /// Latitude, degrees, north positive.
    #[must_use]
    pub fn latitude_deg(&self) -> f64 {
        self.latitude_deg
    }

    /// Longitude, degrees, east positive.
    #[must_use]
    pub fn longitude_deg_east(&self) -> f64 {
        self.longitude_deg_east
    }
}

/// `unix_s` if it lies within the years that the positions hold for.
///
/// # Errors
/// [`OutOfRange`] before 1970 and after 2100.
pub fn instant(unix_s: f64) -> Result<f64, OutOfRange> {
    within("unix_s", unix_s, 0.0, LATEST_UNIX_S)
}

/// Days since noon of 1 January 2000, dynamical time (ΔT held at 69.2 s).
pub(crate) fn days_tt(unix_s: f64) -> f64 {
    days_ut(unix_s) + 69.2 / 86_400.0
}

/// Days since noon of 1 January 2000, universal time.
pub(crate) fn days_ut(unix_s: f64) -> f64 {
    unix_s / 86_400.0 + (2_440_587.5 - 2_451_545.0)
}

/// Ecliptic longitude and latitude in radians.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Ecliptic {
    pub(crate) longitude_rad: f64,
    pub(crate) latitude_rad: f64,
}

/// Geocentric altitude and azimuth in radians as seen from a place.
pub(crate) fn horizontal_rad(unix_s: f64, place: &Place, at: Ecliptic) -> (f64, f64) {
    let n = days_tt(unix_s);
    let obliquity = (23.439 - 0.000_000_4 * n) * DEGREE;
    let (sin_e, cos_e) = (libm::sin(obliquity), libm::cos(obliquity));
    let (sin_l, cos_l) = (libm::sin(at.longitude_rad), libm::cos(at.longitude_rad));
    let (sin_b, cos_b) = (libm::sin(at.latitude_rad), libm::cos(at.latitude_rad));
    let x = cos_b * cos_l;
    let y = cos_e * cos_b * sin_l - sin_e * sin_b;
    let z = sin_e * cos_b * sin_l + cos_e * sin_b;
    let right_ascension = libm::atan2(y, x);
    let (sin_d, cos_d) = (z, (x * x + y * y).sqrt());
    let sidereal = rem_360(280.460_618_37 + 360.985_647_366_29 * days_ut(unix_s)) * DEGREE;
    let hour_angle = sidereal + place.longitude_deg_east * DEGREE - right_ascension;
    let phi = place.latitude_deg * DEGREE;
    let (sin_p, cos_p) = (libm::sin(phi), libm::cos(phi));
    let (sin_h, cos_h) = (libm::sin(hour_angle), libm::cos(hour_angle));
    let altitude = libm::asin((sin_p * sin_d + cos_p * cos_d * cos_h).clamp(-1.0, 1.0));
    let azimuth = libm::atan2(-cos_d * sin_h, sin_d * cos_p - cos_d * sin_p * cos_h);
    (altitude, azimuth)
}

/// An angle in degrees brought into 0 to 360.
pub(crate) fn rem_360(deg: f64) -> f64 {
    deg - 360.0 * (deg / 360.0).floor()
}
