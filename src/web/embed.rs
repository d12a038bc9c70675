//! Inside a club's page: presets in, height and results out, every message checked.
//!
//! The frame listens to the page around it alone, and answers to the origin that greeted it.
//! Nothing is kept in storage here: several frames on one page must not share answers.

use super::platform::Listener;
use super::route::Route;
use crate::advice::Advice;
use crate::advice::report::Line;
use crate::need::answers::Answers;
use crate::need::{ParseProblem, Rescued, rescue};
use crate::plain::Gathered;
use crate::plain::Json;
use crate::plain::Map;
use crate::wording::questions::joined;
use crate::wording::{self, Language};
use std::cell::RefCell;
use wasm_bindgen::{JsCast, closure::Closure};

/// The version of the messages.
const VERSION: u32 = 1;
/// Least contrast of text on its ground.
///
/// # Source
/// WCAG 2.2, success criterion 1.4.3.
const LEAST_CONTRAST: f64 = 4.5;

thread_local! {
    /// Who greeted this frame.
    static ORIGIN: RefCell<Option<String>> = const { RefCell::new(None) };
}

/// Whether this page stands in a frame.
#[must_use]
pub fn is_framed() -> bool {
    web_sys::window().is_some_and(|window| {
        window
            .parent()
            .ok()
            .flatten()
            .is_some_and(|parent| !js_sys::Object::is(parent.as_ref(), window.as_ref()))
    })
}

/// The colours in a greeting of the page around; nothing for any other message.
fn greeting(text: &str) -> Option<Map<String, String>> {
    let said = Json::read(text).ok()?;
    let is_greeting = said.get("scopewright")?.whole() == Some(u64::from(VERSION))
        && said.get("kind")?.text() == Some("hello");
    match said.get("colours") {
        _ if !is_greeting => None,
        None => Some(Map::new()),
        Some(colours) => super::stored::texts(colours),
    }
}

/// The parts of presets: door, answers, language, the last two still encoded.
fn parts(text: &str) -> [&str; 3] {
    let mut parts = text.split('/');
    [(); 3].map(|()| parts.next().unwrap_or_default())
}

fn decoded(part: &str) -> String {
    js_sys::decode_uri_component(part)
        .ok()
        .and_then(|text| text.as_string())
        .unwrap_or_default()
}

/// The language that the page around asks for.
///
/// # Errors
/// There is none of this tag.
pub fn language(text: &str) -> Result<Option<Language>, String> {
    let tag = decoded(parts(text)[2]);
    if tag.is_empty() {
        return Ok(None);
    }
    Language::from_tag(&tag).map(Some).ok_or(tag)
}

/// The languages there are, by name and tag.
#[must_use]
pub fn languages_known() -> String {
    let names: Vec<String> = wording::languages()
        .map(|language| format!("{} ({})", language.name(), language.tag()))
        .gathered();
    joined(&names)
}

/// Where presets lead, and the answers they stand for.
///
/// # Errors
/// The presets are no answers at all.
pub fn presets(text: &str) -> Result<(Route, Rescued), ParseProblem> {
    let [door, json, _] = parts(text);
    let json = decoded(json);
    let door = match door {
        "counter" => Route::Counter,
        "compare" => Route::Compare,
        "rings" => Route::Rings,
        "zero" => Route::Zero,
        _ => Route::Opening,
    };
    if json.is_empty() {
        return rescue("{\"version\":1}").map(|rescued| (door, rescued));
    }
    rescue(&json).map(|rescued| (door, rescued))
}

/// A message of this kind.
fn message(kind: &str) -> Json {
    Json::fields([
        ("scopewright", Json::Whole(u64::from(VERSION))),
        ("kind", Json::Text(kind.to_owned())),
    ])
}

fn post(message: &Json) {
    let Some(origin) = ORIGIN.with_borrow(Clone::clone) else {
        return;
    };
    let parent = web_sys::window().and_then(|window| window.parent().ok().flatten());
    if let Some(parent) = parent {
        // A page that has gone hears nothing; there is nobody else to tell.
        let _ = parent.post_message(&message.written().into(), &origin);
    }
}

fn tell_height() {
    let height_px = web_sys::window()
        .and_then(|window| window.document())
        .and_then(|document| document.body())
        .map(|body| body.get_bounding_client_rect().height());
    if let Some(height_px) = height_px {
        let mut told = message("height");
        told.put("px", Json::Number(height_px));
        post(&told);
    }
}

