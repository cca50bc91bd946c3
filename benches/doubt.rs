//! What doubt adds to the time of an answer: the same glasses with and without ranges, in one run.
//!
//! `cargo bench`. The baseline is a glass of exact measures, whose figures have no range.

#![allow(clippy::arithmetic_side_effects, clippy::unwrap_used, reason = "a benchmark may stop")]

use std::fmt::Write;
use std::hint::black_box;
use std::time::{Duration, Instant};

/// Glasses of six lines over six bottles, each line measured so.
fn ask(measures: [&str; 6]) -> String {
    let mut bottles = String::new();
    let mut lines = String::new();
    for (index, measure) in measures.iter().enumerate() {
        let comma = if index == 0 { "" } else { "," };
        write!(
            bottles,
            r#"{comma}{{"id":"b{index}","paid":{{"price":"18.50"}},"holds":{{"text":"700 ml"}}}}"#
        )
        .unwrap();
        write!(lines, r#"{comma}{{"bottle":"b{index}","measure":{{"text":"{measure}"}}}}"#)
            .unwrap();
    }
    let specs = vec![format!(r#"{{"id":"s","lines":[{lines}]}}"#); 20].join(",");
    format!(r#"{{"bottles":[{bottles}],"specs":[{specs}]}}"#)
}

/// The median of the times that an answer takes.
fn median(ask: &str) -> Duration {
    let mut times: Vec<Duration> = (0..200)
        .map(|_| {
            let start = Instant::now();
            black_box(farthing::wire::answer(black_box(ask)));
            start.elapsed()
        })
        .collect();
    times.sort();
    times.get(times.len() / 2).copied().unwrap_or_default()
}

fn main() {
    let plain = ask(["1.84 ml", "7.5 ml", "200 ml", "50 ml", "25 ml", "2.3 ml"]);
    for (what, measures) in [
        ("one range in six lines", ["5-10 ml", "7.5 ml", "200 ml", "50 ml", "25 ml", "2.3 ml"]),
        (
            "a range in every line",
            ["2 dashes", "5-10 ml", "about 200 ml", "40-60 ml", "25 ml or so", "2-3 dashes"],
        ),
    ] {
        let ranged = ask(measures);
        // Taken in turns, so that a busy machine slows both alike.
        let (before, with, after) = (median(&plain), median(&ranged), median(&plain));
        let base = (before + after) / 2;
        println!(
            "{what}: {:.2} times a plain answer ({:.0} µs against {:.0} µs for twenty glasses)",
            with.as_secs_f64() / base.as_secs_f64(),
            with.as_secs_f64() * 1e6,
            base.as_secs_f64() * 1e6,
        );
    }
}
