//! Turns the Fluent files under `locales/` into Rust tables, so that the page carries no
//! parser: every message becomes one string with a few control characters in it.
//!
//! English is the reference: another language may leave messages out (English stands in,
//! and a test names them), but may not add messages or use variables English does not pass.
//!
//! The drawings under `src/drawing/silhouettes` become tables too, without their remarks and
//! with every point relative to the one before.

use std::collections::BTreeMap;
use std::fmt::Write as _;
use std::path::{Path, PathBuf};
use std::process::ExitCode;
use std::{env, fs};

use fluent_syntax::ast;

#[path = "src/wording/place.rs"]
mod place;

/// The language whose files define the messages.
const REFERENCE: &str = "en";

/// Units that follow a number after a narrow no-break space. "in" is not among them: it is
/// a word too.
const UNITS: &[&str] = &[
    "mm", "cm", "m", "km", "g", "kg", "mg", "N·m", "N", "kN", "J", "m/s", "km/h", "s", "min", "h",
    "mrad", "MOA", "lx", "mlx", "cd/m²", "°C", "°F", "%", "yd", "ft", "ft/s", "lb", "oz", "gr",
    "fps", "hPa", "dioptres", "mag", "€",
];

/// One message: what it says, encoded, and the variables it needs.
struct Message {
    pattern: String,
    variables: Vec<String>,
    file: PathBuf,
}

type Messages = BTreeMap<String, Message>;

/// Another folder than `locales/`, to try a language before it is put there.
const FOLDER: &str = "SCOPEWRIGHT_LOCALES";

fn main() -> ExitCode {
    let root = PathBuf::from(env::var_os(FOLDER).unwrap_or_else(|| "locales".into()));
    println!("cargo::rerun-if-changed={}", root.display());
    println!("cargo::rerun-if-changed=build.rs");
    println!("cargo::rerun-if-env-changed={FOLDER}");
    println!("cargo::rerun-if-changed={DRAWINGS}");
    let out = PathBuf::from(env::var_os("OUT_DIR").unwrap_or_default());
    let write = |name: &str, text: String| {
        let path = out.join(name);
        fs::write(&path, text)
            .map_err(|error| vec![format!("cannot write {}: {error}", path.display())])
    };
    let written = generate(&root)
        .and_then(|text| write("messages.rs", text))
        .and_then(|()| drawings(Path::new(DRAWINGS)))
        .and_then(|text| write("drawings.rs", text));
    match written {
        Ok(()) => ExitCode::SUCCESS,
        Err(problems) => {
            for problem in problems {
                println!("cargo::error={problem}");
            }
            ExitCode::FAILURE
        }
    }
}

/// Where the drawings are.
const DRAWINGS: &str = "src/drawing/silhouettes";

/// The tables of all drawings in a folder, as Rust: one line a statement, points relative.
fn drawings(folder: &Path) -> Result<String, Vec<String>> {
    let fail = |error: std::io::Error| vec![format!("{}: {error}", folder.display())];
    let mut drawn = BTreeMap::new();
    for entry in fs::read_dir(folder).map_err(fail)?.flatten() {
        let key = entry.path().with_extension("");
        let key = key.file_name().unwrap_or_default().to_string_lossy();
        let text = fs::read_to_string(entry.path()).map_err(fail)?;
        drawn.insert(key.into_owned(), relative(&text));
    }
    let parts = drawn.remove("parts").unwrap_or_default();
    let parts: Vec<&str> = parts
        .lines()
        .filter_map(|line| Some(line.split_once(' ')?.1))
        .collect();
    Ok(format!(
        "const DRAWINGS: [(&str, &str); {}] = {:?};\nconst PARTS: [&str; {}] = {parts:?};\n",
        drawn.len(),
        drawn.iter().collect::<Vec<_>>(),
        parts.len(),
    ))
}

