//! What stands in front of a name: a number, a range or a word for one, and a unit.

use super::likeness::{folded, is_letter, is_number, small};
use super::words::{
    ABOUT, AND, ARTICLES, BEFORE_PARTS, FULLNESS, LINKS, Means, NUMBERS, PLURALS, SAME, TO,
    TO_BETWEEN_DIGITS, each, holds, meaning,
};
use super::{Hand, Quantity};
use crate::measure::{Kind, Size};
use crate::number::Fraction;
use crate::problem::{Code, Fault};
use crate::reading::{Marks, Range, about, amount, from_to, is_space};
use crate::spread::Spread;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

/// Words of one unit: "cuillère à soupe" has three, "oz by weight" too.
const MOST_UNIT_WORDS: usize = 3;

/// Bytes of a unit that is written short: a longer word with a point ends a sentence.
const MOST_ABBREVIATION: usize = 6;

/// Characters of a number that stay as they were written; a longer one is written anew.
const MOST_WRITTEN: usize = 20;

/// A measure at the start of a text.
#[derive(Debug)]
pub struct Front<'t> {
    /// All of it as written, without what links it to a name.
    pub typed: &'t str,
    /// The number as a blank takes it.
    pub number: String,
    /// What the number means; what is wrong with it otherwise.
    pub range: Result<Range, Fault>,
    /// The unit as written; empty if there is none.
    pub unit_typed: &'t str,
    /// What it means.
    pub means: Means,
    /// How full it is, as written.
    pub fullness: &'t str,
    /// What is left of the text.
    pub rest: &'t str,
}

impl Front<'_> {
    /// Whether a measure has a size of its own: it is no count, no part and no pinch.
    pub fn is_sized(&self) -> bool {
        matches!(self.means, Means::Unit(_) | Means::Ounce(_))
    }

    /// Whether it is metric.
    pub fn is_metric(&self) -> bool {
        matches!(self.means, Means::Unit(unit) if matches!(unit.code, "ml" | "cl" | "dl" | "l" | "g" | "kg"))
    }

    /// Whether it is exactly one.
    pub fn is_one(&self) -> bool {
        matches!(self.range, Ok(Range { best, spread: None }) if best == Fraction::ONE)
    }

    /// As the blank of a measure takes it; nothing for a pinch.
    pub fn quantity(&self) -> Option<Quantity> {
        let (text, unit) = match self.means {
            Means::Unit(unit) => (self.number.clone(), unit.code),
            Means::Ounce(unit) => (format!("{} oz", self.number), unit.code),
            Means::Piece => (self.number.clone(), "piece"),
            Means::Part => (self.number.clone(), "part"),
            Means::NoSize => return None,
        };
        Some(Quantity { text, unit })
    }
}

/// The measure at the start of a text; nothing if none stands there.
pub fn front(text: &str, hand: Hand) -> Option<Front<'_>> {
    let text = text.trim_start_matches(is_space);
    let Some((read, typed, rest)) = numbers(text, hand.marks) else {
        return without_number(text, hand);
    };
    let bare = rest.trim_start_matches(is_space);
    let (fullness, from) = fullness(rest, hand);
    let Some((means, unit_typed, rest)) = unit(from, hand) else {
        if begins_a_word(rest) && !typed.ends_with('-') {
            return None;
        }
        let numbers = Numbers { read, typed };
        if after_any(bare, FULLNESS).is_none()
            && let Some((word, rest)) = unknown_unit(bare)
        {
            return made(text, rest, numbers, (word, Means::NoSize, ""), rest, hand);
        }
        let rest = after_any(bare, ARTICLES);
        // "3/10 di gin" is so much of something that is not said, and "one quarter ounce" is not one of them.
        let linked = after_link(bare);
        let joins = [AND, SAME].iter().any(|words| after_any(bare, words).is_some());
        let counts = |rest: &str| !begins_a_word(rest) || unit(rest, hand).is_some();
        let goes_on = match number(bare, hand.marks) {
            Some(Ok((_, rest))) => counts(rest),
            other => joins || other.is_some(),
        };
        if rest.is_none() && (goes_on || linked.len() < bare.len()) {
            return made(text, bare, numbers, ("", Means::NoSize, ""), linked, hand);
        }
        return made(text, bare, numbers, ("", Means::Piece, ""), rest.unwrap_or(bare), hand);
    };
    let (numbers, rest) = match to_second(&read, typed, rest, means, hand) {
        Some((range, behind)) => (Numbers { read: range, typed: "" }, behind),
        None => (Numbers { read, typed }, rest),
    };
    made(text, rest, numbers, (unit_typed, means, fullness), rest, hand)
}

