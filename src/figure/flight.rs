//! Figures of flight, aim and fit.

use super::Figure;

/// The figures of this family by name.
pub(super) const FIGURES: &[(&str, Figure)] = &[];
