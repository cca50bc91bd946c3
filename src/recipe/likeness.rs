//! Which bottle a name may mean: words held against words, without accents, capitals and plurals.

use alloc::string::String;
use alloc::vec::Vec;
use core::cmp::Reverse;

/// Bottles that are offered for a line: more are no help.
pub const MOST_CANDIDATES: usize = 3;

/// Words that say nothing of what is in a bottle.
const EMPTY_WORDS: [&str; 16] = [
    "of", "the", "a", "an", "and", "with", "de", "du", "des", "la", "le", "di", "del", "von",
    "und", "et",
];

/// Letters with an accent or of two sounds, and what they are without. The rest stay as they are.
const PLAIN_LETTERS: [(&str, &str); 12] = [
    ("àáâãäåāăą", "a"),
    ("çćč", "c"),
    ("èéêëēęě", "e"),
    ("ìíîïī", "i"),
    ("ñńň", "n"),
    ("òóôõöøō", "o"),
    ("ùúûüūů", "u"),
    ("ýÿ", "y"),
    ("šś", "s"),
    ("žźż", "z"),
    ("œ", "oe"),
    ("ßẞ", "ss"),
];

/// Whether a character stands in numbers: the digits that `reading` knows, and fractions.
pub fn is_number(c: char) -> bool {
    matches!(c, '0'..='9' | '¼'..='¾' | '⅐'..='⅞' | '٠'..='٩' | '۰'..='۹' | '०'..='९' | '০'..='৯' | '၀'..='၉' | '０'..='９')
}

/// Whether a character stands in words: all beyond ASCII do that are neither numbers nor marks.
pub fn is_letter(c: char) -> bool {
    match c {
        '\u{0}'..='\u{7f}' => c.is_ascii_alphabetic(),
        '\u{80}'..='\u{bf}' | '×' | '÷' | '\u{300}'..='\u{36f}' => false,
        '\u{60c}' | '\u{61b}'..='\u{61f}' | '\u{66a}'..='\u{66c}' => false,
        '\u{2000}'..='\u{2bff}' | '\u{3000}'..='\u{303f}' | '\u{fe00}'..='\u{fe6f}' => false,
        '\u{ff00}'..='\u{ff20}' | '\u{1f000}'..='\u{1faff}' => false,
        _ => !is_number(c),
    }
}

/// A letter as a small one: Latin, Greek and Cyrillic, as far as their capitals stand in rows. The
/// tables of all scripts would be a fifth of the reader's size.
pub fn small(c: char) -> char {
    let code = u32::from(c);
    let small = match c {
        'A'..='Z' => return c.to_ascii_lowercase(),
        '\u{c0}'..='\u{d6}' | '\u{d8}'..='\u{de}' | 'Α'..='Ρ' | 'Σ'..='Ω' | 'А'..='Я' => {
            code.saturating_add(32)
        }
        'Ѐ'..='Џ' => code.saturating_add(80),
        // In these rows a capital stands before its small letter.
        '\u{100}'..='\u{137}' | '\u{14a}'..='\u{177}' => code | 1,
        '\u{139}'..='\u{148}' | '\u{179}'..='\u{17e}' if !code.is_multiple_of(2) => {
            code.saturating_add(1)
        }
        'Ÿ' => return 'ÿ',
        'ẞ' => return 'ß',
        _ => return c,
    };
    char::from_u32(small).unwrap_or(c)
}

/// In lower case, without accents, one space between words and nothing else between them.
pub fn folded(text: &str) -> String {
    let mut plain = String::new();
    let mut gap = false;
    for c in text.chars().map(small) {
        // An accent that follows its letter as a character of its own.
        if ('\u{300}'..='\u{36f}').contains(&c) {
            continue;
        }
        if !(is_letter(c) || is_number(c)) {
            gap = true;
            continue;
        }
        if gap && !plain.is_empty() {
            plain.push(' ');
        }
        gap = false;
        match PLAIN_LETTERS.iter().find(|(letters, _)| letters.chars().any(|own| own == c)) {
            Some((_, letter)) => plain.push_str(letter),
            None => plain.push(c),
        }
    }
    plain
}

