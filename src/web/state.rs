//! What the page knows, and every way it can change.

use super::fields::{self, Field};
use super::route::Route;
use super::{stored, view};
use crate::advice::Advice;
use crate::need::answers::Answers;
use crate::need::counter::{Act, Counter};
use crate::need::questions::{QUESTIONS, Question};
use crate::need::{Reply, apply};
use crate::plain::Map;
use crate::web::shared::Shared;
use std::cell::RefCell;
use std::ops::Deref;
use std::rc::Rc;

/// Something to be told at the top of the page.
#[derive(Clone, Debug, PartialEq)]
pub struct Notice {
    /// The words.
    pub said: String,
    /// What can be done about it.
    pub offer: Option<Offer>,
}

/// What a notice offers: answers in the place of those that are there, and what stands in typed
/// fields with them.
#[derive(Clone, Debug, PartialEq)]
pub struct Offer {
    /// The answers.
    pub answers: Box<Answers>,
    /// What was typed.
    pub typed: Map<String, String>,
    /// They come from another tab; else they are those from before.
    pub is_elsewhere: bool,
}

/// Which colours.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Theme {
    /// As the system has it.
    #[default]
    System,
    /// Light.
    Day,
    /// Dark.
    Night,
}

impl Theme {
    /// The theme kept under this name.
    #[must_use]
    pub fn named(name: &str) -> Self {
        match name {
            "day" => Self::Day,
            "night" => Self::Night,
            _ => Self::System,
        }
    }

    /// The name it is kept under, none for the system's.
    #[must_use]
    pub fn name(self) -> Option<&'static str> {
        match self {
            Self::System => None,
            Self::Day => Some("day"),
            Self::Night => Some("night"),
        }
    }
}

/// What the page knows.
#[derive(Clone, Debug, PartialEq)]
pub struct State {
    /// Where one is.
    pub route: Route,
    /// One went back rather than on.
    pub went_back: bool,
    /// The answers.
    pub answers: Answers,
    /// The answers before each change, for undo; the latest last.
    pub before: Vec<Answers>,
    /// What stands in typed fields, as it was typed.
    pub typed: Map<String, String>,
    /// Counts changes of the answers: results for another count are stale.
    pub revision: u32,
    /// The advice for `advice_revision`.
    pub advice: Option<Shared<Advice>>,
    /// Which answers the advice is for.
    pub advice_revision: u32,
    /// The answers of the last advice that was not late.
    pub advised: Answers,
    /// Which answers those are.
    pub advised_revision: u32,
    /// The answers and the advice before those.
    pub advised_before: Option<(Answers, Shared<Advice>)>,
    /// Plausible worlds tried so far for that advice.
    pub tried: u32,
    /// Why there is no advice for these answers.
    pub problem: Option<String>,
    /// What is to be told.
    pub notices: Vec<Notice>,
    /// Which colours.
    pub theme: Theme,
}

/// A change.
#[expect(
    clippy::large_enum_variant,
    reason = "an action lives for one dispatch"
)]
pub enum Action {
    /// Went to a place.
    Went(Route),
    /// Other answers.
    Answer(Answers),
    /// A reply to a question.
    Reply(Reply),
    /// Other text in a typed field.
    Type(Field, String),
    /// A ready-made value instead of what was typed in a field.
    Pick(Field, Reply),
    /// Something done at the counter: undo, the next customer, a usual kind of shooting.
    At(Act),
    /// Other answers and texts altogether, as from a link or another tab.
    Take(Box<Answers>, Map<String, String>),
    /// Nothing any more.
    Forget,
    /// The advice for a revision.
    Advised(u32, Shared<Advice>),
    /// So many plausible worlds are tried for a revision.
    Tried(u32, u32),
    /// A revision that cannot be advised on.
    Failed(u32, String),
    /// Something to tell.
    Tell(Notice),
    /// What another tab has kept now, or that it has forgotten everything.
    Elsewhere(Option<Offer>),
    /// Told.
    Dismiss(usize),
    /// Other colours.
    Colour(Theme),
}

impl State {
    /// The advice, and whether it is for older answers than these.
    #[must_use]
    pub fn advice(&self) -> Option<(Shared<Advice>, bool)> {
        self.advice
            .clone()
            .map(|advice| (advice, self.advice_revision != self.revision))
    }

