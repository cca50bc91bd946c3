//! Prices against published rules and examples: tax in a price, margin, markup, the prices that a
//! person asks; and what may be paid, paid.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::arithmetic_side_effects,
    clippy::as_conversions,
    clippy::string_slice,
    reason = "a test stops at what it did not expect"
)]

mod outside;

use farthing::bottle::{Bottle, Holds, House, Paid, Tax};
use farthing::measure::{Measure, unit};
use farthing::menu::{Glass, Ice, LineFacts, Terms};
use farthing::number::Fraction;
use farthing::price::{Points, SaleTax, Selling};
use farthing::problem::Problems;
use farthing::reading::Deal;
use farthing::sheet::{self, Charge, Line, Placed};
use farthing::strength::Method;
use farthing::tasting::{Wanted, weighed, with_deal};
use farthing::wire;
use outside::replay::{figures, replay, text};
use outside::{check_misprint, check_published, config, exact, sound_reply, value};
use proptest::prelude::*;
use proptest::sample::select;
use serde_json::{Value, json};

/// A house: how tax stands in what it charges, and the rate.
fn house(sale_tax: &str, rate: &str) -> Value {
    json!({"sale_tax": sale_tax, "sale_tax_percent": rate, "kitchen": "us", "tax_percent": "0"})
}

/// What follows from a glass. Each line is priced on the spot: price, contents, measure.
#[track_caller]
fn sold(house: &Value, lines: &[(&str, &str, &str)], price: &str, target: &str) -> Value {
    let line = |(paid, holds, measure): &(&str, &str, &str)| {
        let own = json!({"paid": {"price": paid}, "holds": {"text": holds}});
        json!({"own": own, "measure": {"text": measure}})
    };
    let lines: Vec<Value> = lines.iter().map(line).collect();
    let spec = json!({"id": "s", "lines": lines, "price": price, "target_percent": target});
    let ask = json!({"house": house, "specs": [spec], "in_full": true});
    sound_reply(wire::facts, &ask)["specs"][0].clone()
}

/// The same for something that costs so much.
#[track_caller]
fn costing(house: &Value, cost: &str, price: &str, target: &str) -> Value {
    sold(house, &[(cost, "1 piece", "1 piece")], price, target)
}

#[test]
fn tax_inside_a_price_is_the_vat_fraction_of_it() {
    for (price, rate, tax, net, source) in [
        ("240", "20", "40", "200", "a bookkeeping thread: 1/6"),
        ("210", "5", "10", "200", "a bookkeeping thread: 1/21"),
        ("235", "17.5", "35", "200", "a bookkeeping thread: 7/47"),
        ("123", "23", "23", "100", "computed: 23/123"),
        ("119", "19", "19", "100", "computed: 19/119"),
        ("227", "13.5", "27", "200", "computed: 27/227"),
        ("109", "9", "9", "100", "computed: 9/109"),
        ("9.50", "20", "1.583333", "7.916667", "computed"),
        ("12.00", "20", "2.00", "10.00", "computed"),
        ("7.99", "20", "1.331667", "6.658333", "computed"),
    ] {
        let priced = costing(&house("in", rate), "1", price, "")["priced"].clone();
        check_published(&priced["tax"], tax, source);
        check_published(&priced["net"], net, source);
        assert_eq!(exact(&value(&priced["pays"])), exact(price), "{source}");
        // The same net price with the tax added at the till comes to the same tax and the same bill.
        if !net.contains('.') {
            let added = costing(&house("added", rate), "1", net, "")["priced"].clone();
            check_published(&added["tax"], tax, source);
            check_published(&added["pays"], price, source);
        }
    }
}

/// HMRC VATREC12030: "0.5 of one penny or more, it should be rounded up", and less down.
#[test]
fn half_a_penny_of_tax_is_rounded_up() {
    for (price, tax) in [
        ("1.23", "0.21"), // 0.205: half to even would say 0.20.
        ("2.25", "0.38"), // 0.375.
        ("6.03", "1.01"), // 1.005: a binary float would say 1.00.
        ("6.02", "1.00"), // 1.00333.
        ("6.04", "1.01"), // 1.00667.
    ] {
        let priced = costing(&house("in", "20"), "1", price, "")["priced"].clone();
        assert_eq!(priced["tax"]["shown"], tax, "{price}");
    }
}

