//! Times small pieces of work.

use std::hint::black_box;
use std::time::{Duration, Instant};

const BATCHES: usize = 15;
const BATCH: Duration = Duration::from_millis(20);

/// Times, prints, and remembers for ratios.
#[derive(Default)]
pub struct Meter {
    medians_ns: Vec<(&'static str, f64)>,
}

impl Meter {
    /// Times one piece of work and prints its median.
    pub fn time<T>(&mut self, name: &'static str, mut work: impl FnMut() -> T) {
        let mut times = 1;
        while batch(times, &mut work) < BATCH {
            times *= 2;
        }
        let mut each_ns: Vec<f64> = (0..BATCHES)
            .map(|_| batch(times, &mut work).as_secs_f64() * 1e9 / f64::from(times))
            .collect();
        each_ns.sort_by(f64::total_cmp);
        let [low, median, high] =
            [BATCHES / 4, BATCHES / 2, BATCHES - 1 - BATCHES / 4].map(|at| each_ns[at]);
        println!(
            "  {:>12}  {name}  ({} to {})",
            told(median),
            told(low),
            told(high)
        );
        self.medians_ns.push((name, median));
    }

    /// Takes over a median that was measured elsewhere in the same run.
    pub fn take(&mut self, name: &'static str, median_ns: f64) {
        println!("  {:>12}  {name}", told(median_ns));
        self.medians_ns.push((name, median_ns));
    }

    /// Leaves the medians as lines of name, tab and nanoseconds.
    pub fn leave(&self, path: &std::path::Path) {
        let lines: Vec<String> = self
            .medians_ns
            .iter()
            .map(|(name, ns)| format!("{name}\t{ns}\n"))
            .collect();
        if let Err(error) = std::fs::write(path, lines.concat()) {
            println!("  (medians not left for the browser's ratios: {error})");
        }
    }

    /// Prints how many times as long the first takes as the second.
    pub fn ratio(&self, slow: &str, fast: &str) {
        let median = |name: &str| self.medians_ns.iter().find(|(known, _)| *known == name);
        if let (Some((_, slow_ns)), Some((_, fast_ns))) = (median(slow), median(fast)) {
            println!("  {:>11.1}x  {slow} / {fast}", slow_ns / fast_ns);
        }
    }
}

#[expect(
    clippy::disallowed_methods,
    reason = "a benchmark reads the clock, and runs natively alone"
)]
fn batch<T>(times: u32, work: &mut impl FnMut() -> T) -> Duration {
    let start = Instant::now();
    for _ in 0..times {
        black_box(work());
    }
    start.elapsed()
}

fn told(ns: f64) -> String {
    match ns {
        ns if ns < 1e3 => format!("{ns:.0} ns"),
        ns if ns < 1e6 => format!("{:.1} µs", ns / 1e3),
        ns => format!("{:.2} ms", ns / 1e6),
    }
}
