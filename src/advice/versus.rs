//! This one or that one: two typed sights judged for one shooter.

use super::coverage::{Account, Ground, account};
use super::dusk::{Dusk, Glass};
use super::occasions;
use super::picks::served_spread;
use super::report::{Cause, Element, Figure, LastLight, Quantity};
use super::report_versus::{Contrast, Side, VERSION, Versus};
use super::sayings::case::Case;
use super::world::World;
use crate::need::Need;
use crate::quantity::Estimate;
use crate::sight::field::{apparent_field_of_width_deg, field_at_range_m};
use crate::sight::fits;
use crate::sight::specification::{GlassGrade, Specification};
use crate::sight::typed_line::{TypedSight, Unknown};

/// A detail in the field asks for so many least angles resolved.
const FIELD_RESERVE: f64 = 1.8;
/// Millimetres at one metre that an arc minute spans.
const MM_PER_ARCMIN_M: f64 = core::f64::consts::PI / 10.8;

/// A sight to be judged: as it was typed, or a specification of which everything is known.
#[derive(Clone, Debug, PartialEq)]
pub enum Sight {
    /// As typed.
    Typed(TypedSight),
    /// A pick.
    Known(Specification),
}

impl Sight {
    /// The specification, usual values in the place of what is not known.
    #[must_use]
    pub fn specification(&self) -> Specification {
        match self {
            Self::Typed(typed) => typed.specification(),
            Self::Known(specification) => *specification,
        }
    }

    fn unknown(&self) -> Vec<Unknown> {
        match self {
            Self::Typed(typed) => typed.unknown(),
            // Generic fits know no single piece's mass.
            Self::Known(_) => vec![Unknown::Mass],
        }
    }

    fn typed(&self) -> Option<&TypedSight> {
        match self {
            Self::Typed(typed) => Some(typed),
            Self::Known(_) => None,
        }
    }

    fn knows(&self, element: Unknown) -> bool {
        !self.unknown().contains(&element)
    }
}

/// One sight with everything that is compared.
struct Judged {
    account: Account,
    /// What the glass that is not known may change in the share served.
    served_open: f64,
    specification: Specification,
    latest: Glass,
    minutes: Estimate,
    field_m: Estimate,
    detail_mm: Estimate,
    mass_g: Estimate,
    height_mm: Estimate,
    price: Estimate,
}

/// One shooter, before whom sights are put beside each other.
#[derive(Clone, Debug)]
pub struct Bench {
    ground: Ground,
    dusk: Dusk,
}

/// Two sights beside each other for one shooter: [`Bench::beside`] on a bench of its own.
///
/// # Example
/// ```
/// use scopewright::advice::versus::{Sight, versus};
/// use scopewright::need::{answers::Answers, resolve};
/// use scopewright::sight::typed_line::TypedSight;
/// let typed = |line| TypedSight::parse(line).map(Sight::Typed);
/// let beside = versus(&resolve(&Answers::default()), &typed("8x56")?, &typed("1-6x24")?);
/// assert_eq!(beside.differences.len(), 7);
/// # Ok::<(), scopewright::sight::typed_line::LineProblem>(())
/// ```
#[must_use]
pub fn versus(need: &Need, one: &Sight, other: &Sight) -> Versus {
    Bench::new(need).beside(one, other)
}

impl Bench {
    /// The shooter's occasions and typical evening.
    #[must_use]
    pub fn new(need: &Need) -> Self {
        Self {
            ground: Ground::new(need, World::MIDDLE, occasions::COUNT),
            dusk: Dusk::of(need),
        }
    }

    /// The shooter's typical evening.
    #[must_use]
    pub fn dusk(&self) -> &Dusk {
        &self.dusk
    }

    /// One sight alone, by the same account as [`Bench::beside`].
    #[must_use]
    pub fn alone(&self, sight: &Sight) -> Side {
        let case = Case::on(
            &self.ground.need,
            Some(&sight.specification()),
            self.dusk.clone(),
        );
        side(&case, sight, &judged(&self.ground, &case, sight))
    }

