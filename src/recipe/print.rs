//! A line as it is written down, so that it reads again as the same.

use super::quantity::{unit_words, written};
use super::{Aside, Hand, Line, Quantity, line};
use crate::measure::Measure;
use crate::reading::{Marks, Range};
use alloc::string::String;

/// A measure as the blank takes it, written anew.
pub fn measured(measure: Measure, marks: Marks) -> Option<Quantity> {
    let range = Range { best: measure.amount, spread: measure.spread };
    Some(Quantity { text: written("", range, marks)?, unit: measure.unit.code })
}

/// A line as text. Where its name or note would be read as something else, they stand in quotes.
///
/// ```
/// use farthing::reading::{Kitchen, Marks};
/// use farthing::recipe::{Hand, line, printed};
/// let hand = Hand { marks: Marks::POINT, kitchen: Kitchen::Us };
/// let read = line("* Rye 60ml (2 oz)", hand, None);
/// assert_eq!(printed(&read, hand), "60 ml Rye (2 oz)");
/// ```
pub fn printed(read: &Line, hand: Hand) -> String {
    let plain = text(read, false);
    let again = line(&plain, hand, None);
    let same = again.measure == read.measure
        && again.name == read.name
        && again.note == read.note
        && again.aside == read.aside
        && (again.optional, again.garnish) == (read.optional, read.garnish);
    if same { plain } else { text(read, true) }
}

fn text(read: &Line, quotes: bool) -> String {
    match read.aside {
        None => {}
        Some(Aside::Heading) => return format!("{}:", read.name),
        Some(_) => return read.name.clone(),
    }
    let mut text = String::new();
    if read.garnish {
        text.push_str("Garnish: ");
    }
    if let Some(Quantity { text: number, unit }) = &read.measure {
        text.push_str(number);
        text.push(' ');
        // A count needs no word, and an ounce has it in its text.
        let said = number.ends_with("oz") || (*unit == "piece" && !quotes);
        if !said {
            text.push_str(&unit_words(unit, number == "1"));
            text.push(' ');
        }
    }
    let quote = |text: &str| match quotes {
        true => format!("\"{}\"", text.replace('"', "\"\"")),
        false => text.into(),
    };
    if quotes || !read.name.is_empty() {
        text.push_str(&quote(&read.name));
    }
    if !read.note.is_empty() {
        text.push_str(&format!(" ({})", quote(&read.note)));
    }
    if read.optional {
        text.push_str(" (optional)");
    }
    text.trim().into()
}
