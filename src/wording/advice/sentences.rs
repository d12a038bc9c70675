//! Whole sentences about one person's advice.

use super::{capitalised, changes, key_of, line_text, said, setting, setting_short, word};
use crate::advice::report::{
    Advice, Comparison, Decision, Effect, Element, LastLight, LightKind, NotNeeded, Pick, Quantity,
    Reason, Rule, Saying, Step, Warning,
};
use crate::need::answers::Units;
use crate::plain::Gathered;
use crate::plain::Together;
use crate::t;
use crate::wording::{about, field, minutes, number, range};

/// A thing told: its heading, what is said about it, and the numbers behind.
#[derive(Clone, Debug, PartialEq)]
pub struct Told {
    /// Heading.
    pub heading: String,
    /// Sentence.
    pub said: String,
}

/// The sentence of need.
#[must_use]
pub fn need_sentence(advice: &Advice, units: Units) -> String {
    let typical = &advice.facts.typical;
    let stop = typical.stop_minutes_after_sunset;
    let key = match (typical.light, stop) {
        (LightKind::Day, _) => "need-day",
        (LightKind::Moon, _) => "need-moon",
        (LightKind::LitRange, _) => "need-lit_range",
        (LightKind::Dusk, Some(stop_min)) if stop_min > 2.0 => "need-dusk",
        (LightKind::Dusk, Some(stop_min)) if stop_min < -2.0 => "need-before-sunset",
        (LightKind::Dusk, _) => "need-sunset",
    };
    let (usual, farthest) = (
        range(units, typical.usual_m),
        range(units, typical.farthest_m),
    );
    let ranges = if usual == farthest {
        t!("need-range", usual = usual)
    } else {
        t!("need-ranges", usual = usual, farthest = farthest)
    };
    said(
        key,
        &[
            (
                "what",
                said(&format!("what-{}", typical.quarry), &[]).into(),
            ),
            (
                "manner",
                said(&format!("manner-phrase-{}", typical.manner), &[]).into(),
            ),
            ("ranges", ranges.into()),
            ("minutes", minutes(stop.unwrap_or(0.0).abs()).into()),
            ("age", number(typical.age_years, 0).into()),
        ],
    )
}

fn last_light(light: LastLight) -> Option<(f64, f64)> {
    match light {
        LastLight::At { minutes, spread } => Some((minutes, spread)),
        LastLight::Always | LastLight::Never => None,
    }
}

/// What the line does for this person, in a few sentences with numbers.
#[must_use]
pub fn evening(advice: &Advice, pick: &Pick, units: Units) -> String {
    let facts = &advice.facts;
    let what = said(&format!("what-{}", facts.typical.quarry), &[]);
    let mut told = Vec::new();
    match facts.typical.light {
        LightKind::Dusk | LightKind::Moon => {
            match (facts.tonight.this_sight, last_light(facts.tonight.bare_eye)) {
                (
                    LastLight::At {
                        minutes: at,
                        spread,
                    },
                    bare,
                ) => {
                    let time = about(at.abs(), spread, "min");
                    let until = if at < 0.0 {
                        t!("until-before", minutes = time)
                    } else {
                        t!("until-after", minutes = time)
                    };
                    told.push(match bare {
                        Some((bare, _)) if at - bare > 0.5 => t!(
                            "does-evening",
                            what = what,
                            until = until,
                            later = minutes(at - bare)
                        ),
                        _ => t!("does-evening-alone", what = what, until = until),
                    });
                }
                (LastLight::Always, _) => told.push(t!("does-night", what = what)),
                (LastLight::Never, _) => {}
            }
        }
        LightKind::Day | LightKind::LitRange => told.push(t!(
            "does-day",
            what = capitalised(&what),
            farthest = range(units, facts.typical.farthest_m)
        )),
    }
    let width_m = pick.line.field_low_m_per_100m * facts.typical.nearest_m / 100.0;
    told.push(t!(
        "does-field",
        nearest = range(units, facts.typical.nearest_m),
        field = field(units, width_m)
    ));
    told.together(" ")
}

