//! Units against the published values. Each row names its source; a row is converted by the core
//! from text to figure, not read off the table alone.

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

use farthing::dash::ASSUMED;
use farthing::measure::{UNITS, unit};
use outside::{Die, answer, bottle, exact, half_away, kept_text, pour, value};
use serde_json::{Value, json};

/// `text` comes to `published`, as far as that is printed, and a bottle of `text` for 1 costs its
/// exact inverse each.
#[track_caller]
fn check(text: &str, published: &str, source: &str) {
    let decimals = published.split_once('.').map_or(0, |(_, part)| part.len() as u32).min(12);
    let reply = answer(&json!({
        "bottles": [{"id": "b", "paid": {"price": "1"}, "holds": {"text": text}}],
        "pours": [{"bottle": "b", "measure": {"text": text}}],
    }));
    let amount = value(&reply["pours"][0]["amount"]);
    let rounded = |text: &str| half_away(&exact(text), decimals);
    assert_eq!(rounded(&amount), rounded(published), "{text}: {source}");
    assert_eq!(value(&reply["bottles"][0]["usable"]), amount, "{text}");
    assert_eq!(value(&reply["pours"][0]["cost"]), "1", "{text}: the whole of it costs the price");
    assert_eq!(value(&reply["pours"][0]["count"]), "1", "{text}");
}

#[test]
fn units_that_gnu_units_defines_exactly() {
    // GNU units 2.22, definitions.units.
    check("1 us fl oz", "29.5735295625", "GNU units usfloz");
    check("1 imp fl oz", "28.4130625", "GNU units brfloz");
    check("1 us tsp", "4.92892159375", "GNU units ustsp");
    check("1 us cup", "236.5882365", "GNU units uscup: 8 usfloz");
    check("1 metric tsp", "5", "GNU units brteaspoon, the metric one");
    check("1 metric tbsp", "15", "GNU units brtablespoon 15 ml");
    check("1 metric cup", "250", "GNU units metriccup");
    check("1 imp gill", "142.0653125", "GNU units brgill");
    check("1 us gill", "118.29411825", "GNU units gill");
    check("8 imp pint", "4546.09", "GNU units brgallon 4.54609 l, eight pints");
    check("8 us pint", "3785.411784", "GNU units usgallon 231 in^3, eight pints");
    check("8/5 us pint", "757.0823568", "GNU units fifth, a fifth of a US gallon");
    check("1/480 us fl oz", "0.0616115199219", "GNU units minim");
    check("1/480 imp fl oz", "0.0591938802", "GNU units brminim");
    check("1 1/2 us fl oz", "44.36", "GNU units jigger 1.5 usfloz, printed to two decimals");
    check("0.75 l", "750", "GNU units winebottle 750 ml");
    check("1.5 l", "1500", "GNU units magnum 1.5 L");
    check("1 lb", "453.59237", "GNU units, from memory: the pound is exact since 1959");
}

#[test]
fn units_that_ucum_lists() {
    // UCUM, package ucum-lhc 7.1.10, magnitudes as printed there.
    check("1 us fl oz", "29.57352956", "UCUM [foz_us]");
    check("1 imp fl oz", "28.4130625", "UCUM [foz_br]");
    check("1 us tsp", "4.92892159375", "UCUM [tsp_us]");
    check("1 us tbsp", "14.78676478125", "UCUM [tbs_us]; Pint: tablespoon = fluid_ounce / 2");
    check("1 us gill", "118.29411825", "UCUM [gil_us]");
    check("1 imp gill", "142.0653125", "UCUM [gil_br]");
    check("1 us pint", "473.176473", "UCUM [pt_us]");
    check("1 imp pint", "568.26125", "UCUM [pt_br]");
    check("8 us pint", "3785.411784", "UCUM [gal_us], eight pints");
    check("1/8 us fl oz", "3.6966911953", "UCUM [fdr_us], the fluid dram");
    check("1/8 imp fl oz", "3.5516328125", "UCUM [fdr_br], the fluid drachm");
    check("1/480 us fl oz", "0.0616115199", "UCUM [min_us]");
    check("1/480 imp fl oz", "0.0591938802", "UCUM [min_br]");
    check("1 metric tsp", "5", "UCUM [tsp_m]");
    check("1 metric tbsp", "15", "UCUM [tbs_m]");
}

