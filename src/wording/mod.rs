//! Words for reasons and messages, per language.
