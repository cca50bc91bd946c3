//! Times the built page on what stands in for a slow phone.

use crate::command;
use crate::failure::Outcome;
use crate::page;
use crate::project::Project;
use crate::tools;

/// Builds the page, then times a keystroke and the first answer in Chromium.
pub fn command(project: &Project) -> Outcome {
    tools::provide(project)?;
    page::build(project)?;
    command::with_tools(project, project.root(), &["node", "tests/page/bench.mjs"])
}
