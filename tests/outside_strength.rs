//! How strong a glass is, against published tables, laws and a fit; and what holds of every mixture.

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

use farthing::caution::without_alcohol;
use farthing::density::{mass_part, of_spirit};
use farthing::strength::{Method, Mixed, Part, STANDARD_DRINKS, iced, mixed};
use farthing::wire;
use outside::{config, exact, sound_reply, value};
use proptest::prelude::*;
use serde_json::{Value, json};

fn parts(parts: &[(f64, f64)]) -> Vec<Part> {
    parts.iter().map(|(ml, percent)| Part { ml: *ml, percent: *percent }).collect()
}

fn drink(of: &[(f64, f64)]) -> Mixed {
    mixed(&parts(of)).unwrap()
}

#[track_caller]
fn near(found: f64, published: f64, within: f64, source: &str) {
    assert!((found - published).abs() <= within, "{found} is not {published}: {source}");
}

/// Computed from the coefficients of OIML R 22: masses and ethanol add, volumes do not.
#[test]
fn mixing_shrinks() {
    for (of, naive_ml, ml, naive_percent, percent) in [
        (&[(50.0, 100.0), (50.0, 0.0)][..], 100.0, 96.4627, 50.0, 51.8335),
        (&[(60.0, 40.0), (30.0, 0.0)], 90.0, 89.8703, 26.6667, 26.7052),
        // Sugar ignored.
        (
            &[(30.0, 47.0), (30.0, 24.0), (30.0, 16.0), (20.0, 0.0)],
            110.0,
            109.8057,
            23.7273,
            23.7693,
        ),
    ] {
        let found = drink(of);
        near(found.ml, ml, 5e-5, "computed");
        near(found.percent, percent, 5e-5, "computed");
        near(found.naive_percent, naive_percent, 5e-5, "computed");
        near(of.iter().map(|(ml, _)| ml).sum(), naive_ml, 0.0, "volumes added");
    }
}

/// A published 20 °C table by strength: a drink let down with water weighs what the table says.
#[test]
fn a_spirit_let_down_weighs_what_the_table_says() {
    for (percent, density) in [
        (10.0, 984.71),
        (20.0, 973.56),
        (30.0, 962.21),
        (40.0, 948.05),
        (50.0, 930.14),
        (90.0, 829.18),
    ] {
        // From 96 % and as much water as makes 100 g of this strength.
        let (strong, weak) = (mass_part(96.0), mass_part(percent));
        let spirit_g = 100.0 * weak / strong;
        let found = drink(&[(spirit_g / 0.80742, 96.0), ((100.0 - spirit_g) / 0.99820, 0.0)]);
        near(found.percent, percent, 0.002, "a published 20 °C dilution table");
        near(100_000.0 / found.ml, density, 0.02, "the same");
    }
}

/// What a country calls one drink, in all the drinks of one glass.
#[track_caller]
fn check_drinks(code: &str, of: &[(f64, f64)], count: f64, within: f64, source: &str) {
    let country = STANDARD_DRINKS.iter().find(|country| country.code == code).unwrap();
    near(country.count(&drink(of)), count, within, source);
}

const US_OUNCE: f64 = 29.573_529_562_5;
const PINT: f64 = 568.261_25;

