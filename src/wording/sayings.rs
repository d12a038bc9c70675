//! A saying as one sentence to say aloud, with this person's numbers.

use super::advice::{bands, key_of, quantity_value};
use super::{Arg, decimals_for, number, say, with_unit};
use crate::advice::report::{Effect, Quantity, Saying, SayingKey};
use crate::need::answers::Units;
use crate::plain::Gathered;
use crate::t;

/// The sentence for a saying and its verdict.
#[must_use]
pub fn spoken(saying: &Saying, units: Units) -> String {
    let args: Vec<(&str, Arg)> = names(saying.key)
        .iter()
        .zip(&saying.effects)
        .map(|(name, effect)| (*name, Arg::from(shown(effect, units))))
        .gathered();
    let (key, verdict) = (key_of(&saying.key), key_of(&saying.verdict));
    say(&format!("said-{key}-{verdict}"), &args)
}

/// The size of an effect; its sign is told by the sentence.
fn shown(effect: &Effect, units: Units) -> String {
    let value = effect.value.abs();
    let small = |below: f64| usize::from(value >= 0.05 && value < below);
    let alone = |quantity: Quantity| match quantity {
        Quantity::Contrast => with_unit(100.0 * value, 0, "%"),
        Quantity::Percent | Quantity::OnIrisPercent => with_unit(value, small(9.95), "%"),
        Quantity::Ratio => number(value, small(9.95)),
        Quantity::PriceBands => bands(value),
        Quantity::Clicks => number(value, small(2.95)),
        Quantity::MarkArcmin | Quantity::LineNeededArcmin => {
            format!("{}′", number(value, small(9.95)))
        }
        Quantity::WobbleMrad => with_unit(value, if value < 1.0 { 2 } else { 0 }, "mrad"),
        Quantity::RecoilJ => with_unit(value, small(9.95), "J"),
        Quantity::SecondsTonight if value < 0.5 => with_unit(0.0, 0, "s"),
        Quantity::Magnification if (value - value.round()).abs() < 0.05 => {
            t!("setting-mag", value = number(value, 0))
        }
        quantity => quantity_value(quantity, value, 0.0, units),
    };
    // A spread that is told with a whole unit where the value is: in brackets, so that the
    // sentence goes on.
    if !(effect.spread > 0.0) {
        return alone(effect.quantity);
    }
    let unit = match effect.quantity {
        Quantity::MinutesTonight => "min",
        Quantity::SecondsTonight => "s",
        Quantity::PupilMm => "mm",
        Quantity::TravelMrad => "mrad",
        quantity => return alone(quantity),
    };
    let decimals = decimals_for(effect.spread).min(1);
    t!(
        "said-about",
        value = with_unit(value, decimals, unit),
        spread = number(effect.spread, decimals)
    )
}

/// What the effects of a saying are called in its sentences, in their order.
#[must_use]
pub fn names(key: SayingKey) -> &'static [&'static str] {
    use SayingKey as K;
    match key {
        K::ThickTubeIsBrighter => &["seconds", "mass", "travel"],
        K::ThickTubeForLongRange => &["needed", "thin", "thick", "range"],
        K::FivePointsAreTwentyMinutes => &["seconds"],
        K::OneSeesDearGlass => &["plain", "best", "minutes"],
        K::EveryoneNeedsSevenMillimetres => &["pupil", "iris", "age"],
        K::PastFiftyA56IsWasted => &["eight", "eleven", "pupil"],
        K::EightBy56IsTheNightSight => &["minutes", "pupil", "mass"],
        K::TurnDownWhenDark | K::TurnUpWhenDark => &["best", "top_lost", "low_lost", "top"],
        K::TwilightNumberDecides => &["number", "minutes"],
        K::SnowDoublesTheLight => &["clear", "overcast", "ground", "grass", "snow"],
        K::CloudCostsTwentyMinutes => &["closed", "dark"],
        K::MoonNeedsElectronics => &["nights", "needed"],
        K::FirstPlaneForFar => &["line", "needed", "miss", "circle"],
        K::FirstPlaneCoversTarget => &["low", "high", "circle"],
        K::HalfAMarkAtAnyPower => &["miss", "range", "circle"],
        K::SetAtHundredUselessAt300 => &["usual", "extreme", "circle"],
        K::BlackRingIsParallax => &["error", "full", "gone"],
        K::SideFocusIsForSharpness => &["left", "circle", "range", "dioptres"],
        K::FourHighAndForget => &["zero", "reach", "circle", "farthest"],
        K::FlatCartridgeNeedsNoDial => &["reach", "zero", "farthest", "drop"],
        K::DialIsPrecision => &["clicks", "load", "range", "circle"],
        K::MoaIsFiner => &["quarter", "tenth", "group"],
        K::OneMoaIsAnInch => &["percent", "miss", "clicks", "range"],
        K::MorePowerBetterShot => &["points", "below", "ceiling"],
        K::HighPowerMakesMeShake => &["wobble", "shown", "ceiling"],
        K::LowMountIsAlwaysBetter => &["height", "bore"],
        K::HeightDoesNotMatter => &["near", "change", "far", "circle", "range"],
        K::EyeReliefIsOnTheBox => &["needed", "box", "least"],
        K::OnlyASmallCartridge => &["velocity", "energy", "relief"],
        K::MagnumsKillSights => &["force", "velocity"],
        K::RingsAreJustRings => &["peak", "mean", "energy"],
        K::LitMeansNight => &["line", "needed", "light"],
        K::NoBatteryNoAim => &["bars", "needed", "width"],
        K::FixedIsBrighter => &["seconds", "mass", "bands"],
        K::BiggerBellNarrowsField => &["small", "large", "mass"],
        K::WideZoomDoesItAll => &["field", "needed", "minutes", "told", "asked", "range"],
        K::BothEyesDoubleField => &["power", "field", "percent", "seconds"],
        K::ModeratorChangesOnlyNoise => &["energy", "velocity", "relief", "mass"],
        K::UphillHighDownhillLow => &["up", "down", "percent", "range"],
    }
}

#[cfg(test)]
mod tests {
    use super::{names, spoken};
    use crate::advice::report::Verdict;
    use crate::advice::sayings::sayings;
    use crate::need::answers::{Answers, Units};
    use crate::need::resolve;
    use crate::wording;

    #[test]
    fn every_saying_has_a_sentence_for_every_verdict() {
        let list = sayings(&resolve(&Answers::default()), None);
        assert!(list.len() >= 36);
        for mut saying in list {
            let names = names(saying.key);
            assert_eq!(names.len(), saying.effects.len(), "{:?}", saying.key);
            for verdict in [Verdict::True, Verdict::Half, Verdict::False] {
                saying.verdict = verdict;
                let key = super::key_of(&saying.key);
                let message = format!("said-{key}-{}", super::key_of(&verdict));
                let variables = wording::variables(&message);
                let variables = variables.unwrap_or_else(|| panic!("no words for {message}"));
                assert!(!variables.is_empty(), "{message} tells no number");
                for variable in variables {
                    assert!(names.contains(variable), "{message} asks for {variable}");
                }
                for units in [Units::Metric, Units::Imperial] {
                    let text = spoken(&saying, units);
                    assert!(text.ends_with('.') && !text.contains(".."), "{text}");
                }
            }
        }
    }
}