/// Below this share even the best sight that can be built serves none of what was described.
const NONE_SERVES: f64 = 0.05;

/// How sure the first pick is, sentence by sentence.
#[must_use]
pub fn sureness(advice: &Advice, units: Units) -> Vec<String> {
    let tenths = |share: f64| number((share * 10.0).round().clamp(0.0, 10.0), 0);
    let mut told = Vec::new();
    if let Some(first) = advice.picks.first() {
        let best = advice.facts.best_possible_share;
        told.push(if best < NONE_SERVES {
            t!("sure-none")
        } else {
            t!("sure-share", tenths = tenths(first.served.value))
        });
        let (least, most) = (
            tenths(first.served.value - first.served.spread),
            tenths(first.served.value + first.served.spread),
        );
        if least != most {
            told.push(if advice.surety.is_some() {
                t!("sure-between", least = least, most = most)
            } else {
                t!("sure-between-first", least = least, most = most)
            });
        }
        if (NONE_SERVES..0.95).contains(&best) && best >= first.served.value {
            told.push(t!("sure-best", tenths = tenths(best)));
        }
    }
    if let Some(surety) = &advice.surety {
        told.push(t!(
            "sure-worlds",
            worlds = surety.worlds,
            first = surety.first_or_tied
        ));
        told.push(match surety.unseated_by.first() {
            Some(unseats) => t!(
                "sure-unseated",
                doubt = word("doubt", &unseats.doubt),
                line = line_text(&unseats.instead, units)
            ),
            None => t!("sure-firm"),
        });
    }
    told
}

/// Whether the settings of an element lie in an order, so that a step is less or more.
fn is_ordered(element: Element) -> bool {
    !matches!(
        element,
        Element::Plane
            | Element::Reticle
            | Element::Illumination
            | Element::Parallax
            | Element::Elevation
            | Element::Mount
    )
}

fn step(element: Element, step: &Step, is_more: bool, units: Units) -> String {
    let setting = setting(element, &step.setting, units);
    // The element's own figure is said already.
    let others: Vec<Effect> = step
        .effects
        .iter()
        .copied()
        .filter(|effect| {
            !(element == Element::EyeReliefMm && effect.quantity == Quantity::EyeReliefMm)
        })
        .gathered();
    let changes = changes(&others, units, 3);
    if !is_ordered(element) {
        let setting = capitalised(&setting);
        return t!("change-instead", setting = setting, changes = changes);
    }
    if is_more {
        t!("change-more", setting = setting, changes = changes)
    } else {
        t!("change-less", setting = setting, changes = changes)
    }
}

/// A reason as one would say it: what is set, what a step less loses, what a step more gains.
#[must_use]
pub fn reason_said(reason: &Reason, units: Units) -> String {
    let mut told = vec![t!(
        "reason-here",
        setting = capitalised(&setting(reason.element, &reason.here.setting, units))
    )];
    if let Some(less) = &reason.less {
        told.push(step(reason.element, less, false, units));
    }
    if let Some(more) = &reason.more {
        told.push(step(reason.element, more, true, units));
    }
    told.together(" ")
}

/// Something that is not needed, and why.
#[must_use]
pub fn not_needed(row: &NotNeeded, units: Units) -> Told {
    Told {
        heading: setting(row.element, &row.setting, units),
        said: t!("not-needed-why", changes = changes(&row.effects, units, 3)),
    }
}

