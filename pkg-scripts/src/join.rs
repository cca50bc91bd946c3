//! Joins the page's modules into one, so that a first visit fetches one small file.
//!
//! Every top-level name gets its module's name in front (`words$one`), every use of an import
//! becomes the name it stands for, and the modules follow one another so that each stands after
//! those it imports. The text between these edits stays as it is written.
//!
//! What it understands is little, and enough for this page: modules of one folder that import
//! each other by `./name.js`, in no circle, with named exports. A module that is imported late, by
//! `import("./name.js")`, runs with the others at the start; its exports come as a promise all the
//! same. `import.meta` becomes that of the whole, which lies in the same folder.
//! Anything else stops the build with a file and a line: never a joined page that does otherwise
//! than the modules.

mod module;
mod reader;

use std::collections::BTreeMap;

use crate::failure::{Failure, Outcome};
use module::{Edit, Module, With};

/// The modules, each by its file name.
pub type Texts = BTreeMap<String, String>;

/// The generated module stays a file of its own, so that its importer can say why it did not load.
pub const APART: &str = "farthing.js";

/// Several modules as one.
#[derive(Debug, PartialEq)]
pub struct Joined {
    /// The one module.
    pub text: String,
    /// The files that went into it, in the order in which they run; the last is the first asked for.
    pub files: Vec<String>,
}

/// Joins `entry` with every module that it reaches.
pub fn join(texts: &Texts, entry: &str) -> Outcome<Joined> {
    let mut joining = Joining { texts, entry, read: BTreeMap::new(), above: vec![], order: vec![] };
    joining.reach(entry, None)?;
    let mut text = String::new();
    for file in &joining.order {
        text += &joining.written(&joining.read[file])?;
    }
    Ok(Joined { text, files: joining.order })
}

struct Joining<'a> {
    texts: &'a Texts,
    entry: &'a str,
    read: BTreeMap<String, Module>,
    /// The imports that lead to the module in hand.
    above: Vec<String>,
    order: Vec<String>,
}

impl Joining<'_> {
    /// Reads a module and, first, what it imports. `from` says where it is imported.
    fn reach(&mut self, file: &str, from: Option<Failure>) -> Outcome {
        let text = self.texts.get(file).ok_or_else(|| {
            from.unwrap_or_else(|| Failure::new(format!("There is no www/{file}.")))
        })?;
        let module = reader::read(file, text, file == self.entry)?;
        self.above.push(file.to_owned());
        for request in &module.requests {
            if self.above.contains(&request.file) {
                let why = format!("importing `{}` here closes a circle", request.file);
                return Err(module.failure(request.at, &why));
            }
            if !self.read.contains_key(&request.file) {
                let why = format!("there is no www/{}", request.file);
                self.reach(&request.file, Some(module.failure(request.at, &why)))?;
            }
        }
        self.above.pop();
        self.order.push(file.to_owned());
        self.read.insert(file.to_owned(), module);
        Ok(())
    }

    /// The text of a module as a part of the whole. What stands between statements are comments.
    fn written(&self, module: &Module) -> Outcome<String> {
        for wanted in &module.wanted {
            self.exported(module, &wanted.file, &wanted.name, wanted.at)?;
        }
        let mut text = format!("// {}\n", module.file);
        for statement in &module.statements {
            let mut at = statement.from;
            let inside = |edit: &&Edit| edit.from >= statement.from && edit.to <= statement.to;
            for edit in module.edits.iter().filter(inside) {
                text += &module.text[at..edit.from];
                text += &self.replacement(module, edit)?;
                at = edit.to;
            }
            text += &module.text[at..statement.to];
            text += if statement.is_closed { "\n" } else { ";\n" };
        }
        Ok(text)
    }

    fn replacement(&self, module: &Module, edit: &Edit) -> Outcome<String> {
        let name = match &edit.with {
            With::Own(name) => module.prefixed(name),
            With::Imported { file, name } => self.exported(module, file, name, edit.from)?,
            With::Everything { file } => self.everything(module, file, edit.from)?,
        };
        Ok(match &edit.key {
            Some(key) => format!("{key}: {name}"),
            None => name,
        })
    }

    /// The name in the whole of what `file` exports as `name`.
    fn exported(&self, module: &Module, file: &str, name: &str, at: usize) -> Outcome<String> {
        let from = &self.read[file];
        match from.exports.get(name) {
            Some(export) => Ok(from.prefixed(&export.local)),
            None => Err(module.failure(at, &format!("`{file}` exports no `{name}`"))),
        }
    }

    /// What a late import gives. It is made when asked for, so a name that changes would be stale.
    fn everything(&self, module: &Module, file: &str, at: usize) -> Outcome<String> {
        let from = &self.read[file];
        let mut names = Vec::new();
        for (name, export) in &from.exports {
            if export.changes {
                let why =
                    format!("`{file}` changes its export `{name}`: import it by `import {{ … }}`");
                return Err(module.failure(at, &why));
            }
            names.push(format!("{name}: {}", from.prefixed(&export.local)));
        }
        Ok(format!("Promise.resolve({{ {} }})", names.join(", ")))
    }
}

#[cfg(test)]
mod tests;
