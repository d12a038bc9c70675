//! What a club puts on its own page: composed by controls, seen live, copied.

use crate::need::answers::Units;
use crate::need::input::Quantity;
use crate::need::quarry::What;
use crate::plain::Gathered;
use crate::plain::{Map, Together};
use crate::t;
use crate::web::components::Segments;
use crate::web::components::own::{OwnField, metric, problem};
use crate::web::embed::{COLOURS, Faint, faint};
use crate::web::platform::{self, ELEMENT, Timeout};
use crate::web::view::prelude::*;
use crate::wording::questions::what;
use crate::wording::{languages, number, say};

/// The doors that a frame can open at.
const DOORS: [&str; 5] = ["questions", "counter", "compare", "rings", "zero"];

/// Attributes that hold a number, as they are typed, in metres and degrees.
const NUMBERS: [(&str, Quantity); 6] = [
    ("nearest", Quantity::Range),
    ("usual", Quantity::Range),
    ("farthest", Quantity::Range),
    ("power-most", Quantity::Magnification),
    ("latitude", Quantity::Latitude),
    ("longitude", Quantity::Longitude),
];

/// What was composed.
#[derive(Clone, Debug, PartialEq)]
struct Composed {
    door: String,
    quarry: Vec<&'static str>,
    numbers: Map<&'static str, String>,
    lit_forbidden: bool,
    units: String,
    language: String,
    colours: Map<String, String>,
}

impl Composed {
    fn attributes(&self) -> Vec<(&'static str, String)> {
        let mut list = Vec::new();
        let mut put = |name, value: &str| {
            if !value.trim().is_empty() {
                list.push((name, value.trim().to_owned()));
            }
        };
        put(
            "door",
            if self.door == "questions" {
                ""
            } else {
                &self.door
            },
        );
        put("quarry", &self.quarry.together(" "));
        for (name, quantity) in NUMBERS {
            let text = self.numbers.get(name).map_or("", String::as_str);
            if let Some(read) = metric(quantity, Units::Metric, text) {
                put(name, &shortest(read));
            }
        }
        put(
            "lit-marks",
            if self.lit_forbidden { "forbidden" } else { "" },
        );
        put("units", &self.units);
        put("language", &self.language);
        list
    }

    fn properties(&self) -> Vec<(String, String)> {
        self.colours
            .iter()
            .map(|(name, value)| (format!("--scopewright-{name}"), value.clone()))
            .collect()
    }

    /// The lines for the club's page.
    fn snippet(&self) -> String {
        let home = platform::bare_address();
        let home = home.strip_suffix("index.html").unwrap_or(&home);
        let attributes: String = self
            .attributes()
            .iter()
            .map(|(name, value)| format!(" {name}=\"{}\"", escaped(value)))
            .collect();
        let name = t!("page-name");
        let mut text = format!(
            "<script src=\"{home}embed.js\" async></script>\n<{ELEMENT}{attributes}>\n  <a href=\"{home}\">{name}</a>\n</{ELEMENT}>\n"
        );
        if !self.colours.is_empty() {
            let rules: String = self
                .properties()
                .iter()
                .map(|(name, value)| format!("  {name}: {value};\n"))
                .collect();
            text.push_str(&format!("\n/* CSS */\n{ELEMENT} {{\n{rules}}}\n"));
        }
        text
    }
}

fn escaped(text: &str) -> String {
    text.replace('&', "&amp;")
        .replace('"', "&quot;")
        .replace('<', "&lt;")
}

fn too_faint(each: &Faint) -> String {
    t!(
        "club-faint",
        colour = say(&format!("club-colour-{}", each.colour), &[]),
        ground = say(&format!("club-colour-{}", each.on), &[]),
        contrast = number(each.contrast, 1),
        least = number(each.least, 1)
    )
}

