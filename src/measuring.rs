//! A dash measured: how large this bottle's dash, drop or squeeze is, by what a bar has at hand.
//!
//! Three ways: count how many fill a vessel, weigh some of them, or read them off a marked dropper.
//! The size is exact arithmetic on the mean of the readings. Its doubt is what the readings scatter
//! (Type A) and what the tools may be off: the vessel, the step of a scale or of marks (rectangular, once
//! for setting it to nought and once for reading it), the density.

use crate::density::{self, SEA_LEVEL};
use crate::doubt::{Bears, Doubt, Input, Source, Term};
use crate::number::{Fraction, Kept, MOST_DECIMALS};
use crate::problem::{Code, Fault};
use crate::spread::Spread;
use crate::statistics::{Repeats, coverage_factor, float, freedom_of};
use crate::working::Does::{Over, Plus, Start, Times};
use crate::working::{BARE, Figure, Operand, Working};
use alloc::string::{String, ToString};
use alloc::vec::Vec;
use libm::sqrt;

/// Readings of one bottle: enough for an evening, few enough to type.
pub const MOST_READINGS: usize = 50;

/// More repeats than this nobody does.
const MOST_MORE: usize = 20;

/// A single reading says nothing of the scatter: one dash is taken to differ from the next by so much
/// of it. Common practice, no source.
const SCATTER_OF_ONE: f64 = 0.15;

/// The relative doubt of a density from the strength: ± 5 °C on what expands by 0.0009 a degree.
const DENSITY_BY_STRENGTH: f64 = 0.003;

/// The relative doubt of a density that nothing is known of, taken as 1 g/ml: spirit weighs 0.93, a
/// liqueur up to 1.2. Common practice, no source.
const DENSITY_UNKNOWN: f64 = 0.08;

/// The lightest a drink can be, in g per ml: pure alcohol weighs 0.79.
const LIGHTEST: f64 = 0.75;

/// The heaviest, in g per ml: a thick syrup weighs 1.37, glycerin 1.26.
const HEAVIEST: f64 = 1.5;

/// How the readings were taken.
#[derive(Clone, Copy, Debug)]
pub enum Way {
    /// Each reading is how many fill a vessel of so many ml.
    Count {
        /// What the vessel holds.
        vessel_ml: Fraction,
    },
    /// Each reading is what `number` of them weigh in grams.
    Weigh {
        /// How many are weighed together.
        number: Fraction,
        /// The step of the scale in grams.
        step_g: Fraction,
        /// What is known of the density.
        density: Density,
    },
    /// Each reading is what `number` of them fill in ml, read off marks so far apart.
    Read {
        /// How many are read together.
        number: Fraction,
        /// The distance of the marks in ml.
        step_ml: Fraction,
    },
}

/// What is known of the density of what is weighed.
#[derive(Clone, Copy, Debug)]
pub enum Density {
    /// Nothing: it is taken as 1 g/ml.
    Unknown,
    /// The strength in percent by volume, and how warm it is.
    Strength {
        /// Percent by volume.
        percent: Fraction,
        /// Degrees Celsius.
        celsius: Fraction,
    },
    /// What a known volume weighs.
    Weighed {
        /// The volume in ml.
        ml: Fraction,
        /// What it weighs in grams.
        grams: Fraction,
    },
}

/// A rough measure that was measured with one bottle.
#[derive(Clone, Debug)]
pub struct Measuring {
    /// How.
    pub way: Way,
    /// The readings, all of them more than nought.
    pub readings: Vec<Fraction>,
}

/// What was measured.
#[derive(Clone, Debug)]
pub struct Measured {
    /// Millilitres of one.
    pub size_ml: Fraction,
    /// The same with its working and its doubt.
    pub size: Figure,
    /// How the size may be off.
    pub spread: Spread,
    /// How much one reading differs from the next, in ml of one; nothing for a single reading.
    pub scatter_ml: Option<Kept>,
    /// How many more readings would halve the doubt; nought if no number of them would.
    pub more: usize,
    /// The reading that stands out.
    pub outlier: Option<usize>,
    /// What should be said of the readings, although the size holds, and of which one.
    pub remarks: Vec<(Option<usize>, Fault)>,
    /// The density in g per ml.
    pub density: Option<Figure>,
}

