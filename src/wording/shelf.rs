//! What is wrong with a stock list, in words.

use super::number;
use super::questions::joined;
use crate::shelf::stock::{COLUMNS, LONGEST, MOST_ROWS, RowProblem, RowWrong, StockProblem};
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
                read = read
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
