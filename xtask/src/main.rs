//! Sets up, builds, serves and checks the project: `cargo xtask help`.

mod build;
mod hash;
mod page;
mod place;
mod precache;
mod run;
mod say;
mod serve;
mod wasm;

use std::process::ExitCode;

/// What every command returns; the message says what to do.
type Done = Result<(), String>;

const HELP: &str = "\
cargo xtask serve [--port N] [--host ADDRESS]   build, serve on loopback, print the address
cargo xtask build                               build the page into dist/
";

fn main() -> ExitCode {
    let mut arguments = std::env::args().skip(1);
    let command = arguments.next().unwrap_or_default();
    let rest: Vec<String> = arguments.collect();
    let done = match command.as_str() {
        "serve" => serve::command(&rest),
        "build" => build::command(),
        "precache" => precache::command(),
        "" | "help" | "--help" | "-h" => {
            print!("{HELP}");
            Ok(())
        }
        other => Err(format!(
            "there is no `cargo xtask {other}`; there is\n{HELP}"
        )),
    };
    match done {
        Ok(()) => ExitCode::SUCCESS,
        Err(message) => {
            eprintln!("\n✗ {message}");
            ExitCode::FAILURE
        }
    }
}
