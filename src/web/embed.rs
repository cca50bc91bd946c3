//! What a glass on somebody else's page needs.

use crate::wire;
use alloc::string::String;
use wasm_bindgen::prelude::wasm_bindgen;

/// See [`wire::embed`].
#[wasm_bindgen]
pub fn embed(ask: &str) -> String {
    wire::embed(ask)
}
