//! Recipes as blogs have them: data in the scripts of a page's source, entities in the texts, recipes and
//! ingredients as the writers of such data nest them. The pages were written for this purpose.

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

use farthing::recipe::{MOST_PAGE, MOST_PASTED};
use farthing::wire;
use outside::reply;
use proptest::prelude::*;
use serde_json::{Value, json};

const DATA: &str = r#"{"@context": "https://schema.org", "@type": "Recipe", "name": "Lock Keeper",
    "recipeYield": ["2", "2 drinks"], "recipeIngredient": ["60 ml gin", "2 dashes orange bitters"]}"#;

fn read(text: &str) -> Value {
    reply(wire::recipe, &json!({"house": {"kitchen": "us"}, "text": text}))
}

fn script(data: &str) -> String {
    format!("<script type=\"application/ld+json\">{data}</script>")
}

/// The texts of the lines that were found.
fn texts(reply: &Value) -> Vec<String> {
    let lines = reply["lines"].as_array().unwrap();
    lines.iter().map(|line| line["text"].as_str().unwrap().to_string()).collect()
}

#[track_caller]
fn check_read(text: &str) {
    let reply = read(text);
    assert_eq!(reply["problems"], json!([]), "{text}");
    assert_eq!((&reply["name"], &reply["makes"]), (&json!("Lock Keeper"), &json!("2")), "{text}");
    assert_eq!(texts(&reply), ["60 ml gin", "2 dashes orange bitters"], "{text}");
}

#[track_caller]
fn check_refused(text: &str, why: &str, place: &str) {
    let reply = read(text);
    assert_eq!(texts(&reply), [""; 0], "{text}");
    let values = json!({"why": why, "where": place});
    let problem = json!({"code": "recipe_unreadable", "place": "text", "values": values});
    assert_eq!(reply["problems"], json!([problem]), "{text}");
}

