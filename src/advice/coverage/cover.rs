//! The shares that candidates serve, by columns over the occasions that are computed once.

use std::sync::Arc;

use super::plan::{Group, Hub, Plan, Span};
use super::{At, Ground, MARK_GRADE, Means, Optical, lanes, lever, lit_column, log_field};
use crate::advice::candidates::{Candidate, GRID};
use crate::advice::chance::{LightPlace, Tables, tables};
use crate::advice::needs::{
    aim, detail, eye_placed, field, mark, mark::Mark, parallax, steady, told_apart,
};
use crate::advice::slate::{GRADES, Slate};
use crate::plain::Map;
use crate::sight::ParallaxSetting;

/// One number for each occasion.
type Column = Vec<f32>;

/// Columns by the place of the magnification in [`GRID`], as far as they were needed.
type ByPower = Vec<Option<Column>>;

fn none_yet() -> ByPower {
    vec![None; GRID.len()]
}

/// What is known of marks behind one exit pupil.
struct Exit {
    /// log10 of what a mark must be wide to be seen.
    needed: Column,
    /// Where what marks leave stands, by mark, magnification and half.
    marks: Map<(u32, usize, bool), usize>,
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
    /// log10 of the widest pupil of all occasions: no wider exit pupil shows more.
    log_widest: f32,
    /// The nearest range of all occasions, m.
    nearest_m: f32,
    /// By grade: what the occasions ask.
    asked: [Vec<Asked>; GRADES.len()],
    /// By grade, with an exit pupil that stops no eye, which all objectives share.
    seen_widest: [ByPower; GRADES.len()],
    /// With the present objective and grade.
    seen: ByPower,
    seen_for: Option<(u64, usize)>,
    /// The present objective, and the sight at each magnification.
    objective: u64,
    at: Vec<At>,
    /// Eye placed with the present objective.
    placed: ByPower,
    /// Eye placed and parallax with the present objective, by setting.
    free: Vec<(ParallaxSetting, ByPower)>,
    steady: ByPower,
    /// Field times steady, by apparent field.
    fields: Vec<(f64, ByPower)>,
    /// What marks leave.
    marks: Vec<Column>,
    /// Where that stands, by exit pupil.
    exits: Map<u32, Exit>,
    /// The same by half, magnification and mark with the present objective; 0 if not known yet.
    mark_here: Vec<usize>,
    /// By means and half.
    drops: Vec<(Means, bool, Column)>,
    /// Chances of eye reliefs met so far.
    reliefs: Vec<(f64, f32)>,
    room: Room,
}

/// Room that is used again and again.
#[derive(Default)]
struct Room {
    /// By magnification: the product over all needs but mark and drop, and its sums over the
    /// late half and the other.
    products: Vec<Column>,
    sums: Vec<[f32; 2]>,
    /// The largest of those from a hub on, downwards and upwards.
    largest: Vec<Column>,
    /// The columns of one span, as many as are in use, by its means against drop late and by day.
    held: Vec<([Means; 2], Column)>,
    in_use: usize,
    /// Shares of one span found so far, by mark and means.
    shares: Vec<(u32, usize, f32)>,
}

