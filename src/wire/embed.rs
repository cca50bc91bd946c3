//! A glass on somebody's page: its lines as they stand there, the prices that were written beside them,
//! and those that a reader put in their place.
//!
//! A page knows no shelf, so a bottle is known by its name, and its price is a line of text:
//! `rye whisky: 28 for 70 cl at 40 %`. A price serves every line in whose name all its words stand.

use super::asking::{Hand, holds_of, marks, measured, method, name};
use super::ranging::Showing;
use super::recipe::{blank, domain_hand};
use super::record::{read_text, records};
use super::records::{Problem, SpecReply, Written};
use super::replying::spec_reply;
use super::{MOST_LINES, counted, told, written};
use crate::bottle::{Bottle, House, Paid, Tax};
use crate::measure::Measure;
use crate::menu::{Glass, Ice, Terms};
use crate::money::{Currency, UNKNOWN, currency};
use crate::number::{Fraction, Kept};
use crate::problem::{Code, Fault, Problems};
use crate::reading::{self, Kitchen};
use crate::recipe::likeness::{Words, folded, whole_within};
use crate::recipe::{self, Line, Quantity};
use crate::sheet::{self, Charge, Placed};
use alloc::string::{String, ToString};
use alloc::vec::Vec;

/// Prices of one glass: a line has one bottle.
pub const MOST_PRICES: usize = MOST_LINES;

/// Prices of a reader, for all glasses of a site: a full shelf at home.
pub const MOST_OWN: usize = 200;

records! {
    asked
    /// A request of `embed`.
    #[derive(Default)]
    EmbedAsk {
        /// The currency of every price, as its ISO 4217 code.
        currency: String,
        /// What the writer puts before decimals: `"."` or `","`.
        decimal_mark: String,
        /// What the reader puts there.
        own_decimal_mark: String,
        /// Whose spoons and ounces a bare word means.
        kitchen: String,
        /// What goes in, line by line, as it stands on the page.
        lines: Vec<String>,
        /// How large one part is, such as `"30 ml"`; empty if no line counts in parts.
        part: String,
        /// What ice does to it: `"none"`, `"built"`, `"stirred"` or `"shaken"`.
        method: String,
        /// The writer's prices, one to a line or with `;` between them.
        prices: String,
        /// The reader's prices.
        own: Vec<OwnPrice>,
    }

    both
    /// What a reader pays for a bottle.
    #[derive(Default)]
    OwnPrice {
        /// Which bottle.
        name: String,
        /// What is paid for one; empty if it is as the writer says.
        price: String,
        /// What one holds; empty if it is as the writer says.
        holds: String,
    }

    replied
    /// What `embed` replies.
    #[derive(Default)]
    EmbedReply {
        /// The lines, in the order asked.
        lines: Vec<EmbedLine>,
        /// The bottles of the lines, and those of the writer's prices that no line needs.
        bottles: Vec<EmbedBottle>,
        /// What the glass costs. Its lines are those of `lines` that pour something.
        glass: SpecReply,
        /// How strong it is; nothing while no strength is told.
        strength: Option<EmbedStrength>,
        /// What could not be read or reckoned, and where.
        problems: Vec<Problem>,
    }

    replied
    /// A line of the page.
    #[derive(Default)]
    EmbedLine {
        /// As it stands there.
        text: String,
        /// Its place among the lines of the glass; nothing if it pours nothing that could be priced.
        line: Option<u64>,
        /// Which of the bottles it takes.
        bottle: Option<u64>,
    }

    replied
    /// A bottle, and whose price it has.
    #[derive(Default)]
    EmbedBottle {
        /// What it is called.
        name: String,
        /// Its price, as it was written.
        price: String,
        /// What it holds, as it was written.
        holds: String,
        /// `"writer"`, `"reader"`, or empty while it has none.
        whose: String,
    }

    replied
    /// How strong the glass is.
    #[derive(Default)]
    EmbedStrength {
        /// Percent by volume, the water of the ice included.
        percent: String,
        /// The same with every label as low as it may be.
        low: String,
        /// With every label as high as it may be.
        high: String,
        /// Grams of alcohol.
        alcohol_g: String,
        /// How many liquids have no strength told, and are taken to have none.
        missing: u64,
    }
}

/// What a glass on a page costs: an [`EmbedAsk`] as JSON to an [`EmbedReply`] as JSON.
///
/// ```
/// let reply = farthing::wire::embed(r#"{
///     "currency": "GBP", "decimal_mark": ".", "own_decimal_mark": ".", "kitchen": "uk",
///     "lines": ["50 ml rye whisky", "Garnish: lemon twist"],
///     "prices": "rye whisky: 28 for 70 cl at 40%"
/// }"#);
/// assert!(reply.contains(r#""shown":"2.00""#));
/// assert!(reply.contains(r#""percent":"40""#));
/// ```
pub fn embed(ask: &str) -> String {
    written(&match read_text::<EmbedAsk>(ask) {
        Ok(ask) => replied(ask),
        Err(fault) => EmbedReply { problems: told(vec![fault.at("")]), ..Default::default() },
    })
}

