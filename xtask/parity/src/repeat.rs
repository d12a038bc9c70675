//! Pieces of the core's work, repeated inside the module, so that a browser can time them.

use scopewright::advice::surety::Worlds;
use scopewright::advice::{Ranking, advise, advise_with_surety};
use scopewright::eye::fast::{Occasion, Tables};
use scopewright::eye::{self, Eye, Optics, Patch, threshold};
use scopewright::need::answers::Answers;
use scopewright::need::resolve;
use scopewright::sky::ground::{Cloud, Scene};
use scopewright::sky::{Night, Place};
use std::hint::black_box;
use wasm_bindgen::prelude::wasm_bindgen;

/// The names that [`repeat`] knows, one a line.
#[wasm_bindgen]
#[must_use]
pub fn repeatable() -> String {
    NAMES.join("\n")
}

const NAMES: [&str; 11] = [
    "threshold contrast",
    "margin, direct",
    "margin, tables",
    "last luminance, direct",
    "last luminance, tables",
    "evening: 1441 minutes of Sun and Moon",
    "evening: lost and found on a known night",
    "everything the trade builds, ranked",
    "answers to advice",
    "64 plausible worlds",
    "answers to advice and how sure it is",
];

/// A person who has said nothing: everything is assumed, in all its spread.
fn unanswered() -> Answers {
    Answers {
        version: 1,
        ..Answers::default()
    }
}

/// Does one piece of work so many times; false for a name that is not known.
#[wasm_bindgen]
#[must_use]
pub fn repeat(name: &str, times: u32) -> bool {
    let (Ok(eye), Ok(place)) = (Eye::of_age(46.0), Place::new(51.0, 10.0)) else {
        return false;
    };
    let (light, sp_ratio, noon_unix_s) = (0.02, 2.5, 1_790_845_200.0);
    let optics = Optics::sight(8.0, 50.0, 0.9);
    let patch = Patch::new(0.3, 100.0, -0.5);
    let tables = Tables::shared();
    let occasion = Occasion::new(light, &eye, sp_ratio, &patch);
    let scene = Scene {
        cloud: Cloud::Overcast,
        canopy_share: 0.5,
        ground_reflectance: 0.08,
        town_mag_arcsec2: None,
    };
    let mut work: Box<dyn FnMut()> = match NAMES.iter().position(|known| *known == name) {
        Some(0) => Box::new(|| {
            black_box(threshold::threshold_contrast(black_box(light), 1e-5));
        }),
        Some(1) => Box::new(|| {
            let light = black_box(light);
            black_box(eye::told_apart_margin(
                light, &eye, &optics, sp_ratio, &patch,
            ));
        }),
        Some(2) => Box::new(|| {
            black_box(tables.margin(black_box(&occasion), &optics, 1.0));
        }),
        Some(3) => Box::new(|| {
            black_box(eye::last_luminance(
                &eye,
                black_box(&optics),
                sp_ratio,
                &patch,
            ));
        }),
        Some(4) => Box::new(|| {
            black_box(tables.last_luminance(&eye, black_box(&optics), sp_ratio, &patch));
        }),
        Some(5) => Box::new(|| {
            black_box(Night::from_noon(black_box(noon_unix_s), &place)).ok();
        }),
        Some(6) => {
            let Ok(night) = Night::from_noon(noon_unix_s, &place) else {
                return false;
            };
            Box::new(move || {
                black_box(night.sight_events(black_box(&scene), 0.01, 0.2));
            })
        }
        Some(7) => {
            let need = resolve(&unanswered());
            Box::new(move || {
                black_box(Ranking::new(black_box(&need)).finish());
            })
        }
        Some(8) => {
            let answers = unanswered();
            Box::new(move || {
                black_box(advise(black_box(&answers))).ok();
            })
        }
        Some(9) => {
            let ranked = Ranking::new(&resolve(&unanswered())).finish();
            Box::new(move || {
                let mut worlds = Worlds::new(black_box(&ranked), &[]);
                while !worlds.step() {}
            })
        }
        Some(10) => {
            let answers = unanswered();
            Box::new(move || {
                black_box(advise_with_surety(black_box(&answers))).ok();
            })
        }
        _ => return false,
    };
    for _ in 0..times {
        work();
    }
    true
}
