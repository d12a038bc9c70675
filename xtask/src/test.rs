//! `cargo xtask test`: everything that must hold, in the order of what fails soonest.

use crate::{Done, browsers, build, parity, place, run, say, setup, size, wasm, wasm_tests};
use std::process::Command;
use std::time::Instant;

/// One thing that must hold.
struct Step {
    /// What it is called on the command line.
    short: &'static str,
    /// What it is called while it runs.
    name: &'static str,
    work: fn() -> Done,
}

const fn step(short: &'static str, name: &'static str, work: fn() -> Done) -> Step {
    Step { short, name, work }
}

const STEPS: [Step; 10] = [
    step("fmt", "Formatting", formatting),
    step("clippy", "Lints, native", lints_native),
    step("clippy-web", "Lints, the page", lints_page),
    step("native", "Tests, native", tests_native),
    step("doc", "Documentation", documentation),
    step("wasm", "The same tests in wasm", wasm_tests::command),
    step(
        "bits",
        "The same figures in wasm, to the bit",
        parity::command,
    ),
    step("page", "The page for release", build::command),
    step("size", "Weight of a first visit", size::check),
    step("browser", "The page in Chromium and Firefox", in_browsers),
];

/// Runs everything, or the steps named.
///
/// # Errors
/// The first step that fails.
pub fn command(wanted: &[String]) -> Done {
    let known: Vec<&str> = STEPS.iter().map(|step| step.short).collect();
    if let Some(unknown) = wanted.iter().find(|name| !known.contains(&name.as_str())) {
        return Err(format!(
            "there is no step {unknown:?}; there are: {}",
            known.join(" ")
        ));
    }
    setup::rust_tools()?;
    setup::node()?;
    wasm::ensure_target()?;
    let start = Instant::now();
    let mut times = Vec::new();
    let mut failures = Vec::new();
    for step in &STEPS {
        if !(wanted.is_empty() || wanted.iter().any(|asked| asked == step.short)) {
            continue;
        }
        // Without a page there is nothing to weigh or to drive.
        if failures.iter().any(|(short, _)| *short == "page") {
            break;
        }
        let began = Instant::now();
        let done = say::step(step.name, step.work);
        let mark = if done.is_ok() { ' ' } else { '✗' };
        times.push(format!(
            "{mark} {:>7.1} s  {}",
            began.elapsed().as_secs_f64(),
            step.name
        ));
        if let Err(message) = done {
            eprintln!("✗ {message}");
            failures.push((step.short, message));
        }
    }
    println!(
        "\n{}\n  {:>7.1} s  all of it",
        times.join("\n"),
        start.elapsed().as_secs_f64()
    );
    if failures.is_empty() {
        return Ok(());
    }
    let names: Vec<&str> = failures.iter().map(|(short, _)| *short).collect();
    Err(format!(
        "{} of the steps failed; their messages stand above. These alone again: cargo xtask test {}",
        failures.len(),
        names.join(" ")
    ))
}

fn formatting() -> Done {
    run::shown(place::cargo().args(["fmt", "--all", "--check"]))
        .map_err(|message| format!("{message}\nMend it: cargo fmt --all"))
}

fn lints_native() -> Done {
    each_package(&["clippy"], &["--", "-D", "warnings"])?;
    // A test may stop where it fails.
    let mut flags = vec!["--", "-D", "warnings"];
    for lint in [
        "clippy::unwrap_used",
        "clippy::expect_used",
        "clippy::panic",
    ] {
        flags.extend(["-A", lint]);
    }
    each_package(&["clippy", "--tests", "--benches", "--examples"], &flags)
}

fn lints_page() -> Done {
    let mut cargo = place::cargo();
    cargo.args([
        "clippy",
        "--locked",
        "--target",
        wasm::TARGET,
        "--features",
        "web",
    ]);
    run::shown(cargo.args(["--", "-D", "warnings"]))
}

fn tests_native() -> Done {
    each_package(&["test", "--no-fail-fast"], &[])?;
    // What the page decides without a browser stands behind its feature.
    run::shown(place::cargo().args(["test", "--locked", "--lib", "--features", "web", "web::"]))
}

/// Where the drawn cases of the property tests start; plain `cargo test` draws anew.
const DRAWN_CASES: &str = "PROPTEST_RNG_SEED";

/// One package at a time: together they would share features, and so build twice.
fn each_package(before: &[&str], after: &[&str]) -> Done {
    for package in ["scopewright", "scopewright-html", "xtask"] {
        let mut cargo = place::cargo();
        cargo
            .args(before)
            .args(["--locked", "--package", package])
            .args(after);
        // Drawn cases are the same on every run, unless somebody asks for others.
        if std::env::var_os(DRAWN_CASES).is_none() {
            cargo.env(DRAWN_CASES, "1");
        }
        run::shown(&mut cargo)?;
    }
    Ok(())
}

fn documentation() -> Done {
    let mut cargo = place::cargo();
    cargo.args([
        "doc",
        "--no-deps",
        "--locked",
        "--target",
        wasm::TARGET,
        "--features",
        "web",
    ]);
    run::shown(cargo.env("RUSTDOCFLAGS", "-D warnings"))
}

fn in_browsers() -> Done {
    // At once when nothing changed; when this step runs alone, the page may be an old one.
    build::command()?;
    let folder = place::root().join("tests/browser");
    setup::npm(&folder)?;
    let programs = browsers::both()?;
    run::shown(
        Command::new("node")
            .current_dir(&folder)
            .arg("run.mjs")
            .envs(programs),
    )
}
