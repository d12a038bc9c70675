//! The shares that candidates serve, by columns over the occasions that are computed once.

use std::collections::BTreeMap;
use std::sync::Arc;

use super::plan::{Group, Plan};
use super::{At, Ground, MARK_GRADE, Means, Optical, lanes, lever, lit_column, log_field};
use crate::advice::candidates::{Candidate, GRID};
use crate::advice::chance::{LightPlace, Tables, tables};
use crate::advice::needs::{
    aim, detail, eye_placed, field, mark, mark::Mark, parallax, steady, told_apart,
};
use crate::advice::slate::{GRADES, Slate};
use crate::sight::{ParallaxSetting, pupil::WIDEST_EXIT_PUPIL_MM};

/// One number for each occasion.
type Column = Vec<f32>;

/// Columns by the place of the magnification in [`GRID`], as far as they were needed.
type ByPower = Vec<Option<Column>>;

fn none_yet() -> ByPower {
    vec![None; GRID.len()]
}

/// What an occasion asks of what is seen through one grade of glass.
#[derive(Clone, Copy)]
struct Asked {
    log_light: f32,
    light: LightPlace,
    log_pupil: f32,
    told: told_apart::Asked,
    log_detail: f32,
    detail_weight: f32,
    log_fineness: f32,
}

fn asked(slate: &Slate, grade: usize) -> Vec<Asked> {
    (0..slate.count)
        .map(|o| {
            let log_light = slate.log_light[o] + slate.log_transmission[grade];
            let log_veil = slate.log_veil[grade][o];
            Asked {
                log_light,
                light: tables().light_place(log_light + slate.log_other_light[o]),
                log_pupil: slate.log_pupil[o],
                told: told_apart::Asked {
                    log_contrast: slate.log_contrast[o] - log_veil,
                    log_veil,
                    log_patch_sr: slate.log_patch_sr[o],
                    decades: slate.decades[o],
                },
                log_detail: slate.log_detail[o],
                detail_weight: slate.detail_weight[o],
                log_fineness: slate.log_fineness[o],
            }
        })
        .collect()
}

/// Told apart, detail and aim through a grade of glass at one magnification.
fn seen(t: &Tables, asked: &[Asked], at: &At) -> Column {
    let log_factor = told_apart::log_field_factor();
    let (power, log_exit) = (at.log_magnification, at.log_exit_pupil);
    asked
        .iter()
        .map(|a| {
            let stopped = log_exit - a.log_pupil;
            let stopped = if stopped < 0.0 { stopped } else { 0.0 };
            let log_equivalent = t.log_equivalent_at(a.light, a.log_pupil + stopped);
            let log_mar = t.log_mar(a.log_light + 2.0 * stopped);
            told_apart::chance(t, a.told, log_equivalent, power, log_factor)
                * detail::chance(t, a.log_detail, a.detail_weight, power, log_mar)
                * aim::chance(t, a.log_fineness, power, log_mar)
        })
        .collect()
}

/// The share of the occasions that each candidate serves, worked off in steps.
pub struct Coverage {
    ground: Arc<Ground>,
    next: usize,
    done: usize,
    served: Vec<f32>,
    /// By grade: what the occasions ask.
    asked: [Vec<Asked>; GRADES.len()],
    /// By grade, at the widest exit pupil, which all objectives share.
    seen_widest: [ByPower; GRADES.len()],
    /// With the present objective and grade.
    seen: ByPower,
    seen_for: Option<(u64, usize)>,
    /// Eye placed and parallax with the present objective, by setting.
    placed: Vec<(ParallaxSetting, ByPower)>,
    placed_for: Option<u64>,
    steady: ByPower,
    /// Field times steady, by apparent field.
    fields: Vec<(f64, ByPower)>,
    /// log10 of what a mark must be wide to be seen, by exit pupil.
    needed: BTreeMap<u64, Column>,
    /// By mark, exit pupil, magnification and half.
    marks: BTreeMap<(u32, u64, usize, bool), Column>,
    /// By means and half.
    drops: BTreeMap<(Means, bool), Column>,
    /// Chances of eye reliefs met so far.
    reliefs: Vec<(f64, f32)>,
}

