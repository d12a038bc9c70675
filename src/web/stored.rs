//! Answers as they are kept between visits: read with care, never thrown away.

use super::platform;
use crate::need::answers::{Answers, Units, VERSION};
use crate::need::{ParseProblem, Rescued, rescue, to_json};
use std::collections::BTreeMap;

/// Where the answers are kept.
pub const ANSWERS: &str = "scopewright.answers";
/// Where the texts of typed fields are kept.
pub const TYPED: &str = "scopewright.typed";
/// Where the choice of colours is kept.
pub const THEME: &str = "scopewright.theme";
/// Where answers go that could not be read whole.
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

/// Yards and grains where that is what one reads, else metres and grams.
#[must_use]
pub fn usual_units() -> Units {
    match platform::language().as_str() {
        "en-US" | "en-LR" | "es-US" => Units::Imperial,
        _ => Units::Metric,
    }
}

/// What was kept on this device; none if nothing was.
#[must_use]
pub fn kept() -> Option<Result<Rescued, ParseProblem>> {
    platform::kept(ANSWERS).map(|text| rescue(&text))
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
    if typed.is_empty() && *answers == blank(usual_units()) {
        platform::forget(ANSWERS);
        platform::forget(TYPED);
        return Ok(());
    }
    let typed = serde_json::to_string(typed).unwrap_or_default();
    platform::keep(ANSWERS, &to_json(answers)).and(platform::keep(TYPED, &typed))
}

/// Puts what could not be read whole aside, so that nothing is lost by going on.
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
