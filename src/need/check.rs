//! What is wrong with a set of answers: every problem with its path, what was read, why it
//! cannot be and what would be right.

use super::answers::{Answers, Ranges, VERSION};
use super::input::Quantity;
use super::quarry::What;
use crate::flight::cartridges;
use crate::plain::Gathered;
use crate::plain::{is_letter, small};

/// Bores of rings that are made, in mm.
pub const RING_BORES_MM: [f64; 7] = [25.4, 26.0, 30.0, 34.0, 35.0, 36.0, 40.0];

/// Longest text that is kept, in characters.
pub const TEXT_MOST: usize = 80;

/// Most entries of a list.
pub const LIST_MOST: usize = 60;

/// Something wrong with one field.
#[derive(Clone, Debug, PartialEq)]
pub struct Problem {
    /// The path of the field, as in `uses[0].share`.
    pub field: String,
    /// What is wrong.
    pub wrong: Wrong,
}

/// What is wrong with a field.
#[derive(Clone, Debug, PartialEq)]
pub enum Wrong {
    /// A version this code does not know.
    Version {
        /// What was read.
        read: u32,
    },
    /// Outside what makes sense.
    OutOfRange {
        /// What was read.
        value: f64,
        /// The least that makes sense.
        least: f64,
        /// The most.
        most: f64,
    },
    /// Not a finite number.
    NotFinite,
    /// A share below 0.
    NegativeShare {
        /// What was read.
        value: f64,
    },
    /// All shares of a list are 0.
    AllZero,
    /// No such animal, target, cartridge or question.
    UnknownKey {
        /// What was read.
        read: String,
        /// The known key that is most like it.
        nearest: Option<&'static str>,
    },
    /// The farthest is nearer than the nearest.
    FarthestNearer {
        /// Nearest in m.
        nearest_m: f64,
        /// Farthest in m.
        farthest_m: f64,
    },
    /// The usual range is not between the two.
    UsualOutside {
        /// Nearest in m.
        nearest_m: f64,
        /// Usual in m.
        usual_m: f64,
        /// Farthest in m.
        farthest_m: f64,
    },
    /// Not one of the values there are.
    NotOffered {
        /// What was read.
        value: f64,
        /// The values there are.
        offered: &'static [f64],
    },
    /// Two fields contradict each other.
    Contradicts {
        /// The other field.
        other: &'static str,
    },
    /// A text or list that is too long.
    TooLong {
        /// How long it is.
        length: usize,
        /// How long it may be.
        most: usize,
    },
}

/// Everything that is wrong with these answers; empty if nothing is.
#[must_use]
pub fn check(answers: &Answers) -> Vec<Problem> {
    let mut found = Found(Vec::new());
    if answers.version != VERSION {
        found.put(
            "version",
            Wrong::Version {
                read: answers.version,
            },
        );
    }
    for (at, key) in answers.not_sure.iter().enumerate() {
        let keys = super::questions::QUESTIONS
            .iter()
            .map(|question| question.key);
        if !keys.clone().any(|known| known == key) {
            found.unknown(format!("not_sure[{at}]"), key, keys);
        }
    }
    found.length("not_sure", answers.not_sure.len(), LIST_MOST);
    check_uses(answers, &mut found);
    check_light(answers, &mut found);
    check_eye_load_rifle(answers, &mut found);
    check_rest(answers, &mut found);
    found.0
}

struct Found(Vec<Problem>);

impl Found {
    fn put(&mut self, field: impl Into<String>, wrong: Wrong) {
        self.0.push(Problem {
            field: field.into(),
            wrong,
        });
    }

    fn number(&mut self, field: impl Into<String>, value: Option<f64>, least: f64, most: f64) {
        let Some(value) = value else { return };
        if !value.is_finite() {
            self.put(field, Wrong::NotFinite);
        } else if value < least || value > most {
            self.put(field, Wrong::OutOfRange { value, least, most });
        }
    }

    fn quantity(&mut self, field: impl Into<String>, value: Option<f64>, quantity: Quantity) {
        let (least, most) = quantity.limits();
        self.number(field, value, least, most);
    }

    fn length(&mut self, field: impl Into<String>, length: usize, most: usize) {
        if length > most {
            self.put(field, Wrong::TooLong { length, most });
        }
    }

    fn unknown(&mut self, field: String, read: &str, known: impl Iterator<Item = &'static str>) {
        let read: String = read.chars().take(TEXT_MOST).collect();
        let nearest = nearest(&read, known);
        self.put(field, Wrong::UnknownKey { read, nearest });
    }

