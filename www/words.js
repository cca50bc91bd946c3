// @ts-check
/** Every word of the page, in English. Another language is one more file like this. */

/** @typedef {import("./records.js").Problem} Problem */

/** Whether an amount as typed is spoken of in the singular. @param {string} text */
export const one = (text) => /^\s*(?:about )?(1|½|¼|¾|⅓|⅔|⅛|half( a)?|a|1\/[1-9]\d*)\s*(\p{L}|$)/u.test(text);

/** Units by code: one of them, several of them. @type {Record<string, [string, string]>} */
export const units = {
  ml: ["ml", "ml"], cl: ["cl", "cl"], dl: ["dl", "dl"], l: ["l", "l"],
  dash: ["dash", "dashes"], drop: ["drop", "drops"], dropper: ["dropper", "droppers"],
  bar_spoon: ["bar spoon", "bar spoons"], splash: ["splash", "splashes"],
  rinse: ["rinse", "rinses"], drizzle: ["drizzle", "drizzles"],
  us_fl_oz: ["fl oz, US", "fl oz, US"], imp_fl_oz: ["fl oz, imp.", "fl oz, imp."],
  us_tsp: ["tsp, US", "tsp, US"], metric_tsp: ["tsp, 5 ml", "tsp, 5 ml"],
  us_tbsp: ["tbsp, US", "tbsp, US"], metric_tbsp: ["tbsp, 15 ml", "tbsp, 15 ml"], au_tbsp: ["tbsp, Aus.", "tbsp, Aus."],
  us_cup: ["cup, US", "cups, US"], metric_cup: ["cup, 250 ml", "cups, 250 ml"],
  us_gill: ["gill, US", "gills, US"], imp_gill: ["gill, imp.", "gills, imp."],
  us_pint: ["pint, US", "pints, US"], imp_pint: ["pint, imp.", "pints, imp."],
  g: ["g", "g"], kg: ["kg", "kg"], oz: ["oz", "oz"], lb: ["lb", "lb"],
  piece: ["piece", "pieces"], bottle: ["of the bottle", "bottles"],
  g_per_ml: ["g/ml", "g/ml"], ml_per_g: ["ml/g", "ml/g"],
};

/** @type {Record<string, string>} */
export const unitGroups = {
  rough: "Rough measures", metric: "Metric", kitchen: "Spoons, ounces, cups", other: "Weight and count", part: "Part of it",
};

/** How money below one whole unit is written. @type {Record<string, (figure: string) => string>} */
export const minor = {
  GBP: (n) => `${n}p`, GIP: (n) => `${n}p`, FKP: (n) => `${n}p`, SHP: (n) => `${n}p`,
  USD: (n) => `${n}¢`, CAD: (n) => `${n}¢`, MXN: (n) => `${n}¢`,
  AUD: (n) => `${n}c`, NZD: (n) => `${n}c`, ZAR: (n) => `${n}c`, SGD: (n) => `${n}c`,
  EUR: (n) => `${n}\u00a0ct`, CHF: (n) => `${n}\u00a0Rp.`, PLN: (n) => `${n}\u00a0gr`,
  SEK: (n) => `${n}\u00a0öre`, DKK: (n) => `${n}\u00a0øre`, NOK: (n) => `${n}\u00a0øre`,
};

export const words = {
  name: "Farthing",
  shut: "Close this",
  likely: "Likely answers",
  letters: "abc: write words",
  anything: "anything",
  printed: (/** @type {string} */ day, /** @type {string} */ currency, /** @type {boolean} */ reclaims) =>
    `${day}. Costs in ${currency}, ${reclaims ? "without tax, which is got back" : "with tax, which is not got back"}.`,
  /** @param {string} name @param {string[]} fields @param {boolean} mine @param {string} price */
  clash: (name, fields, mine, price) => {
    const what = fields.map((field) => clashing[field] ?? field).join(" and ");
    const stands = mine ? "What you kept here stands" : "What was kept there stands";
    return `${name || "This"}: ${what} was changed in another tab too. ${stands}${fields.includes("paid") && price ? `: ${price}` : ""}.`;
  },
  unitOf: (/** @type {string} */ label) => `${label}: unit`,
};

