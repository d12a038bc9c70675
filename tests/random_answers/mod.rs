//! Answers that a person could give, drawn by a seed: the same for every target.

use scopewright::flight::cartridges;
use scopewright::need::answers::{
    AngleUnit, Annoyance, Answers, Attitude, Base, Carry, Comb, Cover, CoverShare, Detail,
    Distance, DistanceHabit, Eye, Glasses, Habits, Light, LitMark, Load, Manner, MannerShare,
    Money, Mount, Muzzle, Place, PriceBand, Ranges, Rifle, RifleKind, Rulebook, SightNow, StopTime,
    Use, Weights, ZoomHabit,
};
use scopewright::need::quarry::What;

/// Xorshift (Marsaglia 2003): enough for drawing, and the same everywhere.
struct Draw(u64);

impl Draw {
    /// A whole number below `n`.
    fn below(&mut self, n: u64) -> u64 {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        self.0 % n
    }

    /// Whether a draw of one in `n` falls.
    fn one_in(&mut self, n: u64) -> bool {
        self.below(n) == 0
    }

    /// One of a list.
    fn of<T: Clone>(&mut self, list: &[T]) -> T {
        list[self.below(list.len() as u64) as usize].clone()
    }

    /// One of a list in two of three, otherwise nothing.
    fn perhaps<T: Clone>(&mut self, list: &[T]) -> Option<T> {
        (!self.one_in(3)).then(|| self.of(list))
    }

    /// A figure between two, in hundredths of the way.
    fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * self.below(101) as f64 / 100.0
    }

    /// A figure between two in two of three, otherwise nothing.
    fn figure(&mut self, low: f64, high: f64) -> Option<f64> {
        (!self.one_in(3)).then(|| self.between(low, high))
    }
}

const MANNERS: [Manner; 9] = [
    Manner::Bench,
    Manner::PronePack,
    Manner::SeatRail,
    Manner::TwoPointSticks,
    Manner::SingleStick,
    Manner::Kneeling,
    Manner::WalkingUp,
    Manner::StandingFree,
    Manner::Driven,
];

fn ranges(draw: &mut Draw) -> Ranges {
    let nearest_m = 5.0 + draw.below(60) as f64;
    let usual_m = nearest_m + draw.below(150) as f64;
    let beyond_m = if draw.one_in(5) { 700 } else { 250 };
    Ranges {
        nearest_m,
        usual_m,
        farthest_m: usual_m + draw.below(beyond_m) as f64,
    }
}

fn uses(draw: &mut Draw) -> Vec<Use> {
    let all: Vec<What> = What::all().collect();
    let mut list: Vec<Use> = Vec::new();
    for _ in 0..draw.below(4) {
        let what = draw.of(&all).key().to_string();
        if list.iter().any(|known| known.what == what) {
            continue;
        }
        list.push(Use {
            what,
            share: 1.0 + draw.below(3) as f64,
            manner: draw.perhaps(&MANNERS),
            ranges: (!draw.one_in(3)).then(|| ranges(draw)),
        });
    }
    list
}

fn light(draw: &mut Draw) -> Light {
    use Cover::{BareWood, DenseConifer, Edge, InLeaf, Open, Ride};
    use StopTime::{
        Daylight, EndOfSeeing, HalfHourAfterSunset, HourAfterSunset, LitRange, Moon, Sunset,
    };
    Light {
        until: draw.perhaps(&[
            Daylight,
            Sunset,
            HalfHourAfterSunset,
            HourAfterSunset,
            EndOfSeeing,
            Moon,
            LitRange,
        ]),
        minutes_after_sunset: draw.one_in(6).then(|| draw.between(-30.0, 75.0)),
        cover: vec![CoverShare {
            cover: draw.of(&[Open, Edge, Ride, BareWood, InLeaf, DenseConifer]),
            share: 1.0,
        }],
        snow: draw.below(3) as f64 / 2.0,
        town_glow_mag: draw.one_in(5).then(|| draw.between(17.0, 22.0)),
        visibility_km: draw.one_in(5).then(|| draw.between(0.3, 20.0)),
        morning: draw.one_in(4),
    }
}

fn load(draw: &mut Draw) -> Load {
    if draw.one_in(2) {
        return Load {
            cartridge: Some(draw.of(cartridges::typical_loads()).key.to_string()),
            ..Load::default()
        };
    }
    Load {
        bullet_g: Some(2.6 + draw.below(25) as f64),
        muzzle_velocity_m_s: Some(300.0 + draw.below(700) as f64),
        bc_g1_lb_in2: Some(0.1 + draw.below(50) as f64 / 100.0),
        powder_g: Some(0.2 + draw.below(60) as f64 / 10.0),
        ..Load::default()
    }
}

fn rifle(draw: &mut Draw) -> Rifle {
    use RifleKind as K;
    Rifle {
        mass_kg: draw.figure(2.0, 6.0),
        kind: draw.perhaps(&[
            K::Bolt,
            K::SingleShot,
            K::Double,
            K::StraightStock,
            K::Lever,
            K::SlugGun,
            K::SpringAir,
            K::PrechargedAir,
            K::MuzzleLoader,
            K::ForwardRail,
        ]),
        muzzle: draw.perhaps(&[Muzzle::Bare, Muzzle::Moderator, Muzzle::Brake]),
        comb: draw.perhaps(&[Comb::Low, Comb::Right, Comb::Adjustable]),
        left_handed: draw.one_in(4),
        iron_sights: draw.one_in(4),
        ..Rifle::default()
    }
}

