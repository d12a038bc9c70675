//! The field and a moving animal: how long it stays in the picture, and how far ahead to hold.

use super::picture::{Drawing, Drawn, Handle, Told};
use super::slider::Scale;
use crate::drawing::silhouette::Figure;
use crate::drawing::svg::Svg;
use crate::filled;
use crate::need::answers::Units;
use crate::plain::Gathered;
use crate::plain::Together;
use crate::sight::field::field_at_range_m;
use crate::t;
use crate::web::view::Callback;
use crate::wording::{cm, field, number, range};
use std::rc::Rc;

/// A field that is shown.
#[derive(Clone, Debug, PartialEq)]
pub struct ShownField {
    /// Its name, as in "your pick at 2.5×".
    pub name: String,
    /// Apparent field (full angle) in degrees.
    pub apparent_deg: f64,
    /// Magnification.
    pub magnification: f64,
}

/// What the picture of a crossing is told.
#[derive(Clone, Debug, PartialEq)]
pub struct Crossing {
    /// The animal.
    pub figure: Rc<Figure>,
    /// Its name.
    pub name: String,
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
    pub units: Units,
}

/// Height over width of the drawing.
const SHAPE: f64 = 0.62;
/// Widest drawing, px.
const WIDEST_PX: f64 = 720.0;
/// Under the drawing: each field's width, a row each.
const ROW_PX: f64 = 30.0;

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

impl Crossing {
    fn widths_m(&self, range_m: f64) -> Vec<f64> {
        self.fields
            .iter()
            .map(|field| field_at_range_m(field.apparent_deg, field.magnification, range_m))
            .gathered()
    }

    fn widest_m(&self, range_m: f64) -> f64 {
        self.widths_m(range_m).into_iter().fold(0.1, f64::max)
    }

    /// Seconds in which the wider field is crossed.
    fn crossing_s(&self, range_m: f64) -> f64 {
        self.widest_m(range_m) / self.run_m_s.max(0.1)
    }

