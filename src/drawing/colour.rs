//! Colours computed from light: the dusk strip's band and what an adapted eye is shown.

/// A colour as sRGB bytes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Srgb(pub u8, pub u8, pub u8);

impl Srgb {
    /// `#rrggbb`.
    #[must_use]
    pub fn hex(self) -> String {
        let mut out = String::with_capacity(7);
        out.push('#');
        for byte in [self.0, self.1, self.2] {
            for nibble in [byte >> 4, byte & 15] {
                out.push(char::from(if nibble < 10 {
                    b'0' + nibble
                } else {
                    b'a' + nibble - 10
                }));
            }
        }
        out
    }

    /// Linear light of the three channels, 0 to 1.
    #[must_use]
    pub fn linear(self) -> [f64; 3] {
        [self.0, self.1, self.2].map(|byte| {
            let c = f64::from(byte) / 255.0;
            if c <= 0.040_45 {
                c / 12.92
            } else {
                libm::pow((c + 0.055) / 1.055, 2.4)
            }
        })
    }

    /// From linear light; out of range is held at the ends.
    #[must_use]
    pub fn from_linear(rgb: [f64; 3]) -> Self {
        let byte = |linear: f64| {
            let c = linear.clamp(0.0, 1.0);
            let c = if c <= 0.003_130_8 {
                12.92 * c
            } else {
                1.055 * libm::pow(c, 1.0 / 2.4) - 0.055
            };
            (255.0 * c).round() as u8
        };
        Self(byte(rgb[0]), byte(rgb[1]), byte(rgb[2]))
    }

    /// Relative luminance Y, 0 to 1 (IEC 61966-2-1, BT.709 primaries).
    #[must_use]
    pub fn relative_luminance(self) -> f64 {
        let [r, g, b] = self.linear();
        0.2126 * r + 0.7152 * g + 0.0722 * b
    }
}

/// OKLab of linear sRGB.
///
/// # Source
/// B. Ottosson, "A perceptual color space for image processing", 2020.
fn oklab([r, g, b]: [f64; 3]) -> [f64; 3] {
    // A third power: the page has `pow`, and `cbrt` is 0.7 kB more for the last bit.
    let root = |cone: f64| libm::pow(cone, 1.0 / 3.0);
    let l = root(0.412_221_470_8 * r + 0.536_332_536_3 * g + 0.051_445_992_9 * b);
    let m = root(0.211_903_498_2 * r + 0.680_699_545_1 * g + 0.107_396_956_6 * b);
    let s = root(0.088_302_461_9 * r + 0.281_718_837_6 * g + 0.629_978_700_5 * b);
    [
        0.210_454_255_3 * l + 0.793_617_785_0 * m - 0.004_072_046_8 * s,
        1.977_998_495_1 * l - 2.428_592_205_0 * m + 0.450_593_709_9 * s,
        0.025_904_037_1 * l + 0.782_771_766_2 * m - 0.808_675_766_0 * s,
    ]
}

/// Linear sRGB of OKLab.
fn from_oklab([lightness, a, b]: [f64; 3]) -> [f64; 3] {
    let cube = |v: f64| v * v * v;
    let l = cube(lightness + 0.396_337_777_4 * a + 0.215_803_757_3 * b);
    let m = cube(lightness - 0.105_561_345_8 * a - 0.063_854_172_8 * b);
    let s = cube(lightness - 0.089_484_177_5 * a - 1.291_485_548_0 * b);
    [
        4.076_741_662_1 * l - 3.307_711_591_3 * m + 0.230_969_929_2 * s,
        -1.268_438_004_6 * l + 2.609_757_401_1 * m - 0.341_319_396_5 * s,
        -0.004_196_086_3 * l - 0.703_418_614_7 * m + 1.707_614_701_0 * s,
    ]
}

/// The dusk strip's stops: log₁₀ of the illuminance in lux, and the colour there.
pub const DUSK_STOPS: [(f64, Srgb); 6] = [
    (4.0, Srgb(0xCF, 0xE0, 0xEA)),
    (2.7, Srgb(0xF0, 0xD9, 0xAE)),
    (1.5, Srgb(0xD9, 0x8F, 0x62)),
    (0.5, Srgb(0x7A, 0x5C, 0x7E)),
    (-0.9, Srgb(0x2E, 0x35, 0x55)),
    (-2.1, Srgb(0x0F, 0x12, 0x20)),
];

/// The colour of the dusk strip at an illuminance, between the stops in OKLab.
#[must_use]
pub fn dusk_colour(illuminance_lx: f64) -> Srgb {
    let level = if illuminance_lx > 0.0 {
        libm::log10(illuminance_lx)
    } else {
        f64::NEG_INFINITY
    };
    let mut bright = DUSK_STOPS[0];
    for dark in DUSK_STOPS {
        if level >= bright.0 {
            return bright.1;
        }
        if level >= dark.0 {
            let t = (bright.0 - level) / (bright.0 - dark.0);
            let (from, to) = (oklab(bright.1.linear()), oklab(dark.1.linear()));
            let between = [0, 1, 2].map(|i| from[i] + t * (to[i] - from[i]));
            return Srgb::from_linear(from_oklab(between));
        }
        bright = dark;
    }
    bright.1
}

