//! The dusk strip: this evening at this place, and what can be told apart until when.

use super::attribute::Pen;
use super::pace::Pace;
use super::size::{use_id, use_width};
use super::slider::{Grip, value_after_key};
use crate::drawing::dusk::{Evening, EventKind, Strip, Until, without_collisions};
use crate::plain::Gathered;
use crate::sky::evening::SunCourse;
use crate::t;
use crate::web::view::prelude::*;
use crate::wording::about;
use std::cell::Cell;
use std::rc::Rc;

/// Until when one eye or one sight tells the target apart.
#[derive(Clone, Debug, PartialEq)]
pub struct StripRow {
    /// The eye or the sight, as in "bare eye".
    pub name: AttrValue,
    /// Until when.
    pub until: Until,
    /// Whether it is the pick: its bar carries the accent.
    pub pick: bool,
}

/// What [`DuskStrip`] is told.
#[derive(Properties, PartialEq)]
pub struct DuskStripProps {
    /// The evening; all strips of a page share one.
    pub evening: Rc<Evening>,
    /// Rows under the band.
    #[prop_or_default]
    pub rows: Vec<StripRow>,
    /// Show the spread of each end; left out where the strip asks.
    #[prop_or(true)]
    pub whiskers: bool,
    /// Show names of events above and rows below; a header shows band and clock only.
    #[prop_or(true)]
    pub full: bool,
    /// Where the handle stands, in minutes after sunset; without it there is no handle.
    #[prop_or_default]
    pub minute: Option<f64>,
    /// What the handle asks or moves, for those who cannot see it.
    #[prop_or_default]
    pub label: AttrValue,
    /// Called at every change of the handle.
    #[prop_or_default]
    pub on_input: Callback<f64>,
    /// Called when the handle is let go, and at every key.
    #[prop_or_default]
    pub on_change: Callback<f64>,
}

const NAMES_PX: f64 = 18.0;
const BAND_PX: f64 = 28.0;
const ROW_PX: f64 = 28.0;
const TICKS_PX: f64 = 20.0;
const GRIP_PX: f64 = 44.0;
/// Widest clock in the grip, px: half of it is kept free at both ends.
const GRIP_HALF_PX: f64 = 32.0;
/// Rough width of a letter of 14 px, for collisions.
const LETTER_PX: f64 = 7.2;

/// The words for a minute: after sunset, before it, or by the clock alone.
#[must_use]
pub fn said_minute(evening: &Evening, minute: f64) -> String {
    let clock = evening.clock(minute).to_string();
    let whole = minute.round();
    if evening.sun != SunCourse::Sets {
        clock
    } else if whole < 0.0 {
        t!("strip-before", clock = clock, minutes = -whole)
    } else if whole == 0.0 {
        t!("strip-at-sunset", clock = clock)
    } else {
        t!("strip-after", clock = clock, minutes = whole)
    }
}

/// The clock and, for each row, whether it still tells the target apart then.
#[must_use]
pub fn said_handle(evening: &Evening, rows: &[StripRow], minute: f64) -> String {
    let mut said = said_minute(evening, minute);
    for row in rows {
        let apart = match row.until {
            Until::Never => false,
            Until::Throughout => true,
            Until::Minute(end) => minute <= end.value,
        };
        said.push_str("; ");
        said.push_str(&if apart {
            t!("strip-told-apart", name = row.name.to_string())
        } else {
            t!("strip-not-told-apart", name = row.name.to_string())
        });
    }
    said
}

fn said_until(evening: &Evening, until: Until) -> String {
    match until {
        Until::Never => t!("strip-never"),
        Until::Throughout => t!("strip-throughout"),
        Until::Minute(end) if evening.sun != SunCourse::Sets => {
            evening.clock(end.value).to_string()
        }
        Until::Minute(end) => t!(
            "strip-minutes",
            clock = evening.clock(end.value).to_string(),
            minutes = (if evening.is_morning {
                -end.value
            } else {
                end.value
            })
            .round()
        ),
    }
}

