//! What stands on the page, and how it becomes something else.

use super::node::{Handler, Html, What};
use super::part::{Instance, document};
use super::template::{Step, steps};
use std::cell::RefCell;
use std::rc::Rc;
use wasm_bindgen::JsCast;
use wasm_bindgen::prelude::Closure;
use web_sys::{Element, Event, HtmlInputElement, Node};

const SVG: &str = "http://www.w3.org/2000/svg";

/// What stands on the page for a drawing.
#[derive(Default)]
pub(super) struct Live {
    html: Html,
    dom: Dom,
}

#[derive(Default)]
enum Dom {
    #[default]
    Nothing,
    Text(Node),
    Block(Element, Vec<Hole>),
    List(Vec<Live>),
    Part(Rc<Instance>),
}

/// A place in a block that changes.
enum Hole {
    Attribute(Element, &'static str),
    Property(HtmlInputElement, &'static str),
    Event(Listener),
    Ref(Element),
    /// Its parent, and the fixed node behind it if there is one.
    Child(Node, Option<Node>, Live),
}

/// A handler on its element. The closure stays, the handler in it changes.
struct Listener {
    element: Element,
    name: &'static str,
    handler: Rc<RefCell<Option<Handler>>>,
    closure: Closure<dyn Fn(Event)>,
}

impl Listener {
    fn new(element: Element, name: &'static str) -> Self {
        let handler = Rc::new(RefCell::new(None::<Handler>));
        let held = Rc::clone(&handler);
        let closure = Closure::<dyn Fn(Event)>::new(move |event| {
            let handler = held.borrow().clone();
            if let Some(handler) = handler {
                handler(event);
            }
        });
        // Fails on no name of an event.
        let _ = element.add_event_listener_with_callback(name, closure.as_ref().unchecked_ref());
        Self {
            element,
            name,
            handler,
            closure,
        }
    }
}

impl Drop for Listener {
    fn drop(&mut self) {
        let _ = self
            .element
            .remove_event_listener_with_callback(self.name, self.closure.as_ref().unchecked_ref());
    }
}

/// Puts a node on the page.
#[inline(never)]
pub(super) fn place(node: &Node, parent: &Node, before: Option<&Node>) {
    // Fails only where a node would stand in itself.
    let _ = parent.insert_before(node, before);
}

/// Takes a node off the page.
#[inline(never)]
pub(super) fn take_off(node: &Node) {
    if let Some(parent) = node.parent_node() {
        let _ = parent.remove_child(node);
    }
}

impl Hole {
    /// Writes a value, if it is another than before.
    fn write(&mut self, old: &Html, new: &Html) {
        match self {
            Self::Attribute(element, name) => {
                let (old, new) = (old.text(), new.text());
                if old != new {
                    // Fails on no name of an attribute that is written down.
                    let _ = match new {
                        Some(value) => element.set_attribute(name, value),
                        None => element.remove_attribute(name),
                    };
                }
            }
            // Visitors change these, too: what stands there counts, not what was written.
            Self::Property(field, name) => {
                if *name == "checked" {
                    field.set_checked(new.text().is_some());
                } else {
                    let value = new.text().map_or("", |value| value.as_str());
                    if field.value() != value {
                        field.set_value(value);
                    }
                }
            }
            Self::Event(listener) => {
                listener.handler.replace(match new.what() {
                    Some(What::On(handler)) => Some(Rc::clone(handler)),
                    _ => None,
                });
            }
            Self::Ref(element) => {
                if let Some(What::Ref(node)) = old.what() {
                    node.leave(element);
                }
                if let Some(What::Ref(node)) = new.what() {
                    node.set(element);
                }
            }
            Self::Child(parent, before, live) => {
                live.become_new(new.clone(), parent, before.as_ref());
            }
        }
    }
}

/// Makes the element of a template, with its holes still empty.
fn build(template: &'static str, parent: &Node) -> Option<(Element, Vec<Hole>)> {
    let document = document()?;
    let mut is_svg = parent
        .dyn_ref::<Element>()
        .is_some_and(|parent| parent.namespace_uri().as_deref() == Some(SVG));
    let mut open: Vec<(Element, bool)> = Vec::new();
    let mut root = None;
    let mut holes = Vec::new();
    let mut name = "";
    // A hole at the end of its parent so far; what follows it becomes its anchor.
    let mut loose: Option<usize> = None;
    let anchor = |holes: &mut Vec<Hole>, loose: &mut Option<usize>, node: &Node| {
        if let Some(Hole::Child(_, before, _)) = loose.take().and_then(|at| holes.get_mut(at)) {
            *before = Some(node.clone());
        }
    };
    for step in steps(template) {
        let here = open.last().map(|(element, _)| element);
        match (step, here) {
            (Step::Open(tag), _) => {
                is_svg = is_svg || tag == "svg";
                let element = if is_svg {
                    document.create_element_ns(Some(SVG), tag)
                } else {
                    document.create_element(tag)
                }
                .ok()?;
                if let Some(here) = here {
                    anchor(&mut holes, &mut loose, &element);
                    place(&element, here, None);
                }
                open.push((element, is_svg));
                loose = None;
            }
            (Step::Close, Some(_)) => {
                root = open.pop().map(|(element, _)| element);
                is_svg = open.last().is_some_and(|(_, is_svg)| *is_svg);
                loose = None;
            }
            (Step::Attribute(said), _) => name = said,
            (Step::Value(value), Some(here)) => {
                let _ = here.set_attribute(name, value);
            }
            (Step::Text(text), Some(here)) => {
                let text = document.create_text_node(text);
                anchor(&mut holes, &mut loose, &text);
                place(&text, here, None);
            }
            (Step::AttributeHole(name), Some(here)) => {
                holes.push(Hole::Attribute(here.clone(), name));
            }
            (Step::PropertyHole(name), Some(here)) => {
                holes.push(Hole::Property(here.clone().unchecked_into(), name));
            }
            (Step::EventHole(name), Some(here)) => {
                holes.push(Hole::Event(Listener::new(here.clone(), name)));
            }
            (Step::RefHole, Some(here)) => holes.push(Hole::Ref(here.clone())),
            (Step::ChildHole, Some(here)) => {
                // Two holes side by side: an empty text between them keeps them apart.
                if loose.is_some() {
                    let between = document.create_text_node("");
                    anchor(&mut holes, &mut loose, &between);
                    place(&between, here, None);
                }
                loose = Some(holes.len());
                let parent = here.clone().into();
                holes.push(Hole::Child(parent, None, Live::default()));
            }
            // Nothing stands outside the outermost element.
            (_, None) => {}
        }
    }
    root.map(|root| (root, holes))
}

impl Live {
    /// Puts a drawing on the page.
    fn new(html: Html, parent: &Node, before: Option<&Node>) -> Self {
        let dom = match html.what() {
            Some(What::Text(text)) => document().map_or(Dom::Nothing, |document| {
                let node: Node = document.create_text_node(text).into();
                place(&node, parent, before);
                Dom::Text(node)
            }),
            Some(What::Block(template, values)) => {
                build(template, parent).map_or(Dom::Nothing, |(root, mut holes)| {
                    for (hole, value) in holes.iter_mut().zip(values) {
                        hole.write(&Html::default(), value);
                    }
                    place(&root, parent, before);
                    Dom::Block(root, holes)
                })
            }
            Some(What::List(items)) => {
                let mut live = Vec::with_capacity(items.len());
                for item in items {
                    live.push(Self::new(item.clone(), parent, before));
                }
                Dom::List(live)
            }
            Some(What::Part(_)) => {
                Instance::new(html.clone(), parent, before).map_or(Dom::Nothing, Dom::Part)
            }
            _ => Dom::Nothing,
        };
        Self { html, dom }
    }

    /// Whether another drawing can be had by changing this one.
    fn can_become(&self, new: &Html) -> bool {
        self.html.key() == new.key()
            && match (self.html.what(), new.what()) {
                (Some(What::Text(_)), Some(What::Text(_)))
                | (Some(What::List(_)), Some(What::List(_))) => true,
                (Some(What::Block(old, _)), Some(What::Block(new, _))) => std::ptr::eq(*old, *new),
                (Some(What::Part(old)), Some(What::Part(new))) => old.kind() == new.kind(),
                _ => false,
            }
    }

    /// Becomes another drawing, with as little change of the page as that takes.
    pub fn become_new(&mut self, new: Html, parent: &Node, before: Option<&Node>) {
        if self.html == new {
            return;
        }
        if !self.can_become(&new) {
            let first = self.first();
            let fresh = Self::new(new, parent, first.as_ref().or(before));
            self.close();
            self.detach();
            *self = fresh;
            return;
        }
        match &mut self.dom {
            Dom::Nothing => {}
            Dom::Text(node) => {
                if self.html.text() != new.text() {
                    node.set_node_value(new.text().map(|text| text.as_str()));
                }
            }
            Dom::Block(_, holes) => {
                let values = self.html.holes().iter().zip(new.holes());
                for (hole, (old, new)) in holes.iter_mut().zip(values) {
                    hole.write(old, new);
                }
            }
            Dom::List(items) => {
                if let Some(What::List(new)) = new.what() {
                    become_list(items, new, parent, before);
                }
            }
            Dom::Part(instance) => instance.tell(&new),
        }
        self.html = new;
    }

    /// The first node of it on the page.
    pub fn first(&self) -> Option<Node> {
        match &self.dom {
            Dom::Nothing => None,
            Dom::Text(node) => Some(node.clone()),
            Dom::Block(root, _) => Some(root.clone().into()),
            Dom::List(items) => items.iter().find_map(Self::first),
            Dom::Part(instance) => Some(instance.first()),
        }
    }

    /// Its parts end, and nothing remembers its elements any more.
    pub fn close(&self) {
        match &self.dom {
            Dom::Nothing | Dom::Text(_) => {}
            Dom::Block(_, holes) => {
                for (hole, value) in holes.iter().zip(self.html.holes()) {
                    match (hole, value.what()) {
                        (Hole::Child(_, _, live), _) => live.close(),
                        (Hole::Ref(element), Some(What::Ref(node))) => node.leave(element),
                        // A field that goes away while it is typed in is not "left".
                        (Hole::Event(listener), _) => drop(listener.handler.take()),
                        _ => {}
                    }
                }
            }
            Dom::List(items) => {
                for item in items {
                    item.close();
                }
            }
            Dom::Part(instance) => instance.close(),
        }
    }

    /// Takes it off the page.
    pub fn detach(&self) {
        match &self.dom {
            Dom::Nothing => {}
            Dom::Text(node) => take_off(node),
            Dom::Block(root, _) => take_off(root),
            Dom::List(items) => {
                for item in items {
                    item.detach();
                }
            }
            Dom::Part(instance) => instance.detach(),
        }
    }

    /// Puts it before something else.
    pub fn put_before(&self, parent: &Node, before: Option<&Node>) {
        match &self.dom {
            Dom::Nothing => {}
            Dom::Text(node) => place(node, parent, before),
            Dom::Block(root, _) => place(root, parent, before),
            Dom::List(items) => {
                for item in items {
                    item.put_before(parent, before);
                }
            }
            Dom::Part(instance) => instance.put_before(parent, before),
        }
    }
}

/// A list becomes another: what has the same key stays, what has none stays in its order.
fn become_list(items: &mut Vec<Live>, new: &[Html], parent: &Node, before: Option<&Node>) {
    let mut old: Vec<Option<Live>> = std::mem::take(items).into_iter().map(Some).collect();
    let mut places = Vec::with_capacity(new.len());
    let mut kept = vec![false; old.len()];
    for html in new {
        let place = old.iter().zip(&kept).position(|(live, kept)| {
            !kept
                && live
                    .as_ref()
                    .is_some_and(|live| live.html.key() == html.key())
        });
        if let Some(kept) = place.and_then(|place| kept.get_mut(place)) {
            *kept = true;
        }
        places.push(place);
    }
    for (live, kept) in old.iter_mut().zip(&kept) {
        if !kept && let Some(live) = live.take() {
            live.close();
            live.detach();
        }
    }
    let is_in_order = places.iter().flatten().is_sorted();
    let mut before = before.cloned();
    for (html, place) in new.iter().zip(&places).rev() {
        let held = place.and_then(|place| old.get_mut(place)?.take());
        let live = match held {
            Some(mut live) => {
                if !is_in_order {
                    live.put_before(parent, before.as_ref());
                }
                live.become_new(html.clone(), parent, before.as_ref());
                live
            }
            None => Live::new(html.clone(), parent, before.as_ref()),
        };
        before = live.first().or(before);
        items.push(live);
    }
    items.reverse();
}