/** What two tabs may both change, by field. @type {Record<string, string>} */
const clashing = {
  name: "the name", paid: "the price", holds: "what it holds", wastage_percent: "the waste", rough: "the size of a measure", measured: "what was measured", lines: "what is in it",
  strength: "the strength", keeps_days: "how long it keeps", allergens: "the allergens", warns: "what it carries", have: "what is on hand", spirit: "the spirit",
  price: "the price", target_percent: "the margin", method: "how it is mixed", water: "the water", without_alcohol: "how it is sold", a_week: "the pace",
};

/** What a blank is, for those who do not see the sentence around it. */
export const labels = {
  price: "What you paid",
  bottles: "How many bottles that paid for",
  discount: "What came off: a percentage or a sum",
  delivery: "What delivery added",
  tax: "How tax stands in the price",
  tax_percent: "Tax rate in percent",
  holds: "How much one bottle holds",
  name: "Of what",
  wastage: "Percent that never leaves the bottle",
  measure: "The measure",
  note: "What else is said of it",
  charge: "What is charged",
};

export const clauses = {
  buys: "buys",
  each: "each",
  of: "of",
  and: "and",
  for: "for",
  bottles: "bottles",
  less: "less",
  off: "off",
  plus: "plus",
  delivery: "delivery",
  tax: "tax",
  at: "at",
  wasted: "% waste",
  cost: (/** @type {boolean} */ single) => (single ? "costs" : "cost"),
  taxes: { in: "is in the price", out: "comes on top", none: "is not charged" },
  /** @type {Record<string, string>} */
  also: { bottles: "a case", discount: "discount", delivery: "delivery", tax: "tax", wastage: "waste" },
};

/** The usual bottles, as text and unit. */
export const usualSizes = [
  ["100", "ml"], ["200", "ml"], ["500", "ml"], ["700", "ml"], ["750", "ml"], ["1", "l"], ["50", "ml"], ["1", "kg"], ["100", "piece"],
];

/** The usual measures. */
export const usualMeasures = [
  { label: "1 dash", text: "1", unit: "dash" },
  { label: "2 dashes", text: "2", unit: "dash" },
  { label: "2–3 dashes", text: "2-3", unit: "dash" },
  { label: "½ dropper", text: "½", unit: "dropper" },
  { label: "dropper", text: "1", unit: "dropper" },
  { label: "25 ml", text: "25", unit: "ml" },
  { label: "50 ml", text: "50", unit: "ml" },
  { label: "5–10 ml", text: "5-10", unit: "ml" },
  { label: "about 50 ml", text: "about 50", unit: "ml" },
  { label: "bar spoon", text: "1", unit: "bar_spoon" },
  { label: "½ bottle", text: "½", unit: "bottle" },
  { label: "1 piece", text: "1", unit: "piece" },
];

/** The four places of the thumb bar. */
export const places = {
  sum: "Dash",
  glass: "Glass",
  shelf: "Shelf",
  house: "House",
};

export const sum = {
  heading: "What a dash or a pour costs",
  hint: "three numbers, one answer",
  poured: "the measure",
  count: "in the bottle",
  each: (/** @type {string} */ unit) => `a ${units[unit]?.[0] ?? unit}`,
  countAndLeft: (/** @type {string} */ left) => (left ? `in the bottle, ${left} over` : "in the bottle"),
  countBetween: (/** @type {string} */ low, /** @type {string} */ high) => `in the bottle: ${low} to ${high}`,
  keep: "Keep this bottle on the shelf",
  keepChange: "Keep the change on the shelf",
  kept: (/** @type {string} */ name) => `${name} is on the shelf.`,
  clear: "start over",
  cleared: "Cleared.",
  undo: "Undo",
  working: "working",
  howReckoned: (/** @type {string} */ figure) => `${figure}: see the working`,
  spoken: (/** @type {string} */ measure, /** @type {string} */ name, /** @type {string} */ cost) =>
    `${measure}${name ? ` of ${name}` : ""}: ${cost}`,
  problem: (/** @type {Problem} */ problem) => problemWords(problem),
  workingOf: { cost: "What the measure costs", amount: "The measure", count: "How many in the bottle", cost_each: "What one of it costs" },
};