#[test]
fn tax_in_the_price_added_or_none() {
    // Computed from a cost of 1.80: net 7.50 keeps 76 % however the tax stands.
    for (tax, price, pays, taxed, trap) in [
        ("in", "9", "9", "1.5", Some("80")),
        ("added", "7.5", "9", "1.5", None),
        ("none", "7.5", "7.5", "0", None),
    ] {
        let facts = costing(&house(tax, "20"), "1.80", price, "76");
        let priced = &facts["priced"];
        for (figure, found) in [
            ("price", price),
            ("pays", pays),
            ("net", "7.5"),
            ("tax", taxed),
            ("keeps", "5.7"),
            ("margin", "76"),
            ("pour_cost", "24"),
            ("markup", "316.666666666667"),
        ] {
            assert_eq!(value(&priced[figure]), found, "{tax} {figure}");
        }
        assert_eq!(priced["trap"]["value"].as_str(), trap, "{tax}");
        assert_eq!(value(&facts["asked"]["price"]), price, "{tax}");
        assert_eq!(value(&facts["may_cost"]), "1.8", "{tax}");
        assert_eq!((&facts["under_target"], &priced["reaches"]), (&json!(false), &json!(true)));
        let penny_less = costing(&house(tax, "20"), "1.81", price, "76");
        assert_eq!(penny_less["under_target"], true);
    }
}

/// A trap: the margin on the price with tax in it. Computed; at 20 % it claims 80 where 76 is kept.
#[test]
fn the_margin_is_of_the_price_without_tax() {
    let facts = costing(&house("in", "20"), "1.80", "", "76");
    check_published(&facts["asked"]["net"], "7.50", "1.80 / 0.24");
    check_published(&facts["asked"]["price"], "9.00", "7.50 × 1.2");
    check_published(&facts["asked"]["trap"], "80", "(9.00 − 1.80) / 9.00");
    check_misprint(&facts["asked"]["margin"], "80", "the trap");
}

/// One who is not registered charges no tax, and the rate in the house changes nothing.
#[test]
fn without_tax_a_rate_means_nothing() {
    let [with, without] = ["20", "0"].map(|rate| costing(&house("none", rate), "2", "8", "75"));
    assert_eq!(with, without);
}

/// Published examples: pour cost, keeps, margin, markup at a price; and the price for a margin.
#[test]
fn published_examples_at_a_price() {
    let none = house("none", "");
    let quiz = [("35", "1 l", "2.5 oz"), ("7.99", "1 l", "0.5 oz"), ("0.15", "1 piece", "1 piece")];
    let quiz = sold(&none, &quiz, "15", "")["priced"].clone();
    check_published(&quiz["pour_cost"], "19.04", "a college quiz: exact");
    check_published(&quiz["pour_cost"], "19", "its solver");
    check_misprint(&quiz["pour_cost"], "19.3", "its key");

    let stew = costing(&none, "1.15", "3.66", "")["priced"].clone();
    check_published(&stew["pour_cost"], "31.421", "an open mathematics course");
    // The course rounds a cost up: 32 %. We round half away, 31 %.
    check_misprint(&stew["pour_cost"], "32", "rounded up");

    let drink = [("0.015", "1 oz", "9 oz"), ("0.10", "1 piece", "1 piece")];
    let drink = sold(&none, &drink, "1.25", "")["priced"].clone();
    check_published(&drink["keeps"], "1.015", "The Book of Yields, ch. 8 p. 98");
    check_published(&drink["markup"], "431.9", "the same: exact");
    check_misprint(&drink["markup"], "532", "the same, which divides the price");

    let toolkit = costing(&none, "40", "100", "")["priced"].clone();
    check_published(&toolkit["margin"], "60", "Fáilte Ireland food toolkit 2012");
    // Turnover 16,000 at 33 %: the course asks what is kept.
    let turnover = costing(&none, "5280", "16000", "")["priced"].clone();
    check_published(&turnover["keeps"], "10720", "an open course, inputs only");
    check_published(&turnover["margin"], "67", "the same");
}

