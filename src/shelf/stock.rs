//! Reading and checking a stock list.

use super::table::{Record, records};
use crate::plain::{Together, decimal, small_text};
use crate::sight::typed_line::{LineProblem, TypedSight};

/// Longest list that is read, in bytes.
pub const LONGEST: usize = 2_000_000;

/// Most rows that are read.
pub const MOST_ROWS: usize = 5000;

/// The columns that are known, as they are named in the heading.
pub const COLUMNS: [&str; 12] = [
    "sight",
    "label",
    "price",
    "tube_mm",
    "plane",
    "reticle",
    "light",
    "parallax",
    "turret",
    "glass",
    "eye_relief_mm",
    "mass_g",
];

/// A stock list that was read.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Stock {
    /// The rows that can be matched, in the order of the list.
    pub rows: Vec<Row>,
    /// What is wrong with others, or with a cell; that is left out, the rest goes on.
    pub problems: Vec<RowProblem>,
    /// Columns whose heading is not known; they are not read.
    pub ignored: Vec<String>,
}

/// One sight of the list.
#[derive(Clone, Debug, PartialEq)]
pub struct Row {
    /// The line of the text, from 1.
    pub line: usize,
    /// The shop's own label, as a number on the shelf.
    pub label: Option<String>,
    /// What was stated of the sight.
    pub sight: TypedSight,
    /// Price in the shop's own money.
    pub price: Option<f64>,
}

/// Why a text is no stock list.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum StockProblem {
    /// Nothing is in it.
    Empty,
    /// It is too long.
    TooLong {
        /// Its length in bytes.
        bytes: usize,
    },
    /// No column is named `sight`.
    NoSightColumn {
        /// The headings that were read.
        read: Vec<String>,
    },
    /// One heading stands twice.
    TwiceNamed {
        /// The heading.
        column: &'static str,
    },
    /// A quote is never closed.
    OpenQuote {
        /// The line on which it was opened.
        line: usize,
    },
}

/// What is wrong with one row, or with a cell of it.
#[derive(Clone, Debug, PartialEq)]
pub struct RowProblem {
    /// The line of the text, from 1.
    pub line: usize,
    /// What is wrong.
    pub wrong: RowWrong,
}

/// What is wrong with one row.
#[derive(Clone, Debug, PartialEq)]
pub enum RowWrong {
    /// The sight cannot be read.
    Sight(LineProblem),
    /// A cell that should hold a number; it is left out, the row stays.
    NoNumber {
        /// Its column.
        column: &'static str,
        /// What was read.
        read: String,
    },
    /// A number that no sight has; it is left out, the row stays.
    OutOfRange {
        /// Its column.
        column: &'static str,
        /// What was read.
        value: f64,
        /// The least that makes sense.
        least: f64,
        /// The most.
        most: f64,
    },
    /// A cell whose words mean nothing here.
    Unread {
        /// The words.
        words: String,
    },
    /// More cells than the heading has.
    TooManyCells {
        /// How many there are.
        cells: usize,
        /// How many headings there are.
        columns: usize,
    },
    /// Beyond the last row that is read.
    BeyondLast,
}

/// Reads a stock list. A row or a cell that cannot be read is a problem with its line; all else
/// stays.
///
/// # Errors
/// [`StockProblem`] where there is no list at all.
///
/// # Example
/// ```
/// let list = "label;sight;mass_g\nA1;2,5-10x50, 30 mm;540\nA2;10x-3x;\nA3;8x56;heavy\n";
/// let stock = scopewright::shelf::read(list).unwrap();
/// assert_eq!(stock.rows[0].sight.mass_g, Some(540.0));
/// assert_eq!((stock.problems[0].line, stock.problems[1].line), (3, 4));
/// // What is no number is left out: that sight is to be weighed.
/// assert_eq!((stock.rows[1].line, stock.rows[1].sight.mass_g), (4, None));
/// ```
pub fn read(text: &str) -> Result<Stock, StockProblem> {
    if text.len() > LONGEST {
        return Err(StockProblem::TooLong { bytes: text.len() });
    }
    let mut lines = records(text)
        .map_err(|line| StockProblem::OpenQuote { line })?
        .into_iter();
    let heading = lines.next().ok_or(StockProblem::Empty)?;
    let mut stock = Stock::default();
    let columns = columns(&heading, &mut stock.ignored)?;
    for (at, record) in lines.enumerate() {
        if at >= MOST_ROWS {
            stock.problems.push(RowProblem {
                line: record.line,
                wrong: RowWrong::BeyondLast,
            });
            break;
        }
        let line = record.line;
        match row(record, &columns, &mut stock.problems) {
            Ok(row) => {
                if !row.sight.unread.is_empty() {
                    stock.problems.push(RowProblem {
                        line,
                        wrong: RowWrong::Unread {
                            words: row.sight.unread.together(" "),
                        },
                    });
                }
                stock.rows.push(row);
            }
            Err(wrong) => stock.problems.push(RowProblem { line, wrong }),
        }
    }
    Ok(stock)
}

