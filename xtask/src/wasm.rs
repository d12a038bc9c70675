//! Compiles to wasm and writes the JavaScript glue.

use crate::arrange::arrange;
use crate::place;
use crate::run;
use crate::say;
use std::path::{Path, PathBuf};
use std::process::Command;
use wasm_bindgen_cli_support::Bindgen;

/// The target of the page.
pub const TARGET: &str = "wasm32-unknown-unknown";

/// Sees that the wasm target is there, and adds it if rustup can.
///
/// # Errors
/// The target is missing and rustup cannot add it.
pub fn ensure_target() -> Result<(), String> {
    if has_target() {
        return Ok(());
    }
    say::step("Adding Rust's wasm target", || {
        run::shown(Command::new("rustup").args(["target", "add", TARGET])).map_err(|message| {
            format!("{message}\nAdd the target by hand: rustup target add {TARGET}")
        })
    })
}

/// Sees that the standard library's source is there, and adds it if rustup can.
fn ensure_library_source() -> Result<(), String> {
    if printed(&["--print", "sysroot"]).is_some_and(|root| {
        root.join("lib/rustlib/src/rust/library/std/Cargo.toml")
            .is_file()
    }) {
        return Ok(());
    }
    say::step("Adding the source of Rust's standard library", || {
        run::shown(Command::new("rustup").args(["component", "add", "rust-src"]))
            .map_err(|message| format!("{message}\nAdd it by hand: rustup component add rust-src"))
    })
}

fn has_target() -> bool {
    printed(&["--print", "target-libdir", "--target", TARGET]).is_some_and(|path| path.is_dir())
}

/// The path that the compiler prints.
fn printed(args: &[&str]) -> Option<PathBuf> {
    let rustc = std::env::var_os("RUSTC").unwrap_or_else(|| "rustc".into());
    let output = Command::new(rustc)
        .current_dir(place::root())
        .args(args)
        .output()
        .ok()?;
    let path = String::from_utf8_lossy(&output.stdout).trim().to_owned();
    (output.status.success() && !path.is_empty()).then(|| path.into())
}

/// How the page is compiled; they stand in place of those in `.cargo/config.toml`.
const FLAGS: &str = "-Zunstable-options -Cpanic=immediate-abort -Cllvm-args=--disable-lsr";

/// Compiles the page's binary for release and returns the raw module.
///
/// The standard library is compiled with it, for size, and a panic stops the module at once
/// without a text: the page says in its own words that it stopped. That is 5 % of the weight.
/// Both switches are still called unstable; `RUSTC_BOOTSTRAP` lets the pinned compiler take
/// them. It compiles into a folder of its own, for the other builds have other flags.
///
/// # Errors
/// It does not compile.
pub fn compile_page() -> Result<PathBuf, String> {
    ensure_library_source()?;
    let mut cargo = place::cargo();
    cargo
        .env("RUSTC_BOOTSTRAP", "1")
        .env("RUSTFLAGS", FLAGS)
        .env("CARGO_TARGET_DIR", page_folder())
        .args(["build", "--release", "--locked", "--target", TARGET])
        .args(["--bin", "scopewright", "--features", "web"])
        .args([
            "-Zbuild-std=std,panic_abort",
            "-Zbuild-std-features=optimize_for_size",
        ]);
    run::shown(&mut cargo)?;
    Ok(page_module())
}

/// Where [`compile_page`] puts the raw module, which names its functions.
pub fn page_module() -> PathBuf {
    page_folder().join(TARGET).join("release/scopewright.wasm")
}

fn page_folder() -> PathBuf {
    place::target().join("page")
}

/// Glue and module for a browser.
pub struct Bound {
    /// The JavaScript module.
    pub js: Vec<u8>,
    /// The wasm module, without names.
    pub wasm: Vec<u8>,
}

/// Writes the glue for the page.
///
/// # Errors
/// The module does not fit this version of wasm-bindgen.
pub fn bind_page(module: &Path) -> Result<Bound, String> {
    let folder = place::target().join("xtask/page");
    let mut bindgen = Bindgen::new();
    bindgen
        .input_path(module)
        .out_name("page")
        .typescript(false)
        .remove_name_section(true)
        .remove_producers_section(true);
    bindgen
        .web(true)
        .and_then(|bindgen| bindgen.generate(&folder))
        .map_err(|error| {
            format!(
                "wasm-bindgen could not read {}: {error:#}",
                module.display()
            )
        })?;
    Ok(Bound {
        js: place::bytes(&folder.join("page.js"))?,
        wasm: place::bytes(&folder.join("page_bg.wasm"))?,
    })
}

/// Writes a module that Node can load.
///
/// # Errors
/// The module does not fit this version of wasm-bindgen.
pub fn bind_for_node(module: &Path, folder: &Path) -> Result<(), String> {
    bind(Bindgen::new().nodejs(true), module, folder)
}

/// Writes a module that a browser can import.
///
/// # Errors
/// The module does not fit this version of wasm-bindgen.
pub fn bind_for_browser(module: &Path, folder: &Path) -> Result<(), String> {
    bind(Bindgen::new().web(true), module, folder)
}

fn bind<E: std::fmt::Debug>(
    bindgen: Result<&mut Bindgen, E>,
    module: &Path,
    folder: &Path,
) -> Result<(), String> {
    let failed =
        |error: String| format!("wasm-bindgen could not read {}: {error}", module.display());
    bindgen
        .map_err(|error| failed(format!("{error:?}")))?
        .input_path(module)
        .typescript(false)
        .generate(folder)
        .map_err(|error| failed(format!("{error:#}")))?;
    // As the page's: what is checked and timed has gone the same way.
    let name = module.file_stem().unwrap_or_default().to_string_lossy();
    let bound = folder.join(format!("{name}_bg.wasm"));
    place::write(&bound, &arrange(&place::bytes(&bound)?)?)
}
