//! Money against published rules: the VAT fraction, HMRC's rounding, and shares that add up.

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

use farthing::money::{currency, share_out};
use farthing::number::Kept;
use farthing::reading::{Marks, number};
use outside::{answer, exact, half_away, value};
use serde_json::{Value, json};

fn kept(text: &str) -> Kept {
    number(text, Marks::POINT).unwrap().unwrap().kept().unwrap()
}

/// What one bottle costs whoever gets the tax back, and whoever does not.
#[track_caller]
fn check_tax(price: &str, tax: &str, rate: &str, with: &str, without: &str, source: &str) {
    for (reclaims, cost) in [(false, with), (true, without)] {
        let reply = answer(&json!({
            "house": {"tax_percent": rate, "reclaims_tax": reclaims},
            "bottles": [{"id": "b", "paid": {"price": price, "tax": tax}}],
        }));
        let ours = value(&reply["bottles"][0]["cost"]);
        let decimals = cost.split_once('.').map_or(0, |(_, part)| part.len() as u32);
        assert_eq!(half_away(&exact(&ours), decimals), cost, "{price} {tax} {rate}: {source}");
    }
}

#[test]
fn tax_inside_a_price_is_the_vat_fraction_of_it() {
    // Net = price − fraction of it. "VAT fraction of 1/6" at 20 % (an accountancy note).
    check_tax("240", "in", "20", "240", "200", "a bookkeeping thread: VAT 40 = 1/6");
    check_tax("210", "in", "5", "210", "200", "a bookkeeping thread: VAT 10 = 1/21");
    check_tax("235", "in", "17.5", "235", "200", "a bookkeeping thread: VAT 35 = 7/47");
    check_tax("123", "in", "23", "123", "100", "computed: 23/123");
    check_tax("119", "in", "19", "119", "100", "computed: 19/119");
    check_tax("227", "in", "13.5", "227", "200", "computed: 27/227");
    check_tax("109", "in", "9", "109", "100", "computed: 9/109");
    check_tax("9.50", "in", "20", "9.50", "7.916667", "computed: VAT 1.583333");
    check_tax("12.00", "in", "20", "12.00", "10.00", "computed: VAT 2.00");
    check_tax("7.99", "in", "20", "7.99", "6.658333", "computed: VAT 1.331667");
}

#[test]
fn tax_beside_a_price_is_added_for_whoever_cannot_reclaim_it() {
    check_tax("10", "out", "20", "12", "10", "computed");
    check_tax("7.916667", "out", "20", "9.50", "7.916667", "the row above, backwards");
    check_tax("100", "out", "13.5", "113.5", "100", "computed");
    check_tax("10", "none", "20", "10", "10", "there is none");
    check_tax("10", "in", "0", "10", "10", "zero-rated: limes and mint, Notice 701/14");
}

/// A trap: the tax inside a price is not `rate` of the price.
#[test]
fn tax_inside_a_price_is_not_the_rate_of_it() {
    let reply = answer(&json!({
        "house": {"tax_percent": "20", "reclaims_tax": true},
        "bottles": [{"id": "b", "paid": {"price": "240"}}],
    }));
    assert_ne!(value(&reply["bottles"][0]["cost"]), "192");
}

#[track_caller]
fn check_rounded(number: &str, decimals: u32, text: &str, source: &str) {
    assert_eq!(kept(number).text(decimals), text, "{number}: {source}");
}

#[test]
fn rounds_half_away_from_nought_as_revenue_offices_do() {
    // HMRC VATREC12030: below half a penny down, "0.5 of one penny or more, it should be rounded up".
    check_rounded("0.0049", 2, "0.00", "HMRC VATREC12030");
    check_rounded("0.005", 2, "0.01", "HMRC VATREC12030");
    check_rounded("0.0149", 2, "0.01", "HMRC VATREC12030");
    check_rounded("0.015", 2, "0.02", "HMRC VATREC12030");
    check_rounded("0.025", 2, "0.03", "HMRC VATREC12030; half to even would say 0.02");
    check_rounded("2.625", 2, "2.63", "computed; half to even would say 2.62");
    check_rounded("0.125", 2, "0.13", "computed; half to even would say 0.12");
    check_rounded("2.675", 2, "2.68", "as a binary double it rounds to 2.67");
    check_rounded("1.005", 2, "1.01", "as a binary double it rounds to 1.00");
    check_rounded("1.015", 2, "1.02", "as a binary double it rounds to 1.01");
    check_rounded("999999999.5", 0, "1000000000", "computed");
}

#[test]
fn the_traps_are_traps() {
    assert_eq!(format!("{:.2}", 2.675_f64), "2.67");
    assert_eq!(format!("{:.2}", 1.005_f64), "1.00");
    assert_eq!(format!("{:.2}", 0.125_f64), "0.12");
}

#[track_caller]
fn check_shown(code: &str, cost: &str, shown: &str, minor: Option<&str>) {
    let ours = currency(code).unwrap().show_cost(kept(cost));
    assert_eq!((ours.text.as_str(), ours.minor.as_deref()), (shown, minor), "{cost} {code}");
}

