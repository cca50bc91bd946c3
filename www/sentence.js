// @ts-check
/** The sentence of a bottle: what was paid, for how much of what. Rarer clauses unfold on tap. */

import { blank, choice } from "./blanks.js";
import { currencySign, decimalMark } from "./figures.js";
import { bottles, example, house } from "./kept.js";
import { make, write } from "./page.js";
import { clauses as clauseWords, labels, units, usualSizes, words } from "./words.js";
/** @typedef {import("./records.js").Bottle} Bottle */
/** @typedef {import("./blanks.js").Blank} Blank */

/**
 * A line of the sentence: the word it leads with, its blanks, what follows them.
 * @param {string | Node} lead @param {Blank[]} blanks @param {(Node | string)[]} tail
 */
export function clause(lead, blanks, ...tail) {
  const parts = blanks.map((each) => each.element);
  return make(
    "div",
    { class: "clause" },
    make("span", { class: "lead" }, lead),
    make("span", { class: "said" }, ...parts, ...tail),
    ...blanks.map((each) => each.wrong),
  );
}

/** @param {string} text */
const tailed = (text) => make("span", { class: "tail" }, text);

/**
 * @param {Bottle} bottle changed in place as a person types
 * @param {object} options
 * @param {() => void} options.changed
 * @param {boolean} [options.named] whether the sentence says of what
 * @param {(id: string) => void} [options.picked] a bottle of the shelf was tapped for its name
 */
