//! Reads Rust sources just well enough to see what they import and call.

use std::path::{Path, PathBuf};
use std::process::Command;

/// The project's root.
pub fn root() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR"))
}

/// A text file of the project.
pub fn read(path: &str) -> String {
    std::fs::read_to_string(root().join(path)).unwrap_or_else(|error| panic!("{path}: {error}"))
}

/// All files that are or would be under version control, sorted.
pub fn project_files() -> Vec<String> {
    let listed = Command::new("git")
        .current_dir(root())
        .args(["ls-files", "--cached", "--others", "--exclude-standard"])
        .output()
        .expect("git starts");
    let mut files: Vec<String> = String::from_utf8_lossy(&listed.stdout)
        .lines()
        .filter(|path| root().join(path).is_file())
        .map(str::to_owned)
        .collect();
    files.sort();
    assert!(!files.is_empty(), "git lists no file");
    files
}

/// The Rust sources under a folder.
pub fn rust_files(folder: &str) -> Vec<Source> {
    let mut found = Vec::new();
    collect(&root().join(folder), folder, &mut found);
    found.sort();
    found
        .iter()
        .map(|path| Source::of(path, &read(path)))
        .collect()
}

fn collect(folder: &Path, name: &str, found: &mut Vec<String>) {
    let Ok(entries) = std::fs::read_dir(folder) else {
        return;
    };
    for entry in entries.flatten() {
        let below = format!("{name}/{}", entry.file_name().to_string_lossy());
        let path = entry.path();
        if path.is_dir() && !below.ends_with("node_modules") {
            collect(&path, &below, found);
        } else if below.ends_with(".rs") {
            found.push(below);
        }
    }
}

/// A word, a mark or a string of a source, comments left out.
#[derive(Clone, Debug, PartialEq)]
enum Token {
    Word(String),
    Mark(char),
    Text(String),
}

/// One token and where it stands.
#[derive(Clone, Debug)]
struct Placed {
    token: Token,
    line: usize,
    /// How many inline modules are open here.
    inline: usize,
    /// Whether one of them is for tests.
    in_tests: bool,
    /// Whether it stands in an attribute.
    in_attribute: bool,
}

/// A source, cut into tokens.
#[derive(Clone, Debug)]
pub struct Source {
    /// Its path in the project, with forward slashes.
    pub path: String,
    tokens: Vec<Placed>,
}

impl Source {
    /// Cuts a source.
    pub fn of(path: &str, text: &str) -> Self {
        Self {
            path: path.to_owned(),
            tokens: placed(cut(text)),
        }
    }

    /// The room it belongs to; empty for the library's root and the binaries.
    pub fn room(&self) -> &str {
        let below = self.path.strip_prefix("src/").unwrap_or("");
        let first = below.split('/').next().unwrap_or("");
        match first {
            "lib.rs" | "main.rs" | "bin" => "",
            file => file.strip_suffix(".rs").unwrap_or(file),
        }
    }

    /// How many modules lie between the library's root and this file.
    fn depth(&self) -> usize {
        let below = self.path.strip_prefix("src/").unwrap_or(&self.path);
        let parts = below.split('/').count();
        if below.ends_with("/mod.rs") {
            parts - 1
        } else {
            parts
        }
    }

    fn word(&self, at: usize) -> Option<&str> {
        match self.tokens.get(at).map(|placed| &placed.token) {
            Some(Token::Word(word)) => Some(word),
            _ => None,
        }
    }

    fn mark(&self, at: usize, mark: char) -> bool {
        self.tokens
            .get(at)
            .is_some_and(|placed| placed.token == Token::Mark(mark))
    }

    fn colons(&self, at: usize) -> bool {
        self.mark(at, ':') && self.mark(at + 1, ':')
    }

    /// Lines and names of the rooms that paths from the root lead into.
    pub fn imported_rooms(&self) -> Vec<(usize, String)> {
        let mut found = Vec::new();
        let mut at = 0;
        while at < self.tokens.len() {
            let start = at;
            at += 1;
            let after = match self.word(start) {
                Some("crate") if self.colons(start + 1) => Some(start + 3),
                Some("super") if self.colons(start + 1) => self.climb(start),
                _ => None,
            };
            if let Some(after) = after {
                found.extend(self.first_names(after));
                at = after;
            }
        }
        found
    }

