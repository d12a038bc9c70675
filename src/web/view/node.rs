//! What is drawn, as one pointer whatever it is.

use super::part::Bound;
use super::text::IntoText;
use std::rc::Rc;
use wasm_bindgen::JsCast;
use web_sys::Event;
use yew::{AttrValue, Callback, NodeRef};

/// Something drawn, or nothing.
#[derive(Clone, Default)]
pub struct Html(pub(super) Option<Rc<Node>>);

/// What is drawn, and by which key it is known among its neighbours.
pub(super) struct Node {
    pub key: Option<AttrValue>,
    pub what: What,
}

/// The kinds of it; the last two stand in holes of elements only.
pub(super) enum What {
    Text(AttrValue),
    Block(&'static str, Vec<Html>),
    List(Vec<Html>),
    Part(Rc<dyn Bound>),
    On(Handler),
    Ref(NodeRef),
}

/// What an event calls.
pub type Handler = Rc<dyn Fn(Event)>;

impl Html {
    #[inline(never)]
    pub(super) fn of(what: What) -> Self {
        Self(Some(Rc::new(Node { key: None, what })))
    }

    pub(super) fn what(&self) -> Option<&What> {
        self.0.as_ref().map(|node| &node.what)
    }

    pub(super) fn key(&self) -> Option<&AttrValue> {
        self.0.as_ref()?.key.as_ref()
    }

    pub(super) fn text(&self) -> Option<&AttrValue> {
        match self.what() {
            Some(What::Text(text)) => Some(text),
            _ => None,
        }
    }
}

/// The same drawing, not an equal one: to look into it would cost more than to compare its
/// holes with what stands on the page.
impl PartialEq for Html {
    fn eq(&self, other: &Self) -> bool {
        match (&self.0, &other.0) {
            (Some(one), Some(other)) => Rc::ptr_eq(one, other),
            (None, None) => true,
            _ => false,
        }
    }
}

/// An element with everything in it: its template and what goes into the holes.
///
/// The values come on the stack, where they cost a store each; only `block_of` allocates.
#[inline(always)]
#[must_use]
pub fn block<const N: usize>(template: &'static str, mut holes: [Html; N]) -> Html {
    let html = block_of(template, &mut holes);
    // All were taken: there is nothing left to drop, and no code for it.
    std::mem::forget(holes);
    html
}

#[inline(never)]
fn block_of(template: &'static str, holes: &mut [Html]) -> Html {
    Html::of(What::Block(template, taken(holes)))
}

/// Several things in a row.
#[inline(always)]
#[must_use]
pub fn list<const N: usize>(mut items: [Html; N]) -> Html {
    let html = list_of(&mut items);
    std::mem::forget(items);
    html
}

#[inline(never)]
fn list_of(items: &mut [Html]) -> Html {
    Html::of(What::List(taken(items)))
}

fn taken(from: &mut [Html]) -> Vec<Html> {
    let mut to = Vec::with_capacity(from.len());
    for html in from {
        to.push(std::mem::take(html));
    }
    to
}

/// Everything an iterator gives, in a row.
pub fn each<I: IntoIterator<Item: IntoHtml>>(items: I) -> Html {
    let mut drawn = Vec::new();
    for item in items {
        add(&mut drawn, item.into_html());
    }
    row(drawn)
}

#[inline(never)]
fn add(drawn: &mut Vec<Html>, html: Html) {
    drawn.push(html);
}

#[inline(never)]
fn row(items: Vec<Html>) -> Html {
    Html::of(What::List(items))
}

/// Text as it is written down.
#[inline(never)]
#[must_use]
pub fn fixed(text: &'static str) -> Html {
    Html::of(What::Text(AttrValue::Static(text)))
}

/// The same, known by a key among its neighbours.
#[inline(never)]
#[must_use]
pub fn keyed(key: Option<AttrValue>, mut html: Html) -> Html {
    match html.0.as_mut().and_then(Rc::get_mut) {
        Some(node) if node.key.is_none() => {
            node.key = key;
            html
        }
        _ => Html(Some(Rc::new(Node {
            key,
            what: What::List(vec![html]),
        }))),
    }
}

#[inline(never)]
fn text(text: Option<AttrValue>) -> Html {
    text.map_or_else(Html::default, |text| Html::of(What::Text(text)))
}

/// The value of an attribute.
pub fn attribute(value: impl IntoText) -> Html {
    text(value.into_text())
}

/// What an event calls.
pub fn on<E: JsCast + 'static>(handler: impl IntoHandler<E>) -> Html {
    handler
        .into_handler()
        .map_or_else(Html::default, |callback| {
            Html::of(What::On(Rc::new(move |event: Event| {
                callback.emit(event.unchecked_into());
            })))
        })
}

