//! Writes sheets of all silhouettes and targets at 24, 120 and 600 pixels, and of all reticles
//! in both planes at three magnifications.
//!
//! `cargo run --example sheet -- DIRECTORY` writes one HTML page a sheet into the directory;
//! with a number after it, the animals' sheets for somebody who is to name what is drawn:
//! without labels, in an order drawn from the number, which `key-*.txt` tells afterwards.

use scopewright::drawing::silhouette::{Figure, Tone, silhouette};
use scopewright::drawing::target;
use scopewright::drawing::view::{Cutout, Paint, px_per_label_mrad, px_per_mrad, reticle_layers};
use scopewright::need::quarry::ANIMALS;
use scopewright::sight::reticle::{DotSize, TYPICAL_HOLDS_MRAD, mark_unit, reticle_with};
use scopewright::sight::{FocalPlane, ReticleFamily};
use std::fmt::Write as _;
use std::path::{Path, PathBuf};

const GROUND: &str = "#F5F2EB";

fn tone(tone: Tone) -> &'static str {
    match tone {
        Tone::Dark => "#404349",
        Tone::Mid => "#80838A",
        Tone::Light => GROUND,
    }
}

/// A figure `height` pixels tall, with its aiming circle.
fn figure_svg(figure: &Figure, circle_cm: f64, height: f64, circle: bool) -> String {
    let scale = height / figure.height_cm();
    let width = figure.width_cm() * scale;
    let mut out = format!(
        r#"<svg width="{width:.1}" height="{height}" viewBox="{:.2} {:.2} {:.2} {:.2}">"#,
        figure.left_cm,
        figure.top_cm,
        figure.width_cm(),
        figure.height_cm()
    );
    for piece in &figure.pieces {
        let _ = write!(
            out,
            r#"<path d="{}" fill="{}"/>"#,
            piece.path,
            tone(piece.tone)
        );
    }
    if circle {
        let _ = write!(
            out,
            r##"<circle r="{:.2}" fill="none" stroke="#6E2F5B" stroke-width="{:.3}"/>"##,
            0.5 * circle_cm,
            1.5 / scale
        );
    }
    out.push_str("</svg>");
    out
}