/// The columns of one span of magnification, and room for more.
struct Span {
    /// With the zoom as this shooter sets it.
    served: Column,
    /// The same under each pair of means against drop, as many as are in use.
    held: Vec<([Means; 2], Column)>,
    in_use: usize,
    /// Shares found so far, by mark and means.
    shares: Vec<(u32, usize, f32)>,
}

impl Coverage {
    /// Nothing covered yet.
    #[must_use]
    pub fn new(ground: Arc<Ground>) -> Self {
        Self {
            ground,
            next: 0,
            done: 0,
            served: Vec::new(),
            asked: [Vec::new(), Vec::new(), Vec::new()],
            seen_widest: [none_yet(), none_yet(), none_yet()],
            seen: none_yet(),
            seen_for: None,
            placed: Vec::new(),
            placed_for: None,
            steady: none_yet(),
            fields: Vec::new(),
            needed: BTreeMap::new(),
            marks: BTreeMap::new(),
            drops: BTreeMap::new(),
            reliefs: Vec::new(),
        }
    }

    /// Candidates covered so far.
    #[must_use]
    pub fn done(&self) -> usize {
        self.done
    }

    /// Covers at least `budget` more candidates, or what is left; true when all are covered.
    ///
    /// The candidates and their plan must be the same at every step.
    pub fn step(&mut self, candidates: &[Candidate], plan: &Plan, budget: usize) -> bool {
        self.served.resize(candidates.len(), 0.0);
        let until = self.done.saturating_add(budget.max(1));
        while self.done < until
            && let Some(group) = plan.groups.get(self.next)
        {
            self.group(candidates, plan, group);
            self.next += 1;
        }
        self.next >= plan.groups.len()
    }

    /// Shares served, 0 to 1, in the order of the candidates.
    #[must_use]
    pub fn into_served(self) -> Vec<f32> {
        self.served
    }

    fn see_to_seen(&mut self, m: usize, optical: Optical, at: &At) {
        let grade = optical.grade;
        let slot = if at.exit_pupil_mm >= WIDEST_EXIT_PUPIL_MM as f32 {
            &mut self.seen_widest[grade][m]
        } else {
            &mut self.seen[m]
        };
        if slot.is_none() {
            let asked_of = &mut self.asked[grade];
            if asked_of.is_empty() {
                *asked_of = asked(&self.ground.slate, grade);
            }
            *slot = Some(seen(tables(), asked_of, at));
        }
    }

    fn see_to_placed(&mut self, m: usize, kind: usize, at: &At) {
        let (setting, columns) = &mut self.placed[kind];
        if columns[m].is_some() {
            return;
        }
        let (slate, t) = (&self.ground.slate, tables());
        let column = (slate.range_m.iter())
            .zip(&slate.pupil_mm)
            .zip(slate.per_offset.iter().zip(&slate.per_circle))
            .map(|((&range_m, &pupil_mm), (&per_offset, &per_circle))| {
                let error = parallax::error_mm(
                    at.effective_mm,
                    at.magnification,
                    pupil_mm,
                    lever(*setting, range_m),
                );
                eye_placed::chance(t, at.exit_pupil_mm, pupil_mm, per_offset)
                    * parallax::chance(t, error, per_circle)
            })
            .collect();
        columns[m] = Some(column);
    }

    fn see_to_field(&mut self, m: usize, kind: usize, at: &At) {
        let (slate, t) = (&self.ground.slate, tables());
        let power = at.log_magnification;
        let steady = self.steady[m].get_or_insert_with(|| {
            (slate.log_room.iter())
                .map(|&room| steady::chance(t, room, power))
                .collect()
        });
        let (apparent_deg, columns) = &mut self.fields[kind];
        if columns[m].is_none() {
            let log_field = log_field(*apparent_deg, &self.ground.world);
            columns[m] = Some(
                (slate.log_field_need.iter())
                    .zip(steady)
                    .map(|(&lack, &mut steady)| steady * field::chance(t, lack, log_field, power))
                    .collect(),
            );
        }
    }