/// Where to remember the element.
#[must_use]
pub fn reference(node: NodeRef) -> Html {
    Html::of(What::Ref(node))
}

/// What can handle an event.
pub trait IntoHandler<E> {
    /// The callback, if there is one.
    fn into_handler(self) -> Option<Callback<E>>;
}

impl<E> IntoHandler<E> for Callback<E> {
    fn into_handler(self) -> Option<Callback<E>> {
        Some(self)
    }
}

impl<E> IntoHandler<E> for Option<Callback<E>> {
    fn into_handler(self) -> Option<Callback<E>> {
        self
    }
}

/// What can stand between elements.
pub trait IntoHtml {
    /// It, drawn.
    fn into_html(self) -> Html;
}

impl IntoHtml for Html {
    fn into_html(self) -> Html {
        self
    }
}

impl IntoHtml for &Html {
    fn into_html(self) -> Html {
        self.clone()
    }
}

impl IntoHtml for AttrValue {
    fn into_html(self) -> Html {
        text(Some(self))
    }
}

impl IntoHtml for &AttrValue {
    fn into_html(self) -> Html {
        text(Some(self.clone()))
    }
}

impl IntoHtml for String {
    #[inline(never)]
    fn into_html(self) -> Html {
        text(Some(self.into()))
    }
}

impl IntoHtml for &String {
    #[inline(never)]
    fn into_html(self) -> Html {
        text(Some(self.clone().into()))
    }
}

impl IntoHtml for &str {
    #[inline(never)]
    fn into_html(self) -> Html {
        text(Some(AttrValue::Rc(self.into())))
    }
}

impl<T: IntoHtml> IntoHtml for Option<T> {
    fn into_html(self) -> Html {
        self.map_or_else(Html::default, T::into_html)
    }
}

impl<T: IntoHtml> IntoHtml for Vec<T> {
    fn into_html(self) -> Html {
        each(self)
    }
}

/// A part of the page.
pub trait Component: Sized + 'static {
    /// What it is told.
    type Props: PartialEq + 'static;

    /// What it shows.
    fn view(properties: &Self::Props) -> Html;

    /// It, to be drawn at its place.
    fn node(properties: Self::Props) -> Html {
        super::part::part::<Self>(properties)
    }
}

/// A part that is told nothing but what is usual.
#[must_use]
pub fn bare<C: Component>() -> Html
where
    C::Props: Properties<Builder: Whole<C::Props>>,
{
    C::node(C::Props::builder().whole())
}

/// What a part is told, given one by one.
pub trait Properties {
    /// What was given so far.
    type Builder;

    /// Nothing was given yet.
    fn builder() -> Self::Builder;
}

impl Properties for () {
    type Builder = ();

    fn builder() {}
}

/// Everything that a part must be told was given.
#[diagnostic::on_unimplemented(message = "a property without a usual value is missing")]
pub trait Whole<P> {
    /// The properties.
    fn whole(self) -> P;
}

impl Whole<()> for () {
    fn whole(self) {}
}

/// A property that was given.
pub struct Given<T>(pub T);
/// A property that has a usual value and was not given.
pub struct Usual;
/// A property that has to be given and was not.
pub struct Missing;

/// How far a property is.
#[diagnostic::on_unimplemented(message = "a property of type `{T}` is missing")]
pub trait State<T> {
    /// Its value.
    fn value(self) -> T;
}

impl<T> State<T> for Given<T> {
    #[inline(always)]
    fn value(self) -> T {
        self.0
    }
}

impl<T: Default> State<T> for Usual {
    #[inline(always)]
    fn value(self) -> T {
        T::default()
    }
}

/// What a property can be given as.
pub trait IntoProp<T> {
    /// The property's value.
    fn into_prop(self) -> T;
}

impl<T> IntoProp<T> for T {
    #[inline(always)]
    fn into_prop(self) -> T {
        self
    }
}

impl<T> IntoProp<Option<T>> for T {
    #[inline(always)]
    fn into_prop(self) -> Option<T> {
        Some(self)
    }
}

macro_rules! text_props {
    ($($from:ty),+) => {$(
        impl IntoProp<AttrValue> for $from {
            fn into_prop(self) -> AttrValue {
                self.into_text().unwrap_or_default()
            }
        }

        impl IntoProp<Option<AttrValue>> for $from {
            fn into_prop(self) -> Option<AttrValue> {
                self.into_text()
            }
        }
    )+};
}

text_props!(&'static str, String, &String);

impl IntoProp<AttrValue> for &AttrValue {
    fn into_prop(self) -> AttrValue {
        self.clone()
    }
}
