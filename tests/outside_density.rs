//! Density and weighing against the published values, and against a second formula for each.

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

use farthing::density::{
    COLDEST, SEA_LEVEL, WARMEST, by_mass, mass_part, ml_per_gram, of_air, of_spirit, of_water,
};

/// `found` is `published`, give or take `within`; gives back how far off it is.
#[track_caller]
fn near(found: f64, published: f64, within: f64, what: &str) -> f64 {
    let off = (found - published).abs();
    assert!(off <= within, "{what}: {found} is not {published}, off by {off}");
    off
}

/// The largest of many deviations, to be quoted.
fn worst(what: &str, deviations: impl Iterator<Item = f64>) {
    println!("{what}: at most {:.3e} off", deviations.fold(0.0, f64::max));
}

/// Half of the last digit that is printed, and a float's own error.
fn printed(decimals: i32) -> f64 {
    0.5 * 10f64.powi(-decimals) + 1e-9
}

#[test]
fn r_22_at_20_degrees() {
    assert_eq!(by_mass(0.0, 20.0), 998.2012300, "OIML R 22 (1975), A1: pure water");
    near(by_mass(1.0, 20.0), 789.24, printed(2), "R 22: pure ethanol, as tabled");
    // A published dilution table at 20 °C, transcribed: percent by volume, kg/m³.
    let tabled = [
        (10.0, 984.71),
        (20.0, 973.56),
        (30.0, 962.21),
        (40.0, 948.05),
        (50.0, 930.14),
        (60.0, 909.11),
        (70.0, 885.56),
        (80.0, 859.27),
        (90.0, 829.18),
        (95.0, 811.38),
        (96.0, 807.42),
        (97.0, 803.27),
    ];
    worst(
        "R 22 against the table at 20 °C",
        tabled.iter().map(|(strength, density)| {
            near(of_spirit(*strength, 20.0), *density, printed(2), &format!("{strength} % vol"))
        }),
    );
}

#[test]
fn r_22_strength_by_volume_and_by_mass() {
    // Computed from the coefficients by another hand: % vol, % mass, kg/m³ at 20 °C.
    let computed = [
        (0.0, 0.0, 998.2012),
        (0.5, 0.3956, 997.4437),
        (1.2, 0.9505, 996.4008),
        (5.0, 3.9818, 991.0552),
        (12.0, 9.6410, 982.3548),
        (16.0, 12.9136, 977.8729),
        (20.0, 16.2135, 973.5573),
        (28.0, 22.9088, 964.6392),
        (37.5, 31.0908, 951.9363),
        (40.0, 33.2996, 948.0452),
        (43.0, 35.9865, 943.0565),
        (45.0, 37.8011, 939.5421),
        (46.0, 38.7158, 937.7304),
        (50.0, 42.4257, 930.1419),
        (57.15, 49.2749, 915.3754),
        (65.0, 57.1498, 897.6511),
        (75.5, 68.3755, 871.4758),
        (90.0, 85.6646, 829.1816),
        (96.0, 93.8384, 807.4196),
        (97.0, 95.3054, 803.2724),
        (100.0, 100.0, 789.2391),
    ];
    for (strength, mass, density) in computed {
        let what = format!("{strength} % vol");
        near(100.0 * mass_part(strength), mass, printed(4), &what);
        near(of_spirit(strength, 20.0), density, printed(4), &what);
    }
    // USDA, nutrient 221, grams of ethanol in 100 g, from memory: rounded, and not by R 22.
    for (strength, grams) in [(40.0, 33.4), (43.0, 36.0), (45.0, 37.9), (47.0, 39.7), (50.0, 42.5)]
    {
        near(100.0 * mass_part(strength), grams, 0.11, "USDA");
    }
}

