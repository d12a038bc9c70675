//! Attributes written straight into elements, past the renderer.

use crate::drawing::svg::Part;
use crate::plain::Gathered;
use crate::web::view::NodeRef;
use std::cell::RefCell;
use wasm_bindgen::JsCast;
use web_sys::Element;

/// An element of a picture and what was last written into it.
#[derive(Clone, Default, PartialEq)]
pub struct Pen {
    /// The element.
    pub node: NodeRef,
    written: std::rc::Rc<RefCell<Written>>,
    children: std::rc::Rc<RefCell<Vec<(Element, Part)>>>,
}

/// Attributes that were written.
type Written = Vec<(&'static str, String)>;

const SVG: &str = "http://www.w3.org/2000/svg";

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
            write_text(&element, value);
        }
    }

    /// Writes what stands inside, as SVG or HTML, if it differs.
    pub fn inside(&self, source: &str) {
        let mut written = self.written.borrow_mut();
        match written.iter_mut().find(|(known, _)| *known == "<") {
            Some((_, known)) if known == source => return,
            Some((_, known)) => source.clone_into(known),
            None => written.push(("<", source.to_owned())),
        }
        if let Some(element) = self.node.cast::<Element>() {
            element.set_inner_html(source);
        }
    }

    /// Writes parts as children; what has not changed is not touched.
    pub fn parts(&self, parts: &[Part]) {
        let Some(parent) = self.node.cast::<Element>() else {
            return;
        };
        let mut drawn = self.children.borrow_mut();
        if drawn.is_empty() {
            // What another pen has left here.
            parent.set_text_content(None);
        }
        let same = drawn
            .iter()
            .zip(parts)
            .take_while(|((_, before), now)| before.tag == now.tag)
            .count();
        for (child, _) in drawn.drain(same..) {
            child.remove();
        }
        for (n, part) in parts.iter().enumerate() {
            if n == drawn.len() {
                let Some(child) = parent
                    .owner_document()
                    .and_then(|document| document.create_element_ns(Some(SVG), part.tag).ok())
                else {
                    return;
                };
                let _ = parent.append_child(&child);
                let nothing = Part {
                    tag: part.tag,
                    attributes: Vec::new(),
                    inside: String::new(),
                };
                drawn.push((child, nothing));
            }
            let (child, written) = &mut drawn[n];
            if written == part {
                continue;
            }
            for (name, _) in &written.attributes {
                if !part.attributes.iter().any(|(other, _)| other == name) {
                    let _ = child.remove_attribute(name);
                }
            }
            for attribute in &part.attributes {
                if !written.attributes.contains(attribute) {
                    let _ = child.set_attribute(attribute.0, &attribute.1);
                }
            }
            if written.inside != part.inside {
                if part.tag == "text" {
                    write_text(child, &part.inside);
                } else {
                    child.set_inner_html(&part.inside);
                }
            }
            written.clone_from(part);
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

    /// The upper left corner on the screen, in px.
    #[must_use]
    pub fn corner_px(&self) -> (f64, f64) {
        self.node.cast::<Element>().map_or((0.0, 0.0), |element| {
            let edge = element.get_bounding_client_rect();
            (edge.left(), edge.top())
        })
    }

    /// Forgets what was written, after the renderer has made the elements anew.
    pub fn forget(&self) {
        self.written.borrow_mut().clear();
        for (child, _) in self.children.borrow_mut().drain(..) {
            child.remove();
        }
    }
}

/// Writes a text into the node that is there: nothing is inserted, so that no rule of the page
/// that looks into its elements has to be asked again.
fn write_text(element: &Element, value: &str) {
    match element.first_child() {
        Some(text) => text.set_node_value(Some(value)),
        None => element.set_text_content(Some(value)),
    }
}

/// `n` pens.
#[must_use]
pub fn pens(n: usize) -> Vec<Pen> {
    (0..n).map(|_| Pen::default()).gathered()
}
