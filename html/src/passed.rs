//! The derivation of `Passed`: one function that writes a value or reads it.

use proc_macro2::TokenStream;
use quote::{format_ident, quote};
use syn::{Data, DeriveInput, Fields, parse_quote};

/// The implementation for a struct or an enum.
///
/// # Errors
/// It is a union, or an enum without variants.
pub fn expand(input: &DeriveInput) -> syn::Result<TokenStream> {
    let (blank, pass) = match &input.data {
        Data::Struct(data) => {
            let blank = blank(&data.fields);
            let places = data.fields.members();
            (
                quote!(Self #blank),
                quote!(#(crate::plain::Passed::pass(&mut self.#places, wire);)*),
            )
        }
        Data::Enum(data) => {
            let Some(first) = data.variants.first() else {
                return Err(syn::Error::new_spanned(input, "it has no variant"));
            };
            let (first_name, first_blank) = (&first.ident, blank(&first.fields));
            let numbers: Vec<u64> = (0..data.variants.len() as u64).collect();
            let names: Vec<_> = data.variants.iter().map(|each| &each.ident).collect();
            let blanks = data.variants.iter().map(|each| blank(&each.fields));
            let parts = data.variants.iter().filter_map(|each| {
                let name = &each.ident;
                let held = each.fields.members();
                let values: Vec<_> = (0..each.fields.len()).map(|n| format_ident!("v{n}")).collect();
                (!values.is_empty()).then(|| {
                    quote!(Self::#name { #(#held: #values),* } => { #(crate::plain::Passed::pass(#values, wire);)* })
                })
            });
            let parts: Vec<_> = parts.collect();
            let held = (!parts.is_empty()).then(|| {
                quote! {
                    #[allow(clippy::match_wildcard_for_single_variants)]
                    match self {
                        #(#parts)*
                        #[allow(unreachable_patterns)]
                        _ => {}
                    }
                }
            });
            (
                quote!(Self::#first_name #first_blank),
                quote! {
                    let number = wire.word(match self { #(Self::#names { .. } => #numbers),* });
                    if wire.reads() {
                        *self = match number {
                            #(#numbers => Self::#names #blanks,)*
                            _ => {
                                wire.give_up();
                                return;
                            }
                        };
                    }
                    #held
                },
            )
        }
        Data::Union(_) => return Err(syn::Error::new_spanned(input, "a union cannot be passed")),
    };
    let name = &input.ident;
    let mut generics = input.generics.clone();
    for each in generics.type_params_mut() {
        each.bounds.push(parse_quote!(crate::plain::Passed));
    }
    let (bounded, types, clause) = generics.split_for_impl();
    Ok(quote! {
        impl #bounded crate::plain::Passed for #name #types #clause {
            fn blank() -> Self {
                #blank
            }

            fn pass(&mut self, wire: &mut crate::plain::Wire) {
                #pass
            }
        }
    })
}

/// The fields of a struct or variant, each with any value.
fn blank(fields: &Fields) -> TokenStream {
    let members = fields.members();
    quote!({ #(#members: crate::plain::Passed::blank()),* })
}
