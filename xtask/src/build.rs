//! `cargo xtask build`: the page into dist/.

use crate::{Done, arrange, page, precache, say, slim, wasm};

/// Builds the page.
///
/// # Errors
/// A step fails; its message says which and what to do.
pub fn command() -> Done {
    wasm::ensure_target()?;
    let module = say::step("Compiling the page to wasm", wasm::compile_page)?;
    say::step("Putting the page together", || {
        let mut bound = slim::slim(wasm::bind_page(&module)?)?;
        bound.wasm = arrange::arrange(&bound.wasm)?;
        let folder = page::assemble(&bound)?;
        precache::write(&folder)?;
        page::publish(&folder)
    })
}
