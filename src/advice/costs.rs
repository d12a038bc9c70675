//! What a sight costs: mass, height, money, rings, in percentage points of occasions.
//!
//! The exchange is explicit and can be moved: "100 g weigh as much to you as 1 % of your
//! occasions". All charges are monotone, so that more weight on mass never makes the pick
//! heavier.
//!
//! # Source
//! Rates that reproduce a seasoned advisor's picks, flat within a factor of two; assumption.

use super::candidates::Candidate;
use super::occasions;
use super::owned;
use super::report::Rates;
use super::world::World;
use crate::need::answers::{
    Annoyance, Attitude, Base, Carry, Comb, LitMark, Manner, PriceBand, RifleKind,
};
use crate::need::shooter::{Need, Stop};
use crate::rifle::mounting::{Clearances, Height};
use crate::rifle::steadiness;
use crate::sight::{
    Elevation, FocalPlane, Illumination, ParallaxSetting, Specification, field, fits, resolution,
    typed_line::TypedSight,
};

/// Points for 100 g, before how far it is carried.
const MASS_POINTS_PER_100_G: f64 = 1.0;
/// Mass that is not charged: the lightest sights weigh so much.
const MASS_FREE_G: f64 = 300.0;
/// Share of the bare rifle's mass beyond which a sight unbalances it …
const HEAVY_SHARE: f64 = 0.17;
/// … and how much more 100 g weigh then, against the plain rate.
const HEAVY_FACTOR: f64 = 1.4;
/// Points for 10 mm of height where the comb is right.
const HEIGHT_POINTS_PER_10_MM: f64 = 1.4;
/// Points for a price band, by attitude: as little as sensible, what it is worth, no limit.
const MONEY_POINTS_PER_BAND: [f64; 3] = [1.5, 1.0, 0.5];
/// Points for each band beyond the budget.
const BEYOND_BUDGET_POINTS: f64 = 8.0;
/// Points for rings that would have to be replaced.
const RINGS_POINTS: f64 = 4.0;
/// Points that a unit of ln(zoom ratio) is worth for the use not thought of today.
const SPAN_POINTS: f64 = 1.5;
/// Points for one more thing to get wrong: a dial or an adjustable parallax, each.
const HANDLING_POINTS: f64 = 0.3;
/// Points for an exposed dial that this person does not use.
const IDLE_DIAL_POINTS: f64 = 1.0;
/// Points for marks that this person does not hold with.
const IDLE_MARKS_POINTS: f64 = 0.5;
/// Points for a lit mark that is wanted and missing, or not wanted and there.
const LIT_POINTS: f64 = 1.0;
/// Points for a lit mark that dazzles in the very light in which this person stops: twice a
/// wish, because it must be switched off when it is needed. Nearly indifferent marks are so
/// told apart by the last light rather than by a chance tenth of a point (assumption).
const DAZZLING_POINTS: f64 = 2.0;
/// Who is annoyed by the weight of the sight owned now weighs mass so many times as much
/// (assumption).
const ANNOYED_BY_MASS: f64 = 1.5;

/// Points for a sight that is in what annoys no better than the one owned now (assumption:
/// two near-ties, so that it decides among those that serve alike and never over a need).
pub const ANNOYANCE_POINTS: f64 = 2.0;
/// It is better clearly where it has so many times as much of it (assumption).
const CLEARLY_BETTER: f64 = 1.25;
/// The sight owned now where only what annoys about it was said: the commonest of all (common
/// practice, no source).
pub const USUAL_SIGHT: &str = "3-9x40";

/// What is wished for because the sight owned now has too little of it: all points are charged
/// up to `from`, none beyond `to`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Wish {
    /// What annoys.
    pub annoys: Annoyance,
    /// What the sight owned now has.
    pub from: f64,
    /// What is clearly more.
    pub to: f64,
}

