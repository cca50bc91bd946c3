//! How a record becomes JSON and comes back, and what TypeScript calls it.
//!
//! A record is declared once, with [`records!`], and from that one list of fields come the strict
//! reader, the writer and the TypeScript type, so that the three cannot drift. Deriving the same with
//! `serde` made the module more than twice as large: it writes the reader anew for every record, and
//! here all records share one.

use crate::problem::{Code, Fault};
use alloc::string::{String, ToString};
use alloc::vec::Vec;
use nojson::{Json, JsonValueKind, RawJson, RawJsonValue};

/// JSON as it is being read.
pub type Value<'a> = RawJsonValue<'a, 'a>;

/// What can cross the boundary both ways.
pub trait Wire {
    /// Takes up JSON. Unknown keys and wrong types are refused; a missing key leaves what is there.
    fn read(&mut self, json: Value) -> Result<(), Fault>;
    /// Writes JSON.
    fn write(&self, out: &mut String);
    /// The TypeScript type.
    fn typescript() -> String
    where
        Self: Sized;
}

/// A record, whose TypeScript type has a name and a declaration.
pub trait Declared {
    /// `export interface Name { ... }`
    fn declaration() -> String;
}

/// A record from text. Unknown keys, wrong types and damaged text are refused whole.
pub fn read_text<T: Wire + Default>(text: &str) -> Result<T, Fault> {
    let json = RawJson::parse(text)
        .map_err(|why| unreadable(&format!("no JSON from character {} on", why.position())))?;
    let mut record = T::default();
    record.read(json.value())?;
    Ok(record)
}

/// The version that a kept record or a file says it has.
pub fn format_of(text: &str) -> Option<u64> {
    Raw(text.into()).field("format")?.read_as().ok()
}

/// Reads an object into the fields of its names.
pub fn read_fields(json: Value, fields: &mut [(&str, &mut dyn Wire)]) -> Result<(), Fault> {
    for (key, value) in object(json)? {
        let field = fields.iter_mut().find(|(name, _)| *name == key);
        let read = match field {
            Some((_, field)) => field.read(value),
            None => Err(unreadable("no such key")),
        };
        read.map_err(|fault| within(fault, &key))?;
    }
    Ok(())
}

/// Reads a list item by item.
fn read_list(
    json: Value,
    take_up: &mut dyn FnMut(Value) -> Result<(), Fault>,
) -> Result<(), Fault> {
    let list = json.to_array().map_err(|_| wrong("a list", json))?;
    for (index, item) in list.enumerate() {
        take_up(item).map_err(|fault| within(fault, &format!("[{index}]")))?;
    }
    Ok(())
}

/// Writes fields as an object.
pub fn write_fields(out: &mut String, fields: &[(&str, &dyn Wire)]) {
    out.push('{');
    for (index, (name, field)) in fields.iter().enumerate() {
        if index > 0 {
            out.push(',');
        }
        quote(out, name);
        out.push(':');
        field.write(out);
    }
    out.push('}');
}

fn quote(out: &mut String, text: &str) {
    out.push_str(&Json(text).to_string());
}

/// Something is not as agreed.
pub fn unreadable(why: &str) -> Fault {
    Fault::new(Code::RequestUnreadable).with("why", why).with("where", "")
}

fn wrong(wanted: &str, found: Value) -> Fault {
    let found = match found.kind() {
        JsonValueKind::Null => "nothing",
        JsonValueKind::Boolean => "yes or no",
        JsonValueKind::Integer | JsonValueKind::Float => "a number",
        JsonValueKind::String => "text",
        JsonValueKind::Array => "a list",
        JsonValueKind::Object => "an object",
    };
    unreadable(&format!("{found} where {wanted} should be"))
}

/// The keys and values of an object.
fn object(json: Value) -> Result<Vec<(String, Value)>, Fault> {
    let mut fields = Vec::new();
    for (key, value) in json.to_object().map_err(|_| wrong("an object", json))? {
        fields.push((text(key)?, value));
    }
    Ok(fields)
}

fn text(json: Value) -> Result<String, Fault> {
    json.to_unquoted_string_str().map(Into::into).map_err(|_| wrong("text", json))
}

/// The same fault, one level further in.
fn within(fault: Fault, key: &str) -> Fault {
    let inner = fault.value("where").unwrap_or_default();
    let mark = if inner.is_empty() || inner.starts_with('[') { "" } else { "." };
    let place = format!("{key}{mark}{inner}");
    fault.with("where", place)
}

