//! What is wrong with a stock list, in words.

use super::advice::{quantity_value, word};
use super::questions::joined;
use super::{number, with_unit};
use crate::advice::report::{LastLight, Quantity};
use crate::need::answers::Units;
use crate::plain::Gathered;
use crate::plain::Together;
use crate::shelf::stock::{COLUMNS, LONGEST, MOST_ROWS, RowProblem, RowWrong, StockProblem};
use crate::shelf::{Judged, Missed, Stock};
use crate::t;

/// Why a text is no stock list.
#[must_use]
pub fn stock_problem(problem: &StockProblem) -> String {
    match problem {
        StockProblem::Empty => t!("stock-empty"),
        StockProblem::TooLong { bytes } => t!(
            "stock-too-long",
            read = number(*bytes as f64, 0),
            most = number(LONGEST as f64, 0)
        ),
        StockProblem::NoSightColumn { read } => t!(
            "stock-no-sight-column",
            read = joined(read),
            known = joined(&COLUMNS.map(str::to_owned))
        ),
        StockProblem::TwiceNamed { column } => t!("stock-twice-named", column = *column),
        StockProblem::OpenQuote { line } => t!("stock-open-quote", line = *line),
    }
}

/// What is wrong with one row.
#[must_use]
pub fn row_problem(problem: &RowProblem) -> String {
    let line = problem.line;
    match &problem.wrong {
        RowWrong::Sight(why) => t!(
            "stock-row-sight",
            line = line,
            why = super::versus::problem(why).trim_end_matches('.')
        ),
        RowWrong::NoNumber { column, read } => {
            t!(
                "stock-row-no-number",
                line = line,
                column = *column,
                read = read,
                right = match *column {
                    "tube_mm" => "30",
                    "eye_relief_mm" => "90",
                    "mass_g" => "640",
                    _ => "899",
                }
            )
        }
        RowWrong::OutOfRange {
            column,
            value,
            least,
            most,
        } => t!(
            "stock-row-out-of-range",
            line = line,
            column = *column,
            value = *value,
            least = *least,
            most = *most
        ),
        RowWrong::Unread { words } => t!("stock-row-unread", line = line, words = words),
        RowWrong::TooManyCells { cells, columns } => t!(
            "stock-row-too-many",
            line = line,
            cells = *cells,
            columns = *columns
        ),
        RowWrong::BeyondLast => t!(
            "stock-row-beyond",
            line = line,
            most = number(MOST_ROWS as f64, 0)
        ),
    }
}

/// Its name: "3–12 × 50".
#[must_use]
pub fn name(judged: &Judged) -> String {
    super::versus::name(&judged.side)
}

/// What it does, in figures: situations, minutes, mass, price.
#[must_use]
pub fn figures(judged: &Judged, units: Units) -> String {
    let mut told = Vec::new();
    if let Some(served) = judged.side.served {
        told.push(t!("shelf-served", tenths = number(10.0 * served.value, 1)));
    }
    match judged.side.last_light {
        LastLight::At { minutes, .. } => {
            let size = with_unit(minutes.abs(), 0, "min");
            told.push(if minutes < 0.0 {
                t!("shelf-until-before", minutes = size)
            } else {
                t!("shelf-until", minutes = size)
            });
        }
        LastLight::Always => told.push(t!("shelf-always")),
        LastLight::Never => {}
    }
    if let Some(mass_g) = judged.row.sight.mass_g {
        told.push(quantity_value(Quantity::MassG, mass_g, 0.0, units));
    }
    if let Some(price) = judged.row.price {
        let cents = if price.fract() == 0.0 { 0 } else { 2 };
        told.push(t!("shelf-price", price = number(price, cents)));
    }
    told.together(" · ")
}

/// What stands against it, what stops it, and what is to be measured.
#[must_use]
pub fn notes(judged: &Judged, units: Units) -> String {
    let elements = |list: &[Missed], most: usize| {
        let words: Vec<String> = list
            .iter()
            .take(most)
            .map(|missed| word("element", &missed.element))
            .gathered();
        joined(&words)
    };
    let mut told = Vec::new();
    if judged.side.rings_do_not_fit {
        told.push(t!("shelf-rings"));
    }
    if let Some(short) = judged.side.eye_relief_short_mm {
        told.push(t!(
            "shelf-relief",
            short = quantity_value(Quantity::EyeReliefMm, short, 0.0, units)
        ));
    }
    if let Some(cause) = judged.side.lost_most_to {
        told.push(t!("shelf-lost", cause = word("cause", &cause)));
    }
    if !judged.outside.is_empty() {
        told.push(t!("shelf-outside", elements = elements(&judged.outside, 4)));
    }
    if !judged.unknown.is_empty() {
        told.push(t!("shelf-measure", elements = elements(&judged.unknown, 4)));
    }
    told.together(" ")
}

/// The columns that were not read.
#[must_use]
pub fn ignored(stock: &Stock) -> String {
    t!("shelf-ignored", columns = joined(&stock.ignored))
}
