//! Means, deviations, Student's factors, effective degrees of freedom and outliers, against reference
//! data and published examples.

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

use farthing::doubt::{Bears, Doubt, Input, Source, Term};
use farthing::number::Fraction;
use farthing::spread::Spread;
use farthing::statistics::{Repeats, coverage_factor, effective_freedom, student};

/// Digits to which a number agrees with a certified one, as NIST counts them: 15 are all of a float.
fn digits(found: f64, certified: f64) -> f64 {
    let off = ((found - certified) / certified).abs();
    if off == 0.0 { 15.0 } else { (-off.log10()).min(15.0) }
}

/// `middle`, and then five hundred times a tenth less and a tenth more, read from text as NIST prints
/// them.
fn around(less: &str, middle: &str, more: &str) -> Vec<f64> {
    let read = |text: &str| text.parse::<f64>().unwrap();
    let pairs = (0..500).flat_map(|_| [read(less), read(more)]);
    core::iter::once(read(middle)).chain(pairs).collect()
}

#[test]
fn nist_reference_data() {
    // NIST StRD, univariate summary statistics, from memory: readings, certified mean and deviation,
    // and to how many digits they must be found. Ten million and a tenth leave a float 8.3 digits of
    // a tenth.
    let sets = [
        ("NumAcc1", vec![10_000_001.0, 10_000_003.0, 10_000_002.0], 10_000_002.0, 1.0, 15.0, 15.0),
        ("NumAcc2", around("1.1", "1.2", "1.3"), 1.2, 0.1, 15.0, 14.0),
        ("NumAcc3", around("1000000.1", "1000000.2", "1000000.3"), 1_000_000.2, 0.1, 15.0, 9.4),
        ("NumAcc4", around("10000000.1", "10000000.2", "10000000.3"), 10_000_000.2, 0.1, 15.0, 8.2),
    ];
    for (name, readings, mean, deviation, of_mean, of_deviation) in sets {
        let repeats = Repeats::of(&readings).unwrap();
        let found = (digits(repeats.mean, mean), digits(repeats.deviation, deviation));
        println!("{name}: mean to {:.2} digits, deviation to {:.2}", found.0, found.1);
        assert!(found.0 >= of_mean && found.1 >= of_deviation, "{name}: {found:?}");
        assert_eq!(repeats.count, readings.len(), "{name}");
    }
}

#[test]
fn too_few_readings() {
    assert_eq!(Repeats::of(&[]), None);
    let single = Repeats::of(&[0.9]).unwrap();
    assert_eq!((single.mean, single.deviation, single.freedom()), (0.9, 0.0, 0));
    let alike = Repeats::of(&[0.1; 7]).unwrap();
    assert_eq!((alike.mean, alike.deviation, alike.freedom()), (0.1, 0.0, 6));
}

/// A row of NIST TN 1297, table B.1, at so many decimals.
#[track_caller]
fn check_factors(row: &[(u32, f64)], factor: impl Fn(u32) -> f64) {
    for (freedom, published) in row {
        let found = factor(*freedom);
        assert!((found - published).abs() <= 0.005, "{freedom} degrees of freedom: {found}");
    }
}

#[test]
fn student_s_factors() {
    // NIST TN 1297, table B.1, printed to two decimals.
    check_factors(
        &[
            (1, 13.97),
            (2, 4.53),
            (3, 3.31),
            (4, 2.87),
            (5, 2.65),
            (9, 2.32),
            (10, 2.28),
            (19, 2.14),
            (u32::MAX, 2.0),
        ],
        coverage_factor,
    );
    check_factors(
        &[
            (1, 12.71),
            (2, 4.30),
            (3, 3.18),
            (4, 2.78),
            (5, 2.57),
            (9, 2.26),
            (10, 2.23),
            (19, 2.09),
            (10_000, 1.960),
        ],
        |freedom| student(0.95, freedom),
    );
    check_factors(&[(1, 1.84), (2, 1.32), (4, 1.14), (9, 1.06)], |freedom| {
        student(0.6827, freedom)
    });
    check_factors(&[(9, 3.25), (16, 2.92)], |freedom| student(0.99, freedom));
}

#[test]
fn the_factor_falls_to_two() {
    let factors: Vec<f64> = (1..600).map(coverage_factor).collect();
    assert!(factors.windows(2).all(|pair| pair[0] >= pair[1]), "more repeats, a smaller factor");
    assert!(factors.windows(2).skip(19).all(|pair| pair[0] - pair[1] < 0.01), "and no jump");
    assert_eq!(factors.last(), Some(&2.0));
}

