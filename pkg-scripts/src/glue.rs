//! Compiles the core to wasm and writes the JavaScript that loads it.

use std::path::{Path, PathBuf};

use wasm_bindgen_cli_support::Bindgen;

use crate::command;
use crate::failure::{About, Failure, Outcome};
use crate::files;
use crate::project::Project;

/// The library, and the start of the wasm file's name.
const NAME: &str = "farthing";

/// The builds of the core: the feature that chooses what is exported, and the name of what is made.
const BUILDS: [(&str, &str); 3] =
    [("first", NAME), ("more", "farthing-more"), ("embed", "farthing-embed")];

/// The scripts that are written.
pub const FILES: [&str; 3] = ["farthing.js", "farthing-more.js", "farthing-embed.js"];

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

/// Writes `farthing.js` and `farthing_bg.wasm` into `page`, and the same of every other build.
pub fn make(project: &Project, page: &Path) -> Outcome {
    let made = project.root().join("target/glue");
    files::remove_folder(&made)?;
    for (feature, name) in BUILDS {
        bind(
            &compile(project, feature)?,
            name,
            Bindgen::new().web(true).about("wasm-bindgen")?,
            &made,
        )?;
        for file in [format!("{name}.js"), format!("{name}_bg.wasm")] {
            files::write(&page.join(&file), files::read_bytes(&made.join(&file))?)?;
        }
    }
    Ok(())
}

/// The core with everything that the page calls, as one.
pub struct Whole {
    /// A script that is no module: it makes `wasm_bindgen`, which loads the core and holds its functions.
    pub glue: String,
    /// The core.
    pub wasm: Vec<u8>,
}

/// Builds the core for the page that is one file.
pub fn whole(project: &Project) -> Outcome<Whole> {
    let made = project.root().join("target/glue/whole");
    let wasm = compile(project, "first,more")?;
    bind(&wasm, NAME, Bindgen::new().no_modules(true).about("wasm-bindgen")?, &made)?;
    Ok(Whole {
        glue: files::read_text(&made.join(format!("{NAME}.js")))?,
        wasm: files::read_bytes(&made.join(format!("{NAME}_bg.wasm")))?,
    })
}

fn compile(project: &Project, features: &str) -> Outcome<PathBuf> {
    let features = format!("--features={features}");
    let command: Vec<&str> = COMPILE.into_iter().chain([features.as_str()]).collect();
    let messages = command::read(project.root(), &command)?;
    messages
        .lines()
        .filter_map(|line| serde_json::from_str::<serde_json::Value>(line).ok())
        .filter(|message| message["reason"] == "compiler-artifact")
        .filter(|message| message["target"]["name"] == NAME)
        .filter_map(|message| message["filenames"][0].as_str().map(PathBuf::from))
        .find(|path| path.extension().is_some_and(|end| end == "wasm"))
        .ok_or_else(|| Failure::new("cargo built no wasm file for the library `farthing`."))
}

fn bind(wasm: &Path, name: &str, bindgen: &mut Bindgen, into: &Path) -> Outcome {
    bindgen
        .input_path(wasm)
        .out_name(name)
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
