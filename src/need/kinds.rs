//! Usual kinds of shooting: one tap fills quarry, manner, ranges and light, and is then
//! corrected where it differs.
//!
//! # Source
//! Common practice, no source.

use super::answers::{
    Answers, Cover, CoverShare, Light, Manner, MannerShare, Ranges, StopTime, Use, VERSION,
};
use crate::plain::Gathered;

/// A usual kind of shooting. Its words are `kind-<key>`.
#[derive(Debug)]
pub struct Kind {
    /// Stable key.
    pub key: &'static str,
    uses: &'static [(&'static str, f64)],
    manners: &'static [(Manner, f64, (f64, f64, f64))],
    until: StopTime,
    covers: &'static [(Cover, f64)],
    snow: f64,
    rifle: Option<&'static str>,
}

impl Kind {
    /// The kind with this key.
    #[must_use]
    pub fn from_key(key: &str) -> Option<&'static Self> {
        KINDS.iter().find(|kind| kind.key == key)
    }

    /// The answers with quarry, manner, ranges and light of this kind; all else stays. A
    /// cartridge is set only where the kind says which and none was named.
    #[must_use]
    pub fn fill(&self, answers: &Answers) -> Answers {
        let mut next = answers.clone();
        next.version = VERSION;
        next.uses = self
            .uses
            .iter()
            .map(|(what, share)| Use {
                what: (*what).to_owned(),
                share: *share,
                manner: None,
                ranges: None,
            })
            .gathered();
        next.manners = self
            .manners
            .iter()
            .map(
                |(manner, share, (nearest_m, usual_m, farthest_m))| MannerShare {
                    manner: *manner,
                    share: *share,
                    ranges: Some(Ranges {
                        nearest_m: *nearest_m,
                        usual_m: *usual_m,
                        farthest_m: *farthest_m,
                    }),
                },
            )
            .gathered();
        next.ranges = None;
        next.light = Some(Light {
            until: Some(self.until),
            minutes_after_sunset: None,
            cover: self
                .covers
                .iter()
                .map(|(cover, share)| CoverShare {
                    cover: *cover,
                    share: *share,
                })
                .gathered(),
            snow: self.snow,
            town_glow_mag: answers.light.as_ref().and_then(|light| light.town_glow_mag),
            visibility_km: answers.light.as_ref().and_then(|light| light.visibility_km),
            morning: answers.light.as_ref().is_some_and(|light| light.morning),
        });
        if let Some(cartridge) = self.rifle
            && answers.load.is_none()
        {
            next.load.get_or_insert_default().cartridge = Some(cartridge.to_owned());
        }
        next.not_sure.retain(|key| {
            !matches!(key.as_str(), "quarry" | "manner" | "ranges" | "light")
                && (next.load.is_none() || key != "rifle")
        });
        next
    }

    /// Whether the answers are as this kind fills them.
    #[must_use]
    pub fn matches(&self, answers: &Answers) -> bool {
        let filled = self.fill(answers);
        filled.uses == answers.uses
            && filled.manners == answers.manners
            && filled.light == answers.light
            && filled.ranges == answers.ranges
    }
}

use Cover as C;
use Manner as M;

