//! The words for units, as people write them.
//!
//! A bare "tsp", "tbsp", "cup", "gill", "pint" or "fl oz" means another size in another country:
//! the person's kitchen says which. `oz` is a mass beside a bag that is weighed, else a fluid ounce.

use crate::measure::{Kind, Unit, unit};
use crate::problem::{Code, Fault};
use alloc::string::String;

/// Whose kitchen measures a bare word means.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kitchen {
    /// The United States.
    Us,
    /// Britain: metric spoons, imperial ounces, gills and pints.
    Uk,
    /// Australia: a tablespoon of 20 ml.
    Au,
    /// Metric spoons and cups; ounces, gills and pints as in Britain.
    Metric,
}

impl Kitchen {
    /// The kitchen of a code.
    pub fn from_code(code: &str) -> Result<Kitchen, Fault> {
        match code {
            "us" => Ok(Kitchen::Us),
            "uk" => Ok(Kitchen::Uk),
            "au" => Ok(Kitchen::Au),
            "metric" => Ok(Kitchen::Metric),
            other => Err(Fault::new(Code::ChoiceUnknown).with("typed", other)),
        }
    }
}

/// What a word stands for.
#[derive(Clone, Copy)]
enum Means {
    /// One unit everywhere.
    Unit(&'static str),
    /// In the United States, in Australia, and elsewhere.
    ByKitchen { us: &'static str, au: &'static str, other: &'static str },
    /// The avoirdupois ounce where the bottle is weighed, else a fluid ounce.
    Ounce,
}

use Means::{ByKitchen, Ounce};

const FLUID_OUNCE: Means = ByKitchen { us: "us_fl_oz", au: "imp_fl_oz", other: "imp_fl_oz" };
const TEASPOON: Means = ByKitchen { us: "us_tsp", au: "metric_tsp", other: "metric_tsp" };
const TABLESPOON: Means = ByKitchen { us: "us_tbsp", au: "au_tbsp", other: "metric_tbsp" };
const CUP: Means = ByKitchen { us: "us_cup", au: "metric_cup", other: "metric_cup" };
const GILL: Means = ByKitchen { us: "us_gill", au: "imp_gill", other: "imp_gill" };
const PINT: Means = ByKitchen { us: "us_pint", au: "imp_pint", other: "imp_pint" };

/// Spellings, in lower case, without points, one space between words. A plural in `s` is read too.
const SPELLINGS: &[(&str, Means)] = &[
    ("ml", Means::Unit("ml")),
    ("millilitre", Means::Unit("ml")),
    ("milliliter", Means::Unit("ml")),
    ("cc", Means::Unit("ml")),
    ("cl", Means::Unit("cl")),
    ("centilitre", Means::Unit("cl")),
    ("centiliter", Means::Unit("cl")),
    ("dl", Means::Unit("dl")),
    ("decilitre", Means::Unit("dl")),
    ("deciliter", Means::Unit("dl")),
    ("l", Means::Unit("l")),
    ("ltr", Means::Unit("l")),
    ("litre", Means::Unit("l")),
    ("liter", Means::Unit("l")),
    ("dash", Means::Unit("dash")),
    ("dashes", Means::Unit("dash")),
    ("drop", Means::Unit("drop")),
    ("dropper", Means::Unit("dropper")),
    ("dropperful", Means::Unit("dropper")),
    ("dropper squeeze", Means::Unit("dropper")),
    ("squeeze", Means::Unit("dropper")),
    ("bar spoon", Means::Unit("bar_spoon")),
    ("barspoon", Means::Unit("bar_spoon")),
    ("bsp", Means::Unit("bar_spoon")),
    ("splash", Means::Unit("splash")),
    ("splashes", Means::Unit("splash")),
    ("rinse", Means::Unit("rinse")),
    ("drizzle", Means::Unit("drizzle")),
    ("fl oz", FLUID_OUNCE),
    ("floz", FLUID_OUNCE),
    ("fluid ounce", FLUID_OUNCE),
    ("us fl oz", Means::Unit("us_fl_oz")),
    ("us oz", Means::Unit("us_fl_oz")),
    ("imp fl oz", Means::Unit("imp_fl_oz")),
    ("imperial fl oz", Means::Unit("imp_fl_oz")),
    ("uk fl oz", Means::Unit("imp_fl_oz")),
    ("tsp", TEASPOON),
    ("teaspoon", TEASPOON),
    ("us tsp", Means::Unit("us_tsp")),
    ("metric tsp", Means::Unit("metric_tsp")),
    ("tbsp", TABLESPOON),
    ("tablespoon", TABLESPOON),
    ("us tbsp", Means::Unit("us_tbsp")),
    ("metric tbsp", Means::Unit("metric_tbsp")),
    ("au tbsp", Means::Unit("au_tbsp")),
    ("australian tbsp", Means::Unit("au_tbsp")),
    ("australian tablespoon", Means::Unit("au_tbsp")),
    ("cup", CUP),
    ("us cup", Means::Unit("us_cup")),
    ("metric cup", Means::Unit("metric_cup")),
    ("gill", GILL),
    ("us gill", Means::Unit("us_gill")),
    ("imp gill", Means::Unit("imp_gill")),
    ("imperial gill", Means::Unit("imp_gill")),
    ("pint", PINT),
    ("pt", PINT),
    ("us pint", Means::Unit("us_pint")),
    ("imp pint", Means::Unit("imp_pint")),
    ("imperial pint", Means::Unit("imp_pint")),
    ("g", Means::Unit("g")),
    ("gram", Means::Unit("g")),
    ("gramme", Means::Unit("g")),
    ("kg", Means::Unit("kg")),
    ("kilo", Means::Unit("kg")),
    ("kilogram", Means::Unit("kg")),
    ("oz", Ounce),
    ("ounce", Ounce),
    ("lb", Means::Unit("lb")),
    ("pound", Means::Unit("lb")),
    ("piece", Means::Unit("piece")),
    ("pc", Means::Unit("piece")),
    ("ea", Means::Unit("piece")),
    ("each", Means::Unit("piece")),
    ("bottle", Means::Unit("bottle")),
];

/// Words that may stand between a number and its unit: "half *of the* bottle".
const FILLERS: [&str; 4] = ["of", "a", "an", "the"];

/// The unit that `rest` names; nothing if it is empty.
pub fn unit_named(
    rest: &str,
    kitchen: Kitchen,
    kind: Option<Kind>,
) -> Result<Option<&'static Unit>, Fault> {
    let words = plain(rest);
    if words.is_empty() {
        return Ok(None);
    }
    let means =
        spelled(&words).ok_or_else(|| Fault::new(Code::UnitUnknown).with("typed", rest.trim()))?;
    Ok(unit(code(means, kitchen, kind)))
}

/// What stands before a last word "bottle": `200 ml` of `of a 200 ml bottle`. Nothing if nothing does.
pub fn without_bottle(rest: &str) -> Option<&str> {
    const BOTTLE: &str = "bottle";
    let rest = rest.trim();
    let (mut rest, last) = rest.split_at_checked(rest.len().checked_sub(BOTTLE.len())?)?;
    if !last.eq_ignore_ascii_case(BOTTLE) {
        return None;
    }
    rest = rest.trim();
    while let Some((word, behind)) = rest.split_once(' ') {
        if !FILLERS.iter().any(|filler| filler.eq_ignore_ascii_case(word)) {
            break;
        }
        rest = behind.trim_start();
    }
    (!rest.is_empty()).then_some(rest)
}

/// Whether `text` is a unit and nothing else: "dash" means one dash.
pub fn starts_a_unit(text: &str) -> bool {
    spelled(&plain(text)).is_some()
}

fn plain(text: &str) -> String {
    let mut plain = String::new();
    for word in text.split(|c: char| c.is_whitespace() || c == '.') {
        let word = word.to_ascii_lowercase();
        if word.is_empty() || (plain.is_empty() && FILLERS.contains(&word.as_str())) {
            continue;
        }
        if !plain.is_empty() {
            plain.push(' ');
        }
        plain.push_str(&word);
    }
    plain
}

fn spelled(words: &str) -> Option<Means> {
    let exactly = |spelling: &str| SPELLINGS.iter().find(|(text, _)| *text == spelling);
    let found = exactly(words).or_else(|| exactly(words.strip_suffix('s')?));
    found.map(|(_, means)| *means)
}

fn code(means: Means, kitchen: Kitchen, kind: Option<Kind>) -> &'static str {
    match means {
        Means::Unit(code) => code,
        ByKitchen { us, au, other } => match kitchen {
            Kitchen::Us => us,
            Kitchen::Au => au,
            Kitchen::Uk | Kitchen::Metric => other,
        },
        Ounce if kind == Some(Kind::Mass) => "oz",
        Ounce => code(FLUID_OUNCE, kitchen, kind),
    }
}