#[test]
fn published_examples_of_a_price_asked() {
    let none = house("none", "");
    for (lines, target, price, source) in [
        (("15", "12 pieces", "12 pieces"), "50", "30.00", "Catering Management p. 260: a bottle"),
        (("15", "12 pieces", "1 piece"), "50", "2.50", "Catering Management p. 260: a drink"),
        (("173.89", "200 pieces", "1 piece"), "75", "3.48", "an open mathematics course, ch. 11"),
        (("13.07", "10 pieces", "1 piece"), "77", "5.6826", "the same course, inputs only"),
        (("2.40", "1 piece", "1 piece"), "60", "6.00", "teaching slides: cost × 100/40"),
    ] {
        let facts = sold(&none, &[lines], "", target);
        check_published(&facts["asked"]["price"], price, source);
        assert_eq!(facts["asked"]["reaches"], true, "{source}");
        assert_eq!(facts["priced"], json!(null), "no price is typed");
    }
}

/// Identities: `markup = 1 ÷ pour cost − 1`.
#[test]
fn margin_and_markup_are_two_words_for_one_price() {
    for (margin, markup) in
        [("75", "300"), ("80", "400"), ("50", "100"), ("66.666667", "200.000003"), ("0", "0")]
    {
        let asked = costing(&house("in", "20"), "2", "", margin)["asked"].clone();
        check_published(&asked["margin"], margin, "computed");
        check_published(&asked["markup"], markup, "computed");
    }
}

#[test]
fn what_cannot_be_divided_is_left_out() {
    let facts = costing(&house("in", "20"), "0", "6", "75");
    assert_eq!(facts["priced"]["markup"], json!(null), "a cost of nought");
    check_published(&facts["priced"]["margin"], "100", "all is kept");
    let given = costing(&house("in", "20"), "2", "0", "75");
    assert_eq!(given["priced"]["margin"], json!(null), "a price of nought");
    assert_eq!(given["priced"]["pour_cost"], json!(null));
    assert_eq!(value(&given["priced"]["keeps"]), "-2");
    assert_eq!(given["under_target"], true);
    let loss = costing(&house("none", ""), "3", "2", "75");
    check_published(&loss["priced"]["margin"], "-50", "sold below its cost");
}

#[test]
fn without_a_wanted_margin_no_price_is_asked() {
    let mut house = house("in", "20");
    house["target_percent"] = "".into();
    let facts = costing(&house, "1.80", "9", "");
    assert_eq!((&facts["asked"], &facts["may_cost"]), (&json!(null), &json!(null)));
    assert_eq!((&facts["ladder"], &facts["under_target"]), (&json!([]), &json!(false)));
    check_published(&facts["priced"]["margin"], "76", "computed");
}

#[test]
fn rungs_stand_around_the_price_asked() {
    let ladder = |currency: &str, points: &str, cost: &str| {
        let mut house = house("none", "");
        house["currency"] = currency.into();
        house["price_points"] = points.into();
        let facts = costing(&house, cost, "", "50");
        let rungs = facts["ladder"].as_array().unwrap().clone();
        let rung = |rung: &Value| value(&rung["price"]);
        rungs.iter().map(rung).collect::<Vec<_>>().join(" ")
    };
    for (currency, points, cost, rungs) in [
        ("GBP", "half", "3.60", "6 6.5 7 7.5 8 8.5"),
        ("GBP", "half", "3.50", "6 6.5 7 7.5 8 8.5"),
        ("GBP", "whole", "3.60", "5 6 7 8 9 10"),
        ("GBP", "ninety_five", "3.60", "4.95 5.95 6.95 7.95 8.95 9.95"),
        ("GBP", "ninety_five", "3.475", "4.95 5.95 6.95 7.95 8.95 9.95"),
        ("GBP", "ninety_five", "0.10", "0.95 1.95 2.95"),
        ("GBP", "fives", "3.60", "5 10 15 20"),
        ("GBP", "half", "0.10", "0.5 1 1.5"),
        ("GBP", "any", "3.60", ""),
        ("KWD", "half", "3.60", "6 6.5 7 7.5 8 8.5"),
        // Where there is no smaller unit, one is a hundred.
        ("JPY", "half", "360", "600 650 700 750 800 850"),
        ("JPY", "whole", "360", "500 600 700 800 900 1000"),
    ] {
        assert_eq!(ladder(currency, points, cost), rungs, "{currency} {points} {cost}");
    }
}

