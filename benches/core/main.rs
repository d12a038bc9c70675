//! How long the core's inner parts take: `cargo xtask bench`.
//!
//! Each part is timed in batches of at least 20 ms; the median of 15 batches is printed,
//! with the middle half of them as spread. Ratios say what a shortcut is worth on whatever
//! machine this runs. A new part is a line in one of the modules, a new module a line here.

mod eye;
mod flight;
mod meter;
mod ranking;
mod sky;

fn main() {
    let mut meter = meter::Meter::default();
    eye::run(&mut meter);
    sky::run(&mut meter);
    flight::run(&mut meter);
    ranking::run(&mut meter);
    if let Some(path) = std::env::var_os("SCOPEWRIGHT_MEDIANS") {
        meter.leave(path.as_ref());
    }
}
