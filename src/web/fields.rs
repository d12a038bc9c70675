//! Typed fields: what each is for, what was typed in it, and what is wrong with that.

use crate::need::answers::{Answers, Manner, Ranges, Units};
use crate::need::input::{InputProblem, Quantity, read};
use crate::need::questions::{Control, Part, Question};
use crate::need::{Reply, Value, apply, doubts, range_rows, value};
use crate::plain::Gathered;
use crate::plain::Map;
use crate::t;
use crate::wording::advice::key_of;
use crate::wording::range;

/// Which of the three ranges.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum End {
    /// Nearest.
    Nearest,
    /// Usual.
    Usual,
    /// Farthest.
    Farthest,
}

/// All three, in the order in which they stand.
pub const ENDS: [End; 3] = [End::Nearest, End::Usual, End::Farthest];

impl End {
    /// Its key.
    #[must_use]
    pub fn key(self) -> &'static str {
        match self {
            Self::Nearest => "nearest",
            Self::Usual => "usual",
            Self::Farthest => "farthest",
        }
    }

    /// Its value.
    #[must_use]
    pub fn of(self, ranges: &Ranges) -> f64 {
        match self {
            Self::Nearest => ranges.nearest_m,
            Self::Usual => ranges.usual_m,
            Self::Farthest => ranges.farthest_m,
        }
    }

    /// The ranges with this one changed.
    #[must_use]
    pub fn put(self, ranges: Ranges, range_m: f64) -> Ranges {
        match self {
            Self::Nearest => Ranges {
                nearest_m: range_m,
                ..ranges
            },
            Self::Usual => Ranges {
                usual_m: range_m,
                ..ranges
            },
            Self::Farthest => Ranges {
                farthest_m: range_m,
                ..ranges
            },
        }
    }
}

/// A typed field.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Field {
    /// A number or words of a part.
    Part(Part),
    /// One of the ranges of a manner.
    Range(Manner, End),
}

impl Field {
    /// Its id on the page, and its key among the texts.
    #[must_use]
    pub fn id(self) -> String {
        match self {
            Self::Part(part) => format!("field-{}", part.key()),
            Self::Range(manner, end) => format!("field-{}-{}", key_of(&manner), end.key()),
        }
    }

    /// What a number in it stands for; none for words.
    #[must_use]
    pub fn quantity(self) -> Option<Quantity> {
        match self {
            Self::Range(..) => Some(Quantity::Range),
            Self::Part(part) => match part.control() {
                Control::Number(quantity, _) => Some(quantity),
                Control::Decade(_) => Some(Quantity::Age),
                _ => None,
            },
        }
    }
}

/// The ranges of a manner as they were said, contradictions included, or else what is usual.
#[must_use]
pub fn ranges_of(answers: &Answers, manner: Manner) -> Option<Ranges> {
    let said = match value(answers, Part::Ranges) {
        Value::Ranges(rows) => rows,
        _ => Vec::new(),
    };
    let of = |wanted: Option<Manner>| {
        said.iter()
            .find(|(manner, _)| *manner == wanted)
            .map(|(_, ranges)| *ranges)
    };
    of(Some(manner)).or_else(|| of(None)).or_else(|| {
        range_rows(answers)
            .into_iter()
            .find(|row| row.manner == manner)
            .map(|row| row.ranges)
    })
}

/// The answers after a text was typed. What cannot be read leaves its part unanswered; the
/// text itself is kept by the caller.
#[must_use]
pub fn typed(answers: &Answers, field: Field, text: &str) -> Answers {
    let Some(quantity) = field.quantity() else {
        let Field::Part(part) = field else {
            return answers.clone();
        };
        let new = if text.trim().is_empty() {
            Value::Nothing
        } else {
            Value::Text(text.to_owned())
        };
        return apply(answers, &Reply::Set(part, new));
    };
    let number = read(quantity, answers.units, text)
        .ok()
        .map(|read| read.metric);
    match (field, number) {
        (Field::Part(part), Some(metric)) => {
            apply(answers, &Reply::Set(part, Value::Number(metric)))
        }
        (Field::Part(part), None) => match value(answers, part) {
            Value::Nothing => answers.clone(),
            _ => apply(answers, &Reply::Set(part, Value::Nothing)),
        },
        (Field::Range(manner, end), Some(range_m)) => match ranges_of(answers, manner) {
            Some(ranges) => apply(answers, &Reply::RangesOf(manner, end.put(ranges, range_m))),
            None => answers.clone(),
        },
        // The range that held before holds on until a number stands there.
        (Field::Range(..), None) => answers.clone(),
    }
}

/// All typed fields of a question that are shown for these answers.
#[must_use]
pub fn fields_of(question: &Question, answers: &Answers) -> Vec<Field> {
    let mut fields = Vec::new();
    for part in question.all_parts() {
        match part.control() {
            Control::Number(..) | Control::Decade(_) => fields.push(Field::Part(part)),
            Control::Ranges => {
                for row in range_rows(answers) {
                    fields.extend(ENDS.map(|end| Field::Range(row.manner, end)));
                }
            }
            _ => {}
        }
    }
    fields
}

