//! A pasted recipe, read: each of its lines, and the bottles of the shelf that it may mean.

use super::asking::{Hand, hand, measured};
use super::recipe_data::{Pasted, pasted, too_long};
use super::record::read_text;
use super::records::{self, NamedBottle, RecipeAsk, RecipeLine, RecipeReply, Written};
use super::{MOST_BOTTLES, told, written};
use crate::problem::{Code, Fault, Problems};
use crate::reading::not_a_range;
use crate::recipe::likeness::{Words, is_meant, is_number, likeliest};
use crate::recipe::{self, Aside, Line, MOST_LINE, MOST_RECIPE_LINES, Quantity, is_title};
use alloc::string::{String, ToString};
use alloc::vec::Vec;

/// Reads a recipe: a [`RecipeAsk`] as JSON to a [`RecipeReply`] as JSON.
///
/// ```
/// let reply = farthing::wire::recipe(r#"{"text": "5cl London dry\n2 dashes bitters", "bottles": [
///     {"id": "a", "name": "Orange bitters"}
/// ]}"#);
/// assert!(reply.contains(r#""measure":{"text":"5","unit":"cl"},"name":"London dry""#));
/// assert!(reply.contains(r#""candidates":["a"]"#));
/// ```
pub fn recipe(ask: &str) -> String {
    written(&match read_text::<RecipeAsk>(ask) {
        Ok(ask) => replied(&ask),
        Err(fault) => RecipeReply { problems: told(vec![fault.at("")]), ..Default::default() },
    })
}

fn replied(ask: &RecipeAsk) -> RecipeReply {
    let mut problems = Problems::default();
    let hand = hand(&ask.house, &mut problems);
    let part = measured(&ask.part, hand, None).and_then(not_a_range);
    let part = problems.keep("part", part).flatten();
    let mut reply = RecipeReply::default();
    if ask.bottles.len() > MOST_BOTTLES {
        let fault = Fault::new(Code::TooManyBottles).with("most", MOST_BOTTLES.to_string());
        problems.0.push(fault.at("bottles"));
    }
    if let Some(pasted) = problems.keep("text", pasted(&ask.text)) {
        let shelf = ask.bottles.iter().take(MOST_BOTTLES);
        let words: Vec<Words> = shelf.map(|bottle| Words::of(&bottle.name)).collect();
        let Pasted { name, makes, lines: texts, first_apart } = pasted;
        if texts.len() > MOST_RECIPE_LINES {
            problems.0.push(too_long(MOST_RECIPE_LINES).at("text"));
        }
        let own = domain_hand(hand);
        let read = texts.iter().take(MOST_RECIPE_LINES).map(|text| recipe::line(text, own, part));
        let mut lines: Vec<Line> = read.collect();
        reply.name = name;
        if reply.name.is_empty()
            && let [first, next, ..] = &mut *lines
            && is_title(first, next, first_apart)
            && !words.contains(&Words::of(&first.name))
        {
            reply.name = first.name.clone();
            *first =
                Line { name: first.name.clone(), aside: Some(Aside::Title), ..Line::default() };
        }
        let in_lines = lines.iter().find_map(|line| match &line.aside {
            Some(Aside::Makes(makes)) => Some(makes.clone()),
            _ => None,
        });
        // Data may say the number alone.
        let in_data =
            || recipe::makes(&makes, own).or_else(|| recipe::makes(&format!("makes {makes}"), own));
        reply.makes = in_lines.or_else(in_data).unwrap_or_default();
        let mut lines = lines.into_iter();
        for text in texts {
            reply.lines.push(match lines.next() {
                Some(line) => told_line(text, line, &ask.bottles, &words),
                None => unread(text),
            });
        }
    }
    reply.problems = told(problems.0);
    reply
}

/// A line past those that are read: its text, and why it was not.
fn unread(text: String) -> RecipeLine {
    let problems = told(vec![too_long(MOST_RECIPE_LINES).at("text")]);
    RecipeLine { text, problems, ..RecipeLine::default() }
}

fn told_line(text: String, line: Line, bottles: &[NamedBottle], words: &[Words]) -> RecipeLine {
    let Line { measure, name, note, optional, garnish, aside, fault } = line;
    // A name may yet be a bottle's; what else pours nothing is none.
    let poured = matches!(aside, None | Some(Aside::Title));
    let found = if poured { likeliest(&name, words) } else { Vec::new() };
    let likeliest = found.first().and_then(|place| words.get(*place));
    // "2 oz gin, 1 oz rye" without a measure of its own is more than one bottle.
    let likeliest = likeliest.filter(|_| measure.is_some() || !name.contains(is_number));
    let is_meant = likeliest.is_some_and(|bottle| is_meant(&name, bottle));
    let aside = match aside {
        None => "",
        Some(Aside::Title) => "title",
        Some(Aside::Heading) => "heading",
        Some(Aside::Method) => "method",
        Some(Aside::Makes(_)) => "makes",
    };
    let place = if text.chars().nth(MOST_LINE).is_some() { "text" } else { "measure" };
    let fault = fault.map(|fault| fault.at(place));
    RecipeLine {
        text,
        measure: measure.map(blank).unwrap_or_default(),
        name,
        note,
        optional,
        garnish,
        aside: aside.into(),
        candidates: found
            .into_iter()
            .filter_map(|place| bottles.get(place).map(|bottle| bottle.id.clone()))
            .collect(),
        is_meant,
        problems: told(fault.into_iter().collect()),
    }
}

/// How the person writes, as far as the lines of a recipe need it.
pub fn domain_hand(hand: Hand) -> recipe::Hand {
    recipe::Hand { marks: hand.marks, kitchen: hand.kitchen }
}

/// A measure as a blank.
pub fn blank(measure: Quantity) -> Written {
    records::Written { text: measure.text, unit: measure.unit.into() }
}
