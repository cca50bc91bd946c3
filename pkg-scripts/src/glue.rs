//! Compiles the core to wasm and writes the JavaScript that loads it.

use std::path::{Path, PathBuf};

use wasm_bindgen_cli_support::Bindgen;

use crate::command;
use crate::failure::{About, Failure, Outcome};
use crate::files;
use crate::project::Project;

/// The name of the generated module and the start of the wasm file's name.
const NAME: &str = "farthing";

/// The library is an rlib for everyone else; only this build asks for a cdylib.
/// Naming both types in `Cargo.toml` would silently turn link-time optimisation off.
const COMPILE: [&str; 10] = [
    "cargo",
    "rustc",
    "--release",
    "--lib",
    "--package=farthing",
    "--target=wasm32-unknown-unknown",
    "--crate-type=cdylib",
    "--message-format=json-render-diagnostics",
    "--locked",
    "--quiet",
];

/// Writes `farthing.js` and `farthing_bg.wasm` into `page`.
pub fn make(project: &Project, page: &Path) -> Outcome {
    let wasm = compile(project)?;
    let made = project.root().join("target/glue");
    files::remove_folder(&made)?;
    bind(&wasm, &made)?;
    for name in ["farthing.js", "farthing_bg.wasm"] {
        files::write(&page.join(name), files::read_bytes(&made.join(name))?)?;
    }
    Ok(())
}

fn compile(project: &Project) -> Outcome<PathBuf> {
    let messages = command::read(project.root(), &COMPILE)?;
    messages
        .lines()
        .filter_map(|line| serde_json::from_str::<serde_json::Value>(line).ok())
        .filter(|message| message["reason"] == "compiler-artifact")
        .filter(|message| message["target"]["name"] == NAME)
        .filter_map(|message| message["filenames"][0].as_str().map(PathBuf::from))
        .find(|path| path.extension().is_some_and(|end| end == "wasm"))
        .ok_or_else(|| Failure::new("cargo built no wasm file for the library `farthing`."))
}

fn bind(wasm: &Path, into: &Path) -> Outcome {
    Bindgen::new()
        .input_path(wasm)
        .out_name(NAME)
        .web(true)
        .about("wasm-bindgen")?
        .typescript(false)
        .remove_name_section(true)
        .remove_producers_section(true)
        .generate(into)
        .map_err(|error| Failure::new(format!("wasm-bindgen: {error:#}")))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The version of a line such as `name = "=1.2.3"` or `name = { version = "=1.2.3", … }`.
    fn pin(manifest: &str, package: &str) -> String {
        let start = format!("{package} = ");
        manifest
            .lines()
            .filter_map(|line| line.strip_prefix(start.as_str())?.split_once("\"="))
            .find_map(|(_, after)| Some(after.split_once('"')?.0.to_owned()))
            .unwrap_or_else(|| panic!("no exact pin of {package}"))
    }

    #[test]
    fn the_crate_and_the_build_pin_the_same_wasm_bindgen() {
        let root = Project::here().root().to_owned();
        let of_crate = files::read_text(&root.join("Cargo.toml")).unwrap();
        let of_build = files::read_text(&root.join("pkg-scripts/Cargo.toml")).unwrap();
        assert_eq!(pin(&of_crate, "wasm-bindgen"), pin(&of_build, "wasm-bindgen-cli-support"),);
    }
}
