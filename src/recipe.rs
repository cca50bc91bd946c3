//! Lines of a recipe as people write them: how much, of what, and what else is said.
//!
//! `2 oz (60 ml) rye, chilled` is 60 ml, "rye", and the note "2 oz, chilled". A measure is left as the text and
//! unit that a blank takes, so that it is read once more, with everything else, where it is reckoned.
//! Nothing is guessed: parts have no size, "a pinch" has none, and what is not read stays in the name
//! or the note, with a fault beside it. No line costs more than its [`MOST_LINE`] characters
//! allow, so a text is read in time that grows as its length and no faster.

mod aside;
pub mod likeness;
mod print;
mod quantity;
mod split;
mod words;

pub use aside::{is_title, makes};
pub use print::{measured, printed};

use crate::measure::{Kind, Measure};
use crate::problem::{Code, Fault};
use crate::reading::{Kitchen, Marks, Range, is_space};
use alloc::string::{String, ToString};
use alloc::vec::Vec;
use aside::aside;
use quantity::{
    Front, after_any, after_link, after_which, can_be_part, front, measures, one_space, written,
};
use split::{
    Brackets, brackets, first_comma, is_any, plain_name, without_bullet, without_emphasis,
    without_tail,
};
use words::{
    AND, CONTAINERS, EACH, FOR_GARNISH, GARNISH, LEADS, LEADS_BEFORE_NUMBERS, Means, OPTIONAL,
    SAME, holds,
};

/// Characters of one line that is read: three times the longest that cookery pages print.
pub const MOST_LINE: usize = 300;

/// Lines that are read of one text: a spec has at most 40, and its method and headings stand around it.
pub const MOST_RECIPE_LINES: usize = 100;

/// Characters of a pasted text: a recipe's data with its reviews is rarely half as long.
pub const MOST_PASTED: usize = 100_000;

/// Characters of a page's source: the largest pages with recipes have half a million.
pub const MOST_PAGE: usize = 2_000_000;

/// How a person writes.
#[derive(Clone, Copy, Debug)]
pub struct Hand {
    /// What stands before decimals.
    pub marks: Marks,
    /// Whose measures a bare word means.
    pub kitchen: Kitchen,
}

/// A measure as the blank takes it.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Quantity {
    /// The number, for an ounce with the unit: `"1 1/2"`, `"3-4"`, `"2 oz"`.
    pub text: String,
    /// The code of its unit, or `"part"`.
    pub unit: &'static str,
}

/// What stands between the lines of a recipe, or around them.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Aside {
    /// What the drink is called.
    Title,
    /// A heading above other lines.
    Heading,
    /// What is done with it.
    Method,
    /// How many it makes, as it says; empty if that is no number.
    Makes(String),
}

/// What a line says.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Line {
    /// How much; nothing if the line does not say.
    pub measure: Option<Quantity>,
    /// Of what.
    pub name: String,
    /// What else.
    pub note: String,
    /// Whether it may be left out.
    pub optional: bool,
    /// Whether it only decorates.
    pub garnish: bool,
    /// What it is, if nothing is poured by it.
    pub aside: Option<Aside>,
    /// What is wrong with its measure.
    pub fault: Option<Fault>,
}

/// Reads a line. `part` is how large one part is, if that is known.
///
/// ```
/// use farthing::reading::{Kitchen, Marks};
/// use farthing::recipe::{Hand, line};
/// let hand = Hand { marks: Marks::POINT, kitchen: Kitchen::Us };
/// let read = line("3-4 dashes orange bitters (optional)", hand, None);
/// assert_eq!(read.measure.map(|measure| (measure.text, measure.unit)), Some(("3-4".into(), "dash")));
/// assert_eq!((read.name.as_str(), read.optional), ("orange bitters", true));
/// ```
pub fn line(text: &str, hand: Hand, part: Option<Measure>) -> Line {
    if text.chars().nth(MOST_LINE).is_some() {
        let fault = Fault::new(Code::RecipeTooLong).with("most", MOST_LINE.to_string());
        return Line { name: text.trim().into(), fault: Some(fault), ..Line::default() };
    }
    let plain = without_emphasis(text);
    let bare = without_bullet(&plain);
    if let Some((aside, name)) = aside(&plain, bare, hand) {
        return Line { name, aside: Some(aside), ..Line::default() };
    }
    let mut line = quoted(bare, hand, part).unwrap_or_else(|| unquoted(bare, hand, part));
    line.fault = line.fault.map(|fault| located(fault, text));
    line
}

