//! Exact numbers: fractions of whole numbers, with one named place where a quotient is rounded.
//!
//! A sum multiplies first and divides once. A fraction is exact or refused: where it would need more
//! digits than are kept, the sum is a fault, never a number shortened unseen. Only a figure that is
//! ready is made a decimal, by [`Fraction::kept`].

use crate::problem::{Code, Fault};
use alloc::string::{String, ToString};
use core::cmp::Ordering;
use libm::{fabs, rint};
use num_integer::Integer;
use num_rational::Ratio;
use num_traits::{CheckedAdd, CheckedDiv, CheckedMul, CheckedSub, FromPrimitive, ToPrimitive};

/// Whole digits of a typed number: enough for a case of spirits in the smallest currency,
/// small enough that a price times a measure stays exact.
pub const MOST_WHOLE_DIGITS: u32 = 9;

/// Decimals of a typed number: a price for a thousand straws needs five, so six.
pub const MOST_DECIMALS: u32 = 6;

/// Decimals that a figure keeps: a drop of the cheapest syrup still has seven figures. The lines of a
/// glass are kept so before they are added, so they sum to the glass exactly.
pub const KEPT_DECIMALS: u32 = 12;

const KEPT_UNITS: i128 = 10i128.pow(KEPT_DECIMALS);

/// An exact fraction.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Fraction(Ratio<i128>);

/// A decimal with [`KEPT_DECIMALS`] decimals: what a figure is once it is ready.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub struct Kept {
    /// How many billionths of a thousandth it is.
    units: i128,
}

impl Fraction {
    /// Nought.
    pub const NOUGHT: Fraction = Fraction(Ratio::new_raw(0, 1));
    /// One.
    pub const ONE: Fraction = Fraction(Ratio::new_raw(1, 1));
    /// The hundred of per cent.
    pub const HUNDRED: Fraction = Fraction(Ratio::new_raw(100, 1));

    /// `top` over `bottom`; nothing if `bottom` is not more than nought.
    pub fn new(top: i128, bottom: i128) -> Option<Self> {
        (bottom > 0).then(|| Fraction(Ratio::new(top, bottom)))
    }

    /// Digits of which the last so many are decimals: 1850 with two is 18.50.
    pub fn decimal(digits: i128, decimals: u32) -> Option<Self> {
        Fraction::new(digits, 10i128.checked_pow(decimals)?)
    }

    /// What stands above and below the line, in lowest terms.
    pub fn parts(&self) -> (i128, i128) {
        (*self.0.numer(), *self.0.denom())
    }

    /// Whether it is nought.
    pub fn is_nought(&self) -> bool {
        *self.0.numer() == 0
    }

    /// Whether it is a whole number.
    pub fn is_whole(&self) -> bool {
        *self.0.denom() == 1
    }

    /// The exact product.
    #[inline(never)]
    pub fn times(self, by: Fraction) -> Result<Fraction, Fault> {
        exact(self.0.checked_mul(&by.0))
    }

    /// The exact quotient. Dividing by nought is refused.
    #[inline(never)]
    pub fn over(self, by: Fraction) -> Result<Fraction, Fault> {
        if by.is_nought() {
            return Err(Fault::new(Code::NumberMustBePositive));
        }
        exact(self.0.checked_div(&by.0))
    }

    /// The exact sum.
    #[inline(never)]
    pub fn plus(self, and: Fraction) -> Result<Fraction, Fault> {
        exact(self.0.checked_add(&and.0))
    }

    /// The exact difference.
    #[inline(never)]
    pub fn less(self, by: Fraction) -> Result<Fraction, Fault> {
        exact(self.0.checked_sub(&by.0))
    }

    /// Which of two is larger.
    #[inline(never)]
    pub fn compare(self, with: Fraction) -> Ordering {
        self.0.cmp(&with.0)
    }

    /// The decimal that a figure keeps: the one division, half away from nought.
    #[inline(never)]
    pub fn kept(&self) -> Result<Kept, Fault> {
        let (top, bottom) = self.parts();
        let units = match top.checked_mul(KEPT_UNITS) {
            Some(top) => divided(top, bottom),
            None => long_divided(top, bottom),
        };
        Ok(Kept { units: units.ok_or_else(too_long)? })
    }

    /// As a float, for physics and chance. None of it flows back into money unseen.
    pub fn float(&self) -> f64 {
        let (top, bottom) = self.parts();
        top.to_f64().unwrap_or_default() / bottom.to_f64().unwrap_or(1.0)
    }

