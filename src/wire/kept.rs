//! The records that the device keeps, the file that carries them, and the commands of the shelf.

use super::json::Json;
use super::record::records;
use super::records::{Paid, Problem, Written};
use alloc::string::String;
use alloc::vec::Vec;

/// The version of what is kept. A record with a higher one was written by a newer page and is left alone.
///
/// 1: at first. 2: a bottle carries what was `measured`, the house `counts_fill`. 3: a line its `note`.
pub const FORMAT: u64 = 3;

/// What [`ShelfFile::holds`] says.
pub const SHELF_FILE: &str = "farthing shelf";

/// The declaration of [`Kept`] for TypeScript, which alone can say what the record of each is.
pub const KEPT_DECLARATION: &str = "export interface Kept<T> {
  format: number;
  revision: number;
  kept_on: string;
  record: T;
  earlier: (Earlier)[];
}
";

records! {
    both
    /// A kept record.
    #[derive(Default)]
    Kept {
        /// The version of this form: [`FORMAT`].
        format: u64,
        /// Goes up by one with every change, in whichever tab.
        revision: u64,
        /// The day it was last changed, such as `"2026-11-25"`.
        kept_on: String,
        /// What is kept: a bottle, a spec or the house.
        record: Json,
        /// What a bottle cost before, the latest first; empty for anything else.
        earlier: Vec<Earlier>,
    }

    both
    /// What a bottle cost, and until when.
    #[derive(Default)]
    Earlier {
        /// What was paid.
        paid: Paid,
        /// For how much.
        holds: Written,
        /// The day that a new price took its place.
        until: String,
    }

    both
    /// The file that carries a shelf from one device to another.
    #[derive(Default)]
    ShelfFile {
        /// The version of this form: [`FORMAT`].
        format: u64,
        /// Says what the file is: [`SHELF_FILE`].
        holds: String,
        /// The day it was saved.
        saved_on: String,
        /// What holds for everything.
        house: Option<Kept>,
        /// The bottles, by id.
        bottles: Vec<Kept>,
        /// The specs, by id.
        specs: Vec<Kept>,
    }

    asked
    /// What the page asks of the shelf.
    ///
    /// | `wish` | takes | replies |
    /// |---|---|---|
    /// | `open` | | everything that is kept |
    /// | `keep` | `kind`, `before`, `after`, `on` | `kept`, `clashes` |
    /// | `heard` | `kind`, `before`, `after`, `on` | `kept`, `clashes` |
    /// | `remove` | `kind`, `id` | |
    /// | `restore` | `kind`, `after`: what was kept | |
    /// | `keep_draft` | `text` | |
    /// | `save_file` | `on` | `file` |
    /// | `read_file` | `text` | `changes` |
    /// | `take_file` | `text`, `on` | everything that is kept |
    /// | `aside_file` | | `file` |
    ///
    /// `keep` keeps a record: `before` is what this tab last saw of it, so that an edit of another tab
    /// is merged. `heard` puts this tab's edit back in after another tab wrote over it, except where the
    /// other changed the same field.
    #[derive(Default)]
    ShelfAsk {
        /// What is to be done.
        wish: String,
        /// `"bottle"`, `"spec"` or `"house"`.
        kind: String,
        /// Which one.
        id: String,
        /// The record as this tab last saw it, or null.
        before: Json,
        /// The record as it is to be.
        after: Json,
        /// Today, such as `"2026-11-25"`: the core has no clock.
        on: String,
        /// A file, or what is being typed.
        text: String,
    }

    replied
    /// What the shelf replies. Each wish fills what concerns it and leaves the rest empty.
    #[derive(Default)]
    ShelfReply {
        /// The bottles.
        bottles: Vec<Kept>,
        /// The specs.
        specs: Vec<Kept>,
        /// What holds for everything, if it was ever kept.
        house: Option<Kept>,
        /// What was being typed.
        draft: Option<String>,
        /// What could not be read and was set aside.
        aside: Vec<Aside>,
        /// The record that was kept, with its revision.
        kept: Json,
        /// Fields that another tab changed too.
        clashes: Vec<String>,
        /// What a file would change.
        changes: Vec<Change>,
        /// A file to save.
        file: Option<String>,
        /// What could not be done.
        problems: Vec<Problem>,
    }

    replied
    /// A record that was set aside.
    #[derive(Default)]
    Aside {
        /// The key it stands under now.
        key: String,
        /// The text as it was found.
        text: String,
    }

    replied
    /// What a file would do to one record.
    #[derive(Default)]
    Change {
        /// `"bottle"`, `"spec"` or `"house"`.
        kind: String,
        /// Which one.
        id: String,
        /// Its name.
        name: String,
        /// `"new"`, `"changed"` or `"same"`.
        change: String,
        /// The fields that would change.
        fields: Vec<String>,
    }
}
