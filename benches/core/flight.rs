//! Flight: zeroing and one trajectory.

use crate::meter::Meter;
use scopewright::flight::{Conditions, DragFunction, Load, SEA_LEVEL, Zeroed};
use std::hint::black_box;

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
}
