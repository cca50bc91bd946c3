//! The file that carries a shelf from one device to another.
//!
//! Bringing a file back adds and changes; it removes nothing. It is taken whole or not at all.

use super::kind::{BOTTLE, HOUSE, Kind, SPEC, id, name};
use super::merge::differing;
use super::{Done, Store, changed, read as read_key, write};
use crate::problem::{Code, Fault, Problem};
use crate::wire::kept::{Change, FORMAT, Kept, SHELF_FILE, ShelfFile, ShelfReply};
use crate::wire::{self, MOST_BOTTLES, MOST_SPECS};
use alloc::string::{String, ToString};
use alloc::vec::Vec;

/// Bytes of a file: what a browser keeps for a page, twice over.
pub const MOST_FILE_BYTES: usize = 10_000_000;

/// The shelf as a file.
pub fn saved(shelf: &ShelfReply, on: String) -> String {
    wire::written(&ShelfFile {
        format: FORMAT,
        holds: SHELF_FILE.into(),
        saved_on: on,
        house: shelf.house.clone(),
        bottles: shelf.bottles.clone(),
        specs: shelf.specs.clone(),
    })
}

/// Reads a file, or says why it is not one of ours.
pub fn read(text: &str) -> Result<ShelfFile, Problem> {
    checked(text).map_err(|fault| fault.at("file"))
}

fn checked(text: &str) -> Result<ShelfFile, Fault> {
    too_many(text.len(), MOST_FILE_BYTES, Code::FileTooLarge)?;
    let unreadable = |fault: Fault| match fault.code() {
        Code::RecordNewer => Fault::new(Code::FileNewer),
        _ => Fault::new(Code::FileUnreadable)
            .with("why", fault.value("why").unwrap_or_default())
            .with("where", fault.value("where").unwrap_or_default()),
    };
    let file: ShelfFile = wire::read_versioned(text).map_err(unreadable)?;
    if file.holds != SHELF_FILE {
        return Err(Fault::new(Code::FileUnreadable));
    }
    too_many(file.bottles.len(), MOST_BOTTLES, Code::TooManyBottles)?;
    too_many(file.specs.len(), MOST_SPECS, Code::TooManySpecs)?;
    let all = |kind: Kind, records: Vec<Kept>| -> Result<Vec<Kept>, Fault> {
        records.into_iter().map(|kept| kind.checked(Ok(kept)).map_err(unreadable)).collect()
    };
    Ok(ShelfFile {
        bottles: all(BOTTLE, file.bottles)?,
        specs: all(SPEC, file.specs)?,
        house: all(HOUSE, file.house.into_iter().collect())?.pop(),
        ..file
    })
}

fn too_many(count: usize, most: usize, code: Code) -> Result<(), Fault> {
    if count > most { Err(Fault::new(code).with("most", most.to_string())) } else { Ok(()) }
}

/// What a file would change on a shelf.
pub fn changes(file: &ShelfFile, shelf: &ShelfReply) -> Vec<Change> {
    let bottles = file.bottles.iter().map(|kept| change(&BOTTLE, kept, &shelf.bottles));
    let specs = file.specs.iter().map(|kept| change(&SPEC, kept, &shelf.specs));
    let house = file.house.iter().map(|kept| change(&HOUSE, kept, shelf.house.as_slice()));
    bottles.chain(specs).chain(house).collect()
}

fn change(kind: &Kind, kept: &Kept, shelf: &[Kept]) -> Change {
    let record = &kept.record;
    let stored = shelf.iter().find(|stored| id(&stored.record) == id(record));
    let fields = stored.map(|stored| differing(record, &stored.record)).unwrap_or_default();
    let change = match stored {
        None => "new",
        Some(_) if fields.is_empty() => "same",
        Some(_) => "changed",
    };
    Change {
        kind: kind.word.into(),
        id: id(record).into(),
        name: name(record).into(),
        change: change.into(),
        fields,
    }
}

/// Takes a file onto the shelf. If the device stops halfway, what was there before is put back.
pub fn take(store: &mut dyn Store, file: ShelfFile, on: &str) -> Done {
    let bottles = file.bottles.into_iter().map(|kept| (BOTTLE, kept));
    let specs = file.specs.into_iter().map(|kept| (SPEC, kept));
    let house = file.house.into_iter().map(|kept| (HOUSE, kept));
    let mut before = Vec::new();
    for (kind, kept) in bottles.chain(specs).chain(house) {
        let key = kind.key_of(&kept.record);
        let was = read_key(store, &key)?;
        let Some(text) = taken(&kind, kept, was.as_deref(), on).map_err(|fault| fault.at(&key))?
        else {
            continue;
        };
        before.push((key.clone(), was));
        if let Err(problem) = write(store, &key, &text) {
            put_back(store, before);
            return Err(problem);
        }
    }
    Ok(())
}

/// What must be written for one record of a file; nothing if the shelf has it already.
fn taken(kind: &Kind, kept: Kept, was: Option<&str>, on: &str) -> Result<Option<String>, Fault> {
    let stored = was.map(|text| kind.read(text)).transpose()?;
    let kept = match stored {
        None => kept,
        Some(stored) if stored.record == kept.record => return Ok(None),
        Some(stored) => changed(stored, kept.record, on.into()),
    };
    Ok(Some(wire::written(&kept)))
}

fn put_back(store: &mut dyn Store, before: Vec<(String, Option<String>)>) {
    for (key, text) in before.into_iter().rev() {
        // Each text fitted before, so putting it back fits now.
        let _ = match text {
            Some(text) => store.write(&key, &text),
            None => store.remove(&key),
        };
    }
}
