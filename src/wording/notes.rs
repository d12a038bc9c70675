//! What stands behind the line, in sentences: where each note belongs, what its numbers are
//! called, and which formula and source they come from.

use super::advice::{box_mm, key_of, quantity_short};
use super::{Arg, decimals_for, number, say, with_unit};
use crate::advice::report::{ALL_NIGHT_MIN, Effect, Element, Note, NoteKey, Quantity};
use crate::need::answers::Units;
use crate::plain::Gathered;
use crate::t;

/// Where on the page a note belongs.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Place {
    /// What does not fit: before everything else.
    Trouble,
    /// The morning, in a line under the evening's strip.
    Morning,
    /// Behind the evening: until when what is told.
    EveningEnds,
    /// Behind the evening: what one step is worth.
    EveningSteps,
    /// Behind the evening: air, coat, weather.
    EveningAir,
    /// Behind the evening: eye and Moon in the dark.
    EveningNight,
    /// Behind the reason for an element.
    Reason(Element),
    /// The load itself, in a line.
    Load,
    /// The load on its way.
    Flight,
    /// The height of the sight, on the mounting sheet.
    Height,
    /// Rings along the tube, on the mounting sheet.
    Along,
    /// What holds it: rail and screws, on the mounting sheet.
    Hold,
}

/// What is known of a note beside its numbers.
#[derive(Clone, Copy, Debug)]
pub struct Known {
    /// Where it belongs.
    pub place: Place,
    /// What its numbers are called in its sentence, in their order.
    pub names: &'static [&'static str],
    /// The formula behind it, as the last part of `source-…`.
    pub source: &'static str,
}