/// A reticle in a round of `size` pixels.
fn reticle_svg(family: ReticleFamily, size: f64, px_per_mrad: f64) -> String {
    let reticle = reticle_with(family, DotSize::Universal, &TYPICAL_HOLDS_MRAD);
    // Ids are unique on a sheet.
    let id = format!("{family:?}{px_per_mrad:.4}");
    let window = Cutout {
        width_px: size,
        height_px: size,
        field_px: size,
    };
    let mut drawn = String::new();
    for layer in reticle_layers(&reticle, px_per_mrad, window.centre_px(1.0), &window) {
        let _ = match layer.paint {
            Paint::Stroke { width_px } => write!(
                drawn,
                r#"<path d="{}" fill="none" stroke="black" stroke-width="{width_px:.4}"/>"#,
                layer.path
            ),
            Paint::Fill => write!(drawn, r#"<path d="{}"/>"#, layer.path),
        };
    }
    format!(
        r#"<svg width="{size}" height="{size}"><clipPath id="{id}"><circle cx="{0}" cy="{0}" r="{0}"/></clipPath><g clip-path="url(#{id})"><rect width="{size}" height="{size}" fill="white"/>{drawn}</g></svg>"#,
        0.5 * size
    )
}

fn page(title: &str, body: &str) -> String {
    format!(
        "<!doctype html><meta charset=utf-8><title>{title}</title><style>body{{margin:16px;\
         background:{GROUND};color:#20242C;font:14px system-ui}}main{{display:flex;flex-wrap:wrap;\
         gap:28px;align-items:end}}figure{{margin:0}}figcaption{{font-size:12px}}svg{{display:block;\
         overflow:visible}}</style><main>{body}</main>"
    )
}

/// Sheets without labels in an order drawn from `seed`, another at each size.
fn blind(directory: &Path, seed: u32, mut rows: Vec<(&str, f64, Figure)>) -> std::io::Result<()> {
    let mut state = seed;
    let mut draw = |below: usize| {
        state = state.wrapping_mul(1_103_515_245).wrapping_add(12_345);
        (state >> 16) as usize % below
    };
    for height in [24.0, 120.0, 600.0] {
        for n in (1..rows.len()).rev() {
            rows.swap(n, draw(n + 1));
        }
        let (mut body, mut key) = (String::new(), String::new());
        for (n, (name, _, figure)) in rows.iter().enumerate() {
            let svg = figure_svg(figure, 0.0, height, false);
            let _ = write!(
                body,
                "<figure>{svg}<figcaption>{}</figcaption></figure>",
                n + 1
            );
            let _ = writeln!(key, "{} {name}", n + 1);
        }
        std::fs::write(
            directory.join(format!("blind-{height}.html")),
            page("blind", &body),
        )?;
        std::fs::write(directory.join(format!("key-{height}.txt")), key)?;
    }
    Ok(())
}

fn main() -> std::io::Result<()> {
    let mut arguments = std::env::args().skip(1);
    let directory = PathBuf::from(arguments.next().unwrap_or_else(|| "target/sheets".into()));
    let seed: Option<u32> = arguments.next().and_then(|word| word.parse().ok());
    std::fs::create_dir_all(&directory)?;
    let caption = |text: &str| format!("<figcaption>{text}</figcaption>");

    let animals: Vec<(&str, f64, Figure)> = ANIMALS
        .iter()
        .filter_map(|animal| {
            silhouette(
                animal.key,
                animal.shoulder_height_mm.map(|mm| mm / 10.0),
                animal.body_length_mm / 10.0,
            )
            .map(|figure| (animal.key, animal.aiming_circle_mm / 10.0, figure))
        })
        .collect();
    let targets: Vec<(&str, f64, Figure)> = target::KEYS
        .iter()
        .filter_map(|key| target::of_key(key).map(|t| (*key, 0.0, target::figure(t))))
        .collect();
    if let Some(seed) = seed {
        return blind(&directory, seed, animals);
    }
    for (name, rows) in [("animals", &animals), ("targets", &targets)] {
        for height in [24.0, 120.0, 600.0] {
            let body: String = rows
                .iter()
                .map(|(key, circle, figure)| {
                    let svg = figure_svg(figure, *circle, height, height > 100.0 && *circle > 0.0);
                    format!("<figure>{svg}{}</figure>", caption(key))
                })
                .collect();
            std::fs::write(
                directory.join(format!("{name}-{height}.html")),
                page(name, &body),
            )?;
        }
    }

    // One field of 320 pixels, 22° apparent, at the foot, the middle and the top of a zoom.
    const LOW_MID_HIGH: [f64; 3] = [1.0, 3.0, 10.0];
    for (name, plane) in [
        ("reticles-first", FocalPlane::First),
        ("reticles-second", FocalPlane::Second),
    ] {
        let mut body = String::new();
        for family in ReticleFamily::ALL {
            let reference = match mark_unit(family) {
                Some(_) => LOW_MID_HIGH[2],
                None => 6.0,
            };
            for magnification in LOW_MID_HIGH {
                let at_target = px_per_mrad(320.0, 22.0, magnification);
                let scale = px_per_label_mrad(plane, at_target, reference, magnification);
                let svg = reticle_svg(family, 320.0, scale);
                let _ = write!(
                    body,
                    "<figure>{svg}{}</figure>",
                    caption(&format!("{family:?} {magnification}×"))
                );
            }
        }
        std::fs::write(directory.join(format!("{name}.html")), page(name, &body))?;
    }
    println!("sheets written to {}", directory.display());
    Ok(())
}
