//! Farthing: what a dash, a pour and a glass cost.
//!
//! The core is pure: text and records in, figures and problems out. It does without the standard
//! library, and so can reach no clock, no file and no network.
//! Only [`wire`] knows the records that cross to the page, and only `web` knows that a browser exists.
//!
//! ```
//! let ask = r#"{
//!     "bottles": [{"id": "bitters", "paid": {"price": "18.50"}, "holds": {"text": "100 ml"}}],
//!     "pours": [{"bottle": "bitters", "measure": {"text": "2 dashes"}}]
//! }"#;
//! let reply = farthing::wire::answer(ask);
//! assert!(reply.contains(r#""value":"0.3404""#));
//! ```

#![no_std]

#[macro_use]
extern crate alloc;

pub mod bottle;
pub mod caution;
pub mod dash;
pub mod density;
pub mod doubt;
pub mod drink;
pub mod keeping;
pub mod link;
pub mod measure;
pub mod measuring;
pub mod menu;
pub mod shopping;
pub mod money;
pub mod number;
pub mod price;
pub mod problem;
pub mod reading;
pub mod recipe;
pub mod sheet;
pub mod shelf;
pub mod spread;
pub mod statistics;
pub mod strength;
pub mod tasting;
#[cfg(target_arch = "wasm32")]
pub mod web;
pub mod wire;
pub mod working;
