//! From the tree to one template and the values in its holes.

use crate::tree::{Attribute, Child, Element, If, Part, Value};
use proc_macro2::TokenStream;
use quote::{quote, quote_spanned};
use syn::spanned::Spanned;
use syn::{Expr, ExprMacro, Lit, LitStr};

// The marks of a template; `web/view/template.rs` reads them.
const OPEN: char = '\u{1}';
const ATTRIBUTE: char = '\u{2}';
const VALUE: char = '\u{3}';
const ATTRIBUTE_HOLE: char = '\u{4}';
const PROPERTY_HOLE: char = '\u{5}';
const EVENT_HOLE: char = '\u{6}';
const REF_HOLE: char = '\u{7}';
const TEXT: char = '\u{8}';
const CHILD_HOLE: char = '\u{e}';
const CLOSE: char = '\u{f}';
const SAID: char = '\u{10}';
const VALUE_SAID: char = '\u{11}';

/// Where the place of a message will stand: `web/view/template.rs` puts it there while compiling.
const PLACE: &str = "??";

/// The value of a whole block.
pub fn block(children: &[Child]) -> TokenStream {
    match children {
        [] => quote!(crate::web::view::Html::default()),
        [one] => child(one),
        several => {
            let several = several.iter().map(child);
            quote!(crate::web::view::list([#(#several),*]))
        }
    }
}

fn child(child: &Child) -> TokenStream {
    match child {
        Child::Text(text) => quote!(crate::web::view::fixed(#text)),
        Child::Expression(tokens) if tokens.is_empty() => {
            quote!(crate::web::view::Html::default())
        }
        Child::Expression(tokens) => {
            let value = computed(tokens);
            quote_spanned!(tokens.span()=> crate::web::view::IntoHtml::into_html(#value))
        }
        Child::Each(iterator) => {
            quote_spanned!(iterator.span()=> crate::web::view::each(#iterator))
        }
        Child::If(If {
            condition,
            then,
            otherwise,
        }) => {
            let (then, otherwise) = (block(then), block(otherwise));
            quote!(if #condition { #then } else { #otherwise })
        }
        Child::Fragment(children) => block(children),
        Child::Element(element) => outermost(element),
        Child::Part(part) => self::part(part),
    }
}

/// A template in the making.
#[derive(Default)]
struct Template {
    text: String,
    holes: Vec<TokenStream>,
    /// The places of the messages in it, in their order.
    places: Vec<TokenStream>,
}

/// The place of a message without values, if the expression is `t!("key")`.
fn message(tokens: &TokenStream) -> Option<TokenStream> {
    let Expr::Macro(ExprMacro { mac, .. }) = syn::parse2(tokens.clone()).ok()? else {
        return None;
    };
    let key: LitStr = mac.parse_body().ok()?;
    let path = &mac.path;
    path.is_ident("t").then(|| quote!(#path!(place #key)))
}

fn outermost(element: &Element) -> TokenStream {
    let mut template = Template::default();
    let mut key = None;
    template.element(element, Some(&mut key));
    let Template {
        text,
        holes,
        places,
    } = template;
    let text = if places.is_empty() {
        quote!(#text)
    } else {
        let bytes = syn::LitByteStr::new(text.as_bytes(), proc_macro2::Span::call_site());
        quote!(const { crate::web::view::text_of(&const { crate::web::view::with_places(*#bytes, [#(#places),*]) }) })
    };
    let block = quote!(crate::web::view::block(#text, [#(#holes),*]));
    keyed(block, key.as_ref())
}

fn keyed(html: TokenStream, key: Option<&TokenStream>) -> TokenStream {
    match key {
        Some(key) => {
            quote!(crate::web::view::keyed(crate::web::view::IntoText::into_text(#key), #html))
        }
        None => html,
    }
}

/// An expression, or a block of statements with one at its end.
fn computed(tokens: &TokenStream) -> TokenStream {
    match syn::parse2::<syn::Expr>(tokens.clone()) {
        Ok(_) => tokens.clone(),
        Err(_) => quote_spanned!(tokens.span()=> { #tokens }),
    }
}

fn written(value: &Value) -> TokenStream {
    match value {
        Value::Fixed(lit) => quote!(#lit),
        Value::Computed(tokens) => computed(tokens),
    }
}

/// The interface of an event.
fn event(name: &str) -> Option<&'static str> {
    Some(match name {
        "click" => "MouseEvent",
        "change" | "toggle" | "select" | "scroll" => "Event",
        "input" => "InputEvent",
        "focus" | "blur" => "FocusEvent",
        "keydown" | "keyup" => "KeyboardEvent",
        pointer if pointer.starts_with("pointer") => "PointerEvent",
        _ => return None,
    })
}

impl Template {
    fn hole(&mut self, mark: char, name: &str, value: TokenStream) {
        self.text.push(mark);
        self.text.push_str(name);
        self.holes.push(value);
    }

    fn element(&mut self, element: &Element, key: Option<&mut Option<TokenStream>>) {
        let tag = element.tag.to_string();
        self.text.push(OPEN);
        self.text.push_str(&tag);
        let mut key = key;
        // What is typed or ticked comes last: it depends on kind and bounds.
        let is_state = |attribute: &Attribute| {
            matches!(tag.as_str(), "input" | "textarea")
                && matches!(attribute.name.as_str(), "value" | "checked")
        };
        for attribute in element.attributes.iter().filter(|each| !is_state(each)) {
            match (attribute.name.as_str(), &mut key) {
                ("key", Some(key)) => **key = Some(written(&attribute.value)),
                ("key", None) => self.holes.push(
                    syn::Error::new(
                        attribute.ident.span(),
                        "a key stands on the outermost element of a block",
                    )
                    .into_compile_error(),
                ),
                _ => self.attribute(attribute),
            }
        }
        for attribute in element.attributes.iter().filter(|each| is_state(each)) {
            let value = match &attribute.value {
                Value::Fixed(Lit::Str(_)) => {
                    self.attribute(attribute);
                    continue;
                }
                value => written(value),
            };
            let span = attribute.ident.span();
            self.hole(
                PROPERTY_HOLE,
                &attribute.name,
                quote_spanned!(span=> crate::web::view::attribute(#value)),
            );
        }
        for child in &element.children {
            self.child(child);
        }
        self.text.push(CLOSE);
    }

    fn attribute(&mut self, attribute: &Attribute) {
        let span = attribute.ident.span();
        let name = attribute.name.as_str();
        if let Some(event_name) = name.strip_prefix("on") {
            let value = written(&attribute.value);
            let value = match event(event_name) {
                Some(interface) => {
                    let interface = syn::Ident::new(interface, span);
                    quote_spanned!(span=> crate::web::view::on::<::web_sys::#interface>(#value))
                }
                None => syn::Error::new(span, "html/src/element.rs does not know this event")
                    .into_compile_error(),
            };
            self.hole(EVENT_HOLE, event_name, value);
            return;
        }
        match (name, &attribute.value) {
            ("ref", value) => {
                let value = written(value);
                self.hole(
                    REF_HOLE,
                    "",
                    quote_spanned!(span=> crate::web::view::reference(#value)),
                );
            }
            (_, Value::Fixed(Lit::Str(text))) => self.fixed(name, &text.value()),
            (_, Value::Fixed(Lit::Bool(on))) => {
                if on.value {
                    self.fixed(name, "");
                }
            }
            (_, value) => {
                if let Value::Computed(tokens) = value
                    && let Some(place) = message(tokens)
                {
                    self.text.push(ATTRIBUTE);
                    self.text.push_str(name);
                    self.said(VALUE_SAID, place);
                    return;
                }
                let value = written(value);
                self.hole(
                    ATTRIBUTE_HOLE,
                    name,
                    quote_spanned!(span=> crate::web::view::attribute(#value)),
                );
            }
        }
    }

    fn said(&mut self, mark: char, place: TokenStream) {
        self.text.push(mark);
        self.text.push_str(PLACE);
        self.places.push(place);
    }

    fn fixed(&mut self, name: &str, value: &str) {
        self.text.push(ATTRIBUTE);
        self.text.push_str(name);
        self.text.push(VALUE);
        self.text.push_str(value);
    }

    fn child(&mut self, child: &Child) {
        match child {
            Child::Text(text) => {
                self.text.push(TEXT);
                self.text.push_str(&text.value());
            }
            Child::Element(element) => self.element(element, None),
            Child::Fragment(children) => {
                for child in children {
                    self.child(child);
                }
            }
            Child::Expression(tokens) if tokens.is_empty() => {}
            other => {
                if let Child::Expression(tokens) = other
                    && let Some(place) = message(tokens)
                {
                    self.said(SAID, place);
                    return;
                }
                let value = self::child(other);
                self.hole(CHILD_HOLE, "", value);
            }
        }
    }
}

fn part(part: &Part) -> TokenStream {
    let path = &part.path;
    let mut key = None;
    let mut setters = Vec::new();
    for property in &part.properties {
        let value = written(&property.value);
        if property.name == "key" {
            key = Some(value);
            continue;
        }
        let name = &property.ident;
        setters.push(quote_spanned!(name.span()=> .#name(#value)));
    }
    if !part.children.is_empty() {
        let children = block(&part.children);
        setters.push(quote!(.children(#children)));
    }
    if setters.is_empty() {
        return keyed(quote!(crate::web::view::bare::<#path>()), key.as_ref());
    }
    let html = quote_spanned!(path.span()=> {
        let properties = <<#path as crate::web::view::Component>::Props
            as crate::web::view::Properties>::builder() #(#setters)*;
        <#path as crate::web::view::Component>::node(crate::web::view::Whole::whole(properties))
    });
    keyed(html, key.as_ref())
}
