//! Reads the fields of a line, and says what is wrong with one.

use serde_json::{Map, Value};

use crate::quantity::OutOfRange;

/// The fields of one JSON object, read one by one.
///
/// Whatever has not been read at the end is a surplus field and refused.
#[derive(Debug)]
pub struct Fields {
    path: String,
    unread: Map<String, Value>,
    known: Vec<&'static str>,
}

/// Why a line was not answered with a figure.
#[derive(Clone, Debug, PartialEq)]
pub struct Refusal {
    text: String,
    extra: Vec<(&'static str, Value)>,
    missing: bool,
}

impl Refusal {
    /// A refusal with its text.
    #[must_use]
    pub fn new(text: impl Into<String>) -> Self {
        Self {
            text: text.into(),
            extra: Vec::new(),
            missing: false,
        }
    }

    /// The same refusal with a further field beside its text.
    #[must_use]
    pub fn with(mut self, name: &'static str, value: impl Into<Value>) -> Self {
        self.extra.push((name, value.into()));
        self
    }

    pub(super) fn into_line(self) -> String {
        let mut map = Map::new();
        map.insert("error".into(), Value::String(self.text));
        for (name, value) in self.extra {
            map.insert(name.into(), value);
        }
        Value::Object(map).to_string()
    }
}

impl From<OutOfRange> for Refusal {
    fn from(out: OutOfRange) -> Self {
        Self::new(out.to_string())
    }
}

/// A figure's answer: `value` first, then whatever else it has to tell.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Reply {
    fields: Vec<(&'static str, Value)>,
}

impl Reply {
    /// An answer whose `value` is a number.
    ///
    /// # Errors
    /// A number that is not finite is refused, because JSON cannot carry it.
    pub fn value(value: f64) -> Result<Self, Refusal> {
        Self::default().number("value", value)
    }

    /// The same answer with a further number.
    ///
    /// # Errors
    /// As [`Reply::value`].
    pub fn number(self, name: &'static str, value: f64) -> Result<Self, Refusal> {
        if value.is_finite() {
            Ok(self.with(name, value))
        } else {
            Err(Refusal::new(format!(
                "{name} came out as {value}; the fields lie outside what the model holds for"
            )))
        }
    }

    /// The same answer with a further field of any kind.
    #[must_use]
    pub fn with(mut self, name: &'static str, value: impl Into<Value>) -> Self {
        self.fields.push((name, value.into()));
        self
    }

    pub(super) fn into_line(self) -> String {
        // Written by hand, because a map would sort the names.
        let inner: Vec<String> = self
            .fields
            .iter()
            .map(|(name, value)| format!("\"{name}\":{value}"))
            .collect();
        format!("{{{}}}", inner.join(","))
    }
}

impl Fields {
    /// The fields of a line.
    ///
    /// # Errors
    /// A line that is no JSON object; the text names the field at which reading stopped.
    pub fn parse(line: &str) -> Result<Self, Refusal> {
        match serde_json::from_str(line.trim()) {
            Ok(Value::Object(unread)) => Ok(Self {
                path: String::new(),
                unread,
                known: Vec::new(),
            }),
            Ok(other) => Err(Refusal::new(format!(
                "the line is {}; it must be an object such as {{\"figure\": \"pupil_diameter\", …}}",
                described(&other)
            ))),
            Err(error) => Err(Refusal::new(unreadable(line.trim(), &error))),
        }
    }

    fn take(&mut self, name: &'static str) -> Option<Value> {
        self.known.push(name);
        self.unread.remove(name)
    }

    fn required(&mut self, name: &'static str, kind: &str) -> Result<Value, Refusal> {
        self.take(name).ok_or_else(|| Refusal {
            missing: true,
            ..Refusal::new(format!(
                "field `{}{name}` is missing; it must be {kind}",
                self.path
            ))
        })
    }

    fn mistyped(&self, name: &str, kind: &str, read: &Value) -> Refusal {
        Refusal::new(format!(
            "field `{}{name}` is {}; it must be {kind}",
            self.path,
            described(read)
        ))
    }

    /// A required text.
    ///
    /// # Errors
    /// Missing or not a text.
    pub fn text(&mut self, name: &'static str) -> Result<String, Refusal> {
        match self.required(name, "a text")? {
            Value::String(text) => Ok(text),
            other => Err(self.mistyped(name, "a text", &other)),
        }
    }

    /// A required number of any size.
    ///
    /// # Errors
    /// Missing, not a number, or not finite.
    pub fn any_number(&mut self, name: &'static str) -> Result<f64, Refusal> {
        let value = self.required(name, "a number")?;
        self.finite(name, &value)
    }

    fn finite(&self, name: &str, value: &Value) -> Result<f64, Refusal> {
        match value {
            Value::Number(number) => number
                .as_f64()
                .filter(|x| x.is_finite())
                .ok_or_else(|| self.mistyped(name, "a finite number", value)),
            other => Err(self.mistyped(name, "a number", other)),
        }
    }

    /// A required number from `least` to `most`.
    ///
    /// # Errors
    /// Missing, not a finite number, or outside the range.
    pub fn number(&mut self, name: &'static str, least: f64, most: f64) -> Result<f64, Refusal> {
        let value = self.any_number(name)?;
        self.within(name, value, least, most)
    }

    /// A number that may be left out or null.
    ///
    /// # Errors
    /// Given but not a finite number, or outside the range.
    pub fn optional_number(
        &mut self,
        name: &'static str,
        least: f64,
        most: f64,
    ) -> Result<Option<f64>, Refusal> {
        match self.take(name) {
            None | Some(Value::Null) => Ok(None),
            Some(value) => {
                let number = self.finite(name, &value)?;
                self.within(name, number, least, most).map(Some)
            }
        }
    }

