//! The width that an element is given, and an identity for the parts of a picture.

use crate::web::view::prelude::*;
use std::cell::Cell;
use wasm_bindgen::JsCast;
use wasm_bindgen::prelude::Closure;
use web_sys::{Element, ResizeObserver};

thread_local! {
    static NEXT: Cell<u32> = const { Cell::new(0) };
}

/// A name of its own for the parts of a picture that refer to each other.
pub fn use_id(prefix: &'static str) -> AttrValue {
    let id = use_memo((), |()| {
        let n = NEXT.get();
        NEXT.set(n + 1);
        AttrValue::from(format!("{prefix}-{n}"))
    });
    (*id).clone()
}

/// The inner width of an element in whole px, `first` until it is known; follows its changes.
pub fn use_width(node: NodeRef, first: f64) -> f64 {
    let width = use_state_eq(|| first);
    {
        let width = width.clone();
        use_effect_with(node, move |node| {
            let mut kept = None;
            if let Some(element) = node.cast::<Element>() {
                let measure = {
                    let element = element.clone();
                    let width = width.clone();
                    move || {
                        let now = f64::from(element.client_width());
                        if now > 0.0 {
                            width.set(now);
                        }
                    }
                };
                measure();
                let closure = Closure::<dyn FnMut()>::new(measure);
                if let Ok(observer) = ResizeObserver::new(closure.as_ref().unchecked_ref()) {
                    observer.observe(&element);
                    kept = Some((observer, closure));
                }
            }
            move || {
                if let Some((observer, closure)) = kept {
                    observer.disconnect();
                    drop(closure);
                }
            }
        });
    }
    *width
}
