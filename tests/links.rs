//! A glass in a link: what goes into one, what comes out, and what is refused whole.
//!
//! Links that were sent are out of our hands. `tests/golden/links.json` holds some as they were sent:
//! those open for ever, natively and in every browser.

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

use base64ct::{Base64UrlUnpadded, Encoding};
use farthing::link::{MOST_PACKED, MOST_UNPACKED_BYTES, packed, unpacked};
use farthing::wire;
use outside::{answer, config, reply, sound_reply};
use proptest::prelude::*;
use serde_json::{Value, json};

const ADDRESS: &str = "https://bar.example/";

fn bottle(id: &str, name: &str, price: &str, holds: &str) -> Value {
    json!({"id": id, "name": name, "paid": {"price": price}, "holds": {"text": holds}})
}

/// A glass of five lines, with ids as the page makes them.
fn lock_keeper() -> Value {
    let bottles = [
        ("0c5e1p2t6y4z3r2a1x", "Rye whisky", "31.40", "70 cl", "50 ml"),
        ("3b6k0q5v2s4d1g7h5m", "Rosemary syrup", "4.20", "50 cl", "15 ml"),
        ("1n3a6w5o0r2u4i6e7k", "Lemon juice", "3.10", "1 l", "25 ml"),
        ("5t2f4c1y7b3j6l0p8d", "Sweet vermouth", "14.75", "75 cl", "20 ml"),
        ("2v4x6z1m3n5q7s0u9w", "Orange bitters", "18.50", "100 ml", "2 dashes"),
    ];
    let lines =
        bottles.map(|(id, .., measure)| json!({"bottle": id, "measure": {"text": measure}}));
    let bottles = bottles.map(|(id, name, price, holds, _)| bottle(id, name, price, holds));
    let spec = json!({"id": "4s1p3e0c5l2o6c7k8k", "name": "Lock Keeper", "lines": lines, "method": "shaken"});
    json!({"address": ADDRESS, "bottles": bottles, "spec": spec})
}

fn with(mut ask: Value, pointer: &str, value: Value) -> Value {
    let (above, key) = pointer.rsplit_once('/').unwrap();
    match ask.pointer_mut(above).unwrap() {
        Value::Array(items) => items[key.parse::<usize>().unwrap()] = value,
        fields => fields[key] = value,
    }
    ask
}

fn fragment_of(ask: &Value) -> String {
    let link = sound_reply(wire::link, ask)["link"].as_str().unwrap().to_string();
    link.strip_prefix(ADDRESS).unwrap().to_string()
}

fn linked(fragment: &str) -> Value {
    reply(wire::linked, &json!({"fragment": fragment}))
}

fn opened(ask: &Value) -> Value {
    let reply = linked(&fragment_of(ask));
    assert_eq!(reply["problems"], json!([]));
    reply["sent"].clone()
}

/// A fragment that carries this text, whatever it is.
fn fragment_with(text: &str) -> String {
    format!("#glass={}", packed(text).unwrap())
}

#[track_caller]
fn refused(fragment: &str, code: &str) {
    let reply = linked(fragment);
    let problem = (&reply["problems"][0]["code"], &reply["problems"][0]["place"]);
    assert_eq!(problem, (&json!(code), &json!("link")), "{fragment:.200}");
    assert_eq!(reply["sent"], Value::Null);
}

/// A sound glass that was changed at one place, as a link.
fn tampered(pointer: &str, value: Value) -> String {
    fragment_with(&with(opened(&lock_keeper()), pointer, value).to_string())
}

#[test]
fn a_glass_of_five_lines_is_a_short_link() {
    let length = fragment_of(&lock_keeper()).len();
    assert!(length <= 900, "{length} characters");
    let without = fragment_of(&with(lock_keeper(), "/without_prices", true.into())).len();
    assert!(without < length, "{without} characters");
}

