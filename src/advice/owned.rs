//! The sight owned now beside the first pick: what would be gained, and whether to keep it.

use super::candidates::Candidate;
use super::costs::Costs;
use super::evening::Typical;
use super::line::line;
use super::occasions::{eye_offset_mm, hold, late_share, late_share_of};
use super::picks::{changes, served_spread};
use super::ranking::Ranking;
use super::ranking::{NEAR_TIE_POINTS, Ranked};
use super::reasons::{reached, spread, value};
use super::report::{Annoyance, Annoyed, Effect, Judged, Line, Owned, Quantity, Shift};
use crate::need::answers;
use crate::need::shooter::{Need, Situation};
use crate::sight::Specification;
use crate::sight::typed_line::TypedSight;

/// The sight owned now, as far as its line can be read.
#[must_use]
pub fn specification(need: &Need) -> Option<Specification> {
    let line = need.sight_now.as_deref()?;
    Some(TypedSight::parse(line).ok()?.specification())
}

/// The sight owned now and what annoys about it; none if neither was said.
#[must_use]
pub fn owned(ranked: &Ranked, typical: &Typical) -> Option<Owned> {
    let need = &ranked.ground.need;
    let own = specification(need);
    if own.is_none() && need.annoys.is_empty() {
        return None;
    }
    Some(Owned {
        judged: own.map(|own| judged(ranked, typical, &own)),
        annoys: need
            .annoys
            .iter()
            .map(|&what| annoyed(ranked, typical, own.as_ref(), what))
            .collect(),
    })
}

fn judged(ranked: &Ranked, typical: &Typical, own: &Specification) -> Judged {
    let pick = ranked.candidates[ranked.best].specification;
    let account = ranked.account(own);
    let candidate = Candidate::of(*own);
    let worth = 100.0 * account.served - ranked.costs.points_when_owned(&candidate);
    let behind_points = value(ranked, &pick, &ranked.account(&pick)) - worth;
    Judged {
        line: line(&ranked.ground, &candidate),
        served: super::report::Figure {
            value: account.served,
            spread: served_spread(&account),
        },
        behind_points,
        keep: behind_points <= NEAR_TIE_POINTS,
        gains: changes(ranked, typical, own, &pick),
    }
}

/// The quantity that shows an annoyance best, and whether more of it is what is wanted.
fn shown_by(ranked: &Ranked, what: Annoyance) -> (Quantity, bool) {
    match what {
        Annoyance::TooDark if ranked.ground.slate.late > 0 => (Quantity::MinutesTonight, true),
        Annoyance::TooDark => (Quantity::ExitPupilMm, true),
        Annoyance::TooNarrow => (Quantity::FieldAtNearestM, true),
        Annoyance::TooHeavy => (Quantity::MassG, false),
        Annoyance::HardToFindPicture => (Quantity::ExitPupilMm, true),
        Annoyance::NotFarEnough => (Quantity::DetailAtFarthestMm, false),
    }
}

fn annoyed(
    ranked: &Ranked,
    typical: &Typical,
    own: Option<&Specification>,
    said: answers::Annoyance,
) -> Annoyed {
    let what = match said {
        answers::Annoyance::TooDark => Annoyance::TooDark,
        answers::Annoyance::TooNarrow => Annoyance::TooNarrow,
        answers::Annoyance::TooHeavy => Annoyance::TooHeavy,
        answers::Annoyance::HardToFindPicture => Annoyance::HardToFindPicture,
        answers::Annoyance::NotFarEnough => Annoyance::NotFarEnough,
    };
    let (quantity, more_is_wanted) = shown_by(ranked, what);
    let pick = ranked.candidates[ranked.best].specification;
    let figure = |s: &Specification| match quantity {
        Quantity::MassG => Some(Candidate::of(*s).mass_g),
        _ => reached(ranked, typical, s, &ranked.account(s), quantity),
    };
    let here = figure(&pick);
    let effect = match own {
        // Minutes between two sights are known better than either time.
        Some(own) if quantity == Quantity::MinutesTonight => typical
            .later_min(&ranked.ground, own, &pick)
            .map(|later| (later.value, later.spread)),
        Some(own) => here
            .zip(figure(own))
            .map(|(pick, own)| (pick - own, change_spread(quantity, pick, own))),
        None => here.map(|pick| (pick, change_spread(quantity, pick, 0.0))),
    }
    .map(|(value, spread)| Effect {
        quantity,
        value,
        spread,
    });
    Annoyed {
        what,
        is_change: own.is_some(),
        mended: effect.filter(|_| own.is_some()).map(|effect| {
            let gain = if more_is_wanted {
                effect.value
            } else {
                -effect.value
            };
            gain > effect.spread
        }),
        effect,
        shift: shift(ranked, said),
        otherwise: otherwise(ranked, said),
    }
}

/// What an annoyance shifts in the ranking; from one to the same where it shifts nothing.
fn shift(ranked: &Ranked, said: answers::Annoyance) -> Option<Shift> {
    let need = &ranked.ground.need;
    let shift = match said {
        answers::Annoyance::TooDark => {
            let share = |late: &dyn Fn(&Situation) -> f64| {
                need.situations.iter().map(|s| s.share * late(s)).sum()
            };
            Shift {
                from: share(&late_share),
                to: share(&|s| late_share_of(need, s)),
            }
        }
        answers::Annoyance::TooHeavy => Shift {
            from: Costs::of(&without(need, said), &ranked.ground.world)
                .rates
                .mass_points_per_100_g,
            to: ranked.costs.rates.mass_points_per_100_g,
        },
        answers::Annoyance::HardToFindPicture => {
            let mean = |need: &Need| {
                (need.situations.iter())
                    .flat_map(|s| [0.25, 0.75].map(|half| (s, half)))
                    .map(|(s, half)| {
                        0.5 * s.share * eye_offset_mm(need, hold(s.what, s.manner, half))
                    })
                    .sum()
            };
            Shift {
                from: mean(&without(need, said)),
                to: mean(need),
            }
        }
        answers::Annoyance::TooNarrow | answers::Annoyance::NotFarEnough => {
            let wish = ranked
                .costs
                .wishes
                .iter()
                .find(|wish| wish.annoys == said)?;
            Shift {
                from: wish.from,
                to: wish.to,
            }
        }
    };
    Some(shift)
}

fn without(need: &Need, annoyance: answers::Annoyance) -> Need {
    let mut need = need.clone();
    need.annoys.retain(|&each| each != annoyance);
    need
}

/// The first pick had this not been said, if it is another; ranked anew.
fn otherwise(ranked: &Ranked, said: answers::Annoyance) -> Option<Line> {
    let ground = &ranked.ground;
    let need = without(&ground.need, said);
    let other = Ranking::in_world(&need, ground.world, ground.slate.count).finish();
    (other.best != ranked.best).then(|| line(&other.ground, &other.candidates[other.best]))
}

/// The spread of a change: the mass of two sights that are not the same piece, else that of
/// the small graphic.
fn change_spread(quantity: Quantity, pick: f64, own: f64) -> f64 {
    match quantity {
        Quantity::MassG => 0.1 * pick.max(own),
        _ => spread(quantity, pick - own),
    }
}
