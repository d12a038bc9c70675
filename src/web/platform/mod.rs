//! The browser, behind plain functions: the only place besides the frame that touches `window`.

mod camera;
mod element;
mod storage;
mod worker;

pub use camera::{Camera, CameraFault, can_read_codes};
pub use element::{ELEMENT, on_element_advice, show_element};
pub use gloo::events::EventListener as Listener;
pub use gloo::render::{AnimationFrame, request_animation_frame};
pub use gloo::timers::callback::Timeout;
pub use storage::Kept;
pub use worker::{RankingWorker, Reply, answer_jobs, in_worker};

use crate::plain::Gathered;
use wasm_bindgen::{JsCast, JsValue};

/// Lets everything else go first that waits: events, drawing, newer jobs.
pub async fn breath() {
    gloo::timers::future::TimeoutFuture::new(0).await;
}

fn window() -> Option<web_sys::Window> {
    web_sys::window()
}

fn document() -> Option<web_sys::Document> {
    window()?.document()
}

/// The fragment of the address, with its `#`.
#[must_use]
pub fn fragment() -> String {
    window()
        .and_then(|window| window.location().hash().ok())
        .unwrap_or_default()
}

/// Goes to a fragment, as a link would.
pub fn go_to(fragment: &str) {
    if let Some(window) = window() {
        // Setting a fragment fails only on an address that cannot have one.
        let _ = window.location().set_hash(fragment);
    }
}

/// Replaces the fragment without a step in the history.
pub fn replace_fragment(fragment: &str) {
    let Some(window) = window() else { return };
    let replaced = window
        .history()
        .and_then(|history| history.replace_state_with_url(&JsValue::NULL, "", Some(fragment)));
    if replaced.is_err() {
        let _ = window.location().set_hash(fragment);
    }
}

/// Calls back whenever the fragment changes, as long as the listener lives.
#[must_use]
pub fn on_fragment(changed: impl Fn(String) + 'static) -> Option<Listener> {
    let window = window()?;
    Some(Listener::new(&window, "hashchange", move |_| {
        changed(fragment());
    }))
}

/// Calls back when another tab has kept something, with its name.
#[must_use]
pub fn on_kept_elsewhere(changed: impl Fn(&str) + 'static) -> Option<Listener> {
    let window = window()?;
    Some(Listener::new(&window, "storage", move |event| {
        let named = got(event, "key").and_then(|value| value.as_string());
        changed(named.as_deref().unwrap_or_default());
    }))
}

/// The address of this page without its fragment.
#[must_use]
pub fn bare_address() -> String {
    window()
        .and_then(|window| window.location().href().ok())
        .map(|href| href.split('#').next().unwrap_or_default().to_owned())
        .unwrap_or_default()
}

/// Pixels of the screen for a px of the page.
#[must_use]
pub fn device_pixel_ratio() -> f64 {
    window().map_or(1.0, |window| window.device_pixel_ratio())
}

/// Seconds since 1970-01-01T00:00Z.
#[must_use]
pub fn now_unix_s() -> f64 {
    js_sys::Date::now() / 1000.0
}

/// Minutes that local time is ahead of UTC at a moment.
#[must_use]
pub fn offset_min_at(unix_s: f64) -> f64 {
    -js_sys::Date::new(&JsValue::from_f64(unix_s * 1000.0)).get_timezone_offset()
}

/// The language the browser asks for, as in `en-GB`.
#[must_use]
pub fn language() -> String {
    window()
        .and_then(|window| window.navigator().language())
        .unwrap_or_else(|| "en".into())
}

/// The name of the browser's time zone, as in `Europe/Vienna`.
#[must_use]
pub fn time_zone() -> Option<String> {
    let format = js_sys::Intl::DateTimeFormat::new(&js_sys::Array::new(), &js_sys::Object::new());
    got(&format.resolved_options(), "timeZone")?.as_string()
}

