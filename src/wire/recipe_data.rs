//! What was pasted as a recipe: lines of text, or schema.org/Recipe as JSON-LD, by itself or in the scripts of a
//! page's source.
//!
//! Of the data that recipe is taken which lists its ingredients: at the top, in a list, in `@graph`, or as
//! what a page is about. Its ingredients are lines like any others. Damaged data are refused whole.

use super::entities::decoded;
use super::json::Json;
use crate::problem::{Code, Fault};
use crate::recipe::{MOST_PAGE, MOST_PASTED};
use alloc::string::{String, ToString};
use alloc::vec::Vec;

/// Keys of one object in a recipe's data: schema.org knows some 120 for a recipe. A bound, because
/// each key is held against those before it.
const MOST_KEYS: usize = 200;

/// Where the data of a page hold its recipe, besides at the top.
const WITHIN: [&str; 3] = ["@graph", "mainEntity", "mainEntityOfPage"];

/// What hides a script from readers that know no scripts, in front of it and behind it.
const BEFORE_SCRIPT: [&str; 5] = ["<!--", "<![CDATA[", "//", "/*", "*/"];
const BEHIND_SCRIPT: [&str; 6] = ["-->", "]]>", "//", "/*", "*/", ";"];

/// What is told of data without a recipe.
const NO_RECIPE: &str = "no recipe in it";

/// A recipe as it was pasted.
#[derive(Default)]
pub struct Pasted {
    /// What it is called, where data say so.
    pub name: String,
    /// How many it makes, as data say it.
    pub makes: String,
    /// Its lines.
    pub lines: Vec<String>,
    /// Whether the first stands apart from the others. Data have a name instead.
    pub first_apart: bool,
}

/// Takes a text for what it is.
pub fn pasted(text: &str) -> Result<Pasted, Fault> {
    too_long_past(MOST_PAGE, text)?;
    let scripts = scripts(text);
    if !scripts.is_empty() || is_page(text) {
        return in_page(&scripts);
    }
    too_long_past(MOST_PASTED, text)?;
    if is_json(text) {
        return in_json(text);
    }
    let mut all = text.split(['\n', '\r']).skip_while(|line| line.trim().is_empty()).skip(1);
    let first_apart = all.next().is_some_and(|line| line.trim().is_empty());
    Ok(Pasted { lines: lines(text), first_apart, ..Pasted::default() })
}

fn too_long_past(most: usize, text: &str) -> Result<(), Fault> {
    match text.chars().nth(most) {
        Some(_) => Err(too_long(most)),
        None => Ok(()),
    }
}

/// The fault of more than so much.
pub fn too_long(most: usize) -> Fault {
    Fault::new(Code::RecipeTooLong).with("most", most.to_string())
}

/// The lines of a text that hold anything.
fn lines(text: &str) -> Vec<String> {
    let lines = text.split(['\n', '\r']).map(str::trim_end);
    lines.filter(|line| !line.trim().is_empty()).map(String::from).collect()
}

fn is_blank(c: char) -> bool {
    c.is_whitespace() || c == '\u{feff}'
}

/// A list of texts could begin with a note in brackets; data begin with an object.
fn is_json(text: &str) -> bool {
    text.trim_start_matches(|c| is_blank(c) || c == '[').starts_with('{')
}

fn is_page(text: &str) -> bool {
    let start = text.trim_start_matches(is_blank);
    ["<!doctype", "<html"].iter().any(|tag| after_tag(start, tag).is_some())
}

/// What follows a tag's name, whatever its capitals.
fn after_tag<'t>(text: &'t str, tag: &str) -> Option<&'t str> {
    let (start, rest) = text.split_at_checked(tag.len())?;
    start.eq_ignore_ascii_case(tag).then_some(rest)
}

/// The text before a tag, and what follows the tag's name.
fn at_tag<'t>(text: &'t str, tag: &str) -> Option<(&'t str, &'t str)> {
    text.char_indices().filter(|(_, c)| *c == '<').find_map(|(at, _)| {
        let (before, from) = text.split_at_checked(at)?;
        Some((before, after_tag(from, tag)?))
    })
}

/// The scripts of a page that hold data. One that is never closed ends with the page, as in a browser.
fn scripts(page: &str) -> Vec<&str> {
    let mut found = Vec::new();
    let mut rest = page;
    while let Some((_, tag)) = at_tag(rest, "<script") {
        let (kind, body) = tag.split_once('>').unwrap_or((tag, ""));
        let (script, behind) = at_tag(body, "</script").unwrap_or((body, ""));
        if kind.to_ascii_lowercase().contains("ld+json") {
            found.push(script);
        }
        rest = behind;
    }
    found
}

