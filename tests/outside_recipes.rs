//! Our readings of four hundred lines against those of a public reader of ingredients
//! (`outside/ingredient-lines.txt`). Every difference is of a kind that is named here, with the reason why
//! we read otherwise, and each kind is counted.

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

use farthing::reading::{Kitchen, Marks, measure};
use farthing::recipe::likeness::folded;
use farthing::wire;
use outside::reply;
use serde_json::{Value, json};
use std::collections::BTreeMap;

const ROWS: &str = include_str!("outside/ingredient-lines.txt");

/// A line as one of the two readers reads it.
#[derive(Debug, PartialEq)]
struct Reading {
    least: Option<f64>,
    most: Option<f64>,
    unit: String,
    words: Vec<String>,
}

/// The words of a text, sorted, less those that only link or mark.
fn words(text: &str) -> Vec<String> {
    let mut words: Vec<String> = folded(text)
        .split(' ')
        .filter(|word| !matches!(*word, "" | "of" | "optional"))
        .map(String::from)
        .collect();
    words.sort_unstable();
    words
}

fn theirs(row: &[&str]) -> Reading {
    let number = |text: &str| text.parse::<f64>().ok();
    let least = number(row[1]);
    Reading { least, most: number(row[2]).or(least), unit: row[3].into(), words: words(row[4]) }
}

/// Ours in their words. They name what is counted as a unit; we keep that word as a note.
fn ours(line: &Value, their_unit: &str) -> Reading {
    let text = |value: &Value| value.as_str().unwrap().to_string();
    let (typed, unit) = (text(&line["measure"]["text"]), text(&line["measure"]["unit"]));
    let of = if unit == "part" { "piece" } else { &unit };
    let read = measure(&typed, of, Marks::POINT, Kitchen::Us, None).ok().flatten();
    let ends = read.map(|read| match read.spread.and_then(|spread| spread.ends()) {
        Some((least, most)) => (least.float(), most.float()),
        None => (read.amount.float(), read.amount.float()),
    });
    let mut words = words(&format!("{} {}", text(&line["name"]), text(&line["note"])));
    let counted = words.iter().position(|word| {
        !their_unit.is_empty() && word.trim_end_matches('s') == their_unit && unit == "piece"
    });
    let unit = match (unit.as_str(), counted) {
        (_, Some(place)) => words.remove(place).trim_end_matches('s').into(),
        ("us_fl_oz", _) if their_unit == "fluid ounce" => "fluid ounce".into(),
        ("us_fl_oz", _) => "ounce".into(),
        ("us_tsp", _) => "teaspoon".into(),
        ("us_tbsp", _) => "tablespoon".into(),
        ("us_cup", _) => "cup".into(),
        ("us_pint", _) => "pint".into(),
        ("ml", _) => "milliliter".into(),
        ("l", _) => "liter".into(),
        ("g", _) => "gram".into(),
        ("kg", _) => "kilogram".into(),
        ("lb", _) => "pound".into(),
        ("piece", _) if their_unit == "piece" => "piece".into(),
        ("piece", _) => String::new(),
        (unit, _) => unit.into(),
    };
    Reading { least: ends.map(|(least, _)| least), most: ends.map(|(_, most)| most), unit, words }
}

