//! A spec and what it costs, as schema.org/Recipe in JSON-LD, for other programs to read.

use super::asking::{self, hand, measured};
use super::json::Json;
use super::ranging::Showing;
use super::recipe::domain_hand;
use super::record::{Write, read_text};
use super::records::{Ask, Bottle, Line, RecipeOutAsk, RecipeOutReply, Spec};
use super::replying::shown;
use super::{counted, told, written};
use crate::measure::Unit;
use crate::money::{UNKNOWN, currency};
use crate::problem::Problems;
use crate::recipe::{self, printed};
use crate::sheet;
use alloc::string::String;
use alloc::vec::Vec;

/// A spec as JSON-LD: a [`RecipeOutAsk`] as JSON to a [`RecipeOutReply`] as JSON.
///
/// ```
/// let reply = farthing::wire::recipe_out(r#"{
///     "bottles": [{"id": "rye", "name": "Rye", "paid": {"price": "28"}, "holds": {"text": "70 cl"}}],
///     "spec": {"name": "Lock Keeper", "lines": [{"bottle": "rye", "measure": {"text": "50 ml"}}]}
/// }"#);
/// assert!(reply.contains(r#"\"recipeIngredient\":[\"50 ml Rye\"]"#));
/// assert!(reply.contains(r#"\"currency\":\"GBP\",\"value\":\"2.00\""#));
/// ```
pub fn recipe_out(ask: &str) -> String {
    written(&match read_text::<RecipeOutAsk>(ask) {
        Ok(ask) => replied(ask),
        Err(fault) => RecipeOutReply { problems: told(vec![fault.at("")]), ..Default::default() },
    })
}

fn replied(ask: RecipeOutAsk) -> RecipeOutReply {
    let RecipeOutAsk { house, bottles, spec, without_prices } = ask;
    let ask = Ask { house, bottles, pours: Vec::new(), specs: vec![spec] };
    let mut problems = Problems::default();
    let currency = problems.keep("house.currency", currency(&ask.house.currency));
    let sums = asking::sheet_ask(&ask, &mut problems);
    let answer = sheet::answer(&sums, &mut problems);
    let showing = Showing::in_brief(currency.unwrap_or(UNKNOWN), &ask.bottles);
    let (Some(glass), Some(spec)) = (answer.specs.first(), ask.specs.first()) else {
        return RecipeOutReply::default();
    };
    let lines = ingredients(spec, &ask);
    let mut fields = vec![
        ("@context", text("https://schema.org")),
        ("@type", text("Recipe")),
        ("name", text(&spec.name)),
        ("recipeYield", text("1")),
        ("recipeIngredient", Json::List(lines.iter().map(|line| text(line)).collect())),
    ];
    // The cost of some of the lines is not the cost of the glass.
    let cost = shown(&glass.cost, showing).filter(|_| glass.missing == 0 && !without_prices);
    if let Some(cost) = cost {
        let cost = vec![
            ("@type", text("MonetaryAmount")),
            ("currency", text(&ask.house.currency)),
            ("value", text(&cost.shown)),
        ];
        fields.push(("estimatedCost", object(cost)));
    }
    let mut out = String::new();
    object(fields).write(&mut out);
    RecipeOutReply { text: out, lines, missing: counted(glass.missing), problems: told(problems.0) }
}

fn text(text: &str) -> Json {
    Json::Text(text.into())
}

fn object(fields: Vec<(&str, Json)>) -> Json {
    Json::Object(fields.into_iter().map(|(key, value)| (key.into(), value)).collect())
}

fn ingredients(spec: &Spec, ask: &Ask) -> Vec<String> {
    let hand = hand(&ask.house, &mut Problems::default());
    let line = |line: &Line| {
        let bottle = bottle_of(line, &ask.bottles);
        let kind = bottle.and_then(|bottle| measured(&bottle.holds, hand, None).ok().flatten());
        let kind = kind.map(|holds| holds.unit).map(|unit: &Unit| unit.kind);
        let measure = measured(&line.measure, hand, kind).ok().flatten();
        let name = bottle.map(|bottle| one_line(&bottle.name)).unwrap_or_default();
        let read = recipe::Line {
            measure: measure.and_then(|measure| recipe::measured(measure, hand.marks)),
            name,
            ..recipe::Line::default()
        };
        // A measure that cannot be read stays as it was typed.
        let typed = if measure.is_none() { one_line(&line.measure.text) } else { String::new() };
        let printed = printed(&read, domain_hand(hand));
        format!("{typed} {printed}").trim().into()
    };
    spec.lines.iter().map(line).collect()
}

fn bottle_of<'a>(line: &'a Line, bottles: &'a [Bottle]) -> Option<&'a Bottle> {
    match line.bottle.is_empty() {
        true => line.own.as_ref(),
        false => bottles.iter().find(|bottle| bottle.id == line.bottle),
    }
}

/// A name that somebody wrote over two lines is one ingredient all the same.
fn one_line(name: &str) -> String {
    let words: Vec<&str> = name.split_whitespace().collect();
    words.join(" ")
}
