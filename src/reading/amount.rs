//! How much: decimals with a comma or a point, fractions, mixed numbers, and the words for them.
//!
//! Digits of the scripts that browsers print numbers in are read, and the marks that their locales
//! put between thousands. Nothing is guessed: `1,250` where the locale writes a point before
//! decimals could be 1.25 or 1250, and is asked about.

use crate::number::{Fraction, MOST_DECIMALS, MOST_WHOLE_DIGITS};
use crate::problem::{Code, Fault};
use alloc::string::{String, ToString};
use alloc::vec::Vec;

/// How this person's locale writes a number.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Marks {
    /// The mark before decimals.
    pub decimal: char,
}

impl Marks {
    /// A point before decimals.
    pub const POINT: Marks = Marks { decimal: '.' };
    /// A comma before decimals.
    pub const COMMA: Marks = Marks { decimal: ',' };
}

/// A number at the start of `text`, and what is left of the text.
///
/// Reads `1.5`, `1,5`, `.5`, `1 234,50`, `1/2`, `1 1/2`, `½`, `1½`, `half`, `a third`, `three`.
pub fn amount(text: &str, marks: Marks) -> Result<(Fraction, &str), Fault> {
    let text = text.trim_start_matches(is_space);
    if text.starts_with(['-', '−', '–', '﹣', '－']) {
        return Err(Fault::new(Code::NumberNegative).with("typed", text));
    }
    if let Some((part, rest)) = vulgar(text) {
        return Ok((part, rest));
    }
    let (shape, rest) = digits_and_marks(text);
    if shape.is_empty() {
        return in_words(text).ok_or_else(|| unreadable(text));
    }
    let (whole, rest) = match over(&shape, rest)? {
        Some(read) => return Ok(read),
        None => (decimal(&shape, text, marks)?, rest),
    };
    let only_digits = shape.chars().all(|c| c.is_ascii_digit());
    if only_digits && let Some((part, rest)) = part_after(rest)? {
        return Ok((whole.plus(part)?, rest));
    }
    Ok((whole, rest))
}

/// The part of a mixed number: `½` or ` 1/2` after `1`.
fn part_after(text: &str) -> Result<Option<(Fraction, &str)>, Fault> {
    let text = text.trim_start_matches(is_space);
    if let Some(read) = vulgar(text) {
        return Ok(Some(read));
    }
    let (shape, rest) = digits_and_marks(text);
    over(&shape, rest)
}

/// `1` and then `/2`: a fraction, if both are whole.
fn over<'t>(top: &str, rest: &'t str) -> Result<Option<(Fraction, &'t str)>, Fault> {
    let Some(below) = rest.trim_start_matches(is_space).strip_prefix(['/', '⁄', '∕']) else {
        return Ok(None);
    };
    let (bottom, rest) = digits_and_marks(below.trim_start_matches(is_space));
    let typed = format!("{top}/{bottom}");
    let (Some(top), Some(bottom)) = (bare_whole(top), bare_whole(&bottom)) else {
        return Err(unreadable(&typed));
    };
    let part = Fraction::new(top, bottom)
        .ok_or_else(|| Fault::new(Code::NumberZeroBelow).with("typed", typed))?;
    Ok(Some((part, rest)))
}

fn bare_whole(shape: &str) -> Option<i128> {
    let most = usize::try_from(MOST_WHOLE_DIGITS).ok()?;
    let fits = !shape.is_empty() && shape.len() <= most;
    (fits && shape.chars().all(|c| c.is_ascii_digit())).then(|| shape.parse().ok())?
}

/// The longest start of `text` that is written as a number: ASCII digits for digits of any script,
/// `.` and `,` as they stand, `_` for a mark that can only stand between thousands,
/// and `!` for one that can only stand before decimals.
fn digits_and_marks(text: &str) -> (String, &str) {
    let mut shape = String::new();
    let mut end = 0;
    let mut chars = text.char_indices().peekable();
    while let Some((at, c)) = chars.next() {
        let after: String = text.get(at..).unwrap_or("").chars().skip(1).take(4).collect();
        let Some(mark) = written(c, &after) else { break };
        if let Some(mark) = mark {
            shape.push(mark);
        }
        end = chars.peek().map_or(text.len(), |(next, _)| *next);
    }
    (shape, text.get(end..).unwrap_or(""))
}

