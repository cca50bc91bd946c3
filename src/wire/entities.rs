//! The characters that HTML writes as `&amp;` and its like, where a page's data hold them in a text.

use alloc::string::String;

/// Names, each with what it stands for: the marks of HTML, fractions, the letters and signs of five
/// languages. The standard has two thousand; a name that is not here stays as it is written.
const NAMES: &str = "\
    amp=&|lt=<|gt=>|quot=\"|apos='|nbsp=\u{a0}|frac12=½|half=½|frac14=¼|frac34=¾|frac13=⅓|\
    frac23=⅔|frac18=⅛|frac38=⅜|frac58=⅝|frac78=⅞|frasl=⁄|deg=°|times=×|middot=·|bull=•|hellip=…|\
    ndash=–|mdash=—|lsquo=‘|rsquo=’|ldquo=“|rdquo=”|laquo=«|raquo=»|reg=®|trade=™|copy=©|auml=ä|\
    ouml=ö|uuml=ü|Auml=Ä|Ouml=Ö|Uuml=Ü|szlig=ß|agrave=à|acirc=â|aacute=á|atilde=ã|aring=å|\
    aelig=æ|ccedil=ç|egrave=è|eacute=é|ecirc=ê|euml=ë|igrave=ì|iacute=í|icirc=î|iuml=ï|ntilde=ñ|\
    ograve=ò|oacute=ó|ocirc=ô|oslash=ø|oelig=œ|ugrave=ù|uacute=ú|ucirc=û|Agrave=À|Ccedil=Ç|\
    Egrave=È|Eacute=É|Ecirc=Ê|Ntilde=Ñ|OElig=Œ";

/// Characters between `&` and `;`: the longest name, or the number of any character.
const MOST_ENTITY: usize = 8;

/// A text with each entity as the character it stands for.
pub fn decoded(text: &str) -> String {
    let mut plain = String::new();
    let mut rest = text;
    while let Some((before, behind)) = rest.split_once('&') {
        plain.push_str(before);
        rest = match entity(behind) {
            Some((c, behind)) => {
                plain.push(c);
                behind
            }
            None => {
                plain.push('&');
                behind
            }
        };
    }
    plain.push_str(rest);
    plain
}

/// The character of an entity behind its `&`, and what follows it.
fn entity(text: &str) -> Option<(char, &str)> {
    let (at, _) =
        text.char_indices().take(MOST_ENTITY.saturating_add(1)).find(|(_, c)| *c == ';')?;
    let (name, rest) = text.split_at_checked(at)?;
    let c = match name.strip_prefix('#') {
        Some(number) => numbered(number)?,
        None => named(name)?,
    };
    Some((c, rest.get(1..)?))
}

/// A character by its number; none that no text holds.
fn numbered(number: &str) -> Option<char> {
    let hexadecimal = number.strip_prefix(['x', 'X']);
    let code = match hexadecimal {
        Some(digits) => u32::from_str_radix(digits, 16),
        None => number.parse(),
    };
    char::from_u32(code.ok()?).filter(|c| !c.is_control())
}

fn named(name: &str) -> Option<char> {
    let mut rows = NAMES.split('|');
    rows.find_map(|row| row.strip_prefix(name)?.strip_prefix('=')?.chars().next())
}
