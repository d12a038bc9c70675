//! How the page is drawn: Yew, with templates and one component over it.
//!
//! The page travels to phones, so this is written for weight first. Yew does the work: it keeps
//! components, compares and changes the page, delivers events, and schedules. Only what it would
//! make anew for every block and every part stands here, once:
//!
//! * `html!` makes one string of everything fixed in a block (the `template`) and one
//!   [`Html`] of every value that is computed. No code is made for the fixed part.
//! * An [`Html`] is one pointer, whatever it is: text, block, list, part, handler. The functions
//!   that make it are not generic, so a page costs calls, not copies of machinery; `tree`
//!   turns it into Yew's virtual DOM.
//! * A part that keeps something (hooks) is told to the one Yew component, `part::Instance`;
//!   its type is known to two small functions only, which draw it and compare its properties. A
//!   part that keeps nothing is called like a function.

mod hooks;
mod node;
mod part;
mod template;
mod text;
mod tree;

pub use hooks::{
    UseStateHandle, UseStateSetter, use_callback, use_effect, use_effect_with, use_memo,
    use_mut_ref, use_node_ref, use_state, use_state_eq,
};
pub use node::{
    Component, Given, Html, IntoHandler, IntoHtml, IntoProp, Missing, Properties, State, Usual,
    Whole, attribute, bare, block, each, fixed, keyed, list, on, reference,
};
pub use part::{mount, reads_shared, shared_changed};
pub use template::{text_of, with_places};
pub use text::{IntoText, add_class};
pub use yew::{AttrValue, Callback, NodeRef, TargetCast};

/// What a page or a part is written with.
pub mod prelude {
    pub use super::{
        AttrValue, Callback, Html, NodeRef, TargetCast, UseStateHandle, use_callback, use_effect,
        use_effect_with, use_memo, use_mut_ref, use_node_ref, use_state, use_state_eq,
    };
    pub use crate::plain::{fixed, shortest};
    pub use crate::{classes, filled};
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