    /// Whether anything was answered.
    #[must_use]
    pub fn has_answers(&self) -> bool {
        let blank = stored::blank(self.answers.units);
        self.answers != blank
    }

    /// The answers that are there, to be had back when others take their place.
    #[must_use]
    pub fn way_back(&self) -> Offer {
        Offer {
            answers: Box::new(self.answers.clone()),
            typed: self.typed.clone(),
            is_elsewhere: false,
        }
    }

    /// Lets go of everything that was said, and of advice that is still on its way.
    fn forget(&mut self) {
        self.typed.clear();
        self.notices.clear();
        self.advice = None;
        self.advised_before = None;
        self.problem = None;
        self.revision += 1;
        self.advice_revision = self.revision;
    }

    /// Goes one step on in the history of the answers.
    fn step(&mut self, of: impl FnOnce(&Counter) -> Counter) {
        let now = Counter::going_on(self.answers.clone(), std::mem::take(&mut self.before));
        let next = of(&now);
        if next.answers() != &self.answers {
            self.revision += 1;
            self.problem = None;
        }
        (self.answers, self.before) = next.into_parts();
    }

    /// Lets go of typed texts that were read, so that fields show their values in other units.
    fn forget_read(&mut self) {
        for question in &QUESTIONS {
            for field in fields::fields_of(question, &self.answers) {
                if field.quantity().is_some()
                    && fields::problem(field, &self.answers, &self.typed).is_none()
                {
                    self.typed.remove(&field.id());
                }
            }
        }
    }

    fn answer(&mut self, answers: Answers) {
        self.step(|now| now.with(answers));
    }
}

impl State {
    /// The state after a change.
    fn after(&self, action: Action) -> Self {
        let mut next = self.clone();
        match action {
            Action::Went(route) => {
                next.went_back = super::pages::order(&route) < super::pages::order(&self.route);
                next.route = route;
            }
            Action::Answer(answers) => {
                if answers.units != next.answers.units {
                    next.forget_read();
                }
                next.answer(answers);
            }
            Action::Reply(reply) => {
                if let Reply::NotSure(key) | Reply::Clear(key) = &reply
                    && let Some(question) = Question::from_key(key)
                {
                    for field in fields::fields_of(question, &next.answers) {
                        next.typed.remove(&field.id());
                    }
                }
                next.answer(apply(&next.answers, &reply));
            }
            Action::Type(field, text) => {
                next.answer(fields::typed(&next.answers, field, &text));
                next.typed.insert(field.id(), text);
            }
            Action::Pick(field, reply) => {
                next.typed.remove(&field.id());
                next.answer(apply(&next.answers, &reply));
            }
            Action::At(act) => {
                next.step(|now| now.after(&act));
                match act {
                    Act::NextCustomer => {
                        next.answers = stored::start_in(next.answers.units);
                        next.forget();
                    }
                    // What was typed belonged to other answers.
                    Act::Undo | Act::Open(_) => next.typed.clear(),
                    _ => {}
                }
            }
            Action::Take(answers, typed) => {
                next.answer(*answers);
                next.typed = typed;
            }
            Action::Forget => {
                next.answers = stored::start();
                next.before.clear();
                next.forget();
            }
            Action::Advised(revision, advice) => {
                // What was asked for older answers never replaces what is newer.
                if revision >= next.advice_revision {
                    if revision == next.revision {
                        // The same answers again: what led to them is still what changed last.
                        if next.advised != next.answers {
                            let advised = next.advised.clone();
                            next.advised = next.answers.clone();
                            // What was late is not what those answers brought.
                            next.advised_before = next
                                .advice
                                .take()
                                .filter(|_| next.advised_revision == next.advice_revision)
                                .map(|before| (advised, before));
                        }
                        next.advised_revision = revision;
                    }
                    next.advice = Some(advice);
                    next.advice_revision = revision;
                    next.tried = 0;
                    if revision == next.revision {
                        next.problem = None;
                    }
                }
            }
            Action::Tried(revision, tried) => {
                if revision == next.advice_revision {
                    next.tried = tried;
                }
            }
            Action::Failed(revision, why) => {
                if revision == next.revision {
                    next.problem = Some(why);
                }
            }
            Action::Tell(notice) => {
                if !next.notices.contains(&notice) {
                    next.notices.push(notice);
                }
            }
            Action::Elsewhere(offer) => {
                next.notices
                    .retain(|each| !(each.offer.as_ref()).is_some_and(|offer| offer.is_elsewhere));
                next.notices.extend(offer.map(|offer| Notice {
                    said: crate::t!("stored-elsewhere"),
                    offer: Some(offer),
                }));
            }
            Action::Dismiss(at) => {
                if at < next.notices.len() {
                    next.notices.remove(at);
                }
            }
            Action::Colour(theme) => next.theme = theme,
        }
        next
    }
}

