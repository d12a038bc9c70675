//! A typed answer: its label, its unit, and what is wrong with it.

use crate::need::input::Quantity;
use crate::web::fields::{Field, asked, problem, text_in};
use crate::web::state::{Action, use_app};
use crate::web::view::prelude::*;

/// Which field.
#[derive(Properties, PartialEq)]
pub struct Props {
    /// The field.
    pub field: Field,
    /// Its label.
    pub label: AttrValue,
    /// A line under the label.
    #[prop_or_default]
    pub hint: Option<AttrValue>,
    /// Words rather than a number.
    #[prop_or_default]
    pub long: bool,
    /// No text while a ready-made value is chosen beside it.
    #[prop_or_default]
    pub blank: bool,
}

/// The unit a number is read in, if it has one.
#[must_use]
pub fn unit_of(quantity: Quantity, units: crate::need::answers::Units) -> &'static str {
    quantity.unit(units).symbol()
}

/// A typed answer. Its message appears when the field is left, and goes as soon as it is right.
#[component]
pub fn TextField(props: &Props) -> Html {
    let is_left = use_state(|| true);
    let Some(app) = use_app() else {
        return Html::default();
    };
    let field = props.field;
    let id = field.id();
    let wrong = (*is_left)
        .then(|| problem(field, &app.answers, &app.typed))
        .flatten();
    // A question about it waits, too, until the field is left.
    let (doubt, choices) = if *is_left {
        asked(field, &app.answers, &app.typed)
    } else {
        (None, Vec::new())
    };
    let oninput = {
        let app = app.clone();
        Callback::from(move |event: InputEvent| {
            if let Some(input) = event.target_dyn_into::<web_sys::HtmlInputElement>() {
                app.dispatch(Action::Type(field, input.value()));
            }
        })
    };
    let set_left = |left: bool| {
        let is_left = is_left.clone();
        Callback::from(move |_: FocusEvent| is_left.set(left))
    };
    let text = if props.blank && !app.typed.has(&id) {
        String::new()
    } else {
        text_in(field, &app.answers, &app.typed)
    };
    let unit = field
        .quantity()
        .map_or("", |quantity| unit_of(quantity, app.answers.units));
    let error_id = format!("{id}-error");
    let hint_id = format!("{id}-hint");
    let described = match (wrong.is_some(), props.hint.is_some()) {
        (true, true) => Some(format!("{hint_id} {error_id}")),
        (true, false) => Some(error_id.clone()),
        (false, true) => Some(hint_id.clone()),
        (false, false) => None,
    };
    html! {
        <div class="field">
            <label class="field__label" for={id.clone()}>{ &props.label }</label>
            if let Some(hint) = &props.hint {
                <span class="field__hint" id={hint_id}>{ hint }</span>
            }
            <div class="field__box">
                <input class={classes!("field__input", props.long.then_some("field__input--long"))}
                    {id} type="text" inputmode={if props.long { "text" } else { "decimal" }}
                    autocomplete="off" spellcheck="false"
                    value={text} {oninput}
                    onfocus={set_left(false)} onblur={set_left(true)}
                    aria-invalid={wrong.is_some().then_some("true")}
                    aria-describedby={described} />
                if !unit.is_empty() {
                    <span class="field__unit">{ unit }</span>
                }
            </div>
            if let Some(wrong) = wrong {
                <p class="field__error" id={error_id}>{ wrong }</p>
            }
            if let Some(doubt) = doubt {
                <p class="field__doubt" role="status">{ doubt }</p>
            }
            if !choices.is_empty() {
                <p class="field__choices">
                    { for choices.into_iter().map(|(words, reply)| {
                        let app = app.clone();
                        let take = Callback::from(move |_: MouseEvent| {
                            app.dispatch(Action::Pick(field, reply.clone()));
                        });
                        html! { <button type="button" class="button" onclick={take}>{ words }</button> }
                    }) }
                </p>
            }
        </div>
    }
}
