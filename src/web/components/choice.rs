//! An answer as a large row, and a few short ones side by side.

use crate::web::view::prelude::*;

/// One answer.
#[derive(Properties, PartialEq)]
pub struct ChoiceProps {
    /// The group it belongs to.
    pub group: AttrValue,
    /// Its key within the group.
    pub value: AttrValue,
    /// Its words.
    pub name: AttrValue,
    /// A second line.
    #[prop_or_default]
    pub hint: Option<AttrValue>,
    /// A small drawing to scale.
    #[prop_or_default]
    pub drawing: Option<Html>,
    /// One among several that can be chosen together.
    #[prop_or_default]
    pub many: bool,
    /// Chosen.
    pub chosen: bool,
    /// "Not sure", set apart.
    #[prop_or_default]
    pub unsure: bool,
    /// Called when it is chosen or left.
    pub onchoose: Callback<bool>,
    /// Shown under it while it is chosen.
    #[prop_or_default]
    pub more: Option<Html>,
}

/// One answer as a row.
#[component]
pub fn Choice(props: &ChoiceProps) -> Html {
    let id = format!("{}-{}", props.group, props.value);
    let hint_id = format!("{id}-hint");
    let changed = {
        let onchoose = props.onchoose.clone();
        Callback::from(move |event: Event| {
            let checked = event
                .target_dyn_into::<web_sys::HtmlInputElement>()
                .is_some_and(|input| input.checked());
            onchoose.emit(checked);
        })
    };
    html! {
        <div class={classes!("choice", props.unsure.then_some("choice--unsure"))}>
            <label class="choice__label" for={id.clone()}>
                <input class="choice__input" id={id}
                    type={if props.many { "checkbox" } else { "radio" }}
                    name={props.group.clone()} value={props.value.clone()}
                    checked={props.chosen}
                    aria-describedby={props.hint.is_some().then(|| hint_id.clone())}
                    onchange={changed} />
                <span class="choice__words">
                    <span class="choice__name">{ &props.name }</span>
                    if let Some(hint) = &props.hint {
                        <span class="choice__hint" id={hint_id}>{ hint }</span>
                    }
                </span>
                if let Some(drawing) = &props.drawing {
                    <span class="choice__drawing" aria-hidden="true">{ drawing.clone() }</span>
                }
            </label>
            if let Some(more) = props.more.as_ref().filter(|_| props.chosen) {
                <div class="choice__more">{ more.clone() }</div>
            }
        </div>
    }
}

/// A few short answers.
#[derive(Properties, PartialEq)]
pub struct SegmentsProps {
    /// What they answer; read, not seen.
    pub label: AttrValue,
    /// The group they form.
    pub group: AttrValue,
    /// Key and words of each.
    pub options: Vec<(AttrValue, AttrValue)>,
    /// The key of the chosen one.
    pub chosen: AttrValue,
    /// Called with the key that was chosen.
    pub onchoose: Callback<AttrValue>,
}

/// A few short answers side by side.
#[component]
pub fn Segments(props: &SegmentsProps) -> Html {
    html! {
        <fieldset>
            <legend class="unseen">{ &props.label }</legend>
            <div class="segments">
                { for props.options.iter().map(|(value, words)| {
                    let onchoose = props.onchoose.clone();
                    let key = value.clone();
                    let changed = Callback::from(move |_: Event| onchoose.emit(key.clone()));
                    html! {
                        <label class="segment" key={value.to_string()}>
                            <input type="radio" name={props.group.clone()} value={value.clone()}
                                checked={*value == props.chosen} onchange={changed} />
                            <span>{ words }</span>
                        </label>
                    }
                }) }
            </div>
        </fieldset>
    }
}
