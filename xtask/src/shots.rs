//! `cargo xtask shots`: a picture of every page at every size in both themes.

use crate::{Done, browsers, build, place, run, say, setup};
use std::process::Command;

/// Takes the pictures; README's own go to docs/.
///
/// # Errors
/// The page does not build, or a page cannot be reached.
pub fn command(arguments: &[String]) -> Done {
    build::command()?;
    let folder = place::root().join("tests/browser");
    setup::npm(&folder)?;
    let programs = browsers::chromium()?;
    say::step("Taking the pictures", || {
        let mut node = Command::new("node");
        node.current_dir(&folder)
            .arg("shots.mjs")
            .args(arguments)
            .envs(programs);
        run::shown(&mut node)
    })
}
