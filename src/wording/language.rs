//! Which languages there are, and which one is spoken.

use core::cell::Cell;

use super::{messages, place_of};

/// One of the languages under `locales/`.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Language(usize);

thread_local! {
    static SPOKEN: Cell<Language> = const { Cell::new(Language(0)) };
}

/// All languages, English first.
pub fn languages() -> impl Iterator<Item = Language> {
    (0..messages::LANGUAGES.len()).map(Language)
}

/// Speaks this language from now on (on this thread: page and worker each have their own).
pub fn speak(language: Language) {
    SPOKEN.set(language);
}

/// The language spoken now: English unless [`speak`] said otherwise.
#[must_use]
pub fn spoken() -> Language {
    SPOKEN.get()
}

impl Language {
    /// The language for a tag as in `de-AT` or `en`: by its first part.
    #[must_use]
    pub fn from_tag(tag: &str) -> Option<Self> {
        let first = tag.split(['-', '_']).next().unwrap_or_default();
        languages().find(|language| language.tag().eq_ignore_ascii_case(first))
    }

    /// Its tag, as in `en`: the name of its folder.
    #[must_use]
    pub fn tag(self) -> &'static str {
        messages::LANGUAGES.get(self.0).map_or("en", |(tag, _)| tag)
    }

    /// Its name in itself.
    #[must_use]
    pub fn name(self) -> String {
        self.pattern(const { place_of("locale-name", &[]) })
            .to_owned()
    }

    /// The message at a place, encoded.
    pub(super) fn pattern(self, place: usize) -> &'static str {
        messages::LANGUAGES
            .get(self.0)
            .and_then(|(_, texts)| texts.get(place))
            .unwrap_or_default()
    }
}
