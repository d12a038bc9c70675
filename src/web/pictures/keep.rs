//! Keeping a picture as SVG or PNG.

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

/// Hands the drawings of a picture, one below the other, to the browser as a file.
pub fn keep_drawings(drawings: &[Element], file: &str, png: bool) {
    let Some(first) = drawings.first() else {
        return;
    };
    let (svg, width, height) = sheet(drawings);
    let address = format!(
        "data:image/svg+xml;charset=utf-8,{}",
        String::from(js_sys::encode_uri_component(&svg))
    );
    if png {
        // A failure leaves the page as it is: there is nothing to say that helps.
        let _ = keep_png(first, &address, file, width, height);
    } else {
        let _ = hand_over(first, &address, &format!("{file}.svg"));
    }
}

fn sheet(drawings: &[Element]) -> (String, f64, f64) {
    let mut inner = String::new();
    let (mut width, mut y) = (0.0_f64, SPACE_PX);
    for drawing in drawings {
        let (w, h) = (
            f64::from(drawing.client_width()),
            f64::from(drawing.client_height()),
        );
        if let Some(source) = placed(drawing, y, w, h) {
            inner.push_str(&source);
        }
        width = width.max(w);
        y += h + SPACE_PX;
    }
    let width = width + 2.0 * SPACE_PX;
    let svg = format!(
        r#"<svg xmlns="http://www.w3.org/2000/svg" width="{width}" height="{y}" viewBox="0 0 {width} {y}" font-family="system-ui, sans-serif"><style>{KEPT_STYLE}</style><rect width="{width}" height="{y}" fill="white"/>{inner}</svg>"#
    );
    (svg, width, y)
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
        copy.set_attribute(name, &value.to_string()).ok()?;
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
