//! Many texts in one, found by place or by themselves, without a table of pointers.

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
    fn from(&self, start: u32) -> impl Iterator<Item = &'static str> {
        let text = self.text.get(start as usize..).unwrap_or_default();
        text.split_terminator('\0')
    }

    /// All of them, in their order.
    pub(super) fn all(&self) -> impl Iterator<Item = &'static str> {
        self.from(0)
    }

    /// The text at a place.
    pub(super) fn get(&self, place: usize) -> Option<&'static str> {
        let start = self.starts.get(place / BLOCK)?;
        self.from(*start).nth(place % BLOCK)
    }

    /// The place of a text, where they stand sorted.
    pub(super) fn find(&self, wanted: &str) -> Option<usize> {
        let block = self
            .starts
            .partition_point(|&start| self.from(start).next().is_some_and(|text| text <= wanted))
            .checked_sub(1)?;
        let within = self
            .from(*self.starts.get(block)?)
            .take(BLOCK)
            .position(|text| text == wanted)?;
        Some(block * BLOCK + within)
    }
}

#[cfg(test)]
mod tests {
    use super::super::messages::{KEYS, SORTED};

    #[test]
    fn every_key_is_found_and_no_other() {
        for (place, key) in KEYS.iter().enumerate() {
            assert_eq!(SORTED.find(key), Some(place));
            assert_eq!(SORTED.get(place), Some(*key));
            assert_eq!(SORTED.find(&format!("{key}-")), None);
        }
        assert!(SORTED.all().eq(KEYS.iter().copied()));
        assert_eq!(SORTED.get(KEYS.len()), None);
        assert_eq!(SORTED.find(""), None);
        assert_eq!(SORTED.find("~"), None);
    }
}
