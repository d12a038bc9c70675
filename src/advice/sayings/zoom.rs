//! Sayings about magnification and field.
