//! What is wrong, in words: what was read, why it cannot be, what would be right.

use super::number;
use super::questions::{joined, quantity};
use crate::flight::suspicion::Suspicion;
use crate::need::answers::{Units, VERSION};
use crate::need::input::{InputProblem, Quantity, Unit};
use crate::need::link::LinkProblem;
use crate::need::questions::Control;
use crate::need::{Doubt, ParseProblem, Problem, Wrong};
use crate::plain::Gathered;
use crate::t;

fn with(value: f64, unit: Unit) -> String {
    // Up to three digits after the decimal sign, none needless.
    let rounded = (value * 1000.0).round() / 1000.0;
    let decimals = (0..3)
        .find(|digits| {
            let scale = [1.0, 10.0, 100.0][*digits];
            ((rounded * scale).round() / scale - rounded).abs() < 1e-9
        })
        .unwrap_or(3);
    let shown = number(value, decimals);
    match unit.symbol() {
        "" => shown,
        "°" => format!("{shown}°"),
        symbol => format!("{shown}\u{202F}{symbol}"),
    }
}

fn rounded(value: f64, unit: Unit) -> String {
    let decimals = if value.abs() >= 100.0 {
        0
    } else if value.abs() >= 10.0 {
        1
    } else {
        2
    };
    with(number_of(value, decimals), unit)
}

fn number_of(value: f64, decimals: usize) -> f64 {
    let scale = [1.0, 10.0, 100.0][decimals.min(2)];
    (value * scale).round() / scale
}

/// The name of a unit in a sentence, also of those without a symbol.
fn unit_name(unit: Unit) -> String {
    match unit {
        Unit::Years => t!("unit-years"),
        Unit::One => t!("unit-none"),
        other => other.symbol().to_owned(),
    }
}

/// A typed number that cannot be.
#[must_use]
pub fn input(units: Units, of: Quantity, problem: &InputProblem) -> String {
    match problem {
        InputProblem::Empty => t!("input-empty"),
        InputProblem::NoNumber { typed } => {
            let (least, most) = of.limits();
            let example = (least * 0.3 + most * 0.2).round().clamp(least, most);
            t!(
                "input-no-number",
                typed = typed,
                example = quantity(units, of, example)
            )
        }
        InputProblem::UnknownUnit { typed, unit } => t!(
            "input-unknown-unit",
            typed = typed,
            unit = unit,
            wanted = unit_name(of.unit(units))
        ),
        InputProblem::OtherUnit { unit, wanted } => t!(
            "input-other-unit",
            unit = unit_name(*unit),
            wanted = unit_name(*wanted)
        ),
        InputProblem::Ambiguous {
            thousands,
            decimal,
            unit,
        } => t!(
            "input-ambiguous",
            thousands = with(*thousands, *unit),
            decimal = with(*decimal, *unit)
        ),
        InputProblem::OtherUnitMeant {
            value,
            unit,
            meant,
            metric,
            metric_unit,
        } => t!(
            "input-other-meant",
            value = with(*value, *unit),
            meant = with(*value, *meant),
            metric = rounded(*metric, *metric_unit)
        ),
        InputProblem::OutOfRange {
            value,
            unit,
            least,
            most,
        } => {
            let (value, least, most) = (
                with(*value, *unit),
                rounded(*least, *unit),
                rounded(*most, *unit),
            );
            if of == Quantity::Age {
                t!("input-age", value = value, least = least, most = most)
            } else {
                t!(
                    "input-out-of-range",
                    value = value,
                    least = least,
                    most = most
                )
            }
        }
    }
}

/// What a person can tap to answer a question about a typed number: the words on the button
/// and the metric value.
#[must_use]
pub fn input_choices(of: Quantity, problem: &InputProblem) -> Vec<(String, f64)> {
    let choice = |shown: String, metric: f64| (t!("input-take", value = shown), metric);
    match problem {
        InputProblem::Ambiguous {
            thousands,
            decimal,
            unit,
        } => vec![
            choice(with(*thousands, *unit), of.in_metric(*unit, *thousands)),
            choice(with(*decimal, *unit), of.in_metric(*unit, *decimal)),
        ],
        InputProblem::OtherUnitMeant {
            value,
            meant,
            metric,
            ..
        } => vec![choice(with(*value, *meant), *metric)],
        _ => Vec::new(),
    }
}

