//! The view through the sight: both focal planes on one handle, over the dusk strip.

use super::attribute::Pen;
use super::dusk_strip::{DuskStrip, StripRow};
use super::frame::Frame;
use super::painter::{Painter, Slot, Stand, Through, cutout, wood_path};
use super::parallax::said_aside;
use super::picture::REST_MS;
use super::sights::{Quarry, Sight, Surroundings};
use super::size::{use_id, use_width};
use super::slider::{Scale, Slider};
use super::view_words::{plane_rules, said_along, said_hold, said_power};
use crate::advice::report;
use crate::drawing::dusk::Evening;
use crate::drawing::glow::Glow;
use crate::eye::Eye;
use crate::need::answers::Units;
use crate::plain::Gathered;
use crate::sight::{FocalPlane, ReticleFamily};
use crate::t;
use crate::web::platform::Timeout;
use crate::web::view::prelude::*;
use crate::wording::advice::word;
use crate::wording::{cm, height, number, range};
use std::cell::Cell;
use std::rc::Rc;

/// What [`ThroughSight`] is told.
#[derive(Properties, PartialEq)]
pub struct ThroughSightProps {
    /// The sight.
    pub sight: Rc<Sight>,
    /// A second one to compare it with.
    #[prop_or_default]
    pub other: Option<Rc<Sight>>,
    /// What is looked at.
    pub quarry: Rc<Quarry>,
    /// What surrounds it.
    pub surroundings: Rc<Surroundings>,
    /// The eye behind the sight.
    pub eye: Eye,
    /// The evening.
    pub evening: Rc<Evening>,
    /// Rows of the dusk strip.
    #[prop_or_default]
    pub rows: Vec<StripRow>,
    /// Nearest, first and farthest range of the handle in m.
    pub ranges_m: (f64, f64, f64),
    /// Magnification to begin with.
    pub magnification: f64,
    /// Minute after sunset to begin with.
    pub minute: f64,
    /// Where the person's own load falls: range in m and hold in mrad under the aim.
    #[prop_or_default]
    pub holds: Rc<Vec<(f64, f64)>>,
    /// Units of the words.
    #[prop_or_default]
    pub units: Units,
}

/// What is chosen with buttons, as they stand.
const THROUGH: [Through; 3] = [Through::This, Through::Other, Through::BareEye];
const GLOWS: [Option<Glow>; 3] = [None, Some(Glow::Night), Some(Glow::Day)];

fn glow_name(glow: Option<Glow>) -> String {
    match glow {
        None => t!("view-lit-off"),
        Some(Glow::Night) => t!("view-lit-night"),
        Some(Glow::Day) => t!("view-lit-day"),
    }
}

/// The reticle's family, through what one looks, how the centre is lit: places in the lists.
type Chosen = (Option<usize>, usize, usize);

/// A row of buttons of which one is pressed.
fn buttons(label: String, rows: &[(String, bool)], press: &Rc<dyn Fn(usize)>) -> Html {
    html! {
        <div class="view__toggles" role="group" aria-label={label.clone()}>
            <span class="view__toggles-name" aria-hidden="true">{ label }</span>
            { for rows.iter().enumerate().map(|(n, (name, pressed))| {
                let press = press.clone();
                let onclick = Callback::from(move |_: MouseEvent| press(n));
                html! {
                    <button type="button" class="button" aria-pressed={pressed.to_string()} {onclick}>{ name.clone() }</button>
                }
            }) }
        </div>
    }
}

