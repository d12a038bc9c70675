//! Parts that keep something, and when they are drawn.

use super::dom::Live;
use super::node::{Component, Html, What};
use std::any::{Any, TypeId};
use std::cell::{Cell, RefCell};
use std::rc::{Rc, Weak};
use web_sys::{Document, Element, Node, Text};

/// A part with its properties, its type forgotten: all that is ever made for each part.
pub(super) trait Bound {
    fn kind(&self) -> TypeId;
    fn properties(&self) -> &dyn Any;
    fn is_told_the_same(&self, properties: &dyn Any) -> bool;
    fn draw(&self) -> Html;
}

struct Of<C: Component>(C::Props);

impl<C: Component> Bound for Of<C> {
    fn kind(&self) -> TypeId {
        TypeId::of::<C>()
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
    Html::of(What::Part(Box::new(Of::<C>(properties))))
}

/// What an effect leaves behind, to be called before the next one or at the end.
pub(super) type Cleanup = Box<dyn FnOnce()>;

/// A part on the page.
pub(super) struct Instance {
    /// Counts up: a part is older than what it shows.
    id: u32,
    /// What it is and was told last.
    html: RefCell<Html>,
    /// What its hooks keep, in the order in which they are called.
    pub cells: RefCell<Vec<Rc<dyn Any>>>,
    live: RefCell<Live>,
    /// An empty text behind what it shows: its place, whatever that is.
    end: Text,
    is_stale: Cell<bool>,
    pub is_gone: Cell<bool>,
    reads_shared: Cell<bool>,
}

/// An effect that waits until all is drawn.
pub(super) struct Effect {
    pub of: Rc<Instance>,
    pub cell: Rc<EffectCell>,
    pub run: Box<dyn FnOnce() -> Option<Cleanup>>,
}

/// What the effect before has left behind.
#[derive(Default)]
pub(super) struct EffectCell(RefCell<Option<Cleanup>>);

impl EffectCell {
    fn clean(&self) {
        let cleanup = self.0.borrow_mut().take();
        if let Some(cleanup) = cleanup {
            cleanup();
        }
    }
}

#[derive(Default)]
struct Page {
    document: Option<Document>,
    newest: u32,
    /// The part that is being drawn, and which of its hooks is next.
    current: Option<(Rc<Instance>, usize)>,
    stale: Vec<Rc<Instance>>,
    effects: Vec<Effect>,
    readers: Vec<Weak<Instance>>,
    is_waiting: bool,
}

thread_local! {
    static PAGE: RefCell<Page> = RefCell::default();
}

/// The document that the page stands in.
pub(super) fn document() -> Option<Document> {
    PAGE.with_borrow(|page| page.document.clone())
}

/// Draws a part in place of what stands in `root`.
pub fn mount<C: Component<Props = ()>>(root: &Element) {
    let root: &Node = root;
    PAGE.with_borrow_mut(|page| page.document = root.owner_document());
    root.set_text_content(None);
    let mut live = Live::default();
    live.become_new(part::<C>(()), root, None);
    // It stays as long as the page does.
    std::mem::forget(live);
    wait();
}

/// The hook that is next in the part that is being drawn.
pub(super) fn next_hook() -> Option<(Rc<Instance>, usize)> {
    PAGE.with_borrow_mut(|page| {
        let (instance, at) = page.current.as_mut()?;
        let here = (Rc::clone(instance), *at);
        *at += 1;
        Some(here)
    })
}

/// An effect waits until all is drawn.
pub(super) fn after_drawing(effect: Effect) {
    PAGE.with_borrow_mut(|page| page.effects.push(effect));
    wait();
}

/// The part that is being drawn reads what all parts share, and is drawn again when it changes.
pub fn reads_shared() {
    PAGE.with_borrow_mut(|page| {
        if let Some((instance, _)) = &page.current
            && !instance.reads_shared.replace(true)
        {
            let reader = Rc::downgrade(instance);
            page.readers.push(reader);
        }
    });
}

/// What all parts share has changed: whoever reads it is drawn again.
pub fn shared_changed() {
    let mut readers = PAGE.with_borrow_mut(|page| std::mem::take(&mut page.readers));
    readers.retain(|reader| {
        let reader = reader.upgrade();
        if let Some(reader) = &reader {
            reader.is_outdated();
        }
        reader.is_some_and(|reader| !reader.is_gone.get())
    });
    PAGE.with_borrow_mut(|page| page.readers.append(&mut readers));
}

/// Draws and acts soon, once what happens now is over.
fn wait() {
    if !PAGE.with_borrow_mut(|page| std::mem::replace(&mut page.is_waiting, true)) {
        wasm_bindgen_futures::spawn_local(async { settle() });
    }
}

fn settle() {
    loop {
        let mut stale = PAGE.with_borrow_mut(|page| std::mem::take(&mut page.stale));
        // The older first: they may draw the younger anew, or do without them.
        crate::plain::sort_by_key(&mut stale, |instance| instance.id);
        for instance in &stale {
            if instance.is_stale.get() {
                instance.draw();
            }
        }
        let effects = PAGE.with_borrow_mut(|page| {
            if stale.is_empty() && page.effects.is_empty() {
                page.is_waiting = false;
            }
            std::mem::take(&mut page.effects)
        });
        if stale.is_empty() && effects.is_empty() {
            return;
        }
        for effect in effects {
            if effect.of.is_gone.get() {
                continue;
            }
            effect.cell.clean();
            let cleanup = (effect.run)();
            *effect.cell.0.borrow_mut() = cleanup;
        }
    }
}

impl Instance {
    /// Puts a part on the page.
    pub fn new(html: Html, parent: &Node, before: Option<&Node>) -> Option<Rc<Self>> {
        let end = document()?.create_text_node("");
        super::dom::place(&end, parent, before);
        let id = PAGE.with_borrow_mut(|page| {
            page.newest += 1;
            page.newest
        });
        let instance = Rc::new(Self {
            id,
            html: RefCell::new(html),
            cells: RefCell::default(),
            live: RefCell::default(),
            end,
            is_stale: Cell::new(false),
            is_gone: Cell::new(false),
            reads_shared: Cell::new(false),
        });
        instance.draw();
        Some(instance)
    }

