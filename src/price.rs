//! What to charge and what is kept: price, margin, pour cost and markup, with tax in the price or on top.
//!
//! It takes a cost, not a drink, so that it prices a jug or a menu too. Everything is reckoned on the
//! price without tax: `margin = (net − cost) ÷ net`, `pour cost = cost ÷ net`,
//! `markup = (net − cost) ÷ cost`, `net = cost ÷ (1 − margin)`. Tax inside a price is `rate ÷ (100 + rate)`
//! of it. Formulas: the trade's costing textbooks (Dittmer and Keefe, 9th ed.).
//!
//! | what | example |
//! |---|---|
//! | cost 1.80, margin 76 %, tax 20 % in the price | net 7.50, price 9.00 |
//! | the trap: the same margin on the price with tax | 80 % |

use crate::number::{Fraction, Kept};
use crate::problem::{Code, Fault};
use crate::working::Does::{Less, Over, Plus, Start, Times};
use crate::working::{Figure, MONEY, Operand, Working};
use alloc::vec::Vec;

/// Rungs of a ladder below and above the price that is asked.
const RUNGS: i128 = 3;

/// How tax stands in what is charged.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum SaleTax {
    /// The price on the menu includes it.
    #[default]
    In,
    /// It is added at the till.
    Added,
    /// None is charged.
    Free,
}

/// How something is sold.
#[derive(Clone, Copy, Debug)]
pub struct Selling {
    /// How tax stands in the price.
    pub tax: SaleTax,
    /// The rate in percent. Nought where none is charged.
    pub rate: Fraction,
}

/// A price, and what follows from it.
#[derive(Clone, Debug)]
pub struct Priced {
    /// The price as it stands on the menu.
    pub price: Figure,
    /// What the guest pays: the price, and tax where that is added.
    pub pays: Figure,
    /// The price without tax.
    pub net: Figure,
    /// The tax in it or on top.
    pub tax: Figure,
    /// What is kept: net less cost.
    pub keeps: Figure,
    /// What is kept in percent of net; nothing for a price of nought.
    pub margin: Option<Figure>,
    /// The cost in percent of net.
    pub pour_cost: Option<Figure>,
    /// What is kept in percent of the cost; nothing for a cost of nought.
    pub markup: Option<Figure>,
    /// What the margin wrongly looks like on the price with tax; nothing where no tax is in the price.
    pub trap: Option<Figure>,
}

impl Selling {
    /// A selling without tax in sight is one at nought percent.
    fn rate(&self) -> Fraction {
        if self.tax == SaleTax::Free { Fraction::NOUGHT } else { self.rate }
    }

    fn with_tax(&self) -> Result<Operand, Fault> {
        Ok(Operand::new(Fraction::HUNDRED.plus(self.rate())?, "percent", "sale_tax_in"))
    }

    /// The price without tax.
    fn net(&self, price: Operand, working: &mut Working) -> Result<Operand, Fault> {
        if self.tax != SaleTax::In || self.rate().is_nought() {
            return Ok(price);
        }
        let terms = [(Start, price), (Times, Operand::hundred()), (Over, self.with_tax()?)];
        working.step("net", MONEY, &terms)
    }

    /// What follows from a price for something that costs so much.
    ///
    /// ```
    /// use farthing::number::Fraction;
    /// use farthing::price::{SaleTax, Selling};
    /// let money = |digits| Fraction::decimal(digits, 2).unwrap();
    /// let sold = Selling { tax: SaleTax::In, rate: money(2000) };
    /// let priced = sold.priced(money(900), money(180)).unwrap();
    /// assert_eq!(priced.margin.unwrap().value.plain_text(), "76");
    /// assert_eq!(priced.trap.unwrap().value.plain_text(), "80");
    /// ```
    pub fn priced(&self, price: Fraction, cost: Fraction) -> Result<Priced, Fault> {
        let cost = Operand::new(cost, MONEY, "cost_glass");
        let price = Operand::new(price, MONEY, "sale_price");
        let figure = |sum: &dyn Fn(&mut Working) -> Result<Operand, Fault>| {
            let mut working = Working::default();
            let found = sum(&mut working)?;
            Figure::new(found, working)
        };
        let part = |what: &'static str,
                    of: &dyn Fn(&mut Working) -> Result<[Operand; 2], Fault>| {
            let mut working = Working::default();
            let [part, whole] = of(&mut working)?;
            if whole.number.is_nought() {
                return Ok(None);
            }
            let terms = [(Start, part), (Times, Operand::hundred()), (Over, whole)];
            let found = working.step(what, "percent", &terms)?;
            Figure::new(found, working).map(Some)
        };
        let keeps = |working: &mut Working| {
            let net = self.net(price, working)?;
            Ok([working.step("keeps", MONEY, &[(Start, net), (Less, cost)])?, net])
        };
        let is_in = self.tax == SaleTax::In && !self.rate().is_nought();
        Ok(Priced {
            price: figure(&|_| Ok(price))?,
            pays: figure(&|working| self.pays(price, working))?,
            net: figure(&|working| self.net(price, working))?,
            tax: figure(&|working| self.tax_of(price, working))?,
            keeps: figure(&|working| Ok(keeps(working)?[0]))?,
            margin: part("margin", &keeps)?,
            pour_cost: part("pour_cost", &|working| Ok([cost, self.net(price, working)?]))?,
            markup: part("markup", &|working| Ok([keeps(working)?[0], cost]))?,
            trap: if is_in {
                part("margin_trap", &|working| {
                    let left =
                        working.step("keeps_with_tax", MONEY, &[(Start, price), (Less, cost)])?;
                    Ok([left, price])
                })?
            } else {
                None
            },
        })
    }

