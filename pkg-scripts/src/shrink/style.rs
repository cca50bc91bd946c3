//! Styles: no comments, and white space only where it means something.
//!
//! What could mean something stays: a space before `(`, `:` or `[` tells selectors apart, and one
//! around `+` tells a sum from a sign. What this cannot read for sure, it refuses.

use crate::failure::{Failure, Outcome};

/// After these, white space means nothing.
const OPENING: [char; 6] = ['{', '}', ';', ',', ':', '('];

/// Before these, white space means nothing.
const CLOSING: [char; 5] = ['{', '}', ';', ',', ')'];

/// The text of a style sheet, shorter.
pub fn shrunk(file: &str, text: &str) -> Outcome<String> {
    let mut out = String::new();
    let mut rest = text;
    while let Some(letter) = rest.chars().next() {
        let taken = match letter {
            '"' | '\'' => quoted(rest, letter),
            '\\' => Err("an escape outside quotes is not understood"),
            _ if is_gap(rest) => gap(rest, &mut out),
            _ if is_bare_address(rest) => before_and_with(rest, ")", "an address does not end"),
            _ => Ok(letter.len_utf8()),
        };
        let length = taken.map_err(|why| {
            let line = text[..text.len() - after_space(rest).len()].matches('\n').count() + 1;
            Failure::new(format!("www/{file}:{line}: {why}."))
        })?;
        let (piece, after) = rest.split_at(length);
        if letter == '}' && out.ends_with(';') {
            out.pop();
        }
        if !is_gap(piece) {
            out += piece;
        }
        rest = after;
    }
    Ok(out)
}

/// Passes over white space and comments, and writes the one space that may have to stay.
fn gap(text: &str, out: &mut String) -> Result<usize, &'static str> {
    let mut rest = text;
    let mut has_space = false;
    while is_gap(rest) {
        let is_comment = rest.starts_with("/*");
        has_space |= !is_comment;
        let length = if is_comment {
            before_and_with(rest, "*/", "a comment does not end")?
        } else {
            rest.len() - after_space(rest).len()
        };
        rest = &rest[length..];
    }
    let before = out.chars().next_back().unwrap_or(';');
    let after = rest.chars().next().unwrap_or(';');
    // `--empty: ;` is a value, and to some browsers `--empty:;` is none.
    let is_empty_value = before == ':' && matches!(after, ';' | '}');
    if is_empty_value || !(OPENING.contains(&before) || CLOSING.contains(&after)) {
        if !has_space {
            return Err("a comment holds two words apart: put a space beside it");
        }
        out.push(' ');
    }
    Ok(text.len() - rest.len())
}

fn is_gap(text: &str) -> bool {
    text.starts_with("/*") || after_space(text).len() < text.len()
}

/// To a style sheet, only these are white space; a no-break space is a letter.
fn after_space(text: &str) -> &str {
    text.trim_start_matches([' ', '\t', '\n', '\r', '\u{c}'])
}

/// An address without quotes.
fn is_bare_address(text: &str) -> bool {
    let inner = text.strip_prefix("url(").map(after_space);
    inner.is_some_and(|inner| !inner.starts_with(['"', '\'']))
}

/// How long a quoted text is, with its quotes.
fn quoted(text: &str, quote: char) -> Result<usize, &'static str> {
    let mut is_escaped = false;
    for (at, letter) in text.char_indices().skip(1) {
        match letter {
            _ if is_escaped => is_escaped = false,
            '\\' => is_escaped = true,
            '\n' => break,
            _ if letter == quote => return Ok(at + 1),
            _ => {}
        }
    }
    Err("a quoted text does not end")
}

fn before_and_with(text: &str, end: &str, why: &'static str) -> Result<usize, &'static str> {
    // A comment's `/*` and its `*/` share no star.
    text[2..].find(end).map(|at| 2 + at + end.len()).ok_or(why)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(text: &str, expected: &str) {
        assert_eq!(shrunk("page.css", text).unwrap(), expected);
        assert_eq!(shrunk("page.css", expected).unwrap(), expected, "twice");
    }

    #[track_caller]
    fn refuses(text: &str, why: &str) {
        assert_eq!(shrunk("page.css", text).unwrap_err().to_string(), why);
    }

    #[test]
    fn drops_comments_and_space_that_mean_nothing() {
        check(
            "/* Top. */\n\n.a,\n.b {\n  color: red; /* why */\n  margin: 0 auto;\n}\n",
            ".a,.b{color:red;margin:0 auto}",
        );
        check(
            "@media ( width > 30em ) and (hover) {\n  a { b: c }\n}",
            "@media (width > 30em) and (hover){a{b:c}}",
        );
        check("a{b:c}/* end */", "a{b:c}");
    }

    #[test]
    fn keeps_space_that_means_something() {
        check(
            ".a :hover, .a .b > .c + .d { --e: calc(1px + 2px); }",
            ".a :hover,.a .b > .c + .d{--e:calc(1px + 2px)}",
        );
        check("a { --empty: ; --last: }", "a{--empty: ;--last: }");
        check("a { margin: -1px /* up */ -2px }", "a{margin:-1px -2px}");
        check("a { width: min( 1px, 2px ) !important }", "a{width:min(1px,2px) !important}");
    }

    #[test]
    fn keeps_quoted_texts_and_addresses_to_the_letter() {
        check("a { content: \"a  /* b */ ; }\" }", "a{content:\"a  /* b */ ; }\"}");
        check("a { content: 'it\\'s  ' }", "a{content:'it\\'s  '}");
        check("a { background: url( a  b.png ) , red }", "a{background:url( a  b.png ),red}");
        check("a { background: url( \"a)  b\" ) }", "a{background:url(\"a)  b\")}");
    }

    #[test]
    fn refuses_what_it_cannot_read_for_sure() {
        refuses(
            "a{}\n.b/**/c{}",
            "www/page.css:2: a comment holds two words apart: put a space beside it.",
        );
        refuses("\n.\\31 {}", "www/page.css:2: an escape outside quotes is not understood.");
        refuses("a{}\n/* no end", "www/page.css:2: a comment does not end.");
        refuses("a { content: \"no end\n\" }", "www/page.css:1: a quoted text does not end.");
    }
}
