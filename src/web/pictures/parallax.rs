//! Parallax: move the eye and see target and mark part.

use super::frame::Frame;
use super::slider::{Scale, Slider};
use crate::need::answers::Units;
use crate::sight::ParallaxSetting;
use crate::sight::parallax::{free_distance_m, share_of_circle, with_offset_mm};
use crate::sight::pupil::{effective_objective_mm, exit_pupil_mm};
use crate::t;
use crate::web::view::prelude::*;
use crate::wording::{cm, number, range};

/// What [`ParallaxPicture`] is told.
#[derive(Properties, PartialEq)]
pub struct ParallaxPictureProps {
    /// Clear diameter of the objective in mm.
    pub objective_mm: f64,
    /// Magnification.
    pub magnification: f64,
    /// Where a fixed sight is free of parallax, in m.
    pub fixed_at_m: f64,
    /// Nearest setting of an adjustable sight, in m.
    pub adjustable_from_m: f64,
    /// The pupil of the eye, in mm.
    pub eye_pupil_mm: f64,
    /// Diameter of the aiming circle, in cm.
    pub aiming_circle_cm: f64,
    /// Nearest, first and farthest range in m.
    pub ranges_m: (f64, f64, f64),
    /// Units of the words.
    #[prop_or_default]
    pub units: Units,
}

const SIZE_PX: f64 = 152.0;
const HALF_PX: f64 = 76.0;
const EYE_PX_PER_MM: f64 = 9.0;
/// The aiming circle is drawn this large; errors at the same scale.
const CIRCLE_PX: f64 = 72.0;

/// Where the mark seems to lie on the target, in mm to the right; `None` when all is black.
///
/// A ray through the objective at height h heads for the axis at the parallax-free distance:
/// beyond it the mark seems to wander against the eye, nearer than it with the eye.
#[must_use]
pub fn mark_offset_mm(
    setting: ParallaxSetting,
    objective_mm: f64,
    magnification: f64,
    eye_pupil_mm: f64,
    eye_offset_mm: f64,
    range_m: f64,
) -> Option<f64> {
    let free_at_m = free_distance_m(setting, range_m);
    let size = with_offset_mm(
        effective_objective_mm(objective_mm, magnification),
        magnification,
        eye_pupil_mm,
        eye_offset_mm,
        free_at_m,
        range_m,
    )?;
    let side = if eye_offset_mm < 0.0 { -1.0 } else { 1.0 };
    let way = if range_m > free_at_m { -1.0 } else { 1.0 };
    Some(side * way * size)
}

