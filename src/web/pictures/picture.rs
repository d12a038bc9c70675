//! One component for every picture that is drawn anew while a handle moves: what is drawn
//! comes as plain data, a function of the handles and of the width.

use super::attribute::Pen;
use super::frame::Frame;
use super::size::use_width;
use super::slider::{Scale, Slider};
use crate::drawing::svg::{Svg, escaped};
use crate::plain::Gathered;
use crate::t;
use crate::web::platform::{AnimationFrame, Timeout, request_animation_frame};
use crate::web::view::prelude::*;
use std::cell::{Cell, RefCell};
use std::rc::Rc;

/// A handle of a picture.
#[derive(Clone)]
pub struct Handle {
    /// What it moves.
    pub label: String,
    /// Least value.
    pub least: f64,
    /// Largest value.
    pub most: f64,
    /// Value to begin with.
    pub value: f64,
    /// Step of an arrow key.
    pub step: f64,
    /// Step of a page key.
    pub page: f64,
    /// How its way is divided.
    pub scale: Scale,
    /// The words for a value.
    pub spoken: Callback<f64, String>,
}

/// One drawing.
#[derive(Clone, Default)]
pub struct Drawing {
    /// Its name, empty if the picture's title says enough.
    pub name: String,
    /// Figures that change with a handle.
    pub note: String,
    /// What a screen reader is told.
    pub said: String,
    /// Class of the drawing.
    pub class: &'static str,
    /// Width and height in px.
    pub size_px: (f64, f64),
    /// Where 0, 0 lies, in px from the upper left corner.
    pub origin_px: (f64, f64),
    /// What stays as it is while most handles move; below the rest.
    pub still: Svg,
    /// What moves.
    pub inside: Svg,
}

/// A picture at one stand of its handles.
#[derive(Default)]
pub struct Drawn {
    /// The drawings, side by side.
    pub drawings: Vec<Drawing>,
    /// Paragraphs that say the same.
    pub words: Vec<String>,
    /// The scale.
    pub scale: String,
}

/// A function from the handles' values and the width in px to what is drawn.
pub type Draw = Rc<dyn Fn(&[f64], f64) -> Drawn>;

/// A function from the handles' values to seconds.
pub type Seconds = Rc<dyn Fn(&[f64]) -> f64>;

/// A picture.
pub struct Told {
    /// Its name.
    pub title: String,
    /// File name for a kept picture, without ending.
    pub file: &'static str,
    /// What it leaves out.
    pub leaves_out: String,
    /// Formula, source, validity, this person's figures: a paragraph each.
    pub sources: Vec<String>,
    /// Its handles.
    pub handles: Vec<Handle>,
    /// What it draws.
    pub draw: Draw,
    /// The first handle can run by itself: the seconds that its whole way takes.
    pub run_s: Option<Seconds>,
}

impl Told {
    /// The picture as a part of a page.
    #[must_use]
    pub fn shown(self) -> Html {
        html! { <Picture told={Rc::new(self)} /> }
    }
}

/// What [`Picture`] is told.
#[derive(Properties)]
pub struct PictureProps {
    /// What it draws.
    pub told: Rc<Told>,
}

impl PartialEq for PictureProps {
    fn eq(&self, other: &Self) -> bool {
        Rc::ptr_eq(&self.told, &other.told)
    }
}

/// The words follow when a handle has rested so long.
pub const REST_MS: u32 = 140;
/// Drawings of one picture stand so far apart.
pub const GAP_PX: f64 = 24.0;

/// The width of one of `n` drawings side by side, between `least` and `most`.
#[must_use]
pub fn width_of_one(width_px: f64, n: usize, least: f64, most: f64) -> f64 {
    let n = n.max(1) as f64;
    ((width_px - (n - 1.0) * GAP_PX) / n)
        .floor()
        .clamp(least, most)
}

#[derive(Clone, Default)]
struct Pens {
    drawing: Pen,
    still: Pen,
    inside: Pen,
    note: Pen,
}

fn paint(drawn: &Drawn, pens: &[Pens], words: &Pen, scale: &Pen, with_words: bool) {
    for (drawing, pens) in drawn.drawings.iter().zip(pens) {
        let (w, h) = drawing.size_px;
        let (x, y) = drawing.origin_px;
        pens.drawing.set("width", &fixed(w, 0));
        pens.drawing.set("height", &fixed(h, 0));
        pens.drawing
            .set("viewBox", &filled!("{.2} {.2} {.0} {.0}", -x, -y, w, h));
        pens.still.parts(&drawing.still.parts);
        pens.inside.parts(&drawing.inside.parts);
        pens.note.text(&drawing.note);
        if with_words {
            pens.drawing.set("aria-label", &drawing.said);
        }
    }
    if with_words {
        let all: String = drawn
            .words
            .iter()
            .map(|said| format!("<p>{}</p>", escaped(said)))
            .collect();
        words.inside(&all);
        scale.text(&drawn.scale);
    }
}

/// Calls `each` with the time of every frame in ms until it returns false.
fn frames(kept: &Rc<RefCell<Option<AnimationFrame>>>, each: impl Fn(f64) -> bool + 'static) {
    let again = kept.clone();
    let frame = request_animation_frame(move |now_ms| {
        if each(now_ms) {
            frames(&again, each);
        }
    });
    *kept.borrow_mut() = Some(frame);
}

