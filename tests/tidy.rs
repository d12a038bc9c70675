//! The rules of the house, read off the sources themselves.

#[path = "tidy/source.rs"]
mod source;

use source::{Source, project_files, read, root, rust_files};

/// The rooms that know physics only.
const DOMAIN: [&str; 5] = ["eye", "flight", "rifle", "sight", "sky"];

/// What a room may import besides itself; `None` for everything.
fn may_import(room: &str) -> Option<Vec<&'static str>> {
    let core = |more: &[&'static str]| {
        let mut rooms = vec!["quantity", "plain"];
        rooms.extend(more);
        Some(rooms)
    };
    let with_domain = |more: &[&'static str]| core(&[&DOMAIN[..], more].concat());
    match room {
        "quantity" | "plain" => Some(vec![]),
        // A cartridge that is named needs the figures of its typical load.
        "need" => core(&["flight"]),
        "ports" => core(&["need"]),
        "advice" => with_domain(&["need"]),
        "shelf" => with_domain(&["advice"]),
        "wording" => with_domain(&["need", "advice", "drawing", "shelf"]),
        "figure" => with_domain(&["need", "advice", "shelf"]),
        "drawing" => with_domain(&[]),
        "web" => None,
        room if DOMAIN.contains(&room) => core(&[]),
        // A room that is new here must say where it stands.
        _ => Some(vec![]),
    }
}

/// Every source of the library, with its room.
fn rooms() -> Vec<Source> {
    let mut sources = rust_files("src");
    sources.retain(|source| !source.room().is_empty());
    assert!(sources.len() > 10, "found {} sources only", sources.len());
    sources
}

/// Fails with all offences at once.
fn none(what: &str, offences: Vec<String>) {
    assert!(offences.is_empty(), "{what}:\n  {}", offences.join("\n  "));
}

#[test]
fn imports_follow_the_direction_of_the_rooms() {
    let mut offences = Vec::new();
    let sources = rooms();
    // What is no room is a macro of the library's.
    let known: Vec<&str> = sources.iter().map(Source::room).collect();
    for source in &sources {
        let room = source.room();
        let Some(allowed) = may_import(room) else {
            continue;
        };
        for (line, other) in source.imported_rooms() {
            let other = other.as_str();
            if other != room && known.contains(&other) && !allowed.contains(&other) {
                offences.push(format!("{}:{line}: {room} imports {other}", source.path));
            }
        }
    }
    none("rooms to the left import rooms to the right", offences);
}

#[test]
fn the_reader_of_imports_sees_every_way_to_write_one() {
    let text = "
        use crate::advice::Report;
        use crate::{need, shelf::{self, Row}};
        fn f() -> super::super::wording::Key { crate::web::mount() }
        use super::threshold;
        // use crate::figure::nothing;
        const TEXT: &str = \"crate::ports\";
        mod tests { use super::*; use super::super::super::sky::sun; }
    ";
    let source = Source::of("src/eye/pupil.rs", text);
    let rooms: Vec<String> = source
        .imported_rooms()
        .into_iter()
        .map(|found| found.1)
        .collect();
    assert_eq!(rooms, ["advice", "need", "shelf", "wording", "web", "sky"]);
}

#[test]
fn the_browser_is_known_in_web_alone() {
    let browser = [
        "yew",
        "gloo",
        "web_sys",
        "js_sys",
        "wasm_bindgen",
        "wasm_bindgen_futures",
    ];
    let mut offences = Vec::new();
    for source in rust_files("src") {
        if source.room() != "web" {
            offences.extend(source.mentions(&browser));
        }
    }
    none("browser crates outside src/web", offences);
}

#[test]
fn the_window_is_touched_by_platform_and_embed_alone() {
    let mut offences = Vec::new();
    for source in rust_files("src/web") {
        let own = ["src/web/platform", "src/web/embed"];
        if !own.iter().any(|folder| source.path.starts_with(folder)) {
            offences.extend(source.mentions(&["Window"]));
            offences.extend(source.calls_or_paths(&["window"]));
        }
    }
    none("`window` outside web/platform and web/embed", offences);
}

