//! The browser: what the page may call, and where the shelf is kept there.
//!
//! Pure functions over JSON text. Nothing is exported that holds a state: after a trap such a
//! thing would stay locked for good.
//!
//! The core is built twice, so that a first visit fetches only what it needs: with the feature
//! `first` it answers, with `more` it does what is rarely asked. A glass on somebody else's page is a third
//! build, `embed`.

#[cfg(feature = "embed")]
mod embed;
#[cfg(feature = "first")]
mod first;
#[cfg(feature = "first")]
mod local_storage;
#[cfg(feature = "more")]
mod more;

/// The heap. A third of the size of the standard library's.
#[global_allocator]
static HEAP: talc::wasm::WasmDynamicTalc = talc::wasm::new_wasm_dynamic_allocator();

/// Nothing in the core panics; if something does, the instance traps and the page says so.
#[panic_handler]
fn panic(_: &core::panic::PanicInfo) -> ! {
    core::arch::wasm32::unreachable()
}
