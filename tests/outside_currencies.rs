//! Currencies against ISO 4217 list one, entry by entry.

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

use farthing::money::{currencies, currency};
use farthing::problem::Code;
use farthing::wire;
use serde_json::{Value, json};

const LIST_ONE: &str = include_str!("outside/iso-4217-list-one.txt");

/// Code and digits of every entry, `N.A.` where a currency has no minor unit.
fn list_one() -> Vec<(&'static str, &'static str)> {
    let rows = LIST_ONE.lines().skip(1);
    rows.map(|row| row.split_once(' ').expect("a code and its digits")).collect()
}

#[test]
fn every_entry_of_list_one_has_its_digits() {
    for (code, digits) in list_one() {
        let ours = currency(code).map(|currency| currency.digits.to_string());
        assert_eq!(ours.as_deref().unwrap_or("N.A."), digits, "{code}");
    }
}

#[test]
fn no_currency_is_ours_alone() {
    for own in currencies() {
        assert!(list_one().contains(&(own.code, own.digits.to_string().as_str())), "{}", own.code);
    }
}

/// Counts as list one of 2026-01-01 gives them, so that a shortened copy is noticed.
#[test]
fn list_one_is_whole() {
    let count = |digits: &str| list_one().iter().filter(|(_, own)| *own == digits).count();
    assert!(LIST_ONE.lines().next().unwrap().contains("published 2026-01-01"));
    assert_eq!(list_one().len(), 178);
    assert_eq!(["0", "2", "3", "4", "N.A."].map(count), [17, 139, 7, 2, 13]);
    assert_eq!(currencies().count(), 178 - 13);
}

/// What the page is offered, and what a cost of a third then looks like.
#[track_caller]
fn check(code: &str, digits: u64, third: &str, why: &str) {
    let tables: Value = serde_json::from_str(&wire::tables()).unwrap();
    let rows = tables["currencies"].as_array().unwrap();
    let row = rows.iter().find(|row| row["code"] == code).unwrap_or_else(|| panic!("{code}"));
    assert_eq!(row["digits"], digits, "{code}: {why}");
    assert_eq!(shown(code, "100"), third, "{code}: {why}");
}

/// A third of a bottle at a price, as shown.
fn shown(code: &str, price: &str) -> String {
    let ask = json!({
        "house": {"currency": code},
        "bottles": [{"id": "b", "paid": {"price": price}, "holds": {"text": "3 piece"}}],
        "pours": [{"bottle": "b", "measure": {"text": "1 piece"}}],
    });
    let reply: Value = serde_json::from_str(&wire::answer(&ask.to_string())).unwrap();
    reply["pours"][0]["cost"]["shown"].as_str().unwrap().to_string()
}

#[test]
fn currencies_whose_digits_are_often_got_wrong() {
    check("GBP", 2, "33.33", "list one");
    check("HUF", 2, "33.33", "two in the list, though cash has none");
    check("ISK", 0, "33", "none in the list");
    check("UGX", 0, "33", "none in the list");
    check("JPY", 0, "33", "none in the list");
    check("KRW", 0, "33", "none in the list");
    check("IQD", 3, "33.333", "three in the list");
    check("KWD", 3, "33.333", "three in the list");
    check("TND", 3, "33.333", "three in the list");
    check("CLF", 4, "33.3333", "four in the list");
    check("UYW", 4, "33.3333", "four in the list");
    check("MGA", 2, "33.33", "two in the list, though its parts are fifths");
    check("MRU", 2, "33.33", "two in the list, though its parts are fifths");
    check("EUR", 2, "33.33", "list one; Croatia and Bulgaria pay in it");
}

#[track_caller]
fn check_refused(code: &str, why: &str) {
    let fault = currency(code).expect_err(why);
    assert_eq!(fault.code(), Code::CurrencyUnknown, "{code}: {why}");
    let reply = wire::answer(&json!({"house": {"currency": code}}).to_string());
    let reply: Value = serde_json::from_str(&reply).unwrap();
    let problem =
        json!({"code": "currency_unknown", "place": "house.currency", "values": {"typed": code}});
    assert_eq!(reply["problems"], json!([problem]), "{code}: {why}");
}

#[test]
fn what_is_no_currency_to_pay_in_is_refused() {
    check_refused("HRK", "gone: Croatia pays in euro; in list three");
    check_refused("BGN", "gone: Bulgaria pays in euro; in list three");
    check_refused("CUC", "gone; in list three");
    check_refused("ANG", "gone: now XCG; in list three");
    check_refused("DEM", "gone; in list three");
    check_refused("XAU", "gold has no minor unit");
    check_refused("XDR", "a right to draw, no money over a bar");
    check_refused("XXX", "no currency");
    check_refused("XTS", "for tests");
    check_refused("gbp", "codes are capitals");
    check_refused("GB", "two letters");
    check_refused("", "none");
    check_refused("£", "a sign");
}