/// The eye behind the exit pupil, and what it makes of the mark.
#[component]
pub fn ParallaxPicture(props: &ParallaxPictureProps) -> Html {
    let (near, first, far) = props.ranges_m;
    let offset = use_state_eq(|| 2.0);
    let at = use_state_eq(|| first);
    let on_offset = use_callback(offset.setter(), |to: f64, set| set.set(to));
    let on_range = use_callback(at.setter(), |to: f64, set| set.set(to));
    let spoken_range = use_callback(props.units, |to: f64, units| range(*units, to));
    let spoken_offset = use_callback((), |to: f64, ()| {
        let mm = number(to.abs(), 1);
        if to.abs() < 0.05 {
            t!("parallax-eye-centred")
        } else if to > 0.0 {
            t!("parallax-eye-right", mm = mm)
        } else {
            t!("parallax-eye-left", mm = mm)
        }
    });
    let exit = exit_pupil_mm(props.objective_mm, props.magnification);
    let mark = |setting| {
        mark_offset_mm(
            setting,
            props.objective_mm,
            props.magnification,
            props.eye_pupil_mm,
            *offset,
            *at,
        )
    };
    let fixed = mark(ParallaxSetting::Fixed {
        free_at_m: props.fixed_at_m,
    });
    let adjustable = mark(ParallaxSetting::Adjustable {
        nearest_m: props.adjustable_from_m,
    });
    let px_per_mm = CIRCLE_PX / (10.0 * props.aiming_circle_cm);
    let said = |mark: Option<f64>| match mark {
        None => t!("parallax-black"),
        Some(mm) if mm.abs() < 0.5 => t!("parallax-still"),
        Some(mm) => t!(
            "parallax-off",
            cm = cm(props.units, 0.1 * mm.abs()),
            share = number(
                100.0 * share_of_circle(mm.abs(), 10.0 * props.aiming_circle_cm),
                0
            )
        ),
    };
    let cross = |mark: f64, class: &'static str| {
        let x = (mark * px_per_mm).clamp(-HALF_PX + 6.0, HALF_PX - 6.0);
        html! {
            <path class={class} fill="none" stroke-width="2"
                d={format!("M{:.2} 0H{:.2}M{x:.2} -12V12", x - 12.0, x + 12.0)} />
        }
    };
    let view_box = format!("{0} {0} {SIZE_PX} {SIZE_PX}", -HALF_PX);
    let eye_px = |mm: f64| format!("{:.2}", mm * EYE_PX_PER_MM);
    let black = fixed.is_none();
    html! {
        <Frame title={t!("parallax-title")}
            scale={t!("parallax-scale", circle = cm(props.units, props.aiming_circle_cm))}
            leaves_out={t!("parallax-leaves-out")}
            sources={vec![AttrValue::from(t!("parallax-source"))]} file="parallax">
            <div class="picture__row">
                <figure class="view__slot">
                    <figcaption class="view__caption"><b>{ t!("parallax-eye") }</b></figcaption>
                    <svg data-keep="" role="img" aria-label={t!("parallax-eye-said", exit = number(exit, 1), pupil = number(props.eye_pupil_mm, 1))}
                        width={SIZE_PX.to_string()} height={SIZE_PX.to_string()} viewBox={view_box.clone()}>
                        <circle class="tone-dark" cx={eye_px(*offset)} r={eye_px(0.5 * props.eye_pupil_mm)} />
                        <circle class="pick" r={eye_px(0.5 * exit)} fill="none" stroke-width="2" />
                        <path class="soft" stroke-width="1" fill="none" d="M0 -70V70" stroke-dasharray="2 4" />
                    </svg>
                </figure>
                <figure class="view__slot">
                    <figcaption class="view__caption"><b>{ t!("parallax-target") }</b></figcaption>
                    <svg data-keep="" role="img" aria-label={t!("parallax-target-said")}
                        width={SIZE_PX.to_string()} height={SIZE_PX.to_string()} viewBox={view_box}>
                        if black {
                            <rect class="view__tube" x={(-HALF_PX).to_string()} y={(-HALF_PX).to_string()} width={SIZE_PX.to_string()} height={SIZE_PX.to_string()} />
                        } else {
                            <circle class="soft" r={format!("{:.1}", 0.5 * CIRCLE_PX)} fill="none" stroke-width="2" />
                            { cross(adjustable.unwrap_or(0.0), "soft") }
                            { cross(fixed.unwrap_or(0.0), "pick") }
                        }
                    </svg>
                </figure>
            </div>
            <div class="picture__words">
                <p>{ t!("parallax-fixed-at", free = range(props.units, props.fixed_at_m), at = range(props.units, *at)) }{ " " }{ said(fixed) }</p>
                <p>{ t!("parallax-adjustable-from", nearest = range(props.units, props.adjustable_from_m)) }{ " " }{ said(adjustable) }</p>
            </div>
            <Slider label={t!("parallax-offset")} least={-8.0} most=8.0 value={*offset} step=0.1 page=1.0
                spoken={spoken_offset} on_input={on_offset} />
            <Slider label={t!("view-range")} least={near} most={far} value={*at} step=1.0 page=10.0
                scale={Scale::Ratio} spoken={spoken_range} on_input={on_range} />
        </Frame>
    }
}

#[cfg(test)]
mod tests {
    use super::mark_offset_mm;
    use crate::sight::ParallaxSetting::{Adjustable, Fixed};

    #[test]
    fn the_mark_stands_still_where_the_sight_is_free() {
        let fixed = Fixed { free_at_m: 100.0 };
        let at = |setting, eye, range| mark_offset_mm(setting, 50.0, 10.0, 3.0, eye, range);
        assert_eq!(at(fixed, 2.0, 100.0), Some(0.0));
        assert_eq!(at(Adjustable { nearest_m: 10.0 }, 2.0, 250.0), Some(0.0));
        // Beyond, against the eye; nearer, with it; both sides alike.
        let far = at(fixed, 1.0, 200.0).unwrap();
        let near = at(fixed, 1.0, 50.0).unwrap();
        assert!(far < 0.0 && near > 0.0);
        assert_eq!(at(fixed, -1.0, 200.0), Some(-far));
        // e = M·x·|R − Rp|/Rp while the eye's pupil lies inside the exit pupil.
        assert!((far + 10.0).abs() < 1e-9);
        assert_eq!(at(fixed, 6.0, 200.0), None);
    }
}
