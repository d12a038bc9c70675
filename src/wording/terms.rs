//! Trade terms: where they stand in a text, and what they mean.

use crate::plain::Gathered;
use crate::plain::{is_letter, small};
use std::ops::Range;

const FAMILY: &str = "term-";

/// A trade term and what it means, by its key.
#[must_use]
pub fn term(key: &str) -> Option<(String, String)> {
    let name = format!("{FAMILY}{key}");
    terms().any(|known| known == key).then(|| {
        (
            super::say(&name, &[]),
            super::say(&format!("{name}.means"), &[]),
        )
    })
}

/// The keys of all terms that are explained.
pub fn terms() -> impl Iterator<Item = &'static str> {
    super::messages::TERMS.split(' ')
}

/// Where trade terms stand in a text, in order: whole words, in any case, also with a plural s.
/// Each term counts where it stands first.
///
/// # Example
/// ```
/// use scopewright::wording::terms::terms_in;
/// let text = "Two turrets, one bell.";
/// let found = terms_in(text);
/// assert_eq!(found.len(), 1);
/// assert_eq!(&text[found[0].0.clone()], "bell");
/// assert_eq!(found[0].1, "bell");
/// ```
#[must_use]
pub fn terms_in(text: &str) -> Vec<(Range<usize>, &'static str)> {
    let mut found: Vec<(Range<usize>, &'static str)> = terms()
        .filter_map(|key| {
            let name = super::say(&format!("{FAMILY}{key}"), &[]);
            place(text, &name).map(|range| (range, key))
        })
        .gathered();
    // Of two that begin at one place the longer is meant; what overlaps it goes.
    crate::plain::sort_by_key(&mut found, |(range, _)| {
        (range.start, usize::MAX - range.end)
    });
    let mut end = 0;
    found.retain(|(range, _)| {
        let free = range.start >= end;
        if free {
            end = range.end;
        }
        free
    });
    found
}

/// The first place of a name in a text.
fn place(text: &str, name: &str) -> Option<Range<usize>> {
    let is_word = |character: char| is_letter(character) || character.is_ascii_digit();
    let mut from = 0;
    loop {
        let start = from + find_in_any_case(text.get(from..)?, name)?;
        let mut end = start + length_in(&text[start..], name)?;
        if text[end..].starts_with('s') {
            end += 1;
        }
        let is_free = !text[..start].chars().next_back().is_some_and(is_word)
            && !text[end..].chars().next().is_some_and(is_word);
        if is_free {
            return Some(start..end);
        }
        from = start + text[start..].chars().next()?.len_utf8();
    }
}

fn find_in_any_case(text: &str, name: &str) -> Option<usize> {
    text.char_indices()
        .map(|(at, _)| at)
        .find(|at| length_in(&text[*at..], name).is_some())
}

/// How many bytes of the text a name takes at its beginning, in any case.
fn length_in(text: &str, name: &str) -> Option<usize> {
    let mut rest = text.chars();
    let mut length = 0;
    for wanted in name.chars() {
        let here = rest.next()?;
        if small(here) != small(wanted) {
            return None;
        }
        length += here.len_utf8();
    }
    Some(length)
}

#[cfg(test)]
mod tests {
    use super::terms_in;

    fn found(text: &str) -> Vec<(&str, &'static str)> {
        terms_in(text)
            .into_iter()
            .map(|(range, key)| (&text[range], key))
            .collect()
    }

    #[test]
    fn terms_are_found_as_whole_words_in_any_case_and_number() {
        assert_eq!(
            found("Exit pupils and the Reticle; a doorbell, a bell"),
            [
                ("Exit pupils", "exit_pupil"),
                ("Reticle", "reticle"),
                ("bell", "bell"),
            ]
        );
        assert_eq!(found("capped turrets"), [("capped turrets", "capped")]);
        assert_eq!(found("0.1\u{202F}mrad a click"), [("mrad", "mrad")]);
        assert_eq!(found("dialled, umbrella, tubeless"), []);
        assert_eq!(found(""), []);
    }

    #[test]
    fn a_term_counts_where_it_stands_first() {
        assert_eq!(found("tube by tube"), [("tube", "tube")]);
    }
}