thread_local! {
    static STATE: RefCell<Option<Rc<State>>> = const { RefCell::new(None) };
}

/// The state and the way to change it, for every page and part.
#[derive(Clone)]
pub struct App(Rc<State>);

impl Deref for App {
    type Target = State;

    fn deref(&self) -> &State {
        &self.0
    }
}

impl App {
    /// Changes the state; whoever looks at it is drawn again.
    pub fn dispatch(&self, action: Action) {
        Dispatcher.dispatch(action);
    }

    /// The way to change the state, without what it is now.
    #[must_use]
    pub fn dispatcher(&self) -> Dispatcher {
        Dispatcher
    }
}

/// The way to change the state.
#[derive(Clone, Copy)]
pub struct Dispatcher;

impl Dispatcher {
    /// Changes the state; whoever looks at it is drawn again.
    pub fn dispatch(self, action: Action) {
        let Some(now) = STATE.with_borrow(Clone::clone) else {
            return;
        };
        STATE.set(Some(Rc::new(now.after(action))));
        view::shared_changed();
    }
}

/// What the page knows to begin with.
pub fn begin(state: State) {
    STATE.set(Some(Rc::new(state)));
}

/// The state inside any part of the page.
///
/// Outside the page's own tree there is none; then nothing is shown.
#[must_use]
pub fn use_app() -> Option<App> {
    view::reads_shared();
    STATE.with_borrow(Clone::clone).map(App)
}

#[cfg(test)]
mod tests {
    use super::{Action, State, Theme};
    use crate::advice::Advice;
    use crate::advice::tell::advise;
    use crate::need::answers::Answers;
    use crate::need::kinds::Kind;
    use crate::plain::Map;
    use crate::web::route::Route;
    use crate::web::shared::Shared;

    fn filled(kind: &str) -> Answers {
        Kind::from_key(kind).unwrap().fill(&Answers::default())
    }

    fn at_first(answers: Answers) -> State {
        State {
            route: Route::Advice,
            went_back: false,
            answers,
            before: Vec::new(),
            typed: Map::new(),
            revision: 1,
            advice: None,
            advice_revision: 0,
            tried: 0,
            advised_revision: 0,
            advised: Answers::default(),
            advised_before: None,
            problem: None,
            notices: Vec::new(),
            theme: Theme::System,
        }
    }

    fn advised(state: &State) -> State {
        let advice: Shared<Advice> = Shared::new(advise(&state.answers).unwrap());
        state.after(Action::Advised(state.revision, advice))
    }

    #[test]
    fn answers_changed_and_changed_back_are_no_change() {
        let (deer, boar) = (filled("seat_evening"), filled("boar_by_night"));
        let first = advised(&at_first(deer.clone()));
        assert!(first.advised_before.is_none());
        let changed = advised(&first.after(Action::Answer(boar.clone())));
        let before = |state: &State| state.advised_before.clone().map(|(answers, _)| answers);
        assert_eq!(before(&changed), Some(deer.clone()));
        // How sure it is comes later, for the same answers.
        assert_eq!(before(&advised(&changed)), Some(deer.clone()));
        // There and back before anything was advised, and with advice on the way that is late.
        let there = changed.after(Action::Answer(filled("hill")));
        let late: Shared<Advice> = Shared::new(advise(&there.answers).unwrap());
        let back = there.after(Action::Answer(boar.clone()));
        assert!(back.revision > changed.revision);
        assert_eq!(before(&advised(&back)), Some(deer.clone()));
        let told_late = back.after(Action::Advised(there.revision, late));
        assert_eq!(before(&advised(&told_late)), Some(deer.clone()));
        // What was advised there is a change of its own.
        let there = advised(&advised(&back).after(Action::Answer(filled("hill"))));
        assert_eq!(before(&there), Some(boar));
        let back = advised(&there.after(Action::Answer(deer)));
        assert_eq!(before(&back), Some(filled("hill")));
    }
}
