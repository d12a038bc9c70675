//! What the core asks of its surroundings, as small traits with in-memory twins.

use core::cell::{Cell, RefCell};

/// Where answers are kept between visits. The page keeps them in the browser's storage.
pub trait AnswerStore {
    /// The text kept last, if any.
    ///
    /// # Errors
    /// [`StoreProblem::Denied`] where nothing may be kept.
    fn load(&self) -> Result<Option<String>, StoreProblem>;

    /// Keeps a text in place of the one before.
    ///
    /// # Errors
    /// [`StoreProblem`]: denied, or no room left; then what was kept before is still there.
    fn save(&self, text: &str) -> Result<(), StoreProblem>;

    /// Forgets what was kept.
    ///
    /// # Errors
    /// [`StoreProblem::Denied`] where nothing may be changed.
    fn forget(&self) -> Result<(), StoreProblem>;
}

/// Why something was not kept.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum StoreProblem {
    /// The surroundings do not allow it.
    Denied,
    /// There is no room left.
    Full,
}

/// What time it is. The core itself never asks.
pub trait Clock {
    /// Seconds since 1970-01-01T00:00Z.
    fn seconds(&self) -> f64;
}

/// A store in memory, with a limit and a lock, as a stand-in where the browser keeps nothing.
#[derive(Debug, Default)]
pub struct MemoryStore {
    text: RefCell<Option<String>>,
    /// Most bytes it takes; none: no limit.
    pub room: Cell<Option<usize>>,
    /// It refuses everything.
    pub denied: Cell<bool>,
}

impl AnswerStore for MemoryStore {
    fn load(&self) -> Result<Option<String>, StoreProblem> {
        if self.denied.get() {
            return Err(StoreProblem::Denied);
        }
        Ok(self.text.borrow().clone())
    }

    fn save(&self, text: &str) -> Result<(), StoreProblem> {
        if self.denied.get() {
            return Err(StoreProblem::Denied);
        }
        if self.room.get().is_some_and(|room| text.len() > room) {
            return Err(StoreProblem::Full);
        }
        *self.text.borrow_mut() = Some(text.to_owned());
        Ok(())
    }

    fn forget(&self) -> Result<(), StoreProblem> {
        if self.denied.get() {
            return Err(StoreProblem::Denied);
        }
        *self.text.borrow_mut() = None;
        Ok(())
    }
}

/// A clock that stands where it was set.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct FixedClock {
    /// Seconds since 1970-01-01T00:00Z.
    pub seconds: f64,
}

impl Clock for FixedClock {
    fn seconds(&self) -> f64 {
        self.seconds
    }
}

#[cfg(test)]
mod tests {
    use super::{AnswerStore, MemoryStore, StoreProblem};

    #[test]
    fn what_was_kept_stays_when_there_is_no_room() {
        let store = MemoryStore::default();
        assert_eq!(store.load(), Ok(None));
        store.save("first").unwrap();
        store.room.set(Some(6));
        assert_eq!(store.save("a longer one"), Err(StoreProblem::Full));
        assert_eq!(store.load(), Ok(Some("first".to_owned())));
        store.forget().unwrap();
        assert_eq!(store.load(), Ok(None));
        store.denied.set(true);
        assert_eq!(store.save("x"), Err(StoreProblem::Denied));
    }
}
