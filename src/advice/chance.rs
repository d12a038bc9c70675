//! Chances by table: the normal distribution and the eye's laws, without transcendental
//! functions in the inner loop.
//!
//! A margin divided by its spread becomes a chance Φ(margin/spread). Φ and the three laws of
//! the eye that the ranking needs (equivalent luminance, adaptation, threshold contrast)
//! depend on no person, so that they are tabulated once for a process.

use std::sync::OnceLock;

use crate::eye;

/// Margins are held at this many spreads.
const PHI_REACH: f64 = 6.0;
const PHI_STEPS: usize = 1536;

/// Ratio up to which the chance of placing the eye is tabulated.
const RATIO_REACH: f64 = 8.0;
const RATIO_STEPS: usize = 1024;

/// log10 of T·L in cd/m² runs from here …
const LIGHT_FROM: f64 = -6.5;
/// … in steps of
const LIGHT_STEP: f64 = 0.25;
const LIGHT_COUNT: usize = 45;
/// log10 of the beam in mm runs from here (0.4 mm) …
const BEAM_FROM: f64 = -0.4;
/// … in steps of
const BEAM_STEP: f64 = 0.1;
const BEAM_COUNT: usize = 15;
/// log10 of the equivalent luminance runs from here …
const EQUIVALENT_FROM: f64 = -7.0;
/// … in steps of
const EQUIVALENT_STEP: f64 = 0.1;
const EQUIVALENT_COUNT: usize = 121;
/// log10 of the solid angle in sr runs from here …
const ANGLE_FROM: f64 = -11.0;
/// … in steps of
const ANGLE_STEP: f64 = 0.25;
const ANGLE_COUNT: usize = 45;
/// log10 of the image luminance runs from here, in whole decades.
const MAR_FROM: f64 = -3.0;
const MAR_COUNT: usize = 6;

/// The standard normal distribution function.
///
/// # Accuracy
/// That of `libm::erfc`.
#[must_use]
pub fn normal(x: f64) -> f64 {
    0.5 * libm::erfc(-x / core::f64::consts::SQRT_2)
}

/// The standard normal score of a share: the inverse of [`normal`].
///
/// # Accuracy
/// 1.2e-9 relative (rational approximation, P. J. Acklam, from memory), held at ±6.
#[must_use]
pub fn normal_score(share: f64) -> f64 {
    const A: [f64; 6] = [
        -3.969_683_028_665_376e1,
        2.209_460_984_245_205e2,
        -2.759_285_104_469_687e2,
        1.383_577_518_672_69e2,
        -3.066_479_806_614_716e1,
        2.506_628_277_459_239,
    ];
    const B: [f64; 5] = [
        -5.447_609_879_822_406e1,
        1.615_858_368_580_409e2,
        -1.556_989_798_598_866e2,
        6.680_131_188_771_972e1,
        -1.328_068_155_288_572e1,
    ];
    const C: [f64; 6] = [
        -7.784_894_002_430_293e-3,
        -3.223_964_580_411_365e-1,
        -2.400_758_277_161_838,
        -2.549_732_539_343_734,
        4.374_664_141_464_968,
        2.938_163_982_698_783,
    ];
    const D: [f64; 4] = [
        7.784_695_709_041_462e-3,
        3.224_671_290_700_398e-1,
        2.445_134_137_142_996,
        3.754_408_661_907_416,
    ];
    let p = share.clamp(1e-9, 1.0 - 1e-9);
    let tail = |q: f64| {
        (((((C[0] * q + C[1]) * q + C[2]) * q + C[3]) * q + C[4]) * q + C[5])
            / ((((D[0] * q + D[1]) * q + D[2]) * q + D[3]) * q + 1.0)
    };
    if p < 0.024_25 {
        tail((-2.0 * libm::log(p)).sqrt())
    } else if p > 1.0 - 0.024_25 {
        -tail((-2.0 * libm::log(1.0 - p)).sqrt())
    } else {
        let q = p - 0.5;
        let r = q * q;
        (((((A[0] * r + A[1]) * r + A[2]) * r + A[3]) * r + A[4]) * r + A[5]) * q
            / (((((B[0] * r + B[1]) * r + B[2]) * r + B[3]) * r + B[4]) * r + 1.0)
    }
}

