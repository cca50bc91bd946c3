//! JSON (RFC 8259), as strictly as it is defined.
//!
//! Written by hand because of its size: a library's reader, with the number and error formatting it
//! brings along, takes 9 KB gzipped of the 88 that a first visit may have. `serde_json` referees it.
//! Refuses what the standard refuses, lone surrogates, a key written twice, and nesting past
//! [`DEEPEST`]. A number stays the text it was: nothing here is a float.

use super::record::unreadable;
use crate::problem::Fault;
use alloc::string::String;
use alloc::vec::Vec;
use core::str::Chars;

/// Levels of nesting: a shelf's file has seven.
pub const DEEPEST: usize = 32;

/// A value. The same value is always written as the same text.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub enum Json {
    /// Nothing.
    #[default]
    Null,
    /// Yes or no.
    Bool(bool),
    /// A number, as it was written.
    Number(String),
    /// Text.
    Text(String),
    /// A list.
    List(Vec<Json>),
    /// Values by key, in the order written.
    Object(Vec<(String, Json)>),
}

impl Json {
    /// Reads a text that holds one value and nothing else.
    pub fn parse(text: &str) -> Result<Json, Fault> {
        let mut reader = Reader { rest: text.chars() };
        let read = reader.value(DEEPEST).filter(|_| reader.next_mark().is_none());
        let left = reader.rest.as_str().len();
        read.ok_or_else(|| {
            let at = text.len().saturating_sub(left);
            unreadable(&format!("no JSON from character {at} on"))
        })
    }

    /// A field of an object.
    pub fn field(&self, name: &str) -> Option<&Json> {
        let Json::Object(fields) = self else { return None };
        fields.iter().find(|(key, _)| key == name).map(|(_, value)| value)
    }

    /// The text of a field; empty if there is none.
    pub fn text_of(&self, name: &str) -> &str {
        match self.field(name) {
            Some(Json::Text(text)) => text,
            _ => "",
        }
    }
}

/// What is still to be read. A reader that answers nothing has met something that is no JSON.
struct Reader<'t> {
    rest: Chars<'t>,
}

impl Reader<'_> {
    fn value(&mut self, deeper: usize) -> Option<Json> {
        match self.next_mark()? {
            '{' => self.object(deeper.checked_sub(1)?),
            '[' => self.list(deeper.checked_sub(1)?),
            '"' => self.text().map(Json::Text),
            't' => self.word("rue", Json::Bool(true)),
            'f' => self.word("alse", Json::Bool(false)),
            'n' => self.word("ull", Json::Null),
            first => self.number(first).map(Json::Number),
        }
    }

    fn object(&mut self, deeper: usize) -> Option<Json> {
        let mut fields: Vec<(String, Json)> = Vec::new();
        let mut mark = self.next_mark()?;
        while mark != '}' || !fields.is_empty() {
            if mark != '"' {
                return None;
            }
            let key = self.text()?;
            if self.next_mark()? != ':' || fields.iter().any(|(before, _)| *before == key) {
                return None;
            }
            fields.push((key, self.value(deeper)?));
            match self.next_mark()? {
                ',' => mark = self.next_mark()?,
                '}' => break,
                _ => return None,
            }
        }
        Some(Json::Object(fields))
    }

    fn list(&mut self, deeper: usize) -> Option<Json> {
        let mut items = Vec::new();
        let before = self.rest.clone();
        if self.next_mark()? == ']' {
            return Some(Json::List(items));
        }
        self.rest = before;
        loop {
            items.push(self.value(deeper)?);
            match self.next_mark()? {
                ',' => {}
                ']' => return Some(Json::List(items)),
                _ => return None,
            }
        }
    }

    /// The text behind an opening quote.
    fn text(&mut self) -> Option<String> {
        let mut text = String::new();
        loop {
            match self.rest.next()? {
                '"' => return Some(text),
                '\\' => text.push(self.escaped()?),
                c if c < ' ' => return None,
                c => text.push(c),
            }
        }
    }

    fn escaped(&mut self) -> Option<char> {
        Some(match self.rest.next()? {
            'b' => '\u{8}',
            'f' => '\u{c}',
            'n' => '\n',
            'r' => '\r',
            't' => '\t',
            'u' => {
                let unit = self.code_unit()?;
                // The first half of a pair stands for nothing without the second.
                let pair = match unit {
                    0xD800..0xDC00 => {
                        if self.rest.next()? != '\\' || self.rest.next()? != 'u' {
                            return None;
                        }
                        [unit, self.code_unit()?]
                    }
                    unit => [unit, 0],
                };
                let units = if pair == [unit, 0] { pair.get(..1)? } else { &pair };
                char::decode_utf16(units.iter().copied()).next()?.ok()?
            }
            c @ ('"' | '\\' | '/') => c,
            _ => return None,
        })
    }

    fn code_unit(&mut self) -> Option<u16> {
        let mut unit = 0u16;
        for _ in 0..4 {
            let digit = u16::try_from(self.rest.next()?.to_digit(16)?).ok()?;
            unit = unit.checked_mul(16)?.checked_add(digit)?;
        }
        Some(unit)
    }

    fn word(&mut self, rest: &str, value: Json) -> Option<Json> {
        rest.chars().all(|c| self.rest.next() == Some(c)).then_some(value)
    }

    /// `-`, digits without a nought before them, `.` and digits, `e` and digits.
    fn number(&mut self, first: char) -> Option<String> {
        let mut number = String::from(first);
        let digit = if first == '-' { self.rest.next()? } else { first };
        if first == '-' {
            number.push(digit);
        }
        if !digit.is_ascii_digit() || (self.digits(&mut number) > 0 && digit == '0') {
            return None;
        }
        if self.take(&mut number, &['.']) && self.digits(&mut number) == 0 {
            return None;
        }
        if self.take(&mut number, &['e', 'E']) {
            self.take(&mut number, &['+', '-']);
            if self.digits(&mut number) == 0 {
                return None;
            }
        }
        Some(number)
    }

    fn digits(&mut self, number: &mut String) -> usize {
        let before = number.len();
        while self.take(number, &['0', '1', '2', '3', '4', '5', '6', '7', '8', '9']) {}
        number.len().saturating_sub(before)
    }

    /// Takes the next character if it is one of these.
    fn take(&mut self, into: &mut String, these: &[char]) -> bool {
        let before = self.rest.clone();
        match self.rest.next() {
            Some(c) if these.contains(&c) => {
                into.push(c);
                true
            }
            _ => {
                self.rest = before;
                false
            }
        }
    }

    /// The next character that is no white space.
    fn next_mark(&mut self) -> Option<char> {
        self.rest.find(|c| !matches!(c, ' ' | '\t' | '\n' | '\r'))
    }
}

/// Writes text in quotes.
pub fn quote(out: &mut String, text: &str) {
    out.push('"');
    for c in text.chars() {
        match c {
            '"' | '\\' => {
                out.push('\\');
                out.push(c);
            }
            '\n' => out.push_str("\\n"),
            c if c < ' ' => out.push_str(&format!("\\u{:04x}", u32::from(c))),
            c => out.push(c),
        }
    }
    out.push('"');
}
