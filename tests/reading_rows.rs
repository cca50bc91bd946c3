//! What people type, row by row, and what is read of it: where a locale writes a point before
//! decimals, and where it writes a comma. A fault is written `code name=value ...`.

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

use farthing::measure::Kind;
use farthing::number::Fraction;
use farthing::problem::Fault;
use farthing::reading::{
    Discount, Kitchen, Marks, amount, discount, measure, number, part_percent, price, tax_percent,
    whole_number,
};

fn fraction(number: &Fraction) -> String {
    match number.kept() {
        Ok(kept) if kept.fraction() == *number => kept.plain_text(),
        _ => {
            let (top, bottom) = number.parts();
            format!("{top}/{bottom}")
        }
    }
}

fn fault(fault: &Fault) -> String {
    let values = fault.values().iter().map(|(name, value)| format!(" {name}={value}"));
    fault.code().text().to_string() + &values.collect::<String>()
}

/// What a reader of whole blanks answered, as text; nothing for an empty blank.
fn told(read: Result<Option<Fraction>, Fault>) -> String {
    match read {
        Ok(read) => read.as_ref().map(fraction).unwrap_or_default(),
        Err(read) => fault(&read),
    }
}

/// A number, read with a point before decimals and with a comma.
#[track_caller]
fn check(text: &str, point: &str, comma: &str) {
    assert_eq!(told(number(text, Marks::POINT)), point, "{text:?} where a point is written");
    assert_eq!(told(number(text, Marks::COMMA)), comma, "{text:?} where a comma is written");
}

/// A number that reads the same everywhere.
#[track_caller]
fn both(text: &str, read: &str) {
    check(text, read, read);
}

#[test]
fn decimals() {
    both("0", "0");
    both("7", "7");
    both("007", "7");
    both("18.50", "18.5");
    both("18,50", "18.5");
    both("1.5", "1.5");
    both("1,5", "1.5");
    both(" 1.5 ", "1.5");
    both("0.750", "0.75");
    both("0,750", "0.75");
    both("1234.567", "1234.567");
    both("1234,567", "1234.567");
    both("12.3456", "12.3456");
    both("00.125", "0.125");
}

#[test]
fn half_typed_numbers() {
    both("", "");
    both("   ", "");
    both("5.", "5");
    both("5,", "5");
    both(".5", "0.5");
    both(",5", "0.5");
    both(".", "number_unreadable typed=.");
    both(",", "number_unreadable typed=,");
    both("1/", "number_unreadable typed=1/");
    both("1 1/", "number_unreadable typed=1/");
    both("1 1", "number_unreadable typed=1 1");
    both("1 12", "number_unreadable typed=1 12");
    both("-", "number_negative typed=-");
    both("£", "number_unreadable typed=£");
}

#[test]
fn thousands() {
    both("1,250,000", "1250000");
    both("1.250.000", "1250000");
    both("1,250.75", "1250.75");
    both("1.250,75", "1250.75");
    both("1 250", "1250");
    both("1 250,75", "1250.75");
    both("1\u{a0}250,75", "1250.75");
    both("1\u{202f}250,75", "1250.75");
    both("1\u{2009}250.75", "1250.75");
    both("1'250.75", "1250.75");
    both("1’250.75", "1250.75");
    both("12,34,567.8", "1234567.8");
    both("12,34,567", "1234567");
    both("1,2,3", "number_unreadable typed=1,2,3");
    both("1,2345.6", "number_unreadable typed=1,2345.6");
    both("1234,567.8", "number_unreadable typed=1234,567.8");
    both("1.2.3", "number_unreadable typed=1.2.3");
    both("1,250.75.", "number_unreadable typed=1,250.75.");
    both("..5", "number_unreadable typed=..5");
    both("1'2,345", "number_unreadable typed=1'2,345");
    both("1'250,750", "1250.75");
    both("1'250 750", "1250750");
}

/// In one locale's hand the other's mark before three digits could be either. It is asked about.
#[test]
fn what_could_be_two_numbers_is_asked_about() {
    let asked = "number_ambiguous typed=1,250 either=1.25 or=1250";
    assert_eq!(told(number("1,250", Marks::POINT)), asked);
    let asked = "number_ambiguous typed=1.250 either=1,25 or=1250";
    assert_eq!(told(number("1.250", Marks::COMMA)), asked);
    let asked = "number_ambiguous typed=12,000 either=12 or=12000";
    assert_eq!(told(number("12,000", Marks::POINT)), asked);
    // The mark of one's own locale is no question, nor are four digits in front or a leading nought.
    check("123.456", "123.456", "number_ambiguous typed=123.456 either=123,456 or=123456");
    check("0,125", "0.125", "0.125");
    check("1234,500", "1234.5", "1234.5");
}