#[test]
fn units_as_nist_prints_them() {
    // NIST SP 811 appendix B.8, in m³ there; from memory.
    check("1 us fl oz", "29.57353", "SP 811 B.8: 2.957 353 E-05 m3");
    check("1 imp fl oz", "28.41306", "SP 811 B.8: 2.841 306 E-05 m3");
    check("1 us tsp", "4.928922", "SP 811 B.8: 4.928 922 E-06 m3");
    check("1 us tbsp", "14.78676", "SP 811 B.8: 1.478 676 E-05 m3");
    check("1 us cup", "236.5882", "SP 811 B.8: 2.365 882 E-04 m3");
    check("1 us gill", "118.2941", "SP 811 B.8: 1.182 941 E-04 m3");
    check("1 imp gill", "142.0653", "SP 811 B.8: 1.420 653 E-04 m3");
    // NIST SP 430, the table of kitchen capacities, rounded there.
    check("1/8 us fl oz", "3.7", "SP 430: fluid dram");
    check("1 us tsp", "4.9", "SP 430: teaspoon");
    check("1 us tbsp", "15", "SP 430: tablespoon");
    check("1 us fl oz", "30", "SP 430: fluid ounce");
    check("1 us gill", "118", "SP 430: gill");
    check("1 us cup", "237", "SP 430: cup");
    check("1 us pint", "473", "SP 430: pint");
    check("2 us pints", "946", "SP 430: quart");
}

#[test]
fn measures_of_pubs_and_kitchens() {
    check("1/4 imp gill", "35.516328", "GNU units brgill / 4");
    check("1/5 imp gill", "28.413063", "GNU units brgill / 5");
    check("1/6 imp gill", "23.677552", "GNU units brgill / 6");
    check("1/4 gill", "36", "an encyclopaedia, at second hand: 36, 28 or 24 ml");
    check("1/5 gill", "28", "the same");
    check("1/6 gill", "24", "the same");
    check("1/4 gill", "35.5", "NSAI: the usual Irish spirit measure is 35.5 ml");
    check("5/8 imp fl oz", "17.8", "GNU units' comment prints approx 17.7 ml; exactly 17.7582");
    check("1 au tbsp", "20", "a retailer's note, at second hand: around 20 ml");
    check("1 cl", "10", "SI prefix");
    check("1 dl", "100", "SI prefix");
    check("1 l", "1000", "Weights and Measures Act 1985: the litre is a cubic decimetre");
    check("1 kg", "1000", "SI prefix");
}

/// A bottle that is weighed: there `oz` is avoirdupois.
#[test]
fn an_ounce_beside_a_weighed_bag_is_avoirdupois() {
    let amount = value(&pour(bottle("1", "1 kg"), "1 oz")["amount"]);
    assert_eq!(amount, "28.349523125", "NIST, from memory: exactly a sixteenth of 453.59237 g");
    let sixteen = pour(bottle("1", "1 lb"), "16 oz");
    assert_eq!(value(&sixteen["cost"]), "1");
}

/// Published for another unit of nearly the same name: we are none of these.
#[test]
fn near_namesakes_are_kept_apart() {
    let size = |code: &str| unit(code).unwrap().exact_size().unwrap().kept().unwrap().plain_text();
    assert_ne!(size("us_cup"), "240", "UCUM [cup_m], the cup of US nutrition labels");
    assert_ne!(size("us_fl_oz"), "30", "UCUM [foz_m], the ounce of US nutrition labels");
    assert_ne!(size("us_tbsp"), "15", "UCUM [tbs_m]");
    assert_ne!(size("us_tsp"), "5", "UCUM [tsp_m]");
    assert_ne!(size("au_tbsp"), size("metric_tbsp"));
    assert_ne!(size("oz"), size("imp_fl_oz"), "28.35 g is not 28.41 ml");
}

