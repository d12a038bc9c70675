//! What an effect is called, how large it is, and what it does as a change.

use super::{joined, key_of, said};
use crate::advice::report::{Effect, Quantity};
use crate::need::answers::Units;
use crate::plain::Gathered;
use crate::t;
use crate::wording::measure::{bullet_mass, height, temperature};
use crate::wording::{about, decimals_for, length_mm, mass, number, range, with_unit};

/// The name of a quantity.
#[must_use]
pub fn quantity_name(quantity: Quantity) -> String {
    said(&format!("quantity-{}", key_of(&quantity)), &[])
}

const METRES_PER_YARD: f64 = 0.9144;

/// A quantity with its unit, and its spread where there is one.
#[must_use]
pub fn quantity_value(quantity: Quantity, value: f64, spread: f64, units: Units) -> String {
    formatted(quantity, value, spread, units, about)
}

/// The same in short, as "12 ± 4 min", for tables and for panels of figures.
#[must_use]
pub fn quantity_short(quantity: Quantity, value: f64, spread: f64, units: Units) -> String {
    formatted(quantity, value, spread, units, |value, spread, unit| {
        let decimals = decimals_for(spread).min(2);
        t!(
            "amount-plus-minus",
            value = number(value, decimals),
            spread = with_unit(spread, decimals, unit)
        )
    })
}

fn formatted(
    quantity: Quantity,
    value: f64,
    spread: f64,
    units: Units,
    uncertain: impl Fn(f64, f64, &str) -> String,
) -> String {
    let imperial = units == Units::Imperial;
    let (factor, unit, decimals) = match quantity {
        Quantity::ServedPoints
        | Quantity::OnIrisPercent
        | Quantity::MassPercentOfRifle
        | Quantity::Percent => (1.0, "%", usize::from(value.abs() < 1.0)),
        Quantity::MinutesTonight => (1.0, "min", usize::from(value.abs() < 2.0)),
        Quantity::SecondsTonight | Quantity::CrossingSeconds => {
            (1.0, "s", usize::from(value.abs() < 5.0))
        }
        Quantity::MassG if spread <= 0.0 => return mass(units, value),
        Quantity::MassG if imperial => (1.0 / 28.349_523_125, "oz", 0),
        Quantity::MassG => (1.0, "g", 0),
        Quantity::PriceBands => {
            return t!("amount-bands", bands = number(value, 1));
        }
        Quantity::FieldAtNearestM | Quantity::FieldMPer100m if imperial => {
            (3.0 / METRES_PER_YARD, "ft", usize::from(value.abs() < 3.0))
        }
        Quantity::FieldAtNearestM | Quantity::FieldMPer100m => {
            (1.0, "m", usize::from(value.abs() < 20.0))
        }
        Quantity::RangeM | Quantity::HeightM if spread <= 0.0 => {
            return if quantity == Quantity::RangeM {
                range(units, value)
            } else {
                height(units, value)
            };
        }
        Quantity::RangeM if imperial => (1.0 / METRES_PER_YARD, "yd", 0),
        Quantity::HeightM if imperial => (3.0 / METRES_PER_YARD, "ft", 0),
        Quantity::RangeM | Quantity::HeightM => (1.0, "m", 0),
        Quantity::UntilMin | Quantity::BeforeSunriseMin | Quantity::LaterMin => {
            (1.0, "min", usize::from(value.abs() < 9.95))
        }
        Quantity::SpeedMS if imperial => (3.0 / METRES_PER_YARD, "ft/s", 0),
        Quantity::SpeedMS => (1.0, "m/s", usize::from(value.abs() < 20.0)),
        Quantity::EnergyJ if imperial => (0.737_562_149, "ft·lb", 0),
        Quantity::EnergyJ => (1.0, "J", usize::from(value.abs() < 20.0)),
        Quantity::FlightSeconds => (1.0, "s", 2),
        Quantity::AngleMrad => (1.0, "mrad", 1),
        Quantity::AngleDeg => {
            return t!(
                "amount-degrees",
                value = number(value, needed_decimals(value, 1))
            );
        }
        Quantity::TorqueNm => (1.0, "N·m", 1),
        Quantity::TorqueInLb => (1.0, "in·lb", 0),
        Quantity::TemperatureC => return temperature(units, value),
        Quantity::WidthM if imperial => (3.0 / METRES_PER_YARD, "ft", 1),
        Quantity::WidthM => (1.0, "m", if value.abs() < 2.0 { 2 } else { 1 }),
        Quantity::VisibilityM if imperial => (1.0 / 1609.344, "mi", usize::from(value < 16_000.0)),
        Quantity::VisibilityM => (0.001, "km", usize::from(value < 9_950.0)),
        Quantity::BulletG => return bullet_mass(units, value),
        Quantity::ExactMm => (1.0, "mm", 2),
        Quantity::DetailAtFarthestMm
        | Quantity::ExitPupilMm
        | Quantity::PupilMm
        | Quantity::CentreHeightMm
        | Quantity::EyeReliefMm
        | Quantity::LengthMm
        | Quantity::WidthMmPer100m
        | Quantity::AngleMmPer100m => {
            if spread <= 0.0 && imperial && quantity == Quantity::LengthMm {
                return length_mm(units, value);
            }
            (1.0, "mm", usize::from(value.abs() < 10.0))
        }
        Quantity::ParallaxCm
        | Quantity::CoveredCm
        | Quantity::CircleCm
        | Quantity::DropCm
        | Quantity::PathCm
        | Quantity::ErrorCm => {
            if imperial {
                (1.0 / 2.54, "in", 1)
            } else {
                (1.0, "cm", usize::from(value.abs() < 10.0))
            }
        }
        Quantity::NeededMrad | Quantity::TravelMrad | Quantity::WobbleMrad => (1.0, "mrad", 1),
        Quantity::RecoilMS if imperial => (3.0 / METRES_PER_YARD, "ft/s", 1),
        Quantity::RecoilMS => (1.0, "m/s", 1),
        Quantity::RecoilJ if imperial => (0.737_562_149, "ft·lb", 0),
        Quantity::RecoilJ => (1.0, "J", 0),
        Quantity::MarkArcmin | Quantity::LineNeededArcmin => (1.0, "′", 1),
        Quantity::LuminanceCdM2 => {
            let decimals = if value < 0.01 {
                4
            } else if value < 1.0 {
                3
            } else {
                1
            };
            (1.0, "cd/m²", decimals)
        }
        Quantity::Magnification => {
            return t!(
                "setting-mag",
                value = number(value, needed_decimals(value, usize::from(value < 10.0)))
            );
        }
        Quantity::ForceKn => (1.0, "kN", 1),
        Quantity::Clicks | Quantity::Nights | Quantity::AgeYears => {
            return number(value, 0);
        }
        Quantity::Contrast | Quantity::Ratio => return number(value, 2),
    };
    let (value, spread) = (value * factor, spread * factor);
    if spread > 0.0 && decimals_for(spread) <= 2 {
        uncertain(value, spread, unit)
    } else {
        with_unit(value, needed_decimals(value, decimals), unit)
    }
}

