//! What all pictures of one shooter are told.

use super::aperture::{Beam, eye_aperture};
use super::crossing::{Crossing, ShownField};
use super::dusk_strip::StripRow;
use super::on_rifle::OnRifle;
use super::parallax::Parallax;
use super::sights::{Quarry, Sight, Surroundings};
use super::trajectory::{FlightPicture, Point};
use crate::drawing::dusk::Evening;
use crate::eye::Eye;
use crate::flight::atmosphere::Air;
use crate::flight::{DragFunction, Load, Sighted, Zeroed};
use crate::need::answers::Units;
use crate::plain::Gathered;
use crate::rifle::mounting::{Clearances, TubeLayout};
use crate::sight::ParallaxSetting;
use crate::t;
use crate::wording::{number, range, round_m, velocity};
use std::rc::Rc;

/// A load as it flies, with what is uncertain about it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Flown {
    /// Drag function, ballistic coefficient in lb/in² and muzzle velocity in m/s.
    pub load: Load,
    /// The air.
    pub air: Air,
    /// The zero in m.
    pub zero_m: f64,
    /// Height of the line of sight over the bore in mm.
    pub height_mm: f64,
    /// One standard deviation of the velocity in m/s.
    pub velocity_spread_m_s: f64,
    /// One standard deviation of an estimate of distance, as a share of it.
    pub guess_share: f64,
}

/// One standard deviation of a ballistic coefficient, as a share of it (assumption).
const COEFFICIENT_SHARE: f64 = 0.05;
/// Steps of the paths.
const STEPS: u32 = 80;

impl Flown {
    fn sighted(&self, velocity_m_s: f64, coefficient: f64, to_m: f64) -> Option<Sighted> {
        let load = Load::new(self.load.drag(), coefficient, velocity_m_s).ok()?;
        // The zero stays as it was shot with the mean load.
        let mean = Zeroed::new(self.load, self.air, self.height_mm, self.zero_m).ok()?;
        Some(Zeroed { load, ..mean }.sighted_within(to_m))
    }

    fn mean(&self, to_m: f64) -> Option<Sighted> {
        self.sighted(self.load.muzzle_velocity_m_s(), self.load.bc_lb_in2(), to_m)
    }

    /// How far holds are of use to who shoots at these ranges: the farthest, and where that is
    /// hardly beyond the zero, some way on.
    #[must_use]
    pub fn holds_to_m(&self, (_, usual_m, farthest_m): (f64, f64, f64)) -> f64 {
        if farthest_m < 1.5 * self.zero_m {
            farthest_m.max(2.0 * usual_m)
        } else {
            farthest_m
        }
    }

    /// Holds in mrad under the aim at some ranges beyond the zero, round in the person's own
    /// units, up to a range.
    #[must_use]
    pub fn holds(&self, farthest_m: f64, units: Units) -> Vec<(f64, f64)> {
        let Some(path) = self.mean(farthest_m + 1.0) else {
            return Vec::new();
        };
        let step = if farthest_m > 3.5 * self.zero_m {
            100.0
        } else if farthest_m > 100.0 {
            50.0
        } else {
            10.0
        } * round_m(units);
        (1..)
            .map(|n| f64::from(n) * step)
            .skip_while(|range_m| *range_m <= self.zero_m + 0.2 * step)
            .take_while(|range_m| *range_m <= farthest_m)
            .take(5)
            .map(|range_m| (range_m, path.hold_mrad(range_m)))
            .filter(|(_, hold)| *hold > 0.05)
            .gathered()
    }

