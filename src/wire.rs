//! The boundary: JSON text in, JSON text out.
//!
//! One codec serves the page, the tests and what the device keeps, so that the path tested natively is
//! the path that runs.

mod asking;
mod embed;
mod entities;
mod facts;
pub mod json;
mod keeping;
pub mod kept;
mod link;
mod measuring;
mod ranging;
mod recipe;
mod recipe_data;
mod recipe_out;
pub mod record;
pub mod records;
mod replying;
mod tasting;

pub(crate) use asking::{name as check_name, note as check_note};
pub use embed::{
    EmbedAsk, EmbedBottle, EmbedLine, EmbedReply, EmbedStrength, MOST_PRICES, OwnPrice, embed,
};
pub use facts::{facts, shop};
pub use keeping::keeping;
pub use link::{LinkAsk, LinkReply, LinkedAsk, LinkedReply, SentGlass, SentHouse, link, linked};
pub use measuring::measure;
pub use recipe::recipe;
pub use recipe_out::recipe_out;
pub use tasting::offers;

use crate::dash::{self, Sizes};
use crate::measure::UNITS;
use crate::measuring::MOST_READINGS;
use crate::money::{UNKNOWN, currencies, currency};
use crate::number::{Fraction, Kept};
use crate::problem::{Code, Fault, Problem, Problems};
use crate::reading::MOST_TYPED;
use crate::sheet;
use alloc::string::{String, ToString};
use alloc::vec::Vec;
use json::Json;
use kept::FORMAT;
use ranging::Showing;
use record::{Named, Read, Write, read_json, read_text, unreadable};
use records::{Ask, CurrencyRow, MovesAsk, MovesReply, Reply, Tables, UnitRow};

/// Characters of a name: two lines on a phone, and room for every name a label bears.
pub const MOST_NAME: usize = 80;

/// Characters of an id: those that the page makes have eighteen.
pub(crate) const MOST_ID: usize = 64;

/// Characters of a note on a line: as many as of a line of a recipe, from which it may come.
pub const MOST_NOTE: usize = 300;

/// Lines of a spec: more than any drink has, and a glass of so many still answers within a frame.
pub const MOST_LINES: usize = 40;

/// Bottles on a shelf: four times a large bar's; with specs, histories and all they fit in what a
/// browser keeps (five million characters).
pub const MOST_BOTTLES: usize = 2_000;

/// Specs on a shelf: a thick menu many times over.
pub const MOST_SPECS: usize = 1_000;

/// Answers quick sums and glasses: an [`Ask`] as JSON to a [`Reply`] as JSON.
///
/// What cannot be read is a problem in the reply; the call itself never fails.
pub fn answer(ask: &str) -> String {
    written(&match read_text::<Ask>(ask) {
        Ok(ask) => replied(&ask),
        Err(fault) => Reply { problems: told(vec![fault.at("")]), ..Reply::default() },
    })
}

fn replied(ask: &Ask) -> Reply {
    let mut problems = Problems::default();
    let currency = problems.keep("house.currency", currency(&ask.house.currency));
    let sums = asking::sheet_ask(ask, &mut problems);
    let reply = sheet::answer(&sums, &mut problems);
    let showing = Showing::in_full(currency.unwrap_or(UNKNOWN), &ask.bottles);
    let mut reply = replying::reply(&reply, &sums, showing);
    reply.problems = told(problems.0);
    reply
}

/// Answers which glasses a new price moves: a [`MovesAsk`] as JSON to a [`MovesReply`] as JSON.
pub fn moves(ask: &str) -> String {
    written(&match read_text::<MovesAsk>(ask) {
        Ok(ask) => moved(ask),
        Err(fault) => MovesReply { problems: told(vec![fault.at("")]), ..MovesReply::default() },
    })
}

