//! Every visible text goes through the Fluent files: no key missing, none unused, none bypassed.

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};

use scopewright::need::answers::{Answers, Units};
use scopewright::need::cautions;
use scopewright::need::flow;
use scopewright::need::input::{InputProblem, Quantity, read};
use scopewright::need::kinds::KINDS;
use scopewright::need::loads::{OFTEN_MET, RECOIL_GROUPS, loads_of};
use scopewright::need::quarry::What;
use scopewright::need::questions::{Control, Part, QUESTIONS, Question};
use scopewright::need::{Reply, apply};
use scopewright::wording::{self, questions as words, terms};

fn rust_files(folder: &Path, found: &mut Vec<PathBuf>) {
    for entry in fs::read_dir(folder).expect("the folder is there").flatten() {
        let path = entry.path();
        if path.is_dir() {
            rust_files(&path, found);
        } else if path.extension().is_some_and(|ending| ending == "rs") {
            found.push(path);
        }
    }
}

fn sources() -> Vec<(PathBuf, String)> {
    let mut files = Vec::new();
    rust_files(
        &Path::new(env!("CARGO_MANIFEST_DIR")).join("src"),
        &mut files,
    );
    files.sort();
    files
        .into_iter()
        .map(|path| {
            let text = fs::read_to_string(&path).expect("a source is text");
            (path, text)
        })
        .collect()
}

/// All string literals of a source, comments left out.
fn literals(source: &str) -> Vec<String> {
    let mut found = Vec::new();
    let bytes = source.as_bytes();
    let mut at = 0;
    while at < bytes.len() {
        match bytes[at] {
            b'/' if bytes.get(at + 1) == Some(&b'/') => {
                while at < bytes.len() && bytes[at] != b'\n' {
                    at += 1;
                }
            }
            // A character or a lifetime.
            b'\'' if bytes.get(at + 2) == Some(&b'\'') => at += 3,
            b'\'' if bytes.get(at + 1) == Some(&b'\\') => {
                at += 3;
                while at < bytes.len() && bytes[at] != b'\'' {
                    at += 1;
                }
                at += 1;
            }
            b'"' => {
                let start = at + 1;
                at += 1;
                while at < bytes.len() && bytes[at] != b'"' {
                    at += if bytes[at] == b'\\' { 2 } else { 1 };
                }
                found.push(source[start..at.min(source.len())].to_owned());
                at += 1;
            }
            _ => at += 1,
        }
    }
    found
}

#[test]
fn literals_are_found_outside_comments_and_characters() {
    let source = "let a = \"x\\\"y\"; // \"no\"\nlet b = '\"'; f::<'a>(\"z\");";
    assert_eq!(literals(source), ["x\\\"y", "z"]);
}

/// Keys that the tables of the core ask for while running.
fn keys_of_tables() -> BTreeSet<String> {
    let mut keys = BTreeSet::new();
    for question in &QUESTIONS {
        keys.insert(format!("question-{}", question.key));
        for field in ["short", "why"] {
            keys.insert(format!("question-{}.{field}", question.key));
        }
        if !["quarry", "manner", "ranges", "rifle", "place"].contains(&question.key) {
            keys.insert(format!("question-{}.unsure", question.key));
        }
        if question.has_how {
            keys.insert(format!("question-{}.how", question.key));
        }
        for part in question.all_parts() {
            keys.insert(format!("part-{}", part.key()));
            match part.control() {
                Control::One(options) | Control::Many { options, .. } => {
                    for option in options {
                        keys.insert(format!(
                            "option-{}-{}",
                            part.key(),
                            option.replace('.', "_")
                        ));
                    }
                }
                Control::Decade(middles) => {
                    for middle in middles {
                        keys.insert(format!("option-age-{middle}"));
                    }
                }
                _ => {}
            }
        }
    }
    if let Control::Many { options, .. } = Part::Manners.control() {
        keys.extend(
            options
                .iter()
                .map(|option| format!("manner-phrase-{option}")),
        );
    }
    keys.extend(What::all().map(|what| format!("what-{}", what.key())));
    keys.insert("rings-made-bore".to_owned());
    for made in &scopewright::rifle::rail::RAILS_MADE {
        keys.insert(format!("rings-made-{}", made.key));
    }
    for kind in &KINDS {
        keys.insert(format!("kind-{}", kind.key));
    }
    keys.extend(
        RECOIL_GROUPS
            .iter()
            .map(|group| format!("cartridge-group-{}", group.key())),
    );
    keys.extend((1..=12).map(|month| format!("month-{month}")));
    keys.extend(
        cautions::ALL
            .iter()
            .map(|caution| format!("caution-{}", caution.key())),
    );
    keys
}

