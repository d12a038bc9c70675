//! Puts index.html, styles, static files, glue and module together, as Trunk does:
//! the same index.html and Trunk.toml serve both.

use crate::{hash, place, slim, wasm::Bound};
use std::path::{Path, PathBuf};

/// Writes the whole page into a fresh folder beside dist/ and returns it.
///
/// # Errors
/// A file named in index.html is missing, or the folder cannot be written.
pub fn assemble(bound: &Bound) -> Result<PathBuf, String> {
    let folder = place::target().join("xtask/dist");
    if folder.exists() {
        std::fs::remove_dir_all(&folder)
            .map_err(|error| format!("cannot empty {}: {error}", folder.display()))?;
    }
    let root = place::root();
    let js = format!("scopewright-{}.js", hash::of(&bound.js));
    let wasm = format!("scopewright-{}_bg.wasm", hash::of(&bound.wasm));
    place::write(&folder.join(&js), &bound.js)?;
    place::write(&folder.join(&wasm), &bound.wasm)?;

    let source = place::text(&root.join("index.html"))?;
    let mut styles = String::new();
    let mut html = String::new();
    let mut style_slot = None;
    for line in source.lines() {
        let Some(asset) = Asset::of(line)? else {
            html.push_str(line);
            html.push('\n');
            continue;
        };
        match asset {
            // The module is not asked for in advance: words and styles come first.
            Asset::Rust => {
                html.push_str(&format!("<link rel=\"modulepreload\" href=\"./{js}\">\n"))
            }
            Asset::Style(path) => {
                style_slot.get_or_insert(html.len());
                styles.push_str(&compact_css(&place::text(&root.join(path))?));
            }
            Asset::File(path) => {
                let name = path.rsplit('/').next().unwrap_or(path);
                if name.ends_with(".js") {
                    let script = slim::compact_js(&place::text(&root.join(path))?);
                    place::write(&folder.join(name), script.as_bytes())?;
                } else {
                    place::write(&folder.join(name), &place::bytes(&root.join(path))?)?;
                }
            }
            Asset::Folder(path) => {
                let below = folder.join(path.rsplit('/').next().unwrap_or(path));
                for name in place::files(&root.join(path))? {
                    place::write(
                        &below.join(&name),
                        &place::bytes(&root.join(path).join(&name))?,
                    )?;
                }
            }
        }
    }
    if let Some(slot) = style_slot {
        let name = format!("styles-{}.css", hash::of(styles.as_bytes()));
        place::write(&folder.join(&name), styles.as_bytes())?;
        html.insert_str(
            slot,
            &format!("<link rel=\"stylesheet\" href=\"./{name}\">\n"),
        );
    }
    let script = format!(
        "<script type=\"module\" src=\"./boot.js\" data-js=\"./{js}\" data-wasm=\"./{wasm}\"></script>\n</body>"
    );
    if !html.contains("</body>") {
        return Err("index.html has no </body>: the page's script goes before it".into());
    }
    let html = html.replacen("</body>", &script, 1);
    place::write(&folder.join("index.html"), html.as_bytes())?;
    Ok(folder)
}

/// Moves the finished folder to dist/.
///
/// # Errors
/// The old dist/ cannot be removed or the new one moved.
pub fn publish(folder: &Path) -> Result<(), String> {
    let dist = place::dist();
    if dist.exists() {
        std::fs::remove_dir_all(&dist).map_err(|error| format!("cannot empty dist/: {error}"))?;
    }
    std::fs::create_dir_all(&dist).map_err(|error| format!("cannot make dist/: {error}"))?;
    for name in place::files(folder)? {
        place::write(&dist.join(&name), &place::bytes(&folder.join(&name))?)?;
    }
    Ok(())
}

/// One line of index.html that asks for something to be built or copied.
#[derive(Debug, PartialEq)]
enum Asset<'a> {
    Rust,
    Style(&'a str),
    File(&'a str),
    Folder(&'a str),
}

impl<'a> Asset<'a> {
    fn of(line: &'a str) -> Result<Option<Self>, String> {
        if !line.trim_start().starts_with("<link data-trunk") {
            return Ok(None);
        }
        let href = attribute(line, "href");
        let named = || href.ok_or_else(|| format!("index.html: no href in: {}", line.trim()));
        Ok(Some(match attribute(line, "rel") {
            Some("rust") => Self::Rust,
            Some("css") => Self::Style(named()?),
            Some("copy-file") => Self::File(named()?),
            Some("copy-dir") => Self::Folder(named()?),
            _ => {
                return Err(format!(
                    "index.html: rust, css, copy-file and copy-dir can be built, one a line; not: {}",
                    line.trim()
                ));
            }
        }))
    }
}

fn attribute<'a>(line: &'a str, name: &str) -> Option<&'a str> {
    let start = line.find(&format!(" {name}=\""))? + name.len() + 3;
    let rest = line.get(start..)?;
    rest.get(..rest.find('"')?)
}

/// Drops comments, indentation, and what is blank round braces and semicolons; the rest stays as
/// written. It knows no quotes within strings: what it is given must have none.
fn compact_css(source: &str) -> String {
    let mut bare = String::new();
    let mut rest = source;
    while let Some(start) = rest.find("/*") {
        let (before, comment) = rest.split_at(start);
        bare.push_str(before);
        rest = comment.find("*/").map_or("", |end| &comment[end + 2..]);
    }
    bare.push_str(rest);
    let mut compact = String::with_capacity(bare.len());
    let (mut quote, mut is_blank) = (None, false);
    for letter in bare.chars() {
        if quote.is_none() && letter.is_whitespace() {
            is_blank = true;
            continue;
        }
        let is_border = |letter: char| matches!(letter, '{' | '}' | ';');
        let needs_none = is_border(letter) || compact.chars().next_back().is_none_or(is_border);
        if quote.is_none() && is_blank && !needs_none {
            compact.push(' ');
        }
        is_blank = false;
        compact.push(letter);
        quote = match (quote, letter) {
            (None, '"' | '\'') => Some(letter),
            (Some(open), _) if open == letter => None,
            (open, _) => open,
        };
    }
    compact
}

#[cfg(test)]
mod tests {
    use super::{Asset, compact_css};

    #[test]
    fn reads_asset_lines() {
        let of = |line| Asset::of(line).unwrap();
        assert_eq!(of("<p>text</p>"), None);
        assert_eq!(
            of(r#"<link data-trunk rel="rust" data-bin="x">"#),
            Some(Asset::Rust)
        );
        assert_eq!(
            of(r#"<link data-trunk rel="css" href="styles/a.css">"#),
            Some(Asset::Style("styles/a.css"))
        );
        assert!(Asset::of(r#"<link data-trunk rel="css">"#).is_err());
        assert!(Asset::of(r#"<link data-trunk rel="sass" href="a">"#).is_err());
    }

    #[test]
    fn css_keeps_its_rules() {
        let css = "/* a */\n.b {\n  color: red; /* c */\n}\n/* open";
        assert_eq!(compact_css(css), ".b{color: red;}");
        assert_eq!(
            compact_css(
                "@media print {\n  a > b,\n  c d { margin: 0 1px; content: \"; a \" }\n}\n"
            ),
            "@media print{a > b, c d{margin: 0 1px;content: \"; a \"}}"
        );
    }
}
