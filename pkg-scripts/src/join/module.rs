//! One module as the join sees it. Places are counted in bytes from the start of its text.

use std::collections::BTreeMap;

use crate::failure::Failure;

/// A module that was read.
#[derive(Debug)]
pub struct Module {
    /// Its file name.
    pub file: String,
    /// As it is written.
    pub text: String,
    /// The modules it imports, at once or late, in the order in which they run.
    pub requests: Vec<Request>,
    /// The names it imports, used or not.
    pub wanted: Vec<Wanted>,
    /// What it exports, by the name that others import.
    pub exports: BTreeMap<String, Export>,
    /// What remains of it: everything but imports, lists of exports and the word `export`.
    pub statements: Vec<Statement>,
    /// What changes inside the statements, in order.
    pub edits: Vec<Edit>,
}

/// A module that is imported, and where.
#[derive(Debug)]
pub struct Request {
    /// The file that is imported.
    pub file: String,
    /// Where.
    pub at: usize,
    /// Whether only once it is asked for.
    pub is_late: bool,
}

/// A name that is imported, and where.
#[derive(Debug)]
pub struct Wanted {
    /// The file that should export it.
    pub file: String,
    /// As that file calls it.
    pub name: String,
    /// Where.
    pub at: usize,
}

/// A name that others can import.
#[derive(Debug)]
pub struct Export {
    /// As the module itself calls it.
    pub local: String,
    /// Whether anything is assigned to it after its declaration.
    pub changes: bool,
}

/// A statement that stays.
#[derive(Debug)]
pub struct Statement {
    /// Its first byte.
    pub from: usize,
    /// The byte after its last.
    pub to: usize,
    /// Whether whatever follows cannot run on into it.
    pub is_closed: bool,
}

/// A place that changes.
#[derive(Debug)]
pub struct Edit {
    /// Its first byte.
    pub from: usize,
    /// The byte after its last.
    pub to: usize,
    /// The key that a shorthand such as `{ one }` leaves unsaid.
    pub key: Option<String>,
    /// What stands there afterwards.
    pub with: With,
}

/// What stands in a changed place.
#[derive(Debug)]
pub enum With {
    /// The module's own top-level name.
    Own(String),
    /// A name of another module, as that one exports it.
    Imported {
        /// The other module.
        file: String,
        /// The name.
        name: String,
    },
    /// A promise of all that another module exports.
    Everything {
        /// The other module.
        file: String,
    },
}

impl Module {
    /// A top-level name as the whole calls it. No name in a module may hold a `$`, no file name
    /// a `_`: so two names are never made one.
    pub fn prefixed(&self, name: &str) -> String {
        let module = self.file.trim_end_matches(".js").replace('-', "_");
        format!("{module}${name}")
    }

    /// Why the build stops, and where.
    pub fn failure(&self, at: usize, why: &str) -> Failure {
        failure(&self.file, &self.text, at, why)
    }
}

/// Why the build stops at a place in a file of `www/`.
pub fn failure(file: &str, text: &str, at: usize, why: &str) -> Failure {
    let line = text.bytes().take(at).filter(|byte| *byte == b'\n').count() + 1;
    Failure::new(format!("www/{file}:{line}: {why}."))
}