    fn shares(&mut self, list: &str, field: &str, shares: &[f64]) {
        for (at, share) in shares.iter().enumerate() {
            let path = format!("{list}[{at}].{field}");
            if !share.is_finite() {
                self.put(path, Wrong::NotFinite);
            } else if *share < 0.0 {
                self.put(path, Wrong::NegativeShare { value: *share });
            } else if *share > 1e6 {
                self.put(
                    path,
                    Wrong::OutOfRange {
                        value: *share,
                        least: 0.0,
                        most: 1e6,
                    },
                );
            }
        }
        if !shares.is_empty() && shares.iter().all(|share| *share == 0.0) {
            self.put(list, Wrong::AllZero);
        }
        self.length(list, shares.len(), LIST_MOST);
    }

    fn ranges(&mut self, field: &str, ranges: Option<Ranges>) {
        let Some(ranges) = ranges else { return };
        let before = self.0.len();
        for (name, value) in [
            ("nearest_m", ranges.nearest_m),
            ("usual_m", ranges.usual_m),
            ("farthest_m", ranges.farthest_m),
        ] {
            self.quantity(format!("{field}.{name}"), Some(value), Quantity::Range);
        }
        if self.0.len() > before {
            return;
        }
        let Ranges {
            nearest_m,
            usual_m,
            farthest_m,
        } = ranges;
        if farthest_m < nearest_m {
            self.put(
                field,
                Wrong::FarthestNearer {
                    nearest_m,
                    farthest_m,
                },
            );
        } else if usual_m < nearest_m || usual_m > farthest_m {
            self.put(
                field,
                Wrong::UsualOutside {
                    nearest_m,
                    usual_m,
                    farthest_m,
                },
            );
        }
    }
}

