//! A glass on somebody's page costs what the same glass costs on the shelf, and what is wrong is told at
//! its place.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::arithmetic_side_effects,
    reason = "a test stops at what it did not expect"
)]

use farthing::wire;
use proptest::prelude::*;
use serde_json::{Value, json};

const PRICES: &str = "rye whisky: 28 for 70 cl at 40 %; orange bitters: 18.50 for 100 ml at 44%;
    rosemary syrup: 4.20 for 500 ml at 0";

fn ask(changes: Value) -> Value {
    let mut ask = json!({
        "currency": "GBP", "decimal_mark": ".", "own_decimal_mark": ".", "kitchen": "uk", "method": "stirred", "prices": PRICES,
        "lines": ["50 ml rye whisky", "5-10 ml rosemary syrup", "2 dashes orange bitters", "Garnish: lemon twist"],
    });
    for (key, value) in changes.as_object().unwrap() {
        ask[key] = value.clone();
    }
    ask
}

fn embed(changes: Value) -> Value {
    serde_json::from_str(&wire::embed(&ask(changes).to_string())).unwrap()
}

/// The snippet of a glass of the shelf, put on a page.
fn on_a_page(shelf: &Value) -> (Value, Value) {
    let out: Value = serde_json::from_str(&wire::recipe_out(&shelf.to_string())).unwrap();
    let page = json!({
        "lines": out["page_lines"], "prices": out["page_prices"], "decimal_mark": shelf["house"]["decimal_mark"],
    });
    let shelf =
        json!({"house": shelf["house"], "bottles": shelf["bottles"], "specs": [shelf["spec"]]});
    let answer: Value = serde_json::from_str(&wire::answer(&shelf.to_string())).unwrap();
    (answer["specs"][0].clone(), embed(page))
}

/// Codes and places of the problems.
fn problems(reply: &Value) -> Vec<(String, String)> {
    let text = |value: &Value| value.as_str().unwrap().to_owned();
    let told = reply["problems"].as_array().unwrap().iter();
    told.map(|problem| (text(&problem["code"]), text(&problem["place"]))).collect()
}

#[track_caller]
fn tells(changes: Value, code: &str, place: &str) -> Value {
    let reply = embed(changes);
    assert_eq!(problems(&reply), [(code.to_owned(), place.to_owned())], "{reply:#}");
    reply
}

#[test]
fn a_glass_costs_what_it_costs_on_the_shelf() {
    let reply = embed(json!({}));
    assert_eq!(problems(&reply), []);
    let bottle = |name: &str, price: &str, holds: &str| json!({"id": name, "name": name, "paid": {"price": price}, "holds": {"text": holds, "unit": "ml"}});
    let line = |bottle: &str, text: &str, unit: &str| json!({"bottle": bottle, "measure": {"text": text, "unit": unit}});
    let shelf = json!({
        "bottles": [bottle("rye", "28", "70 cl"), bottle("bitters", "18.50", "100"), bottle("syrup", "4.20", "500")],
        "specs": [{"lines": [line("rye", "50", "ml"), line("syrup", "5-10", "ml"), line("bitters", "2", "dash")]}],
    });
    let answer: Value = serde_json::from_str(&wire::answer(&shelf.to_string())).unwrap();
    let glass = &answer["specs"][0];
    for key in ["value", "shown", "working"] {
        assert_eq!(reply["glass"]["cost"][key], glass["cost"][key]);
    }
    for key in ["low_value", "high_value"] {
        assert_eq!(reply["glass"]["cost"]["range"][key], glass["cost"]["range"][key]);
    }
    // 50 × 28 ÷ 700 + 7.5 × 4.20 ÷ 500 + 2 × 0.92 × 18.50 ÷ 100, by hand.
    assert_eq!(reply["glass"]["cost"]["value"], "2.4034");
    let places: Vec<&Value> =
        reply["lines"].as_array().unwrap().iter().map(|line| &line["line"]).collect();
    assert_eq!(places, [&json!(0), &json!(1), &json!(2), &Value::Null]);
}

