//! Takes from glue and module what only wasm-bindgen needed: long names, and indentation.
//!
//! Each function that passes between JavaScript and wasm has a name with sixteen digits of a
//! hash in it, once in the module and once in the glue. They do not compress: short names
//! save 6 kB of Brotli.

use crate::wasm::Bound;
use std::collections::BTreeMap;

/// The sections in which names pass to and fro.
const IMPORTS: u8 = 2;
const EXPORTS: u8 = 7;

/// Glue and module with short names.
///
/// # Errors
/// The module's imports or exports cannot be read, or a name is missing in the glue.
pub fn slim(bound: Bound) -> Result<Bound, String> {
    let mut names = Names::default();
    let wasm = renamed(&bound.wasm, &mut names)
        .ok_or("the module's imports and exports cannot be read")?;
    let glue = String::from_utf8(bound.js).map_err(|_| "the glue is not UTF-8")?;
    let js = compact_js(&names.in_text(&glue)?);
    Ok(Bound {
        js: js.into_bytes(),
        wasm,
    })
}

/// Drops indentation, empty lines and lines that are comments; the rest stays as written.
///
/// It knows no strings over several lines: what it is given must have none.
pub fn compact_js(source: &str) -> String {
    let mut rest = String::new();
    let mut is_comment = false;
    for line in source.lines().map(str::trim) {
        is_comment = is_comment || line.starts_with("/*");
        if is_comment {
            is_comment = !line.ends_with("*/");
        } else if !line.is_empty() && !line.starts_with("//") {
            rest.push_str(line);
            rest.push('\n');
        }
    }
    rest
}

/// Long names and the short ones in their place.
#[derive(Default)]
struct Names(BTreeMap<String, String>);

impl Names {
    /// The short name for one with a hash at its end; others stay.
    fn short(&mut self, name: &[u8]) -> Option<Vec<u8>> {
        let name = std::str::from_utf8(name).ok()?;
        let digits = name.bytes().rev().take_while(u8::is_ascii_hexdigit).count();
        if digits < 16 {
            return Some(name.into());
        }
        let next = format!("_{}", self.0.len());
        let short = self.0.entry(name.to_owned()).or_insert(next);
        Some(short.clone().into_bytes())
    }

    /// The text with every long name replaced.
    fn in_text(&self, text: &str) -> Result<String, String> {
        let is_part =
            |letter: char| letter.is_ascii_alphanumeric() || letter == '_' || letter == '$';
        let mut met = std::collections::BTreeSet::new();
        let mut new = String::with_capacity(text.len());
        let mut rest = text;
        while !rest.is_empty() {
            let end = rest.find(|letter| !is_part(letter)).unwrap_or(rest.len());
            let (word, after) = rest.split_at(end);
            match self.0.get(word) {
                Some(short) => {
                    met.insert(word);
                    new.push_str(short);
                }
                None => new.push_str(word),
            }
            let other = after.find(is_part).unwrap_or(after.len());
            let (between, after) = after.split_at(other);
            new.push_str(between);
            rest = after;
        }
        match self.0.keys().find(|name| !met.contains(name.as_str())) {
            Some(name) => Err(format!(
                "the glue does not know {name}, which the module names"
            )),
            None => Ok(new),
        }
    }
}

/// Reads a module byte by byte.
struct Reader<'a>(&'a [u8]);

impl<'a> Reader<'a> {
    fn take(&mut self, count: usize) -> Option<&'a [u8]> {
        let (taken, rest) = self.0.split_at_checked(count)?;
        self.0 = rest;
        Some(taken)
    }

    fn byte(&mut self) -> Option<u8> {
        self.take(1).map(|taken| taken[0])
    }

    /// An unsigned number in LEB128, which may be written longer than need be.
    fn number(&mut self) -> Option<u64> {
        let (mut value, mut shift) = (0, 0);
        loop {
            let byte = self.byte()?;
            value |= u64::from(byte & 127).checked_shl(shift)?;
            shift += 7;
            if byte < 128 {
                return Some(value);
            }
        }
    }

    fn name(&mut self) -> Option<&'a [u8]> {
        let length = usize::try_from(self.number()?).ok()?;
        self.take(length)
    }

    /// What was read by `step`, as it stands.
    fn passed(&mut self, step: impl FnOnce(&mut Self) -> Option<()>) -> Option<&'a [u8]> {
        let before = self.0;
        step(self)?;
        before.get(..before.len() - self.0.len())
    }

    fn limits(&mut self) -> Option<()> {
        let has_most = self.number()? & 1 == 1;
        self.number()?;
        if has_most {
            self.number()?;
        }
        Some(())
    }

    /// The kind of an import and what goes with it (WebAssembly core specification, 5.5.5).
    fn import_kind(&mut self) -> Option<()> {
        match self.byte()? {
            0 => self.number().map(|_| ()),
            1 => {
                self.byte()?;
                self.limits()
            }
            2 => self.limits(),
            3 => self.take(2).map(|_| ()),
            4 => {
                self.byte()?;
                self.number().map(|_| ())
            }
            _ => None,
        }
    }
}

