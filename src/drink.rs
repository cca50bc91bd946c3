//! A pour and a glass: what a measure of a bottle costs, and what its lines cost together.
//!
//! The cost of a measure is `cost of the bottle × measure ÷ what the bottle gives`, multiplied first
//! and divided once. A bottle opened for one glass may be charged whole: as many whole bottles as the
//! measure needs. A line without a price is missing, never nought, and the glass says how many are.

use crate::bottle::{Bottle, House};
use crate::measure::{Kind, Measure};
use crate::money::share_out;
use crate::number::Kept;
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
        let Some(amount) = amount else { return Ok(None) };
        match (wanted, usable, bottle) {
            (Wanted::Amount, ..) => Ok(Some(amount)),
            (Wanted::Count, Some(usable), _) => count(usable, amount, working),
            (Wanted::LeftOver, Some(usable), _) => left_over(usable, amount, working),
            (Wanted::Poured, Some(usable), Some(bottle)) => poured(bottle, usable, amount, working),
            (Wanted::Whole, Some(usable), Some(bottle)) => whole(bottle, usable, amount, working),
            (Wanted::Difference, Some(usable), Some(bottle)) => {
                let poured = poured(bottle, usable, amount, working)?;
                let whole = whole(bottle, usable, amount, working)?;
                let Some((poured, whole)) = poured.zip(whole) else { return Ok(None) };
                working.step("difference", MONEY, &[(Start, whole), (Less, poured)]).map(Some)
            }
            _ => Ok(None),
        }
    }
}

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
    let Some(count) = count(usable, amount, working)? else { return Ok(None) };
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
    let Some(first) = terms.first_mut() else { return Ok(None) };
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
