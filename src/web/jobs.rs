//! The ranking beside the page: what is asked, what comes back, and what is too late.

use super::platform::RankingWorker;
use super::state::{Action, App};
use crate::advice::Advice;
use crate::need::answers::Answers;
use nanoserde::{DeBin, SerBin};
use serde::{Deserialize, Serialize};
use std::cell::RefCell;
use std::rc::Rc;
use yew::prelude::*;

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

/// The worker's half: answers one job.
pub fn answer(text: &str, reply: &dyn Fn(&[u8])) {
    // By way of the one JSON value, as saved answers are read too: half the code to load.
    let Ok(job) = serde_json::from_str(text).and_then(serde_json::from_value::<Job>) else {
        return;
    };
    reply(&done(&job).serialize_bin());
}

fn hear(dispatcher: &UseReducerDispatcher<super::state::State>, done: Done) {
    match (done.advice, done.problem) {
        (Some(advice), _) => {
            dispatcher.dispatch(Action::Advised(done.revision, Rc::new(advice)));
        }
        (None, problem) => {
            dispatcher.dispatch(Action::Failed(done.revision, problem.unwrap_or_default()))
        }
    }
}

/// How long answers must rest before they are ranked, in ms.
const REST_MS: u32 = 120;

/// Ranks whenever the answers change; what is too late is dropped by the reducer.
#[hook]
pub fn use_ranking(app: &App) {
    let worker = use_mut_ref(|| None::<RankingWorker>);
    let is_broken = use_mut_ref(|| false);
    let dispatcher = app.dispatcher();
    let answers = app.answers.clone();
    let wanted = app.has_answers() || app.route == super::route::Route::Advice;
    use_effect_with((app.revision, wanted), move |(revision, wanted)| {
        let timer = wanted.then(|| {
            let job = Job {
                revision: *revision,
                answers,
            };
            gloo::timers::callback::Timeout::new(REST_MS, move || {
                ask(&worker, &is_broken, dispatcher, job);
            })
        });
        move || drop(timer)
    });
}

fn ask(
    worker: &Rc<RefCell<Option<RankingWorker>>>,
    is_broken: &Rc<RefCell<bool>>,
    dispatcher: UseReducerDispatcher<super::state::State>,
    job: Job,
) {
    if worker.borrow().is_none() && !*is_broken.borrow() {
        let heard = dispatcher.clone();
        let broken = Rc::clone(is_broken);
        *worker.borrow_mut() = RankingWorker::start(
            move |bytes| {
                if let Ok(done) = Done::deserialize_bin(&bytes) {
                    hear(&heard, done);
                }
            },
            move || {
                broken.replace(true);
            },
        );
    }
    let text = serde_json::to_value(&job).map_or_else(|_| String::new(), |job| job.to_string());
    match worker.borrow().as_ref() {
        Some(worker) if !*is_broken.borrow() => worker.ask(text),
        _ => hear(&dispatcher, done(&job)),
    }
}
