//! A handle on a line: pointer, touch and keyboard, with a spoken value.

use super::attribute::Pen;
use super::pace::Pace;
use super::size::use_id;
use crate::web::view::prelude::*;
use std::cell::Cell;
use std::rc::Rc;
use wasm_bindgen::JsCast;
use web_sys::Element;

/// How the handle's way is divided.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Scale {
    /// Equal ways are equal differences.
    #[default]
    Linear,
    /// Equal ways are equal ratios.
    Ratio,
}

impl Scale {
    /// The share of the way at a value.
    #[must_use]
    pub fn share(self, value: f64, least: f64, most: f64) -> f64 {
        if most <= least {
            return 0.0;
        }
        let share = match self {
            Self::Linear => (value - least) / (most - least),
            Self::Ratio => libm::log(value / least) / libm::log(most / least),
        };
        share.clamp(0.0, 1.0)
    }

    /// The value at a share of the way.
    #[must_use]
    pub fn value(self, share: f64, least: f64, most: f64) -> f64 {
        match self {
            Self::Linear => least + share * (most - least),
            Self::Ratio => least * libm::pow(most / least, share),
        }
    }
}

/// What [`Slider`] is told.
#[derive(Properties, PartialEq)]
pub struct SliderProps {
    /// What the handle moves.
    pub label: AttrValue,
    /// The least value.
    pub least: f64,
    /// The largest value.
    pub most: f64,
    /// The value now.
    pub value: f64,
    /// A step of an arrow key; every value is a multiple of it or an end.
    pub step: f64,
    /// A step of the page keys.
    pub page: f64,
    /// How the way is divided.
    #[prop_or_default]
    pub scale: Scale,
    /// The words for a value.
    pub spoken: Callback<f64, String>,
    /// Called at every change.
    pub on_input: Callback<f64>,
}

/// The value that a key leads to, if the key means anything here.
#[must_use]
pub fn value_after_key(
    key: &str,
    value: f64,
    least: f64,
    most: f64,
    step: f64,
    page: f64,
) -> Option<f64> {
    let to = match key {
        "ArrowRight" | "ArrowUp" => value + step,
        "ArrowLeft" | "ArrowDown" => value - step,
        "PageUp" => value + page,
        "PageDown" => value - page,
        "Home" => least,
        "End" => most,
        _ => return None,
    };
    Some(to.clamp(least, most))
}

/// `value` on the grid of `step`, held between the ends.
#[must_use]
pub fn on_grid(value: f64, least: f64, most: f64, step: f64) -> f64 {
    let gridded = if step > 0.0 {
        (value / step).round() * step
    } else {
        value
    };
    gridded.clamp(least, most)
}

/// Where a pointer went down: where the track begins and its width, so that moving asks for no
/// layout.
#[derive(Clone, Copy, Default)]
pub struct Grip {
    /// Edge of the track on the screen at which its way begins.
    pub begin_px: f64,
    /// Its width, negative where the page is turned round.
    pub width_px: f64,
}

impl Grip {
    /// Takes hold of the element that has received a pointer.
    #[must_use]
    pub fn of(event: &PointerEvent) -> Option<Self> {
        let element: Element = event.current_target_element()?;
        let _ = element.set_pointer_capture(event.pointer_id());
        let edge = element.get_bounding_client_rect();
        Some(match element.closest(".counter--across") {
            Ok(Some(_)) => Self {
                begin_px: edge.right(),
                width_px: -edge.width(),
            },
            _ => Self {
                begin_px: edge.left(),
                width_px: edge.width(),
            },
        })
    }

    /// The share of the track's width at a pointer.
    #[must_use]
    pub fn share(&self, event: &PointerEvent) -> f64 {
        if self.width_px == 0.0 {
            return 0.0;
        }
        ((f64::from(event.client_x()) - self.begin_px) / self.width_px).clamp(0.0, 1.0)
    }
}

/// The element on which a handler stands.
trait CurrentElement {
    fn current_target_element(&self) -> Option<Element>;
}

impl CurrentElement for PointerEvent {
    fn current_target_element(&self) -> Option<Element> {
        self.target()
            .and_then(|target| target.dyn_into::<Element>().ok())
            .and_then(|target| target.closest("[role=slider]").ok().flatten())
    }
}

