//! Numbers as people type them: "12,5", "150 yd", "7 lb 2 oz", "¼ in".
//!
//! What was typed becomes a metric value, or a problem that says what was read, why it
//! cannot be and what would be right.

use super::answers::Units;
use crate::plain::{decimal, fixed, small};

/// What a number stands for; decides its units and what makes sense.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Quantity {
    /// Age in years.
    Age,
    /// Diameter of a pupil in mm.
    Pupil,
    /// Distance to the target in m.
    Range,
    /// Minutes after sunset; negative: before.
    Minutes,
    /// Mass of a bullet in g.
    BulletMass,
    /// Mass of a powder charge in g.
    PowderMass,
    /// Muzzle velocity in m/s.
    Velocity,
    /// Ballistic coefficient in lb/in².
    Coefficient,
    /// Mass of a rifle in kg.
    RifleMass,
    /// Length of a barrel in cm.
    BarrelLength,
    /// Radius of a barrel in mm.
    BarrelRadius,
    /// Height of a ring's centre over the rail in mm.
    RingsHeight,
    /// Distance from the middle of one ring to that of the other in mm.
    RingSpacing,
    /// Height of a rail over the receiver.
    RailHeight,
    /// Diameter of an objective or its bell in mm.
    Bell,
    /// Incline of a base in mrad.
    Incline,
    /// An angle at the target in mrad.
    SmallAngle,
    /// A length on paper in cm.
    OnPaper,
    /// Height above the sea in m.
    HeightAboveSea,
    /// Latitude in degrees, north positive.
    Latitude,
    /// Longitude in degrees, east positive.
    Longitude,
    /// Temperature in °C.
    Temperature,
    /// Magnification.
    Magnification,
    /// Mass of a sight in g.
    SightMass,
    /// An amount of money in the person's own currency.
    Money,
}

/// A unit that may be typed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Unit {
    /// No unit belongs to this quantity.
    One,
    /// Years.
    Years,
    /// Minutes of time.
    Minutes,
    /// Hours.
    Hours,
    /// Millimetres.
    Mm,
    /// Centimetres.
    Cm,
    /// Metres.
    M,
    /// Kilometres.
    Km,
    /// Inches.
    Inch,
    /// Feet.
    Foot,
    /// Yards.
    Yard,
    /// Grams.
    G,
    /// Kilograms.
    Kg,
    /// Grains.
    Grain,
    /// Ounces.
    Ounce,
    /// Pounds.
    Pound,
    /// Metres a second.
    MPerS,
    /// Feet a second.
    FtPerS,
    /// Kilometres an hour.
    KmPerH,
    /// Pounds per square inch of section: the customary unit of ballistic coefficients.
    LbPerIn2,
    /// Milliradian.
    Mrad,
    /// Minute of angle.
    Moa,
    /// Degree of angle.
    Degree,
    /// Degree Celsius.
    Celsius,
    /// Degree Fahrenheit.
    Fahrenheit,
}

/// What kind of thing a unit measures.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Dimension {
    One,
    Time,
    Years,
    Length,
    Mass,
    Velocity,
    Coefficient,
    Angle,
    Temperature,
}