impl Measuring {
    /// Reckons the size.
    ///
    /// ```
    /// use farthing::measuring::{Measuring, Way};
    /// use farthing::number::Fraction;
    /// let number = |n| Fraction::new(n, 1).unwrap();
    /// let way = Way::Count { vessel_ml: number(30) };
    /// let counted = Measuring { way, readings: vec![number(32), number(33), number(31)] };
    /// assert_eq!(counted.measured().unwrap().unwrap().size.value.plain_text(), "0.9375");
    /// ```
    pub fn measured(&self) -> Result<Option<Measured>, Fault> {
        if self.readings.len() > MOST_READINGS {
            return Err(Fault::new(Code::TooManyReadings).with("most", MOST_READINGS.to_string()));
        }
        let floats: Vec<f64> = self.readings.iter().map(Fraction::float).collect();
        let Some(repeats) = Repeats::of(&floats) else { return Ok(None) };
        let weight = self.weight()?;
        let mut working = Working::default();
        let size = self.size(weight.as_ref(), &mut working)?;
        let mut figure = Figure::new(size, working)?;
        let causes = self.causes(&repeats, weight.as_ref());
        figure.doubt = doubt(size.number, figure.value, &causes);
        let standard = figure.doubt.as_ref().map_or(0.0, |doubt| doubt.standard);
        let limited = figure.doubt.as_ref().and_then(|doubt| freedom_of(doubt.factor));
        let ml = |relative: f64| Kept::nearest(relative * size.number.float());
        Ok(Some(Measured {
            size_ml: size.number,
            spread: Spread::Measured(
                Kept::nearest(standard).unwrap_or_default().fraction(),
                limited.unwrap_or(u32::MAX),
            ),
            size: figure,
            scatter_ml: if repeats.count > 1 { ml(repeats.relative()) } else { None },
            more: more_repeats(self.scatter(&repeats), &repeats, &causes),
            outlier: repeats.outlier(&floats),
            remarks: self.remarks(&repeats),
            density: weight.and_then(|weight| weight.density),
        }))
    }

    /// The exact size of one.
    fn size(&self, weight: Option<&Weight>, working: &mut Working) -> Result<Operand, Fault> {
        let count = i128::try_from(self.readings.len()).ok();
        let count = count.and_then(|count| Fraction::new(count, 1)).unwrap_or(Fraction::ONE);
        let repeats = Operand::new(count, BARE, "repeats");
        let unit = match self.way {
            Way::Count { .. } => BARE,
            Way::Weigh { .. } => "g",
            Way::Read { .. } => "ml",
        };
        let reading = |reading: &Fraction| (Plus, Operand::new(*reading, unit, "reading"));
        let mut sum: Vec<_> = self.readings.iter().map(reading).collect();
        if let Some(first) = sum.first_mut() {
            first.0 = Start;
        }
        let sum = match sum.as_slice() {
            [(_, only)] => *only,
            several => working.step("readings", unit, several)?,
        };
        let number = |number| (Over, Operand::new(number, BARE, "together"));
        let mut terms = match (self.way, weight) {
            (Way::Count { vessel_ml }, _) => vec![
                (Start, Operand::new(vessel_ml, "ml", "vessel")),
                (Times, repeats),
                (Over, sum),
            ],
            (Way::Weigh { number: together, .. }, Some(weight)) => {
                vec![(Start, sum), (Times, weight.ml_per_gram), number(together), (Over, repeats)]
            }
            (Way::Weigh { number: together, .. } | Way::Read { number: together, .. }, _) => {
                vec![(Start, sum), number(together), (Over, repeats)]
            }
        };
        // What is once is not said.
        terms.retain(|(does, operand)| *does == Start || operand.number != Fraction::ONE);
        working.step("measured_size", "ml", &terms)
    }

