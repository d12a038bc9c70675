//! Counts values checked against sources outside the project.
#![allow(dead_code, reason = "each test file uses a part")]

/// The values of one source, counted.
pub struct Tally {
    source: &'static str,
    counted: usize,
    wrong: Vec<String>,
}

impl Tally {
    pub fn new(source: &'static str) -> Self {
        Self {
            source,
            counted: 0,
            wrong: Vec::new(),
        }
    }

    /// `got` within `tolerance` of `want`.
    pub fn near(&mut self, what: impl core::fmt::Display, got: f64, want: f64, tolerance: f64) {
        self.counted += 1;
        if !((got - want).abs() <= tolerance) {
            self.wrong
                .push(format!("{what}: {got} instead of {want} ± {tolerance}"));
        }
    }

    /// `got` within a share of `want`.
    pub fn near_share(&mut self, what: impl core::fmt::Display, got: f64, want: f64, share: f64) {
        self.near(what, got, want, want.abs() * share);
    }

    /// `got` from `least` to `most`.
    pub fn within(&mut self, what: impl core::fmt::Display, got: f64, least: f64, most: f64) {
        self.near(what, got, 0.5 * (least + most), 0.5 * (most - least));
    }

    /// Fails if any value was off or if the source's rows were not all there.
    pub fn done(self, rows: &[(&str, usize)]) {
        println!("{}: {} values", self.source, self.counted);
        assert!(
            self.wrong.is_empty(),
            "{}: {} of {} values off\n{}",
            self.source,
            self.wrong.len(),
            self.counted,
            self.wrong.join("\n")
        );
        let declared = rows.iter().find(|row| row.0 == self.source);
        assert_eq!(
            declared.map(|row| row.1),
            Some(self.counted),
            "{}: the number of values",
            self.source
        );
    }
}
