//! A silhouette as a small drawing beside words.

use crate::drawing::silhouette::{Figure, Tone};
use std::rc::Rc;
use yew::prelude::*;

/// What [`Silhouette`] is told.
#[derive(Properties, PartialEq)]
pub struct SilhouetteProps {
    /// What is drawn.
    pub figure: Rc<Figure>,
    /// Height of the drawing in px.
    pub height_px: f64,
    /// Pixels for a centimetre, so that several stand side by side at one scale; without it
    /// the figure fills the height.
    #[prop_or_default]
    pub px_per_cm: Option<f64>,
    /// Diameter of the aiming circle, drawn if given.
    #[prop_or_default]
    pub aiming_circle_cm: Option<f64>,
}

/// The class of a tone.
#[must_use]
pub fn tone_class(tone: Tone) -> &'static str {
    match tone {
        Tone::Dark => "tone-dark",
        Tone::Mid => "tone-mid",
        Tone::Light => "tone-light",
    }
}

/// A silhouette; decoration beside its name, so that it is hidden from screen readers.
#[component]
pub fn Silhouette(props: &SilhouetteProps) -> Html {
    let figure = &props.figure;
    let scale = props
        .px_per_cm
        .unwrap_or(props.height_px / figure.height_cm());
    let (width, height) = (figure.width_cm() * scale, figure.height_cm() * scale);
    let view_box = format!(
        "{:.2} {:.2} {:.2} {:.2}",
        figure.left_cm,
        figure.top_cm,
        figure.width_cm(),
        figure.height_cm()
    );
    html! {
        <svg class="silhouette" aria-hidden="true" viewBox={view_box}
            width={format!("{width:.1}")} height={format!("{height:.1}")}>
            { for figure.pieces.iter().map(|piece| html! {
                <path class={tone_class(piece.tone)} d={piece.path.clone()} />
            }) }
            if let Some(circle) = props.aiming_circle_cm {
                <circle class="silhouette__aim" r={format!("{:.2}", 0.5 * circle)}
                    fill="none" stroke-width={format!("{:.3}", 1.5 / scale)} />
            }
        </svg>
    }
}
