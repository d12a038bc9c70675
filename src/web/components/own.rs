//! A typed field of a page's own: its text stays with the page, not with the answers.

use crate::need::answers::Units;
use crate::need::input::{InputProblem, Quantity, read};
use crate::web::view::prelude::*;

/// A number that a page keeps for itself: the text, and what it is read as.
#[must_use]
pub fn metric(quantity: Quantity, units: Units, text: &str) -> Option<f64> {
    read(quantity, units, text).ok().map(|read| read.metric)
}

/// What is wrong with the text of a number; nothing is wrong with an empty one.
#[must_use]
pub fn problem(quantity: Quantity, units: Units, text: &str) -> Option<String> {
    match read(quantity, units, text) {
        Ok(_) | Err(InputProblem::Empty) => None,
        Err(problem) => Some(crate::wording::problems::input(units, quantity, &problem)),
    }
}

/// A typed field.
#[derive(Properties, PartialEq)]
pub struct OwnFieldProps {
    /// Its id on the page.
    pub id: AttrValue,
    /// Its label.
    pub label: AttrValue,
    /// A line under the label.
    #[prop_or_default]
    pub hint: Option<AttrValue>,
    /// The unit behind it; empty for words.
    #[prop_or_default]
    pub unit: AttrValue,
    /// Words rather than a number.
    #[prop_or_default]
    pub long: bool,
    /// What stands in it.
    pub text: AttrValue,
    /// What is wrong with it; told when the field is left.
    #[prop_or_default]
    pub wrong: Option<AttrValue>,
    /// Called with each new text.
    pub ontext: Callback<String>,
}

/// A typed field. Its message appears when the field is left, and goes as soon as it is right.
#[component]
pub fn OwnField(props: &OwnFieldProps) -> Html {
    let is_left = use_state(|| true);
    let oninput = {
        let ontext = props.ontext.clone();
        Callback::from(move |event: InputEvent| {
            if let Some(input) = event.target_dyn_into::<web_sys::HtmlInputElement>() {
                ontext.emit(input.value());
            }
        })
    };
    let set_left = |left: bool| {
        let is_left = is_left.clone();
        Callback::from(move |_: FocusEvent| is_left.set(left))
    };
    let wrong = props.wrong.clone().filter(|_| *is_left);
    let hint_id = format!("{}-hint", props.id);
    let error_id = format!("{}-error", props.id);
    let described = match (&wrong, &props.hint) {
        (Some(_), Some(_)) => Some(format!("{hint_id} {error_id}")),
        (Some(_), None) => Some(error_id.clone()),
        (None, Some(_)) => Some(hint_id.clone()),
        (None, None) => None,
    };
    html! {
        <div class="field">
            <label class="field__label" for={props.id.clone()}>{ &props.label }</label>
            if let Some(hint) = &props.hint {
                <span class="field__hint" id={hint_id}>{ hint }</span>
            }
            <div class="field__box">
                <input class={classes!("field__input", props.long.then_some("field__input--long"))}
                    id={props.id.clone()} type="text"
                    inputmode={if props.long { "text" } else { "decimal" }}
                    autocomplete="off" autocapitalize="off" spellcheck="false"
                    value={props.text.clone()} {oninput}
                    onfocus={set_left(false)} onblur={set_left(true)}
                    aria-invalid={wrong.is_some().then_some("true")}
                    aria-describedby={described} />
                if !props.unit.is_empty() {
                    <span class="field__unit">{ &props.unit }</span>
                }
            </div>
            if let Some(wrong) = wrong {
                <p class="field__error" id={error_id}>{ wrong }</p>
            }
        </div>
    }
}

/// A few ready-made values in one tap.
#[derive(Properties, PartialEq)]
pub struct OwnChipsProps {
    /// What they are; also the name of the group.
    pub label: AttrValue,
    /// The group they form.
    pub group: AttrValue,
    /// Key and words of each.
    pub options: Vec<(String, String)>,
    /// The key of the chosen one.
    #[prop_or_default]
    pub chosen: Option<AttrValue>,
    /// Called with the key that was chosen.
    pub onchoose: Callback<String>,
    /// A line under the label.
    #[prop_or_default]
    pub hint: Option<AttrValue>,
}

/// A few ready-made values in one tap.
#[component]
pub fn OwnChips(props: &OwnChipsProps) -> Html {
    html! {
        <fieldset>
            <legend class="choices__name">{ &props.label }</legend>
            if let Some(hint) = &props.hint {
                <p class="field__hint">{ hint }</p>
            }
            <div class="chips">
                { for props.options.iter().map(|(key, words)| {
                    let onchoose = props.onchoose.clone();
                    let value = key.clone();
                    let changed = Callback::from(move |_: Event| onchoose.emit(value.clone()));
                    html! {
                        <label class="chip" key={key.clone()}>
                            <input type="radio" name={props.group.clone()} value={key.clone()}
                                checked={props.chosen.as_ref().is_some_and(|chosen| chosen.as_str() == key)}
                                onchange={changed} />
                            <span>{ words }</span>
                        </label>
                    }
                }) }
            </div>
        </fieldset>
    }
}
