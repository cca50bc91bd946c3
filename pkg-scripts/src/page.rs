//! Builds the page: its scripts as one, the compiled core, and the worker's list of everything.

use std::path::{Path, PathBuf};

use crate::failure::{Failure, Outcome};
use crate::files;
use crate::glue;
use crate::join::{self, Entry, Joined, Texts};
use crate::one_file;
use crate::project::Project;
use crate::shrink::{script, style};
use crate::visit;
use crate::worker;

/// The page's own first module.
const MAIN: &str = "main.js";

/// The modules that a page asks for: each becomes all that it reaches, in one or two files.
const ENTRIES: [Entry; 4] = [
    Entry { file: MAIN, late: "more.js" },
    Entry { file: "farthing-glass.js", late: "embed.js" },
    Entry { file: "frame.js", late: "frame-more.js" },
    Entry { file: "farthing-frames.js", late: "frames-more.js" },
];

/// Builds `target/page`, whole or not at all.
pub fn build(project: &Project) -> Outcome {
    let page = project.page();
    let next = page.with_extension("next");
    files::remove_folder(&next)?;
    files::copy(&project.www(), &next, is_copied)?;
    glue::make(project, &next)?;
    for file in glue::FILES {
        shrink(&next, file, script::module)?;
    }
    let texts = modules(project)?;
    join_modules(&texts, &next)?;
    shrink_styles(&next)?;
    one_file::write(project, &texts, MAIN, &next)?;
    fill_in_worker(project, &next)?;
    files::swap(&next, &page)?;
    println!("built target/page");
    Ok(())
}

/// The page that a build left, or what to run first.
pub fn built(project: &Project) -> Outcome<PathBuf> {
    let page = project.page();
    if page.join("index.html").is_file() {
        return Ok(page);
    }
    Err(Failure::new("The page is not built yet.").remedy("Run `cargo page` first."))
}

/// Types are for the people who write the page, and scripts are not served as they are written.
fn is_copied(path: &str) -> bool {
    !path.ends_with(".d.ts") && !path.ends_with(".js")
}

fn join_modules(texts: &Texts, page: &Path) -> Outcome {
    let mut joined = join::join_whole(texts, one_file::UNPACKER)?.files;
    for entry in ENTRIES {
        let (first, late) = join::join(texts, entry)?;
        for (file, Joined { text, files: parts }) in [(entry.file, first), (entry.late, late)] {
            if !parts.is_empty() {
                files::write(&page.join(file), script::module(file, &text)?)?;
            }
            joined.extend(parts);
        }
    }
    refuse_unreached(texts, &joined)?;
    for path in files::list(page)?.iter().filter(|path| path.ends_with(".html")) {
        let html = files::read_text(&page.join(path))?;
        files::write(&page.join(path), without_joined(path, &html, &joined)?)?;
    }
    Ok(())
}

fn refuse_unreached(texts: &Texts, joined: &[String]) -> Outcome {
    match texts.keys().find(|file| !joined.contains(file)) {
        Some(file) => Err(Failure::new(format!("www/{file}: no page leads here."))
            .remedy("Import it, or remove it: what no module imports, the page never runs.")),
        None => Ok(()),
    }
}

/// The modules as they are written, without the worker, which is none.
fn modules(project: &Project) -> Outcome<Texts> {
    let www = project.www();
    let paths = files::list(&www)?.into_iter();
    paths
        .filter(|path| path.ends_with(".js") && path != worker::FILE)
        .map(|path| Ok((path.clone(), files::read_text(&www.join(path))?)))
        .collect()
}

/// Without the lines that ask early for a module which is no file any more.
fn without_joined(path: &str, html: &str, joined: &[String]) -> Outcome<String> {
    let is_entry = |file: &str| ENTRIES.iter().any(|entry| entry.file == file);
    let gone: Vec<&String> = joined.iter().filter(|file| !is_entry(file)).collect();
    let preload = |file: &str| format!("<link rel=\"modulepreload\" href=\"{file}\">");
    let is_needed = |line: &&str| !gone.iter().any(|file| line.trim() == preload(file));
    let html: String = html.lines().filter(is_needed).map(|line| format!("{line}\n")).collect();
    match gone.iter().find(|file| html.contains(&format!("\"{file}\""))) {
        Some(file) => Err(Failure::new(format!(
            "www/{path} names {file}, which the build joins into another."
        ))
        .remedy(format!("Name it on a line of its own: `{}`, or not at all.", preload(file)))),
        None => Ok(html),
    }
}

fn shrink_styles(page: &Path) -> Outcome {
    for path in files::list(page)?.iter().filter(|path| path.ends_with(".css")) {
        shrink(page, path, style::shrunk)?;
    }
    Ok(())
}

fn shrink(page: &Path, path: &str, shrunk: fn(&str, &str) -> Outcome<String>) -> Outcome {
    let text = files::read_text(&page.join(path))?;
    files::write(&page.join(path), shrunk(path, &text)?)
}

fn fill_in_worker(project: &Project, page: &Path) -> Outcome {
    let kept = visit::kept_for_offline(page)?;
    let written = files::read_text(&project.www().join(worker::FILE))?;
    let version = worker::version(page, &kept, &written)?;
    let (lines, rest) = worker::apart(&worker::filled_in(&written, &version, &kept)?);
    let rest = script::classic(worker::FILE, &rest)?;
    files::write(&page.join(worker::FILE), lines + &rest)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn joined() -> Vec<String> {
        ["words.js", "main.js"].map(str::to_owned).to_vec()
    }

    #[test]
    fn asks_early_only_for_what_is_still_a_file() {
        let html = "<head>\n\
            <link rel=\"modulepreload\" href=\"main.js\">\n\
            <link rel=\"modulepreload\" href=\"words.js\">\n\
            <link rel=\"modulepreload\" href=\"farthing.js\">\n\
            </head>\n";
        let expected = html.replace("<link rel=\"modulepreload\" href=\"words.js\">\n", "");
        assert_eq!(without_joined("index.html", html, &joined()).unwrap(), expected);
    }

    #[test]
    fn refuses_a_module_that_nothing_imports() {
        let texts = |files: &[&str]| -> Texts {
            files.iter().map(|file| ((*file).to_owned(), String::new())).collect()
        };
        assert!(refuse_unreached(&texts(&["main.js", "words.js"]), &joined()).is_ok());
        assert_eq!(
            refuse_unreached(&texts(&["main.js", "old.js", "words.js"]), &joined())
                .unwrap_err()
                .to_string(),
            "www/old.js: no page leads here.\n\
             Import it, or remove it: what no module imports, the page never runs.",
        );
    }

    #[test]
    fn refuses_to_name_what_is_no_file_any_more() {
        let html = "<script type=\"module\" src=\"words.js\"></script>\n";
        assert_eq!(
            without_joined("index.html", html, &joined()).unwrap_err().to_string(),
            "www/index.html names words.js, which the build joins into another.\n\
             Name it on a line of its own: `<link rel=\"modulepreload\" href=\"words.js\">`, \
             or not at all.",
        );
    }
}
