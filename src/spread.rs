//! How far a number may be off, and how that is spread.
//!
//! A range as typed is equally likely across it (rectangular: half-width ÷ √3); "about" is likeliest in
//! the middle (triangular: half-width ÷ √6); what was measured has a standard uncertainty and degrees of
//! freedom. JCGM 100:2008, 4.3.7 and 4.3.9.

use crate::number::{Fraction, Kept};
use crate::statistics::coverage_factor;
use libm::sqrt;

/// How a number may be off.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Spread {
    /// Anywhere between the two, equally likely.
    Even(Fraction, Fraction),
    /// Between the two, likeliest in the middle.
    Middling(Fraction, Fraction),
    /// Around the number, by a standard uncertainty with so many degrees of freedom.
    Measured(Fraction, u32),
}

impl Spread {
    /// The least and the most that the number can be; nothing where it has no such ends.
    pub fn ends(&self) -> Option<(Fraction, Fraction)> {
        match self {
            Spread::Even(least, most) | Spread::Middling(least, most) => Some((*least, *most)),
            Spread::Measured(..) => None,
        }
    }

    /// The mean of what the number may be. `best` is what is reckoned with, which may stand elsewhere.
    pub fn middle(&self, best: Fraction) -> f64 {
        self.ends().map_or(best.float(), |(least, most)| (least.float() + most.float()) / 2.0)
    }

    /// The standard uncertainty.
    ///
    /// ```
    /// use farthing::{number::Fraction, spread::Spread};
    /// let five_to_ten = Spread::Even(Fraction::new(5, 1).unwrap(), Fraction::new(10, 1).unwrap());
    /// assert!((five_to_ten.standard() - 2.5 / 3f64.sqrt()).abs() < 1e-12);
    /// ```
    pub fn standard(&self) -> f64 {
        match self {
            Spread::Even(least, most) => (most.float() - least.float()) / sqrt(12.0),
            Spread::Middling(least, most) => (most.float() - least.float()) / sqrt(24.0),
            Spread::Measured(standard, _) => standard.float(),
        }
    }

    /// How many standard uncertainties it goes to either side, or holds 95 % of it.
    pub fn furthest(&self) -> f64 {
        match self {
            Spread::Even(..) => sqrt(3.0),
            Spread::Middling(..) => sqrt(6.0),
            Spread::Measured(_, freedom) => coverage_factor(*freedom),
        }
    }

    /// Degrees of freedom; nothing where they do not limit what is known.
    pub fn freedom(&self) -> Option<u32> {
        match self {
            Spread::Measured(_, freedom) => Some(*freedom),
            Spread::Even(..) | Spread::Middling(..) => None,
        }
    }

    /// Between what it is told to lie: its ends, or where 95 % of it lies, which never is below nought.
    pub fn told(&self, best: Fraction) -> Option<(Kept, Kept)> {
        match self {
            Spread::Measured(standard, freedom) => {
                let half = coverage_factor(*freedom) * standard.float();
                let least = libm::fmax(best.float() - half, 0.0);
                Some((Kept::nearest(least)?, Kept::nearest(best.float() + half)?))
            }
            Spread::Even(least, most) | Spread::Middling(least, most) => {
                Some((least.kept().ok()?, most.kept().ok()?))
            }
        }
    }

    /// As it crosses the boundary.
    pub fn text(&self) -> &'static str {
        match self {
            Spread::Even(..) => "even",
            Spread::Middling(..) => "middling",
            Spread::Measured(..) => "measured",
        }
    }
}