/// Whether what follows a number belongs to it: "40% gin", "7up" and "12-year-old rum" begin with one that
/// counts nothing.
fn begins_a_word(rest: &str) -> bool {
    rest.trim_start_matches(is_space).starts_with(['%', '°', '\'', '"', '″', '’'])
        || rest.starts_with(|c: char| is_letter(c) || is_number(c) || c == '-')
}

/// A number as read and as written; nothing as written means that it is written anew.
struct Numbers<'t> {
    read: Result<Range, Fault>,
    typed: &'t str,
}

/// `behind` is what follows the measure, `rest` the same without an article.
fn made<'t>(
    text: &'t str,
    behind: &'t str,
    numbers: Numbers<'t>,
    (unit_typed, means, fullness): (&'t str, Means, &'t str),
    rest: &'t str,
    hand: Hand,
) -> Option<Front<'t>> {
    let typed = before(text, behind);
    let read = numbers.read.and_then(|range| match range.best.is_nought() {
        true => Err(Fault::new(Code::NumberMustBePositive)),
        false => Ok(range),
    });
    let number = match &read {
        Ok(range) => written(numbers.typed, *range, hand.marks)?,
        Err(_) => one_space(numbers.typed.trim_end_matches(['.', ','])),
    };
    let linked = rest.trim_start_matches(is_space);
    let rest = if unit_typed.is_empty() { linked } else { after_link(linked) };
    Some(Front { typed, number, range: read, unit_typed, means, fullness, rest })
}

/// The measures with a size, and the parts, that begin with a number somewhere in a text, each with what stands before it.
pub fn measures(text: &str, hand: Hand) -> impl Iterator<Item = (&str, Front<'_>)> {
    let starts = text.char_indices().filter(|(_, c)| is_number(*c) || matches!(c, '~' | '.'));
    starts.filter_map(move |(at, _)| {
        let (before, from) = text.split_at_checked(at)?;
        // Inside a word or a number none begins.
        let inside = before.ends_with(|c: char| is_letter(c) || is_number(c) || c == '.');
        let mut start = from.chars().take(2);
        if inside || !start.any(is_number) {
            return None;
        }
        let front = front(from, hand)?;
        (front.is_sized() || front.means == Means::Part).then_some((before, front))
    })
}

/// "Dash of bitters", "splash soda": one of a rough measure, or of any that "of" follows. "Dashes" are
/// more than one, and "slice of lime" may be a name: nobody said how many.
fn without_number<'t>(text: &'t str, hand: Hand) -> Option<Front<'t>> {
    let (fullness, from) = fullness(text, hand);
    let (means, unit_typed, rest) = unit(from, hand)?;
    let bare = rest.trim_start_matches(is_space);
    let plural = unit_typed.ends_with('s') || holds(PLURALS, &folded(unit_typed));
    if means == Means::Piece || (plural && means != Means::NoSize) {
        return None;
    }
    let rough = matches!(means, Means::Unit(unit) if unit.size == Size::Rough);
    let loose = rough || means == Means::NoSize;
    let linked = after_link(bare).len() < bare.len();
    if !(linked || (loose && (bare.is_empty() || rest.starts_with(is_space)))) {
        return None;
    }
    let one = Numbers { read: Ok(Range::exactly(Fraction::ONE)), typed: "" };
    made(text, rest, one, (unit_typed, means, fullness), rest, hand)
}

