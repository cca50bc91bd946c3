//! Reads `_headers`: a path on a line of its own, then its headers, indented.

/// Which headers go with which paths.
#[derive(Debug, Default)]
pub struct Headers {
    rules: Vec<Rule>,
}

#[derive(Debug)]
struct Rule {
    path: String,
    lines: Vec<String>,
}

impl Headers {
    /// Reads the file; lines that begin with `#` are comments.
    pub fn read(text: &str) -> Self {
        let mut rules: Vec<Rule> = Vec::new();
        for line in text.lines() {
            let held = line.trim();
            if held.is_empty() || held.starts_with('#') {
                continue;
            }
            if !line.starts_with([' ', '\t']) {
                rules.push(Rule { path: held.to_owned(), lines: Vec::new() });
            } else if let Some(rule) = rules.last_mut() {
                rule.lines.push(held.to_owned());
            }
        }
        Self { rules }
    }

    /// The `Name: value` lines for a path, in the order of the file.
    pub fn lines_for<'a>(&'a self, path: &'a str) -> impl Iterator<Item = &'a str> {
        let meant = self.rules.iter().filter(move |rule| rule.is_for(path));
        meant.flat_map(|rule| rule.lines.iter().map(String::as_str))
    }
}

impl Rule {
    fn is_for(&self, path: &str) -> bool {
        match self.path.strip_suffix('*') {
            Some(start) => path.starts_with(start),
            None => path == self.path,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn gives_each_path_its_headers() {
        let headers = Headers::read("# All\n/*\n  A: 1\n\tB: 2\n\n/embed.html\n  C: 3\n");
        let lines = |path| headers.lines_for(path).collect::<Vec<_>>();
        assert_eq!(lines("/"), ["A: 1", "B: 2"]);
        assert_eq!(lines("/embed.html"), ["A: 1", "B: 2", "C: 3"]);
    }
}
