//! Something large that many parts hold.

use core::ops::Deref;
use std::rc::Rc;

/// Two are equal if they are one and the same: whether a part has to be drawn again is asked
/// often, and comparing all that an advice says is 2 kB of code.
#[derive(Debug)]
pub struct Shared<T>(Rc<T>);

impl<T> Shared<T> {
    /// The first of them.
    pub fn new(value: T) -> Self {
        Self(Rc::new(value))
    }
}

impl<T> Clone for Shared<T> {
    fn clone(&self) -> Self {
        Self(Rc::clone(&self.0))
    }
}

impl<T> Deref for Shared<T> {
    type Target = T;

    fn deref(&self) -> &T {
        &self.0
    }
}

impl<T> PartialEq for Shared<T> {
    fn eq(&self, other: &Self) -> bool {
        Rc::ptr_eq(&self.0, &other.0)
    }
}
