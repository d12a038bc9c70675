//! Evenly spread coordinates: Sobol's sequence, scrambled after Owen.
//!
//! # Source
//! Burley (2020), *Practical hash-based Owen scrambling*, Journal of Computer Graphics
//! Techniques 9(4); direction numbers of Joe and Kuo (2008), *Constructing Sobol sequences with
//! better two-dimensional projections*, SIAM Journal on Scientific Computing 30, file
//! new-joe-kuo-6; the hash of the scrambling after the crate `sobol_burley`, which gives the
//! same points and against which they are checked. The crate's table of 256 dimensions weighs
//! more than all else here together; here 64 are kept.

/// How many dimensions there are.
pub(super) const DIMENSIONS: usize = 64;
/// Points that differ: 2¹⁶.
const DEPTH: usize = 16;

/// The polynomial and the first numbers of the second dimension and of those after it.
#[rustfmt::skip]
const FIRST: [&[u16]; DIMENSIONS - 1] = [
    &[0, 1],
    &[1, 1, 3],
    &[1, 1, 3, 1],
    &[2, 1, 1, 1],
    &[1, 1, 1, 3, 3],
    &[4, 1, 3, 5, 13],
    &[2, 1, 1, 5, 5, 17],
    &[4, 1, 1, 5, 5, 5],
    &[7, 1, 1, 7, 11, 19],
    &[11, 1, 1, 5, 1, 1],
    &[13, 1, 1, 1, 3, 11],
    &[14, 1, 3, 5, 5, 31],
    &[1, 1, 3, 3, 9, 7, 49],
    &[13, 1, 1, 1, 15, 21, 21],
    &[16, 1, 3, 1, 13, 27, 49],
    &[19, 1, 1, 1, 15, 7, 5],
    &[22, 1, 3, 1, 15, 13, 25],
    &[25, 1, 1, 5, 5, 19, 61],
    &[1, 1, 3, 7, 11, 23, 15, 103],
    &[4, 1, 3, 7, 13, 13, 15, 69],
    &[7, 1, 1, 3, 13, 7, 35, 63],
    &[8, 1, 3, 5, 9, 1, 25, 53],
    &[14, 1, 3, 1, 13, 9, 35, 107],
    &[19, 1, 3, 1, 5, 27, 61, 31],
    &[21, 1, 1, 5, 11, 19, 41, 61],
    &[28, 1, 3, 5, 3, 3, 13, 69],
    &[31, 1, 1, 7, 13, 1, 19, 1],
    &[32, 1, 3, 7, 5, 13, 19, 59],
    &[37, 1, 1, 3, 9, 25, 29, 41],
    &[41, 1, 3, 5, 13, 23, 1, 55],
    &[42, 1, 3, 7, 3, 13, 59, 17],
    &[50, 1, 3, 1, 3, 5, 53, 69],
    &[55, 1, 1, 5, 5, 23, 33, 13],
    &[56, 1, 1, 7, 7, 1, 61, 123],
    &[59, 1, 1, 7, 9, 13, 61, 49],
    &[62, 1, 3, 3, 5, 3, 55, 33],
    &[14, 1, 3, 1, 15, 31, 13, 49, 245],
    &[21, 1, 3, 5, 15, 31, 59, 63, 97],
    &[22, 1, 3, 1, 11, 11, 11, 77, 249],
    &[38, 1, 3, 1, 11, 27, 43, 71, 9],
    &[47, 1, 1, 7, 15, 21, 11, 81, 45],
    &[49, 1, 3, 7, 3, 25, 31, 65, 79],
    &[50, 1, 3, 1, 1, 19, 11, 3, 205],
    &[52, 1, 1, 5, 9, 19, 21, 29, 157],
    &[56, 1, 3, 7, 11, 1, 33, 89, 185],
    &[67, 1, 3, 3, 3, 15, 9, 79, 71],
    &[70, 1, 3, 7, 11, 15, 39, 119, 27],
    &[84, 1, 1, 3, 1, 11, 31, 97, 225],
    &[97, 1, 1, 1, 3, 23, 43, 57, 177],
    &[103, 1, 3, 7, 7, 17, 17, 37, 71],
    &[115, 1, 3, 1, 5, 27, 63, 123, 213],
    &[122, 1, 1, 3, 5, 11, 43, 53, 133],
    &[8, 1, 3, 5, 5, 29, 17, 47, 173, 479],
    &[13, 1, 3, 3, 11, 3, 1, 109, 9, 69],
    &[16, 1, 1, 1, 5, 17, 39, 23, 5, 343],
    &[22, 1, 3, 1, 5, 25, 15, 31, 103, 499],
    &[25, 1, 1, 1, 11, 11, 17, 63, 105, 183],
    &[44, 1, 1, 5, 11, 9, 29, 97, 231, 363],
    &[47, 1, 1, 5, 15, 19, 45, 41, 7, 383],
    &[52, 1, 3, 7, 7, 31, 19, 83, 137, 221],
    &[55, 1, 1, 1, 3, 23, 15, 111, 223, 83],
    &[59, 1, 1, 5, 13, 31, 15, 55, 25, 161],
    &[62, 1, 1, 3, 13, 25, 47, 39, 87, 257],
];