const SPELLINGS: &[(&str, Unit)] = &[
    ("x", Unit::One),
    ("×", Unit::One),
    ("times", Unit::One),
    ("eur", Unit::One),
    ("euro", Unit::One),
    ("euros", Unit::One),
    ("€", Unit::One),
    ("$", Unit::One),
    ("£", Unit::One),
    ("usd", Unit::One),
    ("gbp", Unit::One),
    ("chf", Unit::One),
    ("years", Unit::Years),
    ("year", Unit::Years),
    ("yrs", Unit::Years),
    ("yr", Unit::Years),
    ("y", Unit::Years),
    ("yo", Unit::Years),
    ("min", Unit::Minutes),
    ("mins", Unit::Minutes),
    ("minute", Unit::Minutes),
    ("minutes", Unit::Minutes),
    ("h", Unit::Hours),
    ("hr", Unit::Hours),
    ("hour", Unit::Hours),
    ("hours", Unit::Hours),
    ("mm", Unit::Mm),
    ("millimetres", Unit::Mm),
    ("millimeters", Unit::Mm),
    ("cm", Unit::Cm),
    ("centimetres", Unit::Cm),
    ("centimeters", Unit::Cm),
    ("m", Unit::M),
    ("metre", Unit::M),
    ("metres", Unit::M),
    ("meter", Unit::M),
    ("meters", Unit::M),
    ("km", Unit::Km),
    ("in", Unit::Inch),
    ("inch", Unit::Inch),
    ("inches", Unit::Inch),
    ("\"", Unit::Inch),
    ("″", Unit::Inch),
    ("”", Unit::Inch),
    ("''", Unit::Inch),
    ("ft", Unit::Foot),
    ("foot", Unit::Foot),
    ("feet", Unit::Foot),
    ("'", Unit::Foot),
    ("′", Unit::Foot),
    ("’", Unit::Foot),
    ("yd", Unit::Yard),
    ("yds", Unit::Yard),
    ("yard", Unit::Yard),
    ("yards", Unit::Yard),
    ("g", Unit::G),
    ("gram", Unit::G),
    ("grams", Unit::G),
    ("gramme", Unit::G),
    ("grammes", Unit::G),
    ("kg", Unit::Kg),
    ("kgs", Unit::Kg),
    ("kilo", Unit::Kg),
    ("kilos", Unit::Kg),
    ("gr", Unit::Grain),
    ("grs", Unit::Grain),
    ("gn", Unit::Grain),
    ("grain", Unit::Grain),
    ("grains", Unit::Grain),
    ("oz", Unit::Ounce),
    ("ounce", Unit::Ounce),
    ("ounces", Unit::Ounce),
    ("lb", Unit::Pound),
    ("lbs", Unit::Pound),
    ("pound", Unit::Pound),
    ("pounds", Unit::Pound),
    ("m/s", Unit::MPerS),
    ("mps", Unit::MPerS),
    ("ms", Unit::MPerS),
    ("fps", Unit::FtPerS),
    ("ft/s", Unit::FtPerS),
    ("ftps", Unit::FtPerS),
    ("km/h", Unit::KmPerH),
    ("kmh", Unit::KmPerH),
    ("lb/in²", Unit::LbPerIn2),
    ("lb/in2", Unit::LbPerIn2),
    ("mrad", Unit::Mrad),
    ("mil", Unit::Mrad),
    ("mils", Unit::Mrad),
    ("moa", Unit::Moa),
    ("°", Unit::Degree),
    ("deg", Unit::Degree),
    ("degree", Unit::Degree),
    ("degrees", Unit::Degree),
    ("c", Unit::Celsius),
    ("°c", Unit::Celsius),
    ("f", Unit::Fahrenheit),
    ("°f", Unit::Fahrenheit),
];

/// Radians in a minute of angle, in mrad.
const MRAD_PER_MOA: f64 = core::f64::consts::PI / 10.8;
const MRAD_PER_DEGREE: f64 = core::f64::consts::PI / 0.18;

impl Unit {
    fn dimension(self) -> Dimension {
        match self {
            Unit::One => Dimension::One,
            Unit::Years => Dimension::Years,
            Unit::Minutes | Unit::Hours => Dimension::Time,
            Unit::Mm | Unit::Cm | Unit::M | Unit::Km | Unit::Inch | Unit::Foot | Unit::Yard => {
                Dimension::Length
            }
            Unit::G | Unit::Kg | Unit::Grain | Unit::Ounce | Unit::Pound => Dimension::Mass,
            Unit::MPerS | Unit::FtPerS | Unit::KmPerH => Dimension::Velocity,
            Unit::LbPerIn2 => Dimension::Coefficient,
            Unit::Mrad | Unit::Moa | Unit::Degree => Dimension::Angle,
            Unit::Celsius | Unit::Fahrenheit => Dimension::Temperature,
        }
    }

    /// How many base units (m, g, m/s, min, mrad) it has; temperatures apart.
    ///
    /// # Source
    /// International yard and pound of 1959: exact.
    fn size(self) -> f64 {
        match self {
            Unit::Mm => 0.001,
            Unit::Cm => 0.01,
            Unit::Km | Unit::Kg => 1000.0,
            Unit::Inch => 0.0254,
            Unit::Foot | Unit::FtPerS => 0.3048,
            Unit::Yard => 0.9144,
            Unit::Grain => 0.064_798_91,
            Unit::Ounce => 28.349_523_125,
            Unit::Pound => 453.592_37,
            Unit::KmPerH => 1.0 / 3.6,
            Unit::Hours => 60.0,
            Unit::Moa => MRAD_PER_MOA,
            Unit::Degree => MRAD_PER_DEGREE,
            _ => 1.0,
        }
    }

