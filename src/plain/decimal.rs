//! Decimal numbers read to the nearest double.

use core::cmp::Ordering;

/// Significant digits that are looked at one by one. No point half way between two doubles
/// has more than 767; of further digits it counts only whether there are any.
const DIGITS_MOST: usize = 800;

/// The double nearest to a decimal number, half way to the even one; as in "12", "-0.5",
/// "2.5e-3".
///
/// Nothing for any other text; "inf" and "nan" are no numbers. What is too large is infinite.
///
/// # Accuracy
/// Correctly rounded.
///
/// # Source
/// Division of whole numbers of any length, after Clinger (1990), *How to read floating point
/// numbers accurately*, algorithm AlgorithmM.
///
/// # Example
/// ```
/// use scopewright::plain::decimal;
/// assert_eq!(decimal("0.1"), Some(0.1));
/// assert_eq!(decimal("1,5"), None);
/// ```
#[must_use]
pub fn decimal(text: &str) -> Option<f64> {
    let (negative, text) = match text.as_bytes() {
        [b'-', rest @ ..] => (true, rest),
        [b'+', rest @ ..] => (false, rest),
        rest => (false, rest),
    };
    let mut short = 0_u64;
    let mut long = Vec::new();
    let mut exponent = 0_i32;
    let (mut any, mut fraction, mut counted) = (false, false, 0);
    let mut rest = text;
    while let [first, after @ ..] = rest {
        match first {
            b'0'..=b'9' => {
                any = true;
                exponent -= i32::from(fraction);
                let digit = u32::from(first - b'0');
                if counted > 0 || digit > 0 {
                    counted += 1;
                }
                if counted <= 18 {
                    short = 10 * short + u64::from(digit);
                } else {
                    if long.is_empty() {
                        long = vec![short as u32, (short >> 32) as u32];
                    }
                    if counted <= DIGITS_MOST {
                        times_and(&mut long, 10, digit);
                    } else {
                        exponent += 1;
                        if digit > 0 {
                            // Never a last digit of a half: it only says "and more".
                            long[0] |= 1;
                        }
                    }
                }
            }
            b'.' if !fraction => fraction = true,
            b'e' | b'E' if any => {
                exponent = exponent.saturating_add(power(after)?);
                break;
            }
            _ => return None,
        }
        rest = after;
    }
    if !any {
        return None;
    }
    let size = if long.is_empty() {
        nearest_short(short, exponent)
    } else {
        nearest(long, exponent, counted as i32)
    };
    Some(if negative { -size } else { size })
}

/// The power of ten after the `e`, held within what a double can tell apart.
fn power(text: &[u8]) -> Option<i32> {
    let (sign, digits) = match text {
        [b'-', rest @ ..] => (-1, rest),
        [b'+', rest @ ..] => (1, rest),
        rest => (1, rest),
    };
    if digits.is_empty() {
        return None;
    }
    digits.iter().try_fold(0_i32, |sum, digit| match digit {
        b'0'..=b'9' => Some((10 * sum + sign * i32::from(digit - b'0')).clamp(-100_000, 100_000)),
        _ => None,
    })
}

/// Few digits: exact in one multiplication or division where both sides are exact.
pub(super) fn nearest_short(digits: u64, exponent: i32) -> f64 {
    const EXACT: i32 = 22;
    if digits < 1 << 53 && exponent.abs() <= EXACT {
        let mut scale = 1.0;
        for _ in 0..exponent.abs() {
            scale *= 10.0;
        }
        return if exponent < 0 {
            digits as f64 / scale
        } else {
            digits as f64 * scale
        };
    }
    nearest(vec![digits as u32, (digits >> 32) as u32], exponent, 18)
}

/// The double nearest to `digits` · 10^`exponent`, which has at most `count` digits before it.
fn nearest(mut above: Vec<u32>, exponent: i32, count: i32) -> f64 {
    trim(&mut above);
    if above.is_empty() || exponent.saturating_add(count.min(DIGITS_MOST as i32)) < -324 {
        return 0.0;
    }
    if exponent > 309 {
        return f64::INFINITY;
    }
    let mut below = vec![1];
    for _ in 0..exponent.abs() {
        times_and(if exponent < 0 { &mut below } else { &mut above }, 10, 0);
    }
    // above / below · 2^binary with 1 ≤ above / below < 2.
    let mut binary = bits(&above) - bits(&below);
    double(
        if binary < 0 { &mut above } else { &mut below },
        binary.abs(),
    );
    if compare(&above, &below) == Ordering::Less {
        binary -= 1;
        double(&mut above, 1);
    }
    if binary > 1023 {
        return f64::INFINITY;
    }
    // Below 2^-1022 a double has fewer digits.
    let digits = if binary < -1022 { binary + 1075 } else { 53 };
    if digits < 0 {
        return 0.0;
    }
    let mut mantissa = 0_u64;
    for _ in 0..digits {
        mantissa <<= 1;
        if compare(&above, &below) != Ordering::Less {
            subtract(&mut above, &below);
            mantissa |= 1;
        }
        double(&mut above, 1);
    }
    // What is left, doubled, against one of the last digit.
    let up = match compare(&above, &below) {
        Ordering::Less => 0,
        Ordering::Equal => mantissa & 1,
        Ordering::Greater => 1,
    };
    let above_least = (binary + 1022).max(0) as u64;
    // A carry out of the mantissa raises the exponent, as it should.
    f64::from_bits((above_least << 52) + mantissa + up)
}