export const example = {
  line: "A worked example, from a bar we made up: the Slow Heron.",
  clear: "Clear it",
  cleared: "The example is gone.",
};

/** Why there is no core, by reason. */
export const gone = {
  no_wasm: "This browser does not run the part that does the sums (WebAssembly is off, perhaps by a lockdown or strict security setting). Allow it for this page, or open the page in another browser.",
  not_loaded: "The part that does the sums did not arrive. What you typed stays. Try again when there is signal; after one full visit none is needed.",
  trapped: "The sums stopped with a fault of ours. What you typed is kept; load the page again to go on.",
  slow: "Still fetching the sums. What you type stays.",
  again: "Load again",
};

/** @type {Record<string, string>} */
const kinds = { volume: "by volume (ml, dashes)", mass: "by weight (g, oz)", count: "in pieces", bottle: "in bottles" };
/** @type {Record<string, string>} */
const tryKinds = { volume: "25 ml or 2 dashes", mass: "20 g", count: "1 piece", bottle: "half a bottle" };

/** A sentence for each problem: what is wrong and what to try. @type {Record<string, (v: Record<string, string>) => string>} */
const problems = {
  number_unreadable: (v) => `“${v.typed}” is not a number this page can read. Try 2, 1.5 or 1 1/2.`,
  number_ambiguous: (v) => `“${v.typed}” could be ${v.either} or ${v.or}. Which is it?`,
  number_too_long: (v) => `That has more decimals than can be kept exactly. Try ${v.most ?? "12"} or fewer.`,
  number_negative: () => "Less than nothing cannot be paid or poured. Leave out the minus.",
  number_must_be_positive: (v) => positive[v.blank] ?? "This must be more than 0.",
  number_zero_below: (v) => `“${v.typed}” divides by nought. Try 1/2.`,
  too_big: (v) => `That is more than this page reckons with. Try ${v.most ?? "a smaller number"} or less.`,
  whole_number_needed: (v) => `“${v.typed}” must be a whole number. Try 6 or 12.`,
  range_backwards: (v) => `“${v.typed}” begins with the larger number. Try it the other way round: 5-10, not 10-5.`,
  range_not_here: () => "One number is wanted here, not from one to another. Try 700 ml.",
  one_reading: () => "One reading does not tell how one differs from the next, so that is assumed. Do it once more.",
  readings_equal: () => "All the readings are the same: they may hide how one differs from the next. Try more at a time, or a finer scale.",
  below_step: () => "That is less than one step, which says little. Try more of them at a time.",
  density_out_of_range: () => "No drink is as light or as heavy as that. Look again at the volume and what it weighs.",
  too_many_readings: (v) => `${v.most ?? "So many"} readings are enough. Take some out.`,
  temperature_out_of_range: (v) => `This holds from ${v.least} to ${v.most} °C. Try 20, or leave it empty.`,
  unit_missing: (v) => `${v.typed} of what? Try ${v.typed} ml.`,
  unit_unknown: (v) => `“${v.typed}” is no measure this page knows. Try ml, cl, oz, dash or piece.`,
  holds_unit: () => "A bottle holds a volume, a weight or a count. Try 700 ml, 1 kg or 40 pieces.",
  kind_mismatch: (v) => `What is in this bottle is counted ${kinds[v.bottle] ?? v.bottle}, the measure ${kinds[v.measure] ?? v.measure}. Try ${tryKinds[v.bottle] ?? "another unit"}.`,
  percent_out_of_range: (v) => `A percentage here lies between ${v.least} and ${v.most}.`,
  discount_over_price: () => "More comes off than was asked. Try a smaller discount, or 10 %.",
  currency_unknown: (v) => `“${v.typed}” is not a currency in use. Choose one in House.`,
  choice_unknown: () => "That choice is none of those offered. Choose again.",
  bottle_unknown: () => "That bottle is no longer on the shelf. Pick another, or price it here.",
  rough_must_be_volume: () => "A dash or a splash is so much liquid. Try 0.9 ml.",
  name_too_long: (v) => `That name is longer than is kept. Try ${v.most} letters or fewer.`,
  too_many_lines: (v) => `A glass takes ${v.most} lines at most. Try putting two small things into one.`,
  too_many_bottles: (v) => `The shelf is full at ${v.most} bottles. Take one away first.`,
  too_many_specs: (v) => `The shelf is full at ${v.most} glasses. Take one away first.`,
  figures_too_long: () => "These numbers need more digits than are kept exactly. Try rounder ones.",
  parts_need_size: () => "How large is one part? Try 30 ml.",
  price_unreadable: () => "A price is written like this: rye whisky: 28 for 70 cl at 40 %.",
  measure_missing: () => "How much of it goes in? Try 25 ml, 2 dashes or 1 piece.",
  recipe_too_long: () => "That is longer than a recipe. Try its list of ingredients alone.",
  recipe_unreadable: () => "No recipe can be read in that, or it is damaged. Try its list of ingredients, as text.",
  link_unreadable: () => "That link is cut off or damaged, so nothing of it was taken. Ask for it once more.",
  link_newer: () => "That link was made by a newer version. Load the page again, then open the link once more.",
  link_too_long: () => "That is more than a link can carry. Save it to a file instead, under Shelf.",
  link_long: ({ most }) => `Some apps cut off a link of more than ${most} characters, and this one has more. Send it without its prices, or as text.`,
  request_unreadable: () => "The page asked in a way its sums do not understand. Load the page again.",
  storage_refused: () => "This browser keeps nothing for this page (a private window, or its settings). The sums go on; save to a file before you leave.",
  storage_full: () => "This device has no room left, so the last change is not kept. Save to a file, then take something away.",
  record_set_aside: () => "Something kept here could not be read. It was set aside, not deleted: find it under Shelf, as a file.",
  record_newer: () => "Something kept here was written by a newer version. It was left alone; load the page again to get that version.",
  file_unreadable: () => "That file is not one saved from here, or it is damaged. Nothing was changed. Try another.",
  file_newer: () => "That file was saved by a newer version. Load the page again, then try once more.",
  file_too_large: () => "That file is larger than any saved from here. Nothing was changed.",
};
/** What must be more than nought, by the last word of its place. @type {Record<string, string>} */
const positive = {
  holds: "A bottle holds more than 0. Try what the label says: 700 ml.",
  measure: "A measure is more than 0. Try 1 dash or 25 ml.",
  bottles: "A case holds at least 1 bottle. Try 6, or leave it empty.",
  keeps_days: "An open bottle keeps for more than 0 days. Leave it empty if it keeps for ever.",
  a_week: "A pace is more than 0 a week. Try 6, or leave it empty.",
};

