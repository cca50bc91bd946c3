// @ts-check
/**
 * Lines of recipes, each with what a person reads in it. All of them were written for this purpose: joined from the
 * words of the trade in an order that is the same at every run. No recipe, brand or person is in them.
 */

/**
 * A piece of a line. `why` names the reason for which the public reader of ingredients reads it otherwise.
 * @typedef {{ text: string, why?: string }} Piece
 * @typedef {Piece & { least: number, most?: number }} Amount
 * @typedef {Piece & { unit: string }} Unit as the core calls it; without a size it has none
 * @typedef {Piece & { ml?: number }} End
 * @typedef {object} Line
 * @property {string} line
 * @property {[least: number, most: number] | null} amount
 * @property {string} unit as the core calls it
 * @property {string} name
 * @property {string} asked the code of the question that must be asked, if one must
 * @property {string} spelled the unit as it stands there
 * @property {string[]} why
 */

/** @param {number} seed */
function chance(seed) {
  let state = seed;
  const below = (/** @type {number} */ most) => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return Math.floor((state / 2 ** 32) * most);
  };
  return /** @template T @param {readonly T[]} list @returns {T} */ (list) => list[below(list.length)];
}

/** Why the public reader reads otherwise. */
export const WHY = {
  words: "a number in words",
  dashed: "a mixed number with a dash",
  before: "a bullet, a box or what it is for stands before the measure",
  metric: "the metric measure in brackets counts",
  unknown: "a unit that they do not know",
  counts: "what is counted is a unit to them and a note to us",
  sizeless: "a measure without a size is asked about",
};

/** @type {Amount[]} */
const AMOUNTS = [
  ...["1", "2", "3", "4", "5", "6", "8", "10", "12", "15", "20", "25", "30", "45", "50", "60", "90", "120", "0.5", "1.5", "2.5", ".5", ".75", "0.75", "0.25", "1.25", "22.5"].map((text) => ({ text, least: Number(text) })),
  { text: "1/2", least: 1 / 2 }, { text: "1/4", least: 1 / 4 }, { text: "3/4", least: 3 / 4 }, { text: "1 1/2", least: 3 / 2 }, { text: "2 1/4", least: 9 / 4 }, { text: "1 3/4", least: 7 / 4 },
  { text: "½", least: 1 / 2 }, { text: "¼", least: 1 / 4 }, { text: "¾", least: 3 / 4 }, { text: "1½", least: 3 / 2 }, { text: "1 ½", least: 3 / 2 }, { text: "2¼", least: 9 / 4 }, { text: "1⁄2", least: 1 / 2 },
  { text: "1-1/2", least: 3 / 2, why: WHY.dashed }, { text: "1-½", least: 3 / 2, why: WHY.dashed },
  { text: "2-3", least: 2, most: 3 }, { text: "3-4", least: 3, most: 4 }, { text: "2–3", least: 2, most: 3 }, { text: "2 – 3", least: 2, most: 3 }, { text: "5 - 10", least: 5, most: 10 }, { text: "1 to 2", least: 1, most: 2 }, { text: "2 or 3", least: 2, most: 3 }, { text: "½-¾", least: 1 / 2, most: 3 / 4 }, { text: "1/2 to 3/4", least: 1 / 2, most: 3 / 4 },
  ...[["a", 1], ["one", 1], ["two", 2], ["three", 3], ["half a", 1 / 2], ["one and a half", 3 / 2]].map(([text, least]) => ({ text: String(text), least: Number(least), why: WHY.words })),
  { text: "two to three", least: 2, most: 3, why: WHY.words }, { text: "one or two", least: 1, most: 2, why: WHY.words },
];

/** @type {Unit[]} */
const UNITS = [
  ...Object.entries({
    us_fl_oz: "oz|oz.|ounce|ounces|Oz|fl oz|fl. oz.|fluid ounces",
    ml: "ml|mL|ml.|milliliters|millilitres",
    cl: "cl|cl.|centiliters",
    l: "l|L|liter|litres",
    g: "g|grams|gram",
    kg: "kg",
    lb: "lb|lbs|lb.|pounds",
    us_tsp: "tsp|tsp.|teaspoon|teaspoons",
    us_tbsp: "tbsp|Tbsp|Tbsp.|tablespoon|tablespoons of",
    us_cup: "cup|cups|cup of",
    us_pint: "pint|pints",
    dash: "dash|dashes|dashes of|dash of",
    drop: "drop|drops|drops of",
    bar_spoon: "barspoon|barspoons|bar spoon|bar spoons of|bsp|bar-spoon",
    splash: "splash|splashes of|splash of",
    dropper: "dropper|droppers of",
    bottle: "bottle of|bottles|bottle",
    part: "part|parts|parts of",
    piece: "piece of|pieces|slice|slices of|sprig|sprigs of|cube|cubes of|wedges|wedge of|sticks|stick of|leaves|leaves of|strip of|strips||||||||",
  }).flatMap(([unit, texts]) => texts.split("|").map((text) => ({ text, unit }))),
  ..."pinch|pinches of|pinch of|handful of|handfuls of|can of|cans|bunch of|jigger of|shots of|scoop of|packet of".split("|").map((text) => ({ text, unit: "", why: WHY.sizeless })),
];

