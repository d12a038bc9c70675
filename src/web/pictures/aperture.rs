//! The eye's aperture: the beam that leaves the sight over the pupil that has to take it.

use super::picture::{Drawing, Drawn, Handle, Told, width_of_one};
use super::slider::Scale;
use super::view_words::said_power;
use crate::drawing::svg::Svg;
use crate::eye::Eye;
use crate::eye::pupil::SPREAD_MM;
use crate::plain::Gathered;
use crate::plain::Together;
use crate::sight::pupil::exit_pupil_mm;
use crate::t;
use crate::web::view::Callback;
use crate::wording::number;
use std::rc::Rc;

/// A sight whose beam is shown.
#[derive(Clone, Debug, PartialEq)]
pub struct Beam {
    /// Its name, as in "your pick".
    pub name: String,
    /// Lowest magnification.
    pub magnification_low: f64,
    /// Highest magnification.
    pub magnification_high: f64,
    /// Clear diameter of the objective in mm.
    pub objective_mm: f64,
}

/// Diameter of the iris, mm.
const IRIS_MM: f64 = 12.0;
/// Width and height that are drawn, mm.
const DRAWN_MM: f64 = 13.6;

/// Shares of the beam that enters and of the pupil that is filled, 0 to 1.
#[must_use]
pub fn shares(beam_mm: f64, pupil_mm: f64) -> (f64, f64) {
    let square = |x: f64| (x * x).min(1.0);
    (square(pupil_mm / beam_mm), square(beam_mm / pupil_mm))
}

fn said(name: &str, magnification: f64, beam_mm: f64, pupil_mm: f64) -> String {
    let (enters, filled) = shares(beam_mm, pupil_mm);
    let percent = |share: f64| number(100.0 * share, 0);
    let (power, beam) = (said_power(magnification), number(beam_mm, 1));
    if beam_mm > pupil_mm {
        t!(
            "aperture-over",
            name = name.to_owned(),
            power = power,
            beam = beam,
            enters = percent(enters),
            lost = percent(1.0 - enters)
        )
    } else {
        t!(
            "aperture-under",
            name = name.to_owned(),
            power = power,
            beam = beam,
            filled = percent(filled)
        )
    }
}

/// Under the eye: widths of pupil and beam, a row each.
const ROW_PX: f64 = 26.0;

fn iris(size_px: f64) -> Svg {
    let mut svg = Svg::default();
    svg.disc("tone-mid", 0.0, 0.0, 0.5 * IRIS_MM * size_px / DRAWN_MM);
    svg
}

fn drawing(size_px: f64, beam_mm: f64, pupil_mm: f64) -> Svg {
    let px = |mm: f64| mm * size_px / DRAWN_MM;
    let mut svg = Svg::default();
    svg.disc("tone-dark", 0.0, 0.0, px(0.5 * pupil_mm));
    svg.disc("aperture__light", 0.0, 0.0, px(0.5 * beam_mm.min(pupil_mm)));
    if beam_mm > pupil_mm {
        // Light on the iris: a ring.
        let width = px(0.5 * (beam_mm - pupil_mm));
        let middle = px(0.25 * (beam_mm + pupil_mm));
        svg.ring("aperture__lost", width, "", 0.0, 0.0, middle);
    }
    for spread in [SPREAD_MM, -SPREAD_MM] {
        let r = px(0.5 * (pupil_mm + spread).max(0.2));
        svg.ring("halo", 2.0, "", 0.0, 0.0, r);
        svg.ring("ink", 1.0, "2 3", 0.0, 0.0, r);
    }
    svg.ring("pick", 2.0, "", 0.0, 0.0, px(0.5 * beam_mm));
    let rows = [
        (
            "ink",
            pupil_mm,
            t!("aperture-width-pupil", mm = number(pupil_mm, 1)),
        ),
        (
            "pick",
            beam_mm,
            t!("aperture-width-beam", mm = number(beam_mm, 1)),
        ),
    ];
    let mut y = 0.5 * size_px;
    for (class, mm, words) in rows {
        svg.dimension(class, (-px(0.5 * mm), px(0.5 * mm)), y);
        svg.text("ink-text", "middle", 0.0, y + 16.0, &words);
        y += ROW_PX;
    }
    svg
}