/// Declares records: a struct, its strict reader, its writer, and its TypeScript type.
macro_rules! records {
    ($($(#[$meta:meta])* $name:ident { $($(#[$about:meta])* $field:ident: $type:ty,)* })*) => {$(
        $(#[$meta])*
        #[derive(Clone, Debug, PartialEq, Eq)]
        pub struct $name { $($(#[$about])* pub $field: $type,)* }

        impl $crate::wire::record::Wire for $name {
            fn read(&mut self, json: $crate::wire::record::Value) -> Result<(), $crate::problem::Fault> {
                let fields: &mut [(&str, &mut dyn $crate::wire::record::Wire)] =
                    &mut [$((stringify!($field), &mut self.$field)),*];
                $crate::wire::record::read_fields(json, fields)
            }

            fn write(&self, out: &mut String) {
                let fields: &[(&str, &dyn $crate::wire::record::Wire)] =
                    &[$((stringify!($field), &self.$field)),*];
                $crate::wire::record::write_fields(out, fields)
            }

            fn typescript() -> String {
                stringify!($name).into()
            }
        }

        impl $crate::wire::record::Declared for $name {
            fn declaration() -> String {
                let mut text = format!("export interface {} {{\n", stringify!($name));
                $(text.push_str(&format!(
                    "  {}: {};\n",
                    stringify!($field),
                    <$type as $crate::wire::record::Wire>::typescript(),
                ));)*
                text.push_str("}\n");
                text
            }
        }
    )*};
}
pub(crate) use records;

impl Wire for String {
    fn read(&mut self, json: Value) -> Result<(), Fault> {
        *self = text(json)?;
        Ok(())
    }
    fn write(&self, out: &mut String) {
        quote(out, self);
    }
    fn typescript() -> String {
        "string".into()
    }
}

impl Wire for bool {
    fn read(&mut self, json: Value) -> Result<(), Fault> {
        *self = json.as_boolean_str().map_err(|_| wrong("yes or no", json))? == "true";
        Ok(())
    }
    fn write(&self, out: &mut String) {
        out.push_str(if *self { "true" } else { "false" });
    }
    fn typescript() -> String {
        "boolean".into()
    }
}

/// Counts: how many, which one, which revision. Never money or a measure.
impl Wire for u64 {
    fn read(&mut self, json: Value) -> Result<(), Fault> {
        let digits = json.as_integer_str().ok().and_then(|digits| digits.parse().ok());
        *self = digits.ok_or_else(|| wrong("a whole number", json))?;
        Ok(())
    }
    fn write(&self, out: &mut String) {
        out.push_str(&self.to_string());
    }
    fn typescript() -> String {
        "number".into()
    }
}

/// A record whose kind is only known from beside it, as JSON text.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Raw(String);

impl Raw {
    /// A record of ours. The same record is always the same text.
    pub fn of(record: &dyn Wire) -> Raw {
        let mut text = String::new();
        record.write(&mut text);
        Raw(text)
    }

    /// Whether there is nothing.
    pub fn is_nothing(&self) -> bool {
        self.0 == "null"
    }

    /// The record read as one of a kind.
    pub fn read_as<T: Wire + Default>(&self) -> Result<T, Fault> {
        read_text(&self.0)
    }

    /// The fields by name, in the order of the record; none if it is no object.
    pub fn fields(&self) -> Vec<(String, Raw)> {
        let Ok(json) = RawJson::parse(&self.0) else { return Vec::new() };
        let fields = object(json.value()).unwrap_or_default();
        fields.into_iter().map(|(key, value)| (key, Raw(value.as_raw_str().into()))).collect()
    }

    /// One field.
    pub fn field(&self, name: &str) -> Option<Raw> {
        self.fields().into_iter().find(|(key, _)| key == name).map(|(_, value)| value)
    }

    /// The text of one field; empty if there is none.
    pub fn text_of(&self, name: &str) -> String {
        self.field(name).and_then(|field| field.read_as().ok()).unwrap_or_default()
    }
}

impl Default for Raw {
    fn default() -> Self {
        Raw("null".into())
    }
}

impl Wire for Raw {
    fn read(&mut self, json: Value) -> Result<(), Fault> {
        self.0 = json.as_raw_str().into();
        Ok(())
    }
    fn write(&self, out: &mut String) {
        out.push_str(&self.0);
    }
    fn typescript() -> String {
        "any".into()
    }
}

impl<T: Wire + Default> Wire for Option<T> {
    fn read(&mut self, json: Value) -> Result<(), Fault> {
        *self = None;
        if json.kind() != JsonValueKind::Null {
            self.get_or_insert_default().read(json)?;
        }
        Ok(())
    }
    fn write(&self, out: &mut String) {
        match self {
            Some(value) => value.write(out),
            None => out.push_str("null"),
        }
    }
    fn typescript() -> String {
        format!("{} | null", T::typescript())
    }
}

impl<T: Wire + Default> Wire for Vec<T> {
    fn read(&mut self, json: Value) -> Result<(), Fault> {
        self.clear();
        read_list(json, &mut |item| {
            self.push(T::default());
            self.last_mut().map_or(Ok(()), |last| last.read(item))
        })
    }
    fn write(&self, out: &mut String) {
        out.push('[');
        for (index, item) in self.iter().enumerate() {
            if index > 0 {
                out.push(',');
            }
            item.write(out);
        }
        out.push(']');
    }
    fn typescript() -> String {
        format!("({})[]", T::typescript())
    }
}

/// Values by name: an object whose keys are not fixed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Named<T>(pub Vec<(String, T)>);

impl<T> Default for Named<T> {
    fn default() -> Self {
        Named(Vec::new())
    }
}

impl<T: Wire + Default> Wire for Named<T> {
    fn read(&mut self, json: Value) -> Result<(), Fault> {
        self.0.clear();
        for (key, value) in object(json)? {
            let mut read = T::default();
            read.read(value).map_err(|fault| within(fault, &key))?;
            self.0.push((key, read));
        }
        Ok(())
    }
    fn write(&self, out: &mut String) {
        let mut fields: Vec<(&str, &dyn Wire)> = Vec::new();
        for (key, value) in &self.0 {
            fields.push((key, value));
        }
        write_fields(out, &fields);
    }
    fn typescript() -> String {
        format!("{{ [key: string]: {} }}", T::typescript())
    }
}
