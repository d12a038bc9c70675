//! The counter in a shop: one customer after the other, undo, and nothing left behind.

use super::answers::{Answers, Units, VERSION};
use super::kinds::Kind;
use super::questions::Question;
use super::value::{Reply, apply};

/// Most steps that can be undone.
const STEPS: usize = 60;

/// The questions of the counter, in the order in which staff ask them; the kinds of shooting
/// stand after the first.
pub const ORDER: [&str; 9] = [
    "rifle",
    "quarry",
    "manner",
    "light",
    "eye",
    "sight_now",
    "mount",
    "money",
    "zoom",
];

/// The questions of the counter in order.
pub fn questions() -> impl Iterator<Item = &'static Question> {
    ORDER.iter().filter_map(|key| Question::from_key(key))
}

/// What staff did.
#[derive(Clone, Debug, PartialEq)]
pub enum Act {
    /// Tapped a usual kind of shooting.
    Kind(&'static str),
    /// Answered something.
    Reply(Reply),
    /// Opened a customer's link.
    Open(Box<Answers>),
    /// Changed the units of the shop.
    Units(Units),
    /// Took the last step back.
    Undo,
    /// Turned to the next customer.
    NextCustomer,
}

/// The state of the counter.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Counter {
    answers: Answers,
    before: Vec<Answers>,
    taps: usize,
}

impl Counter {
    /// An empty counter that reads and shows these units.
    #[must_use]
    pub fn new(units: Units) -> Self {
        Self {
            answers: Answers {
                version: VERSION,
                units,
                ..Answers::default()
            },
            before: Vec::new(),
            taps: 0,
        }
    }

    /// A counter that goes on from these answers and what they were before each change, the
    /// latest last.
    #[must_use]
    pub fn going_on(answers: Answers, before: Vec<Answers>) -> Self {
        Self {
            answers,
            before,
            taps: 0,
        }
    }

    /// The answers, and what they were before each change, the latest last.
    #[must_use]
    pub fn into_parts(self) -> (Answers, Vec<Answers>) {
        (self.answers, self.before)
    }

    /// What the customer said so far.
    #[must_use]
    pub fn answers(&self) -> &Answers {
        &self.answers
    }

    /// How many times the screen was touched for this customer.
    #[must_use]
    pub fn taps(&self) -> usize {
        self.taps
    }

    /// Whether there is a step to take back.
    #[must_use]
    pub fn can_undo(&self) -> bool {
        !self.before.is_empty()
    }

    /// The counter after something was done.
    #[must_use]
    pub fn after(&self, act: &Act) -> Self {
        match act {
            // Nothing of the last customer stays, not even what could be undone.
            Act::NextCustomer => Self::new(self.answers.units),
            Act::Undo => {
                let mut next = self.clone();
                if let Some(answers) = next.before.pop() {
                    next.answers = answers;
                    next.taps += 1;
                }
                next
            }
            Act::Units(units) => {
                let mut next = self.clone();
                next.answers.units = *units;
                next.before.iter_mut().for_each(|each| each.units = *units);
                next
            }
            Act::Kind(key) => match Kind::from_key(key) {
                Some(kind) => self.with(kind.fill(&self.answers)),
                None => self.clone(),
            },
            Act::Reply(reply) => self.with(apply(&self.answers, reply)),
            Act::Open(answers) => {
                let mut opened = (**answers).clone();
                opened.version = VERSION;
                opened.units = self.answers.units;
                self.with(opened)
            }
        }
    }

    /// The counter with other answers, which can be taken back.
    #[must_use]
    pub fn with(&self, answers: Answers) -> Self {
        let mut next = self.clone();
        next.taps += 1;
        if answers != next.answers {
            next.before
                .push(core::mem::replace(&mut next.answers, answers));
            if next.before.len() > STEPS {
                next.before.remove(0);
            }
        }
        next
    }
}
