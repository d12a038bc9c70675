//! Runs the core's own tests as wasm under Node: the same `#[test]`s, the same harness.
//!
//! A test binary for bare wasm exports `main` and needs nothing from outside. It has no
//! way to print, so a failed test shows as a trap whose stack names the test.

use crate::{place, run, say, setup, wasm};
use std::path::PathBuf;
use std::process::Command;

/// What bare wasm has not: files, processes, random seeds for drawn cases.
const NOT_IN_WASM: [&str; 4] = ["std::fs", "std::process", "std::env", "proptest"];

const RUNNER: &str = include_str!("wasm_tests.mjs");

/// Builds and runs them.
///
/// # Errors
/// A suite does not compile or a test fails.
pub fn command() -> Result<(), String> {
    setup::node()?;
    wasm::ensure_target()?;
    let (suites, left_out) = suites()?;
    if !left_out.is_empty() {
        say::detail(&format!(
            "native only (files or drawn cases): {}",
            left_out.join(", ")
        ));
    }
    let modules = modules(&suites)?;
    let runner = place::target().join("xtask/wasm_tests.mjs");
    place::write(&runner, RUNNER.as_bytes())?;
    run::shown(
        Command::new("node")
            .current_dir(place::root())
            .arg(runner)
            .args(modules),
    )
}

/// Names of the suites in tests/ that can run, and of those that cannot.
fn suites() -> Result<(Vec<String>, Vec<String>), String> {
    let folder = place::root().join("tests");
    let mut can = Vec::new();
    let mut cannot = Vec::new();
    for file in place::files(&folder)? {
        let Some(name) = file.strip_suffix(".rs").filter(|name| !name.contains('/')) else {
            continue;
        };
        let mut source = place::text(&folder.join(&file))?;
        for part in place::files(&folder.join(name)).unwrap_or_default() {
            source.push_str(&place::text(&folder.join(name).join(part))?);
        }
        let needs_more = NOT_IN_WASM.iter().any(|word| source.contains(word));
        if needs_more { &mut cannot } else { &mut can }.push(name.to_owned());
    }
    Ok((can, cannot))
}

fn modules(suites: &[String]) -> Result<Vec<PathBuf>, String> {
    let mut cargo = place::cargo();
    cargo.args([
        "test",
        "--no-run",
        "--locked",
        "--target",
        wasm::TARGET,
        "--lib",
    ]);
    for suite in suites {
        cargo.args(["--test", suite]);
    }
    run::shown(&mut cargo)?;
    let messages = run::quiet(cargo.args(["--message-format", "json"]))?;
    Ok(messages.lines().filter_map(test_module).collect())
}

/// The module named in one of cargo's messages, if it is a test's.
fn test_module(message: &str) -> Option<PathBuf> {
    // The profile's word, not the target's: that one also ends so, but another field follows.
    if !message.contains("\"test\":true},\"features\"") {
        return None;
    }
    let rest = message.split("\"executable\":\"").nth(1)?;
    Some(PathBuf::from(rest.split('"').next()?))
}

#[cfg(test)]
mod tests {
    use super::test_module;
    use std::path::PathBuf;

    #[test]
    fn finds_the_module_of_a_test_alone() {
        let test = r#"{"reason":"compiler-artifact","profile":{"opt_level":"1","test":true},"features":[],"executable":"/a/b.wasm","fresh":true}"#;
        assert_eq!(test_module(test), Some(PathBuf::from("/a/b.wasm")));
        assert_eq!(test_module(&test.replace("true}", "false}")), None);
        assert_eq!(test_module(&test.replace("\"/a/b.wasm\"", "null")), None);
    }
}
