//! What an iterator gives, as a list.

/// Every iterator that can be gathered.
pub trait Gathered: Iterator + Sized {
    /// Everything it gives, in order.
    ///
    /// As `collect` does, with a loop for each type of thing rather than for each iterator.
    fn gathered(mut self) -> Vec<Self::Item> {
        gather(&mut || self.next())
    }
}

impl<I: Iterator> Gathered for I {}

#[inline(never)]
fn gather<T>(next: &mut dyn FnMut() -> Option<T>) -> Vec<T> {
    let mut all = Vec::new();
    while let Some(one) = next() {
        all.push(one);
    }
    all
}
