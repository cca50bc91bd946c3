//! What follows from the cost of a glass: its price, its lines one at a time, its strength, its pace.
//!
//! `sheet` says what a glass costs; this says what to do about it.

use crate::drink::{Known, Pour};
use crate::keeping::pours_per_bottle;
use crate::measure::Kind;
use crate::number::{Fraction, Kept};
use crate::price::{Priced, Selling};
use crate::problem::Fault;
use crate::sheet::{Ask, Charge, GlassAnswer, Line, Placed};
use crate::strength::{Method, Mixed, Part, iced};
use crate::working::Does::{Less, Over, Plus, Start, Times};
use crate::working::{BARE, Figure, Found, MONEY, Operand, Working};
use alloc::vec::Vec;

/// What a label's strength may be off, in percent by volume: Regulation (EU) 1169/2011, annex XII, row 4.
const LABEL_TOLERANCE: f64 = 0.3;

/// Days of a week.
const WEEK: f64 = 7.0;

/// How a glass is sold. What is not known is nothing.
#[derive(Clone, Copy, Debug)]
pub struct Terms {
    /// How tax stands in its price.
    pub selling: Option<Selling>,
    /// The margin that is wanted, in percent.
    pub target: Option<Fraction>,
    /// What is charged.
    pub price: Option<Fraction>,
    /// What ice does to it.
    pub ice: Option<Ice>,
    /// How many are sold in a week.
    pub a_week: Option<Fraction>,
}

/// What ice does to a glass.
#[derive(Clone, Copy, Debug)]
pub struct Ice {
    /// How it is mixed.
    pub method: Method,
    /// The water it takes up, in ml, where that is known.
    pub water_ml: Option<Fraction>,
}

/// A glass that is looked at: its lines, and what the sheet says of it.
#[derive(Clone, Copy)]
pub struct Glass<'a> {
    /// The sheet it stands in.
    pub ask: &'a Ask,
    /// Its lines.
    pub lines: &'a [Placed<Line>],
    /// What the sheet says.
    pub answer: &'a GlassAnswer,
    /// How it is sold.
    pub terms: Terms,
}

/// A line of a glass by itself.
#[derive(Clone, Debug, Default)]
pub struct LineFacts {
    /// What the glass costs without it.
    pub without: Option<Figure>,
    /// The strength of the glass without it.
    pub strength_without: Option<f64>,
    /// What its bottle costs, if no other line needs it.
    pub outlay: Option<Figure>,
    /// What its bottle may cost at most.
    pub bottle_at_most: Option<Figure>,
    /// How much of it the glass can take.
    pub measure_at_most: Option<Figure>,
    /// What a pour costs, what spoils included.
    pub cost_kept: Option<Figure>,
    /// What the same money buys of the bottles of other lines, by their places.
    pub same_money: Vec<(usize, Figure)>,
}

/// How strong a glass is.
#[derive(Clone, Copy, Debug)]
pub struct Strength {
    /// The drink as it is served.
    pub drink: Mixed,
    /// The water that ice added, in ml.
    pub water_ml: f64,
    /// The strength with every label as low as it may be.
    pub low: f64,
    /// The strength with every label as high as it may be.
    pub high: f64,
    /// How many liquids have no strength told.
    pub missing: usize,
}