/// The page on which a club composes its own.
#[component]
pub fn ClubPage() -> Html {
    let composed = use_state_eq(|| Composed {
        door: "questions".to_owned(),
        quarry: Vec::new(),
        numbers: Map::new(),
        lit_forbidden: false,
        units: String::new(),
        language: String::new(),
        colours: Map::new(),
    });
    let heard = use_state_eq(String::new);
    let is_copied = use_state_eq(|| false);
    let place = use_node_ref();
    let faint_ones = faint(&composed.colours);
    {
        let place = place.clone();
        use_effect_with((*composed).clone(), move |composed| {
            let composed = composed.clone();
            // As one types, the last word counts: a preview that loads may take keys from the page.
            let timer = Timeout::new(1200, move || {
                if let Some(place) = place.cast::<web_sys::Element>() {
                    platform::show_element(&place, &composed.attributes(), &composed.properties());
                }
            });
            move || drop(timer)
        });
    }
    {
        let (place, heard) = (place.clone(), heard.clone());
        use_effect_with((), move |()| {
            let listener = place
                .cast::<web_sys::Element>()
                .map(|place| platform::on_element_advice(&place, move |told| heard.set(told)));
            move || drop(listener)
        });
    }
    let change = |with: fn(&mut Composed, String)| {
        let (composed, is_copied) = (composed.clone(), is_copied.clone());
        Callback::from(move |value: String| {
            let mut next = (*composed).clone();
            with(&mut next, value);
            is_copied.set(false);
            composed.set(next);
        })
    };
    let choose = |with: fn(&mut Composed, String)| {
        let change = change(with);
        Callback::from(move |key: AttrValue| change.emit(key.to_string()))
    };
    let ticked = |with: fn(&mut Composed, String), value: String| {
        let change = change(with);
        Callback::from(move |_: Event| change.emit(value.clone()))
    };
    let quarry = ticked_quarry(&composed, &ticked);
    let snippet = composed.snippet();
    let copy = {
        let (snippet, is_copied) = (snippet.clone(), is_copied.clone());
        Callback::from(move |_: MouseEvent| is_copied.set(platform::copy(&snippet)))
    };
    let doors = DOORS
        .iter()
        .map(|door| {
            (
                AttrValue::from(*door),
                say(&format!("club-door-{door}"), &[]).into(),
            )
        })
        .gathered();
    let mut tongues = vec![(AttrValue::from("-"), t!("club-as-browser").into())];
    tongues.extend(
        languages().map(|language| (AttrValue::from(language.tag()), language.name().into())),
    );
    html! {
        <main class="page page--wide" id="main">
            <h1 id="title" tabindex="-1">{ t!("club-title") }</h1>
            <p>{ t!("club-lead") }</p>
            <div class="club">
                <div class="club__asks">
                    <div><p class="choices__name">{ t!("club-door") }</p>
                    <Segments label={t!("club-door")} group="club-door" options={doors} chosen={composed.door.clone()}
                        onchoose={choose(|next, key| next.door = key)} /></div>
                    { quarry }
                    <div class="club__numbers">
                        { for NUMBERS.iter().map(|(name, quantity)| {
                            let change = {
                                let (composed, name) = (composed.clone(), *name);
                                Callback::from(move |text: String| {
                                    let mut next = (*composed).clone();
                                    next.numbers.insert(name, text);
                                    composed.set(next);
                                })
                            };
                            let text = composed.numbers.get(name).cloned().unwrap_or_default();
                            let wrong = problem(*quantity, Units::Metric, &text).map(AttrValue::from);
                            html! { <OwnField key={*name} id={format!("club-{name}")} label={say(&format!("club-{name}"), &[])} {text} {wrong} ontext={change} /> }
                        }) }
                    </div>
                    <label class="tool__tick"><input class="choice__input" type="checkbox" id="club-lit" checked={composed.lit_forbidden}
                        onchange={ticked(|next, _| next.lit_forbidden = !next.lit_forbidden, String::new())} />{ t!("club-lit") }</label>
                    <div><p class="choices__name">{ t!("about-units") }</p>
                    <Segments label={t!("about-units")} group="club-units" chosen={if composed.units.is_empty() { "-".to_owned() } else { composed.units.clone() }}
                        options={vec![("-".into(), t!("club-as-browser").into()), ("metric".into(), t!("page-units-metric").into()), ("imperial".into(), t!("page-units-imperial").into())]}
                        onchoose={choose(|next, key| next.units = if key == "-" { String::new() } else { key })} /></div>
                    <div><p class="choices__name">{ t!("club-language") }</p>
                    <Segments label={t!("club-language")} group="club-language" chosen={if composed.language.is_empty() { "-".to_owned() } else { composed.language.clone() }}
                        options={tongues} onchoose={choose(|next, key| next.language = if key == "-" { String::new() } else { key })} /></div>
                    <fieldset>
                        <legend class="choices__name">{ t!("about-colours") }</legend>
                        <div class="club__colours">
                            { for COLOURS.iter().map(|(name, usual, _)| {
                                let composed = composed.clone();
                                let value = composed.colours.get(*name).cloned().unwrap_or_else(|| (*usual).to_owned());
                                let oninput = Callback::from(move |event: InputEvent| {
                                    let mut next = (*composed).clone();
                                    next.colours.insert((*name).to_owned(), platform::text_in(&event));
                                    composed.set(next);
                                });
                                html! {
                                    <label class="club__colour" key={*name}><input type="color" id={format!("club-colour-{name}")} {value} {oninput} />
                                        { say(&format!("club-colour-{name}"), &[]) }</label>
                                }
                            }) }
                        </div>
                    </fieldset>
                    if !composed.colours.is_empty() {
                        <button type="button" class="button button--quiet" id="club-usual-colours" onclick={{
                            let change = change(|next, _| next.colours.clear());
                            Callback::from(move |_: MouseEvent| change.emit(String::new()))
                        }}>{ t!("club-usual-colours") }</button>
                    }
                    <div role="status">
                        if !faint_ones.is_empty() {
                            <ul class="lines club__faint">{ for faint_ones.iter().map(|each| html! { <li>{ too_faint(each) }</li> }) }</ul>
                        } else if !composed.colours.is_empty() {
                            <p>{ t!("club-readable") }</p>
                        }
                    </div>
                </div>
                <div class="club__gives">
                    <h2>{ t!("club-snippet") }</h2>
                    <p>{ t!("club-snippet-lead") }</p>
                    <pre class="club__code" id="club-code" tabindex="0" role="region" aria-label={t!("club-snippet")}>{ snippet }</pre>
                    <div class="club__copy"><button type="button" class="button button--primary" id="club-copy" onclick={copy}>{ t!("club-copy") }</button>
                    <span role="status">{ if *is_copied { t!("share-copied") } else { String::new() } }</span></div>
                    <h2>{ t!("club-preview") }</h2>
                    <div class="club__preview" ref={place}></div>
                    <h2>{ t!("club-event") }</h2>
                    <p>{ t!("club-event-lead") }</p>
                    <pre class="club__code" id="club-heard" tabindex="0" role="region" aria-label={t!("club-event")}>{ if heard.is_empty() { t!("club-event-none") } else { (*heard).clone() } }</pre>
                </div>
            </div>
        </main>
    }
}

/// A way to make a handler of a tick.
type Ticked<'a> = &'a dyn Fn(fn(&mut Composed, String), String) -> Callback<Event>;

/// What is shot at, to be ticked.
fn ticked_quarry(composed: &Composed, ticked: Ticked) -> Html {
    html! {
        <details class="opens">
            <summary>{ t!("club-quarry") }</summary>
            <div class="opens__in club__quarry">
                { for What::all().map(|row| {
                    let key = row.key();
                    let tick = ticked(|next, key| {
                        if let Some(at) = next.quarry.iter().position(|each| *each == key) {
                            next.quarry.remove(at);
                        } else if let Some(row) = What::from_key(&key) {
                            next.quarry.push(row.key());
                        }
                    }, key.to_owned());
                    html! {
                        <label class="tool__tick" key={key}><input class="choice__input" type="checkbox" id={format!("club-quarry-{key}")}
                            checked={composed.quarry.contains(&key)} onchange={tick} />{ what(key) }</label>
                    }
                }) }
            </div>
        </details>
    }
}
