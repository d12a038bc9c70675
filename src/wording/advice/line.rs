//! The line, element by element.

use super::{joined, key_of, said, word};
use crate::advice::report::{Choices, Element, Line, Parallax, Ranges, Setting, Span, Standing};
use crate::need::answers::Units;
use crate::plain::Gathered;
use crate::t;
use crate::wording::{mass, number, range, round_m, say, with_unit};

/// One element of the line in words.
#[derive(Clone, Debug, PartialEq)]
pub struct Part {
    /// Which element.
    pub element: Element,
    /// Its words.
    pub text: String,
    /// How much it matters.
    pub standing: Standing,
}

/// A magnification as it stands on a box: "1.75", "2.5", "10".
fn power(magnification: f64) -> String {
    let is_whole = |x: f64| (x - x.round()).abs() < 0.005;
    let decimals = match magnification {
        m if is_whole(m) => 0,
        m if is_whole(10.0 * m) => 1,
        _ => 2,
    };
    number(magnification, decimals)
}

/// A length in mm as it stands on a box: "30", "25.4".
#[must_use]
pub fn box_mm(mm: f64) -> String {
    number(mm, usize::from((mm - mm.round()).abs() > 0.04))
}

/// The powers as they stand on a box: "2.5–10", "8".
fn powers(line: &Line) -> String {
    let high = power(line.mag_high);
    if (line.mag_high - line.mag_low).abs() < 0.05 {
        high
    } else {
        t!("decade", from = power(line.mag_low), to = high)
    }
}

/// Magnification and objective, as in "2.5–10 × 50".
#[must_use]
pub fn glass(line: &Line) -> String {
    glass_forming(line, true, true)
}

/// What either figure of it says, for who reads such a line for the first time.
#[must_use]
pub fn glass_means(line: &Line) -> String {
    t!(
        "line-means",
        power = powers(line),
        objective = box_mm(line.objective_mm)
    )
}

/// The same while it forms: a thin dash for what is not yet known.
#[must_use]
pub fn glass_forming(line: &Line, power_known: bool, objective_known: bool) -> String {
    let known = |is_known, words: String| if is_known { words } else { t!("line-unknown") };
    t!(
        "line-forming-glass",
        power = known(power_known, powers(line)),
        objective = known(objective_known, box_mm(line.objective_mm))
    )
}

/// As it stands on a box: what is set to 100 m in one market is set to 100 yd in the other.
fn parallax(setting: &Parallax, units: Units) -> String {
    let on_box = |m: &f64| range(units, m * round_m(units));
    match setting {
        Parallax::Fixed { free_at_m } => t!("parallax-fixed", range = on_box(free_at_m)),
        Parallax::Adjustable { nearest_m } => t!("parallax-adjustable", range = on_box(nearest_m)),
    }
}

/// The line in the order in which it is read out; magnification and objective come first.
#[must_use]
pub fn line_parts(line: &Line, ranges: &Ranges, units: Units) -> Vec<Part> {
    let part = |element, text, standing| Part {
        element,
        text,
        standing,
    };
    let span = |span: &Span| span.standing;
    let mut parts = vec![
        part(
            Element::MagHigh,
            glass(line),
            span(&ranges.mag_low)
                .min(span(&ranges.mag_high))
                .min(span(&ranges.objective_mm)),
        ),
        part(
            Element::TubeMm,
            t!("line-tube", tube = box_mm(line.tube_mm)),
            ranges.tube_mm.standing,
        ),
        part(
            Element::Plane,
            word("plane", &line.plane),
            ranges.plane.standing,
        ),
        part(
            Element::Reticle,
            word("reticle", &line.reticle),
            ranges.reticle.standing,
        ),
        part(
            Element::Illumination,
            word("lit", &line.illumination),
            ranges.illumination.standing,
        ),
        part(
            Element::Parallax,
            parallax(&line.parallax, units),
            ranges.parallax.standing,
        ),
        part(
            Element::Elevation,
            word("turret", &line.elevation),
            ranges.elevation.standing,
        ),
        part(
            Element::EyeReliefMm,
            t!(
                "line-eye-relief",
                relief = with_unit(ranges.eye_relief_mm.least.ceil(), 0, "mm")
            ),
            ranges.eye_relief_mm.standing,
        ),
        part(
            Element::Grade,
            word("grade", &line.grade),
            ranges.grade.standing,
        ),
    ];
    parts.push(part(
        Element::MassG,
        t!("line-mass", mass = mass(units, line.mass_g)),
        ranges.mass_g.standing,
    ));
    parts
}