#[test]
fn r_22_at_other_temperatures() {
    // Computed from the coefficients by another hand; strength by volume at 20 °C.
    let celsius = [5.0, 10.0, 15.0, 15.56, 20.0, 25.0, 30.0];
    let computed = [
        (0.0, [999.9604, 999.6954, 999.0957, 999.0095, 998.2012, 997.0429, 995.6454]),
        (12.0, [984.9506, 984.3911, 983.5159, 983.3996, 982.3548, 980.9339, 979.2778]),
        (30.0, [969.3280, 967.1166, 964.7441, 964.4683, 962.2105, 959.5174, 956.6687]),
        (40.0, [957.6153, 954.5172, 951.3286, 950.9656, 948.0452, 944.6652, 941.1901]),
        (50.0, [941.1764, 937.5632, 933.8856, 933.4696, 930.1419, 926.3336, 922.4652]),
        (70.0, [897.7801, 893.7621, 889.6905, 889.2309, 885.5615, 881.3744, 877.1293]),
        (80.0, [871.8676, 867.7187, 863.5196, 863.0461, 859.2696, 854.9696, 850.6207]),
        (100.0, [801.9905, 797.7554, 793.5057, 793.0287, 789.2391, 784.9541, 780.6478]),
    ];
    let cells = computed.iter().flat_map(|(strength, row)| {
        celsius.iter().zip(row).map(move |(celsius, density)| (*strength, *celsius, *density))
    });
    worst(
        "R 22 against the table by temperature",
        cells.map(|(strength, celsius, density)| {
            let what = format!("{strength} % vol at {celsius} °C");
            near(of_spirit(strength, celsius), density, printed(4), &what)
        }),
    );
}

/// Strengths from water to alcohol, a twentieth of a percent apart.
fn strengths() -> impl Iterator<Item = f64> {
    (0..=2000).map(|step| f64::from(step) / 20.0)
}

#[test]
fn strength_to_mass_and_back() {
    let by_volume = |part: f64| 100.0 * part * by_mass(part, 20.0) / by_mass(1.0, 20.0);
    worst(
        "% vol to % mass and back",
        strengths().map(|strength| {
            near(by_volume(mass_part(strength)), strength, 1e-10, &format!("{strength} % vol"))
        }),
    );
    let parts: Vec<f64> = strengths().map(mass_part).collect();
    assert!(parts.windows(2).all(|pair| pair[0] < pair[1]), "a stronger one has more ethanol");
    for celsius in [COLDEST, 0.0, 20.0, WARMEST] {
        let densities: Vec<f64> = strengths()
            .filter(|strength| celsius >= 0.0 || *strength > 40.0)
            .map(|strength| of_spirit(strength, celsius))
            .collect();
        assert!(densities.windows(2).all(|pair| pair[0] > pair[1]), "{celsius} °C");
    }
}

#[test]
fn mixing_shrinks() {
    // Computed by another hand: masses and ethanol add, volumes do not. Each part in ml and % vol;
    // then ml and % vol of the whole.
    let (ethanol, water) = (100.0, 0.0);
    let mixes = [
        (vec![(50.0, ethanol), (50.0, water)], 96.4627, 51.8335),
        (vec![(60.0, 40.0), (30.0, water)], 89.8703, 26.7052),
        (vec![(30.0, 47.0), (30.0, 24.0), (30.0, 16.0), (20.0, water)], 109.8057, 23.7693),
    ];
    for (parts, ml, strength) in mixes {
        let grams = |part: &(f64, f64)| part.0 * of_spirit(part.1, 20.0) / 1000.0;
        let mass: f64 = parts.iter().map(grams).sum();
        let alcohol: f64 = parts.iter().map(|part| grams(part) * mass_part(part.1)).sum();
        let what = format!("{parts:?}");
        let mixed = mass * 1000.0 / by_mass(alcohol / mass, 20.0);
        near(mixed, ml, printed(4), &what);
        near(100.0 * alcohol * 1000.0 / by_mass(1.0, 20.0) / mixed, strength, printed(4), &what);
    }
}

