//! What all sayings ask of one shooter, computed once.

use crate::advice::costs::Seat;
use crate::advice::coverage::{bare_recoil, muzzle_device};
use crate::advice::dusk::{Dusk, leading};
use crate::advice::needs::drop;
use crate::advice::report::{Effect, Quantity, Saying, SayingKey, Verdict};
use crate::eye::acuity::{image_luminance_cd_m2, minimum_angle_arcmin};
use crate::flight::{Air, Sighted, Zeroed};
use crate::need::Need;
use crate::need::answers::{Glasses, Manner};
use crate::need::shooter::Situation;
use crate::quantity::Estimate;
use crate::rifle::mounting::{Clearances, Height};
use crate::rifle::recoil::{self, EyeReliefCircumstances, EyeReliefNeed, Recoil};
use crate::rifle::steadiness::Position;
use crate::sight::pupil::exit_pupil_mm;
use crate::sight::{
    Elevation, FieldClass, FocalPlane, GlassGrade, Illumination, ParallaxSetting, ReticleFamily,
    Specification, fits,
};

/// Situations with a smaller share do not decide a saying.
const LEAST_SHARE: f64 = 0.05;

/// One shooter's case.
#[derive(Clone, Debug)]
pub(crate) struct Case<'a> {
    pub need: &'a Need,
    pub dusk: Dusk,
    /// The sight the sayings are tested with.
    pub sight: Specification,
    /// It was given, rather than the usual one.
    pub sight_given: bool,
    /// Aiming circle of what is shot at most, mm.
    pub circle_mm: f64,
    /// The smallest circle shot at more than now and then, mm.
    pub smallest_circle_mm: f64,
    /// Nearest range of any situation, m.
    pub nearest_m: f64,
    /// Usual range of what is shot at most, m.
    pub usual_m: f64,
    /// Farthest range of any situation, m.
    pub farthest_m: f64,
    /// Circle shot at from the farthest range, mm.
    pub farthest_circle_mm: f64,
    /// How what is shot at most is shot at.
    pub position: Position,
    /// Everything at targets, from a bench.
    pub bench: bool,
    /// Share of the shots on something that moves.
    pub moving_share: f64,
    /// Width of the field that is needed at `field_range_m`, m.
    pub field_needed_m: f64,
    /// Usual range of what moves, or of what is shot at most, m.
    pub field_range_m: f64,
    /// Speed of what moves, m/s.
    pub run_m_s: f64,
    /// The load zeroed as usual; none if no figure of it makes sense.
    pub flight: Option<Flight>,
    /// Free recoil with the sight on.
    pub recoil: Recoil,
    /// Mass of the rifle with the sight, without a moderator, kg.
    pub rifle_kg: f64,
    /// Recoil without anything on the muzzle.
    pub bare_recoil: Recoil,
    /// Eye relief that recoil and circumstances ask for.
    pub eye_relief: EyeReliefNeed,
    /// Circumstances of the eye relief.
    pub circumstances: EyeReliefCircumstances,
    /// What the mount has to clear with the sight's bell.
    pub clearances: Clearances,
    /// The least height.
    pub height: Height,
    /// Mass of the sight, g.
    pub sight_g: f64,
}

/// The load in the air of the place, zeroed at the usual distance.
#[derive(Clone, Debug)]
pub(crate) struct Flight {
    pub zeroed: Zeroed,
    pub path: Sighted,
    pub air: Air,
    /// The farthest range of the need, within what the load reaches, m.
    pub farthest_m: f64,
}

impl Flight {
    /// The hold at the farthest range in mrad, never below 0.
    pub fn needed_mrad(&self) -> f64 {
        self.path.hold_mrad(self.farthest_m).max(0.0)
    }
}

impl<'a> Case<'a> {
    pub fn of(need: &'a Need, sight: Option<&Specification>) -> Self {
        Self::on(need, sight, Dusk::of(need))
    }