/// A number or a range as it is meant, as it was written, and what is left.
fn numbers(text: &str, marks: Marks) -> Option<(Result<Range, Fault>, &str, &str)> {
    let behind_about = after_any(text, ABOUT).map(|text| text.trim_start_matches(is_space));
    let from = behind_about.unwrap_or(text);
    let (first, rest) = match number(from, marks)? {
        Ok(read) => read,
        Err(fault) => {
            let (typed, rest) = unread(from);
            match number(typed, marks) {
                // The mark behind it was the sentence's.
                Some(Ok((first, ""))) => (first, rest),
                _ => return Some((Err(fault), before(text, rest).trim_matches(is_space), rest)),
            }
        }
    };
    let typed = before(from, rest);
    if let Some(fault) = spaced(typed) {
        return Some((Err(fault), typed, rest));
    }
    let exactly_or_about = |read: Result<Range, Fault>| match behind_about {
        Some(_) => read.and_then(about),
        None => read,
    };
    // "1-1/2" and "1 and 1/2" are written anew, because a blank takes them for something else.
    if let Some((part, part_typed, behind)) = second(typed, rest, marks, BEFORE_PARTS)
        && first.is_whole()
        && part.compare(first).is_lt()
        && is_part(part, part_typed)
    {
        return Some((exactly_or_about(first.plus(part).map(Range::exactly)), "", behind));
    }
    let (read, rest) = match second(typed, rest, marks, TO) {
        Some((second, _, behind)) => {
            (from_to(first, second, before(from, behind).trim_matches(is_space)), behind)
        }
        None => (Ok(Range::exactly(first)), rest),
    };
    Some((exactly_or_about(read), before(text, rest).trim_matches(is_space), rest))
}

/// A number or a range at the start of a text as a blank takes it, and what is left.
pub fn count(text: &str, hand: Hand) -> Option<(String, &str)> {
    let (range, typed, rest) = numbers(text, hand.marks)?;
    Some((written(typed, range.ok()?, hand.marks)?, rest))
}

/// A number in digits or in words; nothing if none stands there.
fn number(text: &str, marks: Marks) -> Option<Result<(Fraction, &str), Fault>> {
    let digits = text.chars().next().is_some_and(|c| !is_letter(c));
    let ends = |rest: &str| !rest.starts_with(|c: char| is_letter(c) || is_number(c) || c == '-');
    let own = NUMBERS.iter().filter_map(|(halves, words)| {
        let rest = after_any(text, words)?;
        // "un demi-citron".
        let links = before(text, rest).ends_with('-');
        (ends(rest) || links).then_some((Fraction::new(*halves, 2)?, rest))
    });
    if !digits && let Some(read) = own.min_by_key(|(_, rest)| rest.len()) {
        return Some(Ok(read));
    }
    match amount(text, marks) {
        Ok((number, rest)) if digits || ends(rest) => Some(Ok((number, rest))),
        Ok(_) => None,
        Err(fault) => (digits && begins_a_number(text)).then_some(Err(fault)),
    }
}

fn begins_a_number(text: &str) -> bool {
    let bare = text.trim_start_matches(['-', '−', '.', ',']);
    bare.starts_with(is_number)
}

/// What cannot be read as a number, up to the first letter or bracket, and what is left.
fn unread(text: &str) -> (&str, &str) {
    let end = text.find(|c: char| is_letter(c) || matches!(c, '(' | '[' | '%' | '"'));
    let (typed, _) = text.split_at_checked(end.unwrap_or(text.len())).unwrap_or((text, ""));
    let typed = typed.trim_end_matches(|c: char| !is_number(c));
    (typed, text.get(typed.len()..).unwrap_or_default())
}

/// "1 330 ml" may be one of 330 ml: a space between thousands is asked about.
fn spaced(typed: &str) -> Option<Fault> {
    let typed = typed.trim_matches(|c| is_space(c) || matches!(c, '.' | ','));
    let (first, thousands) = typed.split_once(is_space)?;
    let all_digits = |text: &str| !text.is_empty() && text.chars().all(|c| c.is_ascii_digit());
    (all_digits(first) && all_digits(thousands)).then(|| {
        Fault::new(Code::NumberAmbiguous)
            .with("typed", typed)
            .with("either", first)
            .with("or", format!("{first}{thousands}"))
    })
}

