//! Measures: the exact units a bar writes, and the names of the rough ones.
//!
//! Exact sizes: GNU units 2.22 `definitions.units` and UCUM, which agree; NIST SP 811 appendix B.8.
//! No standard defines a dash, a splash or a bar spoon: their sizes are assumptions and stand in `dash`.

use crate::number::Fraction;
use crate::spread::Spread;

/// What a measure counts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// Millilitres.
    Volume,
    /// Grams.
    Mass,
    /// Pieces.
    Count,
    /// A part of the bottle itself.
    Bottle,
}

impl Kind {
    /// The kind as it crosses the boundary.
    pub fn text(self) -> &'static str {
        match self {
            Kind::Volume => "volume",
            Kind::Mass => "mass",
            Kind::Count => "count",
            Kind::Bottle => "bottle",
        }
    }

    /// The unit that a kind is reckoned in.
    pub fn base(self) -> &'static str {
        match self {
            Kind::Volume => "ml",
            Kind::Mass => "g",
            Kind::Count => "piece",
            Kind::Bottle => "bottle",
        }
    }
}

/// How large a unit is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Size {
    /// So many ml, g or pieces exactly: digits and how many of them are decimals.
    Exact(i64, u32),
    /// As large as the person says, or as `dash` assumes.
    Rough,
    /// As large as the bottle.
    Bottle,
}

/// A unit.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Unit {
    /// The code that crosses the boundary.
    pub code: &'static str,
    /// What it measures.
    pub kind: Kind,
    /// How large it is, in the base of its kind.
    pub size: Size,
}

impl Unit {
    /// The exact size in ml, g or pieces, if it has one.
    pub fn exact_size(&self) -> Option<Fraction> {
        match self.size {
            Size::Exact(digits, decimals) => Fraction::decimal(digits.into(), decimals),
            Size::Rough | Size::Bottle => None,
        }
    }

    /// Whether it is the base of its kind, so that converting changes nothing.
    pub fn is_base(&self) -> bool {
        self.size == Size::Exact(1, 0)
    }
}

const fn exact(code: &'static str, kind: Kind, digits: i64, decimals: u32) -> Unit {
    Unit { code, kind, size: Size::Exact(digits, decimals) }
}

const fn rough(code: &'static str) -> Unit {
    Unit { code, kind: Kind::Volume, size: Size::Rough }
}

/// Every unit, in the order in which a person is offered them.
pub const UNITS: &[Unit] = &[
    exact("ml", Kind::Volume, 1, 0),
    exact("cl", Kind::Volume, 10, 0),
    exact("dl", Kind::Volume, 100, 0),
    exact("l", Kind::Volume, 1000, 0),
    rough("dash"),
    rough("drop"),
    rough("dropper"),
    rough("bar_spoon"),
    rough("splash"),
    rough("rinse"),
    rough("drizzle"),
    exact("us_fl_oz", Kind::Volume, 295_735_295_625, 10),
    exact("imp_fl_oz", Kind::Volume, 284_130_625, 7),
    exact("us_tsp", Kind::Volume, 492_892_159_375, 11),
    exact("metric_tsp", Kind::Volume, 5, 0),
    exact("us_tbsp", Kind::Volume, 1_478_676_478_125, 11),
    exact("metric_tbsp", Kind::Volume, 15, 0),
    exact("au_tbsp", Kind::Volume, 20, 0),
    exact("us_cup", Kind::Volume, 2_365_882_365, 7),
    exact("metric_cup", Kind::Volume, 250, 0),
    exact("us_gill", Kind::Volume, 11_829_411_825, 8),
    exact("imp_gill", Kind::Volume, 1_420_653_125, 7),
    exact("us_pint", Kind::Volume, 473_176_473, 6),
    exact("imp_pint", Kind::Volume, 56_826_125, 5),
    exact("g", Kind::Mass, 1, 0),
    exact("kg", Kind::Mass, 1000, 0),
    exact("oz", Kind::Mass, 28_349_523_125, 9),
    exact("lb", Kind::Mass, 45_359_237, 5),
    exact("piece", Kind::Count, 1, 0),
    Unit { code: "bottle", kind: Kind::Bottle, size: Size::Bottle },
];

/// The unit of a code.
pub fn unit(code: &str) -> Option<&'static Unit> {
    UNITS.iter().find(|unit| unit.code == code)
}

/// So much of a unit.
#[derive(Clone, Copy, Debug)]
pub struct Measure {
    /// How many.
    pub amount: Fraction,
    /// Of what.
    pub unit: &'static Unit,
    /// How the amount may be off, as it was written: `5-10`, `about 200`, `most of`.
    pub spread: Option<Spread>,
}
