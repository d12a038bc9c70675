//! The page.

mod app;
mod components;
mod embed;
mod fields;
mod jobs;
mod pages;
pub mod pictures;
pub mod platform;
pub mod route;
mod share;
mod shared;
mod state;
mod stored;
pub mod view;

/// Starts the page, or the worker's half where this runs in a worker.
pub fn start() {
    if platform::in_worker() {
        platform::answer_jobs(jobs::answer);
    } else {
        embed::start();
        app::mount();
    }
}