#[test]
fn digits_of_other_scripts() {
    both("١٨٫٥٠", "18.5");
    both("١٬٢٥٠٫٧٥", "1250.75");
    both("۱۸٫۵", "18.5");
    both("१८.५०", "18.5");
    both("১৮.৫", "18.5");
    both("၁၈.၅", "18.5");
    both("１８.５０", "18.5");
    both("\u{200f}١٨\u{200e}", "18");
    both("१/२", "0.5");
    both("1,234٫5", "1234.5");
    both("1٫234٫5", "number_unreadable typed=1٫234٫5");
    both("١٢٣٤٥٦٧٨٩٠", "too_big most=999999999");
}

#[test]
fn fractions() {
    both("½", "0.5");
    both("⅓", "1/3");
    both("⅔", "2/3");
    both("¼", "0.25");
    both("¾", "0.75");
    both("⅕", "0.2");
    both("⅖", "0.4");
    both("⅗", "0.6");
    both("⅘", "0.8");
    both("⅙", "1/6");
    both("⅚", "5/6");
    both("⅛", "0.125");
    both("⅜", "0.375");
    both("⅝", "0.625");
    both("⅞", "0.875");
    both("1½", "1.5");
    both("1 ½", "1.5");
    both("1/2", "0.5");
    both("1 / 2", "0.5");
    both("1⁄2", "0.5");
    both("1 1/2", "1.5");
    both("2 2/3", "8/3");
    both("10 1/4", "10.25");
    both("1 100/200", "1.5");
    both("6/4", "1.5");
    both("1/3", "1/3");
    both("0/5", "0");
    both("1/0", "number_zero_below typed=1/0");
    both("1 1/0", "number_zero_below typed=1/0");
    both("1/2/3", "number_unreadable typed=1/2/3");
    both("1.5/2", "number_unreadable typed=1.5/2");
    both("1.5 1/2", "number_unreadable typed=1.5 1/2");
    both("½½", "number_unreadable typed=½½");
    both("1/1000000000", "number_unreadable typed=1/1000000000");
}

#[test]
fn words() {
    both("half", "0.5");
    both("a half", "0.5");
    both("a third", "1/3");
    both("two thirds", "2/3");
    both("a quarter", "0.25");
    both("Three Quarters", "0.75");
    both("a", "1");
    both("an", "1");
    both("one", "1");
    both("two", "2");
    both("six", "6");
    both("TWELVE", "12");
    both("halves", "number_unreadable typed=halves");
    both("tenner", "number_unreadable typed=tenner");
    both("sechs", "number_unreadable typed=sechs");
}

#[test]
fn what_is_no_number() {
    both("abc", "number_unreadable typed=abc");
    both("1e3", "number_unreadable typed=1e3");
    both("0x10", "number_unreadable typed=0x10");
    both("NaN", "number_unreadable typed=NaN");
    both("inf", "number_unreadable typed=inf");
    both("+5", "number_unreadable typed=+5");
    both("5-", "number_unreadable typed=5-");
    both("5 kg", "number_unreadable typed=5 kg");
    both("5 %", "number_unreadable typed=5 %");
    both("²", "number_unreadable typed=²");
    both("Ⅷ", "number_unreadable typed=Ⅷ");
    both("-5", "number_negative typed=-5");
    both("−5", "number_negative typed=−5");
    both("–0.5", "number_negative typed=–0.5");
    both("-0", "number_negative typed=-0");
}

#[test]
fn limits() {
    both("999999999", "999999999");
    both("000999999999", "999999999");
    both("1000000000", "too_big most=999999999");
    both("1000000000.5", "too_big most=999999999");
    both("0.123456", "0.123456");
    both("0.1234560", "0.123456");
    both("0.1234567", "number_too_long most=6");
    both("999999999.999999", "999999999.999999");
    both(&format!("{}1", "0".repeat(79)), "1");
    both(&"0".repeat(81), "number_unreadable typed=00000000000000000000…");
    both(&format!("  {}  ", "0".repeat(80)), "0");
    both(&"½".repeat(81), &format!("number_unreadable typed={}…", "½".repeat(20)));
}

#[test]
fn prices() {
    let read = |text: &str| told(price(text, Marks::POINT, false));
    for text in ["18.50", "£18.50", "£ 18.50", "18.50 €", "$18.50", "₹18.50", "18.50£ "] {
        assert_eq!(read(text), "18.5", "{text}");
    }
    assert_eq!(read("£"), "");
    assert_eq!(read("0"), "0");
    assert_eq!(read("-£5"), "number_negative typed=-£5");
    assert_eq!(read("£-5"), "number_negative typed=-5");
    assert_eq!(read("five pounds"), "number_unreadable typed=five pounds");
    assert_eq!(read("1,250"), "number_ambiguous typed=1,250 either=1.25 or=1250");
    // Where the currency has no minor unit there is nothing to ask.
    // As browsers print a price from right to left.
    assert_eq!(read("\u{200f}1,234.56\u{a0}\u{200f}₪"), "1234.56");
    assert_eq!(told(price("¥1,250", Marks::POINT, true)), "1250");
    assert_eq!(told(price("1.250", Marks::COMMA, true)), "1250");
    assert_eq!(told(price("0.43", Marks::POINT, true)), "0.43");
}

