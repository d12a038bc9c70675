//! The cartridges as a questionnaire offers them: a few often met, and all, by recoil.

use crate::flight::cartridges::{LoadKind, TypicalLoad, typical_loads};

/// Groups in which cartridges are offered. Their words are `cartridge-group-<key>`.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum RecoilGroup {
    /// Air rifles.
    None,
    /// Rimfire.
    Rimfire,
    /// Below 7 kg·m/s of bullet and gas.
    Light,
    /// 7 to 13 kg·m/s.
    Medium,
    /// 13 to 18.5 kg·m/s.
    Strong,
    /// Above.
    Heavy,
    /// Slugs and muzzle loaders.
    Slug,
}

/// All groups in order.
pub const RECOIL_GROUPS: [RecoilGroup; 7] = [
    RecoilGroup::None,
    RecoilGroup::Rimfire,
    RecoilGroup::Light,
    RecoilGroup::Medium,
    RecoilGroup::Strong,
    RecoilGroup::Heavy,
    RecoilGroup::Slug,
];

impl RecoilGroup {
    /// The stable key.
    #[must_use]
    pub fn key(self) -> &'static str {
        match self {
            RecoilGroup::None => "none",
            RecoilGroup::Rimfire => "rimfire",
            RecoilGroup::Light => "light",
            RecoilGroup::Medium => "medium",
            RecoilGroup::Strong => "strong",
            RecoilGroup::Heavy => "heavy",
            RecoilGroup::Slug => "slug",
        }
    }

    /// The group of a load, by the momentum of bullet and powder gas (the gas at 1.5 times
    /// the bullet's velocity); the bounds part what the trade calls light, medium, strong and
    /// heavy (common practice, no source).
    #[must_use]
    pub fn of(load: &TypicalLoad) -> Self {
        match load.kind {
            LoadKind::Air => return RecoilGroup::None,
            LoadKind::Rimfire => return RecoilGroup::Rimfire,
            LoadKind::Slug | LoadKind::MuzzleLoader => return RecoilGroup::Slug,
            LoadKind::CentreFire => {}
        }
        let momentum = 0.001 * (load.bullet_g + 1.5 * load.powder_g) * load.muzzle_velocity_m_s;
        if momentum < 7.0 {
            RecoilGroup::Light
        } else if momentum < 13.0 {
            RecoilGroup::Medium
        } else if momentum < 18.5 {
            RecoilGroup::Strong
        } else {
            RecoilGroup::Heavy
        }
    }
}

/// All loads of a group.
pub fn loads_of(group: RecoilGroup) -> impl Iterator<Item = &'static TypicalLoad> {
    typical_loads()
        .iter()
        .filter(move |load| RecoilGroup::of(load) == group)
}

/// The keys offered first; the rest is found by group or by typing.
pub const OFTEN_MET: [&str; 11] = [
    "308_win_10_7_g",
    "30_06_spring_11_7_g",
    "6_5x55_se_9_1_g",
    "6_5_creedmoor_9_1_g",
    "223_rem_3_56_g",
    "270_win_8_4_g",
    "7x64_10_4_g",
    "8x57_is_12_7_g",
    "9_3x62_18_5_g",
    "300_win_mag_11_7_g",
    "22_lr_2_6_g_standard",
];