/** @param {Problem} problem @param {string} [mark] the mark before decimals here */
export function problemWords(problem, mark = ".") {
  const told = problems[problem.code];
  if (!told) return `This cannot be reckoned (${problem.code}). Try writing it another way.`;
  const { either, or, ...rest } = problem.values;
  const local = (/** @type {string | undefined} */ text) => text?.replace(".", mark);
  const blank = problem.place.split(".").pop() ?? "";
  return told(/** @type {Record<string, string>} */ ({ ...rest, blank, either: local(either), or: local(or) }));
}
/** Codes that say something of a result which holds all the same. */
export const remarks = ["one_reading", "readings_equal", "below_step"];
/** Every code that has a sentence. */
export const problemCodes = /* @__PURE__ */ Object.keys(problems);

/** A rough measure as one speaks of it. @param {string} code */
export const roughNamed = (code) => `A ${units[code]?.[0] ?? code}`;

/** Where an assumed size comes from, by its unit. @type {Record<string, string>} */
export const sources = {
  dash: "The usual trade convention, 1/32 of a US fluid ounce; dasher tops that were measured gave from 0.15 ml, a kitchen trial up to 1.23 ml.",
  drop: "The metric drop of water (UCUM; USP 1101 lets it weigh 45 to 55 mg); a drop of spirit is less than half of it.",
  dropper: "A bar dropper, filled; a maker says slightly under 1 ml. How far it may be off is common practice, no source.",
  bar_spoon: "1/8 of a US fluid ounce, from a vintage bar book; the trade sells 2.5 to 5 ml.",
  splash: "One US teaspoon, from a trade table that also says 3.7 ml. The most is common practice, no source.",
  rinse: "Common practice, no source.",
  drizzle: "Common practice, no source.",
};