    /// The path with its spread: velocity, ballistic coefficient and the estimate of distance.
    #[must_use]
    pub fn path(&self, to_m: f64) -> Rc<Vec<Point>> {
        let (v, bc) = (self.load.muzzle_velocity_m_s(), self.load.bc_lb_in2());
        let beyond_m = to_m * (1.0 + self.guess_share) + 1.0;
        let (Some(mean), Some(slow), Some(blunt)) = (
            self.mean(beyond_m),
            self.sighted(v - self.velocity_spread_m_s, bc, beyond_m),
            self.sighted(v, bc * (1.0 - COEFFICIENT_SHARE), beyond_m),
        ) else {
            return Rc::default();
        };
        let cm = |path: &Sighted, at: f64| 0.1 * path.path_mm(at);
        let point = |n: u32| {
            let range_m = to_m * f64::from(n) / f64::from(STEPS);
            let at = cm(&mean, range_m);
            let parts = [
                cm(&slow, range_m) - at,
                cm(&blunt, range_m) - at,
                cm(&mean, (1.0 + self.guess_share) * range_m) - at,
            ];
            Point {
                range_m,
                path_cm: at,
                spread_cm: parts.iter().map(|part| part * part).sum::<f64>().sqrt(),
            }
        };
        Rc::new((0..=STEPS).map(point).gathered())
    }

    /// Time of flight in s over range in m.
    #[must_use]
    pub fn times_s(&self, to_m: f64) -> Rc<Vec<(f64, f64)>> {
        let Some(path) = self.mean(to_m + 1.0) else {
            return Rc::default();
        };
        Rc::new(
            (0..=STEPS)
                .map(|n| {
                    let range_m = to_m * f64::from(n) / f64::from(STEPS);
                    (range_m, path.at(range_m).time_s)
                })
                .gathered(),
        )
    }

    fn said(&self, units: Units) -> String {
        let drag = match self.load.drag() {
            DragFunction::G1 => "G1",
            DragFunction::G7 => "G7",
        };
        t!(
            "flight-inputs",
            velocity = velocity(units, self.load.muzzle_velocity_m_s()),
            spread = velocity(units, self.velocity_spread_m_s),
            drag = drag,
            coefficient = number(self.load.bc_lb_in2(), 3),
            zero = range(units, self.zero_m),
            height = number(self.height_mm, 0),
            guess = number(100.0 * self.guess_share, 0)
        )
    }
}

/// Everything that the pictures of one shooter are drawn from.
#[derive(Clone)]
pub struct Shown {
    /// The sight.
    pub sight: Rc<Sight>,
    /// A second one.
    pub other: Option<Rc<Sight>>,
    /// What is looked at.
    pub quarry: Rc<Quarry>,
    /// Its length in m.
    pub length_m: f64,
    /// Its speed in m/s, 0 if it stands.
    pub run_m_s: f64,
    /// What surrounds it.
    pub surroundings: Rc<Surroundings>,
    /// The eye.
    pub eye: Eye,
    /// The evening.
    pub evening: Rc<Evening>,
    /// Rows of the strip.
    pub rows: Vec<StripRow>,
    /// Nearest, usual and farthest range in m.
    pub ranges_m: (f64, f64, f64),
    /// Magnification in the last light.
    pub magnification: f64,
    /// Minute at which one stops.
    pub minute: f64,
    /// The load.
    pub flown: Option<Flown>,
    /// Farthest range of the flight's picture in m.
    pub flight_to_m: f64,
    /// Ground luminance in the last light in cd/m².
    pub luminance_cd_m2: f64,
    /// The sight's parallax setting.
    pub parallax: ParallaxSetting,
    /// Length of the sight in mm.
    pub length_mm: f64,
    /// Tube in mm.
    pub tube_mm: f64,
    /// Eye relief in mm.
    pub eye_relief_mm: f64,
    /// What the height has to clear.
    pub clearances: Clearances,
    /// Height of the saddle over the rail in mm.
    pub saddle_mm: f64,
    /// Units.
    pub units: Units,
}

/// Speed at which an animal that stands is shown to cross, in m/s.
const WALK_M_S: f64 = 1.5;

impl Shown {
    /// Holds of the load for the view.
    #[must_use]
    pub fn holds(&self) -> Rc<Vec<(f64, f64)>> {
        Rc::new(
            self.flown
                .map(|flown| flown.holds(flown.holds_to_m(self.ranges_m), self.units))
                .unwrap_or_default(),
        )
    }