    fn in_base_unit(self, value: f64) -> f64 {
        match self {
            Unit::Fahrenheit => (value - 32.0) / 1.8,
            _ => value * self.size(),
        }
    }

    fn in_own_unit(self, base: f64) -> f64 {
        match self {
            Unit::Fahrenheit => base * 1.8 + 32.0,
            _ => base / self.size(),
        }
    }

    /// How it is written.
    #[must_use]
    pub fn symbol(self) -> &'static str {
        match self {
            Unit::One | Unit::Years => "",
            Unit::Minutes => "min",
            Unit::Hours => "h",
            Unit::Mm => "mm",
            Unit::Cm => "cm",
            Unit::M => "m",
            Unit::Km => "km",
            Unit::Inch => "in",
            Unit::Foot => "ft",
            Unit::Yard => "yd",
            Unit::G => "g",
            Unit::Kg => "kg",
            Unit::Grain => "gr",
            Unit::Ounce => "oz",
            Unit::Pound => "lb",
            Unit::MPerS => "m/s",
            Unit::FtPerS => "ft/s",
            Unit::KmPerH => "km/h",
            Unit::LbPerIn2 => "lb/in²",
            Unit::Mrad => "mrad",
            Unit::Moa => "MOA",
            Unit::Degree => "°",
            Unit::Celsius => "°C",
            Unit::Fahrenheit => "°F",
        }
    }
}

/// One line of the table of quantities: metric unit, imperial unit, least and most (metric),
/// digits after the decimal sign when shown (metric, imperial).
struct Row {
    metric: Unit,
    imperial: Unit,
    least: f64,
    most: f64,
    digits: (usize, usize),
}

impl Quantity {
    #[rustfmt::skip]
    fn row(self) -> Row {
        let row = |metric, imperial, least, most, digits| Row { metric, imperial, least, most, digits };
        match self {
            Quantity::Age => row(Unit::Years, Unit::Years, 8.0, 95.0, (0, 0)),
            Quantity::Pupil => row(Unit::Mm, Unit::Mm, 1.0, 10.0, (1, 1)),
            Quantity::Range => row(Unit::M, Unit::Yard, 1.0, 2000.0, (0, 0)),
            Quantity::Minutes => row(Unit::Minutes, Unit::Minutes, -120.0, 360.0, (0, 0)),
            Quantity::BulletMass => row(Unit::G, Unit::Grain, 0.2, 60.0, (2, 1)),
            Quantity::PowderMass => row(Unit::G, Unit::Grain, 0.0, 20.0, (2, 1)),
            Quantity::Velocity => row(Unit::MPerS, Unit::FtPerS, 80.0, 1400.0, (0, 0)),
            Quantity::Coefficient => row(Unit::LbPerIn2, Unit::LbPerIn2, 0.005, 1.2, (3, 3)),
            Quantity::RifleMass => row(Unit::Kg, Unit::Pound, 1.2, 12.0, (2, 1)),
            Quantity::BarrelLength => row(Unit::Cm, Unit::Inch, 25.0, 90.0, (0, 1)),
            Quantity::BarrelRadius => row(Unit::Mm, Unit::Inch, 4.0, 20.0, (1, 2)),
            Quantity::RingsHeight => row(Unit::Mm, Unit::Inch, 8.0, 80.0, (1, 2)),
            Quantity::RingSpacing => row(Unit::Mm, Unit::Inch, 20.0, 400.0, (0, 2)),
            Quantity::RailHeight => row(Unit::Mm, Unit::Inch, 0.0, 40.0, (1, 2)),
            Quantity::Bell => row(Unit::Mm, Unit::Inch, 15.0, 90.0, (1, 2)),
            Quantity::Incline => row(Unit::Mrad, Unit::Moa, -5.0, 30.0, (1, 0)),
            Quantity::SmallAngle => row(Unit::Mrad, Unit::Moa, -60.0, 60.0, (2, 1)),
            Quantity::OnPaper => row(Unit::Cm, Unit::Inch, -300.0, 300.0, (1, 1)),
            Quantity::HeightAboveSea => row(Unit::M, Unit::Foot, -430.0, 6000.0, (0, 0)),
            Quantity::Latitude => row(Unit::Degree, Unit::Degree, -90.0, 90.0, (1, 1)),
            Quantity::Longitude => row(Unit::Degree, Unit::Degree, -180.0, 180.0, (1, 1)),
            Quantity::Temperature => row(Unit::Celsius, Unit::Fahrenheit, -60.0, 50.0, (0, 0)),
            Quantity::Magnification => row(Unit::One, Unit::One, 1.0, 100.0, (1, 1)),
            Quantity::SightMass => row(Unit::G, Unit::Ounce, 50.0, 3000.0, (0, 0)),
            Quantity::Money => row(Unit::One, Unit::One, 0.0, 1e9, (0, 0)),
        }
    }

