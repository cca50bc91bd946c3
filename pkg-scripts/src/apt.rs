//! Installs what the tests start from Debian's packages when it is missing.

use std::path::Path;

use crate::command;
use crate::failure::{Failure, Outcome};

/// A program on the `PATH` or the path of a file, and the packages that bring it.
pub type Needed = (&'static str, &'static str);

/// What the browser tests start.
pub const BROWSERS: &[Needed] = &[
    ("node", "nodejs"),
    ("npm", "npm"),
    ("chromium", "chromium"),
    ("chromedriver", "chromium-driver"),
    ("firefox-esr", "firefox-esr"),
    ("WebKitWebDriver", "webkit2gtk-driver"),
    ("Xvfb", "xvfb"),
    ("WPEWebDriver", "wpewebkit-driver"),
    ("cog", "cog"),
];

/// A blog for the tests of hosts. Of the web servers and kinds of PHP that WordPress's package
/// takes, these are the ones that start nothing by themselves; so is the database.
pub const BLOG: &[Needed] = &[
    ("php", "php-cli"),
    ("/usr/sbin/mariadbd", "mariadb-server-core"),
    ("/usr/share/wordpress/index.php", "wordpress php-cgi php mini-httpd"),
    (
        "/usr/share/wordpress/wp-content/themes/twentytwentythree/style.css",
        "wordpress-theme-twentytwentythree",
    ),
];

/// Installs the packages of what is missing, and nothing else.
pub fn provide(needed: &[Needed]) -> Outcome {
    let packages = missing(needed);
    if packages.is_empty() {
        return Ok(());
    }
    println!("installing {}", packages.join(" "));
    let remedy =
        format!("Install these packages yourself, then run this again: {}", packages.join(" "));
    install(&packages).map_err(|failure| failure.or_remedy(&remedy))?;
    match missing(needed).as_slice() {
        [] => Ok(()),
        still => Err(Failure::new(format!("Still missing: {}.", still.join(" "))).remedy(remedy)),
    }
}

fn missing(needed: &[Needed]) -> Vec<&'static str> {
    needed
        .iter()
        .filter(|(file, _)| !command::is_there(file))
        .flat_map(|(_, packages)| packages.split(' '))
        .collect()
}

fn install(packages: &[&str]) -> Outcome {
    let here = Path::new(".");
    let mut root = as_root()?;
    root.extend(["env", "DEBIAN_FRONTEND=noninteractive", "apt-get"]);
    command::run(here, &[root.as_slice(), &["update", "--quiet"]].concat())?;
    let install = ["install", "--yes", "--quiet", "--no-install-recommends"];
    command::run(here, &[root.as_slice(), &install, packages].concat())
}

/// What to put before a command that only root may run.
fn as_root() -> Outcome<Vec<&'static str>> {
    if !command::is_there("apt-get") {
        return Err(Failure::new(
            "This system has no apt-get, so nothing can be installed from here.",
        ));
    }
    let user = command::read(Path::new("."), &["id", "-u"])?;
    if user.trim() == "0" {
        return Ok(Vec::new());
    }
    if command::is_there("sudo") {
        return Ok(vec!["sudo"]);
    }
    Err(Failure::new("Installing needs root, and there is no sudo."))
}