/// A node of a table by one quantity: the value, and its change to the next node.
type Rise = [f32; 2];
/// A node of a table by two quantities: the value, its changes to the next node of each, and
/// what the corner between has more than both.
type Bend = [f32; 4];

/// The tables, computed once.
#[derive(Debug)]
pub struct Tables {
    phi: Vec<Rise>,
    placed: Vec<Rise>,
    equivalent: Vec<Bend>,
    adaptation: Vec<Rise>,
    threshold: Vec<Bend>,
    mar: Vec<Rise>,
}

static TABLES: OnceLock<Tables> = OnceLock::new();

/// The tables of this process.
pub fn tables() -> &'static Tables {
    TABLES.get_or_init(Tables::new)
}

/// Added to a small number it leaves the nearest whole one in the lowest bits.
const WHOLE: f32 = 12_582_912.0;
const WHOLE_BITS: u32 = 0x003f_ffff;

/// Index and remainder of a place in a table of so many nodes, held at its ends: a whole
/// number may be told as itself or as the one before and a remainder of 1.
#[inline(always)]
fn place(x: f32, from: f32, per_step: f32, count: usize) -> (usize, f32) {
    let t = (x - from) * per_step;
    let t = if t > 0.0 { t } else { 0.0 };
    let last = (count - 1) as f32;
    let t = if t < last { t } else { last };
    let whole = (t - 0.5) + WHOLE;
    ((whole.to_bits() & WHOLE_BITS) as usize, t - (whole - WHOLE))
}

#[inline(always)]
fn line(table: &[Rise], (i, rest): (usize, f32)) -> f32 {
    let [value, rise] = table[i];
    value + rest * rise
}

#[inline(always)]
fn bent(table: &[Bend], i: usize, x: f32, y: f32) -> f32 {
    let [value, by_y, by_x, by_both] = table[i];
    value + y * by_y + x * (by_x + y * by_both)
}

fn rises(values: &[f32]) -> Vec<Rise> {
    let next = |i: usize| values[(i + 1).min(values.len() - 1)];
    values
        .iter()
        .enumerate()
        .map(|(i, &value)| [value, next(i) - value])
        .collect()
}

/// Rows of `columns` values each.
fn bends(values: &[f32], columns: usize) -> Vec<Bend> {
    let rows = values.len() / columns;
    let at = |i: usize, j: usize| values[i.min(rows - 1) * columns + j.min(columns - 1)];
    (0..rows * columns)
        .map(|k| {
            let (i, j) = (k / columns, k % columns);
            let (low, high) = (at(i, j), at(i + 1, j));
            let (by_y, by_x) = (at(i, j + 1) - low, high - low);
            [low, by_y, by_x, at(i + 1, j + 1) - high - by_y]
        })
        .collect()
}

/// Where a light lies among the rows of the equivalent luminance.
#[derive(Clone, Copy, Debug)]
pub struct LightPlace {
    row: usize,
    rest: f32,
}

