// @ts-check
/**
 * What readers pay for their bottles: one list a currency for all glasses of a site, kept on the device
 * if that may be.
 */

/** @typedef {import("./records.js").OwnPrice} OwnPrice */

/** The version of what is kept. */
const FORMAT = 1;

/** Bottles whose prices are kept, the latest: a full shelf at home, and all that the core takes. */
const MOST_OWN = 200;

/** Characters of what is read: so many bottles, written at length. */
const MOST_TEXT = 50_000;

/** The lists, by currency. @type {Map<string, Map<string, OwnPrice>>} */
const lists = new Map();

/** Currencies whose list was written by a newer version, or is not ours: it is not written over. @type {Set<string>} */
const foreign = new Set();

/** Tells every glass of the page that a price changed. */
export const changes = new EventTarget();

/** @param {string} currency */
const keyOf = (currency) => `farthing-glass:${currency}`;

/** @param {string | null} key what changed elsewhere; nothing if anything may have */
function readAgain(key) {
  for (const currency of lists.keys()) {
    if (key !== null && key !== keyOf(currency)) continue;
    lists.set(currency, read(currency));
    changes.dispatchEvent(new Event("change"));
  }
}

addEventListener("storage", ({ key }) => readAgain(key));
// A page that is gone back to was told of nothing meanwhile, and would write over it.
addEventListener("pageshow", ({ persisted }) => persisted && readAgain(null));

/** @param {string} currency @returns {Map<string, OwnPrice>} */
function read(currency) {
  const own = new Map();
  try {
    const text = localStorage.getItem(keyOf(currency));
    foreign.delete(currency);
    if (text === null) return own;
    foreign.add(currency);
    const kept = text.length > MOST_TEXT ? null : JSON.parse(text);
    if (kept.format !== FORMAT) return own;
    const prices = /** @type {OwnPrice[]} */ ([...kept.prices]).map(({ name, price, holds }) => ({ name, price, holds }));
    if (prices.some((each) => Object.values(each).some((value) => typeof value !== "string"))) return own;
    foreign.delete(currency);
    for (const each of prices.slice(0, MOST_OWN)) own.set(named(each.name), each);
  } catch {
    // Nothing may be kept here, or it is not ours: the writer's prices stand.
  }
  return own;
}

/** A name as the core compares it: without capitals, accents and what stands between words. @param {string} name */
const named = (name) => name.normalize("NFD").replace(/\p{M}/gu, "").replace(/[^\p{L}\p{N}]+/gu, " ").trim().toLowerCase();

/** @param {string} currency */
const listOf = (currency) => lists.get(currency) ?? lists.set(currency, read(currency)).get(currency) ?? new Map();

/** A reader's price, if there is one. @param {string} currency @param {string} name @returns {OwnPrice | undefined} */
export const ownPrice = (currency, name) => listOf(currency).get(named(name));

/** Every one of them. @param {string} currency @returns {OwnPrice[]} */
export const ownPrices = (currency) => [...listOf(currency).values()];

/**
 * Takes up a reader's price; an empty one gives the bottle back to the writer's.
 * @param {string} currency @param {OwnPrice} own @param {boolean} keeps
 * @returns {boolean} whether it is kept
 */
export function setOwn(currency, own, keeps) {
  const list = listOf(currency);
  list.delete(named(own.name));
  if (own.price.trim() || own.holds.trim()) list.set(named(own.name), own);
  for (const name of [...list.keys()].slice(0, -MOST_OWN)) list.delete(name);
  changes.dispatchEvent(new Event("change"));
  if (!keeps || foreign.has(currency)) return false;
  try {
    localStorage.setItem(keyOf(currency), JSON.stringify({ format: FORMAT, prices: [...list.values()] }));
    return true;
  } catch {
    return false;
  }
}