    /// Each thing that makes the size unsure, by its relative standard uncertainty.
    fn causes(&self, repeats: &Repeats, weight: Option<&Weight>) -> Vec<Cause> {
        let mut causes = Vec::new();
        let mut cause = |is, relative: f64, freedom| {
            if relative > 0.0 {
                causes.push(Cause { is, relative, freedom });
            }
        };
        if repeats.count > 1 {
            let of_mean = self.scatter(repeats) / sqrt(float(repeats.count));
            cause("scatter", of_mean, Some(repeats.freedom()));
        } else {
            cause("scatter_assumed", self.scatter(repeats), None);
        }
        match self.way {
            Way::Count { vessel_ml } => {
                cause("vessel", vessel_doubt_ml(vessel_ml.float()) / vessel_ml.float(), None);
                // The count stops at the dash that fills it: half a dash either way.
                cause("last_one", 1.0 / sqrt(12.0) / repeats.mean, None);
            }
            Way::Weigh { step_g, .. } => cause("scale", twice(step_g) / repeats.mean, None),
            Way::Read { step_ml, .. } => cause("marks", twice(step_ml) / repeats.mean, None),
        }
        if let Some(weight) = weight {
            cause(weight.is, weight.relative, None);
        }
        causes
    }

    /// How many make one reading: their scatter is what one has, over the root of that.
    fn together(&self, repeats: &Repeats) -> f64 {
        match self.way {
            Way::Count { .. } => repeats.mean,
            Way::Weigh { number, .. } | Way::Read { number, .. } => number.float(),
        }
    }

    /// How much one reading differs from the next, as a part of it.
    fn scatter(&self, repeats: &Repeats) -> f64 {
        let assumed = SCATTER_OF_ONE / sqrt(self.together(repeats));
        // Readings that are equal may still differ within the step that they are read to.
        let hidden = self.step().map_or(0.0, |step| step.float() / sqrt(12.0) / repeats.mean);
        if repeats.count > 1 { libm::fmax(repeats.relative(), hidden) } else { assumed }
    }

    fn step(&self) -> Option<Fraction> {
        match self.way {
            Way::Count { .. } => None,
            Way::Weigh { step_g: step, .. } | Way::Read { step_ml: step, .. } => Some(step),
        }
    }

    fn remarks(&self, repeats: &Repeats) -> Vec<(Option<usize>, Fault)> {
        let mut remarks = Vec::new();
        for (place, reading) in self.readings.iter().enumerate() {
            if self.step().is_some_and(|step| reading.compare(step).is_lt()) {
                remarks.push((Some(place), Fault::new(Code::BelowStep)));
            }
        }
        match repeats.count {
            1 => remarks.push((None, Fault::new(Code::OneReading))),
            _ if repeats.deviation == 0.0 => remarks.push((None, Fault::new(Code::ReadingsEqual))),
            _ => {}
        }
        remarks
    }

    fn weight(&self) -> Result<Option<Weight>, Fault> {
        match self.way {
            Way::Weigh { step_g, density, .. } => density.weight(step_g).map(Some),
            Way::Count { .. } | Way::Read { .. } => Ok(None),
        }
    }
}

/// One thing that makes a size unsure.
struct Cause {
    is: &'static str,
    relative: f64,
    freedom: Option<u32>,
}

/// What a gram stands for.
struct Weight {
    ml_per_gram: Operand,
    is: &'static str,
    relative: f64,
    density: Option<Figure>,
}