    /// Two sights beside each other.
    ///
    /// The share served by the same account as the candidates; minutes tonight (the typical
    /// evening of [`Dusk`], each sight at the power that serves latest); the field at the
    /// nearest shot at the lowest power; the finest detail told at the farthest shot by day at
    /// the top power, 1.8·MAR·R/M; mass; height of the axis over the rail; price band. Each
    /// difference carries its spread: the pupil and the model, the residuals of the fits, and
    /// the grades, fields and tubes that were not stated.
    ///
    /// # Accuracy
    /// A difference is called decided beyond one standard deviation and beyond what anybody
    /// notices (a percentage point, half a minute, a twentieth of the field or the detail,
    /// 30 g, 2 mm, half a band: assumptions).
    #[must_use]
    pub fn beside(&self, one: &Sight, other: &Sight) -> Versus {
        let need = &self.ground.need;
        let case = |sight: &Sight| Case::on(need, Some(&sight.specification()), self.dusk.clone());
        let cases = [case(one), case(other)];
        let a = judged(&self.ground, &cases[0], one);
        let b = judged(&self.ground, &cases[1], other);
        let dusk = &self.dusk;
        let same = one == other;
        let mut differences = vec![
            served_contrast(&a, &b, same),
            contrast(
                Quantity::MinutesTonight,
                a.minutes.value,
                b.minutes.value,
                minutes_between(dusk, one, other, &a, &b),
                0.5,
            ),
        ];
        for (quantity, first, second, least) in [
            (
                Quantity::FieldAtNearestM,
                a.field_m,
                b.field_m,
                0.05 * a.field_m.value,
            ),
            (
                Quantity::DetailAtFarthestMm,
                a.detail_mm,
                b.detail_mm,
                0.05 * a.detail_mm.value,
            ),
            (Quantity::MassG, a.mass_g, b.mass_g, 30.0),
            (Quantity::CentreHeightMm, a.height_mm, b.height_mm, 2.0),
            (Quantity::PriceBands, a.price, b.price, 0.5),
        ] {
            let spread = if same {
                0.0
            } else {
                (first.spread * first.spread + second.spread * second.spread).sqrt()
            };
            let difference = Estimate::new(second.value - first.value, spread);
            differences.push(contrast(
                quantity,
                first.value,
                second.value,
                difference,
                least,
            ));
        }
        let mut settle = Vec::new();
        for difference in &mut differences {
            if difference.decided || same {
                continue;
            }
            difference.settle = settles(difference.quantity)
                .iter()
                .find(|(_, unknown)| !(one.knows(*unknown) && other.knows(*unknown)))
                .map(|(element, _)| *element);
            if let Some(element) = difference.settle
                && !settle.contains(&element)
            {
                settle.push(element);
            }
        }
        Versus {
            version: VERSION,
            one: side(&cases[0], one, &a),
            other: side(&cases[1], other, &b),
            differences,
            settle,
            nearest_m: cases[0].nearest_m,
            farthest_m: cases[0].farthest_m,
            out_late: dusk.out_late,
        }
    }
}

/// Percentage points served; what is common to both sights (the person, the weather) moves
/// both alike, so that a third of the lesser spread is left, and what their glass leaves open.
fn served_contrast(a: &Judged, b: &Judged, same: bool) -> Contrast {
    let common = served_spread(&a.account).min(served_spread(&b.account)) / 3.0;
    let square = common * common + a.served_open * a.served_open + b.served_open * b.served_open;
    let spread = if same { 0.0 } else { 100.0 * square.sqrt() };
    contrast(
        Quantity::ServedPoints,
        100.0 * a.account.served,
        100.0 * b.account.served,
        Estimate::new(100.0 * (b.account.served - a.account.served), spread),
        1.0,
    )
}

/// What would settle a difference, if it is not known.
fn settles(quantity: Quantity) -> &'static [(Element, Unknown)] {
    match quantity {
        Quantity::ServedPoints | Quantity::MinutesTonight => &[(Element::Grade, Unknown::Grade)],
        Quantity::FieldAtNearestM => &[(Element::FieldLowMPer100m, Unknown::Field)],
        Quantity::MassG => &[
            (Element::MassG, Unknown::Mass),
            (Element::TubeMm, Unknown::Tube),
        ],
        Quantity::CentreHeightMm => &[(Element::TubeMm, Unknown::Tube)],
        Quantity::PriceBands => &[(Element::Grade, Unknown::Grade)],
        _ => &[],
    }
}

fn contrast(
    quantity: Quantity,
    one: f64,
    other: f64,
    difference: Estimate,
    least: f64,
) -> Contrast {
    Contrast {
        quantity,
        one,
        other,
        difference: Figure::from(difference),
        decided: difference.value.abs() > difference.spread.max(least),
        settle: None,
    }
}

/// Minutes by which the other serves longer; a grade that is not known adds half of what the
/// plain and the best glass differ by.
fn minutes_between(dusk: &Dusk, one: &Sight, other: &Sight, a: &Judged, b: &Judged) -> Estimate {
    let gain = dusk.gain_min(&a.latest, &b.latest);
    let mut square = gain.spread * gain.spread;
    for (sight, judged) in [(one, a), (other, b)] {
        if one != other && !sight.knows(Unknown::Grade) {
            let of = |grade: GlassGrade| {
                dusk.minutes_at(dusk.last_cd_m2(&Glass {
                    transmission: fits::transmission_night(grade).value,
                    glare: fits::veiling_glare(grade).value,
                    ..judged.latest
                }))
            };
            let half = 0.5 * (of(GlassGrade::Best) - of(GlassGrade::Basic));
            square += half * half;
        }
    }
    Estimate::new(gain.value, square.sqrt())
}

