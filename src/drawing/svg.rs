//! The inside of a drawing as a list of SVG elements, so that only what has changed is written.

use super::path::{push_number, push_pair};
use super::silhouette::{Figure, Tone};
use crate::filled;

/// One element of a drawing.
#[derive(Clone, Debug, PartialEq)]
pub struct Part {
    /// Its tag.
    pub tag: &'static str,
    /// Its attributes.
    pub attributes: Vec<(&'static str, String)>,
    /// What stands inside: plain text in a `text`, the source of paths in a `g`.
    pub inside: String,
}

impl Part {
    /// A path with these attributes.
    #[must_use]
    pub fn path(attributes: Vec<(&'static str, String)>) -> Self {
        Self {
            tag: "path",
            attributes,
            inside: String::new(),
        }
    }
}

/// Puts shapes one after the other; coordinates in px, to a hundredth.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Svg {
    /// What has been drawn.
    pub parts: Vec<Part>,
}

/// Text made safe to stand between tags and in attributes.
#[must_use]
pub fn escaped(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for letter in text.chars() {
        match letter {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            other => out.push(other),
        }
    }
    out
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

impl Svg {
    fn open(&mut self, tag: &'static str, class: &str) {
        self.parts.push(Part {
            tag,
            attributes: vec![("class", class.to_owned())],
            inside: String::new(),
        });
    }

    /// An attribute of the element that was opened last.
    fn word(&mut self, name: &'static str, value: &str) {
        if let Some(part) = self.parts.last_mut() {
            part.attributes.push((name, value.to_owned()));
        }
    }

    fn numbers(&mut self, numbers: &[(&'static str, f64)]) {
        for (name, value) in numbers {
            let mut out = String::new();
            push_number(&mut out, *value, 2);
            self.word(name, &out);
        }
    }

    fn line_style(&mut self, width_px: f64, dashes: &str) {
        self.word("fill", "none");
        self.numbers(&[("stroke-width", width_px)]);
        if !dashes.is_empty() {
            self.word("stroke-dasharray", dashes);
        }
    }

    /// A filled path.
    pub fn fill(&mut self, class: &str, d: &str) {
        self.open("path", class);
        self.word("d", d);
    }

    /// A line along a path; `dashes` may be empty.
    pub fn line(&mut self, class: &str, width_px: f64, dashes: &str, d: &str) {
        self.open("path", class);
        self.line_style(width_px, dashes);
        self.word("d", d);
    }

    /// A filled circle.
    pub fn disc(&mut self, class: &str, x: f64, y: f64, r: f64) {
        self.open("circle", class);
        self.place(x, y, r);
    }

    /// A circle line.
    pub fn ring(&mut self, class: &str, width_px: f64, dashes: &str, x: f64, y: f64, r: f64) {
        self.open("circle", class);
        self.line_style(width_px, dashes);
        self.place(x, y, r);
    }

    fn place(&mut self, x: f64, y: f64, r: f64) {
        self.numbers(&[("cx", x), ("cy", y), ("r", r.max(0.0))]);
    }

    /// A rectangle.
    pub fn rectangle(&mut self, class: &str, x: f64, y: f64, width: f64, height: f64) {
        self.open("rect", class);
        let (width, height) = (width.max(0.0), height.max(0.0));
        self.numbers(&[("x", x), ("y", y), ("width", width), ("height", height)]);
    }

    /// Text; `anchor` is `start`, `middle` or `end`.
    ///
    /// Placed by its transform: a text that only moves is not set anew.
    pub fn text(&mut self, class: &str, anchor: &str, x: f64, y: f64, text: &str) {
        self.open("text", class);
        self.word("text-anchor", anchor);
        let mut to = "translate(".to_owned();
        push_pair(&mut to, ' ', x, y, 2);
        to.push(')');
        self.word("transform", &to);
        if let Some(part) = self.parts.last_mut() {
            text.clone_into(&mut part.inside);
        }
    }

    /// A figure with the middle of its aiming circle at a place.
    pub fn figure(&mut self, figure: &Figure, x: f64, y: f64, px_per_cm: f64) {
        let mut to = "translate(".to_owned();
        push_pair(&mut to, ' ', x, y, 2);
        to.push_str(&filled!(") scale({.5})", px_per_cm));
        let mut inside = String::new();
        for piece in &figure.pieces {
            inside.push_str("<path class=\"");
            inside.push_str(tone_class(piece.tone));
            inside.push_str("\" d=\"");
            inside.push_str(&piece.path);
            inside.push_str("\"/>");
        }
        self.parts.push(Part {
            tag: "g",
            attributes: vec![("transform", to)],
            inside,
        });
    }

    /// A dimension line from `x1` to `x2` at `y`, as a workshop draws it.
    pub fn dimension(&mut self, class: &str, (x1, x2): (f64, f64), y: f64) {
        let mut d = String::new();
        for x in [x1, x2] {
            push_pair(&mut d, 'M', x, y - 3.0, 1);
            d.push_str("v6");
        }
        push_pair(&mut d, 'M', x1, y, 1);
        d.push('H');
        push_number(&mut d, x2, 1);
        self.line(class, 1.0, "", &d);
    }
}