fn replied(ask: EmbedAsk) -> EmbedReply {
    let mut problems = Problems::default();
    let currency = problems.keep("currency", currency(&ask.currency));
    let hands = hands(&ask, currency, &mut problems);
    let part = measured(&millilitres(&ask.part), hands.writer, None).and_then(reading::not_a_range);
    let part = problems.keep("part", part).flatten();

    let mut bottles = problems.keep("prices", writers(&ask.prices)).unwrap_or_default();
    let (lines, poured) = read_lines(ask.lines, part, hands.writer, &mut bottles, &mut problems);
    problems.keep("own", take_up(ask.own, &mut bottles));
    let sums = sums(&bottles, poured, hands, &mut problems);
    let answer = sheet::answer_poured(&sums, &mut problems);
    let mut reply = EmbedReply { lines, ..EmbedReply::default() };
    let method = problems.keep("method", method(&ask.method));
    if let (Some(answer), Some(lines)) = (answer.specs.first(), sums.specs.first()) {
        reply.glass = spec_reply(answer, lines, Showing::with_ends(currency.unwrap_or(UNKNOWN)));
        let ice = method.map(|method| Ice { method, water_ml: None });
        let terms = Terms { selling: None, target: None, price: None, ice, a_week: None };
        reply.strength = strength(Glass { ask: &sums, lines, answer, terms });
    }
    reply.bottles = bottles.into_iter().map(|named| named.record).collect();
    reply.problems = told(problems.0);
    reply
}

/// How the two write.
#[derive(Clone, Copy)]
struct Hands {
    writer: Hand,
    reader: Hand,
}

fn hands(ask: &EmbedAsk, currency: Option<Currency>, problems: &mut Problems) -> Hands {
    let mut mark = |place: &str, mark: &str| {
        problems.keep(place, marks(mark)).unwrap_or(reading::Marks::POINT)
    };
    let (writers, readers) =
        (mark("decimal_mark", &ask.decimal_mark), mark("own_decimal_mark", &ask.own_decimal_mark));
    let kitchen = problems.keep("kitchen", Kitchen::from_code(&ask.kitchen));
    let kitchen = kitchen.unwrap_or(Kitchen::Metric);
    let no_decimals = currency.is_some_and(|currency| currency.digits == 0);
    Hands {
        writer: Hand { marks: writers, kitchen, no_decimals },
        reader: Hand { marks: readers, kitchen, no_decimals },
    }
}

/// A line that takes a bottle: its place on the page, the place of the bottle, how much of it.
type Poured = (usize, usize, Option<Quantity>);

fn read_lines(
    lines: Vec<String>,
    part: Option<Measure>,
    hand: Hand,
    bottles: &mut Vec<Named>,
    problems: &mut Problems,
) -> (Vec<EmbedLine>, Vec<Poured>) {
    if lines.len() > MOST_LINES {
        let fault = Fault::new(Code::TooManyLines).with("most", MOST_LINES.to_string());
        problems.0.push(fault.at("lines"));
    }
    let (mut read, mut poured, written) = (Vec::new(), Vec::new(), bottles.len());
    for (index, text) in lines.into_iter().take(MOST_LINES).enumerate() {
        let mut line = recipe::line(&text, domain_hand(hand), part);
        let bottle = bottle_of(&line, written, bottles);
        if let Some(fault) = line.fault.filter(|_| !line.garnish) {
            line.measure = None;
            problems.0.push(fault.at(format!("lines[{index}]")));
        }
        let place = bottle.map(|_| counted(poured.len()));
        poured.extend(bottle.map(|bottle| (index, bottle, line.measure)));
        read.push(EmbedLine { text, line: place, bottle: bottle.map(counted) });
    }
    (read, poured)
}

/// The sheet of one glass.
fn sums(
    bottles: &[Named],
    poured: Vec<Poured>,
    hands: Hands,
    problems: &mut Problems,
) -> sheet::Ask {
    let house = House { tax_percent: Some(Fraction::NOUGHT), ..House::default() };
    let mut sums = sheet::Ask { house, ..sheet::Ask::default() };
    for (index, named) in bottles.iter().enumerate() {
        let place = format!("bottles[{index}]");
        let what = read(named, &place, hands, problems);
        sums.bottles.push(Placed { place, what });
    }
    let mut glass = Vec::new();
    for (index, bottle, measure) in poured {
        let kind = sums.bottles.get(bottle).and_then(|bottle| bottle.what.kind());
        let measure = measured(&measure.map(blank).unwrap_or_default(), hands.writer, kind);
        let place = format!("lines[{index}]");
        let measure = problems.keep(&place, measure).flatten();
        let what = sheet::Line { bottle: Some(bottle), measure, charge: Charge::Poured };
        glass.push(Placed { place, what });
    }
    sums.specs.push(glass);
    sums
}

/// A bottle as somebody wrote it.
struct Named {
    words: Words,
    strength: String,
    /// Whether the price, and what it holds, are the reader's.
    owns: [bool; 2],
    record: EmbedBottle,
}

