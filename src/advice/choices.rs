//! What is the person's own to decide, what is not needed, and what is paid for unused.

use super::candidates::is_built;
use super::coverage::has_marks;
use super::evening::Typical;
use super::line::up_from_zero_mrad;
use super::occasions;
use super::picks::changes;
use super::ranking::Ranked;
use super::reasons::{OBJECTIVES, day_pupil_mm, put_reticle, setting, value};
use super::report::{
    Decision, DecisionKey, Effect, Element, NotNeeded, Pick, Quantity, Reason, Unused, UnusedKey,
};
use crate::need::answers::{Comb, DistanceHabit, LitMark, Manner, RifleKind};
use crate::plain::Gathered;
use crate::sight::{
    Elevation, FocalPlane, GlassGrade, Illumination, ParallaxSetting, ReticleFamily, Specification,
    pupil,
};

/// A choice is open while its two sides differ by no more than this, percentage points.
const OPEN_POINTS: f64 = 3.0;
/// Decisions at most.
const DECISIONS: usize = 4;
/// Something brings nothing if it serves less than this more, share of occasions.
const NOTHING_SHARE: f64 = 0.003;
/// Things that are not needed, at most.
const NOT_NEEDED: usize = 5;

/// The open decisions, the closest first.
#[must_use]
pub fn decisions(ranked: &Ranked, typical: &Typical) -> Vec<Decision> {
    let own = ranked.candidates[ranked.best].specification;
    let own_value = value(ranked, &own, &ranked.account(&own));
    let need = &ranked.ground.need;
    let mut list: Vec<(f64, Decision)> = Vec::new();
    let mut offer = |key: DecisionKey,
                     element: Element,
                     advisors_disagree: bool,
                     always: bool,
                     change: &dyn Fn(&mut Specification)| {
        let mut other = own;
        change(&mut other);
        if other == own {
            return;
        }
        let there = ranked.account(&other);
        let apart = (own_value - value(ranked, &other, &there)).abs();
        let effects = changes(ranked, typical, &own, &other);
        if (always || apart <= OPEN_POINTS) && !effects.is_empty() {
            list.push((
                apart,
                Decision {
                    key,
                    one: setting(element, &own),
                    other: setting(element, &other),
                    effects,
                    advisors_disagree,
                },
            ));
        }
    };
    let late = ranked.ground.slate.late > 0;
    let driven: f64 = need
        .situations
        .iter()
        .filter(|s| s.manner == Manner::Driven)
        .map(|s| s.share)
        .sum();
    let larger = OBJECTIVES.into_iter().find(|x| *x > own.objective_mm + 1.0);
    let smaller = OBJECTIVES
        .into_iter()
        .rev()
        .find(|x| *x < own.objective_mm - 1.0);
    if let Some(x) = if late { larger } else { smaller } {
        let key = if need.rifle.comb.value == Comb::Low && late {
            DecisionKey::CombOrBell
        } else {
            DecisionKey::GramsAgainstMinutes
        };
        offer(key, Element::ObjectiveMm, false, true, &|s| {
            s.objective_mm = x;
        });
    }
    let habit = need.distance.habit.value;
    if habit != DistanceHabit::DeadOn || own.magnification_high >= 15.0 {
        offer(
            DecisionKey::FirstOrSecondPlane,
            Element::Plane,
            true,
            true,
            &|s| {
                s.plane = match s.plane {
                    FocalPlane::First => FocalPlane::Second,
                    FocalPlane::Second => FocalPlane::First,
                };
            },
        );
        let key = if has_marks(own.reticle) {
            DecisionKey::MarksOrDial
        } else {
            DecisionKey::DialOrDeadOn
        };
        offer(key, Element::Elevation, true, true, &|s| {
            s.elevation = match s.elevation {
                Elevation::Capped => Elevation::DialZeroStop,
                _ => Elevation::Capped,
            };
        });
    }
    // Who turns down to one already has the unmagnified sight.
    if driven > 0.3 && own.magnification_low > 1.3 {
        offer(
            DecisionKey::SecondSight,
            Element::MagLow,
            true,
            true,
            &|s| {
                s.magnification_low = 1.0;
                s.magnification_high = 4.0;
                s.objective_mm = 24.0;
            },
        );
    }
    if need.rifle.kind.value == RifleKind::ForwardRail {
        offer(
            DecisionKey::ForwardOrReceiver,
            Element::EyeReliefMm,
            true,
            true,
            &|s| s.eye_relief_mm = 90.0,
        );
    }
    if let Some(kept) = need.mount.rings_kept_mm.value.filter(|mm| is_built(*mm)) {
        offer(DecisionKey::KeepRings, Element::TubeMm, false, true, &|s| {
            s.tube_mm = if (s.tube_mm - kept).abs() > 0.05 {
                kept
            } else if kept == 30.0 {
                25.4
            } else {
                30.0
            };
        });
    }
    // The fixed power nearest to the middle of the zoom, below its top.
    let middle = (own.magnification_low * own.magnification_high).sqrt();
    let fixed = [4.0, 6.0, 8.0]
        .into_iter()
        .filter(|power| *power < own.magnification_high)
        .min_by(|a: &f64, b: &f64| (a - middle).abs().total_cmp(&(b - middle).abs()));
    if own.zoom_ratio() > 1.01
        && own.magnification_high <= 12.0
        && let Some(power) = fixed
    {
        offer(
            DecisionKey::FixedOrZoom,
            Element::MagHigh,
            true,
            false,
            &|s| {
                s.magnification_low = power;
                s.magnification_high = power;
            },
        );
    }
    offer(
        DecisionKey::GlassAgainstMoney,
        Element::Grade,
        false,
        false,
        &|s| {
            s.grade = match s.grade {
                GlassGrade::Basic => GlassGrade::Good,
                GlassGrade::Good => GlassGrade::Best,
                GlassGrade::Best => GlassGrade::Good,
            };
        },
    );
    if late && need.lit_mark.value != LitMark::NotAllowed {
        offer(
            DecisionKey::LitOrHeavyBars,
            Element::Reticle,
            false,
            false,
            &|s| {
                put_reticle(s, ReticleFamily::ThreePost);
            },
        );
    }
    if own.magnification_high >= 9.0 && matches!(own.parallax, ParallaxSetting::Fixed { .. }) {
        offer(
            DecisionKey::AdjustableParallax,
            Element::Parallax,
            false,
            false,
            &|s| s.parallax = ParallaxSetting::Adjustable { nearest_m: 10.0 },
        );
    }
    // Where advisors disagree both sides are told; then the closest come first.
    crate::plain::sort_by(&mut list, |a, b| {
        b.1.advisors_disagree
            .cmp(&a.1.advisors_disagree)
            .then(a.0.total_cmp(&b.0))
            .then(a.1.key.cmp(&b.1.key))
    });
    list.truncate(DECISIONS);
    list.into_iter().map(|(_, decision)| decision).gathered()
}

