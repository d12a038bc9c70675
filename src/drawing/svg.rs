//! The inside of a drawing as one string of SVG.

use super::path::{push_number, push_pair};
use super::silhouette::{Figure, Tone};

/// Puts shapes one after the other; coordinates in px, to a hundredth.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Svg {
    /// What has been drawn.
    pub out: String,
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
    /// An attribute with a number.
    fn number(&mut self, name: &str, value: f64) {
        self.out.push(' ');
        self.out.push_str(name);
        self.out.push_str("=\"");
        push_number(&mut self.out, value, 2);
        self.out.push('"');
    }

    fn word(&mut self, name: &str, value: &str) {
        self.out.push(' ');
        self.out.push_str(name);
        self.out.push_str("=\"");
        self.out.push_str(value);
        self.out.push('"');
    }

    fn open(&mut self, tag: &str, class: &str) {
        self.out.push('<');
        self.out.push_str(tag);
        self.word("class", class);
    }

    fn line_style(&mut self, width_px: f64, dashes: &str) {
        self.word("fill", "none");
        self.number("stroke-width", width_px);
        if !dashes.is_empty() {
            self.word("stroke-dasharray", dashes);
        }
    }

    /// A filled path.
    pub fn fill(&mut self, class: &str, d: &str) {
        self.open("path", class);
        self.word("d", d);
        self.out.push_str("/>");
    }

    /// A line along a path; `dashes` may be empty.
    pub fn line(&mut self, class: &str, width_px: f64, dashes: &str, d: &str) {
        self.open("path", class);
        self.line_style(width_px, dashes);
        self.word("d", d);
        self.out.push_str("/>");
    }

    /// A filled circle.
    pub fn disc(&mut self, class: &str, x: f64, y: f64, r: f64) {
        self.open("circle", class);
        self.place(x, y, r);
        self.out.push_str("/>");
    }

    /// A circle line.
    pub fn ring(&mut self, class: &str, width_px: f64, dashes: &str, x: f64, y: f64, r: f64) {
        self.open("circle", class);
        self.line_style(width_px, dashes);
        self.place(x, y, r);
        self.out.push_str("/>");
    }

    fn place(&mut self, x: f64, y: f64, r: f64) {
        self.number("cx", x);
        self.number("cy", y);
        self.number("r", r.max(0.0));
    }

    /// A rectangle.
    pub fn rectangle(&mut self, class: &str, x: f64, y: f64, width: f64, height: f64) {
        self.open("rect", class);
        self.number("x", x);
        self.number("y", y);
        self.number("width", width.max(0.0));
        self.number("height", height.max(0.0));
        self.out.push_str("/>");
    }

    /// Text; `anchor` is `start`, `middle` or `end`.
    pub fn text(&mut self, class: &str, anchor: &str, x: f64, y: f64, text: &str) {
        self.open("text", class);
        self.word("text-anchor", anchor);
        self.number("x", x);
        self.number("y", y);
        self.out.push('>');
        self.out.push_str(&escaped(text));
        self.out.push_str("</text>");
    }

    /// A figure with the middle of its aiming circle at a place.
    pub fn figure(&mut self, figure: &Figure, x: f64, y: f64, px_per_cm: f64) {
        self.out.push_str("<g transform=\"translate(");
        push_pair(&mut self.out, ' ', x, y, 2);
        self.out.push_str(") scale(");
        self.out.push_str(&format!("{px_per_cm:.5}"));
        self.out.push_str(")\">");
        for piece in &figure.pieces {
            self.fill(tone_class(piece.tone), &piece.path);
        }
        self.out.push_str("</g>");
    }
}