/// What is known of a note.
#[must_use]
#[rustfmt::skip]
pub fn known(key: NoteKey) -> Known {
    use NoteKey as K;
    use Place::{
        Along, EveningAir, EveningEnds, EveningNight, EveningSteps, Flight, Height, Hold, Load,
        Morning, Reason, Trouble,
    };
    let (place, names, source): (Place, &'static [&'static str], &'static str) = match key {
        K::ZeroOutOfReach => (Trouble, &["bullet", "speed", "zero", "farthest"], "drop"),
        K::FallsShort => (Trouble, &["bullet", "speed", "asked", "reach"], "drop"),
        K::NoFlight => (Trouble, &["value", "least", "most"], "drop"),
        K::CannotBeZeroed => (Trouble, &["incline", "short", "largest", "zero"], "travel"),
        K::ZeroTooHigh => (Trouble, &["incline", "short", "smallest", "zero"], "travel"),
        K::KeptTube => (Trouble, &["ring", "tube"], "height"),
        K::KeptBell => (Trouble, &["centre", "short", "needed", "bell", "largest"], "height"),
        K::KeptBolt => (Trouble, &["centre", "short", "needed", "largest"], "height"),
        K::KeptStock => (Trouble, &["centre", "short", "needed"], "height"),
        K::NoRoomToClamp => (Trouble, &["short", "ring"], "rings"),
        K::PolarDay | K::PolarNight => (Trouble, &["latitude"], "light"),

        K::Detection => (EveningEnds, &["until", "side"], "told-apart"),
        K::Recognition => (EveningEnds, &["until", "side"], "told-apart"),
        K::Identification => (EveningEnds, &["until", "side"], "told-apart"),
        K::SecondOpinion => (EveningEnds, &["threshold", "ring", "apart", "power"], "ring"),
        K::Difference => (EveningSteps, &["later", "wide", "narrow", "pupil"], "pupil"),
        K::DifferenceMeasured => (EveningSteps, &["later", "mean", "pupil", "age"], "pupil"),
        K::PupilUsed => (Reason(Element::ObjectiveMm), &["pupil", "power", "beam", "used", "filled"], "pupil"),
        K::Adaptation => (EveningNight, &["luminance", "cones", "ratio", "warm", "change"], "mesopic"),
        K::StepObjective => (EveningSteps, &["later", "to"], "told-apart"),
        K::StepMagnification => (EveningSteps, &["later", "to"], "told-apart"),
        K::StepTransmission => (EveningSteps, &["later", "to"], "told-apart"),
        K::StepAge => (EveningSteps, &["later", "to"], "told-apart"),
        K::Haze => (EveningAir, &["range", "visibility", "left", "later"], "air"),
        K::Coat => (EveningAir, &["dry", "wet", "by_wet", "lying", "by_lying"], "light"),
        K::Weather => (EveningAir, &["closed", "dark"], "light"),
        K::Dawn => (Morning, &["from", "bare"], "light"),
        K::MoonBack => (EveningNight, &["from", "to", "ratio"], "light"),
        K::MoonAll | K::MoonNone => (EveningNight, &["ratio"], "light"),
        K::Labels => (Reason(Element::ObjectiveMm), &["number", "brightness", "power"], "labels"),
        K::Veil => (Reason(Element::Grade), &["sight", "eye", "left", "surround", "day", "night"], "veil"),

        K::Lead => (Reason(Element::MagLow), &["range", "speed", "swing", "lead", "mrad", "lengths", "time"], "lead"),
        K::FieldNeeded => (Reason(Element::FieldLowMPer100m), &["range", "needed", "shown", "power", "most"], "field"),
        K::FieldShort => (Reason(Element::FieldLowMPer100m), &["range", "needed", "shown", "power"], "field"),
        K::Crossing => (Reason(Element::FieldLowMPer100m), &["range", "shown", "speed", "seconds"], "field"),
        K::Steady => (Reason(Element::MagHigh), &["wobble", "ceiling", "range", "least", "most"], "steady"),
        K::PlaneError => (Reason(Element::Plane), &["hold", "range", "reference", "half", "miss", "circle"], "mark"),
        K::MarkDay => (Reason(Element::Reticle), &["power", "line", "needed", "covered", "circle", "range", "bars"], "mark"),
        K::MarkLate => (Reason(Element::Reticle), &["power", "line", "needed", "covered", "circle", "range", "bars"], "mark"),
        K::LitLate => (Reason(Element::Illumination), &["luminance", "line", "needed", "dim", "bright"], "mark"),
        K::ParallaxAt => (Reason(Element::Parallax), &["range", "usual", "clean", "extreme", "share", "free"], "parallax"),
        K::Travel => (Reason(Element::TubeMm), &["total", "up", "down", "needed", "range", "incline"], "travel"),
        K::Incline => (Reason(Element::TubeMm), &["incline", "up", "down"], "travel"),
        K::InclineTooMuch => (Reason(Element::TubeMm), &["incline", "short", "largest"], "travel"),
        K::Windage => (Reason(Element::TubeMm), &["windage", "lost"], "travel"),
        K::Clicks => (Reason(Element::Elevation), &["needed", "range", "tenth", "twentieth", "quarter", "third", "eighth"], "clicks"),
        K::Mismatch => (Reason(Element::Elevation), &["clicks", "miss", "range", "needed"], "clicks"),
        K::RingChanges => (Reason(Element::Elevation), &["range", "slower", "cold", "high", "tall"], "drop"),
        K::RangeError => (Reason(Element::Elevation), &["guess", "range", "miss"], "drop"),

        K::LoadTypical | K::LoadOwn => (Load, &["bullet", "speed", "drag", "energy", "zero"], "drop"),
        K::DeadOn => (Flight, &["circle", "zero", "reach", "best", "farther", "steady"], "steady"),
        K::Inside => (Flight, &["range", "circle", "centred", "path", "off"], "steady"),
        K::Highest => (Flight, &["first", "height", "at", "zero"], "drop"),
        K::Slope => (Flight, &["slope", "range", "high", "rule"], "drop"),
        K::Cant => (Flight, &["cant", "range", "side", "low", "one"], "cant"),
        K::PlaceAir => (Flight, &["height", "temperature", "density", "change", "range"], "atmosphere"),
        K::Near => (Flight, &["near", "path", "zero", "bore", "more"], "drop"),

        K::Recoil => (Reason(Element::EyeReliefMm), &["velocity", "energy", "powder"], "recoil"),
        K::MuzzleBare => (Reason(Element::EyeReliefMm), &["moderator", "brake"], "recoil"),
        K::MuzzleDevice => (Reason(Element::EyeReliefMm), &["bare", "now"], "recoil"),
        K::Barrel => (Reason(Element::EyeReliefMm), &["shorter", "velocity", "energy"], "recoil"),
        K::ReliefParts => (Reason(Element::EyeReliefMm), &["recoil", "glasses", "position", "least", "most", "asked"], "recoil"),
        K::EyeBoxTop => (Reason(Element::EyeReliefMm), &["power", "full", "gone", "along", "half"], "eye-box"),
        K::MountLoad | K::MountLoadStop => (Hold, &["mean", "peak", "mass"], "load"),
        K::Balance => (Reason(Element::MassG), &["mass", "share"], "mass"),

        K::HeightBell | K::HeightIron | K::HeightBolt | K::HeightRing | K::HeightStock =>
            (Height, &["saddle", "centre", "bore", "air", "bell", "barrel"], "height"),
        K::LargerBell => (Height, &["objective", "more"], "height"),
        K::BoltRoom => (Height, &["under", "most", "eyepiece"], "height"),
        K::Comb | K::CombLow => (Height, &["axis", "least", "most", "short"], "comb"),
        K::KeptFits => (Height, &["ring", "centre", "saddle", "spare"], "height"),
        K::EyePlace => (Along, &["relief", "behind", "length"], "rings"),
        K::RingsPlace => (Along, &["front_from", "front_to", "rear_from", "rear_to", "least", "most", "ring"], "rings"),
        K::RingsSlots => (Along, &["least", "most", "pitch"], "rail"),
        K::RailSlotted => (Hold, &["slot", "pitch", "width"], "rail"),
        K::RailNarrow => (Hold, &["slot", "wide"], "rail"),
        K::RailSmallDovetail | K::RailWideDovetail => (Hold, &["least", "most"], "rail"),
        K::RailTwoPiece => (Hold, &["least", "most"], "rail"),
        K::RailBare => (Hold, &["width"], "rail"),
        K::TorqueCaps | K::TorqueBase | K::TorqueCrossAluminium | K::TorqueCrossSteel =>
            (Hold, &["least", "most", "least_lb", "most_lb"], "torque"),
    };
    Known { place, names, source }
}

