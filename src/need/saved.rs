//! Reading answers from JSON: strictly, as a program hands them over, or kindly, as a
//! browser stored them once.

use super::answers::{Answers, Ranges, VERSION};
use super::check::{Problem, check};
use super::resolve::resolve;
use super::wire;
use crate::plain::Json;

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
    let value = value(json)?;
    let version_read = value.get("version").and_then(Json::whole);
    match version_read {
        Some(read) if read == u64::from(VERSION) => {}
        Some(read) if read > u64::from(VERSION) => return Err(ParseProblem::Later { read }),
        _ => return Err(ParseProblem::NoVersion),
    }
    wire::read(&value).or_else(|_| {
        // Field by field only when something is wrong, to say which.
        for (field, value) in fields(value)? {
            if let Err(why) = single(&field, value) {
                return Err(ParseProblem::Unreadable { field, why });
            }
        }
        Err(ParseProblem::NotAnObject)
    })
}

/// The object in a JSON text.
fn value(json: &str) -> Result<Json, ParseProblem> {
    if json.len() > LONGEST {
        return Err(ParseProblem::TooLong { length: json.len() });
    }
    match Json::read(json) {
        Ok(value @ Json::Fields(_)) => Ok(value),
        Ok(_) => Err(ParseProblem::NotAnObject),
        Err(at) => Err(ParseProblem::NotJson {
            line: at.line,
            column: at.column,
        }),
    }
}

fn fields(value: Json) -> Result<Vec<(String, Json)>, ParseProblem> {
    match value {
        Json::Fields(fields) => Ok(fields),
        _ => Err(ParseProblem::NotAnObject),
    }
}

/// Answers that hold this one field alone.
fn single(field: &str, value: Json) -> Result<Answers, String> {
    wire::read(&Json::fields([(field, value)]))
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
    rescued(value(json)?)
}

/// What can be kept of answers in an object of fields.
pub(super) fn rescued(value: Json) -> Result<Rescued, ParseProblem> {
    let read = value.get("version").and_then(Json::whole);
    let later_version = read.filter(|read| *read > u64::from(VERSION));
    let mut kept = Json::Fields(Vec::new());
    let mut lost = Vec::new();
    let mut problems = Vec::new();
    if read.is_none() {
        lost.push("version".to_owned());
    }
    let mut partial = None;
    for (field, value) in fields(value)? {
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
                    kept.put(&field, value);
                } else {
                    problems.extend(wrong);
                }
            }
            Err(_) => lost.push(field),
        }
    }
    kept.put("version", Json::Whole(u64::from(VERSION)));
    let mut answers = wire::read(&kept).unwrap_or(Answers {
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
fn is_partial(value: &Json) -> bool {
    matches!(value, Json::Fields(ranges) if (1..3).contains(&ranges.len())
        && ranges
            .iter()
            .all(|(key, value)| ENDS.contains(&key.as_str()) && value.number().is_some()))
}

/// What is said decides; what is missing is what is usual, moved as far as order asks.
fn completed(answers: &Answers, said: &Json) -> Ranges {
    let usual = resolve(answers).situations.first().map(|each| each.range);
    let end = |key: &str, usual_m: f64| said.get(key).and_then(Json::number).unwrap_or(usual_m);
    let said_usual_m = said.get("usual_m").and_then(Json::number);
    let (nearest_m, usual_m, farthest_m) = usual.map_or((30.0, 80.0, 150.0), |range| {
        (range.nearest_m, range.usual_m, range.farthest_m)
    });
    let said_nearest_m = said.get("nearest_m").and_then(Json::number);
    let said_farthest_m = said.get("farthest_m").and_then(Json::number);
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
    pruned(answers).written()
}

/// The answers as they are stored, as one value.
pub(super) fn pruned(answers: &Answers) -> Json {
    let mut value = wire::written(answers);
    prune(&mut value);
    value.put("version", Json::Whole(u64::from(VERSION)));
    value
}

/// Leaves out what says nothing: nulls, ticks that are not set, empty lists and groups.
fn prune(value: &mut Json) {
    match value {
        Json::Fields(fields) => {
            for (_, value) in fields.iter_mut() {
                prune(value);
            }
            fields.retain(|(key, value)| match value {
                Json::Null => false,
                // "No" is an answer where the question has a third one.
                Json::Flag(false) => matches!(
                    key.as_str(),
                    "rangefinder" | "both_eyes_open" | "comes_off" | "others_use_it"
                ),
                Json::List(list) => !list.is_empty(),
                Json::Fields(fields) => !fields.is_empty(),
                Json::Text(text) => {
                    !(key == "units" && text == "metric" || key == "lens" && text == "natural")
                }
                Json::Number(number) => !(key == "snow" && *number == 0.0),
                Json::Whole(_) | Json::Flag(true) => true,
            });
        }
        Json::List(list) => list.iter_mut().for_each(prune),
        _ => {}
    }
}