impl Named {
    fn new(name: &str) -> Self {
        let record = EmbedBottle { name: name.into(), ..EmbedBottle::default() };
        Named { words: Words::of(name), strength: String::new(), owns: [false; 2], record }
    }
}

fn millilitres(text: &str) -> Written {
    Written { text: text.into(), unit: "ml".into() }
}

/// The writer's prices.
fn writers(prices: &str) -> Result<Vec<Named>, Fault> {
    let entries = prices.split([';', '\n', '\r']).map(str::trim).filter(|entry| !entry.is_empty());
    let mut bottles = Vec::new();
    for entry in entries {
        if bottles.len() == MOST_PRICES {
            return Err(Fault::new(Code::TooManyBottles).with("most", MOST_PRICES.to_string()));
        }
        bottles.push(
            writer(entry).ok_or_else(|| Fault::new(Code::PriceUnreadable).with("typed", entry))?,
        );
    }
    Ok(bottles)
}

/// `rye whisky: 28 for 70 cl at 40 %`, the strength being left out where there is none; `sloe gin: for`
/// says that no other price is meant for it.
fn writer(entry: &str) -> Option<Named> {
    let (name, rest) = entry.rsplit_once(':')?;
    let mut words = rest.split_whitespace();
    let mut up_to = |end: &str| {
        let mut taken: Vec<&str> = Vec::new();
        let ended = words.any(|word| {
            let is_end = word == end;
            if !is_end {
                taken.push(word);
            }
            is_end
        });
        (taken.join(" "), ended)
    };
    let (price, true) = up_to("for") else { return None };
    let (holds, _) = up_to("at");
    let (strength, _) = up_to("");
    let mut named = Named::new(name.trim());
    named.strength = strength;
    let whose = if price.is_empty() { "" } else { "writer" }.into();
    named.record = EmbedBottle { price, holds, whose, ..named.record };
    Some(named)
}

/// The bottle that a line takes; one that is not among them joins those that were `written`. A line
/// without a measure that only decorates takes none, nor does one that pours nothing, such as a heading.
fn bottle_of(line: &Line, written: usize, bottles: &mut Vec<Named>) -> Option<usize> {
    let decorates = line.garnish && line.measure.is_none();
    if line.aside.is_some() || decorates || line.name.is_empty() {
        return None;
    }
    // A price is meant for all that it fits; a bottle of another line is only what it is called.
    let words = Words::of(&line.name);
    let written = bottles.iter().take(written).map(|named| &named.words);
    let known = whole_within(&words, written)
        .or_else(|| bottles.iter().position(|named| named.words == words));
    known.or_else(|| {
        bottles.push(Named::new(&line.name));
        bottles.len().checked_sub(1)
    })
}

/// Puts the reader's prices in the place of the writer's.
fn take_up(own: Vec<OwnPrice>, bottles: &mut [Named]) -> Result<(), Fault> {
    if own.len() > MOST_OWN {
        return Err(Fault::new(Code::TooManyBottles).with("most", MOST_OWN.to_string()));
    }
    for OwnPrice { name, price, holds } in own {
        let called = folded(&name);
        let mine = bottles.iter_mut().find(|named| folded(&named.record.name) == called);
        let Some(Named { record, owns, .. }) = mine else {
            continue;
        };
        let [price_is_own, holds_is_own] = owns;
        for (own, blank, is_own) in
            [(price, &mut record.price, price_is_own), (holds, &mut record.holds, holds_is_own)]
        {
            if !own.trim().is_empty() {
                *blank = own;
                *is_own = true;
                record.whose = "reader".into();
            }
        }
    }
    Ok(())
}

fn read(named: &Named, place: &str, hands: Hands, problems: &mut Problems) -> Bottle {
    let Named { strength, record, owns, .. } = named;
    let [prices, sizes] = owns.map(|is_own| if is_own { hands.reader } else { hands.writer });
    let at = |blank: &str| format!("{place}.{blank}");
    problems.keep(&at("name"), name(&record.name));
    let price = reading::price(&record.price, prices.marks, prices.no_decimals);
    let price = problems.keep(&at("price"), price).flatten();
    let strength = reading::strength_percent(strength, hands.writer.marks);
    Bottle {
        paid: price.map(|price| Paid {
            price,
            bottles: Fraction::ONE,
            discount: None,
            delivery: None,
            tax: Tax::In,
            tax_percent: None,
        }),
        holds: holds_of(&millilitres(&record.holds), "", place, sizes, problems),
        strength: problems.keep(&at("strength"), strength).flatten(),
        ..Bottle::default()
    }
}

fn strength(glass: Glass) -> Option<EmbedStrength> {
    let found = glass.strength(None)?;
    // Labels give a decimal, and grams tell no more than that.
    let text = |float, decimals| Kept::nearest(float).unwrap_or_default().to(decimals).plain_text();
    Some(EmbedStrength {
        percent: text(found.drink.percent, 1),
        low: text(found.low, 1),
        high: text(found.high, 1),
        alcohol_g: text(found.drink.alcohol_g, 0),
        missing: counted(found.missing),
    })
}