/** @typedef {string} T */
/** Of what a part of a doubt is, if it has a name. @param {T} name */
const of = (name) => (name ? ` of ${name}` : "");
/** How large one is. @param {T} code @param {T} name */
const size = (code, name) => `the size of ${roughNamed(code).toLowerCase()}${of(name)}`;

/** What is left of a doubt, from how many percent on. @type {[number, T][]} */
const LEFT = [[83, "nine tenths"], [71, "three quarters"], [59, "two thirds"], [42, "half"], [30, "a third"], [23, "a quarter"], [15, "a fifth"], [0, "a tenth"]];
/** @param {number} percent */
const bringsDown = (percent) => `That would bring the doubt down to about ${LEFT.find(([least]) => percent >= least)?.[1]}.`;

export const ranges = {
  between: (/** @type {T} */ low, /** @type {T} */ high) => `between ${low} and ${high}`,
  about: (/** @type {T} */ about, /** @type {T} */ between) => `about ${about}, ${between}`,
};

export const doubt = {
  heading: "How sure is it?",
  howSure: (/** @type {T} */ range) => `${range}: how sure is it?`,
  measure: "Measure it",
  /** What a part of a doubt is. @type {Record<T, (code: T, name: T) => T>} */
  parts: {
    range: (_, name) => `the pour${of(name)}`,
    about: (_, name) => `the pour${of(name)}`,
    rough_assumed: (code, name) => `${size(code, name)}, assumed`,
    rough_house: (code, name) => `${size(code, name)}, yours for all bottles`,
    rough_bottle: (code, name) => `${size(code, name)}, yours`,
    rough_measured: (code, name) => `${size(code, name)}, measured`,
    fill: (_, name) => `what the law lets one bottle${of(name)} be short of its label`,
    scatter: () => "how one differs from the next",
    scatter_assumed: () => "how one differs from the next, assumed: one reading does not tell",
    vessel: () => "how true the vessel is",
    last_one: () => "the last one, which may only half fit",
    scale: () => "the step of the scale",
    marks: () => "the distance of the marks",
    density: () => "the density, from the strength",
    density_assumed: () => "the density, assumed to be that of water",
    density_weighed: () => "the density, as you weighed it",
  },
  /** How it is spread. @type {Record<T, (best: T, least: T, most: T) => T>} */
  spreads: {
    even: (_, least, most) => `${least} to ${most}, anywhere between`,
    middling: (best, least, most) => `about ${best}: ${least} to ${most}, likeliest in the middle`,
    measured: (best, least, most) => `${best}, from ${least} to ${most}`,
  },
  moves: (/** @type {T} */ by) => `moves it by ${by}`,
  /** What would help most. @type {Record<T, (code: T, name: T, left: number) => T>} */
  helps: {
    measure: (code, name, left) => `Measure the ${units[code]?.[0] ?? ""}${of(name)}. ${bringsDown(left)}`,
    pour: (_, name, left) => `Pour ${name || "it"} with a marked measure. ${bringsDown(left)}`,
    repeat: (code, name, left) => `Measure${code && ` the ${units[code]?.[0] ?? ""}${of(name)}`} a few times more. ${bringsDown(left)}`,
  },
  /** @param {T} middle @param {T} standard @param {T} factor @param {number | null} freedom @param {boolean} cut */
  made: (middle, standard, factor, freedom, cut) =>
    `That is ${middle}, with every part in its middle, less and plus ${factor} times its standard uncertainty of ${standard}`
    + `${cut ? ", cut to what the parts can make of it" : ""}. If what is assumed holds, it lies there at least 95 times in 100.`
    + `${freedom === null ? "" : ` Effective degrees of freedom: ${freedom}.`}`,
};

