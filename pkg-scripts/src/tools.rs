//! Provides everything that the browser tests need. What is there already costs nothing.

use std::path::Path;

use crate::apt;
use crate::command;
use crate::failure::{Failure, Outcome};
use crate::files;
use crate::project::Project;

/// Debian has no package of it, so it is compiled once, into `target/tools`.
const GECKODRIVER: &str = "geckodriver";
const GECKODRIVER_VERSION: &str = "0.37.1";

/// Where a copy of the lock file says what `node_modules` was installed from.
const INSTALLED_LOCK: &str = "node_modules/.installed-from";

/// Installs what is missing. A browser or driver that is then still missing is a failure:
/// a browser test that was never run must not look like one that passed.
pub fn provide(project: &Project) -> Outcome {
    apt::provide(apt::BROWSERS)?;
    provide_geckodriver(project)?;
    provide_packages(&project.page_tests())
}

fn provide_geckodriver(project: &Project) -> Outcome {
    let own = project.tools().join("bin").join(GECKODRIVER);
    if own.is_file() || command::is_there(GECKODRIVER) {
        return Ok(());
    }
    println!("compiling {GECKODRIVER} {GECKODRIVER_VERSION}, once");
    let root = format!("--root={}", project.tools().display());
    let version = format!("--version={GECKODRIVER_VERSION}");
    let line = ["cargo", "install", "--locked", "--quiet", &root, &version, GECKODRIVER];
    command::run(project.root(), &line)?;
    if own.is_file() {
        return Ok(());
    }
    Err(Failure::new("cargo installed geckodriver, but it is not where it should be."))
}

fn provide_packages(tests: &Path) -> Outcome {
    let lock = files::read_text(&tests.join("package-lock.json"))?;
    let installed = tests.join(INSTALLED_LOCK);
    if files::read_text(&installed).is_ok_and(|from| from == lock) {
        return Ok(());
    }
    let line = ["npm", "ci", "--ignore-scripts", "--no-audit", "--no-fund"];
    command::run(tests, &line)?;
    files::write(&installed, lock)
}
