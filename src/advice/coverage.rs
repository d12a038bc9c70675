//! How much of the occasions a sight covers, by tables that fall apart.
//!
//! For one occasion and one magnification the product of the chances splits into parts that
//! depend on few elements: the eye's part on objective and glass, the field's on the
//! apparent field, the parallax on its setting, the mark on the reticle. Each part is
//! computed once over [`GRID`]; a zoom then takes the best magnification of its span, or the
//! one that it was left at, and a candidate is a product of three columns.

use std::collections::BTreeMap;
use std::sync::Arc;

use super::candidates::{Candidate, GRID, grid_index};
use super::chance::{Tables, tables};
use super::needs::{
    aim, detail, drop, eye_placed, eye_relief, field, mark, mark::Mark, parallax, steady,
    told_apart,
};
use super::occasions::Occasion;
use super::report::Cause;
use super::slate::{self, GRADES, Slate};
use super::world::World;
use crate::need::answers::Manner;
use crate::need::shooter::Need;
use crate::rifle::recoil::{self, EyeReliefCircumstances, GasFactor, MuzzleDevice};
use crate::sight::{
    Elevation, FocalPlane, Illumination, ParallaxSetting, ReticleFamily, Specification, fits,
    parallax as sight_parallax, pupil, reticle, turret,
};

/// Everything about one person that all candidates share.
#[derive(Clone, Debug)]
pub struct Ground {
    /// The need.
    pub need: Need,
    /// The world.
    pub world: World,
    /// The occasions, late ones first.
    pub occasions: Vec<Occasion>,
    /// Their columns.
    pub slate: Slate,
    /// The bullet's flight; none if the load's figures make none.
    pub flight: Option<drop::Flight>,
    /// Free recoil with a usual sight on the rifle.
    pub recoil: recoil::Recoil,
    /// Eye relief asked for by the largest demand among glasses and manners, mm.
    pub eye_relief_asked_mm: f64,
    /// Demands for eye relief, mm, with their shares.
    eye_relief_asked: Vec<(f64, f64)>,
    /// Share left at one magnification.
    pub left_share: f64,
}

/// Mass of a usual sight and its mount, for the recoil: 0.6 kg, but no more than a fifth of
/// the rifle.
const SIGHT_ON_RIFLE_KG: f64 = 0.6;

impl Ground {
    /// The ground for a need in a world.
    #[must_use]
    pub fn new(need: &Need, world: World, count: usize) -> Self {
        let occasions = super::occasions::sample(need, &world, count);
        let slate = Slate::of(&occasions, &world, need.eye.astigmatism);
        let recoil = free_recoil(need);
        let eye_relief_asked = eye_relief_asked(need, recoil);
        let eye_relief_asked_mm = eye_relief_asked.iter().map(|d| d.0).fold(70.0, f64::max);
        Self {
            flight: drop::Flight::of(need, world.drop),
            need: need.clone(),
            world,
            occasions,
            slate,
            recoil,
            eye_relief_asked_mm,
            eye_relief_asked,
            left_share: need.zoom_left_share.value.clamp(0.0, 1.0),
        }
    }

    /// The chance that an eye relief is enough, over glasses and manners.
    #[must_use]
    pub fn eye_relief_chance(&self, eye_relief_mm: f64) -> f64 {
        self.eye_relief_asked
            .iter()
            .map(|&(asked, share)| share * eye_relief::chance(eye_relief_mm, asked))
            .sum()
    }
}

fn free_recoil(need: &Need) -> recoil::Recoil {
    let bare = need.rifle.mass_kg.value.value.clamp(0.5, 20.0);
    let device = match need.rifle.muzzle.value {
        crate::need::answers::Muzzle::Bare => MuzzleDevice::Bare,
        crate::need::answers::Muzzle::Moderator => MuzzleDevice::Moderator,
        crate::need::answers::Muzzle::Brake => MuzzleDevice::Brake,
    };
    let gas = match need.rifle.kind.value {
        crate::need::answers::RifleKind::SlugGun => GasFactor::Shotgun,
        _ => GasFactor::Rifle,
    };
    let fired = bare + SIGHT_ON_RIFLE_KG.min(0.2 * bare);
    recoil::with_muzzle_device(
        recoil::free_recoil(
            need.load.bullet_g.value.clamp(0.1, 80.0),
            need.load
                .muzzle_velocity_m_s
                .value
                .value
                .clamp(50.0, 1600.0),
            need.load.powder_g.value.clamp(0.0, 20.0),
            fired,
            gas,
        ),
        fired,
        device,
    )
}