/// Puts the keyboard on the element with this id, and opens what it is folded away in.
pub fn focus(id: &str) {
    let Some(element) = document().and_then(|document| document.get_element_by_id(id)) else {
        return;
    };
    while let Ok(Some(folded)) = element.closest("details:not([open])") {
        if folded.set_attribute("open", "").is_err() {
            break;
        }
    }
    if let Ok(element) = element.dyn_into::<web_sys::HtmlElement>() {
        // An element that cannot take focus keeps it where it was.
        let _ = element.focus();
    }
}

/// Shows the top of the page.
pub fn show_top() {
    if let Some(window) = window() {
        window.scroll_to_with_x_and_y(0.0, 0.0);
    }
}

/// Names the tab.
pub fn title_tab(title: &str) {
    if let Some(document) = document() {
        document.set_title(title);
    }
}

/// Sets or clears an attribute of the root element that styles look at.
pub fn mark_root(name: &str, value: Option<&str>) {
    let Some(root) = document().and_then(|document| document.document_element()) else {
        return;
    };
    // Attribute names here are our own and always valid.
    let _ = match value {
        Some(value) => root.set_attribute(name, value),
        None => root.remove_attribute(name),
    };
}

/// Opens the browser's print window.
pub fn print() {
    if let Some(window) = window() {
        // A browser that cannot print says so itself.
        let _ = window.print();
    }
}

/// Offers text and address to the system's share sheet; false where there is none.
#[must_use]
pub fn share_sheet(title: &str, url: &str) -> bool {
    let Some(navigator) = window().map(|window| JsValue::from(window.navigator())) else {
        return false;
    };
    let Some(share) = method(&navigator, "share") else {
        return false;
    };
    let data = js_sys::Object::new();
    let set = |name: &str, value: &str| js_sys::Reflect::set(&data, &name.into(), &value.into());
    if set("title", title).is_err() || set("url", url).is_err() {
        return false;
    }
    match share.call1(&navigator, &data) {
        Ok(promise) => {
            // A sheet that is closed again rejects its promise: nothing to report.
            if let Ok(promise) = promise.dyn_into::<js_sys::Promise>() {
                wasm_bindgen_futures::spawn_local(async move {
                    let _ = wasm_bindgen_futures::JsFuture::from(promise).await;
                });
            }
            true
        }
        Err(_) => false,
    }
}

/// Puts text on the clipboard; false where that is denied at once.
#[must_use]
pub fn copy(text: &str) -> bool {
    let navigator = window().map(|window| JsValue::from(window.navigator()));
    let clipboard = navigator
        .and_then(|navigator| got(&navigator, "clipboard"))
        .filter(JsValue::is_object);
    let Some(clipboard) = clipboard else {
        return false;
    };
    method(&clipboard, "writeText")
        .and_then(|write| write.call1(&clipboard, &text.into()).ok())
        .is_some()
}

/// What stands in the field that an event came from.
#[must_use]
pub fn text_in(event: &web_sys::Event) -> String {
    event
        .target()
        .and_then(|target| got(&target, "value"))
        .and_then(|value| value.as_string())
        .unwrap_or_default()
}

/// Takes out what a field holds, if it stands on the page.
pub fn empty_field(field: &crate::web::view::prelude::NodeRef) {
    if let Some(field) = field.cast::<web_sys::Element>() {
        // A field takes every text.
        let _ = js_sys::Reflect::set(&field, &"value".into(), &"".into());
    }
}

/// The text of the file that was chosen, once it is read.
#[must_use]
pub fn chosen_file(event: &web_sys::Event) -> Option<js_sys::Promise> {
    let file = got(&got(event.target()?.as_ref(), "files")?, "0")?;
    method(&js_sys::global(), "scopewrightText")?
        .call1(&JsValue::NULL, &file)
        .ok()?
        .dyn_into()
        .ok()
}

/// What an object holds under a name.
fn got(of: &JsValue, name: &str) -> Option<JsValue> {
    js_sys::Reflect::get(of, &name.into()).ok()
}

