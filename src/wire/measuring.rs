//! The blanks of a measured dash, read, and what was measured, written.

use super::asking::{Hand, hand, measured_ml};
use super::ranging::Showing;
use super::record::read_text;
use super::records::{self, Found, MeasureAsk, MeasureReply};
use super::replying::shown;
use super::{counted, told, written};
use crate::density::{COLDEST, WARMEST};
use crate::measuring::{Density, Measured, Measuring, Way};
use crate::money::UNKNOWN;
use crate::number::{Fraction, Kept, MOST_DECIMALS};
use crate::problem::{Code, Fault, Problems};
use crate::reading::{self, Marks};
use crate::spread::Spread;
use crate::statistics::Repeats;
use crate::working::{Figure, Operand, Working};
use alloc::string::{String, ToString};
use alloc::vec::Vec;

/// Measures: a [`MeasureAsk`] as JSON to a [`MeasureReply`] as JSON.
///
/// ```
/// let reply = farthing::wire::measure(r#"{"measuring": {
///     "way": "count", "vessel": {"text": "30 ml"}, "readings": ["32", "33", "31"]
/// }}"#);
/// assert!(reply.contains(r#""found":{"size":"0.9375""#));
/// ```
pub fn measure(ask: &str) -> String {
    written(&match read_text::<MeasureAsk>(ask) {
        Ok(ask) => replied(&ask),
        Err(fault) => MeasureReply { problems: told(vec![fault.at("")]), ..Default::default() },
    })
}

fn replied(ask: &MeasureAsk) -> MeasureReply {
    let mut problems = Problems::default();
    let hand = hand(&ask.house, &mut problems);
    let measured = read(&ask.measuring, hand, &mut problems);
    let mut reply = measured.map(|measured| reply(&measured, &ask.others)).unwrap_or_default();
    reply.problems = told(problems.0);
    reply
}

/// What was measured; nothing if there is no reading yet, or one cannot be read.
fn read(record: &records::Measuring, hand: Hand, problems: &mut Problems) -> Option<Measured> {
    // Every blank is read before any is missed, so that all their problems are told together.
    let way = way(record, hand, problems);
    let mut readings = Vec::new();
    let mut places = Vec::new();
    let mut unread = false;
    for (index, text) in record.readings.iter().enumerate() {
        match problems.keep(&at(&format!("readings[{index}]")), reading::positive(text, hand.marks))
        {
            Some(Some(reading)) => {
                readings.push(reading);
                places.push(index);
            }
            Some(None) => {}
            None => unread = true,
        }
    }
    let measured = Measuring { way: way?, readings };
    let faulty = match measured.way {
        Way::Weigh { density: Density::Weighed { .. }, .. } => "known_weight",
        _ => "readings",
    };
    let mut measured = problems.keep(&at(faulty), measured.measured())?.filter(|_| !unread)?;
    for (reading, remark) in core::mem::take(&mut measured.remarks) {
        let which = reading.and_then(|reading| places.get(reading));
        let blank = which.map_or("readings".into(), |index| format!("readings[{index}]"));
        problems.0.push(remark.at(at(&blank)));
    }
    measured.outlier = measured.outlier.and_then(|reading| places.get(reading).copied());
    Some(measured)
}

/// A blank of the request.
fn at(blank: &str) -> String {
    format!("measuring.{blank}")
}

fn way(record: &records::Measuring, hand: Hand, problems: &mut Problems) -> Option<Way> {
    let number = |problems: &mut Problems| {
        let number = reading::whole_number(&record.number, hand.marks);
        problems.keep(&at("number"), number).map(|number| number.unwrap_or(Fraction::ONE))
    };
    let step = |problems: &mut Problems, else_: Option<Fraction>| {
        problems.keep(&at("step"), reading::positive(&record.step, hand.marks))?.or(else_)
    };
    match record.way.as_str() {
        "count" => {
            let vessel = measured_ml(&record.vessel, hand);
            Some(Way::Count { vessel_ml: problems.keep(&at("vessel"), vessel)?? })
        }
        "weigh" => {
            let (number, step) = (number(problems), step(problems, Some(Fraction::ONE)));
            let density = density(record, hand, problems);
            Some(Way::Weigh { number: number?, step_g: step?, density: density? })
        }
        "read" => {
            let (number, step) = (number(problems), step(problems, Fraction::decimal(1, 1)));
            Some(Way::Read { number: number?, step_ml: step? })
        }
        other => {
            problems.0.push(Fault::new(Code::ChoiceUnknown).with("typed", other).at(at("way")));
            None
        }
    }
}

