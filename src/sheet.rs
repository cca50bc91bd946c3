//! The sheet: prices the bottles, then the pours, then the glasses. The only orchestrator.
//!
//! Half-typed input is normal: what can be reckoned is reckoned, and what cannot is a problem at its
//! place. A bottle's fault is told once, at the bottle, not again at every line that names it.

use crate::bottle::{Bottle, House};
use crate::doubt::{Doubt, Inputs};
use crate::drink::{self, Pour, Stands, Wanted};
use crate::measure::{Kind, Measure};
use crate::number::{Fraction, Kept};
use crate::problem::{Fault, Problems};
use crate::working::Does::{Less, Start};
use crate::working::{Figure, Found, MONEY, Operand, Working};
use alloc::string::String;
use alloc::vec::Vec;

/// What is asked.
#[derive(Clone, Debug, Default)]
pub struct Ask {
    /// What holds for every bottle.
    pub house: House,
    /// The bottles, each with its place.
    pub bottles: Vec<Placed<Bottle>>,
    /// Quick sums.
    pub pours: Vec<Placed<Line>>,
    /// Glasses, each the lines of a spec.
    pub specs: Vec<Vec<Placed<Line>>>,
    /// Whether only what the lines of the glasses come to is asked, as for a whole menu: then no figure
    /// of theirs has a working or a doubt.
    pub costs_only: bool,
}

/// Something and the place that its problems are told at.
#[derive(Clone, Debug, Default)]
pub struct Placed<T> {
    /// The place, such as `specs[0].lines[2]`.
    pub place: String,
    /// What stands there.
    pub what: T,
}

/// How a line is charged.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Charge {
    /// By what is poured.
    #[default]
    Poured,
    /// By the whole bottle opened for the glass.
    Whole,
}

/// A measure of one of the bottles. What is not yet known is nothing.
#[derive(Clone, Copy, Debug, Default)]
pub struct Line {
    /// Which of [`Ask::bottles`].
    pub bottle: Option<usize>,
    /// How much of it.
    pub measure: Option<Measure>,
    /// How it is charged.
    pub charge: Charge,
}

/// What is answered: one entry for each that was asked, in order.
#[derive(Clone, Debug, Default)]
pub struct Reply {
    /// The bottles.
    pub bottles: Vec<BottleAnswer>,
    /// The quick sums.
    pub pours: Vec<LineAnswer>,
    /// The glasses.
    pub specs: Vec<GlassAnswer>,
}

/// What is known of a bottle.
#[derive(Clone, Debug, Default)]
pub struct BottleAnswer {
    /// Cost of one ml, g or piece.
    pub cost_each: Option<Figure>,
    /// Cost of one bottle as the person bears it.
    pub cost: Option<Figure>,
    /// What one bottle gives.
    pub usable: Option<Figure>,
}

/// What is known of a pour.
#[derive(Clone, Debug, Default)]
pub struct LineAnswer {
    /// The measure in the base of its kind.
    pub amount: Option<Figure>,
    /// The cost of what is poured.
    pub poured: Option<Figure>,
    /// The cost of the whole bottles opened for it.
    pub whole: Option<Figure>,
    /// What charging whole bottles adds.
    pub difference: Option<Figure>,
    /// How many whole such measures the bottle gives.
    pub count: Option<Figure>,
    /// What is left after them.
    pub left_over: Option<Figure>,
}

/// What is known of a glass.
#[derive(Clone, Debug, Default)]
pub struct GlassAnswer {
    /// The sum of the lines that have a cost.
    pub cost: Option<Figure>,
    /// The lines.
    pub lines: Vec<LineAnswer>,
    /// What each line costs as it is charged.
    pub line_costs: Vec<Option<Kept>>,
    /// Each line's share in whole percent.
    pub shares: Vec<Option<u64>>,
    /// How many lines have no cost.
    pub missing: usize,
}

impl LineAnswer {
    /// The cost as the line is charged.
    pub fn charged(&self, charge: Charge) -> Option<&Figure> {
        match charge {
            Charge::Poured => self.poured.as_ref(),
            Charge::Whole => self.whole.as_ref(),
        }
    }

    /// The cost charged the other way.
    pub fn charged_otherwise(&self, charge: Charge) -> Option<&Figure> {
        match charge {
            Charge::Poured => self.whole.as_ref(),
            Charge::Whole => self.poured.as_ref(),
        }
    }
}

/// What is found of one pour.
type Finds<'a> = &'a dyn Fn(Pour, Stands, Charge) -> Result<LineAnswer, Fault>;

