//! Every spelling of a unit, in every kitchen.

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

use farthing::measure::{Kind, UNITS};
use farthing::reading::{Kitchen, Marks, measure};

const KITCHENS: [Kitchen; 4] = [Kitchen::Us, Kitchen::Uk, Kitchen::Au, Kitchen::Metric];

#[track_caller]
fn read(text: &str, kitchen: Kitchen, kind: Option<Kind>) -> &'static str {
    let read = measure(text, "", Marks::POINT, kitchen, kind);
    read.unwrap_or_else(|fault| panic!("{text}: {fault:?}")).expect("not empty").unit.code
}

/// A word that means one unit everywhere, whatever is counted.
#[track_caller]
fn check(words: &[&str], code: &str) {
    for word in words {
        for kitchen in KITCHENS {
            for kind in [None, Some(Kind::Volume), Some(Kind::Mass), Some(Kind::Count)] {
                let upper = format!("2 {}", word.to_uppercase());
                for text in
                    [format!("2 {word}"), format!("½{word}"), format!("1.5  {word} "), upper]
                {
                    assert_eq!(read(&text, kitchen, kind), code, "{text}, {kitchen:?}, {kind:?}");
                }
            }
        }
    }
}

/// A word that another country takes for another unit: in the order of [`KITCHENS`].
#[track_caller]
fn check_kitchens(words: &[&str], codes: [&str; 4]) {
    for word in words {
        let text = format!("2 {word}");
        let ours = KITCHENS.map(|kitchen| read(&text, kitchen, None));
        assert_eq!(ours, codes, "{text}");
    }
}

#[test]
fn words_that_mean_one_unit() {
    check(&["ml", "ml.", "mls", "millilitre", "millilitres", "milliliter", "milliliters"], "ml");
    check(&["cc"], "ml");
    check(&["cl", "centilitre", "centilitres", "centiliter", "centiliters"], "cl");
    check(&["dl", "decilitre", "decilitres", "deciliter", "deciliters"], "dl");
    check(&["l", "l.", "ltr", "ltrs", "litre", "litres", "liter", "liters"], "l");
    check(&["dash", "dashes"], "dash");
    check(&["drop", "drops"], "drop");
    check(&["dropper", "droppers", "dropperful", "dropperfuls"], "dropper");
    check(&["dropper squeeze", "dropper squeezes", "squeeze", "squeezes"], "dropper");
    check(&["bar spoon", "bar spoons", "barspoon", "barspoons", "bsp"], "bar_spoon");
    check(&["splash", "splashes"], "splash");
    check(&["rinse", "rinses"], "rinse");
    check(&["drizzle", "drizzles"], "drizzle");
    check(&["us fl oz", "us fl. oz.", "us oz"], "us_fl_oz");
    check(&["imp fl oz", "imp. fl. oz.", "imperial fl oz", "uk fl oz"], "imp_fl_oz");
    check(&["us tsp"], "us_tsp");
    check(&["metric tsp"], "metric_tsp");
    check(&["us tbsp"], "us_tbsp");
    check(&["metric tbsp"], "metric_tbsp");
    check(&["au tbsp", "australian tbsp", "australian tablespoon"], "au_tbsp");
    check(&["us cup", "us cups"], "us_cup");
    check(&["metric cup", "metric cups"], "metric_cup");
    check(&["us gill", "us gills"], "us_gill");
    check(&["imp gill", "imperial gill", "imperial gills"], "imp_gill");
    check(&["us pint", "us pints"], "us_pint");
    check(&["imp pint", "imperial pint", "imperial pints"], "imp_pint");
    check(&["g", "gram", "grams", "gramme", "grammes"], "g");
    check(&["kg", "kgs", "kilo", "kilos", "kilogram", "kilograms"], "kg");
    check(&["lb", "lbs", "pound", "pounds"], "lb");
    check(&["piece", "pieces", "pc", "pcs", "ea", "each"], "piece");
    check(&["bottle", "bottles", "of a bottle", "of the bottle", "a bottle"], "bottle");
}

#[test]
fn words_that_depend_on_the_kitchen() {
    let fluid_ounces = ["us_fl_oz", "imp_fl_oz", "imp_fl_oz", "imp_fl_oz"];
    check_kitchens(&["fl oz", "fl. oz.", "floz", "fluid ounce", "fluid ounces"], fluid_ounces);
    check_kitchens(&["oz", "oz.", "ounce", "ounces"], fluid_ounces);
    check_kitchens(
        &["tsp", "tsps", "teaspoon", "teaspoons"],
        ["us_tsp", "metric_tsp", "metric_tsp", "metric_tsp"],
    );
    check_kitchens(
        &["tbsp", "tbsps", "tablespoon", "tablespoons"],
        ["us_tbsp", "metric_tbsp", "au_tbsp", "metric_tbsp"],
    );
    check_kitchens(&["cup", "cups"], ["us_cup", "metric_cup", "metric_cup", "metric_cup"]);
    check_kitchens(&["gill", "gills"], ["us_gill", "imp_gill", "imp_gill", "imp_gill"]);
    check_kitchens(
        &["pint", "pints", "pt", "pts"],
        ["us_pint", "imp_pint", "imp_pint", "imp_pint"],
    );
}

/// A bare ounce is a mass beside what is weighed, and nowhere else; a fluid ounce never is.
#[test]
fn an_ounce_by_what_is_measured() {
    for kitchen in KITCHENS {
        assert_eq!(read("2 oz", kitchen, Some(Kind::Mass)), "oz");
        assert_eq!(read("an ounce", kitchen, Some(Kind::Mass)), "oz");
        let fluid = read("2 fl oz", kitchen, None);
        for kind in [None, Some(Kind::Volume), Some(Kind::Count)] {
            assert_eq!(read("2 oz", kitchen, kind), fluid, "{kitchen:?}, {kind:?}");
        }
        assert_eq!(read("2 fl oz", kitchen, Some(Kind::Mass)), fluid);
    }
}

/// Whatever the page offers can also be typed.
#[test]
fn every_unit_can_be_typed_as_its_code_with_spaces() {
    for unit in UNITS {
        // A bare `oz` is a mass only beside what is weighed.
        let kind = Some(unit.kind);
        let text = format!("2 {}", unit.code.replace('_', " "));
        assert_eq!(read(&text, Kitchen::Metric, kind), unit.code, "{text}");
    }
}

#[track_caller]
fn check_unknown(text: &str) {
    for kitchen in KITCHENS {
        let fault = measure(text, "ml", Marks::POINT, kitchen, None).expect_err(text);
        assert_eq!(fault.code().text(), "unit_unknown", "{text}");
    }
}

/// No near miss is taken for a unit, not even where one is chosen beside it.
#[test]
fn words_that_are_no_unit() {
    for word in [
        "s",
        "m",
        "mll",
        "mlss",
        "dashs es",
        "teaspoo",
        "fl",
        "fl ounce oz",
        "us",
        "uk",
        "jigger",
        "shot",
        "glass",
        "litres ml",
        "ml ml",
        "2 ml",
        "%",
        "£",
        "мл",
        "oz fl",
        "q",
    ] {
        check_unknown(&format!("2 {word}"));
    }
}