#[test]
fn effective_freedom_of_published_examples() {
    // EURACHEM/CITAC QUAM, example A1, from the published file: a flask of 100 ml ± 0.1 ml
    // (triangular), ± 4 °C (rectangular) × 0.00021, and 0.02 ml that ten fillings scatter.
    let parts = [(0.1 / 6f64.sqrt(), None), (0.084 / 3f64.sqrt(), None), (0.02, Some(9))];
    assert_eq!(effective_freedom(0.066_473_052_184_074_3, parts.into_iter()), Some(1098));
    // JCGM 100:2008, H.1, from memory: an end gauge, in nm. The standard; the difference measured (its
    // scatter, the comparator's random and systematic error); expansion; temperature difference.
    let parts = [
        (25.0, Some(18)),
        (5.8, Some(24)),
        (3.9, Some(5)),
        (6.7, Some(8)),
        (2.9, Some(50)),
        (16.6, Some(2)),
    ];
    let standard = parts.iter().map(|(moves, _)| moves * moves).sum::<f64>().sqrt();
    assert_eq!(standard.round(), 32.0);
    assert_eq!(effective_freedom(standard, parts.into_iter()), Some(16));
    assert_eq!((student(0.99, 16) * 32.0).round(), 93.0);
    assert_eq!(effective_freedom(1.0, [(1.0, None)].into_iter()), None, "nothing limits it");
    for freedom in 1..=49 {
        // Cut to a whole number, and one that is whole already is not cut.
        assert_eq!(effective_freedom(0.3, [(0.3, Some(freedom))].into_iter()), Some(freedom));
    }
}

#[test]
fn eurachem_a1_through_a_doubt() {
    let number = |text: i128, decimals| Fraction::decimal(text, decimals).unwrap();
    let input = |is, best, spread| Input {
        source: Source { is, line: None, bottle: None, of: "", unit: "ml" },
        best,
        spread,
        helps: None,
    };
    let hundred = Fraction::HUNDRED;
    let inputs = [
        input("flask", hundred, Spread::Middling(number(999, 1), number(1001, 1))),
        input("warmth", Fraction::ONE, Spread::Even(number(99_916, 5), number(100_084, 5))),
        input("repeats", hundred, Spread::Measured(number(2, 2), 9)),
    ];
    let follows = (0..3).map(|place| (place, Bears::Times)).collect();
    let filled = Term { at_best: hundred, follows, whole: None };
    let doubt = Doubt::of(&inputs, &[filled], hundred.kept().unwrap()).unwrap();
    let off = (doubt.standard - 0.066_473_052_184_074_3).abs();
    println!("EURACHEM A1: {off:.1e} ml off");
    assert!(off < 1e-13, "the file prints 0.0664730521840743, found {}", doubt.standard);
    assert_eq!((doubt.freedom, doubt.cut), (Some(1098), false));
    // 2, or a little more where each part has a factor of its own.
    assert!((2.0..2.05).contains(&doubt.factor), "{}", doubt.factor);
    let order: Vec<&str> = doubt.parts.iter().map(|part| part.input.source.is).collect();
    assert_eq!(order, ["warmth", "flask", "repeats"]);
    for (part, published) in doubt.parts.iter().zip([0.048497, 0.040825, 0.02]) {
        assert!((part.moves - published).abs() < 5e-7, "{part:?}");
    }
}

/// How many deviations the furthest reading stands out.
fn furthest(readings: &[f64]) -> f64 {
    let repeats = Repeats::of(readings).unwrap();
    let off = readings.iter().map(|reading| (reading - repeats.mean).abs()).fold(0.0, f64::max);
    off / repeats.deviation
}

#[test]
fn grubbs_of_the_nist_handbook() {
    // NIST/SEMATECH e-Handbook 1.3.5.17.1, from memory: eight readings of a mass spectrometer.
    let readings = [199.31, 199.53, 200.19, 200.82, 201.92, 201.95, 202.18, 245.57];
    assert!((furthest(&readings) - 2.4688).abs() < 5e-5, "{}", furthest(&readings));
    assert_eq!(Repeats::of(&readings).unwrap().outlier(&readings), Some(7));
    assert_eq!(Repeats::of(&readings[..7]).unwrap().outlier(&readings[..7]), None);
    // Its critical value is of a one-sided test at 5 %.
    let t = student(1.0 - 2.0 * 0.05 / 8.0, 6);
    let critical = 7.0 / 8f64.sqrt() * (t * t / (6.0 + t * t)).sqrt();
    assert!((critical - 2.032).abs() < 5e-4, "{critical}");
}

#[test]
fn grubbs_critical_values() {
    // Two-sided at 5 %, as ISO 5725-2 and others table them, from memory.
    let tabled = [
        (3, 1.155),
        (4, 1.481),
        (5, 1.715),
        (6, 1.887),
        (7, 2.020),
        (8, 2.126),
        (9, 2.215),
        (10, 2.290),
        (15, 2.549),
        (20, 2.709),
        (25, 2.822),
        (30, 2.908),
    ];
    for (count, critical) in tabled {
        let readings = |last: f64| {
            let others = (1..count).map(|reading| f64::from(reading % 7));
            others.chain([last]).collect::<Vec<f64>>()
        };
        // From where on the last one stands out, by halving.
        let (mut in_line, mut out) = (3.0, 1e4);
        for _ in 0..60 {
            let middle = (in_line + out) / 2.0;
            let readings = readings(middle);
            match Repeats::of(&readings).unwrap().outlier(&readings) {
                Some(place) => {
                    assert_eq!(place + 1, readings.len());
                    out = middle;
                }
                None => in_line = middle,
            }
        }
        let found = furthest(&readings(out));
        assert!((found - critical).abs() <= 1e-3, "{count} readings: {found}, tabled {critical}");
    }
}