impl Wish {
    /// The wish that an annoyance stands for; none for those that shift something else, and
    /// where more would be of no use.
    fn of(need: &Need, annoys: Annoyance) -> Option<Self> {
        let now = owned::specification(need)
            .or_else(|| Some(TypedSight::parse(USUAL_SIGHT).ok()?.specification()))?;
        let from = reached(annoys, &Candidate::of(now))?;
        let of_use = match annoys {
            Annoyance::NotFarEnough => (ceilings(need).into_iter())
                .filter(|(_, share)| *share > 0.05)
                .fold(0.0, |most, (ceiling, _)| ceiling.max(most)),
            _ => f64::INFINITY,
        };
        let to = (CLEARLY_BETTER * from).min(of_use);
        (to > 1.01 * from).then_some(Self { annoys, from, to })
    }

    fn points(&self, candidate: &Candidate) -> f64 {
        let reached = reached(self.annoys, candidate).unwrap_or(self.to);
        let gained = libm::log(reached / self.from) / libm::log(self.to / self.from);
        ANNOYANCE_POINTS * (1.0 - gained.clamp(0.0, 1.0))
    }
}

/// How much a sight has of what is missed: the field at the lowest power in m per 100 m, or the
/// top power.
fn reached(annoys: Annoyance, candidate: &Candidate) -> Option<f64> {
    let s = &candidate.specification;
    match annoys {
        Annoyance::TooNarrow => Some(field::field_m_per_100m(
            candidate.apparent_deg,
            s.magnification_low,
        )),
        Annoyance::NotFarEnough => Some(s.magnification_high),
        Annoyance::TooDark | Annoyance::TooHeavy | Annoyance::HardToFindPicture => None,
    }
}

/// The charges of one person in one world.
#[derive(Clone, Debug, PartialEq)]
pub struct Costs {
    /// The rates as shown.
    pub rates: Rates,
    mass_points_per_g: f64,
    heavy_from_g: f64,
    heavy_points_per_g: f64,
    height_points_per_mm: f64,
    money_points_per_band: f64,
    budget: Option<f64>,
    rings_kept_mm: Option<f64>,
    lit: LitMark,
    /// Share of the occasions that end in a light in which a day-bright mark dazzles.
    dark_share: f64,
    uses_dial: bool,
    uses_marks: bool,
    /// Ceilings on the magnification of use, each with its share.
    ceilings: Vec<(f64, f64)>,
    /// What the sight owned now has too little of.
    pub wishes: Vec<Wish>,
    seat: Seat,
    world: World,
}

/// Where the sight sits, as far as height goes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Seat {
    usual: Clearances,
}

/// What iron sights under the bell ask for, mm (8 to 12 are met).
const IRON_SIGHTS_MM: f64 = 10.0;

impl Seat {
    /// The seat on this rifle.
    ///
    /// # Source
    /// Top of the base over the bore by kind of base: common practice, no source.
    #[must_use]
    pub fn of(need: &Need) -> Self {
        let rail_over_bore_mm: f64 = need
            .mount
            .base
            .value
            .iter()
            .map(|part| {
                part.share
                    * match part.of {
                        Base::SlottedRail | Base::Bare => 24.0,
                        Base::NarrowSlots => 23.0,
                        Base::TwoPiece => 22.0,
                        Base::WideDovetail => 20.0,
                        Base::SmallDovetail => 19.0,
                    }
            })
            .sum();
        let kind = need.rifle.kind.value;
        Self {
            usual: Clearances {
                rail_over_bore_mm,
                barrel_radius_mm: need.rifle.barrel_radius_at_bell_mm.value.value,
                rail_under_bell: need.mount.rail_under_bell,
                iron_sights_mm: if need.rifle.iron_sights && kind != RifleKind::ForwardRail {
                    IRON_SIGHTS_MM
                } else {
                    0.0
                },
                incline_mrad: need.mount.incline_mrad,
                straight_stock: kind == RifleKind::StraightStock,
                ..Clearances::usual(48.0, 30.0)
            },
        }
    }