    /// It is drawn again soon.
    pub fn is_outdated(self: &Rc<Self>) {
        if !self.is_gone.get() && !self.is_stale.replace(true) {
            PAGE.with_borrow_mut(|page| page.stale.push(Rc::clone(self)));
            wait();
        }
    }

    fn draw(self: &Rc<Self>) {
        self.is_stale.set(false);
        if self.is_gone.get() {
            return;
        }
        let html = self.html.borrow().clone();
        let Some(What::Part(bound)) = html.what() else {
            return;
        };
        let swap = |next| PAGE.with_borrow_mut(|page| std::mem::replace(&mut page.current, next));
        let before = swap(Some((Rc::clone(self), 0)));
        let drawn = bound.draw();
        swap(before);
        if let Some(parent) = self.end.parent_node() {
            let mut live = self.live.take();
            live.become_new(drawn, &parent, Some(&self.end));
            self.live.replace(live);
        }
    }

    /// Tells it anew, and draws it if that makes a difference.
    pub fn tell(self: &Rc<Self>, html: &Html) {
        let is_same = match (self.html.borrow().what(), html.what()) {
            (Some(What::Part(old)), Some(What::Part(new))) => {
                old.is_told_the_same(new.properties())
            }
            _ => false,
        };
        if !is_same {
            self.html.replace(html.clone());
        }
        if !is_same || self.is_stale.get() {
            self.draw();
        }
    }

    /// It ends: its effects clean up, and so do the parts it shows.
    pub fn close(&self) {
        self.is_gone.set(true);
        self.live.borrow().close();
        for cell in self.cells.take() {
            if let Ok(effect) = cell.downcast::<EffectCell>() {
                effect.clean();
            }
        }
    }

    /// Takes what it shows off the page.
    pub fn detach(&self) {
        self.live.borrow().detach();
        super::dom::take_off(&self.end);
    }

    /// Puts what it shows before something else.
    pub fn put_before(&self, parent: &Node, before: Option<&Node>) {
        self.live.borrow().put_before(parent, before);
        super::dom::place(&self.end, parent, before);
    }

    /// The first node of what it shows.
    pub fn first(&self) -> Node {
        self.live
            .borrow()
            .first()
            .unwrap_or_else(|| self.end.clone().into())
    }
}
