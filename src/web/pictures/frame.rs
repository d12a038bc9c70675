//! What stands round every picture: its scale, what it leaves out, where it comes from, and a
//! way to keep it.

use super::keep::keep_drawings;
use crate::t;
use crate::web::components::explained;
use crate::web::view::prelude::*;
use web_sys::Element;

/// What [`Frame`] is told.
#[derive(Properties, PartialEq)]
pub struct FrameProps {
    /// The name of the picture, a section title.
    pub title: AttrValue,
    /// The scale of the picture in words.
    pub scale: AttrValue,
    /// What the picture leaves out.
    pub leaves_out: AttrValue,
    /// Formula, source, validity, a paragraph each.
    pub sources: Vec<AttrValue>,
    /// File name for a kept picture, without ending.
    pub file: AttrValue,
    /// The picture and its handles.
    pub children: Html,
}

/// A picture in its frame.
#[component]
pub fn Frame(props: &FrameProps) -> Html {
    let node = use_node_ref();
    let keep = |png: bool| {
        let (node, file) = (node.clone(), props.file.clone());
        Callback::from(move |_: MouseEvent| {
            if let Some(frame) = node.cast::<Element>() {
                keep_drawings(&frame, &file, png);
            }
        })
    };
    html! {
        <section class="picture" ref={node.clone()}>
            <h2 class="picture__title">{ props.title.clone() }</h2>
            { props.children.clone() }
            if !props.scale.is_empty() {
                <p class="picture__scale">{ explained(props.scale.clone()) }</p>
            }
            <div class="picture__foot">
                <details class="picture__source">
                    <summary>{ t!("picture-where-from") }</summary>
                    <p>{ explained(props.leaves_out.clone()) }</p>
                    { for props.sources.iter().map(|said| html! { <p>{ explained(said.clone()) }</p> }) }
                </details>
                <span class="picture__keep">
                    <button type="button" onclick={keep(false)}>{ t!("picture-keep-svg") }</button>
                    <button type="button" onclick={keep(true)}>{ t!("picture-keep-png") }</button>
                </span>
            </div>
        </section>
    }
}
