//! Where the project keeps what.

use std::path::{Path, PathBuf};

/// The folders of one checkout.
#[derive(Debug, Clone)]
pub struct Project {
    root: PathBuf,
}

impl Project {
    /// The checkout that this program was built in.
    pub fn here() -> Self {
        // Cargo sets the variable on `cargo run`, so that a moved checkout still works.
        let manifest = std::env::var("CARGO_MANIFEST_DIR")
            .unwrap_or_else(|_| env!("CARGO_MANIFEST_DIR").to_owned());
        let root = Path::new(&manifest).parent().unwrap_or(Path::new("."));
        Self { root: root.to_owned() }
    }

    /// The top folder.
    pub fn root(&self) -> &Path {
        &self.root
    }

    /// The core, in Rust.
    pub fn core(&self) -> PathBuf {
        self.root.join("src")
    }

    /// The page as it is written.
    pub fn www(&self) -> PathBuf {
        self.root.join("www")
    }

    /// The page as it is built: this folder is what a host serves.
    pub fn page(&self) -> PathBuf {
        self.root.join("target/page")
    }

    /// The tests that drive the page in browsers.
    pub fn page_tests(&self) -> PathBuf {
        self.root.join("tests/page")
    }

    /// Tools that `verify` builds for itself, so that nothing is installed for all.
    pub fn tools(&self) -> PathBuf {
        self.root.join("target/tools")
    }
}
