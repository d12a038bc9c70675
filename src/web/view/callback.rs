//! What parts call, and what they hold of the page.

use std::cell::RefCell;
use std::rc::Rc;
use wasm_bindgen::JsCast;
use web_sys::{Element, Event};

/// A function that a part is given.
pub struct Callback<I, O = ()>(Rc<dyn Fn(I) -> O>);

impl<I, O> Callback<I, O> {
    /// Calls it.
    pub fn emit(&self, value: I) -> O {
        (self.0)(value)
    }
}

impl<I, O> Clone for Callback<I, O> {
    fn clone(&self) -> Self {
        Self(Rc::clone(&self.0))
    }
}

impl<I, O> PartialEq for Callback<I, O> {
    fn eq(&self, other: &Self) -> bool {
        Rc::ptr_eq(&self.0, &other.0)
    }
}

impl<I> Default for Callback<I> {
    fn default() -> Self {
        Self(Rc::new(|_| ()))
    }
}

impl<I, O, F: Fn(I) -> O + 'static> From<F> for Callback<I, O> {
    fn from(function: F) -> Self {
        Self(Rc::new(function))
    }
}

/// An element of the page, once it stands there.
#[derive(Clone, Default)]
pub struct NodeRef(Rc<RefCell<Option<Element>>>);

impl NodeRef {
    /// The element as what it is, if it stands on the page.
    #[must_use]
    pub fn cast<T: JsCast>(&self) -> Option<T> {
        let element = self.0.borrow().clone()?;
        element.dyn_into().ok()
    }

    pub(super) fn set(&self, element: &Element) {
        *self.0.borrow_mut() = Some(element.clone());
    }

    /// Lets go of an element, unless another has taken its place already.
    pub(super) fn leave(&self, element: &Element) {
        let mut held = self.0.borrow_mut();
        if held.as_ref() == Some(element) {
            *held = None;
        }
    }
}

impl PartialEq for NodeRef {
    fn eq(&self, other: &Self) -> bool {
        Rc::ptr_eq(&self.0, &other.0)
    }
}

/// The element an event happened to.
pub trait TargetCast {
    /// The element as what it is.
    fn target_dyn_into<T: JsCast>(&self) -> Option<T>;
}

impl<E: AsRef<Event>> TargetCast for E {
    fn target_dyn_into<T: JsCast>(&self) -> Option<T> {
        self.as_ref().target()?.dyn_into().ok()
    }
}
