//! Why this line: each reason said, seen and opened in place.

use super::head::Props;
use super::notes;
use crate::advice::report::{Effect, Note, Quantity, Reason, Step};
use crate::need::answers::Units;
use crate::plain::Gathered;
use crate::t;
use crate::web::components::{Steps, explained, fold};
use crate::web::view::prelude::*;
use crate::wording::advice::{
    joined, quantity_name, quantity_short, reason_said, setting, source_of, word,
};
use crate::wording::notes::{Place, at, sources};

/// How many reasons are shown before "all".
const AT_FIRST: usize = 6;

/// The reasons, most consequential first.
#[component]
pub fn Reasons(props: &Props) -> Html {
    let all = use_state(|| false);
    let reasons = &props.advice.reasons;
    if reasons.is_empty() {
        return Html::default();
    }
    let shown = if *all {
        reasons.len()
    } else {
        AT_FIRST.min(reasons.len())
    };
    let more = {
        let all = all.clone();
        Callback::from(move |_: MouseEvent| all.set(true))
    };
    let behind = |reason: &Reason| at(&props.advice.notes, Place::Reason(reason.element));
    let weightiest = reasons
        .iter()
        .take(3)
        .map(|reason| setting(reason.element, &reason.here.setting, props.units))
        .gathered();
    let sum = t!(
        "advice-reasons-sum",
        count = reasons.len(),
        first = joined(&weightiest)
    );
    let inside = html! {
        <>
            <p class="soft">{ t!("advice-reasons-lead") }</p>
            <ol class="reasons">
                { for reasons.iter().take(shown).map(|reason| html! {
                    <li class="reason" key={word("element", &reason.element)}>
                        <p class="reason__said">{ explained(reason_said(reason, props.units)) }</p>
                        if reason.less.is_some() || reason.more.is_some() {
                            <Steps reason={reason.clone()} units={props.units} />
                        }
                        <details class="opens noprint">
                            <summary>{ t!("page-more") }</summary>
                            <div class="opens__in">
                                { figures(reason, props.units) }
                                { notes::list(behind(reason), props.units) }
                                { notes::formulas(formulas(reason, behind(reason))) }
                            </div>
                        </details>
                    </li>
                }) }
            </ol>
            if shown < reasons.len() {
                <button type="button" class="button noprint" onclick={more}>{ t!("advice-reasons-all", count = reasons.len()) }</button>
            }
        </>
    };
    fold("reasons", t!("advice-reasons"), sum, inside)
}

/// The formula of a reason and those of its notes, each once.
fn formulas<'a>(reason: &Reason, behind: impl Iterator<Item = &'a Note>) -> Vec<String> {
    let mut words: Vec<String> = source_of(reason).into_iter().gathered();
    for each in sources(behind) {
        if !words.contains(&each) {
            words.push(each);
        }
    }
    words
}

/// All numbers of a reason: what the pick reaches, and what each step changes.
fn figures(reason: &Reason, units: Units) -> Html {
    let steps: Vec<&Step> = [&reason.less, &reason.more]
        .into_iter()
        .flatten()
        .gathered();
    let mut quantities: Vec<_> = Vec::new();
    for effect in reason
        .here
        .effects
        .iter()
        .chain(steps.iter().flat_map(|step| &step.effects))
    {
        // The share served has a row of its own.
        if effect.quantity != Quantity::ServedPoints && !quantities.contains(&effect.quantity) {
            quantities.push(effect.quantity);
        }
    }
    let cell = |effects: &[Effect], quantity, signed: bool| {
        effects
            .iter()
            .find(|effect| effect.quantity == quantity)
            .map_or_else(
                || "–".to_owned(),
                |effect| {
                    let sign = if signed && effect.value > 0.0 {
                        "+"
                    } else {
                        ""
                    };
                    format!(
                        "{sign}{}",
                        quantity_short(quantity, effect.value, effect.spread, units)
                    )
                },
            )
    };
    html! {
        <div class="tablewrap" tabindex="0" role="region" aria-label={word("element", &reason.element)}>
            <table class="figures">
                <thead><tr>
                    <td></td>
                    <th scope="col">{ setting(reason.element, &reason.here.setting, units) }</th>
                    { for steps.iter().map(|step| html! { <th scope="col">{ setting(reason.element, &step.setting, units) }</th> }) }
                </tr></thead>
                <tbody>
                    <tr>
                        <th scope="row">{ quantity_name(Quantity::ServedPoints) }</th>
                        <td>{ percent(reason.here.served) }</td>
                        { for steps.iter().map(|step| html! { <td>{ percent(step.served) }</td> }) }
                    </tr>
                    { for quantities.iter().map(|quantity| html! {
                        <tr>
                            <th scope="row">{ quantity_name(*quantity) }</th>
                            <td>{ cell(&reason.here.effects, *quantity, false) }</td>
                            { for steps.iter().map(|step| html! { <td>{ cell(&step.effects, *quantity, true) }</td> }) }
                        </tr>
                    }) }
                    if steps.iter().any(|step| step.lost_to.is_some()) {
                        <tr>
                            <th scope="row">{ t!("advice-lost-to") }</th>
                            <td>{ "–" }</td>
                            { for steps.iter().map(|step| html! {
                                <td>{ step.lost_to.map_or_else(|| "–".to_owned(), |cause| word("cause", &cause)) }</td>
                            }) }
                        </tr>
                    }
                </tbody>
            </table>
        </div>
    }
}

fn percent(share: f64) -> String {
    crate::wording::with_unit(share * 100.0, 0, "%")
}
