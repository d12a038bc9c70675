//! The eye's aperture: the beam that leaves the sight over the pupil that has to take it.

use super::frame::Frame;
use super::slider::{Scale, Slider};
use super::through_sight::said_power;
use crate::eye::Eye;
use crate::sight::pupil::exit_pupil_mm;
use crate::t;
use crate::web::view::prelude::*;
use crate::wording::number;

/// A sight whose beam is shown.
#[derive(Clone, Debug, PartialEq)]
pub struct Beam {
    /// Its name, as in "your pick".
    pub name: AttrValue,
    /// Lowest magnification.
    pub magnification_low: f64,
    /// Highest magnification.
    pub magnification_high: f64,
    /// Clear diameter of the objective in mm.
    pub objective_mm: f64,
}

/// What [`EyeAperture`] is told.
#[derive(Properties, PartialEq)]
pub struct EyeApertureProps {
    /// One or two sights.
    pub beams: Vec<Beam>,
    /// The eye.
    pub eye: Eye,
    /// Luminance that the eye is adapted to, in cd/m².
    pub luminance_cd_m2: f64,
    /// Magnification to begin with.
    pub magnification: f64,
}

/// One standard deviation of the pupil between persons of one age, mm.
const SPREAD_MM: f64 = 0.8;
/// Diameter of the iris, mm.
const IRIS_MM: f64 = 12.0;
/// Pixels for a millimetre of the eye.
const PX_PER_MM: f64 = 11.0;
const SIZE_PX: f64 = 152.0;

/// Shares of the beam that enters and of the pupil that is filled, 0 to 1.
#[must_use]
pub fn shares(beam_mm: f64, pupil_mm: f64) -> (f64, f64) {
    let square = |x: f64| (x * x).min(1.0);
    (square(pupil_mm / beam_mm), square(beam_mm / pupil_mm))
}

/// The beam over the pupil, through the zoom and through the years.
#[component]
pub fn EyeAperture(props: &EyeApertureProps) -> Html {
    let power = use_state_eq(|| props.magnification);
    let age = use_state_eq(|| props.eye.age_years());
    let least = props
        .beams
        .iter()
        .map(|beam| beam.magnification_low)
        .fold(f64::INFINITY, f64::min);
    let most = props
        .beams
        .iter()
        .map(|beam| beam.magnification_high)
        .fold(0.0, f64::max);
    let on_power = use_callback(power.setter(), |to: f64, set| set.set(to));
    let on_age = use_callback(age.setter(), |to: f64, set| set.set(to));
    let spoken_power = use_callback((), |to: f64, ()| said_power(to));
    let spoken_age = use_callback((), |to: f64, ()| {
        t!("aperture-years", years = number(to, 0))
    });
    let Ok(eye) = Eye::of_age(*age) else {
        return Html::default();
    };
    let eye = eye.with_offset(props.eye.pupil_offset_mm());
    let pupil = eye.pupil_mm(props.luminance_cd_m2);
    let px = |mm: f64| format!("{:.2}", mm * PX_PER_MM);
    let mut said = Vec::new();
    let pictures: Vec<Html> = props
        .beams
        .iter()
        .map(|beam| {
            let magnification = power.clamp(beam.magnification_low, beam.magnification_high);
            let d = exit_pupil_mm(beam.objective_mm, magnification);
            let (enters, filled) = shares(d, pupil);
            let percent = |share: f64| number(100.0 * share, 0);
            said.push(if d > pupil {
                t!(
                    "aperture-over",
                    name = beam.name.to_string(),
                    power = said_power(magnification),
                    beam = number(d, 1),
                    enters = percent(enters),
                    lost = percent(1.0 - enters)
                )
            } else {
                t!(
                    "aperture-under",
                    name = beam.name.to_string(),
                    power = said_power(magnification),
                    beam = number(d, 1),
                    filled = percent(filled)
                )
            });
            let label = said.last().cloned().unwrap_or_default();
            html! {
                <figure class="view__slot">
                    <figcaption class="view__caption">
                        <b>{ beam.name.clone() }</b>
                        <span class="view__covers">{ format!("{} · {}", said_power(magnification), t!("aperture-mm", mm = number(d, 1))) }</span>
                    </figcaption>
                    <svg class="aperture" data-keep="" role="img" aria-label={label} width={SIZE_PX.to_string()}
                        height={SIZE_PX.to_string()} viewBox={format!("{0} {0} {SIZE_PX} {SIZE_PX}", -0.5 * SIZE_PX)}>
                        <circle class="tone-mid" r={px(0.5 * IRIS_MM)} />
                        <circle class="tone-dark" r={px(0.5 * pupil)} />
                        <circle class="aperture__spread" r={px(0.5 * (pupil + SPREAD_MM))} fill="none" stroke-dasharray="2 3" />
                        <circle class="aperture__spread" r={px((0.5 * (pupil - SPREAD_MM)).max(0.1))} fill="none" stroke-dasharray="2 3" />
                        <circle class="aperture__light" r={px(0.5 * d.min(pupil))} />
                        if d > pupil {
                            // Light on the iris: a ring.
                            <circle class="aperture__lost" r={px(0.25 * (d + pupil))} fill="none" stroke-width={px(0.5 * (d - pupil))} />
                        }
                        <circle class="pick" r={px(0.5 * d)} fill="none" stroke-width="2" />
                        <path class="ink" stroke-width="1.5" fill="none"
                            d={format!("M{0:.1} 69v5M{0:.1} 71.5H{1:.1}M{1:.1} 69v5", -2.5 * PX_PER_MM, 2.5 * PX_PER_MM)} />
                    </svg>
                </figure>
            }
        })
        .collect();
    html! {
        <Frame title={t!("aperture-title")} scale={t!("aperture-scale")} leaves_out={t!("aperture-leaves-out")}
            sources={vec![AttrValue::from(t!("aperture-source", luminance = number(props.luminance_cd_m2, 3))), AttrValue::from(t!("aperture-source-pupil"))]}
            file="aperture">
            <div class="picture__row">{ for pictures }</div>
            <div class="picture__words">
                <p>{ t!("aperture-pupil", pupil = number(pupil, 1), spread = number(SPREAD_MM, 1), years = number(*age, 0)) }</p>
                { for said.iter().map(|words| html! { <p>{ words.clone() }</p> }) }
            </div>
            if most > least {
                <Slider label={t!("view-power")} {least} {most} value={*power} step=0.1 page=1.0
                    scale={Scale::Ratio} spoken={spoken_power} on_input={on_power} />
            }
            <Slider label={t!("aperture-age")} least=8.0 most=95.0 value={*age} step=1.0 page=10.0
                spoken={spoken_age} on_input={on_age} />
        </Frame>
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
