//! How much of the occasions a sight covers, by tables that fall apart.
//!
//! For one occasion and one magnification the product of the chances splits into parts that
//! depend on few elements: the eye's part on objective and glass, the field's on the
//! apparent field, the parallax on its setting, the mark on the reticle. Each part is
//! computed once over [`GRID`]; a zoom then takes the best magnification of its span, or the
//! one that it was left at, and a candidate is a product of three columns.

mod cover;
mod lanes;
mod plan;

pub use cover::Coverage;
pub use plan::Plan;

use super::candidates::{GRID, grid_index};
use super::chance::{Tables, tables};
use super::needs::{
    aim, detail, drop, eye_placed, eye_relief, field, mark, mark::Mark, parallax, steady,
    told_apart,
};
use super::occasions::Occasion;
use super::report::Cause;
use super::slate::{self, GRADES, Slate};
use super::world::World;
use crate::flight::cartridges::LoadKind;
use crate::need::answers::{Manner, Muzzle};
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
    let fired = bare + SIGHT_ON_RIFLE_KG.min(0.2 * bare);
    recoil::with_muzzle_device(bare_recoil(need, fired), fired, muzzle_device(need))
}

/// Free recoil of this load from a rifle of so much with its sight, nothing on the muzzle.
pub(crate) fn bare_recoil(need: &Need, fired_kg: f64) -> recoil::Recoil {
    let load = &need.load;
    let gas = match load.kind {
        LoadKind::Slug => GasFactor::Shotgun,
        _ => GasFactor::Rifle,
    };
    recoil::free_recoil(
        load.bullet_g.value.clamp(0.1, 80.0),
        load.muzzle_velocity_m_s.value.value.clamp(50.0, 1600.0),
        load.powder_g.value.clamp(0.0, 20.0),
        fired_kg,
        gas,
    )
}

/// What is on the muzzle.
pub(crate) fn muzzle_device(need: &Need) -> MuzzleDevice {
    match need.rifle.muzzle.value {
        Muzzle::Bare => MuzzleDevice::Bare,
        Muzzle::Moderator => MuzzleDevice::Moderator,
        Muzzle::Brake => MuzzleDevice::Brake,
    }
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
        let log_mar = t.log_mar(log_light + 2.0 * (at.log_exit_pupil - s.log_pupil[o]).min(0.0));
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
    let lit = lit_column(s, mark.lit).map_or(0.0, |column| column[o]);
    let log_mar = slate::log_mar(
        tables(),
        s.log_light[o],
        s.log_transmission[MARK_GRADE],
        at.log_exit_pupil,
        s.log_pupil[o],
    );
    let room = if mark.dot {
        s.log_dot_room[o]
    } else {
        s.log_line_room[o]
    };
    mark::chance(
        tables(),
        mark::needed(log_mar, s.log_harder[o]),
        room,
        seen,
        log_true,
        lit,
    )
}

/// How far each light in a mark serves by itself, occasion by occasion; none without light.
fn lit_column(slate: &Slate, lit: Illumination) -> Option<&[f32]> {
    match lit {
        Illumination::Unlit => None,
        Illumination::NightFine => Some(&slate.dim_serves),
        Illumination::DayBright => Some(&slate.bright_serves),
        Illumination::Both => Some(&slate.both_serve),
    }
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
        // As the tables multiply: what is seen, where the eye is, then field times steady.
        (c[0] * c[1] * c[2]) * (c[3] * c[6]) * (c[5] * c[4])
    };
    let mark = Mark::of(specification);
    let mut set = [mags[0]; 2];
    let mut set_index = [0usize; 2];
    for half in 0..2 {
        let range = slate.half(half == 0);
        let mut best = -1.0f32;
        for (i, column) in by_m.iter().enumerate() {
            let values: Vec<f32> = column[range.clone()].iter().map(product).collect();
            let total = lanes::sum(&values);
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
    crate::plain::sort_by(&mut booked, |a, b| b.1.total_cmp(&a.1).then(a.0.cmp(&b.0)));
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
    use crate::advice::candidates::{self, Candidate};
    use crate::need::{answers::Answers, resolve};
    use std::sync::Arc;

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
        let mut coverage = Coverage::new(Arc::clone(&ground));
        while !coverage.step(&picked, &plan, usize::MAX / 2) {}
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
