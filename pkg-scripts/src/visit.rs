//! Which files of the page a first visit transfers.

use std::path::Path;

use crate::failure::Outcome;
use crate::files;
use crate::one_file;
use crate::worker;

/// Files that only a host reads, or another site and its readers. No visitor of the page fetches them.
const FOR_HOSTS: [&str; 6] =
    ["404.html", "CNAME", "_headers", "custom-elements.json", "oembed.json", "robots.txt"];

/// What another page loads for its first glass.
pub const EMBED: [&str; 4] =
    ["farthing-glass.js", "embed.js", "farthing-embed.js", "farthing-embed_bg.wasm"];

/// What stands around that in a frame, and beside one.
const FRAME: [&str; 3] = ["frame.html", "frame.js", "farthing-frames.js"];

/// What loads when a view is opened that needs it. The worker fetches these too, for offline, but only
/// once the page stands.
pub const LATE: [&str; 4] = ["more.css", "more.js", "farthing-more.js", "farthing-more_bg.wasm"];

const TOUCH_ICON: &str = "apple-touch-icon";

const PICTURES: [&str; 5] = [".png", ".svg", ".webp", ".jpg", ".ico"];

/// Everything a first visit needs: the worker, and what it keeps for offline but for what loads late.
/// The page's own files are all among those, so nothing is counted twice or missed.
pub fn transferred(page: &Path) -> Outcome<Vec<String>> {
    let mut paths = kept_for_offline(page)?;
    paths.retain(|path| !LATE.contains(&path.as_str()));
    paths.push(worker::FILE.to_owned());
    paths.sort();
    Ok(paths)
}

/// What the worker keeps: every file of the page except the worker itself, files for hosts,
/// and pictures that no page, style or script names. Those are the screenshots and large icons
/// of the install dialog: the manifest names them, but only a browser that installs fetches them.
/// So it is with the touch icon, which is fetched when the page goes onto a home screen.
/// And the page as one file is only fetched by who asks for it.
pub fn kept_for_offline(page: &Path) -> Outcome<Vec<String>> {
    let mut paths = files::list(page)?;
    paths.retain(|path| path != one_file::FILE);
    let drawn = drawn_text(page, &paths)?;
    Ok(paths
        .into_iter()
        .filter(|path| path != worker::FILE && !is_for_hosts(path))
        .filter(|path| !is_picture(path) || drawn.contains(file_name(path)))
        .collect())
}

fn is_for_hosts(path: &str) -> bool {
    let hidden = path.split('/').any(|name| name.starts_with('.'));
    hidden || [&FOR_HOSTS[..], &EMBED, &FRAME].concat().contains(&path)
}

/// A style in a folder names a picture beside it without the folder.
fn file_name(path: &str) -> &str {
    path.rsplit('/').next().unwrap_or(path)
}

fn is_picture(path: &str) -> bool {
    PICTURES.iter().any(|end| path.ends_with(end))
}

/// The text of every file that can draw a picture; the manifest cannot.
fn drawn_text(page: &Path, paths: &[String]) -> Outcome<String> {
    let mut text = String::new();
    let draws = |path: &&String| [".html", ".css", ".js"].iter().any(|end| path.ends_with(end));
    for path in paths.iter().filter(draws) {
        let written = files::read_text(&page.join(path))?;
        let drawn = written.split_inclusive('>').filter(|tag| !tag.contains(TOUCH_ICON));
        text.extend(drawn);
    }
    Ok(text)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn keeps_what_the_page_draws_and_leaves_out_the_rest() {
        let page = std::env::temp_dir().join(format!("farthing-visit-{}", std::process::id()));
        let html = "<link rel=icon href=icon.svg><link rel=apple-touch-icon href=touch.png>";
        for (path, text) in [
            ("index.html", html),
            ("offline.js", ""),
            ("_headers", ""),
            (".nojekyll", ""),
            ("icon.svg", ""),
            ("icon-512.png", ""),
            ("touch.png", ""),
            ("screenshots/wide.png", ""),
            ("parts/slip.js", ""),
            ("farthing_bg.wasm", ""),
            ("more.js", ""),
            ("farthing-glass.js", ""),
            ("frame.html", ""),
            (one_file::FILE, "<img src=icon-512.png>"),
        ] {
            files::write(&page.join(path), text).unwrap();
        }
        let kept = kept_for_offline(&page).unwrap();
        let all = transferred(&page).unwrap();
        files::remove_folder(&page).unwrap();
        let expected = ["farthing_bg.wasm", "icon.svg", "index.html", "more.js", "parts/slip.js"];
        assert_eq!(kept, expected);
        let first = ["farthing_bg.wasm", "icon.svg", "index.html", "offline.js", "parts/slip.js"];
        assert_eq!(all, first);
    }
}