/// Density by Bettin and Spieweg (PTB-Mitteilungen 100 (1990) 457), as three public copies print it,
/// which differ in the last digits of two coefficients: less than 0.0001 kg/m³.
fn by_mass_1990(part: f64, celsius: f64) -> f64 {
    const A: [f64; 12] = [
        913.76673, -221.75948, -59.61786, 146.82019, -566.5175, 621.18006, 3782.4439, -9745.3133,
        -9573.4653, 32677.808, 8763.7383, -39026.437,
    ];
    const B: [f64; 6] =
        [-0.7943755, -1.2168407e-3, 3.5017833e-6, 1.770944e-7, -3.4138828e-9, -9.9880242e-11];
    const C: [&[f64]; 5] = [
        &[
            -0.39158709,
            1.1518337,
            -5.0416999,
            13.381608,
            4.5899913,
            -118.21,
            190.5402,
            339.81954,
            -900.32344,
            -349.32012,
            1285.9318,
        ],
        &[
            -1.2083196e-4,
            -5.7466248e-3,
            0.12030894,
            -0.23519694,
            -1.0362738,
            2.1804505,
            4.2763108,
            -6.8624848,
            -6.9384031,
            7.4460428,
        ],
        &[
            -3.8683211e-5,
            -2.0911429e-4,
            2.6713888e-3,
            4.1042045e-3,
            -0.049364385,
            -0.017952946,
            0.29012506,
            0.023001712,
            -0.54150139,
        ],
        &[-5.6024906e-7, -1.2649169e-6, 3.486395e-6, -1.5168726e-6],
        &[-1.4441741e-8, 1.3470542e-8],
    ];
    let (more, warmer) = (part - 0.5, celsius - 20.0);
    let powers = |x: f64, from: i32, row: &[f64]| -> f64 {
        row.iter().zip(from..).map(|(number, power)| number * x.powi(power)).sum()
    };
    let mixed = C.iter().zip(1..).map(|(row, power)| powers(more, 1, row) * warmer.powi(power));
    powers(more, 0, &A) + powers(warmer, 1, &B) + mixed.sum::<f64>()
}

#[test]
fn r_22_against_the_formula_of_1990() {
    // Computed by another hand.
    for (strength, density) in [(40.0, 948.0419), (70.0, 885.5575), (100.0, 789.2350)] {
        near(by_mass_1990(mass_part(strength), 20.0), density, 1.5e-4, "1990");
    }
    let parts = || (0..=100).map(|percent| f64::from(percent) / 100.0);
    let off = |part: f64, celsius: f64, within: f64| {
        let what = format!("{part} by mass at {celsius} °C");
        near(by_mass(part, celsius), by_mass_1990(part, celsius), within, &what)
    };
    worst("R 22 against 1990 at 20 °C", parts().map(|part| off(part, 20.0, 0.006)));
    for celsius in [0.0, 10.0, 30.0, 40.0] {
        let what = format!("R 22 against 1990 at {celsius} °C");
        worst(&what, parts().map(|part| off(part, celsius, 0.02)));
    }
}

#[test]
fn water() {
    // Tanaka and others, Metrologia 38 (2001) 301, from memory: the greatest density, and a row of
    // its table.
    assert_eq!(of_water(3.983_035), 999.974_950);
    for (celsius, density) in
        [(0.0, 999.8428), (4.0, 999.9749), (10.0, 999.7027), (20.0, 998.2067), (40.0, 992.2152)]
    {
        near(of_water(celsius), density, printed(4), &format!("water at {celsius} °C"));
    }
    // Jones and Harris, J. Res. NIST 97 (1992) 335, for 5 to 40 °C, as several public copies print
    // it; a2 and a4 also in ISO/TR 20461, corrigendum 1. It rests on an older greatest density, 4 g
    // in a cubic metre lower.
    let older = |t: f64| {
        let a = [999.853_08, 6.326_93e-2, -8.523_829e-3, 6.943_248e-5, -3.821_216e-7];
        a.iter().rev().fold(0.0, |sum, a| sum * t + a)
    };
    let celsius = || (5..=40).map(f64::from);
    worst("water against 1992", celsius().map(|t| near(of_water(t), older(t), 5e-3, "water")));
    // R 22 is older still: 5 g lighter at 20 °C.
    worst(
        "water against R 22",
        celsius().map(|t| near(of_water(t), by_mass(0.0, t), 0.01, &format!("water at {t} °C"))),
    );
}

