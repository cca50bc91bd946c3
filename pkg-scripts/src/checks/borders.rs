//! Who may name what lies outside.

use super::{Finding, Source, starts_of, without_comment};

/// Crates of the outside, the only part of the core that may name them, and why.
const CRATES: [(&str, &str, &str); 5] = [
    ("serde", "src/wire", "only the wire knows how records are written"),
    ("wasm_bindgen", "src/web", "only `web` knows that a browser exists"),
    ("web_sys", "src/web", "only `web` knows that a browser exists"),
    ("js_sys", "src/web", "only `web` knows that a browser exists"),
    ("gloo", "src/web", "only `web` knows that a browser exists"),
];

/// The one module that may import each of the generated ones.
const GLUE: [(&str, &str); 3] = [
    ("/farthing.js", "www/core.js"),
    ("/farthing-more.js", "www/core.js"),
    ("/farthing-embed.js", "www/embed-core.js"),
];

/// The domain knows neither how it is written down nor where it is shown.
pub fn between_crates(sources: &[Source]) -> Vec<Finding> {
    let mut findings = Vec::new();
    for (name, place, why) in CRATES {
        for source in sources.iter().filter(|source| !is_within(&source.path, place)) {
            for (number, line) in source.lines() {
                if starts_of(without_comment(line), name).next().is_some() {
                    findings.push(source.finding(number, format!("`{name}`: {why}")));
                }
            }
        }
    }
    findings
}

/// One module loads each build of the core, so that a failure to load is explained once.
pub fn around_the_glue(sources: &[Source]) -> Vec<Finding> {
    let mut findings = Vec::new();
    for (glue, importer) in GLUE {
        let imports = |source: &&Source| line_of_import(source, glue).is_some();
        if !sources.iter().filter(imports).any(|source| source.path == importer) {
            let why = format!("{importer} does not import `.{glue}`");
            findings.push(Finding { path: "www".to_owned(), line: 0, why });
        }
        for source in sources.iter().filter(|source| source.path != importer) {
            let why = || format!("only {importer} may import `.{glue}`");
            findings.extend(line_of_import(source, glue).map(|line| source.finding(line, why())));
        }
    }
    findings
}

/// `src/wire` covers `src/wire.rs`, `src/wire_types.rs` and the folder; `src/web` likewise.
fn is_within(path: &str, place: &str) -> bool {
    path.strip_prefix(place).is_some_and(|rest| rest.starts_with(['.', '/', '_']))
}

/// A type in a comment is no import.
fn line_of_import(source: &Source, glue: &str) -> Option<usize> {
    if !source.path.ends_with(".js") {
        return None;
    }
    let imports = |line: &str| {
        let code = script_without_comment(line);
        let named = ['"', '\''].iter().any(|quote| code.contains(&format!("{glue}{quote}")));
        named && (code.contains("import") || code.contains("from "))
    };
    source.lines().find(|(_, line)| imports(line)).map(|(number, _)| number)
}

/// A line of a script without what is surely a comment.
fn script_without_comment(line: &str) -> String {
    let line = line.trim_start();
    if line.starts_with("//") || line.starts_with('*') {
        return String::new();
    }
    let mut code = String::new();
    let mut rest = line;
    while let Some((before, after)) = rest.split_once("/*") {
        code += before;
        rest = after.split_once("*/").map_or("", |(_, after)| after);
    }
    code + rest
}

#[cfg(test)]
mod tests {
    use super::super::source;
    use super::*;

    #[test]
    fn keeps_crates_of_the_outside_in_their_place() {
        let found = |path, text| !between_crates(&[source(path, text)]).is_empty();
        assert!(found("src/money.rs", "use serde::Serialize;"));
        assert!(found("src/money.rs", "let x = serde_json::json!(1);"));
        assert!(found("src/money.rs", "#[serde(default)]"));
        assert!(found("src/website.rs", "use web_sys::Storage;"));
        assert!(!found("src/wire.rs", "use serde::Serialize;"));
        assert!(!found("src/wire/ask.rs", "use serde::Serialize;"));
        assert!(!found("src/web/exports.rs", "use wasm_bindgen::prelude::*;"));
        assert!(found("src/wire.rs", "use wasm_bindgen::prelude::*;"));
        assert!(!found("src/money.rs", "// serde stays in wire"));
    }

    #[test]
    fn wants_one_importer_of_each_build() {
        let core = "await import(\"./farthing.js\");\nawait import(\"./farthing-more.js\");";
        let with = |path: &str, text: &str| {
            let embed = source("www/embed-core.js", "await import('./farthing-embed.js');");
            around_the_glue(&[source("www/core.js", core), embed, source(path, text)]).len()
        };
        assert_eq!(with("www/app.js", ""), 0);
        assert_eq!(around_the_glue(&[]).len(), 3);
        assert_eq!(with("www/app.js", "const m = await import('./farthing.js');"), 1);
        assert_eq!(with("www/app.js", "import init from \"./farthing-embed.js\";"), 1);
        for comment in [
            "// import from \"./farthing.js\" never",
            "/** @typedef {import(\"./farthing.js\")} Glue */",
            " * @param {import(\"./farthing.js\").Ask} ask",
            "const ask = /** @type {import(\"./farthing.js\").Ask} */ (held);",
        ] {
            assert_eq!(with("www/app.js", comment), 0, "{comment}");
        }
    }
}
