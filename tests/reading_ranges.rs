//! Ranges as people write them, and what they mean: `best unit, least to most, how it is spread`.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::arithmetic_side_effects,
    reason = "a test stops at what it did not expect"
)]

use farthing::number::Fraction;
use farthing::reading::{Kitchen, Marks, measure};

fn told(text: &str, marks: Marks) -> String {
    let text_of = |number: Fraction| number.kept().unwrap().plain_text();
    match measure(text, "", marks, Kitchen::Uk, None) {
        Ok(Some(read)) => {
            let spread = read.spread.map(|spread| {
                let (least, most) = spread.ends().unwrap();
                format!(", {} to {}, {}", text_of(least), text_of(most), spread.text())
            });
            format!("{} {}{}", text_of(read.amount), read.unit.code, spread.unwrap_or_default())
        }
        Ok(None) => String::new(),
        Err(fault) => fault.code().text().to_string(),
    }
}

#[track_caller]
fn check(texts: &[&str], read: &str) {
    for text in texts {
        assert_eq!(told(text, Marks::POINT), read, "{text}");
    }
}

#[test]
fn from_one_to_another_is_as_likely_anywhere() {
    check(
        &[
            "5-10 ml",
            "5–10ml",
            "5 — 10 ml",
            "5 to 10 ml",
            "five or ten ml",
            "5 TO 10 ML",
            "between 5 and 10 ml",
            "from 5 to 10 ml",
            "5 ml to 10 ml",
            "5ml-10ml",
            "5 ml – 10",
            "5 ml or 10 ml",
            "٥-١٠ ml",
            "about 5-10 ml",
            "5-10 ml or so",
        ],
        "7.5 ml, 5 to 10, even",
    );
    check(
        &["2-3 dashes", "2 to 3 dashes", "2 dashes or 3", "two or three dashes"],
        "2.5 dash, 2 to 3, even",
    );
    check(&["a dash or two", "1 dash or 2 dashes"], "1.5 dash, 1 to 2, even");
    check(&["1/2-1 tsp", "½ to 1 tsp"], "0.75 metric_tsp, 0.5 to 1, even");
    check(&["1 1/2-2 fl oz"], "1.75 imp_fl_oz, 1.5 to 2, even");
    check(&["0-5 ml"], "2.5 ml, 0 to 5, even");
    assert_eq!(told("0,5-1,5 ml", Marks::COMMA), "1 ml, 0.5 to 1.5, even");
}

#[test]
fn about_is_a_fifth_either_way_and_likeliest_in_the_middle() {
    check(
        &[
            "about 200 ml",
            "around 200 ml",
            "~200 ml",
            "≈ 200ml",
            "roughly 200 ml",
            "ca. 200 ml",
            "approx. 200 ml",
            "200 ml or so",
            "About 200 ml",
        ],
        "200 ml, 160 to 240, middling",
    );
}

#[test]
fn most_of_something_is_three_fifths_to_nearly_all() {
    check(&["most of the bottle", "most of a bottle"], "0.775 bottle, 0.6 to 0.95, even");
    check(
        &["most of a 200 ml bottle", "most of the 200ml bottle", "Most of a 200 ml Bottle"],
        "155 ml, 120 to 190, even",
    );
    check(&["most of a dropper"], "0.775 dropper, 0.6 to 0.95, even");
}

#[test]
fn parts_and_single_ones_are_exact() {
    check(&["half of a 200 ml bottle", "half a 200 ml bottle"], "100 ml");
    check(&["a third of a 30 cl bottle"], "10 cl");
    check(&["half a dropper", "half of a dropper"], "0.5 dropper");
    check(&["a third of a dropper"], "0.333333333333 dropper");
    check(&["a squeeze"], "1 dropper");
    check(&["5-5 ml"], "5 ml");
    check(&["1-1/2 ml"], "range_backwards");
}

#[test]
fn what_is_no_range_is_told() {
    check(&["10-5 ml", "10 ml to 5 ml", "2 or 1 dashes"], "range_backwards");
    check(&["5- ml", "5 to ml", "about ml"], "number_unreadable");
    check(&["5 ml to 2 dashes", "5 and 10 ml", "5-10 thimbles"], "unit_unknown");
    check(&["5-10"], "unit_missing");
    check(&["5--10 ml"], "number_negative");
    check(&["0-0 ml"], "number_must_be_positive");
    // Any text at all is read or refused, and ends.
    for text in [
        "about",
        "most",
        "most of",
        "between",
        "or so",
        " or so",
        "to",
        "-",
        "bottle",
        "of a bottle",
    ] {
        assert!(!told(text, Marks::POINT).contains(','), "{text}");
    }
}