#[test]
fn no_table_asks_for_words_that_are_missing() {
    let missing: Vec<String> = keys_of_tables()
        .into_iter()
        .filter(|key| wording::variables(key).is_none())
        .collect();
    assert!(missing.is_empty(), "no words for: {missing:#?}");
    for part in QUESTIONS.iter().flat_map(|question| question.all_parts()) {
        assert_eq!(
            QUESTIONS
                .iter()
                .filter(|question| question.all_parts().any(|each| each == part))
                .count(),
            1
        );
    }
}

/// Variants of an enum of the report, as its keys.
fn variants(name: &str) -> Vec<String> {
    let report = Path::new(env!("CARGO_MANIFEST_DIR")).join("src/advice/report.rs");
    let text = fs::read_to_string(report).expect("the report is there");
    let body = text
        .split(&format!("pub enum {name} {{"))
        .nth(1)
        .and_then(|rest| rest.split("\n}").next())
        .unwrap_or_else(|| panic!("no enum {name} in the report"));
    let mut keys = Vec::new();
    for line in body
        .lines()
        .filter(|line| line.starts_with("    ") && !line.starts_with("     "))
    {
        let word: String = line
            .trim()
            .chars()
            .take_while(|c| c.is_alphanumeric())
            .collect();
        if word.is_empty() || !word.starts_with(char::is_uppercase) {
            continue;
        }
        // As serde writes snake_case: an underscore before every capital.
        let mut key = String::new();
        for (at, c) in word.chars().enumerate() {
            if c.is_uppercase() && at > 0 {
                key.push('_');
            }
            key.extend(c.to_lowercase());
        }
        keys.push(key);
    }
    assert!(!keys.is_empty(), "{name}");
    keys
}

/// What the report can say, heading by heading: `word("warning", …)` asks for these.
const REPORT: [(&str, &str); 18] = [
    ("warning", "WarningKey"),
    ("decision", "DecisionKey"),
    ("unused", "UnusedKey"),
    ("doubt", "Doubt"),
    ("not-counted", "NotCounted"),
    ("because", "Because"),
    ("cause", "Cause"),
    ("element", "Element"),
    ("standing", "Standing"),
    ("verdict", "Verdict"),
    ("quantity", "Quantity"),
    ("plane", "Plane"),
    ("reticle", "Reticle"),
    ("lit", "Lit"),
    ("turret", "Turret"),
    ("grade", "Grade"),
    ("saying", "SayingKey"),
    ("note", "NoteKey"),
];

fn keys_of_report() -> BTreeSet<String> {
    let mut keys = BTreeSet::new();
    for (heading, name) in REPORT {
        for key in variants(name) {
            keys.insert(format!("{heading}-{key}"));
            if heading == "saying" {
                keys.insert(format!("{heading}-{key}-why"));
            }
        }
    }
    // Price bands are single letters.
    keys.extend(["A", "B", "C", "D", "E"].map(|band| format!("band-{band}")));
    // A rule about the parallax setting, whatever its distance.
    keys.extend(["fixed", "adjustable"].map(|kind| format!("parallax-kind-{kind}")));
    keys
}

