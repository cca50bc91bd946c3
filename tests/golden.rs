//! Golden cases: what the core answers to whole requests, natively. The same files are asked again
//! through the built wasm in every browser, where the replies must be the same to the letter.
//!
//! A reply is written by `FARTHING_WRITE=1 cargo test --test golden`, and read by a person before it is
//! committed: the figures of each case stand in its name or in the other tests.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::arithmetic_side_effects,
    reason = "a test stops at what it did not expect"
)]

use farthing::wire;
use serde_json::Value;
use std::path::Path;

#[test]
fn every_case_answers_as_it_did() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/golden");
    let mut cases_seen = 0;
    for file in std::fs::read_dir(folder).unwrap() {
        let path = file.unwrap().path();
        let text = std::fs::read_to_string(&path).unwrap();
        let mut cases: Vec<Value> = serde_json::from_str(&text).unwrap();
        let write = std::env::var_os("FARTHING_WRITE").is_some();
        for case in &mut cases {
            cases_seen += 1;
            let ask = case["ask"].to_string();
            let reply = match case["call"].as_str() {
                Some("answer") => wire::answer(&ask),
                Some("measure") => wire::measure(&ask),
                Some("moves") => wire::moves(&ask),
                Some("facts") => wire::facts(&ask),
                Some("shop") => wire::shop(&ask),
                Some("keeping") => wire::keeping(&ask),
                Some("offers") => wire::offers(&ask),
                Some("recipe") => wire::recipe(&ask),
                Some("link") => wire::link(&ask),
                Some("linked") => wire::linked(&ask),
                Some("recipe_out") => wire::recipe_out(&ask),
                Some("embed") => wire::embed(&ask),
                Some("tables") => wire::tables(),
                call => panic!("{path:?} calls {call:?}"),
            };
            let reply: Value = serde_json::from_str(&reply).unwrap();
            if write {
                case["reply"] = reply;
            } else {
                assert!(case["reply"] == reply, "{} in {path:?} now replies {reply}", case["name"]);
            }
        }
        if write {
            std::fs::write(&path, serde_json::to_string_pretty(&cases).unwrap() + "\n").unwrap();
        }
    }
    assert!(cases_seen >= 12, "only {cases_seen} golden cases");
}
