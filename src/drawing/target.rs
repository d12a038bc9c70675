//! Paper, steel and plates to scale.

use super::path::{push_circle, push_number, push_pair, push_rectangle};
use super::silhouette::{Figure, Piece, Tone, silhouette};
use crate::plain::Gathered;

/// A target as the rule books describe it, in mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Target {
    /// A ring target: outermost ring, the black, the ten.
    Rings {
        /// Diameter of the outermost ring.
        outer_mm: f64,
        /// Diameter of the black disc.
        black_mm: f64,
        /// Diameter of the ten ring.
        ten_mm: f64,
    },
    /// A falling metal figure with a hole to hit.
    Hole {
        /// Height of the figure.
        figure_mm: f64,
        /// Diameter of the hole.
        hole_mm: f64,
    },
    /// A black disc in a white plate; `hit_mm` of it counts.
    Disc {
        /// Diameter of the black.
        black_mm: f64,
        /// Diameter that counts.
        hit_mm: f64,
    },
    /// A steel disc on a post.
    SteelDisc {
        /// Diameter.
        diameter_mm: f64,
    },
    /// A steel plate on two posts.
    SteelPlate {
        /// Width.
        width_mm: f64,
        /// Height.
        height_mm: f64,
    },
    /// A running figure of an animal with rings over its heart.
    Running {
        /// Whether it is a moose (else a boar).
        moose: bool,
        /// Diameter of the outermost ring.
        outer_mm: f64,
        /// Diameter of the ring to hit.
        ring_mm: f64,
    },
    /// A steel cut-out of a hen.
    Chicken {
        /// Width.
        width_mm: f64,
    },
    /// A steel cut-out of a ram.
    Ram {
        /// Width.
        width_mm: f64,
    },
}

/// The target of a row of the table by its key.
///
/// # Source
/// Dimensions from rule books, from memory; the rule book of the discipline decides.
#[must_use]
pub fn of_key(key: &str) -> Option<Target> {
    let rings = |outer_mm, black_mm, ten_mm| Target::Rings {
        outer_mm,
        black_mm,
        ten_mm,
    };
    let hole = |hole_mm| Target::Hole {
        figure_mm: 200.0,
        hole_mm,
    };
    Some(match key {
        "paper_50_m" => rings(154.4, 112.4, 10.4),
        "paper_100_m" => rings(500.0, 200.0, 50.0),
        "paper_300_m" => rings(1000.0, 600.0, 100.0),
        "air_rifle_10_m" => rings(45.5, 30.5, 0.5),
        "field_target_15_mm" => hole(15.0),
        "field_target_25_mm" => hole(25.0),
        "field_target_40_mm" => hole(40.0),
        "biathlon_prone" => Target::Disc {
            black_mm: 115.0,
            hit_mm: 45.0,
        },
        "biathlon_standing" => Target::Disc {
            black_mm: 115.0,
            hit_mm: 115.0,
        },
        "running_boar_50_m" => Target::Running {
            moose: false,
            outer_mm: 366.0,
            ring_mm: 60.0,
        },
        "running_moose_80_m" => Target::Running {
            moose: true,
            outer_mm: 450.0,
            ring_mm: 450.0,
        },
        "steel_disc_20_cm" => Target::SteelDisc { diameter_mm: 200.0 },
        "steel_plate_30_by_45_cm" => Target::SteelPlate {
            width_mm: 300.0,
            height_mm: 450.0,
        },
        "steel_plate_60_by_60_cm" => Target::SteelPlate {
            width_mm: 600.0,
            height_mm: 600.0,
        },
        "silhouette_chicken" => Target::Chicken { width_mm: 280.0 },
        "silhouette_ram" => Target::Ram { width_mm: 690.0 },
        "rimfire_silhouette_chicken" => Target::Chicken { width_mm: 56.0 },
        "rimfire_silhouette_ram" => Target::Ram { width_mm: 138.0 },
        _ => return None,
    })
}

/// The keys of every target, the one met most first.
pub const KEYS: [&str; 18] = [
    "paper_100_m",
    "paper_50_m",
    "paper_300_m",
    "air_rifle_10_m",
    "field_target_15_mm",
    "field_target_25_mm",
    "field_target_40_mm",
    "biathlon_prone",
    "biathlon_standing",
    "running_boar_50_m",
    "running_moose_80_m",
    "steel_disc_20_cm",
    "steel_plate_30_by_45_cm",
    "steel_plate_60_by_60_cm",
    "silhouette_chicken",
    "silhouette_ram",
    "rimfire_silhouette_chicken",
    "rimfire_silhouette_ram",
];

/// Puts pieces together around the middle of what is aimed at, in cm.
struct Builder {
    figure: Figure,
}

