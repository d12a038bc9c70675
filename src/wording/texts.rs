//! Many texts in one, found by place, without a table of pointers.

/// So many texts stand between two places that are noted; `build.rs` writes it too.
const BLOCK: usize = 32;

/// Texts one after the other, each ended by U+0000.
pub(super) struct Texts {
    /// All of them.
    pub(super) text: &'static str,
    /// Where every thirty-second begins.
    pub(super) starts: &'static [u32],
}

impl Texts {
    /// The text at a place.
    pub(super) fn get(&self, place: usize) -> Option<&'static str> {
        let start = *self.starts.get(place / BLOCK)?;
        let text = self.text.get(start as usize..).unwrap_or_default();
        text.split_terminator('\0').nth(place % BLOCK)
    }
}

#[cfg(test)]
mod tests {
    use super::super::messages::{KEYS, LANGUAGES};

    #[test]
    fn every_place_has_a_text_and_there_are_no_more() {
        for (_, texts) in LANGUAGES {
            for (place, key) in KEYS.iter().enumerate() {
                let text = texts.get(place).expect("a text for each place");
                assert_eq!(text.is_empty(), key.is_empty(), "{key}");
            }
            assert_eq!(texts.get(KEYS.len()), None);
        }
    }
}
