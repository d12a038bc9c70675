//! Reading answers from JSON: strictly, as a program hands them over, or kindly, as a
//! browser stored them once.

use serde_json::{Map, Value};

use super::answers::{Answers, Ranges, VERSION};
use super::check::{Problem, check};
use super::resolve::resolve;

/// Longest JSON that is looked at, in bytes.
const LONGEST: usize = 100_000;

/// Why a text is no set of answers.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum ParseProblem {
    /// Not JSON.
    NotJson {
        /// Line of the fault, from 1.
        line: usize,
        /// Column of the fault, from 1.
        column: usize,
    },
    /// JSON, but no object.
    NotAnObject,
    /// No `version`, or one that is no whole number.
    NoVersion,
    /// A version that only a later program knows.
    Later {
        /// What was read.
        read: u64,
    },
    /// A field that is not known or does not hold what it should.
    Unreadable {
        /// The field at the top that holds it.
        field: String,
        /// What the reader said.
        why: String,
    },
    /// Far too long for a set of answers.
    TooLong {
        /// Its length in bytes.
        length: usize,
    },
}

/// The answers in a JSON text of schema version 1.
///
/// They are well formed, not yet sensible: see [`check`].
///
/// # Errors
/// [`ParseProblem`]: no JSON, no object, no version, a later version, or a field that is not
/// known or cannot be read.
///
/// # Example
/// ```
/// use scopewright::need::{ParseProblem, parse};
/// let answers = parse(r#"{"version": 1, "eye": {"age_years": 46}}"#).unwrap();
/// assert_eq!(answers.eye.unwrap().age_years, Some(46.0));
/// assert_eq!(parse(r#"{"version": 2}"#), Err(ParseProblem::Later { read: 2 }));
/// ```
pub fn parse(json: &str) -> Result<Answers, ParseProblem> {
    let object = object(json)?;
    from_object(object)
}

/// The answers in a JSON value, as [`parse`] reads them.
///
/// # Errors
/// As [`parse`].
pub fn parse_value(value: Value) -> Result<Answers, ParseProblem> {
    match value {
        Value::Object(object) => {
            version(&object)?;
            from_object(object)
        }
        _ => Err(ParseProblem::NotAnObject),
    }
}

fn object(json: &str) -> Result<Map<String, Value>, ParseProblem> {
    if json.len() > LONGEST {
        return Err(ParseProblem::TooLong { length: json.len() });
    }
    let value: Value = serde_json::from_str(json).map_err(|error| ParseProblem::NotJson {
        line: error.line(),
        column: error.column(),
    })?;
    let Value::Object(object) = value else {
        return Err(ParseProblem::NotAnObject);
    };
    version(&object)?;
    Ok(object)
}

fn version(object: &Map<String, Value>) -> Result<(), ParseProblem> {
    match object.get("version").and_then(Value::as_u64) {
        Some(read) if read == u64::from(VERSION) => Ok(()),
        Some(read) if read > u64::from(VERSION) => Err(ParseProblem::Later { read }),
        _ => Err(ParseProblem::NoVersion),
    }
}

fn from_object(object: Map<String, Value>) -> Result<Answers, ParseProblem> {
    // Field by field only when something is wrong, to say which.
    if let Ok(answers) = serde_json::from_value(Value::Object(object.clone())) {
        return Ok(answers);
    }
    for (field, value) in object {
        if let Err(why) = single(&field, value) {
            return Err(ParseProblem::Unreadable { field, why });
        }
    }
    Err(ParseProblem::NotAnObject)
}

/// Answers that hold this one field alone.
fn single(field: &str, value: Value) -> Result<Answers, String> {
    let mut alone = Map::new();
    alone.insert(field.to_owned(), value);
    serde_json::from_value(Value::Object(alone)).map_err(|error| error.to_string())
}

/// What could be kept of stored answers.
#[derive(Clone, Debug, PartialEq)]
pub struct Rescued {
    /// The answers that could be read and make sense.
    pub answers: Answers,
    /// Fields at the top that were left out, because they could not be read.
    pub lost: Vec<String>,
    /// What was wrong with fields that could be read; they were left out too.
    pub problems: Vec<Problem>,
    /// They are of a later version; they should be kept as they are for the later program.
    pub later_version: Option<u64>,
}

impl Rescued {
    /// Everything was read as it stood.
    #[must_use]
    pub fn is_whole(&self) -> bool {
        self.lost.is_empty() && self.problems.is_empty() && self.later_version.is_none()
    }
}

