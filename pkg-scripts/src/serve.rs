//! Serves the built page on this computer, with the headers a host would send.

mod answer;
mod headers;
mod request;

use std::io::{BufReader, Write};
use std::net::{TcpListener, TcpStream};
use std::path::PathBuf;
use std::sync::Arc;
use std::thread;
use std::time::Duration;

use crate::failure::{About, Failure, Outcome};
use crate::files;
use crate::page;
use crate::project::Project;
use answer::Site;
use headers::Headers;

const DEFAULT_PORT: u16 = 8000;

/// A connection that says nothing for so long is closed, so that no thread waits for ever.
const SILENCE: Duration = Duration::from_secs(10);

const USAGE: &str = "Say `cargo serve [--port 8000] [--no-build]`.";

/// Builds unless told not to, then serves until the process is stopped.
pub fn command(project: &Project, options: &[&str]) -> Outcome {
    let options = Options::read(options)?;
    if options.build {
        page::build(project)?;
    }
    let site = Arc::new(site(page::built(project)?)?);
    let listener = TcpListener::bind(("127.0.0.1", options.port))
        .about(format!("port {}", options.port))
        .map_err(|failure| failure.remedy("Choose another: `cargo serve --port 8001`."))?;
    println!("Farthing is at http://127.0.0.1:{}/", options.port);
    for connection in listener.incoming().flatten() {
        let site = Arc::clone(&site);
        thread::spawn(move || converse(&site, &connection));
    }
    Ok(())
}

#[derive(Debug, PartialEq)]
struct Options {
    port: u16,
    build: bool,
}

impl Options {
    fn read(words: &[&str]) -> Outcome<Self> {
        let mut options = Self { port: DEFAULT_PORT, build: true };
        let mut words = words.iter();
        while let Some(word) = words.next() {
            match *word {
                "--no-build" => options.build = false,
                "--port" => options.port = port(words.next())?,
                _ => {
                    return Err(Failure::new(format!("`{word}` means nothing here.")).remedy(USAGE));
                }
            }
        }
        Ok(options)
    }
}

fn port(word: Option<&&str>) -> Outcome<u16> {
    word.and_then(|word| word.parse().ok())
        .ok_or_else(|| Failure::new("A port is a number up to 65535.").remedy(USAGE))
}

fn site(folder: PathBuf) -> Outcome<Site> {
    let listed = folder.join("_headers");
    let headers = if listed.is_file() {
        Headers::read(&files::read_text(&listed)?)
    } else {
        Headers::default()
    };
    Ok(Site { folder, headers })
}

/// A browser may close a connection at any moment; that is its right and no failure of ours.
fn converse(site: &Site, mut connection: &TcpStream) {
    let _ = connection.set_read_timeout(Some(SILENCE));
    let _ = connection.set_write_timeout(Some(SILENCE));
    let answer = match request::read(BufReader::new(connection)) {
        Some(request) => site.answer(&request),
        None => answer::refusal(400),
    };
    let _ = connection.write_all(&answer);
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn reads_its_options() {
        let options = Options::read(&["--port", "9000", "--no-build"]).unwrap();
        let expected = Options { port: 9000, build: false };
        assert_eq!(options, expected);
        assert!(Options::read(&["--port", "ninety"]).is_err());
        assert!(Options::read(&["--quick"]).is_err());
    }
}