/// What a character is in a number: `Some(None)` for one that prints nothing.
fn written(c: char, after: &str) -> Option<Option<char>> {
    if let Some(digit) = digit(c) {
        return Some(Some(digit));
    }
    match c {
        '.' | ',' => Some(Some(c)),
        '٫' => Some(Some('!')),
        '\'' | '’' | '٬' => Some(Some('_')),
        // The marks that keep right-to-left text in order.
        '\u{200e}' | '\u{200f}' | '\u{61c}' => Some(None),
        // A space stands between thousands only before exactly three digits: "1 234", not "1 1/2".
        c if is_space(c) => {
            let digits = after.chars().take_while(|c| digit(*c).is_some()).count();
            let slash = after.chars().nth(3).is_some_and(|c| matches!(c, '/' | '⁄'));
            (digits == 3 && !slash).then_some(Some('_'))
        }
        _ => None,
    }
}

/// White space, and the marks that keep right-to-left text in order.
pub fn is_space(c: char) -> bool {
    c.is_whitespace() || matches!(c, '\u{200e}' | '\u{200f}' | '\u{61c}')
}

/// The noughts of the scripts whose digits browsers print: Latin, Arabic, Persian, Devanagari,
/// Bengali, Myanmar, and the wide digits of East Asian keyboards.
const NOUGHTS: [char; 7] = ['0', '٠', '۰', '०', '০', '၀', '０'];

fn digit(c: char) -> Option<char> {
    NOUGHTS.iter().find_map(|nought| {
        let value = u32::from(c).checked_sub(u32::from(*nought))?;
        char::from_digit(value, 10)
    })
}

/// A shape of digits and marks as a decimal.
fn decimal(shape: &str, typed: &str, marks: Marks) -> Result<Fraction, Fault> {
    let unreadable = || unreadable(typed);
    let mark = decimal_mark(shape, marks)?;
    let (whole, part) = match mark {
        Some(mark) => shape.rsplit_once(mark).ok_or_else(unreadable)?,
        None => (shape, ""),
    };
    let whole = without_thousands(whole).ok_or_else(unreadable)?;
    if !part.chars().all(|c| c.is_ascii_digit()) || (whole.is_empty() && part.is_empty()) {
        return Err(unreadable());
    }
    bounded(&whole, part)?;
    decimal_of(&whole, part).ok_or_else(unreadable)
}

/// The decimal of two rows of digits, before and behind the mark.
fn decimal_of(whole: &str, part: &str) -> Option<Fraction> {
    let part = part.trim_end_matches('0');
    let digits = format!("0{whole}{part}").parse().ok()?;
    Fraction::decimal(digits, u32::try_from(part.len()).ok()?)
}

fn bounded(whole: &str, part: &str) -> Result<(), Fault> {
    let longer = |text: &str, most| u32::try_from(text.len()).map_or(true, |length| length > most);
    if longer(whole.trim_start_matches('0'), MOST_WHOLE_DIGITS) {
        let most = 10u64.saturating_pow(MOST_WHOLE_DIGITS).saturating_sub(1);
        return Err(Fault::new(Code::TooBig).with("most", most.to_string()));
    }
    if longer(part.trim_end_matches('0'), MOST_DECIMALS) {
        return Err(Fault::new(Code::NumberTooLong).with("most", MOST_DECIMALS.to_string()));
    }
    Ok(())
}

/// Which mark stands before the decimals, if one does.
fn decimal_mark(shape: &str, marks: Marks) -> Result<Option<char>, Fault> {
    if shape.chars().any(|c| c == '!') {
        return Ok(Some('!'));
    }
    let count = |mark| shape.chars().filter(|c| *c == mark).count();
    let (points, commas) = (count('.'), count(','));
    match (points, commas) {
        (0, 0) => Ok(None),
        (0, 2..) | (2.., 0) => Ok(None),
        (1, 0) => one_mark(shape, '.', marks),
        (0, 1) => one_mark(shape, ',', marks),
        _ => Ok(shape.chars().rev().find(|c| matches!(c, '.' | ','))),
    }
}

