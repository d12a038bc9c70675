//! Two sights beside each other, in words.

use super::advice::{capitalised, joined, quantity_value, word};
use super::{decimals_for, number, range, with_unit};
use crate::advice::report::Quantity;
use crate::advice::report_versus::{Contrast, Side, Versus};
use crate::advice::versus::element;
use crate::need::answers::Units;
use crate::plain::Gathered;
use crate::plain::Together;
use crate::sight::typed_line::LineProblem;
use crate::t;

/// A number without needless digits.
fn plain(value: f64) -> String {
    let decimals = (0..2)
        .find(|digits| {
            let scale = [1.0, 10.0][*digits];
            ((value * scale).round() / scale - value).abs() < 1e-9
        })
        .unwrap_or(2);
    number(value, decimals)
}

fn powers(low: f64, high: f64, objective_mm: f64) -> String {
    const THIN: char = '\u{202F}';
    if (high - low).abs() < 1e-9 {
        format!("{}{THIN}×{THIN}{}", plain(low), plain(objective_mm))
    } else {
        format!(
            "{}–{}{THIN}×{THIN}{}",
            plain(low),
            plain(high),
            plain(objective_mm)
        )
    }
}

/// Its name: "3–12 × 50".
#[must_use]
pub fn name(side: &Side) -> String {
    powers(side.mag_low, side.mag_high, side.objective_mm)
}

/// What is wrong with a typed line: what was read, why it cannot be, what would be right.
#[must_use]
pub fn problem(problem: &LineProblem) -> String {
    match problem {
        LineProblem::Empty => t!("line-empty"),
        LineProblem::NoSight { typed } => t!("line-no-sight", typed = typed),
        LineProblem::TwoSights { first, second } => t!(
            "line-two",
            one = powers(first.0, first.1, first.2),
            other = powers(second.0, second.1, second.2)
        ),
        LineProblem::Power {
            magnification,
            least,
            most,
        } => t!(
            "line-power",
            value = plain(*magnification),
            least = plain(*least),
            most = plain(*most)
        ),
        LineProblem::Objective {
            objective_mm,
            least_mm,
            most_mm,
        } => t!(
            "line-objective",
            value = plain(*objective_mm),
            least = plain(*least_mm),
            most = plain(*most_mm)
        ),
        LineProblem::Reversed { first, second } => t!(
            "line-reversed",
            first = plain(*first),
            second = plain(*second)
        ),
        LineProblem::Swapped { before, behind } => t!(
            "line-swapped",
            before = plain(*before),
            behind = plain(*behind)
        ),
        LineProblem::Contradiction { of, word: at } => t!(
            "line-contradiction",
            element = capitalised(&word("element", &element(*of))),
            word = at
        ),
    }
}

/// One row: what is compared, both values, and what the difference comes to.
#[derive(Clone, Debug, PartialEq)]
pub struct Row {
    /// What is compared.
    pub what: String,
    /// The first one's value.
    pub one: String,
    /// The second one's value.
    pub other: String,
    /// What it comes to.
    pub verdict: String,
    /// The difference is larger than its doubt.
    pub decided: bool,
    /// The first is the better one in this row, where it is decided.
    pub one_is_better: Option<bool>,
}

/// The rows of the table.
#[must_use]
pub fn rows(beside: &Versus, units: Units) -> Vec<Row> {
    beside
        .differences
        .iter()
        .map(|difference| row(beside, difference, units))
        .gathered()
}

fn row(beside: &Versus, difference: &Contrast, units: Units) -> Row {
    let what = match difference.quantity {
        Quantity::ServedPoints => t!("versus-served"),
        Quantity::MinutesTonight => t!("versus-minutes"),
        Quantity::FieldAtNearestM => t!("versus-field", range = range(units, beside.nearest_m)),
        Quantity::DetailAtFarthestMm => {
            t!("versus-detail", range = range(units, beside.farthest_m))
        }
        Quantity::MassG => t!("versus-mass"),
        Quantity::CentreHeightMm => t!("versus-height"),
        _ => t!("versus-price"),
    };
    // More minutes and more field are welcome; less of everything else is.
    let more_is_welcome = matches!(
        difference.quantity,
        Quantity::ServedPoints | Quantity::MinutesTonight | Quantity::FieldAtNearestM
    );
    let other_is_better = (difference.difference.value > 0.0) == more_is_welcome;
    let which = name(if other_is_better {
        &beside.other
    } else {
        &beside.one
    });
    let size = difference.difference.value.abs();
    let spread = difference.difference.spread;
    let amount = amount(difference.quantity, size, spread, units);
    let verdict = if difference.decided {
        match difference.quantity {
            Quantity::ServedPoints => t!("versus-served-more", which = which, amount = amount),
            Quantity::MinutesTonight => t!("versus-minutes-by", which = which, amount = amount),
            Quantity::FieldAtNearestM => t!("versus-field-by", which = which, amount = amount),
            Quantity::DetailAtFarthestMm => {
                t!("versus-detail-by", which = which, amount = amount)
            }
            Quantity::MassG => t!("versus-mass-by", which = which, amount = amount),
            Quantity::CentreHeightMm => t!("versus-height-by", which = which, amount = amount),
            _ => t!("versus-price-by", which = which, amount = amount),
        }
    } else if size < 1e-6 && spread < 1e-6 {
        t!("versus-equal")
    } else {
        let close = t!(
            "versus-undecided",
            amount = value(difference.quantity, size, units),
            spread = value(difference.quantity, spread, units)
        );
        match difference.settle {
            Some(element) => [
                close,
                t!("versus-settle", element = word("element", &element)),
            ]
            .together(" "),
            None => close,
        }
    };
    Row {
        what,
        one: own(difference.quantity, difference.one, units),
        other: own(difference.quantity, difference.other, units),
        verdict,
        decided: difference.decided,
        one_is_better: difference.decided.then_some(!other_is_better),
    }
}

