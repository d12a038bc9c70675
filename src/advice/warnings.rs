//! Warnings: what this person should not buy, or not forget, and why in numbers.
//!
//! Two kinds stand here. A step away from the pick that loses clearly is found by trying it
//! (the same tables that ranked it); a caution follows from what was answered or computed.
//! No rule knows a person: each holds for whoever's figures meet it.

use super::candidates::{Candidate, is_built};
use super::coverage::{Account, has_marks};
use super::evening::Typical;
use super::limits::allows;
use super::occasions;
use super::picks::changes;
use super::ranking::Ranked;
use super::reasons::{
    HIGHS, LOWS, OBJECTIVES, day_pupil_mm, lost_to, put_reticle, put_top_power, value,
};
use super::report::{
    Cause, Comparison, Effect, Element, Quantity, Rule, Setting, Warning, WarningKey,
};
use crate::need::answers::{AngleUnit, Base, Carry, Comb, DistanceHabit, LitMark, RifleKind};
use crate::need::shooter::Stop;
use crate::rifle::{recoil, steadiness};
use crate::sight::{
    Elevation, FocalPlane, Illumination, ParallaxSetting, ReticleFamily, Specification, field,
    parallax, pupil, resolution,
};

/// A step that loses more than this much value is warned of, percentage points.
const CLEAR_POINTS: f64 = 1.2;
/// A step that loses more than this share of occasions stops shots.
const STOPS_SHARE: f64 = 0.03;
/// A sight above this share of the bare rifle's mass unbalances it (common practice, no
/// source: 15 to 18 %, 20 at most).
const HEAVY_SHARE: f64 = 0.2;
/// Above this recoil energy rings and base are named, J (common practice, no source).
const STRONG_RECOIL_J: f64 = 40.0;
/// Turbulence of a sunny day, m^(−2/3), as for the span's worth.
const SUNNY_CN2: f64 = 1e-13;
/// Targets whose rule books limit the sight, by how their keys begin (common practice, no source).
const DISCIPLINES: [&str; 6] = [
    "field_target",
    "biathlon",
    "running_",
    "silhouette",
    "rimfire_silhouette",
    "air_rifle",
];
/// Elevation from which travel is worth a word, mrad.
const MUCH_ELEVATION_MRAD: f64 = 5.0;

/// What is tried and what comes of it.
struct Bench<'a> {
    ranked: &'a Ranked,
    typical: &'a Typical,
    own: Specification,
    account: Account,
    value: f64,
    list: Vec<Warning>,
}

fn effect(quantity: Quantity, value: f64, spread: f64) -> Effect {
    Effect {
        quantity,
        value,
        spread,
    }
}

fn rule(element: Element, comparison: Comparison, limit: f64) -> Option<Rule> {
    Some(Rule {
        element,
        comparison,
        limit: Setting::Number(limit),
    })
}

fn rule_key(element: Element, comparison: Comparison, limit: &str) -> Option<Rule> {
    Some(Rule {
        element,
        comparison,
        limit: Setting::Key(limit.to_string()),
    })
}

impl Bench<'_> {
    fn put(&mut self, key: WarningKey, rule: Option<Rule>, facts: Vec<Effect>) {
        self.list.push(Warning {
            key,
            rule,
            facts,
            effects: Vec::new(),
            lost_to: None,
        });
    }

    /// What a changed pick loses in value and in occasions, and to what.
    fn tried(
        &self,
        change: impl FnOnce(&mut Specification),
    ) -> (f64, f64, Option<Cause>, Specification) {
        let mut s = self.own;
        change(&mut s);
        let there = self.ranked.account(&s);
        (
            self.value - value(self.ranked, &s, &there),
            self.account.served - there.served,
            lost_to(&self.account, &there),
            s,
        )
    }

    fn put_tried(
        &mut self,
        key: WarningKey,
        rule: Option<Rule>,
        lost: Option<Cause>,
        s: &Specification,
    ) {
        let effects = changes(self.ranked, self.typical, &self.own, s);
        self.list.push(Warning {
            key,
            rule,
            facts: Vec::new(),
            effects,
            lost_to: lost,
        });
    }

    /// The first rung of a ladder that loses more than `least` points of value.
    fn rung(
        &mut self,
        key: WarningKey,
        element: Element,
        comparison: Comparison,
        rungs: impl Iterator<Item = f64>,
        least: f64,
        put: impl Fn(&mut Specification, f64),
    ) {
        for rung in rungs {
            let (points, _, lost, s) = self.tried(|s| put(s, rung));
            if points > least {
                self.put_tried(key, rule(element, comparison, rung), lost, &s);
                return;
            }
        }
    }
}