/// Demands for eye relief with their shares: glasses apart, prone apart. A sight that sits
/// forward of the receiver asks for what a scout mount leaves.
fn eye_relief_asked(need: &Need, recoil: recoil::Recoil) -> Vec<(f64, f64)> {
    use crate::need::answers::{Glasses, RifleKind};
    if need.rifle.kind.value == RifleKind::ForwardRail {
        return vec![(FORWARD_ASKED_MM, 1.0)];
    }
    let prone: f64 = need
        .situations
        .iter()
        .filter(|s| s.manner == Manner::PronePack)
        .map(|s| s.share)
        .sum();
    let mut list = Vec::new();
    for part in &need.eye.glasses.value {
        for (lying, share) in [(true, prone), (false, 1.0 - prone)] {
            if share <= 1e-9 {
                continue;
            }
            let asked = recoil::eye_relief_need(
                recoil.velocity_m_s,
                EyeReliefCircumstances {
                    glasses: matches!(part.of, Glasses::Distance | Glasses::Varifocal),
                    thick_frame: part.of == Glasses::ThickFrame,
                    // Lying down brings the brow nearer only where the rifle comes back.
                    prone: lying && recoil.velocity_m_s > 2.0,
                    uphill: false,
                },
            )
            .total_mm();
            list.push((asked, part.share * share));
        }
    }
    list
}

/// Eye relief that a rail forward of the receiver asks for, mm (assumption, 200 to 280).
pub const FORWARD_ASKED_MM: f64 = 220.0;

/// What of a specification decides its columns.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Optical {
    objective_mm: f64,
    grade: usize,
    apparent_deg: f64,
}

fn grade_index(specification: &Specification) -> usize {
    GRADES
        .iter()
        .position(|&grade| grade == specification.grade)
        .unwrap_or(1)
}

/// The eye's part at one magnification: told apart, detail, aim, eye placed.
struct EyePart<'a> {
    slate: &'a Slate,
    tables: &'static Tables,
    log_factor: f32,
}

/// The chances of one occasion at one magnification, need by need.
#[derive(Clone, Copy, Debug)]
struct Chances {
    told_apart: f32,
    detail: f32,
    aim: f32,
    eye_placed: f32,
}

impl EyePart<'_> {
    #[inline(always)]
    fn chances(&self, o: usize, at: &At) -> Chances {
        let s = self.slate;
        let t = self.tables;
        let log_light = s.log_light[o] + at.log_transmission;
        let log_beam = at.log_exit_pupil.min(s.log_pupil[o]);
        let log_equivalent = t.log_equivalent(log_light + s.log_other_light[o], log_beam);
        let log_veil = s.log_veil[at.grade][o];
        let log_mar =
            super::chance::log_mar(log_light + 2.0 * (at.log_exit_pupil - s.log_pupil[o]).min(0.0));
        Chances {
            told_apart: told_apart::chance(
                t,
                told_apart::Asked {
                    log_contrast: s.log_contrast[o] - log_veil,
                    log_veil,
                    log_patch_sr: s.log_patch_sr[o],
                    decades: s.decades[o],
                },
                log_equivalent,
                at.log_magnification,
                self.log_factor,
            ),
            detail: detail::chance(
                t,
                s.log_detail[o],
                s.detail_weight[o],
                at.log_magnification,
                log_mar,
            ),
            aim: aim::chance(t, s.log_fineness[o], at.log_magnification, log_mar),
            eye_placed: eye_placed::chance(t, at.exit_pupil_mm, s.pupil_mm[o], s.per_offset[o]),
        }
    }
}

/// A sight at one magnification.
#[derive(Clone, Copy, Debug)]
struct At {
    magnification: f32,
    log_magnification: f32,
    exit_pupil_mm: f32,
    log_exit_pupil: f32,
    effective_mm: f32,
    grade: usize,
    log_transmission: f32,
}

impl At {
    fn new(magnification: f64, objective_mm: f64, grade: usize, slate: &Slate) -> Self {
        let exit_pupil_mm = pupil::exit_pupil_mm(objective_mm, magnification);
        Self {
            magnification: magnification as f32,
            log_magnification: libm::log10(magnification) as f32,
            exit_pupil_mm: exit_pupil_mm as f32,
            log_exit_pupil: libm::log10(exit_pupil_mm) as f32,
            effective_mm: pupil::effective_objective_mm(objective_mm, magnification) as f32,
            grade,
            log_transmission: slate.log_transmission[grade],
        }
    }
}

fn lever(setting: ParallaxSetting, range_m: f32) -> f32 {
    let free = sight_parallax::free_distance_m(setting, f64::from(range_m)) as f32;
    (range_m - free).abs() / free
}

fn log_field(apparent_deg: f64, world: &World) -> f32 {
    let half = 0.5 * apparent_deg * world.field * core::f64::consts::PI / 180.0;
    libm::log10(2.0 * libm::tan(half)) as f32
}