/// A drawing's text without remarks, one line a statement, with relative points.
fn relative(text: &str) -> String {
    // As written, in hundredths; the remainder is exact.
    let hundredths = |word: &str| {
        word.parse::<f64>()
            .map(|value| (value * 100.0).round() as i64)
    };
    let short = |value: i64| {
        let text = format!("{}", value as f64 / 100.0);
        text.replacen("0.", ".", usize::from(value.abs() < 100 && value != 0))
    };
    let mut out = String::new();
    let mut last = (0, 0);
    for line in text.lines() {
        let line = line.split('#').next().unwrap_or("");
        for (n, word) in line.split_whitespace().enumerate() {
            let point = match *word.trim_end_matches('!').split(',').collect::<Vec<_>>() {
                [x, y, ..] => hundredths(x).and_then(|x| Ok((x, hundredths(y)?))).ok(),
                _ => None,
            };
            let statement =
                n == 0 && word.starts_with(|c: char| c.is_ascii_lowercase()) && !word.contains(',');
            out.push(if statement { '\n' } else { ' ' });
            let Some((x, y)) = point else {
                out.push_str(word);
                if statement || word == "+" {
                    last = (0, 0);
                }
                continue;
            };
            // What follows the two coordinates stays: half a width, the mark of a corner.
            let rest = word.splitn(3, ',').nth(2).map_or_else(
                || {
                    if word.ends_with('!') {
                        "!".to_owned()
                    } else {
                        String::new()
                    }
                },
                |half| format!(",{half}"),
            );
            out.push_str(&format!(
                "{},{}{rest}",
                short(x - last.0),
                short(y - last.1)
            ));
            last = (x, y);
        }
    }
    out.trim_start().to_owned()
}

/// The tables of all languages in a folder, as Rust.
pub fn generate(root: &Path) -> Result<String, Vec<String>> {
    let io = |what: &str, path: &Path, error: std::io::Error| {
        vec![format!("{what} {}: {error}", path.display())]
    };
    let mut languages = BTreeMap::new();
    let entries = fs::read_dir(root).map_err(|error| io("cannot list", root, error))?;
    for entry in entries.flatten() {
        if entry.path().is_dir() {
            let name = entry.file_name().to_string_lossy().into_owned();
            languages.insert(name, read_language(&entry.path())?);
        }
    }
    let Some(reference) = languages.remove(REFERENCE) else {
        return Err(vec![format!("locales/{REFERENCE} is missing")]);
    };
    let mut problems = Vec::new();
    for (language, messages) in &languages {
        for (key, message) in messages {
            match reference.get(key) {
                None => problems.push(format!(
                    "{}: `{key}` does not exist in {REFERENCE}; is it spelt as there?",
                    message.file.display()
                )),
                Some(original) => {
                    for variable in &message.variables {
                        if !original.variables.contains(variable) {
                            problems.push(format!(
                                "{}: `{key}` uses ${variable}, but is given only {:?}",
                                message.file.display(),
                                original.variables
                            ));
                        }
                    }
                }
            }
        }
        for key in reference.keys() {
            if !messages.contains_key(key) {
                println!("cargo::warning=locales/{language} lacks `{key}`: English stands in");
            }
        }
    }
    if !problems.is_empty() {
        return Err(problems);
    }
    rust(&reference, &languages)
}

fn rust(reference: &Messages, others: &BTreeMap<String, Messages>) -> Result<String, Vec<String>> {
    let (turns, keys) = places(reference)?;
    // The messages of a language, in the order of their places.
    let placed = |language| placed(&keys, language, reference);
    let mut text = String::new();
    let _ = writeln!(text, "pub(crate) const KEYS: &[&str] = &{keys:?};");
    let variables: Vec<&[String]> = placed(reference)
        .into_iter()
        .map(|message| message.map_or(&[][..], |message| &message.variables))
        .collect();
    let _ = writeln!(
        text,
        "pub(crate) const VARIABLES: &[&[&str]] = &{};",
        format!("{variables:?}")
            .replace('[', "&[")
            .replacen("&[", "[", 1)
    );
    let _ = writeln!(text, "pub(super) static TURNS: &[u8] = &{turns:?};");
    let terms: Vec<&str> = reference
        .keys()
        .filter_map(|key| key.strip_prefix("term-")?.strip_suffix(".means"))
        .collect();
    let _ = writeln!(
        text,
        "pub(super) static TERMS: &str = {:?};",
        terms.join(" ")
    );
    let optional: Vec<u32> = reference
        .keys()
        .filter(|key| place::is_optional(key))
        .map(|key| place::hash(key))
        .collect();
    let _ = writeln!(text, "pub(super) static OPTIONAL: &[u32] = &{optional:?};");
    text.push_str("pub(super) static LANGUAGES: &[(&str, Texts)] = &[\n");
    let others = others
        .iter()
        .map(|(language, theirs)| (&**language, theirs));
    for (language, theirs) in [(REFERENCE, reference)].into_iter().chain(others) {
        let _ = write!(text, "({language:?}, ");
        let patterns = placed(theirs)
            .into_iter()
            .map(|message| message.map_or("", |message| &*message.pattern));
        texts(&mut text, patterns);
        text.push_str("),\n");
    }
    text.push_str("];\n");
    Ok(text)
}

