//! A function as a part of the page.

use proc_macro2::{TokenStream, TokenTree};
use quote::{ToTokens, quote};
use syn::{FnArg, ItemFn, Pat, Type};

/// The part.
///
/// # Errors
/// The function is none of `fn Name(props: &Props) -> Html` and `fn Name() -> Html`.
pub fn expand(function: ItemFn) -> syn::Result<TokenStream> {
    let ItemFn {
        attrs,
        vis,
        sig,
        block,
    } = function;
    let name = &sig.ident;
    let (pattern, properties) = match sig.inputs.first() {
        None => (quote!(_), quote!(())),
        Some(FnArg::Typed(argument)) if sig.inputs.len() == 1 => match &*argument.ty {
            Type::Reference(reference) => {
                let Pat::Ident(pattern) = &*argument.pat else {
                    return Err(syn::Error::new_spanned(&argument.pat, "a name is expected"));
                };
                (pattern.to_token_stream(), reference.elem.to_token_stream())
            }
            other => return Err(syn::Error::new_spanned(other, "a reference is expected")),
        },
        Some(other) => {
            return Err(syn::Error::new_spanned(
                other,
                "a part takes its properties alone",
            ));
        }
    };
    // Without anything to keep, a call is enough.
    let node = (!keeps(block.to_token_stream())).then(|| {
        quote! {
            fn node(properties: Self::Props) -> crate::web::view::Html {
                Self::view(&properties)
            }
        }
    });
    Ok(quote! {
        #(#attrs)*
        #vis struct #name;

        impl crate::web::view::Component for #name {
            type Props = #properties;

            fn view(#pattern: &#properties) -> crate::web::view::Html #block

            #node
        }
    })
}

/// Whether a hook is used: any `use_…` but the page's state, which belongs to all.
fn keeps(body: TokenStream) -> bool {
    body.into_iter().any(|token| match token {
        TokenTree::Ident(name) => {
            let name = name.to_string();
            name.starts_with("use_") && name != "use_app"
        }
        TokenTree::Group(group) => keeps(group.stream()),
        _ => false,
    })
}
