//! The truncated series of the Moon (Meeus, chapter 47).

const DEGREE: f64 = core::f64::consts::PI / 180.0;

/// Multiples of D, M, M′, F; coefficient of the sine of the longitude (10⁻⁶ degrees) and
/// of the cosine of the distance (10⁻³ km).
const LONGITUDE_DISTANCE: [([f64; 4], f64, f64); 27] = [
    ([0.0, 0.0, 1.0, 0.0], 6_288_774.0, -20_905_355.0),
    ([2.0, 0.0, -1.0, 0.0], 1_274_027.0, -3_699_111.0),
    ([2.0, 0.0, 0.0, 0.0], 658_314.0, -2_955_968.0),
    ([0.0, 0.0, 2.0, 0.0], 213_618.0, -569_925.0),
    ([0.0, 1.0, 0.0, 0.0], -185_116.0, 48_888.0),
    ([0.0, 0.0, 0.0, 2.0], -114_332.0, -3_149.0),
    ([2.0, 0.0, -2.0, 0.0], 58_793.0, 246_158.0),
    ([2.0, -1.0, -1.0, 0.0], 57_066.0, -152_138.0),
    ([2.0, 0.0, 1.0, 0.0], 53_322.0, -170_733.0),
    ([2.0, -1.0, 0.0, 0.0], 45_758.0, -204_586.0),
    ([0.0, 1.0, -1.0, 0.0], -40_923.0, -129_620.0),
    ([1.0, 0.0, 0.0, 0.0], -34_720.0, 108_743.0),
    ([0.0, 1.0, 1.0, 0.0], -30_383.0, 104_755.0),
    ([2.0, 0.0, 0.0, -2.0], 15_327.0, 10_321.0),
    ([0.0, 0.0, 1.0, 2.0], -12_528.0, 0.0),
    ([0.0, 0.0, 1.0, -2.0], 10_980.0, 79_661.0),
    ([4.0, 0.0, -1.0, 0.0], 10_675.0, -34_782.0),
    ([0.0, 0.0, 3.0, 0.0], 10_034.0, -23_210.0),
    ([4.0, 0.0, -2.0, 0.0], 8_548.0, -21_636.0),
    ([2.0, 1.0, -1.0, 0.0], -7_888.0, 24_208.0),
    ([2.0, 1.0, 0.0, 0.0], -6_766.0, 30_824.0),
    ([1.0, 0.0, -1.0, 0.0], -5_163.0, -8_379.0),
    ([1.0, 1.0, 0.0, 0.0], 4_987.0, -16_675.0),
    ([2.0, -1.0, 1.0, 0.0], 4_036.0, -12_831.0),
    ([2.0, 0.0, 2.0, 0.0], 3_994.0, -10_445.0),
    ([4.0, 0.0, 0.0, 0.0], 3_861.0, -11_650.0),
    ([2.0, 0.0, -3.0, 0.0], 3_665.0, 14_403.0),
];

/// Multiples of D, M, M′, F; coefficient of the sine of the latitude (10⁻⁶ degrees).
const LATITUDE: [([f64; 4], f64); 14] = [
    ([0.0, 0.0, 0.0, 1.0], 5_128_122.0),
    ([0.0, 0.0, 1.0, 1.0], 280_602.0),
    ([0.0, 0.0, 1.0, -1.0], 277_693.0),
    ([2.0, 0.0, 0.0, -1.0], 173_237.0),
    ([2.0, 0.0, -1.0, 1.0], 55_413.0),
    ([2.0, 0.0, -1.0, -1.0], 46_271.0),
    ([2.0, 0.0, 0.0, 1.0], 32_573.0),
    ([0.0, 0.0, 2.0, 1.0], 17_198.0),
    ([2.0, 0.0, 1.0, -1.0], 9_266.0),
    ([0.0, 0.0, 2.0, -1.0], 8_822.0),
    ([2.0, -1.0, 0.0, -1.0], 8_216.0),
    ([2.0, 0.0, -2.0, -1.0], 4_324.0),
    ([2.0, 0.0, 1.0, 1.0], 4_200.0),
    ([2.0, 1.0, 0.0, -1.0], -3_359.0),
];

/// Geocentric ecliptic position of the Moon.
pub(super) struct Geocentric {
    pub(super) longitude_deg: f64,
    pub(super) latitude_deg: f64,
    pub(super) distance_km: f64,
}

/// The Moon at `t` Julian centuries after noon of 1 January 2000 (dynamical time).
pub(super) fn geocentric(t: f64) -> Geocentric {
    let t2 = t * t;
    let mean_longitude = 218.316_447_7 + 481_267.881_234_21 * t - 0.001_578_6 * t2;
    let arguments = [
        297.850_192_1 + 445_267.111_403_4 * t - 0.001_881_9 * t2,
        357.529_109_2 + 35_999.050_290_9 * t - 0.000_153_6 * t2,
        134.963_396_4 + 477_198.867_505_5 * t + 0.008_741_4 * t2,
        93.272_095_0 + 483_202.017_523_3 * t - 0.003_653_9 * t2,
    ];
    let eccentricity = 1.0 - 0.002_516 * t - 0.000_007_4 * t2;
    let angle = |k: &[f64; 4]| {
        (k[0] * arguments[0] + k[1] * arguments[1] + k[2] * arguments[2] + k[3] * arguments[3])
            * DEGREE
    };
    let weight = |k: &[f64; 4]| if k[1] == 0.0 { 1.0 } else { eccentricity };
    let (mut longitude, mut distance, mut latitude) = (0.0, 0.0, 0.0);
    for (k, a, r) in &LONGITUDE_DISTANCE {
        let arg = angle(k);
        longitude += a * weight(k) * libm::sin(arg);
        distance += r * weight(k) * libm::cos(arg);
    }
    for (k, b) in &LATITUDE {
        latitude += b * weight(k) * libm::sin(angle(k));
    }
    longitude += 3958.0 * libm::sin((119.75 + 131.849 * t) * DEGREE)
        + 1962.0 * libm::sin((mean_longitude - arguments[3]) * DEGREE);
    latitude -= 2235.0 * libm::sin(mean_longitude * DEGREE);
    Geocentric {
        longitude_deg: mean_longitude + 1e-6 * longitude,
        latitude_deg: 1e-6 * latitude,
        distance_km: 385_000.56 + 1e-3 * distance,
    }
}