/// Answers what is asked, and adds what could not be reckoned to `problems`.
pub fn answer(ask: &Ask, problems: &mut Problems) -> Reply {
    let house = &ask.house;
    let brief = |pour: Pour, _, charge| costs(pour, charge, house);
    let full = |pour: Pour, stands, _| figures(pour, stands, house);
    answered(ask, if ask.costs_only { &brief } else { &full }, problems)
}

/// The same with no more of a line than what goes in and what that costs, each with its working and its
/// doubt. A page of somebody else loads no more of the core than that.
pub fn answer_poured(ask: &Ask, problems: &mut Problems) -> Reply {
    let house = &ask.house;
    let poured = |pour: Pour, stands, _| {
        Ok(LineAnswer {
            amount: ranged(pour, Wanted::Amount, stands, house)?,
            poured: ranged(pour, Wanted::Poured, stands, house)?,
            ..LineAnswer::default()
        })
    };
    answered(ask, &poured, problems)
}

fn answered(ask: &Ask, found: Finds, problems: &mut Problems) -> Reply {
    let mut sound = ask.clone();
    let bottles =
        sound.bottles.iter_mut().map(|bottle| price_bottle(bottle, &ask.house, problems)).collect();
    let pours = ask.pours.iter().map(|line| pour(line, None, &sound, found, problems)).collect();
    let specs = ask.specs.iter().map(|lines| glass(lines, &sound, found, problems)).collect();
    Reply { bottles, pours, specs }
}

/// Prices a bottle, and takes out of it what cannot be reckoned, so that no line trips over it again.
fn price_bottle(
    bottle: &mut Placed<Bottle>,
    house: &House,
    problems: &mut Problems,
) -> BottleAnswer {
    let Placed { place, what } = bottle;
    let usable = problems.keep(&format!("{place}.holds"), what.figure(&Bottle::usable));
    let place = format!("{place}.paid");
    let cost = problems.keep(&place, what.figure(&|bottle, working| bottle.cost(house, working)));
    if usable.is_none() {
        what.holds = None;
    }
    if cost.is_none() {
        what.paid = None;
    }
    let each = what.figure(&|bottle, working| bottle.cost_each(house, working));
    let cost_each = problems.keep(&place, each);
    BottleAnswer { cost_each: cost_each.flatten(), cost: cost.flatten(), usable: usable.flatten() }
}

fn pour(
    line: &Placed<Line>,
    place: Option<usize>,
    ask: &Ask,
    found: Finds,
    problems: &mut Problems,
) -> LineAnswer {
    let Some((pour, stands)) = poured(&line.what, place, ask) else { return LineAnswer::default() };
    // One fault, such as a measure of the wrong kind, stops every figure of the line: it is told once.
    let found = found(pour, stands, line.what.charge);
    let answer = problems.keep(&format!("{}.measure", line.place), found);
    answer.unwrap_or_default()
}

fn poured<'a>(line: &Line, place: Option<usize>, ask: &'a Ask) -> Option<(Pour<'a>, Stands)> {
    let bottle = ask.bottles.get(line.bottle?)?;
    let pour = Pour { bottle: &bottle.what, measure: line.measure? };
    Some((pour, Stands { line: place, bottle: line.bottle }))
}

/// What goes in and what it costs, without a working.
fn costs(pour: Pour, charge: Charge, house: &House) -> Result<LineAnswer, Fault> {
    let whole = charge == Charge::Whole;
    let known = pour.known(house)?;
    let figure = |number: Fraction, unit| -> Found {
        let figure =
            Figure { value: number.kept()?, unit, working: Working::default(), doubt: None };
        Ok(Some(figure))
    };
    let unit = pour.bottle.kind().map_or(pour.measure.unit.kind.base(), Kind::base);
    let amount = known.amount.map_or(Ok(None), |amount| figure(amount, unit))?;
    let cost = match known.sum(if whole { Wanted::Whole } else { Wanted::Poured })? {
        Some((bottles, Some(each))) => figure(bottles.rounded_up().times(each)?, MONEY)?,
        Some((cost, None)) => figure(cost, MONEY)?,
        None => None,
    };
    let (whole, poured) = if whole { (cost, None) } else { (None, cost) };
    Ok(LineAnswer { amount, poured, whole, ..LineAnswer::default() })
}