/// All warnings for the first pick, those that stop shots first.
#[must_use]
pub fn warnings(ranked: &Ranked, typical: &Typical) -> Vec<Warning> {
    let own = ranked.candidates[ranked.best].specification;
    let own_account = ranked.account(&own);
    let own_value = value(ranked, &own, &own_account);
    let mut bench = Bench {
        ranked,
        typical,
        own,
        account: own_account,
        value: own_value,
        list: Vec::new(),
    };
    let candidate = &ranked.candidates[ranked.best];
    if !allows(&ranked.ground, &own, candidate.mass_g) {
        bench.put(WarningKey::LimitsUnmet, None, Vec::new());
    }
    optics(&mut bench);
    marks(&mut bench);
    settings(&mut bench);
    recoil_and_mass(&mut bench);
    mounting(&mut bench);
    circumstances(&mut bench);
    // Stable: what can hurt or is not allowed, then what stops shots, then the rest.
    crate::plain::sort_by_key(&mut bench.list, urgency);
    bench.list
}

fn urgency(warning: &Warning) -> u8 {
    use WarningKey as K;
    let stops = warning.effects.iter().any(|effect| {
        effect.quantity == Quantity::ServedPoints && effect.value < -100.0 * STOPS_SHARE
    });
    match warning.key {
        K::LimitsUnmet | K::LitNotAllowed | K::ShortEyeRelief | K::WrongTube | K::Rulebook => 0,
        _ if stops => 1,
        K::Wobble | K::LargeObjective | K::HighTopPower | K::ThickTube => 2,
        _ => 3,
    }
}

fn is_late(ranked: &Ranked) -> bool {
    ranked.ground.slate.late > 0
}

