//! From the records of a request to a sheet: every blank is read, and told apart from an empty one.
//!
//! A blank that could not be read makes unknown what rests on it. It is never passed over: a price
//! whose discount is unreadable is no price.

use super::record::Named;
use super::records::{self, Ask};
use super::{MOST_LINES, MOST_NAME, MOST_NOTE};
use crate::bottle::{Bottle, Holds, House, Paid, Tax};
use crate::dash::{Size, Sizes, Word};
use crate::measure::{self, Kind, Measure, Unit, unit};
use crate::money::currency;
use crate::number::Fraction;
use crate::problem::{Code, Fault, Problems};
use crate::reading::{self, Kitchen, Marks, Range};
use crate::sheet::{self, Charge, Line, Placed};
use crate::spread::Spread;
use crate::strength::Method;
use alloc::string::ToString;
use alloc::vec::Vec;

/// How this person writes, from the house.
#[derive(Clone, Copy)]
pub struct Hand {
    /// What stands before decimals.
    pub marks: Marks,
    /// Whose measures a bare word means.
    pub kitchen: Kitchen,
    /// Whether the currency has no minor unit.
    pub no_decimals: bool,
}

impl Hand {
    /// What this person writes before decimals.
    pub fn mark(&self) -> &'static str {
        if self.marks == Marks::COMMA { "," } else { "." }
    }
}

/// The sheet that a request asks for.
pub fn sheet_ask(ask: &Ask, problems: &mut Problems) -> sheet::Ask {
    let hand = hand(&ask.house, problems);
    let house = house(&ask.house, hand, problems);
    let mut sheet = sheet::Ask { house, ..sheet::Ask::default() };
    for (index, record) in ask.bottles.iter().enumerate() {
        let place = format!("bottles[{index}]");
        let what = bottle(record, &place, hand, problems);
        sheet.bottles.push(Placed { place, what });
    }
    for (index, record) in ask.pours.iter().enumerate() {
        let place = format!("pours[{index}]");
        let line = records::Line {
            bottle: record.bottle.clone(),
            measure: record.measure.clone(),
            ..records::Line::default()
        };
        let line = read_line(&line, &place, ask, &mut sheet.bottles, hand, problems);
        sheet.pours.push(line);
    }
    for (index, record) in ask.specs.iter().enumerate() {
        let place = format!("specs[{index}]");
        let lines = spec(record, &place, ask, &mut sheet.bottles, hand, problems);
        sheet.specs.push(lines);
    }
    sheet
}

/// How the person of a house writes.
pub fn hand(house: &records::House, problems: &mut Problems) -> Hand {
    Hand {
        marks: problems
            .keep("house.decimal_mark", marks(&house.decimal_mark))
            .unwrap_or(Marks::POINT),
        kitchen: problems
            .keep("house.kitchen", Kitchen::from_code(&house.kitchen))
            .unwrap_or(Kitchen::Metric),
        no_decimals: currency(&house.currency).is_ok_and(|currency| currency.digits == 0),
    }
}

/// What stands before decimals.
pub fn marks(mark: &str) -> Result<Marks, Fault> {
    match mark {
        "." => Ok(Marks::POINT),
        "," => Ok(Marks::COMMA),
        other => Err(Fault::new(Code::ChoiceUnknown).with("typed", other)),
    }
}

/// What holds for every bottle.
pub fn house(record: &records::House, hand: Hand, problems: &mut Problems) -> House {
    let rate = reading::tax_percent(&record.tax_percent, hand.marks);
    House {
        tax_percent: problems.keep("house.tax_percent", rate).flatten(),
        reclaims_tax: record.reclaims_tax,
        counts_fill: record.counts_fill,
        sizes: sizes(&record.rough, "house", hand, Word::House, problems),
    }
}

fn bottle(record: &records::Bottle, place: &str, hand: Hand, problems: &mut Problems) -> Bottle {
    problems.keep(&format!("{place}.name"), name(&record.name));
    let at = |blank: &str| format!("{place}.{blank}");
    // What was measured stands first, and so wins over what was typed.
    let mut all = found_sizes(&record.measured, place, problems);
    all.extend(sizes(&record.rough, place, hand, Word::Bottle, problems).0);
    Bottle {
        paid: paid_of(&record.paid, &format!("{place}.paid"), hand, problems),
        holds: holds_of(&record.holds, &record.wastage_percent, place, hand, problems),
        sizes: Sizes(all),
        strength: problems
            .keep(&at("strength"), reading::strength_percent(&record.strength, hand.marks))
            .flatten(),
        keeps_days: problems
            .keep(&at("keeps_days"), reading::positive(&record.keeps_days, hand.marks)),
        have: problems.keep(&at("have"), measured(&record.have, hand, None)),
    }
}

