//! A pour and a glass: what a measure of a bottle costs, and what its lines cost together.
//!
//! The cost of a measure is `cost of the bottle × measure ÷ what the bottle gives`, multiplied first
//! and divided once. A bottle opened for one glass may be charged whole: as many whole bottles as the
//! measure needs. A line without a price is missing, never nought, and the glass says how many are.

use crate::bottle::{Bottle, House};
use crate::dash::{self, Size, Word};
use crate::doubt::{Bears, Input, Inputs, Source, Term};
use crate::measure::{self, Kind, Measure};
use crate::money::share_out;
use crate::number::{Fraction, Kept};
use crate::problem::Fault;
use crate::spread::Spread;
use crate::working::Does::{Less, Over, Plus, Start, Times};
use crate::working::{BARE, Figure, Found, MONEY, Operand, Operands, Rounded, Working};
use alloc::vec::Vec;

/// A measure of a bottle.
#[derive(Clone, Copy, Debug)]
pub struct Pour<'a> {
    /// The bottle.
    pub bottle: &'a Bottle,
    /// How much of it.
    pub measure: Measure,
}

/// What can be asked of a pour.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Wanted {
    /// The measure in the base of the bottle's kind.
    Amount,
    /// The cost of what is poured.
    Poured,
    /// The cost of the whole bottles that must be opened for this one measure.
    Whole,
    /// What charging whole bottles adds over charging what is poured.
    Difference,
    /// How many whole such measures the bottle gives.
    Count,
    /// What is left in the bottle after those.
    LeftOver,
}

impl Pour<'_> {
    /// A figure of this pour, with its working from the price paid onwards.
    pub fn figure(&self, wanted: Wanted, house: &House) -> Found {
        let mut working = Working::default();
        let found = self.find(wanted, house, &mut working)?;
        found.map(|found| Figure::new(found, working)).transpose()
    }

    fn find(&self, wanted: Wanted, house: &House, working: &mut Working) -> Operands {
        let of_money = matches!(wanted, Wanted::Poured | Wanted::Whole | Wanted::Difference);
        let of_bottle = wanted != Wanted::Amount || self.measure.unit.kind == Kind::Bottle;
        let bottle = if of_money { self.bottle.cost(house, working)? } else { None };
        let usable = if of_bottle { self.bottle.usable(working)? } else { None };
        let amount = self.bottle.amount(&self.measure, usable, house, working)?;
        let Some(amount) = amount else {
            return Ok(None);
        };
        match (wanted, usable, bottle) {
            (Wanted::Amount, ..) => Ok(Some(amount)),
            (Wanted::Count, Some(usable), _) => count(usable, amount, working),
            (Wanted::LeftOver, Some(usable), _) => left_over(usable, amount, working),
            (Wanted::Poured, Some(usable), Some(bottle)) => poured(bottle, usable, amount, working),
            (Wanted::Whole, Some(usable), Some(bottle)) => whole(bottle, usable, amount, working),
            (Wanted::Difference, Some(usable), Some(bottle)) => {
                let poured = poured(bottle, usable, amount, working)?;
                let whole = whole(bottle, usable, amount, working)?;
                let Some((poured, whole)) = poured.zip(whole) else {
                    return Ok(None);
                };
                working.step("difference", MONEY, &[(Start, whole), (Less, poured)]).map(Some)
            }
            _ => Ok(None),
        }
    }
}

/// What a pour rests on. What is not known is nothing.
#[derive(Clone, Copy, Debug, Default)]
pub struct Known {
    /// The measure in the base of its kind.
    pub amount: Option<Fraction>,
    /// What the bottle gives.
    pub usable: Option<Fraction>,
    /// What the bottle costs.
    pub cost: Option<Fraction>,
}

impl Known {
    /// A figure of the pour in one sum, without a working; where whole bottles are opened, how many of
    /// them it takes and what one costs.
    pub fn sum(&self, wanted: Wanted) -> Result<Option<(Fraction, Option<Fraction>)>, Fault> {
        Ok(match (wanted, self.amount, self.usable, self.cost) {
            (Wanted::Amount, Some(amount), ..) => Some((amount, None)),
            (Wanted::Count, Some(amount), Some(usable), _) => Some((usable.over(amount)?, None)),
            (Wanted::Poured, Some(amount), Some(usable), Some(cost)) => {
                Some((cost.times(amount)?.over(usable)?, None))
            }
            (Wanted::Whole, Some(amount), Some(usable), Some(cost)) => {
                Some((amount.over(usable)?, Some(cost)))
            }
            _ => None,
        })
    }
}

/// Where a pour stands: what the parts of its doubt belong to.
#[derive(Clone, Copy, Debug, Default)]
pub struct Stands {
    /// Which line of a glass it is.
    pub line: Option<usize>,
    /// Which bottle it is poured from.
    pub bottle: Option<usize>,
}