fn optics(bench: &mut Bench) {
    let own = bench.own;
    let (low, high, objective) = (
        own.magnification_low,
        own.magnification_high,
        own.objective_mm,
    );
    bench.rung(
        WarningKey::HighLowestPower,
        Element::MagLow,
        Comparison::AtLeast,
        LOWS.into_iter().filter(|x| *x > low + 0.3),
        CLEAR_POINTS,
        |s, x| {
            s.magnification_low = x;
            s.magnification_high = s.magnification_high.max(x);
        },
    );
    bench.rung(
        WarningKey::HighTopPower,
        Element::MagHigh,
        Comparison::AtLeast,
        HIGHS.into_iter().filter(|x| *x > high * 1.3),
        CLEAR_POINTS,
        put_top_power,
    );
    bench.rung(
        WarningKey::LowTopPower,
        Element::MagHigh,
        Comparison::AtMost,
        HIGHS.into_iter().rev().filter(|x| *x < high - 0.3),
        2.0 * CLEAR_POINTS,
        |s, x| {
            s.magnification_high = x;
            s.magnification_low = s.magnification_low.min(x);
        },
    );
    bench.rung(
        WarningKey::LargeObjective,
        Element::ObjectiveMm,
        Comparison::AtLeast,
        OBJECTIVES.into_iter().filter(|x| *x > objective + 1.0),
        CLEAR_POINTS,
        |s, x| s.objective_mm = x,
    );
    bench.rung(
        WarningKey::SmallObjective,
        Element::ObjectiveMm,
        Comparison::AtMost,
        OBJECTIVES
            .into_iter()
            .rev()
            .filter(|x| *x < objective - 1.0),
        2.0 * CLEAR_POINTS,
        |s, x| s.objective_mm = x,
    );
    let ground = &bench.ranked.ground;
    // A field that loses what is followed or found.
    let candidate = Candidate::of(own);
    let width = field::field_m_per_100m(candidate.apparent_deg, low);
    for narrower in [0.8, 0.65, 0.5, 0.4, 0.3] {
        let (_, share, lost, s) = bench.tried(|s| {
            s.magnification_low = low / narrower;
            s.magnification_high = s.magnification_high.max(s.magnification_low);
        });
        if share > 0.5 * STOPS_SHARE && lost == Some(Cause::Field) {
            let limit = (width * narrower).floor();
            bench.put_tried(
                WarningKey::NarrowField,
                rule(Element::FieldLowMPer100m, Comparison::Less, limit.max(1.0)),
                lost,
                &s,
            );
            break;
        }
    }
    if is_late(bench.ranked) {
        let need = &ground.need;
        let age = need.eye.age_years.value.value;
        let pupil_mm = occasions::pupil_mm(need, age, bench.typical.stop_cd_m2, 0.0);
        // Dimmer than two thirds of what the eye could take in: an exit pupil of 0.82 p. Who is
        // served best by more than that sets it all the same.
        let most = (objective / (0.82 * pupil_mm))
            .round()
            .max(bench.account.set[0]);
        bench.put(
            WarningKey::MagnificationInUse,
            rule(Element::MagInUse, Comparison::More, most),
            vec![
                effect(Quantity::PupilMm, pupil_mm, 0.8),
                effect(
                    Quantity::ExitPupilMm,
                    pupil::exit_pupil_mm(objective, most),
                    0.2,
                ),
            ],
        );
    }
    // Heat ends magnification: by day, in the open, lying or from the bench.
    let farthest_m = ground.farthest_m();
    let far_by_day = ground
        .need
        .situations
        .iter()
        .any(|s| s.range.farthest_m >= 250.0 && matches!(s.stop, Stop::Daylight));
    if far_by_day {
        let range_m = farthest_m.min(300.0);
        let (least, most) = resolution::mirage_ceiling(SUNNY_CN2, range_m, 50.0);
        bench.put(
            WarningKey::Mirage,
            rule(
                Element::MagHigh,
                Comparison::More,
                (10.0 * (most / 10.0).ceil()).max(high),
            ),
            vec![
                effect(
                    Quantity::Magnification,
                    0.5 * (least + most),
                    0.5 * (most - least),
                ),
                effect(Quantity::RangeM, range_m, 0.0),
            ],
        );
    }
}

fn marks(bench: &mut Bench) {
    let ranked = bench.ranked;
    let need = &ranked.ground.need;
    let own = bench.own;
    let line = super::line::line(&ranked.ground, &Candidate::of(own));
    let (_, share, lost, s) = bench.tried(|s| {
        s.plane = FocalPlane::First;
        s.reticle = ReticleFamily::MradMarks;
        s.illumination = Illumination::Unlit;
    });
    if own.plane == FocalPlane::Second && share > STOPS_SHARE && lost == Some(Cause::Mark) {
        bench.put_tried(
            WarningKey::FineFirstPlane,
            // The second plane bears finer lines: a rule that leaves the pick aside is none.
            rule(Element::CentreLineMmPer100m, Comparison::Less, 5.0)
                .filter(|_| line.centre_line_mm_per_100m >= 5.0),
            lost,
            &s,
        );
    }
    // A mark without bars and light.
    let (_, share, lost, s) = bench.tried(|s| {
        put_reticle(s, ReticleFamily::FineCrosshair);
    });
    if share > STOPS_SHARE && lost == Some(Cause::Mark) {
        bench.put_tried(
            WarningKey::MarkNotSeen,
            rule_key(Element::Reticle, Comparison::Is, "fine_crosshair"),
            lost,
            &s,
        );
    }
    let moving: f64 = need
        .situations
        .iter()
        .map(|s| s.share * s.moving_share)
        .sum();
    if matches!(
        own.illumination,
        Illumination::DayBright | Illumination::Both
    ) && moving > 0.3
    {
        let (_, _, lost, s) = bench.tried(|s| s.illumination = Illumination::NightFine);
        bench.put_tried(
            WarningKey::MarkNotSeen,
            rule_key(Element::Illumination, Comparison::Is, "night_fine"),
            lost,
            &s,
        );
    }
    // What a line or a dot may cover at the farthest usual shot: a quarter of the circle.
    let tightest = need
        .situations
        .iter()
        .map(|s| {
            let far = 0.5 * (s.range.usual_m + s.range.farthest_m);
            s.what.aiming_circle_mm() / far * 100.0 / 4.0
        })
        .fold(f64::INFINITY, f64::min);
    if tightest < 25.0 {
        let covered = |width: f64| {
            effect(
                Quantity::CoveredCm,
                0.1 * width * ranked.ground.farthest_m() / 100.0,
                0.0,
            )
        };
        for (element, width) in [
            (Element::CentreLineMmPer100m, tightest.max(2.0).round()),
            (Element::DotMmPer100m, (1.25 * tightest).max(3.0).round()),
        ] {
            if line.centre_line_mm_per_100m.max(line.dot_mm_per_100m) > width {
                continue;
            }
            let facts = vec![covered(width)];
            bench.put(
                WarningKey::MarkCovers,
                rule(element, Comparison::More, width),
                facts,
            );
        }
    }
    let forbidden = need.lit_mark.value == LitMark::NotAllowed || need.rulebook.lit_mark_forbidden;
    if forbidden {
        bench.put(
            WarningKey::LitNotAllowed,
            rule_key(Element::Illumination, Comparison::IsNot, "none"),
            Vec::new(),
        );
    } else if need.eye.astigmatism {
        bench.put(WarningKey::LitDotStars, None, Vec::new());
    }
    if !forbidden && own.illumination != Illumination::Unlit && is_hard_use(ranked) {
        let (_, _, lost, s) = bench.tried(|s| s.illumination = Illumination::Unlit);
        bench.put_tried(WarningKey::BatteryOnly, None, lost, &s);
    }
}