#[test]
fn the_core_has_no_clock_no_log_and_no_order_by_chance() {
    let strangers = [
        "Instant",
        "SystemTime",
        "chrono",
        "println",
        "print",
        "eprintln",
        "eprint",
        "dbg",
        "log",
        "tracing",
        "HashMap",
        "HashSet",
        "RandomState",
        "thread_rng",
        "getrandom",
    ];
    let mut offences = Vec::new();
    for source in rooms() {
        if source.room() != "web" {
            offences.extend(source.mentions_outside_tests(&strangers));
        }
    }
    none("the core depends on more than its arguments", offences);
}

/// What weighs more in the page than all that calls it: `plain` has small code for each.
#[test]
fn the_page_carries_no_heavy_library_code() {
    let methods = [
        "sort",
        "sort_by",
        "sort_by_key",
        "sort_by_cached_key",
        "sort_unstable",
        "sort_unstable_by",
        "sort_unstable_by_key",
        "to_lowercase",
        "to_uppercase",
        "is_alphabetic",
        "is_alphanumeric",
    ];
    let mut offences = Vec::new();
    for source in rooms() {
        if source.room() == "figure" || source.path.contains("src/bin") {
            continue;
        }
        offences.extend(source.methods_outside_tests(&methods));
        offences.extend(source.mentions_outside_tests(&["serde_json"]));
        if read(&source.path).contains("parse::<f64>()") {
            offences.push(format!("{}: parse::<f64>", source.path));
        }
    }
    none("use what src/plain has in its place", offences);
}

/// The standard library's printing of floats is 6 kB of the page. What is written for people who
/// read the workbench may use it; `cargo xtask test size` looks for it in the module.
#[test]
fn the_page_prints_its_floats_itself() {
    let mut offences = Vec::new();
    for source in rooms() {
        let room = source.room();
        if ["figure", "quantity"].contains(&room)
            || DOMAIN.contains(&room)
            || source.path.contains("src/bin")
        {
            continue;
        }
        for (line, text) in source.texts_outside_tests() {
            if text.split('{').skip(1).any(|hole| {
                hole.split_once('}')
                    .is_some_and(|(hole, _)| hole.contains(":."))
            }) {
                offences.push(format!("{}:{line}: {text:?}", source.path));
            }
        }
    }
    none("use plain::fixed, plain::shortest or filled!", offences);
}

#[test]
fn the_advice_knows_no_words() {
    let mut offences = Vec::new();
    for source in rooms().iter().filter(|source| source.room() == "advice") {
        for (line, text) in source.phrases_outside_tests() {
            offences.push(format!("{}:{line}: {text:?}", source.path));
        }
    }
    none(
        "sentences in src/advice: give a key with quantities, and the words to locales/",
        offences,
    );
}

#[test]
fn transcendental_functions_come_from_libm() {
    let methods = [
        "exp", "exp2", "exp_m1", "ln", "ln_1p", "log", "log2", "log10", "powf", "powi", "cbrt",
        "hypot", "sin", "cos", "sin_cos", "tan", "asin", "acos", "atan", "atan2", "sinh", "cosh",
        "tanh", "asinh", "acosh", "atanh",
    ];
    let mut offences = Vec::new();
    for source in rust_files("src") {
        for name in methods {
            offences.extend(source.calls_of_method(name));
        }
    }
    none(
        "std's functions differ between native and wasm; use libm::",
        offences,
    );
}

#[test]
fn lints_are_silenced_one_by_one_and_with_a_reason() {
    let mut offences = Vec::new();
    for source in [rust_files("src"), rust_files("xtask"), rust_files("tests")].concat() {
        for (line, attribute) in source.silencers() {
            let whole_file = attribute.starts_with("#!") && !source.path.starts_with("tests/");
            if whole_file || !attribute.contains("reason") {
                offences.push(format!("{}:{line}: {attribute}", source.path));
            }
        }
    }
    none(
        "a silenced lint without a reason, or for a whole file",
        offences,
    );
}

