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
    /// The element ends.
    Close,
}

fn is_mark(byte: u8) -> bool {
    matches!(byte, 1..=8 | 14 | 15)
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
            _ => Step::Close,
        })
    })
}

#[cfg(test)]
mod tests {
    use super::{Step, steps};

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
