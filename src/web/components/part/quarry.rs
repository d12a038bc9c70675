//! What is shot at: animals and targets, drawn, with how often.

use super::options::Often;
use crate::drawing::target;
use crate::need::questions::Part;
use crate::need::{Reply, Value, value};
use crate::t;
use crate::web::components::Choice;
use crate::web::components::figure::FigureDrawing;
use crate::web::state::{Action, use_app};
use crate::web::view::prelude::*;
use crate::wording::advice::capitalised;
use crate::wording::questions::what;
use crate::wording::say;

/// How many of the first group are shown before the others are opened.
const GROUPS: [(&str, &[&str]); 6] = [
    (
        "usual",
        &[
            "roe_deer",
            "wild_boar",
            "red_fox",
            "red_deer",
            "white_tailed_deer",
            "paper_100_m",
        ],
    ),
    (
        "deer",
        &[
            "fallow_deer",
            "sika_deer",
            "muntjac",
            "wapiti",
            "moose",
            "pronghorn",
            "plains_antelope",
        ],
    ),
    ("mountain", &["chamois", "mouflon", "ibex"]),
    (
        "other",
        &["black_bear", "dangerous_game", "coyote_or_jackal"],
    ),
    (
        "small",
        &[
            "ground_game",
            "marmot_or_groundhog",
            "brown_hare",
            "rabbit",
            "prairie_dog",
            "ground_squirrel_or_rat",
            "tree_squirrel",
            "crow",
            "wood_pigeon",
            "wild_turkey",
            "capercaillie",
        ],
    ),
    ("targets", target::KEYS.split_at(1).1),
];

/// Animals and targets.
#[component]
pub fn Quarry() -> Html {
    let Some(app) = use_app() else {
        return Html::default();
    };
    let held = match value(&app.answers, Part::Uses) {
        Value::Many(list) => list,
        _ => Vec::new(),
    };
    let row = |key: &'static str| {
        let share = held
            .iter()
            .find(|(held, _)| held == key)
            .map(|(_, share)| *share);
        let app = app.clone();
        let onchoose = Callback::from(move |_: bool| {
            app.dispatch(Action::Reply(Reply::Tap(Part::Uses, key.to_owned())));
        });
        let name = quarry_name(key);
        html! {
            <Choice {key} group="uses" value={key} name={name.clone()} many={true}
                drawing={html! { <FigureDrawing what={key} height_px={40.0} /> }}
                chosen={share.is_some()} {onchoose}
                more={share.filter(|_| held.len() > 1).map(|share| html! {
                    <Often part={Part::Uses} option={key} {share} {name} />
                })} />
        }
    };
    html! {
        { for GROUPS.iter().map(|(group, keys)| {
            let rows = html! { <div class="choices choices--two">{ for keys.iter().map(|key| row(key)) }</div> };
            if *group == "usual" {
                return rows;
            }
            let chosen = keys.iter().filter(|key| held.iter().any(|(held, _)| held == *key)).count();
            html! {
                <details class="opens opens--group" key={*group} open={chosen > 0}>
                    <summary>{ say(&format!("quarry-group-{group}"), &[]) }
                        if chosen > 0 { <span class="soft">{ t!("quarry-group-chosen", count = chosen) }</span> }
                    </summary>
                    { rows }
                </details>
            }
        }) }
    }
}

/// The name of an animal or target.
#[must_use]
pub fn quarry_name(key: &str) -> String {
    capitalised(&what(key))
}

/// Every animal and target is in one group and no more.
#[cfg(test)]
mod tests {
    use super::GROUPS;
    use crate::need::quarry::What;

    #[test]
    fn every_quarry_is_offered_once() {
        let mut offered: Vec<&str> = GROUPS
            .iter()
            .flat_map(|(_, keys)| keys.iter().copied())
            .collect();
        offered.sort_unstable();
        let mut all: Vec<&str> = What::all().map(What::key).collect();
        all.sort_unstable();
        assert_eq!(offered, all);
    }
}
