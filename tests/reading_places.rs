//! Every problem that a request can raise, at its exact place and with its values; and beside it
//! every other figure still stands.

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

use farthing::problem::Code;
use farthing::wire;
use outside::{Function, answer, reply};
use serde_json::{Value, json};
use std::cell::RefCell;

/// Codes of the device and the file, which no request of `answer` can raise.
const OF_THE_SHELF: [Code; 9] = [
    Code::TooManyBottles,
    Code::TooManySpecs,
    Code::StorageRefused,
    Code::StorageFull,
    Code::RecordSetAside,
    Code::RecordNewer,
    Code::FileUnreadable,
    Code::FileNewer,
    Code::FileTooLarge,
];

/// Codes of links: `links.rs` raises them.
const OF_LINKS: [Code; 4] =
    [Code::LinkUnreadable, Code::LinkNewer, Code::LinkTooLong, Code::LinkLong];

thread_local! {
    static RAISED: RefCell<Vec<String>> = const { RefCell::new(Vec::new()) };
}

/// A sound request: a bottle, a pour and a spec of two lines.
fn sound() -> Value {
    let own =
        json!({"name": "lime wedge", "paid": {"price": "0.30"}, "holds": {"text": "8 pieces"}});
    json!({
        "house": {"currency": "GBP", "decimal_mark": ".", "kitchen": "uk", "tax_percent": "20", "rough": {}},
        "bottles": [
            {"id": "rye", "name": "rye whisky", "paid": {"price": "26"}, "holds": {"text": "70 cl"}, "rough": {}},
            {"id": "bitters", "paid": {"price": "18.50"}, "holds": {"text": "100 ml"}},
        ],
        "pours": [
            {"bottle": "rye", "measure": {"text": "50 ml"}},
            {"bottle": "bitters", "measure": {"text": "2 dashes"}},
        ],
        "specs": [{"id": "s", "name": "Lock Keeper", "lines": [
            {"bottle": "rye", "measure": {"text": "50 ml"}},
            {"own": own, "measure": {"text": "1 piece"}},
        ]}],
    })
}

/// One blank of the sound request written otherwise raises one problem, told as
/// `code at place name=value ...`.
#[track_caller]
fn check(blank: &str, typed: Value, told: &str) {
    check_in(sound(), blank, typed, told);
}

#[track_caller]
fn check_in(mut ask: Value, blank: &str, typed: Value, told: &str) {
    set(&mut ask, blank, typed);
    let reply = answer(&ask);
    let problems = reply["problems"].as_array().unwrap();
    let words: Vec<String> = problems.iter().map(in_words).collect();
    assert_eq!(words, [told], "{blank}");
    RAISED.with_borrow_mut(|raised| raised.push(problems[0]["code"].as_str().unwrap().into()));
    // The other bottle is untouched by all that is not the house's.
    if !blank.starts_with("/house/currency") && !told.contains("request_unreadable") {
        assert_eq!(reply["pours"][1]["cost"]["value"], "0.3404", "{blank}");
    }
}

fn in_words(problem: &Value) -> String {
    let values = problem["values"].as_object().unwrap().iter();
    let values = values.map(|(name, value)| format!(" {name}={}", value.as_str().unwrap()));
    let words = |key: &str| problem[key].as_str().unwrap().to_string();
    format!("{} at {}{}", words("code"), words("place"), values.collect::<String>())
}

/// Writes `value` at a JSON pointer, whose last key need not be there yet.
fn set(json: &mut Value, pointer: &str, value: Value) {
    let (parent, key) = pointer.rsplit_once('/').expect("a pointer");
    let parent = json.pointer_mut(parent).unwrap_or_else(|| panic!("{pointer}"));
    match key.parse::<usize>() {
        Ok(index) => parent[index] = value,
        Err(_) => parent[key] = value,
    }
}

#[test]
fn the_sound_request_is_sound() {
    let reply = answer(&sound());
    assert_eq!(reply["problems"], json!([]));
    assert_eq!(reply["specs"][0]["missing"], 0);
}

#[test]
fn every_code_is_raised_at_its_place() {
    numbers();
    prices();
    measures();
    the_house();
    measuring();
    what_follows();
    offers();
    recipes();
    a_glass_on_a_page();
    the_request();
    let raised = RAISED.take();
    let elsewhere = [&OF_THE_SHELF[..], &OF_LINKS].concat();
    for code in Code::ALL.iter().filter(|code| !elsewhere.contains(code)) {
        assert!(raised.iter().any(|own| own == code.text()), "no row raises {}", code.text());
    }
}