impl Glass<'_> {
    fn cost(&self) -> Option<Kept> {
        self.answer.cost.as_ref().map(|cost| cost.value)
    }

    /// What follows from a price.
    pub fn priced(&self, price: Fraction) -> Result<Option<Priced>, Fault> {
        let (Some(cost), Some(selling)) = (self.cost(), self.terms.selling) else {
            return Ok(None);
        };
        selling.priced(price, cost.fraction()).map(Some)
    }

    /// The price that the wanted margin asks.
    pub fn asked(&self) -> Found {
        let (Some(cost), Terms { selling: Some(selling), target: Some(target), .. }) =
            (self.cost(), self.terms)
        else {
            return Ok(None);
        };
        selling.asked(cost.fraction(), target).map(Some)
    }

    /// Whether a price leaves the wanted margin; nothing if none is wanted.
    pub fn reaches(&self, priced: &Priced) -> Option<bool> {
        let target = self.terms.target?;
        let reaches = |margin: &Figure| margin.value.fraction().compare(target).is_ge();
        Some(priced.margin.as_ref().is_some_and(reaches))
    }

    /// What the glass may cost at most.
    pub fn may_cost(&self) -> Found {
        let most = self.most()?;
        most.map(|(most, working)| Figure::new(most, working)).transpose()
    }

    fn most(&self) -> Result<Option<(Operand, Working)>, Fault> {
        let Terms { selling: Some(selling), target: Some(target), price: Some(price), .. } =
            self.terms
        else {
            return Ok(None);
        };
        selling.may_cost(price, target).map(Some)
    }

    fn pour(&self, place: usize) -> Option<Pour<'_>> {
        let line = self.lines.get(place)?.what;
        let bottle = self.ask.bottles.get(line.bottle?)?;
        Some(Pour { bottle: &bottle.what, measure: line.measure? })
    }

    fn known(&self, place: usize) -> Known {
        let known = self.pour(place).map(|pour| pour.known(&self.ask.house));
        known.and_then(Result::ok).unwrap_or_default()
    }

    fn line_cost(&self, place: usize) -> Option<Kept> {
        self.answer.line_costs.get(place).copied().flatten()
    }

    fn places(&self) -> core::ops::Range<usize> {
        0..self.lines.len()
    }

    /// How strong the glass is, without the line of `but`. Nothing while no strength is told.
    pub fn strength(&self, but: Option<usize>) -> Option<Strength> {
        let mut parts = Vec::new();
        let mut missing: usize = 0;
        for place in self.places().filter(|place| Some(*place) != but) {
            let Some(pour) = self.pour(place) else {
                continue;
            };
            if pour.bottle.kind().unwrap_or(pour.measure.unit.kind) != Kind::Volume {
                continue;
            }
            let Some(ml) = self.known(place).amount else {
                continue;
            };
            if pour.bottle.strength.is_none() {
                missing = missing.saturating_add(1);
            }
            let percent = pour.bottle.strength.map_or(0.0, |strength| strength.float());
            parts.push(Part { ml: ml.float(), percent });
        }
        if missing == parts.len() {
            return None;
        }
        let Ice { method, water_ml } = self.terms.ice?;
        let water = water_ml.map(|ml| ml.float());
        let at = |off: f64| {
            let off = |part: &Part| Part {
                percent: if part.percent > 0.0 {
                    (part.percent + off).clamp(0.0, 100.0)
                } else {
                    0.0
                },
                ..*part
            };
            let parts: Vec<Part> = parts.iter().map(off).collect();
            iced(&parts, method, water)
        };
        let (drink, water_ml) = at(0.0)?;
        Some(Strength {
            drink,
            water_ml,
            low: at(-LABEL_TOLERANCE)?.0.percent,
            high: at(LABEL_TOLERANCE)?.0.percent,
            missing,
        })
    }

    /// The glass at its pace, what spoils included; nothing if nothing in it spoils or no pace is given.
    pub fn cost_kept(&self) -> Found {
        let mut working = Working::default();
        let mut terms = Vec::new();
        let mut spoils = false;
        let unread = |place| self.pour(place).is_some_and(|pour| pour.bottle.keeps_days.is_none());
        if self.places().any(unread) {
            return Ok(None);
        }
        for place in self.places() {
            let Some(cost) = self.line_cost(place) else {
                continue;
            };
            let operand = match self.kept_pour(place, &mut working)? {
                Some(kept) => {
                    spoils = true;
                    kept
                }
                None => Operand::new(cost.fraction(), MONEY, "line"),
            };
            terms.push((if terms.is_empty() { Start } else { Plus }, operand));
        }
        if !spoils {
            return Ok(None);
        }
        let sum = working.step("glass_kept", MONEY, &terms)?;
        Figure::new(sum, working).map(Some)
    }

    /// What a pour of a line costs, what spoils included; nothing if it does not spoil.
    fn kept_pour(&self, place: usize, working: &mut Working) -> Result<Option<Operand>, Fault> {
        let line = |place: usize| self.lines.get(place).map(|line| line.what);
        let poured = |place: usize| line(place).is_some_and(|line| line.charge == Charge::Poured);
        let days = self.pour(place).and_then(|pour| pour.bottle.keeps_days).flatten();
        let Known { amount: Some(amount), usable: Some(usable), cost: Some(cost) } =
            self.known(place)
        else {
            return Ok(None);
        };
        let (Some(days), Some(a_week), true) = (days, self.terms.a_week, poured(place)) else {
            return Ok(None);
        };
        // Lines of one bottle empty it together: each glass takes the sum of them.
        let mut together = Fraction::NOUGHT;
        for other in self.places().filter(|other| poured(*other)) {
            if line(other).map(|line| line.bottle) == line(place).map(|line| line.bottle) {
                together = together.plus(self.known(other).amount.unwrap_or(Fraction::NOUGHT))?;
            }
        }
        let Ok(holds) = u32::try_from(usable.over(together)?.rounded_down().parts().0) else {
            return Ok(None);
        };
        // A pour that takes more than a bottle leaves nothing that could spoil.
        if holds == 0 {
            return Ok(None);
        }
        let pours = pours_per_bottle(holds, a_week.float() / WEEK, Some(days.float()));
        let pours = Kept::nearest(pours).unwrap_or_default().to(POURS_DECIMALS).fraction();
        let cost = Operand::new(cost, MONEY, "cost_bottle");
        let mut terms = vec![(Start, cost), (Over, Operand::new(pours, "measure", "pours_kept"))];
        if together != amount {
            let unit =
                self.pour(place).and_then(|pour| pour.bottle.kind()).map_or(BARE, Kind::base);
            terms.push((Times, Operand::new(amount, unit, "measure_amount")));
            terms.push((Over, Operand::new(together, unit, "needs")));
        }
        working.step("cost_kept", MONEY, &terms).map(Some)
    }

    /// A line by itself.
    pub fn line(&self, place: usize) -> Result<LineFacts, Fault> {
        let mut working = Working::default();
        let cost_kept = self.kept_pour(place, &mut working)?;
        let mut facts = LineFacts {
            cost_kept: cost_kept.map(|kept| Figure::new(kept, working)).transpose()?,
            strength_without: self.strength(Some(place)).map(|strength| strength.drink.percent),
            outlay: self.outlay(place)?,
            ..LineFacts::default()
        };
        let (Some(glass), Some(cost)) = (self.cost(), self.line_cost(place)) else {
            return Ok(facts);
        };
        let glass = Operand::new(glass.fraction(), MONEY, "glass");
        let cost = Operand::new(cost.fraction(), MONEY, "line");
        let mut working = Working::default();
        let without = working.step("without", MONEY, &[(Start, glass), (Less, cost)])?;
        facts.without = Some(Figure::new(without, working)?);
        self.at_most(place, without.number, cost, &mut facts)?;
        for other in self.places() {
            facts.same_money.extend(self.same_money(place, other, cost)?.map(|same| (other, same)));
        }
        Ok(facts)
    }

    /// What the bottle of a line may cost, and how much of it the glass can take, all else as it is.
    fn at_most(
        &self,
        place: usize,
        without: Fraction,
        cost: Operand,
        facts: &mut LineFacts,
    ) -> Result<(), Fault> {
        let known = self.known(place);
        let (Some((may, mut working)), Some(line)) = (self.most()?, self.lines.get(place)) else {
            return Ok(());
        };
        let (Some(usable), Some(measure)) = (known.usable, line.what.measure) else {
            return Ok(());
        };
        if line.what.charge == Charge::Whole || cost.number.is_nought() {
            return Ok(());
        }
        facts.bottle_at_most = self.bottle_at_most(place, usable, may, working.clone())?;
        let others = Operand::new(without, MONEY, "other_lines");
        let left = working.step("line_may_cost", MONEY, &[(Start, may), (Less, others)])?;
        if left.number.compare(Fraction::NOUGHT).is_le() {
            return Ok(());
        }
        let now = Operand::new(measure.amount, measure.unit.code, "measure");
        let terms = [(Start, now), (Times, left), (Over, cost)];
        let most = working.step("measure_at_most", measure.unit.code, &terms)?;
        facts.measure_at_most = Some(Figure::new(most, working)?);
        Ok(())
    }

    /// What the bottle of a line may cost: all lines that are poured from it share what is left for it.
    /// Nothing if one of them is charged whole.
    fn bottle_at_most(
        &self,
        place: usize,
        usable: Fraction,
        may: Operand,
        mut working: Working,
    ) -> Found {
        let bottle = |place: usize| self.lines.get(place).and_then(|line| line.what.bottle);
        let (mut others, mut goes_in) = (Fraction::NOUGHT, Fraction::NOUGHT);
        for other in self.places() {
            let cost = self.line_cost(other).unwrap_or_default().fraction();
            if bottle(other) != bottle(place) {
                others = others.plus(cost)?;
                continue;
            }
            let charge = self.lines.get(other).map(|line| line.what.charge);
            match (self.known(other).amount, charge) {
                (Some(amount), Some(Charge::Poured)) => goes_in = goes_in.plus(amount)?,
                (None, _) => {}
                _ => return Ok(None),
            }
        }
        let others = Operand::new(others, MONEY, "other_lines");
        let left = working.step("line_may_cost", MONEY, &[(Start, may), (Less, others)])?;
        let Some(kind) = self.pour(place).and_then(|pour| pour.bottle.kind()) else {
            return Ok(None);
        };
        if left.number.compare(Fraction::NOUGHT).is_le() {
            return Ok(None);
        }
        let unit = kind.base();
        let terms = [
            (Start, left),
            (Times, Operand::new(usable, unit, "usable")),
            (Over, Operand::new(goes_in, unit, "measure_amount")),
        ];
        let most = working.step("bottle_at_most", MONEY, &terms)?;
        Figure::new(most, working).map(Some)
    }

    /// What the cost of a line buys of the bottle of another.
    fn same_money(&self, place: usize, other: usize, cost: Operand) -> Found {
        let bottle = |place: usize| self.lines.get(place).and_then(|line| line.what.bottle);
        if bottle(place) == bottle(other) || bottle(other).is_none() {
            return Ok(None);
        }
        let Known { usable: Some(usable), cost: Some(bottle_cost), .. } = self.known(other) else {
            return Ok(None);
        };
        let Some(kind) = self.pour(other).and_then(|pour| pour.bottle.kind()) else {
            return Ok(None);
        };
        if bottle_cost.is_nought() {
            return Ok(None);
        }
        let mut working = Working::default();
        let gives = Operand::new(usable, kind.base(), "usable");
        let costs = Operand::new(bottle_cost, MONEY, "cost_bottle");
        let terms = [(Start, cost), (Times, gives), (Over, costs)];
        let amount = working.step("same_money", kind.base(), &terms)?;
        Figure::new(amount, working).map(Some)
    }

    /// What the bottle of a line costs, if no other line needs it.
    fn outlay(&self, place: usize) -> Found {
        let bottle = |place: usize| self.lines.get(place).and_then(|line| line.what.bottle);
        let shared = self.places().any(|other| other != place && bottle(other) == bottle(place));
        let Some(pour) = self.pour(place).filter(|_| !shared) else {
            return Ok(None);
        };
        pour.bottle.figure(&|bottle, working| bottle.cost(&self.ask.house, working))
    }
}

/// Decimals of an expected number of pours: a float of it is surer than that.
const POURS_DECIMALS: u32 = 9;