/// A line of which no more is known than its note, as it was read from one: `"chilled, optional"`.
pub fn noted(note: &str) -> Line {
    let mut line = Line::default();
    let mut said = Vec::new();
    for piece in note.split(',').map(str::trim).filter(|piece| !piece.is_empty()) {
        match piece {
            _ if is_any(piece, OPTIONAL) => line.optional = true,
            _ if is_any(piece, FOR_GARNISH) => line.garnish = true,
            _ => said.push(piece),
        }
    }
    line.note = said.join(", ");
    line
}

/// A line whose name stands in quotes, as [`printed`] writes one that would be read otherwise.
fn quoted(bare: &str, hand: Hand, part: Option<Measure>) -> Option<Line> {
    let brackets = brackets(bare, true);
    let name = brackets.name.clone()?;
    let mut reading = Reading::new(hand, part);
    let rest = reading.leads(&brackets.bare);
    let measured = front(rest, hand);
    if !measured.as_ref().map_or(rest, |front| front.rest).trim().is_empty() {
        return None;
    }
    reading.take_brackets(&brackets, measured.as_ref());
    if reading.line.measure.is_none()
        && let Some(front) = &measured
    {
        reading.take_front(front);
    }
    Some(reading.done(name))
}

fn unquoted(bare: &str, hand: Hand, part: Option<Measure>) -> Line {
    let brackets = brackets(bare, false);
    let mut reading = Reading::new(hand, part);
    let rest = reading.leads(&brackets.bare);
    let measured = front(rest, hand);
    // Where none stands in front, one may stand behind the name, or behind a comma.
    let (main, said) = first_comma(rest);
    let behind = if measured.is_none() { reading.at_end(main) } else { None };
    let after_comma = said.iter().position(|piece| measured.is_none() && reading.is_whole(piece));
    let after_comma = if behind.is_none() { after_comma } else { None };
    let apart = after_comma.and_then(|place| front(said.get(place)?, hand));
    let outside = measured.as_ref().or(behind.as_ref().map(|(_, front)| front)).or(apart.as_ref());
    reading.take_brackets(&brackets, outside);
    let (mut name, said) = match &measured {
        Some(front) => first_comma(reading.take_first(front)),
        None => (main, said),
    };
    if let Some((start, _)) = &behind {
        // "Bitters x 2 dashes".
        name = start.trim_end_matches(is_space);
        let times = name.strip_suffix(['x', '×']).filter(|name| name.ends_with(is_space));
        name = times.unwrap_or(name);
    }
    let other = behind.as_ref().map(|(_, front)| front).or(apart.as_ref());
    if let Some(front) = other.filter(|_| reading.line.measure.is_none()) {
        reading.take_front(front);
    }
    let mut said = said;
    if let Some(place) = after_comma {
        said.remove(place);
    }
    if reading.is_of_several(name, &said) {
        let fault = Some(Fault::new(Code::MeasureMissing));
        return Line { name: plain_name(bare), fault, ..Line::default() };
    }
    let (name, tail) = without_tail(name);
    reading.say_or_mark(tail);
    for piece in said {
        reading.say_or_mark(piece);
    }
    let name = plain_name(name);
    if name.is_empty()
        && let Some(front) = measured.filter(|front| front.means == Means::Piece)
    {
        // "1 cube": the word that counts is all there is.
        let noun = one_space(front.unit_typed);
        reading.notes.retain(|note| *note != noun);
        return reading.done(noun);
    }
    reading.done(name)
}

/// A line as far as it is read.
struct Reading {
    hand: Hand,
    part: Option<Measure>,
    line: Line,
    notes: Vec<String>,
    /// The word of a measure without a size, if one was met.
    sizeless: Option<String>,
}

impl Reading {
    fn new(hand: Hand, part: Option<Measure>) -> Self {
        Reading { hand, part, line: Line::default(), notes: Vec::new(), sizeless: None }
    }

