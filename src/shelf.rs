//! The shelf: what the device keeps, and how it stays whole.
//!
//! Each record stands under a key of its own with a version and a revision, so that two tabs that
//! change different bottles lose nothing; where both changed one, their edits are merged blank by
//! blank. What cannot be read is set aside under another key and offered as a file: never deleted,
//! never written over. A device that refuses to keep anything is a problem that is told; the sums go on.

mod file;
mod kind;
mod merge;

use crate::problem::{Code, Fault, Problem, Problems};
use crate::wire;
use crate::wire::json::Json;
use crate::wire::kept::{Aside, Earlier, FORMAT, Kept, ShelfAsk, ShelfReply};
use crate::wire::record::{read_json, read_text};
use alloc::string::String;
use alloc::vec::Vec;
use kind::{BOTTLE, HOUSE, Kind, SPEC};
use merge::{Clash, merged};

/// Why the device did not do as asked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Refusal {
    /// It keeps nothing: storage is switched off, or the page stands in a frame that may not.
    NotAllowed,
    /// There is no room left. What was kept before stands.
    Full,
}

/// Somewhere to keep text under keys. Every call may fail.
pub trait Store {
    /// The text under a key.
    fn read(&self, key: &str) -> Result<Option<String>, Refusal>;
    /// Writes text under a key, whole or not at all.
    fn write(&mut self, key: &str, text: &str) -> Result<(), Refusal>;
    /// Removes a key.
    fn remove(&mut self, key: &str) -> Result<(), Refusal>;
    /// Every key there is, ours and others'.
    fn keys(&self) -> Result<Vec<String>, Refusal>;
}

/// Every key of ours starts so; other pages of the same site may keep things too.
pub const OURS: &str = "farthing:";

const ASIDE: &str = "farthing:aside:";
const DRAFT: &str = "farthing:draft";

/// Earlier prices that a bottle keeps: two a month for two years.
pub const MOST_EARLIER: usize = 48;

/// Does what the page wishes: a [`ShelfAsk`] as JSON to a [`ShelfReply`] as JSON.
pub fn shelf(store: &mut dyn Store, ask: &str) -> String {
    let mut reply = ShelfReply::default();
    let done = read_text::<ShelfAsk>(ask)
        .map_err(|fault| fault.at(""))
        .and_then(|ask| carry_out(store, ask, &mut reply));
    if let Err(problem) = done {
        reply.problems.extend(wire::told(vec![problem]));
    }
    wire::written(&reply)
}

type Done = Result<(), Problem>;

fn carry_out(store: &mut dyn Store, ask: ShelfAsk, reply: &mut ShelfReply) -> Done {
    match ask.wish.as_str() {
        "open" => open(store, reply),
        "keep" => keep(store, ask, Clash::MineStands, reply),
        "heard" => keep(store, ask, Clash::TheirsStands, reply),
        "remove" => {
            let key = kind::named(&ask.kind)?.key(&ask.id);
            store.remove(&key).map_err(|refusal| told(refusal, &key))
        }
        "restore" => {
            let kind = kind::named(&ask.kind)?;
            let kept = kind.checked(read_json(ask.after)).map_err(|fault| fault.at(""))?;
            write(store, &kind.key_of(&kept.record), &wire::written(&kept))
        }
        "keep_draft" => write(store, DRAFT, &ask.text),
        "save_file" => {
            open(store, reply)?;
            reply.file = Some(file::saved(reply, ask.on));
            Ok(())
        }
        "read_file" => {
            open(store, reply)?;
            reply.changes = file::changes(&file::read(&ask.text)?, reply);
            Ok(())
        }
        "take_file" => {
            file::take(store, file::read(&ask.text)?, &ask.on)?;
            open(store, reply)
        }
        "aside_file" => {
            open(store, reply)?;
            reply.file = Some(wire::written(&reply.aside));
            Ok(())
        }
        other => Err(kind::unknown(other).at("")),
    }
}

/// Everything that is kept, into `reply`. What cannot be read is set aside on the way.
fn open(store: &mut dyn Store, reply: &mut ShelfReply) -> Done {
    let mut problems = Problems::default();
    reply.bottles = take_up_all(store, &BOTTLE, &mut problems)?;
    reply.specs = take_up_all(store, &SPEC, &mut problems)?;
    reply.house = take_up_all(store, &HOUSE, &mut problems)?.pop();
    for key in keys_under(store, ASIDE)? {
        let text = read(store, &key)?.unwrap_or_default();
        reply.aside.push(Aside { key, text });
    }
    reply.draft = read(store, DRAFT)?;
    reply.problems = wire::told(problems.0);
    Ok(())
}