impl Tables {
    fn new() -> Self {
        let phi: Vec<f32> = (0..=PHI_STEPS)
            .map(|i| normal(-PHI_REACH + 2.0 * PHI_REACH * i as f64 / PHI_STEPS as f64) as f32)
            .collect();
        let placed: Vec<f32> = (0..=RATIO_STEPS)
            .map(|i| {
                let ratio = RATIO_REACH * i as f64 / RATIO_STEPS as f64;
                if ratio > 0.0 {
                    normal(libm::log(ratio) / super::needs::eye_placed::SPREAD) as f32
                } else {
                    0.0
                }
            })
            .collect();
        let mut equivalent = Vec::with_capacity(LIGHT_COUNT * BEAM_COUNT);
        for i in 0..LIGHT_COUNT {
            let light = libm::pow(10.0, LIGHT_FROM + LIGHT_STEP * i as f64);
            for j in 0..BEAM_COUNT {
                let beam_mm = libm::pow(10.0, BEAM_FROM + BEAM_STEP * j as f64);
                equivalent.push(libm::log10(equivalent_of_beam_cd_m2(light, beam_mm)) as f32);
            }
        }
        let mut adaptation = Vec::with_capacity(EQUIVALENT_COUNT);
        let mut threshold = Vec::with_capacity(EQUIVALENT_COUNT * ANGLE_COUNT);
        for i in 0..EQUIVALENT_COUNT {
            let b = libm::pow(10.0, EQUIVALENT_FROM + EQUIVALENT_STEP * i as f64);
            adaptation.push(
                eye::mesopic::mesopic(b, eye::equivalent::LABORATORY_SP_RATIO * b).adaptation
                    as f32,
            );
            for j in 0..ANGLE_COUNT {
                let sr = libm::pow(10.0, ANGLE_FROM + ANGLE_STEP * j as f64);
                threshold.push(libm::log10(eye::threshold::threshold_contrast(b, sr)) as f32);
            }
        }
        // −log10 of the acuities at 0.001 … 100 cd/m².
        let mar: Vec<f32> = (0..MAR_COUNT)
            .map(|i| {
                let luminance = libm::pow(10.0, i as f64 + MAR_FROM);
                libm::log10(eye::acuity::minimum_angle_arcmin(luminance)) as f32
            })
            .collect();
        Self {
            phi: rises(&phi),
            placed: rises(&placed),
            equivalent: bends(&equivalent, BEAM_COUNT),
            adaptation: rises(&adaptation),
            threshold: bends(&threshold, ANGLE_COUNT),
            mar: rises(&mar),
        }
    }

    /// Φ of a margin in spreads.
    #[inline(always)]
    #[must_use]
    pub fn phi(&self, spreads: f32) -> f32 {
        let per_step = (PHI_STEPS as f64 / (2.0 * PHI_REACH)) as f32;
        let at = place(spreads, -PHI_REACH as f32, per_step, PHI_STEPS + 1);
        line(&self.phi, at)
    }

    /// The chance of placing the eye by the ratio of tolerance to offset.
    #[inline(always)]
    #[must_use]
    pub fn placed(&self, ratio: f32) -> f32 {
        let per_step = (RATIO_STEPS as f64 / RATIO_REACH) as f32;
        line(&self.placed, place(ratio, 0.0, per_step, RATIO_STEPS + 1))
    }

    /// Where log10 of T·L lies in the table of the equivalent luminance.
    #[inline(always)]
    #[must_use]
    pub fn light_place(&self, log_light: f32) -> LightPlace {
        let (i, rest) = place(
            log_light,
            LIGHT_FROM as f32,
            (1.0 / LIGHT_STEP) as f32,
            LIGHT_COUNT,
        );
        LightPlace {
            row: i * BEAM_COUNT,
            rest,
        }
    }

    /// log10 of the equivalent luminance by the place of T·L and log10 of the beam in mm.
    #[inline(always)]
    #[must_use]
    pub fn log_equivalent_at(&self, light: LightPlace, log_beam: f32) -> f32 {
        let (j, y) = place(
            log_beam,
            BEAM_FROM as f32,
            (1.0 / BEAM_STEP) as f32,
            BEAM_COUNT,
        );
        bent(&self.equivalent, light.row + j, light.rest, y)
    }

    /// log10 of the equivalent luminance by log10 of T·L and log10 of the beam in mm.
    #[inline(always)]
    #[must_use]
    pub fn log_equivalent(&self, log_light: f32, log_beam: f32) -> f32 {
        self.log_equivalent_at(self.light_place(log_light), log_beam)
    }

    /// Adaptation of cones, 0 to 1, by log10 of the equivalent luminance.
    #[inline(always)]
    #[must_use]
    pub fn adaptation(&self, log_b: f32) -> f32 {
        line(&self.adaptation, Self::equivalent_place(log_b))
    }

