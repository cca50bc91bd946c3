//! What a first visit needs.

use super::local_storage::LocalStorage;
use crate::{shelf, wire};
use alloc::string::String;
use wasm_bindgen::prelude::wasm_bindgen;

/// See [`wire::answer`].
#[wasm_bindgen]
pub fn answer(ask: &str) -> String {
    wire::answer(ask)
}

/// See [`wire::tables`].
#[wasm_bindgen]
pub fn tables(_ask: &str) -> String {
    wire::tables()
}

/// See [`shelf::shelf`], over the browser's local storage.
#[wasm_bindgen(js_name = shelf)]
pub fn shelf_command(command: &str) -> String {
    shelf::shelf(&mut LocalStorage, command)
}
