//! Counts the values that a reference test compares, and where they come from.

/// One source and how many of its values were compared.
pub struct Tally {
    source: &'static str,
    values: usize,
    off: Vec<String>,
}

impl Tally {
    /// A source, named so that a reader can find it.
    pub fn of(source: &'static str) -> Self {
        Self {
            source,
            values: 0,
            off: Vec::new(),
        }
    }

    /// Compares one value, within an absolute tolerance.
    pub fn within(&mut self, what: impl std::fmt::Display, computed: f64, stated: f64, off: f64) {
        self.values += 1;
        let agrees = (computed - stated).abs() <= off;
        if !agrees {
            self.off.push(format!(
                "{what}: computed {computed}, stated {stated} ± {off}"
            ));
        }
    }

    /// Compares one value, within a share of it.
    pub fn close(&mut self, what: impl std::fmt::Display, computed: f64, stated: f64, share: f64) {
        self.within(what, computed, stated, share * stated.abs());
    }

    /// Compares one value with a range.
    pub fn between(&mut self, what: impl std::fmt::Display, computed: f64, least: f64, most: f64) {
        self.values += 1;
        if !(least..=most).contains(&computed) {
            self.off.push(format!(
                "{what}: computed {computed}, stated {least} to {most}"
            ));
        }
    }

    /// The source's name, how many values were compared, and which of them disagree.
    pub fn done(self) -> Checked {
        println!("{:4} values: {}", self.values, self.source);
        Checked {
            source: self.source,
            values: self.values,
            off: self.off,
        }
    }
}

/// A source that has been compared.
pub struct Checked {
    source: &'static str,
    values: usize,
    off: Vec<String>,
}

/// Adds the sources up, prints the sum, holds the least that was promised, and stops with
/// every value that disagrees.
#[track_caller]
pub fn sum(room: &str, least: usize, sources: &[Checked]) {
    let values: usize = sources.iter().map(|s| s.values).sum();
    println!("{room}: {values} values from {} sources", sources.len());
    let off: Vec<String> = sources
        .iter()
        .flat_map(|s| s.off.iter().map(|off| format!("{}: {off}", s.source)))
        .collect();
    assert!(
        off.is_empty(),
        "{room}: {} of {values} values disagree:\n  {}",
        off.len(),
        off.join("\n  ")
    );
    assert!(
        values >= least,
        "{room}: only {values} values are compared, {least} were promised"
    );
    for source in sources {
        assert!(source.values > 0, "{}: nothing was compared", source.source);
    }
}
