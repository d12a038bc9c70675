//! The same core on the command line: JSON lines in, JSON lines out.

use std::io::{BufRead, Write};
use std::process::ExitCode;

const USAGE: &str = "\
usage: workbench figure    reads {\"figure\": name, …} lines, prints {\"value\": …} or {\"error\": …}
       workbench advise    reads one answers object per line, prints the advice
       workbench sayings   reads one answers object per line, with \"sight\" for the one in
                           question, prints the sayings
       workbench versus    reads {\"answers\": {…}, \"one\": line, \"other\": line}, prints the two
                           beside each other

Lines come from standard input; every line gets one line of JSON on standard output, in
order, and none ends the run.";

fn main() -> ExitCode {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let answer: fn(&str) -> String = match arguments.as_slice() {
        [only] if only == "figure" => scopewright::figure::answer,
        [only] if only == "advise" => advise,
        [only] if only == "sayings" => scopewright::figure::beside::sayings,
        [only] if only == "versus" => scopewright::figure::beside::versus,
        _ => {
            eprintln!("{USAGE}");
            return ExitCode::from(2);
        }
    };
    match answer_lines(answer) {
        Ok(()) => ExitCode::SUCCESS,
        // Whoever read the answers has seen enough.
        Err(error) if error.kind() == std::io::ErrorKind::BrokenPipe => ExitCode::SUCCESS,
        Err(error) => {
            eprintln!("workbench: {error}");
            ExitCode::FAILURE
        }
    }
}

fn answer_lines(answer: fn(&str) -> String) -> std::io::Result<()> {
    let mut input = std::io::stdin().lock();
    let mut output = std::io::stdout().lock();
    let mut line = Vec::new();
    while input.read_until(b'\n', &mut line)? > 0 {
        // A line that is no UTF-8 is answered like any other that is no JSON.
        let text = String::from_utf8_lossy(&line);
        writeln!(output, "{}", answer(text.trim_end_matches(['\n', '\r'])))?;
        line.clear();
    }
    output.flush()
}

/// The advice for one line of answers: the report, or an error with every problem.
fn advise(line: &str) -> String {
    use scopewright::{advice, need, wording::problems};
    let answers = match need::parse(line) {
        Ok(answers) => answers,
        Err(problem) => {
            return serde_json::json!({ "error": problems::parse(&problem) }).to_string();
        }
    };
    let text = match advice::advise_with_surety(&answers) {
        Ok(advice) => serde_json::to_string(&advice),
        Err(found) => {
            let list: Vec<serde_json::Value> = found
                .iter()
                .map(|problem| {
                    serde_json::json!({
                        "field": problem.field,
                        "message": problems::problem(problem),
                    })
                })
                .collect();
            serde_json::to_string(&serde_json::json!({
                "error": "these answers cannot be advised on",
                "problems": list,
            }))
        }
    };
    text.unwrap_or_else(|error| serde_json::json!({ "error": error.to_string() }).to_string())
}
