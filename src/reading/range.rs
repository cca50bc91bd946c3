//! About how much: `5-10`, `five or ten`, `about 200`, `most of`.
//!
//! | as written | meaning | source |
//! |---|---|---|
//! | `5-10`, `5 to 10`, `5 ml or 10 ml`, `between 5 and 10` | anywhere between, equally likely | JCGM 100:2008, 4.3.7 |
//! | `about 200`, `200 or so` | a fifth less to a fifth more, likeliest in the middle | bartenders who aimed at 44 ml poured 46 to 55 (BMJ 2005;331:1512) |
//! | `most of` | three fifths to nineteen twentieths, equally likely | common practice, no source |

use super::amount::{Marks, amount, is_space};
use crate::number::Fraction;
use crate::problem::{Code, Fault};
use crate::spread::Spread;

/// A number as it was meant, and how it may be off.
#[derive(Clone, Copy, Debug)]
pub struct Range {
    /// The number that is reckoned with.
    pub best: Fraction,
    /// How it may be off; nothing if it is meant exactly.
    pub spread: Option<Spread>,
}

impl Range {
    /// A number that is meant exactly.
    pub fn exactly(best: Fraction) -> Self {
        Range { best, spread: None }
    }

    /// So many times this.
    pub fn times(self, by: Fraction) -> Result<Self, Fault> {
        let spread = match self.spread {
            Some(Spread::Even(least, most)) => {
                Some(Spread::Even(least.times(by)?, most.times(by)?))
            }
            Some(Spread::Middling(least, most)) => {
                Some(Spread::Middling(least.times(by)?, most.times(by)?))
            }
            other => other,
        };
        Ok(Range { best: self.best.times(by)?, spread })
    }
}

const ABOUT: [&str; 10] =
    ["about", "around", "approximately", "approx.", "approx", "roughly", "circa", "ca.", "~", "≈"];

const OR_SO: &str = "or so";

/// What may stand before the first of two numbers.
const FROM: [&str; 2] = ["between", "from"];

/// What stands between them. "And" only does so behind "between": "1 and 1/2" is no range.
const TO: [&str; 5] = ["-", "–", "—", "to", "or"];

const MOST_OF: [&str; 2] = ["most of", "most"];

/// A number or a range at the start of `text`, and what is left of the text.
pub fn range(text: &str, marks: Marks) -> Result<(Range, &str), Fault> {
    let text = text.trim_start_matches(is_space);
    if let Some(rest) = after_word(text, &MOST_OF) {
        let (three_fifths, nearly) = (part(3, 5)?, part(19, 20)?);
        return Ok((even(three_fifths, nearly)?, rest));
    }
    if let Some(rest) = after_word(text, &ABOUT) {
        let (read, rest) = between(rest, marks)?;
        return Ok((about(read)?, rest));
    }
    between(text, marks)
}

fn between(text: &str, marks: Marks) -> Result<(Range, &str), Fault> {
    let text = text.trim_start_matches(is_space);
    let from = after_word(text, &FROM);
    let (least, rest) = amount(from.unwrap_or(text), marks)?;
    let and = || after_word(rest.trim_start_matches(is_space), &["and"]);
    match to(rest).or_else(|| from.and_then(|_| and())) {
        Some(behind) => {
            let (most, rest) = amount(behind, marks)?;
            Ok((from_to(least, most, text)?, rest))
        }
        None => Ok((Range::exactly(least), rest)),
    }
}

/// What stands behind "to" and the like, if that comes first.
pub fn to(text: &str) -> Option<&str> {
    after_word(text.trim_start_matches(is_space), &TO)
}

/// The text before "or so", if it ends so.
pub fn without_or_so(text: &str) -> Option<&str> {
    let (start, end) = text.split_at_checked(text.len().checked_sub(OR_SO.len())?)?;
    (end.eq_ignore_ascii_case(OR_SO) && start.ends_with(is_space)).then_some(start)
}

/// From one number to the other, each as likely as any between.
pub fn from_to(least: Fraction, most: Fraction, typed: &str) -> Result<Range, Fault> {
    if most.compare(least).is_lt() {
        return Err(Fault::new(Code::RangeBackwards).with("typed", typed));
    }
    if most == least { Ok(Range::exactly(least)) } else { even(least, most) }
}

/// A fifth less to a fifth more. About a range is that range.
pub fn about(read: Range) -> Result<Range, Fault> {
    let Range { best, spread: None } = read else { return Ok(read) };
    let spread = Spread::Middling(best.times(part(4, 5)?)?, best.times(part(6, 5)?)?);
    Ok(Range { best, spread: Some(spread) })
}

/// Anywhere between the two; reckoned with the middle.
fn even(least: Fraction, most: Fraction) -> Result<Range, Fault> {
    let best = least.plus(most)?.times(part(1, 2)?)?;
    Ok(Range { best, spread: Some(Spread::Even(least, most)) })
}

fn part(top: i128, bottom: i128) -> Result<Fraction, Fault> {
    Fraction::new(top, bottom).ok_or_else(|| Fault::new(Code::NumberZeroBelow))
}

fn after_word<'t>(text: &'t str, words: &[&str]) -> Option<&'t str> {
    words.iter().find_map(|word| {
        let start = text.get(..word.len())?;
        let rest = text.get(word.len()..)?;
        let ends = word.ends_with(|c: char| !c.is_ascii_alphabetic())
            || !rest.starts_with(|c: char| c.is_ascii_alphabetic());
        (start.eq_ignore_ascii_case(word) && ends).then_some(rest)
    })
}