/// Recoil and places in which nothing can be mended on the spot.
fn is_hard_use(ranked: &Ranked) -> bool {
    ranked
        .ground
        .need
        .situations
        .iter()
        .any(|s| s.what.key() == "dangerous_game")
        || is_late(ranked)
}

fn settings(bench: &mut Bench) {
    let ranked = bench.ranked;
    let ground = &ranked.ground;
    let need = &ground.need;
    let own = bench.own;
    let flight = ground.flight.as_ref();
    let (nearest_m, farthest_m) = (ground.nearest_m(), ground.farthest_m());
    let needed = ground.farthest_needed_mrad().unwrap_or(0.0);
    let dials = matches!(
        need.distance.habit.value,
        DistanceHabit::Dial | DistanceHabit::DialAndMarks
    );
    let holds = matches!(
        need.distance.habit.value,
        DistanceHabit::Marks | DistanceHabit::DialAndMarks
    );
    let drop_cm = flight.map_or(0.0, |f| 0.1 * f.path_mm(farthest_m));
    let elevation = vec![
        effect(Quantity::NeededMrad, needed, 0.05 * needed),
        effect(Quantity::DropCm, drop_cm, 0.06 * drop_cm.abs()),
    ];
    if !dials && own.elevation != Elevation::DialZeroStop {
        let mut effects = elevation.clone();
        if let Some(f) = flight {
            effects.push(effect(
                Quantity::RangeM,
                f.dead_on_reach_m,
                0.03 * f.dead_on_reach_m,
            ));
        }
        bench.put(
            WarningKey::ExposedDial,
            rule_key(Element::Elevation, Comparison::Is, "dial_zero_stop"),
            effects,
        );
    }
    let left = ground.travel(&own).map(|travel| travel.up_mrad.max(0.0));
    let short = left.is_some_and(|left| left < needed);
    if short || ((dials || holds) && needed > MUCH_ELEVATION_MRAD) {
        let mut elevation = elevation.clone();
        elevation.extend(
            left.filter(|_| short)
                .map(|left| effect(Quantity::TravelMrad, left, 1.5)),
        );
        bench.put(
            WarningKey::LittleTravel,
            if short {
                None
            } else {
                // What the pick has is enough, if only just.
                let enough = left.map_or(needed.ceil(), |left| needed.ceil().min(left));
                rule(
                    Element::UpFromZeroMrad,
                    Comparison::Less,
                    (10.0 * enough).floor() / 10.0,
                )
            },
            elevation,
        );
    }
    if (needed > 10.0 || need.mount.incline_mrad > 0.5)
        && let Some(travel) = ground.travel(&own)
    {
        // From here on nothing is left downwards.
        let steepest = need.mount.incline_mrad + travel.down_mrad;
        bench.put(
            WarningKey::TooMuchIncline,
            None,
            vec![effect(Quantity::AngleMrad, steepest, 1.5)],
        );
    }
    if (dials || holds) && need.distance.unit.value != AngleUnit::Neither {
        bench.put(
            WarningKey::MixedUnits,
            None,
            vec![effect(Quantity::Ratio, 3.438, 0.0)],
        );
    }
    if holds || (dials && has_marks(own.reticle)) {
        // Held at half the reference power, a mark stands for twice its angle.
        bench.put(
            WarningKey::SecondPlaneHolds,
            if own.plane == FocalPlane::First {
                rule_key(Element::Plane, Comparison::Is, "second")
            } else {
                None
            },
            vec![effect(
                Quantity::ErrorCm,
                0.1 * needed * farthest_m,
                0.02 * needed * farthest_m,
            )],
        );
    }
    let own_ring =
        own.elevation == Elevation::RingForLoad || own.reticle == ReticleFamily::HoldMarks;
    if holds || dials || own_ring || need.rifle.kind.value == RifleKind::SlugGun {
        // Three per cent of velocity are six of drop.
        let off_cm =
            0.06 * flight.map_or(0.0, |f| f.needed_mrad(farthest_m).abs()) * farthest_m * 0.1;
        bench.put(
            WarningKey::AnotherLoad,
            None,
            vec![effect(Quantity::ErrorCm, off_cm, 0.3 * off_cm)],
        );
    }
    // Parallax: settings that move the aim at the nearest or the farthest shot.
    let circle_mm = need
        .situations
        .iter()
        .map(|s| s.what.aiming_circle_mm())
        .fold(f64::INFINITY, f64::min);
    let pupil_mm = day_pupil_mm(ranked);
    let magnification = bench.account.set[1];
    let effective = pupil::effective_objective_mm(own.objective_mm, magnification);
    let error = |free_at_m: f64| {
        [nearest_m, farthest_m]
            .into_iter()
            .map(|range_m| {
                parallax::without_shadow_mm(effective, magnification, pupil_mm, free_at_m, range_m)
                    .max(0.5 * parallax::extreme_mm(effective, free_at_m, range_m))
            })
            .fold(0.0, f64::max)
    };
    match own.parallax {
        ParallaxSetting::Fixed { free_at_m } => {
            let worse = [100.0, 150.0]
                .into_iter()
                .find(|&free| free > free_at_m && error(free) > circle_mm / 4.0);
            if let Some(free) = worse {
                bench.put(
                    WarningKey::ParallaxDistance,
                    rule(Element::Parallax, Comparison::AtLeast, free),
                    vec![
                        effect(Quantity::ParallaxCm, 0.1 * error(free), 0.04 * error(free)),
                        effect(Quantity::CircleCm, 0.1 * circle_mm, 0.0),
                    ],
                );
            }
        }
        ParallaxSetting::Adjustable {
            nearest_m: focus_m, ..
        } => {
            let (_, _, lost, s) =
                bench.tried(|s| s.parallax = ParallaxSetting::Fixed { free_at_m: 100.0 });
            if error(100.0) > circle_mm / 4.0 || lost == Some(Cause::Parallax) {
                let effects = changes(ranked, bench.typical, &own, &s);
                bench.list.push(Warning {
                    key: WarningKey::ParallaxFixed,
                    rule: rule_key(Element::Parallax, Comparison::Is, "fixed"),
                    facts: vec![
                        effect(
                            Quantity::ParallaxCm,
                            0.1 * error(100.0),
                            0.04 * error(100.0),
                        ),
                        effect(Quantity::CircleCm, 0.1 * circle_mm, 0.0),
                    ],
                    effects,
                    lost_to: lost,
                });
            }
            if nearest_m < 25.0 {
                bench.put(
                    WarningKey::NearestFocus,
                    rule(
                        Element::Parallax,
                        Comparison::More,
                        // What the pick does is not warned of.
                        nearest_m.ceil().max(10.0).max(focus_m),
                    ),
                    vec![effect(Quantity::RangeM, nearest_m, 0.0)],
                );
            }
        }
    }
    if need.rulebook.focus_finds_range {
        bench.put(
            WarningKey::FocusDrift,
            None,
            vec![effect(Quantity::RangeM, 2.0, 1.0)],
        );
    }
}

