//! Free recoil and the eye relief that it asks for.

use crate::quantity::Estimate;

/// The factor for the speed of the powder gas against the bullet's.
///
/// # Source
/// SAAMI, *Gun Recoil Formulae* (from memory; 1.75 confirmed in print).
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum GasFactor {
    /// High-power rifles, 1.75.
    Rifle,
    /// Average shotguns, 1.50.
    Shotgun,
    /// Long-barrelled shotguns, 1.25.
    LongShotgun,
}

impl GasFactor {
    /// The factor itself.
    #[must_use]
    pub fn value(self) -> f64 {
        match self {
            GasFactor::Rifle => 1.75,
            GasFactor::Shotgun => 1.50,
            GasFactor::LongShotgun => 1.25,
        }
    }
}

/// Free recoil of a rifle.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Recoil {
    /// Energy in J.
    pub energy_j: f64,
    /// Velocity of the rifle in m/s.
    pub velocity_m_s: f64,
}

/// The free recoil, `V_r = (m_b·v + f·m_p·v)/M`, `E = ½·M·V_r²`.
///
/// m_b bullet, m_p powder, M rifle as it is fired with the sight on, f the gas factor.
///
/// # Validity
/// A rifle free to move; stock shape and recoil pad change what is felt, not this.
///
/// # Accuracy
/// The gas factor is good to about 10 % of the powder's share.
///
/// # Source
/// SAAMI, *Gun Recoil Formulae* (from memory); the balance of momentum itself is textbook.
///
/// # Example
/// ```
/// use scopewright::rifle::recoil::{GasFactor, free_recoil};
/// let r = free_recoil(10.69, 823.0, 2.98, 3.629, GasFactor::Rifle);
/// assert!((r.energy_j - 23.6).abs() < 0.5);
/// ```
#[must_use]
pub fn free_recoil(
    bullet_g: f64,
    muzzle_velocity_m_s: f64,
    powder_g: f64,
    rifle_kg: f64,
    gas: GasFactor,
) -> Recoil {
    let momentum = 1e-3 * (bullet_g + gas.value() * powder_g) * muzzle_velocity_m_s;
    let velocity = momentum / rifle_kg;
    Recoil {
        energy_j: 0.5 * momentum * velocity,
        velocity_m_s: velocity,
    }
}

/// What is on the muzzle.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum MuzzleDevice {
    /// Nothing.
    Bare,
    /// A moderator: 0.35 kg more, and 20 to 35 % less recoil energy, its mass included.
    Moderator,
    /// A brake: 35 to 50 % less recoil energy.
    Brake,
}

impl MuzzleDevice {
    /// The share of the recoil energy that is left.
    ///
    /// # Source
    /// Common practice, no source.
    #[must_use]
    pub fn energy_left(self) -> Estimate {
        match self {
            MuzzleDevice::Bare => Estimate::new(1.0, 0.0),
            MuzzleDevice::Moderator => Estimate::new(0.725, 0.04),
            MuzzleDevice::Brake => Estimate::new(0.575, 0.04),
        }
    }

    /// The mass added, in kg.
    #[must_use]
    pub fn mass_kg(self) -> f64 {
        match self {
            MuzzleDevice::Moderator => 0.35,
            MuzzleDevice::Bare | MuzzleDevice::Brake => 0.0,
        }
    }
}

/// The recoil with something on the muzzle: the energy falls to the device's share, the
/// velocity is that of the heavier rifle with this energy.
#[must_use]
pub fn with_muzzle_device(bare: Recoil, rifle_kg: f64, device: MuzzleDevice) -> Recoil {
    let energy_j = bare.energy_j * device.energy_left().value;
    Recoil {
        energy_j,
        velocity_m_s: (2.0 * energy_j / (rifle_kg + device.mass_kg())).sqrt(),
    }
}

/// The change of muzzle velocity with barrel length, in m/s for each mm: 8 m/s per 25 mm.
///
/// # Source
/// Common practice, no source; 5 to 12 m/s per 25 mm by cartridge.
pub const VELOCITY_PER_BARREL_M_S_MM: f64 = 8.0 / 25.0;

