//! The small graphic of a reason: the pick, one step less and one step more on one axis.

use crate::advice::report::{Quantity, Reason, Step};
use crate::need::answers::Units;
use crate::plain::Gathered;
use crate::t;
use crate::web::view::prelude::*;
use crate::wording::advice::{
    capitalised, change_short, quantity_name, quantity_value, setting_short,
};

/// The reason to draw.
#[derive(Properties, PartialEq)]
pub struct Props {
    /// The reason.
    pub reason: Reason,
    /// Units to read in.
    pub units: Units,
}

struct Row {
    setting: String,
    value: f64,
    spread: f64,
    words: String,
    is_pick: bool,
}

fn effect(step: &Step, axis: Quantity) -> Option<(f64, f64)> {
    step.effects
        .iter()
        .find(|effect| effect.quantity == axis)
        .map(|effect| (effect.value, effect.spread))
        .filter(|(value, spread)| value.is_finite() && spread.is_finite())
}

fn rows(reason: &Reason, units: Units) -> Option<Vec<Row>> {
    let axis = reason.axis;
    let (here, here_spread) = effect(&reason.here, axis)?;
    let step = |step: &Option<Step>| {
        let step = step.as_ref()?;
        let (by, spread) = effect(step, axis)?;
        Some(Row {
            setting: setting_short(reason.element, &step.setting, units),
            value: here + by,
            spread,
            words: step
                .effects
                .iter()
                .find(|effect| effect.quantity == axis)
                .map_or_else(String::new, |effect| change_short(effect, units)),
            is_pick: false,
        })
    };
    let pick = Row {
        setting: setting_short(reason.element, &reason.here.setting, units),
        value: here,
        spread: here_spread,
        words: t!("advice-this-one"),
        is_pick: true,
    };
    Some(
        [step(&reason.less), Some(pick), step(&reason.more)]
            .into_iter()
            .flatten()
            .gathered(),
    )
}

/// Three dots on one axis, with their spreads, as a table.
#[component]
pub fn Steps(props: &Props) -> Html {
    let Some(rows) = rows(&props.reason, props.units) else {
        return Html::default();
    };
    let axis = props.reason.axis;
    let least = rows
        .iter()
        .map(|row| row.value - row.spread)
        .fold(f64::INFINITY, f64::min);
    let most = rows
        .iter()
        .map(|row| row.value + row.spread)
        .fold(f64::NEG_INFINITY, f64::max);
    // What cannot be below nothing is not drawn below it, however wide its spread.
    let least = if rows.iter().all(|row| row.value >= 0.0) {
        least.max(0.0)
    } else {
        least
    };
    let width = (most - least).max(1e-9);
    let place = |value: f64| filled!("{.1}%", 6.0 + 88.0 * (value - least) / width);
    html! {
        <table class="steps">
            <caption class="steps__caption">{ capitalised(&quantity_name(axis)) }</caption>
            <tbody>
                { for rows.iter().map(|row| html! {
                    <tr class={classes!("steps__row", row.is_pick.then_some("steps__row--pick"))}>
                        <th scope="row" class="steps__setting">{ &row.setting }</th>
                        <td class="steps__axis">
                            <span class="unseen">{ quantity_value(axis, row.value, row.spread, props.units) }</span>
                            <svg aria-hidden="true">
                                <line class="steps__rule" x1="0" x2="100%" y1="50%" y2="50%" />
                                if row.spread > 0.0 {
                                    <line class="steps__spread" x1={place((row.value - row.spread).max(least))}
                                        x2={place(row.value + row.spread)} y1="50%" y2="50%" />
                                }
                                <circle class="steps__dot" cx={place(row.value)} cy="50%" r="5" />
                            </svg>
                        </td>
                        <td class="steps__words">{ &row.words }</td>
                    </tr>
                }) }
                <tr class="steps__scale" aria-hidden="true">
                    <td></td>
                    <td><span class="steps__ends">
                        <span>{ quantity_value(axis, least, 0.0, props.units) }</span>
                        <span>{ quantity_value(axis, most, 0.0, props.units) }</span>
                    </span></td>
                    <td></td>
                </tr>
            </tbody>
        </table>
    }
}
