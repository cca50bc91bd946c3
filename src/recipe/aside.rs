//! What stands in a recipe beside its ingredients: what it is called, headings, what is done, how many it makes.
//!
//! A line that holds a measure is none of these, whatever it begins with: it is asked about instead.

use super::likeness::{is_letter, is_number};
use super::quantity::{after_any, count, measures};
use super::split::is_any;
use super::words::{DRINKS, FOR, HEADINGS, LINKS, MAKES, METHOD, METHOD_ENDS, each};
use super::{Aside, Hand, Line};
use crate::problem::Code;
use crate::reading::is_space;
use alloc::string::String;

/// Characters of a title: the longest name that a shelf takes.
const MOST_TITLE: usize = 80;

/// Words of a sentence: an ingredient that no measure stands before has fewer, with all that is said of it.
const SENTENCE_WORDS: usize = 10;

/// What a line is that pours nothing, and what it says. `bare` is the text without its bullet.
pub fn aside(text: &str, bare: &str, hand: Hand) -> Option<(Aside, String)> {
    if let Some(makes) = makes(bare, hand) {
        return Some((Aside::Makes(makes), bare.into()));
    }
    if let Some(heading) = heading(text, bare) {
        return Some((Aside::Heading, heading.into()));
    }
    let is_method = is_method(bare) && measures(bare, hand).next().is_none();
    is_method.then(|| (Aside::Method, bare.into()))
}

/// "Ingredients", "For the syrup:", "## Syrup"; and what names no bottle: "#sour #towpath", a row of dashes.
fn heading<'t>(text: &'t str, bare: &'t str) -> Option<&'t str> {
    let start = text.trim_start_matches(is_space);
    let behind = start.trim_start_matches('#');
    let marked = behind.len() < start.len() && behind.starts_with(is_space);
    let colons = |c: char| is_space(c) || matches!(c, ':' | '：');
    let tagged = start.split_whitespace().all(|word| word.starts_with('#'));
    if tagged || !start.contains(|c| is_letter(c) || is_number(c)) {
        return Some(start.trim_end_matches(colons));
    }
    let ends = bare.ends_with([':', '：']);
    (marked || ends || is_any(bare, HEADINGS)).then(|| bare.trim_end_matches(colons))
}

/// How many a recipe makes: `"2"` of "Serves 2" and "2 drinks"; nothing if a text does not say that.
pub fn makes(text: &str, hand: Hand) -> Option<String> {
    let says =
        after_any(text, MAKES).map(|rest| rest.trim_start_matches(|c| is_space(c) || c == ':'));
    let bare = says.or_else(|| after_any(text, FOR)).unwrap_or(text);
    let (number, rest) = count(bare.trim_start_matches(is_space), hand)?;
    let counts = is_any(rest, DRINKS) || says.is_some() && is_any(rest, "");
    // "Makes 250 ml" is so much of it, and not so many.
    let some = says.map(|_| String::new());
    if counts { Some(number) } else { some }
}

/// "Shake with ice and strain", "Alles mit Eis schütteln", and a sentence about the drink.
fn is_method(bare: &str) -> bool {
    let begins = after_any(bare, METHOD).is_some_and(|rest| {
        // "Blend of two rums" is a name.
        let rest = rest.trim_start_matches(is_space);
        !each(LINKS)
            .any(|link| rest.strip_prefix(link).is_some_and(|rest| rest.starts_with(is_space)))
    });
    let last = bare.trim_end_matches(|c: char| is_space(c) || matches!(c, '.' | '!'));
    let last = last.rsplit(is_space).next().filter(|last| last.len() < bare.len());
    let sentence = bare.ends_with(['.', '!']) && bare.split_whitespace().count() >= SENTENCE_WORDS;
    begins || sentence || last.is_some_and(|last| is_any(last, METHOD_ENDS))
}

/// Whether the first of two lines is what the drink is called: it says no measure and nothing else, and
/// stands apart, or a measured line or a heading follows.
pub fn is_title(first: &Line, next: &Line, apart: bool) -> bool {
    let plain = match (&first.aside, &first.fault) {
        (Some(Aside::Heading), _) => {
            !is_any(&first.name, HEADINGS) && after_any(&first.name, FOR).is_none()
        }
        (None, Some(fault)) => fault.code() == Code::MeasureMissing,
        _ => false,
    };
    let bare = first.measure.is_none()
        && first.note.is_empty()
        && !(first.optional || first.garnish || first.name.is_empty());
    let short = first.name.chars().nth(MOST_TITLE).is_none();
    let above = matches!(next.aside, Some(Aside::Heading | Aside::Makes(_)));
    plain && bare && short && (apart || above || next.measure.is_some())
}