    /// Takes off what stands before the measure: that it decorates, and what is done.
    fn leads<'t>(&mut self, text: &'t str) -> &'t str {
        let mut rest = without_bullet(text);
        let behind = after_any(rest, OPTIONAL);
        if let Some(behind) = behind.and_then(|rest| rest.trim_start().strip_prefix(':')) {
            self.line.optional = true;
            rest = without_bullet(behind);
        }
        if let Some(behind) = after_any(rest, GARNISH) {
            self.line.garnish = true;
            rest = without_bullet(behind);
        }
        let before_number = |behind: &str| front(behind, self.hand).is_some();
        if let Some((lead, behind)) = after_which(rest, LEADS)
            && (!holds(LEADS_BEFORE_NUMBERS, lead) || before_number(behind))
            && !behind.trim().is_empty()
        {
            self.say(quantity::before(rest, behind));
            rest = without_bullet(behind);
        }
        rest
    }

    fn say(&mut self, note: &str) {
        let note = plain_name(note);
        if !note.is_empty() {
            self.notes.push(note);
        }
    }

    /// A note, unless it says what a mark says.
    fn say_or_mark(&mut self, note: &str) {
        let note = note.trim();
        if is_any(note, OPTIONAL) {
            self.line.optional = true;
        } else if is_any(note, FOR_GARNISH) {
            self.line.garnish = true;
        } else {
            self.say(note);
        }
    }

    /// A measure in brackets counts where none stands before it, and a metric one where that is not
    /// metric; the other becomes a note.
    fn take_brackets(&mut self, brackets: &Brackets, outside: Option<&Front>) {
        for note in &brackets.notes {
            if note.quoted {
                self.notes.push(note.text.clone());
                continue;
            }
            let inside = front(&note.text, self.hand).filter(|inside| {
                inside.rest.is_empty() && inside.is_sized() && inside.range.is_ok()
            });
            let wins = inside.filter(|inside| {
                self.line.measure.is_none()
                    && match outside {
                        None => true,
                        Some(outside) => match outside.means {
                            Means::Piece => false,
                            Means::Unit(unit) if unit.kind == Kind::Count => false,
                            Means::Unit(unit) if unit.kind == Kind::Bottle => outside.is_one(),
                            Means::NoSize => outside.is_one(),
                            Means::Part => self.part.is_none() && inside.is_metric(),
                            _ => !outside.is_metric() && inside.is_metric(),
                        },
                    }
            });
            match wins {
                Some(inside) => {
                    self.take_front(&inside);
                    if let Some(outside) = outside {
                        self.say(outside.typed);
                    }
                }
                None => self.say_or_mark(&note.text),
            }
        }
    }

    /// The first measure, and what stands beside it: the same in another unit, or more of it.
    fn take_first<'t>(&mut self, first: &Front<'t>) -> &'t str {
        let taken = self.line.measure.is_some();
        let beside = |words: &str| {
            let behind = after_any(first.rest, words)?;
            front(behind, self.hand).filter(|front| front.is_sized() && front.range.is_ok())
        };
        if !taken && first.is_sized() {
            if let Some(other) = beside(SAME) {
                let (counts, said) = if other.is_metric() && !first.is_metric() {
                    (&other, first)
                } else {
                    (first, &other)
                };
                self.take_front(counts);
                self.say(said.typed);
                return other.rest;
            }
            if let Some(more) = beside(AND) {
                // Two measures that add up are one that nobody has reckoned yet.
                let typed = format!("{} + {}", first.typed.trim(), more.typed.trim());
                self.say(&typed);
                self.line.fault = Some(Fault::new(Code::MeasureMissing).with("typed", typed));
                return more.rest;
            }
        }
        if !taken {
            self.take_front(first);
        }
        match after_any(first.rest, CONTAINERS) {
            Some(behind) if first.is_sized() && behind.starts_with(is_space) => {
                self.say(quantity::before(first.rest, behind));
                after_link(behind.trim_start_matches(is_space))
            }
            _ => first.rest,
        }
    }

    fn take_front(&mut self, front: &Front) {
        if front.means != Means::NoSize {
            self.say(front.fullness);
        }
        match (&front.range, front.means) {
            // A blank would take "1 330" for thousands, and has no room for "3 oz to 1 oz": neither is a
            // measure before somebody said so.
            (Err(fault), _)
                if front.number.is_empty()
                    || front.number.contains(' ')
                        && matches!(
                            fault.code(),
                            Code::NumberAmbiguous | Code::NumberUnreadable
                        ) =>
            {
                self.say(front.typed);
                self.line.fault = Some(fault.clone().with("typed", one_space(front.typed)));
            }
            (Err(fault), _) => {
                self.line.measure = front.quantity();
                self.line.fault = Some(fault.clone().with("typed", front.number.as_str()));
            }
            (Ok(range), Means::Part) => self.take_parts(front, *range),
            // What it is a piece of is the name; the word that counts it is kept beside it.
            (_, Means::Piece) => {
                self.line.measure = front.quantity();
                self.say(front.unit_typed);
            }
            (_, Means::NoSize) => {
                self.say(front.typed);
                self.sizeless = Some(front.unit_typed.into());
            }
            _ => self.line.measure = front.quantity(),
        }
    }

    /// Parts of a known size are so much of it; else they stay a ratio, and their size is asked for.
    fn take_parts(&mut self, front: &Front, range: Range) {
        let part = self.part.filter(|part| can_be_part(part.unit.kind));
        let sized = part.and_then(|part| {
            let range = range.times(part.amount).ok()?;
            Some(Quantity { text: written("", range, self.hand.marks)?, unit: part.unit.code })
        });
        if sized.is_some() {
            self.line.measure = sized;
            self.say(front.typed);
        } else {
            self.line.measure = front.quantity();
            self.line.fault =
                Some(Fault::new(Code::PartsNeedSize).with("typed", one_space(front.typed)));
        }
    }

    /// Whether the measure is one of several, as in "2 oz gin, 1 oz vermouth" and "1 oz each gin and vermouth":
    /// by which of them a bottle is poured, nobody said.
    fn is_of_several(&self, name: &str, said: &[&str]) -> bool {
        let sized = self.line.measure.as_ref().is_some_and(|measure| measure.unit != "piece");
        let pieces = || core::iter::once(&name).chain(said);
        sized
            && (after_any(name, EACH).is_some()
                || pieces().any(|piece| measures(piece, self.hand).next().is_some()))
    }

    /// Whether a text is a measure and nothing else.
    fn is_whole(&self, text: &str) -> bool {
        front(text, self.hand)
            .is_some_and(|front| front.rest.is_empty() && front.is_sized() && front.range.is_ok())
    }

    /// A measure at the end of a name, "gin 60 ml", and the name before it.
    fn at_end<'t>(&self, name: &'t str) -> Option<(&'t str, Front<'t>)> {
        measures(name, self.hand).find(|(before, front)| {
            !before.is_empty() && front.range.is_ok() && front.rest.trim().is_empty()
        })
    }

    fn done(mut self, name: String) -> Line {
        self.line.name = name;
        self.line.note = self.notes.join(", ");
        let silent = self.line.measure.is_none() && self.line.fault.is_none();
        if silent && !self.line.garnish {
            let in_note = || {
                self.line.note.split(',').find_map(|note| {
                    let front = front(note, self.hand)?;
                    let pinch = front.means == Means::NoSize && front.rest.is_empty();
                    pinch.then(|| front.unit_typed.into())
                })
            };
            let word = self.sizeless.or_else(in_note).filter(|word| !word.is_empty());
            self.line.fault = Some(match word {
                Some(word) => Fault::new(Code::UnitUnknown).with("typed", word),
                None => Fault::new(Code::MeasureMissing),
            });
        }
        self.line
    }
}

/// The fault with the place of what was typed, in characters from the start of the line.
fn located(fault: Fault, text: &str) -> Fault {
    let typed = fault.value("typed").unwrap_or_default();
    let starts = |(_, (at, _)): &(usize, (usize, char))| {
        text.get(*at..).is_some_and(|text| text.starts_with(typed))
    };
    let at = text.char_indices().enumerate().find(starts).map_or(0, |(at, _)| at);
    fault.with("at", at.to_string())
}