#[test]
fn one_version_of_wasm_bindgen_everywhere() {
    let lock = read("Cargo.lock");
    let locked = lock
        .split("[[package]]")
        .find(|package| package.contains("name = \"wasm-bindgen\"\n"))
        .and_then(|package| package.split("version = \"").nth(1))
        .and_then(|rest| rest.split('"').next())
        .expect("Cargo.lock names wasm-bindgen");
    let manifest = read("Cargo.toml");
    let pin = format!("\"={locked}\"");
    assert!(
        manifest.contains(&format!("wasm-bindgen = {{ version = {pin}")),
        "Cargo.toml"
    );
    assert!(
        read("xtask/Cargo.toml").contains(&format!("wasm-bindgen-cli-support = {pin}")),
        "xtask/Cargo.toml"
    );
    assert!(
        read("Trunk.toml").contains(&format!("wasm_bindgen = \"{locked}\"")),
        "Trunk.toml"
    );
}

#[test]
fn the_browser_crates_are_optional() {
    let manifest = read("Cargo.toml");
    assert!(
        manifest.contains("\ndefault = []\n"),
        "no feature is on by default"
    );
    let mut optional = 0;
    for line in manifest.lines() {
        let browser = [
            "js-sys",
            "gloo",
            "yew",
            "wasm-bindgen",
            "wasm-bindgen-futures",
        ];
        if browser
            .iter()
            .any(|name| line.starts_with(&format!("{name} = ")))
        {
            assert!(line.contains("optional = true"), "{line}");
            optional += 1;
        }
    }
    assert_eq!(optional, 5);
    let web_sys = manifest
        .split("[dependencies.web-sys]")
        .nth(1)
        .expect("web-sys is listed");
    assert!(
        web_sys
            .trim_start()
            .lines()
            .nth(1)
            .is_some_and(|line| line == "optional = true")
    );
}

#[test]
fn index_html_names_every_style_and_only_files_that_exist() {
    let index = read("index.html");
    let mut offences = Vec::new();
    let linked = index
        .lines()
        .filter(|line| line.trim_start().starts_with("<link data-trunk"))
        .filter_map(|line| line.split(" href=\"").nth(1)?.split('"').next());
    for path in linked.filter(|path| !root().join(path).exists()) {
        offences.push(format!("{path} does not exist"));
    }
    for path in project_files()
        .iter()
        .filter(|path| path.starts_with("styles/"))
    {
        if path.ends_with(".css") && index.matches(&format!("href=\"{path}\"")).count() != 1 {
            offences.push(format!("{path} is not named exactly once"));
        }
    }
    none("index.html", offences);
}

#[test]
fn nothing_is_inline_and_the_policy_allows_nothing_foreign() {
    let index = read("index.html");
    let policy = "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; \
                  img-src 'self' data:; connect-src 'self'; frame-src 'self'; worker-src 'self'; \
                  manifest-src 'self'; base-uri 'none'; form-action 'none'";
    assert!(
        index.contains(policy),
        "the policy in index.html is not the one that was checked"
    );
    for inline in [
        " style=",
        "<style",
        "<script>",
        " onclick=",
        " onload=",
        "javascript:",
    ] {
        assert!(!index.contains(inline), "index.html holds {inline}");
    }
    let mut offences = Vec::new();
    for source in rust_files("src/web") {
        offences.extend(source.attribute_in_markup("style"));
    }
    none(
        "a style attribute in html!, which the policy blocks; use a class",
        offences,
    );
}

