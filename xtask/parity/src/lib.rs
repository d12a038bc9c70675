//! The workbench's answers as a module for Node: `cargo xtask test bits` holds them against
//! those of the native program, character by character. Numbers are printed in the shortest
//! form that reads back as the same bits, so equal text is equal bits.

#[path = "../../../tests/random_answers/mod.rs"]
mod random_answers;
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

/// A digest of the whole advice for the answers drawn by a seed, part by part: FNV-1a (Fowler,
/// Noll and Vo) over the bits of every number and the bytes of every word.
#[wasm_bindgen]
#[must_use]
pub fn digest(seed: u32) -> String {
    let answers = random_answers::answers_of(u64::from(seed));
    let Ok(advice) = scopewright::advice::advise(&answers) else {
        return format!("{seed} refused");
    };
    let Ok(serde_json::Value::Object(parts)) = serde_json::to_value(&advice) else {
        return format!("{seed} unwritten");
    };
    // JSON has no word for what is not finite: it does not come back.
    let back = serde_json::from_value::<scopewright::advice::Advice>(parts.clone().into());
    if back.ok().as_ref() != Some(&advice) {
        return format!("{seed} not finite");
    }
    let mut line = seed.to_string();
    for (name, part) in &parts {
        let mut hash = Fnv(0xcbf2_9ce4_8422_2325);
        hash.take(part);
        line.push_str(&format!(" {name}:{:016x}", hash.0));
    }
    line
}

struct Fnv(u64);

impl Fnv {
    fn bytes(&mut self, bytes: &[u8]) {
        for &byte in bytes {
            self.0 = (self.0 ^ u64::from(byte)).wrapping_mul(0x0100_0000_01b3);
        }
    }

    fn take(&mut self, value: &serde_json::Value) {
        use serde_json::Value;
        match value {
            Value::Null => self.bytes(b"-"),
            Value::Bool(is) => self.bytes(&[u8::from(*is)]),
            Value::Number(number) => {
                self.bytes(&number.as_f64().unwrap_or(f64::NAN).to_bits().to_le_bytes());
            }
            Value::String(word) => {
                self.bytes(&word.len().to_le_bytes()[..4]);
                self.bytes(word.as_bytes());
            }
            Value::Array(list) => {
                self.bytes(&list.len().to_le_bytes()[..4]);
                list.iter().for_each(|each| self.take(each));
            }
            Value::Object(map) => {
                for (name, each) in map {
                    self.bytes(name.as_bytes());
                    self.take(each);
                }
            }
        }
    }
}
