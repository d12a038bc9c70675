//! Numbers printed: with so many digits after the point, or with as few as tell them apart.

use super::decimal::{double, nearest_short, times_and, trim};

/// A number with exactly so many digits after the point, half way to the even one: the text of
/// `format!("{value:.digits$}")`.
///
/// # Accuracy
/// Correctly rounded from the exact value of the double.
///
/// # Example
/// ```
/// use scopewright::plain::fixed;
/// assert_eq!(fixed(0.125, 2), "0.12");
/// assert_eq!(fixed(-0.01, 1), "-0.0");
/// ```
#[must_use]
pub fn fixed(value: f64, digits: usize) -> String {
    let mut out = String::new();
    push_fixed(&mut out, value, digits);
    out
}

/// A number with the fewest digits that read back as the same double, and of these the nearest:
/// the text of `format!("{value}")`.
///
/// # Accuracy
/// Exact.
///
/// # Source
/// What is wanted: Steele, White (1990), *How to print floating-point numbers accurately*. Here
/// the digits are tried, one more each time, by reading them.
///
/// # Example
/// ```
/// use scopewright::plain::shortest;
/// assert_eq!(shortest(0.1), "0.1");
/// assert_eq!(shortest(30.0), "30");
/// ```
#[must_use]
pub fn shortest(value: f64) -> String {
    let mut out = String::new();
    push_shortest(&mut out, value);
    out
}

/// A text with numbers put into its holes: `{}` takes one as [`shortest`] prints it, `{.1}` as
/// [`fixed`] prints it with that many digits, at most nine.
///
/// It does not compile unless there is a number for every hole; a hole of another form stops it
/// too. Each costs the page a few bytes, where `format!` of a number costs it a call.
///
/// # Example
/// ```
/// use scopewright::filled;
/// assert_eq!(filled!("M{.1} {.1}v4", 2.0, -7.25), "M2.0 -7.2v4");
/// ```
#[macro_export]
macro_rules! filled {
    ($text:literal $(, $number:expr)+ $(,)?) => {{
        const { assert!($crate::plain::holes($text) == [$(stringify!($number)),+].len()) };
        $crate::plain::fill($text, &[$($number),+])
    }};
}

/// The holes of a text for [`filled!`](crate::filled), counted while compiling.
#[doc(hidden)]
#[must_use]
pub const fn holes(text: &str) -> usize {
    let text = text.as_bytes();
    let (mut at, mut holes) = (0, 0);
    while at < text.len() {
        if text[at] == b'{' {
            holes += 1;
            let is_fixed = text[at + 1] == b'.' && text[at + 2].is_ascii_digit();
            at += if is_fixed { 3 } else { 1 };
            assert!(text[at] == b'}', "a hole is {{}} or {{.1}}");
        }
        at += 1;
    }
    holes
}

/// What [`filled!`](crate::filled) calls.
#[doc(hidden)]
#[must_use]
pub fn fill(text: &str, numbers: &[f64]) -> String {
    let mut out = String::new();
    let mut numbers = numbers.iter();
    let mut rest = text;
    while let Some((before, after)) = rest.split_once('{') {
        out.push_str(before);
        let number = numbers.next().copied().unwrap_or(f64::NAN);
        let (hole, after) = after.split_once('}').unwrap_or((after, ""));
        match hole.as_bytes() {
            [_, digits] => push_fixed(&mut out, number, usize::from(digits - b'0')),
            _ => push_shortest(&mut out, number),
        }
        rest = after;
    }
    out.push_str(rest);
    out
}

fn push_fixed(out: &mut String, value: f64, digits: usize) {
    let Some(size) = push_sign(out, value) else {
        return;
    };
    let (mut number, power) = whole(size);
    for _ in 0..digits {
        times_and(&mut number, 10, 0);
    }
    if power < 0 {
        halve(&mut number, -power);
    } else {
        double(&mut number, power);
    }
    let mut printed = backwards(number);
    if printed.len() <= digits {
        printed.resize(digits + 1, b'0');
    }
    for (at, digit) in printed.iter().enumerate().rev() {
        out.push(char::from(*digit));
        if at == digits && digits > 0 {
            out.push('.');
        }
    }
}

fn push_shortest(out: &mut String, value: f64) {
    if let Some(size) = push_sign(out, value) {
        let (digits, point) = significant(size);
        push_placed(out, &digits, point);
    }
}

/// Digits with the point behind so many of them, and noughts where it stands outside.
pub(super) fn push_placed(out: &mut String, digits: &str, point: i32) {
    let before = point.max(0) as usize;
    if before == 0 {
        out.push_str("0.");
        (point..0).for_each(|_| out.push('0'));
    }
    for (at, digit) in digits.char_indices() {
        if at > 0 && at == before {
            out.push('.');
        }
        out.push(digit);
    }
    (digits.len()..before).for_each(|_| out.push('0'));
}

/// Writes the sign, or all of what is no finite number; the size is left to be written.
pub(super) fn push_sign(out: &mut String, value: f64) -> Option<f64> {
    if value.is_nan() {
        out.push_str("NaN");
        return None;
    }
    if value.is_sign_negative() {
        out.push('-');
    }
    if value.is_infinite() {
        out.push_str("inf");
        return None;
    }
    Some(value.abs())
}