#[test]
fn what_was_sent_costs_what_it_cost() {
    let house = json!({"currency": "EUR", "decimal_mark": ",", "kitchen": "us", "tax_percent": "7", "reclaims_tax": true,
        "counts_fill": true, "rough": {"dash": {"text": "0,8", "unit": "ml"}}});
    let mut ask = with(lock_keeper(), "/house", house);
    ask["bottles"][0]["paid"] = json!({"price": "188,40", "bottles": "6", "discount": "10 %", "delivery": "9,90", "tax": "out"});
    ask["bottles"][1]["wastage_percent"] = "5".into();
    ask["bottles"][4]["measured"] = json!({"dash": {"readings": ["8.2", "8.4"], "found": {"size": "0.88", "standard": "0.01", "freedom": "2"}}});
    let own =
        json!({"name": "straw", "paid": {"price": "4"}, "holds": {"text": "200", "unit": "piece"}});
    let straw = json!({"own": own, "measure": {"text": "1", "unit": "piece"}, "charge": "whole"});
    ask["spec"]["lines"].as_array_mut().unwrap().push(straw);
    let cost = |ask: &Value| {
        answer(&json!({"house": ask["house"], "bottles": ask["bottles"], "specs": [ask["spec"]]}))["specs"][0].clone()
    };
    let sent = opened(&ask);
    assert!(cost(&ask)["cost"]["range"].is_object());
    assert_eq!(cost(&sent), cost(&ask));
    assert_eq!((&sent["has_prices"], &sent["spec"]["method"]), (&json!(true), &json!("shaken")));
}

#[test]
fn a_link_of_an_earlier_format_opens() {
    let text = r#"{"format":2,"house":{"currency":"GBP","decimal_mark":".","kitchen":"uk"},
        "bottles":[{"id":"a","name":"gin","holds":{"text":"70","unit":"cl"}}],
        "spec":{"id":"s","name":"Weir","lines":[{"bottle":"a","measure":{"text":"25","unit":"ml"}}]}}"#;
    let reply = linked(&fragment_with(&text.replace('\n', " ")));
    assert_eq!(reply["problems"], json!([]));
    assert_eq!(reply["sent"]["spec"]["lines"][0]["note"], "");
}

#[test]
fn a_note_goes_along() {
    let ask = with(lock_keeper(), "/spec/lines/0/note", "chilled, optional".into());
    assert_eq!(opened(&ask)["spec"]["lines"][0]["note"], "chilled, optional");
    let long = with(lock_keeper(), "/spec/lines/0/note", "x".repeat(301).into());
    refused(&fragment_of(&long), "name_too_long");
}

#[test]
fn what_is_nobodys_business_stays_on_the_device() {
    let mut ask = lock_keeper();
    ask["house"] = json!({"tax_percent": "PAID", "target_percent": "SECRET", "price_points": "SECRET", "sale_tax": "SECRET",
        "sale_tax_percent": "SECRET", "drinks_of": "SECRET"});
    let paid = json!({"price": "PAID", "bottles": "PAID", "discount": "PAID", "delivery": "PAID", "tax": "PAID", "tax_percent": "PAID"});
    let mut dear = bottle("dear", "Dear", "", "70 cl");
    dear["paid"] = paid;
    dear["have"] = json!({"text": "SECRET", "unit": "SECRET"});
    dear["measured"] = json!({"dash": {"readings": ["SECRET"], "vessel": {"text": "SECRET"}, "found": {"size": "0.9"}}});
    for (key, value) in [("price", "SECRET"), ("target_percent", "SECRET"), ("a_week", "SECRET")] {
        ask["spec"][key] = value.into();
    }
    let lines = ask["spec"]["lines"].as_array_mut().unwrap();
    lines.push(json!({"bottle": "dear", "own": bottle("", "SECRET", "", "")}));
    lines.push(json!({"own": dear}));
    lines.push(json!({"bottle": "gone"}));
    let bottles = ask["bottles"].as_array_mut().unwrap();
    bottles.extend([dear, bottle("other", "SECRET", "", "")]);
    let carried =
        |ask: &Value| unpacked(fragment_of(ask).strip_prefix("#glass=").unwrap()).unwrap();
    let text = carried(&ask);
    assert!(text.contains("PAID") && !text.contains("SECRET"), "{text}");
    let text = carried(&with(ask.clone(), "/without_prices", true.into()));
    assert!(!text.contains("PAID") && !text.contains("SECRET"), "{text}");
    let sent = opened(&with(ask, "/without_prices", true.into()));
    assert_eq!(
        (&sent["has_prices"], &sent["bottles"][0]["holds"]["text"]),
        (&json!(false), &json!("70 cl"))
    );
    assert_eq!(sent["spec"]["lines"][7]["bottle"], "", "a bottle that is gone is none");
}

