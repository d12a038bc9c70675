//! Every question on one landscape screen, the advice live beside it.

mod link;
mod rows;
mod says;

use super::advice::seen::View;
use super::shelf;
use crate::need::counter::Act;
use crate::need::questions::{Part, Question};
use crate::plain::Together;
use crate::t;
use crate::web::components::Forming;
use crate::web::components::part::PartControl;
use crate::web::platform;
use crate::web::state::{Action, App, use_app};
use crate::web::stored;
use crate::web::view::prelude::*;
use crate::wording::questions::{part_answer, question_short};
use link::OpenLink;
pub use rows::ROWS;

/// What lies over the advice for a while.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Over {
    /// What is shot at.
    Quarry,
    /// How, and what is around.
    Manner,
    /// How far.
    Ranges,
    /// The rifle in full.
    Rifle,
    /// The sight on it now, typed.
    Sight,
    /// A customer's link.
    Link,
}

impl Over {
    /// All that hold answers.
    #[cfg(test)]
    pub const ALL: [Self; 5] = [
        Self::Quarry,
        Self::Manner,
        Self::Ranges,
        Self::Rifle,
        Self::Sight,
    ];

    /// Its parts.
    #[must_use]
    pub fn parts(self) -> &'static [Part] {
        match self {
            Self::Quarry => &[Part::Uses],
            Self::Manner => &[Part::Manners, Part::Covers, Part::Snow],
            Self::Ranges => &[Part::Ranges],
            Self::Rifle => &[
                Part::Cartridge,
                Part::RifleKind,
                Part::RifleMass,
                Part::Muzzle,
            ],
            Self::Sight => &[Part::SightLine],
            Self::Link => &[],
        }
    }
}

/// The four that say more than a row can; the first parts of each are told on its button.
const SHEETS: [(&str, Over); 4] = [
    ("quarry", Over::Quarry),
    ("manner", Over::Manner),
    ("ranges", Over::Ranges),
    ("rifle", Over::Rifle),
];

/// What the right half shows.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Face {
    Line,
    Why,
    View,
    Shelf,
}

const FACES: [(&str, Face); 4] = [
    ("line", Face::Line),
    ("why", Face::Why),
    ("view", Face::View),
    ("shelf", Face::Shelf),
];

/// Whom the screen is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Towards {
    Staff,
    /// The customer, from the same side or with the tablet turned.
    Customer,
    /// The customer across the counter, the tablet lying flat.
    Across,
}

fn told(app: &App, over: Over) -> String {
    let said: Vec<String> = over
        .parts()
        .iter()
        .filter_map(|part| part_answer(*part, &app.answers))
        .take(2)
        .collect();
    if said.is_empty() {
        t!("counter-open")
    } else {
        said.together("; ")
    }
}

