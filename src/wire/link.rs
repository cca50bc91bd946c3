//! A glass in a link: a spec, the bottles it names, and what of the house makes its cost.
//!
//! A link carries these and nothing else. What is nobody's business stays on the device: what is charged,
//! the margin that is wanted, how many are sold, what is in stock, the readings behind a measured dash.
//! Without prices, what was paid and the taxes stay too.

use super::json::Json;
use super::kept::FORMAT;
use super::record::{Named, read_text, records};
use super::records::{Bottle, House, Line, Measuring, Paid, Problem, Spec, Written};
use super::{MOST_ID, MOST_LINES, as_json, check_name, check_note, read_versioned, told, written};
use crate::link::{packed, unpacked, unreadable};
use crate::money::currency;
use crate::problem::{Code, Fault};
use alloc::string::{String, ToString};
use alloc::vec::Vec;

/// How the fragment of a link begins.
const FRAGMENT: &str = "#glass=";

/// Characters of a link. Some who pass on messages cut off a longer one.
const MOST_PASSED_ON: usize = 2_000;

records! {
    asked
    /// A request of `link`: a glass is to be sent.
    #[derive(Default)]
    LinkAsk {
        /// The page that opens the link, without a fragment.
        address: String,
        /// What holds for all of it.
        house: House,
        /// The bottles that the spec names.
        bottles: Vec<Bottle>,
        /// The spec.
        spec: Spec,
        /// Whether what was paid stays here.
        without_prices: bool,
    }

    replied
    /// What `link` replies.
    #[derive(Default)]
    LinkReply {
        /// The link; empty if the glass is larger than a link can carry.
        link: String,
        /// What is wrong with it, or should be known of it.
        problems: Vec<Problem>,
    }

    asked
    /// A request of `linked`: a link was opened.
    #[derive(Default)]
    LinkedAsk {
        /// The fragment of the link, with its mark: `#glass=1.…`
        fragment: String,
    }

    replied
    /// What `linked` replies.
    #[derive(Default)]
    LinkedReply {
        /// What was sent, if the link is whole.
        sent: Option<SentGlass>,
        /// Why it is not.
        problems: Vec<Problem>,
    }

    both
    /// What a link carries.
    #[derive(Default)]
    SentGlass {
        /// The version of the records in it: that of what is kept.
        format: u64,
        /// Whether what was paid is in it.
        has_prices: bool,
        /// What of the sender's house makes the cost.
        house: SentHouse,
        /// The bottles that the spec names.
        bottles: Vec<Bottle>,
        /// The spec.
        spec: Spec,
    }

    both
    /// What of a house makes the cost. Its fields are those of the house.
    #[derive(Default)]
    SentHouse {
        /// The currency of every price.
        currency: String,
        /// What stands before decimals.
        decimal_mark: String,
        /// Whose spoons and ounces a bare word means.
        kitchen: String,
        /// The tax rate of a bottle that names none; nothing without prices.
        tax_percent: String,
        /// Whether the tax is got back.
        reclaims_tax: bool,
        /// Whether the doubt counts the fill of a bottle.
        counts_fill: bool,
        /// The size of a rough measure for all bottles.
        rough: Named<Written>,
    }
}

/// Makes a link of a glass: a [`LinkAsk`] as JSON to a [`LinkReply`] as JSON.
///
/// ```
/// let reply = farthing::wire::link(r#"{
///     "address": "https://bar.example/",
///     "bottles": [{"id": "rye", "name": "Rye", "paid": {"price": "28"}, "holds": {"text": "70 cl"}}],
///     "spec": {"id": "lock", "name": "Lock Keeper", "lines": [{"bottle": "rye", "measure": {"text": "50 ml"}}]}
/// }"#);
/// assert!(reply.starts_with(r##"{"link":"https://bar.example/#glass=1."##));
/// ```
pub fn link(ask: &str) -> String {
    let made = read_text::<LinkAsk>(ask).map_err(|fault| fault.at("")).and_then(|ask| {
        let LinkAsk { address, house, bottles, spec, without_prices } = ask;
        let house = sent_house(house, !without_prices);
        let glass = lean(as_json(&sent(house, bottles, spec, !without_prices)));
        let text = packed(&written(&glass)).map_err(|fault| fault.at("link"))?;
        Ok(format!("{}{FRAGMENT}{text}", address))
    });
    written(&match made {
        Ok(link) => {
            let is_long = link.chars().nth(MOST_PASSED_ON).is_some();
            let long = Fault::new(Code::LinkLong).with("most", MOST_PASSED_ON.to_string());
            let problems = if is_long { told(vec![long.at("link")]) } else { Vec::new() };
            LinkReply { link, problems }
        }
        Err(problem) => LinkReply { problems: told(vec![problem]), ..LinkReply::default() },
    })
}

/// Reads what a link holds: a [`LinkedAsk`] as JSON to a [`LinkedReply`] as JSON.
pub fn linked(ask: &str) -> String {
    let read = read_text::<LinkedAsk>(ask)
        .map_err(|fault| fault.at(""))
        .and_then(|ask| opened(&ask.fragment).map_err(|fault| fault.at("link")));
    written(&match read {
        Ok(glass) => LinkedReply { sent: Some(glass), problems: Vec::new() },
        Err(problem) => LinkedReply { sent: None, problems: told(vec![problem]) },
    })
}

