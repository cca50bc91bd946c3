//! Makes what a first visit fetches shorter, and changes nothing that it does.

pub mod script;
pub mod style;
