//! What stands behind the line: each model's own figures for this person, panel by panel.
//!
//! The ranking counts them all; here they are told one by one, so that every number of the
//! advice can be followed to its model. A note is a key and its quantities, in the order that
//! `wording::notes` names them.

mod evening;
mod flight;
mod mount;
mod optics;
mod trouble;

use super::coverage::{Account, Ground};
use super::evening::Typical;
use super::ranking::Ranked;
use super::report::{Effect, Note, NoteKey, Pick, Quantity};
use crate::need::shooter::{Need, Situation};
use crate::sight::Specification;

pub use flight::flight_rows;

/// What all notes are made from, and the notes so far.
struct Sheet<'a> {
    ranked: &'a Ranked,
    ground: &'a Ground,
    need: &'a Need,
    typical: &'a Typical,
    /// The situation met most.
    situation: &'a Situation,
    /// The first pick.
    own: Specification,
    account: Account,
    first: &'a Pick,
    list: Vec<Note>,
}

impl Sheet<'_> {
    fn put(&mut self, key: NoteKey, effects: Vec<Effect>) {
        let sound = effects
            .iter()
            .all(|effect| effect.value.is_finite() && effect.spread.is_finite());
        if sound {
            self.list.push(Note { key, effects });
        }
    }

    /// The power that is mostly set in the last light.
    fn late(&self) -> f64 {
        self.account.set[0]
    }

    /// The power that is mostly set by day.
    fn day(&self) -> f64 {
        self.account.set[1]
    }
}

/// A figure that is certain.
fn exact(quantity: Quantity, value: f64) -> Effect {
    Effect {
        quantity,
        value,
        spread: 0.0,
    }
}

/// A figure with its spread.
fn with(quantity: Quantity, value: f64, spread: f64) -> Effect {
    Effect {
        quantity,
        value,
        spread: spread.abs(),
    }
}

/// All notes behind the first pick; `beside` is the sight that stands beside it on the strip.
#[must_use]
pub fn notes(
    ranked: &Ranked,
    typical: &Typical,
    first: &Pick,
    beside: Option<&Specification>,
) -> Vec<Note> {
    let own = ranked.candidates[ranked.best].specification;
    let mut sheet = Sheet {
        ranked,
        ground: &ranked.ground,
        need: &ranked.ground.need,
        typical,
        situation: &ranked.ground.need.situations[typical.situation],
        own,
        account: ranked.account(&own),
        first,
        list: Vec::new(),
    };
    trouble::notes(&mut sheet);
    evening::notes(&mut sheet, beside);
    optics::notes(&mut sheet);
    flight::notes(&mut sheet);
    mount::notes(&mut sheet);
    sheet.list
}