    /// The eye's aperture.
    #[must_use]
    pub fn aperture(&self) -> super::picture::Told {
        let beams = std::iter::once(&self.sight)
            .chain(&self.other)
            .map(|sight| Beam {
                name: sight.name.clone(),
                magnification_low: sight.magnification_low,
                magnification_high: sight.magnification_high,
                objective_mm: sight.objective_mm,
            })
            .gathered();
        eye_aperture(beams, self.eye, self.luminance_cd_m2, self.magnification)
    }

    /// Parallax.
    #[must_use]
    pub fn parallax(&self) -> super::picture::Told {
        let (fixed_at_m, adjustable_from_m) = match self.parallax {
            ParallaxSetting::Fixed { free_at_m } => (free_at_m, 10.0),
            ParallaxSetting::Adjustable { nearest_m } => (100.0, nearest_m),
        };
        Parallax {
            objective_mm: self.sight.objective_mm,
            magnification: self.sight.magnification_high,
            fixed_at_m,
            adjustable_from_m,
            // By day: parallax matters where one aims most finely.
            eye_pupil_mm: self.eye.pupil_mm(DAY_CD_M2),
            aiming_circle_cm: self.quarry.aiming_circle_cm,
            ranges_m: (5.0, 2.0 * fixed_at_m, 1500.0),
            units: self.units,
        }
        .told()
    }

    /// The field and a moving animal.
    #[must_use]
    pub fn crossing(&self) -> super::picture::Told {
        let field = |sight: &Rc<Sight>| ShownField {
            name: t!(
                "crossing-at",
                sight = sight.name.clone(),
                power = super::view_words::said_power(sight.magnification_low)
            ),
            apparent_deg: sight.apparent_field_deg,
            magnification: sight.magnification_low,
        };
        Crossing {
            figure: self.quarry.figure.clone(),
            name: self.quarry.name.to_string(),
            length_m: self.length_m,
            run_m_s: if self.run_m_s > 0.0 {
                self.run_m_s
            } else {
                WALK_M_S
            },
            fields: std::iter::once(&self.sight)
                .chain(&self.other)
                .map(field)
                .gathered(),
            flight_s: self
                .flown
                .map(|flown| flown.times_s(CROSSING_TO_M))
                .unwrap_or_default(),
            ranges_m: (
                5.0,
                (0.5 * self.ranges_m.1).clamp(10.0, CROSSING_TO_M),
                CROSSING_TO_M,
            ),
            units: self.units,
        }
        .told()
    }

    /// The flight; none without a load that flies.
    #[must_use]
    pub fn flight(&self) -> Option<super::picture::Told> {
        let flown = self.flown?;
        FlightPicture {
            path: flown.path(self.flight_to_m),
            zero_m: flown.zero_m,
            circle_radius_cm: 0.5 * self.quarry.aiming_circle_cm,
            marks_mrad: self
                .sight
                .reticle
                .marks
                .iter()
                .filter(|mark| mark.windage_mrad == 0.0 && mark.hold_mrad > 0.0)
                .map(|mark| mark.hold_mrad)
                .gathered(),
            unit: self.sight.unit(),
            range_m: self
                .ranges_m
                .2
                .min(2.0 * flown.zero_m)
                .max(0.5 * self.flight_to_m),
            inputs: flown.said(self.units),
            units: self.units,
        }
        .told()
    }

    /// On the rifle.
    #[must_use]
    pub fn on_rifle(&self) -> super::picture::Told {
        OnRifle {
            clearances: self.clearances,
            tube: TubeLayout::typical(self.length_mm, self.sight.objective_mm, self.tube_mm),
            length_mm: self.length_mm,
            eye_relief_mm: self.eye_relief_mm,
            saddle_mm: self.saddle_mm,
            units: self.units,
        }
        .told()
    }
}

/// An overcast day on grass, cd/m².
const DAY_CD_M2: f64 = 300.0;
/// Farthest range at which a moving animal is shown, in m.
const CROSSING_TO_M: f64 = 150.0;
