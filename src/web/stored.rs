//! Answers as they are kept between visits: read with care, never thrown away.

use super::platform::{self, Kept};
use crate::need::answers::{Answers, Units, VERSION};
use crate::need::questions::Part;
use crate::need::{ParseProblem, Reply, Rescued, apply, rescue, to_json};
use crate::plain::Json;
use crate::plain::Map;
use crate::ports::{AnswerStore, StoreProblem};
use std::cell::RefCell;

thread_local! {
    /// What the page around a frame has preset.
    static PRESET: RefCell<Option<Answers>> = const { RefCell::new(None) };
    /// What was ticked before the module arrived, until it is taken over.
    static TICKED: RefCell<Vec<(String, String)>> = const { RefCell::new(Vec::new()) };
}

/// What was ticked before the module arrived is added to the next answers that ask for it.
pub fn ticked(names_and_keys: Vec<(String, String)>) {
    TICKED.set(names_and_keys);
}

/// These answers, with what was ticked before the module arrived.
#[must_use]
pub fn with_ticked(mut answers: Answers) -> Answers {
    for (name, key) in TICKED.take() {
        let is_held = answers.uses.iter().any(|each| each.what == key);
        answers = match name.as_str() {
            "uses" if !is_held => apply(&answers, &Reply::Tap(Part::Uses, key)),
            "unsure" if answers.uses.is_empty() => apply(&answers, &Reply::NotSure("quarry")),
            _ => answers,
        };
    }
    answers
}

/// The answers.
pub const ANSWERS: Kept = Kept("scopewright.answers");
/// The texts of typed fields.
pub const TYPED: Kept = Kept("scopewright.typed");
/// The choice of colours.
pub const THEME: Kept = Kept("scopewright.theme");
/// Answers that could not be read whole.
pub const SET_ASIDE: Kept = Kept("scopewright.set-aside");
/// A shop's stock list.
pub const SHELF: Kept = Kept("scopewright.shelf");

/// No answers yet.
#[must_use]
pub fn blank(units: Units) -> Answers {
    Answers {
        version: VERSION,
        units,
        ..Answers::default()
    }
}

/// The answers that one starts from: what the page around has preset, else none.
#[must_use]
pub fn start() -> Answers {
    PRESET
        .with_borrow(Clone::clone)
        .unwrap_or_else(|| blank(usual_units()))
}

/// The answers that one starts from, in the units that are read now.
#[must_use]
pub fn start_in(units: Units) -> Answers {
    Answers { units, ..start() }
}

/// Starts from these answers from now on.
pub fn preset(answers: &Answers) {
    PRESET.set(Some(answers.clone()));
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
    ANSWERS.text().map(|text| rescue(&text))
}

/// The texts in an object that holds nothing else.
#[must_use]
pub fn texts(value: &Json) -> Option<Map<String, String>> {
    let Json::Fields(fields) = value else {
        return None;
    };
    let mut texts = Map::new();
    for (name, value) in fields {
        texts.insert(name.clone(), value.text()?.to_owned());
    }
    Some(texts)
}

/// The texts of typed fields that were kept.
#[must_use]
pub fn kept_typed() -> Map<String, String> {
    TYPED
        .text()
        .and_then(|text| texts(&Json::read(&text).ok()?))
        .unwrap_or_default()
}

/// Keeps answers and typed texts.
///
/// # Errors
/// The browser cannot keep them beyond this visit.
pub fn keep(answers: &Answers, typed: &Map<String, String>) -> Result<(), StoreProblem> {
    if typed.is_empty() && *answers == blank(usual_units()) {
        return ANSWERS.forget().and(TYPED.forget());
    }
    let typed = typed
        .iter()
        .map(|(name, text)| (name.as_str(), Json::Text(text.clone())));
    let typed = Json::fields(typed).written();
    ANSWERS.save(&to_json(answers)).and(TYPED.save(&typed))
}

/// Puts what could not be read whole aside, so that nothing is lost by going on.
pub fn set_aside() {
    if let Some(text) = ANSWERS.text() {
        // Where nothing can be kept there was nothing to read either.
        let _ = SET_ASIDE.save(&text);
    }
}

/// Forgets what somebody answered: nothing of a customer stays for the next.
pub fn forget_answers() {
    for kept in [ANSWERS, TYPED, SET_ASIDE] {
        // A browser that denies storage has nothing to forget.
        let _ = kept.forget();
    }
}

/// Forgets everything on this device.
pub fn forget() {
    forget_answers();
    for kept in [THEME, SHELF] {
        let _ = kept.forget();
    }
}
