//! How the time to read a pasted recipe grows: each text four times as long, in one run.
//!
//! `cargo bench --bench recipe`. Four times the text may take four times the time, and as much again for noise; a
//! reader that looked back at all that it has read would take sixteen times. Beyond that the run fails.

#![allow(clippy::arithmetic_side_effects, clippy::panic, reason = "a benchmark may stop")]

use std::hint::black_box;
use std::time::{Duration, Instant};

/// Times the time that four times the text may take.
const MOST_GROWTH: f64 = 8.0;

fn time(ask: &str) -> Duration {
    let start = Instant::now();
    black_box(farthing::wire::recipe(black_box(ask)));
    start.elapsed()
}

/// The least of several times for each of two texts, taken in turns: what else the machine does only ever adds.
fn least(texts: [&str; 2]) -> [Duration; 2] {
    let asks =
        texts.map(|text| serde_json::json!({"house": {"kitchen": "us"}, "text": text}).to_string());
    (0..40).fold([Duration::MAX; 2], |[short, long], _| {
        [short.min(time(&asks[0])), long.min(time(&asks[1]))]
    })
}

fn main() {
    let script = |data: &str| format!("<script type=\"application/ld+json\">{data}</script>");
    let recipe = |lines: usize| {
        let list = vec!["60 ml gin &amp; tonic"; lines];
        serde_json::json!({"@type": "Recipe", "recipeIngredient": list}).to_string()
    };
    type Text<'t> = Box<dyn Fn(usize) -> String + 't>;
    let repeated = |piece: &'static str| -> Text { Box::new(move |times| piece.repeat(times)) };
    // What it is, a length of which the fourfold is still read, and its text by length.
    let texts: [(&str, usize, Text); 16] = [
        ("lines", 25, repeated("1 1/2 oz. fresh lemon juice, strained (45 ml)\n")),
        ("lines of prose", 25, repeated("Shake hard with ice, then strain into the glass\n")),
        ("one line: brackets", 75, repeated("(")),
        ("one line: halves", 75, repeated("½")),
        ("one line: 1 or 1", 15, repeated("1 or ")),
        ("one line: 1 ml", 12, repeated("1 ml, ")),
        ("one line: a dash", 7, repeated("a dash of ")),
        ("one line: points", 75, repeated(".")),
        ("one line: 1.", 37, repeated("1.")),
        ("one line: 1,", 37, repeated("1,")),
        ("100,000 brackets", 25_000, repeated("(")),
        ("100,000 halves", 25_000, repeated("½")),
        ("100,000 characters of 1 or 1", 5_000, repeated("1 or ")),
        ("a page that never closes a script", 20_000, repeated("<script ")),
        ("a page of damaged data", 12_000, Box::new(|times| script("{").repeat(times))),
        ("a recipe's data", 800, Box::new(|lines| script(&recipe(lines)))),
    ];
    let mut worst = 0.0;
    for (what, length, text) in texts {
        let [short, long] = least([&text(length), &text(length * 4)]);
        let growth = long.as_secs_f64() / short.as_secs_f64();
        println!("{what}: {growth:.1} times the time for four times the text ({long:.0?})");
        worst = f64::max(worst, growth);
    }
    assert!(worst < MOST_GROWTH, "{worst:.2}");
}
