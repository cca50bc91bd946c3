//! How sure a figure is: each input is nudged by its standard uncertainty, and the moves are put together.
//!
//! The method is Kragten's (EURACHEM/CITAC QUAM 2012, appendix E.2): reckon the figure with every input
//! at its middle, then once more for each input moved by its standard uncertainty. The root of the sum
//! of the squared moves is the standard uncertainty of the figure. An input that several lines share
//! moves in all of them at once.
//!
//! The range reaches to either side by the root of the squares of each move times the input's own
//! factor: two, or Student's where its repeats were few. (One factor from the effective degrees of
//! freedom, JCGM 100:2008, G.4, covers only 88 % where two dashes of three readings meet.) To that comes
//! what inputs do together in a product that each alone does not. Whole bottles are not spread around a
//! middle: they count from the least to the most of them.
//!
//! The range is never wider than what the inputs can make of the figure together, and never below
//! nought; and it always holds the figure itself, which need not stand in the middle: the usual dash
//! is larger than the middle of the dashes that are published.

use crate::number::{Fraction, Kept};
use crate::problem::Fault;
use crate::spread::Spread;
use crate::statistics::{coverage_factor, effective_freedom};
use alloc::vec::Vec;
use libm::{ceil, fabs, fmax, fmin, sqrt};

/// What would be left of an input's relative standard uncertainty once it is measured: ten dashes
/// weighed a few times, or a marked measure, which the law lets be 8 % off. Common practice, no source.
const ONCE_MEASURED: f64 = 0.05;

/// What would be left of a measured size's after the repeats that are asked for: half.
const ONCE_REPEATED: f64 = 0.5;

/// Advice that leaves more of the doubt than this is none.
const WORTH_DOING: f64 = 0.9;

/// A whole bottle more is not opened for less than this part of one, which a float may be off.
const FLOAT_SLACK: f64 = 1e-9;

/// What an input is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Source {
    /// A code, such as `"range"` or `"rough_assumed"`.
    pub is: &'static str,
    /// Which line of a glass it stands in; nothing if in no line or in several.
    pub line: Option<usize>,
    /// Which bottle it belongs to.
    pub bottle: Option<usize>,
    /// The rough measure whose size it is, if it is one.
    pub of: &'static str,
    /// Its unit.
    pub unit: &'static str,
}

impl Source {
    /// Whether it is the same thing, in whichever line it stands. How much was poured never is.
    fn same(&self, other: &Source) -> bool {
        let shared = |source: &Source| Source { line: None, ..*source };
        self == other || (self.bottle_wide() && shared(self) == shared(other))
    }

    fn bottle_wide(&self) -> bool {
        !matches!(self.is, "range" | "about")
    }
}

/// A number that may be off.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Input {
    /// What it is.
    pub source: Source,
    /// What is reckoned with.
    pub best: Fraction,
    /// How it may be off.
    pub spread: Spread,
    /// What would make it surer: `"measure"`, `"pour"`, `"repeat"`; nothing if nothing a bar can do.
    pub helps: Option<&'static str>,
}

impl Input {
    /// A part of `best`.
    fn relative(&self, number: f64) -> f64 {
        number / self.best.float()
    }

    fn once_helped(&self) -> f64 {
        match self.helps {
            Some("repeat") => ONCE_REPEATED,
            _ => ONCE_MEASURED / self.relative(self.spread.standard()),
        }
    }
}

/// How a sum bears on an input.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Bears {
    /// Twice the input, twice the sum.
    Times,
    /// Twice the input, half the sum.
    Over,
}

/// An amount that follows its inputs in proportion.
#[derive(Clone, Debug)]
pub struct Term {
    /// What it is with every input as reckoned.
    pub at_best: Fraction,
    /// The inputs it follows, by their place, and how.
    pub follows: Vec<(usize, Bears)>,
    /// The cost of one bottle, where `at_best` is how many must be opened: a whole number of them.
    pub whole: Option<Fraction>,
}

impl Term {
    fn at(&self, parts: &[f64]) -> f64 {
        let part = |input: &usize| parts.get(*input).copied().unwrap_or(1.0);
        let amount =
            self.follows.iter().fold(self.at_best.float(), |so_far, (input, bears)| match bears {
                Bears::Times => so_far * part(input),
                Bears::Over => so_far / part(input),
            });
        self.whole.map_or(amount, |cost| ceil(amount - FLOAT_SLACK) * cost.float())
    }

    /// What its inputs do together that each by itself does not: the standard deviation of a product,
    /// less that of the sum of its inputs (GUM 5.1.2, note).
    fn together(&self, inputs: &[Input], at: &[f64]) -> f64 {
        if self.whole.is_some() {
            return 0.0;
        }
        let (mut product, mut sum) = (1.0, 1.0);
        for (place, _) in &self.follows {
            let (Some(input), Some(middle)) = (inputs.get(*place), at.get(*place)) else {
                continue;
            };
            let part = input.relative(input.spread.standard()) / middle;
            product *= 1.0 + part * part;
            sum += part * part;
        }
        self.at(at) * sqrt(fmax(product - sum, 0.0))
    }

