//! The shelf over a device that does as it is told, and over one that does not.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::arithmetic_side_effects,
    reason = "a test stops at what it did not expect"
)]

use farthing::shelf::{Refusal, Store, shelf};
use serde_json::{Value, json};
use std::collections::BTreeMap;

/// A device that fails on demand.
#[derive(Clone, Debug, Default)]
struct Device {
    kept: BTreeMap<String, String>,
    refuses: bool,
    /// Characters it has room for.
    room: Option<usize>,
}

impl Device {
    fn ask(&self) -> Result<(), Refusal> {
        if self.refuses { Err(Refusal::NotAllowed) } else { Ok(()) }
    }
}

impl Store for Device {
    fn read(&self, key: &str) -> Result<Option<String>, Refusal> {
        self.ask()?;
        Ok(self.kept.get(key).cloned())
    }

    fn write(&mut self, key: &str, text: &str) -> Result<(), Refusal> {
        self.ask()?;
        let others: usize =
            self.kept.iter().filter(|(k, _)| *k != key).map(|(k, v)| k.len() + v.len()).sum();
        if self.room.is_some_and(|room| others + key.len() + text.len() > room) {
            return Err(Refusal::Full);
        }
        self.kept.insert(key.into(), text.into());
        Ok(())
    }

    fn remove(&mut self, key: &str) -> Result<(), Refusal> {
        self.ask()?;
        self.kept.remove(key);
        Ok(())
    }

    fn keys(&self) -> Result<Vec<String>, Refusal> {
        self.ask()?;
        // The order of a browser's keys is its own affair.
        Ok(self.kept.keys().rev().cloned().collect())
    }
}

#[track_caller]
fn wish(device: &mut Device, ask: Value) -> Value {
    serde_json::from_str(&shelf(device, &ask.to_string())).unwrap()
}

fn bottle(id: &str, name: &str, price: &str) -> Value {
    json!({
        "id": id, "name": name, "wastage_percent": "", "rough": {}, "measured": {}, "strength": "", "keeps_days": "", "allergens": [], "warns": [],
        "have": {"text": "", "unit": ""}, "spirit": "",
        "paid": {"price": price, "bottles": "", "discount": "", "delivery": "", "tax": "in", "tax_percent": ""},
        "holds": {"text": "100", "unit": "ml"},
    })
}

fn keep(device: &mut Device, before: Value, after: Value) -> Value {
    wish(
        device,
        json!({"wish": "keep", "kind": "bottle", "before": before, "after": after, "on": "2026-11-25"}),
    )
}

#[track_caller]
fn codes(reply: &Value) -> Vec<&str> {
    reply["problems"].as_array().unwrap().iter().map(|p| p["code"].as_str().unwrap()).collect()
}

#[track_caller]
fn none_wrong(reply: &Value) {
    assert_eq!(codes(reply), Vec::<&str>::new());
}

#[test]
fn what_is_kept_is_there_when_the_shelf_is_opened_again() {
    let mut device = Device::default();
    none_wrong(&keep(&mut device, Value::Null, bottle("b", "orange bitters", "18.50")));
    let spec = json!({"id": "s", "name": "Towpath", "lines": [
        {"bottle": "b", "own": null, "measure": {"text": "2", "unit": "dash"}, "charge": "poured", "note": "last"}],
        "price": "9", "target_percent": "", "method": "stirred", "water": {"text": "", "unit": ""},
        "without_alcohol": false, "a_week": ""});
    none_wrong(&wish(
        &mut device,
        json!({"wish": "keep", "kind": "spec", "after": spec, "on": "2026-11-25"}),
    ));
    none_wrong(&wish(&mut device, json!({"wish": "keep_draft", "text": "half-typed"})));
    let open = wish(&mut device, json!({"wish": "open"}));
    none_wrong(&open);
    assert_eq!(open["bottles"][0]["record"], bottle("b", "orange bitters", "18.50"));
    assert_eq!(open["bottles"][0]["revision"], 1);
    assert_eq!(open["specs"][0]["record"], spec);
    assert_eq!(open["draft"], "half-typed");
    assert_eq!(open["house"], Value::Null);
}