/// The means to meet drop that a specification brings, as far as this person uses them.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
struct Means {
    /// Read to, in 0.01 mrad; 0: no means, dead on.
    read: u32,
    /// At most, in 0.1 mrad.
    most: u32,
    /// There are marks.
    marks: bool,
    /// The elevation is dialled.
    dialled: bool,
    /// Off power: grid indices of the power that is set and of the reference, second plane.
    off: Option<(usize, usize)>,
    /// Focus finds the range: grid index of the top power.
    focus: Option<usize>,
}

const NO_MEANS: Means = Means {
    read: 0,
    most: 0,
    marks: false,
    dialled: false,
    off: None,
    focus: None,
};

/// Whether a reticle has marks to hold with.
#[must_use]
pub fn has_marks(family: ReticleFamily) -> bool {
    family == ReticleFamily::HoldMarks || reticle::mark_unit(family).is_some()
}

/// Share of the shots left at another power that are held with second-plane marks all the
/// same: who holds far out has time to turn the zoom up first and forgets it in one of
/// twenty (assumption).
const HELD_OFF_POWER: f64 = 0.05;

/// Reach of a ladder of marks below the centre, mrad: beyond it nobody holds.
const MARKS_REACH_MRAD: f64 = 8.0;

impl Ground {
    /// The travel that a sight has left on this rifle; none without a flight.
    #[must_use]
    pub fn travel(&self, s: &Specification) -> Option<turret::Travel> {
        let flight = self.flight.as_ref()?;
        turret::Mounted {
            total_mrad: fits::travel_mrad(s).value,
            incline_mrad: self.need.mount.incline_mrad,
            zero_angle_mrad: flight.zero_angle_mrad,
            misalignment_mrad: drop::MISALIGNED_MRAD,
            windage_used_mrad: 0.0,
        }
        .travel()
        .ok()
    }

    /// Elevation needed from the usual zero at the farthest range of all situations, mrad.
    #[must_use]
    pub fn farthest_needed_mrad(&self) -> Option<f64> {
        let flight = self.flight.as_ref()?;
        Some(flight.needed_mrad(self.farthest_m()).max(0.0))
    }

    /// The farthest range of all situations, m.
    #[must_use]
    pub fn farthest_m(&self) -> f64 {
        let farthest = |s: &crate::need::shooter::Situation| s.range.farthest_m;
        self.need
            .situations
            .iter()
            .map(farthest)
            .fold(1.0, f64::max)
    }

    /// The nearest range of all situations, m.
    #[must_use]
    pub fn nearest_m(&self) -> f64 {
        let nearest = |s: &crate::need::shooter::Situation| s.range.nearest_m;
        self.need
            .situations
            .iter()
            .map(nearest)
            .fold(f64::INFINITY, f64::min)
    }

    fn means(&self, s: &Specification, set: usize) -> Means {
        let Some(flight) = &self.flight else {
            return NO_MEANS;
        };
        let marks = has_marks(s.reticle);
        let off = (marks && s.plane == FocalPlane::Second)
            .then(|| (set, grid_index(s.magnification_high)));
        let focus = (self.need.rulebook.focus_finds_range
            && matches!(s.parallax, ParallaxSetting::Adjustable { .. }))
        .then(|| grid_index(s.magnification_high));
        if flight.uses_dial && s.elevation != Elevation::Capped {
            let most = self.travel(s).map_or(0.0, |travel| travel.up_mrad);
            let read = if s.elevation == Elevation::DialZeroStop {
                drop::DIAL_READ_MRAD
            } else {
                drop::RING_READ_MRAD
            };
            return Means {
                read: (read * 100.0 + 0.5) as u32,
                most: (most.max(0.0) * 10.0) as u32,
                marks,
                dialled: true,
                off,
                focus,
            };
        }
        if flight.uses_marks && marks {
            return Means {
                read: (drop::MARKS_READ_MRAD * 100.0 + 0.5) as u32,
                most: (MARKS_REACH_MRAD * 10.0) as u32,
                marks,
                dialled: false,
                off,
                focus,
            };
        }
        NO_MEANS
    }

