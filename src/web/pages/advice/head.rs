//! Need, line, what it does, how sure.

use crate::advice::Advice;
use crate::advice::report::{Element, Standing};
use crate::advice::surety::WORLDS;
use crate::need::answers::Units;
use crate::t;
use crate::web::components::{Explained, explained, fold};
use crate::web::shared::Shared;
use crate::web::state::use_app;
use crate::web::view::prelude::*;
use crate::wording::advice::{
    capitalised, changed, evening, glass_means, line_parts, need_sentence, serves_too, sureness,
    word,
};

/// What every part of the advice needs.
#[derive(Properties, PartialEq)]
pub struct Props {
    /// The advice.
    pub advice: Shared<Advice>,
    /// Units to read in.
    pub units: Units,
}

fn standing(standing: Standing) -> &'static str {
    match standing {
        Standing::Must => "line__part--must",
        Standing::Wish => "line__part--wish",
        Standing::Free => "line__part--free",
    }
}

/// The head of the advice.
#[component]
pub fn Head(props: &Props) -> Html {
    let Some(pick) = props.advice.picks.first() else {
        return Html::default();
    };
    let parts = line_parts(&pick.line, &pick.ranges, props.units);
    let (glass, rest): (Vec<_>, Vec<_>) = parts
        .into_iter()
        .partition(|part| part.element == Element::MagHigh);
    let last = rest.len().saturating_sub(1);
    html! {
        <>
            <p class="needs">{ need_sentence(&props.advice, props.units) }</p>
            <div class="line-block">
                <p class="line">
                    { for glass.iter().map(|part| html! {
                        <span class="line__glass"><span class={classes!("line__part", standing(part.standing))}><Explained text={part.text.clone()} class="line__term" /></span></span>
                    }) }
                    <span class="line__means">{ glass_means(&pick.line) }</span>
                    <span class="line__rest">
                        { for rest.iter().enumerate().map(|(at, part)| html! {
                            <><span class="line__item"><span class={classes!("line__part", standing(part.standing))}><Explained text={part.text.clone()} class="line__term" /></span><span class="line__comma">{ if at < last { "," } else { "" } }</span></span>{ " " }</>
                        }) }
                    </span>
                </p>
            </div>
            <p class="does">{ explained(evening(&props.advice, pick, props.units)) }</p>
            { for sureness(&props.advice, props.units).into_iter().take(1).map(|said| html! { <p class="sureness">{ said }</p> }) }
        </>
    }
}

/// What the last answer changed, in one line.
#[component]
pub fn Changed(props: &Props) -> Html {
    let Some(app) = use_app() else {
        return Html::default();
    };
    // Advice for answers that are changed already is told apart by its shade.
    if app.advice_revision != app.revision {
        return Html::default();
    }
    let said = app.advised_before.as_ref().and_then(|(answers, before)| {
        changed(
            (answers, before),
            (&app.advised, &props.advice),
            props.units,
        )
    });
    html! {
        if let Some(said) = said {
            <p class="sureness noprint" role="status">{ said }</p>
        }
    }
}

/// How sure in full, and the ranges that serve as well.
#[component]
pub fn Ranges(props: &Props) -> Html {
    let (Some(pick), Some(app)) = (props.advice.picks.first(), use_app()) else {
        return Html::default();
    };
    let mut said = sureness(&props.advice, props.units);
    if props.advice.surety.is_none() {
        said.push(t!("sure-trying", tried = app.tried, worlds = WORLDS));
    }
    // The last sentence but one of a tried line says in how many worlds it stays.
    let telling = said.len() - if props.advice.surety.is_some() { 2 } else { 1 };
    let sum = said.remove(telling);
    let inside = html! {
        <>
            { for said.into_iter().skip(1).map(|said| html! { <p>{ said }</p> }) }
            <h3>{ t!("advice-serves-too") }</h3>
            <div class="tablewrap">
                <table class="figures">
                    <tbody>
                        { for serves_too(&pick.ranges, props.units).into_iter().map(|(element, words, standing)| html! {
                            <tr>
                                <th scope="row">{ capitalised(&word("element", &element)) }</th>
                                <td>{ words }</td>
                                <td class="soft">{ word("standing", &standing) }</td>
                            </tr>
                        }) }
                    </tbody>
                </table>
            </div>
        </>
    };
    fold("sure", t!("advice-sure"), sum, inside)
}