export const measuring = {
  heading: (/** @type {T} */ named, /** @type {T} */ name) => `${named} of ${name || "this bottle"}`,
  hint: "fill in, and it stands here",
  way: "How it is measured",
  by: "by",
  ways: { count: "counting", weigh: "weighing", read: "reading marks" },
  fill: "to fill",
  together: "at once",
  steps: "steps of",
  /** @type {Record<T, T>} */
  step: { weigh: "g", read: "ml" },
  liquid: "From what the liquid’s weight is known",
  its: "by its",
  liquids: { false: "strength", true: "known weight" },
  has: "it has",
  vol: "% vol",
  at: "at",
  where: "where",
  weighs: "weigh",
  sugar: "Sugar and solids make a liquid heavier than its strength tells. For a syrup or a liqueur, weigh a known volume of it.",
  /** @type {Record<T, T>} */
  took: { count: "it took", weigh: "weighed", read: "it read" },
  then: "then",
  labels: {
    vessel: "What the vessel holds",
    number: "How many each time",
    step: "The step of the scale or the marks",
    strength: "Strength in percent by volume",
    celsius: "How warm it is, in degrees Celsius",
    known_volume: "A known volume of it",
    known_weight: "What that volume weighs in grams",
  },
  reading: (/** @type {number} */ at) => `Reading ${at}`,
  takeOut: (/** @type {number} */ at) => `Take out reading ${at}`,
  takenOut: (/** @type {number} */ at) => `Reading ${at} is out.`,
  apart: "This one stands out from the others. It counts all the same; take it out if something went wrong.",
  done: "Use it",
  back: "Back",
  clear: "clear the measuring",
  cleared: "The measuring is cleared.",
  scatter: (/** @type {T} */ named, /** @type {T} */ by) => `From one reading to the next, one ${named} differs by about ${by}.`,
  more: (/** @type {number} */ more) => `${more} more ${more === 1 ? "reading" : "readings"} would halve the doubt.`,
  density: (/** @type {T} */ density) => `A millilitre is taken to weigh ${density} g.`,
  unmeasured: (/** @type {T} */ named, /** @type {T} */ size) => `Without this, ${named.toLowerCase()} is taken as ${size}.`,
  between: (/** @type {T} */ mean, /** @type {T} */ deviation) => `Your measured bottles: ${mean} on average, and as a rule ${deviation} more or less.`,
};

export const working = {
  heading: "How it was reckoned",
  close: "Close",
  change: "Change it",
  again: "See how",
  shownAs: (/** @type {string} */ exact) => `${exact}, rounded half away from nought`,
  taken: (/** @type {string} */ what, /** @type {string} */ size) => `${what} is taken as ${size}.`,
  /** @type {Record<string, string>} */
  yours: { rough_house: "That is your own size, for all bottles.", rough_bottle: "That is your own size, for this bottle.", rough_measured: "That was measured with this bottle." },
  /** @type {Record<string, string>} */
  rounded: { down: ", whole ones only", up: ", rounded up: a bottle opened is paid for" },
};

/** What a step of a working finds. @type {Record<string, string>} */
export const steps = {
  paid: "what was paid",
  paid_each: "for one bottle",
  usable: "what can be poured",
  holds: "what it holds",
  measure_amount: "the measure",
  cost: "the cost",
  cost_each: "the cost of one",
  cost_bottle: "the cost of a bottle",
  count: "how many it gives",
  used: "what they use",
  left_over: "what is left over",
  bottles_opened: "bottles opened",
  whole_cost: "charged whole",
  difference: "the difference",
  glass: "the glass",
  change: "the change",
  readings: "the readings together",
  measured_size: "the size of one",
  density: "what a millilitre weighs",
};

