//! Scripts: shorter names and expressions, no comments and no white space.

use oxc_allocator::Allocator;
use oxc_codegen::{Codegen, CodegenOptions};
use oxc_compat::EngineTargets;
use oxc_minifier::{CompressOptions, MangleOptions, Minifier, MinifierOptions};
use oxc_parser::Parser;
use oxc_semantic::SemanticBuilder;
use oxc_span::SourceType;

use crate::failure::{About, Failure, Outcome};

/// The oldest browsers that the page names in its `index.html`: no newer syntax is made.
const OLDEST: &str = "es2022,chrome105,firefox105,safari16";

/// A module; its exports keep their names.
pub fn module(file: &str, text: &str) -> Outcome<String> {
    shrunk(file, text, SourceType::mjs())
}

/// A script that is no module; its top-level names are everyone's and stay.
pub fn classic(file: &str, text: &str) -> Outcome<String> {
    shrunk(file, text, SourceType::script())
}

fn shrunk(file: &str, text: &str, kind: SourceType) -> Outcome<String> {
    let allocator = Allocator::default();
    let parsed = Parser::new(&allocator, text, kind).parse();
    let mut program = parsed.program;
    let built = SemanticBuilder::new_compiler().build(&program);
    if let Some(error) = parsed.diagnostics.iter().chain(built.diagnostics.iter()).next() {
        let at = error.labels.first().map_or(0, |label| label.offset() as usize);
        let line = text.bytes().take(at).filter(|byte| *byte == b'\n').count() + 1;
        return Err(Failure::new(format!("{file}, as built, line {line}: {}", error.message)));
    }
    let target = EngineTargets::from_target(OLDEST).about("the oldest browsers")?;
    let options = MinifierOptions {
        compress: Some(CompressOptions { target, ..CompressOptions::smallest() }),
        mangle: Some(MangleOptions::default()),
        mangle_properties: None,
    };
    let shrunk = Minifier::new(options).minify(&allocator, &mut program);
    let printed = Codegen::new()
        .with_options(CodegenOptions::minify())
        .with_scoping(shrunk.scoping)
        .with_private_member_mappings(shrunk.class_private_mappings)
        .build(&program);
    Ok(printed.code)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn shortens_a_module_and_keeps_its_exports() {
        let text = "// Counts.\nconst step = 1;\nexport function next(count) {\n  return count + step;\n}\n";
        assert_eq!(module("a.js", text).unwrap(), "export function next(e){return e+1}");
    }

    #[test]
    fn leaves_the_top_names_of_a_classic_script() {
        let text = "const kept = [];\nfunction add(thing) {\n  kept.push(thing);\n}\n";
        assert_eq!(classic("a.js", text).unwrap(), "const kept=[];function add(e){kept.push(e)}",);
    }

    #[test]
    fn says_where_a_script_is_wrong() {
        let failure = module("main.js", "const one = 1;\nconst one = 2;\n").unwrap_err();
        assert!(failure.to_string().starts_with("main.js, as built, line 1: "), "{failure}");
    }
}