    fn drop_chance(&self, o: &Occasion, means: Means) -> f64 {
        let Some(flight) = &self.flight else {
            return 1.0;
        };
        if means.read == 0 {
            return flight.dead_on_chance(o.range_m, o.circle_mm, false);
        }
        let range_spread = match means.focus {
            Some(high) => focus_range_spread_m(GRID[high], o.range_m),
            None => flight.range_spread_m(o.range_m, o.range_known),
        };
        let at = |off: f64| {
            flight.means_chance(
                o.range_m,
                o.circle_mm,
                drop::Hold {
                    read_mrad: f64::from(means.read) * 0.01,
                    most_mrad: f64::from(means.most) * 0.1,
                    off_power: off,
                    range_spread_m: range_spread,
                    marks: means.marks,
                    by_marks: !means.dialled,
                },
            )
        };
        match means.off {
            // Left at another power the marks are wrong; for this shot one can still turn.
            Some((set, reference)) => {
                let off = (GRID[reference] / GRID[set] - 1.0).abs();
                let wrong = HELD_OFF_POWER * self.left_share;
                wrong * at(off) + (1.0 - wrong) * at(0.0)
            }
            None => at(0.0),
        }
    }

    fn drop_column(&self, range: core::ops::Range<usize>, means: Means) -> Vec<f32> {
        self.occasions[range]
            .iter()
            .map(|o| self.drop_chance(o, means) as f32)
            .collect()
    }
}

/// How far the eye's own focus may be off without being noticed, dioptres (assumption).
const EYE_FOCUS_DIOPTRES: f64 = 0.2;

/// How well focusing finds a range, m: `0.2·R²/M²`.
///
/// A telescope multiplies the vergence of what it looks at by M², so that the eye's own slack
/// of focus hides the less of it the higher the power.
///
/// # Source
/// Geometry of the afocal telescope; 0.2 dioptres of the eye are an assumption.
#[must_use]
pub fn focus_range_spread_m(magnification: f64, range_m: f64) -> f64 {
    EYE_FOCUS_DIOPTRES * range_m * range_m / (magnification * magnification)
}

/// Sum of products of three columns, in eight strands that every target adds alike.
fn sum_of_products(a: &[f32], b: &[f32], c: &[f32]) -> f32 {
    let n = a.len().min(b.len()).min(c.len());
    let (a, b, c) = (&a[..n], &b[..n], &c[..n]);
    let mut strands = [0.0f32; 8];
    let whole = n / 8 * 8;
    let mut i = 0;
    while i < whole {
        for (k, strand) in strands.iter_mut().enumerate() {
            *strand += a[i + k] * b[i + k] * c[i + k];
        }
        i += 8;
    }
    for k in whole..n {
        strands[k - whole] += a[k] * b[k] * c[k];
    }
    let [s0, s1, s2, s3, s4, s5, s6, s7] = strands;
    ((s0 + s4) + (s1 + s5)) + ((s2 + s6) + (s3 + s7))
}

fn sum(a: &[f32]) -> f32 {
    let mut strands = [0.0f32; 8];
    for chunk in a.chunks(8) {
        for (strand, x) in strands.iter_mut().zip(chunk) {
            *strand += x;
        }
    }
    let [s0, s1, s2, s3, s4, s5, s6, s7] = strands;
    ((s0 + s4) + (s1 + s5)) + ((s2 + s6) + (s3 + s7))
}

/// A group of candidates that share all but span, mark and what costs decide.
#[derive(Clone, Debug)]
struct Group {
    optical: Optical,
    parallax: ParallaxSetting,
    /// Lowest power → top power → candidates.
    lows: Vec<(usize, Vec<Top>)>,
}

/// A top power's index and the candidates that reach it.
type Top = (usize, Vec<u32>);

/// The order in which candidates are put through the tables; depends on no person.
#[derive(Clone, Debug)]
pub struct Plan {
    groups: Vec<Group>,
    marks: Vec<Mark>,
    /// By candidate: index of its mark.
    mark_of: Vec<u32>,
    total: usize,
}