fn judged(ground: &Ground, case: &Case, sight: &Sight) -> Judged {
    let specification = sight.specification();
    let served = |grade: GlassGrade| {
        account(
            ground,
            &Specification {
                grade,
                ..specification
            },
        )
        .served
    };
    let served_open = if sight.knows(Unknown::Grade) {
        0.0
    } else {
        0.5 * (served(GlassGrade::Best) - served(GlassGrade::Basic)).abs()
    };
    let typed = sight.typed();
    let latest = case.dusk.latest(&specification);

    // A field that is stated holds; else the class may be a step off: 2 degrees of 21.
    let stated = typed.and_then(|typed| typed.field_low_m_per_100m);
    let apparent = stated.map_or_else(
        || fits::apparent_field_deg(&specification),
        |field| apparent_field_of_width_deg(field, specification.magnification_low),
    );
    let field = field_at_range_m(apparent, specification.magnification_low, case.nearest_m);
    let field_share = if sight.knows(Unknown::Field) {
        0.0
    } else {
        0.095
    };

    let mar = case.mar_arcmin(
        case.dusk.day_cd_m2,
        specification.magnification_high,
        specification.objective_mm,
    );
    let detail =
        FIELD_RESERVE * mar * MM_PER_ARCMIN_M * case.farthest_m / specification.magnification_high;

    let fitted = fits::mass_g(&specification);
    let tube_g = if sight.knows(Unknown::Tube) {
        0.0
    } else {
        60.0
    };
    let plane_g = if sight.knows(Unknown::Plane) {
        0.0
    } else {
        40.0
    };
    let mass_g = typed.and_then(|typed| typed.mass_g).map_or(
        Estimate::new(
            fitted.value,
            (fitted.spread * fitted.spread + tube_g * tube_g + plane_g * plane_g).sqrt(),
        ),
        |mass| Estimate::new(mass, 0.0),
    );

    let tube_mm = if sight.knows(Unknown::Tube) { 0.0 } else { 2.0 };
    let price = fits::price_band_index(&specification);
    let grade_bands = if sight.knows(Unknown::Grade) {
        0.0
    } else {
        0.7
    };
    Judged {
        account: account(ground, &specification),
        served_open,
        specification,
        latest,
        minutes: case.dusk.minutes(&latest),
        field_m: Estimate::new(field, field_share * field),
        // The eye's own share is common to both; 4 % each for the sharpness of the piece.
        detail_mm: Estimate::new(detail, 0.04 * detail),
        mass_g,
        // The rim of a bell is known to a millimetre.
        height_mm: Estimate::new(
            case.height.centre_over_rail_mm,
            (0.5 * 0.5 + tube_mm * tube_mm * 0.25_f64).sqrt(),
        ),
        // The fit errs alike for sights that are alike: half of its residual is common.
        price: Estimate::new(
            price.value,
            (0.5 * price.spread * price.spread + grade_bands * grade_bands).sqrt(),
        ),
    }
}

fn side(case: &Case, sight: &Sight, judged: &Judged) -> Side {
    let needed = case.eye_relief.total_mm();
    let rings = case.need.mount.rings_kept_mm.value;
    let specification = &judged.specification;
    Side {
        mag_low: specification.magnification_low,
        mag_high: specification.magnification_high,
        objective_mm: specification.objective_mm,
        tube_mm: specification.tube_mm,
        unknown: sight.unknown().into_iter().map(element).collect(),
        unread: sight
            .typed()
            .map(|typed| typed.unread.clone())
            .unwrap_or_default(),
        mag_late: judged.latest.magnification,
        last_light: LastLight::At {
            minutes: judged.minutes.value,
            spread: judged.minutes.spread,
        },
        served: Some(Figure {
            value: judged.account.served,
            spread: libm::hypot(served_spread(&judged.account), judged.served_open),
        }),
        lost_most_to: judged
            .account
            .lost
            .iter()
            .fold(None, |most: Option<(Cause, f64)>, &(cause, share)| {
                if share > most.map_or(0.005, |(_, before)| before) {
                    Some((cause, share))
                } else {
                    most
                }
            })
            .map(|(cause, _)| cause),
        eye_relief_short_mm: sight
            .knows(Unknown::EyeRelief)
            .then_some(needed - specification.eye_relief_mm)
            .filter(|short| *short > 0.0),
        rings_do_not_fit: sight.knows(Unknown::Tube)
            && rings.is_some_and(|bore| (bore - specification.tube_mm).abs() > 0.05),
    }
}

/// The element of the report for something that was not stated.
#[must_use]
pub fn element(unknown: Unknown) -> Element {
    match unknown {
        Unknown::Tube => Element::TubeMm,
        Unknown::Plane => Element::Plane,
        Unknown::Reticle => Element::Reticle,
        Unknown::Illumination => Element::Illumination,
        Unknown::Parallax => Element::Parallax,
        Unknown::Elevation => Element::Elevation,
        Unknown::Grade => Element::Grade,
        Unknown::Field => Element::FieldLowMPer100m,
        Unknown::EyeRelief => Element::EyeReliefMm,
        Unknown::Mass => Element::MassG,
    }
}
