//! The flight: line of sight and path, and what dead on, marks and clicks do at a range.

use super::crossing::between;
use super::frame::Frame;
use super::slider::Slider;
use crate::drawing::path::push_pair;
use crate::need::answers::Units;
use crate::t;
use crate::web::view::prelude::*;
use crate::wording::{cm, mrad, number, range};
use std::rc::Rc;

/// A point of the path.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Point {
    /// Range in m.
    pub range_m: f64,
    /// Height over the line of sight in cm.
    pub path_cm: f64,
    /// One standard deviation of it in cm: velocity, air and estimate of the range.
    pub spread_cm: f64,
}

/// What [`FlightPicture`] is told.
#[derive(Properties, PartialEq)]
pub struct FlightPictureProps {
    /// The path by rising range, from the muzzle on.
    pub path: Rc<Vec<Point>>,
    /// The zero in m.
    pub zero_m: f64,
    /// Radius of the aiming circle in cm.
    pub circle_radius_cm: f64,
    /// Hold marks of the reticle in mrad, 0 without.
    #[prop_or_default]
    pub marks_mrad: Vec<f64>,
    /// A click of the turret in mrad.
    pub click_mrad: f64,
    /// Range to begin with, in m.
    pub range_m: f64,
    /// Units of the words.
    #[prop_or_default]
    pub units: Units,
}

const WIDTH_PX: f64 = 328.0;
const HEIGHT_PX: f64 = 200.0;
const TOP_PX: f64 = 12.0;
const BOTTOM_PX: f64 = 28.0;

/// The last range up to which the path stays within the circle, dead on, after it was within.
#[must_use]
pub fn dead_on_reach_m(path: &[Point], radius_cm: f64) -> Option<f64> {
    let mut inside = None;
    for pair in path.windows(2) {
        let (a, b) = (pair[0], pair[1]);
        let within = |p: Point| p.path_cm.abs() <= radius_cm;
        if within(a) && !within(b) {
            let bound = if b.path_cm < 0.0 {
                -radius_cm
            } else {
                radius_cm
            };
            let t = (bound - a.path_cm) / (b.path_cm - a.path_cm);
            return Some(a.range_m + t * (b.range_m - a.range_m));
        }
        if within(b) {
            inside = Some(b.range_m);
        }
    }
    inside
}