impl Builder {
    fn new() -> Self {
        Self {
            figure: Figure {
                pieces: Vec::new(),
                left_cm: 0.0,
                right_cm: 0.0,
                top_cm: 0.0,
                bottom_cm: 0.0,
            },
        }
    }

    fn reach(&mut self, left: f64, top: f64, right: f64, bottom: f64) {
        let f = &mut self.figure;
        f.left_cm = f.left_cm.min(left);
        f.right_cm = f.right_cm.max(right);
        f.top_cm = f.top_cm.min(top);
        f.bottom_cm = f.bottom_cm.max(bottom);
    }

    fn piece(&mut self, tone: Tone, path: String, seen_area_cm2: f64) {
        self.figure.pieces.push(Piece {
            tone,
            path,
            seen_area_cm2,
        });
    }

    fn disc(&mut self, tone: Tone, diameter_cm: f64) {
        self.disc_at(tone, 0.0, 0.0, diameter_cm);
    }

    fn disc_at(&mut self, tone: Tone, x: f64, y: f64, diameter_cm: f64) {
        let r = 0.5 * diameter_cm;
        let mut path = String::new();
        push_circle(&mut path, x, y, r, 3);
        self.piece(tone, path, core::f64::consts::PI * r * r);
        self.reach(x - r, y - r, x + r, y + r);
    }

    /// A pale card round the middle, in the edge of what it is fixed to.
    fn card(&mut self, width: f64, height: f64) {
        let edge = 0.015 * width.min(height);
        for (tone, more) in [(Tone::Mid, edge), (Tone::Light, 0.0)] {
            let (w, h) = (width + 2.0 * more, height + 2.0 * more);
            self.rectangle(tone, -0.5 * w, -0.5 * h, w, h);
        }
    }

    fn rectangle(&mut self, tone: Tone, left: f64, top: f64, width: f64, height: f64) {
        let mut path = String::new();
        push_rectangle(&mut path, left, top, width, height, 3);
        let (short, long) = (width.min(height), width.max(height));
        self.piece(tone, path, short * long.min(7.0 * short));
        self.reach(left, top, left + width, top + height);
    }

    /// Ring lines of `line_cm` at the diameters given, as one piece of annuli.
    fn ring_lines(&mut self, tone: Tone, diameters_cm: &[f64], line_cm: f64) {
        let mut path = String::new();
        for diameter in diameters_cm {
            annulus(&mut path, 0.5 * diameter, line_cm);
        }
        let seen = 7.0 * line_cm * line_cm;
        self.piece(tone, path, seen);
    }
}

/// A ring line: outer circle one way round, inner the other, so that the middle stays open.
fn annulus(path: &mut String, outer_radius: f64, line: f64) {
    push_circle(path, 0.0, 0.0, outer_radius, 3);
    let inner = outer_radius - line;
    if inner <= 0.0 {
        return;
    }
    push_pair(path, 'M', -inner, 0.0, 3);
    for end in [inner, -inner] {
        path.push('A');
        push_number(path, inner, 3);
        path.push(' ');
        push_number(path, inner, 3);
        path.push_str(" 0 1 0");
        push_pair(path, ' ', end, 0.0, 3);
    }
    path.push('Z');
}