    /// As [`Case::of`] with an evening that is already known.
    pub fn on(need: &'a Need, sight: Option<&Specification>, dusk: Dusk) -> Self {
        let main = leading(need, |_| true);
        let kept = |situation: &&Situation| situation.share >= LEAST_SHARE;
        let sight_given = sight.is_some();
        let sight = sight.copied().unwrap_or_else(|| usual_sight(need));
        let sight_g = fits::mass_g(&sight).value.max(100.0);
        let over = |value: fn(&Situation) -> f64, start: f64, pick: fn(f64, f64) -> f64| {
            need.situations
                .iter()
                .filter(kept)
                .map(value)
                .fold(start, pick)
        };
        let nearest_m = over(|s| s.range.nearest_m, f64::INFINITY, f64::min);
        let nearest_m = if nearest_m.is_finite() {
            nearest_m.max(1.0)
        } else {
            30.0
        };
        let farthest =
            need.situations
                .iter()
                .filter(kept)
                .fold(main, |best: Option<&Situation>, next| match best {
                    Some(b) if b.range.farthest_m >= next.range.farthest_m => best,
                    _ => Some(next),
                });
        let farthest_m = farthest
            .map_or(150.0, |s| s.range.farthest_m)
            .clamp(nearest_m, 3000.0);
        let smallest = over(|s| s.what.aiming_circle_mm(), f64::INFINITY, f64::min);
        let circle_mm = main.map_or(130.0, |s| s.what.aiming_circle_mm());
        let clearances = Seat::of(need).clearances(sight.objective_mm, sight.tube_mm);
        let height = clearances.least_height();
        let flight = flight(need, height.over_bore_mm, farthest_m);
        let rifle_kg = (need.rifle.mass_kg.value.value + 1e-3 * sight_g).max(0.5);
        let bare_recoil = bare_recoil(need, rifle_kg);
        let recoil = recoil::with_muzzle_device(bare_recoil, rifle_kg, muzzle_device(need));
        let circumstances = circumstances(need);
        let running = leading(need, |s| s.moving_share > 0.3);
        Self {
            need,
            dusk,
            sight,
            sight_given,
            circle_mm,
            smallest_circle_mm: if smallest.is_finite() {
                smallest
            } else {
                circle_mm
            },
            nearest_m,
            usual_m: main.map_or(80.0, |s| s.range.usual_m).max(1.0),
            farthest_m,
            farthest_circle_mm: farthest.map_or(circle_mm, |s| s.what.aiming_circle_mm()),
            position: main.map_or(Position::SeatRail, |s| position(s.manner)),
            bench: need
                .situations
                .iter()
                .all(|s| s.what.is_target() && s.manner == Manner::Bench),
            moving_share: need
                .situations
                .iter()
                .map(|s| s.share * s.moving_share)
                .sum(),
            field_needed_m: running.or(main).map_or(2.5, |s| {
                let body_m = 1e-3 * s.what.length_mm();
                if s.what.is_target() {
                    body_m
                } else if s.moving_share > 0.3 {
                    3.0 * body_m
                } else {
                    2.2 * body_m
                }
            }),
            field_range_m: running.or(main).map_or(50.0, |s| s.range.usual_m).max(1.0),
            run_m_s: running.or(main).map_or(8.0, |s| s.what.run_m_s()),
            flight,
            recoil,
            rifle_kg,
            bare_recoil,
            eye_relief: recoil::eye_relief_need(recoil.velocity_m_s, circumstances),
            circumstances,
            clearances,
            height,
            sight_g,
        }
    }

    /// A zoom with nothing special: 2.5–10 × 50 for this rifle, or the sight itself if it is
    /// a zoom.
    pub fn zoom(&self) -> Specification {
        if self.sight.zoom_ratio() >= 2.0 {
            self.sight
        } else {
            Specification {
                magnification_low: 2.5,
                magnification_high: 10.0,
                objective_mm: 50.0,
                ..self.sight
            }
        }
    }

    /// The smallest angle this eye resolves behind a sight, arcmin.
    pub fn mar_arcmin(&self, luminance_cd_m2: f64, magnification: f64, objective_mm: f64) -> f64 {
        let pupil_mm = self.dusk.pupil_mm(luminance_cd_m2).value;
        minimum_angle_arcmin(image_luminance_cd_m2(
            luminance_cd_m2,
            0.9,
            exit_pupil_mm(objective_mm, magnification),
            pupil_mm,
        ))
    }