    /// Where a chain of `super::` ends, if it reaches the library's root.
    fn climb(&self, start: usize) -> Option<usize> {
        let mut at = start;
        let mut steps = 0;
        while self.word(at) == Some("super") && self.colons(at + 1) {
            at += 3;
            steps += 1;
        }
        let continued = start >= 3 && self.word(start - 3) == Some("super");
        (!continued && steps >= self.depth() + self.tokens[start].inline).then_some(at)
    }

    /// The name at a place, or the first names in its braces.
    fn first_names(&self, at: usize) -> Vec<(usize, String)> {
        let named = |at: usize| {
            self.word(at)
                .map(|word| (self.tokens[at].line, word.to_owned()))
        };
        if !self.mark(at, '{') {
            return named(at).into_iter().collect();
        }
        let mut found = Vec::new();
        let mut open = 1;
        let mut here = at + 1;
        let mut fresh = true;
        while open > 0 && here < self.tokens.len() {
            if open == 1 && fresh {
                found.extend(named(here));
            }
            fresh = false;
            if self.mark(here, '{') {
                open += 1;
            } else if self.mark(here, '}') {
                open -= 1;
            } else if self.mark(here, ',') {
                fresh = open == 1;
            }
            here += 1;
        }
        found
    }

    fn told(&self, at: usize) -> String {
        let placed = &self.tokens[at];
        format!(
            "{}:{}: {}",
            self.path,
            placed.line,
            self.word(at).unwrap_or("?")
        )
    }

    /// Where any of these words stands in the code.
    pub fn mentions(&self, words: &[&str]) -> Vec<String> {
        (0..self.tokens.len())
            .filter(|at| self.word(*at).is_some_and(|word| words.contains(&word)))
            .map(|at| self.told(at))
            .collect()
    }

    /// Where any of these is called or named at the end of a path; a variable may be called so.
    pub fn calls_or_paths(&self, words: &[&str]) -> Vec<String> {
        (0..self.tokens.len())
            .filter(|at| self.word(*at).is_some_and(|word| words.contains(&word)))
            .filter(|at| self.mark(at + 1, '(') || (*at >= 2 && self.colons(at - 2)))
            .map(|at| self.told(at))
            .collect()
    }

    /// As [`Self::mentions`], for macros and paths (`log::`, `println!`, `HashMap`) and not for
    /// the core's own names, outside tests.
    pub fn mentions_outside_tests(&self, words: &[&str]) -> Vec<String> {
        (0..self.tokens.len())
            .filter(|at| !self.tokens[*at].in_tests)
            .filter(|at| self.word(*at).is_some_and(|word| words.contains(&word)))
            .filter(|at| {
                let word = self.word(*at).unwrap_or("");
                let type_name = word.starts_with(|first: char| first.is_uppercase());
                type_name || self.mark(at + 1, '!') || self.colons(at + 1)
            })
            .filter(|at| *at < 2 || self.word(at.saturating_sub(3)) != Some("libm"))
            .map(|at| self.told(at))
            .collect()
    }

    /// Where a method of this name is called, or taken from a float type.
    pub fn calls_of_method(&self, name: &str) -> Vec<String> {
        (1..self.tokens.len())
            .filter(|at| self.word(*at) == Some(name))
            .filter(|at| {
                let method = self.mark(at - 1, '.') && self.mark(at + 1, '(');
                let float = self.colons(at.saturating_sub(2))
                    && matches!(self.word(at.saturating_sub(3)), Some("f64" | "f32"));
                method || float
            })
            .map(|at| self.told(at))
            .collect()
    }

    /// Where a method of any of these names is called, outside tests.
    pub fn methods_outside_tests(&self, names: &[&str]) -> Vec<String> {
        (1..self.tokens.len())
            .filter(|at| !self.tokens[*at].in_tests && self.mark(at - 1, '.'))
            .filter(|at| self.word(*at).is_some_and(|word| names.contains(&word)))
            .map(|at| self.told(at))
            .collect()
    }

