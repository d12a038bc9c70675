//! Answers in a link or QR code, and out of it again.
//!
//! The saved JSON is written with two characters for each known word, in letters, digits and
//! `-_.~` alone, so that no messenger breaks it; length and checksum tell a truncated link
//! from an altered one. Nothing but the answers is in it, the place to a tenth of a degree.

use super::answers::Answers;
use super::link_words::WORDS;
use super::saved::{ParseProblem, Rescued, pruned, rescued};
use crate::plain::{Json, decimal, shortest};

/// The format this code writes and reads.
pub const FORMAT: u32 = 1;

/// Longest link that is looked at, in characters.
const LONGEST: usize = 8000;

const DIGITS: &[u8; 64] = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";

/// Why a link holds no answers.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum LinkProblem {
    /// Nothing is in it.
    Empty,
    /// It was not made here.
    Foreign,
    /// Made by a later version: of a later format, or with words that are not known yet.
    Later,
    /// The end is missing.
    Truncated,
    /// Length or checksum do not fit what is in it.
    Altered,
    /// It is whole, but what is in it are no answers.
    Unreadable(ParseProblem),
}

/// The answers as the end of a link: 150 to 400 characters for usual answers.
///
/// # Example
/// ```
/// use scopewright::need::{answers::Answers, link::{encode, decode}};
/// let answers = Answers { version: 1, ..Answers::default() };
/// assert_eq!(decode(&encode(&answers)).unwrap().answers, answers);
/// ```
#[must_use]
pub fn encode(answers: &Answers) -> String {
    let mut answers = answers.clone();
    if let Some(place) = &mut answers.place {
        for angle in [&mut place.latitude_deg, &mut place.longitude_deg_east] {
            *angle = angle.map(|degrees| (degrees * 10.0).round() / 10.0);
        }
    }
    let mut body = String::new();
    write(&pruned(&answers), &mut body);
    format!(
        "s{FORMAT}{}{body}{}",
        digits(body.len() as u64, 3),
        digits(checksum(&body), 4)
    )
}

/// The answers in a link, from [`encode`]'s text or an address that ends with it.
///
/// # Errors
/// [`LinkProblem`]: empty, foreign, of a later version, truncated, altered, unreadable.
pub fn decode(link: &str) -> Result<Rescued, LinkProblem> {
    // Pasted with the address before it and white space from a mail inside it.
    let text: String = link
        .chars()
        .filter(|c| !c.is_whitespace())
        .take(LONGEST)
        .collect();
    let text = text.rsplit(['/', '#', '=', '?']).next().unwrap_or_default();
    if text.is_empty() {
        return Err(LinkProblem::Empty);
    }
    let rest = text.strip_prefix('s').ok_or(LinkProblem::Foreign)?;
    if !rest.is_ascii() {
        return Err(LinkProblem::Foreign);
    }
    let format = rest
        .bytes()
        .next()
        .filter(u8::is_ascii_digit)
        .map(|digit| u32::from(digit - b'0'))
        .ok_or(LinkProblem::Foreign)?;
    if format > FORMAT {
        return Err(LinkProblem::Later);
    }
    if format < FORMAT {
        return Err(LinkProblem::Foreign);
    }
    let rest = &rest[1..];
    let length = rest
        .get(..3)
        .ok_or(LinkProblem::Truncated)
        .and_then(|text| number(text).ok_or(LinkProblem::Foreign))? as usize;
    let body = rest.get(3..3 + length).ok_or(LinkProblem::Truncated)?;
    let sum = &rest[3 + length..];
    if sum.len() < 4 {
        return Err(LinkProblem::Truncated);
    }
    if number(sum) != Some(checksum(body)) {
        return Err(LinkProblem::Altered);
    }
    let mut reader = Reader(body);
    // It is as it was written, by whoever knew how.
    let value = reader.value(0).filter(|_| reader.0.is_empty());
    rescued(value.ok_or(LinkProblem::Later)?).map_err(LinkProblem::Unreadable)
}

/// FNV-1a, 64 bits folded to 24.
fn checksum(text: &str) -> u64 {
    let hash = text.bytes().fold(0xcbf2_9ce4_8422_2325_u64, |hash, byte| {
        (hash ^ u64::from(byte)).wrapping_mul(0x0000_0100_0000_01b3)
    });
    (hash ^ (hash >> 24) ^ (hash >> 48)) & 0x00ff_ffff
}

/// A number in so many digits to the base of 64.
fn digits(value: u64, count: usize) -> String {
    (0..count)
        .rev()
        .map(|at| char::from(DIGITS[(value >> (6 * at) & 63) as usize]))
        .collect()
}

fn number(text: &str) -> Option<u64> {
    text.bytes().try_fold(0_u64, |sum, byte| {
        let digit = DIGITS.iter().position(|each| *each == byte)?;
        sum.checked_mul(64)?.checked_add(digit as u64)
    })
}

