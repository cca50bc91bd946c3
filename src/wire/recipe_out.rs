//! A spec and what it costs, as schema.org/Recipe in JSON-LD, for other programs to read.

use super::asking::{self, hand, measured};
use super::json::Json;
use super::ranging::Showing;
use super::recipe::domain_hand;
use super::record::{Write, read_text};
use super::records::{Ask, Bottle, Line, RecipeOutAsk, RecipeOutReply, Spec};
use super::replying::shown;
use super::{counted, told, written};
use crate::dash::{self, Word};
use crate::measure::{self, Unit};
use crate::money::{UNKNOWN, currency};
use crate::number::Kept;
use crate::problem::Problems;
use crate::recipe::likeness::{Words, whole_within};
use crate::recipe::{self, printed};
use crate::sheet::{self, GlassAnswer};
use alloc::string::String;
use alloc::vec::Vec;

/// Decimals of a price on a page: more than any currency has, so that a bottle of a case costs what it costs.
const PRICE_DECIMALS: u32 = 4;

/// Decimals of a rough measure's own size: a hundredth of a millilitre is less than any of them is sure.
const SIZE_DECIMALS: u32 = 2;

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
    let looked = Looked {
        sums: &sums,
        answer: &answer,
        glass,
        mark: hand(&ask.house, &mut Problems::default()).mark(),
    };
    let page_lines =
        lines.iter().enumerate().map(|(place, line)| looked.sized(place, line)).collect();
    let page_prices = if without_prices { String::new() } else { looked.prices(&ask) };
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
    RecipeOutReply {
        text: out,
        lines,
        page_lines,
        page_prices,
        missing: counted(glass.missing),
        problems: told(problems.0),
    }
}

/// A glass with what the sheet says of it.
struct Looked<'a> {
    sums: &'a sheet::Ask,
    answer: &'a sheet::Reply,
    glass: &'a GlassAnswer,
    mark: &'static str,
}

impl Looked<'_> {
    fn line(&self, place: usize) -> Option<&sheet::Line> {
        Some(&self.sums.specs.first()?.get(place)?.what)
    }

    /// A line with the size of its rough measure, where that is the person's own: `2 dashes bitters (1.6 ml)`.
    fn sized(&self, place: usize, printed: &str) -> String {
        let own = || {
            let line = self.line(place)?;
            let bottle = &self.sums.bottles.get(line.bottle?)?.what;
            let measure = line.measure.filter(|measure| measure.spread.is_none())?;
            let size = dash::size(measure.unit, &bottle.sizes, &self.sums.house.sizes)?;
            let is_own = measure.unit.size == measure::Size::Rough && size.word != Word::Assumed;
            self.glass.lines.get(place)?.amount.as_ref().filter(|_| is_own)
        };
        match own() {
            Some(amount) => {
                format!("{printed} ({} {})", self.text(amount.value.to(SIZE_DECIMALS)), amount.unit)
            }
            None => printed.into(),
        }
    }

    /// `rye whisky: 28.00 for 700 ml at 40 %; ...`: what one bottle costs, as this person bears it, and
    /// what it gives. One without a price is named, as `sloe gin: for`, where another's would be taken
    /// for its own.
    fn prices(&self, ask: &Ask) -> String {
        let mut told: Vec<usize> = Vec::new();
        let (mut entries, mut priced, mut unpriced) = (Vec::new(), Vec::new(), Vec::new());
        for (place, record) in ask.specs.iter().flat_map(|spec| &spec.lines).enumerate() {
            let bottle = self.line(place).and_then(|line| line.bottle);
            let Some(bottle) = bottle.filter(|bottle| !told.contains(bottle)) else { continue };
            told.push(bottle);
            let Some(record) = bottle_of(record, &ask.bottles) else { continue };
            // A semicolon would end the entry.
            let name = one_line(&record.name).replace(';', ",");
            match self.price(bottle, &name) {
                Some(entry) => {
                    entries.push(entry);
                    priced.push(Words::of(&name));
                }
                None => unpriced.push(name),
            }
        }
        let is_taken = |name: &String| whole_within(&Words::of(name), &priced).is_some();
        entries.extend(unpriced.into_iter().filter(is_taken).map(|name| format!("{name}: for")));
        entries.join("; ")
    }

    fn price(&self, bottle: usize, name: &str) -> Option<String> {
        let found = self.answer.bottles.get(bottle)?;
        let (cost, usable) = (found.cost.as_ref()?, found.usable.as_ref()?);
        let price = self.text(cost.value.to(PRICE_DECIMALS));
        let holds = self.text(usable.value.to(PRICE_DECIMALS));
        let strength = self.sums.bottles.get(bottle)?.what.strength;
        let strength = strength.and_then(|strength| strength.kept().ok());
        let at =
            strength.map(|strength| format!(" at {} %", self.text(strength))).unwrap_or_default();
        Some(format!("{name}: {price} for {holds} {}{at}", usable.unit))
    }

    fn text(&self, number: Kept) -> String {
        number.plain_text().replace('.', self.mark)
    }
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
        let mut read = recipe::noted(&one_line(&line.note));
        read.measure = measure.and_then(|measure| recipe::measured(measure, hand.marks));
        read.name = name;
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
