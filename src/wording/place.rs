//! Where a message stands, from its key alone.
//!
//! The page carries no keys. `build.rs`, which compiles this file too, gives every message a
//! place so that this arithmetic finds it: keys fall into small groups by their hash, and each
//! group has a turn that was chosen so that all its keys come to stand on free places (hash and
//! displace; Belazzougui, Botelho and Dietzfelbinger 2009, *published*).

/// A number from all letters of a key (FNV-1a of 32 bits, *published*).
pub const fn hash(key: &str) -> u32 {
    let bytes = key.as_bytes();
    let mut hash: u32 = 0x811c_9dc5;
    let mut at = 0;
    while at < bytes.len() {
        hash = (hash ^ bytes[at] as u32).wrapping_mul(0x0100_0193);
        at += 1;
    }
    hash
}

/// The group of a hash.
pub const fn group(hash: u32, groups: usize) -> usize {
    (hash >> 8) as usize % groups
}

/// The place of a hash whose group is turned by so much.
pub const fn place(hash: u32, turn: u8, places: usize) -> usize {
    let mixed = (hash ^ (turn as u32).wrapping_mul(0x9e37_79b9)).wrapping_mul(0x85eb_ca6b);
    (mixed ^ (mixed >> 15)) as usize % places
}

/// Whether the page asks if there is a message with such a key, and therefore carries its hash.
pub fn is_optional(key: &str) -> bool {
    key.starts_with("counter-") || key.ends_with(".hint")
}