/// The same with its spread, for the description.
fn said_until_in_full(evening: &Evening, row: &StripRow) -> String {
    let name = row.name.to_string();
    match row.until {
        Until::Minute(end) if evening.is_morning => t!(
            "strip-row-dawn",
            name = name,
            from = about(-end.value, end.spread, "min")
        ),
        Until::Minute(end) if evening.sun == SunCourse::Sets => t!(
            "strip-row-spoken",
            name = name,
            until = about(end.value, end.spread, "min")
        ),
        other => format!("{name}: {}", said_until(evening, other)),
    }
}

fn event_name(kind: EventKind) -> String {
    match kind {
        EventKind::Sunset => t!("strip-sunset"),
        EventKind::Sunrise => t!("strip-sunrise"),
        EventKind::CivilTwilightEnds => t!("strip-civil"),
        EventKind::CivilTwilightBegins => t!("strip-civil-begins"),
        EventKind::Moonrise => t!("strip-moonrise"),
        EventKind::Moonset => t!("strip-moonset"),
    }
}

fn px(value: f64) -> String {
    fixed(value, 1)
}

/// The dusk strip.
#[component]
pub fn DuskStrip(props: &DuskStripProps) -> Html {
    let id = use_id("strip");
    let root = use_node_ref();
    let width = use_width(root.clone(), 328.0);
    let evening = props.evening.clone();
    let strip = Strip {
        left_px: 1.0,
        width_px: width - 2.0,
        first_min: evening.first_min,
        last_min: evening.last_min,
    };
    let names_px = if props.full { NAMES_PX } else { 0.0 };
    let rows_px = ROW_PX * props.rows.len() as f64;
    let band_top = names_px;
    let band_end = band_top + BAND_PX;
    let rows_end = band_end + rows_px;
    let ticks_end = rows_end + TICKS_PX;
    let has_handle = props.minute.is_some();
    let height = ticks_end + if has_handle { GRIP_PX } else { 0.0 };

    let slider = use_memo((), |()| Pen::default());
    let line = use_memo((), |()| Pen::default());
    let grip_box = use_memo((), |()| Pen::default());
    let clock = use_memo((), |()| Pen::default());
    let minute = use_memo((), |()| Cell::new(f64::NAN));
    let held = use_memo((), |()| Cell::new(None::<Grip>));
    let pace = use_memo((), |()| Rc::new(Pace::default()));

    let show: Rc<dyn Fn(f64)> = {
        let (slider, line, grip_box, clock) = (
            slider.clone(),
            line.clone(),
            grip_box.clone(),
            clock.clone(),
        );
        let (minute, evening, rows) = (minute.clone(), evening.clone(), props.rows.clone());
        Rc::new(move |to: f64| {
            minute.set(to);
            let x = strip.x_px(to);
            line.set("transform", &filled!("translate({.2} 0)", x));
            // Not `clamp`: on a very narrow strip the ends change places.
            let grip_x = x.min(width - GRIP_HALF_PX - 1.0).max(GRIP_HALF_PX + 1.0);
            grip_box.set("transform", &filled!("translate({.2} 0)", grip_x));
            clock.text(&evening.clock(to).to_string());
            slider.set("aria-valuenow", &fixed(to, 0));
            slider.set("aria-valuetext", &said_handle(&evening, &rows, to));
        })
    };
    {
        let show = show.clone();
        let pens = [
            slider.clone(),
            line.clone(),
            grip_box.clone(),
            clock.clone(),
        ];
        use_effect_with(
            (props.minute, strip, props.rows.clone(), evening.clone()),
            move |(to, ..)| {
                if let Some(to) = *to {
                    for pen in &pens {
                        pen.forget();
                    }
                    show(to.clamp(strip.first_min, strip.last_min));
                }
            },
        );
    }
    let go: Rc<dyn Fn(f64)> = {
        let (show, minute, on_input) = (show, minute.clone(), props.on_input.clone());
        Rc::new(move |to: f64| {
            let to = to.round().clamp(strip.first_min, strip.last_min);
            if to != minute.get() {
                show(to);
                let (minute, on_input) = (minute.clone(), on_input.clone());
                pace.run(move || on_input.emit(minute.get()));
            }
        })
    };
    let follow = {
        let go = go.clone();
        move |grip: &Grip, event: &PointerEvent| {
            go(strip.minute(strip.left_px + grip.share(event) * strip.width_px));
        }
    };
    let onpointerdown = {
        let (held, follow) = (held.clone(), follow.clone());
        Callback::from(move |event: PointerEvent| {
            if let Some(grip) = Grip::of(&event) {
                held.set(Some(grip));
                follow(&grip, &event);
            }
        })
    };
    let onpointermove = {
        let held = held.clone();
        Callback::from(move |event: PointerEvent| {
            if let Some(grip) = held.get() {
                follow(&grip, &event);
            }
        })
    };
    let let_go = {
        let (held, minute, on_change) = (held.clone(), minute.clone(), props.on_change.clone());
        Callback::from(move |_: PointerEvent| {
            if held.take().is_some() {
                on_change.emit(minute.get());
            }
        })
    };
    let last_sight = props
        .rows
        .iter()
        .filter_map(|row| match row.until {
            Until::Minute(end) => Some(end.value),
            Until::Throughout => Some(strip.last_min),
            Until::Never => None,
        })
        .fold(f64::NEG_INFINITY, f64::max);
    let last_sight = if last_sight.is_finite() {
        last_sight.floor()
    } else {
        strip.last_min
    };
    let onkeydown = {
        let (minute, go, on_change) = (minute.clone(), go, props.on_change.clone());
        Callback::from(move |event: KeyboardEvent| {
            if event.ctrl_key() || event.alt_key() || event.meta_key() {
                return;
            }
            let key = event.key();
            let to = match key.as_str() {
                "Home" => Some(0.0),
                "End" => Some(last_sight),
                key => value_after_key(
                    key,
                    minute.get(),
                    strip.first_min,
                    strip.last_min,
                    1.0,
                    10.0,
                ),
            };
            if let Some(to) = to {
                event.prevent_default();
                go(to);
                on_change.emit(minute.get());
            }
        })
    };

    // ------------------------------------------------------------ what stands still
    let band = strip.band(&evening, 5.0);
    let mut events: Vec<(f64, String, EventKind)> = evening
        .events
        .iter()
        .map(|event| (strip.x_px(event.minute), event_name(event.kind), event.kind))
        .gathered();
    crate::plain::sort_by_key(&mut events, |event| event.2);
    let half = |name: &str| 0.5 * LETTER_PX * name.chars().count() as f64;
    let label_x = |x: f64, name: &str| x.min(width - half(name) - 2.0).max(half(name) + 2.0);
    let extents: Vec<(f64, f64)> = events
        .iter()
        .map(|(x, name, _)| (label_x(*x, name), 2.0 * half(name)))
        .gathered();
    let kept = without_collisions(&extents, 6.0);
    let ticks: Vec<(f64, String)> = strip
        .ticks(&evening)
        .into_iter()
        .map(|(minute, clock)| (strip.x_px(minute), clock.to_string()))
        .filter(|(x, _)| *x > 20.0 && *x < width - 20.0)
        .gathered();
    let every = if width < 300.0 { 2 } else { 1 };
    let (sky, hatch) = (format!("{id}-sky"), format!("{id}-hatch"));
    let description = {
        let mut said = t!(
            "strip-spoken",
            first = evening.clock(evening.first_min).to_string(),
            last = evening.clock(evening.last_min).to_string()
        );
        for (_, name, kind) in &events {
            if let Some(event) = evening.events.iter().find(|event| event.kind == *kind) {
                said.push_str(&format!(" {name} {}.", evening.clock(event.minute)));
            }
        }
        for row in &props.rows {
            said.push_str(&format!(" {}.", said_until_in_full(&evening, row)));
        }
        if !evening.gets_dark {
            said.push(' ');
            said.push_str(&t!("strip-never-dark"));
        }
        said
    };
    let drawing = html! {
        <svg class="strip__drawing" data-keep="" aria-hidden="true"
            width={px(width)} height={px(height)} viewBox={filled!("0 0 {.1} {.1}", width, height)}>
            <defs>
                <linearGradient id={sky.clone()}>
                    { for band.iter().map(|(share, colour)| html! {
                        <stop offset={fixed(*share, 4)} stop-color={colour.hex()} />
                    }) }
                </linearGradient>
                <pattern id={hatch.clone()} width="4" height="4" patternUnits="userSpaceOnUse"
                    patternTransform="rotate(45)">
                    <path class="hatch" d="M0 0V4" stroke-width="2" />
                </pattern>
            </defs>
            if props.full {
                { for events.iter().zip(&extents).zip(&kept).filter(|(_, kept)| **kept)
                    .map(|(((_, name, _), (x, _)), _)| html! {
                        <text class="strip__name" x={px(*x)} y={px(NAMES_PX - 5.0)} text-anchor="middle">
                            { name.clone() }
                        </text>
                    }) }
            }
            <rect class="ink" x="0.5" y={px(band_top + 0.5)} width={px(width - 1.0)}
                height={px(BAND_PX - 1.0)} fill={format!("url(#{sky})")} stroke-width="1" />
            { for events.iter().map(|(x, ..)| html! {
                <path class="ink" stroke-width="1"
                    d={filled!("M{.1} {.1}v4M{.1} {.1}v-4", *x, band_top, *x, band_end)} />
            }) }
            if has_handle {
                <g ref={line.node.clone()}>
                    <path class="halo" stroke-width="6"
                        d={filled!("M0 {.1}V{.1}", band_top - 1.0, rows_end)} />
                    <path class="ink" stroke-width="2"
                        d={filled!("M0 {.1}V{.1}", band_top - 1.0, ticks_end + 1.0)} />
                </g>
            }
            { for props.rows.iter().enumerate().map(|(n, row)| {
                let top = band_end + ROW_PX * n as f64;
                let at = strip.row(row.until);
                let bar = if row.pick { "pick-fill" } else { "soft-fill" };
                // In the morning the bar begins where the evening's ends.
                let (from, to) = match row.until {
                    Until::Minute(_) if evening.is_morning => (at.end_px, width - 1.0),
                    _ => (strip.left_px, at.end_px),
                };
                html! {
                    <g>
                        <text class="strip__row" x="0" y={px(top + 18.0)}>{ row.name.clone() }</text>
                        <text class="strip__row" x={px(width)} y={px(top + 18.0)} text-anchor="end">
                            { said_until(&evening, row.until) }
                        </text>
                        <rect class={bar} x={px(from)} y={px(top + 22.0)} height="4" width={px((to - from).max(0.0))} />
                        if props.whiskers && at.whisker_to_px > at.whisker_from_px {
                            <rect x={px(at.whisker_from_px)} y={px(top + 21.0)} height="6"
                                width={px(at.whisker_to_px - at.whisker_from_px)}
                                fill={format!("url(#{hatch})")} />
                        }
                        if at.ends_here {
                            <rect class="ink-fill" x={px(at.end_px - 1.0)} y={px(top + 19.0)}
                                width="2" height="10" />
                        }
                    </g>
                }
            }) }
            { for ticks.iter().enumerate().map(|(n, (x, clock))| html! {
                <g>
                    <path class="soft" stroke-width="1" d={filled!("M{.1} {.1}v4", *x, rows_end)} />
                    if n % every == 0 {
                        <text class="strip__tick" x={px(*x)} y={px(rows_end + 17.0)} text-anchor="middle">
                            { clock.clone() }
                        </text>
                    }
                </g>
            }) }
            if has_handle {
                <g ref={grip_box.node.clone()}>
                    <rect class="strip__grip" x={px(-GRIP_HALF_PX)} y={px(ticks_end + 1.0)}
                        width={px(2.0 * GRIP_HALF_PX)} height={px(GRIP_PX - 6.0)} rx="10" />
                    <text class="strip__clock" x="0" y={px(ticks_end + 26.0)} text-anchor="middle"
                        ref={clock.node.clone()}></text>
                </g>
            }
        </svg>
    };
    html! {
        <div class="strip" ref={root}>
            <p class="unseen">{ description }</p>
            if has_handle {
                <div class="strip__way" role="slider" tabindex="0" ref={slider.node.clone()}
                    aria-label={props.label.clone()}
                    aria-valuemin={fixed(strip.first_min, 0)}
                    aria-valuemax={fixed(strip.last_min, 0)}
                    {onpointerdown} {onpointermove} onpointerup={let_go.clone()}
                    onpointercancel={let_go} {onkeydown}>
                    { drawing }
                </div>
            } else {
                { drawing }
            }
            if !evening.gets_dark {
                <p class="strip__note">{ t!("strip-never-dark") }</p>
            }
        </div>
    }
}
