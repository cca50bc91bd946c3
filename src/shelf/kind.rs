//! The kinds of record that the shelf keeps: bottles, specs, and the house.

use crate::problem::{Code, Fault, Problem};
use crate::shelf::OURS;
use crate::wire::json::Json;
use crate::wire::kept::Kept;
use crate::wire::record::{Read, Write, read_json};
use crate::wire::records::{Bottle, House, Spec};
use crate::wire::{self, MOST_BOTTLES, MOST_ID, MOST_SPECS};
use alloc::string::{String, ToString};

/// A kind of record.
pub struct Kind {
    /// Its word: `bottle`.
    pub word: &'static str,
    /// How many the shelf holds, and what is told of one more.
    most: (usize, Code),
    /// The record, if it is one of this kind, with every field it may have.
    form: fn(&Json) -> Result<Json, Fault>,
}

/// Bottles.
pub const BOTTLE: Kind =
    Kind { word: "bottle", most: (MOST_BOTTLES, Code::TooManyBottles), form: formed::<Bottle> };

/// Specs.
pub const SPEC: Kind =
    Kind { word: "spec", most: (MOST_SPECS, Code::TooManySpecs), form: formed::<Spec> };

/// What holds for everything: one record under one key.
pub const HOUSE: Kind =
    Kind { word: "house", most: (1, Code::ChoiceUnknown), form: formed::<House> };

fn formed<T: Read + Write + Default>(record: &Json) -> Result<Json, Fault> {
    read_json::<T>(record.clone()).map(|record| wire::as_json(&record))
}

/// The kind of a word.
pub fn named(word: &str) -> Result<Kind, Problem> {
    [BOTTLE, SPEC, HOUSE]
        .into_iter()
        .find(|kind| kind.word == word)
        .ok_or_else(|| unknown(word).at(""))
}

/// A wish or a kind that there is not.
pub fn unknown(word: &str) -> Fault {
    Fault::new(Code::ChoiceUnknown).with("typed", word)
}

impl Kind {
    /// How its keys start.
    pub fn prefix(&self) -> String {
        format!("{OURS}{}:", self.word)
    }

    /// The key of an id.
    pub fn key(&self, id: &str) -> String {
        format!("{}{id}", self.prefix())
    }

    /// The key of a record.
    pub fn key_of(&self, record: &Json) -> String {
        self.key(id(record))
    }

    /// The record, if it is one of this kind and has an id and a name of bearable length.
    pub fn valid(&self, record: &Json) -> Result<Json, Fault> {
        let record = (self.form)(record)?;
        let length = id(&record).chars().count();
        if self.word != HOUSE.word && !(1..=MOST_ID).contains(&length) {
            return Err(unknown(id(&record)));
        }
        wire::check_name(name(&record))?;
        Ok(record)
    }

    /// What stands under a key of this kind.
    pub fn read(&self, text: &str) -> Result<Kept, Fault> {
        self.checked(wire::read_versioned(text))
    }

    /// The kept record, if what it keeps is valid.
    pub fn checked(&self, kept: Result<Kept, Fault>) -> Result<Kept, Fault> {
        let kept = kept?;
        Ok(Kept { record: self.valid(&kept.record)?, ..kept })
    }

    /// Whether there is room for one more beside so many.
    pub fn room(&self, kept: usize) -> Result<(), Problem> {
        let (most, code) = self.most;
        if kept < most {
            Ok(())
        } else {
            Err(Fault::new(code).with("most", most.to_string()).at(""))
        }
    }
}

/// Names a record among its kind; the house has no id.
pub fn id(record: &Json) -> &str {
    record.text_of("id")
}

/// What a person calls a record.
pub fn name(record: &Json) -> &str {
    record.text_of("name")
}