impl Density {
    fn weight(self, step_g: Fraction) -> Result<Weight, Fault> {
        match self {
            Density::Unknown => Ok(Weight {
                ml_per_gram: Operand::new(Fraction::ONE, "ml_per_g", "density_assumed"),
                is: "density_assumed",
                relative: DENSITY_UNKNOWN,
                density: None,
            }),
            Density::Strength { percent, celsius } => {
                let density = density::of_spirit(percent.float(), celsius.float());
                let ml = density::ml_per_gram(density, celsius.float(), SEA_LEVEL);
                // A millionth is finer than any strength on a label.
                let ml = Kept::nearest(ml).unwrap_or_default().rounded(MOST_DECIMALS);
                let ml = Fraction::decimal(ml, MOST_DECIMALS).unwrap_or(Fraction::ONE);
                let weighs = Kept::nearest(density / 1000.0).unwrap_or_default();
                let weighs = Operand::new(weighs.fraction(), "g_per_ml", "density");
                Ok(Weight {
                    ml_per_gram: Operand::new(ml, "ml_per_g", "density_by_strength"),
                    is: "density",
                    relative: DENSITY_BY_STRENGTH,
                    density: Some(Figure::new(weighs, Working::default())?),
                })
            }
            Density::Weighed { ml, grams } => {
                let mut working = Working::default();
                let volume = Operand::new(ml, "ml", "known_volume");
                let weight = Operand::new(grams, "g", "known_weight");
                let density =
                    working.step("density", "g_per_ml", &[(Start, weight), (Over, volume)])?;
                if !(LIGHTEST..=HEAVIEST).contains(&density.number.float()) {
                    return Err(Fault::new(Code::DensityOutOfRange)
                        .with("typed", density.number.kept()?.text(2))
                        .with("least", told(LIGHTEST))
                        .with("most", told(HEAVIEST)));
                }
                let vessel = vessel_doubt_ml(ml.float()) / ml.float();
                let scale = twice(step_g) / grams.float();
                Ok(Weight {
                    ml_per_gram: Operand::new(ml.over(grams)?, "ml_per_g", "density_weighed"),
                    is: "density_weighed",
                    relative: sqrt(vessel * vessel + scale * scale),
                    density: Some(Figure::new(density, working)?),
                })
            }
        }
    }
}

/// How much a vessel of so many ml may be off, as a standard uncertainty: a transfer measure under 100 ml
/// may lawfully be 2 ml off, a larger one 3 % (Directive 2014/32/EU, annex X, from memory), and none
/// is trusted to be worse than a fifth. Rectangular.
pub fn vessel_doubt_ml(holds_ml: f64) -> f64 {
    let most_off = if holds_ml < 100.0 { libm::fmin(2.0, holds_ml / 5.0) } else { 0.03 * holds_ml };
    most_off / sqrt(3.0)
}

fn told(float: f64) -> String {
    Kept::nearest(float).unwrap_or_default().plain_text()
}

/// The standard uncertainty of a difference of two readings, each rounded to a step.
fn twice(step: Fraction) -> f64 {
    step.float() * sqrt(2.0 / 12.0)
}

fn doubt(size: Fraction, shown: Kept, causes: &[Cause]) -> Option<Doubt> {
    let input = |cause: &Cause| Input {
        source: Source { is: cause.is, line: None, bottle: None, of: BARE, unit: BARE },
        best: Fraction::ONE,
        spread: Spread::Measured(
            Kept::nearest(cause.relative).unwrap_or_default().fraction(),
            cause.freedom.unwrap_or(u32::MAX),
        ),
        helps: None,
    };
    let inputs: Vec<Input> = causes.iter().map(input).collect();
    let follows = (0..inputs.len()).map(|place| (place, Bears::Times)).collect();
    Doubt::of(&inputs, &[Term { at_best: size, follows, whole: None }], shown)
}

/// How many more readings that scatter alike would halve the range.
fn more_repeats(scatter: f64, repeats: &Repeats, causes: &[Cause]) -> usize {
    let tools = causes.iter().filter(|cause| !cause.is.starts_with("scatter"));
    let tools = tools.fold(0.0, |sum, cause| sum + cause.relative * cause.relative);
    let half = |count: usize| {
        let of_mean = scatter / sqrt(float(count));
        let freedom = u32::try_from(count.saturating_sub(1)).ok().filter(|freedom| *freedom > 0);
        let reach = freedom.map_or(2.0, coverage_factor) * of_mean;
        sqrt(4.0 * tools + reach * reach)
    };
    let now = half(repeats.count);
    (1..=MOST_MORE)
        .find(|more| half(repeats.count.saturating_add(*more)) <= now / 2.0)
        .unwrap_or_default()
}
