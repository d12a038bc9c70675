//! Puts values into a message. How messages are encoded is told in `build.rs`.

use super::number::{number, plain_number};
use super::{language, plural};
use crate::plain::fixed;

/// A value for a message.
#[derive(Clone, Debug, PartialEq)]
pub enum Arg {
    /// A number; shown with up to three digits after the decimal sign unless the message says
    /// otherwise.
    Number(f64),
    /// Words.
    Text(String),
}

impl From<f64> for Arg {
    fn from(value: f64) -> Self {
        Arg::Number(value)
    }
}
impl From<i32> for Arg {
    fn from(value: i32) -> Self {
        Arg::Number(f64::from(value))
    }
}
impl From<u32> for Arg {
    fn from(value: u32) -> Self {
        Arg::Number(f64::from(value))
    }
}
impl From<u8> for Arg {
    fn from(value: u8) -> Self {
        Arg::Number(f64::from(value))
    }
}
impl From<usize> for Arg {
    fn from(value: usize) -> Self {
        Arg::Number(value as f64)
    }
}
impl From<&str> for Arg {
    fn from(value: &str) -> Self {
        Arg::Text(value.to_owned())
    }
}
impl From<String> for Arg {
    fn from(value: String) -> Self {
        Arg::Text(value)
    }
}
impl From<&String> for Arg {
    fn from(value: &String) -> Self {
        Arg::Text(value.clone())
    }
}

/// The text of an encoded message with its values put in.
pub(super) fn render(pattern: &str, args: &[(&str, Arg)]) -> String {
    if !pattern.contains(|c: char| c < '\u{8}') {
        return pattern.to_owned();
    }
    let mut out = String::with_capacity(pattern.len() + 16);
    write(pattern, args, &mut out);
    out
}

fn write(mut pattern: &str, args: &[(&str, Arg)], out: &mut String) {
    while let Some(at) = pattern.find(['\u{1}', '\u{4}']) {
        out.push_str(&pattern[..at]);
        let rest = &pattern[at + 1..];
        if pattern.as_bytes()[at] == 1 {
            let (name, after) = rest.split_once('\u{2}').unwrap_or((rest, ""));
            out.push_str(&shown(name, args));
            pattern = after;
        } else {
            let end = end_of_choice(rest);
            choose(&rest[..end], args, out);
            pattern = rest.get(end + 1..).unwrap_or("");
        }
    }
    out.push_str(pattern);
}

/// Where the choice that has just been opened ends.
fn end_of_choice(text: &str) -> usize {
    let mut depth = 0_usize;
    for (at, byte) in text.bytes().enumerate() {
        match byte {
            4 => depth += 1,
            7 if depth == 0 => return at,
            7 => depth -= 1,
            _ => {}
        }
    }
    text.len()
}

/// A variable's value, found by `name` or `name:least-most`.
fn value<'a>(name: &str, args: &'a [(&str, Arg)]) -> (Option<&'a Arg>, Option<(usize, usize)>) {
    let (name, digits) = name.split_once(':').unwrap_or((name, ""));
    let digits = digits
        .split_once('-')
        .and_then(|(least, most)| Some((least.parse().ok()?, most.parse().ok()?)));
    let arg = args
        .iter()
        .find(|(given, _)| *given == name)
        .map(|(_, arg)| arg);
    (arg, digits)
}

fn shown(name: &str, args: &[(&str, Arg)]) -> String {
    match value(name, args) {
        (Some(Arg::Text(text)), _) => text.clone(),
        (Some(Arg::Number(value)), Some((least, most))) => {
            if least == most {
                number(*value, least)
            } else {
                plain_number(*value, least, most)
            }
        }
        (Some(Arg::Number(value)), None) => plain_number(*value, 0, 3),
        (None, _) => String::new(),
    }
}

fn choose(choice: &str, args: &[(&str, Arg)], out: &mut String) {
    let (name, variants) = choice.split_once('\u{5}').unwrap_or((choice, ""));
    let (chosen, digits) = value(name, args);
    let (exact, category) = match chosen {
        Some(Arg::Text(text)) => (text.clone(), ""),
        Some(Arg::Number(number)) => {
            let most = digits.map_or(3, |(_, most)| most);
            let decimal = plain_decimal(*number, most);
            let category = plural::category(language::spoken(), *number, decimal.contains('.'));
            (decimal, category)
        }
        None => (String::new(), ""),
    };
    let mut fallback = "";
    let mut by_category = None;
    for (key, text) in Variants(variants) {
        let (key, is_default) = match key.strip_prefix('*') {
            Some(key) => (key, true),
            None => (key, false),
        };
        if key == exact {
            write(text, args, out);
            return;
        }
        if key == category {
            by_category = Some(text);
        }
        if is_default {
            fallback = text;
        }
    }
    write(by_category.unwrap_or(fallback), args, out);
}

/// A number as Fluent writes it in a variant's key: a full stop, no needless noughts.
fn plain_decimal(value: f64, most: usize) -> String {
    let text = fixed(value, most);
    if text.contains('.') {
        text.trim_end_matches('0').trim_end_matches('.').to_owned()
    } else {
        text
    }
}

/// The variants of one choice, `key U+0006 text` parted by U+0005 at its own depth.
struct Variants<'a>(&'a str);

impl<'a> Iterator for Variants<'a> {
    type Item = (&'a str, &'a str);

    fn next(&mut self) -> Option<Self::Item> {
        if self.0.is_empty() {
            return None;
        }
        let mut depth = 0_usize;
        let mut end = self.0.len();
        for (at, byte) in self.0.bytes().enumerate() {
            match byte {
                4 => depth += 1,
                7 => depth = depth.saturating_sub(1),
                5 if depth == 0 => {
                    end = at;
                    break;
                }
                _ => {}
            }
        }
        let (variant, rest) = self.0.split_at(end);
        self.0 = rest.get(1..).unwrap_or("");
        variant.split_once('\u{6}')
    }
}

#[cfg(test)]
mod tests {
    use super::{Arg, render};

    #[test]
    fn variables_choices_and_nesting_are_put_in() {
        let pattern = "\u{1}n\u{2} \u{4}n\u{5}0\u{6}none\u{5}one\u{6}shot\u{5}*other\u{6}shots \
                       \u{4}who\u{5}me\u{6}of mine\u{5}*x\u{6}of \u{1}who\u{2}\u{7}\u{7}.";
        let said =
            |n: f64, who: &str| render(pattern, &[("n", Arg::Number(n)), ("who", Arg::from(who))]);
        assert_eq!(said(0.0, "me"), "0 none.");
        assert_eq!(said(1.0, "me"), "1 shot.");
        assert_eq!(said(2.0, "me"), "2 shots of mine.");
        assert_eq!(said(1.5, "you"), "1.5 shots of you.");
        assert_eq!(render("\u{1}n:1-1\u{2}", &[("n", Arg::Number(2.0))]), "2.0");
        assert_eq!(render("\u{1}gone\u{2}", &[]), "");
    }
}
