//! How the page is drawn: templates with holes, parts with memory, and nothing else.
//!
//! The page travels to phones, so this is written for weight first.
//!
//! * `html!` makes one string of everything fixed in a block (the [`template`]) and one
//!   [`Html`] of every value that is computed. No code is made for the fixed part, and a change
//!   looks at the holes alone.
//! * An [`Html`] is one pointer, whatever it is: text, block, list, part, handler. The functions
//!   that make and compare them are not generic, so a page costs calls, not copies of machinery.
//! * A part that keeps something (hooks) is an [`part::Instance`]; its type is known to two
//!   small functions only, which draw it and compare its properties. A part that keeps nothing
//!   is called like a function.
//! * Handlers stand on their elements; one closure type serves every event.
//! * What changed is drawn once, after the event, parents first; effects run when all is drawn.

mod callback;
mod dom;
mod hooks;
mod node;
mod part;
mod template;
mod text;

pub use callback::{Callback, NodeRef, TargetCast};
pub use hooks::{
    UseStateHandle, UseStateSetter, use_callback, use_effect, use_effect_with, use_memo,
    use_mut_ref, use_node_ref, use_state, use_state_eq,
};
pub use node::{
    Component, Given, Html, IntoHandler, IntoHtml, IntoProp, Missing, Properties, State, Usual,
    Whole, attribute, bare, block, each, fixed, keyed, list, on, reference,
};
pub use part::{mount, reads_shared, shared_changed};
pub use text::{AttrValue, IntoText, add_class};

/// What a page or a part is written with.
pub mod prelude {
    pub use super::{
        AttrValue, Callback, Html, NodeRef, TargetCast, UseStateHandle, use_callback, use_effect,
        use_effect_with, use_memo, use_mut_ref, use_node_ref, use_state, use_state_eq,
    };
    pub use crate::classes;
    pub use scopewright_html::{Properties, component, html};
    pub use web_sys::{Event, FocusEvent, InputEvent, KeyboardEvent, MouseEvent, PointerEvent};
}

/// The names of an element's classes: words, and `Option`s of words.
#[macro_export]
macro_rules! classes {
    ($($name:expr),+ $(,)?) => {{
        let mut names = ::std::string::String::new();
        $($crate::web::view::add_class(
            &mut names,
            $crate::web::view::IntoText::into_text($name),
        );)+
        $crate::web::view::AttrValue::from(names)
    }};
}
