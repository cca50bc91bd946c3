//! What holds of every request, whatever stands in it: random requests, with a seed that is fixed
//! unless `PROPTEST_RNG_SEED` says otherwise, and 64 of them unless `PROPTEST_CASES` says four times
//! another number.

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

use farthing::wire;
use num_rational::BigRational;
use outside::replay::{figures, replay, text};
use outside::{Function, answer, config, exact, reply, value};
use proptest::prelude::*;
use proptest::sample::select;
use serde_json::{Value, json};

const VOLUMES: [&str; 8] =
    ["ml", "cl", "l", "us fl oz", "imp fl oz", "us tsp", "metric cup", "imp gill"];
const POURED: [&str; 9] =
    ["ml", "cl", "dashes", "drops", "dropper", "bar spoons", "us tsp", "oz", "us tbsp"];
const MASSES: [&str; 2] = ["g", "kg"];
const COUNTS: [&str; 2] = ["piece", "pieces"];

/// A price as it stands on a bill.
fn price() -> impl Strategy<Value = String> {
    (0u32..100_000, 0u32..100).prop_map(|(whole, part)| format!("{whole}.{part:0>2}"))
}

/// An amount as a bar writes it: a decimal, a fraction or a mixed number.
fn amount() -> impl Strategy<Value = String> {
    prop_oneof![
        (1u32..5_000).prop_map(|whole| whole.to_string()),
        (0u32..100, 1u32..1_000).prop_map(|(whole, part)| format!("{whole}.{part:0>3}")),
        (1u32..9, 1u32..16).prop_map(|(top, bottom)| format!("{top}/{bottom}")),
        (1u32..9, select(vec!["½", "⅓", "⅔", "¼", "⅛"])).prop_map(|(n, v)| format!("{n}{v}")),
    ]
}

fn measured(units: &'static [&'static str]) -> impl Strategy<Value = Value> {
    (amount(), select(units)).prop_map(|(amount, unit)| json!({"text": format!("{amount} {unit}")}))
}

fn perhaps(texts: Vec<&'static str>) -> impl Strategy<Value = &'static str> {
    select(texts)
}

/// A bottle without an id, and the measures that suit it.
fn bottle() -> impl Strategy<Value = (Value, Vec<Value>)> {
    let kinds = prop_oneof![
        4 => (measured(&VOLUMES), prop::collection::vec(measured(&POURED), 3)),
        1 => (measured(&MASSES), prop::collection::vec(measured(&MASSES), 3)),
        1 => (measured(&COUNTS), prop::collection::vec(measured(&COUNTS), 3)),
    ];
    let paid = (
        price(),
        perhaps(vec!["", "1", "6", "12", "7"]),
        perhaps(vec!["", "", "10 %", "2.5%", "0", "12.345 %"]),
        perhaps(vec!["", "", "4.95", "1/3"]),
        perhaps(vec!["in", "out", "none"]),
        perhaps(vec!["", "", "0", "13.5", "17.5", "23"]),
    );
    let wastage = perhaps(vec!["", "", "2", "3.75", "29"]);
    (paid, kinds, wastage).prop_map(|(paid, (holds, measures), wastage)| {
        let (price, bottles, discount, delivery, tax, tax_percent) = paid;
        let paid = json!({"price": price, "bottles": bottles, "discount": discount,
            "delivery": delivery, "tax": tax, "tax_percent": tax_percent});
        (json!({"paid": paid, "holds": holds, "wastage_percent": wastage}), measures)
    })
}

/// A sound request: up to four bottles, each with three pours of it, and one glass of them all.
fn request() -> impl Strategy<Value = Value> {
    let house =
        (perhaps(vec!["GBP", "JPY", "KWD", "CLF"]), any::<bool>(), perhaps(vec!["us", "uk"]));
    let charges = prop::collection::vec(perhaps(vec!["poured", "poured", "whole"]), 12);
    (house, prop::collection::vec(bottle(), 1..5), charges).prop_map(|(house, bottles, charges)| {
        let mut ask = json!({"bottles": [], "pours": []});
        ask["house"] = json!({"currency": house.0, "reclaims_tax": house.1, "kitchen": house.2});
        for (index, (bottle, measures)) in bottles.iter().enumerate() {
            let mut bottle = bottle.clone();
            bottle["id"] = format!("b{index}").into();
            for measure in measures {
                let pour = json!({"bottle": bottle["id"], "measure": measure});
                ask["pours"].as_array_mut().unwrap().push(pour);
            }
            ask["bottles"].as_array_mut().unwrap().push(bottle);
        }
        let pours = ask["pours"].as_array().unwrap();
        let lines = pours.iter().zip(charges).map(|(pour, charge)| {
            json!({"bottle": pour["bottle"], "measure": pour["measure"], "charge": charge})
        });
        let lines: Vec<Value> = lines.collect();
        ask["specs"] = json!([{"id": "s", "name": "Lock Keeper", "lines": lines}]);
        ask
    })
}

fn sum<'t>(texts: impl Iterator<Item = &'t str>) -> BigRational {
    texts.map(exact).fold(exact("0"), |sum, number| sum + number)
}

