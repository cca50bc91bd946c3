//! The working of a figure: the sum as it was done, step by step.
//!
//! A working is not told after the sum: it *is* the sum. [`Working::step`] takes the terms from left
//! to right, exactly, and writes them down as it goes. A step may take up an earlier step's result;
//! it takes the exact fraction, not the decimal that was written down.

use crate::doubt::Doubt;
use crate::number::{Fraction, Kept};
use crate::problem::Fault;
use alloc::vec::Vec;

/// What a term does to what stands before it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Does {
    /// It stands first.
    Start,
    /// Multiplies.
    Times,
    /// Divides.
    Over,
    /// Adds.
    Plus,
    /// Takes away.
    Less,
}

impl Does {
    /// As it crosses the boundary.
    pub fn text(self) -> &'static str {
        match self {
            Does::Start => "start",
            Does::Times => "times",
            Does::Over => "over",
            Does::Plus => "plus",
            Does::Less => "less",
        }
    }
}

/// How a step's result was made a decimal.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Rounded {
    /// Not at all: it is exact.
    No,
    /// At the twelfth decimal, half away from nought.
    Kept,
    /// Down to a whole number: whole measures in a bottle.
    Down,
    /// Up to a whole number: bottles that must be opened.
    Up,
}

impl Rounded {
    /// As it crosses the boundary.
    pub fn text(self) -> &'static str {
        match self {
            Rounded::No => "no",
            Rounded::Kept => "kept",
            Rounded::Down => "down",
            Rounded::Up => "up",
        }
    }
}

/// The unit of money, beside the codes of `measure`.
pub const MONEY: &str = "money";

/// A number that counts nothing.
pub const BARE: &str = "";

/// An operand: a number, its unit, what it is, and the step it came from if it came from one.
#[derive(Clone, Copy, Debug)]
pub struct Operand {
    /// The exact number.
    pub number: Fraction,
    /// Its unit.
    pub unit: &'static str,
    /// What it is, as a code.
    pub is: &'static str,
    /// The step of the same working whose result it is.
    pub step: Option<usize>,
}

impl Operand {
    /// A number that was typed or assumed.
    pub fn new(number: Fraction, unit: &'static str, is: &'static str) -> Self {
        Operand { number, unit, is, step: None }
    }

    /// The hundred of per cent.
    pub fn hundred() -> Self {
        Operand::new(Fraction::HUNDRED, BARE, "hundred")
    }
}

/// One line of a working.
#[derive(Clone, Debug)]
pub struct Step {
    /// What it finds, as a code.
    pub finds: &'static str,
    /// The terms, taken from left to right.
    pub terms: Vec<(Does, Operand)>,
    /// What they come to.
    pub result: Kept,
    /// The unit of the result.
    pub unit: &'static str,
    /// How the result was rounded.
    pub rounded: Rounded,
}

/// The steps of a sum.
#[derive(Clone, Debug, Default)]
pub struct Working {
    /// The steps so far.
    pub steps: Vec<Step>,
    /// Whether the steps are done but not written down, as when only the result is wanted.
    quiet: bool,
}

impl Working {
    /// A working that writes nothing down. The sums are the same.
    pub fn quiet() -> Working {
        Working { quiet: true, ..Working::default() }
    }

    /// Does one step and writes it down. The operand it gives back carries the exact fraction.
    #[inline(never)]
    pub fn step(
        &mut self,
        finds: &'static str,
        unit: &'static str,
        terms: &[(Does, Operand)],
    ) -> Result<Operand, Fault> {
        let number = taken_together(terms)?;
        if self.quiet {
            return Ok(Operand { number, unit, is: finds, step: None });
        }
        let kept = number.kept()?;
        let rounded = if kept.fraction() == number { Rounded::No } else { Rounded::Kept };
        self.write(finds, unit, terms, kept, rounded);
        Ok(Operand { number, unit, is: finds, step: self.last() })
    }

    /// Does one step whose result is a whole number, rounded down or up.
    #[inline(never)]
    pub fn whole_step(
        &mut self,
        finds: &'static str,
        unit: &'static str,
        terms: &[(Does, Operand)],
        rounded: Rounded,
    ) -> Result<Operand, Fault> {
        let number = taken_together(terms)?;
        let whole = match rounded {
            Rounded::Up => number.rounded_up(),
            Rounded::Down | Rounded::No | Rounded::Kept => number.rounded_down(),
        };
        self.write(finds, unit, terms, whole.kept()?, rounded);
        Ok(Operand { number: whole, unit, is: finds, step: self.last() })
    }

    fn write(
        &mut self,
        finds: &'static str,
        unit: &'static str,
        terms: &[(Does, Operand)],
        result: Kept,
        rounded: Rounded,
    ) {
        if self.quiet {
            return;
        }
        self.steps.push(Step { finds, terms: terms.to_vec(), result, unit, rounded });
    }

    fn last(&self) -> Option<usize> {
        self.steps.len().checked_sub(1)
    }
}

fn taken_together(terms: &[(Does, Operand)]) -> Result<Fraction, Fault> {
    terms.iter().try_fold(Fraction::NOUGHT, |so_far, (does, operand)| match does {
        Does::Start => Ok(operand.number),
        Does::Times => so_far.times(operand.number),
        Does::Over => so_far.over(operand.number),
        Does::Plus => so_far.plus(operand.number),
        Does::Less => so_far.less(operand.number),
    })
}

/// A figure: a decimal, its unit and its working.
#[derive(Clone, Debug)]
pub struct Figure {
    /// The decimal, kept to twelve decimals.
    pub value: Kept,
    /// [`MONEY`] or the code of a unit.
    pub unit: &'static str,
    /// How it was reckoned.
    pub working: Working,
    /// How sure it is; nothing if nothing in it is in doubt.
    pub doubt: Option<Doubt>,
}

impl Figure {
    /// The figure that an operand is, with the working that led to it.
    pub fn new(operand: Operand, working: Working) -> Result<Figure, Fault> {
        let value = operand.number.kept()?;
        Ok(Figure { value, unit: operand.unit, working, doubt: None })
    }
}

/// A figure, nothing if something it needs is not known, or what is wrong.
pub type Found = Result<Option<Figure>, Fault>;

/// Likewise what becomes a figure once its working is done.
pub type Operands = Result<Option<Operand>, Fault>;
