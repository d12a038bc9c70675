//! What is said at counters, tested for one shooter.
//!
//! Every [`SayingKey`] is computed from the need alone (and the
//! sight in question, if there is one); no ranking is needed. One file holds one theme; each
//! function names the saying in plain words, what it computes, what its effects are in their
//! order, and from where on it is true, half true or false. The table of all of them stands
//! in `docs/sayings.md`.

mod aim;
pub(crate) mod case;
mod flight;
mod glass;
mod light;
mod parallax;
mod recoil_and_mount;
mod zoom;

use super::report::{Saying, SayingKey};
use crate::need::Need;
use crate::sight::Specification;
use case::Case;

/// All sayings, tested for a shooter with `sight`, or without one with a 2.5–10 × 50 in the
/// second plane.
///
/// Those that concern this shooter come first: who never shoots late finds the sayings about
/// dusk at the end. Within that the order is that of the keys.
///
/// # Accuracy
/// Where the figures hold what `tests/reference_sayings.rs` holds. Limits are assumptions
/// unless the function names a source.
///
/// # Example
/// ```
/// use scopewright::{advice::sayings::sayings, need::{answers::Answers, resolve}};
/// let need = resolve(&Answers::default());
/// assert!(sayings(&need, None).len() >= 36);
/// ```
#[must_use]
pub fn sayings(need: &Need, sight: Option<&Specification>) -> Vec<Saying> {
    let mut themes = Themes::of(need, sight);
    while !themes.step() {}
    themes.sayings()
}

/// The sayings theme by theme, a few milliseconds each.
pub(crate) struct Themes<'a> {
    case: Case<'a>,
    at: usize,
    list: Vec<Saying>,
}

impl<'a> Themes<'a> {
    /// None tested yet.
    pub(crate) fn of(need: &'a Need, sight: Option<&Specification>) -> Self {
        Self {
            case: Case::of(need, sight),
            at: 0,
            list: Vec::new(),
        }
    }

    /// Tests one theme more; true when all are tested.
    pub(crate) fn step(&mut self) -> bool {
        let themes: [fn(&Case) -> Vec<Saying>; 7] = [
            light::all,
            glass::all,
            aim::all,
            parallax::all,
            flight::all,
            recoil_and_mount::all,
            zoom::all,
        ];
        if let Some(theme) = themes.get(self.at) {
            self.list.extend(theme(&self.case));
            self.at += 1;
        }
        self.at >= themes.len()
    }

    /// All that were tested, in order.
    pub(crate) fn sayings(mut self) -> Vec<Saying> {
        let out_late = self.case.dusk.out_late;
        crate::plain::sort_by_key(&mut self.list, |saying| {
            (!out_late && about_dusk(saying.key), saying.key)
        });
        self.list
    }
}

/// Whether a saying is about dusk or night.
fn about_dusk(key: SayingKey) -> bool {
    use SayingKey as K;
    matches!(
        key,
        K::FivePointsAreTwentyMinutes
            | K::EveryoneNeedsSevenMillimetres
            | K::PastFiftyA56IsWasted
            | K::EightBy56IsTheNightSight
            | K::TurnDownWhenDark
            | K::TurnUpWhenDark
            | K::TwilightNumberDecides
            | K::SnowDoublesTheLight
            | K::CloudCostsTwentyMinutes
            | K::MoonNeedsElectronics
            | K::FixedIsBrighter
            | K::LitMeansNight
            | K::NoBatteryNoAim
    )
}