fn numbers() {
    let price = "/bottles/0/paid/price";
    let at = "bottles[0].paid.price";
    check(price, json!("abc"), &format!("number_unreadable at {at} typed=abc"));
    check(
        price,
        json!("1,250"),
        &format!("number_ambiguous at {at} either=1.25 or=1250 typed=1,250"),
    );
    check(price, json!("1.1234567"), &format!("number_too_long at {at} most=6"));
    check(price, json!("-26"), &format!("number_negative at {at} typed=-26"));
    check(price, json!("26/0"), &format!("number_zero_below at {at} typed=26/0"));
    check(price, json!("1000000000"), &format!("too_big at {at} most=999999999"));
}

fn prices() {
    let paid = |blank: &str| format!("/bottles/0/paid/{blank}");
    let at = "bottles[0].paid";
    check(
        &paid("bottles"),
        json!("1.5"),
        &format!("whole_number_needed at {at}.bottles typed=1.5"),
    );
    check(&paid("bottles"), json!("0"), &format!("number_must_be_positive at {at}.bottles"));
    check(
        &paid("discount"),
        json!("some"),
        &format!("number_unreadable at {at}.discount typed=some"),
    );
    check(&paid("discount"), json!("26.01"), &format!("discount_over_price at {at}"));
    check(
        &paid("discount"),
        json!("100 %"),
        &format!("percent_out_of_range at {at}.discount least=0 most=100 typed=100 %"),
    );
    check(&paid("delivery"), json!("x"), &format!("number_unreadable at {at}.delivery typed=x"));
    check(&paid("tax"), json!("maybe"), &format!("choice_unknown at {at}.tax typed=maybe"));
    check(
        &paid("tax_percent"),
        json!("501"),
        &format!("percent_out_of_range at {at}.tax_percent least=0 most=500 typed=501"),
    );
    check(
        "/specs/0/lines/1/own/paid/price",
        json!("x"),
        "number_unreadable at specs[0].lines[1].own.paid.price typed=x",
    );
}

fn measures() {
    let holds = "/bottles/0/holds/text";
    let at = "bottles[0].holds";
    check(holds, json!("70"), &format!("unit_missing at {at} typed=70"));
    check(holds, json!("70 thimbles"), &format!("unit_unknown at {at} typed=thimbles"));
    check(holds, json!("0 ml"), &format!("number_must_be_positive at {at}"));
    check(holds, json!("70 dashes"), &format!("holds_unit at {at} typed=dash"));
    check(holds, json!("half a bottle"), &format!("holds_unit at {at} typed=bottle"));
    check(
        "/bottles/0/wastage_percent",
        json!("100"),
        "percent_out_of_range at bottles[0].wastage_percent least=0 most=100 typed=100",
    );
    check("/pours/0/measure/text", json!("1,"), "unit_missing at pours[0].measure typed=1,");
    check(
        "/pours/0/measure/text",
        json!("2 pieces"),
        "kind_mismatch at pours[0].measure bottle=volume measure=count",
    );
    check(
        "/specs/0/lines/1/measure/text",
        json!("2 ml"),
        "kind_mismatch at specs[0].lines[1].measure bottle=count measure=volume",
    );
    check(
        "/bottles/0/rough/dash",
        json!({"text": "2 g"}),
        "rough_must_be_volume at bottles[0].rough.dash typed=g",
    );
    check(
        "/house/rough/splash",
        json!({"text": "2 dashes"}),
        "rough_must_be_volume at house.rough.splash typed=dash",
    );
    check(
        "/bottles/0/rough/ml",
        json!({"text": "2 ml"}),
        "unit_unknown at bottles[0].rough.ml typed=ml",
    );
    check("/pours/0/bottle", json!("gin"), "bottle_unknown at pours[0].bottle id=gin");
    check(
        "/specs/0/lines/0/bottle",
        json!("gin"),
        "bottle_unknown at specs[0].lines[0].bottle id=gin",
    );
    // No bar writes this: the cost would take 46 digits above the line.
    let mut long = sound();
    set(&mut long, "/bottles/0/paid", json!({"price": "123456.789123", "discount": "13.571113 %"}));
    set(&mut long, "/bottles/0/wastage_percent", json!("12.345678"));
    check_in(
        long,
        "/pours/0/measure/text",
        json!("999999999 987654320/999999937 us gill"),
        "figures_too_long at pours[0].measure",
    );
}