fn moved(ask: MovesAsk) -> MovesReply {
    let mut problems = Problems::default();
    let currency = problems.keep("house.currency", currency(&ask.house.currency));
    let showing = Showing::in_full(currency.unwrap_or(UNKNOWN), &[]);
    let MovesAsk { house, before, after, bottles, specs } = ask;
    let with = |bottle: records::Bottle| {
        let bottles = core::iter::once(bottle).chain(bottles.iter().cloned()).collect();
        Ask { house: house.clone(), bottles, pours: Vec::new(), specs: specs.clone() }
    };
    // What was already wrong before is no news: only the new price's problems are told.
    let before = sheet::answer(
        &asking::sheet_ask(&with(before), &mut Problems::default()),
        &mut Problems::default(),
    );
    let sums = asking::sheet_ask(&with(after), &mut problems);
    let after = sheet::answer(&sums, &mut problems);
    let moved = specs.iter().zip(before.specs.iter().zip(&after.specs));
    MovesReply {
        specs: moved
            .filter_map(|(spec, (before, after))| replying::moved(&spec.id, before, after, showing))
            .collect(),
        problems: told(problems.0),
    }
}

/// What the page offers to choose from, as [`Tables`] in JSON.
pub fn tables() -> String {
    let units = UNITS.iter().map(|unit| {
        let assumed = dash::size(unit, &Sizes::default(), &Sizes::default());
        let size = unit.exact_size().or(assumed.map(|size| size.ml));
        let ends = assumed.and_then(|size| size.spread?.ends());
        let told = |end: Option<Fraction>| {
            end.and_then(|end| end.kept().ok()).map(Kept::plain_text).unwrap_or_default()
        };
        UnitRow {
            code: unit.code.into(),
            kind: unit.kind.text().into(),
            rough: unit.exact_size().is_none() && size.is_some(),
            amount: size.and_then(|size| size.kept().ok()).unwrap_or_default().plain_text(),
            least: told(ends.map(|(least, _)| least)),
            most: told(ends.map(|(_, most)| most)),
            base: unit.kind.base().into(),
        }
    });
    let currencies = currencies()
        .map(|currency| CurrencyRow { code: currency.code.into(), digits: currency.digits.into() });
    let limits = [
        ("name", MOST_NAME),
        ("spec_lines", MOST_LINES),
        ("bottles", MOST_BOTTLES),
        ("specs", MOST_SPECS),
        ("typed", MOST_TYPED),
        ("readings", MOST_READINGS),
    ];
    written(&Tables {
        units: units.collect(),
        currencies: currencies.collect(),
        limits: Named(limits.map(|(name, most)| (name.to_string(), counted(most))).into()),
    })
}

/// A kept record or a file, from text. One written by a newer version is told as such.
pub(crate) fn read_versioned<T: Read + Default>(text: &str) -> Result<T, Fault> {
    let json = Json::parse(text)?;
    let format = json.field("format").cloned().map(read_json::<u64>).and_then(Result::ok);
    match format {
        Some(format) if format > FORMAT => Err(Fault::new(Code::RecordNewer)),
        Some(1..) => read_json(json),
        _ => Err(unreadable("no format")),
    }
}

/// A record as text.
pub(crate) fn written(record: &dyn Write) -> String {
    let mut out = String::new();
    record.write(&mut out);
    out
}

/// A record as JSON, every field of it there.
pub(crate) fn as_json(record: &dyn Write) -> Json {
    Json::parse(&written(record)).unwrap_or_default()
}

/// Problems as they cross the boundary.
pub(crate) fn told(problems: Vec<Problem>) -> Vec<records::Problem> {
    problems
        .into_iter()
        .map(|problem| records::Problem {
            code: problem.fault.code().text().into(),
            place: problem.place,
            values: Named(named(problem.fault.values())),
        })
        .collect()
}

fn named(values: &[(&'static str, String)]) -> Vec<(String, String)> {
    values.iter().map(|(name, value)| (name.to_string(), value.clone())).collect()
}

/// A count as it crosses the boundary.
pub(crate) fn counted(count: usize) -> u64 {
    u64::try_from(count).unwrap_or(u64::MAX)
}