    fn drawn(&self, share: f64, range_m: f64, width_px: f64) -> Drawn {
        let units = self.units;
        let width_px = width_px.clamp(240.0, WIDEST_PX);
        let height_px = (SHAPE * width_px).min(width_px).round();
        let widths = self.widths_m(range_m);
        let widest = self.widest_m(range_m);
        let px_per_m = (width_px - 8.0) / widest;
        let (cx, cy) = (0.5 * width_px, 0.5 * height_px);
        let x_m = widest * (0.01 * share - 0.5);
        let flight_s = between(&self.flight_s, range_m);
        let lead_m = self.run_m_s * flight_s;
        let (aim_px, lead_px) = (cx + x_m * px_per_m, lead_m * px_per_m);
        let swing_deg_s = self.run_m_s / range_m * 180.0 / core::f64::consts::PI;
        let mut still = Svg::default();
        let ground_px = cy + 0.01 * self.figure.bottom_cm * px_per_m;
        still.line(
            "soft",
            1.0,
            "",
            &filled!("M0 {.1}H{.0}", ground_px, width_px),
        );
        let mut svg = Svg::default();
        svg.figure(&self.figure, aim_px, cy, 0.01 * px_per_m);
        // Under the fields, where an animal larger than they are does not reach.
        let rows_px = ROW_PX * widths.len() as f64;
        svg.rectangle("halo-fill", 0.0, height_px, width_px, rows_px);
        for (n, width) in widths.iter().enumerate() {
            let r = 0.5 * width * px_per_m;
            let (class, dashes) = if n == 0 {
                ("pick", "")
            } else {
                ("soft", "5 4")
            };
            if r > cy {
                // As much of it as the drawing shows.
                let x = (r * r - cy * cy).sqrt();
                let (left, right) = (cx - x, cx + x);
                let d = filled!(
                    "M{.1} 0A{.1} {.1} 0 0 0 {.1} {.0}M{.1} 0A{.1} {.1} 0 0 1 {.1} {.0}",
                    left,
                    r,
                    r,
                    left,
                    height_px,
                    right,
                    r,
                    r,
                    right,
                    height_px
                );
                svg.line(class, 2.0, dashes, &d);
            } else {
                svg.ring(class, 2.0, dashes, cx, cy, r);
            }
            let y = height_px + 6.0 + ROW_PX * n as f64;
            svg.dimension(class, (cx - r, cx + r), y);
            let words = format!("{} · {}", self.fields[n].name, field(units, *width));
            svg.text("ink-text", "middle", cx, y + 16.0, &words);
        }
        let ahead = aim_px + lead_px;
        let bar = filled!(
            "M{.1} {.1}v12M{.1} {.1}H{.1}M{.1} {.1}v12",
            aim_px,
            cy - 6.0,
            aim_px,
            cy,
            ahead,
            ahead,
            cy - 6.0
        );
        svg.line("halo", 5.0, "", &bar);
        svg.line("ink", 2.0, "", &bar);
        let words_at = (ahead + 6.0).min(width_px - 60.0);
        let lead_cm = cm(units, 100.0 * lead_m);
        svg.text("crossing__lead", "start", words_at, cy + 5.0, &lead_cm);
        let lead = t!(
            "crossing-lead",
            speed = number(self.run_m_s, 0),
            flight = number(flight_s, 2),
            lead = lead_cm,
            lengths = number(lead_m / self.length_m.max(0.01), 1),
            swing = number(swing_deg_s, 0)
        );
        let mut words: Vec<String> = self
            .fields
            .iter()
            .zip(&widths)
            .map(|(shown, width)| {
                t!(
                    "crossing-field",
                    name = shown.name.clone(),
                    width = field(units, *width),
                    seconds = number(width / self.run_m_s.max(0.1), 1)
                )
            })
            .gathered();
        if self.length_m > widest {
            words.push(t!("view-larger", field = field(units, widest)));
        }
        words.push(lead);
        Drawn {
            drawings: vec![Drawing {
                said: words.together(" "),
                class: "crossing",
                size_px: (width_px, height_px + rows_px),
                still,
                inside: svg,
                note: t!("crossing-note"),
                ..Drawing::default()
            }],
            words,
            scale: t!(
                "crossing-scale",
                width = field(units, widest),
                range = range(units, range_m)
            ),
        }
    }

    /// Two fields over a moving animal.
    #[must_use]
    pub fn told(self) -> Told {
        let (near, first, far) = self.ranges_m;
        let units = self.units;
        let this = Rc::new(self);
        let inputs: Vec<String> = this
            .fields
            .iter()
            .map(|shown| {
                t!(
                    "crossing-inputs",
                    name = shown.name.clone(),
                    apparent = number(shown.apparent_deg, 0),
                    power = number(shown.magnification, 1)
                )
            })
            .gathered();
        let inputs = t!(
            "crossing-inputs-animal",
            animal = this.name.clone(),
            speed = number(this.run_m_s, 1),
            fields = inputs.together("; ")
        );
        let (drawing, running) = (this.clone(), this);
        Told {
            title: t!("crossing-title"),
            file: "crossing",
            leaves_out: t!("crossing-leaves-out"),
            sources: vec![t!("crossing-source"), t!("picture-inputs", what = inputs)],
            handles: vec![
                Handle {
                    label: t!("crossing-time"),
                    least: 0.0,
                    most: 100.0,
                    value: 50.0,
                    step: 1.0,
                    page: 10.0,
                    scale: Scale::Linear,
                    spoken: Callback::from(|to: f64| t!("crossing-share", share = number(to, 0))),
                },
                Handle {
                    label: t!("view-range"),
                    least: near,
                    most: far,
                    value: first,
                    step: 1.0,
                    page: 5.0,
                    scale: Scale::Ratio,
                    spoken: Callback::from(move |to: f64| range(units, to)),
                },
            ],
            draw: Rc::new(move |values, width_px| drawing.drawn(values[0], values[1], width_px)),
            run_s: Some(Rc::new(move |values| running.crossing_s(values[1]))),
        }
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