fn figures(pour: Pour, stands: Stands, house: &House) -> Result<LineAnswer, Fault> {
    let figure = |wanted| pour.figure(wanted, house);
    let ranged = |wanted| ranged(pour, wanted, stands, house);
    let amount = ranged(Wanted::Amount)?;
    let count = match (ranged(Wanted::Count)?, &amount) {
        (Some(count), Some(amount)) if pour.measure.unit.kind != Kind::Bottle => {
            Some(counted(count, amount, pour, house)?)
        }
        (count, _) => count,
    };
    Ok(LineAnswer {
        amount,
        poured: ranged(Wanted::Poured)?,
        whole: ranged(Wanted::Whole)?,
        difference: figure(Wanted::Difference)?,
        count,
        left_over: figure(Wanted::LeftOver)?,
    })
}

/// A figure of a pour, with its doubt.
fn ranged(pour: Pour, wanted: Wanted, stands: Stands, house: &House) -> Found {
    let Some(mut figure) = pour.figure(wanted, house)? else { return Ok(None) };
    let mut inputs = Inputs::default();
    let term = pour.term(wanted, house, stands, &mut inputs)?;
    figure.doubt = Doubt::of(&inputs.0, term.as_slice(), figure.value);
    Ok(Some(figure))
}

/// A count ranges from what the largest measure leaves of it to what the smallest does: it does not
/// follow its measure in a straight line.
fn counted(mut count: Figure, amount: &Figure, pour: Pour, house: &House) -> Result<Figure, Fault> {
    let (Some(doubt), Some(usable)) =
        (&mut count.doubt, pour.bottle.usable(&mut Working::quiet())?.map(|usable| usable.number))
    else {
        return Ok(count);
    };
    let fill = pour.bottle.holds.filter(|_| house.counts_fill).and_then(|holds| holds.fill());
    let ends = fill.and_then(|(best, spread)| Some((best, spread.ends()?)));
    let (least, most) = match ends {
        Some((best, (least, most))) => {
            (usable.times(least)?.over(best)?, usable.times(most)?.over(best)?)
        }
        None => (usable, usable),
    };
    let of = |usable: Fraction, amount: Kept| -> Result<Kept, Fault> {
        usable.over(amount.fraction())?.rounded_down().kept()
    };
    let (small, large) =
        amount.doubt.as_ref().map_or((amount.value, amount.value), |own| (own.low, own.high));
    doubt.low = of(least, large)?.min(count.value);
    if small > Kept::NOUGHT {
        doubt.high = of(most, small)?.max(count.value);
    }
    Ok(count)
}

fn glass(lines: &[Placed<Line>], ask: &Ask, found: Finds, problems: &mut Problems) -> GlassAnswer {
    let answers: Vec<LineAnswer> = lines
        .iter()
        .enumerate()
        .map(|(place, line)| pour(line, Some(place), ask, found, problems))
        .collect();
    let line_costs: Vec<Option<Kept>> = lines
        .iter()
        .zip(&answers)
        .map(|(line, answer)| answer.charged(line.what.charge).map(|figure| figure.value))
        .collect();
    let place = lines.first().map_or("", |line| line.place.as_str());
    let mut cost = problems.keep(place, drink::glass(&line_costs)).flatten();
    if let Some(cost) = cost.as_mut().filter(|_| !ask.costs_only) {
        cost.doubt = glass_doubt(lines, &line_costs, cost.value, ask);
    }
    GlassAnswer {
        cost,
        shares: drink::shares(&line_costs),
        missing: line_costs.iter().filter(|cost| cost.is_none()).count(),
        lines: answers,
        line_costs,
    }
}

/// The doubt of a glass: what several lines share moves in all of them.
fn glass_doubt(
    lines: &[Placed<Line>],
    costs: &[Option<Kept>],
    cost: Kept,
    ask: &Ask,
) -> Option<Doubt> {
    let mut inputs = Inputs::default();
    let mut terms = Vec::new();
    for (place, (line, _)) in
        lines.iter().zip(costs).enumerate().filter(|(_, (_, cost))| cost.is_some())
    {
        let (pour, stands) = poured(&line.what, Some(place), ask)?;
        let wanted = match line.what.charge {
            Charge::Poured => Wanted::Poured,
            Charge::Whole => Wanted::Whole,
        };
        terms.push(pour.term(wanted, &ask.house, stands, &mut inputs).ok()??);
    }
    Doubt::of(&inputs.0, &terms, cost)
}

/// What a change of price does to a glass: the cost after less the cost before.
pub fn change(before: &Figure, after: &Figure) -> Found {
    let operand = |figure: &Figure, is| Operand::new(figure.value.fraction(), MONEY, is);
    let mut working = Working::default();
    let terms = [(Start, operand(after, "after")), (Less, operand(before, "before"))];
    let change = working.step("change", MONEY, &terms)?;
    Figure::new(change, working).map(Some)
}
