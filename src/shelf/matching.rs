//! Which sights on the shelf lie inside the ranges that serve this person.

use super::stock::Row;
use crate::advice::report::{
    Choices, Element, Grade, Lit, Parallax, Plane, Ranges, Reticle, Span, Standing, Turret,
};
use crate::plain::Gathered;
use crate::sight::specification::{
    Elevation, FocalPlane, GlassGrade, Illumination, ParallaxSetting, ReticleFamily,
};

/// How one element of a sight lies to the range that serves.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Fit {
    /// Inside.
    Inside,
    /// Nothing is stated: measure this. Never counted as failed.
    Unknown,
    /// Outside.
    Outside,
}

/// An element that is outside or not stated.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Missed {
    /// The element.
    pub element: Element,
    /// How much it matters.
    pub standing: Standing,
}

/// One sight of the shelf beside the ranges that serve.
#[derive(Clone, Debug, PartialEq)]
pub struct Match<'a> {
    /// The row.
    pub row: &'a Row,
    /// Elements that lie outside, the musts first.
    pub outside: Vec<Missed>,
    /// Elements that are not stated and should be measured, the musts first.
    pub unknown: Vec<Missed>,
}

impl Match<'_> {
    /// No must lies outside.
    #[must_use]
    pub fn serves(&self) -> bool {
        !self
            .outside
            .iter()
            .any(|missed| missed.standing == Standing::Must)
    }

    fn rank(&self) -> (usize, usize, usize, usize, usize) {
        let count = |list: &[Missed], standing: Standing| {
            list.iter()
                .filter(|missed| missed.standing == standing)
                .count()
        };
        (
            count(&self.outside, Standing::Must),
            count(&self.outside, Standing::Wish),
            count(&self.unknown, Standing::Must),
            count(&self.unknown, Standing::Wish),
            self.row.line,
        )
    }
}

/// All rows beside the ranges of a pick: fewest musts outside first, then fewest wishes, then
/// fewest unknowns, then as in the list. What is free is not counted at all.
#[must_use]
pub fn rank<'a>(rows: &'a [Row], ranges: &Ranges) -> Vec<Match<'a>> {
    let mut list: Vec<Match<'a>> = rows.iter().map(|row| beside(row, ranges)).gathered();
    crate::plain::sort_by_key(&mut list, Match::rank);
    list
}

