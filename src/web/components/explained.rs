//! A text whose trade terms are explained on a tap, in place.

use crate::plain::Gathered;
use crate::plain::Map;
use crate::web::platform;
use crate::web::view::prelude::*;
use crate::wording::advice::capitalised;
use crate::wording::terms::{term, terms_in};
use std::cell::{Cell, RefCell};
use wasm_bindgen_futures::spawn_local;

/// A text on the page: the terms in it, and which of these it is to explain.
struct Text {
    terms: Vec<&'static str>,
    explains: UseStateHandle<Vec<&'static str>>,
}

thread_local! {
    static NEXT: Cell<u32> = const { Cell::new(0) };
    static TEXTS: RefCell<Map<u32, Text>> = const { RefCell::new(Map::new()) };
    /// Whether the texts of the page are about to be looked through.
    static IS_DUE: Cell<bool> = const { Cell::new(false) };
}

/// Gives each term to the text in which it stands first, once everything is drawn.
fn look_through() {
    if !IS_DUE.replace(true) {
        spawn_local(async {
            IS_DUE.set(false);
            give_out();
        });
    }
}

fn give_out() {
    let mut given: Vec<&'static str> = Vec::new();
    let mut news = Vec::new();
    TEXTS.with_borrow(|texts| {
        for id in platform::in_order("data-text") {
            let Some(text) = id.parse().ok().and_then(|id: u32| texts.get(&id)) else {
                continue;
            };
            let own: Vec<&'static str> = text
                .terms
                .iter()
                .copied()
                .filter(|key| !given.contains(key))
                .gathered();
            given.extend(&own);
            news.push((text.explains.clone(), own));
        }
    });
    for (explains, own) in news {
        explains.set(own);
    }
}

/// The text.
#[derive(Properties, PartialEq)]
pub struct Props {
    /// The text.
    pub text: AttrValue,
    /// How a term looks, where the text has looks of its own.
    #[prop_or("term")]
    pub class: &'static str,
}

/// A text whose trade terms are explained on a tap, in place; each once on a page.
#[component]
pub fn Explained(props: &Props) -> Html {
    let open = use_state_eq(|| None::<&'static str>);
    let explains = use_state_eq(Vec::new);
    let me = *use_memo((), |()| {
        NEXT.set(NEXT.get() + 1);
        NEXT.get()
    });
    let terms = use_memo(props.text.clone(), |text| terms_in(text));
    {
        let (terms, explains) = (terms.clone(), explains.clone());
        use_effect_with(props.text.clone(), move |_| {
            let terms = terms.iter().map(|(_, key)| *key).gathered();
            TEXTS.with_borrow_mut(|texts| texts.insert(me, Text { terms, explains }));
            look_through();
            move || {
                TEXTS.with_borrow_mut(|texts| texts.remove(&me));
            }
        });
    }
    if terms.is_empty() {
        return html! { { props.text.clone() } };
    }
    let text = props.text.as_str();
    let id = format!("means-{me}");
    let mut at = 0;
    let mut parts = Vec::new();
    for (range, key) in terms.iter().filter(|(_, key)| explains.contains(key)) {
        let (range, key) = (range.clone(), *key);
        let is_open = *open == Some(key);
        let onclick = {
            let open = open.clone();
            Callback::from(move |_: MouseEvent| open.set((!is_open).then_some(key)))
        };
        parts.push(html! { { text[at..range.start].to_owned() } });
        at = range.end;
        parts.push(html! {
            <button type="button" class={props.class} data-term={key} aria-expanded={is_open.to_string()}
                aria-controls={is_open.then(|| id.clone())} {onclick}>{ text[range].to_owned() }</button>
        });
    }
    parts.push(html! { { text[at..].to_owned() } });
    let means = (*open).and_then(term).map(|(name, means)| {
        html! { <span class="means" {id} role="note"><b>{ capitalised(&name) }{ ": " }</b>{ means }</span> }
    });
    html! { <span data-text={me.to_string()}>{ for parts.into_iter() }{ means }</span> }
}

/// The same, in short.
#[must_use]
pub fn explained(text: impl Into<AttrValue>) -> Html {
    html! { <Explained text={text.into()} /> }
}
