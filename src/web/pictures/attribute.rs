//! Attributes written straight into elements, past the renderer.

use crate::web::view::NodeRef;
use std::cell::RefCell;
use wasm_bindgen::JsCast;
use web_sys::Element;

/// An element of a picture and what was last written into it.
#[derive(Clone, Default, PartialEq)]
pub struct Pen {
    /// The element.
    pub node: NodeRef,
    written: std::rc::Rc<RefCell<Vec<(&'static str, String)>>>,
}

impl Pen {
    /// Writes an attribute if it differs from what stands there.
    pub fn set(&self, name: &'static str, value: &str) {
        let mut written = self.written.borrow_mut();
        match written.iter_mut().find(|(known, _)| *known == name) {
            Some((_, known)) if known == value => return,
            Some((_, known)) => value.clone_into(known),
            None => written.push((name, value.to_owned())),
        }
        if let Some(element) = self.node.cast::<Element>() {
            // Only an invalid name can fail, and names are literals.
            let _ = element.set_attribute(name, value);
        }
    }

    /// Writes the text content if it differs.
    pub fn text(&self, value: &str) {
        let mut written = self.written.borrow_mut();
        match written.iter_mut().find(|(known, _)| known.is_empty()) {
            Some((_, known)) if known == value => return,
            Some((_, known)) => value.clone_into(known),
            None => written.push(("", value.to_owned())),
        }
        if let Some(element) = self.node.cast::<Element>() {
            element.set_text_content(Some(value));
        }
    }

    /// Writes a CSS property through the object model, which the page's policy allows.
    pub fn style(&self, name: &'static str, value: &str) {
        if let Some(element) = self.node.cast::<web_sys::HtmlElement>() {
            let _ = element.style().set_property(name, value);
        } else if let Some(element) = self.node.cast::<Element>()
            && let Ok(element) = element.dyn_into::<web_sys::SvgElement>()
        {
            let _ = element.style().set_property(name, value);
        }
    }

    /// Forgets what was written, after the renderer has made the elements anew.
    pub fn forget(&self) {
        self.written.borrow_mut().clear();
    }
}

/// `n` pens.
#[must_use]
pub fn pens(n: usize) -> Vec<Pen> {
    (0..n).map(|_| Pen::default()).collect()
}
