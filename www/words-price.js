// @ts-check
/** The words of prices, strengths and cautions, in English. They come late, with what says them. */

/** @typedef {string} T */

/** The day on which the rules named here were read. */
export const readOn = "2026-11-25";

/** What a step of a working finds, besides those of `words.js`. @type {Record<T, T>} */
export const steps = {
  net: "the price without tax",
  pays: "what the guest pays",
  sale_tax: "the tax",
  keeps: "what is kept",
  margin: "the margin",
  pour_cost: "the pour cost",
  markup: "the markup",
  keeps_with_tax: "what seems to be kept, tax and all",
  margin_trap: "what that looks like",
  net_asked: "the price without tax that leaves it",
  price_asked: "with tax",
  may_cost: "what the glass may cost",
  line_may_cost: "what this line may cost",
  bottle_at_most: "what its bottle may cost",
  measure_at_most: "how much of it the glass can take",
  price_at_most: "the price at most",
  cost_kept: "a pour, what spoils included",
  glass_kept: "the glass, what spoils included",
  without: "the glass without it",
  same_money: "what the same money buys",
  needs_line: "what these glasses need",
  needs: "what is needed",
  short: "what is missing",
  buys: "bottles to buy",
  outlay: "what they cost",
  brings: "what they bring",
  outlay_all: "all of it together",
  outlay_each: "for one glass",
};

/** What an operand of a working is, besides those of `words.js`. @type {Record<T, T>} */
export const terms = {
  sale_price: "price",
  sale_tax_in: "price with tax as a percentage",
  sale_tax_rate: "tax rate",
  net: "price without tax",
  pays: "what the guest pays",
  cost_glass: "cost of the glass",
  keeps: "kept",
  keeps_with_tax: "kept, tax and all",
  cost_part: "what the wanted margin leaves for the cost",
  net_asked: "price without tax",
  may_cost: "what the glass may cost",
  other_lines: "the other lines",
  line_may_cost: "what this line may cost",
  bottle_at_most: "what its bottle may cost",
  pours_kept: "pours that one open bottle gives on average, at this pace",
  cost_kept: "a pour, what spoils included",
  glass: "the glass",
  glasses: "glasses",
  needs_line: "for one kind of glass",
  needs: "needed",
  have: "there already",
  short: "missing",
  buys: "bottles to buy",
  brings: "what they bring",
  outlay: "cost of the bottles",
  outlay_all: "all of it",
  off: "off",
};

export const price = {
  heading: "What to charge",
  labels: {
    price: "What it sells at",
    target_percent: "The margin you want, in percent",
    a_week: "How many a week",
  },
  sellsAt: "sells at",
  toKeep: "to keep",
  selling: "selling",
  /** How tax stands in the price. @type {Record<T, T>} */
  taxes: { in: "tax in it", added: "tax on top", none: "no tax" },
  percent: "%",
  aWeek: "a week",
  targets: ["65", "70", "75", "80"],
  paces: ["3", "6", "12", "30"],
  /** At a glance, folded away. */
  glance: (/** @type {T} */ sells, /** @type {T} */ margin, /** @type {T} */ target, /** @type {boolean} */ reaches) =>
    `${sells} keeps ${margin}${reaches ? "" : `, under ${target}`}`,
  glanceAsked: (/** @type {T} */ target, /** @type {T} */ asked) => `${asked} for ${target}`,
  justKept: (/** @type {T} */ margin) => `${margin} is kept.`,
  under: (/** @type {T} */ margin, /** @type {T} */ target) => `Under target: ${margin} is kept, and you want ${target}.`,
  reaches: (/** @type {T} */ margin, /** @type {T} */ target) => `On target: ${margin} is kept, and you want ${target}.`,
  asks: (/** @type {T} */ target, /** @type {T} */ asked) => `To keep ${target}, ask ${asked}.`,
  keeps: "kept of it",
  margin: "margin (GP)",
  pourCost: "pour cost",
  markup: "markup",
  pays: (/** @type {T} */ pays) => `With tax at the till the guest pays ${pays}.`,
  trap: (/** @type {T} */ looks, /** @type {T} */ tax) => `On the price with tax it would look like ${looks}. But ${tax} of it is tax, and never yours.`,
  mayCost: (/** @type {T} */ sells, /** @type {T} */ target, /** @type {T} */ most) => `At ${sells} and ${target} this glass may cost ${most}.`,
  trueCost: (/** @type {T} */ cost) => `At that pace, with what spoils, it truly costs ${cost}.`,
  nothingSpoils: "Nothing in it is said to spoil. How long a bottle keeps once open is written with it, under Shelf.",
  ladder: "Prices to choose from",
  rung: (/** @type {T} */ margin) => `keeps ${margin}`,
  rungReaches: "on target",
  rungUnder: "under",
  took: (/** @type {T} */ sells) => `It sells at ${sells}.`,
  inHouse: (/** @type {T} */ sentence) => `In House: ${sentence}`,
  nothing: "Give its lines a cost first.",
  partly: (/** @type {number} */ missing) => `${missing === 1 ? "One line has" : `${missing} lines have`} no cost yet and ${missing === 1 ? "is" : "are"} not counted.`,
  notLoaded: "This part has not arrived yet. It comes when there is signal, and stays.",
  of: {
    price: "What it sells at", keeps: "What is kept of it", margin: "The margin", pour_cost: "The pour cost", markup: "The markup", trap: "What the margin seems to be",
    asked: "The price that is asked", may_cost: "What the glass may cost", pays: "What the guest pays", cost_kept: "What it truly costs",
  },
};