fn sight_now(draw: &mut Draw) -> SightNow {
    use Annoyance::{HardToFindPicture, NotFarEnough, TooDark, TooHeavy, TooNarrow};
    let mut annoys = Vec::new();
    for each in [
        TooDark,
        TooNarrow,
        TooHeavy,
        HardToFindPicture,
        NotFarEnough,
    ] {
        if draw.one_in(3) {
            annoys.push(each);
        }
    }
    const LINES: [&str; 6] = [
        "3-9x40",
        "3-12x50",
        "8x56",
        "1-6x24",
        "2,5-10x50",
        "4.5 to nothing",
    ];
    SightNow {
        line: draw.perhaps(&LINES).map(str::to_string),
        annoys,
    }
}

fn rulebook(draw: &mut Draw) -> Rulebook {
    let refocusing_forbidden = draw.one_in(3);
    Rulebook {
        magnification_most: draw.perhaps(&[4.5, 12.0, 16.0]),
        lit_mark_forbidden: draw.one_in(2),
        refocusing_forbidden,
        // What must not be refocused cannot find the range.
        focus_finds_range: !refocusing_forbidden && draw.one_in(2),
        mass_most_g: draw.perhaps(&[500.0, 900.0]),
    }
}

/// Answers that a person could give; `seed` chooses. Every group of answers is left out by
/// some.
pub fn answers_of(seed: u64) -> Answers {
    let draw = &mut Draw(seed.wrapping_mul(0x9E37_79B9_7F4A_7C15) | 1);
    // The first draws of neighbouring seeds are alike.
    for _ in 0..8 {
        draw.below(2);
    }
    Answers {
        version: 1,
        uses: uses(draw),
        manners: if draw.one_in(4) {
            vec![MannerShare {
                manner: draw.of(&MANNERS),
                share: 1.0,
                ranges: None,
            }]
        } else {
            Vec::new()
        },
        ranges: draw.one_in(4).then(|| ranges(draw)),
        light: (!draw.one_in(3)).then(|| light(draw)),
        eye: (!draw.one_in(3)).then(|| Eye {
            age_years: draw.figure(8.0, 95.0),
            dark_pupil_mm: draw.one_in(6).then(|| draw.between(3.0, 8.0)),
            glasses: draw.perhaps(&[
                Glasses::NoGlasses,
                Glasses::Distance,
                Glasses::Varifocal,
                Glasses::ThickFrame,
            ]),
            astigmatism: draw.one_in(4),
            ..Eye::default()
        }),
        load: (!draw.one_in(3)).then(|| load(draw)),
        rifle: draw.one_in(2).then(|| rifle(draw)),
        mount: draw.one_in(3).then(|| Mount {
            rings_kept_mm: draw.perhaps(&[25.4, 30.0, 34.0]),
            base: draw.perhaps(&[
                Base::SlottedRail,
                Base::NarrowSlots,
                Base::SmallDovetail,
                Base::WideDovetail,
                Base::TwoPiece,
                Base::Bare,
            ]),
            incline_mrad: draw.perhaps(&[0.0, 6.0, 9.0]),
            ..Mount::default()
        }),
        money: draw.one_in(2).then(|| Money {
            band: draw.perhaps(&[PriceBand::A, PriceBand::B, PriceBand::C, PriceBand::E]),
            attitude: draw.perhaps(&[
                Attitude::LittleAsSensible,
                Attitude::WhatItIsWorth,
                Attitude::NoLimit,
            ]),
            ..Money::default()
        }),
        zoom: draw.perhaps(&[
            ZoomHabit::Never,
            ZoomHabit::BeforeSitting,
            ZoomHabit::EachShot,
        ]),
        detail: draw.perhaps(&[Detail::BodyShape, Detail::Young, Detail::Antler]),
        carry: draw.perhaps(&[Carry::Short, Carry::FewKm, Carry::AllDayHill]),
        distance: draw.one_in(2).then(|| Distance {
            habit: draw.perhaps(&[
                DistanceHabit::DeadOn,
                DistanceHabit::Marks,
                DistanceHabit::Dial,
                DistanceHabit::DialAndMarks,
            ]),
            rangefinder: draw.perhaps(&[true, false]),
            unit: draw.perhaps(&[AngleUnit::Mrad, AngleUnit::Moa, AngleUnit::Neither]),
        }),
        lit_mark: draw.perhaps(&[
            LitMark::Wanted,
            LitMark::Indifferent,
            LitMark::NotWanted,
            LitMark::NotAllowed,
        ]),
        place: draw.one_in(3).then(|| Place {
            latitude_deg: draw.figure(-60.0, 69.0),
            longitude_deg_east: draw.figure(-170.0, 170.0),
            height_m: draw.figure(0.0, 3000.0),
            coldest_c: draw.figure(-30.0, 15.0),
            ..Place::default()
        }),
        rulebook: draw.one_in(6).then(|| rulebook(draw)),
        sight_now: draw.one_in(3).then(|| sight_now(draw)),
        weights: draw.one_in(4).then(|| Weights {
            mass_percent_per_100_g: draw.figure(0.0, 8.0),
            height_percent_per_10_mm: draw.figure(0.0, 8.0),
            money_percent_per_band: draw.figure(0.0, 8.0),
        }),
        habits: draw.one_in(4).then(|| Habits {
            both_eyes_open: draw.perhaps(&[true, false]),
            comes_off: draw.perhaps(&[true, false]),
            others_use_it: draw.perhaps(&[true, false]),
        }),
        ..Answers::default()
    }
}
