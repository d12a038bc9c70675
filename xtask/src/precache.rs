//! Writes sw.js: the list of all files of the page, and a version made from their content.

use crate::{Done, hash, place, slim};
use std::path::{Path, PathBuf};

const TEMPLATE: &str = include_str!("sw.js");

/// Files that the offline copy does not hold: the service worker itself.
const LEFT_OUT: [&str; 1] = ["sw.js"];

/// Whether the offline copy does without a file.
pub fn left_out(name: &str) -> bool {
    LEFT_OUT.contains(&name)
}

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
    let mut contents = Vec::new();
    for name in place::files(folder)? {
        if left_out(&name) {
            continue;
        }
        contents.push(place::bytes(&folder.join(&name))?);
        list.push(format!("\"./{name}\""));
    }
    let worker = slim::compact_js(TEMPLATE)
        .replace("__VERSION__", &hash::seal(contents))
        .replace("\"__FILES__\"", &list.join(",\n"));
    place::write(&folder.join("sw.js"), worker.as_bytes())
}