/** Whose standard drink it is, and what one is. @type {Record<T, [several: T, is: T]>} */
export const standardDrinks = {
  uk: ["UK units", "A UK unit is 10 ml of pure alcohol, about 8 g (NHS)."],
  us: ["US drinks", "A US standard drink is 14 g of alcohol (NIAAA)."],
  au: ["Australian drinks", "An Australian standard drink is 10 g of alcohol."],
  ca: ["Canadian drinks", "A Canadian standard drink is 13.45 g of alcohol."],
  nz: ["New Zealand drinks", "A New Zealand standard drink is 10 g of alcohol."],
  ie: ["Irish drinks", "An Irish standard drink is 10 g of alcohol."],
  dk: ["Danish drinks", "A Danish standard drink is 12 g of alcohol."],
  at: ["Austrian drinks", "An Austrian standard drink is 20 g of alcohol."],
  jp: ["Japanese drinks", "A Japanese standard drink is 20 g of alcohol."],
};

export const strength = {
  heading: "How strong it is",
  method: "How it is mixed",
  it: "it is",
  /** @type {Record<T, T>} */
  methods: { none: "served without ice", built: "built over ice", stirred: "stirred with ice", shaken: "shaken with ice" },
  takesUp: "water",
  water: "Water that the ice adds, if you measured it",
  sold: "sold",
  soldAs: "Whether it is sold as without alcohol",
  /** @type {Record<T, T>} */
  sales: { false: "as it is", true: "as without alcohol" },
  glance: (/** @type {T} */ percent, /** @type {T} */ drinks) => [`${percent} vol`, drinks].filter(Boolean).join(", "),
  vol: "by volume",
  volume: "in the glass",
  alcohol: "of alcohol",
  count: (/** @type {T} */ count, /** @type {T} */ several) => `${count} ${several}`,
  between: (/** @type {T} */ low, /** @type {T} */ high) =>
    `If only its labels were off, by the 0.3 % vol that EU and UK law lets spirits be (beer, wine and fruit liqueurs may be further off), it would lie between ${low} and ${high}.`,
  ice: (/** @type {T} */ water) => `The ice adds ${water} of water.`,
  iceFrom: "Assumed from how it is mixed and how strong it was before (ratios of D. Arnold, Liquid Intelligence, 2014). Measure your own if it matters.",
  naive: (/** @type {T} */ naive) => `If volumes added it would be ${naive}. They do not: spirit and water take less room together than apart.`,
  byWeight: "Each part is weighed by its density (OIML R 22), the weights are added, and the weight of the mixture gives its volume and strength. Sugar is left out.",
  missing: (/** @type {number} */ count) =>
    `${count === 1 ? "1 liquid in it has" : `${count} liquids in it have`} no strength told, and ${count === 1 ? "is" : "are"} taken as without alcohol. Write it with the bottle, under Shelf.`,
  none: "No bottle in it has a strength told. Write it with the bottle, under Shelf.",
  others: "What it is elsewhere",
  guideline: (/** @type {T} */ day) =>
    `The UK’s chief medical officers advise not to drink more than 14 UK units a week regularly, and to spread them over 3 days or more (2016, as read on ${day}). Other countries advise otherwise: what holds where you are goes first.`,
  driving: "No figure here says who may drive. Limits differ from place to place and drinks from person to person: after drinking, nobody should.",
  of: { percent: "How strong it is", ml: "What is in the glass", alcohol_g: "The alcohol in it", water_ml: "Water from the ice", naive_percent: "If volumes added" },
};

/** The allergens of EU and UK law, and what else a bottle may say, by code. @type {Record<T, T>} */
export const allergens = {
  gluten: "gluten", crustaceans: "crustaceans", eggs: "eggs", fish: "fish", peanuts: "peanuts", soya: "soya", milk: "milk",
  nuts: "nuts", celery: "celery", mustard: "mustard", sesame: "sesame", sulphites: "sulphites", lupin: "lupin", molluscs: "molluscs",
};
/** @type {Record<T, T>} */
export const warns = { raw_egg: "raw egg", quinine: "quinine" };

/** @type {Record<T, T>} */
export const spirits = { "": "none of these", gin: "gin", rum: "rum", vodka: "vodka", whisky: "whisky" };