/// A handle on a line.
#[component]
pub fn Slider(props: &SliderProps) -> Html {
    let id = use_id("slide");
    let track = use_memo((), |()| Pen::default());
    let thumb = use_memo((), |()| Pen::default());
    let shown = use_memo((), |()| Pen::default());
    let value = use_memo((), |()| Cell::new(f64::NAN));
    let grip = use_memo((), |()| Cell::new(None::<Grip>));
    let pace = use_memo((), |()| Rc::new(Pace::default()));
    let (least, most, step, page, scale) =
        (props.least, props.most, props.step, props.page, props.scale);

    // Writes a value into the handle; tells nobody.
    let show: Rc<dyn Fn(f64)> = {
        let (track, thumb, shown) = (track.clone(), thumb.clone(), shown.clone());
        let (value, spoken) = (value.clone(), props.spoken.clone());
        Rc::new(move |to: f64| {
            value.set(to);
            let share = scale.share(to, least, most);
            thumb.style("transform", &filled!("translateX({.3}%)", 100.0 * share));
            let words = spoken.emit(to);
            track.set("aria-valuenow", &fixed(to, 2));
            track.set("aria-valuetext", &words);
            shown.text(&words);
        })
    };
    {
        let show = show.clone();
        let pens = (track.clone(), shown.clone());
        use_effect_with(
            (props.value, least, most, scale, props.spoken.clone()),
            move |(to, ..)| {
                pens.0.forget();
                pens.1.forget();
                show(to.clamp(least, most));
            },
        );
    }
    let go: Rc<dyn Fn(f64)> = {
        let (show, value, on_input) = (show, value.clone(), props.on_input.clone());
        Rc::new(move |to: f64| {
            if to != value.get() {
                show(to);
                let (value, on_input) = (value.clone(), on_input.clone());
                pace.run(move || on_input.emit(value.get()));
            }
        })
    };
    let at = move |grip: &Grip, event: &PointerEvent| {
        on_grid(
            scale.value(grip.share(event), least, most),
            least,
            most,
            step,
        )
    };
    let onpointerdown = {
        let (grip, go) = (grip.clone(), go.clone());
        Callback::from(move |event: PointerEvent| {
            if let Some(held) = Grip::of(&event) {
                grip.set(Some(held));
                go(at(&held, &event));
            }
        })
    };
    let onpointermove = {
        let (grip, go) = (grip.clone(), go.clone());
        Callback::from(move |event: PointerEvent| {
            if let Some(held) = grip.get() {
                go(at(&held, &event));
            }
        })
    };
    let let_go = {
        let grip = grip.clone();
        Callback::from(move |_: PointerEvent| grip.set(None))
    };
    let onkeydown = {
        let (value, go) = (value.clone(), go.clone());
        Callback::from(move |event: KeyboardEvent| {
            if event.ctrl_key() || event.alt_key() || event.meta_key() {
                return;
            }
            if let Some(to) = value_after_key(&event.key(), value.get(), least, most, step, page) {
                event.prevent_default();
                go(on_grid(to, least, most, step));
            }
        })
    };
    let name = format!("{id}-name");
    html! {
        <div class="slide">
            <div class="slide__head">
                <span class="slide__name" id={name.clone()}>{ props.label.clone() }</span>
                <span class="slide__value" aria-hidden="true" ref={shown.node.clone()}></span>
            </div>
            <div class="slide__track" role="slider" tabindex="0" ref={track.node.clone()}
                aria-labelledby={name}
                aria-valuemin={fixed(least, 2)} aria-valuemax={fixed(most, 2)}
                {onpointerdown} {onpointermove} onpointerup={let_go.clone()}
                onpointercancel={let_go} {onkeydown}>
                <div class="slide__line"></div>
                // As wide as the way, so that a share of itself moves it without a layout.
                <div class="slide__carry" ref={thumb.node.clone()}><div class="slide__thumb"></div></div>
            </div>
        </div>
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_way_of_ratios_is_halved_at_the_geometric_mean() {
        let scale = Scale::Ratio;
        assert!((scale.value(0.5, 1.0, 16.0) - 4.0).abs() < 1e-12);
        assert!((scale.share(4.0, 1.0, 16.0) - 0.5).abs() < 1e-12);
        assert_eq!(scale.share(4.0, 6.0, 6.0), 0.0);
    }

    #[test]
    fn keys_move_and_stop_at_the_ends() {
        let key = |key, value| value_after_key(key, value, 1.0, 10.0, 0.5, 2.0);
        assert_eq!(key("ArrowRight", 9.8), Some(10.0));
        assert_eq!(key("PageDown", 2.0), Some(1.0));
        assert_eq!(key("Home", 7.0), Some(1.0));
        assert_eq!(key("End", 7.0), Some(10.0));
        assert_eq!(key("a", 7.0), None);
        assert_eq!(on_grid(3.26, 1.0, 10.0, 0.5), 3.5);
        assert_eq!(on_grid(0.2, 1.0, 10.0, 0.5), 1.0);
    }
}