#[test]
fn a_cost_shows_its_minor_unit_and_two_figures_of_what_is_smaller() {
    check_shown("GBP", "0.3404", "0.34", Some("34"));
    check_shown("GBP", "0.17", "0.17", Some("17"));
    check_shown("GBP", "0.0043", "0.0043", Some("0.43"));
    check_shown("GBP", "0.00425", "0.0043", Some("0.43"));
    check_shown("EUR", "0.012", "0.012", Some("1.2"));
    check_shown("GBP", "0.000001", "0.0000010", Some("0.00010"));
    check_shown("GBP", "0", "0.00", Some("0"));
    check_shown("GBP", "1", "1.00", None);
    check_shown("GBP", "0.994", "0.99", Some("99"));
    check_shown("GBP", "0.995", "1.00", None);
    check_shown("GBP", "0.0995", "0.100", Some("10.0"));
    check_shown("GBP", "2.625", "2.63", None);
    check_shown("GBP", "999999999.999", "1000000000.00", None);
    check_shown("JPY", "34.4", "34", None);
    check_shown("JPY", "3.44", "3.4", None);
    check_shown("JPY", "0.43", "0.43", None);
    check_shown("KWD", "0.3404", "0.340", Some("340"));
    check_shown("KWD", "0.00043", "0.00043", Some("0.43"));
    check_shown("KWD", "12", "12.000", None);
    check_shown("CLF", "0.3404", "0.3404", Some("3404"));
    check_shown("CLF", "0.00004", "0.000040", Some("0.40"));
    check_shown("CLF", "2", "2.0000", None);
}

/// A whole divided by weights, and the sum of the parts.
#[track_caller]
fn check_shares(whole: i128, weights: &[&str], parts: &[i128]) {
    let weights: Vec<Kept> = weights.iter().map(|weight| kept(weight)).collect();
    let ours = share_out(whole, &weights).unwrap();
    assert_eq!(ours, parts);
    assert_eq!(ours.iter().sum::<i128>(), whole);
}

#[test]
fn shares_add_up_by_largest_remainders() {
    check_shares(100, &["1", "1", "1"], &[34, 33, 33]);
    check_shares(100, &["1", "1", "1", "1", "1", "1"], &[17, 17, 17, 17, 16, 16]);
    check_shares(100, &["1", "2"], &[33, 67]);
    check_shares(100, &["0", "1"], &[0, 100]);
    check_shares(100, &["5"], &[100]);
    check_shares(100, &["0.000000", "0.000001", "999999999"], &[0, 0, 100]);
    check_shares(1, &["1", "1"], &[1, 0]);
    check_shares(0, &["1", "1"], &[0, 0]);
    // Largest remainders, Hare quota, as an encyclopaedia works it (from memory): 100 000 votes of
    // 47, 16, 15.8, 12, 6.1 and 3.1 thousand fill ten seats as 5, 2, 1, 1, 1, 0; the quotas are
    // 4.7, 1.6, 1.58, 1.2, 0.61 and 0.31.
    let votes = ["47000", "16000", "15800", "12000", "6100", "3100"];
    check_shares(10, &votes, &[5, 2, 1, 1, 1, 0]);
}

#[test]
fn nothing_is_shared_out_by_weights_of_nought() {
    assert_eq!(share_out(100, &[Kept::NOUGHT, Kept::NOUGHT]), None);
    assert_eq!(share_out(100, &[]), None);
}

/// A column of costs as shown, and its sum.
#[track_caller]
fn check_column(code: &str, costs: &[&str], sum: &str, shown: &[&str], total: &str) {
    let costs: Vec<Kept> = costs.iter().map(|cost| kept(cost)).collect();
    let (column, whole) = currency(code).unwrap().show_column(&costs, kept(sum));
    let column: Vec<&str> = column.iter().map(|line| line.text.as_str()).collect();
    assert_eq!(column, shown);
    assert_eq!(whole.text, total);
    let added = column.iter().map(|line| exact(line)).reduce(|sum, line| sum + line).unwrap();
    assert_eq!(added, exact(total), "the column adds up to its sum as shown");
}

#[test]
fn a_column_adds_up_to_its_sum_as_shown() {
    check_column("GBP", &["0.335", "0.335"], "0.67", &["0.34", "0.33"], "0.67");
    check_column("GBP", &["1.333", "1.333", "1.333"], "3.999", &["1.34", "1.33", "1.33"], "4.00");
    check_column("GBP", &["1.857", "0.0043"], "1.8613", &["1.857", "0.004"], "1.861");
    check_column("GBP", &["2", "0.00004"], "2.00004", &["2.0000", "0.0000"], "2.0000");
    check_column("GBP", &["0", "0"], "0", &["0.00", "0.00"], "0.00");
    check_column("JPY", &["33.4", "33.4", "33.2"], "100", &["34", "33", "33"], "100");
    check_column("JPY", &["100", "0.4"], "100.4", &["100.0", "0.4"], "100.4");
    check_column("KWD", &["0.3335", "0.3335"], "0.667", &["0.334", "0.333"], "0.667");
    check_column("CLF", &["0.33335", "0.33335"], "0.6667", &["0.3334", "0.3333"], "0.6667");
}

/// The records say the same: a glass of three thirds.
#[test]
fn the_lines_of_a_glass_add_up_to_it_as_shown() {
    let line = json!({"bottle": "b", "measure": {"text": "1 ml"}});
    let reply = answer(&json!({
        "bottles": [{"id": "b", "paid": {"price": "1"}, "holds": {"text": "3 ml"}}],
        "specs": [{"id": "s", "lines": [line, line, line]}],
    }));
    let shown = |record: &Value| record["cost"]["shown"].as_str().unwrap().to_string();
    let spec = &reply["specs"][0];
    let lines: Vec<String> = spec["lines"].as_array().unwrap().iter().map(shown).collect();
    assert_eq!(lines, ["0.34", "0.33", "0.33"]);
    assert_eq!(shown(spec), "1.00");
    // Exactly, the three kept thirds make 0.999999999999: the glass is the sum of its lines.
    assert_eq!(value(&spec["cost"]), "0.999999999999");
}
