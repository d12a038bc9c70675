//! Templates: everything fixed in a block of HTML, as one string.
//!
//! `html!` writes them (`html/src/element.rs`): a mark, then what it is about, up to the next
//! mark. Elements are opened and closed, holes counted in the order in which they stand.

use std::iter::from_fn;

/// One step of a template.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Step {
    /// An element begins.
    Open(&'static str),
    /// An attribute of it; its value follows.
    Attribute(&'static str),
    /// The value of the attribute before.
    Value(&'static str),
    /// An attribute whose value is computed.
    AttributeHole(&'static str),
    /// What is typed or ticked in a field.
    PropertyHole(&'static str),
    /// A handler for an event.
    EventHole(&'static str),
    /// The element is remembered.
    RefHole,
    /// Text.
    Text(&'static str),
    /// Something between elements that is computed.
    ChildHole,
    /// The message at this place, as text.
    Said(usize),
    /// The value of the attribute before: the message at this place.
    ValueSaid(usize),
    /// The element ends.
    Close,
}

/// The marks before the place of a message.
const SAID: u8 = 16;
const VALUE_SAID: u8 = 17;
/// A place is written as two letters, each one of so many from `FIRST` on.
const LETTERS: usize = 64;
const FIRST: u8 = b'0';

/// The template with the places of its messages, which `html!` cannot know.
pub const fn with_places<const LENGTH: usize, const MESSAGES: usize>(
    mut template: [u8; LENGTH],
    places: [usize; MESSAGES],
) -> [u8; LENGTH] {
    let (mut at, mut message) = (0, 0);
    while at < LENGTH {
        if matches!(template[at], SAID | VALUE_SAID) {
            let place = places[message];
            assert!(place < LETTERS * LETTERS, "two letters are too few");
            template[at + 1] = FIRST + (place / LETTERS) as u8;
            template[at + 2] = FIRST + (place % LETTERS) as u8;
            message += 1;
        }
        at += 1;
    }
    assert!(message == MESSAGES, "a message has no room");
    template
}

/// A template as text.
pub const fn text_of(template: &'static [u8]) -> &'static str {
    match core::str::from_utf8(template) {
        Ok(text) => text,
        Err(_) => "",
    }
}

/// The place that two letters stand for.
fn place(letters: &str) -> usize {
    letters.bytes().fold(0, |place, letter| {
        place * LETTERS + usize::from(letter.saturating_sub(FIRST))
    })
}

fn is_mark(byte: u8) -> bool {
    matches!(byte, 1..=8 | 14..=VALUE_SAID)
}

/// The steps of a template.
pub(super) fn steps(template: &'static str) -> impl Iterator<Item = Step> {
    let mut rest = template;
    from_fn(move || {
        let mark = *rest.as_bytes().first()?;
        let said = rest.get(1..)?;
        let end = said.bytes().position(is_mark).unwrap_or(said.len());
        let (said, after) = said.split_at(end);
        rest = after;
        Some(match mark {
            1 => Step::Open(said),
            2 => Step::Attribute(said),
            3 => Step::Value(said),
            4 => Step::AttributeHole(said),
            5 => Step::PropertyHole(said),
            6 => Step::EventHole(said),
            7 => Step::RefHole,
            8 => Step::Text(said),
            14 => Step::ChildHole,
            SAID => Step::Said(place(said)),
            VALUE_SAID => Step::ValueSaid(place(said)),
            _ => Step::Close,
        })
    })
}

#[cfg(test)]
mod tests {
    use super::{Step, steps, text_of, with_places};

    #[test]
    fn places_of_messages_are_read_as_they_were_given() {
        const TEMPLATE: &[u8] = &with_places(
            *b"\x01p\x02title\x11??\x10??\x08a\x10??\x0f",
            [0, 4095, 1446],
        );
        let read: Vec<Step> = steps(text_of(TEMPLATE)).collect();
        assert_eq!(
            read,
            [
                Step::Open("p"),
                Step::Attribute("title"),
                Step::ValueSaid(0),
                Step::Said(4095),
                Step::Text("a"),
                Step::Said(1446),
                Step::Close,
            ]
        );
    }

    #[test]
    fn a_template_is_read_as_it_was_written() {
        let read: Vec<Step> = steps(
            "\u{1}p\u{2}class\u{3}a b\u{2}hidden\u{3}\u{4}id\u{6}click\u{7}\u{8}x\n\ty\u{e}\u{1}input\u{5}value\u{f}\u{f}",
        )
        .collect();
        assert_eq!(
            read,
            [
                Step::Open("p"),
                Step::Attribute("class"),
                Step::Value("a b"),
                Step::Attribute("hidden"),
                Step::Value(""),
                Step::AttributeHole("id"),
                Step::EventHole("click"),
                Step::RefHole,
                Step::Text("x\n\ty"),
                Step::ChildHole,
                Step::Open("input"),
                Step::PropertyHole("value"),
                Step::Close,
                Step::Close,
            ]
        );
    }
}
