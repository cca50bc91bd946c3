//! Lines of recipes as people write them, each with what it must be read as. All of them were written
//! for this purpose; no recipe and no brand is anybody's.

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

use farthing::reading::{Kitchen, Marks};
use farthing::recipe::{Hand, MOST_LINE, MOST_PASTED, MOST_RECIPE_LINES, line, printed};
use farthing::wire;
use outside::{answer, config, reply, sound_reply};
use proptest::prelude::*;
use serde_json::{Value, json};

/// A line, its measure as text and unit, its name, its note, its marks and the code of its problem.
type Row = (&'static str, &'static str, &'static str, &'static str, &'static str);

fn us() -> Value {
    json!({"kitchen": "us"})
}

fn comma() -> Value {
    json!({"kitchen": "metric", "decimal_mark": ",", "currency": "EUR"})
}

fn recipe(house: &Value, text: &str) -> Value {
    reply(wire::recipe, &json!({"house": house, "text": text}))
}

/// What a line of a reply says, in the words of a row.
fn told(line: &Value) -> [String; 4] {
    let text = |value: &Value| value.as_str().unwrap().to_string();
    let measure = &line["measure"];
    let marks = ["optional", "garnish"].into_iter();
    let marks = marks.filter(|mark| line[mark].as_bool().unwrap()).map(String::from);
    let aside = Some(text(&line["aside"])).filter(|aside| !aside.is_empty());
    let problems =
        line["problems"].as_array().unwrap().iter().map(|problem| text(&problem["code"]));
    [
        format!("{} {}", text(&measure["text"]), text(&measure["unit"])).trim().to_string(),
        text(&line["name"]),
        text(&line["note"]),
        marks.chain(aside).chain(problems).collect::<Vec<_>>().join(" "),
    ]
}

/// Every row is read as it says, beside its text as it was; printed and read again it is the same; and
/// what was read of the measure is what the blank of a measure reads.
#[track_caller]
fn check(house: &Value, rows: &[Row]) {
    let mut wrong = Vec::new();
    for (typed, measure, name, note, marks) in rows {
        let reply = recipe(house, typed);
        assert_eq!(reply["lines"].as_array().unwrap().len(), 1, "{typed}");
        let line = &reply["lines"][0];
        assert_eq!(line["text"], typed.trim_end());
        let found = told(line);
        if found != [*measure, *name, *note, *marks] {
            wrong.push(format!(
                "{typed}\n   is {found:?}\n  not {:?}",
                [measure, name, note, marks]
            ));
        }
        check_printed(house, typed);
        check_blank(house, line);
    }
    let share = rows.len() - wrong.len();
    assert!(wrong.is_empty(), "{share} of {}:\n{}", rows.len(), wrong.join("\n"));
}

fn hand(house: &Value) -> Hand {
    let marks = if house["decimal_mark"] == "," { Marks::COMMA } else { Marks::POINT };
    Hand { marks, kitchen: Kitchen::from_code(house["kitchen"].as_str().unwrap()).unwrap() }
}

#[track_caller]
fn check_printed(house: &Value, typed: &str) {
    let hand = hand(house);
    let read = line(typed, hand, None);
    let printed = printed(&read, hand);
    let mut again = line(&printed, hand, None);
    again.fault = read.fault.clone();
    assert_eq!(again, read, "{typed:?} is printed as {printed:?}");
}

/// The blank raises the same problem, or none.
#[track_caller]
fn check_blank(house: &Value, line: &Value) {
    let measure = &line["measure"];
    if measure["text"] == "" || measure["unit"] == "part" {
        return;
    }
    let unit = measure["unit"].as_str().unwrap();
    let holds = match unit {
        "g" | "kg" | "oz" | "lb" => "1 kg",
        "piece" => "9 pieces",
        _ => "70 cl",
    };
    let bottle = json!({"id": "b", "paid": {"price": "20"}, "holds": {"text": holds}});
    let pour = json!({"bottle": "b", "measure": measure});
    let reply = answer(&json!({"house": house, "bottles": [bottle], "pours": [pour]}));
    let codes = |problems: &Value| -> Vec<Value> {
        problems.as_array().unwrap().iter().map(|problem| problem["code"].clone()).collect()
    };
    assert_eq!(codes(&reply["problems"]), codes(&line["problems"]), "{line}");
    let read = reply["pours"][0]["unit"].as_str().unwrap();
    assert!(read == unit || read.is_empty(), "{line}: {read}");
}

#[test]
fn measures_in_front() {
    check(
        &us(),
        &[
            ("60 ml gin", "60 ml", "gin", "", ""),
            ("60ml gin", "60 ml", "gin", "", ""),
            ("5cl London dry", "5 cl", "London dry", "", ""),
            ("5 cL gin", "5 cl", "gin", "", ""),
            ("1 L soda water", "1 l", "soda water", "", ""),
            ("0.5 l soda water", "0.5 l", "soda water", "", ""),
            ("1dl cream", "1 dl", "cream", "", ""),
            ("2 oz rye", "2 oz us_fl_oz", "rye", "", ""),
            ("2oz rye", "2 oz us_fl_oz", "rye", "", ""),
            ("2 ounces rye", "2 oz us_fl_oz", "rye", "", ""),
            ("1 1/2 oz. fresh lemon juice", "1 1/2 oz us_fl_oz", "fresh lemon juice", "", ""),
            ("1½ oz lemon juice", "1½ oz us_fl_oz", "lemon juice", "", ""),
            ("1-1/2 oz lemon juice", "1.5 oz us_fl_oz", "lemon juice", "", ""),
            ("1-½ oz lemon juice", "1.5 oz us_fl_oz", "lemon juice", "", ""),
            ("3/4 oz simple syrup", "3/4 oz us_fl_oz", "simple syrup", "", ""),
            ("¾ oz simple syrup", "¾ oz us_fl_oz", "simple syrup", "", ""),
            (".75 oz simple syrup", ".75 oz us_fl_oz", "simple syrup", "", ""),
            ("0.75 oz simple syrup", "0.75 oz us_fl_oz", "simple syrup", "", ""),
            ("2 fl. oz. dark rum", "2 us_fl_oz", "dark rum", "", ""),
            ("2 fl oz dark rum", "2 us_fl_oz", "dark rum", "", ""),
            ("2 fluid ounces dark rum", "2 us_fl_oz", "dark rum", "", ""),
            ("½ tsp sugar", "½ us_tsp", "sugar", "", ""),
            ("2 tsp. sugar", "2 us_tsp", "sugar", "", ""),
            ("2 teaspoons of sugar", "2 us_tsp", "sugar", "", ""),
            ("1 Tbsp honey", "1 us_tbsp", "honey", "", ""),
            ("2 tbsps honey", "2 us_tbsp", "honey", "", ""),
            ("1 tablespoon honey", "1 us_tbsp", "honey", "", ""),
            ("1 T honey", "1 us_tbsp", "honey", "", ""),
            ("1 t honey", "1 us_tsp", "honey", "", ""),
            ("1 cup sugar", "1 us_cup", "sugar", "", ""),
            ("2 cups of water", "2 us_cup", "water", "", ""),
            ("1 pint cider", "1 us_pint", "cider", "", ""),
            ("200 g sugar", "200 g", "sugar", "", ""),
            ("200 grams of sugar", "200 g", "sugar", "", ""),
            ("1 kg limes", "1 kg", "limes", "", ""),
            ("1 lb strawberries", "1 lb", "strawberries", "", ""),
            ("half a cup of sugar", "0.5 us_cup", "sugar", "", ""),
            ("one ounce gin", "1 oz us_fl_oz", "gin", "", ""),
            ("three quarters of an ounce of gin", "0.75 oz us_fl_oz", "gin", "", ""),
            ("1/3 oz grenadine", "1/3 oz us_fl_oz", "grenadine", "", ""),
            ("a third of a cup of sugar", "1/3 us_cup", "sugar", "", ""),
            ("   45   ml   rum  ", "45 ml", "rum", "", ""),
            ("45\u{a0}ml\u{a0}rum", "45 ml", "rum", "", ""),
            ("45\tml\trum", "45 ml", "rum", "", ""),
            ("60 ML GIN", "60 ml", "GIN", "", ""),
            ("½ bottle prosecco", "½ bottle", "prosecco", "", ""),
            ("half a bottle of prosecco", "0.5 bottle", "prosecco", "", ""),
        ],
    );
}

#[test]
fn rough_measures_and_ranges() {
    check(
        &us(),
        &[
            ("2 dashes bitters", "2 dash", "bitters", "", ""),
            ("3-4 dashes orange bitters", "3-4 dash", "orange bitters", "", ""),
            ("3 – 4 dashes orange bitters", "3 – 4 dash", "orange bitters", "", ""),
            ("3‑4 dashes orange bitters", "3-4 dash", "orange bitters", "", ""),
            ("2 to 3 dashes of bitters", "2-3 dash", "bitters", "", ""),
            ("two or three dashes of bitters", "2-3 dash", "bitters", "", ""),
            ("1 dash or 2 of bitters", "1-2 dash", "bitters", "", ""),
            ("a dash or two of bitters", "1-2 dash", "bitters", "", ""),
            ("a dash of bitters", "1 dash", "bitters", "", ""),
            ("dash of bitters", "1 dash", "bitters", "", ""),
            ("Dash bitters", "1 dash", "bitters", "", ""),
            ("dash", "1 dash", "", "", ""),
            ("a barspoon of absinthe", "1 bar_spoon", "absinthe", "", ""),
            ("2 bar spoons maraschino", "2 bar_spoon", "maraschino", "", ""),
            ("2 bar-spoons maraschino", "2 bar_spoon", "maraschino", "", ""),
            ("1 bsp maraschino", "1 bar_spoon", "maraschino", "", ""),
            ("splash of soda", "1 splash", "soda", "", ""),
            ("a generous splash of soda", "1 splash", "soda", "generous", ""),
            ("1 scant tsp sugar", "1 us_tsp", "sugar", "scant", ""),
            ("rinse of absinthe", "1 rinse", "absinthe", "", ""),
            ("absinthe, to taste", "", "absinthe", "to taste", "measure_missing"),
            ("drizzle of honey", "1 drizzle", "honey", "", ""),
            ("5 drops saline", "5 drop", "saline", "", ""),
            ("1-2 droppers of tincture", "1-2 dropper", "tincture", "", ""),
            ("about 120 ml soda", "about 120 ml", "soda", "", ""),
            ("~120 ml soda", "~120 ml", "soda", "", ""),
            ("ca. 120 ml soda", "about 120 ml", "soda", "", ""),
            ("5 ml to 10 ml syrup", "5-10 ml", "syrup", "", ""),
            ("5ml-10ml syrup", "5-10 ml", "syrup", "", ""),
            ("1-2 oz gin", "1-2 oz us_fl_oz", "gin", "", ""),
            ("dashes of bitters", "", "dashes of bitters", "", "measure_missing"),
            ("slice of lime", "", "slice of lime", "", "measure_missing"),
            ("pinch of salt", "", "salt", "pinch", "unit_unknown"),
            ("a pinch of salt", "", "salt", "a pinch", "unit_unknown"),
            ("2 pinches salt", "", "salt", "2 pinches", "unit_unknown"),
            ("1 shot espresso", "", "espresso", "1 shot", "unit_unknown"),
            ("1 jigger rum", "", "rum", "1 jigger", "unit_unknown"),
            ("squeeze of lime", "", "lime", "squeeze", "unit_unknown"),
            ("a handful of mint", "", "mint", "a handful", "unit_unknown"),
            // A word cut short that is no known unit counts nothing.
            ("2 pkgs. gelatine", "", "gelatine", "2 pkgs", "unit_unknown"),
            ("100 mg salt", "", "salt", "100 mg", "unit_unknown"),
            ("1 lg egg", "1 piece", "lg egg", "", ""),
            ("a couple of dashes of bitters", "2 dash", "bitters", "", ""),
        ],
    );
}

#[test]
fn what_is_counted() {
    check(
        &us(),
        &[
            ("6-8 mint leaves", "6-8 piece", "mint leaves", "", ""),
            ("1 egg white (optional)", "1 piece", "egg white", "", "optional"),
            ("1 egg white, optional", "1 piece", "egg white", "", "optional"),
            ("optional: 1 egg white", "1 piece", "egg white", "", "optional"),
            ("2 limes, juiced", "2 piece", "limes", "juiced", ""),
            ("1 slice of cucumber", "1 piece", "cucumber", "slice", ""),
            ("3 thin slices cucumber", "3 piece", "cucumber", "thin, slices", ""),
            ("1 sprig rosemary", "1 piece", "rosemary", "sprig", ""),
            ("1 sprig", "1 piece", "sprig", "", ""),
            ("1 cube", "1 piece", "cube", "", ""),
            ("1 cube of sugar", "1 piece", "sugar", "cube", ""),
            ("1 sugar cube", "1 piece", "sugar cube", "", ""),
            ("3 wedges of lime", "3 piece", "lime", "wedges", ""),
            ("an orange", "1 piece", "orange", "", ""),
            ("half an orange", "0.5 piece", "orange", "", ""),
            ("half a lime", "0.5 piece", "lime", "", ""),
            ("½ lime", "½ piece", "lime", "", ""),
            ("4 pieces pineapple", "4 piece", "pineapple", "", ""),
            ("juice of half a lime", "0.5 piece", "lime", "juice of", ""),
            ("Juice of 1 lemon", "1 piece", "lemon", "Juice of", ""),
            ("juice of ½ lime", "½ piece", "lime", "juice of", ""),
            ("zest of 1 orange", "1 piece", "orange", "zest of", ""),
            ("lime juice", "", "lime juice", "", "measure_missing"),
            ("7-year rum", "", "7-year rum", "", "measure_missing"),
            ("12-year-old rum", "", "12-year-old rum", "", "measure_missing"),
            ("100% agave spirit", "", "100% agave spirit", "", "measure_missing"),
            ("2 oz 12-year-old rum", "2 oz us_fl_oz", "12-year-old rum", "", ""),
            ("2 oz 100% agave spirit", "2 oz us_fl_oz", "100% agave spirit", "", ""),
            ("twelve almonds", "12 piece", "almonds", "", ""),
            ("ice", "", "ice", "", "measure_missing"),
        ],
    );
}

#[test]
fn brackets_commas_and_second_measures() {
    check(
        &us(),
        &[
            ("2 oz (60 ml) rye", "60 ml", "rye", "2 oz", ""),
            ("2 oz rye (60 ml)", "60 ml", "rye", "2 oz", ""),
            ("60 ml (2 oz) rye", "60 ml", "rye", "2 oz", ""),
            ("2 oz / 60 ml rye", "60 ml", "rye", "2 oz", ""),
            ("60ml/2oz rye", "60 ml", "rye", "2oz", ""),
            ("2 oz or 60 ml rye", "60 ml", "rye", "2 oz", ""),
            ("6 cl (60 ml) rye", "6 cl", "rye", "60 ml", ""),
            ("1 part (30 ml) gin", "30 ml", "gin", "1 part", ""),
            ("Top with soda (about 120ml)", "about 120 ml", "soda", "Top with", ""),
            ("Top with 120 ml soda", "120 ml", "soda", "Top with", ""),
            ("Top up with tonic", "", "tonic", "Top up with", "measure_missing"),
            ("top with a splash of soda", "1 splash", "soda", "top with", ""),
            ("soda, to top", "", "soda", "to top", "measure_missing"),
            ("soda to top", "", "soda", "to top", "measure_missing"),
            ("soda (to top)", "", "soda", "to top", "measure_missing"),
            ("soda to top, about 100 ml", "about 100 ml", "soda", "to top", ""),
            (
                "1 oz lemon juice, freshly squeezed",
                "1 oz us_fl_oz",
                "lemon juice",
                "freshly squeezed",
                "",
            ),
            ("1 oz gin (London dry)", "1 oz us_fl_oz", "gin", "London dry", ""),
            ("1 oz gin [London dry]", "1 oz us_fl_oz", "gin", "London dry", ""),
            ("1 oz gin (London (dry), cold)", "1 oz us_fl_oz", "gin", "London (dry), cold", ""),
            ("1 oz gin (London dry", "1 oz us_fl_oz", "gin", "London dry", ""),
            ("1 oz gin; cold", "1 oz us_fl_oz", "gin", "cold", ""),
            ("1 oz gin - cold", "1 oz us_fl_oz", "gin", "cold", ""),
            ("1 oz semi-dry cider", "1 oz us_fl_oz", "semi-dry cider", "", ""),
            ("gin, 60 ml", "60 ml", "gin", "", ""),
            ("gin 60 ml", "60 ml", "gin", "", ""),
            ("Gin: 60 ml", "60 ml", "Gin", "", ""),
            ("Gin - 2 oz", "2 oz us_fl_oz", "Gin", "", ""),
            ("gin (60 ml)", "60 ml", "gin", "", ""),
            ("gin 60 ml (2 oz)", "60 ml", "gin", "2 oz", ""),
            ("gin 2 oz (60 ml)", "60 ml", "gin", "2 oz", ""),
            ("gin, 60 ml (2 oz), cold", "60 ml", "gin", "2 oz, cold", ""),
            ("gin, cold, 2 oz (60 ml)", "60 ml", "gin", "2 oz, cold", ""),
            ("rum 40% 50 ml", "50 ml", "rum 40%", "", ""),
            ("1 (200 ml) bottle tonic", "200 ml", "tonic", "1 bottle", ""),
            ("1 can (330 ml) cola", "330 ml", "cola", "1 can", ""),
            ("2 cans (330 ml) cola", "", "cola", "330 ml, 2 cans", "unit_unknown"),
            ("2 limes (60 ml)", "2 piece", "limes", "60 ml", ""),
            ("2 pieces of ginger (60 ml)", "2 piece", "ginger", "60 ml", ""),
            ("1 cup plus 2 tbsp sugar", "", "sugar", "1 cup + 2 tbsp", "measure_missing"),
            ("1 tsp + 1 dash absinthe", "", "absinthe", "1 tsp + 1 dash", "measure_missing"),
            ("1 oz gin and tonic", "1 oz us_fl_oz", "gin and tonic", "", ""),
            ("2 oz \"good\" gin", "2 oz us_fl_oz", "\"good\" gin", "", ""),
        ],
    );
}

#[test]
fn bullets_garnishes_headings_and_parts() {
    check(
        &us(),
        &[
            ("- 60 ml gin", "60 ml", "gin", "", ""),
            ("-60 ml gin", "60 ml", "gin", "", ""),
            ("* 60 ml gin", "60 ml", "gin", "", ""),
            ("• 60 ml gin", "60 ml", "gin", "", ""),
            ("– 60 ml gin", "60 ml", "gin", "", ""),
            ("1. 60 ml gin", "60 ml", "gin", "", ""),
            ("2) 60 ml gin", "60 ml", "gin", "", ""),
            ("12. 60 ml gin", "60 ml", "gin", "", ""),
            ("[ ] 60 ml gin", "60 ml", "gin", "", ""),
            ("☐ 60 ml gin", "60 ml", "gin", "", ""),
            ("1.5 oz gin", "1.5 oz us_fl_oz", "gin", "", ""),
            ("Garnish: lemon twist", "", "lemon twist", "", "garnish"),
            ("garnish with a lemon twist", "1 piece", "lemon twist", "", "garnish"),
            ("Garnish: 1 sprig of mint", "1 piece", "mint", "sprig", "garnish"),
            ("lemon twist, for garnish", "", "lemon twist", "", "garnish"),
            ("1 lemon twist (garnish)", "1 piece", "lemon twist", "", "garnish"),
            ("1 cherry to garnish", "1 piece", "cherry", "", "garnish"),
            ("Ingredients:", "", "Ingredients", "", "heading"),
            ("For the syrup:", "", "For the syrup", "", "heading"),
            ("1 part gin", "1 part", "gin", "", "parts_need_size"),
            ("2 parts gin", "2 part", "gin", "", "parts_need_size"),
            ("½ part lime juice", "½ part", "lime juice", "", "parts_need_size"),
            ("1 part of vermouth, sweet", "1 part", "vermouth", "sweet", "parts_need_size"),
            ("equal parts of all", "", "equal parts of all", "", "measure_missing"),
            ("---", "", "---", "", "heading"),
        ],
    );
}

/// Lines that were not chosen to suit the reader.
#[test]
fn lines_at_first_sight() {
    let rows = include_str!("recipe-lines.txt").lines().filter(|row| !row.starts_with('#'));
    let rows = rows.map(|row| {
        let row: Vec<&'static str> = row.split('\t').collect();
        (row[0], row[1], row[2], row[3], row[4])
    });
    check(&us(), &rows.collect::<Vec<Row>>());
}

/// Lines of which a part could be lost, or taken for something else, without a word.
#[test]
fn what_is_asked_rather_than_misread() {
    check(
        &us(),
        &[
            ("2 oz gin, 1 oz rye", "", "2 oz gin, 1 oz rye", "", "measure_missing"),
            ("gin, 2oz; rye, 1oz", "", "gin, 2oz; rye, 1oz", "", "measure_missing"),
            ("1oz gin 1oz rye", "", "1oz gin 1oz rye", "", "measure_missing"),
            ("60 ml gin + 20 ml rye", "", "60 ml gin + 20 ml rye", "", "measure_missing"),
            ("2 parts rum: 1 part rye", "", "2 parts rum: 1 part rye", "", "measure_missing"),
            ("1 lb 2 oz sugar", "", "1 lb 2 oz sugar", "", "measure_missing"),
            ("1 oz each gin and rye", "", "1 oz each gin and rye", "", "measure_missing"),
            ("3 12-year-old rums", "3 piece", "12-year-old rums", "", ""),
            ("one quarter ounce lime", "", "quarter ounce lime", "one", "measure_missing"),
            ("a 750ml bottle of wine", "", "750ml bottle of wine", "a", "measure_missing"),
            ("1 750ml bottle wine", "", "wine", "1 750ml, bottle", "number_ambiguous"),
            ("2 x 25ml gin", "", "25ml gin", "2 x", "unit_unknown"),
            ("6+ mint leaves", "", "+ mint leaves", "6", "measure_missing"),
            ("6 or so mint leaves", "", "or so mint leaves", "6", "measure_missing"),
            ("1 inch ginger", "", "ginger", "1 inch", "unit_unknown"),
            ("2-inch piece of ginger", "", "piece of ginger", "2-inch", "unit_unknown"),
            ("1 fifth rum", "", "rum", "1 fifth", "unit_unknown"),
            ("2 (750 ml) bottles wine", "2 bottle", "wine", "750 ml", ""),
        ],
    );
    check(
        &us(),
        &[
            ("1 and 1/2 oz gin", "1.5 oz us_fl_oz", "gin", "", ""),
            ("1 & 1/2 oz gin", "1.5 oz us_fl_oz", "gin", "", ""),
            ("2 and a half ounces of gin", "2.5 oz us_fl_oz", "gin", "", ""),
            ("1 (12-ounce) bottle lager", "12 oz us_fl_oz", "lager", "1 bottle", ""),
            ("1 (750-ml) bottle wine", "750 ml", "wine", "1 bottle", ""),
            ("750 ml bottle red wine", "750 ml", "red wine", "bottle", ""),
            ("6 oz can pineapple juice", "6 oz us_fl_oz", "pineapple juice", "can", ""),
            ("2 oz bottle-aged gin", "2 oz us_fl_oz", "bottle-aged gin", "", ""),
            ("gin 2 parts", "2 part", "gin", "", "parts_need_size"),
            ("2 oz rye whisky*", "2 oz us_fl_oz", "rye whisky", "", ""),
            ("2 oz rye whisky †", "2 oz us_fl_oz", "rye whisky", "", ""),
            ("Rinse: absinthe", "", "absinthe", "Rinse", "measure_missing"),
            ("1 generous handful mint", "", "mint", "1 generous handful", "unit_unknown"),
        ],
    );
}

/// What is done and how many it makes pours nothing, and is no bottle without a price.
#[test]
fn what_pours_nothing() {
    let asides = |house: &Value, aside: &str, lines: &[&str]| {
        for typed in lines {
            let bullet =
                ["1. ", "2. ", "# ", "## "].into_iter().find_map(|it| typed.strip_prefix(it));
            let name = bullet.unwrap_or(typed);
            let line = &recipe(house, typed)["lines"][0];
            assert_eq!(told(line), ["", name, "", aside], "{typed}");
            check_printed(house, typed);
        }
    };
    asides(
        &us(),
        "heading",
        &["Ingredients", "# Lock Keeper", "## For the syrup", "METHOD", "Étapes", "#sour #towpath"],
    );
    asides(
        &us(),
        "method",
        &[
            "Shake with ice and strain.",
            "1. Shake hard for 12 seconds.",
            "2. Double strain into a chilled glass.",
            "Stir",
            "Add all ingredients to a mixing glass",
            "In a shaker, muddle the mint",
            "Glass: coupe",
            "Notes: double the syrup for a crowd.",
            "I first had it in a tiny bar with three stools and no sign.",
            "Préparation : cinq minutes",
            "2. Écraser la menthe.",
            "Method: shake",
            "Fill with ice",
        ],
    );
    asides(&us(), "makes", &["Serves 2", "Makes 1 drink", "Yield: 1 cocktail", "2 servings"]);
    asides(&us(), "makes", &["Makes two drinks", "for 2 people", "Serves 2-3", "Makes 250 ml"]);
    asides(&comma(), "method", &["Alles mit Eis schütteln und abseihen.", "Auf Eis servieren"]);
    asides(
        &comma(),
        "method",
        &["Versez sur glace.", "Agitar con hielo", "Shakerare con ghiaccio"],
    );
    asides(
        &comma(),
        "makes",
        &["Für 2 Personen", "Pour 2 personnes", "Para 2 copas", "Per 2 persone"],
    );
    check(
        &us(),
        &[
            // A measure in it may be an ingredient's: that is asked.
            ("Stir 60 ml gin with ice", "", "Stir 60 ml gin with ice", "", "measure_missing"),
            ("pour 60 ml gin", "", "pour 60 ml gin", "", "measure_missing"),
            ("Blend of two rums", "", "Blend of two rums", "", "measure_missing"),
            ("Garnish with a cherry and serve.", "1 piece", "cherry", "and serve", "garnish"),
            ("**60 ml** gin", "60 ml", "gin", "", ""),
            ("- **60 ml gin**, *cold*", "60 ml", "gin", "cold", ""),
        ],
    );
}

/// A title is the name of the drink, and stays among the lines.
#[test]
fn a_title_is_the_name_of_the_drink() {
    let shelf = json!([{"id": "gin", "name": "Gin"}]);
    let asked = |text: &str| reply(wire::recipe, &json!({"text": text, "bottles": shelf}));
    for text in [
        "Lock Keeper\n\n60 ml gin",
        "Lock Keeper\n60 ml gin",
        "\n\n Lock Keeper \n \nthe usual\n60 ml gin",
        "# Lock Keeper\n60 ml gin",
        "**Lock Keeper**\nIngredients:\n60 ml gin",
        "Lock Keeper:\n- 60 ml gin",
        "Lock Keeper\nServes 2\n60 ml gin",
        "Lock Keeper\r\n\r\n60 ml gin",
    ] {
        let reply = asked(text);
        assert_eq!(reply["name"], "Lock Keeper", "{text:?}");
        assert_eq!(told(&reply["lines"][0]), ["", "Lock Keeper", "", "title"], "{text:?}");
        assert_eq!(reply["problems"], json!([]));
    }
    for text in [
        "Lock Keeper",
        "Gin\n60 ml vermouth",
        "60 ml gin\n\nLock Keeper",
        "Ingredients:\n60 ml gin",
        "For the syrup:\n60 ml gin",
        "lime juice\nsugar\n60 ml gin",
        "Top with soda\n\n60 ml gin",
        "lime, to taste\n\n60 ml gin",
        "Garnish: cherry\n60 ml gin",
        "Shake it\n\n60 ml gin",
        "2 limes\n\n60 ml gin",
    ] {
        let reply = asked(text);
        assert_eq!(reply["name"], "", "{text:?}");
        assert_ne!(reply["lines"][0]["aside"], "title", "{text:?}");
    }
    // A name that may be a bottle's can still be said to be one.
    assert_eq!(asked("Gin Towpath\n60 ml rye")["lines"][0]["candidates"], json!(["gin"]));
    assert_eq!(asked("Lock Keeper\nServes 2-3\n60 ml gin")["makes"], "2-3");
    assert_eq!(asked("Makes 250 ml\n60 ml gin")["makes"], "");
    assert_eq!(asked("60 ml gin")["makes"], "");
}

#[test]
fn numbers_that_cannot_be_read() {
    check(
        &us(),
        &[
            ("1,250 ml water", "1,250 ml", "water", "", "number_ambiguous"),
            ("1.250 ml water", "1.250 ml", "water", "", ""),
            ("1 330 ml cola", "", "cola", "1 330 ml", "number_ambiguous"),
            ("0 ml gin", "0 ml", "gin", "", "number_must_be_positive"),
            ("4-3 dashes bitters", "4-3 dash", "bitters", "", "range_backwards"),
            ("1/0 oz gin", "1/0 oz us_fl_oz", "gin", "", "number_zero_below"),
            ("9999999999 ml gin", "9999999999 ml", "gin", "", "too_big"),
            ("0.12345678 oz gin", "0.12345678 oz us_fl_oz", "gin", "", "number_too_long"),
        ],
    );
    check(
        &comma(),
        &[
            ("1.250 ml Wasser", "1.250 ml", "Wasser", "", "number_ambiguous"),
            ("1,250 ml Wasser", "1,250 ml", "Wasser", "", ""),
        ],
    );
}

#[test]
fn german() {
    check(
        &comma(),
        &[
            ("2 cl Rum", "2 cl", "Rum", "", ""),
            ("1,5 cl Zitronensaft", "1,5 cl", "Zitronensaft", "", ""),
            ("1 EL Zucker", "1 metric_tbsp", "Zucker", "", ""),
            ("2 Esslöffel Zucker", "2 metric_tbsp", "Zucker", "", ""),
            ("1 TL Honig", "1 metric_tsp", "Honig", "", ""),
            ("½ Teelöffel Honig", "½ metric_tsp", "Honig", "", ""),
            ("1 BL Maraschino", "1 bar_spoon", "Maraschino", "", ""),
            ("1 Barlöffel Absinth", "1 bar_spoon", "Absinth", "", ""),
            ("2 Spritzer Bitter", "2 dash", "Bitter", "", ""),
            ("2 bis 3 Spritzer Bitter", "2-3 dash", "Bitter", "", ""),
            ("ein Schuss Soda", "1 splash", "Soda", "", ""),
            ("1 Schuss Milch", "1 splash", "Milch", "", ""),
            ("5 Tropfen Tinktur", "5 drop", "Tinktur", "", ""),
            ("1 Stück Zuckerrohr", "1 piece", "Zuckerrohr", "", ""),
            ("3 Scheiben Gurke", "3 piece", "Gurke", "Scheiben", ""),
            ("8 Blätter Minze", "8 piece", "Minze", "Blätter", ""),
            ("1 Zweig Rosmarin", "1 piece", "Rosmarin", "Zweig", ""),
            ("eine halbe Limette", "0,5 piece", "Limette", "", ""),
            ("Saft einer halben Limette", "0,5 piece", "Limette", "Saft", ""),
            ("1 Prise Salz", "", "Salz", "1 Prise", "unit_unknown"),
            ("2 Teile Gin", "2 part", "Gin", "", "parts_need_size"),
            ("ca. 100 ml Tonic", "about 100 ml", "Tonic", "", ""),
            ("etwa 100 ml Tonic", "about 100 ml", "Tonic", "", ""),
            ("Auffüllen mit Tonic", "", "Tonic", "Auffüllen mit", "measure_missing"),
            ("mit Soda auffüllen (ca. 100 ml)", "about 100 ml", "Soda", "mit, auffüllen", ""),
            ("Deko: Orangenzeste", "", "Orangenzeste", "", "garnish"),
            ("1 Eiweiß (optional)", "1 piece", "Eiweiß", "", "optional"),
            ("Zutaten:", "", "Zutaten", "", "heading"),
            ("0,5 l Wasser", "0,5 l", "Wasser", "", ""),
            ("anderthalb cl Gin", "1,5 cl", "Gin", "", ""),
            ("1 Essl. Zucker", "1 metric_tbsp", "Zucker", "", ""),
            ("1 Eßl. Zucker", "1 metric_tbsp", "Zucker", "", ""),
            ("1 Teel. Honig", "1 metric_tsp", "Honig", "", ""),
            ("1 gestrichener TL Zucker", "1 metric_tsp", "Zucker", "gestrichener", ""),
            ("1 Schuß Rum", "1 splash", "Rum", "", ""),
            ("4 bis 5 cl Rum", "4-5 cl", "Rum", "", ""),
            ("1 oder 2 Spritzer Bitter", "1-2 dash", "Bitter", "", ""),
            ("3 Stängel Minze", "3 piece", "Minze", "Stängel", ""),
            ("Saft von einer halben Zitrone", "0,5 piece", "Zitrone", "Saft von", ""),
            ("1 Pck. Zucker", "", "Zucker", "1 Pck", "unit_unknown"),
            ("1 Bd. Minze", "", "Minze", "1 Bd", "unit_unknown"),
            ("1 Dose Cola", "", "Cola", "1 Dose", "unit_unknown"),
            ("etwas Soda", "", "Soda", "etwas", "unit_unknown"),
            ("ein Viertel Limette", "", "Limette", "ein Viertel", "unit_unknown"),
            ("Soda zum Auffüllen", "", "Soda", "zum Auffüllen", "measure_missing"),
            ("Zum Garnieren: 1 Kirsche", "1 piece", "Kirsche", "", "garnish"),
        ],
    );
}

#[test]
fn french() {
    check(
        &comma(),
        &[
            ("4 cl de gin", "4 cl", "gin", "", ""),
            ("4,5 cl de gin", "4,5 cl", "gin", "", ""),
            ("1 c. à s. de sucre", "1 metric_tbsp", "sucre", "", ""),
            ("1 c. à soupe de sucre", "1 metric_tbsp", "sucre", "", ""),
            ("2 cuillères à soupe de sucre", "2 metric_tbsp", "sucre", "", ""),
            ("1 cuillère à café de miel", "1 metric_tsp", "miel", "", ""),
            ("1 c. à c. de miel", "1 metric_tsp", "miel", "", ""),
            ("1 cuillère de bar d’absinthe", "1 bar_spoon", "absinthe", "", ""),
            ("2 traits de bitter", "2 dash", "bitter", "", ""),
            ("2 à 3 traits de bitter", "2-3 dash", "bitter", "", ""),
            ("un trait d'angustura", "1 dash", "angustura", "", ""),
            ("3 gouttes de saline", "3 drop", "saline", "", ""),
            ("1 filet de miel", "1 drizzle", "miel", "", ""),
            ("6 feuilles de menthe", "6 piece", "menthe", "feuilles", ""),
            ("1 tranche de concombre", "1 piece", "concombre", "tranche", ""),
            ("jus d'un demi citron", "0,5 piece", "citron", "jus d'", ""),
            ("jus de citron", "", "jus de citron", "", "measure_missing"),
            ("une pincée de sel", "", "sel", "une pincée", "unit_unknown"),
            ("compléter avec du soda", "", "soda", "compléter avec du", "measure_missing"),
            ("2 parts de rhum", "2 part", "rhum", "", "parts_need_size"),
            ("1 blanc d'œuf (facultatif)", "1 piece", "blanc d'œuf", "", "optional"),
            ("Décoration : zeste de citron", "", "zeste de citron", "", "garnish"),
            ("environ 10 cl de tonic", "about 10 cl", "tonic", "", ""),
            ("1 c.à.s de sucre", "1 metric_tbsp", "sucre", "", ""),
            ("1 c.s. de sucre", "1 metric_tbsp", "sucre", "", ""),
            ("1 cs de sucre", "1 metric_tbsp", "sucre", "", ""),
            ("1 cuil. à soupe de sucre", "1 metric_tbsp", "sucre", "", ""),
            ("2 cuillerées à soupe de sucre", "2 metric_tbsp", "sucre", "", ""),
            ("1 c. à thé de miel", "1 metric_tsp", "miel", "", ""),
            ("1 petite cuillère de miel", "1 metric_tsp", "miel", "", ""),
            ("1 cuillère de miel", "", "miel", "1 cuillère", "unit_unknown"),
            ("1 c. de miel", "", "miel", "1 c", "unit_unknown"),
            ("4 ou 5 cl de gin", "4-5 cl", "gin", "", ""),
            ("10 à 12 feuilles de menthe", "10-12 piece", "menthe", "feuilles", ""),
            ("20 ml de l’eau", "20 ml", "eau", "", ""),
            ("un demi-citron", "0,5 piece", "citron", "", ""),
            ("1 jus de citron", "1 piece", "citron", "jus", ""),
            ("1 zeste d'orange", "1 piece", "orange", "zeste", ""),
            ("1 canette de cola", "", "cola", "1 canette", "unit_unknown"),
            ("un peu de soda", "", "soda", "un peu", "unit_unknown"),
            ("quelques feuilles de menthe", "", "feuilles de menthe", "quelques", "unit_unknown"),
            ("Allonger d'eau", "", "eau", "Allonger d'", "measure_missing"),
            ("Pour la décoration : une cerise", "1 piece", "cerise", "", "garnish"),
        ],
    );
}

#[test]
fn spanish_and_italian() {
    check(
        &comma(),
        &[
            ("5 cl de ginebra", "5 cl", "ginebra", "", ""),
            ("1 cucharada de azúcar", "1 metric_tbsp", "azúcar", "", ""),
            ("2 cucharadas de azúcar", "2 metric_tbsp", "azúcar", "", ""),
            ("1 cucharadita de miel", "1 metric_tsp", "miel", "", ""),
            ("1 cda. de miel", "1 metric_tbsp", "miel", "", ""),
            ("1 cdta de miel", "1 metric_tsp", "miel", "", ""),
            ("2 gotas de bitter", "2 drop", "bitter", "", ""),
            ("2 a 3 gotas de bitter", "2-3 drop", "bitter", "", ""),
            ("un golpe de bitter", "1 dash", "bitter", "", ""),
            ("un chorrito de soda", "1 splash", "soda", "", ""),
            ("zumo de media lima", "0,5 piece", "lima", "zumo de", ""),
            ("8 hojas de menta", "8 piece", "menta", "hojas", ""),
            ("1 rodaja de limón", "1 piece", "limón", "rodaja", ""),
            ("una pizca de sal", "", "sal", "una pizca", "unit_unknown"),
            ("1 parte de vermut", "1 part", "vermut", "", "parts_need_size"),
            ("completar con soda", "", "soda", "completar con", "measure_missing"),
            ("1 onza de ron", "1 oz imp_fl_oz", "ron", "", ""),
            ("2 cdas. de azúcar", "2 metric_tbsp", "azúcar", "", ""),
            ("1 cucharada sopera de azúcar", "1 metric_tbsp", "azúcar", "", ""),
            ("1 cdita de miel", "1 metric_tsp", "miel", "", ""),
            ("1 cucharadita de café de miel", "1 metric_tsp", "miel", "", ""),
            ("1 cucharilla mezcladora de jarabe", "1 bar_spoon", "jarabe", "", ""),
            ("100 gr de azúcar", "100 g", "azúcar", "", ""),
            ("media botella de cava", "0,5 bottle", "cava", "", ""),
            ("1 piel de limón", "1 piece", "limón", "piel", ""),
            ("1 terrón de azúcar", "1 piece", "azúcar", "terrón", ""),
            ("unos 100 ml de tónica", "about 100 ml", "tónica", "", ""),
            ("1 lata de cola", "", "cola", "1 lata", "unit_unknown"),
            ("un poco de soda", "", "soda", "un poco", "unit_unknown"),
            ("Para decorar: 1 cereza", "1 piece", "cereza", "", "garnish"),
            ("3 cl di gin", "3 cl", "gin", "", ""),
            ("1 cucchiaio da tavola di zucchero", "1 metric_tbsp", "zucchero", "", ""),
            ("1 cucchiaino da tè di zucchero", "1 metric_tsp", "zucchero", "", ""),
            ("2 cucchiai da bar di sciroppo", "2 bar_spoon", "sciroppo", "", ""),
            ("1 goccia d'angostura", "1 drop", "angostura", "", ""),
            ("una spruzzata di soda", "1 splash", "soda", "", ""),
            ("mezza fetta d'arancia", "0,5 piece", "arancia", "fetta", ""),
            ("30 ml dell'acqua", "30 ml", "acqua", "", ""),
            ("2 a 3 gocce di bitter", "2-3 drop", "bitter", "", ""),
            ("3/10 di gin", "", "gin", "3/10", "measure_missing"),
            ("un po' di soda", "", "soda", "un po'", "unit_unknown"),
            ("1 lattina di cola", "", "cola", "1 lattina", "unit_unknown"),
            ("soda q.b.", "", "soda", "q.b", "measure_missing"),
            ("1 cucchiaio di zucchero", "1 metric_tbsp", "zucchero", "", ""),
            ("2 cucchiai di zucchero", "2 metric_tbsp", "zucchero", "", ""),
            ("1 cucchiaino di miele", "1 metric_tsp", "miele", "", ""),
            ("2 gocce di bitter", "2 drop", "bitter", "", ""),
            ("2 o 3 gocce di bitter", "2-3 drop", "bitter", "", ""),
            ("uno spruzzo di bitter", "1 dash", "bitter", "", ""),
            ("1 spruzzo di bitter", "1 dash", "bitter", "", ""),
            ("mezzo lime", "0,5 piece", "lime", "", ""),
            ("succo di mezzo lime", "0,5 piece", "lime", "succo di", ""),
            ("6 foglie di menta", "6 piece", "menta", "foglie", ""),
            ("1 fetta d'arancia", "1 piece", "arancia", "fetta", ""),
            ("un pizzico di sale", "", "sale", "un pizzico", "unit_unknown"),
            ("2 parti di gin", "2 part", "gin", "", "parts_need_size"),
            ("colmare con soda", "", "soda", "colmare con", "measure_missing"),
            ("Guarnizione: fetta d'arancia", "", "fetta d'arancia", "", "garnish"),
        ],
    );
}

/// Parts are a ratio until somebody says how large one is.
#[test]
fn parts_of_a_known_size() {
    let read = |part: &str, typed: &str| {
        let ask = json!({"text": typed, "part": {"text": part}});
        told(&sound_reply(wire::recipe, &ask)["lines"][0])
    };
    for (part, typed, expected) in [
        ("30 ml", "2 parts gin", ["60 ml", "gin", "2 parts", ""]),
        ("3 cl", "1 part gin", ["3 cl", "gin", "1 part", ""]),
        ("30 ml", "1/2 part gin", ["15 ml", "gin", "1/2 part", ""]),
        ("1 oz", "1/3 part gin", ["1/3 imp_fl_oz", "gin", "1/3 part", ""]),
        ("30 ml", "1-2 parts gin", ["30-60 ml", "gin", "1-2 parts", ""]),
        ("30 ml", "about 2 parts gin", ["about 60 ml", "gin", "about 2 parts", ""]),
        ("", "2 parts gin", ["2 part", "gin", "", "parts_need_size"]),
        ("half a bottle", "2 parts gin", ["2 part", "gin", "", "parts_need_size"]),
    ] {
        assert_eq!(read(part, typed), expected, "{typed} of {part}");
    }
    for (part, told) in [("x", "number_unreadable"), ("25-30 ml", "range_not_here")] {
        let reply = reply(wire::recipe, &json!({"text": "2 parts gin", "part": {"text": part}}));
        assert_eq!(reply["problems"][0]["code"], told);
        assert_eq!(reply["problems"][0]["place"], "part");
        assert_eq!(reply["lines"][0]["problems"][0]["code"], "parts_need_size");
    }
}

#[test]
fn a_problem_says_where_in_the_line() {
    let problem = |typed: &str| recipe(&us(), typed)["lines"][0]["problems"][0].clone();
    assert_eq!(
        problem("• ½ parts gin"),
        json!({"code": "parts_need_size", "place": "measure", "values": {"typed": "½ parts", "at": "2"}})
    );
    assert_eq!(
        problem("sel : une pincée"),
        json!({"code": "measure_missing", "place": "measure", "values": {"at": "0"}})
    );
    assert_eq!(
        problem("salt (a pinch)"),
        json!({"code": "unit_unknown", "place": "measure", "values": {"typed": "pinch", "at": "8"}})
    );
    let long = "x".repeat(MOST_LINE + 1);
    assert_eq!(problem(&long)["place"], "text");
    assert_eq!(problem(&long)["values"]["most"], MOST_LINE.to_string());
    assert_eq!(recipe(&us(), &long)["lines"][0]["text"], long);
}

/// A whole recipe as it is pasted: no line that holds anything is left out.
#[test]
fn a_text_of_many_lines() {
    let text = "Lock Keeper\r\n\r\nIngredients:\n - 50 ml rye\n\t- 2 dashes bitters\n\n\n1) stir\n";
    let reply = recipe(&us(), text);
    let texts: Vec<&Value> =
        reply["lines"].as_array().unwrap().iter().map(|line| &line["text"]).collect();
    assert_eq!(
        texts,
        ["Lock Keeper", "Ingredients:", " - 50 ml rye", "\t- 2 dashes bitters", "1) stir"]
    );
    assert_eq!(recipe(&us(), " \n\r\n")["lines"], json!([]));
    let many = "1 dash bitters\n".repeat(MOST_RECIPE_LINES + 2);
    let reply = recipe(&us(), &many);
    let lines = reply["lines"].as_array().unwrap();
    assert_eq!(lines.len(), MOST_RECIPE_LINES + 2);
    assert_eq!(lines[MOST_RECIPE_LINES - 1]["problems"], json!([]));
    assert_eq!(lines[MOST_RECIPE_LINES]["text"], "1 dash bitters");
    assert_eq!(lines[MOST_RECIPE_LINES]["problems"][0]["code"], "recipe_too_long");
    assert_eq!(reply["problems"][0]["code"], "recipe_too_long");
    let reply = recipe(&us(), &"x".repeat(MOST_PASTED + 1));
    assert_eq!(reply["problems"][0]["values"], json!({"most": MOST_PASTED.to_string()}));
    assert_eq!(
        recipe(&us(), &"x\n".repeat(MOST_PASTED / 2))["lines"].as_array().unwrap().len(),
        MOST_PASTED / 2
    );
}

#[test]
fn candidates_from_the_shelf() {
    let shelf = [
        "London dry gin",
        "Sloe gin",
        "Gin",
        "Lime juice",
        "Limes",
        "Crème de cassis",
        "Orange bitters",
        "Bitters",
        "Egg whites",
        "Soda water",
        "Fleur de sel",
    ];
    let bottles: Vec<Value> = shelf.iter().map(|name| json!({"id": name, "name": name})).collect();
    let found = |typed: &str| -> Vec<String> {
        let reply = sound_reply(wire::recipe, &json!({"text": typed, "bottles": bottles}));
        let ids = reply["lines"][0]["candidates"].as_array().unwrap();
        ids.iter().map(|id| id.as_str().unwrap().to_string()).collect()
    };
    for (typed, expected) in [
        ("60 ml gin", &["Gin", "Sloe gin", "London dry gin"][..]),
        ("60 ml GINS", &["Gin", "Sloe gin", "London dry gin"]),
        ("60 ml london gin", &["Gin", "London dry gin", "Sloe gin"]),
        ("60 ml dry London gin", &["London dry gin", "Gin", "Sloe gin"]),
        ("30 ml fresh lime juice", &["Lime juice", "Limes"]),
        ("juice of half a lime", &["Limes", "Lime juice"]),
        ("10 ml creme de cassis", &["Crème de cassis"]),
        ("10 ml crème de cacao", &["Crème de cassis"]),
        ("2 dashes orange bitter", &["Orange bitters", "Bitters"]),
        ("1 egg white", &["Egg whites"]),
        ("10 ml de", &[]),
        ("60 ml ginger ale", &[]),
        ("Gin:", &[]),
    ] {
        assert_eq!(found(typed), expected, "{typed}");
    }
}

#[test]
fn a_shared_word_makes_no_bottle() {
    let bottles = ["Lemon juice", "Orange bitters", "Soda water", "London dry gin"];
    let bottles: Vec<Value> =
        bottles.iter().map(|name| json!({"id": name, "name": name})).collect();
    for (typed, is_meant) in [
        ("20 ml fresh lemon juice", true),
        ("60 ml gin", true),
        ("2 dashes bitters", true),
        ("soda water, to top", true),
        ("1 lemon wheel, for garnish", false),
        ("1 oz bitter liqueur", false),
        ("Orange peel to garnish", false),
        ("100 ml tonic water", false),
        ("A sour for a rainy evening by the water.", false),
        ("10 ml elderflower syrup", false),
        ("2 oz gin, 1 oz soda water", false),
    ] {
        let reply = sound_reply(wire::recipe, &json!({"text": typed, "bottles": bottles}));
        assert_eq!(reply["lines"][0]["is_meant"], is_meant, "{typed}");
    }
}

#[test]
fn rows_of_pictures_and_dashes_pour_nothing() {
    let reply = recipe(&us(), "LOCK GATE\n🍸🍸🍸\n---\n60 ml gin\n* * *");
    let asides: Vec<&str> = reply["lines"]
        .as_array()
        .unwrap()
        .iter()
        .map(|line| line["aside"].as_str().unwrap())
        .collect();
    assert_eq!(
        (reply["name"].as_str(), &asides[..]),
        (Some("LOCK GATE"), &["title", "heading", "heading", "", "heading"][..])
    );
}

fn schema(recipe: Value) -> Value {
    recipe_of(&recipe.to_string())
}

fn recipe_of(text: &str) -> Value {
    reply(wire::recipe, &json!({"text": text}))
}

#[test]
fn schema_org_recipes() {
    let lines = json!(["60 ml gin", "2 dashes bitters"]);
    let bare = json!({"@type": "Recipe", "name": " Lock Keeper ", "recipeIngredient": lines});
    for sound in [
        bare.clone(),
        json!({"@context": "https://schema.org", "@graph": [{"@type": "WebSite", "name": "x"}, bare]}),
        json!([{"@type": "Person"}, [bare]]),
        json!([{"@graph": {"@type": ["Thing", "Recipe"], "name": "Lock Keeper", "recipeIngredient": lines}}, {"@type": "Recipe"}]),
        json!({"@type": "https://schema.org/Recipe", "name": "Lock Keeper", "ingredients": lines}),
        json!({"@type": "schema:Recipe", "name": "Lock Keeper", "recipeIngredient": "60 ml gin\n2 dashes bitters"}),
    ] {
        let reply = schema(sound.clone());
        assert_eq!(reply["problems"], json!([]), "{sound}");
        assert_eq!(reply["name"], "Lock Keeper", "{sound}");
        let found: Vec<_> = reply["lines"].as_array().unwrap().iter().map(told).collect();
        assert_eq!(found, [["60 ml", "gin", "", ""], ["2 dash", "bitters", "", ""]], "{sound}");
    }
    // A name that is no text is none; the lines stand.
    let nameless =
        schema(json!({"@type": "Recipe", "name": 7, "recipeIngredient": ["1 dash bitters"]}));
    assert_eq!((&nameless["name"], nameless["lines"].as_array().unwrap().len()), (&json!(""), 1));
    assert_eq!(recipe_of(&format!("\u{feff}\n {bare} \n"))["problems"], json!([]));
}

#[track_caller]
fn check_refused(text: &str, why: &str, place: &str) {
    let reply = recipe_of(text);
    assert_eq!(reply["lines"], json!([]), "{why}");
    assert_eq!(
        reply["problems"],
        json!([{"code": "recipe_unreadable", "place": "text", "values": {"why": why, "where": place}}])
    );
}

#[test]
fn data_that_hold_no_recipe_are_refused_whole() {
    for (data, why, place) in [
        (json!({}), "no recipe in it", ""),
        (json!([{}]), "no recipe in it", ""),
        (json!({"@type": "Person", "recipeIngredient": ["gin"]}), "no recipe in it", ""),
        (json!({"@type": 7, "@graph": 8}), "no recipe in it", ""),
        (json!({"@type": [["Recipe"], 7]}), "no recipe in it", ""),
        (json!({"@type": "Recipes"}), "no recipe in it", ""),
        (json!({"@type": "Recipe"}), "no ingredients in it", ""),
        (json!({"@type": "Recipe", "recipeIngredient": []}), "no ingredients in it", ""),
        (json!({"@type": "Recipe", "recipeIngredient": {"a": "b"}}), "no ingredients in it", ""),
        (json!({"@type": "Recipe", "recipeIngredient": 7}), "no ingredients in it", ""),
        (
            json!({"@type": "Recipe", "recipeIngredient": ["gin", {"value": "60"}]}),
            "an ingredient that is no text",
            "recipeIngredient[1]",
        ),
    ] {
        check_refused(&data.to_string(), why, place);
    }
    check_refused("{\"@type\": \"Recipe\"", "no JSON from character 18 on", "");
    check_refused("{} trailing", "no JSON from character 4 on", "");
    check_refused("{\"a\": 1, \"a\": 2}", "no JSON from character 13 on", "");
    // Deeper than the reader of JSON goes, and wider than a recipe is.
    let reply = recipe_of(&format!("{}1{}", "[{\"@graph\":".repeat(900), "}]".repeat(900)));
    assert_eq!(reply["problems"][0]["code"], "recipe_unreadable");
    let reply = recipe_of(&"[".repeat(50_000));
    assert_eq!(reply["problems"], json!([]), "brackets alone are a line of text");
    let wide: Vec<String> = (0..9_000).map(|key| format!("\"{key}\":1")).collect();
    check_refused(&format!("{{{}}}", wide.join(",")), "an object of too many keys", "");
    // Brackets, colons and quotes in a text are no keys.
    let review = ":{[\"\\".repeat(999);
    let reply = schema(
        json!({"@type": "Recipe", "review": review, "recipeIngredient": ["1 dash bitters"]}),
    );
    assert_eq!(reply["problems"], json!([]));
}

/// What is written for other programs is read as it was: names, amounts and units.
#[test]
fn a_spec_goes_out_and_comes_back() {
    let bottle = |id: &str, name: &str, holds: &str| json!({"id": id, "name": name, "paid": {"price": "20"}, "holds": {"text": holds}});
    let bottles = json!([
        bottle("a", "Rye", "70 cl"),
        bottle("b", "Gin, London (dry)", "70 cl"),
        bottle("c", "Limes", "20 pieces"),
        bottle("d", "sugar", "1 kg"),
        bottle("e", "7 year \"old\" rum", "70 cl"),
    ]);
    let house = json!({"kitchen": "us"});
    let own = json!({"name": "Soda", "paid": {"price": "1"}, "holds": {"text": "200 ml"}});
    let rows = [
        ("a", "2 oz", "2 us fl oz Rye"),
        ("a", "1 1/3 tsp", "1 1/3 us tsp Rye"),
        ("a", "3-4 dashes", "3-4 dashes Rye"),
        ("a", "about 20 ml", "about 20 ml Rye"),
        ("b", "25 ml", "25 ml \"Gin, London (dry)\""),
        ("c", "half a piece", "0.5 Limes"),
        ("c", "2", "2 Limes"),
        ("d", "6 oz", "6 oz wt sugar"),
        ("e", "1 bar spoon", "1 bar spoon 7 year \"old\" rum"),
        ("", "most of the bottle", "0.6-0.95 bottles Soda"),
    ];
    let lines: Vec<Value> = rows
        .iter()
        .map(|(id, measure, _)| {
            let unit = if *measure == "2" { "piece" } else { "" };
            json!({"bottle": id, "own": if id.is_empty() { own.clone() } else { Value::Null }, "measure": {"text": measure, "unit": unit}})
        })
        .collect();
    let spec = json!({"name": "Lock Keeper", "lines": lines});
    let ask = json!({"house": house, "bottles": bottles, "spec": spec});
    let out = sound_reply(wire::recipe_out, &ask);
    let written: Value = serde_json::from_str(out["text"].as_str().unwrap()).unwrap();
    assert_eq!(written["@type"], "Recipe");
    assert_eq!(written["recipeIngredient"], json!(rows.map(|(.., printed)| printed)));
    let priced = answer(&json!({"house": house, "bottles": bottles, "specs": [spec]}));
    let cost = &priced["specs"][0]["cost"];
    assert_eq!(written["estimatedCost"]["@type"], "MonetaryAmount");
    assert_eq!(written["estimatedCost"]["currency"], "GBP");
    let value: f64 = written["estimatedCost"]["value"].as_str().unwrap().parse().unwrap();
    let exact: f64 = cost["value"].as_str().unwrap().parse().unwrap();
    assert!((value - exact).abs() <= 0.005, "{value} {exact}");

    let again = reply(wire::recipe, &json!({"house": house, "text": out["text"]}));
    assert_eq!(again["name"], "Lock Keeper");
    let shelf = bottles.as_array().unwrap();
    for (line, (id, measure, _)) in again["lines"].as_array().unwrap().iter().zip(rows) {
        let name = shelf
            .iter()
            .find(|bottle| bottle["id"] == id)
            .map_or(&own["name"], |bottle| &bottle["name"]);
        assert_eq!((&line["name"], &line["problems"]), (name, &json!([])), "{measure}");
    }
    // The glass costs the same with the measures that were read.
    let mut twin = spec.clone();
    for (line, read) in
        twin["lines"].as_array_mut().unwrap().iter_mut().zip(again["lines"].as_array().unwrap())
    {
        line["measure"] = read["measure"].clone();
    }
    let twin = answer(&json!({"house": house, "bottles": bottles, "specs": [twin]}));
    assert_eq!(twin["problems"], json!([]));
    assert_eq!(&twin["specs"][0]["cost"]["value"], &cost["value"]);

    // What cannot be read stays as typed, and a part of a cost is no cost.
    let mut torn = ask;
    torn["spec"]["lines"][0]["measure"]["text"] = "2 thimbles".into();
    let out = reply(wire::recipe_out, &torn);
    assert_eq!((&out["missing"], &out["problems"][0]["code"]), (&json!(1), &json!("unit_unknown")));
    let written: Value = serde_json::from_str(out["text"].as_str().unwrap()).unwrap();
    assert_eq!(written["recipeIngredient"][0], "2 thimbles Rye");
    assert_eq!(written["estimatedCost"], Value::Null);
    assert_eq!(
        reply(wire::recipe_out, &json!({"x": 1}))["problems"][0]["code"],
        "request_unreadable"
    );
}

/// Pieces of which lines are made, so that random ones come near what the reader takes apart.
const PIECES: [&str; 71] = [
    "60",
    "ml",
    "gin",
    " ",
    "  ",
    "1 1/2",
    "½",
    "oz",
    "oz.",
    "(",
    ")",
    "[",
    "]",
    ",",
    ";",
    ":",
    "-",
    "–",
    "\"",
    "\"\"",
    "of",
    "a",
    "half a",
    "2",
    "3-4",
    "dashes",
    "dash",
    "about",
    "or",
    "to",
    "top with",
    "Garnish:",
    "optional",
    "(optional)",
    "part",
    "parts",
    "juice of",
    "to garnish",
    "1.",
    "*",
    "pinch",
    "slices",
    "%",
    "1,250",
    "0",
    "/",
    "+",
    "plus",
    "c. à s.",
    "d'",
    "EL",
    "\u{301}",
    "ß",
    "\u{a0}",
    "٣",
    "１",
    "İ",
    "year",
    ".",
    "cup",
    "1 330",
    "-½",
    "T",
    "each",
    "#",
    "**",
    "Shake",
    "rühren",
    "serves",
    "people",
    "Method",
];

proptest! {
    #![proptest_config(config())]

    /// Any text at all is read, and every line of it that holds anything is in the reply.
    #[test]
    fn prop_any_text_is_read_and_nothing_is_dropped(text in "\\PC{0,200}(\n\\PC{0,80}){0,4}") {
        let reply = recipe(&us(), &text);
        let lines = reply["lines"].as_array().unwrap();
        if reply["problems"] == json!([]) {
            let found: Vec<&str> = lines.iter().map(|line| line["text"].as_str().unwrap()).collect();
            let held: Vec<&str> = text.split(['\n', '\r']).map(str::trim_end).filter(|line| !line.trim().is_empty()).collect();
            prop_assert_eq!(found, held);
        }
    }

    /// Lines made of what the reader takes apart.
    #[test]
    fn prop_what_was_read_is_printed_and_read_again(
        pieces in prop::collection::vec(prop::sample::select(&PIECES[..]), 0..14),
        gap in prop::sample::select(&["", " "][..]),
    ) {
        let typed = pieces.join(gap);
        check_printed(&us(), &typed);
        check_printed(&comma(), &typed);
    }

    #[test]
    fn prop_any_line_is_printed_and_read_again(typed in "\\PC{0,120}") {
        check_printed(&us(), &typed);
    }

    /// Data that are nearly a recipe are read or refused, and end.
    #[test]
    fn prop_damaged_data_end(cut in 0usize..200, put in "\\PC{0,3}") {
        let whole = json!({"@graph": [{"@type": ["Recipe"], "name": "x", "recipeIngredient": ["60 ml gin", "½ lime", "2 \"x\""]}]}).to_string();
        let cut = cut.min(whole.len());
        let Some((start, end)) = whole.split_at_checked(cut) else { return Ok(()) };
        let reply = recipe_of(&format!("{start}{put}{end}"));
        prop_assert!(reply["lines"].as_array().unwrap().len() <= 9);
    }
}
