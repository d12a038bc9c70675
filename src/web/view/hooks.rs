//! What a part keeps between two drawings.
//!
//! Hooks are told apart by the order in which they are called, so they stand before any early
//! return and in no branch.

use super::part::{Cleanup, Effect, EffectCell, Memory, keep, next_held, this_part};
use std::cell::RefCell;
use std::ops::Deref;
use std::rc::{Rc, Weak};
use yew::{Callback, NodeRef};

/// The cell of the next hook, made at the first drawing.
///
/// What does not ask for its type is in `part.rs`, so that it is there once for all hooks.
fn cell<T: 'static>(first: impl FnOnce(Weak<Memory>) -> T) -> Rc<T> {
    if let Some(Ok(cell)) = next_held().map(Rc::downcast::<T>) {
        return cell;
    }
    let cell = Rc::new(first(this_part()));
    keep(cell.clone());
    cell
}

#[inline(never)]
fn outdate(part: &Weak<Memory>) {
    if let Some(part) = part.upgrade() {
        part.is_outdated();
    }
}

struct StateCell<T> {
    value: RefCell<Rc<T>>,
    part: Weak<Memory>,
    /// Whether two values are the same to those who look; none: never.
    is_same: Option<fn(&T, &T) -> bool>,
}

impl<T> StateCell<T> {
    fn set(&self, value: T) {
        if self
            .is_same
            .is_some_and(|is_same| is_same(&self.value.borrow(), &value))
        {
            return;
        }
        self.value.replace(Rc::new(value));
        outdate(&self.part);
    }
}

/// A value that a part keeps, as it was when the part was drawn.
pub struct UseStateHandle<T> {
    value: Rc<T>,
    cell: Rc<StateCell<T>>,
}

/// The way to set a value that a part keeps.
pub struct UseStateSetter<T>(Rc<StateCell<T>>);

impl<T> UseStateHandle<T> {
    /// Another value; the part is drawn again.
    pub fn set(&self, value: T) {
        self.cell.set(value);
    }

    /// The way to set it, the same at every drawing.
    #[must_use]
    pub fn setter(&self) -> UseStateSetter<T> {
        UseStateSetter(Rc::clone(&self.cell))
    }
}

impl<T> Deref for UseStateHandle<T> {
    type Target = T;

    fn deref(&self) -> &T {
        &self.value
    }
}

impl<T> Clone for UseStateHandle<T> {
    fn clone(&self) -> Self {
        Self {
            value: Rc::clone(&self.value),
            cell: Rc::clone(&self.cell),
        }
    }
}

impl<T> UseStateSetter<T> {
    /// Another value; the part is drawn again.
    pub fn set(&self, value: T) {
        self.0.set(value);
    }
}

impl<T> Clone for UseStateSetter<T> {
    fn clone(&self) -> Self {
        Self(Rc::clone(&self.0))
    }
}

impl<T> PartialEq for UseStateSetter<T> {
    fn eq(&self, other: &Self) -> bool {
        Rc::ptr_eq(&self.0, &other.0)
    }
}

fn state<T: 'static>(
    first: impl FnOnce() -> T,
    is_same: Option<fn(&T, &T) -> bool>,
) -> UseStateHandle<T> {
    let cell = cell(|part| StateCell {
        value: RefCell::new(Rc::new(first())),
        part,
        is_same,
    });
    let value = Rc::clone(&cell.value.borrow());
    UseStateHandle { value, cell }
}

/// A value that the part keeps; setting it draws the part again.
pub fn use_state<T: 'static>(first: impl FnOnce() -> T) -> UseStateHandle<T> {
    state(first, None)
}

/// The same, but for setting it to what it is.
pub fn use_state_eq<T: PartialEq + 'static>(first: impl FnOnce() -> T) -> UseStateHandle<T> {
    state(first, Some(T::eq))
}

/// A value made anew only when what it depends on has changed.
pub fn use_memo<D: PartialEq + 'static, T: 'static>(
    depends: D,
    make: impl FnOnce(&D) -> T,
) -> Rc<T> {
    let cell = cell(|_| RefCell::new(None::<(D, Rc<T>)>));
    let mut held = cell.borrow_mut();
    match &*held {
        Some((depended, value)) if *depended == depends => Rc::clone(value),
        _ => {
            let value = Rc::new(make(&depends));
            *held = Some((depends, Rc::clone(&value)));
            value
        }
    }
}

/// A callback that stays the same until what it depends on has changed.
pub fn use_callback<D: PartialEq + 'static, I: 'static, O: 'static>(
    depends: D,
    call: impl Fn(I, &D) -> O + 'static,
) -> Callback<I, O> {
    let callback = use_memo(Rc::new(depends), |depends| {
        let depends = Rc::clone(depends);
        Callback::from(move |value| call(value, &depends))
    });
    (*callback).clone()
}

/// Something that changes without a new drawing.
pub fn use_mut_ref<T: 'static>(first: impl FnOnce() -> T) -> Rc<RefCell<T>> {
    cell(|_| RefCell::new(first()))
}

/// An element of the part, to be remembered with `ref={..}`.
#[must_use]
pub fn use_node_ref() -> NodeRef {
    (*cell(|_| NodeRef::default())).clone()
}

/// What an effect leaves behind: nothing, or what is to be called when it is over.
pub trait Leaves {
    /// What is to be called.
    fn left(self) -> Option<Cleanup>;
}

impl Leaves for () {
    fn left(self) -> Option<Cleanup> {
        None
    }
}

impl<F: FnOnce() + 'static> Leaves for F {
    fn left(self) -> Option<Cleanup> {
        Some(Box::new(self))
    }
}

/// Keeps the place of an effect, and lets it run after the drawing if there is one.
#[inline(never)]
fn effect(run: Option<Box<dyn FnOnce() -> Option<Cleanup>>>) {
    let cell = cell(EffectCell::of);
    if let (Some(run), Some(part)) = (run, cell.part()) {
        part.effects.borrow_mut().push(Effect { cell, run });
    }
}

/// Acts after every drawing.
pub fn use_effect<L: Leaves>(act: impl FnOnce() -> L + 'static) {
    effect(Some(Box::new(move || act().left())));
}

/// Acts after a drawing in which what it depends on has changed, and after the first.
pub fn use_effect_with<D: PartialEq + 'static, L: Leaves>(
    depends: D,
    act: impl FnOnce(&D) -> L + 'static,
) {
    let cell = cell(|_| RefCell::new(None::<Rc<D>>));
    let mut held = cell.borrow_mut();
    if held.as_deref() == Some(&depends) {
        effect(None);
        return;
    }
    let depends = Rc::new(depends);
    *held = Some(Rc::clone(&depends));
    effect(Some(Box::new(move || act(&depends).left())));
}