/// The elements of a line in words, in the order in which it is read out.
#[must_use]
pub fn line_words(line: &Line, units: Units) -> Vec<String> {
    vec![
        glass(line),
        t!("line-tube", tube = box_mm(line.tube_mm)),
        word("plane", &line.plane),
        word("reticle", &line.reticle),
        word("lit", &line.illumination),
        parallax(&line.parallax, units),
        word("turret", &line.elevation),
        word("grade", &line.grade),
    ]
}

/// The line as one text, for the share sheet, the print and a window's title.
#[must_use]
pub fn line_text(line: &Line, units: Units) -> String {
    line_words(line, units)
        .into_iter()
        .reduce(|one, other| t!("told-comma", one = one, other = other))
        .unwrap_or_default()
}

fn spanned(span: &Span, shown: impl Fn(f64) -> String, least_step: f64) -> String {
    if (span.most - span.least).abs() < least_step {
        t!("span-only", least = shown(span.least))
    } else {
        t!(
            "span-range",
            least = shown(span.least),
            most = shown(span.most)
        )
    }
}

fn any_of<T>(choices: &Choices<T>, shown: impl Fn(&T) -> String) -> String {
    let mut words: Vec<String> = Vec::new();
    for choice in &choices.any_of {
        let word = shown(choice);
        if !words.contains(&word) {
            words.push(word);
        }
    }
    let Some((last, rest)) = words.split_last() else {
        return String::new();
    };
    if rest.is_empty() {
        return last.clone();
    }
    let most = rest
        .iter()
        .cloned()
        .reduce(|one, other| t!("told-comma", one = one, other = other))
        .unwrap_or_default();
    t!("choices-or", one = most, other = last)
}

/// As [`any_of`], but three or more that follow one another are told by their ends.
fn ranked<T: Copy>(
    choices: &Choices<T>,
    rank: impl Fn(T) -> usize,
    shown: impl Fn(&T) -> String,
) -> String {
    let all = &choices.any_of;
    match (
        all.iter().min_by_key(|each| rank(**each)),
        all.iter().max_by_key(|each| rank(**each)),
    ) {
        (Some(first), Some(last))
            if all.len() > 2 && rank(*last) - rank(*first) + 1 == all.len() =>
        {
            t!("span-range", least = shown(first), most = shown(last))
        }
        _ => any_of(choices, shown),
    }
}

fn keys<T: core::fmt::Debug>(heading: &'static str) -> impl Fn(&T) -> String {
    move |choice| word(heading, choice)
}

/// The ranges that serve as well: element, and the values that tie.
#[must_use]
pub fn serves_too(ranges: &Ranges, units: Units) -> Vec<(Element, String, Standing)> {
    let times = |value: f64| t!("setting-mag", value = power(value));
    vec![
        (
            Element::MagLow,
            spanned(&ranges.mag_low, times, 0.05),
            ranges.mag_low.standing,
        ),
        (
            Element::MagHigh,
            spanned(&ranges.mag_high, times, 0.05),
            ranges.mag_high.standing,
        ),
        (
            Element::ObjectiveMm,
            spanned(&ranges.objective_mm, |value| with_unit(value, 0, "mm"), 0.5),
            ranges.objective_mm.standing,
        ),
        (
            Element::TubeMm,
            any_of(&ranges.tube_mm, |tube| {
                t!("setting-mm", value = box_mm(*tube))
            }),
            ranges.tube_mm.standing,
        ),
        (
            Element::Plane,
            any_of(&ranges.plane, keys("plane")),
            ranges.plane.standing,
        ),
        (
            Element::Reticle,
            any_of(&ranges.reticle, keys("reticle")),
            ranges.reticle.standing,
        ),
        (
            Element::Illumination,
            any_of(&ranges.illumination, keys("lit")),
            ranges.illumination.standing,
        ),
        (
            Element::Parallax,
            any_of(&ranges.parallax, |setting| parallax(setting, units)),
            ranges.parallax.standing,
        ),
        (
            Element::Elevation,
            any_of(&ranges.elevation, keys("turret")),
            ranges.elevation.standing,
        ),
        (
            Element::Grade,
            ranked(&ranges.grade, |grade| grade as usize, keys("grade")),
            ranges.grade.standing,
        ),
        (
            Element::FieldLowMPer100m,
            t!(
                "line-field",
                field = number(ranges.field_low_m_per_100m.least, 0)
            ),
            ranges.field_low_m_per_100m.standing,
        ),
        (
            Element::MassG,
            spanned(&ranges.mass_g, |value| mass(units, value), 10.0),
            ranges.mass_g.standing,
        ),
        (
            Element::PriceBand,
            ranked(&ranges.price_band, |band| band as usize, keys("band")),
            ranges.price_band.standing,
        ),
    ]
}

