//! Side views of what is shot at, scaled to an animal's height and length.
//!
//! A drawing is a few lines of text in `silhouettes/`, the file's name its key. `plan height
//! 164` says that y is in hundredths of the shoulder height and that the head-body length of the
//! drawn proportions is 164 of the same unit; `plan length 100` that both axes are in hundredths
//! of the length. `aim` is the middle of the aiming circle. Then pieces, back to front: `dark`,
//! `mid` and `light` outlines through points `x,y` (`!` marks a corner, `+` begins a further
//! outline of the same piece), and limbs, `limb-dark` and so on, whose points carry half the
//! width as well. Words that are an outline by themselves: `ox,y,r` is a disc, `hx,k,h,l` a
//! hoofed hind leg whose cannon stands at x, k times as thick and h times as tall as the one in
//! `parts.txt`, its top l further forward; `f` is a foreleg, `p` and `q` a dog's hind and
//! foreleg. x grows towards the nose, y upwards from the ground.
//!
//! build.rs takes the remarks out and makes every point relative to the one before it, which
//! halves what the page has to load.
//!
//! What tells one animal from another is drawn up to a fifth larger than life, so that it is
//! still there at 24 px: the hooks of the chamois and the prongs of the pronghorn, the palms of
//! fallow deer and moose, rump patches, the spots of fallow and sika deer, the flag of the
//! white-tailed deer, the hump of the muntjac's back. Height and length are never touched.

use super::path::{Point, area, limb_outline, perimeter, push_outline};
use crate::plain::Gathered;
use crate::plain::decimal;

/// One of the three tones of a drawing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Tone {
    /// The body itself.
    Dark,
    /// What lies behind or is paler than the body.
    Mid,
    /// White patches, eyes, scoring rings.
    Light,
}

/// A piece of a drawing: one path of one tone.
#[derive(Clone, Debug, PartialEq)]
pub struct Piece {
    /// Its tone.
    pub tone: Tone,
    /// SVG path data in cm, x to the right and y downwards, the middle of the aiming circle
    /// at 0, 0.
    pub path: String,
    /// Area of the largest outline that counts for seeing it, in cm²: of a shape longer than
    /// seven times its width only seven widths count.
    pub seen_area_cm2: f64,
}

/// A figure to scale.
#[derive(Clone, Debug, PartialEq)]
pub struct Figure {
    /// Pieces, back to front.
    pub pieces: Vec<Piece>,
    /// Left edge in cm from the middle of the aiming circle.
    pub left_cm: f64,
    /// Right edge.
    pub right_cm: f64,
    /// Top edge, negative.
    pub top_cm: f64,
    /// Bottom edge: where it stands.
    pub bottom_cm: f64,
}

impl Figure {
    /// Full width in cm.
    #[must_use]
    pub fn width_cm(&self) -> f64 {
        self.right_cm - self.left_cm
    }

    /// Full height in cm, antlers and ears included.
    #[must_use]
    pub fn height_cm(&self) -> f64 {
        self.bottom_cm - self.top_cm
    }
}

include!(concat!(env!("OUT_DIR"), "/drawings.rs"));

/// The keys of every drawing, in the order of the alphabet.
pub fn keys() -> impl Iterator<Item = &'static str> {
    DRAWINGS.iter().map(|(key, _)| *key)
}

/// The drawing of `key`, scaled to a shoulder height and a head-body length in cm.
///
/// Where the animal has no shoulder height in the table, or the drawing's plan goes by
/// length, the length alone sets the scale.
///
/// # Validity
/// Posture and proportions are typical; the drawn animal stands broadside. The horizontal
/// extent follows the posture: a raised head takes less room than the head-body length.
#[must_use]
pub fn silhouette(
    key: &str,
    shoulder_height_cm: Option<f64>,
    head_body_length_cm: f64,
) -> Option<Figure> {
    let (_, text) = DRAWINGS.iter().find(|(name, _)| *name == key)?;
    read(text, shoulder_height_cm, head_body_length_cm)
}

fn tone(word: &str) -> Option<Tone> {
    Some(match word {
        "dark" => Tone::Dark,
        "mid" => Tone::Mid,
        "light" => Tone::Light,
        _ => return None,
    })
}

fn numbers(text: &str) -> Vec<f64> {
    text.split(',').filter_map(decimal).gathered()
}

/// Where a drawing's units lie in cm.
struct Plan {
    x_cm: f64,
    y_cm: f64,
    aim: (f64, f64),
}

impl Plan {
    fn point(&self, x: f64, y: f64, corner: bool) -> Point {
        Point {
            x: (x - self.aim.0) * self.x_cm,
            y: (self.aim.1 - y) * self.y_cm,
            corner,
        }
    }

