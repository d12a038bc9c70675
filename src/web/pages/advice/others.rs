//! Other picks, each better at something.

use super::head::Props;
use crate::t;
use crate::web::components::fold;
use crate::web::route::Route;
use crate::web::view::prelude::*;
use crate::wording::advice::{change_first, gains_and_losses, glass, line_words, word};
use crate::wording::with_unit;

/// The picks as rows of a table.
#[component]
pub fn Others(props: &Props) -> Html {
    let picks = &props.advice.picks;
    if picks.len() < 2 {
        return Html::default();
    }
    let of_first = line_words(&picks[0].line, props.units);
    // The weightiest gain of the first two says what stands in the table.
    let sum = picks
        .iter()
        .skip(1)
        .filter_map(|pick| {
            let (gain, _) = change_first(&pick.against_first, props.units);
            (!gain.is_empty()).then(|| format!("{} {gain}", glass(&pick.line)))
        })
        .take(2)
        .reduce(|one, other| format!("{one}{}{other}", t!("list-semicolon")))
        .map_or_else(String::new, |gains| format!("{gains}."));
    let table = html! {
        <>
            <table class="picks">
                <thead><tr>
                    <th scope="col">{ t!("advice-others-name") }</th>
                    <th scope="col">{ t!("advice-others-gain") }</th>
                    <th scope="col">{ t!("advice-others-loss") }</th>
                    <th scope="col">{ t!("advice-others-served") }</th>
                </tr></thead>
                <tbody>
                    { for picks.iter().enumerate().map(|(at, pick)| {
                        let (gains, losses) = gains_and_losses(&pick.against_first, props.units);
                        let or_nothing = |words: String, nothing: String| if words.is_empty() { (nothing, "same") } else { (words, "") };
                        let (gains, gains_class) = or_nothing(gains, t!("pick-nothing-gained"));
                        let (losses, losses_class) = or_nothing(losses, t!("pick-nothing-lost"));
                        html! {
                            <tr class={(at == 0).then_some("picks__row--first")}>
                                <th scope="row">
                                    <span class="picks__line">
                                        { for line_words(&pick.line, props.units).into_iter().zip(&of_first).enumerate().map(|(place, (words, first))| {
                                            let is_same = at > 0 && words == *first;
                                            let comma = if place == 0 { "" } else { ", " };
                                            html! { <>{ comma }<span class={is_same.then_some("same")}>{ words }</span></> }
                                        }) }
                                    </span>
                                    <span class="picks__because">{ word("because", &pick.because) }
                                        if at > 0 && pick.tied_with_first { { ", " }{ t!("pick-tied") } }
                                    </span>
                                </th>
                                if at == 0 {
                                    <td class="same" colspan="2">{ t!("advice-this-one") }</td>
                                } else {
                                    <td data-label={t!("advice-others-gain")} class={gains_class}>{ gains }</td>
                                    <td data-label={t!("advice-others-loss")} class={losses_class}>{ losses }</td>
                                }
                                <td data-label={t!("advice-others-served")}>{ with_unit(pick.served.value * 100.0, 0, "%") }</td>
                            </tr>
                        }
                    }) }
                </tbody>
            </table>
            <p class="noprint"><a href={Route::Compare.href()}>{ t!("opening-door-compare") }</a></p>
        </>
    };
    fold("others", t!("advice-others"), sum, table)
}
