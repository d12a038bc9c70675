//! JSON (RFC 8259) as one value: read, looked into, written.

use super::decimal;
use super::printed::{push_placed, push_sign, significant};

/// Groups and lists inside one another, at most.
const DEEPEST: usize = 100;

/// A JSON value.
#[derive(Clone, Debug, PartialEq)]
pub enum Json {
    /// `null`.
    Null,
    /// `true` or `false`.
    Flag(bool),
    /// A number written without sign, point and power.
    Whole(u64),
    /// Any other number; finite where it was read.
    Number(f64),
    /// A string.
    Text(String),
    /// An array.
    List(Vec<Json>),
    /// An object, sorted by name, each name once.
    Fields(Vec<(String, Json)>),
}

/// Where a text is no JSON: line and column, from 1.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct NoJson {
    /// Line, from 1.
    pub line: usize,
    /// Column in bytes, from 1.
    pub column: usize,
}

impl Json {
    /// The value that a text holds; of a name that stands twice the last.
    ///
    /// # Errors
    /// [`NoJson`]: where the fault was found.
    pub fn read(text: &str) -> Result<Self, NoJson> {
        let mut reader = Reader { text, at: 0 };
        let value = reader.value(0);
        reader.space();
        if let Some(value) = value
            && reader.at == text.len()
        {
            return Ok(value);
        }
        let before = &text.as_bytes()[..reader.at.min(text.len())];
        let start = before.iter().rposition(|byte| *byte == b'\n');
        Err(NoJson {
            line: 1 + before.iter().filter(|byte| **byte == b'\n').count(),
            column: before.len() - start.map_or(0, |at| at + 1) + 1,
        })
    }

    /// An object of these fields.
    pub fn fields<'a>(fields: impl IntoIterator<Item = (&'a str, Json)>) -> Self {
        let mut list = Vec::new();
        for (name, value) in fields {
            put(&mut list, name.to_owned(), value);
        }
        Self::Fields(list)
    }

    /// A field of an object.
    #[must_use]
    pub fn get(&self, name: &str) -> Option<&Json> {
        let Self::Fields(fields) = self else {
            return None;
        };
        let at = fields
            .binary_search_by(|(each, _)| each.as_str().cmp(name))
            .ok()?;
        fields.get(at).map(|(_, value)| value)
    }

    /// Puts a field into an object, in place of one of the same name.
    pub fn put(&mut self, name: &str, value: Json) {
        if let Self::Fields(fields) = self {
            put(fields, name.to_owned(), value);
        }
    }

    /// The number, whole or not.
    #[must_use]
    pub fn number(&self) -> Option<f64> {
        match self {
            Self::Whole(number) => Some(*number as f64),
            Self::Number(number) => Some(*number),
            _ => None,
        }
    }

    /// The number, if it is a whole one.
    #[must_use]
    pub fn whole(&self) -> Option<u64> {
        match self {
            Self::Whole(number) => Some(*number),
            _ => None,
        }
    }

    /// The text.
    #[must_use]
    pub fn text(&self) -> Option<&str> {
        match self {
            Self::Text(text) => Some(text),
            _ => None,
        }
    }

    /// The value as a text, without spaces; what is not finite as `null`.
    #[must_use]
    pub fn written(&self) -> String {
        let mut out = String::new();
        self.write(&mut out);
        out
    }

    fn write(&self, out: &mut String) {
        match self {
            Self::Null => out.push_str("null"),
            Self::Flag(flag) => out.push_str(if *flag { "true" } else { "false" }),
            Self::Whole(number) => out.push_str(&number.to_string()),
            Self::Number(number) => write_number(*number, out),
            Self::Text(text) => write_text(text, out),
            Self::List(list) => {
                out.push('[');
                for (at, each) in list.iter().enumerate() {
                    if at > 0 {
                        out.push(',');
                    }
                    each.write(out);
                }
                out.push(']');
            }
            Self::Fields(fields) => {
                out.push('{');
                for (at, (name, value)) in fields.iter().enumerate() {
                    if at > 0 {
                        out.push(',');
                    }
                    write_text(name, out);
                    out.push(':');
                    value.write(out);
                }
                out.push('}');
            }
        }
    }
}

fn put(fields: &mut Vec<(String, Json)>, name: String, value: Json) {
    match fields.binary_search_by(|(each, _)| each.cmp(&name)) {
        Ok(at) => fields[at].1 = value,
        Err(at) => fields.insert(at, (name, value)),
    }
}