#[test]
fn a_new_price_remembers_the_old_one_and_its_last_day() {
    let mut device = Device::default();
    let old = bottle("b", "orange bitters", "18.50");
    keep(&mut device, Value::Null, old.clone());
    let reply = wish(
        &mut device,
        json!({"wish": "keep", "kind": "bottle", "before": old, "after": bottle("b", "orange bitters", "19.75"), "on": "2026-12-01"}),
    );
    assert_eq!(reply["kept"]["revision"], 2);
    assert_eq!(reply["kept"]["earlier"][0]["paid"]["price"], "18.50");
    assert_eq!(reply["kept"]["earlier"][0]["until"], "2026-12-01");
}

#[test]
fn a_new_name_alone_is_no_new_price() {
    let mut device = Device::default();
    let old = bottle("b", "orange bitters", "18.50");
    keep(&mut device, Value::Null, old.clone());
    let reply = keep(&mut device, old, bottle("b", "bitter orange", "18.50"));
    assert_eq!(reply["kept"]["earlier"], json!([]));
}

#[test]
fn earlier_prices_are_bounded() {
    let mut device = Device::default();
    for cents in 0..60 {
        keep(&mut device, Value::Null, bottle("b", "gin", &format!("18.{cents:02}")));
    }
    let open = wish(&mut device, json!({"wish": "open"}));
    let earlier = open["bottles"][0]["earlier"].as_array().unwrap();
    assert_eq!(earlier.len(), farthing::shelf::MOST_EARLIER);
    assert_eq!(earlier[0]["paid"]["price"], "18.58");
}

#[test]
fn two_tabs_that_change_different_fields_lose_nothing() {
    let mut device = Device::default();
    let seen = bottle("b", "orange bitters", "18.50");
    keep(&mut device, Value::Null, seen.clone());
    keep(&mut device, seen.clone(), bottle("b", "orange bitters", "19.00"));
    let reply = keep(&mut device, seen, bottle("b", "bitter orange", "18.50"));
    assert_eq!(reply["kept"]["record"], bottle("b", "bitter orange", "19.00"));
    assert_eq!(reply["clashes"], json!([]));
}

#[test]
fn a_record_of_the_first_format_is_read_and_kept_on() {
    let mut device = Device::default();
    let mut first = bottle("b", "orange bitters", "18.50");
    first.as_object_mut().unwrap().remove("measured");
    let kept = json!({"format": 1, "revision": 7, "kept_on": "2026-01-31", "record": first, "earlier": []});
    device.kept.insert("farthing:bottle:b".into(), kept.to_string());
    let opened = wish(&mut device, json!({"wish": "open"}));
    none_wrong(&opened);
    let read = opened["bottles"][0]["record"].clone();
    assert_eq!(read, bottle("b", "orange bitters", "18.50"));
    let reply = keep(&mut device, read, bottle("b", "bitter orange", "18.50"));
    assert_eq!((&reply["kept"]["format"], &reply["kept"]["revision"]), (&json!(3), &json!(8)));
}

#[test]
fn two_tabs_that_change_one_field_are_told() {
    let mut device = Device::default();
    let seen = bottle("b", "orange bitters", "18.50");
    keep(&mut device, Value::Null, seen.clone());
    keep(&mut device, seen.clone(), bottle("b", "orange bitters", "19.00"));
    let reply = keep(&mut device, seen, bottle("b", "orange bitters", "20.00"));
    assert_eq!(reply["kept"]["record"]["paid"]["price"], "20.00");
    assert_eq!(reply["clashes"], json!(["paid"]));
}

