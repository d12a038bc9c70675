//! The ranking: everything the trade builds put through a shooter's own occasions, and the
//! same arithmetic by numpy.

use crate::meter::Meter;
use scopewright::advice::candidates::{self, GRID, grid_index};
use scopewright::advice::chance::tables;
use scopewright::advice::coverage::Ground;
use scopewright::advice::needs::mark::Mark;
use scopewright::advice::occasions::COUNT;
use scopewright::advice::surety::Worlds;
use scopewright::advice::world::World;
use scopewright::advice::{Ranked, Ranking, advise, advise_with_surety, tell};
use scopewright::need::answers::Answers;
use scopewright::need::resolve;
use scopewright::sight::{FocalPlane, Illumination, ParallaxSetting};
use std::hint::black_box;
use std::path::Path;
use std::process::Command;

/// Times the parts of this room.
pub fn run(meter: &mut Meter) {
    println!("ranking");
    let answers = Answers {
        version: 1,
        ..Answers::default()
    };
    let need = resolve(&answers);
    const RANK: &str = "everything the trade builds, ranked";
    meter.time(RANK, || Ranking::new(black_box(&need)).finish());
    let ranked = Ranking::new(&need).finish();
    let pairs = ranked.candidates.len() as f64 * COUNT as f64;
    println!(
        "  {:>12}  specifications, each in {COUNT} occasions; 20 000 are {:.2} of that work",
        ranked.candidates.len(),
        20_000.0 * COUNT as f64 / pairs
    );
    meter.time("the occasions alone", || {
        Ground::new(black_box(&need), World::MIDDLE, COUNT)
    });
    meter.time("telling: picks, ranges, reasons, warnings", || {
        tell(black_box(&ranked))
    });
    meter.time("answers to advice", || advise(black_box(&answers)));
    meter.time("64 plausible worlds", || {
        let mut worlds = Worlds::new(black_box(&ranked), &[]);
        while !worlds.step() {}
    });
    meter.time("answers to advice and how sure it is", || {
        advise_with_surety(black_box(&answers))
    });
    beside_numpy(meter, RANK, &ranked);
}

/// The same shares by vectorised numpy, over the same columns and tables.
fn beside_numpy(meter: &mut Meter, ours: &'static str, ranked: &Ranked) {
    let Some(python) = std::env::var_os("SCOPEWRIGHT_PEERS_PYTHON") else {
        println!("  (no comparison with numpy: run `cargo xtask bench`)");
        return;
    };
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let handed = root.join("target/peers-ranking.json");
    if let Err(error) = std::fs::write(&handed, handed_over(ranked).to_string()) {
        println!("  (no comparison with numpy: {error})");
        return;
    }
    let script = root.join("benches/peers/ranking.py");
    let answer = Command::new(python).arg(script).arg(&handed).output();
    let answer: serde_json::Value = match answer.map(|out| serde_json::from_slice(&out.stdout)) {
        Ok(Ok(answer)) => answer,
        failed => {
            println!("  (no comparison with numpy: {failed:?})");
            return;
        }
    };
    let number = |name: &str| answer[name].as_f64().unwrap_or(f64::NAN);
    println!(
        "  {:>12.1e}  largest difference of a share from {}",
        number("largest_difference"),
        answer["peer"].as_str().unwrap_or("numpy")
    );
    const PEER: &str = "numpy, vectorised over the occasions";
    meter.take(PEER, 1e9 * number("seconds"));
    meter.ratio(PEER, ours);
}

/// What numpy needs: the columns of the occasions, the eye's tables at their nodes, the
/// candidates, and our own shares to hold its answer against.
fn handed_over(ranked: &Ranked) -> serde_json::Value {
    let ground = &ranked.ground;
    let slate = &ground.slate;
    let t = tables();
    // The nodes of the tables, read through the tables themselves.
    let lights: Vec<f32> = (0..45).map(|i| -6.5 + 0.25 * i as f32).collect();
    let beams: Vec<f32> = (0..15).map(|i| -0.4 + 0.1 * i as f32).collect();
    let equivalents: Vec<f32> = (0..121).map(|i| -7.0 + 0.1 * i as f32).collect();
    let angles: Vec<f32> = (0..45).map(|i| -11.0 + 0.25 * i as f32).collect();
    let mars: Vec<f32> = (0..6).map(|i| t.log_mar(i as f32 - 3.0)).collect();
    let grid_of = |rows: &[f32], columns: &[f32], f: &dyn Fn(f32, f32) -> f32| -> Vec<Vec<f32>> {
        rows.iter()
            .map(|&x| columns.iter().map(|&y| f(x, y)).collect())
            .collect()
    };
    let drop: Vec<f64> = ground
        .occasions
        .iter()
        .map(|o| {
            ground.flight.as_ref().map_or(1.0, |flight| {
                flight.dead_on_chance(o.range_m, o.circle_mm, false)
            })
        })
        .collect();
    let candidates: Vec<serde_json::Value> = ranked
        .candidates
        .iter()
        .zip(&ranked.served)
        .map(|(c, served)| {
            let s = &c.specification;
            let mark = Mark::of(s);
            let (kind, distance_m) = match s.parallax {
                ParallaxSetting::Fixed { free_at_m } => (0, free_at_m),
                ParallaxSetting::Adjustable { nearest_m } => (1, nearest_m),
            };
            serde_json::json!([
                grid_index(s.magnification_low),
                grid_index(s.magnification_high),
                s.objective_mm,
                s.grade as u8,
                c.apparent_deg,
                kind,
                distance_m,
                mark.width,
                u8::from(mark.dot),
                mark.bars,
                u8::from(mark.plane == FocalPlane::First),
                match mark.lit {
                    Illumination::Unlit => 0,
                    Illumination::NightFine => 1,
                    Illumination::DayBright => 2,
                    Illumination::Both => 3,
                },
                ground.eye_relief_chance(s.eye_relief_mm),
                served,
            ])
        })
        .collect();
    serde_json::json!({
        "grid": candidates::GRID,
        "magnifications": GRID.len(),
        "late": slate.late,
        "left_share": ground.left_share,
        "log_transmission": slate.log_transmission,
        "columns": {
            "log_light": slate.log_light, "log_other_light": slate.log_other_light,
            "pupil_mm": slate.pupil_mm, "log_pupil": slate.log_pupil,
            "decades": slate.decades, "log_veil": slate.log_veil,
            "log_contrast": slate.log_contrast, "log_patch_sr": slate.log_patch_sr,
            "log_detail": slate.log_detail, "detail_weight": slate.detail_weight,
            "log_fineness": slate.log_fineness, "log_field_need": slate.log_field_need,
            "log_room": slate.log_room, "per_offset": slate.per_offset,
            "per_circle": slate.per_circle, "range_m": slate.range_m,
            "log_harder": slate.log_harder, "log_line_room": slate.log_line_room,
            "log_dot_room": slate.log_dot_room, "dim_serves": slate.dim_serves,
            "bright_serves": slate.bright_serves, "both_serve": slate.both_serve,
            "drop": drop,
        },
        "tables": {
            "lights": lights, "beams": beams, "equivalents": equivalents, "angles": angles,
            "equivalent": grid_of(&lights, &beams, &|x, y| t.log_equivalent(x, y)),
            "adaptation": equivalents.iter().map(|&b| t.adaptation(b)).collect::<Vec<f32>>(),
            "threshold": grid_of(&equivalents, &angles, &|x, y| t.log_threshold(x, y)),
            "mar": mars,
            "log_field_factor": scopewright::advice::needs::told_apart::log_field_factor(),
        },
        "candidates": candidates,
    })
}
