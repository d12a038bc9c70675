//! The flight: line of sight and path, and what dead on, marks, ring and clicks do at a range.

use super::crossing::between;
use super::picture::{Drawing, Drawn, Handle, Told};
use super::slider::Scale;
use crate::drawing::dusk::without_collisions;
use crate::drawing::path::push_pair;
use crate::drawing::svg::Svg;
use crate::filled;
use crate::need::answers::Units;
use crate::plain::Gathered;
use crate::plain::Together;
use crate::sight::reticle::MarkUnit;
use crate::sight::turret::ClickUnit;
use crate::t;
use crate::web::view::Callback;
use crate::wording::{angle, cm, number, range, round_m};
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

/// What the picture of the flight is told.
#[derive(Clone, Debug, PartialEq)]
pub struct FlightPicture {
    /// The path by rising range, from the muzzle on.
    pub path: Rc<Vec<Point>>,
    /// The zero in m.
    pub zero_m: f64,
    /// Radius of the aiming circle in cm.
    pub circle_radius_cm: f64,
    /// Hold marks of the reticle in mrad, none without.
    pub marks_mrad: Vec<f64>,
    /// The unit of the marks, and of the turret with them.
    pub unit: MarkUnit,
    /// Range to begin with, in m.
    pub range_m: f64,
    /// The load's figures, for "where does this come from".
    pub inputs: String,
    /// Units of the words.
    pub units: Units,
}

/// Widest drawing, px.
const WIDEST_PX: f64 = 720.0;
/// Over the drawing: where the zero lies, and where the path leaves the circle.
const TOP_PX: f64 = 24.0;
const BOTTOM_PX: f64 = 28.0;
/// Room for the handle at the right end.
const RIGHT_PX: f64 = 10.0;
/// A ring cut for one load has a mark at every so many metres or yards (assumption).
const RING_EVERY: f64 = 50.0;
/// Height of the second drawing, px; the circle takes half of what the words leave.
const MEANS_PX: f64 = 148.0;

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

/// A way to meet the point of aim, and where the shot then falls.
struct Means {
    name: String,
    off_cm: f64,
    spread_cm: f64,
}

/// Where a path passes, beside the line of sight.
pub(super) fn said_place(units: Units, path_cm: f64) -> String {
    if path_cm.abs() < 0.05 {
        t!("flight-on")
    } else if path_cm < 0.0 {
        t!("flight-low", cm = cm(units, -path_cm))
    } else {
        t!("flight-high", cm = cm(units, path_cm))
    }
}

impl FlightPicture {
    fn path_cm(&self, range_m: f64) -> f64 {
        self.at(range_m, |p| p.path_cm)
    }

    fn spread_cm(&self, range_m: f64) -> f64 {
        self.at(range_m, |p| p.spread_cm)
    }

    fn at(&self, range_m: f64, of: fn(&Point) -> f64) -> f64 {
        let n = self.path.partition_point(|p| p.range_m < range_m);
        let around = &self.path[n.saturating_sub(1)..(n + 1).min(self.path.len())];
        let rows: Vec<(f64, f64)> = around.iter().map(|p| (p.range_m, of(p))).gathered();
        between(&rows, range_m)
    }

    fn hold_mrad(&self, range_m: f64) -> f64 {
        -10.0 * self.path_cm(range_m) / range_m.max(1.0)
    }

    /// Where a hold or a setting of `mrad` lets the shot fall at a range, in cm.
    fn off_cm(&self, mrad: f64, range_m: f64) -> f64 {
        0.1 * (mrad - self.hold_mrad(range_m)) * range_m
    }

    fn nearest_mark(&self, hold_mrad: f64) -> Option<f64> {
        self.marks_mrad
            .iter()
            .copied()
            .chain((!self.marks_mrad.is_empty()).then_some(0.0))
            .min_by(|a, b| (a - hold_mrad).abs().total_cmp(&(b - hold_mrad).abs()))
    }

    /// The engraved distance nearest to a range: the zero, or a multiple of 50 m or yd beyond.
    fn engraved_m(&self, range_m: f64) -> f64 {
        let every_m = RING_EVERY * round_m(self.units);
        let multiple = (range_m / every_m).round() * every_m;
        multiple.max(self.zero_m)
    }

