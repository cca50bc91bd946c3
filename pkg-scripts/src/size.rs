//! Weighs what a first visit transfers, and holds the budget.

use std::io::Write;
use std::path::Path;

use flate2::Compression;
use flate2::write::GzEncoder;

use crate::failure::{About, Failure, Outcome};
use crate::files;
use crate::page;
use crate::project::Project;
use crate::visit;

/// What a first visit may transfer, gzipped as hosts do by default: every file that the page
/// loads or its worker keeps for offline (html, css, js, wasm, manifest, drawn icons), and the
/// worker. Not counted: files that only a host reads, and the screenshots and large icons that
/// only an install dialog fetches. `visit` draws the line. At 1.6 Mbit/s, the slow 4G that
/// throttling tools simulate, these 88 KiB take about half a second.
pub const FIRST_VISIT_BUDGET_BYTES: usize = 88 * 1024;

/// One file as it is stored and as it travels.
struct Weight {
    path: String,
    raw_bytes: usize,
    sent_bytes: usize,
}

/// Prints the table, then holds the budget.
pub fn command(project: &Project) -> Outcome {
    let weights = weigh(&page::built(project)?)?;
    println!("{:<32} {:>10} {:>10}", "file", "bytes", "gzipped");
    for weight in &weights {
        println!("{:<32} {:>10} {:>10}", weight.path, weight.raw_bytes, weight.sent_bytes);
    }
    let raw: usize = weights.iter().map(|weight| weight.raw_bytes).sum();
    println!("{:<32} {raw:>10} {:>10}", "together", sent(&weights));
    hold(sent(&weights))
}

/// The bytes as a host sends them: gzipped, unless that makes the file longer.
pub fn gzipped(bytes: &[u8]) -> Outcome<Vec<u8>> {
    let mut encoder = GzEncoder::new(Vec::new(), Compression::default());
    encoder.write_all(bytes).about("gzip")?;
    encoder.finish().about("gzip")
}

fn weigh(page: &Path) -> Outcome<Vec<Weight>> {
    let paths = visit::transferred(page)?;
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

fn hold(sent_bytes: usize) -> Outcome {
    if sent_bytes <= FIRST_VISIT_BUDGET_BYTES {
        println!("within the budget of {FIRST_VISIT_BUDGET_BYTES} bytes");
        return Ok(());
    }
    Err(Failure::new(format!(
        "A first visit transfers {sent_bytes} bytes; the budget is {FIRST_VISIT_BUDGET_BYTES}."
    ))
    .remedy(
        "Make the largest rows of the table smaller, or argue for another budget in DEVELOPERS.md.",
    ))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_budget_holds_and_can_be_broken() {
        assert!(hold(FIRST_VISIT_BUDGET_BYTES).is_ok());
        assert_eq!(
            hold(FIRST_VISIT_BUDGET_BYTES + 1).unwrap_err().to_string(),
            "A first visit transfers 90113 bytes; the budget is 90112.\n\
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
