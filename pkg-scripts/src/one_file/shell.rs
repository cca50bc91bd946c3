//! What stands around the packed parts: `index.html` with a policy of its own and nothing to fetch.

use crate::failure::{Failure, Outcome};

/// How the lines begin that the one file does without: what is elsewhere, what its mark of byte order
/// says, and what only those read who search the web.
const LEFT_OUT: [&str; 4] = ["<link ", "<script ", "<meta charset=", "<meta name=\"description\""];

const POLICY_LINE: &str = "<meta http-equiv=\"Content-Security-Policy\"";

const END: &str = "</body>\n";

/// What the shell must know of the rest. Hashes are as a policy names them.
pub struct Shell<'a> {
    pub icon: &'a str,
    pub style_hash: &'a str,
    pub script_hashes: [&'a str; 2],
}

impl Shell<'_> {
    /// The text before and after everything else.
    pub fn around_the_rest(&self, index: &str) -> Outcome<(String, String)> {
        let mut shell = String::new();
        for line in index.lines().filter(|line| !LEFT_OUT.iter().any(|out| line.starts_with(out))) {
            if line.starts_with(POLICY_LINE) {
                shell += &format!(
                    "{POLICY_LINE} content=\"{}\">\n{}\n",
                    self.policy(),
                    self.icon_link()
                );
            } else {
                shell += &format!("{line}\n");
            }
        }
        let what_lacks =
            [POLICY_LINE, END].into_iter().find(|part| shell.matches(part).count() != 1);
        if let Some(part) = what_lacks {
            return Err(Failure::new(format!(
                "www/index.html needs `{}` exactly once, at the start of a line.",
                part.trim_end(),
            )));
        }
        let end = shell.find(END).unwrap_or(shell.len());
        let after = shell.split_off(end);
        Ok((shell, after))
    }

    /// Nothing is fetched and nothing is sent; only these very texts run.
    fn policy(&self) -> String {
        format!(
            "default-src 'none'; script-src {} 'wasm-unsafe-eval'; style-src {}; img-src data:; \
             connect-src 'none'; base-uri 'none'; form-action 'none'; \
             require-trusted-types-for 'script'; trusted-types farthing",
            self.script_hashes.join(" "),
            self.style_hash,
        )
    }

    fn icon_link(&self) -> String {
        let icon = self.icon.trim_end().replace('"', "'").replace('#', "%23");
        format!("<link rel=\"icon\" href=\"data:image/svg+xml,{icon}\">")
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const SHELL: Shell = Shell {
        icon: "<svg fill=\"#123\"/>\n",
        style_hash: "'style'",
        script_hashes: ["'a'", "'b'"],
    };

    #[test]
    fn leaves_the_words_and_drops_what_leads_elsewhere() {
        let index = "<head>\n\
            <meta http-equiv=\"Content-Security-Policy\" content=\"script-src 'self'\">\n\
            <meta charset=\"utf-8\">\n\
            <meta name=\"description\" content=\"A page\">\n\
            <link rel=\"stylesheet\" href=\"page.css\">\n\
            <script type=\"module\" src=\"main.js\"></script>\n\
            </head>\n<body>\n<p>Words</p>\n</body>\n</html>\n";
        let (before, after) = SHELL.around_the_rest(index).unwrap();
        assert_eq!(
            before,
            "<head>\n\
             <meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; \
             script-src 'a' 'b' 'wasm-unsafe-eval'; style-src 'style'; img-src data:; \
             connect-src 'none'; base-uri 'none'; form-action 'none'; \
             require-trusted-types-for 'script'; trusted-types farthing\">\n\
             <link rel=\"icon\" href=\"data:image/svg+xml,<svg fill='%23123'/>\">\n\
             </head>\n<body>\n<p>Words</p>\n",
        );
        assert_eq!(after, "</body>\n</html>\n");
    }

    #[test]
    fn refuses_an_index_without_its_policy() {
        assert_eq!(
            SHELL.around_the_rest("<body>\n</body>\n").map(|_| ()).unwrap_err().to_string(),
            "www/index.html needs `<meta http-equiv=\"Content-Security-Policy\"` exactly once, \
             at the start of a line.",
        );
    }
}
