//! `cargo xtask bench`: medians and ratios of the core's inner parts.

use crate::{Done, place, run, say};

/// Runs benches/.
///
/// # Errors
/// They do not compile.
pub fn command() -> Done {
    say::step("Timing the core, native, as released", || {
        run::shown(place::cargo().args(["bench", "--locked", "--bench", "core"]))
    })
}
