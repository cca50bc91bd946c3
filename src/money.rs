//! Money: the currencies of ISO 4217, and how a sum is shown.
//!
//! The table is ours, because browsers disagree: one engine gives eighteen currencies no decimals
//! where the standard gives them two or three. Source: ISO 4217 list one, published 2026-01-01.
//! Entries without a minor unit (metals, funds codes such as `XDR`) are left out: nobody pays a bar in them.

use crate::number::{KEPT_DECIMALS, Kept, decimal_text};
use crate::problem::{Code, Fault};
use alloc::string::{String, ToString};
use alloc::vec::Vec;

/// A currency and the digits of its minor unit.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Currency {
    /// The ISO 4217 code.
    pub code: &'static str,
    /// Decimals of the minor unit: 2 where a hundred of them make one.
    pub digits: u32,
}

/// Stands in for a currency that is not listed, so that every figure still shows: two digits, as most have.
pub const UNKNOWN: Currency = Currency { code: "XXX", digits: 2 };

const NO_DIGITS: &str = "BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX UYI VND VUV XAF XOF XPF";

const TWO_DIGITS: &str = "\
    AED AFN ALL AMD AOA ARS AUD AWG AZN BAM BBD BDT BMD BND BOB BOV BRL BSD BTN BWP BYN BZD CAD CDF \
    CHE CHF CHW CNY COP COU CRC CUP CVE CZK DKK DOP DZD EGP ERN ETB EUR FJD FKP GBP GEL GHS GIP GMD \
    GTQ GYD HKD HNL HTG HUF IDR ILS INR IRR JMD KES KGS KHR KPW KYD KZT LAK LBP LKR LRD LSL MAD MDL \
    MGA MKD MMK MNT MOP MRU MUR MVR MWK MXN MXV MYR MZN NAD NGN NIO NOK NPR NZD PAB PEN PGK PHP PKR \
    PLN QAR RON RSD RUB SAR SBD SCR SDG SEK SGD SHP SLE SOS SRD SSP STN SVC SYP SZL THB TJS TMT TOP \
    TRY TTD TWD TZS UAH USD USN UYU UZS VED VES WST XAD XCD XCG YER ZAR ZMW ZWG";

const THREE_DIGITS: &str = "BHD IQD JOD KWD LYD OMR TND";

const FOUR_DIGITS: &str = "CLF UYW";

/// Every currency, by digits and then by code.
pub fn currencies() -> impl Iterator<Item = Currency> {
    [(NO_DIGITS, 0), (TWO_DIGITS, 2), (THREE_DIGITS, 3), (FOUR_DIGITS, 4)].into_iter().flat_map(
        |(codes, digits)| codes.split_whitespace().map(move |code| Currency { code, digits }),
    )
}

/// The currency of an ISO 4217 code.
///
/// ```
/// assert_eq!(farthing::money::currency("KWD").unwrap().digits, 3);
/// ```
pub fn currency(code: &str) -> Result<Currency, Fault> {
    currencies()
        .find(|currency| currency.code == code)
        .ok_or_else(|| Fault::new(Code::CurrencyUnknown).with("typed", code))
}

/// A figure rounded for display.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Shown {
    /// In the figure's own unit.
    pub text: String,
    /// Money of less than one whole unit, in the minor unit: `"34"` pence, `"0.43"` pence.
    pub minor: Option<String>,
}

/// Figures of a cost that a person acts on: a dash of 0.43p must not read as nought.
const COST_FIGURES: u32 = 2;

/// Figures of a cost of one ml, g or piece: it is multiplied in the head.
const COST_EACH_FIGURES: u32 = 3;

/// Figures of the half-width of a range.
const RANGE_FIGURES: u32 = 2;

/// Figures of a volume or mass.
const AMOUNT_FIGURES: u32 = 3;

/// Figures of a number within a working.
const WORKING_FIGURES: u32 = 6;

/// Decimals beyond the minor unit that a column of costs may take to show its smallest line.
const MOST_EXTRA_DECIMALS: u32 = 2;

impl Currency {
    /// A cost: at least the minor unit, and two figures of what is smaller.
    ///
    /// 0.3404 pounds is 34 pence; 0.0043 pounds is 0.43 pence.
    pub fn show_cost(self, value: Kept) -> Shown {
        self.show_to(value, self.digits.max(value.decimals_for(COST_FIGURES)))
    }