impl Plan {
    /// The plan for a list of candidates whose spans end on [`GRID`].
    #[must_use]
    pub fn of(candidates: &[Candidate]) -> Self {
        let mut order: Vec<u32> = (0..candidates.len() as u32).collect();
        let key = |index: u32| {
            let c = &candidates[index as usize];
            let s = &c.specification;
            let (kind, distance) = match s.parallax {
                ParallaxSetting::Fixed { free_at_m } => (0u8, free_at_m),
                ParallaxSetting::Adjustable { nearest_m } => (1, nearest_m),
            };
            (
                s.objective_mm.to_bits(),
                grade_index(s),
                c.apparent_deg.to_bits(),
                kind,
                distance.to_bits(),
            )
        };
        let ends = |index: u32| {
            let s = &candidates[index as usize].specification;
            (
                grid_index(s.magnification_low),
                grid_index(s.magnification_high),
            )
        };
        order.sort_by_key(|&index| (key(index), ends(index), candidates[index as usize].id));
        let mut groups: Vec<Group> = Vec::new();
        let mut last = None;
        for &index in &order {
            let c = &candidates[index as usize];
            let k = key(index);
            if last != Some(k) {
                groups.push(Group {
                    optical: Optical {
                        objective_mm: c.specification.objective_mm,
                        grade: grade_index(&c.specification),
                        apparent_deg: c.apparent_deg,
                    },
                    parallax: c.specification.parallax,
                    lows: Vec::new(),
                });
                last = Some(k);
            }
            let (low, high) = ends(index);
            if let Some(group) = groups.last_mut() {
                if group.lows.last().is_none_or(|l| l.0 != low) {
                    group.lows.push((low, Vec::new()));
                }
                if let Some((_, highs)) = group.lows.last_mut() {
                    if highs.last().is_none_or(|h| h.0 != high) {
                        highs.push((high, Vec::new()));
                    }
                    if let Some((_, list)) = highs.last_mut() {
                        list.push(index);
                    }
                }
            }
        }
        let mut marks: Vec<Mark> = Vec::new();
        let mark_of = candidates
            .iter()
            .map(|c| {
                let s = &c.specification;
                let mark = Mark::of(s);
                let found = marks.iter().position(|&known| known == mark);
                found.unwrap_or_else(|| {
                    marks.push(mark);
                    marks.len() - 1
                }) as u32
            })
            .collect();
        Self {
            groups,
            marks,
            mark_of,
            total: candidates.len(),
        }
    }
}

/// The share of the occasions that each candidate serves, worked off in steps.
pub struct Coverage<'a> {
    ground: Arc<Ground>,
    candidates: &'a [Candidate],
    plan: &'a Plan,
    next: usize,
    done: usize,
    served: Vec<f32>,
    /// By magnification: steady.
    steady: Vec<Option<Vec<f32>>>,
    /// The eye's part of the present objective and grade, by magnification.
    eye: Vec<Option<Vec<f32>>>,
    eye_for: Option<(u64, usize)>,
    /// Field times steady of an apparent field, by magnification.
    fields: BTreeMap<u64, Vec<Option<Vec<f32>>>>,
    /// Mark columns by (mark, objective, magnification, late).
    marks: BTreeMap<(u32, u32, usize, bool), Vec<f32>>,
    /// Drop columns by (means, late).
    drops: BTreeMap<(Means, bool), Vec<f32>>,
    log_field: BTreeMap<u64, f32>,
    /// Chances of eye reliefs met so far.
    reliefs: Vec<(f64, f32)>,
}

impl<'a> Coverage<'a> {
    /// Nothing covered yet.
    #[must_use]
    pub fn new(ground: Arc<Ground>, candidates: &'a [Candidate], plan: &'a Plan) -> Self {
        Self {
            ground,
            candidates,
            plan,
            next: 0,
            done: 0,
            served: vec![0.0; candidates.len()],
            steady: vec![None; GRID.len()],
            eye: vec![None; GRID.len()],
            eye_for: None,
            fields: BTreeMap::new(),
            marks: BTreeMap::new(),
            drops: BTreeMap::new(),
            log_field: BTreeMap::new(),
            reliefs: Vec::new(),
        }
    }

    /// Whether all candidates are covered.
    #[must_use]
    pub fn is_done(&self) -> bool {
        self.next >= self.plan.groups.len()
    }

    /// Candidates covered so far, of all.
    #[must_use]
    pub fn progress(&self) -> (usize, usize) {
        (self.done, self.plan.total)
    }

    /// Covers at least `budget` more candidates, or what is left.
    pub fn step(&mut self, budget: usize) {
        let until = self.done + budget.max(1);
        while self.done < until && !self.is_done() {
            let plan = self.plan;
            let group = &plan.groups[self.next];
            self.group(group);
            self.next += 1;
        }
    }

    /// Shares served, 0 to 1, in the order of the candidates.
    #[must_use]
    pub fn into_served(self) -> Vec<f32> {
        self.served
    }

    fn eye_column(&mut self, m: usize, optical: Optical) {
        if self.eye[m].is_some() {
            return;
        }
        let ground = Arc::clone(&self.ground);
        let slate = &ground.slate;
        let part = EyePart {
            slate,
            tables: tables(),
            log_factor: told_apart::log_field_factor(),
        };
        let at = At::new(GRID[m], optical.objective_mm, optical.grade, slate);
        let column = (0..slate.count)
            .map(|o| {
                let c = part.chances(o, &at);
                c.told_apart * c.detail * c.aim * c.eye_placed
            })
            .collect();
        self.eye[m] = Some(column);
    }