#[test]
fn what_is_not_a_whole_link_is_refused() {
    let fragment = fragment_of(&lock_keeper());
    assert_eq!(linked(&fragment)["problems"], json!([]));
    let letters = fragment.strip_prefix("#glass=1.").unwrap();
    for (fragment, code) in [
        (String::new(), "link_unreadable"),
        ("#glass=".into(), "link_unreadable"),
        ("#glass=1.".into(), "link_unreadable"),
        (format!("#spec=1.{letters}"), "link_unreadable"),
        (format!("#glass={letters}"), "link_unreadable"),
        (format!("#glass=0.{letters}"), "link_unreadable"),
        (format!("#glass=-1.{letters}"), "link_unreadable"),
        (format!("#glass=x.{letters}"), "link_unreadable"),
        (format!("#glass=2.{letters}"), "link_newer"),
        ("#glass=12.of another kind".into(), "link_newer"),
        (format!("{fragment}="), "link_unreadable"),
        (format!("{fragment}AAAA"), "link_unreadable"),
        (format!("{fragment}{letters}"), "link_unreadable"),
        (format!("#glass=1.+{}", &letters[1..]), "link_unreadable"),
        (format!("#glass=1.{}", "A".repeat(MOST_PACKED)), "link_too_long"),
        (fragment_with(""), "link_unreadable"),
        (fragment_with("{}"), "link_unreadable"),
        (fragment_with(&"[".repeat(17_000)), "link_unreadable"),
        (fragment_with("{\"format\":99,\"more\":1}"), "link_newer"),
        (tampered("/more", json!(1)), "link_unreadable"),
        (tampered("/bottles/0/more", json!("")), "link_unreadable"),
        (tampered("/bottles/0/name", json!("é".repeat(81))), "name_too_long"),
        (tampered("/spec/name", json!("é".repeat(81))), "name_too_long"),
        (tampered("/spec/lines/0", json!({"own": {"name": "é".repeat(81)}})), "name_too_long"),
        (tampered("/spec/lines", vec![json!({}); 41].into()), "too_many_lines"),
        (tampered("/spec/lines/0/bottle", json!("elsewhere")), "link_unreadable"),
        (tampered("/spec/id", json!("")), "link_unreadable"),
        (tampered("/spec/id", json!("x".repeat(65))), "link_unreadable"),
        (tampered("/bottles/0/id", json!("1n3a6w5o0r2u4i6e7k")), "link_unreadable"),
        (tampered("/bottles/0/id", json!("")), "link_unreadable"),
        (tampered("/house/currency", json!("")), "link_unreadable"),
        (tampered("/house/currency", json!("gold")), "link_unreadable"),
    ] {
        refused(&fragment, code);
    }
    let reply = reply(wire::linked, &json!({"x": 1}));
    assert_eq!(reply["problems"][0]["code"], "request_unreadable");
}

#[test]
fn a_link_that_was_cut_off_or_mistyped_is_refused() {
    let fragment = fragment_of(&lock_keeper());
    let from = "#glass=1.".len();
    for at in from..fragment.len() {
        refused(&fragment[..at], "link_unreadable");
        for other in ["A", "z", "-", "."] {
            if fragment[at..=at] != *other {
                refused(
                    &format!("{}{other}{}", &fragment[..at], &fragment[at + 1..]),
                    "link_unreadable",
                );
            }
        }
    }
}

/// Nothing but the longest piece, which is one byte packed, and no check: the limit comes first.
fn bomb(bytes: usize) -> String {
    format!("#glass=1.{}", Base64UrlUnpadded::encode_string(&vec![0; bytes]))
}

#[test]
fn a_link_never_unpacks_into_more_than_its_limit() {
    let piece = r#"{"format":3,"has_prices":true,"house":{"currency":""#;
    assert_eq!(packed(piece).unwrap().len(), "1.".len() + (1 + 4usize) * 4 / 3 + 1);
    let fit = MOST_UNPACKED_BYTES / piece.len();
    refused(&bomb(17_000), "link_too_long");
    refused(&bomb(fit + 1 + 4), "link_too_long");
    refused(&bomb(fit + 4), "link_unreadable");
}