/// Tells the page around what was advised.
pub fn tell_advice(answers: &Answers, advice: &Advice) {
    if !is_framed() {
        return;
    }
    let Some(pick) = advice.picks.first() else {
        return;
    };
    let Line {
        mag_low,
        mag_high,
        objective_mm,
        tube_mm,
        ..
    } = pick.line;
    let words = crate::wording::advice::line_text(&pick.line, answers.units);
    let mut told = message("advice");
    told.put(
        "advice",
        Json::fields([
            ("mag_low", Json::Number(mag_low)),
            ("mag_high", Json::Number(mag_high)),
            ("objective_mm", Json::Number(objective_mm)),
            ("tube_mm", Json::Number(tube_mm)),
            ("words", Json::Text(words)),
            ("served", Json::Number(pick.served.value)),
        ]),
    );
    post(&told);
}

/// Relative luminance of `#rrggbb`.
///
/// # Source
/// WCAG 2.2, definition of relative luminance.
fn luminance(colour: &str) -> Option<f64> {
    let digits = colour
        .strip_prefix('#')
        .filter(|digits| digits.len() == 6)?;
    let channel = |at: usize| {
        let value = u8::from_str_radix(digits.get(at..at + 2)?, 16).ok()?;
        let share = f64::from(value) / 255.0;
        Some(if share <= 0.04045 {
            share / 12.92
        } else {
            libm::pow((share + 0.055) / 1.055, 2.4)
        })
    };
    Some(0.2126 * channel(0)? + 0.7152 * channel(2)? + 0.0722 * channel(4)?)
}

fn contrast(one: &str, other: &str) -> Option<f64> {
    let (one, other) = (luminance(one)?, luminance(other)?);
    Some((one.max(other) + 0.05) / (one.min(other) + 0.05))
}

/// The colours that a page around may set, and what they are without it by day and by night.
pub const COLOURS: [(&str, &str, &str); 7] = [
    ("ground", "#f5f2eb", "#12151c"),
    ("surface", "#ffffff", "#1b202a"),
    ("ink", "#20242c", "#e9e6df"),
    ("ink-soft", "#545b67", "#a7adba"),
    ("line", "#8c8779", "#6b7485"),
    ("accent", "#6e2f5b", "#e0a6cb"),
    ("on-accent", "#ffffff", "#24101d"),
];

/// A ground on which white is read more easily than black is a dark one.
const DARK: f64 = 0.18;

/// Least contrast of the boundaries of controls.
///
/// # Source
/// WCAG 2.2, success criterion 1.4.11.
const LEAST_LINE: f64 = 3.0;

/// What is read on what.
const READ_ON: [(&str, &str, f64); 8] = [
    ("ink", "ground", LEAST_CONTRAST),
    ("ink", "surface", LEAST_CONTRAST),
    ("ink-soft", "ground", LEAST_CONTRAST),
    ("ink-soft", "surface", LEAST_CONTRAST),
    ("accent", "ground", LEAST_CONTRAST),
    ("on-accent", "accent", LEAST_CONTRAST),
    ("line", "ground", LEAST_LINE),
    ("line", "surface", LEAST_LINE),
];

/// A colour that is too close to what it is read on, or is no colour (contrast 0).
#[derive(Clone, Debug, PartialEq)]
pub struct Faint {
    /// The name of the colour.
    pub colour: &'static str,
    /// The name of what it is read on.
    pub on: &'static str,
    /// Their contrast.
    pub contrast: f64,
    /// The least that can be read.
    pub least: f64,
}

/// Whether these colours go with the others of the night: by their ground, or, without one,
/// where the system is dark and they can be read there.
fn is_night(colours: &Map<String, String>, is_dark: bool) -> bool {
    match colours.get("ground") {
        Some(ground) => luminance(ground).is_some_and(|ground| ground < DARK),
        None => is_dark && faint_beside(colours, true).is_empty(),
    }
}

fn is_system_dark() -> bool {
    web_sys::window()
        .and_then(|window| window.match_media("(prefers-color-scheme: dark)").ok()?)
        .is_some_and(|query| query.matches())
}

/// Colours that cannot be read; the others are taken only if there is none.
#[must_use]
pub fn faint(colours: &Map<String, String>) -> Vec<Faint> {
    faint_beside(colours, is_night(colours, is_system_dark()))
}

fn faint_beside(colours: &Map<String, String>, by_night: bool) -> Vec<Faint> {
    let of = |name: &str| {
        colours.get(name).map(String::as_str).or_else(|| {
            COLOURS
                .iter()
                .find(|(known, ..)| *known == name)
                .map(|(_, day, night)| if by_night { *night } else { *day })
        })
    };
    READ_ON
        .iter()
        .filter_map(|&(colour, on, least)| {
            let contrast = contrast(of(colour)?, of(on)?).unwrap_or(0.0);
            (contrast < least).then_some(Faint {
                colour,
                on,
                contrast,
                least,
            })
        })
        .gathered()
}