/// The shortest digits that read back as the same double, with a point or a power.
fn write_number(number: f64, out: &mut String) {
    if !number.is_finite() {
        return out.push_str("null");
    }
    let Some(size) = push_sign(out, number) else {
        return;
    };
    let (digits, point) = significant(size);
    if (-4..=16).contains(&point) {
        push_placed(out, &digits, point);
        if digits.len() as i32 <= point {
            out.push_str(".0");
        }
    } else {
        push_placed(out, &digits, 1);
        out.push_str(if point > 0 { "e+" } else { "e" });
        out.push_str(&(point - 1).to_string());
    }
}

fn write_text(text: &str, out: &mut String) {
    out.push('"');
    for c in text.chars() {
        let short = match c {
            '"' => '"',
            '\\' => '\\',
            '\n' => 'n',
            '\r' => 'r',
            '\t' => 't',
            '\u{8}' => 'b',
            '\u{C}' => 'f',
            c if c < ' ' => {
                out.push_str("\\u00");
                for digit in [c as u32 >> 4, c as u32 & 15] {
                    out.push(char::from_digit(digit, 16).unwrap_or('0'));
                }
                continue;
            }
            c => {
                out.push(c);
                continue;
            }
        };
        out.push('\\');
        out.push(short);
    }
    out.push('"');
}

struct Reader<'a> {
    text: &'a str,
    at: usize,
}

impl Reader<'_> {
    fn peek(&self) -> u8 {
        self.text.as_bytes().get(self.at).copied().unwrap_or(0)
    }

    fn space(&mut self) {
        while matches!(self.peek(), b' ' | b'\t' | b'\n' | b'\r') {
            self.at += 1;
        }
    }

    fn takes(&mut self, word: &str) -> Option<()> {
        self.text.get(self.at..)?.strip_prefix(word)?;
        self.at += word.len();
        Some(())
    }

    fn value(&mut self, depth: usize) -> Option<Json> {
        if depth > DEEPEST {
            return None;
        }
        self.space();
        match self.peek() {
            b'n' => self.takes("null").map(|()| Json::Null),
            b't' => self.takes("true").map(|()| Json::Flag(true)),
            b'f' => self.takes("false").map(|()| Json::Flag(false)),
            b'"' => self.string().map(Json::Text),
            b'[' => {
                let mut list = Vec::new();
                self.members(b']', &mut |reader| {
                    list.push(reader.value(depth + 1)?);
                    Some(())
                })?;
                Some(Json::List(list))
            }
            b'{' => {
                let mut fields = Vec::new();
                self.members(b'}', &mut |reader| {
                    let name = reader.string()?;
                    reader.space();
                    reader.takes(":")?;
                    put(&mut fields, name, reader.value(depth + 1)?);
                    Some(())
                })?;
                Some(Json::Fields(fields))
            }
            _ => self.number(),
        }
    }

    /// What stands between brackets, parted by commas.
    fn members(&mut self, end: u8, member: &mut dyn FnMut(&mut Self) -> Option<()>) -> Option<()> {
        self.at += 1;
        self.space();
        if self.peek() == end {
            self.at += 1;
            return Some(());
        }
        loop {
            self.space();
            member(self)?;
            self.space();
            if self.peek() == end {
                self.at += 1;
                return Some(());
            }
            self.takes(",")?;
        }
    }

    fn digits(&mut self) -> Option<()> {
        let start = self.at;
        while self.peek().is_ascii_digit() {
            self.at += 1;
        }
        (self.at > start).then_some(())
    }

    fn number(&mut self) -> Option<Json> {
        let start = self.at;
        if self.peek() == b'-' {
            self.at += 1;
        }
        if self.peek() == b'0' {
            self.at += 1;
        } else {
            self.digits()?;
        }
        let mut whole = self.text.as_bytes()[start] != b'-';
        if self.peek() == b'.' {
            self.at += 1;
            self.digits()?;
            whole = false;
        }
        if matches!(self.peek(), b'e' | b'E') {
            self.at += 1;
            if matches!(self.peek(), b'+' | b'-') {
                self.at += 1;
            }
            self.digits()?;
            whole = false;
        }
        let text = &self.text[start..self.at];
        if whole && let Ok(number) = text.parse() {
            return Some(Json::Whole(number));
        }
        decimal(text)
            .filter(|number| number.is_finite())
            .map(Json::Number)
    }

    fn string(&mut self) -> Option<String> {
        self.takes("\"")?;
        let mut out = String::new();
        loop {
            let c = self.text.get(self.at..)?.chars().next()?;
            if c < ' ' {
                return None;
            }
            self.at += c.len_utf8();
            match c {
                '"' => return Some(out),
                '\\' => {
                    let c = self.peek();
                    self.at += 1;
                    out.push(match c {
                        b'"' | b'\\' | b'/' => char::from(c),
                        b'n' => '\n',
                        b'r' => '\r',
                        b't' => '\t',
                        b'b' => '\u{8}',
                        b'f' => '\u{C}',
                        b'u' => self.escaped()?,
                        _ => return None,
                    });
                }
                c => out.push(c),
            }
        }
    }

    /// The character after `\u`, which may be written as a pair of surrogates.
    fn escaped(&mut self) -> Option<char> {
        let first = self.four()?;
        if !(0xD800..0xDC00).contains(&first) {
            return char::from_u32(first);
        }
        self.takes("\\u")?;
        let second = self
            .four()?
            .checked_sub(0xDC00)
            .filter(|low| *low < 0x400)?;
        char::from_u32(0x1_0000 + ((first - 0xD800) << 10) + second)
    }

    fn four(&mut self) -> Option<u32> {
        let mut sum = 0;
        for _ in 0..4 {
            sum = 16 * sum + char::from(self.peek()).to_digit(16)?;
            self.at += 1;
        }
        Some(sum)
    }
}

