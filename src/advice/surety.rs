//! How sure the first pick is: plausible worlds, and other plausible answers.
//!
//! Each world moves every doubtful quantity within its own spread and ranks again what could
//! win: the picks, and the best of all within five points of the first. The work is cut into
//! [`Worlds::step`]s, so that a page can stop between two.

use crate::filled;
use crate::plain::Gathered;
use std::sync::Arc;

use super::candidates::Candidate;
use super::costs::Costs;
use super::coverage::{Coverage, Ground, Plan};
use super::difference::of_lines;
use super::line::line;
use super::occasions;
use super::ranking::{NEAR_TIE_POINTS, Ranked, Ranking};
use super::report::{Advice, AnswerMatters, Doubt, Surety, Unseats};
use super::sequence::{DIMENSIONS, coordinate};
use super::world::World;
use crate::need::answers::{
    Answers, Attitude, Carry, Detail, Distance, DistanceHabit, Glasses, LitMark, Muzzle, Rifle,
    StopTime, ZoomHabit,
};
use crate::need::{check, resolve};

/// Plausible worlds that are tried.
pub const WORLDS: u32 = 64;
/// Candidates within so many points of the best are ranked again in each world.
const AROUND_POINTS: f64 = 5.0;
/// Candidates ranked again in a world, at most: the best of them.
const AROUND_MOST: usize = 1500;
/// First dimension of the sequence that the worlds are drawn from; the occasions use those
/// before it.
const FIRST_DIMENSION: u32 = 40;
const _: () = assert!(FIRST_DIMENSION as usize + DOUBTS <= DIMENSIONS);

/// The plausible worlds in progress.
pub struct Worlds {
    candidates: Vec<Candidate>,
    plan: Plan,
    first: usize,
    /// Places among the candidates of the picks, the first pick's first.
    picks: Vec<usize>,
    ground: Arc<Ground>,
    pupil_spread_mm: f64,
    trial: Option<Trial>,
    done: u32,
    stayed_first: u32,
    stayed_tied: u32,
    /// By pick: sums of the share served and of its square over the worlds.
    served: Vec<[f64; 2]>,
    unseated: Vec<(Doubt, Candidate)>,
}

/// One world in progress.
struct Trial {
    scores: [f64; DOUBTS],
    costs: Costs,
    stage: Stage,
}

enum Stage {
    /// What could win is ranked again.
    Ranking(Box<Coverage>),
    /// The first pick is unseated: its doubts are taken back one by one.
    Unseated {
        by: usize,
        next: usize,
        /// How far the pick stays behind with a doubt taken back: the least, and which.
        least: (f64, usize),
    },
}

const DOUBTS: usize = World::DOUBTS.len();

/// The standard normal scores of a world.
fn scores(world: u32) -> [f64; DOUBTS] {
    let mut scores = [0.0; DOUBTS];
    for (dimension, score) in scores.iter_mut().enumerate() {
        let u = f64::from(coordinate(world, FIRST_DIMENSION + dimension as u32, 1));
        *score = super::chance::normal_score(u.clamp(1e-6, 1.0 - 1e-6));
    }
    scores
}

fn values(costs: &Costs, candidates: &[Candidate], served: &[f32]) -> Vec<f64> {
    costs
        .points_of_all(candidates)
        .iter()
        .zip(served)
        .map(|(points, &share)| 100.0 * f64::from(share) - points)
        .gathered()
}

/// The place of the highest value, the first of equals.
fn highest(values: &[f64]) -> usize {
    let mut best = 0;
    for (index, value) in values.iter().enumerate() {
        if *value > values[best] {
            best = index;
        }
    }
    best
}

impl Worlds {
    /// The worlds for a finished ranking and the candidates that were picked from it.
    #[must_use]
    pub fn new(ranked: &Ranked, picks: &[usize]) -> Self {
        let mut near = ranked.within(AROUND_POINTS);
        crate::plain::sort_by(&mut near, |&a, &b| {
            ranked.values[b]
                .total_cmp(&ranked.values[a])
                .then(ranked.candidates[a].id.cmp(&ranked.candidates[b].id))
        });
        near.truncate(AROUND_MOST);
        near.push(ranked.best);
        near.extend(picks);
        // Candidates stand in the order of their ids.
        crate::plain::sort_by(&mut near, Ord::cmp);
        near.dedup();
        let place = |index: &usize| near.binary_search(index).unwrap_or(0);
        let (first, picks) = (place(&ranked.best), picks.iter().map(place).gathered());
        let candidates: Vec<Candidate> = near
            .iter()
            .map(|&index| ranked.candidates[index])
            .gathered();
        let pupil_spread_mm = if ranked.ground.need.eye.dark_pupil_mm.is_some() {
            0.3
        } else {
            crate::eye::pupil::SPREAD_MM
        };
        Self {
            plan: Plan::of(&candidates),
            candidates,
            first,
            served: vec![[0.0; 2]; picks.len()],
            picks,
            ground: Arc::clone(&ranked.ground),
            pupil_spread_mm,
            trial: None,
            done: 0,
            stayed_first: 0,
            stayed_tied: 0,
            unseated: Vec::new(),
        }
    }

