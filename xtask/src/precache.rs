//! Writes sw.js: the list of all files of the page, and a version made from their content.

use crate::{Done, hash, place};
use std::path::{Path, PathBuf};

const TEMPLATE: &str = include_str!("sw.js");

/// Files that the offline copy need not hold: the worker itself, and what only a
/// foreign page loads.
const LEFT_OUT: [&str; 1] = ["sw.js"];

/// As a post-build hook of Trunk: works in the folder that Trunk names.
///
/// # Errors
/// Not run by Trunk, or the folder cannot be written.
pub fn command() -> Done {
    let folder = std::env::var_os("TRUNK_STAGING_DIR")
        .map(PathBuf::from)
        .ok_or(
            "`cargo xtask precache` is a hook of `trunk build`; by hand use `cargo xtask build`",
        )?;
    write(&folder)
}

/// Writes sw.js into a finished page.
///
/// # Errors
/// The folder cannot be read or written.
pub fn write(folder: &Path) -> Result<(), String> {
    let mut list = Vec::new();
    let mut all = String::new();
    for name in place::files(folder)? {
        if LEFT_OUT.contains(&name.as_str()) {
            continue;
        }
        all.push_str(&format!(
            "{name} {}\n",
            hash::of(&place::bytes(&folder.join(&name))?)
        ));
        list.push(format!("  \"./{name}\","));
    }
    let worker = TEMPLATE
        .replace("__VERSION__", &hash::of(all.as_bytes()))
        .replace("  /* FILES */", &list.join("\n"));
    place::write(&folder.join("sw.js"), worker.as_bytes())
}
