//! `cargo xtask soak`: uses the page for a while and watches that nothing grows.

use crate::{Done, browsers, build, place, run, say, setup};
use std::process::Command;

/// Builds the page and walks through all of it, many times over.
///
/// # Errors
/// The page does not build, reports a problem, or grows.
pub fn command(arguments: &[String]) -> Done {
    build::command()?;
    let tests = place::root().join("tests/browser");
    setup::npm(&tests)?;
    let programs = browsers::chromium()?;
    say::step("Using the page for a while", || {
        let mut node = Command::new("node");
        node.current_dir(&tests)
            .arg("soak.mjs")
            .args(arguments)
            .envs(programs);
        run::shown(&mut node)
    })
}