fn hundredths(number: i128) -> Fraction {
    Fraction::decimal(number, 2).unwrap()
}

fn selling() -> impl Strategy<Value = Selling> {
    let taxes = vec![SaleTax::In, SaleTax::Added, SaleTax::Free];
    let rates = select(vec![0, 500, 887, 1350, 1750, 2000, 2300]);
    (select(taxes), rates).prop_map(|(tax, rate)| Selling { tax, rate: hundredths(rate) })
}

fn ml(amount: Fraction) -> Measure {
    Measure { amount, unit: unit("ml").unwrap(), spread: None }
}

fn bottle((pence, holds, wastage): (i128, i128, i128)) -> Bottle {
    Bottle {
        paid: Some(Paid {
            price: hundredths(pence),
            bottles: Fraction::ONE,
            discount: None,
            delivery: None,
            tax: Tax::In,
            tax_percent: None,
        }),
        holds: Some(Holds {
            measure: ml(Fraction::new(holds, 1).unwrap()),
            wastage_percent: Fraction::new(wastage, 1).unwrap(),
        }),
        ..Bottle::default()
    }
}

/// Up to four bottles, and a glass of up to five lines of them.
fn sheet() -> impl Strategy<Value = sheet::Ask> {
    let bottles = prop::collection::vec((100i128..6_000, 100i128..1_500, 0i128..30), 1..5);
    let lines = prop::collection::vec((0usize..4, 5i128..120, 0u8..8), 1..6);
    (bottles, lines, any::<bool>()).prop_map(|(bottles, lines, reclaims_tax)| {
        let placed = |what| Placed { place: String::new(), what };
        let line = |(which, amount, whole): &(usize, i128, u8)| Placed {
            place: String::new(),
            what: Line {
                bottle: Some(which % bottles.len()),
                measure: Some(ml(Fraction::new(*amount, 1).unwrap())),
                charge: if *whole == 0 { Charge::Whole } else { Charge::Poured },
            },
        };
        sheet::Ask {
            house: House { tax_percent: Fraction::new(20, 1), reclaims_tax, ..House::default() },
            specs: vec![lines.iter().map(line).collect()],
            bottles: bottles.iter().copied().map(bottle).map(placed).collect(),
            ..sheet::Ask::default()
        }
    })
}

fn terms() -> impl Strategy<Value = Terms> {
    (selling(), 300i128..3_000, 2_000i128..9_500).prop_map(|(selling, price, target)| Terms {
        selling: Some(selling),
        target: Some(hundredths(target)),
        price: Some(hundredths(price)),
        ice: Some(Ice { method: Method::None, water_ml: None }),
        a_week: None,
    })
}

/// The lines of the glass, and the margin at its price, to eight decimals.
fn looked_at(ask: &sheet::Ask, terms: Terms) -> (Vec<LineFacts>, String) {
    let answer = sheet::answer(ask, &mut Problems::default());
    let glass = Glass { ask, lines: &ask.specs[0], answer: &answer.specs[0], terms };
    let lines = (0..glass.lines.len()).map(|place| glass.line(place).unwrap());
    let priced = glass.priced(terms.price.unwrap()).unwrap().unwrap();
    (lines.collect(), plain(priced.margin.unwrap().value.to(8)))
}

fn plain(kept: farthing::number::Kept) -> String {
    kept.plain_text()
}