/// The sizes that were found by measuring. One that is not finished is none yet.
fn found_sizes(
    records: &Named<records::Measuring>,
    place: &str,
    problems: &mut Problems,
) -> Vec<(&'static str, Option<Size>)> {
    let mut sizes = Vec::new();
    for (code, record) in &records.0 {
        let place = format!("{place}.measured.{code}");
        let (Some(unit), Some(found)) = (problems.keep(&place, rough_unit(code)), &record.found)
        else {
            continue;
        };
        sizes.push((unit.code, problems.keep(&place, found_size(found)).flatten()));
    }
    sizes
}

fn found_size(found: &records::Found) -> Result<Option<Size>, Fault> {
    let number = |text: &str| reading::number(text, Marks::POINT);
    let (ml, standard) = (number(&found.size)?, number(&found.standard)?);
    let freedom = number(&found.freedom)?.and_then(|freedom| freedom.parts().0.try_into().ok());
    Ok(ml.filter(|ml| !ml.is_nought()).zip(standard).map(|(ml, standard)| Size {
        ml,
        spread: Some(Spread::Measured(standard, freedom.unwrap_or(u32::MAX))),
        word: Word::Measured,
        helps: found.more_helps.then_some("repeat"),
    }))
}

/// The rough measure of a code.
fn rough_unit(code: &str) -> Result<&'static Unit, Fault> {
    unit(code)
        .filter(|unit| unit.size == measure::Size::Rough)
        .ok_or_else(|| Fault::new(Code::UnitUnknown).with("typed", code))
}

/// A name of bearable length.
pub fn name(name: &str) -> Result<(), Fault> {
    bearable(name, MOST_NAME)
}

/// A note of bearable length.
pub fn note(note: &str) -> Result<(), Fault> {
    bearable(note, MOST_NOTE)
}

fn bearable(text: &str, most: usize) -> Result<(), Fault> {
    match text.chars().nth(most) {
        Some(_) => Err(Fault::new(Code::NameTooLong).with("most", most.to_string())),
        None => Ok(()),
    }
}

/// What was paid.
pub fn paid_of(
    record: &records::Paid,
    place: &str,
    hand: Hand,
    problems: &mut Problems,
) -> Option<Paid> {
    let Hand { marks, no_decimals, .. } = hand;
    let at = |blank: &str| format!("{place}.{blank}");
    let tax = match record.tax.as_str() {
        "in" => Ok(Tax::In),
        "out" => Ok(Tax::Out),
        "none" => Ok(Tax::Free),
        other => Err(Fault::new(Code::ChoiceUnknown).with("typed", other)),
    };
    // Every blank is read before any is missed, so that all their problems are told together.
    let price = problems.keep(&at("price"), reading::price(&record.price, marks, no_decimals));
    let bottles = problems.keep(&at("bottles"), reading::whole_number(&record.bottles, marks));
    let discount =
        problems.keep(&at("discount"), reading::discount(&record.discount, marks, no_decimals));
    let delivery =
        problems.keep(&at("delivery"), reading::price(&record.delivery, marks, no_decimals));
    let tax = problems.keep(&at("tax"), tax);
    let tax_percent =
        problems.keep(&at("tax_percent"), reading::tax_percent(&record.tax_percent, marks));
    Some(Paid {
        price: price??,
        bottles: bottles?.unwrap_or(Fraction::ONE),
        discount: discount?,
        delivery: delivery?,
        tax: tax?,
        tax_percent: tax_percent?,
    })
}

/// What a bottle holds, and what never leaves it.
pub fn holds_of(
    holds: &records::Written,
    wastage_percent: &str,
    place: &str,
    hand: Hand,
    problems: &mut Problems,
) -> Option<Holds> {
    let holds = measured(holds, hand, None).and_then(reading::not_a_range);
    let holds = holds.and_then(|holds| match holds {
        Some(holds) if holds.unit.exact_size().is_none() => {
            Err(Fault::new(Code::HoldsUnit).with("typed", holds.unit.code))
        }
        holds => Ok(holds),
    });
    let holds = problems.keep(&format!("{place}.holds"), holds);
    let wastage = reading::part_percent(wastage_percent, hand.marks);
    let wastage = problems.keep(&format!("{place}.wastage_percent"), wastage);
    Some(Holds { measure: holds??, wastage_percent: wastage?.unwrap_or(Fraction::NOUGHT) })
}