/// One blank of a measuring written otherwise raises one problem of `measure`.
#[track_caller]
fn check_measuring(measuring: &Value, told: &str) {
    let ask = json!({"measuring": measuring}).to_string();
    let reply: Value = serde_json::from_str(&farthing::wire::measure(&ask)).unwrap();
    let problems = reply["problems"].as_array().unwrap();
    assert_eq!(problems.iter().map(in_words).collect::<Vec<_>>(), [told]);
    RAISED.with_borrow_mut(|raised| raised.push(problems[0]["code"].as_str().unwrap().into()));
}

fn measuring() {
    let readings = |way: Value, readings: &[&str]| {
        let mut measured = way;
        measured["readings"] = json!(readings);
        measured
    };
    let counted = json!({"way": "count", "vessel": {"text": "30 ml"}});
    let weighed = json!({"way": "weigh", "number": "10", "step": "0.1", "strength": "40"});
    let with = |way: &Value, blank: &str, typed: Value| {
        let mut way = readings(way.clone(), &["8.2", "8.4"]);
        way[blank] = typed;
        way
    };
    let at = "measuring";
    for (typed, told) in [
        (readings(counted.clone(), &["32"]), format!("one_reading at {at}.readings")),
        (readings(counted.clone(), &["32", "", "32"]), format!("readings_equal at {at}.readings")),
        (
            readings(counted.clone(), &["32", "", "0"]),
            format!("number_must_be_positive at {at}.readings[2]"),
        ),
        (
            readings(counted.clone(), &["32", "x"]),
            format!("number_unreadable at {at}.readings[1] typed=x"),
        ),
        (readings(weighed.clone(), &["8.2", "0.05"]), format!("below_step at {at}.readings[1]")),
        (
            readings(counted.clone(), &["32", "33"].repeat(26)),
            format!("too_many_readings at {at}.readings most=50"),
        ),
        (
            with(&counted, "vessel", json!({"text": "2 dashes"})),
            format!("rough_must_be_volume at {at}.vessel typed=dash"),
        ),
        (
            with(&counted, "vessel", json!({"text": "25-30 ml"})),
            format!("range_not_here at {at}.vessel"),
        ),
        (with(&counted, "way", json!("guess")), format!("choice_unknown at {at}.way typed=guess")),
        (
            with(&weighed, "number", json!("1.5")),
            format!("whole_number_needed at {at}.number typed=1.5"),
        ),
        (with(&weighed, "step", json!("0")), format!("number_must_be_positive at {at}.step")),
        (
            with(&weighed, "strength", json!("101")),
            format!("percent_out_of_range at {at}.strength least=0 most=100 typed=101"),
        ),
        (
            with(&weighed, "celsius", json!("41 °C")),
            format!("temperature_out_of_range at {at}.celsius least=-20 most=40 typed=41 °C"),
        ),
        (
            with(&weighed, "celsius", json!("-21")),
            format!("temperature_out_of_range at {at}.celsius least=-20 most=40 typed=-21"),
        ),
    ] {
        check_measuring(&typed, &told);
    }
    let mut heavy = with(&weighed, "known_volume", json!({"text": "50 ml"}));
    heavy["known_weight"] = json!("80");
    check_measuring(
        &heavy,
        &format!("density_out_of_range at {at}.known_weight least=0.75 most=1.5 typed=1.60"),
    );
    check(
        "/bottles/0/measured",
        json!({"ml": counted}),
        "unit_unknown at bottles[0].measured.ml typed=ml",
    );
    check(
        "/pours/0/measure/text",
        json!("10-5 ml"),
        "range_backwards at pours[0].measure typed=10-5 ml",
    );
    check("/bottles/0/holds/text", json!("70-75 cl"), "range_not_here at bottles[0].holds");
}

/// One blank written otherwise raises one problem of a function that follows from the cost, and what
/// stands at `stands` stands as it did.
#[track_caller]
fn check_following(
    of: Function,
    sound: &Value,
    (blank, typed, told): (&str, &str, &str),
    stands: &[&str],
) {
    let mut ask = sound.clone();
    set(&mut ask, blank, typed.into());
    let (before, after) = (reply(of, sound), reply(of, &ask));
    assert_eq!(before["problems"], json!([]), "the sound request is sound");
    let problems = after["problems"].as_array().unwrap();
    assert_eq!(problems.iter().map(in_words).collect::<Vec<_>>(), [told], "{blank}");
    for stands in stands {
        let (before, after) = (before.pointer(stands).unwrap(), after.pointer(stands).unwrap());
        assert!(!before.is_null() && before == after, "{blank}: {stands}");
    }
    RAISED.with_borrow_mut(|raised| raised.push(problems[0]["code"].as_str().unwrap().into()));
}

