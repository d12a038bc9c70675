//! `cargo xtask bench`: medians and ratios of the core's inner parts, beside general-purpose
//! Python libraries where there is one to compare with.

use crate::{Done, browsers, place, run, say, setup, wasm};
use std::path::PathBuf;
use std::process::Command;

/// Runs benches/ natively and the same work in wasm in the browser, with `native` or `chromium`
/// one of the two, or with `drag` every handle of the pictures on a slowed processor.
///
/// # Errors
/// They do not compile, or the browser does not start.
pub fn command(arguments: &[String]) -> Done {
    match arguments {
        [] => {
            native()?;
            say::step("Timing the core in Chromium", in_chromium)
        }
        [only] if only == "native" => native(),
        [only] if only == "chromium" => say::step("Timing the core in Chromium", in_chromium),
        [only, rest @ ..] if only == "drag" => {
            say::step("Dragging every handle in Chromium", || dragged(rest))
        }
        _ => Err("`cargo xtask bench` takes nothing, `native`, `chromium`, or `drag`".to_owned()),
    }
}

fn native() -> Done {
    let peers = say::step("Setting up scipy to compare with", || Ok(peers()))?;
    say::step("Timing the core, native, as released", || {
        let mut bench = place::cargo();
        bench.args(["bench", "--locked", "--bench", "core"]);
        bench.env("SCOPEWRIGHT_MEDIANS", medians());
        match peers {
            Ok(python) => {
                bench.env("SCOPEWRIGHT_PEERS_PYTHON", python);
            }
            Err(why) => say::detail(&format!("no comparison with scipy: {why}")),
        }
        run::shown(&mut bench)
    })
}

/// Where the native medians are left for the browser's ratios.
fn medians() -> PathBuf {
    place::target().join("bench-medians.tsv")
}

/// On the page that was built last; `rest` may hold a part of a handle's name.
fn dragged(rest: &[String]) -> Done {
    let tests = place::root().join("tests/browser");
    setup::npm(&tests)?;
    let programs = browsers::chromium()?;
    run::shown(
        Command::new("node")
            .current_dir(&tests)
            .arg("drag.mjs")
            .args(rest)
            .envs(programs),
    )
}

fn in_chromium() -> Done {
    wasm::ensure_target()?;
    let tests = place::root().join("tests/browser");
    setup::npm(&tests)?;
    let programs = browsers::chromium()?;
    let mut cargo = place::cargo();
    cargo.args([
        "build",
        "--release",
        "--locked",
        "--package",
        "parity",
        "--lib",
    ]);
    run::shown(cargo.args(["--target", wasm::TARGET]))?;
    let folder = place::target().join("xtask/bench");
    let module = place::target()
        .join(wasm::TARGET)
        .join("release/parity.wasm");
    wasm::bind_for_browser(&module, &folder)?;
    run::shown(
        Command::new("node")
            .current_dir(&tests)
            .arg("bench.mjs")
            .arg(folder)
            .arg(medians())
            .envs(programs),
    )
}

/// A Python with the packages of benches/peers/requirements.txt, made on first use.
fn peers() -> Result<PathBuf, String> {
    let folder = place::target().join("peers");
    let python = folder.join(if cfg!(windows) {
        "Scripts/python.exe"
    } else {
        "bin/python"
    });
    let wanted = place::root().join("benches/peers/requirements.txt");
    let ready = folder.join("requirements.txt");
    if place::text(&ready).ok() == Some(place::text(&wanted)?) {
        return Ok(python);
    }
    run::quiet(Command::new("python3").args(["-m", "venv"]).arg(&folder))?;
    run::quiet(
        Command::new(&python)
            .args(["-m", "pip", "install", "--quiet", "--requirement"])
            .arg(&wanted),
    )?;
    place::write(&ready, place::text(&wanted)?.as_bytes())?;
    Ok(python)
}