    /// The least height of a sight on this rifle.
    #[must_use]
    pub fn height(&self, objective_mm: f64, tube_mm: f64) -> Height {
        self.clearances(objective_mm, tube_mm).least_height()
    }

    /// What a sight has to clear on this rifle.
    #[must_use]
    pub fn clearances(&self, objective_mm: f64, tube_mm: f64) -> Clearances {
        Clearances {
            bell_outer_mm: fits::bell_outer_mm(objective_mm, tube_mm),
            tube_mm,
            ..self.usual
        }
    }
}

impl Costs {
    /// The charges for a need in a world.
    #[must_use]
    pub fn of(need: &Need, world: &World) -> Self {
        let bench: f64 = need
            .situations
            .iter()
            .filter(|s| s.manner == Manner::Bench)
            .map(|s| s.share)
            .sum();
        let field = 1.0 - bench.clamp(0.0, 1.0);
        let positive = |moved: Option<f64>, usual: f64| {
            moved
                .filter(|rate| rate.is_finite())
                .unwrap_or(usual)
                .clamp(0.0, 100.0)
        };
        let carried = match need.carry.value {
            Carry::Short => 0.4,
            Carry::FewKm => 1.0,
            Carry::AllDayHill => 2.5,
        };
        let annoyed = if need.annoys.contains(&Annoyance::TooHeavy) {
            ANNOYED_BY_MASS
        } else {
            1.0
        };
        let mass = positive(
            need.weights.mass_percent_per_100_g,
            MASS_POINTS_PER_100_G * carried * annoyed,
        );
        let heavy = if need.weights.mass_percent_per_100_g.is_some() {
            HEAVY_FACTOR * mass
        } else {
            HEAVY_FACTOR * MASS_POINTS_PER_100_G
        };
        let comb = match need.rifle.comb.value {
            Comb::Low => 1.6,
            Comb::Right => 1.0,
            Comb::Adjustable => 0.3,
        };
        let height = positive(
            need.weights.height_percent_per_10_mm,
            HEIGHT_POINTS_PER_10_MM * comb * field,
        );
        let usual_money = match need.money.attitude.value {
            Attitude::LittleAsSensible => MONEY_POINTS_PER_BAND[0],
            Attitude::WhatItIsWorth => MONEY_POINTS_PER_BAND[1],
            Attitude::NoLimit => MONEY_POINTS_PER_BAND[2],
        };
        let money = positive(need.weights.money_percent_per_band, usual_money);
        Self {
            rates: Rates {
                mass_points_per_100_g: mass,
                height_points_per_10_mm: height,
                money_points_per_band: money,
            },
            mass_points_per_g: 0.01 * mass * world.rate_mass,
            heavy_from_g: 1000.0 * HEAVY_SHARE * need.rifle.mass_kg.value.value.max(0.5),
            heavy_points_per_g: 0.01 * heavy * field * world.rate_mass,
            height_points_per_mm: 0.1 * height * world.rate_height,
            money_points_per_band: money * world.rate_money,
            budget: need.money.band_most.map(band_index),
            rings_kept_mm: need.mount.rings_kept_mm.value,
            lit: need.lit_mark.value,
            dark_share: dark_share(need),
            uses_dial: matches!(
                need.distance.habit.value,
                crate::need::answers::DistanceHabit::Dial
                    | crate::need::answers::DistanceHabit::DialAndMarks
            ),
            uses_marks: need.distance.habit.value != crate::need::answers::DistanceHabit::DeadOn,
            ceilings: ceilings(need),
            wishes: (need.annoys.iter())
                .filter_map(|&annoys| Wish::of(need, annoys))
                .collect(),
            seat: Seat::of(need),
            world: *world,
        }
    }

    /// The seat.
    #[must_use]
    pub fn seat(&self) -> &Seat {
        &self.seat
    }

    /// Mass of a candidate in this world, g.
    #[must_use]
    pub fn mass_g(&self, candidate: &Candidate) -> f64 {
        MASS_FREE_G + (candidate.mass_g - MASS_FREE_G) * self.world.mass
    }

