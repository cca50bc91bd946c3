//! The page as one file, to save, to send and to open where there is no network.
//!
//! It is `index.html` without its links, then everything else packed as text, then the script that
//! unpacks it. Its policy knows each script and the style by its hash, and allows no connection at all.
//!
//! The file is UTF-16 with its mark of byte order, which browsers trust above whatever a host or a
//! mail program says of it. So two packed bytes fit into one character: base64 would take a third more
//! room than there is.

mod pack;
mod shell;

use std::path::Path;

use base64::Engine;
use base64::prelude::BASE64_STANDARD;
use flate2::Crc;
use sha2::{Digest, Sha256};

use crate::failure::{Failure, Outcome};
use crate::files;
use crate::glue::{self, Whole};
use crate::join::{self, Texts};
use crate::project::Project;
use crate::shrink::script;

/// The file, as the page names it.
pub const FILE: &str = "one-file.html";

/// The module that unpacks. It and those that it imports are in no other file.
pub const UNPACKER: &str = "unpack.js";

const BYTE_ORDER_MARK: u16 = 0xFEFF;

/// The builds of the core that the page's scripts import elsewhere.
const PAGES: [&str; 2] = ["farthing.js", "farthing-more.js"];

/// What the scripts import elsewhere to reach the core, and what stands for it here.
const GLUE: &str =
    "({ ...wasm_bindgen, default: () => wasm_bindgen({ module_or_path: farthingCore }) })";

/// Writes the file into a page that is built but for it. `entry` is the page's first module.
pub fn write(project: &Project, texts: &Texts, entry: &'static str, page: &Path) -> Outcome {
    let core = glue::whole(project)?;
    let style =
        files::read_text(&page.join("page.css"))? + &files::read_text(&page.join("more.css"))?;
    let script = scripts(texts, entry, &core)?;
    let unpacker = script::module(UNPACKER, &join::join_whole(texts, UNPACKER)?.text)?;
    let icon = files::read_text(&project.www().join("icons/coin.svg"))?;
    let index = files::read_text(&project.www().join("index.html"))?;

    let parts = [style.as_bytes(), script.as_bytes(), &core.wasm];
    let packed = pack::packed(&parts.concat())?;
    let shell = shell::Shell {
        icon: &icon,
        style_hash: &hash(&style),
        script_hashes: [&hash(&unpacker), &hash(&script)],
    };
    let (before, after) = shell.around_the_rest(&index)?;
    let mut file = vec![BYTE_ORDER_MARK];
    file.extend(before.encode_utf16());
    file.extend(opening(&parts, &packed).encode_utf16());
    file.extend(pack::characters(&packed));
    file.extend("</script>\n<script type=\"module\">".encode_utf16());
    file.extend(unpacker.encode_utf16());
    file.extend("</script>\n".encode_utf16());
    file.extend(after.encode_utf16());
    let bytes: Vec<u8> = file.into_iter().flat_map(u16::to_le_bytes).collect();
    files::write(&page.join(FILE), bytes)
}

/// The tag before the packed parts: how to check them, and where one ends.
fn opening(parts: &[&[u8]], packed: &[u8]) -> String {
    let mut check = Crc::new();
    check.update(packed);
    let lengths: Vec<String> = parts.iter().map(|part| part.len().to_string()).collect();
    format!(
        "<script type=\"text/plain\" id=\"packed\" data-check=\"{}\" data-lengths=\"{}\">",
        check.sum(),
        lengths.join(" "),
    )
}

/// Every script of the page as one, which imports nothing.
fn scripts(texts: &Texts, entry: &'static str, core: &Whole) -> Outcome<String> {
    let mut joined = join::join_whole(texts, entry)?.text;
    for file in PAGES {
        let import = format!("import(\"./{file}\")");
        if !joined.contains(&import) {
            return Err(Failure::new(format!(
                "No module says `{import}`, which the one file needs."
            )));
        }
        joined = joined.replace(&import, &format!("Promise.resolve({GLUE})"));
    }
    script::module(entry, &format!("{}\n{joined}", core.glue))
}

/// As a policy names a script or a style.
fn hash(text: &str) -> String {
    format!("'sha256-{}'", BASE64_STANDARD.encode(Sha256::digest(text)))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_a_text_by_its_hash() {
        // The example of the policy's own specification, CSP Level 2.
        let expected = "'sha256-qznLcsROx4GACP2dm0UCKCzCG+HiZ1guq6ZZDob/Tng='";
        assert_eq!(hash("alert('Hello, world.');"), expected);
    }

    #[test]
    fn says_how_to_check_and_to_part_what_is_packed() {
        assert_eq!(
            opening(&[b"style", b"script", b"core"], b"123456789"),
            "<script type=\"text/plain\" id=\"packed\" data-check=\"3421780262\" \
             data-lengths=\"5 6 4\">",
        );
    }
}