    fn pays(&self, price: Operand, working: &mut Working) -> Result<Operand, Fault> {
        if self.tax != SaleTax::Added || self.rate().is_nought() {
            return Ok(price);
        }
        let terms = [(Start, price), (Times, self.with_tax()?), (Over, Operand::hundred())];
        working.step("pays", MONEY, &terms)
    }

    fn tax_of(&self, price: Operand, working: &mut Working) -> Result<Operand, Fault> {
        let rate = Operand::new(self.rate(), "percent", "sale_tax_rate");
        let whole = match self.tax {
            SaleTax::In => self.with_tax()?,
            SaleTax::Added | SaleTax::Free => Operand::hundred(),
        };
        working.step("sale_tax", MONEY, &[(Start, price), (Times, rate), (Over, whole)])
    }

    /// The price that leaves the wanted margin, exactly.
    pub fn asked(&self, cost: Fraction, target: Fraction) -> Result<Figure, Fault> {
        let mut working = Working::default();
        let cost = Operand::new(cost, MONEY, "cost_glass");
        let left = cost_part(target)?;
        let terms = [(Start, cost), (Times, Operand::hundred()), (Over, left)];
        let net = working.step("net_asked", MONEY, &terms)?;
        let price = if self.tax == SaleTax::In && !self.rate().is_nought() {
            let terms = [(Start, net), (Times, self.with_tax()?), (Over, Operand::hundred())];
            working.step("price_asked", MONEY, &terms)?
        } else {
            net
        };
        Figure::new(price, working)
    }

    /// What something may cost at most, at a price and a wanted margin.
    pub fn may_cost(&self, price: Fraction, target: Fraction) -> Result<(Operand, Working), Fault> {
        let mut working = Working::default();
        let net = self.net(Operand::new(price, MONEY, "sale_price"), &mut working)?;
        let terms = [(Start, net), (Times, cost_part(target)?), (Over, Operand::hundred())];
        let most = working.step("may_cost", MONEY, &terms)?;
        Ok((most, working))
    }
}

/// What a margin leaves for the cost, in percent.
fn cost_part(target: Fraction) -> Result<Operand, Fault> {
    let left = Fraction::HUNDRED.less(target)?;
    if left.compare(Fraction::NOUGHT).is_le() {
        return Err(Fault::new(Code::PercentOutOfRange)
            .with("typed", target.kept()?.plain_text())
            .with("least", "0")
            .with("most", "99.999999"));
    }
    Ok(Operand::new(left, "percent", "cost_part"))
}

/// Which prices a person asks.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Points {
    /// Any.
    Any,
    /// Whole ones.
    Whole,
    /// Whole ones and halves.
    #[default]
    Half,
    /// Those that end in .95.
    NinetyFive,
    /// Fives and tens.
    Fives,
}

impl Points {
    /// The distance of two neighbours and the first of them, in hundredths of one.
    fn grid(self) -> Option<(i128, i128)> {
        match self {
            Points::Any => None,
            Points::Whole => Some((100, 0)),
            Points::Half => Some((50, 0)),
            Points::NinetyFive => Some((100, 95)),
            Points::Fives => Some((500, 0)),
        }
    }

    /// The rungs around a price, the lowest first; none where any price will do. One is a whole unit of
    /// the currency, or a hundred where it has no smaller one.
    pub fn ladder(self, around: Kept, digits: u32) -> Result<Vec<Fraction>, Fault> {
        let Some((step, first)) = self.grid() else {
            return Ok(Vec::new());
        };
        let decimals = if digits == 0 { 0 } else { 2 };
        let hundredth = |hundredths: i128| Fraction::decimal(hundredths, decimals);
        let (Some(step), Some(first)) = (hundredth(step), hundredth(first)) else {
            return Ok(Vec::new());
        };
        let below = around.fraction().less(first)?.over(step)?.rounded_down();
        let mut rungs = Vec::new();
        for rung in 1i128.saturating_sub(RUNGS)..=RUNGS {
            let away = if rung < 0 {
                Fraction::NOUGHT
                    .less(Fraction::new(rung.saturating_neg(), 1).unwrap_or(Fraction::ONE))?
            } else {
                Fraction::new(rung, 1).unwrap_or(Fraction::ONE)
            };
            let rung = below.plus(away)?.times(step)?.plus(first)?;
            if rung.compare(Fraction::NOUGHT).is_gt() {
                rungs.push(rung);
            }
        }
        Ok(rungs)
    }
}

/// Money put together.
pub fn sum(finds: &'static str, parts: &[(&'static str, Kept)]) -> Result<Figure, Fault> {
    let mut working = Working::default();
    let operand = |(is, part): &(&'static str, Kept)| Operand::new(part.fraction(), MONEY, is);
    let mut terms: Vec<_> = parts.iter().map(|part| (Plus, operand(part))).collect();
    if let Some(first) = terms.first_mut() {
        first.0 = Start;
    }
    let sum = working.step(finds, MONEY, &terms)?;
    Figure::new(sum, working)
}
