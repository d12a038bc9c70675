//! Where a time zone's town lies: a first guess of the place.

/// Name, latitude and longitude of each zone's town, whole degrees, a line each.
const TEXT: &str = include_str!("zones.txt");

/// How many lines the table has.
const COUNT: usize = {
    let (mut count, mut at) = (0, 0);
    while at < TEXT.len() {
        count += (TEXT.as_bytes()[at] == b'\n') as usize;
        at += 1;
    }
    count
};

/// A zone as it is carried: the name's number, low byte first, then latitude and half the
/// longitude from their lowest on.
type Packed = [u8; 5];

/// The table without its names, which would be two thirds of it.
const ZONES: [Packed; COUNT] = {
    let text = TEXT.as_bytes();
    let mut zones = [[0; 5]; COUNT];
    let (mut line, mut at) = (0, 0);
    while line < COUNT {
        let (mut number, mut degrees) = (EMPTY, [0_i16; 2]);
        while text[at] != b' ' {
            number = with(number, text[at]);
            at += 1;
        }
        let mut which = 0;
        while which < 2 {
            at += 1;
            let is_negative = text[at] == b'-';
            at += is_negative as usize;
            while text[at].is_ascii_digit() {
                degrees[which] = degrees[which] * 10 + (text[at] - b'0') as i16;
                at += 1;
            }
            if is_negative {
                degrees[which] = -degrees[which];
            }
            which += 1;
        }
        assert!(text[at] == b'\n', "a line is: name, latitude, longitude");
        at += 1;
        let [low, middle, high, _] = number.to_le_bytes();
        let [latitude, longitude] = degrees;
        zones[line] = [
            low,
            middle,
            high,
            (latitude + 90) as u8,
            ((longitude + 181) / 2) as u8,
        ];
        line += 1;
    }
    zones
};

/// The number of a name without letters (FNV-1a of 32 bits, *published*).
const EMPTY: u32 = 0x811c_9dc5;

/// The number of a name that is one letter longer.
const fn with(number: u32, letter: u8) -> u32 {
    (number ^ letter as u32).wrapping_mul(0x0100_0193)
}

/// Latitude (north positive) and longitude (east positive) of a time zone's town, degrees;
/// none for a zone that is not in the table.
///
/// # Accuracy
/// A zone spans hundreds of kilometres: good for the season's light, to be made sharper by
/// the person. Half a degree by rounding, one in longitude. A name that is no zone's is taken
/// for one in one of 40 000.
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
    let number = zone.bytes().fold(EMPTY, with).to_le_bytes();
    ZONES
        .iter()
        .find_map(|&[low, middle, high, latitude, longitude]| {
            ([low, middle, high] == number[..3]).then(|| {
                (
                    f64::from(latitude) - 90.0,
                    f64::from(longitude) * 2.0 - 181.0,
                )
            })
        })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_zone_is_found_where_its_line_says() {
        let mut count = 0;
        for line in TEXT.lines() {
            let mut words = line.split(' ');
            let mut next = || words.next().unwrap();
            let found = zone_place_deg(next()).unwrap();
            let [latitude, longitude] = [(); 2].map(|()| crate::plain::decimal(next()).unwrap());
            assert!((-90.0..=90.0).contains(&latitude), "{line}");
            assert!((-180.0..=180.0).contains(&longitude), "{line}");
            assert_eq!(found.0, latitude, "{line}");
            assert!((found.1 - longitude).abs() <= 1.0, "{line}");
            count += 1;
        }
        assert!(count > 400, "{count}");
    }

    #[test]
    fn what_is_no_zone_is_not_found() {
        for name in ["", "Europe", "Europe/Berlin ", "europe/berlin", "Etc/UTC"] {
            assert_eq!(zone_place_deg(name), None, "{name}");
        }
    }
}