fn take_up_all(
    store: &mut dyn Store,
    kind: &Kind,
    problems: &mut Problems,
) -> Result<Vec<Kept>, Problem> {
    let keys = keys_under(store, &kind.prefix())?;
    Ok(keys.iter().filter_map(|key| take_up(store, kind, key, problems)).collect())
}

/// The keys that start so, in order.
fn keys_under(store: &dyn Store, prefix: &str) -> Result<Vec<String>, Problem> {
    let mut sorted: Vec<String> = Vec::new();
    for key in store.keys().map_err(|refusal| told(refusal, ""))? {
        if key.starts_with(prefix) {
            sorted.insert(sorted.partition_point(|before| *before < key), key);
        }
    }
    Ok(sorted)
}

/// The record under a key; nothing, and a problem, if it is newer than this page or cannot be read.
fn take_up(store: &mut dyn Store, kind: &Kind, key: &str, problems: &mut Problems) -> Option<Kept> {
    let text = problems.keep(key, store.read(key).map_err(fault))??;
    match kind.read(&text) {
        Ok(kept) if kind.key_of(&kept.record) == key => Some(kept),
        Err(fault) if fault.code() == Code::RecordNewer => problems.keep(key, Err(fault)),
        _ => {
            set_aside(store, key, &text);
            problems.keep(key, Err(Fault::new(Code::RecordSetAside)))
        }
    }
}

/// Moves a text to a key of its own. If there is no room for that, it stays where it is.
fn set_aside(store: &mut dyn Store, key: &str, text: &str) {
    let free = (0..).map(|number: u32| format!("{ASIDE}{number}:{key}"));
    for aside in free {
        match store.read(&aside) {
            Ok(None) => {
                if store.write(&aside, text).is_ok() {
                    // If this fails the text stands twice, which loses nothing.
                    let _ = store.remove(key);
                }
                return;
            }
            Ok(Some(_)) => {}
            Err(_) => return,
        }
    }
}

/// Keeps a change to one record, merged with what another tab wrote meanwhile.
fn keep(store: &mut dyn Store, ask: ShelfAsk, clash: Clash, reply: &mut ShelfReply) -> Done {
    let kind = kind::named(&ask.kind)?;
    let valid = |record: &Json| kind.valid(record).map_err(|fault| fault.at(""));
    let mine = valid(&ask.after)?;
    let before = if ask.before == Json::Null { None } else { Some(valid(&ask.before)?) };
    let key = kind.key_of(&mine);
    let stored = read(store, &key)?.map(|text| kind.read(&text)).transpose();
    let stored = stored.map_err(|fault| fault.at(&key))?;
    let kept = match stored {
        None => {
            kind.room(keys_under(store, &kind.prefix())?.len())?;
            Kept { format: FORMAT, revision: 1, kept_on: ask.on, record: mine, earlier: vec![] }
        }
        Some(stored) => {
            let before = before.unwrap_or_else(|| stored.record.clone());
            let (record, clashes) = merged(&before, &mine, &stored.record, clash);
            reply.clashes = clashes;
            if record == stored.record {
                reply.kept = wire::as_json(&stored);
                return Ok(());
            }
            changed(stored, record, ask.on)
        }
    };
    write(store, &key, &wire::written(&kept))?;
    reply.kept = wire::as_json(&kept);
    Ok(())
}

/// The kept record with a new content: one revision on, the old price remembered.
fn changed(stored: Kept, record: Json, on: String) -> Kept {
    let mut earlier = stored.earlier;
    let was = |field| stored.record.field(field).cloned().unwrap_or_default();
    let new_price = ["paid", "holds"]
        .into_iter()
        .any(|field| record.field(field) != stored.record.field(field));
    let old = read_json(was("paid")).ok().zip(read_json(was("holds")).ok());
    if new_price && let Some((paid, holds)) = old {
        earlier.insert(0, Earlier { paid, holds, until: on.clone() });
        earlier.retain(|earlier| !earlier.paid.price.trim().is_empty());
        earlier.truncate(MOST_EARLIER);
    }
    let revision = stored.revision.saturating_add(1);
    Kept { format: FORMAT, revision, kept_on: on, record, earlier }
}

fn read(store: &dyn Store, key: &str) -> Result<Option<String>, Problem> {
    store.read(key).map_err(|refusal| told(refusal, key))
}

fn write(store: &mut dyn Store, key: &str, text: &str) -> Done {
    store.write(key, text).map_err(|refusal| told(refusal, key))
}

fn told(refusal: Refusal, key: &str) -> Problem {
    fault(refusal).at(key)
}

fn fault(refusal: Refusal) -> Fault {
    Fault::new(match refusal {
        Refusal::NotAllowed => Code::StorageRefused,
        Refusal::Full => Code::StorageFull,
    })
}