/// The counter.
#[component]
pub fn CounterPage() -> Html {
    let over = use_state_eq(|| None::<Over>);
    let face = use_state_eq(|| Face::Line);
    let towards = use_state_eq(|| Towards::Staff);
    let is_held = use_state_eq(|| false);
    let Some(app) = use_app() else {
        return Html::default();
    };
    let shown = says::use_shown(&app, *is_held);
    let units = app.answers.units;
    let lay = {
        let over = over.clone();
        Callback::from(move |which: Over| {
            over.set(Some(which));
            platform::focus_soon(match which {
                Over::Link => "counter-link",
                _ => "sheet",
            });
        })
    };
    let close = {
        let over = over.clone();
        Callback::from(move |()| {
            over.set(None);
            platform::focus_soon("title");
        })
    };
    let undo = {
        let app = app.clone();
        Callback::from(move |_: MouseEvent| app.dispatch(Action::At(Act::Undo)))
    };
    let next = {
        let (app, over, face, towards) = (app.clone(), over.clone(), face.clone(), towards.clone());
        Callback::from(move |_: MouseEvent| {
            over.set(None);
            face.set(Face::Line);
            towards.set(Towards::Staff);
            stored::forget_answers();
            app.dispatch(Action::At(Act::NextCustomer));
            platform::focus_soon("title");
        })
    };
    let hold = |held: bool| {
        let is_held = is_held.clone();
        Callback::from(move |_: PointerEvent| is_held.set(held))
    };
    let turn = |to: Towards| {
        let (over, face, towards) = (over.clone(), face.clone(), towards.clone());
        Callback::from(move |_: MouseEvent| {
            over.set(None);
            if *face != Face::View {
                face.set(Face::Line);
            }
            towards.set(to);
            platform::focus_soon("title");
        })
    };
    let open_link = {
        let lay = lay.clone();
        Callback::from(move |_: MouseEvent| lay.emit(Over::Link))
    };
    let done = {
        let close = close.clone();
        Callback::from(move |_: MouseEvent| close.emit(()))
    };
    let is_staff = *towards == Towards::Staff;
    // The pictures want the room of the questions, which wait one touch away.
    let is_view = *face == Face::View && over.is_none() && shown.is_some();
    let body = match (&shown, *over) {
        (_, Some(Over::Link)) => html! { <OpenLink onopened={close.clone()} /> },
        (_, Some(over)) => {
            html! { <>{ for over.parts().iter().map(|part| html! { <PartControl key={part.key()} part={*part} /> }) }</> }
        }
        (Some(shown), None) => match *face {
            Face::Line => says::line(shown, units),
            Face::Why => says::why(&shown.advice, units),
            Face::View => html! { <View advice={shown.advice.clone()} {units} /> },
            Face::Shelf => html! { <shelf::OnShelf advice={shown.advice.clone()} most={8} /> },
        },
        (None, None) => html! {
            <>
                <p class="line" aria-hidden="true"><span class="line__glass">{ t!("line-forming-nothing") }</span></p>
                <p class="soft">{ t!("counter-begin") }</p>
            </>
        },
    };
    html! {
        <main id="main" class={classes!("counter", is_view.then_some("counter--view"), (!is_staff).then_some("counter--shown"), (*towards == Towards::Across).then_some("counter--across"))}>
            <h1 id="title" tabindex="-1" class="unseen">{ t!("opening-door-counter") }</h1>
            if is_staff {
                <div class="counter__top">
                    { rows::kinds(&app, &lay) }
                    <div class="counter__sheets">
                        { for SHEETS.iter().map(|(key, which)| {
                            let which = *which;
                            let (lay, close, is_open) = (lay.clone(), close.clone(), *over == Some(which));
                            let onclick = Callback::from(move |_: MouseEvent| if is_open { close.emit(()) } else { lay.emit(which) });
                            html! {
                                <button type="button" class="counter__sheet" {onclick} aria-expanded={is_open.to_string()}>
                                    <span class="crow__name">{ Question::from_key(key).map_or_else(String::new, question_short) }</span>
                                    <span class="counter__told">{ told(&app, which) }</span>
                                </button>
                            }
                        }) }
                    </div>
                </div>
                <div class="counter__asks">
                    { for ROWS.iter().map(|part| rows::of(&app, *part, &lay)) }
                </div>
                <div class="counter__acts">
                    <button type="button" class="button" id="counter-undo" onclick={undo} disabled={app.before.is_empty()}>{ t!("counter-undo") }</button>
                    <button type="button" class="button" id="counter-open" onclick={open_link}>{ t!("counter-link") }</button>
                    <button type="button" class="button" id="counter-next" onclick={next}>{ t!("counter-next") }</button>
                </div>
                <Forming />
            }
            <div class="counter__says">
                <div class="counter__head">
                    if !is_staff {
                        <button type="button" class="button" id="counter-back" onclick={turn(Towards::Staff)}>{ t!("counter-turn-back") }</button>
                    }
                    <fieldset class="segments counter__faces">
                        <legend class="unseen">{ t!("counter-faces") }</legend>
                        { for FACES.iter().filter(|(_, which)| is_staff || matches!(which, Face::Line | Face::View)).map(|(key, which)| {
                            let (face, over, which) = (face.clone(), over.clone(), *which);
                            let is_on = *face == which && over.is_none();
                            let onclick = Callback::from(move |_: MouseEvent| { over.set(None); face.set(which); });
                            html! {
                                <label class="segment" key={*key}>
                                    <input type="radio" name="counter-face" id={format!("counter-face-{key}")} checked={is_on} {onclick} />
                                    <span>{ crate::wording::say(&format!("counter-face-{key}"), &[]) }</span>
                                </label>
                            }
                        }) }
                    </fieldset>
                    if is_staff {
                        <button type="button" class="button" id="counter-turn" onclick={turn(Towards::Customer)}>{ t!("counter-turn") }</button>
                    } else {
                        <button type="button" class="button" id="counter-across" aria-pressed={(*towards == Towards::Across).to_string()}
                            onclick={turn(if *towards == Towards::Across { Towards::Customer } else { Towards::Across })}>{ t!("counter-turn-across") }</button>
                    }
                </div>
                <section class="counter__body" id="sheet" tabindex="0" aria-label={t!("counter-says")}
                    onpointerdown={hold(true)} onpointerup={hold(false)} onpointercancel={hold(false)} onpointerleave={hold(false)}>
                    { body }
                </section>
                if over.is_some() {
                    <button type="button" class="button counter__done" onclick={done}>{ t!("counter-done") }</button>
                }
            </div>
        </main>
    }
}
