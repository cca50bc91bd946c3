//! Offers at a tasting table: what each would cost in a glass, and the most one may pay for it.

use crate::bottle::{Bottle, House, Paid};
use crate::drink::{Known, Pour};
use crate::measure::Measure;
use crate::number::{Fraction, Kept};
use crate::price::Selling;
use crate::problem::Fault;
use crate::reading::{Deal, Discount};
use crate::working::Does::{Less, Over, Plus, Start, Times};
use crate::working::{Figure, Found, MONEY, Operand, Working};
use alloc::vec::Vec;

/// What the glass is to be. What is not known is nothing.
#[derive(Clone, Copy, Debug)]
pub struct Wanted {
    /// What goes into it.
    pub measure: Option<Measure>,
    /// What the rest of it costs.
    pub rest: Option<Fraction>,
    /// How it is sold.
    pub selling: Option<Selling>,
    /// What it sells at.
    pub price: Option<Fraction>,
    /// The margin that is wanted, in percent.
    pub target: Option<Fraction>,
    /// The digits of the currency: a price fits as it is shown.
    pub digits: u32,
}

/// What is known of an offer.
#[derive(Clone, Debug, Default)]
pub struct Weighed {
    /// What one bottle costs.
    pub bottle: Option<Figure>,
    /// What the measure costs.
    pub measure: Option<Figure>,
    /// What a glass with it costs.
    pub glass: Option<Figure>,
    /// What a glass keeps of its price, in percent of net.
    pub margin: Option<Figure>,
    /// The most that may be paid for what the price buys.
    pub at_most: Option<Figure>,
    /// Whether the price is at or below that.
    pub fits: bool,
}

/// What is paid with a deal, and for how many bottles.
pub fn with_deal(paid: Paid, deal: Deal) -> Result<Paid, Fault> {
    Ok(match deal {
        Deal::For { gets, pays } => {
            Paid { price: paid.price.times(pays)?, bottles: paid.bottles.times(gets)?, ..paid }
        }
        Deal::Off { percent, from } => Paid {
            price: paid.price.times(from)?,
            bottles: paid.bottles.times(from)?,
            discount: Some(Discount::Percent(percent)),
            ..paid
        },
    })
}

/// Weighs an offer against what is wanted.
///
/// `asked` is the price as it was offered, before any deal.
pub fn weighed(
    bottle: &Bottle,
    asked: Option<Fraction>,
    wanted: &Wanted,
    house: &House,
) -> Result<Weighed, Fault> {
    let mut weighed = Weighed {
        bottle: bottle.figure(&|bottle, working| bottle.cost(house, working))?,
        ..Weighed::default()
    };
    let Some(measure) = wanted.measure else {
        return Ok(weighed);
    };
    let pour = Pour { bottle, measure };
    weighed.measure = pour.figure(crate::drink::Wanted::Poured, house)?;
    let (Some(cost), Some(rest)) = (weighed.measure.as_ref().map(|cost| cost.value), wanted.rest)
    else {
        return Ok(weighed);
    };
    let glass = glass(cost, rest)?;
    let cost = glass.value.fraction();
    weighed.glass = Some(glass);
    let (Some(price), Some(selling)) = (wanted.price, wanted.selling) else {
        return Ok(weighed);
    };
    weighed.margin = selling.priced(price, cost)?.margin;
    let (Some(asked), Some(target)) = (asked, wanted.target) else {
        return Ok(weighed);
    };
    let may = selling.may_cost(price, target)?;
    weighed.at_most = at_most(pour, asked, may, rest, house)?;
    let fits = |most: &Figure| {
        let (exact, shown) = (most.value, most.value.to(wanted.digits));
        exact.max(shown).fraction().compare(asked).is_ge()
    };
    // What is given away fits, whatever it may cost.
    weighed.fits = asked.is_nought() || weighed.at_most.as_ref().is_some_and(fits);
    Ok(weighed)
}

fn glass(measure: Kept, rest: Fraction) -> Result<Figure, Fault> {
    let mut working = Working::default();
    let measure = Operand::new(measure.fraction(), MONEY, "line");
    let rest = Operand::new(rest, MONEY, "other_lines");
    let glass = working.step("glass", MONEY, &[(Start, measure), (Plus, rest)])?;
    Figure::new(glass, working)
}

/// The most that may be paid, as the offer is priced: with its tax, for all its bottles, before its deal.
fn at_most(
    pour: Pour,
    asked: Fraction,
    (may, mut working): (Operand, Working),
    rest: Fraction,
    house: &House,
) -> Found {
    let known = pour.known(house)?;
    let (Known { amount: Some(amount), usable: Some(usable), cost: Some(costs) }, Some(kind)) =
        (known, pour.bottle.kind())
    else {
        return Ok(None);
    };
    if costs.is_nought() {
        return Ok(None);
    }
    let rest = Operand::new(rest, MONEY, "other_lines");
    let left = working.step("line_may_cost", MONEY, &[(Start, may), (Less, rest)])?;
    if left.number.compare(Fraction::NOUGHT).is_le() {
        return Ok(None);
    }
    let unit = kind.base();
    let terms = [
        (Start, left),
        (Times, Operand::new(usable, unit, "usable")),
        (Over, Operand::new(amount, unit, "measure_amount")),
    ];
    let one = working.step("bottle_at_most", MONEY, &terms)?;
    let asked = Operand::new(asked, MONEY, "price");
    let terms = [(Start, one), (Times, asked), (Over, Operand::new(costs, MONEY, "cost_bottle"))];
    let most = working.step("price_at_most", MONEY, &terms)?;
    Figure::new(most, working).map(Some)
}

/// The ranks of offers by what the measure costs: 1 is the cheapest, equal ones share theirs.
pub fn ranks(costs: &[Option<Kept>]) -> Vec<Option<u64>> {
    let rank = |cost: &Option<Kept>| {
        let cost = (*cost)?;
        let cheaper = costs.iter().flatten().filter(|other| **other < cost).count();
        u64::try_from(cheaper.saturating_add(1)).ok()
    };
    costs.iter().map(rank).collect()
}
