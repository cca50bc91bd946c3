//! How strong a finished glass is, and how much alcohol is in it.
//!
//! Masses and alcohol add; volumes do not: 60 ml at 40 % and 30 ml of water are 89.87 ml. So each part
//! is weighed by OIML R 22, the masses are added, and the mixture's own density gives its volume and its
//! strength. That holds for water and alcohol; sugar is left out, which moves a finished drink by less
//! than a label may be off.
//!
//! The water that ice adds follows the ratios fitted by D. Arnold (Liquid Intelligence, 2014, p. 123), which
//! hold up to the strengths named below. Built over ice: about 0.24 (the same book, from memory).

use crate::density::{REFERENCE, by_mass, mass_part};
use alloc::vec::Vec;

/// What ice does to a drink.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Method {
    /// Nothing: it is served without.
    #[default]
    None,
    /// Built in the glass, over ice.
    Built,
    /// Stirred.
    Stirred,
    /// Shaken.
    Shaken,
}

/// A part of a drink.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Part {
    /// How much of it.
    pub ml: f64,
    /// Its strength in percent by volume.
    pub percent: f64,
}

/// A drink that is mixed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Mixed {
    /// Its volume.
    pub ml: f64,
    /// Its strength in percent by volume.
    pub percent: f64,
    /// Its strength if volumes added.
    pub naive_percent: f64,
    /// The alcohol in it, in grams.
    pub alcohol_g: f64,
    /// The alcohol in it, in ml at 20 °C.
    pub alcohol_ml: f64,
}

impl Method {
    /// The water taken up by so many parts of a drink of such a strength, in percent. Beyond the strength
    /// at which the fitted curve turns, its highest value is taken.
    ///
    /// ```
    /// use farthing::strength::Method;
    /// assert!((Method::Stirred.water(20.0) - 0.3458).abs() < 1e-9);
    /// ```
    pub fn water(self, percent: f64) -> f64 {
        let curve = |a: f64, b: f64, c: f64| {
            let x = libm::fmin(percent / 100.0, b / (2.0 * a));
            -a * x * x + b * x + c
        };
        match self {
            Method::None => 0.0,
            Method::Built => 0.24,
            Method::Stirred => curve(1.21, 1.246, 0.145),
            Method::Shaken => curve(1.567, 1.742, 0.203),
        }
    }
}

/// Grams of a ml of pure alcohol.
pub fn alcohol_density() -> f64 {
    by_mass(1.0, REFERENCE) / 1000.0
}

/// Mixes parts by mass balance; nothing without a volume.
///
/// ```
/// use farthing::strength::{Part, mixed};
/// let gin = Part { ml: 60.0, percent: 40.0 };
/// let water = Part { ml: 30.0, percent: 0.0 };
/// let drink = mixed(&[gin, water]).unwrap();
/// assert!((drink.percent - 26.7052).abs() < 1e-4 && (drink.ml - 89.8703).abs() < 1e-4);
/// ```
pub fn mixed(parts: &[Part]) -> Option<Mixed> {
    let (mut mass, mut alcohol, mut volume) = (0.0, 0.0, 0.0);
    for part in parts {
        let by = mass_part(part.percent);
        let weighs = part.ml * by_mass(by, REFERENCE) / 1000.0;
        mass += weighs;
        alcohol += weighs * by;
        volume += part.ml;
    }
    if mass <= 0.0 {
        return None;
    }
    let ml = mass / by_mass(alcohol / mass, REFERENCE) * 1000.0;
    let alcohol_ml = alcohol / alcohol_density();
    Some(Mixed {
        ml,
        percent: 100.0 * alcohol_ml / ml,
        naive_percent: 100.0 * alcohol_ml / volume,
        alcohol_g: alcohol,
        alcohol_ml,
    })
}

/// Mixes parts and the water that ice adds, or a known volume of water.
pub fn iced(parts: &[Part], method: Method, known_water_ml: Option<f64>) -> Option<(Mixed, f64)> {
    let before = mixed(parts)?;
    let volume = parts.iter().fold(0.0, |sum, part| sum + part.ml);
    let water = known_water_ml.unwrap_or_else(|| volume * method.water(before.naive_percent));
    let mut all = Vec::from(parts);
    all.push(Part { ml: water, percent: 0.0 });
    Some((mixed(&all)?, water))
}

/// A country's standard drink.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct StandardDrink {
    /// Its code.
    pub code: &'static str,
    /// Grams of alcohol in one, or ml where the law counts those.
    pub size: f64,
    /// Whether `size` is in ml.
    pub is_ml: bool,
}

/// Standard drinks. "Drink" means another amount in almost every country.
///
/// | code | one is | source |
/// |---|---|---|
/// | uk | 10 ml | NHS: a unit is 10 ml, or 8 g rounded |
/// | us | 14 g | NIAAA: 0.6 US fl oz |
/// | ca | 13.45 g | national guideline, from memory |
/// | au | 10 g | national guideline |
/// | nz | 10 g | national guideline |
/// | ie | 10 g | national guideline |
/// | dk | 12 g | national guideline |
/// | at | 20 g | national guideline |
/// | jp | 20 g | national guideline |
pub const STANDARD_DRINKS: &[StandardDrink] = &[
    StandardDrink { code: "uk", size: 10.0, is_ml: true },
    StandardDrink { code: "us", size: 14.0, is_ml: false },
    StandardDrink { code: "ca", size: 13.45, is_ml: false },
    StandardDrink { code: "au", size: 10.0, is_ml: false },
    StandardDrink { code: "nz", size: 10.0, is_ml: false },
    StandardDrink { code: "ie", size: 10.0, is_ml: false },
    StandardDrink { code: "dk", size: 12.0, is_ml: false },
    StandardDrink { code: "at", size: 20.0, is_ml: false },
    StandardDrink { code: "jp", size: 20.0, is_ml: false },
];

impl StandardDrink {
    /// How many of them a glass holds.
    pub fn count(&self, glass: &Mixed) -> f64 {
        (if self.is_ml { glass.alcohol_ml } else { glass.alcohol_g }) / self.size
    }
}
