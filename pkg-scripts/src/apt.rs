//! Installs the browsers and their drivers from Debian when they are missing.

use std::path::Path;

use crate::command;
use crate::failure::{Failure, Outcome};

/// A program that the browser tests start, and the package it comes in.
const PROGRAMS: [(&str, &str); 9] = [
    ("node", "nodejs"),
    ("npm", "npm"),
    ("chromium", "chromium"),
    ("chromedriver", "chromium-driver"),
    ("firefox-esr", "firefox-esr"),
    ("WebKitWebDriver", "webkit2gtk-driver"),
    ("Xvfb", "xvfb"),
    ("WPEWebDriver", "wpewebkit-driver"),
    ("cog", "cog"),
];

/// Installs the packages of the programs that are missing, and nothing else.
pub fn provide() -> Outcome {
    let packages = missing();
    if packages.is_empty() {
        return Ok(());
    }
    println!("installing {}", packages.join(" "));
    let remedy =
        format!("Install these packages yourself, then run this again: {}", packages.join(" "));
    install(&packages).map_err(|failure| failure.or_remedy(&remedy))?;
    match missing().as_slice() {
        [] => Ok(()),
        still => Err(Failure::new(format!("Still missing: {}.", still.join(" "))).remedy(remedy)),
    }
}

fn missing() -> Vec<&'static str> {
    PROGRAMS
        .iter()
        .filter(|(program, _)| !command::is_there(program))
        .map(|(_, package)| *package)
        .collect()
}

fn install(packages: &[&str]) -> Outcome {
    let here = Path::new(".");
    let mut root = as_root()?;
    root.extend(["env", "DEBIAN_FRONTEND=noninteractive", "apt-get"]);
    command::run(here, &[root.as_slice(), &["update", "--quiet"]].concat())?;
    let install = ["install", "--yes", "--quiet", "--no-install-recommends"];
    command::run(here, &[root.as_slice(), &install, packages].concat())
}

/// What to put before a command that only root may run.
fn as_root() -> Outcome<Vec<&'static str>> {
    if !command::is_there("apt-get") {
        return Err(Failure::new(
            "This system has no apt-get, so nothing can be installed from here.",
        ));
    }
    let user = command::read(Path::new("."), &["id", "-u"])?;
    if user.trim() == "0" {
        return Ok(Vec::new());
    }
    if command::is_there("sudo") {
        return Ok(vec!["sudo"]);
    }
    Err(Failure::new("Installing needs root, and there is no sudo."))
}
