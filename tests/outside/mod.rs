//! What the outside checks share: exact big fractions as referee, a die with a fixed seed, and the
//! shortest ways to ask.

// Every test file takes what it needs; none takes all.
#![allow(dead_code)]

pub mod replay;

use num_bigint::BigInt;
use num_rational::BigRational;
use proptest::test_runner::{Config, RngSeed};
use serde_json::{Value, json};

/// Decimals that a figure keeps.
pub const KEPT: u32 = 12;

/// The reply to a request.
pub fn answer(ask: &Value) -> Value {
    serde_json::from_str(&farthing::wire::answer(&ask.to_string())).expect("the reply is JSON")
}

/// A function of the boundary, such as `farthing::wire::facts`.
pub type Function = fn(&str) -> String;

/// The reply of any of them.
pub fn reply(of: Function, ask: &Value) -> Value {
    serde_json::from_str(&of(&ask.to_string())).expect("the reply is JSON")
}

/// The same, beside which no problem may stand.
#[track_caller]
pub fn sound_reply(of: Function, ask: &Value) -> Value {
    let reply = reply(of, ask);
    assert_eq!(reply["problems"], json!([]), "{ask}");
    reply
}

/// A figure, rounded to as many decimals as are published.
#[track_caller]
pub fn check_published(figure: &Value, published: &str, source: &str) {
    assert_eq!(rounded_like(figure, published), published, "{source}");
}

/// The same, for a published answer that is wrong.
#[track_caller]
pub fn check_misprint(figure: &Value, misprint: &str, source: &str) {
    assert_ne!(rounded_like(figure, misprint), misprint, "{source}");
}

#[track_caller]
fn rounded_like(figure: &Value, published: &str) -> String {
    let decimals = published.split_once('.').map_or(0, |(_, part)| part.len() as u32);
    half_away(&exact(&value(figure)), decimals)
}

/// A bottle under the id `b`, as typed.
pub fn bottle(price: &str, holds: &str) -> Value {
    json!({"id": "b", "paid": {"price": price}, "holds": {"text": holds}})
}

/// The reply to one measure of one bottle, beside which no problem may stand.
#[track_caller]
pub fn pour(bottle: Value, measure: &str) -> Value {
    let reply = answer(&json!({
        "bottles": [bottle],
        "pours": [{"bottle": "b", "measure": {"text": measure}}],
    }));
    assert_eq!(reply["problems"], json!([]), "{measure} of {bottle}");
    reply["pours"][0].clone()
}

/// The value of a figure.
#[track_caller]
pub fn value(figure: &Value) -> String {
    figure["value"].as_str().unwrap_or_else(|| panic!("no figure: {figure}")).to_string()
}

/// A decimal, or a fraction such as `1/3` or `13 1/3`, exactly.
#[track_caller]
pub fn exact(text: &str) -> BigRational {
    if let Some((whole, part)) = text.split_once(' ') {
        return exact(whole) + exact(part);
    }
    let whole = |digits: &str| -> BigInt { digits.parse().unwrap_or_else(|_| panic!("{text}")) };
    if let Some((top, bottom)) = text.split_once('/') {
        return BigRational::new(whole(top), whole(bottom));
    }
    let (before, after) = text.split_once('.').unwrap_or((text, ""));
    BigRational::new(whole(&format!("{before}{after}")), power_of_ten(after.len() as u32))
}

/// Rounded to so many decimals, half away from nought, with all of them written out.
pub fn half_away(number: &BigRational, decimals: u32) -> String {
    let (nought, one, two) = (BigInt::from(0), BigInt::from(1), BigInt::from(2));
    let scaled = number * BigRational::from(power_of_ten(decimals));
    let (top, bottom) = (scaled.numer(), scaled.denom());
    let size = if *top < nought { -top } else { top.clone() };
    let mut digits = &size / bottom;
    if (&size % bottom) * &two >= *bottom {
        digits += &one;
    }
    let sign = if *top < nought && digits != nought { "-" } else { "" };
    let places = decimals as usize;
    let padded = format!("{:0>1$}", digits.to_string(), places + 1);
    let (whole, part) = padded.split_at(padded.len() - places);
    if places == 0 { format!("{sign}{whole}") } else { format!("{sign}{whole}.{part}") }
}

/// As a figure crosses the boundary: at most twelve decimals, no trailing noughts.
pub fn kept_text(number: &BigRational) -> String {
    let text = half_away(number, KEPT);
    text.trim_end_matches('0').trim_end_matches('.').to_string()
}

fn power_of_ten(power: u32) -> BigInt {
    BigInt::from(10).pow(power)
}

/// Random cases: their seed is fixed unless `PROPTEST_RNG_SEED` says otherwise, and there are 64 of
/// them unless `PROPTEST_CASES` says four times another number.
pub fn config() -> Config {
    let usual = Config::default();
    let cases = usual.cases / 4;
    let config = Config { cases, failure_persistence: None, ..usual };
    match config.rng_seed {
        RngSeed::Random => Config { rng_seed: RngSeed::Fixed(20_261_125), ..config },
        RngSeed::Fixed(_) => config,
    }
}

/// A die that always falls the same way: SplitMix64 (Steele, Lea and Flood 2014, from memory; any
/// generator would do).
pub struct Die(pub u64);

impl Die {
    fn roll(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut mixed = self.0;
        mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        mixed ^ (mixed >> 31)
    }

    /// A number from nought up to and without `below`.
    pub fn below(&mut self, below: u64) -> u64 {
        self.roll() % below
    }

    /// One of a list.
    pub fn one_of<'a, T>(&mut self, list: &'a [T]) -> &'a T {
        &list[self.below(list.len() as u64) as usize]
    }

    /// A typed number of up to so many whole digits and decimals, more than nought.
    pub fn decimal(&mut self, whole_digits: u32, decimals: u32) -> String {
        let decimals = self.below(u64::from(decimals) + 1) as u32;
        let digits = self.below(u64::from(whole_digits) + 1) as u32 + decimals;
        let number = self.below(10u64.pow(digits)).max(1);
        half_away(&BigRational::new(number.into(), power_of_ten(decimals)), decimals)
    }
}