fn density(record: &records::Measuring, hand: Hand, problems: &mut Problems) -> Option<Density> {
    let volume = problems.keep(&at("known_volume"), measured_ml(&record.known_volume, hand));
    let weight =
        reading::number(&record.known_weight, hand.marks).and_then(|weight| match weight {
            Some(weight) if weight.is_nought() => Err(Fault::new(Code::NumberMustBePositive)),
            weight => Ok(weight),
        });
    let weight = problems.keep(&at("known_weight"), weight);
    let strength = reading::strength_percent(&record.strength, hand.marks);
    let strength = problems.keep(&at("strength"), strength);
    let celsius = celsius(&record.celsius, hand).and_then(|celsius| {
        let degrees = celsius.float();
        if (COLDEST..=WARMEST).contains(&degrees) {
            return Ok(celsius);
        }
        Err(Fault::new(Code::TemperatureOutOfRange)
            .with("typed", &record.celsius)
            .with("least", "-20")
            .with("most", "40"))
    });
    let celsius = problems.keep(&at("celsius"), celsius);
    Some(match (volume?, weight?, strength?, celsius?) {
        (Some(ml), Some(grams), ..) => Density::Weighed { ml, grams },
        (_, _, Some(percent), celsius) => Density::Strength { percent, celsius },
        _ => Density::Unknown,
    })
}

/// Degrees Celsius, which may be below nought.
fn celsius(text: &str, hand: Hand) -> Result<Fraction, Fault> {
    let text = text.trim().trim_end_matches(['C', 'c']).trim_end_matches('°');
    let warm = text.trim_start_matches(['-', '−']);
    let degrees = reading::number(warm, hand.marks)?;
    let degrees = degrees.or(Fraction::new(20, 1)).unwrap_or(Fraction::NOUGHT);
    if warm == text { Ok(degrees) } else { Fraction::NOUGHT.less(degrees) }
}

fn reply(measured: &Measured, others: &[Found]) -> MeasureReply {
    let Spread::Measured(standard, freedom) = measured.spread else {
        return Default::default();
    };
    let ml = |number: Fraction| number.kept().unwrap_or_default().to(MOST_DECIMALS).plain_text();
    let mut sizes = vec![measured.size_ml.float()];
    let of = |found: &Found| reading::number(&found.size, Marks::POINT).ok().flatten();
    sizes.extend(others.iter().filter_map(of).map(|size| size.float()));
    let between = Repeats::of(&sizes).filter(|repeats| repeats.count > 1);
    MeasureReply {
        found: Some(Found {
            size: ml(measured.size_ml),
            standard: ml(standard),
            freedom: if freedom < u32::MAX { freedom.to_string() } else { String::new() },
            more_helps: measured.more > 0,
        }),
        size: shown(&Some(measured.size.clone()), NO_MONEY),
        scatter: ml_figure(measured.scatter_ml),
        more: counted(measured.more),
        outlier: measured.outlier.map(counted),
        density: shown(&measured.density, NO_MONEY),
        between_mean: ml_figure(between.and_then(|all| Kept::nearest(all.mean))),
        between_deviation: ml_figure(between.and_then(|all| Kept::nearest(all.deviation))),
        problems: Vec::new(),
    }
}

/// No figure here is money, nor any bottle another's.
const NO_MONEY: Showing = Showing::in_full(UNKNOWN, &[]);

fn ml_figure(ml: Option<Kept>) -> Option<records::Figure> {
    let operand = Operand::new(ml?.fraction(), "ml", "ml");
    shown(&Figure::new(operand, Working::default()).ok(), NO_MONEY)
}
