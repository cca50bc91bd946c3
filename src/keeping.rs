//! What spoils: the true cost of a pour, where an open bottle only keeps for so many days.
//!
//! A bottle is opened at the first order and keeps for its days. Orders come at random (Poisson) at a
//! pace. From one opened bottle come the first pour and as many of the next as are ordered in time,
//! but no more than it holds: `1 + Σ P(K ≥ j)` for j from 1 to one less than it holds, with K Poisson of
//! pace × days. The cost of a pour is the bottle over that (renewal reward: Ross, Introduction to
//! Probability Models, ch. 7, from memory).

use libm::exp;

/// Pours of one bottle that are counted: a drop out of the largest bottle.
const MOST_POURS: u32 = 100_000;

/// Halvings until a crossing is known to a thousandth of a glass a week.
const HALVINGS: u32 = 60;

/// How many pours one opened bottle gives on the average.
///
/// `holds` is how many whole pours are in it, `a_day` how many are ordered in a day, `days` how long it
/// keeps; nothing means for ever.
///
/// ```
/// use farthing::keeping::pours_per_bottle;
/// // One a day for a bottle of two that keeps one day: the second is sold unless nobody comes.
/// let pours = pours_per_bottle(2, 1.0, Some(1.0));
/// assert!((pours - (2.0 - (-1f64).exp())).abs() < 1e-12);
/// ```
pub fn pours_per_bottle(holds: u32, a_day: f64, days: Option<f64>) -> f64 {
    let Some(days) = days else {
        return f64::from(holds.max(1));
    };
    let holds = holds.clamp(1, MOST_POURS);
    let mean = a_day * days;
    // The Poisson terms of a large mean start below what a float holds: they are then scaled up together.
    let mut scale = -mean;
    let mut term = 1.0;
    let mut below = 0.0;
    let mut pours = 1.0;
    for more in 1..holds {
        below += term;
        pours += 1.0 - below * exp(scale);
        term *= mean / f64::from(more);
        if term > 1e200 {
            term *= 1e-200;
            below *= 1e-200;
            scale += 200.0 * core::f64::consts::LN_10;
        }
        if 1.0 - below * exp(scale) < 1e-15 {
            break;
        }
    }
    pours
}

/// A bottle as it is poured.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Kept {
    /// What it costs.
    pub cost: f64,
    /// How many whole pours are in it.
    pub holds: u32,
    /// How many pours are in it, the last a part of one: what never spoils loses nothing of it.
    pub gives: f64,
    /// How many days it keeps open; nothing means for ever.
    pub days: Option<f64>,
}

impl Kept {
    /// The cost of a pour at so many glasses a week, what is thrown away included.
    pub fn cost_a_pour(&self, a_week: f64) -> f64 {
        match self.days {
            Some(_) => self.cost / pours_per_bottle(self.holds, a_week / 7.0, self.days),
            None => self.cost / self.gives,
        }
    }

    /// The pace at which two cost the same a pour, if one is cheaper at `least` and the other at `most`
    /// glasses a week.
    pub fn crossing(&self, other: &Kept, least: f64, most: f64) -> Option<f64> {
        let dearer = |a_week: f64| self.cost_a_pour(a_week) > other.cost_a_pour(a_week);
        let at_first = dearer(least);
        if at_first == dearer(most) {
            return None;
        }
        let (mut low, mut high) = (least, most);
        for _ in 0..HALVINGS {
            let middle = (low + high) / 2.0;
            if dearer(middle) == at_first {
                low = middle;
            } else {
                high = middle;
            }
        }
        Some((low + high) / 2.0)
    }
}
