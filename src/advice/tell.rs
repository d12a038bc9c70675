//! From answers to everything that is advised.

use super::candidates::Candidate;
use super::evening::Typical;
use super::ranking::{NEAR_TIE_POINTS, Ranked, Ranking};
use super::report::{Advice, Because, Extent, NotCounted, Pick, VERSION};
use super::{choices, facts, notes, occasions, picks, reasons, sayings, warnings};
use crate::need::answers::{Answers, RifleKind};
use crate::need::shooter::Need;
use crate::need::{Problem, check, resolve};
use crate::sight::typed_line::TypedSight;

/// The advice for answers, without how sure it is (that takes many rankings).
///
/// # Errors
/// The problems that [`check`] finds.
pub fn advise(answers: &Answers) -> Result<Advice, Vec<Problem>> {
    let problems = check(answers);
    if !problems.is_empty() {
        return Err(problems);
    }
    Ok(tell(&Ranking::new(&resolve(answers)).finish()))
}

/// The advice with how sure it is: some eighty rankings more.
///
/// # Errors
/// The problems that [`check`] finds.
pub fn advise_with_surety(answers: &Answers) -> Result<Advice, Vec<Problem>> {
    let problems = check(answers);
    if !problems.is_empty() {
        return Err(problems);
    }
    let ranked = Ranking::new(&resolve(answers)).finish();
    let mut advice = tell(&ranked);
    advice.surety = Some(super::surety::surety(answers, &ranked));
    Ok(advice)
}

/// Everything that a finished ranking tells.
#[must_use]
pub fn tell(ranked: &Ranked) -> Advice {
    let typical = Typical::of(&ranked.ground);
    let chosen = picks::choose(ranked, &typical);
    let list: Vec<Pick> = chosen
        .iter()
        .map(|&(index, because)| picks::pick(ranked, &typical, index, because))
        .collect();
    // The sight owned now stands beside the first pick, as far as its line can be read.
    let owned = ranked
        .ground
        .need
        .sight_now
        .as_deref()
        .and_then(|line| TypedSight::parse(line).ok())
        .map(|sight| sight.specification());
    let beside = owned.or_else(|| {
        chosen
            .iter()
            .find(|(_, because)| *because == Because::Latest)
            .or_else(|| chosen.get(1))
            .map(|&(index, _)| ranked.candidates[index].specification)
    });
    let reasons = list
        .first()
        .map(|first| {
            let lightest = chosen
                .iter()
                .find(|(_, because)| *because == Because::Lightest)
                .map(|&(index, _)| &ranked.candidates[index].specification);
            reasons::reasons(ranked, &typical, first, lightest)
        })
        .unwrap_or_default();
    let not_needed = choices::not_needed(&reasons);
    let unused = list
        .first()
        .map(|first| choices::unused(ranked, &typical, first))
        .unwrap_or_default();
    let list_notes = list
        .first()
        .map(|first| notes::notes(ranked, &typical, first, beside.as_ref()))
        .unwrap_or_default();
    let height_over_bore_mm = list.first().map_or(facts::PATH_HEIGHT_MM, |first| {
        first.height_over_bore_mm.value
    });
    Advice {
        version: VERSION,
        picks: list,
        reasons,
        not_needed,
        decisions: choices::decisions(ranked, &typical),
        warnings: warnings::warnings(ranked, &typical),
        unused,
        surety: None,
        not_counted: not_counted(&ranked.ground.need),
        assumed: assumed(&ranked.ground.need),
        facts: facts::facts(ranked, &typical, beside.as_ref()),
        sayings: sayings::sayings(
            &ranked.ground.need,
            chosen
                .first()
                .map(|&(index, _)| &ranked.candidates[index].specification),
        ),
        notes: list_notes,
        flight: notes::flight_rows(ranked, height_over_bore_mm),
        extent: extent(ranked),
    }
}

fn extent(ranked: &Ranked) -> Extent {
    Extent {
        candidates: ranked.candidates.len() as u32,
        optically_distinct: optically_distinct(ranked.candidates) as u32,
        occasions: ranked.ground.slate.count as u32,
        near_tie_points: NEAR_TIE_POINTS,
        rates: ranked.costs.rates,
    }
}

/// How many of the candidates differ in span, objective, glass or apparent field.
#[must_use]
pub fn optically_distinct(candidates: &[Candidate]) -> usize {
    let mut keys: Vec<[u64; 5]> = candidates
        .iter()
        .map(|c| {
            let s = &c.specification;
            [
                s.magnification_low.to_bits(),
                s.magnification_high.to_bits(),
                s.objective_mm.to_bits(),
                s.grade as u64,
                c.apparent_deg.to_bits(),
            ]
        })
        .collect();
    keys.sort_unstable();
    keys.dedup();
    keys.len()
}

fn not_counted(need: &Need) -> Vec<NotCounted> {
    let mut list = vec![
        NotCounted::Tracking,
        NotCounted::Sealing,
        NotCounted::EdgeSharpness,
        NotCounted::ClickFeel,
        NotCounted::Service,
        NotCounted::Law,
        NotCounted::Attachment,
    ];
    let stops_late = need
        .situations
        .iter()
        .any(|s| occasions::late_share(s) > 0.0);
    let by_moon = need
        .situations
        .iter()
        .any(|s| s.stop == crate::need::shooter::Stop::Moon);
    if stops_late && !by_moon {
        list.push(NotCounted::Moon);
    }
    if need.situations.iter().any(|s| s.range.usual_m > 150.0) {
        list.push(NotCounted::Mirage);
    }
    if need.rifle.kind.value == RifleKind::SpringAir {
        list.push(NotCounted::SpringRecoil);
    }
    list
}

/// Keys of what nobody said.
fn assumed(need: &Need) -> Vec<String> {
    let some = |test: &dyn Fn(&crate::need::shooter::SituationAssumed) -> bool| {
        need.situations.iter().any(|s| test(&s.assumed))
    };
    [
        ("uses", some(&|a| a.what)),
        ("manners", some(&|a| a.manner)),
        ("ranges", some(&|a| a.range)),
        ("light", some(&|a| a.stop) || need.light.covers.assumed),
        ("eye", need.eye.age_years.assumed),
        ("load", need.load.muzzle_velocity_m_s.assumed),
        ("rifle", need.rifle.mass_kg.assumed),
        ("mount", need.mount.base.assumed),
        ("money", need.money.attitude.assumed),
        ("zoom", need.zoom_left_share.assumed),
        ("detail", some(&|a| a.detail)),
        ("carry", need.carry.assumed),
        ("distance", need.distance.habit.assumed),
        ("lit_mark", need.lit_mark.assumed),
        ("place", need.place.latitude_deg.assumed),
    ]
    .into_iter()
    .filter(|(_, assumed)| *assumed)
    .map(|(key, _)| key.to_string())
    .collect()
}