/// What is often asked for and makes no difference here: steps up that serve nothing more.
#[must_use]
pub fn not_needed(reasons: &[Reason]) -> Vec<NotNeeded> {
    const ASKED_FOR: [Element; 8] = [
        Element::TubeMm,
        Element::ObjectiveMm,
        Element::MagHigh,
        Element::Elevation,
        Element::Parallax,
        Element::Plane,
        Element::Grade,
        Element::Illumination,
    ];
    let mut list: Vec<(usize, NotNeeded)> = reasons
        .iter()
        .filter_map(|reason| {
            let at = ASKED_FOR.iter().position(|e| *e == reason.element)?;
            let more = reason.more.as_ref()?;
            (more.served < reason.here.served + NOTHING_SHARE).then(|| {
                (
                    at,
                    NotNeeded {
                        element: reason.element,
                        setting: more.setting.clone(),
                        effects: more.effects.clone(),
                    },
                )
            })
        })
        .gathered();
    crate::plain::sort_by_key(&mut list, |(at, _)| *at);
    list.truncate(NOT_NEEDED);
    list.into_iter().map(|(_, row)| row).gathered()
}

/// What the first pick brings that is paid for and never used.
#[must_use]
pub fn unused(ranked: &Ranked, typical: &Typical, first: &Pick) -> Vec<Unused> {
    let own = ranked.candidates[ranked.best].specification;
    let need = &ranked.ground.need;
    let late = ranked.ground.slate.late > 0;
    let effect = |quantity, value: f64, spread: f64| Effect {
        quantity,
        value,
        spread,
    };
    let mut list = Vec::new();
    let (set, pupil_mm) = if late {
        let age = need.eye.age_years.value.value;
        (
            first.mag_in_use.late,
            occasions::pupil_mm(need, age, typical.stop_cd_m2, 0.0),
        )
    } else {
        (first.mag_in_use.day, day_pupil_mm(ranked))
    };
    let exit = pupil::exit_pupil_mm(own.objective_mm, set);
    if late && exit > pupil_mm + 0.5 {
        let stopped = 100.0 * (1.0 - (pupil_mm / exit) * (pupil_mm / exit));
        list.push(Unused {
            key: UnusedKey::ExitPupilBeyondPupil,
            effects: vec![
                effect(Quantity::ExitPupilMm, exit, 0.2),
                effect(Quantity::PupilMm, pupil_mm, 0.8),
                effect(Quantity::OnIrisPercent, stopped, 10.0),
            ],
        });
    }
    let needed = ranked.ground.farthest_needed_mrad().unwrap_or(0.0);
    let travel = up_from_zero_mrad(&ranked.ground, &ranked.candidates[ranked.best]);
    if travel > needed + 3.0 {
        list.push(Unused {
            key: UnusedKey::TravelBeyondFarthest,
            effects: vec![
                effect(Quantity::TravelMrad, travel, 1.5),
                effect(Quantity::NeededMrad, needed, 0.05 * needed),
            ],
        });
    }
    let most_set = first.mag_in_use.day.max(first.mag_in_use.late);
    if own.magnification_high > 1.5 * most_set {
        list.push(Unused {
            key: UnusedKey::PowerAboveUse,
            effects: vec![effect(Quantity::Magnification, most_set, 0.2 * most_set)],
        });
    }
    if own.illumination == Illumination::NightFine && !late {
        list.push(Unused {
            key: UnusedKey::LitByDay,
            effects: Vec::new(),
        });
    }
    list
}