#[test]
fn no_address_outside_is_named_by_what_the_browser_loads() {
    let mut offences = Vec::new();
    for path in project_files() {
        let loaded =
            path == "index.html" || path.starts_with("static/") || path.starts_with("styles/");
        if !loaded || path.ends_with(".png") {
            continue;
        }
        for (number, line) in read(&path).lines().enumerate() {
            let bare = line.replace("http://www.w3.org/2000/svg", "");
            if bare.contains("http://") || bare.contains("https://") || bare.contains("@import") {
                offences.push(format!("{path}:{}: {}", number + 1, line.trim()));
            }
        }
    }
    none("addresses in what the browser loads", offences);
}

#[test]
fn nothing_names_a_folder_of_one_machine() {
    let places = [
        ["/", "work/"],
        ["/", "root/"],
        ["/", "home/"],
        ["C:", "\\Users"],
    ]
    .map(|parts| parts.concat());
    let mut offences = Vec::new();
    for path in project_files() {
        let is_read = [".png", ".webp", "package-lock.json"]
            .iter()
            .all(|end| !path.ends_with(end));
        if !is_read {
            continue;
        }
        for (number, line) in read(&path).lines().enumerate() {
            if places.iter().any(|place| line.contains(place)) {
                offences.push(format!("{path}:{}: {}", number + 1, line.trim()));
            }
        }
    }
    none("folders of one machine", offences);
}

#[test]
fn tests_measure_no_time_and_never_sleep() {
    let mut offences = Vec::new();
    for source in rust_files("tests") {
        if !source.path.starts_with("tests/tidy") {
            offences.extend(source.mentions(&["Instant", "SystemTime", "sleep"]));
        }
    }
    for path in project_files()
        .iter()
        .filter(|path| path.ends_with(".test.mjs"))
    {
        let text = read(path);
        for word in [
            "waitForTimeout",
            "setTimeout(resolve",
            "setTimeout(done",
            "sleep(",
        ] {
            if text.contains(word) {
                offences.push(format!("{path}: {word}"));
            }
        }
    }
    none("tests that depend on the clock", offences);
}

#[test]
fn every_figure_is_compared_between_native_and_wasm() {
    let lines = read("tests/data/parity/figures.txt");
    let missing: Vec<String> = scopewright::figure::names()
        .filter(|name| !lines.contains(&format!("{{\"figure\":\"{name}\"")))
        .map(str::to_owned)
        .collect();
    none(
        "figures without a line in tests/data/parity/figures.txt",
        missing,
    );
}

#[test]
fn suites_need_no_other_harness_for_wasm() {
    let mut offences = Vec::new();
    for source in rust_files("tests") {
        offences.extend(source.mentions(&["wasm_bindgen_test"]));
    }
    none(
        "plain #[test]s run in wasm as they stand (`cargo xtask test wasm`); leave this out",
        offences,
    );
}

#[test]
fn links_between_documents_lead_somewhere() {
    let mut offences = Vec::new();
    for path in project_files().iter().filter(|path| path.ends_with(".md")) {
        let folder = root()
            .join(path)
            .parent()
            .expect("a file has a folder")
            .to_path_buf();
        for target in read(path)
            .split("](")
            .skip(1)
            .filter_map(|rest| rest.split(')').next())
        {
            let file = target.split('#').next().unwrap_or("");
            let foreign = target.contains("://") || target.starts_with("mailto:");
            if !foreign && !file.is_empty() && !folder.join(file).exists() {
                offences.push(format!("{path}: {target}"));
            }
        }
    }
    none("links that lead nowhere", offences);
}

#[test]
fn every_file_of_test_data_is_accounted_for() {
    let mut offences = Vec::new();
    for path in project_files()
        .iter()
        .filter(|path| path.starts_with("tests/data/"))
    {
        let (folder, name) = path.rsplit_once('/').expect("it lies in a folder");
        let told = [folder, "tests/data"].iter().any(|folder| {
            let readme = format!("{folder}/README.md");
            root().join(&readme).exists() && read(&readme).contains(name)
        });
        if name != "README.md" && !told {
            offences.push(format!(
                "{path}: no README beside it says where it comes from"
            ));
        }
    }
    none("test data without provenance", offences);
}