fn what_follows() {
    let (bottle, spec) = ("bottles[0]", "specs[0]");
    for (blank, typed, told) in [
        (
            "strength",
            json!("100.1"),
            format!("percent_out_of_range at {bottle}.strength least=0 most=100 typed=100.1"),
        ),
        ("keeps_days", json!("0"), format!("number_must_be_positive at {bottle}.keeps_days")),
        (
            "keeps_days",
            json!("a week"),
            format!("number_unreadable at {bottle}.keeps_days typed=a week"),
        ),
        ("have", json!({"text": "some"}), format!("number_unreadable at {bottle}.have typed=some")),
        ("have", json!({"text": "2"}), format!("unit_missing at {bottle}.have typed=2")),
    ] {
        check(&format!("/bottles/0/{blank}"), typed, &told);
    }
    let mut ask = sound();
    ask.as_object_mut().unwrap().remove("pours");
    ask["bottles"][0]["strength"] = "40".into();
    for (blank, typed, value) in [
        ("/house/sale_tax", "over", "in"),
        ("/house/price_points", "odd", "half"),
        ("/specs/0/method", "blended", "stirred"),
        ("/specs/0/price", "x", "9"),
        ("/specs/0/a_week", "x", "30"),
        ("/specs/0/target_percent", "x", "75"),
        ("/house/target_percent", "x", "75"),
        ("/house/sale_tax_percent", "x", "20"),
    ] {
        set(&mut ask, blank, value.into());
        let place = blank[1..].replace("/0/", "[0].").replace('/', ".");
        let code = if matches!(typed, "over" | "odd" | "blended") {
            "choice_unknown"
        } else {
            "number_unreadable"
        };
        check_following(
            wire::facts,
            &ask,
            (blank, typed, &format!("{code} at {place} typed={typed}")),
            &["/specs/0/cost"],
        );
    }
    let (cost, priced, strength) = ("/specs/0/cost", "/specs/0/priced", "/specs/0/strength");
    let percent = "percent_out_of_range at";
    for (blank, typed, told, stands) in [
        ("/house/sale_tax", "over", "choice_unknown at house.sale_tax typed=over".into(), strength),
        (
            "/house/sale_tax_percent",
            "501",
            format!("{percent} house.sale_tax_percent least=0 most=500 typed=501"),
            strength,
        ),
        (
            "/house/target_percent",
            "100",
            format!("{percent} house.target_percent least=0 most=100 typed=100"),
            priced,
        ),
        (
            "/specs/0/target_percent",
            "100 %",
            format!("{percent} {spec}.target_percent least=0 most=100 typed=100 %"),
            "/specs/0/priced/margin",
        ),
        (
            "/specs/0/price",
            "1,250",
            format!("number_ambiguous at {spec}.price either=1.25 or=1250 typed=1,250"),
            "/specs/0/asked",
        ),
        ("/specs/0/a_week", "0", format!("number_must_be_positive at {spec}.a_week"), strength),
        ("/specs/0/method", "no", format!("choice_unknown at {spec}.method typed=no"), priced),
        (
            "/specs/0/water/text",
            "2 dashes",
            format!("rough_must_be_volume at {spec}.water typed=dash"),
            priced,
        ),
        ("/specs/0/water/text", "2-3 ml", format!("range_not_here at {spec}.water"), priced),
    ] {
        let mut ask = ask.clone();
        set(&mut ask, "/specs/0/water", json!({"text": ""}));
        check_following(wire::facts, &ask, (blank, typed, &told), &[cost, stands]);
    }
    // Each spec names its own margin: what the house wants is not asked, and is told once.
    let mut two = ask.clone();
    two["specs"] = json!([ask["specs"][0], ask["specs"][0]]);
    let told = "number_unreadable at house.target_percent typed=x";
    check_following(
        wire::facts,
        &two,
        ("/house/target_percent", "x", told),
        &["/specs/1/priced", "/specs/1/asked"],
    );
    // The rate of what is bought stands in for that of what is sold: without it no price is known.
    let mut borrowed = ask.clone();
    borrowed["house"]["sale_tax_percent"] = "".into();
    borrowed["house"]["tax_percent"] = "x".into();
    assert_eq!(reply(wire::facts, &borrowed)["specs"][0]["asked"], json!(null));

    let mut shop = sound();
    shop.as_object_mut().unwrap().remove("pours");
    shop["counts"] = json!(["4"]);
    for (typed, told) in [
        ("x", "number_unreadable at counts[0] typed=x"),
        ("1.5", "whole_number_needed at counts[0] typed=1.5"),
        ("0", "number_must_be_positive at counts[0]"),
    ] {
        check_following(wire::shop, &shop, ("/counts/0", typed, told), &[]);
    }
    let mut have = shop.clone();
    have["bottles"][0]["have"] = json!({"text": "1 bottle"});
    let told = "kind_mismatch at bottles[0].have bottle=volume measure=count";
    check_following(wire::shop, &have, ("/bottles/0/have/text", "3 pieces", told), &[]);

    let keeping = json!({"bottles": sound()["bottles"], "measures": [{"text": "5 ml"}, {"text": "1 dash"}], "most_a_week": "9"});
    for (typed, told) in [
        ("x", "number_unreadable at most_a_week typed=x"),
        ("501", "too_big at most_a_week most=500"),
    ] {
        check_following(
            wire::keeping,
            &keeping,
            ("/most_a_week", typed, told),
            &["/points/8", "/highest"],
        );
    }
}

