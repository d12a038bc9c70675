//! Small and capital letters of the Latin, Greek and Cyrillic scripts.
//!
//! The standard library knows the letters of all scripts, and its tables weigh more than all
//! that is read here: what other scripts write is left as it is.

/// The small letter of a capital; any other sign itself.
#[must_use]
pub fn small(c: char) -> char {
    let code = c as u32;
    let up = match code {
        // A–Z, À–Þ, Greek, Cyrillic.
        0x41..=0x5A | 0xC0..=0xD6 | 0xD8..=0xDE | 0x391..=0x3A1 | 0x3A3..=0x3AB => 32,
        0x410..=0x42F => 32,
        0x400..=0x40F => 80,
        0x386 => 38,
        0x388..=0x38A => 37,
        0x38C => 64,
        0x38E..=0x38F => 63,
        // Latin with marks: capital and small letter side by side.
        0x100..=0x12F | 0x132..=0x137 | 0x14A..=0x177 => 1 - code % 2,
        0x139..=0x148 | 0x179..=0x17E => code % 2,
        0x178 => return 'ÿ',
        _ => 0,
    };
    char::from_u32(code + up).unwrap_or(c)
}

/// The capital of a small letter; any other sign itself.
#[must_use]
pub fn capital(c: char) -> char {
    if c == 'ÿ' {
        return 'Ÿ';
    }
    [32, 80, 1, 38, 37, 64, 63]
        .into_iter()
        .filter_map(|down| char::from_u32((c as u32).checked_sub(down)?))
        .find(|&other| other != c && small(other) == c)
        .unwrap_or(c)
}

/// A text in small letters.
#[must_use]
pub fn small_text(text: &str) -> String {
    text.chars().map(small).collect()
}

/// Whether a sign is a letter, of any script.
///
/// # Accuracy
/// Exact for Latin, Greek and Cyrillic; of other scripts' marks and digits some count as
/// letters.
#[must_use]
pub fn is_letter(c: char) -> bool {
    matches!(c,
        'A'..='Z' | 'a'..='z' | 'ª' | 'µ' | 'º' | 'À'..='Ö' | 'Ø'..='ö' | 'ø'..='\u{2C1}'
        | '\u{370}'..='\u{374}' | '\u{376}'..='\u{377}' | '\u{37A}'..='\u{37D}' | '\u{37F}'
        | '\u{386}' | '\u{388}'..='\u{3F5}' | '\u{3F7}'..='\u{481}' | '\u{48A}'..='\u{1FFF}'
        | '\u{2C00}'..='\u{2DFF}' | '\u{3040}'..='\u{D7FF}' | '\u{F900}'..='\u{FDFF}')
}

#[cfg(test)]
mod tests {
    use super::{capital, is_letter, small};

    /// Capitals as the Unicode Character Database has them, by way of the standard library.
    #[test]
    fn letters_are_those_of_unicode() {
        let single = |mut letters: Box<dyn Iterator<Item = char>>, c: char| {
            let first = letters.next().unwrap_or(c);
            if letters.next().is_some() { c } else { first }
        };
        for c in ('\0'..='\u{17E}')
            .chain('\u{384}'..='\u{3CE}')
            .chain('\u{400}'..='\u{45F}')
        {
            if c != 'İ' {
                assert_eq!(small(c), single(Box::new(c.to_lowercase()), c), "{c}");
            }
            // Letters whose capital is of another script or has no small letter of its own.
            if !matches!(c, 'µ' | 'ı' | 'ς' | 'ΐ' | 'ΰ') {
                assert_eq!(capital(c), single(Box::new(c.to_uppercase()), c), "{c}");
            }
        }
        for c in ('\0'..='\u{24F}').chain('\u{370}'..='\u{52F}') {
            // Places where no letter stands yet.
            if !matches!(
                c as u32,
                0x378 | 0x379 | 0x380..=0x383 | 0x38B | 0x38D | 0x3A2 | 0x530
            ) {
                assert_eq!(is_letter(c), c.is_alphabetic(), "{c} {:x}", c as u32);
            }
        }
        for c in ['×', '″', '–', '½', '€', '、', '🦌'] {
            assert!(!is_letter(c), "{c}");
        }
    }
}