/// The beam over the pupil, through the zoom and through the years, for one or two sights.
#[must_use]
pub fn eye_aperture(beams: Vec<Beam>, eye: Eye, luminance_cd_m2: f64, magnification: f64) -> Told {
    let least = beams
        .iter()
        .map(|beam| beam.magnification_low)
        .fold(f64::INFINITY, f64::min);
    let most = beams
        .iter()
        .map(|beam| beam.magnification_high)
        .fold(0.0, f64::max);
    let mut handles = vec![Handle {
        label: t!("aperture-age"),
        least: 8.0,
        most: 95.0,
        value: eye.age_years(),
        step: 1.0,
        page: 10.0,
        scale: Scale::Linear,
        spoken: Callback::from(|to: f64| t!("aperture-years", years = number(to, 0))),
    }];
    if most > least {
        handles.push(Handle {
            label: t!("view-power"),
            least,
            most,
            value: magnification.clamp(least, most),
            step: 0.1,
            page: 1.0,
            scale: Scale::Ratio,
            spoken: Callback::from(said_power),
        });
    }
    let inputs: Vec<String> = beams
        .iter()
        .map(|beam| {
            t!(
                "aperture-inputs",
                name = beam.name.clone(),
                low = number(beam.magnification_low, 1),
                high = number(beam.magnification_high, 1),
                objective = number(beam.objective_mm, 0)
            )
        })
        .gathered();
    let draw = move |values: &[f64], width_px: f64| {
        let age = values[0];
        let power = values.get(1).copied().unwrap_or(least);
        let pupil_mm = Eye::of_nearest_age(age)
            .with_offset(eye.pupil_offset_mm())
            .pupil_mm(luminance_cd_m2);
        let size = width_of_one(width_px, beams.len(), 132.0, 300.0);
        let mut words = vec![t!(
            "aperture-pupil",
            pupil = number(pupil_mm, 1),
            spread = number(SPREAD_MM, 1),
            years = number(age, 0)
        )];
        let mut drawings = Vec::with_capacity(beams.len());
        for beam in &beams {
            let magnification = power.clamp(beam.magnification_low, beam.magnification_high);
            let beam_mm = exit_pupil_mm(beam.objective_mm, magnification);
            let told = said(&beam.name, magnification, beam_mm, pupil_mm);
            drawings.push(Drawing {
                name: beam.name.clone(),
                note: said_power(magnification),
                said: told.clone(),
                class: "aperture",
                size_px: (size, size + 2.0 * ROW_PX - 4.0),
                origin_px: (0.5 * size, 0.5 * size),
                still: iris(size),
                inside: drawing(size, beam_mm, pupil_mm),
            });
            words.push(told);
        }
        Drawn {
            drawings,
            words,
            scale: t!("aperture-scale"),
        }
    };
    Told {
        title: t!("aperture-title"),
        file: "aperture",
        leaves_out: t!("aperture-leaves-out"),
        sources: vec![
            t!("aperture-source", luminance = number(luminance_cd_m2, 3)),
            t!("aperture-source-pupil"),
            t!("picture-inputs", what = inputs.together("; ")),
        ],
        handles,
        draw: Rc::new(draw),
        run_s: None,
    }
}

#[cfg(test)]
mod tests {
    use super::shares;

    #[test]
    fn shares_are_those_of_areas() {
        assert_eq!(shares(7.0, 7.0), (1.0, 1.0));
        assert_eq!(shares(8.0, 4.0), (0.25, 1.0));
        assert_eq!(shares(3.0, 6.0), (1.0, 0.25));
    }
}
