//! The page as a whole: state, place, storage, ranking, and what surrounds every page.

use super::components::{Foot, Mast, Notices};
use super::jobs::use_ranking;
use super::platform;
use super::route::Route;
use super::state::{Action, App, Notice, Offer, State, Theme, begin, use_app};
use super::{embed, pages, stored, view};
use crate::plain::Gathered;
use crate::plain::{Map, Together};
use crate::ports::{AnswerStore, StoreProblem};
use crate::t;
use crate::web::view::prelude::*;
use crate::wording::{self, Language, problems};

/// Puts the page in the place of what was seen before the module arrived.
pub fn mount() {
    let asked = match Route::of(&platform::fragment()) {
        Route::Embed(text) => embed::language(&text).ok().flatten(),
        _ => None,
    };
    if let Some(language) = asked.or_else(|| Language::from_tag(&platform::language())) {
        wording::speak(language);
    }
    platform::mark_root("lang", Some(wording::spoken().tag()));
    if let Some(root) = platform::mount_point() {
        let focused = platform::focused_id();
        stored::ticked(platform::ticked_early());
        begin(with_early(at_first()));
        view::mount::<Page>(root);
        if let Some(id) = focused {
            platform::focus_soon(&id);
        }
    }
}

/// Takes over what was ticked before the module arrived.
fn with_early(mut state: State) -> State {
    // What the address brings comes first.
    if let Route::Open(_) | Route::Embed(_) = state.route {
        return state;
    }
    let answers = stored::with_ticked(state.answers.clone());
    if answers != state.answers {
        // Where nothing can be kept, the next answer says so.
        let _ = stored::keep(&answers, &state.typed);
        state.answers = answers;
    }
    state
}

fn at_first() -> State {
    let mut notices = Vec::new();
    let mut typed = Map::new();
    let answers = match stored::kept() {
        None => stored::start(),
        Some(Ok(rescued)) => {
            if rescued.is_whole() {
                typed = stored::kept_typed();
            } else {
                stored::set_aside();
                let why = rescued
                    .lost
                    .iter()
                    .cloned()
                    .chain(rescued.problems.iter().map(problems::problem))
                    .gathered()
                    .together("; ");
                notices.push(Notice {
                    said: match rescued.later_version {
                        Some(version) => t!(
                            "stored-later",
                            version = version as f64,
                            known = crate::need::answers::VERSION
                        ),
                        None => t!("stored-partly", why = why),
                    },
                    offer: None,
                });
            }
            rescued.answers
        }
        Some(Err(problem)) => {
            stored::set_aside();
            notices.push(Notice {
                said: t!("stored-damaged", why = problems::parse(&problem)),
                offer: None,
            });
            stored::start()
        }
    };
    State {
        route: Route::of(&platform::fragment()),
        went_back: false,
        answers,
        before: Vec::new(),
        typed,
        revision: 1,
        advice: None,
        advice_revision: 0,
        tried: 0,
        advised_revision: 0,
        advised: crate::need::answers::Answers::default(),
        advised_before: None,
        problem: None,
        notices,
        theme: stored::THEME
            .text()
            .map_or(Theme::System, |name| Theme::named(&name)),
    }
}

/// The page.
#[component]
fn Page() -> Html {
    let Some(app) = use_app() else {
        return Html::default();
    };
    use_place(&app);
    use_storage(&app);
    use_ranking(&app);
    {
        let answers = app.answers.clone();
        use_effect_with(app.advice.clone(), move |advice| {
            if let Some(advice) = advice {
                embed::tell_advice(&answers, advice);
            }
        });
    }

    {
        let theme = app.theme;
        use_effect_with(theme, |theme| {
            platform::mark_root("data-theme", theme.name());
            // Colours that cannot be kept are chosen again at the next visit.
            let _ = match theme.name() {
                Some(name) => stored::THEME.save(name),
                None => stored::THEME.forget(),
            };
        });
    }

    html! {
        <>
            <a class="button skip" href="#title" onclick={Callback::from(|event: MouseEvent| {
                event.prevent_default();
                platform::focus("title");
            })}>{ t!("page-skip") }</a>
            <Mast />
            <Notices />
            { pages::shown(&app) }
            if pages::has_foot(&app.route) {
                <Foot />
            }
        </>
    }
}

