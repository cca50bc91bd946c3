//! Works a figure's working again, with fractions that never run out of digits.

use super::{exact, kept_text};
use num_rational::BigRational;
use serde_json::Value;

/// Every figure anywhere in a reply.
pub fn figures(reply: &Value) -> Vec<&Value> {
    let mut found = Vec::new();
    let inner: Vec<&Value> = match reply {
        Value::Object(fields) => {
            if fields.contains_key("working") {
                found.push(reply);
            }
            fields.values().collect()
        }
        Value::Array(items) => items.iter().collect(),
        _ => Vec::new(),
    };
    found.extend(inner.into_iter().flat_map(figures));
    found
}

/// The exact number that a figure's working comes to; what is written down on the way is checked.
///
/// Terms are taken from left to right. A term with a step takes that step's exact result.
#[track_caller]
pub fn replay(figure: &Value) -> BigRational {
    let mut found: Vec<BigRational> = Vec::new();
    for step in figure["working"].as_array().expect("steps") {
        let number = taken_together(step, &found);
        let result = text(step, "result");
        let number = match text(step, "rounded") {
            "no" => {
                assert_eq!(exact(result), number, "{step}");
                number
            }
            "kept" => {
                assert_eq!(result, kept_text(&number), "{step}");
                assert_ne!(exact(result), number, "exact, but said to be rounded: {step}");
                number
            }
            "down" => whole(number.floor(), result),
            "up" => whole(number.ceil(), result),
            other => panic!("{other}: {step}"),
        };
        found.push(number);
    }
    let Some(last) = found.pop() else { return exact(text(figure, "value")) };
    assert_eq!(kept_text(&last), text(figure, "value"), "the last step is the figure: {figure}");
    let steps = figure["working"].as_array().map(Vec::as_slice);
    assert_eq!(steps.and_then(<[_]>::last).map(|step| &step["unit"]), Some(&figure["unit"]));
    last
}

#[track_caller]
fn whole(number: BigRational, result: &str) -> BigRational {
    assert_eq!(exact(result), number);
    number
}

#[track_caller]
fn taken_together(step: &Value, found: &[BigRational]) -> BigRational {
    let terms = step["terms"].as_array().expect("terms");
    let mut so_far = operand(&terms[0], found);
    assert_eq!(text(&terms[0], "does"), "start", "{step}");
    for term in &terms[1..] {
        let by = operand(term, found);
        so_far = match text(term, "does") {
            "times" => so_far * by,
            "over" => so_far / by,
            "plus" => so_far + by,
            "less" => so_far - by,
            other => panic!("{other}: {step}"),
        };
    }
    so_far
}

#[track_caller]
fn operand(term: &Value, found: &[BigRational]) -> BigRational {
    let value = text(term, "value");
    match term["step"].as_u64() {
        Some(step) => {
            let number = &found[step as usize];
            assert_eq!(value, kept_text(number), "a step's result is written as it is kept");
            number.clone()
        }
        None => exact(value),
    }
}

#[track_caller]
pub fn text<'v>(record: &'v Value, key: &str) -> &'v str {
    record[key].as_str().unwrap_or_else(|| panic!("no {key}: {record}"))
}