/// TTB's conversion tables: a bottle of so many ml is so many US fluid ounces, to one decimal.
#[test]
fn bottles_in_fluid_ounces_as_ttb_prints_them() {
    for (ml, fl_oz) in [
        ("1750", "59.2"),
        ("1000", "33.8"),
        ("750", "25.4"),
        ("375", "12.7"),
        ("200", "6.8"),
        ("100", "3.4"),
        ("50", "1.7"),
    ] {
        // One fluid ounce for 1 makes the cost of the bottle its fluid ounces.
        let ounces = value(&pour(bottle("1", "1 us fl oz"), &format!("{ml} ml"))["cost"]);
        assert_eq!(half_away(&exact(&ounces), 1), fl_oz, "{ml} ml");
    }
}

#[test]
fn the_page_is_offered_every_unit_at_its_size() {
    let tables: Value = serde_json::from_str(&farthing::wire::tables()).unwrap();
    let rows = tables["units"].as_array().unwrap();
    assert_eq!(rows.len(), UNITS.len());
    for (row, unit) in rows.iter().zip(UNITS) {
        assert_eq!(row["code"], unit.code);
        assert_eq!(row["base"], unit.kind.base());
        let assumed = ASSUMED.iter().find(|assumed| assumed.code == unit.code);
        assert_eq!(row["rough"], json!(assumed.is_some()), "{}", unit.code);
        let size = unit.exact_size().or(assumed.and_then(|assumed| Some(assumed.size()?.ml)));
        let size = size.map_or("0".to_string(), |size| size.kept().unwrap().plain_text());
        assert_eq!(row["amount"], size, "{}", unit.code);
    }
}

/// An assumed size is what the table of its module says, and lies inside what is published.
#[track_caller]
fn check_rough(code: &str, ml: &str, least: &str, most: &str, sources: &str) {
    let amount =
        value(&pour(bottle("1", "1 l"), &format!("1 {}", code.replace('_', " ")))["amount"]);
    assert_eq!(exact(&amount), exact(ml), "{code}");
    assert!(exact(least) <= exact(ml) && exact(ml) <= exact(most), "{code}: {sources}");
    let documented = include_str!("../src/dash.rs")
        .lines()
        .filter_map(|line| line.strip_prefix("/// | "))
        .find_map(|row| row.strip_prefix(&format!("{} | ", code.replace('_', " "))))
        .and_then(|row| row.split(" | ").next());
    assert_eq!(documented.map(exact), Some(exact(ml)), "the table in src/dash.rs: {code}");
}

#[test]
fn assumed_sizes_lie_inside_the_published_spread() {
    // A dash: a quarter of 1/8 tsp (a trade book on dasher tops) to 1.232 ml (one writer's kitchen
    // trial). Between them 1/8 US tsp, 1/6 US tsp, 1/10 tsp and the trade's 1/32 US fl oz.
    check_rough("dash", "0.92", "0.154", "1.232", "trade writing");
    // A drop: about 45 to the ml for a spirit (computed from surface tensions) to USP <1101>'s 55 mg.
    check_rough("drop", "0.05", "0.022", "0.055", "UCUM [drp]; USP 32 <1101>");
    // A dropper: a maker says slightly under 1 ml; USP <1101> lets a dropper err by 15 %.
    check_rough("dropper", "1.00", "0.85", "1.15", "a maker's note; USP 32 <1101>");
    check_rough("bar_spoon", "3.70", "2.5", "5", "barware trade; a vintage bar book says 3.697");
    check_rough("splash", "4.90", "3.70", "4.93", "a trade table: 1/8 US fl oz or 1 US tsp");
    // Common practice, no source: only the value itself can be held.
    check_rough("rinse", "5.00", "5", "5", "no source");
    check_rough("drizzle", "5.00", "5", "5", "no source");
    assert_eq!(ASSUMED.len(), 7, "an assumed size without a row here");
}

