//! Runs other programs, and says plainly what failed.

use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

/// Runs a program with its output shown as it comes.
///
/// # Errors
/// The program is missing or ends with a failure.
pub fn shown(command: &mut Command) -> Result<(), String> {
    let line = line(command);
    let status = command.status().map_err(|error| missing(&line, &error))?;
    if status.success() {
        Ok(())
    } else {
        Err(format!(
            "`{line}` failed ({status}); its own messages stand above"
        ))
    }
}

/// Runs a program quietly and returns what it printed; shows all of it if it fails.
///
/// # Errors
/// The program is missing or ends with a failure.
pub fn quiet(command: &mut Command) -> Result<String, String> {
    let line = line(command);
    let output = command
        .stdin(Stdio::null())
        .output()
        .map_err(|error| missing(&line, &error))?;
    let text = String::from_utf8_lossy(&output.stdout).into_owned();
    if output.status.success() {
        return Ok(text);
    }
    eprint!("{text}{}", String::from_utf8_lossy(&output.stderr));
    Err(format!(
        "`{line}` failed ({}); its own messages stand above",
        output.status
    ))
}

/// Where a program stands on PATH, if it does.
pub fn on_path(program: &str) -> Option<PathBuf> {
    let path = std::env::var_os("PATH")?;
    std::env::split_paths(&path)
        .map(|folder| folder.join(program))
        .find(|candidate| is_program(candidate))
}

fn is_program(path: &Path) -> bool {
    path.is_file() || path.with_extension("exe").is_file()
}

fn missing(line: &str, error: &std::io::Error) -> String {
    let program = line.split(' ').next().unwrap_or(line);
    format!("`{line}` could not start ({error}): install {program} and see that it is on PATH")
}

fn line(command: &Command) -> String {
    std::iter::once(command.get_program())
        .chain(command.get_args())
        .map(|part| part.to_string_lossy().into_owned())
        .collect::<Vec<_>>()
        .join(" ")
}
