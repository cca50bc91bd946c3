//! Our JSON against `serde_json`: the same documents accepted, with the same content, and the same refused.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::arithmetic_side_effects,
    reason = "a test stops at what it did not expect"
)]

use farthing::wire::json::{DEEPEST, Json};
use farthing::wire::record::Write;
use proptest::prelude::*;
use serde_json::Value;

fn written(json: &Json) -> String {
    let mut text = String::new();
    json.write(&mut text);
    text
}

/// Accepted with the same content, or refused, as the referee does.
#[track_caller]
fn check(text: &str) {
    let ours =
        Json::parse(text).ok().map(|json| serde_json::from_str::<Value>(&written(&json)).unwrap());
    let theirs = serde_json::from_str::<Value>(text).ok();
    assert_eq!(ours, theirs, "{text}");
}

#[test]
fn the_corners_of_the_standard() {
    for text in [
        "null",
        " true ",
        "false",
        "0",
        "-0",
        "-1",
        "1.5",
        "1e5",
        "1E-5",
        "1.25e+2",
        "\"\"",
        "[]",
        "{}",
        "[1,2]",
        "{\"a\":1}",
        "\"\\\"\\\\\\/\\b\\f\\n\\r\\t\"",
        "\"\\u00e9\"",
        "\"\\ud83c\\udf78\"",
        "\"é\u{202e}\u{1f378}\"",
        "[[[]]]",
        "\t[ 1 , 2 ]\r\n",
        "{ \"a\" : { \"b\" : [ ] } }",
        // Refused.
        "",
        " ",
        "nul",
        "nulls",
        "True",
        "01",
        "-01",
        "-",
        "1.",
        ".5",
        "1e",
        "1e+",
        "+1",
        "0x1",
        "1 2",
        "\"",
        "\"\\x\"",
        "\"\\u12\"",
        "\"\\ud800\"",
        "\"\\ud800x\"",
        "\"\\ud800\\u0041\"",
        "\"\\udc00\"",
        "\"\n\"",
        "\"\u{0}\"",
        "[",
        "[1",
        "[1,",
        "[1,]",
        "[,1]",
        "]",
        "{",
        "{\"a\"}",
        "{\"a\":}",
        "{\"a\":1,}",
        "{a:1}",
        "{1:1}",
        "{\"a\":1 \"b\":2}",
        "'a'",
        "NaN",
        "Infinity",
        "// 1",
        "[1]]",
        "\u{feff}1",
    ] {
        check(text);
    }
}

#[test]
fn what_we_refuse_though_the_standard_allows_it() {
    assert!(Json::parse(r#"{"a":1,"a":2}"#).is_err(), "a key written twice");
    let nested = |levels: usize| "[".repeat(levels) + &"]".repeat(levels);
    assert!(Json::parse(&nested(DEEPEST)).is_ok());
    assert!(Json::parse(&nested(DEEPEST + 1)).is_err());
    assert!(Json::parse(&"[".repeat(1_000_000)).is_err(), "and it does so at once");
}

fn document() -> impl Strategy<Value = Value> {
    let leaf = prop_oneof![
        Just(Value::Null),
        any::<bool>().prop_map(Value::from),
        any::<i64>().prop_map(Value::from),
        any::<String>().prop_map(Value::from),
    ];
    leaf.prop_recursive(5, 40, 6, |inner| {
        prop_oneof![
            prop::collection::vec(inner.clone(), 0..6).prop_map(Value::from),
            prop::collection::btree_map(any::<String>(), inner, 0..6)
                .prop_map(|fields| Value::Object(fields.into_iter().collect())),
        ]
    })
}

proptest! {
    #[test]
    fn prop_every_document_reads_and_is_written_the_same(document in document()) {
        check(&document.to_string());
        check(&serde_json::to_string_pretty(&document).unwrap());
    }

    #[test]
    fn prop_damaged_documents_are_judged_the_same(
        document in document(), at in any::<prop::sample::Index>(), put in "[-0-9a-fu\\\\\"{}\\[\\],:. ]{0,2}",
    ) {
        let mut text: Vec<char> = document.to_string().chars().collect();
        let at = at.index(text.len());
        text.splice(at..=at, put.chars());
        let text: String = text.into_iter().collect();
        // A number too large for the referee's floats is no matter for us.
        prop_assume!(serde_json::from_str::<Value>(&text).is_ok() || !text.contains(['e', 'E']));
        check(&text);
    }

    #[test]
    fn prop_writing_is_stable(document in document()) {
        let once = written(&Json::parse(&document.to_string()).unwrap());
        prop_assert_eq!(&written(&Json::parse(&once).unwrap()), &once);
    }
}
