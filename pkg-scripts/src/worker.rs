//! Fills in the offline worker: which version this is, and which files belong to it.

use std::path::Path;

use sha2::{Digest, Sha256};

use crate::failure::{Failure, Outcome};
use crate::files;

/// The worker, as `www/` and the page name it.
pub const FILE: &str = "offline.js";

/// The two lines that the build replaces.
const VERSION_LINE: &str = "const VERSION = \"development\";";
const FILES_LINE: &str = "const FILES = [];";

/// How those lines begin, filled in or not.
const LINES_BEGIN: [&str; 2] = ["const VERSION = ", "const FILES = "];

/// Sixteen hexadecimal digits tell any two builds apart and still read as a name.
const VERSION_BYTES: usize = 8;

/// A name for exactly these files: any changed byte, name or worker gives another one.
pub fn version(page: &Path, kept: &[String], worker: &str) -> Outcome<String> {
    let mut hash = Sha256::new();
    hash.update(worker);
    for path in kept {
        let bytes = files::read_bytes(&page.join(path))?;
        hash.update(path);
        hash.update([0]);
        hash.update(bytes.len().to_le_bytes());
        hash.update(bytes);
    }
    let digest = hash.finalize();
    let hex = digest.iter().take(VERSION_BYTES);
    Ok(hex.map(|byte| format!("{byte:02x}")).collect())
}

/// The worker's text with its version and its files.
pub fn filled_in(worker: &str, version: &str, kept: &[String]) -> Outcome<String> {
    let version = format!("const VERSION = \"{version}\";");
    let addresses: Vec<&str> = kept.iter().map(|path| address(path)).collect();
    let list = serde_json::json!(addresses);
    let files = format!("const FILES = {list};");
    let worker = replace_once(worker, VERSION_LINE, &version)?;
    replace_once(&worker, FILES_LINE, &files)
}

/// The filled-in lines, and the rest of the worker: the lines stay as they are, so that a test
/// can find them and play another version.
pub fn apart(worker: &str) -> (String, String) {
    let is_filled_in = |line: &&str| LINES_BEGIN.iter().any(|begin| line.starts_with(begin));
    let with_end = |line: &str| format!("{line}\n");
    let lines = worker.lines().filter(is_filled_in).map(with_end).collect();
    let rest = worker.lines().filter(|line| !is_filled_in(line)).map(with_end).collect();
    (lines, rest)
}

/// The page itself is asked for by its folder, wherever it is hosted.
fn address(path: &str) -> &str {
    if path == "index.html" { "./" } else { path }
}

fn replace_once(text: &str, line: &str, with: &str) -> Outcome<String> {
    let times = text.lines().filter(|held| *held == line).count();
    if times != 1 {
        return Err(Failure::new(format!(
            "www/{FILE} has the line `{line}` {times} times; the build needs it exactly once."
        )));
    }
    Ok(text
        .lines()
        .map(|held| if held == line { with } else { held })
        .fold(String::new(), |text, held| text + held + "\n"))
}

#[cfg(test)]
mod tests {
    use super::*;

    const WORKER: &str = "// The worker.\nconst VERSION = \"development\";\nconst FILES = [];\n";

    #[test]
    fn fills_in_both_lines() {
        let kept = ["app.js".to_owned(), "index.html".to_owned()];
        assert_eq!(
            filled_in(WORKER, "12ab", &kept).unwrap(),
            "// The worker.\nconst VERSION = \"12ab\";\nconst FILES = [\"app.js\",\"./\"];\n",
        );
    }

    #[test]
    fn sets_the_lines_apart() {
        let (lines, rest) = apart(&filled_in(WORKER, "12ab", &[]).unwrap());
        assert_eq!(lines, "const VERSION = \"12ab\";\nconst FILES = [];\n");
        assert_eq!(rest, "// The worker.\n");
    }

    #[test]
    fn refuses_a_worker_without_the_lines() {
        let failure = filled_in("const FILES = [];", "12ab", &[]).unwrap_err();
        assert_eq!(
            failure.to_string(),
            "www/offline.js has the line `const VERSION = \"development\";` 0 times; \
             the build needs it exactly once.",
        );
    }

    #[test]
    fn refuses_a_worker_with_a_line_twice() {
        let twice = format!("{WORKER}const FILES = [];\n");
        assert!(filled_in(&twice, "12ab", &[]).is_err());
    }
}
