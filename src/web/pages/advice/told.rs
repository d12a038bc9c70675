//! What is not needed, what is to decide, what to leave aside, sayings, what is not counted.

use super::head::Props;
use crate::advice::Advice;
use crate::advice::report::Verdict;
use crate::t;
use crate::web::components::{explained, fold};
use crate::web::route::Route;
use crate::web::shared::Shared;
use crate::web::view::prelude::*;
use crate::wording::advice::{
    capitalised, changes, decision, not_needed, quantity_name, quantity_value, saying, warning,
    word,
};

/// What this person does not need.
#[component]
pub fn NotNeededRows(props: &Props) -> Html {
    let rows = &props.advice.not_needed;
    if rows.is_empty() && props.advice.unused.is_empty() {
        return Html::default();
    }
    html! {
        <section>
            <h2>{ t!("advice-not-needed") }</h2>
            if !rows.is_empty() {
                <p class="small soft">{ t!("advice-not-needed-lead") }</p>
            }
            <ul class="struck">
                { for rows.iter().take(3).map(|row| {
                    let told = not_needed(row, props.units);
                    html! { <li><s class="struck__word">{ told.heading }</s><span class="struck__why">{ explained(told.said) }</span></li> }
                }) }
            </ul>
            if !props.advice.unused.is_empty() {
                <details class="opens">
                    <summary>{ t!("advice-unused") }</summary>
                    <ul class="plainlist opens__in">
                        { for props.advice.unused.iter().map(|row| html! {
                            <li>{ word("unused", &row.key) }<span class="small soft block">{ figures(&row.effects, props) }</span></li>
                        }) }
                    </ul>
                </details>
            }
        </section>
    }
}

fn figures(effects: &[crate::advice::report::Effect], props: &Props) -> String {
    effects
        .iter()
        .map(|effect| {
            t!(
                "change-value",
                name = quantity_name(effect.quantity),
                value = quantity_value(effect.quantity, effect.value, effect.spread, props.units)
            )
        })
        .reduce(|one, other| format!("{one}{}{other}", t!("list-semicolon")))
        .map_or_else(String::new, |words| capitalised(&words))
}

/// The two things that are the person's own to decide.
#[component]
pub fn Decisions(props: &Props) -> Html {
    let rows = &props.advice.decisions;
    if rows.is_empty() {
        return Html::default();
    }
    html! {
        <section>
            <h2>{ t!("advice-decisions") }</h2>
            <ul class="decisions">
                { for rows.iter().take(2).map(|row| {
                    let told = decision(row, props.units);
                    html! {
                        <li class="decision">
                            <span class="decision__key">{ told.heading }</span>
                            { explained(told.said) }
                            if row.advisors_disagree { { " " }{ t!("advice-disagree") } }
                        </li>
                    }
                }) }
            </ul>
        </section>
    }
}

/// What this person should not buy, and should not forget.
#[component]
pub fn Warnings(props: &Props) -> Html {
    let rows = &props.advice.warnings;
    if rows.is_empty() {
        return Html::default();
    }
    let sum = t!(
        "advice-warnings-sum",
        count = rows.len(),
        first = warning(&rows[0], props.units).heading
    );
    fold(
        "warnings",
        t!("advice-warnings"),
        sum,
        warning_list(rows, props),
    )
}

fn warning_list(rows: &[crate::advice::report::Warning], props: &Props) -> Html {
    html! {
        <ul class="plainlist">
            { for rows.iter().map(|row| {
                let told = warning(row, props.units);
                html! {
                    <li class="marked">
                        <span class="marked__sign marked__sign--fails" aria-hidden="true">{ "×" }</span>
                        <span>
                            { explained(told.heading) }
                            if !told.said.is_empty() { { " " }{ explained(told.said) } }
                            if !row.facts.is_empty() {
                                <span class="small soft block">{ figures(&row.facts, props) }</span>
                            }
                            if !row.effects.is_empty() {
                                <span class="small soft block">{ t!("warning-it", changes = changes(&row.effects, props.units, 3)) }</span>
                            }
                        </span>
                    </li>
                }
            }) }
        </ul>
    }
}

/// What is said at counters.
#[component]
pub fn Sayings(props: &Props) -> Html {
    let rows = &props.advice.sayings;
    if rows.is_empty() {
        return Html::default();
    }
    let count = |verdict| rows.iter().filter(|row| row.verdict == verdict).count();
    let sum = t!(
        "advice-sayings-sum",
        right = count(Verdict::True),
        half = count(Verdict::Half),
        wrong = count(Verdict::False)
    );
    let list = html! {
        <>
            <p class="soft">{ t!("advice-sayings-lead") }</p>
            <ul class="plainlist">
                { for rows.iter().map(|row| {
                        let (told, why) = saying(row, props.units);
                        let (sign, class) = match row.verdict {
                            Verdict::True => ("✓", "marked__sign--serves"),
                            Verdict::Half => ("~", "marked__sign--unsure"),
                            Verdict::False => ("×", "marked__sign--fails"),
                        };
                        html! {
                            <li class="marked">
                                <span class={classes!("marked__sign", class)} aria-hidden="true">{ sign }</span>
                                <span>
                                    <q>{ told.heading }</q>{ " " }<span class="marked__verdict">{ word("verdict", &row.verdict) }</span>
                                    <span class="block">{ explained(told.said) }</span>
                                    <span class="small soft block">{ why }</span>
                                </span>
                            </li>
                        }
                    }) }
            </ul>
        </>
    };
    html! { <div class="noprint">{ fold("sayings", t!("advice-sayings"), sum, list) }</div> }
}

/// The advice alone.
#[derive(Properties, PartialEq)]
pub struct AdviceProps {
    /// The advice.
    pub advice: Shared<Advice>,
}

/// What no computation here covers.
#[component]
pub fn NotCountedRows(props: &AdviceProps) -> Html {
    let rows = &props.advice.not_counted;
    if rows.is_empty() {
        return Html::default();
    }
    let list = html! {
        <>
            <p>{ t!("advice-not-counted-lead") }</p>
            <ul class="lines">
                { for rows.iter().map(|row| html! { <li>{ word("not-counted", row) }</li> }) }
            </ul>
            <p class="noprint"><a href={Route::Shop.href()}>{ t!("shop-title") }</a></p>
        </>
    };
    fold(
        "not-counted",
        t!("advice-not-counted"),
        t!("advice-not-counted-sum", count = rows.len()),
        list,
    )
}
