//! `cargo xtask sheet`: the drawings at several sizes, to be looked at.

use crate::{Done, browsers, place, run, say, setup};
use std::process::Command;

/// Runs examples/sheet.rs, which writes pages into the folder it is given, and takes a
/// picture of each; `cargo xtask sheet 7` makes sheets without labels, shuffled by the number.
///
/// # Errors
/// The sheet does not compile or cannot be drawn.
pub fn command(arguments: &[String]) -> Done {
    let folder = place::target().join("sheet");
    let tests = place::root().join("tests/browser");
    say::step("Drawing the sheet", || {
        let mut cargo = place::cargo();
        cargo
            .args(["run", "--quiet", "--locked", "--example", "sheet", "--"])
            .arg(&folder)
            .args(arguments);
        run::shown(&mut cargo)
    })?;
    setup::npm(&tests)?;
    let programs = browsers::chromium()?;
    say::step("Taking its picture", || {
        let mut node = Command::new("node");
        node.current_dir(&tests)
            .arg("sheet.mjs")
            .arg(&folder)
            .envs(programs);
        run::shown(&mut node)
    })
}
