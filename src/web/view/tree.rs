//! From what a part has drawn to Yew's virtual DOM.
//!
//! One walk over the template makes the tags; no code is made for any block.

use super::node::{Handler, Html, What};
use super::part::{Instance, Told};
use super::template::{Step, steps};
use crate::plain::Gathered;
use crate::plain::Map;
use crate::wording::at;
use std::borrow::Cow;
use std::cell::RefCell;
use std::rc::Rc;
use web_sys::Event;
use yew::AttrValue;
use yew::virtual_dom::{
    AttributeOrProperty, Attributes, Key, Listener, ListenerKind, VComp, VList, VNode, VTag, VText,
};

/// A handler under the name of its event.
struct On {
    event: &'static str,
    handler: Handler,
}

impl Listener for On {
    fn kind(&self) -> ListenerKind {
        ListenerKind::other(Cow::Borrowed(self.event))
    }

    fn handle(&self, event: Event) {
        (self.handler)(event);
    }

    fn passive(&self) -> bool {
        self.event == "scroll"
    }
}

/// A template, read once.
struct Plan {
    steps: Vec<Step>,
    /// The names of the attributes of each element, in the order of the elements.
    names: Vec<&'static [&'static str]>,
}

thread_local! {
    /// By the place of the template in the program.
    static PLANS: RefCell<Map<*const u8, &'static Plan>> =
        const { RefCell::new(Map::new()) };
}

/// Templates are part of the program, and so are the plans of them.
fn plan(template: &'static str) -> &'static Plan {
    PLANS.with_borrow_mut(|plans| {
        *plans.get_or(template.as_ptr(), || {
            let steps: Vec<Step> = steps(template).gathered();
            let mut names: Vec<Vec<&'static str>> = Vec::new();
            // Attributes stand before everything else in an element.
            for step in &steps {
                match step {
                    Step::Open(_) => names.push(Vec::new()),
                    Step::Attribute(name) | Step::AttributeHole(name) => {
                        if let Some(names) = names.last_mut() {
                            names.push(name);
                        }
                    }
                    _ => {}
                }
            }
            let mut leaked: Vec<&'static [&'static str]> = Vec::new();
            for names in names {
                leaked.push(names.leak());
            }
            Box::leak(Box::new(Plan {
                steps,
                names: leaked,
            }))
        })
    })
}

/// An element in the making.
struct Open {
    tag: VTag,
    names: &'static [&'static str],
    values: Vec<Option<AttributeOrProperty>>,
    listeners: Vec<Option<Rc<dyn Listener>>>,
    children: Vec<VNode>,
}

impl Open {
    fn closed(self) -> VTag {
        let mut tag = self.tag;
        tag.set_attributes(Attributes::Dynamic {
            keys: self.names,
            values: self.values.into_boxed_slice(),
        });
        if !self.listeners.is_empty() {
            tag.set_listeners(self.listeners.into_boxed_slice());
        }
        let mut children = self.children;
        if children.len() == 1 {
            if let Some(child) = children.pop() {
                tag.add_child(child);
            }
        } else if !children.is_empty() {
            tag.add_child(VNode::VList(Rc::new(VList::with_children(children, None))));
        }
        tag
    }
}

fn value(of: &Html) -> Option<AttrValue> {
    of.text().cloned()
}

fn block(template: &'static str, values: &[Html]) -> Option<VTag> {
    let plan = plan(template);
    let mut names = plan.names.iter();
    let mut values = values.iter();
    let mut open: Vec<Open> = Vec::new();
    for step in &plan.steps {
        match *step {
            Step::Open(tag) => {
                open.push(Open {
                    tag: VTag::new(tag),
                    names: names.next()?,
                    values: Vec::new(),
                    listeners: Vec::new(),
                    children: Vec::new(),
                });
                continue;
            }
            Step::Close => {
                let tag = open.pop()?.closed();
                match open.last_mut() {
                    Some(parent) => parent.children.push(tag.into()),
                    None => return Some(tag),
                }
                continue;
            }
            _ => {}
        }
        let here = open.last_mut()?;
        match *step {
            Step::Value(text) => here.values.push(Some(AttributeOrProperty::Static(text))),
            Step::AttributeHole(_) => {
                let value = value(values.next()?);
                here.values.push(value.map(AttributeOrProperty::Attribute));
            }
            Step::PropertyHole("checked") => {
                here.tag.set_checked(values.next()?.text().is_some());
            }
            Step::PropertyHole(_) => {
                here.tag
                    .set_value(Some(value(values.next()?).unwrap_or_default()));
            }
            Step::EventHole(event) => {
                if let Some(What::On(handler)) = values.next()?.what() {
                    let handler = Rc::clone(handler);
                    here.listeners.push(Some(Rc::new(On { event, handler })));
                }
            }
            Step::RefHole => {
                if let Some(What::Ref(node)) = values.next()?.what() {
                    here.tag.node_ref = node.clone();
                }
            }
            Step::Said(place) => {
                here.children.push(VText::new(at(place, &[])).into());
            }
            Step::ValueSaid(place) => {
                let said = AttrValue::from(at(place, &[]));
                here.values.push(Some(AttributeOrProperty::Attribute(said)));
            }
            Step::Text(text) => here.children.push(VText::new(text).into()),
            Step::ChildHole => here.children.push(of_one(values.next()?, 0)),
            Step::Attribute(_) | Step::Open(_) | Step::Close => {}
        }
    }
    None
}

/// What has been drawn, as Yew has it.
pub(super) fn of(html: &Html) -> VNode {
    of_one(html, 0)
}

/// The same for something that stands at a place among its neighbours.
fn of_one(html: &Html, at: usize) -> VNode {
    match html.what() {
        Some(What::Text(text)) => VText::new(text.clone()).into(),
        Some(What::Block(template, values)) => block(template, values)
            .map(|mut tag| {
                tag.key = html.key().map(|key| Key::from(key.as_str()));
                tag.into()
            })
            .unwrap_or_default(),
        Some(What::List(items)) => {
            let mut nodes = Vec::with_capacity(items.len());
            for (at, item) in items.iter().enumerate() {
                nodes.push(of_one(item, at));
            }
            let key = html.key().map(|key| Key::from(key.as_str()));
            VNode::VList(Rc::new(VList::with_children(nodes, key)))
        }
        Some(What::Part(bound)) => {
            // Another part at the same place is another instance.
            let key = match html.key() {
                Some(key) => format!("{key} {}", bound.name()),
                None => format!("{at} {}", bound.name()),
            };
            let told = Told {
                bound: Rc::clone(bound),
            };
            VComp::new::<Instance>(Rc::new(told), Some(Key::from(key))).into()
        }
        _ => VNode::default(),
    }
}