    /// Texts outside tests and attributes.
    pub fn texts_outside_tests(&self) -> impl Iterator<Item = (usize, &str)> {
        self.tokens
            .iter()
            .filter(|placed| !placed.in_tests && !placed.in_attribute)
            .filter_map(|placed| match &placed.token {
                Token::Text(text) => Some((placed.line, text.as_str())),
                _ => None,
            })
    }

    /// Texts of more than one word, outside tests and attributes.
    pub fn phrases_outside_tests(&self) -> Vec<(usize, &str)> {
        self.texts_outside_tests()
            .filter(|(_, text)| text.trim().contains(' '))
            .collect()
    }

    /// `allow` and `expect` attributes, as they are written.
    pub fn silencers(&self) -> Vec<(usize, String)> {
        (0..self.tokens.len())
            .filter(|at| self.mark(*at, '#'))
            .filter_map(|at| {
                let inner = self.mark(at + 1, '!');
                let name = at + 2 + usize::from(inner);
                let attribute = self.mark(name - 1, '[');
                let silences = matches!(self.word(name), Some("allow" | "expect"));
                (attribute && silences).then(|| (self.tokens[at].line, self.written(at)))
            })
            .collect()
    }

    fn written(&self, at: usize) -> String {
        let mut text = String::new();
        for placed in &self.tokens[at..] {
            match &placed.token {
                Token::Word(word) => text.push_str(word),
                Token::Text(word) => text.push_str(&format!("{word:?}")),
                Token::Mark(mark) => text.push(*mark),
            }
            if placed.token == Token::Mark(']') {
                break;
            }
        }
        text
    }

    /// Where `name=` stands right after another attribute or the name of an element.
    pub fn attribute_in_markup(&self, name: &str) -> Vec<String> {
        (1..self.tokens.len())
            .filter(|at| self.word(*at) == Some(name) && self.mark(at + 1, '='))
            .filter(|at| !self.mark(at + 2, '='))
            .filter(|at| match &self.tokens[at - 1].token {
                Token::Word(word) => !["let", "mut"].contains(&word.as_str()),
                Token::Text(_) => true,
                Token::Mark(mark) => *mark == '}',
            })
            .map(|at| self.told(at))
            .collect()
    }
}

/// Notes for every token what is open around it.
fn placed(tokens: Vec<(Token, usize)>) -> Vec<Placed> {
    let word_at = |at: usize| match tokens.get(at) {
        Some((Token::Word(word), _)) => word.as_str(),
        _ => "",
    };
    let mark_at = |at: usize, mark: char| matches!(tokens.get(at), Some((Token::Mark(found), _)) if *found == mark);
    let mut out = Vec::with_capacity(tokens.len());
    let mut braces = 0_usize;
    let mut open: Vec<(usize, bool)> = Vec::new();
    let mut brackets: Option<usize> = None;
    for (at, (token, line)) in tokens.iter().enumerate() {
        match token {
            Token::Mark('{') => {
                braces += 1;
                if at >= 2 && word_at(at - 2) == "mod" {
                    open.push((braces, word_at(at - 1).contains("test")));
                }
            }
            Token::Mark('}') => {
                if open.last().is_some_and(|(level, _)| *level == braces) {
                    open.pop();
                }
                braces = braces.saturating_sub(1);
            }
            Token::Mark('[') => match brackets {
                Some(level) => brackets = Some(level + 1),
                None if at >= 1
                    && (mark_at(at - 1, '#')
                        || (at >= 2 && mark_at(at - 1, '!') && mark_at(at - 2, '#'))) =>
                {
                    brackets = Some(1);
                }
                None => {}
            },
            Token::Mark(']') => {
                brackets = brackets
                    .and_then(|level| level.checked_sub(1))
                    .filter(|level| *level > 0)
            }
            _ => {}
        }
        out.push(Placed {
            token: token.clone(),
            line: *line,
            inline: open.len(),
            in_tests: open.iter().any(|(_, tests)| *tests),
            in_attribute: brackets.is_some(),
        });
    }
    out
}