/// The notes that belong to a place, in their order.
pub fn at(notes: &[Note], place: Place) -> impl Iterator<Item = &Note> {
    notes
        .iter()
        .filter(move |note| known(note.key).place == place)
}

/// A note as a sentence.
#[must_use]
pub fn spoken(note: &Note, units: Units) -> String {
    let args: Vec<(&str, Arg)> = known(note.key)
        .names
        .iter()
        .zip(&note.effects)
        .map(|(name, effect)| {
            // Tubes and their rings are named in mm wherever they are sold.
            let words = if note.key == NoteKey::KeptTube {
                box_mm(effect.value)
            } else {
                in_words(effect, units)
            };
            (*name, Arg::from(words))
        })
        .gathered();
    say(&format!("note-{}", key_of(&note.key)), &args)
}

/// The formulas and sources behind some notes, each once, in their order.
#[must_use]
pub fn sources<'a>(notes: impl Iterator<Item = &'a Note>) -> Vec<String> {
    let mut keys: Vec<&str> = Vec::new();
    for note in notes {
        let source = known(note.key).source;
        if !keys.contains(&source) {
            keys.push(source);
        }
    }
    keys.into_iter()
        .map(|key| say(&format!("source-{key}"), &[]))
        .gathered()
}

/// The size of an effect within a sentence; a direction is told in words.
#[must_use]
pub fn in_words(effect: &Effect, units: Units) -> String {
    let Effect {
        quantity,
        value,
        spread,
    } = *effect;
    let size = |quantity| quantity_short(quantity, value.abs(), spread, units);
    // No decimals that are only noughts.
    let trimmed = |most: usize| {
        let scale = [1.0, 10.0, 100.0, 1000.0];
        let rounded = |decimals: usize| (value * scale[decimals]).round() / scale[decimals];
        let most = most.min(3);
        let decimals = (0..most).find(|&d| (rounded(d) - rounded(most)).abs() < 1e-9);
        number(value, decimals.unwrap_or(most))
    };
    match quantity {
        Quantity::UntilMin | Quantity::BeforeSunriseMin if value >= ALL_NIGHT_MIN => {
            t!("until-all-night")
        }
        Quantity::UntilMin | Quantity::BeforeSunriseMin if value <= -ALL_NIGHT_MIN => {
            t!("until-never")
        }
        Quantity::UntilMin if value < 0.0 => t!("until-before", minutes = size(quantity)),
        Quantity::UntilMin => t!("until-after", minutes = size(quantity)),
        Quantity::BeforeSunriseMin if value < 0.0 => t!("from-after", minutes = size(quantity)),
        Quantity::BeforeSunriseMin => t!("from-before", minutes = size(quantity)),
        Quantity::LaterMin if value.abs() < 0.05 && spread < 0.05 => t!("later-same"),
        Quantity::LaterMin if value.abs() < 0.05 => t!(
            "later-within",
            spread = with_unit(spread, decimals_for(spread), "min")
        ),
        // What is known to seconds is told in seconds.
        Quantity::LaterMin if value.abs() < 0.95 && spread < 0.15 => {
            let seconds = quantity_short(
                Quantity::SecondsTonight,
                60.0 * value.abs(),
                60.0 * spread,
                units,
            );
            if value < 0.0 {
                t!("later-earlier", minutes = seconds)
            } else {
                t!("later-later", minutes = seconds)
            }
        }
        Quantity::LaterMin if value < 0.0 => t!("later-earlier", minutes = size(quantity)),
        Quantity::LaterMin => t!("later-later", minutes = size(quantity)),
        Quantity::PathCm if value.abs() < 0.05 => t!("path-same"),
        Quantity::PathCm if value < 0.0 => t!("path-low", cm = size(quantity)),
        Quantity::PathCm => t!("path-high", cm = size(quantity)),
        Quantity::Contrast => with_unit(100.0 * value, 0, "%"),
        Quantity::Percent if spread <= 0.0 => with_unit(
            value,
            usize::from(value.abs() < 9.95 && (value - value.round()).abs() > 0.05),
            "%",
        ),
        Quantity::Ratio => trimmed(match value.abs() {
            v if v < 1.0 => 3,
            v if v < 20.0 => 1,
            _ => 0,
        }),
        Quantity::Clicks => trimmed(1),
        Quantity::Magnification if spread <= 0.0 => t!("setting-mag", value = trimmed(1)),
        Quantity::MarkArcmin | Quantity::LineNeededArcmin => format!("{}′", trimmed(1)),
        Quantity::LuminanceCdM2 => format!(
            "{}\u{202F}cd/m²",
            trimmed(match value {
                v if v < 0.1 => 3,
                v if v < 1.0 => 2,
                v if v < 20.0 => 1,
                _ => 0,
            })
        ),
        Quantity::WobbleMrad if spread <= 0.0 => {
            with_unit(value, if value < 1.0 { 2 } else { 1 }, "mrad")
        }
        _ => quantity_short(quantity, value, spread, units),
    }
}

