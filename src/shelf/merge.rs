//! Two tabs changed one record: whose change stands, field by field.
//!
//! What only one of them changed is kept from that one. Where both changed the same field, a person's
//! own edit stands as it is made, and the other tab's stands when it is heard of later: so the two
//! tabs come to the same record and stop.

use crate::wire::json::Json;
use alloc::string::String;
use alloc::vec::Vec;

/// Whose change stands where both changed the same field.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Clash {
    /// This tab's: the person is making it now.
    MineStands,
    /// The other tab's: it came later.
    TheirsStands,
}

/// The record that both changes make, and the fields that both changed.
pub fn merged(before: &Json, mine: &Json, theirs: &Json, clash: Clash) -> (Json, Vec<String>) {
    let mut record = Vec::new();
    let mut clashes = Vec::new();
    for (name, mine) in fields(mine) {
        let (was, theirs) = (before.field(name), theirs.field(name).unwrap_or(mine));
        let (changed, other) = (Some(mine) != was, Some(theirs) != was);
        let both = changed && other && mine != theirs;
        if both {
            clashes.push(name.clone());
        }
        let mine_stands = if both { clash == Clash::MineStands } else { changed };
        record.push((name.clone(), if mine_stands { mine } else { theirs }.clone()));
    }
    (Json::Object(record), clashes)
}

/// The fields in which two records differ.
pub fn differing(one: &Json, other: &Json) -> Vec<String> {
    let differ = |(name, value): &&(String, Json)| other.field(name) != Some(value);
    fields(one).iter().filter(differ).map(|(name, _)| name.clone()).collect()
}

fn fields(record: &Json) -> &[(String, Json)] {
    match record {
        Json::Object(fields) => fields,
        _ => &[],
    }
}
