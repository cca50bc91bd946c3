//! How a record becomes JSON and comes back, and what TypeScript calls it.
//!
//! A record is declared once, with `records!`, and from that one list of fields come the strict
//! reader, the writer and the TypeScript type, so that the three cannot drift. Deriving the same with
//! `serde` made the module more than twice as large: it writes the reader anew for every record, and
//! here all records share one.

use super::json::{Json, quote};
use crate::problem::{Code, Fault};
use alloc::string::{String, ToString};
use alloc::vec::Vec;

/// What comes in over the boundary.
pub trait Read {
    /// Takes up JSON. Unknown keys and wrong types are refused; a missing key leaves what is there.
    fn read(&mut self, json: Json) -> Result<(), Fault>;
}

/// What goes out over the boundary.
pub trait Write {
    /// Writes JSON.
    fn write(&self, out: &mut String);
}

/// What has a TypeScript type.
pub trait Typed {
    /// The type.
    fn typescript() -> String;
}

/// A record, whose TypeScript type has a name and a declaration.
pub trait Declared {
    /// `export interface Name { ... }`
    fn declaration() -> String;
}

/// A record from text. Unknown keys, wrong types and damaged text are refused whole.
pub fn read_text<T: Read + Default>(text: &str) -> Result<T, Fault> {
    read_json(Json::parse(text)?)
}

/// A record from JSON.
pub fn read_json<T: Read + Default>(json: Json) -> Result<T, Fault> {
    let mut record = T::default();
    record.read(json)?;
    Ok(record)
}

