//! Answers as they are kept between visits: read with care, never thrown away.

use super::platform;
use crate::need::answers::{Answers, Units, VERSION};
use std::collections::BTreeMap;

/// Where the answers are kept.
pub const ANSWERS: &str = "scopewright.answers";
/// Where the texts of typed fields are kept.
pub const TYPED: &str = "scopewright.typed";
/// Where the choice of colours is kept.
pub const THEME: &str = "scopewright.theme";
/// Where answers go that could not be read.
pub const SET_ASIDE: &str = "scopewright.set-aside";

/// No answers yet.
#[must_use]
pub fn blank(units: Units) -> Answers {
    Answers {
        version: VERSION,
        units,
        ..Answers::default()
    }
}

/// What was found.
#[derive(Clone, Debug, PartialEq)]
pub enum Found {
    /// Nothing was kept.
    Nothing,
    /// Answers.
    Answers(Box<Answers>),
    /// Written by a later version.
    Later(u64),
    /// Not to be read, and why.
    Damaged(String),
}

/// Reads answers from text, as they were kept or shared.
#[must_use]
pub fn read(text: &str) -> Found {
    let value: serde_json::Value = match serde_json::from_str(text) {
        Ok(value) => value,
        Err(error) => return Found::Damaged(error.to_string()),
    };
    match value.get("version").and_then(serde_json::Value::as_u64) {
        Some(version) if version > u64::from(VERSION) => return Found::Later(version),
        Some(version) if version == u64::from(VERSION) => {}
        _ => return Found::Damaged("no version".into()),
    }
    match serde_json::from_value::<Answers>(value) {
        Ok(answers) => Found::Answers(Box::new(answers)),
        Err(error) => Found::Damaged(error.to_string()),
    }
}

/// What was kept on this device.
#[must_use]
pub fn kept() -> Found {
    platform::kept(ANSWERS).map_or(Found::Nothing, |text| read(&text))
}

/// The texts of typed fields that were kept.
#[must_use]
pub fn kept_typed() -> BTreeMap<String, String> {
    platform::kept(TYPED)
        .and_then(|text| serde_json::from_str(&text).ok())
        .unwrap_or_default()
}

/// Keeps answers and typed texts.
///
/// # Errors
/// The browser cannot keep them beyond this visit.
pub fn keep(
    answers: &Answers,
    typed: &BTreeMap<String, String>,
) -> Result<(), platform::StoreFault> {
    if typed.is_empty() && *answers == blank(answers.units) && answers.units == Units::default() {
        platform::forget(ANSWERS);
        platform::forget(TYPED);
        return Ok(());
    }
    let answers = serde_json::to_string(answers).unwrap_or_default();
    let typed = serde_json::to_string(typed).unwrap_or_default();
    platform::keep(ANSWERS, &answers).and(platform::keep(TYPED, &typed))
}

/// Puts what could not be read aside, so that nothing is lost by starting afresh.
pub fn set_aside() {
    if let Some(text) = platform::kept(ANSWERS) {
        // Where nothing can be kept there was nothing to read either.
        let _ = platform::keep(SET_ASIDE, &text);
    }
}

/// Forgets everything on this device.
pub fn forget() {
    for key in [ANSWERS, TYPED, THEME, SET_ASIDE] {
        platform::forget(key);
    }
}

#[cfg(test)]
mod tests {
    use super::{Found, blank, read};
    use crate::need::answers::Units;

    #[test]
    fn what_is_kept_is_read_again() {
        let text = serde_json::to_string(&blank(Units::Imperial)).unwrap();
        assert_eq!(
            read(&text),
            Found::Answers(Box::new(blank(Units::Imperial)))
        );
    }

    #[test]
    fn damage_and_later_versions_are_told_apart() {
        assert!(matches!(read("{\"version\":1,"), Found::Damaged(_)));
        assert!(matches!(read("[]"), Found::Damaged(_)));
        assert!(matches!(read("{}"), Found::Damaged(_)));
        assert!(matches!(
            read("{\"version\":1,\"eye\":7}"),
            Found::Damaged(_)
        ));
        assert_eq!(read("{\"version\":2,\"new\":1}"), Found::Later(2));
    }
}
