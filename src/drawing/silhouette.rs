//! Side views of what is shot at, scaled to an animal's height and length.
//!
//! A drawing is a few lines of text a piece. `plan height 164` says that y is in hundredths
//! of the shoulder height and that the head-body length of the drawn proportions is 164 of
//! the same unit; `plan length 100` that both axes are in hundredths of the length. `aim`
//! is the middle of the aiming circle. Then pieces, back to front: `dark`, `mid` and
//! `light` outlines through points `x,y` (`!` marks a corner, `@f,b` a hoof between the
//! front and the back of the leg above it, `+` begins a further outline of the same
//! piece), and limbs, `limb-dark` and so on, whose points carry half the width as well.
//! x grows towards the nose, y upwards from the ground.

use super::path::{Point, area, limb_outline, perimeter, push_outline};
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

/// Every drawing, by the key of the quarry.
const DRAWINGS: [(&str, &str); 30] = [
    ("roe_deer", include_str!("silhouettes/roe_deer.txt")),
    ("wild_boar", include_str!("silhouettes/wild_boar.txt")),
    ("red_fox", include_str!("silhouettes/red_fox.txt")),
    ("red_deer", include_str!("silhouettes/red_deer.txt")),
    ("fallow_deer", include_str!("silhouettes/fallow_deer.txt")),
    ("sika_deer", include_str!("silhouettes/sika_deer.txt")),
    ("chamois", include_str!("silhouettes/chamois.txt")),
    ("mouflon", include_str!("silhouettes/mouflon.txt")),
    ("ibex", include_str!("silhouettes/ibex.txt")),
    ("muntjac", include_str!("silhouettes/muntjac.txt")),
    (
        "white_tailed_deer",
        include_str!("silhouettes/white_tailed_deer.txt"),
    ),
    ("wapiti", include_str!("silhouettes/wapiti.txt")),
    ("moose", include_str!("silhouettes/moose.txt")),
    ("pronghorn", include_str!("silhouettes/pronghorn.txt")),
    (
        "plains_antelope",
        include_str!("silhouettes/plains_antelope.txt"),
    ),
    (
        "dangerous_game",
        include_str!("silhouettes/dangerous_game.txt"),
    ),
    ("black_bear", include_str!("silhouettes/black_bear.txt")),
    (
        "coyote_or_jackal",
        include_str!("silhouettes/coyote_or_jackal.txt"),
    ),
    ("ground_game", include_str!("silhouettes/ground_game.txt")),
    (
        "marmot_or_groundhog",
        include_str!("silhouettes/marmot_or_groundhog.txt"),
    ),
    ("brown_hare", include_str!("silhouettes/brown_hare.txt")),
    ("rabbit", include_str!("silhouettes/rabbit.txt")),
    ("prairie_dog", include_str!("silhouettes/prairie_dog.txt")),
    (
        "ground_squirrel_or_rat",
        include_str!("silhouettes/ground_squirrel_or_rat.txt"),
    ),
    (
        "tree_squirrel",
        include_str!("silhouettes/tree_squirrel.txt"),
    ),
    ("crow", include_str!("silhouettes/crow.txt")),
    ("wood_pigeon", include_str!("silhouettes/wood_pigeon.txt")),
    ("wild_turkey", include_str!("silhouettes/wild_turkey.txt")),
    ("capercaillie", include_str!("silhouettes/capercaillie.txt")),
    ("chicken", include_str!("silhouettes/chicken.txt")),
];

/// The keys of every drawing, in the order of the table.
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

/// How a piece is drawn.
#[derive(Clone, Copy)]
struct Kind {
    tone: Tone,
    limb: bool,
}

fn kind(word: &str) -> Option<Kind> {
    let (limb, tone) = match word.strip_prefix("limb-") {
        Some(rest) => (true, rest),
        None => (false, word),
    };
    let tone = match tone {
        "dark" => Tone::Dark,
        "mid" => Tone::Mid,
        "light" => Tone::Light,
        _ => return None,
    };
    Some(Kind { tone, limb })
}

