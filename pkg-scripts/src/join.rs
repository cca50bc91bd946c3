//! Joins the page's modules into one, so that a first visit fetches one small file.
//!
//! Every top-level name gets its module's name in front (`words$one`), every use of an import
//! becomes the name it stands for, and the modules follow one another so that each stands after
//! those it imports. The text between these edits stays as it is written.
//!
//! A module that only a late import, `import("./name.js")`, leads to goes into a second file with all
//! others of its kind; what it needs of the first file, that one exports to it. One that runs at the
//! start anyway comes as a promise all the same. `import.meta` becomes that of the whole, which lies
//! in the same folder.
//!
//! What it understands is little, and enough for this page: modules of one folder that import
//! each other by `./name.js`, in no circle, with named exports.
//! Anything else stops the build with a file and a line: never a joined page that does otherwise
//! than the modules.

mod module;
mod reader;

use std::collections::{BTreeMap, BTreeSet};

use crate::failure::{Failure, Outcome};
use module::{Edit, Module, With};

/// The modules, each by its file name.
pub type Texts = BTreeMap<String, String>;

/// The generated modules stay files of their own, so that their importer can say why one did not load.
/// So does the element, which a frame asks for as any other page does.
pub const APART: [&str; 4] =
    ["farthing.js", "farthing-more.js", "farthing-embed.js", "farthing-glass.js"];

/// A module that a page asks for by name.
#[derive(Clone, Copy, Debug)]
pub struct Entry {
    /// Its file, and that of all it reaches at once.
    pub file: &'static str,
    /// What holds the modules that it reaches late.
    pub late: &'static str,
}

/// Several modules as one.
#[derive(Debug, Default, PartialEq)]
pub struct Joined {
    /// The one module.
    pub text: String,
    /// The files that went into it, in the order in which they run.
    pub files: Vec<String>,
}

/// Joins `entry` with every module that it reaches at once, and apart from them those that it only
/// reaches late. The last file of the first is `entry`.
pub fn join(texts: &Texts, entry: Entry) -> Outcome<(Joined, Joined)> {
    let mut joining = Joining::reached(texts, entry)?;
    joining.runs_at_once(entry.file);
    let (mut first, mut late) = (Joined::default(), Joined::default());
    for file in &joining.order {
        let joined = if joining.at_once.contains(file) { &mut first } else { &mut late };
        joined.text += &joining.written(&joining.read[file])?;
        joined.files.push(file.clone());
    }
    let (given, taken) = joining.across()?;
    if !late.files.is_empty() {
        if !given.is_empty() {
            let needed = listed(&given);
            first.text += &format!("export {{ {needed} }};\n");
            late.text = format!("import {{ {needed} }} from \"./{}\";\n{}", entry.file, late.text);
        }
        late.text += &format!("export {{ {} }};\n", listed(&taken));
    }
    Ok((first, late))
}

/// Joins `entry` with every module that it reaches into one file: what is imported late comes as a promise.
pub fn join_whole(texts: &Texts, entry: &'static str) -> Outcome<Joined> {
    let mut joining = Joining::reached(texts, Entry { file: entry, late: "" })?;
    joining.at_once.extend(joining.order.iter().cloned());
    let mut whole = Joined::default();
    for file in &joining.order {
        whole.text += &joining.written(&joining.read[file])?;
        whole.files.push(file.clone());
    }
    Ok(whole)
}

fn listed(names: &BTreeSet<String>) -> String {
    names.iter().map(String::as_str).collect::<Vec<_>>().join(", ")
}

struct Joining<'a> {
    texts: &'a Texts,
    entry: Entry,
    read: BTreeMap<String, Module>,
    /// The imports that lead to the module in hand.
    above: Vec<String>,
    order: Vec<String>,
    /// The modules of the first file.
    at_once: BTreeSet<String>,
}

impl<'a> Joining<'a> {
    fn reached(texts: &'a Texts, entry: Entry) -> Outcome<Self> {
        let mut joining = Self {
            texts,
            entry,
            read: BTreeMap::new(),
            above: vec![],
            order: vec![],
            at_once: BTreeSet::new(),
        };
        joining.reach(entry.file, None)?;
        Ok(joining)
    }

    /// Reads a module and, first, what it imports. `from` says where it is imported.
    fn reach(&mut self, file: &str, from: Option<Failure>) -> Outcome {
        let late = self.entry.late;
        if file == late {
            return Err(Failure::new(format!("www/{late}: the build writes a file of this name.")));
        }
        let text = self.texts.get(file).ok_or_else(|| {
            from.unwrap_or_else(|| Failure::new(format!("There is no www/{file}.")))
        })?;
        let module = reader::read(file, text, file == self.entry.file)?;
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

    fn runs_at_once(&mut self, file: &str) {
        if self.at_once.insert(file.to_owned()) {
            let requests = self.read[file].requests.iter().filter(|request| !request.is_late);
            let files: Vec<String> = requests.map(|request| request.file.clone()).collect();
            files.iter().for_each(|file| self.runs_at_once(file));
        }
    }

    /// Whether `file` runs late although `of` runs at once.
    fn is_across(&self, of: &Module, file: &str) -> bool {
        self.at_once.contains(&of.file) && !self.at_once.contains(file)
    }

    /// What the second file needs of the first, and what the first asks of it late.
    fn across(&self) -> Outcome<(BTreeSet<String>, BTreeSet<String>)> {
        let (mut given, mut taken) = (BTreeSet::new(), BTreeSet::new());
        for module in self.read.values() {
            let is_late = !self.at_once.contains(&module.file);
            for edit in &module.edits {
                match &edit.with {
                    With::Imported { file, name } if is_late && self.at_once.contains(file) => {
                        given.insert(self.exported(module, file, name, edit.from)?);
                    }
                    With::Everything { file } if is_late && self.at_once.contains(file) => {
                        given.extend(self.exports(file));
                    }
                    With::Everything { file } if self.is_across(module, file) => {
                        taken.extend(self.exports(file));
                    }
                    _ => {}
                }
            }
        }
        Ok((given, taken))
    }

    /// What a file exports, by its names in the whole.
    fn exports(&self, file: &str) -> impl Iterator<Item = String> {
        let from = &self.read[file];
        from.exports.values().map(|export| from.prefixed(&export.local))
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
        let names = names.join(", ");
        if self.is_across(module, file) {
            let taken = self.exports(file).collect::<Vec<_>>().join(", ");
            let late = self.entry.late;
            return Ok(format!("import(\"./{late}\").then(({{ {taken} }}) => ({{ {names} }}))"));
        }
        Ok(format!("Promise.resolve({{ {names} }})"))
    }
}

#[cfg(test)]
mod tests;