/// Follows the fragment, names the tab, and moves the keyboard to each new page's heading.
fn use_place(app: &App) {
    {
        let app = app.dispatcher();
        use_effect_with((), move |()| {
            let listener = platform::on_fragment(move |fragment| {
                app.dispatch(Action::Went(Route::of(&fragment)));
            });
            move || drop(listener)
        });
    }
    let is_first = use_mut_ref(|| true);
    let has_moved = use_mut_ref(|| false);
    let tapped = use_mut_ref(platform::tapped_early);
    let moved = has_moved.clone();
    let dispatcher = app.dispatcher();
    let state = app.clone();
    use_effect_with(app.route.clone(), move |route| {
        platform::title_tab(&pages::title(route));
        let go = |to: Route| {
            let to = tapped.take().map_or(to, |tapped| Route::of(&tapped));
            platform::replace_fragment(&to.href());
            dispatcher.dispatch(Action::Went(to));
        };
        match route {
            Route::Open(text) => {
                super::share::open(text, &state, dispatcher);
                go(Route::Check);
            }
            Route::Embed(text) => {
                match embed::language(text) {
                    Ok(Some(language)) => {
                        wording::speak(language);
                        platform::mark_root("lang", Some(language.tag()));
                    }
                    Ok(None) => {}
                    Err(tag) => dispatcher.dispatch(Action::Tell(Notice {
                        said: t!(
                            "embed-language",
                            read = tag,
                            known = embed::languages_known()
                        ),
                        offer: None,
                    })),
                }
                let to = match embed::presets(text) {
                    Ok((door, rescued)) => {
                        for problem in &rescued.problems {
                            dispatcher.dispatch(Action::Tell(Notice {
                                said: t!("embed-preset-left", why = problems::problem(problem)),
                                offer: None,
                            }));
                        }
                        let had = stored::start_in(state.answers.units);
                        stored::preset(&rescued.answers);
                        let answers = stored::with_ticked(rescued.answers);
                        dispatcher.dispatch(Action::Take(Box::new(answers), Map::new()));
                        if state.answers != had || !state.typed.is_empty() {
                            dispatcher.dispatch(Action::Tell(Notice {
                                said: t!("embed-preset-taken"),
                                offer: Some(state.way_back()),
                            }));
                        }
                        door
                    }
                    Err(problem) => {
                        let answers = stored::with_ticked(state.answers.clone());
                        dispatcher.dispatch(Action::Answer(answers));
                        dispatcher.dispatch(Action::Tell(Notice {
                            said: t!("embed-preset-left", why = problems::parse(&problem)),
                            offer: None,
                        }));
                        Route::Opening
                    }
                };
                go(to);
            }
            Route::Unknown(place) => {
                dispatcher.dispatch(Action::Tell(Notice {
                    said: t!("page-unknown-place", place = place),
                    offer: None,
                }));
                go(Route::Opening);
            }
            _ => {}
        }
        if !is_first.replace(false) {
            platform::show_top();
            platform::focus("title");
            moved.replace(true);
        }
    });
    // The heading that had the keyboard goes with the words of waiting.
    let waits = app.route == Route::Advice && app.advice.is_none();
    use_effect_with(waits, move |waits| {
        if !waits
            && *has_moved.borrow()
            && matches!(platform::focused_id().as_deref(), None | Some("title"))
        {
            platform::focus_soon("title");
        }
    });
}

/// Keeps every answer as it is given.
fn use_storage(app: &App) {
    let is_first = use_mut_ref(|| true);
    {
        let dispatcher = app.dispatcher();
        use_effect_with(
            (app.answers.clone(), app.typed.clone()),
            move |(answers, typed)| {
                // What was just read need not be written; what could not be read stays.
                if is_first.replace(false) {
                    return;
                }
                if let Err(fault) = stored::keep(answers, typed) {
                    dispatcher.dispatch(Action::Tell(Notice {
                        said: match fault {
                            StoreProblem::Denied => t!("stored-denied"),
                            StoreProblem::Full => t!("stored-full"),
                        },
                        offer: None,
                    }));
                }
            },
        );
    }
    let dispatcher = app.dispatcher();
    use_effect_with((), move |()| {
        // Taken down at once: what is answered here is kept in the same place.
        let listener = platform::on_kept_elsewhere(move |name| {
            if name == stored::ANSWERS.0 || name == stored::TYPED.0 {
                let kept = stored::kept().and_then(Result::ok);
                dispatcher.dispatch(Action::Elsewhere(kept.map(|rescued| Offer {
                    answers: Box::new(rescued.answers),
                    typed: stored::kept_typed(),
                    is_elsewhere: true,
                })));
            }
        });
        move || drop(listener)
    });
}