/// A name as the words that tell it apart.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Words(Vec<String>);

impl Words {
    /// The words of a name, each once, without its plural's `s`.
    pub fn of(name: &str) -> Words {
        let mut words: Vec<String> = Vec::new();
        for word in folded(name).split(' ').filter(|word| !EMPTY_WORDS.contains(word)) {
            let word = match word.strip_suffix('s') {
                Some(one) if one.len() > 2 && !one.ends_with('s') => one,
                _ => word,
            };
            if !word.is_empty() && !words.iter().any(|own| own == word) {
                words.push(word.into());
            }
        }
        Words(words)
    }

    fn common(&self, with: &Words) -> usize {
        self.0.iter().filter(|word| with.0.contains(word)).count()
    }
}

/// The places of the likeliest bottles for a name, the likeliest first; of equal ones the first.
///
/// A bottle all of whose words stand in the name comes before one of which some do; then the one with
/// more of them; then the one with fewer words besides. One without any is none.
///
/// ```
/// use farthing::recipe::likeness::{Words, likeliest};
/// let shelf = ["London dry gin", "Lime juice", "Limes"].map(Words::of);
/// assert_eq!(likeliest("fresh lime juice", &shelf), [1, 2]);
/// ```
pub fn likeliest(name: &str, bottles: &[Words]) -> Vec<usize> {
    let name = Words::of(name);
    let mut found: Vec<_> = Vec::new();
    for (place, bottle) in bottles.iter().enumerate() {
        let common = bottle.common(&name);
        let besides = bottle.0.len().saturating_sub(common);
        if common > 0 {
            let candidate = (besides > 0, Reverse(common), besides, place);
            // Each goes to its place among the few; the library's sorting is 8 KB of the module.
            let behind = found.partition_point(|before| *before < candidate);
            found.insert(behind, candidate);
            found.truncate(MOST_CANDIDATES);
        }
    }
    found.into_iter().map(|(.., place)| place).collect()
}

/// Whether a name says the bottle, and not only something like it: all words of one stand in the other.
/// A lemon wheel is no lemon juice, and tonic water no soda water, whatever they share.
///
/// ```
/// use farthing::recipe::likeness::{Words, is_meant};
/// assert!(is_meant("fresh lemon juice", &Words::of("Lemon juice")));
/// assert!(is_meant("gin", &Words::of("London dry gin")));
/// assert!(!is_meant("lemon wheel", &Words::of("Lemon juice")));
/// ```
pub fn is_meant(name: &str, bottle: &Words) -> bool {
    let name = Words::of(name);
    bottle.common(&name) == name.0.len().min(bottle.0.len())
}

/// The place of the bottle all of whose words stand in a name; of several the one with most words, of
/// equal ones the first.
///
/// ```
/// use farthing::recipe::likeness::{Words, whole_within};
/// let priced = ["syrup", "rosemary syrup", "lime juice"].map(Words::of);
/// assert_eq!(whole_within(&Words::of("fresh rosemary syrup"), &priced), Some(1));
/// assert_eq!(whole_within(&Words::of("lime"), &priced), None);
/// ```
pub fn whole_within<'w>(
    name: &Words,
    bottles: impl IntoIterator<Item = &'w Words>,
) -> Option<usize> {
    let whole =
        |bottle: &Words| !bottle.0.is_empty() && bottle.0.iter().all(|word| name.0.contains(word));
    let mut best: Option<(usize, usize)> = None;
    for (place, bottle) in bottles.into_iter().enumerate().filter(|(_, bottle)| whole(bottle)) {
        if best.is_none_or(|(_, most)| bottle.0.len() > most) {
            best = Some((place, bottle.0.len()));
        }
    }
    best.map(|(place, _)| place)
}
