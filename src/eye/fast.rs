//! The margin from tables, for the millions of calls of the ranking.
//!
//! The direct formulas iterate; here each becomes a lookup that agrees with them to
//! 0.001 dex (a test in `tests/property_light.rs` holds that over the whole range).
//! Two ideas make it exact rather than approximate:
//!
//! * Mesopic luminance fixes adaptation m, hence laboratory luminance B, hence the
//!   laboratory's pupil. What is left of the equation of [`super::equivalent`] is linear
//!   in cone and rod light, α(L_mes) cones + β(L_mes) rods = 1, and falls with L_mes: the
//!   root is a search in one list, for every person, sight and light at once.
//! * The threshold's two limits are functions of B alone, and the way they join is a
//!   function of their ratio.
//!
//! Outside the tables the direct formulas answer, so that no input is refused.

use std::sync::OnceLock;

use super::aperture::{cone_area_mm2, rod_area_mm2};
use super::equivalent::{self, LABORATORY_AGE_YEARS, LABORATORY_SP_RATIO, Optics};
use super::last::{self, LastLuminance, Patch};
use super::mesopic::{self, Mesopic};
use super::person::Eye;
use super::pupil::pupil_diameter_mm;
use super::threshold;

const LOG_LEAST: f64 = -10.0;
const LOG_MOST: f64 = 5.0;
const LOG_STEP: f64 = 0.01;
const JOIN_MOST: f64 = 10.0;
const JOIN_STEP: f64 = 0.005;
/// log₁₀ of the luminance below which the threshold increment is held.
const LOG_HELD: f64 = -5.0;

/// One node of the list over mesopic luminance.
#[derive(Clone, Copy, Debug)]
struct Node {
    per_cones: f64,
    per_rods: f64,
    log_b: f64,
    adaptation: f64,
}

/// The tables: built once in about a millisecond, for every person and sight.
#[derive(Debug)]
pub struct Tables {
    /// Falling response to fixed light, by rising mesopic luminance.
    nodes: Vec<Node>,
    /// log₁₀ of Ricco's constant and of Weber's limit, by log₁₀ B.
    limits: Vec<(f64, f64)>,
    /// log₁₀(1 + 10^−t) by t.
    join: Vec<f64>,
}

/// What one scene means for one eye, computed once for all candidates.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Occasion {
    /// Background luminance, cd/m².
    pub luminance_cd_m2: f64,
    /// Scotopic to photopic ratio of the background.
    pub sp_ratio: f64,
    /// This eye's pupil in that light, mm.
    pub pupil_mm: f64,
    /// Tens of years beyond 23, for the age factor.
    age_decades: f64,
    log_contrast: f64,
    log_solid_angle: f64,
}

impl Occasion {
    /// An occasion of one eye before one patch; the patch's veil is left aside, because
    /// it depends on the sight.
    #[must_use]
    pub fn new(luminance_cd_m2: f64, eye: &Eye, sp_ratio: f64, patch: &Patch) -> Self {
        Self {
            luminance_cd_m2,
            sp_ratio,
            pupil_mm: eye.pupil_mm(luminance_cd_m2),
            age_decades: (eye.model_age_years() - 23.0).max(0.0) / 10.0,
            log_contrast: libm::log10(patch.contrast),
            log_solid_angle: libm::log10(patch.solid_angle_sr),
        }
    }
}

/// Equivalent luminance as the tables give it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Seen {
    /// log₁₀ of the equivalent luminance in cd/m².
    pub log_luminance: f64,
    /// Adaptation between rods (0) and cones (1).
    pub adaptation: f64,
}

