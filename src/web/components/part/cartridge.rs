//! The cartridge, from the list of typical loads.

use super::part_label;
use crate::flight::cartridges::{LoadKind, typical_loads};
use crate::need::questions::Part;
use crate::need::{Reply, Value, value};
use crate::t;
use crate::web::state::{Action, use_app};
use crate::wording::{bullet_mass, velocity};
use yew::prelude::*;

const KINDS: [LoadKind; 5] = [
    LoadKind::CentreFire,
    LoadKind::Rimfire,
    LoadKind::Air,
    LoadKind::Slug,
    LoadKind::MuzzleLoader,
];

fn kind_name(kind: LoadKind) -> String {
    match kind {
        LoadKind::CentreFire => t!("load-centre-fire"),
        LoadKind::Rimfire => t!("load-rimfire"),
        LoadKind::Air => t!("load-air"),
        LoadKind::Slug => t!("load-slug"),
        LoadKind::MuzzleLoader => t!("load-muzzle-loader"),
    }
}

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
                { for KINDS.iter().map(|kind| html! {
                    <optgroup label={kind_name(*kind)}>
                        { for typical_loads().iter().filter(|load| load.kind == *kind).map(|load| html! {
                            <option value={load.key} selected={held == load.key}>
                                { t!("cartridge-row", name = load.designation,
                                    bullet = bullet_mass(units, load.bullet_g),
                                    velocity = velocity(units, load.muzzle_velocity_m_s)) }
                            </option>
                        }) }
                    </optgroup>
                }) }
            </select>
        </div>
    }
}
