//! `cargo xtask soak`: asks for ten thousand advices drawn anew, then uses the page for a
//! while and watches that nothing grows.

use crate::{Done, browsers, build, place, run, say, setup};
use std::process::Command;
use std::time::{SystemTime, UNIX_EPOCH};

/// Where the drawn answers begin; the same number again draws the same answers.
const SEED: &str = "SCOPEWRIGHT_SEED";

/// Advises on drawn answers (`soak advice` does that alone), then builds the page and walks
/// through all of it, many times over (`soak page [rounds]` alone).
///
/// # Errors
/// An advice panics or is not finite; the page does not build, reports a problem, or grows.
pub fn command(arguments: &[String]) -> Done {
    match arguments {
        [only] if only == "advice" => drawn_answers(),
        [only, rounds @ ..] if only == "page" => walk(rounds),
        rounds => {
            drawn_answers()?;
            walk(rounds)
        }
    }
}

fn drawn_answers() -> Done {
    let seed = std::env::var(SEED).unwrap_or_else(|_| {
        let now = SystemTime::now().duration_since(UNIX_EPOCH);
        (now.map_or(0, |since| since.as_secs()) % 1_000_000_000).to_string()
    });
    say::step(
        &format!("Thousands of drawn answers ({SEED}={seed})"),
        || {
            let mut cargo = place::cargo();
            cargo.args(["test", "--release", "--locked"]);
            cargo.args(["--test", "property_advice", "--test", "property_told"]);
            cargo.args(["--", "--ignored", "--nocapture", "random_answers"]);
            run::shown(cargo.env(SEED, &seed))
        },
    )
}

fn walk(arguments: &[String]) -> Done {
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