/// What can be kept of answers that were stored: of damaged ones the fields that still make
/// sense, of a later version those that this version knows.
///
/// # Errors
/// [`ParseProblem`] where nothing can be kept: no JSON, no object.
pub fn rescue(json: &str) -> Result<Rescued, ParseProblem> {
    if json.len() > LONGEST {
        return Err(ParseProblem::TooLong { length: json.len() });
    }
    let value: Value = serde_json::from_str(json).map_err(|error| ParseProblem::NotJson {
        line: error.line(),
        column: error.column(),
    })?;
    let Value::Object(object) = value else {
        return Err(ParseProblem::NotAnObject);
    };
    let read = object.get("version").and_then(Value::as_u64);
    let later_version = read.filter(|read| *read > u64::from(VERSION));
    let mut kept = Map::new();
    let mut lost = Vec::new();
    let mut problems = Vec::new();
    if read.is_none() {
        lost.push("version".to_owned());
    }
    let mut partial = None;
    for (field, value) in object {
        if field == "version" {
            continue;
        }
        if field == "ranges" && is_partial(&value) {
            partial = Some(value);
            continue;
        }
        match single(&field, value.clone()) {
            Ok(mut alone) => {
                alone.version = VERSION;
                let wrong = check(&alone);
                if wrong.is_empty() {
                    kept.insert(field, value);
                } else {
                    problems.extend(wrong);
                }
            }
            Err(_) => lost.push(field),
        }
    }
    kept.insert("version".to_owned(), VERSION.into());
    let mut answers = serde_json::from_value(Value::Object(kept)).unwrap_or(Answers {
        version: VERSION,
        ..Answers::default()
    });
    if let Some(said) = partial {
        let ranges = completed(&answers, &said);
        let alone = Answers {
            version: VERSION,
            ranges: Some(ranges),
            ..Answers::default()
        };
        let wrong = check(&alone);
        if wrong.is_empty() {
            answers.ranges = Some(ranges);
        } else {
            problems.extend(wrong);
        }
    }
    Ok(Rescued {
        answers,
        lost,
        problems,
        later_version,
    })
}

const ENDS: [&str; 3] = ["nearest_m", "usual_m", "farthest_m"];

/// Ranges of which some are said and the others missing, as a club presets them.
fn is_partial(value: &Value) -> bool {
    value.as_object().is_some_and(|ranges| {
        (1..3).contains(&ranges.len())
            && ranges
                .iter()
                .all(|(key, value)| ENDS.contains(&key.as_str()) && value.is_number())
    })
}

/// What is said decides; what is missing is what is usual, moved as far as order asks.
fn completed(answers: &Answers, said: &Value) -> Ranges {
    let usual = resolve(answers).situations.first().map(|each| each.range);
    let end = |key: &str, usual_m: f64| said.get(key).and_then(Value::as_f64).unwrap_or(usual_m);
    let said_usual_m = said.get("usual_m").and_then(Value::as_f64);
    let (nearest_m, usual_m, farthest_m) = usual.map_or((30.0, 80.0, 150.0), |range| {
        (range.nearest_m, range.usual_m, range.farthest_m)
    });
    let said_nearest_m = said.get("nearest_m").and_then(Value::as_f64);
    let said_farthest_m = said.get("farthest_m").and_then(Value::as_f64);
    let floor_m = said_nearest_m.or(said_usual_m).unwrap_or(0.0);
    let ceiling_m = said_farthest_m.or(said_usual_m).unwrap_or(f64::INFINITY);
    let nearest_m = end(
        "nearest_m",
        nearest_m.min(said_usual_m.unwrap_or(ceiling_m)),
    );
    let farthest_m = end(
        "farthest_m",
        farthest_m.max(said_usual_m.unwrap_or(floor_m)),
    );
    Ranges {
        nearest_m,
        usual_m: said_usual_m.unwrap_or_else(|| usual_m.max(nearest_m).min(farthest_m)),
        farthest_m,
    }
}

/// The answers as they are stored: JSON of schema version 1 without what was not answered.
#[must_use]
pub fn to_json(answers: &Answers) -> String {
    let mut value = serde_json::to_value(answers).unwrap_or(Value::Null);
    prune(&mut value);
    if let Value::Object(object) = &mut value {
        object.insert("version".to_owned(), VERSION.into());
    }
    value.to_string()
}

/// Leaves out what says nothing: nulls, ticks that are not set, empty lists and groups.
pub(super) fn prune(value: &mut Value) {
    if let Value::Object(object) = value {
        object.values_mut().for_each(prune);
        object.retain(|key, value| match value {
            Value::Null | Value::Bool(false) => {
                // "No" is an answer where the question has a third one.
                !value.is_null()
                    && matches!(
                        key.as_str(),
                        "rangefinder" | "both_eyes_open" | "comes_off" | "others_use_it"
                    )
            }
            Value::Array(list) => !list.is_empty(),
            Value::Object(object) => !object.is_empty(),
            Value::String(text) => {
                !(key == "units" && text == "metric" || key == "lens" && text == "natural")
            }
            Value::Number(number) => !(key == "snow" && number.as_f64() == Some(0.0)),
            Value::Bool(true) => true,
        });
    } else if let Value::Array(list) = value {
        list.iter_mut().for_each(prune);
    }
}