impl Coverage {
    /// Nothing covered yet.
    #[must_use]
    pub fn new(ground: Arc<Ground>) -> Self {
        let columns = || vec![vec![0.0; ground.slate.count]; GRID.len()];
        Self {
            next: 0,
            done: 0,
            served: Vec::new(),
            log_widest: ground.slate.log_pupil.iter().copied().fold(0.0, f32::max),
            nearest_m: (ground.slate.range_m.iter().copied()).fold(f32::INFINITY, f32::min),
            asked: [Vec::new(), Vec::new(), Vec::new()],
            seen_widest: [none_yet(), none_yet(), none_yet()],
            seen: none_yet(),
            seen_for: None,
            objective: 0,
            at: Vec::new(),
            placed: none_yet(),
            free: Vec::new(),
            steady: none_yet(),
            fields: Vec::new(),
            marks: vec![Vec::new()],
            exits: Map::new(),
            mark_here: Vec::new(),
            drops: Vec::new(),
            reliefs: Vec::new(),
            room: Room {
                products: columns(),
                sums: vec![[0.0; 2]; GRID.len()],
                largest: columns(),
                ..Room::default()
            },
            ground,
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

    /// Takes up an objective and a grade of glass.
    fn see_to_sight(&mut self, optical: Optical, marks: usize) {
        let objective = optical.objective_mm.to_bits();
        if self.objective != objective {
            let slate = &self.ground.slate;
            self.objective = objective;
            self.at = GRID
                .iter()
                .map(|&power| At::new(power, optical.objective_mm, optical.grade, slate))
                .collect();
            self.placed = none_yet();
            self.free.clear();
            self.mark_here.clear();
            self.mark_here.resize(2 * GRID.len() * marks, 0);
        }
        if self.seen_for != Some((objective, optical.grade)) {
            self.seen = none_yet();
            self.seen_for = Some((objective, optical.grade));
        }
    }

    fn see_to_seen(&mut self, m: usize, grade: usize) {
        let at = &self.at[m];
        let slot = if at.log_exit_pupil >= self.log_widest {
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

    fn see_to_placed(&mut self, m: usize, kind: usize) {
        let (setting, columns) = &mut self.free[kind];
        if columns[m].is_some() {
            return;
        }
        let (slate, t, at) = (&self.ground.slate, tables(), &self.at[m]);
        let placed = self.placed[m].get_or_insert_with(|| {
            (slate.pupil_mm.iter())
                .zip(&slate.per_offset)
                .map(|(&pupil_mm, &per_offset)| {
                    eye_placed::chance(t, at.exit_pupil_mm, pupil_mm, per_offset)
                })
                .collect()
        });
        let column = (slate.range_m.iter())
            .zip(&slate.pupil_mm)
            .zip(placed.iter().zip(&slate.per_circle))
            .map(|((&range_m, &pupil_mm), (&placed, &per_circle))| {
                let error = parallax::error_mm(
                    at.effective_mm,
                    at.magnification,
                    pupil_mm,
                    lever(*setting, range_m),
                );
                placed * parallax::chance(t, error, per_circle)
            })
            .collect();
        columns[m] = Some(column);
    }

    fn see_to_field(&mut self, m: usize, kind: usize) {
        let (slate, t) = (&self.ground.slate, tables());
        let power = self.at[m].log_magnification;
        let (apparent_deg, columns) = &mut self.fields[kind];
        if columns[m].is_some() {
            return;
        }
        let steady = self.steady[m].get_or_insert_with(|| {
            (slate.log_room.iter())
                .map(|&room| steady::chance(t, room, power))
                .collect()
        });
        let log_field = log_field(*apparent_deg, &self.ground.world);
        columns[m] = Some(
            (slate.log_field_need.iter())
                .zip(steady)
                .map(|(&lack, &mut steady)| steady * field::chance(t, lack, log_field, power))
                .collect(),
        );
    }

    /// The product over all needs but mark and drop at one magnification.
    fn product(&mut self, m: usize, grade: usize, kinds: [usize; 2]) {
        self.see_to_seen(m, grade);
        self.see_to_placed(m, kinds[0]);
        self.see_to_field(m, kinds[1]);
        let seen = if self.at[m].log_exit_pupil >= self.log_widest {
            &self.seen_widest[grade][m]
        } else {
            &self.seen[m]
        };
        let (Some(seen), Some(placed), Some(field)) =
            (seen, &self.free[kinds[0]].1[m], &self.fields[kinds[1]].1[m])
        else {
            return;
        };
        let slate = &self.ground.slate;
        for half in 0..2 {
            let range = slate.half(half == 0);
            self.room.sums[m][half] = lanes::products(
                &mut self.room.products[m][range.clone()],
                [&seen[range.clone()], &placed[range.clone()], &field[range]],
            );
        }
    }

    fn group(&mut self, candidates: &[Candidate], plan: &Plan, group: &Group) {
        let optical = group.optical;
        self.see_to_sight(optical, plan.marks.len());
        // Where nothing is nearer than the nearest setting, no focus is missed.
        let setting = match group.parallax {
            ParallaxSetting::Adjustable { nearest_m } if nearest_m <= f64::from(self.nearest_m) => {
                ParallaxSetting::Adjustable { nearest_m: 0.0 }
            }
            other => other,
        };
        let kinds = [
            place_of(&mut self.free, setting),
            place_of(&mut self.fields, optical.apparent_deg),
        ];
        let mut known = [false; GRID.len()];
        for Hub { at, spans } in &group.hubs {
            let ends = (spans.iter()).fold((*at, *at), |(low, high), span| {
                (low.min(span.low), high.max(span.high))
            });
            for (m, known) in known.iter_mut().enumerate().take(ends.1 + 1).skip(ends.0) {
                if !core::mem::replace(known, true) {
                    self.product(m, optical.grade, kinds);
                }
            }
            self.largest(*at, ends);
            for span in spans {
                self.span(candidates, plan, span);
            }
        }
    }

    /// The largest product from a hub down to each lower end and up to each upper one.
    fn largest(&mut self, hub: usize, (low, high): (usize, usize)) {
        let Room {
            products, largest, ..
        } = &mut self.room;
        largest[hub].copy_from_slice(&products[hub]);
        for m in (low..hub).rev() {
            let (below, above) = largest.split_at_mut(m + 1);
            lanes::larger_of(&mut below[m], &above[0], &products[m]);
        }
        for m in hub + 1..=high {
            let (below, above) = largest.split_at_mut(m);
            lanes::larger_of(&mut above[0], &below[m - 1], &products[m]);
        }
    }

    /// Puts the marks and means of the candidates of one span on its columns.
    fn span(&mut self, candidates: &[Candidate], plan: &Plan, span: &Span) {
        let ground = Arc::clone(&self.ground);
        let mut set = [span.low; 2];
        for (half, set) in set.iter_mut().enumerate() {
            let sum = |m: usize| self.room.sums[m][half];
            for m in span.low + 1..=span.high {
                if sum(m) > sum(*set) {
                    *set = m;
                }
            }
        }
        // Few marks and means are met in one span, many times each.
        self.room.in_use = 0;
        self.room.shares.clear();
        for &index in &span.list {
            let s = &candidates[index as usize].specification;
            let mark = plan.mark_of[index as usize];
            let means = [ground.means(s, set[0]), ground.means(s, set[1])];
            let held = self.held(span, set, means);
            let known = (self.room.shares.iter()).find(|(of, by, _)| (*of, *by) == (mark, held));
            let share = match known {
                Some(&(_, _, share)) => share,
                None => {
                    let share = self.share(plan, mark, set, held);
                    self.room.shares.push((mark, held, share));
                    share
                }
            };
            self.served[index as usize] = share * self.relief(s.eye_relief_mm);
            self.done += 1;
        }
    }

    /// The place of a span's column, with the zoom as this shooter sets it, under means against
    /// drop.
    fn held(&mut self, span: &Span, set: [usize; 2], means: [Means; 2]) -> usize {
        let room = &mut self.room;
        let known = (room.held[..room.in_use].iter()).position(|(m, _)| *m == means);
        if let Some(at) = known {
            return at;
        }
        let ground = &self.ground;
        if room.in_use == room.held.len() {
            room.held.push((means, vec![0.0; ground.slate.count]));
        }
        let (of, column) = &mut room.held[room.in_use];
        *of = means;
        let (low, high) = (&room.largest[span.low], &room.largest[span.high]);
        for half in 0..2 {
            let (late, range) = (half == 0, ground.slate.half(half == 0));
            let known = self
                .drops
                .iter()
                .position(|(m, l, _)| (*m, *l) == (means[half], late));
            let at = known.unwrap_or_else(|| {
                let drop = ground.drop_column(range.clone(), means[half]);
                self.drops.push((means[half], late, drop));
                self.drops.len() - 1
            });
            lanes::mixture(
                &mut column[range.clone()],
                ground.left_share as f32,
                [
                    &room.products[set[half]][range.clone()],
                    &low[range.clone()],
                    &high[range],
                    &self.drops[at].2,
                ],
            );
        }
        room.in_use += 1;
        room.in_use - 1
    }

    /// The share of a column that a mark keeps.
    fn share(&mut self, plan: &Plan, mark: u32, set: [usize; 2], held: usize) -> f32 {
        let ground = Arc::clone(&self.ground);
        let slate = &ground.slate;
        let mut total = 0.0;
        for (half, m) in set.into_iter().enumerate() {
            let range = slate.half(half == 0);
            if range.is_empty() {
                continue;
            }
            let place = (half * GRID.len() + m) * plan.marks.len() + mark as usize;
            if self.mark_here[place] == 0 {
                self.mark_here[place] = self.mark_column(plan, mark, m, half == 0);
            }
            let left = &self.marks[self.mark_here[place]];
            total += lanes::sum_of_products(&self.room.held[held].1[range], left);
        }
        total / slate.count as f32
    }

    /// Where what a mark leaves stands, which is found anew if it must be.
    fn mark_column(&mut self, plan: &Plan, mark: u32, m: usize, late: bool) -> usize {
        let (slate, at) = (&self.ground.slate, &self.at[m]);
        let exit = at.log_exit_pupil.min(self.log_widest).to_bits();
        let exit = self.exits.get_or(exit, || Exit {
            needed: needed(slate, at),
            marks: Map::new(),
        });
        *exit.marks.get_or((mark, m, late), || {
            let mark = &plan.marks[mark as usize];
            self.marks
                .push(mark_column(slate, mark, &exit.needed, GRID[m], late));
            self.marks.len() - 1
        })
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
