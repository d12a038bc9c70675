//! Parts that keep something: one Yew component for all of them.
//!
//! Yew makes scope, lifecycle and reconcile machinery anew for each type of component. Here
//! only one type exists, and what it shows is a value ([`Bound`]) it is told.

use super::node::{Component, Html, What};
use std::any::{Any, TypeId, type_name};
use std::cell::{Cell, RefCell};
use std::rc::{Rc, Weak};
use web_sys::Element;
use yew::html::Scope;
use yew::{AppHandle, Context, Renderer};

/// A part with its properties, its type forgotten: all that is ever made for each part.
pub(super) trait Bound {
    fn kind(&self) -> TypeId;
    fn name(&self) -> &'static str;
    fn properties(&self) -> &dyn Any;
    fn is_told_the_same(&self, properties: &dyn Any) -> bool;
    fn draw(&self) -> Html;
}

struct Of<C: Component>(C::Props);

impl<C: Component> Bound for Of<C> {
    fn kind(&self) -> TypeId {
        TypeId::of::<C>()
    }

    fn name(&self) -> &'static str {
        type_name::<C>()
    }

    fn properties(&self) -> &dyn Any {
        &self.0
    }

    fn is_told_the_same(&self, properties: &dyn Any) -> bool {
        properties.downcast_ref::<C::Props>() == Some(&self.0)
    }

    fn draw(&self) -> Html {
        C::view(&self.0)
    }
}

pub(super) fn part<C: Component>(properties: C::Props) -> Html {
    Html::of(What::Part(Rc::new(Of::<C>(properties))))
}

/// What an instance is told: which part it is, and that part's properties.
#[derive(Clone, yew::Properties)]
pub struct Told {
    pub(super) bound: Rc<dyn Bound>,
}

impl PartialEq for Told {
    fn eq(&self, other: &Self) -> bool {
        Rc::ptr_eq(&self.bound, &other.bound)
            || self.bound.kind() == other.bound.kind()
                && self.bound.is_told_the_same(other.bound.properties())
    }
}

/// What an effect leaves behind, to be called before the next one or at the end.
pub(super) type Cleanup = Box<dyn FnOnce()>;

/// What the effect before has left behind, and whose it is.
pub(super) struct EffectCell {
    part: Weak<Memory>,
    cleanup: RefCell<Option<Cleanup>>,
}

impl EffectCell {
    pub fn of(part: Weak<Memory>) -> Self {
        Self {
            part,
            cleanup: RefCell::default(),
        }
    }

    pub fn part(&self) -> Option<Rc<Memory>> {
        self.part.upgrade()
    }

    fn become_new(&self, cleanup: Option<Cleanup>) {
        self.cleanup.replace(cleanup);
    }

    fn clean(&self) {
        let cleanup = self.cleanup.take();
        if let Some(cleanup) = cleanup {
            cleanup();
        }
    }
}

/// An effect that waits until all is drawn.
pub(super) struct Effect {
    pub cell: Rc<EffectCell>,
    pub run: Box<dyn FnOnce() -> Option<Cleanup>>,
}

/// What a part keeps between two drawings.
pub(super) struct Memory {
    scope: Scope<Instance>,
    /// What its hooks keep, in the order in which they are called.
    pub cells: RefCell<Vec<Rc<dyn Any>>>,
    pub effects: RefCell<Vec<Effect>>,
    is_stale: Cell<bool>,
    reads_shared: Cell<bool>,
}

impl Memory {
    /// It is drawn again soon.
    pub fn is_outdated(&self) {
        if !self.is_stale.replace(true) {
            self.scope.send_message(());
        }
    }
}

thread_local! {
    /// The part that is being drawn, and which of its hooks is next.
    static CURRENT: RefCell<Option<(Rc<Memory>, usize)>> = const { RefCell::new(None) };
    /// The parts that read what all share.
    static READERS: RefCell<Vec<Weak<Memory>>> = const { RefCell::new(Vec::new()) };
}

/// The one component of the page.
pub struct Instance(Rc<Memory>);

impl yew::Component for Instance {
    type Message = ();
    type Properties = Told;

    fn create(context: &Context<Self>) -> Self {
        Self(Rc::new(Memory {
            scope: context.link().clone(),
            cells: RefCell::default(),
            effects: RefCell::default(),
            is_stale: Cell::new(false),
            reads_shared: Cell::new(false),
        }))
    }

    fn view(&self, context: &Context<Self>) -> yew::Html {
        self.0.is_stale.set(false);
        let swap = |next| CURRENT.with_borrow_mut(|current| std::mem::replace(current, next));
        let before = swap(Some((Rc::clone(&self.0), 0)));
        let drawn = context.props().bound.draw();
        swap(before);
        super::tree::of(&drawn)
    }

    fn rendered(&mut self, _: &Context<Self>, _: bool) {
        for Effect { cell, run } in self.0.effects.take() {
            cell.clean();
            cell.become_new(run());
        }
    }

    fn destroy(&mut self, _: &Context<Self>) {
        // Nothing is drawn any more, whatever still holds on to it.
        self.0.is_stale.set(true);
        for cell in self.0.cells.take() {
            if let Ok(effect) = cell.downcast::<EffectCell>() {
                effect.clean();
            }
        }
    }
}

/// Draws a part in place of what stands in `root`.
pub fn mount<C: Component<Props = ()>>(root: Element) -> Option<AppHandle<Instance>> {
    let html = part::<C>(());
    let Some(What::Part(bound)) = html.what() else {
        return None;
    };
    let told = Told {
        bound: Rc::clone(bound),
    };
    Some(Renderer::<Instance>::with_root_and_props(root, told).render())
}

/// Goes on to the next hook of the part that is being drawn: what it kept before.
#[inline(never)]
pub(super) fn next_held() -> Option<Rc<dyn Any>> {
    CURRENT.with_borrow_mut(|current| {
        let (memory, next) = current.as_mut()?;
        let held = memory.cells.borrow().get(*next).cloned();
        *next += 1;
        held
    })
}

/// The part that is being drawn; outside of any there is none.
#[inline(never)]
pub(super) fn this_part() -> Weak<Memory> {
    CURRENT.with_borrow(|current| {
        current
            .as_ref()
            .map_or_else(Weak::new, |(memory, _)| Rc::downgrade(memory))
    })
}

/// Keeps the cell of the hook that was gone on to, in the place of what follows from there.
#[inline(never)]
pub(super) fn keep(cell: Rc<dyn Any>) {
    CURRENT.with_borrow(|current| {
        if let Some((memory, next)) = current {
            let mut cells = memory.cells.borrow_mut();
            cells.truncate(next - 1);
            cells.push(cell);
        }
    });
}

/// The part that is being drawn reads what all parts share, and is drawn again when it changes.
pub fn reads_shared() {
    CURRENT.with_borrow(|current| {
        if let Some((memory, _)) = current
            && !memory.reads_shared.replace(true)
        {
            READERS.with_borrow_mut(|readers| readers.push(Rc::downgrade(memory)));
        }
    });
}

/// What all parts share has changed: whoever reads it is drawn again.
pub fn shared_changed() {
    let mut readers = READERS.take();
    readers.retain(|reader| {
        let reader = reader.upgrade();
        if let Some(reader) = &reader {
            reader.is_outdated();
        }
        reader.is_some()
    });
    READERS.with_borrow_mut(|newer| {
        readers.append(newer);
        *newer = readers;
    });
}