/** What an operand of a working is. @type {Record<string, string>} */
export const terms = {
  price: "price",
  discount_percent: "what is left after the discount",
  discount_sum: "discount",
  delivery: "delivery",
  bottles: "bottles",
  tax_out: "price with tax as a percentage",
  tax_in: "price with tax as a percentage",
  holds: "what it holds",
  unit_size: "size of the unit",
  rough_assumed: "size assumed",
  rough_house: "your size",
  rough_bottle: "your size for this bottle",
  rough_measured: "size measured",
  bottle_size: "what the bottle holds",
  wastage: "percent that leaves the bottle",
  measure: "measure",
  measure_amount: "measure",
  usable: "what can be poured",
  paid: "paid",
  paid_each: "paid for one",
  cost: "cost of the measure",
  cost_bottle: "cost of a bottle",
  whole_cost: "charged whole",
  bottles_opened: "bottles opened",
  used: "what they use",
  count: "measures",
  line: "line",
  hundred: "hundred",
  reading: "reading",
  repeats: "times it was done",
  together: "how many each time",
  vessel: "what the vessel holds",
  density_assumed: "like water, assumed",
  density_by_strength: "from the strength",
  density_weighed: "as weighed",
  known_volume: "known volume",
  known_weight: "its weight",
};

export const update = {
  ready: "A new version is ready.",
  taken: "A new version is in use in another tab.",
  take: "Use it",
};

export const glass = {
  heading: "What a glass costs",
  a: "a",
  name: "Name of the glass",
  nameHint: "glass of anything",
  unnamed: "A glass",
  hint: "add what goes in",
  whichBottle: "which bottle?",
  charged: "by",
  charges: { poured: "what is poured", whole: "the whole bottle" },
  difference: (/** @type {string} */ charge, /** @type {string} */ figure) =>
    charge === "whole" ? `adds ${figure} for what is poured away` : `the whole bottle would add ${figure}`,
  working: "working",
  up: "up",
  down: "down",
  remove: "take out",
  removed: (/** @type {string} */ name) => `${name || "The line"} is out.`,
  row: (/** @type {string} */ measure, /** @type {string} */ name) => [measure, name].filter(Boolean).join(measure && name ? " of " : "") || "an empty line",
  noPrice: "no price yet",
  without: (/** @type {number} */ lines) => (lines === 1 ? "without 1 line" : `without ${lines} lines`),
  addBottle: "a bottle",
  /** Small things: label, name, measure, its unit, what it is bought by. @type {[string, string, string, string, string][]} */
  small: [
    ["garnish", "garnish", "1", "piece", "piece"], ["ice", "ice", "100", "g", "kg"],
    ["straw", "straw", "1", "piece", "piece"], ["napkin", "napkin", "1", "piece", "piece"],
  ],
  keep: "Keep this glass on the shelf",
  keepChange: "Keep the change on the shelf",
  kept: (/** @type {string} */ name) => `${name} is on the shelf.`,
  fresh: "start a new glass",
  started: "A new glass.",
  keepExample: "Keep it as mine",
  example: "An example. Kept as yours, it brings its bottles along: then put your own prices in them, under Shelf.",
  lineCost: "What this line costs",
  noted: (/** @type {T} */ row, /** @type {T} */ note) => (note ? `${row} (${note})` : row),
  note: "note",
  noteHint: "chilled",
};

export const rough = {
  is: (/** @type {string} */ named) => `${named} is`.toLowerCase(),
  sizeOf: (/** @type {string} */ named) => `How large ${named.toLowerCase()} is`,
  from: (/** @type {T} */ size, /** @type {T} */ least, /** @type {T} */ most, /** @type {T} */ source) => `Taken as ${size}, and may be ${least} to ${most}. ${source}`,
  measureIt: "measure it",
  measure: (/** @type {T} */ named) => `measure it: ${named.toLowerCase()}`,
  measured: (/** @type {T} */ size, /** @type {T} */ between) => `Measured: ${[size, between].filter(Boolean).join(", ")}. That is what counts.`,
  unfinished: (/** @type {T} */ named) => `The measuring of ${named.toLowerCase()} is not finished, so it does not count yet.`,
};