/// Multiplies by a small number and adds one.
pub(super) fn times_and(number: &mut Vec<u32>, factor: u32, more: u32) {
    let mut carry = u64::from(more);
    for limb in number.iter_mut() {
        carry += u64::from(*limb) * u64::from(factor);
        *limb = carry as u32;
        carry >>= 32;
    }
    if carry > 0 {
        number.push(carry as u32);
    }
}

/// Multiplies by a power of two.
pub(super) fn double(number: &mut Vec<u32>, times: i32) {
    for _ in 0..times / 31 {
        times_and(number, 1 << 31, 0);
    }
    times_and(number, 1 << (times % 31), 0);
}

pub(super) fn trim(number: &mut Vec<u32>) {
    while number.last() == Some(&0) {
        number.pop();
    }
}

/// Binary digits of a number without leading noughts.
fn bits(number: &[u32]) -> i32 {
    let last = number.last().map_or(32, |limb| limb.leading_zeros());
    32 * number.len() as i32 - last as i32
}

fn compare(one: &[u32], other: &[u32]) -> Ordering {
    one.len()
        .cmp(&other.len())
        .then_with(|| one.iter().rev().cmp(other.iter().rev()))
}

/// Takes a number that is not larger away.
fn subtract(from: &mut Vec<u32>, number: &[u32]) {
    let mut borrow = 0_u64;
    for (at, limb) in from.iter_mut().enumerate() {
        let taken = u64::from(number.get(at).copied().unwrap_or(0)) + borrow;
        let left = (1 << 32) + u64::from(*limb) - taken;
        *limb = left as u32;
        borrow = 1 - (left >> 32);
    }
    trim(from);
}

#[cfg(test)]
mod tests {
    use super::decimal;

    /// The standard library reads correctly rounded too.
    fn same(text: &str) {
        let theirs: f64 = text.parse().unwrap();
        let ours = decimal(text).unwrap();
        assert_eq!(
            ours.to_bits(),
            theirs.to_bits(),
            "{text}: {ours:e} {theirs:e}"
        );
    }

    #[test]
    fn reads_what_the_standard_library_reads() {
        for text in [
            "0",
            "-0",
            "0.0",
            "00012.500",
            ".5",
            "5.",
            "+7",
            "1e3",
            "1E-3",
            "12.7",
            "123456789",
            // Halves, the ends of the range, and numbers that rounding in steps gets wrong:
            // Clinger (1990), Gay (1990), and the test suite of IBM's IEEE 754 vectors.
            "9007199254740993",
            "9007199254740992.999999999999999999",
            "1e23",
            "8.5e22",
            "2.2250738585072011e-308",
            "2.2250738585072014e-308",
            "4.9e-324",
            "2.4703e-324",
            "2.4703282292062327208e-324",
            "2.4703282292062328e-324",
            "1.7976931348623157e308",
            "1.7976931348623158e308",
            "1.7976931348623159e308",
            "1e309",
            "1e-400",
            "1e999999999",
            "6929495644600919.5",
            "3.7455744005952583e15",
            "0.500000000000000166533453693773481063544750213623046875",
            "9007199254740992.5",
            "9007199254740993.0000000000000000000000000000000000001",
        ] {
            same(text);
        }
        let long = format!("9007199254740993.{}1", "0".repeat(900));
        same(&long);
        same(&format!("9007199254740993.{}", "0".repeat(900)));
        same(&format!("0.{}7", "0".repeat(500)));
        same(&"9".repeat(400));
        same(&format!("{}e-800", "7".repeat(900)));
    }

    #[test]
    fn reads_back_what_is_printed() {
        let mut state = 0x9E37_79B9_7F4A_7C15_u64;
        for _ in 0..3000 {
            state = state
                .wrapping_mul(6_364_136_223_846_793_005)
                .wrapping_add(1);
            let value = f64::from_bits(state);
            if value.is_finite() {
                same(&format!("{value}"));
                same(&format!("{value:.20e}"));
                same(&format!("{value:.3e}"));
                same(&format!("{:.4}", value % 1e6));
            }
        }
    }

    #[test]
    fn refuses_what_is_no_number() {
        for text in [
            "", "-", ".", "e5", "1e", "1e+", "1,5", "1.2.3", "inf", "nan", "1 ", "0x1", "½",
        ] {
            assert_eq!(decimal(text), None, "{text}");
        }
    }
}
