//! Every picture by itself, for the person's own sight once there is advice, else for a made-up
//! shooter: to look at, to try a handle.

use super::demo;
use super::dusk_strip::DuskStrip;
use super::frame::Frame;
use super::shown::Shown;
use crate::need::quarry::What;
use crate::t;
use crate::web::pages::advice::seen;
use crate::web::state::use_app;
use crate::web::view::prelude::*;
use crate::wording::questions::what as name_of;
use crate::wording::{height, number};
use web_sys::HtmlSelectElement;

fn picture(told: super::picture::Told) -> Html {
    html! { <div class="gallery__one">{ told.shown() }</div> }
}

fn evening(told: &Shown) -> Html {
    let sources = vec![
        AttrValue::from(t!("evening-source")),
        AttrValue::from(t!(
            "picture-inputs",
            what = t!(
                "evening-inputs",
                age = number(told.eye.age_years(), 0),
                ground = number(told.surroundings.ground_reflectance, 2),
                eye = height(told.units, told.surroundings.eye_height_m)
            )
        )),
    ];
    html! {
        <Frame title={t!("evening-title")} scale={t!("evening-scale")} leaves_out={t!("evening-leaves-out")}
            {sources} file="evening">
            <DuskStrip evening={told.evening.clone()} rows={told.rows.clone()} minute={Some(told.minute)}
                label={t!("view-dusk")} />
        </Frame>
    }
}

/// All pictures, one below the other.
#[component]
pub fn Gallery() -> Html {
    let app = use_app();
    let own = app.and_then(|app| {
        let (advice, _) = app.advice()?;
        Some((advice, app.answers.clone()))
    });
    let own = use_memo(own, |own| {
        let (advice, answers) = own.as_ref()?;
        seen::shown(advice, answers)
    });
    let key = use_state_eq(|| "roe_deer".to_owned());
    let made_up = use_memo((*key).clone(), |key| demo::shown(key));
    let is_own = own.is_some();
    let Some(told) = own.as_ref().as_ref().or(made_up.as_ref().as_ref()) else {
        return html! {};
    };
    let on_quarry = Callback::from(move |event: Event| {
        if let Some(select) = event.target_dyn_into::<HtmlSelectElement>() {
            key.set(select.value());
        }
    });
    html! {
        <main class="page page--wide gallery" id="main">
            <h1 id="title" tabindex="-1">{ t!("demo-title") }</h1>
            if is_own {
                <p class="soft">{ t!("demo-own") }</p>
            } else {
                <p class="soft">{ t!("demo-note") }</p>
                <p class="gallery__choice">
                    <label for="demo-quarry">{ t!("demo-quarry") }</label>
                    <select id="demo-quarry" class="view__select" onchange={on_quarry}>
                        { for What::all().map(|what| html! {
                            <option value={what.key()} selected={what.key() == "roe_deer"}>{ name_of(what.key()) }</option>
                        }) }
                    </select>
                </p>
            }
            { seen::view(told) }
            { picture(told.aperture()) }
            { picture(told.parallax()) }
            { picture(told.crossing()) }
            if let Some(flight) = told.flight() {
                { picture(flight) }
            }
            { picture(told.on_rifle()) }
            { evening(told) }
        </main>
    }
}