/// One row beside the ranges of a pick.
#[must_use]
pub fn beside<'a>(row: &'a Row, ranges: &Ranges) -> Match<'a> {
    let sight = &row.sight;
    let spans: [(Element, Option<f64>, &Span); 6] = [
        (
            Element::MagLow,
            Some(sight.magnification_low),
            &ranges.mag_low,
        ),
        (
            Element::MagHigh,
            Some(sight.magnification_high),
            &ranges.mag_high,
        ),
        (
            Element::ObjectiveMm,
            Some(sight.objective_mm),
            &ranges.objective_mm,
        ),
        (
            Element::EyeReliefMm,
            sight.eye_relief_mm,
            &ranges.eye_relief_mm,
        ),
        (
            Element::FieldLowMPer100m,
            sight.field_low_m_per_100m,
            &ranges.field_low_m_per_100m,
        ),
        (Element::MassG, sight.mass_g, &ranges.mass_g),
    ];
    let mut found: Vec<(Element, Standing, Fit)> = spans
        .into_iter()
        .map(|(element, value, span)| {
            // More eye relief and field, or less mass, is never too much of it.
            let (least, most) = match element {
                Element::EyeReliefMm | Element::FieldLowMPer100m => (span.least, f64::INFINITY),
                Element::MassG => (0.0, span.most),
                _ => (span.least, span.most),
            };
            // As precise as boxes are: 2 per cent.
            let fit = value.map_or(Fit::Unknown, |value| {
                if value >= least * 0.98 && value <= most * 1.02 {
                    Fit::Inside
                } else {
                    Fit::Outside
                }
            });
            (element, span.standing, fit)
        })
        .gathered();
    found.push(of(
        Element::TubeMm,
        sight.tube_mm,
        &ranges.tube_mm,
        |a, b| (a - b).abs() < 0.2,
    ));
    found.push(of(
        Element::Plane,
        sight.plane.map(|plane| match plane {
            FocalPlane::First => Plane::First,
            FocalPlane::Second => Plane::Second,
        }),
        &ranges.plane,
        |a, b| a == b,
    ));
    found.push(of(
        Element::Reticle,
        sight.reticle.map(reticle),
        &ranges.reticle,
        |a, b| a == b,
    ));
    found.push(of(
        Element::Illumination,
        sight.illumination.map(|light| match light {
            Illumination::Unlit => Lit::None,
            Illumination::NightFine => Lit::NightFine,
            Illumination::DayBright => Lit::DayBright,
            Illumination::Both => Lit::Both,
        }),
        &ranges.illumination,
        // Both ends do what either does.
        |have, want| have == want || (*have == Lit::Both && *want != Lit::None),
    ));
    found.push(of(
        Element::Parallax,
        sight.parallax.map(|setting| match setting {
            ParallaxSetting::Fixed { free_at_m } => Parallax::Fixed { free_at_m },
            ParallaxSetting::Adjustable { nearest_m } => Parallax::Adjustable { nearest_m },
        }),
        &ranges.parallax,
        |have, want| match (have, want) {
            (Parallax::Fixed { free_at_m: a }, Parallax::Fixed { free_at_m: b }) => {
                (a - b).abs() <= 0.3 * b
            }
            (Parallax::Adjustable { nearest_m: a }, Parallax::Adjustable { nearest_m: b }) => {
                a <= b
            }
            // What can be adjusted to the distance wanted does for a fixed one too.
            (Parallax::Adjustable { nearest_m }, Parallax::Fixed { free_at_m }) => {
                nearest_m <= free_at_m
            }
            (Parallax::Fixed { .. }, Parallax::Adjustable { .. }) => false,
        },
    ));
    found.push(of(
        Element::Elevation,
        sight.elevation.map(|turret| match turret {
            Elevation::Capped => Turret::Capped,
            Elevation::RingForLoad => Turret::RingForLoad,
            Elevation::DialZeroStop => Turret::DialZeroStop,
        }),
        &ranges.elevation,
        |a, b| a == b,
    ));
    found.push(of(
        Element::Grade,
        sight.grade.map(|grade| match grade {
            GlassGrade::Basic => Grade::Basic,
            GlassGrade::Good => Grade::Good,
            GlassGrade::Best => Grade::Best,
        }),
        &ranges.grade,
        |a, b| a == b,
    ));
    let missed = |wanted: Fit| {
        let mut list: Vec<Missed> = found
            .iter()
            .filter(|(_, standing, fit)| *fit == wanted && *standing != Standing::Free)
            .map(|(element, standing, _)| Missed {
                element: *element,
                standing: *standing,
            })
            .gathered();
        crate::plain::sort_by_key(&mut list, |missed| missed.standing);
        list
    };
    Match {
        row,
        outside: missed(Fit::Outside),
        unknown: missed(Fit::Unknown),
    }
}

fn of<T>(
    element: Element,
    have: Option<T>,
    wanted: &Choices<T>,
    same: impl Fn(&T, &T) -> bool,
) -> (Element, Standing, Fit) {
    let fit = match have {
        None => Fit::Unknown,
        Some(have) if wanted.any_of.iter().any(|want| same(&have, want)) => Fit::Inside,
        Some(_) => Fit::Outside,
    };
    (element, wanted.standing, fit)
}

fn reticle(family: ReticleFamily) -> Reticle {
    match family {
        ReticleFamily::FineCrosshair => Reticle::FineCrosshair,
        ReticleFamily::ThickThin => Reticle::ThickThin,
        ReticleFamily::ThreePost => Reticle::ThreePost,
        ReticleFamily::HeavyNight => Reticle::HeavyNight,
        ReticleFamily::Post => Reticle::Post,
        ReticleFamily::CentreDot => Reticle::CentreDot,
        ReticleFamily::CircleDot => Reticle::CircleDot,
        ReticleFamily::MradMarks => Reticle::MradMarks,
        ReticleFamily::MoaMarks => Reticle::MoaMarks,
        ReticleFamily::HoldMarks => Reticle::HoldMarks,
        ReticleFamily::MarkGrid => Reticle::MarkGrid,
    }
}
