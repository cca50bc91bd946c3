// @ts-check
/** The words of a glass on somebody's page. */

/** @typedef {string} T */

export const embed = {
  glass: (/** @type {T} */ name) => (name ? `a glass of ${name}` : "a glass"),
  region: (/** @type {T} */ name) => (name ? `What a glass of ${name} costs` : "What this glass costs"),
  noPrice: "Put in what you pay, and its cost stands here.",
  whose: {
    writer: "at the writer’s prices",
    reader: "at your prices",
    both: "at your prices and the writer’s",
  },
  without: (/** @type {number} */ lines) => (lines === 1 ? "without 1 line" : `without ${lines} lines`),
  panels: { lines: "line by line", prices: "my prices", strength: "strength", working: "the sums" },
  noCost: "no price yet",
  share: (/** @type {number} */ percent) => `${percent} %`,
  pays: "What do you pay? Leave empty what the writer has right.",
  forHow: "for",
  price: (/** @type {T} */ name) => `What you pay for ${name}`,
  holds: (/** @type {T} */ name) => `How much ${name} that buys`,
  priceHint: "price",
  holdsHint: "700 ml",
  kept: "Kept on this device alone, for the glasses of this site.",
  unkept: "Not kept: it is gone when you leave this page.",
  strength: (/** @type {T} */ percent, /** @type {T} */ low, /** @type {T} */ high) => `About ${percent} % vol, between ${low} and ${high} as labels may be off.`,
  alcohol: (/** @type {T} */ grams) => `${grams} g of alcohol in a glass.`,
  /** @type {Record<T, T>} */
  methods: { none: "Before any ice melts.", built: "Built over ice.", stirred: "Stirred with ice.", shaken: "Shaken with ice." },
  unknown: (/** @type {number} */ count) => (count === 1 ? "One liquid’s strength is not told: it is taken to have none." : `The strength of ${count} liquids is not told: they are taken to have none.`),
  care: "Nobody should drive after drinking. What is said here is reckoned from labels and lines, is no advice, and leaves allergens to the label. Written 25 November 2026; local rules hold.",
  sum: "The glass",
  unread: "how much?",
  /** What is wrong with a blank of a reader, by its name. @type {Record<T, T>} */
  wrong: {
    price: "That is no price. Try 24.50, with at most one mark before decimals.",
    holds: "That is no size of a bottle. Try 700 ml.",
  },
  /** What is wrong with what the writer gave, by its place. @type {Record<T, T>} */
  wrongs: {
    currency: "The currency of this glass is none that ISO 4217 lists. Its writer can name one, such as GBP.",
    prices: "The writer’s prices cannot be read. They look like this: rye whisky: 28 for 70 cl at 40 %; lime juice: 3 for 1 l.",
    lines: "This glass has more lines than are read.",
    method: "How this glass is mixed cannot be read. It is none, built, stirred or shaken.",
    part: "How large a part is cannot be read. Try 30 ml.",
  },
};
