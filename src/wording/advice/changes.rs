//! What the last answer changed, and what a new sight changes against the one owned.

use super::effects::{change, gains_and_losses, quantity_name, quantity_value};
use super::line::{elements, glass, line_text};
use super::{joined, word};
use crate::advice::costs::{ANNOYANCE_POINTS, USUAL_SIGHT};
use crate::advice::difference::{Difference, difference};
use crate::advice::report::{Advice, Annoyance, Annoyed, Judged, Shift};
use crate::need::answers::{Answers, Units};
use crate::need::questions::answered_otherwise;
use crate::plain::Gathered;
use crate::plain::Together;
use crate::t;
use crate::wording::measure::{field, range};
use crate::wording::number;
use crate::wording::questions::question_short;

fn tenths(share: f64) -> String {
    number((share * 10.0).round().clamp(0.0, 10.0), 0)
}

fn way(is_more: bool) -> &'static str {
    if is_more { "more" } else { "less" }
}

/// What another answer changed, in one line; nothing where the two are not comparable.
#[must_use]
pub fn changed(
    (before, old): (&Answers, &Advice),
    (now, new): (&Answers, &Advice),
    units: Units,
) -> Option<String> {
    let what: Vec<String> = answered_otherwise(before, now)
        .into_iter()
        .map(question_short)
        .gathered();
    if what.is_empty() && before.weights == now.weights {
        return None;
    }
    let found = difference(old, new)?;
    let mut told = vec![if what.is_empty() {
        t!("changed-by-weights")
    } else {
        t!("changed-by", what = joined(&what))
    }];
    let (from, to) = (&old.picks.first()?.line, &new.picks.first()?.line);
    told.push(if found.elements.is_empty() {
        t!("changed-same")
    } else if glass(from) != glass(to) {
        t!("changed-line", from = glass(from), to = glass(to))
    } else {
        t!(
            "changed-line",
            from = line_text(from, units),
            to = line_text(to, units)
        )
    });
    told.push(served(&found));
    // The largest loss that moved says why; else what matters more or less.
    if let Some(loss) = found.losses.first() {
        told.push(t!(
            "changed-loss",
            way = way(loss.to > loss.from),
            cause = word("cause", &loss.cause),
            from = number(100.0 * loss.from, 0),
            to = number(100.0 * loss.to, 0)
        ));
    } else if let Some(weight) = found.weights.first() {
        told.push(t!(
            "changed-weight",
            way = way(weight.to_points > weight.from_points),
            element = elements(&[weight.element])
        ));
    }
    Some(told.together(" "))
}

fn served(found: &Difference) -> String {
    let [from, to] = found.served;
    let points = (100.0 * (to - from)).round();
    if tenths(from) != tenths(to) {
        t!("changed-served", from = tenths(from), to = tenths(to))
    } else if points == 0.0 {
        t!("changed-served-same")
    } else {
        t!(
            "changed-served-points",
            way = way(points > 0.0),
            points = number(points.abs(), 0)
        )
    }
}

/// How the sight owned now serves beside the first pick, sentence by sentence.
#[must_use]
pub fn owned(advice: &Advice, judged: &Judged, units: Units) -> Vec<String> {
    let Some(first) = advice.picks.first() else {
        return Vec::new();
    };
    let mut told = vec![t!(
        "owned-served",
        line = glass(&judged.line),
        tenths = tenths(judged.served.value),
        pick = tenths(first.served.value)
    )];
    if judged.keep {
        told.push(t!("owned-keep"));
        return told;
    }
    let (gains, losses) = gains_and_losses(&judged.gains, units);
    if !gains.is_empty() {
        told.push(t!("owned-gain", gains = gains));
    }
    if !losses.is_empty() {
        told.push(t!("owned-lose", losses = losses));
    }
    told
}

/// What the first pick makes of something that annoys: the annoyance, and the sentence.
#[must_use]
pub fn annoyed(row: &Annoyed, units: Units) -> (String, String) {
    let said = row.effect.map_or_else(String::new, |effect| {
        if !row.is_change {
            return t!(
                "annoys-reached",
                name = quantity_name(effect.quantity),
                value = quantity_value(effect.quantity, effect.value, effect.spread, units)
            );
        }
        let change = change(&effect, units).unwrap_or_else(|| t!("change-nothing"));
        if row.mended == Some(true) {
            t!("annoys-mended", change = change)
        } else {
            t!("annoys-not-mended", change = change)
        }
    });
    let moves = row.shift.filter(|shift| shift.to > shift.from + 1e-6);
    let mut told = vec![match moves {
        Some(shift) => shifted(row, shift, units),
        None => unmoved(row),
    }];
    if moves.is_some() {
        told.push(match &row.otherwise {
            Some(other) => t!("annoys-otherwise", line = line_text(other, units)),
            None => t!("annoys-same"),
        });
    }
    told.push(said);
    (word("option-annoys", &row.what), told.together(" "))
}

/// What an annoyance shifts in the ranking.
fn shifted(row: &Annoyed, shift: Shift, units: Units) -> String {
    let now = || {
        if row.is_change {
            t!("annoys-now")
        } else {
            t!("annoys-usual", line = USUAL_SIGHT)
        }
    };
    let charge = || number(ANNOYANCE_POINTS, 0);
    let field = |m| field(units, m);
    match row.what {
        Annoyance::TooDark => t!(
            "annoys-moves-too_dark",
            from = number(100.0 * shift.from, 0),
            to = number(100.0 * shift.to, 0)
        ),
        Annoyance::TooHeavy => t!(
            "annoys-moves-too_heavy",
            from = number(shift.from, 1),
            to = number(shift.to, 1)
        ),
        Annoyance::TooNarrow => t!(
            "annoys-moves-too_narrow",
            charge = charge(),
            to = field(shift.to),
            now = now(),
            from = field(shift.from)
        ),
        Annoyance::HardToFindPicture => t!(
            "annoys-moves-hard_to_find_picture",
            from = number(shift.from, 1),
            to = number(shift.to, 1)
        ),
        Annoyance::NotFarEnough => t!(
            "annoys-moves-not_far_enough",
            charge = charge(),
            to = number(shift.to, 0),
            now = now(),
            from = number(shift.from, 0)
        ),
    }
}

/// Why an annoyance shifts nothing.
fn unmoved(row: &Annoyed) -> String {
    match (row.what, row.shift) {
        (Annoyance::TooDark, Some(shift)) if shift.from < 0.5 => t!("annoys-moves-no-dusk"),
        (Annoyance::TooDark, _) => t!("annoys-moves-all-dusk"),
        (Annoyance::TooHeavy, _) => t!("annoys-moves-no-mass"),
        _ => t!("annoys-moves-no-power"),
    }
}

/// How stated ranges were taken, where they were not measured; none where they were.
#[must_use]
pub fn ranges_taken(advice: &Advice, units: Units) -> Option<String> {
    let taken = advice.facts.range_taken?;
    let stated_m = advice.facts.typical.usual_m;
    let (stated, value) = (range(units, stated_m), range(units, taken.value));
    let spread = range(units, taken.spread);
    Some(t!(
        "ranges-taken",
        stated = stated,
        taken = value,
        spread = spread
    ))
}
