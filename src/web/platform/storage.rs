//! What is kept in the browser, with a twin in memory for where that is denied.

use std::cell::RefCell;
use std::collections::BTreeMap;

/// Why something could not be kept.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum StoreFault {
    /// The browser keeps nothing for this page (private window, settings, foreign frame).
    Denied,
    /// There is no room left.
    Full,
}

thread_local! {
    static TWIN: RefCell<BTreeMap<String, String>> = const { RefCell::new(BTreeMap::new()) };
}

fn browser() -> Option<web_sys::Storage> {
    // Several frames on one page must not share answers.
    if crate::web::embed::is_framed() {
        return None;
    }
    web_sys::window()?.local_storage().ok().flatten()
}

/// What was kept under `key`, from the browser or else from memory.
#[must_use]
pub fn kept(key: &str) -> Option<String> {
    TWIN.with_borrow(|twin| twin.get(key).cloned())
        .or_else(|| browser()?.get_item(key).ok().flatten())
}

/// Keeps `text` under `key`, in memory always and in the browser if it can be.
///
/// # Errors
/// The browser denies or has no room; the text then lasts as long as the page.
pub fn keep(key: &str, text: &str) -> Result<(), StoreFault> {
    let Some(storage) = browser() else {
        TWIN.with_borrow_mut(|twin| twin.insert(key.into(), text.into()));
        // In a frame it is meant so, and nothing to tell.
        return if crate::web::embed::is_framed() {
            Ok(())
        } else {
            Err(StoreFault::Denied)
        };
    };
    match storage.set_item(key, text) {
        Ok(()) => {
            TWIN.with_borrow_mut(|twin| twin.remove(key));
            Ok(())
        }
        Err(_) => {
            TWIN.with_borrow_mut(|twin| twin.insert(key.into(), text.into()));
            Err(StoreFault::Full)
        }
    }
}

/// Forgets what was kept under `key`.
pub fn forget(key: &str) {
    TWIN.with_borrow_mut(|twin| twin.remove(key));
    if let Some(storage) = browser() {
        // A browser that denies storage has nothing to forget.
        let _ = storage.remove_item(key);
    }
}
