//! A sight as it is typed or stands on a box, read into what is known and what is not.
//!
//! "3-12x50" is enough. What is stated beside it is read; what is not stays unknown and is
//! named, so that it can be measured; a word that means nothing here is handed back.

use super::reticle::MarkUnit;
use super::specification::{
    Elevation, FieldClass, FocalPlane, GlassGrade, Illumination, ParallaxSetting, ReticleFamily,
    Specification,
};
use crate::filled;
use crate::plain::{self, is_letter, shortest, small};

/// Metres in one yard.
const METRES_PER_YARD: f64 = 0.9144;
/// Grams in one ounce.
const G_PER_OUNCE: f64 = 28.349_523_125;
/// Tubes that are made, mm.
const TUBES_MM: [f64; 7] = [25.4, 26.0, 30.0, 34.0, 35.0, 36.0, 40.0];
/// Powers that a sight may have.
const POWERS: (f64, f64) = (1.0, 100.0);
/// Objectives that a sight may have, mm.
const OBJECTIVES_MM: (f64, f64) = (10.0, 100.0);

/// Distances at which a sight may be free of parallax, m.
const SET_AT_M: (f64, f64) = (1.0, 2000.0);

/// What a typed line says of a sight.
#[derive(Clone, Debug, PartialEq)]
pub struct TypedSight {
    /// Lowest magnification.
    pub magnification_low: f64,
    /// Top magnification; equal to the lowest for a fixed power.
    pub magnification_high: f64,
    /// Objective in mm.
    pub objective_mm: f64,
    /// Tube in mm.
    pub tube_mm: Option<f64>,
    /// Plane of the reticle.
    pub plane: Option<FocalPlane>,
    /// Family of the reticle.
    pub reticle: Option<ReticleFamily>,
    /// Unit of marks or clicks.
    pub unit: Option<MarkUnit>,
    /// Light in the reticle; "lit" alone is read as lit for the night.
    pub illumination: Option<Illumination>,
    /// Parallax: fixed at a distance, or adjustable.
    pub parallax: Option<ParallaxSetting>,
    /// Elevation turret.
    pub elevation: Option<Elevation>,
    /// Grade of glass.
    pub grade: Option<GlassGrade>,
    /// Field at the lowest power, m per 100 m.
    pub field_low_m_per_100m: Option<f64>,
    /// Least eye relief, mm.
    pub eye_relief_mm: Option<f64>,
    /// Mass in g.
    pub mass_g: Option<f64>,
    /// Words that mean nothing here, as typed.
    pub unread: Vec<String>,
}

/// Something that a line left open.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Unknown {
    /// The tube.
    Tube,
    /// The plane of the reticle.
    Plane,
    /// The reticle.
    Reticle,
    /// Light in the reticle.
    Illumination,
    /// Parallax.
    Parallax,
    /// The elevation turret.
    Elevation,
    /// The glass.
    Grade,
    /// The field.
    Field,
    /// The eye relief.
    EyeRelief,
    /// The mass.
    Mass,
}

/// Why a line cannot be read as a sight.
#[derive(Clone, Debug, PartialEq)]
pub enum LineProblem {
    /// Nothing was typed.
    Empty,
    /// No power × objective in it.
    NoSight {
        /// What was typed, shortened.
        typed: String,
    },
    /// More than one sight in it.
    TwoSights {
        /// The first, low power, top power, objective.
        first: (f64, f64, f64),
        /// The second.
        second: (f64, f64, f64),
    },
    /// A power that no sight has.
    Power {
        /// What was read.
        magnification: f64,
        /// The least.
        least: f64,
        /// The most.
        most: f64,
    },
    /// An objective that no sight has.
    Objective {
        /// What was read, mm.
        objective_mm: f64,
        /// The least, mm.
        least_mm: f64,
        /// The most, mm.
        most_mm: f64,
    },
    /// The top power is below the lowest.
    Reversed {
        /// What stands first.
        first: f64,
        /// What stands second.
        second: f64,
    },
    /// Objective first, power second.
    Swapped {
        /// What stands before the ×.
        before: f64,
        /// What stands behind it.
        behind: f64,
    },
    /// One element said twice, differently.
    Contradiction {
        /// The element.
        of: Unknown,
        /// The word at which the second was read.
        word: String,
    },
}

