//! The ranking beside the page: what is asked, what comes back, and what is too late.

use super::platform::{RankingWorker, Reply, Timeout, breath};
use super::route::Route;
use super::state::{Action, App, Dispatcher};
use crate::advice::surety::{self, Worlds};
use crate::advice::tell::Telling;
use crate::advice::{Advice, Ranking};
use crate::need;
use crate::need::answers::Answers;
use crate::plain;
use crate::plain::Gathered;
use crate::plain::Together;
use crate::web::shared::Shared;
use crate::web::view::{use_effect_with, use_mut_ref};
use scopewright_html::Passed;
use std::cell::{Cell, RefCell};
use std::rc::Rc;
use wasm_bindgen_futures::spawn_local;

/// A job for the worker.
struct Job {
    revision: u32,
    answers: Answers,
}

impl Job {
    /// The revision, a space, and the answers as they are saved.
    fn written(&self) -> String {
        format!("{} {}", self.revision, need::to_json(&self.answers))
    }

    fn read(text: &str) -> Option<Self> {
        let (revision, answers) = text.split_once(' ')?;
        Some(Self {
            revision: revision.parse().ok()?,
            answers: need::parse(answers).ok()?,
        })
    }
}

/// What comes back, once or more often: how far the plausible worlds are, the advice first
/// without and then with how sure it is, or why there is none.
#[derive(Default, Passed)]
struct Done {
    revision: u32,
    advice: Option<Advice>,
    problem: Option<String>,
    /// Plausible worlds tried so far.
    tried: u32,
}

/// Whoever is told what is done.
type Tell = Rc<dyn Fn(Done)>;

thread_local! {
    /// The revision asked for last: what is older is given up.
    static LATEST: Cell<u32> = const { Cell::new(0) };
    /// The job asked of the worker last, for when the worker breaks over it.
    static ASKED: RefCell<String> = const { RefCell::new(String::new()) };
}

/// A slice of the work in the worker, in seconds: between two a newer job gets in.
const WORKER_SLICE_S: f64 = 0.05;
/// A slice of the work on the page itself, in seconds: between two it stays usable.
const PAGE_SLICE_S: f64 = 0.008;
/// Plausible worlds between two words about them.
const WORLDS_A_WORD: u32 = 4;

/// The worker's half: answers one job with the advice, and again once it is known how sure
/// that is, unless another job comes in between.
pub fn answer(text: &str, reply: &Reply) {
    let Some(job) = Job::read(text) else {
        return;
    };
    let reply = Rc::clone(reply);
    start(
        job,
        WORKER_SLICE_S,
        Rc::new(move |done: Done| reply(&plain::written(done))),
    );
}

fn start(job: Job, slice_s: f64, tell: Tell) {
    LATEST.set(job.revision);
    spawn_local(async move {
        // None: given up for a newer job.
        let _ = work(job, slice_s, tell).await;
    });
}

/// Work in slices; a newer job ends it.
#[derive(Clone, Copy)]
struct Slices {
    revision: u32,
    slice_s: f64,
}

impl Slices {
    /// Lets others have a turn, then works for a slice or until `step` says that all is done;
    /// none when a newer job has come.
    async fn next(self, mut step: impl FnMut() -> bool) -> Option<bool> {
        breath().await;
        if LATEST.get() != self.revision {
            return None;
        }
        let end_s = super::platform::now_unix_s() + self.slice_s;
        loop {
            if step() {
                return Some(true);
            }
            if super::platform::now_unix_s() >= end_s {
                return Some(false);
            }
        }
    }

    async fn all(self, mut step: impl FnMut() -> bool) -> Option<()> {
        while !self.next(&mut step).await? {}
        Some(())
    }
}

/// Candidates ranked between two looks at the clock: a millisecond or less.
const AT_ONCE: usize = 256;

