//! From what a person typed to numbers and measures, or to a fault that says how to mend it.
//!
//! Every reader is a function from text to a value and the text that is left. An empty blank is not
//! wrong, only unfinished: the readers of whole blanks answer `None`. `reading` knows no money.

mod amount;
mod deal;
mod range;
mod words;

pub use amount::{Marks, amount, is_space};
pub use deal::{Deal, deal};
pub use range::{Range, about, from_to};
pub use words::{Kitchen, unit_named};

use crate::measure::{Kind, Measure, Unit, unit};
use crate::number::Fraction;
use crate::problem::{Code, Fault};
use alloc::string::{String, ToString};

/// Characters of one blank that are looked at: room for any number with words around it,
/// and a bound on what a pasted page can cost.
pub const MOST_TYPED: usize = 80;

/// Percent of a tax that is read: no tax on a drink is higher.
const MOST_TAX_PERCENT: i128 = 500;

/// A whole blank that holds one number and nothing else.
///
/// ```
/// use farthing::reading::{Marks, number};
/// let half = number("1 1/2", Marks::POINT).unwrap().unwrap();
/// assert_eq!(half.kept().unwrap().plain_text(), "1.5");
/// ```
pub fn number(text: &str, marks: Marks) -> Result<Option<Fraction>, Fault> {
    let Some(text) = filled(text)? else {
        return Ok(None);
    };
    let (number, rest) = amount(text, marks)?;
    if rest.trim_matches(is_space).is_empty() { Ok(Some(number)) } else { Err(unreadable(text)) }
}

/// A sum of money: a number, with or without a currency sign. `no_decimals` says that the currency
/// has no minor unit, so that `1,250` can only be twelve hundred and fifty.
pub fn price(text: &str, marks: Marks, no_decimals: bool) -> Result<Option<Fraction>, Fault> {
    let bare = text.trim_matches(is_space).trim_matches(CURRENCY_SIGNS);
    match number(bare, marks) {
        Err(fault) if no_decimals && fault.code() == Code::NumberAmbiguous => {
            let whole = fault.value("or").unwrap_or_default().to_string();
            number(&whole, marks)
        }
        read => read,
    }
}

const CURRENCY_SIGNS: [char; 20] = [
    '£', '$', '€', '¥', '₩', '₹', '₽', '₺', '₴', '₫', '₪', '₱', '฿', '₦', '₡', '₲', '₵', '₸', '₾',
    '₼',
];

/// A number of things, which is whole and more than nought.
pub fn whole_number(text: &str, marks: Marks) -> Result<Option<Fraction>, Fault> {
    let Some(number) = number(text, marks)? else {
        return Ok(None);
    };
    if !number.is_whole() {
        return Err(Fault::new(Code::WholeNumberNeeded).with("typed", text.trim()));
    }
    more_than_nought(number).map(Some)
}

/// A tax rate in percent, nought included, with or without the sign.
pub fn tax_percent(text: &str, marks: Marks) -> Result<Option<Fraction>, Fault> {
    percent(text, marks, MOST_TAX_PERCENT)
}

/// A strength in percent by volume.
pub fn strength_percent(text: &str, marks: Marks) -> Result<Option<Fraction>, Fault> {
    percent(text, marks, 100)
}

/// A part of a whole in percent: nought or more, less than a hundred.
pub fn part_percent(text: &str, marks: Marks) -> Result<Option<Fraction>, Fault> {
    let part = percent(text, marks, 100)?;
    match part {
        Some(part) if part == Fraction::HUNDRED => Err(percent_fault(text, 100)),
        part => Ok(part),
    }
}

fn percent(text: &str, marks: Marks, most: i128) -> Result<Option<Fraction>, Fault> {
    let digits = text.trim().trim_end_matches(is_percent_sign);
    if digits.is_empty() && !text.trim().is_empty() {
        return Err(unreadable(text.trim()));
    }
    let number = number(digits, marks)?;
    match number {
        Some(number) if Fraction::new(most, 1).is_some_and(|most| number.compare(most).is_gt()) => {
            Err(percent_fault(text, most))
        }
        number => Ok(number),
    }
}

fn percent_fault(text: &str, most: i128) -> Fault {
    Fault::new(Code::PercentOutOfRange)
        .with("typed", text.trim())
        .with("least", "0")
        .with("most", most.to_string())
}

fn is_percent_sign(c: char) -> bool {
    matches!(c, '%' | '٪' | '％')
}

/// What came off a price.
#[derive(Clone, Copy, Debug)]
pub enum Discount {
    /// So many percent of it.
    Percent(Fraction),
    /// A sum.
    Sum(Fraction),
}

/// What came off a price: `10 %` is a part of it, `10` a sum.
pub fn discount(text: &str, marks: Marks, no_decimals: bool) -> Result<Option<Discount>, Fault> {
    if text.trim().ends_with(is_percent_sign) {
        return Ok(part_percent(text, marks)?.map(Discount::Percent));
    }
    Ok(price(text, marks, no_decimals)?.map(Discount::Sum))
}