/// The messages of a language in the order of their places, or the reference's where it has none.
fn placed<'a>(
    keys: &[&str],
    language: &'a Messages,
    reference: &'a Messages,
) -> Vec<Option<&'a Message>> {
    keys.iter()
        .map(|key| language.get(*key).or_else(|| reference.get(*key)))
        .collect()
}

/// A place for every message: the turns of the groups, and the keys in the order of their
/// places, a few of which stay empty. As few groups as it goes with.
fn places(messages: &Messages) -> Result<(Vec<u8>, Vec<&str>), Vec<String>> {
    (messages.len() / 5 + 1..=messages.len())
        .step_by(8)
        .find_map(|groups| places_in(messages, groups))
        .ok_or_else(|| vec!["two messages have keys of the same hash: rename one".to_owned()])
}

fn places_in(messages: &Messages, groups: usize) -> Option<(Vec<u8>, Vec<&str>)> {
    let mut keys = vec![""; messages.len() + messages.len() / 32 + 1];
    let mut grouped: Vec<Vec<&str>> = vec![Vec::new(); groups];
    for key in messages.keys() {
        grouped[place::group(place::hash(key), groups)].push(key);
    }
    // The largest groups while most places are free.
    let mut order: Vec<usize> = (0..groups).collect();
    order.sort_by_key(|&group| std::cmp::Reverse(grouped[group].len()));
    let mut turns = vec![0; groups];
    for group in order {
        let at = |turn| -> Option<Vec<usize>> {
            let mut taken = Vec::new();
            for key in &grouped[group] {
                let place = place::place(place::hash(key), turn, keys.len());
                if !keys[place].is_empty() || taken.contains(&place) {
                    return None;
                }
                taken.push(place);
            }
            Some(taken)
        };
        let (turn, taken) = (0..=u8::MAX).find_map(|turn| Some((turn, at(turn)?)))?;
        turns[group] = turn;
        for (place, key) in taken.into_iter().zip(&grouped[group]) {
            keys[place] = key;
        }
    }
    Some((turns, keys))
}

/// Texts in one, each ended by U+0000, and where every thirty-second begins: a pointer and a
/// length for each would weigh as much as a quarter of the words.
fn texts<'a>(out: &mut String, list: impl Iterator<Item = &'a str>) {
    let mut text = String::new();
    let mut starts = Vec::new();
    for (place, each) in list.enumerate() {
        if place % 32 == 0 {
            starts.push(text.len());
        }
        text.push_str(each);
        text.push('\0');
    }
    // In its short form a null before a digit reads like an octal number.
    let text = format!("{text:?}").replace("\\0", "\\u{0}");
    let _ = write!(out, "Texts {{ text: {text}, starts: &{starts:?} }}");
}