#[test]
fn everything_the_report_can_say_has_words() {
    let missing: Vec<String> = keys_of_report()
        .into_iter()
        .filter(|key| wording::variables(key).is_none())
        .collect();
    assert!(missing.is_empty(), "no words for: {missing:#?}");
}

#[test]
fn no_words_are_left_that_nobody_says() {
    let tables = keys_of_tables();
    let report = keys_of_report();
    let all: Vec<String> = sources()
        .iter()
        .flat_map(|(_, text)| literals(text))
        .collect();
    let said: BTreeSet<&str> = all.iter().map(String::as_str).collect();
    // Families whose last part is only known while running and that no table above holds.
    let families: Vec<(&str, &str)> = all
        .iter()
        .filter_map(|literal| {
            let (head, rest) = literal.split_once('{')?;
            let (_, tail) = rest.rsplit_once('}')?;
            let prefix = head.len() > 3
                && head.contains('-')
                && head
                    .chars()
                    .all(|c| c.is_ascii_alphanumeric() || matches!(c, '-' | '_' | '.'));
            prefix.then_some((head, tail))
        })
        .filter(|(head, _)| {
            let heading = head.trim_end_matches('-');
            ![
                "question",
                "part",
                "option",
                "what",
                "kind",
                "month",
                "caution",
                "manner-phrase",
            ]
            .contains(&heading)
                && !REPORT.iter().any(|(known, _)| *known == heading)
        })
        .collect();
    let unused: Vec<&str> = wording::keys()
        .filter(|key| {
            let hint = key.strip_suffix(".hint");
            !(said.contains(*key)
                || tables.contains(*key)
                || report.contains(*key)
                || hint.is_some_and(|key| tables.contains(key))
                || key.starts_with("locale-")
                || key.starts_with("term-")
                || families
                    .iter()
                    .any(|(head, tail)| key.starts_with(head) && key.ends_with(tail)))
        })
        .collect();
    assert!(unused.is_empty(), "nobody says: {unused:#?}");
}

#[test]
fn every_term_is_explained() {
    let mut count = 0;
    for key in terms::terms() {
        let (name, means) = terms::term(key).expect("a term has a name");
        assert!(!name.is_empty() && means.ends_with('.'), "{key}");
        assert_eq!(
            terms::terms_in(&name).len(),
            1,
            "{name} is not found in itself"
        );
        count += 1;
    }
    assert!(count >= 20, "{count}");
}

/// Sentences in the page's code are words that bypass the Fluent files.
#[test]
fn the_page_says_nothing_past_the_files() {
    let mut offences = Vec::new();
    for (path, text) in sources() {
        let path = path.display().to_string();
        if !path.contains("/web/") {
            continue;
        }
        let code = text.split("#[cfg(test)]").next().unwrap_or_default();
        for literal in literals(code) {
            let words = literal
                .split_whitespace()
                .filter(|word| {
                    word.len() > 1
                        && word
                            .chars()
                            .all(|c| c.is_alphabetic() || ",.:;’".contains(c))
                })
                .count();
            let sentence = words >= 2
                && literal.chars().next().is_some_and(char::is_uppercase)
                && !literal.starts_with('M');
            if sentence {
                offences.push(format!("{path}: {literal:?}"));
            }
        }
        // Text nodes: { "word" } after the end of a tag or of another node.
        for (at, _) in code.match_indices("{ \"") {
            let before = code[..at].trim_end();
            let literal = code[at + 3..].split('"').next().unwrap_or_default();
            if before.ends_with(['>', '}']) && literal.chars().any(char::is_alphabetic) {
                offences.push(format!("{path}: text {literal:?}"));
            }
        }
    }
    assert!(offences.is_empty(), "words past the files: {offences:#?}");
}