/// Offsets of a hoof's points: from the front (true) or back of the leg, up from the ground.
const HOOF: [(bool, f64, f64, bool); 10] = [
    (true, 0.6, 11.0, false),
    (true, 2.0, 7.5, false),
    (true, 2.8, 5.0, true),
    (true, 5.6, 0.9, false),
    (true, 5.6, 0.0, true),
    (false, 2.1, 0.0, true),
    (false, 2.3, 3.2, true),
    (false, 1.7, 6.0, false),
    (false, -0.9, 9.5, false),
    (false, 0.0, 13.5, false),
];

fn numbers(text: &str) -> Vec<f64> {
    text.split(',').filter_map(decimal).collect()
}

fn read(text: &str, height_cm: Option<f64>, length_cm: f64) -> Option<Figure> {
    let mut by_height = true;
    let mut reference = 100.0;
    let mut aim = (0.0, 0.0);
    let mut pieces: Vec<(Kind, Vec<&str>)> = Vec::new();
    for line in text.lines() {
        let line = line.split('#').next().unwrap_or("");
        let mut words = line.split_whitespace().peekable();
        match words.peek().copied() {
            Some("plan") => {
                words.next();
                by_height = words.next() == Some("height");
                reference = words.next().and_then(decimal).unwrap_or(100.0);
            }
            Some("aim") => {
                words.next();
                let mut next = || words.next().and_then(decimal);
                aim = (next()?, next()?);
            }
            Some(word) => {
                if let Some(kind) = kind(word) {
                    words.next();
                    pieces.push((kind, Vec::new()));
                }
                if let Some((_, points)) = pieces.last_mut() {
                    points.extend(words);
                }
            }
            None => {}
        }
    }
    let x_cm = length_cm / reference;
    let y_cm = match height_cm {
        Some(height) if by_height => height / 100.0,
        _ => length_cm / reference,
    };
    let place = |x: f64, y: f64| ((x - aim.0) * x_cm, (aim.1 - y) * y_cm);
    let mut figure = Figure {
        pieces: Vec::with_capacity(pieces.len()),
        left_cm: f64::INFINITY,
        right_cm: f64::NEG_INFINITY,
        top_cm: f64::INFINITY,
        bottom_cm: f64::NEG_INFINITY,
    };
    for (kind, words) in pieces {
        let mut path = String::new();
        let mut seen_area_cm2: f64 = 0.0;
        for words in words.split(|word| *word == "+") {
            let outline = if kind.limb {
                limb(words, &place, x_cm, y_cm)
            } else {
                outline(words, &place)
            };
            push_outline(&mut path, &outline, 2);
            seen_area_cm2 = seen_area_cm2.max(seen_area(&outline));
            for point in &outline {
                figure.left_cm = figure.left_cm.min(point.x);
                figure.right_cm = figure.right_cm.max(point.x);
                figure.top_cm = figure.top_cm.min(point.y);
                figure.bottom_cm = figure.bottom_cm.max(point.y);
            }
        }
        figure.pieces.push(Piece {
            tone: kind.tone,
            path,
            seen_area_cm2,
        });
    }
    Some(figure)
}

fn outline(words: &[&str], place: &impl Fn(f64, f64) -> (f64, f64)) -> Vec<Point> {
    let mut points = Vec::with_capacity(words.len() + 8);
    for word in words {
        if let Some(leg) = word.strip_prefix('@') {
            let ends = numbers(leg);
            let [front, back] = ends[..] else { continue };
            let k = ((front - back) / 3.5).min(1.25);
            for (at_front, dx, y, corner) in HOOF {
                let from = if at_front { front } else { back };
                let (x, y) = place(from + dx * k, y * k);
                points.push(Point { x, y, corner });
            }
        } else {
            let (pair, corner) = match word.strip_suffix('!') {
                Some(rest) => (rest, true),
                None => (*word, false),
            };
            let [x, y] = numbers(pair)[..] else { continue };
            let (x, y) = place(x, y);
            points.push(Point { x, y, corner });
        }
    }
    points
}

fn limb(
    words: &[&str],
    place: &impl Fn(f64, f64) -> (f64, f64),
    x_cm: f64,
    y_cm: f64,
) -> Vec<Point> {
    let line: Vec<(f64, f64, f64)> = words
        .iter()
        .filter_map(|word| {
            let [x, y, half] = numbers(word)[..] else {
                return None;
            };
            let (x, y) = place(x, y);
            Some((x, y, half * (x_cm * y_cm).sqrt()))
        })
        .collect();
    limb_outline(&line)
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
