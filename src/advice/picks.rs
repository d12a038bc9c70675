//! The picks: the best, and those that are better at something.

use super::coverage::Account;
use super::evening::Typical;
use super::line::line;
use super::ranges::ranges;
use super::ranking::{NEAR_TIE_POINTS, Ranked};
use super::report::{Because, Effect, Figure, Loss, MagInUse, Pick, Quantity};
use crate::plain::Gathered;
use crate::sight::{Specification, field, fits};

/// What a pick that is better at something may give up in value, points.
const GIVEN_UP_POINTS: f64 = 5.0;
/// What a lighter or cheaper pick may serve less, as a share of occasions.
const SERVED_LESS: f32 = 0.04;
/// A lighter pick is lighter by so much, g.
const LIGHTER_G: f64 = 40.0;
/// A cheaper pick is cheaper by so much of a band.
const CHEAPER_BANDS: f64 = 0.6;
/// A later pick is later by so much, dex of light (about half a minute).
const LATER_DEX: f64 = 0.04;
/// A wider pick is wider by this factor.
const WIDER: f64 = 1.2;
/// Picks besides the first, at most.
const OTHERS: usize = 4;

fn same_box(a: &Specification, b: &Specification) -> bool {
    a.magnification_low == b.magnification_low
        && a.magnification_high == b.magnification_high
        && a.objective_mm == b.objective_mm
}

/// The indices of the picks with their reasons to exist, the first first.
#[must_use]
pub fn choose(ranked: &Ranked, typical: &Typical) -> Vec<(usize, Because)> {
    let best = ranked.best;
    let first = &ranked.candidates[best];
    let near = ranked.within(GIVEN_UP_POINTS);
    let mut picks = vec![(best, Because::Best)];
    // The lowest of a key among some, then the highest value, then the lowest id.
    let lowest = |among: &dyn Fn(usize) -> bool, key: &dyn Fn(usize) -> f64| -> Option<usize> {
        near.iter()
            .copied()
            .filter(|&i| i != best && among(i))
            .map(|i| (i, key(i)))
            .fold(None, |found: Option<(usize, f64)>, (i, k)| match found {
                Some((f, best_key))
                    if best_key < k
                        || (best_key == k
                            && (ranked.values[f], ranked.candidates[i].id)
                                >= (ranked.values[i], ranked.candidates[f].id)) =>
                {
                    Some((f, best_key))
                }
                _ => Some((i, k)),
            })
            .map(|(i, _)| i)
    };
    let almost = |i: usize| ranked.served[i] >= ranked.served[best] - SERVED_LESS;
    let new = |picks: &[(usize, Because)], i: usize| {
        !picks.iter().any(|(known, _)| {
            same_box(
                &ranked.candidates[*known].specification,
                &ranked.candidates[i].specification,
            )
        })
    };
    let mut add = |found: Option<usize>, because: Because| {
        if let Some(i) = found
            && picks.len() <= OTHERS
            && new(&picks, i)
        {
            picks.push((i, because));
        }
    };

    if let Some(kept) = ranked.ground.need.mount.rings_kept_mm.value
        && (first.specification.tube_mm - kept).abs() > 0.05
    {
        let fits_rings =
            |i: usize| (ranked.candidates[i].specification.tube_mm - kept).abs() < 0.05;
        add(
            lowest(&fits_rings, &|i| -ranked.values[i]),
            Because::KeepsRings,
        );
    }
    add(
        lowest(
            &|i| almost(i) && ranked.candidates[i].mass_g <= first.mass_g - LIGHTER_G,
            &|i| ranked.candidates[i].mass_g,
        ),
        Because::Lightest,
    );
    add(
        lowest(
            &|i| almost(i) && ranked.candidates[i].price.max(0.0) <= first.price - CHEAPER_BANDS,
            &|i| ranked.candidates[i].price.max(0.0),
        ),
        Because::LeastMoney,
    );
    if ranked.ground.slate.late > 0 && typical.has_evening() {
        // One sight of each box and glass, the best of its kind: the eye sees no more.
        let mut kinds: Vec<usize> = Vec::new();
        let mut order = near.clone();
        crate::plain::sort_by(&mut order, |&a, &b| {
            ranked.values[b]
                .total_cmp(&ranked.values[a])
                .then(ranked.candidates[a].id.cmp(&ranked.candidates[b].id))
        });
        for i in order {
            let s = &ranked.candidates[i].specification;
            let larger = s.objective_mm > first.specification.objective_mm
                || s.grade > first.specification.grade;
            if larger
                && kinds.len() < 60
                && !kinds.iter().any(|&k| {
                    let known = &ranked.candidates[k].specification;
                    known.objective_mm == s.objective_mm
                        && known.grade == s.grade
                        && known.magnification_high == s.magnification_high
                })
            {
                kinds.push(i);
            }
        }
        let own = typical.lateness(&ranked.ground, &first.specification);
        let latest = kinds
            .into_iter()
            .map(|i| {
                (
                    i,
                    typical.lateness(&ranked.ground, &ranked.candidates[i].specification),
                )
            })
            .filter(|(_, lateness)| *lateness < own - LATER_DEX)
            .fold(None, |found: Option<(usize, f64)>, next| match found {
                Some(known) if known.1 <= next.1 + 0.01 => Some(known),
                _ => Some(next),
            })
            .map(|(i, _)| i);
        add(latest, Because::Latest);
    }
    add(
        lowest(&|i| ranked.served[i] >= ranked.served[best] + 0.01, &|i| {
            f64::from(-ranked.served[i])
        }),
        Because::ServesMost,
    );
    let width = |i: usize| {
        field::field_m_per_100m(
            ranked.candidates[i].apparent_deg,
            ranked.candidates[i].specification.magnification_low,
        )
    };
    let own_width = width(best);
    add(
        lowest(
            &|i| width(i) >= WIDER * own_width && ranked.values[i] >= ranked.values[best] - 2.0,
            &|i| -ranked.values[i],
        ),
        Because::WidestField,
    );
    if first.specification.zoom_ratio() > 1.01 {
        add(
            lowest(
                &|i| ranked.candidates[i].specification.zoom_ratio() < 1.01,
                &|i| -ranked.values[i],
            ),
            Because::FixedPower,
        );
    }
    picks
}