#[test]
fn units_and_standard_drinks() {
    // NHS: "Strength (ABV) x Volume (ml) ÷ 1,000 = units"; one is 10 ml.
    check_drinks("uk", &[(25.0, 40.0)], 1.0, 1e-9, "NHS: a small single");
    check_drinks("uk", &[(35.0, 40.0)], 1.4, 1e-9, "NHS: a large single");
    check_drinks("uk", &[(700.0, 40.0)], 28.0, 1e-9, "a press article");
    check_drinks("uk", &[(750.0, 13.5)], 10.125, 1e-9, "exact; NHS prints 10");
    check_drinks("uk", &[(750.0, 13.5)], 10.0, 0.5, "NHS: a bottle of wine");
    check_drinks("uk", &[(6.0 * PINT, 4.0)], 13.63, 0.01, "a health charity: about 14");
    check_drinks("uk", &[(6.0 * 175.0, 13.0)], 13.65, 1e-9, "the same");
    check_drinks("uk", &[(14.0 * 25.0, 40.0)], 14.0, 1e-9, "the same");
    check_drinks("uk", &[(0.9, 44.7)], 0.0402, 5e-5, "computed: one dash of bitters");
    // NIAAA: 14 g or 0.6 US fl oz: beer, wine and a shot, the examples from memory.
    check_drinks("us", &[(0.6 * US_OUNCE, 100.0)], 1.0, 0.001, "0.6 oz (14 g)");
    check_drinks("us", &[(12.0 * US_OUNCE, 5.0)], 1.0, 0.001, "NIAAA, from memory: beer");
    check_drinks("us", &[(5.0 * US_OUNCE, 12.0)], 1.0, 0.001, "NIAAA, from memory: wine");
    check_drinks("us", &[(1.5 * US_OUNCE, 40.0)], 1.0, 0.001, "NIAAA, from memory: a shot");
    for code in ["au", "nz", "ie"] {
        check_drinks(code, &[(12.67, 100.0)], 1.0, 5e-4, "an encyclopaedia: 10 g, 12.67 ml");
    }
    // New Zealand: litres × percent × 0.789.
    check_drinks("nz", &[(330.0, 5.0)], 0.33 * 5.0 * 0.789, 5e-4, "an encyclopaedia");
    check_drinks("nz", &[(750.0, 13.5)], 0.75 * 13.5 * 0.789, 5e-3, "the same");
    check_drinks("dk", &[(12.0 / 0.789_24, 100.0)], 1.0, 1e-5, "an encyclopaedia: 12 g");
    check_drinks("at", &[(20.0 / 0.789_24, 100.0)], 1.0, 1e-5, "an encyclopaedia: 20 g");
    check_drinks("jp", &[(20.0 / 0.789_24, 100.0)], 1.0, 1e-5, "an encyclopaedia: 20 g");
    // Theirs lie between 8 and 20 g.
    let grams = |country: &farthing::strength::StandardDrink| {
        country.size * if country.is_ml { 0.789_24 } else { 1.0 }
    };
    assert!(STANDARD_DRINKS.iter().map(grams).all(|grams| (7.8..=20.0).contains(&grams)));
}

#[test]
fn alcohol_in_grams() {
    // 10 ml × 0.78924: the "8 g" of a unit is rounded, and 14 units are 110.5 g, not 112.
    near(drink(&[(25.0, 40.0)]).alcohol_g, 7.892, 5e-4, "computed");
    near(drink(&[(350.0, 40.0)]).alcohol_g, 110.5, 0.05, "computed");
    // One dash of 0.9 ml at 44.7 %. With ethanol at 0.789 it would be 0.3174.
    near(drink(&[(0.9, 44.7)]).alcohol_g, 0.3175, 5e-5, "computed");
}

/// D. Arnold, Liquid Intelligence (2014) p. 123, as transcribed in public.
#[test]
fn the_water_of_ice() {
    for (percent, stirred, shaken) in [
        (0.0, 0.145, 0.203),
        (10.0, 0.2575, 0.361_530),
        (15.0, 0.304_675, 0.429_042),
        (20.0, 0.345_800, 0.488_720),
        (30.0, 0.409_900, 0.584_570),
    ] {
        near(Method::Stirred.water(percent), stirred, 1e-6, "the fit at a row");
        near(Method::Shaken.water(percent), shaken, 1e-6, "the fit at a row");
        // From memory: built over ice about 0.24 at any strength.
        near(Method::Built.water(percent), 0.24, 0.0, "from memory");
        near(Method::None.water(percent), 0.0, 0.0, "no ice");
    }
    for (method, percent, after) in [
        (Method::Stirred, 20.0, 14.8610),
        (Method::Shaken, 20.0, 13.4344),
        (Method::Stirred, 30.0, 21.2781),
        (Method::Shaken, 30.0, 18.9326),
    ] {
        let (iced, water) = iced(&parts(&[(100.0, percent)]), method, None).unwrap();
        near(iced.naive_percent, after, 5e-5, "computed");
        near(water, 100.0 * method.water(percent), 1e-9, "of a hundred ml");
    }
}

/// The curves turn at 51.49 % and 55.58 %: a stronger drink is not said to take up less water.
#[test]
fn beyond_its_top_the_fit_stays_there() {
    for (method, turns, top) in
        [(Method::Stirred, 51.49, 0.465_767), (Method::Shaken, 55.58, 0.687_136)]
    {
        near(method.water(turns), top, 1e-6, "computed: c + b² / 4a");
        for beyond in [turns + 0.01, 60.0, 80.0, 100.0] {
            near(method.water(beyond), top, 1e-6, "beyond the top");
        }
        let rising: Vec<f64> = (0..=100).map(|percent| method.water(f64::from(percent))).collect();
        assert!(rising.windows(2).all(|two| two[0] <= two[1]), "{method:?}");
    }
}

