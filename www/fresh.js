// @ts-check
/** Records that are new, and whether two records say the same. */

/** Whether two records say the same, in whatever order. @param {any} one @param {any} other @returns {boolean} */
export function same(one, other) {
  if (typeof one !== "object" || typeof other !== "object" || !one || !other) return one === other;
  const names = Object.keys(one);
  return names.length === Object.keys(other).length && names.every((name) => name in other && same(one[name], other[name]));
}

/**
 * Writes one bottle's fields over another's, which stays the same object for whoever holds it.
 * @param {any} bottle @param {any} given
 */
export function become(bottle, given) {
  const { paid, ...rest } = { measured: {}, ...structuredClone(given) };
  for (const name of Object.keys(bottle.paid)) bottle.paid[name] = paid[name];
  for (const name of Object.keys(bottle)) if (name !== "paid") bottle[name] = rest[name];
}

/** A name for a new record that no other device gives. */
export function freshName() {
  return Array.from(crypto.getRandomValues(new Uint8Array(9)), (byte) => byte.toString(36).padStart(2, "0")).join("");
}

/** @returns {import("./records.js").Bottle} */
export const emptyBottle = (id = freshName()) => ({
  id,
  name: "",
  paid: { price: "", bottles: "", discount: "", delivery: "", tax: "in", tax_percent: "" },
  holds: { text: "", unit: "ml" },
  wastage_percent: "",
  rough: {},
  measured: {},
  strength: "",
  keeps_days: "",
  allergens: [],
  warns: [],
  have: { text: "", unit: "" },
  spirit: "",
});

/** @returns {import("./records.js").Spec} */
export const emptySpec = (id = freshName()) => ({
  id,
  name: "",
  lines: [],
  price: "",
  target_percent: "",
  method: "none",
  water: { text: "", unit: "ml" },
  without_alcohol: false,
  a_week: "",
});