fn element_of(decision: &Decision) -> Element {
    use crate::advice::report::DecisionKey as Key;
    match decision.key {
        Key::GramsAgainstMinutes | Key::LowMountAgainstBell | Key::CombOrBell => {
            Element::ObjectiveMm
        }
        Key::FieldAgainstTopPower | Key::OneWideOrTwoSights | Key::SecondSight => Element::MagLow,
        Key::FirstOrSecondPlane => Element::Plane,
        Key::LitOrHeavyBars => Element::Reticle,
        Key::DialOrDeadOn | Key::MarksOrDial => Element::Elevation,
        Key::AdjustableParallax => Element::Parallax,
        Key::FixedOrZoom => Element::MagHigh,
        Key::KeepRings => Element::TubeMm,
        Key::GlassAgainstMoney => Element::Grade,
        Key::MoneyAgainstOccasions => Element::PriceBand,
        Key::ForwardOrReceiver => Element::EyeReliefMm,
    }
}

/// A decision: what it is between, and what the other side changes.
#[must_use]
pub fn decision(decision: &Decision, units: Units) -> Told {
    let element = element_of(decision);
    Told {
        heading: word("decision", &decision.key),
        said: t!(
            "decision-said",
            other = capitalised(&setting(element, &decision.other, units)),
            one = setting(element, &decision.one, units),
            changes = changes(&decision.effects, units, 3)
        ),
    }
}

fn rule(rule: &Rule, units: Units) -> String {
    let mut limit = setting_short(rule.element, &rule.limit, units);
    if rule.element == Element::FieldLowMPer100m {
        limit = format!("{limit} {}", t!("where-100m"));
    }
    let element = word("element", &rule.element);
    match rule.comparison {
        Comparison::Less => t!("rule-less", element = element, limit = limit),
        Comparison::AtMost => t!("rule-at-most", element = element, limit = limit),
        Comparison::More => t!("rule-more", element = element, limit = limit),
        Comparison::AtLeast if rule.element == Element::Parallax => {
            t!("rule-or-more", limit = limit)
        }
        Comparison::AtLeast => t!("rule-at-least", element = element, limit = limit),
        Comparison::Is => t!("rule-is", limit = limit),
        Comparison::IsNot => t!("rule-is-not", limit = limit),
    }
}

/// A warning: why, and the rule where one element decides.
#[must_use]
pub fn warning(warning: &Warning, units: Units) -> Told {
    Told {
        heading: word("warning", &warning.key),
        said: warning.rule.as_ref().map_or_else(String::new, |limits| {
            t!("warning-rule", rule = rule(limits, units))
        }),
    }
}

/// A saying: the words, what it comes to for this person in numbers, and why.
#[must_use]
pub fn saying(saying: &Saying, units: Units) -> (Told, String) {
    let key = key_of(&saying.key);
    let told = Told {
        heading: said(&format!("saying-{key}"), &[]),
        said: crate::wording::sayings::spoken(saying, units),
    };
    (told, said(&format!("saying-{key}-why"), &[]))
}

/// The formula behind a reason, and where it comes from.
#[must_use]
pub fn source_of(reason: &Reason) -> Option<String> {
    use crate::advice::report::Quantity as Q;
    let key = match reason.axis {
        Q::MinutesTonight | Q::SecondsTonight => "source-told-apart",
        Q::FieldAtNearestM | Q::FieldMPer100m | Q::CrossingSeconds => "source-field",
        Q::DetailAtFarthestMm => "source-detail",
        Q::ExitPupilMm | Q::PupilMm | Q::OnIrisPercent => "source-pupil",
        Q::MassG | Q::MassPercentOfRifle => "source-mass",
        Q::CentreHeightMm => "source-height",
        Q::PriceBands => "source-price",
        Q::ParallaxCm => "source-parallax",
        Q::CoveredCm | Q::MarkArcmin | Q::WidthMmPer100m | Q::LineNeededArcmin => "source-mark",
        Q::NeededMrad | Q::TravelMrad | Q::DropCm | Q::Clicks => "source-drop",
        Q::EyeReliefMm | Q::RecoilMS | Q::RecoilJ => "source-recoil",
        Q::ServedPoints => "source-served",
        _ => return None,
    };
    Some(said(key, &[]))
}