#[test]
fn whole_numbers_and_percents() {
    let whole = |text: &str| told(whole_number(text, Marks::POINT));
    assert_eq!(whole("12"), "12");
    assert_eq!(whole("12.0"), "12");
    assert_eq!(whole(""), "");
    assert_eq!(whole("1.5"), "whole_number_needed typed=1.5");
    assert_eq!(whole("1/2"), "whole_number_needed typed=1/2");
    assert_eq!(whole("0"), "number_must_be_positive");
    let tax = |text: &str| told(tax_percent(text, Marks::POINT));
    assert_eq!(tax("20"), "20");
    assert_eq!(tax("20 %"), "20");
    assert_eq!(tax("٢٠٪"), "20");
    assert_eq!(tax("0"), "0");
    assert_eq!(tax("500"), "500");
    assert_eq!(tax("500.000001"), "percent_out_of_range typed=500.000001 least=0 most=500");
    let part = |text: &str| told(part_percent(text, Marks::POINT));
    assert_eq!(part("2.5%"), "2.5");
    assert_eq!(part("99.999999"), "99.999999");
    assert_eq!(part("100"), "percent_out_of_range typed=100 least=0 most=100");
    assert_eq!(part("101 %"), "percent_out_of_range typed=101 % least=0 most=100");
    assert_eq!(part("-1"), "number_negative typed=-1");
}

#[test]
fn discounts() {
    let read = |text: &str| match discount(text, Marks::POINT, false) {
        Ok(Some(Discount::Percent(off))) => format!("{} percent", fraction(&off)),
        Ok(Some(Discount::Sum(off))) => format!("{} off", fraction(&off)),
        Ok(None) => String::new(),
        Err(read) => fault(&read),
    };
    assert_eq!(read(""), "");
    assert_eq!(read("10 %"), "10 percent");
    assert_eq!(read("10%"), "10 percent");
    assert_eq!(read("10"), "10 off");
    assert_eq!(read("£2.50"), "2.5 off");
    assert_eq!(read("100 %"), "percent_out_of_range typed=100 % least=0 most=100");
    assert_eq!(read("% 10"), "number_unreadable typed=% 10");
}

/// A measure with nothing chosen beside it, as `amount code`.
fn measured(text: &str, chosen: &str, kitchen: Kitchen, kind: Option<Kind>) -> String {
    match measure(text, chosen, Marks::POINT, kitchen, kind) {
        Ok(Some(measure)) => format!("{} {}", fraction(&measure.amount), measure.unit.code),
        Ok(None) => String::new(),
        Err(read) => fault(&read),
    }
}

#[track_caller]
fn check_measure(text: &str, read: &str) {
    assert_eq!(measured(text, "", Kitchen::Uk, None), read, "{text:?}");
}

#[test]
fn measures() {
    check_measure("60 ml", "60 ml");
    check_measure("60ml", "60 ml");
    check_measure("60 ML.", "60 ml");
    check_measure("1 000ml", "1000 ml");
    check_measure("2 dashes", "2 dash");
    check_measure("2dashes", "2 dash");
    check_measure("dash", "1 dash");
    check_measure("a dash", "1 dash");
    check_measure("half a dash", "0.5 dash");
    check_measure("half a bottle", "0.5 bottle");
    check_measure("half of the bottle", "0.5 bottle");
    check_measure("HALF A BOTTLE", "0.5 bottle");
    check_measure("a third of a bottle", "1/3 bottle");
    check_measure("bottle", "1 bottle");
    check_measure("¾ dropper squeeze", "0.75 dropper");
    check_measure("1 1/2 fl. oz.", "1.5 imp_fl_oz");
    check_measure("1½fl oz", "1.5 imp_fl_oz");
    check_measure("1/2oz", "0.5 imp_fl_oz");
    check_measure("three drops", "3 drop");
    check_measure("", "");
    check_measure("5", "unit_missing typed=5");
    check_measure("0 ml", "number_must_be_positive");
    check_measure("-2 ml", "number_negative typed=-2 ml");
    check_measure("2 thimbles", "unit_unknown typed=thimbles");
    check_measure("2 mlx", "unit_unknown typed=mlx");
    check_measure("ml 2", "number_unreadable typed=ml 2");
    check_measure("2 3 ml", "unit_unknown typed=3 ml");
    check_measure("of", "number_unreadable typed=of");
    // What is typed wins over what is chosen; what is chosen stands where nothing is typed.
    assert_eq!(measured("2", "dash", Kitchen::Uk, None), "2 dash");
    assert_eq!(measured("2 dashes", "ml", Kitchen::Uk, None), "2 dash");
    assert_eq!(measured("2", "thimble", Kitchen::Uk, None), "unit_missing typed=2");
}

#[test]
fn a_number_and_what_is_left() {
    let (number, rest) = amount("1 1/2 fl oz", Marks::POINT).unwrap();
    assert_eq!((fraction(&number).as_str(), rest), ("1.5", " fl oz"));
    let (number, rest) = amount("1,5cl rest", Marks::COMMA).unwrap();
    assert_eq!((fraction(&number).as_str(), rest), ("1.5", "cl rest"));
}