#[cfg(test)]
mod tests {
    use super::{known, sources, spoken};
    use crate::advice::advise;
    use crate::need::answers::{Answers, Units};
    use crate::need::parse;
    use crate::wording;

    const SHOOTERS: [&str; 4] = [
        r#"{"version": 1}"#,
        r#"{"version": 1, "eye": {"age_years": 61, "dark_pupil_mm": 5.2}, "light": {"until": "moon"},
            "mount": {"rings_kept_mm": 30, "rings_centre_height_mm": 17, "base": "narrow_slots", "incline_mrad": 20}}"#,
        r#"{"version": 1, "uses": [{"what": "wild_boar", "share": 1, "manner": "driven"}],
            "rifle": {"muzzle": "moderator", "kind": "straight_stock", "comb": "low"},
            "mount": {"base": "two_piece"}, "place": {"latitude_deg": 71, "first_month": 6, "last_month": 6}}"#,
        r#"{"version": 1, "uses": [{"what": "rabbit", "share": 1}], "rifle": {"kind": "spring_air"},
            "ranges": {"nearest_m": 10, "usual_m": 300, "farthest_m": 1500}, "mount": {"base": "small_dovetail"}}"#,
    ];

    #[test]
    fn every_note_is_a_sentence_with_all_its_numbers() {
        let mut seen = std::collections::BTreeSet::new();
        for shooter in SHOOTERS {
            let answers: Answers = parse(shooter).unwrap();
            let advice = advise(&answers).unwrap();
            assert!(advice.notes.len() > 12, "{shooter}");
            for note in &advice.notes {
                let known = known(note.key);
                seen.insert(note.key);
                assert_eq!(known.names.len(), note.effects.len(), "{:?}", note.key);
                let message = format!("note-{}", super::key_of(&note.key));
                let variables = wording::variables(&message)
                    .unwrap_or_else(|| panic!("no words for {message}"));
                for variable in variables {
                    assert!(known.names.contains(variable), "{message}: {variable}");
                }
                for units in [Units::Metric, Units::Imperial] {
                    let text = spoken(note, units);
                    assert!(
                        text.ends_with('.') && !text.contains("NaN") && !text.contains("note-"),
                        "{text}"
                    );
                }
            }
            for source in sources(advice.notes.iter()) {
                assert!(
                    source.ends_with('.') && !source.starts_with("source-"),
                    "{source}"
                );
            }
        }
        assert!(seen.len() > 60, "{}", seen.len());
    }
}
