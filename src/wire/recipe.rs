//! A pasted recipe, read: lines of text, or schema.org/Recipe as JSON-LD.
//!
//! Of JSON-LD the first object is taken whose `@type` is or holds "Recipe": at the top, in a list, or
//! in `@graph`. Its ingredients are lines like any others. Damaged data are refused whole.

use super::asking::{Hand, hand, measured};
use super::json::Json;
use super::record::read_text;
use super::records::{self, NamedBottle, RecipeAsk, RecipeLine, RecipeReply, Written};
use super::{MOST_BOTTLES, told, written};
use crate::measure::Measure;
use crate::problem::{Code, Fault, Problems};
use crate::reading::not_a_range;
use crate::recipe::likeness::{Words, likeliest};
use crate::recipe::{self, Line, MOST_LINE, MOST_PASTED, MOST_RECIPE_LINES, Quantity};
use alloc::string::{String, ToString};
use alloc::vec::Vec;

/// Keys of one object in a recipe's data: schema.org knows some 120 for a recipe. A bound, because
/// each key is held against those before it.
pub const MOST_KEYS: usize = 200;

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
        reply.name = pasted.name;
        if pasted.lines.len() > MOST_RECIPE_LINES {
            problems.0.push(too_long(MOST_RECIPE_LINES).at("text"));
        }
        for (index, text) in pasted.lines.into_iter().enumerate() {
            reply.lines.push(match index < MOST_RECIPE_LINES {
                true => read(text, hand, part, &ask.bottles, &words),
                false => unread(text),
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

fn too_long(most: usize) -> Fault {
    Fault::new(Code::RecipeTooLong).with("most", most.to_string())
}

fn read(
    text: String,
    hand: Hand,
    part: Option<Measure>,
    bottles: &[NamedBottle],
    words: &[Words],
) -> RecipeLine {
    let line = recipe::line(&text, domain_hand(hand), part);
    let Line { measure, name, note, optional, garnish, heading, fault } = line;
    let found = if heading { Vec::new() } else { likeliest(&name, words) };
    let place = if text.chars().nth(MOST_LINE).is_some() { "text" } else { "measure" };
    let fault = fault.map(|fault| fault.at(place));
    RecipeLine {
        text,
        measure: measure.map(blank).unwrap_or_default(),
        name,
        note,
        optional,
        garnish,
        heading,
        candidates: found
            .into_iter()
            .filter_map(|place| bottles.get(place).map(|bottle| bottle.id.clone()))
            .collect(),
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

/// A recipe as it was pasted: its name, if it has one, and its lines.
struct Pasted {
    name: String,
    lines: Vec<String>,
}

fn pasted(text: &str) -> Result<Pasted, Fault> {
    if text.chars().nth(MOST_PASTED).is_some() {
        return Err(too_long(MOST_PASTED));
    }
    if is_json(text) {
        return in_json(text);
    }
    Ok(Pasted { name: String::new(), lines: lines(text) })
}

/// The lines of a text that hold anything.
fn lines(text: &str) -> Vec<String> {
    let lines = text.split(['\n', '\r']).map(str::trim_end);
    lines.filter(|line| !line.trim().is_empty()).map(String::from).collect()
}

/// A list of texts could begin with a note in brackets; data begin with an object.
fn is_json(text: &str) -> bool {
    let text = text.trim_start_matches(|c: char| c.is_whitespace() || c == '\u{feff}');
    let inner = text.trim_start_matches(|c: char| c.is_whitespace() || c == '[');
    inner.starts_with('{')
}

fn in_json(text: &str) -> Result<Pasted, Fault> {
    let text = text.trim_matches(|c: char| c.is_whitespace() || c == '\u{feff}');
    few_keys(text)?;
    let json =
        Json::parse(text).map_err(|fault| unreadable(fault.value("why").unwrap_or_default()))?;
    let recipe = first_recipe(&json).ok_or_else(|| unreadable("no recipe in it"))?;
    let ingredients = recipe.field("recipeIngredient").or_else(|| recipe.field("ingredients"));
    let mut found = Vec::new();
    match ingredients {
        Some(Json::Text(text)) => found = lines(text),
        Some(Json::List(list)) => {
            for (index, item) in list.iter().enumerate() {
                let Json::Text(text) = item else {
                    let place = format!("recipeIngredient[{index}]");
                    return Err(unreadable("an ingredient that is no text").with("where", place));
                };
                found.extend(lines(text));
            }
        }
        _ => {}
    }
    if found.is_empty() {
        return Err(unreadable("no ingredients in it"));
    }
    Ok(Pasted { name: recipe.text_of("name").trim().into(), lines: found })
}

fn unreadable(why: &str) -> Fault {
    Fault::new(Code::RecipeUnreadable).with("why", why).with("where", "")
}

/// The first recipe at the top, in a list or in `@graph`. The reader of JSON bounds the depth.
fn first_recipe(json: &Json) -> Option<&Json> {
    match json {
        Json::List(items) => items.iter().find_map(first_recipe),
        Json::Object(_) if json.field("@type").is_some_and(is_recipe) => Some(json),
        _ => json.field("@graph").and_then(first_recipe),
    }
}

fn is_recipe(kind: &Json) -> bool {
    match kind {
        Json::Text(kind) => kind.rsplit(['/', ':', '#']).next() == Some("Recipe"),
        Json::List(kinds) => {
            kinds.iter().any(|kind| matches!(kind, Json::Text(_)) && is_recipe(kind))
        }
        _ => false,
    }
}

/// Refuses an object of more keys than [`MOST_KEYS`], before any key is compared.
fn few_keys(text: &str) -> Result<(), Fault> {
    let mut open: Vec<usize> = Vec::new();
    let mut chars = text.chars();
    let mut in_text = false;
    while let Some(c) = chars.next() {
        match c {
            '\\' if in_text => {
                chars.next();
            }
            '"' => in_text = !in_text,
            _ if in_text => {}
            '{' | '[' => open.push(0),
            '}' | ']' => {
                open.pop();
            }
            ':' => {
                let keys = open.last_mut().map(|keys| {
                    *keys = keys.saturating_add(1);
                    *keys
                });
                if keys > Some(MOST_KEYS) {
                    return Err(unreadable("an object of too many keys"));
                }
            }
            _ => {}
        }
    }
    Ok(())
}