/// The second number behind one of these signs, as it is meant and as written, and what is left.
fn second<'t>(
    first: &str,
    rest: &'t str,
    marks: Marks,
    signs: &'static str,
) -> Option<(Fraction, &'t str, &'t str)> {
    let bare = rest.trim_start_matches(is_space);
    let (sign, behind) = after_which(bare, signs)?;
    let behind = behind.trim_start_matches(is_space);
    let digits = first.ends_with(is_number) && behind.starts_with(is_number);
    if holds(TO_BETWEEN_DIGITS, sign) && !digits {
        return None;
    }
    let (number, rest) = number(behind, marks)?.ok()?;
    Some((number, before(behind, rest), rest))
}

fn is_part(number: Fraction, typed: &str) -> bool {
    let below_one = number.compare(Fraction::ONE).is_lt();
    below_one && (typed.contains(['/', '⁄']) || typed.starts_with(|c: char| !c.is_ascii_digit()))
}

/// The second number of "5 ml to 10 ml" and "a dash or two".
fn to_second<'t>(
    first: &Result<Range, Fault>,
    typed: &str,
    rest: &'t str,
    means: Means,
    hand: Hand,
) -> Option<(Result<Range, Fault>, &'t str)> {
    let Ok(Range { best, spread: None }) = first else { return None };
    let (second, _, behind) = second(typed, rest, hand.marks, TO)?;
    let behind = match unit(behind, hand) {
        Some((other, _, behind)) if other == means => behind,
        Some((Means::Unit(_) | Means::Ounce(_) | Means::Part, ..)) => return None,
        _ => behind,
    };
    Some((from_to(*best, second, typed), behind))
}

/// Up to two words that say how full a measure is, if a unit follows them.
fn fullness(text: &str, hand: Hand) -> (&str, &str) {
    let start = text.trim_start_matches(is_space);
    let mut rest = start;
    for _ in 0..2 {
        if unit(rest, hand).is_some() {
            return (before(start, rest).trim_matches(is_space), rest);
        }
        match after_any(rest, FULLNESS) {
            Some(behind) => rest = behind.trim_start_matches(is_space),
            None => break,
        }
    }
    match unit(rest, hand) {
        Some(_) => (before(start, rest).trim_matches(is_space), rest),
        None => ("", text),
    }
}

/// The unit at the start of a text, as long as one can be read; as written; and what is left.
fn unit(text: &str, hand: Hand) -> Option<(Means, &str, &str)> {
    let text = text.trim_start_matches(|c: char| is_space(c) || matches!(c, '-' | '.'));
    word_ends(text).into_iter().rev().find_map(|end| {
        let (words, rest) = text.split_at_checked(end)?;
        let means = meaning(words, hand.kitchen)?;
        Some((means, words, rest.strip_prefix(['.', '\'', '’']).unwrap_or(rest)))
    })
}

/// A word behind a number that must be a unit that is not known: one that is cut short with a point, or
/// that nobody could say, such as "tbl". What is left follows it.
fn unknown_unit(text: &str) -> Option<(&str, &str)> {
    let end = text.find(|c: char| !is_letter(c)).filter(|end| *end <= MOST_ABBREVIATION)?;
    let (word, rest) = text.split_at_checked(end)?;
    let behind = rest.strip_prefix('.').unwrap_or(rest);
    let cut = behind.len() < rest.len() && !behind.trim_matches(is_space).is_empty();
    let vowel = |c: char| !c.is_ascii() || matches!(small(c), 'a' | 'e' | 'i' | 'o' | 'u' | 'y');
    let unsaid = !word.contains(vowel) && (rest.is_empty() || rest.starts_with(is_space));
    (end > 0 && (cut || unsaid)).then_some((word, behind))
}

/// Where the first words of a text end.
fn word_ends(text: &str) -> Vec<usize> {
    let mut ends = Vec::new();
    let mut inside = false;
    for (at, c) in text.char_indices() {
        let letter = is_letter(c) || ('\u{300}'..='\u{36f}').contains(&c);
        if inside && !letter {
            ends.push(at);
        }
        inside = letter;
        let between = is_space(c) || matches!(c, '.' | '-');
        if ends.len() == MOST_UNIT_WORDS || !(letter || between) {
            return ends;
        }
    }
    if inside {
        ends.push(text.len());
    }
    ends
}