    /// Points that the mass costs.
    #[must_use]
    pub fn mass_points(&self, mass_g: f64) -> f64 {
        self.mass_points_per_g * (mass_g - MASS_FREE_G).max(0.0)
            + self.heavy_points_per_g * (mass_g - self.heavy_from_g).max(0.0)
    }

    /// Points that the height costs.
    #[must_use]
    pub fn height_points(&self, objective_mm: f64, tube_mm: f64) -> f64 {
        let centre =
            |objective_mm, tube_mm| self.seat.height(objective_mm, tube_mm).centre_over_rail_mm;
        self.height_points_per_mm * (centre(objective_mm, tube_mm) - centre(20.0, 25.4)).max(0.0)
    }

    /// Points that a price costs, A = 0 to E = 4; below A nothing is saved.
    #[must_use]
    pub fn money_points(&self, price: f64) -> f64 {
        let price = (price * self.world.price).max(0.0);
        let beyond = self
            .budget
            .map_or(0.0, |most| (price - (most + 0.5)).max(0.0));
        self.money_points_per_band * price + BEYOND_BUDGET_POINTS * beyond
    }

    /// Points for rings that do not fit.
    #[must_use]
    pub fn rings_points(&self, tube_mm: f64) -> f64 {
        match self.rings_kept_mm {
            Some(kept) if (kept - tube_mm).abs() > 0.05 => RINGS_POINTS,
            _ => 0.0,
        }
    }

    /// Points for handling: what can be got wrong, and what is wanted and missing.
    #[must_use]
    pub fn handling_points(&self, s: &Specification) -> f64 {
        let mut points = 0.0;
        if s.elevation == Elevation::DialZeroStop {
            points += HANDLING_POINTS;
            if !self.uses_dial {
                points += IDLE_DIAL_POINTS;
            }
        }
        if s.elevation == Elevation::RingForLoad && !self.uses_dial {
            points += HANDLING_POINTS;
        }
        if matches!(s.parallax, ParallaxSetting::Adjustable { .. }) {
            points += HANDLING_POINTS;
        }
        if !self.uses_marks && super::coverage::has_marks(s.reticle) {
            points += IDLE_MARKS_POINTS;
        }
        let lit = s.illumination != Illumination::Unlit;
        match (self.lit, lit) {
            (LitMark::Wanted, false) | (LitMark::NotWanted, true) => points += LIT_POINTS,
            _ => {}
        }
        if s.illumination == Illumination::DayBright {
            points += DAZZLING_POINTS * self.dark_share;
        }
        if s.plane == FocalPlane::First && s.elevation == Elevation::Capped {
            // A first plane without use for its marks: thin when turned down.
            points += HANDLING_POINTS;
        }
        points
    }

    /// Points that a wide span is worth, as far as hands and air let it be used.
    #[must_use]
    pub fn span_points(&self, s: &Specification) -> f64 {
        let used = |ceiling: f64| {
            let span = s.magnification_high.min(ceiling) / s.magnification_low;
            libm::log(span.max(1.0))
        };
        let expected: f64 = self
            .ceilings
            .iter()
            .map(|&(ceiling, share)| share * used(ceiling))
            .sum();
        SPAN_POINTS * expected
    }

    /// What a sight costs beyond what is paid and bought already: mass, height, handling, less
    /// the span's worth.
    #[must_use]
    pub fn points_when_owned(&self, candidate: &Candidate) -> f64 {
        let s = &candidate.specification;
        self.points(candidate) - self.money_points(candidate.price) - self.rings_points(s.tube_mm)
    }

    /// All points of a candidate, the span's worth taken off.
    #[must_use]
    pub fn points(&self, candidate: &Candidate) -> f64 {
        let s = &candidate.specification;
        self.with(
            candidate,
            self.height_points(s.objective_mm, s.tube_mm),
            self.span_points(s),
        )
    }

