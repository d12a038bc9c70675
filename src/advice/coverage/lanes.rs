//! Columns of numbers, several at a time: the same sums in the same order on every target.
//!
//! Eight strands run through a column, in two registers of four where the processor has them
//! and one by one where it has not. Products and larger-of are exact for each number, and the
//! strands are added up in one fixed order, so that the bits do not depend on the processor.

/// Strands that run through a column.
const STRANDS: usize = 8;

mod four {
    /// Four numbers.
    #[derive(Clone, Copy)]
    pub struct Four([f32; 4]);

    #[inline(always)]
    fn larger(a: f32, b: f32) -> f32 {
        if a > b { a } else { b }
    }

    impl Four {
        #[inline(always)]
        pub fn of(a: f32, b: f32, c: f32, d: f32) -> Self {
            Self([a, b, c, d])
        }

        #[inline(always)]
        pub fn all(x: f32) -> Self {
            Self([x; 4])
        }

        #[inline(always)]
        pub fn add(self, other: Self) -> Self {
            let ([a, b, c, d], [e, f, g, h]) = (self.0, other.0);
            Self([a + e, b + f, c + g, d + h])
        }

        #[inline(always)]
        pub fn times(self, other: Self) -> Self {
            let ([a, b, c, d], [e, f, g, h]) = (self.0, other.0);
            Self([a * e, b * f, c * g, d * h])
        }

        /// The larger of each; neither may be anything but a number.
        #[inline(always)]
        pub fn larger(self, other: Self) -> Self {
            let ([a, b, c, d], [e, f, g, h]) = (self.0, other.0);
            Self([larger(a, e), larger(b, f), larger(c, g), larger(d, h)])
        }

        #[inline(always)]
        pub fn array(self) -> [f32; 4] {
            self.0
        }
    }
}

use four::Four;

/// Eight numbers.
#[derive(Clone, Copy)]
struct Eight(Four, Four);

impl Eight {
    #[inline(always)]
    fn of(x: &[f32; STRANDS]) -> Self {
        Self(
            Four::of(x[0], x[1], x[2], x[3]),
            Four::of(x[4], x[5], x[6], x[7]),
        )
    }

    /// The last few of a column, and nothing behind them.
    #[inline(always)]
    fn of_rest(rest: &[f32]) -> Self {
        let mut eight = [0.0; STRANDS];
        for (slot, x) in eight.iter_mut().zip(rest) {
            *slot = *x;
        }
        Self::of(&eight)
    }

    #[inline(always)]
    fn all(x: f32) -> Self {
        Self(Four::all(x), Four::all(x))
    }

    #[inline(always)]
    fn add(self, other: Self) -> Self {
        Self(self.0.add(other.0), self.1.add(other.1))
    }

    #[inline(always)]
    fn times(self, other: Self) -> Self {
        Self(self.0.times(other.0), self.1.times(other.1))
    }

    #[inline(always)]
    fn larger(self, other: Self) -> Self {
        Self(self.0.larger(other.0), self.1.larger(other.1))
    }

    #[inline(always)]
    fn array(self) -> [f32; STRANDS] {
        let ([a, b, c, d], [e, f, g, h]) = (self.0.array(), self.1.array());
        [a, b, c, d, e, f, g, h]
    }

    #[inline(always)]
    fn sum(self) -> f32 {
        let [a, b, c, d] = self.0.add(self.1).array();
        (a + b) + (c + d)
    }
}

/// Sum of a column.
pub fn sum(a: &[f32]) -> f32 {
    let (whole, rest) = a.as_chunks::<STRANDS>();
    let mut strands = Eight::of_rest(rest);
    for x in whole {
        strands = strands.add(Eight::of(x));
    }
    strands.sum()
}

/// Sum of the products of two columns of one length.
pub fn sum_of_products(a: &[f32], b: &[f32]) -> f32 {
    let (a, rest_a) = a.as_chunks::<STRANDS>();
    let (b, rest_b) = b.as_chunks::<STRANDS>();
    let mut strands = Eight::of_rest(rest_a).times(Eight::of_rest(rest_b));
    for (x, y) in a.iter().zip(b) {
        strands = strands.add(Eight::of(x).times(Eight::of(y)));
    }
    strands.sum()
}

/// Writes an eightfold function of two columns over a third.
#[inline(always)]
fn write(to: &mut [f32], a: &[f32], b: &[f32], f: impl Fn(Eight, Eight) -> Eight) {
    let (to, rest_to) = to.as_chunks_mut::<STRANDS>();
    let (a, rest_a) = a.as_chunks::<STRANDS>();
    let (b, rest_b) = b.as_chunks::<STRANDS>();
    for ((to, x), y) in to.iter_mut().zip(a).zip(b) {
        *to = f(Eight::of(x), Eight::of(y)).array();
    }
    let last = f(Eight::of_rest(rest_a), Eight::of_rest(rest_b)).array();
    for (to, x) in rest_to.iter_mut().zip(last) {
        *to = x;
    }
}

/// The products of two columns.
pub fn products(to: &mut [f32], a: &[f32], b: &[f32]) {
    write(to, a, b, Eight::times);
}

/// So much of the first column and the rest of the second.
pub fn mixture(to: &mut [f32], share: f32, a: &[f32], b: &[f32]) {
    let (first, second) = (Eight::all(share), Eight::all(1.0 - share));
    write(to, a, b, |x, y| first.times(x).add(second.times(y)));
}

/// Raises a column to another where that is larger.
pub fn raise(to: &mut [f32], other: &[f32]) {
    let (to, rest) = to.as_chunks_mut::<STRANDS>();
    let (other, rest_other) = other.as_chunks::<STRANDS>();
    for (to, x) in to.iter_mut().zip(other) {
        *to = Eight::of(to).larger(Eight::of(x)).array();
    }
    for (to, x) in rest.iter_mut().zip(rest_other) {
        *to = if *to > *x { *to } else { *x };
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn column(count: usize, from: u32) -> Vec<f32> {
        (0..count as u32)
            .map(|i| ((i * 37 + from) % 101) as f32 / 101.0)
            .collect()
    }

    #[test]
    fn every_length_gives_what_one_by_one_gives() {
        for count in [0, 1, 7, 8, 9, 63, 64, 200, 517] {
            let (a, b) = (column(count, 3), column(count, 58));
            let plain: f64 = a.iter().map(|&x| f64::from(x)).sum();
            assert!((f64::from(sum(&a)) - plain).abs() < 1e-4 * (1.0 + plain));
            let plain: f64 = a
                .iter()
                .zip(&b)
                .map(|(&x, &y)| f64::from(x) * f64::from(y))
                .sum();
            assert!((f64::from(sum_of_products(&a, &b)) - plain).abs() < 1e-4 * (1.0 + plain));
            let mut to = vec![0.0; count];
            products(&mut to, &a, &b);
            assert!(
                to.iter()
                    .zip(a.iter().zip(&b))
                    .all(|(t, (x, y))| *t == x * y)
            );
            mixture(&mut to, 0.25, &a, &b);
            assert!(
                to.iter()
                    .zip(a.iter().zip(&b))
                    .all(|(t, (x, y))| *t == 0.25 * x + 0.75 * y)
            );
            to.copy_from_slice(&a);
            raise(&mut to, &b);
            assert!(
                to.iter()
                    .zip(a.iter().zip(&b))
                    .all(|(t, (x, y))| *t == x.max(*y))
            );
        }
    }
}