/// The fewest digits that read back as this size, and behind how many of them the point stands.
pub(super) fn significant(size: f64) -> (String, i32) {
    let (mut number, power) = whole(size);
    double(&mut number, power.max(0));
    for _ in power..0 {
        times_and(&mut number, 10, 0);
    }
    // Times ten for every halving is times five all in all: the exact digits.
    halve(&mut number, (-power).max(0));
    let exact = backwards(number);
    let point = exact.len() as i32 + power.min(0);
    let mut exact = exact.iter().rev().map(|digit| digit - b'0').peekable();
    let (mut below, mut count) = (0_u64, 0);
    loop {
        below = 10 * below + u64::from(exact.next().unwrap_or(0));
        count += 1;
        // Never half way between the two: a double that short is found before.
        let nearer_above = u64::from(exact.peek().is_some_and(|next| *next >= 5));
        for tried in [below + nearer_above, below + 1 - nearer_above] {
            if nearest_short(tried, point - count) == size {
                let digits = tried.to_string();
                let point = point - count + digits.len() as i32;
                let digits = match digits.trim_end_matches('0') {
                    "" => "0",
                    digits => digits,
                };
                return (digits.to_owned(), point);
            }
        }
    }
}

/// A size as an odd number (or none) times a power of two.
fn whole(size: f64) -> (Vec<u32>, i32) {
    let bits = size.to_bits();
    let (fraction, exponent) = (bits & ((1 << 52) - 1), (bits >> 52) as i32);
    // Below 2^-1022 there is no hidden digit.
    let mantissa = if exponent > 0 {
        fraction | 1 << 52
    } else {
        fraction
    };
    if mantissa == 0 {
        return (Vec::new(), 0);
    }
    let even = mantissa.trailing_zeros();
    let odd = mantissa >> even;
    let mut number = vec![odd as u32, (odd >> 32) as u32];
    trim(&mut number);
    (number, exponent.max(1) - 1075 + even as i32)
}

/// Divides by a power of two, to the nearest number, half way to the even one.
fn halve(number: &mut Vec<u32>, times: i32) {
    if times == 0 {
        return;
    }
    let mut more = false;
    for _ in 0..(times - 1) / 31 {
        more |= divide(number, 1 << 31) > 0;
    }
    more |= divide(number, 1 << ((times - 1) % 31)) > 0;
    let half = divide(number, 2) > 0;
    if half && (more || number.first().is_some_and(|limb| limb % 2 == 1)) {
        times_and(number, 1, 1);
    }
}

/// Divides by a small number and gives the rest.
fn divide(number: &mut Vec<u32>, by: u32) -> u32 {
    let mut rest = 0;
    for limb in number.iter_mut().rev() {
        let above = rest << 32 | u64::from(*limb);
        *limb = (above / u64::from(by)) as u32;
        rest = above % u64::from(by);
    }
    trim(number);
    rest as u32
}

/// The decimal digits, the last first; "0" for nothing.
fn backwards(mut number: Vec<u32>) -> Vec<u8> {
    let mut digits = Vec::new();
    while digits.is_empty() || !number.is_empty() {
        digits.push(b'0' + divide(&mut number, 10) as u8);
    }
    digits
}

#[cfg(test)]
mod tests {
    use super::{fixed, shortest};

    /// What the standard library prints is correctly rounded too.
    fn same(value: f64) {
        assert_eq!(shortest(value), format!("{value}"), "{value:e}");
        for digits in 0..8 {
            same_fixed(value, digits);
        }
    }

    fn same_fixed(value: f64, digits: usize) {
        assert_eq!(
            fixed(value, digits),
            format!("{value:.digits$}"),
            "{value:e} to {digits}"
        );
    }

    #[test]
    fn prints_what_the_standard_library_prints() {
        let sizes = [
            0.0,
            0.05,
            0.1,
            0.125,
            0.25,
            0.5,
            1.5,
            2.5,
            0.95,
            0.995,
            9.5,
            9.995,
            999.9996,
            1e15 + 0.5,
            1e15 + 1.5,
            // The ends of the range, of the hidden digit, and of whole numbers.
            5e-324,
            1e-323,
            2.225_073_858_507_201e-308,
            f64::MIN_POSITIVE,
            f64::MAX,
            f64::EPSILON,
            1e300,
            9_007_199_254_740_991.0,
            9_007_199_254_740_992.0,
            9_007_199_254_740_994.0,
            // Read back from one digit, though the double lies below it.
            1e23,
            5e-5,
        ];
        for size in sizes {
            for near in [size.next_down(), size, size.next_up()] {
                same(near);
                same(-near);
            }
        }
        // Above a power of two doubles lie twice as far apart as below it: of the fewest digits
        // that read back, the nearest may be none.
        for power in 0..2047 {
            same(f64::from_bits(power << 52));
        }
        for value in [f64::NAN, -f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
            same(value);
        }
        same_fixed(0.1, 60);
        same_fixed(5e-324, 1100);
        same_fixed(f64::MAX, 3);
    }

    #[test]
    fn prints_drawn_numbers_as_the_standard_library_does() {
        let mut state = 0x9E37_79B9_7F4A_7C15_u64;
        let mut draw = || {
            state = state
                .wrapping_mul(6_364_136_223_846_793_005)
                .wrapping_add(1_442_695_040_888_963_407);
            state ^ state >> 33
        };
        for at in 0..4000_usize {
            let any = f64::from_bits(draw());
            if any.is_finite() && at % 8 == 0 {
                same(any);
            }
            // Of everyday size: with many digits, with few, and half way between two.
            let share = (draw() >> 11) as f64 / (1_u64 << 53) as f64;
            same_fixed(share * 1000.0, at % 8);
            same(((share - 0.5) * 1e6).round() / [1.0, 10.0, 100.0, 1000.0][at % 4]);
            same((share * 4096.0).round() / 64.0);
            if at % 8 == 0 {
                same(share * 100.0);
            }
        }
    }

    #[test]
    fn numbers_fill_their_holes() {
        assert_eq!(
            filled!("{}a{.0}b{.2}{}", 0.1, 2.5, -1.0 / 3.0, 1e21),
            "0.1a2b-0.331000000000000000000000"
        );
    }
}
