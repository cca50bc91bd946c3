//! Runs another program and says so when it fails.

use std::path::Path;
use std::process::{Command, Stdio};

use crate::failure::{About, Failure, Outcome};
use crate::project::Project;

/// Runs a line such as `cargo fmt --check` in `folder`; its output goes to the terminal unchanged.
pub fn run(folder: &Path, line: &[&str]) -> Outcome {
    let status =
        command(folder, line).status().about(format!("could not start `{}`", line.join(" ")))?;
    if status.success() {
        return Ok(());
    }
    Err(Failure::new(format!("`{}` failed.", line.join(" "))))
}

/// Runs a line and returns what it wrote to its standard output.
pub fn read(folder: &Path, line: &[&str]) -> Outcome<String> {
    let output = command(folder, line)
        .stderr(Stdio::inherit())
        .output()
        .about(format!("could not start `{}`", line.join(" ")))?;
    if !output.status.success() {
        return Err(Failure::new(format!("`{}` failed.", line.join(" "))));
    }
    String::from_utf8(output.stdout).about(format!("the output of `{}`", line.join(" ")))
}

/// A command with the tools of this project first on its `PATH`.
pub fn with_tools(project: &Project, folder: &Path, line: &[&str]) -> Outcome {
    let old = std::env::var("PATH").unwrap_or_default();
    let path = format!("{}:{old}", project.tools().join("bin").display());
    let status = command(folder, line)
        .env("PATH", path)
        .status()
        .about(format!("could not start `{}`", line.join(" ")))?;
    if status.success() {
        return Ok(());
    }
    Err(Failure::new(format!("`{}` failed.", line.join(" "))))
}

/// Whether a program of this name stands on the `PATH`, or a file at this whole path.
pub fn is_there(program: &str) -> bool {
    let path = std::env::var_os("PATH").unwrap_or_default();
    std::env::split_paths(&path).any(|folder| folder.join(program).is_file())
}

fn command(folder: &Path, line: &[&str]) -> Command {
    let (program, arguments) = line.split_first().expect("a command has a name");
    let mut command = Command::new(program);
    command.args(arguments).current_dir(folder);
    // Cargo's own variables would make a nested cargo take this package for the one it builds.
    command.env_remove("CARGO_MANIFEST_DIR");
    command
}
