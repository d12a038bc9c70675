//! Figures that look as if they were meant in another unit: asked about, never converted
//! silently.

use super::cartridges::{LoadKind, TypicalLoad};
use super::drag::{DragFunction, G_PER_GRAIN, form_factor};

/// A figure that may have been meant otherwise.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Suspicion {
    /// Feet per second typed as metres per second.
    FeetPerSecond {
        /// What was typed, as m/s.
        read_m_s: f64,
        /// What it would be.
        meant_m_s: f64,
    },
    /// Metres per second typed as feet per second, or kilometres an hour: too slow.
    MetresPerSecondAsFeet {
        /// What was read after conversion, in m/s.
        read_m_s: f64,
        /// What it would be.
        meant_m_s: f64,
    },
    /// Grains of bullet typed as grams.
    BulletGrains {
        /// What was typed, as g.
        read_g: f64,
        /// What it would be.
        meant_g: f64,
    },
    /// Grams of bullet typed as grains.
    BulletGrams {
        /// What was read after conversion, in g.
        read_g: f64,
        /// What it would be.
        meant_g: f64,
    },
    /// Grains of powder typed as grams.
    PowderGrains {
        /// What was typed, as g.
        read_g: f64,
        /// What it would be.
        meant_g: f64,
    },
    /// A coefficient in kg/m² typed as lb/in².
    MetricCoefficient {
        /// What was typed, as lb/in².
        read_lb_in2: f64,
        /// What it would be.
        meant_lb_in2: f64,
    },
    /// A G1 coefficient given as G7: the form factor against G7 would be `form_factor`,
    /// real bullets have 0.85 or more.
    G1GivenAsG7 {
        /// The form factor that the figures amount to.
        form_factor: f64,
    },
    /// The G7 function for a bullet that it does not describe: below the speed of sound from
    /// the muzzle on, or blunt.
    G7ForSlowBullet {
        /// The muzzle velocity in m/s.
        muzzle_velocity_m_s: f64,
    },
    /// Pounds typed as kilograms for the rifle.
    RiflePounds {
        /// What was typed, as kg.
        read_kg: f64,
        /// What it would be.
        meant_kg: f64,
    },
}

/// Figures as they were read, before they are believed.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct ReadFigures {
    /// Muzzle velocity in m/s.
    pub muzzle_velocity_m_s: Option<f64>,
    /// Bullet mass in g.
    pub bullet_g: Option<f64>,
    /// Bullet diameter in mm.
    pub bullet_diameter_mm: Option<f64>,
    /// Powder mass in g.
    pub powder_g: Option<f64>,
    /// Coefficient in lb/in² with the function it refers to.
    pub bc: Option<(DragFunction, f64)>,
    /// Rifle mass in kg.
    pub rifle_kg: Option<f64>,
}

const M_PER_FOOT: f64 = 0.3048;
const KG_PER_POUND: f64 = 0.453_592_37;
/// Below the speed of sound in any air that is shot in.
const SUBSONIC_M_S: f64 = 335.0;