    /// The exact least and most; nothing if an input has no ends.
    fn ends(&self, inputs: &[Input]) -> Result<Option<(Fraction, Fraction)>, Fault> {
        let (mut low, mut high) = (self.at_best, self.at_best);
        for (place, bears) in &self.follows {
            let Some(input) = inputs.get(*place) else { continue };
            let Some((least, most)) = input.spread.ends() else { return Ok(None) };
            let (to_low, to_high) = match bears {
                Bears::Times => (least.over(input.best)?, most.over(input.best)?),
                Bears::Over => (input.best.over(most)?, input.best.over(least)?),
            };
            (low, high) = (low.times(to_low)?, high.times(to_high)?);
        }
        Ok(Some(match self.whole {
            Some(cost) => (low.rounded_up().times(cost)?, high.rounded_up().times(cost)?),
            None => (low, high),
        }))
    }
}

/// The inputs of one or more sums, each once.
#[derive(Clone, Debug, Default)]
pub struct Inputs(pub Vec<Input>);

impl Inputs {
    /// Adds an input, or finds the one that it is, and gives back its place.
    pub fn place(&mut self, input: Input) -> usize {
        let found = self.0.iter().position(|known| known.source.same(&input.source));
        if let Some(known) = found.and_then(|place| self.0.get_mut(place)) {
            if known.source.line != input.source.line {
                known.source.line = None;
            }
        } else {
            self.0.push(input);
        }
        found.unwrap_or(self.0.len().saturating_sub(1))
    }
}

/// One input's part in a doubt.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Part {
    /// The input.
    pub input: Input,
    /// How far its standard uncertainty moves the figure.
    pub moves: f64,
}

/// What would help most.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Helps {
    /// Which part.
    pub part: usize,
    /// What would then be left of the doubt, as a part of it.
    pub left: f64,
}

/// How sure a figure is.
#[derive(Clone, Debug, PartialEq)]
pub struct Doubt {
    /// The lower end of the range.
    pub low: Kept,
    /// The upper end.
    pub high: Kept,
    /// The figure with every input at its middle.
    pub middle: f64,
    /// The standard uncertainty.
    pub standard: f64,
    /// What that is multiplied with.
    pub factor: f64,
    /// Effective degrees of freedom, where there is a limit to them.
    pub freedom: Option<u32>,
    /// Whether an end was cut to what the inputs can be.
    pub cut: bool,
    /// What it is made of, the largest part first.
    pub parts: Vec<Part>,
}

impl Doubt {
    /// The doubt of the sum of `terms`, which is `best` with every input as reckoned. Nothing if
    /// nothing moves it.
    ///
    /// ```
    /// use farthing::doubt::{Bears, Doubt, Input, Source, Term};
    /// use farthing::{number::Fraction, spread::Spread};
    /// let number = |n| Fraction::new(n, 1).unwrap();
    /// let source = Source { is: "range", line: None, bottle: None, of: "", unit: "ml" };
    /// let spread = Spread::Even(number(5), number(11));
    /// let poured = Input { source, best: number(8), spread, helps: None };
    /// let cost = Term { at_best: number(16), follows: vec![(0, Bears::Times)], whole: None };
    /// let doubt = Doubt::of(&[poured], &[cost], number(16).kept().unwrap()).unwrap();
    /// assert_eq!((doubt.low, doubt.high), (number(10).kept().unwrap(), number(22).kept().unwrap()));
    /// ```
    pub fn of(inputs: &[Input], terms: &[Term], best: Kept) -> Option<Doubt> {
        let (whole, flowing): (Vec<&Term>, Vec<&Term>) =
            terms.iter().partition(|term| term.whole.is_some());
        let sum =
            |terms: &[&Term], at: &[f64]| terms.iter().fold(0.0, |sum, term| sum + term.at(at));
        let mut at: Vec<f64> =
            inputs.iter().map(|input| input.relative(input.spread.middle(input.best))).collect();
        let (opened, flows) = (sum(&whole, &at), sum(&flowing, &at));
        let middle = opened + flows;
        let mut parts = Vec::new();
        let mut half = terms.iter().fold(0.0, |sum, term| {
            let together = 2.0 * term.together(inputs, &at);
            sum + together * together
        });
        for (place, input) in inputs.iter().enumerate() {
            let standard = input.relative(input.spread.standard());
            let mut moved = |terms: &[&Term], by: f64| {
                let before = sum(terms, &at);
                let nudge = |at: &mut Vec<f64>, by: f64| {
                    at.iter_mut().skip(place).take(1).for_each(|part| *part += by * standard)
                };
                nudge(&mut at, by);
                let moved = fabs((sum(terms, &at) - before) / by);
                nudge(&mut at, -by);
                moved
            };
            let of_flows = moved(&flowing, 1.0);
            let expanded = input.spread.freedom().map_or(2.0, coverage_factor) * of_flows;
            half += expanded * expanded;
            // A whole bottle more may be opened only further out, but no further than the input goes.
            let far = input.spread.furthest();
            let moves = of_flows + fmax(moved(&whole, far), moved(&whole, -far));
            if moves > 0.0 {
                let behind = parts.iter().position(|part: &Part| part.moves < moves);
                parts.insert(behind.unwrap_or(parts.len()), Part { input: *input, moves });
            }
        }
        // Whole bottles are not spread around a middle: they count from the least to the most of them.
        let (fewest, most) = bottles_opened(&whole, inputs, &at);
        let half = sqrt(half);
        let (down, up) = (half + opened - fewest, half + most - opened);
        if parts.is_empty() && down == 0.0 && up == 0.0 {
            return None;
        }
        let ends = sum_of_ends(inputs, terms);
        Doubt::around(middle, (down, up), parts, ends, best)
    }

