//! Plural categories.
//!
//! # Source
//! Unicode CLDR, plural rules, for the families a language names in its own file by
//! `locale-plural`.

use super::{Language, place_of};

/// The category of a number as it is shown: `one`, `few`, `many` or `other`.
pub(super) fn category(language: Language, value: f64, has_decimals: bool) -> &'static str {
    of_family(
        language.pattern(const { place_of("locale-plural", &[]) }),
        value,
        has_decimals,
    )
}

fn of_family(family: &str, value: f64, has_decimals: bool) -> &'static str {
    let size = value.abs();
    let whole = !has_decimals && size < 1e15;
    let count = if whole { size.round() as u64 } else { 0 };
    let (ten, hundred) = (count % 10, count % 100);
    match family {
        // Japanese, Chinese, Turkish after numbers and others: no difference.
        "none" => "other",
        // French: everything below 2.
        "french" if size < 2.0 => "one",
        // Czech, Slovak.
        "czech" if !whole => "many",
        "czech" if count == 1 => "one",
        "czech" if (2..=4).contains(&count) => "few",
        // Polish.
        "polish" if !whole => "other",
        "polish" if count == 1 => "one",
        "polish" if (2..=4).contains(&ten) && !(12..=14).contains(&hundred) => "few",
        "polish" => "many",
        // Russian, Ukrainian.
        "russian" if !whole => "other",
        "russian" if ten == 1 && hundred != 11 => "one",
        "russian" if (2..=4).contains(&ten) && !(12..=14).contains(&hundred) => "few",
        "russian" => "many",
        // English, German, Dutch, the Nordic languages, Italian and others.
        _ if whole && count == 1 && family != "french" && family != "czech" => "one",
        _ => "other",
    }
}

#[cfg(test)]
mod tests {
    use super::of_family;

    /// Examples from the CLDR chart of language plural rules.
    #[test]
    fn categories_follow_cldr() {
        let samples = [
            ("english", 1.0, false, "one"),
            ("english", 1.5, true, "other"),
            ("english", 0.0, false, "other"),
            ("french", 0.0, false, "one"),
            ("french", 1.5, true, "one"),
            ("french", 2.0, false, "other"),
            ("czech", 3.0, false, "few"),
            ("czech", 1.5, true, "many"),
            ("czech", 5.0, false, "other"),
            ("polish", 22.0, false, "few"),
            ("polish", 12.0, false, "many"),
            ("polish", 1.0, false, "one"),
            ("russian", 21.0, false, "one"),
            ("russian", 11.0, false, "many"),
            ("russian", 1.5, true, "other"),
            ("none", 1.0, false, "other"),
        ];
        for (family, value, decimals, category) in samples {
            assert_eq!(
                of_family(family, value, decimals),
                category,
                "{family} {value}"
            );
        }
    }
}