    /// The outlines that the words of one part, between two `+`, stand for.
    fn outlines(&self, words: &str, limb: bool) -> Vec<Vec<Point>> {
        let mut all = Vec::new();
        let mut line = Vec::new();
        for word in words.split(' ') {
            let n = numbers(word.get(1..).unwrap_or(""));
            let of = |at: usize, else_: f64| n.get(at).copied().unwrap_or(else_);
            let (x, k) = (of(0, 0.0), of(1, 1.0));
            let leg = match word.as_bytes().first() {
                Some(b'f') => 0,
                Some(b'h') => 1,
                Some(b'q') => 2,
                Some(b'p') => 3,
                Some(b'o') => {
                    let r = of(2, 1.0);
                    let ring = [(-r, 0.0), (0.0, r), (r, 0.0), (0.0, -r)];
                    all.push(ring.map(|(a, b)| self.point(x + a, k + b, false)).to_vec());
                    continue;
                }
                _ => {
                    line.push(word);
                    continue;
                }
            };
            let (h, forward) = (of(2, 1.0), of(3, 0.0));
            all.push(
                steps(PARTS[leg].split(' '))
                    .map(|(dx, y, _, corner)| {
                        self.point(x + dx * k + forward * y / LEG_TOP, y * h, corner)
                    })
                    .gathered(),
            );
        }
        let line = steps(line.into_iter());
        if limb {
            let scale = (self.x_cm * self.y_cm).sqrt();
            let line: Vec<_> = line
                .map(|(x, y, half, _)| {
                    let point = self.point(x, y, false);
                    (point.x, point.y, half * scale)
                })
                .gathered();
            all.push(limb_outline(&line));
        } else {
            all.push(
                line.map(|(x, y, _, corner)| self.point(x, y, corner))
                    .gathered(),
            );
        }
        all.retain(|outline| outline.len() > 2);
        all
    }
}

/// The crown of a broad-leaved tree or a spruce from left to right: x and y in shares of its
/// width and height, and whether a corner is there.
pub fn crown(spruce: bool) -> impl Iterator<Item = (f64, f64, bool)> {
    steps(PARTS[4 + usize::from(spruce)].split(' '))
        .map(|(x, y, _, corner)| (0.01 * x, 0.01 * y, corner))
}

/// Height at which a leg of `parts.txt` leans by the whole of what it leans.
const LEG_TOP: f64 = 80.0;

/// Points from words that say how far each lies from the one before: x, y, a third number, and
/// whether it is a corner.
fn steps<'a>(words: impl Iterator<Item = &'a str>) -> impl Iterator<Item = (f64, f64, f64, bool)> {
    let (mut x, mut y) = (0.0, 0.0);
    words.filter_map(move |word| {
        let bare = word.trim_end_matches('!');
        let n = numbers(bare);
        x += n.first()?;
        y += n.get(1)?;
        Some((x, y, n.get(2).copied().unwrap_or(0.0), bare != word))
    })
}

fn read(text: &str, height_cm: Option<f64>, length_cm: f64) -> Option<Figure> {
    let mut plan = Plan {
        x_cm: 1.0,
        y_cm: 1.0,
        aim: (0.0, 0.0),
    };
    let mut figure = Figure {
        pieces: Vec::new(),
        left_cm: f64::INFINITY,
        right_cm: f64::NEG_INFINITY,
        top_cm: f64::INFINITY,
        bottom_cm: f64::NEG_INFINITY,
    };
    for line in text.lines() {
        let (word, rest) = line.split_once(' ')?;
        match word {
            "plan" => {
                let (axis, reference) = rest.split_once(' ')?;
                plan.x_cm = length_cm / decimal(reference)?;
                plan.y_cm = match height_cm {
                    Some(height) if axis == "height" => height / 100.0,
                    _ => plan.x_cm,
                };
            }
            "aim" => {
                let (x, y) = rest.split_once(' ')?;
                plan.aim = (decimal(x)?, decimal(y)?);
            }
            _ => {
                let bare = word.strip_prefix("limb-");
                let tone = tone(bare.unwrap_or(word))?;
                let mut path = String::new();
                let mut seen_area_cm2: f64 = 0.0;
                for part in rest.split('+').map(|part| part.trim_matches(' ')) {
                    for outline in plan.outlines(part, bare.is_some()) {
                        push_outline(&mut path, &outline, 2);
                        seen_area_cm2 = seen_area_cm2.max(seen_area(&outline));
                        for point in &outline {
                            figure.left_cm = figure.left_cm.min(point.x);
                            figure.right_cm = figure.right_cm.max(point.x);
                            figure.top_cm = figure.top_cm.min(point.y);
                            figure.bottom_cm = figure.bottom_cm.max(point.y);
                        }
                    }
                }
                figure.pieces.push(Piece {
                    tone,
                    path,
                    seen_area_cm2,
                });
            }
        }
    }
    Some(figure)
}

/// Area that counts for telling a shape from its ground: all of it up to seven times as long
/// as wide, the width taken as twice area over perimeter.
///
/// # Source
/// Lamar et al. 1948, as used by Crumey (2014): area alone decides up to an aspect ratio of 7.
fn seen_area(outline: &[Point]) -> f64 {
    let area = area(outline);
    let around = perimeter(outline);
    if around <= 0.0 {
        return 0.0;
    }
    let width = 2.0 * area / around;
    area.min(7.0 * width * width)
}