    fn around(
        middle: f64,
        (down, up): (f64, f64),
        parts: Vec<Part>,
        ends: Option<(Kept, Kept)>,
        best: Kept,
    ) -> Option<Doubt> {
        let standard = root_of_squares(parts.iter().map(|part| part.moves));
        let moves = parts.iter().map(|part| (part.moves, part.input.spread.freedom()));
        let freedom = effective_freedom(standard, moves);
        let factor = (down + up) / 2.0 / standard;
        let (low, high) = (Kept::nearest(middle - down)?, Kept::nearest(middle + up));
        let (least, most) = match ends {
            Some((least, most)) => (least, Some(most)),
            None => (Kept::NOUGHT, None),
        };
        let low = low.max(least);
        let high = most.map_or(high?, |most| most.min(high.unwrap_or(most)));
        Some(Doubt {
            cut: low == least || Some(high) == most,
            low: low.min(best),
            high: high.max(best),
            middle,
            standard,
            factor,
            freedom,
            parts,
        })
    }

    /// The squares that the parts carry, as parts of the largest.
    pub fn weights(&self) -> Vec<Kept> {
        let largest = self.parts.first().map_or(1.0, |part| part.moves);
        let square = |part: &Part| (part.moves / largest) * (part.moves / largest);
        self.parts.iter().map(|part| Kept::nearest(square(part)).unwrap_or_default()).collect()
    }

    /// What would help most, if anything would.
    pub fn helps(&self) -> Option<Helps> {
        let mut most = Helps { part: 0, left: WORTH_DOING };
        for (place, part) in self.parts.iter().enumerate() {
            if part.input.helps.is_none() {
                continue;
            }
            let helped = |(other, part): (usize, &Part)| {
                let left = if other == place { fmin(part.input.once_helped(), 1.0) } else { 1.0 };
                part.moves * left
            };
            let left = root_of_squares(self.parts.iter().enumerate().map(helped)) / self.standard;
            if left < most.left {
                most = Helps { part: place, left };
            }
        }
        (most.left < WORTH_DOING).then_some(most)
    }
}

/// The least and the most of a sum, each line of it as it then would be kept.
fn sum_of_ends(inputs: &[Input], terms: &[Term]) -> Option<(Kept, Kept)> {
    let (mut low, mut high) = (Fraction::NOUGHT, Fraction::NOUGHT);
    for term in terms {
        let (least, most) = term.ends(inputs).ok()??;
        low = low.plus(least.kept().ok()?.fraction()).ok()?;
        high = high.plus(most.kept().ok()?.fraction()).ok()?;
    }
    Some((low.kept().ok()?, high.kept().ok()?))
}

/// The least and the most that whole bottles cost.
fn bottles_opened(whole: &[&Term], inputs: &[Input], at: &[f64]) -> (f64, f64) {
    let moved = |by: f64| -> Vec<f64> {
        let moved = |(input, at): (&Input, &f64)| {
            at + by * input.spread.furthest() * input.relative(input.spread.standard())
        };
        inputs.iter().zip(at).map(moved).collect()
    };
    let (few, many) = (moved(-1.0), moved(1.0));
    whole.iter().fold((0.0, 0.0), |(fewest, most), term| match term.ends(inputs) {
        Ok(Some((least, largest))) => (fewest + least.float(), most + largest.float()),
        _ => {
            let over = |bears: Bears| term.follows.iter().any(|(_, own)| *own == bears);
            let (few, many) = if over(Bears::Over) { (&many, &few) } else { (&few, &many) };
            (fewest + term.at(few), most + term.at(many))
        }
    })
}

fn root_of_squares(numbers: impl Iterator<Item = f64>) -> f64 {
    sqrt(numbers.fold(0.0, |sum, number| sum + number * number))
}
