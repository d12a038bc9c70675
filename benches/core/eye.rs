//! The eye: direct formulas, and the tables that the ranking uses.

use crate::meter::Meter;
use scopewright::eye::fast::{Occasion, Tables};
use scopewright::eye::{Eye, Optics, Patch, last_luminance, pupil, threshold, told_apart_margin};
use std::hint::black_box;

const SP_RATIO: f64 = 2.0;

/// Times the parts of this room.
pub fn run(meter: &mut Meter) {
    println!("eye");
    let Ok(eye) = Eye::of_age(46.0) else {
        return;
    };
    let optics = Optics::sight(8.0, 50.0, 0.9);
    let patch = Patch::new(0.3, 100.0, -0.5);
    let light = 0.02;
    meter.time("pupil", || pupil::pupil_diameter_mm(black_box(light), 46.0));
    meter.time("threshold contrast", || {
        threshold::threshold_contrast(black_box(light), 1e-5)
    });
    meter.time("margin, direct", || {
        told_apart_margin(black_box(light), &eye, &optics, SP_RATIO, &patch)
    });
    let tables = Tables::shared();
    let occasion = Occasion::new(light, &eye, SP_RATIO, &patch);
    meter.time("margin, tables", || {
        tables.margin(black_box(&occasion), &optics, 1.0)
    });
    meter.ratio("margin, direct", "margin, tables");
    meter.time("last luminance, direct", || {
        last_luminance(&eye, black_box(&optics), SP_RATIO, &patch)
    });
    meter.time("last luminance, tables", || {
        tables.last_luminance(&eye, black_box(&optics), SP_RATIO, &patch)
    });
    meter.ratio("last luminance, direct", "last luminance, tables");
}
