//! Answers a request from the files of the page.

use std::path::PathBuf;

use super::headers::Headers;
use super::request::Request;
use crate::files;
use crate::size;

/// A built page and the headers its host would send.
pub struct Site {
    /// The folder of the page.
    pub folder: PathBuf,
    /// What `_headers` lists.
    pub headers: Headers,
}

impl Site {
    /// The whole answer, ready to send.
    pub fn answer(&self, request: &Request) -> Vec<u8> {
        let path = if request.path.ends_with('/') {
            format!("{}index.html", request.path)
        } else {
            request.path.clone()
        };
        match files::read_bytes(&self.folder.join(path.trim_start_matches('/'))) {
            Ok(bytes) => self.file(request, &path, bytes),
            Err(_) => refusal(404),
        }
    }

    fn file(&self, request: &Request, path: &str, bytes: Vec<u8>) -> Vec<u8> {
        let mut head = vec![
            format!("Content-Type: {}", content_type(path)),
            "Cache-Control: no-cache".to_owned(),
            "Vary: Accept-Encoding".to_owned(),
        ];
        head.extend(self.headers.lines_for(&request.path).map(str::to_owned));
        match size::gzipped(&bytes) {
            Ok(packed) if request.takes_gzip && packed.len() < bytes.len() => {
                head.push("Content-Encoding: gzip".to_owned());
                whole("200 OK", &head, &packed, request.head_only)
            }
            _ => whole("200 OK", &head, &bytes, request.head_only),
        }
    }
}

/// An answer without a file.
pub fn refusal(status: u16) -> Vec<u8> {
    let (line, words) = match status {
        404 => ("404 Not Found", "There is no such file.\n"),
        _ => ("400 Bad Request", "That is no request for a file.\n"),
    };
    let head = ["Content-Type: text/plain; charset=utf-8".to_owned()];
    whole(line, &head, words.as_bytes(), false)
}

fn whole(status: &str, head: &[String], body: &[u8], head_only: bool) -> Vec<u8> {
    let mut answer = format!("HTTP/1.1 {status}\r\n");
    for line in head {
        answer += &format!("{line}\r\n");
    }
    answer += &format!("Content-Length: {}\r\nConnection: close\r\n\r\n", body.len());
    let mut answer = answer.into_bytes();
    if !head_only {
        answer.extend_from_slice(body);
    }
    answer
}

/// Browsers refuse modules and compile wasm slowly when the type is wrong.
fn content_type(path: &str) -> &'static str {
    match path.rsplit('.').next().unwrap_or_default() {
        "html" => "text/html; charset=utf-8",
        "css" => "text/css; charset=utf-8",
        "js" | "mjs" => "text/javascript; charset=utf-8",
        "json" => "application/json",
        "wasm" => "application/wasm",
        "webmanifest" => "application/manifest+json",
        "svg" => "image/svg+xml",
        "png" => "image/png",
        "ico" => "image/x-icon",
        "txt" | "md" => "text/plain; charset=utf-8",
        _ => "application/octet-stream",
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn sends_a_file_with_its_type_and_headers() {
        let folder = std::env::temp_dir().join(format!("farthing-site-{}", std::process::id()));
        files::write(&folder.join("index.html"), "<p>Hello").unwrap();
        let site = Site { folder: folder.clone(), headers: Headers::read("/*\n  X-Drink: gin") };
        let ask = |path: &str| {
            let request = Request { path: path.to_owned(), head_only: false, takes_gzip: true };
            String::from_utf8_lossy(&site.answer(&request)).into_owned()
        };
        let found = ask("/");
        let missing = ask("/nothing.js");
        files::remove_folder(&folder).unwrap();
        assert!(found.starts_with("HTTP/1.1 200 OK\r\nContent-Type: text/html; charset=utf-8\r\n"));
        assert!(found.contains("\r\nX-Drink: gin\r\n"));
        assert!(found.ends_with("\r\n\r\n<p>Hello"));
        assert!(missing.starts_with("HTTP/1.1 404 Not Found\r\n"));
    }
}
