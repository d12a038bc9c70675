//! Every picture by itself, with a made-up shooter: to look at, to test, to try a handle.

use super::demo;
use super::dusk_strip::StripRow;
use super::silhouette::Silhouette;
use super::through_sight::ThroughSight;
use crate::eye::Optics;
use crate::need::quarry::What;
use crate::sight::ReticleFamily;
use crate::t;
use web_sys::HtmlSelectElement;
use yew::prelude::*;

const FAMILIES: [(ReticleFamily, &str); 11] = [
    (ReticleFamily::FineCrosshair, "fine"),
    (ReticleFamily::ThickThin, "thick-thin"),
    (ReticleFamily::ThreePost, "three-post"),
    (ReticleFamily::HeavyNight, "heavy"),
    (ReticleFamily::Post, "post"),
    (ReticleFamily::CentreDot, "dot"),
    (ReticleFamily::CircleDot, "circle-dot"),
    (ReticleFamily::MradMarks, "mrad"),
    (ReticleFamily::MoaMarks, "moa"),
    (ReticleFamily::HoldMarks, "holds"),
    (ReticleFamily::MarkGrid, "grid"),
];

fn chosen(event: &Event) -> Option<String> {
    event
        .target_dyn_into::<HtmlSelectElement>()
        .map(|select| select.value())
}

/// All pictures, one below the other.
#[component]
pub fn Gallery() -> Html {
    let key = use_state_eq(|| "roe_deer".to_owned());
    let family = use_state_eq(|| ReticleFamily::ThickThin);
    let (Some(night), Some(eye)) = (demo::night(51.0), demo::eye()) else {
        return html! {};
    };
    let evening = use_memo((), |()| demo::evening(&night));
    let sight = use_memo(*family, |family| demo::sight(*family));
    let quarry = use_memo((*key).clone(), |key| demo::quarry(key));
    let surroundings = use_memo((), |()| demo::surroundings());
    let rows = vec![
        StripRow {
            name: t!("demo-bare-eye").into(),
            until: demo::until(&evening, &night, &eye, &Optics::bare_eye()),
            pick: false,
        },
        StripRow {
            name: t!("demo-this-sight").into(),
            until: demo::until(&evening, &night, &eye, &Optics::sight(7.0, 50.0, 0.9)),
            pick: true,
        },
        StripRow {
            name: t!("demo-that-sight").into(),
            until: demo::until(&evening, &night, &eye, &Optics::sight(4.0, 32.0, 0.88)),
            pick: false,
        },
    ];
    let on_quarry = {
        let key = key.clone();
        Callback::from(move |event: Event| {
            if let Some(value) = chosen(&event) {
                key.set(value);
            }
        })
    };
    let on_family = {
        let family = family.clone();
        Callback::from(move |event: Event| {
            let value = chosen(&event);
            if let Some((to, _)) = FAMILIES
                .iter()
                .find(|(_, name)| Some(*name) == value.as_deref())
            {
                family.set(*to);
            }
        })
    };
    html! {
        <div class="gallery">
            <h1>{ t!("demo-title") }</h1>
            <p class="soft">{ t!("demo-note") }</p>
            <p class="gallery__choice">
                <label>{ t!("demo-quarry") }{ " " }
                    <select id="demo-quarry" onchange={on_quarry}>
                        { for What::all().map(|what| html! {
                            <option value={what.key()} selected={what.key() == key.as_str()}>
                                { what.key().replace('_', " ") }
                            </option>
                        }) }
                    </select>
                </label>
                <label>{ t!("demo-reticle") }{ " " }
                    <select id="demo-reticle" onchange={on_family}>
                        { for FAMILIES.iter().map(|(of, name)| html! {
                            <option value={*name} selected={*of == *family}>{ *name }</option>
                        }) }
                    </select>
                </label>
            </p>
            if let Some(quarry) = (*quarry).clone() {
                <p class="gallery__row">
                    <Silhouette figure={quarry.figure.clone()} height_px=96.0
                        aiming_circle_cm={Some(quarry.aiming_circle_cm)} />
                </p>
                <ThroughSight sight={(*sight).clone()} {quarry}
                    surroundings={(*surroundings).clone()} {eye} evening={(*evening).clone()}
                    {rows} ranges_m={(5.0, 80.0, 1500.0)} magnification=4.0 minute=24.0 />
            }
        </div>
    }
}
