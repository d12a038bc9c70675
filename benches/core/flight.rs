//! Flight: zeroing, one trajectory, and the same by an adaptive integration with scipy.

use crate::meter::Meter;
use scopewright::flight::point_blank::point_blank_standard;
use scopewright::flight::trajectory::trajectory;
use scopewright::flight::{Conditions, DragFunction, Load, SEA_LEVEL, Zeroed};
use std::hint::black_box;
use std::path::Path;
use std::process::Command;

/// Times the parts of this room.
pub fn run(meter: &mut Meter) {
    println!("flight");
    let Ok(load) = Load::new(DragFunction::G1, 0.43, 823.0) else {
        return;
    };
    meter.time("zero at 100 m", || {
        Zeroed::new(black_box(load), SEA_LEVEL, 45.0, 100.0)
    });
    let Ok(zeroed) = Zeroed::new(load, SEA_LEVEL, 45.0, 100.0) else {
        return;
    };
    let air = Conditions::standard();
    meter.time("flight to 600 m", || zeroed.sighted(black_box(&air), 600.0));
    const FAR: &str = "flight to 1000 m with dense output";
    meter.time(FAR, || {
        trajectory(black_box(&load), &air, 1.218_188_7, 1000.0)
    });
    if let Ok(flown) = trajectory(&load, &air, 1.218_188_7, 1000.0) {
        meter.time("a reading in between", || flown.at(black_box(567.8)));
        beside_scipy(meter, FAR, flown.at(1000.0).height_m);
    }
    meter.time("best zero and point-blank range", || {
        point_blank_standard(black_box(&load), 45.0, 75.0)
    });
}

/// The same flight by scipy, at the loosest tolerance that is as accurate as this one.
///
/// `cargo xtask bench` sets the interpreter up; without it the comparison is left out, and
/// said to be.
fn beside_scipy(meter: &mut Meter, ours: &'static str, height_m: f64) {
    let Some(python) = std::env::var_os("SCOPEWRIGHT_PEERS_PYTHON") else {
        println!("  (no comparison with scipy: run `cargo xtask bench`)");
        return;
    };
    let script = Path::new(env!("CARGO_MANIFEST_DIR")).join("benches/peers/trajectory.py");
    let answer = Command::new(python).arg(script).arg("bench").output();
    let answer: serde_json::Value = match answer.map(|out| serde_json::from_slice(&out.stdout)) {
        Ok(Ok(answer)) => answer,
        failed => {
            println!("  (no comparison with scipy: {failed:?})");
            return;
        }
    };
    let exact_m = answer["exact_m"].as_f64().unwrap_or(f64::NAN);
    let off_mm = 1e3 * (height_m - exact_m).abs();
    println!("  {off_mm:>9.4} mm  off at 1000 m");
    let empty = Vec::new();
    let rows = answer["rows"].as_array().unwrap_or(&empty);
    for row in rows {
        let number = |name: &str| row[name].as_f64().unwrap_or(f64::NAN);
        println!(
            "  {:>9.4} mm  off, {} at {:e}: {:.1} ms",
            number("off_mm"),
            answer["peer"].as_str().unwrap_or("scipy"),
            number("rtol"),
            1e3 * number("seconds"),
        );
    }
    let fair = rows.iter().find(|row| {
        row["off_mm"]
            .as_f64()
            .is_some_and(|theirs| theirs <= off_mm.max(0.02))
    });
    if let Some(seconds) = fair.and_then(|row| row["seconds"].as_f64()) {
        const PEER: &str = "scipy DOP853, as accurate";
        meter.take(PEER, 1e9 * seconds);
        meter.ratio(PEER, ours);
    }
}
