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

/// See [`wire::facts`].
#[wasm_bindgen]
pub fn facts(ask: &str) -> String {
    wire::facts(ask)
}

/// See [`wire::shop`].
#[wasm_bindgen]
pub fn shop(ask: &str) -> String {
    wire::shop(ask)
}

/// See [`wire::keeping`].
#[wasm_bindgen]
pub fn keeping(ask: &str) -> String {
    wire::keeping(ask)
}

/// See [`wire::offers`].
#[wasm_bindgen]
pub fn offers(ask: &str) -> String {
    wire::offers(ask)
}

/// See [`wire::recipe`].
#[wasm_bindgen]
pub fn recipe(ask: &str) -> String {
    wire::recipe(ask)
}

/// See [`wire::link`].
#[wasm_bindgen]
pub fn link(ask: &str) -> String {
    wire::link(ask)
}

/// See [`wire::linked`].
#[wasm_bindgen]
pub fn linked(ask: &str) -> String {
    wire::linked(ask)
}

/// See [`wire::recipe_out`].
#[wasm_bindgen]
pub fn recipe_out(ask: &str) -> String {
    wire::recipe_out(ask)
}
