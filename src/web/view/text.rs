//! Text that is cheap to hand on.

use std::borrow::Cow;
use std::fmt;
use std::ops::Deref;
use std::rc::Rc;

/// Text of an attribute or a property: written down or shared.
#[derive(Clone)]
pub enum AttrValue {
    /// Written down in the program.
    Static(&'static str),
    /// Made while running.
    Shared(Rc<str>),
}

impl AttrValue {
    /// The text.
    #[must_use]
    pub fn as_str(&self) -> &str {
        match self {
            Self::Static(text) => text,
            Self::Shared(text) => text,
        }
    }
}

impl Default for AttrValue {
    fn default() -> Self {
        Self::Static("")
    }
}

impl Deref for AttrValue {
    type Target = str;

    fn deref(&self) -> &str {
        self.as_str()
    }
}

impl PartialEq for AttrValue {
    fn eq(&self, other: &Self) -> bool {
        self.as_str() == other.as_str()
    }
}

impl Eq for AttrValue {}

impl PartialEq<str> for AttrValue {
    fn eq(&self, other: &str) -> bool {
        self.as_str() == other
    }
}

impl PartialEq<&str> for AttrValue {
    fn eq(&self, other: &&str) -> bool {
        self.as_str() == *other
    }
}

impl fmt::Display for AttrValue {
    fn fmt(&self, to: &mut fmt::Formatter<'_>) -> fmt::Result {
        to.write_str(self)
    }
}

impl fmt::Debug for AttrValue {
    fn fmt(&self, to: &mut fmt::Formatter<'_>) -> fmt::Result {
        fmt::Debug::fmt(self.as_str(), to)
    }
}

impl From<&'static str> for AttrValue {
    fn from(text: &'static str) -> Self {
        Self::Static(text)
    }
}

impl From<String> for AttrValue {
    #[inline(never)]
    fn from(text: String) -> Self {
        Self::Shared(text.into())
    }
}

impl From<&String> for AttrValue {
    #[inline(never)]
    fn from(text: &String) -> Self {
        Self::Shared(text.as_str().into())
    }
}

impl From<Cow<'static, str>> for AttrValue {
    fn from(text: Cow<'static, str>) -> Self {
        match text {
            Cow::Borrowed(text) => Self::Static(text),
            Cow::Owned(text) => text.into(),
        }
    }
}

/// What can be the text of an attribute; `None` and `false` are no attribute.
pub trait IntoText {
    /// The text.
    fn into_text(self) -> Option<AttrValue>;
}

impl IntoText for AttrValue {
    fn into_text(self) -> Option<AttrValue> {
        Some(self)
    }
}

impl IntoText for &AttrValue {
    fn into_text(self) -> Option<AttrValue> {
        Some(self.clone())
    }
}

impl IntoText for &'static str {
    fn into_text(self) -> Option<AttrValue> {
        Some(self.into())
    }
}

impl IntoText for String {
    fn into_text(self) -> Option<AttrValue> {
        Some(self.into())
    }
}

impl IntoText for &String {
    fn into_text(self) -> Option<AttrValue> {
        Some(self.into())
    }
}

impl IntoText for bool {
    fn into_text(self) -> Option<AttrValue> {
        self.then_some(AttrValue::Static(""))
    }
}

impl<T: IntoText> IntoText for Option<T> {
    fn into_text(self) -> Option<AttrValue> {
        self.and_then(T::into_text)
    }
}

/// Adds a class to others; for [`crate::classes!`].
#[inline(never)]
pub fn add_class(names: &mut String, name: Option<AttrValue>) {
    let Some(name) = name.filter(|name| !name.is_empty()) else {
        return;
    };
    if !names.is_empty() {
        names.push(' ');
    }
    names.push_str(&name);
}

#[cfg(test)]
mod tests {
    use super::{AttrValue, IntoText};

    #[test]
    fn what_is_false_or_none_is_no_attribute() {
        assert_eq!(false.into_text(), None);
        assert_eq!(None::<String>.into_text(), None);
        assert_eq!(true.into_text(), Some(AttrValue::Static("")));
        assert_eq!(Some("a").into_text().as_deref(), Some("a"));
    }

    #[test]
    fn classes_are_joined_by_one_space() {
        let none: Option<&'static str> = None;
        assert_eq!(crate::classes!("a", none, Some("b"), "").as_str(), "a b");
    }
}