/// The sizes of rough measures. One that could not be read is unknown, not the assumed one.
fn sizes(
    rough: &Named<records::Written>,
    place: &str,
    hand: Hand,
    word: Word,
    problems: &mut Problems,
) -> Sizes {
    let mut sizes = Sizes::default();
    for (code, size) in &rough.0 {
        let place = format!("{place}.rough.{code}");
        let Some(unit) = problems.keep(&place, rough_unit(code)) else {
            continue;
        };
        match problems.keep(&place, own_size(size, word, hand)) {
            Some(None) => {}
            size => {
                sizes.0.push((unit.code, size.flatten()));
            }
        }
    }
    sizes
}

fn own_size(size: &records::Written, word: Word, hand: Hand) -> Result<Option<Size>, Fault> {
    let Some(measure) = measured(size, hand, Some(Kind::Volume))? else {
        return Ok(None);
    };
    let Range { best, spread } = in_ml(measure)?;
    Ok(Some(Size { ml: best, spread, word, helps: Some("measure") }))
}

/// A volume in millilitres that is one number.
pub fn measured_ml(volume: &records::Written, hand: Hand) -> Result<Option<Fraction>, Fault> {
    let measure = reading::not_a_range(measured(volume, hand, Some(Kind::Volume))?)?;
    measure.map(|measure| in_ml(measure).map(|range| range.best)).transpose()
}

/// A volume in millilitres. A rough measure, a mass or a part of a bottle is none.
fn in_ml(measure: Measure) -> Result<Range, Fault> {
    let Measure { amount, unit, spread } = measure;
    match unit.exact_size().filter(|_| unit.kind == Kind::Volume) {
        Some(size) => Range { best: amount, spread }.times(size),
        None => Err(Fault::new(Code::RoughMustBeVolume).with("typed", unit.code)),
    }
}

fn spec(
    record: &records::Spec,
    place: &str,
    ask: &Ask,
    bottles: &mut Vec<Placed<Bottle>>,
    hand: Hand,
    problems: &mut Problems,
) -> Vec<Placed<Line>> {
    problems.keep(&format!("{place}.name"), name(&record.name));
    if record.lines.len() > MOST_LINES {
        let fault = Fault::new(Code::TooManyLines).with("most", MOST_LINES.to_string());
        problems.0.push(fault.at(format!("{place}.lines")));
        return Vec::new();
    }
    let mut lines = Vec::new();
    for (index, line) in record.lines.iter().enumerate() {
        let place = format!("{place}.lines[{index}]");
        lines.push(read_line(line, &place, ask, bottles, hand, problems));
    }
    lines
}

/// A line. Something priced on the spot joins the bottles, behind those of the request.
fn read_line(
    record: &records::Line,
    place: &str,
    ask: &Ask,
    bottles: &mut Vec<Placed<Bottle>>,
    hand: Hand,
    problems: &mut Problems,
) -> Placed<Line> {
    let bottle = match &record.own {
        Some(own) if record.bottle.is_empty() => {
            let place = format!("{place}.own");
            let what = bottle(own, &place, hand, problems);
            bottles.push(Placed { place, what });
            bottles.len().checked_sub(1)
        }
        _ if record.bottle.is_empty() => None,
        _ => {
            let found = ask.bottles.iter().position(|bottle| bottle.id == record.bottle);
            let unknown = || Fault::new(Code::BottleUnknown).with("id", &record.bottle);
            problems.keep(&format!("{place}.bottle"), found.ok_or_else(unknown))
        }
    };
    problems.keep(&format!("{place}.note"), note(&record.note));
    let kind = bottle.and_then(|index| bottles.get(index)).and_then(|bottle| bottle.what.kind());
    let measure = measured(&record.measure, hand, kind);
    Placed {
        place: place.into(),
        what: Line {
            bottle,
            measure: problems.keep(&format!("{place}.measure"), measure).flatten(),
            charge: match record.charge {
                records::Charge::Poured => Charge::Poured,
                records::Charge::Whole => Charge::Whole,
            },
        },
    }
}

/// A measure, or a range of one.
pub fn measured(
    written: &records::Written,
    hand: Hand,
    kind: Option<Kind>,
) -> Result<Option<Measure>, Fault> {
    reading::measure(&written.text, &written.unit, hand.marks, hand.kitchen, kind)
}

/// How a glass is mixed.
pub fn method(code: &str) -> Result<Method, Fault> {
    match code {
        "" | "none" => Ok(Method::None),
        "built" => Ok(Method::Built),
        "stirred" => Ok(Method::Stirred),
        "shaken" => Ok(Method::Shaken),
        other => Err(Fault::new(Code::ChoiceUnknown).with("typed", other)),
    }
}
