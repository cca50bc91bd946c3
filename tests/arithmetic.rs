//! The exact numbers of the core against two referees: fractions of big integers, which never run out
//! of digits, and `rust_decimal`, an independent decimal arithmetic. Random cases with a fixed seed.

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

use farthing::number::{Fraction, Kept, decimal_text};
use farthing::problem::{Code, Fault};
use farthing::reading::{Marks, number};
use num_bigint::BigInt;
use num_rational::BigRational;
use outside::{Die, exact, half_away, kept_text};
use rust_decimal::{Decimal, RoundingStrategy};
use std::cmp::Ordering;

const CASES: usize = 20_000;

fn big(number: &Fraction) -> BigRational {
    let (top, bottom) = number.parts();
    BigRational::new(BigInt::from(top), BigInt::from(bottom))
}

/// A whole number of up to 39 digits, often one of the edges.
fn digits(die: &mut Die) -> i128 {
    let edges = [0, 1, 2, 3, 9, 10, 10i128.pow(12), 10i128.pow(26), i128::MAX, i128::MAX - 1];
    let size = match die.below(8) {
        0 => *die.one_of(&edges),
        _ => {
            let long = i128::from(die.below(u64::MAX)) * i128::from(die.below(1 << 62));
            long >> die.below(126)
        }
    };
    if die.below(3) == 0 { -size } else { size }
}

fn fraction(die: &mut Die) -> Fraction {
    let (top, bottom) = (digits(die), digits(die).abs().max(1));
    Fraction::new(top, bottom).expect("more than nought below the line")
}

/// A fraction as people type them: what a bar meets.
fn typed(die: &mut Die) -> Fraction {
    let text = match die.below(3) {
        0 => format!("{}/{}", die.below(1_000), 1 + die.below(1_000)),
        1 => format!("{} {}/{}", die.below(100), die.below(8), 1 + die.below(8)),
        _ => die.decimal(9, 6),
    };
    number(&text, Marks::POINT).unwrap_or_else(|_| panic!("{text}")).expect("not empty")
}

/// What both say, or a refusal where the digits do not fit.
#[track_caller]
fn agree(ours: Result<Fraction, Fault>, theirs: BigRational, sum: &str) -> bool {
    match ours {
        Ok(ours) => {
            assert_eq!(big(&ours), theirs, "{sum}");
            true
        }
        Err(fault) => {
            assert_eq!(fault.code(), Code::FiguresTooLong, "{sum}");
            false
        }
    }
}

/// All four sums of two numbers, and their order. How many of the four were not refused.
#[track_caller]
fn sums(a: Fraction, b: Fraction) -> usize {
    let name = format!("{a:?} and {b:?}");
    let mut done = 0;
    done += usize::from(agree(a.plus(b), big(&a) + big(&b), &name));
    done += usize::from(agree(a.less(b), big(&a) - big(&b), &name));
    done += usize::from(agree(a.times(b), big(&a) * big(&b), &name));
    if b.is_nought() {
        assert_eq!(a.over(b).unwrap_err().code(), Code::NumberMustBePositive, "{name}");
    } else {
        done += usize::from(agree(a.over(b), big(&a) / big(&b), &name));
    }
    assert_eq!(a.compare(b), big(&a).cmp(&big(&b)), "{name}");
    assert_eq!(a == b, a.compare(b) == Ordering::Equal, "{name}");
    done
}

#[test]
fn sums_of_any_fractions_are_exact_or_refused() {
    let mut die = Die(1);
    let done: usize = (0..CASES).map(|_| sums(fraction(&mut die), fraction(&mut die))).sum();
    // Both halves of "exact or refused" have been tried.
    assert!((CASES..CASES * 3).contains(&done), "{done} sums of {} were done", CASES * 4);
}

/// Nothing that can be typed is refused: two typed numbers always have their four sums.
#[test]
fn sums_of_typed_numbers_are_never_refused() {
    let mut die = Die(2);
    for _ in 0..CASES {
        let (a, b) = (typed(&mut die), typed(&mut die));
        assert_eq!(sums(a, b), if b.is_nought() { 3 } else { 4 }, "{a:?} {b:?}");
    }
}

/// One number: what it is kept as, rounded down and up, and its texts.
#[track_caller]
fn check_kept(number: Fraction) -> bool {
    let exactly = big(&number);
    let whole = |number: Fraction| BigRational::from(BigInt::from(number.parts().0));
    assert_eq!(whole(number.rounded_down()), exactly.floor(), "{number:?}");
    assert_eq!(whole(number.rounded_up()), exactly.ceil(), "{number:?}");
    assert!(number.rounded_down().is_whole());
    let Ok(kept) = number.kept() else { return false };
    assert_eq!(kept.plain_text(), kept_text(&exactly), "{number:?}");
    assert_eq!(big(&kept.fraction()), exact(&kept.plain_text()), "the text is the number");
    assert_eq!(kept.fraction().kept(), Ok(kept), "keeping a kept number changes nothing");
    true
}