/// As many keys as fit, each compared with all before it.
#[test]
fn a_link_of_nothing_but_keys_is_refused_soon() {
    let keys: Vec<String> = (0..2_000).map(|key| format!("\"{key:x}\":0")).collect();
    refused(&fragment_with(&format!("{{\"format\":1,{}}}", keys.join(","))), "link_unreadable");
}

#[test]
fn the_largest_glass_fits_into_a_link_and_more_is_refused() {
    // Names of signs that no packing makes shorter by much.
    let name = |at: u32| -> String {
        (0..80)
            .map(|sign| char::from_u32(0x4E00 + (at * 7_919 + sign * 104_729) % 20_000).unwrap())
            .collect()
    };
    let line = |at: u32| json!({"own": bottle("2v4x6z1m3n5q7s0u9w", &name(at), "1234.56", "1234.56 ml"), "measure": {"text": "123.45 ml"}});
    let lines: Vec<Value> = (0..40).map(line).collect();
    let ask = with(lock_keeper(), "/spec/lines", lines.into());
    let reply = reply(wire::link, &ask);
    assert_eq!(reply["problems"][0]["code"], "link_long");
    assert_eq!(reply["problems"][0]["values"]["most"], "2000");
    let fragment = reply["link"].as_str().unwrap().strip_prefix(ADDRESS).unwrap();
    assert_eq!(linked(fragment)["sent"]["spec"]["lines"].as_array().unwrap().len(), 40);

    let text: String = (0..3).map(name).collect::<String>().repeat(100);
    let ask = with(lock_keeper(), "/spec/method", text.into());
    let reply = outside::reply(wire::link, &ask);
    assert_eq!(
        (&reply["link"], &reply["problems"][0]["code"]),
        (&json!(""), &json!("link_too_long"))
    );
}

proptest! {
    #![proptest_config(config())]

    #[test]
    fn prop_any_text_is_unpacked_as_it_was(text in "\\PC{0,400}") {
        prop_assert_eq!(unpacked(&packed(&text).unwrap()).unwrap(), text);
    }

    #[test]
    fn prop_any_fragment_is_answered(text in any::<String>(), bytes in prop::collection::vec(any::<u8>(), 0..200)) {
        let letters = Base64UrlUnpadded::encode_string(&bytes);
        for fragment in [text.clone(), format!("#glass={text}"), format!("#glass=1.{letters}"), fragment_with(&text)] {
            refused(&fragment, if fragment.starts_with("#glass=2.") { "link_newer" } else { "link_unreadable" });
        }
    }

    /// Names, ids and measures of any kind come out as they went in.
    #[test]
    fn prop_any_glass_is_read_as_it_was_sent(
        names in prop::collection::vec("\\PC{0,80}", 0..12), measures in prop::collection::vec(any::<String>(), 12), ids in any::<u64>(),
    ) {
        let bottles: Vec<Value> = names.iter().enumerate().map(|(at, name)| bottle(&format!("{ids}-{at}"), name, &measures[at], "1 l")).collect();
        let lines: Vec<Value> = bottles.iter().zip(&measures).map(|(bottle, text)| json!({"bottle": bottle["id"], "measure": {"text": text, "unit": "ml"}})).collect();
        let spec = json!({"id": "s", "name": names.first().cloned().unwrap_or_default(), "lines": lines});
        let reply = reply(wire::link, &json!({"bottles": bottles, "spec": spec}));
        let sent = linked(reply["link"].as_str().unwrap())["sent"].clone();
        prop_assert_eq!(&sent["spec"]["name"], &spec["name"]);
        for (at, (bottle, line)) in bottles.iter().zip(&lines).enumerate() {
            prop_assert_eq!(&sent["bottles"][at]["name"], &bottle["name"]);
            prop_assert_eq!(&sent["bottles"][at]["paid"]["price"], &bottle["paid"]["price"]);
            prop_assert_eq!(&sent["spec"]["lines"][at]["measure"], &line["measure"]);
            prop_assert_eq!(&sent["spec"]["lines"][at]["bottle"], &line["bottle"]);
        }
    }
}
