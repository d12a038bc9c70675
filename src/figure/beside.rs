//! Sayings and two sights beside each other, JSON in and JSON out.

use serde_json::{Map, Value, json};

use crate::advice::sayings;
use crate::advice::versus::{self as judge, Sight};
use crate::need::answers::Answers;
use crate::need::{Need, resolve};
use crate::sight::typed_line::TypedSight;

/// The sayings for one line of answers; the field `sight` names the sight in question.
///
/// # Example
/// ```
/// let line = scopewright::figure::beside::sayings(r#"{"version": 1, "sight": "8x56"}"#);
/// assert!(line.starts_with(r#"{"sayings":[{"#));
/// assert!(scopewright::figure::beside::sayings("[]").starts_with(r#"{"error":"#));
/// ```
#[must_use]
pub fn sayings(line: &str) -> String {
    answered(said(line))
}

/// Two sights for one shooter: `{"answers": {…}, "one": "8x56", "other": "3-12x50"}`.
///
/// `answers` may be missing; then everything is assumed.
///
/// # Example
/// ```
/// let line = r#"{"one": "8x56", "other": "3-12x50, 30 mm"}"#;
/// assert!(scopewright::figure::beside::versus(line).contains(r#""minutes_tonight""#));
/// let line = r#"{"one": "8x56", "other": "red"}"#;
/// assert!(scopewright::figure::beside::versus(line).starts_with(r#"{"error":"other: "#));
/// ```
#[must_use]
pub fn versus(line: &str) -> String {
    answered(compared(line))
}

fn answered(result: Result<Value, String>) -> String {
    match result {
        Ok(value) => value.to_string(),
        Err(why) => json!({ "error": why }).to_string(),
    }
}

fn object(line: &str) -> Result<Map<String, Value>, String> {
    match serde_json::from_str(line) {
        Ok(Value::Object(fields)) => Ok(fields),
        Ok(other) => Err(format!("an object is wanted, {other} is none")),
        Err(error) => Err(format!("no JSON: {error}")),
    }
}

fn need(answers: Value) -> Result<Need, String> {
    let answers: Answers =
        serde_json::from_value(answers).map_err(|error| format!("answers: {error}"))?;
    Ok(resolve(&answers))
}

fn sight(name: &str, value: &Value) -> Result<TypedSight, String> {
    let typed = value
        .as_str()
        .ok_or_else(|| format!("{name} is {value}; a line as \"3-12x50\" is wanted"))?;
    TypedSight::parse(typed).map_err(|problem| format!("{name}: {problem}"))
}

fn said(line: &str) -> Result<Value, String> {
    let mut fields = object(line)?;
    let sight = match fields.remove("sight") {
        Some(value) => Some(sight("sight", &value)?.specification()),
        None => None,
    };
    let need = need(Value::Object(fields))?;
    Ok(json!({ "sayings": sayings::sayings(&need, sight.as_ref()) }))
}

fn compared(line: &str) -> Result<Value, String> {
    let mut fields = object(line)?;
    let answers = fields
        .remove("answers")
        .unwrap_or_else(|| Value::Object(Map::new()));
    let mut typed = |name: &str| match fields.remove(name) {
        Some(value) => sight(name, &value),
        None => Err(format!(
            "{name} is missing; a line as \"3-12x50\" is wanted"
        )),
    };
    let (one, other) = (typed("one")?, typed("other")?);
    if let Some(name) = fields.keys().next() {
        return Err(format!(
            "{name} is not known; answers, one and other are read"
        ));
    }
    let beside = judge::versus(&need(answers)?, &Sight::Typed(one), &Sight::Typed(other));
    serde_json::to_value(beside).map_err(|error| error.to_string())
}
