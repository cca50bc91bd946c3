//! The browser: what the page may call, and where the shelf is kept there.
//!
//! Four pure functions over JSON text. Nothing is exported that holds a state: after a trap such a
//! thing would stay locked for good.

mod local_storage;

use crate::{shelf, wire};
use alloc::string::String;
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

/// The heap. A third of the size of the standard library's.
#[global_allocator]
static HEAP: talc::wasm::WasmDynamicTalc = talc::wasm::new_wasm_dynamic_allocator();

/// Nothing in the core panics; if something does, the instance traps and the page says so.
#[panic_handler]
fn panic(_: &core::panic::PanicInfo) -> ! {
    core::arch::wasm32::unreachable()
}
