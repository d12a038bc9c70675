//! A worker that runs the same module; it is asked in JSON text and answers in bytes.

use super::{Timeout, module_addresses};
use std::cell::RefCell;
use std::rc::Rc;
use wasm_bindgen::{JsCast, JsValue, closure::Closure};
use web_sys::{DedicatedWorkerGlobalScope, MessageEvent, Worker, WorkerOptions, WorkerType};

/// The first word of a worker that is up.
const READY: &str = "ready";

/// Whether this instance of the module runs in a worker.
#[must_use]
pub fn in_worker() -> bool {
    js_sys::global()
        .dyn_into::<DedicatedWorkerGlobalScope>()
        .is_ok()
}

/// Sends bytes back to the page.
pub type Reply = Rc<dyn Fn(&[u8])>;

/// Answers every job with `answer`, for as long as the worker lives.
///
/// `answer` gets the job's text and a function that sends bytes back, once or more often.
pub fn answer_jobs(answer: impl Fn(&str, &Reply) + 'static) {
    let Ok(scope) = js_sys::global().dyn_into::<DedicatedWorkerGlobalScope>() else {
        return;
    };
    let post = scope.clone();
    let reply: Reply = Rc::new(move |bytes| {
        // Bytes can always be cloned; there is nobody else to tell.
        let _ = post.post_message(&js_sys::Uint8Array::from(bytes));
    });
    let heard = Closure::<dyn FnMut(MessageEvent)>::new(move |event: MessageEvent| {
        if let Some(text) = event.data().as_string() {
            answer(&text, &reply);
        }
    });
    scope.set_onmessage(Some(heard.as_ref().unchecked_ref()));
    heard.forget();
    let _ = scope.post_message(&READY.into());
}

/// How long a worker may be silent over a job before it is given up, in ms: several times what
/// a slow phone needs to start one and to rank.
const PATIENCE_MS: u32 = 10_000;

#[derive(Default)]
struct Line {
    ready: bool,
    waiting: Option<String>,
    /// Runs from a job to the first that is heard of it.
    patience: Option<Timeout>,
}

/// The page's end of a worker.
pub struct RankingWorker {
    worker: Worker,
    line: Rc<RefCell<Line>>,
    failed: Rc<dyn Fn()>,
    _heard: Closure<dyn FnMut(MessageEvent)>,
    _failed: Closure<dyn FnMut(JsValue)>,
}

impl RankingWorker {
    /// Starts a worker; none where the browser gives none.
    ///
    /// `heard` gets each reply and says whether it could be read; `failed` is called when the
    /// worker breaks, or is silent for too long.
    #[must_use]
    pub fn start(
        heard: impl Fn(Vec<u8>) -> bool + 'static,
        failed: impl Fn() + 'static,
    ) -> Option<Self> {
        let (glue, module) = module_addresses()?;
        let script = super::absolute("worker.js")?;
        let options = WorkerOptions::new();
        options.set_type(WorkerType::Module);
        // Addresses travel in the name: a query would be lost behind the offline copy.
        options.set_name(&format!("{glue} {module}"));
        let worker = Worker::new_with_options(&script, &options).ok()?;
        let line = Rc::new(RefCell::new(Line::default()));

        let to = worker.clone();
        let queue = Rc::clone(&line);
        let on_message = Closure::<dyn FnMut(MessageEvent)>::new(move |event: MessageEvent| {
            if let Some(bytes) = event.data().dyn_ref::<js_sys::Uint8Array>() {
                if heard(bytes.to_vec()) {
                    queue.borrow_mut().patience = None;
                }
            } else if event.data().as_string().as_deref() == Some(READY) {
                let mut queue = queue.borrow_mut();
                queue.ready = true;
                if let Some(job) = queue.waiting.take() {
                    let _ = to.post_message(&job.into());
                }
            }
        });
        worker.set_onmessage(Some(on_message.as_ref().unchecked_ref()));
        let failed: Rc<dyn Fn()> = Rc::new(failed);
        let breaks = Rc::clone(&failed);
        let on_error = Closure::<dyn FnMut(JsValue)>::new(move |_| breaks());
        worker.set_onerror(Some(on_error.as_ref().unchecked_ref()));
        Some(Self {
            worker,
            line,
            failed,
            _heard: on_message,
            _failed: on_error,
        })
    }

    /// Asks for a job; one that still waits for the worker to come up is replaced.
    pub fn ask(&self, job: String) {
        let mut line = self.line.borrow_mut();
        let failed = Rc::clone(&self.failed);
        line.patience = Some(Timeout::new(PATIENCE_MS, move || failed()));
        if line.ready {
            let _ = self.worker.post_message(&job.into());
        } else {
            line.waiting = Some(job);
        }
    }
}

impl Drop for RankingWorker {
    fn drop(&mut self) {
        self.worker.terminate();
    }
}