    /// The product over all needs but mark and drop at one magnification, and its sums over
    /// the late half and the other.
    fn product(
        &mut self,
        m: usize,
        optical: Optical,
        kinds: [usize; 2],
        room: &mut Column,
    ) -> Power {
        let ground = Arc::clone(&self.ground);
        let at = At::new(GRID[m], optical.objective_mm, optical.grade, &ground.slate);
        self.see_to_seen(m, optical, &at);
        self.see_to_placed(m, kinds[0], &at);
        self.see_to_field(m, kinds[1], &at);
        let seen = if at.exit_pupil_mm >= WIDEST_EXIT_PUPIL_MM as f32 {
            &self.seen_widest[optical.grade][m]
        } else {
            &self.seen[m]
        };
        let (Some(seen), Some(placed), Some(field)) = (
            seen,
            &self.placed[kinds[0]].1[m],
            &self.fields[kinds[1]].1[m],
        ) else {
            return Power::default();
        };
        let mut all = vec![0.0; seen.len()];
        lanes::products(room, seen, placed);
        lanes::products(&mut all, room, field);
        let (late, day) = all.split_at(ground.slate.late);
        Power {
            sums: [lanes::sum(late), lanes::sum(day)],
            column: all,
        }
    }

    fn group(&mut self, candidates: &[Candidate], plan: &Plan, group: &Group) {
        let optical = group.optical;
        let ground = Arc::clone(&self.ground);
        let (n, late) = (ground.slate.count, ground.slate.late);
        let objective = optical.objective_mm.to_bits();
        if self.seen_for != Some((objective, optical.grade)) {
            self.seen = none_yet();
            self.seen_for = Some((objective, optical.grade));
        }
        if self.placed_for != Some(objective) {
            self.placed.clear();
            self.placed_for = Some(objective);
        }
        let kinds = [
            place_of(&mut self.placed, group.parallax),
            place_of(&mut self.fields, optical.apparent_deg),
        ];
        let mut powers: Vec<Option<Power>> = vec![None; GRID.len()];
        let mut room = vec![0.0f32; n];
        let mut running = vec![0.0f32; n];
        let mut span = Span {
            served: vec![0.0; n],
            held: Vec::new(),
            in_use: 0,
            shares: Vec::new(),
        };
        for (low, highs) in &group.lows {
            running.fill(0.0);
            let mut from = *low;
            let mut best = [(*low, -1.0f32); 2];
            for (high, list) in highs {
                for (m, slot) in powers.iter_mut().enumerate().take(high + 1).skip(from) {
                    let power =
                        slot.get_or_insert_with(|| self.product(m, optical, kinds, &mut room));
                    lanes::raise(&mut running, &power.column);
                    for (best, &sum) in best.iter_mut().zip(&power.sums) {
                        if sum > best.1 {
                            *best = (m, sum);
                        }
                    }
                }
                from = high + 1;
                let halves = [(0, 0..late), (1, late..n)];
                for (half, range) in halves {
                    if let Some(power) = &powers[best[half].0] {
                        lanes::mixture(
                            &mut span.served[range.clone()],
                            ground.left_share as f32,
                            &power.column[range.clone()],
                            &running[range],
                        );
                    }
                }
                let set = [best[0].0, best[1].0];
                self.span(candidates, plan, optical.objective_mm, &mut span, set, list);
            }
        }
    }

    /// Puts the marks and means of the candidates of one span on its column.
    fn span(
        &mut self,
        candidates: &[Candidate],
        plan: &Plan,
        objective_mm: f64,
        span: &mut Span,
        set: [usize; 2],
        list: &[u32],
    ) {
        let ground = Arc::clone(&self.ground);
        // Few marks and means are met in one span, many times each.
        span.in_use = 0;
        span.shares.clear();
        for &index in list {
            let s = &candidates[index as usize].specification;
            let mark_index = plan.mark_of[index as usize];
            let means = [ground.means(s, set[0]), ground.means(s, set[1])];
            let held = self.held(span, means);
            let known =
                (span.shares.iter()).find(|(mark, by, _)| (*mark, *by) == (mark_index, held));
            let share = match known {
                Some(&(_, _, share)) => share,
                None => {
                    let mark = (mark_index, &plan.marks[mark_index as usize]);
                    let share = self.share(mark, objective_mm, set, &span.held[held].1);
                    span.shares.push((mark_index, held, share));
                    share
                }
            };
            self.served[index as usize] = share * self.relief(s.eye_relief_mm);
            self.done += 1;
        }
    }