    /// Worlds tried so far, of all.
    #[must_use]
    pub fn progress(&self) -> (u32, u32) {
        (self.done, WORLDS)
    }

    /// The world of an index.
    #[must_use]
    pub fn world(&self, index: u32) -> World {
        World::at(&scores(index), self.pupil_spread_mm)
    }

    /// The id of what is first in a world among those that are ranked again.
    #[must_use]
    pub fn first_in(&self, world: &World) -> u64 {
        let values = self.values_in(world, &self.candidates, &self.plan);
        self.candidates[highest(&values)].id
    }

    /// The values of some candidates in a world.
    fn values_in(&self, world: &World, candidates: &[Candidate], plan: &Plan) -> Vec<f64> {
        let need = &self.ground.need;
        let ground = Arc::new(Ground::new(need, *world, occasions::COUNT));
        let mut coverage = Coverage::new(ground);
        while !coverage.step(candidates, plan, usize::MAX) {}
        values(&Costs::of(need, world), candidates, &coverage.into_served())
    }

    /// How far the first pick is behind another in a world, points.
    fn behind_in(&self, world: &World, other: usize) -> f64 {
        let two = [self.candidates[self.first], self.candidates[other]];
        let values = self.values_in(world, &two, &Plan::of(&two));
        values[1] - values[0]
    }

    /// Tries one more world; true when all are tried.
    pub fn step(&mut self) -> bool {
        let until = (self.done + 1).min(WORLDS);
        while self.done < until {
            self.step_some(usize::MAX);
        }
        self.done >= WORLDS
    }

    /// Goes on by at least `budget` candidates in one world, or by one doubt; true when all
    /// worlds are tried.
    pub fn step_some(&mut self, budget: usize) -> bool {
        if self.done >= WORLDS {
            return true;
        }
        let Trial {
            scores,
            costs,
            stage,
        } = self.trial.take().unwrap_or_else(|| self.next_trial());
        let stage = match stage {
            Stage::Ranking(mut coverage) => {
                if coverage.step(&self.candidates, &self.plan, budget) {
                    self.ranked_again(&costs, &coverage.into_served())
                } else {
                    Some(Stage::Ranking(coverage))
                }
            }
            Stage::Unseated { by, next, least } => {
                let mut taken_back = scores;
                taken_back[next] = 0.0;
                let world = World::at(&taken_back, self.pupil_spread_mm);
                let behind = self.behind_in(&world, by);
                let least = if behind < least.0 {
                    (behind, next)
                } else {
                    least
                };
                if next + 1 < DOUBTS {
                    Some(Stage::Unseated {
                        by,
                        next: next + 1,
                        least,
                    })
                } else {
                    self.unseated
                        .push((World::DOUBTS[least.1], self.candidates[by]));
                    None
                }
            }
        };
        match stage {
            Some(stage) => {
                self.trial = Some(Trial {
                    scores,
                    costs,
                    stage,
                });
            }
            None => self.done += 1,
        }
        self.done >= WORLDS
    }

    fn next_trial(&self) -> Trial {
        let scores = scores(self.done);
        let world = World::at(&scores, self.pupil_spread_mm);
        let need = &self.ground.need;
        let ground = Arc::new(Ground::new(need, world, occasions::COUNT));
        Trial {
            scores,
            costs: Costs::of(need, &world),
            stage: Stage::Ranking(Box::new(Coverage::new(ground))),
        }
    }

    /// Counts a world that is ranked again; what is left to do in it.
    fn ranked_again(&mut self, costs: &Costs, served: &[f32]) -> Option<Stage> {
        for (sums, &pick) in self.served.iter_mut().zip(&self.picks) {
            let share = f64::from(served[pick]);
            sums[0] += share;
            sums[1] += share * share;
        }
        let values = values(costs, &self.candidates, served);
        let by = highest(&values);
        if by == self.first {
            self.stayed_first += 1;
        }
        if values[by] - values[self.first] <= NEAR_TIE_POINTS {
            self.stayed_tied += 1;
            return None;
        }
        Some(Stage::Unseated {
            by,
            next: 0,
            least: (f64::INFINITY, 0),
        })
    }