#[test]
fn words_are_set_as_printed() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("locales/en");
    let mut offences = Vec::new();
    for entry in fs::read_dir(folder)
        .expect("there are English words")
        .flatten()
    {
        let text = fs::read_to_string(entry.path()).expect("words are text");
        for (number, line) in text.lines().enumerate() {
            let line = line.trim();
            if line.starts_with('#') {
                continue;
            }
            let place = format!("{}:{}", entry.path().display(), number + 1);
            if line.contains("  ") {
                offences.push(format!("{place}: two spaces"));
            }
            if line.contains('!') {
                offences.push(format!("{place}: an exclamation mark"));
            }
        }
    }
    assert!(offences.is_empty(), "{offences:#?}");
    // Units stand behind a narrow no-break space without anybody typing it.
    assert!(
        words::question_how(Question::from_key("mount").expect("a question"))
            .expect("mount has one")
            .contains("79.8\u{202F}mm")
    );
    assert_eq!(wording::range(Units::Metric, 80.0), "80\u{202F}m");
}

#[test]
fn every_question_can_be_read_answered_and_unanswered() {
    let mut answers = Answers::default();
    for question in &QUESTIONS {
        assert_eq!(words::answer(question, &answers), None, "{}", question.key);
        let assumed = words::question_unsure(question, &answers);
        assert!(
            assumed.len() > 8 && !assumed.contains("question-"),
            "{}: {assumed}",
            question.key
        );
    }
    for reply in [
        Reply::Tap(Part::Uses, "roe_deer".into()),
        Reply::Tap(Part::Uses, "red_fox".into()),
        Reply::Tap(Part::Manners, "seat_rail".into()),
        Reply::Decade(45.0),
        Reply::Tap(Part::Glasses, "varifocal".into()),
        Reply::Tap(Part::Cartridge, "308_win_10_7_g".into()),
        Reply::RangesFit,
    ] {
        answers = apply(&answers, &reply);
    }
    let said = |key: &str| {
        let question = QUESTIONS
            .iter()
            .find(|each| each.key == key)
            .expect("a question");
        words::answer(question, &answers).expect("answered")
    };
    assert_eq!(said("quarry"), "roe deer: often; red fox: sometimes");
    assert_eq!(said("manner"), "From a seat, on the rail");
    assert_eq!(said("eye"), "40 to 49; Glasses when you shoot: Varifocal");
    assert_eq!(said("rifle"), ".308 Win., 10.7\u{202F}g");
    assert_eq!(
        said("ranges"),
        "from a seat: 30\u{202F}m, mostly 80\u{202F}m, up to 150\u{202F}m"
    );
    assert!(flow::asked(&answers, scopewright::need::questions::Stage::First).count() == 8);
}

#[test]
fn cartridges_offered_first_exist_and_all_have_a_group() {
    let all: Vec<_> = RECOIL_GROUPS
        .iter()
        .flat_map(|group| loads_of(*group))
        .collect();
    assert_eq!(
        all.len(),
        scopewright::flight::cartridges::typical_loads().len()
    );
    for key in OFTEN_MET {
        assert!(all.iter().any(|load| load.key == key), "{key}");
    }
    for kind in &KINDS {
        let filled = kind.fill(&Answers::default());
        assert!(
            filled
                .uses
                .iter()
                .all(|each| What::from_key(&each.what).is_some()),
            "{}",
            kind.key
        );
        if let Some(load) = filled.load {
            let key = load.cartridge.expect("a kind names a cartridge");
            assert!(all.iter().any(|load| load.key == key), "{key}");
        }
        assert!(kind.matches(&kind.fill(&Answers::default())));
    }
}

#[test]
fn a_problem_says_what_was_read_and_what_would_be_right() {
    let problem = |quantity, typed: &str| -> InputProblem {
        read(quantity, Units::Metric, typed).expect_err("it is wrong")
    };
    let said = |quantity, typed: &str| {
        wording::problems::input(Units::Metric, quantity, &problem(quantity, typed))
    };
    assert_eq!(
        said(Quantity::Age, "300"),
        "300 was read. Ages from 8 to 95 can be computed with."
    );
    assert!(said(Quantity::Range, "80 paces").contains("“paces”"));
    assert!(said(Quantity::Range, "150 kg").contains("kg"));
    assert!(said(Quantity::Velocity, "2700").contains("823\u{202F}m/s"));
    assert!(said(Quantity::HeightAboveSea, "2,000").contains("2000"));
    assert!(said(Quantity::Pupil, "wide").contains("“wide”"));
}