#[test]
fn a_readers_price_takes_the_place_of_the_writers() {
    let own = json!([{"name": "Rye Whisky", "price": "35", "holds": ""}]);
    let reply = embed(json!({"own": own}));
    assert_eq!(reply["glass"]["lines"][0]["cost"]["value"], "2.5");
    assert_eq!(reply["bottles"][0]["whose"], "reader");
    assert_eq!(reply["bottles"][0]["holds"], "70 cl");
    assert_eq!(reply["bottles"][1]["whose"], "writer");
    // Only the size differs: a litre at the writer's price.
    let own = json!([{"name": "rye whisky", "price": " ", "holds": "1 l"}]);
    assert_eq!(embed(json!({"own": own}))["glass"]["lines"][0]["cost"]["value"], "1.4");
    // A bottle of another glass of the site changes nothing.
    let own = json!([{"name": "gin", "price": "35", "holds": "1 l"}]);
    assert_eq!(embed(json!({"own": own}))["glass"], embed(json!({}))["glass"]);
}

#[test]
fn a_line_without_a_price_is_missed_and_asked_for() {
    let reply = embed(json!({"prices": "rye whisky: 28 for 70 cl"}));
    assert_eq!(problems(&reply), []);
    assert_eq!(reply["glass"]["missing"], 2);
    assert_eq!(reply["glass"]["cost"]["value"], "2");
    assert_eq!(
        reply["bottles"][1],
        json!({"name": "rosemary syrup", "price": "", "holds": "", "whose": ""})
    );
    assert_eq!(reply["strength"], Value::Null, "no strength is told");
    let own = json!([{"name": "rosemary syrup", "price": "4.20", "holds": "500 ml"}]);
    let reply = embed(json!({"prices": "rye whisky: 28 for 70 cl", "own": own}));
    assert_eq!(reply["glass"]["cost"]["value"], "2.063");
}

#[test]
fn names_meet_by_their_words() {
    let lines =
        json!(["2 dashes of bitters, orange", "25 ml fresh lime juice", "10 ml Rosemary Syrups"]);
    let prices = "syrup: 3 for 500 ml; rosemary syrup: 5 for 500 ml; lime juice: 4 for 1 l; bitters: 10 for 100 ml";
    let reply = embed(json!({"lines": lines, "prices": prices}));
    let bottles: Vec<&Value> =
        reply["lines"].as_array().unwrap().iter().map(|line| &line["bottle"]).collect();
    assert_eq!(bottles, [3, 2, 1]);
}

#[test]
fn bottles_without_a_price_are_one_only_if_they_are_called_the_same() {
    let own = json!([{"name": "gin", "price": "14", "holds": "70 cl"}]);
    let lines = json!(["50 ml gin", "25 ml sloe gin", "25 ml Gin"]);
    let reply = embed(json!({"lines": lines, "prices": "", "own": own}));
    let names: Vec<&Value> =
        reply["bottles"].as_array().unwrap().iter().map(|bottle| &bottle["name"]).collect();
    assert_eq!(names, ["gin", "sloe gin"]);
    assert_eq!(reply["glass"]["missing"], 1);
    assert_eq!(reply["glass"]["cost"]["value"], "1.5");
}

#[test]
fn prices_are_written_as_their_writer_writes() {
    let cost = |changes: Value| embed(changes)["glass"]["lines"][0]["cost"]["value"].clone();
    let comma = json!({"decimal_mark": ",", "own_decimal_mark": ".", "prices": "rye whisky: 28,70 € for 0,7 l"});
    assert_eq!(cost(comma), "2.05");
    // A name with a colon, and lines in place of semicolons.
    let lines = json!({"prices": "Rye: whisky: £28 for 70cl\norange bitters: 18.50 for 100 ml"});
    assert_eq!(cost(lines), "2");
    let yen = json!({"currency": "JPY", "prices": "rye whisky: 2,800 for 700 ml"});
    assert_eq!(cost(yen), "200");
    let parts = json!({"lines": ["2 parts rye whisky"], "part": "25 ml"});
    assert_eq!(cost(parts), "2");
    let whole = json!({"lines": ["1 piece lemon"], "prices": "lemon: 2 for 5 pieces"});
    assert_eq!(cost(whole), "0.4");
}

