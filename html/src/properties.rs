//! The derivation of properties: a builder whose type knows what is still missing.

use proc_macro2::TokenStream;
use quote::{format_ident, quote};
use syn::{Data, DeriveInput, Expr, Fields};

/// The builder.
///
/// # Errors
/// It is no struct with named fields.
pub fn expand(input: &DeriveInput) -> syn::Result<TokenStream> {
    let Data::Struct(data) = &input.data else {
        return Err(syn::Error::new_spanned(input, "properties are a struct"));
    };
    let Fields::Named(fields) = &data.fields else {
        return Err(syn::Error::new_spanned(input, "properties have names"));
    };
    let (name, vis) = (&input.ident, &input.vis);
    let builder = format_ident!("{name}Builder");
    let names: Vec<_> = fields.named.iter().flat_map(|field| &field.ident).collect();
    let types: Vec<_> = fields.named.iter().map(|field| &field.ty).collect();
    let states: Vec<_> = (0..names.len()).map(|n| format_ident!("S{n}")).collect();
    let mut first_types = Vec::new();
    let mut first_values = Vec::new();
    for field in &fields.named {
        let ty = &field.ty;
        let of = |name: &str| field.attrs.iter().find(|each| each.path().is_ident(name));
        if let Some(usual) = of("prop_or") {
            let usual: Expr = usual.parse_args()?;
            first_types.push(quote!(crate::web::view::Given<#ty>));
            first_values.push(quote!(crate::web::view::Given(#usual)));
        } else if of("prop_or_default").is_some() {
            first_types.push(quote!(crate::web::view::Usual));
            first_values.push(quote!(crate::web::view::Usual));
        } else {
            first_types.push(quote!(crate::web::view::Missing));
            first_values.push(quote!(crate::web::view::Missing));
        }
    }
    let setters = (0..names.len()).map(|n| {
        let (field, ty) = (names[n], types[n]);
        let after = (0..names.len()).map(|m| {
            if m == n {
                quote!(crate::web::view::Given<#ty>)
            } else {
                let state = &states[m];
                quote!(#state)
            }
        });
        let kept = names.iter().enumerate().map(|(m, name)| {
            if m == n {
                quote!(#name: crate::web::view::Given(crate::web::view::IntoProp::into_prop(value)))
            } else {
                quote!(#name: self.#name)
            }
        });
        quote! {
            #[inline(always)]
            #vis fn #field(self, value: impl crate::web::view::IntoProp<#ty>) -> #builder<#(#after),*> {
                #builder { #(#kept),* }
            }
        }
    });
    Ok(quote! {
        #[doc(hidden)]
        #[allow(missing_docs)]
        #vis struct #builder<#(#states),*> {
            #(#names: #states),*
        }

        impl crate::web::view::Properties for #name {
            type Builder = #builder<#(#first_types),*>;

            #[inline(always)]
            fn builder() -> Self::Builder {
                #builder { #(#names: #first_values),* }
            }
        }

        #[allow(missing_docs, dead_code)]
        impl<#(#states),*> #builder<#(#states),*> {
            #(#setters)*
        }

        impl<#(#states: crate::web::view::State<#types>),*> crate::web::view::Whole<#name>
            for #builder<#(#states),*>
        {
            #[inline(always)]
            fn whole(self) -> #name {
                #name { #(#names: self.#names.value()),* }
            }
        }
    })
}