/// What looks wrong in the figures, most telling first; empty if nothing does.
///
/// With a known cartridge a figure is suspicious when it lies far from the typical one and
/// the other unit would bring it near; without one, when no such load exists.
///
/// # Source
/// Common practice, no source: the bounds follow from the loads that exist.
///
/// # Example
/// ```
/// use scopewright::flight::cartridges::by_key;
/// use scopewright::flight::suspicion::{ReadFigures, Suspicion, suspicions};
/// let read = ReadFigures { muzzle_velocity_m_s: Some(2700.0), ..ReadFigures::default() };
/// let found = suspicions(&read, by_key("308_win_10_7_g"));
/// assert!(matches!(found[0], Suspicion::FeetPerSecond { meant_m_s, .. } if (meant_m_s - 823.0).abs() < 1.0));
/// ```
#[must_use]
pub fn suspicions(read: &ReadFigures, typical: Option<&TypicalLoad>) -> Vec<Suspicion> {
    let mut found = Vec::new();
    if let Some(v) = read.muzzle_velocity_m_s {
        let meant = v * M_PER_FOOT;
        let back = v / M_PER_FOOT;
        match typical.map(|load| load.muzzle_velocity_m_s) {
            Some(usual) if far(v, usual) && near(meant, usual) => {
                found.push(Suspicion::FeetPerSecond {
                    read_m_s: v,
                    meant_m_s: meant,
                });
            }
            Some(usual) if far(v, usual) && near(back, usual) => {
                found.push(Suspicion::MetresPerSecondAsFeet {
                    read_m_s: v,
                    meant_m_s: back,
                });
            }
            None if v > 1350.0 && meant < 1350.0 => found.push(Suspicion::FeetPerSecond {
                read_m_s: v,
                meant_m_s: meant,
            }),
            _ => {}
        }
    }
    if let Some(mass) = read.bullet_g {
        let meant = mass * G_PER_GRAIN;
        let back = mass / G_PER_GRAIN;
        match typical {
            Some(load) if far(mass, load.bullet_g) && near_mass(meant, load.bullet_g) => {
                found.push(Suspicion::BulletGrains {
                    read_g: mass,
                    meant_g: meant,
                });
            }
            Some(load) if far(mass, load.bullet_g) && near_mass(back, load.bullet_g) => {
                found.push(Suspicion::BulletGrams {
                    read_g: mass,
                    meant_g: back,
                });
            }
            None if mass > 60.0 => found.push(Suspicion::BulletGrains {
                read_g: mass,
                meant_g: meant,
            }),
            None if mass < 0.3 => found.push(Suspicion::BulletGrams {
                read_g: mass,
                meant_g: back,
            }),
            _ => {}
        }
    }
    if let Some(powder) = read.powder_g {
        let meant = powder * G_PER_GRAIN;
        let usual = typical.map(|load| load.powder_g).filter(|&g| g > 0.0);
        let heavier = read
            .bullet_g
            .or(typical.map(|load| load.bullet_g))
            .is_some_and(|bullet| powder > 1.5 * bullet);
        if usual.map_or(powder > 16.0 || heavier, |g| powder > 4.0 * g) {
            found.push(Suspicion::PowderGrains {
                read_g: powder,
                meant_g: meant,
            });
        }
    }
    if let Some((function, bc)) = read.bc {
        if bc > 2.0 {
            found.push(Suspicion::MetricCoefficient {
                read_lb_in2: bc,
                meant_lb_in2: bc / super::drag::KG_M2_PER_LB_IN2,
            });
        } else if function == DragFunction::G7
            && let Some(suspicion) = wrong_function(read, typical, bc)
        {
            found.push(suspicion);
        }
    }
    if let Some(mass) = read.rifle_kg {
        // Bench rifles reach 8 kg; between 6 and 16 a figure in pounds is as likely.
        if mass > 6.0 && (2.0..8.0).contains(&(mass * KG_PER_POUND)) {
            found.push(Suspicion::RiflePounds {
                read_kg: mass,
                meant_kg: mass * KG_PER_POUND,
            });
        }
    }
    found
}

/// Whether a G7 coefficient is likely a G1 one, or G7 the wrong function altogether.
fn wrong_function(read: &ReadFigures, typical: Option<&TypicalLoad>, bc: f64) -> Option<Suspicion> {
    let mass = read.bullet_g.or(typical.map(|load| load.bullet_g));
    let diameter = read
        .bullet_diameter_mm
        .or(typical.map(|load| load.bullet_diameter_mm));
    if let (Some(mass), Some(diameter)) = (mass, diameter) {
        let factor = form_factor(mass, diameter, bc);
        if factor < 0.80 {
            return Some(Suspicion::G1GivenAsG7 {
                form_factor: factor,
            });
        }
    }
    let velocity = read
        .muzzle_velocity_m_s
        .or(typical.map(|load| load.muzzle_velocity_m_s))?;
    let blunt = typical.is_some_and(|load| {
        matches!(
            load.kind,
            LoadKind::Rimfire | LoadKind::Air | LoadKind::Slug | LoadKind::MuzzleLoader
        )
    });
    (velocity < SUBSONIC_M_S || blunt).then_some(Suspicion::G7ForSlowBullet {
        muzzle_velocity_m_s: velocity,
    })
}

/// More than a factor of 1.8 apart.
fn far(value: f64, usual: f64) -> bool {
    !(value < 1.8 * usual && value > usual / 1.8)
}

/// Within 30 %.
fn near(value: f64, usual: f64) -> bool {
    value < 1.3 * usual && value > usual / 1.3
}

/// Within a factor of two: bullets of one calibre differ that much.
fn near_mass(value: f64, usual: f64) -> bool {
    value < 2.0 * usual && value > usual / 2.0
}