/// The function that an object holds under a name.
fn method(of: &JsValue, name: &str) -> Option<js_sys::Function> {
    got(of, name)?.dyn_into().ok()
}

/// A path beside the page as a whole address.
fn absolute(path: &str) -> Option<String> {
    let base = document()?.base_uri().ok()??;
    let url = method(&js_sys::global(), "URL")?;
    let whole =
        js_sys::Reflect::construct(&url, &js_sys::Array::of2(&path.into(), &base.into())).ok()?;
    got(&whole, "href")?.as_string()
}

/// Removes the offline copy; the next visit makes it again.
pub fn drop_offline_copy() {
    wasm_bindgen_futures::spawn_local(async {
        let dropped = beside("boot.js")
            .await
            .and_then(|boot| method(&boot, "dropCopy"));
        if let Some(dropped) = dropped {
            // A browser without a copy has nothing to remove.
            let _ = dropped.call0(&JsValue::NULL);
        }
    });
}

/// A module of the page that only a tap asks for; none where it does not load.
async fn beside(name: &str) -> Option<JsValue> {
    let fetch = method(&js_sys::global(), "scopewrightBeside")?;
    let coming = fetch.call1(&JsValue::NULL, &name.into()).ok()?;
    wasm_bindgen_futures::JsFuture::from(coming.dyn_into::<js_sys::Promise>().ok()?)
        .await
        .ok()
}

/// The page's own script, which says where the rest is.
fn own_script() -> Option<web_sys::Element> {
    document()?.query_selector("script[data-wasm]").ok()?
}

/// Where a tap before the module arrived leads, if the address held something to be read first.
#[must_use]
pub fn tapped_early() -> Option<String> {
    own_script()?.get_attribute("data-tapped")
}

/// Where the page's own glue and module are.
fn module_addresses() -> Option<(String, String)> {
    let script = own_script()?;
    let address = |name: &str| absolute(&script.get_attribute(name)?);
    Some((address("data-js")?, address("data-wasm")?))
}

/// The element that the page takes over.
#[must_use]
pub fn mount_point() -> Option<web_sys::Element> {
    document()?.get_element_by_id("app")
}

/// What was ticked before the module arrived: name and value of each.
#[must_use]
pub fn ticked_early() -> Vec<(String, String)> {
    let Some(ticked) = mount_point().and_then(|root| root.query_selector_all("input:checked").ok())
    else {
        return Vec::new();
    };
    (0..ticked.length())
        .filter_map(|at| ticked.item(at)?.dyn_into::<web_sys::Element>().ok())
        .filter_map(|input| Some((input.get_attribute("name")?, input.get_attribute("value")?)))
        .gathered()
}

/// The id of the element that has the keyboard.
#[must_use]
pub fn focused_id() -> Option<String> {
    let focused = document()?.active_element()?;
    Some(focused.id()).filter(|id| !id.is_empty())
}

/// As [`focus`], once what is being drawn stands on the page.
pub fn focus_soon(id: &str) {
    let id = id.to_owned();
    Timeout::new(30, move || focus(&id)).forget();
}

/// The values of an attribute over the page, in order: what can be seen before what is folded
/// away.
#[must_use]
pub fn in_order(name: &str) -> Vec<String> {
    let Some(found) =
        document().and_then(|document| document.query_selector_all(&format!("[{name}]")).ok())
    else {
        return Vec::new();
    };
    let elements: Vec<web_sys::Element> = (0..found.length())
        .filter_map(|at| found.item(at)?.dyn_into().ok())
        .gathered();
    let is_folded =
        |element: &&web_sys::Element| !matches!(element.closest("details:not([open])"), Ok(None));
    let (folded, seen): (Vec<_>, Vec<_>) = elements.iter().partition(is_folded);
    seen.into_iter()
        .chain(folded)
        .filter_map(|element| element.get_attribute(name))
        .gathered()
}
