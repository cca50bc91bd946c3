//! Words that are wrong wherever they stand.

use super::{Finding, Source, starts_of, without_comment};

/// What the page must not say, and why.
const NOT_IN_PAGE: [(&str, &str); 9] = [
    ("innerHTML", "text that a person typed could become markup; use textContent"),
    ("outerHTML", "text that a person typed could become markup; use replaceChildren"),
    ("insertAdjacentHTML", "text that a person typed could become markup; use append"),
    ("document.write", "it could write what a person typed as markup; use append"),
    ("eval(", "text would become code"),
    ("toFixed", "it rounds a float; the core rounds"),
    ("parseFloat", "it reads 1,5 as 1; the core reads"),
    ("type=\"number\"", "one browser turns 1,5 into 15; use inputmode=\"decimal\""),
    ("type='number'", "one browser turns 1,5 into 15; use inputmode=\"decimal\""),
];

/// The core neither rounds half to even nor cuts digits off without saying so.
pub fn in_core(sources: &[Source]) -> Vec<Finding> {
    let mut findings = Vec::new();
    for source in sources {
        for (number, line) in source.lines() {
            let code = without_comment(line);
            if code.contains(".round_dp(") {
                findings
                    .push(source.finding(number, "`round_dp` rounds half to even; name the rule"));
            }
            if sets_precision(code) {
                findings.push(source.finding(number, "a precision in a format cuts digits off"));
            }
        }
    }
    findings
}

/// The page computes nothing and writes text only as text.
pub fn in_page(sources: &[Source]) -> Vec<Finding> {
    let mut findings = Vec::new();
    for source in sources {
        for (number, line) in source.lines() {
            for (word, why) in NOT_IN_PAGE {
                if starts_of(line, word).next().is_some() {
                    findings.push(source.finding(number, format!("`{word}`: {why}")));
                }
            }
        }
    }
    findings
}

/// Whether a format such as `{:.2}`, `{cost:>8.2}` or `{:.*}` stands in the line.
fn sets_precision(code: &str) -> bool {
    code.split('{').skip(1).any(|after| {
        let Some((held, _)) = after.split_once('}') else {
            return false;
        };
        let Some((name, format)) = held.split_once(':') else {
            return false;
        };
        !name.contains(|letter| !super::is_name_part(letter))
            && !format.contains(char::is_whitespace)
            && format.contains('.')
    })
}

#[cfg(test)]
mod tests {
    use super::super::source;
    use super::*;

    #[track_caller]
    fn check(rule: fn(&[Source]) -> Vec<Finding>, line: &str, is_found: bool) {
        assert_eq!(!rule(&[source("a", line)]).is_empty(), is_found, "{line}");
    }

    #[test]
    fn keeps_rounding_out_of_the_core() {
        check(in_core, "cost.round_dp(2)", true);
        check(in_core, "cost.round_dp_with_strategy(2, HALF_UP)", false);
        check(in_core, "// never .round_dp(2)", false);
        check(in_core, "format!(\"{:.2}\", cost)", true);
        check(in_core, "format!(\"{cost:>8.2}\")", true);
        check(in_core, "format!(\"{:.*}\", 2, cost)", true);
        check(in_core, "format!(\"{cost:?} {}\", 1.5)", false);
        check(in_core, "Measure { holds_ml: 1.5 }", false);
    }

    #[test]
    fn keeps_markup_code_and_floats_out_of_the_page() {
        for (word, _) in NOT_IN_PAGE {
            check(in_page, &format!("x.{word} = 1"), true);
        }
        check(in_page, "retrieval(x)", false);
        check(in_page, "x.textContent = name", false);
    }
}
