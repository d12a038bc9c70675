//! Texts put together.

/// Texts put one after the other. The standard library's `join` is made for every length of
/// what stands between, and for every type of text.
pub trait Together {
    /// One text of all, with `between` between two of them.
    ///
    /// # Example
    /// ```
    /// use scopewright::plain::Together;
    /// assert_eq!(["a", "b", "c"].together("; "), "a; b; c");
    /// ```
    fn together(&self, between: &str) -> String;
}

impl<T: AsRef<str>> Together for [T] {
    fn together(&self, between: &str) -> String {
        let mut out = String::new();
        for (at, text) in self.iter().enumerate() {
            if at > 0 {
                out.push_str(between);
            }
            out.push_str(text.as_ref());
        }
        out
    }
}
