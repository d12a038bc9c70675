//! Sayings about parallax.