proptest! {
    #![proptest_config(config())]

    #[test]
    fn prop_price_then_margin_returns(
        selling in selling(), price in 1i128..100_000, cost in 1i128..100_000,
    ) {
        let (price, cost) = (hundredths(price), hundredths(cost));
        let priced = selling.priced(price, cost).unwrap();
        let net = match selling.tax {
            SaleTax::In => price.times(Fraction::HUNDRED).unwrap()
                .over(Fraction::HUNDRED.plus(selling.rate).unwrap()).unwrap(),
            _ => price,
        };
        let margin = net.less(cost).unwrap().times(Fraction::HUNDRED).unwrap().over(net).unwrap();
        prop_assert_eq!(priced.margin.unwrap().value, margin.kept().unwrap());
        let asked = selling.asked(cost, margin).unwrap();
        prop_assert_eq!(asked.value, price.kept().unwrap());
        let (may, _) = selling.may_cost(price, margin).unwrap();
        prop_assert_eq!(may.number, cost);
    }

    /// Net and tax are what the guest pays; what is kept and the cost are the net price.
    #[test]
    fn prop_a_price_is_made_of_its_parts(
        selling in selling(), price in 1i128..100_000, cost in 0i128..100_000,
    ) {
        let priced = selling.priced(hundredths(price), hundredths(cost)).unwrap();
        let part = |figure: &farthing::working::Figure| figure.value.fraction();
        let net = part(&priced.net).plus(part(&priced.tax)).unwrap();
        prop_assert_eq!(net.kept().unwrap().to(11), priced.pays.value.to(11));
        let kept = part(&priced.keeps).plus(hundredths(cost)).unwrap();
        prop_assert_eq!(kept.kept().unwrap(), priced.net.value);
    }

    #[test]
    fn prop_rungs_enclose_the_price(price in 1i128..100_000, points in select(vec![
        (Points::Whole, 100, 0), (Points::Half, 50, 0), (Points::NinetyFive, 100, 95), (Points::Fives, 500, 0),
    ])) {
        let (points, step, first) = points;
        let around = hundredths(price).kept().unwrap();
        let rungs: Vec<i128> = points.ladder(around, 2).unwrap().iter()
            .map(|rung| rung.kept().unwrap().rounded(2)).collect();
        prop_assert!(rungs.iter().all(|rung| *rung > 0 && (rung - first) % step == 0));
        prop_assert!(rungs.windows(2).all(|two| two[1] - two[0] == step));
        prop_assert_eq!(rungs.iter().filter(|rung| **rung > price).count(), 3);
        let below = (1..=price).filter(|rung| (rung - first).rem_euclid(step) == 0).count();
        prop_assert_eq!(rungs.iter().filter(|rung| **rung <= price).count(), below.min(3));
    }

    /// Whatever may be paid for a bottle or poured of it leaves exactly the margin that is wanted.
    #[test]
    fn prop_what_may_be_paid_when_paid_leaves_the_margin(ask in sheet(), terms in terms()) {
        let target = plain(terms.target.unwrap().kept().unwrap());
        let (lines, _) = looked_at(&ask, terms);
        for (place, line) in lines.iter().enumerate() {
            let own = ask.specs[0][place].what;
            if let Some(most) = &line.bottle_at_most {
                let mut paid = ask.clone();
                let bottle = &mut paid.bottles[own.bottle.unwrap()].what;
                bottle.paid.as_mut().unwrap().price = most.value.fraction();
                // The most that may be paid is what the person bears, the tax got back left out.
                bottle.paid.as_mut().unwrap().tax = Tax::Free;
                prop_assert_eq!(&looked_at(&paid, terms).1, &target, "line {}", place);
            }
            if let Some(most) = &line.measure_at_most {
                let mut poured = ask.clone();
                poured.specs[0][place].what.measure = Some(ml(most.value.fraction()));
                prop_assert_eq!(&looked_at(&poured, terms).1, &target, "line {}", place);
            }
        }
    }

    /// Whatever may be paid for an offer, with its tax and its deal, leaves the margin that is wanted.
    #[test]
    fn prop_an_offer_at_its_most_leaves_the_margin(
        own in (100i128..6_000, 100i128..1_500, 0i128..30),
        tax in select(vec![Tax::In, Tax::Out, Tax::Free]),
        reclaims_tax in any::<bool>(),
        deal in select(vec![None, Some((3, 2)), Some((6, 5)), Some((0, 10)), Some((0, 1))]),
        case in 1i128..13, amount in 5i128..120, rest in 0i128..200, terms in terms(),
    ) {
        let house = House { tax_percent: Fraction::new(20, 1), reclaims_tax, ..House::default() };
        let wanted = Wanted {
            digits: 2,
            measure: Some(ml(Fraction::new(amount, 1).unwrap())),
            rest: Some(hundredths(rest)),
            selling: terms.selling,
            price: terms.price,
            target: terms.target,
        };
        let whole = |number| Fraction::new(number, 1).unwrap();
        let deal = deal.map(|(gets, pays)| match gets {
            0 => Deal::Off { percent: whole(pays), from: whole(6) },
            _ => Deal::For { gets: whole(gets), pays: whole(pays) },
        });
        let offered = |price: Fraction| {
            let mut bottle = bottle(own);
            let paid = bottle.paid.as_mut().unwrap();
            (paid.price, paid.bottles, paid.tax) = (price, whole(case), tax);
            *paid = deal.map_or(*paid, |deal| with_deal(*paid, deal).unwrap());
            weighed(&bottle, Some(price), &wanted, &house).unwrap()
        };
        let found = offered(hundredths(own.0));
        prop_assert_eq!(found.fits, found.at_most.as_ref().is_some_and(|most| {
            most.value.fraction().compare(hundredths(own.0)).is_ge()
        }));
        if let Some(most) = found.at_most {
            let paid = offered(most.value.fraction());
            prop_assert_eq!(plain(paid.margin.unwrap().value.to(8)), plain(terms.target.unwrap().kept().unwrap()));
            prop_assert!(paid.fits);
        }
    }

    /// Leaving out every line in turn saves the whole glass, and every working comes to its figure.
    #[test]
    fn prop_lines_left_out_save_the_glass(
        bottles in prop::collection::vec((1u32..6_000, 30u32..1_500, select(vec!["", "5", "14"])), 3),
        lines in prop::collection::vec(
            (0usize..3, 1u32..90, select(vec!["ml", "dashes", "us tsp", "drops"]), select(vec!["poured", "whole"])), 1..7),
        tax in select(vec!["in", "added", "none"]),
        price in select(vec!["", "6.50", "9", "12.95"]),
        a_week in select(vec!["", "3", "40"]),
        method in select(vec!["none", "built", "stirred", "shaken"]),
    ) {
        let bottles: Vec<Value> = bottles.iter().enumerate().map(|(index, (price, holds, keeps))| json!({
            "id": format!("b{index}"), "strength": "40", "keeps_days": keeps,
            "paid": {"price": format!("{}.{:0>2}", price / 100, price % 100)}, "holds": {"text": format!("{holds} ml")},
        })).collect();
        let lines: Vec<Value> = lines.iter().map(|(which, amount, unit, charge)| json!({
            "bottle": format!("b{which}"), "measure": {"text": format!("{amount} {unit}")}, "charge": charge,
        })).collect();
        let spec = json!({"id": "s", "lines": lines, "price": price, "a_week": a_week, "method": method});
        let ask = json!({"house": house(tax, "13.5"), "bottles": bottles, "specs": [spec, spec], "in_full": true});
        let reply = sound_reply(wire::facts, &ask);
        for figure in figures(&reply) {
            replay(figure);
        }
        let facts = &reply["specs"][1];
        prop_assert_eq!(value(&facts["change"]), "0");
        let cost = exact(text(&facts["cost"], "value"));
        let mut saved = exact("0");
        for line in facts["lines"].as_array().unwrap() {
            let saves = exact(text(&line["saves"], "value"));
            prop_assert_eq!(&saves + exact(text(&line["without"], "value")), cost.clone());
            saved += saves;
        }
        prop_assert_eq!(saved, cost.clone());
        // Of a whole menu only the figures are asked: they are the same.
        let mut brief = ask.clone();
        brief["in_full"] = false.into();
        let brief = sound_reply(wire::facts, &brief)["specs"][1].clone();
        for told in ["missing", "strength/low", "strength/percent/value", "cautions", "allergens", "under_target"] {
            prop_assert_eq!(brief.pointer(&format!("/{told}")), facts.pointer(&format!("/{told}")));
        }
        for figure in ["cost", "change", "may_cost", "cost_kept", "priced/margin", "priced/keeps", "asked/price"] {
            let value = |facts: &Value| facts.pointer(&format!("/{figure}/value")).cloned();
            prop_assert_eq!(value(&brief), value(facts), "{}", figure);
        }
        // What spoils never makes a glass cheaper.
        if facts["cost_kept"].is_object() {
            prop_assert!(exact(text(&facts["cost_kept"], "value")) + exact("0.000000001") >= cost);
        }
    }
}

