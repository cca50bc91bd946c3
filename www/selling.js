// @ts-check
/** How the house sells: the margin it wants, tax in its prices, which prices it asks, whose drinks it counts in. */

import { blank, choice } from "./blanks.js";
import { decimalMark } from "./figures.js";
import * as kept from "./kept.js";
import { make } from "./page.js";
import { clause } from "./sentence.js";
import { selling as sellingWords, standardDrinks } from "./words-price.js";
/** @typedef {import("./records.js").House} House */

/** What the core takes where a house says nothing. */
const UNSAID = { sale_tax: "in", sale_tax_percent: "", target_percent: "75", price_points: "half", drinks_of: "uk" };
const now = () => ({ ...UNSAID, ...kept.house });

/** Counting in grams is nobody's standard drink. */
const GRAMS = "grams";

/** @param {(changes: Partial<House>) => void} change */
export function sellingTerms(change) {
  const house = now();
  const tail = (/** @type {string} */ text) => make("span", { class: "tail" }, text);
  const local = (/** @type {string} */ text) => text.replace(".", decimalMark);
  const target = blank({
    label: sellingWords.labels.target_percent, text: local(house.target_percent),
    likely: () => ["65", "70", "75", "80"].map((text) => ({ label: `${text} %`, text })),
    changed: (text) => change({ target_percent: text }),
  });
  const tax = choice(sellingWords.saleTax, Object.entries(sellingWords.taxes), house.sale_tax, (value) => (change({ sale_tax: value }), taxed()));
  const rate = blank({
    label: sellingWords.labels.sale_tax_percent, text: local(house.sale_tax_percent), hint: local(house.tax_percent),
    changed: (text) => change({ sale_tax_percent: text }),
  });
  const points = choice(sellingWords.points, Object.entries(sellingWords.allPoints), house.price_points, (value) => change({ price_points: value }));
  const countries = Object.entries(standardDrinks).map(([code, [several]]) => /** @type {[string, string]} */ ([code, several]));
  const drinks = choice(sellingWords.drinks, [...countries, [GRAMS, sellingWords.grams]], house.drinks_of, (value) => change({ drinks_of: value }));
  const rateClause = clause(sellingWords.at, [rate], tail(sellingWords.percent));
  const taxed = () => (rateClause.hidden = now().sale_tax === "none");
  taxed();

  return {
    elements: [
      make("h2", {}, sellingWords.heading),
      make("div", { class: "sentence" },
        clause(sellingWords.keep, [target], tail(sellingWords.ofPrice)),
        clause(sellingWords.prices, [], tax.element),
        rateClause,
        clause(sellingWords.asI, [], points.element),
        clause(sellingWords.count, [], drinks.element)),
      make("p", { class: "small" }, sellingWords.about),
    ],
    /** @type {[string, import("./blanks.js").Blank][]} */
    places: [["house.target_percent", target], ["house.sale_tax_percent", rate]],
    refill() {
      const { target_percent, sale_tax, sale_tax_percent, price_points, drinks_of, tax_percent } = now();
      target.set(target_percent);
      tax.set(sale_tax);
      rate.set(sale_tax_percent);
      rate.input.placeholder = local(tax_percent);
      points.set(price_points);
      drinks.set(drinks_of);
      taxed();
    },
  };
}