const NAMES = [
  "gin", "London dry gin", "rye", "rye whisky", "dark rum", "white rum", "12-year-old rum", "overproof rum", "bourbon", "pisco", "aged brandy", "apple brandy", "blanco tequila", "mezcal", "vodka",
  "dry vermouth", "sweet vermouth", "fino sherry", "orange liqueur", "maraschino liqueur", "coffee liqueur", "crème de cassis", "elderflower cordial", "absinthe", "orange bitters", "aromatic bitters", "walnut bitters",
  "lime juice", "fresh lime juice", "freshly squeezed lemon juice", "grapefruit juice", "pineapple juice", "tomato juice", "simple syrup", "rosemary syrup", "rich demerara syrup", "honey syrup", "cinnamon syrup", "grenadine", "orgeat", "agave nectar", "passion fruit purée",
  "egg white", "egg", "heavy cream", "half-and-half", "coconut cream", "whole milk", "soda water", "tonic water", "ginger beer", "ginger ale", "sparkling wine", "dry cider", "lager", "cold brew coffee", "espresso", "green tea", "hot water",
  "sugar", "caster sugar", "sea salt", "saline", "mint", "mint leaves", "basil", "thyme", "rosemary", "cucumber", "lemon", "limes", "orange", "orange peel", "lemon twist", "cherry", "brandied cherries", "olives", "cardamom pods", "star anise", "black pepper", "hot sauce", "sugar cubes", "ice cubes", "raspberries",
];

/** Behind the name. @type {End[]} */
const ENDS = [
  ...Array(14).fill({ text: "" }),
  ...[", chilled", " (optional)", ", optional", " - cold", " (freshly squeezed)", "; cold", " [cold]", ", plus more to taste", " for garnish", "."].map((text) => ({ text })),
  { text: " (60 ml)", ml: 60, why: WHY.metric }, { text: " (45ml)", ml: 45, why: WHY.metric },
];

/** @type {Piece[]} */
const STARTS = [...Array(20).fill({ text: "" }), ...["- ", "* ", "• ", "Garnish: ", "[ ] "].map((text) => ({ text, why: WHY.before }))];

/** Units that stay where a metric measure follows in brackets. */
const STAY = ["ml", "cl", "l", "g", "kg", "piece"];

/** So many lines in English, for a kitchen of the United States. @param {number} count @returns {Line[]} */
export function english(count) {
  const one = chance(20261125);
  /** @type {Map<string, Line>} */
  const lines = new Map();
  while (lines.size < count) {
    const [start, amount, unit, name, end] = [one(STARTS), one(AMOUNTS), one(UNITS), one(NAMES), one(ENDS)];
    const joined = /\d$/.test(amount.text) && /^(oz|ml|mL|cl|g|kg|l)$/.test(unit.text) && one([true, false]);
    const line = `${start.text}${amount.text}${joined ? "" : " "}${unit.text} ${name}${end.text}`.replace("  ", " ");
    // Of a bottle, and of what has no size, only one is as much as the brackets say.
    const alone = amount.least === 1 && !amount.most;
    const ml = STAY.includes(unit.unit) || (["", "bottle"].includes(unit.unit) && !alone) ? undefined : end.ml;
    const sizeless = !unit.unit && !ml;
    const decorates = start.text.startsWith("Garnish") || end.text.endsWith("garnish");
    const asked = sizeless && !decorates ? "unit_unknown" : unit.unit === "part" && !ml ? "parts_need_size" : "";
    lines.set(line, {
      line, name, asked,
      amount: sizeless ? null : ml ? [ml, ml] : [amount.least, amount.most ?? amount.least],
      unit: ml ? "ml" : unit.unit,
      spelled: unit.text.replace(/ of$/, ""),
      why: [start.why, amount.why, unit.why, end.why].flatMap((why) => why ?? []),
    });
  }
  return [...lines.values()];
}

/** Amounts of the four other languages: in digits, and with the words of each. */
const DIGITS = [["1", 1], ["2", 2], ["3", 3], ["4", 4], ["0,5", 0.5], ["1,5", 1.5], ["2,25", 2.25], ["½", 0.5], ["1½", 1.5], ["1/2", 0.5], ["1 1/2", 1.5], ["2-3", 2, 3], ["2 – 3", 2, 3]];