fn offers() {
    let offer = json!({"id": "o", "price": "26", "case": "6", "tax": "in", "holds": {"text": "70 cl"}, "deal": "3 for 2",
        "strength": "40"});
    let ask = json!({"house": {}, "offers": [offer, offer], "measure": {"text": "50 ml"}, "rest": "1", "price": "9",
        "target_percent": "75"});
    let at = "offers[0]";
    for (blank, typed, told) in [
        ("price", "x", format!("number_unreadable at {at}.price typed=x")),
        ("case", "1.5", format!("whole_number_needed at {at}.case typed=1.5")),
        ("tax", "maybe", format!("choice_unknown at {at}.tax typed=maybe")),
        ("holds/text", "70", format!("unit_missing at {at}.holds typed=70")),
        ("holds/text", "2 dashes", format!("holds_unit at {at}.holds typed=dash")),
        ("deal", "3 for 4", format!("number_unreadable at {at}.deal typed=3 for 4")),
        (
            "strength",
            "101",
            format!("percent_out_of_range at {at}.strength least=0 most=100 typed=101"),
        ),
    ] {
        let (blank, other) = (
            format!("/offers/0/{blank}"),
            ["/offers/1/bottle", "/offers/1/at_most", "/offers/1/fits"],
        );
        check_following(wire::offers, &ask, (&blank, typed, &told), &other);
    }
    for (blank, typed, told, stands) in [
        ("measure/text", "50", "unit_missing at measure typed=50", "bottle"),
        ("rest", "x", "number_unreadable at rest typed=x", "rank"),
        ("price", "x", "number_unreadable at price typed=x", "glass"),
        (
            "target_percent",
            "100",
            "percent_out_of_range at target_percent least=0 most=100 typed=100",
            "margin",
        ),
        ("house/sale_tax", "over", "choice_unknown at house.sale_tax typed=over", "glass"),
        (
            "house/target_percent",
            "x",
            "number_unreadable at house.target_percent typed=x",
            "at_most",
        ),
    ] {
        let stands = format!("/offers/0/{stands}");
        check_following(wire::offers, &ask, (&format!("/{blank}"), typed, told), &[&stands]);
    }
}

fn the_house() {
    check("/house/currency", json!("HRK"), "currency_unknown at house.currency typed=HRK");
    check("/house/decimal_mark", json!(";"), "choice_unknown at house.decimal_mark typed=;");
    check("/house/kitchen", json!("fr"), "choice_unknown at house.kitchen typed=fr");
    check("/house/tax_percent", json!("x"), "number_unreadable at house.tax_percent typed=x");
    let long = "ü".repeat(81);
    check("/bottles/0/name", json!(long), "name_too_long at bottles[0].name most=80");
    check("/specs/0/name", json!(long), "name_too_long at specs[0].name most=80");
    check(
        "/specs/0/lines/1/own/name",
        json!(long),
        "name_too_long at specs[0].lines[1].own.name most=80",
    );
    let lines = vec![json!({"bottle": "rye"}); 41];
    check("/specs/0/lines", json!(lines), "too_many_lines at specs[0].lines most=40");
}