impl core::fmt::Display for LineProblem {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        match self {
            Self::Empty => write!(f, "nothing was typed; a sight reads as in 3-12x50"),
            Self::NoSight { typed } => write!(
                f,
                "\"{typed}\" holds no power x objective; a sight reads as in 3-12x50 or 8x56"
            ),
            Self::TwoSights { first, second } => write!(
                f,
                "two sights in one line, {}-{}x{} and {}-{}x{}; one at a time",
                first.0, first.1, first.2, second.0, second.1, second.2
            ),
            Self::Power {
                magnification,
                least,
                most,
            } => write!(f, "power {magnification} lies outside {least} to {most}"),
            Self::Objective {
                objective_mm,
                least_mm,
                most_mm,
            } => write!(
                f,
                "objective {objective_mm} mm lies outside {least_mm} to {most_mm} mm"
            ),
            Self::Reversed { first, second } => write!(
                f,
                "powers {first}-{second} fall; the lowest stands first, as in {second}-{first}"
            ),
            Self::Swapped { before, behind } => write!(
                f,
                "{before}x{behind} has the objective first; power first, as in {behind}x{before}"
            ),
            Self::Contradiction { of, word } => {
                write!(f, "{of:?} is said twice, differently, at \"{word}\"")
            }
        }
    }
}

impl std::error::Error for LineProblem {}

#[derive(Clone, Debug, PartialEq)]
enum Token {
    Number(f64),
    Word(String),
    Dash,
    Times,
    Slash,
    Break,
}

impl TypedSight {
    /// Reads a line such as "2,5–10 × 50, 30 mm, first plane, mrad, lit, 640 g".
    ///
    /// Full stop or comma as decimal sign, any dash, "x", "×" or "*"; order and spaces do not
    /// matter beside power × objective. Yards, inches, ounces and kilograms are read.
    ///
    /// # Errors
    /// [`LineProblem`] saying what was read, why it cannot be and what would be right.
    ///
    /// # Example
    /// ```
    /// use scopewright::sight::typed_line::{LineProblem, TypedSight};
    /// let sight = TypedSight::parse("2,5–10 × 50, 30 mm, sfp, lit, 540 g").unwrap();
    /// assert_eq!((sight.magnification_low, sight.objective_mm), (2.5, 50.0));
    /// assert_eq!((sight.tube_mm, sight.mass_g), (Some(30.0), Some(540.0)));
    /// assert!(matches!(TypedSight::parse("56x8"), Err(LineProblem::Swapped { .. })));
    /// ```
    pub fn parse(typed: &str) -> Result<Self, LineProblem> {
        let tokens = tokens(typed);
        if tokens.iter().all(|token| *token == Token::Break) {
            return Err(LineProblem::Empty);
        }
        let (core, rest) = core(&tokens, typed)?;
        let mut sight = Self::bare(core)?;
        let mut reader = Reader {
            tokens: &rest,
            at: 0,
        };
        reader.run(&mut sight)?;
        Ok(sight)
    }

    fn bare((low, high, objective): (f64, f64, f64)) -> Result<Self, LineProblem> {
        if low > high {
            return Err(LineProblem::Reversed {
                first: low,
                second: high,
            });
        }
        if high > objective && (POWERS.0..=POWERS.1).contains(&objective) {
            return Err(LineProblem::Swapped {
                before: high,
                behind: objective,
            });
        }
        for magnification in [low, high] {
            if !(POWERS.0..=POWERS.1).contains(&magnification) {
                return Err(LineProblem::Power {
                    magnification,
                    least: POWERS.0,
                    most: POWERS.1,
                });
            }
        }
        if !(OBJECTIVES_MM.0..=OBJECTIVES_MM.1).contains(&objective) {
            return Err(LineProblem::Objective {
                objective_mm: objective,
                least_mm: OBJECTIVES_MM.0,
                most_mm: OBJECTIVES_MM.1,
            });
        }
        Ok(Self {
            magnification_low: low,
            magnification_high: high,
            objective_mm: objective,
            tube_mm: None,
            plane: None,
            reticle: None,
            unit: None,
            illumination: None,
            parallax: None,
            elevation: None,
            grade: None,
            field_low_m_per_100m: None,
            eye_relief_mm: None,
            mass_g: None,
            unread: Vec::new(),
        })
    }

