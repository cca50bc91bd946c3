//! How much a millilitre weighs: water and spirit by strength and temperature, and water in air.
//!
//! Mixtures of water and ethanol: OIML R 22 (1975), formula of p. 12, −20 to 40 °C. Strength is by
//! volume at 20 °C, as on a label. Weighing in air: ISO 8655-6, `Z = (1 − ρa/8000) / (ρ − ρa)`, with the
//! air of ISO/TR 20461 and Tanaka's water (2001).
//!
//! Refuses nothing, but holds only for water and ethanol: sugar and solids make a liquid heavier
//! (coffee liqueur weighs 1.18 g/ml), and then a known volume must be weighed instead.

#![allow(clippy::excessive_precision, reason = "the coefficients stand as they are published")]

use libm::exp;

/// Where the formula holds, in degrees Celsius.
pub const COLDEST: f64 = -20.0;
/// Where the formula holds, in degrees Celsius.
pub const WARMEST: f64 = 40.0;

/// The temperature of a label's strength, in degrees Celsius.
pub const REFERENCE: f64 = 20.0;

const A: [f64; 12] = [
    9.982012300E2,
    -1.929769495E2,
    3.891238958E2,
    -1.668103923E3,
    1.352215441E4,
    -8.829278388E4,
    3.062874042E5,
    -6.138381234E5,
    7.470172998E5,
    -5.478461354E5,
    2.234460334E5,
    -3.903285426E4,
];

const B: [f64; 6] =
    [-2.0618513E-1, -5.2682542E-3, 3.6130013E-5, -3.8957702E-7, 7.1693540E-9, -9.9739231E-11];

const C: [&[f64]; 5] = [
    &[
        1.693443461530087E-1,
        -1.046914743455169E1,
        7.196353469546523E1,
        -7.047478054272792E2,
        3.924090430035045E3,
        -1.210164659068747E4,
        2.248646550400788E4,
        -2.605562982188164E4,
        1.852373922069467E4,
        -7.420201433430137E3,
        1.285617841998974E3,
    ],
    &[
        -1.193013005057010E-2,
        2.517399633803461E-1,
        -2.170575700536993,
        1.353034988843029E1,
        -5.029988758547014E1,
        1.096355666577570E2,
        -1.422753946421155E2,
        1.080435942856230E2,
        -4.414153236817392E1,
        7.442971530188783,
    ],
    &[
        -6.802995733503803E-4,
        1.876837790289664E-2,
        -2.002561813734156E-1,
        1.022992966719220,
        -2.895696483903638,
        4.810060584300675,
        -4.672147440794683,
        2.458043105903461,
        -5.411227621436812E-1,
    ],
    &[4.075376675622027E-6, -8.763058573471110E-6, 6.515031360099368E-6, -1.515784836987210E-6],
    &[-2.788074354782409E-8, 1.345612883493354E-8],
];

/// `c0·x + c1·x² + …`
fn series(coefficients: &[f64], x: f64) -> f64 {
    coefficients.iter().rev().fold(0.0, |sum, c| (sum + c) * x)
}

/// Density in kg/m³ of water and ethanol, `part` of it ethanol by mass.
///
/// ```
/// assert_eq!(farthing::density::by_mass(0.0, 20.0), 998.2012300);
/// ```
pub fn by_mass(part: f64, celsius: f64) -> f64 {
    let warmer = celsius - REFERENCE;
    let (first, rest) = A.split_first().map_or((0.0, A.as_slice()), |(first, rest)| (*first, rest));
    if warmer == 0.0 {
        return first + series(rest, part);
    }
    let mut power = 1.0;
    let mut mixed = 0.0;
    for row in C {
        power *= warmer;
        mixed += power * series(row, part);
    }
    first + series(rest, part) + series(&B, warmer) + mixed
}

/// The part of ethanol by mass in a liquid of so many percent by volume at 20 °C, by halving.
pub fn mass_part(strength_percent: f64) -> f64 {
    let wanted = strength_percent / 100.0 * by_mass(1.0, REFERENCE);
    let (mut low, mut high) = (0.0, 1.0);
    for _ in 0..60 {
        let middle = (low + high) / 2.0;
        // Strength by volume grows with the part by mass all the way.
        if middle * by_mass(middle, REFERENCE) < wanted {
            low = middle;
        } else {
            high = middle;
        }
    }
    (low + high) / 2.0
}

/// Density in kg/m³ of a spirit of so many percent by volume.
pub fn of_spirit(strength_percent: f64, celsius: f64) -> f64 {
    by_mass(mass_part(strength_percent), celsius)
}

/// Density of pure water in kg/m³ (Tanaka and others, Metrologia 38 (2001) 301; 0 to 40 °C).
pub fn of_water(celsius: f64) -> f64 {
    let off = celsius - 3.983_035;
    999.974_950 * (1.0 - off * off * (celsius + 301.797) / (522_528.9 * (celsius + 69.348_81)))
}

/// Density of air in kg/m³ at half humidity (ISO/TR 20461).
pub fn of_air(celsius: f64, hectopascal: f64) -> f64 {
    (0.348_48 * hectopascal - 0.009 * 50.0 * exp(0.061 * celsius)) / (273.15 + celsius)
}

/// Density of the weights that a scale is set with, in kg/m³.
const WEIGHTS: f64 = 8000.0;

/// The air at sea level, in hPa: the scale of a bar does not ask.
pub const SEA_LEVEL: f64 = 1013.25;

/// Millilitres of a liquid of so many kg/m³ that a gram on the scale stands for.
pub fn ml_per_gram(density: f64, celsius: f64, hectopascal: f64) -> f64 {
    let air = of_air(celsius, hectopascal);
    1000.0 * (1.0 - air / WEIGHTS) / (density - air)
}
