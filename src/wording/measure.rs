//! Quantities as a person reads them, in metric or imperial units.

use super::number::{decimals_for, number};
use crate::need::answers::{AngleUnit, Answers, Units};
use crate::sight::reticle::MarkUnit;
use crate::sight::turret::MRAD_PER_MOA;
use crate::t;

const METRES_PER_YARD: f64 = 0.9144;
const MM_PER_INCH: f64 = 25.4;
const G_PER_OUNCE: f64 = 28.349_523_125;
const G_PER_GRAIN: f64 = 0.064_798_91;
const KG_PER_POUND: f64 = 0.453_592_37;

/// A value that is uncertain: "about 12 min (give or take 4)"; without a spread the value
/// alone. Both are rounded to what the spread allows.
#[must_use]
pub fn about(value: f64, spread: f64, unit: &str) -> String {
    let decimals = decimals_for(spread);
    if !(spread.is_finite() && spread > 0.0) {
        return with_unit(value, 0, unit);
    }
    t!(
        "measure-about",
        value = with_unit(value, decimals, unit),
        spread = number(spread, decimals)
    )
}

/// A number, a narrow no-break space and a unit.
#[must_use]
pub fn with_unit(value: f64, decimals: usize, unit: &str) -> String {
    // A prime stands at its number.
    let space = if unit == "′" { "" } else { "\u{202F}" };
    format!("{}{space}{unit}", number(value, decimals))
}

/// Minutes, whole.
#[must_use]
pub fn minutes(value_min: f64) -> String {
    t!("measure-minutes", value = number(value_min, 0))
}

/// A range: whole metres or yards.
#[must_use]
pub fn range(units: Units, range_m: f64) -> String {
    let value = number(range_m / round_m(units), 0);
    match units {
        Units::Metric => t!("measure-m", value = value),
        Units::Imperial => t!("measure-yd", value = value),
    }
}

/// The unit in which ranges are told, in m.
#[must_use]
pub fn round_m(units: Units) -> f64 {
    match units {
        Units::Metric => 1.0,
        Units::Imperial => METRES_PER_YARD,
    }
}

/// A small length: tenths of a millimetre below 10, or hundredths of an inch.
#[must_use]
pub fn length_mm(units: Units, mm: f64) -> String {
    match units {
        Units::Metric => t!(
            "measure-mm",
            value = number(mm, usize::from(mm.abs() < 9.95))
        ),
        Units::Imperial => t!("measure-in", value = number(mm / MM_PER_INCH, 2)),
    }
}

/// A length on the target: centimetres or inches, with a decimal below 10.
#[must_use]
pub fn cm(units: Units, cm: f64) -> String {
    let told = |value: f64| number(value, usize::from(value.abs() < 9.95));
    match units {
        Units::Metric => t!("measure-cm", value = told(cm)),
        Units::Imperial => t!("measure-in", value = told(cm * 10.0 / MM_PER_INCH)),
    }
}

/// A field of view as a width in metres or feet at the range in question.
#[must_use]
pub fn field(units: Units, width_m: f64) -> String {
    match units {
        Units::Metric => t!(
            "measure-m",
            value = number(width_m, usize::from(width_m < 19.95))
        ),
        Units::Imperial => t!(
            "measure-ft",
            value = number(width_m / METRES_PER_YARD * 3.0, 0)
        ),
    }
}

/// A height above the sea: whole metres or feet.
#[must_use]
pub fn height(units: Units, height_m: f64) -> String {
    match units {
        Units::Metric => t!("measure-m", value = number(height_m, 0)),
        Units::Imperial => t!(
            "measure-ft",
            value = number(height_m / METRES_PER_YARD * 3.0, 0)
        ),
    }
}

/// The mass of a sight: grams to tens, or ounces.
#[must_use]
pub fn mass(units: Units, mass_g: f64) -> String {
    match units {
        Units::Metric => t!(
            "measure-g",
            value = number((mass_g / 10.0).round() * 10.0, 0)
        ),
        Units::Imperial => t!("measure-oz", value = number(mass_g / G_PER_OUNCE, 0)),
    }
}

/// The mass of a rifle.
#[must_use]
pub fn rifle_mass(units: Units, mass_kg: f64) -> String {
    match units {
        Units::Metric => t!("measure-kg", value = number(mass_kg, 1)),
        Units::Imperial => t!("measure-lb", value = number(mass_kg / KG_PER_POUND, 1)),
    }
}

/// The mass of a bullet or a charge.
#[must_use]
pub fn bullet_mass(units: Units, mass_g: f64) -> String {
    match units {
        Units::Metric => t!(
            "measure-g",
            value = number(mass_g, if mass_g < 1.0 { 2 } else { 1 })
        ),
        Units::Imperial => t!("measure-gr", value = number(mass_g / G_PER_GRAIN, 0)),
    }
}

/// A muzzle velocity.
#[must_use]
pub fn velocity(units: Units, velocity_m_s: f64) -> String {
    match units {
        Units::Metric => t!("measure-m-s", value = number(velocity_m_s, 0)),
        Units::Imperial => t!(
            "measure-fps",
            value = number(velocity_m_s / METRES_PER_YARD * 3.0, 0)
        ),
    }
}

/// A temperature.
#[must_use]
pub fn temperature(units: Units, celsius: f64) -> String {
    match units {
        Units::Metric => t!("measure-celsius", value = number(celsius, 0)),
        Units::Imperial => t!(
            "measure-fahrenheit",
            value = number(celsius * 1.8 + 32.0, 0)
        ),
    }
}

/// A small angle.
#[must_use]
pub fn mrad(angle_mrad: f64) -> String {
    t!("measure-mrad", value = number(angle_mrad, 1))
}

/// The unit that a person counts angles in: the one they named, minutes where yards are read and
/// none is named (common practice, no source).
#[must_use]
pub fn counts_in(answers: &Answers) -> MarkUnit {
    match answers.distance.and_then(|distance| distance.unit) {
        Some(AngleUnit::Moa) => MarkUnit::Moa,
        None if answers.units == Units::Imperial => MarkUnit::Moa,
        _ => MarkUnit::Mrad,
    }
}

/// A small angle in the unit of a reticle's marks.
#[must_use]
pub fn angle(unit: MarkUnit, angle_mrad: f64) -> String {
    match unit {
        MarkUnit::Mrad => mrad(angle_mrad),
        MarkUnit::Moa => t!("measure-moa", value = number(angle_mrad / MRAD_PER_MOA, 1)),
    }
}

/// A price band by its letter's usual price range for the sight alone.
#[must_use]
pub fn price(band: crate::need::answers::PriceBand) -> String {
    use crate::need::answers::PriceBand;
    match band {
        PriceBand::A => t!("price-a"),
        PriceBand::B => t!("price-b"),
        PriceBand::C => t!("price-c"),
        PriceBand::D => t!("price-d"),
        PriceBand::E => t!("price-e"),
    }
}
