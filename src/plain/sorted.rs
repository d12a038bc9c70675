//! Sorting, stable, by one merge for all types.

use core::cmp::Ordering;

/// Sorts a list by an order; what is equal stays in its order.
///
/// # Example
/// ```
/// let mut list = [(2, 'a'), (1, 'b'), (2, 'c')];
/// scopewright::plain::sort_by(&mut list, |one, other| one.0.cmp(&other.0));
/// assert_eq!(list, [(1, 'b'), (2, 'a'), (2, 'c')]);
/// ```
pub fn sort_by<T>(list: &mut [T], mut order: impl FnMut(&T, &T) -> Ordering) {
    let swaps = swaps(list.len(), &mut |one, other| match (
        list.get(one as usize),
        list.get(other as usize),
    ) {
        (Some(one), Some(other)) => order(one, other),
        _ => Ordering::Equal,
    });
    for (one, other) in swaps {
        list.swap(one as usize, other as usize);
    }
}

/// Sorts a list by a key; what has the same key stays in its order.
pub fn sort_by_key<T, K: Ord>(list: &mut [T], mut key: impl FnMut(&T) -> K) {
    sort_by(list, |one, other| key(one).cmp(&key(other)));
}

/// The swaps that put a list in order, one after the other.
fn swaps(count: usize, order: &mut dyn FnMut(u32, u32) -> Ordering) -> Vec<(u32, u32)> {
    let mut from: Vec<u32> = (0..count as u32).collect();
    let mut to = from.clone();
    let mut width = 1;
    while width < count {
        for start in (0..count).step_by(2 * width) {
            let middle = (start + width).min(count);
            let end = (middle + width).min(count);
            let (mut left, mut right) = (start, middle);
            for place in &mut to[start..end] {
                let takes_left = left < middle
                    && (right == end || order(from[left], from[right]) != Ordering::Greater);
                let taken = if takes_left { &mut left } else { &mut right };
                *place = from[*taken];
                *taken += 1;
            }
        }
        core::mem::swap(&mut from, &mut to);
        width *= 2;
    }
    // `from` says which element comes to each place; `to` becomes where each element goes.
    for (place, &element) in from.iter().enumerate() {
        to[element as usize] = place as u32;
    }
    let mut swaps = Vec::new();
    for place in 0..count {
        while to[place] as usize != place {
            let other = to[place] as usize;
            swaps.push((place as u32, other as u32));
            to.swap(place, other);
        }
    }
    swaps
}

#[cfg(test)]
mod tests {
    use super::sort_by_key;

    /// The standard library's stable sort gives the same list.
    #[test]
    fn sorts_as_the_standard_library_does() {
        let mut state = 1_u32;
        for count in (0..40).chain([100, 255, 256, 257, 1000]) {
            for kinds in [1, 3, 1000] {
                let list: Vec<(u32, u32)> = (0..count)
                    .map(|at| {
                        state = state.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
                        ((state >> 8) % kinds, at)
                    })
                    .collect();
                let mut ours = list.clone();
                sort_by_key(&mut ours, |each| each.0);
                let mut theirs = list;
                theirs.sort_by_key(|each| each.0);
                assert_eq!(ours, theirs);
            }
        }
    }
}
