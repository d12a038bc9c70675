//! Columns of numbers, several at a time: the same sums in the same order on every target.
//!
//! Eight strands run through a column and are added up in one fixed order, so that the bits do
//! not depend on the processor or on how many numbers it takes at a time.

/// Strands that run through a column.
const STRANDS: usize = 8;

/// Eight numbers.
type Eight = [f32; STRANDS];

#[inline(always)]
fn times([a, b, c, d, e, f, g, h]: Eight, [i, j, k, l, m, n, o, p]: Eight) -> Eight {
    [a * i, b * j, c * k, d * l, e * m, f * n, g * o, h * p]
}

#[inline(always)]
fn add([a, b, c, d, e, f, g, h]: Eight, [i, j, k, l, m, n, o, p]: Eight) -> Eight {
    [a + i, b + j, c + k, d + l, e + m, f + n, g + o, h + p]
}

#[inline(always)]
fn total([a, b, c, d, e, f, g, h]: Eight) -> f32 {
    ((a + e) + (b + f)) + ((c + g) + (d + h))
}

/// The larger of two; neither may be anything but a number.
#[inline(always)]
fn larger(a: f32, b: f32) -> f32 {
    if a > b { a } else { b }
}

/// Sum of a column.
pub fn sum(column: &[f32]) -> f32 {
    let (whole, rest) = column.as_chunks::<STRANDS>();
    let mut strands = [0.0; STRANDS];
    for (slot, x) in strands.iter_mut().zip(rest) {
        *slot = *x;
    }
    for x in whole {
        strands = add(strands, *x);
    }
    total(strands)
}

/// Sum of the products of two columns of one length.
pub fn sum_of_products(a: &[f32], b: &[f32]) -> f32 {
    let (a, rest_a) = a.as_chunks::<STRANDS>();
    let (b, rest_b) = b.as_chunks::<STRANDS>();
    let mut strands = [0.0; STRANDS];
    for (slot, (x, y)) in strands.iter_mut().zip(rest_a.iter().zip(rest_b)) {
        *slot = x * y;
    }
    for (x, y) in a.iter().zip(b) {
        strands = add(strands, times(*x, *y));
    }
    total(strands)
}

/// Writes the products of three columns, the first two first, and sums them up.
pub fn products(to: &mut [f32], [a, b, c]: [&[f32]; 3]) -> f32 {
    let (to, rest_to) = to.as_chunks_mut::<STRANDS>();
    let (a, rest_a) = a.as_chunks::<STRANDS>();
    let (b, rest_b) = b.as_chunks::<STRANDS>();
    let (c, rest_c) = c.as_chunks::<STRANDS>();
    let mut strands = [0.0; STRANDS];
    for (i, to) in rest_to.iter_mut().enumerate() {
        *to = rest_a[i] * rest_b[i] * rest_c[i];
        strands[i] = *to;
    }
    for (((to, x), y), z) in to.iter_mut().zip(a).zip(b).zip(c) {
        *to = times(times(*x, *y), *z);
        strands = add(strands, *to);
    }
    total(strands)
}

/// So much of the first column and the rest of the larger of two others, times a fourth.
pub fn mixture(to: &mut [f32], share: f32, [a, b, c, d]: [&[f32]; 4]) {
    let rest = 1.0 - share;
    let one = |a: f32, b: f32, c: f32, d: f32| (share * a + rest * larger(b, c)) * d;
    let (to, rest_to) = to.as_chunks_mut::<4>();
    let (a, rest_a) = a.as_chunks::<4>();
    let (b, rest_b) = b.as_chunks::<4>();
    let (c, rest_c) = c.as_chunks::<4>();
    let (d, rest_d) = d.as_chunks::<4>();
    for ((((to, a), b), c), d) in to.iter_mut().zip(a).zip(b).zip(c).zip(d) {
        *to = [
            one(a[0], b[0], c[0], d[0]),
            one(a[1], b[1], c[1], d[1]),
            one(a[2], b[2], c[2], d[2]),
            one(a[3], b[3], c[3], d[3]),
        ];
    }
    for (i, to) in rest_to.iter_mut().enumerate() {
        *to = one(rest_a[i], rest_b[i], rest_c[i], rest_d[i]);
    }
}

/// The larger of two columns, number by number.
pub fn larger_of(to: &mut [f32], a: &[f32], b: &[f32]) {
    let (to, rest_to) = to.as_chunks_mut::<STRANDS>();
    let (a, rest_a) = a.as_chunks::<STRANDS>();
    let (b, rest_b) = b.as_chunks::<STRANDS>();
    for ((to, [a, b, c, d, e, f, g, h]), [i, j, k, l, m, n, o, p]) in to.iter_mut().zip(a).zip(b) {
        let first = [
            larger(*a, *i),
            larger(*b, *j),
            larger(*c, *k),
            larger(*d, *l),
        ];
        let then = [
            larger(*e, *m),
            larger(*f, *n),
            larger(*g, *o),
            larger(*h, *p),
        ];
        let ([a, b, c, d], [e, f, g, h]) = (first, then);
        *to = [a, b, c, d, e, f, g, h];
    }
    for (i, to) in rest_to.iter_mut().enumerate() {
        *to = larger(rest_a[i], rest_b[i]);
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
            let (c, d) = (column(count, 21), column(count, 77));
            let mut to = vec![0.0; count];
            let total = products(&mut to, [&a, &b, &c]);
            assert!((0..count).all(|i| to[i] == a[i] * b[i] * c[i]));
            assert_eq!(total, sum(&to));
            mixture(&mut to, 0.25, [&a, &b, &c, &d]);
            assert!((0..count).all(|i| to[i] == (0.25 * a[i] + 0.75 * b[i].max(c[i])) * d[i]));
            larger_of(&mut to, &a, &b);
            assert!((0..count).all(|i| to[i] == a[i].max(b[i])));
        }
    }
}