/// The path and the line of sight.
#[component]
pub fn FlightPicture(props: &FlightPictureProps) -> Html {
    let at = use_state_eq(|| props.range_m);
    let on_range = use_callback(at.setter(), |to: f64, set| set.set(to));
    let spoken_range = use_callback(props.units, |to: f64, units| range(*units, to));
    let (Some(first), Some(last)) = (props.path.first(), props.path.last()) else {
        return Html::default();
    };
    let (near, far) = (first.range_m, last.range_m);
    let highest = props
        .path
        .iter()
        .map(|p| p.path_cm + p.spread_cm)
        .fold(props.circle_radius_cm, f64::max);
    let lowest = props
        .path
        .iter()
        .map(|p| p.path_cm - p.spread_cm)
        .fold(-props.circle_radius_cm, f64::min);
    let px_per_m = WIDTH_PX / (far - near).max(1.0);
    let px_per_cm = (HEIGHT_PX - TOP_PX - BOTTOM_PX) / (highest - lowest).max(0.1);
    let x = |range_m: f64| (range_m - near) * px_per_m;
    let y = |path_cm: f64| TOP_PX + (highest - path_cm) * px_per_cm;
    let exaggeration = 100.0 * px_per_cm / px_per_m;
    let mut line = String::new();
    let mut cloud = String::new();
    for (n, p) in props.path.iter().enumerate() {
        let command = if n == 0 { 'M' } else { 'L' };
        push_pair(&mut line, command, x(p.range_m), y(p.path_cm), 1);
        push_pair(
            &mut cloud,
            command,
            x(p.range_m),
            y(p.path_cm + p.spread_cm),
            1,
        );
    }
    for p in props.path.iter().rev() {
        push_pair(&mut cloud, 'L', x(p.range_m), y(p.path_cm - p.spread_cm), 1);
    }
    cloud.push('Z');
    let table: Vec<(f64, f64)> = props.path.iter().map(|p| (p.range_m, p.path_cm)).collect();
    let spreads: Vec<(f64, f64)> = props
        .path
        .iter()
        .map(|p| (p.range_m, p.spread_cm))
        .collect();
    let path_cm = between(&table, *at);
    let spread_cm = between(&spreads, *at);
    let hold_mrad = -10.0 * path_cm / at.max(1.0);
    let reach = dead_on_reach_m(&props.path, props.circle_radius_cm);
    let place = if path_cm.abs() < 0.05 {
        t!("flight-on")
    } else if path_cm < 0.0 {
        t!("flight-low", cm = cm(props.units, -path_cm))
    } else {
        t!("flight-high", cm = cm(props.units, path_cm))
    };
    let mut said = vec![t!(
        "flight-dead-on",
        range = range(props.units, *at),
        place = place,
        spread = cm(props.units, spread_cm)
    )];
    said.push(t!(
        "flight-hold",
        mrad = mrad(hold_mrad),
        clicks = number(hold_mrad / props.click_mrad, 0)
    ));
    if let Some(mark) = props
        .marks_mrad
        .iter()
        .copied()
        .min_by(|a, b| (a - hold_mrad).abs().total_cmp(&(b - hold_mrad).abs()))
    {
        let off_cm = 0.1 * (mark - hold_mrad) * *at;
        said.push(t!(
            "flight-mark",
            mark = mrad(mark),
            off = cm(props.units, off_cm.abs())
        ));
    }
    if let Some(reach) = reach {
        said.push(t!(
            "flight-reach",
            circle = cm(props.units, 2.0 * props.circle_radius_cm),
            reach = range(props.units, reach)
        ));
    }
    said.push(t!("flight-caution"));
    let every = if far > 600.0 {
        200.0
    } else if far > 250.0 {
        100.0
    } else {
        50.0
    };
    let ticks = (1..)
        .map(|n| f64::from(n) * every)
        .take_while(|tick| *tick < far - 0.04 * far)
        .collect::<Vec<_>>();
    let handle = x(*at);
    html! {
        <Frame title={t!("flight-title")} scale={t!("flight-scale", times = number(exaggeration, 0), range = range(props.units, far))}
            leaves_out={t!("flight-leaves-out")} sources={vec![AttrValue::from(t!("flight-source"))]} file="flight">
            <svg class="flight" data-keep="" role="img" aria-label={said.join(" ")} width={WIDTH_PX.to_string()}
                height={HEIGHT_PX.to_string()} viewBox={format!("0 0 {WIDTH_PX} {HEIGHT_PX}")}>
                <rect class="flight__circle" x="0" width={WIDTH_PX.to_string()} y={format!("{:.1}", y(props.circle_radius_cm))}
                    height={format!("{:.1}", 2.0 * props.circle_radius_cm * px_per_cm)} />
                <path class="flight__spread" d={cloud} />
                <path class="ink" stroke-width="1" fill="none" d={format!("M0 {0:.1}H{WIDTH_PX}", y(0.0))} />
                <path class="pick" stroke-width="2" fill="none" d={line} />
                if let Some(reach) = reach {
                    <path class="soft" stroke-width="1.5" fill="none" stroke-dasharray="3 3"
                        d={format!("M{0:.1} {1:.1}V{2:.1}", x(reach), TOP_PX, HEIGHT_PX - BOTTOM_PX)} />
                }
                { for ticks.iter().map(|tick| html! {
                    <g>
                        <path class="soft" stroke-width="1" d={format!("M{:.1} {:.1}v4", x(*tick), HEIGHT_PX - BOTTOM_PX + 4.0)} />
                        <text class="strip__tick" x={format!("{:.1}", x(*tick))} y={format!("{:.1}", HEIGHT_PX - 6.0)} text-anchor="middle">
                            { range(props.units, *tick) }
                        </text>
                    </g>
                }) }
                <path class="halo" stroke-width="6" fill="none" d={format!("M{handle:.1} {TOP_PX}V{:.1}", HEIGHT_PX - BOTTOM_PX)} />
                <path class="ink" stroke-width="2" fill="none" d={format!("M{handle:.1} {TOP_PX}V{:.1}", HEIGHT_PX - BOTTOM_PX)} />
                <circle class="ink-fill" cx={format!("{handle:.1}")} cy={format!("{:.1}", y(path_cm))} r="5" />
            </svg>
            <div class="picture__words">
                { for said.iter().map(|words| html! { <p>{ words.clone() }</p> }) }
            </div>
            <Slider label={t!("view-range")} least={near.max(5.0)} most={far} value={*at} step=1.0 page=25.0
                spoken={spoken_range} on_input={on_range} />
        </Frame>
    }
}

#[cfg(test)]
mod tests {
    use super::{Point, dead_on_reach_m};

    fn path(points: &[(f64, f64)]) -> Vec<Point> {
        points
            .iter()
            .map(|&(range_m, path_cm)| Point {
                range_m,
                path_cm,
                spread_cm: 0.0,
            })
            .collect()
    }

    #[test]
    fn the_reach_ends_where_the_path_leaves_the_circle() {
        let falling = path(&[(0.0, -4.5), (100.0, 0.0), (200.0, -12.0)]);
        assert_eq!(dead_on_reach_m(&falling, 6.0), Some(150.0));
        assert_eq!(dead_on_reach_m(&falling, 20.0), Some(200.0));
        assert_eq!(dead_on_reach_m(&[], 6.0), None);
    }
}