/// The muzzle velocity in m/s from a barrel of `barrel_mm` when the figure was taken with
/// one of `reference_barrel_mm`.
///
/// # Validity
/// Differences up to 150 mm; larger ones are held there. Not for rimfire and air rifles,
/// whose velocity hardly changes.
#[must_use]
pub fn velocity_for_barrel_m_s(
    muzzle_velocity_m_s: f64,
    reference_barrel_mm: f64,
    barrel_mm: f64,
) -> f64 {
    let difference = (barrel_mm - reference_barrel_mm).clamp(-150.0, 150.0);
    muzzle_velocity_m_s + VELOCITY_PER_BARREL_M_S_MM * difference
}

/// What is asked for where nothing recoils, mm.
pub const LEAST_EYE_RELIEF_MM: f64 = 70.0;

/// What asks for more eye relief than recoil alone.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct EyeReliefCircumstances {
    /// Glasses worn while shooting.
    pub glasses: bool,
    /// A thick frame or protective glasses.
    pub thick_frame: bool,
    /// Shot lying down.
    pub prone: bool,
    /// Shot steeply uphill.
    pub uphill: bool,
}

/// The eye relief asked for, with its parts, in mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct EyeReliefNeed {
    /// By recoil velocity: `max(70, 60 + 7·V_r)`.
    pub by_recoil_mm: f64,
    /// For glasses: 5, with a thick frame 10.
    pub for_glasses_mm: f64,
    /// For lying down or uphill: 5.
    pub for_position_mm: f64,
}

impl EyeReliefNeed {
    /// The sum; glasses and position together add no more than 10 mm.
    #[must_use]
    pub fn total_mm(&self) -> f64 {
        self.by_recoil_mm + (self.for_glasses_mm + self.for_position_mm).min(10.0)
    }
}

/// The eye relief asked for by recoil velocity and circumstances; compare it with the
/// *smallest* eye relief over the zoom.
///
/// # Source
/// Common practice, no source: `max(70, 60 + 7·V_r)` mm, and 5 to 10 mm more for glasses,
/// lying down or uphill.
#[must_use]
pub fn eye_relief_need(
    recoil_velocity_m_s: f64,
    circumstances: EyeReliefCircumstances,
) -> EyeReliefNeed {
    EyeReliefNeed {
        by_recoil_mm: (60.0 + 7.0 * recoil_velocity_m_s).max(LEAST_EYE_RELIEF_MM),
        for_glasses_mm: if circumstances.thick_frame {
            10.0
        } else if circumstances.glasses {
            5.0
        } else {
            0.0
        },
        for_position_mm: if circumstances.prone || circumstances.uphill {
            5.0
        } else {
            0.0
        },
    }
}

/// The range of eye relief in mm that the older rule by recoil energy gives, a cross-check.
///
/// # Source
/// Common practice, no source.
#[must_use]
pub fn eye_relief_by_energy_mm(energy_j: f64) -> (f64, f64) {
    if energy_j < 10.0 {
        (70.0, 75.0)
    } else if energy_j < 25.0 {
        (80.0, 85.0)
    } else if energy_j < 40.0 {
        (88.0, 90.0)
    } else if energy_j < 55.0 {
        (93.0, 95.0)
    } else {
        (100.0, 100.0)
    }
}

/// The inertial load on the mount in kN.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MountLoad {
    /// Mean over the barrel time.
    pub mean_kn: f64,
    /// Peak, about twice the mean.
    pub peak_kn: f64,
    /// A recoil stop or cross bolt is asked for: more than 25 J, or a sight over 800 g.
    pub recoil_stop: bool,
}

/// How long the rifle takes to reach its recoil velocity, in s.
const RECOIL_TIME_S: f64 = 1.3e-3;

/// The inertial load of a sight on its mount, `m_s·V_r/t` with t = 1.3 ms, peak twice that.
///
/// # Validity
/// Not for spring-piston air rifles, which load the mount both ways.
///
/// # Accuracy
/// An order of size: the time is between 1 and 2 ms. From memory.
#[must_use]
pub fn mount_load(sight_g: f64, recoil: Recoil) -> MountLoad {
    let mean_kn = 1e-6 * sight_g * recoil.velocity_m_s / RECOIL_TIME_S;
    MountLoad {
        mean_kn,
        peak_kn: 2.0 * mean_kn,
        recoil_stop: recoil.energy_j > 25.0 || sight_g > 800.0,
    }
}