/// The text behind "of" and its like.
pub fn after_link(text: &str) -> &str {
    let longest = each(LINKS).filter_map(|word| {
        let rest = text.strip_prefix(word)?;
        let ends = word.ends_with(['\'', '’']) || rest.starts_with(is_space);
        ends.then_some(rest.trim_start_matches(is_space))
    });
    longest.min_by_key(|rest| rest.len()).unwrap_or(text)
}

/// A number as the blank takes it: as it was written, where that is digits, else written anew.
pub fn written(typed: &str, range: Range, marks: Marks) -> Option<String> {
    // A mark behind it belongs to the sentence, not to the number.
    let typed = typed.trim_end_matches(['.', ',']);
    let letters = typed.chars().any(|c| is_letter(c) || c == '‑');
    if !letters && !typed.is_empty() && typed.chars().nth(MOST_WRITTEN).is_none() {
        return Some(one_space(typed));
    }
    let text = |number| number_text(number, marks);
    Some(match range.spread {
        Some(Spread::Even(least, most)) => format!("{}-{}", text(least)?, text(most)?),
        Some(Spread::Middling(..)) => format!("about {}", text(range.best)?),
        _ => text(range.best)?,
    })
}

/// A number as a blank takes it: a decimal where it is one, else whole and part.
pub fn number_text(number: Fraction, marks: Marks) -> Option<String> {
    let kept = number.kept().ok()?;
    if kept.fraction() == number && kept.decimals() <= crate::number::MOST_DECIMALS {
        return Some(kept.plain_text().replace('.', marks.decimal.encode_utf8(&mut [0; 4])));
    }
    let whole = number.rounded_down();
    let part = number.less(whole).ok()?;
    let (top, bottom) = part.parts();
    let whole = if whole.is_nought() { String::new() } else { format!("{} ", whole.parts().0) };
    Some(format!("{whole}{top}/{bottom}"))
}

/// The text before its own end `rest`.
pub fn before<'t>(text: &'t str, rest: &str) -> &'t str {
    text.get(..text.len().saturating_sub(rest.len())).unwrap_or(text)
}

/// The same words with one space between them.
pub fn one_space(text: &str) -> String {
    let mut words = String::new();
    for word in text.split(is_space).filter(|word| !word.is_empty()) {
        if !words.is_empty() {
            words.push(' ');
        }
        words.push_str(word);
    }
    words
}

/// What follows one of these words at the start of a text; of several the longest counts.
pub fn after_any<'t>(text: &'t str, words: &str) -> Option<&'t str> {
    each(words).filter_map(|word| after(text, word)).min_by_key(|rest| rest.len())
}

/// The same, and which of them it was.
pub fn after_which<'t>(text: &'t str, words: &'static str) -> Option<(&'static str, &'t str)> {
    let found = each(words).filter_map(|word| Some((word, after(text, word)?)));
    found.min_by_key(|(_, rest)| rest.len())
}

/// What follows these words at the start of a text, whatever the capitals and the spaces.
pub fn after<'t>(text: &'t str, words: &str) -> Option<&'t str> {
    let mut rest = text.chars();
    for c in words.chars() {
        if c == ' ' {
            let bare = rest.as_str().trim_start_matches(is_space);
            if bare.len() == rest.as_str().len() {
                return None;
            }
            rest = bare.chars();
        } else if small(rest.next()?) != small(c) {
            return None;
        }
    }
    let rest = rest.as_str();
    let inside = words.ends_with(is_letter) && rest.starts_with(is_letter);
    (!inside).then_some(rest)
}

/// What a unit is called behind a number.
pub fn unit_words(code: &str, one: bool) -> String {
    let words = match code {
        "oz" => "oz wt".to_string(),
        code => code.replace('_', " "),
    };
    let plural = match code {
        "dash" | "splash" => "es",
        "part" | "drop" | "dropper" | "bar_spoon" | "rinse" | "drizzle" | "bottle" | "piece" => "s",
        _ => "",
    };
    if one { words } else { format!("{words}{plural}") }
}

/// Whether a unit measures something that flows or weighs, of the size of which parts can be.
pub fn can_be_part(kind: Kind) -> bool {
    matches!(kind, Kind::Volume | Kind::Mass)
}
