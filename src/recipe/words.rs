//! The words of a recipe that no blank knows, in five languages.
//!
//! A translator adds rows. A word is written as `folded` leaves it: in lower case, without accents
//! and points, one space between words. A plural in `s` is read too. What the blanks know
//! (`reading::words`) need not stand here; where a row differs from it, the row wins.

use super::likeness::folded;
use crate::measure::{Unit, unit};
use crate::reading::{Kitchen, unit_named};

/// What a word behind a number means.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Means {
    /// A unit.
    Unit(&'static Unit),
    /// An ounce: of a bottle that is weighed the blank makes it a mass.
    Ounce(&'static Unit),
    /// One of something that is counted, such as a sprig.
    Piece,
    /// A measure that nobody has given a size, such as a pinch.
    NoSize,
    /// A part of the drink.
    Part,
}

/// A row of the table.
#[derive(Clone, Copy)]
enum Row {
    /// A unit by its code.
    Code(&'static str),
    /// As the blanks read this English word, in this person's kitchen.
    As(&'static str),
    Piece,
    NoSize,
    Part,
}

use Row::{As, Code, NoSize, Part, Piece};

const UNIT_WORDS: &[(&str, Row)] = &[
    // English.
    ("oz wt", Code("oz")),
    ("oz weight", Code("oz")),
    ("oz by weight", Code("oz")),
    ("tbs", As("tbsp")),
    ("tblsp", As("tbsp")),
    ("teaspoonful", As("tsp")),
    ("tablespoonful", As("tbsp")),
    ("bar spoonful", Code("bar_spoon")),
    ("barspoonful", Code("bar_spoon")),
    ("bs", Code("bar_spoon")),
    ("grs", Code("g")),
    ("mil", Code("ml")),
    ("part", Part),
    ("parts", Part),
    ("slice", Piece),
    ("sprig", Piece),
    ("cube", Piece),
    ("leaf", Piece),
    ("leaves", Piece),
    ("wedge", Piece),
    ("wheel", Piece),
    ("half wheel", Piece),
    ("twist", Piece),
    ("strip", Piece),
    ("stick", Piece),
    ("stalk", Piece),
    ("pod", Piece),
    ("chunk", Piece),
    ("coin", Piece),
    ("ring", Piece),
    ("lump", Piece),
    ("clove", Piece),
    ("pinch", NoSize),
    ("pinches", NoSize),
    ("handful", NoSize),
    ("bunch", NoSize),
    ("bunches", NoSize),
    ("knob", NoSize),
    ("scoop", NoSize),
    ("sprinkle", NoSize),
    ("grating", NoSize),
    ("squeeze", NoSize),
    ("glug", NoSize),
    ("shot", NoSize),
    ("jigger", NoSize),
    ("pony", NoSize),
    ("finger", NoSize),
    ("measure", NoSize),
    ("glass", NoSize),
    ("glasses", NoSize),
    ("can", NoSize),
    ("tin", NoSize),
    ("jar", NoSize),
    ("packet", NoSize),
    ("quart", NoSize),
    ("qt", NoSize),
    ("gallon", NoSize),
    ("gal", NoSize),
    ("spoon", NoSize),
    ("spoonful", NoSize),
    ("few", NoSize),
    ("dozen", NoSize),
    // German. A spoon is a metric spoon (DIN leaves it open; kitchens take 15 and 5 ml).
    ("zentiliter", Code("cl")),
    ("deziliter", Code("dl")),
    ("gramm", Code("g")),
    ("el", Code("metric_tbsp")),
    ("essloffel", Code("metric_tbsp")),
    ("tl", Code("metric_tsp")),
    ("teeloffel", Code("metric_tsp")),
    ("bl", Code("bar_spoon")),
    ("barloffel", Code("bar_spoon")),
    ("spritzer", Code("dash")),
    ("schuss", Code("splash")),
    ("tropfen", Code("drop")),
    ("unze", As("oz")),
    ("unzen", As("oz")),
    ("flasche", Code("bottle")),
    ("flaschen", Code("bottle")),
    ("stuck", Code("piece")),
    ("stucke", Code("piece")),
    ("stueck", Code("piece")),
    ("stk", Code("piece")),
    ("teil", Part),
    ("teile", Part),
    ("scheibe", Piece),
    ("scheiben", Piece),
    ("zweig", Piece),
    ("zweige", Piece),
    ("blatt", Piece),
    ("blatter", Piece),
    ("wurfel", Piece),
    ("zeste", Piece),
    ("zesten", Piece),
    ("spalte", Piece),
    ("spalten", Piece),
    ("prise", NoSize),
    ("prisen", NoSize),
    ("handvoll", NoSize),
    ("tasse", NoSize),
    ("dose", NoSize),
    ("glas", NoSize),
    // French.
    ("gramme", Code("g")),
    ("c a s", Code("metric_tbsp")),
    ("c a soupe", Code("metric_tbsp")),
    ("cas", Code("metric_tbsp")),
    ("cuillere a soupe", Code("metric_tbsp")),
    ("cuilleres a soupe", Code("metric_tbsp")),
    ("c a c", Code("metric_tsp")),
    ("c a cafe", Code("metric_tsp")),
    ("cac", Code("metric_tsp")),
    ("cuillere a cafe", Code("metric_tsp")),
    ("cuilleres a cafe", Code("metric_tsp")),
    ("cuillere a the", Code("metric_tsp")),
    ("cuillere de bar", Code("bar_spoon")),
    ("cuilleres de bar", Code("bar_spoon")),
    ("cuillere a melange", Code("bar_spoon")),
    ("trait", Code("dash")),
    ("goutte", Code("drop")),
    ("giclee", Code("splash")),
    ("filet", Code("drizzle")),
    ("once", As("oz")),
    ("bouteille", Code("bottle")),
    ("tranche", Piece),
    ("rondelle", Piece),
    ("feuille", Piece),
    ("brin", Piece),
    ("branche", Piece),
    ("morceau", Piece),
    ("morceaux", Piece),
    ("quartier", Piece),
    ("pincee", NoSize),
    ("poignee", NoSize),
    ("verre", NoSize),
    ("tasse", NoSize),
    // Spanish.
    ("mililitro", Code("ml")),
    ("centilitro", Code("cl")),
    ("litro", Code("l")),
    ("gramo", Code("g")),
    ("cucharada", Code("metric_tbsp")),
    ("cda", Code("metric_tbsp")),
    ("cucharadita", Code("metric_tsp")),
    ("cdta", Code("metric_tsp")),
    ("cucharada de bar", Code("bar_spoon")),
    ("cuchara de bar", Code("bar_spoon")),
    ("cucharilla", Code("bar_spoon")),
    ("golpe", Code("dash")),
    ("gota", Code("drop")),
    ("chorro", Code("splash")),
    ("chorrito", Code("splash")),
    ("onza", As("oz")),
    ("botella", Code("bottle")),
    ("parte", Part),
    ("rodaja", Piece),
    ("hoja", Piece),
    ("rama", Piece),
    ("ramita", Piece),
    ("pieza", Piece),
    ("trozo", Piece),
    ("terron", Piece),
    ("terrones", Piece),
    ("cubo", Piece),
    ("gajo", Piece),
    ("pizca", NoSize),
    ("punado", NoSize),
    ("vaso", NoSize),
    ("taza", NoSize),
    // Italian.
    ("millilitri", Code("ml")),
    ("centilitri", Code("cl")),
    ("litri", Code("l")),
    ("grammo", Code("g")),
    ("grammi", Code("g")),
    ("cucchiaio", Code("metric_tbsp")),
    ("cucchiai", Code("metric_tbsp")),
    ("cucchiaino", Code("metric_tsp")),
    ("cucchiaini", Code("metric_tsp")),
    ("cucchiaino da bar", Code("bar_spoon")),
    ("cucchiaini da bar", Code("bar_spoon")),
    ("spruzzo", Code("dash")),
    ("spruzzi", Code("dash")),
    ("goccia", Code("drop")),
    ("gocce", Code("drop")),
    ("goccio", Code("splash")),
    ("schizzo", Code("splash")),
    ("filo", Code("drizzle")),
    ("oncia", As("oz")),
    ("bottiglia", Code("bottle")),
    ("bottiglie", Code("bottle")),
    ("parti", Part),
    ("fetta", Piece),
    ("fette", Piece),
    ("foglia", Piece),
    ("foglie", Piece),
    ("rametto", Piece),
    ("rametti", Piece),
    ("pezzo", Piece),
    ("pezzi", Piece),
    ("zolletta", Piece),
    ("zollette", Piece),
    ("cubetto", Piece),
    ("cubetti", Piece),
    ("spicchio", Piece),
    ("spicchi", Piece),
    ("scorza", Piece),
    ("pizzico", NoSize),
    ("manciata", NoSize),
    ("bicchiere", NoSize),
    ("tazza", NoSize),
];

/// Letters that mean a unit only as they are written: a large T is a tablespoon, a small one a teaspoon.
const LETTERS: [(&str, &str); 4] = [("T", "tbsp"), ("t", "tsp"), ("c", "cup"), ("C", "cup")];

/// What may stand between a number and its unit: "three quarters *of an* ounce".
const FILLERS: [&str; 4] = ["of ", "a ", "an ", "the "];

/// What words mean behind a number; nothing if they are no unit.
pub fn meaning(words: &str, kitchen: Kitchen) -> Option<Means> {
    let named = |word: &str| unit_named(word, kitchen, None).ok().flatten();
    if let Some((_, word)) = LETTERS.iter().find(|(letter, _)| *letter == words) {
        return named(word).map(Means::Unit);
    }
    let words = folded(words);
    let mut words = words.as_str();
    while let Some(rest) = FILLERS.iter().find_map(|filler| words.strip_prefix(filler)) {
        words = rest;
    }
    let row = |words: &str| UNIT_WORDS.iter().find(|(text, _)| *text == words).map(|(_, row)| *row);
    let blank = match row(words).or_else(|| row(words.strip_suffix('s')?)) {
        Some(Code(code)) => return unit(code).map(Means::Unit),
        Some(Piece) => return Some(Means::Piece),
        Some(NoSize) => return Some(Means::NoSize),
        Some(Part) => return Some(Means::Part),
        Some(As(word)) => word,
        None => words,
    };
    let ounce = matches!(blank, "oz" | "ounce" | "ounces" | "ozs");
    named(blank).map(if ounce { Means::Ounce } else { Means::Unit })
}

/// Numbers as words, in halves, beyond those that the blanks know.
pub const NUMBERS: &[(&str, i128)] = &[
    ("a couple of", 4),
    ("a couple", 4),
    ("couple of", 4),
    ("half an", 1),
    ("half a", 1),
    ("one and a half", 3),
    ("seven", 14),
    ("nine", 18),
    // German.
    ("eine halbe", 1),
    ("einer halben", 1),
    ("ein halber", 1),
    ("ein halbes", 1),
    ("halbe", 1),
    ("halber", 1),
    ("halbes", 1),
    ("eineinhalb", 3),
    ("anderthalb", 3),
    ("ein", 2),
    ("eine", 2),
    ("einen", 2),
    ("einer", 2),
    ("zwei", 4),
    ("drei", 6),
    ("vier", 8),
    // French.
    ("un demi", 1),
    ("une demi", 1),
    ("demi", 1),
    ("un", 2),
    ("une", 2),
    ("deux", 4),
    ("trois", 6),
    ("quatre", 8),
    // Spanish.
    ("media", 1),
    ("medio", 1),
    ("una", 2),
    ("dos", 4),
    ("tres", 6),
    ("cuatro", 8),
    // Italian.
    ("mezzo", 1),
    ("mezza", 1),
    ("uno", 2),
    ("due", 4),
    ("tre", 6),
    ("quattro", 8),
];

/// Units of which the word alone is more than one, beyond those in `s`.
pub const PLURALS: &[&str] = &[
    "cucchiai",
    "cucchiaini",
    "gocce",
    "spruzzi",
    "bottiglie",
    "flaschen",
    "unzen",
    "grammi",
    "litri",
];

/// What stands before a number that is not exact.
pub const ABOUT: &[&str] = &[
    "about",
    "around",
    "approximately",
    "approx.",
    "approx",
    "roughly",
    "circa",
    "ca.",
    "ca",
    "~",
    "≈",
    "etwa",
    "ungefähr",
    "environ",
    "aproximadamente",
    "unos",
    "unas",
];

/// What stands between two numbers of which either may be.
pub const TO: &[&str] = &["-", "–", "—", "‑", "to", "or", "bis", "oder", "ou", "/-", "à", "a", "o"];

/// Of those, the words that are so short that they only count between digits.
pub const TO_BETWEEN_DIGITS: &[&str] = &["à", "a", "o"];

/// What stands before a second measure that says the same as the first.
pub const SAME: &[&str] = &["/", "=", "or", "oder", "ou"];

/// What stands before a second measure that is added to the first.
pub const AND: &[&str] = &["+", "&", "plus", "and", "und", "et", "y", "e", "più"];

/// What may stand between a number and its unit, and says how full it is.
pub const FULLNESS: &[&str] = &[
    "good",
    "generous",
    "scant",
    "heaped",
    "heaping",
    "level",
    "rounded",
    "small",
    "big",
    "large",
    "short",
    "long",
    "thin",
    "thick",
    "full",
    "fresh",
    "guter",
    "kleiner",
    "kräftiger",
    "großer",
    "petit",
    "petite",
    "bon",
    "bonne",
    "pequeño",
    "buen",
    "piccolo",
    "good-sized",
];

/// What links a unit to a name. Only in lower case: a name may begin with such a word.
pub const LINKS: &[&str] = &[
    "of the", "of a", "of an", "of", "de la", "de l’", "de l'", "de", "d’", "d'", "du", "des",
    "del", "di", "della", "dello", "dell’", "dell'", "von", "vom",
];

/// Articles behind a number: "half *a* lime".
pub const ARTICLES: &[&str] = &["a", "an", "of a", "of an", "of one", "of the", "the"];

/// What says that a line decorates, at its start.
pub const GARNISH: &[&str] = &[
    "garnish with",
    "garnish:",
    "garnish -",
    "garnish –",
    "to garnish:",
    "for garnish:",
    "for the garnish:",
    "decoration:",
    "garnitur:",
    "deko:",
    "dekoration:",
    "garniture :",
    "garniture:",
    "décoration :",
    "décoration:",
    "decoración:",
    "guarnición:",
    "guarnizione:",
    "decorazione:",
];

/// The same as a note, or at its end.
pub const FOR_GARNISH: &[&str] = &[
    "for garnish",
    "to garnish",
    "as garnish",
    "as a garnish",
    "for the garnish",
    "garnish",
    "zum garnieren",
    "als garnitur",
    "pour décorer",
    "pour la décoration",
    "para decorar",
    "para adornar",
    "per guarnire",
    "per decorare",
];

/// What says that something may be left out.
pub const OPTIONAL: &[&str] = &[
    "optional",
    "optionnel",
    "facultatif",
    "facultative",
    "opcional",
    "opzionale",
    "facoltativo",
    "facoltativa",
    "wer mag",
    "nach belieben",
];

/// What is done, at the start of a line: it becomes a note. The longer of two stands first.
pub const LEADS: &[&str] = &[
    "top it up with",
    "topped up with",
    "top up with",
    "top off with",
    "topped with",
    "top with",
    "top up:",
    "top:",
    "fill up with",
    "fill with",
    "finish with",
    "rinse with",
    "rinse the glass with",
    "float with",
    "add",
    "the juice of",
    "fresh juice of",
    "juice of",
    "juice from",
    "juice and zest of",
    "zest of",
    "peel of",
    // German.
    "auffüllen mit",
    "aufgießen mit",
    "mit",
    "saft von",
    "saft",
    // French.
    "compléter avec",
    "compléter de",
    "allonger avec",
    "allonger de",
    "jus d’",
    "jus d'",
    "jus de",
    "le jus d’",
    "le jus d'",
    "le jus de",
    // Spanish.
    "completar con",
    "rellenar con",
    "zumo de",
    "jugo de",
    "el zumo de",
    "el jugo de",
    // Italian.
    "colmare con",
    "completare con",
    "top di",
    "succo di",
    "il succo di",
];

/// Leads that only count before a number: "juice of half a lime", but "jus de citron" is a name.
pub const LEADS_BEFORE_NUMBERS: &[&str] = &[
    "fresh juice of",
    "juice of",
    "juice from",
    "zest of",
    "peel of",
    "saft von",
    "saft",
    "jus d’",
    "jus d'",
    "jus de",
    "zumo de",
    "jugo de",
    "succo di",
];

/// What is done, at the end of a name: it becomes a note.
pub const TAILS: &[&str] = &[
    "to top up",
    "to top",
    "to fill",
    "to taste",
    "as needed",
    "zum auffüllen",
    "auffüllen",
    "aufgießen",
    "nach geschmack",
    "pour compléter",
    "au goût",
    "para completar",
    "al gusto",
    "a colmare",
    "q.b.",
];
