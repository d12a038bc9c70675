//! Reading and changing answers part by part: the reducer behind every page.

use super::answers::{Answers, CoverShare, Manner, MannerShare, Ranges, Use, VERSION};
use super::keys::{Choice, from_key, key_of};
use super::quarry::What;
use super::questions::{Control, Part, Question};
use super::resolve::usual_ranges;
use super::{Need, resolve};
use crate::plain::Gathered;
use crate::plain::shortest;

/// What a part holds.
#[derive(Clone, Debug, PartialEq)]
pub enum Value {
    /// Nothing was answered.
    Nothing,
    /// One option.
    One(String),
    /// Options with how often each.
    Many(Vec<(String, f64)>),
    /// A number, metric.
    Number(f64),
    /// Yes or no.
    Flag(bool),
    /// Ranges, by manner; no manner: for all.
    Ranges(Vec<(Option<Manner>, Ranges)>),
    /// Words.
    Text(String),
}

/// What a person did on a page.
#[derive(Clone, Debug, PartialEq)]
pub enum Reply {
    /// A part now holds this; [`Value::Nothing`] clears it.
    Set(Part, Value),
    /// An option was tapped: chosen if it was not, else given up. In a list with shares it
    /// comes in with 4 if it is the first, else with 2.
    Tap(Part, String),
    /// An option of a list has this share: often 4, sometimes 2, rarely 1.
    Often(Part, String, f64),
    /// The ranges of one manner.
    RangesOf(Manner, Ranges),
    /// What the page shows for the ranges fits.
    RangesFit,
    /// The middle of a decade of age was tapped.
    Decade(f64),
    /// "Not sure": clears the question.
    NotSure(&'static str),
    /// Start this question again.
    Clear(&'static str),
}

/// The answers after a reply. A reply that does not fit changes nothing.
#[must_use]
pub fn apply(answers: &Answers, reply: &Reply) -> Answers {
    let mut next = answers.clone();
    next.version = VERSION;
    match reply {
        Reply::Set(part, new) => {
            if set(&mut next, *part, new) {
                sure_again(&mut next, *part);
            }
        }
        Reply::Tap(part, option) => tap(&mut next, *part, option),
        Reply::Often(part, option, share) => {
            if let Value::Many(mut list) = value(&next, *part)
                && let Some(entry) = list.iter_mut().find(|(key, _)| key == option)
            {
                entry.1 = *share;
                set(&mut next, *part, &Value::Many(list));
            }
        }
        Reply::RangesOf(manner, ranges) => {
            // The rows shown become what was said, so that changing one keeps the others.
            accept_ranges(&mut next);
            if let Some(each) = next.manners.iter_mut().find(|each| each.manner == *manner) {
                each.ranges = Some(*ranges);
            } else {
                next.ranges = Some(*ranges);
            }
            sure_again(&mut next, Part::Ranges);
        }
        Reply::RangesFit => {
            accept_ranges(&mut next);
            sure_again(&mut next, Part::Ranges);
        }
        Reply::Decade(middle) => {
            if set(&mut next, Part::Age, &Value::Number(*middle)) {
                if let Some(eye) = &mut next.eye {
                    eye.age_is_decade = true;
                }
                sure_again(&mut next, Part::Age);
            }
        }
        Reply::NotSure(key) => {
            clear(&mut next, key);
            if Question::from_key(key).is_some() && !next.not_sure.iter().any(|each| each == key) {
                next.not_sure.push((*key).to_owned());
            }
        }
        Reply::Clear(key) => {
            clear(&mut next, key);
            next.not_sure.retain(|each| each != key);
        }
    }
    tidy(&mut next);
    next
}

fn sure_again(answers: &mut Answers, part: Part) {
    if let Some(question) = Question::of_part(part) {
        answers.not_sure.retain(|each| each != question.key);
    }
}

fn clear(answers: &mut Answers, key: &str) {
    if let Some(question) = Question::from_key(key) {
        for part in question.all_parts() {
            set(answers, part, &Value::Nothing);
        }
    }
}

fn tap(answers: &mut Answers, part: Part, option: &str) {
    let new = match (part.control(), value(answers, part)) {
        (Control::Many { .. } | Control::Quarry, Value::Many(mut list)) => {
            if let Some(at) = list.iter().position(|(key, _)| key == option) {
                list.remove(at);
            } else {
                list.push((option.to_owned(), 2.0));
            }
            if list.is_empty() {
                Value::Nothing
            } else {
                Value::Many(list)
            }
        }
        (Control::Many { .. } | Control::Quarry, _) => Value::Many(vec![(option.to_owned(), 4.0)]),
        (Control::One(_) | Control::Cartridge, Value::One(now)) if now == option => Value::Nothing,
        (Control::One(_) | Control::Cartridge, _) => Value::One(option.to_owned()),
        _ => return,
    };
    if set(answers, part, &new) {
        sure_again(answers, part);
    }
}

/// The rows shown for the ranges: one for each manner that is used, with what was said or
/// what is usual.
#[must_use]
pub fn range_rows(answers: &Answers) -> Vec<RangeRow> {
    let Need { situations, .. } = resolve(answers);
    let mut rows: Vec<RangeRow> = Vec::new();
    for situation in situations {
        if rows.iter().any(|row| row.manner == situation.manner) {
            continue;
        }
        rows.push(RangeRow {
            manner: situation.manner,
            what: situation.what,
            ranges: Ranges {
                nearest_m: situation.range.nearest_m,
                usual_m: situation.range.usual_m,
                farthest_m: situation.range.farthest_m,
            },
            usual: usual_ranges(situation.what, situation.manner, answers),
            assumed: situation.assumed.range,
        });
    }
    rows
}

/// Ranges as they are shown for one manner.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RangeRow {
    /// The manner.
    pub manner: Manner,
    /// What is shot at most in it, for the drawing.
    pub what: What,
    /// What to show.
    pub ranges: Ranges,
    /// What is usual.
    pub usual: Ranges,
    /// Nobody said so yet.
    pub assumed: bool,
}

fn accept_ranges(answers: &mut Answers) {
    let rows = range_rows(answers);
    if answers.manners.is_empty() {
        if answers.ranges.is_none() {
            answers.ranges = rows.first().map(|row| row.ranges);
        }
        return;
    }
    for each in &mut answers.manners {
        if each.ranges.is_none() {
            each.ranges = rows
                .iter()
                .find(|row| row.manner == each.manner)
                .map(|row| row.ranges);
        }
    }
}

const SNOW: [(&str, f64); 3] = [("never", 0.0), ("sometimes", 0.3), ("often", 0.8)];
/// Zenith brightness in mag/arcsec² (assumption, typical of the classes of night-sky surveys).
const GLOW: [(&str, Option<f64>); 4] = [
    ("dark", None),
    ("village", Some(20.8)),
    ("town", Some(19.5)),
    ("city", Some(18.0)),
];

/// Visibility in km (common practice of weather services: haze below 10, mist below 5 km).
const HAZE: [(&str, f64); 3] = [("clear", 40.0), ("hazy", 8.0), ("misty", 2.0)];

fn one<T: Choice>(value: Option<&T>) -> Value {
    value.map_or(Value::Nothing, |value| Value::One(key_of(value)))
}

fn num(value: Option<f64>) -> Value {
    value.map_or(Value::Nothing, Value::Number)
}

fn tick(value: Option<bool>) -> Value {
    match value {
        Some(true) => Value::Flag(true),
        _ => Value::Nothing,
    }
}

fn yes_no(value: Option<bool>) -> Value {
    value.map_or(Value::Nothing, Value::Flag)
}

/// What a part holds.
#[must_use]
#[rustfmt::skip]
pub fn value(a: &Answers, part: Part) -> Value {
    let many = |list: Vec<(String, f64)>| if list.is_empty() { Value::Nothing } else { Value::Many(list) };
    let light = a.light.as_ref();
    let eye = a.eye.as_ref();
    let load = a.load.as_ref();
    let rifle = a.rifle.as_ref();
    let mount = a.mount.as_ref();
    let money = a.money.as_ref();
    let distance = a.distance.as_ref();
    let rules = a.rulebook.as_ref();
    let place = a.place.as_ref();
    let habits = a.habits.as_ref();
    match part {
        Part::Uses => many(a.uses.iter().map(|each| (each.what.clone(), each.share)).gathered()),
        Part::Manners => many(a.manners.iter().map(|each| (key_of(&each.manner), each.share)).gathered()),
        Part::Until => one(light.and_then(|l| l.until.as_ref())),
        Part::MinutesAfterSunset => num(light.and_then(|l| l.minutes_after_sunset)),
        Part::Morning => tick(light.map(|l| l.morning)),
        Part::Covers => many(light.map(|l| l.cover.iter().map(|each| (key_of(&each.cover), each.share)).gathered()).unwrap_or_default()),
        Part::Snow => match light.map(|l| l.snow) {
            Some(snow) if snow > 0.5 => Value::One("often".to_owned()),
            Some(snow) if snow > 0.0 => Value::One("sometimes".to_owned()),
            _ => Value::Nothing,
        },
        Part::TownGlow => match light.and_then(|l| l.town_glow_mag) {
            Some(glow) if glow < 18.75 => Value::One("city".to_owned()),
            Some(glow) if glow < 20.15 => Value::One("town".to_owned()),
            Some(_) => Value::One("village".to_owned()),
            None => Value::Nothing,
        },
        Part::Haze => match light.and_then(|l| l.visibility_km) {
            Some(km) => Value::One(if km < 4.0 { "misty" } else if km < 18.0 { "hazy" } else { "clear" }.to_owned()),
            None => Value::Nothing,
        },
        Part::Ranges => {
            let mut rows: Vec<_> = a.ranges.iter().map(|ranges| (None, *ranges)).gathered();
            rows.extend(a.manners.iter().filter_map(|each| Some((Some(each.manner), each.ranges?))));
            if rows.is_empty() { Value::Nothing } else { Value::Ranges(rows) }
        }
        Part::Age => num(eye.and_then(|e| e.age_years)),
        Part::DarkPupil => num(eye.and_then(|e| e.dark_pupil_mm)),
        Part::Glasses => one(eye.and_then(|e| e.glasses.as_ref())),
        Part::Astigmatism => tick(eye.map(|e| e.astigmatism)),
        Part::Lens => match eye.map(|e| e.lens) {
            Some(lens) if lens != super::answers::Lens::Natural => Value::One(key_of(&lens)),
            _ => Value::Nothing,
        },
        Part::Cartridge => load.and_then(|l| l.cartridge.clone()).map_or(Value::Nothing, Value::One),
        Part::BulletMass => num(load.and_then(|l| l.bullet_g)),
        Part::Velocity => num(load.and_then(|l| l.muzzle_velocity_m_s)),
        Part::CoefficientG1 => num(load.and_then(|l| l.bc_g1_lb_in2)),
        Part::CoefficientG7 => num(load.and_then(|l| l.bc_g7_lb_in2)),
        Part::PowderMass => num(load.and_then(|l| l.powder_g)),
        Part::RifleKind => one(rifle.and_then(|r| r.kind.as_ref())),
        Part::RifleMass => num(rifle.and_then(|r| r.mass_kg)),
        Part::Muzzle => one(rifle.and_then(|r| r.muzzle.as_ref())),
        Part::BarrelLength => num(rifle.and_then(|r| r.barrel_cm)),
        Part::Rings => match mount {
            Some(m) if m.no_rings => Value::One("none".to_owned()),
            Some(m) => m.rings_kept_mm.map_or(Value::Nothing, |bore| Value::One(shortest(bore))),
            None => Value::Nothing,
        },
        Part::RingsHeight => num(mount.and_then(|m| m.rings_centre_height_mm)),
        Part::Base => one(mount.and_then(|m| m.base.as_ref())),
        Part::Incline => num(mount.and_then(|m| m.incline_mrad)),
        Part::RailUnderBell => tick(mount.map(|m| m.rail_under_bell)),
        Part::Band => one(money.and_then(|m| m.band.as_ref())),
        Part::Attitude => one(money.and_then(|m| m.attitude.as_ref())),
        Part::AllIn => num(money.and_then(|m| m.all_in)),
        Part::Used => tick(money.map(|m| m.used)),
        Part::SightLine => a.sight_now.as_ref().and_then(|s| s.line.clone()).map_or(Value::Nothing, Value::Text),
        Part::Annoys => many(a.sight_now.as_ref().map(|s| s.annoys.iter().map(|each| (key_of(each), 1.0)).gathered()).unwrap_or_default()),
        Part::Zoom => one(a.zoom.as_ref()),
        Part::Detail => one(a.detail.as_ref()),
        Part::DistanceHabit => one(distance.and_then(|d| d.habit.as_ref())),
        Part::Rangefinder => yes_no(distance.and_then(|d| d.rangefinder)),
        Part::AngleUnit => one(distance.and_then(|d| d.unit.as_ref())),
        Part::PowerMost => num(rules.and_then(|r| r.magnification_most)),
        Part::LitForbidden => tick(rules.map(|r| r.lit_mark_forbidden)),
        Part::RefocusForbidden => tick(rules.map(|r| r.refocusing_forbidden)),
        Part::FocusFindsRange => tick(rules.map(|r| r.focus_finds_range)),
        Part::SightMassMost => num(rules.and_then(|r| r.mass_most_g)),
        Part::LitMark => one(a.lit_mark.as_ref()),
        Part::LeftHanded => tick(rifle.map(|r| r.left_handed)),
        Part::BothEyesOpen => yes_no(habits.and_then(|h| h.both_eyes_open)),
        Part::Comb => one(rifle.and_then(|r| r.comb.as_ref())),
        Part::Carry => one(a.carry.as_ref()),
        Part::BarrelRadius => num(rifle.and_then(|r| r.barrel_radius_at_bell_mm)),
        Part::IronSights => tick(rifle.map(|r| r.iron_sights)),
        Part::Latitude => num(place.and_then(|p| p.latitude_deg)),
        Part::Longitude => num(place.and_then(|p| p.longitude_deg_east)),
        Part::HeightAboveSea => num(place.and_then(|p| p.height_m)),
        Part::FirstMonth => num(place.and_then(|p| p.first_month).map(f64::from)),
        Part::LastMonth => num(place.and_then(|p| p.last_month).map(f64::from)),
        Part::Coldest => num(place.and_then(|p| p.coldest_c)),
        Part::OthersUseIt => yes_no(habits.and_then(|h| h.others_use_it)),
        Part::ComesOff => yes_no(habits.and_then(|h| h.comes_off)),
    }
}

/// Makes a part hold a value; false, and nothing changed, if it cannot hold this.
#[rustfmt::skip]
fn set(a: &mut Answers, part: Part, new: &Value) -> bool {
    macro_rules! option {
        ($group:ident . $field:ident) => { match choice(new) {
            Some(found) => { a.$group.get_or_insert_default().$field = found; true }
            None => false,
        } };
        ($field:ident) => { match choice(new) {
            Some(found) => { a.$field = found; true }
            None => false,
        } };
    }
    macro_rules! number {
        ($group:ident . $field:ident) => { match number(new) {
            Some(found) => { a.$group.get_or_insert_default().$field = found; true }
            None => false,
        } };
    }
    macro_rules! flag {
        ($group:ident . $field:ident) => { match flag(new) {
            Some(found) => { a.$group.get_or_insert_default().$field = found.unwrap_or(false); true }
            None => false,
        } };
    }
    macro_rules! yes_no {
        ($group:ident . $field:ident) => { match flag(new) {
            Some(found) => { a.$group.get_or_insert_default().$field = found; true }
            None => false,
        } };
    }
    macro_rules! month {
        ($field:ident) => { match number(new) {
            None => false,
            Some(None) => { a.place.get_or_insert_default().$field = None; true }
            Some(Some(month)) if (1.0..=12.0).contains(&month) && month == month.floor() => {
                a.place.get_or_insert_default().$field = Some(month as u8);
                true
            }
            Some(_) => false,
        } };
    }
    match part {
        Part::Uses => set_uses(a, new),
        Part::Manners => set_manners(a, new),
        Part::Until => {
            let done = option!(light.until);
            if done && let Some(light) = &mut a.light { light.minutes_after_sunset = None; }
            done
        }
        Part::MinutesAfterSunset => {
            let done = number!(light.minutes_after_sunset);
            // One answer at a time: what was dragged takes the place of what was tapped.
            if let Some(light) = &mut a.light && light.minutes_after_sunset.is_some() {
                light.until = None;
            }
            done
        }
        Part::Covers => match list(new) {
            Some(list) => {
                a.light.get_or_insert_default().cover =
                    list.into_iter().map(|(cover, share)| CoverShare { cover, share }).gathered();
                true
            }
            None => false,
        },
        Part::Snow => match option_text(new) {
            Some(None) => { a.light.get_or_insert_default().snow = 0.0; true }
            Some(Some(key)) => match SNOW.iter().find(|(name, _)| *name == key) {
                Some((_, share)) => { a.light.get_or_insert_default().snow = *share; true }
                None => false,
            },
            None => false,
        },
        Part::TownGlow => match option_text(new) {
            Some(None) => { a.light.get_or_insert_default().town_glow_mag = None; true }
            Some(Some(key)) => match GLOW.iter().find(|(name, _)| *name == key) {
                Some((_, glow)) => { a.light.get_or_insert_default().town_glow_mag = *glow; true }
                None => false,
            },
            None => false,
        },
        Part::Haze => match option_text(new) {
            Some(None) => { a.light.get_or_insert_default().visibility_km = None; true }
            Some(Some(key)) => match HAZE.iter().find(|(name, _)| *name == key) {
                Some((_, km)) => { a.light.get_or_insert_default().visibility_km = Some(*km); true }
                None => false,
            },
            None => false,
        },
        Part::Ranges => set_ranges(a, new),
        Part::Age => {
            let done = number!(eye.age_years);
            if done && let Some(eye) = &mut a.eye { eye.age_is_decade = false; }
            done
        }
        Part::DarkPupil => number!(eye.dark_pupil_mm),
        Part::Glasses => option!(eye.glasses),
        Part::Morning => flag!(light.morning),
        Part::Astigmatism => flag!(eye.astigmatism),
        Part::Lens => match choice(new) {
            Some(found) => { a.eye.get_or_insert_default().lens = found.unwrap_or_default(); true }
            None => false,
        },
        Part::Cartridge => match option_text(new) {
            Some(key) => { a.load.get_or_insert_default().cartridge = key.map(str::to_owned); true }
            None => false,
        },
        Part::BulletMass => number!(load.bullet_g),
        Part::Velocity => number!(load.muzzle_velocity_m_s),
        Part::CoefficientG1 => number!(load.bc_g1_lb_in2),
        Part::CoefficientG7 => number!(load.bc_g7_lb_in2),
        Part::PowderMass => number!(load.powder_g),
        Part::RifleKind => option!(rifle.kind),
        Part::RifleMass => number!(rifle.mass_kg),
        Part::Muzzle => option!(rifle.muzzle),
        Part::BarrelLength => number!(rifle.barrel_cm),
        Part::Rings => match option_text(new) {
            Some(key) => {
                let bore = match key {
                    None | Some("none") => Some(None),
                    Some(key) => crate::plain::decimal(key).map(Some),
                };
                match bore {
                    Some(bore) => {
                        let mount = a.mount.get_or_insert_default();
                        mount.rings_kept_mm = bore;
                        mount.no_rings = key == Some("none");
                        true
                    }
                    None => false,
                }
            }
            None => false,
        },
        Part::RingsHeight => number!(mount.rings_centre_height_mm),
        Part::Base => option!(mount.base),
        Part::Incline => number!(mount.incline_mrad),
        Part::RailUnderBell => flag!(mount.rail_under_bell),
        Part::Band => option!(money.band),
        Part::Attitude => option!(money.attitude),
        Part::AllIn => number!(money.all_in),
        Part::Used => flag!(money.used),
        Part::SightLine => match new {
            Value::Nothing => { if let Some(now) = &mut a.sight_now { now.line = None; } true }
            Value::Text(text) => {
                let text: String = text.trim().chars().take(80).collect();
                a.sight_now.get_or_insert_default().line = Some(text).filter(|text| !text.is_empty());
                true
            }
            _ => false,
        },
        Part::Annoys => match list(new) {
            Some(list) => {
                a.sight_now.get_or_insert_default().annoys = list.into_iter().map(|(what, _)| what).collect();
                true
            }
            None => false,
        },
        Part::Zoom => option!(zoom),
        Part::Detail => option!(detail),
        Part::DistanceHabit => option!(distance.habit),
        Part::Rangefinder => yes_no!(distance.rangefinder),
        Part::AngleUnit => option!(distance.unit),
        Part::PowerMost => number!(rulebook.magnification_most),
        Part::LitForbidden => flag!(rulebook.lit_mark_forbidden),
        Part::RefocusForbidden => flag!(rulebook.refocusing_forbidden),
        Part::FocusFindsRange => flag!(rulebook.focus_finds_range),
        Part::SightMassMost => number!(rulebook.mass_most_g),
        Part::LitMark => option!(lit_mark),
        Part::LeftHanded => flag!(rifle.left_handed),
        Part::BothEyesOpen => yes_no!(habits.both_eyes_open),
        Part::Comb => option!(rifle.comb),
        Part::Carry => option!(carry),
        Part::BarrelRadius => number!(rifle.barrel_radius_at_bell_mm),
        Part::IronSights => flag!(rifle.iron_sights),
        Part::Latitude => number!(place.latitude_deg),
        Part::Longitude => number!(place.longitude_deg_east),
        Part::HeightAboveSea => number!(place.height_m),
        Part::FirstMonth => month!(first_month),
        Part::LastMonth => month!(last_month),
        Part::Coldest => number!(place.coldest_c),
        Part::OthersUseIt => yes_no!(habits.others_use_it),
        Part::ComesOff => yes_no!(habits.comes_off),
    }
}

/// The option's key, or none for nothing; nothing at all if the value is of another kind.
fn option_text(new: &Value) -> Option<Option<&str>> {
    match new {
        Value::Nothing => Some(None),
        Value::One(key) => Some(Some(key)),
        _ => None,
    }
}

fn choice<T: Choice>(new: &Value) -> Option<Option<T>> {
    match option_text(new)? {
        None => Some(None),
        Some(key) => from_key(key).map(Some),
    }
}

fn number(new: &Value) -> Option<Option<f64>> {
    match new {
        Value::Nothing => Some(None),
        Value::Number(value) if value.is_finite() => Some(Some(*value)),
        _ => None,
    }
}

fn flag(new: &Value) -> Option<Option<bool>> {
    match new {
        Value::Nothing => Some(None),
        Value::Flag(value) => Some(Some(*value)),
        _ => None,
    }
}

fn list<T: Choice>(new: &Value) -> Option<Vec<(T, f64)>> {
    match new {
        Value::Nothing => Some(Vec::new()),
        Value::Many(list) => list
            .iter()
            .map(|(key, share)| Some((from_key(key)?, *share)))
            .collect(),
        _ => None,
    }
}

/// Keeps manner and ranges of the uses that stay.
fn set_uses(answers: &mut Answers, new: &Value) -> bool {
    let list = match new {
        Value::Nothing => &[][..],
        Value::Many(list) => &list[..],
        _ => return false,
    };
    if list.iter().any(|(key, _)| What::from_key(key).is_none()) {
        return false;
    }
    let old = core::mem::take(&mut answers.uses);
    answers.uses = list
        .iter()
        .map(|(key, share)| {
            let before = old.iter().find(|each| each.what == *key);
            Use {
                what: key.clone(),
                share: *share,
                manner: before.and_then(|each| each.manner),
                ranges: before.and_then(|each| each.ranges),
            }
        })
        .gathered();
    true
}

/// Keeps the ranges of the manners that stay.
fn set_manners(answers: &mut Answers, new: &Value) -> bool {
    let Some(list) = list::<Manner>(new) else {
        return false;
    };
    let old = core::mem::take(&mut answers.manners);
    answers.manners = list
        .into_iter()
        .map(|(manner, share)| MannerShare {
            manner,
            share,
            ranges: old
                .iter()
                .find(|each| each.manner == manner)
                .and_then(|each| each.ranges),
        })
        .gathered();
    // A manner named on the page holds for everything that is shot at.
    for each in &mut answers.uses {
        each.manner = None;
    }
    true
}

fn set_ranges(answers: &mut Answers, new: &Value) -> bool {
    let rows = match new {
        Value::Nothing => &[][..],
        Value::Ranges(rows) => &rows[..],
        _ => return false,
    };
    answers.ranges = None;
    for each in &mut answers.manners {
        each.ranges = None;
    }
    for each in &mut answers.uses {
        each.ranges = None;
    }
    for (manner, ranges) in rows {
        match manner {
            None => answers.ranges = Some(*ranges),
            Some(manner) => {
                if let Some(each) = answers
                    .manners
                    .iter_mut()
                    .find(|each| each.manner == *manner)
                {
                    each.ranges = Some(*ranges);
                }
            }
        }
    }
    true
}

/// Groups in which nothing is left are as if never touched.
fn tidy(answers: &mut Answers) {
    fn drop_empty<T: Default + PartialEq>(group: &mut Option<T>) {
        if group.as_ref().is_some_and(|group| *group == T::default()) {
            *group = None;
        }
    }
    drop_empty(&mut answers.light);
    drop_empty(&mut answers.eye);
    drop_empty(&mut answers.load);
    drop_empty(&mut answers.rifle);
    drop_empty(&mut answers.mount);
    drop_empty(&mut answers.money);
    drop_empty(&mut answers.distance);
    drop_empty(&mut answers.place);
    drop_empty(&mut answers.rulebook);
    drop_empty(&mut answers.sight_now);
    drop_empty(&mut answers.habits);
}