    /// One standard deviation over the worlds of the share that each pick serves.
    #[must_use]
    pub fn served_spreads(&self) -> Vec<f64> {
        let n = f64::from(self.done.max(1));
        self.served
            .iter()
            .map(|[sum, squares]| (squares / n - (sum / n) * (sum / n)).max(0.0).sqrt())
            .gathered()
    }

    /// Puts what the worlds tell into an advice, with what other answers would change.
    pub fn tell(&self, advice: &mut Advice, mut answers: Vec<AnswerMatters>) {
        for (pick, spread) in advice.picks.iter_mut().zip(self.served_spreads()) {
            pick.served.spread = spread;
        }
        weightiest_first(&mut answers);
        advice.surety = Some(Surety {
            answers,
            ..self.surety()
        });
    }

    /// What the worlds tell so far, without the answers.
    #[must_use]
    pub fn surety(&self) -> Surety {
        let mut by_doubt: Vec<(Doubt, Vec<Candidate>)> = Vec::new();
        for &(doubt, instead) in &self.unseated {
            match by_doubt.iter_mut().find(|(known, _)| *known == doubt) {
                Some((_, list)) => list.push(instead),
                None => by_doubt.push((doubt, vec![instead])),
            }
        }
        crate::plain::sort_by(&mut by_doubt, |a, b| {
            b.1.len().cmp(&a.1.len()).then(a.0.cmp(&b.0))
        });
        Surety {
            worlds: self.done,
            first: self.stayed_first,
            first_or_tied: self.stayed_tied,
            unseated_by: by_doubt
                .iter()
                .map(|(doubt, list)| Unseats {
                    doubt: *doubt,
                    worlds: list.len() as u32,
                    instead: line(&self.ground, &most_common(list)),
                })
                .gathered(),
            answers: Vec::new(),
        }
    }
}

/// The candidate that stands most often in a list that is not empty; the lowest id of equals.
fn most_common(list: &[Candidate]) -> Candidate {
    let count = |id: u64| list.iter().filter(|c| c.id == id).count();
    let mut best = list[0];
    for candidate in list {
        let (a, b) = (count(candidate.id), count(best.id));
        if a > b || (a == b && candidate.id < best.id) {
            best = *candidate;
        }
    }
    best
}

/// Another plausible answer: the question, the answer's key, and the answers with it.
#[derive(Clone, Debug)]
pub struct OtherAnswer {
    /// Key of the question.
    pub question: &'static str,
    /// Key of the answer tried.
    pub other: String,
    /// All answers, with that one changed.
    pub answers: Answers,
}

