//! From answers to everything that is advised.

use crate::plain::Gathered;
use std::sync::OnceLock;

use super::candidates::Candidate;
use super::evening::Typical;
use super::ranking::{NEAR_TIE_POINTS, Ranked, Ranking};
use super::report::{
    Advice, Because, Decision, Element, Extent, Facts, NotCounted, Note, Pick, Reason, VERSION,
    Warning,
};
use super::{choices, facts, notes, occasions, owned, picks, reasons, sayings, warnings};
use crate::need::answers::{Answers, RifleKind};
use crate::need::shooter::Need;
use crate::need::{Problem, check, resolve};
use crate::sight::Specification;

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
    let mut telling = Telling::new(&ranked);
    while !telling.step() {}
    let picks = telling.picks();
    let mut advice = telling.finish();
    super::surety::tell(&mut advice, answers, &ranked, &picks);
    Ok(advice)
}

/// Everything that a finished ranking tells.
#[must_use]
pub fn tell(ranked: &Ranked) -> Advice {
    Telling::new(ranked).finish()
}

/// What a ranking tells, worked out in steps of a few milliseconds, so that a page without a
/// worker stays usable.
pub struct Telling<'a> {
    ranked: &'a Ranked,
    typical: Typical,
    chosen: Vec<(usize, Because)>,
    picks: Vec<Pick>,
    reasons: Vec<Reason>,
    elements: &'static [Element],
    decisions: Option<Vec<Decision>>,
    warnings: Option<Vec<Warning>>,
    notes: Option<Vec<Note>>,
    facts: Option<Facts>,
    sayings: Option<sayings::Themes<'a>>,
}

impl<'a> Telling<'a> {
    /// Nothing told yet but which picks there are.
    #[must_use]
    pub fn new(ranked: &'a Ranked) -> Self {
        let typical = Typical::of(&ranked.ground);
        Self {
            chosen: picks::choose(ranked, &typical),
            ranked,
            typical,
            picks: Vec::new(),
            reasons: Vec::new(),
            elements: &reasons::ELEMENTS,
            decisions: None,
            warnings: None,
            notes: None,
            facts: None,
            sayings: None,
        }
    }

    /// Places of the picks among the candidates.
    #[must_use]
    pub fn picks(&self) -> Vec<usize> {
        self.chosen.iter().map(|&(index, _)| index).gathered()
    }

    /// Tells a little more; true when little is left to [`Telling::finish`].
    pub fn step(&mut self) -> bool {
        let (ranked, typical) = (self.ranked, &self.typical);
        if let Some(&(index, because)) = self.chosen.get(self.picks.len()) {
            self.picks
                .push(picks::pick(ranked, typical, index, because));
        } else if let Some((&element, rest)) = self.elements.split_first() {
            self.elements = rest;
            let lightest = self.picked(Because::Lightest);
            if let Some(first) = self.picks.first() {
                self.reasons
                    .extend(reasons::reason(ranked, typical, first, lightest, element));
            }
        } else if self.decisions.is_none() {
            self.decisions = Some(choices::decisions(ranked, typical));
        } else if self.warnings.is_none() {
            self.warnings = Some(warnings::warnings(ranked, typical));
        } else if self.notes.is_none() {
            let beside = self.beside();
            let first = self.picks.first();
            let notes = first.map(|first| notes::notes(ranked, typical, first, beside.as_ref()));
            self.notes = Some(notes.unwrap_or_default());
        } else if self.facts.is_none() {
            self.facts = Some(facts::facts(ranked, typical, self.beside().as_ref()));
        } else if let Some(sayings) = &mut self.sayings {
            return sayings.step();
        } else {
            let first = self.picked(Because::Best);
            self.sayings = Some(sayings::Themes::of(&ranked.ground.need, first));
        }
        false
    }

    /// The specification of the pick that exists for a reason.
    fn picked(&self, wanted: Because) -> Option<&'a Specification> {
        self.chosen
            .iter()
            .find(|(_, because)| *because == wanted)
            .map(|&(index, _)| &self.ranked.candidates[index].specification)
    }

    /// The sight that stands beside the first pick: the one owned now, as far as its line can
    /// be read, else the one that reaches latest, else the second pick.
    fn beside(&self) -> Option<Specification> {
        owned::specification(&self.ranked.ground.need).or_else(|| {
            self.picked(Because::Latest).copied().or_else(|| {
                let &(index, _) = self.chosen.get(1)?;
                Some(self.ranked.candidates[index].specification)
            })
        })
    }

    /// The advice, without how sure it is.
    #[must_use]
    pub fn finish(mut self) -> Advice {
        while !self.step() {}
        let (ranked, typical) = (self.ranked, &self.typical);
        let ground = &ranked.ground;
        reasons::weightiest_first(&mut self.reasons);
        let height_over_bore_mm = self.picks.first().map_or(facts::PATH_HEIGHT_MM, |first| {
            first.height_over_bore_mm.value
        });
        Advice {
            version: VERSION,
            not_needed: choices::not_needed(&self.reasons),
            unused: self
                .picks
                .first()
                .map(|first| choices::unused(ranked, typical, first))
                .unwrap_or_default(),
            picks: self.picks,
            reasons: self.reasons,
            decisions: self.decisions.unwrap_or_default(),
            warnings: self.warnings.unwrap_or_default(),
            surety: None,
            not_counted: not_counted(&ground.need),
            assumed: assumed(&ground.need),
            facts: self
                .facts
                .unwrap_or_else(|| facts::facts(ranked, typical, None)),
            sayings: self
                .sayings
                .map(sayings::Themes::sayings)
                .unwrap_or_default(),
            notes: self.notes.unwrap_or_default(),
            flight: notes::flight_rows(ranked, height_over_bore_mm),
            owned: owned::owned(ranked, typical),
            extent: extent(ranked),
        }
    }
}

fn extent(ranked: &Ranked) -> Extent {
    Extent {
        candidates: ranked.candidates.len() as u32,
        optically_distinct: distinct(ranked.candidates),
        occasions: ranked.ground.slate.count as u32,
        near_tie_points: NEAR_TIE_POINTS,
        rates: ranked.costs.rates,
    }
}

/// The same for all candidates, which depend on no person: counted once.
fn distinct(candidates: &'static [Candidate]) -> u32 {
    static COUNT: OnceLock<u32> = OnceLock::new();
    *COUNT.get_or_init(|| optically_distinct(candidates) as u32)
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
        .gathered();
    crate::plain::sort_by(&mut keys, Ord::cmp);
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
    .gathered()
}