impl Tables {
    /// The tables that all callers share.
    pub fn shared() -> &'static Self {
        static TABLES: OnceLock<Tables> = OnceLock::new();
        TABLES.get_or_init(Self::new)
    }

    fn new() -> Self {
        let steps = ((LOG_MOST - LOG_LEAST) / LOG_STEP + 0.5) as usize;
        let mut logs: Vec<f64> = (0..=steps)
            .map(|i| LOG_LEAST + LOG_STEP * i as f64)
            .collect();
        // The response bends where rods or cones drop out: both bends become nodes.
        logs.extend(mesopic::bends_log10());
        crate::plain::sort_by(&mut logs, f64::total_cmp);
        let nodes = logs.iter().map(|&log| node(log)).collect();
        let limits = (0..=steps)
            .map(|i| {
                let log_b = LOG_LEAST + LOG_STEP * i as f64;
                let at = threshold::limits(libm::pow(10.0, log_b));
                (libm::log10(at.ricco_sr), libm::log10(at.weber))
            })
            .collect();
        let joins = (JOIN_MOST / JOIN_STEP + 0.5) as usize;
        let join = (0..=joins)
            .map(|i| libm::log10(1.0 + libm::pow(10.0, -JOIN_STEP * i as f64)))
            .collect();
        Self {
            nodes,
            limits,
            join,
        }
    }

    /// Equivalent luminance behind a sight, as [`super::equivalent_luminance`].
    ///
    /// # Accuracy
    /// 0.001 dex and 0.001 in adaptation; test `tables_agree_with_the_direct_formulas`.
    #[must_use]
    pub fn seen(&self, occasion: &Occasion, optics: &Optics) -> Seen {
        let beam_mm = optics.exit_pupil_mm().min(occasion.pupil_mm);
        let light = occasion.luminance_cd_m2;
        let cones = optics.transmission_day * light * cone_area_mm2(beam_mm);
        let rods = optics.transmission_night * occasion.sp_ratio * light * rod_area_mm2(beam_mm);
        let response = |node: &Node| cones * node.per_cones + rods * node.per_rods;
        let above = self.nodes.partition_point(|node| response(node) >= 1.0);
        if above == 0 || above == self.nodes.len() {
            let (b, adaptation) = equivalent::laboratory_luminance(cones, rods);
            return Seen {
                log_luminance: libm::log10(b),
                adaptation,
            };
        }
        let (a, b) = (&self.nodes[above - 1], &self.nodes[above]);
        // The response falls like a power: interpolate its logarithm, which lies within
        // 2.3 % of nought, by two terms of its series.
        let (over, under) = (response(a) - 1.0, 1.0 - response(b));
        let (over, under) = (over - 0.5 * over * over, under + 0.5 * under * under);
        let t = over / (over + under);
        Seen {
            log_luminance: a.log_b + t * (b.log_b - a.log_b),
            adaptation: a.adaptation + t * (b.adaptation - a.adaptation),
        }
    }

    /// log₁₀ of the threshold contrast, as [`threshold::threshold_contrast`].
    ///
    /// # Accuracy
    /// 0.001 dex; test `tables_agree_with_the_direct_formulas`.
    #[must_use]
    pub fn log_threshold_contrast(&self, log_luminance: f64, log_solid_angle: f64) -> f64 {
        let log_b = log_luminance.max(LOG_HELD);
        let held = log_b - log_luminance;
        let at = (log_b - LOG_LEAST) / LOG_STEP;
        let i = at as usize;
        let (Some(&(r0, w0)), Some(&(r1, w1))) = (self.limits.get(i), self.limits.get(i + 1))
        else {
            let c = threshold::threshold_contrast(
                libm::pow(10.0, log_luminance),
                libm::pow(10.0, log_solid_angle),
            );
            return libm::log10(c);
        };
        let t = at - i as f64;
        let point = r0 + t * (r1 - r0) - log_solid_angle;
        let plateau = w0 + t * (w1 - w0);
        let q = threshold::exponent(log_b);
        held + point.max(plateau) + self.joined(q * (point - plateau).abs()) / q
    }

    fn joined(&self, t: f64) -> f64 {
        let at = t / JOIN_STEP;
        let i = at as usize;
        match (self.join.get(i), self.join.get(i + 1)) {
            (Some(a), Some(b)) => a + (at - i as f64) * (b - a),
            // Beyond ten powers of ten the smaller term is gone.
            _ => 0.0,
        }
    }

    /// The margin by which the occasion's patch is told apart, in log₁₀ of contrast, as
    /// [`super::told_apart_margin`]; `veil` is [`super::veil::veil_factor`].
    ///
    /// # Accuracy
    /// 0.001 dex; test `tables_agree_with_the_direct_formulas`.
    #[must_use]
    pub fn margin(&self, occasion: &Occasion, optics: &Optics, veil: f64) -> f64 {
        let seen = self.seen(occasion, optics);
        self.margin_at(&seen, occasion, optics, veil)
    }

    /// The same margin where [`Tables::seen`] is already known.
    #[must_use]
    pub fn margin_at(&self, seen: &Seen, occasion: &Occasion, optics: &Optics, veil: f64) -> f64 {
        let log_veil = if veil == 1.0 { 0.0 } else { libm::log10(veil) };
        let log_age = threshold::log_age_factor_per_decade(seen.adaptation) * occasion.age_decades;
        let log_c = self.log_threshold_contrast(
            seen.log_luminance + log_veil,
            occasion.log_solid_angle + 2.0 * libm::log10(optics.magnification),
        );
        let log_f = threshold::log_field_factor(optics.one_eye);
        occasion.log_contrast - log_veil - log_f - log_age - log_c
    }

    /// The last luminance at which a patch is told apart, as [`super::last_luminance`].
    ///
    /// # Accuracy
    /// 0.001 dex in luminance; test `tables_agree_with_the_direct_formulas`.
    #[must_use]
    pub fn last_luminance(
        &self,
        eye: &Eye,
        optics: &Optics,
        sp_ratio: f64,
        patch: &Patch,
    ) -> LastLuminance {
        if patch.contrast <= 0.0 {
            return LastLuminance::Never;
        }
        let scene = Occasion::new(1.0, eye, sp_ratio, patch);
        let margin = |log_l: f64| {
            let luminance_cd_m2 = libm::pow(10.0, log_l);
            let scene = Occasion {
                luminance_cd_m2,
                pupil_mm: eye.pupil_mm(luminance_cd_m2),
                ..scene
            };
            self.margin(&scene, optics, patch.veil)
        };
        last::solved(margin, 1e-5)
    }
}

fn node(log_mesopic: f64) -> Node {
    let luminance_cd_m2 = libm::pow(10.0, log_mesopic);
    let adaptation = mesopic::adaptation(luminance_cd_m2);
    let b = mesopic::photopic_cd_m2(
        Mesopic {
            luminance_cd_m2,
            adaptation,
        },
        LABORATORY_SP_RATIO,
    );
    let p0_mm = pupil_diameter_mm(b, LABORATORY_AGE_YEARS);
    let weight = adaptation + (1.0 - adaptation) * mesopic::ROD_WEIGHT;
    let scale = 1.0 / (luminance_cd_m2 * weight);
    Node {
        per_cones: adaptation * scale / cone_area_mm2(p0_mm),
        per_rods: (1.0 - adaptation) * mesopic::ROD_WEIGHT * scale / rod_area_mm2(p0_mm),
        log_b: libm::log10(b),
        adaptation,
    }
}
