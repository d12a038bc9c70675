//! Words of the questions, their parts and options, and of what was answered.

use super::measure::{bullet_mass, range, rifle_mass, velocity};
use super::{Arg, has, number, say};
use crate::flight::cartridges;
use crate::need::answers::{Answers, Manner, Ranges, Units};
use crate::need::flow::{self, State};
use crate::need::input::Quantity;
use crate::need::kinds::Kind;
use crate::need::loads::RecoilGroup;
use crate::need::questions::{Control, Part, Question, decade};
use crate::need::shooter::Share;
use crate::need::{self, Value, range_rows, resolve, value};
use crate::plain::Gathered;
use crate::plain::Together;
use crate::t;

/// The question itself: the heading of its page.
#[must_use]
pub fn question(question: &Question) -> String {
    say(&format!("question-{}", question.key), &[])
}

/// Its name in one or two words, for lists and the counter.
#[must_use]
pub fn question_short(question: &Question) -> String {
    say(&format!("question-{}.short", question.key), &[])
}

/// Why it is asked, in one line.
#[must_use]
pub fn question_why(question: &Question) -> String {
    say(&format!("question-{}.why", question.key), &[])
}

/// How to find out, for those who do not know.
#[must_use]
pub fn question_how(question: &Question) -> Option<String> {
    question
        .has_how
        .then(|| say(&format!("question-{}.how", question.key), &[]))
}

/// What is assumed for it as long as it is not answered, or answered with "not sure".
#[must_use]
pub fn question_unsure(question: &Question, answers: &Answers) -> String {
    let without = need::apply(answers, &need::Reply::Clear(question.key));
    let need = resolve(&without);
    let units = answers.units;
    match question.key {
        "quarry" => {
            let america = need
                .situations
                .iter()
                .any(|each| each.what.key() == "white_tailed_deer");
            if america {
                t!("question-quarry.unsure-america")
            } else {
                t!("question-quarry.unsure")
            }
        }
        "manner" => {
            let mut shares: Vec<Share<Manner>> = Vec::new();
            for each in &need.situations {
                match shares.iter_mut().find(|share| share.of == each.manner) {
                    Some(share) => share.share += each.share,
                    None => shares.push(Share {
                        of: each.manner,
                        share: each.share,
                    }),
                }
            }
            let names: Vec<String> = shares
                .iter()
                .map(|share| manner_phrase(share.of))
                .gathered();
            t!("question-manner.unsure", list = joined(&names))
        }
        "ranges" => {
            let rows: Vec<String> = range_rows(&without)
                .iter()
                .map(|row| ranges(units, Some(row.manner), row.ranges))
                .gathered();
            t!("question-ranges.unsure", list = rows.together("; "))
        }
        "rifle" => t!(
            "question-rifle.unsure",
            load = cartridge(units, need.load.cartridge.value),
            velocity = velocity(units, need.load.muzzle_velocity_m_s.value.value),
            mass = rifle_mass(units, need.rifle.mass_kg.value.value),
            spread = number(
                Quantity::RifleMass.shown(units, need.rifle.mass_kg.value.spread),
                1
            )
        ),
        "place" => t!(
            "question-place.unsure",
            latitude = number(need.place.latitude_deg.value, 0),
            first = month(need.place.first_month.value),
            last = month(need.place.last_month.value)
        ),
        key => say(&format!("question-{key}.unsure"), &[]),
    }
}

/// The name of a part.
#[must_use]
pub fn part(part: Part) -> String {
    say(&format!("part-{}", part.key()), &[])
}

/// A line under the name of a part.
#[must_use]
pub fn part_hint(part: Part) -> Option<String> {
    hint(&format!("part-{}", part.key()))
}

fn hint(key: &str) -> Option<String> {
    let key = format!("{key}.hint");
    has(&key).then(|| say(&key, &[]))
}

fn option_key(part: Part, option: &str) -> String {
    format!("option-{}-{}", part.key(), option.replace('.', "_"))
}

/// The words of an option.
#[must_use]
pub fn option(units: Units, part: Part, key: &str) -> String {
    match part.control() {
        Control::Quarry => what(key),
        Control::Cartridge => cartridge(units, key),
        Control::Month => key.parse().map_or_else(|_| key.to_owned(), month),
        _ => say(&option_key(part, key), &[]),
    }
}

/// A line under an option.
#[must_use]
pub fn option_hint(part: Part, key: &str) -> Option<String> {
    hint(&option_key(part, key))
}

/// How often: 4 often, 2 sometimes, 1 rarely; other shares by the nearest of them.
#[must_use]
pub fn often(share: f64) -> String {
    if share >= 3.0 {
        t!("often-4")
    } else if share >= 1.5 {
        t!("often-2")
    } else {
        t!("often-1")
    }
}

/// An animal or target by its key.
#[must_use]
pub fn what(key: &str) -> String {
    say(&format!("what-{key}"), &[])
}

/// A manner of shooting as it is offered.
#[must_use]
pub fn manner(manner: Manner) -> String {
    option(Units::Metric, Part::Manners, &need::manner_key(manner))
}

/// A manner of shooting within a sentence.
#[must_use]
pub fn manner_phrase(manner: Manner) -> String {
    say(&format!("manner-phrase-{}", need::manner_key(manner)), &[])
}

/// A usual kind of shooting.
#[must_use]
pub fn kind(kind: &Kind) -> String {
    say(&format!("kind-{}", kind.key), &[])
}