/// What a person types is the price as it is shown, not its twelve decimals.
#[test]
fn the_price_that_is_asked_is_on_target_as_it_is_shown() {
    let facts = |price: &str| {
        let line = json!({"bottle": "b", "measure": {"text": "1 ml"}});
        let ask = json!({
            "bottles": [{"id": "b", "paid": {"price": "1.8045"}, "holds": {"text": "1 ml"}}],
            "specs": [{"id": "s", "lines": [line], "price": price, "target_percent": "75"}],
        });
        sound_reply(wire::facts, &ask)["specs"][0].clone()
    };
    // 1.8045 / 0.25 x 1.2 = 8.6616
    assert_eq!(facts("8.66")["asked"]["price"]["shown"], "8.66");
    for (price, under) in [("8.67", false), ("8.66", false), ("8.65", true)] {
        let found = facts(price);
        assert_eq!(found["under_target"], json!(under), "{price}");
        assert_eq!(found["priced"]["reaches"], json!(!under), "{price}");
    }
}

/// The minimum price is held against what the guest pays, in pounds only.
#[test]
fn the_minimum_price_is_of_what_the_guest_pays() {
    let cautions = |house: Value| {
        let line = json!({"bottle": "b", "measure": {"text": "25 ml"}});
        let ask = json!({
            "house": house,
            "bottles": [{"id": "b", "paid": {"price": "20"}, "holds": {"text": "700 ml"}, "strength": "40"}],
            "specs": [{"id": "s", "lines": [line], "price": "0.60"}],
        });
        sound_reply(wire::facts, &ask)["specs"][0]["cautions"].clone()
    };
    let told = json!([{"code": "minimum_unit_price", "values": {"least": "0.65"}}]);
    assert_eq!(cautions(json!({})), told, "0.60 for one unit");
    assert_eq!(cautions(json!({"sale_tax": "added"})), json!([]), "0.72 with the tax");
    assert_eq!(cautions(json!({"currency": "EUR"})), json!([]));
}

/// A bottle whose size is not told is poured all the same; what is given away fits.
#[test]
fn what_is_not_told_is_not_nought() {
    let line = |id: &str, measure: &str| json!({"bottle": id, "measure": {"text": measure}});
    let ask = json!({
        "bottles": [{"id": "gin", "strength": "40"}, {"id": "tonic", "holds": {"text": "200 ml"}, "strength": "0"}],
        "specs": [{"id": "s", "lines": [line("gin", "50 ml"), line("tonic", "150 ml")]}],
    });
    let strength = sound_reply(wire::facts, &ask)["specs"][0]["strength"]["naive_percent"].clone();
    assert_eq!(strength["shown"], "10", "50 ml of 40 % in 200 ml, if volumes added");
    let ask = json!({
        "measure": {"text": "50 ml"}, "price": "9.50",
        "offers": [{"id": "o", "price": "0", "holds": {"text": "700 ml"}}],
    });
    assert_eq!(sound_reply(wire::offers, &ask)["offers"][0]["fits"], json!(true));
}