fn recoil_and_mass(bench: &mut Bench) {
    let ranked = bench.ranked;
    let ground = &ranked.ground;
    let need = &ground.need;
    let forward = need.rifle.kind.value == RifleKind::ForwardRail;
    let velocity = ground.recoil.velocity_m_s;
    let energy = ground.recoil.energy_j;
    let recoil_effects = vec![
        effect(Quantity::RecoilMS, velocity, 0.06 * velocity),
        effect(Quantity::RecoilJ, energy, 0.12 * energy),
    ];
    if forward {
        bench.put(
            WarningKey::ShortEyeRelief,
            rule(Element::EyeReliefMm, Comparison::Less, 150.0),
            recoil_effects.clone(),
        );
        bench.put(
            WarningKey::LongEyeRelief,
            rule(Element::EyeReliefMm, Comparison::More, 350.0),
            Vec::new(),
        );
        // Long eye relief leaves a field of a few degrees: no more power than needed.
        bench.put(
            WarningKey::HighTopPower,
            rule(
                Element::MagInUse,
                Comparison::More,
                (bench.account.set.into_iter()).fold(5.0, f64::max),
            ),
            Vec::new(),
        );
        bench.put(WarningKey::ForwardDusk, None, Vec::new());
    } else {
        let asked = ground.eye_relief_asked_mm;
        // What hardly comes back cuts no brow; glasses ask for their room in the line.
        if recoil::eye_relief_need(velocity, recoil::EyeReliefCircumstances::default()).total_mm()
            <= recoil::LEAST_EYE_RELIEF_MM
        {
            return;
        }
        bench.put(
            WarningKey::ShortEyeRelief,
            rule(
                Element::EyeReliefMm,
                Comparison::Less,
                // A pick that is short of it already is charged for that.
                (asked - 1.0).round().max(70.0).min(bench.own.eye_relief_mm),
            ),
            recoil_effects.clone(),
        );
    }
    let bare_g = 1000.0 * need.rifle.mass_kg.value.value;
    // A heavy recoil shears on what is heavy, whatever the rifle weighs.
    let limit = if energy > STRONG_RECOIL_J {
        (HEAVY_SHARE * bare_g).min(600.0)
    } else {
        HEAVY_SHARE * bare_g
    };
    // A sight that is advised all the same is heavy for what it serves.
    let limit = limit.max(Candidate::of(bench.own).mass_g + 50.0);
    let bench_only = need
        .situations
        .iter()
        .all(|s| s.manner == crate::need::answers::Manner::Bench);
    if !bench_only {
        bench.put(
            WarningKey::Heavy,
            rule(
                Element::MassG,
                Comparison::More,
                10.0 * (0.1 * limit).round(),
            ),
            vec![effect(
                Quantity::MassPercentOfRifle,
                100.0 * limit / bare_g,
                0.0,
            )],
        );
    }
    if need.carry.value == Carry::AllDayHill && bare_g < 2600.0 {
        bench.put(
            WarningKey::HeavyMount,
            rule(Element::Mount, Comparison::More, 150.0),
            vec![effect(Quantity::MassG, 150.0, 0.0)],
        );
    }
    if energy > STRONG_RECOIL_J {
        let load = recoil::mount_load(ranked.candidates[ranked.best].mass_g, ground.recoil);
        bench.put(
            WarningKey::WeakMount,
            None,
            vec![effect(Quantity::ForceKn, load.peak_kn, 0.4 * load.peak_kn)],
        );
    }
}