    /// The usual click of a turret that counts as the marks do (common practice, no source).
    fn click(&self) -> (ClickUnit, String) {
        match self.unit {
            MarkUnit::Mrad => (ClickUnit::TenthMrad, t!("zero-click-tenth_mrad")),
            MarkUnit::Moa => (ClickUnit::QuarterMoa, t!("zero-click-quarter_moa")),
        }
    }

    fn means(&self, range_m: f64) -> Vec<Means> {
        let hold = self.hold_mrad(range_m);
        let spread_cm = self.spread_cm(range_m);
        let mut all = vec![Means {
            name: t!("flight-means-dead-on"),
            off_cm: self.path_cm(range_m),
            spread_cm,
        }];
        let mut push = |name, mrad| {
            all.push(Means {
                name,
                off_cm: self.off_cm(mrad, range_m),
                spread_cm,
            });
        };
        if let Some(mark) = self.nearest_mark(hold) {
            push(t!("flight-means-mark"), mark);
        }
        push(
            t!("flight-means-ring"),
            self.hold_mrad(self.engraved_m(range_m)),
        );
        let (click, _) = self.click();
        let clicks = click.clicks(hold).round();
        push(t!("flight-means-dial"), clicks * click.mrad());
        all
    }

    fn words(&self, range_m: f64) -> Vec<String> {
        let units = self.units;
        let path_cm = self.path_cm(range_m);
        let hold = self.hold_mrad(range_m);
        let place = said_place(units, path_cm);
        let (click, click_name) = self.click();
        let mut said = vec![
            t!(
                "flight-dead-on",
                range = range(units, range_m),
                place = place,
                spread = cm(units, self.spread_cm(range_m))
            ),
            t!(
                "flight-hold",
                angle = angle(self.unit, hold),
                clicks = number(click.clicks(hold), 0),
                click = click_name
            ),
        ];
        let off = |mrad: f64| cm(units, self.off_cm(mrad, range_m).abs());
        if let Some(mark) = self.nearest_mark(hold) {
            said.push(t!(
                "flight-mark",
                mark = angle(self.unit, mark),
                off = off(mark)
            ));
        }
        let engraved = self.engraved_m(range_m);
        said.push(t!(
            "flight-ring",
            every = range(units, RING_EVERY * round_m(units)),
            engraved = range(units, engraved),
            off = off(self.hold_mrad(engraved))
        ));
        if let Some(reach) = dead_on_reach_m(&self.path, self.circle_radius_cm) {
            said.push(t!(
                "flight-reach",
                circle = cm(units, 2.0 * self.circle_radius_cm),
                reach = range(units, reach)
            ));
        }
        said.push(t!("flight-caution"));
        said
    }

