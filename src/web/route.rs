//! Where in the page one is: fragments, so that any path of any host will do.

/// A place in the page.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Route {
    /// What this is, and what it is not.
    Opening,
    /// One question, by its key.
    Question(String),
    /// All answers, with a way back to each.
    Check,
    /// The advice.
    Advice,
    /// All drawings.
    Pictures,
    /// This one or that one.
    Compare,
    /// Which ring height.
    Rings,
    /// Zero clicks.
    Zero,
    /// What to try in the shop.
    Shop,
    /// Mounting, zeroing, care.
    After,
    /// Everything on one screen, for a shop's counter.
    Counter,
    /// A shop's stock list.
    Shelf,
    /// What a club puts on its own page.
    Club,
    /// How it computes, where from, what is stored.
    About,
    /// A shared link, with the answers in it.
    Open(String),
    /// Inside another page, with presets.
    Embed(String),
    /// A fragment that names no page.
    Unknown(String),
}

const PLAIN: [(&str, Route); 13] = [
    ("", Route::Opening),
    ("check", Route::Check),
    ("advice", Route::Advice),
    ("pictures", Route::Pictures),
    ("compare", Route::Compare),
    ("rings", Route::Rings),
    ("zero", Route::Zero),
    ("shop", Route::Shop),
    ("after", Route::After),
    ("counter", Route::Counter),
    ("shelf", Route::Shelf),
    ("club", Route::Club),
    ("about", Route::About),
];

impl Route {
    /// The place that a fragment names, with or without its `#`.
    #[must_use]
    pub fn of(fragment: &str) -> Self {
        let path = fragment.trim_start_matches('#').trim_matches('/');
        if let Some((_, route)) = PLAIN.iter().find(|(name, _)| *name == path) {
            return route.clone();
        }
        match path.split_once('/') {
            Some(("question", key)) => Self::Question(key.into()),
            Some(("embed", presets)) => Self::Embed(presets.into()),
            Some(("open", answers)) => Self::Open(answers.into()),
            _ => Self::Unknown(path.into()),
        }
    }

    /// The fragment that leads here, with its `#`.
    #[must_use]
    pub fn href(&self) -> String {
        match self {
            Self::Question(key) => format!("#/question/{key}"),
            Self::Open(answers) => format!("#/open/{answers}"),
            Self::Embed(presets) => format!("#/embed/{presets}"),
            Self::Unknown(path) => format!("#/{path}"),
            plain => {
                let name = PLAIN
                    .iter()
                    .find(|(_, route)| route == plain)
                    .map_or("", |(name, _)| name);
                format!("#/{name}")
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::Route;

    #[test]
    fn every_place_leads_back_to_itself() {
        for place in super::PLAIN.iter().map(|(_, route)| route.clone()).chain([
            Route::Question("quarry".into()),
            Route::Open("1abc-_".into()),
            Route::Embed("counter/%7B%7D".into()),
            Route::Unknown("nowhere/else".into()),
        ]) {
            assert_eq!(Route::of(&place.href()), place);
        }
    }

    #[test]
    fn a_bare_address_is_the_opening() {
        for fragment in ["", "#", "#/", "/"] {
            assert_eq!(Route::of(fragment), Route::Opening);
        }
    }
}
