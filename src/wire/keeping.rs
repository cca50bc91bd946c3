//! The cost of a pour at every pace, for one bottle or two, as points to be drawn.

use super::asking::{self, hand};
use super::ranging::Showing;
use super::record::read_text;
use super::records::{Ask, KeepingAsk, KeepingPoint, KeepingReply, Pour as PourRecord, Shown};
use super::replying::shown;
use super::{told, written};
use crate::drink::{Known, Pour};
use crate::keeping::Kept as Keeps;
use crate::money::{UNKNOWN, currency};
use crate::number::{Fraction, Kept};
use crate::problem::{Code, Fault, Problems};
use crate::reading;
use crate::sheet;
use crate::working::{Figure, MONEY, Operand, Working};
use alloc::string::{String, ToString};
use alloc::vec::Vec;

/// Glasses a week that are drawn if a person does not say.
const USUAL_MOST: u32 = 60;

/// The most that are drawn: a busy bar's first drink.
const MOST_A_WEEK: u32 = 500;

/// Bottles that are drawn side by side.
const MOST_BOTTLES: usize = 2;

/// Where a crossing is looked for from: one glass in twenty weeks.
const LEAST_A_WEEK: f64 = 0.05;

/// What a pour costs at every pace: a [`KeepingAsk`] as JSON to a [`KeepingReply`] as JSON.
pub fn keeping(ask: &str) -> String {
    written(&match read_text::<KeepingAsk>(ask) {
        Ok(ask) => replied(ask),
        Err(fault) => KeepingReply { problems: told(vec![fault.at("")]), ..Default::default() },
    })
}

fn replied(ask: KeepingAsk) -> KeepingReply {
    let KeepingAsk { house, bottles, measures, most_a_week } = ask;
    let pours = bottles
        .iter()
        .zip(measures)
        .take(MOST_BOTTLES)
        .map(|(bottle, measure)| PourRecord { bottle: bottle.id.clone(), measure });
    let pours = pours.collect();
    let ask = Ask { house, bottles, pours, specs: Vec::new() };
    let mut problems = Problems::default();
    let sums = asking::sheet_ask(&ask, &mut problems);
    sheet::answer(&sums, &mut problems);
    let marks = hand(&ask.house, &mut Problems::default()).marks;
    let most = reading::whole_number(&most_a_week, marks).and_then(most_pace);
    let most = problems.keep("most_a_week", most).unwrap_or(USUAL_MOST);
    let kept: Vec<Keeps> = sums.pours.iter().filter_map(|line| keeps(&line.what, &sums)).collect();
    if kept.len() < ask.pours.len() || kept.is_empty() {
        return KeepingReply { problems: told(problems.0), ..KeepingReply::default() };
    }
    let currency = currency(&ask.house.currency).unwrap_or(UNKNOWN);
    let showing = Showing::in_full(currency, &ask.bottles);
    // A bottle costs least a pour at the highest pace and most at the lowest.
    let highest = kept.iter().map(|kept| kept.cost_a_pour(1.0)).fold(0.0, libm::fmax);
    let point = |a_week: u32| {
        let costs = kept.iter().map(|kept| kept.cost_a_pour(f64::from(a_week)));
        let (costs, heights) = costs
            .map(|cost| {
                let shown = showing.currency.show_cost(Kept::nearest(cost).unwrap_or_default());
                let height = Kept::nearest(1000.0 * cost / highest).unwrap_or_default().rounded(0);
                let height = u64::try_from(height).unwrap_or_default();
                (Shown { text: shown.text, minor: shown.minor }, height)
            })
            .unzip();
        KeepingPoint { a_week: a_week.into(), costs, heights }
    };
    let crossing = match kept.as_slice() {
        [one, other] => one.crossing(other, LEAST_A_WEEK, f64::from(most)),
        _ => None,
    };
    let cheaper = match kept.as_slice() {
        [one, other] => one.cost_a_pour(LEAST_A_WEEK) > other.cost_a_pour(LEAST_A_WEEK),
        _ => false,
    };
    let top = Kept::nearest(highest).unwrap_or_default();
    let top = Operand::new(top.fraction(), MONEY, "cost_kept");
    KeepingReply {
        points: (1..=most).map(point).collect(),
        crossing: crossing.map(pace_text).unwrap_or_default(),
        cheaper_below: cheaper.into(),
        highest: shown(&Figure::new(top, Working::default()).ok(), showing),
        problems: told(problems.0),
    }
}

fn most_pace(typed: Option<Fraction>) -> Result<u32, Fault> {
    let Some(typed) = typed else {
        return Ok(USUAL_MOST);
    };
    let pace = u32::try_from(typed.parts().0).unwrap_or(u32::MAX);
    if pace > MOST_A_WEEK {
        return Err(Fault::new(Code::TooBig).with("most", MOST_A_WEEK.to_string()));
    }
    Ok(pace)
}

fn keeps(line: &sheet::Line, sums: &sheet::Ask) -> Option<Keeps> {
    let bottle = &sums.bottles.get(line.bottle?)?.what;
    let pour = Pour { bottle, measure: line.measure? };
    let Known { amount, usable, cost } = pour.known(&sums.house).ok()?;
    let gives = usable?.over(amount?).ok()?;
    let holds = gives.rounded_down();
    Some(Keeps {
        cost: cost?.float(),
        // A pour that takes more than a bottle leaves nothing that could spoil.
        holds: u32::try_from(holds.parts().0).ok().filter(|holds| *holds > 0)?,
        gives: gives.float(),
        days: bottle.keeps_days?.map(|days| days.float()),
    })
}

/// A pace to a tenth of a glass a week.
fn pace_text(a_week: f64) -> String {
    Kept::nearest(a_week).unwrap_or_default().to(1).plain_text()
}
