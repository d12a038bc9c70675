//! Values on their way to another instance of this module, and back.
//!
//! One function for each type does both: it writes what it holds, or replaces it by what is
//! read. A library that derives a writer and a reader for the report weighed 9 kB more. Both
//! ends are the same build, so that nothing is named and no version is told.

/// Bytes that are being written or read.
pub struct Wire {
    bytes: Vec<u8>,
    at: usize,
    reads: bool,
    broken: bool,
}

impl Wire {
    /// Whether a value is replaced by what is read.
    #[must_use]
    pub const fn reads(&self) -> bool {
        self.reads
    }

    /// What was read makes no sense; the rest is read as nothing.
    pub const fn give_up(&mut self) {
        self.broken = true;
    }

    /// Eight bytes, whatever they mean: those given, or those read; 0 where there are none.
    pub fn word(&mut self, value: u64) -> u64 {
        if !self.reads {
            self.bytes.extend_from_slice(&value.to_le_bytes());
            return value;
        }
        let next = self.bytes.get(self.at..).and_then(<[u8]>::first_chunk);
        let Some(next) = next.filter(|_| !self.broken) else {
            self.broken = true;
            return 0;
        };
        self.at += 8;
        u64::from_le_bytes(*next)
    }

    /// A number of things that follow: never more than there are bytes.
    fn count(&mut self, value: usize) -> usize {
        let count = self.word(value as u64) as usize;
        if self.reads && count > self.bytes.len() {
            self.broken = true;
            return 0;
        }
        count
    }
}

/// A value that can be passed on.
pub trait Passed: Sized {
    /// Any value of the type, to be replaced by what is read.
    fn blank() -> Self;

    /// Writes the value, or replaces it by what is read.
    fn pass(&mut self, wire: &mut Wire);
}

/// The bytes of a value.
pub fn written<T: Passed>(mut value: T) -> Vec<u8> {
    let mut wire = Wire {
        bytes: Vec::new(),
        at: 0,
        reads: false,
        broken: false,
    };
    value.pass(&mut wire);
    wire.bytes
}

/// The value of some bytes; none if they are not those of such a value, whole.
#[must_use]
pub fn read<T: Passed>(bytes: Vec<u8>) -> Option<T> {
    let mut wire = Wire {
        bytes,
        at: 0,
        reads: true,
        broken: false,
    };
    let mut value = T::blank();
    value.pass(&mut wire);
    (!wire.broken && wire.at == wire.bytes.len()).then_some(value)
}

impl Passed for f64 {
    fn blank() -> Self {
        0.0
    }

    fn pass(&mut self, wire: &mut Wire) {
        *self = Self::from_bits(wire.word(self.to_bits()));
    }
}

impl Passed for u32 {
    fn blank() -> Self {
        0
    }

    fn pass(&mut self, wire: &mut Wire) {
        *self = wire.word(u64::from(*self)) as Self;
    }
}

impl Passed for usize {
    fn blank() -> Self {
        0
    }

    fn pass(&mut self, wire: &mut Wire) {
        *self = wire.word(*self as u64) as Self;
    }
}

impl Passed for bool {
    fn blank() -> Self {
        false
    }

    fn pass(&mut self, wire: &mut Wire) {
        *self = wire.word(u64::from(*self)) != 0;
    }
}

impl Passed for String {
    fn blank() -> Self {
        Self::new()
    }

    fn pass(&mut self, wire: &mut Wire) {
        let length = wire.count(self.len());
        if !wire.reads {
            wire.bytes.extend_from_slice(self.as_bytes());
            return;
        }
        let text = wire
            .bytes
            .get(wire.at..)
            .and_then(|rest| rest.get(..length));
        match text.map(std::str::from_utf8) {
            Some(Ok(text)) => {
                self.push_str(text);
                wire.at += length;
            }
            _ => wire.broken = true,
        }
    }
}

impl<T: Passed> Passed for Option<T> {
    fn blank() -> Self {
        None
    }

    fn pass(&mut self, wire: &mut Wire) {
        let is_there = wire.word(u64::from(self.is_some())) != 0;
        if wire.reads && is_there {
            *self = Some(T::blank());
        }
        if let Some(value) = self {
            value.pass(wire);
        }
    }
}

impl<T: Passed> Passed for Vec<T> {
    fn blank() -> Self {
        Self::new()
    }

    fn pass(&mut self, wire: &mut Wire) {
        let count = wire.count(self.len());
        if wire.reads {
            self.resize_with(count, T::blank);
        }
        for value in self {
            value.pass(wire);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::{read, written};
    use scopewright_html::Passed;

    #[derive(Clone, Debug, PartialEq, Passed)]
    enum Kind {
        Plain,
        Held(f64),
        Named { by: String, often: u32 },
    }

    #[derive(Clone, Debug, PartialEq, Passed)]
    struct Whole {
        kinds: Vec<Kind>,
        perhaps: Option<Option<bool>>,
        count: usize,
    }

    fn whole() -> Whole {
        Whole {
            kinds: vec![
                Kind::Held(-0.1),
                Kind::Plain,
                Kind::Named {
                    by: "Δ".to_string(),
                    often: u32::MAX,
                },
            ],
            perhaps: Some(None),
            count: 7,
        }
    }

    #[test]
    fn what_is_passed_arrives() {
        assert_eq!(read(written(whole())), Some(whole()));
        assert_eq!(
            read::<Whole>(written(Whole {
                kinds: Vec::new(),
                perhaps: None,
                count: 0
            }))
            .map(|w| w.count),
            Some(0)
        );
    }

    #[test]
    fn what_is_cut_off_or_too_long_or_wrong_is_refused() {
        let bytes = written(whole());
        for length in 0..bytes.len() {
            assert_eq!(read::<Whole>(bytes[..length].to_vec()), None, "{length}");
        }
        let mut long = bytes.clone();
        long.push(0);
        assert_eq!(read::<Whole>(long), None);
        let mut many = bytes.clone();
        many[..8].copy_from_slice(&u64::MAX.to_le_bytes());
        assert_eq!(read::<Whole>(many), None);
        let mut unknown = bytes;
        unknown[8] = 9;
        assert_eq!(read::<Whole>(unknown), None);
    }
}