/// Which column each cell belongs to.
fn columns(
    heading: &Record,
    ignored: &mut Vec<String>,
) -> Result<Vec<Option<&'static str>>, StockProblem> {
    let mut columns = Vec::new();
    for name in &heading.cells {
        let plain = small_text(name).replace([' ', '-'], "_");
        let known = COLUMNS.iter().find(|known| **known == plain).copied();
        if let Some(column) = known.filter(|known| columns.contains(&Some(*known))) {
            return Err(StockProblem::TwiceNamed { column });
        }
        if known.is_none() && !name.is_empty() {
            ignored.push(name.chars().take(40).collect());
        }
        columns.push(known);
    }
    if columns.contains(&Some("sight")) {
        Ok(columns)
    } else {
        Err(StockProblem::NoSightColumn {
            read: heading
                .cells
                .iter()
                .take(20)
                .map(|cell| cell.chars().take(40).collect())
                .collect(),
        })
    }
}

fn row(
    record: Record,
    columns: &[Option<&'static str>],
    problems: &mut Vec<RowProblem>,
) -> Result<Row, RowWrong> {
    // Spreadsheets fill rows up with empty cells.
    let beyond = record.cells.iter().skip(columns.len());
    if beyond.clone().any(|cell| !cell.is_empty()) {
        return Err(RowWrong::TooManyCells {
            cells: record.cells.len(),
            columns: columns.len(),
        });
    }
    let cell = |wanted: &str| -> &str {
        columns
            .iter()
            .position(|column| *column == Some(wanted))
            .and_then(|at| record.cells.get(at))
            .map_or("", String::as_str)
    };
    let line = record.line;
    // The columns join the line in the words in which it could have been typed.
    let mut typed = cell("sight").to_owned();
    for (column, before, after) in [
        ("plane", "", " plane"),
        ("reticle", "", ""),
        ("light", "", ""),
        ("parallax", "parallax ", ""),
        ("turret", "", ""),
        ("glass", "", " glass"),
    ] {
        let words = cell(column);
        if !words.is_empty() {
            let after = if small_text(words).ends_with(after.trim()) {
                ""
            } else {
                after
            };
            // A bare number is a distance in metres.
            let metres = column == "parallax" && words.bytes().all(|byte| byte.is_ascii_digit());
            typed.push_str(", ");
            typed.push_str(before);
            typed.push_str(words);
            typed.push_str(if metres { " m" } else { after });
        }
    }
    let mut sight = TypedSight::parse(&typed).map_err(RowWrong::Sight)?;
    let mut number = |column: &'static str, least: f64, most: f64| {
        number(column, cell(column), least, most).unwrap_or_else(|wrong| {
            problems.push(RowProblem { line, wrong });
            None
        })
    };
    let tube_mm = number("tube_mm", 20.0, 45.0);
    let eye_relief_mm = number("eye_relief_mm", 30.0, 700.0);
    let mass_g = number("mass_g", 100.0, 3000.0);
    let price = number("price", 0.0, 1e7);
    sight.tube_mm = tube_mm.or(sight.tube_mm);
    sight.eye_relief_mm = eye_relief_mm.or(sight.eye_relief_mm);
    sight.mass_g = mass_g.or(sight.mass_g);
    Ok(Row {
        line,
        label: Some(cell("label").chars().take(60).collect::<String>())
            .filter(|label| !label.is_empty()),
        sight,
        price,
    })
}

/// A number with either decimal sign; what stands before and behind it, a unit, a currency or
/// the dash in place of cents, does not matter.
fn number(
    column: &'static str,
    cell: &str,
    least: f64,
    most: f64,
) -> Result<Option<f64>, RowWrong> {
    if cell.is_empty() {
        return Ok(None);
    }
    let digits = |at: &usize| cell.as_bytes()[*at].is_ascii_digit();
    let text: String = match (0..cell.len()).find(digits) {
        Some(first) => {
            let last = (first..cell.len()).rfind(digits).unwrap_or(first);
            let sign = usize::from(cell[..first].ends_with('-'));
            cell[first - sign..=last]
                .chars()
                .filter(|c| !c.is_whitespace() && !matches!(c, '\'' | '’'))
                .collect()
        }
        None => String::new(),
    };
    let plain = match (text.rfind(','), text.rfind('.')) {
        // 1.299,00 and 1,299.00.
        (Some(comma), Some(stop)) if comma > stop => text.replace('.', "").replace(',', "."),
        (Some(_), Some(_)) => text.replace(',', ""),
        // 1,299 is a price of thousands, 25,4 a tube.
        (Some(comma), None) if text.len() - comma == 4 && most > 1000.0 => text.replace(',', ""),
        (None, Some(stop)) if text.len() - stop == 4 && most > 1000.0 => text.replace('.', ""),
        _ => text.replace(',', "."),
    };
    let value = decimal(&plain)
        .filter(|value| value.is_finite())
        .ok_or_else(|| RowWrong::NoNumber {
            column,
            read: cell.chars().take(40).collect(),
        })?;
    if value < least || value > most {
        return Err(RowWrong::OutOfRange {
            column,
            value,
            least,
            most,
        });
    }
    Ok(Some(value))
}
