//! A line taken apart: its bullet, what stands in brackets and in quotes, what follows a comma.

use super::likeness::is_number;
use super::quantity::{after, one_space};
use super::words::{FOR_GARNISH, OPTIONAL, TAILS, each};
use crate::reading::is_space;
use alloc::string::String;
use alloc::vec::Vec;

const BULLETS: [char; 19] =
    ['#', '-', '–', '—', '*', '•', '·', '▪', '◦', '‣', '●', '○', '■', '□', '▢', '☐', '☑', '✓', '➤'];

/// Boxes to tick.
const BOXES: &str = "[ ]|[x]|[X]|[]";

/// Digits of a numbered list: no recipe has a hundred lines.
const MOST_NUMBERING: usize = 2;

/// A line without what marks it as one of a list, and without the spaces around it.
pub fn without_bullet(text: &str) -> &str {
    let mut rest = text.trim_matches(is_space);
    loop {
        let digits =
            rest.len().saturating_sub(rest.trim_start_matches(|c: char| c.is_ascii_digit()).len());
        let numbered = rest.get(digits..).filter(|_| (1..=MOST_NUMBERING).contains(&digits));
        let numbered = numbered.and_then(|rest| rest.strip_prefix(['.', ')']));
        let numbered = numbered.filter(|rest| rest.starts_with(is_space));
        let boxed = each(BOXES).find_map(|sign| rest.strip_prefix(sign));
        let Some(behind) = rest.strip_prefix(BULLETS).or(boxed).or(numbered) else {
            return rest;
        };
        rest = behind.trim_start_matches(is_space);
    }
}

/// A line without the stars that print it bold: two or more in a row.
pub fn without_emphasis(text: &str) -> String {
    let mut plain = String::new();
    let mut rest = text;
    while let Some(c) = rest.chars().next() {
        let behind = rest.trim_start_matches('*');
        let (taken, behind) = match rest.len().saturating_sub(behind.len()) {
            0 | 1 => rest.split_at_checked(c.len_utf8()).unwrap_or((rest, "")),
            _ => ("", behind),
        };
        plain.push_str(taken);
        rest = behind;
    }
    plain
}

/// A note that stood in brackets.
pub struct Note {
    /// What it says.
    pub text: String,
    /// Whether it stood in quotes too, and so is nothing but a note.
    pub quoted: bool,
}

/// A line without what stands in brackets.
pub struct Brackets {
    /// What stands outside.
    pub bare: String,
    /// The name, if it stands in quotes.
    pub name: Option<String>,
    /// What stands inside.
    pub notes: Vec<Note>,
}

/// Takes out what stands in brackets; `with_name` also a name in quotes behind which nothing else stands.
pub fn brackets(text: &str, with_name: bool) -> Brackets {
    let mut taken = Brackets { bare: String::new(), name: None, notes: Vec::new() };
    let mut rest = text;
    while let Some(c) = rest.chars().next() {
        let behind = rest.get(c.len_utf8()..).unwrap_or_default();
        if matches!(c, '(' | '[' | '（') {
            let (note, after) = inside(behind);
            taken.notes.push(note);
            taken.bare.push(' ');
            rest = after;
            continue;
        }
        if c == '"'
            && with_name
            && taken.name.is_none()
            && !taken.bare.ends_with(|c: char| !is_space(c))
            && let Some((name, after)) = unquoted(behind)
            && !after.trim_start_matches(is_space).starts_with(|c| !matches!(c, '(' | '['))
        {
            taken.name = Some(name);
            rest = after;
            continue;
        }
        taken.bare.push(c);
        rest = behind;
    }
    taken
}

/// What stands in a bracket that is open, and what follows it. One that is never closed ends the line.
fn inside(text: &str) -> (Note, &str) {
    if let Some((text, rest)) = text.strip_prefix('"').and_then(unquoted)
        && let Some(rest) = rest.strip_prefix(')')
    {
        return (Note { text, quoted: true }, rest);
    }
    let mut deep = 1usize;
    for (at, c) in text.char_indices() {
        match c {
            '(' | '[' | '（' => deep = deep.saturating_add(1),
            ')' | ']' | '）' => deep = deep.saturating_sub(1),
            _ => {}
        }
        if deep == 0 {
            let (note, rest) = text.split_at_checked(at).unwrap_or((text, ""));
            let rest = rest.get(c.len_utf8()..).unwrap_or_default();
            return (Note { text: one_space(note), quoted: false }, rest);
        }
    }
    (Note { text: one_space(text), quoted: false }, "")
}

/// The text up to the closing quote, a double one standing for itself, and what follows.
fn unquoted(text: &str) -> Option<(String, &str)> {
    let mut inside = String::new();
    let mut chars = text.chars();
    loop {
        match chars.next()? {
            '"' => match chars.as_str().strip_prefix('"') {
                Some(rest) => {
                    inside.push('"');
                    chars = rest.chars();
                }
                None => return Some((inside, chars.as_str())),
            },
            c => inside.push(c),
        }
    }
}

/// What stands before the first comma, and what between and behind the others. A comma between digits is none,
/// a dash between spaces is one.
pub fn first_comma(text: &str) -> (&str, Vec<&str>) {
    let text = text.trim_start_matches(|c: char| is_space(c) || matches!(c, ',' | ';' | ':'));
    let mut pieces = Vec::new();
    let mut start = 0;
    let mut before = None;
    for (at, c) in text.char_indices() {
        let behind = text.get(at..).unwrap_or_default();
        let next = behind.chars().nth(1);
        let in_number = before.is_some_and(is_number) && next.is_some_and(is_number);
        let cuts = match c {
            ',' => !in_number,
            ';' => true,
            '-' | '–' | '—' => before.is_some_and(is_space) && next.is_some_and(is_space),
            _ => false,
        };
        if cuts {
            pieces.push(text.get(start..at).unwrap_or_default());
            start = at.saturating_add(c.len_utf8());
        }
        before = Some(c);
    }
    pieces.push(text.get(start..).unwrap_or_default());
    let said = pieces.split_off(1);
    (pieces.first().copied().unwrap_or_default(), said)
}

/// A name without what is done with it at its end, "soda to top", and that.
pub fn without_tail(name: &str) -> (&str, &str) {
    let trimmed = name.trim_matches(is_space);
    let starts = trimmed.char_indices().filter(|(_, c)| is_space(*c));
    for (at, _) in starts {
        let (start, tail) = trimmed.split_at_checked(at).unwrap_or((trimmed, ""));
        if [TAILS, FOR_GARNISH, OPTIONAL].iter().any(|words| is_any(tail, words)) {
            return (start, tail);
        }
    }
    (trimmed, "")
}

/// Whether a text is one of these and nothing else.
pub fn is_any(text: &str, words: &str) -> bool {
    let text = text.trim_matches(|c: char| is_space(c) || matches!(c, '.' | '!' | ':'));
    each(words).any(|word| after(text, word).is_some_and(str::is_empty))
}

/// A name without the spaces and marks around it, and without what points to a footnote.
pub fn plain_name(name: &str) -> String {
    let marks = |c: char| is_space(c) || matches!(c, ',' | ';' | ':' | '-' | '–' | '—' | '*');
    let ends = |c: char| marks(c) || matches!(c, '.' | '†' | '‡');
    // A point before it may belong to a number: ".5 pinch".
    one_space(name.trim_start_matches(marks).trim_end_matches(ends))
}
