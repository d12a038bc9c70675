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
mod place;
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
    about, angle, bullet_mass, cm, counts_in, field, height, length_mm, mass, minutes, mrad, price,
    range, rifle_mass, round_m, temperature, velocity, with_unit,
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
    let place = place(key);
    assert!(
        is_same(messages::KEYS[place], key),
        "no message with this key in locales/en/*.ftl"
    );
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
        if is_same(list[at], word) {
            return true;
        }
        at += 1;
    }
    false
}

const fn is_same(one: &str, other: &str) -> bool {
    let (one, other) = (one.as_bytes(), other.as_bytes());
    let mut at = 0;
    while at < one.len() && at < other.len() && one[at] == other[at] {
        at += 1;
    }
    at == one.len() && at == other.len()
}

/// The place at which a message with this key stands, if there is one.
const fn place(key: &str) -> usize {
    let hash = place::hash(key);
    let turn = messages::TURNS[place::group(hash, messages::TURNS.len())];
    place::place(hash, turn, messages::KEYS.len())
}

/// The place of a key that is only known while running.
///
/// The page has no keys to look into, and trusts: what it asks for has been asked for natively.
fn find(key: &str) -> Option<usize> {
    let place = place(key);
    (cfg!(feature = "web") || messages::KEYS[place] == key).then_some(place)
}

/// The message at this place in the language spoken now.
#[must_use]
pub fn at(place: usize, args: &[(&str, Arg)]) -> String {
    render::render(spoken().pattern(place), args)
}

/// As [`at`], and done with the values; used by [`t!`](crate::t).
#[inline(always)]
#[must_use]
pub fn filled<const VALUES: usize>(place: usize, mut args: [(&str, Arg); VALUES]) -> String {
    let said = taking(place, &mut args);
    // All were taken: there is nothing left to drop, and no code for it.
    std::mem::forget(args);
    said
}

#[inline(never)]
fn taking(place: usize, args: &mut [(&str, Arg)]) -> String {
    let said = at(place, args);
    for (_, value) in args {
        *value = Arg::Number(0.0);
    }
    said
}

/// The message with a key that is only known while running, as for the rows of a table.
///
/// A key that does not exist fails a debug build, and so every native test that comes upon it;
/// `tests/wording.rs` asks for the keys of all tables. In a release it says itself, and on the
/// page, which carries no keys (`wording/place.rs`), another message.
#[must_use]
pub fn say(key: &str, args: &[(&str, Arg)]) -> String {
    let place = find(key);
    debug_assert!(place.is_some(), "no message has the key {key}");
    place.map_or_else(|| key.to_owned(), |place| at(place, args))
}

/// Whether there is a message with this key, of those that may be there or not
/// (`wording/place.rs` names them).
#[must_use]
pub fn has(key: &str) -> bool {
    debug_assert!(place::is_optional(key), "{key}");
    messages::OPTIONAL.contains(&place::hash(key))
}

/// All keys, in no order.
///
/// For tests, as [`variables`].
pub fn keys() -> impl Iterator<Item = &'static str> {
    let all = messages::KEYS.iter().copied();
    all.filter(|key| !key.is_empty())
}

/// The variables of a message.
///
/// For tests: whatever the page calls must leave the table of keys to the compiler, or the
/// page carries every key twice.
#[must_use]
pub fn variables(key: &str) -> Option<&'static [&'static str]> {
    let place = place(key);
    (messages::KEYS[place] == key).then(|| messages::VARIABLES[place])
}

/// A message in the language spoken now, checked while compiling.
///
/// `t!("key")` or `t!("key", minutes = 12.0, name = "…")`: a `String`.
#[macro_export]
macro_rules! t {
    // Its place alone, for `html!`.
    (place $key:literal) => {
        $crate::wording::place_of($key, &[])
    };
    ($key:literal $(, $name:ident = $value:expr)* $(,)?) => {{
        const PLACE: usize = $crate::wording::place_of($key, &[$(stringify!($name)),*]);
        $crate::wording::filled(PLACE, [$((stringify!($name), $crate::wording::Arg::from($value))),*])
    }};
}