/// Cuts a text into tokens with their lines.
fn cut(text: &str) -> Vec<(Token, usize)> {
    let letters: Vec<char> = text.chars().collect();
    let at = |place: usize| letters.get(place).copied().unwrap_or('\0');
    let mut tokens = Vec::new();
    let mut line = 1;
    let mut here = 0;
    while here < letters.len() {
        let start = here;
        let letter = at(here);
        if letter == '/' && at(here + 1) == '/' {
            while here < letters.len() && at(here) != '\n' {
                here += 1;
            }
        } else if letter == '/' && at(here + 1) == '*' {
            here = end_of_block(&letters, here);
        } else if letter == '"' {
            here = end_of_text(&letters, here);
            tokens.push((Token::Text(inside(&letters, start + 1, here - 1)), line));
        } else if matches!(letter, 'r' | 'b') && raw_hashes(&letters, here).is_some() {
            let hashes = raw_hashes(&letters, here).unwrap_or(0);
            let (first, last, end) = raw_text(&letters, here, hashes);
            tokens.push((Token::Text(inside(&letters, first, last)), line));
            here = end;
        } else if letter == '\'' && (at(here + 1) == '\\' || at(here + 2) == '\'') {
            here += if at(here + 1) == '\\' { 3 } else { 2 };
            while here < letters.len() && at(here) != '\'' {
                here += 1;
            }
            here += 1;
        } else if letter.is_alphanumeric() || letter == '_' {
            while at(here).is_alphanumeric() || at(here) == '_' {
                here += 1;
            }
            tokens.push((Token::Word(inside(&letters, start, here)), line));
        } else {
            here += 1;
            if !letter.is_whitespace() {
                tokens.push((Token::Mark(letter), line));
            }
        }
        line += letters[start..here.min(letters.len())]
            .iter()
            .filter(|letter| **letter == '\n')
            .count();
    }
    tokens
}

fn inside(letters: &[char], from: usize, to: usize) -> String {
    letters
        .get(from..to.max(from))
        .unwrap_or(&[])
        .iter()
        .collect()
}

fn end_of_block(letters: &[char], start: usize) -> usize {
    let mut open = 1;
    let mut here = start + 2;
    while here + 1 < letters.len() && open > 0 {
        match (letters[here], letters[here + 1]) {
            ('/', '*') => (open, here) = (open + 1, here + 2),
            ('*', '/') => (open, here) = (open - 1, here + 2),
            _ => here += 1,
        }
    }
    if open > 0 { letters.len() } else { here }
}

fn end_of_text(letters: &[char], start: usize) -> usize {
    let mut here = start + 1;
    while here < letters.len() && letters[here] != '"' {
        here += if letters[here] == '\\' { 2 } else { 1 };
    }
    (here + 1).min(letters.len())
}

/// How many hashes open a raw string here, if one opens.
fn raw_hashes(letters: &[char], start: usize) -> Option<usize> {
    let before = start.checked_sub(1).and_then(|place| letters.get(place));
    if before.is_some_and(|letter| letter.is_alphanumeric() || *letter == '_') {
        return None;
    }
    let mut here = start + usize::from(letters[start] == 'b');
    if letters.get(here) != Some(&'r') {
        return None;
    }
    here += 1;
    let hashes = letters[here..]
        .iter()
        .take_while(|letter| **letter == '#')
        .count();
    (letters.get(here + hashes) == Some(&'"')).then_some(hashes)
}

fn raw_text(letters: &[char], start: usize, hashes: usize) -> (usize, usize, usize) {
    let first = start
        + letters[start..]
            .iter()
            .position(|letter| *letter == '"')
            .unwrap_or(0)
        + 1;
    let mut here = first;
    while here < letters.len() {
        let closing = letters[here] == '"'
            && letters[here + 1..]
                .iter()
                .take(hashes)
                .filter(|letter| **letter == '#')
                .count()
                == hashes;
        if closing {
            return (first, here, here + 1 + hashes);
        }
        here += 1;
    }
    (first, letters.len(), letters.len())
}