/// No decimals where they would only be noughts.
fn needed_decimals(value: f64, at_most: usize) -> usize {
    let scale = [1.0, 10.0, 100.0, 1000.0, 10_000.0]
        .get(at_most)
        .copied()
        .unwrap_or(1.0);
    let rounded = (value * scale).round() / scale;
    if (rounded - rounded.round()).abs() < 1e-9 {
        0
    } else {
        at_most
    }
}

/// An amount of money as a part or a multiple of a price band, to the quarter or the half.
#[must_use]
pub fn bands(of: f64) -> String {
    let quarters = (of * 4.0).round();
    match quarters {
        ..=1.0 => t!("bands-quarter"),
        ..=2.0 => t!("bands-half"),
        ..=3.0 => t!("bands-three-quarters"),
        ..=5.0 => t!("bands-one"),
        _ => {
            let halves = (of * 2.0).round() / 2.0;
            t!(
                "bands-many",
                bands = number(halves, usize::from(halves.fract() > 0.0))
            )
        }
    }
}

/// The amount of a change, without its direction.
fn amount(effect: &Effect, units: Units) -> String {
    match effect.quantity {
        Quantity::PriceBands => bands(effect.value.abs()),
        // What is less than a minute is told in seconds, to the ten.
        Quantity::MinutesTonight if effect.value.abs() < 0.95 => quantity_value(
            Quantity::SecondsTonight,
            (6.0 * effect.value.abs()).round() * 10.0,
            0.0,
            units,
        ),
        quantity => quantity_value(quantity, effect.value.abs(), 0.0, units),
    }
}

/// A change of one quantity in short, as in "4 min less".
#[must_use]
pub fn change_short(effect: &Effect, units: Units) -> String {
    if is_nothing(effect) {
        return t!("short-same");
    }
    let amount = amount(effect, units);
    if effect.value > 0.0 {
        t!("short-more", amount = amount)
    } else {
        t!("short-less", amount = amount)
    }
}

/// Less than this is no ounce, g.
const HALF_OUNCE_G: f64 = 14.2;

