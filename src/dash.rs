//! Rough measures: how large a dash, a drop or a splash is taken to be, and on whose word.
//!
//! No standard defines any of them: UCUM, UN/CEFACT Recommendation 20 and GNU units know no dash,
//! and published dashes run from 0.15 to 1.23 ml. So each size is an assumption that a person sees
//! and changes, for all bottles or for one.

use crate::measure::Unit;
use crate::number::Fraction;
use alloc::vec::Vec;

/// Whose word a size is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Word {
    /// Ours, from [`ASSUMED`].
    Assumed,
    /// The person's, for all bottles.
    House,
    /// The person's, for this bottle.
    Bottle,
}

/// An assumed size.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Assumed {
    /// The code of the rough unit.
    pub code: &'static str,
    /// Its size in hundredths of a millilitre.
    pub hundredths_ml: i64,
}

/// The assumed sizes.
///
/// | measure | ml | source |
/// |---|---|---|
/// | dash | 0.92 | 1/32 US fl oz (0.924 ml), the usual trade convention |
/// | drop | 0.05 | UCUM `[drp]`, the metric drop of water; a drop of spirit is smaller |
/// | dropper | 1.00 | a filled bar dropper; a maker's note says slightly under 1 ml |
/// | bar spoon | 3.70 | 1/8 US fl oz, a vintage bar book; the trade sells 2.5 to 5 ml |
/// | splash | 4.90 | 1 US teaspoon; the same trade table also says 3.7 ml |
/// | rinse | 5.00 | common practice, no source |
/// | drizzle | 5.00 | common practice, no source |
pub const ASSUMED: &[Assumed] = &[
    Assumed { code: "dash", hundredths_ml: 92 },
    Assumed { code: "drop", hundredths_ml: 5 },
    Assumed { code: "dropper", hundredths_ml: 100 },
    Assumed { code: "bar_spoon", hundredths_ml: 370 },
    Assumed { code: "splash", hundredths_ml: 490 },
    Assumed { code: "rinse", hundredths_ml: 500 },
    Assumed { code: "drizzle", hundredths_ml: 500 },
];

impl Assumed {
    /// The size in millilitres.
    pub fn size_ml(&self) -> Option<Fraction> {
        Fraction::decimal(self.hundredths_ml.into(), 2)
    }
}

/// Sizes that a person gave, in millilitres, by the code of the rough unit; nothing for one that
/// could not be read, which then is unknown and not the assumed one.
#[derive(Clone, Debug, Default)]
pub struct Sizes(pub Vec<(&'static str, Option<Fraction>)>);

impl Sizes {
    fn get(&self, code: &str) -> Option<Option<Fraction>> {
        self.0.iter().find(|(own, _)| *own == code).map(|(_, size)| *size)
    }
}

/// The size of a rough unit in millilitres: this bottle's, else the house's, else the assumed one.
pub fn size_ml(unit: &Unit, bottle: &Sizes, house: &Sizes) -> Option<(Fraction, Word)> {
    if let Some(size) = bottle.get(unit.code) {
        return size.map(|size| (size, Word::Bottle));
    }
    if let Some(size) = house.get(unit.code) {
        return size.map(|size| (size, Word::House));
    }
    let assumed = ASSUMED.iter().find(|assumed| assumed.code == unit.code)?;
    Some((assumed.size_ml()?, Word::Assumed))
}