/// The recipe in any of the scripts. Where none has one, that of them is told of which most can be said.
fn in_page(scripts: &[&str]) -> Result<Pasted, Fault> {
    let mut told = unreadable(NO_RECIPE);
    for (index, script) in scripts.iter().enumerate() {
        let fault = match too_long_past(MOST_PASTED, script).and_then(|()| in_json(bare(script))) {
            Ok(pasted) => return Ok(pasted),
            Err(fault) => fault,
        };
        if told.value("why") == Some(NO_RECIPE) && fault.value("why") != Some(NO_RECIPE) {
            let place = format!("script {}", index.saturating_add(1));
            let place = match fault.value("where").unwrap_or_default() {
                "" => place,
                inner => format!("{place}, {inner}"),
            };
            told = fault.with("where", place);
        }
    }
    Err(told)
}

/// A script without what hides it.
fn bare(script: &str) -> &str {
    let mut bare = script.trim_matches(is_blank);
    while let Some(inner) = BEFORE_SCRIPT.iter().find_map(|sign| bare.strip_prefix(sign)) {
        bare = inner.trim_start_matches(is_blank);
    }
    while let Some(inner) = BEHIND_SCRIPT.iter().find_map(|sign| bare.strip_suffix(sign)) {
        bare = inner.trim_end_matches(is_blank);
    }
    bare
}

fn in_json(text: &str) -> Result<Pasted, Fault> {
    let text = text.trim_matches(is_blank);
    few_keys(text)?;
    let json =
        Json::parse(text).map_err(|fault| unreadable(fault.value("why").unwrap_or_default()))?;
    let mut recipes = Vec::new();
    find_recipes(&json, &mut recipes);
    let full = recipes.iter().find(|recipe| ingredients(recipe).is_some());
    let recipe = full.or(recipes.first()).ok_or_else(|| unreadable(NO_RECIPE))?;
    let mut found = Vec::new();
    match ingredients(recipe) {
        Some(Json::Text(text)) => found = lines(&decoded(text)),
        Some(Json::List(list)) => {
            for (index, item) in list.iter().enumerate() {
                let text = ingredient(item).ok_or_else(|| {
                    let place = format!("recipeIngredient[{index}]");
                    unreadable("an ingredient that is no text").with("where", place)
                })?;
                found.extend(lines(&decoded(&text)));
            }
        }
        _ => {}
    }
    if found.is_empty() {
        return Err(unreadable("no ingredients in it"));
    }
    let name = decoded(recipe.text_of("name")).trim().into();
    let makes = recipe.field("recipeYield").map(first_text).unwrap_or_default().into();
    Ok(Pasted { name, makes, lines: found, first_apart: false })
}

fn unreadable(why: &str) -> Fault {
    Fault::new(Code::RecipeUnreadable).with("why", why).with("where", "")
}

/// All recipes, in order. The reader of JSON bounds the depth.
fn find_recipes<'j>(json: &'j Json, found: &mut Vec<&'j Json>) {
    if let Json::List(items) = json {
        items.iter().for_each(|item| find_recipes(item, found));
    }
    if json.field("@type").is_some_and(is_recipe) {
        found.push(json);
    }
    WITHIN.iter().filter_map(|key| json.field(key)).for_each(|inner| find_recipes(inner, found));
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

fn ingredients(recipe: &Json) -> Option<&Json> {
    recipe.field("recipeIngredient").or_else(|| recipe.field("ingredients"))
}

/// An ingredient as a line: a text, or an object that holds one, or a value, its unit and a name.
fn ingredient(item: &Json) -> Option<String> {
    let part = |key| item.field(key).map(first_text).unwrap_or_default();
    match (item, part("text"), part("name")) {
        (Json::Text(text), ..) => Some(text.clone()),
        (_, "", "") => None,
        (_, "", name) => Some(format!("{} {} {name}", part("value"), part("unitText"))),
        (_, text, _) => Some(text.into()),
    }
}

/// A text or a number as it was written; of several the first.
fn first_text(json: &Json) -> &str {
    match json {
        Json::Text(text) | Json::Number(text) => text,
        Json::List(items) => match items.first() {
            Some(Json::Text(text) | Json::Number(text)) => text,
            _ => "",
        },
        _ => "",
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