    /// The unit it is shown and, without a unit, read in.
    #[must_use]
    pub fn unit(self, units: Units) -> Unit {
        let row = self.row();
        match units {
            Units::Metric => row.metric,
            Units::Imperial => row.imperial,
        }
    }

    /// Least and most that make sense, metric.
    #[must_use]
    pub fn limits(self) -> (f64, f64) {
        let row = self.row();
        (row.least, row.most)
    }

    /// A metric value in the unit a person reads.
    #[must_use]
    pub fn shown(self, units: Units, metric: f64) -> f64 {
        let row = self.row();
        let unit = self.unit(units);
        if self.is_geographic() {
            return metric;
        }
        unit.in_own_unit(row.metric.in_base_unit(metric))
    }

    /// A value in the unit a person reads, metric.
    #[must_use]
    pub fn metric(self, units: Units, shown: f64) -> f64 {
        self.in_metric(self.unit(units), shown)
    }

    /// A value in this unit, metric.
    #[must_use]
    pub fn in_metric(self, unit: Unit, value: f64) -> f64 {
        if self.is_geographic() {
            return value;
        }
        let metric = self.row().metric;
        if unit == metric {
            return value;
        }
        metric.in_own_unit(unit.in_base_unit(value))
    }

    fn is_geographic(self) -> bool {
        matches!(self, Quantity::Latitude | Quantity::Longitude)
    }

    /// A metric value as it stands in the field, without its unit and with a full stop as
    /// decimal sign; reading it back gives the value to the digits shown.
    #[must_use]
    pub fn typed(self, units: Units, metric: f64) -> String {
        let digits = match units {
            Units::Metric => self.row().digits.0,
            Units::Imperial => self.row().digits.1,
        };
        let text = fixed(self.shown(units, metric), digits);
        if text.contains('.') {
            text.trim_end_matches('0').trim_end_matches('.').to_owned()
        } else {
            text
        }
    }
}

/// What was read from a field.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Read {
    /// The value, metric.
    pub metric: f64,
    /// The unit that was typed, or taken for granted.
    pub unit: Unit,
    /// The unit stood in the text.
    pub unit_typed: bool,
}

/// Why a field could not be read.
#[derive(Clone, Debug, PartialEq)]
pub enum InputProblem {
    /// Nothing was typed.
    Empty,
    /// There is no number in it.
    NoNumber {
        /// What was typed.
        typed: String,
    },
    /// A number, and then something that is no unit known here.
    UnknownUnit {
        /// What was typed.
        typed: String,
        /// What stands where a unit should.
        unit: String,
    },
    /// A unit of something else: "150 kg" for a distance.
    OtherUnit {
        /// The unit that was typed.
        unit: Unit,
        /// The unit that would be right.
        wanted: Unit,
    },
    /// "1,250" is 1250 to some and 1.25 to others, and both make sense here.
    Ambiguous {
        /// The one reading.
        thousands: f64,
        /// The other.
        decimal: f64,
        /// The unit both are in.
        unit: Unit,
    },
    /// Makes no sense in the unit taken for granted, but in another: 2700 m/s, meant as ft/s.
    OtherUnitMeant {
        /// The number as read.
        value: f64,
        /// The unit it was read in.
        unit: Unit,
        /// The unit that is probably meant.
        meant: Unit,
        /// What it then is, metric.
        metric: f64,
        /// The metric unit.
        metric_unit: Unit,
    },
    /// Makes no sense.
    OutOfRange {
        /// The value in the unit it was typed in.
        value: f64,
        /// The unit.
        unit: Unit,
        /// The least that makes sense, in that unit.
        least: f64,
        /// The most.
        most: f64,
    },
}

