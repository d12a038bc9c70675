//! A second language needs its files and no Rust: an accented English goes through the
//! generator that the build uses, whole; what does not fit the English files is refused.

#[expect(dead_code, reason = "the build alone runs its main function")]
#[path = "../build.rs"]
mod generator;

use std::fs;
use std::path::{Path, PathBuf};

/// Letters of the words of a line, accented; what stands in braces, keys and variants stays.
fn accented(line: &str) -> String {
    let starts_message =
        line.starts_with(|c: char| c.is_ascii_lowercase()) || line.trim_start().starts_with('.');
    let words_at = if starts_message {
        line.find(" = ").map(|at| at + 3)
    } else if line.trim_start().starts_with(['[', '*']) {
        line.find(']').map(|at| at + 1)
    } else if line.starts_with(' ') {
        Some(0)
    } else {
        None
    };
    let Some(words_at) = words_at else {
        return line.to_owned();
    };
    let (key, words) = line.split_at(words_at);
    let mut depth = 0;
    let changed = words.chars().map(|c| {
        match c {
            '{' => depth += 1,
            '}' => depth -= 1,
            _ => {}
        }
        match c {
            _ if depth != 0 => c,
            'a' => 'á',
            'e' => 'ë',
            'o' => 'ö',
            'u' => 'ü',
            _ => c,
        }
    });
    key.chars().chain(changed).collect()
}

/// A folder with English and another language made from it.
fn two_languages(name: &str, also: &str) -> PathBuf {
    let root = Path::new(env!("CARGO_TARGET_TMPDIR")).join(name);
    let english = Path::new(env!("CARGO_MANIFEST_DIR")).join("locales/en");
    for tag in ["en", "xx"] {
        fs::create_dir_all(root.join(tag)).expect("a folder");
    }
    for entry in fs::read_dir(english).expect("the English files").flatten() {
        let text = fs::read_to_string(entry.path()).expect("text");
        let file = entry.file_name();
        let mut other: Vec<String> = if file == "locale.ftl" {
            // Signs and plural family are names, not words.
            let key = also.split(" = ").next().unwrap_or_default();
            text.replace("locale-name = English", "locale-name = Ënglísh")
                .lines()
                .filter(|line| key.is_empty() || !line.starts_with(key))
                .map(str::to_owned)
                .collect()
        } else {
            text.lines().map(accented).collect()
        };
        if file == "locale.ftl" {
            other.push(also.to_owned());
        }
        fs::write(root.join("en").join(&file), &text).expect("written");
        fs::write(root.join("xx").join(&file), other.join("\n") + "\n").expect("written");
    }
    root
}

/// The patterns of one language in the generated tables.
fn patterns<'a>(tables: &'a str, tag: &str) -> Vec<&'a str> {
    tables
        .split(&format!("({tag:?}, Texts {{ text: \""))
        .nth(1)
        .and_then(|rest| rest.split("\", starts:").next())
        .map(|texts| {
            texts
                .split("\\u{0}")
                .filter(|text| !text.is_empty())
                .collect()
        })
        .unwrap_or_default()
}

#[test]
fn a_second_language_goes_through_whole() {
    let root = two_languages("whole", "");
    let tables = generator::generate(&root).expect("both languages fit");
    let (english, other) = (patterns(&tables, "en"), patterns(&tables, "xx"));
    assert!(english.len() > 900, "{}", english.len());
    assert_eq!(english.len(), other.len());
    let same = english
        .iter()
        .zip(&other)
        .filter(|(one, other)| one == other)
        .count();
    // Units, cartridges and signs are the same in any language.
    assert!(
        same * 3 < english.len(),
        "{same} of {} are the same",
        english.len()
    );
    assert!(
        other
            .iter()
            .any(|pattern| pattern.contains("rífl") || pattern.contains("riflë"))
    );
    // The folder stays for whoever wants to see the page in it: SCOPEWRIGHT_LOCALES names it.
}

#[test]
fn what_english_does_not_have_is_refused() {
    for (name, also, says) in [
        ("rogue-key", "no-such-key = x", "no-such-key"),
        (
            "rogue-variable",
            "measure-minutes = { $value } { $other } m",
            "measure-minutes",
        ),
        ("broken", "half = {", "locale.ftl"),
    ] {
        let problems = generator::generate(&two_languages(name, also)).expect_err("refused");
        assert!(
            problems.iter().any(|problem| problem.contains(says)),
            "{problems:?}"
        );
    }
}