    /// The path over the range.
    fn course(&self, range_m: f64, width_px: f64, height_px: f64) -> (Svg, Svg, f64) {
        let (Some(first), Some(last)) = (self.path.first(), self.path.last()) else {
            return (Svg::default(), Svg::default(), 1.0);
        };
        let (near, far) = (first.range_m, last.range_m);
        let highest = self
            .path
            .iter()
            .map(|p| p.path_cm + p.spread_cm)
            .fold(self.circle_radius_cm, f64::max);
        let lowest = self
            .path
            .iter()
            .map(|p| p.path_cm - p.spread_cm)
            .fold(-self.circle_radius_cm, f64::min);
        let px_per_m = (width_px - RIGHT_PX) / (far - near).max(1.0);
        let px_per_cm = (height_px - TOP_PX - BOTTOM_PX) / (highest - lowest).max(0.1);
        let x = |range_m: f64| (range_m - near) * px_per_m;
        let y = |path_cm: f64| TOP_PX + (highest - path_cm) * px_per_cm;
        let mut line = String::new();
        let mut cloud = String::new();
        for (n, p) in self.path.iter().enumerate() {
            let to = if n == 0 { 'M' } else { 'L' };
            push_pair(&mut line, to, x(p.range_m), y(p.path_cm), 1);
            push_pair(&mut cloud, to, x(p.range_m), y(p.path_cm + p.spread_cm), 1);
        }
        for p in self.path.iter().rev() {
            push_pair(&mut cloud, 'L', x(p.range_m), y(p.path_cm - p.spread_cm), 1);
        }
        cloud.push('Z');
        let bottom = height_px - BOTTOM_PX;
        let mut svg = Svg::default();
        svg.rectangle(
            "flight__circle",
            0.0,
            y(self.circle_radius_cm),
            width_px,
            2.0 * self.circle_radius_cm * px_per_cm,
        );
        svg.fill("flight__spread", &cloud);
        svg.line("ink", 1.0, "", &filled!("M0 {.1}H{.0}", y(0.0), width_px));
        svg.line("pick", 2.0, "", &line);
        let mut top = Vec::new();
        if let Some(reach) = dead_on_reach_m(&self.path, self.circle_radius_cm) {
            svg.line(
                "soft",
                1.5,
                "3 3",
                &filled!("M{.1} {.1}V{.1}", x(reach), TOP_PX, bottom),
            );
            let words = t!("flight-leaves", range = range(self.units, reach));
            top.push((reach, 0.5, words));
        }
        // The zero: a small tick on the line of sight.
        svg.line(
            "ink",
            2.0,
            "",
            &filled!("M{.1} {.1}v8", x(self.zero_m), y(0.0) - 4.0),
        );
        top.push((
            self.zero_m,
            0.0,
            t!("flight-zero", range = range(self.units, self.zero_m)),
        ));
        let places: Vec<(f64, f64)> = top
            .iter()
            .map(|(range_m, aside, words)| {
                let wide = 7.4 * words.chars().count() as f64;
                let most = (width_px - 0.5 * wide).max(0.5 * wide);
                ((x(*range_m) + aside * wide).clamp(0.5 * wide, most), wide)
            })
            .gathered();
        let free = without_collisions(&places, 6.0);
        for (((.., words), (at, _)), free) in top.iter().zip(&places).zip(free) {
            if free {
                svg.text("strip__tick", "middle", *at, TOP_PX - 9.0, words);
            }
        }
        // The circle's measure at the left edge.
        let (high, low) = (y(self.circle_radius_cm), y(-self.circle_radius_cm));
        svg.line(
            "ink",
            1.0,
            "",
            &filled!("M1 {.1}h6M1 {.1}h6M4 {.1}V{.1}", high, low, high, low),
        );
        let circle = cm(self.units, 2.0 * self.circle_radius_cm);
        svg.text("strip__tick", "start", 1.0, low + 16.0, &circle);
        let room_m = 64.0 / px_per_m;
        let every = [50.0, 100.0, 200.0, 250.0, 500.0]
            .into_iter()
            .find(|every| *every >= room_m)
            .unwrap_or(1000.0);
        let mut tick = every;
        while x(tick) + 24.0 < width_px {
            svg.line(
                "soft",
                1.0,
                "",
                &filled!("M{.1} {.1}v4", x(tick), bottom + 4.0),
            );
            svg.text(
                "strip__tick",
                "middle",
                x(tick),
                height_px - 6.0,
                &range(self.units, tick),
            );
            tick += every;
        }
        let still = core::mem::take(&mut svg);
        let at = filled!("M{.1} {.1}V{.1}", x(range_m), TOP_PX, bottom);
        svg.line("halo", 6.0, "", &at);
        svg.line("ink", 2.0, "", &at);
        svg.disc("halo-fill", x(range_m), y(self.path_cm(range_m)), 7.0);
        svg.disc("ink-fill", x(range_m), y(self.path_cm(range_m)), 5.0);
        (still, svg, 100.0 * px_per_cm / px_per_m)
    }

