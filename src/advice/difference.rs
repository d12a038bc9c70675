//! What another answer changed: two advices held against each other, element by element.

use super::reasons::key;
use super::report::{Advice, Cause, Element, Line, Parallax, Reason, Setting};
use crate::plain::Gathered;

/// What differs between two advices.
#[derive(Clone, Debug, PartialEq)]
pub struct Difference {
    /// The elements of the first pick's line that differ, in the order of the line.
    pub elements: Vec<Change>,
    /// Share of the occasions served before and now.
    pub served: [f64; 2],
    /// Elements whose weight changed by a near-tie or more, the most changed first.
    pub weights: Vec<WeightChange>,
    /// Losses that changed by half a point or more, the most changed first.
    pub losses: Vec<LossChange>,
}

/// An element before and now.
#[derive(Clone, Debug, PartialEq)]
pub struct Change {
    /// Which.
    pub element: Element,
    /// Its setting before.
    pub from: Setting,
    /// Its setting now.
    pub to: Setting,
}

/// How much an element matters, before and now.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WeightChange {
    /// Which.
    pub element: Element,
    /// Largest change of value by one step before, percentage points.
    pub from_points: f64,
    /// The same now.
    pub to_points: f64,
}

/// Share of the occasions lost to a cause, before and now.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LossChange {
    /// Which.
    pub cause: Cause,
    /// Before.
    pub from: f64,
    /// Now.
    pub to: f64,
}

/// From so many points on a reason weighs more or less.
const WEIGHT_POINTS: f64 = 1.0;
/// From such a share on a loss has changed.
const LOSS_SHARE: f64 = 0.005;

const ELEMENTS: [Element; 11] = [
    Element::MagLow,
    Element::MagHigh,
    Element::ObjectiveMm,
    Element::TubeMm,
    Element::Plane,
    Element::Reticle,
    Element::Illumination,
    Element::Parallax,
    Element::Elevation,
    Element::EyeReliefMm,
    Element::Grade,
];

/// What an element of a line is set to.
fn setting(element: Element, line: &Line) -> Setting {
    match element {
        Element::MagLow => Setting::Number(line.mag_low),
        Element::MagHigh => Setting::Number(line.mag_high),
        Element::ObjectiveMm => Setting::Number(line.objective_mm),
        Element::TubeMm => Setting::Number(line.tube_mm),
        Element::EyeReliefMm => Setting::Number(line.eye_relief_mm),
        Element::Plane => key(line.plane),
        Element::Reticle => key(line.reticle),
        Element::Illumination => key(line.illumination),
        Element::Parallax => Setting::Key(
            match line.parallax {
                Parallax::Fixed { .. } => "fixed",
                Parallax::Adjustable { .. } => "adjustable",
            }
            .to_owned(),
        ),
        Element::Elevation => key(line.elevation),
        _ => key(line.grade),
    }
}

/// The elements in which two lines differ, in the order of the line.
#[must_use]
pub fn of_lines(before: &Line, now: &Line) -> Vec<Change> {
    ELEMENTS
        .iter()
        .map(|&element| Change {
            element,
            from: setting(element, before),
            to: setting(element, now),
        })
        .filter(|change| change.from != change.to)
        .gathered()
}

/// What differs between two advices; nothing where one has no pick.
#[must_use]
pub fn difference(before: &Advice, now: &Advice) -> Option<Difference> {
    let (old, new) = (before.picks.first()?, now.picks.first()?);
    let weight = |list: &[Reason], element: Element| {
        list.iter()
            .find(|reason| reason.element == element)
            .map_or(0.0, |reason| reason.weight_points)
    };
    let mut weights: Vec<WeightChange> = now
        .reasons
        .iter()
        .map(|reason| WeightChange {
            element: reason.element,
            from_points: weight(&before.reasons, reason.element),
            to_points: reason.weight_points,
        })
        .filter(|change| (change.to_points - change.from_points).abs() >= WEIGHT_POINTS)
        .gathered();
    let by = |change: &WeightChange| (change.to_points - change.from_points).abs();
    crate::plain::sort_by(&mut weights, |a, b| {
        by(b).total_cmp(&by(a)).then(a.element.cmp(&b.element))
    });
    let lost = |cause: Cause| {
        old.losses
            .iter()
            .find(|loss| loss.cause == cause)
            .map_or(0.0, |loss| loss.share)
    };
    let mut losses: Vec<LossChange> = new
        .losses
        .iter()
        .map(|loss| LossChange {
            cause: loss.cause,
            from: lost(loss.cause),
            to: loss.share,
        })
        .filter(|change| (change.to - change.from).abs() >= LOSS_SHARE)
        .gathered();
    let by = |change: &LossChange| (change.to - change.from).abs();
    crate::plain::sort_by(&mut losses, |a, b| {
        by(b).total_cmp(&by(a)).then(a.cause.cmp(&b.cause))
    });
    Some(Difference {
        elements: of_lines(&old.line, &new.line),
        served: [old.served.value, new.served.value],
        weights,
        losses,
    })
}
