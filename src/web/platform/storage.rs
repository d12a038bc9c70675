//! What is kept in the browser, with a twin in memory for where that is denied.

use crate::plain::Map;
use crate::ports::{AnswerStore, MemoryStore, StoreProblem};
use std::cell::RefCell;

thread_local! {
    static TWINS: RefCell<Map<&'static str, MemoryStore>> = const { RefCell::new(Map::new()) };
}

/// A text kept in the browser under a name, and in memory where the browser keeps nothing: it
/// then lasts as long as the page.
#[derive(Clone, Copy, Debug)]
pub struct Kept(
    /// The name.
    pub &'static str,
);

impl Kept {
    fn browser() -> Option<web_sys::Storage> {
        // Several frames on one page must not share answers.
        if crate::web::embed::is_framed() {
            return None;
        }
        web_sys::window()?.local_storage().ok().flatten()
    }

    fn with_twin<T>(self, of: impl FnOnce(&MemoryStore) -> T) -> T {
        TWINS.with_borrow_mut(|twins| of(twins.get_or(self.0, MemoryStore::default)))
    }

    /// The text, from memory or else from the browser; none where nothing is kept.
    #[must_use]
    pub fn text(self) -> Option<String> {
        self.load().ok().flatten()
    }
}

impl AnswerStore for Kept {
    fn load(&self) -> Result<Option<String>, StoreProblem> {
        if let Some(text) = self.with_twin(MemoryStore::load)? {
            return Ok(Some(text));
        }
        match Self::browser() {
            Some(storage) => storage.get_item(self.0).map_err(|_| StoreProblem::Denied),
            None => Ok(None),
        }
    }

    fn save(&self, text: &str) -> Result<(), StoreProblem> {
        let problem = match Self::browser() {
            Some(storage) if storage.set_item(self.0, text).is_ok() => {
                return self.with_twin(MemoryStore::forget);
            }
            Some(_) => Err(StoreProblem::Full),
            // In a frame it is meant so, and nothing to tell.
            None if crate::web::embed::is_framed() => Ok(()),
            None => Err(StoreProblem::Denied),
        };
        self.with_twin(|twin| twin.save(text)).and(problem)
    }

    fn forget(&self) -> Result<(), StoreProblem> {
        self.with_twin(MemoryStore::forget)?;
        match Self::browser() {
            Some(storage) => storage
                .remove_item(self.0)
                .map_err(|_| StoreProblem::Denied),
            None => Ok(()),
        }
    }
}
