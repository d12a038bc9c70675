//! Numbers as the language writes them.

use super::language::spoken;
use super::place_of;
use crate::plain::fixed;

/// A number with exactly so many digits after the decimal sign, in the language's own signs;
/// from 10 000 on grouped by threes with a narrow no-break space or what the language has;
/// a dash for what is no finite number.
#[must_use]
pub fn number(value: f64, decimals: usize) -> String {
    if !value.is_finite() {
        return "–".to_owned();
    }
    localised(&fixed(value, decimals))
}

/// A number with at least and at most so many digits after the decimal sign.
pub(super) fn plain_number(value: f64, least: usize, most: usize) -> String {
    if !value.is_finite() {
        return number(value, 0);
    }
    let mut text = fixed(value, most);
    while text.contains('.') && text.len() - text.find('.').unwrap_or(0) - 1 > least {
        if !text.ends_with('0') {
            break;
        }
        text.pop();
        if text.ends_with('.') {
            text.pop();
        }
    }
    localised(&text)
}

fn localised(text: &str) -> String {
    let language = spoken();
    let (negative, text) = match text.strip_prefix('-') {
        Some(text) => (
            text.bytes().any(|digit| (b'1'..=b'9').contains(&digit)),
            text,
        ),
        None => (false, text),
    };
    let (whole, fraction) = text.split_once('.').unwrap_or((text, ""));
    let mut out = String::new();
    if negative {
        out.push('\u{2212}');
    }
    let group = whole.len() > 4 && whole.bytes().all(|digit| digit.is_ascii_digit());
    for (at, digit) in whole.char_indices() {
        if group && at > 0 && (whole.len() - at).is_multiple_of(3) {
            out.push_str(language.pattern(const { place_of("locale-group-sign", &[]) }));
        }
        out.push(digit);
    }
    if !fraction.is_empty() {
        out.push_str(language.pattern(const { place_of("locale-decimal-sign", &[]) }));
        out.push_str(fraction);
    }
    out
}

/// How many decimals a value deserves that is uncertain by this spread: the spread's first
/// digit, or its second if the first is a 1.
#[must_use]
pub fn decimals_for(spread: f64) -> usize {
    if !(spread.is_finite() && spread > 0.0) {
        return 0;
    }
    let mut decimals = 0;
    let mut scaled = spread;
    // Below 1.95 a single digit would round away up to a third of the spread.
    while scaled < 1.95 && decimals < 4 {
        scaled *= 10.0;
        decimals += 1;
    }
    decimals
}

#[cfg(test)]
mod tests {
    use super::{decimals_for, number, plain_number};

    #[test]
    fn numbers_are_written_as_english_does() {
        assert_eq!(number(-0.04, 1), "0.0");
        assert_eq!(number(-3.25, 1), "\u{2212}3.2");
        assert_eq!(number(1234.0, 0), "1234");
        assert_eq!(number(12345.6, 1), "12\u{202F}345.6");
        assert_eq!(number(f64::NAN, 1), "–");
        assert_eq!(plain_number(2.50, 0, 3), "2.5");
        assert_eq!(plain_number(100.0, 0, 3), "100");
        assert_eq!(plain_number(2.0, 1, 3), "2.0");
    }

    #[test]
    fn decimals_follow_the_spread() {
        assert_eq!(decimals_for(4.0), 0);
        assert_eq!(decimals_for(0.4), 1);
        assert_eq!(decimals_for(1.2), 1);
        assert_eq!(decimals_for(0.15), 2);
        assert_eq!(decimals_for(0.0), 0);
        assert_eq!(decimals_for(f64::NAN), 0);
    }
}