#[cfg(test)]
mod tests {
    use super::{Json, NoJson};

    fn theirs(value: &serde_json::Value) -> Json {
        use serde_json::Value as V;
        match value {
            V::Null => Json::Null,
            V::Bool(flag) => Json::Flag(*flag),
            V::Number(number) => match number.as_u64() {
                Some(whole) => Json::Whole(whole),
                None => Json::Number(number.as_f64().unwrap()),
            },
            V::String(text) => Json::Text(text.clone()),
            V::Array(list) => Json::List(list.iter().map(theirs).collect()),
            V::Object(map) => Json::fields(map.iter().map(|(k, v)| (k.as_str(), theirs(v)))),
        }
    }

    /// What `serde_json` reads and refuses is read and refused here.
    #[test]
    fn reads_and_refuses_as_a_reference_library() {
        for text in [
            "null",
            " true ",
            "[]",
            "{}",
            "[1,2.5,-3,-0,0,1e5,1E-5,18446744073709551615,18446744073709551616]",
            r#"{"b":1,"a":{"c":[{}]},"b":2}"#,
            r#""\u00e9\ud83e\udd8c\n\/\\\"\b\f\r\t""#,
            "\"é🦌\"",
            "\t[\n1 ,\r2 ]",
            "0.1e1",
            "9007199254740993",
            "\"\u{7f}\"",
            "",
            "nul",
            "[1,]",
            "{\"a\"}",
            "{\"a\":1,}",
            "{a:1}",
            "01",
            "-",
            "1.",
            ".5",
            "+1",
            "1e",
            "0x1",
            "\"\u{1}\"",
            r#""\x""#,
            r#""\ud800""#,
            r#""\udc00""#,
            r#""\u12""#,
            "\"a",
            "[1",
            "{\"a\":1",
            "1 2",
            "[1]]",
            "1e999",
            "NaN",
            "'a'",
            "/*c*/1",
        ] {
            let reference: Result<serde_json::Value, _> = serde_json::from_str(text);
            match (Json::read(text), reference) {
                (Ok(ours), Ok(reference)) => {
                    assert_eq!(ours, theirs(&reference), "{text}");
                    let again: serde_json::Value = serde_json::from_str(&ours.written()).unwrap();
                    assert_eq!(theirs(&again), ours, "{text}");
                }
                (Err(_), Err(_)) => {}
                (ours, reference) => panic!("{text}: {ours:?}, but {reference:?}"),
            }
        }
        assert!(Json::read(&"[".repeat(100_000)).is_err());
        assert_eq!(Json::read("{\n  oops}"), Err(NoJson { line: 2, column: 3 }));
    }

    #[test]
    fn numbers_and_texts_are_written_as_a_reference_library_does() {
        let mut state = 7_u64;
        for at in 0..4000 {
            state = state
                .wrapping_mul(6_364_136_223_846_793_005)
                .wrapping_add(1_442_695_040_888_963_407);
            let exponent = [1.0, 1e-5, 1e3, 1e17, 1e-9][at % 5];
            let value = match at % 7 {
                0 => f64::from_bits(state),
                1 => (state >> 50) as f64 * exponent,
                _ => (state >> 40) as f64 / 64.0 * exponent,
            };
            let ours = Json::Number(value).written();
            assert_eq!(ours, serde_json::to_string(&value).unwrap());
        }
        for text in ["", "é \" \\ / \n\r\t\u{8}\u{c}\u{0}\u{1f}\u{7f} 🦌"] {
            assert_eq!(
                Json::Text(text.to_owned()).written(),
                serde_json::to_string(text).unwrap()
            );
        }
    }
}