/// A measure: a number or a range, and a unit. The unit in the text wins over the one chosen beside it, and
/// `oz` is a mass only where `kind` says that the bottle is weighed.
///
/// ```
/// use farthing::reading::{Kitchen, Marks, measure};
/// let dashes = measure("2 dashes", "ml", Marks::POINT, Kitchen::Uk, None).unwrap().unwrap();
/// assert_eq!(dashes.unit.code, "dash");
/// ```
pub fn measure(
    text: &str,
    chosen: &str,
    marks: Marks,
    kitchen: Kitchen,
    kind: Option<Kind>,
) -> Result<Option<Measure>, Fault> {
    let Some(text) = filled(text)? else {
        return Ok(None);
    };
    // Beside a mass, "oz" in the text is a mass too.
    let kind = kind.or_else(|| unit(chosen).map(|unit| unit.kind));
    let named = |rest: &str| words::unit_named(rest, kitchen, kind);
    let bare = range::without_or_so(text);
    let (mut range, mut rest) = match range::range(bare.unwrap_or(text), marks) {
        // "a dash" and "dash" are one dash.
        Err(fault) if fault.code() == Code::NumberUnreadable && words::starts_a_unit(text) => {
            (Range::exactly(Fraction::ONE), text)
        }
        read => read?,
    };
    if let Some((unit, most, behind)) = second_number(range, rest, marks, &named)? {
        range = range::from_to(range.best, most, text)?;
        rest = if behind.trim_matches(is_space).is_empty() { unit } else { behind };
    }
    if bare.is_some() {
        range = range::about(range)?;
    }
    more_than_nought(range.best)?;
    if let Some(part) = part_of_named_bottle(range, rest, marks, &named)? {
        return Ok(Some(part));
    }
    let unit = match named(rest)? {
        Some(unit) => unit,
        None => unit(chosen).ok_or_else(|| Fault::new(Code::UnitMissing).with("typed", text))?,
    };
    Ok(Some(Measure { amount: range.best, unit, spread: range.spread }))
}

/// Finds the unit that a text names, if it names one.
type Named<'n> = &'n dyn Fn(&str) -> Result<Option<&'static Unit>, Fault>;

/// The second number of `5 ml to 10 ml` and of `a dash or two`, between the unit of the first and
/// what stands behind; nothing if the two have different units, or there is none.
fn second_number<'t>(
    first: Range,
    rest: &'t str,
    marks: Marks,
    named: Named,
) -> Result<Option<(&'t str, Fraction, &'t str)>, Fault> {
    if first.spread.is_some() {
        return Ok(None);
    }
    let words = rest.char_indices().filter(|(_, c)| is_space(*c) || matches!(c, '-' | '–' | '—'));
    for (at, _) in words {
        let Some((unit, behind)) = rest.split_at_checked(at) else {
            continue;
        };
        let Some(Ok((most, behind))) = range::to(behind).map(|behind| amount(behind, marks)) else {
            continue;
        };
        let (Ok(Some(own)), Ok(other)) = (named(unit), named(behind)) else {
            continue;
        };
        if other.is_none_or(|other| other == own) {
            return Ok(Some((unit, most, behind)));
        }
    }
    Ok(None)
}

/// `most` of `a 200 ml bottle`: the part times what that bottle holds.
fn part_of_named_bottle(
    part: Range,
    rest: &str,
    marks: Marks,
    named: Named,
) -> Result<Option<Measure>, Fault> {
    let Some(bottle) = words::without_bottle(rest) else {
        return Ok(None);
    };
    let Ok((amount, rest)) = amount(bottle, marks) else {
        return Ok(None);
    };
    let Some(unit) = named(rest)? else {
        return Ok(None);
    };
    let Range { best, spread } = part.times(amount)?;
    Ok(Some(Measure { amount: best, unit, spread }))
}

/// The same measure, refused if it is a range: what a bottle holds is one number.
pub fn not_a_range(measure: Option<Measure>) -> Result<Option<Measure>, Fault> {
    match measure {
        Some(Measure { spread: Some(_), .. }) => Err(Fault::new(Code::RangeNotHere)),
        measure => Ok(measure),
    }
}

/// A number that is more than nought.
pub fn positive(text: &str, marks: Marks) -> Result<Option<Fraction>, Fault> {
    number(text, marks)?.map(more_than_nought).transpose()
}

fn more_than_nought(number: Fraction) -> Result<Fraction, Fault> {
    if number.is_nought() { Err(Fault::new(Code::NumberMustBePositive)) } else { Ok(number) }
}

/// The blank without the spaces around it; nothing if it is empty.
fn filled(text: &str) -> Result<Option<&str>, Fault> {
    let text = text.trim_matches(is_space);
    if text.chars().nth(MOST_TYPED).is_some() {
        let start: String = text.chars().take(20).collect();
        return Err(unreadable(&format!("{start}…")));
    }
    Ok((!text.is_empty()).then_some(text))
}

fn unreadable(text: &str) -> Fault {
    Fault::new(Code::NumberUnreadable).with("typed", text)
}
