//! Properties that the models of eye and light must have, whatever the numbers.

#[cfg(all(target_arch = "wasm32", target_os = "unknown"))]
use wasm_bindgen_test::wasm_bindgen_test as test;

use proptest::prelude::*;
use scopewright::eye::fast::{Occasion, Tables};
use scopewright::eye::{self, Eye, LastLuminance, Optics, Patch};

fn log(from: f64, to: f64) -> impl Strategy<Value = f64> {
    (libm::log10(from)..libm::log10(to)).prop_map(|x| libm::pow(10.0, x))
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 512, failure_persistence: None, ..ProptestConfig::default() })]

    /// The ranking's tables agree with the direct formulas to 0.001 dex.
    #[test]
    fn tables_agree_with_the_direct_formulas(
        luminance in log(1e-6, 300.0),
        age in 8.0..95.0f64,
        offset in -2.0..2.0f64,
        magnification in 1.0..30.0f64,
        objective in 10.0..80.0f64,
        day in 0.5..1.0f64,
        night in 0.5..1.0f64,
        sp in 0.3..10.0f64,
        solid_angle in log(1e-10, 1e-2),
        contrast in 0.02..3.0f64,
        veil in 1.0..4.0f64,
    ) {
        let eye = Eye::of_age(age).unwrap().with_offset(offset);
        let optics = Optics { magnification, objective_mm: objective, transmission_day: day, transmission_night: night, one_eye: true };
        let patch = Patch { solid_angle_sr: solid_angle, contrast, veil };
        let occasion = Occasion::new(luminance, &eye, sp, &patch);
        let tables = Tables::shared();
        let seen = tables.seen(&occasion, &optics);
        let direct = eye::equivalent_luminance(luminance, &eye, &optics, sp);
        prop_assert!((seen.log_luminance - libm::log10(direct.luminance_cd_m2)).abs() < 2e-4);
        prop_assert!((seen.adaptation - direct.adaptation).abs() < 2e-4);
        let fast = tables.margin(&occasion, &optics, veil);
        let slow = eye::told_apart_margin(luminance, &eye, &optics, sp, &patch);
        prop_assert!((fast - slow).abs() < 5e-4, "{fast} {slow}");
        let fast = tables.last_luminance(&eye, &optics, sp, &patch);
        let slow = eye::last_luminance(&eye, &optics, sp, &patch);
        match (fast, slow) {
            (LastLuminance::At(a), LastLuminance::At(b)) => prop_assert!(libm::log10(a / b).abs() < 1e-3, "{a} {b}"),
            // At the very ends of the search the two may fall on either side.
            (LastLuminance::At(a), LastLuminance::Always) | (LastLuminance::Always, LastLuminance::At(a)) => prop_assert!(a < 1.01e-6),
            (a, b) => prop_assert_eq!(a, b),
        }
    }
}
