//! Why a command stopped, and what the person who ran it can do about it.

use std::fmt::{self, Display, Formatter};

/// What every command comes to.
pub type Outcome<T = ()> = Result<T, Failure>;

/// A sentence that says what went wrong, and one that says what to do.
#[derive(Debug)]
pub struct Failure {
    what: String,
    remedy: Option<String>,
}

impl Failure {
    /// A failure that so far says only what went wrong.
    pub fn new(what: impl Into<String>) -> Self {
        Self { what: what.into(), remedy: None }
    }

    /// The same failure, with what to do about it.
    pub fn remedy(mut self, remedy: impl Into<String>) -> Self {
        self.remedy = Some(remedy.into());
        self
    }

    /// The same failure, with what to do about it unless it says so already.
    pub fn or_remedy(self, remedy: &str) -> Self {
        if self.remedy.is_some() { self } else { self.remedy(remedy) }
    }
}

impl Display for Failure {
    fn fmt(&self, out: &mut Formatter<'_>) -> fmt::Result {
        write!(out, "{}", self.what)?;
        match &self.remedy {
            Some(remedy) => write!(out, "\n{remedy}"),
            None => Ok(()),
        }
    }
}

/// Says which thing an outside error was about.
pub trait About<T> {
    /// Turns the error into a failure that begins with `doing`.
    fn about(self, doing: impl Display) -> Outcome<T>;
}

impl<T, E: Display> About<T> for Result<T, E> {
    fn about(self, doing: impl Display) -> Outcome<T> {
        self.map_err(|error| Failure::new(format!("{doing}: {error}")))
    }
}