/// What follows from a glass of such parts: ml, strength as typed.
#[track_caller]
fn glass(of: &[(&str, &str)], spec: &Value) -> Value {
    let bottle = |(index, (_, strength)): (usize, &(&str, &str))| json!({"id": format!("b{index}"), "strength": strength, "paid": {"price": "20"}, "holds": {"text": "700 ml"}});
    let line = |(index, (measure, _)): (usize, &(&str, &str))| json!({"bottle": format!("b{index}"), "measure": {"text": measure}});
    let mut spec = spec.clone();
    spec["lines"] = of.iter().enumerate().map(line).collect();
    let bottles: Vec<Value> = of.iter().enumerate().map(bottle).collect();
    let ask =
        json!({"house": {"drinks_of": "us"}, "bottles": bottles, "specs": [spec], "in_full": true});
    sound_reply(wire::facts, &ask)["specs"][0].clone()
}

/// Regulation (EU) 1169/2011, annex XII, row 4, and 27 CFR 19.356: 0.3 % vol on either side.
#[test]
fn a_label_may_be_off() {
    for (of, low, high) in [
        (&[("50 ml", "40")][..], "39.70", "40.30"), // "no less than 39.7 percent"
        (&[("50 ml", "0.2")], "0.00", "0.50"),
        (&[("50 ml", "99.9")], "99.60", "100.00"),
        (&[("50 ml", "0")], "0.00", "0.00"),
        // Where there is no alcohol there is nothing to be off: half of it is.
        (&[("50 ml", "10"), ("50 ml", "0")], "4.85", "5.15"),
    ] {
        let strength = glass(of, &json!({}))["strength"].clone();
        let ends = [("low", low), ("high", high)];
        for (end, published) in ends {
            let found = strength[end].as_str().unwrap();
            near(
                found.parse().unwrap(),
                published.parse().unwrap(),
                0.011,
                "the tolerance of labels",
            );
        }
    }
}

#[test]
fn a_glass_says_how_strong_it_is() {
    let stirred = json!({"method": "stirred"});
    let facts = glass(&[("60 ml", "40"), ("30 ml", "")], &stirred);
    assert_eq!(facts["strengths_missing"], 1);
    let strength = &facts["strength"];
    // Without the water 26.6667 % by volumes added, which the fit takes.
    let water = 90.0 * Method::Stirred.water(100.0 * 24.0 / 90.0);
    near(value(&strength["water_ml"]).parse().unwrap(), water, 1e-4, "the fit");
    assert_eq!(strength["drinks"][0], json!({"code": "us", "count": "1.35"}), "18.94 g / 14 g");
    assert_eq!(facts["lines"][0]["strength_without"], "", "nothing with a strength is left");

    let known = json!({"method": "stirred", "water": {"text": "3 cl"}});
    let strength = glass(&[("60 ml", "40")], &known)["strength"].clone();
    assert_eq!(value(&strength["water_ml"]), "30");
    assert_eq!(
        value(&strength["percent"]),
        "26.7052",
        "computed: 60 ml at 40 % and 30 ml of water"
    );
    assert_eq!(value(&strength["ml"]), "89.8703");
    assert_eq!(value(&strength["naive_percent"]), "26.6667");
    assert_eq!(glass(&[("60 ml", "")], &known)["strength"], json!(null), "no strength is told");
}

/// What a drink may be sold as: "alcohol free – product must be 0.05% abv or below" (Portman Group 2018);
/// "0.5% abv and less are not covered by the Licencing Act 2003" (a trade guide).
#[test]
fn bitters_in_a_drink_without_alcohol() {
    for (percent, code) in [
        (0.0, None),
        (0.05, None),
        (0.050_001, Some("not_alcohol_free")),
        (0.5, Some("not_alcohol_free")),
        (0.500_001, Some("not_low")),
        (1.2, Some("not_low")),
    ] {
        assert_eq!(without_alcohol(percent), code, "{percent}");
    }
    // Bitters at 44.7 %, a dash of 0.92 ml. Computed: 0.022, 0.205, 0.407 and 0.542 % vol.
    for (bitters, soda, percent, code) in [
        ("0.1 ml", "200 ml", "", None),
        ("1 dash", "200 ml", "0.205", Some("not_alcohol_free")),
        ("2 dashes", "200 ml", "0.407", Some("not_alcohol_free")),
        ("2 dashes", "150 ml", "0.542", Some("not_low")),
    ] {
        let of = [(bitters, "44.7"), (soda, "0")];
        let facts = glass(&of, &json!({"without_alcohol": true}));
        let told = code.map(|code| json!({"code": code, "values": {"percent": percent}}));
        assert_eq!(facts["cautions"], json!(Vec::from_iter(told)), "{bitters} in {soda}");
        assert_eq!(glass(&of, &json!({}))["cautions"], json!([]), "not sold so");
    }
}

