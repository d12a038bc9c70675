//! The workbench's answers as a module for Node: `cargo xtask test bits` holds them against
//! those of the native program, character by character. Numbers are printed in the shortest
//! form that reads back as the same bits, so equal text is equal bits.

mod repeat;

use wasm_bindgen::prelude::wasm_bindgen;

/// What `workbench figure` answers to one line.
#[wasm_bindgen]
#[must_use]
pub fn figure(line: &str) -> String {
    scopewright::figure::answer(line)
}

/// What `workbench advise` answers to one line; its refusals are shortened to `{"error": …}`.
#[wasm_bindgen]
#[must_use]
pub fn advise(line: &str) -> String {
    let refusal = || String::from(r#"{"error":"refused"}"#);
    let advice = scopewright::need::parse(line)
        .ok()
        .and_then(|answers| scopewright::advice::advise_with_surety(&answers).ok());
    advice
        .and_then(|advice| serde_json::to_string(&advice).ok())
        .unwrap_or_else(refusal)
}