/// A group of cartridges.
#[must_use]
pub fn recoil_group(group: RecoilGroup) -> String {
    say(&format!("cartridge-group-{}", group.key()), &[])
}

/// A cartridge with its bullet, as in ".308 Win., 10.7 g".
#[must_use]
pub fn cartridge(units: Units, key: &str) -> String {
    cartridges::by_key(key).map_or_else(
        || key.to_owned(),
        |load| {
            t!(
                "cartridge-load",
                designation = load.designation,
                mass = bullet_mass(units, load.bullet_g)
            )
        },
    )
}

/// A month, 1 to 12.
#[must_use]
pub fn month(month: u8) -> String {
    say(&format!("month-{month}"), &[])
}

/// Three ranges in a line.
#[must_use]
pub fn ranges(units: Units, manner: Option<Manner>, ranges: Ranges) -> String {
    let (nearest, usual, farthest) = (
        range(units, ranges.nearest_m),
        range(units, ranges.usual_m),
        range(units, ranges.farthest_m),
    );
    match manner {
        Some(manner) => t!(
            "question-ranges.row",
            manner = manner_phrase(manner),
            nearest = nearest,
            usual = usual,
            farthest = farthest
        ),
        None => t!(
            "question-ranges.row-all",
            nearest = nearest,
            usual = usual,
            farthest = farthest
        ),
    }
}

/// A number with its unit as it is read.
#[must_use]
pub fn quantity(units: Units, quantity: Quantity, metric: f64) -> String {
    let text = quantity.typed(units, metric);
    let shown = crate::plain::decimal(&text).map_or(text.clone(), |value| {
        let decimals = text.split_once('.').map_or(0, |(_, digits)| digits.len());
        number(value, decimals)
    });
    match quantity.unit(units).symbol() {
        "" => shown,
        "°" => format!("{shown}°"),
        unit => format!("{shown}\u{202F}{unit}"),
    }
}

/// Words joined as a list: "a, b and c".
#[must_use]
pub fn joined(words: &[String]) -> String {
    match words {
        [] => String::new(),
        [only] => only.clone(),
        [rest @ .., last] => t!(
            "list-and",
            rest = rest.together(&t!("list-comma")),
            last = last
        ),
    }
}

/// What was answered to a question, in a line; none while it is open.
#[must_use]
pub fn answer(question: &Question, answers: &Answers) -> Option<String> {
    match flow::state(answers, question) {
        State::Open => None,
        State::NotSure => Some(t!("answer-unsure")),
        State::Answered => {
            let said: Vec<String> = question
                .all_parts()
                .filter_map(|each| part_answer(each, answers))
                .gathered();
            Some(said.together(&t!("list-semicolon")))
        }
    }
}

/// What a part holds, in words; none if it holds nothing.
#[must_use]
pub fn part_answer(each: Part, answers: &Answers) -> Option<String> {
    let units = answers.units;
    Some(match value(answers, each) {
        Value::Nothing => return None,
        Value::One(key) => match (each, key.as_str()) {
            // Said without its part these would not be understood.
            (Part::Rings, "none") | (Part::Base, "bare") => {
                with_name(each, &option(units, each, &key))
            }
            (Part::Snow | Part::TownGlow | Part::Lens | Part::Muzzle | Part::Comb, _) => {
                with_name(each, &option(units, each, &key))
            }
            (Part::Rings | Part::Glasses | Part::Zoom | Part::LitMark | Part::Detail, _) => {
                with_name(each, &option(units, each, &key))
            }
            _ => option(units, each, &key),
        },
        Value::Many(list) => {
            let several = list.len() > 1;
            let shares = !matches!(each.control(), Control::Many { shares: false, .. });
            let words: Vec<String> = list
                .iter()
                .map(|(key, share)| {
                    let name = option(units, each, key);
                    if several && shares {
                        t!("answer-often", name = name, often = often(*share))
                    } else {
                        name
                    }
                })
                .gathered();
            // Names of ways to shoot have commas of their own.
            words.together(&if shares {
                t!("list-semicolon")
            } else {
                t!("list-comma")
            })
        }
        Value::Number(metric) => match each.control() {
            Control::Number(of, _) => with_name(each, &quantity(units, of, metric)),
            Control::Decade(middles) if answers.eye.is_some_and(|eye| eye.age_is_decade) => {
                // Whoever wrote the answers may have put another age of the decade there.
                let middle = middles[decade(metric, middles)];
                option(units, each, &number(middle, 0))
            }
            Control::Decade(_) => t!("answer-age", years = number(metric, 0)),
            Control::Month => with_name(each, &month(metric as u8)),
            _ => number(metric, 1),
        },
        Value::Flag(yes) => match each.control() {
            Control::Tick => part(each),
            _ => with_name(
                each,
                &if yes {
                    t!("answer-yes")
                } else {
                    t!("answer-no")
                },
            ),
        },
        Value::Ranges(rows) => {
            let words: Vec<String> = rows
                .iter()
                .map(|(manner, each)| ranges(units, *manner, *each))
                .gathered();
            words.together(&t!("list-semicolon"))
        }
        Value::Text(text) => text,
    })
}

fn with_name(each: Part, words: &str) -> String {
    t!("answer-named", name = part(each), words = words)
}

/// A caution by its key.
#[must_use]
pub fn caution(caution: need::cautions::Caution) -> String {
    say(&format!("caution-{}", caution.key()), &[] as &[(&str, Arg)])
}