/// The places of every blank of a request, as JSON pointers.
fn blanks(json: &Value, at: &str, found: &mut Vec<String>) {
    match json {
        Value::String(_) => found.push(at.to_string()),
        Value::Object(fields) => {
            fields.iter().for_each(|(key, value)| blanks(value, &format!("{at}/{key}"), found))
        }
        Value::Array(items) => items
            .iter()
            .enumerate()
            .for_each(|(i, value)| blanks(value, &format!("{at}/{i}"), found)),
        _ => {}
    }
}

/// One blank of a request written otherwise.
fn with_blank(ask: &Value, which: usize, write: impl Fn(&str) -> String) -> (String, Value) {
    let (mut ask, mut places) = (ask.clone(), Vec::new());
    blanks(&ask, "", &mut places);
    let place = places[which % places.len()].clone();
    let blank = ask.pointer_mut(&place).unwrap();
    *blank = write(blank.as_str().unwrap()).into();
    (place, ask)
}

/// A number of a reply is an optional minus, digits, and perhaps decimals; nought has no minus.
fn is_number(text: &str) -> bool {
    let bare = text.strip_prefix('-').unwrap_or(text);
    let (whole, part) = bare.split_once('.').unwrap_or((bare, "0"));
    let digits = |text: &str| !text.is_empty() && text.chars().all(|c| c.is_ascii_digit());
    let is_nought = bare.chars().all(|c| matches!(c, '0' | '.'));
    digits(whole) && digits(part) && !(is_nought && text.starts_with('-'))
}

/// Whatever was asked: every figure is a number, and every working comes to its figure.
#[track_caller]
fn is_sound(reply: &Value) {
    for figure in figures(reply) {
        assert!(is_number(text(figure, "value")), "{figure}");
        assert!(is_number(text(figure, "shown")), "{figure}");
        assert!(figure["shown_minor"].as_str().is_none_or(is_number), "{figure}");
        replay(figure);
    }
}

