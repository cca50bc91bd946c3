//! The built page fetches nothing from anywhere else.

use super::{Finding, Source};

/// What stands right before an address that a script or a style would fetch.
const FETCHING: [&str; 10] = [
    "import",
    "from",
    "import(",
    "importScripts(",
    "fetch(",
    "url(",
    "Worker(",
    "register(",
    "sendBeacon(",
    ".src=",
];

/// Links that name another page and fetch nothing.
const RELATIONS_THAT_FETCH_NOTHING: [&str; 4] = ["author", "canonical", "license", "me"];

/// Finds every address of another host that a browser would fetch. Links in the text are free.
pub fn none_but_its_own(sources: &[Source]) -> Vec<Finding> {
    let mut findings = Vec::new();
    for source in sources {
        let is_html = source.path.ends_with(".html");
        for at in addresses(&source.text) {
            let (before, after) = source.text.split_at(at);
            if is_fetched(before, is_html) {
                let end = |letter: char| letter.is_whitespace() || "\"'`)<>".contains(letter);
                let address = after.split(end).next().unwrap_or_default();
                let line = before.lines().count().max(1);
                findings.push(source.finding(line, format!("fetches from elsewhere: {address}")));
            }
        }
    }
    findings
}

/// Where an address with a host begins: `https://…`, `http://…` and `//…` in quotes.
fn addresses(text: &str) -> Vec<usize> {
    let schemes = ["http://", "https://", "ws://", "wss://"];
    let mut starts: Vec<usize> =
        schemes.iter().flat_map(|scheme| text.match_indices(scheme).map(|(at, _)| at)).collect();
    for quote in ["\"//", "'//", "`//"] {
        starts.extend(text.match_indices(quote).map(|(at, _)| at + 1));
    }
    starts.sort_unstable();
    starts
}

fn is_fetched(before: &str, is_html: bool) -> bool {
    let open = before.rfind('<').filter(|at| !before[*at..].contains('>'));
    match open {
        Some(at) if is_html => tag_fetches(&before[at..]),
        _ => script_or_style_fetches(before),
    }
}

/// A tag, from its `<` up to the address. Only text links and a few relations fetch nothing.
fn tag_fetches(tag: &str) -> bool {
    let name: String = tag.chars().skip(1).take_while(char::is_ascii_alphanumeric).collect();
    let value_of = |attribute: &str| tag.trim_end_matches(['"', '\'']).ends_with(attribute);
    let rests = |relation: &&str| tag.contains(&format!("rel=\"{relation}\""));
    match name.as_str() {
        "a" | "area" | "meta" | "html" | "svg" => false,
        "link" => !RELATIONS_THAT_FETCH_NOTHING.iter().any(rests),
        _ => ["src=", "href=", "srcset=", "data=", "poster=", "action="]
            .iter()
            .any(|attribute| value_of(attribute)),
    }
}

fn script_or_style_fetches(before: &str) -> bool {
    let before = before.trim_end_matches(['"', '\'', '`']);
    let end = before.get(before.len().saturating_sub(80)..).unwrap_or(before);
    let tight: String = end.chars().filter(|letter| !letter.is_whitespace()).collect();
    FETCHING.iter().any(|word| tight.ends_with(word))
}

#[cfg(test)]
mod tests {
    use super::super::source;
    use super::*;

    #[track_caller]
    fn check(path: &str, text: &str, is_found: bool) {
        let found = !none_but_its_own(&[source(path, text)]).is_empty();
        assert_eq!(found, is_found, "{text}");
    }

    #[test]
    fn finds_what_a_page_fetches() {
        check("a.html", "<script src=\"https://x.example/a.js\"></script>", true);
        check("a.html", "<script src=\"//x.example/a.js\"></script>", true);
        check("a.html", "<link rel=\"stylesheet\" href=\"https://x.example/a.css\">", true);
        check("a.html", "<img alt=\"\" src='http://x.example/a.png'>", true);
        check("a.html", "<script>fetch(\"https://x.example\")</script>", true);
    }

    #[test]
    fn lets_a_page_link() {
        check("a.html", "<a href=\"https://www.w3.org/TR/WCAG22/\">WCAG</a>", false);
        check("a.html", "<p>See https://www.w3.org/ for more.</p>", false);
        check("a.html", "<link rel=\"license\" href=\"https://x.example/mit\">", false);
        check("a.html", "<svg xmlns=\"http://www.w3.org/2000/svg\"></svg>", false);
        check("a.html", "<img src=\"icon.svg\">", false);
    }

    #[test]
    fn finds_what_a_script_or_style_fetches() {
        check("a.js", "import x from \"https://x.example/a.js\";", true);
        check("a.js", "await import(\n  'https://x.example/a.js')", true);
        check("a.js", "fetch(`https://x.example/${a}`)", true);
        check("a.js", "import(`//x.example/a.js`)", true);
        check("a.js", "image.src = \"https://x.example/a.png\";", true);
        check("a.css", "a { background: url(https://x.example/a.png) }", true);
        check("a.css", "@import \"https://x.example/a.css\";", true);
        check("a.js", "svg = create(\"http://www.w3.org/2000/svg\", \"svg\")", false);
        check("a.js", "// see https://x.example/a.js", false);
    }
}