/// All messages of one language; references between messages and terms are written out.
fn read_language(folder: &Path) -> Result<Messages, Vec<String>> {
    let mut files: Vec<PathBuf> = fs::read_dir(folder)
        .map_err(|error| vec![format!("cannot list {}: {error}", folder.display())])?
        .flatten()
        .map(|entry| entry.path())
        .filter(|path| path.extension().is_some_and(|ending| ending == "ftl"))
        .collect();
    files.sort();
    let mut problems = Vec::new();
    let mut patterns: BTreeMap<String, (ast::Pattern<String>, PathBuf)> = BTreeMap::new();
    for file in files {
        let source = match fs::read_to_string(&file) {
            Ok(source) => source,
            Err(error) => {
                problems.push(format!("cannot read {}: {error}", file.display()));
                continue;
            }
        };
        let resource = match fluent_syntax::parser::parse(source.clone()) {
            Ok(resource) => resource,
            Err((_, errors)) => {
                for error in errors {
                    let line = source[..error.pos.start.min(source.len())]
                        .matches('\n')
                        .count()
                        + 1;
                    problems.push(format!("{}:{line}: {error}", file.display()));
                }
                continue;
            }
        };
        let mut put = |key: String, pattern: ast::Pattern<String>| {
            if let Some((_, before)) = patterns.get(&key) {
                problems.push(format!(
                    "{}: `{key}` stands already in {}",
                    file.display(),
                    before.display()
                ));
            }
            patterns.insert(key, (pattern, file.clone()));
        };
        for entry in resource.body {
            match entry {
                ast::Entry::Message(message) => {
                    let id = message.id.name;
                    for attribute in message.attributes {
                        put(format!("{id}.{}", attribute.id.name), attribute.value);
                    }
                    if let Some(value) = message.value {
                        put(id, value);
                    }
                }
                ast::Entry::Term(term) => put(format!("-{}", term.id.name), term.value),
                _ => {}
            }
        }
    }
    let mut messages = Messages::new();
    for (key, (pattern, file)) in &patterns {
        if key.starts_with('-') {
            continue;
        }
        let mut variables = Vec::new();
        let mut text = String::new();
        match encode(pattern, &patterns, &mut variables, &mut text, 0) {
            Ok(()) => {
                variables.sort();
                variables.dedup();
                messages.insert(
                    key.clone(),
                    Message {
                        pattern: typeset(&text),
                        variables,
                        file: file.clone(),
                    },
                );
            }
            Err(problem) => problems.push(format!("{}: `{key}`: {problem}", file.display())),
        }
    }
    if problems.is_empty() {
        Ok(messages)
    } else {
        Err(problems)
    }
}

type Patterns = BTreeMap<String, (ast::Pattern<String>, PathBuf)>;

/// Variable: U+0001 name [:least-most digits] U+0002. Choice: U+0004 name, then for each
/// variant U+0005 key U+0006 text, then U+0007; the default variant's key starts with `*`.
fn encode(
    pattern: &ast::Pattern<String>,
    all: &Patterns,
    variables: &mut Vec<String>,
    out: &mut String,
    depth: usize,
) -> Result<(), String> {
    if depth > 8 {
        return Err("messages refer to one another in a circle".to_owned());
    }
    for element in &pattern.elements {
        match element {
            ast::PatternElement::TextElement { value } => out.push_str(value),
            ast::PatternElement::Placeable { expression } => {
                placeable(expression, all, variables, out, depth)?;
            }
        }
    }
    Ok(())
}

fn placeable(
    expression: &ast::Expression<String>,
    all: &Patterns,
    variables: &mut Vec<String>,
    out: &mut String,
    depth: usize,
) -> Result<(), String> {
    match expression {
        ast::Expression::Inline(inline) => match inline {
            ast::InlineExpression::StringLiteral { value }
            | ast::InlineExpression::NumberLiteral { value } => {
                out.push_str(&fluent_syntax::unicode::unescape_unicode_to_string(value));
                Ok(())
            }
            ast::InlineExpression::VariableReference { .. }
            | ast::InlineExpression::FunctionReference { .. } => {
                let name = selector(inline, variables)?;
                let _ = write!(out, "\u{1}{name}\u{2}");
                Ok(())
            }
            ast::InlineExpression::MessageReference { id, attribute } => {
                let key = match attribute {
                    Some(attribute) => format!("{}.{}", id.name, attribute.name),
                    None => id.name.clone(),
                };
                let (pattern, _) = all.get(&key).ok_or(format!("no message `{key}`"))?;
                encode(pattern, all, variables, out, depth + 1)
            }
            ast::InlineExpression::TermReference { id, .. } => {
                let key = format!("-{}", id.name);
                let (pattern, _) = all.get(&key).ok_or(format!("no term `{key}`"))?;
                encode(pattern, all, variables, out, depth + 1)
            }
            ast::InlineExpression::Placeable { expression } => {
                placeable(expression, all, variables, out, depth)
            }
        },
        ast::Expression::Select {
            selector: chosen,
            variants,
        } => {
            let name = selector(chosen, variables)?;
            let _ = write!(out, "\u{4}{name}");
            for variant in variants {
                let key = match &variant.key {
                    ast::VariantKey::Identifier { name } => name,
                    ast::VariantKey::NumberLiteral { value } => value,
                };
                let star = if variant.default { "*" } else { "" };
                let _ = write!(out, "\u{5}{star}{key}\u{6}");
                encode(&variant.value, all, variables, out, depth + 1)?;
            }
            out.push('\u{7}');
            Ok(())
        }
    }
}

