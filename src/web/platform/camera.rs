//! A code before the camera, read by the browser itself where it can.

use std::cell::{Cell, RefCell};
use std::rc::Rc;
use wasm_bindgen::prelude::Closure;
use wasm_bindgen::{JsCast, JsValue};

/// Why the camera reads nothing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CameraFault {
    /// The browser cannot read codes.
    CannotRead,
    /// There is no camera, or the page may not use it.
    Denied,
}

/// Whether this browser can read codes at all.
#[must_use]
pub fn can_read_codes() -> bool {
    js_sys::Reflect::has(&js_sys::global(), &"BarcodeDetector".into()).unwrap_or(false)
}

/// A camera that looks for a code; it goes off when this is dropped.
pub struct Camera {
    is_over: Rc<Cell<bool>>,
    stop: Rc<RefCell<Option<js_sys::Function>>>,
}

impl Camera {
    /// Shows the camera in a video element; `found` gets the text of a code, once.
    #[must_use]
    pub fn look(
        video: &web_sys::HtmlElement,
        found: impl FnOnce(String) + 'static,
        failed: impl FnOnce(CameraFault) + 'static,
    ) -> Option<Self> {
        let camera = Self {
            is_over: Rc::default(),
            stop: Rc::default(),
        };
        let (is_over, stop, video) = (
            Rc::clone(&camera.is_over),
            Rc::clone(&camera.stop),
            video.clone(),
        );
        wasm_bindgen_futures::spawn_local(async move {
            let look = super::beside("camera.js")
                .await
                .and_then(|module| super::method(&module, "look"));
            let Some(look) = look else {
                failed(CameraFault::CannotRead);
                return;
            };
            if is_over.get() {
                return;
            }
            let found = Closure::once_into_js(move |text: JsValue| {
                found(text.as_string().unwrap_or_default());
            });
            let failed = Closure::once_into_js(move |why: JsValue| {
                failed(if why.as_string().as_deref() == Some("cannot") {
                    CameraFault::CannotRead
                } else {
                    CameraFault::Denied
                });
            });
            let stops = look.call3(&JsValue::NULL, &video, &found, &failed).ok();
            *stop.borrow_mut() = stops.and_then(|stop| stop.dyn_into().ok());
        });
        Some(camera)
    }
}

impl Drop for Camera {
    fn drop(&mut self) {
        self.is_over.set(true);
        if let Some(stop) = self.stop.borrow_mut().take() {
            // A camera that is off already stays off.
            let _ = stop.call0(&JsValue::NULL);
        }
    }
}
