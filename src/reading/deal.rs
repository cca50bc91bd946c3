//! Deals: `3 for 2`, `three for two`, `10 % off`, `10 % off six`.

use super::amount::{Marks, amount, is_space};
use super::{filled, more_than_nought, part_percent, unreadable};
use crate::number::Fraction;
use crate::problem::Fault;

/// What a seller gives to who buys more.
#[derive(Clone, Copy, Debug)]
pub enum Deal {
    /// So many for the price of so many: 3 for 2.
    For {
        /// How many one gets.
        gets: Fraction,
        /// How many one pays.
        pays: Fraction,
    },
    /// So many percent off, from so many on.
    Off {
        /// Percent.
        percent: Fraction,
        /// From how many on.
        from: Fraction,
    },
}

/// A deal; nothing for an empty blank.
pub fn deal(text: &str, marks: Marks) -> Result<Option<Deal>, Fault> {
    let Some(text) = filled(text)? else {
        return Ok(None);
    };
    let lower = text.to_ascii_lowercase();
    let whole = |text: &str| -> Result<Fraction, Fault> {
        let (number, rest) = amount(text, marks)?;
        let bare = rest.trim_matches(is_space).is_empty();
        if bare && number.is_whole() { more_than_nought(number) } else { Err(unreadable(text)) }
    };
    if let Some((gets, pays)) = lower.split_once(" for ") {
        let (gets, pays) = (whole(gets)?, whole(pays)?);
        if pays.compare(gets).is_gt() {
            return Err(unreadable(text));
        }
        return Ok(Some(Deal::For { gets, pays }));
    }
    let (percent, from) = lower.split_once("off").unwrap_or((lower.as_str(), ""));
    let percent = part_percent(percent, marks)?.ok_or_else(|| unreadable(text))?;
    let from = from.trim_matches(is_space);
    let from = from.strip_prefix("from").unwrap_or(from);
    let from = if from.is_empty() { Fraction::ONE } else { whole(from)? };
    Ok(Some(Deal::Off { percent, from }))
}
