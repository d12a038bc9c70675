//! Says each step and how long it took.

use std::time::Instant;

/// Runs one step, named before it starts and timed when it is done.
pub fn step<T>(name: &str, work: impl FnOnce() -> Result<T, String>) -> Result<T, String> {
    println!("▸ {name}");
    let start = Instant::now();
    let done = work();
    let seconds = start.elapsed().as_secs_f64();
    match &done {
        Ok(_) => println!("  done in {seconds:.1} s"),
        Err(_) => println!("  failed after {seconds:.1} s"),
    }
    done
}

/// One line of detail under the step that is running.
pub fn detail(text: &str) {
    println!("  {text}");
}