    /// What each means does at the range, against the aiming circle.
    fn columns(&self, range_m: f64, width_px: f64) -> (Svg, Svg) {
        let means = self.means(range_m);
        let column = width_px / means.len() as f64;
        let circle_px = 0.5 * (MEANS_PX - 40.0);
        let px_per_cm = circle_px / (2.0 * self.circle_radius_cm).max(0.01);
        let middle = 0.5 * (MEANS_PX - 40.0) + 2.0;
        let (top, bottom) = (8.0, MEANS_PX - 44.0);
        let mut still = Svg::default();
        let mut svg = Svg::default();
        still.rectangle(
            "flight__circle",
            0.0,
            middle - 0.5 * circle_px,
            width_px,
            circle_px,
        );
        still.line("ink", 1.0, "", &filled!("M0 {.1}H{.0}", middle, width_px));
        for (n, way) in means.iter().enumerate() {
            let x = (n as f64 + 0.5) * column;
            let y = (middle - way.off_cm * px_per_cm).clamp(top, bottom);
            let beyond = (middle - way.off_cm * px_per_cm - y).abs() > 0.5;
            let spread = way.spread_cm * px_per_cm;
            svg.line(
                "pick",
                2.0,
                "",
                &filled!(
                    "M{.1} {.1}V{.1}",
                    x,
                    (y - spread).max(2.0),
                    (y + spread).min(MEANS_PX - 38.0)
                ),
            );
            svg.disc("halo-fill", x, y, 6.5);
            if beyond {
                // It lies beyond the drawing: an arrow.
                let way_px = if way.off_cm < 0.0 { 7.0 } else { -7.0 };
                svg.fill(
                    "fails-fill",
                    &filled!("M{.1} {.1}h14l-7 {.1}Z", x - 7.0, y, way_px),
                );
            } else {
                svg.disc("ink-fill", x, y, 4.5);
            }
            still.text("flight__means", "middle", x, MEANS_PX - 22.0, &way.name);
            let off = if way.off_cm.abs() < 0.05 {
                t!("flight-means-on")
            } else {
                format!(
                    "{}{}",
                    if way.off_cm < 0.0 { "−" } else { "+" },
                    cm(self.units, way.off_cm.abs())
                )
            };
            svg.text("strip__tick", "middle", x, MEANS_PX - 5.0, &off);
        }
        (still, svg)
    }

    fn drawn(&self, range_m: f64, width_px: f64) -> Drawn {
        let width_px = width_px.clamp(240.0, WIDEST_PX);
        let height_px = (0.55 * width_px).clamp(190.0, 320.0).round();
        let (still, course, exaggeration) = self.course(range_m, width_px, height_px);
        let (names, means) = self.columns(range_m, width_px);
        let words = self.words(range_m);
        let far = self.path.last().map_or(0.0, |p| p.range_m);
        Drawn {
            drawings: vec![
                Drawing {
                    note: t!("flight-course-note"),
                    said: words.together(" "),
                    class: "flight",
                    size_px: (width_px, height_px),
                    still,
                    inside: course,
                    ..Drawing::default()
                },
                Drawing {
                    name: t!("flight-means"),
                    note: t!("flight-means-note", range = range(self.units, range_m)),
                    said: t!("flight-means"),
                    class: "flight",
                    size_px: (width_px, MEANS_PX),
                    still: names,
                    inside: means,
                    ..Drawing::default()
                },
            ],
            words,
            scale: t!(
                "flight-scale",
                times = number(exaggeration, 0),
                range = range(self.units, far),
                circle = cm(self.units, 2.0 * self.circle_radius_cm)
            ),
        }
    }

    /// The path and the line of sight; none without a path.
    #[must_use]
    pub fn told(self) -> Option<Told> {
        let (near, far) = (self.path.first()?.range_m, self.path.last()?.range_m);
        let units = self.units;
        Some(Told {
            title: t!("flight-title"),
            file: "flight",
            leaves_out: t!("flight-leaves-out"),
            sources: vec![
                t!("flight-source"),
                t!("picture-inputs", what = self.inputs.clone()),
            ],
            handles: vec![Handle {
                label: t!("view-range"),
                least: near.max(5.0),
                most: far,
                value: self.range_m.clamp(near.max(5.0), far.max(5.0)),
                step: 1.0,
                page: 25.0,
                scale: Scale::Linear,
                spoken: Callback::from(move |to: f64| range(units, to)),
            }],
            draw: Rc::new(move |values, width_px| self.drawn(values[0], width_px)),
            run_s: None,
        })
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
