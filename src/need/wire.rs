//! Answers to JSON and back, by one table of fields.
//!
//! Each group lists its fields once; one reader and one writer walk the lists. A field is read
//! as strictly as a program needs: nothing unknown, nothing of another kind, nothing missing
//! that must be there.

use super::answers::{
    Answers, CoverShare, Distance, Eye, Habits, Light, Load, MannerShare, Money, Mount, Place,
    Ranges, Rifle, Rulebook, SightNow, Use, Weights,
};
use super::keys::{Choice, from_key, key_of};
use crate::plain::Gathered;
use crate::plain::{Json, Together};

/// Where a value stands.
enum Slot<'a> {
    Number(&'a mut f64),
    Flag(&'a mut bool),
    Month(&'a mut u8),
    Version(&'a mut u32),
    Text(&'a mut String),
    Choice(&'a mut dyn Chosen),
    Group(&'a mut dyn Group),
    Maybe(&'a mut dyn Maybe),
    List(&'a mut dyn List),
}

/// A value that can be read and written.
trait Held: Sized {
    /// A value to be filled in.
    fn blank() -> Self;
    fn slot(&mut self) -> Slot<'_>;
}

trait Chosen {
    fn key(&self) -> String;
    /// False if there is none with this key.
    fn choose(&mut self, key: &str) -> bool;
    fn keys(&self) -> Vec<String>;
}

trait Group {
    /// Shows every field: its name, whether it must be there, its place.
    fn show(&mut self, see: &mut dyn FnMut(&'static str, bool, Slot<'_>));
}

trait Maybe {
    fn there(&mut self) -> Option<Slot<'_>>;
    fn blank(&mut self) -> Slot<'_>;
}

trait List {
    fn show(&mut self, see: &mut dyn FnMut(Slot<'_>));
    fn clear(&mut self);
    fn add(&mut self) -> Option<Slot<'_>>;
}

macro_rules! plain {
    ($($kind:ty = $blank:expr, $slot:ident;)*) => { $(impl Held for $kind {
        fn blank() -> Self { $blank }
        fn slot(&mut self) -> Slot<'_> { Slot::$slot(self) }
    })* };
}

plain! {
    f64 = 0.0, Number;
    bool = false, Flag;
    u8 = 0, Month;
    u32 = 0, Version;
    String = String::new(), Text;
}

impl<T: Choice> Chosen for T {
    fn key(&self) -> String {
        key_of(self)
    }
    fn choose(&mut self, key: &str) -> bool {
        from_key(key).map(|found| *self = found).is_some()
    }
    fn keys(&self) -> Vec<String> {
        T::ALL.iter().map(key_of).gathered()
    }
}

impl<T: Held> Held for Option<T> {
    fn blank() -> Self {
        None
    }
    fn slot(&mut self) -> Slot<'_> {
        Slot::Maybe(self)
    }
}

impl<T: Held> Maybe for Option<T> {
    fn there(&mut self) -> Option<Slot<'_>> {
        self.as_mut().map(T::slot)
    }
    fn blank(&mut self) -> Slot<'_> {
        self.insert(T::blank()).slot()
    }
}

impl<T: Held> Held for Vec<T> {
    fn blank() -> Self {
        Vec::new()
    }
    fn slot(&mut self) -> Slot<'_> {
        Slot::List(self)
    }
}

impl<T: Held> List for Vec<T> {
    fn show(&mut self, see: &mut dyn FnMut(Slot<'_>)) {
        self.iter_mut().for_each(|each| see(each.slot()));
    }
    fn clear(&mut self) {
        Vec::clear(self);
    }
    fn add(&mut self) -> Option<Slot<'_>> {
        self.push(T::blank());
        self.last_mut().map(T::slot)
    }
}

macro_rules! groups {
    ($($group:ident = $blank:expr; $($field:ident)* $(! $($must:ident)*)?;)*) => { $(
        impl Held for $group {
            fn blank() -> Self { $blank }
            fn slot(&mut self) -> Slot<'_> { Slot::Group(self) }
        }
        impl Group for $group {
            fn show(&mut self, see: &mut dyn FnMut(&'static str, bool, Slot<'_>)) {
                // Destructured, so that a field left out does not compile.
                let Self { $($field,)* $($($must),*)? } = self;
                $(see(stringify!($field), false, $field.slot());)*
                $($(see(stringify!($must), true, $must.slot());)*)?
            }
        }
    )* };
}

const NO_RANGES: Ranges = Ranges {
    nearest_m: 0.0,
    usual_m: 0.0,
    farthest_m: 0.0,
};

// What must be there stands after the exclamation mark.
groups! {
    Answers = Answers::default(); version units not_sure uses manners ranges light eye load rifle
        mount money zoom detail carry distance lit_mark place rulebook sight_now weights habits;
    Habits = Habits::default(); both_eyes_open comes_off others_use_it;
    Use = Use::default(); what share manner ranges;
    MannerShare = MannerShare { manner: first(), share: 0.0, ranges: None };
        ranges ! manner share;
    Ranges = NO_RANGES; ! nearest_m usual_m farthest_m;
    Light = Light::default(); until minutes_after_sunset cover snow town_glow_mag visibility_km morning;
    CoverShare = CoverShare { cover: first(), share: 0.0 }; ! cover share;
    Eye = Eye::default(); age_years dark_pupil_mm glasses astigmatism age_is_decade lens;
    Load = Load::default(); cartridge bullet_g muzzle_velocity_m_s bc_g1_lb_in2 bc_g7_lb_in2
        powder_g;
    Rifle = Rifle::default(); mass_kg kind muzzle barrel_cm barrel_radius_at_bell_mm comb
        left_handed iron_sights;
    Mount = Mount::default(); rings_kept_mm no_rings rings_centre_height_mm base incline_mrad
        rail_under_bell;
    Money = Money::default(); band attitude all_in used;
    Distance = Distance::default(); habit rangefinder unit;
    Place = Place::default(); latitude_deg longitude_deg_east height_m first_month last_month
        coldest_c;
    Rulebook = Rulebook::default(); magnification_most lit_mark_forbidden refocusing_forbidden
        focus_finds_range mass_most_g;
    SightNow = SightNow::default(); line annoys;
    Weights = Weights::default(); mass_percent_per_100_g height_percent_per_10_mm
        money_percent_per_band;
}

fn first<T: Choice>() -> T {
    T::ALL[0]
}

macro_rules! held_choices {
    ($($choice:ident)*) => { $(impl Held for super::answers::$choice {
        fn blank() -> Self { first() }
        fn slot(&mut self) -> Slot<'_> { Slot::Choice(self) }
    })* };
}

held_choices! {
    Units Manner StopTime Cover Lens Glasses RifleKind Muzzle Comb Base PriceBand Attitude
    ZoomHabit Detail Carry DistanceHabit AngleUnit LitMark Annoyance
}

/// Everything that answers hold, with what says nothing.
pub(super) fn written(answers: &Answers) -> Json {
    write(answers.clone().slot())
}

fn write(slot: Slot<'_>) -> Json {
    match slot {
        Slot::Number(number) => Json::Number(*number),
        Slot::Flag(flag) => Json::Flag(*flag),
        Slot::Month(month) => Json::Whole(u64::from(*month)),
        Slot::Version(version) => Json::Whole(u64::from(*version)),
        Slot::Text(text) => Json::Text(text.clone()),
        Slot::Choice(choice) => Json::Text(choice.key()),
        Slot::Maybe(value) => value.there().map_or(Json::Null, write),
        Slot::List(values) => {
            let mut list = Vec::new();
            values.show(&mut |each| list.push(write(each)));
            Json::List(list)
        }
        Slot::Group(group) => {
            let mut fields = Json::Fields(Vec::new());
            group.show(&mut |name, _, value| fields.put(name, write(value)));
            fields
        }
    }
}

/// The answers in an object of fields.
///
/// # Errors
/// Which field, what was read, and what would be right.
pub(super) fn read(json: &Json) -> Result<Answers, String> {
    let mut answers = Answers::default();
    fill(answers.slot(), json, "")?;
    Ok(answers)
}

fn fill(slot: Slot<'_>, json: &Json, path: &str) -> Result<(), String> {
    let wrong = |right: &str| {
        let read = json.written();
        let short: String = if read.chars().count() > 40 {
            read.chars().take(39).chain(['…']).collect()
        } else {
            read
        };
        Err(format!("{path} is {short}, {right} is wanted"))
    };
    match (slot, json) {
        (Slot::Number(number), Json::Whole(_) | Json::Number(_)) => {
            *number = json.number().unwrap_or(*number);
        }
        (Slot::Number(_), _) => return wrong("a number"),
        (Slot::Flag(flag), Json::Flag(read)) => *flag = *read,
        (Slot::Flag(_), _) => return wrong("true or false"),
        (Slot::Month(month), _) => match json.whole().and_then(|read| u8::try_from(read).ok()) {
            Some(read) => *month = read,
            None => return wrong("a whole number"),
        },
        (Slot::Version(version), _) => {
            match json.whole().and_then(|read| u32::try_from(read).ok()) {
                Some(read) => *version = read,
                None => return wrong("a whole number"),
            }
        }
        (Slot::Text(text), Json::Text(read)) => text.clone_from(read),
        (Slot::Text(_), _) => return wrong("a text"),
        (Slot::Choice(choice), _) => {
            if !json.text().is_some_and(|key| choice.choose(key)) {
                return wrong(&format!("one of {}", choice.keys().together(", ")));
            }
        }
        // Not answered and left out are the same.
        (Slot::Maybe(_), Json::Null) => {}
        (Slot::Maybe(value), _) => fill(value.blank(), json, path)?,
        (Slot::List(list), Json::List(values)) => {
            list.clear();
            for (at, value) in values.iter().enumerate() {
                if let Some(slot) = list.add() {
                    fill(slot, value, &format!("{path}[{at}]"))?;
                }
            }
        }
        (Slot::List(_), _) => return wrong("a list"),
        (Slot::Group(group), Json::Fields(fields)) => return fill_group(group, fields, json, path),
        (Slot::Group(_), _) => return wrong("an object"),
    }
    Ok(())
}

fn fill_group(
    group: &mut dyn Group,
    fields: &[(String, Json)],
    json: &Json,
    path: &str,
) -> Result<(), String> {
    let below = |name: &str| match path {
        "" => name.to_owned(),
        _ => format!("{path}.{name}"),
    };
    let mut known = Vec::new();
    let mut done = Ok(());
    group.show(&mut |name, must, slot| {
        known.push(name);
        if done.is_ok() {
            match json.get(name) {
                Some(value) => done = fill(slot, value, &below(name)),
                None if must => done = Err(format!("{} is missing", below(name))),
                None => {}
            }
        }
    });
    done?;
    match fields
        .iter()
        .find(|(name, _)| !known.contains(&name.as_str()))
    {
        Some((name, _)) => Err(format!(
            "{} is not known, only {}",
            below(name),
            known.together(", ")
        )),
        None => Ok(()),
    }
}

#[cfg(test)]
mod tests {
    use super::{read, written};
    use crate::need::answers::Answers;
    use crate::plain::Json;

    /// The derived reader and writer of `serde` agree with the table, field by field.
    #[test]
    fn the_table_agrees_with_a_reference_library() {
        let whole = r#"{"version":1,"units":"imperial","not_sure":["money"],
            "uses":[{"what":"roe_deer","share":4.5,"manner":"driven","ranges":{"nearest_m":1,"usual_m":2,"farthest_m":3e2}},{}],
            "manners":[{"manner":"prone_pack","share":1},{"share":2,"manner":"bench","ranges":null}],
            "ranges":{"farthest_m":3,"usual_m":2,"nearest_m":1},
            "light":{"until":"half_hour_after_sunset","minutes_after_sunset":-3,"cover":[{"cover":"in_leaf","share":1}],"snow":0.3,"town_glow_mag":18,"visibility_km":4,"morning":true},
            "eye":{"age_years":46,"dark_pupil_mm":5.5,"glasses":"thick_frame","astigmatism":true,"age_is_decade":true,"lens":"replaced"},
            "load":{"cartridge":"x","bullet_g":1,"muzzle_velocity_m_s":2,"bc_g1_lb_in2":0.3,"bc_g7_lb_in2":0.2,"powder_g":3},
            "rifle":{"mass_kg":3,"kind":"precharged_air","muzzle":"brake","barrel_cm":60,"barrel_radius_at_bell_mm":9,"comb":"low","left_handed":true,"iron_sights":true},
            "mount":{"rings_kept_mm":25.4,"no_rings":true,"rings_centre_height_mm":1,"base":"two_piece","incline_mrad":6,"rail_under_bell":true},
            "money":{"band":"C","attitude":"no_limit","all_in":3,"used":true},
            "zoom":"each_shot","detail":"young","carry":"few_km",
            "distance":{"habit":"dial_and_marks","rangefinder":false,"unit":"moa"},
            "lit_mark":"not_allowed",
            "place":{"latitude_deg":1,"longitude_deg_east":2,"height_m":3,"first_month":12,"last_month":2,"coldest_c":-5},
            "rulebook":{"magnification_most":3,"lit_mark_forbidden":true,"refocusing_forbidden":true,"focus_finds_range":true,"mass_most_g":900},
            "sight_now":{"line":"3-12x50","annoys":["too_dark","hard_to_find_picture"]},
            "weights":{"mass_percent_per_100_g":1,"height_percent_per_10_mm":2,"money_percent_per_band":3},
            "habits":{"both_eyes_open":true,"comes_off":false,"others_use_it":null}}"#;
        for text in [
            whole,
            "{}",
            r#"{"eye":null,"uses":[]}"#,
            r#"{"eye":{}}"#,
            r#"{"age":1}"#,
            r#"{"eye":{"age":1}}"#,
            r#"{"eye":{"age_years":"old"}}"#,
            r#"{"eye":{"astigmatism":null}}"#,
            r#"{"eye":{"lens":"new"}}"#,
            r#"{"zoom":"New"}"#,
            r#"{"zoom":3}"#,
            r#"{"manners":[{"share":1}]}"#,
            r#"{"ranges":{"nearest_m":1,"usual_m":2}}"#,
            r#"{"uses":{}}"#,
            r#"{"uses":null}"#,
            r#"{"place":{"first_month":1.0}}"#,
            r#"{"place":{"first_month":300}}"#,
            r#"{"place":{"first_month":-1}}"#,
            r#"{"version":1.5}"#,
            r#"{"load":{"cartridge":7}}"#,
            r#"{"money":{"band":"c"}}"#,
        ] {
            let theirs: Result<Answers, _> = serde_json::from_str(text);
            let ours = read(&Json::read(text).unwrap());
            match (ours, theirs) {
                (Ok(ours), Ok(theirs)) => {
                    assert_eq!(ours, theirs, "{text}");
                    let value = serde_json::to_value(&theirs).unwrap();
                    assert_eq!(written(&ours).written(), value.to_string(), "{text}");
                }
                (Err(why), Err(_)) => assert!(!why.is_empty()),
                (ours, theirs) => panic!("{text}: {ours:?}, but {theirs:?}"),
            }
        }
        let why = read(&Json::read(r#"{"eye":{"age_years":"old"}}"#).unwrap());
        assert_eq!(
            why.unwrap_err(),
            "eye.age_years is \"old\", a number is wanted"
        );
    }
}
