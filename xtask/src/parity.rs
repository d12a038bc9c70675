//! Holds the core in wasm against the native one, bit by bit.

use crate::{Done, place, run, say, setup, wasm};
use std::process::Command;

const COMPARE: &str = include_str!("parity.cjs");

/// Builds both, asks both the same lines, compares every character.
///
/// # Errors
/// A build fails or an answer differs.
pub fn command() -> Done {
    setup::node()?;
    wasm::ensure_target()?;
    run::shown(place::cargo().args(["build", "--locked", "--bin", "workbench"]))?;
    run::shown(place::cargo().args(["build", "--locked", "--package", "parity"]))?;
    let mut cargo = place::cargo();
    cargo.args(["build", "--locked", "--package", "parity", "--lib"]);
    run::shown(cargo.args(["--target", wasm::TARGET]))?;
    let folder = place::target().join("xtask/parity");
    wasm::bind_for_node(
        &place::target().join(wasm::TARGET).join("debug/parity.wasm"),
        &folder,
    )?;
    place::write(&folder.join("compare.cjs"), COMPARE.as_bytes())?;
    say::detail("native workbench against the same core in wasm under Node:");
    let program =
        |name: &str| place::target().join(format!("debug/{name}{}", std::env::consts::EXE_SUFFIX));
    run::shown(
        Command::new("node")
            .arg(folder.join("compare.cjs"))
            .arg(program("workbench"))
            .arg(program("digests"))
            .arg(place::root().join("tests/data/parity")),
    )
}