/// All kinds, in the order in which they are offered.
#[rustfmt::skip]
pub static KINDS: [Kind; 15] = [
    Kind { key: "seat_evening", uses: &[("roe_deer", 4.0), ("red_fox", 2.0)],
        manners: &[(M::SeatRail, 4.0, (30.0, 80.0, 150.0))],
        until: StopTime::HalfHourAfterSunset, covers: &[(C::Edge, 4.0), (C::Open, 2.0)], snow: 0.0, rifle: None },
    Kind { key: "boar_by_night", uses: &[("wild_boar", 4.0)],
        manners: &[(M::SeatRail, 4.0, (30.0, 60.0, 120.0))],
        until: StopTime::EndOfSeeing, covers: &[(C::Edge, 4.0), (C::Open, 4.0)], snow: 0.3, rifle: None },
    Kind { key: "woodland_on_foot", uses: &[("roe_deer", 4.0), ("wild_boar", 1.0)],
        manners: &[(M::TwoPointSticks, 4.0, (25.0, 70.0, 160.0))],
        until: StopTime::HalfHourAfterSunset, covers: &[(C::InLeaf, 4.0), (C::Edge, 4.0)], snow: 0.0, rifle: None },
    Kind { key: "driven", uses: &[("wild_boar", 4.0), ("red_deer", 1.0), ("roe_deer", 1.0)],
        manners: &[(M::Driven, 4.0, (5.0, 25.0, 60.0))],
        until: StopTime::Daylight, covers: &[(C::BareWood, 4.0), (C::DenseConifer, 2.0)], snow: 0.0, rifle: None },
    Kind { key: "hill", uses: &[("chamois", 4.0), ("red_deer", 2.0)],
        manners: &[(M::PronePack, 4.0, (80.0, 180.0, 300.0))],
        until: StopTime::Sunset, covers: &[(C::Open, 4.0)], snow: 0.0, rifle: None },
    Kind { key: "deer_stand", uses: &[("white_tailed_deer", 4.0)],
        manners: &[(M::SeatRail, 4.0, (15.0, 45.0, 110.0))],
        until: StopTime::HalfHourAfterSunset, covers: &[(C::BareWood, 4.0), (C::Edge, 2.0)], snow: 0.0, rifle: None },
    Kind { key: "plains", uses: &[("plains_antelope", 4.0)],
        manners: &[(M::TwoPointSticks, 4.0, (60.0, 120.0, 250.0))],
        until: StopTime::Daylight, covers: &[(C::Open, 4.0), (C::BareWood, 2.0)], snow: 0.0, rifle: None },
    Kind { key: "dangerous_game", uses: &[("dangerous_game", 4.0)],
        manners: &[(M::WalkingUp, 4.0, (10.0, 40.0, 90.0))],
        until: StopTime::Daylight, covers: &[(C::BareWood, 4.0), (C::Open, 4.0)], snow: 0.0,
        rifle: Some("375_h_h_mag_19_4_g") },
    Kind { key: "fox_by_moon", uses: &[("red_fox", 4.0)],
        manners: &[(M::SeatRail, 4.0, (40.0, 90.0, 180.0))],
        until: StopTime::Moon, covers: &[(C::Open, 4.0), (C::Edge, 2.0)], snow: 0.3, rifle: None },
    Kind { key: "rabbits", uses: &[("rabbit", 4.0), ("paper_50_m", 2.0)],
        manners: &[(M::TwoPointSticks, 4.0, (15.0, 45.0, 80.0)), (M::Bench, 2.0, (25.0, 50.0, 80.0))],
        until: StopTime::Sunset, covers: &[(C::Open, 4.0), (C::Edge, 4.0)], snow: 0.0,
        rifle: Some("22_lr_2_6_g_standard") },
    Kind { key: "air_rats", uses: &[("ground_squirrel_or_rat", 4.0), ("wood_pigeon", 2.0)],
        manners: &[(M::SingleStick, 4.0, (8.0, 20.0, 40.0))],
        until: StopTime::Sunset, covers: &[(C::Open, 4.0), (C::Edge, 2.0)], snow: 0.0,
        rifle: Some("5_5_mm_air_1_03_g_16_j") },
    Kind { key: "prairie", uses: &[("prairie_dog", 4.0), ("coyote_or_jackal", 2.0)],
        manners: &[(M::Bench, 4.0, (60.0, 180.0, 350.0)), (M::PronePack, 2.0, (80.0, 180.0, 350.0))],
        until: StopTime::Daylight, covers: &[(C::Open, 4.0)], snow: 0.0, rifle: Some("223_rem_3_56_g") },
    Kind { key: "paper_100", uses: &[("paper_100_m", 4.0)],
        manners: &[(M::Bench, 4.0, (100.0, 100.0, 100.0))],
        until: StopTime::Daylight, covers: &[(C::Open, 4.0)], snow: 0.0, rifle: None },
    Kind { key: "steel", uses: &[("steel_plate_30_by_45_cm", 4.0), ("steel_disc_20_cm", 2.0)],
        manners: &[(M::Bench, 4.0, (100.0, 500.0, 1000.0))],
        until: StopTime::Daylight, covers: &[(C::Open, 4.0)], snow: 0.0, rifle: Some("6_5_creedmoor_9_1_g") },
    Kind { key: "field_target", uses: &[("field_target_40_mm", 4.0), ("field_target_25_mm", 2.0),
            ("field_target_15_mm", 1.0)],
        manners: &[(M::Kneeling, 4.0, (8.0, 30.0, 50.0))],
        until: StopTime::Daylight, covers: &[(C::Open, 4.0), (C::BareWood, 4.0)], snow: 0.0,
        rifle: Some("4_5_mm_air_0_547_g_16_j") },
];