/// Reads a field.
///
/// A comma or a full stop may be the decimal sign, spaces may group thousands; a unit may
/// follow; fractions ("7 1/2", "¼") and sums of units of one kind ("7 lb 2 oz", "5 ft 6") are
/// read.
///
/// # Errors
/// [`InputProblem`], with what was read, why it cannot be and what would be right.
pub fn read(quantity: Quantity, units: Units, typed: &str) -> Result<Read, InputProblem> {
    let text = clean(typed);
    if text.is_empty() {
        return Err(InputProblem::Empty);
    }
    let tokens = tokens(&text).ok_or_else(|| InputProblem::NoNumber {
        typed: shortened(typed),
    })?;
    let assumed = quantity.unit(units);
    let mut sum = 0.0;
    let mut first_unit = None;
    let mut other_reading = None;
    let count = tokens.len();
    for token in &tokens {
        let unit = if token.unit.is_empty() {
            match first_unit {
                None => assumed,
                Some(before) => part_of(before),
            }
        } else {
            unit_of(quantity, &token.unit).ok_or_else(|| InputProblem::UnknownUnit {
                typed: shortened(typed),
                unit: token.unit.clone(),
            })?
        };
        if unit.dimension() != assumed.dimension() {
            return Err(InputProblem::OtherUnit {
                unit,
                wanted: assumed,
            });
        }
        let value = quantity.in_metric(unit, token.value);
        if count > 1 && unit.dimension() == Dimension::Temperature {
            return Err(InputProblem::NoNumber {
                typed: shortened(typed),
            });
        }
        sum += if sum < 0.0 { -value } else { value };
        first_unit.get_or_insert(unit);
        if count == 1 {
            other_reading = token.thousands.map(|thousands| (thousands, unit));
        }
    }
    let unit = first_unit.unwrap_or(assumed);
    let unit_typed = tokens.iter().any(|token| !token.unit.is_empty());
    let (least, most) = quantity.limits();
    let fits = |metric: f64| metric >= least && metric <= most;
    if let Some((thousands, unit)) = other_reading {
        let other = quantity.in_metric(unit, thousands);
        match (fits(sum), fits(other)) {
            (true, true) => {
                return Err(InputProblem::Ambiguous {
                    thousands,
                    decimal: tokens[0].value,
                    unit,
                });
            }
            (false, true) => sum = other,
            _ => {}
        }
    }
    if fits(sum) {
        return Ok(Read {
            metric: sum,
            unit,
            unit_typed,
        });
    }
    let value = in_unit(quantity, unit, sum);
    if !unit_typed && let Some((meant, metric)) = meant(quantity, unit, value) {
        return Err(InputProblem::OtherUnitMeant {
            value,
            unit,
            meant,
            metric,
            metric_unit: quantity.row().metric,
        });
    }
    Err(InputProblem::OutOfRange {
        value,
        unit,
        least: in_unit(quantity, unit, least),
        most: in_unit(quantity, unit, most),
    })
}

fn in_unit(quantity: Quantity, unit: Unit, metric: f64) -> f64 {
    if quantity.is_geographic() || unit == quantity.row().metric {
        return metric;
    }
    unit.in_own_unit(quantity.row().metric.in_base_unit(metric))
}

/// The unit under which a number makes sense that makes none as it stands.
fn meant(quantity: Quantity, unit: Unit, value: f64) -> Option<(Unit, f64)> {
    let candidates: &[Unit] = match quantity {
        Quantity::Velocity => &[Unit::FtPerS, Unit::MPerS],
        Quantity::BulletMass | Quantity::PowderMass => &[Unit::Grain, Unit::G],
        Quantity::RifleMass => &[Unit::Pound, Unit::Kg, Unit::G],
        Quantity::BarrelLength => &[Unit::Inch, Unit::Cm, Unit::Mm],
        Quantity::BarrelRadius
        | Quantity::RingsHeight
        | Quantity::RingSpacing
        | Quantity::RailHeight
        | Quantity::Bell => &[Unit::Mm, Unit::Inch, Unit::Cm],
        Quantity::SightMass => &[Unit::Ounce, Unit::G, Unit::Kg],
        Quantity::Temperature => &[Unit::Fahrenheit, Unit::Celsius],
        Quantity::HeightAboveSea => &[Unit::Foot, Unit::M],
        _ => &[],
    };
    let (least, most) = quantity.limits();
    candidates
        .iter()
        .filter(|candidate| **candidate != unit)
        .map(|candidate| (*candidate, quantity.in_metric(*candidate, value)))
        .find(|(_, metric)| *metric >= least && *metric <= most)
}