fn put_number(to: &mut Vec<u8>, mut value: u64) {
    loop {
        let byte = (value & 127) as u8;
        value >>= 7;
        if value == 0 {
            to.push(byte);
            return;
        }
        to.push(byte | 128);
    }
}

fn put_name(to: &mut Vec<u8>, name: &[u8]) {
    put_number(to, name.len() as u64);
    to.extend_from_slice(name);
}

/// The module with short names; `None` where it cannot be read.
fn renamed(module: &[u8], names: &mut Names) -> Option<Vec<u8>> {
    let mut reader = Reader(module);
    let mut new = reader.take(8)?.to_vec();
    while !reader.0.is_empty() {
        let id = reader.byte()?;
        let length = usize::try_from(reader.number()?).ok()?;
        let old = reader.take(length)?;
        let section = match id {
            IMPORTS => imports(Reader(old), names)?,
            EXPORTS => exports(Reader(old), names)?,
            _ => old.to_vec(),
        };
        new.push(id);
        put_number(&mut new, section.len() as u64);
        new.extend(section);
    }
    Some(new)
}

fn imports(mut old: Reader<'_>, names: &mut Names) -> Option<Vec<u8>> {
    let mut new = Vec::new();
    let count = old.number()?;
    put_number(&mut new, count);
    for _ in 0..count {
        put_name(&mut new, old.name()?);
        put_name(&mut new, &names.short(old.name()?)?);
        new.extend_from_slice(old.passed(Reader::import_kind)?);
    }
    old.0.is_empty().then_some(new)
}

fn exports(mut old: Reader<'_>, names: &mut Names) -> Option<Vec<u8>> {
    let mut new = Vec::new();
    let count = old.number()?;
    put_number(&mut new, count);
    for _ in 0..count {
        put_name(&mut new, &names.short(old.name()?)?);
        new.push(old.byte()?);
        put_number(&mut new, old.number()?);
    }
    old.0.is_empty().then_some(new)
}

#[cfg(test)]
mod tests {
    use super::{Bound, compact_js, slim};

    const LONG: &str = "__wbg_blur_00112233445566aa";

    /// A module that imports a function of this name and exports it as `run`.
    fn module(name: &str) -> Vec<u8> {
        let mut bytes = b"\0asm\x01\0\0\0\x01\x04\x01\x60\0\0".to_vec();
        let mut import = vec![1, 3];
        import.extend(b"./a");
        import.push(name.len() as u8);
        import.extend(name.bytes());
        import.extend([0, 0]);
        bytes.extend([2, import.len() as u8]);
        bytes.extend(import);
        bytes.extend(b"\x07\x07\x01\x03run\0\0");
        bytes
    }

    #[test]
    fn module_and_glue_keep_one_name() {
        let js = format!("const a = {{\n    {LONG}: function() {{}},\n}};\nwasm.run();\n");
        let slim = slim(Bound {
            js: js.into_bytes(),
            wasm: module(LONG),
        })
        .unwrap();
        assert_eq!(slim.wasm, module("_0"));
        assert_eq!(
            String::from_utf8(slim.js).unwrap(),
            "const a = {\n_0: function() {},\n};\nwasm.run();\n"
        );
    }

    #[test]
    fn a_name_that_the_glue_lacks_is_told() {
        let bound = Bound {
            js: b"const a = {};".to_vec(),
            wasm: module(LONG),
        };
        assert!(slim(bound).is_err_and(|message| message.contains(LONG)));
        let broken = Bound {
            js: Vec::new(),
            wasm: module(LONG)[..20].to_vec(),
        };
        assert!(slim(broken).is_err());
    }

    #[test]
    fn code_keeps_its_lines() {
        let js = "/**\n * a\n */\n  let x = 1; // b\n\n  // c\n/* d */\nlet y = \"/* e\";\n";
        assert_eq!(compact_js(js), "let x = 1; // b\nlet y = \"/* e\";\n");
    }
}
