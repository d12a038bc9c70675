//! The ranking: every candidate's value for one person, worked off in steps.

use std::cell::RefCell;
use std::sync::{Arc, OnceLock};

use super::candidates::{self, Candidate};
use super::costs::Costs;
use super::coverage::{self, Account, Coverage, Ground, Plan};
use super::limits;
use super::occasions;
use super::world::World;
use crate::need::shooter::Need;
use crate::sight::Specification;

/// A near-tie, percentage points of value.
pub const NEAR_TIE_POINTS: f64 = 1.0;

/// Everything the picks are made from.
#[derive(Clone, Debug)]
pub struct Ranked {
    /// The person's ground.
    pub ground: Arc<Ground>,
    /// The charges.
    pub costs: Costs,
    /// All candidates, by id.
    pub candidates: &'static [Candidate],
    /// Share served by each, 0 to 1.
    pub served: Vec<f32>,
    /// Value of each, percentage points; −∞ outside the limits.
    pub values: Vec<f64>,
    /// Index of the best.
    pub best: usize,
    /// Accounts asked for so far: the same few sights are asked about again and again.
    accounts: RefCell<Vec<(Specification, Account)>>,
}

fn plan() -> &'static Plan {
    static PLAN: OnceLock<Plan> = OnceLock::new();
    PLAN.get_or_init(|| Plan::of(candidates::all()))
}

/// A ranking in progress: the page works it off in slices, the worker in one go.
pub struct Ranking {
    coverage: Coverage,
    ground: Arc<Ground>,
    costs: Costs,
}

impl Ranking {
    /// A ranking for a need in the middle world, with the usual number of occasions.
    #[must_use]
    pub fn new(need: &Need) -> Self {
        Self::in_world(need, World::MIDDLE, occasions::COUNT)
    }

    /// A ranking in a world, with so many occasions.
    #[must_use]
    pub fn in_world(need: &Need, world: World, occasions: usize) -> Self {
        let ground = Arc::new(Ground::new(need, world, occasions));
        let costs = Costs::of(need, &world);
        Self {
            coverage: Coverage::new(Arc::clone(&ground)),
            ground,
            costs,
        }
    }

    /// Ranks at least `budget` more candidates; true when all are ranked.
    pub fn step(&mut self, budget: usize) -> bool {
        self.coverage.step(candidates::all(), plan(), budget)
    }

    /// Candidates ranked so far, of all.
    #[must_use]
    pub fn progress(&self) -> (usize, usize) {
        (self.coverage.done(), candidates::all().len())
    }

    /// Finishes and values all candidates.
    #[must_use]
    pub fn finish(mut self) -> Ranked {
        while !self.step(usize::MAX / 2) {}
        let candidates = candidates::all();
        let served = self.coverage.into_served();
        let values = values(&self.ground, &self.costs, candidates, &served);
        let best = best_of(candidates, &values);
        Ranked {
            ground: self.ground,
            costs: self.costs,
            candidates,
            served,
            values,
            best,
            accounts: RefCell::new(Vec::new()),
        }
    }
}

/// Values in percentage points: 100 times the share served, less what the sight costs. Where
/// no sight meets all limits, those stand that break the least of them.
fn values(ground: &Ground, costs: &Costs, candidates: &[Candidate], served: &[f32]) -> Vec<f64> {
    let mut values: Vec<f64> = costs
        .points_of_all(candidates)
        .iter()
        .zip(served)
        .map(|(points, &share)| 100.0 * f64::from(share) - points)
        .collect();
    let broken: Vec<u8> = candidates
        .iter()
        .map(|candidate| limits::broken(ground, &candidate.specification, candidate.mass_g))
        .collect();
    let least = broken.iter().copied().fold(u8::MAX, u8::min);
    for (value, broken) in values.iter_mut().zip(broken) {
        if broken > least {
            *value = f64::NEG_INFINITY;
        }
    }
    values
}

/// The best: highest value, then lowest id.
fn best_of(candidates: &[Candidate], values: &[f64]) -> usize {
    let mut best = 0;
    for (index, value) in values.iter().enumerate() {
        if *value > values[best]
            || (*value == values[best] && candidates[index].id < candidates[best].id)
        {
            best = index;
        }
    }
    best
}

impl Ranked {
    /// How a specification serves, need by need.
    #[must_use]
    pub fn account(&self, specification: &Specification) -> Account {
        let known = self.accounts.borrow();
        if let Some((_, account)) = known.iter().find(|(of, _)| of == specification) {
            return account.clone();
        }
        drop(known);
        let account = coverage::account(&self.ground, specification);
        self.accounts
            .borrow_mut()
            .push((*specification, account.clone()));
        account
    }

    /// Indices of all candidates in a near-tie with the best.
    #[must_use]
    pub fn tied(&self) -> Vec<usize> {
        self.within(NEAR_TIE_POINTS)
    }

    /// Indices of all candidates within so many points of the best.
    #[must_use]
    pub fn within(&self, points: f64) -> Vec<usize> {
        let least = self.values[self.best] - points;
        (0..self.values.len())
            .filter(|&index| self.values[index] >= least)
            .collect()
    }
}