export const bottle = {
  fresh: "A new bottle",
  hint: "price and size give it",
  change: "A bottle of the shelf",
  rough: "Its own dash, splash and the like",
  moves: "Glasses this moves",
  fromTo: (/** @type {string} */ before, /** @type {string} */ after) => `${before}, now ${after}`,
  by: (/** @type {string} */ change) => (change.startsWith("-") || change.startsWith("−") ? change : `+${change}`),
  earlier: "What it was",
  until: (/** @type {string} */ day, /** @type {string} */ cost, /** @type {string} */ holds) => `${cost} for ${holds}, until ${day}`,
  keep: "Keep it on the shelf",
  keepChange: "Keep the change",
  leave: "leave it as it was",
  use: "reckon with it",
  remove: "take it off the shelf",
  removed: (/** @type {string} */ name) => `${name} is off the shelf.`,
  left: (/** @type {string} */ name) => `What you changed of ${name || "the new bottle"} was left.`,
};

export const shelf = {
  heading: "The shelf",
  find: "Find on the shelf",
  findHint: "find a name",
  add: "New bottle",
  empty: "Nothing stands here yet. What you keep stays on this device, and only there.",
  none: "Nothing here by that name. Try fewer letters.",
  perUnit: (/** @type {string} */ cost, /** @type {string} */ each) => `${cost} ${each}`,
};

export const file = {
  save: "save everything to a file",
  bring: "bring a file back",
  name: (/** @type {string} */ day) => `farthing-${day}.json`,
  asideName: "farthing-set-aside.txt",
  aside: (/** @type {number} */ count) => (count === 1 ? "1 record was set aside: save it as a file" : `${count} records were set aside: save them as a file`),
  nothing: "Everything in that file is here already.",
  would: (/** @type {number} */ fresh, /** @type {number} */ changed) => `That file would add ${fresh} and change ${changed}. Nothing has changed yet.`,
  /** @type {Record<string, string>} */
  changes: { new: "new", changed: "changed", same: "the same" },
  /** @type {Record<string, string>} */
  kinds: { bottle: "a bottle", spec: "a glass", house: "the house" },
  take: "Bring them in",
  leave: "leave it",
  taken: "They are on the shelf.",
};

export const house = {
  heading: "The house",
  currency: "Currency",
  moneyIn: "in",
  tax: "tax",
  percent: "% as a rule",
  i: "which I",
  reclaim: "Whether you get the tax back",
  reclaims: { false: "don’t get back", true: "get back" },
  rates: ["5", "10", "19", "20", "21", "25"],
  kitchen: "Whose spoons, cups and ounces",
  spoon: "spoons",
  kitchens: { uk: "and ounces, UK", us: "and ounces, US", au: "and cups, Australia", metric: "metric" },
  sure: "How sure",
  fill: "Whether a doubt counts what the law lets one bottle be short of its label",
  bottles: "a bottle",
  fills: { false: "holds what it says", true: "may be short" },
  fillAbout: "The law lets one bottle be a little short of its label (Directive 76/211/EEC). On average they must hold what they say, so no doubt counts that unless you want it to.",
  rough: "Rough measures",
  roughAbout: "No standard says how large a dash is. These are assumptions: write your own over any of them, also from one to another (0.6-1 ml), or measure a bottle’s own under Shelf. A pour may be written so too: 5-10 ml, about 200 ml, most of a 200 ml bottle.",
  install: "On the home screen",
  installHow: "Tap Share, then Add to Home Screen. It then opens like an app, and works with no signal.",
};

export const about = {
  heading: "About this page",
  day: "2026-11-25",
  /** @param {string} day */
  lines: (day) => [
    "Farthing reckons what a drink costs from what you type. It sends nothing anywhere and keeps what you keep on this device alone. A browser may clear it: save to a file now and then.",
    "A cost is not a price, and nothing here is advice on tax. Ask the tax office or an accountant what you may reclaim.",
    "Spirits are sold in measures that the law of the place lays down; a dash or a free pour is no such measure. Keep to the local rules.",
    "A bottle’s label says what is in it, this page does not: ask about allergens before you pour. Alcohol harms; nobody should drive after drinking it.",
    `Written on ${day}. Rules change; where they differ, the local ones hold.`,
  ],
};