/// The name of a variable, with its digits where it stands in NUMBER(…).
fn selector(
    inline: &ast::InlineExpression<String>,
    variables: &mut Vec<String>,
) -> Result<String, String> {
    match inline {
        ast::InlineExpression::VariableReference { id } => {
            variables.push(id.name.clone());
            Ok(id.name.clone())
        }
        ast::InlineExpression::FunctionReference { id, arguments } if id.name == "NUMBER" => {
            let [ast::InlineExpression::VariableReference { id }] = &arguments.positional[..]
            else {
                return Err("NUMBER takes one variable".to_owned());
            };
            variables.push(id.name.clone());
            let (mut least, mut most) = (0_u8, 3_u8);
            for named in &arguments.named {
                let ast::InlineExpression::NumberLiteral { value } = &named.value else {
                    return Err(format!("{} must be a number", named.name.name));
                };
                let digits = value
                    .parse()
                    .map_err(|_| format!("{} is {value}: 0 to 9 digits", named.name.name))?;
                match named.name.name.as_str() {
                    "minimumFractionDigits" => least = digits,
                    "maximumFractionDigits" => most = digits,
                    other => return Err(format!("NUMBER knows no {other}")),
                }
            }
            Ok(format!("{}:{least}-{}", id.name, most.max(least)))
        }
        ast::InlineExpression::FunctionReference { id, .. } => {
            Err(format!("there is no function {}", id.name))
        }
        _ => Err("only a variable can be chosen by".to_owned()),
    }
}

/// Puts narrow no-break spaces between a number and its unit and around a multiplication
/// sign, and a real apostrophe for a straight one, so that translators need not type them.
fn typeset(text: &str) -> String {
    const NARROW: char = '\u{202F}';
    let mut out = String::with_capacity(text.len());
    let chars: Vec<char> = text.chars().collect();
    let number_end = |c: char| c.is_ascii_digit() || c == '\u{2}';
    let number_start = |c: char| c.is_ascii_digit() || c == '\u{1}';
    for (at, &c) in chars.iter().enumerate() {
        if c == '\'' && at > 0 && chars[at - 1].is_alphabetic() {
            out.push('’');
            continue;
        }
        if c != ' ' || at == 0 {
            out.push(c);
            continue;
        }
        let before = chars[at - 1];
        let rest: String = chars[at + 1..].iter().take(12).collect();
        let unit_follows = number_end(before)
            && UNITS.iter().any(|unit| {
                rest.strip_prefix(unit).is_some_and(|after| {
                    !after
                        .chars()
                        .next()
                        .is_some_and(|next| next.is_alphanumeric() || next == '/' || next == '·')
                })
            });
        let times_follows = number_end(before)
            && rest
                .strip_prefix('×')
                .is_some_and(|after| !after.starts_with(char::is_alphanumeric));
        let times_before = before == '×'
            && at >= 2
            && (chars[at - 2] == ' ')
            && rest.chars().next().is_some_and(number_start);
        out.push(if unit_follows || times_follows || times_before {
            NARROW
        } else {
            c
        });
    }
    out
}