export function bottleSentence(bottle, { changed, named = true, picked }) {
  const { paid } = bottle;
  const sign = make("span", { class: "sign" });
  const said = (/** @type {Partial<import("./records.js").Paid>} */ part) => (Object.assign(paid, part), changed());

  const price = blank({ label: labels.price, text: paid.price, likely: lastPrices, changed: (text) => said({ price: text }) });
  const holds = blank({
    label: labels.holds, text: bottle.holds.text, unit: bottle.holds.unit || "ml", offered: "holds",
    likely: () => usualSizes.map(([text, unit]) => ({ label: `${text} ${units[unit][1]}`, text, unit })),
    changed: (text, unit) => ((bottle.holds = { text, unit }), changed()),
  });
  const name = blank({
    label: labels.name, text: bottle.name, kind: "words", hint: words.anything,
    likely: () => (picked ? likelyBottles(bottle.name) : []),
    changed(text, id) {
      bottle.name = text;
      changed();
    },
  });
  if (picked) {
    const fill = name.fill;
    name.fill = (text, id) => (id ? picked(id) : fill(text));
  }
  const count = blank({ label: labels.bottles, text: paid.bottles, changed: (text) => (said({ bottles: text }), each()) });
  const discount = blank({
    label: labels.discount, text: paid.discount, changed: (text) => said({ discount: text }),
    likely: () => ["5 %", "10 %", "15 %", "20 %"].map((text) => ({ label: text, text })),
  });
  const delivery = blank({ label: labels.delivery, text: paid.delivery, changed: (text) => said({ delivery: text }) });
  const rate = blank({ label: labels.tax_percent, text: paid.tax_percent, changed: (text) => said({ tax_percent: text }) });
  const waste = blank({
    label: labels.wastage, text: bottle.wastage_percent,
    likely: () => ["2", "5", "10"].map((text) => ({ label: `${text} %`, text })),
    changed: (text) => ((bottle.wastage_percent = text), changed()),
  });
  const tax = choice(labels.tax, Object.entries(clauseWords.taxes), paid.tax, (value) => (said({ tax: value }), taxed()));
  const atRate = make("span", { class: "tail rate" }, clauseWords.at, " ", rate.element, " %");

  const taxClause = clause(clauseWords.tax, [], tax.element, atRate);
  taxClause.append(rate.wrong);
  const holdsClause = clause(clauseWords.buys, [holds]);
  /** @type {Record<string, HTMLElement>} */
  const quiet = {
    bottles: clause(clauseWords.for, [count], tailed(clauseWords.bottles)),
    discount: clause(clauseWords.less, [discount], tailed(clauseWords.off)),
    delivery: clause(clauseWords.plus, [delivery], tailed(clauseWords.delivery)),
    tax: taxClause,
    wastage: clause(clauseWords.less, [waste], tailed(clauseWords.wasted)),
  };
  const each = () => write(/** @type {Element} */ (holdsClause.firstChild), paid.bottles.trim() ? clauseWords.each : clauseWords.buys);
  const taxed = () => (atRate.hidden = paid.tax === "none");

  /** What of the rarer clauses says something. */
  const says = () => ({
    bottles: paid.bottles, discount: paid.discount, delivery: paid.delivery,
    tax: paid.tax !== "in" || paid.tax_percent, wastage: bottle.wastage_percent,
  });
  const toggles = make("div", { class: "also" });
  for (const [key, element] of Object.entries(quiet)) {
    const toggle = make("button", { type: "button", class: "quiet", "aria-expanded": "false" }, clauseWords.also[key]);
    toggle.addEventListener("click", () => {
      unfold(key, element.hidden);
      if (!element.hidden) element.querySelector("input")?.focus();
      else if (says()[/** @type {"tax"} */ (key)]) clear(key);
    });
    element.dataset.toggle = key;
    toggle.dataset.key = key;
    toggles.append(toggle);
  }
  /** @param {string} key @param {boolean} open */
  function unfold(key, open) {
    quiet[key].hidden = !open;
    toggles.querySelector(`[data-key="${key}"]`)?.setAttribute("aria-expanded", String(open));
  }
  /** A clause folded away says nothing any more. @param {string} key */
  function clear(key) {
    if (key === "tax") Object.assign(paid, { tax: "in", tax_percent: "" });
    else if (key === "wastage") bottle.wastage_percent = "";
    else Object.assign(paid, { [key]: "" });
    refill();
    changed();
  }

  /** Shows the bottle as it stands, after something other than typing changed it. */
  function refill() {
    write(sign, currencySign());
    price.set(paid.price);
    holds.set(bottle.holds.text, bottle.holds.unit || "ml");
    name.set(bottle.name);
    count.set(paid.bottles);
    discount.set(paid.discount);
    delivery.set(paid.delivery);
    rate.input.placeholder = house.tax_percent.replace(".", decimalMark);
    rate.set(paid.tax_percent);
    waste.set(bottle.wastage_percent);
    tax.set(paid.tax);
    each();
    taxed();
    for (const [key, value] of Object.entries(says())) unfold(key, Boolean(value));
  }
  refill();

  return {
    clauses: [
      clause(sign, [price]), quiet.bottles, quiet.discount, quiet.delivery, quiet.tax,
      holdsClause, ...(named ? [clause(clauseWords.of, [name])] : []), quiet.wastage,
    ],
    toggles,
    refill,
    blanks: { price, holds, name },
    /** Where the core finds each blank. @param {string} place @returns {[string, Blank][]} */
    places: (place) => [
      [`${place}.paid.price`, price], [`${place}.paid.bottles`, count], [`${place}.paid.discount`, discount],
      [`${place}.paid.delivery`, delivery], [`${place}.paid.tax_percent`, rate], [`${place}.holds`, holds],
      [`${place}.name`, name], [`${place}.wastage_percent`, waste],
    ],
  };
}

const MOST_PRICES = 3;

/** What was paid last for bottles of the shelf. */
function lastPrices() {
  if (example) return [];
  const latest = [...bottles.values()].reverse().sort((a, b) => b.kept_on.localeCompare(a.kept_on));
  const prices = new Set(latest.map(({ record }) => record.paid.price.trim()).filter(Boolean));
  return [...prices].slice(0, MOST_PRICES).map((text) => ({ label: text, text }));
}

const MOST_LIKELY = 12;

/** Bottles of the shelf whose name begins like what is typed. @param {string} typed */
export function likelyBottles(typed) {
  const start = typed.trim().toLocaleLowerCase();
  const found = [];
  for (const { record } of bottles.values()) {
    if (found.length === MOST_LIKELY) break;
    if (record.name.toLocaleLowerCase().includes(start)) found.push({ label: record.name, text: record.name, unit: record.id });
  }
  return found;
}
