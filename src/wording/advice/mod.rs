//! The report in words: the line, what it does, reasons, warnings, sayings.

mod changes;
mod effects;
mod line;
mod sentences;

pub use changes::{annoyed, changed, owned, ranges_taken};
pub use effects::{
    bands, change_first, change_short, changes, gains_and_losses, quantity_name, quantity_short,
    quantity_value,
};
pub use line::{
    Part, box_mm, elements, glass, glass_forming, glass_means, line_parts, line_text, line_words,
    serves_too, setting, setting_short,
};
pub use sentences::{
    Told, decision, evening, need_sentence, not_needed, reason_said, saying, source_of, sureness,
    warning,
};

use super::Arg;
use crate::plain::Gathered;
use core::fmt::Debug;

/// The key under which a value stands in the report, as in `first` or `objective_mm`.
#[must_use]
pub fn key_of(value: &dyn Debug) -> String {
    crate::plain::key(value)
}

/// The words for a key of the report under a heading, as in `plane-first`.
#[must_use]
pub fn word(heading: &str, value: &dyn Debug) -> String {
    super::say(&format!("{heading}-{}", key_of(value)), &[])
}

/// "a", "a and b", "a, b and c".
#[must_use]
pub fn joined(words: &[String]) -> String {
    let mut words = words.iter();
    let Some(first) = words.next() else {
        return String::new();
    };
    let rest: Vec<&String> = words.gathered();
    let Some((last, middle)) = rest.split_last() else {
        return first.clone();
    };
    let most = middle.iter().fold(first.clone(), |one, other| {
        crate::t!("told-comma", one = one, other = *other)
    });
    crate::t!("told-and", most = most, last = *last)
}

/// The first letter as a capital, for a sentence that begins with an inserted word.
#[must_use]
pub fn capitalised(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| {
        core::iter::once(crate::plain::capital(first))
            .chain(letters)
            .collect()
    })
}

fn said(key: &str, args: &[(&str, Arg)]) -> String {
    super::say(key, args)
}
