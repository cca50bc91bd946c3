//! Rules that a compiler cannot hold. Each is a function from texts to findings, and each has
//! a test that shows it fail.

mod borders;
mod hosts;
mod layers;
mod words;

use std::fmt::{self, Display, Formatter};
use std::path::Path;

use crate::failure::{Failure, Outcome};
use crate::files;
use crate::one_file;
use crate::page;
use crate::project::Project;

/// Prints every finding; fails when there is one.
pub fn command(project: &Project) -> Outcome {
    let findings = everything(project)?;
    for finding in &findings {
        println!("{finding}");
    }
    match findings.len() {
        0 => println!("no check found anything"),
        count => {
            return Err(Failure::new(format!("The checks found {count} things to mend.")));
        }
    }
    Ok(())
}

fn everything(project: &Project) -> Outcome<Vec<Finding>> {
    let core = texts(&project.core(), "src/", &[".rs"])?;
    let www = texts(&project.www(), "www/", &[".html", ".css", ".js"])?;
    let built = texts(&page::built(project)?, "target/page/", &[".html", ".css", ".js"])?;
    // A missing guide is a finding too: `layers` says what it wants there.
    let guide = files::read_text(&project.root().join("DEVELOPERS.md")).unwrap_or_default();

    let mut findings = words::in_core(&core);
    findings.extend(words::in_page(&www));
    findings.extend(borders::between_crates(&core));
    findings.extend(borders::around_the_glue(&www));
    findings.extend(layers::one_way(&guide, &core));
    findings.extend(hosts::none_but_its_own(&built));
    Ok(findings)
}

/// A file as a check sees it.
struct Source {
    /// From the top of the project, with `/`.
    path: String,
    text: String,
}

impl Source {
    /// Lines with their numbers, counted from one.
    fn lines(&self) -> impl Iterator<Item = (usize, &str)> {
        self.text.lines().zip(1..).map(|(line, number)| (number, line))
    }

    fn finding(&self, line: usize, why: impl Into<String>) -> Finding {
        Finding { path: self.path.clone(), line, why: why.into() }
    }
}

/// What a check found, and where.
#[derive(Debug, PartialEq)]
struct Finding {
    path: String,
    line: usize,
    why: String,
}

impl Display for Finding {
    fn fmt(&self, out: &mut Formatter<'_>) -> fmt::Result {
        write!(out, "{}:{}: {}", self.path, self.line, self.why)
    }
}

/// Every text but the page as one file, which is made of the others.
fn texts(folder: &Path, above: &str, ends: &[&str]) -> Outcome<Vec<Source>> {
    files::list(folder)?
        .into_iter()
        .filter(|path| path != one_file::FILE && ends.iter().any(|end| path.ends_with(end)))
        .map(|path| {
            Ok(Source {
                text: files::read_text(&folder.join(&path))?,
                path: format!("{above}{path}"),
            })
        })
        .collect()
}

/// A line of Rust without its comment: prose may name what code may not.
fn without_comment(line: &str) -> &str {
    line.split("//").next().unwrap_or(line)
}

/// The places in `line` where `word` stands and is not the tail of a longer name.
fn starts_of<'a>(line: &'a str, word: &'a str) -> impl Iterator<Item = usize> + 'a {
    line.match_indices(word)
        .map(|(at, _)| at)
        .filter(move |at| !line.get(..*at).unwrap_or_default().ends_with(is_name_part))
}

fn is_name_part(letter: char) -> bool {
    letter.is_alphanumeric() || letter == '_'
}

/// One source, for the tests of the checks.
#[cfg(test)]
fn source(path: &str, text: &str) -> Source {
    Source { path: path.to_owned(), text: text.to_owned() }
}
