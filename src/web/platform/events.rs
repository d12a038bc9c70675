//! What the browser calls: events of the window, and time that has passed.

use wasm_bindgen::{JsCast, JsValue, closure::Closure};
use web_sys::{Event, EventTarget};

/// Calls back for as long as it lives.
pub struct Listener {
    target: EventTarget,
    name: &'static str,
    closure: Closure<dyn Fn(Event)>,
}

impl Listener {
    pub(crate) fn new(
        target: &EventTarget,
        name: &'static str,
        heard: impl Fn(Event) + 'static,
    ) -> Self {
        let closure = Closure::<dyn Fn(Event)>::new(heard);
        // Fails on no name of an event.
        let _ = target.add_event_listener_with_callback(name, closure.as_ref().unchecked_ref());
        Self {
            target: target.clone(),
            name,
            closure,
        }
    }

    /// Calls back for as long as the page lives.
    pub(crate) fn forget(self) {
        std::mem::forget(self);
    }
}

impl Drop for Listener {
    fn drop(&mut self) {
        let _ = self
            .target
            .remove_event_listener_with_callback(self.name, self.closure.as_ref().unchecked_ref());
    }
}

/// Calls back once, after a while; not at all once it is dropped.
pub struct Timeout {
    number: i32,
    _closure: Closure<dyn FnMut()>,
}

impl Timeout {
    /// Calls back in so many milliseconds.
    #[must_use]
    pub fn new(after_ms: i32, call: impl FnOnce() + 'static) -> Self {
        let mut call = Some(call);
        let closure = Closure::<dyn FnMut()>::new(move || {
            if let Some(call) = call.take() {
                call();
            }
        });
        Self {
            number: set_timeout(closure.as_ref(), after_ms),
            _closure: closure,
        }
    }
}

impl Drop for Timeout {
    fn drop(&mut self) {
        if let Some(window) = super::window() {
            window.clear_timeout_with_handle(self.number);
        }
    }
}

/// Calls back once before the next painting, with its time in ms; not at all once it is
/// dropped.
pub struct AnimationFrame {
    number: i32,
    _closure: Closure<dyn FnMut(f64)>,
}

impl AnimationFrame {
    /// Calls back before the next painting.
    #[must_use]
    pub fn new(call: impl FnOnce(f64) + 'static) -> Self {
        let mut call = Some(call);
        let closure = Closure::<dyn FnMut(f64)>::new(move |now_ms| {
            if let Some(call) = call.take() {
                call(now_ms);
            }
        });
        let number = super::window()
            .and_then(|window| {
                let function = closure.as_ref().unchecked_ref();
                window.request_animation_frame(function).ok()
            })
            .unwrap_or(0);
        Self {
            number,
            _closure: closure,
        }
    }
}

impl Drop for AnimationFrame {
    fn drop(&mut self) {
        if let Some(window) = super::window() {
            let _ = window.cancel_animation_frame(self.number);
        }
    }
}

/// Calls back in so many milliseconds, whatever happens.
pub fn call_after(after_ms: i32, call: impl FnOnce() + 'static) {
    set_timeout(&Closure::once_into_js(call), after_ms);
}

/// Lets everything else go first that waits: events, drawing, newer jobs.
pub async fn breath() {
    let promise = js_sys::Promise::new(&mut |resolve, _| {
        set_timeout(&resolve, 0);
    });
    // It is never rejected.
    let _ = wasm_bindgen_futures::JsFuture::from(promise).await;
}

/// The same in the page and in the worker, where there is no window.
fn set_timeout(call: &JsValue, after_ms: i32) -> i32 {
    let global = js_sys::global();
    js_sys::Reflect::get(&global, &"setTimeout".into())
        .ok()
        .and_then(|set| set.dyn_into::<js_sys::Function>().ok())
        .and_then(|set| set.call2(&global, call, &after_ms.into()).ok())
        .and_then(|number| number.as_f64())
        .map_or(0, |number| number as i32)
}
