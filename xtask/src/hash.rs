//! A short content hash for file names and stamps: not a seal against tampering.

/// 64-bit FNV-1a of some bytes, in hexadecimal.
///
/// # Source
/// Fowler, Noll, Vo: offset 14695981039346656037, prime 1099511628211.
pub fn of(bytes: &[u8]) -> String {
    let hash = bytes
        .iter()
        .fold(14_695_981_039_346_656_037_u64, |hash, byte| {
            (hash ^ u64::from(*byte)).wrapping_mul(1_099_511_628_211)
        });
    format!("{hash:016x}")
}

#[cfg(test)]
mod tests {
    #[test]
    fn agrees_with_the_authors_test_vectors() {
        // Fowler, Noll, Vo: published 64-bit FNV-1a vectors for "" and "foobar".
        assert_eq!(super::of(b""), "cbf29ce484222325");
        assert_eq!(super::of(b"foobar"), "85944171f73967e8");
    }
}
