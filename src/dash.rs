//! Rough measures: how large a dash, a drop or a splash is taken to be, and on whose word.
//!
//! No standard defines any of them: UCUM, UN/CEFACT Recommendation 20 and GNU units know no dash,
//! and published dashes run from 0.15 to 1.23 ml. So each size is an assumption that a person sees
//! and changes, for all bottles or for one.

use crate::measure::Unit;
use crate::number::Fraction;
use crate::spread::Spread;
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
    /// Measured with this bottle.
    Measured,
}

impl Word {
    /// The term of a working that it makes.
    pub fn term(self) -> &'static str {
        match self {
            Word::Assumed => "rough_assumed",
            Word::House => "rough_house",
            Word::Bottle => "rough_bottle",
            Word::Measured => "rough_measured",
        }
    }
}

/// How large a rough measure is, and how sure that is.
#[derive(Clone, Copy, Debug)]
pub struct Size {
    /// Millilitres.
    pub ml: Fraction,
    /// How it may be off.
    pub spread: Option<Spread>,
    /// Whose word it is.
    pub word: Word,
    /// What would make it surer: to `"measure"` it, or to `"repeat"` that; nothing if neither would.
    pub helps: Option<&'static str>,
}

/// An assumed size, in thousandths of a millilitre.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Assumed {
    /// The code of the rough unit.
    pub code: &'static str,
    /// The size that is reckoned with.
    pub size: i64,
    /// The smallest that is published or met with.
    pub least: i64,
    /// The largest.
    pub most: i64,
}

const fn assumed(code: &'static str, size: i64, least: i64, most: i64) -> Assumed {
    Assumed { code, size, least, most }
}

/// The assumed sizes, and between what they may lie.
///
/// | measure | ml | from | to | source |
/// |---|---|---|---|---|
/// | dash | 0.92 | 0.15 | 1.23 | 1/32 US fl oz (0.924 ml), the usual trade convention; measured dasher tops give from 0.15 ml, a kitchen trial up to 1.23 ml |
/// | drop | 0.05 | 0.02 | 0.055 | UCUM `[drp]`, the metric drop of water; USP 1101: 45 to 55 mg; a drop of spirit is less than half of it (20 drops of water or 56 of a tincture to the ml) |
/// | dropper | 1.00 | 0.70 | 1.10 | a filled bar dropper; a maker's note says slightly under 1 ml; from and to: common practice, no source |
/// | bar spoon | 3.70 | 2.50 | 5.00 | 1/8 US fl oz, a vintage bar book; the trade sells 2.5 to 5 ml |
/// | splash | 4.90 | 3.70 | 7.50 | 1 US teaspoon; the same trade table also says 3.7 ml; to: common practice, no source |
/// | rinse | 5.00 | 2.50 | 7.50 | common practice, no source |
/// | drizzle | 5.00 | 2.50 | 7.50 | common practice, no source |
pub const ASSUMED: &[Assumed] = &[
    assumed("dash", 920, 150, 1230),
    assumed("drop", 50, 20, 55),
    assumed("dropper", 1000, 700, 1100),
    assumed("bar_spoon", 3700, 2500, 5000),
    assumed("splash", 4900, 3700, 7500),
    assumed("rinse", 5000, 2500, 7500),
    assumed("drizzle", 5000, 2500, 7500),
];

impl Assumed {
    /// The size, anywhere between its least and its most.
    pub fn size(&self) -> Option<Size> {
        let ml = |thousandths: i64| Fraction::decimal(thousandths.into(), 3);
        let spread = Spread::Even(ml(self.least)?, ml(self.most)?);
        Some(Size {
            ml: ml(self.size)?,
            spread: Some(spread),
            word: Word::Assumed,
            helps: Some("measure"),
        })
    }
}

/// Sizes that a person gave, by the code of the rough unit; nothing for one that could not be read,
/// which then is unknown and not the assumed one.
#[derive(Clone, Debug, Default)]
pub struct Sizes(pub Vec<(&'static str, Option<Size>)>);

impl Sizes {
    fn get(&self, code: &str) -> Option<Option<Size>> {
        self.0.iter().find(|(own, _)| *own == code).map(|(_, size)| *size)
    }
}

/// The size of a rough unit: this bottle's, else the house's, else the assumed one.
pub fn size(unit: &Unit, bottle: &Sizes, house: &Sizes) -> Option<Size> {
    let assumed = || ASSUMED.iter().find(|assumed| assumed.code == unit.code)?.size();
    bottle.get(unit.code).or_else(|| house.get(unit.code)).unwrap_or_else(assumed)
}
