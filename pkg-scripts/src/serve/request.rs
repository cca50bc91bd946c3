//! Reads the little of a request that a static page needs.

use std::io::BufRead;

/// No browser sends a longer request for a static file.
const LONGEST_REQUEST_BYTES: u64 = 16 * 1024;

/// What was asked for.
#[derive(Debug, PartialEq)]
pub struct Request {
    /// The path, decoded, without a query; it starts with `/`.
    pub path: String,
    /// Whether only the head of the answer is wanted.
    pub head_only: bool,
    /// Whether the answer may be gzipped.
    pub takes_gzip: bool,
}

/// Reads one request; nothing when it is not one that a static page answers.
pub fn read(from: impl BufRead) -> Option<Request> {
    let mut lines = from.take(LONGEST_REQUEST_BYTES).lines();
    let first = lines.next()?.ok()?;
    let mut words = first.split(' ');
    let head_only = match words.next()? {
        "GET" => false,
        "HEAD" => true,
        _ => return None,
    };
    let path = plain_path(words.next()?)?;
    let takes_gzip = lines
        .map_while(Result::ok)
        .take_while(|line| !line.is_empty())
        .any(|line| is_gzip_header(&line));
    Some(Request { path, head_only, takes_gzip })
}

fn is_gzip_header(line: &str) -> bool {
    let line = line.to_ascii_lowercase();
    line.starts_with("accept-encoding:") && line.contains("gzip")
}

/// Decodes a path; nothing when it would climb out of the folder.
fn plain_path(address: &str) -> Option<String> {
    let path = address.split(['?', '#']).next()?;
    let path = decoded(path)?;
    let climbs = path.split('/').any(|name| name == "..");
    let strange = path.contains(['\\', '\0']);
    (path.starts_with('/') && !climbs && !strange).then_some(path)
}

fn decoded(path: &str) -> Option<String> {
    let mut bytes = Vec::with_capacity(path.len());
    let mut rest = path.bytes();
    while let Some(byte) = rest.next() {
        if byte == b'%' {
            let high = char::from(rest.next()?).to_digit(16)?;
            let low = char::from(rest.next()?).to_digit(16)?;
            bytes.push(u8::try_from(high * 16 + low).ok()?);
        } else {
            bytes.push(byte);
        }
    }
    String::from_utf8(bytes).ok()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn path(address: &str) -> Option<String> {
        let text = format!("GET {address} HTTP/1.1\r\nHost: x\r\n\r\n");
        read(text.as_bytes()).map(|request| request.path)
    }

    #[test]
    fn reads_paths_and_refuses_to_climb() {
        for (address, expected) in [
            ("/", Some("/")),
            ("/app.js?v=1", Some("/app.js")),
            ("/a%20b.css", Some("/a b.css")),
            ("/../Cargo.toml", None),
            ("/a/%2e%2e/%2e%2e/Cargo.toml", None),
            ("/..%2fCargo.toml", None),
            ("/..%5cCargo.toml", None),
            ("/%00", None),
            ("/%zz", None),
            ("/%", None),
            ("http://elsewhere/", None),
        ] {
            assert_eq!(path(address).as_deref(), expected, "{address}");
        }
    }

    #[test]
    fn answers_no_other_method() {
        assert_eq!(read("POST / HTTP/1.1\r\n\r\n".as_bytes()), None);
    }

    #[test]
    fn sees_whether_gzip_is_taken() {
        let text = "HEAD / HTTP/1.1\r\nAccept-Encoding: br, gzip\r\n\r\n";
        let request = read(text.as_bytes()).unwrap();
        assert!(request.takes_gzip && request.head_only);
    }
}
