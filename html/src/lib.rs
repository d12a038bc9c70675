//! What the page's parts are written with: [`html!`], [`macro@component`] and the derivation of
//! properties. They expand to calls into `crate::web::view`; why it is done so stands there.
//! And the derivation of what passes between the page and its worker.

mod component;
mod element;
mod passed;
mod properties;
mod tree;

use proc_macro::TokenStream;
use syn::parse_macro_input;

/// A block of HTML.
///
/// What is fixed in it becomes one string, the template; what is computed becomes a list of
/// values, one for each hole. So a page is a string and a few calls.
///
/// * `<p class="a" id={id}>..</p>`, `<br />`, `<>..</>`: elements and fragments;
/// * `<Part name={value} />`: parts, with their properties; `{name}` for `name={name}`;
/// * `{ expression }`, `{ for iterator }`, `if .. {..} else {..}`, `if let ..`;
/// * `key={..}` on the outermost element or on a part, `ref={node}` on any element.
#[proc_macro]
pub fn html(input: TokenStream) -> TokenStream {
    let tree = parse_macro_input!(input as tree::Tree);
    element::block(&tree.children).into()
}

/// A part of the page from a function `fn Name(props: &Props) -> Html` or `fn Name() -> Html`.
///
/// A part whose body uses hooks keeps something between two drawings, and is an instance of its
/// own. One without is called like any function.
#[proc_macro_attribute]
pub fn component(_: TokenStream, input: TokenStream) -> TokenStream {
    component::expand(parse_macro_input!(input as syn::ItemFn))
        .unwrap_or_else(syn::Error::into_compile_error)
        .into()
}

/// The properties of a part: what is neither given nor has a usual value does not compile.
///
/// `#[prop_or_default]` and `#[prop_or(value)]` name the usual value of a field.
#[proc_macro_derive(Properties, attributes(prop_or_default, prop_or))]
pub fn properties(input: TokenStream) -> TokenStream {
    properties::expand(&parse_macro_input!(input as syn::DeriveInput))
        .unwrap_or_else(syn::Error::into_compile_error)
        .into()
}

/// A value that can be passed to another instance of the module (`crate::plain::Passed`).
#[proc_macro_derive(Passed)]
pub fn passed(input: TokenStream) -> TokenStream {
    passed::expand(&parse_macro_input!(input as syn::DeriveInput))
        .unwrap_or_else(syn::Error::into_compile_error)
        .into()
}