fn opened(fragment: &str) -> Result<SentGlass, Fault> {
    let text = fragment.strip_prefix(FRAGMENT).ok_or_else(|| unreadable("no glass"))?;
    let glass: SentGlass =
        read_versioned(&unpacked(text)?).map_err(|fault| match fault.code() {
            Code::RecordNewer => Fault::new(Code::LinkNewer),
            _ => unreadable(fault.value("why").unwrap_or_default())
                .with("where", fault.value("where").unwrap_or_default()),
        })?;
    let SentGlass { has_prices, house, bottles, spec, .. } = glass;
    currency(&house.currency).map_err(|_| unreadable("a currency that is none"))?;
    sound(&bottles, &spec)?;
    // What a link does not carry does not come in by one either.
    Ok(sent(house, bottles, spec, has_prices))
}

/// Refuses more lines or longer names than a spec may have, and bottles that are not one for each id.
fn sound(bottles: &[Bottle], spec: &Spec) -> Result<(), Fault> {
    if spec.lines.len() > MOST_LINES {
        return Err(Fault::new(Code::TooManyLines).with("most", MOST_LINES.to_string()));
    }
    check_name(&spec.name)?;
    spec.lines.iter().try_for_each(|line| check_note(&line.note))?;
    let own = spec.lines.iter().filter_map(|line| line.own.as_ref());
    bottles.iter().chain(own).try_for_each(|bottle| check_name(&bottle.name))?;
    // No more bottles than lines, so that each may be held against each.
    if bottles.len() > MOST_LINES {
        return Err(unreadable("more bottles than lines"));
    }
    let count = |id: &str| bottles.iter().filter(|bottle| bottle.id == id).count();
    let fits = |id: &str| (1..=MOST_ID).contains(&id.chars().count());
    let alone = |bottle: &Bottle| fits(&bottle.id) && count(&bottle.id) == 1;
    if !bottles.iter().all(alone) || !fits(&spec.id) {
        return Err(unreadable("an id that is none"));
    }
    let named = |line: &Line| line.bottle.is_empty() || count(&line.bottle) == 1;
    match spec.lines.iter().all(named) {
        true => Ok(()),
        false => Err(unreadable("a line of no bottle")),
    }
}

/// What of a glass a link carries.
fn sent(house: SentHouse, bottles: Vec<Bottle>, spec: Spec, has_prices: bool) -> SentGlass {
    let is_named = |id: &str| spec.lines.iter().any(|line| line.bottle == id);
    let bottles: Vec<Bottle> = bottles
        .into_iter()
        .filter(|bottle| is_named(&bottle.id))
        .map(|bottle| sent_bottle(bottle, has_prices))
        .collect();
    let spec = sent_spec(spec, &bottles, has_prices);
    SentGlass { format: FORMAT, has_prices, house, bottles, spec }
}

/// Without what is empty, which a third of the letters would be spent on: a field that is not there is
/// read as empty.
fn lean(json: Json) -> Json {
    let is_empty = |json: &Json| match json {
        Json::Null | Json::Bool(false) => true,
        Json::Text(text) => text.is_empty(),
        Json::List(items) => items.is_empty(),
        Json::Object(fields) => fields.is_empty(),
        Json::Bool(true) | Json::Number(_) => false,
    };
    match json {
        Json::Object(fields) => {
            let fields = fields.into_iter().map(|(key, value)| (key, lean(value)));
            Json::Object(fields.filter(|(_, value)| !is_empty(value)).collect())
        }
        Json::List(items) => Json::List(items.into_iter().map(lean).collect()),
        other => other,
    }
}

// Each of these names every field there is, so that a new one cannot go along unasked.

fn sent_house(house: House, has_prices: bool) -> SentHouse {
    let House {
        currency,
        decimal_mark,
        kitchen,
        tax_percent,
        reclaims_tax,
        counts_fill,
        sale_tax: _,
        sale_tax_percent: _,
        target_percent: _,
        price_points: _,
        drinks_of: _,
        rough,
    } = house;
    let tax_percent = if has_prices { tax_percent } else { String::new() };
    let reclaims_tax = has_prices && reclaims_tax;
    SentHouse { currency, decimal_mark, kitchen, tax_percent, reclaims_tax, counts_fill, rough }
}

fn sent_bottle(bottle: Bottle, has_prices: bool) -> Bottle {
    let Bottle {
        id,
        name,
        paid,
        holds,
        wastage_percent,
        rough,
        measured,
        strength,
        keeps_days,
        allergens,
        warns,
        have: _,
        spirit,
    } = bottle;
    let found =
        |(code, Measuring { found, .. })| (code, Measuring { found, ..Measuring::default() });
    Bottle {
        id,
        name,
        paid: if has_prices { paid } else { Paid::default() },
        holds,
        wastage_percent,
        rough,
        measured: Named(measured.0.into_iter().map(found).collect()),
        strength,
        keeps_days,
        allergens,
        warns,
        spirit,
        ..Bottle::default()
    }
}

/// The spec. A line of a bottle that is not there stands without one.
fn sent_spec(spec: Spec, bottles: &[Bottle], has_prices: bool) -> Spec {
    let Spec {
        id,
        name,
        lines,
        price: _,
        target_percent: _,
        method,
        water,
        without_alcohol,
        a_week: _,
    } = spec;
    let line = |Line { bottle, own, measure, charge, note }: Line| {
        let own = own.filter(|_| bottle.is_empty()).map(|own| sent_bottle(own, has_prices));
        let is_there = bottles.iter().any(|there| there.id == bottle);
        Line { bottle: if is_there { bottle } else { String::new() }, own, measure, charge, note }
    };
    let lines = lines.into_iter().map(line).collect();
    Spec { id, name, lines, method, water, without_alcohol, ..Spec::default() }
}