    /// What the line left open, in the order in which a sight is described.
    #[must_use]
    pub fn unknown(&self) -> Vec<Unknown> {
        [
            (Unknown::Tube, self.tube_mm.is_none()),
            (Unknown::Plane, self.plane.is_none()),
            (Unknown::Reticle, self.reticle.is_none()),
            (Unknown::Illumination, self.illumination.is_none()),
            (Unknown::Parallax, self.parallax.is_none()),
            (Unknown::Elevation, self.elevation.is_none()),
            (Unknown::EyeRelief, self.eye_relief_mm.is_none()),
            (Unknown::Field, self.field_low_m_per_100m.is_none()),
            (Unknown::Grade, self.grade.is_none()),
            (Unknown::Mass, self.mass_g.is_none()),
        ]
        .into_iter()
        .filter_map(|(element, open)| open.then_some(element))
        .collect()
    }

    /// The specification, with the trade's usual value for what was not stated.
    ///
    /// Tube: 30 mm from an objective of 42 mm or a zoom of 4 up, else 25.4 (34 from 36× up).
    /// Second plane. Marks in the unit stated, else thick–thin. Unlit. Parallax fixed at 100 m
    /// below 12×, adjustable from 50 m above. Capped, a dial where a unit is stated in the
    /// first plane. Good glass, usual field, 90 mm of eye relief.
    ///
    /// # Source
    /// Common practice, no source.
    #[must_use]
    pub fn specification(&self) -> Specification {
        let zoom = self.magnification_high / self.magnification_low;
        let tube_mm = self.tube_mm.unwrap_or(if self.magnification_high >= 36.0 {
            34.0
        } else if self.objective_mm >= 42.0 || zoom >= 4.0 {
            30.0
        } else {
            25.4
        });
        let marks = self.unit.map(|unit| match unit {
            MarkUnit::Mrad => ReticleFamily::MradMarks,
            MarkUnit::Moa => ReticleFamily::MoaMarks,
        });
        let plane = self.plane.unwrap_or(FocalPlane::Second);
        let eye_relief_mm = self.eye_relief_mm.unwrap_or(90.0);
        Specification {
            magnification_low: self.magnification_low,
            magnification_high: self.magnification_high,
            objective_mm: self.objective_mm,
            tube_mm,
            plane,
            reticle: self.reticle.or(marks).unwrap_or(ReticleFamily::ThickThin),
            illumination: self.illumination.unwrap_or(Illumination::Unlit),
            parallax: self.parallax.unwrap_or(if self.magnification_high < 12.0 {
                ParallaxSetting::Fixed { free_at_m: 100.0 }
            } else {
                ParallaxSetting::Adjustable { nearest_m: 50.0 }
            }),
            elevation: self.elevation.unwrap_or(
                if self.unit.is_some() && plane == FocalPlane::First {
                    Elevation::DialZeroStop
                } else {
                    Elevation::Capped
                },
            ),
            grade: self.grade.unwrap_or(GlassGrade::Good),
            field: self
                .field_low_m_per_100m
                .map_or(FieldClass::Usual, |field| {
                    let apparent =
                        super::field::apparent_field_of_width_deg(field, self.magnification_low);
                    if apparent < 20.0 {
                        FieldClass::Narrow
                    } else if apparent < 22.0 {
                        FieldClass::Usual
                    } else {
                        FieldClass::Wide
                    }
                }),
            eye_relief_mm,
        }
    }
}