    #[inline(always)]
    fn equivalent_place(log_b: f32) -> (usize, f32) {
        place(
            log_b,
            EQUIVALENT_FROM as f32,
            (1.0 / EQUIVALENT_STEP) as f32,
            EQUIVALENT_COUNT,
        )
    }

    /// log10 of the threshold contrast by log10 of luminance and of solid angle.
    #[inline(always)]
    #[must_use]
    pub fn log_threshold(&self, log_b: f32, log_sr: f32) -> f32 {
        let (i, x) = Self::equivalent_place(log_b);
        let (j, y) = place(
            log_sr,
            ANGLE_FROM as f32,
            (1.0 / ANGLE_STEP) as f32,
            ANGLE_COUNT,
        );
        bent(&self.threshold, i * ANGLE_COUNT + j, x, y)
    }

    /// log10 of the smallest angle told apart, in arcminutes, by log10 of the image luminance:
    /// linear between whole decades and held at the ends, as the table it comes from.
    #[inline(always)]
    #[must_use]
    pub fn log_mar(&self, log_image: f32) -> f32 {
        line(&self.mar, place(log_image, MAR_FROM as f32, 1.0, MAR_COUNT))
    }
}

/// The laboratory luminance B, in cd/m², of T·L through a beam at twilight's S/P: it depends
/// on no person, because the pupil enters by the beam alone.
fn equivalent_of_beam_cd_m2(light_cd_m2: f64, beam_mm: f64) -> f64 {
    let cones = light_cd_m2 * eye::aperture::cone_area_mm2(beam_mm);
    let rods =
        eye::equivalent::TWILIGHT_SP_RATIO * light_cd_m2 * eye::aperture::rod_area_mm2(beam_mm);
    eye::equivalent::laboratory_luminance(cones, rods).0
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::eye::{Eye, Optics};

    fn apart(off: &mut f64, table: f32, direct: f64) {
        *off = off.max((f64::from(table) - direct).abs());
    }

    /// The tables against the functions that they are made from, between their nodes.
    #[test]
    fn tables_follow_the_direct_path() {
        let t = tables();
        let (mut equivalent, mut threshold, mut mar, mut chances) = (0.0, 0.0, 0.0, 0.0);
        for age in [20.0, 47.0, 75.0] {
            let eye = Eye::of_nearest_age(age);
            for step in 0..33 {
                let luminance = libm::pow(10.0, -3.9 + 0.21 * f64::from(step));
                for (power, objective_mm) in [(2.5, 20.0), (6.0, 42.0), (8.0, 56.0), (15.0, 50.0)] {
                    let optics = Optics::sight(power, objective_mm, 0.9);
                    let ratio = eye::equivalent::TWILIGHT_SP_RATIO;
                    let direct = eye::equivalent_luminance(luminance, &eye, &optics, ratio);
                    let beam_mm = (objective_mm / power).min(eye.pupil_mm(luminance));
                    let log_light = libm::log10(0.9 * luminance) as f32;
                    let table = t.log_equivalent(log_light, libm::log10(beam_mm) as f32);
                    apart(&mut equivalent, table, libm::log10(direct.luminance_cd_m2));
                }
            }
        }
        for step in 0..60 {
            let log_b = -5.03 + 0.13 * f64::from(step);
            for angle in 0..20 {
                let log_sr = -9.9 + 0.37 * f64::from(angle);
                let least = eye::threshold::threshold_contrast(
                    libm::pow(10.0, log_b),
                    libm::pow(10.0, log_sr),
                );
                let table = t.log_threshold(log_b as f32, log_sr as f32);
                apart(&mut threshold, table, libm::log10(least));
            }
            let least = eye::acuity::minimum_angle_arcmin(libm::pow(10.0, log_b));
            apart(&mut mar, t.log_mar(log_b as f32), libm::log10(least));
            let score = -5.9 + 0.2 * f64::from(step);
            apart(&mut chances, t.phi(score as f32), normal(score));
        }
        println!("{equivalent:.4} {threshold:.4} {mar:.6} dex, {chances:.6}");
        assert!(equivalent < 0.01 && threshold < 0.02 && mar < 1e-5 && chances < 1e-5);
    }
}
