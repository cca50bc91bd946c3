//! Times the built page on what stands in for a slow phone.

use crate::command;
use crate::failure::Outcome;
use crate::page;
use crate::project::Project;
use crate::tools;

/// Each a script for Chromium: a keystroke and the first answer, a whole menu, somebody's page
/// with a glass and without.
const BENCHES: [&str; 3] =
    ["tests/page/bench.mjs", "tests/page/book.bench.mjs", "tests/page/embed.bench.mjs"];

/// Builds the page, then runs every bench on it.
pub fn command(project: &Project) -> Outcome {
    tools::provide(project)?;
    page::build(project)?;
    for bench in BENCHES {
        command::with_tools(project, project.root(), &["node", bench])?;
    }
    Ok(())
}