    /// The points of many candidates: heights and spans are few and computed once each.
    #[must_use]
    pub fn points_of_all(&self, candidates: &[Candidate]) -> Vec<f64> {
        let mut heights: Vec<(f64, f64, f64)> = Vec::new();
        let mut last_span: Option<([f64; 2], f64)> = None;
        candidates
            .iter()
            .map(|candidate| {
                let s = &candidate.specification;
                let known = (heights.iter())
                    .rposition(|known| known.0 == s.objective_mm && known.1 == s.tube_mm);
                let at = known.unwrap_or_else(|| {
                    let points = self.height_points(s.objective_mm, s.tube_mm);
                    heights.push((s.objective_mm, s.tube_mm, points));
                    heights.len() - 1
                });
                let height = heights[at].2;
                // The next candidate has mostly the same objective: found first.
                let last = heights.len() - 1;
                heights.swap(at, last);
                let ends = [s.magnification_low, s.magnification_high];
                let span = match last_span {
                    Some((known, points)) if known == ends => points,
                    _ => self.span_points(s),
                };
                last_span = Some((ends, span));
                self.with(candidate, height, span)
            })
            .collect()
    }

    fn with(&self, candidate: &Candidate, height_points: f64, span_points: f64) -> f64 {
        let s = &candidate.specification;
        self.mass_points(self.mass_g(candidate))
            + height_points
            + self.money_points(candidate.price)
            + self.rings_points(s.tube_mm)
            + self.handling_points(s)
            + (self.wishes.iter())
                .map(|wish| wish.points(candidate))
                .sum::<f64>()
            - span_points
    }
}

/// Share of the situations that end in so little light that a day-bright mark dazzles: from
/// a quarter of an hour after sunset (about 2 cd/m² on open ground, less at a wood's edge) to
/// half an hour (0.3 cd/m²) more and more of them.
fn dark_share(need: &Need) -> f64 {
    let all: f64 = need.situations.iter().map(|s| s.share).sum();
    let dark: f64 = need
        .situations
        .iter()
        .map(|s| {
            s.share
                * match s.stop {
                    Stop::Daylight | Stop::LitRange => 0.0,
                    Stop::MinutesAfterSunset(minutes) => ((minutes - 15.0) / 15.0).clamp(0.0, 1.0),
                    Stop::EndOfSeeing | Stop::Moon => 1.0,
                }
        })
        .sum();
    dark / all.max(1e-9)
}

/// Turbulence of a sunny day over open ground, m^(−2/3).
const SUNNY_CN2: f64 = 1e-13;
/// The objective that the ceiling is stated for, mm; it hardly matters.
const CEILING_OBJECTIVE_MM: f64 = 50.0;

/// The magnification that the wobble of each position, and the shimmering air at its usual
/// range, leave of use, with shares that add up to 1.
fn ceilings(need: &Need) -> Vec<(f64, f64)> {
    let all: f64 = need.situations.iter().map(|s| s.share).sum();
    let mut list = Vec::new();
    for situation in &need.situations {
        let air = resolution::mirage_ceiling(
            SUNNY_CN2,
            situation.range.usual_m.max(10.0),
            CEILING_OBJECTIVE_MM,
        )
        .1;
        // Some manners are half one position, half another.
        for half in [0.25, 0.75] {
            let hold = occasions::hold(situation.what, situation.manner, half);
            let hands = steadiness::magnification_ceiling(0.5 * hold.wobble_mrad);
            list.push((hands.min(air), 0.5 * situation.share / all.max(1e-9)));
        }
    }
    list
}

/// A band as a number, A = 0 to E = 4.
#[must_use]
pub fn band_index(band: PriceBand) -> f64 {
    match band {
        PriceBand::A => 0.0,
        PriceBand::B => 1.0,
        PriceBand::C => 2.0,
        PriceBand::D => 3.0,
        PriceBand::E => 4.0,
    }
}
