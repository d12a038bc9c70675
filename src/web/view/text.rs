//! Text that is cheap to hand on.

use yew::AttrValue;

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
    #[inline(never)]
    fn into_text(self) -> Option<AttrValue> {
        Some(AttrValue::Rc(self.as_str().into()))
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
    use super::IntoText;
    use yew::AttrValue;

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
