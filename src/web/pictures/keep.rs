//! Keeping a picture as SVG or PNG.

use crate::drawing::svg::escaped;
use crate::filled;
use crate::plain::Gathered;
use crate::plain::shortest;
use wasm_bindgen::prelude::Closure;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{
    CanvasRenderingContext2d, Element, HtmlCanvasElement, HtmlElement, HtmlImageElement,
    XmlSerializer,
};

/// The rules a kept picture carries with it: black on white, because it will be printed.
const KEPT_STYLE: &str = include_str!("kept.css");
/// Space between the drawings of one picture and round them, px.
const SPACE_PX: f64 = 12.0;
/// A kept PNG has so many pixels for a px of the page.
const PNG_SCALE: f64 = 3.0;

/// Height of a line of words, and the usual width of a letter, px.
const LINE_PX: f64 = 19.0;
const LETTER_PX: f64 = 7.2;

/// Hands the drawings in the frame, one below the other with what names them, to the browser as
/// a file.
pub fn keep_drawings(frame: &Element, file: &str, png: bool) {
    let (svg, width, height) = sheet(frame);
    let address = format!(
        "data:image/svg+xml;charset=utf-8,{}",
        String::from(js_sys::encode_uri_component(&svg))
    );
    if png {
        // A failure leaves the page as it is: there is nothing to say that helps.
        let _ = keep_png(frame, &address, file, width, height);
    } else {
        let _ = hand_over(frame, &address, &format!("{file}.svg"));
    }
}

/// The elements in a frame that a selector finds.
fn found(frame: &Element, selector: &str) -> Vec<Element> {
    let Ok(all) = frame.query_selector_all(selector) else {
        return Vec::new();
    };
    (0..all.length())
        .filter_map(|n| all.item(n)?.dyn_into().ok())
        .gathered()
}

/// A sheet that grows downwards.
struct Sheet {
    inner: String,
    wide_px: f64,
    y_px: f64,
}

impl Sheet {
    /// Words, broken where they would leave the sheet.
    fn say(&mut self, words: &str, weight: &str) {
        let most = (self.wide_px / LETTER_PX) as usize;
        let mut line = String::new();
        for word in words.split(' ').filter(|word| !word.is_empty()).chain([""]) {
            if word.is_empty() || line.chars().count() + word.chars().count() >= most {
                if !line.is_empty() {
                    self.y_px += LINE_PX;
                    let at = filled!(r#"x="{}" y="{}""#, SPACE_PX, self.y_px - 5.0);
                    self.inner.push_str(&format!(
                        r#"<text {at} font-weight="{weight}">{}</text>"#,
                        escaped(&line)
                    ));
                }
                line.clear();
            } else {
                line.push(' ');
            }
            line.push_str(word);
        }
    }
}

fn sheet(frame: &Element) -> (String, f64, f64) {
    let drawings = found(frame, "svg[data-keep]");
    let size = |drawing: &Element| {
        (
            f64::from(drawing.client_width()),
            f64::from(drawing.client_height()),
        )
    };
    let mut sheet = Sheet {
        inner: String::new(),
        wide_px: drawings
            .iter()
            .map(|drawing| size(drawing).0)
            .fold(320.0, f64::max),
        y_px: SPACE_PX,
    };
    for title in found(frame, "h2") {
        sheet.say(&title.text_content().unwrap_or_default(), "650");
    }
    for drawing in &drawings {
        let (w, h) = size(drawing);
        if let Ok(Some(figure)) = drawing.closest("figure") {
            for named in found(&figure, "b, .view__covers") {
                sheet.say(&named.text_content().unwrap_or_default(), "400");
            }
        }
        if let Some(source) = placed(drawing, sheet.y_px, w, h) {
            sheet.inner.push_str(&source);
        }
        sheet.y_px += h + SPACE_PX;
    }
    for scale in found(frame, ".picture__scale, summary + p") {
        sheet.say(&scale.text_content().unwrap_or_default(), "400");
    }
    let (width, height) = (sheet.wide_px + 2.0 * SPACE_PX, sheet.y_px + SPACE_PX);
    let (wide, high) = (shortest(width), shortest(height));
    let svg = format!(
        r#"<svg xmlns="http://www.w3.org/2000/svg" width="{wide}" height="{high}" viewBox="0 0 {wide} {high}" font-family="system-ui, sans-serif"><style>{KEPT_STYLE}</style><rect width="{wide}" height="{high}" fill="white"/>{}</svg>"#,
        sheet.inner
    );
    (svg, width, height)
}

/// A copy of a drawing at its place on the sheet, as well-formed XML.
fn placed(drawing: &Element, y: f64, width: f64, height: f64) -> Option<String> {
    let copy: Element = drawing.clone_node_with_deep(true).ok()?.dyn_into().ok()?;
    for (name, value) in [
        ("x", SPACE_PX),
        ("y", y),
        ("width", width),
        ("height", height),
    ] {
        copy.set_attribute(name, &shortest(value)).ok()?;
    }
    XmlSerializer::new().ok()?.serialize_to_string(&copy).ok()
}

fn hand_over(near: &Element, address: &str, file: &str) -> Result<(), JsValue> {
    let document = near.owner_document().ok_or(JsValue::NULL)?;
    let link: HtmlElement = document.create_element("a")?.dyn_into()?;
    link.set_attribute("href", address)?;
    link.set_attribute("download", file)?;
    link.click();
    Ok(())
}

fn keep_png(
    near: &Element,
    address: &str,
    file: &str,
    width: f64,
    height: f64,
) -> Result<(), JsValue> {
    let image = HtmlImageElement::new()?;
    let (near, file) = (near.clone(), format!("{file}.png"));
    let drawn = image.clone();
    let loaded = Closure::once_into_js(move || {
        let _ = (|| -> Result<(), JsValue> {
            let document = near.owner_document().ok_or(JsValue::NULL)?;
            let canvas: HtmlCanvasElement = document.create_element("canvas")?.dyn_into()?;
            canvas.set_width((width * PNG_SCALE) as u32);
            canvas.set_height((height * PNG_SCALE) as u32);
            let context: CanvasRenderingContext2d =
                canvas.get_context("2d")?.ok_or(JsValue::NULL)?.dyn_into()?;
            context.draw_image_with_html_image_element_and_dw_and_dh(
                &drawn,
                0.0,
                0.0,
                width * PNG_SCALE,
                height * PNG_SCALE,
            )?;
            hand_over(&near, &canvas.to_data_url()?, &file)
        })();
    });
    image.set_onload(Some(loaded.unchecked_ref()));
    image.set_src(address);
    Ok(())
}