impl Pour<'_> {
    /// What it rests on.
    pub fn known(&self, house: &House) -> Result<Known, Fault> {
        let quiet = &mut Working::quiet();
        let usable = self.bottle.usable(quiet)?;
        let cost = self.bottle.cost(house, quiet)?;
        let amount = self.bottle.amount(&self.measure, usable, house, quiet)?;
        let number = |operand: Operand| operand.number;
        Ok(Known { amount: amount.map(number), usable: usable.map(number), cost: cost.map(number) })
    }

    /// How a figure of this pour follows what in it may be off; nothing if the figure is not known.
    pub fn term(
        &self,
        wanted: Wanted,
        house: &House,
        stands: Stands,
        inputs: &mut Inputs,
    ) -> Result<Option<Term>, Fault> {
        let Some((at_best, whole)) = self.known(house)?.sum(wanted)? else { return Ok(None) };
        let mut term = Term { at_best, follows: Vec::new(), whole };
        for input in self.unsure(house, stands) {
            let of_bottle = self.measure.unit.kind == Kind::Bottle;
            let bears = match (input.source.is == FILL, wanted) {
                (true, Wanted::Amount) if of_bottle => Bears::Times,
                (true, _) if of_bottle || wanted == Wanted::Amount => continue,
                (true, Wanted::Count) => Bears::Times,
                (true, _) => Bears::Over,
                (false, Wanted::Count) => Bears::Over,
                (false, _) => Bears::Times,
            };
            term.follows.push((inputs.place(input), bears));
        }
        Ok(Some(term))
    }

    /// What in this pour may be off: how much is poured, how large a rough measure is, what the bottle holds.
    fn unsure(&self, house: &House, Stands { line, bottle }: Stands) -> Vec<Input> {
        let mut unsure = Vec::new();
        let Measure { amount, unit, spread } = self.measure;
        if let Some(spread) = spread {
            let is = if matches!(spread, Spread::Middling(..)) { "about" } else { "range" };
            let source = Source { is, line, bottle, of: BARE, unit: unit.code };
            unsure.push(Input { source, best: amount, spread, helps: Some("pour") });
        }
        let size = (unit.size == measure::Size::Rough)
            .then(|| dash::size(unit, &self.bottle.sizes, &house.sizes))
            .flatten();
        if let Some(Size { ml, spread: Some(spread), word, helps }) = size {
            // The house's word is one for all bottles.
            let bottle = bottle.filter(|_| word != Word::House);
            let source = Source { is: word.term(), line, bottle, of: unit.code, unit: "ml" };
            unsure.push(Input { source, best: ml, spread, helps });
        }
        let holds = self.bottle.holds.filter(|_| house.counts_fill);
        if let Some((holds, (best, spread))) = holds.and_then(|holds| Some((holds, holds.fill()?)))
        {
            let unit = holds.measure.unit.kind.base();
            let source = Source { is: FILL, line, bottle, of: BARE, unit };
            unsure.push(Input { source, best, spread, helps: None });
        }
        unsure
    }
}

/// What the law lets a bottle be short of its label.
const FILL: &str = "fill";

fn poured(bottle: Operand, usable: Operand, amount: Operand, working: &mut Working) -> Operands {
    let terms = [(Start, bottle), (Times, amount), (Over, usable)];
    working.step("cost", MONEY, &terms).map(Some)
}

fn whole(bottle: Operand, usable: Operand, amount: Operand, working: &mut Working) -> Operands {
    let terms = [(Start, amount), (Over, usable)];
    let opened = working.whole_step("bottles_opened", BARE, &terms, Rounded::Up)?;
    working.step("whole_cost", MONEY, &[(Start, opened), (Times, bottle)]).map(Some)
}

fn count(usable: Operand, amount: Operand, working: &mut Working) -> Operands {
    let terms = [(Start, usable), (Over, amount)];
    working.whole_step("count", "measure", &terms, Rounded::Down).map(Some)
}

fn left_over(usable: Operand, amount: Operand, working: &mut Working) -> Operands {
    let Some(count) = count(usable, amount, working)? else {
        return Ok(None);
    };
    let used = working.step("used", usable.unit, &[(Start, count), (Times, amount)])?;
    working.step("left_over", usable.unit, &[(Start, usable), (Less, used)]).map(Some)
}

/// The sum of the lines that have a cost; nothing if none has.
pub fn glass(costs: &[Option<Kept>]) -> Found {
    let mut terms: Vec<_> = costs
        .iter()
        .flatten()
        .map(|cost| (Plus, Operand::new(cost.fraction(), MONEY, "line")))
        .collect();
    let Some(first) = terms.first_mut() else {
        return Ok(None);
    };
    first.0 = Start;
    let mut working = Working::default();
    let sum = working.step("glass", MONEY, &terms)?;
    Figure::new(sum, working).map(Some)
}

/// The lines' shares of the glass in whole percent, which add up to exactly a hundred.
///
/// Nothing for a line without a cost, and for every line of a glass that costs nothing.
pub fn shares(costs: &[Option<Kept>]) -> Vec<Option<u64>> {
    let known: Vec<Kept> = costs.iter().flatten().copied().collect();
    let parts = share_out(100, &known).unwrap_or_default();
    let mut parts = parts.into_iter();
    let mut share = || parts.next().and_then(|part| u64::try_from(part).ok());
    costs.iter().map(|cost| cost.and_then(|_| share())).collect()
}