fn mounting(bench: &mut Bench) {
    let ranked = bench.ranked;
    let ground = &ranked.ground;
    let need = &ground.need;
    let own = bench.own;
    let needed = ground.farthest_needed_mrad().unwrap_or(0.0);
    let candidate = &ranked.candidates[ranked.best];
    if own.tube_mm < 34.0 && super::line::up_from_zero_mrad(ground, candidate) >= needed {
        let travel = super::line::up_from_zero_mrad(ground, candidate);
        bench.put(
            WarningKey::ThickTube,
            rule(Element::TubeMm, Comparison::AtLeast, 34.0),
            vec![
                effect(Quantity::NeededMrad, needed, 0.05 * needed),
                effect(Quantity::TravelMrad, travel, 1.5),
            ],
        );
    }
    if let Some(kept) = need.mount.rings_kept_mm.value {
        if is_built(kept) {
            bench.put(
                WarningKey::WrongTube,
                // Where other rings are worth their price, the line says so already.
                rule(Element::TubeMm, Comparison::IsNot, kept)
                    .filter(|_| (own.tube_mm - kept).abs() < 0.05),
                Vec::new(),
            );
        } else {
            bench.put(WarningKey::RingsNotBuilt, None, Vec::new());
        }
        bench.put(WarningKey::RingsUnchecked, None, Vec::new());
    }
    let height = ranked.costs.seat().height(own.objective_mm, own.tube_mm);
    let centre = height.centre_over_rail_mm;
    let near = ground.nearest_m() < 20.0 && ground.farthest_m() < 120.0;
    if need.rifle.comb.value == Comb::Low || near {
        bench.put(
            WarningKey::TallRings,
            rule(
                Element::CentreHeightMm,
                Comparison::More,
                (centre + 5.0).round(),
            ),
            vec![effect(Quantity::CentreHeightMm, centre, 1.5)],
        );
    }
    if need.rifle.barrel_radius_at_bell_mm.value.value > 10.0 {
        bench.put(
            WarningKey::LowRings,
            rule(Element::CentreHeightMm, Comparison::Less, centre.floor()),
            vec![effect(Quantity::CentreHeightMm, centre, 1.5)],
        );
    }
    if need.rifle.left_handed {
        bench.put(
            WarningKey::SideWheel,
            rule_key(Element::Parallax, Comparison::Is, "adjustable")
                .filter(|_| matches!(own.parallax, ParallaxSetting::Fixed { .. })),
            Vec::new(),
        );
        bench.put(WarningKey::BoltClearance, None, Vec::new());
    }
    if need.rifle.kind.value == RifleKind::SlugGun {
        bench.put(WarningKey::LooseJoint, None, Vec::new());
    }
    let narrow_base = need
        .mount
        .base
        .value
        .iter()
        .any(|b| matches!(b.of, Base::NarrowSlots) && b.share > 0.9);
    // Above that it is said of every base.
    if narrow_base && (25.0..=STRONG_RECOIL_J).contains(&ground.recoil.energy_j) {
        bench.put(WarningKey::WeakMount, None, Vec::new());
    }
}

