//! A small map, in the order of its keys.

/// Values by key, in the order of the keys: for the few dozen that a page keeps, where the
/// standard library's trees bring 1 to 3 kB for every pair of types.
///
/// Finding takes as many steps as a tree; putting in and taking out move what stands behind.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Map<K, V>(Vec<(K, V)>);

impl<K, V> Default for Map<K, V> {
    fn default() -> Self {
        Self::new()
    }
}

impl<K, V> Map<K, V> {
    /// An empty one.
    #[must_use]
    pub const fn new() -> Self {
        Self(Vec::new())
    }

    /// How many there are.
    #[must_use]
    pub const fn len(&self) -> usize {
        self.0.len()
    }

    /// Whether there is none.
    #[must_use]
    pub const fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// Takes all out.
    pub fn clear(&mut self) {
        self.0.clear();
    }

    /// All, in the order of the keys.
    pub fn iter(&self) -> impl Iterator<Item = (&K, &V)> {
        self.0.iter().map(|(key, value)| (key, value))
    }
}

impl<K: Ord, V> Map<K, V> {
    /// Where a key stands, or where it would.
    fn place<Q: Ord + ?Sized>(&self, wanted: &Q) -> Result<usize, usize>
    where
        K: std::borrow::Borrow<Q>,
    {
        self.0.binary_search_by(|(key, _)| key.borrow().cmp(wanted))
    }

    /// The value of a key.
    pub fn get<Q: Ord + ?Sized>(&self, key: &Q) -> Option<&V>
    where
        K: std::borrow::Borrow<Q>,
    {
        let place = self.place(key).ok()?;
        self.0.get(place).map(|(_, value)| value)
    }

    /// Whether a key has a value.
    pub fn has<Q: Ord + ?Sized>(&self, key: &Q) -> bool
    where
        K: std::borrow::Borrow<Q>,
    {
        self.place(key).is_ok()
    }

    /// The value of a key, made where there is none.
    pub fn get_or(&mut self, key: K, make: impl FnOnce() -> V) -> &mut V {
        let place = match self.place(&key) {
            Ok(place) => place,
            Err(place) => {
                self.0.insert(place, (key, make()));
                place
            }
        };
        &mut self.0[place].1
    }

    /// Puts a value in the place of any other with its key.
    pub fn insert(&mut self, key: K, value: V) {
        match self.place(&key) {
            Ok(place) => self.0[place].1 = value,
            Err(place) => self.0.insert(place, (key, value)),
        }
    }

    /// Takes a value out.
    pub fn remove<Q: Ord + ?Sized>(&mut self, key: &Q) -> Option<V>
    where
        K: std::borrow::Borrow<Q>,
    {
        let place = self.place(key).ok()?;
        Some(self.0.remove(place).1)
    }
}

impl<K: Ord, V> FromIterator<(K, V)> for Map<K, V> {
    fn from_iter<I: IntoIterator<Item = (K, V)>>(pairs: I) -> Self {
        let mut map = Self::new();
        for (key, value) in pairs {
            map.insert(key, value);
        }
        map
    }
}

#[cfg(test)]
mod tests {
    use super::Map;
    use std::collections::BTreeMap;

    /// The standard library's tree does the same.
    #[test]
    fn does_what_a_tree_does() {
        let (mut map, mut tree) = (Map::new(), BTreeMap::new());
        let mut seed = 1_u32;
        for step in 0..400 {
            seed = seed.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
            let key = (seed >> 24) % 40;
            match seed >> 16 & 3 {
                0 => assert_eq!(map.remove(&key), tree.remove(&key)),
                1 => assert_eq!(*map.get_or(key, || step), *tree.entry(key).or_insert(step)),
                _ => {
                    map.insert(key, step);
                    tree.insert(key, step);
                }
            }
            assert_eq!(map.get(&key), tree.get(&key));
            assert_eq!(map.has(&key), tree.contains_key(&key));
            assert!(map.iter().eq(tree.iter()));
            assert_eq!(map.len(), tree.len());
        }
        assert_eq!(map, tree.into_iter().collect());
        map.clear();
        assert!(map.is_empty());
    }
}
