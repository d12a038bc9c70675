//! A short content hash for file names and stamps, and a seal over all files of a version.

use sha2::{Digest, Sha256};

/// The first 64 bits of the SHA-256 of these bytes one after the other, in hexadecimal: the
/// service worker computes the same.
///
/// # Source
/// FIPS 180-4.
pub fn seal<T: AsRef<[u8]>>(parts: impl IntoIterator<Item = T>) -> String {
    let mut digest = Sha256::new();
    for part in parts {
        digest.update(part);
    }
    let first: Vec<String> = (digest.finalize().iter().take(8))
        .map(|byte| format!("{byte:02x}"))
        .collect();
    first.concat()
}

/// 64-bit FNV-1a of some bytes, in hexadecimal: not a seal against tampering.
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
    fn seals_as_the_standard_does() {
        // FIPS 180-4's own example, "abc" (NIST, "Examples with Intermediate Values").
        assert_eq!(super::seal(["a", "bc"]), "ba7816bf8f01cfea");
    }

    #[test]
    fn agrees_with_the_authors_test_vectors() {
        // Fowler, Noll, Vo: published 64-bit FNV-1a vectors for "" and "foobar".
        assert_eq!(super::of(b""), "cbf29ce484222325");
        assert_eq!(super::of(b"foobar"), "85944171f73967e8");
    }
}
