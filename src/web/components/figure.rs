//! An animal or a target, drawn to a stated scale.

use crate::drawing::{self, silhouette::Figure, silhouette::Tone};
use crate::need::quarry::What;
use crate::web::view::prelude::*;

/// The drawing of an animal or a target; none where there is none.
#[must_use]
pub fn figure_of(what: What) -> Option<Figure> {
    match what {
        What::Animal(row) => drawing::silhouette::silhouette(
            row.key,
            row.shoulder_height_mm.map(|mm| mm / 10.0),
            row.body_length_mm / 10.0,
        ),
        What::Target(row) => drawing::target::of_key(row.key).map(drawing::target::figure),
    }
}

/// What to draw.
#[derive(Properties, PartialEq)]
pub struct Props {
    /// The animal or target, by its key.
    pub what: AttrValue,
    /// Height of the drawing in px.
    pub height_px: f64,
    /// Pixels a centimetre; none: as large as the height allows.
    #[prop_or_default]
    pub px_per_cm: Option<f64>,
}

/// The drawing alone: what it shows is said beside it.
#[component]
pub fn FigureDrawing(props: &Props) -> Html {
    let Some(figure) = What::from_key(&props.what).and_then(figure_of) else {
        return Html::default();
    };
    let (width_cm, height_cm) = (figure.width_cm().max(1.0), figure.height_cm().max(1.0));
    let px_per_cm = props
        .px_per_cm
        .unwrap_or_else(|| (props.height_px / height_cm).min(props.height_px * 1.7 / width_cm));
    let (width_px, height_px) = (width_cm * px_per_cm, height_cm * px_per_cm);
    let view = filled!(
        "{.1} {.1} {.1} {.1}",
        figure.left_cm,
        figure.top_cm,
        width_cm,
        height_cm
    );
    html! {
        <svg class="figure" width={fixed(width_px, 1)} height={fixed(height_px, 1)} viewBox={view} aria-hidden="true">
            { for figure.pieces.iter().map(|piece| html! {
                <path d={piece.path.clone()} class={match piece.tone {
                    Tone::Dark => "figure__dark",
                    Tone::Mid => "figure__mid",
                    Tone::Light => "figure__light",
                }} />
            }) }
        </svg>
    }
}