#[test]
fn an_edit_that_another_tab_wrote_over_is_put_back_in_once() {
    let mut device = Device::default();
    let seen = bottle("b", "orange bitters", "18.50");
    keep(&mut device, Value::Null, seen.clone());
    let mine = bottle("b", "bitter orange", "18.50");
    keep(&mut device, seen.clone(), mine.clone());
    // The other tab read before and writes after: the device now holds only its edit.
    let key = "farthing:bottle:b";
    let theirs = bottle("b", "orange bitters", "19.00");
    let kept = json!({"format": 1, "revision": 2, "kept_on": "2026-11-25", "record": theirs, "earlier": []});
    device.kept.insert(key.into(), kept.to_string());
    let heard = json!({"wish": "heard", "kind": "bottle", "before": seen, "after": mine, "on": "2026-11-25"});
    let reply = wish(&mut device, heard.clone());
    assert_eq!(reply["kept"]["record"], bottle("b", "bitter orange", "19.00"));
    assert_eq!(reply["kept"]["revision"], 3);
    // Hearing of it again changes nothing: the tabs have come to rest.
    assert_eq!(wish(&mut device, heard)["kept"]["revision"], 3);
}

#[test]
fn what_is_removed_can_be_put_back_as_it_was() {
    let mut device = Device::default();
    let kept = keep(&mut device, Value::Null, bottle("b", "gin", "20"))["kept"].clone();
    none_wrong(&wish(&mut device, json!({"wish": "remove", "kind": "bottle", "id": "b"})));
    assert_eq!(wish(&mut device, json!({"wish": "open"}))["bottles"], json!([]));
    none_wrong(&wish(
        &mut device,
        json!({"wish": "restore", "kind": "bottle", "after": kept.clone()}),
    ));
    assert_eq!(wish(&mut device, json!({"wish": "open"}))["bottles"], json!([kept]));
}

#[test]
fn a_device_that_refuses_is_told_of_and_nothing_panics() {
    let mut device = Device { refuses: true, ..Device::default() };
    for ask in [
        json!({"wish": "open"}),
        json!({"wish": "keep", "kind": "bottle", "after": bottle("b", "gin", "20"), "on": ""}),
        json!({"wish": "remove", "kind": "bottle", "id": "b"}),
        json!({"wish": "keep_draft", "text": "x"}),
        json!({"wish": "save_file", "on": ""}),
    ] {
        assert_eq!(codes(&wish(&mut device, ask)), ["storage_refused"]);
    }
}

#[test]
fn a_full_device_keeps_what_it_had() {
    let mut device = Device { room: Some(500), ..Device::default() };
    none_wrong(&keep(&mut device, Value::Null, bottle("a", "gin", "20")));
    let before = device.kept.clone();
    assert_eq!(codes(&keep(&mut device, Value::Null, bottle("b", "rum", "21"))), ["storage_full"]);
    assert_eq!(device.kept, before);
}

