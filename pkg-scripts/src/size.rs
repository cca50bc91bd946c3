//! Weighs what a first visit transfers, and holds the budget.

use std::io::Write;
use std::path::Path;

use flate2::Compression;
use flate2::write::GzEncoder;

use crate::failure::{About, Failure, Outcome};
use crate::files;
use crate::one_file;
use crate::page;
use crate::project::Project;
use crate::visit;

/// What a first visit may transfer, gzipped as hosts do by default: every file that the page
/// loads at once (html, css, js, wasm, manifest, drawn icons), and the worker. Not counted: files
/// that only a host reads, the screenshots and large icons that only an install dialog fetches, and
/// what loads late. `visit` draws the line. At 1.6 Mbit/s, the slow 4G that throttling tools
/// simulate, 100 KiB take about half a second.
pub const FIRST_VISIT_BUDGET_BYTES: usize = 100 * 1024;

/// What loads when a view is first opened that needs it may transfer so much more. Three quarters of it
/// are the second build of the core, which repeats what every sum needs; the reader of recipes in five
/// languages is the largest single part, and glasses that are sent and opened take some 10 KiB. It comes
/// once the first answer stands.
pub const LATE_BUDGET_BYTES: usize = 188 * 1024;

/// What another page loads until its first glass stands. A photograph beside the recipe is larger.
pub const EMBED_BUDGET_BYTES: usize = 80 * 1024;

/// What the page as one file may take, as it lies on a disk: 200 KiB go with any mail and any message.
pub const ONE_FILE_BUDGET_BYTES: usize = 200 * 1024;

/// One file as it is stored and as it travels.
struct Weight {
    path: String,
    raw_bytes: usize,
    sent_bytes: usize,
}

/// Prints the tables, then holds the budgets.
pub fn command(project: &Project) -> Outcome {
    let page = page::built(project)?;
    let listed = |files: &[&str]| files.iter().map(|file| (*file).to_owned()).collect();
    for (when, paths, budget) in [
        ("A first visit", visit::transferred(&page)?, FIRST_VISIT_BUDGET_BYTES),
        ("A view that loads late", listed(&visit::LATE), LATE_BUDGET_BYTES),
        ("A glass on another page", listed(&visit::EMBED), EMBED_BUDGET_BYTES),
    ] {
        let weights = weigh(&page, paths)?;
        println!("{:<32} {:>10} {:>10}", "file", "bytes", "gzipped");
        for weight in &weights {
            println!("{:<32} {:>10} {:>10}", weight.path, weight.raw_bytes, weight.sent_bytes);
        }
        let raw: usize = weights.iter().map(|weight| weight.raw_bytes).sum();
        println!("{:<32} {raw:>10} {:>10}", "together", sent(&weights));
        hold(when, sent(&weights), budget)?;
    }
    let bytes = files::read_bytes(&page.join(one_file::FILE))?.len();
    println!("{:<32} {bytes:>10}", one_file::FILE);
    hold("The page as one file", bytes, ONE_FILE_BUDGET_BYTES)
}

/// The bytes as a host sends them: gzipped, unless that makes the file longer.
pub fn gzipped(bytes: &[u8]) -> Outcome<Vec<u8>> {
    let mut encoder = GzEncoder::new(Vec::new(), Compression::default());
    encoder.write_all(bytes).about("gzip")?;
    encoder.finish().about("gzip")
}

fn weigh(page: &Path, paths: Vec<String>) -> Outcome<Vec<Weight>> {
    paths.into_iter().map(|path| weigh_one(page, path)).collect()
}

fn weigh_one(page: &Path, path: String) -> Outcome<Weight> {
    let bytes = files::read_bytes(&page.join(&path))?;
    let sent_bytes = gzipped(&bytes)?.len().min(bytes.len());
    Ok(Weight { path, raw_bytes: bytes.len(), sent_bytes })
}

fn sent(weights: &[Weight]) -> usize {
    weights.iter().map(|weight| weight.sent_bytes).sum()
}

fn hold(what: &str, bytes: usize, budget: usize) -> Outcome {
    if bytes <= budget {
        println!("within the budget of {budget} bytes");
        return Ok(());
    }
    Err(Failure::new(format!("{what} takes {bytes} bytes; the budget is {budget}.")).remedy(
        "Make the largest rows of the table smaller, or argue for another budget in DEVELOPERS.md.",
    ))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_budget_holds_and_can_be_broken() {
        assert!(hold("A first visit", FIRST_VISIT_BUDGET_BYTES, FIRST_VISIT_BUDGET_BYTES).is_ok());
        assert_eq!(
            hold("A first visit", 11, 10).unwrap_err().to_string(),
            "A first visit takes 11 bytes; the budget is 10.\n\
             Make the largest rows of the table smaller, or argue for another budget in DEVELOPERS.md.",
        );
    }

    /// Builds the page itself, so that the weight is never that of an older page.
    #[test]
    fn the_page_keeps_the_budget() {
        let project = Project::here();
        page::build(&project).unwrap();
        command(&project).unwrap();
    }
}