/// The other answers worth trying: a neighbour of what was said, or of what was assumed.
#[must_use]
pub fn other_answers(answers: &Answers) -> Vec<OtherAnswer> {
    let mut list = Vec::new();
    let mut put = |question: &'static str, other: String, change: &dyn Fn(&mut Answers)| {
        let mut sure = answers.clone();
        sure.not_sure.retain(|key| key != question);
        let mut changed = sure.clone();
        change(&mut changed);
        if changed != sure && check(&changed).is_empty() {
            list.push(OtherAnswer {
                question,
                other,
                answers: changed,
            });
        }
    };
    let need = resolve(answers);
    let age = need.eye.age_years.value.value;
    for years in [age - 15.0, age + 15.0] {
        let years = years.clamp(15.0, 85.0).round();
        put("eye", filled!("age_{}", years), &|a| {
            a.eye.get_or_insert_default().age_years = Some(years);
        });
    }
    // Nobody waits for the dusk at a target.
    if need.situations.iter().any(|s| !s.what.is_target()) {
        for (key, until) in [
            ("sunset", StopTime::Sunset),
            ("half_hour_after_sunset", StopTime::HalfHourAfterSunset),
            ("end_of_seeing", StopTime::EndOfSeeing),
        ] {
            put("light", key.to_string(), &|a| {
                let light = a.light.get_or_insert_default();
                light.until = Some(until);
                light.minutes_after_sunset = None;
            });
        }
    }
    for (key, factor) in [("nearer", 0.7), ("farther", 1.4)] {
        put("ranges", key.to_string(), &|a| {
            let scaled = |r: &mut crate::need::answers::Ranges| {
                r.usual_m *= factor;
                r.farthest_m *= factor;
                r.nearest_m = r.nearest_m.min(r.usual_m);
            };
            let of_uses = a.uses.iter_mut().map(|each| &mut each.ranges);
            let of_manners = a.manners.iter_mut().map(|each| &mut each.ranges);
            (of_uses.chain(of_manners).chain([&mut a.ranges]))
                .flatten()
                .for_each(scaled);
        });
    }
    for (key, habit) in [
        ("never", ZoomHabit::Never),
        ("each_shot", ZoomHabit::EachShot),
    ] {
        put("zoom", key.to_string(), &|a| a.zoom = Some(habit));
    }
    for (key, detail) in [
        ("body_shape", Detail::BodyShape),
        ("antler", Detail::Antler),
    ] {
        put("detail", key.to_string(), &|a| a.detail = Some(detail));
    }
    for (key, carry) in [("short", Carry::Short), ("all_day_hill", Carry::AllDayHill)] {
        put("carry", key.to_string(), &|a| a.carry = Some(carry));
    }
    for (key, habit) in [
        ("dead_on", DistanceHabit::DeadOn),
        ("dial", DistanceHabit::Dial),
    ] {
        put("distance", key.to_string(), &|a| {
            a.distance.get_or_insert_with(Distance::default).habit = Some(habit);
        });
    }
    // Whether it is lawful is known to who answered; a wish may change.
    let wishes: &[(&str, LitMark)] = match answers.lit_mark {
        None => &[
            ("wanted", LitMark::Wanted),
            ("not_allowed", LitMark::NotAllowed),
        ],
        Some(LitMark::NotAllowed) => &[],
        Some(_) => &[
            ("wanted", LitMark::Wanted),
            ("not_wanted", LitMark::NotWanted),
        ],
    };
    for &(key, wish) in wishes {
        put("lit_mark", key.to_string(), &|a| a.lit_mark = Some(wish));
    }
    for (key, attitude) in [
        ("little_as_sensible", Attitude::LittleAsSensible),
        ("no_limit", Attitude::NoLimit),
    ] {
        put("money", key.to_string(), &|a| {
            let money = a.money.get_or_insert_default();
            money.attitude = Some(attitude);
            if attitude == Attitude::NoLimit {
                money.band = None;
            }
        });
    }
    put("rifle", "moderator".to_string(), &|a| {
        a.rifle.get_or_insert_with(Rifle::default).muzzle = Some(Muzzle::Moderator);
    });
    put("eye", "thick_frame".to_string(), &|a| {
        a.eye.get_or_insert_default().glasses = Some(Glasses::ThickFrame);
    });
    list
}

/// What another answer does to the line; `there` is the ranking with it.
#[must_use]
pub fn matters(ranked: &Ranked, other: &OtherAnswer, there: &Ranked) -> AnswerMatters {
    let behind = there.values[there.best] - there.values[ranked.best];
    let changes_line = !(behind <= NEAR_TIE_POINTS);
    let then = line(&there.ground, &there.candidates[there.best]);
    let now = line(&ranked.ground, &ranked.candidates[ranked.best]);
    AnswerMatters {
        question: other.question.to_string(),
        other: other.other.clone(),
        changes_line,
        behind_points: if behind.is_finite() { behind } else { 99.0 },
        elements: if changes_line {
            of_lines(&now, &then)
                .into_iter()
                .map(|change| change.element)
                .gathered()
        } else {
            Vec::new()
        },
        then,
    }
}

/// Orders the answers: those that change the line first, then by how far the pick falls
/// behind.
pub fn weightiest_first(answers: &mut [AnswerMatters]) {
    crate::plain::sort_by(answers, |a, b| {
        b.changes_line
            .cmp(&a.changes_line)
            .then(b.behind_points.total_cmp(&a.behind_points))
            .then(a.question.cmp(&b.question))
            .then(a.other.cmp(&b.other))
    });
}

/// All of it in one go: the worlds and every other answer.
pub fn tell(advice: &mut Advice, answers: &Answers, ranked: &Ranked, picks: &[usize]) {
    let mut worlds = Worlds::new(ranked, picks);
    while !worlds.step() {}
    let others = other_answers(answers)
        .iter()
        .map(|other| {
            let there = Ranking::new(&resolve(&other.answers)).finish();
            matters(ranked, other, &there)
        })
        .gathered();
    worlds.tell(advice, others);
}
