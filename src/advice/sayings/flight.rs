//! Sayings about drop, zero and dials.
