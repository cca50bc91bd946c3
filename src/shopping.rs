//! What must be bought: whole bottles for so many of each glass, less what is there already.

use crate::bottle::{Bottle, House};
use crate::measure::{Kind, Measure};
use crate::number::Fraction;
use crate::problem::{Fault, Problems};
use crate::sheet::{Ask, Charge, GlassAnswer, Line, Placed};
use crate::working::Does::{Less, Over, Plus, Start, Times};
use crate::working::{BARE, Figure, MONEY, Operand, Operands, Rounded, Working};
use alloc::vec::Vec;

/// What must be bought of one bottle.
#[derive(Clone, Debug)]
pub struct Shopping {
    /// Which bottle.
    pub bottle: usize,
    /// How much is needed.
    pub needs: Figure,
    /// How much is there.
    pub has: Option<Figure>,
    /// How many bottles must be bought.
    pub buys: u64,
    /// What they cost.
    pub cost: Figure,
    /// What is left afterwards.
    pub left: Figure,
}

/// A line of so many glasses.
#[derive(Clone, Copy)]
struct Needed<'a> {
    line: Line,
    amount: Option<&'a Figure>,
    glasses: Fraction,
}

/// What must be bought for so many of each glass, bottle by bottle, and how many lines could not be
/// reckoned.
pub fn shopping(
    ask: &Ask,
    answers: &[GlassAnswer],
    counts: &[Option<Fraction>],
    problems: &mut Problems,
) -> (Vec<Shopping>, usize) {
    let mut all = Vec::new();
    for ((lines, answer), count) in ask.specs.iter().zip(answers).zip(counts) {
        let Some(glasses) = *count else { continue };
        all.extend(lines.iter().zip(&answer.lines).map(|(line, facts)| Needed {
            line: line.what,
            amount: facts.amount.as_ref(),
            glasses,
        }));
    }
    let mut rows = Vec::new();
    let mut bought_lines: usize = 0;
    for (index, Placed { place, what }) in ask.bottles.iter().enumerate() {
        let of_bottle =
            |needed: &&Needed| needed.line.bottle == Some(index) && needed.amount.is_some();
        let lines: Vec<_> = all.iter().filter(of_bottle).copied().collect();
        if lines.is_empty() {
            continue;
        }
        let Some(have) = what.have else { continue };
        let has = problems.keep(&format!("{place}.have"), has(what, have, &ask.house));
        let row = has.and_then(|has| {
            let row = bought(index, what, has, &lines, &ask.house);
            problems.keep(place, row).flatten()
        });
        if let Some(row) = row {
            rows.push(row);
            bought_lines = bought_lines.saturating_add(lines.len());
        }
    }
    (rows, all.len().saturating_sub(bought_lines))
}

/// What is there already of a bottle.
fn has(bottle: &Bottle, have: Option<Measure>, house: &House) -> Operands {
    let mut quiet = Working::quiet();
    let Some(have) = have else { return Ok(None) };
    let usable = bottle.usable(&mut quiet)?;
    bottle.amount(&have, usable, house, &mut quiet)
}

/// What a line needs for all its glasses. Charged whole, it opens its bottles anew for each.
fn needs(
    needed: &Needed,
    amount: &Figure,
    usable: Operand,
    working: &mut Working,
) -> Result<Operand, Fault> {
    let amount = Operand::new(amount.value.fraction(), amount.unit, "measure_amount");
    let glasses = (Times, Operand::new(needed.glasses, BARE, "glasses"));
    let terms = match needed.line.charge {
        Charge::Poured => vec![(Start, amount), glasses],
        Charge::Whole => {
            let terms = [(Start, amount), (Over, usable)];
            let opened = working.whole_step("bottles_opened", BARE, &terms, Rounded::Up)?;
            vec![(Start, opened), (Times, usable), glasses]
        }
    };
    working.step("needs_line", usable.unit, &terms)
}

fn bought(
    index: usize,
    bottle: &Bottle,
    has: Option<Operand>,
    lines: &[Needed],
    house: &House,
) -> Result<Option<Shopping>, Fault> {
    let (mut quiet, mut working) = (Working::quiet(), Working::default());
    let (Some(usable), Some(cost)) = (bottle.usable(&mut quiet)?, bottle.cost(house, &mut quiet)?)
    else {
        return Ok(None);
    };
    let unit = bottle.kind().map_or(BARE, Kind::base);
    let usable = Operand::new(usable.number, unit, "usable");
    let mut terms = Vec::new();
    for needed in lines {
        let Some(amount) = needed.amount else {
            continue;
        };
        let line = needs(needed, amount, usable, &mut working)?;
        terms.push((if terms.is_empty() { Start } else { Plus }, line));
    }
    let needs = working.step("needs", unit, &terms)?;
    let needs_figure = Figure::new(needs, working.clone())?;
    let has = has.map(|has| Operand::new(has.number, unit, "have"));
    let short = match has {
        Some(has) => working.step("short", unit, &[(Start, needs), (Less, has)])?,
        None => needs,
    };
    let buys = if short.number.compare(Fraction::NOUGHT).is_gt() {
        let terms = [(Start, short), (Over, usable)];
        working.whole_step("buys", BARE, &terms, Rounded::Up)?
    } else {
        Operand::new(Fraction::NOUGHT, BARE, "buys")
    };
    let mut for_cost = working.clone();
    let price = Operand::new(cost.number, MONEY, "cost_bottle");
    let outlay = for_cost.step("outlay", MONEY, &[(Start, buys), (Times, price)])?;
    let bring = working.step("brings", unit, &[(Start, buys), (Times, usable)])?;
    let mut terms = vec![(Start, bring)];
    terms.extend(has.map(|has| (Plus, has)));
    terms.push((Less, needs));
    let left = working.step("left_over", unit, &terms)?;
    Ok(Some(Shopping {
        bottle: index,
        needs: needs_figure,
        has: has.map(|has| Figure::new(has, Working::default())).transpose()?,
        buys: u64::try_from(buys.number.parts().0).unwrap_or(u64::MAX),
        cost: Figure::new(outlay, for_cost)?,
        left: Figure::new(left, working)?,
    }))
}
