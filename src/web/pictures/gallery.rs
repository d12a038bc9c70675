//! Every picture by itself, for the person's own sight once there is advice, else for a made-up
//! shooter: to look at, to try a handle.

use super::demo;
use super::dusk_strip::DuskStrip;
use super::frame::Frame;
use super::picture::{Picture, Told};
use super::shown::Shown;
use crate::need::quarry::What;
use crate::t;
use crate::web::pages::advice::seen;
use crate::web::state::use_app;
use crate::web::view::prelude::*;
use crate::wording::questions::what as name_of;
use crate::wording::{height, number};
use std::rc::Rc;
use web_sys::HtmlSelectElement;

/// What is shown, and its pictures: kept as they are while what is shown stays the same.
struct Set {
    shown: Shown,
    pictures: [Option<Rc<Told>>; 5],
}

impl Set {
    fn of(shown: Shown) -> Self {
        let pictures = [
            Some(shown.aperture()),
            Some(shown.parallax()),
            Some(shown.crossing()),
            shown.flight(),
            Some(shown.on_rifle()),
        ];
        Self {
            pictures: pictures.map(|told| told.map(Rc::new)),
            shown,
        }
    }
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
        Some((advice, app.advice_revision, app.answers.clone()))
    });
    // How sure the advice is follows later, for the same revision, and changes no picture.
    let drawn_from = own
        .as_ref()
        .map(|(_, revision, answers)| (*revision, answers.clone()));
    let own = use_memo(drawn_from, |_| {
        let (advice, _, answers) = own.as_ref()?;
        seen::shown(advice, answers).map(Set::of)
    });
    let key = use_state_eq(|| "roe_deer".to_owned());
    let made_up = use_memo((*key).clone(), |key| demo::shown(key).map(Set::of));
    let is_own = own.is_some();
    let Some(set) = own.as_ref().as_ref().or(made_up.as_ref().as_ref()) else {
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
            { seen::view(&set.shown) }
            { for set.pictures.iter().flatten().map(|told| html! {
                <div class="gallery__one"><Picture told={told.clone()} /></div>
            }) }
            { evening(&set.shown) }
        </main>
    }
}
