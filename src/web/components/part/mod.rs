//! One control of a question, by what kind of answer it takes.

mod cartridge;
mod number;
mod options;
mod quarry;
mod ranges;

use super::field::TextField;
use crate::need::questions::{Control, Part, is_part_asked};
use crate::need::{Reply, Value, value};
use crate::t;
use crate::web::fields::Field;
use crate::web::state::{Action, use_app};
use crate::web::view::prelude::*;
use crate::wording::questions::{month, part as part_label, part_hint};

/// Which control.
#[derive(Properties, PartialEq)]
pub struct Props {
    /// The part.
    pub part: Part,
    /// The page's heading names it already.
    #[prop_or_default]
    pub alone: bool,
}

/// One control of a question.
#[component]
pub fn PartControl(props: &Props) -> Html {
    let Some(app) = use_app() else {
        return Html::default();
    };
    let part = props.part;
    if !is_part_asked(part, &app.answers) {
        return Html::default();
    }
    let label = part_label(part);
    let legend = html! {
        <legend class={if props.alone { "unseen" } else { "choices__name" }}>{ label.clone() }</legend>
    };
    match part.control() {
        Control::One(list) => html! {
            <fieldset class="choices__set">{ legend }<options::OneOf {part} {list} /></fieldset>
        },
        Control::Many { options, shares } => html! {
            <fieldset class="choices__set">{ legend }<options::SomeOf {part} list={options} {shares} /></fieldset>
        },
        Control::Quarry => html! {
            <fieldset class="choices__set">{ legend }<quarry::Quarry /></fieldset>
        },
        Control::Cartridge => html! { <cartridge::Cartridge /> },
        Control::Number(quantity, presets) => html! {
            <number::Number {part} {quantity} {presets} />
        },
        Control::Decade(middles) => html! { <number::Age {middles} /> },
        Control::Ranges => html! { <ranges::RangesControl /> },
        Control::Tick => {
            let onchoose = {
                let app = app.clone();
                Callback::from(move |on: bool| {
                    let new = if on {
                        Value::Flag(true)
                    } else {
                        Value::Nothing
                    };
                    app.dispatch(Action::Reply(Reply::Set(part, new)));
                })
            };
            html! {
                <super::Choice group={part.key()} value="yes" name={label} many={true}
                    chosen={value(&app.answers, part) == Value::Flag(true)} {onchoose} />
            }
        }
        Control::YesNo => {
            let chosen = match value(&app.answers, part) {
                Value::Flag(true) => "yes",
                Value::Flag(false) => "no",
                _ => "",
            };
            let onchoose = {
                let app = app.clone();
                Callback::from(move |key: AttrValue| {
                    app.dispatch(Action::Reply(Reply::Set(part, Value::Flag(key == "yes"))));
                })
            };
            html! {
                <div>
                    <p class="choices__name" aria-hidden="true">{ label.clone() }</p>
                    <super::Segments label={label} group={part.key()} {chosen} {onchoose}
                        options={vec![("yes".into(), t!("answer-yes").into()), ("no".into(), t!("answer-no").into())]} />
                </div>
            }
        }
        Control::Month => {
            let chosen = match value(&app.answers, part) {
                Value::Number(month) => month as usize,
                _ => 0,
            };
            let onchange = {
                let app = app.clone();
                Callback::from(move |event: Event| {
                    let month = event
                        .target_dyn_into::<web_sys::HtmlSelectElement>()
                        .and_then(|select| crate::plain::decimal(&select.value()));
                    let new = month
                        .filter(|month| *month > 0.0)
                        .map_or(Value::Nothing, Value::Number);
                    app.dispatch(Action::Reply(Reply::Set(part, new)));
                })
            };
            let id = format!("field-{}", part.key());
            html! {
                <div class="field">
                    <label class="field__label" for={id.clone()}>{ label }</label>
                    <select class="field__input field__select" {id} {onchange}>
                        <option value="0" selected={chosen == 0}>{ t!("answer-none") }</option>
                        { for (1..=12_u8).map(|each| html! {
                            <option value={each.to_string()} selected={chosen == usize::from(each)}>{ month(each) }</option>
                        }) }
                    </select>
                </div>
            }
        }
        Control::Text { .. } => {
            html! { <TextField field={Field::Part(part)} {label} long={true} hint={part_hint(part).map(AttrValue::from)} /> }
        }
    }
}