#[test]
fn strength_is_by_mass_with_the_water_of_the_ice() {
    // 50 ml at 40 % by itself is 40 %, as its label says.
    let reply = embed(json!({"lines": ["50 ml rye whisky"], "method": "none"}));
    assert_eq!(reply["strength"]["percent"], "40");
    assert_eq!(reply["strength"]["low"], "39.7");
    assert_eq!(reply["strength"]["high"], "40.3");
    // 20 ml of pure alcohol at 789.24 g/l: OIML R 22, 20 °C.
    assert_eq!(reply["strength"]["alcohol_g"], "16");
    let stirred = embed(json!({"lines": ["50 ml rye whisky"]}));
    let percent: f64 = stirred["strength"]["percent"].as_str().unwrap().parse().unwrap();
    assert!((25.0..30.0).contains(&percent), "{percent}");
}

#[test]
fn what_is_wrong_is_told_at_its_place_and_the_rest_stands() {
    let reply = tells(json!({"prices": "rye whisky 28"}), "price_unreadable", "prices");
    assert_eq!(reply["glass"]["missing"], 3);
    tells(json!({"prices": "rye whisky: 28"}), "price_unreadable", "prices");
    let own = |price: &str, holds: &str| json!({"own": [{"name": "rye whisky", "price": price, "holds": holds}]});
    let reply = tells(own("dear", ""), "number_unreadable", "bottles[0].price");
    assert_eq!(
        (&reply["glass"]["missing"], &reply["glass"]["cost"]["value"]),
        (&json!(1), &json!("0.4034"))
    );
    tells(own("1,250", ""), "number_ambiguous", "bottles[0].price");
    tells(own("", "a bottle"), "holds_unit", "bottles[0].holds");
    tells(own("", "70 ells"), "unit_unknown", "bottles[0].holds");
    tells(json!({"currency": "pounds"}), "currency_unknown", "currency");
    tells(json!({"method": "boiled"}), "choice_unknown", "method");
    tells(json!({"part": "a lot"}), "unit_unknown", "part");
    tells(json!({"decimal_mark": "'"}), "choice_unknown", "decimal_mark");
    tells(json!({"lines": ["top with orange bitters"]}), "measure_missing", "lines[0]");
    tells(json!({"lines": ["2 parts rye whisky"]}), "parts_need_size", "lines[0]");
    tells(json!({"lines": ["20 g rye whisky"]}), "kind_mismatch", "lines[0].measure");
    tells(
        json!({"prices": "rye whisky: 28 for 70 cl at 140 %"}),
        "percent_out_of_range",
        "bottles[0].strength",
    );
}

#[test]
fn too_much_is_refused_with_its_limit() {
    let many =
        |count: usize| (0..count).map(|n| format!("bottle {n}: 1 for 1 l")).collect::<Vec<_>>();
    tells(json!({"lines": [], "prices": many(41).join(";")}), "too_many_bottles", "prices");
    let own: Vec<Value> =
        (0..201).map(|n| json!({"name": format!("b{n}"), "price": "1", "holds": ""})).collect();
    tells(json!({"own": own}), "too_many_bottles", "own");
    let lines = vec!["50 ml rye whisky"; 41];
    let reply = tells(json!({"lines": lines}), "too_many_lines", "lines");
    assert_eq!(reply["lines"].as_array().unwrap().len(), 40);
    tells(json!({"lines": ["50 ml rye whisky"], "secret": 1}), "request_unreadable", "");
}