#[test]
fn damaged_records_are_set_aside_and_offered_as_a_file() {
    for damaged in
        ["", "{", "null", "[]", "{}", r#"{"format":1}"#, r#"{"format":1,"record":{"prise":"1"}}"#]
    {
        let mut device = Device::default();
        keep(&mut device, Value::Null, bottle("good", "gin", "20"));
        device.kept.insert("farthing:bottle:bad".into(), damaged.into());
        let open = wish(&mut device, json!({"wish": "open"}));
        assert_eq!(codes(&open), ["record_set_aside"], "{damaged:?}");
        assert_eq!(open["problems"][0]["place"], "farthing:bottle:bad");
        assert_eq!(open["bottles"].as_array().unwrap().len(), 1);
        assert_eq!(
            open["aside"],
            json!([{"key": "farthing:aside:0:farthing:bottle:bad", "text": damaged}])
        );
        // It is told once; the text stays until a person takes it away.
        none_wrong(&wish(&mut device, json!({"wish": "open"})));
        let file =
            wish(&mut device, json!({"wish": "aside_file"}))["file"].as_str().unwrap().to_string();
        assert!(file.contains(&json!(damaged).to_string()), "{file}");
    }
}

#[test]
fn a_damaged_record_stays_where_it_is_if_there_is_no_room_to_set_it_aside() {
    let mut device = Device::default();
    device.kept.insert("farthing:bottle:bad".into(), "{".into());
    device.room = Some(25);
    let open = wish(&mut device, json!({"wish": "open"}));
    assert_eq!(codes(&open), ["record_set_aside"]);
    assert_eq!(device.kept["farthing:bottle:bad"], "{");
}

#[test]
fn a_second_damaged_text_under_one_key_does_not_write_over_the_first() {
    let mut device = Device::default();
    for text in ["first", "second"] {
        device.kept.insert("farthing:house:house".into(), text.into());
        wish(&mut device, json!({"wish": "open"}));
    }
    let aside: Vec<_> = device.kept.values().cloned().collect();
    assert_eq!(aside, ["first", "second"]);
}

#[test]
fn a_record_of_a_newer_version_is_left_alone() {
    let mut device = Device::default();
    let newer = r#"{"format":4,"whatever":true}"#;
    device.kept.insert("farthing:bottle:b".into(), newer.into());
    let open = wish(&mut device, json!({"wish": "open"}));
    assert_eq!(codes(&open), ["record_newer"]);
    assert_eq!(codes(&keep(&mut device, Value::Null, bottle("b", "gin", "20"))), ["record_newer"]);
    assert_eq!(device.kept["farthing:bottle:b"], newer);
}

#[test]
fn keys_of_other_pages_are_none_of_ours() {
    let mut device = Device::default();
    device.kept.insert("notes".into(), "{".into());
    none_wrong(&wish(&mut device, json!({"wish": "open"})));
    assert_eq!(device.kept["notes"], "{");
}

fn full_device() -> Device {
    let mut device = Device::default();
    for (id, name, price) in [("b", "orange bitters", "18.50"), ("a", "rye whisky", "32")] {
        keep(&mut device, Value::Null, bottle(id, name, price));
    }
    keep(&mut device, bottle("b", "orange bitters", "18.50"), bottle("b", "orange bitters", "19"));
    let house = json!({"currency": "EUR", "decimal_mark": ",", "kitchen": "metric", "tax_percent": "19", "reclaims_tax": true, "counts_fill": false, "sale_tax": "in", "sale_tax_percent": "", "target_percent": "75", "price_points": "half", "drinks_of": "uk", "rough": {}});
    wish(&mut device, json!({"wish": "keep", "kind": "house", "after": house, "on": "2026-11-25"}));
    device
}

#[test]
fn a_saved_shelf_comes_back_to_the_letter() {
    let save = json!({"wish": "save_file", "on": "2026-11-25"});
    let file = wish(&mut full_device(), save.clone())["file"].as_str().unwrap().to_string();
    let mut empty = Device::default();
    none_wrong(&wish(&mut empty, json!({"wish": "take_file", "text": file, "on": "2026-11-26"})));
    assert_eq!(wish(&mut empty, save)["file"], file);
    assert_eq!(empty.kept, full_device().kept);
}

#[test]
fn a_file_says_what_it_would_change_before_it_does() {
    let save = json!({"wish": "save_file", "on": "2026-11-25"});
    let file = wish(&mut full_device(), save)["file"].as_str().unwrap().to_string();
    let mut device = Device::default();
    keep(&mut device, Value::Null, bottle("b", "orange bitters", "17"));
    keep(&mut device, Value::Null, bottle("own", "limes", "3"));
    let before = device.kept.clone();
    let reply = wish(&mut device, json!({"wish": "read_file", "text": file}));
    assert_eq!(device.kept, before, "reading changes nothing");
    let changes: Vec<_> = reply["changes"]
        .as_array()
        .unwrap()
        .iter()
        .map(|c| {
            (c["kind"].as_str().unwrap(), c["id"].as_str().unwrap(), c["change"].as_str().unwrap())
        })
        .collect();
    assert_eq!(changes, [("bottle", "a", "new"), ("bottle", "b", "changed"), ("house", "", "new")]);
    assert_eq!(reply["changes"][1]["fields"], json!(["paid"]));
    let taken = wish(&mut device, json!({"wish": "take_file", "text": file, "on": "2026-11-26"}));
    none_wrong(&taken);
    assert_eq!(taken["bottles"].as_array().unwrap().len(), 3, "a file removes nothing");
    assert_eq!(taken["bottles"][1]["earlier"][0]["paid"]["price"], "17");
}

#[test]
fn a_file_that_does_not_fit_changes_nothing() {
    let save = json!({"wish": "save_file", "on": "2026-11-25"});
    let file = wish(&mut full_device(), save)["file"].as_str().unwrap().to_string();
    let mut device = Device { room: Some(800), ..Device::default() };
    keep(&mut device, Value::Null, bottle("b", "orange bitters", "17"));
    let before = device.kept.clone();
    let reply = wish(&mut device, json!({"wish": "take_file", "text": file, "on": "2026-11-26"}));
    assert_eq!(codes(&reply), ["storage_full"]);
    assert_eq!(device.kept, before);
}

#[test]
fn files_that_are_none_of_ours_are_refused_whole() {
    let rows = [
        ("", "file_unreadable"),
        ("{}", "file_unreadable"),
        (r#"{"format":1}"#, "file_unreadable"),
        (r#"{"format":1,"holds":"stamps"}"#, "file_unreadable"),
        (r#"{"format":1,"holds":"farthing shelf","extra":1}"#, "file_unreadable"),
        (
            r#"{"format":1,"holds":"farthing shelf","bottles":[{"format":1,"record":{}}]}"#,
            "file_unreadable",
        ),
        (r#"{"format":4,"holds":"farthing shelf"}"#, "file_newer"),
        (r#"{"format":1,"holds":"farthing shelf","__proto__":{"x":1}}"#, "file_unreadable"),
    ];
    for (text, code) in rows {
        let mut device = Device::default();
        let reply = wish(&mut device, json!({"wish": "take_file", "text": text, "on": ""}));
        assert_eq!(codes(&reply), [code], "{text}");
        assert!(device.kept.is_empty());
    }
    let deep = "[".repeat(100_000);
    assert_eq!(
        codes(&wish(&mut Device::default(), json!({"wish": "read_file", "text": deep}))),
        ["file_unreadable"]
    );
    let large = " ".repeat(10_000_001);
    assert_eq!(
        codes(&wish(&mut Device::default(), json!({"wish": "read_file", "text": large}))),
        ["file_too_large"]
    );
}

#[test]
fn a_shelf_has_a_most() {
    let mut device = Device::default();
    for number in 0..farthing::wire::MOST_SPECS {
        let kept = json!({"format": 1, "revision": 1, "kept_on": "", "record": {"id": format!("{number}")}, "earlier": []});
        device.kept.insert(format!("farthing:spec:{number}"), kept.to_string());
    }
    let reply = wish(
        &mut device,
        json!({"wish": "keep", "kind": "spec", "after": {"id": "more"}, "on": ""}),
    );
    assert_eq!(codes(&reply), ["too_many_specs"]);
    let reply = wish(
        &mut device,
        json!({"wish": "keep", "kind": "spec", "after": {"id": "7", "name": "still changes"}, "on": ""}),
    );
    none_wrong(&reply);
}

#[test]
fn what_is_no_wish_is_a_problem() {
    let rows = [
        (json!({"wish": "burn"}), "choice_unknown"),
        (json!({"wish": "keep", "kind": "hat"}), "choice_unknown"),
        (json!({"wish": "keep", "kind": "bottle", "after": {"id": ""}}), "choice_unknown"),
        (
            json!({"wish": "keep", "kind": "bottle", "after": {"id": "x".repeat(65)}}),
            "choice_unknown",
        ),
        (
            json!({"wish": "keep", "kind": "bottle", "after": {"id": "b", "name": "x".repeat(81)}}),
            "name_too_long",
        ),
        (
            json!({"wish": "keep", "kind": "bottle", "after": {"id": "b", "prise": "1"}}),
            "request_unreadable",
        ),
        (json!({"wish": "open", "and": 1}), "request_unreadable"),
    ];
    for (ask, code) in rows {
        assert_eq!(codes(&wish(&mut Device::default(), ask.clone())), [code], "{ask}");
    }
}
