//! The cautions that may not be missing: the usual ones, and those tied to an answer.
//!
//! # Source
//! Common practice of the trade, no source; local law, the maker's figures and a licensed
//! gunsmith come before all of them.

use super::answers::{Glasses, Lens, Muzzle, RifleKind};
use super::quarry::{Telescope, What};
use super::shooter::Need;
use crate::flight::cartridges::LoadKind;
use crate::plain::Gathered;

/// A caution. Its words are `caution-<key>`.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[allow(missing_docs, reason = "named as their messages")]
pub enum Caution {
    Unloaded,
    Sun,
    NoBinocular,
    Shop,
    Behind,
    Identify,
    Figures,
    EyeRelief,
    FirstShot,
    BoreTool,
    Marking,
    MuzzleDevice,
    Ricochet,
    Protection,
    Transport,
    Law,
    Maker,
    ButtonCells,
    Wounded,
    SpringAir,
    Telescope,
    DangerousGame,
    BothEyes,
    ComesOff,
    Others,
    LeftHanded,
    Lens,
    ThickFrame,
}

/// Every caution.
#[rustfmt::skip]
pub const ALL: [Caution; 28] = [
    Caution::Unloaded, Caution::Sun, Caution::NoBinocular, Caution::Shop, Caution::Behind,
    Caution::Identify, Caution::Figures, Caution::EyeRelief, Caution::FirstShot,
    Caution::BoreTool, Caution::Marking, Caution::MuzzleDevice, Caution::Ricochet,
    Caution::Protection, Caution::Transport, Caution::Law, Caution::Maker,
    Caution::ButtonCells, Caution::Wounded, Caution::SpringAir, Caution::Telescope,
    Caution::DangerousGame, Caution::BothEyes, Caution::ComesOff, Caution::Others,
    Caution::LeftHanded, Caution::Lens, Caution::ThickFrame,
];

impl Caution {
    /// The stable key.
    #[must_use]
    pub fn key(self) -> &'static str {
        match self {
            Caution::Unloaded => "unloaded",
            Caution::Sun => "sun",
            Caution::NoBinocular => "no_binocular",
            Caution::Shop => "shop",
            Caution::Behind => "behind",
            Caution::Identify => "identify",
            Caution::Figures => "figures",
            Caution::EyeRelief => "eye_relief",
            Caution::FirstShot => "first_shot",
            Caution::BoreTool => "bore_tool",
            Caution::Marking => "marking",
            Caution::MuzzleDevice => "muzzle_device",
            Caution::Ricochet => "ricochet",
            Caution::Protection => "protection",
            Caution::Transport => "transport",
            Caution::Law => "law",
            Caution::Maker => "maker",
            Caution::ButtonCells => "button_cells",
            Caution::Wounded => "wounded",
            Caution::SpringAir => "spring_air",
            Caution::Telescope => "telescope",
            Caution::DangerousGame => "dangerous_game",
            Caution::BothEyes => "both_eyes",
            Caution::ComesOff => "comes_off",
            Caution::Others => "others",
            Caution::LeftHanded => "left_handed",
            Caution::Lens => "lens",
            Caution::ThickFrame => "thick_frame",
        }
    }
}

/// The cautions for everybody, on the advice and its print.
pub const ALWAYS: [Caution; 5] = [
    Caution::Figures,
    Caution::Identify,
    Caution::Law,
    Caution::Maker,
    Caution::NoBinocular,
];

/// The cautions that this person's answers call for, besides [`ALWAYS`].
#[must_use]
pub fn for_need(need: &Need) -> Vec<Caution> {
    let animals = need.situations.iter().any(|each| !each.what.is_target());
    let dangerous = need
        .situations
        .iter()
        .any(|each| each.what.key() == "dangerous_game");
    let no_telescope = need.situations.iter().any(
        |each| matches!(each.what, What::Target(row) if row.telescope == Telescope::OftenForbidden),
    );
    let yes = |flag: Option<bool>| flag == Some(true);
    let list = [
        (no_telescope, Caution::Telescope),
        (
            need.rifle.kind.value == RifleKind::SpringAir,
            Caution::SpringAir,
        ),
        (
            matches!(
                need.load.kind,
                LoadKind::Rimfire | LoadKind::Slug | LoadKind::MuzzleLoader
            ),
            Caution::Ricochet,
        ),
        (
            need.rifle.muzzle.value != Muzzle::Bare,
            Caution::MuzzleDevice,
        ),
        (dangerous, Caution::DangerousGame),
        (yes(need.habits.both_eyes_open), Caution::BothEyes),
        (yes(need.habits.comes_off), Caution::ComesOff),
        (yes(need.habits.others_use_it), Caution::Others),
        (need.rifle.left_handed, Caution::LeftHanded),
        (need.eye.lens != Lens::Natural, Caution::Lens),
        (
            need.eye
                .glasses
                .value
                .iter()
                .any(|share| share.of == Glasses::ThickFrame),
            Caution::ThickFrame,
        ),
        (animals, Caution::Wounded),
    ];
    list.into_iter()
        .filter_map(|(called_for, caution)| called_for.then_some(caution))
        .gathered()
}
