//! Everything that must hold before a change is kept, in order, cheapest remedy first.

use std::time::Instant;

use crate::apt;
use crate::checks;
use crate::command;
use crate::failure::{Failure, Outcome};
use crate::files;
use crate::one_file;
use crate::page;
use crate::project::Project;
use crate::size;
use crate::tools;

/// One thing to hold: its name, how, and what to do when it does not.
struct Stage {
    name: &'static str,
    hold: fn(&Project) -> Outcome,
    remedy: &'static str,
}

const STAGES: [Stage; 12] = [
    Stage {
        name: "tools",
        hold: tools::provide,
        remedy: "The browser tests need every browser; DEVELOPERS.md lists what to install.",
    },
    Stage { name: "format", hold: format, remedy: "Run `cargo fmt --all`." },
    Stage {
        name: "lints",
        hold: lints,
        remedy: "Mend what clippy names; a lint is silenced only where it stands, with the reason.",
    },
    Stage { name: "docs", hold: docs, remedy: "Mend the documentation that rustdoc names." },
    Stage {
        name: "tests",
        hold: tests,
        remedy: "Run the failing test alone: `cargo test --workspace NAME`.",
    },
    Stage { name: "page", hold: page::build, remedy: "Run `cargo page` and read its first error." },
    Stage {
        name: "checks",
        hold: checks::command,
        remedy: "Each line above names a file and why.",
    },
    Stage { name: "size", hold: size::command, remedy: "Run `cargo size` to see what grew." },
    Stage { name: "types", hold: types, remedy: "Mend the type errors that tsc names." },
    Stage { name: "html", hold: html, remedy: "Mend the markup in www/ that html-validate names." },
    Stage {
        name: "browsers",
        hold: browsers,
        remedy: "Run one engine alone: `ENGINE=firefox cargo verify --only browsers`.",
    },
    Stage {
        name: "hosts",
        hold: hosts,
        remedy: "Run one engine alone: `ENGINE=firefox cargo verify --only hosts`.",
    },
];

/// Runs every stage and stops at the first that fails.
pub fn everything(project: &Project) -> Outcome {
    let start = Instant::now();
    for stage in &STAGES {
        stage.run(project)?;
    }
    println!("\nEverything holds. It took {} s.", start.elapsed().as_secs());
    Ok(())
}

/// Runs one stage, for work on it.
pub fn only(project: &Project, name: &str) -> Outcome {
    let stage = STAGES.iter().find(|stage| stage.name == name);
    let names: Vec<&str> = STAGES.iter().map(|stage| stage.name).collect();
    let stage = stage.ok_or_else(|| {
        Failure::new(format!("There is no stage `{name}`."))
            .remedy(format!("The stages are: {}.", names.join(", ")))
    })?;
    stage.run(project)
}

impl Stage {
    fn run(&self, project: &Project) -> Outcome {
        println!("\n== {} ==", self.name);
        let start = Instant::now();
        (self.hold)(project).map_err(|failure| failure.or_remedy(self.remedy))?;
        println!("-- {}: {} s", self.name, start.elapsed().as_secs());
        Ok(())
    }
}

fn format(project: &Project) -> Outcome {
    command::run(project.root(), &["cargo", "fmt", "--all", "--check"])
}

fn lints(project: &Project) -> Outcome {
    let root = project.root();
    let strict = ["--", "-D", "warnings"];
    let native = ["cargo", "clippy", "--quiet", "--workspace", "--all-targets"];
    command::run(root, &[&native[..], &strict].concat())?;
    // The browser's part of the core exists only on this target.
    let wasm = [
        "cargo",
        "clippy",
        "--quiet",
        "--lib",
        "--target=wasm32-unknown-unknown",
        "--features=first,more,embed",
    ];
    command::run(root, &[&wasm[..], &strict].concat())
}

fn docs(project: &Project) -> Outcome {
    let line =
        ["env", "RUSTDOCFLAGS=-D warnings", "cargo", "doc", "--quiet", "--no-deps", "--workspace"];
    command::run(project.root(), &line)
}

fn tests(project: &Project) -> Outcome {
    command::run(project.root(), &["cargo", "test", "--workspace"])
}

fn types(project: &Project) -> Outcome {
    let tests = project.page_tests();
    for config in ["tsconfig.json", "tsconfig.worker.json", "tsconfig.tests.json"] {
        command::run(&tests, &["npx", "--no-install", "tsc", "--project", config])?;
    }
    Ok(())
}

fn html(project: &Project) -> Outcome {
    let page = page::built(project)?;
    let paths = files::list(&page)?;
    let paths: Vec<String> = paths
        .iter()
        // The page as one file holds the markup of `index.html`, in a form that the tool does not read.
        .filter(|path| path.ends_with(".html") && *path != one_file::FILE)
        .map(|path| page.join(path).display().to_string())
        .collect();
    let mut line = vec!["npx", "--no-install", "html-validate", "--config", ".htmlvalidate.json"];
    line.extend(paths.iter().map(String::as_str));
    command::run(&project.page_tests(), &line)
}

fn browsers(project: &Project) -> Outcome {
    page::built(project)?;
    command::with_tools(project, &project.page_tests(), &["npm", "test", "--silent"])
}

/// The page in pages of others. Their packages are heavy, so only this stage installs them.
fn hosts(project: &Project) -> Outcome {
    page::built(project)?;
    apt::provide(apt::BLOG)?;
    command::with_tools(project, &project.page_tests(), &["npm", "run", "hosts", "--silent"])
}