/// The view through the sight with its handles.
#[component]
pub fn ThroughSight(props: &ThroughSightProps) -> Html {
    let id = use_id("view");
    let root = use_node_ref();
    let width = use_width(root.clone(), 328.0);
    let (shape, rounds) = cutout(width);
    // Choices: the reticle's family, through what one looks, how the centre is lit.
    let chosen = use_state_eq::<Chosen>(|| (None, 0, 0));
    let (family, through, glow) = *chosen;
    let with_family = |sight: &Rc<Sight>| match family {
        Some(n) => Rc::new(sight.with_family(ReticleFamily::ALL[n])),
        None => sight.clone(),
    };
    let sight = with_family(&props.sight);
    let other = props.other.as_ref().map(with_family);
    let slots: Rc<[Slot; 2]> = {
        let n = (props.quarry.figure.pieces.len(), props.holds.len());
        (*use_memo((n, rounds), |((pieces, holds), _)| {
            let slot = || Slot::new(*pieces, *holds);
            Rc::new([slot(), slot()])
        }))
        .clone()
    };
    let blur = use_memo((), |()| Pen::default());
    let said = use_memo((), |()| Pen::default());
    let eye_said = use_memo((), |()| Pen::default());
    let scale = use_memo((), |()| Pen::default());
    let wood = use_memo((), |()| AttrValue::from(wood_path()));
    let (near_m, first_m, far_m) = props.ranges_m;
    let stand = use_memo((), |()| {
        Cell::new(Stand {
            magnification: props.magnification,
            range_m: first_m,
            minute: props.minute,
            glow: None,
            through: Through::This,
            aside_mm: 0.0,
            behind_mm: 0.0,
        })
    });
    {
        // Values from outside replace what the handles say.
        let stand = stand.clone();
        use_memo(
            (props.magnification, first_m, props.minute),
            |(magnification, range_m, minute)| {
                stand.set(Stand {
                    magnification: *magnification,
                    range_m: *range_m,
                    minute: *minute,
                    ..stand.get()
                });
            },
        );
    }
    stand.set(Stand {
        glow: GLOWS[glow],
        through: THROUGH[through],
        ..stand.get()
    });
    let painter = Rc::new(Painter {
        sight: sight.clone(),
        other: other.clone(),
        quarry: props.quarry.clone(),
        surroundings: props.surroundings.clone(),
        eye: props.eye,
        evening: props.evening.clone(),
        holds: props.holds.clone(),
        units: props.units,
        cutout: shape,
        id: id.clone(),
        slots: slots.clone(),
        blur: blur.clone(),
        said: said.clone(),
        eye_said: eye_said.clone(),
        scale: scale.clone(),
        corners_px: std::array::from_fn(|_| Cell::new((0.0, 0.0))),
    });
    let rest = use_memo((), |()| Cell::new(None::<Timeout>));
    {
        // After every rendering: the renderer may have made elements anew, and words that were
        // still to follow would be those of before.
        let (painter, stand, rest) = (painter.clone(), stand.clone(), rest.clone());
        use_effect(move || {
            rest.set(None);
            for (slot, corner) in painter.slots.iter().zip(&painter.corners_px) {
                slot.forget();
                corner.set(slot.drawing.corner_px());
            }
            for pen in [
                &*painter.said,
                &*painter.eye_said,
                &*painter.blur,
                &*painter.scale,
            ] {
                pen.forget();
            }
            painter.paint(stand.get(), true);
        });
    }
    let moved = |change: fn(Stand, f64) -> Stand| {
        let (painter, stand, rest) = (painter.clone(), stand.clone(), rest.clone());
        Callback::from(move |to: f64| {
            let now = change(stand.get(), to);
            stand.set(now);
            painter.paint(now, false);
            let (painter, stand) = (painter.clone(), stand.clone());
            rest.set(Some(Timeout::new(REST_MS, move || {
                painter.paint(stand.get(), true);
            })));
        })
    };
    let on_power = moved(|stand, magnification| Stand {
        magnification,
        ..stand
    });
    let on_range = moved(|stand, range_m| Stand { range_m, ..stand });
    let on_minute = moved(|stand, minute| Stand { minute, ..stand });
    let on_aside = moved(|stand, aside_mm| Stand { aside_mm, ..stand });
    let on_along = moved(|stand, behind_mm| Stand { behind_mm, ..stand });
    let spoken_power = use_callback((), |to: f64, ()| said_power(to));
    let spoken_range = use_callback(props.units, |to: f64, units| range(*units, to));
    let spoken_aside = use_callback((), |to: f64, ()| said_aside(to));
    let spoken_along = use_callback((), |to: f64, ()| said_along(to));
    let press = |change: fn(Chosen, usize) -> Chosen| {
        let chosen = chosen.clone();
        let press: Rc<dyn Fn(usize)> = Rc::new(move |n| chosen.set(change(*chosen, n)));
        press
    };
    let on_through = press(|(family, _, glow), n| (family, n, glow));
    let on_glow = press(|(family, through, _), n| (family, through, n));
    let on_family = {
        let chosen = chosen.clone();
        Callback::from(move |event: Event| {
            let Some(select) = event.target_dyn_into::<web_sys::HtmlSelectElement>() else {
                return;
            };
            let n = usize::try_from(select.selected_index()).unwrap_or(0);
            chosen.set((n.checked_sub(1), chosen.1, chosen.2));
        })
    };
    let through_rows: Vec<(String, bool)> = THROUGH
        .iter()
        .enumerate()
        .filter(|(_, one)| **one != Through::Other || other.is_some())
        .map(|(n, one)| {
            let name = match one {
                Through::This => sight.name.clone(),
                Through::Other => other.as_ref().map(|o| o.name.clone()).unwrap_or_default(),
                Through::BareEye => t!("view-bare-eye"),
            };
            (name, n == through)
        })
        .gathered();
    // Without a second sight the bare eye is the second button.
    let on_through = if other.is_some() {
        on_through
    } else {
        Rc::new(move |n: usize| on_through(2 * n)) as Rc<dyn Fn(usize)>
    };
    let glow_rows: Vec<(String, bool)> = GLOWS
        .iter()
        .enumerate()
        .map(|(n, one)| (glow_name(*one), n == glow))
        .gathered();
    let (least, most) = other.iter().fold(
        (sight.magnification_low, sight.magnification_high),
        |(least, most), other| {
            (
                least.min(other.magnification_low),
                most.max(other.magnification_high),
            )
        },
    );
    let now = stand.get();
    // Rounds may have no room for more than a range at the pointer.
    let farthest = props.holds.last().filter(|_| rounds).map(|hold| {
        let said = said_hold(props.units, *hold);
        html! { { ": " }{ said } }
    });
    let rules = plane_rules(painter.sight_at(&now));
    let picture = |n: usize, plane: FocalPlane, name: String, rule: String| {
        let slot = &slots[n];
        let clip = format!("{id}-clip-{n}");
        let (w, h, r) = (shape.width_px, shape.height_px, 0.5 * shape.field_px);
        let (cx, cy) = (0.5 * w, 0.5 * h);
        let label = format!("{id}-name-{n}");
        html! {
            <figure class="view__slot">
                <figcaption class="view__caption">
                    <b id={label.clone()}>
                        { name }
                        if sight.pick == Some(plane) {
                            <span class="view__pick">{ t!("view-pick") }</span>
                        }
                    </b>
                    <span class="view__rule">{ rule }</span>
                    <span class="view__covers" ref={slot.covers.node.clone()}></span>
                </figcaption>
                <svg class="view__picture" data-keep="" role="img" aria-labelledby={label} ref={slot.drawing.node.clone()}
                    width={shortest(w)} height={shortest(h)} viewBox={filled!("0 0 {} {}", w, h)}>
                    <defs>
                        <radialGradient id={format!("{id}-shade-{n}")} gradientUnits="userSpaceOnUse" ref={slot.gradient.node.clone()}></radialGradient>
                        <clipPath id={clip.clone()}><circle cx={shortest(cx)} cy={shortest(cy)} r={shortest(r)} /></clipPath>
                        if n == 0 {
                            <filter id={format!("{id}-soft")} x="-10%" y="-10%" width="120%" height="120%">
                                <feGaussianBlur ref={blur.node.clone()} stdDeviation="0" />
                            </filter>
                        }
                    </defs>
                    if rounds {
                        <circle class="view__tube" cx={shortest(cx)} cy={shortest(cy)} r={shortest(r)} />
                    } else {
                        <rect class="view__tube" width={shortest(w)} height={shortest(h)} />
                    }
                    <g clip-path={format!("url(#{clip})")}>
                        <rect class="view__scene" ref={slot.sky.node.clone()} width={shortest(w)} height={shortest(h)} />
                        <path class="view__scene" ref={slot.wood.node.clone()} d={(*wood).clone()} />
                        <rect class="view__scene" ref={slot.ground.node.clone()} width={shortest(w)} height={shortest(h + 4.0)} />
                        <g ref={slot.quarry.node.clone()}>
                            { for props.quarry.figure.pieces.iter().zip(&slot.pieces).map(|(piece, pen)| html! {
                                <path class="view__piece" ref={pen.node.clone()} d={piece.path.clone()} />
                            }) }
                        </g>
                        <g ref={slot.reticle.node.clone()}></g>
                        <rect class="view__shade" ref={slot.shade.node.clone()} width={shortest(w)} height={shortest(h)} />
                    </g>
                    { for slot.holds.iter().map(|[pen, lead, name]| html! {
                        <g ref={pen.node.clone()}>
                            <path class="view__lead" ref={lead.node.clone()} />
                            <path class="view__holds" d="M0 0l6 -3.5v7Z" />
                            <text class="view__hold-name" y="4.5" ref={name.node.clone()}></text>
                        </g>
                    }) }
                    <g ref={slot.bracket.node.clone()}></g>
                    <text class="view__bracket-text" ref={slot.bracket_text.node.clone()}></text>
                </svg>
            </figure>
        }
    };
    let light = painter.light(props.minute, sight.glare_index, 0.0);
    let optics = sight.optics(props.magnification);
    let seen = crate::eye::equivalent_luminance(
        light.ground_cd_m2(),
        &props.eye,
        &optics,
        props.surroundings.sp_ratio,
    );
    let sources = vec![
        AttrValue::from(t!(
            "view-source-scale",
            apparent = number(sight.apparent_field_deg, 0),
            reference = number(sight.reference_magnification, 1)
        )),
        AttrValue::from(t!(
            "view-source-light",
            ground = number(props.surroundings.ground_reflectance, 2),
            coat = number(props.quarry.dark_reflectance, 2),
            pupil = number(seen.pupil_mm, 1),
            beam = number(seen.beam_mm, 1),
            transmission = number(sight.transmission_night, 2),
            glare = number(100.0 * sight.glare_index, 1)
        )),
        AttrValue::from(t!("view-source-threshold")),
        AttrValue::from(t!("view-source-eye")),
        AttrValue::from(t!("view-source-lit")),
        AttrValue::from(t!(
            "picture-inputs",
            what = t!(
                "view-inputs",
                sight = sight.name.clone(),
                age = number(props.eye.age_years(), 0),
                quarry = props.quarry.name.to_string(),
                circle = cm(props.units, props.quarry.aiming_circle_cm),
                height = height(props.units, props.surroundings.eye_height_m)
            )
        )),
    ];
    let own = word(
        "reticle",
        &report::Reticle::from(props.sight.reticle.family),
    );
    let select = format!("{id}-reticle");
    html! {
        <Frame title={t!("view-title")} scale="" leaves_out={t!("view-leaves-out")} {sources}
            file="through-the-sight">
            <div class={if rounds { "view view--rounds" } else { "view" }} ref={root}>
                <div class="view__pair">
                    { picture(0, FocalPlane::First, t!("view-first"), rules.0) }
                    { picture(1, FocalPlane::Second, t!("view-second"), rules.1) }
                    if through != 2 && !props.holds.is_empty() {
                        <p class="view__key">{ "◂ " }{ t!("view-key") }{ for farthest.into_iter() }</p>
                    }
                </div>
                if most > least {
                    <Slider label={t!("view-power")} {least} {most} value={now.magnification} step=0.1
                        page=1.0 scale={Scale::Ratio} spoken={spoken_power} on_input={on_power} />
                }
                <DuskStrip evening={props.evening.clone()} rows={props.rows.clone()}
                    minute={Some(now.minute)} label={t!("view-dusk")} on_input={on_minute} />
                <Slider label={t!("view-range")} least={near_m} most={far_m} value={now.range_m} step=1.0
                    page=10.0 scale={Scale::Ratio} spoken={spoken_range} on_input={on_range} />
                { buttons(t!("view-through"), &through_rows, &on_through) }
                if sight.lit {
                    { buttons(t!("view-lit"), &glow_rows, &on_glow) }
                }
                <p class="view__choice">
                    <label for={select.clone()}>{ t!("view-reticle") }</label>
                    <select id={select} class="view__select" onchange={on_family}>
                        <option value="own" selected={family.is_none()}>{ t!("view-reticle-own", name = own) }</option>
                        { for ReticleFamily::ALL.iter().enumerate().map(|(n, of)| html! {
                            <option value={n.to_string()} selected={family == Some(n)}>
                                { word("reticle", &report::Reticle::from(*of)) }
                            </option>
                        }) }
                    </select>
                </p>
                <details class="opens view__eye">
                    <summary>{ t!("view-eye") }</summary>
                    <Slider label={t!("view-eye-aside")} least={-8.0} most=8.0 value={now.aside_mm} step=0.1 page=1.0
                        spoken={spoken_aside} on_input={on_aside} />
                    <Slider label={t!("view-eye-along")} least={-60.0} most=60.0 value={now.behind_mm} step=1.0 page=5.0
                        spoken={spoken_along} on_input={on_along} />
                    <p ref={eye_said.node.clone()}></p>
                </details>
                <details class="opens">
                    <summary>{ t!("view-in-words") }</summary>
                    <div class="view__said" ref={said.node.clone()}></div>
                </details>
                <p class="picture__scale" ref={scale.node.clone()}></p>
            </div>
        </Frame>
    }
}