    fn within(&self, name: &str, value: f64, least: f64, most: f64) -> Result<f64, Refusal> {
        if (least..=most).contains(&value) {
            Ok(value)
        } else {
            Err(Refusal::new(format!(
                "{}{name} is {value}, which lies outside {least} to {most}",
                self.path
            )))
        }
    }

    /// A truth value that may be left out.
    ///
    /// # Errors
    /// Given but neither true nor false.
    pub fn optional_truth(&mut self, name: &'static str) -> Result<Option<bool>, Refusal> {
        match self.take(name) {
            None | Some(Value::Null) => Ok(None),
            Some(Value::Bool(truth)) => Ok(Some(truth)),
            Some(other) => Err(self.mistyped(name, "true or false", &other)),
        }
    }

    /// A text that may be left out or null.
    ///
    /// # Errors
    /// Given but not a text.
    pub fn optional_text(&mut self, name: &'static str) -> Result<Option<String>, Refusal> {
        match self.take(name) {
            None | Some(Value::Null) => Ok(None),
            Some(Value::String(text)) => Ok(Some(text)),
            Some(other) => Err(self.mistyped(name, "a text", &other)),
        }
    }

    /// A required list of numbers.
    ///
    /// # Errors
    /// Missing, not a list, or an entry that is no finite number.
    pub fn numbers(&mut self, name: &'static str) -> Result<Vec<f64>, Refusal> {
        match self.required(name, "a list of numbers")? {
            Value::Array(list) => list.iter().map(|v| self.finite(name, v)).collect(),
            other => Err(self.mistyped(name, "a list of numbers", &other)),
        }
    }

    /// A required value of any kind, as it was read.
    ///
    /// # Errors
    /// Missing.
    pub fn raw(&mut self, name: &'static str) -> Result<Value, Refusal> {
        self.required(name, "given")
    }

    /// A value of any kind that may be left out.
    pub fn optional_raw(&mut self, name: &'static str) -> Option<Value> {
        self.take(name).filter(|v| !v.is_null())
    }

    /// A required object, read by `read`, which may leave nothing unread.
    ///
    /// # Errors
    /// Missing, not an object, or whatever `read` refuses.
    pub fn object<T>(
        &mut self,
        name: &'static str,
        read: impl FnOnce(&mut Fields) -> Result<T, Refusal>,
    ) -> Result<T, Refusal> {
        match self.required(name, "an object")? {
            Value::Object(unread) => {
                let mut inner = Fields {
                    path: format!("{}{name}.", self.path),
                    unread,
                    known: Vec::new(),
                };
                match read(&mut inner) {
                    Ok(value) => inner.all_read().map(|()| value),
                    Err(refusal) => Err(inner.misspelt(refusal)),
                }
            }
            other => Err(self.mistyped(name, "an object", &other)),
        }
    }

    /// An object that may be left out or null, read by `read`.
    ///
    /// # Errors
    /// As [`Fields::object`] if it is given.
    pub fn optional_object<T>(
        &mut self,
        name: &'static str,
        read: impl FnOnce(&mut Fields) -> Result<T, Refusal>,
    ) -> Result<Option<T>, Refusal> {
        match self.unread.get(name) {
            None | Some(Value::Null) => {
                let _ = self.take(name);
                Ok(None)
            }
            Some(_) => self.object(name, read).map(Some),
        }
    }

    /// Refuses what has not been read.
    pub(super) fn all_read(&self) -> Result<(), Refusal> {
        let Some(surplus) = self.unread.keys().next() else {
            return Ok(());
        };
        Err(Refusal::new(format!(
            "field `{}{surplus}` is not known here; the fields are {}",
            self.path,
            self.known.join(", ")
        )))
    }

    /// A refusal for a missing field with the unread fields beside it, which often hold
    /// the same name misspelt.
    pub(super) fn misspelt(&self, refusal: Refusal) -> Refusal {
        if !refusal.missing || self.unread.is_empty() {
            return refusal;
        }
        let unread: Vec<String> = self
            .unread
            .keys()
            .map(|name| format!("`{}{name}`", self.path))
            .collect();
        Refusal {
            text: format!("{}; not yet read: {}", refusal.text, unread.join(", ")),
            missing: false,
            ..refusal
        }
    }
}

fn described(value: &Value) -> String {
    match value {
        Value::Null => "null".into(),
        Value::Bool(truth) => format!("the truth value {truth}"),
        Value::Number(number) => format!("the number {number}"),
        Value::String(text) => {
            let shown: String = text.chars().take(60).collect();
            format!("the text {}", Value::String(shown))
        }
        Value::Array(_) => "a list".into(),
        Value::Object(_) => "an object".into(),
    }
}

/// What is wrong with a line that is no JSON, with the field at which reading stopped.
fn unreadable(line: &str, error: &serde_json::Error) -> String {
    if line.is_empty() {
        return "the line is empty; it must be an object such as {\"figure\": \"pupil_diameter\", …}"
            .into();
    }
    let read: String = String::from_utf8_lossy(
        &line.as_bytes()[..error.column().saturating_sub(1).min(line.len())],
    )
    .into_owned();
    let field = last_name(&read).map_or(String::new(), |name| format!(" in field `{name}`"));
    format!("the line is not JSON: {error}{field}; numbers are finite and written like 12.5")
}

/// The last `"name":` in a piece of JSON.
fn last_name(read: &str) -> Option<&str> {
    let colon = read
        .rmatch_indices(':')
        .map(|(at, _)| at)
        .find(|&at| read[..at].trim_end().ends_with('"'))?;
    let before = read[..colon].trim_end().strip_suffix('"')?;
    let start = before.rfind('"')? + 1;
    Some(&before[start..])
}
