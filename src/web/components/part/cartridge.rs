//! The cartridge, from the list of typical loads.

use crate::need::loads::{OFTEN_MET, RECOIL_GROUPS, loads_of};
use crate::need::questions::Part;
use crate::need::{Reply, Value, value};
use crate::t;
use crate::web::state::{Action, use_app};
use crate::web::view::prelude::*;
use crate::wording::questions::{cartridge, part as part_label, recoil_group};

/// The list as the device shows lists.
#[component]
pub fn Cartridge() -> Html {
    let Some(app) = use_app() else {
        return Html::default();
    };
    let units = app.answers.units;
    let held = match value(&app.answers, Part::Cartridge) {
        Value::One(key) => key,
        _ => String::new(),
    };
    let onchange = {
        let app = app.clone();
        Callback::from(move |event: Event| {
            let key = event
                .target_dyn_into::<web_sys::HtmlSelectElement>()
                .map(|select| select.value())
                .unwrap_or_default();
            let new = if key.is_empty() {
                Value::Nothing
            } else {
                Value::One(key)
            };
            app.dispatch(Action::Reply(Reply::Set(Part::Cartridge, new)));
        })
    };
    html! {
        <div class="field">
            <label class="choices__name" for="field-cartridge">{ part_label(Part::Cartridge) }</label>
            <select class="field__input field__input--long field__select" id="field-cartridge" {onchange}>
                <option value="" selected={held.is_empty()}>{ t!("cartridge-choose") }</option>
                <optgroup label={t!("cartridge-often-met")}>
                    { for OFTEN_MET.iter().map(|key| html! {
                        <option value={*key} selected={held == *key}>{ cartridge(units, key) }</option>
                    }) }
                </optgroup>
                { for RECOIL_GROUPS.iter().map(|group| html! {
                    <optgroup label={recoil_group(*group)}>
                        { for loads_of(*group).map(|load| html! {
                            <option value={load.key} selected={held == load.key && !OFTEN_MET.contains(&load.key)}>{ cartridge(units, load.key) }</option>
                        }) }
                    </optgroup>
                }) }
            </select>
        </div>
    }
}