/// The next smaller unit for a number without one: "7 lb 2", "5 ft 6".
fn part_of(unit: Unit) -> Unit {
    match unit {
        Unit::Pound => Unit::Ounce,
        Unit::Foot => Unit::Inch,
        Unit::Kg => Unit::G,
        Unit::M => Unit::Cm,
        Unit::Hours => Unit::Minutes,
        other => other,
    }
}

fn unit_of(quantity: Quantity, text: &str) -> Option<Unit> {
    let text = text.trim_end_matches('.');
    // A bare degree sign or a direction belongs to the field's own quantity.
    match (quantity, text) {
        (Quantity::Temperature, "°" | "deg" | "degrees") => return Some(Unit::Celsius),
        (Quantity::Latitude | Quantity::Longitude, "°n" | "n" | "°e" | "e") => {
            return Some(Unit::Degree);
        }
        (Quantity::Velocity, "m" | "meters per second" | "metres per second") => {
            return Some(Unit::MPerS);
        }
        (Quantity::Velocity, "ft" | "feet" | "feet per second") => return Some(Unit::FtPerS),
        (Quantity::Coefficient, "g1" | "g7") => return Some(Unit::LbPerIn2),
        _ => {}
    }
    SPELLINGS
        .iter()
        .find(|(spelling, _)| *spelling == text)
        .map(|(_, unit)| *unit)
}

/// Lower case, one kind of space, no "about".
fn clean(typed: &str) -> String {
    let text: String = typed
        .trim()
        .chars()
        .map(|c| match c {
            '\u{A0}' | '\u{202F}' | '\u{2009}' | '\t' | '\n' | '\r' => ' ',
            '−' | '–' | '—' => '-',
            '⁄' => '/',
            other => other,
        })
        .map(small)
        .collect();
    let mut text = text.as_str();
    for word in [
        "about", "approx.", "approx", "around", "circa", "ca.", "ca", "~", "≈", "€", "$", "£",
    ] {
        if let Some(rest) = text.strip_prefix(word)
            && rest.starts_with(|c: char| c == ' ' || c.is_ascii_digit() || c == '-')
        {
            text = rest.trim_start();
        }
    }
    text.trim().to_owned()
}

fn shortened(typed: &str) -> String {
    let typed = typed.trim();
    if typed.chars().count() <= 40 {
        return typed.to_owned();
    }
    typed.chars().take(39).chain(['…']).collect()
}

#[derive(Debug)]
struct Token {
    value: f64,
    /// The other reading of a single mark before three digits.
    thousands: Option<f64>,
    unit: String,
}

/// Splits into numbers with their units; none if it does not start with a number.
fn tokens(text: &str) -> Option<Vec<Token>> {
    let mut list = Vec::new();
    let mut rest = text;
    while !rest.is_empty() {
        let (number, after) = take_number(rest)?;
        let after = after.trim_start();
        let end = after
            .char_indices()
            .find(|(at, c)| {
                (c.is_ascii_digit() && !(*at > 0 && after[..*at].ends_with(['/', 'n', 'g'])))
                    || vulgar(*c).is_some()
            })
            .map_or(after.len(), |(at, _)| at);
        let unit = after[..end].trim().trim_end_matches([',', ';']).trim();
        list.push(Token {
            value: number.0,
            thousands: number.1,
            unit: unit.to_owned(),
        });
        rest = after[end..].trim_start();
        if list.len() > 3 {
            return None;
        }
    }
    if list.is_empty() { None } else { Some(list) }
}

fn vulgar(c: char) -> Option<f64> {
    Some(match c {
        '½' => 0.5,
        '⅓' => 1.0 / 3.0,
        '⅔' => 2.0 / 3.0,
        '¼' => 0.25,
        '¾' => 0.75,
        '⅛' => 0.125,
        '⅜' => 0.375,
        '⅝' => 0.625,
        '⅞' => 0.875,
        _ => return None,
    })
}