/// What is seen before the module arrives says what the page says then.
#[test]
fn the_first_words_are_those_of_the_page() {
    let index = fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join("index.html"))
        .expect("the page is there");
    let first = &QUESTIONS[0];
    let mut said = vec![words::question(first), words::question_why(first)];
    for key in [
        "opening-title",
        "opening-lead",
        "opening-start",
        "opening-length",
        "opening-is",
        "opening-covers",
        "opening-private",
        "opening-figures",
        "answer-unsure",
        "page-back",
        "page-next",
        "question-forming",
        "line-forming-nothing",
    ] {
        said.push(wording::say(key, &[]));
    }
    let rows: Vec<&str> = index.split("id=\"uses-").skip(1).collect();
    assert!(!rows.is_empty(), "the first question is not there");
    for row in rows {
        let key = row.split('"').next().unwrap_or_default();
        said.push(format!(
            "<span class=\"choice__name\">{}</span>",
            wording::advice::capitalised(&words::what(key))
        ));
    }
    let missing: Vec<&String> = said.iter().filter(|text| !index.contains(*text)).collect();
    assert!(missing.is_empty(), "index.html does not say: {missing:#?}");
}

/// What is written otherwise elsewhere in the same files.
fn oddity(text: &str) -> Option<&'static str> {
    let letters: Vec<char> = text.chars().collect();
    let is_number = |c: Option<&char>| c.is_some_and(|c| c.is_ascii_digit() || "{}".contains(*c));
    for (at, letter) in letters.iter().enumerate() {
        let (before, after) = (at.checked_sub(1).map(|b| letters[b]), letters.get(at + 1));
        match letter {
            '×' if is_number(before.as_ref()) || is_number(after) => {
                return Some("a × has a space on each side");
            }
            '°' if before == Some(' ') && !after.is_some_and(|c| "CF".contains(*c)) => {
                return Some("degrees of an angle follow their number without a space");
            }
            // As a tolerance; between a value and its spread it has both.
            '±' if after == Some(&' ')
                && !at
                    .checked_sub(2)
                    .is_some_and(|b| is_number(Some(&letters[b]))) =>
            {
                return Some("a tolerance follows its ± without a space");
            }
            '%' if is_number(before.as_ref()) => return Some("a % follows a space"),
            '—' | '…' => return Some("dashes are short, and nothing trails off"),
            _ => {}
        }
    }
    [
        ("per cent", "% is a sign"),
        ("rulebook", "a rule book is two words"),
        (" - ", "a hyphen is no dash"),
        ("  ", "one space is enough"),
        ("metre ", "a unit is a sign after its number"),
    ]
    .into_iter()
    .find_map(|(odd, why)| text.contains(odd).then_some(why))
}

#[test]
fn numbers_units_and_signs_are_written_one_way() {
    assert!(oddity("at { $power }× it").is_some() && oddity("at { $power } × it").is_none());
    assert!(oddity("30 ° up").is_some() && oddity("at 20 °C, 30° up").is_none());
    assert!(oddity("tube, ± 10 mm").is_some() && oddity("a fit; ±3 mrad").is_none());
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("locales/en");
    let mut odd = Vec::new();
    for file in fs::read_dir(folder).expect("the folder is there").flatten() {
        let text = fs::read_to_string(file.path()).expect("words are text");
        for (key, words) in text.lines().filter_map(|line| line.split_once(" = ")) {
            // Designations are written as their standards write them.
            let is_text = !key.starts_with('#') && !key.starts_with("counter-cartridge-");
            if let Some(why) = oddity(words).filter(|_| is_text) {
                odd.push(format!("{key}: {words} ({why})"));
            }
        }
    }
    assert!(odd.is_empty(), "{odd:#?}");
}
