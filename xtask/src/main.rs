//! Sets up, builds, serves and checks the project: `cargo xtask help`.

mod arrange;
mod audit;
mod bench;
mod browsers;
mod build;
mod hash;
mod page;
mod parity;
mod place;
mod precache;
mod run;
mod say;
mod serve;
mod setup;
mod sheet;
mod shots;
mod size;
mod slim;
mod soak;
mod test;
mod wasm;
mod wasm_tests;

use std::process::ExitCode;

/// What every command returns; the message says what to do.
type Done = Result<(), String>;

const HELP: &str = "\
cargo xtask serve [--port N] [--host ADDRESS]   build, serve on this machine, print the address
cargo xtask test [STEP …]                       run everything that must hold, or the steps named
cargo xtask build                               build the page into dist/
cargo xtask shots [PART OF A NAME]              pictures of every page into target/shots/
cargo xtask sheet [NUMBER]                      the drawings at several sizes, or shuffled without labels
cargo xtask audit                               Lighthouse on the built page, as a phone sees it
cargo xtask soak [advice|page] [ROUNDS]         ten thousand drawn advices; use the page and watch its memory
cargo xtask bench [native|chromium|drag]        medians of the core's inner parts, or of dragging a handle
";

fn main() -> ExitCode {
    let mut arguments = std::env::args().skip(1);
    let command = arguments.next().unwrap_or_default();
    let rest: Vec<String> = arguments.collect();
    let done = match command.as_str() {
        "serve" => serve::command(&rest),
        "test" => test::command(&rest),
        "build" => build::command(),
        "shots" => shots::command(&rest),
        "sheet" => sheet::command(&rest),
        "audit" => audit::command(),
        "soak" => soak::command(&rest),
        "bench" => bench::command(&rest),
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