type Number = (f64, Option<f64>);

/// A number at the start: sign, digits with marks, and a fraction behind it.
fn take_number(text: &str) -> Option<(Number, &str)> {
    let (negative, text) = match text.strip_prefix('-') {
        Some(rest) => (true, rest.trim_start()),
        None => (false, text.strip_prefix('+').unwrap_or(text)),
    };
    let sign = if negative { -1.0 } else { 1.0 };
    if let Some(value) = text.chars().next().and_then(vulgar) {
        let rest = &text[text.chars().next().map_or(0, char::len_utf8)..];
        return Some(((sign * value, None), rest));
    }
    let end = text
        .char_indices()
        .find(|(at, c)| {
            !(c.is_ascii_digit()
                || (matches!(c, '.' | ',' | '\'' | ' ') && digit_after(text, *at, *c)))
        })
        .map_or(text.len(), |(at, _)| at);
    let (digits, rest) = text.split_at(end);
    let (mut value, thousands) = plain(digits)?;
    // A fraction: "7 1/2", "1/4", "7½".
    let mut rest = rest;
    if let Some(denominator) = rest.strip_prefix('/') {
        let (bottom, after) = leading_digits(denominator)?;
        // "22 1/2": the last group of digits is the top.
        let (whole, top) = match digits.rsplit_once(' ') {
            Some((whole, top)) => (plain(whole)?.0, decimal(top)?),
            None => (0.0, value),
        };
        if bottom == 0.0 {
            return None;
        }
        value = whole + top / bottom;
        rest = after;
        return Some(((sign * value, None), rest));
    }
    if let Some(c) = rest.trim_start().chars().next()
        && let Some(part) = vulgar(c)
    {
        value += part;
        rest = &rest.trim_start()[c.len_utf8()..];
    }
    Some(((sign * value, thousands.map(|other| sign * other)), rest))
}

fn leading_digits(text: &str) -> Option<(f64, &str)> {
    let end = text
        .find(|c: char| !c.is_ascii_digit())
        .unwrap_or(text.len());
    Some((decimal(&text[..end])?, &text[end..]))
}

/// A mark or a space belongs to the number if a digit follows; a space or an apostrophe only
/// if exactly three follow, or a fraction.
fn digit_after(text: &str, at: usize, mark: char) -> bool {
    let after = &text[at + mark.len_utf8()..];
    let count = after.bytes().take_while(u8::is_ascii_digit).count();
    let then = after.as_bytes().get(count);
    match mark {
        ' ' => (count == 3 && then != Some(&b'/') && at > 0) || (count > 0 && then == Some(&b'/')),
        '\'' => count == 3,
        _ => count > 0 || at > 0,
    }
}

/// Digits with marks: which mark is the decimal sign, and the other reading if unsure.
fn plain(digits: &str) -> Option<Number> {
    let packed: String = digits
        .chars()
        .filter(|c| !matches!(c, ' ' | '\''))
        .collect();
    let marks: Vec<(usize, char)> = packed
        .char_indices()
        .filter(|(_, c)| matches!(c, '.' | ','))
        .collect();
    let parsed = |text: &str| -> Option<f64> {
        let value = decimal(text)?;
        value.is_finite().then_some(value)
    };
    let without = |text: &str| text.replace([',', '.'], "");
    match marks[..] {
        [] => Some((parsed(&packed)?, None)),
        [(at, _)] => {
            let decimal = parsed(&packed.replace(',', "."))?;
            let after = packed.len() - at - 1;
            let maybe_thousands = after == 3 && (1..=3).contains(&at) && !packed.starts_with('0');
            let thousands = if maybe_thousands {
                parsed(&without(&packed))
            } else {
                None
            };
            Some((decimal, thousands))
        }
        _ => {
            let (last, sign) = *marks.last()?;
            let same = marks.iter().all(|(_, c)| *c == sign);
            if same {
                // 1.234.567: all of them group thousands.
                let grouped = packed.split(sign).skip(1).all(|group| group.len() == 3);
                return if grouped {
                    Some((parsed(&without(&packed))?, None))
                } else {
                    None
                };
            }
            let (whole, fraction) = packed.split_at(last);
            let value = parsed(&format!("{}.{}", without(whole), &fraction[1..]))?;
            Some((value, None))
        }
    }
}