/// The tokens of a line, in small letters.
fn tokens(typed: &str) -> Vec<Token> {
    let text: Vec<char> = typed.chars().map(small).take(400).collect();
    let digit = |at: usize| text.get(at).is_some_and(char::is_ascii_digit);
    let mut list = Vec::new();
    let mut at = 0;
    while at < text.len() {
        let c = text[at];
        if c.is_ascii_digit() {
            let start = at;
            while digit(at) {
                at += 1;
            }
            let whole = at - start;
            let sign = text.get(at).copied();
            let mut end = at + 1;
            while digit(end) {
                end += 1;
            }
            let decimals = end - at - 1;
            // A comma is a decimal sign after one digit or before one, else it separates.
            let decimal = decimals > 0
                && (sign == Some('.') || (sign == Some(',') && (whole == 1 || decimals == 1)));
            if decimal {
                at = end;
            }
            let number: String = text[start..at]
                .iter()
                .map(|c| if *c == ',' { '.' } else { *c })
                .collect();
            if let Some(number) = plain::decimal(&number) {
                list.push(Token::Number(number));
            }
            continue;
        }
        at += 1;
        match c {
            '-' | '–' | '—' | '−' | '‐' | '‑' => list.push(Token::Dash),
            '×' | '*' | '✕' => list.push(Token::Times),
            '/' => list.push(Token::Slash),
            '"' | '″' | '”' => list.push(Token::Word("in".into())),
            ',' | ';' | '(' | ')' | ':' | '|' | '+' => list.push(Token::Break),
            // An x between numbers multiplies; it also ends a power, as in "6x".
            'x' if !text.get(at).is_some_and(|next| is_letter(*next)) => {
                list.push(Token::Times);
            }
            c if is_letter(c) => {
                let start = at - 1;
                while text.get(at).is_some_and(|c| is_letter(*c) || *c == '\'') {
                    at += 1;
                }
                list.push(Token::Word(text[start..at].iter().collect()));
            }
            _ => {}
        }
    }
    list
}

type Core = (f64, f64, f64);

/// Power × objective, and what is around it.
fn core(tokens: &[Token], typed: &str) -> Result<(Core, Vec<Token>), LineProblem> {
    let number = |at: usize| match tokens.get(at) {
        Some(Token::Number(number)) => Some(*number),
        _ => None,
    };
    let is = |at: usize, token: &Token| tokens.get(at) == Some(token);
    let word = |at: usize, one: &str| matches!(tokens.get(at), Some(Token::Word(w)) if w == one);
    let mut found: Option<(Core, usize, usize)> = None;
    let mut at = 0;
    while at < tokens.len() {
        let Some(first) = number(at) else {
            at += 1;
            continue;
        };
        // "3x-12x50" is met as well as "3-12x50".
        let dash = if is(at + 1, &Token::Times) && is(at + 2, &Token::Dash) {
            at + 2
        } else {
            at + 1
        };
        let joined = is(dash, &Token::Dash) || word(dash, "to");
        let (low, high, times) = match number(dash + 1) {
            Some(second) if joined => (first, second, dash + 2),
            _ => (first, first, at + 1),
        };
        if !is(times, &Token::Times) {
            at += 1;
            continue;
        }
        let Some(objective) = number(times + 1) else {
            at += 1;
            continue;
        };
        // Objective first, as in 50x3-12.
        if is(times + 2, &Token::Dash)
            && let Some(top) = number(times + 3)
            && top <= first
        {
            return Err(LineProblem::Swapped {
                before: first,
                behind: top,
            });
        }
        let mut end = times + 2;
        if word(end, "mm") {
            end += 1;
        }
        if let Some((before, ..)) = found {
            return Err(LineProblem::TwoSights {
                first: before,
                second: (low, high, objective),
            });
        }
        found = Some(((low, high, objective), at, end));
        at = end;
    }
    let (core, start, end) = found.ok_or_else(|| LineProblem::NoSight {
        typed: typed.trim().chars().take(40).collect(),
    })?;
    let mut rest = tokens[..start].to_vec();
    rest.push(Token::Break);
    rest.extend_from_slice(&tokens[end..]);
    Ok((core, rest))
}

/// Reads what stands beside power × objective.
struct Reader<'a> {
    tokens: &'a [Token],
    at: usize,
}

