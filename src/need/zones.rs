//! Where a time zone's town lies: a first guess of the place.

use crate::plain::decimal;

/// Name, latitude and longitude of each zone's town, whole degrees.
const ZONES: &str = include_str!("zones.txt");

/// Latitude (north positive) and longitude (east positive) of a time zone's town, whole
/// degrees; none for a zone that is not in the table.
///
/// # Accuracy
/// A zone spans hundreds of kilometres: good for the season's light, to be made sharper by
/// the person. Half a degree by rounding.
///
/// # Source
/// The tz database's `zone1970.tab` and `zone.tab`, public domain.
///
/// # Example
/// ```
/// use scopewright::need::zones::zone_place_deg;
/// assert_eq!(zone_place_deg("Europe/Berlin"), Some((52.0, 13.0)));
/// assert_eq!(zone_place_deg("Etc/UTC"), None);
/// ```
#[must_use]
pub fn zone_place_deg(zone: &str) -> Option<(f64, f64)> {
    ZONES.lines().find_map(|line| {
        let mut words = line.split(' ');
        if words.next()? != zone {
            return None;
        }
        let latitude = decimal(words.next()?)?;
        let longitude = decimal(words.next()?)?;
        Some((latitude, longitude))
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_zone_lies_on_the_globe() {
        let mut count = 0;
        for line in ZONES.lines() {
            let name = line.split(' ').next().unwrap();
            let (latitude, longitude) = zone_place_deg(name).unwrap();
            assert!((-90.0..=90.0).contains(&latitude), "{line}");
            assert!((-180.0..=180.0).contains(&longitude), "{line}");
            count += 1;
        }
        assert!(count > 400, "{count}");
    }
}
