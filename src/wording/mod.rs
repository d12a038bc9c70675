//! Words for reasons and messages, per language.
//!
//! The words live in `locales/<language>/*.ftl`; `build.rs` turns them into tables. A key
//! that does not exist, a variable that is missing or one too many does not compile:
//!
//! ```
//! use scopewright::t;
//! assert_eq!(t!("locale-name"), "English");
//! ```
//! ```compile_fail
//! scopewright::t!("no-such-key");
//! ```

pub mod advice;
mod language;
mod measure;
pub mod notes;
mod number;
mod plural;
pub mod problems;
pub mod questions;
mod render;
pub mod sayings;
pub mod shelf;
pub mod terms;
mod texts;
pub mod versus;

pub use language::{Language, languages, speak, spoken};
pub use measure::{
    about, bullet_mass, cm, field, height, length_mm, mass, minutes, mrad, price, range,
    rifle_mass, temperature, velocity, with_unit,
};
pub use number::{decimals_for, number};
pub use render::Arg;

mod messages {
    use super::texts::Texts;
    include!(concat!(env!("OUT_DIR"), "/messages.rs"));
}

/// The place of a message, and proof that exactly these variables are given to it.
///
/// Used by [`t!`](crate::t), where it runs while compiling.
///
/// # Panics
/// While compiling, if there is no such message or its variables are others.
#[must_use]
#[allow(
    clippy::panic,
    reason = "runs while compiling: this is the compile error"
)]
pub const fn place_of(key: &str, variables: &[&str]) -> usize {
    let Some(place) = find(key) else {
        panic!("no message with this key in locales/en/*.ftl");
    };
    let needed = messages::VARIABLES[place];
    let mut at = 0;
    while at < needed.len() {
        assert!(
            contains(variables, needed[at]),
            "a variable of this message is not given"
        );
        at += 1;
    }
    assert!(
        variables.len() == needed.len(),
        "this message does not use all variables that are given"
    );
    place
}

const fn contains(list: &[&str], word: &str) -> bool {
    let mut at = 0;
    while at < list.len() {
        if compare(list[at].as_bytes(), word.as_bytes()) == 0 {
            return true;
        }
        at += 1;
    }
    false
}

const fn find(key: &str) -> Option<usize> {
    let (mut low, mut high) = (0, messages::KEYS.len());
    while low < high {
        let middle = usize::midpoint(low, high);
        let order = compare(messages::KEYS[middle].as_bytes(), key.as_bytes());
        if order == 0 {
            return Some(middle);
        }
        if order < 0 {
            low = middle + 1;
        } else {
            high = middle;
        }
    }
    None
}

const fn compare(a: &[u8], b: &[u8]) -> i32 {
    let mut at = 0;
    while at < a.len() && at < b.len() {
        if a[at] != b[at] {
            return if a[at] < b[at] { -1 } else { 1 };
        }
        at += 1;
    }
    if a.len() == b.len() {
        0
    } else if a.len() < b.len() {
        -1
    } else {
        1
    }
}

/// The message at this place in the language spoken now; used by [`t!`](crate::t).
#[must_use]
pub fn at(place: usize, args: &[(&str, Arg)]) -> String {
    render::render(spoken().pattern(place), args)
}

/// The message with a key that is only known while running, as for the rows of a table.
///
/// A key that does not exist says itself, so that it is seen and nothing panics;
/// `tests/wording.rs` shows that no table of the core has one.
#[must_use]
pub fn say(key: &str, args: &[(&str, Arg)]) -> String {
    messages::SORTED
        .find(key)
        .map_or_else(|| key.to_owned(), |place| at(place, args))
}

/// Whether there is a message with this key.
#[must_use]
pub fn has(key: &str) -> bool {
    messages::SORTED.find(key).is_some()
}

/// All keys, sorted.
pub fn keys() -> impl Iterator<Item = &'static str> {
    messages::SORTED.all()
}

/// The variables of a message.
///
/// For tests: whatever the page calls must leave the table of keys to the compiler, or the
/// page carries every key twice.
#[must_use]
pub fn variables(key: &str) -> Option<&'static [&'static str]> {
    find(key).map(|place| messages::VARIABLES[place])
}

/// A message in the language spoken now, checked while compiling.
///
/// `t!("key")` or `t!("key", minutes = 12.0, name = "…")`: a `String`.
#[macro_export]
macro_rules! t {
    ($key:literal $(, $name:ident = $value:expr)* $(,)?) => {{
        const PLACE: usize = $crate::wording::place_of($key, &[$(stringify!($name)),*]);
        $crate::wording::at(PLACE, &[$((stringify!($name), $crate::wording::Arg::from($value))),*])
    }};
}