/// What is wrong with a field: what was read, why it cannot be, what would be right.
#[must_use]
pub fn problem(field: Field, answers: &Answers, texts: &Map<String, String>) -> Option<String> {
    let quantity = field.quantity()?;
    if let Some(text) = texts.get(&field.id()) {
        match read(quantity, answers.units, text) {
            Ok(_) => {}
            Err(InputProblem::Empty) if matches!(field, Field::Part(_)) => {}
            Err(problem) => {
                return Some(crate::wording::problems::input(
                    answers.units,
                    quantity,
                    &problem,
                ));
            }
        }
    }
    match field {
        Field::Range(manner, end) => order_problem(answers, manner, end),
        Field::Part(_) => None,
    }
}

/// A question about a figure that was read, and the answers that can be tapped: what the
/// button says, and what it does.
#[must_use]
pub fn asked(
    field: Field,
    answers: &Answers,
    texts: &Map<String, String>,
) -> (Option<String>, Vec<(String, Reply)>) {
    let Some(quantity) = field.quantity() else {
        return (None, Vec::new());
    };
    let reply = |metric: f64| match field {
        Field::Part(part) => Some(Reply::Set(part, Value::Number(metric))),
        Field::Range(manner, end) => range_rows(answers)
            .into_iter()
            .find(|row| row.manner == manner)
            .map(|row| Reply::RangesOf(manner, end.put(row.ranges, metric))),
    };
    let buttons = |choices: Vec<(String, f64)>| {
        choices
            .into_iter()
            .filter_map(|(words, metric)| Some((words, reply(metric)?)))
            .gathered()
    };
    let read_as = texts
        .get(&field.id())
        .map(|text| read(quantity, answers.units, text));
    if let Some(Err(problem)) = read_as {
        let choices = crate::wording::problems::input_choices(quantity, &problem);
        return (None, buttons(choices));
    }
    let doubt = doubts(answers)
        .into_iter()
        .find(|doubt| field == Field::Part(doubt.part));
    match doubt {
        Some(doubt) => (
            Some(crate::wording::problems::doubt(&doubt)),
            buttons(
                crate::wording::problems::doubt_choice(answers.units, &doubt)
                    .into_iter()
                    .gathered(),
            ),
        ),
        None => (None, Vec::new()),
    }
}

/// Ranges that contradict one another.
fn order_problem(answers: &Answers, manner: Manner, end: End) -> Option<String> {
    let said = |range_m| range(answers.units, range_m);
    let Ranges {
        nearest_m,
        usual_m,
        farthest_m,
    } = ranges_of(answers, manner)?;
    match end {
        End::Farthest if farthest_m < nearest_m => Some(t!(
            "ranges-farthest-before-nearest",
            farthest = said(farthest_m),
            nearest = said(nearest_m)
        )),
        End::Usual if farthest_m >= nearest_m && usual_m > farthest_m => Some(t!(
            "ranges-usual-beyond",
            usual = said(usual_m),
            farthest = said(farthest_m)
        )),
        End::Usual if farthest_m >= nearest_m && usual_m < nearest_m => Some(t!(
            "ranges-usual-before",
            usual = said(usual_m),
            nearest = said(nearest_m)
        )),
        _ => None,
    }
}

/// What stands in a field: the text as typed, or else the value it holds.
#[must_use]
pub fn text_in(field: Field, answers: &Answers, texts: &Map<String, String>) -> String {
    if let Some(text) = texts.get(&field.id()) {
        return text.clone();
    }
    match field {
        Field::Range(manner, end) => ranges_of(answers, manner)
            .map_or_else(String::new, |ranges| {
                Quantity::Range.typed(answers.units, end.of(&ranges))
            }),
        Field::Part(part) => match (value(answers, part), field.quantity()) {
            (Value::Number(metric), Some(quantity)) => quantity.typed(answers.units, metric),
            (Value::Text(text), _) => text,
            _ => String::new(),
        },
    }
}

/// A step up or down that suits the range.
#[must_use]
pub fn range_step(units: Units, range_m: f64, up: bool) -> f64 {
    let quantity = Quantity::Range;
    let shown = quantity.shown(units, range_m);
    let step = match shown {
        value if value < 30.0 || (value <= 30.0 && !up) => 5.0,
        value if value < 150.0 || (value <= 150.0 && !up) => 10.0,
        value if value < 400.0 || (value <= 400.0 && !up) => 25.0,
        _ => 50.0,
    };
    let next = if up {
        (shown / step + 0.01).floor() * step + step
    } else {
        (shown / step - 0.01).ceil() * step - step
    };
    let (least, most) = quantity.limits();
    quantity.metric(units, next.max(5.0)).clamp(least, most)
}