/// CIE lightness L* of the picture's ground for a luminance that the eye adapts to.
///
/// A screen cannot show four decades; lightness falls by 14 a decade, from 88 at 100 cd/m²
/// to 4 at 10⁻⁴. Inside one picture ratios of luminance are kept as they are.
#[must_use]
pub fn shown_lightness(luminance_cd_m2: f64) -> f64 {
    if luminance_cd_m2 <= 0.0 {
        return 4.0;
    }
    (60.0 + 14.0 * libm::log10(luminance_cd_m2)).clamp(4.0, 88.0)
}

/// Relative luminance Y of a CIE lightness L*.
#[must_use]
pub fn luminance_of_lightness(lightness: f64) -> f64 {
    if lightness > 8.0 {
        let t = (lightness + 16.0) / 116.0;
        t * t * t
    } else {
        lightness / 903.3
    }
}

/// What lights up least and most saturated in a scene: a hue to carry the luminance.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Hue(pub [f64; 3]);

impl Hue {
    /// Green grass.
    pub const GRASS: Hue = Hue([0.9, 1.05, 0.66]);
    /// Dry grass and stubble, soil.
    pub const STRAW: Hue = Hue([1.12, 1.0, 0.62]);
    /// Snow under the sky.
    pub const SNOW: Hue = Hue([0.96, 1.0, 1.1]);
    /// Foliage of a wood's edge.
    pub const FOLIAGE: Hue = Hue([0.75, 1.08, 0.72]);
    /// The sky over the wood.
    pub const SKY: Hue = Hue([0.9, 1.0, 1.28]);
    /// A brown coat.
    pub const COAT: Hue = Hue([1.42, 0.92, 0.5]);
    /// Without colour: black coats, steel, paper.
    pub const NEUTRAL: Hue = Hue([1.0, 1.0, 1.0]);
}

/// The colour shown for a relative luminance, with the hue as far as cones see it.
///
/// `adaptation` is the share of cones, 0 to 1: by rods alone everything is a bluish grey.
#[must_use]
pub fn shown_colour(relative_luminance: f64, hue: Hue, adaptation: f64) -> Srgb {
    const ROD_GREY: [f64; 3] = [0.95, 1.0, 1.1];
    let m = adaptation.clamp(0.0, 1.0);
    let mixed = [0, 1, 2].map(|i| m * hue.0[i] + (1.0 - m) * ROD_GREY[i]);
    let own = 0.2126 * mixed[0] + 0.7152 * mixed[1] + 0.0722 * mixed[2];
    Srgb::from_linear(mixed.map(|channel| channel / own * relative_luminance))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_stops_come_back_as_they_are() {
        for (level, colour) in DUSK_STOPS {
            let lx = libm::pow(10.0, level);
            let got = dusk_colour(lx);
            for (a, b) in [(got.0, colour.0), (got.1, colour.1), (got.2, colour.2)] {
                assert!(a.abs_diff(b) <= 1, "{level}: {got:?} {colour:?}");
            }
        }
        assert_eq!(dusk_colour(0.0), DUSK_STOPS[5].1);
        assert_eq!(dusk_colour(1e5), DUSK_STOPS[0].1);
    }

    #[test]
    fn white_and_red_have_their_oklab() {
        // Ottosson 2020, table of test values: white (1, 0, 0), sRGB red (0.628, 0.225, 0.126).
        let white = oklab([1.0, 1.0, 1.0]);
        assert!((white[0] - 1.0).abs() < 1e-3 && white[1].abs() < 1e-3 && white[2].abs() < 1e-3);
        let red = oklab([1.0, 0.0, 0.0]);
        for (got, want) in red.iter().zip([0.628, 0.225, 0.126]) {
            assert!((got - want).abs() < 1e-3, "{red:?}");
        }
        let back = from_oklab(oklab([0.2, 0.5, 0.7]));
        for (got, want) in back.iter().zip([0.2, 0.5, 0.7]) {
            assert!((got - want).abs() < 1e-6);
        }
    }

    #[test]
    fn darker_light_is_never_shown_lighter() {
        let mut last = f64::INFINITY;
        for step in 0..80 {
            let lx = libm::pow(10.0, 4.5 - 0.1 * f64::from(step));
            let y = shown_lightness(lx);
            assert!(y <= last);
            last = y;
        }
    }

    #[test]
    fn colours_print_as_hex() {
        assert_eq!(Srgb(0, 10, 255).hex(), "#000aff");
    }
}
