//! Nearest, usual and farthest, with the animal as large as the bare eye sees it there.

use crate::need::answers::Manner;
use crate::need::quarry::What;
use crate::need::{RangeRow, Reply, range_rows};
use crate::t;
use crate::web::components::field::TextField;
use crate::web::components::figure::FigureDrawing;
use crate::web::fields::{ENDS, End, Field, range_step, ranges_of};
use crate::web::state::{Action, use_app};
use crate::web::view::prelude::*;
use crate::wording::advice::key_of;
use crate::wording::questions::manner as manner_name;
use crate::wording::range;

/// The visual angle of a CSS pixel at arm's length, in mrad.
///
/// # Source
/// CSS Values and Units, reference pixel: 1/96 in at 28 in, 0.0213°.
const MRAD_PER_PX: f64 = 0.372;

/// Pixels a centimetre at a range, for a screen at arm's length.
#[must_use]
pub fn px_per_cm(range_m: f64) -> f64 {
    10.0 / range_m.max(1.0) / MRAD_PER_PX
}

/// One row for each manner.
#[component]
pub fn RangesControl() -> Html {
    let Some(app) = use_app() else {
        return Html::default();
    };
    let rows = range_rows(&app.answers);
    let several = rows.len() > 1;
    html! {
        <div class="ranges">
            { for rows.iter().map(|row| html! { <One row={*row} {several} key={key_of(&row.manner)} /> }) }
            <p class="small soft">{ t!("ranges-scale") }</p>
        </div>
    }
}

#[derive(Properties, PartialEq)]
struct OneProps {
    row: RangeRow,
    several: bool,
}

fn end_name(end: End) -> String {
    match end {
        End::Nearest => t!("range-nearest"),
        End::Usual => t!("range-usual"),
        End::Farthest => t!("range-farthest"),
    }
}

#[component]
fn One(props: &OneProps) -> Html {
    let Some(app) = use_app() else {
        return Html::default();
    };
    let row = props.row;
    let manner: Manner = row.manner;
    let units = app.answers.units;
    let ranges = ranges_of(&app.answers, manner).unwrap_or(row.ranges);
    let what = What::key(row.what);
    let step = |end: End, up: bool| {
        let app = app.clone();
        let range_m = end.of(&ranges);
        let to_m = range_step(units, range_m, up);
        let words = if up {
            t!("range-more", what = end_name(end), to = range(units, to_m))
        } else {
            t!("range-less", what = end_name(end), to = range(units, to_m))
        };
        let click = Callback::from(move |_: MouseEvent| {
            app.dispatch(Action::Pick(
                Field::Range(manner, end),
                Reply::RangesOf(manner, end.put(ranges, to_m)),
            ));
        });
        html! { <button type="button" class="button" aria-label={words} onclick={click}>{ if up { "+" } else { "−" } }</button> }
    };
    html! {
        <fieldset class="ranges__manner">
            <legend class={if props.several { "choices__name" } else { "unseen" }}>
                { manner_name(manner) }
            </legend>
            <div class="ranges__ground">
                { for ENDS.iter().map(|end| html! {
                    <div class="ranges__figure" aria-hidden="true">
                        <FigureDrawing {what} height_px={120.0} px_per_cm={px_per_cm(end.of(&ranges))} />
                    </div>
                }) }
            </div>
            <div class="ranges__fields">
                { for ENDS.iter().map(|end| html! {
                    <div class="ranges__field">
                        <TextField field={Field::Range(manner, *end)} label={end_name(*end)} />
                        <div class="ranges__steps">{ step(*end, false) }{ step(*end, true) }</div>
                    </div>
                }) }
            </div>
        </fieldset>
    }
}