fn value(quantity: Quantity, value: f64, units: Units) -> String {
    match quantity {
        Quantity::MinutesTonight => with_unit(value, usize::from(value.abs() < 9.95), "min"),
        Quantity::ServedPoints => t!("versus-of-hundred", count = number(value, 0)),
        Quantity::PriceBands => t!("versus-bands", bands = number(value, 1)),
        _ => quantity_value(quantity, value, 0.0, units),
    }
}

/// The value of one sight: a price by its band's range.
fn own(quantity: Quantity, of: f64, units: Units) -> String {
    use crate::need::answers::PriceBand as B;
    if quantity == Quantity::ServedPoints {
        return t!("versus-of-ten", count = number(0.1 * of, 1));
    }
    if quantity != Quantity::PriceBands {
        return value(quantity, of, units);
    }
    let band = [B::A, B::B, B::C, B::D, B::E][of.round().clamp(0.0, 4.0) as usize];
    super::price(band)
}

fn amount(quantity: Quantity, size: f64, spread: f64, units: Units) -> String {
    if quantity == Quantity::MinutesTonight && spread > 0.0 {
        let decimals = decimals_for(spread).min(1);
        return t!(
            "versus-about",
            value = with_unit(size, decimals, "min"),
            spread = number(spread, decimals)
        );
    }
    value(quantity, size, units)
}

/// What is to be known of one sight: what was not stated, not understood, or does not fit.
#[must_use]
pub fn notes(side: &Side, units: Units) -> Vec<String> {
    let sight = name(side);
    let mut notes = Vec::new();
    let open: Vec<String> = side
        .unknown
        .iter()
        .map(|element| word("element", element))
        .gathered();
    notes.push(if open.is_empty() {
        t!("versus-all-stated", sight = sight.clone())
    } else {
        t!(
            "versus-open-of",
            sight = sight.clone(),
            elements = joined(&open)
        )
    });
    if let Some(cause) = side.lost_most_to {
        notes.push(t!(
            "versus-lost-to",
            sight = sight.clone(),
            cause = word("cause", &cause)
        ));
    }
    if let Some(short) = side.eye_relief_short_mm {
        notes.push(t!(
            "versus-relief-short",
            sight = sight.clone(),
            short = quantity_value(Quantity::EyeReliefMm, short, 0.0, units)
        ));
    }
    if side.rings_do_not_fit {
        notes.push(t!("versus-rings", sight = sight.clone()));
    }
    if !side.unread.is_empty() {
        notes.push(t!(
            "versus-unread",
            sight = sight,
            words = joined(&side.unread)
        ));
    }
    notes
}

/// What measured or asked for would settle most.
#[must_use]
pub fn measure(beside: &Versus) -> Vec<String> {
    beside
        .settle
        .iter()
        .map(|element| word("element", element))
        .gathered()
}

#[cfg(test)]
mod tests {
    use super::{measure, name, notes, problem, rows};
    use crate::advice::versus::{Sight, versus};
    use crate::need::answers::{Answers, Units};
    use crate::need::resolve;
    use crate::sight::typed_line::TypedSight;

    #[test]
    fn two_sights_are_told_in_words() {
        let typed = |line: &str| TypedSight::parse(line).map(Sight::Typed);
        let (Ok(one), Ok(other)) = (typed("8x56"), typed("1-6x24 blah 95 mm eye relief")) else {
            panic!("both are sights");
        };
        let beside = versus(&resolve(&Answers::default()), &one, &other);
        assert_eq!(name(&beside.one), "8\u{202F}×\u{202F}56");
        let rows = rows(&beside, Units::Metric);
        assert_eq!(rows.len(), 7);
        assert!(rows[1].verdict.starts_with("8\u{202F}×\u{202F}56 lasts"));
        assert_eq!(rows[1].one_is_better, Some(true));
        assert_eq!(rows[2].one_is_better, Some(false));
        assert!(rows.iter().all(|row| row.verdict.ends_with('.')));
        assert!(notes(&beside.other, Units::Metric).len() >= 2);
        assert!(!measure(&beside).is_empty());
        for line in [
            "",
            "red",
            "8x56 6x42",
            "0.1x20",
            "8x900",
            "9-3x50",
            "56x8",
            "8x56 ffp sfp",
        ] {
            let why = TypedSight::parse(line).map_err(|why| problem(&why));
            assert!(why.is_err_and(|said| said.ends_with('.')), "{line}");
        }
    }
}