/// The known key most like what was read: the fewest changes of a letter, at most a third.
fn nearest(read: &str, known: impl Iterator<Item = &'static str>) -> Option<&'static str> {
    let plain: String = read
        .chars()
        .map(small)
        .map(|c| {
            if is_letter(c) || c.is_ascii_digit() {
                c
            } else {
                '_'
            }
        })
        .collect();
    known
        .map(|key| {
            let distance =
                if !plain.is_empty() && (key.starts_with(&plain) || plain.starts_with(key)) {
                    1
                } else {
                    changes(&plain, key)
                };
            (distance, key)
        })
        .filter(|(distance, key)| distance * 3 <= key.len())
        .min()
        .map(|(_, key)| key)
}

/// Levenshtein distance.
fn changes(a: &str, b: &str) -> usize {
    let b: Vec<char> = b.chars().gathered();
    let mut row: Vec<usize> = (0..=b.len()).gathered();
    for (i, x) in a.chars().enumerate() {
        let mut diagonal = row[0];
        row[0] = i + 1;
        for (j, y) in b.iter().enumerate() {
            let change = diagonal + usize::from(x != *y);
            diagonal = row[j + 1];
            row[j + 1] = change.min(row[j] + 1).min(diagonal + 1);
        }
    }
    row[b.len()]
}

fn check_uses(answers: &Answers, found: &mut Found) {
    for (at, each) in answers.uses.iter().enumerate() {
        if What::from_key(&each.what).is_none() {
            found.unknown(
                format!("uses[{at}].what"),
                &each.what,
                What::all().map(What::key),
            );
        }
        found.ranges(&format!("uses[{at}].ranges"), each.ranges);
    }
    let shares: Vec<f64> = answers.uses.iter().map(|each| each.share).gathered();
    found.shares("uses", "share", &shares);
    let shares: Vec<f64> = answers.manners.iter().map(|each| each.share).gathered();
    found.shares("manners", "share", &shares);
    for (at, each) in answers.manners.iter().enumerate() {
        found.ranges(&format!("manners[{at}].ranges"), each.ranges);
    }
    found.ranges("ranges", answers.ranges);
}

fn check_light(answers: &Answers, found: &mut Found) {
    let Some(light) = &answers.light else { return };
    found.quantity(
        "light.minutes_after_sunset",
        light.minutes_after_sunset,
        Quantity::Minutes,
    );
    let shares: Vec<f64> = light.cover.iter().map(|each| each.share).gathered();
    found.shares("light.cover", "share", &shares);
    found.number("light.snow", Some(light.snow), 0.0, 1.0);
    // From the inner city to the darkest sky there is.
    found.number("light.town_glow_mag", light.town_glow_mag, 14.0, 22.5);
    // From fog in which no shot is told apart to the clearest mountain air.
    found.number("light.visibility_km", light.visibility_km, 0.1, 300.0);
}

fn check_eye_load_rifle(answers: &Answers, found: &mut Found) {
    if let Some(eye) = &answers.eye {
        found.quantity("eye.age_years", eye.age_years, Quantity::Age);
        found.quantity("eye.dark_pupil_mm", eye.dark_pupil_mm, Quantity::Pupil);
    }
    if let Some(load) = &answers.load {
        if let Some(key) = &load.cartridge
            && cartridges::by_key(key).is_none()
        {
            found.unknown(
                "load.cartridge".to_owned(),
                key,
                cartridges::typical_loads().iter().map(|load| load.key),
            );
        }
        found.quantity("load.bullet_g", load.bullet_g, Quantity::BulletMass);
        found.quantity(
            "load.muzzle_velocity_m_s",
            load.muzzle_velocity_m_s,
            Quantity::Velocity,
        );
        found.quantity(
            "load.bc_g1_lb_in2",
            load.bc_g1_lb_in2,
            Quantity::Coefficient,
        );
        found.quantity(
            "load.bc_g7_lb_in2",
            load.bc_g7_lb_in2,
            Quantity::Coefficient,
        );
        found.quantity("load.powder_g", load.powder_g, Quantity::PowderMass);
    }
    if let Some(rifle) = &answers.rifle {
        found.quantity("rifle.mass_kg", rifle.mass_kg, Quantity::RifleMass);
        found.quantity("rifle.barrel_cm", rifle.barrel_cm, Quantity::BarrelLength);
        found.quantity(
            "rifle.barrel_radius_at_bell_mm",
            rifle.barrel_radius_at_bell_mm,
            Quantity::BarrelRadius,
        );
    }
}

fn check_rest(answers: &Answers, found: &mut Found) {
    if let Some(mount) = &answers.mount {
        if let Some(bore) = mount.rings_kept_mm {
            if !RING_BORES_MM.contains(&bore) {
                found.put(
                    "mount.rings_kept_mm",
                    if bore.is_finite() {
                        Wrong::NotOffered {
                            value: bore,
                            offered: &RING_BORES_MM,
                        }
                    } else {
                        Wrong::NotFinite
                    },
                );
            }
            if mount.no_rings {
                found.put(
                    "mount.no_rings",
                    Wrong::Contradicts {
                        other: "mount.rings_kept_mm",
                    },
                );
            }
        }
        found.quantity(
            "mount.rings_centre_height_mm",
            mount.rings_centre_height_mm,
            Quantity::RingsHeight,
        );
        found.quantity("mount.incline_mrad", mount.incline_mrad, Quantity::Incline);
    }
    if let Some(money) = &answers.money {
        found.quantity("money.all_in", money.all_in, Quantity::Money);
    }
    if let Some(place) = &answers.place {
        found.quantity("place.latitude_deg", place.latitude_deg, Quantity::Latitude);
        found.quantity(
            "place.longitude_deg_east",
            place.longitude_deg_east,
            Quantity::Longitude,
        );
        found.quantity("place.height_m", place.height_m, Quantity::HeightAboveSea);
        for (field, month) in [
            ("place.first_month", place.first_month),
            ("place.last_month", place.last_month),
        ] {
            found.number(field, month.map(f64::from), 1.0, 12.0);
        }
        found.quantity("place.coldest_c", place.coldest_c, Quantity::Temperature);
    }
    if let Some(rules) = &answers.rulebook {
        found.quantity(
            "rulebook.magnification_most",
            rules.magnification_most,
            Quantity::Magnification,
        );
        found.quantity(
            "rulebook.mass_most_g",
            rules.mass_most_g,
            Quantity::SightMass,
        );
        if rules.refocusing_forbidden && rules.focus_finds_range {
            found.put(
                "rulebook.focus_finds_range",
                Wrong::Contradicts {
                    other: "rulebook.refocusing_forbidden",
                },
            );
        }
    }
    if let Some(now) = &answers.sight_now {
        if let Some(line) = &now.line {
            found.length("sight_now.line", line.chars().count(), TEXT_MOST);
        }
        found.length("sight_now.annoys", now.annoys.len(), LIST_MOST);
    }
    if let Some(weights) = &answers.weights {
        for (field, weight) in [
            (
                "weights.mass_percent_per_100_g",
                weights.mass_percent_per_100_g,
            ),
            (
                "weights.height_percent_per_10_mm",
                weights.height_percent_per_10_mm,
            ),
            (
                "weights.money_percent_per_band",
                weights.money_percent_per_band,
            ),
        ] {
            found.number(field, weight, 0.0, 100.0);
        }
    }
}
