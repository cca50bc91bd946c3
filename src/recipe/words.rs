//! The words of a recipe that no blank knows, in five languages.
//!
//! A translator adds words; `|` stands between two. A unit's is written as `folded` leaves it: in lower
//! case, without accents and points, one space between its parts. A plural in `s` is read too. What the
//! blanks know (`reading::words`) need not stand here; where a word differs from it, it wins.
//!
//! The lists are texts, because a list of many texts is three times as large in the compiled core.

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

/// The words of a list, one by one.
pub fn each(words: &str) -> impl Iterator<Item = &str> {
    words.split('|')
}

/// Whether a list holds a word.
pub fn holds(words: &str, word: &str) -> bool {
    each(words).any(|own| own == word)
}

use Row::{As, Code, NoSize, Part, Piece};

const UNIT_WORDS: &[(Row, &str)] = &[
    // English.
    (Code("oz"), "oz wt|oz weight|oz by weight"),
    (As("tbsp"), "tb|tbs|tblsp|tblspn|tbspn|tablespoonful"),
    (As("tsp"), "tspn|teaspoonful"),
    (Code("bar_spoon"), "bar spoonful|barspoonful|bs"),
    (Code("g"), "grs|gr|gm|gms"),
    (Code("ml"), "m l|mil"),
    (Part, "part|parts"),
    (
        Piece,
        "slice|sprig|cube|leaf|leaves|wedge|wheel|half wheel|twist|strip|stick|stalk|pod|chunk|\
         coin|ring|lump|clove|spear|segment|ribbon|disc|curl|swath",
    ),
    (
        NoSize,
        "pinch|pinches|handful|bunch|bunches|knob|scoop|sprinkle|grating|squeeze|glug|shot|jigger|\
         pony|finger|measure|glass|glasses|can|tin|jar|packet|quart|qt|gallon|gal|spoon|spoonful|\
         few|dozen|dessertspoon|inch|inches|thumb|fifth|count|counts|cm|bag|box|\
         boxes|carton|dollop|dram|nip|tot|jug|pitcher|tray",
    ),
    // German. A spoon is a metric spoon (DIN leaves it open; kitchens take 15 and 5 ml).
    (Code("cl"), "c l|zentiliter"),
    (Code("dl"), "deziliter"),
    (Code("g"), "gramm"),
    (Code("metric_tbsp"), "el|essloffel|essl"),
    (Code("metric_tsp"), "tl|teeloffel|teel|kl|kaffeeloffel"),
    (Code("bar_spoon"), "bl|barloffel"),
    (Code("dash"), "spritzer"),
    (Code("splash"), "schuss"),
    (Code("drop"), "tropfen"),
    (As("oz"), "unze|unzen"),
    (Code("bottle"), "flasche|flaschen"),
    (Code("piece"), "stuck|stucke|stueck|stk"),
    (Part, "teil|teile"),
    (
        Piece,
        "scheibe|scheiben|zweig|zweige|blatt|blatter|wurfel|zeste|zesten|spalte|spalten|stiel|\
         stiele|stangel|stange|stangen|streifen|spirale",
    ),
    (
        NoSize,
        "prise|prisen|handvoll|tasse|dose|glas|schluck|hauch|becher|pck|packchen|packung|bund|msp|\
         messerspitze|kugel|kugeln|spur|etwas|viertel|drittel|achtel",
    ),
    // French.
    (Code("g"), "gramme"),
    (
        Code("metric_tbsp"),
        "c a s|c a soupe|cas|cuillere a soupe|cuilleres a soupe|cs|c s|cuil a soupe|cuilleree a soupe|cuillerees a soupe|grande cuillere|grandes cuilleres",
    ),
    (
        Code("metric_tsp"),
        "c a c|c a cafe|cac|cuillere a cafe|cuilleres a cafe|cuillere a the|c c|c a the|cuil a cafe|cuilleree a cafe|cuillerees a cafe|petite cuillere|petites cuilleres",
    ),
    (Code("bar_spoon"), "cuillere de bar|cuilleres de bar|cuillere a melange"),
    (Code("dash"), "trait"),
    (Code("drop"), "goutte"),
    (Code("splash"), "giclee"),
    (Code("drizzle"), "filet"),
    (As("oz"), "once"),
    (Code("bottle"), "bouteille"),
    (
        Piece,
        "tranche|rondelle|feuille|brin|branche|morceau|morceaux|quartier|tige|baton|gousse|clou|\
         ecorce|carre|jus",
    ),
    (
        NoSize,
        "pincee|poignee|verre|larme|doigt|noix|sachet|canette|boite|botte|peu|quelques|soupcon|\
         pointe|paquet|mesure|cuillere|cuilleree",
    ),
    // Spanish.
    (Code("ml"), "mililitro"),
    (Code("cl"), "centilitro"),
    (Code("l"), "litro"),
    (Code("g"), "gramo"),
    (Code("metric_tbsp"), "cucharada|cda|cucharada sopera|cucharadas soperas|cuchara"),
    (
        Code("metric_tsp"),
        "cucharadita|cdta|cdita|cucharilla|cucharadita de cafe|cucharaditas de cafe",
    ),
    (Code("bar_spoon"), "cucharada de bar|cuchara de bar|cucharilla de bar|cucharilla mezcladora"),
    (Code("dash"), "golpe"),
    (Code("drop"), "gota"),
    (Code("splash"), "chorro|chorrito|chorreon"),
    (As("oz"), "onza"),
    (Code("bottle"), "botella"),
    (Part, "parte"),
    (
        Piece,
        "rodaja|hoja|rama|ramita|pieza|trozo|terron|terrones|cubo|gajo|hojita|piel|cascara|corteza|\
         vaina|tira|cubito|zumo",
    ),
    (
        NoSize,
        "pizca|punado|vaso|taza|pellizco|manojo|copa|lata|sobre|poco|medida|chupito|toque|dedo|\
         cuarto|tercio",
    ),
    // Italian.
    (Code("ml"), "millilitri"),
    (Code("cl"), "centilitri"),
    (Code("l"), "litri"),
    (Code("g"), "grammo|grammi"),
    (
        Code("metric_tbsp"),
        "cucchiaio|cucchiai|cucchiaio da tavola|cucchiai da tavola|cucchiaio da minestra",
    ),
    (
        Code("metric_tsp"),
        "cucchiaino|cucchiaini|cucchiaino da caffe|cucchiaini da caffe|cucchiaino da te|cucchiaini da te",
    ),
    (Code("bar_spoon"), "cucchiaino da bar|cucchiaini da bar|cucchiaio da bar|cucchiai da bar"),
    (Code("dash"), "spruzzo|spruzzi"),
    (Code("drop"), "goccia|gocce"),
    (Code("splash"), "goccio|schizzo|spruzzata"),
    (Code("drizzle"), "filo"),
    (As("oz"), "oncia"),
    (Code("bottle"), "bottiglia|bottiglie"),
    (Part, "parti"),
    (
        Piece,
        "fetta|fette|foglia|foglie|rametto|rametti|pezzo|pezzi|zolletta|zollette|cubetto|cubetti|\
         spicchio|spicchi|scorza|scorze|scorzetta|scorzette|stecca|stecche|baccello|ramoscello|\
         chicco|chicchi|buccia|fettina|fettine|succo",
    ),
    (
        NoSize,
        "pizzico|manciata|bicchiere|tazza|tazzina|bustina|lattina|misurino|po|qualche|ciuffo|\
         mazzetto|punta|etto|etti",
    ),
];