    /// The place of a span's column under means against drop.
    fn held(&mut self, span: &mut Span, means: [Means; 2]) -> usize {
        let known = span.held[..span.in_use]
            .iter()
            .position(|(m, _)| *m == means);
        if let Some(at) = known {
            return at;
        }
        let ground = &self.ground;
        let (n, late) = (ground.slate.count, ground.slate.late);
        if span.in_use == span.held.len() {
            span.held.push((means, vec![0.0; n]));
        }
        let (of, column) = &mut span.held[span.in_use];
        *of = means;
        for (half, range) in [(0usize, 0..late), (1, late..n)] {
            let drop = (self.drops)
                .entry((means[half], half == 0))
                .or_insert_with(|| ground.drop_column(range.clone(), means[half]));
            lanes::products(&mut column[range.clone()], &span.served[range], drop);
        }
        span.in_use += 1;
        span.in_use - 1
    }

    /// The share of a column that a mark keeps.
    fn share(
        &mut self,
        (index, mark): (u32, &Mark),
        objective_mm: f64,
        set: [usize; 2],
        held: &[f32],
    ) -> f32 {
        let slate = &self.ground.slate;
        let (late, day) = held.split_at(slate.late);
        let mut total = 0.0;
        for (half, column) in [late, day].into_iter().enumerate() {
            if column.is_empty() {
                continue;
            }
            let m = set[half];
            let at = At::new(GRID[m], objective_mm, MARK_GRADE, slate);
            let exit = u64::from(at.exit_pupil_mm.to_bits());
            let mark_column = self
                .marks
                .entry((index, exit, m, half == 0))
                .or_insert_with(|| {
                    let needed = (self.needed)
                        .entry(exit)
                        .or_insert_with(|| needed(slate, &at));
                    mark_column(slate, mark, needed, GRID[m], half == 0)
                });
            total += lanes::sum_of_products(column, mark_column);
        }
        total / slate.count as f32
    }

    /// The chance that an eye relief is enough; few are met, many times each.
    fn relief(&mut self, eye_relief_mm: f64) -> f32 {
        if let Some(&(_, chance)) = self.reliefs.iter().find(|(mm, _)| *mm == eye_relief_mm) {
            return chance;
        }
        let chance = self.ground.eye_relief_chance(eye_relief_mm) as f32;
        self.reliefs.push((eye_relief_mm, chance));
        chance
    }
}

/// One magnification of a group.
#[derive(Clone, Default)]
struct Power {
    column: Column,
    /// Late, and by day.
    sums: [f32; 2],
}

/// The place of a key in a list, where it is put if it is new.
fn place_of<K: PartialEq>(list: &mut Vec<(K, ByPower)>, key: K) -> usize {
    let known = list.iter().position(|(k, _)| *k == key);
    known.unwrap_or_else(|| {
        list.push((key, none_yet()));
        list.len() - 1
    })
}

/// log10 of the width that a mark must have to be seen.
fn needed(slate: &Slate, at: &At) -> Column {
    let t = tables();
    (slate.log_light.iter())
        .zip(slate.log_pupil.iter().zip(&slate.log_harder))
        .map(|(&log_light, (&log_pupil, &log_harder))| {
            let log_mar = crate::advice::slate::log_mar(
                t,
                log_light,
                slate.log_transmission[MARK_GRADE],
                at.log_exit_pupil,
                log_pupil,
            );
            mark::needed(log_mar, log_harder)
        })
        .collect()
}

fn mark_column(slate: &Slate, mark: &Mark, needed: &[f32], power: f64, late: bool) -> Column {
    let t = tables();
    let seen = mark.log_seen(power);
    let log_true = mark.log_true(power);
    let lit = lit_column(slate, mark.lit);
    let room = if mark.dot {
        &slate.log_dot_room
    } else {
        &slate.log_line_room
    };
    slate
        .half(late)
        .map(|o| {
            let lit = lit.map_or(0.0, |column| column[o]);
            mark::chance(t, needed[o], room[o], seen, log_true, lit)
        })
        .collect()
}