    /// A cost of one ml, g or piece: three figures, without noughts behind the minor unit.
    pub fn show_cost_each(self, value: Kept) -> Shown {
        let decimals = value.decimals_for(COST_EACH_FIGURES).min(value.decimals());
        self.show_to(value, self.digits.max(decimals))
    }

    /// A cost within a range that reaches `half` to either side: two figures of that, but nothing
    /// finer than the minor unit where that is finer already, and whole units where pence say nothing.
    ///
    /// 0.1667 ± 0.055 pounds is 17 pence; 14.32 ± 3.2 is 14.30; 143.27 ± 25 is 143.
    pub fn show_within(self, value: Kept, half: Kept) -> Shown {
        let figures = half.decimals_for(RANGE_FIGURES);
        let coarse = half.rounded(self.digits) != 0;
        let decimals = if coarse { figures.min(self.digits) } else { figures };
        let shown = if decimals == 0 { 0 } else { decimals.max(self.digits) };
        self.show_to(value.to(decimals), shown)
    }

    /// Costs that are read as a column, and their sum: every one at the same decimals, shared out
    /// so that the column adds up to the sum as shown.
    pub fn show_column(self, costs: &[Kept], sum: Kept) -> (Vec<Shown>, Shown) {
        let smallest = costs.iter().filter(|cost| **cost != Kept::NOUGHT).min().copied();
        let most = self.digits.saturating_add(MOST_EXTRA_DECIMALS);
        let decimals = smallest.unwrap_or(sum).decimals_for(1).min(most).max(self.digits);
        let parts = share_out(sum.rounded(decimals), costs)
            .unwrap_or_else(|| costs.iter().map(|cost| cost.rounded(decimals)).collect());
        let shown = parts.into_iter().map(|part| self.show_digits(part, decimals)).collect();
        (shown, self.show_to(sum, decimals))
    }

    /// Money within a working: six figures, and at least the minor unit.
    pub fn show_operand(self, value: Kept) -> String {
        value.text(self.digits.max(plain_decimals(value)))
    }

    fn show_to(self, value: Kept, decimals: u32) -> Shown {
        self.show_digits(value.rounded(decimals), decimals)
    }

    /// Digits of which the last so many are decimals. Moving the mark makes the minor unit.
    fn show_digits(self, digits: i128, decimals: u32) -> Shown {
        let one = 10u128.saturating_pow(decimals);
        let small = self.digits > 0 && digits.unsigned_abs() < one;
        let minor = || decimal_text(digits, decimals.saturating_sub(self.digits));
        Shown { text: decimal_text(digits, decimals), minor: small.then(minor) }
    }
}

/// A volume, mass or count: three figures, whole numbers whole.
pub fn show_amount(value: Kept) -> Shown {
    let decimals = value.decimals_for(AMOUNT_FIGURES);
    Shown { text: trimmed(value, decimals), minor: None }
}

/// A number within a working: six figures, no trailing noughts.
pub fn show_operand(value: Kept) -> String {
    trimmed(value, plain_decimals(value))
}

fn plain_decimals(value: Kept) -> u32 {
    value.decimals_for(WORKING_FIGURES).min(value.decimals())
}

fn trimmed(value: Kept, decimals: u32) -> String {
    let text = value.text(decimals);
    if decimals == 0 { text } else { text.trim_end_matches('0').trim_end_matches('.').to_string() }
}

/// `whole` divided into whole parts of the given weights that add up to `whole`.
///
/// Each part is rounded down, and what is left goes, one at a time, to the parts that lost most
/// (the method of largest remainders; the earlier of two equal ones first).
/// Nothing if the weights do not add up to more than nought.
pub fn share_out(whole: i128, weights: &[Kept]) -> Option<Vec<i128>> {
    let units = |weight: &Kept| weight.rounded(KEPT_DECIMALS);
    let sum = weights.iter().try_fold(0i128, |sum, weight| sum.checked_add(units(weight)))?;
    let mut parts = Vec::new();
    let mut left = whole;
    for weight in weights {
        let exact = whole.checked_mul(units(weight))?;
        let part = exact.checked_div(sum)?;
        left = left.checked_sub(part)?;
        parts.push((part, exact.checked_rem(sum)?));
    }
    while left > 0 {
        let most = parts.iter().map(|(_, lost)| *lost).max()?;
        let part = parts.iter_mut().find(|(_, lost)| *lost == most)?;
        *part = (part.0.checked_add(1)?, 0);
        left = left.checked_sub(1)?;
    }
    Some(parts.into_iter().map(|(part, _)| part).collect())
}