async fn work(job: Job, slice_s: f64, tell: Tell) -> Option<()> {
    let revision = job.revision;
    let problems = need::check(&job.answers);
    if !problems.is_empty() {
        let said: Vec<String> = problems
            .iter()
            .map(crate::wording::problems::problem)
            .gathered();
        tell(Done {
            revision,
            problem: Some(said.together(" ")),
            ..Done::default()
        });
        return None;
    }
    let slices = Slices { revision, slice_s };
    let ranking = |answers: &Answers| Ranking::new(&need::resolve(answers));
    let mut own = ranking(&job.answers);
    slices.all(|| own.step(AT_ONCE)).await?;
    let ranked = own.finish();
    let mut telling = Telling::new(&ranked);
    slices.all(|| telling.step()).await?;
    let picks = telling.picks();
    let mut advice = telling.finish();
    tell(Done {
        revision,
        advice: Some(advice.clone()),
        ..Done::default()
    });
    let mut worlds = Worlds::new(&ranked, &picks);
    let mut told = 0;
    while !slices.next(|| worlds.step_some(AT_ONCE)).await? {
        let (tried, _) = worlds.progress();
        if tried >= told + WORLDS_A_WORD {
            told = tried;
            tell(Done {
                revision,
                tried,
                ..Done::default()
            });
        }
    }
    let mut others = Vec::new();
    for other in surety::other_answers(&job.answers) {
        let mut there = ranking(&other.answers);
        slices.all(|| there.step(AT_ONCE)).await?;
        others.push(surety::matters(&ranked, &other, &there.finish()));
    }
    worlds.tell(&mut advice, others);
    tell(Done {
        revision,
        advice: Some(advice),
        ..Done::default()
    });
    Some(())
}

fn hear(dispatcher: Dispatcher, done: Done) {
    dispatcher.dispatch(match (done.advice, done.problem) {
        (Some(advice), _) => Action::Advised(done.revision, Shared::new(advice)),
        (None, Some(problem)) => Action::Failed(done.revision, problem),
        (None, None) => Action::Tried(done.revision, done.tried),
    });
}

/// Says that there is no worker, and ranks on the page.
fn go_on_alone(dispatcher: Dispatcher, job: Job) {
    dispatcher.dispatch(Action::Tell(super::state::Notice {
        said: crate::t!("worker-absent"),
        offer: None,
    }));
    start(
        job,
        PAGE_SLICE_S,
        Rc::new(move |done| hear(dispatcher, done)),
    );
}

/// How long answers must rest before they are ranked, in ms.
const REST_MS: u32 = 120;

/// Ranks whenever the answers change; what is too late is dropped by the reducer.
pub fn use_ranking(app: &App) {
    let worker = use_mut_ref(|| None::<RankingWorker>);
    let is_broken = use_mut_ref(|| false);
    let dispatcher = app.dispatcher();
    let answers = app.answers.clone();
    let wanted = app.has_answers() || matches!(app.route, Route::Advice | Route::Shelf);
    use_effect_with((app.revision, wanted), move |(revision, wanted)| {
        let timer = wanted.then(|| {
            let job = Job {
                revision: *revision,
                answers,
            };
            Timeout::new(REST_MS, move || {
                ask(&worker, &is_broken, dispatcher, job);
            })
        });
        move || drop(timer)
    });
}

fn ask(
    worker: &Rc<RefCell<Option<RankingWorker>>>,
    is_broken: &Rc<RefCell<bool>>,
    dispatcher: Dispatcher,
    job: Job,
) {
    if worker.borrow().is_none() && !*is_broken.borrow() {
        let broken = Rc::clone(is_broken);
        *worker.borrow_mut() = RankingWorker::start(
            move |bytes| {
                let done = plain::read(bytes);
                let is_read = done.is_some();
                if let Some(done) = done {
                    hear(dispatcher, done);
                }
                is_read
            },
            move || {
                if broken.replace(true) {
                    return;
                }
                let asked = ASKED.with_borrow(String::clone);
                if let Some(job) = Job::read(&asked) {
                    go_on_alone(dispatcher, job);
                }
            },
        );
    }
    let text = job.written();
    let worker = worker.borrow();
    match worker.as_ref() {
        Some(worker) if !*is_broken.borrow() => {
            ASKED.set(text.clone());
            worker.ask(text);
        }
        _ => go_on_alone(dispatcher, job),
    }
}