/// Words for `fixed_100` and `adjustable_10`: the kind and its distance in m.
fn parallax_key(key: &str, units: Units) -> Option<String> {
    let (kind, distance) = key.rsplit_once('_')?;
    let distance_m = crate::plain::decimal(distance)?;
    match kind {
        "fixed" => Some(t!("parallax-fixed", range = range(units, distance_m))),
        "adjustable" => Some(t!("parallax-adjustable", range = range(units, distance_m))),
        _ => None,
    }
}

/// What an element is set to, in words that can stand in a sentence.
#[must_use]
pub fn setting(element: Element, setting: &Setting, units: Units) -> String {
    match setting {
        Setting::Number(value) => numbered(element, *value, units),
        Setting::Key(key) => {
            if let Some(words) = parallax_key(key, units) {
                return words;
            }
            let heading = match element {
                Element::Plane => "plane",
                Element::Reticle => "reticle",
                Element::Illumination => "lit",
                Element::Parallax => "parallax-kind",
                Element::Elevation => "turret",
                Element::Grade => "grade",
                Element::PriceBand => "band",
                Element::FieldLowMPer100m => "field",
                _ => return key.replace('_', " "),
            };
            say(&format!("{heading}-{key}"), &[])
        }
    }
}

/// What an element is set to, as short as a table wants it: numbers without their noun.
#[must_use]
pub fn setting_short(element: Element, value: &Setting, units: Units) -> String {
    match (element, value) {
        (Element::MagLow | Element::MagHigh | Element::MagInUse, Setting::Number(value)) => {
            t!("setting-mag", value = power(*value))
        }
        (Element::ObjectiveMm | Element::TubeMm | Element::ExitPupilMm, Setting::Number(value)) => {
            t!("setting-mm", value = box_mm((*value * 10.0).round() / 10.0))
        }
        (Element::EyeReliefMm, Setting::Number(value)) => t!("setting-mm", value = box_mm(*value)),
        (Element::FieldLowMPer100m, Setting::Number(value)) => with_unit(*value, 1, "m"),
        _ => setting(element, value, units),
    }
}

fn numbered(element: Element, value: f64, units: Units) -> String {
    let key = match element {
        Element::MagLow => "setting-low",
        Element::MagHigh => "setting-high",
        Element::MagInUse => "setting-in-use",
        Element::ObjectiveMm => "setting-objective",
        Element::TubeMm => "setting-tube",
        Element::ExitPupilMm => "setting-exit-pupil",
        Element::FieldLowMPer100m => "setting-field",
        Element::EyeReliefMm => "setting-eye-relief",
        Element::CentreLineMmPer100m | Element::DotMmPer100m => "setting-at-100m",
        Element::CentreHeightMm => "setting-mm",
        Element::Parallax => {
            return t!("setting-parallax-free", range = range(units, value));
        }
        Element::MassG => return mass(units, value),
        Element::UpFromZeroMrad => return crate::wording::mrad(value),
        _ => "setting-number",
    };
    let shown = match element {
        Element::MagLow | Element::MagHigh | Element::MagInUse => power(value),
        _ => box_mm((value * 10.0).round() / 10.0),
    };
    said(key, &[("value", shown.into())])
}

/// "Must" before "wish" before "free": the words that belong to a list of elements.
#[must_use]
pub fn elements(list: &[Element]) -> String {
    let words: Vec<String> = list
        .iter()
        .map(|element| say(&format!("element-{}", key_of(element)), &[]))
        .gathered();
    joined(&words)
}
