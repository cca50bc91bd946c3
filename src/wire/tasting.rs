//! The blanks of a tasting table, read, and what is known of each offer, written.

use super::asking::{Hand, hand, holds_of, measured, paid_of};
use super::facts::{house_target, selling, target};
use super::ranging::Showing;
use super::record::read_text;
use super::records::{self, OfferReply, OffersAsk, OffersReply};
use super::replying::shown;
use super::{told, written};
use crate::bottle::{Bottle, House};
use crate::money::{UNKNOWN, currency};
use crate::number::Fraction;
use crate::problem::{Code, Fault, Problems};
use crate::reading::{self, Deal};
use crate::tasting::{Wanted, Weighed, ranks, weighed, with_deal};
use alloc::string::{String, ToString};
use alloc::vec::Vec;

/// Offers at one table: more than a person can taste.
pub const MOST_OFFERS: usize = 40;

/// Weighs offers against each other: an [`OffersAsk`] as JSON to an [`OffersReply`] as JSON.
pub fn offers(ask: &str) -> String {
    written(&match read_text::<OffersAsk>(ask) {
        Ok(ask) => replied(&ask),
        Err(fault) => OffersReply { problems: told(vec![fault.at("")]), ..Default::default() },
    })
}

fn replied(ask: &OffersAsk) -> OffersReply {
    let mut problems = Problems::default();
    let hand = hand(&ask.house, &mut problems);
    if ask.offers.len() > MOST_OFFERS {
        let fault = Fault::new(Code::TooManyLines).with("most", MOST_OFFERS.to_string());
        problems.0.push(fault.at("offers"));
        return OffersReply { problems: told(problems.0), ..OffersReply::default() };
    }
    let house = super::asking::house(&ask.house, hand, &mut problems);
    let wanted = wanted(ask, hand, &mut problems);
    let mut all = Vec::new();
    for (index, offer) in ask.offers.iter().enumerate() {
        all.push(weigh(offer, &format!("offers[{index}]"), &wanted, &house, hand, &mut problems));
    }
    let costs: Vec<_> =
        all.iter().map(|(weighed, ..)| weighed.measure.as_ref().map(|cost| cost.value)).collect();
    let showing = Showing::in_full(currency(&ask.house.currency).unwrap_or(UNKNOWN), &[]);
    let offers = all.into_iter().zip(ranks(&costs)).map(|((weighed, paid, buys), rank)| {
        let Weighed { bottle, measure, glass, margin, at_most, fits } = weighed;
        OfferReply {
            bottle: shown(&bottle, showing),
            measure: shown(&measure, showing),
            glass: shown(&glass, showing),
            margin: shown(&margin, showing),
            at_most: shown(&at_most, showing),
            fits,
            rank,
            paid,
            buys,
        }
    });
    OffersReply { offers: offers.collect(), problems: told(problems.0) }
}

fn wanted(ask: &OffersAsk, hand: Hand, problems: &mut Problems) -> Wanted {
    let (marks, no_decimals) = (hand.marks, hand.no_decimals);
    let measure = problems.keep("measure", measured(&ask.measure, hand, None));
    let rest = problems.keep("rest", reading::price(&ask.rest, marks, no_decimals));
    let price = problems.keep("price", reading::price(&ask.price, marks, no_decimals));
    let all = house_target(&ask.house, hand, problems);
    let target = target(&ask.target_percent, "target_percent", all, hand, problems);
    Wanted {
        digits: currency(&ask.house.currency).unwrap_or(UNKNOWN).digits,
        measure: measure.flatten(),
        rest: rest.map(|rest| rest.unwrap_or(Fraction::NOUGHT)),
        selling: selling(&ask.house, hand, problems),
        price: price.flatten(),
        target,
    }
}

fn weigh(
    offer: &records::Offer,
    place: &str,
    wanted: &Wanted,
    house: &House,
    hand: Hand,
    problems: &mut Problems,
) -> (Weighed, Option<records::Paid>, u64) {
    let record = records::Paid {
        price: offer.price.clone(),
        bottles: offer.case.clone(),
        tax: offer.tax.clone(),
        ..records::Paid::default()
    };
    let mut own = Problems::default();
    let paid = paid_of(&record, place, hand, &mut own);
    for problem in &mut own.0 {
        // An offer names its blank otherwise than a bottle does.
        if problem.place.ends_with(".bottles") {
            problem.place = format!("{place}.case");
        }
    }
    problems.0.append(&mut own.0);
    let deal = problems.keep(&format!("{place}.deal"), reading::deal(&offer.deal, hand.marks));
    let strength = reading::strength_percent(&offer.strength, hand.marks);
    problems.keep(&format!("{place}.strength"), strength);
    let holds = holds_of(&offer.holds, "", place, hand, problems);
    let asked = paid.map(|paid| paid.price);
    let with = match (paid, deal) {
        (Some(paid), Some(Some(deal))) => problems.keep(place, with_deal(paid, deal)),
        (paid, Some(None)) => paid,
        _ => None,
    };
    let buys = with.map_or(0, |paid| u64::try_from(paid.bottles.parts().0).unwrap_or(u64::MAX));
    let kept = with.map(|with| records::Paid {
        price: with.price.kept().unwrap_or_default().plain_text().replace('.', hand.mark()),
        bottles: with.bottles.parts().0.to_string(),
        discount: match deal {
            Some(Some(Deal::Off { .. })) => percent_of(&offer.deal),
            _ => String::new(),
        },
        ..record
    });
    let bottle = Bottle { paid: with, holds, ..Bottle::default() };
    let result = problems.keep(&format!("{place}.holds"), weighed(&bottle, asked, wanted, house));
    (result.unwrap_or_default(), kept, buys)
}

/// The part of a deal that says how many percent come off, as it was typed.
fn percent_of(deal: &str) -> String {
    let lower = deal.to_ascii_lowercase();
    let percent = lower.split_once("off").map_or(lower.as_str(), |(percent, _)| percent);
    let number = percent.trim().trim_end_matches(['%', '٪', '％']);
    format!("{} %", number.trim())
}
