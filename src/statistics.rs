//! Repeated readings: their mean, their spread, and how sure the mean is.
//!
//! Type A evaluation (JCGM 100:2008, 4.2): mean, experimental standard deviation with n − 1, and
//! `s / √n` for the mean. The coverage factor is Student's t for 95.45 % (NIST TN 1297, table B.1), by
//! the finite series of Abramowitz and Stegun 26.7.3 and 26.7.4. Chance is reckoned in floats: none of
//! them touches money.

use libm::{atan, fabs, sqrt};
use num_traits::ToPrimitive;

/// The coverage that a range states: two standard uncertainties of a normal one.
const COVERAGE: f64 = 0.9545;

/// Degrees of freedom from which the factor is 2 to three figures.
const FREE_ENOUGH: u32 = 503;

/// What repeated readings say.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Repeats {
    /// How many there are.
    pub count: usize,
    /// Their mean.
    pub mean: f64,
    /// Their standard deviation; nought for a single one, which says nothing of it.
    pub deviation: f64,
}

impl Repeats {
    /// Takes up readings; nothing if there are none.
    ///
    /// The mean is taken in two passes, so that readings which agree in their first digits keep the last.
    ///
    /// ```
    /// let repeats = farthing::statistics::Repeats::of(&[0.80, 0.84, 0.82]).unwrap();
    /// assert!((repeats.mean - 0.82).abs() < 1e-12 && (repeats.deviation - 0.02).abs() < 1e-12);
    /// ```
    pub fn of(readings: &[f64]) -> Option<Repeats> {
        let first = *readings.first()?;
        let count = float(readings.len());
        // Distances from the first reading are small numbers, exact where readings agree.
        let from_first = |sum: f64, reading: &f64| sum + (reading - first);
        let rough = first + readings.iter().fold(0.0, from_first) / count;
        let rest = readings.iter().fold(0.0, |sum, reading| sum + (reading - rough));
        let mean = rough + rest / count;
        let squares = readings.iter().fold(0.0, |sum, reading| {
            let off = reading - rough;
            sum + off * off
        });
        let correction = rest * rest / count;
        let spread = (squares - correction) / (count - 1.0);
        let deviation = if readings.len() > 1 && spread > 0.0 { sqrt(spread) } else { 0.0 };
        Some(Repeats { count: readings.len(), mean, deviation })
    }

    /// The standard deviation as a part of the mean.
    pub fn relative(&self) -> f64 {
        self.deviation / self.mean
    }

    /// The degrees of freedom.
    pub fn freedom(&self) -> u32 {
        u32::try_from(self.count.saturating_sub(1)).unwrap_or(u32::MAX)
    }

    /// The reading that stands furthest out, if it stands out more than chance lets it
    /// (Grubbs' test at 5 %, two-sided; ISO 5725-2 and NIST/SEMATECH e-Handbook 1.3.5.17.1).
    pub fn outlier(&self, readings: &[f64]) -> Option<usize> {
        if self.count < 3 || self.deviation == 0.0 {
            return None;
        }
        let off = |reading: &f64| fabs(reading - self.mean);
        let mut furthest = (0, 0.0);
        for (place, reading) in readings.iter().enumerate() {
            if off(reading) > furthest.1 {
                furthest = (place, off(reading));
            }
        }
        let count = float(self.count);
        let t = student(1.0 - 0.05 / count, self.freedom().saturating_sub(1));
        let limit = (count - 1.0) / sqrt(count) * sqrt(t * t / (count - 2.0 + t * t));
        (furthest.1 / self.deviation > limit).then_some(furthest.0)
    }
}

/// The coverage factor for 95.45 % with so many degrees of freedom.
pub fn coverage_factor(freedom: u32) -> f64 {
    if freedom >= FREE_ENOUGH { 2.0 } else { student(COVERAGE, freedom) }
}

/// The most degrees of freedom whose coverage factor is not less; nothing if that is 2 to three figures.
pub fn freedom_of(factor: f64) -> Option<u32> {
    let (mut enough, mut too_many) = (1u32, FREE_ENOUGH);
    while enough.saturating_add(1) < too_many {
        let middle = enough.midpoint(too_many);
        if coverage_factor(middle) < factor - 1e-9 {
            too_many = middle;
        } else {
            enough = middle;
        }
    }
    (enough.saturating_add(1) < FREE_ENOUGH).then_some(enough)
}

/// Student's t that holds the middle `part` with so many degrees of freedom, by halving.
pub fn student(part: f64, freedom: u32) -> f64 {
    let (mut low, mut high) = (0.0, 1e6);
    for _ in 0..100 {
        let middle = (low + high) / 2.0;
        if middle_part(middle, freedom.max(1)) < part {
            low = middle;
        } else {
            high = middle;
        }
    }
    (low + high) / 2.0
}

/// The part of Student's distribution between −t and t.
fn middle_part(t: f64, freedom: u32) -> f64 {
    let free = f64::from(freedom);
    let sine = t / sqrt(free + t * t);
    let cosine_squared = free / (free + t * t);
    let odd = freedom % 2 == 1;
    let mut term = if odd { sqrt(cosine_squared) } else { 1.0 };
    let mut sum = if freedom == 1 { 0.0 } else { term };
    let mut step = if odd { 3 } else { 2 };
    while step < freedom {
        let step_float = f64::from(step);
        term *= cosine_squared * (step_float - 1.0) / step_float;
        sum += term;
        step = step.saturating_add(2);
    }
    if odd {
        core::f64::consts::FRAC_2_PI * (atan(t / sqrt(free)) + sine * sum)
    } else {
        sine * sum
    }
}

/// Effective degrees of freedom of parts put together, cut to a whole number: `u⁴ ÷ Σ(uᵢ⁴ ÷ νᵢ)`
/// (Welch and Satterthwaite, JCGM 100:2008, G.4.1). Nothing if no part limits them.
///
/// ```
/// let parts = [(3.0, Some(4)), (4.0, None)];
/// assert_eq!(farthing::statistics::effective_freedom(5.0, parts.into_iter()), Some(30));
/// ```
pub fn effective_freedom(
    standard: f64,
    parts: impl Iterator<Item = (f64, Option<u32>)>,
) -> Option<u32> {
    let limited = parts.fold(0.0, |sum, (moves, freedom)| {
        let part = moves / standard;
        let fourth = part * part * part * part;
        freedom.map_or(sum, |freedom| sum + fourth / f64::from(freedom.max(1)))
    });
    (1.0 / limited + 1e-9).to_u32()
}

/// A count as a float.
pub fn float(count: usize) -> f64 {
    u32::try_from(count).map_or(f64::MAX, f64::from)
}
