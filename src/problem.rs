//! What cannot be read or reckoned: a stable code, a place, and the values a sentence needs.
//!
//! The sentence itself is written once, on the page. Here a problem prints its code, place and values.

use alloc::boxed::Box;
use alloc::string::String;
use alloc::vec::Vec;
use core::fmt;

macro_rules! codes {
    ($($(#[$doc:meta])* $name:ident = $text:literal,)*) => {
        /// What is wrong, as a stable code.
        #[derive(Clone, Copy, Debug, PartialEq, Eq)]
        pub enum Code { $($(#[$doc])* $name,)* }

        impl Code {
            /// Every code, so that the page's sentences can be checked against them.
            pub const ALL: &'static [Code] = &[$(Code::$name,)*];

            /// The code as it crosses the boundary.
            pub fn text(self) -> &'static str {
                match self { $(Code::$name => $text,)* }
            }
        }
    };
}

codes! {
    /// The text is not a number.
    NumberUnreadable = "number_unreadable",
    /// The text could be one of two numbers, such as `1,250`.
    NumberAmbiguous = "number_ambiguous",
    /// More decimals than are read.
    NumberTooLong = "number_too_long",
    /// A number below nought.
    NumberNegative = "number_negative",
    /// Nought, where there must be something.
    NumberMustBePositive = "number_must_be_positive",
    /// A fraction over nought.
    NumberZeroBelow = "number_zero_below",
    /// Larger than is read.
    TooBig = "too_big",
    /// Not a whole number, where only one makes sense.
    WholeNumberNeeded = "whole_number_needed",
    /// A range whose first number is the larger.
    RangeBackwards = "range_backwards",
    /// A range where one number is wanted.
    RangeNotHere = "range_not_here",
    /// One reading only, which says nothing of the spread.
    OneReading = "one_reading",
    /// Readings that are all equal: the step of the scale hides their spread.
    ReadingsEqual = "readings_equal",
    /// A weight lighter than the scale's step.
    BelowStep = "below_step",
    /// A density that no drink has.
    DensityOutOfRange = "density_out_of_range",
    /// More readings than are taken up.
    TooManyReadings = "too_many_readings",
    /// A temperature outside what the formula holds for.
    TemperatureOutOfRange = "temperature_out_of_range",
    /// A number without a unit.
    UnitMissing = "unit_missing",
    /// A word that names no unit.
    UnitUnknown = "unit_unknown",
    /// What a bottle holds, written in a unit that says nothing: a dash, a part of itself.
    HoldsUnit = "holds_unit",
    /// A measure of one kind, a bottle of another: 2 ml of limes counted in pieces.
    KindMismatch = "kind_mismatch",
    /// A percentage outside its bounds.
    PercentOutOfRange = "percent_out_of_range",
    /// More taken off than was asked.
    DiscountOverPrice = "discount_over_price",
    /// A currency that ISO 4217 does not list.
    CurrencyUnknown = "currency_unknown",
    /// A choice that is none of those offered.
    ChoiceUnknown = "choice_unknown",
    /// A bottle that the request does not hold.
    BottleUnknown = "bottle_unknown",
    /// A rough measure whose size is no volume.
    RoughMustBeVolume = "rough_must_be_volume",
    /// A name longer than is kept.
    NameTooLong = "name_too_long",
    /// More lines than a spec may have.
    TooManyLines = "too_many_lines",
    /// More bottles than the shelf holds.
    TooManyBottles = "too_many_bottles",
    /// More specs than the shelf holds.
    TooManySpecs = "too_many_specs",
    /// A sum that needs more digits than are kept exactly.
    FiguresTooLong = "figures_too_long",
    /// Parts of a drink, whose size is not told.
    PartsNeedSize = "parts_need_size",
    /// A price on somebody's page that does not say how much for what.
    PriceUnreadable = "price_unreadable",
    /// A line of a recipe that does not say how much.
    MeasureMissing = "measure_missing",
    /// More text or lines than a recipe has.
    RecipeTooLong = "recipe_too_long",
    /// A recipe's data that are damaged, or hold no recipe.
    RecipeUnreadable = "recipe_unreadable",
    /// A link that is not one of ours, or is damaged.
    LinkUnreadable = "link_unreadable",
    /// A link made by a newer version.
    LinkNewer = "link_newer",
    /// More than a link can carry.
    LinkTooLong = "link_too_long",
    /// A link that holds, but is longer than some who pass it on let through.
    LinkLong = "link_long",
    /// A request that is not of the agreed form.
    RequestUnreadable = "request_unreadable",
    /// The device refuses to keep anything.
    StorageRefused = "storage_refused",
    /// The device has no room left.
    StorageFull = "storage_full",
    /// A kept record that could not be read was set aside.
    RecordSetAside = "record_set_aside",
    /// A kept record was written by a newer version.
    RecordNewer = "record_newer",
    /// A file that is not one of ours, or is damaged.
    FileUnreadable = "file_unreadable",
    /// A file written by a newer version.
    FileNewer = "file_newer",
    /// A file larger than is read.
    FileTooLarge = "file_too_large",
}

/// What is wrong, before it is known where.
///
/// It is a box, because every sum may fail and hands its fault up through many callers.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Fault(Box<Inner>);

#[derive(Clone, Debug, PartialEq, Eq)]
struct Inner {
    code: Code,
    values: Vec<(&'static str, String)>,
}

impl Fault {
    /// A fault that needs no values.
    #[inline(never)]
    pub fn new(code: Code) -> Self {
        Fault(Box::new(Inner { code, values: Vec::new() }))
    }

    /// The same fault with one more value for its sentence, or another under the same name.
    pub fn with(self, name: &'static str, value: impl Into<String>) -> Self {
        self.with_value(name, value.into())
    }

    #[inline(never)]
    fn with_value(mut self, name: &'static str, value: String) -> Self {
        self.0.values.retain(|(own, _)| *own != name);
        self.0.values.push((name, value));
        self
    }

    /// What is wrong.
    pub fn code(&self) -> Code {
        self.0.code
    }

    /// What the sentence needs, by name.
    pub fn values(&self) -> &[(&'static str, String)] {
        &self.0.values
    }

    /// The value of a name.
    pub fn value(&self, name: &str) -> Option<&str> {
        self.0.values.iter().find(|(own, _)| *own == name).map(|(_, value)| value.as_str())
    }

    /// The fault at its place.
    pub fn at(self, place: impl Into<String>) -> Problem {
        Problem { place: place.into(), fault: self }
    }
}

/// A fault and the blank it concerns.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Problem {
    /// The blank, such as `bottles[0].paid.price`.
    pub place: String,
    /// What is wrong there.
    pub fault: Fault,
}

impl fmt::Display for Problem {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} at {}", self.fault.code().text(), self.place)?;
        for (name, value) in self.fault.values() {
            write!(f, ", {name} {value}")?;
        }
        Ok(())
    }
}

/// The problems met on the way, in order.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Problems(pub Vec<Problem>);

impl Problems {
    /// The value, or nothing and one more problem at `place`.
    pub fn keep<T>(&mut self, place: &str, read: Result<T, Fault>) -> Option<T> {
        match read {
            Ok(value) => Some(value),
            Err(fault) => {
                self.0.push(fault.at(place));
                None
            }
        }
    }
}