    /// The whole number at or below it.
    #[inline(never)]
    pub fn rounded_down(&self) -> Fraction {
        let (top, bottom) = self.parts();
        Fraction(Ratio::from_integer(Integer::div_floor(&top, &bottom)))
    }

    /// The whole number at or above it.
    pub fn rounded_up(&self) -> Fraction {
        let (top, bottom) = self.parts();
        Fraction(Ratio::from_integer(Integer::div_ceil(&top, &bottom)))
    }
}

impl Kept {
    /// Nought.
    pub const NOUGHT: Kept = Kept { units: 0 };

    /// The decimal nearest to a float: the named place where chance becomes a number again.
    /// Nothing if it is no number or too large.
    pub fn nearest(float: f64) -> Option<Kept> {
        let units = float * KEPT_UNITS.to_f64()?;
        (fabs(units) < 1e30).then(|| i128::from_f64(rint(units)))?.map(|units| Kept { units })
    }

    /// The same number as a fraction.
    pub fn fraction(self) -> Fraction {
        Fraction(Ratio::new(self.units, KEPT_UNITS))
    }

    /// Rounded to so many decimals, half away from nought, as a whole number of the last one.
    pub fn rounded(self, decimals: u32) -> i128 {
        let units = 10i128.saturating_pow(KEPT_DECIMALS.saturating_sub(decimals));
        divided(self.units, units).unwrap_or_default()
    }

    /// Rounded to so many decimals, half away from nought.
    pub fn to(self, decimals: u32) -> Kept {
        let unit = 10i128.saturating_pow(KEPT_DECIMALS.saturating_sub(decimals));
        Kept { units: self.rounded(decimals).saturating_mul(unit) }
    }

    /// How many decimals show so many figures of it.
    pub fn decimals_for(self, figures: u32) -> u32 {
        if self.units == 0 {
            return 0;
        }
        let digits = self.units.unsigned_abs().ilog10();
        KEPT_DECIMALS
            .saturating_add(figures)
            .saturating_sub(digits.saturating_add(1))
            .min(KEPT_DECIMALS)
    }

    /// With exactly so many decimals, rounded half away from nought: `18.50`.
    pub fn text(self, decimals: u32) -> String {
        decimal_text(self.rounded(decimals), decimals)
    }

    /// With as many decimals as it has: `18.5`.
    pub fn plain_text(self) -> String {
        self.text(self.decimals())
    }

    /// How many decimals it has, trailing noughts left out.
    pub fn decimals(self) -> u32 {
        let mut decimals = KEPT_DECIMALS;
        while decimals > 0 && self.rounded(decimals).checked_rem(10) == Some(0) {
            decimals = decimals.saturating_sub(1);
        }
        decimals
    }
}

/// Digits of which the last so many are decimals, as text. Nought never carries a minus.
pub fn decimal_text(digits: i128, decimals: u32) -> String {
    let sign = if digits < 0 { "-" } else { "" };
    let places = usize::try_from(decimals).unwrap_or_default();
    let padded = format!("{:0>1$}", digits.unsigned_abs().to_string(), places.saturating_add(1));
    let (whole, part) =
        padded.split_at_checked(padded.len().saturating_sub(places)).unwrap_or_default();
    let mark = if decimals == 0 { "" } else { "." };
    format!("{sign}{whole}{mark}{part}")
}

/// A quotient as a whole number, half away from nought, as revenue offices round.
fn divided(top: i128, bottom: i128) -> Option<i128> {
    let (whole, rest) = (top.checked_div(bottom)?, top.checked_rem(bottom)?);
    let away = rest.unsigned_abs() >= bottom.unsigned_abs().checked_sub(rest.unsigned_abs())?;
    if away { whole.checked_add(top.signum()) } else { Some(whole) }
}

/// The units of a kept quotient, digit by digit, for what is too long to be multiplied at once.
fn long_divided(top: i128, bottom: i128) -> Option<i128> {
    let (mut units, mut rest) = (top.checked_div(bottom)?, top.checked_rem(bottom)?);
    for _ in 1..KEPT_DECIMALS {
        rest = rest.checked_mul(10)?;
        units = units.checked_mul(10)?.checked_add(rest.checked_div(bottom)?)?;
        rest = rest.checked_rem(bottom)?;
    }
    units.checked_mul(10)?.checked_add(divided(rest.checked_mul(10)?, bottom)?)
}

fn exact(ratio: Option<Ratio<i128>>) -> Result<Fraction, Fault> {
    ratio.map(Fraction).ok_or_else(too_long)
}

fn too_long() -> Fault {
    Fault::new(Code::FiguresTooLong)
}
