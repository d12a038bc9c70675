//! Names of an enum's values as keys.

use core::fmt::Debug;

/// The key of a value that is one of a few, as the wire types write it: its name in small
/// letters with underscores, without what it carries; a single letter stays as it is.
///
/// # Example
/// ```
/// # #[derive(Debug)] enum Part { TubeMm }
/// assert_eq!(scopewright::plain::key(&Part::TubeMm), "tube_mm");
/// ```
#[must_use]
pub fn key(value: &dyn Debug) -> String {
    let name = format!("{value:?}");
    let name = name
        .split(|c: char| !c.is_ascii_alphanumeric())
        .next()
        .unwrap_or_default();
    if name.len() == 1 {
        return name.to_owned();
    }
    let mut key = String::new();
    for (at, c) in name.chars().enumerate() {
        if at > 0 && c.is_ascii_uppercase() {
            key.push('_');
        }
        key.push(c.to_ascii_lowercase());
    }
    key
}
