//! Imports point one way: a module uses only what stands above it in the code map.

use super::{Finding, Source, is_name_part, starts_of, without_comment};

const HEADING: &str = "## Code map";

/// Holds every `crate::` path in the core against the code map in `DEVELOPERS.md`.
pub fn one_way(guide: &str, sources: &[Source]) -> Vec<Finding> {
    let map = code_map(guide);
    if map.is_empty() {
        return vec![Finding {
            path: "DEVELOPERS.md".to_owned(),
            line: 0,
            why: format!("no fenced block with module names follows the heading `{HEADING}`"),
        }];
    }
    let mut findings = unlike_the_folder(&map, sources);
    for source in sources {
        let Some(home) = module_of(&source.path) else {
            continue;
        };
        for (line, name) in imports(source, home) {
            findings.extend(against(&map, home, &name).map(|why| source.finding(line, why)));
        }
    }
    findings
}

/// Module names in reading order: the first word of each line of the map's fenced block.
fn code_map(guide: &str) -> Vec<&str> {
    guide
        .lines()
        .skip_while(|line| line.trim_end() != HEADING)
        .skip_while(|line| !line.starts_with("```"))
        .skip(1)
        .take_while(|line| !line.starts_with("```"))
        // An indented line tells about a part of the module above it.
        .filter(|line| !line.starts_with([' ', '\t']))
        .filter_map(|line| line.split_whitespace().next())
        .map(|name| name.trim_end_matches('/'))
        .collect()
}

fn unlike_the_folder(map: &[&str], sources: &[Source]) -> Vec<Finding> {
    let mut findings = Vec::new();
    for source in sources {
        if let Some(module) = module_of(&source.path).filter(|module| !map.contains(module)) {
            findings.push(source.finding(1, format!("the code map does not list `{module}`")));
        }
    }
    for name in map {
        if !sources.iter().any(|source| module_of(&source.path) == Some(name)) {
            findings.push(Finding {
                path: "DEVELOPERS.md".to_owned(),
                line: 0,
                why: format!("the code map lists `{name}`, which is not in src/"),
            });
        }
    }
    findings
}

/// The module of `src/` that a file belongs to; the crate's own root belongs to none.
fn module_of(path: &str) -> Option<&str> {
    let first = path.strip_prefix("src/")?.split('/').next()?;
    let module = first.strip_suffix(".rs").unwrap_or(first);
    (module != "lib").then_some(module)
}

fn against(map: &[&str], home: &str, name: &str) -> Option<String> {
    let place = |module: &str| map.iter().position(|listed| *listed == module);
    if name == home {
        return None;
    }
    let Some(used) = place(name) else {
        return Some(format!("`crate::{name}` is not in the code map; name its module"));
    };
    let home = place(home)?;
    (used > home).then(|| format!("`{name}` stands below this module in the code map"))
}

/// Every module that a file names through `crate::`, with the line.
fn imports(source: &Source, home: &str) -> Vec<(usize, String)> {
    let code: Vec<&str> = source.text.lines().map(without_comment).collect();
    let code = code.join("\n");
    let mut found = Vec::new();
    for root in ["crate::", root_above(&source.path, home)] {
        for at in starts_of(&code, root) {
            // A longer chain of `super::` is found at its own start.
            let (before, after) = code.split_at(at);
            let line = before.lines().count().max(1);
            let names = first_names(after.get(root.len()..).unwrap_or_default());
            let is_up = root != "crate::";
            // In a file's own tests `super::` is the file itself; a module's name tells them apart.
            let names = names.into_iter().filter(|name| !is_up || is_module(name));
            found.extend(names.map(|name| (line, name)));
        }
    }
    found
}

/// How a file reaches the crate's root without saying `crate`: once up from a module's own file,
/// twice from a file in its folder.
fn root_above(path: &str, home: &str) -> &'static str {
    if path == format!("src/{home}.rs") || path == format!("src/{home}/mod.rs") {
        "super::"
    } else {
        "super::super::"
    }
}

fn is_module(name: &str) -> bool {
    !name.is_empty() && name != "super" && name.starts_with(char::is_lowercase)
}

/// The names right after `crate::`: one, or each first name of a `{…}` group.
fn first_names(after: &str) -> Vec<String> {
    let Some(group) = after.strip_prefix('{') else {
        return vec![leading_name(after)];
    };
    let mut names = Vec::new();
    let mut depth = 0_usize;
    let mut expects_name = true;
    for (at, letter) in group.char_indices() {
        match letter {
            '{' => depth += 1,
            '}' if depth == 0 => break,
            '}' => depth -= 1,
            ',' if depth == 0 => expects_name = true,
            _ if expects_name && is_name_part(letter) => {
                names.push(leading_name(group.get(at..).unwrap_or_default()));
                expects_name = false;
            }
            _ => {}
        }
    }
    names
}

fn leading_name(text: &str) -> String {
    text.chars().take_while(|letter| is_name_part(*letter)).collect()
}

#[cfg(test)]
mod tests {
    use super::super::source;
    use super::*;

    const GUIDE: &str = "# X\n## Code map\nWords.\n```text\nnumber  — amounts\nreading/ — text\n  reading/words — part\nsheet — all\n```\n";

    fn findings(path: &str, text: &str) -> Vec<String> {
        let mut sources = vec![source(path, text), source("src/lib.rs", "mod sheet;")];
        for other in ["src/number.rs", "src/reading.rs", "src/sheet.rs"] {
            if other != path {
                sources.push(source(other, ""));
            }
        }
        one_way(GUIDE, &sources).iter().map(Finding::to_string).collect()
    }

    #[test]
    fn lets_a_module_use_what_stands_above_it() {
        for text in [
            "use crate::number::Number;",
            "use crate::{number::{self, Number}, reading::text};",
            "// crate::sheet comes later",
            "use super::*;",
        ] {
            assert_eq!(
                findings("src/reading.rs", &text.replace("reading::text", "reading")),
                [""; 0]
            );
        }
    }

    #[test]
    fn refuses_what_stands_below() {
        let why = "`sheet` stands below this module in the code map";
        for (path, text, line) in [
            ("src/reading.rs", "use crate::sheet::Sheet;", 1),
            ("src/reading/words.rs", "\nfn f() { crate::sheet::all() }", 2),
            ("src/number.rs", "use crate::{\n    number,\n    sheet::{a, b},\n};", 1),
            ("src/reading.rs", "use super::sheet;", 1),
            ("src/reading/words.rs", "use super::super::sheet;", 1),
        ] {
            assert_eq!(findings(path, text), [format!("{path}:{line}: {why}")], "{text}");
        }
    }

    #[test]
    fn refuses_a_name_or_a_file_that_the_map_does_not_list() {
        assert_eq!(
            findings("src/sheet.rs", "use crate::Money;"),
            ["src/sheet.rs:1: `crate::Money` is not in the code map; name its module"],
        );
        assert_eq!(
            findings("src/menu.rs", ""),
            ["src/menu.rs:1: the code map does not list `menu`"],
        );
    }

    #[test]
    fn refuses_a_map_without_its_module_or_no_map_at_all() {
        let sources = [source("src/number.rs", "")];
        assert_eq!(one_way("## Code map\n```\nnumber — x\nghost — y\n```\n", &sources).len(), 1);
        assert_eq!(one_way("# Nothing\n", &sources).len(), 1);
    }
}