/// Published sizes of a dash, each to the figures that are printed, as shares of exact units.
#[test]
fn published_dashes_come_to_the_millilitres_that_are_computed_for_them() {
    check("1/32 us fl oz", "0.924173", "the usual trade convention");
    check("1/8 us tsp", "0.616115", "the household convention");
    check("1/48 us fl oz", "0.616115", "a 1954 trade guide, quoted: the same as 1/8 tsp");
    check("1/6 us tsp", "0.821487", "an often reprinted US bar table");
    check("1/10 us tsp", "0.4929", "an open wikibook's glossary");
    // Those tables print "1/6 teaspoon, or 1/32 ounce" on one line: the two are not the same.
    let bottle = || bottle("1", "1 l");
    let sixth = value(&pour(bottle(), "1/6 us tsp")["amount"]);
    assert_ne!(sixth, value(&pour(bottle(), "1/32 us fl oz")["amount"]));
}

/// Our exact units as fend-core, an arbitrary-precision unit calculator, is told of them. It knows
/// the US units by name; the imperial ones it is given as parts of the gallon of 4.54609 litres.
const IN_FEND: &[(&str, &str)] = &[
    ("ml", "ml"),
    ("cl", "cl"),
    ("dl", "dl"),
    ("l", "litre"),
    ("us fl oz", "floz"),
    ("us tsp", "teaspoon"),
    ("us tbsp", "tablespoon"),
    ("us cup", "cup"),
    ("us gill", "gill"),
    ("us pint", "pint"),
    ("imp fl oz", "(4.54609 litre / 160)"),
    ("imp gill", "(4.54609 litre / 32)"),
    ("imp pint", "(4.54609 litre / 8)"),
    ("metric tsp", "(1 litre / 200)"),
    ("metric tbsp", "(3 metric_tsp)"),
    ("au tbsp", "(4 metric_tsp)"),
    ("metric cup", "(1 litre / 4)"),
];

const MASSES_IN_FEND: &[(&str, &str)] =
    &[("g", "gram"), ("kg", "kg"), ("oz", "ounce"), ("lb", "pound")];

/// Converts `count` random amounts with the core and with fend-core, and wants the same decimals.
#[track_caller]
fn referee(units: &[(&str, &str)], count: usize) {
    let mut die = Die(20_261_125);
    let mut fend = fend_core::Context::new();
    fend_core::evaluate("metric_tsp = 1 litre / 200", &mut fend).unwrap();
    for _ in 0..count {
        let (amount, from, to) = (die.decimal(6, 6), die.one_of(units), die.one_of(units));
        // One `to` for 1 makes the cost of the measure the number of `to` in it. The unit is chosen
        // and not typed, because an `oz` typed as what a bottle holds is a fluid ounce.
        let mut one = bottle("1", "1");
        one["holds"]["unit"] = to.0.replace(' ', "_").into();
        let ours = value(&pour(one, &format!("{amount} {}", from.0))["cost"]);
        let sum = format!("({amount} {}) / (1 {}) to exact", from.1, to.1);
        let theirs = fend_core::evaluate(&sum, &mut fend).unwrap_or_else(|e| panic!("{sum}: {e}"));
        let theirs = theirs.get_main_result();
        assert_eq!(ours, kept_text(&exact(theirs)), "{amount} {} in {}", from.0, to.0);
    }
}

#[test]
fn random_volumes_convert_as_fend_core_converts_them() {
    referee(IN_FEND, 3_000);
}

#[test]
fn random_masses_convert_as_fend_core_converts_them() {
    referee(MASSES_IN_FEND, 1_000);
}

/// Every exact volume and mass has been refereed.
#[test]
fn the_referee_knows_every_exact_unit() {
    let refereed: Vec<String> =
        IN_FEND.iter().chain(MASSES_IN_FEND).map(|(ours, _)| ours.replace(' ', "_")).collect();
    for unit in UNITS.iter().filter(|unit| unit.exact_size().is_some() && unit.code != "piece") {
        assert!(refereed.contains(&unit.code.to_string()), "{}", unit.code);
    }
}