/// Density of air by CIPM-2007 at half humidity (Metrologia 45 (2008) 149), from memory; 400 ppm CO₂.
fn air_2007(celsius: f64, hectopascal: f64) -> f64 {
    let (t, kelvin, p) = (celsius, celsius + 273.15, hectopascal * 100.0);
    let vapour =
        1.2378847e-5 * kelvin * kelvin - 1.9121316e-2 * kelvin + 33.93711047 - 6.3431645e3 / kelvin;
    let enhancement = 1.00062 + 3.14e-8 * p + 5.6e-7 * t * t;
    let moist = 0.5 * enhancement * vapour.exp() / p;
    let first = 1.58123e-6 - 2.9331e-8 * t + 1.1043e-10 * t * t;
    let second = (5.707e-6 - 2.051e-8 * t) * moist + (1.9898e-4 - 2.376e-6 * t) * moist * moist;
    let third = (p / kelvin) * (p / kelvin) * (1.83e-11 - 0.765e-8 * moist * moist);
    let compressed = 1.0 - p / kelvin * (first + second) + third;
    3.483740e-3 * p / (compressed * kelvin) * (1.0 - 0.3780 * moist)
}

#[test]
fn air() {
    near(of_air(20.0, SEA_LEVEL), 1.2, 0.001, "OIML R 33, from memory: conventional air");
    near(of_air(20.0, 1013.25), 1.1992, 5e-4, "CIPM-2007 at half humidity, from memory");
    let places =
        (15..=30).flat_map(|t| (80..=107).map(move |p| (f64::from(t), f64::from(p) * 10.0)));
    worst(
        "air against CIPM-2007",
        places.map(|(t, p)| {
            near(of_air(t, p), air_2007(t, p), 1e-3, &format!("air at {t} °C and {p} hPa"))
        }),
    );
}

#[test]
fn iso_8655_z_factors() {
    // ISO 8655-6, µl/mg (which is ml/g) by temperature and pressure in hPa, as a pipette manual
    // prints it.
    let hectopascal = [800.0, 853.0, 907.0, 960.0, 1013.0, 1067.0];
    let tabled = [
        (15.0, [1.0018, 1.0018, 1.0019, 1.0019, 1.0020, 1.0020]),
        (17.0, [1.0021, 1.0021, 1.0022, 1.0022, 1.0023, 1.0023]),
        (19.0, [1.0024, 1.0025, 1.0025, 1.0026, 1.0027, 1.0027]),
        (20.0, [1.0026, 1.0027, 1.0027, 1.0028, 1.0029, 1.0029]),
        (22.0, [1.0031, 1.0031, 1.0032, 1.0032, 1.0033, 1.0033]),
        (24.0, [1.0035, 1.0036, 1.0036, 1.0037, 1.0038, 1.0038]),
        (25.0, [1.0038, 1.0038, 1.0039, 1.0039, 1.0040, 1.0041]),
        (28.0, [1.0046, 1.0046, 1.0047, 1.0048, 1.0048, 1.0049]),
        (30.0, [1.0052, 1.0052, 1.0053, 1.0053, 1.0054, 1.0055]),
    ];
    // A few cells of the table stand one in the last digit off the formula of the same standard, by
    // which the largest difference from what is printed is 0.000056.
    let within = 0.000_06;
    let cells = tabled.iter().flat_map(|(celsius, row)| {
        hectopascal.iter().zip(row).map(move |(pressure, z)| (*celsius, *pressure, *z))
    });
    let z = |celsius: f64, pressure: f64| ml_per_gram(of_water(celsius), celsius, pressure);
    worst(
        "Z against ISO 8655-6",
        cells.clone().map(|(celsius, pressure, published)| {
            let what = format!("Z at {celsius} °C and {pressure} hPa");
            near(z(celsius, pressure), published, within, &what)
        }),
    );
    let as_printed = |z: f64| format!("{z:.4}");
    let alike = cells.filter(|(celsius, pressure, published)| {
        as_printed(z(*celsius, *pressure)) == as_printed(*published)
    });
    let alike = alike.count();
    println!("Z to the last digit: {alike} of 54 cells");
    assert!(alike >= 50, "{alike} of 54: at most four cells differ");
}