/** What follows a number and means a unit, and what links it to a name. */
const TONGUES = {
  de: {
    amounts: [["2 bis 3", 2, 3], ["1 oder 2", 1, 2], ["ein", 1], ["eine", 1], ["zwei", 2], ["drei", 3], ["anderthalb", 1.5], ["eine halbe", 0.5]],
    links: [" "],
    names: ["Gin", "Rum", "Zucker", "Zitronensaft", "Limettensaft", "Orangenbitter", "Sodawasser", "Honig", "Minze", "Eiweiß", "Zuckersirup", "Rosmarinsirup", "trockener Wermut"],
    ends: ["", "", "", ", frisch", " (optional)", " (gut gekühlt)", " zum Garnieren"],
    units: { metric_tbsp: "EL|EL.|Esslöffel|Essl.", metric_tsp: "TL|Tl.|Teelöffel|Teel.", dash: "Spritzer|Dash|Dashes", splash: "Schuss|Schuß", drop: "Tropfen", bar_spoon: "BL|Barlöffel", ml: "ml", cl: "cl", l: "l|Liter", g: "g|Gramm", piece: "Scheiben|Scheibe|Zweige|Blätter|Stück|Würfel|Stängel", bottle: "Flasche|Flaschen", part: "Teil|Teile" },
  },
  fr: {
    amounts: [["2 à 3", 2, 3], ["1 ou 2", 1, 2], ["un", 1], ["une", 1], ["deux", 2], ["trois", 3], ["un demi", 0.5]],
    links: [" de ", " de la ", " du "],
    names: ["gin", "rhum blanc", "sucre", "sirop de canne", "citron vert", "bitter", "soda", "miel", "menthe", "crème", "vermouth sec", "jus de citron"],
    ends: ["", "", "", ", frais", " (facultatif)", " (bien froid)", " pour décorer"],
    units: { metric_tbsp: "c. à s.|c. à soupe|càs|cuillères à soupe|cuillère à soupe", metric_tsp: "c. à c.|c. à café|càc|cuillères à café|cuillère à café", dash: "trait|traits", splash: "giclée", drop: "goutte|gouttes", bar_spoon: "cuillère de bar|cuillères de bar", drizzle: "filet", ml: "ml", cl: "cl", l: "l|litre", g: "g|grammes", piece: "tranches|rondelle|feuilles|brins|morceau|quartier", bottle: "bouteille", part: "part|parts" },
  },
  es: {
    amounts: [["2 a 3", 2, 3], ["1 o 2", 1, 2], ["un", 1], ["una", 1], ["dos", 2], ["tres", 3], ["media", 0.5], ["medio", 0.5]],
    links: [" de ", " de la ", " del "],
    names: ["ginebra", "ron blanco", "azúcar", "jarabe simple", "zumo de lima", "bitter", "soda", "miel", "menta", "vermut seco", "jugo de limón"],
    ends: ["", "", "", ", frío", " (opcional)", " (bien frío)", " para decorar"],
    units: { metric_tbsp: "cda.|cda|cdas.|cucharada|cucharadas", metric_tsp: "cdta.|cdta|cdita|cucharadita|cucharaditas", dash: "golpe|golpes", splash: "chorrito|chorro", drop: "gota|gotas", bar_spoon: "cuchara de bar|cucharada de bar", ml: "ml|mililitros", cl: "cl|centilitros", l: "l|litro", g: "g|gr|gramos", piece: "hojas|rodaja|rodajas|ramita|terrón|gajos", bottle: "botella", part: "parte|partes" },
  },
  it: {
    amounts: [["2 a 3", 2, 3], ["1 o 2", 1, 2], ["un", 1], ["uno", 1], ["una", 1], ["due", 2], ["tre", 3], ["mezzo", 0.5], ["mezza", 0.5]],
    links: [" di ", " della ", " dello ", " del "],
    names: ["gin", "rum bianco", "zucchero", "sciroppo", "succo di limone", "bitter", "soda", "miele", "menta", "vermouth secco", "latte"],
    ends: ["", "", "", ", fresco", " (opzionale)", " (ben freddo)", " per guarnire"],
    units: { metric_tbsp: "cucchiaio|cucchiai|cucchiai da tavola", metric_tsp: "cucchiaino|cucchiaini|cucchiaino da tè", dash: "spruzzo|spruzzi", splash: "goccio|schizzo|spruzzata", drop: "goccia|gocce", bar_spoon: "cucchiaino da bar|cucchiaini da bar", drizzle: "filo", ml: "ml|millilitri", cl: "cl|centilitri", l: "l|litri", g: "g|grammi", piece: "foglie|fetta|fette|rametto|zolletta|scorza", bottle: "bottiglia|bottiglie", part: "parte|parti" },
  },
};

/** So many lines in each of the four other languages, for a metric kitchen that writes a comma. @param {number} count @returns {Line[]} */
export function foreign(count) {
  return Object.values(TONGUES).flatMap(({ amounts, links, names, ends, units }) => {
    const one = chance(count);
    const spellings = Object.entries(units).flatMap(([unit, texts]) => texts.split("|").map((text) => ({ unit, text })));
    /** @type {Map<string, Line>} */
    const lines = new Map();
    while (lines.size < count) {
      const [[written, least, most], unit, link, name, end] = [one([...DIGITS, ...amounts]), one(spellings), one(links), one(names), one(ends)];
      const line = `${written} ${unit.text}${link}${name}${end}`;
      const asked = unit.unit === "part" ? "parts_need_size" : "";
      lines.set(line, { line, name, asked, amount: [Number(least), Number(most ?? least)], unit: unit.unit, spelled: unit.text, why: [] });
    }
    return [...lines.values()];
  });
}