    fn field_column(&mut self, m: usize, optical: Optical) {
        let ground = Arc::clone(&self.ground);
        let slate = &ground.slate;
        let t = tables();
        let log_magnification = libm::log10(GRID[m]) as f32;
        let steady_column = self.steady[m].get_or_insert_with(|| {
            slate
                .log_room
                .iter()
                .map(|&room| steady::chance(t, room, log_magnification))
                .collect()
        });
        let key = optical.apparent_deg.to_bits();
        let world = &ground.world;
        let log_field = *self
            .log_field
            .entry(key)
            .or_insert_with(|| log_field(optical.apparent_deg, world));
        let columns = self
            .fields
            .entry(key)
            .or_insert_with(|| vec![None; GRID.len()]);
        if columns[m].is_none() {
            columns[m] = Some(
                slate
                    .log_field_need
                    .iter()
                    .zip(steady_column.iter())
                    .map(|(&lack, &steady)| {
                        steady * field::chance(t, lack, log_field, log_magnification)
                    })
                    .collect(),
            );
        }
    }

    fn group(&mut self, group: &Group) {
        let optical = group.optical;
        let eye_for = (optical.objective_mm.to_bits(), optical.grade);
        if self.eye_for != Some(eye_for) {
            self.eye = vec![None; GRID.len()];
            self.eye_for = Some(eye_for);
        }
        let ground = Arc::clone(&self.ground);
        let slate = &ground.slate;
        let (n, late) = (slate.count, slate.late);
        let t = tables();
        let levers: Vec<f32> = slate
            .range_m
            .iter()
            .map(|&range| lever(group.parallax, range))
            .collect();
        // The product over all needs but mark and drop, by magnification.
        let mut products: Vec<Option<(Vec<f32>, [f32; 2])>> = vec![None; GRID.len()];
        let mut running = vec![0.0f32; n];
        let mut served_by_span = vec![0.0f32; n];
        for (low, highs) in &group.lows {
            let low = *low;
            let top = highs.last().map_or(low, |h| h.0);
            for (m, slot) in products.iter_mut().enumerate().take(top + 1).skip(low) {
                if slot.is_some() {
                    continue;
                }
                self.eye_column(m, optical);
                self.field_column(m, optical);
                let at = At::new(GRID[m], optical.objective_mm, optical.grade, slate);
                let eye = self.eye[m].as_deref().unwrap_or(&[]);
                let field = self
                    .fields
                    .get(&optical.apparent_deg.to_bits())
                    .and_then(|columns| columns[m].as_deref())
                    .unwrap_or(&[]);
                let column: Vec<f32> = (0..n)
                    .map(|o| {
                        let error = parallax::error_mm(
                            at.effective_mm,
                            at.magnification,
                            slate.pupil_mm[o],
                            levers[o],
                        );
                        eye[o] * field[o] * parallax::chance(t, error, slate.per_circle[o])
                    })
                    .collect();
                let sums = [sum(&column[..late]), sum(&column[late..])];
                *slot = Some((column, sums));
            }
            running.fill(0.0);
            let mut from = low;
            let mut best = [(low, -1.0f32); 2];
            for (high, list) in highs {
                for (m, slot) in products.iter().enumerate().take(high + 1).skip(from) {
                    if let Some((column, sums)) = slot {
                        for (r, &c) in running.iter_mut().zip(column.iter()) {
                            *r = r.max(c);
                        }
                        for half in 0..2 {
                            if sums[half] > best[half].1 {
                                best[half] = (m, sums[half]);
                            }
                        }
                    }
                }
                from = high + 1;
                let h = ground.left_share as f32;
                for (half, range) in [(0, 0..late), (1, late..n)] {
                    let set = best[half].0;
                    if let Some((column, _)) = &products[set] {
                        for o in range {
                            served_by_span[o] = h * column[o] + (1.0 - h) * running[o];
                        }
                    }
                }
                self.span(optical, &served_by_span, [best[0].0, best[1].0], list);
            }
        }
    }

    /// Puts the marks and means of the candidates of one span on its column.
    fn span(&mut self, optical: Optical, column: &[f32], set: [usize; 2], list: &[u32]) {
        let ground = Arc::clone(&self.ground);
        // Few marks and means are met in one span, many times each.
        let mut known: Vec<((u32, [Means; 2]), f32)> = Vec::with_capacity(16);
        for &index in list {
            let s = &self.candidates[index as usize].specification;
            let mark_index = self.plan.mark_of[index as usize];
            let means = [ground.means(s, set[0]), ground.means(s, set[1])];
            let key = (mark_index, means);
            let share = match known.iter().find(|(k, _)| *k == key) {
                Some(&(_, share)) => share,
                None => {
                    let share = self.share(optical, column, set, mark_index, means);
                    known.push((key, share));
                    share
                }
            };
            self.served[index as usize] = share * self.relief(s.eye_relief_mm);
            self.done += 1;
        }
    }

