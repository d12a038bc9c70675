//! Answers in a link, and out of it again: base64url of the saved answers, gaps left out.

use super::route::Route;
use super::state::{Action, App, Notice, Offer, State};
use super::{platform, stored};
use crate::need::answers::Answers;
use crate::t;
use serde_json::Value;
use std::collections::BTreeMap;
use yew::prelude::*;

/// Leaves out what is as good as not said.
fn without_gaps(value: Value) -> Option<Value> {
    match value {
        Value::Null | Value::Bool(false) => None,
        Value::Array(list) => {
            let list: Vec<Value> = list.into_iter().filter_map(without_gaps).collect();
            (!list.is_empty()).then_some(Value::Array(list))
        }
        // An empty group can say something: nothing is there to hold a sight.
        Value::Object(fields) => Some(Value::Object(
            fields
                .into_iter()
                .filter_map(|(key, value)| Some((key, without_gaps(value)?)))
                .collect(),
        )),
        other => Some(other),
    }
}

/// The answers as the end of a link.
#[must_use]
pub fn packed(answers: &Answers) -> String {
    let value = serde_json::to_value(answers).ok().and_then(without_gaps);
    let text = value.map_or_else(String::new, |value| value.to_string());
    base64url(text.as_bytes())
}

/// The address that opens these answers.
#[must_use]
pub fn address(answers: &Answers) -> String {
    format!(
        "{}{}",
        platform::bare_address(),
        Route::Open(packed(answers)).href()
    )
}

/// What a link holds.
#[must_use]
pub fn unpacked(text: &str) -> stored::Found {
    match from_base64url(text.trim()) {
        Some(bytes) => match String::from_utf8(bytes) {
            Ok(text) => stored::read(&text),
            Err(_) => stored::Found::Damaged("no text".into()),
        },
        None => stored::Found::Damaged("not base64url".into()),
    }
}

/// Opens a link: its answers take the place of one's own, which can be had back.
pub fn open(text: &str, app: &App, dispatcher: &UseReducerDispatcher<State>) {
    let said = match unpacked(text) {
        stored::Found::Answers(answers) => {
            let offer = app.has_answers().then_some(Offer::Undo);
            dispatcher.dispatch(Action::Take(answers, BTreeMap::new()));
            dispatcher.dispatch(Action::Tell(Notice {
                said: t!("link-opened"),
                offer,
            }));
            return;
        }
        stored::Found::Later(_) => t!("link-later"),
        stored::Found::Damaged(why) => t!("link-damaged", why = why),
        stored::Found::Nothing => t!("link-damaged", why = ""),
    };
    dispatcher.dispatch(Action::Tell(Notice { said, offer: None }));
}

const DIGITS: &[u8; 64] = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";

fn base64url(bytes: &[u8]) -> String {
    let mut out = String::with_capacity(bytes.len() * 4 / 3 + 4);
    for group in bytes.chunks(3) {
        let word = group.iter().enumerate().fold(0_u32, |word, (at, byte)| {
            word | u32::from(*byte) << (16 - 8 * at)
        });
        for at in 0..=group.len() {
            out.push(char::from(DIGITS[(word >> (18 - 6 * at)) as usize & 63]));
        }
    }
    out
}

fn from_base64url(text: &str) -> Option<Vec<u8>> {
    let mut out = Vec::with_capacity(text.len() * 3 / 4);
    let (mut word, mut bits) = (0_u32, 0_u32);
    for byte in text.trim_end_matches('=').bytes() {
        let digit = DIGITS.iter().position(|known| *known == byte)?;
        word = word << 6 | digit as u32;
        bits += 6;
        if bits >= 8 {
            bits -= 8;
            out.push((word >> bits & 255) as u8);
        }
    }
    Some(out)
}

#[cfg(test)]
mod tests {
    use super::{base64url, from_base64url, packed, unpacked};
    use crate::need::answers::{Answers, Mount, Units};
    use crate::web::stored::{Found, blank};

    /// RFC 4648, section 10, without padding.
    #[test]
    fn base64url_is_the_standard_one() {
        for (plain, coded) in [
            ("", ""),
            ("f", "Zg"),
            ("fo", "Zm8"),
            ("foo", "Zm9v"),
            ("foob", "Zm9vYg"),
            ("fooba", "Zm9vYmE"),
            ("foobar", "Zm9vYmFy"),
        ] {
            assert_eq!(base64url(plain.as_bytes()), coded);
            assert_eq!(from_base64url(coded).unwrap(), plain.as_bytes());
        }
        assert_eq!(base64url(&[0xFB, 0xFF]), "-_8");
    }

    #[test]
    fn a_link_holds_the_answers() {
        let answers = Answers {
            mount: Some(Mount::default()),
            ..blank(Units::Imperial)
        };
        assert_eq!(
            unpacked(&packed(&answers)),
            Found::Answers(Box::new(answers))
        );
    }

    #[test]
    fn a_broken_link_says_so() {
        let whole = packed(&blank(Units::Metric));
        assert!(matches!(
            unpacked(&whole[..whole.len() / 2]),
            Found::Damaged(_)
        ));
        assert!(matches!(unpacked("%%%"), Found::Damaged(_)));
        assert!(matches!(unpacked(""), Found::Damaged(_)));
    }
}
