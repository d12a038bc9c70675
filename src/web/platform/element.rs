//! The element that clubs put on their pages, shown on a page of ours.

use super::Listener;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::Element;

/// The element's name.
pub const ELEMENT: &str = "scopewright-advisor";

/// Shows the element with these attributes and custom properties inside `place`, as a club's
/// page does: the script is loaded when it is first wanted.
pub fn show_element(
    place: &Element,
    attributes: &[(&str, String)],
    properties: &[(String, String)],
) {
    let Some(document) = super::document() else {
        return;
    };
    if document
        .query_selector("script[data-element]")
        .ok()
        .flatten()
        .is_none()
        && let Some(address) = super::absolute("embed.js")
        && let Ok(script) = document.create_element("script")
    {
        // Attribute names here are our own and always valid.
        let _ = script.set_attribute("src", &address);
        let _ = script.set_attribute("data-element", "");
        if let Some(body) = document.body() {
            let _ = body.append_child(&script);
        }
    }
    let Ok(element) = document.create_element(ELEMENT) else {
        return;
    };
    for (name, value) in attributes {
        let _ = element.set_attribute(name, value);
    }
    if let Some(styled) = element.dyn_ref::<web_sys::HtmlElement>() {
        for (name, value) in properties {
            let _ = styled.style().set_property(name, value);
        }
    }
    // Colours are told once, when a frame greets: a new element for each change.
    place.set_text_content(None);
    let _ = place.append_child(&element);
}

/// Calls back with each result that an element inside `place` tells, as JSON.
pub fn on_element_advice(place: &Element, heard: impl Fn(String) + 'static) -> Listener {
    Listener::new(place, "advice", move |event| {
        let told = super::got(event.as_ref(), "detail")
            .and_then(|detail| {
                js_sys::JSON::stringify_with_replacer_and_space(
                    &detail,
                    &JsValue::NULL,
                    &JsValue::from_f64(2.0),
                )
                .ok()
            })
            .and_then(|text| text.as_string());
        heard(told.unwrap_or_default());
    })
}
