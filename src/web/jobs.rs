//! The ranking beside the page: what is asked, what comes back, and what is too late.

use super::platform::{RankingWorker, Reply, Timeout, breath};
use super::route::Route;
use super::state::{Action, App, Dispatcher};
use crate::advice::surety::{self, Worlds};
use crate::advice::{Advice, Ranking};
use crate::need;
use crate::need::answers::Answers;
use crate::web::view::{use_effect_with, use_mut_ref};
use nanoserde::{DeBin, SerBin};
use serde::{Deserialize, Serialize};
use std::cell::{Cell, RefCell};
use std::rc::Rc;
use wasm_bindgen_futures::spawn_local;

/// A job for the worker.
#[derive(Serialize, Deserialize)]
struct Job {
    revision: u32,
    answers: Answers,
}

/// What comes back.
#[derive(SerBin, DeBin)]
struct Done {
    revision: u32,
    advice: Option<Advice>,
    problem: Option<String>,
}

/// The advice for these answers.
fn compute(answers: &Answers) -> Result<Advice, String> {
    crate::advice::advise(answers).map_err(|problems| {
        let said: Vec<String> = problems
            .iter()
            .map(crate::wording::problems::problem)
            .collect();
        said.join(" ")
    })
}

fn done(job: &Job) -> Done {
    let (advice, problem) = match compute(&job.answers) {
        Ok(advice) => (Some(advice), None),
        Err(problem) => (None, Some(problem)),
    };
    Done {
        revision: job.revision,
        advice,
        problem,
    }
}

thread_local! {
    /// The revision asked for last: what is older is given up.
    static LATEST: Cell<u32> = const { Cell::new(0) };
    /// The job asked of the worker last, for when the worker breaks over it.
    static ASKED: RefCell<String> = const { RefCell::new(String::new()) };
}

/// The worker's half: answers one job with the advice, and again once it is known how sure
/// that is, unless another job comes in between.
pub fn answer(text: &str, reply: &Reply) {
    // By way of the one JSON value, as saved answers are read too: half the code to load.
    let Ok(job) = serde_json::from_str(text).and_then(serde_json::from_value::<Job>) else {
        return;
    };
    LATEST.set(job.revision);
    let done = done(&job);
    reply(&done.serialize_bin());
    if let Some(advice) = done.advice {
        spawn_local(tell_surety(job, advice, Rc::clone(reply)));
    }
}

/// Tries the plausible worlds and answers, one at a time, so that a newer job gets in.
async fn tell_surety(job: Job, mut advice: Advice, reply: Reply) {
    let ranked = Ranking::new(&need::resolve(&job.answers)).finish();
    let mut worlds = Worlds::new(&ranked);
    let mut is_over = false;
    while !is_over {
        breath().await;
        if LATEST.get() != job.revision {
            return;
        }
        is_over = worlds.step();
    }
    let mut sure = worlds.surety();
    for other in surety::other_answers(&job.answers) {
        breath().await;
        if LATEST.get() != job.revision {
            return;
        }
        sure.answers.push(surety::matters(&ranked, &other));
    }
    surety::weightiest_first(&mut sure.answers);
    advice.surety = Some(sure);
    let done = Done {
        revision: job.revision,
        advice: Some(advice),
        problem: None,
    };
    reply(&done.serialize_bin());
}

fn hear(dispatcher: Dispatcher, done: Done) {
    match (done.advice, done.problem) {
        (Some(advice), _) => {
            dispatcher.dispatch(Action::Advised(done.revision, Rc::new(advice)));
        }
        (None, problem) => {
            dispatcher.dispatch(Action::Failed(done.revision, problem.unwrap_or_default()))
        }
    }
}

/// A slice of the ranking on the page itself, in seconds.
const SLICE_S: f64 = 0.008;

/// Says that there is no worker, and ranks on the page.
fn go_on_alone(dispatcher: Dispatcher, job: Job) {
    LATEST.set(job.revision);
    dispatcher.dispatch(Action::Tell(super::state::Notice {
        said: crate::t!("worker-absent"),
        offer: None,
    }));
    spawn_local(rank_in_slices(dispatcher, job));
}

/// Without a worker: ranks in slices, so that the page stays usable; a newer job ends it.
async fn rank_in_slices(dispatcher: Dispatcher, job: Job) {
    let problems = need::check(&job.answers);
    if !problems.is_empty() {
        hear(dispatcher, done(&job));
        return;
    }
    let mut ranking = Ranking::new(&need::resolve(&job.answers));
    let mut budget = 64;
    loop {
        breath().await;
        if LATEST.get() != job.revision {
            return;
        }
        let start_s = super::platform::now_unix_s();
        if ranking.step(budget) {
            break;
        }
        let took_s = super::platform::now_unix_s() - start_s;
        // The next slice by what this one took; clocks may be as coarse as a millisecond.
        budget = if took_s > SLICE_S {
            (budget / 2).max(1)
        } else if took_s < 0.5 * SLICE_S {
            (budget * 2).min(4096)
        } else {
            budget
        };
    }
    breath().await;
    let advice = crate::advice::tell(&ranking.finish());
    let done = Done {
        revision: job.revision,
        advice: Some(advice),
        problem: None,
    };
    hear(dispatcher, done);
}

/// How long answers must rest before they are ranked, in ms.
const REST_MS: i32 = 120;

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
                if let Ok(done) = Done::deserialize_bin(&bytes) {
                    hear(dispatcher, done);
                }
            },
            move || {
                if broken.replace(true) {
                    return;
                }
                let asked = ASKED.with_borrow(String::clone);
                if let Ok(job) =
                    serde_json::from_str(&asked).and_then(serde_json::from_value::<Job>)
                {
                    go_on_alone(dispatcher, job);
                }
            },
        );
    }
    let text = serde_json::to_value(&job).map_or_else(|_| String::new(), |job| job.to_string());
    let worker = worker.borrow();
    match worker.as_ref() {
        Some(worker) if !*is_broken.borrow() => {
            ASKED.set(text.clone());
            worker.ask(text);
        }
        _ => go_on_alone(dispatcher, job),
    }
}
