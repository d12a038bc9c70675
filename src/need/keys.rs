//! The saved key of an answer that is one of a few words, and back.

use serde::Serialize;
use serde::de::{DeserializeOwned, IntoDeserializer, value::Error};

/// The key of a unit variant, as it is saved.
pub(crate) fn key_of<T: Serialize>(value: &T) -> String {
    match serde_json::to_value(value) {
        Ok(serde_json::Value::String(key)) => key,
        _ => String::new(),
    }
}

/// The variant with this key.
pub(crate) fn from_key<T: DeserializeOwned>(key: &str) -> Option<T> {
    let source: serde::de::value::StrDeserializer<'_, Error> = key.into_deserializer();
    T::deserialize(source).ok()
}
