//! Every picture by itself, with a made-up shooter: to look at, to test, to try a handle.

use super::aperture::{Beam, EyeAperture};
use super::crossing::{Crossing, ShownField};
use super::demo;
use super::dusk_strip::{DuskStrip, StripRow};
use super::frame::Frame;
use super::on_rifle::OnRifle;
use super::parallax::ParallaxPicture;
use super::through_sight::ThroughSight;
use super::trajectory::FlightPicture;
use crate::eye::Optics;
use crate::need::quarry::What;
use crate::rifle::mounting::TubeLayout;
use crate::sight::ReticleFamily;
use crate::sight::reticle::TYPICAL_HOLDS_MRAD;
use crate::t;
use crate::web::components::figure::FigureDrawing;
use crate::web::view::prelude::*;
use std::rc::Rc;
use web_sys::HtmlSelectElement;

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
    let holds = Rc::new(vec![(200.0, 0.64), (300.0, 1.55), (400.0, 2.66)]);
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
        <main class="page page--wide gallery" id="main">
            <h1 id="title" tabindex="-1">{ t!("demo-title") }</h1>
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
                    <FigureDrawing what={(*key).clone()} height_px=96.0 />
                </p>
                <ThroughSight sight={(*sight).clone()} quarry={quarry.clone()}
                    surroundings={(*surroundings).clone()} {eye} evening={(*evening).clone()}
                    rows={rows.clone()} holds={holds} ranges_m={(5.0, 80.0, 1500.0)} magnification=4.0 minute=24.0 />
                <EyeAperture beams={vec![
                    Beam { name: t!("demo-this-sight").into(), magnification_low: 2.5, magnification_high: 10.0, objective_mm: 50.0 },
                    Beam { name: t!("demo-that-sight").into(), magnification_low: 4.0, magnification_high: 4.0, objective_mm: 32.0 },
                ]} {eye} luminance_cd_m2=0.01 magnification=8.0 />
                <ParallaxPicture objective_mm=50.0 magnification=10.0 fixed_at_m=100.0
                    adjustable_from_m=10.0 eye_pupil_mm=3.0 aiming_circle_cm={quarry.aiming_circle_cm}
                    ranges_m={(5.0, 200.0, 1500.0)} />
                <Crossing figure={quarry.figure.clone()} length_m=1.2 run_m_s=8.0
                    fields={vec![
                        ShownField { name: t!("demo-this-sight").into(), apparent_deg: 22.0, magnification: 2.5 },
                        ShownField { name: t!("demo-that-sight").into(), apparent_deg: 20.0, magnification: 4.0 },
                    ]}
                    flight_s={demo::flight_s()} ranges_m={(5.0, 40.0, 150.0)} />
                <FlightPicture path={demo::path()} zero_m=100.0
                    circle_radius_cm={0.5 * quarry.aiming_circle_cm} marks_mrad={TYPICAL_HOLDS_MRAD.to_vec()}
                    click_mrad=0.1 range_m=200.0 />
                <OnRifle clearances={demo::clearances()} tube={TubeLayout::typical(330.0, 50.0, 30.0)}
                    length_mm=330.0 eye_relief_mm=90.0 saddle_mm=4.0 />
                <Frame title={t!("evening-title")} scale={t!("evening-scale")} leaves_out={t!("evening-leaves-out")}
                    sources={vec![AttrValue::from(t!("evening-source"))]} file="evening">
                    <DuskStrip evening={(*evening).clone()} rows={rows.clone()} minute={Some(30.0)} label={t!("view-dusk")} />
                </Frame>
            }
        </main>
    }
}