/// Reads an object into the fields of its names.
pub fn read_fields(json: Json, fields: &mut [(&str, &mut dyn Read)]) -> Result<(), Fault> {
    let Json::Object(object) = json else { return Err(wrong("an object", &json)) };
    for (key, value) in object {
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
fn read_list(json: Json, take_up: &mut dyn FnMut(Json) -> Result<(), Fault>) -> Result<(), Fault> {
    let Json::List(list) = json else { return Err(wrong("a list", &json)) };
    for (index, item) in list.into_iter().enumerate() {
        take_up(item).map_err(|fault| within(fault, &format!("[{index}]")))?;
    }
    Ok(())
}

/// Writes fields as an object.
pub fn write_fields(out: &mut String, fields: &[(&str, &dyn Write)]) {
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

fn write_named<T: Write>(out: &mut String, named: &[(String, T)]) {
    let mut fields: Vec<(&str, &dyn Write)> = Vec::new();
    for (key, value) in named {
        fields.push((key, value));
    }
    write_fields(out, &fields);
}

/// Something is not as agreed.
pub fn unreadable(why: &str) -> Fault {
    Fault::new(Code::RequestUnreadable).with("why", why).with("where", "")
}

fn wrong(wanted: &str, found: &Json) -> Fault {
    let found = match found {
        Json::Null => "nothing",
        Json::Bool(_) => "yes or no",
        Json::Number(_) => "a number",
        Json::Text(_) => "text",
        Json::List(_) => "a list",
        Json::Object(_) => "an object",
    };
    unreadable(&format!("{found} where {wanted} should be"))
}

/// The same fault, one level further in.
fn within(fault: Fault, key: &str) -> Fault {
    let inner = fault.value("where").unwrap_or_default();
    let mark = if inner.is_empty() || inner.starts_with('[') { "" } else { "." };
    let place = format!("{key}{mark}{inner}");
    fault.with("where", place)
}

/// Declares records: a struct, its strict reader, its writer, and its TypeScript type. Those that only
/// come in have no writer and those that only go out no reader, which is a twelfth of the module.
macro_rules! records {
    ($($direction:ident $(#[$meta:meta])* $name:ident {
        $($(#[$about:meta])* $field:ident: $type:ty,)*
    })*) => {$(
        $(#[$meta])*
        #[derive(Clone, Debug, PartialEq, Eq)]
        pub struct $name { $($(#[$about])* pub $field: $type,)* }

        $crate::wire::record::directed! { $direction $name { $($field)* } }

        impl $crate::wire::record::Typed for $name {
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
                    <$type as $crate::wire::record::Typed>::typescript(),
                ));)*
                text.push_str("}\n");
                text
            }
        }
    )*};
}

/// The reader of what is `asked`, the writer of what is `replied`, or `both`.
macro_rules! directed {
    (both $name:ident $fields:tt) => {
        $crate::wire::record::directed! { asked $name $fields }
        $crate::wire::record::directed! { replied $name $fields }
    };
    (asked $name:ident { $($field:ident)* }) => {
        impl $crate::wire::record::Read for $name {
            fn read(&mut self, json: $crate::wire::json::Json) -> Result<(), $crate::problem::Fault> {
                let fields: &mut [(&str, &mut dyn $crate::wire::record::Read)] =
                    &mut [$((stringify!($field), &mut self.$field)),*];
                $crate::wire::record::read_fields(json, fields)
            }
        }
    };
    (replied $name:ident { $($field:ident)* }) => {
        impl $crate::wire::record::Write for $name {
            fn write(&self, out: &mut String) {
                let fields: &[(&str, &dyn $crate::wire::record::Write)] =
                    &[$((stringify!($field), &self.$field)),*];
                $crate::wire::record::write_fields(out, fields)
            }
        }
    };
}
pub(crate) use directed;
pub(crate) use records;

impl Read for String {
    fn read(&mut self, json: Json) -> Result<(), Fault> {
        let Json::Text(text) = json else { return Err(wrong("text", &json)) };
        *self = text;
        Ok(())
    }
}

impl Write for String {
    fn write(&self, out: &mut String) {
        quote(out, self);
    }
}

impl Typed for String {
    fn typescript() -> String {
        "string".into()
    }
}

impl Read for bool {
    fn read(&mut self, json: Json) -> Result<(), Fault> {
        let Json::Bool(yes) = json else { return Err(wrong("yes or no", &json)) };
        *self = yes;
        Ok(())
    }
}

impl Write for bool {
    fn write(&self, out: &mut String) {
        out.push_str(if *self { "true" } else { "false" });
    }
}

impl Typed for bool {
    fn typescript() -> String {
        "boolean".into()
    }
}

/// Counts: how many, which one, which revision. Never money or a measure.
impl Read for u64 {
    fn read(&mut self, json: Json) -> Result<(), Fault> {
        let whole = match &json {
            Json::Number(digits) => digits.parse().ok(),
            _ => None,
        };
        *self = whole.ok_or_else(|| wrong("a whole number", &json))?;
        Ok(())
    }
}

impl Write for u64 {
    fn write(&self, out: &mut String) {
        out.push_str(&self.to_string());
    }
}

impl Typed for u64 {
    fn typescript() -> String {
        "number".into()
    }
}

/// Anything at all: a record whose kind is only known from beside it.
impl Read for Json {
    fn read(&mut self, json: Json) -> Result<(), Fault> {
        *self = json;
        Ok(())
    }
}

impl Write for Json {
    fn write(&self, out: &mut String) {
        match self {
            Json::Null => out.push_str("null"),
            Json::Bool(yes) => yes.write(out),
            Json::Number(digits) => out.push_str(digits),
            Json::Text(text) => quote(out, text),
            Json::List(items) => items.write(out),
            Json::Object(fields) => write_named(out, fields),
        }
    }
}

impl Typed for Json {
    fn typescript() -> String {
        "any".into()
    }
}

impl<T: Read + Default> Read for Option<T> {
    fn read(&mut self, json: Json) -> Result<(), Fault> {
        *self = None;
        if json != Json::Null {
            self.get_or_insert_default().read(json)?;
        }
        Ok(())
    }
}

impl<T: Write> Write for Option<T> {
    fn write(&self, out: &mut String) {
        match self {
            Some(value) => value.write(out),
            None => out.push_str("null"),
        }
    }
}

impl<T: Typed> Typed for Option<T> {
    fn typescript() -> String {
        format!("{} | null", T::typescript())
    }
}

impl<T: Read + Default> Read for Vec<T> {
    fn read(&mut self, json: Json) -> Result<(), Fault> {
        self.clear();
        read_list(json, &mut |item| {
            self.push(T::default());
            self.last_mut().map_or(Ok(()), |last| last.read(item))
        })
    }
}

impl<T: Write> Write for Vec<T> {
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
}

impl<T: Typed> Typed for Vec<T> {
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

impl<T: Read + Default> Read for Named<T> {
    fn read(&mut self, json: Json) -> Result<(), Fault> {
        self.0.clear();
        let Json::Object(object) = json else { return Err(wrong("an object", &json)) };
        for (key, value) in object {
            let mut read = T::default();
            read.read(value).map_err(|fault| within(fault, &key))?;
            self.0.push((key, read));
        }
        Ok(())
    }
}

impl<T: Write> Write for Named<T> {
    fn write(&self, out: &mut String) {
        write_named(out, &self.0);
    }
}

impl<T: Typed> Typed for Named<T> {
    fn typescript() -> String {
        format!("{{ [key: string]: {} }}", T::typescript())
    }
}
