//! `cargo xtask audit`: Lighthouse on the built page, as a phone sees it.

use crate::{Done, browsers, build, place, run, say, setup};
use std::process::Command;

/// Builds the page and prints the scores.
///
/// # Errors
/// The page does not build, or a score lies below its floor.
pub fn command() -> Done {
    build::command()?;
    let tests = place::root().join("tests/browser");
    setup::npm(&tests)?;
    setup::npm(&tests.join("audit"))?;
    let programs = browsers::chromium()?;
    say::step("Lighthouse, mobile", || {
        let mut node = Command::new("node");
        node.current_dir(tests.join("audit"))
            .arg("audit.mjs")
            .envs(programs);
        run::shown(&mut node)
    })
}
