//! What loads when a view is opened that needs it.

use crate::wire;
use alloc::string::String;
use wasm_bindgen::prelude::wasm_bindgen;

/// See [`wire::moves`].
#[wasm_bindgen]
pub fn moves(ask: &str) -> String {
    wire::moves(ask)
}

/// See [`wire::measure`].
#[wasm_bindgen]
pub fn measure(ask: &str) -> String {
    wire::measure(ask)
}