/// Spread of a share served, by how far the doubtful quantities move it: the light's where
/// light is lost, a little anywhere (assumption; the plausible worlds measure it).
pub(super) fn served_spread(account: &Account) -> f64 {
    use super::report::Cause;
    let by_light: f64 = account
        .lost
        .iter()
        .filter(|(cause, _)| matches!(cause, Cause::ToldApart | Cause::Aim | Cause::Mark))
        .map(|(_, share)| share)
        .sum();
    0.02 + 0.5 * by_light * (1.0 - by_light)
}

/// One pick as it is passed on.
#[must_use]
pub fn pick(ranked: &Ranked, typical: &Typical, index: usize, because: Because) -> Pick {
    let candidate = &ranked.candidates[index];
    let s = &candidate.specification;
    let account = ranked.account(s);
    let height = ranked.costs.seat().height(s.objective_mm, s.tube_mm);
    let behind = ranked.values[ranked.best] - ranked.values[index];
    Pick {
        line: line(&ranked.ground, candidate),
        because,
        tied_with_first: behind <= NEAR_TIE_POINTS,
        behind_points: behind,
        served: Figure {
            value: account.served,
            spread: served_spread(&account),
        },
        losses: account
            .lost
            .iter()
            .map(|&(cause, share)| Loss { cause, share })
            .gathered(),
        mag_in_use: MagInUse {
            day: account.set[1],
            late: account.set[0],
        },
        centre_height_mm: Figure {
            value: height.centre_over_rail_mm,
            spread: 1.5,
        },
        height_over_bore_mm: Figure {
            value: height.over_bore_mm,
            spread: 2.5,
        },
        against_first: if index == ranked.best {
            Vec::new()
        } else {
            against(ranked, typical, ranked.best, index)
        },
        ranges: ranges(ranked, index, index == ranked.best),
    }
}

/// Changes from one candidate to another, those that differ.
#[must_use]
pub fn against(ranked: &Ranked, typical: &Typical, one: usize, other: usize) -> Vec<Effect> {
    changes(
        ranked,
        typical,
        &ranked.candidates[one].specification,
        &ranked.candidates[other].specification,
    )
}

/// Changes from one specification to another, those that differ.
#[must_use]
pub fn changes(
    ranked: &Ranked,
    typical: &Typical,
    one: &Specification,
    other: &Specification,
) -> Vec<Effect> {
    use super::candidates::Candidate;
    let (a, b) = (Candidate::of(*one), Candidate::of(*other));
    let ground = &ranked.ground;
    let served = |s: &Specification| ranked.account(s).served;
    let mut list = Vec::new();
    let mut put = |quantity, value: f64, spread: f64, least: f64| {
        if value.abs() >= least {
            list.push(Effect {
                quantity,
                value,
                spread,
            });
        }
    };
    put(
        Quantity::ServedPoints,
        100.0 * (served(other) - served(one)),
        0.5,
        0.05,
    );
    if ground.slate.late > 0
        && let Some(later) = typical.later_min(ground, one, other)
    {
        put(Quantity::MinutesTonight, later.value, later.spread, 0.05);
    }
    // The fit's residual is shared by sights that differ little.
    put(
        Quantity::MassG,
        b.mass_g - a.mass_g,
        0.35 * fits::mass_g(other).spread,
        1.0,
    );
    let height = |s: &Specification| {
        ranked
            .costs
            .seat()
            .height(s.objective_mm, s.tube_mm)
            .centre_over_rail_mm
    };
    put(
        Quantity::CentreHeightMm,
        height(other) - height(one),
        1.0,
        0.1,
    );
    put(
        Quantity::PriceBands,
        b.price.clamp(0.0, 4.5) - a.price.clamp(0.0, 4.5),
        0.4,
        0.05,
    );
    let width = |c: &Candidate| {
        field::field_m_per_100m(c.apparent_deg, c.specification.magnification_low)
            * ground.nearest_m()
            / 100.0
    };
    put(
        Quantity::FieldAtNearestM,
        width(&b) - width(&a),
        0.05 * width(&b),
        0.1,
    );
    put(
        Quantity::EyeReliefMm,
        other.eye_relief_mm - one.eye_relief_mm,
        3.0,
        0.5,
    );
    list
}