#[test]
fn a_glass_of_the_shelf_costs_the_same_on_a_page() {
    let case = json!({
        "id": "rye", "name": "rye; whisky", "strength": "43,5", "wastage_percent": "2",
        "paid": {"price": "168,50", "bottles": "6", "discount": "5 %", "delivery": "9", "tax": "out"},
        "holds": {"text": "70 cl"},
    });
    let own_dash = json!({
        "id": "bitters", "name": "orange bitters", "paid": {"price": "18,50"}, "holds": {"text": "100 ml"},
        "rough": {"dash": {"text": "0,8", "unit": "ml"}},
    });
    let straw =
        json!({"name": "paper straw", "paid": {"price": "3"}, "holds": {"text": "250 pieces"}});
    let shelf = json!({
        "house": {"decimal_mark": ",", "rough": {"splash": {"text": "4", "unit": "ml"}}},
        "bottles": [case, own_dash],
        "spec": {"name": "Lock Keeper", "lines": [
            {"bottle": "rye", "measure": {"text": "5 cl"}},
            {"bottle": "bitters", "measure": {"text": "2 dashes"}},
            {"bottle": "rye", "measure": {"text": "1 splash"}, "note": "to rinse, optional"},
            {"own": straw, "measure": {"text": "1 piece"}},
        ]},
    });
    let (glass, page) = on_a_page(&shelf);
    assert_eq!(problems(&page), []);
    assert_eq!(page["glass"]["cost"]["shown"], glass["cost"]["shown"]);
    assert_eq!(page["lines"][1]["text"], "2 dashes orange bitters (1,6 ml)");
    assert_eq!(
        page["lines"][2]["text"],
        "1 splash \"rye; whisky\" (\"to rinse\") (optional) (4 ml)"
    );
    assert_eq!(page["bottles"].as_array().unwrap().len(), 3, "the rye once");
    assert_eq!(page["bottles"][0]["name"], "rye, whisky");
}

#[test]
fn a_bottle_without_a_price_takes_no_others_on_a_page() {
    let line = |bottle: &str| json!({"bottle": bottle, "measure": {"text": "25 ml"}});
    let shelf = json!({
        "house": {"decimal_mark": "."},
        "bottles": [
            {"id": "gin", "name": "gin", "paid": {"price": "28"}, "holds": {"text": "70 cl"}},
            {"id": "sloe", "name": "sloe gin", "holds": {"text": "70 cl"}},
            {"id": "tonic", "name": "tonic water"},
        ],
        "spec": {"lines": [line("sloe"), line("gin"), line("tonic")]},
    });
    let (glass, page) = on_a_page(&shelf);
    assert_eq!(problems(&page), []);
    assert_eq!(page["glass"]["cost"]["value"], glass["cost"]["value"]);
    assert_eq!((&page["glass"]["missing"], &glass["missing"]), (&json!(2), &json!(2)));
    let whose: Vec<&Value> =
        page["bottles"].as_array().unwrap().iter().map(|bottle| &bottle["whose"]).collect();
    assert_eq!(whose, ["writer", "", ""]);
}

#[test]
fn a_page_without_prices_is_told_none() {
    let out = wire::recipe_out(
        r#"{"without_prices": true,
        "bottles": [{"id": "a", "name": "gin", "paid": {"price": "28"}, "holds": {"text": "70 cl"}}],
        "spec": {"lines": [{"bottle": "a", "measure": {"text": "50 ml"}}]}}"#,
    );
    assert!(out.contains(r#""page_prices":"""#) && !out.contains("28"), "{out}");
}

proptest! {
    #[test]
    fn prop_any_text_gets_an_answer(
        lines in prop::collection::vec(".{0,60}", 0..6), prices in "(\\PC|;|:| for | at ){0,80}",
        price in "\\PC{0,12}", holds in "\\PC{0,12}",
    ) {
        let own = json!([{"name": lines.first().cloned().unwrap_or_default(), "price": price, "holds": holds}]);
        let count = lines.len();
        let reply = embed(json!({"lines": lines, "prices": prices, "own": own}));
        prop_assert_eq!(reply["lines"].as_array().unwrap().len(), count);
        for (line, given) in reply["lines"].as_array().unwrap().iter().zip(&lines) {
            prop_assert_eq!(line["text"].as_str().unwrap(), given.as_str());
        }
    }

    #[test]
    fn prop_a_reader_who_pays_the_same_pays_the_same(pounds in 1..500u32, ml in 1..80u32) {
        let writer = json!({"lines": [format!("{ml} ml gin")], "prices": format!("gin: {pounds} for 70 cl")});
        let reader = json!({
            "lines": [format!("{ml} ml gin")], "prices": "gin: 1 for 1 l",
            "own": [{"name": "gin", "price": pounds.to_string(), "holds": "70 cl"}],
        });
        prop_assert_eq!(&embed(writer)["glass"], &embed(reader)["glass"]);
    }
}