/// A figure that looks as if it was meant in another unit.
#[must_use]
pub fn doubt(doubt: &Doubt) -> String {
    let unit = |read: f64, unit: Unit, meant: f64, metric: Unit, as_typed: Unit| {
        t!(
            "doubt-unit",
            value = rounded(read, as_typed),
            meant = rounded(read, unit),
            metric = rounded(meant, metric)
        )
    };
    match doubt.suspicion {
        Suspicion::FeetPerSecond {
            read_m_s,
            meant_m_s,
        } => unit(read_m_s, Unit::FtPerS, meant_m_s, Unit::MPerS, Unit::MPerS),
        Suspicion::MetresPerSecondAsFeet { meant_m_s, .. } => {
            unit(meant_m_s, Unit::MPerS, meant_m_s, Unit::MPerS, Unit::FtPerS)
        }
        Suspicion::BulletGrains { read_g, meant_g }
        | Suspicion::PowderGrains { read_g, meant_g } => {
            unit(read_g, Unit::Grain, meant_g, Unit::G, Unit::G)
        }
        Suspicion::BulletGrams { meant_g, .. } => {
            unit(meant_g, Unit::G, meant_g, Unit::G, Unit::Grain)
        }
        Suspicion::RiflePounds { read_kg, meant_kg } => {
            unit(read_kg, Unit::Pound, meant_kg, Unit::Kg, Unit::Kg)
        }
        Suspicion::MetricCoefficient {
            read_lb_in2,
            meant_lb_in2,
        } => t!(
            "doubt-coefficient",
            value = bare(read_lb_in2),
            meant = bare(meant_lb_in2)
        ),
        Suspicion::G1GivenAsG7 { form_factor } => {
            t!("doubt-g1-as-g7", factor = number(form_factor, 2))
        }
        Suspicion::G7ForSlowBullet { .. } => t!("doubt-g7-slow"),
    }
}

/// The words on the button that takes the other unit.
#[must_use]
pub fn doubt_choice(units: Units, doubt: &Doubt) -> Option<(String, f64)> {
    let Control::Number(of, _) = doubt.part.control() else {
        return None;
    };
    let metric = doubt.meant?;
    Some((
        t!("input-take", value = quantity(units, of, metric)),
        metric,
    ))
}

/// A number with up to three digits after the decimal sign.
fn bare(value: f64) -> String {
    with(value, Unit::One)
}

/// Something wrong with a set of answers, naming the field by its path.
#[must_use]
pub fn problem(problem: &Problem) -> String {
    let field = problem.field.as_str();
    match &problem.wrong {
        Wrong::Version { read } if *read > VERSION => {
            t!("parse-later", read = *read, known = VERSION)
        }
        Wrong::Version { .. } => t!("parse-no-version"),
        Wrong::OutOfRange { value, least, most } => t!(
            "problem-out-of-range",
            field = field,
            value = bare(*value),
            least = bare(*least),
            most = bare(*most)
        ),
        Wrong::NotFinite => t!("problem-not-finite", field = field),
        Wrong::NegativeShare { value } => {
            t!(
                "problem-negative-share",
                field = field,
                value = bare(*value)
            )
        }
        Wrong::AllZero => t!("problem-all-zero", field = field),
        Wrong::UnknownKey { read, nearest } => t!(
            "problem-unknown-key",
            field = field,
            read = read,
            nearest = nearest.unwrap_or("none")
        ),
        Wrong::FarthestNearer {
            nearest_m,
            farthest_m,
        } => t!(
            "problem-farthest-nearer",
            field = field,
            nearest = with(*nearest_m, Unit::M),
            farthest = with(*farthest_m, Unit::M)
        ),
        Wrong::UsualOutside {
            nearest_m,
            usual_m,
            farthest_m,
        } => t!(
            "problem-usual-outside",
            field = field,
            nearest = with(*nearest_m, Unit::M),
            usual = with(*usual_m, Unit::M),
            farthest = with(*farthest_m, Unit::M)
        ),
        Wrong::NotOffered { value, offered } => {
            let offered: Vec<String> = offered.iter().map(|each| bare(*each)).gathered();
            t!(
                "problem-not-offered",
                field = field,
                value = bare(*value),
                offered = joined(&offered)
            )
        }
        Wrong::Contradicts { other } => {
            t!("problem-contradiction", field = field, other = *other)
        }
        Wrong::TooLong { length, most } => t!(
            "problem-too-long",
            field = field,
            length = *length,
            most = *most
        ),
    }
}

/// Why a text is no set of answers.
#[must_use]
pub fn parse(problem: &ParseProblem) -> String {
    match problem {
        ParseProblem::NotJson { line, column } => {
            t!("parse-not-json", line = *line, column = *column)
        }
        ParseProblem::NotAnObject => t!("parse-not-answers"),
        ParseProblem::NoVersion => t!("parse-no-version"),
        ParseProblem::Later { read } => {
            t!("parse-later", read = *read as f64, known = VERSION)
        }
        ParseProblem::Unreadable { field, why } => {
            t!("parse-unreadable", field = field, why = why)
        }
        ParseProblem::TooLong { length } => t!("parse-too-long", length = *length),
    }
}

/// Why a link holds no answers.
#[must_use]
pub fn link(problem: &LinkProblem) -> String {
    match problem {
        LinkProblem::Empty => t!("share-empty"),
        LinkProblem::Foreign => t!("share-foreign"),
        LinkProblem::Later => t!("share-later-version"),
        LinkProblem::Truncated => t!("share-truncated"),
        LinkProblem::Altered => t!("share-altered"),
        LinkProblem::Unreadable(why) => parse(why),
    }
}
