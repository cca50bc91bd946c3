//! What should be said of a glass: measures law, minimum prices, allergens, strength of what is sold as
//! without alcohol. Nothing here stops a sum, and all of it defers to local rules.
//!
//! | code | rule | source |
//! |---|---|---|
//! | gb_measure | gin, rum, vodka and whisky go in 25 or 35 ml and multiples, unless in a mixture of three or more liquids | SI 1988/2039, GOV.UK specified quantities |
//! | gb_metric | a stated measure must be metric | SI 1994/2866, art. 3 |
//! | minimum_unit_price | 65 p a unit, in Scotland since 30 September 2024 and in Wales since 1 October 2026, rounded up | gov.scot; gov.wales |
//! | not_alcohol_free | above 0.05 % vol a drink is not alcohol-free | UK guidance of 2018 |
//! | not_low | above 0.5 % vol it is sold as alcohol | Licensing Act 2003, s. 191, from memory |
//! | raw_egg, quinine | as the bottle says | FDA Food Code 3-603.11, from memory; Regulation (EU) 1169/2011 |

use crate::measure::{Kind, Unit};
use crate::number::Fraction;
use crate::problem::Fault;
use alloc::string::String;
use alloc::vec::Vec;

/// The allergens of EU and UK law (Regulation (EU) 1169/2011, annex II).
pub const ALLERGENS: [&str; 14] = [
    "gluten",
    "crustaceans",
    "eggs",
    "fish",
    "peanuts",
    "soya",
    "milk",
    "nuts",
    "celery",
    "mustard",
    "sesame",
    "sulphites",
    "lupin",
    "molluscs",
];

/// What else a bottle may say.
pub const WARNS: [&str; 2] = ["raw_egg", "quinine"];

/// The spirits that British law measures.
pub const SPIRITS: [&str; 4] = ["gin", "rum", "vodka", "whisky"];

/// The measures they go in, and their multiples, in ml. One of the two in one house.
const SPIRIT_MEASURES: [i128; 2] = [25, 35];

/// Liquids from which on a mixture is free.
const FREE_FROM: usize = 3;

/// The minimum price of a unit in Scotland and Wales, in hundredths of a pound.
const MINIMUM_UNIT_PRICE: i128 = 65;

/// Above so many percent by volume a drink is not alcohol-free.
const ALCOHOL_FREE: f64 = 0.05;

/// Above so many it is sold as alcohol.
const LOW_ALCOHOL: f64 = 0.5;

/// A caution: a code and what its sentence needs.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Caution {
    /// The code.
    pub code: &'static str,
    /// What the sentence needs, by name.
    pub values: Vec<(&'static str, String)>,
}

/// A line as the law sees it.
#[derive(Clone, Copy, Debug)]
pub struct Poured<'a> {
    /// Which of the spirits that are measured; empty for anything else.
    pub spirit: &'a str,
    /// How much, in ml; nothing if it is no liquid or not known.
    pub ml: Option<Fraction>,
    /// The unit it was written in.
    pub unit: Option<&'static Unit>,
}

/// What British measures law says of a glass.
pub fn gb_measures(lines: &[Poured]) -> Vec<Caution> {
    let mut cautions = Vec::new();
    let liquids = lines.iter().filter(|line| line.ml.is_some()).count();
    for line in lines.iter().filter(|line| !line.spirit.is_empty()) {
        let Some(ml) = line.ml else { continue };
        if liquids < FREE_FROM && !is_lawful(ml) {
            let text = ml.kept().map(|ml| ml.to(2).plain_text()).unwrap_or_default();
            let values = vec![("spirit", line.spirit.into()), ("ml", text)];
            cautions.push(Caution { code: "gb_measure", values });
        }
    }
    let stated = |line: &&Poured| {
        line.unit.is_some_and(|unit| {
            unit.kind == Kind::Volume && (unit.code.contains("oz") || unit.code.contains("gill"))
        })
    };
    if lines.iter().any(|line| stated(&line)) {
        cautions.push(Caution { code: "gb_metric", values: Vec::new() });
    }
    cautions
}

fn is_lawful(ml: Fraction) -> bool {
    SPIRIT_MEASURES.iter().any(|measure| {
        let measure = Fraction::new(*measure, 1);
        measure.and_then(|measure| ml.over(measure).ok()).is_some_and(|times| times.is_whole())
    })
}

/// The lowest lawful price of so many ml of alcohol in Scotland, rounded up to a penny.
///
/// ```
/// // 25 ml at 40 % is one unit.
/// let price = farthing::caution::minimum_price(10.0).unwrap();
/// assert_eq!(price.kept().unwrap().plain_text(), "0.65");
/// ```
pub fn minimum_price(alcohol_ml: f64) -> Result<Fraction, Fault> {
    // A thousandth of a ml is finer than any label; below it a float may be off.
    let ml = crate::number::Kept::nearest(alcohol_ml).unwrap_or_default().to(3).fraction();
    let tenth = Fraction::new(MINIMUM_UNIT_PRICE, 10).unwrap_or(Fraction::ONE);
    let pence = ml.times(tenth)?.rounded_up();
    pence.over(Fraction::HUNDRED)
}

/// What is said of a drink that is sold as without alcohol.
pub fn without_alcohol(percent: f64) -> Option<&'static str> {
    if percent > LOW_ALCOHOL {
        Some("not_low")
    } else if percent > ALCOHOL_FREE {
        Some("not_alcohol_free")
    } else {
        None
    }
}