#[test]
fn scripts_of_a_page() {
    let other = script(r#"{"@type": "WebSite", "name": "By the canal"}"#);
    let own = script(DATA);
    for text in [
        own.clone(),
        format!("\u{feff}\n {own} \n"),
        format!("<SCRIPT class='x' TYPE = application/LD+JSON >{DATA}</Script >"),
        format!("{other}\n{own}"),
        format!("{}{own}", script("{ damaged")),
        format!("<!doctype html><html><head>{other}<style>a{{}}</style>{own}</head><p>words</p>"),
        format!("<script>if (1 < 2) x = '<script type=\"application/ld+json\">{{}}'</script>{own}"),
        format!("60 ml gin\n{own}\nand words"),
        // Never closed: a browser takes all that follows for the script.
        own.replace("</script>", ""),
        script(&format!("<!-- {DATA} -->")),
        script(&format!("<![CDATA[{DATA}]]>")),
        script(&format!("\n//<![CDATA[\n{DATA}\n//]]>\n")),
        script(&format!("/* <![CDATA[ */ {DATA} /* ]]> */")),
        script(&format!("{DATA};")),
    ] {
        check_read(&text);
    }
}

#[test]
fn pages_without_a_recipe_are_refused_with_the_reason() {
    check_refused("<!DOCTYPE html><html><p>60 ml gin</p></html>", "no recipe in it", "");
    check_refused("<html lang=en>\n60 ml gin", "no recipe in it", "");
    check_refused(&script("{}"), "no recipe in it", "");
    let damaged = script(&DATA.replace(']', ""));
    let why = read(&damaged)["problems"][0]["values"]["why"].as_str().unwrap().to_string();
    assert!(why.starts_with("no JSON from character"), "{why}");
    check_refused(&format!("{}{damaged}{damaged}", script("{}")), &why, "script 2");
    let torn = json!({"@type": "Recipe", "recipeIngredient": ["gin", 7]}).to_string();
    check_refused(&script(&torn), "an ingredient that is no text", "script 1, recipeIngredient[1]");
    check_refused(&script(r#"{"@type": "Recipe"}"#), "no ingredients in it", "script 1");
    // Words beside scripts of another kind are lines like any others.
    let reply = read("60 ml gin\n</textarea><script>alert(1)</script>");
    assert_eq!(texts(&reply).len(), 2);
}

#[test]
fn recipes_as_they_are_nested() {
    let own: Value = serde_json::from_str(DATA).unwrap();
    let mut numbered = own.clone();
    numbered["recipeYield"] = json!(2);
    let mut worded = own.clone();
    worded["recipeYield"] = json!("Serves 2");
    for data in [
        json!({"@type": "WebPage", "mainEntity": own}),
        json!({"@type": "BlogPosting", "mainEntityOfPage": {"@type": "WebPage", "mainEntity": [own]}}),
        json!([[{"@type": "Person"}], [[own]]]),
        json!({"@graph": [{"@type": "WebPage", "mainEntity": {"@type": "Recipe", "@id": "#it"}}, own]}),
        json!({"@type": "Recipe", "@graph": [own]}),
        numbered,
        worded,
    ] {
        check_read(&data.to_string());
    }
}

#[test]
fn ingredients_that_are_objects() {
    let data = json!({"@type": "Recipe", "recipeIngredient": [
        {"@type": "PropertyValue", "name": "gin", "value": 60, "unitText": "ml"},
        {"@type": "PropertyValue", "name": "rye whisky", "value": "2", "unitText": "oz"},
        {"name": "20 ml lime juice"},
        {"text": "2 dashes bitters", "name": "bitters"},
        "1 egg white\n5 ml syrup",
    ]});
    let reply = read(&data.to_string());
    let lines = reply["lines"].as_array().unwrap();
    let found: Vec<_> =
        lines.iter().map(|line| (&line["measure"]["text"], &line["name"])).collect();
    let expected = json!([
        ["60", "gin"],
        ["2 oz", "rye whisky"],
        ["20", "lime juice"],
        ["2", "bitters"],
        ["1", "egg white"],
        ["5", "syrup"]
    ]);
    assert_eq!(json!(found), expected);
}

#[test]
fn entities_in_texts() {
    for (written, meant) in [
        ("&frac12; oz gin", "½ oz gin"),
        ("1&#189; oz gin", "1½ oz gin"),
        ("1&#xBD; oz gin", "1½ oz gin"),
        ("1&#XBD; oz gin", "1½ oz gin"),
        ("60&nbsp;ml gin &amp; tonic", "60\u{a0}ml gin & tonic"),
        ("gin at 40&deg;", "gin at 40°"),
        ("d&rsquo;absinthe, cr&egrave;me", "d’absinthe, crème"),
        ("1&frasl;2 oz", "1⁄2 oz"),
        ("&quot;old&quot; rum", "\"old\" rum"),
        // Once, and only what is one.
        ("&amp;frac12; oz", "&frac12; oz"),
        ("gin & tonic", "gin & tonic"),
        (
            "gin &tonic; &; &#; &#x; &#xZZ; &#0; &#9999999; &",
            "gin &tonic; &; &#; &#x; &#xZZ; &#0; &#9999999; &",
        ),
        ("&#10;x", "&#10;x"),
        ("&lt;b&gt;", "<b>"),
        ("&am", "&am"),
        ("&a;", "&a;"),
    ] {
        let data = json!({"@type": "Recipe", "name": written, "recipeIngredient": [written]});
        let reply = read(&data.to_string());
        assert_eq!((texts(&reply), &reply["name"]), (vec![meant.to_string()], &json!(meant)));
    }
}

#[test]
fn pages_are_bounded() {
    let page = |filler: usize| format!("<html>{}{}", "<".repeat(filler), script(DATA));
    let room = MOST_PAGE - page(0).len();
    check_read(&page(room));
    let reply = read(&page(room + 1));
    assert_eq!(reply["problems"][0]["code"], "recipe_too_long");
    let long = script(&format!("{DATA}{}", " ".repeat(MOST_PASTED)));
    assert_eq!(read(&long)["problems"][0]["code"], "recipe_too_long");
    // Scripts that never end, and scripts by the thousand, are read through once.
    assert_eq!(read(&"<script type=ld+json>".repeat(90_000))["lines"], json!([]));
    assert_eq!(read(&script("{").repeat(30_000))["lines"], json!([]));
}

proptest! {
    #![proptest_config(outside::config())]

    /// A page cut and joined anyhow is read or refused, and ends.
    #[test]
    fn prop_damaged_pages_end(
        pieces in prop::collection::vec(prop::sample::select(&["<script", " type=application/ld+json", ">", "</script>", "<!--", "-->", "{", "}", DATA, "&", "#", "<html>", "\n", "60 ml gin"][..]), 0..20),
    ) {
        let reply = read(&pieces.concat());
        prop_assert!(reply["lines"].as_array().unwrap().len() <= 40);
    }
}