/// Every number of decimals of a kept number.
#[track_caller]
fn check_texts(kept: Kept) {
    let exactly = big(&kept.fraction());
    for decimals in 0..=12 {
        let text = kept.text(decimals);
        assert_eq!(text, half_away(&exactly, decimals), "{kept:?} to {decimals}");
        assert_eq!(text, decimal_text(kept.rounded(decimals), decimals));
        assert!(
            !text.starts_with("-0") || text.chars().any(|c| ('1'..='9').contains(&c)),
            "{text}"
        );
    }
    let bare = kept.text(kept.decimals());
    assert_eq!(exact(&bare), exactly, "the decimals it has are all of it");
    assert!(kept.decimals() == 0 || !bare.ends_with('0'), "and no more: {bare}");
}

#[test]
fn any_fraction_is_kept_half_away_from_nought_or_refused() {
    let mut die = Die(3);
    let kept = (0..CASES).filter(|_| check_kept(fraction(&mut die))).count();
    assert!((CASES / 4..CASES).contains(&kept), "{kept} of {CASES} were kept");
}

#[test]
fn a_kept_number_is_written_at_any_decimals() {
    let mut die = Die(7);
    let kept = (0..3_000).filter_map(|_| fraction(&mut die).kept().ok().map(check_texts)).count();
    assert!(kept > 1_000, "only {kept}");
}

/// Halves of the last kept decimal, on both sides of nought: the one case where rules differ.
#[test]
fn exact_halves_are_kept_away_from_nought() {
    let mut die = Die(4);
    for _ in 0..CASES / 4 {
        let odd = i128::from(die.below(1 << 40)) * 2 + 1;
        for top in [odd, -odd] {
            assert!(check_kept(Fraction::decimal(top * 5, 13).expect("thirteen decimals")));
        }
    }
    let kept = |top| Fraction::decimal(top, 13).unwrap().kept().unwrap().plain_text();
    assert_eq!(kept(5), "0.000000000001");
    assert_eq!(kept(-5), "-0.000000000001");
    assert_eq!(kept(25), "0.000000000003");
    assert_eq!(kept(4), "0");
    assert_eq!(kept(-4), "0");
}

/// Where the number above the line is too long to be multiplied at once, it is divided digit by digit.
#[test]
fn long_fractions_are_kept_too() {
    let check = |top: i128, bottom: i128, kept: &str| {
        let ours = Fraction::new(top, bottom).unwrap().kept();
        let ours = ours.map_or_else(|fault| fault.code().text().into(), Kept::plain_text);
        assert_eq!(ours, kept, "{top}/{bottom}");
    };
    let long = 10i128.pow(36);
    check(i128::MAX, long, "170.141183460469");
    check(i128::MIN + 1, long, "-170.141183460469");
    check(2 * long, 3 * long - 1, "0.666666666667");
    check(long + 1, long, "1");
    check(15 * long / 10 + 1, long, "1.5");
    check(2 * long + 1, 4, "figures_too_long");
    check(i128::MAX - 1, i128::MAX, "figures_too_long");
}

/// `rust_decimal` holds 28 digits: products and sums of typed decimals are exact there too.
#[test]
fn sums_of_decimals_are_those_of_rust_decimal() {
    let mut die = Die(5);
    for _ in 0..CASES / 4 {
        let (a, b) = (die.decimal(7, 6), die.decimal(7, 6));
        let ours = |text: &str| number(text, Marks::POINT).unwrap().unwrap();
        let theirs = |text: &str| text.parse::<Decimal>().unwrap();
        let check = |ours: Result<Fraction, Fault>, theirs: Decimal| {
            let theirs = theirs.normalize().to_string();
            assert_eq!(ours.unwrap().kept().unwrap().plain_text(), theirs, "{a} {b}");
        };
        check(ours(&a).plus(ours(&b)), theirs(&a) + theirs(&b));
        check(ours(&a).less(ours(&b)), theirs(&a) - theirs(&b));
        check(ours(&a).times(ours(&b)), theirs(&a) * theirs(&b));
        let kept = ours(&a).times(ours(&b)).unwrap().kept().unwrap();
        for decimals in 0..=6 {
            let rule = RoundingStrategy::MidpointAwayFromZero;
            let rounded = (theirs(&a) * theirs(&b)).round_dp_with_strategy(decimals, rule);
            assert_eq!(exact(&kept.text(decimals)), exact(&rounded.to_string()), "{a} {b}");
        }
    }
}

/// What is typed with a point comes back as the same number, and so does its text.
#[test]
fn texts_round_trip() {
    let mut die = Die(6);
    for _ in 0..CASES {
        let text = die.decimal(9, 6);
        let read = number(&text, Marks::POINT).unwrap().unwrap();
        assert_eq!(big(&read), exact(&text));
        let plain = read.kept().unwrap().plain_text();
        assert_eq!(number(&plain, Marks::POINT).unwrap(), Some(read), "{text}");
        let comma = plain.replace('.', ",");
        assert_eq!(number(&comma, Marks::COMMA).unwrap(), Some(read), "{text}");
    }
}

#[test]
fn nothing_stands_over_nought() {
    assert_eq!(Fraction::new(1, 0), None);
    assert_eq!(Fraction::new(1, -1), None);
    assert_eq!(Fraction::decimal(1, 39), None);
    let over = Fraction::ONE.over(Fraction::NOUGHT).unwrap_err();
    assert_eq!(over.code(), Code::NumberMustBePositive);
    assert_eq!(big(&Fraction::HUNDRED), exact("100"));
    assert!(Fraction::NOUGHT.is_nought() && !Fraction::ONE.is_nought());
}
