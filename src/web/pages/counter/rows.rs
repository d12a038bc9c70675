//! The rows of chips: one touch an answer, a second touch takes it back.

use super::Over;
use crate::need::answers::Units;
use crate::need::counter::Act;
use crate::need::kinds::KINDS;
use crate::need::questions::{Control, Part, decade};
use crate::need::{Reply, Value, value};
use crate::plain::Gathered;
use crate::t;
use crate::web::state::{Action, App};
use crate::web::view::prelude::*;
use crate::wording::questions::{option, part as part_name};
use crate::wording::{has, say};

/// The rows, in the order in which one asks.
pub const ROWS: [Part; 10] = [
    Part::Cartridge,
    Part::Until,
    Part::Age,
    Part::Glasses,
    Part::SightLine,
    Part::Annoys,
    Part::Rings,
    Part::Base,
    Part::Band,
    Part::Zoom,
];

/// Loads met most; all others are one touch away.
const LOADS: [&str; 6] = [
    "308_win_10_7_g",
    "30_06_spring_11_7_g",
    "6_5x55_se_9_1_g",
    "9_3x62_18_5_g",
    "223_rem_3_56_g",
    "22_lr_2_6_g_standard",
];

/// What stands on most rifles; all else is typed.
const SIGHTS: [&str; 5] = ["4x32", "6x42", "8x56", "3-9x40", "3-12x56"];

/// One chip.
struct Chip {
    key: String,
    words: String,
    is_on: bool,
    does: Does,
}

enum Does {
    Act(Act),
    Open(Over),
}

fn words(units: Units, part: Part, key: &str) -> String {
    let short = format!("counter-{}-{}", part.key(), key.replace('.', "_"));
    if has(&short) {
        say(&short, &[])
    } else {
        option(units, part, key)
    }
}

fn name(part: Part) -> String {
    let short = format!("counter-{}", part.key());
    if has(&short) {
        say(&short, &[])
    } else {
        part_name(part)
    }
}

/// A row of chips, of which several can be on together if `many`.
fn row(
    app: &App,
    group: &str,
    name: String,
    many: bool,
    chips: Vec<Chip>,
    over: &Callback<Over>,
) -> Html {
    html! {
        <fieldset class={classes!("crow", format!("crow--{group}"))} key={group.to_owned()}>
            <legend class="crow__name">{ name }</legend>
            <div class="crow__chips">
                { for chips.into_iter().map(|chip| {
                    let (app, over) = (app.clone(), over.clone());
                    let id = format!("counter-{group}-{}", chip.key);
                    let act = Callback::from(move |()| match &chip.does {
                        Does::Act(act) => app.dispatch(Action::At(act.clone())),
                        Does::Open(sheet) => over.emit(*sheet),
                    });
                    // A radio that is on does not change when it is touched again.
                    let again = (chip.is_on && !many).then(|| {
                        let act = act.clone();
                        Callback::from(move |_: MouseEvent| act.emit(()))
                    });
                    let onchange = Callback::from(move |_: Event| act.emit(()));
                    html! {
                        <label class="segment" key={chip.key}>
                            <input type={if many { "checkbox" } else { "radio" }} {id}
                                name={format!("counter-{group}")} checked={chip.is_on} onclick={again} {onchange} />
                            <span>{ chip.words }</span>
                        </label>
                    }
                }) }
            </div>
        </fieldset>
    }
}

/// The usual kinds of shooting: one touch fills quarry, manner, ranges and light.
pub fn kinds(app: &App, over: &Callback<Over>) -> Html {
    let chips = KINDS
        .iter()
        .map(|kind| Chip {
            key: kind.key.to_owned(),
            words: say(&format!("counter-kind-{}", kind.key), &[]),
            is_on: kind.matches(&app.answers),
            does: Does::Act(Act::Kind(kind.key)),
        })
        .gathered();
    row(app, "kind", t!("counter-kind"), false, chips, over)
}

/// One part as a row of chips.
pub fn of(app: &App, part: Part, over: &Callback<Over>) -> Html {
    let units = app.answers.units;
    let held = value(&app.answers, part);
    let one = |key: &str, is_on: bool, reply: Reply| Chip {
        key: key.to_owned(),
        words: words(units, part, key),
        is_on,
        does: Does::Act(Act::Reply(reply)),
    };
    let other = |is_on: bool, over: Over| Chip {
        key: "other".to_owned(),
        words: t!("counter-other"),
        is_on,
        does: Does::Open(over),
    };
    let tapped = |key: &str| {
        let is_on = match &held {
            Value::One(held) => held == key,
            Value::Many(list) => list.iter().any(|(held, _)| held == key),
            _ => false,
        };
        one(key, is_on, Reply::Tap(part, key.to_owned()))
    };
    let mut many = false;
    let chips = match part.control() {
        Control::Cartridge => {
            let mut chips: Vec<Chip> = LOADS.iter().map(|key| tapped(key)).gathered();
            let is_other = held != Value::Nothing && !chips.iter().any(|chip| chip.is_on);
            chips.push(other(is_other, Over::Rifle));
            chips
        }
        Control::Text { .. } => {
            let is_none = app.answers.not_sure.iter().any(|key| key == "sight_now");
            let mut chips = vec![one(
                "none",
                is_none,
                if is_none {
                    Reply::Clear("sight_now")
                } else {
                    Reply::NotSure("sight_now")
                },
            )];
            for line in SIGHTS {
                let is_on = held == Value::Text(line.to_owned());
                let new = if is_on {
                    Value::Nothing
                } else {
                    Value::Text(line.to_owned())
                };
                chips.push(Chip {
                    words: line.replace('x', "×").replace('-', "–"),
                    ..one(line, is_on, Reply::Set(part, new))
                });
            }
            let is_other = held != Value::Nothing && !chips.iter().any(|chip| chip.is_on);
            chips.push(other(is_other, Over::Sight));
            chips
        }
        Control::One(list) => list.iter().map(|key| tapped(key)).gathered(),
        Control::Many { options, .. } => {
            many = true;
            options.iter().map(|key| tapped(key)).gathered()
        }
        Control::Decade(middles) => middles
            .iter()
            .enumerate()
            .map(|(at, middle)| {
                // An age that came along exactly lights its decade too.
                let is_on = matches!(held, Value::Number(age) if decade(age, middles) == at);
                let reply = if is_on {
                    Reply::Set(part, Value::Nothing)
                } else {
                    Reply::Decade(*middle)
                };
                one(&shortest(*middle), is_on, reply)
            })
            .gathered(),
        _ => Vec::new(),
    };
    row(app, part.key(), name(part), many, chips, over)
}

#[cfg(test)]
mod tests {
    use super::super::{Over, ROWS};
    use crate::need::counter;
    use crate::need::questions::Question;

    #[test]
    fn every_question_of_the_counter_has_its_place() {
        for question in counter::questions() {
            assert!(
                ROWS.iter()
                    .chain(Over::ALL.iter().flat_map(|over| over.parts()))
                    .any(|part| Question::of_part(*part).is_some_and(|of| of.key == question.key)),
                "{}",
                question.key
            );
        }
    }
}
