//! The browser: what the page may call, and where the shelf is kept there.
//!
//! Four pure functions over JSON text. Nothing is exported that holds a state: after a trap such a
//! thing would stay locked for good.

mod local_storage;

use crate::{shelf, wire};
use local_storage::LocalStorage;
use wasm_bindgen::prelude::wasm_bindgen;

/// See [`wire::answer`].
#[wasm_bindgen]
pub fn answer(ask: &str) -> String {
    wire::answer(ask)
}

/// See [`wire::moves`].
#[wasm_bindgen]
pub fn moves(ask: &str) -> String {
    wire::moves(ask)
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
