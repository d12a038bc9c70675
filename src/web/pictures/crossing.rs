//! The field and a moving animal: how long it stays in the picture, and how far ahead to hold.

use super::frame::Frame;
use super::slider::{Scale, Slider};
use crate::drawing::silhouette::{Figure, Tone};
use crate::need::answers::Units;
use crate::sight::field::field_at_range_m;
use crate::t;
use crate::web::view::prelude::*;
use crate::wording::{cm, field, number, range};
use std::rc::Rc;

/// A field that is shown.
#[derive(Clone, Debug, PartialEq)]
pub struct ShownField {
    /// Its name, as in "your pick at 2.5×".
    pub name: AttrValue,
    /// Apparent field (full angle) in degrees.
    pub apparent_deg: f64,
    /// Magnification.
    pub magnification: f64,
}

/// What [`Crossing`] is told.
#[derive(Properties, PartialEq)]
pub struct CrossingProps {
    /// The animal.
    pub figure: Rc<Figure>,
    /// Its length in m.
    pub length_m: f64,
    /// Its speed in m/s.
    pub run_m_s: f64,
    /// One or two fields, the pick's first.
    pub fields: Vec<ShownField>,
    /// Time of flight in s over range in m, rising.
    pub flight_s: Rc<Vec<(f64, f64)>>,
    /// Nearest, first and farthest range in m.
    pub ranges_m: (f64, f64, f64),
    /// Units of the words.
    #[prop_or_default]
    pub units: Units,
}

const WIDTH_PX: f64 = 328.0;
const HEIGHT_PX: f64 = 200.0;

/// The value of a rising table at `x`, linear between its rows, held at its ends.
#[must_use]
pub fn between(table: &[(f64, f64)], x: f64) -> f64 {
    let Some(&(first_x, first_y)) = table.first() else {
        return 0.0;
    };
    if x <= first_x {
        return first_y;
    }
    table.windows(2).find(|pair| x <= pair[1].0).map_or_else(
        || table.last().map_or(0.0, |row| row.1),
        |pair| {
            let ((x0, y0), (x1, y1)) = (pair[0], pair[1]);
            y0 + (x - x0) / (x1 - x0) * (y1 - y0)
        },
    )
}