/// For each dimension and each binary digit of the place, the digits that it turns, first
/// digit lowest.
static TURNS: [[u16; DEPTH]; DIMENSIONS] = turns();

const fn turns() -> [[u16; DEPTH]; DIMENSIONS] {
    let mut all = [[0; DEPTH]; DIMENSIONS];
    let mut dimension = 0;
    while dimension < DIMENSIONS {
        // Joe and Kuo's recurrence, with the first digit highest.
        let mut v = [0_u16; DEPTH];
        let mut at = 0;
        while at < DEPTH {
            v[at] = if dimension == 0 {
                1 << (DEPTH - 1 - at)
            } else {
                let row = FIRST[dimension - 1];
                let degree = row.len() - 1;
                if at < degree {
                    row[at + 1] << (DEPTH - 1 - at)
                } else {
                    let mut sum = v[at - degree] ^ (v[at - degree] >> degree);
                    let mut k = 1;
                    while k < degree {
                        sum ^= ((row[0] >> (degree - 1 - k)) & 1) * v[at - k];
                        k += 1;
                    }
                    sum
                }
            };
            at += 1;
        }
        let mut at = 0;
        while at < DEPTH {
            all[dimension][at] = v[at].reverse_bits();
            at += 1;
        }
        dimension += 1;
    }
    all
}

/// A coordinate of one point, in [0, 1). Another seed gives another, unrelated sequence;
/// a dimension beyond the last that of the last.
pub(super) fn coordinate(point: u32, dimension: u32, seed: u32) -> f32 {
    let place = scrambled(point.reverse_bits(), hashed(seed ^ 0x79c6_8e4a)).reverse_bits();
    let row = &TURNS[(dimension as usize).min(DIMENSIONS - 1)];
    let mut sobol = 0_u16;
    for (digit, turned) in row.iter().enumerate() {
        if place >> digit & 1 == 1 {
            sobol ^= turned;
        }
    }
    let scramble = (dimension >> 2)
        ^ seed.wrapping_mul(0x9c8f_2d3b)
        ^ [0x912f_69ba, 0x174f_18ab, 0x691e_72ca, 0xb40c_c1b8][dimension as usize & 3];
    let bits = scrambled(u32::from(sobol), hashed(scramble)).reverse_bits();
    f32::from_bits((bits >> 9) | 0x3f80_0000) - 1.0
}

/// Owen's scrambling of a number whose first digit is lowest.
fn scrambled(mut number: u32, scramble: u32) -> u32 {
    number ^= number.wrapping_mul(0x3d20_adea);
    number = number.wrapping_add(scramble);
    number = number.wrapping_mul((scramble >> 16) | 1);
    number ^= number.wrapping_mul(0x0552_6c56);
    number ^ number.wrapping_mul(0x53a2_2864)
}

fn hashed(mut number: u32) -> u32 {
    number ^= 0xe6fe_3beb;
    number ^= number >> 16;
    number = number.wrapping_mul(0x7feb_352d);
    number ^= number >> 15;
    number = number.wrapping_mul(0x846c_a68b);
    number ^ (number >> 16)
}

#[cfg(test)]
mod tests {
    use super::{DIMENSIONS, coordinate};

    /// The crate `sobol_burley` 0.5 gives the same points, to the bit.
    #[test]
    fn the_points_are_those_of_a_reference_library() {
        for seed in [0, 1, 77] {
            for dimension in 0..DIMENSIONS as u32 {
                for point in (0..300).chain([511, 512, 1023, 4095, 40_000, 65_535]) {
                    let ours = coordinate(point, dimension, seed);
                    let theirs = sobol_burley::sample(point, dimension, seed);
                    assert_eq!(
                        ours.to_bits(),
                        theirs.to_bits(),
                        "{point} {dimension} {seed}"
                    );
                }
            }
        }
    }
}