proptest! {
    #![proptest_config(config())]

    /// Nothing that a bar writes is too long, and nothing sound has a problem.
    #[test]
    fn prop_bar_sized_requests_have_every_figure(ask in request()) {
        let reply = answer(&ask);
        prop_assert_eq!(&reply["problems"], &json!([]));
        prop_assert_eq!(&reply["specs"][0]["missing"], 0);
        let pours = reply["pours"].as_array().unwrap();
        prop_assert!(pours.iter().all(|pour| pour["cost"].is_object() && pour["left_over"].is_object()));
    }

    #[test]
    fn prop_every_working_comes_to_its_figure(ask in request()) {
        let reply = answer(&ask);
        prop_assert!(figures(&reply).len() > 10);
        is_sound(&reply);
    }

    /// A link carries all that makes the cost, and the working of it.
    #[test]
    fn prop_a_glass_costs_the_same_out_of_a_link(ask in request()) {
        let link = reply(wire::link, &json!({"house": ask["house"], "bottles": ask["bottles"], "spec": ask["specs"][0]}));
        let sent = &reply(wire::linked, &json!({"fragment": link["link"]}))["sent"];
        let again = answer(&json!({"house": sent["house"], "bottles": sent["bottles"], "specs": [sent["spec"]]}));
        prop_assert_eq!(&again["specs"][0], &answer(&ask)["specs"][0]);
    }

    #[test]
    fn prop_lines_sum_to_the_glass_exactly(ask in request()) {
        let spec = &answer(&ask)["specs"][0];
        let lines = spec["lines"].as_array().unwrap();
        let costs = sum(lines.iter().map(|line| text(&line["cost"], "value")));
        prop_assert_eq!(costs, exact(text(&spec["cost"], "value")));
        // As a person sees them too, up to a glass that costs a thousand million.
        let shown = sum(lines.iter().map(|line| text(&line["cost"], "shown")));
        if exact(text(&spec["cost"], "value")) < exact("1000000000") {
            prop_assert_eq!(shown, exact(text(&spec["cost"], "shown")));
        }
    }

    #[test]
    fn prop_shares_sum_to_a_hundred(ask in request()) {
        let spec = &answer(&ask)["specs"][0];
        let shares = spec["lines"].as_array().unwrap().iter().map(|line| line["share_percent"].as_u64());
        let shares: Option<u64> = shares.sum();
        let costs_something = text(&spec["cost"], "value") != "0";
        prop_assert_eq!(shares, costs_something.then_some(100));
    }

    #[test]
    fn prop_a_bottle_gives_what_it_holds(ask in request()) {
        let reply = answer(&ask);
        for (pour, asked) in reply["pours"].as_array().unwrap().iter().zip(ask["pours"].as_array().unwrap()) {
            let index: usize = text(asked, "bottle")[1..].parse().unwrap();
            let bottle = &reply["bottles"][index];
            let (count, amount) = (replay(&pour["count"]), replay(&pour["amount"]));
            let (left, usable) = (replay(&pour["left_over"]), replay(&bottle["usable"]));
            prop_assert!(count.is_integer() && exact("0") <= left && left <= amount);
            // 1/6 ml of a bottle of 1⅓ ml has no working: such a figure is kept, not exact.
            let without = |figure: &Value| figure["working"] == json!([]);
            let kept = without(&pour["amount"]) || without(&bottle["usable"]);
            let off = &count * &amount + left - usable;
            let most = if kept { exact("0.000000000001") * (&count + exact("1")) } else { exact("0") };
            prop_assert!(-&most <= off && off <= most, "{}", off);
            // So all the measures together never cost more than the bottle.
            prop_assert!(replay(&pour["cost"]) * count <= replay(&bottle["cost"]));
        }
    }

    #[test]
    fn prop_a_whole_bottle_costs_no_less_than_what_is_poured(ask in request()) {
        let reply = answer(&ask);
        for line in reply["specs"][0]["lines"].as_array().unwrap() {
            let (cost, other) = (replay(&line["cost"]), replay(&line["other_cost"]));
            let difference = replay(&line["difference"]);
            prop_assert!(difference >= exact("0"));
            prop_assert!(&cost - &other == difference || &other - &cost == difference);
        }
    }

    /// Double what was paid, discount and delivery too, and every cost doubles.
    #[test]
    fn prop_twice_the_price_is_twice_the_cost(ask in request()) {
        let mut twice = ask.clone();
        for bottle in twice["bottles"].as_array_mut().unwrap() {
            for blank in ["price", "delivery"] {
                let typed = text(&bottle["paid"], blank);
                if !typed.is_empty() {
                    let doubled = exact(typed) * exact("2");
                    bottle["paid"][blank] = format!("{}/{}", doubled.numer(), doubled.denom()).into();
                }
            }
        }
        let (once, twice) = (answer(&ask), answer(&twice));
        // A price of a hundred thousand with pence still fits above the line of a typed fraction.
        prop_assert_eq!(&twice["problems"], &json!([]));
        for (once, twice) in once["pours"].as_array().unwrap().iter().zip(twice["pours"].as_array().unwrap()) {
            prop_assert_eq!(replay(&once["cost"]) * exact("2"), replay(&twice["cost"]));
            prop_assert_eq!(&once["count"], &twice["count"]);
        }
    }

    /// The same volume in other units: each figure of the pour is the same to the last decimal.
    #[test]
    fn prop_one_volume_in_many_units(ml in 1u32..5_000, pour in 1u32..5_000, price in price()) {
        let kitchens = [(ml.to_string(), "ml", pour.to_string(), "ml"),
            (format!("{}.{}", ml / 10, ml % 10), "cl", format!("{pour}/10"), "cl"),
            (format!("{ml}/100"), "dl", format!("{pour}/5"), "metric tsp"),
            (format!("{}.{:0>3}", ml / 1_000, ml % 1_000), "l", format!("{pour}/15"), "metric tbsp"),
            (format!("{ml}/250"), "metric cup", format!("{pour}/20"), "au tbsp")];
        let figures = kitchens.map(|(ml, held, pour, poured)| {
            let bottle = outside::bottle(&price, &format!("{ml} {held}"));
            let pour = outside::pour(bottle, &format!("{pour} {poured}"));
            ["cost", "amount", "count", "left_over"].map(|figure| value(&pour[figure]))
        });
        for other in &figures[1..] {
            prop_assert_eq!(other, &figures[0]);
        }
    }

    /// Half of a request is still being typed: the pours of the other bottles stand as they were.
    #[test]
    fn prop_half_a_blank_leaves_other_figures_alone(
        ask in request(), which in 0usize..1_000, length in 0usize..12,
    ) {
        let (place, half) = with_blank(&ask, which, |text| text.chars().take(length).collect());
        let (before, after) = (answer(&ask), answer(&half));
        is_sound(&after);
        if let Some(index) = place.strip_prefix("/bottles/").and_then(|rest| rest.split('/').next()) {
            let own = format!("b{index}");
            for (at, asked) in ask["pours"].as_array().unwrap().iter().enumerate() {
                if asked["bottle"] != own.as_str() {
                    prop_assert_eq!(&before["pours"][at], &after["pours"][at], "{}", &place);
                }
            }
        }
    }

    /// Anything at all may be typed into any blank.
    #[test]
    fn prop_any_text_in_any_blank_is_answered(
        ask in request(), which in 0usize..1_000,
        typed in prop_oneof!["\\PC{0,90}", "[-0-9.,/ '½%£٫٬a-z\u{a0}]{0,16}", any::<String>()],
    ) {
        let (_, ask) = with_blank(&ask, which, |_| typed.clone());
        let reply = answer(&ask);
        is_sound(&reply);
        let pours = reply["pours"].as_array().unwrap().len();
        prop_assert!(pours == ask["pours"].as_array().unwrap().len() || !reply["problems"].as_array().unwrap().is_empty());
    }

    /// Likewise in what follows from the cost, what must be bought, what keeps and what is offered.
    #[test]
    fn prop_any_text_is_answered_by_what_follows(
        ask in request(), which in 0usize..1_000,
        typed in prop_oneof!["\\PC{0,90}", "[-0-9.,/ '½%£٫٬a-z\u{a0}]{0,16}", any::<String>(), Just("999999999".to_string())],
    ) {
        let mut ask = ask;
        for (index, bottle) in ask["bottles"].as_array_mut().unwrap().iter_mut().enumerate() {
            (bottle["strength"], bottle["keeps_days"]) = ("40".into(), ["", "5", "0.001"][index % 3].into());
            bottle["have"] = json!({"text": "1/2", "unit": "bottle"});
        }
        let sold = json!({"price": "9", "target_percent": "75", "method": "shaken", "water": {"text": "", "unit": "ml"}, "a_week": "30"});
        ask["specs"][0]["lines"].as_array_mut().unwrap().truncate(4);
        ask["specs"][0].as_object_mut().unwrap().extend(sold.as_object().unwrap().clone());
        let (house, bottles, specs) = (&ask["house"], &ask["bottles"], &ask["specs"]);
        let offer = json!({"price": "26", "case": "6", "tax": "out", "holds": {"text": "70 cl"}, "deal": "3 for 2", "strength": "40"});
        let asks: [(Function, Value); 4] = [
            (wire::facts, json!({"house": house, "bottles": bottles, "specs": specs, "in_full": true})),
            (wire::shop, json!({"house": house, "bottles": bottles, "specs": specs, "counts": ["40"]})),
            (wire::keeping, json!({"house": house, "bottles": [bottles[0]], "measures": [ask["pours"][0]["measure"]], "most_a_week": "9"})),
            (wire::offers, json!({"house": house, "offers": [offer, offer], "measure": ask["pours"][0]["measure"], "rest": "1",
                "price": "9", "target_percent": "75"})),
        ];
        for (of, ask) in asks {
            let (_, ask) = with_blank(&ask, which, |_| typed.clone());
            is_sound(&reply(of, &ask));
        }
    }

    /// A key that is not agreed is refused, wherever it stands, and nothing is reckoned.
    #[test]
    fn prop_unknown_keys_are_refused(ask in request(), which in 0usize..100, key in "[a-z_]{1,9}x") {
        let mut places = Vec::new();
        objects(&ask, "", &mut places);
        let mut ask = ask;
        ask.pointer_mut(&places[which % places.len()]).unwrap()[&key] = json!("1");
        let reply = answer(&ask);
        prop_assert_eq!(reply["problems"].as_array().unwrap().len(), 1);
        prop_assert_eq!(&reply["problems"][0]["code"], "request_unreadable");
        let place = reply["problems"][0]["values"]["where"].as_str().unwrap();
        prop_assert!(place.ends_with(&key), "{}", place);
        prop_assert_eq!(&reply["pours"], &json!([]));
    }

    /// Text that is no request at all is a problem and never a panic.
    #[test]
    fn prop_any_text_is_answered(text in any::<String>(), nest in 0usize..60) {
        for text in [text.clone(), format!("{}{text}", "[".repeat(nest)), format!("{{\"house\":{text}}}")] {
            for reply in [farthing::wire::answer(&text), farthing::wire::moves(&text)] {
                let reply: Value = serde_json::from_str(&reply).unwrap();
                prop_assert_eq!(&reply["problems"][0]["code"], "request_unreadable");
            }
        }
    }
}

/// The places of every record of a request, as JSON pointers.
fn objects(json: &Value, at: &str, found: &mut Vec<String>) {
    if let Value::Object(_) = json {
        found.push(at.to_string());
    }
    let inner: Vec<(String, &Value)> = match json {
        Value::Object(fields) => fields.iter().map(|(key, value)| (key.clone(), value)).collect(),
        Value::Array(items) => {
            items.iter().enumerate().map(|(i, value)| (i.to_string(), value)).collect()
        }
        _ => Vec::new(),
    };
    inner.into_iter().for_each(|(key, value)| objects(value, &format!("{at}/{key}"), found));
}