fn wear(colours: &Map<String, String>) {
    // All of them or none, since they are read on one another.
    if colours.is_empty() || !faint(colours).is_empty() {
        return;
    }
    let root = web_sys::window()
        .and_then(|window| window.document())
        .and_then(|document| document.document_element())
        .and_then(|root| root.dyn_into::<web_sys::HtmlElement>().ok());
    let Some(root) = root else { return };
    // Colours of one's own belong to a light ground or a dark one, not to both.
    let theme = if is_night(colours, is_system_dark()) {
        "night"
    } else {
        "day"
    };
    super::platform::mark_root("data-theme", Some(theme));
    let known = |name: &str| COLOURS.iter().any(|(known, ..)| *known == name);
    for (name, colour) in colours.iter().filter(|(name, _)| known(name)) {
        let _ = root.style().set_property(&format!("--{name}"), colour);
    }
}

/// Listens to the page around and keeps it told how tall this one is.
pub fn start() {
    let Some(window) = web_sys::window().filter(|_| is_framed()) else {
        return;
    };
    super::platform::mark_root("data-framed", Some("yes"));
    let parent = window.parent().ok().flatten();
    let around = parent.clone();
    Listener::new(&window, "message", move |event| {
        let Some(event) = event.dyn_ref::<web_sys::MessageEvent>() else {
            return;
        };
        let from_parent = match (event.source(), &parent) {
            (Some(source), Some(parent)) => js_sys::Object::is(source.as_ref(), parent.as_ref()),
            _ => false,
        };
        let Some(text) = event.data().as_string().filter(|_| from_parent) else {
            return;
        };
        let Some(colours) = greeting(&text) else {
            return;
        };
        ORIGIN.set(Some(event.origin()));
        wear(&colours);
        tell_height();
    })
    .forget();
    if let Some(around) = around {
        // Who is around is not known yet: this says nothing but that one may greet.
        let mut ready = message("ready");
        ready.put("title", Json::Text(crate::t!("opening-title")));
        let _ = around.post_message(&ready.written().into(), "*");
    }
    let resized = Closure::<dyn FnMut()>::new(tell_height);
    if let (Ok(observer), Some(body)) = (
        web_sys::ResizeObserver::new(resized.as_ref().unchecked_ref()),
        window.document().and_then(|document| document.body()),
    ) {
        observer.observe(&body);
    }
    resized.forget();
}

#[cfg(test)]
mod tests {
    use super::{contrast, faint_beside, greeting, is_night};
    use crate::plain::Map;

    /// WCAG 2.2: black on white is 21 : 1; #767676 on white is the darkest grey at 4.54.
    #[test]
    fn contrast_is_the_standard_one() {
        assert!((contrast("#000000", "#ffffff").unwrap() - 21.0).abs() < 1e-9);
        assert!((contrast("#767676", "#ffffff").unwrap() - 4.54).abs() < 0.005);
        assert_eq!(contrast("red", "#ffffff"), None);
    }

    fn faint_none(colours: &Map<String, String>) -> bool {
        faint_beside(colours, is_night(colours, false)).is_empty()
    }

    #[test]
    fn only_a_greeting_is_heard() {
        let heard = |text| greeting(text).map(|colours| colours.len());
        assert_eq!(heard(r#"{"scopewright":1,"kind":"hello"}"#), Some(0));
        let coloured = r##"{"scopewright":1,"kind":"hello","colours":{"ink":"#20242c"}}"##;
        assert_eq!(heard(coloured), Some(1));
        assert_eq!(
            heard(r#"{"scopewright":1,"kind":"hello","colours":{"ink":3}}"#),
            None
        );
        assert_eq!(heard(r#"{"scopewright":2,"kind":"hello"}"#), None);
        assert_eq!(heard(r#"{"scopewright":1,"kind":"advice"}"#), None);
        assert_eq!(heard("hello"), None);
    }

    #[test]
    fn colours_that_cannot_be_read_are_left() {
        let set = |pairs: &[(&str, &str)]| {
            pairs
                .iter()
                .map(|(name, colour)| ((*name).to_owned(), (*colour).to_owned()))
                .collect::<Map<_, _>>()
        };
        assert!(faint_none(&set(&[
            ("ground", "#ffffff"),
            ("accent", "#20487a")
        ])));
        assert!(!faint_none(&set(&[("accent", "#ffee88")])));
        assert!(!faint_none(&set(&[("ink", "url(x)")])));
        // A dark ground goes with the other colours of the night; without one the system decides.
        let dark = set(&[("ground", "#202020"), ("surface", "#2a2a2a")]);
        assert!(is_night(&dark, false) && faint_none(&dark));
        assert!(!is_night(&set(&[("ground", "#eef4ea")]), true));
        let light = set(&[("accent", "#9cc4ff"), ("on-accent", "#0b1a2e")]);
        assert!(is_night(&light, true) && !is_night(&light, false));
        assert!(
            !is_night(&set(&[("accent", "#20487a")]), true),
            "read by day alone"
        );
    }
}
