//! A bottle: what was paid for it, what it gives, and what a measure of it is.
//!
//! The cost of one bottle, as the person bears it:
//! `(price − discount + delivery) ÷ bottles`, less the tax that is got back, or with the tax that is not.
//! Tax inside a price is `rate ÷ (100 + rate)` of it (HMRC's VAT fraction: 1/6 at 20 %).
//! What it gives is what it holds less what never leaves it: the cost as bought over the yield is the
//! cost as used.

use crate::dash::{self, Sizes};
use crate::measure::{Kind, Measure, Size};
use crate::number::Fraction;
use crate::problem::{Code, Fault};
use crate::reading::Discount;
use crate::spread::Spread;
use crate::working::Does::{Less, Over, Plus, Start, Times};
use crate::working::{BARE, Figure, Found, MONEY, Operand, Operands, Working};
use alloc::vec::Vec;

/// How tax stands in a price.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Tax {
    /// The price includes it.
    #[default]
    In,
    /// It is added to the price.
    Out,
    /// There is none.
    Free,
}

/// What was paid.
#[derive(Clone, Copy, Debug)]
pub struct Paid {
    /// The price of all the bottles together.
    pub price: Fraction,
    /// How many bottles it buys.
    pub bottles: Fraction,
    /// What came off.
    pub discount: Option<Discount>,
    /// What delivery added.
    pub delivery: Option<Fraction>,
    /// How tax stands in price and delivery.
    pub tax: Tax,
    /// The tax rate, if it is not the house's.
    pub tax_percent: Option<Fraction>,
}

/// A bottle. What is not yet typed, or could not be read, is nothing.
#[derive(Clone, Debug, Default)]
pub struct Bottle {
    /// What was paid.
    pub paid: Option<Paid>,
    /// What it holds, and the percentage of that which never leaves it.
    pub holds: Option<Holds>,
    /// Its own rough measures, those that were measured among them.
    pub sizes: Sizes,
    /// Its strength in percent by volume.
    pub strength: Option<Fraction>,
    /// How many days it keeps once open, `Some(None)` for ever; nothing if that could not be read.
    pub keeps_days: Option<Option<Fraction>>,
    /// What is there of it already, `Some(None)` nothing; nothing if that could not be read.
    pub have: Option<Option<Measure>>,
}

/// What a bottle holds.
#[derive(Clone, Copy, Debug)]
pub struct Holds {
    /// What the label says.
    pub measure: Measure,
    /// What never leaves the bottle, in percent.
    pub wastage_percent: Fraction,
}

/// What holds for every bottle.
#[derive(Clone, Debug, Default)]
pub struct House {
    /// The tax rate of a bottle that names none. Nothing if it could not be read.
    pub tax_percent: Option<Fraction>,
    /// Whether tax on what is bought is got back.
    pub reclaims_tax: bool,
    /// Rough measures for all bottles.
    pub sizes: Sizes,
    /// Whether the doubt counts what the law lets one bottle be short of its label.
    pub counts_fill: bool,
}

/// What a label may lawfully promise too much in one bottle: up to so many ml or g, so much, either in ml
/// or g or in thousandths of what is promised. The mean of a lot may not fall short.
/// Directive 76/211/EEC, annex I, 2.4, from memory.
const TOLERABLE: [(i128, i128, bool); 7] = [
    (50, 90, true),
    (100, 4500, false),
    (200, 45, true),
    (300, 9000, false),
    (500, 30, true),
    (1000, 15000, false),
    (10_000, 15, true),
];

impl Holds {
    /// What one bottle may hold, its label being lawful; nothing for what is counted in pieces, and
    /// outside 5 ml to 10 litres, where the law says nothing.
    ///
    /// More than the label is taken to be as likely as less, because the mean must reach it.
    pub fn fill(&self) -> Option<(Fraction, Spread)> {
        let Measure { amount, unit, .. } = self.measure;
        if !matches!(unit.kind, Kind::Volume | Kind::Mass) {
            return None;
        }
        let holds = amount.times(unit.exact_size()?).ok()?;
        if holds.compare(Fraction::new(5, 1)?).is_lt() {
            return None;
        }
        let upto = |(most, ..): &&(i128, i128, bool)| {
            Fraction::new(*most, 1).is_some_and(|most| holds.compare(most).is_le())
        };
        let (_, thousandths, of_it) = TOLERABLE.iter().find(upto)?;
        let short = Fraction::decimal(*thousandths, 3)?;
        let short = if *of_it { holds.times(short).ok()? } else { short };
        Some((holds, Spread::Even(holds.less(short).ok()?, holds.plus(short).ok()?)))
    }
}

impl Bottle {
    /// The cost of one bottle as the person bears it.
    pub fn cost(&self, house: &House, working: &mut Working) -> Operands {
        let Some(paid) = &self.paid else {
            return Ok(None);
        };
        let whole = paid.whole(working)?;
        let mut terms = vec![(Start, whole)];
        if paid.bottles != Fraction::ONE {
            terms.push((Over, Operand::new(paid.bottles, BARE, "bottles")));
        }
        let Some(tax) = paid.tax_terms(house)? else {
            return Ok(None);
        };
        terms.extend(tax);
        if terms.len() == 1 {
            return Ok(Some(whole));
        }
        working.step("cost_bottle", MONEY, &terms).map(Some)
    }

