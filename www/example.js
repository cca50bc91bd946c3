// @ts-check
/** What a first-time visitor meets: the shelf and two glasses of an invented canal-side bar. */

import { decimalMark } from "./figures.js";
import { emptyBottle, emptySpec } from "./fresh.js";
/** @typedef {import("./records.js").Bottle} Bottle */
/** @typedef {import("./records.js").Spec} Spec */

/** @type {[id: string, name: string, price: string, bottles: string, holds: string, unit: string][]} */
const BOTTLES = [
  ["bitters", "orange bitters", "18.50", "", "100", "ml"],
  ["aromatic", "aromatic bitters", "21.00", "", "200", "ml"],
  ["rye", "rye whisky", "31.40", "", "700", "ml"],
  ["gin", "dry gin", "24.60", "", "700", "ml"],
  ["syrup", "rosemary syrup", "4.20", "", "500", "ml"],
  ["ginger", "ginger ale", "16.80", "24", "200", "ml"],
  ["soda", "soda water", "9.60", "24", "200", "ml"],
  ["limes", "limes", "9.80", "", "40", "piece"],
  ["oranges", "oranges", "7.20", "", "20", "piece"],
  ["ice", "ice", "1.60", "", "2", "kg"],
];

/** What some of them tell besides. @type {Record<string, Partial<Bottle>>} */
const TOLD = {
  bitters: { strength: "28" },
  aromatic: { strength: "44" },
  rye: { strength: "45", spirit: "whisky" },
  gin: { strength: "41", spirit: "gin" },
  syrup: { strength: "0", keeps_days: "21" },
  ginger: { strength: "0", allergens: ["sulphites"] },
  soda: { strength: "0" },
};

/** The first is sold already, the second asks for a price. @type {[id: string, name: string, lines: [bottle: string, amount: string, unit: string][], terms: Partial<Spec>][]} */
const SPECS = [
  ["lockgate", "Lock Gate", [["rye", "50", "ml"], ["syrup", "10", "ml"], ["bitters", "2", "dash"], ["oranges", "1/8", "piece"], ["ice", "120", "g"]],
    { price: "12.50", method: "stirred", a_week: "6" }],
  ["towpath", "Towpath Long", [["gin", "40", "ml"], ["limes", "1/2", "piece"], ["ginger", "1/2", "bottle"], ["bitters", "½", "dropper"], ["ice", "180", "g"]],
    { method: "built" }],
];

/**
 * The example in the currency at hand: one without decimals takes the same digits as whole units.
 * @param {boolean} decimals
 * @returns {{ bottles: Bottle[], specs: Spec[], sum: { bottle: Bottle, measure: { text: string, unit: string } } }}
 */
export function workedExample(decimals) {
  const local = (/** @type {string} */ price) => price.replace(".", decimals ? decimalMark : "");
  const bottles = BOTTLES.map(([id, name, price, count, holds, unit]) => {
    const bottle = emptyBottle(`example-${id}`);
    bottle.paid.price = local(price);
    bottle.paid.bottles = count;
    return { ...bottle, ...structuredClone(TOLD[id]), name, holds: { text: holds, unit } };
  });
  const specs = SPECS.map(([id, name, lines, terms]) => ({
    ...emptySpec(`example-${id}`), ...terms, name,
    price: local(terms.price ?? ""),
    lines: lines.map(([bottle, text, unit]) => ({
      bottle: `example-${bottle}`, own: null, measure: { text, unit }, charge: /** @type {"poured"} */ ("poured"), note: "",
    })),
  }));
  return { bottles, specs, sum: { bottle: structuredClone(bottles[0]), measure: { text: "2", unit: "dash" } } };
}
