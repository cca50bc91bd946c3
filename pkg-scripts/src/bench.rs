//! Times the built page on what stands in for a slow phone.

use crate::command;
use crate::failure::Outcome;
use crate::page;
use crate::project::Project;
use crate::tools;

/// Builds the page, then times a keystroke, the first answer and a whole menu in Chromium.
pub fn command(project: &Project) -> Outcome {
    tools::provide(project)?;
    page::build(project)?;
    for bench in ["tests/page/bench.mjs", "tests/page/book.bench.mjs"] {
        command::with_tools(project, project.root(), &["node", bench])?;
    }
    Ok(())
}
