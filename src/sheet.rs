//! The sheet: prices the bottles, then the pours, then the glasses. The only orchestrator.
//!
//! Half-typed input is normal: what can be reckoned is reckoned, and what cannot is a problem at its
//! place. A bottle's fault is told once, at the bottle, not again at every line that names it.

use crate::bottle::{Bottle, House};
use crate::drink::{self, Pour, Wanted};
use crate::measure::Measure;
use crate::number::Kept;
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

/// Answers what is asked, and adds what could not be reckoned to `problems`.
pub fn answer(ask: &Ask, problems: &mut Problems) -> Reply {
    let mut sound = ask.clone();
    let bottles =
        sound.bottles.iter_mut().map(|bottle| price_bottle(bottle, &ask.house, problems)).collect();
    let pours = ask.pours.iter().map(|line| pour(line, &sound, problems)).collect();
    let specs = ask.specs.iter().map(|lines| glass(lines, &sound, problems)).collect();
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

fn pour(line: &Placed<Line>, ask: &Ask, problems: &mut Problems) -> LineAnswer {
    let Line { bottle, measure, .. } = line.what;
    let bottle = bottle.and_then(|index| ask.bottles.get(index));
    let (Some(bottle), Some(measure)) = (bottle, measure) else { return LineAnswer::default() };
    let pour = Pour { bottle: &bottle.what, measure };
    // One fault, such as a measure of the wrong kind, stops every figure of the line: it is told once.
    let answer = problems.keep(&format!("{}.measure", line.place), figures(pour, &ask.house));
    answer.unwrap_or_default()
}

fn figures(pour: Pour, house: &House) -> Result<LineAnswer, Fault> {
    let figure = |wanted| pour.figure(wanted, house);
    Ok(LineAnswer {
        amount: figure(Wanted::Amount)?,
        poured: figure(Wanted::Poured)?,
        whole: figure(Wanted::Whole)?,
        difference: figure(Wanted::Difference)?,
        count: figure(Wanted::Count)?,
        left_over: figure(Wanted::LeftOver)?,
    })
}

fn glass(lines: &[Placed<Line>], ask: &Ask, problems: &mut Problems) -> GlassAnswer {
    let answers: Vec<LineAnswer> = lines.iter().map(|line| pour(line, ask, problems)).collect();
    let line_costs: Vec<Option<Kept>> = lines
        .iter()
        .zip(&answers)
        .map(|(line, answer)| answer.charged(line.what.charge).map(|figure| figure.value))
        .collect();
    let place = lines.first().map_or("", |line| line.place.as_str());
    GlassAnswer {
        cost: problems.keep(place, drink::glass(&line_costs)).flatten(),
        shares: drink::shares(&line_costs),
        missing: line_costs.iter().filter(|cost| cost.is_none()).count(),
        lines: answers,
        line_costs,
    }
}

/// What a change of price does to a glass: the cost after less the cost before.
pub fn change(before: &Figure, after: &Figure) -> Found {
    let operand = |figure: &Figure, is| Operand::new(figure.value.fraction(), MONEY, is);
    let mut working = Working::default();
    let terms = [(Start, operand(after, "after")), (Less, operand(before, "before"))];
    let change = working.step("change", MONEY, &terms)?;
    Figure::new(change, working).map(Some)
}
