// @ts-check
/** What a device may have kept already, in the form that the core keeps it. */

import { begun } from "./places.mjs";

/** @typedef {import("../../webdriver.mjs").Session} Session */
/** @typedef {import("../../site.mjs").Site} Site */

const KEPT_ON = "2026-01-31";

/** @param {object} record @param {object} more */
const kept = (record, more = {}) => JSON.stringify({ format: 3, revision: 1, kept_on: KEPT_ON, record, earlier: [], ...more });

/** What holds for everything: a British bar, whatever the engine's language. @param {object} changes */
export const house = (changes = {}) => ({
  currency: "GBP", decimal_mark: ".", kitchen: "uk", tax_percent: "20", reclaims_tax: false, counts_fill: false,
  sale_tax: "in", sale_tax_percent: "", target_percent: "75", price_points: "half", drinks_of: "uk", rough: {}, ...changes,
});

/** @param {string} id @param {string} name @param {string} price @param {string} text @param {string} unit @param {object} changes */
export const bottle = (id, name, price, text, unit = "ml", changes = {}) => ({
  id, name,
  paid: { price, bottles: "", discount: "", delivery: "", tax: "in", tax_percent: "" },
  holds: { text, unit }, wastage_percent: "", rough: {}, measured: {}, strength: "", keeps_days: "", allergens: [], warns: [],
  have: { text: "", unit: "" }, spirit: "", ...changes,
});

/** @param {string} bottleId @param {string} text @param {string} unit */
export const line = (bottleId, text, unit) => ({ bottle: bottleId, own: null, measure: { text, unit }, charge: "poured", note: "" });

/** @param {string} id @param {string} name @param {object[]} lines */
export const spec = (id, name, lines) => ({
  id, name, lines, price: "", target_percent: "", method: "", water: { text: "", unit: "" }, without_alcohol: false, a_week: "",
});

export const BITTERS = bottle("bitters", "orange bitters", "18.50", "100");
export const RYE = bottle("rye", "rye whisky", "31.40", "700");
export const SODA = bottle("soda", "soda water", "1.20", "200");
export const LOCK_GATE = spec("lockgate", "Lock Gate", [line("rye", "50", "ml"), line("bitters", "2", "dash")]);

export const HOUSE_KEY = "farthing:house:";
/** @param {{ id: string }} record */
export const bottleKey = ({ id }) => `farthing:bottle:${id}`;
/** @param {{ id: string }} record */
export const specKey = ({ id }) => `farthing:spec:${id}`;

/**
 * Storage entries of a device that somebody used before.
 * @param {{ bottles?: { id: string }[], specs?: { id: string }[], house?: object, draft?: object }} shelf
 * @returns {Record<string, string>}
 */
export const storageOf = ({ bottles = [], specs = [], house: ofHouse = house(), draft } = {}) => ({
  [HOUSE_KEY]: kept(ofHouse),
  ...Object.fromEntries(bottles.map((each) => [bottleKey(each), kept(each)])),
  ...Object.fromEntries(specs.map((each) => [specKey(each), kept(each)])),
  ...(draft && { "farthing:draft": JSON.stringify(draft) }),
});

/** A file as the page saves it. @param {{ bottles?: object[], specs?: object[], house?: object | null, format?: number }} shelf */
export const fileOf = ({ bottles = [], specs = [], house: ofHouse = null, format = 3 }) => JSON.stringify({
  format, holds: "farthing shelf", saved_on: KEPT_ON, house: ofHouse && JSON.parse(kept(ofHouse)),
  bottles: bottles.map((each) => JSON.parse(kept(each))), specs: specs.map((each) => JSON.parse(kept(each))),
});

/**
 * Writes storage before the page is ever opened, from a text of the same host.
 * @param {Session} session @param {Site} site @param {Record<string, string>} entries
 */
export async function seed(session, site, entries) {
  await session.go(`${site.address}nothing-is-here.txt`);
  await session.run((/** @type {Record<string, string>} */ all) => {
    for (const [key, text] of Object.entries(all)) localStorage.setItem(key, text);
  }, entries);
}

/** Opens the page on a device that kept this. @param {Session} session @param {Site} site @param {Parameters<typeof storageOf>[0]} shelf */
export async function openWith(session, site, shelf = {}) {
  await seed(session, site, storageOf(shelf));
  await session.go(site.address);
  await begun(session);
}

/** Everything that the page keeps, by key. @param {Session} session @returns {Promise<Record<string, string>>} */
export const stored = (session) => session.run(() => Object.fromEntries(
  Object.keys(localStorage).filter((key) => key.startsWith("farthing:")).sort().map((key) => [key, localStorage.getItem(key)])));

/** One kept record, read. @param {Session} session @param {string} key @returns {Promise<any>} */
export const storedRecord = async (session, key) => JSON.parse((await stored(session))[key] ?? "null");