/// A single point or comma: the locale's own mark, or one that cannot be a thousands mark, stands
/// before decimals. What is left could be either, and is asked about.
fn one_mark(shape: &str, mark: char, marks: Marks) -> Result<Option<char>, Fault> {
    let (whole, part) = shape.split_once(mark).unwrap_or((shape, ""));
    let thousands = part.len() == 3
        && (1..=3).contains(&whole.len())
        && whole.chars().all(|c| c.is_ascii_digit())
        && !whole.starts_with('0');
    if mark == marks.decimal || !thousands {
        return Ok(Some(mark));
    }
    let own = marks.decimal;
    let thousand = part;
    let part = part.trim_end_matches('0');
    let either = if part.is_empty() { whole.to_string() } else { format!("{whole}{own}{part}") };
    Err(Fault::new(Code::NumberAmbiguous)
        .with("typed", shape)
        .with("either", either)
        .with("or", format!("{whole}{thousand}")))
}

/// The digits of a whole number, if what stands between them are well-placed thousands marks of one
/// kind: three digits at the end, two or three before (Indian numbering), one to three in front.
fn without_thousands(whole: &str) -> Option<String> {
    let mark = whole.chars().find(|c| !c.is_ascii_digit());
    let Some(mark) = mark else { return Some(whole.to_string()) };
    let groups: Vec<&str> = whole.split(mark).collect();
    let (last, before) = groups.split_last()?;
    let (first, middle) = before.split_first()?;
    let digits_only = groups.iter().all(|group| group.chars().all(|c| c.is_ascii_digit()));
    let well_placed = mark != '!'
        && last.len() == 3
        && middle.iter().all(|group| (2..=3).contains(&group.len()))
        && (1..=3).contains(&first.len());
    (digits_only && well_placed).then(|| groups.concat())
}

/// The single characters for fractions.
const VULGAR: [(char, i128, i128); 15] = [
    ('½', 1, 2),
    ('⅓', 1, 3),
    ('⅔', 2, 3),
    ('¼', 1, 4),
    ('¾', 3, 4),
    ('⅕', 1, 5),
    ('⅖', 2, 5),
    ('⅗', 3, 5),
    ('⅘', 4, 5),
    ('⅙', 1, 6),
    ('⅚', 5, 6),
    ('⅛', 1, 8),
    ('⅜', 3, 8),
    ('⅝', 5, 8),
    ('⅞', 7, 8),
];

fn vulgar(text: &str) -> Option<(Fraction, &str)> {
    let first = text.chars().next()?;
    let (_, top, bottom) = VULGAR.iter().find(|(c, ..)| *c == first)?;
    let rest = text.get(first.len_utf8()..)?;
    Some((Fraction::new(*top, *bottom)?, rest))
}

/// The words for small numbers and parts.
const NUMBER_WORDS: [(&str, i128, i128); 19] = [
    ("three quarters", 3, 4),
    ("two thirds", 2, 3),
    ("a quarter", 1, 4),
    ("a third", 1, 3),
    ("a half", 1, 2),
    ("quarter", 1, 4),
    ("third", 1, 3),
    ("half", 1, 2),
    ("one", 1, 1),
    ("two", 2, 1),
    ("three", 3, 1),
    ("four", 4, 1),
    ("five", 5, 1),
    ("six", 6, 1),
    ("eight", 8, 1),
    ("ten", 10, 1),
    ("twelve", 12, 1),
    ("an", 1, 1),
    ("a", 1, 1),
];

fn in_words(text: &str) -> Option<(Fraction, &str)> {
    NUMBER_WORDS.iter().find_map(|(word, top, bottom)| {
        let start = text.get(..word.len())?;
        let rest = text.get(word.len()..)?;
        let ends = rest.chars().next().is_none_or(|c| !c.is_ascii_alphanumeric());
        let number = Fraction::new(*top, *bottom)?;
        (start.eq_ignore_ascii_case(word) && ends).then_some((number, rest))
    })
}

fn unreadable(text: &str) -> Fault {
    Fault::new(Code::NumberUnreadable).with("typed", text.trim())
}