/// A pasted text raises one problem, of the whole or of its last line.
#[track_caller]
fn check_recipe(text: &str, told: &str) {
    let reply = reply(wire::recipe, &json!({"text": text}));
    let lines = reply["lines"].as_array().unwrap();
    let of_lines = lines.iter().flat_map(|line| line["problems"].as_array().unwrap());
    let problems: Vec<&Value> =
        reply["problems"].as_array().unwrap().iter().chain(of_lines).collect();
    assert_eq!(problems.iter().map(|problem| in_words(problem)).collect::<Vec<_>>(), [told]);
    RAISED.with_borrow_mut(|raised| raised.push(problems[0]["code"].as_str().unwrap().into()));
}

fn recipes() {
    check_recipe("- 2 parts gin", "parts_need_size at measure at=2 typed=2 parts");
    check_recipe("2 dashes bitters\nsoda", "measure_missing at measure at=0");
    check_recipe("a pinch of salt", "unit_unknown at measure at=2 typed=pinch");
    check_recipe(
        "1,250 ml soda",
        "number_ambiguous at measure at=0 either=1.25 or=1250 typed=1,250",
    );
    check_recipe(&"x".repeat(100_001), "recipe_too_long at text most=100000");
    check_recipe("{", "recipe_unreadable at text where= why=no JSON from character 1 on");
    check_recipe("[{}]", "recipe_unreadable at text where= why=no recipe in it");
}

fn a_glass_on_a_page() {
    let ask = json!({"currency": "GBP", "decimal_mark": ".", "own_decimal_mark": ".", "kitchen": "uk", "prices": "rye whisky 28"});
    let problem = &reply(wire::embed, &ask)["problems"][0];
    assert_eq!(in_words(problem), "price_unreadable at prices typed=rye whisky 28");
    RAISED.with_borrow_mut(|raised| raised.push("price_unreadable".into()));
}

fn the_request() {
    let where_and_why =
        |place: &str, why: &str| format!("request_unreadable at  where={place} why={why}");
    check("/bottles/0/price", json!("26"), &where_and_why("bottles[0].price", "no such key"));
    check(
        "/bottles/0/paid/price",
        json!(26),
        &where_and_why("bottles[0].paid.price", "a number where text should be"),
    );
    check(
        "/house/reclaims_tax",
        json!("no"),
        &where_and_why("house.reclaims_tax", "text where yes or no should be"),
    );
    check(
        "/specs/0/lines/0/charge",
        json!("half"),
        &where_and_why("specs[0].lines[0].charge", "neither \"poured\" nor \"whole\""),
    );
    check("/pours", json!({}), &where_and_why("pours", "an object where a list should be"));
    check(
        "/bottles/1",
        json!(null),
        &where_and_why("bottles[1]", "nothing where an object should be"),
    );
}

/// Limits from the right side: what just fits raises nothing.
#[test]
fn what_just_fits_is_taken() {
    for (blank, typed) in [
        ("/bottles/0/name", json!("ü".repeat(80))),
        ("/specs/0/lines", json!(vec![json!({"bottle": "rye"}); 40])),
        ("/bottles/0/paid/price", json!("999999999.999999")),
        ("/bottles/0/paid/discount", json!("26")),
        ("/bottles/0/paid/tax_percent", json!("500 %")),
        ("/bottles/0/wastage_percent", json!("99.999999")),
    ] {
        let mut ask = sound();
        set(&mut ask, blank, typed);
        assert_eq!(answer(&ask)["problems"], json!([]), "{blank}");
    }
}

#[track_caller]
fn check_text(text: &str, told: &str) {
    let reply: Value = serde_json::from_str(&farthing::wire::answer(text)).unwrap();
    let told = format!("request_unreadable at  where= why={told}");
    assert_eq!(
        reply["problems"].as_array().unwrap().iter().map(in_words).collect::<Vec<_>>(),
        [told]
    );
}

#[test]
fn what_is_no_request_is_refused_whole() {
    check_text("", "no JSON from character 0 on");
    check_text("[]", "a list where an object should be");
    check_text("null", "nothing where an object should be");
    check_text("{\"bottles\": [}", "no JSON from character 14 on");
}