/// The picture with its handles.
#[component]
pub fn Picture(props: &PictureProps) -> Html {
    let told = props.told.clone();
    let root = use_node_ref();
    let width = use_width(root.clone(), 328.0);
    // Handle by handle: what it began with, and where it stands.
    let stand = use_memo((), |()| RefCell::new(Vec::<(f64, f64)>::new()));
    {
        let mut stand = stand.borrow_mut();
        stand.resize(told.handles.len(), (f64::NAN, 0.0));
        for ((began, at), handle) in stand.iter_mut().zip(&told.handles) {
            if *began != handle.value {
                (*began, *at) = (handle.value, handle.value);
            }
            *at = at.clamp(handle.least, handle.most.max(handle.least));
        }
    }
    let values = |stand: &RefCell<Vec<(f64, f64)>>| -> Vec<f64> {
        stand.borrow().iter().map(|(_, at)| *at).gathered()
    };
    let drawn = (told.draw)(&values(&stand), width);
    let pens: Rc<Vec<Pens>> = use_memo(drawn.drawings.len(), |n| {
        (0..*n).map(|_| Pens::default()).gathered()
    });
    let words = use_memo((), |()| Pen::default());
    let scale = use_memo((), |()| Pen::default());
    let rest = use_memo((), |()| Cell::new(None::<Timeout>));
    let names: Vec<(String, bool, &'static str)> = drawn
        .drawings
        .iter()
        .map(|drawing| {
            let noted = !drawing.note.is_empty();
            (drawing.name.clone(), noted, drawing.class)
        })
        .gathered();
    {
        let (pens, words, scale, rest) = (pens.clone(), words.clone(), scale.clone(), rest.clone());
        use_effect(move || {
            rest.set(None);
            for pen in pens.iter() {
                pen.drawing.forget();
                pen.still.forget();
                pen.inside.forget();
                pen.note.forget();
            }
            words.forget();
            scale.forget();
            paint(&drawn, &pens, &words, &scale, true);
        });
    }
    let handles: Vec<Html> = told
        .handles
        .iter()
        .enumerate()
        .map(|(n, handle)| {
            let (told, pens, words, scale) =
                (told.clone(), pens.clone(), words.clone(), scale.clone());
            let (stand, rest) = (stand.clone(), rest.clone());
            let at = stand.borrow()[n].1;
            let on_input = Callback::from(move |to: f64| {
                stand.borrow_mut()[n].1 = to;
                let draw = {
                    let (told, stand) = (told.clone(), stand.clone());
                    let (pens, words, scale) = (pens.clone(), words.clone(), scale.clone());
                    move |with_words| {
                        let drawn = (told.draw)(&values(&stand), width);
                        paint(&drawn, &pens, &words, &scale, with_words);
                    }
                };
                draw(false);
                rest.set(Some(Timeout::new(REST_MS, move || draw(true))));
            });
            html! {
                <Slider label={handle.label.clone()} least={handle.least} most={handle.most} value={at}
                    step={handle.step} page={handle.page} scale={handle.scale}
                    spoken={handle.spoken.clone()} {on_input} />
            }
        })
        .gathered();
    let again = use_state(|| 0_u32);
    let running = use_memo((), |()| Rc::new(RefCell::new(None::<AnimationFrame>)));
    let run = told.run_s.clone().map(|seconds| {
        let (told, pens, words, scale) = (told.clone(), pens.clone(), words.clone(), scale.clone());
        let (stand, running) = (stand.clone(), running.clone());
        Callback::from(move |_: MouseEvent| {
            let (told, pens, words, scale) =
                (told.clone(), pens.clone(), words.clone(), scale.clone());
            let (stand, again) = (stand.clone(), again.clone());
            let most = told.handles[0].most;
            let least = told.handles[0].least;
            let way_ms = 1000.0 * seconds(&values(&stand)).max(0.1);
            let began = Cell::new(None::<f64>);
            frames(&running, move |now_ms| {
                let from = began.get().unwrap_or(now_ms);
                began.set(Some(from));
                let share = ((now_ms - from) / way_ms).min(1.0);
                stand.borrow_mut()[0].1 = least + share * (most - least);
                let drawn = (told.draw)(&values(&stand), width);
                paint(&drawn, &pens, &words, &scale, share >= 1.0);
                if share >= 1.0 {
                    again.set(*again + 1);
                }
                share < 1.0
            });
        })
    });
    let sources: Vec<AttrValue> = told.sources.iter().cloned().map(AttrValue::from).gathered();
    html! {
        <Frame title={told.title.clone()} scale="" leaves_out={told.leaves_out.clone()} {sources} file={told.file}>
            <div class="picture__inside" ref={root}>
                <div class="picture__row">
                    { for names.into_iter().zip(pens.iter()).map(|((name, noted, class), pens)| html! {
                        <figure class="view__slot">
                            if noted || !name.is_empty() {
                                <figcaption class={if noted { "view__caption" } else { "view__caption view__caption--bare" }}>
                                    if !name.is_empty() { <b>{ name }</b> }
                                    if noted { <span class="view__covers" ref={pens.note.node.clone()}></span> }
                                </figcaption>
                            }
                            <svg {class} data-keep="" role="img" ref={pens.drawing.node.clone()}>
                                <g ref={pens.still.node.clone()}></g>
                                <g ref={pens.inside.node.clone()}></g>
                            </svg>
                        </figure>
                    }) }
                </div>
                { for handles }
                if let Some(run) = run {
                    <p class="picture__run"><button type="button" class="button" onclick={run}>{ t!("picture-run") }</button></p>
                }
                <div class="picture__words" ref={words.node.clone()}></div>
                <p class="picture__scale" ref={scale.node.clone()}></p>
            </div>
        </Frame>
    }
}
