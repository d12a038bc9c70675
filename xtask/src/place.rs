//! Where things stand.

use std::path::{Path, PathBuf};
use std::process::Command;

/// The project's root folder.
pub fn root() -> PathBuf {
    // Cargo says where it runs; what was compiled in may be another clone's with a shared target.
    let here = std::env::var_os("CARGO_MANIFEST_DIR")
        .map_or_else(|| PathBuf::from(env!("CARGO_MANIFEST_DIR")), PathBuf::from);
    here.parent()
        .map_or_else(|| here.clone(), Path::to_path_buf)
}

/// Cargo's target folder.
pub fn target() -> PathBuf {
    std::env::var_os("CARGO_TARGET_DIR").map_or_else(|| root().join("target"), PathBuf::from)
}

/// The built page, ready for any static host.
pub fn dist() -> PathBuf {
    root().join("dist")
}

/// Cargo, run in the project's root.
pub fn cargo() -> Command {
    let mut cargo = Command::new(std::env::var_os("CARGO").unwrap_or_else(|| "cargo".into()));
    cargo.current_dir(root());
    cargo
}

/// Reads a text file; the message names it.
///
/// # Errors
/// The file cannot be read.
pub fn text(path: &Path) -> Result<String, String> {
    std::fs::read_to_string(path).map_err(|error| cannot("read", path, &error))
}

/// Reads a file's bytes; the message names it.
///
/// # Errors
/// The file cannot be read.
pub fn bytes(path: &Path) -> Result<Vec<u8>, String> {
    std::fs::read(path).map_err(|error| cannot("read", path, &error))
}

/// Writes a file, with the folders above it.
///
/// # Errors
/// The file or a folder cannot be written.
pub fn write(path: &Path, bytes: &[u8]) -> Result<(), String> {
    if let Some(folder) = path.parent() {
        std::fs::create_dir_all(folder).map_err(|error| cannot("make", folder, &error))?;
    }
    std::fs::write(path, bytes).map_err(|error| cannot("write", path, &error))
}

/// All files under a folder, sorted, as paths relative to it with forward slashes.
///
/// # Errors
/// The folder cannot be read.
pub fn files(folder: &Path) -> Result<Vec<String>, String> {
    let mut found = Vec::new();
    collect(folder, "", &mut found)?;
    found.sort();
    Ok(found)
}

fn collect(folder: &Path, prefix: &str, found: &mut Vec<String>) -> Result<(), String> {
    let entries = std::fs::read_dir(folder).map_err(|error| cannot("read", folder, &error))?;
    for entry in entries {
        let entry = entry.map_err(|error| cannot("read", folder, &error))?;
        let name = format!("{prefix}{}", entry.file_name().to_string_lossy());
        if entry.path().is_dir() {
            collect(&entry.path(), &format!("{name}/"), found)?;
        } else {
            found.push(name);
        }
    }
    Ok(())
}

fn cannot(verb: &str, path: &Path, error: &std::io::Error) -> String {
    format!("cannot {verb} {}: {error}", path.display())
}