fn liquids() -> impl Strategy<Value = Vec<(f64, f64)>> {
    prop::collection::vec((0.05f64..300.0, 0.0f64..100.0), 1..8)
}

proptest! {
    #![proptest_config(config())]

    #[test]
    fn prop_order_of_parts_does_not_matter(of in liquids(), turn in 0usize..8) {
        let mut turned = of.clone();
        turned.rotate_left(turn % of.len());
        let (one, other) = (drink(&of), drink(&turned));
        prop_assert!((one.percent - other.percent).abs() < 1e-9 && (one.ml - other.ml).abs() < 1e-9 * one.ml);
        // Nor whether some are mixed beforehand.
        let (first, rest) = of.split_at(of.len() / 2);
        if let Some(before) = mixed(&parts(first)) {
            let batch = [&[(before.ml, before.percent)][..], rest].concat();
            prop_assert!((one.percent - drink(&batch).percent).abs() < 1e-6);
        }
    }

    #[test]
    fn prop_water_never_makes_stronger(of in liquids(), water in 0.0f64..500.0, more in 0.0f64..500.0) {
        let with = |water: f64| drink(&[&of[..], &[(water, 0.0)]].concat());
        let (none, some, most) = (with(0.0), with(water), with(water + more));
        prop_assert!(none.percent >= some.percent - 1e-9 && some.percent >= most.percent - 1e-9);
        prop_assert!((some.alcohol_g - none.alcohol_g).abs() < 1e-9 * (1.0 + none.alcohol_g));
    }

    /// What goes in comes out: alcohol and mass. Strength lies between the weakest and the strongest.
    #[test]
    fn prop_mass_and_alcohol_balance(of in liquids()) {
        let found = drink(&of);
        let alcohol_ml: f64 = of.iter().map(|(ml, percent)| ml * percent / 100.0).sum();
        let mass: f64 = of.iter().map(|(ml, percent)| ml * of_spirit(*percent, 20.0)).sum();
        let near = |one: f64, other: f64| (one - other).abs() < 1e-6 * (1.0 + other);
        prop_assert!(near(found.alcohol_ml, alcohol_ml));
        // Ethanol at 20 °C: 789.2391 kg/m³ by the formula, 789.24 in the table.
        prop_assert!(near(found.alcohol_g, alcohol_ml * 0.789_239_1));
        prop_assert!(near(found.ml * found.percent / 100.0, alcohol_ml));
        prop_assert!(near(found.ml * of_spirit(found.percent, 20.0), mass));
        let strengths = || of.iter().map(|(_, percent)| *percent);
        let (weakest, strongest) = (strengths().fold(100.0, f64::min), strengths().fold(0.0, f64::max));
        prop_assert!(weakest - 1e-6 <= found.percent && found.percent <= strongest + 1e-6);
    }

    /// Through the boundary the same: the shown strength is the reckoned one, and its ends enclose it.
    #[test]
    fn prop_a_glass_is_its_parts(ml in 1u32..200, tenths in 0u32..1_000, water in 0u32..300) {
        let strength = format!("{}.{}", tenths / 10, tenths % 10);
        let spec = json!({"water": {"text": if water == 0 { String::new() } else { format!("{water} ml") }}});
        let found = glass(&[(&format!("{ml} ml"), &strength)], &spec)["strength"].clone();
        let percent = f64::from(tenths) / 10.0;
        let (ours, _) = iced(&parts(&[(f64::from(ml), percent)]), Method::None, Some(f64::from(water))).unwrap();
        let text: f64 = value(&found["percent"]).parse().unwrap();
        prop_assert!((text - ours.percent).abs() <= 5.1e-5);
        let end = |end: &str| exact(found[end].as_str().unwrap());
        let about = exact(&value(&found["percent"]));
        prop_assert!(end("low") <= &about + exact("0.005") && about <= end("high") + exact("0.005"));
    }
}