/// Two fields over a moving animal.
#[component]
pub fn Crossing(props: &CrossingProps) -> Html {
    let (near, first, far) = props.ranges_m;
    let at = use_state_eq(|| first);
    let share = use_state_eq(|| 50.0);
    let on_range = use_callback(at.setter(), |to: f64, set| set.set(to));
    let on_share = use_callback(share.setter(), |to: f64, set| set.set(to));
    let spoken_range = use_callback(props.units, |to: f64, units| range(*units, to));
    let widths: Vec<f64> = props
        .fields
        .iter()
        .map(|field| field_at_range_m(field.apparent_deg, field.magnification, *at))
        .collect();
    let widest = widths.iter().copied().fold(0.1, f64::max);
    let crossing_s = widest / props.run_m_s.max(0.1);
    let spoken_time = use_callback(crossing_s, |to: f64, crossing: &f64| {
        t!(
            "crossing-seconds",
            seconds = number(0.01 * to * crossing, 2)
        )
    });
    let px_per_m = (WIDTH_PX - 8.0) / widest;
    let x_m = widest * (0.01 * *share - 0.5);
    let (cx, cy) = (0.5 * WIDTH_PX, 0.5 * HEIGHT_PX);
    let flight_s = between(&props.flight_s, *at);
    let lead_m = props.run_m_s * flight_s;
    let swing_deg_s = props.run_m_s / *at * 180.0 / core::f64::consts::PI;
    let (aim_px, lead_px) = (cx + x_m * px_per_m, lead_m * px_per_m);
    let seconds: Vec<String> = props
        .fields
        .iter()
        .zip(&widths)
        .map(|(shown, width)| {
            t!(
                "crossing-field",
                name = shown.name.to_string(),
                width = field(props.units, *width),
                seconds = number(width / props.run_m_s.max(0.1), 1)
            )
        })
        .collect();
    let lead = t!(
        "crossing-lead",
        speed = number(props.run_m_s, 0),
        flight = number(flight_s, 2),
        lead = cm(props.units, 100.0 * lead_m),
        lengths = number(lead_m / props.length_m.max(0.01), 1),
        swing = number(swing_deg_s, 0)
    );
    html! {
        <Frame title={t!("crossing-title")}
            scale={t!("crossing-scale", width = field(props.units, widest), range = range(props.units, *at))}
            leaves_out={t!("crossing-leaves-out")}
            sources={vec![AttrValue::from(t!("crossing-source"))]} file="crossing">
            <svg class="crossing" data-keep="" role="img" aria-label={lead.clone()} width={WIDTH_PX.to_string()}
                height={HEIGHT_PX.to_string()} viewBox={format!("0 0 {WIDTH_PX} {HEIGHT_PX}")}>
                <path class="soft" stroke-width="1" fill="none"
                    d={format!("M0 {0:.1}H{WIDTH_PX}", cy + 0.01 * props.figure.bottom_cm * px_per_m)} />
                <g transform={format!("translate({aim_px:.2} {cy:.2}) scale({:.5})", 0.01 * px_per_m)}>
                    { for props.figure.pieces.iter().map(|piece| html! {
                        <path d={piece.path.clone()} class={match piece.tone {
                            Tone::Dark => "tone-dark",
                            Tone::Mid => "tone-mid",
                            Tone::Light => "tone-light",
                        }} />
                    }) }
                </g>
                { for widths.iter().enumerate().map(|(n, width)| html! {
                    <circle cx={format!("{cx:.1}")} cy={format!("{cy:.1}")} r={format!("{:.2}", 0.5 * width * px_per_m)}
                        class={if n == 0 { "pick" } else { "soft" }} fill="none" stroke-width="2"
                        stroke-dasharray={if n == 0 { "none" } else { "5 4" }} />
                }) }
                <path class="halo" stroke-width="5" fill="none" d={format!("M{aim_px:.1} {cy:.1}H{:.1}", aim_px + lead_px)} />
                <path class="ink" stroke-width="2" fill="none"
                    d={format!("M{aim_px:.1} {:.1}v12M{aim_px:.1} {cy:.1}H{1:.1}M{1:.1} {0:.1}v12", cy - 6.0, aim_px + lead_px)} />
                <text class="crossing__lead" x={format!("{:.1}", (aim_px + lead_px + 6.0).min(WIDTH_PX - 60.0))} y={format!("{:.1}", cy - 10.0)}>
                    { cm(props.units, 100.0 * lead_m) }
                </text>
            </svg>
            <div class="picture__words">
                { for seconds.iter().map(|words| html! { <p>{ words.clone() }</p> }) }
                <p>{ lead }</p>
            </div>
            <Slider label={t!("crossing-time")} least=0.0 most=100.0 value={*share} step=1.0 page=10.0
                spoken={spoken_time} on_input={on_share} />
            <Slider label={t!("view-range")} least={near} most={far} value={*at} step=1.0 page=5.0
                scale={Scale::Ratio} spoken={spoken_range} on_input={on_range} />
        </Frame>
    }
}

#[cfg(test)]
mod tests {
    use super::between;

    #[test]
    fn a_table_is_read_between_its_rows_and_held_at_its_ends() {
        let table = [(0.0, 0.0), (100.0, 0.125), (200.0, 0.275)];
        assert_eq!(between(&table, 50.0), 0.0625);
        assert_eq!(between(&table, 150.0), 0.2);
        assert_eq!(between(&table, -5.0), 0.0);
        assert_eq!(between(&table, 500.0), 0.275);
        assert_eq!(between(&[], 5.0), 0.0);
    }
}