/// The target to scale, the middle of what is aimed at in the middle.
#[must_use]
pub fn figure(target: Target) -> Figure {
    let mut b = Builder::new();
    match target {
        Target::Rings {
            outer_mm,
            black_mm,
            ten_mm,
        } => {
            let (outer, black, ten) = (outer_mm / 10.0, black_mm / 10.0, ten_mm / 10.0);
            b.card(1.12 * outer, 1.12 * outer);
            b.disc(Tone::Dark, black);
            // Ten rings, equally spaced from the outermost to the ten.
            let step = (outer - ten) / 9.0;
            let line = 0.004 * outer;
            let all: Vec<f64> = (0..10).map(|n| outer - f64::from(n) * step).gathered();
            let (on_black, on_card): (Vec<f64>, Vec<f64>) = all.iter().partition(|d| **d < black);
            b.ring_lines(Tone::Dark, &on_card, line);
            b.ring_lines(Tone::Light, &on_black, line);
        }
        Target::Hole { figure_mm, hole_mm } => {
            // A crow cut from sheet metal on a base; the hole sits in its chest.
            let height = figure_mm / 10.0;
            if let Some(mut crow) = silhouette("crow", None, 1.25 * height) {
                crow.pieces.retain(|piece| piece.tone == Tone::Dark);
                let (left, right) = (crow.left_cm, crow.right_cm);
                b.reach(left, crow.top_cm, right, crow.bottom_cm);
                b.figure.pieces = crow.pieces;
            }
            // On a plate that it falls over with.
            let foot = b.figure.bottom_cm - 0.03 * height;
            b.rectangle(
                Tone::Dark,
                -0.12 * height,
                0.2 * height,
                0.16 * height,
                foot - 0.2 * height,
            );
            b.rectangle(
                Tone::Dark,
                -0.45 * height,
                foot,
                0.9 * height,
                0.08 * height,
            );
            b.disc(Tone::Light, hole_mm / 10.0);
        }
        Target::Disc { black_mm, hit_mm } => {
            let (black, hit) = (black_mm / 10.0, hit_mm / 10.0);
            // The one aimed at is the middle of five.
            let apart = 1.4 * black;
            b.card(5.0 * apart, 1.5 * black);
            for n in [-2.0, -1.0, 1.0, 2.0] {
                b.disc_at(Tone::Dark, n * apart, 0.0, black);
            }
            b.disc(Tone::Dark, black);
            if hit < black {
                b.ring_lines(Tone::Light, &[hit], 0.02 * black);
            }
        }
        Target::SteelDisc { diameter_mm } => {
            let d = diameter_mm / 10.0;
            b.rectangle(Tone::Mid, -0.06 * d, 0.4 * d, 0.12 * d, 1.6 * d);
            b.rectangle(Tone::Mid, -0.5 * d, 1.95 * d, d, 0.08 * d);
            b.disc(Tone::Dark, d);
            b.disc(Tone::Light, 0.94 * d);
            b.disc_at(Tone::Dark, 0.0, 0.36 * d, 0.07 * d);
        }
        Target::SteelPlate {
            width_mm,
            height_mm,
        } => {
            let (w, h) = (width_mm / 10.0, height_mm / 10.0);
            let edge = 0.025 * w.max(h);
            // It hangs by two straps in a frame with feet.
            let (post, beam) = (0.68 * w, -0.5 * h - 0.2 * w);
            let ground = 0.5 * h + 0.4 * w;
            for side in [-1.0, 1.0] {
                let at = side * post;
                b.rectangle(Tone::Mid, at - 0.03 * w, beam, 0.06 * w, ground - beam);
                b.rectangle(Tone::Mid, at - 0.14 * w, ground, 0.28 * w, 0.05 * w);
                b.rectangle(
                    Tone::Mid,
                    side * 0.36 * w - 0.02 * w,
                    beam,
                    0.04 * w,
                    0.3 * w,
                );
            }
            b.rectangle(Tone::Mid, -post, beam, 2.0 * post, 0.06 * w);
            b.rectangle(Tone::Dark, -0.5 * w, -0.5 * h, w, h);
            b.rectangle(
                Tone::Light,
                -0.5 * w + edge,
                -0.5 * h + edge,
                w - 2.0 * edge,
                h - 2.0 * edge,
            );
            for side in [-1.0, 1.0] {
                b.disc_at(Tone::Dark, side * 0.36 * w, -0.5 * h + 0.07 * w, 0.05 * w);
            }
        }
        Target::Running {
            moose,
            outer_mm,
            ring_mm,
        } => {
            let animal = if moose {
                silhouette("moose", Some(185.0), 260.0)
            } else {
                silhouette("wild_boar", Some(78.0), 135.0)
            };
            if let Some(animal) = animal {
                b.reach(
                    animal.left_cm,
                    animal.top_cm,
                    animal.right_cm,
                    animal.bottom_cm,
                );
                b.figure.pieces = animal.pieces;
            }
            let (outer, ring) = (outer_mm / 10.0, ring_mm / 10.0);
            if ring < outer {
                let step = (outer - ring) / 9.0;
                let all: Vec<f64> = (0..10).map(|n| outer - f64::from(n) * step).gathered();
                b.ring_lines(Tone::Light, &all, 0.012 * outer);
            } else {
                b.ring_lines(Tone::Light, &[outer], 0.03 * outer);
            }
        }
        Target::Chicken { width_mm } => cut_out(&mut b, "chicken", width_mm / 10.0),
        Target::Ram { width_mm } => cut_out(&mut b, "mouflon", width_mm / 10.0),
    }
    b.figure
}

/// A silhouette of one tone, as wide as stated.
fn cut_out(b: &mut Builder, key: &str, width_cm: f64) {
    let Some(unit) = silhouette(key, None, 100.0) else {
        return;
    };
    let Some(mut figure) = silhouette(key, None, 100.0 * width_cm / unit.width_cm()) else {
        return;
    };
    figure.pieces.retain(|piece| piece.tone != Tone::Light);
    for piece in &mut figure.pieces {
        piece.tone = Tone::Dark;
    }
    // Its feet stand on a plate.
    let (foot, w) = (figure.bottom_cm, 0.5 * figure.width_cm());
    b.figure = figure;
    if key != "chicken" {
        b.rectangle(Tone::Dark, -w, foot - 0.02 * w, 1.5 * w, 0.1 * w);
    }
}