    /// What one bottle gives, in the base of its kind.
    pub fn usable(&self, working: &mut Working) -> Operands {
        let Some(Holds { measure, wastage_percent }) = self.holds else {
            return Ok(None);
        };
        let Some(size) = measure.unit.exact_size() else {
            return Ok(None);
        };
        let base = measure.unit.kind.base();
        let holds = Operand::new(measure.amount, measure.unit.code, "holds");
        let mut terms = vec![(Start, holds)];
        if !measure.unit.is_base() {
            terms.push((Times, Operand::new(size, base, "unit_size")));
        }
        if !wastage_percent.is_nought() {
            let left = Fraction::HUNDRED.less(wastage_percent)?;
            terms.push((Times, Operand::new(left, "percent", "wastage")));
            terms.push((Over, Operand::hundred()));
        }
        if terms.len() == 1 {
            return Ok(Some(holds));
        }
        working.step("usable", base, &terms).map(Some)
    }

    /// The cost of one ml, g or piece.
    pub fn cost_each(&self, house: &House, working: &mut Working) -> Operands {
        let (Some(cost), Some(usable)) = (self.cost(house, working)?, self.usable(working)?) else {
            return Ok(None);
        };
        working.step("cost_each", MONEY, &[(Start, cost), (Over, usable)]).map(Some)
    }

    /// What one of the sums above finds, with its working.
    pub fn figure(&self, sum: &dyn Fn(&Bottle, &mut Working) -> Operands) -> Found {
        let mut working = Working::default();
        let found = sum(self, &mut working)?;
        found.map(|found| Figure::new(found, working)).transpose()
    }

    /// A measure of this bottle in the base of its kind. `usable` is what the bottle gives.
    pub fn amount(
        &self,
        measure: &Measure,
        usable: Option<Operand>,
        house: &House,
        working: &mut Working,
    ) -> Operands {
        self.same_kind(measure)?;
        let unit = measure.unit;
        let measured = Operand::new(measure.amount, unit.code, "measure");
        let size = match unit.size {
            Size::Exact(..) if unit.is_base() => return Ok(Some(measured)),
            Size::Exact(..) => {
                unit.exact_size().map(|size| Operand::new(size, unit.kind.base(), "unit_size"))
            }
            Size::Rough => dash::size(unit, &self.sizes, &house.sizes)
                .map(|size| Operand::new(size.ml, "ml", size.word.term())),
            Size::Bottle => usable,
        };
        let Some(size) = size else { return Ok(None) };
        working.step("measure_amount", size.unit, &[(Start, measured), (Times, size)]).map(Some)
    }

    /// What this bottle is counted in, if that is known.
    pub fn kind(&self) -> Option<Kind> {
        self.holds.map(|holds| holds.measure.unit.kind)
    }

    fn same_kind(&self, measure: &Measure) -> Result<(), Fault> {
        match self.kind() {
            Some(kind) if kind != measure.unit.kind && measure.unit.kind != Kind::Bottle => {
                Err(Fault::new(Code::KindMismatch)
                    .with("measure", measure.unit.kind.text())
                    .with("bottle", kind.text()))
            }
            _ => Ok(()),
        }
    }
}

impl Paid {
    /// The price less the discount plus delivery, for all the bottles together.
    fn whole(&self, working: &mut Working) -> Result<Operand, Fault> {
        let price = Operand::new(self.price, MONEY, "price");
        let mut terms = vec![(Start, price)];
        match self.discount {
            Some(Discount::Percent(off)) => {
                let left = Fraction::HUNDRED.less(off)?;
                terms.push((Times, Operand::new(left, "percent", "discount_percent")));
                terms.push((Over, Operand::hundred()));
            }
            Some(Discount::Sum(off)) => {
                if off.compare(self.price).is_gt() {
                    return Err(Fault::new(Code::DiscountOverPrice));
                }
                terms.push((Less, Operand::new(off, MONEY, "discount_sum")));
            }
            None => {}
        }
        if let Some(delivery) = self.delivery {
            terms.push((Plus, Operand::new(delivery, MONEY, "delivery")));
        }
        if terms.len() == 1 {
            return Ok(price);
        }
        working.step("paid", MONEY, &terms)
    }

    /// What turns the price into what the person bears; nothing if the rate is not known.
    fn tax_terms(
        &self,
        house: &House,
    ) -> Result<Option<Vec<(crate::working::Does, Operand)>>, Fault> {
        let bears_as_paid = match self.tax {
            Tax::Free => true,
            Tax::In => !house.reclaims_tax,
            Tax::Out => house.reclaims_tax,
        };
        if bears_as_paid {
            return Ok(Some(Vec::new()));
        }
        let Some(rate) = self.tax_percent.or(house.tax_percent) else {
            return Ok(None);
        };
        if rate.is_nought() {
            return Ok(Some(Vec::new()));
        }
        let with_tax = Operand::new(
            Fraction::HUNDRED.plus(rate)?,
            "percent",
            match self.tax {
                Tax::Out => "tax_in",
                Tax::In | Tax::Free => "tax_out",
            },
        );
        let whole = Operand::hundred();
        Ok(Some(match self.tax {
            Tax::Out => vec![(Times, with_tax), (Over, whole)],
            Tax::In | Tax::Free => vec![(Times, whole), (Over, with_tax)],
        }))
    }
}
