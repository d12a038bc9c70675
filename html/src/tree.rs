//! What stands between the braces of `html!`, read.

use proc_macro2::TokenStream;
use quote::ToTokens;
use syn::ext::IdentExt;
use syn::parse::{Parse, ParseStream};
use syn::{Expr, Ident, Lit, LitStr, Path, Token, braced, token};

/// Everything between the braces.
pub struct Tree {
    pub children: Vec<Child>,
}

/// One thing among others.
pub enum Child {
    Text(LitStr),
    Expression(TokenStream),
    Each(Expr),
    If(If),
    Fragment(Vec<Child>),
    Element(Element),
    Part(Part),
}

/// One thing or another.
pub struct If {
    pub condition: Expr,
    pub then: Vec<Child>,
    pub otherwise: Vec<Child>,
}

/// An element.
pub struct Element {
    pub tag: Ident,
    pub attributes: Vec<Attribute>,
    pub children: Vec<Child>,
}

/// A part with its properties.
pub struct Part {
    pub path: Path,
    pub properties: Vec<Attribute>,
    pub children: Vec<Child>,
}

/// A name and its value.
pub struct Attribute {
    pub name: String,
    pub ident: Ident,
    pub value: Value,
}

/// A value: written down or computed.
pub enum Value {
    Fixed(Lit),
    Computed(TokenStream),
}

impl Parse for Tree {
    fn parse(input: ParseStream) -> syn::Result<Self> {
        let children = children(input)?;
        if !input.is_empty() {
            return Err(input.error("this closes what was not opened"));
        }
        Ok(Self { children })
    }
}

fn children(input: ParseStream) -> syn::Result<Vec<Child>> {
    let mut children = Vec::new();
    let at_end = |input: ParseStream| input.peek(Token![<]) && input.peek2(Token![/]);
    while !input.is_empty() && !at_end(input) {
        children.push(input.parse()?);
    }
    Ok(children)
}

fn braced_children(input: ParseStream) -> syn::Result<Vec<Child>> {
    let inner;
    braced!(inner in input);
    Ok(inner.parse::<Tree>()?.children)
}

impl Parse for Child {
    fn parse(input: ParseStream) -> syn::Result<Self> {
        if input.peek(Token![if]) {
            return input.parse().map(Self::If);
        }
        if input.peek(token::Brace) {
            let inner;
            braced!(inner in input);
            if inner.peek(Token![for]) {
                inner.parse::<Token![for]>()?;
                return inner.parse().map(Self::Each);
            }
            if inner.peek(LitStr) && inner.peek2(syn::parse::End) {
                return inner.parse().map(Self::Text);
            }
            return inner.parse().map(Self::Expression);
        }
        let open = input.parse::<Token![<]>()?;
        if input.peek(Token![>]) {
            input.parse::<Token![>]>()?;
            let children = children(input)?;
            input.parse::<Token![<]>()?;
            input.parse::<Token![/]>()?;
            input.parse::<Token![>]>()?;
            return Ok(Self::Fragment(children));
        }
        let path = Path::parse_mod_style(input)?;
        let mut attributes = Vec::new();
        while !input.peek(Token![>]) && !input.peek(Token![/]) {
            attributes.push(input.parse::<Attribute>()?);
        }
        let mut children_in = Vec::new();
        if input.peek(Token![/]) {
            input.parse::<Token![/]>()?;
            input.parse::<Token![>]>()?;
        } else {
            input.parse::<Token![>]>()?;
            children_in = children(input)?;
            if input.is_empty() {
                return Err(syn::Error::new(
                    open.span,
                    "this is opened and never closed",
                ));
            }
            input.parse::<Token![<]>()?;
            input.parse::<Token![/]>()?;
            let close = Path::parse_mod_style(input)?;
            input.parse::<Token![>]>()?;
            if close.to_token_stream().to_string() != path.to_token_stream().to_string() {
                return Err(syn::Error::new_spanned(
                    &close,
                    format!("this should close <{}>", path.to_token_stream()),
                ));
            }
        }
        let element = path
            .get_ident()
            .filter(|name| name.to_string().starts_with(|c: char| c.is_lowercase()));
        Ok(match element {
            Some(tag) => Self::Element(Element {
                tag: tag.clone(),
                attributes,
                children: children_in,
            }),
            None => Self::Part(Part {
                path,
                properties: attributes,
                children: children_in,
            }),
        })
    }
}

impl Parse for If {
    fn parse(input: ParseStream) -> syn::Result<Self> {
        input.parse::<Token![if]>()?;
        let condition = input.call(Expr::parse_without_eager_brace)?;
        let then = braced_children(input)?;
        let otherwise = if input.peek(Token![else]) {
            input.parse::<Token![else]>()?;
            if input.peek(Token![if]) {
                vec![Child::If(input.parse()?)]
            } else {
                braced_children(input)?
            }
        } else {
            Vec::new()
        };
        Ok(Self {
            condition,
            then,
            otherwise,
        })
    }
}

impl Parse for Attribute {
    fn parse(input: ParseStream) -> syn::Result<Self> {
        if input.peek(token::Brace) {
            let inner;
            braced!(inner in input);
            let ident: Ident = inner.parse()?;
            return Ok(Self {
                name: ident.to_string(),
                value: Value::Computed(ident.to_token_stream()),
                ident,
            });
        }
        let ident = Ident::parse_any(input)?;
        let mut name = ident.unraw().to_string();
        while input.peek(Token![-]) {
            input.parse::<Token![-]>()?;
            name.push('-');
            name.push_str(&Ident::parse_any(input)?.to_string());
        }
        input.parse::<Token![=]>()?;
        let value = if input.peek(token::Brace) {
            let inner;
            braced!(inner in input);
            let tokens: TokenStream = inner.parse()?;
            match syn::parse2::<LitStr>(tokens.clone()) {
                Ok(text) => Value::Fixed(Lit::Str(text)),
                Err(_) => Value::Computed(tokens),
            }
        } else {
            Value::Fixed(input.parse()?)
        };
        Ok(Self { name, ident, value })
    }
}