export const cautions = {
  heading: "What to mind",
  glance: (/** @type {T[]} */ carried, /** @type {number} */ count) =>
    [carried.join(", "), count ? (count === 1 ? "1 thing to mind" : `${count} things to mind`) : ""].filter(Boolean).join("; ") || "nothing ticked",
  carries: (/** @type {T[]} */ carried) =>
    `Its bottles carry ${carried.join(", ")}. Whoever asks must be told (Regulation (EU) 1169/2011, annex II, and the same in UK law).`,
  noneTicked: "No allergen is ticked on its bottles. That is not the same as none: read the labels.",
  /** @type {Record<T, (v: Record<T, T>) => T>} */
  said: {
    gb_measure: (v) =>
      `This pours ${v.ml} ml of ${v.spirit}. In Great Britain gin, rum, vodka and whisky go in 25 or 35 ml or multiples of the one you chose, unless three or more liquids are mixed (SI 1988/2039).`,
    gb_metric: () => "A measure on a British menu is told in ml or cl, not in ounces or gills (SI 1994/2866, art. 3).",
    minimum_unit_price: (v) => `Scotland (since 30 September 2024) and Wales (since 1 October 2026) have a minimum price of 65p a unit: ${v.least} for this glass (gov.scot, gov.wales).`,
    not_alcohol_free: (v) => `It has ${v.percent} % vol. UK guidance of 2018 says alcohol-free up to 0.05 % vol only.`,
    not_low: (v) => `It has ${v.percent} % vol. Above 0.5 % vol a drink is sold as alcohol (Licensing Act 2003, s. 191).`,
    raw_egg: () => "There is raw egg in it. Say so: children, the old, the pregnant and the ill may do better without (FDA Food Code 3-603.11; advice differs by country and by how eggs are marked).",
    quinine: () => "There is quinine in it, which a label must name (Regulation (EU) 1169/2011, annex VII). Some must not have it: name it to whoever asks.",
  },
  defer: (/** @type {T} */ day) =>
    `Written on ${day}. Rules change and differ: local ones, and how your licence is practised, go first. Nothing here stops you, and none of it is legal advice.`,
};

export const trim = {
  heading: "Without it, or another instead",
  saves: "leaving it out saves",
  without: "the glass then costs",
  strength: "and is then",
  vol: (/** @type {T} */ percent) => `${percent} vol`,
  outlay: "one bottle not to buy",
  bottleAtMost: (/** @type {T} */ target) => `its bottle may cost, for ${target}`,
  measureAtMost: (/** @type {T} */ target) => `the glass can take, for ${target}`,
  costKept: "with what spoils it truly costs",
  sameMoney: "It costs as much as",
  another: "another line",
  instead: "instead",
  insteadHint: "which bottle?",
  label: "Another bottle in its place",
  change: "the change",
  now: "the glass now costs",
  then: "with it, the glass costs",
  buy: "its bottle, to be bought",
  strengthThen: "strength",
  fromTo: (/** @type {T} */ before, /** @type {T} */ after) => (before ? `${before}, then ${after}` : after),
  itself: "That is the bottle in it.",
  swap: "Put it in",
  swapped: (/** @type {T} */ was, /** @type {T} */ is) => `${is} is in, in place of ${was || "the line"}.`,
  of: {
    saves: "What leaving it out saves", without: "The glass without it", outlay: "What its bottle costs", bottle_at_most: "What its bottle may cost",
    measure_at_most: "How much of it the glass can take", cost_kept: "What a pour truly costs", same_money: "What the same money buys", change: "The change", then: "The glass with another bottle",
  },
};

export const bottleMore = {
  heading: "Strength, keeping, allergens",
  labels: { strength: "Strength in percent by volume", keeps_days: "How many days it keeps once open", have: "What is there of it already", spirit: "Which of the spirits that British law measures it is" },
  has: "it has",
  vol: "% vol",
  keeps: "keeps",
  days: "days open",
  forEver: "ever",
  is: "it is",
  thereIs: "on hand",
  strengths: ["0", "5", "12", "18", "28", "40", "43"],
  /** Habits, and no facts: label and days. @type {[T, T][]} */
  habits: [["juice, 2 days", "2"], ["cream, 4", "4"], ["syrup, 21", "21"], ["vermouth, 42", "42"], ["a mixer, 1", "1"]],
  habitsAbout: "Habits, not facts: in the cold, juice is kept 2 days or so, cream 4, a syrup 3 weeks, vermouth 6. Write your own; left empty, it keeps for ever.",
  allergens: "It carries",
  warns: "It also has",
  allergensAbout: "As its label says. Nobody checks this but you.",
};

export const selling = {
  heading: "Selling",
  keep: "keep",
  ofPrice: "% of a price",
  prices: "prices",
  saleTax: "How tax stands in your prices",
  /** @type {Record<T, T>} */
  taxes: { in: "have tax in them", added: "get tax at the till", none: "have no tax" },
  at: "tax is",
  percent: "% of it",
  asI: "they are",
  points: "Which prices you ask",
  /** @type {Record<T, T>} */
  allPoints: { any: "any", whole: "whole", half: "whole or half", ninety_five: "ending in 95", fives: "fives and tens" },
  count: "count in",
  drinks: "Whose standard drinks are told",
  grams: "grams of alcohol",
  labels: { target_percent: "The margin you want of a glass, in percent", sale_tax_percent: "The tax rate on what you sell, in percent" },
  about: "A margin is what is kept of the price without tax. A glass may have its own. While UK units are counted, British measures and the minimum prices of Scotland and Wales are minded too.",
};