    /// The share that a span's column keeps under a mark and the means against drop.
    fn share(
        &mut self,
        optical: Optical,
        column: &[f32],
        set: [usize; 2],
        mark_index: u32,
        means: [Means; 2],
    ) -> f32 {
        let ground = Arc::clone(&self.ground);
        let late = ground.slate.late;
        let mark = self.plan.marks[mark_index as usize];
        let mut total = 0.0;
        for (half, range) in [(0usize, 0..late), (1, late..column.len())] {
            if range.is_empty() {
                continue;
            }
            let is_late = half == 0;
            let mark_key = (mark_index, optical.objective_mm as u32, set[half], is_late);
            let mark_column = self.marks.entry(mark_key).or_insert_with(|| {
                mark_column(
                    &ground,
                    &mark,
                    optical.objective_mm,
                    GRID[set[half]],
                    is_late,
                )
            });
            let drop_column = self
                .drops
                .entry((means[half], is_late))
                .or_insert_with(|| ground.drop_column(range.clone(), means[half]));
            total += sum_of_products(&column[range], mark_column, drop_column);
        }
        total / ground.slate.count as f32
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

/// Grade of glass through which the mark is judged: it changes the mark too little to tell.
const MARK_GRADE: usize = 1;

fn mark_chance(
    ground: &Ground,
    mark: &Mark,
    at: &At,
    o: usize,
    seen: (f32, f32),
    log_true: f32,
) -> f32 {
    let s = &ground.slate;
    let lit = match mark.lit {
        Illumination::Unlit => 0.0,
        Illumination::NightFine => s.dim_serves[o],
        Illumination::DayBright => s.bright_serves[o],
        Illumination::Both => s.both_serve[o],
    };
    let log_mar = slate::log_mar(
        s.log_light[o],
        s.log_transmission[MARK_GRADE],
        at.log_exit_pupil,
        s.log_pupil[o],
    );
    mark::chance(
        tables(),
        mark::Asked {
            log_harder: s.log_harder[o],
            log_line_room: s.log_line_room[o],
            log_dot_room: s.log_dot_room[o],
        },
        log_mar,
        seen,
        log_true,
        mark.dot,
        lit,
    )
}

fn mark_column(
    ground: &Ground,
    mark: &Mark,
    objective_mm: f64,
    magnification: f64,
    late: bool,
) -> Vec<f32> {
    let at = At::new(magnification, objective_mm, MARK_GRADE, &ground.slate);
    let seen = mark.log_seen(magnification);
    let log_true = mark.log_true(magnification);
    ground
        .slate
        .half(late)
        .map(|o| mark_chance(ground, mark, &at, o, seen, log_true))
        .collect()
}

/// How one specification serves, need by need.
#[derive(Clone, Debug, PartialEq)]
pub struct Account {
    /// Share served.
    pub served: f64,
    /// Share lost to each cause; with `served` they add up to 1.
    pub lost: Vec<(Cause, f64)>,
    /// Magnification mostly set, late and by day.
    pub set: [f64; 2],
}

/// The magnifications at which a span is judged: the grid within it, and its ends.
fn steps(s: &Specification) -> Vec<f64> {
    let mut list = vec![s.magnification_low];
    list.extend(
        GRID.iter()
            .copied()
            .filter(|&m| m > s.magnification_low + 1e-9 && m < s.magnification_high - 1e-9),
    );
    if s.magnification_high > s.magnification_low + 1e-9 {
        list.push(s.magnification_high);
    }
    list
}

/// Accounts for one specification by the same formulas as [`Coverage`], with every loss
/// booked to its cause.
#[must_use]
pub fn account(ground: &Ground, specification: &Specification) -> Account {
    let slate = &ground.slate;
    let n = slate.count;
    let t = tables();
    let part = EyePart {
        slate,
        tables: t,
        log_factor: told_apart::log_field_factor(),
    };
    let grade = grade_index(specification);
    let log_field = log_field(fits::apparent_field_deg(specification), &ground.world);
    let mags = steps(specification);
    let levers: Vec<f32> = slate
        .range_m
        .iter()
        .map(|&range| lever(specification.parallax, range))
        .collect();
    // Seven chances an occasion and magnification, in the order of CAUSES.
    let mut by_m: Vec<Vec<[f32; 7]>> = Vec::with_capacity(mags.len());
    for &m in &mags {
        let at = At::new(m, specification.objective_mm, grade, slate);
        by_m.push(
            (0..n)
                .map(|o| {
                    let c = part.chances(o, &at);
                    let error = parallax::error_mm(
                        at.effective_mm,
                        at.magnification,
                        slate.pupil_mm[o],
                        levers[o],
                    );
                    [
                        c.told_apart,
                        c.detail,
                        c.aim,
                        c.eye_placed,
                        field::chance(t, slate.log_field_need[o], log_field, at.log_magnification),
                        steady::chance(t, slate.log_room[o], at.log_magnification),
                        parallax::chance(t, error, slate.per_circle[o]),
                    ]
                })
                .collect(),
        );
    }
    let product = |c: &[f32; 7]| {
        // As the tables multiply: eye's part, then field times steady, then parallax.
        let eye = c[0] * c[1] * c[2] * c[3];
        eye * (c[5] * c[4]) * c[6]
    };
    let mark = Mark::of(specification);
    let mut set = [mags[0]; 2];
    let mut set_index = [0usize; 2];
    for half in 0..2 {
        let range = slate.half(half == 0);
        let mut best = -1.0f32;
        for (i, column) in by_m.iter().enumerate() {
            let values: Vec<f32> = column[range.clone()].iter().map(product).collect();
            let total = sum(&values);
            if total > best {
                best = total;
                set_index[half] = i;
                set[half] = mags[i];
            }
        }
    }
    let eye_relief = ground.eye_relief_chance(specification.eye_relief_mm) as f32;
    let h = ground.left_share as f32;
    let mut served = 0.0f64;
    let mut lost = [0.0f64; CAUSES.len()];
    let mut zoom_left = 0.0f64;
    for half in 0..2 {
        let range = slate.half(half == 0);
        let m = set[half];
        let at = At::new(m, specification.objective_mm, MARK_GRADE, slate);
        let seen = mark.log_seen(m);
        let log_true = mark.log_true(m);
        let means = ground.means(specification, grid_index(m));
        for o in range {
            let at_set = product(&by_m[set_index[half]][o]);
            let mut best = (set_index[half], at_set);
            for (i, column) in by_m.iter().enumerate() {
                let p = product(&column[o]);
                if p > best.1 {
                    best = (i, p);
                }
            }
            let mark_c = mark_chance(ground, &mark, &at, o, seen, log_true);
            let drop_c = ground.drop_chance(&ground.occasions[o], means) as f32;
            let rest = mark_c * drop_c * eye_relief;
            let share = f64::from((h * at_set + (1.0 - h) * best.1) * rest);
            served += share;
            zoom_left += f64::from(h * (best.1 - at_set) * rest);
            let unserved = 1.0 - f64::from(best.1 * rest);
            let c = &by_m[best.0][o];
            let all = [
                c[0], c[1], c[2], c[3], c[4], c[5], c[6], mark_c, drop_c, eye_relief,
            ];
            let parts = all.map(|p| -libm::log(f64::from(p).clamp(1e-12, 1.0)));
            let whole: f64 = parts.iter().sum();
            if whole > 0.0 {
                for (slot, part) in lost.iter_mut().zip(parts) {
                    *slot += unserved * part / whole;
                }
            }
        }
    }
    let n = n.max(1) as f64;
    let served = served / n;
    let mut booked: Vec<(Cause, f64)> = CAUSES
        .iter()
        .zip(lost)
        .map(|(&cause, share)| (cause, share / n))
        .collect();
    booked.push((Cause::ZoomLeft, zoom_left / n));
    booked.sort_by(|a, b| b.1.total_cmp(&a.1).then(a.0.cmp(&b.0)));
    Account {
        served,
        lost: booked,
        set,
    }
}

/// Causes in the order of the chances in [`account`].
const CAUSES: [Cause; 10] = [
    Cause::ToldApart,
    Cause::Detail,
    Cause::Aim,
    Cause::EyePlaced,
    Cause::Field,
    Cause::Steady,
    Cause::Parallax,
    Cause::Mark,
    Cause::Drop,
    Cause::EyeRelief,
];

#[cfg(test)]
mod tests {
    use super::*;
    use crate::advice::candidates;
    use crate::need::{answers::Answers, resolve};

    #[test]
    fn tables_and_account_agree() {
        let ground = Arc::new(Ground::new(
            &resolve(&Answers::default()),
            World::MIDDLE,
            512,
        ));
        let all = candidates::all();
        let picked: Vec<Candidate> = all.iter().step_by(997).copied().collect();
        let plan = Plan::of(&picked);
        let mut coverage = Coverage::new(Arc::clone(&ground), &picked, &plan);
        coverage.step(usize::MAX / 2);
        let served = coverage.into_served();
        for (candidate, share) in picked.iter().zip(served) {
            let account = account(&ground, &candidate.specification);
            assert!(
                (account.served - f64::from(share)).abs() < 1e-5,
                "{candidate:?}: {} against {share}",
                account.served
            );
            let sum: f64 = account.served + account.lost.iter().map(|l| l.1).sum::<f64>();
            assert!((sum - 1.0).abs() < 1e-5, "{sum}");
        }
    }
}