/// Why we read a line otherwise; nothing if we read it alike.
fn difference(line: &str, ours: &Reading, theirs: &Reading, read: &Value) -> Option<&'static str> {
    if ours == theirs {
        return None;
    }
    let code = read["problems"][0]["code"].as_str().unwrap_or_default();
    let starts = |all: &[&str]| all.iter().any(|start| line.starts_with(start));
    Some(match () {
        // A list's bullet, or a word that says what the line is for: they take the line for a name.
        () if starts(&["- ", "* ", "Garnish: "]) => "what stands before the measure",
        () if starts(&["Top with ", "juice of "]) => "what is done stands before the measure",
        // "a", "an", "one", "two", "half a", "about": they know no number in words behind which a measure may stand.
        () if starts(&["a ", "an ", "one ", "two ", "half a ", "about "]) => "a number in words",
        // They take the dash of "1-1/2" for a range that falls.
        () if starts(&["1-1/2 "]) => "a mixed number with a dash",
        // We ask rather than guess: 1.25 or 1250, 1 of 330 ml or 1330 ml, nothing at all.
        () if matches!(code, "number_ambiguous" | "number_must_be_positive") => {
            "a number to ask about"
        }
        // A strength, an age: the number counts nothing.
        () if starts(&["12-year", "7up", "100%"]) => "a number that counts nothing",
        // The metric one of two measures is what is poured.
        () if line.contains("(60 ml)") && theirs.words.iter().any(|word| word == "ml") => {
            "the metric measure in brackets"
        }
        () if line.contains("/60 ml") || line.contains("(12 oz)") => "a second measure",
        // Two measures that add up: we leave them to the person.
        () if line.contains(" plus ") => "two measures that add up",
        // A can, a pinch and a bunch have no size: we keep them in the note and ask.
        () if code == "unit_unknown" => "a measure without a size",
        // A dash without a number is one.
        () if theirs.least.is_none() && ours.least == Some(1.0) => {
            "a rough measure without a number"
        }
        // "large" is no unit.
        () if matches!(theirs.unit.as_str(), "large" | "small") => "a size taken for a unit",
        // Units of a bar that they leave in the name.
        () if theirs.unit.is_empty() && ours.least == theirs.least && ours.most == theirs.most => {
            "a unit they do not know"
        }
        () => return Some("unexplained"),
    })
}

fn read(line: &str) -> Value {
    reply(wire::recipe, &json!({"house": {"kitchen": "us"}, "text": line}))["lines"][0].clone()
}

/// Without a bullet and the word for what it is for, its number in digits.
fn plainly(line: &str) -> String {
    let starts = ["- ", "* ", "Garnish: "];
    let bare = starts.iter().find_map(|start| line.strip_prefix(start)).unwrap_or(line);
    let numbers = [
        ("half a ", "1/2 "),
        ("a ", "1 "),
        ("an ", "1 "),
        ("one ", "1 "),
        ("two ", "2 "),
        ("1-1/2 ", "1 1/2 "),
    ];
    let in_digits =
        |(word, digits): &(&str, &str)| Some(format!("{digits}{}", bare.strip_prefix(word)?));
    numbers.iter().find_map(in_digits).unwrap_or(bare.to_string())
}

#[test]
fn every_difference_has_a_reason() {
    let mut counts: BTreeMap<&str, usize> = BTreeMap::new();
    let mut unexplained = Vec::new();
    let rows = ROWS.lines().filter(|row| !row.starts_with('#'));
    for row in rows {
        let row: Vec<&str> = row.split('\t').collect();
        assert_eq!(row.len(), 5, "{row:?}");
        let read = read(row[0]);
        let theirs = theirs(&row);
        let ours = ours(&read, row[3]);
        let why = difference(row[0], &ours, &theirs, &read).unwrap_or("alike");
        if why == "unexplained" {
            unexplained.push(format!("{}\n  ours {ours:?}\n  theirs {theirs:?}\n", row[0]));
        }
        // What they leave unread we read as the same line written plainly.
        let plain = self::read(&plainly(row[0]));
        let told = |reading: Reading| (reading.least, reading.most, reading.unit);
        assert_eq!(told(self::ours(&plain, row[3])), told(ours), "{}", row[0]);
        assert_eq!(plain["name"], read["name"], "{}", row[0]);
        *counts.entry(why).or_default() += 1;
    }
    assert!(unexplained.is_empty(), "{counts:?}\n{}", unexplained.concat());
    let counted = [
        ("a measure without a size", 15),
        ("a mixed number with a dash", 12),
        ("a number in words", 63),
        ("a number that counts nothing", 3),
        ("a number to ask about", 3),
        ("a rough measure without a number", 3),
        ("a second measure", 2),
        ("a unit they do not know", 35),
        ("alike", 207),
        ("the metric measure in brackets", 20),
        ("two measures that add up", 1),
        ("what is done stands before the measure", 3),
        ("what stands before the measure", 33),
    ];
    assert_eq!(counts.into_iter().collect::<Vec<_>>(), counted);
}