/// Known word: two digits. Else a full stop and: `o` object … `x`, `a` list … `x`, `t`, `f`,
/// `z` nothing, a decimal digit: that number, `n` number … `~`, `s` text in base 64 … `~`.
fn write(value: &Json, out: &mut String) {
    match value {
        Json::Null => out.push_str(".z"),
        Json::Flag(true) => out.push_str(".t"),
        Json::Flag(false) => out.push_str(".f"),
        Json::Whole(number) => write_number(*number as f64, out),
        Json::Number(number) => write_number(*number, out),
        Json::Text(text) => write_word(text, out),
        Json::List(list) => {
            out.push_str(".a");
            list.iter().for_each(|each| write(each, out));
            out.push_str(".x");
        }
        Json::Fields(object) => {
            out.push_str(".o");
            for (key, each) in object {
                write_word(key, out);
                write(each, out);
            }
            out.push_str(".x");
        }
    }
}

fn write_number(number: f64, out: &mut String) {
    // 30.0 is written as 30.
    let text = shortest(number);
    if text.len() == 1 {
        out.push('.');
        out.push_str(&text);
    } else {
        out.push_str(".n");
        out.push_str(&text.replace('.', "_"));
        out.push('~');
    }
}

fn write_word(text: &str, out: &mut String) {
    if let Some(at) = WORDS.iter().position(|word| *word == text) {
        out.push_str(&digits(at as u64, 2));
        return;
    }
    out.push_str(".s");
    for chunk in text.as_bytes().chunks(3) {
        let mut bits = [0; 3];
        bits[..chunk.len()].copy_from_slice(chunk);
        let value = u64::from(bits[0]) << 16 | u64::from(bits[1]) << 8 | u64::from(bits[2]);
        out.push_str(&digits(value, 4)[..chunk.len() + 1]);
    }
    out.push('~');
}

struct Reader<'a>(&'a str);

impl Reader<'_> {
    fn take(&mut self, count: usize) -> Option<&str> {
        let (taken, rest) = self.0.split_at_checked(count)?;
        self.0 = rest;
        Some(taken)
    }

    fn until_tilde(&mut self) -> Option<&str> {
        let (taken, rest) = self.0.split_once('~')?;
        self.0 = rest;
        Some(taken)
    }

    fn at_end(&mut self) -> bool {
        match self.0.strip_prefix(".x") {
            Some(rest) => {
                self.0 = rest;
                true
            }
            None => false,
        }
    }

    fn value(&mut self, depth: usize) -> Option<Json> {
        if depth > 8 {
            return None;
        }
        if !self.0.starts_with('.') {
            return self.word().map(Json::Text);
        }
        match self.take(2)?.as_bytes()[1] {
            b't' => Some(Json::Flag(true)),
            b'f' => Some(Json::Flag(false)),
            b'z' => Some(Json::Null),
            b's' => self.text().map(Json::Text),
            b'n' => {
                let text = self.until_tilde()?.replace('_', ".");
                decimal(&text)
                    .filter(|number| number.is_finite())
                    .map(whole)
            }
            digit @ b'0'..=b'9' => Some(Json::Whole(u64::from(digit - b'0'))),
            b'a' => {
                let mut list = Vec::new();
                while !self.at_end() {
                    list.push(self.value(depth + 1)?);
                }
                Some(Json::List(list))
            }
            b'o' => {
                let mut object = Json::Fields(Vec::new());
                while !self.at_end() {
                    let key = if self.0.starts_with(".s") {
                        self.take(2)?;
                        self.text()?
                    } else {
                        self.word()?
                    };
                    object.put(&key, self.value(depth + 1)?);
                }
                Some(object)
            }
            _ => None,
        }
    }

    fn word(&mut self) -> Option<String> {
        let at = number(self.take(2)?)? as usize;
        WORDS.get(at).map(|word| (*word).to_owned())
    }

    fn text(&mut self) -> Option<String> {
        let digits = self.until_tilde()?;
        let mut bytes = Vec::new();
        for chunk in digits.as_bytes().chunks(4) {
            let padded = format!("{:A<4}", core::str::from_utf8(chunk).ok()?);
            let value = number(&padded)?;
            let three = [(value >> 16) as u8, (value >> 8) as u8, value as u8];
            bytes.extend_from_slice(three.get(..chunk.len().checked_sub(1)?)?);
        }
        String::from_utf8(bytes).ok()
    }
}

/// A whole number as such, so that months are read as what they are.
fn whole(number: f64) -> Json {
    if number == number.trunc() && (0.0..1e15).contains(&number) {
        Json::Whole(number as u64)
    } else {
        Json::Number(number)
    }
}

#[cfg(test)]
mod tests {
    use super::{DIGITS, LinkProblem, WORDS, checksum, decode, digits};

    fn link(body: &str) -> String {
        format!(
            "s1{}{body}{}",
            digits(body.len() as u64, 3),
            digits(checksum(body), 4)
        )
    }

    #[test]
    fn words_of_a_later_version_are_told_as_such() {
        assert!(WORDS.len() < DIGITS.len() * DIGITS.len());
        let version = digits(0, 2);
        assert_eq!(WORDS[0], "version");
        let later = digits(WORDS.len() as u64, 2);
        assert!(
            decode(&link(&format!(".o{version}.1.x")))
                .unwrap()
                .is_whole()
        );
        assert_eq!(
            decode(&link(&format!(".o{version}.1{later}.t.x"))),
            Err(LinkProblem::Later)
        );
        // A field that is spelt out is left out, and that is told.
        let spelt = decode(&link(&format!(".o{version}.2.sem9vbQ~.t.x"))).unwrap();
        assert_eq!(
            (spelt.lost.as_slice(), spelt.later_version),
            (&["zoom".to_owned()][..], Some(2))
        );
    }
}
