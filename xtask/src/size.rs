//! Weighs what a first visit transfers, against the budget.

use crate::{place, run, say, setup, wasm};
use std::process::Command;

/// Where everything of a first visit should be, Brotli, in bytes.
const GOAL_BYTES: u64 = 250_000;

/// What it may weigh until it is there: it fails above. Only ever lowered.
const CEILING_BYTES: u64 = 421_700;

/// Code of the standard library that must not be linked, as its functions' names hold it, what
/// brings it, and what does the same in less space.
const LEFT_OUT: [(&str, &str, &str); 4] = [
    (
        "flt2dec",
        "a float is formatted, perhaps by a derived Debug",
        "plain::fixed, plain::shortest, filled!",
    ),
    ("dec2flt", "a float is parsed", "plain::decimal"),
    (
        "TwoWaySearcher",
        "a text, or a sign that is not constant, is looked for in a text",
        "strip_prefix, starts_with, a constant sign, matches!",
    ),
    ("join_generic_copy", "texts are joined", "plain::Together"),
];

/// Brotli at its best for each file, as a host with files compressed beforehand sends it.
const WEIGH: &str = r#"
const { readFileSync } = require("node:fs");
const { brotliCompressSync, gzipSync, constants } = require("node:zlib");
const params = { [constants.BROTLI_PARAM_QUALITY]: 11 };
for (const file of process.argv.slice(1)) {
  const bytes = readFileSync(file);
  console.log(brotliCompressSync(bytes, { params }).length, gzipSync(bytes, { level: 9 }).length, bytes.length);
}
"#;

/// Weighs dist/ and fails above the budget.
///
/// # Errors
/// The page is heavier than its budget, links what it should leave out, or is not built.
pub fn check() -> Result<(), String> {
    let module = place::bytes(&wasm::page_module())?;
    let holds = |name: &str| module.windows(name.len()).any(|at| at == name.as_bytes());
    if !holds("_RNv") {
        return Err("the raw module names no functions: what it links cannot be seen".to_owned());
    }
    for (name, why, instead) in LEFT_OUT {
        if holds(name) {
            return Err(format!("the page links {name}: {why}. Take {instead}"));
        }
    }
    setup::node()?;
    let dist = place::dist();
    let names: Vec<String> = place::files(&dist)?
        .into_iter()
        .filter(|name| first_visit(name))
        .collect();
    let mut node = Command::new("node");
    node.current_dir(&dist)
        .args(["-e", WEIGH, "--"])
        .args(&names);
    let printed = run::quiet(&mut node)?;
    let mut total = [0_u64; 3];
    say::detail("   Brotli      gzip     plain");
    for (name, line) in names.iter().zip(printed.lines()) {
        let mut sizes = [0_u64; 3];
        for (place, number) in line.split(' ').enumerate().take(3) {
            sizes[place] = number
                .parse()
                .map_err(|_| format!("unreadable size: {line}"))?;
            total[place] += sizes[place];
        }
        say::detail(&row(sizes, name));
    }
    say::detail(&row(total, "all of a first visit"));
    if total[0] > CEILING_BYTES {
        return Err(format!(
            "a first visit transfers {} bytes of Brotli; the ceiling is {CEILING_BYTES}, the goal \
             {GOAL_BYTES}. The list above says where they are",
            total[0]
        ));
    }
    if total[0] > GOAL_BYTES {
        let over = total[0] - GOAL_BYTES;
        say::detail(&format!(
            "{over} bytes over the goal of {GOAL_BYTES}; the ceiling is {CEILING_BYTES}"
        ));
    }
    Ok(())
}

fn row([brotli, gzip, plain]: [u64; 3], name: &str) -> String {
    format!("{brotli:>9} {gzip:>9} {plain:>9}  {name}")
}

/// The offline copy fetches everything on the first visit, so everything counts, but for
/// what only a foreign page or a later tap asks for.
fn first_visit(name: &str) -> bool {
    !crate::precache::left_out(name) || name == "sw.js"
}
