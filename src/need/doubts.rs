//! Figures of a load or rifle that look as if they were meant in another unit: asked about,
//! never converted silently.

use super::answers::Answers;
use super::questions::Part;
use crate::flight::cartridges;
use crate::flight::drag::DragFunction;
use crate::flight::suspicion::{ReadFigures, Suspicion, suspicions};
use crate::plain::Gathered;

/// A figure that may have been meant otherwise.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Doubt {
    /// The part that holds it.
    pub part: Part,
    /// What looks wrong.
    pub suspicion: Suspicion,
    /// The metric value if it was meant in the other unit; none where there is no such value.
    pub meant: Option<f64>,
}

/// What looks wrong in the figures of load and rifle; empty if nothing does.
///
/// # Example
/// ```
/// use scopewright::need::{doubts, parse};
/// // 165 grains typed as grams would be no bullet; 55 "g" of a .223 is one of 55 grains.
/// let typed = r#"{"version": 1, "load": {"cartridge": "223_rem_3_56_g", "bullet_g": 55}}"#;
/// let found = doubts(&parse(typed).unwrap());
/// assert!((found[0].meant.unwrap() - 3.56).abs() < 0.01);
/// ```
#[must_use]
pub fn doubts(answers: &Answers) -> Vec<Doubt> {
    let load = answers.load.as_ref();
    let typical = load
        .and_then(|load| load.cartridge.as_deref())
        .and_then(cartridges::by_key);
    let coefficient = load.and_then(|load| {
        load.bc_g7_lb_in2
            .map(|bc| (DragFunction::G7, bc))
            .or(load.bc_g1_lb_in2.map(|bc| (DragFunction::G1, bc)))
    });
    let read = ReadFigures {
        muzzle_velocity_m_s: load.and_then(|load| load.muzzle_velocity_m_s),
        bullet_g: load.and_then(|load| load.bullet_g),
        bullet_diameter_mm: typical.map(|load| load.bullet_diameter_mm),
        powder_g: load.and_then(|load| load.powder_g),
        bc: coefficient,
        rifle_kg: answers.rifle.as_ref().and_then(|rifle| rifle.mass_kg),
    };
    suspicions(&read, typical)
        .into_iter()
        .map(|suspicion| {
            let (part, meant) = match suspicion {
                Suspicion::FeetPerSecond { meant_m_s, .. }
                | Suspicion::MetresPerSecondAsFeet { meant_m_s, .. } => {
                    (Part::Velocity, Some(meant_m_s))
                }
                Suspicion::BulletGrains { meant_g, .. }
                | Suspicion::BulletGrams { meant_g, .. } => (Part::BulletMass, Some(meant_g)),
                Suspicion::PowderGrains { meant_g, .. } => (Part::PowderMass, Some(meant_g)),
                Suspicion::MetricCoefficient { meant_lb_in2, .. } => {
                    let is_g7 = matches!(coefficient, Some((DragFunction::G7, _)));
                    let part = if is_g7 {
                        Part::CoefficientG7
                    } else {
                        Part::CoefficientG1
                    };
                    (part, Some(meant_lb_in2))
                }
                Suspicion::G1GivenAsG7 { .. } | Suspicion::G7ForSlowBullet { .. } => {
                    (Part::CoefficientG7, None)
                }
                Suspicion::RiflePounds { meant_kg, .. } => (Part::RifleMass, Some(meant_kg)),
            };
            Doubt {
                part,
                suspicion,
                meant,
            }
        })
        .gathered()
}