impl Reader<'_> {
    fn word(&self, ahead: usize) -> &str {
        match self.tokens.get(self.at + ahead) {
            Some(Token::Word(word)) => word,
            _ => "",
        }
    }

    fn number(&self, ahead: usize) -> Option<f64> {
        match self.tokens.get(self.at + ahead) {
            Some(Token::Number(number)) => Some(*number),
            _ => None,
        }
    }

    fn is_dash(&self, ahead: usize) -> bool {
        self.tokens.get(self.at + ahead) == Some(&Token::Dash)
    }

    /// Words from here, dashes skipped.
    fn phrase(&self, words: &[&str]) -> Option<usize> {
        let mut ahead = 0;
        for (index, word) in words.iter().enumerate() {
            if index > 0 && self.is_dash(ahead) {
                ahead += 1;
            }
            if self.word(ahead) != *word {
                return None;
            }
            ahead += 1;
        }
        Some(ahead)
    }

    fn run(&mut self, sight: &mut TypedSight) -> Result<(), LineProblem> {
        while self.at < self.tokens.len() {
            let used = match &self.tokens[self.at] {
                Token::Number(number) => self.after_number(*number, sight)?,
                Token::Word(_) => self.after_word(sight)?,
                _ => 1,
            };
            self.at += used.max(1);
        }
        Ok(())
    }

    /// A distance in m from here at which a sight may be set: how much, and how many tokens.
    fn distance_m(&self, ahead: usize) -> Option<(f64, usize)> {
        let number = self.number(ahead)?;
        let (metres, tokens) = match self.word(ahead + 1) {
            "m" | "metres" | "meters" | "metre" | "meter" => (number, 2),
            "yd" | "yds" | "yard" | "yards" => (number * METRES_PER_YARD, 2),
            _ => (number, 1),
        };
        (SET_AT_M.0..=SET_AT_M.1)
            .contains(&metres)
            .then_some((metres, tokens))
    }

    fn after_number(&self, number: f64, sight: &mut TypedSight) -> Result<usize, LineProblem> {
        // "1-inch" is read as "1 inch".
        let gap = usize::from(self.is_dash(1));
        let unit = self.word(1 + gap).to_owned();
        let used = 2 + gap;
        let slash = self.tokens.get(self.at + used) == Some(&Token::Slash);
        match unit.as_str() {
            "m" | "ft" if slash => {
                let per = self.number(used + 1).unwrap_or(100.0);
                let per_unit = self.word(used + 2);
                let width = if unit == "ft" {
                    number * 0.3048
                } else {
                    number
                };
                let per_m = if per_unit.starts_with('y') {
                    per * METRES_PER_YARD
                } else {
                    per
                };
                let value = width / per_m.max(1.0) * 100.0;
                put(
                    &mut sight.field_low_m_per_100m,
                    value,
                    Unknown::Field,
                    &unit,
                )?;
                return Ok(used + 2 + usize::from(!per_unit.is_empty()));
            }
            "mm" | "in" | "inch" | "inches" => {
                let mm = if unit == "mm" { number } else { number * 25.4 };
                let next = self.word(used);
                if next == "eye" || next == "relief" {
                    put(&mut sight.eye_relief_mm, mm, Unknown::EyeRelief, next)?;
                    return Ok(used + usize::from(next == "eye") + 1);
                }
                if let Some(tube) = TUBES_MM.iter().find(|tube| (*tube - mm).abs() < 0.11) {
                    put(&mut sight.tube_mm, *tube, Unknown::Tube, "tube")?;
                    return Ok(used);
                }
            }
            "g" | "grams" | "gram" => {
                put(&mut sight.mass_g, number, Unknown::Mass, &unit)?;
                return Ok(used);
            }
            "kg" => {
                put(&mut sight.mass_g, 1000.0 * number, Unknown::Mass, &unit)?;
                return Ok(used);
            }
            "oz" | "ounces" => {
                put(
                    &mut sight.mass_g,
                    G_PER_OUNCE * number,
                    Unknown::Mass,
                    &unit,
                )?;
                return Ok(used);
            }
            "st" if number == 1.0 => return self.plane(FocalPlane::First, used, sight),
            "nd" if number == 2.0 => return self.plane(FocalPlane::Second, used, sight),
            "m" | "yd" | "yds" | "yards" if self.word(used) == "parallax" => {
                if let Some((free_at_m, _)) = self.distance_m(0) {
                    put(
                        &mut sight.parallax,
                        ParallaxSetting::Fixed { free_at_m },
                        Unknown::Parallax,
                        &unit,
                    )?;
                    return Ok(used + 1);
                }
            }
            _ => {}
        }
        sight.unread.push(if unit.is_empty() {
            shortest(number)
        } else {
            shortest(number) + " " + &unit
        });
        Ok(if unit.is_empty() { 1 } else { used })
    }

    fn plane(
        &self,
        plane: FocalPlane,
        used: usize,
        sight: &mut TypedSight,
    ) -> Result<usize, LineProblem> {
        put(&mut sight.plane, plane, Unknown::Plane, "plane")?;
        let mut used = used;
        while matches!(self.word(used), "focal" | "image" | "plane") {
            used += 1;
        }
        Ok(used)
    }

    fn after_word(&self, sight: &mut TypedSight) -> Result<usize, LineProblem> {
        use Illumination as I;
        use ReticleFamily as R;
        let word = self.word(0).to_owned();
        for (words, family) in [
            (&["circle", "dot"][..], R::CircleDot),
            (&["dot", "circle"], R::CircleDot),
            (&["thick", "thin"], R::ThickThin),
            (&["three", "post"], R::ThreePost),
            (&["heavy", "night"], R::HeavyNight),
            (&["fine", "crosshair"], R::FineCrosshair),
            (&["fine", "cross"], R::FineCrosshair),
            (&["centre", "dot"], R::CentreDot),
            (&["center", "dot"], R::CentreDot),
            (&["dot"], R::CentreDot),
            (&["post"], R::Post),
            (&["crosshair"], R::ThickThin),
            (&["grid"], R::MarkGrid),
            (&["tree"], R::MarkGrid),
            (&["drop", "marks"], R::HoldMarks),
            (&["hold", "marks"], R::HoldMarks),
        ] {
            if let Some(used) = self.phrase(words) {
                put(&mut sight.reticle, family, Unknown::Reticle, &word)?;
                return Ok(used);
            }
        }
        for (words, light) in [
            (&["not", "lit"][..], I::Unlit),
            (&["not", "illuminated"], I::Unlit),
            (&["non", "illuminated"], I::Unlit),
            (&["unlit"], I::Unlit),
            (&["day", "bright"], I::DayBright),
            (&["daylight", "bright"], I::DayBright),
            (&["night", "fine"], I::NightFine),
            (&["lit"], I::NightFine),
            (&["illuminated"], I::NightFine),
            (&["illumination"], I::NightFine),
            (&["illum"], I::NightFine),
            // "1-6x24i"
            (&["i"], I::NightFine),
        ] {
            if let Some(used) = self.phrase(words) {
                // "lit, day bright": the closer word wins over the plain one.
                let plain = matches!(
                    words,
                    ["lit"] | ["illuminated"] | ["illumination"] | ["illum"]
                );
                if sight.illumination == Some(I::NightFine) && light == I::DayBright {
                    sight.illumination = Some(light);
                } else if !(plain && sight.illumination.is_some_and(|i| i != I::Unlit)) {
                    put(&mut sight.illumination, light, Unknown::Illumination, &word)?;
                }
                return Ok(used);
            }
        }
        for (words, grade) in [
            (&["basic", "glass"][..], GlassGrade::Basic),
            (&["plain", "glass"], GlassGrade::Basic),
            (&["good", "glass"], GlassGrade::Good),
            (&["best", "glass"], GlassGrade::Best),
        ] {
            if let Some(used) = self.phrase(words) {
                put(&mut sight.grade, grade, Unknown::Grade, &word)?;
                return Ok(used);
            }
        }
        for (words, elevation) in [
            (&["zero", "stop"][..], Elevation::DialZeroStop),
            (&["capped"], Elevation::Capped),
            (&["dial"], Elevation::DialZeroStop),
            (&["distance", "ring"], Elevation::RingForLoad),
            (&["ring"], Elevation::RingForLoad),
        ] {
            if let Some(used) = self.phrase(words) {
                put(&mut sight.elevation, elevation, Unknown::Elevation, &word)?;
                return Ok(used);
            }
        }
        match word.as_str() {
            "ffp" => self.plane(FocalPlane::First, 1, sight),
            "sfp" => self.plane(FocalPlane::Second, 1, sight),
            "first" | "front" => self.plane(FocalPlane::First, 1, sight),
            "second" | "rear" => self.plane(FocalPlane::Second, 1, sight),
            "mrad" | "mil" | "mils" => {
                put(&mut sight.unit, MarkUnit::Mrad, Unknown::Reticle, &word)?;
                Ok(1)
            }
            "moa" => {
                put(&mut sight.unit, MarkUnit::Moa, Unknown::Reticle, &word)?;
                Ok(1)
            }
            "parallax" | "adjustable" | "side" | "ao" | "sf" => self.parallax(&word, sight),
            "eye" | "relief" => {
                let from = if self.word(1) == "relief" { 2 } else { 1 };
                match self.number(from) {
                    Some(mm) => {
                        let unit = self.word(from + 1);
                        let mm = if unit.starts_with("in") {
                            25.4 * mm
                        } else {
                            mm
                        };
                        put(&mut sight.eye_relief_mm, mm, Unknown::EyeRelief, &word)?;
                        Ok(from + 1 + usize::from(matches!(unit, "mm" | "in" | "inch" | "inches")))
                    }
                    None => Ok(from),
                }
            }
            "tube" => match self.number(1) {
                Some(mm) => {
                    if let Some(tube) = TUBES_MM.iter().find(|tube| (*tube - mm).abs() < 0.11) {
                        put(&mut sight.tube_mm, *tube, Unknown::Tube, &word)?;
                    } else {
                        sight.unread.push(filled!("tube {}", mm));
                    }
                    Ok(2 + usize::from(self.word(2) == "mm"))
                }
                None => Ok(1),
            },
            // Words that say nothing new.
            "a" | "an" | "and" | "the" | "with" | "mm" | "fixed" | "power" | "zoom" | "sight"
            | "scope" | "riflescope" | "reticle" | "focal" | "image" | "plane" | "at" | "marks"
            | "clicks" | "turret" | "field" | "weight" | "mass" | "glass" | "objective" => Ok(1),
            _ => {
                sight.unread.push(word);
                Ok(1)
            }
        }
    }

    fn parallax(&self, word: &str, sight: &mut TypedSight) -> Result<usize, LineProblem> {
        let mut used = 1;
        let mut adjustable = word != "parallax";
        if word == "side" && !matches!(self.word(1), "focus" | "parallax" | "wheel") {
            sight.unread.push(word.into());
            return Ok(1);
        }
        let mut at_m = None;
        loop {
            match self.word(used) {
                "adjustable" | "adjustment" | "from" => adjustable = true,
                "focus" | "parallax" | "wheel" | "free" | "at" | "set" | "fixed" | "to" => {}
                _ => match self.distance_m(used) {
                    Some((metres, tokens)) if at_m.is_none() => {
                        at_m = Some(metres);
                        used += tokens;
                        continue;
                    }
                    _ => break,
                },
            }
            used += 1;
        }
        let setting = match (adjustable, at_m) {
            (true, nearest) => Some(ParallaxSetting::Adjustable {
                nearest_m: nearest.unwrap_or(50.0),
            }),
            (false, Some(free_at_m)) => Some(ParallaxSetting::Fixed { free_at_m }),
            (false, None) => None,
        };
        if let Some(setting) = setting {
            put(&mut sight.parallax, setting, Unknown::Parallax, word)?;
        }
        Ok(used)
    }
}

/// Puts what was read in its place; said twice the same is no harm.
fn put<T: PartialEq>(
    place: &mut Option<T>,
    value: T,
    of: Unknown,
    word: &str,
) -> Result<(), LineProblem> {
    match place {
        Some(before) if *before != value => Err(LineProblem::Contradiction {
            of,
            word: word.into(),
        }),
        _ => {
            *place = Some(value);
            Ok(())
        }
    }
}
