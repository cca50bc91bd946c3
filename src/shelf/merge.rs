//! Two tabs changed one record: whose change stands, field by field.
//!
//! What only one of them changed is kept from that one. Where both changed the same field, a person's
//! own edit stands as it is made, and the other tab's stands when it is heard of later: so the two
//! tabs come to the same record and stop.

use crate::wire::record::{Named, Raw};
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
pub fn merged(before: &Raw, mine: &Raw, theirs: &Raw, clash: Clash) -> (Raw, Vec<String>) {
    let mut record = Named::default();
    let mut clashes = Vec::new();
    for (name, mine) in mine.fields() {
        let was = before.field(&name).unwrap_or_default();
        let theirs = theirs.field(&name).unwrap_or_default();
        let both = mine != was && theirs != was && mine != theirs;
        if both {
            clashes.push(name.clone());
        }
        let mine_stands = if both { clash == Clash::MineStands } else { mine != was };
        record.0.push((name, if mine_stands { mine } else { theirs }));
    }
    (Raw::of(&record), clashes)
}

/// The fields in which two records differ.
pub fn differing(one: &Raw, other: &Raw) -> Vec<String> {
    let mut names = Vec::new();
    for (name, value) in one.fields() {
        if other.field(&name) != Some(value) {
            names.push(name);
        }
    }
    names
}
