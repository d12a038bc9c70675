//! Sayings about planes, marks and angle units.