/// Whether a change is too small to be told to anybody.
fn is_nothing(effect: &Effect) -> bool {
    let least = match effect.quantity {
        Quantity::ServedPoints => 0.45,
        Quantity::MinutesTonight => 0.25,
        Quantity::SecondsTonight => 5.0,
        Quantity::MassG => 8.0,
        Quantity::PriceBands => 0.15,
        Quantity::FieldAtNearestM | Quantity::ParallaxCm | Quantity::CoveredCm => 0.05,
        Quantity::DetailAtFarthestMm => 0.5,
        _ => 0.05,
    };
    effect.value.abs() < least || !effect.value.is_finite()
}

/// A change as a verb and an amount, as in "ends 3 min earlier in the evening"; none where
/// the change is too small to be told.
#[must_use]
pub fn change(effect: &Effect, units: Units) -> Option<String> {
    let is_no_ounce = units == Units::Imperial
        && effect.quantity == Quantity::MassG
        && effect.value.abs() < HALF_OUNCE_G;
    if is_nothing(effect) || is_no_ounce {
        return None;
    }
    let way = if effect.value > 0.0 { "more" } else { "less" };
    let amount = amount(effect, units);
    let key = match effect.quantity {
        Quantity::ServedPoints => "change-served_points",
        Quantity::MinutesTonight | Quantity::SecondsTonight => "change-minutes_tonight",
        Quantity::MassG => "change-mass_g",
        Quantity::MassPercentOfRifle => "change-mass_percent_of_rifle",
        Quantity::CentreHeightMm => "change-centre_height_mm",
        Quantity::PriceBands => "change-price_bands",
        Quantity::DetailAtFarthestMm => "change-detail_at_farthest_mm",
        Quantity::ParallaxCm => "change-parallax_cm",
        Quantity::CoveredCm => "change-covered_cm",
        Quantity::TravelMrad => "change-travel_mrad",
        Quantity::MarkArcmin => "change-mark_arcmin",
        Quantity::FieldAtNearestM | Quantity::FieldMPer100m => {
            let place = if effect.quantity == Quantity::FieldAtNearestM {
                t!("where-nearest")
            } else {
                t!("where-100m")
            };
            return Some(said(
                "change-field",
                &[
                    ("way", way.into()),
                    ("amount", amount.into()),
                    ("where", place.into()),
                ],
            ));
        }
        _ => {
            return Some(said(
                "change-other",
                &[
                    ("way", way.into()),
                    ("name", quantity_name(effect.quantity).into()),
                    ("amount", amount.into()),
                ],
            ));
        }
    };
    Some(said(key, &[("way", way.into()), ("amount", amount.into())]))
}

/// The first few changes that matter, joined; or that there are none.
#[must_use]
pub fn changes(effects: &[Effect], units: Units, at_most: usize) -> String {
    let words: Vec<String> = effects
        .iter()
        .filter_map(|effect| change(effect, units))
        .take(at_most)
        .gathered();
    if words.is_empty() {
        t!("change-nothing")
    } else {
        joined(&words)
    }
}

/// Whether more of a quantity is what one wants.
fn is_welcome(quantity: Quantity) -> bool {
    !matches!(
        quantity,
        Quantity::MassG
            | Quantity::MassPercentOfRifle
            | Quantity::CentreHeightMm
            | Quantity::PriceBands
            | Quantity::DetailAtFarthestMm
            | Quantity::OnIrisPercent
            | Quantity::ParallaxCm
            | Quantity::CoveredCm
            | Quantity::DropCm
            | Quantity::NeededMrad
            | Quantity::WobbleMrad
            | Quantity::ForceKn
            | Quantity::LengthMm
    )
}

/// The changes that are welcome, and those that are not, each joined.
#[must_use]
pub fn gains_and_losses(effects: &[Effect], units: Units) -> (String, String) {
    let side = |welcome: bool| {
        let words: Vec<String> = effects
            .iter()
            .filter(|effect| (effect.value > 0.0) == (is_welcome(effect.quantity) == welcome))
            .filter_map(|effect| change(effect, units))
            .take(3)
            .gathered();
        joined(&words)
    };
    (side(true), side(false))
}

/// The weightiest welcome change and the weightiest unwelcome one.
#[must_use]
pub fn change_first(effects: &[Effect], units: Units) -> (String, String) {
    let side = |welcome: bool| {
        effects
            .iter()
            .filter(|effect| (effect.value > 0.0) == (is_welcome(effect.quantity) == welcome))
            .find_map(|effect| change(effect, units))
            .unwrap_or_default()
    };
    (side(true), side(false))
}