fn circumstances(bench: &mut Bench) {
    let ranked = bench.ranked;
    let need = &ranked.ground.need;
    let r = &need.rulebook;
    let discipline = need.situations.iter().any(|s| {
        let key = s.what.key();
        DISCIPLINES.iter().any(|of| key.starts_with(of))
    });
    if discipline
        || r.magnification_most.is_some()
        || r.lit_mark_forbidden
        || r.refocusing_forbidden
        || r.focus_finds_range
        || r.mass_most_g.is_some()
    {
        bench.put(WarningKey::Rulebook, None, Vec::new());
    }
    // The wobble beside the farthest shot, so that drop alone never reads as a range.
    let mut worst: Option<(f64, f64, f64)> = None;
    for s in &need.situations {
        if s.share < 0.1 {
            continue;
        }
        let hold = occasions::hold(s.what, s.manner, 0.25);
        let sigma = steadiness::total_sigma_mrad(
            0.5 * hold.wobble_mrad,
            steadiness::HUNTING_RIFLE_SIGMA_MRAD,
            0.0,
        );
        let reach = steadiness::range_for_share_m(0.5 * s.what.aiming_circle_mm(), sigma, 0.9);
        let over = s.range.farthest_m / reach;
        if over > 1.0 && worst.is_none_or(|w| over > w.2) {
            worst = Some((reach, hold.wobble_mrad, over));
        }
    }
    if let Some((reach, wobble, _)) = worst {
        bench.put(
            WarningKey::Wobble,
            None,
            vec![
                effect(Quantity::WobbleMrad, wobble, 0.35 * wobble),
                effect(Quantity::RangeM, reach, 0.35 * reach),
            ],
        );
    }
}
