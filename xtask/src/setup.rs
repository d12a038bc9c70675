//! Sees that what a step needs is there, and fetches what is missing.

use crate::{hash, place, run, say};
use std::path::Path;
use std::process::Command;

const OLDEST_NODE: u32 = 20;

/// rustfmt and clippy, which rustup's minimal profile leaves out.
///
/// # Errors
/// They are missing and rustup cannot add them.
pub fn rust_tools() -> Result<(), String> {
    for (program, component) in [("cargo-fmt", "rustfmt"), ("cargo-clippy", "clippy")] {
        if works(program) {
            continue;
        }
        say::step(&format!("Adding {component}"), || {
            run::shown(Command::new("rustup").args(["component", "add", component])).map_err(
                |message| format!("{message}\nAdd it by hand: rustup component add {component}"),
            )
        })?;
    }
    Ok(())
}

fn works(program: &str) -> bool {
    Command::new(program)
        .arg("--version")
        .output()
        .is_ok_and(|output| output.status.success())
}

/// Node in a version that runs the browser tests.
///
/// # Errors
/// Node is missing or too old.
pub fn node() -> Result<(), String> {
    let advice =
        format!("install Node {OLDEST_NODE} or later (with npm) and see that it is on PATH");
    let output = Command::new("node").arg("--version").output();
    let version = output
        .map(|output| String::from_utf8_lossy(&output.stdout).trim().to_owned())
        .map_err(|error| format!("node does not start ({error}): {advice}"))?;
    let major: Option<u32> = version
        .trim_start_matches('v')
        .split('.')
        .next()
        .and_then(|number| number.parse().ok());
    match major {
        Some(major) if major >= OLDEST_NODE => Ok(()),
        _ => Err(format!("node says it is {version:?}: {advice}")),
    }
}

/// The npm packages of a folder, as its lock names them; nothing to do when they are there.
///
/// # Errors
/// npm is missing or cannot fetch them.
pub fn npm(folder: &Path) -> Result<(), String> {
    node()?;
    let lock = place::bytes(&folder.join("package-lock.json"))?;
    let stamp = folder.join("node_modules/.of-lock");
    let wanted = hash::of(&lock);
    if std::fs::read_to_string(&stamp).is_ok_and(|found| found == wanted) {
        return Ok(());
    }
    let name = folder.strip_prefix(place::root()).unwrap_or(folder);
    say::step(
        &format!("Fetching the npm packages of {}", name.display()),
        || {
            let mut npm = Command::new(if cfg!(windows) { "npm.cmd" } else { "npm" });
            npm.current_dir(folder).args([
                "ci",
                "--ignore-scripts",
                "--no-audit",
                "--no-fund",
                "--loglevel=error",
            ]);
            run::quiet(&mut npm)?;
            place::write(&stamp, wanted.as_bytes())
        },
    )
}
