//! What a contributor runs: build, serve, weigh, check and verify the page.
//!
//! `cargo page`, `cargo serve`, `cargo size`, `cargo checks`, `cargo verify` and
//! `cargo page-bench` all lead here; `.cargo/config.toml` names them.

mod apt;
mod bench;
mod checks;
mod command;
mod failure;
mod files;
mod glue;
mod join;
mod one_file;
mod page;
mod project;
mod serve;
mod shrink;
mod size;
mod tools;
mod verify;
mod visit;
mod worker;

use std::process::ExitCode;

use failure::{Failure, Outcome};
use project::Project;

const USAGE: &str = "\
cargo page                            build the page into target/page
cargo serve [--port N] [--no-build]   build it and serve it on this computer
cargo size                            weigh what a first visit transfers
cargo checks                          the rules that a compiler cannot hold
cargo verify [--only STAGE]           everything, in order, as the CI does it
cargo page-bench                      time the page on a slow phone";

fn main() -> ExitCode {
    let words: Vec<String> = std::env::args().skip(1).collect();
    match obey(&words) {
        Ok(()) => ExitCode::SUCCESS,
        Err(failure) => {
            eprintln!("{failure}");
            ExitCode::FAILURE
        }
    }
}

fn obey(words: &[String]) -> Outcome {
    let project = Project::here();
    let words: Vec<&str> = words.iter().map(String::as_str).collect();
    match words.as_slice() {
        ["build"] => page::build(&project),
        ["serve", options @ ..] => serve::command(&project, options),
        ["size"] => size::command(&project),
        ["checks"] => checks::command(&project),
        ["verify"] => verify::everything(&project),
        ["verify", "--only", stage] => verify::only(&project, stage),
        ["bench"] => bench::command(&project),
        _ => Err(Failure::new("That is not a command of this project.").remedy(USAGE)),
    }
}