/// Letters that mean a unit only as they are written: a large T is a tablespoon, a small one a teaspoon.
const LETTERS: [(&str, &str); 4] = [("T", "tbsp"), ("t", "tsp"), ("c", "cup"), ("C", "cup")];

/// What may stand between a number and its unit: "three quarters *of an* ounce".
const FILLERS: [&str; 4] = ["of ", "a ", "an ", "the "];

/// What words mean behind a number; nothing if they are no unit.
pub fn meaning(words: &str, kitchen: Kitchen) -> Option<Means> {
    let named = |word: &str| unit_named(word, kitchen, None).ok().flatten();
    let letter = LETTERS.iter().find(|(letter, _)| *letter == words);
    // Elsewhere "c." is the first of the letters of a spoon.
    if let Some((_, word)) = letter.filter(|(_, word)| *word != "cup" || kitchen == Kitchen::Us) {
        return named(word).map(Means::Unit);
    }
    let words = folded(words);
    let mut words = words.as_str();
    while let Some(rest) = FILLERS.iter().find_map(|filler| words.strip_prefix(filler)) {
        words = rest;
    }
    let row =
        |word: &str| UNIT_WORDS.iter().find(|(_, words)| holds(words, word)).map(|(row, _)| *row);
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
pub const NUMBERS: &[(i128, &str)] = &[
    (
        1,
        "half an|half a|eine halbe|einer halben|ein halber|ein halbes|halbe|halber|halbes|un demi|\
         une demi|demi|media|medio|mezzo|mezza|un demi-|une demi-|demi-",
    ),
    (2, "ein|eine|einen|einer|un|une|una|uno"),
    (3, "one and a half|eineinhalb|anderthalb"),
    (4, "a couple of|a couple|couple of|zwei|deux|dos|due"),
    (6, "drei|trois|tres|tre"),
    (8, "vier|quatre|cuatro|quattro"),
    (14, "seven"),
    (18, "nine"),
];

/// Units of which the word alone is more than one, beyond those in `s`.
pub const PLURALS: &str = "cucchiai|cucchiaini|gocce|spruzzi|bottiglie|flaschen|unzen|grammi|litri";

/// What stands before a number that is not exact.
pub const ABOUT: &str = "\
    about|around|approximately|approx.|approx|roughly|circa|ca.|ca|~|≈|etwa|ungefähr|environ|\
    aproximadamente|unos|unas";

/// What stands between two numbers of which either may be.
pub const TO: &str = "-|–|—|‑|to|or|bis|oder|ou|/-|à|a|o";

/// What stands between a whole number and a part of one: "1-1/2", "2 and 1/2".
pub const BEFORE_PARTS: &str = "-|&|+|and|und|et|y|e";

/// Of those, the words that are so short that they only count between digits.
pub const TO_BETWEEN_DIGITS: &str = "à|a|o";

/// What stands before a second measure that says the same as the first.
pub const SAME: &str = "/|=|or|oder|ou";

/// What stands before a second measure that is added to the first.
pub const AND: &str = "+|&|plus|and|und|et|y|e|più";

/// What may stand between a number and its unit, and says how full it is.
pub const FULLNESS: &str = "\
    good|generous|scant|heaped|heaping|level|rounded|small|big|large|short|long|thin|thick|full|\
    fresh|guter|kleiner|kräftiger|großer|petit|petite|bon|bonne|pequeño|buen|piccolo|good-sized|\
    sm|lg|med|medium|gestrichener|gestrichene|gehäufter|gehäufte|knapper|kleine|große|grande|\
    colmada|colmado|rasa|raso|colmo|piccola|grosse|gros";

/// What links a unit to a name. Only in lower case: a name may begin with such a word.
pub const LINKS: &str = "\
    of the|of a|of an|of|de la|de l’|de l'|de|d’|d'|du|des|del|di|della|dello|dell’|dell'|von|vom";

/// Articles behind a number: "half *a* lime".
pub const ARTICLES: &str = "a|an|of a|of an|of one|of the|the";

/// What says that a line decorates, at its start.
pub const GARNISH: &str = "\
    garnish with|garnish:|garnish -|garnish –|to garnish:|for garnish:|for the garnish:|\
    decoration:|garnitur:|deko:|dekoration:|garniture :|garniture:|décoration :|décoration:|\
    decoración:|guarnición:|guarnizione:|decorazione:|zum garnieren:|zur garnitur:|\
    pour la décoration :|pour la décoration:|décor :|décor:|pour décorer :|pour décorer:|para decorar:|\
    para la decoración:|per la decorazione:|per guarnire:";

/// The same as a note, or at its end.
pub const FOR_GARNISH: &str = "\
    for garnish|to garnish|as garnish|as a garnish|for the garnish|garnish|zum garnieren|\
    als garnitur|pour décorer|pour la décoration|para decorar|para adornar|per guarnire|\
    per decorare";

/// What says that something may be left out.
pub const OPTIONAL: &str = "\
    optional|optionnel|facultatif|facultative|opcional|opzionale|facoltativo|facoltativa|wer mag|\
    nach belieben";

/// What is done, at the start of a line: it becomes a note. The longer of two stands first.
pub const LEADS: &str = "\
    top it up with|topped up with|top up with|top off with|topped with|top with|top up:|top:|\
    fill up with|fill with|finish with|rinse with|rinse the glass with|float with|float:|rinse:|\
    rim:|add|the juice of|fresh juice of|juice of|juice from|juice and zest of|zest of|peel of|\
    auffüllen mit|aufgießen mit|mit|saft von|saft|compléter avec|compléter de|allonger avec|\
    allonger de|jus d’|jus d'|jus de|le jus d’|le jus d'|le jus de|completar con|rellenar con|\
    zumo de|jugo de|el zumo de|el jugo de|colmare con|completare con|top di|succo di|il succo di|\
    top de|zum auffüllen:|compléter avec du|compléter avec de la|compléter avec de l’|\
    compléter avec de l'|allonger d’|allonger d'";

/// Leads that only count before a number: "juice of half a lime", but "jus de citron" is a name.
pub const LEADS_BEFORE_NUMBERS: &str = "\
    fresh juice of|juice of|juice from|zest of|peel of|saft von|saft|jus d’|jus d'|jus de|zumo de|\
    jugo de|succo di";

/// What is done, at the end of a name: it becomes a note.
pub const TAILS: &str = "\
    to top up|to top|to fill|to taste|as needed|zum auffüllen|auffüllen|aufgießen|nach geschmack|\
    pour compléter|au goût|para completar|al gusto|a colmare|q.b|and serve|and enjoy";

/// What stands above other lines, where no colon says so.
pub const HEADINGS: &str = "\
    ingredients|for the glass|method|instructions|directions|preparation|steps|notes|zutaten|\
    zubereitung|anleitung|ingrédients|préparation|étapes|ingredientes|preparación|ingredienti|\
    preparazione";

/// What stands before how many a recipe makes.
pub const MAKES: &str = "\
    serves|makes|yields|yield|servings|serving size|portions|ergibt|portionen|rinde|porciones|\
    porzioni";

/// The same, where a word for glasses or guests follows. A heading that begins so is no title.
pub const FOR: &str = "for|für|pour|para|per|dosi per|zutaten für|ingredients for";

/// Glasses and guests.
pub const DRINKS: &str = "\
    drink|drinks|cocktail|cocktails|serving|servings|glass|glasses|people|persons|person|guests|\
    portion|portions|portionen|personen|gläser|glas|personnes|personne|verres|verre|personas|\
    persona|porciones|copas|copa|persone|porzioni|bicchieri|bicchiere";

/// What is done, at the start of a line that is nothing else.
pub const METHOD: &str = "\
    shake|dry shake|stir|strain|double strain|fine strain|pour over|pour into|pour the|pour all|\
    pour everything|pour ingredients|muddle|combine|build|blend|serve|mix|place|put|chill|whisk|\
    express|rub|discard|swirl|roll|dump|transfer|heat|boil|bring|simmer|let|leave|enjoy|lengthen|\
    churn|infuse|dissolve|gently|slowly|carefully|then|to make|to serve|add all|add ice|add the|\
    add everything|add remaining|fill a|fill the|fill with ice|in a|in the|into a|using a|\
    over ice|all ingredients|method:|glass:|glassware:|ice:|prep time:|total time:|note:|notes:|\
    tip:|tips:|hinweis:|tipp:|préparation :|préparation:|astuce :|astuce:|im shaker|\
    im glas|im rührglas|in einem|in einen|in ein|auf eis|alle zutaten|alles|glas:|dans un|\
    dans une|dans le|verser|versez|mélanger|mélangez|secouer|secouez|frapper|frappez|remuer|\
    remuez|filtrer|filtrez|servir|servez|ajouter|ajoutez|piler|pilez|mettre|mettez|en una|en un|\
    écraser|écrasez|agitar|remover|colar|verter|mezclar|machacar|añadir|poner|in uno|in una|in un|shakerare|\
    agitare|mescolare|filtrare|versare|servire|aggiungere|pestare";

/// The same, at its end.
pub const METHOD_ENDS: &str = "\
    abseihen|strainen|servieren|schütteln|shaken|rühren|verrühren|mixen|mischen|geben|gießen|\
    füllen|lassen|zerdrücken";

/// What shares a measure out: "1 oz *each* gin and vermouth" is not one of both.
pub const EACH: &str = "each|je|cada|chacun|ciascuno";

/// In what something is sold, behind a measure: "6 oz *can* pineapple juice".
pub const CONTAINERS: &str = "\
    bottle|can|tin|jar|carton|pack|packet|dose|flasche|canette|lata|lattina";