    /// Luminance of the ground in the last light of this person, or by day without one.
    pub fn late_cd_m2(&self) -> f64 {
        self.dusk.stop_cd_m2
    }
}

/// The sight that stands in where none is given: 2.5–10 × 50, 30 mm tube, second plane,
/// thick–thin, good glass.
fn usual_sight(need: &Need) -> Specification {
    Specification {
        magnification_low: 2.5,
        magnification_high: 10.0,
        objective_mm: 50.0,
        tube_mm: 30.0,
        plane: FocalPlane::Second,
        reticle: ReticleFamily::ThickThin,
        illumination: Illumination::NightFine,
        parallax: ParallaxSetting::Fixed {
            free_at_m: drop::usual_zero_of(need),
        },
        elevation: Elevation::Capped,
        grade: GlassGrade::Good,
        field: FieldClass::Usual,
        eye_relief_mm: 90.0,
    }
}

/// Walking up counts as a single stick, the better of its two halves.
pub(crate) fn position(manner: Manner) -> Position {
    match manner {
        Manner::Bench => Position::Bench,
        Manner::PronePack => Position::PronePack,
        Manner::SeatRail => Position::SeatRail,
        Manner::TwoPointSticks => Position::TwoPointSticks,
        Manner::SingleStick | Manner::WalkingUp => Position::SingleStick,
        Manner::Kneeling => Position::Kneeling,
        Manner::StandingFree => Position::StandingFree,
        Manner::Driven => Position::Swinging,
    }
}

fn circumstances(need: &Need) -> EyeReliefCircumstances {
    let share = |wanted: fn(Glasses) -> bool| -> f64 {
        need.eye
            .glasses
            .value
            .iter()
            .filter(|part| wanted(part.of))
            .map(|part| part.share)
            .sum()
    };
    let prone: f64 = need
        .situations
        .iter()
        .filter(|s| s.manner == Manner::PronePack)
        .map(|s| s.share)
        .sum();
    EyeReliefCircumstances {
        glasses: share(|glasses| glasses != Glasses::NoGlasses) > 0.5,
        thick_frame: share(|glasses| glasses == Glasses::ThickFrame) > 0.5,
        prone: prone > 0.3,
        uphill: false,
    }
}

fn flight(need: &Need, sight_height_mm: f64, farthest_m: f64) -> Option<Flight> {
    let load = drop::load_of(need).ok()?;
    let air = drop::air(need);
    let height_mm = sight_height_mm.clamp(10.0, 200.0);
    let zeroed = [drop::usual_zero_of(need), 25.0, 10.0, 5.0]
        .into_iter()
        .find_map(|zero_m| Zeroed::new(load, air, height_mm, zero_m).ok())?;
    let path = zeroed.sighted_within(farthest_m.max(350.0));
    let farthest_m = farthest_m.min(path.reach_m());
    Some(Flight {
        zeroed,
        path,
        air,
        farthest_m,
    })
}

/// A saying from its parts.
pub(crate) fn saying(key: SayingKey, verdict: Verdict, effects: &[Effect]) -> Saying {
    Saying {
        key,
        verdict,
        effects: effects.to_vec(),
    }
}

/// An effect without a spread.
pub(crate) fn exact(quantity: Quantity, value: f64) -> Effect {
    with_spread(quantity, Estimate::new(value, 0.0))
}

/// An effect with its spread; what is no number is shown as none.
pub(crate) fn with_spread(quantity: Quantity, estimate: Estimate) -> Effect {
    let finite = |value: f64| if value.is_finite() { value } else { 0.0 };
    Effect {
        quantity,
        value: finite(estimate.value),
        spread: finite(estimate.spread),
    }
}

/// True at or above the first limit, half at or above the second, false below.
pub(crate) fn graded(value: f64, true_from: f64, half_from: f64) -> Verdict {
    if value >= true_from {
        Verdict::True
    } else if value >= half_from {
        Verdict::Half
    } else {
        Verdict::False
    }
}

/// True up to the first limit, half up to the second, false above.
pub(crate) fn graded_down(value: f64, true_to: f64, half_to: f64) -> Verdict {
    if value <= true_to {
        Verdict::True
    } else if value <= half_to {
        Verdict::Half
    } else {
        Verdict::False
    }
}
